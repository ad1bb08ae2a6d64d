"""What costs nothing but care: another line, keeping to the line, less load, more pressure. Each swept
again.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import ndimage

from crestcut.alternatives.trials import AWAY, Baseline, Tried, Trieds, pose_gaps, try_poses
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.contact import DRAWN, VOID, is_straight, places_of, travel_line
from crestcut.job import Travel
from crestcut.vehicle import Vehicle

ROOM = 0.6  # m to either side: as far as the ground was worked out beside every line (``line.window``)
PITCH = 0.15  # m between the lines tried first
FINER, AROUND = 0.05, 5  # m between the lines tried next, and how many to either side
STEP = 0.10  # m between stations while lines are chosen
# a tyre at rated load is pressed about 20 mm; its rate grows about as its pressure (common practice, no
# source)
PRESSED, PRESSURE_RISE = 0.020, 0.2
# m: a line that neither gains this much nor comes so near to what is asked is not judged to the end
WORTH = 0.005
GAINS = 0.001  # m: less than this is no gain
NOT_DRIVABLE = -1.0e6  # m: what a line leaves that leads a tyre off the ground


@dataclass(frozen=True, eq=False)
class LineTried:
    """Another line: site x, y of its ends, how far each was moved to the left (m), and what it leaves.

    on_line : followed exactly, by each vehicle.  wandering : with the job's wander and heading.
    """

    start: tuple[float, float]
    end: tuple[float, float]
    moved: tuple[float, float]
    on_line: Trieds
    wandering: Trieds


def other_line(benches: Sequence[Baseline], travel: Travel) -> LineTried | None:
    """The straight line near the drawn one that leaves most room, judged with the job's wander and heading.

    Both ends are moved by up to ``ROOM`` to either side: shifted, skewed and diagonal lines, other entries
    and exits. A line counts as good as the worst of the lines beside it, since the driver wanders; sought for
    the first vehicle, driven by all. None for bent lines, or where every other line leads a tyre off the
    ground or onto an area to be kept, leaves no more room than the drawn one, or neither comes near what is
    enough nor gains ``WORTH``.
    """
    first = benches[0]
    if not is_straight(first.ride.line):
        return None
    count = round(ROOM / PITCH)
    moved, robust = _best_of(first, travel, np.zeros(2), count, PITCH)
    drawn = first.before.excess
    if robust <= max(drawn + GAINS, NOT_DRIVABLE / 2):
        return None
    if robust < first.target - WORTH and robust < drawn + WORTH:
        return None
    moved, _ = _best_of(first, travel, moved, AROUND, FINER)
    return _judged(benches, travel, (float(moved[0]), float(moved[1])))


def _best_of(
    bench: Baseline, travel: Travel, middle: FloatArray, count: int, pitch: float
) -> tuple[FloatArray, float]:
    """How far the ends of the best line about ``middle`` are moved, (2,) m, and what it leaves.

    Lines ``pitch`` apart, ``count`` to either side at each end. A driver who wanders does not hit one line:
    each counts as the worst of those within ``PITCH``.
    """
    offsets = [np.clip(m + np.arange(-count, count + 1) * pitch, -ROOM, ROOM) for m in middle]
    moved = np.stack(np.meshgrid(*offsets, indexing="ij"), axis=-1)
    least = _least_of_lines(bench, travel, moved.reshape(-1, 2)).reshape(moved.shape[:2])
    reach = round(PITCH / pitch) if travel.wander > 0 else 0
    robust = ndimage.minimum_filter(least, size=2 * reach + 1, mode="nearest")
    best = np.unravel_index(int(np.argmax(robust + 1e-3 * least)), robust.shape)
    return moved[best], float(robust[best])


def _ends(bench: Baseline, moved: tuple[float, float]) -> FloatArray:
    """Site x, y (2, 2) of the ends of the vehicle's middle line."""
    line = bench.ride.line
    left = np.array([-math.sin(line.yaw[0]), math.cos(line.yaw[0])])
    return np.stack([line.xy[0] + moved[0] * left, line.xy[-1] + moved[1] * left])


def _least_of_lines(bench: Baseline, travel: Travel, moved: FloatArray) -> FloatArray:
    """(n,) least excess of lines with their ends moved (n, 2) m, coarsely; ``NOT_DRIVABLE`` where a tyre
    leaves the ground.
    """
    frame, base = bench.surface.height.frame, bench.vehicle.wheelbase
    ground = replace(bench.ground, ridden=np.where(bench.fenced, VOID, bench.ground.ridden)).coarse()
    places, owner = [], []
    for k, (a, b) in enumerate(moved):
        first, last = frame.to_grid(_ends(bench, (float(a), float(b))))
        length = float(np.hypot(*(last - first)))
        along, yaw = (last - first) / length, math.atan2(last[1] - first[1], last[0] - first[0])
        s = np.append(np.arange(0.0, length - base, STEP), length - base)[:, None]
        for way in travel.ways:
            at = first + s * along if way == "forward" else last - s * along
            for load in bench.loads:
                rest = np.tile(
                    [yaw + (0.0 if way == "forward" else math.pi), load.front, load.rear], (len(s), 1)
                )
                places.append(np.concatenate([at, rest], axis=1))
                owner.append(np.full(len(s), k))
    excess = pose_gaps(bench.vehicle, ground, np.concatenate(places), STEP, bench.gaps)[:, 1]
    out = np.full(len(moved), AWAY)
    np.minimum.at(out, np.concatenate(owner), np.where(np.isnan(excess), NOT_DRIVABLE, excess))
    return out


