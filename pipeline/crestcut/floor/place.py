"""Which part of a scan is the floor that is judged: the raster laid over it, and the nodes that count."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, GridFrame
from crestcut.cut import inside
from crestcut.floor.records import FloorDoubt, FloorFinding, Judged
from crestcut.floor.straightedge import longest_reach
from crestcut.scan import Scan
from crestcut.terrain import Seen, Surface

AIR = 0.05  # m of raster beyond the area
MOST_NODES = 6_000_000
SCAN_SHARE = (0.5, 99.5)  # %: of the points, where no area is named
SEEN = 0.5  # of the area asked for must be measured
LEAST_SIDE = 0.5  # m
RIM = (
    0.05  # m beside walls, columns and holes that is not judged: their own points lift the edge of the floor
)
SPECK = 0.01  # m2: a hole of the scan smaller than this has no such rim
ROOM = 0.15  # m: in a hole with room for a disk of this radius, the rim in it, a spot over the limit may hide
COVERED = 0.5  # share of a hole that something stands in, so that it is no fault of the scan
UNSURE = 8.0  # times the usual standard error: a height that hangs on next to nothing
HINT = "name the part to be judged: area = [[x, y], ...] under [floor]"


def floor_frame(scan: Scan, corners: tuple[tuple[float, float], ...], cell: float) -> GridFrame:
    """The raster over an area (site x, y corners, m), turned along its longest side; over the whole scan
    where none is named.

    Raises CrestcutError where the area lies off the scan, or is too small or too large for one raster.
    """
    points = scan.all_over[:, :2]
    low, high = np.percentile(points, SCAN_SHARE, axis=0)
    if corners:
        outline = np.array(corners)
        if (outline.min(axis=0) > high).any() or (outline.max(axis=0) < low).any():
            a, b = scan.frame.site_to_plan(np.array([low, high]))
            raise CrestcutError(
                "the area lies outside the scan", "floor.area",
                f"the scan reaches from x {a[0]:.1f} to {b[0]:.1f} and y {a[1]:.1f} to {b[1]:.1f}"
                f" {scan.frame.unit}",
            )  # fmt: skip
        sides = np.roll(outline, -1, axis=0) - outline
        longest = sides[int(np.hypot(*sides.T).argmax())]
        angle = math.atan2(longest[1], longest[0])
        angle = (angle + math.pi / 4) % (
            math.pi / 2
        ) - math.pi / 4  # of its two ways along walls the one nearer to x
    else:
        outline, angle = np.array([low, (high[0], low[1]), high, (low[0], high[1])]), 0.0
    turn = np.array([[math.cos(angle), -math.sin(angle)], [math.sin(angle), math.cos(angle)]])
    uv = outline @ turn
    start, stop = uv.min(axis=0) - AIR, uv.max(axis=0) + AIR
    shape = tuple(math.ceil(float(s) / cell) + 1 for s in (stop - start)[::-1])
    if min(stop - start) < LEAST_SIDE:
        raise CrestcutError(
            f"the floor is {min(stop - start):.2f} m wide: too small to judge",
            "floor.area" if corners else "",
            HINT,
        )
    if shape[0] * shape[1] > MOST_NODES:
        wide, tall = (stop - start).tolist()
        raise CrestcutError(
            f"{wide:.0f} x {tall:.0f} m at {cell * 1000:.0f} mm is too much at once", "[floor]",
            'name a part of it under area, or write cell = "20 mm" under [surface]' if cell < 0.02 else HINT,
        )  # fmt: skip
    origin = turn @ start
    return GridFrame((float(origin[0]), float(origin[1])), angle, cell, (shape[0], shape[1]))


def floor_nodes(
    surface: Surface, corners: tuple[tuple[float, float], ...], straightedge: float | None
) -> BoolArray:
    """(ny, nx) the floor to be judged: inside the area, and slab.

    Raises CrestcutError where too little of the area was scanned, or no straightedge finds room on it.
    """
    frame = surface.height.frame
    asked = _asked(surface, corners)
    floor: BoolArray = asked & _clear_of_rims(surface)
    where = "floor.area" if corners else ""
    if corners and floor.sum() < SEEN * asked.sum():
        share = floor.sum() / max(int(asked.sum()), 1)
        raise CrestcutError(
            f"only {share:.0%} of the area is measured floor",
            where,
            "scan it whole, or name the part that was scanned",
        )
    if not floor.any():
        raise CrestcutError("no floor was found in the scan", where, HINT)
    if straightedge is not None:
        k = max(round(0.05 / frame.cell), 1)
        room = longest_reach(floor[::k, ::k], frame.cell * k)
        if room < straightedge - 2 * k * frame.cell:
            raise CrestcutError(
                f"a straightedge of {straightedge:g} m finds no room: the floor is {room:.2f} m long at most",
                "floor.straightedge", "ask for a shorter one, or scan more of the floor",
            )  # fmt: skip
    return floor


def _asked(surface: Surface, corners: tuple[tuple[float, float], ...]) -> BoolArray:
    frame = surface.height.frame
    return inside(frame, corners) if corners else np.ones(frame.shape, bool)


def floor_findings(
    surface: Surface, floor: BoolArray, corners: tuple[tuple[float, float], ...]
) -> tuple[FloorFinding, ...]:
    """What of the area cannot be judged, the largest first: floor that is there twice, holes in it large
    enough to hide a spot, and whether something stands in them.  surface : all of it.  floor : (ny, nx)
    what is judged.

    Where no area is named only holes that floor surrounds count: beyond its edge nothing was asked.
    """
    seen, frame = surface.seen, surface.height.frame
    asked = _asked(surface, corners)
    label, _ = ndimage.label(asked & ~floor)
    if not corners:
        outside = np.unique(np.concatenate([label[0], label[-1], label[:, 0], label[:, -1]]))
        label = np.where(np.isin(label, outside), 0, label)
    wide = ndimage.distance_transform_edt(np.pad(label > 0, 1))[1:-1, 1:-1] * frame.cell >= ROOM
    near = ndimage.distance_transform_edt(~wide) * frame.cell < ROOM if wide.any() else wide
    label, count = ndimage.label(near & (label > 0))
    found = []
    for k in range(1, count + 1):
        hole = label == k
        rows, columns = np.nonzero(hole)
        x, y = frame.to_site((columns.mean() * frame.cell, rows.mean() * frame.cell))
        size = float(hole.sum()) * frame.cell**2
        inside_it, tall = _stood_on(hole, seen)
        if inside_it.sum() > COVERED * hole.sum():
            found.append(FloorFinding(FloorDoubt.COVERED, (float(x), float(y)), size, tall))
        else:
            found.append(FloorFinding(FloorDoubt.UNSEEN, (float(x), float(y)), size))
    for layers in () if seen is None else seen.layers:
        u, v = np.rint(frame.to_grid((layers.x, layers.y)) / frame.cell).astype(int)
        if 0 <= v < asked.shape[0] and 0 <= u < asked.shape[1] and asked[v, u]:
            found.append(FloorFinding(FloorDoubt.TWICE, (layers.x, layers.y), layers.area, layers.apart))
    return tuple(sorted(found, key=lambda f: -f.area))


def _stood_on(hole: BoolArray, seen: Seen | None) -> tuple[BoolArray, float]:
    """Nodes (ny, nx) of a hole within the outlines, along the frame, of what stands in it (of a column only
    its sides are seen), and how high the tallest of it is, m."""
    covered, tall = np.zeros(hole.shape, bool), 0.0
    if seen is None:
        return covered, tall
    for n in np.unique(seen.thing[hole & (seen.thing >= 0)]):
        rows, columns = np.nonzero(hole & (seen.thing == n))
        covered[rows.min() : rows.max() + 1, columns.min() : columns.max() + 1] = True
        tall = max(tall, seen.things[int(n)].height)
    return covered & hole, tall


def doubted_floor(judged: Judged, findings: tuple[FloorFinding, ...]) -> Judged:
    """The floor judged, its verdict withdrawn where a finding forbids it."""
    kinds = {f.doubt for f in findings}
    against = FloorDoubt.TWICE in kinds or (FloorDoubt.UNSEEN in kinds and judged.verdict == "meets")
    verdict = "cannot tell" if against else judged.verdict
    return replace(
        judged, findings=findings, verdict=verdict, provisional=judged.provisional or verdict == "cannot tell"
    )


def floor_only(surface: Surface, floor: BoolArray) -> Surface:
    """The surface with everything but ``floor`` (ny, nx) not measured."""
    height, top, error = (
        g.like(np.where(floor, g.values, np.nan))
        for g in (surface.height, surface.top, surface.standard_error)
    )
    rolled = surface.rollable & floor
    return replace(
        surface, height=height, top=top, standard_error=error, slab=floor, rollable=rolled, scanned=None
    )


def _clear_of_rims(surface: Surface) -> BoolArray:
    """Measured slab, less a rim beside what is not and less heights that hang on next to nothing."""
    error, cell = surface.standard_error.values, surface.height.frame.cell
    found = surface.slab & surface.height.measured
    if not found.any():
        return found
    with np.errstate(invalid="ignore"):
        found &= error <= UNSURE * float(np.nanmedian(error[found]))
    holes, count = ndimage.label(~found)
    sizes = np.bincount(holes.ravel(), minlength=count + 1) * cell**2
    solid = found | ((holes > 0) & (sizes < SPECK)[holes])
    # beyond the raster nothing is known to stand: only what was seen not to be floor has a rim
    away = ndimage.distance_transform_edt(np.pad(solid, 1, constant_values=True))[1:-1, 1:-1] * cell
    return np.asarray(found & (away > RIM))
