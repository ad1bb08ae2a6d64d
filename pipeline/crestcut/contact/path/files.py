"""A line of travel from a drawing or a table: DXF, GeoJSON, CSV."""

from __future__ import annotations

import csv
import hashlib
import json
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.plain_files import refuse_irregular
from crestcut.base.units import FOOT, US_SURVEY_FOOT, millimetres
from crestcut.job import did_you_mean
from crestcut.scan import FAR, Frame, differ, from_degrees, named_system

# $INSUNITS codes of the DXF reference -> metres
DXF_UNITS = {1: 0.0254, 2: 0.3048, 4: 0.001, 5: 0.01, 6: 1.0, 7: 1000.0, 21: 1200.0 / 3937.0}
SAG = 0.0005  # of the line's longest side: how far a chord may leave a drawn curve (4 mm on 8 m)
DRAWN_AS_LINES = "LINE LWPOLYLINE POLYLINE ARC SPLINE ELLIPSE"
ONE_PLACE = 0.01  # m
SAME_SIZE, TOLD = 1e-4, 0.001  # share by which two units are one size to the eye; m that this may move a line
AXES = (("x", "easting", "east", "e"), ("y", "northing", "north", "n"))


@dataclass(frozen=True)
class DrawnLine:
    """points : x, y as written in the file.  unit : metres per unit if the file says so, else None (then the
    scan's own unit).  system : the reference system of its plan, where it names one.  degrees : its points
    are longitude and latitude (WGS 84, RFC 7946).
    """

    points: tuple[tuple[float, float], ...]
    unit: float | None
    source: str
    sha256: str = ""
    system: str = ""
    degrees: bool = False

    @property
    def notes(self) -> tuple[str, ...]:
        """What is to be said of it."""
        if not self.degrees:
            return ()
        return (
            f"{self.source}: the line came in degrees (WGS 84); between those and a system fixed to a"
            " continent a metre or two may lie: see on the plan where it runs",
        )

    def on_site(self, frame: Frame) -> tuple[tuple[float, float], ...]:
        """Site x, y of its points, m; places less than ``ONE_PLACE`` apart are taken once.

        Raises CrestcutError where the line is in another reference system than the scan or far from it, where
        its foot and the scan's are not the same and that moves it, or where it is in degrees and the scan in
        no system that they could be turned into.
        """
        if self.degrees:
            return replace(self, points=self._from_degrees(frame), degrees=False).on_site(frame)
        if differ(self.system, frame.system.plan):
            mend = "save it in the scan's reference system"
            raise CrestcutError(
                f"the line is in {self.system}, the scan in {frame.system.plan}", self.source, mend
            )
        self._refuse_other_foot(frame)
        plan = np.array(self.points) * (1.0 if self.unit is None else self.unit / frame.plan_scale)
        kept: list[tuple[float, float]] = []
        for x, y in frame.plan_to_site(plan):
            if not kept or math.dist(kept[-1], (x, y)) >= ONE_PLACE:
                kept.append((float(x), float(y)))
        # the scan lies within a few hundred metres of the site's origin
        if (far := max(math.hypot(*p) for p in kept)) > FAR:
            raise CrestcutError(
                f"the line lies {far / 1000:,.0f} km from the scan: another zone, reference system or unit",
                self.source, "save it in the scan's own coordinates",
            )  # fmt: skip
        if len(kept) < 2:
            raise CrestcutError("all points of the line are one place", self.source, "draw it over the slab")
        return tuple(kept)

    def _from_degrees(self, frame: Frame) -> tuple[tuple[float, float], ...]:
        """Own x, y. A file with latitude first lies elsewhere on earth: that is said, not guessed."""
        points = from_degrees(frame.system, self.points)
        if points is None:
            raise CrestcutError(
                "the line is in degrees, and the scan in no reference system that is known", self.source,
                "save it in the scan's own coordinates, or name the system: [scan] crs",
            )  # fmt: skip
        turned = from_degrees(frame.system, [(b, a) for a, b in self.points])
        if self._far(frame, points) and turned is not None and not self._far(frame, turned):
            raise CrestcutError(
                "its places have latitude first", self.source, "write longitude first, as GeoJSON has it"
            )
        return points

    def _far(self, frame: Frame, points: tuple[tuple[float, float], ...]) -> bool:
        away = np.hypot(*frame.plan_to_site(points).T)
        return not bool(away.max() <= FAR)  # what lies beyond a grid's reach is infinite

    def _refuse_other_foot(self, frame: Frame) -> None:
        """Units of almost one size: far from the origin it cannot be told which of the two was meant."""
        if self.unit is None:
            return
        apart = abs(self.unit - float(frame.plan_scale[0])) / self.unit
        moved = apart * self.unit * max(abs(v) for p in self.points for v in p)
        if apart < SAME_SIZE and moved > TOLD:
            raise CrestcutError(
                f"the drawing is in {_foot(self.unit)}, the scan in {_foot(float(frame.plan_scale[0]))}:"
                f" so far from their origin that is {millimetres(moved, 0)} of the line's place", self.source,
                "set the drawing's unit ($INSUNITS) to the scan's if its numbers are the scan's, or save the"
                " line as CSV, which is read in the scan's unit",
            )  # fmt: skip


