"""XYZ, CSV, TXT and PTS: columns of numbers, with the delimiter, header, order and decimal mark told from the
text. Rows are read some at a time."""

from __future__ import annotations

import codecs
import io
import itertools
import re
import statistics
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TextIO

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.units import METRES_PER
from crestcut.scan.formats.raw import RawScan, UnitFound, eight_bit, truncated
from crestcut.scan.formats.take import ALL, LONG, Block, Take, take

_NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$|[-+]?(?:nan|inf(?:inity)?)$", re.IGNORECASE)
_COMMA_NUMBER = re.compile(r"[-+]?(?:\d+,\d*|,\d+)(?:[eE][-+]?\d+)?$")
_COMMENT = ("#", "//", "%", "!")
_MEANING = {
    "x": "x", "easting": "x", "east": "x", "e": "x", "xcoord": "x", "coordx": "x", "xcoordinate": "x",
    "y": "y", "northing": "y", "north": "y", "n": "y", "ycoord": "y", "coordy": "y", "ycoordinate": "y",
    "z": "z", "elevation": "z", "elev": "z", "height": "z", "h": "z", "altitude": "z", "level": "z",
    "rl": "z", "zcoord": "z", "coordz": "z", "zcoordinate": "z",
    "r": "r", "red": "r", "g": "g", "green": "g", "b": "b", "blue": "b",
    "time": "t", "gpstime": "t", "timestamp": "t", "t": "t",
}  # fmt: skip
_UNIT_IN_NAME = re.compile(r"[\[(_ ](us-ft|mm|cm|m|in|ft)[\])]?$")
_FEWEST_ROWS = 3
MOST_ROWS = 100_000  # at a time: text takes more room than numbers


@dataclass(frozen=True)
class _Layout:
    """How the rows are to be read. ``columns``: meaning ('x', 'y', 'z', 'r' ...) -> column number."""

    first_row: int  # lines before the data
    delimiter: str | None  # None: white space
    decimal_comma: bool
    columns: dict[str, int]
    unit: str | None
    rows: int | None  # as the file states it
    notes: tuple[str, ...]


def read_text(path: Path, asked: Take = ALL) -> RawScan:
    """Points, and colours and time where a header names them or the number of columns leaves no doubt."""
    encoding = _encoding(path)
    with path.open(encoding=encoding, newline="\n") as lines:
        layout = _layout(lines, path)
    unit = None
    if layout.unit:
        unit = UnitFound(layout.unit, (METRES_PER[layout.unit],) * 3, "written in the column names")
    notes = tuple(f"{path.name}: {note}" for note in layout.notes)
    head = RawScan(_kind(path, layout), np.empty((0, 3)), unit=unit, notes=notes)
    scale = _Scale()
    return take(head, _blocks(path, encoding, layout, asked.rows, scale), asked, scale.eight_bit)


def _encoding(path: Path) -> str:
    """UTF-8 where all of the file is, else Latin-1, which any bytes are."""
    decoder = codecs.getincrementaldecoder("utf-8-sig")()
    try:
        with path.open("rb") as file:
            while some := file.read(1 << 20):
                decoder.decode(some)
        decoder.decode(b"", final=True)
    except UnicodeDecodeError:
        return "latin-1"
    return "utf-8-sig"


def _layout(text: Iterable[str], path: Path) -> _Layout:
    lines, skipped = _first_lines(text)
    if not lines:
        raise CrestcutError("no points in the file", str(path), "export the scan again")
    rows: int | None = None
    # A PTS file opens with the number of its points.
    if len(lines) > 1 and re.fullmatch(r"[0-9]{1,12}", lines[0].strip()) and len(lines[1].split()) >= 3:
        rows, lines, skipped = int(lines[0]), lines[1:], skipped + 1
    delimiter, comma = _delimiter(lines, path)
    names: list[str] | None = None
    first = _split(lines[0], delimiter)
    if not _is_number(first[0], comma) or sum(_is_number(w, comma) for w in first) < 3:
        names, lines, skipped = first, lines[1:], skipped + 1
    if not lines:
        raise CrestcutError("no points in the file", str(path), "export the scan again")
    sample = [_split(line, delimiter) for line in lines]
    columns, unit, notes = _columns(names, sample, comma, path)
    return _Layout(skipped, delimiter, comma, columns, unit, rows, notes)


def _first_lines(text: Iterable[str], most: int = 200) -> tuple[list[str], int]:
    """The first lines with anything in them after leading comments, and how many physical lines stand before
    them.

    A comment line that names columns ("# x y z") is kept as a header.
    """
    lines: list[str] = []
    skipped = 0
    for number, line in enumerate(text):
        bare = line.strip()
        if not lines and (not bare or bare.startswith(_COMMENT)):
            words = [w.lower() for w in re.split(r"[\s,;]+", bare.lstrip("#/%! ")) if w]
            if len(words) >= 3 and {"x", "y", "z"} <= {_MEANING.get(_plain(w)) for w in words}:
                lines.append(bare.lstrip("#/%! "))
            else:
                skipped = number + 1
            continue
        if bare:
            lines.append(bare)
        if len(lines) >= most:
            break
    return lines, skipped


