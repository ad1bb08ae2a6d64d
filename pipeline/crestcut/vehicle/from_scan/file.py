"""The underside that a vehicle file names: read, turned the right way round, checked against the tape."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.job import beside
from crestcut.scan import Scan, read_file, read_triangles, sample_faces
from crestcut.vehicle.from_scan.parts import LOW_PART
from crestcut.vehicle.from_scan.underside import Underside, read_underside
from crestcut.vehicle.parts import half_between_tyres
from crestcut.vehicle.records import Part
from crestcut.vehicle.schema import UndersidePart, UndersideTable, VehicleFile

SAME_BASE = 0.02  # share of the wheelbase by which scan and tape may differ: more is another unit or vehicle
TOLD_APART = 0.03  # m: overhangs must fit one way round better than the other by this
SAME_BELLY = 0.015  # m by which the belly of scan and tape may differ
_UNDER = 0.8  # m: what of a mesh lies higher over its lowest point is no underside
_ROUNDS = 5  # of sampling a mesh at the slab's density, 8 points a cell in all
_REACH = 0.05  # m: how far beside a found part its name may be put


def underside_parts(
    table: UndersideTable, written: VehicleFile, path: Path
) -> tuple[tuple[Part, ...], tuple[str, ...], str]:
    """Plates in the vehicle frame, the belly first; what is to be said of them; sha256 of the file.

    path : of the vehicle file, beside which the underside's file lies. Raises CrestcutError where the file
    is none, has no tyres, lies upside down, does not fit the tape figures, or could be either way round.
    """
    where = f"{path.name}: underside"
    half = half_between_tyres(written, path.name)
    file = beside(path.parent, table.file)
    if not file.is_file():
        raise CrestcutError(f"no such file: {table.file}", f"{where}.file", "check the name and the folder")
    scan = read_file(file, table.unit, table.up)
    try:
        under = _right_way_round(scan, table, written, where)
    except CrestcutError as error:
        raise CrestcutError(error.what, f"{where} ({file.name})", error.mend) from None
    notes = [*scan.notes, *_check_against_tape(under, written, where)]
    parts = [_fitted(part, under, written, half) for part in under.parts]
    if written.belly_clearance is not None:
        notes += _belly_differs(parts[0], written, where)
    notes.append(
        "underside: what is narrower than 60 mm there is not found: measure such by tape as a [[part]]"
    )
    named, said = _named(parts, table.part, written, where)
    return named, (*notes, *said), scan.files[0].sha256


def _right_way_round(scan: Scan, table: UndersideTable, written: VehicleFile, where: str) -> Underside:
    points = _dense(scan)
    if table.front is not None:
        axis = np.zeros(3)
        axis["xyz".index(table.front[-1])] = -1.0 if table.front.startswith("-") else 1.0
        turned = scan.frame.rotation @ axis
        return read_underside(points, table.within, (float(turned[0]), float(turned[1])), written.tyre_radius)
    under = read_underside(points, table.within, radius=written.tyre_radius)
    behind = _misfit(under.ends[::-1], under.tracks[::-1], written)
    ahead = _misfit(under.ends, under.tracks, written)
    if abs(ahead - behind) < TOLD_APART:
        raise CrestcutError(
            "which end is the front cannot be told",
            where,
            f'write front = "{_axis(scan, under.forward)}" or "{_axis(scan, under.forward, -1)}": the file\'s'
            " axis along which the front points, or front_overhang and rear_overhang if they differ",
        )
    if behind < ahead:
        back = (-under.forward[0], -under.forward[1])
        return read_underside(points, table.within, back, written.tyre_radius)
    return under


def _dense(scan: Scan) -> FloatArray:
    """Points (n, 3) of the scan; of a mesh so many that no 20 mm cell of its underside goes without: at the
    density that a slab gets, one in five would.
    """
    points = np.asarray(scan.points, dtype=float)
    mesh = read_triangles(scan.files[0].path, scan.frame)
    if mesh is None:
        return points
    corners, faces = mesh
    low = corners[faces][:, :, 2].min(axis=1) < np.quantile(points[:, 2], 0.001) + _UNDER
    return np.concatenate([sample_faces(corners, faces[low], None, seed)[0] for seed in range(_ROUNDS)])


def _misfit(ends: tuple[float, float], tracks: tuple[float, float], written: VehicleFile) -> float:
    """How far the ends and tracks are from the tape figures, m; 0 for what was not measured."""
    pairs = zip(ends, (written.front_overhang, written.rear_overhang), strict=True)
    off = sum(abs(seen - taped) for seen, taped in pairs if taped is not None)
    return off + abs((tracks[0] - tracks[1]) - (written.front_track - written.rear_track))


def _axis(scan: Scan, forward: tuple[float, float], way: int = 1) -> str:
    """The file's axis nearest to a direction of the scan, like "+x"."""
    own = way * (np.array([*forward, 0.0]) @ scan.frame.rotation)
    k = int(np.argmax(np.abs(own)))
    return f"{'-' if own[k] < 0 else '+'}{'xyz'[k]}"


