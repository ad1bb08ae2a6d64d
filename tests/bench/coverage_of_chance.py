"""Simulated surfaces of known truth: does the 95 % interval of least clearance hold it? Prints data, figures
and seconds.

python tests/bench/coverage_of_chance.py [surfaces] [draws] [seed]

Surfaces are simulated on the grid (truth + a drawn error of white, patch and warp): what is tested is the
statistics of the chance. The fit of heights to points has its own bench; ``scan_to_verdict.py`` runs the
whole way.
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.assess import assess_chance
from crestcut.job.records import Wanted
from crestcut.terrain.records import ErrorModel
from scenes import STRAIGHT, belly, crest, scene, stand, vehicle
from simulated import judged_from

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "planted", "planted", "planted")
WITHIN = 0.002  # m, 1 sd of the vehicle's own clearance


def one(
    seed: int, half: float, draws: int, model: ErrorModel = MODEL
) -> tuple[float, float, float, float, float]:
    """Truth, gap as swept, best estimate and the 95 % interval's ends on one surface, m."""
    rng = np.random.default_rng(seed)
    car = vehicle(replace(belly(half=half), within=WITHIN))
    grade, angle = rng.uniform(0.06, 0.10), rng.uniform(0.0, 0.4)
    true = scene(crest(grade, angle), car=car, start=(-3.2, 0), end=(3.2, 0))
    surface = judged_from(true, seed, model, grade, angle)
    stood = stand(car, STRAIGHT, true.line, surface)
    chance = assess_chance(stood.passage, Wanted(), seed, draws)
    assert true.before.worst is not None and stood.before.worst is not None
    wrong = rng.normal(0.0, WITHIN)  # the vehicle's own clearance was measured this much wrong
    return (true.before.worst.gap + wrong, stood.before.worst.gap, chance.least_clearance, *chance.interval)


def said(truth: np.ndarray, naive: np.ndarray, best: np.ndarray, low: np.ndarray, high: np.ndarray) -> str:
    """Coverage, its own standard error, bias and width."""
    miss, held = best - truth, np.mean((low <= truth) & (truth <= high))
    return (
        f"held {held:.1%} (give or take {np.sqrt(held * (1 - held) / len(miss)):.1%}), "
        f"mean error {miss.mean() * 1e3:+.2f} mm = {miss.mean() / miss.std():+.2f} sd "
        f"(as swept {(naive - truth).mean() * 1e3:+.2f}), sd {miss.std() * 1e3:.2f} mm, "
        f"width {np.mean(high - low) / (2 * 1.96 * miss.std()):.2f} x ideal"
    )


def main() -> None:
    count, draws, first = (int(a) for a in (sys.argv[1:] + ["1000", "200", "0"][len(sys.argv) - 1 :]))
    print(
        "sharp crests 6 to 10 % a side, up to 23 degrees skew; "
        "white 0.7, patch 1.3, warp 4.3 mm at 0.35 m; vehicle 2 mm"
    )
    every = []
    for name, half in (("floor 1.3 m wide", 0.65), ("floor 0.5 m wide", 0.25)):
        start = time.perf_counter()
        # the two floors see different surfaces: together they are so many independent ones
        seeds = range(first + (0 if half > 0.5 else count), first + count // 2 + (0 if half > 0.5 else count))
        found = np.array([one(k, half, draws) for k in seeds])
        every.append(found)
        took = (time.perf_counter() - start) / len(found)
        print(f"{name}: {len(found)} surfaces, {draws} draws: {said(*found.T)}, {took:.2f} s each")
    print(f"both: {said(*np.concatenate(every).T)}")


if __name__ == "__main__":
    main()
