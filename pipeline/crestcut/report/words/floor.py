"""A floor's answer in words: for the terminal, the plan's head and the first sheet."""

from __future__ import annotations

import math

from crestcut.base.units import at_most, both, litres, millimetres, number
from crestcut.floor import (
    BS_CLASSES,
    BS_LENGTH,
    LOCAL_SHARE,
    Figure,
    FloorDoubt,
    FloorFinding,
    Spot,
    aci_class,
    bs_class,
    din_gap,
    not_alone,
    worth,
)
from crestcut.report.view.floor_report import FloorReport
from crestcut.report.words.summary import RELEASE_HEADS
from crestcut.terrain import high as how_high

BLOCKS = 0.020  # m: that a straightedge is read from
OPEN = "What follows is as the scan shows it, its own error in it: measure first, grind nothing to it yet."
LISTED = 8  # spots named in the terminal
HUGE = 100.0  # F-numbers above are not told apart
FIELD_NOTE = "Not proved in the field: lay a straightedge on the floor itself before and after."


def floor_lines(report: FloorReport) -> list[str]:
    """The whole answer."""
    judged = report.judged
    lines = [report.title, verdict_line(report)]
    lines += [f"  {figure_words(f)}" for f in judged.figures]
    lines += class_lines(report)
    lines += [f"Readings do not agree, none was used: {c}." for c in judged.contradictions]
    if judged.verdict == "cannot tell" or judged.provisional:
        lines += advice_lines(report)
    lines += cut_lines(report)
    lines += [f"Mind: {finding_line(report, f)}." for f in judged.findings]
    lines += [f"Mind: {note}." for note in (*judged.notes, *judged.surface.notes)]
    error = judged.surface.error
    if judged.told:
        lines.append(f"Hand readings used: {judged.told}.")
    lines.append(
        f"Scan: {judged.area:.1f} m2 of floor judged; error {millimetres(error.warp)} warp"
        f" ({error.warp_source}),"
        f" {millimetres(error.patch)} patch ({error.patch_source})."
    )
    lines += release_lines(report)
    return [*lines, FIELD_NOTE]


def asked_words(report: FloorReport) -> str:
    """What was asked of the floor."""
    wish, said = report.job.wish, []
    if wish.straightedge is not None and wish.gap is not None and wish.reference == "straightedge":
        said.append(f"{both(wish.gap)} under a straightedge of {wish.straightedge:g} m")
    elif wish.gap is not None:
        said.append(f"{both(wish.gap)} off {'level' if wish.reference == 'level' else 'a plane'}")
    if wish.ff is not None:
        said.append(f"FF {wish.ff:g}")
    if wish.fl is not None:
        said.append(f"FL {wish.fl:g}")
    return " and ".join(said) + (f" ({wish.name})" if wish.name else "")


def chance_words(chance: float) -> str:
    """A chance as people say it; 64 draws tell no more than 1 in 30 apart."""
    if chance >= 0.97:
        return "more than 29 in 30"
    if chance <= 0.03:
        return "less than 1 in 30"
    return (
        f"about {round(chance * 10)} in 10" if 0.1 <= chance <= 0.9 else f"about {round(chance * 30)} in 30"
    )


def verdict_line(report: FloorReport) -> str:
    """One line: meets, does not meet or cannot tell; what was asked; the chance."""
    judged = report.judged
    head = judged.verdict.upper()
    kinds = {f.doubt for f in judged.findings}
    if judged.verdict == "cannot tell" and kinds & {FloorDoubt.TWICE, FloorDoubt.UNSEEN}:
        why = "a part of it is there twice" if FloorDoubt.TWICE in kinds else "a part of it was not seen"
        return f"{head}: asked for {asked_words(report)}; {why}."
    if judged.verdict == "meets" and judged.findings:
        head = f"{head} where it was seen"
    kept = chance_words(judged.chance)
    said = f"{head}: asked for {asked_words(report)}; chance that the floor keeps to it {kept}"
    if judged.verdict == "cannot tell" and judged.chance <= 1 - report.job.wish.confidence:
        return f"{said}; yet no one place is sure to be over."
    return f"{said}."


