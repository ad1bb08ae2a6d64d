"""What a hand would read on the courtyard before the work and after it; makes all of that anew when the plan
has changed: ``python sample_scans/readings.py`` (runs, checks and a walk, five minutes).

The readings are those that ``courtyard_apron.toml`` asks for (or asked for last), after a look at it by
strings; they are made on the courtyard itself, which no scan shows so well, by a hand that errs as it says.
Then comes what hangs on the plan that they lead to: the depths in ``apron_cut.csv``, the gaps felt over the
finished cut (``hand_cut.py``) and where a check by those asks for more, the walk after the work. The job file
ends with what ``block`` writes.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

import courtyard
import hand_cut
import numpy as np
from numpy.typing import NDArray

from crestcut.apps.verify import check_job
from crestcut.base.grid import HeightGrid
from crestcut.chance.witness import witness_evidence
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import TravelLine
from crestcut.cut.plan import cut_surface
from crestcut.job.load import load_job
from crestcut.job.records import Job, PlanPoint, Travel, Witness
from crestcut.study.making import run_job
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.vehicle.load import load_vehicle
from crestcut.vehicle.records import AS_MEASURED, Vehicle

FloatArray = NDArray[np.float64]
Removed = Callable[[FloatArray, FloatArray], FloatArray]

JOBS = Path(__file__).resolve().parents[1] / "configs" / "jobs"
SCANNED, MEASURED = JOBS / "courtyard_apron.toml", JOBS / "courtyard_apron_measured.toml"
START = "# What was read by hand; written by sample_scans/readings.py.\n"
PART = "battery tray"
WITHIN, PLACED = 0.0005, 0.005  # m, 1 sd of a stack of cards, and of where the vehicle stood
CARD = 0.0005  # m: gaps are told in whole ones
ROUNDS = 7  # of what the check still asks for
SEED, AFTER_SEED = 52, 53
# ends, m; distance from a, m, None for the least; blocks, m: both wheel tracks and across the worst point
STRINGS: tuple[tuple[tuple[float, float], tuple[float, float], float | None, float], ...] = (
    ((3.52, 1.26), (6.14, 1.26), None, 0.180),
    ((3.52, 2.74), (6.14, 2.74), None, 0.180),
    ((4.85, 1.26), (4.85, 2.74), 0.740, 0.100),
)
BESIDE = (-0.2, 0.0, 0.2)  # m, off the line: where gaps are felt over the finished cut


class Slab:
    """The courtyard under the job's line with its vehicle on it, as it is: nothing of it measured."""

    def __init__(self, removed: Removed | None = None) -> None:
        job = load_job(SCANNED)
        self.vehicle: Vehicle = load_vehicle(job.vehicle.file)
        travel = Travel(job.travel.line, wander=0.5, heading=0.0)
        ends = [(p.x, p.y) for p in travel.line if isinstance(p, PlanPoint)]
        self.line: TravelLine = travel_line(ends, self.vehicle, travel, job.cell)
        frame = window(self.line, self.vehicle, travel, job.cell)
        x, y = frame.node_xy()[..., 0], frame.node_xy()[..., 1]
        height = HeightGrid(frame, courtyard.slab(x, y) - (0.0 if removed is None else removed(x, y)))
        known, exact = height.measured, ErrorModel(0.0, 0.0, 0.1, 0.0, 0.4, "", "", "")
        none = height.like(np.zeros(frame.shape))
        self.surface = Surface(height, height, none, known, known, exact, (), 0)

    def felt(self, witness: Witness, rng: np.random.Generator) -> float:
        """m that cards say, to a whole one: a little off in place and in size, on boards as boards are."""
        at = witness.front_axle
        assert isinstance(at, PlanPoint)
        x, y = at.x + PLACED * rng.standard_normal(), at.y + PLACED * rng.standard_normal()
        there = replace(witness, front_axle=PlanPoint(float(x), float(y)), placed=0.0)
        gap = self.expected(there, self.surface) + float(self.noise**0.5 * rng.standard_normal())
        return max(round(gap / CARD), 0) * CARD

    def expected(self, witness: Witness, surface: Surface) -> float:
        """m under the part where the vehicle stands so, and ``noise``, m2 about it."""
        told = witness_evidence(
            (witness,), self.vehicle, surface, self.line, (AS_MEASURED,), lambda p: (p.x, p.y)  # type: ignore[union-attr]
        )  # fmt: skip
        assert told is not None
        self.noise = float(told.noise[0, 0])
        return told.readings[0].predicted


def gap_at(x: float, y: float, raised: float | None = None) -> Witness:
    """A gap to be felt under the tray with the front axle over x, y; boards of one thickness, m."""
    boards = None if raised is None else (raised,) * 4
    at = PlanPoint(round(x, 3), round(y, 3))
    return Witness(PART, at, "as measured", gap=0.0, within=WITHIN, placed=PLACED, raised=boards)


def asked_for(advice: Sequence[Mapping[str, object]]) -> list[Witness]:
    """The gaps among what is to be measured."""
    found = []
    for row in advice:
        wheels, boards = np.array(row["where_xy"])[:2], row["boards"]
        if row["kind"] == "felt gap":
            thick = boards["thickness"] if isinstance(boards, dict) else None
            found.append(gap_at(*wheels.mean(axis=0), thick))
    return found


