"""``floor_sheets.pdf``: what was found, and, when released, board and blocks for every high spot."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.units import METRES_PER, both, litres, millimetres, number
from crestcut.floor import Spot, SpotJig, lifts_of, not_alone, worth
from crestcut.job import Method
from crestcut.report.pictures import ink
from crestcut.report.pictures.floor_plan import floor_figure
from crestcut.report.sheets import pages as sheet_pages
from crestcut.report.sheets.pages import write_in
from crestcut.report.sheets.paper import SIDE, Paper, filled, true_to_scale
from crestcut.report.sheets.rails import floor_jig
from crestcut.report.sheets.ties import deep, tie_cells, tie_heads, tie_widths, unit
from crestcut.report.view.floor_report import FloorReport
from crestcut.report.words.floor import (
    OPEN,
    advice_lines,
    after_lines,
    area_words,
    claim_words,
    class_lines,
    figure_words,
    finding_line,
    verdict_line,
)

if TYPE_CHECKING:
    from matplotlib.figure import Figure

PDF_NAME = "floor_sheets.pdf"
WIDTHS = [6, 10, 10, 11, 10, 10, 9, 9, 12]
MOST_ROWS = 40


def write_floor_sheets(report: FloorReport, folder: Path) -> Path:
    """Write the PDF and return its path. Same input, same bytes."""
    path = folder / PDF_NAME
    with ink.book(path, report.identity) as pdf:
        for _, figure in pages(report):
            pdf.savefig(figure)
    return path


def pages(report: FloorReport) -> Iterator[tuple[str, Figure]]:
    """Every page with its short name. A stamped floor has no page to grind from."""
    sheet = report.work.sheet
    made: list[tuple[str, list[Figure]]] = [("found", _found(report)), ("plan", [floor_figure(report)])]
    if worth(report.judged.levelling.high):
        made.append(("release", sheet_pages.first_page(sheet)))
        if not sheet.stamp:
            made.append(("order", sheet_pages.order_page(sheet)))
            made += [(one.spot.name.lower(), _jig_pages(report, one)) for one in report.work.spots]
            made.append(("dots", _dot_pages(report)))
        made.append(("cards", sheet_pages.cards_page(sheet)))
        if not sheet.stamp:
            made.append(("record", _record(report)))
    for page, (name, figure) in enumerate(
        ((name, figure) for name, figures in made for figure in figures), start=1
    ):
        wide = float(figure.get_size_inches()[0])
        ink.text_at(figure, wide / 2, 0.3 if name != "plan" else 0.17, f"{page}", ha="center", fontsize=8)
        yield name, figure


def _found(report: FloorReport) -> list[Figure]:
    """Verdict, figures, classes, spots."""
    paper = Paper(report.work.sheet, "What was found of the floor")
    judged, levelling = report.judged, report.judged.levelling
    paper.text(verdict_line(report), bold=True, size=11)
    for figure in judged.figures:
        paper.text(figure_words(figure)[:1].upper() + figure_words(figure)[1:] + ".", "\u2022")
    for line in class_lines(report):
        paper.text(line, "\u2022")
    for finding in judged.findings:
        said = finding_line(report, finding)
        paper.text(f"{said[:1].upper()}{said[1:]}.", "!")
    for line in judged.contradictions:
        paper.text(f"Readings do not agree, none was used: {line}.", "!")
    if judged.verdict == "cannot tell" or judged.provisional:
        paper.heading("Measure first")
        for line in advice_lines(report):
            paper.text(line, "box")
    high, low = worth(levelling.high), worth(levelling.low)
    if judged.verdict == "cannot tell" and (high or low):
        paper.text(OPEN, bold=True)
    if high:
        paper.heading("High spots: to grind")
        paper.text(
            f"{area_words(levelling.area)}, {litres(levelling.volume)}, {both(levelling.deepest)} at"
            " the deepest;"
            f" {claim_words(report)}."
        )
        _table(paper, report, high)
        paper.text(
            "'Stands' and 'to' are over the floor's own level round the spot; x, y is its highest place.",
            size=8.4,
        )
    if low:
        paper.heading("Low spots: to fill, not to grind")
        _table(paper, report, low)
        if high and not levelling.alone_helps:
            paper.text(f"Both or neither. {not_alone(levelling)}", bold=True)
        paper.text(
            f"Ground and left unfilled, the worst stays at {millimetres(levelling.ground_only)}; filled as"
            " well,"
            f" {millimetres(levelling.filled)}, as the scan shows the floor."
        )
    if high or low:
        paper.heading("Afterwards, as far as the scan can tell")
        for line in after_lines(report):
            said = line.removeprefix("Afterwards: ")
            paper.text(said[:1].upper() + said[1:], "\u2022")
        paper.text("The straightedge on the floor, not this sheet, says when it is done.")
    for note in (*judged.notes, *judged.surface.notes):
        paper.text(note[:1].upper() + note[1:] + ".", "!")
    error = judged.surface.error
    paper.heading("How it was told")
    paper.text(
        f"{judged.area:.1f} m2 of floor. The scan's error: {millimetres(error.warp)} warp"
        f" ({error.warp_source}),"
        f" {millimetres(error.patch)} patch ({error.patch_source}). Walls, columns, holes and"
        " 50 mm beside them are not judged. A straightedge is laid on two high points, not levelled, in"
        " sixteen"
        " directions; a shorter one is tried as well.",
        size=8.8,
    )  # fmt: skip
    return paper.figures


def _table(paper: Paper, report: FloorReport, spots: tuple[Spot, ...]) -> None:
    unit = report.scan.frame.unit
    rows = []
    for s in spots[:MOST_ROWS]:
        x, y = report.plan_point(s.xy)
        rows.append([
            s.name, f"{x:.2f}", f"{y:.2f}", f"{s.stands * 1000:+.1f}", f"{s.deepest * 1000:.1f}",
            f"{_left(s):+.1f}", number(s.area), number(s.volume * 1000),
            f"{s.box[2] - s.box[0]:.1f}x{s.box[3] - s.box[1]:.1f}",
        ])  # fmt: skip
    verb = "grind" if spots[0].stands >= 0 else "fill"
    heads = [
        "spot",
        f"x|{unit}",
        f"y|{unit}",
        "stands|mm",
        f"{verb}|mm",
        "to|mm",
        "area|m2",
        "amount|litres",
        "size|m",
    ]
    paper.table(heads, WIDTHS, rows)


def _left(spot: Spot) -> float:
    """What stays over the floor's own level, mm: what stands there less what goes, as both are printed."""
    goes = round(spot.deepest * 1000, 1)
    return round(spot.stands * 1000, 1) - (goes if spot.stands >= 0 else -goes)


