"""The line of travel, and the window of ground it needs."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame
from crestcut.base.units import both
from crestcut.contact.path.path import bend_notes, beside, drivable, least_radius, leaves
from crestcut.contact.records import AS_USUAL, TravelLine
from crestcut.job import Travel
from crestcut.vehicle import Vehicle

# rear tracks from the middle to what was drawn, left positive
DRAWN = {"middle": 0.0, "left": 0.5, "right": -0.5}

FEW = 1.0  # m to drive: with less the page that draws the line warns, and so does the run


def travel_line(
    points: Sequence[tuple[float, float]], vehicle: Vehicle, travel: Travel = AS_USUAL, step: float = 0.010
) -> TravelLine:
    """The path of the vehicle's middle from the points the user gave.

    points : site x, y in metres.  step : between stations, m.  ``travel.track`` says which part of the
    vehicle was drawn: a line drawn under the left wheels lies half a track to the left of the middle. More
    than two points make a path of straight pieces and arcs that the vehicle can drive (``path.drivable``).
    Raises CrestcutError for fewer than two points, a line shorter than the wheelbase, or a bend tighter than
    the vehicle turns.
    """
    if len(points) < 2:
        raise CrestcutError(
            f"a line of two points or more expected, {len(points)} found",
            "[travel] line",
            "give its two ends",
        )
    if len(points) > 2:
        return _bent(points, vehicle, travel, step)
    start, end = (np.asarray(p, dtype=float) for p in points)
    length = float(np.hypot(*(end - start)))
    _long_enough(length, vehicle, step)
    along = (end - start) / length
    left = np.array([-along[1], along[0]])
    drawn = DRAWN[travel.track] * vehicle.rear_track
    stations = np.arange(math.floor(length / step + 1e-9) + 1) * step
    xy = start - drawn * left + stations[:, None] * along
    yaw = np.full(len(stations), math.atan2(along[1], along[0]))
    return TravelLine(xy, yaw, step, _little_to_drive(length, vehicle))


def _long_enough(length: float, vehicle: Vehicle, step: float) -> None:
    if length < vehicle.wheelbase + 2 * step:
        raise CrestcutError(
            f"the line is {length:.2f} m long, shorter than the wheelbase of {vehicle.wheelbase:.2f} m",
            "[travel] line",
            "draw it from before the rear wheels' first place to after the front wheels' last",
        )


def _little_to_drive(length: float, vehicle: Vehicle) -> tuple[str, ...]:
    """What the picking page warns of, too: a line ``length`` m long that ends before much was driven."""
    left = length - vehicle.wheelbase
    if left >= FEW:
        return ()
    return (
        f"the line leaves only {both(left, 0)} to drive: start it well before the crest and end it well"
        " after, what lies beyond its ends is not judged",
    )


def _bent(points: Sequence[tuple[float, float]], vehicle: Vehicle, travel: Travel, step: float) -> TravelLine:
    middle = beside(points, -DRAWN[travel.track] * vehicle.rear_track)
    xy, yaw, tightest = drivable(middle, least_radius(vehicle), step)
    length = (len(xy) - 1) * step
    _long_enough(length, vehicle, step)
    notes = (*bend_notes(vehicle, tightest, leaves(xy, middle)), *_little_to_drive(length, vehicle))
    return TravelLine(xy, yaw, step, notes)


def is_straight(line: TravelLine) -> bool:
    """Is the heading the same all along?"""
    return bool(np.ptp(line.yaw) < 1e-9)


def stations_of(line: TravelLine, xy: FloatArray, near: FloatArray) -> FloatArray:
    """Where along a bent line points (n, 2) lie, m from its start: foot of the perpendicular, sought from
    ``near`` (n,) m.

    Beyond the ends the line goes on straight.
    """
    s = np.asarray(near, dtype=float)
    last = len(line.xy) - 1
    for _ in range(8):
        k = np.clip(np.rint(s / line.step).astype(int), 0, last)
        along = np.stack([np.cos(line.yaw[k]), np.sin(line.yaw[k])], axis=1)
        s = k * line.step + ((xy - line.xy[k]) * along).sum(axis=1)
    return s


def _bent_window(line: TravelLine, side: float, reach: float, cell: float) -> GridFrame:
    """The raster round a bent line: axes along its chord, wide enough for the vehicle at every station,
    either way round."""
    chord = line.xy[-1] - line.xy[0]
    if np.hypot(*chord) < line.step:
        chord = np.array([math.cos(line.yaw[0]), math.sin(line.yaw[0])])
    angle = math.atan2(chord[1], chord[0])
    t, n = (
        np.stack([np.cos(line.yaw), np.sin(line.yaw)], axis=1),
        np.stack([-np.sin(line.yaw), np.cos(line.yaw)], axis=1),
    )
    # stations whose wheels stay between the ends, driven forward or turned; the ends themselves always
    corners = [line.xy + a * t + b * n for a in (-reach, reach) for b in (-side, side)]
    c, s = math.cos(angle), math.sin(angle)
    d = np.concatenate(corners) - line.xy[0]
    u, v = d[:, 0] * c + d[:, 1] * s, -d[:, 0] * s + d[:, 1] * c
    before, right = math.ceil(-u.min() / cell) * cell, math.ceil(-v.min() / cell) * cell
    columns, rows = math.ceil((before + u.max()) / cell) + 1, math.ceil((right + v.max()) / cell) + 1
    origin = (line.xy[0, 0] - before * c + right * s, line.xy[0, 1] - before * s - right * c)
    return GridFrame((float(origin[0]), float(origin[1])), angle, cell, (rows, columns))


def window(line: TravelLine, vehicle: Vehicle, travel: Travel, cell: float, margin: float = 0.6) -> GridFrame:
    """The raster the job needs: along the line, wide enough for the vehicle with its wander, and
    ``margin`` metres more."""
    ahead = max(
        [p.x[1] - vehicle.wheelbase for p in vehicle.parts]
        + [vehicle.front_overhang or 0.0, vehicle.tyre_radius]
    )
    behind = max([-p.x[0] for p in vehicle.parts] + [vehicle.rear_overhang or 0.0, vehicle.tyre_radius])
    side = max([abs(y) for p in vehicle.parts for y in p.y])
    side = max(
        side, vehicle.width / 2, (max(vehicle.front_track, vehicle.rear_track) + vehicle.tyre_width) / 2
    )
    side += travel.wander + (vehicle.wheelbase + max(ahead, behind)) * math.sin(travel.heading) + margin
    ends = max(ahead, behind) + margin
    if not is_straight(line):
        return _bent_window(line, side, vehicle.wheelbase + ends, cell)
    yaw = float(line.yaw[0])
    c, s = math.cos(yaw), math.sin(yaw)
    d = line.xy - line.xy[0]
    u, v = d[:, 0] * c + d[:, 1] * s, -d[:, 0] * s + d[:, 1] * c
    # whole cells before the start, so that stations fall on columns
    before, right = (
        math.ceil((ends - u.min()) / cell - 1e-6) * cell,
        math.ceil((side - v.min()) / cell - 1e-6) * cell,
    )
    columns = math.ceil((before + u.max() + ends) / cell - 1e-6) + 1
    rows = math.ceil((right + v.max() + side) / cell - 1e-6) + 1
    origin = (line.xy[0, 0] - before * c + right * s, line.xy[0, 1] - before * s - right * c)
    return GridFrame((float(origin[0]), float(origin[1])), yaw, cell, (rows, columns))
