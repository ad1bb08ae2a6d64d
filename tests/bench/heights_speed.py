"""Points -> surface: seconds for growing scans of one slab, and the accuracy of what came out. Run: python
tests/bench/heights_speed.py

Data: a 16 x 4 m apron with a sharp 20 % crest across it, 8 mm noise, phone-like. Figure: 5 million points
in 5 s or less on two
cores, time linear in points.
"""

from __future__ import annotations

import cProfile
import pstats
import sys
import time

import numpy as np
from history import figure

from crestcut.base.grid import GridFrame
from crestcut.scan.records import Frame, Scan
from crestcut.terrain.build import build_surface


def apron(points: int, seed: int = 0) -> Scan:
    """The apron from so many points at random places, half a metre beyond its frame on every side."""
    rng = np.random.default_rng(seed)
    xy = rng.uniform((-0.5, -0.5), (16.5, 4.5), (points, 2))
    z = truth(xy) + 0.008 * rng.standard_normal(points)
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    return Scan(np.column_stack([xy, z]), np.zeros(points, np.int16), frame, ())


def truth(xy: np.ndarray) -> np.ndarray:
    return 0.02 * xy[..., 0] - 0.2 * np.maximum(xy[..., 0] - 8.0 - 0.3 * xy[..., 1], 0.0)


def main() -> None:
    frame = GridFrame((0.0, 0.0), 0.0, 0.010, (401, 1601))
    build_surface(apron(50_000), GridFrame((6.0, 1.0), 0.0, 0.010, (201, 301)))  # compile

    for points in (300_000, 1_000_000, 2_500_000, 5_000_000):
        scan = apron(points)
        begin, cpu = time.perf_counter(), time.process_time()
        if "--profile" in sys.argv and points == 5_000_000:
            profile = cProfile.Profile()
            surface = profile.runcall(build_surface, scan, frame)
            pstats.Stats(profile).sort_stats("cumtime").print_stats(22)
        else:
            surface = build_surface(scan, frame)
        seconds, cpu = time.perf_counter() - begin, time.process_time() - cpu
        xy = frame.node_xy()
        error = surface.height.values - truth(xy)
        near = np.abs(xy[..., 0] - 8.0 - 0.3 * xy[..., 1]) < 0.05
        rms = [1000 * np.sqrt(np.nanmean(e**2)) for e in (error, error[near])]
        figure(f"{points:,} points", seconds, "s", "less")
        figure(f"{points:,} points, processor time", cpu, "s", "less")
        figure(f"{points:,} points, rms error", float(rms[0]), "mm", "less")
        figure(f"{points:,} points, rms error near the crest", float(rms[1]), "mm", "less")


if __name__ == "__main__":
    main()