def _place(report: FloorReport, u: float, v: float) -> tuple[float, float]:
    """A place of the raster in the scan's own coordinates: the one system of places on all pages of a
    floor."""
    x, y = report.judged.surface.height.frame.to_site((u, v))
    return report.plan_point((float(x), float(y)))


def _jig_pages(report: FloorReport, one: SpotJig) -> list[Figure]:
    """Board and blocks of one spot."""
    jig, unit_name = one.jig, report.scan.frame.unit
    if jig is None:
        return []

    def draw(paper: Paper) -> None:
        lifts = lifts_of(one.spot, jig)
        x, y = report.plan_point(one.spot.xy)
        paper.text(
            f"{one.spot.name} at x {x:.2f}, y {y:.2f}: {both(one.spot.deepest)} at its highest,"
            f" {lifts} lift{'s' if lifts > 1 else ''}.",
            bold=True,
        )
        spots = [(s.name, *_place(report, s.station, s.offset)) for s in jig.spots]
        tall = 3.0 * paper.tight
        _draw_spot(report, paper, one, spots, (SIDE + 0.45, paper.at, paper.room - 0.45, tall))
        paper.at += tall + 0.6
        floor_jig(paper, jig, lambda u, v: _place(report, u, v), unit_name)

    return filled(report.work.sheet, "Jig for a floor: blocks on datum spots", draw)


def _dot_pages(report: FloorReport) -> list[Figure]:
    """The high spots that go by dots: where each dot is and how deep, drawn and listed; empty where there is
    none."""
    ones = [one for one in report.work.spots if one.dots]
    if not ones:
        return []
    return filled(report.work.sheet, "High spots, to their dots", lambda paper: _by_dots(report, paper, ones))


def _by_dots(report: FloorReport, paper: Paper, ones: list[SpotJig]) -> None:
    metric, m = paper.sheet.metric, report.scan.frame.unit
    paper.text(
        f"{str(paper.sheet.method or 'by dots').capitalize()}. x and y are the scan's own, {m}, as on the"
        " plan. Chalk the"
        " outlines from the plan, find each dot by its tapes, drill it with a depth stop, paint its bottom."
        " Grind from"
        " the middle outwards in crossing passes until the dots are just gone, straightedge after every"
        " pass; out to"
        " nothing at the outline."
    )
    wide = (paper.room - 0.35) / 2
    for first in range(0, len(ones), 2):
        tall = wide * paper.tight
        paper.need(tall + 1.0)
        paper.at += 0.15
        for k, one in enumerate(ones[first : first + 2]):
            left = SIDE + k * (wide + 0.35)
            words = f"{one.spot.name}: {both(one.spot.deepest)} at its highest, {area_words(one.spot.area)}"
            paper.put(left, paper.at, words, fontsize=10.5, fontweight="bold")
            box = left + 0.45, paper.at + 0.12, wide - 0.45, tall - 0.45
            dots = [
                (f"{d.name}  {deep(d.depth, metric)}", *_place(report, d.station, d.offset)) for d in one.dots
            ]
            _draw_spot(report, paper, one, dots, box)
        paper.at += tall + 0.25
        if paper.sheet.method == Method.BOARD:
            for one in ones[first : first + 2]:
                paper.text(f"{one.spot.name}, why no board: {one.why}.", size=9.0)
    rows = []
    for one in ones:
        for d in one.dots:
            x, y = _place(report, d.station, d.offset)
            ties = tie_cells(d.ties, metric=metric)
            rows.append([d.name, one.spot.name, f"{x:.2f}", f"{y:.2f}", deep(d.depth, metric), *ties])
    shallow = [one.spot.name for one in report.work.spots if not one.dots and one.jig is None]
    if shallow:
        paper.text(f"{', '.join(shallow)}: too shallow for a dot, by straightedge alone.", size=9.0)
    heads = ["dot|", "of|", f"x|{m}", f"y|{m}", f"DRILL|{unit(metric, True)}", *tie_heads(metric)]
    paper.table(heads, [6, 5, 9, 9, 9, *tie_widths(metric)], rows)


