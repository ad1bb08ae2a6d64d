"""The jig sheet: a board on two blocks, drawn from the slab's own profile and dimensioned, and its settings
on one map and in one table.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.units import FOOT, at_least, both, inches, millimetres
from crestcut.report.pictures import ink
from crestcut.report.sheets.paper import Paper, filled, true_to_scale
from crestcut.report.sheets.ties import far, long_words, name_axes, side, unit
from crestcut.work import STICK_INCHES, Jig, JigRow, Site, Worksheet, stick_words

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.patches import Rectangle

ARROW: dict[str, Any] = {"arrowstyle": "<->", "lw": 0.8, "shrinkA": 0, "shrinkB": 0}
TIMBER = "#efe6d2"
MM = 1000.0
WORDS = -11.0  # mm below the blocks' feet: where what points into the cut is written


def jig_pages(sheet: Worksheet, jig: Jig, site: Site) -> list[Figure]:
    """Drawing, map of the settings, their table, how to build and use it."""
    if not jig.rows:
        return []
    return filled(
        sheet, "Jig: a board on two blocks beside the cut", lambda paper: _jig(paper, sheet, jig, site)
    )


def _jig(paper: Paper, sheet: Worksheet, jig: Jig, site: Site) -> None:
    draw_jig(paper.axes(2.3), jig, site, sheet.metric, sheet.words.station)
    paper.at += 0.1
    draw_settings(paper.axes(2.2, inset=0.4), jig, sheet.metric, sheet.words.station)
    paper.at += 0.3
    settings(paper, jig)
    for k, line in enumerate(jig_lines(jig, sheet.metric)):
        paper.text(line, f"{k + 1}", size=9.2)


def size(length: float, metric: bool) -> str:
    """Of a block: "25 mm", or "1 in" where the tape is in inches."""
    return (
        millimetres(length, 0 if abs(length * MM - round(length * MM)) < 1e-6 else 1)
        if metric
        else inches(length)
    )


def draw_settings(axes: Axes, jig: Jig, metric: bool, station: str = "station") -> None:
    """From above, true to scale: every setting with its number, its stop lines and the lines its blocks
    slide on.
    """
    places = []
    for row in jig.rows:
        ring = [
            (row.start[0], row.low),
            (row.stop[0], row.low),
            (row.stop[1], row.high),
            (row.start[1], row.high),
        ]
        x, y = zip(*ring, ring[0], strict=True)
        axes.fill(x, y, facecolor="#e9e7e3", edgecolor=ink.INK, lw=0.9)
        middle = [sum(v) / 4 for v in (x[:4], y[:4])]
        axes.text(middle[0], middle[1], row.name, ha="center", va="center", fontsize=11, fontweight="bold")
        # settings behind each other have their lines nearly on each other: each is named at a place of its
        # own, beyond the lines of all
        share = 0.3 if row.lane % 2 else 0.7
        offset = row.low + (row.high - row.low) * share
        beside = [r for r in jig.rows if r.low <= offset <= r.high]
        rear = min(np.interp(offset, (r.low, r.high), r.rear_at) for r in beside) - 0.03
        front = max(np.interp(offset, (r.low, r.high), r.front_at) for r in beside) + 0.03
        for ends, height, at, where in (
            (row.rear_at, row.rear, rear, "right"), (row.front_at, row.front, front, "left"),
        ):  # fmt: skip
            axes.plot(ends, (row.low, row.high), "-s", color=ink.INK, lw=1.6, ms=3.5, mfc="white")
            axes.text(
                at, offset, f"{row.name}: {size(height, metric)}", ha=where, va="center",
                path_effects=ink.halo(2.2), zorder=9, **ink.SMALL,
            )  # fmt: skip
            places += [(ends[0], row.low), (ends[1], row.high)]
    low, high = (tuple(pick(v) for v in zip(*places, strict=True)) for pick in (min, max))
    true_to_scale(axes, (low[0] - 0.3, low[1] - 0.06), (high[0] + 0.3, high[1] + 0.06))
    name_axes(axes, station, metric)


def settings(paper: Paper, jig: Jig) -> None:
    """The table: a row for every setting, places at its first and at its last slot."""
    metric, first_lift = paper.sheet.metric, {lift.spacers: lift.number for lift in jig.lifts}
    heads = [
        "set-|ting", "slots|from", "offset|to", "REAR|block", "at 1st|slot", "at|last",
        "stop|1st", "line|last", "stop|1st", "line|last",
        "FRONT|block", "at 1st|slot", "at|last", "1st|lift",
    ]  # fmt: skip
    rows = [
        [
            r.name, side(r.low, metric, 2), side(r.high, metric, 2), size(r.rear, metric).split(" in")[0],
            *(far(v, metric, 2) for v in (*r.rear_at, *r.start, *r.stop)),
            size(r.front, metric).split(" in")[0], *(far(v, metric, 2) for v in r.front_at),
            f"{first_lift[r.spacers]}",
        ]
        for r in jig.rows
    ]  # fmt: skip
    long, block = (7, 10) if metric else (8, 8)
    widths = [4, long, long, block, *[long] * 6, block, long, long, 5]
    paper.table(heads, widths, rows)
    paper.text(
        f"Offsets and {paper.sheet.words.station}s in {'metres' if metric else 'inches, blocks too'}. Chalk"
        " a straight line from where a block"
        f" stands at the"
        " first slot to where it stands at the last: it slides along that line, its middle on it, as the"
        " board moves"
        " over from slot to slot, always square to the slots' offsets. Heights are for the LAST lift,"
        " under the board.",
        size=8.8,
    )


def jig_lines(jig: Jig, metric: bool) -> list[str]:
    """How to build and use it."""
    blocks = "; ".join(f"{size(b.height, metric)}: {' + '.join(b.pieces)}" for b in jig.blocks)
    lines = [
        (
            f"Board: {jig.board.name}, {at_least(jig.board.length, 0.1):.1f} m"
            f" ({at_least(jig.board.length, FOOT / 2) / FOOT:g} ft) or longer. It hangs"
            f" through {millimetres(jig.board.own_sag)} by itself, {millimetres(jig.board.sag)} with tool and"
            " hand at its middle. Sight along it: no twist, no bow."
        ),
        (
            f"Reach: guard and shroud FITTED, the cutter stands {both(jig.reach)} below the board. Measure it"
            f" now and after every setting; worn to {both(jig.worn)} the wheel is done. If yours differs, add"
            " the difference to both blocks."
        ),
        f"Blocks: {blocks}. Measure each where it stands, never trust it; thin paper under it where it"
        f" rocks.",
        (
            f"Blocks stand on untouched concrete. Slots {millimetres(jig.step, 0)} apart; the cup takes"
            f" the last"
            f" {both(jig.smoothing)}. The feather beside the settings is ground by eye with the cup."
        ),
        (
            f"Stick: saw one {stick_words(jig)} long. When done it must pass upright under the board,"
            f" nobody leaning"
            " on it, everywhere between the stop lines."
        ),
    ]
    return [*lines, *jig.cannot]


def draw_jig(axes: Axes, jig: Jig, site: Site, metric: bool, station: str = "station") -> None:
    """Side view of the deepest setting over the slab's own profile; heights drawn larger than lengths."""
    row = max(jig.rows, key=lambda r: r.deepest)
    view = _View(row, jig, site)
    x, under = view.x, view.under
    top = float(max(under[0], under[-1])) + jig.board.thickness * MM
    floor = min(float(np.nanmin(view.ground)), 0.0) - 38
    axes.fill_between(x, floor, np.minimum(view.ground, view.finished), color="#d6d4d0", lw=0)
    axes.fill_between(
        x,
        view.finished,
        view.ground,
        where=view.ground > view.finished,
        facecolor="white",
        edgecolor=ink.INK,
        hatch="/////",
        lw=0,
    )
    axes.plot(x, view.ground, color=ink.INK, lw=1.1)
    axes.plot(
        x, np.where(view.ground > under, view.ground, np.nan), color=ink.INK, lw=1.0, ls=(0, (3, 2)), zorder=8
    )
    cut = view.ground > view.finished + 0.05
    axes.plot(np.where(cut, x, np.nan), np.where(cut, view.finished, np.nan), color=ink.INK, lw=1.6)
    thick = jig.board.thickness * MM
    axes.fill_between(x, under, under + thick, facecolor=TIMBER, edgecolor=ink.INK, lw=0.9)
    for place, ground, height in (
        (0.0, view.foot[0], row.rear * MM),
        (view.span, view.foot[1], row.front * MM),
    ):
        axes.add_patch(box(place - 0.045, ground, 0.09, height, TIMBER))
    beside = 0.08 * view.span
    _dimension(axes, -beside, 0, row.rear * MM, f"REAR block\n{size(row.rear, metric)}", "right")
    _dimension(axes, view.span + beside, 0, row.front * MM, f"FRONT block\n{size(row.front, metric)}", "left")
    _grinder(axes, view, jig, row, metric, top)
    _stops(axes, view, top, metric)
    base = floor + 12
    axes.annotate("", (0, base), (view.span, base), arrowprops=ARROW)
    axes.text(
        view.span / 2,
        base - 2,
        f"{long_words(view.span, metric)} between the blocks, here at {station}s"
        f" {far(view.rear, metric, 2)} and {long_words(view.rear + view.span, metric)}",
        ha="center",
        va="top",
        path_effects=ink.halo(2.4),
        **ink.SMALL,
    )
    axes.set_xlim(-0.45 * view.span, 1.45 * view.span)
    axes.set_ylim(floor - 4, top + 60)
    axes.set_axis_off()
    axes.text(
        0.0,
        1.0,
        f"Setting {row.name}, offset {side(view.offset, metric, 2)} {unit(metric)}, last lift, over the slab"
        " as scanned. Heights are"
        f" drawn {_stretch(axes):.0f} times larger than lengths. Hatched: what goes.",
        transform=axes.transAxes,
        va="top",
        **ink.SMALL,
    )


