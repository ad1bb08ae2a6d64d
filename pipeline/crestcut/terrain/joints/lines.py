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
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.terrain.ground.raster import sort_into
from crestcut.terrain.joints.sums import (
    BIN,
    REACH,
    SEGMENT,
    Groove,
    Line,
    Reach,
    beside,
    gains,
    lowest,
    select,
)

SHALLOWEST = 0.002  # m: the depth of a joint
WIDEST = 0.0205  # m: a tyre of 0.3 m radius sinks 0.17 mm into a groove this wide, and into a wider one more
SHORTEST = 0.35  # m
CHANCE = 32.0  # twice the log of the likelihood ratio: 5.7 sd, for the very many lines that could be laid
FOLD = 20.0  # the same, for a fold or a step beside the joint, its place and rounding free
ROUNDED = (0.0, 0.006, 0.015, 0.03)  # m
FOLDS = 31 * len(ROUNDED)  # shapes of crests and sags, which come before the steps
BENT = 0.003  # m that a parabola bends within ``REACH``: a crest of 20 % bends it by 9 mm
WIDTHS = (3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 23, 26, 30)  # bins
STOP = 4.0  # log odds against a joint that ends within the scan at any one place: most run from edge to edge
TILE = 0.08  # m, of the index
# a first guess is turned by up to so many rad, over so many m each way, and given up below such a score
TURNS = ((0.030, 1.2, 12.0), (0.015, 2.4, 18.0), (0.008, 1e9, 22.0), (0.003, 1e9, CHANCE))
MANY = 20_000  # points that are enough to lay a strip


