"""A scan as an earlier run knew it: all that was said of it, and what is asked of its points once the slab is
made. The points themselves are read again only when something else is asked of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from functools import cached_property
from typing import Any

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame
from crestcut.scan.records import Photo, Scan

_OF_POINTS = ("points", "source", "pass_of", "colours", "time", "whole")


@dataclass(frozen=True, eq=False)
class Remembered:
    """made_from : a hash of its files and of all that reading them depends on, "" where that cannot be told.
    content : a hash of the scan as it was read.  bare : the scan with none of its points.  points : how many
    are held.  near (k, 3) : those within ``reach`` m of places (m, 2) along x and y.
    """

    made_from: str
    content: str
    bare: Scan
    points: int
    places: FloatArray
    reach: float
    near: FloatArray
    photo: Photo | None

    def scan(self, read: Callable[[], Scan]) -> Scan:
        """The scan, which calls ``read`` when it is asked for what is not remembered."""
        later = object.__new__(PointsLater)
        for field in fields(Scan):
            value = getattr(self.bare, field.name)
            if field.name not in _OF_POINTS or value is None:
                later.__dict__[field.name] = value
        later.__dict__.update(remembered=self, _again=read)
        return later

    def beside(self, scan: Scan) -> Scan:
        """The scan that this was remembered of, asked for the rest alone."""
        return self.scan(lambda: scan)


def remember(
    scan: Scan, made_from: str, content: str, places: FloatArray, reach: float, frame: GridFrame
) -> Remembered:  # fmt: skip
    """What later runs need of ``scan``: its points near places (m, 2), site m, its colours over ``frame``."""
    before = remembered_of(scan)
    bare = _bare(scan) if before is None else before.bare
    near, photo = scan.near(places, reach), scan.photo(frame)
    return Remembered(made_from, content, bare, scan.count, places, reach, near, photo)


def remembered_of(scan: Scan) -> Remembered | None:
    """What is known of a scan that is remembered; None of one that was read."""
    return scan.remembered if isinstance(scan, PointsLater) else None


def _bare(scan: Scan) -> Scan:
    arrays = {name: getattr(scan, name) for name in _OF_POINTS}
    none: dict[str, Any] = {name: None if a is None else a[:0].copy() for name, a in arrays.items()}
    for array in filter(lambda a: a is not None, none.values()):
        array.flags.writeable = False  # as it is when it is read back: those that are shared are the same
    return replace(scan, **none)


def _later(name: str) -> Any:
    """What there is of each point, as it is once it was read."""
    return cached_property(lambda scan: getattr(scan._read, name))


class PointsLater(Scan):
    """A scan that is remembered: whatever there is of each point is read when it is first asked for.

    remembered : None of another that was made from it by ``replace``, which has its points.
    """

    remembered: Remembered | None = None

    @cached_property
    def _read(self) -> Scan:
        scan: Scan = self.__dict__["_again"]()
        if [f.sha256 for f in scan.files] != [f.sha256 for f in self.files]:
            where = ", ".join(str(f.path) for f in self.files)
            raise CrestcutError("the scan has changed meanwhile", where, "run the job again")
        return scan

    points, source, pass_of = _later("points"), _later("source"), _later("pass_of")
    colours, time, whole = _later("colours"), _later("time"), _later("whole")

    @property
    def count(self) -> int:
        """Points held."""
        return super().count if self.remembered is None else self.remembered.points

    def near(self, places: FloatArray, reach: float) -> FloatArray:
        """As of ``Scan``."""
        told = self.remembered
        if told is not None and reach == told.reach and np.array_equal(places, told.places):
            return told.near
        return super().near(places, reach)

    def photo(self, frame: GridFrame) -> Photo | None:
        """As of ``Scan``."""
        told = None if self.remembered is None else self.remembered.photo
        return told if told is not None and told.frame == frame else super().photo(frame)
