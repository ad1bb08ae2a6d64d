"""The made-up vehicle of the measuring sheet from the side, the front and underneath, with its letters.

A picture to point at, not to scale: clearances are drawn twice as large so that letters fit under the floor.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from crestcut.report.pictures.ink import FAINT, INK, SOFT

if TYPE_CHECKING:
    from matplotlib.axes import Axes

BODY, TYRE, PLATE, HUB, GROUND = "#e6e4df", "#4a4947", "#8c5a2b", "#d9d7d2", "#b9b6b0"
BASE, RADIUS, AHEAD, BEHIND = 2.6, 0.33, 0.86, 0.78  # m
BELLY, TRAY, NOSE, TAIL, ROOF = 0.25, 0.17, 0.29, 0.36, 0.98
TRACK, TYRE_WIDE, WIDE = 1.48, 0.21, 1.76
TRAY_X, TRAY_Y = (0.55, 1.95), (-0.52, 0.52)


def frame(axes: Axes, x: tuple[float, float], z: tuple[float, float]) -> None:
    """Limits in metres, one scale both ways, no frame."""
    axes.set_xlim(*x)
    axes.set_ylim(*z)
    axes.set_aspect("equal")
    axes.axis("off")


def letter(axes: Axes, x: float, y: float, words: str, size: float = 9.0) -> None:
    """A letter in a white disk, so that it stands clear of lines."""
    axes.text(
        x, y, words, ha="center", va="center", fontsize=size, fontweight="bold", color=INK, zorder=12,
        bbox={"boxstyle": "circle,pad=0.18", "facecolor": "white", "edgecolor": INK, "linewidth": 0.8},
    )  # fmt: skip


def span(axes: Axes, a: tuple[float, float], b: tuple[float, float], words: str, at: float = 0.5) -> None:
    """A dimension line with its letter ``at`` a share of the way."""
    style: dict[str, Any] = {"arrowstyle": "<->", "color": INK, "lw": 0.9, "shrinkA": 0, "shrinkB": 0}
    axes.annotate("", a, b, arrowprops={**style, "mutation_scale": 8}, zorder=10)
    letter(axes, a[0] + at * (b[0] - a[0]), a[1] + at * (b[1] - a[1]), words)


def guide(axes: Axes, x: float, low: float, high: float) -> None:
    """A thin upright that carries an edge down to its dimension line."""
    axes.plot([x, x], [low, high], color=FAINT, lw=0.6, zorder=1)


def side(axes: Axes) -> None:
    """Front to the right: A, E, F, H, J, K, M, P to V."""
    from matplotlib.patches import Arc, Circle

    frame(axes, (-BEHIND - 0.42, BASE + AHEAD + 0.42), (-0.62, ROOF + 0.10))
    axes.plot(axes.get_xlim(), [0, 0], color=INK, lw=1.2, zorder=2)
    axes.fill(*zip(*_outline(), strict=True), facecolor=BODY, edgecolor=FAINT, lw=1.0, zorder=3)
    axes.fill(*zip(*_glass(), strict=True), facecolor="white", edgecolor=FAINT, lw=0.8, zorder=3.2)
    tray = [(TRAY_X[0], TRAY), (TRAY_X[1], TRAY), (TRAY_X[1], BELLY + 0.02), (TRAY_X[0], BELLY + 0.02)]
    axes.fill(*zip(*tray, strict=True), facecolor="#d8cdbd", edgecolor=PLATE, lw=1.2, zorder=4)
    axes.text(1.25, 0.5 * (TRAY + BELLY) + 0.01, "a low part: see a to f", ha="center", va="center",
              fontsize=6.2, color=INK, zorder=5)  # fmt: skip
    for x in (0.0, BASE):
        axes.add_patch(Circle((x, RADIUS), RADIUS, facecolor=TYRE, edgecolor="white", lw=1.2, zorder=6))
        axes.add_patch(Circle((x, RADIUS), 0.55 * RADIUS, facecolor=HUB, edgecolor="none", zorder=7))
        axes.plot([x], [RADIUS], marker="+", color=INK, ms=7, zorder=8)
        guide(axes, x, -0.55, RADIUS)
    for x in (-BEHIND, BASE + AHEAD):
        guide(axes, x, -0.55, 0.5)
    span(axes, (0.0, -0.24), (BASE, -0.24), "A")
    span(axes, (BASE, -0.24), (BASE + AHEAD, -0.24), "J")
    span(axes, (-BEHIND, -0.24), (0.0, -0.24), "K")
    span(axes, (-BEHIND, -0.47), (BASE + AHEAD, -0.47), "M")
    _tools(axes)
    for x, words in ((BASE, "E"), (0.0, "F")):
        axes.plot([x, x], [0, RADIUS], color="white", lw=1.4, zorder=8)
        letter(axes, x, 0.135, words)
    span(axes, (2.13, 0.0), (2.13, BELLY), "H", 0.45)
    nose, tail = BASE + 0.70, -0.60
    span(axes, (nose, 0.0), (nose, NOSE), "P", 0.42)
    span(axes, (tail, 0.0), (tail, TAIL), "T", 0.42)
    _over(axes, BASE, nose, "Q")
    _over(axes, 0.0, tail, "U")
    for hub, point, height, words, way in ((BASE, nose, NOSE, "R", 1), (0.0, tail, TAIL, "V", -1)):
        _sight(axes, hub, point, height, words, way, Arc)


def _tools(axes: Axes) -> None:
    """A straightedge through the tyre contacts, and the stick that gives the photograph its scale."""
    from matplotlib.patches import Rectangle

    axes.add_patch(
        Rectangle(
            (-0.22, -0.045), BASE + 0.44, 0.04, facecolor="#e3cfae", edgecolor=PLATE, lw=0.7, zorder=1.8
        )
    )
    axes.text(BASE / 2, -0.075, "straightedge", ha="center", va="top", fontsize=6.2, color=INK, zorder=5)
    for k in range(8):
        axes.add_patch(
            Rectangle(
                (0.41, 0.1 * k),
                0.035,
                0.1,
                facecolor=INK if k % 2 else "white",
                edgecolor=INK,
                lw=0.5,
                zorder=9,
            )
        )
    axes.text(0.49, 0.74, "stick of known length", va="center", fontsize=6.2, color=INK, zorder=9)


def _sight(axes: Axes, hub: float, point: float, height: float, words: str, way: int, arc: Any) -> None:
    """The line from the tyre's foot past the nose or tail, and its angle."""
    from crestcut.vehicle import tangent_angle

    angle = tangent_angle(abs(point - hub), height, RADIUS)
    foot = (hub + way * RADIUS * math.sin(angle), RADIUS * (1 - math.cos(angle)))
    far = 1.24
    end = (foot[0] + way * far * math.cos(angle), foot[1] + far * math.sin(angle))
    axes.plot([foot[0], end[0]], [foot[1], end[1]], color="#2f5d8a", lw=1.0, ls=(0, (6, 3)), zorder=9)
    degrees = math.degrees(angle)
    turn = (0, degrees) if way > 0 else (180 - degrees, 180)
    start = hub + way * RADIUS * math.tan(angle / 2)  # where the tangent meets the ground
    axes.add_patch(
        arc((start, 0), 2.02, 2.02, theta1=turn[0], theta2=turn[1], color="#2f5d8a", lw=1.0, zorder=9)
    )
    middle = angle / 2
    letter(axes, start + way * 1.01 * math.cos(middle), 1.01 * math.sin(middle), words)


