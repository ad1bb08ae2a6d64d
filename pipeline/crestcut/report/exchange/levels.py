"""What a surveyor takes over from a finished job: existing and finished heights and depth in the scan's own
coordinates, on rasters, sections, points and in bands.

Own coordinates are east, north and height in the scan's reference system and unit (``Frame.to_own``). Where
the job is not released the finished surface and what is set out from it are left out: nothing to cut from.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from crestcut.base.grid import FloatArray, HeightGrid, IntArray
from crestcut.study import Report
from crestcut.terrain import Surface
from crestcut.work import Worksheet

CHAINAGE, ACROSS = 0.5, 0.25  # m between sections, and between places of one
BAND = 0.005  # m of depth
EDGE = 0.0003  # m: what is less is not cut
BEYOND = 0.4  # m: a joint that is seen to so near the slab's edge, or to another joint, runs on to it
LEAST_BAY = 0.25  # m2: less is a sliver beside a joint


@dataclass(frozen=True, eq=False)
class Raster:
    """Cells along own east and north. west, north : outer corner of the first cell; cell : its side; own
    units. values (rows from north, columns from west), own units of height; NaN not measured."""

    west: float
    north: float
    cell: float
    values: FloatArray


@dataclass(frozen=True)
class Level:
    """One place. name, code : what it is called and what it is.  east, north, existing : own units.
    finished, depth : own units of height; None where it is not released."""

    name: str
    code: str
    east: float
    north: float
    existing: float
    finished: float | None = None
    depth: float | None = None


@dataclass(frozen=True)
class SectionRow:
    """A place of a cross section: m along the line and left of it, and its level."""

    chainage: float
    offset: float
    level: Level


@dataclass(frozen=True)
class Band:
    """Depths from ``low`` up to ``high``, m: plan area, m2, and what is taken off there, m3."""

    low: float
    high: float
    area: float
    volume: float


@dataclass(frozen=True)
class BayRow:
    """A piece of slab between joints, as far as the surface reaches. east, north : own units, of its middle.
    whole : m2 of it.  area, volume, deepest : of the planned cut in it, m2, m3, m."""

    name: str
    east: float
    north: float
    whole: float
    area: float
    volume: float
    deepest: float


class Levels:
    """Heights of a job in the scan's own coordinates."""

    def __init__(self, report: Report, sheet: Worksheet) -> None:
        self.report, self.sheet = report, sheet
        self.frame = report.scan.frame
        self.existing = report.surface.height
        plan = report.plan
        self.released = plan is not None and sheet.set_out is not None and not sheet.stamp
        self.finished = plan.finished if plan is not None and self.released else None
        self.depth = plan.depth if plan is not None and self.released else None
        start = self.existing.frame.to_grid(report.line.xy[0])
        self._start = float(start[0]), float(start[1])

    def own(self, height: HeightGrid, xy: FloatArray) -> FloatArray:
        """(n, 3) east, north and height of places (n, 2), site m; height NaN where not measured."""
        places = np.atleast_2d(np.asarray(xy, dtype=float))
        return self.frame.to_own(np.column_stack([places, height.sample(places)]))

    def raster(self, height: HeightGrid, depth: bool = False) -> Raster:
        """North up, of cells as large as the grid's or a little less. depth : the values are no heights."""
        grid = height.frame
        corners = grid.to_site([(0.0, 0.0), (grid.size[0], 0.0), grid.size, (0.0, grid.size[1])])
        own = self.frame.site_to_plan(corners)
        cell = _round_down(grid.cell / float(self.frame.plan_scale[0]))
        west, south = (math.floor(v / cell) * cell for v in own.min(axis=0))
        east, north = (math.ceil(v / cell) * cell for v in own.max(axis=0))
        columns, rows = round((east - west) / cell), round((north - south) / cell)
        x = west + (np.arange(columns) + 0.5) * cell
        y = north - (np.arange(rows) + 0.5) * cell
        places = self.frame.plan_to_site(np.stack(np.meshgrid(x, y), axis=-1))
        values = height.sample(places)
        up = float(self.frame.turned_scale[2])
        values = values / up if depth else (values + float(self.frame.shift[2])) / up
        return Raster(west, north, cell, values)

    def at(self, name: str, code: str, xy: FloatArray | tuple[float, float]) -> Level | None:
        """A place, site m; None where its height is not measured."""
        place = np.asarray(xy, dtype=float)[None]
        east, north, existing = (float(v) for v in self.own(self.existing, place)[0])
        if math.isnan(existing):
            return None
        if self.finished is None or self.depth is None:
            return Level(name, code, east, north, existing)
        deep = float(np.nan_to_num(self.depth.sample(place))[0]) / float(self.frame.turned_scale[2])
        return Level(name, code, east, north, existing, existing - deep, deep)

    def on_line(self, chainage: float, offset: float) -> tuple[float, float]:
        """Site x, y, m, of a place so far along the line and left of it."""
        x, y = self.existing.frame.to_site((chainage + self._start[0], offset + self._start[1]))
        return float(x), float(y)

    def points(self) -> Iterator[Level]:
        """Marks, and where released stop corners and dots, as the sheets name them."""
        for mark in self.report.marks:
            if found := self.at(mark.name, "MARK", mark.xy):
                yield found
        out = self.sheet.set_out
        if not self.released or out is None:
            return
        for name, station, offset, _ in out.corners:
            if found := self.at(name, "CORNER", self.on_line(station, offset)):
                yield found
        for dot in out.dots:
            if found := self.at(dot.name, "DOT", self.on_line(dot.station, dot.offset)):
                yield found

    def sections(self) -> Iterator[SectionRow]:
        """Across the line, every ``CHAINAGE`` m, from right to left, measured places only."""
        long, wide = self.existing.frame.size
        for number in range(_first(self._start[0], CHAINAGE), _last(long - self._start[0], CHAINAGE) + 1):
            chainage = number * CHAINAGE
            for k in range(_first(self._start[1], ACROSS), _last(wide - self._start[1], ACROSS) + 1):
                offset = k * ACROSS
                found = self.at(f"{chainage:.2f}", "SECTION", self.on_line(chainage, offset))
                if found is not None:
                    yield SectionRow(chainage, offset, found)

    def bands(self, step: float = BAND) -> tuple[Band, ...]:
        """The planned cut by depth, every ``step`` m; empty where it is not released."""
        if self.depth is None:
            return ()
        depth = np.nan_to_num(self.depth.values)
        node = self.existing.frame.cell**2
        bands = []
        for k in range(math.ceil(float(depth.max()) / step)):
            low, high = k * step, (k + 1) * step
            within = (depth > max(low, EDGE)) & (depth <= high)
            bands.append(Band(low, high, float(within.sum()) * node, float(depth[within].sum()) * node))
        return tuple(bands)

    def bays(self) -> tuple[BayRow, ...]:
        """The planned cut by bay, along the line; empty where it is not released."""
        if self.depth is None:
            return ()
        grid, depth = self.existing.frame, np.nan_to_num(self.depth.values)
        node, bay = grid.cell**2, bay_of_nodes(self.report.surface)
        rows = []
        for number in range(1, int(bay.max(initial=0)) + 1):
            here = bay == number
            cut = here & (depth > EDGE)
            v, u = (k.mean() * grid.cell for k in np.nonzero(here))
            east, north = (float(c) for c in self.frame.site_to_plan(grid.to_site((u, v))))
            rows.append(BayRow(
                str(number), east, north, float(here.sum()) * node, float(cut.sum()) * node,
                float(depth[cut].sum()) * node, float(depth[cut].max(initial=0.0)),
            ))  # fmt: skip
        return tuple(rows)


