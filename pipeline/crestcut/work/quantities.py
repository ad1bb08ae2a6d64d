"""How much: concrete, slots, bags, wheels, hours; all of it the sum of the steps. Ranges, because nobody
knows the concrete.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from crestcut.base.units import number
from crestcut.cut import mass_of
from crestcut.job import Spent
from crestcut.work.jig_records import Range, Tool
from crestcut.work.records import Pass, Quantities

BAG = Range(10.0, 20.0)  # kg of dust a person should put in one bag (common practice, no source)
OVERCUT = 0.001  # m: what hands take beyond a plan, on average (common practice, no source)
ACTION_VALUE, LIMIT_VALUE = 2.5, 5.0  # m/s2 over eight hours: Directive 2002/44/EC, article 3(1)


def span_words(span: Range, unit: str, decimals: int | None = None) -> str:
    """ "15.9 to 17.1 litres", "2 to 5 bags"; once where both ends are written alike.

    decimals : None for as many as the size of each end deserves.
    """
    low, high = (number(v) if decimals is None else f"{v:.{decimals}f}" for v in (span.low, span.high))
    return f"{low if low == high else f'{low} to {high}'} {unit}".strip()


def hours_words(span: Range) -> str:
    """ "3.9 to 11.1 h"."""
    return span_words(span, "h", 1)


def bags_words(amounts: Quantities) -> str:
    """ "2 to 5 bags", never part of one."""
    return span_words(amounts.bags, "bag" if amounts.bags.high == 1 else "bags", 0)


def wear_words(used: Range) -> str:
    """ "0.05 to 0.20 of a set"."""
    return span_words(used, "of a set", 2)


def hours_of(tool: Tool, volume: float) -> Range:
    """Working hours of a tool for ``volume`` m3."""
    return hours_at(volume * 1000, tool.rate)


def hours_at(amount: float, rate: Range) -> Range:
    """Hours for so much at a rate an hour."""
    return Range(amount / rate.high, amount / rate.low)


def summed(spans: Sequence[Range]) -> Range:
    """Both ends added up."""
    return Range(sum(s.low for s in spans), sum(s.high for s in spans))


def work_out(
    volume: float, area: float, tools: Sequence[Tool], passes: Sequence[Pass], flats: float = 0.0
) -> Quantities:
    """Volumes and times of the whole work; volume, flats m3, area m2.

    passes : all of it in order, whether printed or not: their hours, slots and litres make up the whole.
    """
    taken = Range(volume, volume + OVERCUT * area if volume > 0 else 0.0)
    mass = Range(mass_of(taken.low), mass_of(taken.high))
    used = {t.key: sum(p.taken for p in passes if p.key == t.key) * 1000 for t in tools}
    hours, running = summed([p.hours for p in passes]), summed([p.running for p in passes])
    return Quantities(
        area=area,
        volume=volume,
        flats=flats,
        taken=taken,
        mass=mass,
        kerf_metres=sum(p.slot for p in passes),
        bags=Range(math.ceil(mass.low / BAG.high), math.ceil(mass.high / BAG.low)),
        wheels=tuple((t.name, Range(used[t.key] / t.life.high, used[t.key] / t.life.low)) for t in tools),
        hours=Range(round(hours.low, 1), round(hours.high, 1)),
        trigger_hours=running,
        vibration=tuple((tool.name, tool.vibration) for tool in tools),
        notes=(
            *_vibration_notes(tools),
            "Rates, wear and times are common practice, no source: measure the first hour and correct.",
        ),
        tools=tuple(t.key for t in tools),
    )


def spent_of(amounts: Quantities) -> Spent:
    """What a job takes, every figure as the sheets print it."""

    def printed(span: Range, per: float = 1.0) -> tuple[float, float]:
        return float(number(span.low * per)), float(number(span.high * per))

    return Spent(
        hours=(round(amounts.hours.low, 1), round(amounts.hours.high, 1)),
        litres=printed(amounts.taken, 1000),
        kg=printed(amounts.mass),
        bags=(amounts.bags.low, amounts.bags.high),
        tools=tuple(
            (key, name, (round(sets.low, 2), round(sets.high, 2)))
            for key, (name, sets) in zip(amounts.tools, amounts.wheels, strict=True)
        ),
    )


def trigger_limit(vibration: float, value: float) -> float:
    """Hours a day until the eight-hour value is reached: A(8) = a sqrt(T / 8)."""
    return 8.0 * (value / vibration) ** 2


def _vibration_notes(tools: Sequence[Tool]) -> list[str]:
    worst = max((tool.vibration.high for tool in tools if tool.by_hand), default=0.0)
    if worst <= 0:
        return []
    return [
        f"Vibration at {worst:.0f} m/s2: {trigger_limit(worst, ACTION_VALUE) * 60:.0f} min of trigger a day"
        f" reach the action value, {trigger_limit(worst, LIMIT_VALUE) * 60:.0f} min the limit (2002/44/EC)."
        " Change hands or people; your tool's own figure goes first."
    ]