def finding_line(report: FloorReport, finding: FloorFinding) -> str:
    """What of the area was not judged, where, why, and what would mend it."""
    where = f"{area_words(finding.area)} of floor about {place_words(report, finding.xy)}"
    if finding.doubt is FloorDoubt.TWICE:
        return (
            f"{where} are there twice, {both(finding.size, 0)} apart: two passes do not agree, and neither is"
            " the floor; scan it again in one slow walk, or give each pass as a file of its own"
        )
    if finding.doubt is FloorDoubt.COVERED:
        return f"{where} are under something {how_high(finding.size)} high: nothing is said of them"
    return (
        f"{where} were not seen: a spot over the limit may lie there; scan them too (a mirror, standing water"
        " or a shadow shows no floor), or name the area without them"
    )


def figure_words(figure: Figure) -> str:
    """A figure with its interval, and what was asked of it."""
    low, high = figure.interval
    if figure.name in ("FF", "FL"):
        said = f"{figure.name} {_number(figure.estimate)}, 95 % between {_number(low)} and {_number(high)}"
        asked = "" if figure.asked is None else f"; {figure.asked:g} asked for"
    else:
        span = f"95 % between {millimetres(low)} and {millimetres(high)}"
        most = "most" if figure.name.startswith("off") else "largest"
        said = f"{most} {figure.name} {both(figure.estimate)}, {span}"
        asked = "" if figure.asked is None else f"; {millimetres(figure.asked)} allowed"
    seen = _number(figure.seen) if figure.name in ("FF", "FL") else millimetres(figure.seen)
    return f"{said} (the floor as it is drawn: {seen}){asked}"


def _number(value: float) -> str:
    return f"over {HUGE:.0f}" if not math.isfinite(value) or value > HUGE else f"{value:.1f}"


def class_lines(report: FloorReport) -> list[str]:
    """Where the floor stands among published classes, by best estimate; for comparison only."""
    judged, said = report.judged, []
    gap = next((f for f in judged.figures if f.name == f"gap under {BS_LENGTH:g} m"), None)
    if gap is not None:
        name = bs_class(gap.estimate)
        least = ", ".join(f"{n} {g * 1000:.0f}" for n, g in BS_CLASSES)
        din = "kept" if gap.estimate <= din_gap(BS_LENGTH) else "not kept"
        said.append(
            f"BS 8204 {name} ({least} mm under 2 m); DIN 18202 table 3 row 3 {din}"
            f" ({din_gap(2.0) * 1000:.0f} mm)"
        )
    by_name = {f.name: f.estimate for f in judged.figures}
    if "FF" in by_name and judged.numbers is not None:
        n = judged.numbers
        said.append(
            f"ACI 117 overall class {aci_class(by_name['FF'], by_name['FL'])} (along {n.lines}"
            f" line{'s' if n.lines > 1 else ''}, {n.readings} readings; the lowest line, as drawn,"
            f" FF {_number(n.lowest_ff)}, FL {_number(n.lowest_fl)}{_local(report)})"
        )
    if not said:
        return []
    none = "" if judged.numbers is not None else " F-numbers not measured: no line of 12 readings has room."
    return [f"By best estimate, for comparison: {'; '.join(said)}.{none}"]


def _local(report: FloorReport) -> str:
    """What a part of a floor must reach at least where F-numbers are asked of the whole."""
    asked = [(n, v) for n, v in (("FF", report.job.wish.ff), ("FL", report.job.wish.fl)) if v is not None]
    least = ", ".join(f"{name} {value * LOCAL_SHARE:g}" for name, value in asked)
    return f"; a part of it wants {least} or more" if least else ""


def advice_lines(report: FloorReport) -> list[str]:
    """What to measure by hand first."""
    laid = report.judged.laid
    if laid is None:
        return [
            "Measure first: an optical level or laser line over the highest and lowest spots; write them as"
            " [[level]]."
        ]
    a, b = (place_words(report, p) for p in (laid.first, laid.second))
    along = math.dist(laid.first, laid.at)
    key = f'at = "{along:.2f} m" and blocks = "{BLOCKS * 1000:.0f} mm"'
    return [
        f"Measure first: a straightedge or string on {millimetres(BLOCKS, 0)} blocks from {a} to {b}, read"
        f" down to the floor {along:.2f} m from the first: the scan expects {millimetres(BLOCKS + laid.gap)}."
        f" Write it down as a [[string]] with {key}; two or three more across it each narrow the answer."
    ]