def bay_of_nodes(surface: Surface) -> IntArray:
    """(ny, nx) the number of each node's bay, from 1 on in the order of travel; 0 off the slab.

    The slab is parted along its straight joints; a joint's own nodes are of the bay beside them, and a sliver
    is of its neighbour.
    """
    grid = surface.height.frame
    rows, columns = np.indices(grid.shape) * grid.cell
    along_joint = np.zeros(grid.shape, dtype=bool)
    for a, b in surface.joints:
        long = float(np.hypot(*(b - a)))
        way = (b - a) / long
        t = (columns - a[0]) * way[0] + (rows - a[1]) * way[1]
        off = np.abs((rows - a[1]) * way[0] - (columns - a[0]) * way[1])
        along_joint |= (off <= 0.75 * grid.cell) & (t > -BEYOND) & (t < long + BEYOND)
    bay, count = ndimage.label(surface.slab & ~along_joint)
    size = np.bincount(bay.ravel(), minlength=count + 1) * grid.cell**2
    big = np.flatnonzero(size >= LEAST_BAY)
    big = big[big > 0]
    middle = [float(np.nonzero(bay == k)[1].mean()) for k in big]
    number = np.zeros(count + 1, dtype=np.int64)
    number[big[np.argsort(middle, kind="stable")]] = np.arange(1, len(big) + 1)
    bay = number[bay]
    if not len(big):
        return np.asarray(bay)
    near = ndimage.distance_transform_edt(bay == 0, return_distances=False, return_indices=True)
    return np.where(surface.slab, bay[tuple(near)], 0)


def _first(before: float, step: float) -> int:
    return -math.floor(before / step + 1e-9)


def _last(after: float, step: float) -> int:
    return math.floor(after / step + 1e-9)


def _round_down(value: float) -> float:
    """To one digit, so that cells begin at round coordinates."""
    power = math.floor(math.log10(value) + 1e-9)
    digit = math.floor(value / 10.0**power + 1e-9)
    return float(f"{digit}e{power}")
