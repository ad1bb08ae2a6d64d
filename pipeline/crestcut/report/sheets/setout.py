"""Set-out on paper: the maps with dots, strips and stop lines, dots by tape, depths strip by strip, and the
acceptance string.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.units import both_at_least, inches, inches_at_least, inches_at_most, millimetres
from crestcut.report.sheets.map import draw_maps
from crestcut.report.sheets.paper import ROW, Paper
from crestcut.report.sheets.ties import tie_cells
from crestcut.work import KerfDepth, SetOut, Site, StringRow, Worksheet

if TYPE_CHECKING:
    from matplotlib.figure import Figure

MM = 1000.0
WIDE = 102  # characters of a table on one line
PAIRS = 8  # of station and depth on one line
READINGS = 9  # of a string on one line
DRILL_INCHES = 64  # parts of an inch: a dot is ground to, so a coarser stop would leave or take too much


def set_out_pages(sheet: Worksheet, out: SetOut, site: Site) -> list[Figure]:
    """Map with dots, strips and stop lines, then the dots with their tapes."""
    paper = Paper(sheet, "Set-out: dots, strips, stop lines")
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


def chart_pages(sheet: Worksheet, out: SetOut) -> list[Figure]:
    """Depths strip by strip, in columns of one station each."""
    paper = Paper(sheet, "Depth chart: finished depth below the untouched concrete, mm")
    paper.text(
        f"Across: {sheet.words.station}, m along the line; down: the middle of each strip. Between two"
        " figures the depth changes evenly. Slots from the board stop the cup's 1/16 in (1.6 mm) short of it."
        " 'Stop' is where the depth has come down to nothing; what has no figures between the board's end and"
        " it is tapered evenly. When all is done a depth gauge must read the figure, which is rounded up, or"
        " more."
    )
    by_board = [k for k in out.kerfs if not k.by_hand]
    _matrix(paper, out, by_board)
    by_hand = [k for k in out.kerfs if k.by_hand]
    if by_hand:
        paper.heading("Pieces to do by hand, along edges and middle of the strip: station m : depth mm")
        lines: dict[tuple[int, float], list[str]] = {}
        for k in by_hand:
            lines.setdefault((k.lane, k.offset), []).append(f"{k.station:.2f}:{k.depth * MM:4.1f}")
        for (lane, offset), pairs in lines.items():
            for at in range(0, len(pairs), PAIRS):
                head = f"{lane:4d} ({offset:+.2f})" if at == 0 else " " * 12
                paper.mono(f"{head}  " + "  ".join(pairs[at : at + PAIRS]))
    return paper.figures


def _matrix(paper: Paper, out: SetOut, kerfs: list[KerfDepth]) -> None:
    """Strips down, stations across, their stop lines and deepest place before them."""
    if not kerfs:
        return
    strips: dict[int, list[KerfDepth]] = {}
    for slot in kerfs:
        strips.setdefault(slot.lane, []).append(slot)
    stations = sorted({round(k.station, 3) for k in kerfs if _whole(k.station)})
    least = 7 if min((k.station for k in kerfs), default=0.0) < 0 else 6  # a minus wants a place of its own
    lines = max(math.ceil(len(stations) / ((WIDE - 21) // least - 3)), 1)
    room = min(max((WIDE - 21) // (math.ceil(len(stations) / lines) + 3), least), least + 1)
    for part in (p.tolist() for p in np.array_split(np.asarray(stations), lines)):
        rows = []
        for lane, slots in strips.items():
            depth = {round(k.station, 3): k.depth for k in slots}
            deepest = max(slots, key=lambda k: k.depth)
            offset = slots[0].offset
            edge = min(out.outline, key=lambda row: abs(row[0] - offset))
            rows.append(
                [
                    f"{lane}",
                    f"{offset:+.2f}",
                    f"{edge[1]:.2f}",
                    f"{edge[2]:.2f}",
                    f"{deepest.depth * MM:.1f}",
                    f"{deepest.station:.2f}",
                ]
                + [f"{depth[s] * MM:.1f}" if s in depth else "." for s in part]
            )
        heads = ["|", "|", "stop|from", "stop|to", "most|mm", "|at", *(f"|{s:.2f}" for s in part)]
        heads[0], heads[1] = "|strip", "|offset"
        paper.table(heads, [6, 8, room + 1, room, 6, room, *[room] * len(part)], rows)


def _whole(station: float) -> bool:
    return abs(station * 20 - round(station * 20)) < 1e-6


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
