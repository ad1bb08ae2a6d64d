"""``floor_plan.png``: a floor from above, twice: what to grind and to fill, and how high it stands
everywhere.
"""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.errors import visible
from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.floor import Spot, worth
from crestcut.report.pictures import ink
from crestcut.report.pictures.colours import CONCRETE, depth_colours
from crestcut.report.pictures.plan_contours import contour_levels
from crestcut.report.view.floor_report import FloorReport
from crestcut.report.words.floor import asked_words, figure_words, verdict_line

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

FOOT_ROOM, KEY_ROOM, GAP = 0.45, 1.25, 0.75  # in
SMOOTH = 0.03  # m: height lines are drawn over heights smoothed so far, so that they can be read
LINES = 9  # height lines at most to either side
BELOW = "#3b6ea5"  # of low spots: far from the ramp of depths in hue, and dashed where it counts
NAMED = 12  # spots with their names on the map, the largest first


def draw_floor_plan(report: FloorReport, path: Path) -> None:
    """Write the plan. Coordinates are the scan's own."""
    with ink.styled():
        ink.save(floor_figure(report), path, report.identity)


def floor_figure(report: FloorReport) -> Figure:
    """The plan as a figure."""
    grid = report.judged.surface.height
    wide, tall = (max(v, 0.3) for v in grid.frame.size)
    width = (ink.PAGE_WIDTH - 2 * ink.MARGIN - GAP - 0.35) / 2
    high = float(np.clip(width * tall / wide, 2.2, 6.2))
    said, reasons = _said(report)
    head = 1.0 + 0.142 * max(len(said), len(reasons) + 1)
    figure = ink.new_figure(FOOT_ROOM + KEY_ROOM + high + head)
    page = ink.paper(figure)
    _head(figure, report, said, reasons)
    bottom = FOOT_ROOM + KEY_ROOM
    left = ink.MARGIN + 0.35
    for k, (name, draw) in enumerate(
        (("What to grind, what to fill", _work), ("How high it stands", _heights))
    ):
        x = left + k * (width + GAP)
        axes = ink.axes_at(figure, x, bottom, width, high)
        _frame(axes, report, width / high)
        draw(axes, report)
        _watermark(axes, report)
        page.text(x, bottom + high + 0.07, name, **ink.BODY, fontweight="bold")
        per_inch = float(np.ptp(axes.get_xlim())) / width
        ink.scale_bar(page, x + width, bottom + high + 0.03, per_inch)
    _key(page, report, left, bottom - 0.42, width)
    base = report.job.base
    files = ", ".join(f.path.name for f in report.scan.files)
    source = visible(f"scan {files} | job {base.path.name}")
    ink.text_at(
        figure, ink.MARGIN, 0.17,
        textwrap.shorten(f"{source}, {base.date_words} | crestcut {report.version}", 120),
        fontsize=6.8, color=ink.SOFT,
    )  # fmt: skip
    ink.text_at(
        figure, ink.PAGE_WIDTH - ink.MARGIN, 0.17, "Not field-proved: check with the straightedge.",
        fontsize=6.8, color=ink.SOFT, ha="right",
    )  # fmt: skip
    return figure


def _said(report: FloorReport) -> tuple[list[str], list[str]]:
    """Lines of the head, and of the reasons beside the stamp."""
    said = [verdict_line(report), *(figure_words(f) for f in report.judged.figures if f.asked is not None)]
    room = 105 if report.stamp else 165
    reasons = [line for r in report.release.words for line in textwrap.wrap(r, 58)]
    lines = [line for text in said for line in textwrap.wrap(f"{text[:1].upper()}{text[1:]}", room)]
    if not report.stamp:
        return lines[:6], []
    return lines[:6], [*reasons[:4], "and more: see the sheets"] if len(reasons) > 5 else reasons


