"""Contours of the slab as it is and as it will be, each with its number in a gap of the line."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.base.paper import MM_INCH
from crestcut.report.exchange.heights_dxf import height_contours
from crestcut.report.exchange.levels import EDGE
from crestcut.report.pictures.ink import decimals_for, nice_step
from crestcut.report.pictures.labels import CROSSED
from crestcut.report.plots.items import GREY, INK, MIDDLE, SMALL, THIN, Colour, Stroke, Words, width_of
from crestcut.report.plots.pen import Pen
from crestcut.report.plots.subject import Subject

CLOSE, STEEP = 2.0, 0.9  # mm on paper between contours, at least, over so much of the slab
OFF = 0.02  # mm on paper
INDEX = 5  # each so many contours one is bold and numbered
DASHES = (3.0, 1.2)  # mm, of what is finished
EXISTING, FINISHED = "EXISTING_CONTOURS", "FINISHED_CONTOURS"


@dataclass(frozen=True, eq=False)
class Numbered:
    """A contour that wants its number: mm on paper, and where it stands among the items."""

    at: FloatArray
    text: str
    style: Stroke


def contour_step(subject: Subject, ratio: int) -> float:
    """Own units of height between contours: ``STEEP`` of the slab has them ``CLOSE`` apart or wider."""
    grid = subject.levels.existing
    slope = np.hypot(*np.gradient(grid.values, grid.frame.cell))
    up = float(subject.levels.frame.turned_scale[2])
    rise = float(np.nanquantile(slope, STEEP)) * CLOSE * ratio / 1000.0 / up
    return max(nice_step(max(rise, 1e-6), 1), nice_step(0.002 / up, 1))


def draw_heights(pen: Pen) -> Iterator[Numbered]:
    """Existing heights thin and grey, finished ones dashed where they differ; those to be numbered."""
    levels = pen.subject.levels
    ratio = round(float(levels.frame.plan_scale[0]) * 1000.0 / pen.view.unit)
    step = contour_step(pen.subject, ratio)
    places = decimals_for(step)
    existing = pen.seen(levels.existing)
    shown: list[tuple[HeightGrid, str, Colour, tuple[float, ...]]] = [(existing, EXISTING, GREY, ())]
    if levels.finished is not None and levels.depth is not None:
        cut = ndimage.binary_dilation(np.nan_to_num(pen.seen(levels.depth).values) > EDGE)
        finished = pen.seen(levels.finished)
        shown.append((finished.like(np.where(cut, finished.values, np.nan)), FINISHED, INK, DASHES))
    for grid, layer, colour, dash in shown:
        if not grid.measured.any() or min(grid.frame.shape) < 2:
            continue
        for height, own in height_contours(levels, grid, step):
            at, index = pen.view.paper(own), round(height / step) % INDEX == 0
            if not np.isfinite(at).all() or length_of(at) < 2.0:
                continue
            at = thinned(at)
            style = Stroke(at, layer, MIDDLE if index else THIN, dash, colour)
            if layer == EXISTING and (index or step * INDEX > np.ptp(existing.values[existing.measured])):
                yield Numbered(at, f"{height:.{places}f}", style)
            else:
                pen.items.append(style)


def thinned(at: FloatArray) -> FloatArray:
    """A line (n, 2) without points that it passes within about ``OFF``: each cell of a grid gives some."""
    from matplotlib.path import Path

    line = Path(at)
    line.should_simplify = True
    line.simplify_threshold = OFF
    kept = np.asarray(line.cleaned(simplify=True).vertices, dtype=float)
    return kept[:-1]  # the last is the mark of the end


def length_of(at: FloatArray) -> float:
    """Of a line (n, 2)."""
    return float(np.hypot(*np.diff(at, axis=0).T).sum())


def draw_numbers(pen: Pen, labels: Sequence[Numbered]) -> None:
    """Each contour with a gap for its number, where that covers least."""
    for one in labels:
        wide = width_of(one.text, SMALL) + 1.4
        run = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(one.at, axis=0).T))])
        tries = np.arange(wide, run[-1] - wide, 3.0)
        middle = np.stack([np.interp(tries, run, one.at[:, k]) for k in (0, 1)], axis=1)
        inside = np.array([pen.inside(m, wide / 2 + 2.0) for m in middle], dtype=bool)
        if not inside.any():
            pen.items.append(one.style)
            continue
        ends = [
            np.stack([np.interp(tries + s * wide / 2, run, one.at[:, k]) for k in (0, 1)], axis=1)
            for s in (-1, 1)
        ]
        bent = wide - np.hypot(*(ends[1] - ends[0]).T)
        steep = np.abs(ends[1] - ends[0]) / wide
        half = np.stack([steep[:, 0] * wide + steep[:, 1] * SMALL, steep[:, 1] * wide + SMALL], axis=1)
        most = half.max(axis=0) / 2 / MM_INCH
        price = pen.room.covered(middle, (float(most[0]), float(most[1]))) + 4.0 * bent
        price += 0.01 * np.abs(tries - run[-1] / 2)
        best = int(np.argmin(np.where(inside, price, np.inf)))
        if price[best] >= CROSSED or bent[best] > 0.5:
            pen.items.append(one.style)
            continue
        along = ends[1][best] - ends[0][best]
        turn = math.degrees(math.atan2(along[1], along[0]))
        turn += 180.0 if turn > 90.0 else -180.0 if turn <= -90.0 else 0.0
        at = float(middle[best, 0]), float(middle[best, 1])
        pen.room.taken(at, tuple(half[best] / 2 / MM_INCH))
        pen.items += _without(one, run, float(tries[best]) - wide / 2, float(tries[best]) + wide / 2)
        pen.items.append(
            Words(at, one.text, one.style.layer, SMALL, "center", "middle", turn, colour=one.style.colour)
        )


def _without(one: Numbered, run: FloatArray, low: float, high: float) -> Iterator[Stroke]:
    """A contour but for the part between two lengths along it."""
    for a, b in ((0.0, low), (high, run[-1])):
        within = (run > a) & (run < b)
        s = np.concatenate([[a], run[within], [b]])
        at = np.stack([np.interp(s, run, one.at[:, k]) for k in (0, 1)], axis=1)
        yield Stroke(at, one.style.layer, one.style.pen, one.style.dash, one.style.colour)
