"""The kinds of value a file that people write may hold, as pydantic types: a fault says what to write
instead.
"""

from __future__ import annotations

import datetime
import math
import re
import textwrap
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Annotated, Any, Literal

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
)
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from crestcut.base.errors import CrestcutError, visible
from crestcut.base.paper import paper_named, scale_ratio
from crestcut.base.units import METRES_PER, parse_length, parse_slope
from crestcut.job.answers import InSlab, Method, Over, Permit, SlabKind, Source, YesNo
from crestcut.job.records import GridPoint, MarkName, PlanPoint, Point, TapeTies

_HOW = 'write [x, y], or the name of a mark, or { A = "2.31 m", B = "1.87 m", side = "left" }'
FAULT = "crestcut"  # the type of every fault that carries its own words


def fault(what: str, mend: str = "") -> PydanticCustomError:
    """What is wrong and what to write instead; the place is added by whoever read the file."""
    return PydanticCustomError(FAULT, "{what}", {"what": what, "mend": mend})


class Table(BaseModel):
    """A table of a file: unknown keys are refused, no value is taken for another type."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


def _said(parse: Callable[[Any], Any]) -> Callable[[Any], Any]:
    def run(value: Any) -> Any:
        try:
            return parse(value)
        except CrestcutError as error:
            raise fault(error.what, error.mend) from None

    return run


@dataclass(frozen=True)
class Between:
    """A number within [low, high], lengths in metres, or a fault in words; the schema says both ends."""

    low: float
    high: float
    low_words: str = ""
    high_words: str = ""
    parse: Callable[[Any], float] = parse_length
    mend: str = 'a number alone is metres; write it like "140 mm"'

    def read(self, value: Any) -> float:
        """The number that is written, or a fault."""
        found = _said(self.parse)(value)
        if not self.low <= found <= self.high:
            words = self.low_words if found < self.low else self.high_words
            raise fault(f"{_quoted(value)} is {words or f'outside {self.low:g} to {self.high:g}'}", self.mend)
        return found

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self.read, handler(source))

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {**handler(core), "minimum": self.low, "maximum": self.high}


def _quoted(value: Any) -> str:
    return f'"{value}"' if isinstance(value, str) else f"{value}"


def _slope(value: Any) -> float:
    slope = parse_slope(value)
    if not 0.005 <= slope <= 2.0:
        raise CrestcutError(f"{_quoted(value)} is no feather", "", 'write it as rise to run, like "1:4"')
    return slope


def _number(value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
        raise CrestcutError(
            f"{_quoted(value)} is no number", "", "write it in the scan's own coordinates, like 2.10"
        )
    return float(value)


def choice_of(choices: type[StrEnum], said: Mapping[Any, StrEnum] = MappingProxyType({})) -> BeforeValidator:
    """One of a closed list; anything else is refused with the whole list.

    said : what may stand for one of them, such as a plain false for "no".
    """

    def run(value: Any) -> StrEnum:
        if isinstance(value, bool) and value in said:
            return said[value]
        if isinstance(value, str) and value.strip() in list(choices):
            return choices(value.strip())
        shown = textwrap.shorten(value, 60, placeholder=" ...") if isinstance(value, str) else value
        shown = str(value).lower() if isinstance(value, bool) else shown
        raise fault(
            f"{_quoted(shown)} is not known",
            f"write one of {', '.join(choices)}; more words may stand in a note beside it",
        )

    return BeforeValidator(run)


def _unsaid(value: Any) -> Any:
    """ "unknown" is the same as saying nothing."""
    return None if isinstance(value, str) and value.strip().lower() in ("unknown", "") else value


def listed(value: Any) -> Any:
    """One word where a list may stand."""
    return [value] if isinstance(value, str) else value


TYRES = ("front_left", "front_right", "rear_left", "rear_right")
# m: thinner lies on no slab flat, thicker is a ramp and not a board (common practice, no source)
_board = Between(0.003, 0.060, "no board to drive on", "thicker than a board to drive on")


def _raised(value: Any) -> tuple[float, ...]:
    """A board's thickness under every tyre, or a table by tyre -> metres in the order of ``TYRES``."""
    if isinstance(value, list) or (isinstance(value, str) and "+" in value):
        raise fault("boards are never stacked", 'write the one thickness under the tyres, like "18 mm"')
    if not isinstance(value, dict):
        return (_board.read(value),) * len(TYRES)
    for key in value:
        if key not in TYRES:
            raise fault(f'no tyre is called "{key}"', f"write {', '.join(TYRES)}")
    on = [_board.read(value[t]) if t in value else 0.0 for t in TYRES]
    count = sum(x > 0 for x in on)
    if count not in (2, 4) or (count == 2 and (on[0] > 0) == (on[3] > 0)):
        raise fault("boards under all four tyres expected, or under two", "name both of one axle or one side")
    return tuple(on)


