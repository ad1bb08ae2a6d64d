"""The ground from above: heights before and after, depth to remove, the line of travel, what is marked, and
the key to all that."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.paper import MM_INCH
from crestcut.base.units import inches, millimetres
from crestcut.report.exchange.levels import EDGE, Band, Level
from crestcut.report.pictures.colours import depth_colours
from crestcut.report.pictures.ink import decimals_for, nice_step
from crestcut.report.pictures.labels import CROSSED
from crestcut.report.pictures.plan_window import Window
from crestcut.report.plots.furniture import Sign
from crestcut.report.plots.heights import DASHES, EXISTING, FINISHED, contour_step, draw_heights, draw_numbers
from crestcut.report.plots.items import (
    BOLD,
    GREY,
    HAIR,
    INK,
    MIDDLE,
    SMALL,
    THIN,
    Area,
    Box,
    Colour,
    Hatch,
    Item,
    Stroke,
    View,
    Words,
    circle,
    corners,
    rectangle,
    segment,
    width_of,
)  # fmt: skip
from crestcut.report.plots.pen import Pen
from crestcut.report.plots.subject import Subject

TICKS = 25.0  # mm on paper between chainages that are written, at least
CROSS, RING, DOT = 6.0, 1.5, 0.6  # mm: arms of a mark from end to end; its circle; circle of a dot
TINT = 0.45  # of a depth's colour on white: lines and figures stay readable
DOTTED = (6.0, 1.2, 0.8, 1.2)  # mm
DEPTH, OUTLINE, TRAVEL, MARKS, DOTS = "DEPTH_BANDS", "OUTLINE", "TRAVEL", "MARKS", "DOTS"
KEEP, MISSING, COORDINATES = "KEEP_AREAS", "NOT_MEASURED", "GRID"
Sample = Callable[[Box], list[Item]]


def draw_ground(subject: Subject, view: View, detail: bool = False) -> tuple[Item, ...]:
    """All layers seen through a view; words last, so that they know what to keep off."""
    pen = Pen(subject, view, detail)
    _missing(pen)
    bands = _bands(pen)
    labels = [] if detail else list(draw_heights(pen))
    _keeps(pen)
    _crosses(pen)
    _line(pen)
    _marks(pen)
    dots = _dots(pen)
    _names(pen)
    if detail:
        _dot_names(pen, dots)
    _deepest(pen)
    for number, (band, known) in enumerate(bands):
        _band_words(pen, band, known, number)
    draw_numbers(pen, labels)
    return tuple(pen.items)


def _missing(pen: Pen) -> None:
    missing = ~pen.seen(pen.subject.levels.existing).measured
    for rings in outlines(missing.astype(float), 0.5, 1.5):
        if len(rings[0]) > 5:
            pen.items.append(Area(tuple(pen.nodes(r) for r in rings), MISSING, None, Hatch(0.0, 1.6)))
            pen.items.append(Stroke(pen.nodes(rings[0]), MISSING, HAIR, colour=GREY))


def outlines(values: FloatArray, low: float, high: float) -> Iterator[list[FloatArray]]:
    """Outer ring and holes of all that lies between two values, columns and rows."""
    from contourpy import FillType, contour_generator

    if min(values.shape) < 2:
        return
    made = contour_generator(z=np.pad(values, 1), fill_type=FillType.OuterOffset)
    for points, offsets in zip(*made.filled(low, high), strict=True):
        yield [points[a:b] - 1.0 for a, b in pairwise(offsets)]


def band_look(number: int, count: int) -> tuple[Colour, Hatch]:
    """Fill and hatch of a band of depth: darker and closer with depth, so that they differ in grey too."""
    share = (number + 0.5) / count
    colour = depth_colours(np.array([share]), 1.0)[0] / 255.0
    red, green, blue = (float(c) for c in 1.0 - TINT * (1.0 - colour))
    return (red, green, blue), Hatch(45.0 if number % 2 == 0 else 135.0, 3.2 - 2.0 * share)


def _bands(pen: Pen) -> list[tuple[Band, BoolArray]]:
    """Depth to remove in bands, each with the nodes it covers; nothing where it is not released."""
    depth = pen.subject.levels.depth
    if depth is None or pen.subject.cut() is None:
        return []
    values = np.nan_to_num(pen.seen(depth).values)
    bands = pen.subject.levels.bands(pen.subject.band)
    found = []
    for number, band in enumerate(bands):
        fill, hatch = band_look(number, len(bands))
        low = max(band.low, EDGE)
        for rings in outlines(values, low, band.high if number + 1 < len(bands) else 1.0):
            pen.items.append(Area(tuple(pen.nodes(r) for r in rings), DEPTH, fill, hatch))
            for ring in rings:
                edge = number == 0
                pen.items.append(Stroke(pen.nodes(ring), OUTLINE if edge else DEPTH, BOLD if edge else HAIR))
                pen.room.lines(pen.nodes(ring), 0.3)
        found.append((band, (values > low) & (values <= band.high)))
    return found


def _band_words(pen: Pen, band: Band, known: BoolArray, number: int) -> None:
    """From how much to how much, in the band itself where there is room."""
    words = pen.subject.band_words(band)
    mm = pen.frame.cell * pen.view.unit / float(pen.subject.levels.frame.plan_scale[0])
    wide, tall = width_of(words, SMALL) + 1.0, SMALL + 1.0
    fits = ndimage.binary_erosion(known, np.ones((math.ceil(tall / mm), math.ceil(wide / mm))))
    if not fits.any():
        return
    rows, columns = np.nonzero(fits)
    places = pen.nodes(np.column_stack([columns, rows]).astype(float))
    half = (wide / 2 / MM_INCH, tall / 2 / MM_INCH)
    pick = slice(None, None, max(1, len(places) // 400))
    inside = np.array([pen.inside(p, wide) for p in places[pick]])
    prices = np.where(inside, pen.room.covered(places[pick], half), np.inf)
    best = int(np.argmin(prices))
    if prices[best] < CROSSED:
        at = places[pick][best]
        pen.room.taken((float(at[0]), float(at[1])), half)
        pen.items.append(Words(tuple(at), words, DEPTH, SMALL, "center", "middle", clear=True))


def _keeps(pen: Pen) -> None:
    for keep in pen.subject.report.keeps:
        area = pen.at(np.vstack([keep.area, keep.area[:1]]))
        pen.items.append(Area((area,), KEEP, None, Hatch(60.0, 4.0)))
        pen.line(area, KEEP, MIDDLE)


def _names(pen: Pen) -> None:
    """Of marks and keep areas."""
    for mark in pen.subject.report.marks:
        pen.name(mark.name, pen.at(np.array(mark.xy)), MARKS, bold=True)
    for keep in pen.subject.report.keeps:
        area = pen.at(keep.area)
        u0, v0, u1, v1 = pen.view.box
        part = Window(u0, v0, u1, v1).clip(area)
        if part is None:
            continue
        limit = "no cut" if keep.deepest <= 0 else f"at most {_length(pen.subject, keep.deepest)}"
        pen.name(f"{keep.kind}: {limit}", (part.min(axis=0) + part.max(axis=0)) / 2, KEEP, small=True)


def _length(subject: Subject, metres: float) -> str:
    return millimetres(metres) if subject.metric else inches(metres)


def _line(pen: Pen) -> None:
    """The line of travel with its chainages."""
    subject = pen.subject
    pen.line(pen.at(subject.report.line.xy), TRAVEL, BOLD, DOTTED)
    per = pen.view.unit / float(subject.levels.frame.plan_scale[0])  # mm on paper of a m
    step = nice_step(TICKS / (per * subject.long), 1) * subject.long
    for chainage in subject.chainages(step):
        at, tip = pen.at(subject.on_line(chainage)), pen.at(subject.on_line(chainage, 1.0))
        left = (tip - at) / np.hypot(*(tip - at))
        pen.items.append(Stroke(np.array([at - 1.8 * left, at + 1.8 * left]), TRAVEL, MIDDLE))
        text = f"{chainage / subject.long:.{2 if step / subject.long < 0.1 else 1}f}"
        side = 1.0 if left[1] < 0 else -1.0  # below the line
        spot, wide = at + side * 4.2 * left, width_of(text, SMALL)
        if pen.inside(spot, 1.5 + wide / 2):
            pen.room.taken(tuple(spot), (wide / 2 / MM_INCH, 0.6 * SMALL / MM_INCH))
            pen.items.append(Words(tuple(spot), text, TRAVEL, SMALL, "center", "middle", clear=True))


def _marks(pen: Pen) -> None:
    for mark in pen.subject.report.marks:
        at = pen.at(np.array(mark.xy))
        if not pen.inside(at, RING):
            continue
        x, y = float(at[0]), float(at[1])
        pen.items.append(segment((x - CROSS / 2, y), (x + CROSS / 2, y), MARKS, MIDDLE))
        pen.items.append(segment((x, y - CROSS / 2), (x, y + CROSS / 2), MARKS, MIDDLE))
        pen.items.append(circle((x, y), RING, MARKS, MIDDLE))
        pen.room.taken((x, y), (CROSS / 2 / MM_INCH, CROSS / 2 / MM_INCH))


def _dots(pen: Pen) -> list[tuple[Level, FloatArray]]:
    """Dots where released, and their places, mm."""
    subject, named = pen.subject, []
    for point in subject.levels.points():
        if point.code != "DOT" or point.depth is None:
            continue
        at = pen.view.paper((point.east, point.north))
        pen.items.append(circle((float(at[0]), float(at[1])), DOT, DOTS, THIN))
        if pen.inside(at):
            pen.room.taken((float(at[0]), float(at[1])), (DOT / MM_INCH, DOT / MM_INCH))
        named.append((point, at))
    return named


def _dot_names(pen: Pen, dots: Sequence[tuple[Level, FloatArray]]) -> None:
    """Each dot's name, with its depth where they stand far enough apart, right beside it."""
    if not dots:
        return
    up = float(pen.subject.levels.frame.turned_scale[2])
    long = [f"{p.name} {pen.subject.depth((p.depth or 0.0) * up)}" for p, _ in dots]
    at = np.array([place for _, place in dots])
    apart = np.abs(at[:, None] - at[None])
    beside = (apart[..., 1] < 2 * SMALL) & (apart[..., 0] > 0.1)
    room = float(apart[..., 0][beside].min()) if beside.any() else np.inf
    wide = max(width_of(text, SMALL) for text in long) + 2 * DOT + 0.8 <= room
    for (point, place), text in zip(dots, long, strict=True):
        pen.beside(text if wide else point.name, place, DOTS, DOT)


