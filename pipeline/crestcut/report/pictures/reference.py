"""``reference.png``: how a scan lies on its control, what check points say of its heights, and how its passes
or stations agree."""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.errors import visible
from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.report.pictures import ink
from crestcut.report.words.summary import reference_words
from crestcut.study import Report

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

REFERENCE_NAME = "reference.png"
HEIGHT, MAP_WIDTH = 7.6, 6.3  # in
LONGEST, AIR = 0.13, 0.14  # of the map: the longest arrow, air about all that is shown
ROW, MOST_ROWS = 0.21, 22  # in; rows of a list
TRIANGLE: dict[str, Any] = {"marker": "^", "ms": 8, "mfc": "white", "mec": ink.INK, "mew": 1.4}
SQUARE: dict[str, Any] = {"marker": "s", "ms": 6, "mfc": ink.INK, "mec": "white", "mew": 0.8}
DOT: dict[str, Any] = {"marker": "o", "ms": 5, "mfc": ink.INK, "mec": ink.INK}
Row = tuple[str, float, str, dict[str, Any]]  # name, m, what is said beside it, how its dot is drawn


def worth_drawing(report: Report) -> bool:
    """Whether there is more to show than one walk."""
    return report.scan.tie is not None or bool(report.checks.points) or len(report.scan.passes) > 1


def draw_reference(report: Report, path: Path) -> None:
    """Write the picture."""
    with ink.styled():
        figure = ink.new_figure(HEIGHT)
        ink.head(figure, report, "Reference: control, check points, passes", f"{reference_words(report)}.")
        placed = report.scan.tie is not None or bool(report.checks.points)
        left = ink.MARGIN
        if placed:
            _map(figure, report, (left, 0.95, MAP_WIDTH, HEIGHT - 2.35))
            left += MAP_WIDTH + 0.45
        top = HEIGHT - 1.5
        lists = {
            "Heights: made less surveyed": _heights(report),
            "Passes: height beside those before": _passes(report),
        }
        for title, rows in lists.items():
            if rows:
                top = _list(figure, title, rows, (left, top, ink.PAGE_WIDTH - ink.MARGIN - left))
        ink.foot(figure, report)
        ink.save(figure, path, report.identity)


def _map(figure: Figure, report: Report, box: tuple[float, float, float, float]) -> None:
    """North up, in own coordinates less their middle; arrows of the plan residuals, lengthened."""
    frame, tie = report.scan.frame, report.scan.tie
    grid = report.surface.height.frame
    corners = grid.to_site([(0.0, 0.0), (grid.size[0], 0.0), grid.size, (0.0, grid.size[1]), (0.0, 0.0)])
    control = np.array([p.at for p in tie.points]).reshape(-1, 3) if tie else np.empty((0, 3))
    checks = np.array([p.at for p in report.checks.points]).reshape(-1, 3)
    outline, drive = frame.site_to_plan(corners), frame.site_to_plan(report.line.xy)
    shown = np.concatenate([outline, control[:, :2], checks[:, :2]])
    middle = (shown.min(axis=0) + shown.max(axis=0)) / 2
    wide, tall = box[2], box[3]
    reach = np.ptp(shown, axis=0) / 2 * (1 + AIR)
    per_inch = float(max(reach[0] * 2 / wide, reach[1] * 2 / tall))  # own units
    axes = ink.axes_at(figure, *box)
    axes.set_xlim(-per_inch * wide / 2, per_inch * wide / 2)
    axes.set_ylim(-per_inch * tall / 2, per_inch * tall / 2)
    axes.set_facecolor("white")
    axes.fill(*(outline - middle).T, facecolor=ink.PALE, edgecolor=ink.FAINT, linewidth=0.8)
    ink.line(axes, drive - middle, lw=1.0, ls=(0, (7, 2, 1, 2)), color=ink.SOFT)
    _coordinates(axes, middle, per_inch)
    _points(axes, checks[:, :2] - middle, [visible(p.name) for p in report.checks.points], SQUARE)
    if tie is not None:
        off = np.array([p.residual[:2] for p in tie.points])
        most = float(np.hypot(*off.T).max())
        bar = ink.nice_step(max(most, 1e-4), 1)
        times = LONGEST * wide * per_inch / bar
        for at, v in zip(control[:, :2] - middle, off * times, strict=True):
            arrow = {"arrowstyle": "-|>", "lw": 1.3, "color": ink.INK, "shrinkA": 0, "shrinkB": 0}
            axes.annotate("", at + v, at, arrowprops=arrow)
        _points(axes, control[:, :2] - middle, [visible(p.name) for p in tie.points], TRIANGLE, off)
        page = ink.paper(figure)
        long, y = bar * times / per_inch, box[1] - 0.42
        ink.line(page, np.array([[box[0] + 3.9, y], [box[0] + 3.9 + long, y]]), lw=1.6)
        page.text(box[0] + 4.0 + long, y, f"{millimetres(bar)} of residual", va="center", **ink.SMALL)
        ink.key(page, box[0], y + 0.08, _signs(report), 2, 3.6)
    else:
        ink.key(ink.paper(figure), box[0], box[1] - 0.34, _signs(report), 2, 3.6)
    axes.set_xticks([])
    axes.set_yticks([])


