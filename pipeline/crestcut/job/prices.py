"""``[prices]``: what whoever does the work charges, as written, as a record, and what a job then costs.

Nothing is assumed: no currency, no price, no hours of a day. What has no price is said to have none.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, model_validator

from crestcut.job.answers import Per
from crestcut.job.fields import Table, Text, fault
from crestcut.job.records import Named, Price, Prices

_PRICE = re.compile(r"\s*(-?[0-9]{1,9}(?:\.[0-9]{1,4})?)\s+per\s+([a-z]+)\s*", re.IGNORECASE)
_DAY = re.compile(r"\s*([0-9]{1,2}(?:\.[0-9]+)?)\s*h\s*", re.IGNORECASE)
_LONGEST = 12  # characters of a currency
_CENT = Decimal("0.01")
Span = tuple[float, float]  # least and most


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


@dataclass(frozen=True)
class Spent:
    """What work takes, least and most, as it is printed wherever it stands: hours, litres and kg of concrete,
    bags.  tools : each one's file, name, and sets of its wheels."""

    hours: Span
    litres: Span = (0.0, 0.0)
    kg: Span = (0.0, 0.0)
    bags: Span = (0.0, 0.0)
    tools: tuple[tuple[str, str, Span], ...] = ()


@dataclass(frozen=True)
class CostLine:
    """One line of a quote: so much of it at that price comes to least and most."""

    what: str
    amount: Span
    price: Price
    least: float
    most: float


@dataclass(frozen=True)
class Cost:
    """Every priced line, their sums, and what was spent that has no price."""

    lines: tuple[CostLine, ...]
    least: float
    most: float
    unpriced: tuple[str, ...]


def cost(prices: Prices, spent: Spent) -> Cost:
    """What work costs by a person's own prices, from least to most.

    Each line is its printed amount at its price, to the nearest hundredth (halves up); the sums are those of
    the lines as printed. A day begun is a day; wheels count by the share of a set that is worn.
    """
    lines, unpriced = [], []
    amounts = {Per.HOUR: spent.hours, Per.LITRE: spent.litres, Per.KG: spent.kg, Per.BAG: spent.bags}
    for what, price in (("Labour", prices.labour), ("Disposal", prices.disposal)):
        if price is None:
            unpriced.append(what.lower())
        else:
            lines.append(_line(what, amounts[price.per], price))
    hire, blades = dict(prices.hire), dict(prices.blades)
    for key, name, sets in spent.tools:
        if key in hire and prices.day:
            lines.append(_line(f"Hire: {name}", days_of(spent.hours, prices.day), hire[key]))
        if key in blades:
            lines.append(_line(f"Wear: {name}", sets, blades[key]))
        else:
            unpriced.append(f"wear of the {name}")
    lines += [_line(name, (1.0, 1.0), price) for name, price in prices.other]
    return Cost(tuple(lines), _sum([x.least for x in lines]), _sum([x.most for x in lines]), tuple(unpriced))


def _line(what: str, amount: Span, price: Price) -> CostLine:
    least, most = (_at(end, price) for end in amount)
    return CostLine(what, amount, price, least, most)


def _at(amount: float, price: Price) -> float:
    """In decimal figures, as somebody with a pencil would."""
    exact = Decimal(repr(amount)) * Decimal(repr(price.amount))
    return float(exact.quantize(_CENT, ROUND_HALF_UP))


def _sum(amounts: Sequence[float]) -> float:
    return float(sum((Decimal(repr(a)) for a in amounts), Decimal(0)))


def days_of(hours: Span, day: float) -> Span:
    """Days of hire for so many hours of work, least and most; one begun is one. day : h worked in one."""
    least, most = (float(math.ceil(Decimal(repr(h)) / Decimal(repr(day)))) for h in hours)
    return least, most
