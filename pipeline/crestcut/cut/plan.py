"""From what the underside needs to a plan of depths, with its proof."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import reduce

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.contact import (
    Batch,
    Clearance,
    Passage,
    Poses,
    Ride,
    Swept,
    ridden_ground,
    settle_batch,
    stands_by_limits,
    sweep,
    wanted_gap,
    wheel_feet,
)
from crestcut.cut.feather import NO_ROOT
from crestcut.cut.problem import prepare
from crestcut.cut.records import Certificate, CutPlan, Limits
from crestcut.cut.solver import Solution, solve
from crestcut.job import Wanted
from crestcut.terrain import Surface
from crestcut.vehicle import Vehicle

ENOUGH = 5e-5  # m: a gap this little under what was asked still counts as reached
PITCHED = 0.06  # of the wheelbase: the front axle comes this much nearer on a slope of 1 in 3
CUT = 5e-5  # m: shallower is not a cut


def plan_cut(
    passage: Passage, limits: Limits, wanted: Wanted, margin: float = 0.0, feather: float = 0.25
) -> CutPlan:
    """The least depth that leaves every gap ``want`` + ``margin``, within the limits; re-swept and certified.

    passage : over the uncut surface.  margin : m, kept on top of want for confidence.  feather : greatest
    change of depth over distance. Where limits bind, the plan is the best within them, ``feasible`` is
    False and ``short_by`` says how far the least gap stays below.
    """
    gaps = {zone: gap + margin for zone, gap in wanted_gap(wanted.want, wanted.want_ends).items()}
    cutter = Cutter(passage.vehicle, passage.ride, gaps, margin, passage.clearance)
    found = sought(solve(prepare(passage, limits, gaps, feather)), limits)
    return plan_of(found, limits, passage.surface, [cutter])


@dataclass(frozen=True, eq=False)
class Cutter:
    """A vehicle the cut is made for: what every zone must keep, m, of which ``margin`` is for confidence.

    before : its sweep over the uncut surface, where that is at hand: spares half of the sweep after.
    """

    vehicle: Vehicle
    ride: Ride
    gaps: Mapping[str, float]
    margin: float
    before: Clearance | None = None


@dataclass(frozen=True, eq=False)
class Sought:
    """What a solution comes to, without the layers of its last step: of a long lane those take as much as the
    sweep that follows.

    depth : (ny, nx) m.  held : (ny, nx) ``holds_itself``.  binding : reasons of the limits that hold it up.
    The others : as of ``Solution``.
    """

    depth: FloatArray
    held: BoolArray
    binding: tuple[str, ...]
    iterations: int
    residual: float
    rate: float
    least_weight: float


def sought(solution: Solution, limits: Limits) -> Sought:
    """What is kept of a solution within these limits."""
    depth = np.where(solution.depth > 0, solution.depth, 0.0)
    return Sought(
        depth, holds_itself(solution, limits.deepest.values, depth), _binding(limits, solution),
        solution.iterations, solution.residual, solution.rate, solution.least_weight,
    )  # fmt: skip


def plan_of(found: Sought, limits: Limits, surface: Surface, cutters: Sequence[Cutter]) -> CutPlan:
    """The plan that a solution amounts to, re-swept and certified for all its vehicles; ``after`` is the
    first one's."""
    cell, depth = surface.height.frame.cell, found.depth
    lower = cut_surface(surface, depth)
    after = [
        sweep(
            c.vehicle, lower, ride_on(c.ride, c.vehicle, lower, surface),
            earlier=None if c.before is None else Swept(surface, c.ride, c.before),
        )
        for c in cutters
    ]  # fmt: skip
    excess = reduce(np.fmin, (_excess(a, lower, c.gaps) for a, c in zip(after, cutters, strict=True)))
    contacts = [
        (c.gap - x.gaps[c.zone], c) for a, x in zip(after, cutters, strict=True) for c in a.least.values()
    ]
    short = min(contacts, key=lambda pair: pair[0])[1] if contacts else None
    certificate = _certify(found, excess)
    feasible = certificate.least_excess >= -ENOUGH
    return CutPlan(
        depth=surface.height.like(np.where(surface.height.measured, depth, np.nan)),
        finished=lower.height.like(
            lower.height.values
        ),  # of its own: what tyres stand on goes with the other
        limits=limits,
        margin=cutters[0].margin,
        deepest=float(depth.max(initial=0.0)),
        area=float((depth > CUT).sum()) * cell**2,
        volume=float(depth.sum()) * cell**2,
        feasible=feasible,
        # a wheel that hangs, or a cart on three of its four, follows other weights than these: then no least
        # cut is claimed
        claim="least"
        if found.least_weight >= -1e-9 and not any(stands_by_limits(c.vehicle) for c in cutters)
        else "maximal",
        slack=certificate.loosest,
        short_by=0.0 if feasible else max(-certificate.least_excess, 0.0),
        short_at=None if feasible else short,
        binding=found.binding,
        certificate=certificate,
        after=after[0],
    )


