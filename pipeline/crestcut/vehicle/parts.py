"""Tape figures -> plates in the vehicle frame, and what cannot be among them."""

from __future__ import annotations

from crestcut.base.errors import CrestcutError
from crestcut.base.units import millimetres
from crestcut.vehicle.records import Part
from crestcut.vehicle.schema import PartTable, VehicleFile

TOUCHING = 1e-6  # m: parts may end exactly at the bumper
WITHIN = 0.003  # m, 1 sd of a height by tape or card stack where the file does not say (common practice)


def belly_plate(written: VehicleFile, clearance: float, where: str) -> Part:
    """The plate over the wheelbase between the tyres' inner faces, ``clearance`` (m) above the ground."""
    half = half_between_tyres(written, where)
    within = WITHIN if written.belly_within is None else written.belly_within
    return Part("belly", (0.0, written.wheelbase), (-half, half), (clearance,) * 2, "belly", within=within)


def half_between_tyres(written: VehicleFile, where: str) -> float:
    """Half the width between the tyres' inner faces, m; refuses wheels that cannot be under this body."""
    half = (min(written.front_track, written.rear_track) - written.tyre_width) / 2
    if half <= 0:
        raise CrestcutError(
            f"the tyres ({millimetres(written.tyre_width, 0)} wide) fill the track of"
            f" {millimetres(min(written.front_track, written.rear_track), 0)}",
            f"{where}: tyre_width",
            "the track is measured between the middles of the tyres",
        )
    if max(written.front_track, written.rear_track) - written.tyre_width > written.width:
        raise CrestcutError(
            "the tyres stand outside the vehicle", f"{where}: width", "measure the body's full width"
        )
    if written.tyre_radius * 2 >= written.wheelbase:
        raise CrestcutError(
            "the wheels are larger than the wheelbase",
            f"{where}: tyre_radius",
            "measure from the hub's centre to the ground",
        )
    return half


def named_part(table: PartTable, written: VehicleFile, where: str) -> Part:
    """Behind the front axle -> ahead of the rear one; [front, rear] clearances -> (rear, front) heights."""
    place = f"{where}: part ({table.name})"
    front, back = min(table.back), max(table.back)
    right, left = min(table.across), max(table.across)
    x = (written.wheelbase - back, written.wheelbase - front)
    if left - right > written.width + TOUCHING or max(left, -right) > written.width / 2 + TOUCHING:
        raise CrestcutError(
            f"reaches {millimetres(max(left, -right), 0)} to the side, beyond the vehicle's"
            f" {millimetres(written.width, 0)} width",
            f"{place}.across",
            "give it from the middle of the vehicle, left positive",
        )
    _within_overhangs(x, written, place)
    middle = (x[0] + x[1]) / 2
    zone = "nose" if middle > written.wheelbase else "tail" if middle < 0 else "belly"
    z_front, z_rear = table.clearance
    return Part(table.name, x, (right, left), (z_rear, z_front), zone, table.on, table.soft, table.within)


def _within_overhangs(x: tuple[float, float], written: VehicleFile, place: str) -> None:
    ahead, behind = x[1] - written.wheelbase, -x[0]
    for reach, overhang, key in (
        (ahead, written.front_overhang, "front"),
        (behind, written.rear_overhang, "rear"),
    ):
        if overhang is not None and reach > overhang + TOUCHING:
            raise CrestcutError(
                f"reaches {millimetres(reach, 0)} beyond the {key} axle, the {key} overhang is"
                f" {millimetres(overhang, 0)}",
                f"{place}.back",
                "distances count from the front axle, towards the rear positive",
            )
    if ahead > 5.0 or behind > 5.0:
        raise CrestcutError(
            "reaches more than 5 m beyond an axle",
            f"{place}.back",
            'a number alone is metres; write it like "900 mm"',
        )


def check_names(parts: tuple[Part, ...], where: str) -> None:
    """Refuse two parts of one name."""
    names = [part.name for part in parts]
    for name in names:
        if names.count(name) > 1:
            taken = "is the plate that belly_clearance makes" if name == "belly" else "is there twice"
            raise CrestcutError(
                f'the name "{name}" {taken}', f"{where}: part", "give each part a name of its own"
            )


def check_parts(parts: tuple[Part, ...], where: str = "") -> None:
    """Refuse a named part that lies above its own belly: it is hidden by the plate, so one of the two was
    measured wrongly.  where : the file's name.
    """
    belly = next((p for p in parts if p.name == "belly"), None)
    for part in parts:
        if belly is None or part is belly or part.on != "body":
            continue
        covered = (
            part.x[0] >= belly.x[0]
            and part.x[1] <= belly.x[1]
            and part.y[0] >= belly.y[0]
            and part.y[1] <= belly.y[1]
        )
        if covered and min(part.z) > max(belly.z) + TOUCHING:
            raise CrestcutError(
                f"at {millimetres(min(part.z))} it lies above its own belly at {millimetres(max(belly.z))}",
                f"{where}: part ({part.name}).clearance" if where else f"part ({part.name})",
                "measure both again from flat ground, or leave the part out",
            )
