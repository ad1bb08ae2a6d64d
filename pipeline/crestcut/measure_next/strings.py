"""Strings worth stretching under a standing vehicle's place: one lengthways, or three as an H.

An H measures what the wheels see of the worst point: a bar in each wheel track, from wheel to wheel, is
read at a chalk mark where the crest crosses the track; the crossbar's blocks stand on those two marks. What a
block stands too low by, the bar there reads too long by, so where exactly the marks are matters little. The
crossbar runs along the crest and is read where the slab comes nearest, in either half of the part that passes
over it: the least gap is at one end of the part as soon as the vehicle leans, so one least does not tell
enough.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.terrain import Surface

BLOCKS, BLOCK_STEP = 0.100, 0.020  # m: usual blocks under a string, and by how much higher ones are
FREE = 0.040  # m, that a string must clear the slab by where it is read
SWING = 0.55  # m along a wheel track, from abreast of the worst point, in which the crest is sought
ASIDE = 0.06  # m, at most, that the crossbar passes the worst point at
BLOCKS_PLACED = 0.010  # m: how near the blocks of a string are set to their places
LINES, PLACES = 45, 31  # marks tried in each track, and places looked at on each line between them
ROOM = 0.12  # share of the wheelbase next to an axle in which no H is asked for
EDGE = 0.05  # share of the crossbar next to a block that is not read


@dataclass(frozen=True, eq=False)
class StringPlan:
    """A string to stretch. points (3, 2) site m: its blocks a and b and where it is read; weights (3,) of the
    heights there; least : shares of the way from and to which the least distance is read, none where it is
    read at the place; expect, blocks : m; how : in plain words."""

    points: FloatArray
    weights: FloatArray
    least: tuple[tuple[float, float], ...]
    expect: float
    blocks: float
    how: str

    @property
    def seek(self) -> tuple[tuple[float, float], ...]:
        """``least`` as m from block a."""
        length = float(np.hypot(*(self.points[1] - self.points[0])))
        return tuple((low * length, up * length) for low, up in self.least)


@dataclass(frozen=True, eq=False)
class Crossbar:
    """Where an H stands. left, right : shares of the way from rear to front wheel of the marks; ends (2, 2)
    site m: the right mark, a, and the left one, b; halves : shares of the crossbar from right to left, from,
    between and to which it is read; at : share abreast of the worst point."""

    left: float
    right: float
    ends: FloatArray
    halves: tuple[float, float, float]
    at: float


def crossbar(
    surface: Surface, feet: FloatArray, worst: FloatArray, across: tuple[float, float], track: float
) -> Crossbar | None:
    """The line between the wheel tracks, close by the worst point, under which the slab stands highest on
    average over the plane of the wheels: along the crest. None where the worst point is not between the
    wheels, or the scan has no ground.

    feet (4, 2), worst (2,) site m.  across : the part from right to left of the middle, m.  track : m.
    """
    middle = feet.reshape(2, 2, 2).mean(axis=1)
    run, over = middle[0] - middle[1], (feet[0] + feet[2] - feet[1] - feet[3]) / 2
    share = float((worst - middle[1]) @ run / (run @ run))
    aside = float((worst - middle[1]) @ over / (over @ over)) + 0.5  # 0 in the right track, 1 in the left
    if not (ROOM < share < 1 - ROOM and 0 < aside < 1):
        return None
    length = float(np.hypot(*run))
    tried = share + np.linspace(-1, 1, LINES) * SWING / length
    left, right = (s.ravel() for s in np.meshgrid(tried, tried))
    passes = np.abs(right + aside * (left - right) - share) * length <= ASIDE
    inside = (np.minimum(left, right) > ROOM / 2) & (np.maximum(left, right) < 1 - ROOM / 2)
    left, right = left[passes & inside], right[passes & inside]
    if not len(left):
        return None
    a, b = _along(feet[3], feet[1], right), _along(feet[2], feet[0], left)
    y = np.linspace(0.0, 1.0, PLACES)[:, None]
    under = surface.height.sample(a + y[..., None] * (b - a))
    high = surface.height.sample(feet)
    plane = (1 - y) * (high[3] + right * (high[1] - high[3])) + y * (high[2] + left * (high[0] - high[2]))
    level = (under - plane).mean(axis=0)
    if np.isnan(level).all():
        return None
    k = int(np.nanargmax(level))
    low, up = (float(np.clip(0.5 + y / track, EDGE, 1 - EDGE)) for y in across)
    if not low < up:
        return None
    return Crossbar(float(left[k]), float(right[k]), np.array([a[k], b[k]]), (low, (low + up) / 2, up), aside)


def h_of_strings(surface: Surface, feet: FloatArray, bar: Crossbar) -> list[StringPlan]:
    """Left bar, right bar and crossbar of an H; none where the scan has not seen the slab under one."""
    mark = 'chalk a mark in {} wheel track where the crest crosses it ("read here"); stretch a string'
    rest = "over it from wheel to wheel, {}, and measure down to the slab at the mark (an H, {} bar)"
    says = [
        f"{mark.format(w)} {rest.format('{}', n)}" for w, n in (("one", "first"), ("the other", "second"))
    ]
    bars = [
        string_plan(surface, feet[2], feet[0], bar.left, says[0]),
        string_plan(surface, feet[3], feet[1], bar.right, says[1]),
    ]
    a, b = bar.ends
    low, middle, up = (share * float(np.hypot(*(b - a))) for share in bar.halves)
    halves = tuple(itertools.pairwise(bar.halves))
    blocks = string_plan(surface, a, b, bar.at, "", halves).blocks
    first, second = (string_plan(surface, a, b, bar.at, "", (h,)) for h in halves)
    expect = [millimetres(p.expect - p.blocks + blocks, 0) for p in (first, second)]
    how = (
        "stretch a string along the crest with its blocks on those two marks, {}, and measure the least "
        f"distance down to the slab twice: between {low:.2f} m and {middle:.2f} m from block a (expect "
        f"{expect[0]}) and between {middle:.2f} m and {up:.2f} m ({expect[1]}). It is the H's crossbar: two "
        '[[string]] in the job file, each with at = "least" and between'
    )
    plans = [*bars, string_plan(surface, a, b, bar.at, how, halves)]
    return plans if all(np.isfinite(p.expect) for p in plans) else []


def string_plan(
    surface: Surface,
    a: FloatArray,
    b: FloatArray,
    share: float,
    how: str,
    least: tuple[tuple[float, float], ...] = (),
) -> StringPlan:
    """A string from a to b read at a share of the way; least : shares between which the least is read."""
    points = np.array([a, b, a + share * (b - a)])
    weights = np.array([1 - share, share, -1.0])
    level = float(weights @ surface.height.sample(points))
    if least:
        along = np.linspace(least[0][0], least[-1][1], max(int(np.hypot(*(b - a)) / 0.01), 20))
        ends = surface.height.sample(np.array([a, b]))
        under = surface.height.sample(a + along[:, None] * (b - a))
        level = float(np.min(ends[0] * (1 - along) + ends[1] * along - under))
    # high enough that the string runs free of the slab, in whole steps
    short = FREE - BLOCKS - level
    blocks = BLOCKS + BLOCK_STEP * math.ceil(short / BLOCK_STEP) if short > 0 else BLOCKS
    on = (
        f"on two {millimetres(blocks, 0)} blocks, pulled with 30 N (3 kg on a luggage scale),"
        f' set to {millimetres(BLOCKS_PLACED, 0)} (placed = "{millimetres(BLOCKS_PLACED, 0)}")'
    )
    return StringPlan(points, weights, least, level + blocks, blocks, how.format(on))


def _along(a: FloatArray, b: FloatArray, share: FloatArray) -> FloatArray:
    return np.asarray(a + share[:, None] * (b - a))
