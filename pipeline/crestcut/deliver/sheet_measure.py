"""The measure-first sheet: one or two hand measurements that would settle it, each with its place, what to
expect, and what then.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from crestcut.deliver.sheet_paper import SIDE, Paper
from crestcut.deliver.sheet_ties import tie_cells
from crestcut.units import inches, millimetres
from crestcut.work.records import Measure, Worksheet

if TYPE_CHECKING:
    from matplotlib.figure import Figure


def measure_pages(sheet: Worksheet) -> list[Figure]:
    """Empty where nothing needs measuring."""
    if not sheet.first:
        return []
    paper = Paper(sheet, "Measure this first: nothing is cut before")
    paper.text(
        "The scan is wrong by more than the answer can bear. These hand measurements tell more than"
        " another scan. Make them"
        " in this order; after each one write it into the job file and run it again: it may be enough.",
        size=10.2,
    )
    for number, measure in enumerate(sheet.first, start=1):
        _one(paper, measure, number)
    return paper.figures


def _one(paper: Paper, measure: Measure, number: int) -> None:
    title = "Feel the gap under the vehicle" if measure.kind == "felt gap" else measure.kind.capitalize()
    narrows = (
        "" if math.isnan(measure.narrows) else f" (the answer becomes {measure.narrows:.1f} times narrower)"
    )
    paper.need(3.2)
    paper.heading(f"{number}  {title}{narrows}")
    paper.text(f"How: {measure.how[:1].lower()}{measure.how[1:]}.".replace("..", "."))
    if measure.places:
        rows = [
            [name, f"{station:.2f}", f"{offset:+.2f}", *tie_cells(ties)]
            for name, station, offset, ties in measure.places
        ]
        heads = [
            "where",
            f"{paper.sheet.words.station}|m",
            "offset|m",
            "from|",
            "tape|m",
            "and from|",
            "tape|m",
            "side of|the two",
        ]
        paper.table(heads, [18, 10, 10, 8, 9, 10, 9, 10], rows, ruled=0)
        paper.text(
            "Stations run along the line of travel from its start, offsets to the left of it are plus;"
            " tapes lie on the slab,"
            " pulled straight, from the marks.",
            size=8.6,
        )
    _expected(paper, measure)
    for line in measure.settles:
        paper.text(line, "box")


def _expected(paper: Paper, measure: Measure) -> None:
    """What to expect, large, beside the place to write what was read."""
    paper.need(0.6)
    if math.isnan(measure.expect):
        said = "Read:"
    elif measure.expect < 0:
        said = "Expect: it touches (no card goes in)"
    else:
        said = f"Expect: {millimetres(measure.expect)} ({inches(measure.expect)})"
    paper.at += 0.12
    paper.put(SIDE, paper.at, said, fontsize=12, fontweight="bold")
    paper.put(SIDE + 4.1, paper.at, "Read:", fontsize=12, fontweight="bold")
    paper.line(SIDE + 4.65, paper.at + 0.03, SIDE + 6.4, paper.at + 0.03, 0.8)
    paper.at += 0.3
