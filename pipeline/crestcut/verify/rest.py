"""What is left to grind: how much is short, how deep the next pass may go, and its plan by the same path as
any: least cut, few facets that a board guides, second opinion, release.

Concrete does not come back. A pass is planned on the mean of what the slab may be; on every draw of it, some
other place is left highest, so that the least gap after a pass spreads about what was promised (as for any
plan: ``chance.planned``). It goes as deep as makes the job as sure as was asked, but no deeper than leaves
more than ``OVER`` of room with chance ``RARELY``. After it the gap is felt again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, HeightGrid
from crestcut.chance import Left, margin_at_most, margin_for
from crestcut.cut import CutPlan, FleetPlan, Limits, contradiction, cut_limits, deepest_allowed, load_caster
from crestcut.job import Job, Wanted
from crestcut.standing import Standing, judged_after
from crestcut.study import Report, cast_again, keeps_of, planned
from crestcut.terrain import Surface
from crestcut.verify.records import Now, Rest, Short
from crestcut.verify.removed import PLANNED, Removed
from crestcut.work import SKIN, decide_release, guided

OVER = 0.001  # m: a pass may go this much too deep ...
RARELY = 0.005  # ... or more, with this chance at most


@dataclass(frozen=True)
class Pass:
    """margin : m on top of what is asked that it is planned with.  whole : it makes the job as sure as was
    asked."""

    margin: float
    whole: bool


@dataclass(frozen=True, eq=False)
class Ground:
    """The slab as it is taken to be, what is gone of it, (ny, nx) m, and where it is not as it was."""

    surface: Surface
    gone: FloatArray
    touched: BoolArray


def ground_now(surface: Surface, gone: FloatArray, plan: CutPlan, removed: Removed | None) -> Ground:
    """removed : of two scans; None by hand alone, where the plan is taken to have been followed."""
    touched = np.nan_to_num(plan.depth.values) > PLANNED
    return Ground(surface, gone, touched if removed is None else touched | removed.elsewhere)


def short_of(now: Now) -> Short:
    """How much a vehicle is short of what was asked."""
    low, high = now.spare.interval
    return Short(-now.spare.least_clearance, (-high, -low))


def pass_of(now: Now, told: Now, wanted: Wanted) -> Pass:
    """How deep the next pass may go under a vehicle.

    told : it on the ground that the pass is planned on, where the readings put things; whose draws are as
    much more hopeful as its median is.
    """
    more = told.spare.least_clearance - now.spare.least_clearance
    enough = margin_for(told.standing.cut, wanted)
    most = margin_at_most(told.standing.cut, OVER, RARELY)
    return Pass(min(enough, most) + more, enough <= most)


def still_to_go(
    job: Job, report: Report, now: Sequence[Now], ground: Ground, margins: Sequence[float], clearance: str
) -> tuple[FleetPlan, list[Standing]]:
    """The plan of the next pass, nothing where it is done, and the vehicles that it was made for.

    margins : m on top of what is asked, of each vehicle, as it stands on ``ground``.
    """
    limits = _limits_left(job, report, ground)
    if clearance == "done":
        limits = replace(limits, deepest=limits.deepest.like(np.zeros_like(limits.deepest.values)))
    standings = [replace(n.standing, margin=m) for n, m in zip(now, margins, strict=True)]
    fleet = planned(standings, ground.surface, limits, job.cut)
    if clearance == "done":
        whole = replace(fleet.plan, feasible=True, short_by=0.0, binding=())
        fleet = replace(fleet, plan=whole)
    return fleet, standings


def _limits_left(job: Job, report: Report, ground: Ground) -> Limits:
    """The job's limits less what is gone already."""
    limit, surface = deepest_allowed(job.cut, job.slab), ground.surface
    limits = cut_limits(
        surface, limit.depth, limit.reason, job.cut.feather, keeps_of(job, report.scan, surface)
    )
    left = np.maximum(limits.deepest.values - np.maximum(ground.gone, 0.0), 0.0)
    return replace(limits, deepest=HeightGrid(surface.height.frame, left))


def rest_of(
    job: Job, report: Report, fleet: FleetPlan, standings: Sequence[Standing], ground: Ground
) -> tuple[FleetPlan, Rest | None]:
    """The plan with its method, made of facets where that is the board, and what may be said of it; None
    where there is nothing to hand out: no plan that reaches it, or nothing deeper than a skin.

    Blocks and strings stand where nothing was cut.
    """
    plan = fleet.plan
    if plan.deepest <= SKIN or not plan.feasible:
        return fleet, None
    surface = replace(ground.surface, slab=ground.surface.slab & ~ground.touched)
    members = [s.member for s in standings]
    notes: tuple[str, ...] = ()
    try:
        fleet = guided(fleet, members, surface, plan.limits, job)
    except CrestcutError as error:  # what was asked for the whole need not be possible for the rest
        notes = (f"{error.what}: another method was chosen for the rest",)
        job = replace(job, work=replace(job.work, method=None))
        try:
            fleet = guided(fleet, members, surface, plan.limits, job)
        except CrestcutError as none:
            return fleet, Rest(surface, job, None, None, (f"no sheets for the rest: {none.what}",))
    cast = cast_again(load_caster(), job, ground.surface, standings, fleet)
    unsure = any(doubt.decides for doubt in ground.surface.error.doubts) or bool(standings[0].today.doubts)
    release = decide_release(job, unsure, fleet.plan, "", contradiction(cast))
    left: Left = judged_after(
        standings[0], fleet.after[0], fleet.plan.limits, ground.surface, report.scan.frame
    )
    return fleet, Rest(surface, job, release, left, notes)
