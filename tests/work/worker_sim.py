"""Somebody who does what the sheet says: exactly, or with a worn wheel, a tilted hand, rocking blocks and a
hanging board.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy.interpolate import LinearNDInterpolator

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.cut.feather import feather_out
from crestcut.work.jig_records import Jig, JigRow
from crestcut.work.records import SetOut
from crestcut.work.site import Site
from crestcut.work.timber import string_sag
from crestcut.work.workable import SKIN


@dataclass(frozen=True)
class Slips:
    """How far hand and tool are off: m and degrees; all zero for the exact worker."""

    wear: float = 0.0
    tilt: float = 0.0
    rock: float = 0.0
    sag: bool = False
    disk: bool = False
    reading: float = 0.0
    taper: float = 0.0


ABOVE = 1e3  # m: where a slot does not reach
EXACT = Slips()
SLOPPY = Slips(wear=0.002, tilt=3.0, rock=0.001, sag=True, disk=True, reading=0.00025, taper=0.1)


def work(
    site: Site, jig: Jig | None, set_out: SetOut, slips: Slips = EXACT, seed: int = 0, checks: bool = True
) -> FloatArray:
    """The ground (ny, nx) after the work. Printed figures are rounded as they are printed: blocks to 0.1 mm,
    places to 10 mm.
    """
    draw = np.random.default_rng(seed)
    depth = np.zeros(site.ground.shape)
    done = np.zeros(site.ground.shape, bool)
    rows = jig.rows if jig is not None else ()
    for k, row in enumerate(rows):
        assert jig is not None
        _setting(site, jig, row, depth, done, slips, draw, k / max(len(rows) - 1, 1))
    chart = _by_hand(site, set_out)
    left = (chart > 0) & ~done
    if slips != EXACT:
        chart = chart + draw.uniform(0.0, 0.0005) - (0.0 if checks else 0.001)
    depth = np.where(left, np.maximum(chart, 0.0), depth)
    if checks and slips != EXACT:
        for row in rows:
            assert jig is not None
            _stick(site, jig, row, depth, slips, draw)
    slope = site.feather * (1 + draw.uniform(-slips.taper, slips.taper))
    depth = np.maximum(depth, feather_out(np.where(done | left, depth, 0.0), slope, site.cell)[0])
    if site.allowed is not None:  # keep areas are taped off
        depth = np.where(site.allowed <= 0, 0.0, depth)
    finished = site.ground - depth
    if checks and slips != EXACT:
        _strings(site, set_out, finished, slips, draw)
    return finished


def _column(site: Site, station: float) -> int:
    return round((station - site.station[0]) / site.cell)


def _row(site: Site, offset: float) -> int:
    return round((offset - site.offset[0]) / site.cell)


def _span(site: Site, row: JigRow, line: int) -> tuple[int, int]:
    """First and last column of a slot: the stop lines are chalked straight from the first slot to the
    last, and are not cut over.
    """
    low, high = _row(site, row.low), _row(site, row.high)
    share = (line - low) / max(high - low, 1)
    ends = [a + (b - a) * share for a, b in (row.start, row.stop)]
    places = [(v - site.station[0]) / site.cell for v in ends]
    return math.ceil(places[0] - 1e-3), math.floor(places[1] + 1e-3)


def _underside(site: Site, row: JigRow, line: int) -> tuple[int, int, FloatArray]:
    """Columns of the blocks, and the board's underside between them, from the printed block heights."""
    low, high = _row(site, row.low), _row(site, row.high)
    share = (line - low) / max(high - low, 1)
    at = [
        (round(v[0], 2) + (round(v[1], 2) - round(v[0], 2)) * share - site.station[0]) / site.cell
        for v in (row.rear_at, row.front_at)
    ]
    feet = np.interp(at, np.arange(site.ground.shape[1]), site.ground[line])
    ends = feet[0] + round(row.rear, 4), feet[1] + round(row.front, 4)
    columns = np.arange(math.ceil(at[0]), math.floor(at[1]) + 1)
    return int(columns[0]), int(columns[-1]), np.interp(columns, at, ends)


