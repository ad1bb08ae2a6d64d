"""Compiled loops over the points along one line: which they are, where a strip of them lies lowest, and how
far it does. Without ``fastmath``: the same sums, in the same order, as if array by array."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.kernels import njit

REACH = 0.10  # m to each side of a line that its profile is looked at
BIN = 0.001  # m of the profile
GAP, SIDE = 2, 45  # bins from strip to side, and of each side, when strips are laid
SEGMENT = 0.10  # m along the line
DEEPEST = 0.08  # m under the slab that a joint's points may lie


class Line(NamedTuple):
    """Through (x, y), m, and cosine and sine of its angle."""

    x: float
    y: float
    cos: float
    sin: float


class Reach(NamedTuple):
    """How far a point may lie off a line, and the middle of its tile off it and along it, m."""

    point: float
    tile_off: float
    tile_along: float


class Groove(NamedTuple):
    """A strip that leans by ``lean`` (rise over run) against a line, 1 m of which is ``slant`` m of it; its
    right and left edges square to it and how far along it is looked at, m; ``level`` of its sides and its
    depth under them, m."""

    lean: float
    slant: float
    right: float
    left: float
    longest: float
    level: float
    depth: float


class Lowest(NamedTuple):
    """The strip with the largest score: lean, first and last bin, depth and level of its sides, m; score,
    m2."""

    lean: float
    first: int
    last: int
    depth: float
    level: float
    score: float


@njit()
def select(
    placed: FloatArray, keep: BoolArray, wide: FloatArray, cells: BoolArray, every: int, out: FloatArray,
    number: IntArray,
) -> int:  # fmt: skip
    """out := column, row, height over ``wide`` and its slope; number := which; how many."""
    ny, nx = wide.shape
    found = 0
    for p in range(0, len(placed), every):
        i, j = math.floor(placed[p, 0] + 0.5), math.floor(placed[p, 1] + 0.5)
        if i < 1 or j < 1 or i >= nx - 1 or j >= ny - 1 or not cells[j, i]:
            continue
        level = wide[j, i]
        tilt_i, tilt_j = 0.5 * (wide[j, i + 1] - wide[j, i - 1]), 0.5 * (wide[j + 1, i] - wide[j - 1, i])
        if math.isfinite(tilt_i):
            level += tilt_i * (placed[p, 0] - i)
        if math.isfinite(tilt_j):
            level += tilt_j * (placed[p, 1] - j)
        above = placed[p, 2] - level
        if above > -DEEPEST and (keep[p] or above < 0.0):
            out[found, 0], out[found, 1], out[found, 2], number[found] = placed[p, 0], placed[p, 1], above, p
            found += 1
    return found


@njit()
def beside(
    x: FloatArray, y: FloatArray, begin: IntArray, middle: tuple[FloatArray, FloatArray], line: Line,
    reach: Reach,
) -> tuple[IntArray, FloatArray, FloatArray]:  # fmt: skip
    """``Points.beside`` of a line."""
    px, py, c, s = line
    off_most, tile_u, tile_t = reach
    number = len(begin) - 1
    tiles = np.empty(number, np.int64)
    found, most = 0, 0
    for tile in range(number):
        dx, dy = middle[0][tile] - px, middle[1][tile] - py
        if abs(dy * c - dx * s) <= tile_u and abs(dx * c + dy * s) <= tile_t:
            tiles[found] = tile
            found += 1
            most += begin[tile + 1] - begin[tile]
    which, t, u = np.empty(most, np.int64), np.empty(most), np.empty(most)
    n = 0
    for tile in tiles[:found]:
        for p in range(begin[tile], begin[tile + 1]):
            dx, dy = x[p] - px, y[p] - py
            off = dy * c - dx * s
            if abs(off) <= off_most:
                which[n], t[n], u[n] = p, dx * c + dy * s, off
                n += 1
    return which[:n], t[:n], u[:n]


@njit()
def lowest(
    t: FloatArray, u: FloatArray, above: FloatArray, leans: FloatArray, widths: IntArray, bins: int
) -> Lowest:
    """The strip with the largest score among leans, places and widths (in bins)."""
    best = Lowest(0.0, 0, 0, 0.0, 0.0, 0.0)
    n, s = np.zeros(bins + 1), np.zeros(bins + 1)
    sides = np.zeros((2, 3, bins + 1))  # right of a bin and left of it: points, their mean, 1 / 4 points
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
        for b in range(GAP, bins - GAP):
            f, g = max(b - GAP - SIDE, 0), min(b + GAP + SIDE, bins)
            nr, nl = n[b - GAP] - n[f], n[g] - n[b + GAP]
            sides[0, 0, b], sides[0, 1, b], sides[0, 2, b] = nr, (s[b - GAP] - s[f]) / nr, 0.25 / nr
            sides[1, 0, b], sides[1, 1, b], sides[1, 2, b] = nl, (s[g] - s[b + GAP]) / nl, 0.25 / nl
        for w in widths:
            for a in range(bins // 2 - 30 - w // 2, bins // 2 + 31 - w // 2):
                e = a + w
                ni = n[e] - n[a]
                if ni < 4 or sides[0, 0, a] < 4 or sides[1, 0, e] < 4:
                    continue
                level = 0.5 * (sides[0, 1, a] + sides[1, 1, e])
                fall = level - (s[e] - s[a]) / ni
                # with sides known for certain the score would be fall^2 ni; the margin is for rounding
                if fall <= 0.0 or fall * fall * ni * (1 + 1e-9) < best.score:
                    continue
                score = fall * fall / (1 / ni + sides[1, 2, e] + sides[0, 2, a])
                if score > best.score:
                    best = Lowest(lean, a, e, fall, level, score)
    return best


@njit()
def gains(
    t: FloatArray, u: FloatArray, above: FloatArray, groove: Groove, twice: float, first: int,
    sums: FloatArray,
) -> int:  # fmt: skip
    """sums := of each ``SEGMENT`` from ``first``, its points' log likelihood ratios of strip to slab, each
    held within +-4 so that no single one decides; how many points. ``twice`` : their variance, m2."""
    lean, slant, right, left, longest, level, depth = groove
    n = 0
    for p in range(len(t)):
        across = (u[p] - lean * t[p]) / slant
        if across > right and across < left and abs(t[p]) <= longest:
            high = above[p] - level
            gain = (high * high - (high + depth) * (high + depth)) / twice
            sums[math.floor(t[p] / SEGMENT) - first] += min(max(gain, -4.0), 4.0)
            n += 1
    return n