def _foot(unit: float) -> str:
    names = {FOOT: "international feet", US_SURVEY_FOOT: "US survey feet"}
    return next((n for size, n in names.items() if math.isclose(unit, size, rel_tol=1e-9)), f"{unit:g} m")


def read_line(path: Path, layer: str | None = None) -> DrawnLine:
    """The one line in a file; ``layer`` chooses among a drawing's.

    Raises CrestcutError where the file cannot be read, or holds no line or several.
    """
    path = Path(path)
    if not path.exists():
        raise CrestcutError("the file of the line is not there", path.name, "check the name in [travel] line")
    refuse_irregular(path, "a DXF, GeoJSON or CSV file", "check the name in [travel] line")
    readers = {".dxf": _dxf, ".geojson": _geojson, ".json": _geojson, ".csv": _csv, ".txt": _csv}
    reader = readers.get(path.suffix.lower())
    if reader is None:
        raise CrestcutError(
            f'a line cannot be read from "{path.suffix}"', path.name, "give a DXF, GeoJSON or CSV file"
        )
    points, unit, system = reader(path, layer)
    if not all(math.isfinite(v) for p in points for v in p):
        raise CrestcutError("a point of the line is not finite", path.name, "give plain coordinates")
    if len(points) < 2:
        raise CrestcutError(f"{len(points)} points are no line", path.name, "give at least its two ends")
    degrees = reader is _geojson and _in_degrees(points, system)
    digest = hashlib.sha256(path.read_bytes()).hexdigest()
    return DrawnLine(tuple(points), unit, path.name, digest, system, degrees)


Points = list[tuple[float, float]]
Found = tuple[Points, float | None, str]  # metres per unit, reference system: where the file says so


def _dxf(path: Path, layer: str | None) -> Found:
    import ezdxf

    try:
        drawing = ezdxf.readfile(path)
    except Exception as error:  # a damaged drawing ends in IndexError, ValueError, AttributeError ...
        why = error if isinstance(error, (OSError, ezdxf.DXFError)) else "it is damaged"
        raise CrestcutError(f"not a DXF drawing: {why}", path.name, "save it as DXF again") from None
    from ezdxf import path as drawn

    entities = list(drawing.modelspace().query(DRAWN_AS_LINES))
    if layer is not None:
        names = sorted({e.dxf.layer for e in entities})
        entities = [e for e in entities if e.dxf.layer == layer]
        if not entities:
            there = did_you_mean(layer, names) or "draw one polyline on it"
            raise CrestcutError(f'no line on the layer "{layer}"', path.name, there)
    lines: list[Points] = []
    for entity in entities:
        try:
            curve = drawn.make_path(entity)
            reach = [*curve.control_vertices(), curve.end]
            size = max(max(v[k] for v in reach) - min(v[k] for v in reach) for k in (0, 1))
            lines.append([(v.x, v.y) for v in curve.flattening(max(SAG * size, 1e-9))])
        except (ezdxf.DXFError, ValueError, TypeError, IndexError, ZeroDivisionError) as error:
            what = f"a {entity.dxftype()} in it cannot be followed: {error}"
            raise CrestcutError(what, path.name, "draw one polyline") from None
    points = _only(lines, path, "leave one, or name its layer in [travel] layer")
    return points, DXF_UNITS.get(int(drawing.header.get("$INSUNITS", 0))), ""


