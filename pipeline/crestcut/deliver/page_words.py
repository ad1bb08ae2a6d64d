"""Sentences of the report for someone who has never read one: gaps without signs, chances, where to
measure."""

from __future__ import annotations

from collections.abc import Mapping

from crestcut.cut.option_rows import Answer
from crestcut.deliver.page_figures import figure
from crestcut.deliver.page_meanings import length, share
from crestcut.deliver.page_shell import esc
from crestcut.deliver.report import Report
from crestcut.deliver.summary import next_steps
from crestcut.travel.chance import one_in

MEASURE = "measure first"
WAYS = ("keep to the line", "another line", "less load", "slower", "more pressure")  # options without work


def sentence(text: str) -> str:
    """The text with a capital and a full stop."""
    text = text.strip()
    return text[:1].upper() + text[1:] + ("" if text[-1:] in ".!?:" else ".")


def gap(metres: float) -> str:
    """Markup: "12.7 mm to spare", "5.6 mm too little"; no one has to read a minus."""
    if metres != metres:
        return "not known"
    return f"{length(abs(metres))} {'too little' if metres < 0 else 'to spare'}"


def room(metres: float) -> str:
    """Markup: a gap with its unit; below nothing it is said so."""
    return length(metres) if metres >= 0 or metres != metres else f"{length(-metres)} too little"


def odds(chance: float) -> str:
    """A chance of touching as people say it: "about 1 in 30", "about 29 in 30"."""
    if chance != chance:
        return "not worked out"
    if chance < 0.001 or chance > 0.999:
        return share(chance)
    rare = chance if chance <= 0.5 else 1 - chance
    many = one_in(rare)
    return f"about {1 if chance <= 0.5 else many - 1} in {many}"


def steps(report: Report, document: Mapping[str, object]) -> list[str]:
    """Markup of what to do now, in order; what to measure is told in full."""
    told = [measure_line(report, document, k) for k in range(min(len(report.advice), 3))]
    rest = [step for step in next_steps(report) if not (told and step.startswith(MEASURE))]
    asks = told if len(next_steps(report)) > len(rest) else []
    # the terminal prints its table before the steps, the page after them
    rest = [step.replace("(table above)", "(see Options)") for step in rest]
    return [*asks, *_drive_here(report), *(esc(sentence(step)) for step in rest)]


def _drive_here(report: Report) -> list[str]:
    """The first way of driving that needs no cut, where there is one."""
    for option in report.options:
        if option.works and option.kind in WAYS:
            leaves = (
                f"It leaves {length(option.clearance)} at walking pace, {room(option.in_use)} in use."
                if option.clearance == option.clearance
                else ""
            )
            how = " at walking pace" if option.answer is Answer.WALKING_PACE else ""
            return [
                f"<strong>No cut is needed{how} if you drive here: {esc(option.name)}.</strong> {leaves} "
                f"{esc(sentence(option.needs))}"
            ]
    return []


def measure_line(report: Report, document: Mapping[str, object], k: int) -> str:
    """Markup of the k-th hand measurement worth making: how, where, what to expect, and what it is worth."""
    item = report.advice[k]
    kind = str(item.get("kind") or "one gap by hand")
    parts = [f"<strong>{esc(_capital(str(item.get('how') or kind)))}.</strong>"]
    if item.get("where"):
        parts.append(f"{_stand(report) if kind == 'felt gap' else 'From, to, and over'}: {esc(item['where'])}"
                     f" ({esc(report.scan.frame.unit)}, as in the scan).")  # fmt: skip
    if item.get("expect"):
        parts.append(f"The scan says: {esc(item['expect'])}.")
    if isinstance(item.get("narrows"), (int, float)):
        surer = figure(document, f"advice.measure.{k}.narrows")
        parts.append(f"It makes the answer about {surer} surer.")
    return " ".join(parts)


def _stand(report: Report) -> str:
    """Where the vehicle stands when the gap is least."""
    worst = report.before.worst
    if worst is None:
        return "Place"
    way = ", driven the other way" if worst.variant.way == "turned" else ""
    return f"There: front axle {length(worst.station)} along the line{way}; the place on the slab"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
