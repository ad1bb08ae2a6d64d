"""The sweep along bent lines: time, and its difference from ray casting.

python tests/bench/bends.py
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

import numpy as np

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "travel")]


def main() -> None:
    from test_path import bent_scene, lowest_at
    from test_sweep_twin import cast

    from crestcut.job.records import Travel
    from crestcut.travel.ride import contact_ground
    from crestcut.travel.sweep import sweep

    for seed in range(5):
        rng = np.random.default_rng(seed)
        s = bent_scene(rng, Travel(line=(), wander=0.1, heading=0.03, ways=("forward", "turned")))
        start = time.perf_counter()
        sweep(s.vehicle, s.surface, s.ride)
        seconds, n = time.perf_counter() - start, len(s.ride.batch.places)
        ground, worst = contact_ground(s.surface), 0.0
        for pose in rng.choice(n, 8, replace=False):
            hit, low = cast(s, int(pose)), lowest_at(s, int(pose))
            both = np.isfinite(hit) & np.isfinite(low)
            worst = max(worst, abs(float((hit - ground)[both].min() - (low - ground)[both].min())))
        print(
            f"path {seed}: {n} stations, {seconds / n * 1e3:.3f} s per 1,000, least gap within {worst * 1e3:.4f} mm of ray casting"
        )


if __name__ == "__main__":
    main()
