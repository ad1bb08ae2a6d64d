"""The map sheet: the cut among its marks, and the cut alone with names and depths. Told in black and white:
depth by numbered lines and greys, edges by line weights, what stays by hatching.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from crestcut.report.exchange.cad import ring_of
from crestcut.report.pictures import ink
from crestcut.report.sheets.paper import SIDE, Paper
from crestcut.report.sheets.ties import deep, name_axes
from crestcut.work import SetOut, Site

if TYPE_CHECKING:
    from matplotlib.axes import Axes

MM = 1000.0
TALLEST = 7.2  # in
LIGHT, DARK = 0.97, 0.66  # greys of the shallowest and the deepest: letters stay readable on both
DASHED: tuple[int, tuple[float, ...]] = (0, (4, 2))


def draw_map(paper: Paper, out: SetOut, site: Site) -> None:
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
    at, metric = paper.at + 0.1, paper.sheet.metric
    sizes = _widths(np.ptp(whole, axis=0) + 0.5, np.ptp(cut, axis=0) + 0.2, paper.room - 1.1, TALLEST)
    left = SIDE + 0.45
    for k, (wide, high, box, pad) in enumerate(((*sizes[0], whole, 0.25), (*sizes[1], cut, 0.1))):
        axes = ink.axes_at(paper.figure, left, paper.tall - at - high, wide, high)
        low, high = box.min(axis=0) - pad, box.max(axis=0) + pad
        axes.set_xlim(low[0], high[0])
        axes.set_ylim(low[1], high[1])
        _ground(axes, site, depth, out.every, named=k == 1, metric=metric)
        _lines(axes, out, named=k == 1)
        _dots(axes, out, named=k == 1, metric=metric)
        if k == 0:
            draw_marks(axes, out.marks)
        name_axes(axes, paper.sheet.words.station, metric)
        if k == 1:
            axes.set_ylabel("")
        axes.grid(color=ink.FAINT, lw=0.3)
        left += wide + 0.65
    paper.at = at + max(sizes[0][1], sizes[1][1]) + 0.52
    every = "3/16 in" if not metric else f"{out.every * MM:.0f} mm"
    paper.text(
        f"Circles D: drill dots with their depths, {'mm' if metric else 'in'}; D1 is the deepest. Thick"
        " line: stop"
        " line. Dashed line inside it: where board or hand end and the feather begins. Lines across the"
        " greys:"
        f" every {every} of depth, darker is deeper. S: strings, between their arrows' ends. Crosses: marks."
        " Dash-dotted: line of travel; dotted: where the tyres run. Hatched: not measured.",
        size=9.0,
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


def _ground(axes: Axes, site: Site, depth: np.ndarray, every: float, named: bool, metric: bool) -> None:
    """Depths in greys between the axes' limits, a numbered line at every step; what was not measured
    hatched."""
    low, high = zip(axes.get_xlim(), axes.get_ylim(), strict=True)
    rows, columns = (
        slice(max(int(np.searchsorted(at, low[k])) - 1, 0), int(np.searchsorted(at, high[k])) + 1)
        for k, at in ((1, site.offset), (0, site.station))
    )
    station, offset, part = site.station[columns], site.offset[rows], depth[rows, columns]
    if min(part.shape) < 2:
        return
    unknown = np.isnan(site.ground[rows, columns]).astype(float)
    if unknown.any():
        axes.contourf(station, offset, unknown, levels=[0.5, 2.0], colors="none", hatches=["...."])
    most = float(depth.max())
    levels = np.arange(every, most, every)
    steps = [1e-4, *levels, most + 1e-6]
    greys = [f"{v:.3f}" for v in np.linspace(LIGHT, DARK, len(steps) - 1)]
    axes.contourf(station, offset, part, levels=steps, colors=greys)
    if named and len(levels):
        weights = [0.6 if k % 2 == 0 else 1.3 for k in range(len(levels))]  # every second one is heavier
        drawn = axes.contour(station, offset, part, levels=levels, colors=ink.INK, linewidths=weights)
        words = {v: f"{v * MM:.0f}" if metric else deep(v, False) for v in drawn.levels}
        labels = axes.clabel(drawn, fmt=words, fontsize=8, inline_spacing=1, colors="black")
        for label in labels:
            label.set_path_effects(ink.halo(2.0))


def _dots(axes: Axes, out: SetOut, named: bool, metric: bool) -> None:
    """Each with its name over it and its depth under it; small circles without where they are not named."""
    if not out.dots:
        return
    places = np.array([[d.station, d.offset] for d in out.dots])
    axes.plot(
        places[:, 0], places[:, 1], "o", ms=4.2 if named else 1.6, mfc="white", mec=ink.INK,
        mew=1.1 if named else 0.8, ls="", zorder=6,
    )  # fmt: skip
    for dot in out.dots if named else ():
        name_dot(axes, (dot.station, dot.offset), dot.name, deep(dot.depth, metric))


def name_dot(axes: Axes, at: tuple[float, float], name: str, depth: str, bold: bool = True) -> None:
    """Name over and depth under the sign of a place that is set out."""
    for words, up, weight in ((name, 3.5, "bold" if bold else "normal"), (depth, -3.5, "normal")):
        axes.annotate(
            words, at, xytext=(0, up), textcoords="offset points", ha="center",
            va="bottom" if up > 0 else "top", fontsize=8, fontweight=weight, path_effects=ink.halo(2.2),
            zorder=7,
        )  # fmt: skip


def draw_marks(axes: Axes, marks: Sequence[tuple[str, float, float]], size: float = 11) -> None:
    """Crosses with the names of marks; each a name, station and offset, m.  size : of a cross, points."""
    for name, station, offset in marks:
        axes.plot(station, offset, "+", ms=size, mew=1.6, color=ink.INK)
        axes.annotate(
            name,
            (station, offset),
            xytext=(5, 4),
            textcoords="offset points",
            fontsize=10,
            fontweight="bold",
            path_effects=ink.halo(2.4),
        )


def _lines(axes: Axes, out: SetOut, named: bool) -> None:
    """Line of travel, tyre lines, stop lines, the core's ends; and the strings where they are named."""
    axes.axhline(0, color=ink.INK, lw=1.0, ls=(0, (9, 2, 1.5, 2)))
    for _, offset in out.tyres[:1]:
        for place in (offset, -offset):
            axes.axhline(place, color=ink.INK, lw=0.8, ls=(0, (1, 2)))
    for rows, style in ((out.outline, {"lw": 2.2}), (out.core, {"lw": 1.0, "ls": DASHED})):
        if ring := ring_of(rows):
            axes.plot(*zip(*ring, ring[0], strict=True), color=ink.INK, **style)
    ends = axes.get_xlim()
    for offset, name in {s.offset: s.name for s in out.strings}.items() if named else ():
        axes.annotate(
            "", (ends[1], offset), (ends[0], offset), zorder=4,
            arrowprops={"arrowstyle": "<|-|>", "lw": 0.7, "color": ink.SOFT, "shrinkA": 0, "shrinkB": 0},
        )  # fmt: skip
        axes.annotate(
            name, (ends[1], offset), xytext=(4, 0), textcoords="offset points", va="center", fontsize=9,
            fontweight="bold", annotation_clip=False,
        )  # fmt: skip