class _View:
    """The profile under one setting against the straight line between the two block feet: x in m,
    heights in mm.
    """

    def __init__(self, row: JigRow, jig: Jig, site: Site) -> None:
        line = int(np.argmin(np.abs(site.offset - (row.low + row.high) / 2)))
        self.offset = float(site.offset[line])
        self.rear, front = (sum(ends) / 2 for ends in (row.rear_at, row.front_at))
        self.span = front - self.rear
        a, b = (int(np.argmin(np.abs(site.station - s))) for s in (self.rear, front))
        out = max(round(0.15 / site.cell), 1)
        low, high = max(a - out, 0), min(b + out, len(site.station) - 1)
        self.x = site.station[low : high + 1] - self.rear
        feet = site.ground[line, a], site.ground[line, b]
        chord = feet[0] + (feet[1] - feet[0]) * self.x / self.span
        self.ground = (site.ground[line, low : high + 1] - chord) * MM
        self.foot = 0.0, 0.0
        self.under = (row.rear + (row.front - row.rear) * self.x / self.span) * MM
        self.stations = sum(row.start) / 2, sum(row.stop) / 2
        self.start, self.stop = (s - self.rear for s in self.stations)
        self.finished = np.fmin((site.finished[line, low : high + 1] - chord) * MM, self.ground)


