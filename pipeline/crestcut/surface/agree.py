"""Neighbouring knots along one ridge settle what one window cannot: whether it is a break, where it runs,
how far it folds, how round it is.

A 20 % crest gains only about seven units of chi square over a quadratic in one window at 8 mm noise, less
than the Bayesian information criterion asks (Schwarz 1978, Ann. Statist. 6:461); a metre of crest gains
twenty and more. One window places it to 8 mm, which would lower the crest by half the fold times that; two
metres place it to 3 mm.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from crestcut.grid import BoolArray, FloatArray, IntArray
from crestcut.surface.fits import (
    AT_HINGE,
    AT_STEP,
    BINS,
    FEWEST,
    FOLD,
    JUMP,
    LIKELY_STEP,
    ONE_HINGE,
    ONE_STEP,
    QUADRATIC,
    LineFits,
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
STRAY = 0.6  # of the usual gain a point
FEWEST_KNOTS = 3.0  # in weight, that a line must run through within 0.3 m
NEAR = 0.09  # m: the ridge passes a knot that near, or has other knots
LONGEST_GAP = 0.45  # m, that a ridge is carried over
STRAIGHT = 3.0  # units of chi square by which plan curvature is shrunk (James & Stein 1961, with one freedom)

SHARP = 0.75  # prior chance of a crest without rounding; the rest falls off with
USUAL_ROUNDING = 0.025  # m
HOLD_PLACE, HOLD_ANGLE, HOLD_BOW, HOLD_ROUND = 0.0015, 0.01, 0.03, 0.0025  # m, rad, 1/m, m
LEAST_FOLD_SD, ALONG_SD, JUMP_SD = 0.004, 0.015, 0.003  # rise over run, 1/m, m


@dataclass(frozen=True, eq=False)
class Pools:
    """Pairs of knots along one ridge: ``near`` lies at (``across``, ``along``) m in the axes of ``owner``.
    Sorted by owner; every one of the n is also its own neighbour. same_way : -1 where n points the other way,
    so that a fall is a rise."""

    n: int
    owner: IntArray
    near: IntArray
    across: FloatArray
    along: FloatArray
    same_way: FloatArray

    @classmethod
    def of(cls, place: FloatArray, pitch: float, wide: float) -> Pools:
        """Knots within ``POOL_LONG`` m along the break of each, and ``wide`` m across it, farther off the
        wider."""
        n = len(place)
        xy = place[:, :2] * pitch
        pairs = cKDTree(xy).query_pairs(POOL_LONG + wide, output_type="ndarray")
        owner = np.concatenate([pairs[:, 0], pairs[:, 1], np.arange(n)])
        near = np.concatenate([pairs[:, 1], pairs[:, 0], np.arange(n)])
        order = np.lexsort((near, owner))
        owner, near = owner[order], near[order]
        c, s = np.cos(place[owner, 2]), np.sin(place[owner, 2])
        x, y = (xy[near] - xy[owner]).T
        across, along = x * c + y * s, y * c - x * s
        turn = place[near, 2] - place[owner, 2]
        room = wide + 0.1 * np.abs(along) + 0.2 * along**2
        keep = (np.abs(along) < POOL_LONG) & (np.abs(across) <= room) & (np.abs(np.sin(turn)) <= 0.5)
        same_way = np.where(np.cos(turn) < 0, -1.0, 1.0)
        return cls(n, owner[keep], near[keep], across[keep], along[keep], same_way[keep])

    def total(self, values: FloatArray) -> FloatArray:
        """Sum over each owner's pool, (n,)."""
        out: FloatArray = np.bincount(self.owner, values, self.n).astype(float)
        return out

    def mean(self, weight: FloatArray, values: FloatArray) -> FloatArray:
        """Weighted mean over each owner's pool, (n,)."""
        return self.total(weight * values) / np.maximum(self.total(weight), 1e-12)

    def length(self, on: BoolArray) -> FloatArray:
        """From the first to the last of the pool's marked knots, m, (n,)."""
        start = np.searchsorted(self.owner, np.arange(self.n))
        along = np.where(on, self.along, 0.0)
        return np.maximum.reduceat(along, start) - np.minimum.reduceat(along, start)


@dataclass(frozen=True, eq=False)
class Lines:
    """Break line n = d + g l + k l^2 in each knot's axes; variance of d, m2; ``there`` False where no line
    runs; ``weight`` of each pair for its owner's line."""

    d: FloatArray
    g: FloatArray
    k: FloatArray
    variance: FloatArray
    there: BoolArray
    weight: FloatArray


