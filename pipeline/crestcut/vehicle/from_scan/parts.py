"""Plates from the height map of an underside: the belly, what hangs below it, the profile of both ends."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.vehicle.from_scan.feet import FOOT
from crestcut.vehicle.records import Part

CELL = 0.02  # m, of the height map
LOWER = 0.005  # m below the belly that makes a part of its own, or so many sd of the points:
CLEARLY = 2.5
_DEEP = 3  # layers of parts under parts
LOW_PART = "low part"  # how what hangs below the belly is called until somebody names it
LEAST_CELLS = 12  # smaller patches are noise
_BLOCK = 5  # cells along and across that give one height of an end's profile
_STRAIGHT = 0.003  # m: an end's profile is as many plates as it needs to be this near
_MEND = "give a mesh or scan of the vehicle on its wheels, z up"


def find_parts(
    heights: FloatArray,
    corner: tuple[float, float],
    wheelbase: float,
    track: float,
    spread: float,
    within: float | None,
    radius: float,
) -> tuple[Part, ...]:
    """The belly first (the level that most of the floor between the tyres has), low parts, then nose and
    tail as plates that follow the lowest of the underside there.

    heights : (ny, nx) over the contact plane, m, NaN unseen; first cell centred at ``corner``.  wheelbase,
    track, spread (1 sd of single points), within (1 sd of a part's height; None: from the spread), radius
    (of the tyres) : m.
    Raises CrestcutError where nothing is seen between the axles.
    """
    ny, nx = heights.shape
    x = np.asarray(corner[0] + np.arange(nx) * CELL, dtype=np.float64)
    y = np.asarray(corner[1] + np.arange(ny) * CELL, dtype=np.float64)
    near = _at_tyres(heights, x, y, wheelbase, track, radius)
    middle = (x[None, :] > 0) & (x[None, :] < wheelbase) & (np.abs(y)[:, None] < track / 2)
    between = middle & ~near & ~np.isnan(heights)
    if between.sum() < LEAST_CELLS:
        raise CrestcutError("nothing is seen between the axles", "underside", _MEND)
    # the fullest 10 mm, then the middle of what lies near it
    floor = heights[between]
    bins = np.floor(floor / 0.01).astype(int)
    most = np.bincount(bins - bins.min()).argmax() + bins.min()
    belly = float(np.median(floor[np.abs(floor - (most + 0.5) * 0.01) < 0.015]))
    half = float(max(min(np.abs(y)[near.any(axis=1)].min(initial=track / 2), track / 2), 0.05))
    sd = within if within is not None else max(spread / 10, 0.001)
    parts = [Part("belly", (0.0, wheelbase), (-half, half), (belly, belly), "belly", within=sd)]
    under, taken = np.full(heights.shape, belly), near.copy()
    for _ in range(_DEEP):  # what hangs below the belly, then below that: a bolt under a tray
        for patch, low in _hanging(heights, under, near, max(LOWER, CLEARLY * spread)):
            j, i = np.nonzero(patch & low)
            part = _part(f"{LOW_PART} {len(parts)}", heights, j, i, x, y, wheelbase, sd)
            parts.append(part)
            share = np.clip((x - part.x[0]) / (part.x[1] - part.x[0]), 0.0, 1.0)
            plate = part.z[0] + share * (part.z[1] - part.z[0])
            under = np.where(patch, np.minimum(under, plate), under)
            taken |= ndimage.binary_dilation(patch, iterations=2)
    ends = np.where(taken, np.nan, heights)
    parts += _end("nose", ends, x, y, x > wheelbase, wheelbase, sd)
    parts += _end("tail", ends, x, y, x < 0.0, wheelbase, sd)
    return tuple(parts)


def _hanging(
    heights: FloatArray, under: FloatArray, near: BoolArray, lower: float
) -> list[tuple[BoolArray, BoolArray]]:
    """Patches that hang ``lower`` (m) below what is known of the underside, and which cells show it."""
    low = ~np.isnan(heights) & (heights < under - lower) & ~near
    # a cell here and there may have been missed, or seen through to something higher
    whole = ndimage.binary_opening(ndimage.binary_closing(low, iterations=1) & ~near, iterations=1)
    label, count = ndimage.label(whole)
    patches = [label == k for k in range(1, count + 1)]
    return [(patch, low) for patch in patches if (patch & low).sum() >= LEAST_CELLS]


def without_ground(
    heights: FloatArray, corner: tuple[float, float], wheelbase: float, track: float
) -> FloatArray:
    """The height map without what lies on the ground away from the wheels: nothing of a vehicle does."""
    ny, nx = heights.shape
    x = np.asarray(corner[0] + np.arange(nx) * CELL, dtype=np.float64)
    y = np.asarray(corner[1] + np.arange(ny) * CELL, dtype=np.float64)
    hubs = _hubs(x, y, wheelbase, track)
    return np.where((np.nan_to_num(heights, nan=np.inf) < FOOT) & ~hubs, np.nan, heights)


def _hubs(x: FloatArray, y: FloatArray, wheelbase: float, track: float) -> BoolArray:
    """Cells beside a hub, where a tyre may reach the ground."""
    beside = np.zeros((len(y), len(x)), dtype=bool)
    for hub in (0.0, wheelbase):
        beside |= (np.abs(x - hub) < 0.5)[None, :] & (np.abs(np.abs(y) - track / 2) < 0.35)[:, None]
    return beside


def _at_tyres(
    heights: FloatArray, x: FloatArray, y: FloatArray, wheelbase: float, track: float, radius: float
) -> BoolArray:
    """Cells that are tyre, or so near to one that the two are mixed: within 0.1 m of what reaches the ground
    beside a hub, and in those rows as far along as the tyre bulges over it.
    """
    foot = (np.nan_to_num(heights, nan=np.inf) < FOOT) & _hubs(x, y, wheelbase, track)
    near = ndimage.binary_dilation(foot, iterations=max(int(0.1 / CELL), 1))
    for hub in (0.0, wheelbase):
        here = np.abs(x - hub) < radius + 2 * CELL
        rows = ndimage.binary_dilation(foot[:, here].any(axis=1), iterations=2)
        near |= rows[:, None] & here[None, :]
    return np.asarray(near)


def _part(
    name: str,
    heights: FloatArray,
    j: IntArray,
    i: IntArray,
    x: FloatArray,
    y: FloatArray,
    wheelbase: float,
    sd: float,
) -> Part:
    """A rectangle round the patch; its height falls or rises along the vehicle by the line through its inner
    cells.
    """
    xs, z = x[i], heights[j, i]
    use = _inside(heights.shape, j, i)
    use &= np.abs(z - np.median(z[use])) < 0.01
    length = float(np.ptp(xs)) + CELL
    slope = np.polyfit(xs[use], z[use], 1)[0] if length > 0.2 and use.sum() > 20 else 0.0
    if abs(slope) * length < 0.004:
        slope = 0.0
    at = float(z[use].mean())
    x0, x1 = _edges(i, x)
    rear, front = (float(at + slope * (end - xs[use].mean())) for end in (x0, x1))
    across = _edges(j, y)
    return Part(name, (x0, x1), across, (rear, front), zone_of((x0, x1), wheelbase), within=sd)


def _edges(index: IntArray, at: FloatArray) -> tuple[float, float]:
    """First and last edge of a patch along one axis, m. An outermost row of cells that is less than half as
    full as the one beside it holds no more than the part's rim, blurred by noise.
    """
    count = np.bincount(index)
    first, last = int(index.min()), int(index.max())
    if last - first > 3:
        first += bool(2 * count[first] < count[first + 1])
        last -= bool(2 * count[last] < count[last - 1])
    return float(at[first]) - CELL / 2, float(at[last]) + CELL / 2


def _inside(shape: tuple[int, ...], j: IntArray, i: IntArray) -> BoolArray:
    """Which of a patch's cells lie two cells inside its rim, or one, or all of a small one: at the rim a
    cell's height is part floor.
    """
    patch = np.zeros(shape, dtype=bool)
    patch[j, i] = True
    for rim in (2, 1):
        kept = ndimage.binary_erosion(patch, iterations=rim)[j, i]
        if kept.sum() >= 4:
            return np.asarray(kept)
    return np.ones(len(j), dtype=bool)


def zone_of(x: tuple[float, float], wheelbase: float) -> str:
    """nose, tail or belly, by the plate's middle (x = rear, front edge in metres from the rear axle)."""
    middle = (x[0] + x[1]) / 2
    return "nose" if middle > wheelbase else "tail" if middle < 0 else "belly"


def _end(
    name: str, heights: FloatArray, x: FloatArray, y: FloatArray, here: BoolArray, wheelbase: float, sd: float
) -> list[Part]:
    """The lowest of an end over its whole width, as few sloping plates as follow it to ``_STRAIGHT``."""
    columns = np.flatnonzero(here & (~np.isnan(heights)).any(axis=0))
    knots = []
    for strip in np.array_split(columns, max(len(columns) // _BLOCK, 1)):
        level = _lowest_level(heights[:, strip])
        if level is not None:
            knots.append((float(x[strip].mean()), level))
    if len(knots) < 2:  # no more than a bumper's edge: the wheels reach as far
        return []
    start, end = x[columns[0]] - CELL / 2, x[columns[-1]] + CELL / 2
    at = np.array([(start, knots[0][1]), *knots, (end, knots[-1][1])])
    # out to the tip as the outer two strips go; towards the axle the belly takes over
    tip, first, second = (-1, -2, -3) if name == "nose" else (0, 1, 2)
    rise = (at[first, 1] - at[second, 1]) / (at[first, 0] - at[second, 0]) * (at[tip, 0] - at[first, 0])
    if abs(rise) > _STRAIGHT:  # else it is noise
        at[tip, 1] += rise
    line = at[_corners(at)]
    seen = ~np.isnan(heights[:, columns]) & (heights[:, columns] < line[:, 1].max() + 0.1)
    rows = np.flatnonzero(seen.any(axis=1))
    across = (float(y[rows[0]]) - CELL / 2, float(y[rows[-1]]) + CELL / 2)
    plates = list(pairwise(line))
    return [
        Part(
            name if len(plates) == 1 else f"{name} {n + 1}",
            (float(a[0]), float(b[0])), across, (float(a[1]), float(b[1])), name, within=sd,
        )
        for n, (a, b) in enumerate(plates)
    ]  # fmt: skip


def _lowest_level(strip: FloatArray) -> float | None:
    """Height of the lowest of a strip's blocks, m; all that lie as low within their noise count, since the
    least of many noisy heights is too low.
    """
    levels, errors = [], []
    for j in range(0, len(strip), _BLOCK):
        own = strip[j : j + _BLOCK]
        own = own[~np.isnan(own)]
        if len(own) >= _BLOCK:
            levels.append(float(np.median(own)))
            errors.append(1.2533 * float(own.std(ddof=1)) / np.sqrt(len(own)))  # of a median, normal noise
    if not levels:
        return None
    level = np.array(levels)
    alike = level < level.min() + max(6.0 * float(np.median(errors)), 0.002)
    return float(level[alike].mean())


def _corners(at: FloatArray) -> list[int]:
    """Indices of the points that a polyline needs so that none of the others is further off in height than
    ``_STRAIGHT`` (Douglas & Peucker 1973, with the vertical distance).
    """
    keep, open_ = {0, len(at) - 1}, [(0, len(at) - 1)]
    while open_:
        a, b = open_.pop()
        if b - a < 2:
            continue
        inner = at[a + 1 : b]
        line = np.interp(inner[:, 0], at[[a, b], 0], at[[a, b], 1])
        off = np.abs(inner[:, 1] - line)
        if off.max() > _STRAIGHT:
            split = a + 1 + int(off.argmax())
            keep.add(split)
            open_ += [(a, split), (split, b)]
    return sorted(keep)
