"""The measuring sheet as pages to print, and as a file to fill in."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from crestcut.report.pictures import ink
from crestcut.report.sheets.vehicle_views import front, low_part, side, underneath
from crestcut.study import Identity
from crestcut.vehicle import CAUTIONS, ITEMS, LOADED, LOW_PARTS, OPTIONAL, PART_ITEMS, STEPS, blank_sheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

PDF_NAME, FILL_NAME = "measuring_sheet.pdf", "measuring_sheet.toml"
WIDE, TALL, EDGE = 8.27, 11.69, 0.6  # in: A4 upright; a letter page prints it at 94 %
PARTS, LOADS = 5, 2  # blocks to fill in; more on a copy of the page
_PLACES = 3  # readings of each


class Page:
    """A page in inches from its top left corner."""

    def __init__(self, number: int, heading: str) -> None:
        self.figure: Figure = ink.new_figure(TALL, WIDE)
        self.paper: Axes = ink.paper(self.figure)
        self.put(EDGE, 0.62, "Measuring sheet for a vehicle", fontsize=15, fontweight="bold")
        self.put(EDGE, 0.86, heading, fontsize=9.5, color=ink.SOFT)
        self.put(
            EDGE, TALL - 0.3, "Write units. Letters are the same on drawing, boxes and fill-in file.",
            fontsize=6.8, color=ink.SOFT,
        )  # fmt: skip
        self.put(WIDE - EDGE, TALL - 0.3, f"{number}", fontsize=8, ha="right", color=ink.SOFT)

    def put(self, x: float, y: float, text: str, **style: object) -> None:
        """Text with its base line ``y`` below the top."""
        self.paper.text(x, TALL - y, text, **{**ink.BODY, **style})

    def rule(self, x0: float, x1: float, y: float, weight: float = 0.7) -> None:
        """A level line."""
        self.paper.plot([x0, x1], [TALL - y] * 2, color=ink.INK, lw=weight)

    def box(self, x: float, y: float, width: float, height: float, fill: str = "white") -> None:
        """A box to write in, its top left corner at x, y."""
        from matplotlib.patches import Rectangle

        corner = (x, TALL - y - height)
        self.paper.add_patch(
            Rectangle(corner, width, height, facecolor=fill, edgecolor=ink.SOFT, linewidth=0.7)
        )

    def heading(self, y: float, text: str) -> None:
        """A heading with a rule under it."""
        self.put(EDGE, y, text, fontsize=10.5, fontweight="bold")
        self.rule(EDGE, WIDE - EDGE, y + 0.06)

    def draw(self, view: Callable[[Axes], None], x: float, y: float, width: float, height: float) -> None:
        """A view in a frame whose top left corner is at x, y."""
        view(ink.axes_at(self.figure, x, TALL - y - height, width, height))


def measuring_pages() -> tuple[Figure, ...]:
    """The pages to print: how, the lengths, the low parts."""
    return _how_page(), _lengths_page(), _parts_page()


def write_measuring_sheet(folder: Path) -> tuple[Path, ...]:
    """Write ``measuring_sheet.pdf`` and ``measuring_sheet.toml`` (to fill in). Same bytes every time."""
    pdf, fill = folder / PDF_NAME, folder / FILL_NAME
    about = Identity("Measuring sheet for a vehicle")
    with ink.book(pdf, about) as book:
        for figure in measuring_pages():
            book.savefig(figure)
    fill.write_text(f"# made by: {about.tool}\n{blank_sheet()}", encoding="utf-8", newline="\n")
    return pdf, fill


def _how_page() -> Figure:
    page = Page(1, "On flat ground, as it is driven, with tape, straightedge and a stack of cards")
    y = 1.2
    for x, words, width in ((EDGE, "Vehicle", 3.0), (3.6, "Load", 2.2), (5.75, "Date", 2.15)):
        page.put(x, y, words, color=ink.SOFT)
        page.rule(x + 0.52, x + width - 0.23, y + 0.03)
    page.put(EDGE, 1.58, "FROM THE SIDE, front to the right", fontsize=7.5, fontweight="bold", color=ink.SOFT)
    page.put(
        WIDE - EDGE, 1.58, "no vehicle there is; not to scale, clearances are drawn larger",
        fontsize=7.0, ha="right", color=ink.SOFT,
    )  # fmt: skip
    page.draw(side, EDGE - 0.1, 1.66, WIDE - 2 * EDGE + 0.2, 2.46)
    page.put(EDGE, 4.4, "FROM THE FRONT", fontsize=7.5, fontweight="bold", color=ink.SOFT)
    page.draw(front, EDGE - 0.1, 4.44, 3.9, 2.1)
    y = max(_cautions(page, 4.45, 4.36, WIDE - EDGE - 4.45) + 0.3, 6.84)
    page.heading(y, "How to measure")
    y += 0.28
    for number, (what, how) in enumerate(STEPS, start=1):
        page.put(EDGE, y, f"{number}", fontsize=9.5, fontweight="bold")
        page.put(EDGE + 0.25, y, what, fontsize=9.0, fontweight="bold")
        for line in textwrap.wrap(how, 92):
            page.put(EDGE + 1.4, y, line, fontsize=8.6)
            y += 0.165
        y += 0.06
    page.heading(y + 0.24, "Then")
    lines = (
        "Type the readings into measuring_sheet.toml, which came with these pages, and run",
        "    crestcut vehicle measuring_sheet.toml --out my_vehicle",
        "It holds the figures against each other, says what looks mistaken, and writes the vehicle file.",
    )
    for k, line in enumerate(lines):
        style = {"family": "DejaVu Sans Mono", "fontsize": 8.2} if k == 1 else {"fontsize": 8.6}
        page.put(EDGE, y + 0.52 + 0.19 * k, line, **style)
    return page.figure


def _cautions(page: Page, x: float, y: float, width: float) -> float:
    """The cautions in a heavy frame; returns where it ends."""
    from matplotlib.patches import Rectangle

    lines = [textwrap.wrap(c, 52) for c in CAUTIONS]
    height = 0.42 + sum(0.145 * len(c) + 0.06 for c in lines)
    page.paper.add_patch(
        Rectangle((x, TALL - y - height), width, height, facecolor=ink.PALE, edgecolor=ink.INK, linewidth=1.8)
    )
    page.put(x + 0.12, y + 0.23, "CAUTION", fontsize=10, fontweight="bold")
    at = y + 0.47
    for caution in lines:
        page.put(x + 0.12, at, "•", fontsize=8.4)
        for line in caution:
            page.put(x + 0.24, at, line, fontsize=7.8)
            at += 0.145
        at += 0.06
    return y + height


def _lengths_page() -> Figure:
    page = Page(2, "The lengths, each two or three times")
    page.put(
        EDGE, 1.16, "UNDERNEATH, seen through the floor from above, front to the right",
        fontsize=7.5, fontweight="bold", color=ink.SOFT,
    )  # fmt: skip
    page.draw(underneath, EDGE - 0.1, 1.2, WIDE - 2 * EDGE + 0.2, 3.0)
    wide, tall, top = 1.16, 0.285, 4.62
    first = WIDE - EDGE - _PLACES * wide
    for k in range(_PLACES):
        page.put(first + (k + 0.5) * wide, top - 0.08, f"reading {k + 1}", fontsize=7.0, ha="center",
                 color=ink.SOFT)  # fmt: skip
    for row, item in enumerate(ITEMS):
        y = top + row * tall
        base = y + 0.185
        page.put(EDGE + 0.1, base, item.letter, fontsize=10, fontweight="bold", ha="center")
        page.put(EDGE + 0.3, base - 0.045, f"{item.what}{'' if item.needed else ' *'}", fontsize=8.4)
        page.put(EDGE + 0.3, base + 0.065, item.how, fontsize=6.4, color=ink.SOFT)
        for k in range(_PLACES):
            page.box(first + k * wide, y, wide, tall)
    end = top + len(ITEMS) * tall
    page.put(
        EDGE, end + 0.2, f"{OPTIONAL}. R and V in degrees; all others in mm, or inches with fractions.",
        fontsize=7.4, color=ink.SOFT,
    )  # fmt: skip
    page.put(
        EDGE, end + 0.36, "P, Q and T, U may be left out where low parts overleaf describe nose and tail.",
        fontsize=7.4, color=ink.SOFT,
    )  # fmt: skip
    return page.figure


def _parts_page() -> Figure:
    page = Page(3, "Low parts, and the vehicle loaded; copy this page for more")
    for k, line in enumerate(textwrap.wrap(LOW_PARTS, 60)):
        page.put(EDGE, 1.2 + 0.165 * k, line, fontsize=8.6)
    for k, item in enumerate(PART_ITEMS):
        page.put(EDGE + 0.08, 1.82 + 0.185 * k, item.letter, fontsize=9, fontweight="bold", ha="center")
        page.put(EDGE + 0.25, 1.82 + 0.185 * k, f"{item.what}: {item.how}", fontsize=7.4)
    page.draw(low_part, 4.55, 1.02, WIDE - EDGE - 4.45, 1.75)
    y = 3.0
    for number in range(PARTS):
        y = _part_block(page, y, number + 1)
    y += 0.2
    page.heading(y, "Loaded")
    for k, line in enumerate(textwrap.wrap(LOADED, 106)):
        page.put(EDGE, y + 0.26 + 0.16 * k, line, fontsize=8.2)
    y += 0.6
    for _ in range(LOADS):
        page.put(EDGE, y + 0.19, "load", fontsize=8.0, color=ink.SOFT)
        page.rule(EDGE + 0.4, EDGE + 2.3, y + 0.22)
        for x, words in ((3.05, "front"), (5.45, "rear")):
            page.put(x, y + 0.19, words, fontsize=8.0, color=ink.SOFT)
            for k in range(2):
                page.box(x + 0.42 + 0.86 * k, y, 0.86, 0.27)
        y += 0.36
    return page.figure


def _part_block(page: Page, y: float, number: int) -> float:
    """Name, softness and carrier of one part over three rows of boxes; returns where the next begins."""
    page.put(EDGE, y + 0.17, f"{number}", fontsize=10, fontweight="bold")
    page.put(EDGE + 0.2, y + 0.17, "part", fontsize=8.0, color=ink.SOFT)
    page.rule(EDGE + 0.52, EDGE + 2.6, y + 0.2)
    page.put(EDGE + 2.75, y + 0.17, "may touch  yes / no", fontsize=7.6)
    page.put(EDGE + 4.15, y + 0.17, "carried by  body / front axle / rear axle", fontsize=7.6)
    wide, tall, left = (WIDE - 2 * EDGE - 0.62) / len(PART_ITEMS), 0.235, EDGE + 0.62
    y += 0.3
    for k, item in enumerate(PART_ITEMS):
        page.put(left + (k + 0.5) * wide, y + 0.11, f"{item.letter}", fontsize=8.6, fontweight="bold",
                 ha="center")  # fmt: skip
    y += 0.15
    for row in range(_PLACES):
        page.put(EDGE + 0.52, y + 0.165, f"reading {row + 1}", fontsize=6.6, color=ink.SOFT, ha="right")
        for k in range(len(PART_ITEMS)):
            page.box(left + k * wide, y, wide, tall)
        y += tall
    return y + 0.13
