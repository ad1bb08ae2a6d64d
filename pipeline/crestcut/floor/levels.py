"""What to grind off a floor, and what to fill, so that it keeps to its rule.

**A plane or a level.** A floor may stand at most g over it: the greatest ground at or below the present one
that does is min(h, P + g), pointwise, and there is no other least cut. What lies more than g under it is to
fill.

**A straightedge.** Ground G keeps to the rule where w_a G(a) + w_b G(b) <= G(x) + g for every a, x, b of
``straightedge``. If two grounds do, so does their pointwise *minimum*: with m the lesser of both, w_a m(a) +
w_b m(b) is at most what either has, so at most m(x) + g. Their *maximum* need not: with two high spots either
of which may go, keeping the first from one cut and the second from the other keeps both. So a straightedge
has no pointwise least cut, and of many that do, the one that leaves a flat spot is wanted: every high spot is
cut to a level of its own, G = min(h, R + t_i), with R the floor's general level. Any ground between a plane
and that plane plus g keeps to the rule (a chord of G <= R + g lies under R + g <= G + g), so all t_i = g/2
with the low spots filled to R - g/2 always does where R is a plane; from the common level at which all do,
each spot is raised in turn as far as the rule lets it. The outcome is *maximal*: no spot can be left ``STEP``
higher. Certified by laying the straightedge again.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid, IntArray
from crestcut.floor.records import Levelling, Spot
from crestcut.floor.straightedge import worst_gap

STEP = 0.0001  # m: a level is found this well
EXACT = 2e-5  # m: the certificate's own tolerance
TURNS = 6  # of lowering levels until the fine raster keeps to the rule too


@dataclass(frozen=True, eq=False)
class _Spots:
    """Connected pieces over (or under) the general level by more than a common level: labels 1 .. count."""

    label: IntArray
    count: int
    tallest: FloatArray  # (count,) m over the general level


_Side = tuple[_Spots, FloatArray, float]  # the spots of one side, their levels, and everybody's, m


def level_to_reference(
    floor: HeightGrid,
    reference: FloatArray,
    gap: float,
    allowed: FloatArray,
    reasons: Callable[[BoolArray], tuple[str, ...]],
) -> Levelling:
    """The least cut to a plane or level plus ``gap``, and the fill to it less ``gap``. allowed : (ny, nx) m,
    the deepest cut anywhere.  reasons : what limits the nodes of a mask, in words.
    """
    over = floor.values - reference
    wanted = np.maximum(np.nan_to_num(over - gap), 0.0)
    fill = np.maximum(np.nan_to_num(-gap - over), 0.0)
    depth = np.minimum(wanted, allowed)
    left = wanted - depth
    short = float(left.max(initial=0.0))
    high, index = _told(floor, over, depth, "H", lambda _: gap)
    low, _ = _told(floor, over, fill, "L", lambda _: -gap)
    ground_only = float(np.nanmax(np.abs(over - depth)))
    return Levelling(
        _masked(floor, depth),
        _masked(floor, fill),
        floor.like(reference),
        high,
        low,
        "least" if high else "none",
        short <= EXACT,
        ground_only,
        gap + short,
        short if short > EXACT else 0.0,
        reasons(left > EXACT) if short > EXACT else (),
        float(np.nanmax(np.abs(over))),
        STEP,
        index,
    )


def level_to_straightedge(
    floor: HeightGrid,
    generals: Sequence[FloatArray],
    length: float,
    gap: float,
    stride: int,
    allowed: FloatArray,
    reasons: Callable[[BoolArray], tuple[str, ...]],
) -> Levelling:
    """Cut and fill for a straightedge of ``length`` with ``gap`` under it, m. stride : nodes between those on
    which levels are sought; the certificate is on all of them.  generals : levels that spots may be told
    from, the one most wanted first; the first that keeps to the rule itself is taken, so the last should be a
    plane.
    """
    pick = (slice(None, None, stride), slice(None, None, stride))
    cell = floor.frame.cell * stride
    known = np.where(floor.measured, 0.0, np.nan)
    worst = _fine_gap(floor.values, floor.frame.cell, length, stride)
    if worst <= gap + EXACT:
        return nothing_to_do(floor, generals[0], worst)
    general = next(
        (g for g in generals[:-1] if worst_gap((g + known)[pick], cell, length) <= gap / 2), generals[-1]
    )
    over = floor.values - general
    coarse, base = over[pick], general[pick]
    kept = lambda z: worst_gap(z + base, cell, length) <= gap  # noqa: E731
    common = _highest(lambda t: kept(np.clip(coarse, -t, t)), 0.0, float(np.nanmax(np.abs(coarse))))
    high, low = _spots(coarse, common), _spots(-coarse, common)
    up, down = np.full(high.count, common), np.full(low.count, common)
    levelled = lambda: _levelled(coarse, high, up, low, down) + base  # noqa: E731
    near = lambda box: worst_gap(levelled()[box], cell, length) <= gap  # noqa: E731
    reach = math.ceil(length / cell)
    _raise_each(up, high, near, reach)
    _raise_each(down, low, near, reach)
    sides = (high, up, common), (low, down, common)
    made = _finished(floor, general, over, sides, stride, (length, gap), allowed, reasons)
    return replace(made, today=worst)


def nothing_to_do(floor: HeightGrid, general: FloatArray, worst: float) -> Levelling:
    """No cut and no fill. worst : the figure that is asked for, as the floor is."""
    none = np.zeros(floor.frame.shape)
    return Levelling(
        _masked(floor, none), _masked(floor, none), floor.like(general), (), (), "none", True, worst, worst
    )


def _highest(good: Callable[[float], bool], low: float, high: float) -> float:
    """The highest level at which ``good`` still holds, to ``STEP`` on the low side. ``low`` is taken to be
    good.
    """
    if good(high):
        return high
    while high - low > STEP:
        middle = (low + high) / 2
        low, high = (middle, high) if good(middle) else (low, middle)
    return low


def _spots(over: FloatArray, level: float) -> _Spots:
    with np.errstate(invalid="ignore"):
        label, count = ndimage.label(over > level, np.ones((3, 3)))
    each = np.arange(1, count + 1)
    tallest = np.array(ndimage.maximum(np.nan_to_num(over), label, each), dtype=np.float64).reshape(-1)
    return _Spots(label.astype(np.int64), count, tallest[:count])


def _levelled(over: FloatArray, high: _Spots, up: FloatArray, low: _Spots, down: FloatArray) -> FloatArray:
    """The floor over its general level once every spot is at its own level."""
    top = np.concatenate([[np.inf], up])[high.label]
    foot = np.concatenate([[np.inf], down])[low.label]
    return np.asarray(np.clip(over, -foot, top))


def _raise_each(
    level: FloatArray, spots: _Spots, good: Callable[[tuple[slice, slice]], bool], reach: int
) -> None:
    """Each spot in turn, the tallest first, as far from the general level as the rule lets it; in place.

    good : whether the rule is kept within rows and columns.  reach : nodes in a straightedge: no farther from
    a spot does its level matter.
    """
    boxes = ndimage.find_objects(spots.label)
    for k in np.argsort(-spots.tallest, kind="stable"):
        around = tuple(slice(max(s.start - reach, 0), s.stop + reach) for s in boxes[k])
        before, top = float(level[k]), float(spots.tallest[k])

        def holds(t: float, k: int = int(k), around: tuple[slice, ...] = around) -> bool:
            level[k] = t
            return good((around[0], around[1]))

        level[k] = _highest(holds, before, top) if holds(min(before + STEP, top)) else before


def _finished(
    floor: HeightGrid,
    general: FloatArray,
    over: FloatArray,
    sides: tuple[_Side, _Side],
    stride: int,
    rule: tuple[float, float],
    allowed: FloatArray,
    reasons: Callable[[BoolArray], tuple[str, ...]],
) -> Levelling:
    """Depths on all nodes, lowered until the straightedge keeps to the rule on all of them."""
    length, gap = rule
    cell = floor.frame.cell
    lower = 0.0
    for _ in range(TURNS):
        top, foot = (_on_nodes(side, lower, over.shape, stride) for side in sides)
        wanted = np.maximum(np.nan_to_num(over - top), 0.0)
        fill = np.maximum(np.nan_to_num(-foot - over), 0.0)
        worst = _fine_gap(floor.values - wanted + fill, cell, length, stride)
        if worst <= gap + EXACT:
            break
        lower += max((worst - gap) * 0.6, STEP / 2)
    depth = np.minimum(wanted, allowed)
    left = wanted - depth
    filled = (
        worst
        if not left.max(initial=0.0) > 0
        else _fine_gap(floor.values - depth + fill, cell, length, stride)
    )
    short = max(filled - gap, 0.0)
    told, index = _told(floor, over, depth, "H", lambda at: float(top[at]))
    hollows, _ = _told(floor, over, fill, "L", lambda at: -float(foot[at]))
    return Levelling(
        _masked(floor, depth),
        _masked(floor, fill),
        floor.like(general),
        told,
        hollows,
        "maximal" if told else "none",
        short <= EXACT,
        _fine_gap(floor.values - depth, cell, length, stride),
        filled,
        short if short > EXACT else 0.0,
        reasons(left > EXACT) if short > EXACT else (),
        slack=lower + STEP,
        spot_of=index,
    )


def _on_nodes(side: _Side, lower: float, shape: tuple[int, ...], stride: int) -> FloatArray:
    """The level that goes for every node, ``lower`` m less: that of the spot it belongs to or lies beside,
    elsewhere the common one.
    """
    spots, level, common = side
    if spots.count == 0:
        return np.full(shape, max(common - lower, 0.0))
    away, nearest = ndimage.distance_transform_edt(spots.label == 0, return_indices=True)
    of = np.where(away <= 2.0, spots.label[tuple(nearest)], 0)
    j, i = (
        np.minimum((np.arange(n) + stride // 2) // stride, m - 1)
        for n, m in zip(shape, of.shape, strict=True)
    )
    every = np.maximum(np.concatenate([[common], level]) - lower, 0.0)
    return np.asarray(every[of[j[:, None], i[None, :]]])


def _fine_gap(z: FloatArray, cell: float, length: float, stride: int) -> float:
    """The largest gap on every one of the interleaved rasters that make up the nodes, m."""
    return max(
        worst_gap(z[a::stride, b::stride], cell * stride, length)
        for a in range(stride)
        for b in range(stride)
    )


def _masked(floor: HeightGrid, values: FloatArray) -> HeightGrid:
    return floor.like(np.where(floor.measured, values, np.nan))


def _told(
    floor: HeightGrid,
    over: FloatArray,
    amount: FloatArray,
    letter: str,
    level: Callable[[tuple[int, int]], float],
) -> tuple[tuple[Spot, ...], IntArray]:
    """Every connected spot of ``amount`` > 0, the largest volume first, and which of them each node belongs
    to (-1: none). level : of a spot, from the node where most is done.
    """
    label, count = ndimage.label(amount > 0, np.ones((3, 3)))
    cell, found = floor.frame.cell, []
    for k, box in enumerate(ndimage.find_objects(label), start=1):
        inside = label[box] == k
        part = np.where(inside, amount[box], 0.0)
        j, i = np.unravel_index(int(part.argmax()), part.shape)
        at = int(j) + box[0].start, int(i) + box[1].start
        x, y = floor.frame.to_site((at[1] * cell, at[0] * cell))
        ends = (box[1].start, box[0].start, box[1].stop - 1, box[0].stop - 1)
        spot = Spot(
            letter,
            (float(x), float(y)),
            float(over[at]),
            float(part.max()),
            float(inside.sum()) * cell**2,
            float(part.sum()) * cell**2,
            (ends[0] * cell, ends[1] * cell, ends[2] * cell, ends[3] * cell),
            level(at),
        )
        found.append((-spot.volume, k, spot))
    found.sort(key=lambda f: f[:2])
    rank = np.full(count + 1, -1)
    rank[[k for _, k, _ in found]] = np.arange(len(found))
    spots = tuple(replace(spot, name=f"{letter}{n}") for n, (_, _, spot) in enumerate(found, start=1))
    return spots, np.asarray(rank[label], dtype=np.int64)
