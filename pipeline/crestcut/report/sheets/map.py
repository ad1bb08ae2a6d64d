"""The two maps of the set-out sheet: the cut among its marks, and the cut alone with names and depths."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from crestcut.report.pictures import ink
from crestcut.report.pictures.colours import depth_colours
from crestcut.report.sheets.paper import SIDE, Paper
from crestcut.work import SetOut, Site

if TYPE_CHECKING:
    from matplotlib.axes import Axes

MM = 1000.0


def draw_maps(paper: Paper, out: SetOut, site: Site) -> None:
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
            draw_marks(axes, out.marks)
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
        "Circles: drill dots, D1 the deepest. Thick line: stop line. Dashed line inside it: where board or"
        " hand end and the feather begins. Contours: depth, mm. Dash-dotted: line of travel; dotted: tyres."
        " Crosses: marks.",
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
