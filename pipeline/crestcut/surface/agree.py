"""Neighbouring knots along one ridge settle what one window cannot: whether it is a break, where it runs,
how far it folds, how round it is.

A 20 % crest gains only about seven units of chi square over a quadratic in one window at 8 mm noise, less
than the Bayesian information criterion asks (Schwarz 1978, Ann. Statist. 6:461); a metre of crest gains
twenty and more. One window places it to 8 mm, which would lower the crest by half the fold times that; two
metres place it to 3 mm.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

from crestcut.surface.fits import (
    AT_HINGE,
    AT_STEP,
    BINS,
    FEWEST,
    FOLD,
    JUMP,
    ONE_HINGE,
    ONE_STEP,
    QUADRATIC,
)
from crestcut.surface.hinge import HALF_ALONG, HINGE, ROUNDINGS, STEP, WIDE

POOL_LONG, POOL_SHORT = 1.30, 0.50  # m each way
# chi square a hinge must gain over a quadratic, pooled: much where it folds little; none where it folds by
# SURE_KINK, for roundings as wide as a quadratic are among those tried
HINGE_PRICE = 10.0
STEP_PRICE = 30.0  # and a step over a hinge
LEAST_KINK = 0.035  # rise over run: the plain surface rounds a smaller break by less than 0.4 mm
SURE_KINK = 0.12
LEAST_STEP = 0.005  # m
CENTRED = 0.07  # m: a break this far off a knot's middle counts 1/e
OFF = 0.06  # m: a knot whose break lies farther from the line speaks of another one
FEWEST_KNOTS = 3.0  # in weight, that a line must run through within 0.3 m
NEAR = 0.09  # m: the ridge passes a knot that near, or has other knots
STRAIGHT = 3.0  # units of chi square by which plan curvature is shrunk (James & Stein 1961, with one freedom)

SHARP = 0.65  # prior chance of a crest without rounding; the rest falls off with
USUAL_ROUNDING = 0.025  # m
HOLD_PLACE, HOLD_ANGLE, HOLD_BOW, HOLD_ROUND = 0.0015, 0.01, 0.03, 0.0025  # m, rad, 1/m, m
LEAST_FOLD_SD, ALONG_SD, JUMP_SD = 0.004, 0.015, 0.003  # rise over run, 1/m, m


@njit(cache=True, nogil=True)
def _pool(place, order, rows, t, pitch, long, wide, near, local):  # type: ignore[no-untyped-def]
    """Knots along the ridge of t within ``long`` m, the farther the wider; ``local`` := their places in its
    axes (n, l), m."""
    ca, sa = math.cos(place[t, 2]), math.sin(place[t, 2])
    reach = (long + wide) / pitch
    m = 0
    for q in range(
        np.searchsorted(rows, place[t, 1] - reach), np.searchsorted(rows, place[t, 1] + reach, side="right")
    ):
        u = order[q]
        x, y = (place[u, 0] - place[t, 0]) * pitch, (place[u, 1] - place[t, 1]) * pitch
        across, along = x * ca + y * sa, -x * sa + y * ca
        if abs(along) > long or abs(across) > wide + 0.1 * abs(along) + 0.2 * along * along:
            continue
        if abs(math.sin(place[u, 2] - place[t, 2])) > 0.5:
            continue
        near[m] = u
        local[m, 0], local[m, 1] = across, along
        m += 1
    return m


@njit(cache=True, nogil=True)
def _line(points, m, long, found):  # type: ignore[no-untyped-def]
    """Break line n = d + g l + k l^2 through points (n, l, weight, column 3 := robust weight), bisquare
    (Tukey); found := (d, g, k, and the inverse normal matrix's [d, d], [k, k]). False where there is none."""
    d, g, k = 0.0, 0.0, 0.0
    best = -1.0
    for s in range(23):  # the place most of the pool's breaks near by run through, by a coarse vote
        trial, vote = (s - 11) * 0.01, 0.0
        for q in range(m):
            e = (points[q, 0] - trial) / 0.03
            if abs(e) < 1.0 and abs(points[q, 1]) < 0.3:
                vote += points[q, 2] * (1 - e * e) ** 2
        if vote > best:
            best, d = vote, trial
    if best < FEWEST_KNOTS:
        return False
    cutoff = 0.06
    a, b = np.zeros((3, 3)), np.zeros(3)
    inverse = a
    for _ in range(8):
        a[:] = 0.0
        b[:] = 0.0
        for q in range(m):
            along = points[q, 1]
            e = (points[q, 0] - d - g * along - k * along * along) / cutoff
            points[q, 3] = 0.0
            if abs(e) >= 1.0:
                continue
            w = points[q, 2] * (1 - e * e) ** 2 * (1 - (along / long) ** 2)
            points[q, 3] = w
            f = (1.0, along, along * along)
            for r in range(3):
                b[r] += w * f[r] * points[q, 0]
                for c in range(3):
                    a[r, c] += w * f[r] * f[c]
        a[0, 0] += 1e-9
        a[1, 1] += 0.002
        a[2, 2] += 0.0005
        inverse = np.linalg.inv(a)
        x = inverse @ b
        d, g, k = x[0], x[1], x[2]
        cutoff = max(0.03, 0.75 * cutoff)
    found[0], found[1], found[2], found[3], found[4] = d, g, k, inverse[0, 0], inverse[2, 2]
    # plan curvature shrunk towards a straight line, and the line taken again for it
    scale = _scale(points, m, found)
    keep = max(0.0, 1.0 - STRAIGHT * inverse[2, 2] * scale / max(k * k, 1e-12))
    k *= keep
    det = a[0, 0] * a[1, 1] - a[0, 1] * a[0, 1]
    r0, r1 = b[0] - k * a[0, 2], b[1] - k * a[1, 2]
    found[0], found[1] = (a[1, 1] * r0 - a[0, 1] * r1) / det, (a[0, 0] * r1 - a[0, 1] * r0) / det
    found[2] = k
    found[3] = (keep * inverse[0, 0] + (1 - keep) * a[1, 1] / det) * scale
    return abs(found[0]) < NEAR


@njit(cache=True, nogil=True)
def _scale(points, m, found):  # type: ignore[no-untyped-def]
    """Variance of a knot's place for unit weight, m2, times how often each point of the slab was counted."""
    total, weight, square, lo, hi = 0.0, 1e-12, 0.0, 0.0, 0.0
    count = 0
    for q in range(m):
        w, along = points[q, 3], points[q, 1]
        if w <= 0.0:
            continue
        e = points[q, 0] - found[0] - found[1] * along - found[2] * along * along
        total += w * e * e
        weight += w
        square += w * w
        lo, hi = min(lo, along), max(hi, along)
        count += 1
    mean = weight / max(count, 1)
    # windows overlap: ``count`` of them hold (hi - lo + one window) / window independent ones
    again = max(1.0, count * 2 * HALF_ALONG / (hi - lo + 2 * HALF_ALONG))
    return total / weight * mean * again


@njit(cache=True, nogil=True)
def _gain(near, local, points, m, alone, variance, base):  # type: ignore[no-untyped-def]
    """Chi square gained by a step over column ``base``, over the pool's length, by what speaks for the
    line."""
    total, weight, lo, hi = 0.0, 1e-12, 0.0, 0.0
    for q in range(m):
        u, w = near[q], points[q, 3]
        if w <= 0.0:
            continue
        total += w * (alone[u, base] - alone[u, ONE_STEP])
        weight += w
        lo, hi = min(lo, local[q, 1]), max(hi, local[q, 1])
    length = min(hi - lo + 2 * HALF_ALONG, 2.0)
    return total / weight / variance * length / (2 * HALF_ALONG)


@njit(cache=True, nogil=True)
def _mean(near, points, m, values, column):  # type: ignore[no-untyped-def]
    total, weight = 0.0, 1e-12
    for q in range(m):
        total += points[q, 3] * values[near[q], column]
        weight += points[q, 3]
    return total / weight


@njit(cache=True, nogil=True)
def find_lines(place, pitch, variance, alone, model, line):  # type: ignore[no-untyped-def]
    """What every knot is (0, HINGE or STEP) and, where it is one, the break line through it as its
    neighbours see it: line (n, 4) := d, g, k and the variance of d, m2."""
    n = place.shape[0]
    order = np.argsort(place[:, 1])
    rows = place[order, 1]
    near, local, points = np.empty(n, np.int64), np.empty((n, 2)), np.empty((n, 4))
    found = np.empty(5)
    for t in range(n):
        if alone[t, BINS] < FEWEST or (
            abs(alone[t, FOLD]) < 0.25 * LEAST_KINK and abs(alone[t, JUMP]) < 0.5 * LEAST_STEP
        ):
            continue
        m = _pool(place, order, rows, t, pitch, POOL_LONG, 0.12, near, local)
        for kind in (STEP, HINGE):
            at = AT_STEP if kind == STEP else AT_HINGE
            for q in range(m):
                u = near[q]
                turn = place[u, 2] - place[t, 2]
                points[q, 0] = local[q, 0] + alone[u, at] * math.cos(turn)
                points[q, 1] = local[q, 1] + alone[u, at] * math.sin(turn)
                points[q, 2] = math.exp(-((alone[u, at] / CENTRED) ** 2)) if alone[u, BINS] >= FEWEST else 0.0
                if abs(points[q, 1]) >= POOL_LONG:
                    points[q, 2] = 0.0
            if not _line(points, m, POOL_LONG, found):
                continue
            if _bends_away(points, m, found):
                for q in range(m):
                    if abs(points[q, 1]) >= POOL_SHORT:
                        points[q, 2] = 0.0
                if not _line(points, m, POOL_SHORT, found):
                    continue
            if kind == STEP:
                if _gain(near, local, points, m, alone, variance, ONE_HINGE) < STEP_PRICE:
                    continue
                if _gain(near, local, points, m, alone, variance, QUADRATIC) < STEP_PRICE:
                    continue
                if abs(_mean(near, points, m, alone, JUMP)) < LEAST_STEP:
                    continue
            elif abs(2 * _mean(near, points, m, alone, FOLD)) < LEAST_KINK:
                continue
            model[t] = kind
            line[t, :4] = found[:4]
            break


@njit(cache=True, nogil=True)
def _bends_away(points, m, found):  # type: ignore[no-untyped-def]
    """True where the nearest half metre of breaks lies beside the long line by more than chance."""
    total, weight, square, count = 0.0, 1e-12, 0.0, 0
    for q in range(m):
        along = points[q, 1]
        e = points[q, 0] - found[0] - found[1] * along - found[2] * along * along
        if abs(along) < 0.3 and abs(e) < OFF:
            total += points[q, 2] * e
            square += points[q, 2] * e * e
            weight += points[q, 2]
            count += 1
    if count < 3:
        return False
    return abs(total / weight) > 2.5 * math.sqrt(square / weight / 2.5) + 0.002


@njit(cache=True, nogil=True)
def settle(place, pitch, variance, model, line, flat, rss, fold, bow, keep, priors, spread):  # type: ignore[no-untyped-def]
    """Priors (n, 2, 9) of each knot from its ridge: fold, rounding (of a hinge) or jump (of a step), bend
    along it. spread (n, 2) := sd of the line and of the rounding, m. keep (n,) := model, or 0 where the
    pool's hinges do not earn their place against quadratics of the same windows, ``flat`` (n,) m2.

    The rounding is the mean of its posterior: half the prior on none, the rest falling off exponentially. The
    likeliest value would err to the round side alone, for a break cannot be sharper than sharp.
    """
    n = place.shape[0]
    order = np.argsort(place[:, 1])
    rows = place[order, 1]
    near, local = np.empty(n, np.int64), np.empty((n, 2))
    first = np.empty(len(ROUNDINGS))
    first[0] = SHARP
    for k in range(1, len(ROUNDINGS)):
        lo = (ROUNDINGS[k - 1] + ROUNDINGS[k]) / 2
        hi = (ROUNDINGS[k] + ROUNDINGS[k + 1]) / 2 if k + 1 < len(ROUNDINGS) else 0.2
        first[k] = (1 - SHARP) * (math.exp(-lo / USUAL_ROUNDING) - math.exp(-hi / USUAL_ROUNDING))
    for t in range(n):
        if model[t] == 0:
            continue
        m = _pool(place, order, rows, t, pitch, POOL_LONG, 0.05, near, local)
        mean, base = np.zeros(len(ROUNDINGS)), 0.0
        weight, lo, hi = 0.0, 0.0, 0.0
        for q in range(m):
            u, along = near[q], local[q, 1]
            e = local[q, 0] - line[t, 2] * along * along
            if model[u] != model[t] or abs(e) > 0.04:
                continue
            w = 1 - (along / POOL_LONG) ** 2
            mean += w * rss[u]
            base += w * flat[u]
            weight += w
            lo, hi = min(lo, along), max(hi, along)
        p = priors[t]
        length = (hi - lo) * 0.75 + 2 * HALF_ALONG  # tapered
        windows = length / (2 * HALF_ALONG)
        step = model[t] == STEP
        keep[t] = model[t]
        best, gain = 0, 0.0
        chance = np.zeros(len(ROUNDINGS))
        if not step:
            chi = mean / weight / variance * windows
            gain = base / weight / variance * windows - chi.min()
            chance = first * np.exp(-0.5 * (chi - chi.min()))
            chance /= chance.sum()
            p[0, 7] = (chance * ROUNDINGS).sum()
            spread[t, 1] = math.sqrt(max((chance * ROUNDINGS**2).sum() - p[0, 7] ** 2, 0.0))
            best = np.argmax(chance)
        e, e2, bend, jump = 0.0, 0.0, 0.0, 0.0
        for q in range(m):
            u, along = near[q], local[q, 1]
            if model[u] != model[t] or abs(local[q, 0] - line[t, 2] * along * along) > 0.04:
                continue
            w = (1 - (along / POOL_LONG) ** 2) / weight
            one = fold[u, 0] if step else (chance * fold[u]).sum()
            e, e2, bend = e + w * one, e2 + w * one * one, bend + w * bow[u, best]
            jump += w * rss[u, 1]
        # variance of e from one window's noise, derived: |v| less its mean has variance H^2 / 12
        if not step and gain < HINGE_PRICE * (1 - (2 * e / SURE_KINK) ** 2):
            keep[t] = 0
        own = variance / max(line[t, 4], 1.0) * 12 / WIDE**2
        fold_sd = math.sqrt(max(e2 - e * e - own, LEAST_FOLD_SD**2))
        p[0, 3], p[0, 8] = e, bend
        p[0, 6] = line[t, 2]
        if step:
            p[0, 7] = jump
        p[1, 3], p[1, 8] = 1 / fold_sd**2, 1 / ALONG_SD**2
        p[1, 4], p[1, 5], p[1, 6] = 1 / HOLD_PLACE**2, 1 / HOLD_ANGLE**2, 1 / HOLD_BOW**2
        p[1, 7] = 1 / (JUMP_SD if step else HOLD_ROUND) ** 2
        spread[t, 0] = math.sqrt(max(line[t, 3], 0.0))
