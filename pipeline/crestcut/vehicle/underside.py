"""The underside of a vehicle from a mesh or a cloud: a height map over the tyres' contact plane, and parts
with names.

The points are of a vehicle that stands on its wheels, z up: any model, or a scan from a pit or from drive-on
ramps with the wheels loaded.
The four tyres are what stands lowest; they give the plane, the axles and the middle. What hangs below its
surroundings becomes a part.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from crestcut.errors import CrestcutError
from crestcut.grid import FloatArray, IntArray
from crestcut.units import millimetres
from crestcut.vehicle.records import Part

CELL = 0.02  # m, of the height map
FOOT = 0.03  # m over the lowest points that still counts as a tyre's foot
LOWER = 0.012  # m below the belly that makes a part of its own
LEAST_CELLS = 12  # smaller patches are noise
_MEND = "give a mesh or scan of the vehicle on its wheels, z up"


@dataclass(frozen=True, eq=False)
class Underside:
    """The underside in the vehicle frame (x forward from the rear axle, y left, z over the tyres' contact
    plane), m.

    heights : (ny, nx) lowest surface over each cell, NaN where nothing was seen; cell [0, 0] is centred at
        ``corner``.
    spread : sd of the points about their own surface, m.
    """

    heights: FloatArray
    corner: tuple[float, float]
    wheelbase: float
    track: float
    parts: tuple[Part, ...]
    spread: float


def read_underside(points: FloatArray, within: float | None = None) -> Underside:
    """Points (n, 3) in metres, z up, vehicle standing on its wheels -> height map and parts; the first part
    is the belly.

    The forward direction is taken as the one in which the vehicle's longer side points; which end is the
    front cannot be seen: turn the
    points by half a turn where it is the other.  within : 1 sd of a part's height; default from the spread
    and the number of points.
    Raises CrestcutError for no tyres, a vehicle upside down, or too few points.
    """
    points = np.asarray(points, dtype=float)
    points = points[np.isfinite(points).all(axis=1)]
    if len(points) < 500:
        raise CrestcutError(f"{len(points)} points are too few for an underside", "underside", _MEND)
    feet, level = _on_its_feet(points)
    axes, origin, wheelbase, track = _frame(feet)
    local = (level - origin) @ axes.T
    heights, corner, spread = _height_map(local, wheelbase)
    parts = _parts(heights, corner, wheelbase, track, spread, within)
    return Underside(heights, corner, wheelbase, track, parts, spread)


def _on_its_feet(points: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Four feet (4, 3), and the points levelled so that the feet's plane is z = 0."""
    level = points - [*points[:, :2].mean(axis=0), np.quantile(points[:, 2], 0.001)]
    try:
        feet = _feet(level)
    except (
        CrestcutError
    ):  # it may stand askew in its file by more than a foot's height: level its floor first
        a = np.linalg.lstsq(np.column_stack([level[:, :2], np.ones(len(level))]), level[:, 2], rcond=None)[0]
        level = level @ _to_vertical(np.array([-a[0], -a[1], 1.0]) / np.sqrt(a[0] ** 2 + a[1] ** 2 + 1)).T
        level = level - [0.0, 0.0, np.quantile(level[:, 2], 0.001)]
    for _ in range(3):  # a vehicle that stands askew in its file is levelled, then looked at again
        feet = _feet(level)
        a = np.linalg.lstsq(np.column_stack([feet[:, :2], np.ones(4)]), feet[:, 2], rcond=None)[0]
        normal = np.array([-a[0], -a[1], 1.0]) / np.sqrt(a[0] ** 2 + a[1] ** 2 + 1)
        level = (level - [0, 0, a[2]]) @ _to_vertical(normal).T
    return _feet(level), level


