"""The vehicle as the file describes it, drawn to scale from the side and from below, with its dimensions and
angles.
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

from crestcut.deliver.ink import FAINT, INK, SMALL, SOFT, axes_at, halo, new_figure, save, text_at
from crestcut.deliver.vehicle_dimensions import across, figures, scale_bar, upright
from crestcut.deliver.vehicle_words import KINDS, vehicle_lines
from crestcut.units import both
from crestcut.vehicle.angles import Angles, PartAngle
from crestcut.vehicle.records import Part, Vehicle

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_WIDTH, _BESIDE = 11.69, 0.55  # in: the page, and what stays free at its sides
_BODY, _TYRE, _PLATE, _SOFT_PLATE = "#e6e4df", "#4a4947", "#8c5a2b", "#c9a06c"
_ANGLE = {"approach": "#2f5d8a", "departure": "#2f5d8a", "breakover": "#6b3f77"}

__all__ = ["draw_vehicle", "vehicle_lines"]


def draw_vehicle(vehicle: Vehicle, angles: Angles, out_png: Path) -> None:
    """Write the drawing: side view above, underside below (seen through the floor from above), both to one
    scale.
    """
    ahead, behind = _reach(vehicle)
    span = ahead + behind
    room = 0.13 * span  # for the dimensions at both ends
    scale = (_WIDTH - 2 * _BESIDE) / (span + 2 * room)  # in per m
    top, below = 2.5 * vehicle.tyre_radius, 0.115 * span  # of the side view, m above and below ground
    half, over = vehicle.width / 2 + 0.085 * span, vehicle.width / 2 + 0.02 * span
    side_height, plan_height = (top + below) * scale, (half + over) * scale
    height = 1.05 + side_height + 0.35 + plan_height + 0.45
    figure = new_figure(height)
    limits = (-behind - room, vehicle.wheelbase + (ahead - vehicle.wheelbase) + room)
    plan = axes_at(figure, _BESIDE, 0.45, _WIDTH - 2 * _BESIDE, plan_height)
    side = axes_at(figure, _BESIDE, 0.45 + plan_height + 0.35, _WIDTH - 2 * _BESIDE, side_height)
    for axes, low, high in ((side, -below, top), (plan, -half, over)):
        axes.set_xlim(*limits)
        axes.set_ylim(low, high)
        axes.axis("off")
    _side(side, vehicle, angles, below)
    _plan(plan, vehicle)
    text_at(figure, _BESIDE, height - 0.42, vehicle.name, fontsize=15, fontweight="bold")
    text_at(figure, _BESIDE, height - 0.66, _headline(vehicle, angles))
    text_at(figure, _BESIDE, height - 0.86, _small_print(vehicle, angles), fontsize=7.0, color=SOFT)
    text_at(
        figure,
        _BESIDE,
        0.45 + plan_height + 0.08,
        "UNDERSIDE, seen through the floor from above; front to the right",
        **_label(),
    )
    text_at(figure, _BESIDE, height - 1.05, "SIDE", **_label())
    scale_bar(plan, limits, half)
    save(figure, out_png)


def _headline(vehicle: Vehicle, angles: Angles) -> str:
    words = [f"running clearance {both(angles.running_clearance, 0)} ({angles.running_part})"]
    for kind in KINDS:
        angle: PartAngle | None = getattr(angles, kind)
        words.append(f"{kind} {'not known' if angle is None else f'{math.degrees(angle.angle):.1f}°'}")
    return "   ·   ".join(words)


def _small_print(vehicle: Vehicle, angles: Angles) -> str:
    springs = (
        "rigid, no springs"
        if vehicle.rigid
        else "measured springs"
        if vehicle.springs.measured
        else "equal springs assumed"
    )
    return (
        f"On level ground, {angles.load.name}; {springs}. Angles are between the ground and tangents to the"
        " loaded tyres (49 CFR 523.2). Lengths in mm, to scale."
        f" {' '.join(n[:1].upper() + n[1:] + '.' for n in vehicle.notes if 'springs' not in n)}"
    )


def _label() -> dict[str, Any]:
    return {"fontsize": 7.5, "fontweight": "bold", "color": SOFT}


def _reach(vehicle: Vehicle) -> tuple[float, float]:
    """How far the vehicle reaches ahead of and behind the rear axle, m."""
    parts = vehicle.parts
    front = max(
        [p.x[1] for p in parts] + [vehicle.wheelbase + (vehicle.front_overhang or vehicle.tyre_radius)]
    )
    rear = max([-p.x[0] for p in parts] + [vehicle.rear_overhang or vehicle.tyre_radius])
    return front, rear


def _side(axes: Axes, vehicle: Vehicle, angles: Angles, below: float) -> None:
    from matplotlib.patches import Circle

    length, radius = vehicle.wheelbase, vehicle.tyre_radius
    ahead, behind = _reach(vehicle)
    x0, x1 = axes.get_xlim()
    axes.plot([x0, x1], [0, 0], color=INK, lw=1.0, zorder=3)
    _body(axes, vehicle, ahead, behind)
    for kind in KINDS:
        _draw_angle(axes, getattr(angles, kind), vehicle)
    for x in (0.0, length):
        axes.add_patch(Circle((x, radius), radius, facecolor=_TYRE, edgecolor="white", lw=1.0, zorder=4))
        axes.add_patch(Circle((x, radius), 0.55 * radius, facecolor="#d9d7d2", edgecolor="none", zorder=5))
        axes.plot([x], [radius], marker="+", color=INK, ms=6, zorder=6)
    for part in vehicle.parts:
        colour = _SOFT_PLATE if part.soft else _PLATE
        axes.plot(
            part.x,
            part.z,
            color=colour,
            lw=2.6,
            solid_capstyle="butt",
            zorder=3.8 if part.name == "belly" else 7,
        )
    _heights(axes, vehicle)
    rows = (-0.36 * below, -0.72 * below)
    across(axes, 0.0, length, rows[0], f"A  wheelbase {length * 1000:.0f}")
    if vehicle.front_overhang:
        across(
            axes, length, length + vehicle.front_overhang, rows[0], f"G  {vehicle.front_overhang * 1000:.0f}"
        )
    if vehicle.rear_overhang:
        across(axes, -vehicle.rear_overhang, 0.0, rows[0], f"H  {vehicle.rear_overhang * 1000:.0f}")
    lowest = min((p for p in vehicle.parts if not p.soft and p.zone == "belly"), key=lambda p: min(p.z))
    if lowest.name != "belly":
        across(axes, lowest.x[1], length, rows[1], f"K  {(length - lowest.x[1]) * 1000:.0f}")
        across(axes, *lowest.x, rows[1], f"{lowest.name} {(lowest.x[1] - lowest.x[0]) * 1000:.0f}")
    axes.plot([0.0, 0.0], [0.0, radius], color="white", lw=0.9, zorder=6)
    axes.text(
        0.02 * (x1 - x0) * 0.3, 0.24 * radius, f"D {radius * 1000:.0f}", color="white", zorder=7, **figures()
    )


def _body(axes: Axes, vehicle: Vehicle, ahead: float, behind: float) -> None:
    """A plain band over the underside: the outline is a hint, only what was measured carries figures."""
    hard = sorted((p for p in vehicle.parts if not p.soft), key=lambda p: p.x[0])
    ends = [p for p in hard if p.zone != "belly"]
    belly = vehicle.belly_clearance
    roof = 2.35 * vehicle.tyre_radius
    points = [
        (-behind, roof * 0.72),
        (-behind, max((p.z[0] for p in ends if p.zone == "tail"), default=belly * 1.6)),
    ]
    for part in [p for p in ends if p.zone == "tail"]:
        points += [(part.x[0], part.z[0]), (part.x[1], part.z[1])]
    points += [
        (0.0, belly * 1.25),
        (0.02, belly),
        (vehicle.wheelbase - 0.02, belly),
        (vehicle.wheelbase, belly * 1.25),
    ]
    for part in [p for p in ends if p.zone == "nose"]:
        points += [(part.x[0], part.z[0]), (part.x[1], part.z[1])]
    points += [
        (ahead, max((p.z[1] for p in ends if p.zone == "nose"), default=belly * 1.6)),
        (ahead, roof * 0.72),
    ]
    points += [(ahead - 0.06, roof), (-behind + 0.06, roof)]
    axes.fill(*zip(*points, strict=True), facecolor=_BODY, edgecolor=FAINT, lw=0.8, zorder=1)
    for part in hard:
        if part.zone == "belly" and part.name != "belly":
            xs, zs = [*part.x, part.x[1], part.x[0]], [*part.z, belly + 0.01, belly + 0.01]
            axes.fill(xs, zs, facecolor="#d8cdbd", edgecolor="none", zorder=1.5)


def _draw_angle(axes: Axes, angle: PartAngle | None, vehicle: Vehicle) -> None:
    """The tangents from the tyres through the point, and the angle in figures."""
    if angle is None:
        return
    colour, radius, length = _ANGLE[angle.kind], vehicle.tyre_radius, vehicle.wheelbase
    style: dict[str, Any] = {"color": colour, "lw": 0.9, "ls": (0, (6, 3)), "zorder": 3.5}
    hubs = {"approach": [(length, 1)], "departure": [(0.0, -1)], "breakover": [(0.0, 1), (length, -1)]}[
        angle.kind
    ]
    for hub, way in hubs:
        foot = _touching(hub, way, angle, radius)
        stretch = 1.0 if angle.kind == "breakover" else 1.12
        tip = (foot[0] + stretch * (angle.x - foot[0]), foot[1] + stretch * (angle.z - foot[1]))
        axes.plot([foot[0], tip[0]], [foot[1], tip[1]], **style)
    axes.plot([angle.x], [angle.z], marker="o", ms=3.6, color=colour, zorder=8)
    words = f"{angle.kind}\n{math.degrees(angle.angle):.1f}°"
    if angle.kind == "breakover":
        axes.annotate(
            f"{angle.kind} {math.degrees(angle.angle):.1f}°",
            (angle.x, angle.z),
            (angle.x, 1.45 * radius),
            color=colour,
            fontsize=8.5,
            fontweight="bold",
            ha="center",
            va="center",
            zorder=9,
            path_effects=halo(),
            arrowprops={"arrowstyle": "-", "color": colour, "lw": 0.7},
        )
        return
    way = 1 if angle.kind == "approach" else -1
    axes.text(
        angle.x + way * 0.012 * (axes.get_xlim()[1] - axes.get_xlim()[0]),
        max(1.15 * radius, angle.z + 0.35 * radius),
        words,
        color=colour,
        fontsize=8.5,
        fontweight="bold",
        ha="left" if way > 0 else "right",
        va="center",
        zorder=9,
        linespacing=1.1,
        path_effects=halo(),
    )


def _touching(hub: float, way: int, angle: PartAngle, radius: float) -> tuple[float, float]:
    """Where the tangent through the point touches the tyre: the hub's foot turned by the tangent's slope."""
    from crestcut.vehicle.angles import tangent_angle

    slope = tangent_angle(abs(angle.x - hub), angle.z, radius)
    return hub + way * radius * math.sin(slope), radius * (1 - math.cos(slope))


def _heights(axes: Axes, vehicle: Vehicle) -> None:
    """Clearances from the ground up, one upright dimension a part, kept apart."""
    taken: list[float] = []
    span = axes.get_xlim()[1] - axes.get_xlim()[0]
    for part in sorted(vehicle.parts, key=lambda p: min(p.z)):
        if part.name == "belly":
            x = _free_place(
                (0.13 * vehicle.wheelbase, 0.87 * vehicle.wheelbase, 0.06 * vehicle.wheelbase), taken, span
            )
            z = vehicle.belly_clearance
        else:
            share = (0.35, 0.65, 0.2, 0.8) if part.zone == "belly" else (0.5, 0.15, 0.85)
            x = _free_place([part.x[0] + s * (part.x[1] - part.x[0]) for s in share], taken, span)
            z = part.z[0] + (x - part.x[0]) / (part.x[1] - part.x[0]) * (part.z[1] - part.z[0])
        taken.append(x)
        low = "/".join(f"{v * 1000:.0f}" for v in sorted(set(part.z)))
        upright(axes, x, 0.0, z, low)


def _free_place(places: Any, taken: list[float], span: float) -> float:
    return float(
        max(places, key=lambda x: (min([abs(x - t) for t in taken] + [0.05 * span]), -list(places).index(x)))
    )


def _plan(axes: Axes, vehicle: Vehicle) -> None:
    from matplotlib.patches import FancyBboxPatch, Rectangle

    length, radius = vehicle.wheelbase, vehicle.tyre_radius
    ahead, behind = _reach(vehicle)
    half = vehicle.width / 2
    axes.add_patch(
        FancyBboxPatch(
            (-behind + 0.05, -half + 0.05),
            ahead + behind - 0.1,
            2 * half - 0.1,
            boxstyle="round,pad=0.05",
            facecolor=_BODY,
            edgecolor=FAINT,
            lw=0.8,
            zorder=1,
        )
    )
    axes.plot([-behind, ahead], [0, 0], color=FAINT, lw=0.6, ls=(0, (10, 3, 2, 3)), zorder=1.2)
    for x, track in ((length, vehicle.front_track), (0.0, vehicle.rear_track)):
        for side in (-1, 1):
            corner = (x - 0.62 * radius, side * track / 2 - vehicle.tyre_width / 2)
            axes.add_patch(
                Rectangle(
                    corner,
                    1.24 * radius,
                    vehicle.tyre_width,
                    facecolor=_TYRE,
                    edgecolor="white",
                    lw=1,
                    zorder=4,
                )
            )
    for part in sorted(vehicle.parts, key=lambda p: -min(p.z)):
        colour = _SOFT_PLATE if part.soft else _PLATE
        axes.add_patch(
            Rectangle(
                (part.x[0], part.y[0]),
                part.x[1] - part.x[0],
                part.y[1] - part.y[0],
                facecolor=colour,
                alpha=0.16 if part.name == "belly" else 0.45,
                edgecolor=colour,
                lw=1.0,
                zorder=2,
            )
        )
        _name(axes, part, vehicle)
    outside = half + 0.045 * (ahead + behind)
    across(axes, -behind, ahead, -outside, f"length {(ahead + behind) * 1000:.0f}")
    for x, track, letter in ((length, vehicle.front_track, "B"), (0.0, vehicle.rear_track, "C")):
        upright(
            axes,
            x + 0.78 * radius * (1 if x else -1),
            -track / 2,
            track / 2,
            f"{letter}  {track * 1000:.0f}",
            turned=True,
        )
    upright(axes, ahead + 0.03 * (ahead + behind), -half, half, f"F  {vehicle.width * 1000:.0f}", turned=True)


def _name(axes: Axes, part: Part, vehicle: Vehicle) -> None:
    """The part's name where there is room: along wide plates, upright in narrow ones."""
    scale = 10.0 / (axes.get_xlim()[1] - axes.get_xlim()[0])  # about in per m
    words = f"{part.name} {min(part.z) * 1000:.0f}"
    wide, tall = (part.x[1] - part.x[0]) * scale, (part.y[1] - part.y[0]) * scale
    x, y = sum(part.x) / 2, sum(part.y) / 2
    style: dict[str, Any] = {**SMALL, "ha": "center", "va": "center", "zorder": 6, "path_effects": halo()}
    if part.name == "belly":
        axes.text(0.5 * vehicle.wheelbase, 0.86 * part.y[1], words, **style)
    elif wide > 0.068 * len(words):
        axes.text(x, y, words, **style)
    elif tall > 0.068 * len(words):
        axes.text(x, y, words, rotation=90, **style)
    else:
        axes.annotate(words, (x, y), (x, y + 0.06), **style)
