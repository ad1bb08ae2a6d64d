"""How few settings, how much more concrete, and does the sheet, followed, leave the slab as planned?
Random plans, an exact and a sloppy worker.

Run: python tests/bench/work_jig.py [plans]
"""

from __future__ import annotations

import math
import sys
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "work"))

from work_scene import Scene, scene
from worker_sim import SLOPPY, work

from crestcut.contact.clearance.sweep import wanted_gap
from crestcut.work.order import make_site
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet


def limit_surface(s: Scene) -> np.ndarray:
    """Highest ground that leaves every gap as asked, (ny, nx) m."""
    gaps = wanted_gap(s.job.wanted.want, s.job.wanted.want_ends)
    return np.fmin.reduce([grid.values - gaps[zone] for zone, grid in s.plan.after.lowest.items()])


def random_scene(seed: int) -> Scene:
    """A crest of any skew, sharp or rounded, that wants 5 to 14 mm off."""
    draw = np.random.default_rng(seed)
    grade, skew = float(draw.uniform(0.06, 0.10)), math.radians(float(draw.uniform(-35, 35)))
    rounding, depth = float(draw.choice([0.0, 0.05, 0.15])), float(draw.uniform(0.008, 0.016))
    clearance = 1.3 * grade * math.cos(skew) - grade * rounding + 0.0117 - depth
    fall, angle = float(draw.uniform(-0.02, 0.02)), float(draw.uniform(0, 6))
    country = "US" if seed % 2 else "GB"  # blocks in 1/16 in and in whole millimetres
    return scene(grade, skew, rounding, fall, clearance, angle=angle, country=country)


def measure(s: Scene, seed: int) -> dict[str, float]:
    sheet = make_worksheet(s.order(decide_release(s.job, False)))
    assert sheet.jig is not None and sheet.set_out is not None
    site = make_site(s.surface, s.line, s.plan, s.job)
    cut = np.nan_to_num(s.plan.depth.values) > 0
    limit = limit_surface(s)
    exact = work(site, sheet.jig, sheet.set_out)
    done = work(site, sheet.jig, sheet.set_out, SLOPPY, seed)
    raw = work(site, sheet.jig, sheet.set_out, SLOPPY, seed, checks=False)
    finished = site.finished
    volume = float(np.nansum(site.ground - exact)) * site.cell**2
    guided = s.plan.guided
    assert guided is not None
    return {
        "deepest": s.plan.deepest * 1000,
        "litres": s.plan.volume * 1000,
        "settings": len(sheet.jig.rows),
        "blocks": len(sheet.jig.blocks),
        "more": (s.plan.volume / guided.volume - 1) * 100,
        "shortest": min(r.high - r.low + 0.01 for r in sheet.jig.rows) * 1000,
        "slots": sum(lift.slots for lift in sheet.jig.lifts),
        "hours": sheet.quantities.hours.high,
        "exact_off": float(np.nanmax(np.abs(exact - finished)[cut])) * 1000,
        "exact_volume": (volume / s.plan.volume - 1) * 100,
        "raw_proud": float(np.nanmax((raw - limit)[cut])) * 1000,
        "proud": float(np.nanmax((done - limit)[cut])) * 1000,
        "over": float(np.nanmean(np.maximum(finished - done, 0)[cut])) * 1000,
    }


WORST = {
    "settings": 8,
    "more": 15,
    "shortest": 150,
    "exact_off": 0.5,
    "exact_volume": 2,
    "proud": 0.5,
    "over": 2,
}


UNITS = {"settings": "settings", "more": "%", "exact_volume": "%"}


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    rows = []
    for seed in range(count):
        rows.append(measure(random_scene(seed), seed))
        scene.cache_clear()
        if seed == 0:
            print("plan " + " ".join(f"{name:>12}" for name in rows[0]))
        print(f"{seed:4d} " + " ".join(f"{v:12.2f}" for v in rows[-1].values()), flush=True)
    for name, limit in WORST.items():
        worst = min(r[name] for r in rows) if name == "shortest" else max(abs(r[name]) for r in rows)
        least = name == "shortest"
        print(f"{name}: worst {worst:.2f} ({'at least' if least else 'at most'} {limit})")
        figure(f"worst {name}", float(worst), UNITS.get(name, "mm"), "more" if least else "less")


if __name__ == "__main__":
    main()
