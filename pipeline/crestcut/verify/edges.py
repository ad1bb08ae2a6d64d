"""Steps left at the edge of the cut, ground cut deeper than it may be, and water that now stays."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid
from crestcut.cut import CutPlan
from crestcut.job import Slab
from crestcut.terrain import Surface, matern32, patch_half
from crestcut.verify.records import Edge, TooDeep
from crestcut.verify.removed import Removed
from crestcut.work import POND_CELL, VERTICAL, Pond, edge_rule, ponds

# m: a fitted surface spreads a step over up to 30 mm, so both sides of it count; a fine scan shows it on less
BASES = (0.02, 0.03, 0.06)
UPRIGHT = 0.9  # of a rise within the shortest base: nothing says that it is bevelled
SURE = 2.0  # standard deviations
SHORTEST = 0.05  # m: shorter is a speck
TOLERANCE = 0.002  # m deeper than the plan is what a hand does (2 mm over: DESIGN's own figure for a jig)
LEAST_AREA = 0.01  # m2
BESIDE = 0.2  # m from the work
NEW = 0.5  # m: a puddle nearer than this to an old one is that one
XY = tuple[float, float]


def edges_left(before: Surface, after: Surface, removed: Removed, feather: float) -> tuple[Edge, ...]:
    """Steps over 1/4 in that are steeper than the feather asked for, beyond what noise explains; the highest
    first.

    feather : rise over run. What the ground did already before the work does not count: the change of depth
    is what is looked at.
    """
    frame = before.height.frame
    # nothing grows by grinding: ground that seems higher by more than its error is a scan gone astray
    depth = np.maximum(removed.depth.values, -removed.sd.values)
    steep = np.zeros(frame.shape, bool)
    slope, rises = np.zeros(frame.shape), []
    for base in BASES:
        step = max(round(base / frame.cell), 1)
        wide, rise = step * frame.cell, _rise(depth, step)
        noise = _rise_noise(before, after, wide, step)
        steep |= (rise / wide > feather + SURE * noise / wide) & (rise > VERTICAL + SURE * noise)
        slope = np.maximum(slope, rise / wide)
        rises.append(rise)
    short, rise = rises[0], rises[-1]
    steep &= ndimage.binary_dilation(removed.work | removed.elsewhere, iterations=step)
    labels, count = ndimage.label(steep, np.ones((3, 3)))
    found = []
    for k in range(1, count + 1):
        inside = labels == k
        rows, columns = np.nonzero(inside)
        length = math.hypot(np.ptp(rows), np.ptp(columns)) * frame.cell
        if length < SHORTEST:
            continue
        j, i = np.unravel_index(int(np.argmax(np.where(inside, rise, -1.0))), rise.shape)
        high, steepest = float(rise[j, i]), float(slope[inside].max())
        uv = (float(i) * frame.cell, float(j) * frame.cell)
        x, y = (float(v) for v in frame.to_site(uv))
        upright = float(short[inside].max()) > UPRIGHT * high
        said = edge_rule(high, math.inf if upright else steepest)
        found.append(Edge(high, steepest, length, (x, y), said))
    return tuple(sorted(found, key=lambda e: -e.rise))


def _rise(depth: FloatArray, step: int) -> FloatArray:
    """Greatest change of depth over ``step`` nodes, centred, along rows or columns, m; 0 where unknown."""
    a, b = step // 2, step - step // 2
    out = []
    for axis in (1, 0):
        z = np.moveaxis(depth, axis, 0)
        change = np.full(z.shape, np.nan)
        change[a : len(z) - b] = np.abs(z[step:] - z[:-step])
        out.append(np.moveaxis(change, 0, axis))
    return np.asarray(np.nan_to_num(np.stack(out)).max(axis=0))


def _rise_noise(before: Surface, after: Surface, base: float, step: int) -> FloatArray:
    """(ny, nx) 1 sd of a change of depth over ``base`` m, ``step`` nodes, m: what two scans' patches and
    points leave of it. Each end is as badly known as the worst node of the window: a patch that few
    points hit is not a step."""
    total = np.zeros(before.height.values.shape)
    for surface in (before, after):
        error, own = surface.error, np.nan_to_num(surface.standard_error.values)
        white = ndimage.maximum_filter(own, 2 * ((step + 1) // 2) + 1)
        patch = 2 * error.patch**2 * (1 - float(matern32(base, patch_half(error))))
        warp = 2 * error.warp**2 * (1 - float(matern32(base, error.warp_length)))
        total += patch + warp + 2 * white**2
    return np.asarray(np.sqrt(total))


def too_deep(removed: Removed, plan: CutPlan, slab: Slab) -> tuple[TooDeep, ...]:
    """Where more went than was planned, than the job's limit allows, or than leaves the steel its cover."""
    depth, sd = removed.depth.values, removed.sd.values
    goal = np.nan_to_num(plan.depth.values)
    allowed = np.nan_to_num(plan.limits.deepest.values)
    where = removed.work | removed.elsewhere
    looked = [
        ("deeper than planned", goal + TOLERANCE, removed.work),
        ("cut where nothing was to be cut", np.zeros_like(goal), removed.elsewhere & ~removed.work),
    ]
    cut = goal > 0
    looked.append(("deeper than the job allows", np.maximum(allowed, goal), cut))
    found = [_deeper(what, depth - limit, sd, mask, removed.depth) for what, limit, mask in looked]
    if slab.steel_depth is not None:
        cover = np.full(goal.shape, slab.steel_depth - slab.keep_cover)
        what = f"less than {slab.keep_cover * 1000:.0f} mm of cover left over the steel"
        near = _deeper(what, depth - cover, sd, where, removed.depth)
        found.append(near and replace(near, steel=True))
    return tuple(f for f in found if f is not None)


