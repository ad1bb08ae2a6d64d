"""PLY: ascii, binary of either byte order, points or mesh. The header is checked here, the body is read by
trimesh."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.units import METRES_PER
from crestcut.scan.formats.mesh import stack_columns, triangles
from crestcut.scan.formats.raw import RawScan, UnitFound, UpFound, eight_bit, truncated, unreadable
from crestcut.scan.formats.take import ALL, Block, Take, take

_CODES = {
    "char": "i1", "uchar": "u1", "int8": "i1", "uint8": "u1", "short": "i2", "ushort": "u2", "int16": "i2",
    "uint16": "u2", "int": "i4", "uint": "u4", "int32": "i4", "uint32": "u4", "float": "f4", "float32": "f4",
    "double": "f8", "float64": "f8",
}  # fmt: skip
_SIZE = {name: int(code[1]) for name, code in _CODES.items()}  # bytes
_TIMES = ("gps_time", "gpstime", "time", "timestamp")
_LONGEST_HEADER = 4 << 20  # bytes: a scanning app's own notes stand in comments
_UNIT = re.compile(
    r"\b(?:units?|coordinates)\b\W*(?:are|in|is)?\W*(us-ft|mm|cm|m|metres?|meters?|in|inch(?:es)?|ft|feet)\b"
)
_UP = re.compile(r"\b(?:up(?:[ _-]?axis)?\b\W*([+-]?[xyz])\b|([+-]?[xyz])[ _-]?(?:is[ _-])?up\b)")
_PLAIN = {
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "inch": "in",
    "inches": "in",
    "feet": "ft",
}


def read_ply(path: Path, asked: Take = ALL) -> RawScan:
    """Vertices (and faces) of a PLY file; colours and a time column where there are any. Of a binary cloud
    some at a time; of a text or a mesh all."""
    header, body = _header(path)
    count, lengths = _expected(header, path)
    _check_length(path, body, count, lengths, header)
    if (record := _record(header, path)) is not None:
        unit, up = _comments(header)
        head = RawScan(_kind(header), np.empty((0, 3)), unit=unit, up=up)
        return take(head, _blocks(path, body, record, count, asked.rows), asked)
    vertex, face = _body(path)
    columns = {name.lower(): np.asarray(vertex[name]) for name in _names(vertex)}
    if any(column.dtype.kind not in "fiu" or column.size != len(column) for column in columns.values()):
        raise unreadable(path, "PLY", "a column of its points is no list of numbers")
    if not {"x", "y", "z"} <= set(columns):
        raise CrestcutError("its vertices have no x, y, z", str(path), "export it with positions")
    points = stack_columns(columns, "x", "y", "z")
    assert points is not None
    if len(points) != count:
        raise truncated(path, f"{count:,} points", f"{len(points):,}")
    colours = stack_columns(columns, "red", "green", "blue")
    time = next((columns[n].astype(float) for n in _TIMES if n in columns), None)
    unit, up = _comments(header)
    return RawScan(
        format=_kind(header),
        points=points.astype(np.float64),
        faces=triangles(face, len(points), path) if face is not None else None,
        colours=None if colours is None else eight_bit(colours),
        time=time if time is not None and np.isfinite(time).all() and np.ptp(time) > 0 else None,
        unit=unit,
        up=up,
    )


def _kind(header: list[str]) -> str:
    return f"PLY, {header[1].split()[1].replace('_', ' ')}"


def _record(header: list[str], path: Path) -> np.dtype | None:
    """One vertex of a binary file in which there is nothing but vertices with a place; None of any other."""
    elements = [words for words in map(str.split, header) if words[0] == "element"]
    order = {"binary_little_endian": "<", "binary_big_endian": ">"}.get(header[1].split()[1])
    columns = [words for words in map(str.split, header) if words[0] == "property"]
    if order is None or len(elements) != 1 or any(len(w) != 3 or w[1] not in _CODES for w in columns):
        return None
    names = [w[2].lower() for w in columns]
    if len(set(names)) < len(names) or not {"x", "y", "z"} <= set(names):
        return None
    return np.dtype([(name, order + _CODES[w[1]]) for name, w in zip(names, columns, strict=True)])


def _blocks(path: Path, body: int, record: np.dtype, count: int, rows: int) -> Iterator[Block]:
    """Vertices of a binary cloud, so many at a time."""
    names = record.names or ()
    time = next((n for n in _TIMES if n in names), None)
    with path.open("rb") as file:
        file.seek(body)
        for first in range(0, count, rows):
            some = np.fromfile(file, record, min(rows, count - first))
            columns = {name: some[name] for name in names}
            points = stack_columns(columns, "x", "y", "z")
            assert points is not None
            yield Block(
                points.astype(np.float64),
                stack_columns(columns, "red", "green", "blue"),
                None if time is None else columns[time].astype(float),
            )


def _header(path: Path) -> tuple[list[str], int]:
    """Header lines, and where the body starts."""
    with path.open("rb") as file:
        head = file.read(_LONGEST_HEADER)
    end = re.search(rb"(?m)^end_header[ \t]*\r?(\n|$)", head)
    if not end:
        raise CrestcutError("the PLY header has no end", str(path), "copy or export it again")
    lines = [line.strip() for line in head[: end.start()].decode("latin-1").splitlines() if line.strip()]
    if len(lines) < 2 or not lines[1].startswith("format "):
        raise CrestcutError("the PLY header names no format", str(path), "copy or export it again")
    return lines, end.end()


def _expected(header: list[str], path: Path) -> tuple[int, list[tuple[int, int]]]:
    """Number of vertices, and (count, least bytes of one) of every element."""
    elements: list[tuple[str, int, int]] = []
    for line in header:
        words = line.split()
        if words[0] == "element" and len(words) == 3 and re.fullmatch("[0-9]{1,12}", words[2]):
            elements.append((words[1], int(words[2]), 0))
        elif words[0] == "property" and elements and len(words) >= 3:
            name, number, size = elements[-1]
            if name == "vertex" and words[1] == "list":
                # nobody's points: the library would take the lists for numbers, or the columns for others
                raise CrestcutError("a list stands among its points", str(path), "export the scan again")
            elements[-1] = (name, number, size + _SIZE.get(words[2] if words[1] == "list" else words[1], 1))
    vertices = next((number for name, number, _ in elements if name == "vertex"), 0)
    if vertices == 0:
        raise CrestcutError("no points in the file", str(path), "export the scan again")
    return vertices, [(number, size) for _, number, size in elements]


def _check_length(
    path: Path, body: int, count: int, lengths: list[tuple[int, int]], header: list[str]
) -> None:
    size = path.stat().st_size - body
    if "ascii" in header[1]:
        with path.open("rb") as file:
            file.seek(body)
            lines = sum(1 for line in file if line.strip())
        wanted = sum(number for number, _ in lengths)
        if lines < wanted:
            raise truncated(path, f"{wanted:,} lines", f"{lines:,}")
    elif size < (least := sum(number * each for number, each in lengths)):
        raise truncated(path, f"{least:,} bytes or more", f"{size:,}")


def _body(path: Path) -> tuple[Any, Any]:
    """The vertex data and the face index array (or None), as trimesh's parser leaves them."""
    from trimesh.exchange.ply import load_ply

    try:
        with path.open("rb") as file:
            loaded = load_ply(file, fix_texture=False, skip_materials=True)
    except Exception as error:
        raise unreadable(path, "PLY", error) from None
    raw = loaded["metadata"]["_ply_raw"]
    return raw["vertex"]["data"], loaded.get("faces")


def _names(vertex: Any) -> list[str]:
    return list(vertex) if isinstance(vertex, dict) else list(vertex.dtype.names or ())


def _comments(header: list[str]) -> tuple[UnitFound | None, UpFound | None]:
    """Unit and up axis from the header's comment lines: PLY has no field for either."""
    text = "\n".join(line for line in header if line.startswith(("comment", "obj_info"))).lower()
    unit = up = None
    if found := _UNIT.search(text):
        name = _PLAIN.get(found[1], found[1])
        unit = UnitFound(name, (METRES_PER[name],) * 3, "written in a comment of the file")
    if found := _UP.search(text):
        up = UpFound((found[1] or found[2]).lstrip("+"), "written in a comment of the file")
    return unit, up