def _over(axes: Axes, hub: float, point: float, words: str) -> None:
    """From a hub to a point of nose or tail, drawn over the roof-line of the bonnet."""
    z = 0.60
    axes.plot([point, point], [0.30, z], color=FAINT, lw=0.6, zorder=9)
    span(axes, (hub, z), (point, z), words)


def _outline() -> list[tuple[float, float]]:
    nose, tail = BASE + AHEAD, -BEHIND
    return [
        (tail, TAIL + 0.05), (-0.60, TAIL), (-0.33, BELLY + 0.06), (0.0, BELLY + 0.05), (0.34, BELLY),
        (BASE - 0.34, BELLY), (BASE, BELLY + 0.05), (BASE + 0.34, NOSE + 0.02), (BASE + 0.70, NOSE),
        (nose, NOSE + 0.05), (nose, 0.55), (nose - 0.1, 0.66), (2.55, 0.74), (2.0, ROOF), (0.15, ROOF + 0.02),
        (-0.55, 0.86), (tail, 0.62),
    ]  # fmt: skip


def _glass() -> list[tuple[float, float]]:
    return [(2.36, 0.74), (1.95, ROOF - 0.06), (0.22, ROOF - 0.04), (-0.30, 0.78), (0.0, 0.72)]


def front(axes: Axes) -> None:
    """From the front: C, G, N, and the card stack slid under from the side."""
    from matplotlib.patches import FancyBboxPatch, Rectangle

    half = WIDE / 2
    frame(axes, (-half - 0.85, half + 0.30), (-0.50, ROOF + 0.12))
    axes.plot(axes.get_xlim(), [0, 0], color=INK, lw=1.2, zorder=2)
    box = "round,pad=0,rounding_size=0.08"
    axes.add_patch(
        FancyBboxPatch((-half, NOSE), WIDE, 0.38, boxstyle=box, facecolor=BODY, edgecolor=FAINT, zorder=3)
    )
    roof = [(-0.80, 0.64), (-0.60, ROOF), (0.60, ROOF), (0.80, 0.64)]
    axes.fill(*zip(*roof, strict=True), facecolor="white", edgecolor=FAINT, lw=1.0, zorder=2.9)
    axes.add_patch(
        Rectangle((-0.62, TRAY), 1.24, NOSE - TRAY, facecolor="#d8cdbd", edgecolor=PLATE, zorder=2.5)
    )
    for way in (-1, 1):
        x = way * TRACK / 2
        axes.add_patch(
            Rectangle((x - TYRE_WIDE / 2, 0), TYRE_WIDE, 0.5, facecolor=TYRE, edgecolor="white", zorder=2.6)
        )
        guide(axes, x, -0.30, 0.0)
    span(axes, (-TRACK / 2, -0.17), (TRACK / 2, -0.17), "C")
    edge = TRACK / 2 + TYRE_WIDE / 2
    for x in (edge - TYRE_WIDE, edge):
        guide(axes, x, -0.34, 0.0)
    axes.annotate(
        "",
        (edge - TYRE_WIDE, -0.30),
        (edge, -0.30),
        arrowprops={"arrowstyle": "<->", "lw": 0.9, "shrinkA": 0, "shrinkB": 0, "mutation_scale": 6},
    )
    letter(axes, edge + 0.13, -0.30, "G")
    for x in (-half, half):
        guide(axes, x, 0.3, ROOF + 0.02)
    span(axes, (-half, 0.80), (half, 0.80), "N")
    _cards(axes, -half)


