"""How low the underside reaches over every cell, and what gap it leaves."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.contact.clearance.blocks import tiled
from crestcut.contact.clearance.kernels import FAR, column_range, plane, row_range
from crestcut.contact.clearance.pose_pairs import (
    least_of_pairs,
    lowest_of_pairs,
    pairs_of,
    place_pairs,
    planes_under,
)
from crestcut.contact.clearance.still_valid import Swept, still_true
from crestcut.contact.records import ZONES, Clearance, Contact, Ride
from crestcut.contact.stand.ride import contact_ground
from crestcut.contact.stand.tyres import VOID
from crestcut.terrain import Surface
from crestcut.vehicle import Part, Vehicle

FRAMES = ("body", "front axle", "rear axle")


def hard_parts(vehicle: Vehicle) -> tuple[Part, ...]:
    """The parts that must not touch."""
    return tuple(part for part in vehicle.parts if not part.soft)


def part_arrays(parts: tuple[Part, ...], between: float) -> tuple[FloatArray, np.ndarray, np.ndarray]:
    """Parts as the kernels want them: edges and heights (m, 6), zone (m,), carrying body (m,).

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
    return plates, zones, np.array([FRAMES.index(p.on) for p in parts], dtype=np.int64)


def sweep(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    parts: tuple[Part, ...] | None = None,
    between: float | None = None,
    since: Swept | None = None,
) -> Clearance:
    """Lowest height of the underside over every cell, over all stations, variants and parts; the gap to the
    ground below it, vertical, against the highest of each cell; negative is overlap.

    parts : default all that must not touch.  between : see ``part_arrays``, default the step of the line.
    since : an earlier sweep of the same parts, whose poses and ground are mostly the same: what still holds
    is taken over. The answer is the same without.
    """
    parts = hard_parts(vehicle) if parts is None else parts
    ground = contact_ground(surface)
    between = ride.line.step if between is None else between
    plates, zones, frames = part_arrays(parts, between)
    cell, batch = surface.top.frame.cell, ride.batch
    live = np.flatnonzero(batch.live)
    pairs = pairs_of(np.repeat(live, len(parts)), np.tile(np.arange(len(parts)), len(live)))
    place = lambda b: place_pairs(pairs, b.position, b.rotation, plates, frames, cell, len(ground))  # noqa: E731
    placed, tiles = place(batch), tiled(ground, VOID)
    blocks = planes_under(tiles, cell)
    kept = None
    if since is not None and since.serves(batch, len(parts)):
        kept = still_true(since, tiles, place(since.ride.batch), placed, zones[pairs.part], cell)
    asked = np.arange(len(pairs.pose)) if kept is None else np.flatnonzero(~kept.pairs)
    gaps = np.full((len(batch.places), len(parts)), FAR)
    if kept is not None:
        gaps[:] = since.clearance.pair_gap  # type: ignore[union-attr]
    gaps[pairs.pose[asked], pairs.part[asked]] = least_of_pairs(tiles, blocks, placed.some(asked), cell)
    lowest = lowest_of_pairs(
        len(ZONES), ground.shape, blocks, placed, zones[pairs.part], pairs.pose, cell, kept
    )
    return _clearance(surface, ride, parts, between, lowest, gaps, ground)


def _clearance(
    surface: Surface,
    ride: Ride,
    parts: tuple[Part, ...],
    between: float,
    lowest: FloatArray,
    gaps: FloatArray,
    ground: FloatArray,
) -> Clearance:
    frame = surface.top.frame
    reached = lowest < FAR / 2
    known = ground > VOID / 2
    low = lowest.min(axis=0)
    gap = np.where((low < FAR / 2) & known, low - ground, np.nan)
    least: dict[str, Contact] = {}
    for zone in ZONES:
        mine = [m for m, part in enumerate(parts) if part.zone == zone]
        if mine and gaps[:, mine].min() < FAR / 2:
            p, k = np.unravel_index(int(np.argmin(gaps[:, mine])), (len(gaps), len(mine)))
            least[zone] = contact_at(surface, ride, parts[mine[int(k)]], int(p), ground, between)
    grids = {
        zone: HeightGrid(frame, np.where(reached[z], lowest[z], np.nan))
        for z, zone in enumerate(ZONES)
        if reached[z].any()
    }
    return Clearance(grids, HeightGrid(frame, gap), least, int((reached.any(axis=0) & ~known).sum()), gaps)


def contact_at(
    surface: Surface, ride: Ride, part: Part, pose: int, ground: FloatArray, between: float
) -> Contact:
    """Where one part comes nearest to the ground at one pose of the batch."""
    batch, frame = ride.batch, surface.top.frame
    k = FRAMES.index(part.on)
    quad = np.empty((4, 2))
    plate = part_arrays((part,), between)[0][0]
    heights, i0, j0 = plate_heights(
        plate, batch.position[pose, k], batch.rotation[pose, k], frame.cell, ground.shape, quad
    )
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
    plate: FloatArray,
    position: FloatArray,
    rotation: FloatArray,
    cell: float,
    shape: tuple[int, int],
    quad: FloatArray,
) -> tuple[FloatArray, int, int]:
    """Heights of one plate at one pose over the nodes it covers (NaN elsewhere), with the first column and
    row of the patch."""
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
