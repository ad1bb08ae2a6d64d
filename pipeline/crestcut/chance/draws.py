"""Seeded draws of surface and vehicle through ride and sweep, at the poses that could decide."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.chance.active_contacts import ActiveContacts, find_active_contacts, wheel_weights
from crestcut.chance.drawn_errors import DrawnErrors
from crestcut.chance.rounded import crest_cut
from crestcut.contact import FRAMES, WHEELS, Passage, hard_parts, wheel_feet
from crestcut.terrain import Conditioned, Evidence, Surface
from crestcut.vehicle import NEAR_BREAK, Vehicle, elastic_tyre

REACH = 4.0  # standard deviations that a pair may come down against the least one and still be looked at
LEAST_REACH = 0.004  # m
BASE = 0.15  # m: slopes before and after a place are taken over so much (a contact patch, common practice)
LEAST_BREAK = 0.04  # change of slope: less is unevenness, and worth a millimetre at most
SURE = 3.0  # standard deviations that a break must stand over the scan's own roughness


@dataclass(frozen=True)
class SoftTyres:
    """How far the least gap may be off because tyres give: down and up, m (>= 0), and in words."""

    lower: float = 0.0
    higher: float = 0.0
    said: tuple[str, ...] = ()


NO_SOFT_TYRES = SoftTyres()


@dataclass(frozen=True, eq=False)
class Draws:
    """Least clearances on drawn surfaces with drawn vehicles, metres.

    base : least gap on the surface that is drawn, the mean of all (hand measurements folded in): smoother
    than any draw, so a little more hopeful.  least : (n,) least gap of each.  vehicle : (n,) the same with
    the vehicle's own errors only.  fold : what the readings made of it.  evidence : the readings that were
    folded in.  tyres : what their giving may change at the worst station.  rounded : what a mesh may have
    cut off the crest at the worst place, m.  seed : that they were drawn with.
    """

    base: float
    least: FloatArray
    vehicle: FloatArray
    fold: Conditioned
    evidence: Evidence | None = None
    tyres: SoftTyres = NO_SOFT_TYRES
    rounded: float = 0.0
    seed: int = 0


def reach_of(passage: Passage) -> float:
    """How far two gaps may move against each other, m."""
    error = passage.surface.error
    tolerance = max((p.within for p in hard_parts(passage.vehicle)), default=0.0)
    if error.slab is not None:
        patch, warp = error.worked
        own = error.slab.spread**2 + patch**2 + warp**2
    else:
        own = error.warp**2 + error.patch**2
    return max(REACH * float(np.sqrt(own + tolerance**2)), LEAST_REACH)


def draw_clearances(
    passage: Passage, seed: int = 0, draws: int = 200, evidence: Evidence | None = None
) -> Draws | None:
    """Gaps of the pairs that could be least, ``draws`` times. None where no part meets measured ground.

    Surfaces are drawn from what the surface's error says (given what was measured by hand), the heights of
    parts from their ``within``.
    """
    surface = passage.surface
    contacts = find_active_contacts(passage, reach_of(passage), evidence)
    if contacts is None:
        return None
    errors = DrawnErrors(passage, contacts, evidence, seed, max(draws // 2, 2))
    if passage.contradictions:
        errors.fold = replace(errors.fold, contradictions=passage.contradictions)
    used = None if errors.fold.contradictions else evidence
    rounded = crest_cut(surface.height, passage.clearance, surface.error.mesh_edge)
    found = _collect(contacts, errors)
    return replace(found, seed=seed, tyres=soft_tyres(passage), rounded=rounded, evidence=used)


def _collect(contacts: ActiveContacts, errors: DrawnErrors) -> Draws:
    """The least gap of every draw. What is drawn is what slab and vehicle may be, the scan's own error not in
    it, so nothing is to be taken off for the choice of the least."""
    fold, part = errors.fold, contacts.pair_part[: contacts.judged]
    none, still = -fold.ground.astype(np.float32)[:, None], fold.parts[:, None]
    level = contacts.drawn(none, still)
    least = contacts.drawn(none - errors.ground, still + errors.parts).min(axis=0)
    only = (level + errors.parts[part]).min(axis=0)
    return Draws(
        float(level.min()), np.asarray(least, dtype=np.float64), np.asarray(only, dtype=np.float64),
        fold,
    )  # fmt: skip


def soft_tyres(passage: Passage) -> SoftTyres:
    """What elastic tyres may take off (or, under a wheel with a negative weight, add to) the least gap.

    Only for tyres within ``NEAR_BREAK`` of a convex break at the worst station; elsewhere a disk is fair.
    """
    vehicle, surface, ride = passage.vehicle, passage.surface, passage.ride
    worst = passage.clearance.worst
    if worst is None or vehicle.rigid:
        return SoftTyres()
    variant, station = worst.pose
    pose = int(np.searchsorted(ride.batch.variant, variant)) + station
    place, frame = ride.batch.places[pose], surface.height.frame
    body = FRAMES.index(next(p for p in hard_parts(vehicle) if p.name == worst.part).on)
    at = np.append(frame.to_grid(worst.xy), float(surface.height.sample(np.array(worst.xy))))
    local = (at - ride.batch.position[pose, body]) @ ride.batch.rotation[pose, body]
    weights = wheel_weights(vehicle, local[:1], local[1:2], np.array([body]))[0]
    heading = np.array([np.cos(place[2]), np.sin(place[2])])
    lower = higher = 0.0
    said = []
    for wheel, (foot, weight) in enumerate(zip(wheel_feet(vehicle, place[None])[0], weights, strict=True)):
        distance, grade = nearest_break(vehicle, surface, foot, heading)
        give = elastic_tyre(distance, grade) if grade >= LEAST_BREAK else None
        if give is None or abs(weight) * give.lower < 1e-4:
            continue
        lower, higher = lower + max(weight, 0.0) * give.lower, higher + max(-weight, 0.0) * give.lower
        said.append(
            f"the {WHEELS[wheel]} tyre stands {millimetres(distance, 0)} from a break of {grade:.0%}, where "
            f"it may sink up to {millimetres(give.lower)} more than the rigid disk reckoned with "
            f"({give.source}): the interval is wider by {millimetres(abs(weight) * give.lower)}"
        )
    return SoftTyres(lower, higher, tuple(said))


def nearest_break(
    vehicle: Vehicle, surface: Surface, foot: FloatArray, heading: FloatArray
) -> tuple[float, float]:
    """Distance (m) along the heading to the sharpest convex break near a wheel's foot (grid u, v), and the
    change of slope there (0.1 = 10 %, 0 where there is none that the scan is sure of)."""
    cell, across = surface.height.frame.cell, np.array([-heading[1], heading[0]])
    along = np.arange(-NEAR_BREAK - BASE, NEAR_BREAK + BASE + cell / 2, cell)
    beside = np.linspace(-vehicle.tyre_width / 2, vehicle.tyre_width / 2, 5)
    places = foot + along[:, None, None] * heading + beside[:, None] * across
    profile = surface.height.sample(surface.height.frame.to_site(places)).mean(axis=1)
    step = round(BASE / cell)
    change = -(profile[2 * step :] - 2 * profile[step:-step] + profile[: -2 * step]) / (step * cell)
    if not len(change) or np.isnan(change).all():
        return NEAR_BREAK, 0.0
    k = int(np.nanargmax(change))
    # three heights of independent roughness: variance 6 over the base squared
    rough = np.sqrt(6.0) * surface.error.patch / BASE
    grade = float(change[k])
    return abs(float(along[step + k])), grade if grade > SURE * rough else 0.0
