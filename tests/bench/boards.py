"""A gap felt on boards where the vehicle touches today: is what the advice promises what the reading does?
Whole verdicts on slabs judged behind simulated scans, true slab known. Prints data, figures and seconds.

python tests/bench/boards.py [slabs] [cell in m]

Each: a crest scanned with a warp of 5 mm, judged; measured as the first advice on boards says, with its
boards 0.5 mm off, the part's height wrong, the vehicle 20 mm from its place, the reading 1 mm off; judged
again. Promised and reached narrowing are compared over all slabs; a touch without boards beside it.
"""

from __future__ import annotations

import sys
import time
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.assess import assess_chance
from crestcut.chance.conditioned import given
from crestcut.chance.records import Chance
from crestcut.chance.witness import witness_evidence
from crestcut.contact.stand.boards import THICKNESS
from crestcut.job.records import PlanPoint, Point, Wanted, Witness
from crestcut.measure_next.advice import Advice, measure_first
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.records import AS_MEASURED
from crestcut.work.timber import flat_boards
from scenes import STRAIGHT, Scene, belly, crest, scene, stand, vehicle
from simulated import judged_from

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.4, "planted", "planted", "planted")
WITHIN, PLACED, READ = 0.003, 0.020, 0.001  # m, 1 sd
TIMBER = tuple(flat_boards(True).values())


@dataclass(frozen=True)
class Row:
    """truth, m; before, on boards and after a touch or none on the bare slab: the chances; promised."""

    truth: float
    before: Chance
    boards: Chance
    touch: Chance
    advice: Advice


def place(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def asked(s: Scene) -> tuple[Chance, Advice | None]:
    today = assess_chance(s.passage, Wanted())
    found = measure_first(s.passage, today=today, kinds=("felt gap",), sizes=TIMBER, most=1)
    return today, next((a for a in found if a.boards is not None), None)


def told(s: Scene, witness: Witness) -> Chance:
    evidence = witness_evidence([witness], s.vehicle, s.surface, s.line, (AS_MEASURED,), place)
    known = given(s.passage, evidence, 0)
    then = stand(known.vehicle, STRAIGHT, s.line, known.surface)
    passage = replace(then.passage, parts=known.parts, contradictions=known.contradictions)
    return assess_chance(passage, Wanted())


def one(seed: int, cell: float) -> Row | None:
    """None where the vehicle is not likely to touch today, or no boards are asked for."""
    rng = np.random.default_rng(seed)
    grade, angle = rng.uniform(0.075, 0.10), rng.uniform(0.0, 0.2)
    car = vehicle(replace(belly(half=0.5), within=WITHIN))
    true = scene(crest(grade, angle), car=car, start=(-3.6, 0), end=(3.2, 0), cell=cell)
    s = stand(car, STRAIGHT, true.line, judged_from(true, seed, MODEL, grade, angle))
    before, advice = asked(s)
    if before.least_clearance > 0 or advice is None or advice.boards is None:
        return None
    wrong = float(rng.normal(0.0, WITHIN))
    front = np.mean(advice.where[:2], axis=0)
    raised = (advice.boards.thickness,) * 4
    plain = Witness(advice.part, PlanPoint(*map(float, front)), "as measured", gap=0.0, placed=PLACED)
    there = replace(plain, front_axle=PlanPoint(*map(float, front + rng.normal(0.0, PLACED, 2))))
    at = witness_evidence(
        [replace(there, raised=raised)], car, true.surface, true.line, (AS_MEASURED,), place
    )
    bare = witness_evidence([there], car, true.surface, true.line, (AS_MEASURED,), place)
    assert at is not None and bare is not None and true.before.worst is not None
    gap = at.readings[0].predicted + wrong + rng.normal(0.0, THICKNESS) + rng.normal(0.0, READ)
    touches = bare.readings[0].exactly + wrong <= 0
    felt = replace(plain, gap=max(float(gap), 0.0), raised=raised)
    return Row(
        true.before.worst.gap + wrong, before, told(s, felt),
        told(s, replace(plain, gap=None, touched=bool(touches))), advice,
    )  # fmt: skip


def width(chance: Chance) -> float:
    return chance.interval[1] - chance.interval[0]


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 20
    cell = float(sys.argv[2]) if len(sys.argv) > 2 else 0.02
    start, rows = time.process_time(), []
    for seed in range(count):
        row = one(3000 + seed, cell)
        if row is None:
            continue
        rows.append(row)
        boards = row.advice.boards
        assert boards is not None
        print(
            f"slab {seed}: truth {row.truth * 1e3:+.1f}, said {row.before.least_clearance * 1e3:+.1f} "
            f"({width(row.before) * 1e3:.1f} wide); boards {boards.thickness * 1e3:.0f} mm, "
            f"{boards.length:.2f} m: promised {row.advice.narrows:.2f}, reached "
            f"{row.before.spread / row.boards.spread:.2f} ({width(row.boards) * 1e3:.1f} wide), said "
            f"{row.boards.least_clearance * 1e3:+.1f}; a touch or none on the bare slab "
            f"{row.before.spread / row.touch.spread:.2f}",
            flush=True,
        )
    promised = np.array([r.advice.narrows for r in rows])
    reached = np.array([r.before.spread / r.boards.spread for r in rows])
    touch = np.array([r.before.spread / r.touch.spread for r in rows])
    expected = np.array([r.advice.worth.narrows for r in rows if r.advice.worth is not None])
    wide = np.array([width(r.before) for r in rows]) >= 0.010
    held = [r.boards.interval[0] <= r.truth <= r.boards.interval[1] for r in rows]
    miss = np.array([r.boards.least_clearance - r.truth for r in rows])
    print(
        f"{len(rows)} of {count} slabs touch and are asked: promised {gm(promised):.2f}, reached "
        f"{gm(reached):.2f}, {gm(reached) / gm(promised) - 1:+.0%} (geometric means; single slabs "
        f"{(reached / promised).min():.2f} to {(reached / promised).max():.2f}); where it was 10 mm wide or "
        f"wider ({int(wide.sum())}): {gm(reached[wide]):.2f}, least {reached[wide].min(initial=np.inf):.2f}"
    )
    print(
        f"a touch or none on the bare slab: expected {gm(expected):.2f}, reached {gm(touch):.2f}; after the "
        f"reading on boards {sum(held)} of {len(rows)} intervals hold the truth, error "
        f"{miss.mean() * 1e3:+.2f} +- {miss.std() * 1e3:.2f} mm; "
        f"{(time.process_time() - start) / count:.1f} s of processor each"
    )


def gm(values: np.ndarray) -> float:
    return float(np.exp(np.log(values).mean())) if len(values) else float("nan")


if __name__ == "__main__":
    main()
