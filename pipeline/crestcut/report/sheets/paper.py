"""A page of a work sheet: head, stamp, running text, tables, foot. Inches on paper from the top left.

Paper is A4, or letter where timber is sold in inches, so that the full-size strip prints at 100 %. Running
text is set in the fonts every PDF reader has: drawing the outlines of another takes fifty times as long.
"""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Sequence
from functools import cache
from typing import TYPE_CHECKING, Any

from crestcut.base.language import here, say
from crestcut.report.pictures import ink
from crestcut.work import Worksheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

A4, LETTER = (8.27, 11.69), (8.5, 11.0)  # in, upright
SIDE, TOP, BOTTOM = 0.55, 1.15, 0.6
BODY_SIZE = 9.6  # points
LEADING = 1.28  # of the size, between lines
ROW = 0.178  # in between rows of a table
TYPE = 8.4  # points, in tables
CHARACTER = TYPE / 72 * 0.6  # in: advance of the even-width type
FEW = 2.6  # in: what stands on a last page alone is a few lines
TIGHTER = (1.0, 0.95, 0.9, 0.86, 0.82)  # of every size: 9.6 points become 7.9
AVERAGE = 0.47  # of the size: advance of running text, with some to spare
WIDER = {"de": 1.05}  # times as wide, by language: more capitals, longer words that fill a line less evenly


@cache
def _plain_text() -> type:
    """A text in one of the fonts every PDF reader has; anything they cannot write is drawn as outlines."""
    import matplotlib
    from matplotlib.text import Text

    class PlainText(Text):
        said = True  # in the reader's language, before it was wrapped

        def draw(self, renderer: Any) -> None:
            if not hasattr(renderer, "file"):  # a picture, not a PDF
                even = self.get_fontfamily()[0] == "Courier"
                self.set_fontfamily("DejaVu Sans Mono" if even else "DejaVu Sans")
                if self.get_fontweight() == "medium":  # the picture's font knows no such weight, and says so
                    self.set_fontweight("normal")
                self.set_fontsize(float(self.get_fontsize()) * (0.99 if even else 0.9))
                super().draw(renderer)
                return
            params: Any = matplotlib.rcParams
            before = params["pdf.use14corefonts"]
            params["pdf.use14corefonts"] = True
            try:
                super().draw(renderer)
            finally:
                params["pdf.use14corefonts"] = before

    return PlainText


