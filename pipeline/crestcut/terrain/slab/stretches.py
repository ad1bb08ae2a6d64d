"""A long lane's covariances, stretch by stretch along it: what they take grows with the lane, not with its
square and cube.

Heights a few metres apart have little to do with each other once those between are known. So each stretch
of the lane is taken given the one before it alone: p(y) = prod p(y_i | y_i-1) (Vecchia, J. R. Statist. Soc.
B 50, 1988; in blocks: Katzfuss & Guinness, Statistical Science 36, 2021). That is the normal density whose
covariance K' is the true K within each stretch and between neighbours, and whose inverse has nothing between
others. Since that inverse meets K only where both agree, tr(K'^-1 K) = n, and the divergence of the one from
the other is (log det K' - log det K) / 2 nats: it only takes the place of K where that is far below one (no
judge of all the heights could then tell the two apart: Pinsker). ``STRETCH`` is chosen by it.

For the waves at the nodes of a lattice, tiles so far off are left out that all of them together could not
have moved any draw by more than ``NEGLECTED``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Self

import numpy as np
from scipy import linalg

from crestcut.base.grid import FloatArray, GridFrame, IntArray
from crestcut.terrain.error.covariance import HALF
from crestcut.terrain.slab.averages import Tiles
from crestcut.terrain.slab.noise import ALL, Noise
from crestcut.terrain.slab.shapes import Columns
from crestcut.terrain.slab.split import (
    LEAST,
    FieldPriors,
    Setting,
    Whitened,
    columns_at,
    covariance,
    covariance_between,
    log_evidence,
    squares,
    whiten,
    whitened,
)

LARGE, LONG = 1_000_000, 20.0  # nodes, those of 27 m of a usual width; m
STRETCH = 5.0  # m, at least: several lengths of slab and scan
NEGLECTED = 1e-6  # m
NEAREST = 4.0  # m: what a hump's own form adds is gone long before
LATTICE_AT_ONCE = 2048  # nodes of a lattice at a time

Drawn = Callable[[np.random.Generator, int], FloatArray]
Form = Callable[
    [FloatArray, FloatArray, FloatArray], FloatArray
]  # covariance of places (n, 2), (m, 2), squares


def lasts(frame: GridFrame) -> bool:
    """Is a slab so large, and so long, that it is judged stretch by stretch?"""
    return frame.shape[0] * frame.shape[1] > LARGE and frame.size[0] > LONG


@dataclass(frozen=True, eq=False)
class Whole:
    """All the tiles of a slab at once: square (n, n) as of ``covariance``, noise (n, n) m2."""

    tiles: Tiles
    square: FloatArray
    noise: FloatArray

    @classmethod
    def of(cls, tiles: Tiles, level: Noise) -> Self:
        """level : of the noise."""
        square = squares(tiles.uv, tiles.uv, tiles.spread, tiles.spread)
        return cls(tiles, square, level.between(tiles, ALL, ALL))

    def beside(self, form: Form) -> Self:
        """With what ``form`` adds to the noise."""
        return replace(self, noise=self.noise + form(self.tiles.uv, self.tiles.uv, self.square))

    def drawn(self) -> Drawn:
        """(n, count) noise, m, by a generator and a count."""
        root = linalg.cholesky(self.noise + LEAST**2 * np.eye(len(self.noise)), lower=True)
        return lambda rng, count: root @ rng.standard_normal((len(root), count))

    def whiten(self, setting: Setting, table: FloatArray, y: FloatArray) -> Whitened:
        """table (n, m) columns and y (n,) heights, m, seen through a setting."""
        return whiten(setting, self.square, self.noise, table, y)

    def whiten_shapes(self, setting: Setting, columns: Columns, y: FloatArray) -> Whitened:
        """The same of columns at the tiles."""
        both = columns_at(columns, self.tiles, y)
        return whitened(covariance(setting, self.square, self.noise), both)

    def near(self, nodes: FloatArray) -> list[Near]:
        """All tiles for nodes (k, 2) u, v of a lattice, m, some nodes at a time."""
        firsts = range(0, len(nodes), LATTICE_AT_ONCE)
        parts = [np.arange(first, min(first + LATTICE_AT_ONCE, len(nodes))) for first in firsts]
        return [Near(some, ALL, np.empty(0)) for some in parts]


@dataclass(frozen=True, eq=False)
class Part:
    """A stretch: which tiles (k,) are its own, square (k, k) and noise (k, k) as of ``covariance`` among
    them, and before (k, j) with those of the stretch before; (k, 0) where it is the first."""

    own: IntArray
    square: FloatArray
    noise: FloatArray
    square_before: FloatArray
    noise_before: FloatArray


@dataclass(frozen=True, eq=False)
class Root:
    """L of K' = L L', by its inverse: own tiles of each stretch, lower (k, k) of what it keeps given the one
    before, back (j, k) how it follows from that."""

    own: tuple[IntArray, ...]
    lower: tuple[FloatArray, ...]
    back: tuple[FloatArray, ...]

    @classmethod
    def of(cls, own: Sequence[IntArray], parts: Sequence[tuple[FloatArray, FloatArray]]) -> Self:
        """parts : of each stretch its covariance (k, k), of which the lower triangle is read, and that with
        the one before (k, j)."""
        lower: list[FloatArray] = []
        back: list[FloatArray] = []
        before = np.empty((0, 0))
        for k, cross in parts:
            whole = linalg.cholesky(k, lower=True, check_finite=False)
            if cross.shape[1]:
                seen = linalg.solve_triangular(before, cross.T, lower=True, check_finite=False)
                back.append(linalg.solve_triangular(before, seen, lower=True, trans=1, check_finite=False))
                lower.append(linalg.cholesky(k - seen.T @ seen, lower=True, check_finite=False))
            else:
                back.append(np.empty((0, len(k))))
                lower.append(whole)
            before = whole
        return cls(tuple(own), tuple(lower), tuple(back))

    @property
    def log_det(self) -> float:
        """Of K'."""
        return 2 * float(sum(np.log(np.diag(lower)).sum() for lower in self.lower))

    def whiten(self, rows: FloatArray) -> None:
        """rows (n, c) become L^-1 of them."""
        for number in range(len(self.own) - 1, -1, -1):  # so that each finds the one before as it was
            some = rows[self.own[number]]
            if number:
                some -= self.back[number].T @ rows[self.own[number - 1]]
            rows[self.own[number]] = linalg.solve_triangular(
                self.lower[number], some, lower=True, overwrite_b=True, check_finite=False
            )

    def solve(self, rest: FloatArray) -> FloatArray:
        """(n, c) K'^-1 of rest (n, c)."""
        out = np.array(rest)
        self.whiten(out)
        for number, own in enumerate(self.own):
            out[own] = linalg.solve_triangular(
                self.lower[number], out[own], lower=True, trans=1, check_finite=False
            )
            if number:
                out[self.own[number - 1]] -= self.back[number] @ out[own]
        return out

    def coloured(self, white: FloatArray) -> FloatArray:
        """(n, c) L of white (n, c): of the covariance where that is standard normal."""
        out = np.empty_like(white)
        for number, own in enumerate(self.own):
            out[own] = self.lower[number] @ white[own]
            if number:
                out[own] += self.back[number].T @ out[self.own[number - 1]]
        return out


