"""What the screens ask in boxes: each key of the job file with its words, bounds from the schema that reads
the file, and what was typed turned into what the file holds. Nothing here writes a bound of its own.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.units import FOOT, GALLON, INCH, inches, millimetres, number, parse_length
from crestcut.job import what_may_be_written

UNITS = {"mm": "millimetres", "cm": "centimetres", "in": "inches"}
_COMMA = re.compile(r"(?<=\d),(?=\d{1,2}(?!\d))")  # three figures after it may be thousands
_METRIC = re.compile(
    r"(?<![\w.,])(?:(\d[\d,.]*) x )?(\d[\d,]*(?:\.\d+)?) (points per m2|m2|mm|m)(?![\w²³])(?: \([^()]* in\))?"
)
_BARE = re.compile(r"[-+]?[0-9 ./]+")


class Box(StrEnum):
    """How a key is asked for."""

    LENGTH = "length"
    SHARE = "share"  # typed in percent
    CHOICE = "choice"
    TEXT = "text"
    WAYS = "ways"


@dataclass(frozen=True)
class Ask:
    """One question. choices : value and words, "" for not known.  beside : the key of who says so."""

    key: str
    title: str
    help: str = ""
    box: Box = Box.LENGTH
    choices: tuple[tuple[str, str], ...] = ()
    beside: str = ""

    @property
    def table(self) -> str:
        """Of the job file."""
        return self.key.partition(".")[0]


_NOT_KNOWN = ("", "I do not know")
_YES_NO = (_NOT_KNOWN, ("yes", "Yes"), ("no", "No"))
_INSIDE = (
    _NOT_KNOWN, ("no", "There is none"), ("located", "There is, and it was found and marked on the slab"),
    ("not located", "There is, but nobody knows where"),
)  # fmt: skip
SOURCES = (
    ("", "choose who or what says so"), ("drawing", "a drawing of the slab"), ("engineer", "an engineer"),
    ("owner in writing", "the owner, in writing"), ("covermeter", "a covermeter (finds steel from above)"),
    ("radar", "ground radar"), ("thermal camera", "a thermal camera"),
    ("locating service", "a service that locates pipes and cables"), ("drilled", "a drilled hole"),
    ("edge", "seen at an edge"), ("guess", "a guess"),
)  # fmt: skip
ROOM = (
    Ask("clearance.want", "Room to leave under the floor of the vehicle",
        "Between the wheels, at walking pace. Half an inch, about 13 mm, is usual."),
    Ask("clearance.want_ends", "Room to leave under nose and tail",
        "They dip when the vehicle brakes or rocks, so they get more."),
    Ask("clearance.confidence", "How sure should it be?",
        "More sure means a little deeper where the scan leaves doubt.", Box.CHOICE,
        (("0.8", "8 times in 10"), ("0.9", "9 times in 10"), ("0.95", "19 times in 20 (usual)"),
         ("0.99", "99 times in 100"))),
    Ask("travel.wander", "How far from your line may a driver be, to each side?",
        "Nobody drives the same line twice."),
    Ask("travel.ways", "How is it driven?", "", Box.WAYS,
        (("forward", "Nose first, from point 1 of your line on"),
         ("turned", "Nose first, back to point 1 (out again)"))),
    Ask("cut.deepest", "Never take off more than",
        "Left empty, half an inch (13 mm) at most, less where the slab is thin. More only where an edge or a "
        "drilled hole shows how thick it is."),
)  # fmt: skip
SLAB = (
    Ask("slab.kind", "What is the slab?", "", Box.CHOICE, (
        _NOT_KNOWN, ("plain concrete", "Plain concrete, lying on the ground"),
        ("reinforced concrete", "Concrete with steel in it, lying on the ground"),
        ("post-tensioned", "Post-tensioned concrete (steel cables pulled tight)"),
        ("suspended", "A ceiling: a room, a cellar or a void lies below"),
        ("precast", "Precast planks or panels"), ("screed or tiles", "A thin layer (screed) or tiles"),
        ("other", "Something else: asphalt, pavers, wood"))),
    Ask("slab.thickness", "How thick is it?", "Measured at an edge or in a drilled hole.",
        beside="slab.thickness_from"),
    Ask("slab.steel_depth", "How deep below the top is the first steel?",
        "Bars or mesh. Many hire shops have a covermeter, which finds them.", beside="slab.steel_from"),
    Ask("slab.post_tensioned", "Are there steel cables pulled tight in it (post-tensioned)?",
        "Cutting one can kill. “No” counts from a drawing, an engineer or radar only.", Box.CHOICE, _YES_NO,
        "slab.post_tensioned_from"),
    Ask("slab.suspended", "Is there a room, a cellar or a void below it?",
        "“No” counts from a drawing, an engineer or radar only.", Box.CHOICE, _YES_NO, "slab.suspended_from"),
    Ask("slab.heating", "Is there heating in it?",
        "Warm pipes or wires. Where they were found, draw a no-cut area over them.", Box.CHOICE, _INSIDE,
        "slab.heating_from"),
    Ask("slab.conduit", "Are there pipes or cables in it?",
        "Power, water, drains. Where they were found, draw a no-cut area over them.", Box.CHOICE, _INSIDE,
        "slab.conduit_from"),
    Ask("slab.permission", "Does the owner allow it to be cut?", "In writing, also if that is you.",
        Box.CHOICE, _YES_NO, "slab.permission_from"),
    Ask("site.place", "Where is it?", "", Box.CHOICE,
        (_NOT_KNOWN, ("outdoors", "Outdoors"), ("indoors", "Indoors"))),
    Ask("site.ground", "Whose ground is it?", "", Box.CHOICE,
        (_NOT_KNOWN, ("private", "Private ground"), ("public", "Public, or people walk over it"))),
    Ask("site.permit", "Is there a permit?", "Public ground needs one.", Box.CHOICE, (
        _NOT_KNOWN, ("granted", "Granted"), ("not needed", "None is needed"),
        ("asked", "Asked for, not granted yet"), ("refused", "Refused"))),
    Ask("site.permit_number", "The permit’s number", "As it stands on the permit.", Box.TEXT),
    Ask("site.country", "Country, in two letters", "Like US, DE, GB. The sheets then use its words.",
        Box.TEXT),
)  # fmt: skip


@cache
def bounds() -> dict[str, dict[str, Any]]:
    """What may stand under each key."""
    return what_may_be_written()


def length(text: str, unit: str, name: str = "") -> float:
    """Metres of what was typed; a bare number is in ``unit``. Raises CrestcutError, in words for a person."""
    return parse_length(with_unit(text, unit), name)


def with_unit(text: str, unit: str) -> str:
    """What was typed, as a file holds it: never a number alone, and a decimal comma, where it can be nothing
    else, as a point."""
    text = _COMMA.sub(".", " ".join(text.split()))
    return f"{text} {unit}" if text and _BARE.fullmatch(text) else text


def shown(metres: float, unit: str) -> str:
    """A length in the person's own unit, and in no other."""
    if metres != metres:
        return "not known"
    size = abs(metres)
    if unit == "in":
        return far(metres, unit) if size >= 1 else inches(metres)
    if size == 0:
        return "0"
    if size >= 1:
        return f"{metres:.2f} m"
    return f"{metres * 100:.1f} cm" if unit == "cm" else millimetres(metres, 0 if size >= 0.1 else 1)


