"""From what the underside needs to a plan of depths, with its proof."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from crestcut.cut.feather import NO_ROOT
from crestcut.cut.problem import prepare
from crestcut.cut.records import Certificate, CutPlan, Limits
from crestcut.cut.solve import Solution, solve
from crestcut.grid import BoolArray, FloatArray
from crestcut.job.records import Wanted
from crestcut.surface.records import Surface
from crestcut.travel.records import Batch, Clearance, Contact, Poses, Ride
from crestcut.travel.ride import ridden_ground, settle_batch
from crestcut.travel.springs import stands_by_limits
from crestcut.travel.sweep import sweep, wanted_gap
from crestcut.vehicle.records import Vehicle

ENOUGH = 5e-5  # m: a gap this little under what was asked still counts as reached
CUT = 5e-5  # m: shallower is not a cut


def plan_cut(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    before: Clearance,
    limits: Limits,
    wanted: Wanted,
    margin: float = 0.0,
    feather: float = 0.25,
) -> CutPlan:
    """The least depth that leaves every gap ``want`` + ``margin``, within the limits; re-swept and certified.

    margin : m, kept on top of want for confidence.  feather : greatest change of depth over distance.
    Where limits bind, the plan is the best within them, ``feasible`` is False and ``short_by`` says how far the least gap stays below.
    """
    gaps = {zone: gap + margin for zone, gap in wanted_gap(wanted.want, wanted.want_ends).items()}
    problem = prepare(vehicle, surface, ride, before, limits, gaps, feather)
    solution = solve(problem)
    depth = np.where(solution.depth > 0, solution.depth, 0.0)
    lower = cut_surface(surface, depth)
    after = sweep(vehicle, lower, ride_on(ride, vehicle, lower))
    excess = _excess(after, lower, gaps)
    certificate, short = _certify(solution, problem.allowed, depth, excess, after, gaps)
    return CutPlan(
        depth=surface.height.like(np.where(surface.height.measured, depth, np.nan)),
        finished=lower.height,
        limits=limits,
        margin=margin,
        deepest=float(depth.max(initial=0.0)),
        area=float((depth > CUT).sum()) * problem.cell**2,
        volume=float(depth.sum()) * problem.cell**2,
        feasible=certificate.least_excess >= -ENOUGH,
        # a wheel that hangs, or a cart on three of its four, follows other weights than these: then no least cut is claimed
        claim="least" if solution.least_weight >= -1e-9 and not stands_by_limits(vehicle) else "maximal",
        slack=certificate.loosest,
        short_by=max(-certificate.least_excess, 0.0) if certificate.least_excess < -ENOUGH else 0.0,
        short_at=short if certificate.least_excess < -ENOUGH else None,
        binding=_binding(limits, solution, problem.allowed),
        certificate=certificate,
        after=after,
    )


def cut_surface(surface: Surface, depth: FloatArray) -> Surface:
    """The same surface, lower: what is left after ``depth`` (ny, nx) is gone."""
    return replace(
        surface,
        height=surface.height.like(surface.height.values - depth),
        top=surface.top.like(surface.top.values - depth),
    )


def ride_on(ride: Ride, vehicle: Vehicle, surface: Surface) -> Ride:
    """The same ride, settled on another surface of the same frame."""
    ground, filled = ridden_ground(surface)
    old = ride.batch
    new = settle_batch(vehicle, ground, surface.height.frame.cell, old.places, old.variant)
    batch = Batch(old.places, old.variant, old.live & new.live, new.wheels, new.contact, new.position, new.rotation)
    poses, at = [], 0
    for pose in ride.poses:
        part = slice(at, at + len(pose.station))
        at = part.stop
        poses.append(
            Poses(
                pose.variant, pose.station, batch.wheels[part], batch.contact[part],
                batch.position[part, 0], batch.rotation[part, 0], batch.live[part],
            )
        )  # fmt: skip
    return Ride(ride.line, tuple(poses), batch, filled, ride.notes)


def _excess(after: Clearance, surface: Surface, gaps: dict[str, float]) -> FloatArray:
    """(ny, nx) least gap over what that zone must keep; NaN where nothing reaches or nothing is measured."""
    over = [grid.values - gaps[zone] for zone, grid in after.lowest.items()]
    if not over:
        return np.full(surface.top.values.shape, np.nan)
    return np.fmin.reduce(over) - surface.top.values


def _certify(
    solution: Solution, allowed: FloatArray, depth: FloatArray, excess: FloatArray, after: Clearance, gaps: dict[str, float]
) -> tuple[Certificate, Contact | None]:
    known = excess[~np.isnan(excess)]
    held = holds_itself(solution, allowed, depth)
    loosest = float(np.nanmax(excess[held], initial=0.0)) if held.any() else 0.0
    short = min(after.least.values(), key=lambda c: c.gap - gaps[c.zone], default=None)
    certificate = Certificate(
        least_excess=float(known.min(initial=np.inf)) if len(known) else float("inf"),
        loosest=loosest,
        spectral_radius=solution.rate,
        iterations=solution.iterations,
        residual=solution.residual,
    )
    return certificate, short


def holds_itself(solution: Solution, allowed: FloatArray, depth: FloatArray) -> BoolArray:
    """Cut cells that neither a feather nor a limit holds: they must be tight."""
    return (depth > CUT) & (solution.step.root == NO_ROOT) & (depth < allowed - 1e-9) & (solution.step.pair >= 0)


def _binding(limits: Limits, solution: Solution, allowed: FloatArray) -> tuple[str, ...]:
    over = (solution.step.need > allowed + ENOUGH) & (limits.reason >= 0)
    return tuple(limits.reasons[k] for k in np.unique(limits.reason[over]))
