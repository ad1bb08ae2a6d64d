"""A made-up box car with three low boxes, seen from below with 5 mm noise: parts found and their clearances,
over ten seeds.

    python tests/bench/underside.py
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

import numpy as np

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "vehicle")]


def main() -> None:
    from test_underside import BOXES, box_car

    from crestcut.vehicle.underside import read_underside

    worst, found_all, start = 0.0, 0, time.perf_counter()
    for seed in range(10):
        found = read_underside(box_car(np.random.default_rng(seed)))
        heights = sorted(part.z[0] for part in found.parts)
        truth = sorted([0.16, *BOXES.values()])
        found_all += len(heights) == len(truth)
        if len(heights) == len(truth):
            worst = max(worst, float(np.abs(np.array(heights) - truth).max()))
    seconds = (time.perf_counter() - start) / 10
    print(
        f"all parts and no other in {found_all} of 10; clearances within {worst * 1e3:.2f} mm; {seconds:.1f} s each"
    )


if __name__ == "__main__":
    main()