def _feet(level: FloatArray) -> FloatArray:
    low = level[level[:, 2] < np.quantile(level[:, 2], 0.001) + FOOT]
    cell = np.floor(low[:, :2] / 0.05).astype(int)
    cell -= cell.min(axis=0)
    mask = np.zeros(cell.max(axis=0) + 1, dtype=bool)
    mask[cell[:, 0], cell[:, 1]] = True
    label, count = ndimage.label(ndimage.binary_dilation(mask, iterations=2))
    spans = np.ptp(level[:, :2], axis=0)
    if mask.sum() * 0.05**2 > 0.15 * spans[0] * spans[1]:
        raise CrestcutError(
            "the lowest thing is one broad face, not tyres: it lies upside down, or has none",
            "underside",
            _MEND,
        )
    if count < 4:
        raise CrestcutError(f"{count} tyres found, four expected", "underside", _MEND)
    which = label[cell[:, 0], cell[:, 1]]
    size = np.bincount(which, minlength=count + 1)[1:]
    four = np.argsort(-size)[:4] + 1
    # the foot is where the tyre is lowest: its middle, and the mean of its lowest points
    feet = []
    for k in four:
        own = low[which == k]
        flat = own[own[:, 2] <= np.quantile(own[:, 2], 0.5)]
        feet.append([*((own[:, :2].min(axis=0) + own[:, :2].max(axis=0)) / 2), flat[:, 2].mean()])
    return np.array(feet)


def _to_vertical(normal: FloatArray) -> FloatArray:
    """Rotation that turns a unit normal near z onto z (Rodrigues)."""
    v = np.cross(normal, [0.0, 0.0, 1.0])
    k = np.array([[0, -v[2], v[1]], [v[2], 0, -v[0]], [-v[1], v[0], 0]])
    return np.eye(3) + k + k @ k / (1 + normal[2])


def _frame(feet: FloatArray) -> tuple[FloatArray, FloatArray, float, float]:
    """Axes (3, 3) as rows, origin under the middle of the rear axle, wheelbase and track, m."""
    d = feet[:, :2] - feet[:, :2].mean(axis=0)
    near = int(np.argmin(np.hypot(*(d[1:] - d[0]).T))) + 1
    side = d[near] - d[0]
    forward = np.array([-side[1], side[0]]) / np.hypot(*side)
    if forward[0] < 0:
        forward = -forward
    along = d @ forward
    front, rear = np.argsort(-along)[:2], np.argsort(-along)[2:]
    axis = d[front].mean(axis=0) - d[rear].mean(axis=0)
    wheelbase = float(np.hypot(*axis))
    forward = axis / wheelbase
    left = np.array([-forward[1], forward[0]])
    across = [abs(float((d[a[0]] - d[a[1]]) @ left)) for a in (front, rear)]
    skew = abs(across[0] - across[1])
    if wheelbase < 0.3 or min(across) < 0.2 or skew > 0.3 * min(across):
        raise CrestcutError("the lowest four places do not stand like wheels", "underside", _MEND)
    axes = np.array([[*forward, 0.0], [*left, 0.0], [0.0, 0.0, 1.0]])
    return axes, np.array([*feet[rear, :2].mean(axis=0), 0.0]), wheelbase, float(np.mean(across))


