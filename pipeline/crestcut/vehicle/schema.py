"""The vehicle file as it is written. All lengths on flat ground, through the tyre contacts, driver in."""

from __future__ import annotations

import math
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag, model_validator

from crestcut.base.errors import CrestcutError
from crestcut.base.units import parse_length
from crestcut.job import Between, FileName, Length, Table, Text, Unit, UpAxis, fault
from crestcut.vehicle.plausible import RANGES


def _ranged(key: str, low_words: str, high_words: str) -> Between:
    return Between(*RANGES[key], low_words, high_words)


Wheelbase = Annotated[float, _ranged("wheelbase", "short for a wheelbase", "long for a wheelbase")]
TrackWidth = Annotated[float, _ranged("track", "narrow for a track", "wide for a track")]
TyreRadius = Annotated[float, _ranged("tyre_radius", "small for a wheel", "large for a wheel")]
TyreWidth = Annotated[float, _ranged("tyre_width", "narrow for a tyre", "wide for a tyre")]
Width = Annotated[float, _ranged("width", "narrow for a vehicle", "wide for a vehicle")]
Clearance = Annotated[float, _ranged("clearance", "below the ground", "high for a low vehicle")]
Overhang = Annotated[float, _ranged("overhang", "below zero", "long for an overhang")]
Turning = Annotated[
    float, _ranged("turning_radius", "small for a turning radius", "large for a turning radius")
]
Within = Annotated[float, Between(0.0, 0.05, "below zero", "no measurement at all")]
Drop = Annotated[float, Between(-0.3, 0.3, "lower than springs give", "higher than springs give")]
Tread = Annotated[float, Between(0.0, 0.03, "below zero", "deep for a tread")]
Droop = Annotated[float, Between(0.0, 0.5, "below zero", "long for a droop")]


def _plain_number(unit: str, low: float, high: float) -> Any:
    def run(value: Any) -> float:
        if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
            raise fault(f'"{value}" is no number', f"write a bare number in {unit}")
        if not low <= value <= high:
            raise fault(f"{value:g} {unit} is outside {low:g} to {high:g}", f"write a bare number in {unit}")
        return float(value)

    return BeforeValidator(run)


Rate = Annotated[float, _plain_number("N/m", 100.0, 5e6)]
BarRate = Annotated[float, _plain_number("N m/rad", 0.0, 5e6)]
Load = Annotated[float, _plain_number("N", 1.0, 2e5)]
Mass = Annotated[float, _plain_number("kg", 0.0, 2e4)]
Force = Annotated[float, _plain_number("N", 0.0, 2e5)]


def _span(value: Any) -> Any:
    if not isinstance(value, list) or len(value) != 2:
        raise fault("two lengths expected", 'write [from, to], like ["200 mm", "900 mm"]')
    return tuple(_length(v) for v in value)


def _one_or_two(value: Any) -> Any:
    """One clearance, or [front, rear] of a sloped part, as (front, rear)."""
    both = value if isinstance(value, list) else [value, value]
    if len(both) != 2:
        raise fault(
            "one length, or two for a sloped part, expected", 'write "140 mm" or ["150 mm", "180 mm"]'
        )
    return tuple(_length(v) for v in both)


def _length(value: Any) -> float:
    try:
        return parse_length(value)
    except CrestcutError as error:
        raise fault(error.what, error.mend) from None


Pair = tuple[float, float]
Span = Annotated[Pair, BeforeValidator(_span)]
Heights = Annotated[Pair, BeforeValidator(_one_or_two)]


class PartTable(Table):
    """A plate of the underside by tape: behind the front axle, left of the middle, above the ground."""

    name: Text
    back: Span
    across: Span
    clearance: Heights
    on: Literal["body", "front axle", "rear axle"] = "body"
    soft: bool = False
    within: Within = 0.003

    @model_validator(mode="after")
    def _has_size(self) -> PartTable:
        if self.back[0] == self.back[1] or self.across[0] == self.across[1]:
            raise fault(
                "the part has no length or no width", 'write two different ends, like ["200 mm", "900 mm"]'
            )
        low = min(self.clearance)
        if low < 0:
            raise fault(
                f"the part is {-low * 1000:g} mm below the ground",
                "measure from flat ground up to its lowest point",
            )
        if max(self.clearance) > 1.5:
            raise fault(
                "a clearance above 1.5 m is no underside", 'a number alone is metres; write it like "140 mm"'
            )
        return self


