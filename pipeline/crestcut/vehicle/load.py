"""A measured vehicle file -> Vehicle, checked for what cannot be."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from crestcut.base.errors import CrestcutError
from crestcut.base.units import both
from crestcut.job import as_one_line, read_toml
from crestcut.vehicle.from_scan.file import underside_parts
from crestcut.vehicle.load_states import load_state, load_states, lowest_loaded
from crestcut.vehicle.parts import belly_plate, check_names, check_parts, named_part
from crestcut.vehicle.plausible import ROSE, findings
from crestcut.vehicle.records import Part, Vehicle
from crestcut.vehicle.schema import LoadTable, VehicleFile
from crestcut.vehicle.springs import check_balance, check_carries, check_cart, springs_of
from crestcut.vehicle.tracks import parts_over_tracks, refuse_parts_over_tracks

__all__ = [
    "load_state", "load_vehicle", "lowest_loaded", "parts_over_tracks", "refuse_parts_over_tracks",
    "vehicle_from",
]  # fmt: skip


def load_vehicle(path: Path | str) -> Vehicle:
    """Read and check a vehicle file; the belly plate comes first in ``parts``, then what its underside file
    shows, then the parts in the order of the file.

    Raises CrestcutError: one line naming the file, the key and the mend. ``notes`` of the result are plain
    sentences on what the file does not say.
    """
    path = Path(path)
    data, digest = read_toml(path, "vehicle file")
    return vehicle_from(data, path, digest)


def vehicle_from(data: dict[str, Any], path: Path, digest: str = "") -> Vehicle:
    """``load_vehicle`` from data at hand.  path : what it is called in messages, and where an underside's
    file is looked for.
    """
    try:
        written = VehicleFile.model_validate(data)
    except ValidationError as error:
        raise as_one_line(error, path, VehicleFile, data) from None
    parts, notes, read = _parts(written, path)
    check_cart(written, path.name)
    belly = min(parts[0].z)
    doubts = _doubts(written, belly, path.name)
    mass = written.centre_of_mass
    vehicle = Vehicle(
        path=path,
        name=written.name,
        wheelbase=written.wheelbase,
        front_track=written.front_track,
        rear_track=written.rear_track,
        tyre_radius=written.tyre_radius,
        tyre_width=written.tyre_width,
        width=written.width,
        belly_clearance=belly,
        front_overhang=written.front_overhang,
        rear_overhang=written.rear_overhang,
        turning_radius=written.turning_radius,
        parts=parts,
        springs=springs_of(written.springs),
        rigid=written.rigid,
        centre_of_mass=None if mass is None else (written.wheelbase - mass.back, mass.left, mass.up),
        tyre_tread=written.tyre_tread,
        sha256=digest,
        underside=None if written.underside is None else (Path(written.underside.file).name, read),
        notes=(*notes, *_notes(written, parts)),
        doubts=doubts,
    )
    check_carries(vehicle)
    check_balance(vehicle)
    return replace(vehicle, loads=load_states(written, vehicle))


SIZES = ("wheelbase", "front_track", "rear_track", "tyre_radius", "tyre_width", "width", "front_overhang",
         "rear_overhang", "turning_radius")  # fmt: skip


def _doubts(written: VehicleFile, belly: float, where: str) -> tuple[str, ...]:
    """What looks mistaken beside the other figures; refuses what cannot be.  belly : its least height, m."""
    sizes = {**{key: getattr(written, key) for key in SIZES}, "belly_clearance": belly}
    found = findings(sizes, written.rigid)
    for one in found:
        if one.rule.stop:
            raise CrestcutError(one.words, f"{where}: {one.rule.at}", "measure both again")
    rose = [
        f"load {name}: an axle rises by more than {both(ROSE)}; sinking is minus"
        for name, load in written.load.items()
        if isinstance(load, LoadTable) and max(load.front or 0.0, load.rear or 0.0) > ROSE
    ]
    return (*(f"{one.rule.at}: {one.words}" for one in found), *rose)


def _parts(written: VehicleFile, path: Path) -> tuple[tuple[Part, ...], tuple[str, ...], str]:
    """Every plate, the belly first; what is to be said of them; sha256 of the underside's file."""
    notes: tuple[str, ...] = ()
    read = ""
    if written.underside is not None:
        found, notes, read = underside_parts(written.underside, written, path)
    elif written.belly_clearance is not None:
        found = (belly_plate(written, written.belly_clearance, path.name),)
    else:
        raise CrestcutError(
            "missing", f"{path.name}: belly_clearance", "write it, or an [underside] with a mesh or scan"
        )
    parts = (*found, *(named_part(table, written, path.name) for table in written.part))
    check_names(parts, path.name)
    check_parts(parts, path.name)
    return parts, notes, read


def _notes(written: VehicleFile, parts: tuple[Part, ...]) -> tuple[str, ...]:
    notes = [
        f"the {zone} is not checked: no part describes it"
        for zone in ("nose", "tail")
        if not any(part.zone == zone for part in parts)
    ]
    if not written.load and not written.rigid:
        notes.append("only one load state is known: how far a full vehicle drops was not measured")
    if written.springs is None and not written.rigid:
        notes.append("equal springs at all wheels are assumed: none were measured")
    return tuple(notes)
