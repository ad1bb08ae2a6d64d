"""The plan view of a vehicle's drawing: its underside seen through the floor from above."""

from __future__ import annotations

from typing import TYPE_CHECKING

from crestcut.report.pictures.ink import FAINT
from crestcut.report.pictures.vehicle_dimensions import LETTER, across, inch_of, label, turned
from crestcut.report.pictures.vehicle_side import BODY, PLATE, SOFT_PLATE, TYRE, reach
from crestcut.vehicle import Part, Vehicle

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_LINE = 0.14  # in: height of a line of small words


def draw_plan_view(axes: Axes, vehicle: Vehicle) -> None:
    """Onto axes with limits in metres, left of the vehicle up, front to the right."""
    from matplotlib.patches import FancyBboxPatch, Rectangle

    ahead, behind = reach(vehicle)
    half, round_ = vehicle.width / 2, 0.0 if vehicle.rigid else 0.05
    axes.add_patch(
        FancyBboxPatch(
            (-behind + round_, -half + round_), ahead + behind - 2 * round_, 2 * (half - round_),
            boxstyle=f"round,pad={round_}" if round_ else "square,pad=0",
            facecolor=BODY, edgecolor=FAINT, lw=0.8, zorder=1,
        )
    )  # fmt: skip
    axes.plot([-behind, ahead], [0, 0], color=FAINT, lw=0.6, ls=(0, (10, 3, 2, 3)), zorder=1.2)
    for x, _, track in _axles(vehicle):
        for x0, x1, y0, y1 in _tyres(vehicle, x, track):
            axes.add_patch(Rectangle((x0, y0), x1 - x0, y1 - y0, facecolor=TYRE, edgecolor="white", zorder=4))
    for part in sorted(vehicle.parts, key=lambda p: -min(p.z)):
        colour = SOFT_PLATE if part.soft else PLATE
        axes.add_patch(
            Rectangle(
                (part.x[0], part.y[0]), part.x[1] - part.x[0], part.y[1] - part.y[0],
                facecolor=colour, alpha=0.16 if part.name == "belly" else 0.45, edgecolor=colour, zorder=2,
            )
        )  # fmt: skip
    _names(axes, vehicle)
    inch = inch_of(axes)
    across(axes, -behind, ahead, -half - 0.26 * inch, f"M  length {(ahead + behind) * 1000:.0f}")
    for (at, track), letter in zip(_tracks(vehicle, inch), "CD", strict=True):
        turned(axes, at, -track / 2, track / 2, f"{letter}  {track * 1000:.0f}", paper=BODY)
    turned(axes, ahead + 0.3 * inch, -half, half, f"N  {vehicle.width * 1000:.0f}")


def _axles(vehicle: Vehicle) -> tuple[tuple[float, int, float], ...]:
    """x of each axle, the way to its end of the vehicle, its track; front first."""
    return (vehicle.wheelbase, 1, vehicle.front_track), (0.0, -1, vehicle.rear_track)


def _tyres(vehicle: Vehicle, x: float, track: float) -> list[tuple[float, float, float, float]]:
    """Both tyres of an axle from above: x from, to; y from, to."""
    long, wide = 0.62 * vehicle.tyre_radius, vehicle.tyre_width / 2
    return [(x - long, x + long, y - wide, y + wide) for y in (-track / 2, track / 2)]


def _tracks(vehicle: Vehicle, inch: float) -> list[tuple[float, float]]:
    """Where the tracks' dimensions stand, beyond the tyres, and the tracks."""
    beyond = 0.62 * vehicle.tyre_radius + 0.12 * inch
    return [(x + way * beyond, track) for x, way, track in _axles(vehicle)]


def _names(axes: Axes, vehicle: Vehicle) -> None:
    """Every part's name and height where it meets no other name: in the part if it can be, else beside it."""
    inch = inch_of(axes)
    taken = [box for x, _, track in _axles(vehicle) for box in _tyres(vehicle, x, track)]
    taken += [
        (at - _LINE * inch / 2, at + _LINE * inch / 2, -track / 2, 0.0)
        for at, track in _tracks(vehicle, inch)
    ]
    for part in sorted(vehicle.parts, key=lambda p: (p.x[1] - p.x[0]) * (p.y[1] - p.y[0])):
        heights = "/".join(dict.fromkeys(f"{v * 1000:.0f}" for v in part.z[::-1]))
        words = f"{part.name} {heights}{' soft' if part.soft else ''}"
        x, y, upright = _place(part, words, vehicle, taken, inch)
        label(axes, x, y, words, rotation=90 if upright else 0)


def _place(
    part: Part, words: str, vehicle: Vehicle, taken: list[tuple[float, float, float, float]], inch: float
) -> tuple[float, float, bool]:
    """Middle of the words and whether they stand upright; what they cover is noted in ``taken``."""
    long, high = LETTER * len(words) * inch, _LINE * inch
    inside = part.x[1] - part.x[0] > 0.9 * long
    x, y = sum(part.x) / 2, sum(part.y) / 2
    spots: list[tuple[float, float, bool]] = []
    if part.name == "belly":
        for share in (0.5, 0.1, 0.9):
            at = part.x[0] + share * (part.x[1] - part.x[0])
            shares = (0.94, 0.06, 0.85, 0.15) if share == 0.5 else (0.5,)
            spots += [(at, part.y[0] + r * (part.y[1] - part.y[0]), share != 0.5) for r in shares]
    elif inside:
        rows = (0.5, 0.38, 0.62, 0.25, 0.75, 0.08, 0.92)
        spots += [(x, part.y[0] + r * (part.y[1] - part.y[0]), False) for r in rows]
        spots += [(part.x[0] + s * (part.x[1] - part.x[0]), y, True) for s in (0.25, 0.75, 0.12, 0.88)]
    else:
        beside = (0.0, 0.8 * high, -0.8 * high, 1.6 * high, -1.6 * high)
        spots += [(x + d, y, True) for d in beside] + [(x, part.y[1] + 0.6 * high, False)]
        spots += [(x, part.y[0] - 0.6 * high, False)]
    others = [p for p in vehicle.parts if p is not part and p.name != "belly"]
    for spot in (*spots, spots[0]):
        wide, tall = (high, long) if spot[2] else (long, high)
        box = (spot[0] - wide / 2, spot[0] + wide / 2, spot[1] - tall / 2, spot[1] + tall / 2)
        free = all(_apart(box, other) for other in taken)
        if part.name == "belly":
            free = free and all(_apart(box, (*p.x, *p.y)) for p in others)
        if free:
            break
    taken.append(box)
    return spot


def _apart(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[1] < b[0] or b[1] < a[0] or a[3] < b[2] or b[3] < a[2]
