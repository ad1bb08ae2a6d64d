"""Whole runs from a simulated walk with a phone to the verdict: does the interval hold the truth there too?
Prints data, figures and seconds.

python tests/bench/scan_to_verdict.py [walks]

The walks are those of the sample scans with other seeds: range noise 6 mm, patch 1.5 mm, warp 5 mm halving at
0.4 m, clutter, joints and all; read from a file, separated, fitted, its error model estimated from the walk
itself.
"""

from __future__ import annotations

import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "sample_scans"))
import courtyard
from make import RAYS, write_laz
from walk import walk

from crestcut.base.grid import HeightGrid
from crestcut.chance.assess import assess_chance
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Passage
from crestcut.contact.stand.ride import ride
from crestcut.job.load import load_job
from crestcut.scan.load import read_scan
from crestcut.scan.placing.place import resolve_line
from crestcut.terrain.build import build_surface
from crestcut.terrain.records import Surface
from crestcut.terrain.slab.behind import slab_behind
from crestcut.vehicle.load import load_state, load_vehicle

ROOT = Path(__file__).resolve().parents[2]
JOB = ROOT / "configs" / "jobs" / "courtyard_apron.toml"


def true_surface(like: Surface) -> Surface:
    """The courtyard itself, where the scan has measured it."""
    xy = like.height.frame.node_xy()
    z = courtyard.ground(xy[..., 0], xy[..., 1])
    height = HeightGrid(like.height.frame, np.where(like.height.measured, z, np.nan))
    return replace(like, height=height, top=height)


def one(seed: int, folder: Path) -> tuple[float, float, float, float, float, str]:
    """Truth, best estimate, ends of the interval, systematic part of the error model (m), and the verdict."""
    job = load_job(JOB)
    path = folder / f"walk_{seed}.laz"
    write_laz(walk(seed, RAYS), path)
    scan = read_scan(replace(job.scan, files=(path,), unit="m", up="z"), lambda _: None)
    path.unlink()
    vehicle = load_vehicle(job.vehicle.file)
    loads = [load_state(vehicle, name) for name in job.vehicle.loads]
    line = travel_line(resolve_line(job.travel.line, job.marks, scan.frame), vehicle, job.travel, job.cell)
    seen = build_surface(scan, window(line, vehicle, job.travel, job.cell), job.scan.scanner)
    surface = slab_behind(seen, seen.error, job.slab.flatness, seed)
    rode = ride(vehicle, surface, line, job.travel, loads)
    before = sweep(vehicle, surface, rode)
    passage = Passage(vehicle, surface, rode, before)
    chance = assess_chance(passage, job.wanted, seed)
    true = true_surface(surface)
    # the vehicle's parts were each measured a little wrong: the true one is as wrong the other way
    rng = np.random.default_rng(seed)
    parts = tuple(replace(p, z=tuple(np.array(p.z) + rng.normal(0.0, p.within))) for p in vehicle.parts)
    other = replace(vehicle, parts=parts)
    worst = sweep(other, true, ride(other, true, line, job.travel, loads)).worst
    assert worst is not None
    return worst.gap, chance.least_clearance, *chance.interval, surface.error.warp, chance.verdict


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    start, rows = time.perf_counter(), []
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(count):
            row = one(1000 + seed, Path(folder))
            truth, best, low, high, warp, verdict = row
            rows.append(row[:4])
            print(
                f"walk {seed}: truth {truth * 1e3:+.1f}, said {best * 1e3:+.1f} ({low * 1e3:+.1f} to "
                f"{high * 1e3:+.1f}) mm, {verdict}; warp taken as {warp * 1e3:.1f} mm",
                flush=True,
            )
    truth, best, low, high = np.array(rows).T
    miss = best - truth
    figure(f"held of {count} walks", int(((low <= truth) & (truth <= high)).sum()), "", "more")
    figure("mean error", float(miss.mean()) * 1e3, "mm")
    figure("error, sd", float(miss.std()) * 1e3, "mm", "less")
    figure("half width", float(np.mean(high - low)) * 500, "mm", "less")
    figure("a walk", (time.perf_counter() - start) / count, "s", "less")


if __name__ == "__main__":
    main()