def find_lines(
    place: FloatArray, pitch: float, variance: float, alone: FloatArray
) -> tuple[NDArray[np.int8], FloatArray]:
    """What every knot is (0, HINGE or STEP) and the break line through it as its neighbours see it, (n, 4):
    d, g, k and the variance of d, m2. alone (n, 9) : from ``first_fits``."""
    model, line = np.zeros(len(place), np.int8), np.zeros((len(place), 4))
    if not len(place):
        return model, line
    pools = Pools.of(place, pitch, 0.12)
    near = pools.near
    able = alone[:, BINS] >= FEWEST
    for kind, at, what in ((HINGE, AT_HINGE, FOLD), (STEP, AT_STEP, JUMP)):
        if kind == STEP and not (alone[:, ONE_STEP] < alone[:, ONE_HINGE] - LIKELY_STEP * variance).any():
            break
        lines = _lines(place, pools, alone[:, at], able)
        way = pools.same_way if kind == STEP else 1.0
        size = np.abs(pools.mean(lines.weight, alone[near, what] * way))
        if kind == HINGE:
            is_one = 2 * size >= LEAST_KINK
        else:
            windows = np.minimum(pools.length(lines.weight > 0) + 2 * HALF_ALONG, 2.0) / (2 * HALF_ALONG)
            least = np.minimum(alone[:, ONE_HINGE], alone[:, QUADRATIC])
            gain = pools.mean(lines.weight, (least - alone[:, ONE_STEP])[near]) / variance * windows
            is_one = (size >= LEAST_STEP) & (gain >= STEP_PRICE)
        is_one &= lines.there & able
        model[is_one] = kind
        line[is_one] = np.column_stack([lines.d, lines.g, lines.k, lines.variance])[is_one]
    # a step bends the windows beside it: what hinges are found there are its own flanks
    beside = (model[near] == STEP) & (np.abs(pools.along) < 0.15) & (np.abs(pools.across) < WIDE)
    model[(model == HINGE) & (pools.total(1.0 * beside) > 0)] = 0
    return model, line


def _lines(place: FloatArray, pools: Pools, at: FloatArray, able: BoolArray) -> Lines:
    """Lines through the breaks that single knots found at ``at`` m from their middles: over the long pool,
    or over the short one where that bends away from it by more than chance."""
    turn = place[pools.near, 2] - place[pools.owner, 2]
    off = at[pools.near]
    n, along = pools.across + off * np.cos(turn), pools.along + off * np.sin(turn)
    weight = np.exp(-((off / CENTRED) ** 2)) * able[pools.near]
    long = _line(pools, n, along, weight, POOL_LONG)
    e = n - _at(long, pools, along)
    close = weight * ((np.abs(along) < 0.3) & (np.abs(e) < OFF))
    scatter = np.sqrt(pools.mean(close, e * e) / 2.5)
    away = (np.abs(pools.mean(close, e)) > 2.5 * scatter + 0.002) & (pools.total((close > 0) * 1.0) >= 3)
    if not away.any():
        return long
    short = _line(pools, n, along, weight * (np.abs(along) < POOL_SHORT), POOL_SHORT)
    d, g, k, variance = (
        np.where(away, getattr(short, f), getattr(long, f)) for f in ("d", "g", "k", "variance")
    )
    there = np.where(away, short.there, long.there)
    return Lines(d, g, k, variance, there, np.where(away[pools.owner], short.weight, long.weight))


def _at(lines: Lines, pools: Pools, along: FloatArray) -> FloatArray:
    """n of each owner's line at ``along``, one for each pair, m."""
    t = pools.owner
    return lines.d[t] + along * (lines.g[t] + along * lines.k[t])


