"""Local quadratics at every lattice cell from windowed sums: z = b0 + b1 x + b2 y + b3 x^2 + b4 x y + b5 y^2, x, y in half windows.

The window is a product of two biweights, so its moment sums are separable: cost per cell grows with the window's side, not its
area. Weighted least squares as in Cleveland & Devlin (1988), J. Am. Stat. Assoc. 83:596, with a weak prior that holds bending
and slope at rims and in near-empty windows.
"""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numba import njit
from numpy.typing import NDArray

from crestcut.grid import BoolArray, FloatArray

BEND = 0.10  # prior sd of a window's bend (b3, b4, b5) as a share of its half side: that of a kink of 20 %
TILT = 0.5  # prior sd of a slope
WORKERS = 2


@dataclass(frozen=True, eq=False)
class Local:
    """Fits of one half window (in cells): ``z`` (m), ``variance`` of z for unit variance of one point, and ``beta`` (rows, columns, 5).

    ``beta`` holds b1..b5 per half window, None unless asked for. NaN outside the mask.
    """

    half: int
    z: FloatArray
    variance: FloatArray
    beta: FloatArray | None


@lru_cache(maxsize=64)
def biweight(half: int) -> tuple[FloatArray, float]:
    """(2 half - 1,) weights over whole cells inside a half window, and what K-weighted inverse sums must be multiplied by to be a variance."""
    t = np.arange(-half + 1, half) / half
    k = (1 - t**2) ** 2
    x, y = np.meshgrid(t, t)
    basis = np.stack([np.ones_like(x), x, y, x * x, x * y, y * y]).reshape(6, -1)
    weight = np.outer(k, k).ravel()
    inverse = np.linalg.pinv(basis * weight @ basis.T)
    sandwich = inverse @ (basis * weight**2 @ basis.T) @ inverse
    return k, float(sandwich[0, 0] / inverse[0, 0])


def fit_local(
    count: FloatArray, z: FloatArray, mask: BoolArray, half: int, pitch: float, noise: float, beta: bool = False
) -> Local:
    """Quadratic at every cell of ``mask`` from cell means ``z`` (m, at cell centres) weighted with ``count``.

    ``half`` : half window in cells (at least 2); ``noise`` : sd of one point, m, which sets the weak priors.
    """
    weights, factor = biweight(half)
    ny, nx = count.shape
    out = np.full((ny, nx), np.nan)
    variance = np.full((ny, nx), np.nan)
    slopes = np.full((ny, nx, 5) if beta else (1, 1, 5), np.nan)
    side = half * pitch
    ridge = np.array([(noise / (TILT * side)) ** 2, (noise / (BEND * side)) ** 2]) + 1e-9
    edges = np.linspace(0, ny, 2 * WORKERS + 1).astype(int)
    with ThreadPoolExecutor(WORKERS) as pool:
        jobs = [
            pool.submit(_fit_rows, count, z, mask, weights, half, ridge, factor, a, b, beta, out, variance, slopes)
            for a, b in zip(edges[:-1], edges[1:], strict=True)
        ]
        for job in jobs:
            job.result()
    return Local(half, out, variance, slopes if beta else None)


