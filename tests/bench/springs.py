"""How long a ride takes on springs with limits, and how far it stands from a general minimiser.

python tests/bench/springs.py
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

import numpy as np
from history import figure

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "contact")]


def main() -> None:
    from test_springs import by_kernel, by_minimiser, random_springs, random_stand, rough

    from crestcut.contact.stand.ground import ridden_ground
    from crestcut.contact.stand.ride import settle_batch
    from scenes import L, scene, vehicle

    rng = np.random.default_rng(4)
    worst, agree, hang = 0.0, 0, 0
    for _ in range(200):
        car, ground = random_springs(rng), rng.normal(0, 0.07, 4)
        pitch, roll = rng.uniform(-0.15, 0.15), rng.uniform(-0.06, 0.06)
        ours, twin = by_kernel(car, ground, pitch, roll)[0], by_minimiser(car, ground, pitch, roll)
        worst = max(worst, float(np.abs(ours - twin).max()))
        up, twin_up = ours[:4] - ground > 1e-4, twin[:4] - ground > 1e-4
        agree, hang = agree + int((up == twin_up).all()), hang + int(up.any())
    print(f"200 random cars and grounds: hanging wheels the same in {agree}, {hang} hang one")
    figure("heights off the minimiser", worst * 1e3, "mm", "less")
    stood = [random_stand(rng) for _ in range(200)]
    print(
        f"200 whole rides, cars and carts on random grounds under random loads: "
        f"hanging wheels the same in {sum(same for _, same, _ in stood)}, "
        f"{sum(hangs for _, _, hangs in stood)} hang one"
    )
    figure("heights off, whole rides", max(off for off, _, _ in stood) * 1e3, "mm", "less")
    ground = rough(rng)
    cart = vehicle(rigid=True, centre_of_mass=(L / 2 - 0.2, 0.1, 0.4))
    for name, car in (
        ("closed form", vehicle()),
        ("springs with stops", random_springs(rng)),
        ("rigid cart", cart),
    ):
        s = scene(ground, car, start=(-5, 0), end=(8, 0.3))
        args = (car, ridden_ground(s.surface)[0], 0.01, s.ride.batch.places, s.ride.batch.variant)
        settle_batch(*args)
        seconds = []
        for _ in range(5):
            start = time.process_time()
            settle_batch(*args)
            seconds.append(time.process_time() - start)
        n = len(s.ride.batch.places)
        figure(f"{name}, 1,000 stations", min(seconds) * 1e6 / n, "ms", "less")


if __name__ == "__main__":
    main()
