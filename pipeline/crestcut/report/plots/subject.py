"""What all sheets of one job draw: its levels, the line they are drawn along, what must be on the paper, and
in which units figures are printed."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike

from crestcut.base.grid import FloatArray
from crestcut.base.paper import FEET, foot_of
from crestcut.base.units import INCH, inches
from crestcut.job import PlotWish
from crestcut.report.exchange.levels import EDGE, Band, Levels
from crestcut.report.pictures.plan_window import Window

AIR = 0.15  # m kept around what must be seen
FAR = 2.0  # m beyond the window of the slab: a mark farther off is drawn where the sheet reaches it
LEVEL_PLACES = {"m": 3, "cm": 1, "mm": 0, "ft": 3, "us-ft": 3, "in": 2}  # of a level: a millimetre or less
MOST_SECTIONS = 24
QUARTER = 0.25 * INCH  # m: bands of depth of an inch job
TAGS = ("E", "N")
NOT_MEASURED = "n/m"


class Subject:
    """Places count in site metres, along the line and left of it; what is printed in ``unit``, m or ft."""

    def __init__(self, levels: Levels, wish: PlotWish) -> None:
        self.levels, self.wish, self.report = levels, wish, levels.report
        own = levels.frame.unit
        self.metric = own not in FEET
        self.unit = "m" if self.metric else "ft"
        self.long = 1.0 if self.metric else foot_of(own)  # m in one of them
        self.deep_unit = "mm" if self.metric else "in"
        self.band = 0.005 if self.metric else QUARTER
        self.tags = TAGS if levels.frame.system.plan else ("x", "y")

    @property
    def length(self) -> float:
        """Of the line, m."""
        return (len(self.report.line.xy) - 1) * self.report.line.step

    def on_line(self, chainage: ArrayLike, offset: ArrayLike = 0.0) -> FloatArray:
        """Site x, y (n, 2) of places so far along the line and left of it, m."""
        line = self.report.line
        s, off = np.broadcast_arrays(np.asarray(chainage, dtype=float), np.asarray(offset, dtype=float))
        at = np.clip(s / line.step, 0, len(line.xy) - 1)
        steps = np.arange(len(line.xy))
        yaw = np.interp(at, steps, np.unwrap(line.yaw))
        xy = np.stack([np.interp(at, steps, line.xy[:, k]) for k in (0, 1)], axis=-1)
        return np.asarray(xy + off[..., None] * np.stack([-np.sin(yaw), np.cos(yaw)], axis=-1))

    def level(self, own: float) -> str:
        """A level, own units, as printed."""
        if math.isnan(own):
            return NOT_MEASURED
        return f"{own:.{LEVEL_PLACES.get(self.levels.frame.unit, 3)}f}"

    def depth(self, metres: float) -> str:
        """A depth as printed, in ``deep_unit``."""
        if math.isnan(metres):
            return NOT_MEASURED
        return f"{metres * 1000:.1f}" if self.metric else f"{metres / INCH:.2f}"

    def band_words(self, band: Band) -> str:
        """From where to where, without the unit."""
        if self.metric:
            return f"{band.low * 1000:.0f}-{band.high * 1000:.0f}"
        low, high = (inches(v, 4).removesuffix(" in") for v in (band.low, band.high))
        return f"{low} to {high}"

    def must(self) -> Window:
        """What the plan must hold: line, vehicle's width, marks, the cut and all that is set out in it."""
        frame, car = self.levels.existing.frame, self.report.vehicle
        half = max(car.width, car.front_track + car.tyre_width) / 2
        ends = self.on_line(np.repeat(np.linspace(0, self.length, 60), 2), np.tile([-half, half], 60))
        size = np.array(frame.size)
        marks = frame.to_grid(np.array([m.xy for m in self.report.marks]).reshape(-1, 2))
        near = (marks > -FAR).all(axis=1) & (marks < size + FAR).all(axis=1)
        at = np.vstack([frame.to_grid(ends), marks[near]])
        cut = self.cut()
        if cut is not None:
            at = np.vstack([at, [(cut.u0, cut.v0), (cut.u1, cut.v1)]])
        (u0, v0), (u1, v1) = at.min(axis=0), at.max(axis=0)
        return Window(float(u0), float(v0), float(u1), float(v1)).grown(AIR)

    def cut(self) -> Window | None:
        """All that is to be cut; None where nothing is, or it is not released."""
        if self.levels.depth is None:
            return None
        cell = self.levels.existing.frame.cell
        rows, columns = np.nonzero(np.nan_to_num(self.levels.depth.values) > EDGE)
        if len(rows) == 0:
            return None
        low, high = (float(f(columns)) * cell for f in (np.min, np.max))
        return Window(low, float(rows.min()) * cell, high, float(rows.max()) * cell)

    @property
    def half(self) -> float:
        """How far cross sections reach to either side of the line, m: over vehicle and cut."""
        car, step = self.report.vehicle, 0.25 * self.long
        reach = max(car.width, car.front_track + car.tyre_width) / 2
        if (cut := self.cut()) is not None:
            start = self.levels.existing.frame.to_grid(self.report.line.xy)
            reach = max(reach, cut.v1 - float(start[:, 1].min()), float(start[:, 1].max()) - cut.v0)
        return math.ceil((reach + 0.05) / step) * step

    @property
    def between(self) -> float:
        """Between cross sections, m: as asked, else half a metre or two feet, or more on a long line."""
        if self.wish.sections is not None:
            return self.wish.sections
        step = 0.5 if self.metric else 2.0
        while self.length / (step * self.long) > MOST_SECTIONS:
            step *= 2
        return step * self.long

    def chainages(self, step: float) -> FloatArray:
        """Every ``step`` m along the line, from its start."""
        return np.arange(math.floor(self.length / step + 1e-9) + 1, dtype=np.float64) * step