def _permit_number(value: Any) -> Any:
    """A reference as it stands on the permit: words without a digit are none."""
    text = str(value) if isinstance(value, int) and not isinstance(value, bool) else value
    if not isinstance(text, str) or not re.fullmatch(r"(?=.*[0-9])[\w ./:#-]{1,60}", text.strip()):
        raise fault(
            f"{_quoted(value)} is no permit's number",
            'write it as it stands on the permit, like "2024/117"; other words go into permit_note',
        )
    return text.strip()


def _country(value: Any) -> Any:
    if not isinstance(value, str) or not re.fullmatch(r"[A-Za-z]{2}", value.strip()):
        raise fault(f"{_quoted(value)} is no country", 'write its two letters (ISO 3166), like "US"')
    return value.strip().upper()


def _text(value: Any) -> Any:
    if not isinstance(value, str) or not value.strip():
        raise fault("words expected", "write them between quotation marks")
    return value.strip()


def _day(value: Any) -> str:
    """A TOML date, or its text -> ISO 8601."""
    if isinstance(value, str):
        try:
            value = datetime.date.fromisoformat(value.strip())
        except ValueError:
            pass
    if not isinstance(value, datetime.date) or isinstance(value, datetime.datetime):
        raise fault(f"{_quoted(value)} is no date", 'write year, month and day, like date = "2026-11-29"')
    return value.isoformat()


def _words(value: Any) -> Any:
    """Text that is shown: control characters written out, line ends as spaces."""
    text = _text(value)
    return visible(re.sub(r"\s*[\r\n]\s*", " ", text))


UNITS = ("m", "cm", "mm", "ft", "us-ft", "in")  # of a scan; their longer names are understood too


def _unit(value: str) -> str:
    if value not in METRES_PER:
        raise fault(f'unit "{value}" is not known', f"write one of {', '.join(UNITS)}")
    return value


