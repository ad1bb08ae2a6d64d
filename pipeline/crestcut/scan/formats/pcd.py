"""PCD: ascii, binary and compressed binary, float or integer fields of any width (Point Cloud Data format
0.7).

Open3D's tensor reader (0.20) was tried in place of this: it keeps double coordinates, integers, padding and
LZF, and makes up what is missing. Of an ascii file with rows missing, a row too short or a word in one it
returns as many points as the header names, those it has not read being whatever lay in memory, and no error;
of a binary file that is cut short, damaged, or with its fields in capitals no point, and no error either.
Colours in three fields are lost. Ascii would have to be read here all the same to be checked.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.kernels import njit
from crestcut.scan.formats.mesh import stack_columns
from crestcut.scan.formats.raw import RawScan, truncated, unreadable
from crestcut.scan.formats.take import ALL, LONG, Block, Take, take

_KINDS = {"F": "f", "I": "i", "U": "u"}
_LZF_MOST = 88  # bytes of one: three bytes unpack to 264 at most (liblzf: 7 + 255 + 2)


def read_pcd(path: Path, asked: Take = ALL) -> RawScan:
    """Points of a PCD file; colours from ``rgb``/``rgba``; rows that hold NaN (no return) stay for the caller
    to count. Some at a time, of a compressed file, whose fields stand one behind the other, all."""
    header, body = _header(path)
    fields = _fields(header, path)
    count = _count(header, path)
    how = header["DATA"][0].lower()
    tables: Iterable[dict[str, NDArray]]
    if how == "ascii":
        tables = _ascii(path, body, fields, count, asked.rows)
    elif how == "binary":
        tables = _binary(path, body, fields, count, asked.rows)
    elif how == "binary_compressed":
        tables = [_compressed(path.read_bytes()[body:], fields, count, path)]
    else:
        raise CrestcutError(f'data kind "{how}" is not known', str(path), "save it as ascii or binary")
    names = set(fields.names or ())
    if not {"x", "y", "z"} <= names:
        raise CrestcutError("its points have no x, y, z", str(path), "export it with positions")
    head = RawScan(f"PCD, {how.replace('_', ' ')}", np.empty((0, 3)))
    return take(head, map(_block, tables), asked)


def _block(table: dict[str, NDArray]) -> Block:
    points = stack_columns(table, "x", "y", "z")
    assert points is not None
    # A float x beside NaN rows: counts say what the sensor did not return.
    return Block(points.astype(np.float64), _colours(table))


def _header(path: Path) -> tuple[dict[str, list[str]], int]:
    """What the header says, and where the points begin."""
    header: dict[str, list[str]] = {}
    with path.open("rb") as file:
        while (line := file.readline()).endswith(b"\n"):
            words = line.decode("latin-1").split()
            if words and not words[0].startswith("#"):
                header[words[0].upper()] = words[1:]
                if words[0].upper() == "DATA" and len(words) > 1:
                    return header, file.tell()
    raise CrestcutError("the PCD header has no end", str(path), "copy or export it again")


def _count(header: dict[str, list[str]], path: Path) -> int:
    """Number of points, above zero: POINTS, which is WIDTH times HEIGHT where those are told as well."""
    told = {}
    for key in ("POINTS", "WIDTH", "HEIGHT"):
        word = " ".join(header.get(key, ["absent"]))
        if word != "absent":
            if not re.fullmatch("[0-9]{1,12}", word):
                raise unreadable(path, "PCD", f"header: {key} {word} is no number of points")
            told[key] = int(word)
    grid = told["WIDTH"] * told.get("HEIGHT", 1) if "WIDTH" in told else None
    count = told.get("POINTS", grid)
    if count is None:
        raise unreadable(path, "PCD", "header: it does not say how many points there are")
    if grid not in (None, count):
        raise unreadable(path, "PCD", f"header: {count:,} points, but width times height is {grid:,}")
    if count == 0:
        raise CrestcutError("no points in the file", str(path), "export the scan again")
    return count


def _fields(header: dict[str, list[str]], path: Path) -> np.dtype:
    """One point as a packed little-endian record."""
    try:
        names = header["FIELDS"]
        counts = [int(c) for c in header.get("COUNT", ["1"] * len(names))]
        kinds = [f"<{_KINDS[t.upper()]}{int(s)}" for t, s in zip(header["TYPE"], header["SIZE"], strict=True)]
        if min(counts, default=0) < 1 or not {int(s) for s in header["SIZE"]} <= {1, 2, 4, 8}:
            raise ValueError("a field of no size")
        # Padding columns share the name "_": number them.
        unique = [name if name != "_" else f"_{k}" for k, name in enumerate(names)]
        return np.dtype([(n.lower(), k, (c,)) for n, k, c in zip(unique, kinds, counts, strict=True)])
    except (KeyError, ValueError, TypeError, OverflowError) as error:
        raise unreadable(path, "PCD", f"header: {error}") from None


def _exactly(body: bytes, size: int, path: Path) -> bytes:
    if len(body) < size:
        raise truncated(path, f"{size:,} bytes of points", f"{len(body):,}")
    return body[:size]


def _binary(path: Path, body: int, fields: np.dtype, count: int, rows: int) -> Iterator[dict[str, NDArray]]:
    found = path.stat().st_size - body
    if found < fields.itemsize * count:
        raise truncated(path, f"{fields.itemsize * count:,} bytes of points", f"{found:,}")
    with path.open("rb") as file:
        file.seek(body)
        for first in range(0, count, rows):
            records = np.fromfile(file, fields, min(rows, count - first))
            yield {name: records[name][:, 0] for name in fields.names or ()}


def _ascii(path: Path, body: int, fields: np.dtype, count: int, rows: int) -> Iterator[dict[str, NDArray]]:
    found, width = 0, None
    for lines in _lines(path, body, rows):
        first, found = found, found + len(lines)
        if not (some := lines[: count - first]):
            break
        table: dict[str, NDArray] = {}
        column = 0
        try:
            values = np.loadtxt(some, dtype=np.float64, ndmin=2, comments=None)
            width = width or values.shape[1]
            if values.shape[1] != width:
                raise ValueError(f"{values.shape[1]} columns from row {first + 1:,} on, {width} before")
            for name in fields.names or ():
                kind, shape = fields[name].subdtype or (fields[name], (1,))
                # Packed colours are whole numbers even where the field is called a float. Digits of text
                # count whatever size is declared: as single floats, map coordinates would lose 250 mm.
                values_of = values[:, column]
                table[name] = values_of if kind.kind == "f" else values_of.astype(kind)
                column += int(shape[0])
        except (ValueError, IndexError) as error:
            if (there := sum(map(len, _lines(path, body, rows)))) < count:
                raise truncated(path, f"{count:,} points", f"{there:,}") from None
            raise unreadable(path, "PCD", error) from None
        yield table
    if found < count:
        raise truncated(path, f"{count:,} points", f"{found:,}")


def _lines(path: Path, body: int, rows: int) -> Iterator[list[bytes]]:
    """Lines with anything in them, about so many at a time."""
    with path.open("rb") as file:
        file.seek(body)
        while some := file.read(rows * LONG) + file.readline():
            if lines := [line for line in some.splitlines() if line.strip()]:
                yield lines


def _compressed(body: bytes, fields: np.dtype, count: int, path: Path) -> dict[str, NDArray]:
    """LZF-compressed, field after field rather than point after point."""
    if len(body) < 8:
        raise truncated(path, "8 bytes of sizes", f"{len(body)}")
    packed, whole = (int.from_bytes(body[i : i + 4], "little") for i in (0, 4))
    if whole != fields.itemsize * count:
        raise unreadable(
            path, "PCD", f"{whole:,} bytes unpacked where {fields.itemsize * count:,} are needed"
        )
    source = np.frombuffer(_exactly(body[8:], packed, path), np.uint8)
    if whole > _LZF_MOST * (packed + 1):
        raise unreadable(path, "PCD", "its compressed data is damaged")
    data = np.zeros(whole, np.uint8)
    if _unpack(source, data) != whole:
        raise unreadable(path, "PCD", "its compressed data is damaged")
    table: dict[str, NDArray] = {}
    at = 0
    for name in fields.names or ():
        kind, shape = fields[name].subdtype or (fields[name], (1,))
        width = kind.itemsize * int(shape[0])
        block = data[at : at + width * count].tobytes()
        table[name] = np.frombuffer(block, kind).reshape(count, -1)[:, 0]
        at += width * count
    return table


@njit()
def _unpack(source: NDArray[np.uint8], target: NDArray[np.uint8]) -> int:
    """Undo LZF: fill ``target`` (m,) from ``source`` (n,); bytes written, or -1 where the stream is damaged.

    Format as in liblzf (M. Lehmann): a control byte below 32 opens a run of that many literals plus one; any
    other holds the length less two in its top three bits (7: one more length byte) and the high part of the
    distance back in the rest.
    """
    i, o = 0, 0
    n, m = source.size, target.size
    while i < n:
        control = int(source[i])
        i += 1
        if control < 32:
            run = control + 1
            if i + run > n or o + run > m:
                return -1
            for k in range(run):
                target[o + k] = source[i + k]
            i += run
            o += run
            continue
        length = control >> 5
        if length == 7:
            if i >= n:
                return -1
            length += int(source[i])
            i += 1
        if i >= n:
            return -1
        start = o - ((control & 31) << 8) - int(source[i]) - 1
        i += 1
        length += 2
        if start < 0 or o + length > m:
            return -1
        # A copy may overlap what it writes: byte by byte, never as a slice.
        for k in range(length):
            target[o + k] = target[start + k]
        o += length
    return o


def _colours(table: dict[str, NDArray]) -> NDArray | None:
    packed = next((table[n] for n in ("rgb", "rgba") if n in table), None)
    if packed is None:
        return stack_columns(table, "r", "g", "b")
    # 0x00RRGGBB, often stored in the bits of a float.
    bits = np.ascontiguousarray(packed.astype("<f4" if packed.dtype.kind == "f" else "<u4")).view("<u4")
    return np.stack([(bits >> 16) & 255, (bits >> 8) & 255, bits & 255], axis=1).astype(np.uint8)
