"""The finished work as the drawing code takes it: the slab as it is now, with what is still to go."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from crestcut.base.grid import HeightGrid
from crestcut.cut import CutPlan
from crestcut.study import Report
from crestcut.verify import Check
from crestcut.work import ReleaseState

NOTHING = 0.0005  # m: a difference of scans less than this is not drawn as gone


def report_now(report: Report, check: Check) -> Report:
    """The slab as it is now under the vehicle with least to spare; the plan is what is still to go."""
    now = check.first
    standing, worst = now.standing, now.standing.before.worst
    before = standing.before
    if check.fights:
        before = replace(before, least={})
    elif worst is not None:  # the map says the figure that the words say, not the swept one with its bias
        spot = replace(worst, gap=now.today.least_clearance)
        before = replace(before, least={z: spot if c is worst else c for z, c in before.least.items()})
    return replace(
        report,
        surface=check.surface, vehicle=standing.vehicle, ride=standing.ride, before=before,
        today=now.today, plan=check.still, after=None, advice=check.advice, options=(), vehicles=(), soft=(),
        unsure=check.clearance == "cannot tell",
    )  # fmt: skip


def report_gone(report: Report, check: Check) -> Report:
    """The slab before the work with what is gone since, as two scans tell it, or, by hand alone, with the
    share of the plan that the readings make likely."""
    assert report.plan is not None
    depth = gone(report.plan, check)
    plan = replace(report.plan, depth=depth, deepest=float(np.nanmax(depth.values, initial=0.0)))
    before = replace(report.before, least={})  # the old worst place is gone with the concrete
    return replace(report, plan=plan, before=before, today=None)


def gone(plan: CutPlan, check: Check) -> HeightGrid:
    """Depth gone (ny, nx), m: zero outside the work, and where the difference is below what counts."""
    if check.removed is None:
        assert check.share is not None
        return plan.depth.like(plan.depth.values * check.share.best)
    removed = check.removed
    cut = removed.work | removed.elsewhere
    kept = np.where(cut & (removed.depth.values > NOTHING), removed.depth.values, 0.0)
    return plan.depth.like(np.where(np.isfinite(removed.depth.values), kept, np.nan))


def handed_out(report: Report, check: Check) -> bool:
    """Whether there are sheets for the pass that is still to go: of a job and a pass that are released."""
    rest = check.rest
    return (
        rest is not None and rest.release is not None and rest.release.state == ReleaseState.OK
        and report.release == ReleaseState.OK
    )  # fmt: skip