def _cards(axes: Axes, sill: float) -> None:
    """A stack on a stick, pushed in from outside."""
    from matplotlib.patches import Rectangle

    x0, x1 = -0.48, -0.28
    for k in range(7):
        axes.add_patch(
            Rectangle((x0, 0.0235 * k), x1 - x0, 0.019, facecolor="white", edgecolor=INK, lw=0.5, zorder=5)
        )
    axes.plot([sill - 0.75, x0], [0.045, 0.03], color=PLATE, lw=2.6, solid_capstyle="round", zorder=4.5)
    axes.text(sill - 0.80, 0.15, "cards on a stick,\nhand outside", fontsize=6.2, color=INK, va="bottom",
              linespacing=1.15)  # fmt: skip


def underneath(axes: Axes) -> None:
    """Seen through the floor from above, front to the right: B, C, D, G, N and a low part's a to d."""
    from matplotlib.patches import FancyBboxPatch, Rectangle

    half = WIDE / 2
    frame(axes, (-BEHIND - 0.42, BASE + AHEAD + 0.42), (-half - 0.42, half + 0.42))
    axes.add_patch(
        FancyBboxPatch(
            (-BEHIND + 0.1, -half + 0.1), BASE + AHEAD + BEHIND - 0.2, WIDE - 0.2,
            boxstyle="round,pad=0.1", facecolor=BODY, edgecolor=FAINT, zorder=1,
        )
    )  # fmt: skip
    inner = (TRACK - TYRE_WIDE) / 2
    axes.add_patch(Rectangle((0, -inner), BASE, 2 * inner, facecolor="#d8cdbd", alpha=0.55, zorder=1.5))
    axes.text(2.25, inner - 0.09, "belly H", ha="center", va="center", fontsize=6.6, color=INK, zorder=5)
    axes.add_patch(
        Rectangle(
            (TRAY_X[0], TRAY_Y[0]), TRAY_X[1] - TRAY_X[0], TRAY_Y[1] - TRAY_Y[0],
            facecolor=PLATE, alpha=0.45, edgecolor=PLATE, lw=1.2, zorder=2,
        )
    )  # fmt: skip
    axes.plot([-BEHIND, BASE + AHEAD], [0, 0], color=SOFT, lw=0.8, ls=(0, (10, 3, 2, 3)), zorder=3)
    for x in (0.0, BASE):
        for way in (-1, 1):
            axes.add_patch(
                Rectangle(
                    (x - 0.22, way * TRACK / 2 - TYRE_WIDE / 2), 0.44, TYRE_WIDE,
                    facecolor=TYRE, edgecolor="white", zorder=4,
                )
            )  # fmt: skip
            axes.plot([x], [way * TRACK / 2], marker="+", color="white", ms=7, zorder=5)
    outside = half + 0.22
    for x in (0.0, BASE):
        guide(axes, x, -outside - 0.05, outside + 0.05)
    span(axes, (0.0, outside), (BASE, outside), "A")
    span(axes, (0.0, -outside), (BASE, -outside), "B")
    span(axes, (BASE + 0.36, -TRACK / 2), (BASE + 0.36, TRACK / 2), "C", 0.62)
    span(axes, (-0.36, -TRACK / 2), (-0.36, TRACK / 2), "D", 0.62)
    span(axes, (BASE + AHEAD + 0.2, -half), (BASE + AHEAD + 0.2, half), "N")
    span(axes, (TRAY_X[1], 0.40), (BASE, 0.40), "a")
    span(axes, (TRAY_X[0], -0.40), (BASE, -0.40), "b", 0.28)
    span(axes, (1.55, TRAY_Y[0]), (1.55, 0.0), "c")
    span(axes, (1.00, 0.0), (1.00, TRAY_Y[1]), "d")
    axes.text(-BEHIND - 0.06, 0.04, "middle", ha="right", va="center", fontsize=6.2, color=SOFT)


