"""The filled measuring sheet, read back: repeats become tolerances, lengths that contradict each other are
named (``sheet_checks``).
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.units import parse_length
from crestcut.job import did_you_mean, read_toml
from crestcut.vehicle.sheet.items import ANGLES, ITEMS, PART_ITEMS, Item

# tape and card stack, one reading, 1 sd (common practice, no source)
TAPE = 0.002
ANGLE = math.radians(1.0)  # 1 sd of an angle read off a photograph (common practice, no source)
# A floor with up to 2 mm of light under the straightedge lies anywhere within 1 mm of it: rectangular, sd =
# half width / sqrt 3 (JCGM 100:2008 4.3.7). It is the same at every repeat, so averaging does not help it.
FLOOR = 0.001 / math.sqrt(3)
_HEIGHTS = frozenset("EFHPTef")
_PART_KEYS = ("name", "soft", "on")
_LOADED_KEYS = ("name", "front", "rear")
_AXLES = ("body", "front axle", "rear axle")


@dataclass(frozen=True)
class Reading:
    """Mean of the repeats and its 1 sd, metres (radians for an angle); ``repeats`` how many; ``spread`` 1 sd
    of one of them.
    """

    value: float
    within: float
    repeats: int
    spread: float


@dataclass(frozen=True)
class MeasuredPart:
    """A low part as on the sheet; ``readings`` by its letters a to f."""

    name: str
    readings: Mapping[str, Reading]
    soft: bool = False
    on: str = "body"


@dataclass(frozen=True)
class Loaded:
    """How far the wheel arches moved under a load, m, negative where they sank."""

    name: str
    front: Reading
    rear: Reading


@dataclass(frozen=True)
class Measured:
    """A sheet read back. ``contradictions`` cannot be; ``doubts`` look mistaken: plain sentences."""

    path: Path
    name: str
    load: str
    readings: Mapping[str, Reading]
    parts: tuple[MeasuredPart, ...] = ()
    loaded: tuple[Loaded, ...] = ()
    contradictions: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    sha256: str = ""

    def vehicle_lengths(self) -> dict[str, tuple[float, float]]:
        """Key of the vehicle file -> (metres, 1 sd). Both sides' wheelbase and both axles' hub height are
        averaged.
        """
        out = {i.key: (r.value, r.within) for i in ITEMS if i.key and (r := self.readings.get(i.letter))}
        for key, pair in (("wheelbase", "AB"), ("tyre_radius", "EF")):
            two = [self.readings[letter] for letter in pair if letter in self.readings]
            if len(two) == 2:
                out[key] = (sum(r.value for r in two) / 2, math.hypot(*(r.within for r in two)) / 2)
        return out


def is_sheet(data: Mapping[str, Any]) -> bool:
    """Is this TOML a filled measuring sheet rather than a vehicle file?"""
    letters = {item.letter for item in ITEMS}
    return "sheet" in data or bool(letters & set(data) and "wheelbase" not in data)


def read_sheet(path: Path) -> Measured:
    """A filled-in sheet, checked against itself: see ``contradictions`` and ``doubts`` of the result.

    Raises CrestcutError, one line, for a sheet that cannot be read or lacks what is needed.
    """
    path = Path(path)
    data, digest = read_toml(path, "measuring sheet")
    return sheet_from(data, path, digest)


def sheet_from(data: Mapping[str, Any], path: Path, digest: str = "") -> Measured:
    """``read_sheet`` from data at hand."""
    from crestcut.vehicle.sheet.checks import with_doubts

    where = path.name
    known = {item.letter for item in ITEMS} | {"sheet", "name", "load", "part", "loaded"}
    for key in data:
        if key not in known:
            raise CrestcutError(f'no letter or key "{key}" on the sheet', where, did_you_mean(key, known))
    readings = {
        item.letter: _reading(item.letter, data[item.letter], where)
        for item in ITEMS
        if data.get(item.letter, []) != []
    }
    _complete(ITEMS, readings, where)
    loaded: list[Loaded] = []
    for n, table in enumerate(_tables(data, "loaded", where)):
        found = _loaded(table, f"{where}: loaded {n + 1}")
        if found.name in (other.name for other in loaded):
            raise CrestcutError(f'"{found.name}" is there twice', f"{where}: loaded {n + 1}", "name it apart")
        loaded.append(found)
    measured = Measured(
        path,
        _text(data, "name", where) or "measured vehicle",
        _text(data, "load", where) or "as measured",
        readings,
        tuple(_part(table, f"{where}: part {n + 1}") for n, table in enumerate(_tables(data, "part", where))),
        tuple(loaded),
        sha256=digest,
    )
    return with_doubts(measured)


def _complete(items: tuple[Item, ...], readings: Mapping[str, Reading], where: str) -> None:
    for item in items:
        if item.needed and item.letter not in readings:
            raise CrestcutError(f"{item.letter} ({item.what}) was not measured", where, item.how)


def _text(data: Mapping[str, Any], key: str, where: str) -> str:
    value = data.get(key, "")
    if not isinstance(value, str):
        raise CrestcutError("words between quotation marks expected", f"{where}: {key}", f'write {key} = ""')
    if any(ord(c) < 32 or ord(c) == 127 for c in value.strip()):  # which no vehicle file can hold
        raise CrestcutError("a control character in it", f"{where}: {key}", "write it anew")
    return value.strip()


def _tables(data: Mapping[str, Any], key: str, where: str) -> list[dict[str, Any]]:
    tables = data.get(key, [])
    if not isinstance(tables, list) or not all(isinstance(t, dict) for t in tables):
        raise CrestcutError("a list of tables expected", f"{where}: {key}", f"head each with [[{key}]]")
    return tables


def _part(table: dict[str, Any], where: str) -> MeasuredPart:
    name = _text(table, "name", where)
    if not name:
        raise CrestcutError("a part without a name", where, 'write name = "battery tray"')
    where = f"{where} ({name})"
    letters = {item.letter for item in PART_ITEMS}
    for key in table:
        if key not in letters and key not in _PART_KEYS:
            known = [*letters, *_PART_KEYS]
            raise CrestcutError(f'no letter or key "{key}" for a part', where, did_you_mean(key, known))
    soft, on = table.get("soft", False), table.get("on", "body")
    if not isinstance(soft, bool):
        raise CrestcutError(
            "true or false expected", f"{where}: soft", "write soft = true for what may touch"
        )
    if on not in _AXLES:
        raise CrestcutError(f'"{on}" carries nothing', f"{where}: on", f"write one of {', '.join(_AXLES)}")
    readings = {k: _reading(k, table[k], where) for k in sorted(letters & table.keys()) if table[k] != []}
    _complete(PART_ITEMS, readings, where)
    return MeasuredPart(name, readings, soft, on)


def _loaded(table: dict[str, Any], where: str) -> Loaded:
    name = _text(table, "name", where)
    if not name:
        raise CrestcutError("a load without a name", where, 'write name = "four people"')
    for key in table:
        if key not in _LOADED_KEYS:
            raise CrestcutError(f'no key "{key}" for a load', where, did_you_mean(key, _LOADED_KEYS))
    axles = []
    for key in ("front", "rear"):
        if table.get(key, []) == []:
            raise CrestcutError(f"{key} was not measured", f"{where} ({name})", 'write "0 mm" if it stayed')
        axles.append(_reading(key, table[key], f"{where} ({name})"))
    return Loaded(name, axles[0], axles[1])


def _reading(letter: str, value: Any, where: str) -> Reading:
    """Mean and sd of one letter's repeats. The spread of the repeats, never less than the tool gives; of
    their mean, spread / sqrt n (JCGM 100:2008 4.2.3), with the floor's own share on heights.
    """
    values = value if isinstance(value, list) else [value]
    at = f"{where}: {letter}"
    if letter in ANGLES:
        good = all(isinstance(v, (int, float)) and not isinstance(v, bool) and 0 < v < 90 for v in values)
        if not good:
            raise CrestcutError("an angle in degrees expected", at, "write [12.5]")
        sizes = [math.radians(float(v)) for v in values]
    else:
        sizes = [parse_length(v, at) for v in values]
        if min(sizes) <= 0 and letter not in ("a", "b", "c", "d", "front", "rear"):
            raise CrestcutError("a length above zero expected", at, "measure it again")
        if max(abs(s) for s in sizes) > 20:
            raise CrestcutError("longer than any vehicle", at, 'a number alone is metres; write "140 mm"')
    single = ANGLE if letter in ANGLES else TAPE
    spread = max(float(np.std(sizes, ddof=1)), single) if len(sizes) > 1 else single
    floor = FLOOR if letter in _HEIGHTS else 0.0
    return Reading(
        float(np.mean(sizes)), math.hypot(spread / math.sqrt(len(sizes)), floor), len(sizes), spread
    )