def _head(figure: Figure, report: FloorReport, said: list[str], reasons: list[str]) -> None:
    high = float(figure.get_size_inches()[1])
    ink.text_at(figure, ink.MARGIN, high - 0.40, report.title, fontsize=14, fontweight="bold")
    ink.text_at(figure, ink.MARGIN, high - 0.58, "\n".join(said), fontsize=8.0, va="top", linespacing=1.25)
    stamp = report.stamp
    if not stamp:
        return
    box = {"boxstyle": "square,pad=0.35", "facecolor": "white", "edgecolor": ink.INK, "linewidth": 2.0}
    right = ink.PAGE_WIDTH - ink.MARGIN
    style: dict[str, Any] = {"ha": "right", "va": "center", "fontsize": 15, "fontweight": "bold", "bbox": box}
    ink.text_at(figure, right - 0.08, high - 0.38, stamp, **style)
    ink.text_at(
        figure, right, high - 0.60, "\n".join(reasons), ha="right", va="top", fontsize=6.8, linespacing=1.2
    )


def _frame(axes: Axes, report: FloorReport, aspect: float) -> None:
    """Limits in grid u, v, lengths alike both ways; ticks in the scan's own coordinates where the raster is
    not turned against them, else in metres from its corner.
    """
    frame = report.judged.surface.height.frame
    u, v = frame.size
    extra_u, extra_v = max(v * aspect - u, 0.0) / 2, max(u / aspect - v, 0.0) / 2
    axes.set_xlim(-extra_u, u + extra_u)
    axes.set_ylim(-extra_v, v + extra_v)
    axes.tick_params(labelsize=7)
    if abs(frame.angle) > 1e-6:
        return
    own, scale = report.plan_point(frame.origin), report.scan.frame.plan_scale
    for axis, start, per, (low, high) in (
        (axes.xaxis, own[0], scale[0], axes.get_xlim()), (axes.yaxis, own[1], scale[1], axes.get_ylim()),
    ):  # fmt: skip
        step = ink.nice_step((high - low) / per, 8)
        first = np.ceil((start + low / per) / step) * step
        values = np.arange(first, start + high / per + 1e-9, step)
        axis.set_ticks((values - start) * per)
        axis.set_ticklabels([f"{value:.{ink.decimals_for(step)}f}" for value in values])


def _work(axes: Axes, report: FloorReport) -> None:
    levelling, frame = report.judged.levelling, report.judged.surface.height.frame
    depth = levelling.depth.values
    _image(axes, report, depth_colours(depth, levelling.deepest))
    u, v = np.arange(frame.shape[1]) * frame.cell, np.arange(frame.shape[0]) * frame.cell
    levels = contour_levels(depth)
    filled = np.nan_to_num(depth)
    if levelling.deepest > 0:
        axes.contour(u, v, filled, levels=[2e-5], colors=[ink.INK], linewidths=1.1)
        if len(levels):
            drawn = axes.contour(u, v, filled, levels=levels, colors="white", linewidths=0.7)
            labels = axes.clabel(drawn, fmt=lambda z: f"{z * 1000:g}", fontsize=6.5, colors=ink.INK)
            for label in labels:
                label.set_path_effects(ink.halo(2.0))
    fill = np.nan_to_num(levelling.fill.values)
    if fill.max(initial=0.0) > 0:
        axes.contourf(u, v, fill, levels=[2e-5, 1.0], colors="none", hatches=["...."])
        axes.contour(u, v, fill, levels=[2e-5], colors=[BELOW], linewidths=1.2, linestyles="--")
    placed: list[tuple[float, float]] = []
    by_size = sorted((*worth(levelling.high), *worth(levelling.low)), key=lambda s: -s.volume)
    for spot in by_size[:NAMED]:
        _name(axes, report, spot, placed)
    _straightedge(axes, report)
    for keep in report.keeps:
        corners = frame.to_grid(np.array([*keep.corners, keep.corners[0]]))
        ink.line(axes, corners, lw=1.0, ls=":")
    _marks(axes, report)


