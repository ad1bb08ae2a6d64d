"""Tiles a few centimetres wide: the lowest well-supported layer of points in each, and a robust plane
through its neighbours.

A tile under planting or beside a chair leg has ground and other things in one column; ghost points (light
that bounced twice) lie
below. The layer that counts is the lowest one that holds a fair share of what the densest layer holds.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.kernels import njit
from crestcut.base.parallel import share
from crestcut.terrain.ground.raster import Lattice, sort_into

SMALLEST_TILE = 0.05  # m
POINTS_A_TILE = 6  # wanted on average: tiles grow where a scan is thin
BAND = 0.03  # m, thickness of a layer: twice the usual noise of a phone each way
FAIR_SHARE = 0.34  # of the densest layer's points
STEEPEST = 0.45  # rise over run that ground may have here


@dataclass(frozen=True, eq=False)
class Tiles:
    """``side`` in lattice cells; points of tile t are ``order[start[t]:start[t + 1]]``; ``level`` (ny, nx)
    m, NaN where empty.

    ``width`` : of a tile, m.
    """

    side: int
    width: float
    start: IntArray
    order: NDArray[np.int32]
    level: FloatArray


def make_tiles(lattice: Lattice, placed: FloatArray) -> Tiles:
    """Sorts the placed points (n, 3) into tiles and finds each tile's layer."""
    side = max(1, round(SMALLEST_TILE / lattice.pitch))
    tiles = _sorted(lattice, placed, side)
    counts = np.diff(tiles.start)
    mean = counts[counts > 0].mean() if (counts > 0).any() else POINTS_A_TILE
    if mean < POINTS_A_TILE:
        tiles = _sorted(lattice, placed, min(4 * side, round(side * np.sqrt(POINTS_A_TILE / mean))))
    _lowest_layers(placed[:, 2].copy(), tiles.start, tiles.order, BAND, FAIR_SHARE, tiles.level.reshape(-1))
    return tiles