def cut_surface(surface: Surface, depth: FloatArray) -> Surface:
    """The same surface, lower: what is left after ``depth`` (ny, nx) is gone."""
    return replace(
        surface,
        height=surface.height.like(surface.height.values - depth),
        top=surface.top.like(surface.top.values - depth),
    )


def ride_on(ride: Ride, vehicle: Vehicle, surface: Surface, on: Surface | None = None) -> Ride:
    """The same ride, settled on another surface of the same frame. on : what it stood on, so that little
    is done twice."""
    ground, filled = ridden_ground(surface)
    cell, old = surface.height.frame.cell, ride.batch
    moved = np.arange(len(old.places))
    if on is not None:  # where no tyre meets a changed node, nothing moves
        moved = _tyres_over(vehicle, old.places, ground != ridden_ground(on)[0], cell)
    fresh = settle_batch(vehicle, ground, cell, old.places[moved], old.variant[moved])
    live, wheels, contact = old.live.copy(), old.wheels.copy(), old.contact.copy()
    position, rotation = old.position.copy(), old.rotation.copy()
    live[moved] &= fresh.live
    wheels[moved], contact[moved] = fresh.wheels, fresh.contact
    position[moved], rotation[moved] = fresh.position, fresh.rotation
    batch = Batch(old.places, old.variant, live, wheels, contact, position, rotation)
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
    return replace(ride, poses=tuple(poses), batch=batch, filled=filled)


def _tyres_over(vehicle: Vehicle, places: FloatArray, changed: BoolArray, cell: float) -> IntArray:
    """Places (n, 5) where a tyre's footprint, or what it may roll to as the pitch changes, touches a
    changed node: which ones."""
    reach = math.hypot(vehicle.tyre_radius, vehicle.tyre_width / 2) + PITCHED * vehicle.wheelbase
    size = 2 * math.ceil(reach / cell) + 1
    near = ndimage.maximum_filter(changed.astype(np.uint8), size, mode="constant")
    at = np.rint(wheel_feet(vehicle, places) / cell).astype(int)
    rows, columns = changed.shape
    inside = (at[..., 0] >= 0) & (at[..., 0] < columns) & (at[..., 1] >= 0) & (at[..., 1] < rows)
    met = near[np.clip(at[..., 1], 0, rows - 1), np.clip(at[..., 0], 0, columns - 1)] > 0
    return np.flatnonzero((met | ~inside).any(axis=1))


def _excess(after: Clearance, surface: Surface, gaps: Mapping[str, float]) -> FloatArray:
    """(ny, nx) least gap over what that zone must keep; NaN where nothing reaches or nothing is measured."""
    over = np.full(surface.top.values.shape, np.nan)
    for zone, grid in after.lowest.items():  # one by one: of a long lane a layer is 20 MB
        np.fmin(over, grid.values - gaps[zone], out=over)
    over -= surface.top.values
    return over


def _certify(found: Sought, excess: FloatArray) -> Certificate:
    known, held = excess[~np.isnan(excess)], found.held
    return Certificate(
        least_excess=float(known.min(initial=np.inf)) if len(known) else float("inf"),
        loosest=float(np.nanmax(excess[held], initial=0.0)) if held.any() else 0.0,
        spectral_radius=found.rate,
        iterations=found.iterations,
        residual=found.residual,
    )


def holds_itself(solution: Solution, allowed: FloatArray, depth: FloatArray) -> BoolArray:
    """Cut cells that neither a feather nor a limit holds: they must be tight."""
    return (
        (depth > CUT) & (solution.step.root == NO_ROOT) & (depth < allowed - 1e-9) & (solution.step.pair >= 0)
    )


def _binding(limits: Limits, solution: Solution) -> tuple[str, ...]:
    over = (solution.step.need > limits.deepest.values + ENOUGH) & (limits.reason >= 0)
    return tuple(limits.reasons[k] for k in np.unique(limits.reason[over]))