def _name(axes: Axes, report: FloorReport, spot: Spot, placed: list[tuple[float, float]]) -> None:
    """The name and amount of a spot, beside its box so that no contour hides; the name alone where another's
    stands in the way. placed : where names stand already.
    """
    frame = report.judged.surface.height.frame
    at = frame.to_grid(spot.xy)
    u0, v0, u1, v1 = spot.box
    verb = "grind" if spot.stands >= 0 else "fill"
    ink.line(axes, at[None], ink.halo(2.5), ls="none", marker="x", ms=5, mew=1.2, zorder=9)
    low, high = axes.get_ylim()
    inch = (high - low) / ink.axes_size(axes)[1]
    above = v1 + 0.25 * inch < high
    place = (u0 + u1) / 2, v1 + 0.03 * inch if above else v0 - 0.03 * inch
    if v1 - v0 > 1.2 * inch or (not above and v0 - 0.25 * inch < low):  # so large: over its own cross
        above, place = True, (float(at[0]), float(at[1]) + 0.06 * inch)
    words = f"{spot.name}: {verb} {millimetres(spot.deepest)}"
    up = "bottom" if above else "top"
    if any(abs(place[0] - u) < 1.3 * inch and abs(place[1] - v) < 0.15 * inch for u, v in placed):
        words, place, up = spot.name, (float(at[0]) + 0.05 * inch, float(at[1])), "center"
    placed.append(place)
    axes.text(
        *place, words, ha="left" if words == spot.name else "center", va=up, clip_on=True,
        path_effects=ink.halo(2.6), zorder=10, **{**ink.SMALL, "fontsize": 7.5, "fontweight": "bold"},
    )  # fmt: skip


def _straightedge(axes: Axes, report: FloorReport) -> None:
    laid = report.judged.laid
    if laid is None:
        return
    ends = report.judged.surface.height.frame.to_grid(np.array([laid.first, laid.second]))
    ink.line(axes, ends, ink.halo(2.6), lw=1.6, marker="|", ms=7, mew=1.6, zorder=8, ls=(0, (6, 2)))


def _marks(axes: Axes, report: FloorReport) -> None:
    for name, xy in report.marks.items():
        at = report.judged.surface.height.frame.to_grid(xy)
        ink.line(axes, at[None], ls="none", marker="o", ms=6, mfc="white", mew=1.1, zorder=11)
        axes.annotate(
            name, (float(at[0]), float(at[1])), xytext=(5, 4), textcoords="offset points", fontsize=8,
            fontweight="bold", path_effects=ink.halo(2.4),
        )  # fmt: skip


def _heights(axes: Axes, report: FloorReport) -> None:
    """Height lines over (solid) and under (dashed, blue) the level that spots are told from."""
    from scipy.ndimage import gaussian_filter

    judged = report.judged
    grid, frame = judged.surface.height, judged.surface.height.frame
    over = grid.values - judged.levelling.general.values
    known = grid.measured
    spread = SMOOTH / frame.cell
    weight = gaussian_filter(known.astype(float), spread)
    smooth = gaussian_filter(np.nan_to_num(over), spread) / np.maximum(weight, 1e-6)
    smooth = np.where(known, smooth, np.nan)
    _image(axes, report, np.broadcast_to(np.array(CONCRETE, np.uint8), (*frame.shape, 3)))
    most = float(np.nanmax(np.abs(smooth), initial=0.0))
    step = next(
        (s for s in (0.001, 0.002, 0.005) if most / s <= LINES), ink.nice_step(max(most, 1e-4), LINES)
    )
    u, v = np.arange(frame.shape[1]) * frame.cell, np.arange(frame.shape[0]) * frame.cell
    count = int(most / step)
    over_and_under: tuple[tuple[int, dict[str, Any]], ...] = (
        (1, {"colors": ink.INK}),
        (-1, {"colors": BELOW, "linestyles": "--"}),
    )
    for sign, style in over_and_under:
        if count == 0:
            continue
        levels = np.sort(sign * np.arange(1, count + 1) * step)
        drawn = axes.contour(u, v, smooth, levels=levels, linewidths=0.8, **style)
        for label in axes.clabel(drawn, fmt=lambda z: f"{z * 1000:+g}", fontsize=6.5):
            label.set_path_effects(ink.halo(2.0))
    for line in judged.lines:
        places = frame.to_grid(line)
        ink.line(axes, places, lw=0.5, ls=":", color=ink.SOFT, marker=".", ms=3)


