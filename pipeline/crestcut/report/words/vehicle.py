"""A vehicle in plain words, for the terminal."""

from __future__ import annotations

import math

from crestcut.base.units import both, millimetres
from crestcut.vehicle import Angles, LoadState, PartAngle, Vehicle, derive_angles

ANGLE_KINDS = ("approach", "breakover", "departure")


def vehicle_lines(vehicle: Vehicle, angles: Angles) -> list[str]:
    """What the terminal prints of a vehicle: dimensions, parts, angles and what is not known."""
    lines = [
        f"{vehicle.name} ({angles.load.name})",
        (
            f"  wheelbase {both(vehicle.wheelbase, 0)}, tracks {millimetres(vehicle.front_track, 0)} and"
            f" {millimetres(vehicle.rear_track, 0)}, hub {millimetres(vehicle.tyre_radius, 0)} above the"
            " ground"
        ),
        f"  running clearance {both(angles.running_clearance, 0)} ({angles.running_part})",
    ]
    lines += [f"  {kind} angle {_said(getattr(angles, kind))}" for kind in ANGLE_KINDS]
    if angles.breakover is not None:
        grade = 100 * math.tan(angles.breakover.angle)
        lines.append(
            f"  so it hangs up where level ground turns down into more than {grade:.0f} % at a sharp edge"
        )
    lines.append("  underside:")
    for part in vehicle.parts:
        low = " to ".join(dict.fromkeys(millimetres(z, 0) for z in sorted(part.z)))
        extra = ", may touch" if part.soft else ""
        lines.append(
            f"    {part.name}: {low} above level ground,"
            f" {_span(vehicle.wheelbase - part.x[1], vehicle.wheelbase - part.x[0])} behind the front axle,"
            f" {part.zone}{extra}"
        )
    for state in vehicle.loads:
        if state != angles.load:
            lines += _loaded_lines(state, derive_angles(vehicle, state))
    if vehicle.rigid:
        lines.append("  rigid: stands on three wheels chosen by its centre of mass")
    lines += [f"  note: {note}" for note in vehicle.notes]
    return lines


def _loaded_lines(state: LoadState, angles: Angles) -> list[str]:
    """What a load changes: an angle means nothing without its load state."""
    found = [
        f"{kind} {'not known' if a is None else f'{math.degrees(a.angle):.1f} degrees'}"
        for kind in ANGLE_KINDS
        for a in (getattr(angles, kind),)
    ]
    return [
        f"  load {state.name}: front {millimetres(state.front, 0)}, rear {millimetres(state.rear, 0)};"
        f" running clearance {both(angles.running_clearance, 0)}, {', '.join(found)}"
    ]


def _said(angle: PartAngle | None) -> str:
    return (
        "not known: no part describes that end"
        if angle is None
        else f"{math.degrees(angle.angle):.1f} degrees ({angle.part})"
    )


def _span(first: float, last: float) -> str:
    return f"{millimetres(first, 0)[:-3]} to {millimetres(last, 0)}"
