"""A made-up box car with three low boxes, seen from below with 5 mm noise: parts found and their clearances,
over ten seeds; as a mesh, as a cloud, and as a cloud with the runways of a pit in view.

    python tests/bench/underside.py
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

import numpy as np
from history import figure

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "vehicle")]
SEEDS = 10


def main() -> None:
    from test_underside import BOXES, FLOOR, box_car, runways
    from test_underside_file import CAR, mesh_car

    from crestcut.vehicle.from_scan.underside import read_underside
    from crestcut.vehicle.load import load_vehicle
    from crestcut.vehicle.records import Part

    def by_mesh(seed: int) -> tuple[Part, ...]:
        with tempfile.TemporaryDirectory() as folder:
            mesh_car(np.random.default_rng(seed)).export(Path(folder) / "under.ply")
            path = Path(folder) / "car.toml"
            path.write_text(CAR, encoding="utf-8")
            return load_vehicle(path).parts

    def by_cloud(seed: int) -> tuple[Part, ...]:
        return read_underside(box_car(np.random.default_rng(seed))).parts

    def on_runways(seed: int) -> tuple[Part, ...]:
        rng = np.random.default_rng(seed)
        return read_underside(np.concatenate([box_car(rng), runways(rng)])).parts

    truth = np.sort([FLOOR] * 3 + list(BOXES.values()))  # belly, nose, tail and the boxes
    for words, read in (("mesh", by_mesh), ("cloud", by_cloud), ("cloud with runways", on_runways)):
        worst, whole, start = 0.0, 0, time.process_time()
        for seed in range(SEEDS):
            heights = np.sort([min(part.z) for part in read(seed)])
            if len(heights) == len(truth):
                whole += 1
                worst = max(worst, float(np.abs(heights - truth).max()))
        seconds = (time.process_time() - start) / SEEDS
        figure(f"{words}: all parts and no other, of {SEEDS}", whole, "", "more")
        figure(f"{words}: clearances within", worst * 1e3, "mm", "less")
        figure(f"{words}: processor time", seconds, "s", "less")


if __name__ == "__main__":
    main()
