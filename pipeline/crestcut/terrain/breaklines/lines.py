"""Where a ridge runs: first through the breaks that its knots find each alone, then through where all their
windows together have it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.terrain.breaklines.fits import (
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
from crestcut.terrain.breaklines.hinge import HALF_ALONG, HINGE, STEP, WIDE
from crestcut.terrain.breaklines.neighbours import POOL_LONG, POOL_SHORT, Candidates, Neighbours

STEP_PRICE = 30.0  # chi square a step must gain over a hinge, pooled
LEAST_KINK = 0.035  # rise over run: the plain surface rounds a smaller break by less than 0.4 mm
LEAST_STEP = 0.005  # m
CENTRED = 0.07  # m: a break this far off a knot's middle counts 1/e
OFF = 0.06  # m: a knot whose break lies farther from the line speaks of another one
FEWEST_KNOTS = 3.0  # in weight, that a line must run through within 0.3 m
NEAR = 0.09  # m: the ridge passes a knot that near, or has other knots
BENT = 0.15  # 1/m, k of lines that bend: a plan radius of 3 m has 0.17


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
    place: FloatArray, pitch: float, variance: float, alone: FloatArray, may_step: BoolArray
) -> tuple[NDArray[np.int8], FloatArray]:
    """What every knot is (0, HINGE or STEP) and the break line through it as its neighbours see it, (n, 4):
    d, g, k and the variance of d, m2. alone (n, 9) : from ``first_fits``.
    may_step (n,) : where a step may be."""
    model, line = np.zeros(len(place), np.int8), np.zeros((len(place), 4))
    if not len(place):
        return model, line
    pools = Neighbours.of(place, pitch, 0.12)
    near = pools.near
    able = alone[:, BINS] >= FEWEST
    for kind, at, what in ((HINGE, AT_HINGE, FOLD), (STEP, AT_STEP, JUMP)):
        if kind == STEP and not (alone[:, ONE_STEP] < alone[:, ONE_HINGE] - LIKELY_STEP * variance).any():
            break
        able &= may_step | (kind == HINGE)
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


def _lines(place: FloatArray, pools: Neighbours, at: FloatArray, able: BoolArray) -> Lines:
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


def _at(lines: Lines, pools: Neighbours, along: FloatArray) -> FloatArray:
    """n of each owner's line at ``along``, one for each pair, m."""
    t = pools.owner
    return lines.d[t] + along * (lines.g[t] + along * lines.k[t])


def _line(pools: Neighbours, n: FloatArray, along: FloatArray, weight: FloatArray, long: float) -> Lines:
    """Bisquare fit (Tukey) of a line through each pool's breaks, the farther the lighter."""
    d, votes = _vote(pools, n, weight * (np.abs(along) < 0.3))
    lines = Lines(d, 0 * d, 0 * d, 0 * d, votes >= FEWEST_KNOTS, weight)
    taper = weight * np.maximum(1 - (along / long) ** 2, 0.0)
    cutoff = 0.06
    for _ in range(8):
        e = (n - _at(lines, pools, along)) / cutoff
        w = taper * np.maximum(1 - e * e, 0.0) ** 2
        normal, right = _normal(pools, along, n, w)
        d, g, k = np.einsum("nij,nj->in", np.linalg.inv(normal), right)
        lines = Lines(d, g, k, 0 * d, lines.there, w)
        cutoff = max(0.03, 0.75 * cutoff)
    # variance of one knot's place for unit weight times how often each point of the slab was counted
    counted = pools.total((w > 0) * 1.0)
    windows = (pools.length(w > 0) + 2 * HALF_ALONG) / (2 * HALF_ALONG)
    e = n - _at(lines, pools, along)
    scale = (
        pools.mean(w, e * e) * pools.total(w) / np.maximum(counted, 1) * np.maximum(1.0, counted / windows)
    )
    d, g, k, variance = _shrunk(normal, right, scale)
    return Lines(d, g, k, variance, lines.there & (np.abs(d) < NEAR), w)