def _grinder(axes: Axes, view: _View, jig: Jig, row: JigRow, metric: bool, top: float) -> None:
    """The tool riding on the board with its wheel through, and the stick beside it."""
    thick = jig.board.thickness * MM
    at = view.start + (view.stop - view.start) * 0.35
    k = int(np.argmin(np.abs(view.x - at)))
    board = float(view.under[k])
    axes.add_patch(box(at - 0.12, board + thick, 0.24, 9, "white"))
    axes.add_patch(box(at - 0.03, board - jig.reach * MM, 0.06, thick + jig.reach * MM + 9, "#9a9894"))
    axes.text(
        at,
        max(board + thick, top) + 28,  # over the words of the stops
        "shrouded base on the board,\nwheel past its edge",
        ha="center",
        va="bottom",
        **ink.SMALL,
    )
    place = view.start + (view.stop - view.start) * 0.75
    j = int(np.argmin(np.abs(view.x - place)))
    low, high = float(view.under[j]) - jig.stick * MM, float(view.under[j])
    axes.plot([place, place], [low, high], color=ink.INK, lw=3.0, solid_capstyle="butt")
    axes.annotate(
        stick_sum(jig)
        if metric
        else f"stick {inches(jig.stick, STICK_INCHES)}:\nreach, cup, and a hair to be sure",
        (place, (low + high) / 2),
        xytext=(view.span * 0.75, WORDS),
        ha="center",
        va="center",
        arrowprops={"arrowstyle": "-", "lw": 0.7, "color": ink.INK},
        path_effects=ink.halo(2.6),
        **ink.SMALL,
    )
    deep = view.ground - view.finished
    i = int(np.nanargmax(deep))
    axes.annotate(
        f"deepest {size(row.deepest, metric)}",
        (float(view.x[i]), float(view.finished[i] + deep[i] / 2)),
        xytext=(view.span * 0.25, WORDS),
        ha="center",
        va="center",
        arrowprops={"arrowstyle": "-", "lw": 0.7, "color": ink.INK},
        path_effects=ink.halo(2.6),
        **ink.SMALL,
    )


