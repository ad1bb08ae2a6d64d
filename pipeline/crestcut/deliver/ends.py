"""Nose and tail: why grinding is usually the wrong cure there, with the numbers of the case.

A point x ahead of the rear axle follows the wheels as z = (x/L) front + (1 - x/L) rear. Beyond the front
axle the first weight is above one: ground taken away under the front wheels lowers the nose by more than
the cut.
"""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.deliver.options_words import cure
from crestcut.deliver.report import Report
from crestcut.units import both, millimetres


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


def grinding_seldom_cures(report: Report) -> str:
    """Why not to grind, with the numbers, for nose and tail; empty for any other kind."""
    case = end_contact(report)
    if case is None:
        return ""
    axle = "front" if case.end == "nose" else "rear"
    plan = report.plan
    size = ""
    if plan is not None and plan.deepest > 0:
        size = f" ({both(plan.deepest)} off {plan.area:.1f} m2"
        size += " in all)" if plan.feasible else f" would still leave {both(plan.short_by)} missing)"
    elif plan is not None and not plan.feasible:
        size = f" (the limits leave {both(plan.short_by)} missing)"
    instead = cure(report) or (
        f"To gain the {both(case.missing)} that are missing, fill about {both(case.fill)} under the {axle}"
        " wheels, or cross at an angle."
    )
    return (
        f"Grinding is usually the wrong cure for a {case.end}{size}: where the {axle} wheels run onto ground"
        f" cut by 10 mm the {case.end} drops {millimetres(0.010 * case.lever)}. {instead}"
    )