def _signs(report: Report) -> list[ink.Sign]:
    signs: list[ink.Sign] = []
    if report.scan.tie is not None:
        signs.append(("marker", "control", TRIANGLE))
    if report.checks.points:
        signs.append(("marker", "check point", SQUARE))
    return signs


def _points(
    axes: Axes, at: FloatArray, names: Sequence[str], style: dict[str, Any], arrows: FloatArray | None = None
) -> None:
    """Each with its name, on the side that its arrow does not take."""
    for k, ((x, y), name) in enumerate(zip(at, names, strict=True)):
        axes.plot([x], [y], ls="none", zorder=5, **style)
        low = arrows is not None and arrows[k].min() > -0.4 * np.abs(arrows[k]).max()
        axes.annotate(
            name, (x, y), (6, -13) if low else (6, 5), textcoords="offset points", zorder=6,
            path_effects=ink.halo(), fontsize=8.0, fontweight="bold", color=ink.INK,
        )  # fmt: skip


def _coordinates(axes: Axes, middle: FloatArray, per_inch: float) -> None:
    """Ticks at round east and north, numbered in full."""
    step = ink.nice_step(6.0 * per_inch, 4)
    places = ink.decimals_for(step)
    small: dict[str, Any] = {**ink.SMALL, "textcoords": "offset points", "path_effects": ink.halo()}
    for k, (low, high) in enumerate((axes.get_xlim(), axes.get_ylim())):
        for value in np.arange(np.ceil((low + middle[k]) / step), (high + middle[k]) / step) * step:
            at = float(value - middle[k])
            words = f"{'EN'[k]} {value:.{places}f}"
            if k == 0:
                axes.axvline(at, color=ink.FAINT, lw=0.35, zorder=0)
                where: dict[str, Any] = {"xycoords": ("data", "axes fraction"), "ha": "left", "va": "bottom"}
                axes.annotate(words, (at, 0), (2, 3), **where, **small)
            else:
                axes.axhline(at, color=ink.FAINT, lw=0.35, zorder=0)
                where = {"xycoords": ("axes fraction", "data"), "ha": "right", "va": "bottom"}
                axes.annotate(words, (1, at), (-3, 2), **where, **small)


def _heights(report: Report) -> list[Row]:
    tie = report.scan.tie
    rows: list[Row] = (
        [(f"{p.name} (control)", p.residual[2], "", TRIANGLE) for p in tie.points] if tie else []
    )
    return rows + [(p.name, p.up, "", SQUARE) for p in report.checks.points if p.up is not None]


def _passes(report: Report) -> list[Row]:
    """Those of which something is known: where a station lies in height, or what a pass fits to."""
    one_file = len(report.scan.files) == 1
    rows: list[Row] = []
    for each in report.scan.passes[1:]:
        if each.residual is None:
            continue
        name = each.name.rpartition(", ")[2] if one_file else each.name
        fits = f", fits to {millimetres(each.residual)} rms"
        rows.append((name, math.nan if each.off is None else each.off[2], fits, DOT))
    return rows


def _list(figure: Figure, title: str, rows: Sequence[Row], at: tuple[float, float, float]) -> float:
    """Names, and a dot for each along a scale of millimetres; at (left, top, width), in; its foot."""
    left, top, width = at
    kept = list(rows[:MOST_ROWS])
    names = min(2.1, 0.55 + 0.065 * max(len(name) for name, *_ in kept))
    most = max([1.0, *(abs(v) * 1000 for _, v, *_ in kept if not math.isnan(v))])
    room = 0.5 + 0.066 * max(len(beside) for _, _, beside, _ in kept)
    step = ink.nice_step(2 * most, 6)
    high = step * np.ceil(most / step + 0.2)
    tall = ROW * len(kept) + 0.1
    ink.text_at(figure, left, top, title, fontweight="bold")
    axes = ink.axes_at(figure, left + names, top - 0.12 - tall, width - names - room, tall)
    axes.set_xlim(-high, high)
    axes.set_ylim(len(kept) - 0.5, -0.5)
    axes.axvline(0.0, color=ink.SOFT, lw=0.8)
    for k, (name, value, beside, style) in enumerate(kept):
        axes.axhline(k, color=ink.PALE, lw=5, zorder=0)
        axes.plot([value * 1000], [k], ls="none", **style)  # none of what is not known
        said = f"laid on{beside}" if math.isnan(value) else f"{value * 1000:+.1f}{beside}"
        row: dict[str, Any] = {
            "xycoords": ("axes fraction", "data"),
            "textcoords": "offset points",
            "va": "center",
        }
        cut = visible(name) if len(name) <= 26 else f"{visible(name)[:25]}…"
        axes.annotate(cut, (0, k), (-5, 0), ha="right", annotation_clip=False, **row, **ink.SMALL)
        axes.annotate(said, (1, k), (5, 0), annotation_clip=False, **row, **ink.SMALL)
    axes.set_yticks([])
    axes.set_xticks(np.arange(-high, high + step / 2, step))
    axes.tick_params(labelsize=7.0, length=3)
    for side in ("top", "left", "right"):
        axes.spines[side].set_visible(False)
    foot = top - 0.12 - tall - 0.34
    more = f"; {len(rows) - len(kept)} more in result.json" if len(rows) > len(kept) else ""
    ink.text_at(figure, left + names, foot, f"mm{more}", fontsize=7.0)
    return foot - 0.42
