"""What whoever does the work charges, as a record, and what a job then costs.

Nothing is assumed: no currency, no price, no hours of a day. What has no price is said to have none.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from crestcut.job.answers import Per

_CENT = Decimal("0.01")
Span = tuple[float, float]  # least and most


@dataclass(frozen=True)
class Price:
    """So much for one of something, in the currency of the job."""

    amount: float
    per: Per


Named = tuple[tuple[str, Price], ...]


@dataclass(frozen=True)
class Prices:
    """What whoever does the work charges; what is None or missing has no price, and none is assumed.
    currency : as it is printed.  labour : per hour.  disposal : per litre, kg or bag.  day : hours worked in
    one, by which days of hire are counted.  hire : per day, blades : per set, by the tool's file.  other :
    once for the job, by name.
    """

    currency: str
    labour: Price | None = None
    disposal: Price | None = None
    day: float | None = None
    hire: Named = ()
    blades: Named = ()
    other: Named = ()


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
