"""What moves the body against 'as measured': loads at a place, a trailer's hitch, worn tyres, soft tyres.
Each with its source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from crestcut.errors import CrestcutError
from crestcut.vehicle.records import LoadState, Vehicle

PRACTICE = "common practice, no source"
NEW_TREAD, LEAST_TREAD = 0.008, 0.0016  # m: new car tyre; worn out (common practice, no source)
PRESSED = 0.020  # m a car tyre is pressed at its rated load and pressure (common practice, no source)
SOFT = 0.15  # share of its pressure that a tyre loses unnoticed over a season (common practice, no source)
NEAR_BREAK = 0.15  # m between a wheel and a break within which the disk is no longer a fair tyre
# how much lower than the disk an elastic tyre rides on a 20 % apex, m (own prototype); smaller breaks in
# proportion
APEX, APEX_GRADE = 0.0058, 0.20


@dataclass(frozen=True)
class Allowance:
    """How much lower the body may ride in use, m, and where the figure comes from."""

    name: str
    lower: float
    source: str


def load_at(vehicle: Vehicle, newtons: float, back: float, name: str) -> LoadState:
    """The load state of a weight put ``back`` metres behind the front axle (a hitch lies beyond the
    wheelbase).

    Statics: the rear axle takes weight x back / wheelbase, the front the rest (less than nothing beyond the
    rear axle); each corner of
    rate k moves by half of its axle's share over k. Raises CrestcutError where springs were not measured.
    """
    springs = vehicle.springs
    if vehicle.rigid:
        return LoadState(name)
    if not springs.measured:
        raise CrestcutError(
            "how far a load presses the springs is not known",
            f"{vehicle.name}: [springs]",
            "measure the rates, or the drop itself",
        )
    if not (math.isfinite(newtons) and newtons >= 0 and math.isfinite(back)):
        raise CrestcutError("a weight of zero or more expected", f"{vehicle.name}: load", "give it in N")
    rear = newtons * back / vehicle.wheelbase
    return LoadState(name, -(newtons - rear) / (2 * springs.front_rate), -rear / (2 * springs.rear_rate))


def combined(name: str, *states: LoadState) -> LoadState:
    """Several loads at once: springs are linear, so their drops add up."""
    return LoadState(name, sum(s.front for s in states), sum(s.rear for s in states))


def tyre_allowances(tread: float | None = None) -> tuple[Allowance, ...]:
    """Wear from today's ``tread`` (m, default new) down to worn out, and pressure lost over a season."""
    wear = max((NEW_TREAD if tread is None else tread) - LEAST_TREAD, 0.0)
    # the rate of a tyre grows about as its pressure: the same load presses it by 1 / (1 - SOFT) as much
    soft = PRESSED * (1 / (1 - SOFT) - 1)
    return (Allowance("tyre wear", wear, PRACTICE), Allowance("tyre pressure", soft, PRACTICE))


def elastic_tyre(distance: float, grade: float) -> Allowance | None:
    """How much lower than a disk an elastic tyre may ride near a break; None further away than
    ``NEAR_BREAK``.

    distance : m from the wheel to the break.  grade : change of slope there (0.2 = 20 %).
    """
    if distance > NEAR_BREAK:
        return None
    return Allowance(
        "elastic tyre on a break",
        APEX * min(abs(grade) / APEX_GRADE, 1.0),
        "own prototype: 5.8 mm on a 20 % apex",
    )
