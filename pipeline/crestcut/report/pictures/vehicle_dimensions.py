"""Dimension lines, figures and the scale bar of a vehicle's drawing. Sizes in shares of the view, so that a
cart is drawn as a car is.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from crestcut.base.units import inches, millimetres
from crestcut.report.pictures.ink import INK, SMALL, SOFT, halo

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_ARROW: dict[str, Any] = {"arrowstyle": "<->", "lw": 0.7, "shrinkA": 0, "shrinkB": 0, "mutation_scale": 7}
PAPER: dict[str, Any] = {"boxstyle": "square,pad=0.18", "facecolor": "white", "edgecolor": "none"}
LETTER = 0.075  # in: about the width of a small letter


def width_of(axes: Axes) -> float:
    """Metres that the view spans."""
    low, high = axes.get_xlim()
    return float(high - low)


def inch_of(axes: Axes) -> float:
    """Metres of the drawing in an inch of paper."""
    page = axes.figure.get_size_inches()[0]  # type: ignore[union-attr]
    return width_of(axes) / float(axes.get_position().width * page)


def across(axes: Axes, x0: float, x1: float, y: float, words: str) -> None:
    """A level dimension from x0 to x1; its words stand beside it where they do not fit in it."""
    tick = 0.004 * width_of(axes)
    axes.annotate("", (x0, y), (x1, y), arrowprops={**_ARROW, "color": SOFT})
    for x in (x0, x1):
        axes.plot([x, x], [y - tick, y + tick], color=SOFT, lw=0.6)
    room = LETTER * len(words) * inch_of(axes)
    if x1 - x0 > room + 6 * tick:
        axes.text((x0 + x1) / 2, y, words, ha="center", va="center", zorder=9, bbox=PAPER, **SMALL)
    else:
        axes.text(x0 - 2 * tick, y, words, ha="right", va="center", zorder=9, bbox=PAPER, **SMALL)


def upright(axes: Axes, x: float, y0: float, y1: float, words: str) -> None:
    """A dimension from the ground up, its figure beside it on paper of its own."""
    axes.annotate("", (x, y0), (x, y1), zorder=8, arrowprops={**_ARROW, "color": INK})
    axes.text(
        x + 0.05 * inch_of(axes), (y0 + y1) / 2, words, ha="left", va="center", zorder=9,
        bbox={**PAPER, "pad": 0.6, "boxstyle": "square,pad=0.06", "alpha": 0.85}, **SMALL,
    )  # fmt: skip


def turned(axes: Axes, x: float, y0: float, y1: float, words: str, paper: str = "white") -> None:
    """An upright dimension of the plan with its figure turned into it."""
    axes.annotate("", (x, y0), (x, y1), zorder=5, arrowprops={**_ARROW, "color": INK})
    box = {**PAPER, "facecolor": paper}
    # a quarter of the way up: the middle line runs through the middle
    axes.text(
        x, y0 + 0.3 * (y1 - y0), words, ha="center", va="center", rotation=90, zorder=6, bbox=box, **SMALL
    )


def label(axes: Axes, x: float, y: float, words: str, **style: Any) -> None:
    """Small words with a white rim."""
    plain: dict[str, Any] = {**SMALL, "ha": "center", "va": "center", "zorder": 6, "path_effects": halo()}
    axes.text(x, y, words, **{**plain, **style})


def scale_bar(axes: Axes, limits: tuple[float, float], half: float) -> None:
    """Half a metre, or a tenth for a cart."""
    bar = 0.5 if limits[1] - limits[0] > 2.5 else 0.1
    x, y = limits[0] + 0.02 * inch_of(axes), -half + 0.02 * inch_of(axes)
    axes.plot([x, x + bar], [y, y], color=INK, lw=2.2, solid_capstyle="butt", clip_on=False)
    axes.text(
        x,
        y + 0.06 * inch_of(axes),
        f"{millimetres(bar, 0)} ({inches(bar, 4)})",
        ha="left",
        va="bottom",
        **SMALL,
    )
