"""The planned cut, shaped to drain where the job asks for it; the vehicles are swept over it anew."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.contact import Clearance, Ride, Swept, sweep, wanted_gap
from crestcut.cut import (
    CUT,
    ENOUGH,
    Drain,
    FleetPlan,
    Guided,
    Limits,
    Member,
    cut_surface,
    depth_for_fleet,
    feather_out,
    ride_on,
)
from crestcut.job import Wanted
from crestcut.terrain import Surface
from crestcut.work.drain import DEEPER, Shaped, shape_to_drain

ROUNDS = 4  # of shaping and cutting again: a tyre that rolls into a swale lets the underside down


def drained(
    fleet: FleetPlan, members: Sequence[Member], surface: Surface, limits: Limits, wanted: Wanted,
    fall: float, feather: float,
) -> FleetPlan:  # fmt: skip
    """The fleet's plan deepened until no water stands deeper on the cut than before, as far as limits allow.

    fall : of a swale's bed, rise over run.  What the plan claims (least, maximal) is said of the cut before
    it was shaped; ``plan.drain`` says what shaping added, and ``feasible`` counts the gaps of the shaped cut.
    """
    plan, cell = fleet.plan, surface.height.frame.cell
    ground, allowed = surface.height.values, limits.deepest.values
    depth = first = np.nan_to_num(plan.depth.values)
    swales, fell = 0, float("nan")
    for _ in range(ROUNDS):
        shaped = shape_to_drain(ground, depth, allowed, fall, feather, cell)
        depth, swales = shaped.depth, swales + shaped.swales
        fell = float(np.fmin(fell, shaped.fall))
        rides, after = swept_on(members, surface, depth)
        excess = excess_of(members, after, wanted)
        if shaped.swales == 0 or min(excess) >= min(-ENOUGH, *fleet.excess):
            break
        lower = cut_surface(surface, depth)
        rest = Limits(limits.deepest.like(np.maximum(allowed - depth, 0.0)), limits.reason, limits.reasons)
        standing = [
            Member(m.vehicle, ride, clear, m.margin)
            for m, ride, clear in zip(members, rides, after, strict=True)
        ]
        more = depth_for_fleet(standing, lower, rest, wanted, feather)
        depth = np.minimum(feather_out(depth + more, feather, cell)[0], np.maximum(allowed, depth))
    extra = float((depth - first).sum()) * cell**2
    drain = Drain(
        fall, fell, extra, swales, shaped.left <= DEEPER * 1.01, max(shaped.left, 0.0), _why(shaped, limits)
    )
    if drain.volume <= 0:
        return replace(fleet, plan=replace(fleet.plan, drain=drain))
    return retold(fleet, surface, depth, after, excess, drain=drain)


def swept_on(
    members: Sequence[Member], surface: Surface, depth: FloatArray
) -> tuple[list[Ride], tuple[Clearance, ...]]:
    """Every vehicle on the cut ground: how it rides, and what it clears."""
    lower = cut_surface(surface, depth)
    rides = [ride_on(m.ride, m.vehicle, lower, surface) for m in members]
    return rides, tuple(
        sweep(m.vehicle, lower, ride, Swept(surface, m.ride, m.before))
        for m, ride in zip(members, rides, strict=True)
    )


def excess_of(members: Sequence[Member], after: Sequence[Clearance], wanted: Wanted) -> tuple[float, ...]:
    """Least gap of each vehicle beyond what is wanted and its margin, m."""
    asked = wanted_gap(wanted.want, wanted.want_ends)
    return tuple(
        min((c.gap - asked[zone] - m.margin for zone, c in a.least.items()), default=float("inf"))
        for m, a in zip(members, after, strict=True)
    )


def retold(
    fleet: FleetPlan, surface: Surface, depth: FloatArray, after: tuple[Clearance, ...],
    excess: tuple[float, ...], drain: Drain | None = None, guided: Guided | None = None,
) -> FleetPlan:  # fmt: skip
    """The plan with the depths that were made of it, as they were swept; what it claims stays the cut's
    before.
    """
    cell, old = surface.height.frame.cell, fleet.plan
    short = max(-min(excess), 0.0)
    feasible = old.feasible and short <= ENOUGH
    plan = replace(
        old,
        depth=old.depth.like(np.where(surface.height.measured, depth, np.nan)),
        finished=cut_surface(surface, depth).height,
        deepest=float(depth.max(initial=0.0)),
        area=float((depth > CUT).sum()) * cell**2,
        volume=float(depth.sum()) * cell**2,
        feasible=feasible,
        short_by=old.short_by if not old.feasible else 0.0 if feasible else short,
        after=after[0],
        certificate=replace(old.certificate, least_excess=min(old.certificate.least_excess, *excess)),
        drain=drain or old.drain,
        guided=guided,
    )
    return replace(fleet, plan=plan, after=after, excess=excess)


def _why(shaped: Shaped, limits: Limits) -> tuple[str, ...]:
    """What limits the cut where a pond was found that cannot be let out."""
    found = {int(limits.reason[place]) for place in shaped.stuck}
    return tuple(limits.reasons[k] for k in sorted(found) if k >= 0)
