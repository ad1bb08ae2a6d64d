"""The planned surface as a board can make it: strips across the cut, in each the fewest straight settings.

A board is straight and a strip of concrete a hand wide is cut from one pair of block heights, so the sheets are
drawn from a surface made of such strips. It follows the plan within a quarter of a millimetre where the plan is
smooth. A plan from a wavering scan wavers with it: there the strips may lie up to 0.4 of the scan's own error
(1.5 mm at most, and no more than the ground's own waver asks for) *deeper*, never higher, because following noise to the
quarter millimetre buys nothing.
What only the feather asks for is no setting: it is ground away evenly from the strips' edge to the stop lines.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from crestcut.cut.feather import feather_out
from crestcut.grid import BoolArray, FloatArray, IntArray

SKIN = 0.0003  # m: shallower is not worth letting a cutter down
CLOSE = 0.00025  # m: a setting follows a smooth plan this closely, up or down
OF_ERROR, MOST_DEEPER = 0.4, 0.0015  # of the scan's own error; m: how much deeper a strip may lie on a wavering plan
WAVES = 6.0  # times the waver: two of it for each of the two blocks and the place between them
AT_ENDS = 0.0002  # m deeper where a strip runs out: saves a setting for its last hand's breadth
BESIDE = 0.0002  # m deeper beside the core, where a chalked stop line cuts a corner
WIDEST = 0.10  # m: a strip is no wider than a hand
SHORTEST = 0.03  # m: a shorter piece is cut by hand
FOOT = 0.045  # m: half the length of concrete that a block stands on
FARTHEST = 4.6  # m between the blocks: beyond it timber is not straight enough
MANY_SETTINGS = 4  # in one strip: more, and a board does not serve
GAP = 5  # nodes without a core that a setting passes over


@dataclass(frozen=True, eq=False)
class Site:
    """What the jig needs of slab and plan, on the raster: heights before and after (m), stations (nx,) and offsets (ny,) (m).

    standing : measured slab that is not cut.  allowed : deepest cut at every node, m.  feather : rise over run.
    error : the scan's own error at the worst place, m; 0 = follow the plan closely.
    part : (ny, nx) index into ``parts``, the underside's part that sets the height; -1 for none.
    """

    ground: FloatArray
    finished: FloatArray
    standing: BoolArray
    cell: float
    station: FloatArray
    offset: FloatArray
    allowed: FloatArray | None = None
    feather: float = 0.25
    error: float = 0.0
    part: IntArray | None = None
    parts: tuple[str, ...] = ()

    @cached_property
    def depth(self) -> FloatArray:
        """Planned depth, (ny, nx) m, 0 where nothing is measured."""
        return np.maximum(np.nan_to_num(self.ground - self.finished), 0.0)


@dataclass(frozen=True)
class Setting:
    """One straight setting over the rows ``low`` .. ``high``: from and to columns on both of them, columns of the blocks.

    rear, front : height of the finished line over the concrete at the two blocks, m; the same for every row.
    """

    strip: int
    low: int
    high: int
    start: tuple[int, int]  # on row low, on row high
    stop: tuple[int, int]
    rear_at: int
    front_at: int
    rear: float
    front: float

    def columns(self, row: int) -> tuple[int, int]:
        """First and last column cut on a row: inside the stop lines, which are chalked straight from edge to edge."""
        share = (row - self.low) / max(self.high - self.low, 1)
        first, last = (a + (b - a) * share for a, b in (self.start, self.stop))
        return math.ceil(first - 1e-6), math.floor(last + 1e-6)

    def level(self, ground: FloatArray, row: int) -> FloatArray:
        """Finished heights over this row's columns, m: the chord between the concrete at the blocks, and the two heights over it."""
        first, last = self.columns(row)
        share = (np.arange(first, last + 1) - self.rear_at) / (self.front_at - self.rear_at)
        ends = ground[row, self.rear_at] + self.rear, ground[row, self.front_at] + self.front
        return ends[0] * (1 - share) + ends[1] * share