@njit(cache=True, nogil=True, fastmath=True)
def _fit_rows(count, z, mask, k, half, ridge, factor, j0, j1, want, out, variance, slopes):  # type: ignore[no-untyped-def]
    ny, nx = count.shape
    column = np.empty((8, nx))  # sums along v: count with y^0..y^4, count z with y^0..y^2
    sums = np.empty((21, nx))
    a = np.empty((6, 6))
    b = np.empty(6)
    e = np.empty(6)
    for j in range(j0, j1):
        wanted = False
        for i in range(nx):
            if mask[j, i]:
                wanted = True
                break
        if not wanted:
            continue
        column[:] = 0.0
        for s in range(-half + 1, half):
            jj = j + s
            if jj < 0 or jj >= ny:
                continue
            y = s / half
            w0 = k[s + half - 1]
            w1 = w0 * y
            w2 = w1 * y
            w3 = w2 * y
            w4 = w3 * y
            for i in range(nx):
                c = count[jj, i]
                cz = c * z[jj, i]
                column[0, i] += w0 * c
                column[1, i] += w1 * c
                column[2, i] += w2 * c
                column[3, i] += w3 * c
                column[4, i] += w4 * c
                column[5, i] += w0 * cz
                column[6, i] += w1 * cz
                column[7, i] += w2 * cz
        sums[:] = 0.0
        for s in range(-half + 1, half):
            x = s / half
            w = k[s + half - 1]
            lo, hi = max(0, -s), min(nx, nx - s)
            _add(sums, column, w, x, lo, hi, s)
        for i in range(nx):
            if not mask[j, i] or sums[0, i] <= 0.0:
                continue
            _solve(sums[:, i], ridge, a, b, e)
            out[j, i] = b[0]
            variance[j, i] = factor * e[0]
            if want:
                for m in range(5):
                    slopes[j, i, m] = b[m + 1]


@njit(cache=True, nogil=True, fastmath=True)
def _add(sums, column, w, x, lo, hi, s):  # type: ignore[no-untyped-def]
    """Adds one column of the window to the 21 sums: x^p y^q with p + q <= 4, then z x^p y^q with p + q <= 2."""
    x1, x2, x3, x4 = w * x, w * x * x, w * x**3, w * x**4
    for i in range(lo, hi):
        c0, c1, c2 = column[0, i + s], column[1, i + s], column[2, i + s]
        c3, c4 = column[3, i + s], column[4, i + s]
        d0, d1, d2 = column[5, i + s], column[6, i + s], column[7, i + s]
        sums[0, i] += w * c0
        sums[1, i] += x1 * c0
        sums[2, i] += w * c1
        sums[3, i] += x2 * c0
        sums[4, i] += x1 * c1
        sums[5, i] += w * c2
        sums[6, i] += x3 * c0
        sums[7, i] += x2 * c1
        sums[8, i] += x1 * c2
        sums[9, i] += w * c3
        sums[10, i] += x4 * c0
        sums[11, i] += x3 * c1
        sums[12, i] += x2 * c2
        sums[13, i] += x1 * c3
        sums[14, i] += w * c4
        sums[15, i] += w * d0
        sums[16, i] += x1 * d0
        sums[17, i] += w * d1
        sums[18, i] += x2 * d0
        sums[19, i] += x1 * d1
        sums[20, i] += w * d2


_ENTRY: NDArray[np.int64] = np.array(
    [
        [0, 1, 2, 3, 4, 5],
        [1, 3, 4, 6, 7, 8],
        [2, 4, 5, 7, 8, 9],
        [3, 6, 7, 10, 11, 12],
        [4, 7, 8, 11, 12, 13],
        [5, 8, 9, 12, 13, 14],
    ]
)


@njit(cache=True, nogil=True, fastmath=True)
def _solve(s, ridge, a, b, e):  # type: ignore[no-untyped-def]
    """b := solution, e := first column of the inverse, by Cholesky of the 6 x 6 normal matrix."""
    for r in range(6):
        for c in range(r + 1):
            a[r, c] = s[_ENTRY[r, c]]
        a[r, r] += 0.0 if r == 0 else (ridge[0] if r < 3 else ridge[1])
        b[r] = s[15 + r]
        e[r] = 0.0
    e[0] = 1.0
    for c in range(6):
        for r in range(c, 6):
            v = a[r, c]
            for m in range(c):
                v -= a[r, m] * a[c, m]
            a[r, c] = math.sqrt(max(v, 1e-15)) if r == c else v / a[c, c]
    for r in range(6):
        for m in range(r):
            b[r] -= a[r, m] * b[m]
            e[r] -= a[r, m] * e[m]
        b[r] /= a[r, r]
        e[r] /= a[r, r]
    for r in range(5, -1, -1):
        for m in range(r + 1, 6):
            b[r] -= a[m, r] * b[m]
            e[r] -= a[m, r] * e[m]
        b[r] /= a[r, r]
        e[r] /= a[r, r]
