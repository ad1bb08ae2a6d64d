"""The finished surface as straight settings: lanes across the cut, and in each the fewest straight lines that
follow it.

A board is straight. What lies between two lanes is knocked off level between them. Both steps are chosen so
that the result stays within a fraction of a millimetre of the plan.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.grid import BoolArray, FloatArray, IntArray

SKIN = 0.0003  # m: shallower is not worth letting a cutter down
ALONG = 0.00025  # m: a setting follows the plan this closely
ACROSS = 0.0002  # m: the straight line between two lanes follows it this closely
NARROWEST = 3  # nodes: a cut narrower than this along the lane is left to the cup


@dataclass(frozen=True)
class Segment:
    """One straight setting: lane, row of the raster, first and last column, height at column 0 (m) and rise
    per column (m).
    """

    lane: int
    row: int
    first: int
    last: int
    height: float
    rise: float
    deepest: float

    def level(self, columns: FloatArray | IntArray) -> FloatArray:
        """Heights of the setting over the columns, m."""
        return self.height + self.rise * np.asarray(columns, dtype=float)


@dataclass(frozen=True, eq=False)
class Lanes:
    """``rows`` : (n,) raster rows of the lanes, the outermost two uncut.  ``segments`` in order of lane and
    column.
    """

    rows: IntArray
    segments: tuple[Segment, ...]


def lay_lanes(ground: FloatArray, finished: FloatArray, pitch: int) -> Lanes:
    """Lanes at most ``pitch`` rows apart over everything to be cut.

    ground, finished : (ny, nx) heights before and after, m, NaN not measured.  Nothing to cut: no lanes.
    """
    depth = np.nan_to_num(ground - finished)
    rows = _lane_rows(finished, depth, pitch)
    segments: list[Segment] = []
    for lane, row in enumerate(rows):
        for first, last in runs(depth[row] > SKIN):
            if last - first + 1 >= NARROWEST:
                segments += _settings(lane, int(row), first, last, finished[row], depth[row])
    return Lanes(rows, tuple(segments))


def runs(mask: BoolArray) -> list[tuple[int, int]]:
    """First and last index of every run of True."""
    edge = np.flatnonzero(np.diff(np.concatenate([[False], mask, [False]]).astype(np.int8)))
    return [(int(a), int(b) - 1) for a, b in edge.reshape(-1, 2)]


def _lane_rows(finished: FloatArray, depth: FloatArray, pitch: int) -> IntArray:
    """From the last uncut row before the cut to the first after it, each step as long as a straight line
    across allows.
    """
    cut = np.flatnonzero((depth > SKIN).any(axis=1))
    if len(cut) == 0:
        return np.zeros(0, np.int64)
    row, end = max(int(cut[0]) - 1, 0), min(int(cut[-1]) + 1, depth.shape[0] - 1)
    rows = [row]
    while row < end:
        longest = min(pitch, end - row)
        row += next((n for n in range(longest, 1, -1) if _straight_across(finished, depth, row, n)), 1)
        rows.append(row)
    return np.asarray(rows, dtype=np.int64)


def _straight_across(finished: FloatArray, depth: FloatArray, row: int, count: int) -> bool:
    """Does the straight line over ``count`` rows follow the finished surface wherever it is cut?"""
    share = (np.arange(1, count) / count)[:, None]
    between = finished[row] * (1 - share) + finished[row + count] * share
    off = np.abs(between - finished[row + 1 : row + count])
    return bool((off[depth[row + 1 : row + count] > SKIN] <= ACROSS).all())


def _settings(
    lane: int, row: int, first: int, last: int, finished: FloatArray, depth: FloatArray
) -> list[Segment]:
    """The fewest straight lines, greedily, within ``ALONG`` of the plan from column first to last."""
    out: list[Segment] = []
    at = first
    while at <= last:
        good, bad = at, last + 1
        if _fits(finished, at, last):
            good = last
        while bad - good > 1 and good != last:
            middle = (good + bad) // 2
            good, bad = (middle, bad) if _fits(finished, at, middle) else (good, middle)
        height, rise, _ = _line(finished, at, good)
        out.append(Segment(lane, row, at, good, height, rise, float(depth[at : good + 1].max())))
        at = good + 1
    return out


def _line(finished: FloatArray, first: int, last: int) -> tuple[float, float, float]:
    """The chord's slope with no mean error: height at column 0, rise per column, largest error (m)."""
    columns = np.arange(first, last + 1)
    rise = (finished[last] - finished[first]) / max(last - first, 1)
    rest = finished[first : last + 1] - rise * columns
    return float(rest.mean()), float(rise), float(np.abs(rest - rest.mean()).max())


def _fits(finished: FloatArray, first: int, last: int) -> bool:
    return _line(finished, first, last)[2] <= ALONG
