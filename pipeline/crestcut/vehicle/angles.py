"""What a vehicle file implies: approach, departure and breakover angle, running clearance, and what a crest
uses of it.

Definitions are those of 49 CFR 523.2 (2015): angles between level ground and tangents to the static loaded
radius arcs of the tyres; the breakover angle is the supplement of the largest angle of two such tangents that
meet at a point of the underside. The regulation takes them at curb weight, ISO 612 at gross weight: an angle
without its load state means nothing.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from crestcut.vehicle.records import AS_MEASURED, LoadState, Part, Vehicle

_SAMPLES = 33  # along a plate, before the minimum is closed in
_ROUNDS = 5  # each narrows the bracket by 16


@dataclass(frozen=True)
class PartAngle:
    """The angle (rad) that a part allows, and the point that does: x, z in the vehicle frame, metres."""

    kind: str  # approach | departure | breakover
    angle: float
    part: str
    x: float
    z: float
    soft: bool


@dataclass(frozen=True)
class Angles:
    """Governing angles of the hard parts (None: no part describes that end), and the angle of every part."""

    load: LoadState
    approach: PartAngle | None
    departure: PartAngle | None
    breakover: PartAngle | None
    running_clearance: float  # m, the lowest sprung part above level ground
    running_part: str
    by_part: tuple[PartAngle, ...]


def derive_angles(vehicle: Vehicle, load: LoadState = AS_MEASURED) -> Angles:
    """All angles of a vehicle standing on level ground in one load state."""
    every = tuple(angle for part in vehicle.parts for angle in _angles_of(part, vehicle, load))

    def governing(kind: str) -> PartAngle | None:
        hard = [a for a in every if a.kind == kind and not a.soft]
        return min(hard, key=lambda a: a.angle, default=None)

    # 49 CFR 523.2, 'running clearance': to the lowest point of the automobile, unsprung weight left out
    sprung = [p for p in vehicle.parts if p.on == "body" and not p.soft]
    lowest = min(sprung, key=lambda p: min(height_at(p, vehicle, load, x) for x in p.x))
    clearance = min(height_at(lowest, vehicle, load, x) for x in lowest.x)
    return Angles(
        load,
        governing("approach"),
        governing("departure"),
        governing("breakover"),
        clearance,
        lowest.name,
        every,
    )


def height_at(part: Part, vehicle: Vehicle, load: LoadState, x: float) -> float:
    """Height (m) of a part's underside at x (m) above level ground; what an axle carries does not move with
    the load.
    """
    share = (x - part.x[0]) / (part.x[1] - part.x[0])
    z = part.z[0] + share * (part.z[1] - part.z[0])
    if part.on != "body":
        return z
    return z + load.rear + (load.front - load.rear) * x / vehicle.wheelbase


def tangent_angle(ahead: float, height: float, radius: float) -> float:
    """Angle (rad) from level ground of the tangent to a tyre that passes under it and through a point.

    ahead : horizontal distance of the point from the wheel's centre, m, above 0.  height : of the point, m.
    radius : static loaded radius, m; 0 is a wheel without size.  pi where the point lies inside the tyre's
    circle (seen from the side), which no ground can reach before the tyre does.
    """
    down = radius - height
    d = math.hypot(ahead, down)
    if d <= radius or ahead <= 0:
        return math.pi
    # d sin(angle + e) = R, sin(e) = (R - c) / d: the tangent's distance from the centre is R (49 CFR 523.2,
    # figure of it)
    return math.asin(radius / d) - math.asin(down / d)


def breakover_angle(x: float, height: float, wheelbase: float, radius: float) -> float:
    """Breakover angle (rad) of one underside point, x metres ahead of the rear axle: the sum of the tangents
    to both tyres.
    """
    return min(tangent_angle(x, height, radius) + tangent_angle(wheelbase - x, height, radius), math.pi)


def _angles_of(part: Part, vehicle: Vehicle, load: LoadState) -> list[PartAngle]:
    """A plate may reach past an axle: each stretch of it allows an angle of its own kind."""
    length, radius = vehicle.wheelbase, vehicle.tyre_radius

    def z(x: float) -> float:
        return height_at(part, vehicle, load, x)

    stretches: tuple[tuple[str, float, float, Callable[[float], float]], ...] = (
        ("departure", part.x[0], min(part.x[1], 0.0), lambda x: tangent_angle(-x, z(x), radius)),
        (
            "breakover",
            max(part.x[0], 0.0),
            min(part.x[1], length),
            lambda x: breakover_angle(x, z(x), length, radius),
        ),
        ("approach", max(part.x[0], length), part.x[1], lambda x: tangent_angle(x - length, z(x), radius)),
    )
    found = []
    for kind, rear, front, angle in stretches:
        if front <= rear:
            continue
        x = _least_at(angle, rear, front)
        if angle(x) < math.pi / 2:
            found.append(PartAngle(kind, angle(x), part.name, x, z(x), part.soft))
    return found


def _least_at(angle: Callable[[float], float], rear: float, front: float) -> float:
    """x of the least angle between two ends, to a micrometre: samples, closed in on the lowest."""
    low, high = rear, front
    best = low
    for _ in range(_ROUNDS):
        xs = np.linspace(low, high, _SAMPLES)
        k = int(np.argmin([angle(float(x)) for x in xs]))
        best = float(xs[k])
        low, high = float(xs[max(k - 1, 0)]), float(xs[min(k + 1, _SAMPLES - 1)])
    return best
