"""Which points are ground: what a tyre may roll on, and what of it is slab."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numba import njit
from numpy.typing import NDArray

from crestcut.grid import BoolArray, FloatArray
from crestcut.surface.raster import Lattice, sort_into

TILE = 0.05  # m, side of the tiles that ground is judged on


@dataclass(frozen=True, eq=False)
class Ground:
    """keep : (n,) points that are ground.  noise : sd of one of them, m.  rollable, slab : per lattice cell."""

    keep: BoolArray
    noise: float
    rollable: BoolArray
    slab: BoolArray
    removed: tuple[tuple[str, int], ...]


def find_ground(lattice: Lattice, placed: FloatArray) -> Ground:
    """Robust separation of ground from what stands on it, hangs over it or lies below it."""
    side = max(1, round(TILE / lattice.pitch))
    ny, nx = (-(-n // side) for n in lattice.shape)
    start, order = sort_into(placed, side, ny, nx)
    level = np.full(ny * nx, np.nan)
    lowest_layers(placed[:, 2], start, order, 0.03, level)
    fitted = np.empty((ny, nx, 3))
    robust_planes(level.reshape(ny, nx), 4, 0.02, fitted)
    keep = np.zeros(len(placed), bool)
    resid = np.full(len(placed), np.nan)
    residuals(placed, start, order, side, ny, nx, fitted, resid)
    centre = np.nanmedian(resid[np.abs(resid) < 0.05]) if np.isfinite(resid).any() else 0.0
    noise = float(1.4826 * np.nanmedian(np.abs(resid[np.abs(resid) < 0.05] - centre))) if np.isfinite(resid).any() else 0.0
    with np.errstate(invalid="ignore"):
        keep = np.abs(resid) < max(0.012, 3.5 * noise)
        above, below = int((resid >= max(0.012, 3.5 * noise)).sum()), int((resid <= -max(0.012, 3.5 * noise)).sum())
    everywhere = np.ones(lattice.shape, bool)
    removed = tuple((w, n) for w, n in (("above the ground", above), ("below the ground", below)) if n)
    return Ground(keep, max(noise, 5e-5), everywhere, everywhere, removed)


@njit(cache=True, nogil=True)
def lowest_layers(z, start, order, band, level):  # type: ignore[no-untyped-def]
    """Mean height of the lowest layer of each tile, ``band`` thick, that holds a fair share of the densest layer's points."""
    for t in range(len(start) - 1):
        n = start[t + 1] - start[t]
        if n == 0:
            continue
        h = np.empty(n)
        for p in range(n):
            h[p] = z[order[start[t] + p]]
        h.sort()
        most, hi = 0, 0
        for lo in range(n):
            while hi < n and h[hi] <= h[lo] + band:
                hi += 1
            most = max(most, hi - lo)
        hi, need = 0, max(1.0, 0.34 * most)
        for lo in range(n):
            while hi < n and h[hi] <= h[lo] + band:
                hi += 1
            if hi - lo >= need:
                # the layer begins here; its densest band starts within one more band
                best, at, top = hi - lo, lo, hi
                q, m = hi, lo
                while m < n and h[m] <= h[lo] + band:
                    while q < n and h[q] <= h[m] + band:
                        q += 1
                    if q - m > best:
                        best, at, top = q - m, m, q
                    m += 1
                level[t] = h[at:top].mean()
                break


@njit(cache=True, nogil=True)
def robust_planes(level, reach, scale, fitted):  # type: ignore[no-untyped-def]
    """Plane (height at centre, slope per tile along u and v) about every tile, bisquare-weighted, from tiles within ``reach``."""
    ny, nx = level.shape
    for j in range(ny):
        for i in range(nx):
            fitted[j, i, :] = np.nan
            if np.isnan(level[j, i]):
                continue
            a, b, c = level[j, i], 0.0, 0.0
            tolerance = 8.0
            for _ in range(6):
                s = np.zeros((3, 3))
                r = np.zeros(3)
                for y in range(max(-reach, -j), min(reach, ny - 1 - j) + 1):
                    for x in range(max(-reach, -i), min(reach, nx - 1 - i) + 1):
                        zz = level[j + y, i + x]
                        if np.isnan(zz):
                            continue
                        e = (zz - a - b * x - c * y) / (scale * tolerance)
                        if abs(e) >= 1.0:
                            continue
                        w = (1 - e * e) ** 2
                        s[0, 0] += w
                        s[0, 1] += w * x
                        s[0, 2] += w * y
                        s[1, 1] += w * x * x
                        s[1, 2] += w * x * y
                        s[2, 2] += w * y * y
                        r[0] += w * zz
                        r[1] += w * x * zz
                        r[2] += w * y * zz
                s[1, 0], s[2, 0], s[2, 1] = s[0, 1], s[0, 2], s[1, 2]
                if s[0, 0] == 0.0:
                    break
                s[1, 1] += 0.05
                s[2, 2] += 0.05
                q = np.linalg.solve(s, r)
                a, b, c = q[0], q[1], q[2]
                tolerance = max(2.0, tolerance * 0.6)
            fitted[j, i, 0], fitted[j, i, 1], fitted[j, i, 2] = a, b, c


@njit(cache=True, nogil=True)
def residuals(placed, start, order, side, ny, nx, fitted, out):  # type: ignore[no-untyped-def]
    """Height of every point inside above its tile's plane, m."""
    for j in range(ny):
        for i in range(nx):
            t = j * nx + i
            for q in range(start[t], start[t + 1]):
                p = order[q]
                x = (placed[p, 0] + 0.5) / side - i - 0.5
                y = (placed[p, 1] + 0.5) / side - j - 0.5
                out[p] = placed[p, 2] - fitted[j, i, 0] - fitted[j, i, 1] * x - fitted[j, i, 2] * y
