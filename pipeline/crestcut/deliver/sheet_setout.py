"""Set-out on paper: the map with dots, strips and stop lines, dots by tape, depths strip by strip, and the
acceptance string.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from crestcut.deliver import ink
from crestcut.deliver.colours import depth_colours
from crestcut.deliver.sheet_paper import ROW, SIDE, Paper
from crestcut.deliver.sheet_ties import tie_cells
from crestcut.units import inches, millimetres
from crestcut.work.records import KerfDepth, SetOut, StringRow, Worksheet
from crestcut.work.site import Site

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

MM = 1000.0
WIDE = 102  # characters of a table on one line
PAIRS = 8  # of station and depth on one line
READINGS = 9  # of a string on one line


def set_out_pages(sheet: Worksheet, out: SetOut, site: Site) -> list[Figure]:
    """Map with dots, strips and stop lines, then the dots with their tapes."""
    paper = Paper(sheet, "Set-out: dots, strips, stop lines")
    _map(paper, out, site)
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
            inches(d.depth).removesuffix(" in"),
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


def _map(paper: Paper, out: SetOut, site: Site) -> None:
    """Two maps true to scale: on the left the cut among its marks, on the right the cut alone with names and
    depths.
    """
    depth = np.nan_to_num(site.ground - site.finished)
    rows, columns = np.nonzero(depth > 0)
    cut = np.array(
        [
            [site.station[columns.min()], site.offset[rows.min()]],
            [site.station[columns.max()], site.offset[rows.max()]],
        ]
    )
    marks = np.array([[station, offset] for _, station, offset in out.marks]).reshape(-1, 2)
    whole = np.vstack([cut, marks])
    at, tall = paper.at + 0.1, 4.6
    sizes = _widths(np.ptp(whole, axis=0) + 0.5, np.ptp(cut, axis=0) + 0.2, paper.room - 0.9, tall)
    left = SIDE + 0.35
    for k, (wide, high, box, pad) in enumerate(((*sizes[0], whole, 0.25), (*sizes[1], cut, 0.1))):
        axes = ink.axes_at(paper.figure, left, paper.tall - at - high, wide, high)
        low, high = box.min(axis=0) - pad, box.max(axis=0) + pad
        _ground(axes, site, depth, low, high, named=k == 1)
        _lines(axes, out)
        _dots(axes, out, named=k == 1)
        if k == 0:
            _marks(axes, out)
        axes.set_xlim(low[0], high[0])
        axes.set_ylim(low[1], high[1])
        axes.set_xlabel(f"{paper.sheet.words.station} along the line, m", fontsize=7.5)
        if k == 0:
            axes.set_ylabel("offset, left +, m", fontsize=7.5)
        axes.tick_params(labelsize=7)
        axes.grid(color=ink.FAINT, lw=0.3)
        left += wide + 0.55
    paper.at = at + max(sizes[0][1], sizes[1][1]) + 0.52
    paper.text(
        "Circles: drill dots, D1 the deepest. Thick line: stop line. Dashed line inside it: where board"
        " or hand end and the feather"
        " begins. Contours: depth, mm. Dash-dotted: line of travel; dotted: tyres. Crosses: marks.",
        size=8.4,
    )


def _widths(
    whole: np.ndarray, cut: np.ndarray, room: float, tall: float
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Width and height in inches of the two maps, as large as both can be."""
    aspects = whole[0] / whole[1], cut[0] / cut[1]
    share = min(max(aspects[0] / (aspects[0] + aspects[1]), 0.35), 0.6)
    out = []
    for aspect, room_here in zip(aspects, (room * share, room * (1 - share)), strict=True):
        wide = min(room_here, tall * aspect)
        out.append((float(wide), float(wide / aspect)))
    return out[0], out[1]


def _ground(
    axes: Axes, site: Site, depth: np.ndarray, low: np.ndarray, high: np.ndarray, named: bool
) -> None:
    """Depths in colour between two places (station, offset), with numbered contours if ``named``."""
    rows, columns = (
        slice(max(int(np.searchsorted(at, low[k])) - 1, 0), int(np.searchsorted(at, high[k])) + 1)
        for k, at in ((1, site.offset), (0, site.station))
    )
    station, offset, part = site.station[columns], site.offset[rows], depth[rows, columns]
    if part.size == 0:
        return
    half = site.cell / 2
    extent = (station[0] - half, station[-1] + half, offset[0] - half, offset[-1] + half)
    unknown = np.isnan(site.ground[rows, columns])
    image = depth_colours(np.where(unknown, np.nan, part), float(depth.max()))
    axes.imshow(image, extent=extent, origin="lower", interpolation="nearest", rasterized=True, aspect="auto")
    levels = np.arange(0.005, float(depth.max()), 0.005)
    if named and len(levels):
        drawn = axes.contour(station, offset, part, levels=levels, colors="white", linewidths=0.7)
        labels = axes.clabel(
            drawn, fmt=lambda v: f"{v * MM:.0f}", fontsize=7, inline_spacing=1, colors="black"
        )
        for label in labels:
            label.set_path_effects(ink.halo(2.0))


