"""Dimension lines, figures and the scale bar of a vehicle's drawing."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from crestcut.deliver.ink import INK, SMALL, SOFT, halo
from crestcut.units import inches, millimetres

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def figures() -> dict[str, Any]:
    return {"fontsize": 7.0, "ha": "left", "va": "center"}


def across(axes: Axes, x0: float, x1: float, y: float, words: str) -> None:
    axes.annotate(
        "",
        (x0, y),
        (x1, y),
        arrowprops={"arrowstyle": "<->", "color": SOFT, "lw": 0.7, "shrinkA": 0, "shrinkB": 0},
    )
    for x in (x0, x1):
        axes.plot([x, x], [y - 0.02, y + 0.02], color=SOFT, lw=0.6)
    axes.text((x0 + x1) / 2, y, words, ha="center", va="center", zorder=9, **SMALL, bbox=_PAPER)


def upright(axes: Axes, x: float, y0: float, y1: float, words: str, turned: bool = False) -> None:
    axes.annotate(
        "",
        (x, y0),
        (x, y1),
        zorder=8,
        arrowprops={
            "arrowstyle": "<->",
            "color": INK,
            "lw": 0.7,
            "shrinkA": 0,
            "shrinkB": 0,
            "mutation_scale": 7,
        },
    )
    axes.text(
        x if turned else x + 0.018,
        (y0 + y1) / 2,
        words,
        ha="center" if turned else "left",
        va="center",
        rotation=90 if turned else 0,
        zorder=9,
        path_effects=halo(),
        **SMALL,
    )


_PAPER = {"boxstyle": "square,pad=0.2", "facecolor": "white", "edgecolor": "none"}


def scale_bar(axes: Axes, limits: tuple[float, float], half: float) -> None:
    """Half a metre, or a tenth for a cart."""
    bar = 0.5 if limits[1] - limits[0] > 2.5 else 0.1
    x, y = limits[0] + 0.01, -half + 0.01
    axes.plot([x, x + bar], [y, y], color=INK, lw=2.2, solid_capstyle="butt", clip_on=False)
    axes.text(
        x + bar / 2, y + 0.02, f"{millimetres(bar, 0)} ({inches(bar, 4)})", ha="center", va="bottom", **SMALL
    )
