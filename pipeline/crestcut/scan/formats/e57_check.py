"""What an E57 file promises, held against its bytes before a library opens it (ASTM E2807-11).

The library takes the point counts on trust and leaves what is not there as it finds it in memory; its XML
parser fetches what a document type or a schema's place names. Both are refused here.
"""

from __future__ import annotations

import contextlib
import datetime
from collections.abc import Iterator
from pathlib import Path
from typing import IO, Any
from xml.etree import ElementTree

from crestcut.base.errors import CrestcutError
from crestcut.scan.formats.raw import Origin, truncated, unreadable

_PAGE, _CHECKSUM = 1024, 4  # bytes: each page ends in the checksum of what stands before it
_PAYLOAD = _PAGE - _CHECKSUM
_MOST_XML = 64 << 20  # bytes; a file of a thousand scans has a few
_VECTOR, _DATA_PACKET = 1, 1  # the first byte of a section and of a packet
_INTEGER = (-(2**63), 2**63 - 1)  # what an Integer may be where it names no limits
_SCHEMA = "{http://www.w3.org/2001/XMLSchema-instance}"
_AGAIN = "copy or export it again"
GPS_BEGAN = datetime.datetime(1980, 1, 6)  # E2807-11, 8.4.24; leap seconds change no day that matters here


def check_e57(path: Path) -> tuple[str, Origin]:
    """Its reference system as written (a WKT), "" for none, and what it says of its making.

    Raises CrestcutError where the file is cut short, its XML has a document type, an entity or a schema of
    elsewhere, or it holds fewer points than it says.
    """
    size = path.stat().st_size
    with path.open("rb") as file:
        head = file.read(48)
        if len(head) < 48:
            raise truncated(path, "48 bytes or more", f"{size:,}")
        # after signature and two versions: physical length, place and length of the XML, page size
        length, place, xml_length, page = (
            int.from_bytes(head[i : i + 8], "little") for i in (16, 24, 32, 40)
        )
        if size < length:
            raise truncated(path, f"{length:,} bytes", f"{size:,}")
        if page != _PAGE or xml_length > _MOST_XML:
            raise unreadable(path, "E57", "its header is damaged")
        root = _xml(_logical(file, place, xml_length), path)
        for points in root.iter():
            if points.tag.endswith("}points") and points.get("type") == "CompressedVector":
                _check_count(file, points, path)
    return next((e.text or "" for e in root if e.tag.endswith("}coordinateMetadata")), ""), _origin(root)


def _origin(root: ElementTree.Element) -> Origin:
    """Of the first scan that names its sensor (ASTM E2807-11, 8.4.3.1); times are seconds of GPS."""

    def first(*names: str) -> str:
        found = (
            next((e.text.strip() for e in root.iter() if e.tag.endswith(f"}}{n}") and e.text), "")
            for n in names
        )
        return " ".join(filter(None, found))

    stamp = next((e for e in root if e.tag.endswith("}creationDateTime")), ())
    seconds = next((e.text or "" for e in stamp if e.tag.endswith("}dateTimeValue")), "")
    made = ""
    with contextlib.suppress(ValueError, OverflowError):
        if float(seconds) > 0:
            made = (GPS_BEGAN + datetime.timedelta(seconds=float(seconds))).date().isoformat()
    return Origin(
        first("sensorVendor", "sensorModel", "sensorSerialNumber"), first("e57LibraryVersion"), made
    )


def _logical(file: IO[bytes], place: int, length: int) -> bytes:
    """Up to ``length`` bytes from a physical place on, without the checksums of the pages."""
    first = _PAYLOAD - place % _PAGE
    if first <= 0 or length <= 0 or place >= 1 << 62:
        return b""
    file.seek(place)
    raw = file.read(length + _CHECKSUM * (length // _PAYLOAD + 2))
    rest = (raw[i : i + _PAYLOAD] for i in range(first + _CHECKSUM, len(raw), _PAGE))
    return b"".join([raw[:first], *rest])[:length]


def _xml(text: bytes, path: Path) -> ElementTree.Element:
    """The document; no part of it may send the library for anything else."""

    class Plain(ElementTree.TreeBuilder):
        def doctype(self, *_: Any) -> None:  # called where it starts, before anything in it counts
            raise CrestcutError("its XML has a document type of its own", str(path), _AGAIN)

    parser = ElementTree.XMLParser(target=Plain())
    try:
        parser.feed(text)
        root: ElementTree.Element = parser.close()
    except (ElementTree.ParseError, ValueError, LookupError) as error:
        raise unreadable(path, "E57", f"its XML is damaged: {error}") from None
    if any(
        key.startswith(_SCHEMA) and key.endswith("chemaLocation") for e in root.iter() for key in e.attrib
    ):
        raise CrestcutError("its XML names a schema to be fetched", str(path), _AGAIN)
    return root


def _check_count(file: IO[bytes], points: ElementTree.Element, path: Path) -> None:
    """Every column of the records must be as long as their number asks for."""
    prototype = next((e for e in points if e.tag.endswith("}prototype")), None)
    try:
        count, place = int(points.get("recordCount", "")), int(points.get("fileOffset", ""))
        bits = [b for e in (prototype if prototype is not None else ()) for b in _bits(e)]
    except ValueError:
        raise unreadable(path, "E57", "its point records are not numbered") from None
    if count < 0 or not bits:
        raise unreadable(path, "E57", "its point records are not numbered")
    there = [0] * len(bits)
    for lengths in _packets(file, place) if count else ():
        there = [a + b for a, b in zip(there, lengths, strict=False)]
    held = min((8 * n // b for n, b in zip(there, bits, strict=True) if b), default=count)
    if held < count:
        raise truncated(path, f"{count:,} points", f"{held:,}")


def _bits(element: ElementTree.Element) -> Iterator[int]:
    """Bits of one record in each column that an element of the prototype makes."""
    kind = element.get("type")
    if kind == "Structure":
        for inner in element:
            yield from _bits(inner)
    elif kind == "Float":
        yield 32 if element.get("precision") == "single" else 64
    elif kind in ("Integer", "ScaledInteger"):
        low, high = (int(element.get(k, d)) for k, d in zip(("minimum", "maximum"), _INTEGER, strict=True))
        yield max(high - low, 0).bit_length()
    else:
        yield 8  # a string takes a byte at least, for its length


def _packets(file: IO[bytes], place: int) -> Iterator[list[int]]:
    """Bytes of each column in every data packet of the section at a physical place."""
    head = _logical(file, place, 32)
    if len(head) < 32 or head[0] != _VECTOR:
        return
    length, first = (int.from_bytes(head[i : i + 8], "little") for i in (8, 16))
    at, end = _to_logical(first), _to_logical(place) + length
    while at < end:
        packet = _logical(file, _to_physical(at), 6)
        if len(packet) < 6:
            return
        if packet[0] == _DATA_PACKET:
            columns = int.from_bytes(packet[4:6], "little")
            table = _logical(file, _to_physical(at + 6), 2 * columns)
            yield [int.from_bytes(table[i : i + 2], "little") for i in range(0, len(table), 2)]
        at += int.from_bytes(packet[2:4], "little") + 1


def _to_logical(place: int) -> int:
    return place - _CHECKSUM * (place // _PAGE)


def _to_physical(at: int) -> int:
    return at + _CHECKSUM * (at // _PAYLOAD)
