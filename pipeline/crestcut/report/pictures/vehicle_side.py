"""The side view of a vehicle's drawing: what was measured, the angles, the clearances."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from crestcut.report.pictures.ink import FAINT, INK, halo
from crestcut.report.pictures.vehicle_dimensions import LETTER, PAPER, across, inch_of, upright, width_of
from crestcut.report.words.vehicle import ANGLE_KINDS
from crestcut.vehicle import Angles, Part, PartAngle, Vehicle, tangent_angle

if TYPE_CHECKING:
    from matplotlib.axes import Axes

BODY, TYRE, PLATE, SOFT_PLATE = "#e6e4df", "#4a4947", "#8c5a2b", "#c9a06c"
_ANGLE = {"approach": "#2f5d8a", "departure": "#2f5d8a", "breakover": "#6b3f77"}


def reach(vehicle: Vehicle) -> tuple[float, float]:
    """How far the vehicle reaches ahead of and behind the rear axle, m."""
    parts = vehicle.parts
    front = max(
        [p.x[1] for p in parts] + [vehicle.wheelbase + (vehicle.front_overhang or vehicle.tyre_radius)]
    )
    rear = max([-p.x[0] for p in parts] + [vehicle.rear_overhang or vehicle.tyre_radius])
    return front, rear


def draw_side_view(axes: Axes, vehicle: Vehicle, angles: Angles, below: float) -> None:
    """Onto axes with limits in metres, z up from the ground; ``below``: room under the ground, m."""
    from matplotlib.patches import Circle

    length, radius = vehicle.wheelbase, vehicle.tyre_radius
    axes.plot(axes.get_xlim(), [0, 0], color=INK, lw=1.0, zorder=3)
    _body(axes, vehicle)
    for kind in ANGLE_KINDS:
        _draw_angle(axes, getattr(angles, kind), vehicle)
    for x in (0.0, length):
        axes.add_patch(Circle((x, radius), radius, facecolor=TYRE, edgecolor="white", lw=1.0, zorder=4))
        axes.add_patch(Circle((x, radius), 0.55 * radius, facecolor="#d9d7d2", edgecolor="none", zorder=5))
        axes.plot([x], [radius], marker="+", color=INK, ms=6, zorder=6)
    for part in vehicle.parts:
        axes.plot(
            part.x,
            part.z,
            color=SOFT_PLATE if part.soft else PLATE,
            lw=2.6,
            solid_capstyle="butt",
            zorder=3.8 if part.name == "belly" else 7,
        )
    _heights(axes, vehicle)
    _lengths(axes, vehicle, below)
    axes.plot([0.0, 0.0], [0.0, radius], color="white", lw=0.9, zorder=6)
    axes.text(0.0, 0.5 * radius, f"E {radius * 1000:.0f}", color=INK, fontsize=7.0, ha="center", va="center",
              zorder=8, bbox=PAPER)  # fmt: skip


def _lengths(axes: Axes, vehicle: Vehicle, below: float) -> None:
    length, rows = vehicle.wheelbase, (-0.34 * below, -0.74 * below)
    across(axes, 0.0, length, rows[0], f"A  wheelbase {length * 1000:.0f}")
    if vehicle.front_overhang:
        ahead = length + vehicle.front_overhang
        across(axes, length, ahead, rows[0], f"J  {vehicle.front_overhang * 1000:.0f}")
    if vehicle.rear_overhang:
        across(axes, -vehicle.rear_overhang, 0.0, rows[0], f"K  {vehicle.rear_overhang * 1000:.0f}")
    lowest = min((p for p in vehicle.parts if not p.soft and p.zone == "belly"), key=lambda p: min(p.z))
    if lowest.name != "belly":
        across(axes, lowest.x[1], length, rows[1], f"a  {(length - lowest.x[1]) * 1000:.0f}")
        across(axes, *lowest.x, rows[1], f"{lowest.name} {(lowest.x[1] - lowest.x[0]) * 1000:.0f}")


def _body(axes: Axes, vehicle: Vehicle) -> None:
    """A plain band over the underside: the outline is a hint, only what was measured carries figures."""
    hard = sorted((p for p in vehicle.parts if not p.soft), key=lambda p: p.x[0])
    ahead, behind = reach(vehicle)
    belly, radius = vehicle.belly_clearance, vehicle.tyre_radius
    noses, tails = ([p for p in hard if p.zone == zone] for zone in ("nose", "tail"))
    roof = (1.45 if vehicle.rigid else 2.35) * radius
    slope = 0.0 if vehicle.rigid else 0.06
    shoulder = roof if vehicle.rigid else 0.72 * roof
    points = [(-behind, shoulder), (-behind, max((p.z[0] for p in tails), default=belly * 1.6))]
    points += [end for part in tails for end in zip(part.x, part.z, strict=True)]
    points += [(0.0, belly * 1.25), (0.02, belly)]
    points += [(vehicle.wheelbase - 0.02, belly), (vehicle.wheelbase, belly * 1.25)]
    points += [end for part in noses for end in zip(part.x, part.z, strict=True)]
    points += [(ahead, max((p.z[1] for p in noses), default=belly * 1.6)), (ahead, shoulder)]
    points += [(ahead - slope, roof), (-behind + slope, roof)]
    axes.fill(*zip(*points, strict=True), facecolor=BODY, edgecolor=FAINT, lw=0.8, zorder=1)
    for part in hard:
        if part.zone == "belly" and part.name != "belly":
            top = max(belly, *part.z) + 0.003 * width_of(axes)
            xs, zs = [*part.x, part.x[1], part.x[0]], [*part.z, top, top]
            axes.fill(xs, zs, facecolor="#d8cdbd", edgecolor="none", zorder=1.5)


def _draw_angle(axes: Axes, angle: PartAngle | None, vehicle: Vehicle) -> None:
    """The tangents from the tyres through the point, and the angle in figures."""
    if angle is None:
        return
    colour, radius, length = _ANGLE[angle.kind], vehicle.tyre_radius, vehicle.wheelbase
    style: dict[str, Any] = {"color": colour, "lw": 0.9, "ls": (0, (6, 3)), "zorder": 3.5}
    hubs = {"approach": [(length, 1)], "departure": [(0.0, -1)], "breakover": [(0.0, 1), (length, -1)]}
    for hub, way in hubs[angle.kind]:
        foot = _touching(hub, way, angle, radius)
        stretch = 1.0 if angle.kind == "breakover" else 1.12
        tip = (foot[0] + stretch * (angle.x - foot[0]), foot[1] + stretch * (angle.z - foot[1]))
        axes.plot([foot[0], tip[0]], [foot[1], tip[1]], **style)
    axes.plot([angle.x], [angle.z], marker="o", ms=3.6, color=colour, zorder=8)
    words: dict[str, Any] = {"color": colour, "fontsize": 8.5, "fontweight": "bold"}
    words |= {"va": "center", "zorder": 9, "path_effects": halo()}
    if angle.kind == "breakover":
        axes.annotate(
            f"breakover {math.degrees(angle.angle):.1f}°",
            (angle.x, angle.z),
            (angle.x, (1.25 if vehicle.rigid else 1.45) * radius),
            ha="center",
            arrowprops={"arrowstyle": "-", "color": colour, "lw": 0.7},
            **words,
        )
        return
    way = 1 if angle.kind == "approach" else -1
    end = reach(vehicle)[0] if way > 0 else -reach(vehicle)[1]
    axes.text(
        end + way * 0.012 * width_of(axes),
        max(1.15 * radius, angle.z + 0.35 * radius),
        f"{angle.kind}\n{math.degrees(angle.angle):.1f}°",
        ha="left" if way > 0 else "right",
        linespacing=1.1,
        **words,
    )


def _touching(hub: float, way: int, angle: PartAngle, radius: float) -> tuple[float, float]:
    """Where the tangent through the point touches the tyre: the hub's foot turned by the tangent's slope."""
    slope = tangent_angle(abs(angle.x - hub), angle.z, radius)
    return hub + way * radius * math.sin(slope), radius * (1 - math.cos(slope))


def _heights(axes: Axes, vehicle: Vehicle) -> None:
    """Clearances from the ground up, one upright dimension a part, each where it has room."""
    hubs = (0.0, vehicle.wheelbase)
    taken = [(x, 1.1 * vehicle.tyre_radius) for x in hubs]  # middle and half width of what is there already
    for part in sorted(vehicle.parts, key=lambda p: min(p.z)):
        low = "/".join(dict.fromkeys(f"{v * 1000:.0f}" for v in part.z[::-1]))
        words = f"H {low}" if part.name == "belly" else low
        half = (0.06 + 0.5 * LETTER * len(words)) * inch_of(axes)
        under = [p.x for p in vehicle.parts if p.zone == "belly" and max(p.z) < min(part.z)]
        x = _free_place(part, half, taken, under)
        if x is None:
            continue  # the plan carries its figure
        z = part.z[0] + (x - part.x[0]) / (part.x[1] - part.x[0]) * (part.z[1] - part.z[0])
        taken.append((x + half - 0.04 * inch_of(axes), half))
        upright(axes, x, 0.0, z, words)


def _free_place(
    part: Part, half: float, taken: Sequence[tuple[float, float]], under: Sequence[tuple[float, float]]
) -> float | None:
    """x on the part whose figure, ``half`` wide each way to the right of it, meets no other; rather not over
    what hangs below the part; None: nowhere.
    """
    shares = [0.35, 0.65, 0.2, 0.8, 0.06, 0.94, 0.5, 0.12, 0.88, 0.16, 0.84, 0.0, 1.0]
    if part.zone != "belly":
        shares.insert(0, 0.5)
    places = [part.x[0] + share * (part.x[1] - part.x[0]) for share in shares]
    places.sort(key=lambda x: any(a <= x <= b for a, b in under))
    for x in places:
        if all(abs(x + 0.8 * half - middle) > half + other for middle, other in taken):
            return x
    return None
