"""Slab and vehicle given what was read by hand: the draws of both moved until each says so, and their means.

Readings are met as ``held`` meets them, on the nodes that matter to them; what moves the draws there
moves the whole slab (Matheron's rule on the draws themselves, whose covariance stands for the posterior's:
Evensen, Ocean Dynamics 53, 2003).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from scipy import linalg

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.chance.active_contacts import find_active_contacts
from crestcut.chance.drawn_errors import DrawnErrors
from crestcut.chance.draws import reach_of
from crestcut.contact import Passage
from crestcut.terrain import Evidence, Surface, sums_of
from crestcut.vehicle import Vehicle


@dataclass(frozen=True, eq=False)
class Updated:
    """surface, vehicle : at their expected heights given the readings.  parts (hard parts, d) : drawn heights
    about those, m.  contradictions : in words; then nothing was moved."""

    surface: Surface
    vehicle: Vehicle
    parts: FloatArray | None
    contradictions: tuple[str, ...] = ()


def given(passage: Passage, evidence: Evidence | None, seed: int) -> Updated:
    """What the readings make of slab and vehicle. passage : on the slab before they are used. Raises
    CrestcutError where so little is measured that the slab was not judged (``slab.behind``).
    """
    vehicle, surface = passage.vehicle, passage.surface
    slab, nothing = surface.error.slab, Updated(surface, vehicle, None)
    if evidence is None or not evidence.readings:
        return nothing
    if slab is None:
        raise CrestcutError(
            "too little of the slab is measured for readings by hand to be carried over it",
            evidence.readings[0].name,
            "scan all that the vehicle rolls over, or take the readings out of the job",
        )
    contacts = find_active_contacts(passage, reach_of(passage), evidence, poses=1)
    assert contacts is not None  # the sweep has met measured ground
    errors = DrawnErrors(passage, contacts, evidence, seed, slab.count // 2)
    if errors.fold.contradictions:
        return replace(nothing, contradictions=errors.fold.contradictions)
    assert errors.steps is not None and errors.fold.own is not None
    readings = errors.snapped
    sums = sums_of(slab, [r.points for r in readings], [r.weights for r in readings])
    moved, change = slab.moved(sums, linalg.solve(errors.fold.own, errors.steps, assume_a="pos"))
    rise = change.mean_over(surface.height.frame)
    height, top = (g.like(g.values + rise) for g in (surface.height, surface.top))
    told = replace(surface, height=height, top=top, error=replace(surface.error, slab=moved))
    return Updated(told, moved_vehicle(vehicle, errors.fold.parts), errors.parts)


def moved_vehicle(vehicle: Vehicle, up: FloatArray) -> Vehicle:
    """Hard parts at their expected heights."""
    left = iter(up)
    parts = tuple(
        p if p.soft else replace(p, z=(p.z[0] + (rise := float(next(left))), p.z[1] + rise))
        for p in vehicle.parts
    )
    return replace(vehicle, parts=parts)
