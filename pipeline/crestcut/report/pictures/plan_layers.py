"""The layers of a plan over its ground: holes, coordinates, tracks, line, areas, marks, worst place.

Axes count grid u, v in metres.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.contact import Poses
from crestcut.report.pictures import ink
from crestcut.report.pictures.colours import CONCRETE
from crestcut.report.pictures.labels import Room
from crestcut.report.pictures.plan_contours import contour_lines, draw_contours
from crestcut.report.pictures.plan_coordinates import draw_coordinates
from crestcut.report.pictures.plan_window import Window
from crestcut.study import Report

if TYPE_CHECKING:
    from matplotlib.axes import Axes

HATCH_MISSING, HATCH_KEEP = "xxxx", "////"
LINE_STYLE: dict[str, Any] = {"color": ink.INK, "lw": 1.4, "ls": (0, (9, 2, 1.5, 2))}
TRACK_STYLE: dict[str, Any] = {"color": ink.INK, "lw": 0.7, "ls": (0, (5, 2.5))}


def draw_map(
    axes: Axes, report: Report, depth: FloatArray, picture: NDArray[np.uint8], window: Window, detail: bool
) -> None:
    """All layers; ``detail`` numbers every contour and leaves out what only the whole slab needs."""
    axes.set_facecolor("white")
    axes.set_xticks([])
    axes.set_yticks([])
    axes.set_xlim(window.u0, window.u1)
    axes.set_ylim(window.v0, window.v1)
    axes.set_autoscale_on(False)
    room = Room(axes)
    _ground(axes, picture, report.surface.height.frame.cell, window)
    _missing(axes, report, window)
    draw_coordinates(axes, report, window)
    _tracks(axes, report, room)
    _line(axes, report, detail, room)
    _keeps(axes, report, window)
    _marks(axes, report, room)
    _worst_sign(axes, report, room)
    draw_contours(axes, report, depth, detail, room)
    _worst_words(report, room)
    ink.watermark(axes, report)


def _ground(axes: Axes, picture: NDArray[np.uint8], cell: float, window: Window) -> None:
    rows, columns = window.crop(picture.shape, cell)
    shown = picture[rows, columns]
    if shown.size == 0:
        return
    extent = tuple((n - 0.5) * cell for n in (columns.start, columns.stop, rows.start, rows.stop))
    axes.imshow(shown, extent=extent, origin="lower", interpolation="nearest", aspect="auto", zorder=1)


def _missing(axes: Axes, report: Report, window: Window) -> None:
    """Holes inside what the grid covers: hatched, and said in the key."""
    from contourpy import contour_generator
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path as Outline

    frame = report.surface.height.frame
    rows, columns = window.crop(frame.shape, frame.cell)
    missing = ~report.surface.height.measured[rows, columns]
    if not missing.any() or min(missing.shape) < 2:
        return
    corner = np.array([columns.start, rows.start]) * frame.cell
    found: Any = contour_generator(z=missing.astype(float), name="serial", fill_type="OuterCode")
    outlines = [
        Outline(points * frame.cell + corner, codes)
        for points, codes in zip(*found.filled(0.5, 1.5), strict=True)
        if len(points) > 5  # a single node is a speck, and shows as one
    ]
    if outlines:
        shape = Outline.make_compound_path(*outlines)
        style: dict[str, Any] = {"facecolor": "white", "edgecolor": ink.FAINT, "zorder": 2}
        axes.add_artist(PathPatch(shape, hatch=HATCH_MISSING, lw=0.0, **style))
    edges = contour_lines(missing.astype(float), frame.cell, 0.5)
    ink.strokes(axes, [run + corner for run in edges], colors=ink.SOFT, linewidths=0.4, zorder=2)


def _keeps(axes: Axes, report: Report, window: Window) -> None:
    from matplotlib.patches import Polygon

    frame = report.surface.height.frame
    for keep in report.keeps:
        area = frame.to_grid(keep.area)
        hatch: dict[str, Any] = {"fill": False, "hatch": HATCH_KEEP, "edgecolor": ink.SOFT, "lw": 0.0}
        axes.add_artist(Polygon(area, closed=True, zorder=5, **hatch))
        axes.add_artist(Polygon(area, closed=True, fill=False, edgecolor=ink.INK, lw=1.1, zorder=7))
        limit = "no cut" if keep.deepest <= 0 else f"at most {millimetres(keep.deepest)}"
        seen = window.clip(area)
        if seen is None:
            continue
        at = (seen.min(axis=0) + seen.max(axis=0)) / 2
        axes.text(
            *_pair(at), f"{keep.kind}\n{limit}",
            ha="center", va="center", zorder=21, clip_on=True,
            path_effects=ink.halo(2.6), **ink.SMALL,
        )  # fmt: skip


def _pair(point: FloatArray) -> tuple[float, float]:
    return float(point[0]), float(point[1])


def _straightest(report: Report) -> Poses | None:
    return min(
        report.ride.poses, key=lambda p: (abs(p.variant.offset) + abs(p.variant.heading), p.variant.way !=
        "forward"),
        default=None,
    )  # fmt: skip


def wheel_paths(report: Report) -> list[FloatArray]:
    """Edges of the tyres' tracks when the line is driven true, from right to left, each (n, 2) grid u, v."""
    poses = _straightest(report)
    if poses is None or len(poses.station) == 0:
        return []
    car = report.vehicle
    edges = []
    half, wide = car.front_track / 2, car.tyre_width / 2
    for y in (-half - wide, -half + wide, half - wide, half + wide):
        rear, front = (
            (poses.rotation @ np.array([x, y, car.tyre_radius]) + poses.position)[:, :2]
            for x in (0.0, car.wheelbase)
        )
        ahead = np.argmax(np.linalg.norm(front - front[0], axis=1))
        edges.append(np.concatenate([rear, front[ahead : ahead + 1]]))
    return edges