def _normal(
    pools: Neighbours, along: FloatArray, n: FloatArray, w: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Normal matrices (n, 3, 3) of parabolas through each pool's places, weighted with w, and right sides
    (n, 3); a little slope and bow is held back where a pool is short."""
    powers = [along**p for p in range(5)]
    s = [pools.total(w * p) for p in powers]
    right = np.stack([pools.total(w * n * p) for p in powers[:3]], axis=-1)
    normal = np.stack([np.stack(s[r : r + 3], axis=-1) for r in range(3)], axis=-2)
    normal[:, [0, 1, 2], [0, 1, 2]] += (1e-9, 0.002, 0.0005)
    return normal, right


def _shrunk(normal: FloatArray, right: FloatArray, scale: FloatArray) -> tuple[FloatArray, ...]:
    """d, g, k and the variance of d (m2) of lines with the normal matrices (n, 3, 3) and right sides (n, 3)
    of weighted least squares, ``scale`` (n,) the variance of unit weight, their bow shrunk towards none."""
    inverse = np.linalg.inv(normal)
    free = np.einsum("ni,ni->n", inverse[:, 2], right)
    keep = straightened(free, np.maximum(inverse[:, 2, 2] * scale, 1e-12))
    k = keep * free
    # the line taken again for that bow
    a, b, c = normal[:, 0, 0], normal[:, 0, 1], normal[:, 1, 1]
    det = a * c - b * b
    r0, r1 = right[:, 0] - k * normal[:, 0, 2], right[:, 1] - k * normal[:, 1, 2]
    d, g = (c * r0 - b * r1) / det, (a * r1 - b * r0) / det
    return d, g, k, (keep * inverse[:, 0, 0] + (1 - keep) * c / det) * scale


def straightened(k: FloatArray, variance: FloatArray) -> FloatArray:
    """Share of an estimated bow k (1/m, of that variance) that its posterior mean keeps, where half of all
    breaks are straight and the bows of the others are N(0, BENT^2) (a spike and a slab: Mitchell & Beauchamp
    1988, J. Am. Stat. Assoc. 83:1023). What is clearly bent is hardly straightened: a bow lost moves the
    crest sideways off its points."""
    both = variance + BENT**2
    straight = np.sqrt(both / variance) * np.exp(-0.5 * k * k * (1 / variance - 1 / both))
    share: FloatArray = BENT**2 / both / (1 + straight)
    return share


def refine(knots: Candidates, fits: LineFits) -> FloatArray:
    """Lines (n, 4: d, g, k and variance of d in m2) through where all windows of a ridge together have their
    break; a step keeps its own. knots : with d = g = 0, whose lines ``fits`` were made on.

    A break that lies delta farther: e |v - delta| = e |v| - e delta sign v + O(delta^2), so that the column
    sign v beside the held hinge, 2 H - 1, takes delta = -h / 2 e, one step of Gauss and Newton on the profile
    likelihood, with the variance sigma^2 / (4 e^2 A) for the information A of h. With the fold of the whole
    ridge for e this is linear in the heights: no window can go astray as the best of single trials does, and
    weak windows average out. One such step from a consistent start is as good as the optimum (van der Vaart
    1998, Asymptotic Statistics, section 5.7).
    """
    place, variance, hinge, out = knots.place, knots.variance, knots.model == HINGE, knots.line.copy()
    if not hinge.any():
        return out
    pools = Neighbours.of(place, knots.pitch, 0.05)
    near, owner, along = pools.near, pools.owner, pools.along
    same = pools.same_ridge(knots.line, (hinge & fits.fit_at_all(variance))[near] & hinge[owner])
    taper: FloatArray = np.where(same, 1 - (along / POOL_LONG) ** 2, 0.0)
    fold = pools.mean(taper, fits.fold[near, 1])
    fold = np.where(fold < 0, np.minimum(fold, -LEAST_KINK / 4), np.maximum(fold, LEAST_KINK / 4))
    off = np.clip(-0.5 * fits.beside[near] / fold[owner], -OFF, OFF)
    n = pools.across + off * np.cos(place[near, 2] - place[owner, 2])
    one: FloatArray = np.where(same, 1.0, 0.0)
    usual = np.maximum(pools.mean(one, fits.sure[near]), 1e-9)
    w: FloatArray = taper * (fits.sure[near] / usual[owner])
    normal, right = _normal(pools, along, n, w)
    d, g, k = np.einsum("nij,nj->in", np.linalg.inv(normal), right)
    counted = pools.total(one)
    windows = (pools.length(same) + 2 * HALF_ALONG) / (2 * HALF_ALONG)
    alone = variance / (4 * fold**2 * usual)
    e = n - _at(Lines(d, g, k, d, same, w), pools, along)
    scatter = pools.mean(w, e * e) * windows / np.maximum(windows - 2.0, 0.5)
    # what neighbours share scatters the windows by more than their own noise: alike all over a scan
    shared = max(1.0, float(np.average((scatter / alone)[hinge], weights=windows[hinge])))
    # weights that differ cost sum w^2 / sum w; every point was counted counted / windows times
    scale = alone * shared * pools.mean(w, w) * np.maximum(1.0, counted / windows)
    on = hinge & (counted >= FEWEST_KNOTS)
    out[on] = np.column_stack(_shrunk(normal, right, scale))[on]
    return out


def _vote(pools: Neighbours, n: FloatArray, weight: FloatArray) -> tuple[FloatArray, FloatArray]:
    """The place across that most of each pool's breaks near by run through, m, and how many do."""
    trial = np.arange(-11, 12) * 0.01
    votes = np.stack(
        [pools.total(weight * np.maximum(1 - ((n - t) / 0.03) ** 2, 0.0) ** 2) for t in trial], axis=-1
    )
    best = votes.argmax(axis=1)
    return trial[best], votes[np.arange(pools.n), best]
