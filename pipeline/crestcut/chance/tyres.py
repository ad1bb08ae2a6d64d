"""Tyres that stand near a break at the worst station: there a disk is no longer a fair tyre, and it is
said."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.chance.active_contacts import wheel_weights
from crestcut.contact import FRAMES, WHEELS, Passage, hard_parts, wheel_feet
from crestcut.terrain import Surface
from crestcut.vehicle import NEAR_BREAK, Vehicle, elastic_tyre

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
