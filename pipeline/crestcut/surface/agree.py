"""Neighbouring knots along one ridge settle what one window cannot: whether it is a break, where it runs,
how round it is.

A 20 % crest gains only about seven units of chi square over a quadratic in one window at 8 mm noise, less
than the Bayesian
information criterion asks (Schwarz 1978, Ann. Statist. 6:461); a metre of crest gains twenty and more.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

from crestcut.surface.hinge import HALF_ALONG, HINGE, PLAIN, ROUNDINGS, STEP, loose_prior

POOL_ALONG = 0.80  # m each way
POOL_ACROSS = 0.16  # m each way
HINGE_PRICE = 7.0  # chi square a hinge must gain over a quadratic, pooled
STEP_PRICE = 14.0  # and a step over a hinge
LEAST_STEP = 0.004  # m
# chi square per metre of rounding: noise alone finds a sharp crest round half the time, never too sharp
ROUND_PRICE = 100.0
CENTRED = 0.07  # m: a break this far off a knot's middle counts 1/e

PLACE_SD, ANGLE_SD, BOW_SD = 0.003, 0.02, 0.06  # how tightly a knot is held to its pool: m, rad, 1/m
FOLD_SD, ROUND_SD, JUMP_SD, ALONG_SD = 0.030, 0.006, 0.004, 0.015  # rise over run, m, m, 1/m


@njit(cache=True, nogil=True)
def agree(place, pitch, variance, alone, squares, profile, model, priors):  # type: ignore[no-untyped-def]
    """Model and prior (mean, 1/sd^2) of every knot from all knots near it along its ridge.

    alone (n, 2, 9) : hinge and step of each knot by itself.  squares (n, 4), profile : as ``first_fits``
    leaves them.
    """
    n = place.shape[0]
    order = np.argsort(place[:, 1])
    rows = place[order, 1]
    reach = math.sqrt(POOL_ALONG**2 + POOL_ACROSS**2) / pitch
    near = np.empty(n, np.int64)
    local = np.empty((n, 2))
    for t in range(n):
        model[t] = PLAIN
        if squares[t, 3] < 24:
            continue
        lo, hi = np.searchsorted(rows, place[t, 1] - reach), np.searchsorted(rows, place[t, 1] + reach)
        m = _neighbours(place, order, lo, hi, t, pitch, squares, near, local)
        for kind in (STEP, HINGE):
            gain = _pooled_gain(near, local, m, alone, squares, variance, kind)
            if kind == STEP:
                jump = _weighted_mean(near, m, alone, squares, 1, 7)
                if gain < STEP_PRICE or abs(jump) < LEAST_STEP:
                    continue
                if _pooled_gain(near, local, m, alone, squares, variance, -1) < STEP_PRICE:
                    continue
            elif gain < HINGE_PRICE:
                continue
            which = 1 if kind == STEP else 0
            if _line(place, near, local, m, t, alone, which, priors[t]):
                model[t] = kind
                _rest(near, local, m, alone, squares, profile, variance, which, priors[t])
            break


@njit(cache=True, nogil=True)
def _neighbours(place, order, lo, hi, t, pitch, squares, near, local):  # type: ignore[no-untyped-def]
    """Knots in the pool of t and their places in its axes (n, l), m."""
    ca, sa = math.cos(place[t, 2]), math.sin(place[t, 2])
    m = 0
    for q in range(lo, hi):
        u = order[q]
        x, y = (place[u, 0] - place[t, 0]) * pitch, (place[u, 1] - place[t, 1]) * pitch
        across, along = x * ca + y * sa, -x * sa + y * ca
        turn = abs(math.sin(place[u, 2] - place[t, 2]))
        if abs(across) > POOL_ACROSS or abs(along) > POOL_ALONG or turn > 0.5 or squares[u, 3] < 24:
            continue
        near[m] = u
        local[m, 0], local[m, 1] = across, along
        m += 1
    return m


@njit(cache=True, nogil=True)
def _centred(p):  # type: ignore[no-untyped-def]
    return math.exp(-((p[4] / CENTRED) ** 2))


@njit(cache=True, nogil=True)
def _pooled_gain(near, local, m, alone, squares, variance, kind):  # type: ignore[no-untyped-def]
    """Chi square gained over the pool's length: hinge over quadratic, step over hinge, or (-1) step over
    quadratic."""
    total, weight, lo, hi = 0.0, 0.0, 0.0, 0.0
    for q in range(m):
        u = near[q]
        w = _centred(alone[u, 0 if kind == HINGE else 1])
        base = squares[u, 1] if kind == STEP else squares[u, 0]
        best = squares[u, 1] if kind == HINGE else squares[u, 2]
        total += w * (base - best) / variance
        weight += w
        lo, hi = min(lo, local[q, 1]), max(hi, local[q, 1])
    if weight < 1.0:
        return 0.0
    return total / weight * (hi - lo + 2 * HALF_ALONG) / (2 * HALF_ALONG)


@njit(cache=True, nogil=True)
def _weighted_mean(near, m, alone, squares, which, column):  # type: ignore[no-untyped-def]
    total, weight = 0.0, 1e-12
    for q in range(m):
        w = _centred(alone[near[q], which])
        total += w * alone[near[q], which, column]
        weight += w
    return total / weight


@njit(cache=True, nogil=True)
def _line(place, near, local, m, t, alone, which, prior):  # type: ignore[no-untyped-def]
    """Break line n = d + g l + k l^2 of the pool in the axes of knot t, robustly (bisquare); False where
    there is none."""
    points = np.empty((m, 3))
    for q in range(m):
        u = near[q]
        turn = place[u, 2] - place[t, 2]
        d = alone[u, which, 4]
        points[q, 0] = local[q, 0] + d * math.cos(turn)
        points[q, 1] = local[q, 1] + d * math.sin(turn)
        points[q, 2] = _centred(alone[u, which])
    d, g, k = 0.0, 0.0, 0.0
    best = -1.0
    for s in range(31):  # the place most of the pool's breaks run through, by a coarse vote
        trial, vote = (s - 15) * 0.01, 0.0
        for q in range(m):
            e = (points[q, 0] - trial) / 0.03
            if abs(e) < 1.0 and abs(points[q, 1]) < 0.3:
                vote += points[q, 2] * (1 - e * e) ** 2
        if vote > best:
            best, d = vote, trial
    if best < 1.0:
        return False
    cutoff = 0.06
    for _ in range(9):
        a, b = np.zeros((3, 3)), np.zeros(3)
        a[1, 1], a[2, 2] = 0.01, 0.01
        for q in range(m):
            along = points[q, 1]
            e = (points[q, 0] - d - g * along - k * along * along) / cutoff
            if abs(e) >= 1.0:
                continue
            w = points[q, 2] * (1 - e * e) ** 2
            f = (1.0, along, along * along)
            for r in range(3):
                b[r] += w * f[r] * points[q, 0]
                for c in range(3):
                    a[r, c] += w * f[r] * f[c]
        a[0, 0] += 1e-9
        x = np.linalg.solve(a, b)
        d, g, k = x[0], x[1], x[2]
        cutoff = max(0.025, 0.75 * cutoff)
    prior[0, 4], prior[0, 5], prior[0, 6] = d, g, k
    return abs(d) < 0.16


@njit(cache=True, nogil=True)
def _rest(near, local, m, alone, squares, profile, variance, which, prior):  # type: ignore[no-untyped-def]
    """Fold, and rounding (of a hinge) or jump (of a step), from the pool; and how tightly the prior holds
    each."""
    prior[1, :] = loose_prior()[1]
    prior[0, 3] = _weighted_mean(near, m, alone, squares, which, 3)
    prior[0, 8] = _weighted_mean(near, m, alone, squares, which, 8)
    prior[1, 8] = 1 / ALONG_SD**2
    prior[1, 3], prior[1, 4] = 1 / FOLD_SD**2, 1 / PLACE_SD**2
    prior[1, 5], prior[1, 6] = 1 / ANGLE_SD**2, 1 / BOW_SD**2
    if which == 1:
        prior[0, 7] = _weighted_mean(near, m, alone, squares, 1, 7)
        prior[1, 7] = 1 / JUMP_SD**2
        return
    total, weight, lo, hi = np.zeros(len(ROUNDINGS)), 1e-12, 0.0, 0.0
    for q in range(m):
        w = _centred(alone[near[q], 0])
        total += w * profile[near[q]]
        weight += w
        lo, hi = min(lo, local[q, 1]), max(hi, local[q, 1])
    windows = (hi - lo + 2 * HALF_ALONG) / (2 * HALF_ALONG)
    prior[0, 7] = _lowest(total / weight * windows / variance + ROUND_PRICE * ROUNDINGS)
    prior[1, 7] = 1 / ROUND_SD**2


@njit(cache=True, nogil=True)
def _lowest(values):  # type: ignore[no-untyped-def]
    """Rounding at the lowest of the profile, by a parabola through the three about it."""
    k = int(np.argmin(values))
    if k == 0 or k == len(ROUNDINGS) - 1:
        return ROUNDINGS[k]
    x0, x1, x2 = ROUNDINGS[k - 1], ROUNDINGS[k], ROUNDINGS[k + 1]
    y0, y1, y2 = values[k - 1], values[k], values[k + 1]
    top = (x1 - x0) ** 2 * (y1 - y2) - (x1 - x2) ** 2 * (y1 - y0)
    low = (x1 - x0) * (y1 - y2) - (x1 - x2) * (y1 - y0)
    return x1 if low == 0.0 else min(max(x1 - 0.5 * top / low, x0), x2)