class Paper:
    """Pages being filled from the top. ``at`` is how far down the next thing goes, in."""

    def __init__(self, sheet: Worksheet, name: str, tight: float = 1.0) -> None:
        self.figures: list[Figure] = []
        self.sheet, self.name, self.tight = sheet, say(name), tight
        self.wide, self.tall = A4 if sheet.metric else LETTER
        self._turn(self.name)

    @property
    def spills(self) -> bool:
        """Do only a few lines stand on the last of several pages?"""
        return len(self.figures) > 1 and self.at < TOP + FEW

    @property
    def figure(self) -> Figure:
        """The page being filled."""
        return self.figures[-1]

    @property
    def row(self) -> float:
        """Between rows of a table, in."""
        return ROW * self.tight

    @property
    def room(self) -> float:
        """Width between the margins, in."""
        return self.wide - 2 * SIDE

    def _turn(self, name: str) -> None:
        self.figures.append(ink.new_figure(self.tall, self.wide))
        self.at = TOP
        self._head(self.sheet, name)

    def need(self, height: float) -> bool:
        """Turn the page unless ``height`` in are left on it; True if it was turned."""
        if self.left < height:
            self._turn(f"{self.name}{say(', continued')}")
            return True
        return False

    def _head(self, sheet: Worksheet, name: str) -> None:
        title = textwrap.shorten(sheet.title, 46, placeholder=" ...")
        self._set(SIDE, 0.52, title, fontsize=15, fontweight="bold")
        self._set(SIDE, 0.80, name, fontsize=11, color=ink.SOFT)
        said = say(f"Not field-proved: check with {sheet.check_with}.")
        self._set(self.wide - SIDE, self.tall - 0.3, said, ha="right", fontsize=7.5, color=ink.SOFT)
        # beside the page number there is room for half a line
        source = textwrap.wrap(say(sheet.source), 64, max_lines=2, placeholder=" ...")
        for above, line in enumerate(reversed(source)):
            self._set(SIDE, self.tall - 0.3 - 0.12 * above, line, fontsize=7.5, color=ink.SOFT)
        if not sheet.stamp:
            return
        box = {"boxstyle": "square,pad=0.4", "facecolor": "white", "edgecolor": ink.INK, "linewidth": 2.2}
        self.put(
            self.wide - SIDE - 0.1,
            0.55,
            sheet.stamp,
            ha="right",
            va="center",
            fontsize=15,
            fontweight="bold",
            bbox=box,
        )
        self.put(
            self.wide / 2, self.tall / 2, sheet.stamp, ha="center", va="center", rotation=38, fontsize=60,
            fontweight="bold", alpha=0.10, zorder=0,
        )  # fmt: skip

    def number(self, number: int) -> None:
        """The page number at the foot of the page being filled."""
        self.put(self.wide / 2, self.tall - 0.3, f"{number}", ha="center", fontsize=8)

    @property
    def left(self) -> float:
        """Room left above the foot, in."""
        return self.tall - BOTTOM - self.at

    def put(self, x: float, y: float, text: str, **style: Any) -> None:
        """Text with its base line ``y`` in below the top."""
        self._set(x, y, say(text), **style)

    def _set(self, x: float, y: float, text: str, **style: Any) -> None:
        """Text as it stands: names, figures, and lines that are wrapped already."""
        put(self.figure, x, y, text, **style)

    def heading(self, text: str) -> None:
        """A heading with a rule under it."""
        self.need(0.8)
        self.at += 0.1
        self.put(SIDE, self.at + 0.12, text, fontsize=11.5, fontweight="bold")
        self.rule(self.at + 0.17)
        self.at += 0.36

    def rule(self, y: float, weight: float = 0.8) -> None:
        """A line over the width of the page."""
        self.line(SIDE, y, self.wide - SIDE, y, weight)

    def line(self, x0: float, y0: float, x1: float, y1: float, weight: float = 0.8) -> None:
        """A line between two places in inches from the top left."""
        from matplotlib.lines import Line2D

        xs, ys = [x0 / self.wide, x1 / self.wide], [1 - y0 / self.tall, 1 - y1 / self.tall]
        self.figure.add_artist(Line2D(xs, ys, color=ink.INK, lw=weight, solid_capstyle="butt"))

    def box(self, x: float, y: float, size: float = 0.11) -> None:
        """A box to tick, its lower left corner ``y`` in below the top."""
        from matplotlib.patches import Rectangle

        at = x / self.wide, 1 - y / self.tall
        self.figure.add_artist(
            Rectangle(
                at, size / self.wide, size / self.tall, fill=False, lw=0.9, transform=self.figure.transFigure
            )
        )

    def text(self, text: str, mark: str = "", size: float = BODY_SIZE, bold: bool = False) -> None:
        """A paragraph, wrapped, with a mark before it: a number, a bullet, or "box" for one to tick."""
        size *= self.tight
        indent = 0.24 if mark else 0.0
        lines = self._wrapped(text, indent, size, bold)
        step = size * LEADING / 72
        self.need(len(lines) * step)
        if mark == "box":
            self.box(SIDE, self.at + 0.005)
        elif mark:
            self.put(SIDE, self.at, mark, fontsize=size, fontweight="bold")
        for line in lines:
            self._set(SIDE + indent, self.at, line, fontsize=size, fontweight="bold" if bold else "normal")
            self.at += step
        self.at += 0.04 * self.tight

    def named(self, name: str, text: str, room: float = 0.95, size: float = BODY_SIZE) -> None:
        """A paragraph with its name in bold before it. room : for the name, in."""
        size *= self.tight
        lines = self._wrapped(text, room, size)
        step = size * LEADING / 72
        self.need(len(lines) * step)
        self.put(SIDE, self.at, name, fontsize=size, fontweight="bold")
        for line in lines:
            self._set(SIDE + room, self.at, line, fontsize=size)
            self.at += step
        self.at += 0.05

    def cards(self, cards: Sequence[tuple[str, Sequence[str]]], size: float = 8.8) -> None:
        """Titled cards in two columns, each in a frame to cut along, two of a row alike high."""
        size *= self.tight
        wide, gap, pad, step = (self.room - 0.15) / 2, 0.15, 0.11, size * LEADING / 72
        wrapped = [
            [self._wrapped(line, self.room - wide + 2 * pad, size) for line in lines] for _, lines in cards
        ]
        tall = [0.42 + sum(len(lines) * step + 0.05 for lines in each) for each in wrapped]
        for first in range(0, len(cards), 2):
            row = range(first, min(first + 2, len(cards)))
            height = max(tall[k] for k in row)
            self.need(height)
            top = self.at - 0.1
            for k in row:
                left = SIDE + (k - first) * (wide + gap)
                self.frame(left, top, wide, height - 0.06)
                title = say(cards[k][0])
                big = 10.5 if len(title) * 10.5 * AVERAGE * 1.1 / 72 < wide - 2 * pad else 8.6
                self._set(left + pad, top + 0.21, title, fontsize=big, fontweight="bold")
                at = top + 0.41
                for lines in wrapped[k]:
                    for line in lines:
                        self._set(left + pad, at, line, fontsize=size)
                        at += step
                    at += 0.05
            self.at += height + 0.04

    def frame(self, x: float, y: float, wide: float, tall: float, dashed: bool = True) -> None:
        """A frame, ``dashed`` where it is cut along, its upper left corner ``y`` in below the top."""
        from matplotlib.patches import Rectangle

        at, size = (x / self.wide, 1 - (y + tall) / self.tall), (wide / self.wide, tall / self.tall)
        self.figure.add_artist(
            Rectangle(
                at, *size, fill=False, lw=0.9, ec=ink.INK, ls=(0, (5, 3)) if dashed else "-",
                transform=self.figure.transFigure,
            )
        )  # fmt: skip

    def together(self, heading: str, lines: Sequence[str], size: float = BODY_SIZE) -> None:
        """A heading and its list on one page, where one page can hold them."""
        shown = size * self.tight
        step = shown * LEADING / 72
        self.need(0.5 + sum(len(self._wrapped(line, 0.24, shown)) * step + 0.04 for line in lines))
        self.heading(heading)
        for line in lines:
            self.text(line, "\u2022", size)

    def _wrapped(self, text: str, indent: float, size: float, bold: bool = False) -> list[str]:
        wide = AVERAGE * WIDER.get(here().language, 1.0) * (1.08 if bold else 1.0)
        characters = int((self.room - indent) * 72 / (size * wide))
        return textwrap.wrap(say(text), characters) or [""]

    def mono(self, line: str, bold: bool = False) -> None:
        """One line in type of even width, as it stands: its cells are in the reader's language already."""
        self.need(self.row)
        self._set(
            SIDE, self.at, line, fontsize=TYPE, family="Courier", fontweight="bold" if bold else "normal"
        )
        self.at += self.row * 0.92

    def table(
        self, heads: Sequence[str], widths: Sequence[int], rows: Sequence[Sequence[str]], ruled: int = 5
    ) -> None:
        """Rows in type of even width, turning the page as needed. Widths in characters; figures stand to
        the right.

        A head of two lines is split at "|".  ruled : rows between two thin rules.
        """
        self.need(self.row * 5)
        self._heads(heads, widths)
        for k, row in enumerate(rows):
            if self.need(self.row):
                self._heads(heads, widths)
            line = "".join(say(cell).rjust(width) for cell, width in zip(row, widths, strict=True))
            self._set(SIDE, self.at, line, fontsize=TYPE, family="Courier")
            if ruled and k % ruled == ruled - 1:
                self.rule(self.at + 0.05, 0.25)
            self.at += self.row
        self.at += 0.1

    def _heads(self, heads: Sequence[str], widths: Sequence[int]) -> None:
        self.at += 0.06
        heads = [say(head) for head in heads]
        lines = 2 if any("|" in head for head in heads) else 1
        for k in range(lines):
            parts = [(head.split("|") if "|" in head else [""] * (lines - 1) + [head])[k] for head in heads]
            line = "".join(part.rjust(width) for part, width in zip(parts, widths, strict=True))
            self._set(SIDE, self.at, line, fontsize=TYPE, family="Courier", fontweight="bold")
            self.at += self.row * (0.85 if k + 1 < lines else 0)
        self.rule(self.at + 0.06, 0.6)
        self.at += self.row * 1.35

    def axes(self, height: float, inset: float = 0.0) -> Axes:
        """Axes over the width of the page but ``inset`` in on the left, ``height`` in high."""
        height *= self.tight
        bottom = self.tall - self.at - height
        drawn = ink.axes_at(self.figure, SIDE + inset, bottom, self.room - inset, height)
        self.at += height + 0.12
        return drawn


