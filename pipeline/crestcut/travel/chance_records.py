"""What can be said of a clearance when surface and vehicle are known only so well."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Chance:
    """least_clearance : bias-corrected best estimate, m.  interval : 95 %, m.  chance_of_contact : 0..1.

    verdict : "clears" | "touches" | "cannot tell".  words : the chance in plain words ("about 1 in 30 that it
    touches").
    chance_of_want : of a planned surface, that every gap reaches what was asked there; NaN where nothing is
    planned.
    spread : 1 sd, m.  scan_share : the part of the spread's variance that comes from the scan, 0..1.
    """

    least_clearance: float
    interval: tuple[float, float]
    chance_of_contact: float
    verdict: str
    words: str
    spread: float
    scan_share: float
    draws: int
    reasons: tuple[str, ...] = ()
    chance_of_want: float = float("nan")


@dataclass(frozen=True)
class Left:
    """What a cut leaves of the clearance: at walking pace as measured, and in use, on the same draws."""

    today: Chance
    in_use: Chance
