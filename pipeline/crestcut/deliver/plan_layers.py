"""The layers of a plan: relief, depths, holes, line, tracks, areas, marks, coordinates.

Axes count grid u, v in metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from crestcut.deliver import ink
from crestcut.deliver.colours import CONCRETE, SHALLOWEST, depth_colours
from crestcut.deliver.report import Report
from crestcut.grid import FloatArray
from crestcut.travel.records import Poses
from crestcut.units import millimetres

if TYPE_CHECKING:
    from matplotlib.axes import Axes

RELIEF = 3.0  # how many times steeper the shading takes the ground to be
SUN = np.array([-0.55, 0.60, 0.58])  # from the upper left, as maps have it
HATCH_MISSING, HATCH_KEEP = "xxxx", "////"
TRACK_STYLE: dict[str, Any] = {"color": ink.INK, "lw": 0.7, "ls": (0, (5, 2.5))}


@dataclass(frozen=True)
class Window:
    """A part of the plan, grid u, v in metres."""

    u0: float
    v0: float
    u1: float
    v1: float

    @property
    def width(self) -> float:
        """Along travel, m."""
        return self.u1 - self.u0

    @property
    def height(self) -> float:
        """Across travel, m."""
        return self.v1 - self.v0

    def grown(self, by: float) -> Window:
        """With a margin on every side, m."""
        return Window(self.u0 - by, self.v0 - by, self.u1 + by, self.v1 + by)

    def fitted(self, aspect: float) -> Window:
        """Grown about its middle to the width : height of the paper."""
        extra_u = max(self.height * aspect - self.width, 0.0) / 2
        extra_v = max(self.width / aspect - self.height, 0.0) / 2
        return Window(self.u0 - extra_u, self.v0 - extra_v, self.u1 + extra_u, self.v1 + extra_v)


def draw_map(
    axes: Axes, report: Report, depth: FloatArray, picture: NDArray[np.uint8], window: Window, detail: bool
) -> None:
    """All layers; ``detail`` numbers every contour and leaves out what only the whole slab needs."""
    axes.set_facecolor("white")
    axes.set_xticks([])
    axes.set_yticks([])
    _ground(axes, report, picture, window)
    _missing(axes, report)
    _coordinates(axes, report, window)
    _contours(axes, report, depth, detail)
    _keeps(axes, report)
    _tracks(axes, report)
    _line(axes, report, detail)
    _marks(axes, report)
    _worst(axes, report)
    axes.set_aspect("equal", adjustable="box")
    axes.set_xlim(window.u0, window.u1)
    axes.set_ylim(window.v0, window.v1)
    ink.watermark(axes, report)


def shading(height: FloatArray, cell: float) -> FloatArray:
    """Brightness (ny, nx) of a matt surface lit from the upper left: 1 level ground, NaN not measured."""
    if min(height.shape) < 2:
        return np.where(np.isnan(height), np.nan, 1.0)
    along, across = np.gradient(height, cell, axis=1), np.gradient(height, cell, axis=0)
    sun = SUN / np.linalg.norm(SUN)
    bright = (sun[2] - RELIEF * (sun[0] * along + sun[1] * across)) / np.sqrt(
        1 + RELIEF**2 * (along**2 + across**2)
    )
    level = bright / sun[2]
    # The rim of a hole has no slope; it is drawn as level ground.
    return np.asarray(np.where(np.isnan(height), np.nan, np.nan_to_num(level, nan=1.0)), dtype=float)


def ground_picture(report: Report, depth: FloatArray) -> NDArray[np.uint8]:
    """(ny, nx, 4) sRGB and opacity: concrete in relief, paler where not slab, depths in colour."""
    height = report.surface.height
    light = np.clip(0.55 + 0.45 * shading(height.values, height.frame.cell), 0.6, 1.16)
    # Ground that is not slab is paler: it is there, but it is not for cutting.
    grey = np.array(CONCRETE, dtype=float)
    colour = np.where(report.surface.slab[..., None], grey, 0.55 * grey + 0.45 * 255)
    colour *= light[..., None]
    cut = np.nan_to_num(depth) >= SHALLOWEST
    deepest = report.plan.deepest if report.plan is not None else 0.0
    colour[cut] = depth_colours(depth[cut], deepest) * (0.5 + 0.5 * light[cut])[:, None]
    picture = np.zeros((*height.frame.shape, 4), np.uint8)
    picture[..., :3] = np.clip(np.nan_to_num(colour), 0, 255)
    picture[..., 3] = np.where(height.measured, 255, 0)
    return picture


def _ground(axes: Axes, report: Report, picture: NDArray[np.uint8], window: Window) -> None:
    cell = report.surface.height.frame.cell
    ny, nx = picture.shape[:2]
    i0, i1 = (int(np.clip(round(u / cell) + k, 0, nx)) for u, k in ((window.u0, -1), (window.u1, 2)))
    j0, j1 = (int(np.clip(round(v / cell) + k, 0, ny)) for v, k in ((window.v0, -1), (window.v1, 2)))
    if i1 <= i0 or j1 <= j0:
        return
    extent = ((i0 - 0.5) * cell, (i1 - 0.5) * cell, (j0 - 0.5) * cell, (j1 - 0.5) * cell)
    axes.imshow(picture[j0:j1, i0:i1], extent=extent, origin="lower", interpolation="nearest", zorder=1)


def _nodes(report: Report) -> tuple[FloatArray, FloatArray]:
    frame = report.surface.height.frame
    u, v = (np.arange(n, dtype=np.float64) * frame.cell for n in frame.shape[::-1])
    return u, v


def _missing(axes: Axes, report: Report) -> None:
    """Holes inside what the grid covers: hatched, and said in the key."""
    missing = ~report.surface.height.measured
    if not missing.any() or min(missing.shape) < 2:
        return
    u, v = _nodes(report)
    shown = axes.contourf(
        u, v, missing.astype(float), levels=[0.5, 1.5], colors="none", hatches=[HATCH_MISSING], zorder=2
    )
    shown.set_edgecolor(ink.FAINT)
    axes.contour(u, v, missing.astype(float), levels=[0.5], colors=[ink.SOFT], linewidths=0.5, zorder=2)


def contour_levels(depth: FloatArray) -> FloatArray:
    """Depths with a contour, metres: 1, 2 or 5 mm apart, at most eight."""
    deepest = float(np.nanmax(depth, initial=0.0))
    if deepest < 0.001:
        return np.zeros(0)
    step = next((s for s in (0.001, 0.002, 0.005) if deepest / s <= 8), ink.nice_step(deepest, 8))
    return np.arange(1, int(deepest / step + 1e-6) + 1, dtype=np.float64) * step


def _contours(axes: Axes, report: Report, depth: FloatArray, detail: bool) -> None:
    filled = np.nan_to_num(depth)
    if filled.max(initial=0.0) < SHALLOWEST or min(filled.shape) < 2:
        return
    u, v = _nodes(report)
    edge = axes.contour(
        u, v, filled, levels=[SHALLOWEST], colors=[ink.INK], linewidths=1.3 if detail else 0.9, zorder=6
    )
    edge.set_path_effects(ink.halo(2.6 if detail else 1.8))
    levels = contour_levels(depth)
    if not detail or len(levels) == 0:
        return
    # Dark lines on the light half of the ramp, light ones on the dark half.
    shades = [ink.INK if level < 0.5 * levels[-1] else ink.PALE for level in levels]
    lines = axes.contour(u, v, filled * 1000, levels=levels * 1000, colors=shades, linewidths=0.6, zorder=6)
    for label in axes.clabel(lines, fmt="%g", fontsize=6.8, inline=True, inline_spacing=1.5):
        label.set_color(ink.INK)
        label.set_path_effects(ink.halo(2.2))
        label.set_zorder(9)
    j, i = np.unravel_index(int(filled.argmax()), filled.shape)
    axes.plot(u[i], v[j], marker="+", ms=6, mew=1.0, color=ink.INK, zorder=9, path_effects=ink.halo())
    axes.annotate(
        f"deepest {millimetres(float(filled.max()))}",
        (u[i], v[j]), xytext=(6, -9), textcoords="offset points",
        zorder=12, path_effects=ink.halo(2.4), fontsize=7.4, fontweight="bold", color=ink.INK,
    )  # fmt: skip


def _keeps(axes: Axes, report: Report) -> None:
    from matplotlib.patches import Polygon

    frame = report.surface.height.frame
    for keep in report.keeps:
        area = frame.to_grid(keep.area)
        axes.add_patch(
            Polygon(area, closed=True, fill=False, hatch=HATCH_KEEP, edgecolor=ink.SOFT, lw=0.0, zorder=5)
        )
        axes.add_patch(Polygon(area, closed=True, fill=False, edgecolor=ink.INK, lw=1.1, zorder=7))
        limit = "no cut" if keep.deepest <= 0 else f"at most {millimetres(keep.deepest)}"
        axes.text(
            *_pair(area.mean(axis=0)), f"{keep.kind}\n{limit}",
            ha="center", va="center", zorder=12, clip_on=True,
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


def _tracks(axes: Axes, report: Report) -> None:
    for edge in wheel_paths(report):
        axes.plot(edge[:, 0], edge[:, 1], zorder=7, path_effects=ink.halo(1.5), **TRACK_STYLE)


def _line(axes: Axes, report: Report, detail: bool) -> None:
    uv = report.surface.height.frame.to_grid(report.line.xy)
    axes.plot(
        uv[:, 0],
        uv[:, 1],
        color=ink.INK,
        lw=1.4,
        ls=(0, (9, 2, 1.5, 2)),
        zorder=8,
        path_effects=ink.halo(2.4),
    )
    if detail:
        return
    n = len(uv)
    for share in (0.12, 0.88):
        k = int(share * (n - 2))
        axes.annotate(
            "", _pair(uv[min(k + max(n // 60, 1), n - 1)]), _pair(uv[k]), zorder=8,
            arrowprops={"arrowstyle": "-|>", "color": ink.INK, "lw": 1.4, "shrinkA": 0, "shrinkB": 0},
        )  # fmt: skip
    for point, name, side in ((_pair(uv[0]), "start", "right"), (_pair(uv[-1]), "end", "left")):
        axes.plot(*point, marker="|", ms=9, mew=1.4, color=ink.INK, zorder=8)
        axes.annotate(
            name, point, xytext=(4 if side == "right" else -4, 4), textcoords="offset points", zorder=12,
            ha="left" if side == "right" else "right", path_effects=ink.halo(2.2), **ink.SMALL,
        )  # fmt: skip


def _marks(axes: Axes, report: Report) -> None:
    frame = report.surface.height.frame
    for mark in report.marks:
        at = _pair(frame.to_grid(mark.xy))
        axes.plot(*at, marker="o", ms=6.5, mfc="white", mec=ink.INK, mew=1.2, zorder=11)
        axes.plot(*at, marker="+", ms=6.5, mew=0.9, color=ink.INK, zorder=11)
        axes.annotate(
            mark.name, at, xytext=(5, 4), textcoords="offset points", zorder=12, path_effects=ink.halo(2.4),
            fontsize=8.5, fontweight="bold", color=ink.INK, annotation_clip=True,
        )  # fmt: skip


def _worst(axes: Axes, report: Report) -> None:
    worst = report.before.worst
    if worst is None:
        return
    at = _pair(report.surface.height.frame.to_grid(worst.xy))
    axes.plot(*at, marker="D", ms=7, mfc="none", mec=ink.INK, mew=1.5, zorder=11, path_effects=ink.halo(3.2))
    say = "overlap" if worst.gap < 0 else "gap"
    axes.annotate(
        f"worst: {say} {millimetres(abs(worst.gap))}", at, xytext=(9, 7), textcoords="offset points",
        zorder=12, path_effects=ink.halo(2.6), fontsize=7.4, fontweight="bold", color=ink.INK,
        annotation_clip=True,
    )  # fmt: skip


def frame_on(axes: Axes, window: Window) -> None:
    """Shows on the whole slab what is enlarged below."""
    from matplotlib.patches import Rectangle

    axes.add_patch(
        Rectangle(
            (window.u0, window.v0),
            window.width,
            window.height,
            fill=False,
            edgecolor=ink.INK,
            lw=0.8,
            ls=":",
            zorder=10,
        )
    )


def _coordinates(axes: Axes, report: Report, window: Window) -> None:
    """Lines of equal x and y in the scan's own coordinates and unit, numbered at the edge."""
    frame, scan = report.surface.height.frame, report.scan.frame
    corners = np.array([[u, v] for u in (window.u0, window.u1) for v in (window.v0, window.v1)])
    plan = scan.site_to_plan(frame.to_site(corners))
    middle = plan.mean(axis=0)
    step = ink.nice_step(max(window.width, window.height) / float(scan.plan_scale.mean()), 12)
    taken: list[tuple[float, float]] = []
    for axis in (0, 1):
        low, high = plan[:, axis].min(), plan[:, axis].max()
        for value in np.arange(np.ceil(low / step), np.floor(high / step) + 1) * step:
            ends = _clipped(report, window, axis, float(value), middle, float(np.ptp(plan, axis=0).max()))
            if ends is None:
                continue
            axes.plot(ends[:, 0], ends[:, 1], color=ink.SOFT, lw=0.35, zorder=4)
            text = f"{'xy'[axis]} {value:.{ink.decimals_for(step)}f}"
            _edge_label(axes, window, ends, text, taken)


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
    axes: Axes, window: Window, ends: FloatArray, text: str, taken: list[tuple[float, float]]
) -> None:
    """Number a line where it leaves the window at the bottom or left; skip what would overlap."""
    inch = window.width / ink.axes_width(axes)
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