def _deepest(pen: Pen) -> None:
    depth, window = pen.subject.levels.depth, pen.subject.cut()
    if depth is None or window is None:
        return
    values = np.nan_to_num(depth.values)
    rows, columns = np.nonzero(values >= values.max() - 5e-5)
    k = int(np.argmin((rows - rows.mean()) ** 2 + (columns - columns.mean()) ** 2))
    at = pen.at(pen.frame.to_site(np.array([columns[k], rows[k]]) * pen.frame.cell))
    words = f"deepest {pen.subject.depth(float(values.max()))} {pen.subject.deep_unit}"
    pen.name(words, at, DEPTH, bold=True, small=True)


def grid_step(subject: Subject, view: View) -> float:
    """Own units between grid lines: as asked, else a round number that is 40 mm or more on paper."""
    if subject.wish.grid is not None:
        return subject.wish.grid / float(subject.levels.frame.plan_scale[0])
    return nice_step(40.0 / view.unit, 1)


def _crosses(pen: Pen) -> None:
    """A cross wherever two round coordinates meet."""
    step = grid_step(pen.subject, pen.view)
    own = pen.view.own(corners(pen.view.box))
    east, north = (
        np.arange(math.ceil(own[:, k].min() / step), math.floor(own[:, k].max() / step) + 1) * step
        for k in (0, 1)
    )
    arm = 2.0 / pen.view.unit
    for e in east:
        for n in north:
            if pen.inside(pen.view.paper((e, n)), 1.0):
                for d in ((arm, 0.0), (0.0, arm)):
                    ends = np.array([(e - d[0], n - d[1]), (e + d[0], n + d[1])])
                    pen.items.append(Stroke(pen.view.paper(ends), COORDINATES, HAIR))