@dataclass(frozen=True, eq=False)
class Workable:
    """finished (ny, nx) m: what the sheets ask for.  core : what settings or hand cut; the rest of the cut is its feather.

    strips : first and last row of each.  left : (first row, last row, first column, last column, why) of pieces no board can follow.
    """

    finished: FloatArray
    core: BoolArray
    strips: tuple[tuple[int, int], ...]
    settings: tuple[Setting, ...]
    left: tuple[tuple[int, int, int, int, str], ...]
    short: int  # pieces too short for a board
    deeper: float  # m: how much deeper than the plan a strip may lie


def make_workable(site: Site, wheels: tuple[float, float], widest: float = WIDEST) -> Workable:
    """Strips and settings for the whole cut. wheels : stations where the blocks stand if they can, m."""
    deeper = float(np.clip(min(OF_ERROR * site.error - CLOSE, WAVES * waver(site)), 0.0, MOST_DEEPER))
    core = core_of(site)
    fitter = _Fitter(site, core, wheels, deeper)
    strips: list[tuple[int, int]] = []
    settings: list[Setting] = []
    left: list[tuple[int, int, int, int, str]] = []
    short = 0
    for low, high, fits in _strips(fitter, core, widest):
        strips.append((low, high))
        for run, found, why in fits:
            if why == "short":
                short += 1
            elif why:
                left.append((low, high, *run, why))
            settings += [_numbered(s, len(strips) - 1) for s in found]
    finished = _finished(site, core, settings)
    return Workable(finished, core, tuple(strips), tuple(settings), tuple(left), short, deeper)


def _numbered(s: Setting, strip: int) -> Setting:
    return Setting(strip, s.low, s.high, s.start, s.stop, s.rear_at, s.front_at, s.rear, s.front)


def waver(site: Site) -> float:
    """How much the scanned ground wavers across a strip, m: robust sd of its second difference over half a strip's width."""
    n = max(round(WIDEST / 2 / site.cell), 1)
    z = np.where(site.standing, site.ground, np.nan)
    if len(z) <= 2 * n:
        return 0.0
    off = np.abs(z[n:-n] - (z[2 * n :] + z[: -2 * n]) / 2)
    off = off[~np.isnan(off)]
    return 1.4826 * float(np.median(off)) if len(off) else 0.0


def core_of(site: Site) -> BoolArray:
    """Nodes that are cut for their own sake: deeper than their neighbours' feather reaches. (ny, nx)."""
    depth = site.depth
    padded = np.pad(depth, 1)
    held = np.zeros(depth.shape)
    for dj in (0, 1, 2):
        for di in (0, 1, 2):
            if (dj, di) != (1, 1):
                away = np.hypot(dj - 1, di - 1) * site.feather * site.cell
                held = np.maximum(held, padded[dj : dj + depth.shape[0], di : di + depth.shape[1]] - away)
    # a way of eight directions is up to 8 % of a step longer than the straight one that the feather was measured by
    core = (depth > SKIN) & (depth > held + 0.08 * site.feather * site.cell)
    # what only looked like a feather is not reached by one
    reached, _ = feather_out(np.where(core, depth, 0.0), site.feather, site.cell)
    return core | ((depth > SKIN) & (depth - reached > CLOSE))


def _finished(site: Site, core: BoolArray, settings: list[Setting]) -> FloatArray:
    """The plan on the core, the settings over it, feathered out to the ground, nowhere over the limits."""
    depth = np.where(core, site.depth, 0.0)
    done = np.zeros(depth.shape, bool)
    for s in settings:
        for row in range(s.low, s.high + 1):
            first, last = s.columns(row)
            part = slice(first, last + 1)
            cut = np.maximum(np.nan_to_num(site.ground[row, part] - s.level(site.ground, row)), 0.0)
            depth[row, part] = np.where(done[row, part], np.maximum(depth[row, part], cut), cut)
            done[row, part] = True
    if site.allowed is not None:
        depth = np.minimum(depth, np.maximum(site.allowed, site.depth))
    shaped, _ = feather_out(depth, site.feather, site.cell)
    if site.allowed is not None:
        shaped = np.minimum(shaped, np.maximum(site.allowed, site.depth))
    return site.ground - np.where(np.isnan(site.ground), 0.0, shaped)


def covered(work: Workable) -> BoolArray:
    """Nodes that a setting cuts, (ny, nx)."""
    out = np.zeros(work.core.shape, bool)
    for s in work.settings:
        for row in range(s.low, s.high + 1):
            first, last = s.columns(row)
            out[row, first : last + 1] = True
    return out