def area(square_metres: float, unit: str) -> str:
    """An area in the person's own system."""
    return f"{number(square_metres / FOOT**2)} ft²" if unit == "in" else f"{number(square_metres)} m²"


def volume(cubic_metres: float, unit: str) -> str:
    """A volume likewise: litres, or gallons of the US."""
    size = abs(cubic_metres) * 1000
    return f"{number(size / GALLON)} gallons" if unit == "in" else f"{number(size)} litres"


def own_units(text: str, unit: str) -> str:
    """A sentence of a note, which is written in metres, in the person's own system."""
    return _METRIC.sub(_in_feet, text) if unit == "in" else text


def _in_feet(found: re.Match[str]) -> str:
    """A quantity as a sentence has it: "0.75 x 0.65 m", "13 mm (1/2 in)", "0.42 m2"."""
    first, value, kind = found[1], float(found[2].replace(",", "")), found[3]
    match kind:
        case "mm":
            return inches(value / 1000)
        case "m2":
            return area(value, "in")
        case "m":
            return f"{far(float(first), 'in')} x {far(value, 'in')}" if first else far(value, "in")
    return f"{number(value * FOOT**2)} points per ft²"


def far(metres: float, unit: str) -> str:
    """A distance to find a place by, as finely as a tape is read from a chalk cross."""
    if metres != metres:
        return "not known"
    if unit != "in":
        return f"{metres:.2f} m"
    feet, rest = divmod(round(abs(metres) / INCH * 4) / 4, 12)
    small = inches(rest * INCH, 4)
    return f"{feet:.0f} ft {small}" if feet else small