def edge_ticks(subject: Subject, view: View) -> list[Item]:
    """Where round coordinates leave the box at its foot or left: a tick, and which it is."""
    step, (x0, y0, x1, y1) = grid_step(subject, view), view.box
    places = decimals_for(step)
    own = view.own(corners(view.box))
    found: list[Item] = []
    ends: dict[str, list[tuple[float, float]]] = {"foot": [], "left": []}
    for axis in (0, 1):
        low, high = own[:, axis].min(), own[:, axis].max()
        for k in range(math.ceil(low / step), math.floor(high / step) + 1):
            text = f"{subject.tags[axis]} {k * step:.{places}f}"
            half = width_of(text, SMALL) / 2 + 1.0
            for side, (start, end) in (("foot", ((x0, y0), (x1, y0))), ("left", ((x0, y0), (x0, y1)))):
                a, b = (view.own(p)[axis] for p in (start, end))
                if abs(b - a) * view.unit < 0.35 * math.dist(start, end):
                    continue  # they run along this edge
                share = (k * step - a) / (b - a)
                at = share * math.dist(start, end)
                taken = any(abs(at - t) < half + h for t, h in ends[side])
                if not 0.0 <= share <= 1.0 or not half <= at <= math.dist(start, end) - half or taken:
                    continue
                ends[side].append((at, half))
                if side == "foot":
                    found.append(segment((x0 + at, y0), (x0 + at, y0 - 1.2), COORDINATES, THIN))
                    found.append(Words((x0 + at, y0 - 1.8 - SMALL), text, COORDINATES, SMALL, "center"))
                else:
                    found.append(segment((x0, y0 + at), (x0 - 1.2, y0 + at), COORDINATES, THIN))
                    found.append(Words((x0 - 1.8, y0 + at), text, COORDINATES, SMALL, "center", turn=90.0))
    return found


