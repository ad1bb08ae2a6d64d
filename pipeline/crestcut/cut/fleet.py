"""Several vehicles over one slab: the cut that clears all of them, and which vehicle needs which part of it.

Each vehicle has its own map from the ground to what its underside asks for; the common cut is the fixed
point of the largest of all these maps, sought by ``solve`` as for one vehicle. It is not the deepest of the
single cuts: with one vehicle's cut made another stands lower and may need more, or, where it tips up, less.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.contact import Clearance, Passage, Ride, sweep, wanted_gap
from crestcut.cut.feather import NO_ROOT
from crestcut.cut.plan import CUT, Cutter, cut_surface, plan_of, ride_on, sought
from crestcut.cut.problem import Problem, prepare
from crestcut.cut.records import CutPlan, Limits
from crestcut.cut.solver import Solution, solve
from crestcut.job import Wanted
from crestcut.terrain import Surface
from crestcut.vehicle import Vehicle

NOBODY = -1


@dataclass(frozen=True, eq=False)
class Member:
    """One vehicle of the job with its ride over the uncut slab, the clearance swept from it, and its
    margin, m.
    """

    vehicle: Vehicle
    ride: Ride
    before: Clearance
    margin: float = 0.0


@dataclass(frozen=True, eq=False)
class FleetPlan:
    """The common cut. Order of the members throughout.

    plan : as for one vehicle; ``after`` is the first member's, ``feasible`` and ``short_by`` are those of
    all.
    owner : (ny, nx) the member whose need sets the depth, its feather included; -1 where nothing is cut.
    alone : deepest cut each would need by itself, m.  litres : of each one's own part of the common cut.
    after : clearance of each over the cut.  excess : least gap of each beyond what is wanted and its
    margin, m.
    """

    plan: CutPlan
    names: tuple[str, ...]
    owner: NDArray[np.int16]
    alone: tuple[float, ...]
    litres: tuple[float, ...]
    after: tuple[Clearance, ...]
    excess: tuple[float, ...]


def plan_fleet(
    members: Sequence[Member], surface: Surface, limits: Limits, wanted: Wanted, feather: float = 0.25
) -> FleetPlan:
    """The cut that leaves every vehicle ``want`` and its margin within the limits; see ``plan.plan_cut``
    for a single one.

    Raises CrestcutError for no vehicle, or two of one name.
    """
    cutters, problems = _stated(members, surface, limits, wanted, feather)
    solution = solve(*problems)
    owner, found = _owners(solution), sought(solution, limits)
    alone = [float(solve(p).depth.max(initial=0.0)) for p in problems] if len(problems) > 1 else []
    del problems, solution  # their layers go before the sweep takes as much again
    plan = plan_of(found, limits, surface, cutters)
    lower = cut_surface(surface, np.nan_to_num(plan.depth.values))
    after = (plan.after, *(sweep(c.vehicle, lower, ride_on(c.ride, c.vehicle, lower)) for c in cutters[1:]))
    cell = surface.height.frame.cell
    depth = np.nan_to_num(plan.depth.values)
    return FleetPlan(
        plan=plan,
        names=tuple(m.vehicle.name for m in members),
        owner=owner,
        alone=tuple(alone) or (plan.deepest,),
        litres=tuple(float(depth[owner == k].sum()) * cell**2 * 1000 for k in range(len(members))),
        after=after,
        excess=tuple(
            min((x.gap - c.gaps[zone] for zone, x in a.least.items()), default=float("inf"))
            for a, c in zip(after, cutters, strict=True)
        ),
    )


def depth_for_fleet(
    members: Sequence[Member], surface: Surface, limits: Limits, wanted: Wanted, feather: float = 0.25
) -> FloatArray:
    """The depths of ``plan_fleet`` alone, (ny, nx) m, 0 where not measured: nothing is swept again."""
    _, problems = _stated(members, surface, limits, wanted, feather)
    return np.where(surface.height.measured, np.maximum(solve(*problems).depth, 0.0), 0.0)


def _stated(
    members: Sequence[Member], surface: Surface, limits: Limits, wanted: Wanted, feather: float
) -> tuple[list[Cutter], list[Problem]]:
    refuse_one_name(tuple(m.vehicle.name for m in members))
    asked = wanted_gap(wanted.want, wanted.want_ends)
    cutters = [
        Cutter(m.vehicle, m.ride, {z: g + m.margin for z, g in asked.items()}, m.margin, m.before)
        for m in members
    ]
    return cutters, [
        prepare(Passage(m.vehicle, surface, m.ride, m.before), limits, c.gaps, feather)
        for m, c in zip(members, cutters, strict=True)
    ]


def refuse_one_name(names: tuple[str, ...]) -> None:
    """Raise CrestcutError where there is no vehicle, or two share a name: shares could not be told apart."""
    twice = next((name for name in names if names.count(name) > 1), None)
    if not names or twice is not None:
        raise CrestcutError(
            f'two vehicles are named "{twice}"' if names else "no vehicle is there",
            "[[other_vehicle]]",
            "give each vehicle once, under a name of its own",
        )


def _owners(solution: Solution) -> NDArray[np.int16]:
    """Whose need sets the depth of each cell: a feather belongs to whoever set the cell it tapers from."""
    flat = np.arange(solution.depth.size).reshape(solution.depth.shape)
    root = np.where(solution.step.root == NO_ROOT, flat, solution.step.root)
    return np.where(solution.depth > CUT, solution.owner.ravel()[root], NOBODY).astype(np.int16)
