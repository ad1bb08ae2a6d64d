"""Strips across the cut: the widest one pair of block heights serves, and the fewest settings in each."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.work.site import FARTHEST, FOOT, Setting, Site, runs

CLOSE = 0.00025  # m: a setting follows a smooth plan this closely, up or down
AT_ENDS = 0.0001  # m deeper where a strip runs out: saves a setting for its last hand's breadth
BESIDE = 0.0002  # m deeper beside the core, where a chalked stop line cuts a corner
SHORTEST = 0.03  # m: a shorter piece is cut by hand
MANY_SETTINGS = 4  # in one strip: more, and a board does not serve
GAP = 5  # nodes without a core that a setting passes over

Fit = tuple[tuple[int, int], list[Setting], str]  # columns, settings, why there are none


def lay_strips(fitter: Fitter, core: BoolArray, widest: float) -> Iterator[tuple[int, int, list[Fit]]]:
    """From row to row: the widest strip that needs no more settings than its middle row by itself, and
    one.
    """
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


class Fitter:
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
        for first, last in runs(np.asarray(self.core[low : high + 1].any(axis=0)), GAP):
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
        blocks = [
            self._block(low, high, first, last, at, side)
            for at, side in zip(self.wheels, (-1, 1), strict=True)
        ]
        rear, front = blocks
        if rear is None or front is None or (front - rear) * self.site.cell > FARTHEST:
            return (
                [],
                "no untouched, measured concrete for the blocks on both sides (an overhang, an edge or a"
                " hole)",
            )
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
            from_low, from_high = (max(k, a) for k in start)
            to_low, to_high = (min(max(k, a - 1), b) for k in stop)
            found.append(
                Setting(
                    -1,
                    low,
                    high,
                    (from_low, from_high),
                    (to_low, to_high),
                    rear,
                    front,
                    heights[0],
                    heights[1],
                )
            )
            at = b + 1
        return found, ""

    def _edges(self, low: int, high: int, first: int, last: int) -> tuple[tuple[int, int], tuple[int, int]]:
        """Columns on the lowest and the highest row between which the board cuts."""
        ends = []
        for row in (low, high):
            columns = np.flatnonzero(self.core[row, first : last + 1])
            ends.append(
                (first + int(columns[0]), first + int(columns[-1])) if len(columns) else (first, last)
            )
        return (ends[0][0], ends[1][0]), (ends[0][1], ends[1][1])

    def _band(
        self,
        low: int,
        high: int,
        first: int,
        last: int,
        rear: int,
        front: int,
        start: tuple[int, int],
        stop: tuple[int, int],
    ) -> tuple[FloatArray, FloatArray]:
        """Highest and lowest height over the chord between the blocks, for every column, all rows
        together.
        """
        ground = self.site.ground
        columns = np.arange(first, last + 1)
        share = (columns - rear) / (front - rear)
        rows = slice(low, high + 1)
        chord = ground[rows, rear, None] * (1 - share) + ground[rows, front, None] * share
        lin = np.linspace(0.0, 1.0, high - low + 1)[:, None]
        cut = (columns >= start[0] + (start[1] - start[0]) * lin - 1e-6) & (
            columns <= stop[0] + (stop[1] - stop[0]) * lin + 1e-6
        )
        up = np.where(cut, self.up[rows, first : last + 1] - chord, np.inf).min(axis=0)
        down = np.where(cut, self.low[rows, first : last + 1] - chord, -np.inf).max(axis=0)
        return up, down

    def _longest(self, up: FloatArray, low: FloatArray, at: int) -> tuple[int, float, float] | None:
        """From place ``at`` on: how many columns one line can follow, its rise a column and its height at
        place 0.
        """
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
        """The column where a block stands: at the wheel's station if that is untouched concrete outside the
        cut on every row, else the nearest place beyond it that is; None if there is none."""
        site, foot = self.site, self.foot
        standing: BoolArray = np.asarray(site.standing[low : high + 1].all(axis=0))
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
    """Rise and height at place 0 of a line between ``low`` and ``up``: least squares through their middle,
    moved if it must be.

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