def _judged(benches: Sequence[Baseline], travel: Travel, moved: tuple[float, float]) -> LineTried | None:
    """That line, unless it leaves the ground or its wander leaves it more than the drawn line's does."""
    (x0, y0), (x1, y1) = _ends(benches[0], moved)
    start, end = (float(x0), float(y0)), (float(x1), float(y1))
    straight = replace(travel, wander=0.0, heading=0.0)
    exact, wandering = [], []
    for b in benches:
        on_line, near = judge_line(b, straight, start, end), judge_line(b, travel, start, end)
        if on_line is None or near is None or on_line.lost > 0 or near.lost > lost_share(b) + 0.01:
            return None
        exact.append(on_line)
        wandering.append(near)
    return LineTried(start, end, moved, tuple(exact), tuple(wandering))


def judge_line(
    bench: Baseline, travel: Travel, start: tuple[float, float], end: tuple[float, float]
) -> Tried | None:
    """Ride and sweep of another straight line, site m, as a job with it would; None where it is too short."""
    try:
        line = travel_line([start, end], bench.vehicle, replace(travel, track="middle"), bench.step)
    except CrestcutError:
        return None
    places = places_of(line, bench.surface.height.frame, bench.vehicle, travel, bench.loads)
    return try_poses(bench.vehicle, bench.ground, places, bench.step, bench.gaps)


def lost_share(bench: Baseline) -> float:
    """Share of the job's own poses that are not judged because a tyre would stand on nothing."""
    return float(1.0 - bench.ride.batch.live.mean())


def kept_to(bench: Baseline) -> Tried | None:
    """The drawn line without its wander and heading; None where the job has none, or nothing is gained."""
    exact = np.array([p.variant.offset == 0 and p.variant.heading == 0 for p in bench.ride.poses])
    mine = exact[bench.ride.batch.variant[bench.ride.batch.live]]
    if mine.all() or not mine.any():
        return None
    assert bench.clearance.pair_gap is not None
    excess = bench.pair_excess()[mine].min(axis=1)
    gap = float(bench.clearance.pair_gap[bench.ride.batch.live][mine].min())
    found = Tried(gap, float(excess.min()), int(np.flatnonzero(mine)[np.argmin(excess)]))
    return found if found.excess > bench.before.excess + GAINS else None


def less_load(bench: Baseline) -> tuple[str, Tried] | None:
    """The load state of the vehicle file that leaves most room, alone; None where the job asks for no other.

    Stood up again with that load only: at every place of the line.
    """
    known = {load.name: load for load in (*bench.loads, *bench.vehicle.loads)}
    name = max(known, key=lambda n: known[n].front + known[n].rear)
    light = known[name]
    if all((load.front, load.rear) == (light.front, light.rear) for load in bench.loads):
        return None
    places = bench.places.copy()
    places[:, 3], places[:, 4] = light.front, light.rear
    if len(bench.loads) > 1:  # each place is there once for every load
        places = places[np.sort(np.unique(places, axis=0, return_index=True)[1])]
    found = bench.tried(places=places)
    return (name, found) if found.excess > bench.before.excess + GAINS else None


def pumped_up(vehicle: Vehicle) -> Vehicle:
    """The vehicle with ``PRESSURE_RISE`` more in its tyres: wheels and all they carry stand higher.

    Pressed by 20 mm at its pressure, a tyre is pressed by 20 / 1.2 at a fifth more: its rate grows about as
    its pressure.
    """
    rise = PRESSED * (1 - 1 / (1 + PRESSURE_RISE))
    return replace(
        vehicle,
        tyre_radius=vehicle.tyre_radius + rise,
        belly_clearance=vehicle.belly_clearance + rise,
        parts=tuple(replace(p, z=(p.z[0] + rise, p.z[1] + rise)) for p in vehicle.parts),
    )


def more_pressure(bench: Baseline) -> Tried | None:
    """With more air in the tyres; None for hard wheels."""
    return None if bench.vehicle.rigid else bench.tried(pumped_up(bench.vehicle), falls=0.001)


assert DRAWN["middle"] == 0.0  # lines are moved as the vehicle's middle goes
