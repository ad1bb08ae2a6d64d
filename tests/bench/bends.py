"""The sweep along bent lines: time, and its difference from ray casting.

python tests/bench/bends.py
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np
from history import figure

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "contact")]


def main() -> None:
    from test_path import bent_scene, lowest_at
    from test_sweep_twin import cast

    from crestcut.contact.clearance.sweep import sweep
    from crestcut.contact.stand.ground import contact_ground
    from crestcut.job.records import Travel

    for seed in range(5):
        rng = np.random.default_rng(seed)
        s = bent_scene(rng, Travel(line=(), wander=0.1, heading=0.03, ways=("forward", "turned")))
        walls, cpus = [], []
        for _ in range(3):
            wall, cpu = time.perf_counter(), time.process_time()
            sweep(s.vehicle, s.surface, s.ride)
            walls.append(time.perf_counter() - wall)
            cpus.append(time.process_time() - cpu)
        n = len(s.ride.batch.places)
        gaps = sweep(s.vehicle, s.surface, replace(s.ride, line=replace(s.ride.line, step=0.0))).pair_gap
        assert gaps is not None
        ground, worst, short = contact_ground(s.surface), 0.0, 0.0
        for pose in rng.choice(n, 12, replace=False):
            hit, low = cast(s, int(pose)), lowest_at(s, int(pose))
            both = np.isfinite(hit) & np.isfinite(low)
            worst = max(worst, float(np.abs(hit[both] - low[both]).max()))
            short = max(short, float(gaps[pose].min() - (hit - ground).min()))
        print(f"path {seed}: {n} stations")
        figure(f"{seed}: 1,000 stations", min(walls) / n * 1e3, "s", "less")
        figure(f"{seed}: 1,000 stations, processor time", min(cpus) / n * 1e3, "s", "less")
        figure(f"{seed}: heights off ray casting", worst * 1e3, "mm", "less")
        figure(f"{seed}: gap above ray casting's", max(short, 0) * 1e3, "mm", "less")


if __name__ == "__main__":
    main()
