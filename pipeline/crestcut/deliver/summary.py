"""The answer in plain words, for the terminal: verdict first, then where, how deep, how sure, and what to do next."""

from __future__ import annotations

import math
from collections.abc import Mapping

from crestcut.deliver.ends import grinding_seldom_cures
from crestcut.deliver.report import Report
from crestcut.travel.chance_records import Chance
from crestcut.travel.records import Contact
from crestcut.units import FOOT, both, millimetres

CONCRETE_DENSITY = 2400.0  # kg/m3, normal-weight concrete (ACI 318-19: 150 lb/ft3)
POUND = 0.45359237  # kg, exact: international yard and pound agreement of 1959
FIELD_NOTE = "Worked out from the scan and the vehicle as measured; not proved in the field. Check with the vehicle before cutting."

MEETS = {
    "crest": "hangs up on the crest",
    "nose": "meets the rise with its nose",
    "tail": "meets the ground with its tail",
    "side": "meets the ground with its side",
    "none": "meets the ground",
}
NEAREST = {
    "crest": "under the belly, on the crest",
    "nose": "under the nose",
    "tail": "under the tail",
    "side": "at the side",
    "none": "anywhere",
}


def summary_lines(report: Report) -> list[str]:
    """The terminal summary, one entry a line; the first is the verdict with the kind of contact and its chance in words."""
    lines = [verdict_line(report)]
    lines += _chance_lines(report)
    worst = report.before.worst
    if worst is not None:
        lines.append(f"Where: {place_words(report, worst)}.")
    if report.before.unmeasured:
        cell = report.surface.height.frame.cell
        area = report.before.unmeasured * cell**2
        lines.append(f"Not measured: {area:.2f} m2 under the vehicle's path has no points; nothing is said of it.")
    lines += cut_lines(report)
    lines += release_lines(report)
    lines += [f"Next: {step}" for step in next_steps(report)]
    return [*lines, FIELD_NOTE]


def verdict_line(report: Report) -> str:
    """One line: touches, clears or cannot tell; by how much; the chance; for nose and tail why grinding is usually wrong."""
    name, gap = report.vehicle.name, report.least_clearance
    chance = f"; {report.today.words}" if report.today is not None and report.today.words else ""
    if math.isnan(gap):
        return f"CANNOT TELL: nothing under the {name}'s path was measured."
    if report.verdict == "touches":
        how = f"by {both(abs(gap))}" if gap < 0 else f"(best estimate {both(gap)} clear)"
        head = f"TOUCHES: the {name} {MEETS[report.kind]} {how}{chance}."
    elif report.verdict == "clears":
        head = f"CLEARS: the {name} has {both(gap)} to spare {NEAREST[report.kind]}{chance}."
    else:
        guess = f"{both(abs(gap))} {'short of clearing' if gap < 0 else 'to spare'}"
        head = f"CANNOT TELL: the {name} has, at best estimate, {guess} {NEAREST[report.kind]}{chance}."
    why = grinding_seldom_cures(report)
    return f"{head} {why}" if why else head


def _chance_lines(report: Report) -> list[str]:
    lines = [_chance_line("Today, as measured, at walking pace", report.today)] if report.today else []
    if report.in_use is not None:
        line = _chance_line("In use (load, speed, wear and the like as allowed for)", report.in_use)
        lines.append(f"{line}; {report.in_use.words}" if report.in_use.words else line)
    return lines


def _chance_line(name: str, chance: Chance) -> str:
    low, high = chance.interval
    return (
        f"{name}: least gap {both(chance.least_clearance)}, 95 % between {millimetres(low)} and {millimetres(high)}"
        f" ({chance.verdict})"
    )


def place_words(report: Report, contact: Contact) -> str:
    """Station, scan coordinates, part and way of a contact."""
    x, y = report.plan_point(contact.xy)
    decimals = 3 if report.scan.frame.unit in ("m", "ft", "us-ft") else 1
    at = f"x {x:.{decimals}f}, y {y:.{decimals}f} {report.scan.frame.unit} in the scan"
    words = f"{at}, under the {contact.part}, when the front axle stands {contact.station:.2f} m along the line"
    variant = contact.variant
    how = [] if variant.load == "as measured" else [f"load {variant.load}"]
    how += ["driven the other way"] if variant.way == "turned" else []
    if abs(variant.offset) >= 0.0005:
        how.append(f"{abs(variant.offset) * 1000:.0f} mm {'left' if variant.offset > 0 else 'right'} of it")
    if abs(variant.heading) >= 0.0005:
        how.append(f"headed {abs(math.degrees(variant.heading)):.1f} degrees to the {'left' if variant.heading > 0 else 'right'}")
    return words + (f" ({', '.join(how)})" if how else "")


