"""How fast a floor is judged, and how often the interval of its largest gap holds the true one.

``python tests/bench/floor.py [floors of a kind] [tripod] [phone] [shape ...]`` prints data, figure and
accuracy: the straightedge against trying all pairs of feet (same gaps, processor time in one run), sixteen
ways against ways turned freely, and the 95 % intervals of gap and F_F on simulated floors under a tripod's
and a phone's error. 'Wrong' counts floors of which a verdict at 95 % would be wrong for the one limit that is
hardest to judge: what the floor just keeps (said not to) and what it just misses (said to meet it).
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

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.floor.chance import Spread, coarse_frame, draw_floor, largest_gap, spread_of
from crestcut.floor.numbers import f_numbers, lay_lines, read
from crestcut.floor.straightedge import WAYS, gaps_under, worst_gap
from crestcut.terrain.error.draws import FieldMaker
from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.behind import FLOOR, slab_behind
from crestcut.terrain.slab.between import unit_field
from crestcut.terrain.slab.split import curvature_of, curvature_variance

TRIPOD = ErrorModel(0.001, 0.00025, 0.1, 0.0005, 1.0, "made up", "made up", "made up", known=Known.NAMED)
PHONE = ErrorModel(0.005, 0.0013, 0.1, 0.005, 0.4, "made up", "made up", "made up", known=Known.NAMED)
SHAPES = ("room", "wave", "hump", "step", "FF 20", "FF 35", "FF 100")
SURE = 0.95  # chance from which a verdict is given
MOST_FF = 150.0  # the largest that a job may ask for
NODE, EVERY = 0.03, 2  # m between nodes; of which every second is under the straightedge


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


def floors(shape: str, seed: int) -> HeightGrid:
    """A true floor: the kiln room; a wave of 0.8 mm; a hump of 5 mm 0.4 m wide, a step of 3 mm, on a floor of
    F_F 60; waves alone, named by their F_F."""
    flat = room(NODE)
    u, v = (flat.frame.node_xy()[..., k] - flat.frame.origin[k] for k in (0, 1))
    match shape:
        case "room":
            return flat
        case "wave":
            return flat.like(0.0008 * np.sin(2 * np.pi * u / 3) * np.cos(2 * np.pi * v / 2.5))
        case "hump":
            r = np.hypot(u - 2.7, v - 2.2)
            return flat.like(_waves(flat, 60, seed) + 0.005 * np.cos(np.minimum(r / 0.2, 1) * np.pi / 2) ** 2)
        case "step":
            return flat.like(_waves(flat, 60, seed) + 0.003 * (u > 2.9))
        case _:
            return flat.like(_waves(flat, float(shape.removeprefix("FF ")), seed))


def _waves(flat: HeightGrid, flatness: float, seed: int) -> FloatArray:
    """Half length 0.8 m, of that F_F."""
    sd = curvature_of(flatness) / math.sqrt(curvature_variance(0.8))
    # on a grid fine enough that nothing of its bends over a foot is lost, which ``FieldMaker`` would
    places = flat.frame.to_grid(flat.frame.node_xy().reshape(-1, 2))
    return sd * unit_field(0.8, places, np.random.default_rng([seed, 9]), 1).reshape(flat.values.shape)


def coverage(name: str, error: ErrorModel, shape: str, count: int) -> None:
    """Gap and F_F of simulated floors, seen once each."""
    rows, start = [], time.process_time()
    for seed in range(count):
        truth = floors(shape, seed)
        known, coarse = truth.measured, truth.values[::EVERY, ::EVERY]
        extreme = largest_gap(np.isfinite(coarse), NODE * EVERY, 2.0)
        frame = coarse_frame(truth.frame, EVERY)
        lines = lay_lines(frame, np.isfinite(coarse))
        assert lines is not None
        of = lambda z: f_numbers(lines, read(lines, frame, z.ravel(), (0.0, 0.0))).ff  # noqa: B023, E731
        wrong = FieldMaker(error, truth.frame, None).draw(np.random.default_rng(seed))
        seen = truth.like(truth.values + wrong)
        scanned = Surface(
            seen, seen, seen.like(np.full(known.shape, 1e-5)), known, known, error, (), known.size
        )
        drawn = draw_floor(slab_behind(scanned, error, None, seed, FLOOR), EVERY, None, seed)
        true = np.array([extreme(coarse), of(coarse)])
        gap = spread_of(extreme, drawn.height.values, drawn)
        every = np.moveaxis(drawn.height.values[..., None] - drawn.errors, -1, 0)
        flat = Spread(np.array([of(z) for z in every]))
        low, high = np.transpose([gap.interval, flat.interval])
        middle = np.array([gap.estimate, flat.estimate])
        asked = min(true[1], MOST_FF)
        meets = np.array([(gap.draws <= true[0]).mean(), (flat.draws >= asked).mean()]) >= SURE
        fails = np.array([gap.over(true[0]), (flat.draws < asked).mean()]) >= SURE
        first = seen.values[::EVERY, ::EVERY]
        shown = np.array([extreme(first), of(first)])
        rows.append((true, shown, middle, high - low, (low <= true) & (true <= high), fails, meets))
    true, shown, middle, width, held, fails, meets = (np.array(c) for c in zip(*rows, strict=True))
    seconds = (time.process_time() - start) / count
    for k, (what, unit) in enumerate((("gap mm", 1e3), ("FF", 1.0))):
        print(f"{name:6} {shape:5} {what:6} true {true[:, k].mean() * unit:6.2f}; the scan shows"
              f" {shown[:, k].mean() * unit:6.2f}; estimate {middle[:, k].mean() * unit:6.2f}, off by"
              f" {(middle - true)[:, k].mean() * unit:+.2f} sd {(middle - true)[:, k].std() * unit:.2f}; 95 %"
              f" {np.median(width[:, k]) * unit:6.2f} wide, held in {held[:, k].sum()} of {count}; wrong:"
              f" 'does not meet' {fails[:, k].sum()}, 'meets' {meets[:, k].sum()}; {seconds:.1f} s each",
              flush=True)  # fmt: skip


if __name__ == "__main__":
    floors_each, wanted = int(sys.argv[1]) if len(sys.argv) > 1 else 40, set(sys.argv[2:])
    print(f"{len(WAYS)} ways; 2 m straightedge")
    if not wanted:
        against_all_pairs()
        against_free_ways()
    for kind, model in (("tripod", TRIPOD), ("phone", PHONE)):
        if not wanted & {"tripod", "phone"} or kind in wanted:
            for form in [s for s in SHAPES if s in wanted] or SHAPES:
                coverage(kind, model, form, floors_each)
