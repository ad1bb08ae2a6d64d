"""Simulated surfaces of known truth, cut by a plan made from their noisy scan: is what was asked reached as
often as promised? Prints data, figures and seconds.

python tests/bench/margin_for_cut.py [surfaces] [draws]

Surfaces are simulated on the grid (truth + a drawn error): the fit of heights to points has its own bench.
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).parents[1]))
from coverage_of_chance import MODEL

from crestcut.chance.assess import chance_of_plan
from crestcut.chance.planned import draw_cut, margin_for
from crestcut.cut.limits import cut_limits
from crestcut.cut.plan import cut_surface, plan_cut
from crestcut.job.records import Travel, Wanted
from scenes import belly, crest, scene, stand, vehicle
from simulated import judged_from

FEATHER = 0.25


def one(
    seed: int, half: float, draws: int, wander: float = 0.0
) -> tuple[float, float, float, float, float, float]:
    """True least gap after the cut less what was asked, the same as expected, its spread, its promised
    chance, margin (m), and the floor's width."""
    rng = np.random.default_rng(seed)
    car = vehicle(replace(belly(half=half), within=0.002))
    travel, wanted = Travel(line=(), wander=wander, heading=0.0), Wanted()
    grade, angle = rng.uniform(0.10, 0.14), rng.uniform(0.0, 0.4)
    true = scene(crest(grade, angle), car=car, travel=travel, start=(-3.2, 0), end=(3.2, 0))
    surface = judged_from(true, seed, MODEL, grade, angle)
    stood = stand(car, travel, true.line, surface)
    cut = draw_cut(stood.passage, wanted, seed, draws)
    assert cut is not None
    margin = margin_for(cut, wanted)
    limits = cut_limits(surface, 0.2, "deepest", FEATHER, [])
    plan = plan_cut(stood.passage, limits, wanted, margin, FEATHER)
    depth = np.nan_to_num(plan.depth.values)
    said = chance_of_plan(cut, replace(stood.passage, clearance=plan.after), margin, limits.deepest, wanted)
    after = stand(car, travel, true.line, cut_surface(true.surface, depth)).before
    assert after.worst is not None
    wrong = rng.normal(0.0, 0.002)  # the vehicle's own clearance was measured this much wrong
    got = after.worst.gap + wrong - wanted.want
    return got, said.least_clearance - wanted.want, said.spread, said.chance_of_want, margin, half


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    draws = int(sys.argv[2]) if len(sys.argv) > 2 else 200
    print(
        "sharp crests 10 to 14 % a side, up to 23 degrees skew; "
        "white 0.7, patch 1.3, warp 4.3 mm at 0.35 m; vehicle 2 mm"
    )
    for half in (0.65, 0.25):
        start = time.perf_counter()
        got, expected, spread, promised, margin, _ = np.array([one(k, half, draws) for k in range(count)]).T
        miss = expected - got
        floor = f"floor {2 * half:.1f} m wide"
        print(f"{floor}: {count} cuts, {draws} draws; expected left over {expected.mean() * 1e3:+.2f} mm")
        figure(f"{floor}: reached", 100 * float(np.mean(got >= 0)), "%")
        figure(f"{floor}: promised", 100 * float(promised.mean()), "%")
        figure(f"{floor}: margin", float(margin.mean()) * 1e3, "mm")
        figure(f"{floor}: left over", float(got.mean()) * 1e3, "mm")
        figure(f"{floor}: left over, sd", float(got.std()) * 1e3, "mm")
        figure(f"{floor}: 95 % held", 100 * float(np.mean(np.abs(miss) < 1.984 * spread)), "%", "more")
        figure(f"{floor}: each", (time.perf_counter() - start) / count, "s", "less")


if __name__ == "__main__":
    main()