def cut_lines(report: Report) -> list[str]:
    """How deep, area, volume, mass, the claim, and how far short it stays where limits bind."""
    plan = report.plan
    if plan is None:
        return ["Cut: none worked out."]
    if plan.deepest <= 0 and plan.feasible:
        return [f"Cut: nothing to take off; every gap is already {both(report.wanted('belly'))} or more."]
    lines = []
    if plan.deepest > 0:
        litres, mass = plan.volume * 1000, plan.volume * CONCRETE_DENSITY
        size = f"{plan.area:.2f} m2 ({plan.area / FOOT**2:.1f} ft2), {litres:.1f} litres, {mass:.0f} kg ({mass / POUND:.0f} lb)"
        lines.append(f"Cut: {both(plan.deepest)} at the deepest over {size} of concrete.")
        lines.append(_claim_line(plan.claim, plan.margin, report))
    if plan.feasible:
        after = report.after.least_clearance if report.after else (plan.after.worst.gap if plan.after.worst else math.nan)
        lines.append(f"After it: least gap {both(after)}; asked for {_asked(report)}.")
    else:
        where = f" {place_words(report, plan.short_at)}" if plan.short_at is not None else ""
        lines.append(f"NOT ENOUGH: within the limits no cut reaches it; {both(plan.short_by)} still missing{where}.")
        lines.append(f"What limits it: {'; '.join(plan.binding) or 'not named'}.")
    return lines


def _asked(report: Report) -> str:
    wanted = report.job.wanted
    return f"{both(wanted.want)} under the belly, {both(wanted.want_ends)} under nose and tail"


def _claim_line(claim: str, margin: float, report: Report) -> str:
    text = {
        "least": "it is the least cut: no point of it can be shallower",
        "maximal": "nothing of it can be left standing, though another cut may take other places",
    }.get(claim, claim)
    share = f"{report.job.wanted.confidence * 100:g} % sure"
    extra = f"; {both(margin)} of it is margin, to be {share}" if margin > 0 else ""
    return f"Claim: {text}{extra}."


def release_lines(report: Report) -> list[str]:
    """The release state with a line for each reason."""
    head = {
        "ok": "Release: ok for cutting, within local codes and the owner's permission.",
        "provisional": "Release: PROVISIONAL. Depths may still move; do not cut to them yet:",
        "not for cutting": "Release: NOT FOR CUTTING:",
    }[report.release]
    return [head, *(f"  - {reason}" for reason in report.release_reasons)]


def next_steps(report: Report) -> list[str]:
    """What to do now, in order."""
    steps = []
    if report.verdict == "cannot tell" or report.depths_provisional:
        steps += [_measure_words(item) for item in report.advice[:3]] or [
            "measure the worst place by hand (a gap felt under the standing vehicle, or a string over two blocks) and add it to the job."
        ]
    if report.verdict == "clears" and (report.plan is None or report.plan.deepest <= 0):
        return steps or ["nothing to cut; look at plan.png and profile.png, and drive it slowly once with someone watching."]
    if report.kind in ("nose", "tail"):
        steps.append("look at another line or a fill before any cut; profile.png shows where it meets.")
    if report.plan is not None and not report.plan.feasible:
        steps.append("try another line, less clearance asked for, or ask an engineer about the limit named above.")
    if report.release == "not for cutting":
        steps.append("answer what the release asks for, in [site] and [slab] of the job file, and run again.")
    elif report.release == "ok" and report.plan is not None and report.plan.feasible:
        steps.append("open plan.png and depth_to_remove.glb, mark the outline on the slab, and check it with the vehicle.")
    return steps or ["open plan.png and profile.png."]


def _measure_words(item: Mapping[str, object]) -> str:
    parts = [str(item.get("kind", "one gap by hand"))]
    parts += [f"{before}{item[key]}" for key, before in (("where", ""), ("expect", "expect ")) if item.get(key)]
    return f"measure first: {', '.join(parts)}."
