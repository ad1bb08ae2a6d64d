"""The layers of a profile. Axes count metres along the line and site heights in metres."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.base.grid import BoolArray
from crestcut.base.units import both, millimetres
from crestcut.report.pictures import ink
from crestcut.report.pictures.colours import CONCRETE, SHALLOWEST
from crestcut.report.pictures.labels import Room
from crestcut.report.pictures.section import Section
from crestcut.study import Report

if TYPE_CHECKING:
    from matplotlib.axes import Axes

SLAB = tuple((c / 255.0) * 0.5 + 0.47 for c in CONCRETE)
CUT_HATCH = "/////"
WIDE_GAP = 0.16  # of the drawing's height: from here the arrows of a gap stand inside it
REACH_STYLE: dict[str, Any] = {"color": ink.INK, "lw": 1.0, "ls": (0, (7, 2, 1, 2))}
FINISHED_STYLE: dict[str, Any] = {"color": ink.INK, "lw": 1.3, "ls": (0, (4, 1.6))}
CONTACT_STYLE: dict[str, Any] = {"marker": "D", "ms": 5.5, "mfc": "none", "mec": ink.INK, "mew": 1.2}
ARROW: dict[str, Any] = {
    "arrowstyle": "-|>", "color": ink.INK, "lw": 0.9, "shrinkA": 0, "shrinkB": 0, "mutation_scale": 8,
}  # fmt: skip
STEEL_STYLE: dict[str, Any] = {"color": ink.SOFT, "lw": 1.6, "ls": (0, (0.6, 2.4)), "dash_capstyle": "round"}
TRACK_STYLE: dict[str, Any] = {"color": ink.SOFT, "lw": 0.7, "ls": (0, (2, 1.6))}


def draw_ground(axes: Axes, section: Section, track: bool = True) -> None:
    """The slab in the section, filled below; the nearer wheel track thin."""
    floor = axes.get_ylim()[0]
    axes.fill_between(section.s, section.ground, floor - 1.0, color=SLAB, lw=0, zorder=1)
    ink.line(axes, np.stack([section.s, section.ground], axis=1), lw=1.4, zorder=5)
    if track:
        ink.line(axes, np.stack([section.s, section.track], axis=1), zorder=4, **TRACK_STYLE)


def runs(mask: BoolArray) -> list[tuple[int, int]]:
    """First and last index of every run of True."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], mask, [False]]).astype(int)))
    return [(int(a), int(b) - 1) for a, b in zip(edges[::2], edges[1::2], strict=True)]


def draw_missing(axes: Axes, section: Section) -> None:
    """Where the section crosses nothing measured: hatched from top to bottom, with the words."""
    z0, z1 = axes.get_ylim()
    for a, b in runs(np.isnan(section.ground)):
        if a == 0 or b == len(section.s) - 1:
            continue  # beyond the scan, not a hole in it
        axes.axvspan(
            section.s[a], section.s[b], facecolor="none", edgecolor=ink.FAINT, hatch="xxx", lw=0.0, zorder=2
        )
        middle = (section.s[a] + section.s[b]) / 2
        axes.text(
            middle,
            z0 + 0.08 * (z1 - z0),
            "not measured",
            ha="center",
            clip_on=True,
            path_effects=ink.halo(),
            **ink.SMALL,
        )


def draw_cut(axes: Axes, section: Section, words: bool) -> None:
    """What goes: hatched between the slab and the finished surface; its greatest depth here in figures."""
    depth = np.nan_to_num(section.ground - section.finished)
    gone = depth >= SHALLOWEST
    if not gone.any():
        return
    axes.fill_between(
        section.s, section.ground, section.finished, where=gone, facecolor="white", edgecolor=ink.INK,
        hatch=CUT_HATCH, lw=0.0, zorder=4,
    )  # fmt: skip
    finished = np.stack([section.s, np.where(gone, section.finished, np.nan)], axis=1)
    ink.line(axes, finished, zorder=5, **(FINISHED_STYLE if words else {"lw": 0.8}))


def cut_words(axes: Axes, section: Section, room: Room) -> None:
    """The greatest depth of the cut in view, in figures, where there is room below it."""
    depth = np.nan_to_num(section.ground - section.finished)
    s0, s1 = axes.get_xlim()
    shown = np.where((section.s > s0) & (section.s < s1), depth, 0.0)
    if shown.max(initial=0.0) < SHALLOWEST:
        return
    deep = np.flatnonzero(shown >= shown.max() - 0.0002)
    k = int(deep[np.argmin(np.abs(section.s[deep] - section.at))])
    at = (float(section.s[k]), float(section.finished[k]))
    room.put(f"cut {both(float(shown[k]))}", at, size=8.0, below=True)


def draw_vehicle(axes: Axes, section: Section) -> None:
    """Body in outline and wheels on the ground; the wheels away from the section are dashed."""
    from matplotlib.patches import Circle, Polygon

    axes.add_patch(
        Polygon(
            section.body, closed=True, facecolor="#f3f2ef", edgecolor=ink.SOFT, lw=0.9, zorder=3, alpha=0.9
        )
    )
    for wheel in sorted(section.wheels, key=lambda w: w.near):
        at, style = (wheel.s, wheel.z), "-" if wheel.near else (0, (2, 2))
        face, weight = ("white", 1.2) if wheel.near else ("none", 0.7)
        axes.add_artist(Circle(at, wheel.radius, fc=face, ec=ink.INK, lw=weight, ls=style, zorder=6))
        if wheel.near:
            axes.add_artist(Circle(at, 0.55 * wheel.radius, fc="none", ec=ink.SOFT, lw=0.7, zorder=6))
            ink.line(axes, np.array([at]), ls="none", marker="+", ms=5, mew=0.8, zorder=7)