def legend_handles(report: Report) -> list[Any]:
    """What the signs mean, only those that are drawn."""
    from matplotlib.lines import Line2D
    from matplotlib.patches import Patch

    sign: dict[str, Any] = {"color": ink.INK, "ls": "none", "mfc": "none"}
    handles: list[Any] = [
        Line2D([], [], color=ink.INK, lw=1.4, ls=(0, (9, 2, 1.5, 2)), label="line of travel"),
        Line2D([], [], label="wheel tracks", **TRACK_STYLE),
        Line2D([], [], marker="D", ms=6, mew=1.4, label="worst point", **sign),
    ]
    if report.plan is not None and report.plan.deepest > 0:
        handles.append(Line2D([], [], color=ink.INK, lw=1.3, label="edge of the cut"))
    if report.marks:
        handles.append(Line2D([], [], marker="o", ms=6, mew=1.1, label="mark", **sign))
    if report.keeps:
        handles.append(Patch(fill=False, hatch=HATCH_KEEP, edgecolor=ink.SOFT, label="keep area"))
    if not report.surface.height.measured.all():
        handles.append(Patch(fill=False, hatch=HATCH_MISSING, edgecolor=ink.FAINT, label="not measured"))
    if (report.surface.height.measured & ~report.surface.slab).any():
        red, green, blue = (0.55 * c / 255 + 0.45 for c in CONCRETE)
        handles.append(
            Patch(facecolor=(red, green, blue), edgecolor=ink.FAINT, lw=0.5, label="ground, not slab")
        )
    return handles
