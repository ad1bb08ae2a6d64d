"""What a reader hands on: numbers exactly as the file has them, before unit, up axis and origin are
settled."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.scan.placing.system import NO_SYSTEM, System


@dataclass(frozen=True)
class UnitFound:
    """A unit that the file itself states. ``scale``: metres per file unit for each file axis."""

    name: str  # as printed: "m", "ft", "us-ft", "mm"
    scale: tuple[float, float, float]
    reason: str


@dataclass(frozen=True)
class UpFound:
    """An up axis that the file, or the standard it follows, states."""

    axis: str  # x y z -x -y -z
    reason: str


@dataclass(frozen=True)
class Origin:
    """What a file says of its making; "" where it says nothing. made : a day (ISO 8601)."""

    sensor: str = ""
    software: str = ""
    made: str = ""


@dataclass(frozen=True, eq=False)
class Tally:
    """What is known of all points of a file that are not marked as not to be used, be they held or not.

    every : how manieth of them is held.  by_class : (256,) how many of each class; ``bad``, (256,): of those
    that are not numbers or beyond any place.  by_station : how many of each of the file's own scans.
    boxes : (k, 2, 3) lowest and highest file coordinate of those read together, block by block; infinite
    where one holds what is no number.  top : largest colour.  times : first and last, of none (inf, -inf).
    """

    every: int
    by_class: NDArray[np.int64]
    bad: NDArray[np.int64]
    by_station: NDArray[np.int64]
    boxes: FloatArray
    top: float
    times: tuple[float, float]


@dataclass(frozen=True, eq=False)
class RawScan:
    """One file as read.

    points : (n, 3) float64 file coordinates; NaN or infinite rows still in.  faces : (m, 3) int64 into
    points, None for a cloud.  colours : (n, 3) uint8 or None.  time : (n,) float64 seconds or None.  dropped
    : points that the file itself marks as not to be used, already left out.
    quantum : file units that the coordinates are rounded to, where the reader knows better than ``points``
    show (they were moved since, or the file says so).
    system : the reference system that the file names.  classes : (n,) what each point was said to be (LAS 1.4
    R15, table 17), None where nobody said.
    station : (n,) which of the file's own scans a point is of, None where it has but one.
    tally : of a file read some points at a time; None: ``points`` are all there are.
    """

    format: str
    points: FloatArray
    faces: NDArray[np.int64] | None = None
    colours: NDArray[np.uint8] | None = None
    time: FloatArray | None = None
    unit: UnitFound | None = None
    up: UpFound | None = None
    dropped: int = 0
    notes: tuple[str, ...] = ()
    quantum: float | None = None
    station: NDArray[np.int16] | None = None
    system: System = NO_SYSTEM
    classes: NDArray[np.uint8] | None = None
    origin: Origin = Origin()
    tally: Tally | None = None


def truncated(path: Path, expected: str, found: str) -> CrestcutError:
    """The one wording for a file that ends too early."""
    return CrestcutError(
        f"the file is cut short: {expected} expected, {found} found", str(path), "copy or export it again"
    )


def unreadable(path: Path, kind: str, why: object) -> CrestcutError:
    """The one wording for a file that a library could not read."""
    return CrestcutError(f"cannot be read as {kind} ({why})", str(path), "copy or export it again")


def eight_bit(colours: NDArray, top: float | None = None) -> NDArray[np.uint8] | None:
    """Colours (n, 3) of any integer or 0..1 float type -> uint8; None where all are zero, which means 'no
    colour'. top : the largest of a file of which these are some."""
    values = np.asarray(colours)
    if values.size == 0 or not (np.any(values) if top is None else top > 0.0):
        return None
    if top is None:
        top = float(np.nanmax(values))
    if values.dtype.kind == "f":
        scaled = values * 255.0 if top <= 1.0 else values
        return np.clip(np.nan_to_num(np.rint(scaled)), 0, 255).astype(np.uint8)
    # 16-bit colour fields often hold 8-bit values: only a larger value proves the wider range.
    if top > 255:
        values = values >> 8
    return values.astype(np.uint8)
