"""Sentences of the report for someone who has never read one: gaps without signs, chances, where to
measure."""

from __future__ import annotations

from collections.abc import Mapping

from markupsafe import Markup

from crestcut.alternatives import Answer
from crestcut.chance import one_in
from crestcut.report.pages.figures import figure
from crestcut.report.pages.meanings import length, share
from crestcut.report.pages.shell import html, joined
from crestcut.report.words.summary import next_steps
from crestcut.study import Report

MEASURE = "measure first"
WAYS = ("keep to the line", "another line", "less load", "slower", "more pressure")  # options without work


def sentence(text: str) -> str:
    """The text with a capital and a full stop."""
    text = text.strip()
    return text[:1].upper() + text[1:] + ("" if text[-1:] in ".!?:" else ".")


def gap(metres: float) -> str | Markup:
    """Markup: "12.7 mm to spare", "5.6 mm too little"; no one has to read a minus."""
    if metres != metres:
        return "not known"
    return html("{} {}", length(abs(metres)), "too little" if metres < 0 else "to spare")


def room(metres: float) -> str | Markup:
    """Markup: a gap with its unit; below nothing it is said so."""
    return length(metres) if metres >= 0 or metres != metres else html("{} too little", length(-metres))


def odds(chance: float) -> str:
    """A chance of touching as people say it: "about 1 in 30", "about 29 in 30"."""
    if chance != chance:
        return "not worked out"
    if chance < 0.001 or chance > 0.999:
        return share(chance)
    rare = chance if chance <= 0.5 else 1 - chance
    many = one_in(rare)
    return f"about {1 if chance <= 0.5 else many - 1} in {many}"


def steps(report: Report, document: Mapping[str, object]) -> list[str | Markup]:
    """What to do now, in order; what to measure is told in full."""
    told = [measure_line(report, document, k) for k in range(min(len(report.advice), 3))]
    rest = [step for step in next_steps(report) if not (told and step.startswith(MEASURE))]
    asks = told if len(next_steps(report)) > len(rest) else []
    # the terminal prints its table before the steps, the page after them
    rest = [step.replace("(table above)", "(see Options)") for step in rest]
    return [*asks, *_drive_here(report), *(sentence(step) for step in rest)]


def _drive_here(report: Report) -> list[Markup]:
    """The first way of driving that needs no cut, where there is one."""
    for option in report.options:
        if option.works and option.kind in WAYS:
            known = option.clearance == option.clearance
            walking, used = length(option.clearance), room(option.in_use)
            leaves = html("It leaves {} at walking pace, {} in use.", walking, used) if known else ""
            how = " at walking pace" if option.answer is Answer.WALKING_PACE else ""
            return [
                html(
                    "<strong>No cut is needed{} if you drive here: {}.</strong> {} {}",
                    how,
                    option.name,
                    leaves,
                    sentence(option.needs),
                )
            ]
    return []


def measure_line(report: Report, document: Mapping[str, object], k: int) -> Markup:
    """Markup of the k-th hand measurement worth making: how, where, what to expect, and what it is worth."""
    item = report.advice[k]
    kind = str(item.get("kind") or "one gap by hand")
    parts = [html("<strong>{}.</strong>", _capital(str(item.get("how") or kind)))]
    if item.get("where"):
        what = _stand(report) if kind == "felt gap" else "From, to, and over"
        parts.append(html("{}: {} ({}, as in the scan).", what, item["where"], report.scan.frame.unit))
    if item.get("expect"):
        parts.append(html("The scan says: {}.", item["expect"]))
    if isinstance(item.get("narrows"), (int, float)):
        surer = figure(document, f"advice.measure.{k}.narrows")
        parts.append(html("It makes the answer about {} surer.", surer))
    return joined(parts, " ")


def _stand(report: Report) -> str | Markup:
    """Where the vehicle stands when the gap is least."""
    worst = report.before.worst
    if worst is None:
        return "Place"
    way = ", driven the other way" if worst.variant.way == "turned" else ""
    return html(
        "There: front axle {} along the line{}; the place on the slab", length(worst.station), way
    )  # fmt: skip


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