@dataclass(frozen=True)
class Strip:
    """A strip about (x, y), m from the lattice's first cell, at ``angle`` (rad, of t from the rows).

    start, end : along t, m.  right < left : its edges in u, m.  depth : m.  score : how far it stands out,
    squared standard deviations.  loose : how many of its ends lie within the scan.
    """

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

    def chance(self, area: float) -> float:
        """What twice the log of the likelihood ratio must exceed on so many m2: more lines, more luck."""
        return CHANCE + 2 * STOP * self.loose + 2 * math.log(max(area / 5.0, 1.0))

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
    """x, y (m from the lattice's first cell), height over the wide fit (m) and number among all points, by
    tile; ``begin`` (tiles + 1,) and the tiles' middles (tiles,), m; the wide fit itself, m at every cell
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
    def over(
        cls,
        wide: FloatArray,
        placed: FloatArray,
        keep: BoolArray,
        pitch: float,
        near: BoolArray | None = None,
        every: int = 1,
    ) -> Points:
        """Every so many-th of the placed points (n, 3) in the cells ``near`` that lie on the slab or up to
        ``DEEPEST`` below it; those kept out as too low may be a joint's."""
        cells = np.isfinite(wide) if near is None else near & np.isfinite(wide)
        count = len(placed) // every + 1
        out, number = np.empty((count, 3)), np.empty(count, np.int64)
        k = select(placed, keep, wide, cells, every, out, number)
        side = max(1, round(TILE / pitch))
        ny, nx = (-(-n // side) for n in wide.shape)
        begin, order = sort_into(out[:k], side, ny, nx)
        row, column = (a.ravel().astype(float) for a in np.indices((ny, nx)))
        x, y = (((a + 0.5) * side - 0.5) * pitch for a in (column, row))
        i, j, above = out[order].T
        return cls(i * pitch, j * pitch, above, number[order], begin, (x, y), wide, pitch)

    def across(self, strip: Strip) -> FloatArray:
        """Mean of the wide fit along the strip's length at every bin of its profile, m: added to the mean of
        heights over that fit, it gives back the slab's own profile, which the fit has smoothed."""
        u = (np.arange(round(2 * REACH / BIN)) + 0.5) * BIN - REACH
        t = np.linspace(strip.start, strip.end, 40)[:, None]
        c, s = math.cos(strip.angle), math.sin(strip.angle)
        at = np.broadcast_arrays(strip.y + t * s + u * c, strip.x + t * c - u * s)
        heights = ndimage.map_coordinates(self.wide, np.stack(at) / self.pitch, order=1, mode="nearest")
        known = np.isfinite(heights).all(axis=1)  # a row of the slab's, whole: its slope along t drops out
        return heights[known].mean(axis=0) if known.any() else np.zeros(len(u))

    def beside(
        self, line: Strip, reach: float, within: float = np.inf
    ) -> tuple[NDArray[np.int64], FloatArray, FloatArray]:
        """Which points lie within ``reach`` of the line and ``within`` along it of its place, and their t and
        u, m."""
        at = Line(float(line.x), float(line.y), math.cos(line.angle), math.sin(line.angle))
        corner = 0.75 * max(TILE, self.pitch)
        most = Reach(float(reach), float(reach + corner), float(within + corner))
        return beside(self.x, self.y, self.begin, self.middle, at, most)


def trace(points: Points, x: float, y: float, angle: float, noise: float) -> Strip | None:
    """The strip that a first guess of its place (m) and direction (rad) leads to, as far as it runs; None
    where nothing stands out. ``noise`` : sd of one point, m."""
    strip = Strip(float(x), float(y), float(angle), -0.6, 0.6, 0.0, 0.0, 0.0, 0.0)
    for turn, longest, least in TURNS:
        which, t, u = points.beside(strip, REACH + 0.02, longest)
        above = points.above[which]
        on = (t >= strip.start) & (t <= strip.end)
        found = _lowest_strip(t[on], u[on], above[on], turn)
        if found is None:
            return None
        groove, score = found[0]._replace(longest=longest), found[1] / noise**2
        # the same line, turned; its middle is where it was
        low, high = float(t.min()), float(t.max())
        first, last = math.floor(low / SEGMENT), math.floor(high / SEGMENT)
        sums = np.zeros(last - first + 1)
        n = gains(t, u, above, groove, 2 * noise**2, first, sums)
        runs = _run(sums, first, low, high) if n >= 4 else None
        if runs is None:
            return None
        strip = replace(
            strip, angle=strip.angle + math.atan(groove.lean), start=runs[0], end=runs[1], loose=runs[2]
        )
        strip = replace(strip, right=groove.right, left=groove.left, depth=groove.depth, score=score)
        strip = _centred(strip)
        if score < least:
            return None
    return strip if strip.score > strip.chance(0.0) else None


def is_joint(strip: Strip, verdict: Verdict, least: float) -> bool:
    """A strip that no other shape explains (by ``least`` or more), narrow, and as deep by itself as it looks
    beside its sides."""
    deep = verdict.depth > max(SHALLOWEST, 0.5 * strip.depth)
    return verdict.chance > least and deep and strip.width <= WIDEST and strip.length >= SHORTEST


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


def _lowest_strip(
    t: FloatArray, u: FloatArray, above: FloatArray, turn: float
) -> tuple[Groove, float] | None:
    """The strip, among all leans up to ``turn`` (rad), places and widths, that lies lowest under the mean of
    its sides in standard deviations, and its score times the variance of one point, m2."""
    step = max(1, len(t) // MANY)
    if len(t) < 30:
        return None
    half = min(15, max(3, math.ceil(turn * max(float(np.abs(t).max()), 0.2) / 0.003)))
    leans = np.linspace(-turn, turn, 2 * half + 1)
    bins = round(2 * REACH / BIN)
    best = lowest(t[::step], u[::step], above[::step], leans, np.array(WIDTHS), bins)
    if best.score <= 0:
        return None
    right, left = best.first * BIN - REACH, best.last * BIN - REACH
    slant = math.hypot(1.0, best.lean)
    return Groove(best.lean, slant, right, left, math.inf, best.level, best.depth), best.score * step


def _run(sums: FloatArray, first: int, low: float, high: float) -> tuple[float, float, int] | None:
    """From where to where the strip is likelier low than not: the stretch of segments (of ``_gains``) with
    the largest sum of log likelihood ratios. An end before the scan's, at ``low`` and ``high``, must earn
    ``STOP``; how many do is the third."""
    total = np.concatenate([[0.0], np.cumsum(sums)])
    place = np.arange(len(total))
    begins, ends = -total - STOP * (place > 1), total - STOP * (place < len(total) - 2)
    end = int(np.argmax(ends + np.maximum.accumulate(begins)))
    start = int(np.argmax(begins[: end + 1]))
    if end <= start:
        return None
    loose = start > 1, end < len(total) - 2
    begin = (first + start) * SEGMENT if loose[0] else low
    return begin, (first + end) * SEGMENT if loose[1] else high, sum(loose)


@lru_cache(maxsize=2)
def _shapes() -> FloatArray:
    """(shapes, 5, bins) profiles without a joint: a parabola with a crest or sag, sharp or rounded, or a step
    with other slopes on its two sides, at every place."""
    u = (np.arange(round(2 * REACH / BIN)) + 0.5) * BIN - REACH
    plain = [np.ones_like(u), u / REACH, (u / REACH) ** 2]
    out = [[*plain, 0 * u, 0 * u]]
    for at in np.arange(-15, 16) * 0.004:
        for rho in ROUNDED:
            out.append([*plain, np.hypot(u - at, rho) / REACH, 0 * u])
    for at in np.arange(-60, 61) * 0.001:
        out.append([*plain, np.abs(u - at) / REACH, np.where(u > at, 1.0, 0.0)])
    return np.array(out)


@dataclass(frozen=True, eq=False)
class Verdict:
    """chance : twice the log of how much likelier the profile across a strip is with the strip than with any
    other shape alone.  depth : of the strip with the shape that serves it best, m.  base : height of that
    shape over the wide fit at every bin, m.  folded : it is a crest or sag.  stepped : it
    is a step."""

    chance: float
    depth: float
    base: FloatArray
    folded: bool
    stepped: bool


def others(
    t: FloatArray, u: FloatArray, above: FloatArray, strip: Strip, noise: float, wide: FloatArray
) -> Verdict:
    """Is it a strip, or one of the other shapes that lie low? Each has its best fit, and the strip any of
    them under it: a joint along a crest is a joint. ``wide`` : the wide fit's own profile, m."""
    bins = round(2 * REACH / BIN)
    on = (t >= strip.start) & (t <= strip.end) & (np.abs(u) < REACH)
    place = np.floor((u[on] + REACH) / BIN).astype(np.int64)
    n = np.bincount(place, minlength=bins)[:bins].astype(float)
    mean = np.bincount(place, above[on], bins)[:bins] / np.maximum(n, 1) + wide
    middle = (np.arange(bins) + 0.5) * BIN - REACH
    low = np.clip((strip.width / 2 - np.abs(middle - (strip.left + strip.right) / 2)) / BIN + 0.5, 0.0, 1.0)
    shapes = _shapes()
    with_strip = np.concatenate([shapes, np.broadcast_to(low, (len(shapes), 1, bins))], axis=1)
    level = float(n @ mean) / max(float(n.sum()), 1.0)
    mean = mean - level
    alone, both = _fitted(shapes, n, mean)[0], _fitted(with_strip, n, mean)[0]
    # points right beside the edges may be the joint's: the base is had without them
    off = np.abs(middle - (strip.left + strip.right) / 2) - strip.width / 2
    squares, sizes = _fitted(with_strip, np.where((off > 0) & (off < 0.003), 0.0, n), mean)
    best = int(squares.argmin())
    if squares[0] - squares[best] < FOLD * noise**2:  # a fold or a step that chance explains only bends it
        best = 0
    folded = best > 0 or abs(float(sizes[0, 2])) > BENT
    base = sizes[best, :-1] @ shapes[best]
    beside = n * (off >= 0.003)
    base += float(beside @ (mean - base)) / max(float(beside.sum()), 1.0)
    # what neither explains is the measure: near a step, across which a strip may lie, more than noise
    apart = float(above[on] @ above[on]) - float(n @ (mean + level - wide) ** 2)
    variance = (float(both.min()) + apart) / max(float(n.sum()) - with_strip.shape[1], 1.0)
    chance = float(alone.min() - both.min()) / max(noise**2, variance)
    return Verdict(chance, -float(sizes[best, -1]), base + level - wide, folded, best > FOLDS)


def _fitted(f: FloatArray, n: FloatArray, mean: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Weighted sum of squares about the best combination of each set of shapes, m2, and the combinations."""
    weighted = f * n
    normal = weighted @ f.transpose(0, 2, 1)
    normal += (1e-9 * n.sum() + 1e-12) * np.eye(f.shape[1])
    right = weighted @ mean
    sizes: FloatArray = np.linalg.solve(normal, right[..., None])[..., 0].astype(float)
    return float(n @ mean**2) - np.einsum("sk,sk->s", right, sizes), sizes


def at_bin(profile: FloatArray, u: FloatArray) -> FloatArray:
    """The profile at every u."""
    return profile[np.clip(np.floor((u + REACH) / BIN).astype(np.int64), 0, len(profile) - 1)]
