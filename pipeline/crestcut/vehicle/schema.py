"""The vehicle file as it is written. All lengths on flat ground, through the tyre contacts, driver in."""

from __future__ import annotations

import math
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from crestcut.errors import CrestcutError
from crestcut.job.fields import Length, Table, Text, between, fault
from crestcut.units import parse_length

# Ranges: the lower ends let small carts in, the upper ends the longest low loader; outside them a unit was
# mixed up.
Wheelbase = Annotated[
    float, BeforeValidator(between(0.3, 12.0, "short for a wheelbase", "long for a wheelbase"))
]
TrackWidth = Annotated[float, BeforeValidator(between(0.2, 3.0, "narrow for a track", "wide for a track"))]
TyreRadius = Annotated[float, BeforeValidator(between(0.03, 0.9, "small for a wheel", "large for a wheel"))]
TyreWidth = Annotated[float, BeforeValidator(between(0.01, 0.6, "narrow for a tyre", "wide for a tyre"))]
Width = Annotated[float, BeforeValidator(between(0.2, 3.5, "narrow for a vehicle", "wide for a vehicle"))]
Clearance = Annotated[float, BeforeValidator(between(0.0, 0.8, "below the ground", "high for a low vehicle"))]
Overhang = Annotated[float, BeforeValidator(between(0.0, 5.0, "below zero", "long for an overhang"))]
Turning = Annotated[
    float, BeforeValidator(between(0.3, 30.0, "small for a turning radius", "large for a turning radius"))
]
Within = Annotated[float, BeforeValidator(between(0.0, 0.05, "below zero", "no measurement at all"))]
Drop = Annotated[
    float, BeforeValidator(between(-0.3, 0.3, "lower than springs give", "higher than springs give"))
]
Droop = Annotated[float, BeforeValidator(between(0.0, 0.5, "below zero", "long for a droop"))]


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
    front: Drop = 0.0
    rear: Drop = 0.0


class AxleSpring(Table):
    rate: Rate | None = None
    anti_roll: BarRate = 0.0
    droop: Droop | None = None
    load: Load | None = None


class SpringsTable(Table):
    front: AxleSpring = Field(default_factory=AxleSpring)
    rear: AxleSpring = Field(default_factory=AxleSpring)
    unsprung: Load | None = None

    @model_validator(mode="after")
    def _both_rates(self) -> SpringsTable:
        if (self.front.rate is None) != (self.rear.rate is None):
            raise fault("a rate at one axle only", "write the rate of one wheel at both axles, in N/m")
        return self


class MassTable(Table):
    """Of a rigid cart: behind the front axle, left of the middle, above the ground."""

    back: Length
    left: Length = 0.0
    up: Annotated[
        float, BeforeValidator(between(0.0, 5.0, "below the ground", "high for a centre of mass"))
    ] = 0.0


class VehicleFile(Table):
    name: Text
    wheelbase: Wheelbase
    front_track: TrackWidth
    rear_track: TrackWidth
    tyre_radius: TyreRadius
    tyre_width: TyreWidth
    width: Width
    belly_clearance: Clearance
    front_overhang: Overhang | None = None
    rear_overhang: Overhang | None = None
    turning_radius: Turning | None = None
    belly_within: Within = 0.003
    part: list[PartTable] = Field(default_factory=list)
    load: dict[Text, LoadTable] = Field(default_factory=dict)
    springs: SpringsTable | None = None
    rigid: bool = False
    centre_of_mass: MassTable | None = None
