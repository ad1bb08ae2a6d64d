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
from crestcut.deliver.labels import Room
from crestcut.deliver.plan_contours import contour_lines, draw_contours
from crestcut.deliver.report import Report
from crestcut.grid import FloatArray
from crestcut.travel.records import Poses
from crestcut.units import millimetres

if TYPE_CHECKING:
    from matplotlib.axes import Axes

RELIEF = 3.0  # how many times steeper the shading takes the ground to be
SUN = np.array([-0.55, 0.60, 0.58])  # from the upper left, as maps have it
HATCH_MISSING, HATCH_KEEP = "xxxx", "////"
LINE_STYLE: dict[str, Any] = {"color": ink.INK, "lw": 1.4, "ls": (0, (9, 2, 1.5, 2))}
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

    def clip(self, corners: FloatArray) -> FloatArray | None:
        """The part of a polygon (n, 2) that shows, as corners; None where nothing of it does.

        One side of the window at a time: Sutherland & Hodgman, Communications of the ACM 17 (1974).
        """
        inside = np.asarray(corners, dtype=float)
        for axis, sign, edge in ((0, 1, self.u0), (0, -1, self.u1), (1, 1, self.v0), (1, -1, self.v1)):
            kept = []
            for a, b in zip(inside, np.roll(inside, -1, axis=0), strict=True):
                near, far = sign * (a[axis] - edge), sign * (b[axis] - edge)
                if near >= 0:
                    kept.append(a)
                if near * far < 0:
                    kept.append(a + near / (near - far) * (b - a))
            if not kept:
                return None
            inside = np.array(kept)
        return inside

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
    axes.set_xlim(window.u0, window.u1)
    axes.set_ylim(window.v0, window.v1)
    axes.set_autoscale_on(False)
    room = Room(axes)
    _ground(axes, picture, report.surface.height.frame.cell, window)
    _missing(axes, report, window)
    _coordinates(axes, report, window)
    _tracks(axes, report, room)
    _line(axes, report, detail, room)
    _keeps(axes, report, window)
    _marks(axes, report, room)
    _worst_sign(axes, report, room)
    draw_contours(axes, report, depth, detail, room)
    _worst_words(report, room)
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


def _crop(shape: tuple[int, ...], cell: float, window: Window) -> tuple[slice, slice]:
    """Rows and columns of the grid that show in a window, with a node around them."""
    ny, nx = shape[:2]
    i0, i1 = (int(np.clip(round(u / cell) + k, 0, nx)) for u, k in ((window.u0, -1), (window.u1, 2)))
    j0, j1 = (int(np.clip(round(v / cell) + k, 0, ny)) for v, k in ((window.v0, -1), (window.v1, 2)))
    return slice(j0, j1), slice(i0, i1)


def _ground(axes: Axes, picture: NDArray[np.uint8], cell: float, window: Window) -> None:
    rows, columns = _crop(picture.shape, cell, window)
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
    rows, columns = _crop(frame.shape, frame.cell, window)
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
    say = "overlap" if worst.gap < 0 else "gap"
    at = _pair(report.surface.height.frame.to_grid(worst.xy))
    room.put(f"worst: {say} {millimetres(abs(worst.gap))}", at, bold=True)


def frame_on(axes: Axes, window: Window) -> None:
    """Shows on the whole slab what is enlarged below."""
    from matplotlib.patches import Rectangle

    style: dict[str, Any] = {"fill": False, "edgecolor": ink.INK, "lw": 0.8, "ls": ":"}
    axes.add_artist(Rectangle((window.u0, window.v0), window.width, window.height, zorder=10, **style))


def _coordinates(axes: Axes, report: Report, window: Window) -> None:
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
