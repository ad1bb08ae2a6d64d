"""How low the underside reaches over every cell, and what gap it leaves."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.contact.clearance.along import pieces, reach_of
from crestcut.contact.clearance.blocks import BLOCK, blocks_of
from crestcut.contact.clearance.kernels import FAR, Plates, column_range, plane, row_range
from crestcut.contact.clearance.pose_pairs import every_pair, least_of_pairs, lowest_of_pairs, place_pairs
from crestcut.contact.clearance.still_valid import Swept, changed_blocks, concerned, still_true
from crestcut.contact.records import ZONES, Clearance, Contact, Ride
from crestcut.contact.stand.ground import contact_ground
from crestcut.contact.stand.tyres import VOID
from crestcut.terrain import Surface
from crestcut.vehicle import Part, Vehicle

AT_ONCE = 100_000  # pairs copied at a time
FRAMES = ("body", "front axle", "rear axle")
Lowest = dict[str, FloatArray]  # by zone, (ny, nx) m, NaN where nothing reaches


def hard_parts(vehicle: Vehicle) -> tuple[Part, ...]:
    """The parts that must not touch."""
    return tuple(part for part in vehicle.parts if not part.soft)


def plates_of(parts: tuple[Part, ...], between: float) -> Plates:
    """Parts as the kernels want them.

    between : m, how far a part moves between two stations. Every plate is lengthened by half of that, in its
    own plane, at its front and rear edge: this stands for the poses between two stations, to second order in
    their distance. Without it a node that an edge just misses at one depth of cut and just covers at another
    would jump in and out of reach. For the same reason plates are a quarter of it wider on either side (2.5
    mm at 10 mm): roll moves a part's sides by a millimetre or two. 0 keeps the plates as they are.
    """
    plates = np.array([[*p.x, *p.y, *p.z] for p in parts], dtype=float).reshape(-1, 6)
    slope = (plates[:, 5] - plates[:, 4]) / (plates[:, 1] - plates[:, 0])
    plates[:, 2:4] += 0.25 * between * np.array([-1.0, 1.0])
    plates[:, 0:2] += 0.5 * between * np.array([-1.0, 1.0])
    plates[:, 4:6] += 0.5 * between * slope[:, None] * np.array([-1.0, 1.0])
    zones = np.array([ZONES.index(p.zone) for p in parts], dtype=np.int64)
    return Plates(plates, zones, np.array([FRAMES.index(p.on) for p in parts], dtype=np.int64))


def sweep(
    vehicle: Vehicle, surface: Surface, ride: Ride, earlier: Swept | None = None, cells: bool = True
) -> Clearance:
    """Lowest height of what must not touch over every cell, over all stations, variants and parts; the gap to
    the ground below it, vertical, against the highest of each cell; negative is overlap.

    earlier : a sweep before of the same parts, whose poses and ground are mostly the same: what still holds
    is taken over. The answer is the same without.  cells : whether what is reached over each cell is asked;
    without, half the work, ``lowest`` is empty and of the gaps there are only ``least`` and ``pair_gap``.
    """
    parts, ground, batch = hard_parts(vehicle), contact_ground(surface), ride.batch
    cell, plates = surface.top.frame.cell, plates_of(parts, ride.line.step)
    columns, lowest = -(-ground.shape[1] // BLOCK), Lowest()
    were = None if earlier is None else earlier.serves(batch, len(parts), cells)
    if earlier is not None and were is not None:
        gaps, old = were.copy(), earlier.ride.batch
        lowest = {name: grid.values for name, grid in earlier.clearance.lowest.items()}
        changed = changed_blocks(earlier.surface, ground)
        reach = reach_of(plates, cell, columns, old, batch)
        places = concerned(old, batch, changed, reach)
    else:
        gaps, reach = np.full((len(batch.places), len(parts)), FAR), reach_of(plates, cell, columns, batch)
        old, changed, places = None, None, [(0, columns)]
    for first, stop in pieces(places):
        poses = np.flatnonzero(batch.live & (reach.first < stop) & (reach.stop > first))
        begin = np.flatnonzero(reach.first[poses] >= first)  # every pose once; what it covers may lie beyond
        end = int(reach.stop[poses[begin]].max(initial=stop))
        pairs = every_pair(poses, len(parts))
        here, beyond = (slice(first * BLOCK, min(n * BLOCK, ground.shape[1])) for n in (stop, end))
        over = blocks_of(ground[:, beyond], cell, first)
        placed, kept = place_pairs(pairs, batch, plates, over), None
        asked = (begin[:, None] * len(parts) + np.arange(len(parts))).ravel()
        if old is not None and changed is not None:
            before = {name: values[:, here] for name, values in lowest.items()}
            was = place_pairs(pairs, old, plates, over)
            kept = still_true(before, was, placed, changed[:, first:end], over).until(stop - first)
            asked = asked[~kept.pairs[asked]]
        for some in np.array_split(asked, len(asked) // AT_ONCE + 1):
            gaps[pairs.pose[some], pairs.part[some]] = least_of_pairs(over, placed.some(some))
        if cells:
            on = over if end == stop else blocks_of(ground[:, here], cell, first)
            _lay_in(lowest, here, lowest_of_pairs(on, placed, kept), ground.shape)
    least = _least(surface, ride, parts, gaps)
    return Clearance(*_over_cells(surface, ground, lowest if cells else {}, least), gaps)


def _lay_in(lowest: Lowest, here: slice, found: FloatArray, shape: tuple[int, int]) -> None:
    """``lowest`` with what was found (zones, ny, k), m, in columns ``here``."""
    for zone, low in zip(ZONES, found, strict=True):
        reached = low < FAR / 2
        if zone in lowest or reached.any():
            values = lowest.get(zone)
            if values is None or not values.flags.writeable:  # an earlier sweep's stay as they are
                values = np.full(shape, np.nan) if values is None else values.copy()
            values[:, here] = np.where(reached, low, np.nan)
            lowest[zone] = values


def _over_cells(
    surface: Surface, ground: FloatArray, lowest: Lowest, least: dict[str, Contact]
) -> tuple[dict[str, HeightGrid], HeightGrid, dict[str, Contact], int]:
    """What a ``Clearance`` says of cells: lowest heights, gaps, and how many are reached and not measured."""
    frame, known = surface.top.frame, ground > VOID / 2
    grids = {zone: HeightGrid(frame, lowest[zone]) for zone in ZONES if zone in lowest}
    low = np.full(frame.shape, np.nan)
    for grid in grids.values():
        np.fmin(low, grid.values, out=low)
    unmeasured = int((~np.isnan(low) & ~known).sum())
    low -= ground
    low[~known] = np.nan
    return grids, HeightGrid(frame, low), least, unmeasured


def _least(surface: Surface, ride: Ride, parts: tuple[Part, ...], gaps: FloatArray) -> dict[str, Contact]:
    """The worst contact of each zone that meets measured ground; gaps : (poses, parts) m."""
    least: dict[str, Contact] = {}
    for zone in ZONES:
        mine = [m for m, part in enumerate(parts) if part.zone == zone]
        if mine and gaps[:, mine].min() < FAR / 2:
            p, k = np.unravel_index(int(np.argmin(gaps[:, mine])), (len(gaps), len(mine)))
            least[zone] = contact_at(surface, ride, parts[mine[int(k)]], int(p))
    return least


def contact_at(surface: Surface, ride: Ride, part: Part, pose: int) -> Contact:
    """Where one part comes nearest to the ground at one pose of the batch."""
    batch, frame, ground = ride.batch, surface.top.frame, contact_ground(surface)
    k = FRAMES.index(part.on)
    plate = plates_of((part,), ride.line.step).edges[0]
    heights, i0, j0 = plate_heights(plate, batch.position[pose, k], batch.rotation[pose, k], frame)
    patch = ground[j0 : j0 + heights.shape[0], i0 : i0 + heights.shape[1]]
    gap = np.where(np.isnan(heights), np.inf, heights - patch)
    j, i = np.unravel_index(int(np.argmin(gap)), gap.shape)
    xy = frame.to_site(((i0 + i) * frame.cell, (j0 + j) * frame.cell))
    v = int(batch.variant[pose])
    place = pose - int(np.searchsorted(batch.variant, v))
    poses = ride.poses[v]
    return Contact(
        float(gap[j, i]),
        part.zone,
        part.name,
        poses.variant,
        float(poses.station[place]),
        (float(xy[0]), float(xy[1])),
        (v, place),
    )


def on_the_line(ride: Ride, clearance: Clearance) -> float | None:
    """Least gap of the line as drawn, m: no offset and no heading off it, every way and load. The most likely
    case; ``least`` is the worst of all offsets and headings. None where the gaps were not kept or nothing
    meets measured ground.
    """
    if clearance.pair_gap is None:
        return None
    exact = [k for k, p in enumerate(ride.poses) if p.variant.offset == 0 and p.variant.heading == 0]
    gaps = clearance.pair_gap[np.isin(ride.batch.variant, exact) & ride.batch.live]
    least = float(gaps.min(initial=FAR))
    return least if least < FAR / 2 else None


def plate_heights(
    plate: FloatArray, position: FloatArray, rotation: FloatArray, frame: GridFrame
) -> tuple[FloatArray, int, int]:
    """Heights of one plate at one pose over the nodes it covers (NaN elsewhere), with the first column and
    row of the patch."""
    quad, cell, shape = np.empty((4, 2)), frame.cell, frame.shape
    a, b, c = plane(plate, position, rotation, quad)
    j0, j1 = row_range(quad, cell, shape[0])
    runs = [column_range(quad, cell, j, shape[1]) for j in range(j0, j1 + 1)]
    runs_i = [r for r in runs if r[1] >= r[0]]
    i0 = min((r[0] for r in runs_i), default=0)
    i1 = max((r[1] for r in runs_i), default=-1)
    heights = np.full((max(j1 - j0 + 1, 1), max(i1 - i0 + 1, 1)), np.nan)
    for row, (first, last) in enumerate(runs):
        if last >= first:
            i = np.arange(first, last + 1)
            heights[row, first - i0 : last - i0 + 1] = a + b * i * cell + c * (j0 + row) * cell
    return heights, i0, j0


def wanted_gap(want: float, want_ends: float) -> Mapping[str, float]:
    """The gap asked for in every zone, metres."""
    return {"belly": want, "nose": want_ends, "tail": want_ends}
