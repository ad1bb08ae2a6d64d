"""What a scan is good for: extent, density, noise and holes, and in plain words what it could decide about a
slab."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray
from crestcut.scan.records import Scan
from crestcut.scan.verdict import could_decide

NOISE_CELL = 0.02  # m: small enough that a plane fits whatever slab lies in it
_WIDEST_NOISE_CELL = 0.10  # m: for thin scans the cell grows until it holds enough points
_FEWEST_IN_CELL = 8
_DENSITY_CELL = 0.10  # m
_GROUND_CELL = 0.50  # m
HEADROOM = 1.8  # m: over the ground; higher things hang over it
_HOLE_CELL = 0.05  # m, at least
_SMALLEST_HOLE = 0.02  # m2: about a hand
_STEEPEST = 0.40  # rise over run: steeper cells are sides of things, not slab
# m: a gap inside a cell that parts two passes; wider ones part ground from things over it
_LAYERS_APART = (0.015, 0.10)


@dataclass(frozen=True)
class Hole:
    """A place inside the scan where nothing was measured."""

    area: float  # m2
    x: float  # site x, y of its middle, metres
    y: float
    size: tuple[float, float]  # m, along x and y


@dataclass(frozen=True, eq=False)
class Health:
    """What ``assess`` found.

    ``hole_mask`` (ny, nx) on ``hole_frame``: True where a hole lies. Densities are points per m2 of covered
    ground; of a mesh they are those of the sampling and say nothing of the capture. ``noise`` is NaN where
    too few points share a cell.
    """

    extent: tuple[float, float, float]  # m, x y z, holding 99.8 % of the points up to 1.8 m over ground
    area: float  # m2 covered, seen from above
    density_median: float
    density_low: float  # 5th percentile
    noise: float  # m, sd of heights about a plane fitted in each cell
    noise_cell: float  # m, side of those cells
    two_layers: float  # share of the area where two surfaces lie over one another
    layers_apart: float  # m, median distance of those; NaN where there are none
    holes: tuple[Hole, ...]  # largest first
    hole_frame: GridFrame
    hole_mask: BoolArray
    decides: tuple[str, ...]  # plain sentences
    notes: tuple[str, ...]
    rough_share: float = 0.0  # of the area that is lawn, gravel or cobbles, where that was sought


def assess(scan: Scan, scanner: str | None = None) -> Health:
    """The health of a scan. ``scanner``: phone, photogrammetry, terrestrial, total-station, or None where
    unknown."""
    points = scan.points[near_ground(scan.points)]
    low, high = np.percentile(points, [0.1, 99.9], axis=0)
    inside = points[np.all((points[:, :2] >= low[:2]) & (points[:, :2] <= high[:2]), axis=1)]
    density = _densities(inside, scan.every)
    middle, thin = float(np.median(density)), float(np.percentile(density, 5.0))
    is_mesh = any(f.mesh_edge is not None for f in scan.files)
    held = middle / scan.every
    cell = float(np.clip(np.sqrt(1.5 * _FEWEST_IN_CELL / held), NOISE_CELL, _WIDEST_NOISE_CELL))
    noise, two_layers, apart = (np.nan, 0.0, np.nan) if is_mesh else _noise(inside, cell)
    frame, covered, mask, holes = _holes(inside, held, scan.every)
    extent = tuple(float(v) for v in high - low)
    decides, notes = could_decide(scan, scanner, (extent[0], extent[1]), middle, thin, noise)
    if two_layers > 0.10:
        notes = (
            *notes,
            f"over {two_layers:.0%} of the area two surfaces lie {apart * 1000:.0f} mm apart: two passes"
            " disagree, so nothing finer can be told; scan again in one slow walk",
        )
    return Health(
        extent=(extent[0], extent[1], extent[2]),
        area=float(covered.sum()) * frame.cell**2,
        density_median=middle,
        density_low=thin,
        noise=float(noise),
        noise_cell=cell,
        two_layers=two_layers,
        layers_apart=float(apart),
        holes=holes,
        hole_frame=frame,
        hole_mask=mask,
        decides=decides,
        notes=(*scan.notes, *notes),
    )


def near_ground(points: FloatArray) -> BoolArray:
    """Which of the points (n, 3) lie within ``HEADROOM`` over the lowest ground about them: no ceiling, no
    tree.

    The lowest is the 5th percentile of each half metre in plan, so that a ghost point below the slab does not
    set it.
    """
    group, count = _cells(points, _GROUND_CELL)
    order = np.lexsort((points[:, 2], group))
    first = np.cumsum(count) - count
    lowest = points[order[first + (0.05 * (count - 1)).astype(np.int64)], 2]
    return np.asarray(points[:, 2] <= lowest[group] + HEADROOM)


def _cells(points: FloatArray, cell: float) -> tuple[IntArray, IntArray]:
    """Group number (n,) of each point's plan cell, and the number of points (m,) of each occupied cell."""
    i, j = np.floor((points[:, :2] - points[:, :2].min(axis=0)) / cell).astype(np.int64).T
    _, group, count = np.unique(i * (int(j.max()) + 1) + j, return_inverse=True, return_counts=True)
    return np.asarray(group, np.int64), np.asarray(count, np.int64)


