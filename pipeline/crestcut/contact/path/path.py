"""Several points become a path that the vehicle can drive: straight pieces joined by arcs no tighter than it
turns.

The path is that of the rear axle's middle, with the heading along its tangent (slow rolling without slip).
The front wheels then take the wider curve by themselves. ``follow`` is the other way round: the front axle is
led along a path and the rear cuts the corner.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.vehicle import Vehicle

CORNER_CUT = 0.05  # m: a gentle corner may be rounded by this much, so that the wheel need not be torn round
STRAIGHT = 1e-6  # rad: no corner at all


def least_radius(vehicle: Vehicle) -> float | None:
    """Tightest curve of the rear axle's middle, m; None where the vehicle file gives no turning radius.

    ``turning_radius`` is that of the outer front tyre's outer edge on full lock (half the width of road it
    turns round in). The front and rear wheels roll about one point on the rear axle's line: outer^2 =
    (r + half width)^2 + wheelbase^2 (kinematics of rolling).
    """
    if vehicle.turning_radius is None:
        return None
    half = (vehicle.front_track + vehicle.tyre_width) / 2
    inner = vehicle.turning_radius**2 - vehicle.wheelbase**2
    radius = math.sqrt(inner) - half if inner > 0 else -1.0
    if radius <= 0:
        raise CrestcutError(
            f"a turning radius of {vehicle.turning_radius:.2f} m is impossible with a wheelbase of "
            f"{vehicle.wheelbase:.2f} m",
            f"{vehicle.path.name}: turning_radius",
            "drive a full circle on full lock and measure half of it, over the outer front tyre",
        )
    return radius


def drivable(
    points: Sequence[tuple[float, float]], least: float | None, step: float
) -> tuple[FloatArray, FloatArray, float]:
    """Points (n, 2) in metres -> path (m, 2) at every ``step`` m, its heading (m,) in rad, unwrapped, and its
    tightest radius, m.

    Each corner gets the tightest arc that the vehicle drives (``least``), or a wider one where that leaves
    the drawn line by no more than ``CORNER_CUT`` and there is room. Without ``least`` the arcs are as wide as
    the drawn line has room for.
    Raises CrestcutError naming the corner that cannot be driven, the radius it leaves and the one that is
    needed.
    """
    p = _clean(points)
    legs = np.diff(p, axis=0)
    lengths = np.hypot(legs[:, 0], legs[:, 1])
    yaw = np.unwrap(np.arctan2(legs[:, 1], legs[:, 0]))
    turn = np.diff(yaw)
    radii = _radii(turn, lengths, least)
    return _laid_out(p, yaw, turn, lengths, radii, step)


def _clean(points: Sequence[tuple[float, float]]) -> FloatArray:
    p = np.asarray(points, dtype=float)[:, :2]
    if not np.isfinite(p).all():
        raise CrestcutError("a point of the line is not finite", "[travel] line", "give plain coordinates")
    keep = np.concatenate([[True], np.hypot(*np.diff(p, axis=0).T) > 1e-9])
    p = p[keep]
    if len(p) < 2:
        raise CrestcutError(
            "all points of the line are the same", "[travel] line", "give at least its two ends"
        )
    return p


def _radii(turn: FloatArray, lengths: FloatArray, least: float | None) -> FloatArray:
    """Radius at every inner point, m. An arc takes radius x tan(turn / 2) of both legs beside it."""
    half = np.tan(np.minimum(np.abs(turn), math.pi - 1e-6) / 2)
    bends = np.abs(turn) > STRAIGHT
    need = np.where(bends, half * (least or 0.0), 0.0)
    around = np.concatenate([[0.0], need, [0.0]])
    spare = lengths - around[:-1] - around[1:]
    if (spare < -1e-9).any():
        _refuse(int(np.argmin(spare)), lengths, around, least or 0.0)
    # what is left of a leg is shared by the arcs at its two ends; the first and last leg have one
    ends = np.concatenate([[False], bends, [False]]).astype(int)
    share = np.maximum(spare, 0.0) / np.maximum(ends[:-1] + ends[1:], 1)
    room = need + np.minimum(share[:-1], share[1:])
    with np.errstate(divide="ignore", invalid="ignore"):
        widest = room / half
        gentle = CORNER_CUT / (1.0 / np.cos(np.abs(turn) / 2) - 1.0)
    if least is None:
        return np.where(bends, widest, np.inf)
    return np.where(bends, np.clip(gentle, least, np.maximum(widest, least)), np.inf)


def _refuse(leg: int, lengths: FloatArray, around: FloatArray, least: float) -> None:
    taken = around[leg] + around[leg + 1]
    radius = least * lengths[leg] / taken
    at = f"point {leg + 1}" if around[leg] >= around[leg + 1] else f"point {leg + 2}"
    raise CrestcutError(
        f"the bend at {at} leaves the rear axle a radius of {radius:.2f} m, "
        f"the vehicle turns no tighter than {least:.2f} m",
        "[travel] line",
        "move its points further apart, leave points out, or draw a wider bend",
    )


def _laid_out(
    p: FloatArray, yaw: FloatArray, turn: FloatArray, lengths: FloatArray, radii: FloatArray, step: float
) -> tuple[FloatArray, FloatArray, float]:
    """Pieces (start, heading, length, curvature) end to end, read off at every step."""
    cut = np.where(np.isinf(radii), 0.0, np.where(np.isinf(radii), 0.0, radii) * np.tan(np.abs(turn) / 2))
    before = np.concatenate([[0.0], cut])
    after = np.concatenate([cut, [0.0]])
    pieces: list[tuple[float, float, float, float, float]] = []  # x, y, heading, length, curvature
    for k, length in enumerate(lengths):
        direction = np.array([math.cos(yaw[k]), math.sin(yaw[k])])
        start = p[k] + before[k] * direction
        pieces.append((start[0], start[1], yaw[k], max(length - before[k] - after[k], 0.0), 0.0))
        if k < len(turn) and after[k] > 0:
            corner = p[k + 1] - after[k] * direction
            pieces.append(
                (corner[0], corner[1], yaw[k], abs(turn[k]) * radii[k], math.copysign(1 / radii[k], turn[k]))
            )
    x, y, heading, size, bend = np.array(pieces).T
    ends = np.cumsum(size)
    s = np.arange(math.floor(ends[-1] / step + 1e-9) + 1) * step
    at = np.minimum(np.searchsorted(ends, s - 1e-12), len(pieces) - 1)
    t = s - (ends - size)[at]
    # a chord of the arc: length 2 sin(a / 2) / curvature, turned by a / 2
    a = t * bend[at]
    chord = t * np.sinc(a / (2 * math.pi))
    xy = np.stack(
        [x[at] + chord * np.cos(heading[at] + a / 2), y[at] + chord * np.sin(heading[at] + a / 2)], axis=1
    )
    return xy, heading[at] + a, float(np.min(radii, initial=np.inf))


def leaves(path: FloatArray, drawn: Sequence[tuple[float, float]]) -> float:
    """How far a path (m, 2) is from the line drawn through points (n, 2), at most, m."""
    p = _clean(drawn)
    nearest = np.full(len(path), np.inf)
    for a, b in pairwise(p):
        along = np.clip(((path - a) @ (b - a)) / ((b - a) @ (b - a)), 0.0, 1.0)
        nearest = np.minimum(nearest, np.hypot(*(path - a - along[:, None] * (b - a)).T))
    return float(nearest.max())


def swing(vehicle: Vehicle, radius: float) -> tuple[float, float]:
    """How far the nose and the tail reach out of a bend beyond the side of the vehicle at its rear axle, m.

    All points turn about one centre on the rear axle's line, ``radius`` from its middle: a corner that lies
    ``ahead`` of that line and half a width out goes round on sqrt((radius + width / 2)^2 + ahead^2).
    """
    side = radius + vehicle.width / 2
    nose = max([p.x[1] for p in vehicle.parts] + [vehicle.wheelbase + (vehicle.front_overhang or 0.0)])
    tail = max([-p.x[0] for p in vehicle.parts] + [vehicle.rear_overhang or 0.0])
    return math.hypot(side, nose) - side, math.hypot(side, max(tail, 0.0)) - side


def bend_notes(vehicle: Vehicle, radius: float, left: float) -> tuple[str, ...]:
    """Plain sentences on a bent line: its tightest radius, how far it leaves the drawn line, how far the
    body swings out."""
    if not math.isfinite(radius):
        return ()
    least = least_radius(vehicle)
    turns = (
        "the vehicle file gives no turning radius, so whether it turns as tightly was not checked"
        if least is None
        else f"the vehicle turns on {least:.2f} m"
    )
    nose, tail = swing(vehicle, radius)
    return (
        f"The corners of the line are driven as arcs: the tightest has a radius of {radius:.2f} m at the "
        f"middle of the rear axle ({turns}); the path leaves the drawn line by at most "
        f"{millimetres(left, 0)}",
        f"In that bend the nose swings out {millimetres(nose, 0)} beyond the side of the vehicle at the rear "
        f"axle, and the tail {millimetres(tail, 0)}: keep that much free of walls and posts",
    )


def beside(points: Sequence[tuple[float, float]], left: float) -> list[tuple[float, float]]:
    """The drawn line moved ``left`` metres to its left, corners mitred: the middle of a vehicle whose wheel
    was drawn.
    """
    p = _clean(points)
    along = np.diff(p, axis=0)
    along /= np.hypot(along[:, 0], along[:, 1])[:, None]
    normal = np.stack([-along[:, 1], along[:, 0]], axis=1)
    first, last = np.concatenate([normal[:1], normal]), np.concatenate([normal, normal[-1:]])
    # the point at distance ``left`` from both lines that meet there
    joined = (first + last) / np.maximum(1.0 + (first * last).sum(axis=1), 0.1)[:, None]
    return [(float(a), float(b)) for a, b in p + left * joined]


def follow(front: FloatArray, wheelbase: float, heading: float) -> tuple[FloatArray, FloatArray]:
    """Rear axle (n, 2) and heading (n,) of a vehicle whose front axle's middle is led along ``front`` (n, 2),
    m; first heading in rad.

    The rear wheels roll where they point (a tractrix). Over a straight bit ds the angle f between heading and
    path obeys df/ds = -sin(f) / L, so tan(f / 2) shrinks by exp(-ds / L): exact for a path of straight bits.
    """
    steps = np.diff(np.asarray(front, dtype=float), axis=0)
    length, path = np.hypot(steps[:, 0], steps[:, 1]), np.arctan2(steps[:, 1], steps[:, 0])
    out = np.empty(len(front))
    out[0] = heading
    for k in range(len(steps)):
        f = (out[k] - path[k] + math.pi) % (2 * math.pi) - math.pi
        out[k + 1] = out[k] - f + 2 * math.atan(math.tan(f / 2) * math.exp(-length[k] / wheelbase))
    rear = front - wheelbase * np.stack([np.cos(out), np.sin(out)], axis=1)
    return rear, out
