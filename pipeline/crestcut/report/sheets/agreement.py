"""``agreement.pdf``, for whoever owns the slab: the quote, what is agreed on, and frames for photographs.

A file of its own: the work sheets are for the person who grinds, and lie on the ground; this is signed, and
kept. Written only where there is a cut and it is released.
"""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING

from crestcut.base.language import say
from crestcut.base.units import both, inches, litres, millimetres, number
from crestcut.chance import IN_USE, WALKING
from crestcut.job import CostLine, Per, Prices, cost
from crestcut.report.pictures import ink
from crestcut.report.sheets.pages import write_in
from crestcut.report.sheets.paper import SIDE, Paper
from crestcut.report.words.summary import place_words
from crestcut.study import Report
from crestcut.work import Worksheet, spent_of

if TYPE_CHECKING:
    from matplotlib.figure import Figure

AGREEMENT = "agreement.pdf"
NO_ADVICE = (
    "None of this is legal advice, and it is no contract by itself: it records what was worked out and what"
    " was said. The law of the place, its codes and licensed people decide; ask a lawyer what you need."
)
ROUNDED = (
    "Each line is the amount as printed here and on the work sheets, times its price, to the nearest"
    " hundredth (halves up); the totals are the sums of the lines as printed. A day begun counts as a day;"
    " wheels count by the share of a set that is worn."
)
WHAT = 40  # characters
FRAME_TALL, ROWS_APART = 1.7, 0.18  # in
SMALL = 9.0  # points
SMALLER = (SMALL, 8.4, 7.8)  # points: the largest with which all that is signed stands on one page


def write_agreement(report: Report, sheet: Worksheet, folder: Path) -> tuple[Path, ...]:
    """Write ``agreement.pdf`` and return its path; nothing where nothing is released to be cut."""
    if sheet.set_out is None or report.plan is None:
        return ()
    path = folder / AGREEMENT
    with ink.book(path, report.identity) as pdf:
        for figure in agreement_pages(report, sheet):
            pdf.savefig(figure)
    return (path,)


def agreement_pages(report: Report, sheet: Worksheet) -> list[Figure]:
    """The quote where the job has prices, the agreement, the photographs."""
    quote = [] if report.job.prices is None else _quote(sheet, report.job.prices)
    return [*quote, *_agreement(report, sheet), *_photographs(report, sheet)]


def _quote(sheet: Worksheet, prices: Prices) -> list[Figure]:
    paper = Paper(sheet, "Quote")
    found = cost(prices, spent_of(sheet.quantities))
    goes = f"{number(sheet.quantities.area)} m2 and {litres(sheet.quantities.volume)} by the plan"
    paper.text(f"For the cut described on the next page: {goes}.")
    paper.text(f"All amounts in {prices.currency}, at the prices of whoever does the work.", bold=True)
    rows = [
        (
            textwrap.shorten(say(x.what), WHAT - 2, placeholder=" ...").ljust(WHAT), _amount_words(x),
            f"{_plain(x.price.amount)} per {x.price.per}", f"{x.least:.2f}", f"{x.most:.2f}",
        )
        for x in found.lines
    ]  # fmt: skip
    widths = (WHAT, 20, 18, 12, 12)
    paper.table((say("what").ljust(WHAT), "how much", "price", "least", "most"), widths, rows, ruled=0)
    paper.rule(paper.at - 0.17, 0.6)
    total = (say("Together").ljust(WHAT), "", "", f"{found.least:.2f}", f"{found.most:.2f}")
    paper.mono("".join(say(cell).rjust(width) for cell, width in zip(total, widths, strict=True)), bold=True)
    paper.at += 0.1
    if found.unpriced:
        paper.text(f"No price was given, and none is in the sum: {', '.join(found.unpriced)}.", bold=True)
    paper.heading("What the range means")
    for line in (
        "Least: every step at its quickest, and the plan exactly. Most: at its slowest, and what hands"
        " usually take beyond a plan. Nobody knows the concrete before the first slot.",
        ROUNDED,
        "Not in it: taxes, unless the prices hold them; steel, pipes or voids that are found; waiting for"
        " weather or a permit; anything that is not on this page.",
        NO_ADVICE,
    ):
        paper.text(line, "\u2022")
    write_in(paper, (("Quoted by", "on, and holds until"), ("Taxes", "accepted by, on")))
    return paper.figures


def _plain(amount: float) -> str:
    return f"{amount:.4f}".rstrip("0").rstrip(".")


def _amount_words(line: CostLine) -> str:
    sets = line.price.per == Per.SET
    least, most = (f"{end:.2f}" if sets else _plain(end) for end in line.amount)
    span = least if least == most else f"{least} to {most}"
    unit = {"hour": "h", "litre": "litres", "kg": "kg"}.get(line.price.per)
    return f"{span} {unit or line.price.per + ('' if most == '1' else 's')}"


def _agreement(report: Report, sheet: Worksheet) -> list[Figure]:
    """On one page if that can be read: other words, and other languages, are longer."""
    for size in SMALLER:
        pages = _agreed(report, sheet, size)
        if len(pages) == 1:
            break
    return pages


