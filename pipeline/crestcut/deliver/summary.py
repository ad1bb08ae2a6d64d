"""The answer in plain words, for the terminal: verdict, where, how deep, how sure, what to do next."""

from __future__ import annotations

import math
from collections.abc import Mapping

from crestcut.cut.records import CutPlan
from crestcut.deliver.ends import grinding_is_no_cure, grinding_seldom_cures, most_that_may_go
from crestcut.deliver.options_words import option_lines, vehicle_lines
from crestcut.deliver.report import Report
from crestcut.travel.chance import in_use_allowances
from crestcut.travel.chance_records import Chance
from crestcut.travel.records import Contact
from crestcut.units import FOOT, both, millimetres
from crestcut.work.drain import drain_words
from crestcut.work.records import NO_ANSWER_HELPS, ReasonCode

CONCRETE_DENSITY = 2400.0  # kg/m3, normal-weight concrete, 150 lb/ft3 (ACI 318-19)
POUND = 0.45359237  # kg, exact: international yard and pound agreement of 1959
FIELD_NOTE = (
    "Worked out from the scan and the vehicle as measured; not proved in the field. "
    "Check with the vehicle itself before cutting, and follow local codes."
)
MEASURE_BY_HAND = (
    "measure the worst place by hand (a gap felt under the standing vehicle, or a string over two blocks),"
    " add it to the job and run again."
)
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
}
RELEASE_HEADS = {
    "ok": "Release: OK for cutting, within local codes and the owner's permission.",
    "provisional": "Release: PROVISIONAL. Depths may still move; do not cut to them yet:",
    "not for cutting": "Release: NOT FOR CUTTING:",
}


def summary_lines(report: Report) -> list[str]:
    """The terminal summary; first the verdict with the kind of contact and its chance in words."""
    lines = [verdict_line(report), *_chance_lines(report)]
    worst = report.before.worst
    if worst is not None:
        lines.append(f"Where: {place_words(report, worst)}.")
    lines += [
        f"Soft, not in the verdict: {soft.words}, at {place_words(report, soft.at)}." for soft in report.soft
    ]
    if _unmeasured(report) >= 0.005:  # what rounds to nothing is not worth a line
        area = f"{_unmeasured(report):.2f} m2 under the vehicle's path"
        lines.append(f"Not measured: {area}; nothing is said of it.")
    lines += cut_lines(report)
    lines += vehicle_lines(report)
    lines += option_lines(report)
    lines += release_lines(report)
    lines += [f"Next: {step}" for step in next_steps(report)]
    return [*lines, FIELD_NOTE]


def release_lines(report: Report) -> list[str]:
    """Whether it may be cut, and what stands against it; no list of questions where there is nothing to
    cut."""
    if report.plan is not None and _nothing_to_cut(report):
        return ["Release: nothing to cut, so nothing to release."]
    return [RELEASE_HEADS[report.release], *(f"  - {reason.words}" for reason in report.release_reasons)]


def verdict_line(report: Report) -> str:
    """One line: touches, clears or cannot tell; how much; the chance; at nose and tail why not to grind."""
    name, gap = called(report.vehicle.name), report.least_clearance
    chance = f"; {report.today.words}" if report.today is not None and report.today.words else ""
    if math.isnan(gap):
        return f"CANNOT TELL: nothing under {name}'s path was measured."
    near = nearest(report)
    if report.verdict == "touches":
        how = f"by {both(-gap)}" if gap < 0 else f"(best estimate: clear by {both(gap)})"
        head = f"TOUCHES: {name} {MEETS[report.kind]} {how}{chance}."
    elif report.verdict == "clears":
        head = f"CLEARS: {name} has {both(gap)} to spare {near}{chance}{_less_than_asked(report)}."
    elif _blind(report):
        head = (
            f"CANNOT TELL: {_unmeasured(report):.2f} m2 under {name}'s path is not measured; where it is,"
            f" there is {both(gap)} to spare {near}{chance}."
        )
    else:
        guess = f"{both(abs(gap))} {'too little room' if gap < 0 else 'to spare'}"
        head = f"CANNOT TELL: at best estimate {name} has {guess} {near}{chance}."
    why = grinding_seldom_cures(report)
    return f"{head} {why}" if why else head


