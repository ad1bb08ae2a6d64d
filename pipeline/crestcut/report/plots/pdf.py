"""Sheets as one PDF: lines, letters and areas as vectors, every mm of a sheet a mm of the page.

Drawn by the library that draws all other sheets, on axes that cover the page and count mm: it turns them
into the page's points by one affine map, to a thousandth of a point, so no layout library is needed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.paper import MM_INCH
from crestcut.report.pictures import ink
from crestcut.report.pictures.plan_window import Window
from crestcut.report.plots.items import (
    CAPITAL,
    HAIR,
    PALE,
    POINT,
    Area,
    Box,
    Hatch,
    Item,
    Sheet,
    Stroke,
    Words,
)
from crestcut.report.sheets.paper import put
from crestcut.study import Identity

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure


def write_pdf(sheets: Sequence[Sheet], about: Identity, path: Path) -> None:
    """One page a sheet. Same input, same bytes."""
    # a line keeps every bend that is over a fiftieth of a millimetre
    style = {"path.simplify": True, "path.simplify_threshold": 0.05}
    with ink.book(path, about, style) as pdf:
        for sheet in sheets:
            pdf.savefig(figure_of(sheet))


def figure_of(sheet: Sheet) -> Figure:
    """One sheet as a page."""
    wide, tall = sheet.size
    figure = ink.new_figure(tall / MM_INCH, wide / MM_INCH)
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0), xlim=(0.0, wide), ylim=(0.0, tall))
    axes.set_autoscale_on(False)
    axes.set_axis_off()
    order = 1.0
    for item in sheet.items:
        order += 1.0
        _draw(figure, axes, item, order, None)
    for item in sheet.ground if sheet.view is not None else ():
        order += 1.0
        _draw(figure, axes, item, order, sheet.view.box if sheet.view else None)
    return figure


def _draw(figure: Figure, axes: Axes, item: Item, order: float, box: Box | None) -> None:
    """box : what shows of the item, mm; None: all."""
    if isinstance(item, Words):
        _words(figure, item, order)
        return
    if isinstance(item, Area):
        for artist in _area(item if box is None else _within(item, box), order, axes):
            axes.add_artist(artist)
        return
    line = _stroke(item, order)
    axes.add_artist(line)
    if box is not None:
        from matplotlib.patches import Rectangle

        x0, y0, x1, y1 = box
        line.set_clip_path(Rectangle((x0, y0), x1 - x0, y1 - y0, transform=axes.transData))


def _within(item: Area, box: Box) -> Area:
    parts = (Window(*box).clip(ring) for ring in item.rings)
    return replace(item, rings=tuple(np.vstack([p, p[:1]]) for p in parts if p is not None))


def _words(figure: Figure, item: Words, order: float) -> None:
    turn = math.radians(item.turn)
    down = item.height / 2 if item.up == "middle" else 0.0
    x, y = item.at[0] + down * math.sin(turn), item.at[1] - down * math.cos(turn)
    style: dict[str, Any] = {}
    if item.clear:
        style["bbox"] = {"facecolor": "white", "edgecolor": "none", "pad": 0.8}
    tall = float(figure.get_size_inches()[1])
    put(
        figure, x / MM_INCH, tall - y / MM_INCH, item.text, fontsize=item.height / CAPITAL / POINT,
        color=item.colour, ha=item.across, va="baseline", rotation=item.turn, rotation_mode="anchor",
        fontweight="bold" if item.bold else "normal", zorder=-1.0 if item.colour == PALE else order, **style,
    )  # fmt: skip


def _stroke(item: Stroke, order: float) -> Any:
    from matplotlib.lines import Line2D

    pen = item.pen / POINT
    dash: Any = (0, tuple(d / item.pen for d in item.dash)) if item.dash else "-"  # in widths of the line
    return Line2D(
        item.at[:, 0], item.at[:, 1], lw=pen, ls=dash, color=item.colour, zorder=order,
        solid_capstyle="butt", dash_capstyle="butt", solid_joinstyle="round",
    )  # fmt: skip


def _area(item: Area, order: float, axes: Axes) -> list[Any]:
    from matplotlib.collections import LineCollection
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path as Outline

    if not item.rings:
        return []
    outline = Outline.make_compound_path(*(Outline(ring, closed=True) for ring in item.rings))
    made: list[Any] = []
    if item.fill is not None:
        made.append(PathPatch(outline, facecolor=item.fill, lw=0.0, zorder=order))
    if item.hatch is not None:
        lines = LineCollection(hatched(item, item.hatch), linewidths=HAIR / POINT, colors=[ink.SOFT])
        lines.set_zorder(order)
        lines.set_clip_path(PathPatch(outline, transform=axes.transData))
        made.append(lines)
    return made


def hatched(item: Area, hatch: Hatch) -> list[np.ndarray]:
    """Lines right across an area, mm, each (2, 2); from the paper's corner, so that neighbours' join."""
    turn = math.radians(hatch.angle)
    along, up = np.array([math.cos(turn), math.sin(turn)]), np.array([-math.sin(turn), math.cos(turn)])
    rings = np.vstack(item.rings)
    turned = rings @ np.stack([along, up], axis=1)
    (a0, b0), (a1, b1) = turned.min(axis=0), turned.max(axis=0)
    steps = range(math.ceil(b0 / hatch.apart), math.floor(b1 / hatch.apart) + 1)
    return [np.array([a0 * along, a1 * along]) + k * hatch.apart * up for k in steps]
