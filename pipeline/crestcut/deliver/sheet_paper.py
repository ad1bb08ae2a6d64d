"""A page of a work sheet: head, stamp, running text, tables, foot. Inches on paper from the top left."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import TYPE_CHECKING

from crestcut.deliver import ink
from crestcut.work.records import Worksheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDE, TALL = 8.27, 11.69  # in: A4 upright; a letter page prints it at 94 %, the strip template excepted
SIDE, TOP, BOTTOM = 0.55, 1.15, 0.6
LINE = 0.158  # in between lines of text
ROW = 0.172  # in between rows of a table
TYPE = 7.6  # points, in tables
CHARACTER = TYPE / 72 * 0.602  # in: advance of the even-width type


class Paper:
    """Pages being filled from the top. ``at`` is how far down the next thing goes, in."""

    def __init__(self, sheet: Worksheet, name: str) -> None:
        self.figures: list[Figure] = []
        self.sheet, self.name = sheet, name
        self._turn(name)

    @property
    def figure(self) -> Figure:
        """The page being filled."""
        return self.figures[-1]

    def _turn(self, name: str) -> None:
        self.figures.append(ink.new_figure(TALL, WIDE))
        self.at = TOP
        self._head(self.sheet, name)

    def need(self, height: float) -> None:
        """Turn the page unless ``height`` in are left on it."""
        if self.left < height:
            self._turn(f"{self.name}, continued")

    def _head(self, sheet: Worksheet, name: str) -> None:
        self.put(
            SIDE, 0.52, textwrap.shorten(sheet.title, 52, placeholder=" ..."), fontsize=14, fontweight="bold"
        )
        self.put(SIDE, 0.78, name, fontsize=10, color=ink.SOFT)
        self.figure.text(
            1 - SIDE / WIDE,
            0.3 / TALL,
            "Not field-proved: check with string, stick and vehicle.",
            ha="right",
            fontsize=6.8,
            color=ink.SOFT,
        )
        self.put(SIDE, TALL - 0.3, sheet.source, fontsize=6.8, color=ink.SOFT)
        if not sheet.stamp:
            return
        box = {"boxstyle": "square,pad=0.4", "facecolor": "white", "edgecolor": ink.INK, "linewidth": 2.2}
        self.figure.text(
            1 - (SIDE + 0.1) / WIDE,
            1 - 0.55 / TALL,
            sheet.stamp,
            ha="right",
            va="center",
            fontsize=15,
            fontweight="bold",
            color=ink.INK,
            bbox=box,
        )
        self.figure.text(
            0.5,
            0.5,
            sheet.stamp,
            ha="center",
            va="center",
            rotation=38,
            fontsize=56,
            fontweight="bold",
            color=ink.INK,
            alpha=0.09,
        )

    @property
    def left(self) -> float:
        """Room left above the foot, in."""
        return TALL - BOTTOM - self.at

    def put(self, x: float, y: float, text: str, **style: object) -> None:
        """Text with its base line ``y`` in below the top."""
        ink.text_at(self.figure, x, TALL - y, text, **style)

    def heading(self, text: str) -> None:
        """A heading with a rule under it."""
        self.need(0.8)
        self.at += 0.1
        self.put(SIDE, self.at + 0.12, text, fontsize=10.5, fontweight="bold")
        self.rule(self.at + 0.17)
        self.at += 0.34

    def rule(self, y: float, weight: float = 0.8) -> None:
        """A line over the width of the page."""
        from matplotlib.lines import Line2D

        ends = [SIDE / WIDE, 1 - SIDE / WIDE]
        self.figure.add_artist(Line2D(ends, [1 - y / TALL] * 2, color=ink.INK, lw=weight))

    def text(self, text: str, mark: str = "", size: float = 8.6, bold: bool = False) -> None:
        """A paragraph, wrapped, with a mark (a number, a box) before it."""
        indent = 0.26 if mark else 0.0
        room = int((WIDE - 2 * SIDE - indent) * 15.4 * 8.6 / size * (0.94 if bold else 1.0))
        lines = textwrap.wrap(text, room) or [""]
        self.need(len(lines) * LINE)
        if mark:
            self.put(SIDE, self.at, mark, fontsize=size, fontweight="bold")
        for line in lines:
            self.put(SIDE + indent, self.at, line, fontsize=size, fontweight="bold" if bold else "normal")
            self.at += LINE * size / 8.6
        self.at += 0.035

    def mono(self, line: str) -> None:
        """One line in type of even width."""
        self.need(ROW)
        self.put(SIDE - 0.08, self.at, line, fontsize=TYPE, family="DejaVu Sans Mono")
        self.at += ROW * 0.86

    def table(self, heads: Sequence[str], widths: Sequence[float], rows: Sequence[Sequence[str]]) -> int:
        """As many rows as fit; returns how many were set. Widths in inches; figures stand to the right."""
        self.at += 0.06
        edges = [SIDE + sum(widths[:k]) for k in range(len(widths) + 1)]
        for head, right in zip(heads, edges[1:], strict=True):
            self.put(right - 0.08, self.at, head, fontsize=7.4, color=ink.SOFT, ha="right")
        self.rule(self.at + 0.06, 0.5)
        self.at += ROW * 1.25
        count = max(min(len(rows), int(self.left / ROW)), 0)
        # one text a row in type of even width: a text a cell takes eight times as long to draw
        ends = [round((edge - SIDE) / CHARACTER) for edge in edges]
        for k, row in enumerate(rows[:count]):
            line = "".join(cell.rjust(b - a) for cell, a, b in zip(row, ends[:-1], ends[1:], strict=True))
            self.put(SIDE - 0.08, self.at, line, fontsize=TYPE, family="DejaVu Sans Mono")
            if k % 5 == 4:
                self.rule(self.at + 0.045, 0.25)
            self.at += ROW
        self.at += 0.08
        return count

    def axes(self, height: float) -> Axes:
        """Axes over the width of the page, ``height`` in high, below what is there."""
        drawn = ink.axes_at(self.figure, SIDE, TALL - self.at - height, WIDE - 2 * SIDE, height)
        self.at += height + 0.12
        return drawn
