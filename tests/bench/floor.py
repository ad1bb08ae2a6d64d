"""How fast a floor is judged, and how often the interval of its largest gap holds the true one.

``python tests/bench/floor.py`` prints data, figure and accuracy: the straightedge against trying all pairs of
feet (same gaps, processor time in one run), sixteen ways against ways turned freely, and the 95 % interval on
simulated floors under a tripod's and a phone's error.
"""

from __future__ import annotations

import math
import sys
import time
from pathlib import Path

import numpy as np
from scipy.ndimage import map_coordinates

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "sample_scans"))
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "floor"))
import kiln_room
from test_straightedge_twin import every_pair

from crestcut.floor.chance import draw_floor, largest_gap, spread_of
from crestcut.floor.straightedge import WAYS, gaps_under, worst_gap
from crestcut.grid import FloatArray, GridFrame, HeightGrid
from crestcut.surface.draws import FieldMaker
from crestcut.surface.records import ErrorModel, Surface

TRIPOD = ErrorModel(0.001, 0.00025, 0.1, 0.0005, 1.0, "made up", "made up", "made up")
PHONE = ErrorModel(0.005, 0.0013, 0.1, 0.005, 0.4, "made up", "made up", "made up")


def room(cell: float) -> HeightGrid:
    frame = GridFrame((0.2, 0.2), 0.0, cell, (int(4.2 / cell) + 1, int(6.0 / cell) + 1))
    xy = frame.node_xy()
    return HeightGrid(frame, kiln_room.floor(xy[..., 0], xy[..., 1]))


def against_all_pairs() -> None:
    z = room(0.08).values
    gaps_under(z, 0.08, 2.0)
    clock = []
    for work in (every_pair, lambda *a: gaps_under(*a)[0]):
        start = time.process_time()
        found = work(z, 0.08, 2.0)
        clock.append((time.process_time() - start, found))
    off = float(np.abs(clock[0][1] - clock[1][1]).max())
    print(f"straightedge 2 m on {z.shape} nodes: all pairs {clock[0][0]:.2f} s, here"
          f" {clock[1][0] * 1000:.1f} ms;"
          f" ratio {clock[0][0] / clock[1][0]:.0f}, gaps differ by {off:.1e} m")  # fmt: skip
    fine = room(0.01).values
    start = time.process_time()
    worst_gap(fine, 0.01, 2.0)
    print(f"every node of 10 mm, {fine.shape}: {time.process_time() - start:.2f} s of processor time")


def against_free_ways(turns: int = 90) -> None:
    """Heights read bilinearly along lines turned in steps of two degrees, 40 mm apart."""
    grid = room(0.02)
    sixteen = worst_gap(grid.values[::2, ::2], 0.04, 2.0)
    best, size = 0.0, grid.frame.size
    for turn in np.arange(turns) * math.pi / turns:
        way = np.array([math.cos(turn), math.sin(turn)])
        across = np.array([-way[1], way[0]])
        s = np.arange(-4.0, 4.0001, 0.04)
        uv = np.array(size) / 2 + s[None, :, None] * way + s[:, None, None] * across
        z = map_coordinates(grid.values, [uv[..., 1] / 0.02, uv[..., 0] / 0.02], order=1, cval=np.nan)
        best = max(best, worst_gap(z, 0.04, 2.0, ((0, 1),)))
    print(
        f"kiln room, largest gap under 2 m: sixteen ways {sixteen * 1000:.2f} mm, {turns} ways"
        f" {best * 1000:.2f} mm"
    )


def coverage(name: str, error: ErrorModel, shape: str, floors: int = 40) -> None:
    truth = room(0.06)
    if shape == "wave":
        xy = truth.frame.node_xy()
        z: FloatArray = 0.0008 * np.sin(2 * np.pi * xy[..., 0] / 3) * np.cos(2 * np.pi * xy[..., 1] / 2.5)
        truth = truth.like(z)
    extreme = largest_gap(truth.measured, 0.06, 2.0)
    true, maker = extreme(truth.values)[0], FieldMaker(error, truth.frame, None)
    rows = []
    for seed in range(floors):
        seen = truth.like(truth.values + maker.draw(np.random.default_rng(seed)))
        known = seen.measured
        surface = Surface(
            seen, seen, seen.like(np.full(known.shape, 1e-5)), known, known, error, (), known.size
        )
        drawn = draw_floor(surface, 1, None, seed)
        spread = spread_of(extreme, drawn.height.values, drawn)
        low, high = spread.interval
        rows.append((extreme(seen.values)[0], spread.estimate, high - low, low <= true <= high))
    seen_as, estimate, width, held = (np.array(column) for column in zip(*rows, strict=True))
    print(f"{name:6} {shape:5} true {true * 1000:5.2f} mm; the scan shows {seen_as.mean() * 1000:5.2f};"
          f" estimate"
          f" {estimate.mean() * 1000:5.2f} sd {estimate.std() * 1000:.2f}; 95 % interval"
          f" {width.mean() * 1000:5.2f} wide,"
          f" held in {held.sum()} of {floors}")  # fmt: skip


if __name__ == "__main__":
    print(f"{len(WAYS)} ways; 2 m straightedge")
    against_all_pairs()
    against_free_ways()
    for kind, model in (("tripod", TRIPOD), ("phone", PHONE)):
        for form in ("room", "wave"):
            coverage(kind, model, form)