def _check_against_tape(under: Underside, written: VehicleFile, where: str) -> list[str]:
    """Refuse a scan of another size; say where the two differ noticeably."""
    notes = []
    for key, seen, taped in (
        ("wheelbase", under.wheelbase, written.wheelbase),
        ("front_track", under.tracks[0], written.front_track),
        ("rear_track", under.tracks[1], written.rear_track),
    ):
        allowed = max(SAME_BASE * written.wheelbase, 0.03)
        words = (
            f"its {key.replace('_', ' ')} is {millimetres(seen, 0)}, the tape says {millimetres(taped, 0)}"
        )
        if abs(seen - taped) > allowed:
            raise CrestcutError(
                words,
                where,
                "check its unit, that it is this vehicle, and the tape figure",
            )
        if abs(seen - taped) > allowed / 2:
            notes.append(f"underside: {words}")
    return notes


def _fitted(part: Part, under: Underside, written: VehicleFile, half: float) -> Part:
    """Places along the vehicle brought onto the taped wheelbase; the belly ends at the tyres as taped."""
    if part.name == "belly":
        within = part.within if written.belly_within is None else written.belly_within
        return replace(part, x=(0.0, written.wheelbase), y=(-half, half), within=within)

    def along(x: float) -> float:
        if x < 0:
            return x
        if x > under.wheelbase:
            return x - under.wheelbase + written.wheelbase
        return x * written.wheelbase / under.wheelbase

    return replace(part, x=(along(part.x[0]), along(part.x[1])))


def _belly_differs(belly: Part, written: VehicleFile, where: str) -> list[str]:
    taped, seen = written.belly_clearance or 0.0, min(belly.z)
    if abs(seen - taped) > SAME_BELLY:
        raise CrestcutError(
            f"its belly is {millimetres(seen)} above the ground, belly_clearance says {millimetres(taped)}",
            where,
            "measure it again, or leave belly_clearance out: the scan then gives it",
        )
    return [f"the belly is {millimetres(seen)} high by its scan ({millimetres(taped)} by tape)"]


def _named(
    parts: Sequence[Part], names: Sequence[UndersidePart], written: VehicleFile, where: str
) -> tuple[tuple[Part, ...], list[str]]:
    """Found parts with the names (and softness) that the file gives to places."""
    out, named = list(parts), set[int]()
    for name in names:
        x, y = written.wheelbase - name.back, name.across
        over = [k for k, p in enumerate(out) if k > 0 and _covers(p, x, y)]
        if not over:
            raise CrestcutError(
                f"nothing was found {millimetres(name.back, 0)} behind the front axle and"
                f" {millimetres(abs(y), 0)} {'left' if y >= 0 else 'right'} of the middle",
                f"{where}.part ({name.name})",
                f"found: {'; '.join(_place(p, written) for p in out[1:]) or 'the belly only'}",
            )
        k = min(over, key=lambda k: (out[k].x[1] - out[k].x[0]) * (out[k].y[1] - out[k].y[0]))
        out[k] = replace(out[k], name=name.name, soft=name.soft, on=name.on)
        named.add(k)
    # what was called so here: somebody may name a part of theirs like that
    unnamed = [p for k, p in enumerate(out) if k not in named and p.name.startswith(LOW_PART)]
    said = [
        f"underside: {_place(p, written)} has no name yet; give it one under [[underside.part]]"
        for p in unnamed
    ]
    return tuple(out), said


def _covers(part: Part, x: float, y: float) -> bool:
    return part.x[0] - _REACH <= x <= part.x[1] + _REACH and part.y[0] - _REACH <= y <= part.y[1] + _REACH


def _place(part: Part, written: VehicleFile) -> str:
    back = millimetres(written.wheelbase - sum(part.x) / 2, 0)
    return f"{part.name} at {back} back, {millimetres(sum(part.y) / 2, 0)} left"
