"""The underside of a vehicle from a mesh or a cloud: a height map over the tyres' contact plane, and parts.

The points are of a vehicle that stands on its wheels, z up: any model, or a scan from a pit or from drive-on
ramps with the wheels loaded and the runways in view. The four tyres give the axles and the middle; what they
stand on (their own lowest points, or the runways under them) gives the plane. What hangs below its
surroundings becomes a part (``underside_parts``).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.vehicle.from_scan.feet import stand_on_wheels
from crestcut.vehicle.from_scan.parts import CELL, find_parts, without_ground
from crestcut.vehicle.records import Part

_MEND = "give a mesh or scan of the vehicle on its wheels, z up"
RADIUS = 0.33  # m of a car's tyre, where the vehicle file does not say
LAYER = 0.03  # m: the lowest surface of a cell is taken this thick
LOWEST = 0.1  # share of a cell's points below which a stray one may lie


@dataclass(frozen=True, eq=False)
class Underside:
    """The underside in the vehicle frame (x forward from the rear axle, y left, z over the tyres' contact
    plane), m.

    heights : (ny, nx) lowest surface over each cell, NaN where nothing was seen; cell [0, 0] is centred at
    ``corner``.  tracks : front, rear.  ends : how far the underside reaches ahead of the front axle and
    behind the rear one.  spread : sd of the points about their own surface.  forward : (2,) unit vector in
    the points' own x, y.
    """

    heights: FloatArray
    corner: tuple[float, float]
    wheelbase: float
    tracks: tuple[float, float]
    ends: tuple[float, float]
    parts: tuple[Part, ...]
    spread: float
    forward: tuple[float, float]

    @property
    def track(self) -> float:
        """Mean of both tracks, m."""
        return sum(self.tracks) / 2


def read_underside(
    points: FloatArray,
    within: float | None = None,
    front: tuple[float, float] | None = None,
    radius: float = RADIUS,
) -> Underside:
    """Points (n, 3) in metres, z up, vehicle standing on its wheels -> height map and parts; the first part
    is the belly.

    front : (x, y) in the points' own axes, roughly where the vehicle's front points. Without it the forward
    direction is the one nearer to +x: which end is the front cannot be seen from below.  within : 1 sd of a
    part's height, m; default from the spread of the points.  radius : of the tyres, m.
    Raises CrestcutError for no tyres, a vehicle upside down, a front to the side, or too few points.
    """
    points = np.asarray(points, dtype=float)
    points = points[np.isfinite(points).all(axis=1)]
    if len(points) < 500:
        raise CrestcutError(f"{len(points)} points are too few for an underside", "underside", _MEND)
    feet, level = stand_on_wheels(points)
    axes, origin, wheelbase, tracks = _frame(feet, front)
    local = (level - origin) @ axes.T
    heights, corner, spread = _height_map(local)
    track = sum(tracks) / 2
    heights = without_ground(heights, corner, wheelbase, track)
    parts = find_parts(heights, corner, wheelbase, track, spread, within, radius)
    seen = corner[0] + np.flatnonzero((~np.isnan(heights)).any(axis=0)) * CELL
    ends = (float(seen.max()) + CELL / 2 - wheelbase, CELL / 2 - float(seen.min()))
    forward = (float(axes[0, 0]), float(axes[0, 1]))
    return Underside(heights, corner, wheelbase, tracks, ends, parts, spread, forward)


def _frame(
    feet: FloatArray, front: tuple[float, float] | None
) -> tuple[FloatArray, FloatArray, float, tuple[float, float]]:
    """Axes (3, 3) as rows, origin under the middle of the rear axle, wheelbase and tracks, m."""
    d = feet[:, :2] - feet[:, :2].mean(axis=0)
    near = int(np.argmin(np.hypot(*(d[1:] - d[0]).T))) + 1
    side = d[near] - d[0]
    forward = np.array([-side[1], side[0]]) / np.hypot(*side)
    wanted = np.array(front if front is not None else (1.0, 1e-3))
    if front is not None and abs(forward @ wanted) < 0.7 * np.hypot(*wanted):
        raise CrestcutError(
            "its front would lie to a side of the wheels",
            "underside.front",
            "the longer distance between wheels is the wheelbase: write front along it",
        )
    if forward @ wanted < 0:
        forward = -forward
    along = d @ forward
    ahead, behind = np.argsort(-along)[:2], np.argsort(-along)[2:]
    axis = d[ahead].mean(axis=0) - d[behind].mean(axis=0)
    wheelbase = float(np.hypot(*axis))
    forward = axis / wheelbase
    left = np.array([-forward[1], forward[0]])
    tracks = tuple(abs(float((d[a[0]] - d[a[1]]) @ left)) for a in (ahead, behind))
    if wheelbase < 0.3 or min(tracks) < 0.2 or abs(tracks[0] - tracks[1]) > 0.3 * min(tracks):
        raise CrestcutError("the lowest four places do not stand like wheels", "underside", _MEND)
    axes = np.array([[*forward, 0.0], [*left, 0.0], [0.0, 0.0, 1.0]])
    return axes, np.array([*feet[behind, :2].mean(axis=0), 0.0]), wheelbase, (tracks[0], tracks[1])


def _height_map(local: FloatArray) -> tuple[FloatArray, tuple[float, float], float]:
    """Lowest surface of every cell, the mean of its lowest layer of points, and the spread of the points
    about it.
    """
    low = local[:, :2].min(axis=0)
    ij = np.floor((local[:, :2] - low) / CELL).astype(int)
    shape = ij.max(axis=0) + 1
    flat = ij[:, 0] + ij[:, 1] * shape[0]
    order = np.lexsort((local[:, 2], flat))
    z = local[order, 2]
    _, start, count = np.unique(flat[order], return_index=True, return_counts=True)
    cell = np.repeat(np.arange(len(start)), count)
    own = z < z[start + (LOWEST * count).astype(int)][cell] + LAYER
    number = np.bincount(cell[own], minlength=len(start))
    mean = np.bincount(cell[own], z[own], minlength=len(start)) / number
    square = np.bincount(cell[own], (z[own] - mean[cell[own]]) ** 2, minlength=len(start))
    enough = number > 4
    spread = float(np.median(np.sqrt(square[enough] / (number[enough] - 1)))) if enough.any() else 0.0
    heights = np.full(shape[1] * shape[0], np.nan)
    heights[flat[order][start]] = mean
    corner = (float(low[0] + CELL / 2), float(low[1] + CELL / 2))
    return heights.reshape(shape[1], shape[0]), corner, spread
