"""The body and what each axle carries, placed over the middles of the axles' treads; compiled.

Grid axes (u along columns, v along rows, z up), metres and radians.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from crestcut.base.grid import FloatArray
from crestcut.base.kernels import njit


class Axles(NamedTuple):
    """What the ride needs of a vehicle: lengths in m, ``half_width`` that of a tyre; shares of the roll
    stiffness, 1 in all."""

    wheelbase: float
    front_track: float
    rear_track: float
    radius: float
    half_width: float
    front_share: float
    rear_share: float


class Attitude(NamedTuple):
    """yaw, pitch (nose up), roll (left side up) : of the body, rad.  axles : pitch of what the axles carry,
    rad.  front, rear : the axles' tilts."""

    yaw: float
    pitch: float
    roll: float
    axles: float
    front: float
    rear: float


@njit()
def lean_of(rise: float, over: float) -> float:
    """Angle at which a length ``over`` rises by ``rise``, rad; held off the upright."""
    return math.asin(min(max(rise / over, -0.9), 0.9))


@njit()
def roll_of(tilt: float, pitch: float) -> float:
    """Roll about a chassis pitched so that what rises by ``tilt`` across the heading, rad.

    The chassis' left is (-sin pitch sin roll, cos roll, cos pitch sin roll): in the plane through it and the
    chassis' forward lies what is square to the heading and rises by tan roll / cos pitch. Exact on a plane.
    On a step of h between two level wheels the arc sine of h / track would be: half the cube of it less here,
    0.01 mm at a body's edge for 50 mm and 0.2 mm for 150 mm.
    """
    return math.atan(tilt * math.cos(pitch))


@njit()
def upright(tilt: float) -> float:
    """How high a hub is over the middle of its tread, radii."""
    return 1.0 / math.sqrt(1.0 + tilt * tilt)


@njit()
def hung(tilt: float, body: float) -> float:
    """How high a body that leans by the tilt ``body`` has its own axle line over the middle of the treads of
    an axle tilted by ``tilt``, radii.

    The hubs are upright(tilt) up and aside by sine of its lean, the body by that of its own: what holds the
    body's line over the hubs is square to the body, so the line meets them at tan of its lean for each metre
    between.
    """
    return upright(tilt) * (1.0 + tilt * body) - body * body * upright(body)


@njit()
def place_body(
    angles: tuple[float, float, float], hub: tuple[float, float, float], x: float, z: float,
    position: FloatArray, rotation: FloatArray,
) -> None:  # fmt: skip
    """Turn a body by yaw about z, then pitch (nose up), then roll (left side up), and place it so that its
    point (x, 0, z) is the middle of an axle's hubs (u, v, z).

    Out: position (3,); rotation (3, 3), its columns forward, left and up of the body.
    """
    yaw, pitch, roll = angles
    cy, sy, cp, sp, cr, sr = (
        math.cos(yaw),
        math.sin(yaw),
        math.cos(pitch),
        math.sin(pitch),
        math.cos(roll),
        math.sin(roll),
    )
    left = (-sy, cy, 0.0)
    up = (-sp * cy, -sp * sy, cp)
    rotation[0, 0], rotation[1, 0], rotation[2, 0] = cp * cy, cp * sy, sp
    for k in range(3):
        rotation[k, 1] = left[k] * cr + up[k] * sr
        rotation[k, 2] = up[k] * cr - left[k] * sr
    for k in range(3):
        position[k] = hub[k] - rotation[k, 0] * x - rotation[k, 2] * z


@njit()
def place_frames(
    at: Attitude, front: tuple[float, float, float], rear: tuple[float, float, float], axles: Axles,
    up: float, position: FloatArray, rotation: FloatArray,
) -> None:  # fmt: skip
    """Place the body and what each axle carries over the middles of the axles' treads, ``front`` and ``rear``
    (u, v, z); up : m, of the rear hubs over the chassis' own ground.

    A wheel leans about the middle of its tread, so its hub is off to the lower side by radius x sin: the line
    of travel is where the wheels run, and which nodes lie under a tyre does not depend on how it leans. The
    body leans about the same line (roll centres of independent axles lie near the ground).
    """
    radius, base = axles.radius, axles.wheelbase
    for k in range(3):
        foot, x, z = (front, base, radius) if k == 1 else (rear, 0.0, radius)
        pitch, roll = at.axles, roll_of(at.front if k == 1 else at.rear, at.axles)
        if k == 0:
            pitch, roll, z = at.pitch, at.roll, up
        tilt = math.tan(roll) / math.cos(pitch)
        aside = radius * tilt * upright(tilt)
        axle = at.front if k == 1 else at.rear
        hub = (
            foot[0] + aside * math.sin(at.yaw),
            foot[1] - aside * math.cos(at.yaw),
            foot[2] + radius * hung(axle, tilt if k == 0 else axle),
        )
        place_body((at.yaw, pitch, roll), hub, x, z, position[k], rotation[k])
