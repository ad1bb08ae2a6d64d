"""Parts that may touch: reported apart, never counted in the verdict."""

from __future__ import annotations

from dataclasses import dataclass, replace

from crestcut.base.units import both
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.records import Contact, Ride
from crestcut.terrain import Surface
from crestcut.vehicle import Vehicle


@dataclass(frozen=True)
class SoftContact:
    """A soft part that touches: where, and how far it is pressed or bent, m."""

    part: str
    pressed: float
    at: Contact

    @property
    def words(self) -> str:
        """One plain sentence, without where."""
        return f"{self.part} may touch and does: it is pressed by {both(self.pressed)}"


def soft_contacts(vehicle: Vehicle, surface: Surface, ride: Ride) -> tuple[SoftContact, ...]:
    """Every ``soft`` part that meets the ground, deepest first; empty where none does."""
    found = []
    for part in vehicle.parts:
        if part.soft:
            alone = replace(vehicle, parts=(replace(part, soft=False),))
            worst = sweep(alone, surface, ride, cells=False).worst
            if worst is not None and worst.gap < 0:
                found.append(SoftContact(part.name, -worst.gap, worst))
    return tuple(sorted(found, key=lambda c: -c.pressed))