def runs(mask: BoolArray, gap: int = 0) -> list[tuple[int, int]]:
    """First and last index of every run of True; runs no farther apart than ``gap`` are one."""
    edge = np.flatnonzero(np.diff(np.concatenate([[False], mask, [False]]).astype(np.int8)))
    out: list[tuple[int, int]] = []
    for a, b in edge.reshape(-1, 2):
        if out and a - out[-1][1] - 1 <= gap:
            out[-1] = (out[-1][0], int(b) - 1)
        else:
            out.append((int(a), int(b) - 1))
    return out


Fit = tuple[tuple[int, int], list[Setting], str]  # columns, settings, why there are none


def _strips(fitter: _Fitter, core: BoolArray, widest: float) -> Iterator[tuple[int, int, list[Fit]]]:
    """From row to row: the widest strip that needs no more settings than its middle row by itself, and one."""
    rows = np.flatnonzero(core.any(axis=1))
    if not len(rows):
        return
    most = max(round(widest / fitter.site.cell), 1)
    row = int(rows[0])
    while row <= rows[-1]:
        if not core[row].any():
            row += 1
            continue
        end = row
        while end + 1 <= rows[-1] and end + 1 < row + most and core[end + 1].any():
            end += 1
        single = fitter.fit(row, row)
        best = row, single
        for high in dict.fromkeys(row + round((end - row) * part) for part in (1.0, 0.7, 0.5, 0.3, 0.2, 0.1)):
            if high == row:
                break
            fits = fitter.fit(row, high)
            alone = single if high == row else fitter.fit((row + high) // 2, (row + high) // 2)
            if _worth(fits) <= _worth(alone) + 1:
                best = high, fits
                break
        yield row, best[0], best[1]
        row = best[0] + 1


def _worth(fits: list[Fit]) -> int:
    """Settings, and twenty for every piece that no board can follow."""
    return sum(len(found) + 20 * (why not in ("", "short")) for _, found, why in fits)


class _Fitter:
    """Straight settings for rows taken together."""

    def __init__(self, site: Site, core: BoolArray, wheels: tuple[float, float], deeper: float) -> None:
        self.site, self.core, self.wheels = site, core, wheels
        allowed = np.inf if site.allowed is None else site.allowed
        self.up = np.where(core, site.finished + CLOSE, np.inf)
        low = site.finished - CLOSE - deeper - np.where(core, 0.0, BESIDE)
        self.low = np.maximum(low, np.minimum(site.ground - allowed, site.finished - CLOSE))
        self.foot = max(round(FOOT / site.cell), 1)

    def fit(self, low: int, high: int) -> list[Fit]:
        """Settings for every run of columns of the rows ``low`` .. ``high``."""
        out: list[Fit] = []
        for first, last in runs(self.core[low : high + 1].any(axis=0), GAP):
            if (last - first + 1) * self.site.cell < SHORTEST:
                out.append(((first, last), [], "short"))
                continue
            found, why = self._run(low, high, first, last)
            long = [s for s in found if self._length(s) >= SHORTEST]
            out.append(((first, last), long, why or ("short" if len(long) < len(found) else "")))
        return out

    def _length(self, s: Setting) -> float:
        return float(np.mean(s.stop) - np.mean(s.start) + 1) * self.site.cell

    def _run(self, low: int, high: int, first: int, last: int) -> tuple[list[Setting], str]:
        blocks = [self._block(low, high, first, last, at, side) for at, side in zip(self.wheels, (-1, 1), strict=True)]
        rear, front = blocks
        if rear is None or front is None or (front - rear) * self.site.cell > FARTHEST:
            return [], "no untouched, measured concrete for the blocks on both sides (an overhang, an edge or a hole)"
        start, stop = self._edges(low, high, first, last)
        at, end = min(start), max(stop)
        found: list[Setting] = []
        band = self._band(low, high, at, end, rear, front, start, stop)
        near = max(round(SHORTEST / self.site.cell), 1)
        band[1][:near] -= AT_ENDS
        band[1][-near:] -= AT_ENDS
        while at <= end:
            good = self._longest(*band, at - min(start))
            if good is None or len(found) >= MANY_SETTINGS:
                return [], "too curved or too skewed for a straight board"
            count, rise, height = good
            a, b = at, at + count - 1
            heights = height + rise * (rear - min(start)), height + rise * (front - min(start))
            found.append(
                Setting(
                    -1, low, high,
                    tuple(max(s, a) for s in start), tuple(min(max(s, a - 1), b) for s in stop),  # type: ignore[arg-type]
                    rear, front, heights[0], heights[1],
                )
            )  # fmt: skip
            at = b + 1
        return found, ""

    def _edges(self, low: int, high: int, first: int, last: int) -> tuple[tuple[int, int], tuple[int, int]]:
        """Columns on the lowest and the highest row between which the board cuts."""
        ends = []
        for row in (low, high):
            columns = np.flatnonzero(self.core[row, first : last + 1])
            ends.append((first + int(columns[0]), first + int(columns[-1])) if len(columns) else (first, last))
        return (ends[0][0], ends[1][0]), (ends[0][1], ends[1][1])

    def _band(
        self, low: int, high: int, first: int, last: int, rear: int, front: int, start: tuple[int, int], stop: tuple[int, int]
    ) -> tuple[FloatArray, FloatArray]:
        """Highest and lowest height over the chord between the blocks, for every column, all rows together."""
        ground = self.site.ground
        columns = np.arange(first, last + 1)
        share = (columns - rear) / (front - rear)
        rows = slice(low, high + 1)
        chord = ground[rows, rear, None] * (1 - share) + ground[rows, front, None] * share
        lin = np.linspace(0.0, 1.0, high - low + 1)[:, None]
        cut = (columns >= start[0] + (start[1] - start[0]) * lin - 1e-6) & (columns <= stop[0] + (stop[1] - stop[0]) * lin + 1e-6)
        up = np.where(cut, self.up[rows, first : last + 1] - chord, np.inf).min(axis=0)
        down = np.where(cut, self.low[rows, first : last + 1] - chord, -np.inf).max(axis=0)
        return up, down

    def _longest(self, up: FloatArray, low: FloatArray, at: int) -> tuple[int, float, float] | None:
        """From place ``at`` on: how many columns one line can follow, its rise a column and its height at place 0."""
        good, bad = None, len(up) - at + 1
        count = len(up) - at
        best = 0
        while best < bad - 1:
            line = _line(up[at : at + count], low[at : at + count])
            if line is not None:
                good, best = (count, line[0], line[1] - line[0] * at), count
            else:
                bad = count
            count = (best + bad) // 2 if bad - best > 1 else best
        return good

    def _block(self, low: int, high: int, first: int, last: int, wheel: float, side: int) -> int | None:
        """The column where a block stands: at the wheel's station if that is untouched concrete outside the cut on every row, else the
        nearest place beyond it that is; None if there is none."""
        site, foot = self.site, self.foot
        standing = site.standing[low : high + 1].all(axis=0)
        edge = first - foot - 1 if side < 0 else last + foot + 1
        column = round((wheel - site.station[0]) / site.cell)
        column = min(column, edge) if side < 0 else max(column, edge)
        column = min(max(column, foot), len(standing) - 1 - foot)
        while foot <= column <= len(standing) - 1 - foot:
            beyond = column <= edge if side < 0 else column >= edge
            if beyond and standing[column - foot : column + foot + 1].all():
                return column
            column += side
        return None


def _line(up: FloatArray, low: FloatArray) -> tuple[float, float] | None:
    """Rise and height at place 0 of a line between ``low`` and ``up``: least squares through their middle, moved if it must be.

    Where a place is open above, its lower end counts. None where no such line was found.
    """
    bound = np.isfinite(up) & np.isfinite(low)
    x = np.arange(len(up), dtype=float)
    if not bound.any():
        return None
    middle = (up[bound] + low[bound]) / 2
    xb = x[bound]
    spread = xb - xb.mean()
    square = float(spread @ spread)
    rise = float(spread @ middle) / square if square > 0 else 0.0
    line = middle.mean() + rise * (x - xb.mean())
    highest, lowest = float((up - line).min()), float((low - line).max())
    if lowest > highest:
        return None
    shift = min(max(0.0, lowest), highest)
    return rise, float(line[0]) + shift
