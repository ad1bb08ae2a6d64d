"""Lines of equal x and y on a plan, numbered at its edge."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.report.pictures import ink
from crestcut.report.pictures.plan_window import Window
from crestcut.study import Report

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def draw_coordinates(axes: Axes, report: Report, window: Window) -> None:
    """Lines of equal x and y in the scan's own coordinates and unit, numbered at the edge."""
    frame, scan = report.surface.height.frame, report.scan.frame
    corners = np.array([[u, v] for u in (window.u0, window.u1) for v in (window.v0, window.v1)])
    plan = scan.site_to_plan(frame.to_site(corners))
    middle = plan.mean(axis=0)
    step = ink.nice_step(max(window.width, window.height) / float(scan.plan_scale.mean()), 12)
    taken: list[tuple[float, float]] = []
    runs: list[FloatArray] = []
    inch = window.width / ink.axes_size(axes)[0]
    for axis in (0, 1):
        low, high = plan[:, axis].min(), plan[:, axis].max()
        for value in np.arange(np.ceil(low / step), np.floor(high / step) + 1) * step:
            ends = _clipped(report, window, axis, float(value), middle, float(np.ptp(plan, axis=0).max()))
            if ends is None:
                continue
            runs.append(ends)
            places = ink.decimals_for(step)
            text = f"{'xy'[axis]} {round(float(value), places) + 0.0:.{places}f}"  # no "-0.0"
            _edge_label(axes, window, inch, ends, text, taken)
    ink.strokes(axes, runs, colors=ink.SOFT, linewidths=0.35, zorder=4)


def _clipped(
    report: Report, window: Window, axis: int, value: float, middle: FloatArray, reach: float
) -> FloatArray | None:
    """The part of one coordinate line inside the window, (2, 2) grid u, v; None if it misses."""
    ends = np.tile(middle, (2, 1)).astype(float)
    ends[:, axis] = value
    ends[:, 1 - axis] += (-2 * reach, 2 * reach)
    a, b = report.surface.height.frame.to_grid(report.scan.frame.plan_to_site(ends))
    low, high = 0.0, 1.0
    for k, (near, far) in enumerate(((window.u0, window.u1), (window.v0, window.v1))):
        run = b[k] - a[k]
        if abs(run) < 1e-12:
            if not near <= a[k] <= far:
                return None
            continue
        t = sorted(((near - a[k]) / run, (far - a[k]) / run))
        low, high = max(low, t[0]), min(high, t[1])
    return None if low >= high else np.array([a + low * (b - a), a + high * (b - a)])


def _edge_label(
    axes: Axes, window: Window, inch: float, ends: FloatArray, text: str, taken: list[tuple[float, float]]
) -> None:
    """Number a line where it leaves the window at the bottom or left; skip what would overlap."""
    flat = abs(ends[1, 0] - ends[0, 0]) > abs(ends[1, 1] - ends[0, 1])
    u, v = ends[np.argmin(ends[:, 0] if flat else ends[:, 1])]
    at_left, at_bottom = u - window.u0 < 1e-6, v - window.v0 < 1e-6
    if any(abs(u - a) < 0.62 * inch and abs(v - b) < 0.13 * inch for a, b in taken) or not (
        at_left or at_bottom
    ):
        return
    taken.append((float(u), float(v)))
    place: dict[str, Any] = {"ha": "right", "va": "center"} if at_left else {"ha": "center", "va": "top"}
    shift = (-0.05 * inch, 0.0) if at_left else (0.0, -0.05 * inch)
    axes.text(u + shift[0], v + shift[1], text, fontsize=6.6, color=ink.SOFT, **place)
