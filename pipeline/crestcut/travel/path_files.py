"""A line of travel from a drawing or a table: DXF, GeoJSON, CSV."""

from __future__ import annotations

import csv
import json
import math
from dataclasses import dataclass
from pathlib import Path

from crestcut.errors import CrestcutError

# $INSUNITS codes of the DXF reference -> metres
DXF_UNITS = {1: 0.0254, 2: 0.3048, 4: 0.001, 5: 0.01, 6: 1.0, 7: 1000.0, 21: 1200.0 / 3937.0}
SAG = 0.002  # of the drawing's longest side: how far a chord may leave a drawn curve


@dataclass(frozen=True)
class DrawnLine:
    """points : x, y as written in the file.  unit : metres per unit if the file says so, else None (then the
    scan's own unit).
    """

    points: tuple[tuple[float, float], ...]
    unit: float | None
    source: str


def read_line(path: Path, layer: str | None = None) -> DrawnLine:
    """The one line in a file; ``layer`` chooses among a drawing's.

    Raises CrestcutError where the file cannot be read, holds no line or several, or holds degrees instead of
    lengths.
    """
    path = Path(path)
    if not path.is_file():
        raise CrestcutError("the file of the line is not there", path.name, "check the name in [travel] line")
    readers = {".dxf": _dxf, ".geojson": _geojson, ".json": _geojson, ".csv": _csv, ".txt": _csv}
    reader = readers.get(path.suffix.lower())
    if reader is None:
        raise CrestcutError(
            f'a line cannot be read from "{path.suffix}"', path.name, "give a DXF, GeoJSON or CSV file"
        )
    points, unit = reader(path, layer)
    if not all(math.isfinite(v) for p in points for v in p):
        raise CrestcutError("a point of the line is not finite", path.name, "give plain coordinates")
    if len(points) < 2:
        raise CrestcutError(f"{len(points)} points are no line", path.name, "give at least its two ends")
    return DrawnLine(tuple(points), unit, path.name)


Points = list[tuple[float, float]]


def _dxf(path: Path, layer: str | None) -> tuple[Points, float | None]:
    import ezdxf

    try:
        drawing = ezdxf.readfile(path)
    except (OSError, ezdxf.DXFError, UnicodeDecodeError) as error:
        raise CrestcutError(f"not a DXF drawing: {error}", path.name, "save it as DXF again") from None
    lines: list[Points] = []
    from ezdxf import path as drawn

    for entity in drawing.modelspace().query("LINE LWPOLYLINE POLYLINE ARC SPLINE ELLIPSE"):
        if layer is None or entity.dxf.layer == layer:
            curve = drawn.make_path(entity)
            size = max(curve.start.distance(curve.end), 1e-6)
            lines.append([(v.x, v.y) for v in curve.flattening(SAG * size)])
    return _only(lines, path, "layer"), DXF_UNITS.get(int(drawing.header.get("$INSUNITS", 0)))


def _only(lines: list[Points], path: Path, choice: str) -> Points:
    if not lines:
        raise CrestcutError("no line in the file", path.name, "draw one polyline along the vehicle's middle")
    if len(lines) > 1:
        raise CrestcutError(f"{len(lines)} lines in the file", path.name, f"leave one, or name its {choice}")
    return lines[0]


def _geojson(path: Path, layer: str | None) -> tuple[Points, float | None]:
    try:
        data = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, json.JSONDecodeError) as error:
        raise CrestcutError(f"not a GeoJSON file: {error}", path.name, "save the line again") from None
    lines = [[(float(p[0]), float(p[1])) for p in line] for line in _line_strings(data)]
    points = _only(lines, path, "feature")
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    # a driveway of a few metres is 0.0001 degrees long (RFC 7946: coordinates are degrees unless agreed
    # otherwise)
    if (
        max(max(xs) - min(xs), max(ys) - min(ys)) < 0.01
        and max(map(abs, xs)) <= 180
        and max(map(abs, ys)) <= 90
    ):
        raise CrestcutError("the line is in degrees", path.name, "save it in the scan's own coordinates")
    return points, None


def _line_strings(data: object) -> list[list[list[float]]]:
    if not isinstance(data, dict):
        return []
    if data.get("type") == "FeatureCollection":
        return [line for f in data.get("features", []) for line in _line_strings(f)]
    if data.get("type") == "Feature":
        return _line_strings(data.get("geometry"))
    if data.get("type") == "LineString":
        return [data["coordinates"]]
    if data.get("type") == "MultiLineString":
        return list(data["coordinates"])
    return []


def _csv(path: Path, layer: str | None) -> tuple[Points, float | None]:
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        raise CrestcutError(f"not a table of points: {error}", path.name, "save it as CSV") from None
    cut = next((d for d in (";", "\t", ",") if d in text), " ")
    rows = [
        r
        for r in csv.reader(text.splitlines(), delimiter=cut, skipinitialspace=True)
        if any(c.strip() for c in r)
    ]
    points: Points = []
    columns = (0, 1)
    for k, row in enumerate(rows):
        names = [c.strip().lower() for c in row]
        if k == 0 and not _is_number(names[0], cut):
            columns = (names.index("x"), names.index("y")) if {"x", "y"} <= set(names) else (0, 1)
            continue
        try:
            points.append((_number(row[columns[0]], cut), _number(row[columns[1]], cut)))
        except (ValueError, IndexError):
            raise CrestcutError(f"row {k + 1} is no point", path.name, "write x and y on each line") from None
    return points, None


def _number(text: str, cut: str) -> float:
    return float(text.strip().replace(",", ".") if cut != "," else text)


def _is_number(text: str, cut: str) -> bool:
    try:
        _number(text, cut)
    except ValueError:
        return False
    return True
