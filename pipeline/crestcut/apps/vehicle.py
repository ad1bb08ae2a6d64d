"""A vehicle file checked and drawn, or made from a filled measuring sheet; the sheet itself."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from crestcut.base.errors import Say
from crestcut.job import read_toml
from crestcut.report import Staging
from crestcut.study import Identity
from crestcut.vehicle import (
    Angles,
    Vehicle,
    derive_angles,
    is_sheet,
    measured_vehicle,
    sheet_from,
    vehicle_from,
)


@dataclass(frozen=True)
class Told:
    """A vehicle, its angles with the first of its loads, and figures that look mistaken.

    text : of its file, where it came from a filled sheet, else None.  written : what was made of it.
    """

    vehicle: Vehicle
    angles: Angles
    doubts: tuple[str, ...]
    text: str | None
    written: tuple[Path, ...]


def vehicle_and_write(file: Path, out: Path | None, say: Say) -> Told:
    """The vehicle of a file or a filled sheet; where ``out`` is given its drawing there, and the vehicle file
    where it came from a sheet.

    Raises CrestcutError for what is wrong with the file.
    """
    data, digest = read_toml(file, "vehicle file or filled sheet")
    text: str | None = None
    doubts: tuple[str, ...] = ()
    if is_sheet(data):
        sheet = sheet_from(data, file, digest)
        found, text = measured_vehicle(sheet)
        text = f"# made by: {Identity(found.name).tool}\n{text}"
        doubts = sheet.doubts
    else:
        found = vehicle_from(data, file, digest)
    angles = derive_angles(found, found.loads[0])
    written = _write(found, angles, text, out, say) if out is not None else ()
    return Told(found, angles, doubts or found.doubts, text, written)


def _write(found: Vehicle, angles: Angles, text: str | None, out: Path, say: Say) -> tuple[Path, ...]:
    from crestcut.report import draw_vehicle

    staging = Staging(out, "vehicle", say)
    with staging as folder:
        staging.about = Identity(found.name)
        draw_vehicle(found, angles, folder / "vehicle.png")
        if text is not None:
            (folder / "vehicle.toml").write_text(text, encoding="utf-8", newline="\n")
    return staging.moved


def write_sheet(out: Path, say: Say) -> tuple[Path, ...]:
    """What to measure on a vehicle, as pages and a file to fill in, into ``out``."""
    from crestcut.report import write_measuring_sheet

    staging = Staging(out, "vehicle --sheet", say)
    with staging as folder:
        staging.about = Identity("Measuring sheet for a vehicle")
        write_measuring_sheet(folder)
    return staging.moved
