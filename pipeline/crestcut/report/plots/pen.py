"""Draws on the ground through a view, and keeps words off each other."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.base.paper import MM_INCH
from crestcut.report.pictures.labels import CROSSED, Places
from crestcut.report.pictures.plan_window import Window
from crestcut.report.plots.items import (
    BODY,
    CAPITAL,
    HAIR,
    POINT,
    SMALL,
    Item,
    Stroke,
    View,
    Words,
    corners,
    width_of,
)  # fmt: skip
from crestcut.report.plots.subject import Subject


@dataclass(eq=False)
class Pen:
    """Draws on the ground through a view; ``room`` knows what words must keep off."""

    subject: Subject
    view: View
    detail: bool = False  # the cut alone, enlarged: with names and depths of dots, without contours of old
    items: list[Item] = field(default_factory=list)

    def __post_init__(self) -> None:
        x0, y0, x1, y1 = self.view.box
        size = ((x1 - x0) / MM_INCH, (y1 - y0) / MM_INCH)
        self.room = Places(np.array([x0, y0]), np.array([x1, y1]), size)
        self.frame = self.subject.levels.existing.frame
        u, v = self.grid(corners(self.view.box)).T
        seen = Window(float(u.min()), float(v.min()), float(u.max()), float(v.max()))
        self.rows, self.columns = seen.crop(self.frame.shape, self.frame.cell)

    def grid(self, paper: FloatArray) -> FloatArray:
        """mm on paper -> grid u, v, m."""
        return self.frame.to_grid(self.subject.levels.frame.plan_to_site(self.view.own(paper)))

    def at(self, site: FloatArray) -> FloatArray:
        """Site x, y (..., 2) -> mm on paper."""
        return self.view.paper(self.subject.levels.frame.site_to_plan(site))

    def nodes(self, ij: FloatArray) -> FloatArray:
        """Columns and rows of the part that is seen (n, 2) -> mm on paper."""
        corner = (self.columns.start, self.rows.start)
        return self.at(self.frame.to_site((np.asarray(ij) + corner) * self.frame.cell))

    def seen(self, grid: HeightGrid) -> HeightGrid:
        """The part that shows."""
        return grid.crop(self.rows, self.columns)

    def inside(self, at: FloatArray, edge: float = 0.0) -> bool:
        """Is a place, mm, in the box and so far from its edges?"""
        x0, y0, x1, y1 = self.view.box
        return bool(x0 + edge <= at[0] <= x1 - edge and y0 + edge <= at[1] <= y1 - edge)

    def line(self, at: FloatArray, layer: str, pen: float, dash: tuple[float, ...] = ()) -> None:
        """A line on paper, mm, that words keep off."""
        self.items.append(Stroke(at, layer, pen, dash))
        self.room.lines(at)

    def beside(self, text: str, at: FloatArray, layer: str, off: float) -> None:
        """Small words right at a place, mm, whose sign reaches ``off`` from it: on that side where they cover
        least; elsewhere near by where each would cover others."""
        if not self.inside(at):
            return
        half = np.array([width_of(text, SMALL) / 2 + 0.3, SMALL / 2 + 0.4])
        ways = np.array([(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)])
        tries = at + ways * (half + off + 0.1)
        prices = self.room.covered(tries, tuple(half / MM_INCH)) + np.arange(4) * 0.1
        prices += np.array([0.0 if self.inside(t, float(half[0])) else CROSSED for t in tries])
        best = int(np.argmin(prices))
        if prices[best] >= CROSSED:
            self.name(text, at, layer, small=True, led=True)
            return
        spot = float(tries[best, 0]), float(tries[best, 1])
        self.room.taken(spot, tuple(half / MM_INCH))
        self.items.append(Words(spot, text, layer, SMALL, "center", "middle", clear=True))

    def name(
        self,
        text: str,
        at: FloatArray,
        layer: str,
        bold: bool = False,
        small: bool = False,
        led: bool = False,
    ) -> None:
        """Words about a place, mm, where they cover least, with a leader where that is far or ``led``."""
        if not self.inside(at):
            return
        height = SMALL if small else BODY
        place = float(at[0]), float(at[1])
        middle, ends = self.room.find(text, place, height / CAPITAL / POINT, bold)
        spot = float(middle[0]), float(middle[1])
        if led and ends is None:
            ends = np.array([spot, place])
        if ends is not None:
            self.items.append(Stroke(ends, layer, HAIR))
        self.items.append(Words(spot, text, layer, height, "center", "middle", bold=bold, clear=True))