def _delimiter(lines: list[str], path: Path) -> tuple[str | None, bool]:
    """(delimiter, decimal comma) that make a steady table of at least three numbers a row."""
    body = lines[1:] if len(lines) > 1 else lines
    for delimiter in (";", "\t", None):
        rows = [_split(line, delimiter) for line in body]
        if _width(rows) < 3:
            continue
        words = [w for row in rows for w in row[:6]]
        if any(_COMMA_NUMBER.match(w) for w in words):
            if delimiter is None and any(len(w.split(",")) > 2 for w in words):
                continue
            # White space and commas both part the columns ("1.0, 2.0, 3.0"): the comma then ends the word.
            if all(w.endswith(",") for row in rows for w in row[:-1]):
                continue
            return delimiter, True
        if sum(_is_number(w, False) for w in rows[0]) >= 3:
            return delimiter, False
    rows = [_split(line, ",") for line in body]
    if _width(rows) < 3 or sum(_is_number(w, False) for w in rows[0]) < 3:
        raise CrestcutError(
            "no rows of three or more numbers", str(path), "this is not a point file; give the scan itself"
        )
    if (
        len(rows[0]) >= 6
        and len(rows[0]) % 2 == 0
        and all(re.fullmatch(r"[-+]?\d+", w) for row in rows for w in row)
    ):
        raise CrestcutError(
            "commas both part the columns and may mark decimals",
            str(path),
            "export it with semicolons or decimal points",
        )
    return ",", False


def _width(rows: list[list[str]]) -> int:
    """Columns of the table, by the median row: one torn row is found later and named by its line."""
    return statistics.median_low(map(len, rows))


def _split(line: str, delimiter: str | None) -> list[str]:
    return [w.strip().strip('"') for w in line.strip().split(delimiter)]


def _is_number(word: str, comma: bool) -> bool:
    return bool(_NUMBER.match(word) or (comma and _COMMA_NUMBER.match(word)))


def _plain(name: str) -> str:
    return re.sub(r"[^a-z]", "", _UNIT_IN_NAME.sub("", name.lower().strip()))


def _columns(
    names: list[str] | None, sample: list[list[str]], comma: bool, path: Path
) -> tuple[dict[str, int], str | None, tuple[str, ...]]:
    """Which column is what, the unit a header states, and what was assumed."""
    if names is not None:
        found = _named(names, path)
        if {"x", "y", "z"} <= set(found):
            units = {m[1] for n in names if _MEANING.get(_plain(n)) in ("x", "y", "z")
                     if (m := _UNIT_IN_NAME.search(n.lower().strip()))}  # fmt: skip
            if len(units) > 1:
                raise CrestcutError(
                    f"columns in {' and '.join(sorted(units))}", str(path), "export it in one unit"
                )
            return found, next(iter(units), None), ()
    width = _width(sample)
    start = 1 if width >= 4 and _counts_up(sample) else 0
    if width - start < 3 or not all(_is_number(w, comma) for w in sample[0][start : start + 3]):
        raise CrestcutError(
            "no three columns of numbers", str(path), "name the columns x, y, z in a first line"
        )
    columns = {"x": start, "y": start + 1, "z": start + 2}
    notes = [f"columns {start + 1} to {start + 3} taken as x, y, z"]
    if start:
        notes[0] += ", the first as point numbers"
    colour_at = {6: 3, 7: 4}.get(width - start)
    if colour_at is not None and _are_colours(sample, start + colour_at):
        columns |= {c: start + colour_at + k for k, c in enumerate("rgb")}
    return columns, None, tuple(notes)


def _named(names: list[str], path: Path) -> dict[str, int]:
    """Which column each meaning has; of two that could have one ("n x y z") that which is called by its
    letter."""
    found: dict[str, int] = {}
    for meaning in dict.fromkeys(_MEANING.values()):
        could = [k for k, name in enumerate(names) if _MEANING.get(_plain(name)) == meaning]
        plain = [k for k in could if _plain(names[k]) == meaning]
        if len(could) > 1 and len(plain) != 1 and meaning in "xyz":
            words = " and ".join(names[k] for k in could[:2])
            raise CrestcutError(
                f"two columns may be {meaning}: {words}", str(path), "leave out or rename one"
            )
        if could:
            found[meaning] = (plain or could)[0]
    return found


def _counts_up(sample: list[list[str]]) -> bool:
    first = [row[0] for row in sample]
    if len(first) < _FEWEST_ROWS or not all(re.fullmatch(r"[0-9]{1,12}", w) for w in first):
        return False
    return all(int(b) == int(a) + 1 for a, b in itertools.pairwise(first))


def _are_colours(sample: list[list[str]], start: int) -> bool:
    words = [w for row in sample for w in row[start : start + 3]]
    return all(re.fullmatch(r"[0-9]{1,3}", w) and int(w) <= 255 for w in words)


