"""``set_out.dxf``: the plan as layers for a drawing, in the scan's own coordinates and unit.

Released: outline, stop lines, depth contours, strips, dots, block places, marks, keep areas, the line of
travel and words. Not released: outline, marks, keep areas and line alone, and the stamp, on the layers of
depths too, which hold nothing else: a file to look at, none to cut from. Every layer says in its description
what the drawing says of itself.
Heights are those of the finished surface where a thing lies on the slab, so that contours and dots are true
in space as well.
"""

from __future__ import annotations

import contextlib
import math
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.errors import visible
from crestcut.base.grid import FloatArray
from crestcut.base.paper import FEET
from crestcut.report.exchange.levels import EDGE
from crestcut.study import NOT_DATED, Identity, Report
from crestcut.work import SetOut, Worksheet

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts import Modelspace

CAD_NAME = "set_out.dxf"
VERSION = "R2010"
# colour numbers of the DXF format: 7 is black on white paper, 8 and 9 are greys
BLACK, DARK, PALE = 7, 8, 9
CONTOUR_STEP = 0.002  # m
UNITS = {"m": 6, "cm": 5, "mm": 4, "ft": 2, "in": 1, "us-ft": 21}  # $INSUNITS of the DXF reference
LAYERS = (
    ("OUTLINE", BLACK), ("DEPTH_CONTOURS", DARK), ("TRAVEL", DARK), ("MARKS", BLACK), ("KEEP_AREAS", DARK),
    ("TEXT", BLACK),
)  # fmt: skip
DEPTH_LAYERS = ("OUTLINE", "DEPTH_CONTOURS")
WIDE = 0.9  # of its height: a letter, with some to spare
CUT_LAYERS = (("STOP_LINES", BLACK), ("STRIPS", PALE), ("DOTS", BLACK), ("BLOCKS", DARK))


def write_cad(report: Report, sheet: Worksheet, path: Path) -> None:
    """Write the drawing. Same input, same bytes."""
    with alike():
        save_alike(draw_cad(report, sheet), path)


@contextlib.contextmanager
def alike() -> Iterator[None]:
    """While it lasts, drawings are made without dates of this hour, which would make two runs differ."""
    import ezdxf

    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before


def save_alike(drawing: Drawing, path: Path) -> None:
    """Save a drawing that was made, and is saved, while ``alike`` lasts."""
    # the library takes these from a set, whose order differs from run to run
    drawing.classes.add_required_classes(drawing.dxfversion)
    drawing.classes.classes = dict(sorted(drawing.classes.classes.items()))
    drawing.saveas(path)


def new_drawing(unit: str, about: Identity) -> Drawing:
    """An empty drawing in a unit of a scan, which says of itself what every file does."""
    import ezdxf

    drawing = ezdxf.new(VERSION)
    drawing.header["$INSUNITS"] = UNITS.get(unit, 0)
    drawing.header["$MEASUREMENT"] = 0 if unit in FEET else 1
    drawing.layers.remove("Defpoints")  # for points of dimensions, which no drawing here has
    for key, value in about.record().items():
        drawing.header.custom_vars.append(key, value or NOT_DATED)
    return drawing


def draw_cad(report: Report, sheet: Worksheet) -> Drawing:
    """The drawing; layers to cut from only where the worksheet is released."""
    about = report.identity
    drawing = new_drawing(report.scan.frame.unit, about)
    released = sheet.set_out is not None and not sheet.stamp
    for name, colour in (*LAYERS, *(CUT_LAYERS if released else ())):
        drawing.layers.add(name, color=colour).description = about.words()
    pen = _Pen(report, drawing.modelspace())
    _shape(pen, report, released)
    _things(pen, report)
    if released and sheet.set_out is not None:
        _set_out(pen, report, sheet.set_out)
        _blocks(pen, sheet)
    _words(pen, report, sheet)
    _say_on_depths(pen, report, sheet)
    _show(drawing, pen)
    return drawing


def _show(drawing: Drawing, pen: _Pen) -> None:
    """Extents and view, so that it opens on what is drawn."""
    low, high = np.min(pen.drawn, axis=0), np.max(pen.drawn, axis=0)
    size = np.maximum(high - low, 1e-6)
    drawing.header["$EXTMIN"], drawing.header["$EXTMAX"] = (*low, 0.0), (*high, 0.0)
    space = drawing.modelspace()
    space.reset_extents((*low, 0.0), (*high, 0.0))
    space.reset_limits(tuple(low), tuple(high))
    # as wide as it is high is the narrowest window that anybody works in
    drawing.set_modelspace_vport(1.05 * float(size.max()), center=tuple((low + high) / 2))