def _line(pools: Pools, n: FloatArray, along: FloatArray, weight: FloatArray, long: float) -> Lines:
    """Bisquare fit (Tukey) of a line through each pool's breaks, the farther the lighter."""
    d, votes = _vote(pools, n, weight * (np.abs(along) < 0.3))
    lines = Lines(d, 0 * d, 0 * d, 0 * d, votes >= FEWEST_KNOTS, weight)
    taper = weight * np.maximum(1 - (along / long) ** 2, 0.0)
    powers = [along**p for p in range(5)]
    cutoff = 0.06
    for _ in range(8):
        e = (n - _at(lines, pools, along)) / cutoff
        w = taper * np.maximum(1 - e * e, 0.0) ** 2
        s = [pools.total(w * p) for p in powers]
        right = np.stack([pools.total(w * n * p) for p in powers[:3]], axis=-1)
        normal = np.stack([np.stack(s[r : r + 3], axis=-1) for r in range(3)], axis=-2)
        normal[:, [0, 1, 2], [0, 1, 2]] += (1e-9, 0.002, 0.0005)
        inverse = np.linalg.inv(normal)
        d, g, k = np.einsum("nij,nj->in", inverse, right)
        lines = Lines(d, g, k, 0 * d, lines.there, w)
        cutoff = max(0.03, 0.75 * cutoff)
    # variance of one knot's place for unit weight times how often each point of the slab was counted
    counted = pools.total((w > 0) * 1.0)
    windows = (pools.length(w > 0) + 2 * HALF_ALONG) / (2 * HALF_ALONG)
    e = n - _at(lines, pools, along)
    scale = pools.mean(w, e * e) * s[0] / np.maximum(counted, 1) * np.maximum(1.0, counted / windows)
    # plan curvature shrunk towards a straight line, and the line taken again for it
    keep = np.maximum(0.0, 1 - STRAIGHT * inverse[:, 2, 2] * scale / np.maximum(k * k, 1e-12))
    k = k * keep
    a, b, c = normal[:, 0, 0], normal[:, 0, 1], normal[:, 1, 1]
    det = a * c - b * b
    r0, r1 = right[:, 0] - k * normal[:, 0, 2], right[:, 1] - k * normal[:, 1, 2]
    d, g = (c * r0 - b * r1) / det, (a * r1 - b * r0) / det
    variance = (keep * inverse[:, 0, 0] + (1 - keep) * c / det) * scale
    return Lines(d, g, k, variance, lines.there & (np.abs(d) < NEAR), w)


def _vote(pools: Pools, n: FloatArray, weight: FloatArray) -> tuple[FloatArray, FloatArray]:
    """The place across that most of each pool's breaks near by run through, m, and how many do."""
    trial = np.arange(-11, 12) * 0.01
    votes = np.stack(
        [pools.total(weight * np.maximum(1 - ((n - t) / 0.03) ** 2, 0.0) ** 2) for t in trial], axis=-1
    )
    best = votes.argmax(axis=1)
    return trial[best], votes[np.arange(pools.n), best]


def strays(place: FloatArray, pitch: float, model: NDArray[np.int8], fits: LineFits) -> BoolArray:
    """Steps that explain far less of their points than those beside them: put on a wrong line, a step still
    beats a quadratic."""
    pools = Pools.of(place, pitch, 0.09)
    gain = (fits.flat - fits.rss[:, 0]) / np.maximum(fits.points, 1.0)
    both = (model[pools.owner] == STEP) & (model[pools.near] == STEP) & (np.abs(pools.along) < POOL_SHORT)
    usual = pools.mean(both * np.maximum(gain[pools.near], 0.0), gain[pools.near])
    out: BoolArray = (model == STEP) & (gain < STRAY * usual)
    return out


def bridge(
    place: FloatArray, pitch: float, model: NDArray[np.int8], line: FloatArray, every: float
) -> tuple[FloatArray, IntArray]:
    """Knots that gaps of up to ``LONGEST_GAP`` along a ridge want: their places (m, 3), and the knot before
    each. line (n, 4) : with d = g = 0.  every : m between knots."""
    pools = Pools.of(place, pitch, 0.05)
    t, along = pools.owner, pools.along
    e = pools.across - line[t, 2] * along**2
    ahead = (along > 0.02) & (np.abs(e) < 0.04) & (model[pools.near] == model[t])
    gap = np.minimum.reduceat(np.where(ahead, along, np.inf), np.searchsorted(t, np.arange(pools.n)))
    at = np.flatnonzero(ahead & (along == gap[t]) & (along > 1.5 * every) & (along <= LONGEST_GAP))
    number = np.rint(along[at] / every).astype(int) - 1
    source = np.repeat(t[at], number)
    share = np.concatenate([np.arange(1, m + 1) / (m + 1) for m in number] or [np.zeros(0)])
    run, lean = share * np.repeat(along[at], number), np.repeat(e[at] / along[at], number)
    return _on(place[source], line[source, 2], lean, run, pitch), source


