"""Several vehicles over one slab: the cut that clears all of them, and which vehicle needs which part of it.

Each vehicle alone has its least cut D_v, the least fixed point of its own map. The common cut is the least
fixed point of the
largest of all maps: with one vehicle's cut made, another stands lower and may need more. It is sought from
the largest of the single
cuts upward, which lies below it wherever the maps are monotone.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.cut.plan import CUT, ENOUGH, cut_surface, ride_on
from crestcut.cut.problem import Problem, evaluate, prepare
from crestcut.cut.records import Limits
from crestcut.cut.solve import solve
from crestcut.errors import CrestcutError
from crestcut.grid import HeightGrid
from crestcut.job.records import Wanted
from crestcut.surface.records import Surface
from crestcut.travel.records import Clearance, Ride
from crestcut.travel.sweep import sweep, wanted_gap
from crestcut.vehicle.records import Vehicle

TOLERANCE = 5e-6  # m
MOST_ROUNDS = 400
NOBODY = -1


@dataclass(frozen=True, eq=False)
class Member:
    """One vehicle of the job with its ride over the uncut slab and the clearance swept from it."""

    vehicle: Vehicle
    ride: Ride
    before: Clearance


@dataclass(frozen=True, eq=False)
class FleetCut:
    """The common cut. Order of the members throughout.

    depth : m, NaN not measured.  owner : (ny, nx) the member whose need sets the depth, feathers included, -1
        where nothing is cut.
    alone : deepest cut each would need by itself, m.  litres : of each one's own part.  after : clearance of
        each over the cut.
    excess : least gap of each beyond what is wanted, m.  feasible : all reach it.
    """

    names: tuple[str, ...]
    depth: HeightGrid
    owner: NDArray[np.int16]
    alone: tuple[float, ...]
    litres: tuple[float, ...]
    after: tuple[Clearance, ...]
    excess: tuple[float, ...]
    feasible: bool
    residual: float


def least_excess(clearance: Clearance, wanted: Wanted) -> float:
    """Least gap beyond what its zone must keep, m; infinite where nothing comes near."""
    gaps = wanted_gap(wanted.want, wanted.want_ends)
    return min((c.gap - gaps[zone] for zone, c in clearance.least.items()), default=float("inf"))


def plan_fleet(
    members: Sequence[Member],
    surface: Surface,
    limits: Limits,
    wanted: Wanted,
    margin: float = 0.0,
    feather: float = 0.25,
) -> FleetCut:
    """The cut that leaves every vehicle ``want`` + ``margin`` within the limits; see ``plan.plan_cut`` for a
    single one.

    Raises CrestcutError for no vehicle, or two of one name.
    """
    names = tuple(m.vehicle.name for m in members)
    if not names or len(set(names)) < len(names):
        raise CrestcutError(
            "each vehicle must be there once, under a name of its own", "[vehicle]", "rename one"
        )
    gaps = {zone: gap + margin for zone, gap in wanted_gap(wanted.want, wanted.want_ends).items()}
    problems = [prepare(m.vehicle, surface, m.ride, m.before, limits, gaps, feather) for m in members]
    single = [np.maximum(solve(problem).depth, 0.0) for problem in problems]
    depth, residual = _common(problems, np.maximum.reduce(single))
    lower = cut_surface(surface, depth)
    after = tuple(sweep(m.vehicle, lower, ride_on(m.ride, m.vehicle, lower)) for m in members)
    excess = tuple(least_excess(clearance, wanted) - margin for clearance in after)
    wants = np.stack([evaluate(problem, depth).depth for problem in problems])
    owner = np.where(depth > CUT, wants.argmax(axis=0), NOBODY).astype(np.int16)
    cell = problems[0].cell
    return FleetCut(
        names=names,
        depth=surface.height.like(np.where(surface.height.measured, depth, np.nan)),
        owner=owner,
        alone=tuple(float(d.max(initial=0.0)) for d in single),
        litres=tuple(float(depth[owner == k].sum()) * cell**2 * 1000 for k in range(len(members))),
        after=after,
        excess=excess,
        feasible=min(excess) >= -ENOUGH,
        residual=residual,
    )


def _common(problems: Sequence[Problem], depth: np.ndarray) -> tuple[np.ndarray, float]:
    """Deepen until no vehicle needs more. Steps shrink geometrically: what is left is residual / (1 - rate)."""
    residual, last = np.inf, np.inf
    for _ in range(MOST_ROUNDS):
        wanted = np.maximum.reduce([evaluate(problem, depth).depth for problem in problems])
        residual = float((wanted - depth).max(initial=0.0))
        rate = min(residual / last, 0.99) if np.isfinite(last) and last > 0 else 0.0
        depth = np.maximum(depth, wanted)
        if residual / (1 - rate) <= TOLERANCE:
            break
        last = residual
    return depth, residual
