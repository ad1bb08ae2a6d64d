"""``plan.png``: the slab from above with its depths to remove, turned so that travel runs left to right."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray
from crestcut.base.units import INCH, both, inches, litres, number
from crestcut.chance import left_words
from crestcut.cut import mass_of
from crestcut.report.exchange.mesh import depth_grid
from crestcut.report.pictures import ink, plan_layers
from crestcut.report.pictures.colours import SHALLOWEST, depth_colours
from crestcut.report.pictures.plan_contours import contour_levels
from crestcut.report.pictures.plan_relief import ground_picture
from crestcut.report.pictures.plan_window import Window
from crestcut.report.words.ends import grinding_is_no_cure
from crestcut.report.words.summary import estimate_words, verdict_line
from crestcut.study import Report
from crestcut.work import cuts_along

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

FOOT_ROOM, GAP = 0.62, 0.58  # in
MOST_CUTS = 3  # far apart, each shown by itself
BETWEEN = 0.75  # in, between two
WIDE = ink.PAGE_WIDTH - 2 * ink.MARGIN - 0.55  # in: room left of the map for coordinates
KEY_WIDTH = 2.75  # in
Box = tuple[float, float, float, float]  # left, bottom, width, height, in


@dataclass(frozen=True)
class Layout:
    """Places on the page: whole slab, enlarged cut (None if nothing is cut), key; ``page``: height, in."""

    page: float
    whole: Box
    cut: Box | None
    key: Box


def draw_plan(report: Report, path: Path) -> None:
    """Write the plan. Coordinates on it are the scan's own; distances and depths say their unit."""
    with ink.styled():
        figure = plan_figure(report)
        ink.save(figure, path, report.identity)


def plan_figure(report: Report) -> Figure:
    """The plan as a matplotlib figure."""
    depth = depth_grid(report)
    whole = whole_window(report)
    cuts = cut_windows(report, depth)
    words = verdict_line(report)
    layout = _layout(whole, len(cuts) > 0, ink.head_room(report, words))
    figure = ink.new_figure(layout.page)
    page = ink.paper(figure)
    ink.head(figure, report, "Plan: the slab from above; travel runs from left to right", words)
    picture = ground_picture(report, depth)
    panel = _panel(figure, page, report, depth, picture, whole, layout.whole)
    if layout.cut is not None:
        left, bottom, width, height = layout.cut
        each = (width - BETWEEN * (len(cuts) - 1)) / max(len(cuts), 1)
        for k, cut in enumerate(cuts):
            box = left + k * (each + BETWEEN), bottom, each, height
            plan_layers.frame_on(panel, cut.fitted(each / height))
            name = "The cut, enlarged" if len(cuts) == 1 else f"Cut {k + 1}, enlarged"
            _panel(figure, page, report, depth, picture, cut, box, name)
    _key(page, report, layout, contour_levels(depth))
    ink.foot(figure, report)
    return figure


def _panel(
    figure: Figure,
    page: Axes,
    report: Report,
    depth: FloatArray,
    picture: NDArray[np.uint8],
    window: Window,
    box: Box,
    detail: str = "",
) -> Axes:
    """The whole slab, or a cut enlarged, called ``detail``."""
    left, bottom, width, height = box
    shown = window.fitted(width / height)
    axes = ink.axes_at(figure, *box)
    plan_layers.draw_map(axes, report, depth, picture, shown, detail=bool(detail))
    page.text(left, bottom + height + 0.07, detail or "The whole slab", **ink.BODY, fontweight="bold")
    ink.scale_bar(page, left + width, bottom + height + 0.03, shown.width / width, min(3.4, width - 1.9))
    return axes


def whole_window(report: Report) -> Window:
    """Everything measured, with a little air."""
    frame = report.surface.height.frame
    rows, columns = np.nonzero(report.surface.height.measured)
    if len(rows) == 0:
        return Window(0.0, 0.0, frame.size[0] or 1.0, frame.size[1] or 1.0)
    return Window(
        columns.min() * frame.cell,
        rows.min() * frame.cell,
        columns.max() * frame.cell,
        rows.max() * frame.cell,
    ).grown(0.05)


def cut_windows(report: Report, depth: FloatArray) -> list[Window]:
    """All that is to be cut, with air; of cuts far apart along the line each by itself, the first ones of
    them: together they would be specks on a long lane."""
    cell = report.surface.height.frame.cell
    cut = np.nan_to_num(depth) >= SHALLOWEST
    found = []
    for first, last in cuts_along(cut, cell)[:MOST_CUTS]:
        rows = np.flatnonzero(np.any(cut[:, first : last + 1], axis=1))
        around = Window(first * cell, rows.min() * cell, last * cell, rows.max() * cell)
        found.append(around.grown(max(0.12, 0.08 * (around.u1 - around.u0))))
    return found