def _on(place: FloatArray, k: FloatArray, lean: FloatArray, run: FloatArray, pitch: float) -> FloatArray:
    """Places (m, 3) on the lines n = lean l + k l^2 through ``place`` at l = ``run`` m, turned with them."""
    n, c, s = run * (lean + k * run), np.cos(place[:, 2]), np.sin(place[:, 2])
    x, y = place[:, 0] + (n * c - run * s) / pitch, place[:, 1] + (n * s + run * c) / pitch
    return np.column_stack([x, y, place[:, 2] - np.arctan(lean + 2 * k * run)])


@dataclass(frozen=True, eq=False)
class Settled:
    """keep (n,) : whether a break earns its place.  priors (n, 2, 9) : mean and 1/sd^2 of each knot's
    parameters.  spread (n, 2) : sd of the line and of the rounding, m."""

    keep: BoolArray
    priors: FloatArray
    spread: FloatArray


def settle(
    place: FloatArray,
    pitch: float,
    variance: float,
    model: NDArray[np.int8],
    line: FloatArray,
    fits: LineFits,
) -> Settled:
    """Fold, rounding (of a hinge) or jump (of a step) and bend along it of each knot from its whole ridge.

    place (n, 3) : moved onto the lines.  line (n, 4) : with d = g = 0.

    The rounding is the mean of its posterior. The likeliest value would err to the round side alone, for a
    break cannot be sharper than sharp.
    """
    n, step = len(place), model == STEP
    pools = Pools.of(place, pitch, 0.05)
    near, owner, along = pools.near, pools.owner, pools.along
    e = pools.across - line[owner, 2] * along**2
    same = (model[near] == model[owner]) & (np.abs(e) <= 0.04) & fits.fit_at_all(variance)[near]
    w = np.where(same, 1 - (along / POOL_LONG) ** 2, 0.0)
    length = 0.75 * pools.length(same) + 2 * HALF_ALONG  # tapered
    windows = length / (2 * HALF_ALONG)
    chi = np.stack([pools.mean(w, r[near]) for r in fits.rss.T], axis=-1) * (windows / variance)[:, None]
    gain = pools.mean(w, fits.flat[near]) * windows / variance - chi.min(axis=1)
    chance = _prior_of_rounding() * np.exp(-0.5 * (chi - chi.min(axis=1, keepdims=True)))
    chance[step] = np.eye(len(ROUNDINGS))[0]
    chance /= chance.sum(axis=1, keepdims=True)
    one = (chance[owner] * fits.fold[near]).sum(axis=1)
    fold, bow = pools.mean(w, one), pools.mean(w, (chance[owner] * fits.bow[near]).sum(axis=1))
    # variance of e from one window's noise, derived: |v| less its mean has variance H^2 / 12
    own = variance / np.maximum(fits.points, 1.0) * 12 / WIDE**2
    fold_sd = np.sqrt(np.maximum(pools.mean(w, one**2) - fold**2 - own, LEAST_FOLD_SD**2))
    rounding = chance @ ROUNDINGS
    priors, spread = np.zeros((n, 2, 9)), np.zeros((n, 2))
    priors[:, 0, 3], priors[:, 0, 6], priors[:, 0, 8] = fold, line[:, 2], bow
    priors[:, 0, 7] = np.where(step, pools.mean(w, fits.jump[near] * pools.same_way), rounding)
    priors[:, 1, 3], priors[:, 1, 8] = 1 / fold_sd**2, 1 / ALONG_SD**2
    priors[:, 1, 4:7] = 1 / np.array([HOLD_PLACE, HOLD_ANGLE, HOLD_BOW]) ** 2
    priors[:, 1, 7] = 1 / np.where(step, JUMP_SD, HOLD_ROUND) ** 2
    spread[:, 0] = np.sqrt(np.maximum(line[:, 3], 0.0))
    spread[:, 1] = np.where(step, 0.0, np.sqrt(np.maximum(chance @ ROUNDINGS**2 - rounding**2, 0.0)))
    keep = step | (gain >= HINGE_PRICE * (1 - (2 * fold / SURE_KINK) ** 2))
    return Settled(keep & fits.fit_at_all(variance), priors, spread)


def _prior_of_rounding() -> FloatArray:
    """Prior chance of each of ``ROUNDINGS``: none, or around each of the others as an exponential has it."""
    edge = np.concatenate([(ROUNDINGS[:-1] + ROUNDINGS[1:]) / 2, [0.2]])
    tail = np.exp(-edge / USUAL_ROUNDING)
    return np.concatenate([[SHARP], (1 - SHARP) * (tail[:-1] - tail[1:])])
