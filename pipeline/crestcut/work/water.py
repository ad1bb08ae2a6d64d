"""Where water stays and where it spills, before and after the cut.

One flood serves both: from its seeds water rises over the lowest saddles, so the level it reaches at a place
is the least, over all paths from the seeds, of the highest ground on the path (priority-flood, Barnes et al.
2014, Computers & Geosciences 62).
"""

from __future__ import annotations

import heapq
from collections.abc import Sequence

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray
from crestcut.base.kernels import njit
from crestcut.work.ground_records import Pond, Spill, Water
from crestcut.work.trade import PLAIN, TradeWords

PUDDLE = 0.003  # m: shallower is a damp patch (a setting: no published depth of a puddle was found)
PUDDLE_AREA = 0.02  # m2: smaller is not listed
POND_CELL = 0.020  # m: ponds are sought on every node this far apart; a spill level on all of them
ARROWS = 0.40  # m between flow arrows
FLAT = 0.005  # rise over run: flatter has no certain direction from a scan


@njit()
def _flood(z: np.ndarray, seeds: np.ndarray, level: np.ndarray, saddle: np.ndarray) -> None:
    """level : least highest ground on any 8-connected path from a seed; saddle : flat index of that highest
    place. NaN is never entered.

    Nodes come up in order of their level, so the first way that reaches a node is its lowest; nodes under
    water that stands at the level just reached need no order among themselves and wait on a plain stack.
    """
    rows, columns = z.shape
    heap = [(0.0, -1)]
    heap.pop()
    stack = np.empty(z.size, np.int64)
    waiting = 0
    for j in range(rows):
        for i in range(columns):
            if seeds[j, i] and not np.isnan(z[j, i]):
                level[j, i] = z[j, i]
                saddle[j, i] = j * columns + i
                heapq.heappush(heap, (z[j, i], j * columns + i))
    while waiting > 0 or len(heap) > 0:
        if waiting > 0:
            waiting -= 1
            index = stack[waiting]
        else:
            index = heapq.heappop(heap)[1]
        j, i = index // columns, index % columns
        at = level[j, i]
        for jj in range(max(j - 1, 0), min(j + 2, rows)):
            for ii in range(max(i - 1, 0), min(i + 2, columns)):
                if level[jj, ii] < np.inf or np.isnan(z[jj, ii]):
                    continue
                if z[jj, ii] > at:
                    level[jj, ii] = z[jj, ii]
                    saddle[jj, ii] = jj * columns + ii
                    heapq.heappush(heap, (z[jj, ii], jj * columns + ii))
                else:
                    level[jj, ii] = at
                    saddle[jj, ii] = saddle[j, i]
                    stack[waiting] = jj * columns + ii
                    waiting += 1


def flood(z: FloatArray, seeds: BoolArray) -> tuple[FloatArray, IntArray]:
    """Level that water from the seeds must rise to, to reach each node, m (inf where it cannot), and the node
    that decides it (-1).
    """
    level = np.full(z.shape, np.inf)
    saddle = np.full(z.shape, -1, np.int64)
    # copies: a read-only array is another type, for which the loop would be compiled once more
    _flood(np.array(z, dtype=float, order="C"), np.array(seeds, order="C"), level, saddle)
    return level, saddle


def open_edge(z: FloatArray) -> BoolArray:
    """Where water leaves: the rim of what is measured. Beyond it nothing is known, so nothing is said to be
    held back there.
    """
    known = np.pad(~np.isnan(z), 1)
    return ~np.isnan(z) & ~ndimage.binary_erosion(known, np.ones((3, 3)))[1:-1, 1:-1]


def standing_water(z: FloatArray) -> FloatArray:
    """Depth of water that stays after rain, (ny, nx) m; NaN where not measured."""
    level, _ = flood(z, open_edge(z))
    return np.where(np.isnan(z), np.nan, level - z)


def ponds(
    z: FloatArray,
    cell: float,
    station: FloatArray,
    offset: FloatArray,
    least: float = PUDDLE,
    least_area: float = PUDDLE_AREA,
) -> tuple[Pond, ...]:
    """Every pond at least ``least`` m deep and ``least_area`` m2 large, the largest volume first."""
    water = np.nan_to_num(standing_water(z))
    labels, count = ndimage.label(water > 1e-7, np.ones((3, 3)))
    found = []
    for k, box in enumerate(ndimage.find_objects(labels), start=1):
        inside = labels[box] == k
        depth = np.where(inside, water[box], 0.0)
        if depth.max() < least or inside.sum() * cell**2 < least_area:
            continue
        j, i = np.unravel_index(int(depth.argmax()), depth.shape)
        j, i = j + box[0].start, i + box[1].start
        found.append(
            Pond(
                float(water[j, i]),
                float(inside.sum()) * cell**2,
                float(depth.sum()) * cell**2,
                float(z[j, i] + water[j, i]),
                float(station[i]),
                float(offset[j]),
            )
        )
    assert len(ndimage.find_objects(labels)) == count
    return tuple(sorted(found, key=lambda p: -p.volume))


