"""Pages to cut from, printed only when released: the jig, the set-out, the acceptance string, the full-size
strip.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.deliver import ink
from crestcut.deliver.colours import depth_colours
from crestcut.deliver.sheet_paper import SIDE, TALL, WIDE, Paper
from crestcut.units import INCH, both, inches, millimetres
from crestcut.work.jig import Site
from crestcut.work.records import Jig, JigRow, SetOut, Ties, Worksheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SAME = 0.0001  # m: lanes whose blocks differ by less share a row
STRIP = 0.24  # m of the strip on one page
MOST_STRIPS = 8
SLOTS = 8  # pairs of station and depth on a line
ARROW: dict[str, Any] = {"arrowstyle": "<->", "lw": 0.8, "shrinkA": 0, "shrinkB": 0}


def grouped(rows: Sequence[JigRow]) -> list[tuple[JigRow, JigRow]]:
    """First and last row of every run of neighbouring lanes with the same setting."""
    out: list[tuple[JigRow, JigRow]] = []
    for row in rows:
        if out and _same(out[-1][0], row) and row.lane == out[-1][1].lane + 1:
            out[-1] = (out[-1][0], row)
        else:
            out.append((row, row))
    return out


def _same(a: JigRow, b: JigRow) -> bool:
    places = ("start", "stop", "rear_at", "front_at", "rear", "front", "raise_first")
    return all(abs(getattr(a, k) - getattr(b, k)) <= SAME for k in places)


def jig_pages(sheet: Worksheet, jig: Jig) -> Iterator[tuple[str, Figure]]:
    """Drawing and settings."""
    paper = Paper(sheet, "Jig: a board on two blocks where the tyres stand")
    draw_jig(paper.axes(2.75), jig)
    for k, line in enumerate(jig_lines(jig)):
        paper.text(line, f"{k + 1}", size=8.2)
    rows = [_setting(first, last) for first, last in grouped(jig.rows)]
    heads = [
        "lanes",
        "offset m",
        "rear block at",
        "front block at",
        "cut from",
        "to",
        "REAR mm",
        "(in)",
        "FRONT mm",
        "(in)",
    ]
    wide = [0.66, 1.1, 0.72, 0.72, 0.6, 0.55, 0.82, 0.72, 0.66, 0.62]
    while True:
        done = paper.table(heads, wide, rows)
        yield "jig", paper.figure
        rows = rows[done:]
        if not rows:
            return
        paper = Paper(sheet, "Jig settings, continued")


def _setting(first: JigRow, last: JigRow) -> list[str]:
    lanes = str(first.lane) if first is last else f"{first.lane}-{last.lane}"
    offset = f"{first.offset:+.2f}" if first is last else f"{first.offset:+.2f} {last.offset:+.2f}"
    places = [f"{v:.2f}" for v in (first.rear_at, first.front_at, first.start, first.stop)]
    return [
        lanes,
        offset,
        *places,
        f"{first.rear * 1000:.1f}",
        inches(first.rear).removesuffix(" in"),
        f"{first.front * 1000:.1f}",
        inches(first.front).removesuffix(" in"),
    ]


def jig_lines(jig: Jig) -> list[str]:
    """How to build and use it."""
    lifts = "; ".join(
        f"lift {lift.number}: {both(lift.raised)} higher than the table"
        for lift in jig.lifts
        if lift.raised > 0
    )
    stacks = "; ".join(
        f"{end} {' + '.join(s.pieces) or 'no timber'}, screw out {s.screw.low * 1000:.0f} to"
        f" {s.screw.high * 1000:.0f} mm"
        for end, s in jig.stacks
    )
    lines = [
        (
            f"Board: {jig.board.name}, {jig.board.length:.1f} m. It hangs through"
            f" {millimetres(jig.board.sag)} under the tool at its middle. Sight along it: no twist, no bow."
        ),
        (
            f"Reach: with guard and shroud FITTED the cutter must stand {both(jig.reach)} below the board."
            f" Measure it now and after every lane or two; a wheel worn to {both(jig.worn)} is thrown away."
            " If yours differs, add the difference to both blocks."
        ),
        (
            f"Blocks from stock: {stacks}. A wood screw in the top sets the last millimetres. Measure each"
            " block where it stands; never trust it."
        ),
        (
            "The blocks stand on untouched concrete at the stations listed; the board lies along its lane."
            f" The cup takes the last {both(jig.smoothing)}."
        ),
        (
            f"Stick: cut one {millimetres(jig.stick)} long. Under the board, nobody leaning on it, it must"
            " pass upright everywhere between the stop marks."
        ),
    ]
    if lifts:
        lines.append(
            f"The ridge is higher than the reach. Lifts: {lifts}; last lift: as the table. Knock the fins off"
            " between lifts."
        )
    return [*lines, *jig.cannot]


def draw_jig(axes: Axes, jig: Jig) -> None:
    """Side view with the deepest setting's dimensions; heights drawn larger than lengths."""
    from matplotlib.patches import Rectangle

    row = max(jig.rows, key=lambda r: r.deepest)
    span = row.front_at - row.rear_at
    unit = 1000.0
    rear, front = row.rear * unit, row.front * unit
    top = max(rear, front)
    slope = (front - rear) / span
    x = np.linspace(-0.15, span + 0.15, 200)
    under = rear + slope * x
    a, b = row.start - row.rear_at, row.stop - row.rear_at
    middle = (a + b) / 2
    finished = rear + slope * middle - jig.below * unit
    ground = np.interp(
        x, [-0.15, 0.1, middle, span - 0.1, span + 0.15], [0, 0, finished + row.deepest * unit, 0, 0]
    )
    cut = np.minimum(ground, np.where((x >= a) & (x <= b), under - jig.below * unit, np.inf))
    axes.fill_between(x, -28, cut, color="#cbcac6", lw=0)
    axes.fill_between(x, cut, ground, color="#8c325c", alpha=0.75, lw=0)
    axes.plot(x, ground, color=ink.INK, lw=0.9)
    thick = jig.board.thickness * unit
    axes.fill_between(x, under, under + thick, facecolor="#efe6d2", edgecolor=ink.INK, lw=0.9)
    for place, height in ((0.0, rear), (span, front)):
        axes.add_patch(
            Rectangle((place - 0.05, 0), 0.1, height, facecolor="#efe6d2", edgecolor=ink.INK, lw=0.9)
        )
    _dimension(axes, -0.22, 0, rear, f"rear block\n{both(row.rear)}", "right")
    _dimension(axes, span + 0.22, 0, front, f"front block\n{both(row.front)}", "left")
    at = middle + 0.02
    board = rear + slope * at
    axes.annotate("", (at, board - jig.below * unit), (at, board), arrowprops=ARROW)
    axes.annotate(
        f"stick {millimetres(jig.stick)}: reach {both(jig.reach)} + cup {both(jig.smoothing)}",
        (at, board - jig.below * unit / 2),
        xytext=(span / 2, max(finished, 30) * 0.35),
        ha="center",
        arrowprops={"arrowstyle": "-", "lw": 0.6, "color": ink.INK},
        path_effects=ink.halo(2.4),
        **ink.SMALL,
    )
    axes.annotate("", (0, -11), (span, -11), arrowprops=ARROW)
    axes.text(
        span / 2,
        -12.5,
        f"{span:.2f} m ({span / INCH / 12:.2f} ft) between the blocks",
        ha="center",
        va="top",
        **ink.SMALL,
    )
    axes.text(span * 0.2, rear + slope * span * 0.2 + thick + 2, "board", va="bottom", **ink.SMALL)
    axes.set_xlim(-0.95, span + 0.95)
    axes.set_ylim(-30, top + thick + 24)
    axes.set_axis_off()
    axes.text(
        0.0,
        1.0,
        f"Lane {row.lane}, offset {row.offset:+.2f} m. Heights are drawn much larger than lengths; slab drawn"
        " plain.",
        transform=axes.transAxes,
        va="top",
        **ink.SMALL,
    )


