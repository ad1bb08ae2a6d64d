"""A measured vehicle file -> Vehicle, checked for what cannot be."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from pydantic import ValidationError

from crestcut.errors import CrestcutError
from crestcut.job.faults import as_one_line, did_you_mean
from crestcut.job.toml_file import read_toml
from crestcut.units import both, millimetres
from crestcut.vehicle.records import AS_MEASURED, LoadState, Part, Springs, Vehicle
from crestcut.vehicle.schema import PartTable, SpringsTable, VehicleFile

_TOUCHING = 1e-6  # m: parts may end exactly at the bumper


def load_vehicle(path: Path) -> Vehicle:
    """Read and check a vehicle file; the belly plate comes first in ``parts``, then the parts in the order of
    the file.

    Raises CrestcutError: one line naming the file, the key and the mend. ``notes`` of the result are plain
    sentences on what the file does not say.
    """
    path = Path(path)
    data, digest = read_toml(path, "vehicle file")
    try:
        written = VehicleFile.model_validate(data)
    except ValidationError as error:
        raise as_one_line(error, path, VehicleFile, data) from None
    parts = (_belly(written, path.name), *(_part(table, written, path.name) for table in written.part))
    _check_names(parts, path.name)
    _check_cart(written, path.name)
    mass = written.centre_of_mass
    return Vehicle(
        path=path,
        name=written.name,
        wheelbase=written.wheelbase,
        front_track=written.front_track,
        rear_track=written.rear_track,
        tyre_radius=written.tyre_radius,
        tyre_width=written.tyre_width,
        width=written.width,
        belly_clearance=written.belly_clearance,
        front_overhang=written.front_overhang,
        rear_overhang=written.rear_overhang,
        turning_radius=written.turning_radius,
        parts=parts,
        loads=_loads(written),
        springs=_springs(written.springs),
        rigid=written.rigid,
        centre_of_mass=None if mass is None else (written.wheelbase - mass.back, mass.left, mass.up),
        sha256=digest,
        notes=_notes(written, parts),
    )


def load_state(vehicle: Vehicle, name: str) -> LoadState:
    """The named load state. Raises CrestcutError with 'did you mean' for a name the vehicle file does not
    hold.
    """
    for state in vehicle.loads:
        if state.name == name:
            return state
    names = [state.name for state in vehicle.loads]
    raise CrestcutError(f'no load "{name}"', f"{vehicle.path.name}: load", did_you_mean(name, names))


def parts_over_tracks(
    vehicle: Vehicle, want: float, want_ends: float | None = None, loads: Sequence[LoadState] | None = None
) -> tuple[Part, ...]:
    """Hard body parts over a wheel track that hang lower than asked for on level ground, in the deepest load
    state.

    Where the ground rises under such a part it rises under the wheel too, so the wheel lifts the part with
    every cut left standing: no finite cut reaches ``want`` there. ``want_ends`` (default ``want``) is what
    nose and tail are asked for.
    """
    ends = want if want_ends is None else want_ends
    found = []
    for part in vehicle.parts:
        asked = want if part.zone == "belly" else ends
        if not part.soft and _over_track(part, vehicle) and lowest_loaded(part, vehicle, loads) < asked:
            found.append(part)
    return tuple(found)


def refuse_parts_over_tracks(
    vehicle: Vehicle, want: float, want_ends: float | None = None, loads: Sequence[LoadState] | None = None
) -> None:
    """Raises CrestcutError for the first part that ``parts_over_tracks`` lists."""
    for part in parts_over_tracks(vehicle, want, want_ends, loads):
        asked = want if part.zone == "belly" or want_ends is None else want_ends
        raise CrestcutError(
            f"{part.name} lies over a wheel track with {millimetres(lowest_loaded(part, vehicle, loads))} to"
            f" level ground, less than the {both(asked)} asked for: no cut can give it more",
            f"{vehicle.path.name}: part",
            "ask for less (want), mark it soft if it may touch, or measure it again",
        )


def lowest_loaded(part: Part, vehicle: Vehicle, loads: Sequence[LoadState] | None = None) -> float:
    """Least height of a part above level ground over ``loads`` (default: all of the file), metres."""
    least = min(part.z)
    for state in vehicle.loads if loads is None else loads:
        for x, z in zip(part.x, part.z, strict=True):
            least = min(least, z + _drop(part, vehicle, state, x))
    return least


def _drop(part: Part, vehicle: Vehicle, state: LoadState, x: float) -> float:
    """How far the body moves above x, m: a straight line through both axles; what an axle carries does not
    move.
    """
    if part.on != "body":
        return 0.0
    return state.rear + (state.front - state.rear) * x / vehicle.wheelbase


def _over_track(part: Part, vehicle: Vehicle) -> bool:
    """Does the part cover ground that a tyre rolls on as well?"""
    for track in (vehicle.front_track, vehicle.rear_track):
        inner, outer = (track - vehicle.tyre_width) / 2, (track + vehicle.tyre_width) / 2
        for low, high in ((inner, outer), (-outer, -inner)):
            if part.y[0] < high - _TOUCHING and part.y[1] > low + _TOUCHING:
                return True
    return False


def _belly(written: VehicleFile, where: str) -> Part:
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
    z = written.belly_clearance
    return Part(
        "belly", (0.0, written.wheelbase), (-half, half), (z, z), "belly", within=written.belly_within
    )


def _part(table: PartTable, written: VehicleFile, where: str) -> Part:
    """Behind the front axle -> ahead of the rear one; [front, rear] clearances -> (rear, front) heights."""
    place = f"{where}: part ({table.name})"
    front, back = min(table.back), max(table.back)
    right, left = min(table.across), max(table.across)
    x = (written.wheelbase - back, written.wheelbase - front)
    if left - right > written.width + _TOUCHING or max(left, -right) > written.width / 2 + _TOUCHING:
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
        if overhang is not None and reach > overhang + _TOUCHING:
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


def _check_names(parts: tuple[Part, ...], where: str) -> None:
    names = [part.name for part in parts]
    for name in names:
        if names.count(name) > 1:
            taken = "is the plate that belly_clearance makes" if name == "belly" else "is there twice"
            raise CrestcutError(
                f'the name "{name}" {taken}', f"{where}: part", "give each part a name of its own"
            )


def _check_cart(written: VehicleFile, where: str) -> None:
    mass = written.centre_of_mass
    if written.rigid and mass is None:
        raise CrestcutError(
            "a rigid cart without centre_of_mass",
            where,
            'write centre_of_mass = { back = "300 mm" }: on which wheels it rests',
        )
    if mass is None:
        return
    half = min(written.front_track, written.rear_track) / 2
    if not (0 < mass.back < written.wheelbase and abs(mass.left) < half):
        raise CrestcutError(
            "lies outside the wheels: it would tip over",
            f"{where}: centre_of_mass",
            "back counts from the front axle",
        )


def _loads(written: VehicleFile) -> tuple[LoadState, ...]:
    given = tuple(LoadState(name, table.front, table.rear) for name, table in written.load.items())
    return given if any(state.name == AS_MEASURED.name for state in given) else (AS_MEASURED, *given)


def _springs(table: SpringsTable | None) -> Springs:
    if table is None:
        return Springs()
    default = Springs()
    return Springs(
        front_rate=table.front.rate or default.front_rate,
        rear_rate=table.rear.rate or default.rear_rate,
        front_anti_roll=table.front.anti_roll,
        rear_anti_roll=table.rear.anti_roll,
        front_droop=table.front.droop,
        rear_droop=table.rear.droop,
        front_load=table.front.load,
        rear_load=table.rear.load,
        unsprung=table.unsprung,
        measured=table.front.rate is not None,
    )


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
