"""Nose and tail: why grinding is usually the wrong cure there, with the numbers of the case.

A point x ahead of the rear axle follows the wheels as z = (x/L) front + (1 - x/L) rear. Beyond the front
axle the first weight is above one: ground taken away under the front wheels lowers the nose by more than
the cut.
"""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.base.units import both, litres, millimetres, number
from crestcut.report.words.options import cure
from crestcut.study import Report


@dataclass(frozen=True)
class EndContact:
    """A nose or tail that lacks room.

    ahead : of the contact beyond the axle next to it, m.  lever : how far the end moves per unit at that
    axle's wheels, 1 or more.  missing : from the least gap to what was asked for, m.  fill : under that
    axle's wheels that would lift the end so far, m.
    """

    end: str  # nose | tail
    ahead: float
    lever: float
    missing: float
    fill: float


def end_contact(report: Report) -> EndContact | None:
    """The numbers of a nose or tail contact; None for any other kind, or where nothing is missing."""
    if report.kind not in ("nose", "tail"):
        return None
    contact = report.before.least.get(report.kind) or report.before.worst
    if contact is None:
        return None
    missing = report.wanted(report.kind) - contact.gap
    if missing <= 0:
        return None
    x, _ = report.on_vehicle(contact)
    base = report.vehicle.wheelbase
    ahead = max(x - base if report.kind == "nose" else -x, 0.0)
    lever = 1.0 + ahead / base
    return EndContact(report.kind, ahead, lever, missing, missing / lever)


def grinding_is_no_cure(report: Report) -> bool:
    """A nose or tail that no cut within the limits helps: then the cut is told as what not to do."""
    return report.plan is not None and not report.plan.feasible and end_contact(report) is not None


def most_that_may_go(report: Report) -> str:
    """What the limits allow and what that leaves, for a cut that is no cure: a clause."""
    plan = report.plan
    if plan is None:
        return ""
    if plan.deepest <= 0:
        return f"the limits allow none, and {both(plan.short_by)} are missing"
    return (
        f"all that the limits allow, {both(plan.deepest)} deep over {number(plan.area)} m2"
        f" ({litres(plan.volume)}), would still leave {both(plan.short_by)} missing"
    )


def grinding_seldom_cures(report: Report) -> str:
    """Why not to grind, with the numbers, for nose and tail; empty for any other kind."""
    case = end_contact(report)
    if case is None:
        return ""
    axle = "front" if case.end == "nose" else "rear"
    plan = report.plan
    said = f"Grinding is usually the wrong cure for a {case.end}"
    if grinding_is_no_cure(report):
        said = f"Grinding is not the cure: {most_that_may_go(report)}"
    elif plan is not None and plan.deepest > 0:
        said += f" ({both(plan.deepest)} off {number(plan.area)} m2 in all)"
    instead = cure(report) or (
        f"To gain the {both(case.missing)} that are missing, fill about {both(case.fill)} under the {axle}"
        " wheels, or cross at an angle."
    )
    joint = "; " if grinding_is_no_cure(report) else ": "
    return (
        f"{said}{joint}where the {axle} wheels run onto ground cut by 10 mm the {case.end} drops"
        f" {millimetres(0.010 * case.lever)}. {instead}"
    )