def spill(
    z: FloatArray, gutter: BoolArray, building: BoolArray, station: FloatArray, offset: FloatArray
) -> Spill | None:
    """The lowest saddle between gutter and building, over the gutter's lowest place; None where no measured
    way joins them.
    """
    if not (gutter & ~np.isnan(z)).any() or not (building & ~np.isnan(z)).any():
        return None
    level, saddle = flood(z, gutter)
    reached = np.where(building, level, np.inf)
    at = int(reached.argmin())
    if not np.isfinite(reached.flat[at]):
        return None
    lowest = float(np.nanmin(np.where(gutter, z, np.nan)))
    j, i = np.unravel_index(int(saddle.flat[at]), z.shape)
    return Spill(float(reached.flat[at]) - lowest, float(station[i]), float(offset[j]))


def flow_arrows(
    z: FloatArray, cell: float, station: FloatArray, offset: FloatArray
) -> list[tuple[float, float, float, float]]:
    """Downhill unit vectors on a coarse square; left out where the ground is flatter than 1:200 or not
    measured.
    """
    step = max(round(ARROWS / cell), 1)
    if min(z.shape) < 2 * step:
        return []
    smooth = ndimage.gaussian_filter(
        np.where(np.isnan(z), np.nanmean(z) if (~np.isnan(z)).any() else 0.0, z), step / 4
    )
    across, along = np.gradient(smooth, cell)
    known = ndimage.minimum_filter((~np.isnan(z)).astype(np.uint8), step // 2 + 1) > 0
    out = []
    for j in range(step // 2, z.shape[0], step):
        for i in range(step // 2, z.shape[1], step):
            steep = float(np.hypot(along[j, i], across[j, i]))
            if known[j, i] and steep > FLAT:
                out.append(
                    (
                        float(station[i]),
                        float(offset[j]),
                        float(-along[j, i] / steep),
                        float(-across[j, i] / steep),
                    )
                )
    return out


def water_report(
    before: FloatArray,
    after: FloatArray,
    frame: GridFrame,
    station: FloatArray,
    offset: FloatArray,
    gutter: tuple[str, BoolArray],
    building: tuple[str, BoolArray],
    words: TradeWords = PLAIN,
) -> Water:
    """Ponding, spill level and flow before and after. gutter, building : what they are in words, and where
    (ny, nx).
    """
    step = max(round(POND_CELL / frame.cell), 1)
    was, now = (
        ponds(z[::step, ::step], frame.cell * step, station[::step], offset[::step]) for z in (before, after)
    )
    spill_was, spill_now = (spill(z, gutter[1], building[1], station, offset) for z in (before, after))
    notes = [
        "Water is judged on the scan's own heights: a scan that is 5 mm out over a few metres hides or"
        " invents a puddle."
    ]
    if np.isnan(before).any():
        notes.append(
            "Holes in the scan and its rim are taken to drain: a puddle that reaches one is not seen."
        )
    return Water(
        was,
        now,
        spill_was,
        spill_now,
        gutter[0],
        building[0],
        tuple(flow_arrows(after, frame.cell, station, offset)),
        headline(spill_was, spill_now, was, now, gutter[0], building[0], words),
        tuple(notes),
    )


def headline(
    was: Spill | None,
    now: Spill | None,
    ponds_was: Sequence[Pond],
    ponds_now: Sequence[Pond],
    gutter: str,
    building: str,
    words: TradeWords = PLAIN,
) -> str:
    """The one line on water."""
    if was is None or now is None:
        level = f"Spill level: not told, no measured way from {gutter} to {building}."
    else:
        before, after = (round(spill.height * 1000) for spill in (was, now))  # as printed, and so the rest
        level = f"Spill level from {gutter} to {building}: {before} mm before, {after} mm after the cut."
        if after < before:
            level += (
                f" The cut takes {before - after} mm off what keeps water out: check with the drain running."
            )
    new = [
        p
        for p in ponds_now
        if not any(abs(p.station - q.station) < 0.5 and abs(p.offset - q.offset) < 0.5 for q in ponds_was)
    ]
    return (
        f"{level} {words.ponds.capitalize()} over 3 mm: {len(ponds_was)} before, {len(ponds_now)}"
        f" after{f', {len(new)} of them new' if new else ''}."
    )
