"""The jig sheet: a board on two blocks, drawn from the slab's own profile and dimensioned, and its settings
strip by strip.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.units import FOOT, at_least, both, inches, millimetres
from crestcut.report.pictures import ink
from crestcut.report.sheets.paper import Paper
from crestcut.work import CLOSE, Jig, JigRow, Site, Worksheet, stick_words

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.patches import Rectangle

ARROW: dict[str, Any] = {"arrowstyle": "<->", "lw": 0.8, "shrinkA": 0, "shrinkB": 0}
TIMBER = "#efe6d2"
MM = 1000.0


def jig_pages(sheet: Worksheet, jig: Jig, site: Site) -> list[Figure]:
    """Drawing, how to build it, settings."""
    if not jig.rows:
        return []
    paper = Paper(sheet, "Jig: a board on two blocks where the tyres stand")
    draw_jig(paper.axes(3.1), jig, site, sheet.words.station)
    for k, line in enumerate(jig_lines(jig)):
        paper.text(line, f"{k + 1}", size=9.2)
    settings(paper, jig)
    return paper.figures


def settings(paper: Paper, jig: Jig) -> None:
    """The table: one row for every strip, more where a strip needs more than one setting."""
    heads = [
        "strip",
        "slots|from",
        "offset|to",
        "start at|1st slot",
        "|last",
        "stop at|1st slot",
        "|last",
        "1st|lift",
        "REAR|mm",
        "|in",
        "|no.",
        "FRONT|mm",
        "|in",
        "|no.",
    ]
    first_lift = {lift.spacers: lift.number for lift in jig.lifts}
    places = {(row.rear_at, row.front_at) for row in jig.rows}
    rows = []
    for row in jig.rows:
        cells = _setting(row, first_lift[row.spacers])
        rows.append(
            cells
            if len(places) == 1
            else [*cells[:8], f"{row.rear_at:.2f}", *cells[8:11], f"{row.front_at:.2f}", *cells[11:]]
        )
    widths = [5, 7, 7, 10, 7, 10, 7, 6, 7, 9, 5, 8, 9, 5]  # 102 characters fill A4
    if len(places) > 1:
        heads = [*heads[:8], "at|m", *heads[8:11], "at|m", *heads[11:]]
        widths = [5, 6, 7, 9, 6, 9, 6, 5, 6, 7, 8, 4, 6, 7, 8, 4]
    else:
        rear, front = next(iter(places))
        paper.text(
            f"All blocks: rear at {paper.sheet.words.station} {rear:.2f} m, front at {front:.2f} m.",
            bold=True,
        )
    paper.table(heads, widths, rows)
    parts = sorted({row.part for row in jig.rows if row.part})
    last = f" Heights are set by the {' and the '.join(parts)}." if parts else ""
    paper.text(
        f"Offsets and {paper.sheet.words.station}s in metres. Heights are for the LAST lift, under the board,"
        " screw included; every slot of a strip has the same two heights: move both blocks sideways with the"
        f" board. 'No.' is the number of the block: write it on.{last}",
        size=8.8,
    )


def _setting(row: JigRow, lift: int) -> list[str]:
    places = [f"{v:.2f}" for v in (*row.start, *row.stop)]
    return [
        f"{row.lane}",
        f"{row.low:+.2f}",
        f"{row.high:+.2f}",
        *places,
        f"{lift}",
        f"{row.rear * MM:.1f}",
        inches(row.rear).removesuffix(" in"),
        row.rear_stack,
        f"{row.front * MM:.1f}",
        inches(row.front).removesuffix(" in"),
        row.front_stack,
    ]


def jig_lines(jig: Jig) -> list[str]:
    """How to build and use it."""
    stacks = "; ".join(
        f"no. {s.number}: {' + '.join(s.pieces)}, screw out"
        f" {' to '.join(dict.fromkeys((f'{s.screw.low * MM:.0f}', f'{s.screw.high * MM:.0f}')))} mm"
        for s in jig.stacks
    )
    name, thick = jig.spacer
    lines = [
        (
            f"Board: {jig.board.name}, {at_least(jig.board.length, 0.1):.1f} m"
            f" ({at_least(jig.board.length, FOOT / 2) / FOOT:g} ft) or longer. It hangs"
            f" through {millimetres(jig.board.own_sag)} by itself, {millimetres(jig.board.sag)} with tool and"
            " hand at its middle. Sight along it: no twist, no bow."
        ),
        (
            f"Reach: guard and shroud FITTED, the cutter stands {both(jig.reach)} below the board. Measure it"
            f" now and after every strip; worn to {both(jig.worn)} the wheel is done. If yours differs, add"
            " the difference to both blocks."
        ),
        (
            f"Blocks: {stacks}. A wood screw in the top of each sets the last millimetres; thin shims"
            f" under it where it rocks."
            " Measure every block where it stands: never trust it."
        ),
        (
            "Blocks stand on untouched concrete at the listed places, the board along its strip. Slots"
            f" {millimetres(jig.step, 0)} apart across the strip. The cup takes the last"
            f" {both(jig.smoothing)}."
        ),
        (
            f"Stick: saw one {stick_words(jig)} long. When done it must pass"
            f" upright under the board,"
            " nobody leaning on it, everywhere between the stop lines."
        ),
    ]
    if len(jig.lifts) > 1:
        most = jig.lifts[0].spacers
        lines.append(
            f"Lifts: the ridge is higher than the reach. Lift 1: {most} x {name} ({millimetres(thick)})"
            f" under both ends of the board;"
            f" take one off for each next lift; lift {len(jig.lifts)}: none. A strip begins with its"
            f" 1st lift. Fins off in between."
        )
    wavers = ", because the plan wavers with the scan" if jig.deeper > 0 else ""
    lines.append(
        f"A straight board follows the plan to {millimetres(CLOSE, 2)}, on the deep side to"
        f" {millimetres(CLOSE + jig.deeper, 2)}{wavers}; nowhere deeper than the plan's deepest place."
        " Figures here and in the chart may differ by that much; the dots are never deeper than the plan."
    )
    return [*lines, *jig.cannot]


def draw_jig(axes: Axes, jig: Jig, site: Site, station: str = "station") -> None:
    """Side view of the deepest setting over the slab's own profile; heights drawn larger than lengths."""
    row = max(jig.rows, key=lambda r: r.deepest)
    view = _View(row, jig, site)
    x, under = view.x, view.under
    top = float(max(under[0], under[-1])) + jig.board.thickness * MM
    floor = min(float(np.nanmin(view.ground)), 0.0) - 24
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
        axes.add_patch(box(place - 0.05, ground, 0.1, height, TIMBER))
    _dimension(axes, -0.2, 0, row.rear * MM, f"REAR {both(row.rear)}\nblock {row.rear_stack}", "right")
    _dimension(
        axes, view.span + 0.2, 0, row.front * MM, f"FRONT {both(row.front)}\nblock {row.front_stack}", "left"
    )
    _grinder(axes, view, jig, thick, row, top)
    _stops(axes, view, row, top)
    base = floor + 14
    axes.annotate("", (0, base), (view.span, base), arrowprops=ARROW)
    axes.text(
        view.span / 2,
        base - 2,
        f"{view.span:.2f} m ({view.span / FOOT:.2f} ft) between the blocks, at {station}s {row.rear_at:.2f}"
        f" and {row.front_at:.2f}",
        ha="center",
        va="top",
        path_effects=ink.halo(2.4),
        **ink.SMALL,
    )
    axes.set_xlim(-1.1, view.span + 1.1)
    axes.set_ylim(floor - 4, top + 66)
    axes.set_axis_off()
    axes.text(
        0.0,
        1.0,
        f"Strip {row.lane}, offset {row.offset:+.2f} m, last lift, over the slab as scanned. Heights are"
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
        line = int(np.argmin(np.abs(site.offset - row.offset)))
        a, b = (int(np.argmin(np.abs(site.station - s))) for s in (row.rear_at, row.front_at))
        out = max(round(0.15 / site.cell), 1)
        low, high = max(a - out, 0), min(b + out, len(site.station) - 1)
        self.x = site.station[low : high + 1] - row.rear_at
        self.span = row.front_at - row.rear_at
        feet = site.ground[line, a], site.ground[line, b]
        chord = feet[0] + (feet[1] - feet[0]) * self.x / self.span
        self.ground = (site.ground[line, low : high + 1] - chord) * MM
        self.foot = 0.0, 0.0
        self.under = (row.rear + (row.front - row.rear) * self.x / self.span) * MM
        self.start, self.stop = sum(row.start) / 2 - row.rear_at, sum(row.stop) / 2 - row.rear_at
        planned = (site.finished[line, low : high + 1] - chord) * MM
        inside = (self.x >= self.start) & (self.x <= self.stop)
        self.finished = np.where(inside, self.under - jig.below * MM, planned)
        self.finished = np.fmin(self.finished, self.ground)


def _grinder(axes: Axes, view: _View, jig: Jig, thick: float, row: JigRow, top: float) -> None:
    """The tool riding on the board with its wheel through, and the stick beside it."""
    at = view.start + (view.stop - view.start) * 0.35
    k = int(np.argmin(np.abs(view.x - at)))
    board = float(view.under[k])
    axes.add_patch(box(at - 0.14, board + thick, 0.28, 9, "white"))
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
        stick_sum(jig),
        (place, (low + high) / 2),
        xytext=(view.span * 0.72, float(view.under[-1]) * 0.30),
        ha="center",
        va="center",
        arrowprops={"arrowstyle": "-", "lw": 0.7, "color": ink.INK},
        path_effects=ink.halo(2.6),
        **ink.SMALL,
    )
    deep = view.ground - view.finished
    i = int(np.nanargmax(deep))
    axes.annotate(
        f"deepest {millimetres(row.deepest)}",
        (float(view.x[i]), float(view.finished[i] + deep[i] / 2)),
        xytext=(view.span * 0.2, float(view.under[0]) * 0.45),
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


def _stops(axes: Axes, view: _View, row: JigRow, top: float) -> None:
    """Between which marks the cutter is let down."""
    for x, station, side in ((view.start, row.start, "right"), (view.stop, row.stop, "left")):
        axes.plot([x, x], [0, top + 12], color=ink.INK, lw=0.8, ls=(0, (4, 2)))
        axes.text(
            x + (0.02 if side == "left" else -0.02),
            top + 12,
            f"stop {sum(station) / 2:.2f} m",
            ha=side,
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