def between(low: float, high: float, unit: str) -> str:
    """A range in words."""
    return f"between {shown(low, unit)} and {shown(high, unit)}".replace(".0 ", " ")


def value_of(ask: Ask, data: Mapping[str, Any]) -> str:
    """What the job says, as it stands in the box."""
    return _text(_get(data, ask.key), ask)


def source_of(ask: Ask, data: Mapping[str, Any]) -> str:
    """Who says so, "" where nobody does."""
    found = _get(data, ask.beside) if ask.beside else ""
    return "" if found in (None, "unknown") else str(found)


def _text(found: Any, ask: Ask) -> str:
    if found is None or found == "unknown":
        return ""
    if isinstance(found, bool):
        return "yes" if found else "no"
    if ask.box is Box.LENGTH and isinstance(found, (int, float)):
        return f"{found} m"
    return str(found)


def usual(ask: Ask, unit: str) -> str:
    """What is taken where nothing is typed, as words in the box; "" where nothing is."""
    default = bounds().get(ask.key, {}).get("default")
    if ask.box is Box.LENGTH and isinstance(default, (int, float)):
        return shown(float(default), unit)
    return str(default) if ask.box is Box.CHOICE and default is not None else ""


def answers(
    asks: Sequence[Ask], form: Mapping[str, Any], ways: Sequence[str], unit: str
) -> tuple[dict[str, Any], dict[str, str]]:
    """(keys of the job file, faults by key) of a form. ways : those ticked."""
    keys: dict[str, Any] = {}
    faults: dict[str, str] = {}
    for ask in asks:
        typed = str(form.get(ask.key, "")).strip()
        try:
            keys[ask.key] = list(ways) if ask.box is Box.WAYS else _answer(ask, typed, unit)
            if ask.beside:
                source = str(form.get(ask.beside, ""))
                _one_of(source, SOURCES)
                keys[ask.beside] = source if source and typed else None
        except CrestcutError as error:
            faults[ask.key] = f"{error.what}; {error.mend}" if error.mend else error.what
        if ask.box is Box.WAYS and not ways:
            faults[ask.key] = "choose at least one"
    return keys, faults


def _answer(ask: Ask, typed: str, unit: str) -> Any:
    if ask.box is Box.CHOICE:
        _one_of(typed, ask.choices)
        if ask.key == "clearance.confidence":
            return float(typed)
        return typed or None
    if not typed:
        return None
    if ask.box is Box.LENGTH:
        metres = length(typed, unit)
        rule = bounds()[ask.key]
        low, high = float(rule.get("minimum", 0.0)), float(rule.get("maximum", 100.0))
        if not low <= metres <= high:
            raise CrestcutError(
                f"{shown(metres, unit)} cannot be right", "", f"it lies {between(low, high, unit)}"
            )
        return with_unit(typed, unit)
    if ask.key == "site.country" and not re.fullmatch(r"[A-Za-z]{2}", typed):
        raise CrestcutError("two letters are needed", "", "like US")
    return typed[:60]


def _one_of(typed: str, choices: Sequence[tuple[str, str]]) -> None:
    if typed not in [value for value, _ in choices]:
        raise CrestcutError("that is none of the choices", "", "choose one of the list")


def _get(data: Mapping[str, Any], key: str) -> Any:
    table, _, name = key.partition(".")
    found = data.get(table, {})
    return found.get(name) if isinstance(found, Mapping) else None
