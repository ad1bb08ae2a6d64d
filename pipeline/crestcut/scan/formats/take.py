"""Which points of a file are held: files are read some points at a time, and what nobody asked for is let go
before it takes up memory.

How many are read at a time changes nothing: which are held follows from their number in the file alone.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.scan.formats.raw import RawScan, Tally, eight_bit

MOST = 3_000_000  # points: as many as are taken of a large mesh; a window of 40 m2 then has one every 4 mm
ROWS = 500_000  # read at a time
LONG = 40  # characters of a row of text, about
AWAY = 1e-6  # m: more than a coordinate's last digit is worth
BEYOND = 1e12  # file units: no place on earth has such a coordinate, be it in hundredths of a millimetre


@dataclass(frozen=True)
class Patch:
    """A rectangle of the plan: a corner, site m; the angle of its first side, rad; both sides, m."""

    corner: tuple[float, float]
    angle: float
    sides: tuple[float, float]

    def holds(self, x: FloatArray, y: FloatArray) -> BoolArray:
        """(n,) whether places lie in it."""
        u, v = self._along(x, y)
        return np.asarray((u >= 0) & (v >= 0) & (u <= self.sides[0]) & (v <= self.sides[1]))

    def meets(self, x: FloatArray, y: FloatArray) -> BoolArray:
        """(n,) whether it may have a place in common with what lies between (n, k) corners: not where one of
        its own two directions parts them."""
        found = np.ones(len(x), bool)
        for w, side in zip(self._along(x, y), self.sides, strict=True):
            found &= (w.max(axis=1) >= -AWAY) & (w.min(axis=1) <= side + AWAY)
        return found

    def _along(self, x: FloatArray, y: FloatArray) -> tuple[FloatArray, FloatArray]:
        c, s = np.cos(self.angle), np.sin(self.angle)
        x, y = x - self.corner[0], y - self.corner[1]
        return x * c + y * s, y * c - x * s


@dataclass(frozen=True, eq=False)
class Cut:
    """What is held of a file whose place is known. plan : (2, 4) site x and y, m, of file coordinates and 1.
    use, leave : classes, as in ``used.Classes``."""

    patches: tuple[Patch, ...]
    plan: FloatArray
    use: tuple[int, ...]
    leave: tuple[int, ...]

    def holds(self, points: FloatArray, classes: NDArray[np.uint8] | None) -> BoolArray:
        """(n,) which of (n, 3) file coordinates."""
        found = np.zeros(len(points), bool)
        with np.errstate(invalid="ignore"):
            x, y = self._site(points)
            for patch in self.patches:
                found |= patch.holds(x, y)
            found &= usable(points)
        if classes is not None:
            found &= of_use(classes, self.use, self.leave)
        return found

    def may_hold(self, boxes: FloatArray) -> BoolArray:
        """(k,) which of ``Tally.boxes``."""
        sides = np.array(list(itertools.product((0, 1), repeat=3)))  # (8, 3)
        x, y = self._site(boxes[:, sides, np.arange(3)].reshape(-1, 3))
        found = np.asarray(~np.isfinite(boxes).all(axis=(1, 2)))
        with np.errstate(invalid="ignore"):
            for patch in self.patches:
                found |= patch.meets(x.reshape(-1, 8), y.reshape(-1, 8))
        return found

    def _site(self, points: FloatArray) -> tuple[FloatArray, FloatArray]:
        # term by term: a matrix product may round the last rows of a block otherwise than the first
        x, y = (a * points[:, 0] + b * points[:, 1] + c * points[:, 2] + d for a, b, c, d in self.plan)
        return x, y


@dataclass(frozen=True)
class Take:
    """most : points that are held; of more every second, fourth, ...; None: all.  rows : read at a time.
    cut : None: from the whole file.  seen : what reading all of it before has told."""

    most: int | None = None
    rows: int = ROWS
    cut: Cut | None = None
    seen: Tally | None = None

    def wanted(self, count: int) -> BoolArray:
        """(k,) which blocks of ``rows`` of so many points may hold anything that is asked for."""
        blocks = -(-count // self.rows)
        if self.cut is None or self.seen is None or len(self.seen.boxes) != blocks:
            return np.ones(blocks, bool)
        return self.cut.may_hold(self.seen.boxes)


ALL = Take()


@dataclass(frozen=True, eq=False)
class Block:
    """Some points of a file, in its order, as ``RawScan`` has them but colours as they stand in the file.
    good : (n,) those that the file does not mark as not to be used; None: all."""

    points: FloatArray
    colours: NDArray | None = None
    time: FloatArray | None = None
    classes: NDArray[np.uint8] | None = None
    station: NDArray[np.int16] | None = None
    good: BoolArray | None = None


_COLUMNS = ("points", "colours", "time", "classes", "station")


def usable(points: FloatArray) -> BoolArray:
    """(n,) which of (n, 3) coordinates are numbers that a place may have."""
    if np.isfinite(box_of(points)).all():
        return np.ones(len(points), bool)
    return np.asarray((np.abs(points) < BEYOND).all(axis=1))  # of NaN false


def box_of(points: FloatArray) -> FloatArray:
    """(2, 3) lowest and highest of (n, 3) coordinates; infinite where one is no place, or there is none."""
    if len(points):
        columns = np.ascontiguousarray(points.T)  # six times as fast along rows of it
        box = np.stack([columns.min(axis=1), columns.max(axis=1)])
        if (np.abs(box) < BEYOND).all():
            return box
    return np.full((2, 3), np.inf)


def of_use(classes: NDArray[np.uint8], use: tuple[int, ...], leave: tuple[int, ...]) -> BoolArray:
    """(n,) of ``use`` alone, where any are named; never of ``leave``."""
    keep = np.isin(classes, use) if use else np.ones(len(classes), dtype=bool)
    return np.asarray(keep & ~np.isin(classes, leave))


Scale = Callable[[NDArray, float], NDArray[np.uint8] | None]  # colours, the largest of the file -> 0..255


def take(head: RawScan, blocks: Iterable[Block], asked: Take, scale: Scale = eight_bit) -> RawScan:
    """``head`` with the points of ``blocks`` that are asked for, and a tally of all of them."""
    held = _Held(asked)
    for block in blocks:
        held.add(block)
    return held.as_scan(head, scale)


class _Held:
    """What is held so far, and what must be known of all points to read it as if they all were."""

    def __init__(self, asked: Take) -> None:
        self.asked, self.every, self.candidates, self.count = asked, 1, 0, 0
        self.parts: dict[str, list[NDArray]] = {name: [] for name in _COLUMNS}
        self.dropped = 0
        self.by_class, self.bad = np.zeros(256, np.int64), np.zeros(256, np.int64)
        self.by_station = np.zeros(0, np.int64)
        self.top = 0.0  # largest colour
        self.times = (np.inf, -np.inf)
        self.boxes: list[FloatArray] = []
        if asked.seen is not None:  # blocks that hold nothing of it may be left out
            self.top, self.times = asked.seen.top, asked.seen.times

    def add(self, block: Block) -> None:
        self._tally(block)
        cut = self.asked.cut
        keep = np.ones(len(block.points), bool) if block.good is None else block.good
        if cut is not None:
            keep = keep & cut.holds(block.points, block.classes)
        chosen = np.flatnonzero(keep)
        first = -self.candidates % self.every
        self.candidates += len(chosen)
        chosen = chosen[first :: self.every]
        whole = len(chosen) == len(block.points)
        for name in _COLUMNS:
            column = getattr(block, name)
            if column is not None:
                self.parts[name].append(column if whole else column[chosen])
        self.count += len(chosen)
        while self.asked.most is not None and self.count > self.asked.most:
            self._halve()

    def _halve(self) -> None:
        """Every second one of those held."""
        self.every *= 2
        for parts in self.parts.values():
            at = 0
            for k, part in enumerate(parts):
                parts[k] = part[at % 2 :: 2].copy()
                at += len(part)
        self.count = (self.count + 1) // 2

    def _tally(self, block: Block) -> None:
        good = np.ones(len(block.points), bool) if block.good is None else block.good
        self.dropped += int((~good).sum())
        of = np.zeros(len(good), np.uint8) if block.classes is None else block.classes
        self.by_class += np.bincount(of[good], minlength=256)
        self.boxes.append(box_of(block.points))
        if not np.isfinite(self.boxes[-1]).all():
            self.bad += np.bincount(of[good & ~usable(block.points)], minlength=256)
        if block.station is not None and len(good):
            counted = np.bincount(block.station[good])
            self.by_station = np.pad(self.by_station, (0, max(0, len(counted) - len(self.by_station))))
            self.by_station[: len(counted)] += counted
        if block.colours is not None and block.colours.size:
            with np.errstate(invalid="ignore"):
                self.top = max(self.top, float(np.nanmax(block.colours)))
        if block.time is not None and len(block.time):
            low, high = float(block.time.min()), float(block.time.max())  # NaN stays
            self.times = (float(np.minimum(self.times[0], low)), float(np.maximum(self.times[1], high)))

    def as_scan(self, head: RawScan, scale: Scale) -> RawScan:
        points = self._column("points")
        colours, time = self._column("colours"), self._column("time")
        classes, station = self._column("classes"), self._column("station")
        told = bool(np.isfinite(self.times).all() and self.times[1] > self.times[0])
        classed = self.by_class[2:].any()  # 0 never classified, 1 unclassified
        return replace(
            head, points=np.empty((0, 3)) if points is None else points,
            colours=None if colours is None else scale(colours, self.top),
            time=time if told else None, classes=classes if classed else None, station=station,
            dropped=head.dropped + self.dropped,
            tally=Tally(
                self.every, self.by_class, self.bad, self.by_station,
                np.array(self.boxes).reshape(-1, 2, 3), self.top, self.times,
            ),
        )  # fmt: skip

    def _column(self, name: str) -> Any:
        """All parts of a column in one piece, let go one by one."""
        parts = self.parts.pop(name)
        return (parts[0] if len(parts) == 1 else np.concatenate(parts)) if parts else None