def _sorted(lattice: Lattice, placed: FloatArray, side: int) -> Tiles:
    ny, nx = (-(-n // side) for n in lattice.shape)
    start, order = sort_into(placed, side, ny, nx)
    return Tiles(side, side * lattice.pitch, start, order, np.full((ny, nx), np.nan))


@njit()
def _sort(h):  # type: ignore[no-untyped-def]
    """Sorts a few numbers in place (Shell 1959, Comm. ACM 2:30): the library sort compiles far longer."""
    gap = 1
    while gap < len(h):
        gap = 3 * gap + 1
    while gap > 0:
        for i in range(gap, len(h)):
            value, j = h[i], i
            while j >= gap and h[j - gap] > value:
                h[j] = h[j - gap]
                j -= gap
            h[j] = value
        gap //= 3


@njit()
def _lowest_layers(z, start, order, band, share, level):  # type: ignore[no-untyped-def]
    for t in range(len(start) - 1):
        n = start[t + 1] - start[t]
        if n == 0:
            continue
        h = np.empty(n)
        for p in range(n):
            h[p] = z[order[start[t] + p]]
        _sort(h)
        most, hi = 0, 0
        for lo in range(n):
            while hi < n and h[hi] <= h[lo] + band:
                hi += 1
            most = max(most, hi - lo)
        need, hi, first = max(1.0, share * most), 0, 0
        for lo in range(n):
            while hi < n and h[hi] <= h[lo] + band:
                hi += 1
            if hi - lo >= need:
                first = lo
                break
        # the layer begins at ``first``; its densest band starts within one band above
        best, at, top, hi, lo = 0, first, first + 1, first, first
        while lo < n and h[lo] <= h[first] + band:
            while hi < n and h[hi] <= h[lo] + band:
                hi += 1
            if hi - lo > best:
                best, at, top = hi - lo, lo, hi
            lo += 1
        total = 0.0
        for p in range(at, top):
            total += h[p]
        level[t] = total / (top - at)


def robust_planes(level: FloatArray, group: NDArray[np.int32], reach: int, cutoff: float) -> FloatArray:
    """(ny, nx, 3): height at the tile's middle and slope per tile along u and v, bisquare-weighted (Tukey),
    NaN where empty.

    Only tiles of the same ``group`` within ``reach`` count; residuals beyond ``cutoff`` m have no weight in
    the end.
    """
    fitted = np.full((*level.shape, 3), np.nan)
    share(lambda a, b: _planes(level, group, reach, cutoff, a, b, fitted), len(level))
    return fitted


@njit()
def _planes(level, group, reach, cutoff, j0, j1, fitted):  # type: ignore[no-untyped-def]
    """``robust_planes`` of rows j0..j1-1 of tiles."""
    ny, nx = level.shape
    for j in range(j0, j1):
        for i in range(nx):
            if np.isnan(level[j, i]) or group[j, i] < 0:
                continue
            a, b, c = level[j, i], 0.0, 0.0
            wide = 4.0 * cutoff
            for _ in range(6):
                s00, s01, s02, s11, s12, s22 = 1e-9, 0.0, 0.0, 0.02, 0.0, 0.02
                r0, r1, r2 = 1e-9 * a, 0.0, 0.0
                for y in range(max(-reach, -j), min(reach, ny - 1 - j) + 1):
                    for x in range(max(-reach, -i), min(reach, nx - 1 - i) + 1):
                        zz = level[j + y, i + x]
                        if np.isnan(zz) or group[j + y, i + x] != group[j, i]:
                            continue
                        e = (zz - a - b * x - c * y) / wide
                        if abs(e) >= 1.0:
                            continue
                        w = (1 - e * e) ** 2
                        s00 += w
                        s01 += w * x
                        s02 += w * y
                        s11 += w * x * x
                        s12 += w * x * y
                        s22 += w * y * y
                        r0 += w * zz
                        r1 += w * x * zz
                        r2 += w * y * zz
                p11, p12, p22 = s11 - s01 * s01 / s00, s12 - s01 * s02 / s00, s22 - s02 * s02 / s00
                q1, q2 = r1 - s01 * r0 / s00, r2 - s02 * r0 / s00
                det = p11 * p22 - p12 * p12
                b, c = (q1 * p22 - q2 * p12) / det, (q2 * p11 - q1 * p12) / det
                a = (r0 - b * s01 - c * s02) / s00
                wide = max(cutoff, 0.6 * wide)
            fitted[j, i, 0], fitted[j, i, 1], fitted[j, i, 2] = a, b, c


@njit()
def residuals(
    placed: FloatArray, start: IntArray, order: NDArray[np.int32], side: float, fitted: FloatArray
) -> FloatArray:
    """(n,) height of every placed point above its tile's plane, m; NaN outside and in tiles without one."""
    ny, nx = fitted.shape[:2]
    out = np.full(placed.shape[0], np.nan)
    for j in range(ny):
        for i in range(nx):
            t = j * nx + i
            for q in range(start[t], start[t + 1]):
                p = order[q]
                x = (placed[p, 0] + 0.5) / side - i - 0.5
                y = (placed[p, 1] + 0.5) / side - j - 0.5
                out[p] = placed[p, 2] - fitted[j, i, 0] - fitted[j, i, 1] * x - fitted[j, i, 2] * y
    return out


@njit()
def tile_spread(
    residual: FloatArray, keep: BoolArray, start: IntArray, order: NDArray[np.int32]
) -> FloatArray:
    """Per tile: number of kept points, their mean residual and mean squared residual (m, m2)."""
    out = np.zeros((len(start) - 1, 3))
    for t in range(len(start) - 1):
        for q in range(start[t], start[t + 1]):
            p = order[q]
            if keep[p]:
                out[t, 0] += 1
                out[t, 1] += residual[p]
                out[t, 2] += residual[p] ** 2
        if out[t, 0] > 0:
            out[t, 1] /= out[t, 0]
            out[t, 2] /= out[t, 0]
    return out
