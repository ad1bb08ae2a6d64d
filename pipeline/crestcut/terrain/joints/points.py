"""Which points lie in a joint, and by how much each is raised so that its noise is not lost with it.

Leaving out a joint's points moves the surface by their share of it times the mean of their noise: 12 mm of
slab at 8 mm noise, up to 0.5 mm. Raised by the joint's depth they keep all of their noise but its mean,
which the depth takes up: of 80 points 0.9 mm, and a twentieth of that at the surface.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy.special import chdtri, logsumexp

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.terrain.joints.lines import REACH, Strip

FINE = 0.00025  # m, bins of an edge's place
ODD = 0.03  # share of a joint's points that may not lie in it: bridges of dirt, or strays
ROUND = 0.002  # m beside each edge that is looked at for a worn arris
PIECE = 0.25  # m of joint with a depth of its own where depths differ
DOUBT = 3.5  # standard deviations


@dataclass(frozen=True, eq=False)
class Raised:
    """For each of the points beside a joint: ``rise`` (m, 0 for most) and ``out`` (to be left out).

    depth : of the joint, m; spread : its standard error, m; whole : points were raised and not left out.
    """

    rise: FloatArray
    out: BoolArray
    depth: float
    spread: float
    whole: bool


def settle(
    t: FloatArray, u: FloatArray, above: FloatArray, strip: Strip, noise: float, farthest: float
) -> Raised:
    """What becomes of the points at (t, u) whose height over the slab is ``above``, all m; ``farthest`` that
    a point may lie from it, m.

    A point in the joint with probability p is raised from its height r to r + p d, d the joint's depth: the
    mean of what it would be without the joint. Its squared error is p (1 - p) d^2 on average; left out, as
    if its noise were none, it would be p (r + d)^2 + (1 - p) r^2 = p (1 - p) d^2 + (r + p d)^2: never less.
    Where the strip is not of one depth with sharp edges (sealant, a worn arris, shadow), all of it goes.
    """
    inside = (t >= strip.start) & (t <= strip.end)
    beside = inside & (np.abs(u) > strip.width / 2 + 0.004)
    sigma = float(np.clip(1.4826 * np.median(np.abs(above[beside])), 0.3 * noise, 2 * noise))
    depth, odd, p = strip.depth, ODD, np.zeros(len(t))
    for _ in range(4):
        p = np.where(inside, _within(t, u, above, strip, depth, sigma, odd), 0.0)
        # of the points between the edges some are odd, at the slab's level
        deep = (1 - odd) * np.exp(_gain(above, depth, sigma))
        share = deep / (deep + odd)
        member = p * share
        n = float(member.sum())
        if n < 4:
            return Raised(np.zeros(len(t)), np.zeros(len(t), np.bool_), depth, math.nan, False)
        depth, odd = -float(member @ above) / n, float(np.clip(1 - n / p.sum(), 1e-4, ODD))
    local, spread = _depths(t, above, member, depth, sigma)
    if not _one_depth(u, above + local, above, p, member, sigma, depth):
        return left_out(t, u, above, strip, sigma)
    rise = np.where(member < 1e-3, 0.0, member * local)
    out = (rise > 0) & (np.abs(above + rise) > farthest)
    rise = np.where(out, 0.0, rise)
    return Raised(rise, out, depth, spread, True)


def _gain(above: FloatArray, depth: float, sigma: float) -> FloatArray:
    """Log of how much likelier a height is in the joint than beside it."""
    return np.clip((above**2 - (above + depth) ** 2) / (2 * sigma**2), -50.0, 50.0)


def _within(
    t: FloatArray, u: FloatArray, above: FloatArray, strip: Strip, depth: float, sigma: float, odd: float
) -> FloatArray:
    """Probability that each point lies between the joint's edges.

    Given the line's lean and the depth, the likelihood of an edge at e is, but for a factor, the product of
    the points' likelihood ratios over one side of it: a running sum of logs over u. With no opinion on where
    the edges are, their posteriors are these, normed, and independent of each other; leans are summed over.
    Hinkley (1970), Biometrika 57:1, on change points; the odd points' share bounds what one point can say.
    """
    ratio = np.exp(_gain(above, depth, sigma))
    gain = np.log(((1 - odd) * ratio + odd) / (1 - odd + odd * ratio))
    reach = min(REACH, strip.width / 2 + 0.008)
    leans = np.arange(-6, 7) * 0.0005 / max(strip.length / 2, 0.2)
    bins = round(2 * reach / FINE)
    middle = bins // 2
    on = np.nonzero((t >= strip.start) & (t <= strip.end) & (np.abs(u) < reach + 0.005))[0]
    chances, t, u, gain = np.zeros(len(t)), t[on], u[on], gain[on]
    logs, odds = np.full(len(leans), -np.inf), np.zeros((len(leans), len(on)))
    for k, lean in enumerate(leans):
        place = np.floor((u - lean * t + reach) / FINE).astype(np.int64)
        ok = (place >= 0) & (place < bins)
        total = np.concatenate([[0.0], np.cumsum(np.bincount(place[ok], gain[ok], bins))])
        right, left = -total[: middle + 1], total[middle:]  # logs of likelihoods of the two edges' places
        a, b = logsumexp(right), logsumexp(left)
        logs[k] = a + b
        after_right = np.cumsum(np.exp(right - a))
        before_left = np.cumsum(np.exp(left - b)[::-1])[::-1]
        chance = np.ones(bins + 1)
        chance[: middle + 1] *= after_right
        chance[middle:] *= np.append(before_left[1:], 0.0)
        odds[k, ok] = chance[place[ok]]
    weight = np.exp(logs - logsumexp(logs))
    chances[on] = weight @ odds
    return chances


def _depths(
    t: FloatArray, above: FloatArray, member: FloatArray, depth: float, sigma: float
) -> tuple[FloatArray, float]:
    """Depth at every point and its standard error, m: one for all, or where pieces differ by more than
    chance, of each piece, drawn to the mean by the variance between them (DerSimonian & Laird 1986, Control.
    Clin. Trials 7:177)."""
    place = np.floor(t / PIECE).astype(np.int64)
    place -= place.min()
    n = np.bincount(place, member)
    mean = -np.bincount(place, member * above) / np.maximum(n, 1e-9)
    base = sigma / math.sqrt(max(8 * n.sum(), 1.0))  # of the slab beside it, eight times as wide
    spread = math.hypot(sigma / math.sqrt(n.sum()), base)
    some = n >= 2
    weight = np.where(some, n / sigma**2, 0.0)
    q = float(weight @ (mean - depth) ** 2)
    if some.sum() < 2 or q < chdtri(int(some.sum()) - 1, 0.001):  # chi square: once in 1,000
        return np.full(len(t), depth), spread
    between = (q - (some.sum() - 1)) / (weight.sum() - (weight @ weight) / weight.sum())
    own = between / (between + 1 / np.maximum(weight, 1e-9)) * some
    local = depth + own * (mean - depth)
    middle = (np.arange(len(n)) + 0.5) * PIECE + np.floor(t.min() / PIECE) * PIECE
    error = np.sqrt(np.mean(np.where(some, own**2, 0.0) / np.maximum(weight, 1e-9)) + spread**2)
    return np.interp(t, middle, local), float(error)


def _one_depth(
    u: FloatArray,
    left_over: FloatArray,
    above: FloatArray,
    p: FloatArray,
    member: FloatArray,
    sigma: float,
    depth: float,
) -> bool:
    """Do the strip's points scatter about its depth as their neighbours do about the slab, right up to its
    edges, and the slab's about zero right from them?"""
    sure = p > 0.9
    n = int(sure.sum())
    if n < 8:
        return False
    scatter = 1.4826 * float(np.median(np.abs(left_over[sure])))
    if scatter > sigma * (1.25 + 3 / math.sqrt(n)) or np.mean(member[sure]) < 1 - 3 * ODD - 2 / n:
        return False
    right, left = float(u[sure].min()), float(u[sure].max())
    within = sure & ((u < right + ROUND) | (u > left - ROUND))
    around = (p < 0.1) & (((u > right - ROUND) & (u < right)) | ((u > left) & (u < left + ROUND)))
    for height, on in ((left_over, within), (above, around)):
        k = int(on.sum())  # medians: where another joint crosses, a few of them lie low
        if k and abs(float(np.median(height[on]))) > max(1.25 * DOUBT * sigma / math.sqrt(k), 0.1 * depth):
            return False
    return True


def left_out(t: FloatArray, u: FloatArray, above: FloatArray, strip: Strip, sigma: float) -> Raised:
    """All of the strip gone and ``ROUND`` beside it, and what lies clearly low a little farther off."""
    off = np.abs(u) - strip.width / 2
    low = (off < 3 * ROUND) & (above < -max(0.3 * strip.depth, 3 * sigma))
    out = (t >= strip.start) & (t <= strip.end) & ((off < ROUND) | low)
    return Raised(np.zeros(len(t)), out, strip.depth, math.nan, False)
