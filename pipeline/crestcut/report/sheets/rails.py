"""Sheets for what is not the board on two blocks: two rails with drill dots, and a floor's blocks on datum
spots.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from crestcut.base.units import at_least, both, both_at_least, millimetres, number
from crestcut.report.pictures import ink
from crestcut.report.sheets.jig import ARROW, MM, TIMBER, box, size
from crestcut.report.sheets.map import name_dot
from crestcut.report.sheets.paper import Paper, filled, true_to_scale
from crestcut.report.sheets.ties import deep, far, name_axes, side, tie_cells, tie_heads, tie_widths, unit
from crestcut.work import Dot, FloorJig, Jig, Rails, SetOut, Spot, Worksheet, stick_words

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.patches import Patch


def rail_pages(sheet: Worksheet, jig: Jig, out: SetOut) -> list[Figure]:
    """One drawing and one table for every piece no board can follow; empty where there is none."""
    usable = [rails for rails in jig.rails if rails.spots]
    if not usable:
        return []
    return filled(
        sheet, "Two rails: where no board can follow", lambda paper: _rails(paper, jig, usable, out)
    )


def _rails(paper: Paper, jig: Jig, usable: Sequence[Rails], out: SetOut) -> None:
    paper.text(
        "The shrouded base runs on two straight rails as thick as the jig's board"
        f" ({both(jig.board.thickness)}), a strongback on edge along the outside of each, on two blocks that"
        " stand on the printed spots, untouched concrete. With guard and shroud fitted cutter and cup end"
        f" {both(jig.below)} below the rails' UNDERSIDE; rails never let them too deep. Measure it first."
        " What they leave goes by the drill dots: grind until each is just gone."
    )
    for rails in usable:
        paper.need(4.9)
        paper.heading(f"Piece {rails.name}")
        paper.text(f"Why no board: {rails.why}.")
        axes = paper.axes(2.9, inset=0.4)
        _draw_rails(axes, rails, [d for d in out.dots if _in(rails, d)], paper.sheet.metric)
        name_axes(axes, paper.sheet.words.station, paper.sheet.metric)
        paper.at += 0.42
        _spot_table(paper, rails.spots)
        most = both_at_least(rails.leaves)
        paper.text(f"The rails leave at most {most} over the finished surface.", "\u2022")


def _in(rails: Rails, dot: Dot) -> bool:
    return (
        rails.low - 0.05 <= dot.offset <= rails.high + 0.05
        and rails.first - 0.1 <= dot.station <= rails.last + 0.1
    )


def _spot_table(paper: Paper, spots: Sequence[Spot]) -> None:
    metric = paper.sheet.metric
    rows = [
        [
            s.name, far(s.station, metric), side(s.offset, metric), deep(s.block, metric),
            *tie_cells(s.ties, metric=metric),
        ]
        for s in spots
    ]  # fmt: skip
    m = unit(metric)
    heads = ["spot|", f"{paper.sheet.words.station}|{m}", f"offset|{m}", f"BLOCK|{unit(metric, True)}"]
    widths = [6, 11, 10, 10] if metric else [6, 12, 12, 10]
    paper.table([*heads, *tie_heads(metric)], [*widths, *tie_widths(metric)], rows)


def _draw_rails(axes: Axes, rails: Rails, dots: Sequence[Dot], metric: bool) -> None:
    """From above, true to scale: the piece, the rails on their spots, the dots with their depths."""
    left, right = rails.spots[:2], rails.spots[2:]
    axes.add_patch(_patch(rails))
    for a, b in (left, right):
        axes.plot([a.station, b.station], [a.offset, b.offset], color=ink.INK, lw=5.0, solid_capstyle="butt")
        axes.plot([a.station, b.station], [a.offset, b.offset], color=TIMBER, lw=3.4, solid_capstyle="butt")
    for spot in rails.spots:
        axes.plot(spot.station, spot.offset, "s", ms=8, mfc="white", mec=ink.INK, mew=1.2, zorder=5)
        axes.annotate(
            f"{spot.name}  {deep(spot.block, metric)} {unit(metric, True)}",
            (spot.station, spot.offset),
            xytext=(0, 9 if spot in left else -15),
            textcoords="offset points",
            ha="center",
            path_effects=ink.halo(2.2),
            **ink.SMALL,
        )
    for dot in dots:
        axes.plot(dot.station, dot.offset, "o", ms=3.6, mfc="white", mec=ink.INK, mew=0.9, zorder=6)
        name_dot(axes, (dot.station, dot.offset), dot.name, deep(dot.depth, metric))
    stations, offsets = [s.station for s in rails.spots], [s.offset for s in rails.spots]
    true_to_scale(
        axes, (min(stations) - 0.12, min(offsets) - 0.1), (max(stations) + 0.12, max(offsets) + 0.1)
    )
    axes.tick_params(labelsize=7)


def _patch(rails: Rails) -> Patch:
    from matplotlib.patches import Rectangle

    return Rectangle(
        (rails.first, rails.low),
        rails.last - rails.first,
        max(rails.high - rails.low, 0.005),
        facecolor="white",
        edgecolor=ink.INK,
        hatch="//",
        lw=0.9,
    )


def floor_jig(
    paper: Paper, jig: FloorJig, place: Callable[[float, float], tuple[float, float]], name: str
) -> None:
    """The floor case: blocks exactly as high as the cutter reaches, on datum spots, drawn and listed.

    place : a spot's station and offset as the floor's pages give places.  name : of their unit.
    """
    metric = paper.sheet.metric
    _draw_floor(paper.axes(2.1), jig)
    timber = f"{size(jig.timber.height, metric)}: {' + '.join(jig.timber.pieces)}"
    for k, line in enumerate(
        (
            f"Board: {jig.board.name}, {at_least(jig.board.length, 0.1):.1f} m; it hangs through"
            f" {millimetres(jig.board.sag)} under the tool.",
            f"With guard and shroud FITTED the cutter stands {both(jig.reach)} below the board, the cup takes"
            f" {both(jig.smoothing)} more: blocks {both(jig.below)} high on a spot at the level wanted bring"
            " the"
            f" floor there. A wheel worn to {both(jig.worn)} is done. If your reach differs, add the"
            " difference to"
            " every block.",
            f"Two blocks of {timber}, a screw in the top of each. Find each spot, brush it clean, turn the"
            " screw out"
            " until block and screw are as high as the list says there, measured with a rule. The board lies"
            " over two"
            " spots of a pair; turn it about one block to sweep the high spot between them.",
            f"Stick: {stick_words(jig)} long, must pass under the board everywhere. {number(jig.litres)}"
            " litres,"
            f" {both(jig.deepest)} at the deepest.",
        ),
        start=1,
    ):
        paper.text(line, f"{k}", 9.2)
    rows = []
    for s in jig.spots:
        x, y = place(s.station, s.offset)
        screw = s.block - jig.timber.height
        rows.append([
            s.name, f"{x:.2f}", f"{y:.2f}", deep(s.block, metric), deep(screw, metric),
            *tie_cells(s.ties, metric=metric),
        ])  # fmt: skip
    small = unit(metric, True)
    heads = ["spot|", f"x|{name}", f"y|{name}", f"HIGH|{small}", f"screw out|{small}"]
    widths = [6, 9, 9, 9, 11]
    paper.table([*heads, *tie_heads(metric)], [*widths, *tie_widths(metric)], rows)
    if jig.pairs:
        paper.text("Pairs for the board: " + ", ".join(f"{a}-{b}" for a, b in jig.pairs) + ".", bold=True)


def _draw_floor(axes: Axes, jig: FloorJig) -> None:
    """Side view of one pair: equal heights at the level wanted."""
    first, second = jig.pairs[0] if jig.pairs else (jig.spots[0].name, jig.spots[-1].name)
    a, b = (next(s for s in jig.spots if s.name == name) for name in (first, second))
    span = max(((a.station - b.station) ** 2 + (a.offset - b.offset) ** 2) ** 0.5, 0.1)
    below = jig.below * MM
    thick = jig.board.thickness * MM
    rise = jig.deepest * MM
    import numpy as np

    x = np.linspace(0, span, 120)
    ends = below - a.block * MM, below - b.block * MM
    ground = np.interp(x, [0, span], ends) + rise * np.exp(-(((x - span / 2) / (span * 0.16)) ** 2))
    axes.fill_between(x, -10, np.minimum(ground, 0), color="#d6d4d0", lw=0)
    axes.fill_between(
        x, 0, ground, where=ground > 0, facecolor="white", edgecolor=ink.INK, hatch="/////", lw=0
    )
    axes.plot(x, ground, color=ink.INK, lw=1.1)
    axes.plot([0, span], [0, 0], color=ink.INK, lw=0.8, ls=(0, (6, 3)))
    axes.fill_between([-0.1, span + 0.1], below, below + thick, facecolor=TIMBER, edgecolor=ink.INK, lw=0.9)
    for place, spot, end in ((0.0, a, ends[0]), (span, b, ends[1])):
        axes.add_patch(box(place - 0.04, end, 0.08, spot.block * MM, TIMBER))
        axes.annotate(
            "",
            (place - 0.1 if place == 0 else place + 0.1, end),
            (place - 0.1 if place == 0 else place + 0.1, below),
            arrowprops=ARROW,
        )
        axes.text(
            place - 0.13 if place == 0 else place + 0.13,
            (end + below) / 2,
            f"{spot.name}\n{both(spot.block)}",
            ha="right" if place == 0 else "left",
            va="center",
            **ink.SMALL,
        )
    axes.text(
        span / 2,
        -4,
        "level wanted; heights are drawn larger than lengths",
        ha="center",
        va="top",
        path_effects=ink.halo(2.2),
        **ink.SMALL,
    )
    axes.text(
        span / 2,
        below + thick / 2,
        f"board over {first} and {second}, {span:.2f} m",
        ha="center",
        va="center",
        **ink.SMALL,
    )
    axes.set_xlim(-span * 0.35, span * 1.35)
    axes.set_ylim(-12, below + thick + 8)
    axes.set_axis_off()