class _Pen:
    """Draws places given in site metres, in the scan's own coordinates and unit."""

    def __init__(self, report: Report, space: Modelspace) -> None:
        self.report, self.space = report, space
        self.frame = report.surface.height.frame
        self.per_metre = 1.0 / float(np.ravel(report.scan.frame.plan_scale)[0])
        self.finished = report.surface.height if report.plan is None else report.plan.finished
        start = self.frame.to_grid(report.line.xy[0])
        self.start = float(start[0]), float(start[1])
        self.drawn: list[tuple[float, float]] = []  # the scan's own x, y of all that was put down

    def along(self, station: float, offset: float) -> tuple[float, float]:
        """Site x, y of a station and an offset."""
        x, y = self.frame.to_site((station + self.start[0], offset + self.start[1]))
        return float(x), float(y)

    def plan(self, places: Sequence[tuple[float, float]] | FloatArray) -> list[tuple[float, float]]:
        """Site metres -> the scan's own x, y."""
        out = self.report.scan.frame.site_to_plan(np.asarray(places, dtype=float))
        places_out = [(float(x), float(y)) for x, y in out]
        self.drawn += places_out
        return places_out

    def line(
        self, places: Sequence[tuple[float, float]] | FloatArray, layer: str, close: bool = False
    ) -> None:
        """A polyline through places (n, 2), site m."""
        self.space.add_lwpolyline(self.plan(places), dxfattribs={"layer": layer}, close=close)

    def dot(self, at: tuple[float, float], radius: float, layer: str) -> None:
        """A circle about a place, both site m."""
        self.space.add_circle(self.plan([at])[0], radius * self.per_metre, dxfattribs={"layer": layer})

    def point(self, at: tuple[float, float], layer: str) -> None:
        """A point at a place, site m."""
        self.space.add_point(self.plan([at])[0], dxfattribs={"layer": layer})

    def text(
        self, at: tuple[float, float], words: str, size: float = 0.03, layer: str = "TEXT", turn: float = 0.0
    ) -> None:
        """Words at a place, site m; ``size`` of a capital, m on the slab; ``turn`` to the left, rad."""
        text = self.space.add_text(
            visible(words), height=size * self.per_metre, rotation=math.degrees(turn),
            dxfattribs={"layer": layer},
        )  # fmt: skip
        x, y = self.plan([at])[0]
        text.set_placement((x, y))
        along, up = WIDE * size * self.per_metre * len(words), size * self.per_metre
        c, s = math.cos(turn), math.sin(turn)
        self.drawn += [(x + along * c, y + along * s), (x - up * s, y + up * c)]


