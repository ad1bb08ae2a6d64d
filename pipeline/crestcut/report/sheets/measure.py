"""The measure-first sheet: one or two hand measurements that would settle it, each with its place, what to
expect, and what then.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.cautions import STRING, for_measuring
from crestcut.base.units import inches, millimetres
from crestcut.measure_next import CARD
from crestcut.report.pictures import ink
from crestcut.report.sheets.map import draw_marks
from crestcut.report.sheets.paper import SIDE, Paper, filled, true_to_scale
from crestcut.report.sheets.ties import far, name_axes, side, tie_cells, tie_heads, tie_widths, unit
from crestcut.work import TYRES, BoardsUnder, Measure, ReadingSpot, Worksheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.patches import Patch

SKETCH = 2.0  # in at the tallest


def measure_pages(sheet: Worksheet) -> list[Figure]:
    """Empty where nothing needs measuring."""
    if not sheet.first:
        return []
    name = "Measure this first: nothing is cut before"
    pages: list[Figure] = []
    for group in _on_a_page(sheet.first):
        pages += filled(sheet, name, partial(_measures, group=group))
    return pages


def _on_a_page(measures: Sequence[Measure]) -> list[list[tuple[int, Measure]]]:
    """Numbered measures that stand together: a gap to feel by itself, with its cautions, since it is taken to
    the slab; others as many as follow each other.
    """
    out: list[list[tuple[int, Measure]]] = []
    for number, measure in enumerate(measures, start=1):
        if out and measure.kind == STRING == out[-1][-1][1].kind:
            out[-1].append((number, measure))
        else:
            out.append([(number, measure)])
    return out


def _measures(paper: Paper, group: Sequence[tuple[int, Measure]]) -> None:
    if group[0][0] == 1:
        paper.text(
            "The scan is wrong by more than the answer can bear. These hand measurements tell more than"
            " another scan."
            " Make them in this order; after each one write it into the job file and run it again: it may be"
            " enough.",
            size=10.2,
        )
    for number, measure in group:
        _one(paper, measure, number)


def _one(paper: Paper, measure: Measure, number: int) -> None:
    felt = "Feel the gap under the vehicle" + (", on boards" if measure.boards is not None else "")
    titles = {"felt gap": felt, "walk": "Or walk it again the other way round"}
    title = titles.get(measure.kind, measure.kind.capitalize())
    narrows = (
        "" if math.isnan(measure.narrows) else f" (the answer becomes {measure.narrows:.1f} times narrower)"
    )
    paper.need(3.2)
    paper.heading(f"{number}  {title}{narrows}")
    paper.text(f"How: {measure.how[:1].lower()}{measure.how[1:]}.".replace("..", "."))
    for caution in for_measuring([measure.kind]):
        paper.text(caution.line, "!", 8.6)
    for line in measure.cautions:
        paper.text(line, bold=True)
    if measure.places:
        _sketch(paper, measure)
        _places(paper, measure)
    if measure.kind != "walk":
        _expected(paper, measure)
    for line in measure.settles:
        paper.text(line, "box")
    if measure.write:
        _for_the_file(paper, measure.write)


def _for_the_file(paper: Paper, lines: Sequence[str]) -> None:
    """What to type into the job file, line by line."""
    step = 0.135 * paper.tight  # in
    paper.need((len(lines) + 1) * step + 0.1)
    paper.at += 0.08
    paper.text("Into the job file, with what was read in place of the dots:")
    for line in lines:
        paper.put(SIDE + 0.24, paper.at, line, fontsize=8.6 * paper.tight, family="Courier")
        paper.at += step


def _places(paper: Paper, measure: Measure) -> None:
    """Where: by station and offset, and by two tapes where marks cross well."""
    tied, metric = any(ties is not None for *_, ties in measure.places), paper.sheet.metric
    rows = [
        [name, far(station, metric), side(offset, metric), *(tie_cells(ties, metric=metric) if tied else ())]
        for name, station, offset, ties in measure.places
    ]
    m = unit(metric)
    heads, widths = ["where|", f"{paper.sheet.words.station}|{m}", f"offset|{m}"], [18, 11, 11]
    if tied:
        heads += tie_heads(metric)
        widths += tie_widths(metric)
    paper.table(heads, widths, rows, ruled=0)
    name = paper.sheet.words.station.capitalize()
    along = f"{name}s run along the line of travel from its start, offsets to the left"
    if tied:
        paper.text(f"{along} are plus; tapes lie on the slab, pulled straight, from the marks.", size=8.6)
    else:
        paper.text(
            f"{along} are plus. No marks that cross well were scanned: chalk three round the cut before"
            f" the next scan, and"
            " tapes are printed here.",
            size=8.6,
        )


def _sketch(paper: Paper, measure: Measure) -> None:
    """From above, true to scale: line of travel, marks, where the tyres or blocks stand, where to read."""
    places = np.array([[station, offset] for _, station, offset, _ in measure.places])
    marks = paper.sheet.marks
    everything = np.vstack([places, *(np.array([[s, v]]) for _, s, v in marks)])
    low, high = everything.min(axis=0) - 0.5, everything.max(axis=0) + 0.5
    tall = float(
        np.clip((paper.room - 0.4) * (high[1] - low[1]) / (high[0] - low[0]), 1.4, SKETCH * paper.tight**2)
    )
    paper.need(tall + 0.8)
    axes = paper.axes(tall, inset=0.4)
    axes.axhline(0, color=ink.INK, lw=1.0, ls=(0, (9, 2, 1.5, 2)))
    for name, station, offset, _ in measure.places:
        if name in TYRES:
            if measure.boards is not None:
                axes.add_patch(_board(measure, measure.boards, station, offset))
            axes.add_patch(_tyre(station, offset))
        elif name in (ReadingSpot.BLOCK_A, ReadingSpot.BLOCK_B):
            axes.plot(station, offset, "s", ms=8, mfc="white", mec=ink.INK, mew=1.4)
        else:
            axes.plot(station, offset, "x", ms=11, mew=2.4, color=ink.INK, zorder=4)
        _name(axes, name, station, offset, measure)
    if measure.kind == "string" and len(places) >= 2:
        axes.plot(places[:2, 0], places[:2, 1], color=ink.INK, lw=0.9)
    draw_marks(axes, marks, 12)
    true_to_scale(axes, low, high)
    name_axes(axes, paper.sheet.words.station, paper.sheet.metric)
    axes.grid(color=ink.FAINT, lw=0.3)
    paper.at += 0.42


def _name(axes: Axes, name: ReadingSpot, station: float, offset: float, measure: Measure) -> None:
    """The name beside its sign: a tyre's on its outer side, so that the place to feel stays free."""
    sides = [v for kind, _, v, _ in measure.places if kind in TYRES]
    at: tuple[float, float] = (8, 6)
    style = {**ink.SMALL, "ha": "left", "va": "baseline"}
    if name in TYRES:
        out = 1 if offset > sum(sides) / len(sides) else -1
        far = (8 if measure.boards is None else 12) * out
        at, style = (0, far), {**style, "ha": "center", "va": "bottom" if out > 0 else "top"}
    axes.annotate(
        name,
        (station, offset),
        xytext=at,
        textcoords="offset points",
        path_effects=ink.halo(2.4),
        zorder=2,
        **style,
    )


