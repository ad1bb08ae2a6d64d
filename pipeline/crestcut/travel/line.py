"""The line of travel, and the window of ground it needs."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from crestcut.errors import CrestcutError
from crestcut.grid import GridFrame
from crestcut.job.records import Travel
from crestcut.travel.records import TravelLine
from crestcut.vehicle.records import Vehicle


def travel_line(points: Sequence[tuple[float, float]], vehicle: Vehicle, travel: Travel, step: float) -> TravelLine:
    """The path of the vehicle's middle from the points the user gave.

    points : site x, y in metres.  step : between stations, m.  ``travel.track`` says which part of the vehicle was drawn: a line
    drawn under the left wheels lies half a track to the left of the middle.
    Raises CrestcutError for fewer than two points, more than two (bends are not driven yet), or a line shorter than the wheelbase.
    """
    if len(points) != 2:
        raise CrestcutError(f"a straight line of two points expected, {len(points)} found", "[travel] line", "give its two ends")
    start, end = (np.asarray(p, dtype=float) for p in points)
    length = float(np.hypot(*(end - start)))
    if length < vehicle.wheelbase + 2 * step:
        raise CrestcutError(
            f"the line is {length:.2f} m long, shorter than the wheelbase of {vehicle.wheelbase:.2f} m",
            "[travel] line",
            "draw it from before the rear wheels' first place to after the front wheels' last",
        )
    along = (end - start) / length
    left = np.array([-along[1], along[0]])
    drawn = {"middle": 0.0, "left": 0.5, "right": -0.5}[travel.track] * vehicle.rear_track
    stations = np.arange(math.floor(length / step + 1e-9) + 1) * step
    xy = start - drawn * left + stations[:, None] * along
    return TravelLine(xy, np.full(len(stations), math.atan2(along[1], along[0])), step)


def window(line: TravelLine, vehicle: Vehicle, travel: Travel, cell: float, margin: float = 0.6) -> GridFrame:
    """The raster the job needs: along the line, wide enough for the vehicle with its wander, and ``margin`` metres more."""
    ahead = max([p.x[1] - vehicle.wheelbase for p in vehicle.parts] + [vehicle.front_overhang or 0.0, vehicle.tyre_radius])
    behind = max([-p.x[0] for p in vehicle.parts] + [vehicle.rear_overhang or 0.0, vehicle.tyre_radius])
    side = max([abs(y) for p in vehicle.parts for y in p.y])
    side = max(side, vehicle.width / 2, (max(vehicle.front_track, vehicle.rear_track) + vehicle.tyre_width) / 2)
    side += travel.wander + (vehicle.wheelbase + max(ahead, behind)) * math.sin(travel.heading) + margin
    ends = max(ahead, behind) + margin
    yaw = float(line.yaw[0])
    c, s = math.cos(yaw), math.sin(yaw)
    d = line.xy - line.xy[0]
    u, v = d[:, 0] * c + d[:, 1] * s, -d[:, 0] * s + d[:, 1] * c
    # whole cells before the start, so that stations fall on columns
    before, right = math.ceil((ends - u.min()) / cell) * cell, math.ceil((side - v.min()) / cell) * cell
    columns = math.ceil((before + u.max() + ends) / cell) + 1
    rows = math.ceil((right + v.max() + side) / cell) + 1
    origin = (line.xy[0, 0] - before * c + right * s, line.xy[0, 1] - before * s - right * c)
    return GridFrame((float(origin[0]), float(origin[1])), yaw, cell, (rows, columns))
