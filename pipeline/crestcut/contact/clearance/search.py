"""Another line over the slab: shifted, skewed or diagonal, within the ground that was scanned and outside
what must stay free.

A straight line is two numbers: how far its start and its end are moved to the left of the line as drawn. The
least clearance over that plane is not smooth and has many hollows, so it is sampled on a grid, coarsely along
the line first, and the best few are followed uphill.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.contact.clearance.blocks import tiled
from crestcut.contact.clearance.kernels import FAR
from crestcut.contact.clearance.pose_pairs import least_of_pairs, pairs_of, place_pairs, planes_under
from crestcut.contact.clearance.sweep import hard_parts, part_arrays
from crestcut.contact.path.line import is_straight
from crestcut.contact.records import TravelLine
from crestcut.contact.stand.ride import contact_ground, ridden_ground, settle_batch
from crestcut.contact.stand.tyres import VOID
from crestcut.terrain import Surface
from crestcut.vehicle import LoadState, Vehicle

PITCH = 0.10  # m between the lines tried first
COARSE, FINE = 0.08, 0.02  # m between stations: for choosing lines, for judging them
FOLLOWED = 8  # of the lines tried first
NOT_DRIVABLE = -1.0e6
NO_CONTACT = 1.0e6  # m: nothing measured under any part


@dataclass(frozen=True)
class LineFound:
    """A line: site x, y of its ends, m; how far each end was moved to the left, m; its least clearance
    without wander, m.
    """

    start: tuple[float, float]
    end: tuple[float, float]
    moved: tuple[float, float]
    clearance: float

    @property
    def words(self) -> str:
        """ "shift 0.30 m to the left", "0.20 m to the right at the start and 0.50 m to the left at the
        end"."""
        a, b = self.moved
        if abs(a - b) < 0.03:
            return f"shift the line {_side((a + b) / 2)}"
        return f"move the line {_side(a)} at its start and {_side(b)} at its end"


def _side(moved: float) -> str:
    return f"{abs(moved):.2f} m to the {'left' if moved >= 0 else 'right'}"


@dataclass(frozen=True, eq=False)
class Fan:
    """All straight lines near one: what ``clearances`` needs. Ground arrays as the kernels want them;
    ``ends`` (2, 2) site m.
    """

    vehicle: Vehicle
    surface: Surface
    loads: tuple[LoadState, ...]
    ways: tuple[str, ...]
    ends: FloatArray
    ridden: FloatArray
    under: FloatArray

    @cached_property
    def blocks(self) -> tuple[FloatArray, FloatArray]:
        """``under`` in tiles, and the plane under each."""
        tiles = tiled(self.under, VOID)
        return tiles, planes_under(tiles, self.surface.height.frame.cell)


def fan(
    vehicle: Vehicle,
    surface: Surface,
    line: TravelLine,
    ways: Sequence[str],
    loads: Sequence[LoadState],
    avoid: BoolArray | None = None,
) -> Fan:
    """Lines beside ``line`` (straight). ``avoid`` : (ny, nx) nodes no tyre may stand on: planting, drains,
    the neighbour's ground.
    """
    if not is_straight(line):
        raise CrestcutError(
            "other lines are sought beside straight ones only", "[travel] line", "give its two ends"
        )
    ridden = ridden_ground(surface)[0]
    if avoid is not None:
        ridden = np.where(avoid, VOID, ridden)
    ends = np.stack([line.xy[0], line.xy[-1]])
    return Fan(
        vehicle,
        surface,
        tuple(loads),
        tuple(ways),
        ends,
        np.ascontiguousarray(ridden),
        contact_ground(surface),
    )


def least_of_poses(
    ground: FloatArray, cell: float, position: FloatArray, rotation: FloatArray, parts: FloatArray,
    frames: IntArray, least: FloatArray,
) -> None:  # fmt: skip
    """least (n,) : smallest gap of any part at each pose, m; poses with NaN there are left alone."""
    tiles = tiled(ground, VOID)
    judged = np.flatnonzero(~np.isnan(least))
    gaps = _gaps(
        tiles, planes_under(tiles, cell), cell, ground.shape[0], judged, position, rotation, parts, frames
    )
    least[judged] = np.minimum(least[judged], gaps)


def _gaps(
    tiles: FloatArray, blocks: FloatArray, cell: float, rows: int, judged: IntArray, position: FloatArray,
    rotation: FloatArray, parts: FloatArray, frames: IntArray,
) -> FloatArray:  # fmt: skip
    """Smallest gap of any part at each of the poses ``judged``, m; very large over nothing measured."""
    pairs = pairs_of(np.repeat(judged, len(parts)), np.tile(np.arange(len(parts)), len(judged)))
    placed = place_pairs(pairs, position, rotation, parts, frames, cell, rows)
    return (
        least_of_pairs(tiles, blocks, placed, cell).reshape(len(judged), len(parts)).min(axis=1, initial=FAR)
    )


