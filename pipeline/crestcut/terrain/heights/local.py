"""Local quadratics at every lattice cell from windowed sums: z = b0 + b1 x + b2 y + b3 x^2 + b4 x y + b5
y^2, x, y in half windows.

The window is a product of two biweights, so its moment sums are separable: cost per cell grows with the
window's side, not its
area. Weighted least squares as in Cleveland & Devlin (1988), J. Am. Stat. Assoc. 83:596, with a weak prior
that holds bending
and slope at rims and in near-empty windows.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.kernels import njit
from crestcut.base.parallel import share

BEND = 0.10  # prior sd of a window's bend (b3, b4, b5) as a share of its half side: that of a kink of 20 %
TILT = 0.5  # prior sd of a slope
# m along the line: a longer raster is fitted window by window, each with so much beside it that all that a
# cell's height hangs on lies within: the widest half window (0.32), the sparse fits beside it (0.08), from
# where doubt spreads (0.17) and the blur (0.03)
LONG, WINDOW, REACH = 30.0, 10.0, 0.75
FEW_ROWS = 32  # of a raster, as many as are worth a thread


@dataclass(frozen=True, eq=False)
class CellMeans:
    """What heights are fitted to. count, z, mask (rows, columns) : points of each cell, their mean height at
    its centre, m, and where a height is wanted.  pitch : of the cells, m.  noise : sd of one point, m."""

    count: FloatArray
    z: FloatArray
    mask: BoolArray
    pitch: float
    noise: float


def windows(means: CellMeans, every: int) -> Iterator[tuple[slice, slice, CellMeans]]:
    """The raster from end to end, of one over ``LONG`` in windows, so that what fitting takes does not grow
    with it: the columns that are fitted, where these lie in the window, and the window, each beginning at a
    multiple of ``every`` columns."""
    columns = means.mask.shape[1]
    if columns * means.pitch <= LONG:
        yield slice(0, columns), slice(0, columns), means
        return
    reach, step = (math.ceil(m / means.pitch / every) * every for m in (REACH, WINDOW))
    for first in range(0, columns, step):
        left, stop = max(first - reach, 0), min(first + step, columns)
        some = slice(left, stop + reach)
        part = replace(
            means, count=np.ascontiguousarray(means.count[:, some]),
            z=np.ascontiguousarray(means.z[:, some]), mask=np.ascontiguousarray(means.mask[:, some]),
        )  # fmt: skip
        yield slice(first, stop), slice(first - left, stop - left), part


class Local(NamedTuple):
    """Fits of one half window (in cells): ``z`` (m), ``variance`` of z for unit variance of one point, and
    ``beta`` (rows, columns, 5): b1..b5 per half window, (1, 1, 5) unless asked for. NaN outside the mask."""

    half: int
    z: FloatArray
    variance: FloatArray
    beta: FloatArray

    @classmethod
    def empty(cls, half: int, shape: tuple[int, ...], beta: bool) -> Local:
        """Yet to be fitted."""
        slopes = np.full((*shape, 5) if beta else (1, 1, 5), np.nan)
        return cls(half, np.full(shape, np.nan), np.full(shape, np.nan), slopes)


class Window(NamedTuple):
    """weights : (2 half - 1,) of whole cells, and what inverse sums are multiplied by to be a variance.
    tilt, bend : weight of the priors.  every : fits are made at every so many cells."""

    weights: FloatArray
    half: int
    tilt: float
    bend: float
    factor: float
    every: int


@lru_cache(maxsize=64)
def biweight(half: int) -> tuple[FloatArray, float]:
    """(2 half - 1,) weights over whole cells inside a half window, and what K-weighted inverse sums must be
    multiplied by to be a variance."""
    t = np.arange(-half + 1, half) / half
    k = (1 - t**2) ** 2
    x, y = np.meshgrid(t, t)
    basis = np.stack([np.ones_like(x), x, y, x * x, x * y, y * y]).reshape(6, -1)
    weight = np.outer(k, k).ravel()
    inverse = np.linalg.pinv(basis * weight @ basis.T)
    sandwich = inverse @ (basis * weight**2 @ basis.T) @ inverse
    return k, float(sandwich[0, 0] / inverse[0, 0])


def fit_local(means: CellMeans, half: int, beta: bool = False, every: int = 1) -> Local:
    """Quadratic at every cell of the mask, in a half window of ``half`` cells (at least 2).

    ``every`` : fits are made at every so many cells and carried between them by their own quadratics,
    blended: for windows many times wider than that nothing is lost.
    """
    if every > 1:
        sparse = _fit(replace(means, mask=_every(means.mask, every)), half, True, every)
        return _between(sparse, means.mask, every, beta)
    return _fit(means, half, beta, 1)


def _every(mask: BoolArray, every: int) -> BoolArray:
    """Cells of the sparse lattice that any cell of the mask needs."""
    ny, nx = mask.shape
    out = np.zeros_like(mask)
    padded = np.pad(mask, ((0, -ny % every), (0, -nx % every)))
    block = padded.reshape(padded.shape[0] // every, every, -1, every).any(axis=(1, 3))
    wide = np.pad(block, 1)
    need = wide[1:-1, 1:-1] | wide[:-2, 1:-1] | wide[1:-1, :-2] | wide[:-2, :-2]
    out[::every, ::every] = need[: len(range(0, ny, every)), : len(range(0, nx, every))]
    return out


def _between(fit: Local, mask: BoolArray, every: int, beta: bool) -> Local:
    out = Local.empty(fit.half, mask.shape, beta)
    share(lambda a, b: _carry(a, b, fit, mask, every, beta, out), len(mask), FEW_ROWS)
    return out


def _fit(means: CellMeans, half: int, beta: bool, every: int) -> Local:
    weights, factor = biweight(half)
    out, side = Local.empty(half, means.mask.shape, beta), half * means.pitch
    tilt, bend = ((means.noise / (prior * side)) ** 2 + 1e-9 for prior in (TILT, BEND))
    window = Window(weights, half, float(tilt), float(bend), factor, every)
    count, z, mask = means.count, means.z, means.mask
    share(lambda a, b: _fit_rows(count, z, mask, window, a, b, beta, out), len(mask), FEW_ROWS)
    return out


@njit(fastmath=True)
def _fit_rows(
    count: FloatArray, z: FloatArray, mask: BoolArray, window: Window, first: int, stop: int, want: bool,
    out: Local,
) -> None:  # fmt: skip
    k, half, every = window.weights, window.half, window.every
    ny, nx = count.shape
    column = np.empty((8, nx))  # sums along v: count with y^0..y^4, count z with y^0..y^2
    sums = np.empty((21, nx))
    a = np.empty((6, 6))
    b = np.empty(6)
    e = np.empty(6)
    for j in range(first, stop):
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
            _add(sums, column, w, x, -(-lo // every) * every, hi, every, s)
        for i in range(nx):
            if not mask[j, i] or sums[0, i] <= 0.0:
                continue
            _solve(sums[:, i], window, a, b, e)
            out.z[j, i] = b[0]
            out.variance[j, i] = window.factor * e[0]
            if want:
                for m in range(5):
                    out.beta[j, i, m] = b[m + 1]


@njit()
def _carry(first: int, stop: int, fit: Local, mask: BoolArray, every: int, want: bool, out: Local) -> None:
    """Heights between the sparse fits: each of the four around speaks for its own quadratic, weighted
    bilinearly."""
    half, z, variance, beta = fit
    ny, nx = mask.shape
    for j in range(first, stop):
        for i in range(nx):
            if not mask[j, i]:
                continue
            j0, i0 = j // every * every, i // every * every
            total, height, var = 0.0, 0.0, 0.0
            s0, s1, s2, s3, s4 = 0.0, 0.0, 0.0, 0.0, 0.0
            for jj in (j0, j0 + every):
                for ii in (i0, i0 + every):
                    w = (1 - abs(j - jj) / every) * (1 - abs(i - ii) / every)
                    if w <= 0.0 or jj >= ny or ii >= nx or np.isnan(z[jj, ii]):
                        continue
                    x, y = (i - ii) / half, (j - jj) / half
                    b = beta[jj, ii]
                    total += w
                    height += w * (
                        z[jj, ii] + b[0] * x + b[1] * y + b[2] * x * x + b[3] * x * y + b[4] * y * y
                    )
                    var += w * variance[jj, ii]
                    s0 += w * (b[0] + 2 * b[2] * x + b[3] * y)
                    s1 += w * (b[1] + 2 * b[4] * y + b[3] * x)
                    s2 += w * b[2]
                    s3 += w * b[3]
                    s4 += w * b[4]
            if total > 0.0:
                out.z[j, i], out.variance[j, i] = height / total, var / total
                if want:
                    b = out.beta[j, i]
                    b[0], b[1], b[2] = s0 / total, s1 / total, s2 / total
                    b[3], b[4] = s3 / total, s4 / total


@njit(fastmath=True, forceinline=True)
def _add(
    sums: FloatArray, column: FloatArray, w: float, x: float, lo: int, hi: int, every: int, s: int
) -> None:
    """Adds one column of the window to the 21 sums: x^p y^q with p + q <= 4, then z x^p y^q with p + q <=
    2."""
    x1, x2, x3, x4 = w * x, w * x * x, w * x**3, w * x**4
    for i in range(lo, hi, every):
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


@njit(fastmath=True, forceinline=True)
def _solve(s: FloatArray, window: Window, a: FloatArray, b: FloatArray, e: FloatArray) -> None:
    """b := solution, e := first column of the inverse, by Cholesky of the 6 x 6 normal matrix."""
    for r in range(6):
        for c in range(r + 1):
            a[r, c] = s[_ENTRY[r, c]]
        a[r, r] += 0.0 if r == 0 else (window.tilt if r < 3 else window.bend)
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