def _tracks(axes: Axes, report: Report, room: Room) -> None:
    edges = wheel_paths(report)
    ink.strokes(
        axes, edges, ink.halo(1.5), colors=ink.INK, linewidths=TRACK_STYLE["lw"],
        linestyles=[TRACK_STYLE["ls"]], zorder=7,
    )  # fmt: skip
    for edge in edges:
        room.lines(edge, 0.6)


def _line(axes: Axes, report: Report, detail: bool, room: Room) -> None:
    uv = report.surface.height.frame.to_grid(report.line.xy)
    ink.line(axes, uv, ink.halo(2.4), zorder=8, **LINE_STYLE)
    room.lines(uv)
    if detail:
        return
    n = len(uv)
    for share in (0.12, 0.88):
        k = int(share * (n - 2))
        way = uv[min(k + max(n // 60, 1), n - 1)] - uv[k]
        turned = float(np.degrees(np.arctan2(way[1], way[0]))) - 90.0
        ink.line(axes, uv[k : k + 1], ls="none", marker=(3, 0, turned), ms=7, zorder=8)
    for point, name, side in ((_pair(uv[0]), "start", "right"), (_pair(uv[-1]), "end", "left")):
        ink.line(axes, np.array([point]), ls="none", marker="|", ms=9, mew=1.4, zorder=8)
        axes.annotate(
            name, point, xytext=(4 if side == "right" else -4, 4), textcoords="offset points", zorder=12,
            ha="left" if side == "right" else "right", path_effects=ink.halo(2.2), **ink.SMALL,
        )  # fmt: skip


def _marks(axes: Axes, report: Report, room: Room) -> None:
    frame = report.surface.height.frame
    for mark in report.marks:
        at = _pair(frame.to_grid(mark.xy))
        ink.line(axes, np.array([at]), ls="none", marker="o", ms=6.5, mfc="white", mew=1.2, zorder=11)
        ink.line(axes, np.array([at]), ls="none", marker="+", ms=6.5, mew=0.9, zorder=11)
        axes.annotate(
            mark.name, at, xytext=(5, 4), textcoords="offset points", zorder=12, path_effects=ink.halo(2.4),
            fontsize=8.5, fontweight="bold", color=ink.INK, annotation_clip=True,
        )  # fmt: skip
        room.taken(at, (0.2, 0.15))


def _worst_sign(axes: Axes, report: Report, room: Room) -> None:
    worst = report.before.worst
    if worst is None:
        return
    at = _pair(report.surface.height.frame.to_grid(worst.xy))
    ink.line(axes, np.array([at]), ink.halo(3.2), ls="none", marker="D", ms=7, mfc="none", mew=1.5, zorder=11)
    room.taken(at, (0.09, 0.09))


def _worst_words(report: Report, room: Room) -> None:
    worst = report.before.worst
    if worst is None:
        return
    gap = report.least_clearance
    at = _pair(report.surface.height.frame.to_grid(worst.xy))
    if room.shows(at):
        room.put(f"worst: {'overlap' if gap < 0 else 'gap'} {millimetres(abs(gap))}", at, bold=True)


def frame_on(axes: Axes, window: Window) -> None:
    """Shows on the whole slab what is enlarged below."""
    from matplotlib.patches import Rectangle

    style: dict[str, Any] = {"fill": False, "edgecolor": ink.INK, "lw": 0.8, "ls": ":"}
    axes.add_artist(Rectangle((window.u0, window.v0), window.width, window.height, zorder=10, **style))


def signs(report: Report) -> list[ink.Sign]:
    """What the signs mean, only those that are drawn."""
    ring: dict[str, Any] = {"color": ink.INK, "mfc": "none"}
    found: list[ink.Sign] = [
        ("line", "line of travel", LINE_STYLE),
        ("line", "wheel tracks", TRACK_STYLE),
        ("marker", "worst point", {"marker": "D", "ms": 6, "mew": 1.4, **ring}),
    ]
    if report.plan is not None and report.plan.deepest > 0:
        found.append(("line", "edge of the cut", {"color": ink.INK, "lw": 1.3}))
    if report.marks:
        found.append(("marker", "mark", {"marker": "o", "ms": 6, "mew": 1.1, **ring}))
    if report.keeps:
        found.append(("patch", "keep area", {"fill": False, "hatch": HATCH_KEEP, "edgecolor": ink.SOFT}))
    if not report.surface.height.measured.all():
        hatch = {"fill": False, "hatch": HATCH_MISSING, "edgecolor": ink.FAINT}
        found.append(("patch", "not measured", hatch))
    if (report.surface.height.measured & ~report.surface.slab).any():
        pale = tuple(0.55 * c / 255 + 0.45 for c in CONCRETE)
        found.append(("patch", "ground, not slab", {"facecolor": pale, "edgecolor": ink.FAINT, "lw": 0.5}))
    return found
