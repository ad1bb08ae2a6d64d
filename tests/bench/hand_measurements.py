"""What one felt gap, or an H of three strings, does to the interval of least clearance on simulated scans of
known truth, with the places of the measurements off by 20 mm; and the best that each could do (draws weighted
by how likely they make the readings). Prints data, figures and seconds.

python tests/bench/hand_measurements.py [surfaces] [draws] [cell in m]

Scans are simulated on the grid: a Matern-3/2 warp of 5 mm halving at 0.5 m, patch 1.3 mm, white 0.7 mm.
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.assess import assess_chance
from crestcut.chance.records import Cause
from crestcut.chance.witness import witness_evidence
from crestcut.contact.records import Passage
from crestcut.job.records import PlanPoint, Wanted, Witness
from crestcut.measure_next.draws import draw_readings
from crestcut.terrain.readings.records import Evidence
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, Scene, belly, crest, scanned_with, scene, stand, vehicle
from simulated import judged_from, seen_from
from strings_sim import PLACED, READ, at, feet_and_worst, h_read, off, plans_of

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "planted", "planted", "planted")
WITHIN, KNOWN = 0.002, 0.0003  # m: how well the part's height is known, usually and where it does not matter
BEST, TRUTHS, BEST_DRAWS = 4, 60, 6000  # of the best possible: surfaces, truths among draws


def felt(noisy: Scene, true: Scene, wrong: float, rng: np.random.Generator) -> Evidence:
    """The gap felt on the true slab with the vehicle some 20 mm from where it was meant to stand."""
    front = feet_and_worst(noisy)[0][:2].mean(axis=0)
    there = witness(true, off(front, rng))
    assert there is not None
    found = witness(noisy, front, there.readings[0].predicted + wrong + rng.normal(0.0, READ), PLACED)
    assert found is not None
    return found


def witness(s: Scene, front: np.ndarray, gap: float = 0.0, placed: float = 0.0) -> Evidence | None:
    said = Witness("belly", PlanPoint(*map(float, front)), "as measured", gap=gap, within=READ, placed=placed)
    return witness_evidence([said], s.vehicle, s.surface, s.line, (AS_MEASURED,), at)


def one(seed: int, half: float, draws: int, cell: float) -> list[float]:
    rng = np.random.default_rng(seed)
    car = vehicle(replace(belly(half=half), within=WITHIN))
    grade, angle = rng.uniform(0.06, 0.10), rng.uniform(0.0, 0.3)
    true = scene(crest(grade, angle), car=car, start=(-3.2, 0), end=(3.2, 0), cell=cell)
    noisy = stand(car, STRAIGHT, true.line, judged_from(true, seed, MODEL, grade, angle))
    assert true.before.worst is not None
    wrong, row = float(rng.normal(0.0, WITHIN)), []
    strings = h_read(noisy, true, half, rng)
    for within, each in ((WITHIN, (None, felt(noisy, true, wrong, rng), strings)), (KNOWN, (None, strings))):
        known = replace(noisy.passage, vehicle=vehicle(replace(belly(half=half), within=within)))
        truth = true.before.worst.gap + wrong * within / WITHIN
        for evidence in each:
            chance = assess_chance(known, Wanted(), seed, draws, evidence)
            against = Cause.CONTRADICTED in chance.causes
            row += [chance.least_clearance - truth, *np.subtract(chance.interval, truth), against]
    return row


def best_possible(seed: int, half: float) -> list[float]:
    """Narrowing where the part's height is exactly known, draws weighted by the likelihood of what was read
    (importance sampling): felt gap and H with places exactly known, and both with places 20 mm off. A linear
    gain would miss which half of the part decides."""
    rng = np.random.default_rng(seed)
    car = vehicle(replace(belly(half=half), within=1e-6))
    ground = crest(rng.uniform(0.06, 0.10), rng.uniform(0.0, 0.3))
    true = scene(ground, car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
    surface = replace(seen_from(true, seed, MODEL), height=true.surface.height, top=true.surface.height)
    true = replace(true, surface=surface)
    passage, plans = Passage(car, surface, true.ride, true.before), plans_of(true, half)
    drawn = draw_readings(scanned_with(passage, MODEL), plans, None, seed, BEST_DRAWS)
    assert drawn is not None
    out = []
    gap, strings = drawn.gaps[:1], np.vstack([drawn.strings[:2], drawn.halves])
    placed = (felt(true, true, 0.0, rng).noise, h_read(true, true, half, rng).noise)
    exact = tuple(READ**2 * np.eye(n) for n in (1, 4))
    for read, noise in zip((gap, strings) * 2, (*exact, *placed), strict=True):
        spread, root, inverse = [], np.linalg.cholesky(noise), np.linalg.inv(noise)
        for k in range(TRUTHS):
            away = read[:, TRUTHS:] - (read[:, k] + root @ rng.normal(size=len(read)))[:, None]
            weight = np.exp(-(away * (inverse @ away)).sum(axis=0) / 2)
            if weight.sum() ** 2 < 8 * (weight**2).sum():
                continue  # too few draws are like this truth
            weight /= weight.sum()
            mean = weight @ drawn.least[TRUTHS:]
            few = 1 - (weight**2).sum()
            spread.append(np.sqrt(weight @ (drawn.least[TRUTHS:] - mean) ** 2 / few))
        out.append(float(drawn.least.std() / np.mean(spread)))
    return out


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 120
    draws = int(sys.argv[2]) if len(sys.argv) > 2 else 200
    cell = float(sys.argv[3]) if len(sys.argv) > 3 else 0.01
    print(f"sharp crests 6 to 10 % a side, up to 17 degrees skew, {cell * 1e3:.0f} mm cells; readings 1 mm")
    for half in (0.65, 0.25):
        start = time.process_time()
        best = np.mean([best_possible(seed, half) for seed in range(BEST)], axis=0)
        print(
            f"floor {2 * half:.1f} m wide; best possible, the vehicle exactly known: felt gap {best[0]:.2f}, "
            f"H {best[1]:.2f} x narrower; places off by 20 mm: {best[2]:.2f}, {best[3]:.2f}",
            flush=True,
        )
        if not count:
            continue
        found = np.array([one(k, half, draws, cell) for k in range(count)], dtype=float)
        took = (time.process_time() - start) / count
        print(f"{count} surfaces, {draws} draws, places off by 20 mm, {took:.2f} s each")
        names = ("2 mm: scan alone", "2 mm: one felt gap", "2 mm: H", "0.3 mm: scan alone", "0.3 mm: H")
        for k, name in enumerate(names):
            miss, low, high, against = found[:, 4 * k : 4 * k + 4].T
            alone = found[:, 4 * (3 * (k > 2)) + 1 : 4 * (3 * (k > 2)) + 3]
            plain = np.mean(alone[:, 1] - alone[:, 0])
            print(
                f"  vehicle known to {name}: {plain / np.mean(high - low):.2f} x narrower, "
                f"held {np.mean((low <= 0) & (high >= 0)):.1%}, "
                f"mean error {miss.mean() * 1e3:+.2f} mm, sd {miss.std() * 1e3:.2f} mm, "
                f"half width {np.mean(high - low) * 500:.2f} mm, contradicted {against.mean():.1%}",
                flush=True,
            )


if __name__ == "__main__":
    main()
