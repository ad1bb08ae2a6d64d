"""The verdict in one sentence, the same for terminal, pictures and page."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from crestcut.base.units import both
from crestcut.chance import finding_head
from crestcut.report.words.ends import grinding_seldom_cures
from crestcut.study import Report
from crestcut.terrain import Doubt, DoubtKind

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
DOUBTED = {
    DoubtKind.GUESSED: "the unit of the scan is a guess, and another would do",
    DoubtKind.NO_SCALE: "nothing says the scale of the scan",
    DoubtKind.ROUNDED: "the scan's coordinates are rounded too coarsely",
    DoubtKind.STATIONS: "the scan's stations disagree",
    DoubtKind.FACES: "the scan's mesh is seen from below",
}


@dataclass(frozen=True)
class VerdictSaid:
    """The verdict as one sentence: lead, the vehicle, middle, the gap, tail; then its chance.

    head : Touches, Clears, Cannot tell.  article : before the name; both empty where it is not named.  gap :
    without a sign, m; None where none is told.  chance : in words, or empty.  asked : what was asked for
    where less is left, m.  open : it is the size of the gap alone that leaves it open.
    """

    head: str
    lead: str = ""
    article: str = ""
    name: str = ""
    middle: str = ""
    gap: float | None = None
    tail: str = ""
    chance: str = ""
    asked: float | None = None
    open: bool = False


def say_verdict(report: Report) -> VerdictSaid:
    """Touches, clears or cannot tell; by how much, where, and why it is open."""
    gap, name = report.least_clearance, report.vehicle.name
    named = VerdictSaid("Cannot tell", article=called(name).removesuffix(name), name=name)
    if math.isnan(gap):
        return replace(named, lead="nothing under ", middle="'s path was measured")
    if report.doubts:
        return VerdictSaid("Cannot tell", finding_head(report.doubts[0]))
    near = nearest(report)
    told = replace(named, gap=abs(gap), chance=report.today.words if report.today is not None else "")
    if report.verdict == "touches":
        by, tail = ("by", "") if gap < 0 else ("with a best estimate of", "in between")
        return replace(told, head="Touches", middle=f" {MEETS[report.kind]} {by}", tail=tail)
    if report.verdict == "clears":
        asked = _more_was_asked(report)
        return replace(told, head="Clears", middle=" has", tail=f"to spare {near}", asked=asked)
    if (doubt := deciding(report)) is None and blind(report):
        holes = f"{unmeasured(report):.2f} m2 under "
        seen = "'s path is not measured; where it is, there is"
        return replace(told, lead=holes, middle=seen, tail=f"to spare {near}")
    why = "" if doubt is None else f"{DOUBTED[doubt.kind]}; "
    much = f"{'too little room' if gap < 0 else 'to spare'} {near}"
    return replace(told, lead=f"{why}at best estimate ", middle=" has", tail=much, open=doubt is None)


def verdict_line(report: Report) -> str:
    """The verdict in one line; at nose and tail why not to grind."""
    said = say_verdict(report)
    size = "" if said.gap is None else f" {both(said.gap)}"
    tail = f" {said.tail}" if said.tail else ""
    chance = f"; {said.chance}" if said.chance else ""
    less = "" if said.asked is None else f"; that is less than the {both(said.asked)} asked for"
    named = f"{said.lead}{said.article}{said.name}{said.middle}"
    head = f"{said.head.upper()}: {named}{size}{tail}{chance}{less}."
    why = "" if math.isnan(report.least_clearance) or report.doubts else grinding_seldom_cures(report)
    return f"{head} {why}" if why else head


def called(name: str) -> str:
    """A vehicle's name as a sentence takes it: 'the flat-floor hatchback', but 'our van'."""
    own = name.split(" ", 1)[0].lower() in ("the", "our", "my", "your", "his", "her", "their")
    return name if own else f"the {name}"


def unmeasured_lines(report: Report) -> list[str]:
    """How much of the ground under the vehicle's path nobody has seen; what rounds to nothing is not worth a
    line."""
    area = unmeasured(report)
    return [f"Not measured: {area:.2f} m2 under the vehicle's path; nothing is said of it."] * (area >= 0.005)


def unmeasured(report: Report) -> float:
    """Ground under the vehicle's path that the scan has not seen, m2."""
    return report.before.unmeasured * report.surface.height.frame.cell**2


def deciding(report: Report) -> Doubt | None:
    """The doubt about the scan for which nothing can be told, if there is one."""
    return next((doubt for doubt in report.surface.error.doubts if doubt.decides), None)


def blind(report: Report) -> bool:
    """Whether it is holes in the scan, and not the size of the gap, that leave the answer open."""
    today = report.today
    if (
        today is None
        or deciding(report) is not None
        or report.verdict != "cannot tell"
        or not report.before.unmeasured
    ):
        return False
    return today.chance_of_contact <= 1.0 - report.job.wanted.confidence


def nearest(report: Report) -> str:
    """Where the least gap is, in words: by its kind, else under the part that has it."""
    worst = report.before.worst
    return NEAREST.get(report.kind) or (f"under the {worst.part}" if worst is not None else "")


def _more_was_asked(report: Report) -> float | None:
    """The gap asked for where less is left, m; None elsewhere."""
    worst = report.before.worst
    if worst is None or report.least_clearance >= report.wanted(worst.zone):
        return None
    return report.wanted(worst.zone)