class _Scale:
    """What the colours of a file are counted in: known once all of them were seen."""

    def __init__(self) -> None:
        self.whole = True  # numbers, all of them

    def seen(self, colours: FloatArray) -> FloatArray:
        """Those of some points, with nothing that is no number."""
        clean = np.nan_to_num(colours)
        self.whole = self.whole and bool(np.all(clean == np.rint(clean)))
        return clean

    def eight_bit(self, colours: NDArray, top: float) -> NDArray[np.uint8] | None:
        """As ``raw.eight_bit``."""
        if self.whole and top > 1.0:
            return eight_bit(np.clip(colours, 0, 65535).astype(np.int64), min(top, 65535.0))
        return eight_bit(colours, top)


def _blocks(path: Path, encoding: str, layout: _Layout, rows: int, scale: _Scale) -> Iterator[Block]:
    """All rows, about so many at a time. Raises CrestcutError where there are fewer than the file says."""
    order, found = list(layout.columns), 0

    def column(table: FloatArray, names: str) -> FloatArray | None:
        return table[:, [order.index(n) for n in names]] if set(names) <= set(order) else None

    with path.open(encoding=encoding, newline="\n") as file:
        for _ in range(layout.first_row):
            file.readline()
        while text := _some_lines(file, min(rows, MOST_ROWS) * LONG, layout, path):
            if not any(line.split("#")[0].strip() for line in io.StringIO(text)):
                continue  # numpy warns of what holds no row
            table = _table(text, layout, path, encoding)
            found += len(table)
            points, colours, time = (column(table, names) for names in ("xyz", "rgb", "t"))
            assert points is not None
            yield Block(
                points, None if colours is None else scale.seen(colours), None if time is None else time[:, 0]
            )
    if layout.rows is not None and found < layout.rows:
        raise truncated(path, f"{layout.rows:,} points", f"{found:,}")


def _some_lines(file: TextIO, length: int, layout: _Layout, path: Path) -> str:
    """The next lines, ``length`` characters or more, to an end that no quotation is open at.

    Raises CrestcutError where one takes in what is a row by itself: its end is missing, and points with it.
    """
    text = file.read(length) + file.readline()
    opened, torn = _quotation(io.StringIO(text), layout) if '"' in text else (0, False)
    while opened and not torn and (line := file.readline()):
        text, torn = text + line, _is_row(line, layout)
        if line.count('"') % 2:
            break
    if not torn:
        return text
    file.seek(0)
    raise CrestcutError(
        f"a quotation mark in line {_quotation(file, layout)[0]:,} is not closed before the next point",
        str(path), "take it out, or export without the texts",
    )  # fmt: skip


def _quotation(lines: Iterable[str], layout: _Layout) -> tuple[int, bool]:
    """The line whose quotation is open behind the last, 0 for none; whether one takes in a row: told at once.

    As numpy reads them: a mark opens one at the start of a field, an inch mark behind a number does not.
    """
    opened = 0
    for number, line in enumerate(lines, start=1):
        bare = line.split("#")[0]
        if opened and _is_row(line, layout):
            return opened, True
        if opened:
            opened = 0 if line.count('"') % 2 else opened
        elif bare.count('"') % 2 and any(w.lstrip()[:1] == '"' for w in bare.split(layout.delimiter)):
            opened = number
    return opened, False


def _table(text: str, layout: _Layout, path: Path, encoding: str) -> FloatArray:
    """(n, len(columns)) float64, in the order of ``layout.columns``."""
    try:
        # '//' comments inside the data are rare and end as an error that names the line.
        return np.loadtxt(
            io.StringIO(_pointed(text, layout)), delimiter=layout.delimiter, comments="#", ndmin=2,
            usecols=list(layout.columns.values()), quotechar='"', dtype=np.float64,
        )  # fmt: skip
    except (ValueError, IndexError):
        with path.open(encoding=encoding, newline="\n") as lines:
            number = _bad_line(lines, layout)
        line = "a line" if number is None else f"line {number:,}"
        raise CrestcutError(
            f"{line} has too few numbers or something else in them; the file may be cut short", str(path),
            "mend that line or export it again",
        ) from None  # fmt: skip


def _pointed(text: str, layout: _Layout) -> str:
    return text.replace(",", ".") if layout.decimal_comma else text


def _is_row(line: str, layout: _Layout) -> bool:
    words = _split(_pointed(line, layout).split("#")[0], layout.delimiter)
    columns = layout.columns.values()
    return len(words) > max(columns) and all(_is_number(words[k], False) for k in columns)


def _bad_line(lines: Iterable[str], layout: _Layout) -> int | None:
    """The first line that is no row, counted as editors do: numpy leaves empty lines and comments out."""
    for number, line in enumerate(lines, start=1):
        if number > layout.first_row and line.split("#")[0].strip() and not _is_row(line, layout):
            return number
    return None


def _kind(path: Path, layout: _Layout) -> str:
    name = {";": "semicolons", "\t": "tabs", ",": "commas", None: "spaces"}[layout.delimiter]
    kind = "PTS" if layout.rows is not None else (path.suffix[1:].upper() or "text")
    return f"{kind}, columns parted by {name}" + (", decimal comma" if layout.decimal_comma else "")