def called(name: str) -> str:
    """A vehicle's name as a sentence takes it: 'the flat-floor hatchback', but 'our van'."""
    own = name.split(" ", 1)[0].lower() in ("the", "our", "my", "your", "his", "her", "their")
    return name if own else f"the {name}"


def _unmeasured(report: Report) -> float:
    """Ground under the vehicle's path that the scan has not seen, m2."""
    return report.before.unmeasured * report.surface.height.frame.cell**2


def _blind(report: Report) -> bool:
    """Whether it is holes in the scan, and not the size of the gap, that leave the answer open."""
    today = report.today
    if today is None or report.verdict != "cannot tell" or not report.before.unmeasured:
        return False
    return today.chance_of_contact <= 1.0 - report.job.wanted.confidence


def nearest(report: Report) -> str:
    """Where the least gap is, in words: by its kind, else under the part that has it."""
    worst = report.before.worst
    return NEAREST.get(report.kind) or (f"under the {worst.part}" if worst is not None else "")


def _less_than_asked(report: Report) -> str:
    worst = report.before.worst
    if worst is None or report.least_clearance >= report.wanted(worst.zone):
        return ""
    return f"; that is less than the {both(report.wanted(worst.zone))} asked for"


def _chance_lines(report: Report) -> list[str]:
    lines = []
    if report.today is not None:
        lines.append(f"{_chance_line('Today, as measured, at walking pace', report.today)}.")
        if report.today.verdict == "cannot tell":
            lines += [f"  {reason}" for reason in report.today.reasons if "cells that" not in reason]
    if report.in_use is not None:
        line = _chance_line("In use, with the allowances for load, speed and wear", report.in_use)
        lines.append(f"{line}; {report.in_use.words}." if report.in_use.words else f"{line}.")
        allowed = in_use_allowances(report.job.wanted, report.vehicle)
        lines.append("Allowed for in use, each up to:")
        lines += [f"  {name} {both(size)} ({source})" for name, size, source in allowed]
    return lines


def _chance_line(name: str, chance: Chance) -> str:
    low, high = chance.interval
    span = f"95 % between {millimetres(low)} and {millimetres(high)}"
    return f"{name}: {chance.verdict}, least gap {both(chance.least_clearance)}, {span}"


def estimate_words(report: Report) -> list[str]:
    """Why a swept gap and the verdict's differ, for drawings of the swept one; none without a chance."""
    if report.today is None:
        return []
    low, high = (round(end * 1000, 1) + 0.0 for end in report.today.interval)  # no "-0.0"
    best = round(report.today.least_clearance * 1000, 1) + 0.0
    return [
        f"The verdict takes the map's own noise off and folds hand readings in: best estimate {best:.1f} mm,"
        f" 95 % between {low:.1f} and {high:.1f} mm"
    ]


def place_words(report: Report, contact: Contact) -> str:
    """Scan coordinates, part, station and way of driving of a contact."""
    x, y = report.plan_point(contact.xy)
    unit = report.scan.frame.unit
    decimals = 3 if unit in ("m", "ft", "us-ft") else 1
    at = f"x {x:.{decimals}f}, y {y:.{decimals}f} ({unit}, as in the scan)"
    words = f"{at}, under the {contact.part}, front axle {contact.station:.2f} m along the line"
    variant = contact.variant
    how = [] if variant.load == "as measured" else [f"load {variant.load}"]
    how += ["driven the other way"] if variant.way == "turned" else []
    if abs(variant.offset) >= 0.0005:
        side = "left" if variant.offset > 0 else "right"
        how.append(f"{abs(variant.offset) * 1000:.0f} mm {side} of it")
    if abs(variant.heading) >= 0.0005:
        side = "left" if variant.heading > 0 else "right"
        how.append(f"turned {math.degrees(abs(variant.heading)):.1f} degrees to the {side}")
    return words + (f" ({', '.join(how)})" if how else "")


