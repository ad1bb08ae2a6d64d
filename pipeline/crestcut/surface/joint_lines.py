"""One straight joint: where a strip of points lies lower than both of its sides, how wide, how deep, how far.

Frame of a line: t along it, u to its left, metres, from a place on it. A joint is a strip c - w/2 < u < c +
w/2 of one depth. A sag, a crest or a step along the line lies low too: a strip is believed where the profile
across it cannot be told by any of them (``others``), by as much as chance all but never does.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numba import njit
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.grid import BoolArray, FloatArray

REACH = 0.10  # m to each side of a line that its profile is looked at
SHALLOWEST = 0.002  # m: the depth of a joint
WIDEST = 0.0205  # m: a tyre of 0.3 m radius sinks 0.17 mm into a groove this wide, and into a wider one more
SHORTEST = 0.35  # m
CHANCE = 30.0  # twice the log of the likelihood ratio: 5.5 sd, for the very many lines that could be laid
FOLD = 20.0  # the same, for a fold or a step beside the joint, its place and rounding free
BIN = 0.001  # m of the profile
WIDTHS = (3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 23, 26, 30)  # bins
GAP, SIDE = 2, 45  # bins from strip to side, and of each side, when strips are laid
SEGMENT = 0.10  # m along the line
STOP = 4.0  # log odds against a joint that ends within the scan at any one place: most run from edge to edge
TILE = 0.08  # m, of the index
MANY = 20_000  # points that are enough to lay a strip


@dataclass(frozen=True)
class Strip:
    """A strip about (x, y), m from the lattice's first cell, at ``angle`` (rad, of t from the lattice's rows),
    from ``start`` to ``end`` along t, ``left`` > ``right`` edge in u and ``depth``, all m; score: squared
    standard deviations; loose : ends that lie within the scan."""

    x: float
    y: float
    angle: float
    start: float
    end: float
    right: float
    left: float
    depth: float
    score: float
    loose: int = 2

    @property
    def width(self) -> float:
        """Across, m."""
        return self.left - self.right

    @property
    def chance(self) -> float:
        """What twice the log of the likelihood ratio must exceed."""
        return CHANCE + 2 * STOP * self.loose

    @property
    def length(self) -> float:
        """Along, m."""
        return self.end - self.start

    def along_across(self, x: FloatArray, y: FloatArray) -> tuple[FloatArray, FloatArray]:
        """t and u of places, m."""
        c, s = math.cos(self.angle), math.sin(self.angle)
        return (x - self.x) * c + (y - self.y) * s, (y - self.y) * c - (x - self.x) * s


@dataclass(frozen=True, eq=False)
class Points:
    """x, y (m from the lattice's first cell), height over the wide fit (m) and number among all points, sorted
    by tile; ``begin`` (tiles + 1,) and the tiles' middles (tiles,), m; the wide fit itself, m at every cell
    of ``pitch`` m, NaN where unknown."""

    x: FloatArray
    y: FloatArray
    above: FloatArray
    number: NDArray[np.int64]
    begin: NDArray[np.int64]
    middle: tuple[FloatArray, FloatArray]
    wide: FloatArray
    pitch: float

    @classmethod
    def sort(
        cls,
        x: FloatArray,
        y: FloatArray,
        above: FloatArray,
        number: NDArray[np.int64],
        wide: FloatArray,
        pitch: float,
    ) -> Points:
        """Into tiles of ``TILE``."""
        i, j = (np.floor(a / TILE).astype(np.int64) + 8 for a in (x, y))
        row = int(i.max(initial=0)) + 1
        tile = j * row + i
        order = np.argsort(tile, kind="stable")
        used, begin = np.unique(tile[order], return_index=True)
        middle = ((used % row - 7.5) * TILE, (used // row - 7.5) * TILE)
        arrays = (a[order] for a in (x, y, above, number))
        return cls(*arrays, np.append(begin, len(order)), middle, wide, pitch)  # type: ignore[arg-type]

    def across(self, strip: Strip) -> FloatArray:
        """Mean of the wide fit along the strip's length at every bin of its profile, m: added to the mean of
        heights over that fit, it gives back the slab's own profile, which the fit has smoothed."""
        u = (np.arange(round(2 * REACH / BIN)) + 0.5) * BIN - REACH
        t = np.linspace(strip.start, strip.end, 40)[:, None]
        c, s = math.cos(strip.angle), math.sin(strip.angle)
        at = [(strip.y + t * s + u * c) / self.pitch, (strip.x + t * c - u * s) / self.pitch]
        heights = ndimage.map_coordinates(self.wide, np.stack(np.broadcast_arrays(*at)), order=1, mode="nearest")
        known = np.isfinite(heights).all(axis=1)  # a row of the slab's, whole: its slope along t drops out
        return heights[known].mean(axis=0) if known.any() else np.zeros(len(u))

    def beside(self, line: Strip, reach: float) -> tuple[NDArray[np.int64], FloatArray, FloatArray]:
        """Which points lie within ``reach`` of the line, and their t and u, m."""
        _, off = line.along_across(*self.middle)
        tiles = np.nonzero(np.abs(off) <= reach + 0.71 * TILE)[0]
        first, size = self.begin[tiles], np.diff(self.begin)[tiles]
        total = int(size.sum())
        which = np.repeat(first - np.concatenate([[0], np.cumsum(size)[:-1]]), size) + np.arange(total)
        t, u = line.along_across(self.x[which], self.y[which])
        near = np.abs(u) <= reach
        return which[near], t[near], u[near]


def trace(points: Points, x: float, y: float, angle: float, noise: float) -> Strip | None:
    """The strip that a first guess of its place (m) and direction (rad) leads to, as far as it runs; None
    where nothing stands out. ``noise`` : sd of one point, m."""
    strip = Strip(x, y, angle, -0.6, 0.6, 0.0, 0.0, 0.0, 0.0)
    for turn, longest, least in ((0.030, 1.2, 10.0), (0.015, 2.4, 14.0), (0.008, 1e9, 20.0), (0.003, 1e9, CHANCE)):
        which, t, u = points.beside(strip, REACH + 0.02)
        above = points.above[which]
        on = (t >= strip.start) & (t <= strip.end)
        found = _lay(t[on], u[on], above[on], turn, noise)
        if found is None:
            return None
        lean, right, left, depth, level, score = found
        # the same line, turned; its middle is where it was
        u = (u - lean * t) / math.hypot(1.0, lean)
        inside = (u > right) & (u < left) & (np.abs(t) <= longest)
        runs = _run(t[inside], above[inside] - level, depth, noise, float(t.min()), float(t.max()))
        if runs is None:
            return None
        strip = replace(strip, angle=strip.angle + math.atan(lean), start=runs[0], end=runs[1], loose=runs[2])
        strip = replace(strip, right=right, left=left, depth=depth, score=score)
        strip = _centred(strip)
        if score < least:
            return None
    return strip if strip.score > strip.chance else None


def is_joint(strip: Strip, verdict: Verdict) -> bool:
    """A strip that no other shape explains, narrow, and as deep by itself as it looks beside its sides."""
    deep = verdict.depth > max(SHALLOWEST, 0.5 * strip.depth)
    return verdict.chance > strip.chance and deep and strip.width <= WIDEST and strip.length >= SHORTEST


def _centred(strip: Strip) -> Strip:
    """The same strip about its own middle."""
    t, u = (strip.start + strip.end) / 2, (strip.left + strip.right) / 2
    c, s = math.cos(strip.angle), math.sin(strip.angle)
    half, long = strip.width / 2, strip.length / 2
    return replace(
        strip,
        x=strip.x + t * c - u * s,
        y=strip.y + t * s + u * c,
        start=-long,
        end=long,
        right=-half,
        left=half,
    )


def _lay(
    t: FloatArray, u: FloatArray, above: FloatArray, turn: float, noise: float
) -> tuple[float, float, float, float, float, float] | None:
    """The strip, among all leans up to ``turn`` (rad), places and widths, that lies lowest under the mean of
    its sides in standard deviations: lean, right and left edge, depth, level of the sides (m), score."""
    step = max(1, len(t) // MANY)
    if len(t) < 30:
        return None
    half = min(15, max(3, math.ceil(turn * max(float(np.abs(t).max()), 0.2) / 0.003)))
    leans = np.linspace(-turn, turn, 2 * half + 1)
    bins = round(2 * REACH / BIN)
    best = np.zeros(6)
    _lowest(t[::step], u[::step], above[::step], leans, np.array(WIDTHS), bins, best)
    lean, right, left, depth, level, score = best.tolist()
    right, left = right * BIN - REACH, left * BIN - REACH
    return (lean, right, left, depth, level, score * step / noise**2) if score > 0 else None


@njit(cache=True, nogil=True)
def _lowest(t, u, above, leans, widths, bins, best):  # type: ignore[no-untyped-def]
    """best := lean, first and last bin, depth, level, score (m2) of the strip with the largest score."""
    n, s = np.zeros(bins + 1), np.zeros(bins + 1)
    for lean in leans:
        n[:] = 0.0
        s[:] = 0.0
        for p in range(len(t)):
            place = math.floor((u[p] - lean * t[p] + REACH) / BIN)
            if place >= 0 and place < bins:
                n[place + 1] += 1.0
                s[place + 1] += above[p]
        for b in range(bins):
            n[b + 1] += n[b]
            s[b + 1] += s[b]
        for w in widths:
            for a in range(bins // 2 - 30 - w // 2, bins // 2 + 31 - w // 2):
                e = a + w
                f, g = max(a - GAP - SIDE, 0), min(e + GAP + SIDE, bins)
                ni, nr, nl = n[e] - n[a], n[a - GAP] - n[f], n[g] - n[e + GAP]
                if ni < 4 or nr < 4 or nl < 4:
                    continue
                level = 0.5 * ((s[a - GAP] - s[f]) / nr + (s[g] - s[e + GAP]) / nl)
                fall = level - (s[e] - s[a]) / ni
                score = fall * fall / (1 / ni + 0.25 / nl + 0.25 / nr)
                if fall > 0.0 and score > best[5]:
                    best[0], best[1], best[2], best[3], best[4], best[5] = lean, a, e, fall, level, score


def _run(
    t: FloatArray, above: FloatArray, depth: float, noise: float, low: float, high: float
) -> tuple[float, float, int] | None:
    """From where to where the strip is likelier low than not: the stretch with the largest sum of log
    likelihood ratios, each point's held within +-4 so that no single one decides. An end before the scan ends,
    at ``low`` and ``high``, must earn ``STOP``; how many do is the third."""
    if len(t) < 4:
        return None
    gain = np.clip((above**2 - (above + depth) ** 2) / (2 * noise**2), -4.0, 4.0)
    first, last = math.floor(low / SEGMENT), math.floor(high / SEGMENT)
    sums = np.bincount(np.floor(t / SEGMENT).astype(np.int64) - first, gain, last - first + 1)
    total = np.concatenate([[0.0], np.cumsum(sums)])
    place = np.arange(len(total))
    begins, ends = -total - STOP * (place > 1), total - STOP * (place < len(total) - 2)
    end = int(np.argmax(ends + np.maximum.accumulate(begins)))
    start = int(np.argmax(begins[: end + 1]))
    if end <= start:
        return None
    return (first + start) * SEGMENT, (first + end) * SEGMENT, (start > 1) + (end < len(total) - 2)


@lru_cache(maxsize=2)
def _shapes() -> FloatArray:
    """(shapes, 5, bins) profiles without a joint: a parabola with a crest or sag, sharp or rounded, or a step
    with other slopes on its two sides, at every place."""
    u = (np.arange(round(2 * REACH / BIN)) + 0.5) * BIN - REACH
    plain = [np.ones_like(u), u / REACH, (u / REACH) ** 2]
    out = [[*plain, 0 * u, 0 * u]]
    for at in np.arange(-0.060, 0.0605, 0.004):
        for rho in (0.0, 0.006, 0.015, 0.03):
            out.append([*plain, np.hypot(u - at, rho) / REACH, 0 * u])
    for at in np.arange(-0.060, 0.0605, 0.001):
        out.append([*plain, np.abs(u - at) / REACH, np.where(u > at, 1.0, 0.0)])
    return np.array(out)


@dataclass(frozen=True, eq=False)
class Verdict:
    """chance : twice the log of how much likelier the profile across a strip is with the strip than with any
    other shape alone.  depth : of the strip with the shape that serves it best, m.  base : height of that shape
    over the wide fit at every bin, m."""

    chance: float
    depth: float
    base: FloatArray


def others(
    t: FloatArray, u: FloatArray, above: FloatArray, strip: Strip, noise: float, wide: FloatArray
) -> Verdict:
    """Is it a strip, or one of the other shapes that lie low? Each has its best fit, and the strip any of them
    under it: a joint along a crest is a joint. ``wide`` : the wide fit's own profile, m."""
    bins = round(2 * REACH / BIN)
    on = (t >= strip.start) & (t <= strip.end) & (np.abs(u) < REACH)
    place = np.floor((u[on] + REACH) / BIN).astype(np.int64)
    n = np.bincount(place, minlength=bins)[:bins].astype(float)
    mean = np.bincount(place, above[on], bins)[:bins] / np.maximum(n, 1) + wide
    middle = (np.arange(bins) + 0.5) * BIN - REACH
    low = np.clip((strip.width / 2 - np.abs(middle - (strip.left + strip.right) / 2)) / BIN + 0.5, 0.0, 1.0)
    # points right beside the edges may be the joint's
    off = np.abs(middle - (strip.left + strip.right) / 2) - strip.width / 2
    n = np.where((off > 0) & (off < 0.003), 0.0, n)
    shapes = _shapes()
    with_strip = np.concatenate([shapes, np.broadcast_to(low, (len(shapes), 1, bins))], axis=1)
    level = float(n @ mean) / max(float(n.sum()), 1.0)
    mean = mean - level
    alone, _ = _fitted(shapes, n, mean)
    both, sizes = _fitted(with_strip, n, mean)
    best = int(both.argmin())
    if both[0] - both[best] < FOLD * noise**2:  # a fold or a step that chance explains only bends the base
        best = 0
    base = sizes[best, :-1] @ shapes[best]
    beside = n * (low == 0)
    base += float(beside @ (mean - base)) / max(float(beside.sum()), 1.0)
    return Verdict(float(alone.min() - both.min()) / noise**2, -float(sizes[best, -1]), base + level - wide)


def _fitted(f: FloatArray, n: FloatArray, mean: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Weighted sum of squares about the best combination of each set of shapes, m2, and the combinations."""
    normal = (f * n) @ f.transpose(0, 2, 1)
    normal += (1e-9 * n.sum() + 1e-12) * np.eye(f.shape[1])
    right = (f * n) @ mean
    sizes = np.linalg.solve(normal, right[..., None])[..., 0]
    return float(n @ mean**2) - np.einsum("sk,sk->s", right, sizes), sizes


def at_bin(profile: FloatArray, u: FloatArray) -> FloatArray:
    """The profile at every u."""
    return profile[np.clip(np.floor((u + REACH) / BIN).astype(np.int64), 0, len(profile) - 1)]