def draw_plates(axes: Axes, section: Section, room: Room | None = None) -> None:
    """The underside: parts that the section passes through thick, others thin; named where there is room."""
    s0, s1 = axes.get_xlim()
    z0, z1 = axes.get_ylim()
    for plate in section.plates:
        ends = np.array([plate.s, plate.z]).T
        ink.line(axes, ends, lw=2.2 if plate.cut else 0.9, solid_capstyle="butt", zorder=8)
        if room is None or not plate.cut:
            continue
        s = np.linspace(min(plate.s), max(plate.s), 41)
        z = np.interp(s, *ends[np.argsort(ends[:, 0])].T)
        seen = np.flatnonzero((s > s0) & (s < s1) & (z > z0) & (z < z1))
        if len(seen) == 0:
            continue
        k = seen[len(seen) // 4] if len(seen) < 41 else seen[len(seen) // 2]
        room.put(plate.name, (float(s[k]), float(z[k])), size=8.0)


def draw_steel(axes: Axes, report: Report, section: Section) -> bool:
    """The top of the steel, where the job says how deep it lies; True if it shows."""
    depth = report.job.slab.steel_depth
    if depth is None:
        return False
    s0, s1 = axes.get_xlim()
    z0, z1 = axes.get_ylim()
    steel = section.ground - depth
    inside = (section.s > s0) & (section.s < s1) & (steel > z0) & (steel < z1)
    if not inside.any():
        return False
    ink.line(axes, np.stack([section.s, steel], axis=1), zorder=3, **STEEL_STYLE)
    return True


def _dimension_side(axes: Axes, section: Section) -> int:
    """+1 where the dimension of the gap stands to the right of the low point, -1 to the left."""
    s0, s1 = axes.get_xlim()
    return 1 if section.at < s0 + 0.62 * (s1 - s0) else -1


def dimension_gap(axes: Axes, section: Section, room: Room) -> None:
    """Extension lines and arrows of the gap or overlap at the low point: from outside where it is narrow."""
    wide, tall = np.ptp(axes.get_xlim()), float(np.ptp(axes.get_ylim()))
    side = _dimension_side(axes, section)
    foot = float(section.at + side * 0.07 * wide)
    low, high = sorted((section.z_ground, section.z_low))
    for z in (low, high):
        ends = np.array([(section.at, z), (foot + side * 0.012 * wide, z)])
        ink.line(axes, ends, lw=0.6, zorder=10)
    low_point = np.array([(section.at, section.z_ground)])
    ink.line(axes, low_point, ink.halo(2.6), ls="none", zorder=11, **CONTACT_STYLE)
    room.taken((section.at, section.z_ground), (0.08, 0.08))
    if high - low > WIDE_GAP * tall:
        reach = [((foot, low), (foot, high)), ((foot, high), (foot, low))]
    else:
        out = 0.075 * tall
        reach = [((foot, low - out), (foot, low)), ((foot, high + out), (foot, high))]
    for start, end in reach:
        axes.annotate("", end, start, arrowprops=ARROW, zorder=10)
        room.lines(np.array([start, end]), 3.0)


def gap_words(section: Section, axes: Axes, gap: float, room: Room) -> None:
    """The size of the gap or overlap, m, in figures, near its dimension."""
    foot = float(section.at + _dimension_side(axes, section) * 0.07 * np.ptp(axes.get_xlim()))
    low, high = sorted((section.z_ground, section.z_low))
    tall = float(np.ptp(axes.get_ylim()))
    level = (low + high) / 2 if high - low > WIDE_GAP * tall else high + 0.04 * tall
    text = f"{'overlap' if gap < 0 else 'gap'} {both(abs(gap))}"
    room.put(text, (foot, level), size=9.0, bold=True)


def keep_clear(room: Room, section: Section, steel: float | None) -> None:
    """Tell the room of every line in the enlargement, so that words keep off them."""
    s = section.s
    for z, weight in ((section.ground, 1.5), (section.finished, 1.2), (section.reach, 1.0)):
        room.lines(np.stack([s, z], axis=1), weight)
    if steel is not None:
        room.lines(np.stack([s, section.ground - steel], axis=1), 0.8)
    for plate in section.plates:
        room.lines(np.array([plate.s, plate.z]).T, 2.0)
    for share in (0.25, 0.5, 0.75):  # the hatching between slab and finished surface
        between = section.ground + share * (section.finished - section.ground)
        gone = section.ground - section.finished >= SHALLOWEST
        room.lines(np.stack([s, np.where(gone, between, np.nan)], axis=1), 0.4)


def signs(report: Report, steel: bool) -> list[ink.Sign]:
    """What the lines mean, only those that are drawn."""
    found: list[ink.Sign] = [
        ("line", "slab as it is, under the low point", {"color": ink.INK, "lw": 1.4}),
        ("line", "slab in the nearer wheel track", TRACK_STYLE),
        ("line", "underside at this station", {"color": ink.INK, "lw": 2.2}),
        ("line", "clearance line: lowest reach, all ways", REACH_STYLE),
        ("marker", "low point", CONTACT_STYLE),
    ]
    if report.plan is not None and report.plan.deepest > 0:
        hatch = {"facecolor": "white", "edgecolor": ink.INK, "lw": 0.0, "hatch": CUT_HATCH}
        found.append(("patch", "to be cut", hatch))
        found.append(("line", "finished surface", FINISHED_STYLE))
    if steel and report.job.slab.steel_depth is not None:
        depth = millimetres(report.job.slab.steel_depth, 0)
        found.append(("line", f"top of the steel, given as {depth} down", STEEL_STYLE))
    return found
