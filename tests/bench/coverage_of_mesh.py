"""Meshes as an app exports them, of walks over the courtyard: does the 95 % interval of least clearance hold
the gap over the slab itself? Prints data, figures and seconds.

python tests/bench/coverage_of_mesh.py [walks] [first seed]

Each walk has its own noise, patch and warp (``sample_scans/walk.py``), is tidied to 60 mm triangles
(``sample_scans/make.py``) and read back with nothing said of it. About 16 seconds a walk.
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[1] / "chance"))
sys.path.insert(0, str(Path(__file__).parents[2] / "sample_scans"))
import make
from test_chance_mesh import LINES, said, true_gap
from walk import walk

from crestcut.job.records import ScanChoice
from crestcut.scan.load import read_scan


def main() -> None:
    count, first = (int(a) for a in (sys.argv[1:] + ["12", "101"][len(sys.argv) - 1 :]))
    rows, start = [], time.perf_counter()
    truths = [true_gap(ends) for ends in LINES]
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "walk.glb"
        for seed in range(first, first + count):
            make.write_mesh(walk(seed, make.RAYS), path)
            scan = read_scan(ScanChoice((path,)))
            for ends, truth in zip(LINES, truths, strict=True):
                swept, _, chance = said(scan, ends)
                assert swept.worst is not None
                rows.append((truth, swept.worst.gap, chance.least_clearance, *chance.interval))
    truth, naive, best, low, high = np.array(rows).T
    miss, per = best - truth, (time.perf_counter() - start) / count
    print(f"{count} walks, two lines each, 60 mm triangles: noise 6, patch 1.5, warp 5 mm at 0.4 m")
    figure(f"held of {len(rows)}", int(((low <= truth) & (truth <= high)).sum()), "", "more")
    figure("mean error", float(miss.mean()) * 1e3, "mm")
    figure("mean error as swept", float((naive - truth).mean()) * 1e3, "mm")
    figure("error, sd", float(miss.std()) * 1e3, "mm", "less")
    figure("width over the ideal", float(np.mean(high - low) / (2 * 1.96 * miss.std())), "", "less")
    figure("a walk", per, "s", "less")


if __name__ == "__main__":
    main()
