"""Neighbouring knots along one ridge settle what one window cannot: whether it is a break, where it runs,
how far it folds, how round it is.

A 20 % crest gains only about seven units of chi square over a quadratic in one window at 8 mm noise, less
than the Bayesian information criterion asks (Schwarz 1978, Ann. Statist. 6:461); a metre of crest gains
twenty and more. One window places it to 8 mm, which would lower the crest by half the fold times that; two
metres place it to 3 mm.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from scipy.spatial import cKDTree

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.terrain.breaklines.fits import LineFits
from crestcut.terrain.breaklines.hinge import (
    CERTAINTY,
    HALF_ALONG,
    HINGE,
    MEAN,
    P_D,
    P_E,
    P_H,
    P_M,
    ROUNDINGS,
    STEP,
    WIDE,
)
from crestcut.terrain.breaklines.lines import refine
from crestcut.terrain.breaklines.neighbours import POOL_LONG, POOL_SHORT, SAME_LINE, Candidates, Neighbours

# chi square a hinge must gain over a quadratic, pooled: much where it folds little; none where it folds by
# SURE_KINK, for roundings as wide as a quadratic are among those tried
HINGE_PRICE = 10.0
SURE_KINK = 0.12
STRAY = 0.6  # of the usual gain a point
LONGEST_GAP = 0.45  # m, that a ridge is carried over
APART, ABREAST = 0.15, 0.10  # m across and along, where two lines cannot be told apart

SHARP = 0.75  # prior chance of a crest without rounding; the rest falls off with
USUAL_ROUNDING = 0.025  # m
HOLD_PLACE, HOLD_ANGLE, HOLD_BOW = 0.0015, 0.01, 0.03  # m, rad, 1/m
LEAST_FOLD_SD, ALONG_SD, JUMP_SD = 0.004, 0.015, 0.003  # rise over run, 1/m, m


def strays(knots: Candidates, fits: LineFits) -> BoolArray:
    """Steps that explain far less of their points than those beside them: put on a wrong line, a step still
    beats a quadratic."""
    model, pools = knots.model, Neighbours.of(knots.place, knots.pitch, 0.09)
    gain = (fits.flat - fits.rss[:, 0]) / np.maximum(fits.points, 1.0)
    both = (model[pools.owner] == STEP) & (model[pools.near] == STEP) & (np.abs(pools.along) < POOL_SHORT)
    usual = pools.mean(both * np.maximum(gain[pools.near], 0.0), gain[pools.near])
    out: BoolArray = (model == STEP) & (gain < STRAY * usual)
    return out


def bridge(knots: Candidates, every: float) -> Candidates:
    """The knots, with those that gaps of up to ``LONGEST_GAP`` along a ridge want after them. All with d = g
    = 0.  every : m between knots."""
    place, model, line = knots.place, knots.model, knots.line
    pools = Neighbours.of(place, knots.pitch, 0.05)
    t, along = pools.owner, pools.along
    e = pools.across - line[t, 2] * along**2
    ahead = (along > 0.02) & (np.abs(e) < 0.04) & (model[pools.near] == model[t])
    gap = np.minimum.reduceat(np.where(ahead, along, np.inf), np.searchsorted(t, np.arange(pools.n)))
    at = np.flatnonzero(ahead & (along == gap[t]) & (along > 1.5 * every) & (along <= LONGEST_GAP))
    number = np.rint(along[at] / every).astype(int) - 1
    source = np.repeat(t[at], number)
    share = np.concatenate([np.arange(1, m + 1) / (m + 1) for m in number] or [np.zeros(0)])
    run, lean = share * np.repeat(along[at], number), np.repeat(e[at] / along[at], number)
    added = _on(knots[source], lean, run)
    return replace(
        knots,
        place=np.concatenate([place, added.place]),
        model=np.concatenate([model, added.model]),
        line=np.concatenate([line, added.line]),
    )


def _on(knots: Candidates, lean: FloatArray, run: FloatArray) -> Candidates:
    """The knots moved along the lines n = lean l + k l^2 through them to l = ``run`` m, turned with them."""
    place, k, pitch = knots.place, knots.line[:, 2], knots.pitch
    n, c, s = run * (lean + k * run), np.cos(place[:, 2]), np.sin(place[:, 2])
    x, y = place[:, 0] + (n * c - run * s) / pitch, place[:, 1] + (n * s + run * c) / pitch
    return replace(knots, place=np.column_stack([x, y, place[:, 2] - np.arctan(lean + 2 * k * run)]))


@dataclass(frozen=True, eq=False)
class Settled:
    """keep (n,) : whether a break earns its place.  priors (n, 2, 9) : mean and, for steps, 1/sd^2 of each
    knot's parameters.  spread (n, 2) : sd of the line and of the rounding, m."""

    keep: BoolArray
    priors: FloatArray
    spread: FloatArray