def filled(sheet: Worksheet, name: str, draw: Callable[[Paper], None]) -> list[Figure]:
    """The pages that ``draw`` fills, a little tighter where else a few lines would stand on a page of their
    own."""
    for tight in TIGHTER:
        paper = Paper(sheet, name, tight)
        draw(paper)
        if not paper.spills:
            return paper.figures
        if tight == TIGHTER[0]:
            loose = paper
    return loose.figures


def true_to_scale(axes: Axes, low: Sequence[float], high: Sequence[float]) -> None:
    """Limits that show at least ``low`` to ``high`` (x, y), lengths alike both ways, the middle kept."""
    wide, tall = axes.figure.get_size_inches() * (axes.get_position().width, axes.get_position().height)  # type: ignore[union-attr]
    per_inch = max((high[0] - low[0]) / wide, (high[1] - low[1]) / tall)
    across, up = ((low[k] + high[k]) / 2 for k in (0, 1))
    axes.set_xlim(across - wide * per_inch / 2, across + wide * per_inch / 2)
    axes.set_ylim(up - tall * per_inch / 2, up + tall * per_inch / 2)


def put(figure: Figure, x: float, y: float, text: str, **style: Any) -> None:
    """Text ``x`` in from the left, its base line ``y`` in below the top of the page."""
    wide, tall = (float(v) for v in figure.get_size_inches())
    style = {"fontsize": BODY_SIZE, "color": ink.INK, "family": "Helvetica", **style}
    at = x / wide, 1 - y / tall
    if _writable(text):
        if style.get("fontweight", "normal") == "normal":
            style["fontweight"] = "medium"  # as the standard fonts call it
        figure.add_artist(_plain_text()(*at, text, transform=figure.transFigure, **style))
        return
    style["family"] = "DejaVu Sans Mono" if style["family"] == "Courier" else "DejaVu Sans"
    style["fontsize"] *= 0.9
    figure.text(*at, text, **style).said = True  # type: ignore[attr-defined]


def _writable(text: str) -> bool:
    """Can the standard fonts write it? They hold the western European letters."""
    try:
        text.encode("cp1252")
    except UnicodeEncodeError:
        return False
    return True