def plan_signs(subject: Subject, ratio: int, detail: bool = False) -> list[Sign]:
    """Of what the job has; ``detail``: on the enlarged cut, without heights."""
    levels, report = subject.levels, subject.report
    found: list[Sign] = []
    if not detail:
        unit = levels.frame.unit
        step = contour_step(subject, ratio)
        found.append((f"existing height, every {step:g} {unit}", _line_sign(EXISTING, THIN, (), GREY)))
        if levels.finished is not None:
            found.append(("finished height, likewise", _line_sign(FINISHED, THIN, DASHES)))
    found.append((f"line of travel, {subject.unit}", _line_sign(TRAVEL, BOLD, DOTTED)))
    if subject.cut() is not None:
        found.append(("edge of the cut", _line_sign(OUTLINE, BOLD)))
    if report.marks:
        found.append(("mark", _ring_sign(MARKS, RING, CROSS / 2)))
    if levels.released:
        found.append(("dot to drill", _ring_sign(DOTS, DOT, 0.0)))
    if report.keeps:
        found.append(("keep area", _patch_sign(KEEP, None, Hatch(60.0, 4.0), MIDDLE)))
    if not levels.existing.measured.all():
        found.append(("not measured", _patch_sign(MISSING, None, Hatch(0.0, 1.6))))
    bands = levels.bands(subject.band)
    for k, band in enumerate(bands):
        words = f"{subject.band_words(band)} {subject.deep_unit} to remove"
        found.append((words, _patch_sign(DEPTH, *band_look(k, len(bands)))))
    return found


def _line_sign(layer: str, pen: float, dash: tuple[float, ...] = (), colour: Colour = INK) -> Sample:
    def sample(box: Box) -> list[Item]:
        y = (box[1] + box[3]) / 2
        return [Stroke(np.array([(box[0], y), (box[2], y)]), layer, pen, dash, colour)]

    return sample


def _patch_sign(layer: str, fill: Colour | None, hatch: Hatch, pen: float = HAIR) -> Sample:
    def sample(box: Box) -> list[Item]:
        return [Area((corners(box),), layer, fill, hatch), rectangle(box, layer, pen)]

    return sample


def _ring_sign(layer: str, radius: float, arm: float) -> Sample:
    def sample(box: Box) -> list[Item]:
        x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
        drawn: list[Item] = [circle((x, y), radius, layer, THIN)]
        for dx, dy in ((arm, 0.0), (0.0, arm)) if arm else ():
            drawn.append(Stroke(np.array([(x - dx, y - dy), (x + dx, y + dy)]), layer, MIDDLE))
        return drawn

    return sample