def _shape(pen: _Pen, report: Report, released: bool) -> None:
    """Outline of the planned cut; where it is released, its depth contours."""
    if report.plan is None or report.plan.deepest <= EDGE:
        return
    depth = np.nan_to_num(report.plan.depth.values)
    for ring in _contours(pen, depth, EDGE):
        pen.line(ring, "OUTLINE", close=True)
    if not released:
        return
    for level in np.arange(CONTOUR_STEP, report.plan.deepest, CONTOUR_STEP):
        rings = list(_contours(pen, depth, float(level)))
        for ring in rings:
            pen.line(ring, "DEPTH_CONTOURS", close=True)
        if rings and round(level / CONTOUR_STEP) % 2 == 0:
            longest = max(rings, key=len)

            pen.text(tuple(longest[len(longest) // 4]), f"{level * 1000:.0f}", 0.015, "DEPTH_CONTOURS")


def _contours(pen: _Pen, depth: FloatArray, level: float) -> Iterator[FloatArray]:
    """Closed rings of one depth, site x, y (n, 2)."""
    from contourpy import contour_generator

    cell = pen.frame.cell
    padded = np.pad(depth, 1)
    axes = [np.arange(-1, n + 1) * cell for n in (depth.shape[1], depth.shape[0])]
    for ring in contour_generator(axes[0], axes[1], padded).lines(level):
        if len(ring) > 3:
            yield pen.frame.to_site(np.asarray(ring)[:-1])


def _things(pen: _Pen, report: Report) -> None:
    """Line of travel, marks, keep areas."""
    pen.line(report.line.xy, "TRAVEL")
    pen.text(tuple(report.line.xy[0]), "0.00 line of travel starts", 0.04)
    for mark in report.marks:
        pen.point(mark.xy, "MARKS")
        pen.dot(mark.xy, 0.03, "MARKS")
        pen.text((mark.xy[0] + 0.04, mark.xy[1] + 0.02), mark.name, 0.06, "MARKS")
    for keep in report.keeps:
        pen.line(keep.area, "KEEP_AREAS", close=True)

        pen.text(
            tuple(keep.area.mean(axis=0)),
            f"{keep.kind}, {keep.deepest * 1000:.0f} mm at most",
            0.05,
            "KEEP_AREAS",
        )


def ring_of(rows: Iterable[tuple[float, float, float]]) -> list[tuple[float, float]]:
    """Stations and offsets round the outside, from the first and last station of every offset; not closed."""
    ends: dict[float, tuple[float, float]] = {}
    for offset, first, last in rows:
        old = ends.get(offset, (first, last))
        ends[offset] = min(old[0], first), max(old[1], last)
    offsets = sorted(ends)
    return [(ends[v][0], v) for v in offsets] + [(ends[v][1], v) for v in reversed(offsets)]


def _set_out(pen: _Pen, report: Report, out: SetOut) -> None:
    """Stop lines, strips and dots, as the sheets print them."""
    for rows, layer in ((out.outline, "STOP_LINES"), (out.core, "STRIPS")):
        ring = [pen.along(station, offset) for station, offset in ring_of(rows)]
        if len(ring) > 2:
            pen.line(ring, layer, close=True)
    for dot in out.dots:
        at = pen.along(dot.station, dot.offset)
        pen.point(at, "DOTS")
        pen.dot(at, 0.005, "DOTS")
        pen.text((at[0] + 0.008, at[1] + 0.004), f"{dot.name} {dot.depth * 1000:.1f}", 0.012, "DOTS")


def _blocks(pen: _Pen, sheet: Worksheet) -> None:
    """The lines on which blocks slide, each setting between its stop marks, and the spots of rails."""
    if sheet.jig is None:
        return
    for row in sheet.jig.rows:
        pen.line(
            [pen.along(s, v) for s, v in zip((row.start[0], row.stop[0], row.stop[1], row.start[1]),
                                             (row.low, row.low, row.high, row.high), strict=True)],
            "STRIPS", close=True,
        )  # fmt: skip
        pen.text(pen.along((row.start[0] + row.stop[0]) / 2, row.low), row.name, 0.02, "STRIPS")
        for stations, height in ((row.rear_at, row.rear), (row.front_at, row.front)):
            ends = [pen.along(s, v) for s, v in zip(stations, (row.low, row.high), strict=True)]
            pen.line(ends, "BLOCKS")
            for end in ends:
                pen.point(end, "BLOCKS")
            pen.text(ends[0], f"{row.name}: {height * 1000:.1f}", 0.012, "BLOCKS")
    for rails in sheet.jig.rails:
        for spot in rails.spots:
            pen.point(pen.along(spot.station, spot.offset), "BLOCKS")
            pen.text(
                pen.along(spot.station, spot.offset), f"{spot.name}: {spot.block * 1000:.1f}", 0.012, "BLOCKS"
            )


def _words(pen: _Pen, report: Report, sheet: Worksheet) -> None:
    """Title, units, the release and the date; the stamp across the drawing."""
    frame = report.surface.height.frame
    ends = frame.to_site([(0.0, 0.0), (frame.size[0], 0.0), frame.size, (0.0, frame.size[1])])
    corner = np.vstack([ends, *(k.area for k in report.keeps)]).min(axis=0) - (0.0, 0.3)
    size = report.surface.height.frame.size
    depth = 0.0 if report.plan is None else report.plan.deepest
    lines = [
        report.identity.job,
        f"Coordinates in {report.scan.frame.words}; depths in mm, deepest {depth * 1000:.1f}.",
        _release_words(report, sheet),
        "Not field-proved: check with string, stick and vehicle.",
        f"Job {report.job.date_words}; {report.identity.tool}.",
    ]
    for k, words in enumerate(lines):
        pen.text((float(corner[0]), float(corner[1]) - 0.12 * k), words, 0.08 if k else 0.10)
    if sheet.stamp and not report.nothing_to_cut:
        middle = report.surface.height.frame.to_site((size[0] * 0.1, size[1] * 0.35))
        pen.text(
            (float(middle[0]), float(middle[1])),
            sheet.stamp,
            min(0.1 * size[0], 0.5),
            turn=math.radians(20) + pen.frame.angle,
        )


def _release_words(report: Report, sheet: Worksheet) -> str:
    if report.nothing_to_cut:
        return "Nothing to cut."
    if sheet.stamp:
        return f"{sheet.stamp}: nothing here to cut from."
    return "Released for cutting within local codes."


def _say_on_depths(pen: _Pen, report: Report, sheet: Worksheet) -> None:
    """On each layer of depths what the drawing says of itself, under the cut; the stamp across the cut."""
    if report.plan is None or report.plan.deepest <= EDGE:
        return
    cell = pen.frame.cell
    rows, columns = np.nonzero(np.nan_to_num(report.plan.depth.values) > EDGE)
    left, low = float(columns.min()) * cell, float(rows.min()) * cell
    long, wide = float(np.ptp(columns) + 1) * cell, float(np.ptp(rows)) * cell
    for k, layer in enumerate(DEPTH_LAYERS):
        for row, words in enumerate(report.identity.lines()):
            under = pen.frame.to_site((left, low - 0.06 - 0.05 * row))
            pen.text((float(under[0]), float(under[1])), words, 0.03, layer, pen.frame.angle)
        if sheet.stamp:  # along the longer side, one layer's beside the other's
            size = min(max(long, wide) / (WIDE * len(sheet.stamp)), 0.3)
            along, aside = long >= wide, size * (0.2 - 1.4 * k)
            at = (left, low + wide / 2 + aside) if along else (left + long / 2 - aside, low)
            over = pen.frame.to_site(at)
            turn = pen.frame.angle + (0.0 if along else math.pi / 2)
            pen.text((float(over[0]), float(over[1])), sheet.stamp, size, layer, turn)
