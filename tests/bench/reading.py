"""Reading scans that are far larger than what a job needs of them. Run: python tests/bench/reading.py
[millions of points, 20 unless said]

Data: the sample's slab, seeded: once as a small part of a site of 110 x 110 m, once with all points on it;
LAZ, made into a folder that is taken away at the end. Figures: processor seconds up to the surface, and peak
memory of the largest process, for the sample job's window and for `look`, against reading the file with laspy
in chunks in the same run. Wanted up to the surface: 2 times laspy and 10 s; 0.8 GB for 20 million points,
1.5 GB for 200.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from history import figure

HERE = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(HERE / "sample_scans"))
SITE = (-50.0, 60.0, -50.0, 60.0)  # m: x and y of the large scene
AT_ONCE = 1_000_000  # points made at a time
JOB = HERE / "configs/jobs/courtyard_apron.toml"

LASPY = """
import sys, laspy
with laspy.open(sys.argv[1]) as reader:
    print(sum(len(some.x) for some in reader.chunk_iterator(1_000_000)))
"""
# the process's own peak, kB, and that of its children
PEAK = """
import re, resource
from pathlib import Path
own = int(re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text())[1])
print(max(own, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss))
"""
SURFACE = (
    """
import sys
from dataclasses import replace
from pathlib import Path
from crestcut.job import load_job
from crestcut.scan import read_scan
from crestcut.standing import common_window, drivers_of, lines_of, points_needed
from crestcut.terrain import build_surface
job = load_job(Path(sys.argv[1]))
drivers = drivers_of(job)
choice = replace(job.scan, files=(Path(sys.argv[2]),))
scan = read_scan(choice, None, points_needed(drivers, job, None))
lines = lines_of(drivers, job, scan.frame, None)
surface = build_surface(scan, common_window(drivers, lines, job), choice.scanner, settings=job.settings)
print(len(scan.points))
"""
    + PEAK
)
LOOK = (
    """
import sys
from crestcut.apps.cli import main
main(["look", sys.argv[1], "--out", sys.argv[2]], standalone_mode=False)
"""
    + PEAK
)


def large_laz(path: Path, count: int, over: tuple[float, float, float, float] | None, seed: int = 0) -> None:
    """A scan of ``count`` points of the courtyard's slab, carried on level beyond it: over x and y of
    ``over``, m, or of the slab alone; in stripes along x, as a scanner on a vehicle leaves them."""
    import courtyard
    import laspy

    rng = np.random.default_rng(seed)
    x0, x1, y0, y1 = over or (*courtyard.X, *courtyard.SLAB_Y)
    header = laspy.LasHeader(point_format=3, version="1.2")
    header.scales, header.offsets = np.full(3, 1e-4), np.zeros(3)
    header.creation_date = None
    with laspy.open(path, mode="w", header=header) as writer:
        for first in range(0, count, AT_ONCE):
            n = min(AT_ONCE, count - first)
            x = x0 + (x1 - x0) * (first + np.sort(rng.random(n)) * n) / count
            y = rng.uniform(y0, y1, n)
            z = courtyard.ground(np.clip(x, *courtyard.X), np.clip(y, *courtyard.Y)) + rng.normal(0, 0.003, n)
            points = laspy.ScaleAwarePointRecord.zeros(n, header=header)
            points.x, points.y, points.z = x, y, z
            points.gps_time = 1e-6 * (first + np.arange(n))
            grey = (rng.integers(90, 160, n) * 257).astype(np.uint16)
            points.red = points.green = points.blue = grey
            writer.write_points(points)


def measured(program: str, *arguments: str) -> tuple[float, list[str]]:
    """Processor seconds of a python program and its children, and the words it printed."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    command = [sys.executable, "-c", program, *arguments]
    done = subprocess.run(command, check=True, capture_output=True, text=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return (after.ru_utime + after.ru_stime) - (before.ru_utime + before.ru_stime), done.stdout.split()


def main(millions: float, folder: Path) -> None:
    for name, over in (("a small part of a site", SITE), ("all on the slab", None)):
        path = folder / "large.laz"
        large_laz(path, round(millions * 1e6), over)
        case = f"{millions:g} million points, {name}"
        laspy, words = measured(LASPY, str(path))
        assert int(words[0]) == round(millions * 1e6)
        figure(f"{case}: laspy reads it", laspy, "s")
        for what, program, more in (
            ("surface", SURFACE, (str(JOB), str(path))),
            ("look", LOOK, (str(path), str(folder / "out"))),
        ):
            seconds, words = measured(program, *more)
            figure(f"{case}: {what}", seconds, "s", "less")
            figure(f"{case}: {what}, over 2 times laspy", seconds - 2 * laspy, "s", "less")
            figure(f"{case}: {what}, memory", float(words[-1]) / 1e6, "GB", "less")
            if what == "surface":
                figure(f"{case}: points held", float(words[0]), "")
        path.unlink()


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as made:
        main(float(sys.argv[1]) if len(sys.argv) > 1 else 20.0, Path(made))
