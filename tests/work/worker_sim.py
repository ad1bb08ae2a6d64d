"""Somebody who does what the sheet says: exactly, or with a worn wheel, a tilted hand, rocking blocks and a
hanging board.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

import numpy as np

from crestcut.grid import FloatArray
from crestcut.work.jig import Site
from crestcut.work.lanes import SKIN, lay_lanes, runs
from crestcut.work.records import Jig, JigRow, SetOut


@dataclass(frozen=True)
class Slips:
    """How far hand and tool are off: m and degrees; all zero for the exact worker."""

    wear: float = 0.0
    tilt: float = 0.0
    rock: float = 0.0
    sag: bool = False
    disk: bool = False
    reading: float = 0.0


EXACT = Slips()
SLOPPY = Slips(wear=0.002, tilt=3.0, rock=0.001, sag=True, disk=True, reading=0.00025)


def work(
    site: Site, jig: Jig, set_out: SetOut, slips: Slips = EXACT, seed: int = 0, checks: bool = True
) -> FloatArray:
    """The ground (ny, nx) after the work. Printed figures are rounded as they are printed: blocks and depths
    to 0.1 mm.
    """
    draw = np.random.default_rng(seed)
    lanes = lay_lanes(site.ground, site.finished, max(round(jig.tool.pitch / site.cell), 1))
    level = {int(row): site.ground[row].copy() for row in lanes.rows}
    for k, row in enumerate(jig.rows):
        at = int(lanes.rows[row.lane])
        level[at] = np.fmin(level[at], _cut(site, jig, row, at, slips, draw, k / max(len(jig.rows) - 1, 1)))
    for lane, at in enumerate(lanes.rows):
        _by_hand(site, jig, set_out, lane, int(at), level[int(at)], slips, draw, checks)
    if checks and slips != EXACT:
        for row in jig.rows:
            _stick(site, jig, row, level[int(lanes.rows[row.lane])], int(lanes.rows[row.lane]), slips, draw)
    done = _between(site, lanes.rows, level)
    if checks and slips != EXACT:
        _strings(site, set_out, lanes.rows, done, slips, draw)
    return done


def _columns(site: Site, *stations: float) -> list[int]:
    return [round((s - site.station[0]) / site.cell) for s in stations]


def _underside(site: Site, row: JigRow, at: int) -> tuple[int, int, FloatArray]:
    """Columns of the blocks, and the board's underside between them, from the printed block heights."""
    a, b = _columns(site, row.rear_at, row.front_at)
    ends = site.ground[at, a] + round(row.rear, 4), site.ground[at, b] + round(row.front, 4)
    return a, b, np.linspace(*ends, b - a + 1)


def _cut(
    site: Site, jig: Jig, row: JigRow, at: int, slips: Slips, draw: np.random.Generator, progress: float
) -> FloatArray:
    """Level of one setting after smoothing, inf beyond it."""
    a, b, under = _underside(site, row, at)
    share = np.linspace(0, 1, b - a + 1)
    rock = draw.uniform(-slips.rock, slips.rock, 2)
    tilt = math.sin(math.radians(draw.uniform(-slips.tilt, slips.tilt))) * jig.tool.offset
    hang = jig.board.sag * 4 * share * (1 - share) if slips.sag else 0.0
    line = under + rock[0] * (1 - share) + rock[1] * share - hang + tilt + slips.wear * progress - jig.below
    first, last = _columns(site, row.start, row.stop)
    out = np.full(site.ground.shape[1], np.inf)
    if not slips.disk or jig.tool.wheel is None:
        out[first : last + 1] = line[first - a : last - a + 1]
        return out
    radius = jig.tool.wheel / 2
    reach = int(radius / site.cell)
    for k in range(-reach, reach + 1):
        lift = radius - math.sqrt(radius**2 - (k * site.cell) ** 2)
        part = out[first + k : last + k + 1]
        np.minimum(part, line[first - a : last - a + 1] + lift, out=part)
    return out


def _by_hand(
    site: Site,
    jig: Jig,
    set_out: SetOut,
    lane: int,
    at: int,
    level: FloatArray,
    slips: Slips,
    draw: np.random.Generator,
    checks: bool,
) -> None:
    """Pieces without a board setting: down to the slot depths, straight between them."""
    kerfs = [(*_columns(site, k.station), round(k.depth, 4)) for k in set_out.kerfs if k.lane == lane]
    if not kerfs:
        return
    covered = np.zeros(len(level), bool)
    for row in jig.rows:
        if row.lane == lane:
            first, last = _columns(site, row.start, row.stop)
            covered[first : last + 1] = True
    depth = np.nan_to_num(site.ground[at] - site.finished[at])
    for first, last in runs((depth > SKIN) & ~covered):
        columns = np.arange(first, last + 1)
        wanted = np.interp(columns, [c for c, _ in kerfs], [d for _, d in kerfs])
        off = draw.uniform(-2 * slips.reading, 2 * slips.reading)
        if checks:  # the depth gauge
            off = max(off, -slips.reading)
        level[columns] = site.ground[at, columns] - np.maximum(wanted + off, 0.0)


def _stick(
    site: Site, jig: Jig, row: JigRow, level: FloatArray, at: int, slips: Slips, draw: np.random.Generator
) -> None:
    """The stick under the board, blocks measured again, nobody leaning on it: grind where it stops."""
    a, _, under = _underside(site, row, at)
    first, last = _columns(site, row.start, row.stop)
    part = slice(first, last + 1)
    off = draw.uniform(-slips.reading, slips.reading)
    limit = under[first - a : last - a + 1] - jig.stick + off
    proud = level[part] > limit
    level[part] = np.where(proud, limit - draw.uniform(0, 0.0005), level[part])


def _between(site: Site, rows: np.ndarray, level: dict[int, FloatArray]) -> FloatArray:
    """Fins and smoothing: level between the slots of neighbouring lanes, never above the untouched ground."""
    done = site.ground.copy()
    for low, high in itertools.pairwise(rows):
        share = (np.arange(low, high + 1) - low)[:, None] / (high - low)
        flat = level[int(low)] * (1 - share) + level[int(high)] * share
        done[low : high + 1] = np.fmin(done[low : high + 1], flat)
    return done


def _strings(
    site: Site, set_out: SetOut, rows: np.ndarray, done: FloatArray, slips: Slips, draw: np.random.Generator
) -> None:
    """Every row of the string table; what reads short is ground down around the place, half way to its
    neighbours.
    """
    spread_u, spread_v = round(0.05 / site.cell), round(0.05 / site.cell)
    for s in set_out.strings:
        row = int(rows[s.lane])
        a, b = _columns(site, s.rear_at, s.front_at)
        k = a + round(s.at / site.cell)
        share = (k - a) / (b - a)
        string = site.ground[row, a] * (1 - share) + site.ground[row, b] * share + s.blocks
        short = s.least - (string - done[row, k] + draw.uniform(-slips.reading, slips.reading))
        if short > 0:
            near = done[row - spread_v : row + spread_v + 1, k - spread_u : k + spread_u + 1]
            untouched = site.ground[row - spread_v : row + spread_v + 1, k - spread_u : k + spread_u + 1]
            near[...] = np.where(near < untouched, near - short - draw.uniform(0, 0.0005), near)