def low_part(axes: Axes) -> None:
    """One low part from the side: a, b, e and f count from the front hub and the ground."""
    from matplotlib.patches import Circle

    frame(axes, (0.05, BASE + 0.45), (-0.42, 0.80))
    axes.plot(axes.get_xlim(), [0, 0], color=INK, lw=1.2, zorder=2)
    axes.add_patch(Circle((BASE, RADIUS), RADIUS, facecolor=TYRE, edgecolor="white", lw=1.2, zorder=6))
    axes.add_patch(Circle((BASE, RADIUS), 0.55 * RADIUS, facecolor=HUB, edgecolor="none", zorder=7))
    axes.plot([BASE], [RADIUS], marker="+", color=INK, ms=7, zorder=8)
    x0, x1 = TRAY_X
    floor, high, low = 0.50, 0.42, 0.27
    axes.fill([0.1, BASE - 0.36, BASE - 0.36, 0.1], [floor, floor, 0.76, 0.76], facecolor=BODY, zorder=3)
    axes.plot([0.1, BASE - 0.36], [floor, floor], color=FAINT, lw=1.2, zorder=3.5)
    axes.fill(
        [x0, x1, x1, x0], [high, low, floor, floor], facecolor="#d8cdbd", edgecolor=PLATE, lw=1.2, zorder=4
    )
    for x in (x0, x1, BASE):
        guide(axes, x, -0.36, 0.2)
    span(axes, (x1, -0.13), (BASE, -0.13), "a")
    span(axes, (x0, -0.31), (BASE, -0.31), "b")
    span(axes, (x1, 0.0), (x1, low), "e")
    span(axes, (x0, 0.0), (x0, high), "f")
    axes.text(
        1.2, 0.63, "low part, its underside", ha="center", va="center", fontsize=6.6, color=INK, zorder=5
    )