def _draw_spot(
    report: FloorReport, paper: Paper, one: SpotJig, places: list[tuple[str, float, float]],
    box: tuple[float, float, float, float],
) -> None:  # fmt: skip
    """One high spot from above in the scan's own coordinates: depths in greys with lines every millimetre,
    what is set out, the low spots' outlines.
    """
    levelling = report.judged.levelling
    depth, frame = np.nan_to_num(levelling.depth.values), levelling.depth.frame
    xy = np.array([[x, y] for _, x, y in places])
    u0, v0, u1, v1 = one.spot.box
    corners = np.array([_place(report, u, v) for u in (u0, u1) for v in (v0, v1)])
    both_ends = np.vstack([xy, corners])
    pad = 0.15 / METRES_PER[report.scan.frame.unit]
    low, high = both_ends.min(axis=0) - pad, both_ends.max(axis=0) + pad
    left, top, wide, tall = box
    axes = ink.axes_at(paper.figure, left, paper.tall - top - tall, wide, tall)
    true_to_scale(axes, low, high)
    reach = 1.2  # m beyond the spot: more than the paper shows of it
    rows, columns = (
        slice(max(int((a - reach) / frame.cell), 0), int((b + reach) / frame.cell) + 2)
        for a, b in ((v0, v1), (u0, u1))
    )
    part = depth[rows, columns]
    site = frame.node_xy()[rows, columns]
    x, y = np.moveaxis(report.scan.frame.site_to_plan(site.reshape(-1, 2)).reshape(site.shape), -1, 0)
    every = 0.001
    levels = np.arange(every, max(float(part.max()), 1.5 * every), every)
    greys = [f"{v:.3f}" for v in np.linspace(0.95, 0.68, len(levels) + 1)]
    axes.contourf(x, y, part, levels=[2e-5, *levels, 1.0], colors=greys)
    axes.contour(x, y, part, levels=[2e-5], colors=[ink.INK], linewidths=1.6)
    axes.contour(x, y, part, levels=levels, colors=[ink.INK], linewidths=0.5)
    axes.plot(
        xy[:, 0],
        xy[:, 1],
        "o" if one.dots else "s",
        ms=4.2,
        mfc="white",
        mec=ink.INK,
        mew=1.1,
        ls="",
        zorder=6,
    )
    for words, at_x, at_y in places:
        over, _, under = words.partition("  ")
        for said, up in ((over, 4), (under, -4)):
            axes.annotate(
                said, (at_x, at_y), xytext=(0, up), textcoords="offset points", ha="center",
                va="bottom" if up > 0 else "top", fontsize=8, path_effects=ink.halo(2.2), zorder=7,
            )  # fmt: skip
    axes.set_xlabel(f"x, {report.scan.frame.unit}; lines every 1 mm of depth", fontsize=8)
    axes.set_ylabel(f"y, {report.scan.frame.unit}", fontsize=8)
    axes.tick_params(labelsize=8)


def _record(report: FloorReport) -> list[Figure]:
    """Afterwards, and the page that stays with the house papers."""
    paper = Paper(report.work.sheet, "Afterwards, and the record to keep")
    for line in report.work.sheet.afterwards:
        paper.text(line, "box")
    paper.heading("Record: fill in, sign, keep with the house papers")
    spots = worth(report.judged.levelling.high) + worth(report.judged.levelling.low)
    lines = [
        ("Work done on", "by"),
        ("Tools, wheels", "hours, people"),
        ("Steel, pipes, voids found", "depth, place"),
    ]
    lines += [(f"{s.name}: largest gap afterwards, mm", "straightedge, direction") for s in spots[:12]]
    lines += [("Joints re-sawn to, mm", "sealer, date"), ("Photographs", "kept where")]
    write_in(paper, lines)
    return paper.figures
