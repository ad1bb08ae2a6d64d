"""Set-out on paper: the maps with dots and stop lines, dots by tape, contours, and the acceptance string."""

from __future__ import annotations

from typing import TYPE_CHECKING

from crestcut.base.units import both_at_least, inches, inches_at_least, inches_at_most, millimetres
from crestcut.report.sheets.map import draw_maps
from crestcut.report.sheets.paper import ROW, Paper
from crestcut.report.sheets.ties import tie_cells
from crestcut.work import SetOut, Site, StringRow, Worksheet

if TYPE_CHECKING:
    from matplotlib.figure import Figure

MM = 1000.0
READINGS = 9  # of a string on one line
DRILL_INCHES = 64  # parts of an inch: a dot is ground to, so a coarser stop would leave or take too much


def set_out_pages(sheet: Worksheet, out: SetOut, site: Site) -> list[Figure]:
    """Map with dots and stop lines, then the dots with their tapes."""
    paper = Paper(sheet, "Set-out: dots and stop lines")
    draw_maps(paper, out, site)
    for line in (*out.notes, _tyres(out, sheet.words.station)):
        paper.text(line, "\u2022", size=9.0)
    corners = [
        [f"cut {name}", f"{station:.2f}", f"{offset:+.2f}", "", "", *tie_cells(ties)]
        for name, station, offset, ties in out.corners
    ]
    dots = [
        [
            d.name,
            f"{d.station:.2f}",
            f"{d.offset:+.2f}",
            f"{d.depth * MM:.1f}",
            inches(d.depth, DRILL_INCHES).removesuffix(" in"),
            *tie_cells(d.ties),
        ]
        for d in out.dots
    ]
    heads = [
        "dot|",
        f"{sheet.words.station}|m",
        "offset|m",
        "drill|mm",
        "deep|in",
        "from|",
        "tape|m",
        "and from|",
        "tape|m",
        "side of|the two",
    ]
    paper.table(heads, [10, 11, 9, 9, 9, 7, 9, 10, 9, 10], corners + dots)
    return paper.figures


def _tyres(out: SetOut, station: str) -> str:
    lines = ", ".join(f"{name} {offset * MM:.0f} mm" for name, offset in out.tyres)
    return (
        f"Chalk where the tyres run, each side of the line of travel: {lines}. {station.capitalize()}s count"
        " from the line's start."
    )


def contour_pages(sheet: Worksheet, out: SetOut) -> list[Figure]:
    """Between which stations the cut is how deep, on lines across it; empty where the board does all."""
    if not out.contours:
        return []
    paper = Paper(sheet, "Contours: chalk a line through every place of one depth")
    station = sheet.words.station
    paper.text(
        f"On each line across the cut mark the {station}s, m, between which it is so deep or deeper, and"
        f" join the marks"
        " of one depth by a chalk line. Two or more runs of one depth stand under each other. Between"
        " two lines the"
        " depth changes evenly; where it is deepest the dots say how deep."
    )
    levels = sorted({c.level for c in out.contours})
    heads = [
        "offset|m",
        "the cut|from - to",
        *(f"{lv * MM:.0f} mm or more|from - to" for lv in levels if lv > 0),
    ]
    rows = []
    for offset in sorted({c.offset for c in out.contours}):
        runs = {lv: [c for c in out.contours if (c.offset, c.level) == (offset, lv)] for lv in levels}
        for k in range(max(map(len, runs.values()))):
            cells = [f"{r[k].first:.2f} - {r[k].last:.2f}" if k < len(r) else "" for r in runs.values()]
            rows.append([f"{offset:+.2f}" if k == 0 else "", *cells])
    paper.table(heads, [9, *[17] * len(levels)], rows)
    return paper.figures


def string_pages(sheet: Worksheet, out: SetOut) -> list[Figure]:
    """The acceptance table: three lines a string, the figure, the same in inches, and room to write what was
    read.
    """
    if not out.strings:
        return []
    paper = Paper(sheet, "Acceptance: what the string must read")
    paper.text(
        "Two equal blocks on untouched concrete at the stations given, the string over them along the line of"
        f" travel, pulled with {out.pull:.0f} N (3 kg, 7 lb hung over its end; it then hangs through"
        f" {millimetres(out.sag, 2)} at its middle). At each distance from the rear block measure from the"
        " string to the highest concrete under it."
    )
    paper.text(
        f"The reading must be the figure OR MORE. {_example(out.strings)} A go/no-go stick cut to the"
        f" figure must slip in upright;"
        " one 3 mm longer should not. Write what was read on the dotted line.",
        bold=True,
    )
    by_line: dict[int, list[StringRow]] = {}
    for row in out.strings:
        by_line.setdefault(row.lane, []).append(row)
    for number, rows in by_line.items():
        for at in range(0, len(rows), READINGS):
            _string(paper, number, rows[at : at + READINGS], at == 0)
    return paper.figures


def _example(strings: tuple[StringRow, ...]) -> str:
    row = max(strings, key=lambda s: s.least)
    return (
        f"So: on {row.blocks * MM:.0f} mm blocks at {row.rear_at:.2f} and {row.front_at:.2f}, offset"
        f" {row.offset:+.2f} m, at {row.at:.2f} m the string must read {both_at_least(row.least)}"
        " or more."
    )


def _string(paper: Paper, number: int, rows: list[StringRow], head: bool) -> None:
    """Distances from the rear block, figures, inches, and dots to write on."""
    paper.need(ROW * 5.2)
    first = rows[0]
    said = (
        f"String {number}  offset {first.offset:+.2f} m  both blocks {first.blocks * MM:.0f} mm"
        f" ({inches_at_most(first.blocks)})  at {first.rear_at:.2f} and {first.front_at:.2f}"
    )
    if head:
        paper.mono(said, bold=True)
    columns = [
        ("from rear block, m", [f"{r.at:.2f}" for r in rows]),
        ("AT LEAST, mm", [f"{r.least * MM:.1f}" for r in rows]),
        ("in", [inches_at_least(r.least).removesuffix(" in") for r in rows]),
        ("read", ["....."] * len(rows)),
    ]
    for name, cells in columns:
        paper.mono(name.rjust(18) + "".join(cell.rjust(9) for cell in cells), bold=name.startswith("AT"))
    paper.rule(paper.at - ROW * 0.45, 0.25)
    paper.at += 0.04