def stick_sum(jig: Jig) -> str:
    """What the stick is made up of, in figures that add up as they are printed."""
    parts = [round(v * MM, 1) for v in (jig.reach, jig.smoothing)]
    spare = round(jig.stick * MM, 1) - sum(parts)
    made = f"stick {millimetres(jig.stick)} = reach {parts[0]:.1f}"
    return f"{made}\n+ cup {parts[1]:.1f} + {spare:.1f} to be sure"


def _stops(axes: Axes, view: _View, top: float, metric: bool) -> None:
    """Between which marks the cutter is let down."""
    for x, station, where in zip((view.start, view.stop), view.stations, ("right", "left"), strict=True):
        axes.plot([x, x], [0, top + 12], color=ink.INK, lw=0.8, ls=(0, (4, 2)))
        axes.text(
            x + (0.02 if where == "left" else -0.02),
            top + 12,
            f"stop {long_words(station, metric)}",
            ha=where,
            va="bottom",
            path_effects=ink.halo(2.0),
            **ink.SMALL,
        )


def _stretch(axes: Axes) -> float:
    """How many times larger heights are drawn than lengths."""
    (x0, x1), (y0, y1) = axes.get_xlim(), axes.get_ylim()
    box = axes.get_position()
    wide, tall = axes.figure.get_size_inches()  # type: ignore[union-attr]
    return float((box.height * tall / ((y1 - y0) / MM)) / (box.width * wide / (x1 - x0)))


def box(x: float, y: float, width: float, height: float, colour: str) -> Rectangle:
    """An outlined rectangle, lower left corner first, in the units of the axes it is added to."""
    from matplotlib.patches import Rectangle

    return Rectangle((x, y), width, height, facecolor=colour, edgecolor=ink.INK, lw=0.9, zorder=3)


def _dimension(axes: Axes, x: float, low: float, high: float, text: str, side: str) -> None:
    axes.annotate("", (x, low), (x, high), arrowprops=ARROW)
    shift = 0.04 if side == "left" else -0.04
    axes.text(
        x + shift, (low + high) / 2, text, ha=side, va="center", path_effects=ink.halo(2.4), **ink.SMALL
    )