def _dimension(axes: Axes, x: float, low: float, high: float, text: str, side: str) -> None:
    axes.annotate("", (x, low), (x, high), arrowprops=ARROW)
    shift = 0.04 if side == "left" else -0.04
    axes.text(
        x + shift, (low + high) / 2, text, ha=side, va="center", path_effects=ink.halo(2.4), **ink.SMALL
    )


def set_out_pages(sheet: Worksheet, out: SetOut, site: Site) -> Iterator[tuple[str, Figure]]:
    """Map with dots and stop lines, then the dots with their tapes."""
    paper = Paper(sheet, "Set-out: dots, stop lines, tape ties")
    draw_set_out(paper, out, site)
    for line in out.notes:
        paper.text(line, "\u2022", size=8.2)
    corners = [
        [f"cut {name}", f"{station:.2f}", f"{offset:+.2f}", "", *tie_cells(ties)]
        for name, station, offset, ties in out.corners
    ]
    dots = [
        [
            d.name,
            f"{d.station:.2f}",
            f"{d.offset:+.2f}",
            f"{d.depth * 1000:.1f} ({inches(d.depth)})",
            *tie_cells(d.ties),
        ]
        for d in out.dots
    ]
    rows = corners + dots
    heads = [
        "dot",
        "station m",
        "offset m",
        "drill deep, mm (in)",
        "from",
        "tape m",
        "and from",
        "tape m",
        "side of the two",
    ]
    while rows:
        done = paper.table(heads, [0.75, 0.72, 0.72, 1.25, 0.5, 0.7, 0.7, 0.7, 1.0], rows)
        yield "set_out", paper.figure
        rows = rows[done:]
        paper = Paper(sheet, "Set-out, continued")


