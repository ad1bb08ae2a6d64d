"""A vehicle over the finished work: its clearance, what of it is left over what was asked for, and what to
measure where that cannot be told."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np
from scipy import special

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.chance import Chance, Doubt, Finding, chance_of, doubted, draw_clearances, second_look
from crestcut.contact import Passage, TravelLine, sweep, wanted_gap
from crestcut.job import Job
from crestcut.measure_next import measure_first
from crestcut.scan import Frame as ScanFrame
from crestcut.scan import Scan
from crestcut.standing import (
    LoadedVehicle,
    Standing,
    judged,
    passage_of,
    rides_of,
    second_opinion,
    swept_of,
)
from crestcut.terrain import Evidence, Surface
from crestcut.vehicle import Vehicle
from crestcut.verify.records import Now
from crestcut.work import board_sizes, row_of

# what the underside meets when it is lowered by what was asked for is no touch
OF_ALL = (Doubt.ALL_POINTS, Doubt.STANDS)
MOST = 2  # measurements to ask for


def all_now(
    job: Job, surface: Surface, drivers: Sequence[LoadedVehicle], lines: Sequence[TravelLine],
    evidence: Sequence[Evidence | None], frame: ScanFrame | None = None,
) -> tuple[Now, ...]:  # fmt: skip
    """Every vehicle of the job over ``surface``, in the order they came.

    evidence : what was measured by hand on this ground, for each.  frame : of the scan that shows this
    ground, which is then looked at a second time; None where no scan does.
    """
    rides = rides_of(drivers, lines, surface, job)
    swept = swept_of(drivers, rides, surface, job)
    found = []
    for driver, rode, cleared, told in zip(drivers, rides, swept, evidence, strict=True):
        passage = passage_of(surface, driver, rode, cleared)
        now = now_of(job, surface, judged(passage, driver, job.wanted, job.settings, told), told)
        found.append(now if frame is None else looked_again(job, surface, now, frame))
    return tuple(found)


def looked_again(job: Job, surface: Surface, now: Now, frame: ScanFrame) -> Now:
    """The chances with their verdicts withdrawn where anything the scan shows speaks against them: as for any
    slab, and where all points leave less than was asked for."""
    standing = second_opinion(now.standing, surface, frame)
    lower = lowered(standing.vehicle, wanted_gap(job.wanted.want, job.wanted.want_ends))
    passage = Passage(lower, surface, standing.ride, sweep(lower, surface, standing.ride))
    known = {f.doubt if f.doubt is Doubt.ALL_POINTS else (f.doubt, f.xy) for f in standing.findings}
    short = tuple(
        f if f.doubt is Doubt.STANDS else replace(f, doubt=Doubt.SHORT)
        for f in second_look(passage, job.travel, standing.driver.loads, now.spare)
        if f.doubt in OF_ALL and not {f.doubt, (f.doubt, f.xy)} & known
    )
    spare = doubted(now.spare, (*standing.findings, *short), frame)
    return replace(now, standing=standing, today=standing.today, in_use=standing.in_use, spare=spare)


def withdrawn(now: Now, findings: tuple[Finding, ...], frame: ScanFrame) -> Now:
    """The chances, but of what is surely short, withdrawn where anything speaks against the scan itself."""
    today, in_use, spare = (
        c if c.verdict == "touches" else doubted(replace(c, verdict="clears"), findings, frame)
        for c in (now.today, now.in_use, now.spare)
    )
    return replace(now, today=today, in_use=in_use, spare=spare)


def now_of(job: Job, surface: Surface, standing: Standing, evidence: Evidence | None) -> Now:
    """The chances of one vehicle stood up on the finished work.

    What is left over what was asked for is the clearance of a vehicle whose every part hangs lower by what is
    asked under it: nothing else about it changes, so all that is said of clearances holds of this.
    """
    vehicle, asked = standing.vehicle, wanted_gap(job.wanted.want, job.wanted.want_ends)
    lower, seed = lowered(vehicle, asked), job.settings.seed
    clearance = sweep(lower, surface, standing.ride)
    passage = Passage(lower, surface, standing.ride, clearance, standing.driver.parts)
    told = None if evidence is None else lowered_evidence(evidence, vehicle, asked)
    drawn = draw_clearances(passage, seed, job.settings.draws, told)
    if drawn is None or clearance.worst is None:
        raise CrestcutError(
            "no part of the vehicle meets measured ground", job.path.name, "draw the line over the scan"
        )
    spare = chance_of(drawn, passage, job.wanted)
    tightest = standing.before.least[clearance.worst.zone]
    return Now(standing, standing.today, spare, tightest, asked[tightest.zone], standing.in_use)


def lowered(vehicle: Vehicle, by: Mapping[str, float]) -> Vehicle:
    """The vehicle with every hard part lower by what its zone is given, m."""
    parts = tuple(
        p if p.soft else replace(p, z=(p.z[0] - by[p.zone], p.z[1] - by[p.zone])) for p in vehicle.parts
    )
    return replace(vehicle, parts=parts)


def lowered_evidence(evidence: Evidence, vehicle: Vehicle, by: Mapping[str, float]) -> Evidence:
    """Readings of gaps as that vehicle would have given them; readings of the ground stay."""
    zone = {p.name: p.zone for p in vehicle.parts if not p.soft}
    readings = tuple(
        r if r.part not in zone else replace(
            r, predicted=r.predicted - by[zone[r.part]], observed=r.observed - by[zone[r.part]],
            exactly=r.exactly - by[zone[r.part]], lowered=r.lowered + by[zone[r.part]],
        )
        for r in evidence.readings
    )  # fmt: skip
    return Evidence(readings, evidence.noise)


def mixed(chances: Sequence[Chance], weights: Sequence[float], confidence: float) -> Chance:
    """One chance from several that each hold with a weight (their sum is 1): means and variances add up as
    those of a mixture do, and the interval's ends are its quantiles; a contradiction in any is kept."""
    w = np.asarray(weights)
    mean = np.array([c.least_clearance for c in chances])
    best = float(w @ mean)
    spread = float(np.sqrt(w @ (np.array([c.spread for c in chances]) ** 2 + (mean - best) ** 2)))
    touch = float(w @ np.array([c.chance_of_contact for c in chances]))
    main = chances[int(np.argmax(w))]
    told = "touches" if touch >= confidence else "clears" if touch <= 1 - confidence else "cannot tell"
    blocked = main.verdict == "cannot tell" and not 1 - confidence < main.chance_of_contact < confidence
    return replace(
        main, least_clearance=best, interval=_ends(chances, w), chance_of_contact=touch, spread=spread,
        verdict="cannot tell" if blocked else told,
    )  # fmt: skip


