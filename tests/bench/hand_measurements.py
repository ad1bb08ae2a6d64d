"""What one felt gap, or an H of three strings, does to the interval of least clearance on simulated scans of
known truth, with the places of the measurements off by 20 mm. Prints data, figures and seconds.

python tests/bench/hand_measurements.py [surfaces] [draws]

Scans are simulated on the grid: a Matern-3/2 warp of 5 mm halving at 0.5 m, patch 1.3 mm, white 0.7 mm.
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.grid import HeightGrid
from crestcut.job.records import PlanPoint, Point, StringReading, Wanted, Witness
from crestcut.surface.evidence import gather_evidence
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import ErrorModel
from crestcut.travel.advice import measure_first
from crestcut.travel.chance import assess_chance
from crestcut.travel.chance_witness import witness_evidence
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, Scene, belly, crest, scene, stand, vehicle
from simulated import seen_from

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "planted", "planted", "planted")
WITHIN, READ, PLACED, BLOCKS = 0.002, 0.001, 0.020, 0.18  # m: vehicle, reading, places, blocks under a string


def at(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def feet_of(noisy: Scene) -> np.ndarray:
    """Site x, y of the wheels at the worst pose, (4, 2), and of the worst point, one row more."""
    first = measure_first(noisy.vehicle, noisy.surface, noisy.ride, noisy.before, MODEL)[0]
    assert first.kind == "felt gap"
    return np.array(first.where)


def felt(noisy: Scene, true: Scene, wrong: float, rng: np.random.Generator) -> Evidence:
    """The gap felt on the true slab with the vehicle some 20 mm from where it was meant to stand."""
    front = feet_of(noisy)[:2].mean(axis=0)
    stood = front + rng.normal(0.0, PLACED, 2)
    there = witness(true, stood)
    assert there is not None
    gap = there.readings[0].predicted + wrong + rng.normal(0.0, READ)
    found = witness(noisy, front, gap, PLACED)
    assert found is not None
    return found


def witness(s: Scene, front: np.ndarray, gap: float = 0.0, placed: float = 0.0) -> Evidence | None:
    said = Witness("belly", PlanPoint(*map(float, front)), "as measured", gap=gap, within=READ, placed=placed)
    return witness_evidence([said], s.vehicle, s.surface, s.line, (AS_MEASURED,), at)


def h_of_strings(noisy: Scene, true: Scene, rng: np.random.Generator) -> Evidence:
    """Both wheel tracks and one across between them, each end some 20 mm off."""
    feet = feet_of(noisy)
    share = (feet[4, 0] - feet[2, 0]) / (feet[0, 0] - feet[2, 0])
    left, right = (feet[r] + share * (feet[f] - feet[r]) for f, r in ((0, 2), (1, 3)))
    strings = []
    for a, b, where in ((feet[2], feet[0], share), (feet[3], feet[1], share), (right, left, None)):
        a0, b0 = a + rng.normal(0, PLACED, 2), b + rng.normal(0, PLACED, 2)
        length = float(np.hypot(*(b - a)))
        place = None if where is None else float(where * length)
        down = string_down(
            true.surface.height, a0, b0, None if where is None else where + rng.normal(0, PLACED) / length
        )
        ends = PlanPoint(*map(float, a)), PlanPoint(*map(float, b))
        strings.append(StringReading(*ends, place, BLOCKS, down + rng.normal(0.0, READ), READ, PLACED))
    found = gather_evidence(strings, [], noisy.surface, at)
    assert found is not None
    return found


def string_down(height: HeightGrid, a: np.ndarray, b: np.ndarray, share: float | None) -> float:
    """From a straight string on blocks down to the true slab, m: at a place, or the least."""
    s = np.linspace(0.02, 0.98, 400) if share is None else np.array([share])
    ends = height.sample(np.array([a, b]))
    return float(np.min(ends[0] * (1 - s) + ends[1] * s + BLOCKS - height.sample(a + s[:, None] * (b - a))))


def one(seed: int, half: float, draws: int) -> list[float]:
    rng = np.random.default_rng(seed)
    car = vehicle(replace(belly(half=half), within=WITHIN))
    true = scene(
        crest(rng.uniform(0.06, 0.10), rng.uniform(0.0, 0.3)), car=car, start=(-3.2, 0), end=(3.2, 0)
    )
    surface = seen_from(true, seed, MODEL)
    noisy = stand(car, STRAIGHT, true.line, surface)
    assert true.before.worst is not None
    wrong = float(rng.normal(0.0, WITHIN))
    truth, row = true.before.worst.gap + wrong, []
    for evidence in (None, felt(noisy, true, wrong, rng), h_of_strings(noisy, true, rng)):
        chance = assess_chance(noisy.passage, MODEL, Wanted(), seed, draws, evidence)
        row += [
            chance.least_clearance - truth,
            *np.subtract(chance.interval, truth),
            any("contradicts" in r for r in chance.reasons),
        ]
    return row


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 300
    draws = int(sys.argv[2]) if len(sys.argv) > 2 else 200
    print("sharp crests 6 to 10 % a side, up to 17 degrees skew; vehicle 2 mm, readings 1 mm, places 20 mm")
    for half in (0.65, 0.25):
        start = time.perf_counter()
        found = np.array([one(k, half, draws) for k in range(count)], dtype=float)
        plain = np.mean(found[:, 2] - found[:, 1])
        took = (time.perf_counter() - start) / count
        print(f"floor {2 * half:.1f} m wide, {count} surfaces, {draws} draws, {took:.2f} s each")
        for k, name in enumerate(("scan alone", "one felt gap", "H of three strings")):
            miss, low, high, against = found[:, 4 * k : 4 * k + 4].T
            print(
                f"  {name}: {plain / np.mean(high - low):.2f} x narrower, "
                f"held {np.mean((low <= 0) & (high >= 0)):.1%}, "
                f"mean error {miss.mean() * 1e3:+.2f} mm, sd {miss.std() * 1e3:.2f} mm, "
                f"half width {np.mean(high - low) * 500:.2f} mm, contradicted {against.mean():.1%}"
            )


if __name__ == "__main__":
    main()
