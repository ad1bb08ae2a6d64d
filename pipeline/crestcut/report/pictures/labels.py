"""Room for words among lines: each label goes where it covers least, near what it names."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.report.pictures import ink

if TYPE_CHECKING:
    from matplotlib.axes import Axes

APART = 0.035  # in between the points that stand for a line
RINGS = (0.16, 0.26, 0.38, 0.55, 0.75, 1.0, 1.35, 1.8, 2.4)  # in from what is named
TURNS = 24
CROSSED, FAR = 40.0, 2.2  # what other words cost, and an inch of distance; a point of a line costs its weight
CHARACTER = 0.55 / 72  # in a point of type: advance of the sans face; bold is a ninth wider
LEADER, SIGN = 0.2, 0.07  # in: farther than this and a thin line leads to it, short of the sign it stands at


class Places:
    """What is drawn in one box, in inches from its lower left corner, and the words that found room among it.

    ``lines`` and ``area`` say what words should not cover; ``find`` places them.
    """

    def __init__(self, low: FloatArray, high: FloatArray, size: tuple[float, float]) -> None:
        """low, high : corners (2,) of the box in data coordinates.  size : of the box, in."""
        self._low, self._size = low, np.array(size)
        self._scale = self._size / (high - low)
        self._points: list[tuple[FloatArray, float]] = []  # what is drawn and how much it minds words
        self._boxes: list[FloatArray] = []

    def lines(self, xy: FloatArray, weight: float = 1.0) -> None:
        """A polyline, (n, 2) data coordinates; NaN breaks it."""
        at = self._inches(np.asarray(xy, dtype=float))
        run = np.concatenate([[0.0], np.cumsum(np.nan_to_num(np.hypot(*np.diff(at, axis=0).T)))])
        if len(at) < 2 or run[-1] == 0:
            self.area(np.asarray(xy, dtype=float), weight)
            return
        steps = np.linspace(0.0, run[-1], min(int(run[-1] / APART) + 2, 4000))
        self._add(np.stack([np.interp(steps, run, at[:, k]) for k in (0, 1)], axis=1), weight)

    def area(self, xy: FloatArray, weight: float) -> None:
        """Points (n, 2) of something to keep clear of, data coordinates."""
        self._add(self._inches(np.asarray(xy, dtype=float)), weight)

    def find(
        self, text: str, at: tuple[float, float], size: float, bold: bool = False, below: bool = False
    ) -> tuple[FloatArray, FloatArray | None]:
        """Where the middle of words about ``at`` goes, rather ``below`` it (data coordinates), and the ends
        of a leader where they had to go far. size : of the type, points."""
        anchor = self._inches(np.array([at], dtype=float))[0]
        rows = text.split("\n")
        half = np.array([
            max(map(len, rows)) * size * CHARACTER * (1.11 if bold else 1.0) / 2 + 0.03,
            len(rows) * size * 1.25 / 72 / 2 + 0.01,
        ])  # fmt: skip
        middle = self._best(anchor, half, below)
        self._boxes.append(np.stack([middle - half, middle + half]))
        nearest = np.clip(anchor, middle - half, middle + half)
        reach = float(np.hypot(*(nearest - anchor)))
        ends = None
        if reach > LEADER:
            ends = self._data(np.stack([nearest, anchor + (nearest - anchor) * SIGN / reach]))
        return self._data(middle), ends

    def taken(self, at: tuple[float, float], half: Sequence[float]) -> None:
        """Keep other words off a box about ``at`` (data coordinates), ``half`` its half sizes, inches."""
        middle, size = self._inches(np.array([at], dtype=float))[0], np.asarray(half, dtype=float)
        self._boxes.append(np.stack([middle - size, middle + size]))

    def _best(self, anchor: FloatArray, half: FloatArray, below: bool) -> FloatArray:
        """The cheapest middle of a box with ``half`` sizes; of equals the nearest."""
        angles = 2 * np.pi * np.arange(TURNS) / TURNS + 0.3
        ways = np.stack([np.cos(angles), np.sin(angles)], axis=1)
        rings = np.repeat(RINGS, TURNS)
        ways = np.tile(ways, (len(RINGS), 1))
        middles = anchor + rings[:, None] * ways + half * np.clip(1.5 * ways, -1, 1)
        fits = ((middles >= half) & (middles <= self._size - half)).all(axis=1)
        if not fits.any():
            return np.clip(anchor, half, np.maximum(self._size - half, half))
        middles, prices = middles[fits], FAR * rings[fits]
        if below:
            prices += 2 * FAR * (middles[:, 1] > anchor[1])
        prices += self._covered(middles, half)
        return np.asarray(middles[int(np.argmin(prices))])

    def covered(self, at: FloatArray, half: Sequence[float]) -> FloatArray:
        """What words about each of the places (n, 2), data coordinates, would cover; ``half`` their half
        sizes, inches. From ``CROSSED``: other words."""
        return self._covered(self._inches(np.asarray(at, dtype=float)), np.asarray(half, dtype=float))

    def _covered(self, middles: FloatArray, half: FloatArray) -> FloatArray:
        prices = np.zeros(len(middles))
        if not len(middles):
            return prices
        low, high = middles.min(axis=0) - half - 0.03, middles.max(axis=0) + half + 0.03
        for points, weight in self._points:
            points = points[((points > low) & (points < high)).all(axis=1)]  # most lie far from all of them
            under = (np.abs(points - middles[:, None]) < half + 0.02).all(axis=2)
            prices += weight * under.sum(axis=1)
        for box in self._boxes:
            prices += CROSSED * ((middles - half < box[1]) & (middles + half > box[0])).all(axis=1)
        return prices

    def _add(self, at: FloatArray, weight: float) -> None:
        at = at[~np.isnan(at).any(axis=1)]
        inside = ((at > -0.1) & (at < self._size + 0.1)).all(axis=1)
        self._points.append((at[inside], weight))

    def _inches(self, xy: FloatArray) -> FloatArray:
        return np.asarray((xy - self._low) * self._scale)

    def _data(self, inches: FloatArray) -> FloatArray:
        return np.asarray(inches / self._scale + self._low)


class Room(Places):
    """The same of axes whose limits are final, and ``put`` writes there."""

    def __init__(self, axes: Axes) -> None:
        self._axes = axes
        low, high = np.array([axes.get_xlim(), axes.get_ylim()]).T
        super().__init__(low, high, ink.axes_size(axes))

    def shows(self, at: tuple[float, float]) -> bool:
        """Does a place (data coordinates) lie on these axes? Of several cuts each has a picture."""
        (x0, x1), (y0, y1) = self._axes.get_xlim(), self._axes.get_ylim()
        return bool(x0 <= at[0] <= x1 and y0 <= at[1] <= y1)

    def put(
        self, text: str, at: tuple[float, float], size: float = 7.4, bold: bool = False, below: bool = False
    ) -> None:
        """Words about ``at`` (data coordinates), rather ``below`` it; a leader where they had to go far."""
        (x, y), ends = self.find(text, at, size, bold, below)
        if ends is not None:
            ink.line(self._axes, ends, lw=0.7, zorder=11, effects=ink.halo(1.8))
        self._axes.text(
            x, y, text, ha="center", va="center", fontsize=size, fontweight="bold" if bold else "normal",
            zorder=21, path_effects=ink.halo(2.6), color=ink.INK, linespacing=1.15,
        )  # fmt: skip
