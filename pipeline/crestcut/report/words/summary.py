"""The answer in plain words, for the terminal: where, how deep, how sure, what to do next."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from crestcut.alternatives import Answer
from crestcut.base.cautions import FELT, terminal_lines
from crestcut.base.units import FOOT, POUND, both, litres, millimetres, number
from crestcut.chance import (
    WALKING,
    Cause,
    Chance,
    finding_step,
    in_use_allowances,
    left_lines,
    state_words,
)
from crestcut.contact import Contact
from crestcut.cut import CutPlan, contradiction, mass_of
from crestcut.report.words.ends import grinding_is_no_cure, most_that_may_go
from crestcut.report.words.options import SLOWLY, cheapest, option_lines, vehicle_lines
from crestcut.report.words.split import split_words
from crestcut.report.words.verdict import blind, deciding, unmeasured_lines, verdict_line
from crestcut.study import Report
from crestcut.work import NO_ANSWER_HELPS, ReasonCode, drain_words, guided_words

FIELD_NOTE = (
    "Worked out from the scan and the vehicle as measured; not proved in the field. "
    "Check with the vehicle itself before cutting, and follow local codes."
)
MEASURE_BY_HAND = (
    "measure the worst place by hand (a gap felt under the standing vehicle, or a string over two blocks),"
    " add it to the job and run again."
)
CLAIMS = {
    "least": "the least cut, no point of it can be shallower",
    "maximal": "nothing of it can be left standing, though a cut elsewhere might do",
}
RELEASE_HEADS = {
    "ok": "Release: OK for cutting, within local codes and the owner's permission.",
    "provisional": "Release: PROVISIONAL. Depths may still move; do not cut to them yet:",
    "not for cutting": "Release: NOT FOR CUTTING:",
}


def summary_lines(report: Report) -> list[str]:
    """The terminal summary; first the verdict with the kind of contact and its chance in words."""
    mind = [f"Mind: {stopped(d)}" for d in (*contradictions(report), *report.vehicle_doubts)]
    lines = [verdict_line(report), *mind, *_chance_lines(report)]
    worst = report.before.worst
    if worst is not None:
        lines.append(f"Where: {place_words(report, worst)}.")
    lines += [
        f"Soft, not in the verdict: {soft.words}, at {place_words(report, soft.at)}." for soft in report.soft
    ]
    lines += unmeasured_lines(report)
    lines += [f"{line}." for line in split_words(report)]
    lines += cut_lines(report)
    lines += vehicle_lines(report)
    lines += option_lines(report)
    if report.scan.tie is not None or report.checks.points:
        lines.append(f"Reference: {reference_words(report)}.")
    lines += release_lines(report)
    lines += [f"Next: {step}" for step in next_steps(report)]
    return [*lines, *terminal_lines(asked_kinds(report)), FIELD_NOTE]


def reference_words(report: Report) -> str:
    """In which system it lies, and what control and check points say of it."""
    frame = report.scan.frame
    words = [frame.system.words]
    if frame.scanned is not None and not frame.system.plan:
        words = ["no reference system: the control's own coordinates"]
    if (tie := report.scan.tie) is not None:
        words.append(
            f"{len(tie.points)} control points, residuals {millimetres(tie.rms)} rms, the largest"
            f" {millimetres(tie.worst.off)} at {tie.worst.name}"
        )
    if (height := report.checks.height) is not None:
        points = "check point" if height.n == 1 else "check points"
        words.append(f"heights off by {millimetres(height.rmse)} rms at {height.n} {points}")
    return "; ".join(words)


def contradictions(report: Report) -> list[str]:
    """What the second opinion on the gaps says against them, in words; none where it agrees."""
    words = contradiction(report.ray_cast)
    return [f"TWO WAYS TO FIND THE GAPS DISAGREE, trust neither: {words}; report it"] if words else []


def stopped(text: str) -> str:
    """The text with a stop at its end, unless it asks or ends already."""
    return text if text[-1:] in ".!?:" else f"{text}."


def release_lines(report: Report) -> list[str]:
    """Whether it may be cut, and what stands against it; no list of questions where there is nothing to
    cut."""
    if nothing_to_cut(report):
        return ["Release: nothing to cut, so nothing to release."]
    return [RELEASE_HEADS[report.release], *(f"  - {reason.words}" for reason in report.release_reasons)]


def _chance_lines(report: Report) -> list[str]:
    lines = []
    if report.today is not None:
        lines.append(f"Today, as measured, {WALKING}: {_without_odds(report.today)}.")
        told = [doubt.words for doubt in report.surface.error.doubts]
        if report.today.verdict == "cannot tell":  # how much is unseen is a line of its own
            told = [words for cause, words in report.today.because if cause is not Cause.UNSEEN]
        lines += [f"  {reason}" for reason in told]
    if report.in_use is not None:
        used = state_words(report.in_use)
        lines.append(f"In use, with the allowances for load, speed and wear: {used}.")
        allowed = in_use_allowances(report.job.wanted, report.vehicle)
        lines.append("Allowed for in use, each up to:")
        lines += [f"  {name} {both(size)} ({source})" for name, size, source in allowed]
    return lines


def _without_odds(chance: Chance) -> str:
    """The first line has said them."""
    return state_words(replace(chance, words=""))


def estimate_words(report: Report) -> list[str]:
    """How sure the least gap is, for drawings; none without a chance."""
    if report.today is None:
        return []
    low, high = (round(end * 1000, 1) + 0.0 for end in report.today.interval)  # no "-0.0"
    return [f"95 % between {low:.1f} and {high:.1f} mm; drawn is the mean of all that the slab may be"]


def place_words(report: Report, contact: Contact) -> str:
    """Scan coordinates, part, station and way of driving of a contact."""
    x, y = report.plan_point(contact.xy)
    unit = report.scan.frame.unit
    decimals = 3 if unit in ("m", "ft", "us-ft") else 1
    at = f"x {x:.{decimals}f}, y {y:.{decimals}f} ({report.scan.frame.words})"
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
    if nothing_to_cut(report):
        return [f"Cut: nothing to take off; asked for {_asked(report)}."]
    if report.doubts and plan.deepest <= 0 and plan.feasible:
        return [f"Cut: nothing is said of one until that is settled; asked for {_asked(report)}."]
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
        return [*lines, *after_lines(report), f"Asked for: {_asked(report)}."]
    lines.append(f"NOT ENOUGH: within the limits no cut reaches it; {both(plan.short_by)} short{where}.")
    return [*lines, *(after_lines(report) if plan.deepest > 0 else ()), limit]


def after_lines(report: Report) -> list[str]:
    """What the cut leaves: at walking pace and in use; the swept gap where no chance was worked out."""
    if report.left is not None:
        return left_lines(report.left)
    plan, gap = report.plan, math.nan
    if report.after is not None:
        gap = report.after.least_clearance
    elif plan is not None and plan.after.worst is not None:
        gap = plan.after.worst.gap
    return [f"After it: least gap {both(gap)}."]


def quantity_words(plan: CutPlan) -> str:
    """Area, volume and mass of what goes."""
    mass = mass_of(plan.volume)
    area = f"{number(plan.area)} m2 ({number(plan.area / FOOT**2)} ft2)"
    weight = f"{number(mass)} kg ({number(mass / POUND)} lb)"
    return f"{area}: {litres(plan.volume)}, {weight} of concrete"


def _asked(report: Report) -> str:
    wanted = report.job.wanted
    return f"{both(wanted.want)} under the belly, {both(wanted.want_ends)} under nose and tail"


def claim_words(plan: CutPlan) -> str:
    """What kind of least the cut is; where it was made of facets, how many, and what it was before."""
    text = CLAIMS.get(plan.claim, plan.claim)
    made = plan.guided is not None and plan.guided.facets
    return f"{guided_words(plan)}; before that {text}" if made else text


def _claim_line(plan: CutPlan, report: Report) -> str:
    text = claim_words(plan)
    if plan.margin <= 0:
        return f"Claim: {text}."
    sure = f"{report.job.wanted.confidence * 100:g} %"
    return f"Claim: {text}; {both(plan.margin)} of it is margin, to be {sure} sure."


def next_steps(report: Report) -> list[str]:
    """What to do now, in order."""
    return [*map(_measure_words, asked_first(report)), *other_steps(report)]


def asked_first(report: Report) -> tuple[Mapping[str, object], ...]:
    """The hand measurements that come before anything else; none where something else does."""
    return report.advice[:3] if _measuring_comes_first(report) else ()


def other_steps(report: Report) -> list[str]:
    """What to do besides those, in order."""
    steps = []
    if report.doubts:
        return list(dict.fromkeys(f"{finding_step(f, report.scan.frame)}." for f in report.doubts))
    if (doubt := deciding(report)) is not None:
        steps.append(f"{doubt.words}; then run again.")
    elif blind(report):
        steps.append("scan the holes under its path again (hatched in plan.png), or take another line.")
    elif _measuring_comes_first(report) and not report.advice:
        steps.append(MEASURE_BY_HAND)
    nothing = report.plan is None or report.nothing_to_cut
    if report.verdict == "clears" and nothing:
        drive = "nothing to cut; drive it slowly once with someone watching the place in profile.png."
        return steps if steps or asked_first(report) else [drive]
    if report.kind in ("nose", "tail"):
        steps.append("look at another line or a fill before any cut; profile.png shows where it meets.")
    if report.plan is not None and not report.plan.feasible:
        works = cheapest([o for o in report.options if o.kind != "new bay"]) or cheapest(report.options)
        how = SLOWLY if works is not None and works.answer is Answer.WALKING_PACE else ""
        steps.append(
            f"no cut within the limits does it; the cheapest that does{how}: {works.name} (see the options)."
            if works is not None
            else "try another line or less clearance, or ask an engineer about the limit named above."
        )
    if report.release == "not for cutting" and not nothing:
        steps += _what_the_release_asks(report)
    elif report.release == "ok" and report.plan is not None and report.plan.feasible:
        steps.append("print work_sheets.pdf and work by it: set-out, one method, strings to check it.")
    return steps or ([] if asked_first(report) else ["open plan.png and profile.png."])


def _what_the_release_asks(report: Report) -> list[str]:
    """Whom to ask, or what to answer; nothing where no answer would help."""
    codes = {reason.code for reason in report.release_reasons}
    if ReasonCode.NEVER in codes:
        nothing = "nothing is cut, drilled or fixed into this slab"
        return [f"{nothing}: ask a structural engineer, who alone may release it."]
    if codes <= NO_ANSWER_HELPS:
        return []
    return ["answer what the release asks for, under [site] and [slab] of the job; run again."]


def asked_kinds(report: Report) -> list[str]:
    """The kinds of hand measurement that ``next_steps`` asks for; where it leaves the choice, a felt gap."""
    if not _measuring_comes_first(report):
        return []
    return [str(item.get("kind")) for item in asked_first(report)] or [FELT]


def _measuring_comes_first(report: Report) -> bool:
    """Whether a reading by hand would tell more; not where scan or ground must be mended before."""
    if report.doubts or deciding(report) is not None or blind(report):
        return False
    return report.verdict == "cannot tell" or report.depths_provisional


def nothing_to_cut(report: Report) -> bool:
    """Is every gap surely what was asked for? Then nothing waits for a release."""
    return not report.doubts and report.nothing_to_cut


def _measure_words(item: Mapping[str, object]) -> str:
    kind = str(item.get("kind", "one gap by hand"))
    parts = [str(item["how"]) if kind == "walk" else kind]
    parts += [f"on boards of {item['raised']}"] if item.get("raised") else []
    parts += [f"{lead}{item[key]}" for key, lead in (("where", ""), ("expect", "expect ")) if item.get(key)]
    return f"measure first: {', '.join(parts)}."
