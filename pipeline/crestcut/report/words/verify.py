"""The check in plain words, for the terminal, the picture and the hand-over page: verdict, how sure, what is
left, what to do next."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from crestcut.base.cautions import terminal_lines
from crestcut.base.units import both, both_at_most, litres, millimetres, number
from crestcut.chance import Cause, Chance, finding_head, finding_step, in_words, state_words
from crestcut.report.view.verify_report import handed_out, report_now
from crestcut.report.words.summary import RELEASE_HEADS, place_words
from crestcut.report.words.verdict import called
from crestcut.study import Report
from crestcut.verify import Check, Edge, Fight, Now, Odd, Told, TooDeep
from crestcut.work import VERTICAL, ReleaseState

BOTH = (
    "The scan since shows the slab as it is, and nothing of the plan is taken on trust beside it: this may be"
    " less sure than your readings alone, which take the plan to have been followed evenly."
)
HEADS = {"done": "DONE", "not yet": "NOT YET", "cannot tell": "CANNOT TELL"}
KEPT = 0.001  # m: where a pass keeps more back than that, a reading by hand is worth making first
FIELD_NOTE = (
    "Worked out from scans and readings; not proved in the field. Drive the vehicle over it slowly once, with"
    " someone watching, and follow local codes."
)


def verify_lines(report: Report, check: Check) -> list[str]:
    """The terminal summary: the verdict first, but for a release that is missing while something is left to
    grind."""
    now = report_now(report, check)
    verdict, held = [verdict_words(report, check)], held_lines(report)
    lines = [*held, *verdict] if to_grind(check) else [*verdict, *held]
    lines += clearance_lines(check)
    if not check.fights:
        lines.append(f"Where it has least to spare: {place_words(now, check.first.tightest)}.")
    lines += gone_lines(report, check)
    lines += edge_lines(report, check)
    lines += water_lines(report, check)
    lines += still_lines(report, check)
    lines += [f"Next: {step}" for step in next_steps(report, check)]
    return [*lines, *care_lines(check), FIELD_NOTE]


def care_lines(check: Check) -> list[str]:
    """The short cautions of the measurements asked for next; none where none is."""
    kinds = [str(item.get("kind")) for item in check.advice] if check.clearance == "cannot tell" else []
    return terminal_lines(kinds)


def to_grind(check: Check) -> bool:
    """Whether something is, or may be, left to take away."""
    return check.clearance != "done" or bool(check.edges)


def held_lines(report: Report) -> list[str]:
    """What stands against grinding at all; nothing where the job is released. It hangs on the job's answers,
    not on what is left."""
    if report.release == ReleaseState.OK:
        return []
    return [RELEASE_HEADS[report.release], *(f"  - {reason.words}" for reason in report.release_reasons)]


def verdict_words(report: Report, check: Check) -> str:
    """One line: done, not yet or cannot tell; the gap against what was asked; the chance."""
    first = check.first
    name, gap = called(first.standing.vehicle.name), first.today.least_clearance
    asked = f"asked for {both(first.asked)}"
    if check.fights:
        return (
            "CANNOT TELL: what was read by hand contradicts itself or the scan, so that none of it was used; "
            f"how much room {name} has is not known; {asked}."
        )
    if check.clearance == "done" and check.edges:
        return (
            f"NOT YET: {name} has its clearance ({both(gap)} at the least, {asked}), but"
            f" {_steps(check.edges)} left at the edge of the cut."
        )
    if check.clearance == "done":
        return f"DONE: {name} has {both(gap)} at the least; {asked}; {chance_words(first)}."
    if check.clearance == "not yet":
        short = max(-first.spare.least_clearance, 0.0)
        still = f"still touches, by {both(-gap)}" if gap < 0 else f"has {both(gap)} at the least"
        return f"NOT YET: {name} {still}; {asked}, {both(short)} short; {chance_words(first)}."
    guess = f"{both(gap)} at the least" if gap >= 0 else f"{both(-gap)} too little room"
    if first.spare.doubts:
        told = f"{finding_head(first.spare.doubts[0])}; {asked}."
    else:
        touch = told_chance(first.today).replace(";", ",", 1)
        told = f"at best estimate {name} has {guess}; {asked}; {chance_words(first)}{touch}."
    if check.edges:
        return f"NOT YET: {_steps(check.edges)} left at the edge of the cut; the gap cannot be told: {told}"
    return f"CANNOT TELL: {told}"


def _steps(edges: Sequence[Edge]) -> str:
    return "a step is" if len(edges) == 1 else f"{len(edges)} steps are"


def told_chance(chance: Chance) -> str:
    """ "; about 1 in 30 that it touches"; nothing where the verdict was withdrawn."""
    return "" if chance.doubts else f"; {in_words(chance.chance_of_contact)}"


def chance_words(now: Now) -> str:
    """The chance that less is left than was asked for, as people say it."""
    return (
        in_words(now.spare.chance_of_contact)
        .replace("that it touches", "that it is less than asked")
        .replace("that it clears", "that it is as much as asked")
    )


def clearance_lines(check: Check) -> list[str]:
    """Interval and chances of each vehicle, and why where it cannot be told."""
    if check.fights:
        return [f"  {line}" for line in fight_lines(check)]
    lines = []
    for now in check.now:
        low, high = now.today.interval
        of = f"{now.standing.vehicle.name}: " if len(check.now) > 1 else ""
        lines.append(
            f"{of}Least gap now: {both(now.today.least_clearance)}, 95 % between {millimetres(low)} and"
            f" {millimetres(high)}{told_chance(now.today)}."
        )
        # of a mixture: said anew
        used = replace(now.in_use, words=told_chance(now.in_use).removeprefix("; "))
        lines.append(f"{of}In use, with the allowances for load, speed and wear: {state_words(used)}.")
        if now.verdict == "cannot tell":
            lines += [f"  {reason}" for reason in now.spare.reasons]
    return [*lines, *([BOTH] if check.both else [])]


def fight_lines(check: Check) -> list[str]:
    """Each reading that contradicts others or the scan, by how much, and which of them stands alone."""
    return [_fight_words(fight, check.removed is not None) for fight in check.fights]


ODD = {
    Odd.READING: "without it all else agrees: read that one again",
    Odd.SCAN: "the readings agree with each other, so that the scan since stands alone: scan again",
    Odd.NOT_KNOWN: "which of them is wrong cannot be told from these",
}


def _fight_words(fight: Fight, scanned: bool) -> str:
    reading = fight.reading
    against = [f"{told.name} ({_read(told)})" for told in fight.against]
    others = " and ".join(filter(None, (", ".join(against[:-1]), *against[-1:])))
    alone = (
        "the scan since and the vehicle as measured"
        if scanned
        else "the scan and the vehicle as measured, however much was taken off"
    )
    return (
        f"{reading.name}: {reading.what.rstrip(',')} {_read(reading)} contradicts {others or alone}:"
        f" {millimetres(fight.expected)} was to be expected, {fight.sds:.1f} standard deviations (of"
        f" {millimetres(fight.sd)}) away; {ODD[fight.odd]}"
    )


def _read(told: Told) -> str:
    """What was read, as a figure or a bound."""
    figure = millimetres(told.observed)
    return figure if told.relation == "is" else f"{told.relation} {figure}"


def gone_lines(report: Report, check: Check) -> list[str]:
    """Volume removed against planned, how well a depth is known, and what went that should not have."""
    if check.fights:
        return []
    planned = report.plan.volume * 1000 if report.plan is not None else 0.0
    lines = []
    if check.removed is not None:
        removed = check.removed
        sd = removed.volume_sd * 1000
        lines.append(
            f"Removed: {litres(max(removed.volume, 0.0))}, give or take {number(2 * sd)}; planned"
            f" {number(planned)}. One depth from the two scans is known to {millimetres(2 * removed.typical)}"
            " either way, no better: each walk drifts by itself."
        )
    elif check.share is not None:
        best, sd = check.share.best, check.share.sd
        lines.append(
            f"Removed: what was read by hand goes with {best:.0%} of the planned depth (give or take"
            f" {2 * sd:.0%}), if the plan was followed evenly; where nothing was read that is taken on trust."
        )
    return lines + [too_deep_words(report, deep) for deep in check.too_deep]


def too_deep_words(report: Report, deep: TooDeep) -> str:
    """One sentence on ground that is lower than it should be."""
    x, y = report.plan_point(deep.xy)
    sure = "" if deep.sure else " (may be: it is within the scans' own error)"
    return (
        f"Over-cut: {deep.what}, by up to {both(deep.most)} over {number(deep.area)} m2, most at x {x:.2f},"
        f" y {y:.2f}{sure}."
    )


def edge_lines(report: Report, check: Check) -> list[str]:
    """Steps, and water that stays; by hand alone, what to look for."""
    if check.removed is None:
        return [
            "Edges: not measured; lay a straightedge across the cut's edge: no step over"
            f" {both_at_most(VERTICAL)}, and no steeper than 1:{1 / report.job.cut.feather:.3g}.",
        ]
    lines = []
    for edge in check.edges[:3]:
        x, y = report.plan_point(edge.xy)
        lines.append(
            f"Edge: {millimetres(edge.rise)} in 60 mm at x {x:.2f}, y {y:.2f}, {edge.length:.2f} m long,"
            f" steeper than the feather of 1:{1 / report.job.cut.feather:.3g}; {edge.said} (2010 ADA 303)."
        )
    if not check.edges:
        lines.append(
            "Edges: no step that the scan is sure of; feel along them with a straightedge all the same."
        )
    return lines


def water_lines(report: Report, check: Check) -> list[str]:
    """Water that stays now and did not before; by hand alone, how to see."""
    if check.removed is None:
        return ["Water: not measured; pour a bucket over the cut and see that it runs off."]
    lines = []
    for pond, xy in check.ponds[:2]:
        x, y = report.plan_point(xy)
        lines.append(
            f"Water: {pond.deepest * 1000:.0f} mm may now stand at x {x:.2f}, y {y:.2f}, over"
            f" {number(pond.area)} m2 (judged on the scan's own heights: pour a bucket to see)."
        )
    return lines or ["Water: none that stays and did not before, as far as the scan shows."]


def still_lines(report: Report, check: Check) -> list[str]:
    """What is short, what the next pass takes of it and why no more, and what limits it."""
    still, short = check.still, check.short
    if check.clearance == "done":
        return ["Still to go: nothing."]
    if check.fights or short is None:
        return ["Still to go: not known."]
    low, high = short.interval
    told = f"{both(short.best)}, 95 % between {millimetres(low)} and {millimetres(high)}"
    amount = f"{both(still.deepest)} at the deepest, {number(still.area)} m2, {litres(still.volume)}"
    if check.clearance == "cannot tell":
        if still.deepest <= 0 and still.feasible:
            return ["Still to go: nothing at best estimate; measuring decides."]
        lines = [f"Still to go, at best estimate: {told}; a reading by hand may spare it ({amount})."]
    elif still.deepest <= 0 and still.feasible:
        lines = [f"Still to go: {told}; too badly known for a pass that is not to go too deep."]
    else:
        sheets = ", rest_work_sheets.pdf" if handed_out(report, check) else ""
        lines = [
            f"Still to go: {told}. The next pass takes {amount} (still_to_go.ply{sheets}){_leaves(check)}"
        ]
    if not still.feasible:
        lines.append(
            "NOT ENOUGH: within the limits, less what is gone already, no cut reaches it;"
            f" {both(still.short_by)} short. What limits it: {'; '.join(still.binding) or 'not named'}."
        )
    notes = check.rest.notes if check.rest is not None else ()
    return [*lines, *(f"{note[:1].upper()}{note[1:]}." for note in notes)]


def _leaves(check: Check) -> str:
    """What the pass leaves, and why it goes no deeper."""
    left = check.rest.left if check.rest is not None else None
    told = ""
    if left is not None:
        low, high = left.today.interval
        told = (
            f" and leaves a least gap of {both(left.today.least_clearance)}, 95 % between {millimetres(low)}"
            f" and {millimetres(high)}"
        )
    if check.whole:
        return f"{told}: as sure as was asked."
    return (
        f"{told}. It goes no deeper since what is ground too much does not come back: at most 1 time in"
        " 200 is it more than 1 mm too deep. Then the gaps are felt again."
    )


def next_steps(report: Report, check: Check) -> list[str]:
    """What to do now, in order; nothing that takes concrete away before the job is released."""
    steps = []
    released = report.release == ReleaseState.OK
    if not released and to_grind(check):
        steps.append(f"grind no more: the release says {report.release.upper()}; settle that first.")
    if check.fights:
        names = dict.fromkeys(t.name for f in check.fights for t in (f.reading, *f.against))
        if all(f.odd is Odd.SCAN for f in check.fights):
            return [*steps, "scan the finished work again and check again. Take nothing off before."]
        return [
            *steps,
            f"measure these again, marking on the slab where the front axle stands: {', '.join(names)}; write"
            " them anew and check again. Take nothing off before.",
        ]
    if check.clearance == "cannot tell":
        if Cause.CONTRADICTED in check.first.spare.causes:
            steps.append("measure again what contradicts, above; until then nothing is said.")
        doubts = check.first.spare.doubts
        steps += dict.fromkeys(f"{finding_step(f, report.scan.frame)}." for f in doubts)
        steps += [_measure_words(a) for a in check.advice]
    if check.clearance == "not yet":
        if check.still.feasible and released and check.still.deepest > 0:
            by = "by rest_work_sheets.pdf, " if handed_out(report, check) else ""
            steps.append(
                f"take another pass {by}where checked.png shows colour, no deeper; feel the gaps again, write"
                " them under [after] in place of the old ones, and check again."
            )
        if check.still.feasible and check.short is not None and check.still.deepest < check.short.best - KEPT:
            steps.append("or first narrow it, so that one pass can take more:")
            steps += [_measure_words(a) for a in check.advice]
        if not check.still.feasible:
            steps.append(
                "do not grind deeper: see the options that `crestcut run` lists, or ask an engineer."
            )
    if check.edges and released:
        steps.append("feather the steps named above with angled cuts, then check again.")
    if any(d.sure and d.steel for d in check.too_deep):
        steps.append("stop grinding there: the steel has too little cover left; ask an engineer.")
    if check.verdict == "done":
        if check.removed is None:
            steps.append("lay a straightedge across the cut's edges, which were not measured.")
        steps.append("keep this sheet with the job; drive over it once, slowly, with someone watching.")
    return steps


def watch_words(check: Check) -> str:
    """What whoever uses the slab should look out for from now on."""
    use = "" if check.first.in_use.verdict == "clears" else "faster, fuller or on softer tyres it may touch; "
    return (
        f"{use}fresh scrape marks (stop, and feel the gap again), new cracks or loose stones, water or ice"
        " that stays, a slab that moves with the season. Look after the first winter, or in twelve months."
    )


def _measure_words(item: Mapping[str, object]) -> str:
    """One measurement: how, where, what to expect, how it is written down, and what it would settle."""
    axle, settles = item.get("front_axle"), item.get("settles")
    means = "".join(f" {line}" for line in settles) if isinstance(settles, list) else ""
    if not isinstance(axle, list):
        said = f"{item['how']}, where: {item['where']}; expect {item['expect']}"
        return f"{said}; write it under [[after.string]].{means}"
    how = str(item["how"]).replace("stand the vehicle there", "stand the vehicle")
    stood = f"stand the vehicle, its front axle over x {axle[0]:.2f}, y {axle[1]:.2f},"
    return (
        f"{how.replace('stand the vehicle', stood, 1)} at {item['where']}; expect"
        f" {item['expect']}; write it under [[after.witness]]"
        f"{', with raised for the boards,' if item.get('raised') else ''} and check again.{means}"
    )