class LoadTable(Table):
    """How far the axles' bodywork moves (front, rear), or a weight and its place behind the front axle."""

    front: Drop | None = None
    rear: Drop | None = None
    kg: Mass | None = None
    newtons: Force | None = None
    back: Length | None = None

    @model_validator(mode="after")
    def _one_way(self) -> LoadTable:
        weights = [w for w in (self.kg, self.newtons) if w is not None]
        drops = self.front is not None or self.rear is not None
        if len(weights) > 1:
            raise fault("kg and newtons are both written", "write one of the two")
        if weights and drops:
            raise fault("drops and a weight are both written", "write them as two loads in a list")
        if weights and self.back is None:
            raise fault("a weight without its place", 'write { kg = 80, back = "1.4 m" }')
        if not weights and self.back is not None:
            raise fault("a place without its weight", 'write { kg = 80, back = "1.4 m" }')
        if not weights and not drops:
            raise fault("an empty load", 'write { front = "-20 mm", rear = "-45 mm" }')
        return self


# the tags look like brackets so that ``job.faults`` leaves them out of the place it names
Loads = Annotated[
    Annotated[LoadTable, Tag("[one]")] | Annotated[list[LoadTable], Tag("[several]"), Field(min_length=1)],
    Discriminator(lambda value: "[several]" if isinstance(value, list) else "[one]"),
]


class AxleSpring(Table):
    """One wheel's rate (N/m), the axle's bar (N m/rad), droop, and what the axle weighs on the ground (N)."""

    rate: Rate | None = None
    anti_roll: BarRate = 0.0
    droop: Droop | None = None
    load: Load | None = None


class SpringsTable(Table):
    """Both axles, and what one axle's wheels, hubs and brakes weigh (N)."""

    front: AxleSpring = Field(default_factory=AxleSpring)
    rear: AxleSpring = Field(default_factory=AxleSpring)
    unsprung: Load | None = None

    @model_validator(mode="after")
    def _whole(self) -> SpringsTable:
        front, rear = self.front, self.rear
        if (front.rate is None) != (rear.rate is None):
            raise fault("a rate at one axle only", "write the rate of one wheel at both axles, in N/m")
        if front.rate is None:
            raise fault("springs without a rate", "write the rate of one wheel at both axles, in N/m")
        if (front.load is None) != (rear.load is None):
            raise fault("a load at one axle only", "weigh both axles, in N")
        if self.unsprung is not None and front.load is None:
            raise fault("unsprung weight without axle loads", "write the load of both axles too, in N")
        return self


class UndersidePart(Table):
    """A name for what was found over a place: behind the front axle, left of the middle."""

    name: Text
    back: Length
    across: Length
    on: Literal["body", "front axle", "rear axle"] = "body"
    soft: bool = False


class UndersideTable(Table):
    """A mesh or cloud of the underside, the vehicle on its wheels."""

    file: FileName
    unit: Unit | None = None
    up: UpAxis = "z"
    front: Literal["+x", "-x", "+y", "-y", "+z", "-z", "x", "y", "z"] | None = None
    within: Within | None = None
    part: list[UndersidePart] = Field(default_factory=list)

    @model_validator(mode="after")
    def _not_upwards(self) -> UndersideTable:
        if self.front is not None and self.front[-1] == self.up[-1]:
            raise fault(
                f'front = "{self.front}" lies along up = "{self.up}"', "write the level axis it points along"
            )
        return self


class MassTable(Table):
    """Of a rigid cart: behind the front axle, left of the middle, above the ground."""

    back: Length
    left: Length = 0.0
    up: Annotated[float, Between(0.0, 5.0, "below the ground", "high for a centre of mass")] = 0.0


class VehicleFile(Table):
    """The whole file: every table and key that may stand in it."""

    name: Text
    wheelbase: Wheelbase
    front_track: TrackWidth
    rear_track: TrackWidth
    tyre_radius: TyreRadius
    tyre_width: TyreWidth
    width: Width
    belly_clearance: Clearance | None = None  # needed unless there is an underside
    front_overhang: Overhang | None = None
    rear_overhang: Overhang | None = None
    turning_radius: Turning | None = None
    belly_within: Within | None = None
    tyre_tread: Tread | None = None
    underside: UndersideTable | None = None
    part: list[PartTable] = Field(default_factory=list)
    load: dict[Text, Loads] = Field(default_factory=dict)
    springs: SpringsTable | None = None
    rigid: bool = False
    centre_of_mass: MassTable | None = None
