"""What a sheet is made of, before it is a PDF or a drawing: lines, words and areas in mm on paper from the
lower left corner, each on a named layer; and the view, which says what a mm of the plan is on the ground."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from crestcut.base.grid import FloatArray
from crestcut.base.language import say
from crestcut.base.paper import MM_INCH

# mm: pens of ISO 128-20
HAIR, THIN, MIDDLE, BOLD, HEAVY = 0.13, 0.18, 0.25, 0.35, 0.50
SMALL, BODY, LARGE = 2.0, 2.5, 3.5  # mm: heights of a capital (ISO 3098-1 has 2.5 and 3.5; none is under 2)
CAPITAL = 0.718  # of the type's size: height of a capital of the standard fonts' Helvetica
POINT = MM_INCH / 72  # mm
Place = tuple[float, float]
Box = tuple[float, float, float, float]  # left, bottom, right, top
Colour = tuple[float, float, float]  # sRGB, 0 to 1
INK: Colour = (0.106, 0.102, 0.098)
GREY: Colour = (0.45, 0.44, 0.43)
PALE: Colour = (0.86, 0.86, 0.85)


@dataclass(frozen=True, eq=False)
class Stroke:
    """A line through ``at`` (n, 2).  pen : its width, mm.  dash : mm drawn and left in turn; none: solid."""

    at: FloatArray
    layer: str
    pen: float = THIN
    dash: tuple[float, ...] = ()
    colour: Colour = INK

    def __post_init__(self) -> None:
        object.__setattr__(self, "at", np.asarray(self.at, dtype=float))


@dataclass(frozen=True)
class Words:
    """One line of text, in the language of the sheet.  height : of a capital, mm.  across : which part of it
    is at ``at``, left, center or right; up : base, or the middle of its capitals.  turn : degrees to the
    left.  clear : on white.  said : it is in that language already, or a name."""

    at: Place
    text: str
    layer: str
    height: float = SMALL
    across: str = "left"
    up: str = "base"
    turn: float = 0.0
    bold: bool = False
    clear: bool = False
    colour: Colour = INK
    said: bool = False

    def __post_init__(self) -> None:
        if not self.said:
            object.__setattr__(self, "text", say(self.text))
            object.__setattr__(self, "said", True)


@dataclass(frozen=True)
class Hatch:
    """Lines at an angle, degrees, so far apart, mm."""

    angle: float
    apart: float


@dataclass(frozen=True, eq=False)
class Area:
    """What closed rings (n, 2) enclose, holes being rings within, filled and hatched."""

    rings: tuple[FloatArray, ...]
    layer: str
    fill: Colour | None = None
    hatch: Hatch | None = None


Item = Stroke | Words | Area


@dataclass(frozen=True)
class View:
    """The ground through a box on paper.

    box : mm.  middle : own east, north at its middle.  turn : of the own east axis from the paper's
    horizontal, to the left, rad.  unit : mm on paper of one own unit.
    """

    box: Box
    middle: Place
    turn: float
    unit: float

    @property
    def centre(self) -> Place:
        """Middle of the box, mm."""
        return (self.box[0] + self.box[2]) / 2, (self.box[1] + self.box[3]) / 2

    def paper(self, own: ArrayLike) -> FloatArray:
        """Own east, north (..., 2) -> mm on paper."""
        d = (np.asarray(own, dtype=float) - self.middle) * self.unit
        return _turned(d, self.turn) + self.centre

    def own(self, paper: ArrayLike) -> FloatArray:
        """mm on paper (..., 2) -> own east, north."""
        d = _turned(np.asarray(paper, dtype=float) - self.centre, -self.turn)
        return np.asarray(d / self.unit + self.middle)


@dataclass(frozen=True)
class Sheet:
    """One sheet.  name : what it shows.  size : wide, tall, mm.  items : what stands on the paper itself.
    view : of the ground, if it has one, and ``ground``, what is seen through it."""

    name: str
    size: Place
    items: tuple[Item, ...]
    view: View | None = None
    ground: tuple[Item, ...] = field(default=())


def _turned(d: FloatArray, angle: float) -> FloatArray:
    c, s = math.cos(angle), math.sin(angle)
    return np.stack([d[..., 0] * c - d[..., 1] * s, d[..., 0] * s + d[..., 1] * c], axis=-1)


def segment(a: Place, b: Place, layer: str, pen: float = THIN, colour: Colour = INK) -> Stroke:
    """A straight line."""
    return Stroke(np.array([a, b]), layer, pen, colour=colour)


def rectangle(box: Box, layer: str, pen: float = THIN) -> Stroke:
    """The outline of a box."""
    return Stroke(corners(box), layer, pen)


def corners(box: Box) -> FloatArray:
    """Round a box and back to its first corner, (5, 2)."""
    x0, y0, x1, y1 = box
    return np.array([(x0, y0), (x1, y0), (x1, y1), (x0, y1), (x0, y0)])


def circle(at: Place, radius: float, layer: str, pen: float = THIN) -> Stroke:
    """A circle in 32 parts: off by 0.5 % of its radius."""
    turn = np.linspace(0.0, 2 * np.pi, 33)
    return Stroke(np.column_stack([np.cos(turn), np.sin(turn)]) * radius + at, layer, pen)


@cache
def width_of(text: str, height: float, bold: bool = False) -> float:
    """mm that a line of words takes in the language of the sheet, with a little to spare."""
    return _wide(say(text), height, bold)


def _wide(text: str, height: float, bold: bool) -> float:
    """The same of words as they stand: by a sans face that is wider than the standard fonts' by a tenth."""
    from matplotlib.font_manager import FontProperties
    from matplotlib.textpath import text_to_path

    face = FontProperties(family="DejaVu Sans", size=100, weight="bold" if bold else "normal")
    wide = text_to_path.get_text_width_height_descent(text, face, False)[0] / 100
    return float(wide) * 0.92 * height / CAPITAL


def wrapped(text: str, height: float, room: float, bold: bool = False) -> list[str]:
    """Words on lines no wider than ``room`` mm; a word that is wider is broken."""
    lines: list[str] = []
    for word in text.split():
        if lines and _wide(f"{lines[-1]} {word}", height, bold) <= room:
            lines[-1] += f" {word}"
            continue
        while _wide(word, height, bold) > room and len(word) > 1:
            fits = next(
                k for k in range(len(word) - 1, 0, -1) if k == 1 or _wide(word[:k], height, bold) <= room
            )
            lines.append(word[:fits])
            word = word[fits:]
        lines.append(word)
    return lines
