"""Which points that were read are to be used: those of the classes asked for that are places at all."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.job import NOISE
from crestcut.scan.formats.raw import RawScan, Tally
from crestcut.scan.formats.take import of_use, usable

FEWEST_POINTS = 50
_CLASSES = np.arange(256, dtype=np.uint8)


@dataclass(frozen=True)
class Classes:
    """Points to use by what a file says they are: of ``use`` alone, where any are named; never of
    ``leave``."""

    use: tuple[int, ...] = ()
    leave: tuple[int, ...] = NOISE


AS_SAID = Classes()


def counted(raw: RawScan, tally: Tally, classes: Classes) -> tuple[int, int]:
    """How many points of a file that is held in part are to be used, and how many of those are no places."""
    of = np.ones(256, bool) if raw.classes is None else of_use(_CLASSES, classes.use, classes.leave)
    return int((tally.by_class - tally.bad)[of].sum()), int(tally.bad[of].sum())


def of_classes(raw: RawScan, classes: Classes, where: str) -> RawScan:
    """The points that are to be used. Raises CrestcutError where classes are named that no point has."""
    if raw.classes is None:
        if classes.use:
            raise CrestcutError(
                "no point of it has a class", where, "take [scan] use_classes out, or export it with classes"
            )
        return raw
    keep = of_use(raw.classes, classes.use, classes.leave)
    if not keep.any():
        there = ", ".join(str(c) for c in np.unique(raw.classes))
        raise CrestcutError(
            f"no point of the classes asked for; there are {there}", where, "change [scan] use_classes"
        )
    if keep.all():
        return raw
    count = int((~keep).sum())
    if raw.tally is not None:
        count = int(raw.tally.by_class[~of_use(_CLASSES, classes.use, classes.leave)].sum())
    said = f"{count:,} points left out by their classes in the file"
    return _some(replace(raw, notes=(*raw.notes, said)), keep)


def _some(raw: RawScan, keep: NDArray[np.bool_]) -> RawScan:
    """Some points of a cloud."""

    def of(values: Any) -> Any:
        return None if values is None else values[keep]

    return replace(
        raw, points=raw.points[keep], colours=of(raw.colours), time=of(raw.time), station=of(raw.station),
        classes=of(raw.classes),
    )  # fmt: skip


def finite(raw: RawScan, where: str) -> tuple[RawScan, int]:
    """The scan without NaN and infinite points and those beyond any place (and the faces that hang on them),
    and how many those were."""
    good = usable(raw.points)
    bad = int((~good).sum())
    total = len(good)
    if total == 0:
        raise CrestcutError("no points in the file", where, "export the scan again")
    if bad > total / 2:
        raise CrestcutError(
            f"{bad:,} of {total:,} points are not numbers or beyond any place", where, "export the scan again"
        )
    if total - bad < (3 if raw.faces is not None else FEWEST_POINTS):
        raise CrestcutError(f"only {total - bad} points", where, "a slab needs thousands; scan it again")
    if bad == 0:
        return raw, 0
    faces = raw.faces
    if faces is not None:
        new = np.cumsum(good) - 1
        faces = new[faces[good[faces].all(axis=1)]]
        if len(faces) == 0:
            raise CrestcutError("no whole face in the file", where, "export the scan again")
    return replace(_some(raw, good), faces=faces), bad
