"""``floor_sheets.pdf``: what was found, and, when released, board and blocks for every high spot."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from crestcut.base.units import both, litres, millimetres, number
from crestcut.floor import Spot, SpotJig, lifts_of, worth
from crestcut.report.pictures import ink
from crestcut.report.pictures.floor_plan import floor_figure
from crestcut.report.sheets import pages as sheet_pages
from crestcut.report.sheets.pages import write_in
from crestcut.report.sheets.paper import SIDE, Paper, put
from crestcut.report.sheets.rails import floor_pages
from crestcut.report.view.floor_report import FloorReport
from crestcut.report.words.floor import (
    OPEN,
    advice_lines,
    after_lines,
    area_words,
    claim_words,
    class_lines,
    figure_words,
    verdict_line,
)

if TYPE_CHECKING:
    from matplotlib.figure import Figure

PDF_NAME = "floor_sheets.pdf"
WIDTHS = [6, 10, 10, 11, 10, 10, 9, 9, 12]
MOST_ROWS = 40


def write_floor_sheets(report: FloorReport, folder: Path, pictures: bool = False) -> tuple[Path, ...]:
    """Write the PDF; pictures : also one PNG a page. Same input, same bytes."""
    import matplotlib
    from matplotlib.backends.backend_pdf import PdfPages

    paths = [folder / PDF_NAME]
    about = report.identity
    with matplotlib.rc_context(ink.STYLE), PdfPages(paths[0], metadata=about.pdf()) as pdf:
        for number, (name, figure) in enumerate(pages(report), start=1):
            pdf.savefig(figure)
            if pictures:
                paths.append(folder / f"floor_{number:02d}_{name}.png")
                figure.savefig(paths[-1], dpi=110, metadata=about.png())
    return tuple(paths)


def pages(report: FloorReport) -> Iterator[tuple[str, Figure]]:
    """Every page with its short name. A stamped floor has no page to grind from."""
    sheet = report.work.sheet
    made: list[tuple[str, list[Figure]]] = [("found", _found(report)), ("plan", [floor_figure(report)])]
    if worth(report.judged.levelling.high):
        made.append(("release", sheet_pages.first_page(sheet)))
        if not sheet.stamp:
            made.append(("order", sheet_pages.order_page(sheet)))
            for one in report.work.spots:
                made.append((one.spot.name.lower(), _spot_pages(report, one)))
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
            "'Stands' and 'to' are over the floor's own level round the spot; x, y is its highest place,"
            " where the"
            " drill dot goes.",
            size=8.4,
        )
    if low:
        paper.heading("Low spots: to fill, not to grind")
        _table(paper, report, low)
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


def _spot_pages(report: FloorReport, one: SpotJig) -> list[Figure]:
    """Board and blocks of one spot, or why there are none."""
    sheet = report.work.sheet
    x, y = report.plan_point(one.spot.xy)
    where = f"{one.spot.name} at x {x:.2f}, y {y:.2f}: {both(one.spot.deepest)} at its highest"
    if one.jig is None:
        paper = Paper(sheet, f"High spot {where}")
        paper.text(f"No board here: {one.why}.", bold=True)
        paper.text(
            "Chalk its outline from the plan, drill the dot, grind from the middle outwards in crossing"
            " passes,"
            " straightedge after every pass."
        )
        return paper.figures
    figures = floor_pages(sheet, one.jig)
    lifts = lifts_of(one.spot, one.jig)
    corner = report.plan_point(report.judged.surface.height.frame.origin)
    put(figures[0], SIDE, 0.96, f"High spot {where}; {lifts} lift{'s' if lifts > 1 else ''}.", fontsize=8.4)
    put(
        figures[0], SIDE, 1.09,
        f"{sheet.words.station.capitalize()} and offset here are metres along and across the floor's raster,"
        f" from its corner at x {corner[0]:.2f}, y {corner[1]:.2f}.",
        fontsize=8.4,
    )  # fmt: skip
    return figures


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
