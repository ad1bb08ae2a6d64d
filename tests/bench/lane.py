"""A long lane: what a job of it costs, and where time and memory go. Run: python tests/bench/lane.py
[metres, 60 unless said]

Data: the sample's slab carried on beyond its end, with a second crest at two thirds of the lane, seeded:
3,000 points a square metre with a phone's noise, patches and warp; LAZ, made into a folder that is taken away
at the end. Job: the sample's, driven from end to end. Figures: processor seconds and peak memory of the run
from the command line, warm (it runs once before), and seconds of its stages. Accuracy: the least gap and its
interval. Wanted of 60 m: 25 s, 0.7 GB.
"""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
from history import figure

HERE = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(HERE / "sample_scans"))
JOB = HERE / "configs/jobs/courtyard_apron.toml"
DENSITY = 3000.0  # points per m2, as the sample's walk leaves beside its path
WIDE = (0.35, 3.65)  # m: y of the lane
STAYS = 12.0  # m: from there on the courtyard's slab is carried on level
NOISE, SECOND = 0.006, 0.14  # m, 1 sd of a point; fold of the second crest


def slab(x: np.ndarray, y: np.ndarray, length: float) -> np.ndarray:
    """Height of the lane, m: the courtyard's to 10 m, then at its grade there; a crest at two thirds."""
    import courtyard

    end = courtyard.FALL - 0.6
    z = courtyard.slab(np.minimum(x, end), y)
    beyond = np.maximum(x - end, 0.0)
    middle = 2 * length / 3 - end
    v = beyond - middle
    # up by half the fold before the middle, down by half after it, 40 mm wide, level again 3 m away
    ramp = SECOND / 2 * (3.0 - np.sqrt(np.minimum(np.abs(v), 3.0) ** 2 + 0.04**2))
    return z + courtyard.YARD_GRADE * beyond + np.where(beyond > 0, ramp, 0.0)


def lane_laz(path: Path, length: float, seed: int = 0) -> None:
    """The lane scanned by phone: ``length`` m from the foot of the apron."""
    import laspy
    from walk import PATCH, PATCH_HALF, WARP, WARP_HALF, Field

    rng = np.random.default_rng(seed)
    x0, x1 = 0.2, length + 1.0
    n = round(DENSITY * (x1 - x0) * (WIDE[1] - WIDE[0]))
    x, y = np.sort(rng.uniform(x0, x1, n)), rng.uniform(*WIDE, n)
    warp, patch = Field(rng, WARP_HALF), Field(rng, PATCH_HALF)
    at = np.mod(x, 30.0)  # of the raster that a field has
    z = slab(x, y, length) + WARP * warp(at, y) + PATCH * patch(at, y) + rng.normal(0, NOISE, n)
    header = laspy.LasHeader(point_format=3, version="1.2")
    header.scales, header.offsets, header.creation_date = np.full(3, 1e-4), np.zeros(3), None
    scan = laspy.LasData(header)
    scan.x, scan.y, scan.z = x, y, z
    scan.gps_time = x / 0.42
    scan.red = scan.green = scan.blue = np.full(n, 120 * 257, np.uint16)
    scan.write(path)


def lane_job(folder: Path, length: float) -> Path:
    """The sample's job along the lane, in ``folder``."""
    text = JOB.read_text().replace("../../sample_scans/apron.laz", "lane.laz")
    text = text.replace("../vehicles", str(HERE / "configs/vehicles"))
    text = re.sub(r"line = .*", f"line = [[1.6, 2.0], [{length:g}, 2.0]]", text)
    path = folder / "lane.toml"
    path.write_text(text)
    return path


RUN = """
import resource, sys
from crestcut.apps.cli import main
try:
    main(["run", sys.argv[1], "--out", sys.argv[2]], standalone_mode=False)
except SystemExit:
    pass
used = resource.getrusage(resource.RUSAGE_SELF)
kin = resource.getrusage(resource.RUSAGE_CHILDREN)
print("USED", used.ru_utime + used.ru_stime + kin.ru_utime + kin.ru_stime, used.ru_maxrss / 1e6)
"""


def main(length: float, folder: Path) -> None:
    start = time.process_time()
    lane_laz(folder / "lane.laz", length)
    figure("the lane made", time.process_time() - start, "s")
    job = lane_job(folder, length)
    for times in range(2):
        out = folder / f"out{times}"
        command = [sys.executable, "-c", RUN, str(job), str(out)]
        done = subprocess.run(command, capture_output=True, text=True, env=dict(os.environ))
        if "USED" not in done.stdout:
            sys.exit(done.stderr)
    seconds, peak = map(float, done.stdout.split("USED")[1].split())
    result = json.loads((out / "result.json").read_text())
    figure(f"lane of {length:g} m, processor time", seconds, "s", "less")
    figure(f"lane of {length:g} m, memory", peak, "GB", "less")
    for name, value in result["seconds"].items():
        figure(f"stage {name}", value, "s", "less")
    before = result["before"]
    low, high = before["interval"]
    figure("least gap", before["least_clearance"] * 1e3, "mm")
    figure("interval, low end", low * 1e3, "mm")
    figure("interval, high end", high * 1e3, "mm")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as made:
        main(float(sys.argv[1]) if len(sys.argv) > 1 else 60.0, Path(made))
