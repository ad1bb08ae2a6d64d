"""What the cut does to the ground around it: water, and slopes people walk on."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Pond:
    """Water that stays: deepest (m), area (m2), volume (m3), level (m, site height), station and offset of
    its deepest place (m).
    """

    deepest: float
    area: float
    volume: float
    level: float
    station: float
    offset: float


@dataclass(frozen=True)
class Spill:
    """The level at which water rising at the gutter runs over to the building: its height over the gutter, m,
    and the saddle's place.
    """

    height: float
    station: float
    offset: float


@dataclass(frozen=True)
class Water:
    """Ponding and spill level before and after the cut.  ``flow`` : (station, offset, along, across) downhill
    unit arrows, after.
    """

    ponds_before: tuple[Pond, ...]
    ponds_after: tuple[Pond, ...]
    spill_before: Spill | None
    spill_after: Spill | None
    gutter: str
    building: str
    flow: tuple[tuple[float, float, float, float], ...]
    headline: str
    notes: tuple[str, ...]


@dataclass(frozen=True)
class WalkSlope:
    """Finished slopes of an area people walk on, rise over run: steepest along and across the way people go,
    and what rules say. ``step`` : depth of the cut inside it, m.
    """

    kind: str
    along_before: float
    across_before: float
    along_after: float
    across_after: float
    step: float
    said: tuple[str, ...]
