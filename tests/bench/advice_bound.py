"""How near to the best possible does the advice come? Every hand measurement is a linear sum of Gaussian
errors, so the best of a dense library of strings (and the felt gap itself) can be computed. Prints figures.

python tests/bench/advice_bound.py [surfaces] [strings in the library]
"""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.active_contacts import wheel_weights
from crestcut.contact.stand.ride import wheel_feet
from crestcut.measure_next.advice import string_plans
from crestcut.measure_next.draws import READ
from crestcut.terrain.error.covariance import between
from crestcut.terrain.records import ErrorModel
from scenes import L, Scene, belly, crest, scene, vehicle

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "planted", "planted", "planted")
REACH = (1.9, 0.9)  # m from the worst pose's middle, along and across: where ends of strings are tried
SWAPS = 3


def library(
    middle: np.ndarray, own: list[np.ndarray], count: int, rng: np.random.Generator
) -> tuple[np.ndarray, np.ndarray]:
    """Strings anywhere about the vehicle, read anywhere, and as many near those advised: points (n, 3, 2) and
    weights (n, 3)."""
    ends = middle + rng.uniform(-1, 1, (count, 2, 2)) * REACH
    share = rng.uniform(0.05, 0.95, count)
    near = np.array(own)[rng.integers(len(own), size=count)]
    length = np.hypot(*(near[:, 1] - near[:, 0]).T)
    near_share = np.hypot(*(near[:, 2] - near[:, 0]).T) / length + rng.normal(0, 0.04, count)
    shake = rng.choice([0.0, 0.05, 0.2], (count, 1, 1))
    ends = np.concatenate([ends, near[:, :2] + rng.normal(0, 1, (count, 2, 2)) * shake])
    share = np.clip(np.concatenate([share, near_share]), 0.03, 0.97)
    at = ends[:, 0] + share[:, None] * (ends[:, 1] - ends[:, 0])
    points = np.concatenate([ends, at[:, None]], axis=1)
    weights = np.stack([1 - share, share, -np.ones(len(share))], axis=1)
    long = np.hypot(*(ends[:, 1] - ends[:, 0]).T) > 0.4
    return points[long], weights[long]


def covariance_of(points: list[np.ndarray], weights: list[np.ndarray]) -> np.ndarray:
    """(n, n) of weighted sums of the error, m2."""
    every, rows = np.concatenate(points), np.zeros((len(points), sum(map(len, points))))
    at = 0
    for i, w in enumerate(weights):
        rows[i, at : at + len(w)] = w
        at += len(w)
    return rows @ between(MODEL, every, every) @ rows.T


def share_of(points: np.ndarray) -> float:
    """Where along a string it is read."""
    return float(np.hypot(*(points[2] - points[0])) / np.hypot(*(points[1] - points[0])))


def left(covariance: np.ndarray, chosen: list[int]) -> float:
    own = covariance[np.ix_(chosen, chosen)] + READ**2 * np.eye(len(chosen))
    cross = covariance[0, chosen]
    return float(covariance[0, 0] - cross @ np.linalg.solve(own, cross))


def best_of(covariance: np.ndarray, size: int, start: list[int]) -> float:
    """Narrowing by the best set of a size: chosen one by one, and from ``start``, each then swapped for any
    other as long as that is better."""
    greedy: list[int] = []
    for _ in range(size):
        free = (i for i in range(1, len(covariance)) if i not in greedy)
        greedy.append(min(free, key=lambda i: left(covariance, [*greedy, i])))
    least = np.inf
    for chosen in (greedy, list(start)):
        for _ in range(SWAPS if size > 1 else 1):
            for k in range(size):
                rest = chosen[:k] + chosen[k + 1 :]
                free = (i for i in range(1, len(covariance)) if i not in rest)
                chosen[k] = min(free, key=lambda i: left(covariance, [*rest, i]))
        least = min(least, left(covariance, chosen))
    return float(np.sqrt(covariance[0, 0] / least))


def feet_and_worst(s: Scene) -> tuple[np.ndarray, np.ndarray]:
    """Site x, y of the wheels at the worst pose (4, 2), and of the worst point, m."""
    worst = s.before.worst
    assert worst is not None
    pose = int(np.searchsorted(s.ride.batch.variant, worst.pose[0])) + worst.pose[1]
    places = s.ride.batch.places[pose : pose + 1]
    return s.surface.height.frame.to_site(wheel_feet(s.vehicle, places)[0]), np.array(worst.xy)


def narrowed(covariance: np.ndarray, chosen: list[int]) -> float:
    return float(np.sqrt(covariance[0, 0] / left(covariance, chosen)))


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 6
    strings = int(sys.argv[2]) if len(sys.argv) > 2 else 1000
    print("warp 5 mm at 0.5 m, patch 1.3 mm, readings 1 mm; the vehicle's own height known (0.1 mm)")
    print("to first order at the worst place; what it does to the verdict: see hand_measurements.py")
    rows = []
    for seed in range(count):
        rng = np.random.default_rng(seed)
        car = vehicle(replace(belly(half=rng.uniform(0.2, 0.65)), within=0.0001))
        ground = crest(rng.uniform(0.06, 0.1), rng.uniform(0, 0.3))
        s = scene(ground, car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
        feet, worst = feet_and_worst(s)
        middle = feet.mean(axis=0)
        x, y = worst - middle + np.array([L / 2, 0.0])
        target = np.append(wheel_weights(car, np.array([x]), np.array([y]), np.array([0]))[0], -1.0)
        near = [p.points for p in string_plans(s.passage)]
        assert len(near) == 4
        points, weights = library(middle, near, strings, rng)
        exact = [np.array([1 - f, f, -1.0]) for f in (share_of(p) for p in near)]
        covariance = covariance_of([np.vstack([feet, worst]), *near, *points], [target, *exact, *weights])
        gap = narrowed(np.tile(covariance[:1, :1], (2, 2)), [1])
        rows.append((
            gap, narrowed(covariance, [1]), best_of(covariance, 1, [1]),
            narrowed(covariance, [2, 3, 4]), best_of(covariance, 3, [2, 3, 4]),
        ))  # fmt: skip
        said = rows[-1]
        print(
            f"surface {seed}: felt gap {said[0]:.2f}; one string lengthways {said[1]:.2f} of {said[2]:.2f}; "
            f"H {said[3]:.2f} of {said[4]:.2f} with any three strings"
        )
    mean = np.mean(rows, axis=0)
    for name, value in zip(
        ("felt gap", "one string", "best string", "H", "best three strings"), mean, strict=True
    ):
        figure(f"mean narrowing, {name}", float(value), "", "more")


if __name__ == "__main__":
    main()