def _deeper(what: str, over: FloatArray, sd: FloatArray, mask: BoolArray, grid: HeightGrid) -> TooDeep | None:
    """None where nothing larger than a hand is over, once noise is taken for what it is."""
    cell = grid.frame.cell
    over = np.where(mask & np.isfinite(over), over, -1.0)
    # the mean over a tile is what the standard deviation speaks of
    smooth = ndimage.uniform_filter(np.maximum(over, -0.02), max(round(0.05 / cell), 1))
    sure = (smooth > SURE * np.nan_to_num(sd, nan=1.0)) & mask
    maybe = (smooth > np.nan_to_num(sd, nan=1.0)) & mask
    for found, certain in ((sure, True), (maybe, False)):
        labels, _ = ndimage.label(found)
        size = np.bincount(labels.ravel())[1:] * cell**2
        if size.max(initial=0.0) < LEAST_AREA:
            continue
        kept = np.isin(labels, np.flatnonzero(size >= LEAST_AREA) + 1)
        j, i = np.unravel_index(int(np.argmax(np.where(kept, smooth, -1.0))), smooth.shape)
        x, y = (float(v) for v in grid.frame.to_site((float(i) * cell, float(j) * cell)))
        return TooDeep(what, float(smooth[j, i]), float(kept.sum()) * cell**2, (x, y), certain)
    return None


def new_ponds(before: Surface, after: Surface, removed: Removed) -> tuple[tuple[Pond, XY], ...]:
    """Water that stays now in or beside the work and did not before, with its site x, y; the largest first.

    Farther off two scans of the same ground differ by their drift alone, which makes puddles of its own.
    """
    frame = before.height.frame
    step = max(round(POND_CELL / frame.cell), 1)
    cell = frame.cell * step
    v, u = (np.arange(n, dtype=np.float64) * frame.cell for n in frame.shape)
    both = np.isfinite(before.height.values) & np.isfinite(after.height.values)
    was, now = (
        ponds(np.where(both, s.height.values, np.nan)[::step, ::step], cell, u[::step], v[::step])
        for s in (before, after)
    )
    fresh = [
        p for p in now if not any(math.hypot(p.station - q.station, p.offset - q.offset) < NEW for q in was)
    ]
    far = ndimage.distance_transform_edt(~(removed.work | removed.elsewhere)) * frame.cell
    at = [(round(p.offset / frame.cell), round(p.station / frame.cell)) for p in fresh]
    fresh = [p for p, place in zip(fresh, at, strict=True) if far[place] <= BESIDE]
    places = [frame.to_site((p.station, p.offset)) for p in fresh]
    return tuple((p, (float(x), float(y))) for p, (x, y) in zip(fresh, places, strict=True))