def _ends(chances: Sequence[Chance], weights: FloatArray) -> tuple[float, float]:
    """95 % of a mixture: where its distribution passes 2.5 and 97.5 %, each part a normal on either side of
    its best estimate that is as wide there as its own interval says."""
    middle = np.array([c.least_clearance for c in chances])
    side = np.abs(np.array([c.interval for c in chances]) - middle[:, None]) / special.ndtri(0.975)
    ends = []
    for share in (0.025, 0.975):
        low, high = float((middle - 8 * side[:, 0]).min()), float((middle + 8 * side[:, 1]).max())
        for _ in range(60):
            at = 0.5 * (low + high)
            wide = np.where(at < middle, side[:, 0], side[:, 1])
            below = float(weights @ special.ndtr((at - middle) / np.maximum(wide, 1e-9)))
            low, high = (at, high) if below < share else (low, at)
        ends.append(high)
    return ends[0], ends[1]


def what_to_measure(
    now: Now, surface: Surface, scan: Scan, job: Job, evidence: Evidence | None
) -> tuple[dict[str, object], ...]:
    """The measurements that would narrow the clearance most, each with kind, where, expect, narrows, how."""
    standing, sizes = now.standing, board_sizes(job)
    found = measure_first(
        Passage(standing.vehicle, surface, standing.ride, standing.before, standing.driver.parts),
        most=MOST, today=now.today, confidence=job.wanted.confidence, evidence=evidence,
        asked=now.asked,
    )  # fmt: skip
    rows = []
    for a in found:
        row = row_of(a, scan.frame, sizes, sure=False)
        places = np.array(row["where_xy"])
        # where the vehicle stands for it, as the job file takes it: the middle between its front wheels
        row["front_axle"] = places[:2].mean(axis=0).tolist() if a.kind == "felt gap" else None
        rows.append(row)
    return tuple(rows)