def _setting(
    site: Site, jig: Jig, row: JigRow, depth: FloatArray, done: BoolArray, slips: Slips,
    draw: np.random.Generator, progress: float,
) -> None:  # fmt: skip
    """Every slot of a setting, each with its own board placed; the fins between two slots go level."""
    low, high = _row(site, row.low), _row(site, row.high)
    step = max(round(jig.step / site.cell), 1)
    slots = sorted({*range(low, high + 1, step), high})
    levels = [_slot(site, jig, row, line, slips, draw, progress) for line in slots]
    for line in range(low, high + 1):
        k = max(n for n, slot in enumerate(slots) if slot <= line)
        n = min(k + 1, len(slots) - 1)
        share = (line - slots[k]) / max(slots[n] - slots[k], 1)
        level = levels[k] * (1 - share) + levels[n] * share
        first, last = _span(site, row, line)
        part = slice(first, last + 1)
        cut = np.maximum(site.ground[line, part] - level[part], 0.0)
        depth[line, part] = np.where(done[line, part], np.maximum(depth[line, part], cut), cut)
        done[line, part] = True


def _slot(
    site: Site, jig: Jig, row: JigRow, line: int, slips: Slips, draw: np.random.Generator, progress: float
) -> FloatArray:
    """Level of one slot after smoothing, over every column."""
    a, b, under = _underside(site, row, line)
    share = np.linspace(0, 1, b - a + 1)
    rock = draw.uniform(-slips.rock, slips.rock, 2)
    tilt = math.sin(math.radians(draw.uniform(-slips.tilt, slips.tilt))) * jig.tool.offset
    hang = jig.board.sag * 4 * share * (1 - share) if slips.sag else 0.0
    out = np.full(site.ground.shape[1], ABOVE)
    out[a : b + 1] = (
        under + rock[0] * (1 - share) + rock[1] * share - hang + tilt + slips.wear * progress - jig.below
    )
    first, last = _span(site, row, line)
    if not slips.disk or jig.tool.wheel is None:
        return out
    # a round wheel let down between the stop lines leaves its own curve at the ends
    radius = jig.tool.wheel / 2
    reach = int(radius / site.cell)
    round_end = np.full_like(out, ABOVE)
    for k in range(-reach, reach + 1):
        lift = radius - math.sqrt(radius**2 - (k * site.cell) ** 2)
        part = slice(max(first + k, 0), last + k + 1)
        source = out[first : last + 1][-(part.stop - part.start) :]
        round_end[part] = np.minimum(round_end[part], source + lift)
    return round_end


def _by_hand(site: Site, set_out: SetOut) -> FloatArray:
    """Depths where hands work: even between the chalked contours and the bottoms of the dots, as printed."""
    if not set_out.contours:
        return np.zeros(site.ground.shape)
    points = [(v, c.offset, c.level) for c in set_out.contours for v in (round(c.first, 2), round(c.last, 2))]
    points += [(round(d.station, 2), round(d.offset, 2), round(d.depth, 4)) for d in set_out.dots]
    at = np.asarray(points)
    even = LinearNDInterpolator(at[:, :2], at[:, 2], fill_value=0.0)
    return np.asarray(even(*np.meshgrid(site.station, site.offset)))


def _stick(
    site: Site, jig: Jig, row: JigRow, depth: FloatArray, slips: Slips, draw: np.random.Generator
) -> None:
    """The stick under the board, blocks measured again, nobody leaning on it: grind where it stops."""
    for line in range(_row(site, row.low), _row(site, row.high) + 1):
        a, _, under = _underside(site, row, line)
        first, last = _span(site, row, line)
        part = slice(first, last + 1)
        off = draw.uniform(-slips.reading, slips.reading)
        least = site.ground[line, part] - (under[first - a : last - a + 1] - jig.stick + off)
        depth[line, part] = np.where(
            depth[line, part] < least, least + draw.uniform(0, 0.0005), depth[line, part]
        )


def _strings(site: Site, set_out: SetOut, done: FloatArray, slips: Slips, draw: np.random.Generator) -> None:
    """Every row of the string table; what reads short is ground down around the place, half way to its
    neighbours.
    """
    spread = round(0.05 / site.cell)
    for s in set_out.strings:
        row = _row(site, s.offset)
        a, b = _column(site, s.rear_at), _column(site, s.front_at)
        k = a + round(s.at / site.cell)
        share = (k - a) / (b - a)
        string = site.ground[row, a] * (1 - share) + site.ground[row, b] * share + s.blocks
        string -= 4 * share * (1 - share) * string_sag(s.front_at - s.rear_at, set_out.pull)
        short = s.least - (string - done[row, k] + draw.uniform(-slips.reading, slips.reading))
        if short > 0:
            near = done[row - spread : row + spread + 1, k - spread : k + spread + 1]
            untouched = site.ground[row - spread : row + spread + 1, k - spread : k + spread + 1]
            near[...] = np.where(near < untouched - SKIN, near - short - draw.uniform(0, 0.0005), near)
