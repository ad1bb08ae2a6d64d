"""Two passes over one slab, one of which has more points here and the other there.

A height is a mean over the points that fell there, so its error is w e1 + (1 - w) e2, w the share of the
first pass: half of e1 + e2, and (w - 1/2) (e1 - e2) on top. The passes differ by centimetres in places, and w
changes within a hand's breadth, where a hand swayed or a pass ends: so the second part is rough where both
errors are smooth, and makes humps and hollows of the slab. But e1 - e2 is what the passes differ by, in which
the slab is not: it is known where both saw it, and near there.
"""

from __future__ import annotations

import numpy as np
from scipy import linalg, ndimage

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.terrain.error.covariance import matern32
from crestcut.terrain.error.fit import PassFit

SQUARE = 4  # cells on a side of the squares over which differences are averaged
EVEN = 5  # points of both passes in such a square
PIECE, BESIDE = 8.0, 2.0  # m along the grid that are reckoned at once, and what is looked at beyond
FURTHER = 2  # cells between the places where the difference is reckoned; linear between


def unevenness(
    frame: GridFrame, first: IntArray, count: FloatArray, residual: FloatArray, cell: float, fit: PassFit
) -> HeightGrid | None:
    """By how much heights are too high since one of two passes has more points there than the other, m.

    frame : of the heights.  first (2,) : column and row of the first cell, ``cell`` m wide, on its axes.
    count, residual (2, rows, columns) : points of each pass, and the sum of their heights above the fitted
    ones, m.  fit : of one pass.  None where nowhere both saw enough.

    e1 - e2 is kriged from its means over squares, a Gaussian field of twice one pass's covariance about their
    median (simple kriging: Cressie, Statistics for Spatial Data, 1993, section 3.2): passes also lie one
    above the other.
    """
    counts, sums = (_squares(a) for a in (count, residual))
    both = (counts >= EVEN).all(axis=0)
    if not both.any():
        return None
    j, i = np.nonzero(both)
    at = SQUARE * cell * (np.column_stack([i, j]) + 0.5)
    n1, n2 = counts[:, both]
    seen = sums[0][both] / n1 - sums[1][both] / n2
    # a patch is narrower than a square: of its variance as much is left as there are patches in it
    noise = 2 * fit.patch**2 / SQUARE + fit.white**2 * (1 / n1 + 1 / n2)
    rows, columns = count.shape[1:]
    u = np.arange(0.0, columns + FURTHER, FURTHER)
    v = np.arange(0.0, rows + FURTHER, FURTHER)
    coarse = np.zeros((len(v), len(u)))
    own, level = 2 * fit.warp**2, float(np.median(seen))
    for low in np.arange(0.0, columns * cell, PIECE):
        mine = np.flatnonzero((u * cell >= low) & (u * cell < low + PIECE))
        near = (at[:, 0] > low - BESIDE) & (at[:, 0] < low + PIECE + BESIDE)
        places = np.stack(np.meshgrid(u[mine] + 0.5, v + 0.5), axis=-1).reshape(-1, 2) * cell
        found = _kriged(at[near], seen[near] - level, noise[near], own, fit.warp_length, places)
        coarse[:, mine] = level + found.reshape(len(v), -1)
    between = np.mgrid[0:rows, 0:columns] / FURTHER
    difference = ndimage.map_coordinates(coarse, between, order=1)
    smooth = ndimage.gaussian_filter(count, (0, 1, 1))  # about as wide as what one height is fitted to
    share = smooth[0] / np.maximum(smooth.sum(axis=0), 1e-9)
    share[smooth.sum(axis=0) < 1e-6] = 0.5
    origin = frame.to_site((first + 0.5) * cell)
    where = GridFrame((float(origin[0]), float(origin[1])), frame.angle, cell, (rows, columns))
    return HeightGrid(where, (share - 0.5) * difference)


def evened(height: HeightGrid, uneven: HeightGrid) -> HeightGrid:
    """``height`` less ``uneven``, which lies on the same axes: linear between, beyond its edge as at it."""
    rows, columns = height.frame.shape
    frame = uneven.frame
    start = frame.to_grid(np.asarray(height.frame.origin)) / frame.cell
    step = height.frame.cell / frame.cell
    at = [start[1] + step * np.arange(rows), start[0] + step * np.arange(columns)]
    too_high = ndimage.map_coordinates(
        uneven.values, np.meshgrid(*at, indexing="ij"), order=1, mode="nearest"
    )
    return height.like(height.values - too_high)


def _squares(cells: FloatArray) -> FloatArray:
    """(2, rows, columns) sums over squares of cells."""
    passes, rows, columns = cells.shape
    down, right = (-n % SQUARE for n in (rows, columns))
    padded = np.pad(cells, ((0, 0), (0, down), (0, right)))
    shape = (passes, (rows + down) // SQUARE, SQUARE, (columns + right) // SQUARE, SQUARE)
    return np.asarray(padded.reshape(shape).sum(axis=(2, 4)))


def _kriged(
    at: FloatArray, seen: FloatArray, noise: FloatArray, own: float, half_at: float, places: FloatArray
) -> FloatArray:
    """(m,) simple kriging at places (m, 2) from seen (n,) with noise (n,) m2, at (n, 2); own : variance."""
    if not len(at):
        return np.zeros(len(places))
    apart = np.hypot(*(at[:, None] - at[None]).transpose(2, 0, 1))
    weight = linalg.solve(own * matern32(apart, half_at) + np.diag(noise), seen, assume_a="pos")
    away = np.hypot(*(places[:, None] - at[None]).transpose(2, 0, 1))
    return np.asarray(own * matern32(away, half_at) @ weight)
