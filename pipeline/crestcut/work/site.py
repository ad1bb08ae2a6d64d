"""The slab and the plan as a jig sees them, and what a facet of the plan is on them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray
from crestcut.cut import Facet

S = TypeVar("S", float, FloatArray)
FOOT = 0.045  # m: half the length of concrete that a block stands on
APART = 2.0  # m of the line that nothing is ground in: what is cut before and behind it are two cuts
FARTHEST = 4.6  # m between the blocks: beyond it timber is not straight enough


@dataclass(frozen=True, eq=False)
class Site:
    """What the jig needs of slab and plan, on the raster: heights before and after (m), stations (nx,) and
    offsets (ny,) (m).

    standing : measured slab that is not cut.  allowed : deepest cut at every node, m.  feather : rise over
    run.
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
    part: NDArray[np.int16] | None = None
    parts: tuple[str, ...] = ()

    @cached_property
    def depth(self) -> FloatArray:
        """Planned depth, (ny, nx) m, 0 where nothing is measured."""
        return np.maximum(np.nan_to_num(self.ground - self.finished), 0.0)

    def station_at(self, column: float) -> float:
        """Station of a column, or of a place between two, m."""
        return float(self.station[0] + column * self.cell)


def along(ends: tuple[float, float], share: S) -> S:
    """Between what holds on a facet's lowest and on its highest row."""
    return ends[0] + (ends[1] - ends[0]) * share


def share_of(facet: Facet, row: S) -> S:
    """How far up the facet's rows this one is, 0 to 1."""
    return (row - facet.low) / max(facet.high - facet.low, 1)


def _stops(facet: Facet, rows: IntArray, wide: int) -> tuple[IntArray, IntArray]:
    """First and last column cut on each of the rows; none where the last is less."""
    share = share_of(facet, rows.astype(float))
    first = np.ceil(along(facet.start, share) - 1e-6).astype(int)
    last = np.floor(along(facet.stop, share) + 1e-6).astype(int)
    return np.maximum(first, 0), np.minimum(last, wide - 1)


def _levels(facet: Facet, ground: FloatArray, rows: IntArray, columns: IntArray) -> FloatArray:
    """Finished heights, (rows, columns) m: on each row the line between the concrete under the two blocks,
    and the two heights over it."""
    share = share_of(facet, rows.astype(float))
    rear, front = along(facet.rear_at, share), along(facet.front_at, share)
    low = _between(ground, rows, rear) + facet.rear
    rise = (_between(ground, rows, front) + facet.front - low)[:, None]
    return np.asarray(low[:, None] + rise * (columns - rear[:, None]) / (front - rear)[:, None])


def _between(ground: FloatArray, rows: IntArray, at: FloatArray) -> FloatArray:
    """``np.interp`` along each row at a column of its own, m."""
    at = np.clip(at, 0.0, ground.shape[1] - 1.0)
    left = np.floor(at).astype(int)
    here, there = ground[rows, left], ground[rows, np.minimum(left + 1, ground.shape[1] - 1)]
    return np.where(at == left, here, (there - here) * (at - left) + here)


def cut_rows(facet: Facet, ground: FloatArray) -> list[FloatArray]:
    """What the facet cuts on each of its rows, m: inside stop lines chalked straight from edge to edge."""
    rows = np.arange(facet.low, facet.high + 1)
    return _over_line(facet, ground, rows, *_stops(facet, rows, ground.shape[1]))


def under_board(facet: Facet, ground: FloatArray) -> list[FloatArray]:
    """How far the concrete stands over the finished line between the blocks, row by row, m."""
    rows = np.arange(facet.low, facet.high + 1)
    share = share_of(facet, rows.astype(float))
    rear, front = np.ceil(along(facet.rear_at, share)), np.floor(along(facet.front_at, share))
    return _over_line(facet, ground, rows, rear.astype(int), front.astype(int))


def _over_line(
    facet: Facet, ground: FloatArray, rows: IntArray, first: IntArray, last: IntArray
) -> list[FloatArray]:
    """Ground over the finished line on each row, m, column to column; nothing where the last is less."""
    start = int(first.min())
    columns = np.arange(start, last.max() + 1)
    over = ground[np.ix_(rows, columns)] - _levels(facet, ground, rows, columns)
    ends = zip(first - start, np.maximum(last + 1 - start, 0), strict=True)
    return [row[a:b] for row, (a, b) in zip(over, ends, strict=True)]


def facet_depth(ground: FloatArray, facets: Sequence[Facet]) -> tuple[FloatArray, BoolArray]:
    """What the facets cut, (ny, nx) m, and which nodes lie between their stop lines."""
    depth, done = np.zeros(ground.shape), np.zeros(ground.shape, bool)
    for facet in facets:
        rows = np.arange(facet.low, facet.high + 1)
        first, last = _stops(facet, rows, ground.shape[1])
        columns = np.arange(first.min(), last.max() + 1)
        inside = (columns >= first[:, None]) & (columns <= last[:, None])
        part = np.ix_(rows, columns)
        cut = np.where(inside, np.nan_to_num(ground[part] - _levels(facet, ground, rows, columns)), 0.0)
        depth[part] = np.maximum(depth[part], cut)
        done[part] |= inside
    return depth, done


def station_offset(site: Site, frame: GridFrame, xy: Sequence[float]) -> tuple[float, float]:
    """Station along the line and offset left of it of a site x, y, all metres."""
    u, v = frame.to_grid(xy[:2])
    return float(u + site.station[0]), float(v + site.offset[0])


def cuts_along(deep: BoolArray, cell: float) -> list[tuple[int, int]]:
    """First and last column of every cut along the line, of those with ``APART`` or less between them
    together. deep (ny, nx) : where anything is ground.  cell : m."""
    return runs(np.any(deep, axis=0), round(APART / cell))


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