def place_words(report: FloorReport, xy: tuple[float, float]) -> str:
    """A place in the scan's own coordinates."""
    x, y = report.plan_point(xy)
    decimals = 2 if report.scan.frame.unit in ("m", "ft", "us-ft") else 0
    return f"[{x:.{decimals}f}, {y:.{decimals}f}]"


def cut_lines(report: FloorReport) -> list[str]:
    """What to grind and to fill, and what it will be then."""
    levelling = report.judged.levelling
    if not levelling.high and not levelling.low:
        return ["Nothing to grind."]
    high, low = worth(levelling.high), worth(levelling.low)
    lines = [OPEN] if report.judged.verdict == "cannot tell" else []
    if high:
        lines.append(
            f"To grind: {len(high)} high spot{'s' if len(high) > 1 else ''}, {area_words(levelling.area)},"
            f" {litres(levelling.volume)}, {both(levelling.deepest)} at the deepest;"
            f" {claim_words(report)}."
        )
        lines += [f"  {spot_words(report, s)}" for s in high[:LISTED]]
    else:
        lines.append("Nothing worth grinding.")
    if low:
        filled = litres(sum(s.volume for s in low))
        lines.append(f"To fill, not to grind: {len(low)} low spot{'s' if len(low) > 1 else ''}, {filled}.")
        lines += [f"  {spot_words(report, s)}" for s in low[:LISTED]]
        if high and not levelling.alone_helps:
            lines.append(f"Both or neither: {not_alone(levelling)}")
        lines.append(
            f"Ground and left unfilled, the worst stays at {millimetres(levelling.ground_only)}; filled as"
            " well,"
            f" {millimetres(levelling.filled)}, as the scan shows the floor."
        )
    if not levelling.reached:
        by = f"{both(levelling.short_by)} stay over what was asked; " if levelling.short_by > 0 else ""
        lines.append(f"NOT ENOUGH: {by}limited by {'; '.join(levelling.binding) or 'the floor itself'}.")
    return lines + after_lines(report)


def after_lines(report: FloorReport) -> list[str]:
    """What it will be, and what to ask for so that the scan alone makes it sure."""
    lines, confidence = [], report.job.wish.confidence
    for f in report.judged.after:
        if f.asked is None:
            continue
        line = f"Afterwards: {figure_words(f)}; chance {chance_words(f.chance or 0.0)}."
        if f.chance is not None and f.chance < confidence and not f.at_least:
            less = f.asked - max(f.interval[1] - f.asked, 0.0)
            line += (
                " The straightedge settles it as you grind; to be sure by the scan alone ask for"
                f" {millimetres(at_most(less))}."
                if less >= f.asked / 2
                else " No cut makes that sure by this scan alone: the straightedge settles it as you grind."
            )
        lines.append(line)
    return lines


def claim_words(report: FloorReport) -> str:
    """What is claimed of the cut."""
    levelling = report.judged.levelling
    if not levelling.reached:
        return "as far as the limits allow"
    if levelling.claim == "least":
        return "the least cut: none shallower does anywhere"
    return f"maximal: no high spot's level may lie {millimetres(levelling.slack, 2)} higher"


def area_words(area: float) -> str:
    """An area, small ones in cm2."""
    return f"{number(area)} m2" if area >= 0.05 else f"{area * 1e4:.0f} cm2"


def spot_words(report: FloorReport, spot: Spot) -> str:
    """A spot: where, how high or low, how much."""
    tells = "stands" if spot.stands >= 0 else "lies"
    side = "over" if spot.stands >= 0 else "under"
    do = "grind" if spot.stands >= 0 else "fill"
    return (
        f"{spot.name} at {place_words(report, spot.xy)} {tells} {both(abs(spot.stands))} {side} the floor's"
        " level:"
        f" {do} {both(spot.deepest)} at most, {area_words(spot.area)}, {litres(spot.volume)}"
    )


def release_lines(report: FloorReport) -> list[str]:
    """Whether it may be ground."""
    if not worth(report.judged.levelling.high):
        return ["Release: nothing to grind, so nothing to release."]
    release = report.release
    return [RELEASE_HEADS[release.state], *(f"  - {reason}" for reason in release.words)]