def _height_map(local: FloatArray, wheelbase: float) -> tuple[FloatArray, tuple[float, float], float]:
    """Lowest surface of every cell: the mean of the lowest layer of points. And the spread of the points
    about it.
    """
    low = local[:, :2].min(axis=0)
    ij = np.floor((local[:, :2] - low) / CELL).astype(int)
    shape = ij.max(axis=0) + 1
    flat = ij[:, 0] + ij[:, 1] * shape[0]
    order = np.lexsort((local[:, 2], flat))
    cells, start, count = np.unique(flat[order], return_index=True, return_counts=True)
    z = local[order, 2]
    heights = np.full(shape[1] * shape[0], np.nan)
    devs = []
    for cell, s, n in zip(cells, start, count, strict=True):
        own = z[s : s + n]
        layer = own[own < np.median(own[: max(n // 2, 1)]) + 0.03]
        heights[cell] = layer.mean()
        if len(layer) > 4:
            devs.append(layer.std(ddof=1))
    spread = float(np.median(devs)) if devs else 0.0
    return heights.reshape(shape[1], shape[0]), (float(low[0] + CELL / 2), float(low[1] + CELL / 2)), spread


def _parts(
    heights: FloatArray,
    corner: tuple[float, float],
    wheelbase: float,
    track: float,
    spread: float,
    within: float | None,
) -> tuple[Part, ...]:
    ny, nx = heights.shape
    x = np.asarray(corner[0] + np.arange(nx) * CELL, dtype=np.float64)
    y = np.asarray(corner[1] + np.arange(ny) * CELL, dtype=np.float64)
    tyres = heights < FOOT
    near = ndimage.binary_dilation(tyres, iterations=max(int(0.1 / CELL), 1))
    between = (
        (x[None, :] > 0)
        & (x[None, :] < wheelbase)
        & (np.abs(y)[:, None] < track / 2)
        & ~near
        & ~np.isnan(heights)
    )
    if between.sum() < LEAST_CELLS:
        raise CrestcutError("nothing is seen between the axles", "underside", _MEND)
    # the belly is the level that most of the floor has: the fullest 10 mm, then the mean of what lies near it
    floor = heights[between]
    bins = np.floor(floor / 0.01).astype(int)
    most = np.bincount(bins - bins.min()).argmax() + bins.min()
    belly = float(np.median(floor[np.abs(floor - (most + 0.5) * 0.01) < 0.015]))
    half = _free_half(near, y, track)
    sd = within if within is not None else max(spread / 10, 0.001)
    parts = [Part("belly", (0.0, wheelbase), (-half, half), (belly, belly), "belly", within=sd)]
    low = ~np.isnan(heights) & (heights < belly - max(LOWER, 2.0 * spread)) & ~near
    label, count = ndimage.label(ndimage.binary_opening(low, iterations=1))
    for k in range(1, count + 1):
        j, i = np.nonzero(label == k)
        if len(j) >= LEAST_CELLS:
            parts.append(_part(f"low part {len(parts)}", heights, j, i, x, y, wheelbase, sd))
    return tuple(parts)


def _free_half(near: FloatArray, y: FloatArray, track: float) -> float:
    inner = np.abs(y)[near.any(axis=1)]
    return float(max(min(inner.min(initial=track / 2), track / 2), 0.05))


def _part(
    name: str,
    heights: FloatArray,
    j: IntArray,
    i: IntArray,
    x: FloatArray,
    y: FloatArray,
    wheelbase: float,
    sd: float,
) -> Part:
    """A rectangle round the patch; its height falls or rises along the vehicle by the robust line through its
    inner cells.
    """
    xs, ys, z = x[i], y[j], heights[j, i]
    low = z < np.median(z) + 0.01
    inner = low & (i > i.min()) & (i < i.max()) & (j > j.min()) & (j < j.max())
    use = inner if inner.sum() >= 4 else low
    length = float(np.ptp(xs)) + CELL
    slope = np.polyfit(xs[use], z[use], 1)[0] if length > 0.2 and use.sum() > 20 else 0.0
    if abs(slope) * length < 0.004:
        slope = 0.0
    at = float(z[use].mean())
    x0, x1 = float(xs.min()) - CELL / 2, float(xs.max()) + CELL / 2
    ends = tuple(float(at + slope * (end - xs[use].mean())) for end in (x0, x1))
    middle = (x0 + x1) / 2
    zone = "nose" if middle > wheelbase else "tail" if middle < 0 else "belly"
    across = (float(ys.min()) - CELL / 2, float(ys.max()) + CELL / 2)
    return Part(name, (x0, x1), across, (ends[0], ends[1]), zone, within=sd)


def check_parts(parts: tuple[Part, ...]) -> None:
    """Refuse a named part that lies above its own belly: it is hidden by the plate, so one of the two was
    measured wrongly.
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
        if covered and min(part.z) > max(belly.z) + 1e-6:
            raise CrestcutError(
                f"{part.name} at {millimetres(min(part.z))} lies above the belly at {millimetres(max(belly.z))}",
                "part",
                "measure both again from flat ground, or leave the part out",
            )
