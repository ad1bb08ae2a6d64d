"""The layers of a profile. Axes count metres along the line and site heights in metres."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Any

import numpy as np

from crestcut.deliver import ink
from crestcut.deliver.colours import CONCRETE, SHALLOWEST
from crestcut.deliver.report import Report
from crestcut.deliver.section import Section
from crestcut.grid import BoolArray, FloatArray
from crestcut.travel.records import Contact
from crestcut.units import both, millimetres

if TYPE_CHECKING:
    from matplotlib.axes import Axes

SLAB = tuple((c / 255.0) * 0.5 + 0.47 for c in CONCRETE)
CUT_HATCH = "/////"
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
    axes.plot(section.s, section.ground, color=ink.INK, lw=1.4, zorder=5)
    if track:
        axes.plot(section.s, section.track, zorder=4, **TRACK_STYLE)


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
    finished = np.where(gone, section.finished, np.nan)
    axes.plot(section.s, finished, zorder=5, **(FINISHED_STYLE if words else {"color": ink.INK, "lw": 0.8}))
    if not words:
        return
    _cut_depth(axes, section, depth)


def _cut_depth(axes: Axes, section: Section, depth: FloatArray) -> None:
    """The greatest depth in view, away from the gap's dimension, told in the corner below."""
    s0, s1 = axes.get_xlim()
    shown = np.where((section.s > s0) & (section.s < s1), depth, 0.0)
    deep = np.flatnonzero(shown >= shown.max() - 0.0002)
    right = _dimension_side(axes, section) > 0
    k = int(deep[np.argmin(np.abs(section.s[deep] - (section.at - (0.02 if right else -0.02))))])
    axes.annotate(
        f"cut {both(float(shown[k]))}",
        (section.s[k], section.finished[k]),
        xytext=(0.30 if right else 0.70, 0.07), textcoords="axes fraction",
        arrowprops={"arrowstyle": "-", "color": ink.INK, "lw": 0.7, "shrinkA": 0, "shrinkB": 0},
        ha="right" if right else "left", va="center", zorder=12, path_effects=ink.halo(2.4), **ink.BODY,
    )  # fmt: skip


def draw_vehicle(axes: Axes, section: Section) -> None:
    """Body in outline and wheels on the ground; the wheels away from the section are dashed."""
    from matplotlib.patches import Circle, Polygon

    axes.add_patch(
        Polygon(
            section.body, closed=True, facecolor="#f3f2ef", edgecolor=ink.SOFT, lw=0.9, zorder=3, alpha=0.9
        )
    )
    for wheel in sorted(section.wheels, key=lambda w: w.near):
        style = "-" if wheel.near else (0, (2, 2))
        face = "white" if wheel.near else "none"
        tyre = Circle(
            (wheel.s, wheel.z),
            wheel.radius,
            fc=face,
            ec=ink.INK,
            lw=1.2 if wheel.near else 0.7,
            ls=style,
            zorder=6,
        )
        axes.add_patch(tyre)
        if wheel.near:
            axes.add_patch(
                Circle((wheel.s, wheel.z), 0.55 * wheel.radius, fc="none", ec=ink.SOFT, lw=0.7, zorder=6)
            )
            axes.plot(wheel.s, wheel.z, marker="+", ms=5, mew=0.8, color=ink.INK, zorder=7)


def draw_plates(axes: Axes, section: Section, names: bool) -> None:
    """The underside: parts that the section passes through thick, others thin."""
    s0, s1 = axes.get_xlim()
    for plate in section.plates:
        axes.plot(
            plate.s, plate.z, color=ink.INK, lw=2.2 if plate.cut else 0.9, solid_capstyle="butt", zorder=8
        )
        if not (names and plate.cut):
            continue
        near, far = sorted(plate.s)
        if far < s0 or near > s1:
            continue
        middle = (max(near, s0) + min(far, s1)) / 2
        middle = s0 + 0.12 * (s1 - s0) if near < s0 and far > s1 else middle
        share = (middle - plate.s[0]) / (plate.s[1] - plate.s[0]) if plate.s[1] != plate.s[0] else 0.5
        z = plate.z[0] + share * (plate.z[1] - plate.z[0])
        axes.annotate(
            plate.name, (middle, z), xytext=(0, 5), textcoords="offset points", ha="center", va="bottom",
            zorder=12, path_effects=ink.halo(2.2), annotation_clip=True, **ink.BODY,
        )  # fmt: skip


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
    axes.plot(section.s, steel, zorder=3, **STEEL_STYLE)
    return True


