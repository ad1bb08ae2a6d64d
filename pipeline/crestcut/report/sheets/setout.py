"""Set-out on paper: the map, dots by tape, contours, and the acceptance string."""

from __future__ import annotations

from typing import TYPE_CHECKING

from crestcut.base.language import say
from crestcut.base.units import INCH, inches, inches_at_least, inches_at_most, millimetres
from crestcut.report.sheets.map import draw_map
from crestcut.report.sheets.paper import Paper, filled
from crestcut.report.sheets.ties import deep, far, side, tie_cells, tie_heads, tie_widths, unit
from crestcut.work import SetOut, Site, StringRow, Worksheet

if TYPE_CHECKING:
    from matplotlib.figure import Figure

MM = 1000.0
READINGS = 5  # of a string on one line, each with room to write what was read


def set_out_pages(sheet: Worksheet, out: SetOut, site: Site) -> list[Figure]:
    """The map; then the dots with their tapes."""
    return [
        *filled(sheet, "Map: where everything goes", lambda paper: draw_map(paper, out, site)),
        *filled(sheet, "Set-out: dots and stop lines", lambda paper: _dots(paper, sheet, out)),
    ]


def _dots(paper: Paper, sheet: Worksheet, out: SetOut) -> None:
    for line in (*out.notes, _tyres(out, sheet.words.station, sheet.metric)):
        paper.text(line, "\u2022", size=9.0)
    metric = sheet.metric
    corners = [
        [name, far(station, metric), side(offset, metric), "", *tie_cells(ties, metric=metric)]
        for name, station, offset, ties in out.corners
    ]
    dots = [
        [
            d.name, far(d.station, metric), side(d.offset, metric), deep(d.depth, metric),
            *tie_cells(d.ties, metric=metric),
        ]
        for d in out.dots
    ]  # fmt: skip
    m = unit(metric)
    heads = ["place|", f"{sheet.words.station}|{m}", f"offset|{m}", f"DRILL|{unit(metric, True)}"]
    widths = [10, 11, 10, 9] if metric else [10, 12, 12, 9]
    paper.table([*heads, *tie_heads(metric)], [*widths, *tie_widths(metric)], corners + dots)


def _tyres(out: SetOut, station: str, metric: bool) -> str:
    lines = ", ".join(f"{name} {far(offset, metric)} {unit(metric)}" for name, offset in out.tyres)
    return (
        f"Chalk where the tyres run, each side of the line of travel: {lines}. {station.capitalize()}s count"
        " from the line's start."
    )


def contour_pages(sheet: Worksheet, out: SetOut) -> list[Figure]:
    """Between which stations the cut is how deep, on lines across it; empty where the board does all."""
    if not out.contours:
        return []
    name = "Contours: chalk a line through every place of one depth"
    return filled(sheet, name, lambda paper: _contours(paper, sheet, out))


def _contours(paper: Paper, sheet: Worksheet, out: SetOut) -> None:
    station, metric = sheet.words.station, sheet.metric
    m = unit(metric)
    paper.text(
        f"On each line across the cut mark the {station}s, {m}, between which it is so deep or deeper, and"
        " join the"
        " marks of one depth by a chalk line. Two or more runs of one depth stand under each other. Between"
        " two"
        " lines the depth changes evenly; where it is deepest the dots say how deep."
    )
    levels = sorted({c.level for c in out.contours})
    heads = [
        f"offset|{m}", "the cut|from - to",
        *(f"{_level(lv, metric)} or more|from - to" for lv in levels if lv > 0),
    ]  # fmt: skip
    rows = []
    for offset in sorted({c.offset for c in out.contours}):
        runs = {lv: [c for c in out.contours if (c.offset, c.level) == (offset, lv)] for lv in levels}
        for k in range(max(map(len, runs.values()))):
            cells = [
                f"{far(r[k].first, metric, 2)} - {far(r[k].last, metric, 2)}" if k < len(r) else ""
                for r in runs.values()
            ]
            rows.append([side(offset, metric, 2) if k == 0 else "", *cells])
    paper.table(heads, [9, *[17 if metric else 19] * len(levels)], rows)


def _level(depth: float, metric: bool) -> str:
    return f"{depth * MM:.0f} mm" if metric else inches(depth, 16)


def strings(paper: Paper, out: SetOut) -> None:
    """The acceptance table: a few lines a string, and room to write what was read."""
    by_line: dict[int, list[StringRow]] = {}
    for row in out.strings:
        by_line.setdefault(row.lane, []).append(row)
    metric = paper.sheet.metric
    paper.need(2.4)
    paper.heading("The string: what it must read when it is done")
    sag = (
        millimetres(out.sag, 2)
        if metric
        else "less than 1/64 in"
        if out.sag < INCH / 64
        else inches(out.sag, 64)
    )
    paper.text(
        "Two equal blocks on untouched concrete at the places given, the string over them along the line of"
        " travel,"
        f" pulled with {f'{out.pull:.0f} N (3 kg' if metric else '7 lb'} hung over its"
        f" end{')' if metric else ''}; it then"
        f" hangs through {sag} at its middle. At each distance from the rear block measure from the string"
        " to the highest"
        " concrete under it. Between readings, and from string to string, lay the straightedge: it shows"
        " what stands"
        " proud.",
        size=9.0,
    )
    paper.text(
        f"The reading must be the figure OR MORE. {_example(out.strings, metric)} A go/no-go stick cut to the"
        f" figure must slip in upright; one {'3 mm' if metric else '1/8 in'} longer should not.",
        bold=True, size=9.0,
    )  # fmt: skip
    for rows in by_line.values():
        for at in range(0, len(rows), READINGS):
            _string(paper, rows[at : at + READINGS], at == 0)


def _least(row: StringRow, metric: bool) -> str:
    return f"{row.least * MM:.1f}" if metric else inches_at_least(row.least).removesuffix(" in")


def _blocks(row: StringRow, metric: bool) -> str:
    return millimetres(row.blocks, 0) if metric else inches_at_most(row.blocks, 64)


def _example(strings: tuple[StringRow, ...], metric: bool) -> str:
    row, m = max(strings, key=lambda s: s.least), unit(metric)
    return (
        f"So: {row.name}, on {_blocks(row, metric)} blocks, {far(row.at, metric, 2)} {m} from the rear one:"
        f" {_least(row, metric)} {unit(metric, True)} or more."
    )


def _string(paper: Paper, rows: list[StringRow], head: bool) -> None:
    """Distances from the rear block, figures, and dots to write on."""
    paper.need(paper.row * 3.6)
    first, metric = rows[0], paper.sheet.metric
    m = unit(metric)
    if head:
        paper.mono(
            say(
                f"{first.name}   offset {side(first.offset, metric, 2)} {m}   both blocks"
                f" {_blocks(first, metric)}"
                f"   at {paper.sheet.words.station}s {far(first.rear_at, metric, 2)} and"
                f" {far(first.front_at, metric, 2)} {m}"
            ),
            bold=True,
        )
    columns = [
        (f"from rear block, {m}", [far(r.at, metric, 2) for r in rows], ""),
        (f"AT LEAST, {unit(metric, True)}", [_least(r, metric) for r in rows], " ....."),
    ]
    for name, cells, read in columns:
        line = say(name).rjust(20) + "".join(f"{say(cell).rjust(8)}{read:6}" for cell in cells)
        paper.mono(line, bold=name.startswith("AT"))
        paper.at += 0.02
    paper.rule(paper.at - paper.row * 0.45, 0.25)
    paper.at += 0.04