def _agreed(report: Report, sheet: Worksheet, size: float) -> list[Figure]:
    paper = Paper(sheet, "What is agreed on")
    paper.heading("What will be done")
    for line in _done(report, sheet):
        paper.text(line, "\u2022", size=size)
    paper.heading("Gap under the vehicle, today and after")
    _gaps(paper, report, sheet)
    paper.heading("What it will not do")
    for line in _not_cured(report, sheet):
        paper.text(line, "\u2022", size=size)
    paper.heading("Who was asked about the slab, and may it be cut")
    paper.text("; ".join(sheet.release.known) + ".", size=size)
    paper.heading("What can hurt somebody, in short; the work sheets say the rest")
    paper.text(
        "Grinding makes silica dust that harms lungs for good: keep people, pets and open windows away, and"
        " the protection that the sheets name on. Steel, pipes, cables or a void: the work stops until"
        " whoever is concerned has seen it. A gap is felt only under a vehicle that is chocked, brake on,"
        " engine off, key out: nobody under it, beside it or downhill of it.",
        size=size,
    )
    paper.text(NO_ADVICE, bold=True, size=size)
    paper.need(1.25)
    write_in(
        paper, (("For whoever owns the slab: name, signature", "on"),
                ("For whoever does the work: name, signature", "on")),
    )  # fmt: skip
    return paper.figures


def _done(report: Report, sheet: Worksheet) -> list[str]:
    plan = report.plan
    assert plan is not None
    worst = report.before.worst
    where = "" if worst is None else f" The worst place: {place_words(report, worst)}."
    return [
        f"Concrete is taken off: {both(plan.deepest)} at the deepest, over {number(plan.area)} m2,"
        f" {litres(plan.volume)} by the plan, by the method called '{sheet.method}', its edges tapered"
        f" 1:{1 / report.job.cut.feather:.3g}.{where}",
        f"The aim: {both(report.job.wanted.want)} under the belly and {both(report.job.wanted.want_ends)}"
        f" under nose and tail at walking pace, {report.job.wanted.confidence * 100:g} % sure.",
        "It is checked with the strings of the work sheets, then with the vehicle itself, at walking pace,"
        " somebody watching.",
    ]


def _gaps(paper: Paper, report: Report, sheet: Worksheet) -> None:
    """Median and interval, in one unit, today and after, at walking pace and in use."""
    length = (lambda v: millimetres(v)) if sheet.metric else inches
    left = report.left

    pairs = [("today", report.today, report.in_use)]
    pairs += [("after", left.today, left.in_use)] if left is not None else []
    rows = [
        (
            say(f"{when}, {how}").ljust(24), length(chance.least_clearance),
            _span(*map(length, chance.interval)), chance.words or chance.verdict,
        )
        for when, *chances in pairs
        for how, chance in zip((WALKING, IN_USE), chances, strict=True)
        if chance is not None
    ]  # fmt: skip
    heads = ("".ljust(24), "best estimate", "19 times in 20 between", "chance")
    paper.table(heads, (24, 13, 26, 39), rows, ruled=2)  # together as wide as the page has room
    paper.text("Below zero it touches. Every gap is the least anywhere under the vehicle.", size=SMALL)


def _span(low: str, high: str) -> str:
    """The unit once: a column has room for no more in every language."""
    return f"{low.rpartition(' ')[0]} to {high}"


def _not_cured(report: Report, sheet: Worksheet) -> list[str]:
    job, left = report.job, report.left
    names = [f"the {v.name}" for v in report.vehicles] or [f"the {report.vehicle.name}"]
    lines = [
        f"It is worked out for {', '.join(names)}, loaded '{', '.join(job.vehicle.loads)}', on the line that"
        f" was drawn and up to {millimetres(job.travel.wander, 0)} beside it. Another vehicle, load, tyre or"
        " line was not looked at.",
    ]
    if left is not None and left.in_use.verdict != "clears":
        lines.append(
            f"In use, faster or fuller than measured, it may still touch: {left.in_use.words or 'not known'}."
            " Slow driving stays needed."
        )
    if report.soft:
        lines.append(f"Parts that may touch and do today: {'; '.join(s.words for s in report.soft)}.")
    lines.append(f"Water: {sheet.water.headline}")
    lines.append(
        "The slab is thinner there for good, shows its stones, is lighter or darker, and may need a sealer"
        " against frost. Cracks and joints that are there stay."
    )
    lines.append(
        "The gaps are worked out from a scan and tape measures, not measured under the vehicle; the program"
        " has not been proved in the field. What is felt under the vehicle afterwards counts."
    )
    return lines


def _photographs(report: Report, sheet: Worksheet) -> list[Figure]:
    """Frames in pairs, and what belongs in each."""
    paper = Paper(sheet, "Photographs, before and after")
    paper.text(
        "From the same spot, the same way and height before and after; a rule or tape in each. No people, no"
        " number plates. Fix them here or write their numbers into the frames.",
        size=SMALL,
    )
    marks = ", ".join(name for name, *_ in sheet.marks)
    worst = report.before.worst
    where = "" if worst is None else f" ({place_words(report, worst).split(', under')[0]})"
    for what in (
        f"All of the slab, from where the vehicle comes{f'; marks {marks} in view' if marks else ''}",
        f"The place that scrapes{where}, from above, its marks in view",
        "The edges of the cut to be, and every crack and joint within a step of it",
        "The gap: string and rule, or a stick under the chocked vehicle, camera held low from uphill",
    ):
        _frames(paper, what)
    return paper.figures


def _frames(paper: Paper, what: str) -> None:
    """Two frames side by side under what they are to show."""
    paper.need(FRAME_TALL + ROWS_APART + 0.3)
    paper.text(what, size=SMALL, bold=True)
    wide = (paper.room - 0.2) / 2
    top = paper.at - 0.08
    for k, when in enumerate(("before, on", "after, on")):
        x = SIDE + k * (wide + 0.2)
        paper.frame(x, top, wide, FRAME_TALL, dashed=False)
        paper.put(x + 0.08, top + FRAME_TALL - 0.08, when, fontsize=8, color=ink.SOFT)
    paper.at = top + FRAME_TALL + ROWS_APART