def tie_cells(ties: Ties | None) -> list[str]:
    """Two tapes as five cells."""
    if ties is None:
        return ["-"] * 5
    return [ties.first, f"{ties.first_distance:.3f}", ties.second, f"{ties.second_distance:.3f}", ties.side]


def draw_set_out(paper: Paper, out: SetOut, site: Site) -> None:
    """The cut in depth colours, true to scale, with dots, marks and stop lines."""
    depth = np.nan_to_num(site.ground - site.finished)
    rows, columns = np.nonzero(depth > 0)
    places = [
        (site.station[columns.min()], site.offset[rows.min()]),
        (site.station[columns.max()], site.offset[rows.max()]),
    ]
    places += [(station, offset) for _, station, offset in out.marks]
    low, high = np.min(places, axis=0) - 0.25, np.max(places, axis=0) + 0.25
    axes = paper.axes(float(np.clip(7.1 * (high[1] - low[1]) / (high[0] - low[0]), 2.0, 4.6)))
    half = site.cell / 2
    extent = (site.station[0] - half, site.station[-1] + half, site.offset[0] - half, site.offset[-1] + half)
    image = depth_colours(np.where(np.isnan(site.ground), np.nan, depth), float(depth.max()))
    axes.imshow(image, extent=extent, origin="lower", interpolation="nearest", rasterized=True)
    for dot in out.dots:
        axes.plot(dot.station, dot.offset, "o", ms=3.2, mfc="white", mec=ink.INK, mew=0.8)
        axes.annotate(
            dot.name,
            (dot.station, dot.offset),
            xytext=(3, 2),
            textcoords="offset points",
            fontsize=5.6,
            path_effects=ink.halo(1.6),
        )
    for name, station, offset in out.marks:
        axes.plot(station, offset, "+", ms=11, mew=1.4, color=ink.INK)
        axes.annotate(
            name, (station, offset), xytext=(5, 4), textcoords="offset points", fontsize=9, fontweight="bold"
        )
    axes.axhline(0, color=ink.INK, lw=1.0, ls=(0, (9, 2, 1.5, 2)))
    style: dict[str, Any] = {"color": ink.INK, "lw": 0.7}
    edges = np.asarray(out.outline)
    axes.plot(edges[:, 1], edges[:, 0], "|", ms=3, **style)
    axes.plot(edges[:, 2], edges[:, 0], "|", ms=3, **style)
    axes.set_xlim(low[0], high[0])
    axes.set_ylim(low[1], high[1])
    axes.set_xlabel("station along the line, m", fontsize=7.5)
    axes.set_ylabel("offset, left +, m", fontsize=7.5)
    axes.tick_params(labelsize=7)
    axes.grid(color=ink.FAINT, lw=0.3)
    paper.at += 0.35


def string_pages(sheet: Worksheet, out: SetOut) -> Iterator[tuple[str, Figure]]:
    """The acceptance table."""
    paper = Paper(sheet, "Acceptance: what the string must read")
    paper.text(
        f"Two equal blocks on untouched concrete, string pulled with {out.pull:.0f} N (3 kg hung over the"
        f" end; it then hangs through {millimetres(out.sag, 2)} at its middle). Measure down from the string,"
        " square to it, to the highest concrete under it. The reading must be the figure or MORE. A stick"
        " cut to the figure must slip in; one 3 mm longer should not."
    )
    rows = [
        [
            str(s.lane),
            f"{s.offset:+.2f}",
            f"{s.rear_at:.2f}",
            f"{s.front_at:.2f}",
            f"{s.blocks * 1000:.0f}",
            f"{s.at:.2f}",
            f"{s.least * 1000:.0f}",
            inches(s.least),
            "........",
        ]
        for s in out.strings
    ]
    heads = [
        "lane",
        "offset m",
        "rear block at",
        "front block at",
        "both blocks mm",
        "from rear block m",
        "AT LEAST mm",
        "(in)",
        "read",
    ]
    while rows:
        done = paper.table(heads, [0.5, 0.75, 0.85, 0.85, 0.95, 1.0, 0.85, 0.75, 0.65], rows)
        yield "string", paper.figure
        rows = rows[done:]
        paper = Paper(sheet, "Acceptance, continued")