def clearances(lines: Fan, moved: FloatArray, step: float) -> FloatArray:
    """Least clearance of each line, (n,) m; ``NOT_DRIVABLE`` where a tyre leaves the ground. moved : (n, 2)
    m; step between stations, m.
    """
    out = np.empty(len(moved))
    stations = max(int(np.hypot(*(lines.ends[1] - lines.ends[0])) / step), 2)
    chunk = max(200_000 // (stations * len(lines.loads) * len(lines.ways)), 1)
    for at in range(0, len(moved), chunk):
        out[at : at + chunk] = _some(lines, moved[at : at + chunk], step)
    return out


def _some(lines: Fan, moved: FloatArray, step: float) -> FloatArray:
    cell, base = lines.surface.height.frame.cell, lines.vehicle.wheelbase
    places, owner = [], []
    for k, (a, b) in enumerate(moved):
        first, last = lines.surface.height.frame.to_grid(_ends(lines, float(a), float(b)))
        length = float(np.hypot(*(last - first)))
        along, yaw = (last - first) / length, math.atan2(last[1] - first[1], last[0] - first[0])
        s = np.append(np.arange(0.0, length - base, step), length - base)
        for way in lines.ways:
            at = first + s[:, None] * along if way == "forward" else last - s[:, None] * along
            turn = yaw if way == "forward" else yaw + math.pi
            for load in lines.loads:
                rest = np.tile([turn, load.front, load.rear], (len(s), 1))
                places.append(np.concatenate([at, rest], axis=1))
                owner.append(np.full(len(s), k))
    who = np.concatenate(owner)
    batch = settle_batch(lines.vehicle, lines.ridden, cell, np.concatenate(places), who)
    plates, _, frames = part_arrays(hard_parts(lines.vehicle), min(step, FINE))
    out = np.full(len(moved), NO_CONTACT)
    out[np.unique(who[~batch.live])] = NOT_DRIVABLE
    judged = np.flatnonzero(out[who] > NOT_DRIVABLE / 2)  # one tyre off the ground is enough to drop a line
    tiles, blocks = lines.blocks
    where = (judged, batch.position, batch.rotation)
    np.minimum.at(out, who[judged], _gaps(tiles, blocks, cell, len(lines.under), *where, plates, frames))
    return out


def _ends(lines: Fan, a: float, b: float) -> FloatArray:
    along = lines.ends[1] - lines.ends[0]
    left = np.array([-along[1], along[0]]) / np.hypot(*along)
    return lines.ends + np.outer([a, b], left)


def search_lines(lines: Fan, room: float, finest: float = 0.0125, keep: int = 3) -> tuple[LineFound, ...]:
    """The best lines with each end at most ``room`` metres from where it was drawn, best first; at most
    ``keep``, unlike each other.

    Empty where no line near keeps all wheels on scanned ground. The clearance found is that of the grid of
    lines ``finest`` apart.
    """
    count = math.ceil(room / PITCH)
    offsets = np.linspace(-room, room, 2 * count + 1)
    grid = np.stack(np.meshgrid(offsets, offsets, indexing="ij"), axis=-1).reshape(-1, 2)
    rough = clearances(lines, grid, COARSE)
    order = np.argsort(-rough, kind="stable")
    tried = _apart(grid[order[rough[order] > NOT_DRIVABLE / 2]], 1.5 * PITCH, FOLLOWED)
    ends = [_uphill(lines, at, room, finest) for at in [*tried, np.zeros(2)]]
    ends = sorted((e for e in ends if e[1] > NOT_DRIVABLE / 2), key=lambda e: -e[1])
    found: list[LineFound] = []
    for at, gap in ends:
        if all(np.abs(at - f.moved).max() > PITCH for f in found):
            p, q = _ends(lines, float(at[0]), float(at[1]))
            found.append(
                LineFound(
                    (float(p[0]), float(p[1])), (float(q[0]), float(q[1])), (float(at[0]), float(at[1])), gap
                )
            )
    return tuple(found[:keep])


def _apart(points: FloatArray, distance: float, most: int) -> list[FloatArray]:
    """The first ``most`` points that lie ``distance`` from every one before."""
    chosen: list[FloatArray] = []
    for p in points:
        if all(np.abs(p - c).max() > distance for c in chosen):
            chosen.append(p)
        if len(chosen) == most:
            break
    return chosen


def _uphill(lines: Fan, start: FloatArray, room: float, finest: float) -> tuple[FloatArray, float]:
    """Step to the best of the eight neighbours until none is better; then halve the step."""
    ring = np.array([(i, j) for i in (-1, 0, 1) for j in (-1, 0, 1) if i or j], dtype=float)
    at, pitch = np.asarray(start, dtype=float), PITCH
    best = float(clearances(lines, at[None], FINE)[0])
    while pitch > finest * 0.99:
        around = np.clip(at + pitch * ring, -room, room)
        gaps = clearances(lines, around, FINE)
        k = int(np.argmax(gaps))
        if gaps[k] > best + 1e-7:
            at, best = around[k], float(gaps[k])
        else:
            pitch /= 2
    return at, best
