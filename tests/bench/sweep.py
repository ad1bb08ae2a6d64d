"""The sweep of a vehicle along 16 x 4 m at 10 mm, 1,020 stations, against ray casting of the same poses in
the same run.

python tests/bench/sweep.py [poses to cast]
"""

from __future__ import annotations

import os
import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np
from history import figure

from crestcut.contact.records import Batch, Poses, Ride

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "contact")]
REPEATS = 5


def main() -> None:
    from test_springs import rough
    from test_sweep_twin import cast, random_car

    from crestcut.base.grid import GridFrame
    from crestcut.base.parallel import WORKERS
    from crestcut.contact.clearance.sweep import sweep
    from crestcut.contact.path.line import travel_line
    from crestcut.contact.stand.ground import contact_ground
    from scenes import STRAIGHT, L, stand, surface_of

    rng = np.random.default_rng(1)
    car = random_car(rng)
    line = travel_line([(1.0, 0.0), (1.0 + 10.19 + L, 0.0)], car, STRAIGHT, 0.01)
    frame = GridFrame((0.0, -2.0), 0.0, 0.01, (401, 1601))
    s = stand(car, STRAIGHT, line, surface_of(rough(rng), frame))
    walls, cpus = [], []
    for _ in range(REPEATS):
        wall, cpu = time.perf_counter(), time.process_time()
        sweep(s.vehicle, s.surface, s.ride)
        walls.append(time.perf_counter() - wall)
        cpus.append(time.process_time() - cpu)
    n = len(s.ride.batch.places)
    print(
        f"{frame.shape[1] * 0.01:.0f} x {frame.shape[0] * 0.01:.0f} m at 10 mm, {n} stations, "
        f"{len(car.parts)} parts"
    )
    figure("sweep", min(walls), "s", "less")  # asked: 0.15
    figure("sweep, processor time", min(cpus), "s", "less")
    print(f"on {WORKERS} of {os.cpu_count()} cores")

    ground = contact_ground(s.surface)
    casts = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    poses = rng.choice(n, casts, replace=False)
    still = replace(s.ride.line, step=0.0)  # plates as they are, not lengthened from station to station
    cast(s, 0)
    worst, apart, edge, seconds = 0.0, 0.0, 0.0, 0.0
    for pose in poses:
        cpu = time.process_time()
        hit = cast(s, int(pose))
        seconds += time.process_time() - cpu
        alone = sweep(s.vehicle, s.surface, only(replace(s.ride, line=still), int(pose)))
        swept = np.fmin.reduce([g.values for g in alone.lowest.values()])
        both = np.isfinite(hit) & ~np.isnan(swept)
        apart = max(apart, float(np.abs(hit - swept)[both].max()))
        worst = max(worst, abs(float((hit - ground)[both].min() - (swept - ground)[both].min())))
        edge = max(edge, float((np.isfinite(hit) != ~np.isnan(swept)).sum() / both.sum()))
    seconds *= n / casts
    print(
        f"ray casting of every node, {casts} of the poses: {seconds:.1f} s of processor time for all of them"
    )
    figure("ray casting over sweep", seconds / min(cpus), "", "more")
    figure("nodes that both see, apart", apart * 1e3, "mm", "less")
    figure("least of a pose, apart", worst * 1e3, "mm", "less")
    figure("seen by one alone, on edges", 100 * edge, "%", "less")


def only(ride: Ride, p: int) -> Ride:
    """The ride at one of its poses alone; it must have one variant."""
    (pose,), b = ride.poses, ride.batch
    k = slice(p, p + 1)
    batch = Batch(
        b.places[k], b.variant[k], b.live[k], b.wheels[k], b.contact[k], b.position[k], b.rotation[k]
    )
    one = Poses(
        pose.variant,
        pose.station[k],
        pose.wheels[k],
        pose.contact[k],
        pose.position[k],
        pose.rotation[k],
        pose.live[k],
    )
    return Ride(ride.line, (one,), batch, 0)


if __name__ == "__main__":
    main()
