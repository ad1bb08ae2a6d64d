"""Knots that lie along one ridge, as pairs."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from crestcut.base.grid import BoolArray, FloatArray, IntArray

POOL_LONG, POOL_SHORT = 1.30, 0.50  # m each way
SAME_LINE = 0.04  # m off a line that still is on it


@dataclass(frozen=True, eq=False)
class Candidates:
    """Knots with the lines that they lie on. place (n, 3): column, row (lattice cells), angle of n from u;
    model (n,): HINGE or STEP; line (n, 4): d, g, k and variance of d, m2, of the break line in each knot's
    axes.  pitch : of the lattice, m.  variance : of one point, m2."""

    place: FloatArray
    model: NDArray[np.int8]
    line: FloatArray
    pitch: float
    variance: float

    def __getitem__(self, which: BoolArray | IntArray) -> Candidates:
        """Some of them."""
        return replace(self, place=self.place[which], model=self.model[which], line=self.line[which])

    def moved(self) -> Candidates:
        """Set onto their lines and turned with them; d = g = 0 from there."""
        out = self.place.copy()
        out[:, 0] += self.line[:, 0] * np.cos(self.place[:, 2]) / self.pitch
        out[:, 1] += self.line[:, 0] * np.sin(self.place[:, 2]) / self.pitch
        # n = d + g l: the line's own direction is turned back by atan(g)
        out[:, 2] -= np.arctan(self.line[:, 1])
        return replace(self, place=out, line=self.line * (0.0, 0.0, 1.0, 1.0))


@dataclass(frozen=True, eq=False)
class Neighbours:
    """Pairs of knots along one ridge: ``near`` lies at (``across``, ``along``) m in the axes of ``owner``.
    Sorted by owner; every one of the n is also its own neighbour. same_way : -1 where n points the other way,
    so that a fall is a rise."""

    n: int
    owner: IntArray
    near: IntArray
    across: FloatArray
    along: FloatArray
    same_way: FloatArray

    @classmethod
    def of(cls, place: FloatArray, pitch: float, wide: float) -> Neighbours:
        """Knots within ``POOL_LONG`` m along the break of each, and ``wide`` m across it, farther off the
        wider."""
        n = len(place)
        xy = place[:, :2] * pitch
        pairs = cKDTree(xy).query_pairs(POOL_LONG + wide, output_type="ndarray")
        owner = np.concatenate([pairs[:, 0], pairs[:, 1], np.arange(n)])
        near = np.concatenate([pairs[:, 1], pairs[:, 0], np.arange(n)])
        order = np.lexsort((near, owner))
        owner, near = owner[order], near[order]
        c, s = np.cos(place[owner, 2]), np.sin(place[owner, 2])
        x, y = (xy[near] - xy[owner]).T
        across, along = x * c + y * s, y * c - x * s
        turn = place[near, 2] - place[owner, 2]
        room = wide + 0.1 * np.abs(along) + 0.2 * along**2
        keep = (np.abs(along) < POOL_LONG) & (np.abs(across) <= room) & (np.abs(np.sin(turn)) <= 0.5)
        same_way = np.where(np.cos(turn) < 0, -1.0, 1.0)
        return cls(n, owner[keep], near[keep], across[keep], along[keep], same_way[keep])

    def total(self, values: FloatArray) -> FloatArray:
        """Sum over each owner's pool, (n,)."""
        out: FloatArray = np.bincount(self.owner, values, self.n).astype(float)
        return out

    def mean(self, weight: FloatArray, values: FloatArray) -> FloatArray:
        """Weighted mean over each owner's pool, (n,)."""
        return self.total(weight * values) / np.maximum(self.total(weight), 1e-12)

    def length(self, on: BoolArray) -> FloatArray:
        """From the first to the last of the pool's marked knots, m, (n,)."""
        start = np.searchsorted(self.owner, np.arange(self.n))
        along = np.where(on, self.along, 0.0)
        return np.maximum.reduceat(along, start) - np.minimum.reduceat(along, start)

    def same_ridge(self, line: FloatArray, alike: BoolArray) -> BoolArray:
        """Pairs whose near knot lies on its owner's line (n, 4; d = g = 0), of those ``alike``."""
        off = self.across - line[self.owner, 2] * self.along**2
        out: BoolArray = alike & (np.abs(off) <= SAME_LINE)
        return out