def _dots(axes: Axes, out: SetOut, named: bool) -> None:
    if not out.dots:
        return
    places = np.array([[d.station, d.offset] for d in out.dots])
    axes.plot(
        places[:, 0],
        places[:, 1],
        "o",
        ms=3.4 if named else 1.6,
        mfc="white",
        mec=ink.INK,
        mew=0.8,
        ls="",
        zorder=6,
    )
    if named:
        for dot in out.dots:
            axes.annotate(
                dot.name,
                (dot.station, dot.offset),
                xytext=(3, 2),
                textcoords="offset points",
                fontsize=6.4,
                path_effects=ink.halo(1.8),
                zorder=7,
            )


def _marks(axes: Axes, out: SetOut) -> None:
    for name, station, offset in out.marks:
        axes.plot(station, offset, "+", ms=11, mew=1.6, color=ink.INK)
        axes.annotate(
            name,
            (station, offset),
            xytext=(5, 4),
            textcoords="offset points",
            fontsize=10,
            fontweight="bold",
            path_effects=ink.halo(2.4),
        )


def _lines(axes: Axes, out: SetOut) -> None:
    """Line of travel, tyre lines, stop lines and the core's ends."""
    axes.axhline(0, color=ink.INK, lw=1.0, ls=(0, (9, 2, 1.5, 2)))
    for _, offset in out.tyres[:1]:
        for side in (offset, -offset):
            axes.axhline(side, color=ink.INK, lw=0.7, ls=(0, (1, 2)))
    for rows, style in ((out.outline, {"lw": 1.6}), (out.core, {"lw": 0.8, "ls": (0, (4, 2))})):
        line = _ring(rows)
        if len(line):
            axes.plot(line[:, 0], line[:, 1], color=ink.INK, **style)


def _ring(rows: tuple[tuple[float, float, float], ...]) -> np.ndarray:
    """Stations and offsets round the outside, from the first and last station of every offset."""
    ends: dict[float, tuple[float, float]] = {}
    for offset, first, last in rows:
        old = ends.get(offset, (first, last))
        ends[offset] = min(old[0], first), max(old[1], last)
    if not ends:
        return np.zeros((0, 2))
    offsets = sorted(ends)
    there = [(ends[v][0], v) for v in offsets]
    back = [(ends[v][1], v) for v in reversed(offsets)]
    return np.asarray([*there, *back, there[0]])


def chart_pages(sheet: Worksheet, out: SetOut) -> list[Figure]:
    """Depths strip by strip, in columns of one station each."""
    paper = Paper(sheet, "Depth chart: finished depth below the untouched concrete, mm")
    paper.text(
        f"Across: {sheet.words.station}, m along the line; down: the middle of each strip. Between two"
        f" figures the depth changes"
        " evenly. Slots from the board stop the cup's 1/16 in (1.6 mm) short of it. 'Stop' is where the"
        " depth has come down to"
        " nothing; what has no figures between the board's end and it is tapered evenly. When all is done"
        " a depth gauge must read the figure or more."
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
        "Two equal blocks on untouched concrete at the stations given, the string over them along the"
        " line of travel, pulled with"
        f" {out.pull:.0f} N (3 kg, 7 lb hung over its end; it then hangs through"
        f" {millimetres(out.sag, 2)} at its middle). At each distance from"
        " the rear block measure from the string to the highest concrete under it."
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
        f" {row.offset:+.2f} m, at {row.at:.2f} m the"
        f" string must read {row.least * MM:.1f} mm ({inches(row.least)}) or more."
    )


def _string(paper: Paper, number: int, rows: list[StringRow], head: bool) -> None:
    """Distances from the rear block, figures, inches, and dots to write on."""
    paper.need(ROW * 5.2)
    first = rows[0]
    said = (
        f"String {number}  offset {first.offset:+.2f} m  both blocks {first.blocks * MM:.0f} mm"
        f" ({inches(first.blocks)})"
        f"  at {first.rear_at:.2f} and {first.front_at:.2f}"
    )
    if head:
        paper.mono(said, bold=True)
    columns = [
        ("from rear block, m", [f"{r.at:.2f}" for r in rows]),
        ("AT LEAST, mm", [f"{r.least * MM:.1f}" for r in rows]),
        ("in", [inches(r.least, 16).removesuffix(" in") for r in rows]),
        ("read", ["....."] * len(rows)),
    ]
    for name, cells in columns:
        paper.mono(name.rjust(18) + "".join(cell.rjust(9) for cell in cells), bold=name.startswith("AT"))
    paper.rule(paper.at - ROW * 0.45, 0.25)
    paper.at += 0.04