def _only(lines: list[Points], path: Path, mend: str) -> Points:
    if not lines:
        raise CrestcutError("no line in the file", path.name, "draw one polyline along the vehicle's middle")
    if len(lines) > 1:
        raise CrestcutError(f"{len(lines)} lines in the file", path.name, mend)
    return lines[0]


def _geojson(path: Path, layer: str | None) -> Found:
    try:
        data = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError) as error:
        raise CrestcutError(f"not a GeoJSON file: {error}", path.name, "save the line again") from None
    try:
        lines = [[(float(p[0]), float(p[1])) for p in line] for line in _line_strings(data)]
    except (TypeError, ValueError, IndexError, KeyError, OverflowError, RecursionError):
        raise CrestcutError("a place in it is no x and y", path.name, "save the line again") from None
    points = _only(lines, path, "leave one")
    if not points:
        return points, None, ""
    return points, None, _system(data)


def _in_degrees(points: Sequence[tuple[float, float]], system: str) -> bool:
    """A driveway of a few metres is 0.0001 degrees long (RFC 7946: coordinates are longitude and latitude
    unless agreed otherwise)."""
    size = np.ptp(np.array(points), axis=0)
    most = np.abs(np.array(points)).max()
    return not system and float(size.max()) < 0.01 and float(most) <= 180


def _system(data: dict[str, Any]) -> str:
    """What stands in "crs" (GeoJSON 2008, section 3; RFC 7946 leaves it to those who agree on it)."""
    try:
        return named_system(str(data["crs"]["properties"]["name"])).plan
    except (KeyError, TypeError):
        return ""


def _line_strings(data: object) -> list[list[list[float]]]:
    if not isinstance(data, dict):
        return []
    if data.get("type") == "FeatureCollection":
        return [line for f in data.get("features") or [] for line in _line_strings(f)]
    if data.get("type") == "Feature":
        return _line_strings(data.get("geometry"))
    if data.get("type") == "LineString":
        return [data.get("coordinates") or []]
    if data.get("type") == "MultiLineString":
        return list(data.get("coordinates") or [])
    return []


def _csv(path: Path, layer: str | None) -> Found:
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        raise CrestcutError(f"not a table of points: {error}", path.name, "save it as CSV") from None
    rows = [line for line in text.splitlines() if line.strip() and not line.lstrip().startswith("#")]
    cut = next((d for d in (";", "\t", ",") if any(d in row for row in rows)), " ")
    try:
        cells = csv.reader(rows, delimiter=cut, skipinitialspace=True)
        table = [row for row in cells if any(c.strip() for c in row)]
    except csv.Error as error:
        raise CrestcutError(f"not a table of points: {error}", path.name, "save it as CSV") from None
    if not table:
        return [], None, ""
    columns, first = _columns(table[0], cut, path)
    points: Points = []
    for k, row in enumerate(table[first:], start=first):
        try:
            points.append((_number(row[columns[0]], cut), _number(row[columns[1]], cut)))
        except (ValueError, IndexError):
            raise CrestcutError(f"row {k + 1} is no point", path.name, "write x and y on each line") from None
    return points, None, ""


def _columns(head: Sequence[str], cut: str, path: Path) -> tuple[tuple[int, int], int]:
    """Which columns hold x and y, and the first row of numbers. Only x, y and a height go unnamed."""
    names = [c.strip().lower() for c in head]
    if all(_is_number(name, cut) for name in names if name):
        if len(names) > 3:
            mend = "name two of them x and y in its first row"
            raise CrestcutError(f"{len(names)} columns without names", path.name, mend)
        return (0, 1), 0
    found = [next((names.index(n) for n in axis if n in names), None) for axis in AXES]
    if found[0] is None or found[1] is None:
        raise CrestcutError("its first row names no x and y", path.name, "name two of its columns x and y")
    return (found[0], found[1]), 1


def _number(text: str, cut: str) -> float:
    return float(text.strip().replace(",", ".") if cut != "," else text)


def _is_number(text: str, cut: str) -> bool:
    try:
        _number(text, cut)
    except ValueError:
        return False
    return True