def over_the_cut(plan: HeightGrid, surface: Surface) -> list[Witness]:
    """Where the plan leaves least, on the line and beside it."""
    slab = Slab()
    lower = cut_surface(surface, np.nan_to_num(plan.values))
    middle, found = slab.line.xy.mean(axis=0)[1], []
    for off in BESIDE:
        places = [gap_at(x, middle + off) for x in np.arange(5.5, 7.0, 0.02)]
        found.append(min(places, key=lambda w: slab.expected(w, lower)))
    return found


def block(before: Sequence[Witness], after: Sequence[Witness], removed: Removed) -> str:
    """The end of the job file: strings and gaps before the work, gaps after it; witnesses : where."""
    out = START
    for a, b, at, blocks in STRINGS:
        down = round(courtyard.string_down(a, b, blocks, at) * 2000) / 2
        where = '"least"' if at is None else f'"{at * 1000:.0f} mm"'
        out += (
            f"[[string]]\na = [{a[0]:.2f}, {a[1]:.2f}]\nb = [{b[0]:.2f}, {b[1]:.2f}]\nat = {where}\n"
            f'blocks = "{blocks * 1000:.0f} mm"\ndown = "{down:g} mm"\nwithin = "1 mm"\nplaced = "20 mm"\n'
        )
    out += _gaps("witness", before, Slab(), SEED)
    out += (
        "\n# Once it was ground: cards slid under the tray, on the line and 200 mm to either side of it. Only"
        "\n# `crestcut verify` reads this; a walk after the work is there too,"
        " `--after sample_scans/apron_after.laz`.\n"
    )
    return out + _gaps("after.witness", after, Slab(removed), AFTER_SEED)


def _gaps(table: str, witnesses: Sequence[Witness], slab: Slab, seed: int) -> str:
    out = ""
    for k, witness in enumerate(witnesses):
        at, boards = witness.front_axle, witness.raised
        assert isinstance(at, PlanPoint)
        gap = slab.felt(witness, np.random.default_rng([seed, k]))
        raised = "" if boards is None else f'raised = "{boards[0] * 1000:.1f} mm"\n'
        out += (
            f'[[{table}]]\npart = "{PART}"\nfront_axle = [{at.x:.3f}, {at.y:.3f}]\n{raised}'
            f'gap = "{gap * 1000:.1f} mm"\nwithin = "{WITHIN * 1000:g} mm"\nplaced = "{PLACED * 1000:g} mm"\n'
        )
    return out


def written_by(job: Job) -> str:
    """What ``block`` writes for a job that says where it was felt."""
    assert job.after is not None
    return block(job.witnesses, job.after.witnesses, hand_cut.removed)


def write_cut(plan: HeightGrid) -> None:
    """The depths of a plan as ``hand_cut`` reads them. Raises ValueError where they reach its rim."""
    rows, columns = hand_cut.SIZE
    x = hand_cut.CORNER[0] + hand_cut.STEP * np.arange(columns)
    y = hand_cut.CORNER[1] + hand_cut.STEP * np.arange(rows)
    known = plan.like(np.nan_to_num(plan.values))
    depth = np.maximum(np.nan_to_num(known.sample(np.stack(np.meshgrid(x, y), axis=-1))), 0.0) * 1000
    depth[depth < 0.05] = 0.0
    if depth[[0, -1]].any() or depth[:, [0, -1]].any():
        raise ValueError("the cut reaches the rim of apron_cut.csv: move hand_cut.CORNER or make SIZE larger")
    head = (
        f"# depth to remove in mm, as configs/jobs/{MEASURED.name} was planned; rows: y {hand_cut.CORNER[1]}"
        f" m and every 20 mm, columns: x {hand_cut.CORNER[0]} m and every 20 mm\n"
    )
    lines = [",".join(f"{v:.1f}" if v else "0" for v in row) for row in depth]
    Path(__file__).with_name("apron_cut.csv").write_text(head + "\n".join(lines) + "\n", encoding="utf-8")
    hand_cut.forget()


def main() -> None:
    """Readings, plan, readings after it, and the walk after the work."""
    import make

    kept = MEASURED.read_text(encoding="utf-8").split(START)[0]
    # a scan that settles it by itself asks for nothing: then where it was felt last
    before = asked_for(run_job(SCANNED).report.advice) or load_job(MEASURED).witnesses
    MEASURED.write_text(kept + block(before, (), hand_cut.removed), encoding="utf-8")
    report = run_job(MEASURED).report
    assert report.plan is not None
    write_cut(report.plan.depth)
    after = over_the_cut(report.plan.depth, report.surface)
    for more in range(ROUNDS + 1):
        MEASURED.write_text(kept + block(before, after, hand_cut.removed), encoding="utf-8")
        check = check_job(MEASURED).check
        further = asked_for(check.advice)
        if more == ROUNDS or not further:
            break
        after += further
    make.write_after(make.HERE)


if __name__ == "__main__":
    main()
