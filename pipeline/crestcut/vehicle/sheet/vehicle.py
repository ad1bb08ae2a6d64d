"""A filled measuring sheet -> the vehicle file that a job takes."""

from __future__ import annotations

import json
import math
import re
import tomllib
from collections.abc import Callable

from crestcut.base.errors import CrestcutError
from crestcut.vehicle.angles import tangent_angle
from crestcut.vehicle.load import vehicle_from
from crestcut.vehicle.records import Vehicle
from crestcut.vehicle.sheet.items import ITEMS
from crestcut.vehicle.sheet.read_back import Measured, MeasuredPart

_EDGE = 0.05  # m: an end measured at one point only is taken as a plate at least this long
_ORDER = (
    "wheelbase", "front_track", "rear_track", "tyre_radius", "tyre_width", "width", "front_overhang",
    "rear_overhang", "belly_clearance", "turning_radius", "tyre_tread",
)  # fmt: skip


def vehicle_text(m: Measured) -> str:
    """The vehicle file as TOML, lengths in millimetres, each with the letters it comes from and its 1 sd.

    Raises CrestcutError, one line, where the sheet contradicts itself.
    """
    refuse_contradictions(m)
    lines = [
        f"# From the measuring sheet {m.path.name}. {m.load[:1].upper()}{m.load[1:]}, on flat ground.",
        *(f"# Looks mistaken: {doubt}" for doubt in m.doubts),
        f"name = {json.dumps(m.name, ensure_ascii=False)}",
    ]
    lengths = m.vehicle_lengths()
    letters = {key: "".join(i.letter for i in ITEMS if i.key == key) for key in _ORDER}
    letters |= {"wheelbase": "A, B", "tyre_radius": "E, F"}
    for key in _ORDER:
        if key in lengths:
            value, within = lengths[key]
            lines.append(_line(key, _mm(value), f"{letters[key]}; known to {_mm(within)} (1 sd)"))
    if "X" in m.readings:
        lines += ["rigid = true", f'centre_of_mass = {{ back = "{_mm(m.readings["X"].value)}" }}  # X']
    lines.append(_line("belly_within", _mm(lengths["belly_clearance"][1])))
    parts = [*(_ends(m)), *(_part(part) for part in m.parts)]
    for part in parts:
        lines += ["", *part]
    for loaded in m.loaded:
        lines += [
            "",
            f"[load.{json.dumps(loaded.name, ensure_ascii=False)}]",
            _line("front", _mm(loaded.front.value)),
            _line("rear", _mm(loaded.rear.value)),
        ]
    return "\n".join(lines) + "\n"


def measured_vehicle(m: Measured) -> tuple[Vehicle, str]:
    """The vehicle that a sheet describes, checked as any vehicle file is, and the text of that file."""
    text = vehicle_text(m)
    return vehicle_from(tomllib.loads(text), m.path), text


def refuse_contradictions(m: Measured) -> None:
    """Raises CrestcutError, one line: the first of a sheet's contradictions, and how many more."""
    if not m.contradictions:
        return
    more = len(m.contradictions) - 1
    others = ""
    if more:
        names = "; ".join(re.split(": | differ", c)[0] for c in m.contradictions[1:])
        others = f" (and {more} more: {names})"
    raise CrestcutError(f"the sheet contradicts itself: {m.contradictions[0]}{others}", m.path.name)


def _line(key: str, value: str, said: str = "") -> str:
    text = f'{key} = "{value}"'
    return f"{text.ljust(32)}# {said}" if said else text


def _mm(metres: float) -> str:
    return f"{metres * 1000:.1f} mm"


def _ends(m: Measured) -> list[list[str]]:
    """P and Q, T and U as plates out to the ends over the whole width, unless a part of that end was
    measured.

    One lowest point of an end is known. Where the photograph shows its angle, all else of it lies above that
    line; without one it may be as low all the way out, and is taken so.
    """
    base = m.vehicle_lengths()["wheelbase"][0]
    middles = [(p.readings["a"].value + p.readings["b"].value) / 2 for p in m.parts if not p.soft]
    found = []
    if not any(x < 0 for x in middles):
        found += _end(m, "nose", "PQRJ", lambda out: -out)
    if not any(x > base for x in middles):
        found += _end(m, "tail", "TUVK", lambda out: base + out)
    return found


def _end(m: Measured, name: str, letters: str, back: Callable[[float], float]) -> list[list[str]]:
    """A plate from the lowest point to the tip. letters : height, place, photographed angle, overhang."""
    low, place, photo, tip = (m.readings.get(letter) for letter in letters)
    if low is None or place is None or tip is None:
        return []
    near = min(place.value, tip.value - _EDGE)
    rise, said = 0.0, "as low all the way out"
    if photo is not None:
        made = tangent_angle(place.value, low.value, m.readings["E"].value)
        rise = (tip.value - near) * math.tan(min(made, photo.value))
        said = f"no lower than the line of {letters[2]}"
    half = m.readings["N"].value / 2
    heights = [low.value + rise, low.value] if name == "nose" else [low.value, low.value + rise]
    ends = sorted((back(near), back(tip.value)))
    return [
        [
            "[[part]]",
            _line("name", name, f"{letters[0]}, {letters[1]}: {said}"),
            f'back = ["{_mm(ends[0])}", "{_mm(ends[1])}"]',
            f'across = ["{_mm(-half)}", "{_mm(half)}"]',
            f'clearance = ["{_mm(heights[0])}", "{_mm(heights[1])}"]',
            _line("within", _mm(low.within)),
        ]
    ]


def _part(part: MeasuredPart) -> list[str]:
    p = part.readings
    front, rear = p["e"], p.get("f", p["e"])
    lines = [
        "[[part]]",
        f"name = {json.dumps(part.name, ensure_ascii=False)}",
        f'back = ["{_mm(p["a"].value)}", "{_mm(p["b"].value)}"]',
        f'across = ["{_mm(-p["c"].value)}", "{_mm(p["d"].value)}"]',
        f'clearance = ["{_mm(front.value)}", "{_mm(rear.value)}"]'
        if "f" in p
        else _line("clearance", _mm(front.value)),
        _line("within", _mm(math.sqrt((front.within**2 + rear.within**2) / 2))),
    ]
    if part.on != "body":
        lines.append(_line("on", part.on))
    if part.soft:
        lines.append("soft = true")
    return lines
