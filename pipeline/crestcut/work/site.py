"""The slab and the plan as a jig sees them, and one straight setting of a board over them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray

FOOT = 0.045  # m: half the length of concrete that a block stands on
FARTHEST = 4.6  # m between the blocks: beyond it timber is not straight enough


@dataclass(frozen=True, eq=False)
class Site:
    """What the jig needs of slab and plan, on the raster: heights before and after (m), stations (nx,) and
    offsets (ny,) (m).

    standing : measured slab that is not cut.  allowed : deepest cut at every node, m.  feather : rise over
    run.
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
    """One straight setting over the rows ``low`` .. ``high``: from and to columns on both of them, columns
    of the blocks.

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
        """First and last column cut on a row: inside the stop lines, which are chalked straight from edge to
        edge.
        """
        share = (row - self.low) / max(self.high - self.low, 1)
        first, last = (a + (b - a) * share for a, b in (self.start, self.stop))
        return math.ceil(first - 1e-6), math.floor(last + 1e-6)

    def level(self, ground: FloatArray, row: int) -> FloatArray:
        """Finished heights over this row's columns, m: the chord between the concrete at the blocks, and the
        two heights over it.
        """
        first, last = self.columns(row)
        share = (np.arange(first, last + 1) - self.rear_at) / (self.front_at - self.rear_at)
        ends = ground[row, self.rear_at] + self.rear, ground[row, self.front_at] + self.front
        return ends[0] * (1 - share) + ends[1] * share


def station_offset(site: Site, frame: GridFrame, xy: tuple[float, float]) -> tuple[float, float]:
    """Station along the line and offset left of it of a site x, y, all metres."""
    u, v = frame.to_grid(xy)
    return float(u + site.station[0]), float(v + site.offset[0])


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
