"""Simulated surfaces of known truth: does the 95 % interval of least clearance hold it? Prints data,
figures and seconds.

python tests/bench/coverage_of_chance.py [surfaces] [draws]
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.job.records import Wanted
from crestcut.surface.draws import draw_fields
from crestcut.surface.records import ErrorModel
from crestcut.travel.chance import assess_chance
from scenes import STRAIGHT, belly, crest, scene, stand, vehicle

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "planted", "planted", "planted")


def one(seed: int, half: float, draws: int) -> tuple[float, float, float, float]:
    """Truth, naive estimate, best estimate and spread on one surface, m."""
    rng = np.random.default_rng(seed)
    ground = crest(rng.uniform(0.06, 0.10), rng.uniform(0.0, 0.4))
    car = vehicle(replace(belly(half=half), within=0.002))
    true = scene(ground, car=car, start=(-3.2, 0), end=(3.2, 0))
    height = true.surface.height
    error = height.like(np.full(height.frame.shape, 0.0007))
    seen = height.like(height.values + next(draw_fields(MODEL, height.frame, error, seed + 10**6, 1, 0.05)))
    surface = replace(
        true.surface, height=seen, top=seen, standard_error=error, error=MODEL,
        points_used=int(3000 * height.values.size * 1e-4),
    )  # fmt: skip
    stood = stand(car, STRAIGHT, true.line, surface)
    chance = assess_chance(car, surface, stood.ride, stood.before, MODEL, Wanted(), seed, draws)
    assert true.before.worst is not None and stood.before.worst is not None
    wrong = rng.normal(0.0, 0.002)  # the vehicle's own clearance was measured this much wrong
    return true.before.worst.gap + wrong, stood.before.worst.gap, chance.least_clearance, chance.spread


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    draws = int(sys.argv[2]) if len(sys.argv) > 2 else 100
    print(
        "sharp crests 6 to 10 % a side, up to 23 degrees skew; white 0.7, patch 1.3, warp 4.3 mm at 0.35 m; vehicle 2 mm"
    )
    for name, half in (("floor 1.3 m wide", 0.65), ("floor 0.5 m wide", 0.25)):
        start = time.perf_counter()
        truth, naive, best, spread = np.array([one(k, half, draws) for k in range(count)]).T
        miss = best - truth
        print(
            f"{name}: {count} surfaces, {draws} draws: held {np.mean(np.abs(miss) < 1.96 * spread):.1%}, "
            f"mean error {miss.mean() * 1e3:+.2f} mm = {miss.mean() / miss.std():+.2f} sd "
            f"(uncorrected {(naive - truth).mean() * 1e3:+.2f}), sd {miss.std() * 1e3:.2f} mm, "
            f"width {spread.mean() / miss.std():.2f} x ideal, {(time.perf_counter() - start) / count:.2f} s each"
        )


if __name__ == "__main__":
    main()