def cut_lines(report: Report) -> list[str]:
    """How deep, area, volume, mass, the claim, and how far short it stays where limits bind."""
    plan = report.plan
    if plan is None:
        return ["Cut: none worked out."]
    if _nothing_to_cut(report):
        return [f"Cut: nothing to take off; asked for {_asked(report)}."]
    where = f", at {place_words(report, plan.short_at)}" if plan.short_at is not None else ""
    limit = f"What limits it: {'; '.join(plan.binding) or 'not named'}."
    if grinding_is_no_cure(report):
        return [f"Cut: none to make. Grinding is not the cure: {most_that_may_go(report)}{where}.", limit]
    lines = []
    if plan.deepest > 0:
        lines = [f"Cut: {both(plan.deepest)} at the deepest, over {quantity_words(plan)}."]
        lines.append(_claim_line(plan, report))
    if plan.drain is not None:
        lines.append(drain_words(plan.drain))
    if plan.feasible:
        swept = plan.after.worst.gap if plan.after.worst is not None else math.nan
        after = report.after.least_clearance if report.after is not None else swept
        lines.append(f"After it: least gap {both(after)}; asked for {_asked(report)}.")
        return lines
    lines.append(f"NOT ENOUGH: within the limits no cut reaches it; {both(plan.short_by)} short{where}.")
    return [*lines, limit]


def quantity_words(plan: CutPlan) -> str:
    """Area, volume and mass of what goes."""
    mass = plan.volume * CONCRETE_DENSITY
    area = f"{number(plan.area)} m2 ({number(plan.area / FOOT**2)} ft2)"
    weight = f"{number(mass)} kg ({number(mass / POUND)} lb)"
    return f"{area}: {number(plan.volume * 1000)} litres, {weight} of concrete"


def number(value: float) -> str:
    """A quantity with as many decimals as its size deserves: 312, 35.3, 2.24, 0.043."""
    if value >= 100:
        return f"{value:.0f}"
    if value >= 1:
        return f"{value:.1f}" if value >= 10 else f"{value:.2f}"
    return f"{value:.2g}"


def _asked(report: Report) -> str:
    wanted = report.job.wanted
    return f"{both(wanted.want)} under the belly, {both(wanted.want_ends)} under nose and tail"


def _claim_line(plan: CutPlan, report: Report) -> str:
    text = {
        "least": "the least cut, no point of it can be shallower",
        "maximal": "nothing of it can be left standing, though a cut elsewhere might do",
    }.get(plan.claim, plan.claim)
    if plan.margin <= 0:
        return f"Claim: {text}."
    sure = f"{report.job.wanted.confidence * 100:g} %"
    return f"Claim: {text}; {both(plan.margin)} of it is margin, to be {sure} sure."


def next_steps(report: Report) -> list[str]:
    """What to do now, in order."""
    steps = []
    if _blind(report):
        steps.append("scan the holes under its path again (hatched in plan.png), or take another line.")
    elif report.verdict == "cannot tell" or report.depths_provisional:
        steps += [_measure_words(item) for item in report.advice[:3]] or [MEASURE_BY_HAND]
    if report.verdict == "clears" and _nothing_to_cut(report):
        return steps or [
            "nothing to cut; drive it slowly once with someone watching the place in profile.png."
        ]
    if report.kind in ("nose", "tail"):
        steps.append("look at another line or a fill before any cut; profile.png shows where it meets.")
    if report.plan is not None and not report.plan.feasible:
        works = next((option.name for option in report.options if option.works), "")
        steps.append(
            f"no cut within the limits does it; the cheapest that does: {works} (table above)."
            if works
            else "try another line or less clearance, or ask an engineer about the limit named above."
        )
    if report.release == "not for cutting" and not _nothing_to_cut(report):
        codes = {reason.code for reason in report.release_reasons}
        if ReasonCode.NEVER in codes:
            steps.append(
                "nothing is cut, drilled or fixed into this slab: ask a structural engineer, who alone may"
                " release it."
            )
        elif not codes <= NO_ANSWER_HELPS:
            steps.append("answer what the release asks for, under [site] and [slab] of the job; run again.")
    elif report.release == "ok" and report.plan is not None and report.plan.feasible:
        steps.append("print work_sheets.pdf and work by it: set-out, jig, lifts, strings to check it.")
    return steps or ["open plan.png and profile.png."]


def _nothing_to_cut(report: Report) -> bool:
    return report.plan is None or (report.plan.deepest <= 0 and report.plan.feasible)


def _measure_words(item: Mapping[str, object]) -> str:
    kind = str(item.get("kind", "one gap by hand"))
    parts = [str(item["how"]) if kind == "walk" else kind]
    parts += [f"on boards of {item['raised']}"] if item.get("raised") else []
    parts += [f"{lead}{item[key]}" for key, lead in (("where", ""), ("expect", "expect ")) if item.get(key)]
    return f"measure first: {', '.join(parts)}."
