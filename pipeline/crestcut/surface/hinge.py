"""One window of the slab fitted with a hinge or a step, in the knot's own axes: n across the break, l along
it, metres.

hinge:  z = a + b n + c l + e s + m l^2            with v = n - d - g l - k l^2,  s = sqrt(v^2 + rho^2)
step:   z = a + b n + c l + e s + h H(v) + m l^2   with rho = RISE and H(v) = (1 + v / s) / 2

The last term lets the slab bend along the break, as one side must where the break is curved in plan.
Nine parameters each: [a, b, c, e, d, g, k, rho or h, m]. Least squares by Levenberg-Marquardt (Marquardt
1963, J. SIAM 11:431)
with weak priors on angle, plan curvature and rounding that matter only where noise would decide them.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

HALF_ACROSS = 0.15  # m
HALF_ALONG = 0.20  # m
BIN_ACROSS, BIN_ALONG = 0.008, 0.040  # m
RISE = 0.003  # m, width of a step's face: 10 to 90 % within 2.7 times this
PLAIN, HINGE, STEP = 0, 1, 2

ROUNDINGS = np.array([0.0, 0.01, 0.02, 0.03, 0.045, 0.07, 0.1])  # m, tried for rho

MOST_BINS = (int(2 * HALF_ACROSS / BIN_ACROSS) + 1) * (int(2 * HALF_ALONG / BIN_ALONG) + 1)

_FOLD_SD = 0.15  # half the change of slope
_ANGLE_SD = 0.15  # rad, pilot direction
_BOW_SD = 0.35  # 1/m: a plan radius of 1.4 m
_ROUND_SD = 0.04  # m
_ALONG_SD = 0.05  # 1/m: a radius of 10 m along the break
_TINY = 2e-4  # m: s stays smooth at the break


@njit(cache=True, nogil=True, fastmath=True)
def gather(count, du, dv, z, ci, cj, ca, sa, pitch, half_n, half_l, out):  # type: ignore[no-untyped-def]
    """Points of a turned window about lattice place (ci, cj) -> rows (n, l, z, count) of ``out``; returns
    how many.

    Cells are merged into bins fine across the break and longer along it, at their points' own mean places.
    """
    ny, nx = count.shape
    reach = math.sqrt(half_n**2 + half_l**2) / pitch
    across, lengthways = int(2 * half_n / BIN_ACROSS) + 1, int(2 * half_l / BIN_ALONG) + 1
    bins = np.zeros((across * lengthways, 4))
    for j in range(max(0, int(cj - reach)), min(ny, int(cj + reach) + 2)):
        for i in range(max(0, int(ci - reach)), min(nx, int(ci + reach) + 2)):
            w = count[j, i]
            if w <= 0.0:
                continue
            x, y = (i + du[j, i] - ci) * pitch, (j + dv[j, i] - cj) * pitch
            n, along = x * ca + y * sa, -x * sa + y * ca
            if abs(n) >= half_n or abs(along) >= half_l:
                continue
            b = int((along + half_l) / BIN_ALONG) * across + int((n + half_n) / BIN_ACROSS)
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


@njit(cache=True, nogil=True, fastmath=True)
def cholesky_solve(a, b, size):  # type: ignore[no-untyped-def]
    """Solves a x = b in place (b becomes x); False where a is not positive definite."""
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


@njit(cache=True, nogil=True, fastmath=True)
def quadratic_rss(data, m):  # type: ignore[no-untyped-def]
    """Weighted residual sum of squares of a full quadratic in the window, m2."""
    a, b = np.zeros((6, 6)), np.zeros(6)
    f = np.empty(6)
    zz = 0.0
    mean = data[:m, 2].mean()
    for q in range(m):
        x, y, w = data[q, 0] / HALF_ACROSS, data[q, 1] / HALF_ALONG, data[q, 3]
        t = data[q, 2] - mean
        f[0], f[1], f[2], f[3], f[4], f[5] = 1.0, x, y, x * x, x * y, y * y
        for r in range(6):
            b[r] += w * f[r] * t
            for c in range(r + 1):
                a[r, c] += w * f[r] * f[c]
        zz += w * t * t
    for r in range(6):
        a[r, r] += 1e-9
    right = b.copy()
    if not cholesky_solve(a, b, 6):
        return zz
    return max(zz - (b * right).sum(), 0.0)


@njit(cache=True, nogil=True, fastmath=True)
def basis(n, along, p, step, f):  # type: ignore[no-untyped-def]
    """Value of the model at (n, l); ``f`` := its derivatives by the nine parameters."""
    v = n - p[4] - p[5] * along - p[6] * along * along
    rho = RISE if step else p[7]
    s = math.sqrt(v * v + rho * rho + _TINY * _TINY)
    slope = p[3] * v / s
    f[0], f[1], f[2], f[3] = 1.0, n, along, s
    f[8] = along * along
    value = p[0] + p[1] * n + p[2] * along + p[3] * s + p[8] * f[8]
    if step:
        f[7] = 0.5 * (1.0 + v / s)
        value += p[7] * f[7]
        slope += p[7] * 0.5 * (s * s - v * v) / (s * s * s)
    else:
        f[7] = p[3] * rho / s
    f[4], f[5], f[6] = -slope, -slope * along, -slope * along * along
    return value


@njit(cache=True, nogil=True, fastmath=True)
def _normal(data, m, p, step, variance, prior, a, b, f):  # type: ignore[no-untyped-def]
    """Normal matrix and gradient at p with the priors (rows mean, 1/sd^2), and the penalised sum of
    squares."""
    a[:] = 0.0
    b[:] = 0.0
    total = 0.0
    for q in range(m):
        w = data[q, 3]
        e = data[q, 2] - basis(data[q, 0], data[q, 1], p, step, f)
        total += w * e * e
        for r in range(9):
            wf = w * f[r]
            b[r] += wf * e
            for c in range(r + 1):
                a[r, c] += wf * f[c]
    for r in range(3, 9):
        h = variance * prior[1, r]
        a[r, r] += h
        b[r] -= h * (p[r] - prior[0, r])
        total += h * (p[r] - prior[0, r]) ** 2
    for r in range(9):
        for c in range(r):
            a[c, r] = a[r, c]
    return total


@njit(cache=True, nogil=True, fastmath=True)
def _linear_start(data, m, d, g, rho, step, p):  # type: ignore[no-untyped-def]
    """Best linear parameters for a break at d + g l; returns the residual sum of squares and fills p."""
    size = 5 if step else 4
    a, b = np.zeros((5, 5)), np.zeros(5)
    f = np.empty(5)
    mean = data[:m, 2].mean()
    zz = 0.0
    for q in range(m):
        v = data[q, 0] - d - g * data[q, 1]
        s = math.sqrt(v * v + rho * rho)
        f[0], f[1], f[2], f[3], f[4] = 1.0, data[q, 0], data[q, 1], s, 0.5 * (1 + v / s)
        w, t = data[q, 3], data[q, 2] - mean
        for r in range(size):
            b[r] += w * f[r] * t
            for c in range(r + 1):
                a[r, c] += w * f[r] * f[c]
        zz += w * t * t
    for r in range(size):
        a[r, r] += 1e-7
    right = b.copy()
    if not cholesky_solve(a, b, size):
        return 1e30
    p[0], p[1], p[2], p[3] = b[0] + mean, b[1], b[2], b[3]
    p[4], p[5], p[6], p[7], p[8] = d, g, 0.0, (b[4] if step else rho), 0.0
    rss = zz
    for r in range(size):
        rss -= b[r] * right[r]
    return rss


@njit(cache=True, nogil=True, fastmath=True)
def start(data, m, step, p):  # type: ignore[no-untyped-def]
    """Best of a row of straight breaks across the window, as a start for ``descend``; p is filled."""
    trial = np.empty(9)
    best = 1e30
    for s in range(13):
        rss = _linear_start(data, m, (s - 6) * 0.023, 0.0, RISE if step else 0.010, step, trial)
        if rss < best:
            best = rss
            p[:] = trial
    return best


@njit(cache=True, nogil=True, fastmath=True)
def descend(data, m, step, variance, prior, p, a):  # type: ignore[no-untyped-def]
    """Levenberg-Marquardt from p; ``a`` := normal matrix there. Returns the weighted sum of squares without
    priors, m2."""
    b, f, trial = np.empty(9), np.empty(9), np.empty(9)
    work, move, new_a, new_b = np.empty((9, 9)), np.empty(9), np.empty((9, 9)), np.empty(9)
    cost = _normal(data, m, p, step, variance, prior, a, b, f)
    damp = 1e-3
    for _ in range(20):
        work[:] = a
        move[:] = b
        for r in range(9):
            work[r, r] += damp * a[r, r] + 1e-12
        if not cholesky_solve(work, move, 9):
            damp *= 10.0
            continue
        trial[:] = p + move
        trial[4] = min(max(trial[4], -0.3), 0.3)
        trial[5] = min(max(trial[5], -0.8), 0.8)
        trial[6] = min(max(trial[6], -2.0), 2.0)
        if not step:
            trial[7] = min(abs(trial[7]), 0.30)
        new = _normal(data, m, trial, step, variance, prior, new_a, new_b, f)
        if new < cost:
            gain = cost - new
            p[:] = trial
            a[:] = new_a
            b[:] = new_b
            cost = new
            damp = max(damp * 0.2, 1e-9)
            if gain < 0.01 * variance + 1e-5 * cost:
                break
        else:
            damp *= 8.0
            if damp > 1e5:
                break
    rss = 0.0
    for q in range(m):
        rss += data[q, 3] * (data[q, 2] - basis(data[q, 0], data[q, 1], p, step, f)) ** 2
    return rss


@njit(cache=True, nogil=True, fastmath=True)
def rounding_profile(data, m, p, out):  # type: ignore[no-untyped-def]
    """Weighted sum of squares for each of ``ROUNDINGS`` with the break's line held and heights and slopes
    free, m2."""
    a, b, f = np.empty((4, 4)), np.empty(4), np.empty(4)
    mean = data[:m, 2].mean()
    for k in range(len(ROUNDINGS)):
        a[:] = 0.0
        b[:] = 0.0
        zz = 0.0
        for q in range(m):
            v = data[q, 0] - p[4] - p[5] * data[q, 1] - p[6] * data[q, 1] ** 2
            f[0], f[1], f[2], f[3] = (
                1.0,
                data[q, 0],
                data[q, 1],
                math.sqrt(v * v + ROUNDINGS[k] ** 2 + _TINY * _TINY),
            )
            w, t = data[q, 3], data[q, 2] - mean - p[8] * data[q, 1] ** 2
            for r in range(4):
                b[r] += w * f[r] * t
                for c in range(r + 1):
                    a[r, c] += w * f[r] * f[c]
            zz += w * t * t
        for r in range(4):
            a[r, r] += 1e-9
        right = b.copy()
        if cholesky_solve(a, b, 4):
            out[k] = max(zz - (b * right).sum(), 0.0)
        else:
            out[k] = zz


@njit(cache=True, nogil=True)
def invert(a, out):  # type: ignore[no-untyped-def]
    """Inverse of the normal matrix, with a hair of ridge."""
    work, column = np.empty((9, 9)), np.empty(9)
    for c in range(9):
        work[:] = a
        for r in range(9):
            work[r, r] += 1e-9 * a[r, r] + 1e-12
        column[:] = 0.0
        column[c] = 1.0
        cholesky_solve(work, column, 9)
        out[:, c] = column


@njit(cache=True, nogil=True)
def loose_prior():  # type: ignore[no-untyped-def]
    """(2, 9): means and 1/sd^2 that matter only where noise would decide."""
    prior = np.zeros((2, 9))
    prior[1, 3], prior[1, 5], prior[1, 6] = 1 / _FOLD_SD**2, 1 / _ANGLE_SD**2, 1 / _BOW_SD**2
    prior[1, 7], prior[1, 8] = 1 / _ROUND_SD**2, 1 / _ALONG_SD**2
    return prior


@njit(cache=True, nogil=True)
def first_fits(count, du, dv, z, place, k0, k1, pitch, noise, inflation, params, squares, profile):  # type: ignore[no-untyped-def]
    """Each knot k0..k1 by itself: params (n, 2, 9) of hinge and step; squares (n, 4): quadratic, hinge,
    step, cells; profile."""
    data, a = np.empty((MOST_BINS, 4)), np.empty((9, 9))
    variance = noise * noise * inflation
    prior = loose_prior()
    step_prior = prior.copy()
    step_prior[1, 7] = 0.0
    for t in range(k0, k1):
        ca, sa = math.cos(place[t, 2]), math.sin(place[t, 2])
        m = gather(count, du, dv, z, place[t, 0], place[t, 1], ca, sa, pitch, HALF_ACROSS, HALF_ALONG, data)
        squares[t, 3] = m
        if m < 24:
            continue
        squares[t, 0] = quadratic_rss(data, m)
        start(data, m, False, params[t, 0])
        squares[t, 1] = descend(data, m, False, variance, prior, params[t, 0], a)
        rounding_profile(data, m, params[t, 0], profile[t])
        squares[t, 2] = start(data, m, True, params[t, 1])
        if squares[t, 2] < squares[t, 1] + 6.0 * variance:  # else no step is near
            squares[t, 2] = descend(data, m, True, variance, step_prior, params[t, 1], a)


@njit(cache=True, nogil=True)
def second_fits(count, du, dv, z, place, k0, k1, pitch, noise, inflation, model, priors, params, inverse):  # type: ignore[no-untyped-def]
    """Each knot that has a model again, from what its neighbours along the ridge agree on: priors (n, 2,
    9)."""
    data, a = np.empty((MOST_BINS, 4)), np.empty((9, 9))
    variance = noise * noise * inflation
    for t in range(k0, k1):
        if model[t] == PLAIN:
            continue
        ca, sa = math.cos(place[t, 2]), math.sin(place[t, 2])
        m = gather(count, du, dv, z, place[t, 0], place[t, 1], ca, sa, pitch, HALF_ACROSS, HALF_ALONG, data)
        p, step = params[t], model[t] == STEP
        agreed = priors[t, 0]
        _linear_start(data, m, agreed[4], agreed[5], max(agreed[7], RISE), step, p)
        p[5], p[6] = agreed[5], agreed[6]
        descend(data, m, step, variance, priors[t], p, a)
        invert(a, inverse[t])