def _board(measure: Measure, boards: BoardsUnder, station: float, offset: float) -> Patch:
    """The board under a tyre, longer on the way on."""
    from matplotlib.patches import Rectangle

    at = {name: s for name, s, *_ in measure.places}
    forwards = at[ReadingSpot.FRONT_LEFT] > at[ReadingSpot.REAR_LEFT]
    low = boards.before if forwards != boards.backwards else boards.beyond
    return Rectangle(
        (station - low, offset - 0.14), boards.before + boards.beyond, 0.28, facecolor="white",
        edgecolor=ink.INK, lw=0.8, hatch="////", alpha=0.6,
    )  # fmt: skip


def _tyre(station: float, offset: float) -> Patch:
    from matplotlib.patches import Rectangle

    return Rectangle(
        (station - 0.15, offset - 0.09), 0.30, 0.18, facecolor="#9a9894", edgecolor=ink.INK, lw=1.0
    )


def _expected(paper: Paper, measure: Measure) -> None:
    """What to expect, large, beside the place to write what was read."""
    paper.need(0.6)
    if math.isnan(measure.expect):
        said = "Read:"
    elif measure.expect < 0:
        said = "Expect: it touches (no card goes in)"
    elif measure.kind == "felt gap" and measure.expect < CARD:
        said = "Expect: a touch, or one card at most"
    else:
        said = f"Expect: {millimetres(measure.expect) if paper.sheet.metric else inches(measure.expect)}"
    paper.at += 0.12
    paper.put(SIDE, paper.at, said, fontsize=12, fontweight="bold")
    paper.put(SIDE + 4.1, paper.at, "Read:", fontsize=12, fontweight="bold")
    paper.line(SIDE + 4.65, paper.at + 0.03, SIDE + 6.4, paper.at + 0.03, 0.8)
    paper.at += 0.3
