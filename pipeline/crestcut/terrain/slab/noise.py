"""What of the tiles' means neither the slab's waves nor the scan's warp is: patch and white noise."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Self

import numpy as np
from scipy import special

from crestcut.base.grid import FloatArray, HeightGrid, IntArray
from crestcut.terrain.error.covariance import HALF
from crestcut.terrain.slab.averages import Tiles
from crestcut.terrain.slab.split import matern_of_square, squares

SHARED = 0.06  # m: side of the square whose points make one fitted height
MOST_WITHIN = 10  # nodes on a tile's side that are enough to tell what it shows
MIXED, FADED = 8, 8.0  # Gaussians that make a Matern-3/2; its half lengths after which nothing is left of it
ALL = slice(None)


def matern_of_means(square: FloatArray, blur: FloatArray, half_at: float) -> FloatArray:
    """Correlation of a Matern-3/2 field's means over tiles that may be wider than its length: middles apart
    by the root of ``square`` m2, ``blur`` m2 the sum of both tiles' spread along an axis.

    The field is a mixture of Gaussians: (1 + x) exp(-x) is the mean of exp(-x^2 / (4 u)) over u ~ Gamma(3/2)
    (from its spectral density, Rasmussen & Williams, equation 4.15); a Gaussian of variance t averaged over
    spreads that add up to b is t / (t + b) exp(-r^2 / (2 (t + b))) in the plane. Against means over squares
    it is right to 0.02.
    """
    u, weight = special.roots_genlaguerre(MIXED, 0.5)
    out = np.zeros(np.broadcast_shapes(square.shape, blur.shape))
    # most pairs of a slab's tiles are too far apart to share any of so short a field
    near = np.broadcast_to(square, out.shape) < (FADED * half_at) ** 2 + 12 * blur
    r2, b = np.broadcast_to(square, out.shape)[near], np.broadcast_to(blur, out.shape)[near]
    for t, w in zip(2 * u * (half_at / HALF) ** 2, weight / weight.sum(), strict=True):
        out[near] += w * t / (t + b) * np.exp(-r2 / (2 * (t + b)))
    return out


@dataclass(frozen=True, eq=False)
class Noise:
    """What of the tiles' means neither field is. own : variance of patch at a node, m2, its covariance one
    half at ``half_at`` m; white : of a node, m2; of_tile (n,) what is left of it in a tile's mean."""

    own: float
    half_at: float
    white: float
    of_tile: FloatArray

    @classmethod
    def of(cls, tiles: Tiles, standard_error: HeightGrid, patch: float, patch_length: float) -> Self:
        """What the heights show within tiles bounds it: an exact scan has no patch, whoever made it."""
        known = standard_error.values
        se2 = float(np.nanmedian(known**2)) if np.isfinite(known).any() else 0.0
        side, per = float(np.median(tiles.side)), int(np.sqrt(np.median(tiles.nodes)))
        own = float(patch**2)
        if per > 1:
            within, free = _within(side, min(per, MOST_WITHIN), 0.5 * patch_length)
            # median of a mean square of so many over its mean (Wilson & Hilferty, PNAS 17, 1931)
            middle = (1 - 2 / (9 * free)) ** 3
            own = min(own, max(float(np.median(tiles.fine)) / middle - 0.5 * se2, 0.0) / within)
        each = _over(tiles, known**2, standard_error.frame.cell, se2)
        return cls(own, 0.5 * patch_length, se2, each / (1 + (tiles.side / SHARED) ** 2))

    def taken(self, some: IntArray | slice) -> Self:
        """Of some of the tiles."""
        return replace(self, of_tile=self.of_tile[some])

    @property
    def sd(self) -> float:
        """Of both at a node, m."""
        return float(np.sqrt(self.own + self.white))

    def between(self, tiles: Tiles, a: IntArray | slice, b: IntArray | slice) -> FloatArray:
        """Covariance of the means of tiles a and b, m2; white noise where both are the same."""
        one, other = tiles.uv[a], tiles.uv[b]
        apart = squares(one, other, np.zeros(len(one)), np.zeros(len(other)))
        blur = tiles.spread[a][:, None] + tiles.spread[b][None, :]
        out = self.own * matern_of_means(apart, blur, self.half_at)
        if a is b:
            out.flat[:: len(out) + 1] += self.of_tile[a]
        return out


def noise_of(
    tiles: Tiles, standard_error: HeightGrid, patch: float, patch_length: float
) -> tuple[FloatArray, float]:
    """(n, n) covariance of the tiles' means by patch and white noise, m2, and the sd of both at a node, m."""
    noise = Noise.of(tiles, standard_error, patch, patch_length)
    return noise.between(tiles, ALL, ALL), noise.sd


def _over(tiles: Tiles, values: FloatArray, cell: float, otherwise: float) -> FloatArray:
    """(n,) mean of what is known of values (ny, nx) at nodes in each tile: at the edge of a scan, and where
    it is thin, heights are worse than elsewhere, and a step would be made of that."""
    known = np.isfinite(values)
    rows, columns = values.shape
    sums = np.zeros((2, rows + 1, columns + 1))
    sums[:, 1:, 1:] = np.where(known, values, 0.0), known
    sums = sums.cumsum(axis=1).cumsum(axis=2)
    per = np.rint(tiles.side / cell).astype(np.int64)[:, None]  # the block of nodes that holds its place
    first = np.floor((tiles.uv / cell + 0.5) / per + 1e-9).astype(np.int64) * per
    i0, j0 = first.T
    i1, j1 = np.minimum(first + per, (columns, rows)).T
    total, count = sums[:, j1, i1] - sums[:, j0, i1] - sums[:, j1, i0] + sums[:, j0, i0]
    return np.asarray(np.where(count > 0, total / np.maximum(count, 1), otherwise))


def _within(side: float, per: int, half_at: float) -> tuple[float, float]:
    """What share of a patch's variance its nodes, ``per`` by ``per`` in a tile of ``side`` m, show about a
    plane through them, and how many free ones that mean square is worth."""
    at = (np.arange(per) + 0.5) * side / per
    places = np.stack(np.meshgrid(at, at), axis=-1).reshape(-1, 2)
    plane = np.linalg.qr(np.column_stack([np.ones(len(places)), places]))[0]
    none = np.zeros(len(places))
    away = np.eye(len(places)) - plane @ plane.T
    rest = away @ matern_of_square(squares(places, places, none, none), half_at) @ away
    return float(np.trace(rest)) / (len(places) - 3), float(np.trace(rest) ** 2 / (rest**2).sum())