def _layout(whole: Window, with_cut: bool, head: float) -> Layout:
    """Long slabs: whole above, cut below. Square ones: side by side. The page grows to fit."""
    left = ink.MARGIN + 0.55
    aspect = whole.width / whole.height
    if not with_cut:
        tall = min(max((WIDE - KEY_WIDTH - 0.3) / aspect, 2.6), 5.4)
        bottom = FOOT_ROOM
        key = (left + WIDE - KEY_WIDTH, bottom, KEY_WIDTH, tall)
        return Layout(bottom + tall + head, (left, bottom, WIDE - KEY_WIDTH - 0.3, tall), None, key)
    low = 3.5
    tall = min(max(WIDE / aspect, 1.3), 4.6)
    bottom = FOOT_ROOM + low + GAP
    cut = (left, FOOT_ROOM, WIDE - KEY_WIDTH - 0.3, low)
    key = (left + WIDE - KEY_WIDTH, FOOT_ROOM, KEY_WIDTH, low)
    return Layout(bottom + tall + head, (left, bottom, WIDE, tall), cut, key)


def _key(page: Axes, report: Report, layout: Layout, levels: FloatArray) -> None:
    left, bottom, width, height = layout.key
    top = ink.key(page, left, bottom + height, plan_layers.signs(report), 2, width) - 0.22
    if report.plan is not None and report.plan.deepest > 0:
        colour_bar(page, report.plan.deepest, levels, left, top - 0.3, width)
        top -= 0.85
    page.text(
        left, top, ink.wrapped(_facts(report)), **{**ink.BODY, "fontsize": 7.2}, va="top", linespacing=1.35
    )


def colour_bar(
    page: Axes,
    deepest: float,
    levels: FloatArray,
    left: float,
    bottom: float,
    width: float,
    words: str = "depth to remove: mm (contours) below, inches above",
) -> None:
    """The ramp from 0 to the deepest: contours in millimetres under it, inches over it."""
    from matplotlib.patches import Rectangle

    tall, small = 0.13, {**ink.SMALL, "fontsize": 6.8, "ha": "center"}
    middles = (np.arange(256) + 0.5) / 256 * deepest
    page.imshow(
        depth_colours(middles, deepest)[None],
        aspect="auto",
        extent=(left, left + width, bottom, bottom + tall),
    )
    page.add_artist(Rectangle((left, bottom), width, tall, fill=False, edgecolor=ink.INK, lw=0.8))
    at = left + levels / deepest * width
    ink.strokes(
        page, [np.array([(x, bottom), (x, bottom + tall)]) for x in at], colors="white", linewidths=0.7
    )
    ticks = [np.array([(x, bottom), (x, bottom - 0.03)]) for x in at]
    for x, level in zip(at, levels, strict=True):
        page.text(x, bottom - 0.05, f"{level * 1000:g}", va="top", **small)
    step = next(s for s in (1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0) if deepest / INCH / s <= 5)
    for size in np.arange(0, deepest / INCH + 1e-9, step) * INCH:
        x = left + size / deepest * width
        ticks.append(np.array([(x, bottom + tall), (x, bottom + tall + 0.03)]))
        page.text(x, bottom + tall + 0.05, inches(size).removesuffix(" in") if size else "0", **small)
    ink.strokes(page, ticks, colors=ink.INK, linewidths=0.8)
    page.text(left + width / 2, bottom - 0.17, words, va="top", **{**small, "fontsize": 7.0})


def _facts(report: Report) -> list[str]:
    facts = []
    plan = report.plan
    if grinding_is_no_cure(report):
        facts.append("Grinding is not the cure here: shown is all that the limits allow")
    if plan is not None and plan.deepest > 0:
        facts.append(f"Deepest {both(plan.deepest)}")
        facts.append(f"{number(plan.area)} m2, {litres(plan.volume)}, {number(mass_of(plan.volume))} kg")
    if plan is not None and plan.deepest > 0 and report.left is not None:
        facts.append(f"After it: {left_words(report.left)}")
    if plan is not None and not plan.feasible:
        facts.append(f"Not enough: {both(plan.short_by)} short; limited by {'; '.join(plan.binding)}")
    worst = report.before.worst
    if worst is not None:
        x, y = report.plan_point(worst.xy)
        gap = report.least_clearance
        say = f"{'overlap' if gap < 0 else 'gap'} {both(abs(gap))}"
        facts.append(f"Worst point x {x:.3f}, y {y:.3f}: {say} under the {worst.part}")
        facts += estimate_words(report)
    facts.append(f"Coordinates in {report.scan.frame.words}")
    return facts
