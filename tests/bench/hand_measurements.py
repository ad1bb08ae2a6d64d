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
from crestcut.grid import HeightGrid
from crestcut.job.records import PlanPoint, Point, StringReading, Wanted, Witness
from crestcut.surface.evidence import gather_evidence
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import ErrorModel
from crestcut.travel.advice_draws import draw_readings
from crestcut.travel.advice_strings import StringPlan, crossbar, h_of_strings
from crestcut.travel.chance import assess_chance
from crestcut.travel.chance_witness import witness_evidence
from crestcut.travel.records import Passage
from crestcut.travel.ride import wheel_feet
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, TRACK, Scene, belly, crest, scene, stand, vehicle
from simulated import seen_from

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "planted", "planted", "planted")
WITHIN, KNOWN = 0.002, 0.0003  # m: how well the part's height is known, usually and where it does not matter
READ, PLACED = 0.001, 0.020  # m: reading and places
BEST, TRUTHS, BEST_DRAWS = 4, 60, 6000  # of the best possible: surfaces, truths among draws


def at(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def off(xy: np.ndarray, rng: np.random.Generator) -> np.ndarray:
    return np.asarray(xy + rng.normal(0.0, PLACED, 2))


def feet_and_worst(s: Scene) -> tuple[np.ndarray, np.ndarray]:
    """Site x, y of the wheels at the worst pose (4, 2), and of the worst point, m."""
    worst = s.before.worst
    assert worst is not None
    pose = int(np.searchsorted(s.ride.batch.variant, worst.pose[0])) + worst.pose[1]
    places = s.ride.batch.places[pose : pose + 1]
    return s.surface.height.frame.to_site(wheel_feet(s.vehicle, places)[0]), np.array(worst.xy)


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


def plans_of(s: Scene, half: float) -> list[StringPlan]:
    """The H as the sheet prescribes it."""
    feet, worst = feet_and_worst(s)
    bar = crossbar(s.surface, feet, worst, (-half, half), TRACK)
    assert bar is not None
    return h_of_strings(s.surface, feet, bar)


def h_read(noisy: Scene, true: Scene, half: float, rng: np.random.Generator) -> Evidence:
    """The three strings stretched on the true slab, every chalk mark and block some 20 mm from its place."""
    plans, height = plans_of(noisy, half), true.surface.height
    right, left = (off(xy, rng) for xy in plans[2].points[:2])
    strings = []
    for plan, mark in zip(plans[:2], (left, right), strict=True):
        a, b = (off(xy, rng) for xy in plan.points[:2])
        share = float((mark - a) @ (b - a) / ((b - a) @ (b - a)))
        down = float(np.array([1 - share, share, -1.0]) @ height.sample(np.array([a, b, mark])))
        strings.append(string(plan, down + plan.blocks + rng.normal(0.0, READ)))
    for ends in plans[2].least:
        down = least_down(height, right, left, ends) + plans[2].blocks + rng.normal(0.0, READ)
        strings.append(string(plans[2], down, ends))
    found = gather_evidence(strings, [], noisy.surface, at)
    assert found is not None
    return found


def string(plan: StringPlan, down: float, ends: tuple[float, float] | None = None) -> StringReading:
    a, b, mark = plan.points
    length = float(np.hypot(*(b - a)))
    place = float(np.hypot(*(mark - a))) if ends is None else None
    between = None if ends is None else (ends[0] * length, ends[1] * length)
    points = PlanPoint(*map(float, a)), PlanPoint(*map(float, b))
    return StringReading(*points, place, plan.blocks, down, READ, PLACED, between)


def least_down(height: HeightGrid, a: np.ndarray, b: np.ndarray, ends: tuple[float, float]) -> float:
    s = np.linspace(*ends, 400)
    high = height.sample(np.array([a, b]))
    return float(np.min(high[0] * (1 - s) + high[1] * s - height.sample(a + s[:, None] * (b - a))))


def one(seed: int, half: float, draws: int, cell: float) -> list[float]:
    rng = np.random.default_rng(seed)
    car = vehicle(replace(belly(half=half), within=WITHIN))
    ground = crest(rng.uniform(0.06, 0.10), rng.uniform(0.0, 0.3))
    true = scene(ground, car=car, start=(-3.2, 0), end=(3.2, 0), cell=cell)
    noisy = stand(car, STRAIGHT, true.line, seen_from(true, seed, MODEL))
    assert true.before.worst is not None
    wrong, row = float(rng.normal(0.0, WITHIN)), []
    strings = h_read(noisy, true, half, rng)
    for within, each in ((WITHIN, (None, felt(noisy, true, wrong, rng), strings)), (KNOWN, (None, strings))):
        known = replace(noisy.passage, vehicle=vehicle(replace(belly(half=half), within=within)))
        truth = true.before.worst.gap + wrong * within / WITHIN
        for evidence in each:
            chance = assess_chance(known, MODEL, Wanted(), seed, draws, evidence)
            against = any("contradicts" in r for r in chance.reasons)
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
    drawn = draw_readings(passage, MODEL, plans, None, seed, BEST_DRAWS)
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
