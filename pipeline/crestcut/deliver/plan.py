"""``plan.png``: the slab from above with its depths to remove, turned so that travel runs left to right."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from crestcut.deliver import ink, plan_layers
from crestcut.deliver.colours import SHALLOWEST, depth_colourmap
from crestcut.deliver.mesh import depth_grid
from crestcut.deliver.plan_layers import Window
from crestcut.deliver.report import Report
from crestcut.deliver.summary import CONCRETE_DENSITY, number, verdict_line
from crestcut.grid import FloatArray
from crestcut.units import INCH, both, inches

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

FOOT_ROOM, GAP = 0.62, 0.58  # in
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
    import matplotlib

    with matplotlib.rc_context(ink.STYLE):
        figure = plan_figure(report)
        ink.save(figure, path)


def plan_figure(report: Report) -> Figure:
    """The plan as a matplotlib figure."""
    depth = depth_grid(report)
    whole = whole_window(report)
    cut = cut_window(report, depth)
    words = verdict_line(report)
    layout = _layout(whole, cut is not None, ink.head_room(report, words))
    figure = ink.new_figure(layout.page)
    ink.head(figure, report, "Plan: the slab from above; travel runs from left to right", words)
    picture = plan_layers.ground_picture(report, depth)
    panel = _panel(figure, report, depth, picture, whole, layout.whole, "The whole slab")
    if cut is not None and layout.cut is not None:
        plan_layers.frame_on(panel, cut.fitted(layout.cut[2] / layout.cut[3]))
        _panel(figure, report, depth, picture, cut, layout.cut, "The cut, enlarged")
    _key(figure, report, layout, plan_layers.contour_levels(depth))
    ink.foot(figure, report)
    return figure


def _panel(
    figure: Figure,
    report: Report,
    depth: FloatArray,
    picture: NDArray[np.uint8],
    window: Window,
    box: Box,
    name: str,
) -> Axes:
    left, bottom, width, height = box
    shown = window.fitted(width / height)
    axes = ink.axes_at(figure, *box)
    plan_layers.draw_map(axes, report, depth, picture, shown, detail="enlarged" in name)
    ink.text_at(figure, left, bottom + height + 0.07, name, fontweight="bold")
    ink.scale_bar(figure, left + width, bottom + height + 0.03, shown.width / width)
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


def cut_window(report: Report, depth: FloatArray) -> Window | None:
    """All that is to be cut, with air; None where nothing is."""
    cell = report.surface.height.frame.cell
    rows, columns = np.nonzero(np.nan_to_num(depth) >= SHALLOWEST)
    if len(rows) == 0:
        return None
    around = Window(columns.min() * cell, rows.min() * cell, columns.max() * cell, rows.max() * cell)
    return around.grown(max(0.12, 0.08 * (around.u1 - around.u0)))


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


def _key(figure: Figure, report: Report, layout: Layout, levels: FloatArray) -> None:
    left, bottom, width, height = layout.key
    axes = ink.axes_at(figure, left, bottom, width, height)
    axes.set_axis_off()
    handles = plan_layers.legend_handles(report)
    axes.legend(
        handles=handles, loc="upper left", bbox_to_anchor=(-0.02, 1.02), frameon=False, fontsize=7.2,
        handlelength=2.6, labelspacing=0.42, borderaxespad=0.0, ncols=2, columnspacing=1.0,
    )  # fmt: skip
    top = bottom + height - 0.16 * ((len(handles) + 1) // 2) - 0.2
    if report.plan is not None and report.plan.deepest > 0:
        _colour_bar(figure, report.plan.deepest, levels, left, top - 0.38, width)
        top -= 0.9
    text = "\n".join(
        line for fact in _facts(report) for line in textwrap.wrap(fact, 50, subsequent_indent="  ")
    )
    ink.text_at(figure, left, top, text, fontsize=7.2, va="top", linespacing=1.35)


def _colour_bar(
    figure: Figure, deepest: float, levels: FloatArray, left: float, bottom: float, width: float
) -> None:
    axes = ink.axes_at(figure, left, bottom, width, 0.13)
    ramp = np.linspace(0, 1, 256)[None, :]
    axes.imshow(ramp, cmap=depth_colourmap(), aspect="auto", extent=(0, deepest * 1000, 0, 1))
    axes.set_yticks([])
    marks = levels * 1000
    axes.vlines(marks, 0, 1, color="white", lw=0.7)
    axes.set_xticks(marks, [f"{m:g}" for m in marks])
    axes.set_xlabel("depth to remove, mm (contours) and inches", fontsize=7.0, labelpad=1.5)
    axes.tick_params(labelsize=6.8, length=2, pad=1.5)
    above = axes.twiny()
    above.set_xlim(0, deepest / INCH)
    step = next(s for s in (1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0) if deepest / INCH / s <= 5)
    ticks = np.arange(0, deepest / INCH + 1e-9, step)
    above.set_xticks(ticks, [inches(t * INCH).removesuffix(" in") if t else "0" for t in ticks])
    above.tick_params(labelsize=6.8, length=2, pad=1.0)


def _facts(report: Report) -> list[str]:
    facts = []
    plan = report.plan
    if plan is not None and plan.deepest > 0:
        litres = plan.volume * 1000
        facts.append(f"Deepest {both(plan.deepest)}")
        facts.append(
            f"{number(plan.area)} m2, {number(litres)} litres, {number(litres / 1000 * CONCRETE_DENSITY)} kg"
        )
    if plan is not None and not plan.feasible:
        facts.append(f"Not enough: {both(plan.short_by)} short; limited by {'; '.join(plan.binding)}")
    worst = report.before.worst
    if worst is not None:
        x, y = report.plan_point(worst.xy)
        say = "overlap" if worst.gap < 0 else "gap"
        facts.append(f"Worst point x {x:.3f}, y {y:.3f}: {say} {both(abs(worst.gap))} under the {worst.part}")
    facts.append(f"Coordinates are the scan's own, in {report.scan.frame.unit}")
    return facts