@dataclass(frozen=True, eq=False)
class InStretches(Whitened):
    """Seen through a setting stretch by stretch; ``root`` is empty, ``roots`` are in its place."""

    roots: Root

    def solve(self, rest: FloatArray) -> FloatArray:
        """As of ``Whitened``."""
        return self.roots.solve(rest)


@dataclass(frozen=True, eq=False)
class Stretches:
    """The tiles of a long lane in stretches along u; as ``split.Whole`` is for all of them at once."""

    tiles: Tiles
    level: Noise
    parts: tuple[Part, ...]

    @classmethod
    def of(cls, tiles: Tiles, level: Noise, least: float = STRETCH) -> Self:
        """least : m of a stretch."""
        u = tiles.uv[:, 0]
        low, high = float(u.min()), float(u.max())
        number = max(int((high - low) / least), 1)
        which = np.minimum(((u - low) / (high - low) * number).astype(np.int64), number - 1)
        own = [index for k in range(number) if len(index := np.flatnonzero(which == k))]
        parts, spread, before = [], tiles.spread, own[0][:0]
        for index in own:
            pairs = [squares(tiles.uv[index], tiles.uv[o], spread[index], spread[o]) for o in (index, before)]
            parts.append(Part(
                index, pairs[0], level.between(tiles, index, index), pairs[1],
                level.between(tiles, index, before),
            ))  # fmt: skip
            before = index
        return cls(tiles, level, tuple(parts))

    def beside(self, form: Form) -> Self:
        """With what ``form`` adds to the noise."""
        parts, uv, before = [], self.tiles.uv, self.parts[0].own[:0]
        for p in self.parts:
            parts.append(replace(
                p, noise=p.noise + form(uv[p.own], uv[p.own], p.square),
                noise_before=p.noise_before + form(uv[p.own], uv[before], p.square_before),
            ))  # fmt: skip
            before = p.own
        return replace(self, parts=tuple(parts))

    def single(self) -> Self:
        """With distances in single precision: correlations take a third of the time (``ROUNDED``)."""
        return replace(self, parts=tuple(
            replace(p, square=p.square.astype(np.float32), square_before=p.square_before.astype(np.float32))
            for p in self.parts
        ))  # fmt: skip

    def root(self, setting: Setting) -> Root:
        """Of the tiles' covariance through a setting."""
        return Root.of(self._own, [
            (covariance(setting, p.square, p.noise),
             covariance_between(setting, p.square_before, p.noise_before)) for p in self.parts
        ])  # fmt: skip

    def drawn(self) -> Drawn:
        """(n, count) noise, m, by a generator and a count."""
        some = [(p.noise + LEAST**2 * np.eye(len(p.own)), p.noise_before) for p in self.parts]
        root, n = Root.of(self._own, some), len(self.tiles)
        return lambda rng, count: root.coloured(rng.standard_normal((n, count)))

    @property
    def _own(self) -> list[IntArray]:
        return [p.own for p in self.parts]

    def whiten(self, setting: Setting, table: FloatArray, y: FloatArray) -> Whitened:
        """table (n, m) columns and y (n,) heights, m, seen through a setting."""
        return self._seen(setting, np.column_stack([table, y]))

    def whiten_shapes(self, setting: Setting, columns: Columns, y: FloatArray) -> Whitened:
        """The same of columns at the tiles."""
        return self._seen(setting, columns_at(columns, self.tiles, y))

    def likelihood(
        self, priors: FieldPriors, table: FloatArray, y: FloatArray, precision: FloatArray
    ) -> Callable[[FloatArray], float]:
        """Log of it, but for a constant, at standard normals z (4,) that ``priors`` makes a setting of, given
        the shapes of table (n, m) whose amplitudes have 1 / sd^2 ``precision`` (m,)."""

        def of(z: FloatArray) -> float:
            return log_evidence(self.whiten(priors.setting(z), table, y), slice(None), precision)

        return of

    def _seen(self, setting: Setting, both: FloatArray) -> Whitened:
        root = self.root(setting)
        root.whiten(both)
        w, v = both[:, :-1], both[:, -1]
        return InStretches(w, w.T @ v, float(v @ v), root.log_det, np.empty(0), root)

    def near(self, nodes: FloatArray) -> list[Near]:
        """Which tiles are near which of the nodes (k, 2) u, v of a lattice, m."""
        u, out = self.tiles.uv[:, 0], []
        which = np.searchsorted([u[p.own].max() for p in self.parts[:-1]], nodes[:, 0])
        for k in np.unique(which):
            mine = np.flatnonzero(which == k)
            low, high = nodes[mine, 0].min(), nodes[mine, 0].max()
            beyond = np.maximum(np.maximum(low - u, u - high), 0.0)
            order = np.argsort(beyond, kind="stable")
            out.append(Near(mine, order, beyond[order]))
        return out


@dataclass(frozen=True, eq=False)
class Near:
    """nodes (k,) of a lattice and the tiles (n,), the nearest first; beyond (n,) m how far each is from where
    the nodes are, along u; empty where all are taken."""

    nodes: IntArray
    tiles: IntArray | slice
    beyond: FloatArray

    def within(self, reach: float) -> IntArray | slice:
        """Tiles no farther than ``reach`` m."""
        if isinstance(self.tiles, slice):
            return self.tiles
        return self.tiles[: int(np.searchsorted(self.beyond, reach, side="right"))]


def reach_of(setting: Setting, solved: FloatArray) -> float:
    """m beyond which tiles together move no draw of the slab's waves by more than ``NEGLECTED``: by Hoelder
    at most the covariance there times the sum of the sizes of ``solved`` (n, d), 1/m."""
    most = setting.slab**2 * float(np.abs(solved).sum(axis=0).max(initial=0.0))
    share, x = NEGLECTED / max(most, NEGLECTED), 1.0
    for _ in range(50):  # (1 + x) exp(-x) = share; near no more than the 1e-12 that this leaves
        x = float(np.log((1 + x) / share))
    return max(x * setting.slab_length / HALF, NEAREST)