def settle(knots: Candidates, fits: LineFits) -> Settled:
    """Fold, rounding (of a hinge) or jump (of a step) and bend along it of each knot from its whole ridge.

    knots : moved onto their lines, d = g = 0.

    The rounding is the mean of its posterior. The likeliest value would err to the round side alone, for a
    break cannot be sharper than sharp.
    """
    model, variance, line = knots.model, knots.variance, knots.line
    n, step = len(model), model == STEP
    pools = Neighbours.of(knots.place, knots.pitch, 0.05)
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
    line = refine(knots, fits)
    priors, spread = np.zeros((n, 2, 9)), np.zeros((n, 2))
    mean, certainty = priors[:, MEAN], priors[:, CERTAINTY]
    mean[:, P_E], mean[:, P_D:P_H], mean[:, P_M] = fold, line[:, :3], bow
    mean[:, P_H] = np.where(step, pools.mean(w, fits.jump[near] * pools.same_way), rounding)
    certainty[:, P_E], certainty[:, P_M] = 1 / fold_sd**2, 1 / ALONG_SD**2
    certainty[:, P_D:P_H] = 1 / np.array([HOLD_PLACE, HOLD_ANGLE, HOLD_BOW]) ** 2
    certainty[:, P_H] = 1 / JUMP_SD**2
    spread[:, 0] = np.sqrt(np.maximum(line[:, 3], 0.0))
    spread[:, 1] = np.where(step, 0.0, np.sqrt(np.maximum(chance @ ROUNDINGS**2 - rounding**2, 0.0)))
    keep = step | (gain >= HINGE_PRICE * (1 - (2 * fold / SURE_KINK) ** 2))
    keep &= ~outdone(replace(knots, line=line), fold, gain)
    return Settled(keep & fits.fit_at_all(variance), priors, spread)


def outdone(knots: Candidates, fold: FloatArray, gain: FloatArray) -> BoolArray:
    """Hinges (n,) beside which, within ``APART`` m, another line folds the same way and gains more: one bend
    of the slab seen twice, as where a line strays off a crest at a small angle."""
    place, pitch, model, line = knots.place, knots.pitch, knots.model, knots.line
    a, b = cKDTree(place[:, :2] * pitch).query_pairs(APART + ABREAST, output_type="ndarray").T
    a, b = np.concatenate([a, b]), np.concatenate([b, a])
    c, s = np.cos(place[a, 2]), np.sin(place[a, 2])
    x, y = ((place[b, :2] - place[a, :2]) * pitch).T
    across, along = x * c + y * s, y * c - x * s
    off = np.abs(across - line[a, 0] - along * (line[a, 1] + along * line[a, 2]))
    rival = (model[a] == HINGE) & (model[b] == HINGE) & (np.abs(along) < ABREAST)
    rival &= (off > SAME_LINE) & (off < APART) & (fold[a] * fold[b] > 0) & (gain[b] > gain[a])
    out = np.zeros(len(place), bool)
    out[a[rival]] = True
    return out


def _prior_of_rounding() -> FloatArray:
    """Prior chance of each of ``ROUNDINGS``: none, or around each of the others as an exponential has it."""
    edge = np.concatenate([(ROUNDINGS[:-1] + ROUNDINGS[1:]) / 2, [0.2]])
    tail = np.exp(-edge / USUAL_ROUNDING)
    return np.concatenate([[SHARP], (1 - SHARP) * (tail[:-1] - tail[1:])])
