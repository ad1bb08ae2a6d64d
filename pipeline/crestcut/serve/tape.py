"""The vehicle by tape, on a screen: the letters of the measuring sheet, where each is measured in a drawing,
what it can be, and the filled sheet that the command line reads too.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.serve.asking import between, length, shown, with_unit
from crestcut.vehicle import ITEMS, PART_ITEMS, RANGES

MARK = 'sheet = "measuring sheet 1"'
MOST_PARTS = 8
_ANGLES = ("R", "V")
_KINDS = {
    "A": "wheelbase", "B": "wheelbase", "C": "track", "D": "track", "E": "tyre_radius", "F": "tyre_radius",
    "G": "tyre_width", "H": "clearance", "J": "overhang", "K": "overhang", "N": "width", "P": "clearance",
    "Q": "overhang", "S": "turning_radius", "T": "clearance", "U": "overhang",
}  # fmt: skip
_GROUPS = (
    ("Lengths along it", "AB" + "JK"),
    ("Heights", "EFH"),
    ("Widths", "CDGN"),
    ("Nose and tail: worth it where the slab starts or ends in a dip", "PQRTUV"),
    ("If you can", "MSWX"),
)
# where a letter is drawn: (view, x1, y1, x2, y2) in the drawings of templates/tape.html
_PLACES: Mapping[str, tuple[str, float, float, float, float]] = {
    "A": ("side", 82, 134, 238, 134), "B": ("side", 82, 134, 238, 134), "J": ("side", 30, 134, 82, 134),
    "K": ("side", 238, 134, 290, 134), "M": ("side", 30, 134, 290, 134), "E": ("side", 82, 86, 82, 110),
    "F": ("side", 238, 86, 238, 110), "H": ("side", 160, 94, 160, 110), "P": ("side", 40, 90, 40, 110),
    "Q": ("side", 40, 118, 82, 118), "R": ("side", 60, 104, 32, 90), "T": ("side", 280, 88, 280, 110),
    "U": ("side", 238, 118, 280, 118), "V": ("side", 260, 104, 288, 88), "X": ("side", 82, 134, 190, 134),
    "C": ("front", 62, 134, 158, 134), "D": ("front", 62, 134, 158, 134), "G": ("front", 50, 134, 74, 134),
    "N": ("front", 46, 18, 174, 18), "W": ("front", 158, 104, 158, 112), "S": ("above", 110, 120, 60, 36),
    "a": ("below", 82, 22, 110, 22), "b": ("below", 82, 12, 206, 12), "c": ("below", 222, 70, 222, 46),
    "d": ("below", 222, 70, 222, 94), "e": ("side", 110, 98, 110, 110), "f": ("side", 206, 98, 206, 110),
}  # fmt: skip


@dataclass(frozen=True)
class Tape:
    """One box. view, place : of its line in the drawing.  window : of it that is shown.  can_be : its range,
    in words.
    """

    letter: str
    what: str
    how: str
    needed: bool
    typed: str
    view: str
    place: tuple[float, float, float, float]
    window: str
    can_be: str
    fault: str = ""


@dataclass(frozen=True)
class Group:
    """Boxes under one heading."""

    title: str
    boxes: tuple[Tape, ...]
    optional: bool


def groups(typed: Mapping[str, str], faults: Mapping[str, str], unit: str) -> tuple[Group, ...]:
    """The whole sheet but for low parts. typed : by letter."""
    items = {item.letter: item for item in ITEMS}
    found = []
    for title, letters in _GROUPS:
        boxes = tuple(_box(items[c], typed.get(c, ""), faults.get(c, ""), unit) for c in letters)
        found.append(Group(title, boxes, not any(box.needed for box in boxes)))
    return tuple(found)


def part_boxes(number: int, typed: Mapping[str, str], unit: str) -> tuple[Tape, ...]:
    """The boxes of a low part; ``typed`` by ``part.NUMBER.LETTER``."""
    return tuple(_box(item, typed.get(f"part.{number}.{item.letter}", ""), "", unit) for item in PART_ITEMS)


def _box(item: Any, typed: str, fault: str, unit: str) -> Tape:
    view, *place = _PLACES[item.letter]
    ends = RANGES.get(_KINDS.get(item.letter, ""))
    can_be = between(*ends, unit) if ends else "between 0 and 90 degrees" if item.letter in _ANGLES else ""
    x1, y1, x2, y2 = place
    return Tape(
        item.letter, item.what, item.how, item.needed, typed, view, (x1, y1, x2, y2),
        _window(view, x1, y1, x2, y2), can_be, fault,
    )  # fmt: skip


def _window(view: str, x1: float, y1: float, x2: float, y2: float) -> str:
    """A height is small beside a vehicle: it is shown from nearer."""
    if view == "side" and x1 == x2:
        return f"{x1 - 55:g} 46 110 76"
    return {"front": "10 0 200 152", "above": "0 0 220 150"}.get(view, "0 4 320 150")


def from_form(form: Mapping[str, str], unit: str) -> tuple[dict[str, str], dict[str, str]]:
    """(what was typed, faults) by letter; several readings stand between semicolons."""
    typed = {item.letter: form.get(item.letter, "").strip() for item in ITEMS}
    faults: dict[str, str] = {}
    for item in ITEMS:
        text, ends = typed[item.letter], RANGES.get(_KINDS.get(item.letter, ""))
        if not text:
            if item.needed:
                faults[item.letter] = "not measured yet"
            continue
        try:
            for one in _several(text):
                if item.letter in _ANGLES:
                    _degrees(one)
                    continue
                metres = length(one, unit)
                if ends and not ends[0] <= metres <= ends[1]:
                    raise CrestcutError(
                        f"{shown(metres, unit)} cannot be right", "", f"it lies {between(*ends, unit)}"
                    )
        except CrestcutError as error:
            faults[item.letter] = f"{error.what}; {error.mend}"
    typed["name"] = form.get("name", "").strip()
    typed["load"] = form.get("load", "").strip() or "driver only"
    return typed, faults


def sheet_text(typed: Mapping[str, str], form: Mapping[str, str], unit: str) -> str:
    """The filled sheet as the file that ``crestcut vehicle`` reads; ``form`` holds the low parts."""
    lines = ["# Measuring sheet, filled in on the screen; crestcut vehicle reads it too.", MARK]
    lines += [f"name = {_quoted(typed['name'] or 'our vehicle')}", f"load = {_quoted(typed['load'])}"]
    lines += [f"{i.letter} = {_list(i.letter, typed[i.letter], unit)}" for i in ITEMS if typed[i.letter]]
    for number in range(MOST_PARTS):
        name = form.get(f"part.{number}.name", "").strip()
        if not name:
            continue
        lines += ["", "[[part]]", f"name = {_quoted(name)}"]
        for item in PART_ITEMS:
            text = form.get(f"part.{number}.{item.letter}", "").strip()
            if text:
                lines.append(f"{item.letter} = {_list(item.letter, text, unit)}")
        if form.get(f"part.{number}.soft"):
            lines.append("soft = true")
    return "\n".join(lines) + "\n"


def typed_in(sheet: Mapping[str, Any]) -> dict[str, str]:
    """What a filled sheet holds, as it stands in the boxes."""
    found = {key: _shown(value) for key, value in sheet.items() if key not in ("part", "loaded", "sheet")}
    parts = sheet.get("part", [])
    for number, part in enumerate(parts if isinstance(parts, list) else []):
        found |= {f"part.{number}.{key}": _shown(value) for key, value in part.items()}
    return found


def vehicle_from_sheet(text: str, path: Path) -> tuple[str, tuple[str, ...], str]:
    """(the vehicle file, what looks mistaken, its name). Raises CrestcutError where it cannot be."""
    import tomllib

    from crestcut.vehicle import measured_vehicle, sheet_from

    measured = sheet_from(tomllib.loads(text), path)
    found, vehicle = measured_vehicle(measured)
    return vehicle, tuple(dict.fromkeys((*measured.doubts, *found.doubts))), found.name


def check_vehicle(text: str, path: Path) -> tuple[str, tuple[str, ...]]:
    """Name and doubts of a vehicle file. Raises CrestcutError where it is none."""
    import tomllib

    from crestcut.vehicle import vehicle_from

    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        raise CrestcutError("that is no vehicle file", path.name, "bring one that crestcut wrote") from None
    found = vehicle_from(data, path)
    return found.name, found.doubts


@dataclass(frozen=True)
class Single:
    """One length of a vehicle file: where it stands, how it is called, and as it is written there."""

    key: str
    name: str
    value: str


def single_measures(vehicle: Mapping[str, Any]) -> tuple[Single, ...]:
    """Every length of a vehicle file that may be changed by itself: its own, and its parts' heights."""
    found = [
        Single(key, key.replace("_", " ").capitalize(), value)
        for key, value in vehicle.items()
        if isinstance(value, str) and key not in ("name", "on")
    ]
    for number, part in enumerate(vehicle.get("part") or []):
        heights = part.get("clearance")
        name = f"Ground to the {part.get('name')}"
        if isinstance(heights, str):
            found.append(Single(f"part.{number}.clearance", name, heights))
        elif isinstance(heights, list):
            ends = zip(("front", "rear"), heights, strict=False)
            found += [
                Single(f"part.{number}.clearance.{k}", f"{name}, {end}", str(height))
                for k, (end, height) in enumerate(ends)
            ]
    return tuple(found)


def with_measure(text: str, key: str, typed: str, unit: str) -> str:
    """A vehicle file with one length changed; its comments stay."""
    import tomlkit

    length(typed, unit)
    document: Any = tomlkit.parse(text)
    *path, last = [int(part) if part.isdigit() else part for part in key.split(".")]
    home = document
    for part in path:
        home = home[part]
    home[last] = with_unit(typed, unit)
    return tomlkit.dumps(document)


def _several(text: str) -> list[str]:
    return [one.strip() for one in text.split(";") if one.strip()]


def _list(letter: str, text: str, unit: str) -> str:
    if letter in _ANGLES:
        return json.dumps([_degrees(one) for one in _several(text)])
    return json.dumps([with_unit(one, unit) for one in _several(text)], ensure_ascii=False)


def _degrees(text: str) -> float:
    try:
        value = float(text.removesuffix("°").removesuffix("degrees"))
    except ValueError:
        value = -1.0
    if not 0 < value < 90:
        raise CrestcutError(f"“{text[:20]}” is no angle", "", "write degrees, like 12.5")
    return value


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _shown(value: Any) -> str:
    if isinstance(value, list):
        return "; ".join(str(one) for one in value)
    return "yes" if value is True else "" if value is False else str(value)