def _image(axes: Axes, report: FloorReport, colours: Any) -> None:
    """The floor's colours; what is not measured is white and hatched."""
    frame = report.judged.surface.height.frame
    half = frame.cell / 2
    box = (-half, frame.size[0] + half, -half, frame.size[1] + half)
    known = report.judged.surface.height.measured
    picture = np.where(known[..., None], colours, 255).astype(np.uint8)
    axes.imshow(picture, origin="lower", extent=box, interpolation="nearest", aspect="auto", zorder=0)
    missing: FloatArray = (~known).astype(float)
    if missing.any():
        u, v = np.arange(frame.shape[1]) * frame.cell, np.arange(frame.shape[0]) * frame.cell
        drawn = axes.contourf(u, v, missing, levels=[0.5, 1.5], colors="none", hatches=["xxxx"], zorder=1)
        drawn.set_edgecolor(ink.FAINT)
        drawn.set_linewidth(0.0)
        axes.contour(u, v, missing, levels=[0.5], colors=[ink.SOFT], linewidths=0.6, zorder=2)


def _watermark(axes: Axes, report: FloorReport) -> None:
    stamp = report.stamp
    if stamp:
        axes.text(
            0.5, 0.5, stamp, transform=axes.transAxes, ha="center", va="center", rotation=12, fontsize=26,
            fontweight="bold", color=ink.INK, alpha=0.14, zorder=20, clip_on=True,
        )  # fmt: skip


def _key(page: Axes, report: FloorReport, left: float, top: float, width: float) -> None:
    levelling = report.judged.levelling
    line: dict[str, Any] = {"color": ink.INK}
    signs: list[ink.Sign] = [
        ("patch", "not measured, or not judged", {"fill": False, "hatch": "xxxx", "ec": ink.FAINT})
    ]
    if levelling.deepest > 0:
        signs.append(
            ("patch", "to grind; lines are mm to remove", {"fc": "#cb6a42", "ec": ink.INK, "lw": 1.0})
        )
    if levelling.low:
        signs.append(
            ("patch", "to fill, not to grind", {"fill": False, "hatch": "....", "ec": BELOW, "ls": "--"})
        )
    if report.judged.laid is not None:
        length = report.job.wish.straightedge
        name = "straightedge" if length is None else f"straightedge of {length:g} m"
        words = f"{name} where its gap is largest: {millimetres(report.judged.laid.gap)}"
        signs.append(("line", words, {**line, "lw": 1.6, "ls": (0, (6, 2))}))
    ink.key(page, left, top, signs, 1, width)
    x = left + width + GAP
    right: list[ink.Sign] = [
        ("line", "so many mm over the floor's level", {**line, "lw": 0.9}),
        ("line", "so many mm under it", {"color": BELOW, "lw": 0.9, "ls": "--"}),
    ]
    if report.judged.lines:
        right.append(
            (
                "line",
                "line of F-number readings, 12 in apart",
                {"color": ink.SOFT, "lw": 0.6, "ls": ":", "marker": "."},
            )
        )
    foot = ink.key(page, x, top, right, 1, width)
    unit = report.scan.frame.unit
    turned = abs(report.judged.surface.height.frame.angle) > 1e-6
    said = (
        "Numbers at the rim: m from the raster's corner"
        if turned
        else f"Numbers at the rim: the scan's own, in {unit}"
    )
    page.text(
        x,
        foot - 0.12,
        f"{said}. Asked for: {asked_words(report)}.",
        va="top",
        **{**ink.SMALL, "fontsize": 7.2},
    )
