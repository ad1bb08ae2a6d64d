"""Whole runs from a simulated walk with a phone to verdict and plan: does the interval hold the truth there
too, and does the true slab clear what was asked once the plan is cut? Prints data, figures and seconds.

python tests/bench/scan_to_verdict.py [walks] [first seed] [minutes]

The walks are those of the sample scans with other seeds: range noise 6 mm, patch 1.5 mm, warp 5 mm halving at
0.4 m, clutter, joints and all; read from a file, separated, fitted, its error model estimated from the walk
itself. The plan is the one that is handed out (flat facets), cut as drawn; no walk begins after those
minutes.
"""

from __future__ import annotations

import sys
import tempfile
import time
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "sample_scans"))
import courtyard
from make import RAYS, write_laz
from walk import walk

from crestcut.base.grid import HeightGrid
from crestcut.base.parallel import one_thread_each
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.stand.ride import ride
from crestcut.cut.limits import cut_limits
from crestcut.cut.plan import cut_surface
from crestcut.cut.slab_limits import deepest_allowed
from crestcut.job.load import load_job
from crestcut.scan.load import read_scan
from crestcut.standing import (
    all_judged,
    common_window,
    drivers_of,
    drives_of,
    lines_of,
    rides_of,
    swept_of,
)
from crestcut.study import keeps_of
from crestcut.study.stages import planned
from crestcut.terrain.apart import judged_apart
from crestcut.terrain.build import build_surface
from crestcut.terrain.error.estimate import NOT_YET
from crestcut.terrain.records import Surface
from crestcut.work.guided_plan import guided

ROOT = Path(__file__).resolve().parents[2]
JOB = ROOT / "configs" / "jobs" / "courtyard_apron.toml"


def true_surface(like: Surface) -> Surface:
    """The courtyard itself, where the scan has measured it."""
    xy = like.height.frame.node_xy()
    z = courtyard.ground(xy[..., 0], xy[..., 1])
    height = HeightGrid(like.height.frame, np.where(like.height.measured, z, np.nan))
    return replace(like, height=height, top=height)


@dataclass(frozen=True)
class Walk:
    """Truth, best estimate, ends of the interval, m; the verdict; deepest cut, m, whether the plan leaves all
    that was asked as far as it knows, and the true least gap once it is cut, m."""

    truth: float
    said: float
    low: float
    high: float
    verdict: str
    deepest: float
    reached: bool
    after: float


@one_thread_each
def one(seed: int, folder: Path) -> Walk:
    """One walk over the courtyard, judged and planned as a run does."""
    job = load_job(JOB)
    path = folder / f"walk_{seed}.laz"
    write_laz(walk(seed, RAYS), path)
    settings = replace(job.settings, seed=seed)
    job = replace(job, scan=replace(job.scan, files=(path,), unit="m", up="z"), settings=settings)
    scan = read_scan(job.scan, lambda _: None)
    path.unlink()
    drivers = drivers_of(job)
    lines = lines_of(drivers, job, scan.frame, None)
    frame = common_window(drivers, lines, job)
    surface = build_surface(scan, frame, job.scan.scanner, NOT_YET, settings=settings)
    drives = drives_of(drivers, lines)
    surface = judged_apart(scan, surface, drives, job.scan.scanner, job.slab.flatness, settings)
    rides = rides_of(drivers, lines, surface, job, scan.frame)
    standings = all_judged(job, surface, drivers, rides, swept_of(drivers, rides, surface, job), scan.frame)
    limit = deepest_allowed(job.cut, job.slab)
    keeps = keeps_of(job, scan, surface)
    limits = cut_limits(surface, limit.depth, limit.reason, job.cut.feather, keeps)
    fleet = planned(standings, surface, limits, job.cut)
    fleet = guided(fleet, [s.member for s in standings], surface, limits, job)
    true = true_surface(surface)
    # the vehicle's parts were each measured a little wrong: the true one is as wrong the other way
    vehicle, rng = drivers[0].vehicle, np.random.default_rng(seed)
    parts = tuple(replace(p, z=tuple(np.array(p.z) + rng.normal(0.0, p.within))) for p in vehicle.parts)
    other = replace(vehicle, parts=parts)

    def gap(of: Surface) -> float:
        worst = sweep(other, of, ride(other, of, lines[0], job.travel, drivers[0].loads)).worst
        assert worst is not None
        return worst.gap

    depth = np.nan_to_num(fleet.plan.depth.values)
    chance, plan = standings[0].today, fleet.plan
    truth, after = gap(true), gap(cut_surface(true, depth))
    best, verdict = chance.least_clearance, chance.verdict
    return Walk(truth, best, *chance.interval, str(verdict), plan.deepest, plan.feasible, after)


def main() -> None:
    count, first = (int(sys.argv[k]) if len(sys.argv) > k else d for k, d in ((1, 20), (2, 1000)))
    minutes = float(sys.argv[3]) if len(sys.argv) > 3 else float("inf")
    asked = load_job(JOB).wanted.want
    start, rows = time.perf_counter(), []
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(first, first + count):
            if time.perf_counter() - start > 60 * minutes:
                break
            w = one(seed, Path(folder))
            rows.append(w)
            print(
                f"walk {seed}: truth {w.truth * 1e3:+.1f}, said {w.said * 1e3:+.1f} ({w.low * 1e3:+.1f} to "
                f"{w.high * 1e3:+.1f}) mm, {w.verdict}; cut {w.deepest * 1e3:.1f} mm deep at most, "
                f"{'all' if w.reached else 'not all'} reached; truly {w.after * 1e3:+.1f} after, "
                f"{asked * 1e3:.1f} asked",
                flush=True,
            )
    truth, best, low, high, after = np.array([(w.truth, w.said, w.low, w.high, w.after) for w in rows]).T
    miss = best - truth
    figure(f"held of {len(rows)} walks", int(((low <= truth) & (truth <= high)).sum()), "", "more")
    figure("mean error", float(miss.mean()) * 1e3, "mm")
    figure("error, sd", float(miss.std()) * 1e3, "mm", "less")
    figure("half width", float(np.mean(high - low)) * 500, "mm", "less")
    figure("deepest", float(np.mean([w.deepest for w in rows])) * 1e3, "mm", "less")
    figure("clear what was asked once cut", int((after >= asked).sum()), "", "more")
    figure("short of it at worst by", float(max(0.0, asked - after.min())) * 1e3, "mm", "less")
    figure("a walk", (time.perf_counter() - start) / len(rows), "s", "less")


if __name__ == "__main__":
    main()