def slot_pages(sheet: Worksheet, out: SetOut) -> Iterator[tuple[str, Figure]]:
    """Slot depths: every lane's stations with the depth below the untouched concrete."""
    paper = Paper(sheet, "Slot depths, lane by lane")
    paper.text(
        "Each pair is station (m along the line) and finished depth below the untouched concrete (mm);"
        " between two stations it changes evenly. Slots stop the cup's 1/16 in (1.6 mm) short of it. When all"
        " is done a depth gauge must read the figure or more."
    )
    by_lane: dict[tuple[int, float], list[str]] = {}
    for slot in out.kerfs:
        by_lane.setdefault((slot.lane, slot.offset), []).append(
            f"{slot.station:.2f}:{slot.depth * 1000:4.1f}"
        )
    for (lane, offset), pairs in by_lane.items():
        for k in range(0, len(pairs), SLOTS):
            head = f"{lane:4d} ({offset:+.2f}) " if k == 0 else " " * 13
            paper.mono(head + "  ".join(pairs[k : k + SLOTS]))
    yield from (("slots", figure) for figure in paper.figures)


def strip_pages(sheet: Worksheet, jig: Jig, site: Site) -> Iterator[tuple[str, Figure]]:
    """A full-size strip of the deepest lane: lay it along the lane, the stop marks on the chalk. Check bars
    both ways.
    """
    if not jig.rows:
        return
    row = max(jig.rows, key=lambda r: r.deepest)
    line = int(np.argmin(np.abs(site.offset - row.offset)))
    depth = np.nan_to_num(site.ground[line] - site.finished[line])
    cut = np.flatnonzero(depth > 0)
    first, last = float(site.station[cut[0]]), float(site.station[cut[-1]])
    count = int(np.ceil((last - first + 0.02) / STRIP))
    for k in range(min(count, MOST_STRIPS)):
        paper = Paper(
            sheet,
            f"Strip, full size: lane {row.lane}, offset {row.offset:+.2f} m, piece {k + 1} of {count}. Print"
            " at 100 %.",
        )
        _strip(paper, site, depth, first - 0.01 + k * STRIP)
        yield "strip", paper.figure


def _strip(paper: Paper, site: Site, depth: np.ndarray, start: float) -> None:
    """One piece, stations down the page, depths full size to the right."""
    tall, wide = STRIP / INCH, 0.08 / INCH
    axes = ink.axes_at(paper.figure, SIDE + 0.7, TALL - 1.3 - tall, wide, tall)
    axes.set_xlim(-0.02, 0.06)
    axes.set_ylim(start + STRIP, start)
    inside = (site.station >= start - site.cell) & (site.station <= start + STRIP + site.cell)
    axes.fill_betweenx(site.station[inside], 0, depth[inside], color="#8c325c", alpha=0.6, lw=0)
    axes.plot(depth[inside], site.station[inside], color=ink.INK, lw=1.0)
    axes.axvline(0, color=ink.INK, lw=1.2)
    for station in np.arange(np.ceil(start * 100), np.floor((start + STRIP) * 100) + 1) / 100:
        long = abs(station * 20 - round(station * 20)) < 1e-6
        axes.plot([-0.004 if long else -0.002, 0], [station, station], color=ink.INK, lw=0.8)
        if long:
            axes.text(-0.006, station, f"{station:.2f} m", ha="right", va="center", fontsize=7)
        value = float(np.interp(station, site.station, depth))
        if value > 0:
            axes.text(value + 0.001, station, f"{value * 1000:.1f}", va="center", fontsize=6.4)
    axes.set_axis_off()
    _check_bars(paper)


def _check_bars(paper: Paper) -> None:
    """100 mm both ways: a printer that scales shows here."""
    from matplotlib.lines import Line2D

    bar = 0.1 / INCH
    left, top = WIDE - SIDE - bar, 1.6
    for dx, dy, x, y in ((bar, 0.0, 0.0, -0.09), (0.0, bar, 0.1, bar / 2)):
        paper.figure.add_artist(
            Line2D(
                [left / WIDE, (left + dx) / WIDE],
                [1 - top / TALL, 1 - (top + dy) / TALL],
                color=ink.INK,
                lw=2.0,
            )
        )
        paper.put(left + x, top + y, "this bar is 100 mm long", fontsize=7.5)
    paper.put(left, top + bar + 0.35, "If it is not, print again without scaling.", fontsize=7.5)
