"""One window of the slab fitted with a hinge or a step, in the knot's own axes: n across the break, l along
it, metres.

hinge:  z = a + b n + c l + e s + m l^2            with v = n - d - g l - k l^2,  s = sqrt(v^2 + rho^2)
step:   z = a + b n + c l + e s + h H(v) + m l^2   with rho = RISE and H(v) = (1 + v / s) / 2

The last term lets the slab bend along the break, as one side must where the break is curved in plan.
Nine parameters each: [a, b, c, e, d, g, k, rho or h, m]. A row of trial breaks finds where one may run and
the knots along a ridge agree on its line and shape (``lines``, ``agree``). A hinge is that; a step is fitted
to each knot's own points from there by Levenberg-Marquardt (Marquardt 1963, J. SIAM 11:431).
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.base.kernels import Whole, njit
from crestcut.terrain.ground.raster import Cells

WIDE, NARROW = 0.22, 0.15  # m, half window across: the wide one where both sides are straight that far
HALF_ALONG = 0.20  # m
BIN_ACROSS, BIN_ALONG = 0.008, 0.040  # m
RISE = 0.003  # m, width of a step's face: 10 to 90 % within 2.7 times this
HINGE, STEP = 1, 2
# models of ``linear_fit``
OF_QUADRATIC, OF_HINGE, OF_STEP, OF_BOW = np.int64(0), np.int64(1), np.int64(2), np.int64(3)
# places of the nine parameters
P_A, P_B, P_C, P_E, P_D, P_G, P_K, P_H, P_M = range(9)
MEAN, CERTAINTY = 0, 1  # rows of their priors: mean and 1/sd^2

ROUNDINGS = np.array([0.0, 0.01, 0.02, 0.03, 0.045, 0.07, 0.1])  # m, tried for rho

MOST_BINS = (int(2 * WIDE / BIN_ACROSS) + 1) * (int(2 * HALF_ALONG / BIN_ALONG) + 1)

TINY = 2e-4  # m: s stays smooth at the break


class LinearFit(NamedTuple):
    """rss : weighted sum of squares, m2.  a, b, c, e, m, h : of the model, h of a step alone.  sure : the
    information of h, whose variance is that of one point over this."""

    rss: float
    a: float
    b: float
    c: float
    e: float
    m: float
    h: float
    sure: float


@njit(fastmath=True, forceinline=True)
def gather(
    cells: Cells, at: FloatArray, half: float, pitch: float, bin_n: float, bin_l: float, out: FloatArray
) -> int:
    """Points of a turned window about ``at`` (column, row, angle), ``half`` m each way across the break ->
    rows (n, l, z, count) of ``out``; returns how many.

    Cells are merged into bins fine across the break and longer along it, at their points' own mean places.
    """
    points, du, dv, z = cells
    ny, nx = points.shape
    ci, cj, ca, sa = at[0], at[1], math.cos(at[2]), math.sin(at[2])
    tall = (abs(sa) * half + abs(ca) * HALF_ALONG) / pitch + 1
    across, lengthways = int(2 * half / bin_n) + 1, int(2 * HALF_ALONG / bin_l) + 1
    bins = np.zeros((across * lengthways, 4))
    wide = (abs(ca) * half + abs(sa) * HALF_ALONG) / pitch + 1
    for j in range(max(0, int(cj - tall)), min(ny, int(cj + tall) + 2)):
        for i in range(max(0, int(ci - wide)), min(nx, int(ci + wide) + 2)):
            w = points[j, i]
            if w <= 0.0:
                continue
            x, y = (i + du[j, i] - ci) * pitch, (j + dv[j, i] - cj) * pitch
            n, along = x * ca + y * sa, -x * sa + y * ca
            if abs(n) >= half or abs(along) >= HALF_ALONG:
                continue
            b = int((along + HALF_ALONG) / bin_l) * across + int((n + half) / bin_n)
            bins[b, 0] += w * n
            bins[b, 1] += w * along
            bins[b, 2] += w * z[j, i]
            bins[b, 3] += w
    m = 0
    for b in range(across * lengthways):
        w = bins[b, 3]
        if w > 0.0:
            out[m, 0], out[m, 1], out[m, 2], out[m, 3] = bins[b, 0] / w, bins[b, 1] / w, bins[b, 2] / w, w
            m += 1
    return m


@njit(fastmath=True, forceinline=True)
def cholesky_solve(a: FloatArray, b: FloatArray, size: int) -> bool:
    """Solves a x = b in place (a becomes its factor, b becomes x); False where a is not positive definite."""
    for c in range(size):
        for r in range(c, size):
            v = a[r, c]
            for m in range(c):
                v -= a[r, m] * a[c, m]
            if r == c:
                if v <= 0.0:
                    return False
                a[r, c] = math.sqrt(v)
            else:
                a[r, c] = v / a[c, c]
    for r in range(size):
        for m in range(r):
            b[r] -= a[r, m] * b[m]
        b[r] /= a[r, r]
    for r in range(size - 1, -1, -1):
        for m in range(r + 1, size):
            b[r] -= a[m, r] * b[m]
        b[r] /= a[r, r]
    return True


@njit(fastmath=True, forceinline=True)
def linear_fit(data: FloatArray, m: Whole, kind: Whole, p: FloatArray, prior: float) -> LinearFit:
    """Weighted fit of one of four models that are linear once the break is held.

    OF_QUADRATIC; OF_BOW, the same without n l, which bends as a hinge does but for its break; OF_HINGE (a, b,
    c, e, m); OF_STEP, hinge and step (a, b, c, e, m, h). p holds the break's d, g, k and rho at their
    places; ``prior`` is added to the diagonal of m.
    """
    size = 6 if kind in (OF_QUADRATIC, OF_STEP) else 5
    sure = 0.0
    a, right, f, x = np.zeros((6, 6)), np.zeros(6), np.empty(6), np.empty(6)
    mean, total = 0.0, 0.0
    for q in range(m):
        mean += data[q, 3] * data[q, 2]
        total += data[q, 3]
    mean /= total
    zz = 0.0
    for q in range(m):
        n, along, w, t = data[q, 0], data[q, 1], data[q, 3], data[q, 2] - mean
        f[0], f[1], f[2], f[4] = 1.0, n, along, along * along
        if kind in (OF_QUADRATIC, OF_BOW):
            f[3], f[5] = n * n, n * along
        else:
            v = n - p[P_D] - p[P_G] * along - p[P_K] * f[4]
            f[3] = math.sqrt(v * v + p[P_H] * p[P_H] + TINY * TINY)
            f[5] = 0.5 * (1.0 + v / f[3])
        for r in range(size):
            right[r] += w * f[r] * t
            for c in range(r + 1):
                a[r, c] += w * f[r] * f[c]
        zz += w * t * t
    for r in range(size):
        a[r, r] += 1e-9
    a[4, 4] += prior
    for r in range(6):
        x[r] = right[r]
    if cholesky_solve(a, x, size):
        if kind == OF_STEP:
            sure = a[5, 5] * a[5, 5]
        for r in range(size):
            zz -= x[r] * right[r]
        x[0] += mean
        zz = max(zz, 0.0)
    return LinearFit(zz, x[0], x[1], x[2], x[3], x[4], x[5], sure)


@njit(fastmath=True, forceinline=True)
def step_basis(n: float, along: float, p: FloatArray, f: FloatArray) -> float:
    """Value of the step at (n, l); ``f`` := its derivatives by the nine parameters."""
    v = n - p[P_D] - p[P_G] * along - p[P_K] * along * along
    s = math.sqrt(v * v + RISE * RISE + TINY * TINY)
    h = 0.5 * (1.0 + v / s)
    f[P_A], f[P_B], f[P_C], f[P_E], f[P_H], f[P_M] = 1.0, n, along, s, h, along * along
    value = p[P_A] + p[P_B] * n + p[P_C] * along + p[P_E] * s + p[P_H] * h + p[P_M] * f[P_M]
    slope = p[P_E] * v / s + p[P_H] * 0.5 * (s * s - v * v) / (s * s * s)
    f[P_D], f[P_G], f[P_K] = -slope, -slope * along, -slope * along * along
    return value


@njit(fastmath=True, forceinline=True)
def _normal(
    data: FloatArray, m: int, p: FloatArray, variance: float, prior: FloatArray, a: FloatArray, b: FloatArray,
    f: FloatArray,
) -> float:  # fmt: skip
    """Normal matrix and gradient at p with the priors (rows mean, 1/sd^2), and the penalised sum of
    squares."""
    total = 0.0
    for r in range(9):
        b[r] = 0.0
        for c in range(9):
            a[r, c] = 0.0
    for q in range(m):
        w = data[q, 3]
        e = data[q, 2] - step_basis(data[q, 0], data[q, 1], p, f)
        total += w * e * e
        for r in range(9):
            wf = w * f[r]
            b[r] += wf * e
            for c in range(r + 1):
                a[r, c] += wf * f[c]
    for r in range(3, 9):
        h = variance * prior[CERTAINTY, r]
        a[r, r] += h
        b[r] -= h * (p[r] - prior[MEAN, r])
        total += h * (p[r] - prior[MEAN, r]) ** 2
    for r in range(9):
        for c in range(r):
            a[c, r] = a[r, c]
    return total


@njit(fastmath=True, forceinline=True)
def descend(
    data: FloatArray, m: int, variance: float, prior: FloatArray, p: FloatArray, a: FloatArray
) -> float:
    """Levenberg-Marquardt of a step from p; ``a`` := normal matrix there. Returns the weighted sum of squares
    with priors, m2."""
    b, f, trial = np.empty(9), np.empty(9), np.empty(9)
    work, move, new_a, new_b = np.empty((9, 9)), np.empty(9), np.empty((9, 9)), np.empty(9)
    cost = _normal(data, m, p, variance, prior, a, b, f)
    damp = 1e-3
    for _ in range(20):
        for r in range(9):
            move[r] = b[r]
            for c in range(9):
                work[r, c] = a[r, c]
            work[r, r] += damp * a[r, r] + 1e-12
        if not cholesky_solve(work, move, len(move)):
            damp *= 10.0
            continue
        for r in range(9):
            trial[r] = p[r] + move[r]
        trial[P_D] = min(max(trial[P_D], -0.3), 0.3)
        trial[P_G] = min(max(trial[P_G], -0.8), 0.8)
        trial[P_K] = min(max(trial[P_K], -2.0), 2.0)
        new = _normal(data, m, trial, variance, prior, new_a, new_b, f)
        if new < cost:
            gain = cost - new
            for r in range(9):
                p[r], b[r] = trial[r], new_b[r]
                for c in range(9):
                    a[r, c] = new_a[r, c]
            cost = new
            damp = max(damp * 0.2, 1e-9)
            if gain < 0.01 * variance + 1e-5 * cost:
                break
        else:
            damp *= 8.0
            if damp > 1e5:
                break
    return cost