def _densities(points: FloatArray, every: int) -> FloatArray:
    """Points per m2 (m,) of every occupied cell, where every second, third ... is held; the cell grows with
    that, and for scans so thin that most would hold one point."""
    cell = _DENSITY_CELL * float(np.sqrt(every))
    while True:
        count = _cells(points, cell)[1]
        if np.median(count) >= 4 or cell > 50.0:
            return np.asarray(count * every / cell**2)
        cell *= 2.0


def _noise(points: FloatArray, cell: float) -> tuple[float, float, float]:
    """(sd of heights about a plane in each cell, share of cells with two layers, their distance), metres.

    The median over near-level cells, so that objects and edges do not count. NaN where no cell holds enough
    points.
    """
    group, count = _cells(points, cell)
    if (count >= _FEWEST_IN_CELL).sum() < 20:
        return float("nan"), 0.0, float("nan")
    variance, slope = _plane_variance(points, group, count)
    level = (count >= _FEWEST_IN_CELL) & (slope < _STEEPEST)
    if level.sum() < 20:
        return float("nan"), 0.0, float("nan")
    freedom = count[level] - 3
    # Median of a chi-square over its degrees of freedom (Wilson & Hilferty 1931).
    unbiased = variance[level] / (1.0 - 2.0 / (9.0 * freedom)) ** 3
    gap = _widest_gap(points[:, 2], group, len(count))
    double = level & (gap > _LAYERS_APART[0]) & (gap < _LAYERS_APART[1])
    apart = float(np.median(gap[double])) if double.any() else float("nan")
    return float(np.sqrt(np.median(unbiased))), float(double.sum() / level.sum()), apart


def _plane_variance(points: FloatArray, group: IntArray, count: IntArray) -> tuple[FloatArray, FloatArray]:
    """Residual variance (n - 3 degrees of freedom) and slope of the least-squares plane of every cell, (m,)
    each."""
    n = len(count)
    mean = np.stack([np.bincount(group, points[:, k], n) / count for k in range(3)], axis=1)
    d = points - mean[group]
    s = {(a, b): np.bincount(group, d[:, a] * d[:, b], n) for a in range(3) for b in range(a, 3)}
    # Two by two normal equations about the cell's mean; a touch of ridge for cells whose points stand in one
    # line.
    tiny = 1e-12 + 1e-9 * (s[0, 0] + s[1, 1])
    xx, yy = s[0, 0] + tiny, s[1, 1] + tiny
    determinant = xx * yy - s[0, 1] ** 2
    a = (s[0, 2] * yy - s[1, 2] * s[0, 1]) / determinant
    b = (s[1, 2] * xx - s[0, 2] * s[0, 1]) / determinant
    rest = np.maximum(s[2, 2] - a * s[0, 2] - b * s[1, 2], 0.0)
    return rest / np.maximum(count - 3, 1), np.hypot(a, b)


def _widest_gap(z: FloatArray, group: IntArray, cells: int) -> FloatArray:
    """Widest empty height (m,) inside each cell that leaves at least a quarter of its points on either side,
    metres."""
    order = np.lexsort((z, group))
    z, group = z[order], group[order]
    count = np.bincount(group, minlength=cells)
    first = np.cumsum(count) - count
    share = (np.arange(len(z)) - first[group] + 1) / count[group]
    step = np.diff(z, append=np.inf)
    inner = (share >= 0.25) & (share <= 0.75)
    gap = np.zeros(cells)
    np.maximum.at(gap, group[inner], step[inner])
    return gap


def _holes(
    points: FloatArray, density: float, every: int
) -> tuple[GridFrame, BoolArray, BoolArray, tuple[Hole, ...]]:
    """(frame, covered, holes) (ny, nx) and the list of holes: bare cells that the scan encloses or nearly
    so."""
    from scipy.ndimage import binary_closing, binary_fill_holes, find_objects, label

    # So wide that a cell of an evenly scanned slab is hardly ever empty by chance (exp(-9)); where every
    # second, third ... point is held the scan is large, and one cell is larger than a hand (exp(-15)).
    cell = max(_HOLE_CELL, float(np.sqrt((9.0 if every == 1 else 15.0) / density)))
    origin = points[:, :2].min(axis=0) + cell / 2.0
    i, j = np.floor((points[:, :2] - points[:, :2].min(axis=0)) / cell).astype(int).T
    covered = np.zeros((int(j.max()) + 1, int(i.max()) + 1), bool)
    covered[j, i] = True
    frame = GridFrame((float(origin[0]), float(origin[1])), 0.0, cell, (covered.shape[0], covered.shape[1]))
    reach = max(1, round(0.15 / cell))
    square = np.arange(-reach, reach + 1) ** 2
    ball = np.add.outer(square, square) <= reach**2 + 0.5
    closed = binary_closing(np.pad(covered, reach), ball)[reach:-reach, reach:-reach]
    bare = binary_fill_holes(closed) & ~covered
    number, count = label(bare)
    mask, holes = np.zeros_like(covered), []
    for k, box in enumerate(find_objects(number, count), 1):
        here = number[box] == k
        area = float(here.sum()) * cell**2
        if area < _SMALLEST_HOLE:
            continue
        mask[box] |= here
        rows, columns = np.nonzero(here)
        x = frame.origin[0] + cell * (columns.mean() + box[1].start)
        y = frame.origin[1] + cell * (rows.mean() + box[0].start)
        holes.append(Hole(area, float(x), float(y), (here.shape[1] * cell, here.shape[0] * cell)))
    return frame, covered, mask, tuple(sorted(holes, key=lambda h: -h.area))
