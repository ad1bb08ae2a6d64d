"""What moves the body against 'as measured': loads at a place, a trailer's hitch, worn tyres, soft tyres.
Each with its source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace

from crestcut.base.errors import CrestcutError
from crestcut.vehicle.records import LoadState, Vehicle

PRACTICE = "common practice, no source"
GRAVITY = 9.80665  # m/s2, standard acceleration of free fall, exact (3rd CGPM, 1901)
NEW_TREAD, LEAST_TREAD = 0.008, 0.0016  # m: new car tyre; worn out (common practice, no source)
CART_WEAR = 0.002  # m off a solid cart wheel before it is changed (common practice, no source)
PRESSED = 0.020  # m a car tyre is pressed at its rated load and pressure (common practice, no source)
SOFT = 0.15  # share of its pressure that a tyre loses unnoticed over a season (common practice, no source)
NEAR_BREAK = 0.15  # m between a wheel and a break within which the disk is no longer a fair tyre
# how much lower than the disk an elastic tyre rides on a 20 % apex, m: radial springs, pressed by 25 mm on
# the level (tests/bench/elastic_tyre.py; 20 mm: 4.9 to 5.5); smaller breaks in proportion
APEX, APEX_GRADE = 0.0058, 0.20


@dataclass(frozen=True)
class Allowance:
    """How much lower the body may ride in use, m, and where the figure comes from.

    pace : of the way it is driven, and gone where that is slower.
    """

    name: str
    lower: float
    source: str
    pace: bool = False


def load_at(vehicle: Vehicle, newtons: float, back: float, name: str) -> LoadState:
    """The load state of a weight put ``back`` metres behind the front axle (a hitch lies beyond the
    wheelbase).

    newtons : N, 0 or more.  Statics: the rear axle takes weight x back / wheelbase, the front the rest (less
    than nothing beyond the rear axle); each corner of rate k moves by half of its axle's share over k, so
    a corner's share of mass m drops it by m g / k. The tyres' own give is not in it (their rate is some eight
    times a spring's). A rigid cart does not move. Raises CrestcutError where springs were not measured.
    """
    springs = vehicle.springs
    if not (math.isfinite(newtons) and newtons >= 0 and math.isfinite(back)):
        raise CrestcutError(
            "a weight of zero or more expected", f"{vehicle.path.name}: load.{name}", "give it in N or kg"
        )
    if vehicle.rigid:
        return LoadState(name)
    if not springs.measured:
        raise CrestcutError(
            "how far a load presses the springs is not known",
            f"{vehicle.path.name}: load.{name}",
            "write the rate of both axles' springs under [springs], or the drop itself (front and rear)",
        )
    rear = newtons * back / vehicle.wheelbase
    return LoadState(name, -(newtons - rear) / (2 * springs.front_rate), -rear / (2 * springs.rear_rate))


def combined(name: str, *states: LoadState) -> LoadState:
    """Several loads at once: springs are linear, so their drops add up."""
    return LoadState(name, sum(s.front for s in states), sum(s.rear for s in states))


def tyre_allowances(tread: float | None = None) -> tuple[Allowance, ...]:
    """Wear from today's ``tread`` (m, default new) down to worn out, and pressure lost over a season."""
    wear = max((NEW_TREAD if tread is None else tread) - LEAST_TREAD, 0.0)
    today = "a new tyre's 8 mm" if tread is None else f"the {tread * 1000:g} mm measured"
    # the rate of a tyre grows about as its pressure: the same load presses it by 1 / (1 - SOFT) as much
    soft = PRESSED * (1 / (1 - SOFT) - 1)
    return (
        Allowance("tyre wear", wear, f"from {today} to 1.6 mm: {PRACTICE}"),
        Allowance("tyre pressure", soft, f"15 % lost of what presses a tyre by 20 mm: {PRACTICE}"),
    )


def in_use_table(
    own: Iterable[tuple[str, float]] = (), tread: float | None = None, rigid: bool = False
) -> tuple[Allowance, ...]:
    """Every allowance that 'in use' takes off, in the order it is printed.

    own : (name, m) as the job file gives them: a name of the table replaces its figure (0 drops it), any
    other name is added.  tread : m of the tyres today, None where it was not measured.  rigid : a cart
    without springs does not sink under a load, bounce or dip when braked, and rolls on solid wheels.
    """
    sprung = (
        Allowance("a passenger more", 0.010, PRACTICE),
        Allowance("bounce above walking pace", 0.008, PRACTICE, pace=True),
        Allowance("braking on the crest", 0.005, PRACTICE, pace=True),
    )
    wheels = (Allowance("tyre wear", CART_WEAR, PRACTICE),) if rigid else tyre_allowances(tread)
    usual = (
        *(() if rigid else sprung),
        *wheels,
        Allowance("slab moved by season", 0.002, PRACTICE),
    )
    given = dict(own)
    table = [replace(a, lower=given[a.name], source="job file") if a.name in given else a for a in usual]
    names = {a.name for a in usual}
    return (*table, *(Allowance(n, size, "job file, added") for n, size in given.items() if n not in names))


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
        "a tyre of radial springs pressed by 25 mm: 5.8 mm on a 20 % apex",
    )
