"""The vehicle as the file describes it, drawn to scale from the side and from below, with its dimensions and
angles. Letters are those of the measuring sheet.
"""

from __future__ import annotations

import math
import textwrap
from pathlib import Path
from typing import Any

from crestcut.base.units import both
from crestcut.report.pictures.ink import SOFT, axes_at, new_figure, save, styled, text_at
from crestcut.report.pictures.vehicle_dimensions import scale_bar
from crestcut.report.pictures.vehicle_plan import draw_plan_view
from crestcut.report.pictures.vehicle_side import draw_side_view, reach
from crestcut.report.words.vehicle import ANGLE_KINDS, vehicle_lines
from crestcut.study import Identity
from crestcut.vehicle import Angles, PartAngle, Vehicle, derive_angles

_WIDTH, _BESIDE = 11.69, 0.55  # in: the page, and what stays free at its sides
_FOOT, _BETWEEN = 0.4, 0.35  # in

__all__ = ["draw_vehicle", "vehicle_lines"]


def draw_vehicle(vehicle: Vehicle, angles: Angles, out_png: Path) -> None:
    """Write the drawing: side view above, underside below (seen through the floor from above), both to one
    scale.
    """
    with styled():
        _draw(vehicle, angles, out_png)


def _draw(vehicle: Vehicle, angles: Angles, out_png: Path) -> None:
    ahead, behind = reach(vehicle)
    span = ahead + behind
    room = 0.14 * span  # for the dimensions at both ends
    scale = (_WIDTH - 2 * _BESIDE) / (span + 2 * room)  # in per m
    top, below = (
        (2.1 if vehicle.rigid else 2.55) * vehicle.tyre_radius,
        0.10 * span,
    )  # of the side view, m above and below ground
    half, over = vehicle.width / 2 + 0.075 * span, vehicle.width / 2 + 0.01 * span
    side_height, plan_height = (top + below) * scale, (half + over) * scale
    words = _head(vehicle, angles)
    head = 0.75 + 0.165 * len(words)
    height = head + side_height + _BETWEEN + plan_height + _FOOT
    figure = new_figure(height)
    limits = (-behind - room, ahead + room)
    plan = axes_at(figure, _BESIDE, _FOOT, _WIDTH - 2 * _BESIDE, plan_height)
    side = axes_at(figure, _BESIDE, _FOOT + plan_height + _BETWEEN, _WIDTH - 2 * _BESIDE, side_height)
    for axes, low, high in ((side, -below, top), (plan, -half, over)):
        axes.set_xlim(*limits)
        axes.set_ylim(low, high)
        axes.axis("off")
    draw_side_view(side, vehicle, angles, below)
    draw_plan_view(plan, vehicle)
    text_at(figure, _BESIDE, height - 0.42, vehicle.name, fontsize=15, fontweight="bold")
    for k, (line, style) in enumerate(words):
        text_at(figure, _BESIDE, height - 0.68 - 0.165 * k, line, **style)
    text_at(figure, _BESIDE, height - head, "SIDE", **_LABEL)
    text_at(
        figure,
        _BESIDE,
        _FOOT + plan_height + 0.08,
        "UNDERSIDE, seen through the floor from above; front to the right",
        **_LABEL,
    )
    scale_bar(plan, limits, half)
    save(figure, out_png, Identity(vehicle.name))


_LABEL: dict[str, Any] = {"fontsize": 7.5, "fontweight": "bold", "color": SOFT}
_FINE: dict[str, Any] = {"fontsize": 7.0, "color": SOFT}


def _head(vehicle: Vehicle, angles: Angles) -> list[tuple[str, dict[str, Any]]]:
    """Angles of every load state, then what they rest on."""
    lines: list[tuple[str, dict[str, Any]]] = [(_figures(angles), {"fontsize": 8.4})]
    lines += [
        (_figures(derive_angles(vehicle, state)), {"fontsize": 8.0, "color": SOFT})
        for state in vehicle.loads
        if state != angles.load
    ][:4]
    return lines + [(line, _FINE) for line in textwrap.wrap(_small_print(vehicle), 190)]


def _figures(angles: Angles) -> str:
    clear = f"{both(angles.running_clearance, 0)} ({angles.running_part})"
    words = [f"{angles.load.name}: running clearance {clear}"]
    for kind in ANGLE_KINDS:
        angle: PartAngle | None = getattr(angles, kind)
        words.append(f"{kind} {'not known' if angle is None else f'{math.degrees(angle.angle):.1f}°'}")
    text = "   ·   ".join(words)
    return text[:1].upper() + text[1:]


def _small_print(vehicle: Vehicle) -> str:
    springs = (
        "rigid, no springs"
        if vehicle.rigid
        else "measured springs"
        if vehicle.springs.measured
        else "equal springs assumed"
    )
    return (
        f"Drawn {vehicle.loads[0].name} on level ground, to scale, lengths in mm; {springs}. Angles are"
        " between the ground and tangents to the loaded tyres (49 CFR 523.2)."
        f" {' '.join(n[:1].upper() + n[1:] + '.' for n in vehicle.notes if 'springs' not in n)}"
    )
