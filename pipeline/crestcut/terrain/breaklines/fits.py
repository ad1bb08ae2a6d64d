"""What the windows at knots say: each alone, each with its break held on a line, and each step from what its
ridge agrees on."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.kernels import Whole, njit
from crestcut.terrain.breaklines.hinge import (
    BIN_ACROSS,
    BIN_ALONG,
    CERTAINTY,
    MEAN,
    MOST_BINS,
    NARROW,
    OF_BOW,
    OF_HINGE,
    OF_QUADRATIC,
    OF_STEP,
    P_A,
    P_B,
    P_C,
    P_D,
    P_E,
    P_G,
    P_H,
    P_K,
    P_M,
    RISE,
    ROUNDINGS,
    STEP,
    TINY,
    WIDE,
    descend,
    gather,
    linear_fit,
)
from crestcut.terrain.ground.raster import Cells

# breaks tried across a window, every so many m, this round (m); and nearer by where a step is likely
TRIALS, TRIAL_STEP, TRIAL_ROUNDING = np.int64(13), 0.023, 0.010
FINE_TRIALS, FINE_STEP = np.int64(9), 0.004
FEWEST = 24  # bins
POOR_FIT = 5.0  # standard deviations of chi square above its mean
MISFIT = 15.0  # chi square above that of a quadratic
WORSE = 16.0  # chi square that the middle of a window may lose to its outer parts: 6 are expected
LIKELY_STEP = 6.0  # chi square a step must gain over a hinge before its place is refined
COARSE_ACROSS, COARSE_ALONG = 0.010, 0.100  # m, for the row of trials
# columns of what a knot finds alone
QUADRATIC, ONE_HINGE, ONE_STEP, AT_HINGE, AT_STEP, FOLD, JUMP, BINS, POINTS = range(9)
_ALONG_SD = 0.05  # 1/m: a radius of 10 m along the break


class LineFits(NamedTuple):
    """What n knots find with their breaks held on a line. For each of ``ROUNDINGS`` (n, 7): ``rss`` weighted
    sum of squares in m2, ``fold`` e and ``bow`` m; a step fills the first only, and ``jump`` (n,) m.
    flat (n,) : sum of squares of a bow, a quadratic without twist.  half (n,) : half window across in m, 0
    where none was fitted.  points (n,) : in it.  beside, sure (n,) : h of a step in the hinge's own place, m,
    and its information."""

    rss: FloatArray
    fold: FloatArray
    bow: FloatArray
    jump: FloatArray
    flat: FloatArray
    half: FloatArray
    points: FloatArray
    beside: FloatArray
    sure: FloatArray

    @classmethod
    def empty(cls, n: int) -> LineFits:
        """Of n knots that nothing was fitted to."""
        wide, one = (np.zeros((n, len(ROUNDINGS))) for _ in range(3)), (np.zeros(n) for _ in range(6))
        return cls(*wide, *one)

    def fit_at_all(self, variance: float) -> BoolArray:
        """Knots whose points the break does not fit far worse than a quadratic: those are on a wrong line."""
        best: FloatArray = np.where(self.rss > 0, self.rss, np.inf).min(axis=1)
        return (self.half > 0) & (best - self.flat <= MISFIT * variance)


class Trial(NamedTuple):
    """The best break of a row: weighted sum of squares, m2, its place, m, and its e or h."""

    rss: float
    place: float
    size: float


@njit(fastmath=True, forceinline=True)
def _plane_sums(data: FloatArray, m: int, mean: float, base: FloatArray, right: FloatArray) -> float:
    """Sums of (1, n, l) over the bins into the lower triangle of base (5, 5), and of their heights beyond the
    mean (whose own sum is none) into right (5,): the same for every trial. Sum of squares of those, m2."""
    zz = 0.0
    for q in range(m):
        n, along, w, t = data[q, 0], data[q, 1], data[q, 3], data[q, 2] - mean
        base[0, 0] += w
        base[1, 0] += w * n
        base[2, 0] += w * along
        base[1, 1] += w * n * n
        base[2, 1] += w * n * along
        base[2, 2] += w * along * along
        right[1] += w * n * t
        right[2] += w * along * t
        zz += w * t * t
    return zz


@njit(fastmath=True, forceinline=True)
def _break_sums(
    data: FloatArray, m: int, mean: float, d: float, rho: float, a: FloatArray, y: FloatArray
) -> None:
    """Sums of a hinge s and a step H at ``d``, rounded by ``rho``, added to the last two rows of a (5, 5), y.

    H is taken as (n - d) / s: twice the step, whose half is in the constant.
    """
    for q in range(m):
        n, along, w = data[q, 0], data[q, 1], data[q, 3]
        t = w * (data[q, 2] - mean)
        s = math.sqrt((n - d) * (n - d) + rho * rho)
        h = (n - d) / s
        ws, wh = w * s, w * h
        a[3, 0] += ws
        a[3, 1] += ws * n
        a[3, 2] += ws * along
        a[3, 3] += ws * s
        a[4, 0] += wh
        a[4, 1] += wh * n
        a[4, 2] += wh * along
        a[4, 3] += wh * s
        a[4, 4] += wh * h
        y[3] += t * s
        y[4] += t * h


@njit(fastmath=True, forceinline=True)
def _least(rss: FloatArray, best: Whole, first: float, step: float, size: float) -> Trial:
    """The best of a row by its sums of squares, its place and least between the trials by a parabola."""
    least, place = rss[best], first + best * step
    if 0 < best < len(rss) - 1:
        bend = rss[best - 1] - 2 * rss[best] + rss[best + 1]
        off = rss[best - 1] - rss[best + 1]
        if bend > 0.0:
            least -= 0.125 * off * off / bend
            place += 0.5 * step * off / bend
    return Trial(least, place, size)


@njit(fastmath=True, forceinline=True)
def trials(
    data: FloatArray, m: int, first: float, step: float, number: Whole, rho: float
) -> tuple[Trial, Trial]:
    """Row of straight breaks at ``first``, ``first`` + ``step``, ...: the best hinge and the best step, their
    sums of squares and places between the trials by a parabola.

    One factor of the normal matrix of (1, n, l, s, H) serves both: leaving out its last row leaves the hinge.
    """
    base, a, y, right = np.zeros((5, 5)), np.empty((5, 5)), np.empty(5), np.zeros(5)
    mean, total = 0.0, 0.0
    for q in range(m):
        mean += data[q, 3] * data[q, 2]
        total += data[q, 3]
    mean /= total
    zz = _plane_sums(data, m, mean, base, right)
    rss, least, best, size = np.empty((2, number)), np.full(2, 1e30), np.zeros(2, np.int64), np.zeros(2)
    for k in range(number):
        for r in range(5):  # assigning arrays to slices takes five seconds to compile
            y[r] = right[r]
            for c in range(5):
                a[r, c] = base[r, c]
        _break_sums(data, m, mean, first + k * step, rho, a, y)
        left = zz
        for r in range(5):
            for c in range(r + 1):
                v = a[r, c] + (1e-9 if r == c else 0.0)
                for j in range(c):
                    v -= a[r, j] * a[c, j]
                a[r, c] = math.sqrt(max(v, 1e-12)) if r == c else v / a[c, c]
            for c in range(r):
                y[r] -= a[r, c] * y[c]
            y[r] /= a[r, r]
            left -= y[r] * y[r]
            if r >= 3:
                rss[r - 3, k] = left
                if left < least[r - 3]:
                    least[r - 3], best[r - 3] = left, k
                    size[r - 3] = y[r] / a[r, r] * (1.0 if r == 3 else 2.0)
    return _least(rss[0], best[0], first, step, size[0]), _least(rss[1], best[1], first, step, size[1])


@njit()
def first_fits(
    cells: Cells, place: FloatArray, k0: int, k1: int, pitch: float, variance: float, alone: FloatArray
) -> None:
    """Each knot k0..k1 by itself: alone (n, 9), its columns named above."""
    data, p = np.empty((MOST_BINS, 4)), np.zeros(9)
    hinge = jump = Trial(0.0, 0.0, 0.0)
    edge = -(TRIALS // 2) * TRIAL_STEP
    for t in range(k0, k1):
        m = 0
        for half in (WIDE, NARROW):
            m = gather(cells, place[t], half, pitch, COARSE_ACROSS, COARSE_ALONG, data)
            if m < FEWEST:
                break
            hinge, jump = trials(data, m, edge, TRIAL_STEP, TRIALS, TRIAL_ROUNDING)
            if hinge.rss < variance * (m + POOR_FIT * math.sqrt(2.0 * m)):
                break
        one = alone[t]
        one[BINS] = m
        if m < FEWEST:
            continue
        for q in range(m):
            one[POINTS] += data[q, 3]
        one[QUADRATIC] = linear_fit(data, m, OF_QUADRATIC, p, 0.0).rss
        one[ONE_HINGE], one[AT_HINGE], one[FOLD] = hinge
        if jump.rss < hinge.rss - LIKELY_STEP * variance:
            nearer = jump.place - (FINE_TRIALS // 2) * FINE_STEP
            jump = trials(data, m, nearer, FINE_STEP, FINE_TRIALS, 2 * RISE)[1]
        one[ONE_STEP], one[AT_STEP], one[JUMP] = jump


@njit(fastmath=True, forceinline=True)
def _middle_loses(data: FloatArray, m: int, kind: Whole, p: FloatArray, inner: FloatArray) -> float:
    """Weighted sum of squares, m2, that the narrow window's rows have in the whole window's fit beyond
    that in their own."""
    few = np.int64(0)  # a plain 0 would have ``linear_fit`` compiled a second time, for that number
    for q in range(m):
        if abs(data[q, 0]) < NARROW:
            for c in range(4):
                inner[few, c] = data[q, c]
            few += 1
    if few < FEWEST:
        return 0.0
    own, fit = linear_fit(inner, few, kind, p, 0.0), linear_fit(data, m, kind, p, 0.0)
    whole = 0.0
    for q in range(few):
        n, along = inner[q, 0], inner[q, 1]
        v = n - p[P_D] - p[P_G] * along - p[P_K] * along * along
        s = math.sqrt(v * v + p[P_H] * p[P_H] + TINY * TINY)
        z = fit.a + fit.b * n + fit.c * along + fit.e * s + fit.m * along * along
        if kind == OF_STEP:
            z += fit.h * 0.5 * (1.0 + v / s)
        whole += inner[q, 3] * (inner[q, 2] - z) ** 2
    return whole - own.rss


@njit()
def line_fits(
    cells: Cells, place: FloatArray, model: NDArray[np.int8], bow_of_line: FloatArray, k0: int, k1: int,
    pitch: float, variance: float, fits: LineFits,
) -> None:  # fmt: skip
    """Each knot with its break held on the line n = k l^2 through it, into ``fits``. The wide window is
    taken unless it fits the middle worse than the narrow one does."""
    rss, fold, bow, jump, flat, width, points, beside, sure = fits
    data, inner, p = np.empty((MOST_BINS, 4)), np.empty((MOST_BINS, 4)), np.zeros(9)
    for t in range(k0, k1):
        p[P_K] = bow_of_line[t]
        kind = OF_STEP if model[t] == STEP else OF_HINGE
        p[P_H] = RISE if kind == OF_STEP else ROUNDINGS[1]
        half = WIDE
        m = gather(cells, place[t], half, pitch, BIN_ACROSS, BIN_ALONG, data)
        if _middle_loses(data, m, kind, p, inner) > WORSE * variance:
            half = NARROW
            m = gather(cells, place[t], half, pitch, BIN_ACROSS, BIN_ALONG, data)
        if m < FEWEST:
            continue
        width[t] = half
        for q in range(m):
            points[t] += data[q, 3]
        flat[t] = linear_fit(data, m, OF_BOW, p, 0.0).rss
        for k in range(1 if kind == OF_STEP else len(ROUNDINGS)):
            p[P_H] = RISE if kind == OF_STEP else ROUNDINGS[k]
            one = linear_fit(data, m, kind, p, variance / _ALONG_SD**2)
            rss[t, k], fold[t, k], bow[t, k], jump[t] = one.rss, one.e, one.m, one.h
        if kind == OF_HINGE:
            p[P_H] = ROUNDINGS[1]
            one = linear_fit(data, m, OF_STEP, p, variance / _ALONG_SD**2)
            beside[t], sure[t] = one.h, one.sure


@njit()
def step_fits(
    cells: Cells, place: FloatArray, half: FloatArray, priors: FloatArray, k0: int, k1: int, pitch: float,
    variance: float, params: FloatArray, normal: FloatArray,
) -> None:  # fmt: skip
    """Each step from what its ridge agrees on, priors (n, 2, 9: mean, 1/sd^2): params (n, 9) and its normal
    matrix (n, 9, 9)."""
    data = np.empty((MOST_BINS, 4))
    for t in range(k0, k1):
        m = gather(cells, place[t], half[t], pitch, BIN_ACROSS, BIN_ALONG, data)
        p = params[t]
        for r in range(3, 9):
            p[r] = priors[t, MEAN, r]
        p[P_H] = RISE
        one = linear_fit(data, m, OF_STEP, p, variance * priors[t, CERTAINTY, P_M])
        p[P_A], p[P_B], p[P_C], p[P_E], p[P_M], p[P_H] = one.a, one.b, one.c, one.e, one.m, one.h
        descend(data, m, variance, priors[t], p, normal[t])
