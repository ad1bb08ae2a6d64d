"""``[prices]`` of a job file: rates with their units, as they are written."""

from __future__ import annotations

import re
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, model_validator

from crestcut.job.answers import Per
from crestcut.job.fields import Table, Text, fault
from crestcut.job.prices import Named, Price, Prices

_PRICE = re.compile(r"\s*(-?[0-9]{1,9}(?:\.[0-9]{1,4})?)\s+per\s+([a-z]+)\s*", re.IGNORECASE)
_DAY = re.compile(r"\s*([0-9]{1,2}(?:\.[0-9]+)?)\s*h\s*", re.IGNORECASE)
_LONGEST = 12  # characters of a currency


def _price(*units: Per) -> BeforeValidator:
    """A price for one of ``units``; the fault says what to write."""
    like = " or ".join(f'"45 per {unit}"' for unit in units)

    def read(value: Any) -> Price:
        if isinstance(value, Price):
            return value
        shown = f'"{value}"' if isinstance(value, str) else str(value)
        if not isinstance(value, str) or re.fullmatch(r"\s*-?[0-9.]+\s*", value):
            number = isinstance(value, (int, float, str)) and not isinstance(value, bool)
            raise fault(f"{shown} {'has no unit' if number else 'is no price'}", f"write it like {like}")
        found = _PRICE.fullmatch(value)
        if found is None:
            comma = " with a decimal comma" if re.search(r"[0-9],[0-9]", value) else ""
            raise fault(f"{shown} is no price{comma}", f"write it like {like}, with no currency")
        if found[2].lower() not in units:
            raise fault(f"{shown}: no such price here per {found[2].lower()}", f"write it like {like}")
        if found[1].startswith("-"):
            raise fault(f"{shown} is below zero", "leave out what costs nothing")
        return Price(float(found[1]), Per(found[2].lower()))

    return BeforeValidator(read)


def _day(value: Any) -> float:
    found = _DAY.fullmatch(value) if isinstance(value, str) else None
    if found is None or not 0 < float(found[1]) <= 24:
        raise fault(f"{value} is no day's work", 'write the hours worked in one, like "7 h"')
    return float(found[1])


PerDay = Annotated[Price, _price(Per.DAY)]
PerSet = Annotated[Price, _price(Per.SET)]
PerJob = Annotated[Price, _price(Per.JOB)]


class PricesTable(Table):
    """``[prices]``: rates with their units, in a currency called as it is there."""

    currency: Text | None = None
    labour: Annotated[Price | None, _price(Per.HOUR)] = None
    disposal: Annotated[Price | None, _price(Per.LITRE, Per.KG, Per.BAG)] = None
    day: Annotated[float | None, BeforeValidator(_day)] = None
    hire: dict[Text, PerDay] = Field(default_factory=dict)
    blades: dict[Text, PerSet] = Field(default_factory=dict)
    other: dict[Text, PerJob] = Field(default_factory=dict)

    @model_validator(mode="after")
    def _whole(self) -> PricesTable:
        if self.currency is None:
            raise fault("prices in no currency", 'write currency = "EUR", or as it is called there')
        if len(self.currency) > _LONGEST:
            raise fault(f"a currency of more than {_LONGEST} characters", "write its short name, like EUR")
        if not (self.labour or self.disposal or self.hire or self.blades or self.other):
            raise fault("no price is there", 'write one, like labour = "45 per hour"')
        if self.hire and self.day is None:
            raise fault("hire per day, and no day's hours", 'write the hours worked in one, like day = "7 h"')
        return self


def prices_of(written: PricesTable) -> Prices:
    """The record of a table that was checked."""
    w = written
    named: list[Named] = [tuple(table.items()) for table in (w.hire, w.blades, w.other)]
    return Prices(w.currency or "", w.labour, w.disposal, w.day, *named)