def _dimension_side(axes: Axes, section: Section) -> int:
    """+1 where the dimension of the gap stands to the right of the low point, -1 to the left."""
    s0, s1 = axes.get_xlim()
    return 1 if section.at < s0 + 0.62 * (s1 - s0) else -1


def dimension_gap(axes: Axes, section: Section, contact: Contact | None) -> None:
    """The gap or overlap at the low point, dimensioned beside it: arrows from outside where it is narrow."""
    if contact is None:
        return
    wide, tall = np.ptp(axes.get_xlim()), float(np.ptp(axes.get_ylim()))
    side = _dimension_side(axes, section)
    foot = section.at + side * 0.10 * wide
    low, high = sorted((section.z_ground, section.z_low))
    for z in (low, high):
        axes.plot([section.at, foot + side * 0.012 * wide], [z, z], color=ink.INK, lw=0.6, zorder=10)
    axes.plot(section.at, section.z_ground, zorder=11, path_effects=ink.halo(2.6), **CONTACT_STYLE)
    inside = high - low > 0.16 * tall
    bare = (low + high) / 2 if inside else high + 0.085 * tall
    text = _clear_of_ground(section, foot, foot + side * 0.30 * wide, bare, 0.045 * tall)
    text = min(text, axes.get_ylim()[1] - 0.05 * tall)
    if inside:
        for a, b in pairwise((low, high, low)):
            axes.annotate("", (foot, b), (foot, a), arrowprops=ARROW, zorder=10)
        if text > bare:
            axes.plot([foot, foot], [high, text], color=ink.INK, lw=0.9, zorder=10)
    else:
        axes.annotate("", (foot, high), (foot, text), arrowprops=ARROW, zorder=10)
        axes.annotate("", (foot, low), (foot, low - 0.085 * tall), arrowprops=ARROW, zorder=10)
    axes.annotate(
        f"{'overlap' if contact.gap < 0 else 'gap'} {both(abs(contact.gap))}",
        (foot, text), xytext=(5 * side, 0), textcoords="offset points", ha="left" if side > 0 else "right",
        va="center", fontweight="bold", fontsize=9, color=ink.INK, zorder=12, path_effects=ink.halo(2.6),
    )  # fmt: skip


def _clear_of_ground(section: Section, start: float, end: float, z: float, air: float) -> float:
    """``z``, or as much higher as text between two stations needs to stand above slab and underside."""
    low, high = sorted((start, end))
    under = section.ground[(section.s >= low) & (section.s <= high)]
    if np.isnan(under).all() or z - air > np.nanmax(under):
        return z
    plates = [max(p.z) for p in section.plates if p.cut and min(p.s) < high and max(p.s) > low]
    return float(max(z, np.nanmax(under) + air, *(p + air for p in plates)))


def legend_handles(report: Report, steel: bool) -> list[Any]:
    """What the lines mean, only those that are drawn."""
    from matplotlib.lines import Line2D
    from matplotlib.patches import Patch

    handles: list[Any] = [
        Line2D([], [], color=ink.INK, lw=1.4, label="slab as it is, under the low point"),
        Line2D([], [], label="slab in the nearer wheel track", **TRACK_STYLE),
        Line2D([], [], color=ink.INK, lw=2.2, label="underside at this station"),
        Line2D([], [], label="clearance line: lowest reach, all ways", **REACH_STYLE),
    ]
    if report.plan is not None and report.plan.deepest > 0:
        handles.append(
            Patch(facecolor="white", edgecolor=ink.INK, lw=0.0, hatch=CUT_HATCH, label="to be cut")
        )
        handles.append(Line2D([], [], label="finished surface", **FINISHED_STYLE))
    if steel and report.job.slab.steel_depth is not None:
        depth = millimetres(report.job.slab.steel_depth, 0)
        handles.append(Line2D([], [], label=f"top of the steel, given as {depth} down", **STEEL_STYLE))
    return handles