_MOST = 1000.0  # m
Length = Annotated[float, Between(-_MOST, _MOST, "no length", "longer than any site")]
Positive = Annotated[float, Between(1e-5, _MOST, "not above zero", "longer than any site")]
NotNegative = Annotated[float, Between(0.0, _MOST, "below zero", "longer than any site")]
Depth = Annotated[float, Between(0.0, 0.3, "below zero", "deeper than a slab is thick")]
PositiveDepth = Annotated[float, Between(1e-5, 0.3, "not above zero", "deeper than a slab is thick")]
Thickness = Annotated[float, Between(0.02, 2.0, "thinner than any slab", "thicker than any slab")]
Gap = Annotated[float, Between(0.0, 0.5, "below zero", "more than a gap under a low vehicle")]
Raised = Annotated[tuple[float, float, float, float], BeforeValidator(_raised)]
Within = Annotated[float, Between(0.0, 0.5, "below zero", "no reading at all")]
Cell = Annotated[float, Between(0.002, 0.05, "finer than a scan (2 mm)", "coarser than a crest (50 mm)")]
Slope = Annotated[float, BeforeValidator(_said(_slope))]
Wander = Annotated[
    float, Between(0.0, 2.0, "below zero", "wider than any drive", mend='write it like "200 mm"')
]
Degrees = Annotated[
    float,
    Between(0.0, 30.0, parse=_number, mend="write degrees as a bare number, like 3"),
    AfterValidator(math.radians),
]
Confidence = Annotated[float, Between(0.5, 0.9999, parse=_number, mend="write it like 0.95")]
Number = Annotated[float, BeforeValidator(_said(_number))]
Note = str  # whatever somebody wants to keep beside an answer
Day = Annotated[str, BeforeValidator(_day)]
Text = Annotated[str, BeforeValidator(_words)]
FileName = Annotated[str, BeforeValidator(_text)]
# of a scan's coordinates
Unit = Annotated[str, AfterValidator(_unit), Field(json_schema_extra={"enum": list(UNITS)})]
UpAxis = Literal["x", "y", "z", "-x", "-y", "-z"]
Scanner = Literal["phone", "photogrammetry", "terrestrial", "total-station"]
Country = Annotated[str, BeforeValidator(_country)]
# LAS 1.4 R15: a class is one byte
Classes = list[Annotated[int, Field(ge=0, le=255)]]
Words = Annotated[list[Text], BeforeValidator(listed), Field(min_length=1)]
Kind = Annotated[SlabKind, choice_of(SlabKind)]
Answer = Annotated[YesNo, choice_of(YesNo, {True: YesNo.YES, False: YesNo.NO})]
Inside = Annotated[InSlab, choice_of(InSlab, {False: InSlab.NO})]
KnownFrom = Annotated[Source, choice_of(Source)]
PermitState = Annotated[Permit, choice_of(Permit)]
Beneath = Annotated[Over, choice_of(Over)]
Way = Annotated[Method, choice_of(Method)]
Piece = Annotated[float, Between(0.0002, 0.150, "thinner than any shim", "thicker than a block may be")]
Paper = Annotated[str, BeforeValidator(_said(lambda value: paper_named(str(value))))]
ScaleRatio = Annotated[int, BeforeValidator(_said(lambda value: scale_ratio(str(value))))]
Spacing = Annotated[float, Between(0.05, 100.0, "too close to draw", "wider apart than any slab is long")]
PermitNumber = Annotated[str, BeforeValidator(_permit_number)]
FileNames = Annotated[list[FileName], BeforeValidator(listed), Field(min_length=1)]
Unsaid = BeforeValidator(_unsaid)


def point(value: Any, plain: bool = False) -> Point:
    """A place as people write it: coordinates, east and north, the name of a mark, or two tape ties.

    ``plain``: only coordinates will do. Raises the fault that the file's reader turns into one line."""
    if isinstance(value, Point):
        return value
    if isinstance(value, list):
        return _coordinates(value)
    if plain:
        raise fault("coordinates expected", "write [x, y] in the scan's own coordinates")
    if isinstance(value, str) and value.strip():
        return MarkName(value.strip())
    if isinstance(value, dict):
        return _grid_point(value) if {"east", "north"} & set(value) else _ties(value)
    raise fault("a point expected", _HOW)


def _grid_point(value: dict[str, Any]) -> GridPoint:
    if set(value) != {"east", "north"}:
        raise fault(
            "east and north expected, and no more", "write { east = 500012.345, north = 5800034.567 }"
        )
    east, north = (_said(_number)(value[key]) for key in ("east", "north"))
    return GridPoint(east, north)


def _coordinates(value: list[Any]) -> PlanPoint:
    good = len(value) == 2 and all(
        isinstance(v, (int, float)) and not isinstance(v, bool) and math.isfinite(v) for v in value
    )
    if not good:
        raise fault(
            f"{value} is no point",
            "two plain numbers in the scan's own coordinates and unit, like [2.10, 0.30]",
        )
    return PlanPoint(float(value[0]), float(value[1]))


def _ties(value: dict[str, Any]) -> TapeTies:
    names = [key for key in value if key != "side"]
    if "side" not in value or len(names) != 2:
        raise fault("two tape ties and a side expected", _HOW)
    if value["side"] not in ("left", "right"):
        raise fault(
            f'side "{value["side"]}" is not known',
            'write "left" or "right": as seen from the first mark to the second',
        )
    lengths = []
    for name in names:
        try:
            lengths.append(parse_length(value[name]))
        except CrestcutError as error:
            raise fault(f"distance from {name}: {error.what}", error.mend) from None
    if min(lengths) < 0 or max(lengths) == 0:
        raise fault("a distance from a mark is not above zero", "measure along the slab from each mark")
    return TapeTies(names[0], lengths[0], names[1], lengths[1], value["side"])
