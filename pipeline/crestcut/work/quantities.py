"""How much: concrete, slots, bags, wheels, hours. Ranges, because nobody knows the concrete."""

from __future__ import annotations

import math
from collections.abc import Sequence

from crestcut.base.units import number
from crestcut.cut import mass_of
from crestcut.work.jig_records import Jig, Range, Tool
from crestcut.work.records import Pass, Quantities
from crestcut.work.tools import KERFS_POINTLESS

BAG = Range(10.0, 20.0)  # kg of dust a person should put in one bag (common practice, no source)
TRIGGER = Range(0.5, 0.8)  # share of the working time with the tool running (common practice, no source)
AFTER_KERFS = 0.3  # of the volume is left to the cup after slots and fins (common practice, no source)
BY_MACHINE = 0.75  # of the volume goes by machine before the board comes out (common practice, no source)
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


def shares(tools: Sequence[Tool], deepest: float) -> tuple[float, ...]:
    """Which part of the volume each tool takes, in order; they sum to 1."""
    if len(tools) <= 1 or deepest < KERFS_POINTLESS:
        return (1.0,) * min(len(tools), 1) + (0.0,) * max(len(tools) - 1, 0)
    by_hand = [1 - AFTER_KERFS, AFTER_KERFS]
    if not tools[0].by_hand:
        hand = by_hand if len(tools) == 3 else [1.0]
        return (BY_MACHINE, *((1 - BY_MACHINE) * share for share in hand))
    return tuple(by_hand)


def hours_of(tool: Tool, volume: float) -> Range:
    """Working hours of a tool for ``volume`` m3."""
    litres = volume * 1000
    return Range(litres / tool.rate.high, litres / tool.rate.low)


def work_out(
    deepest: float, volume: float, area: float, tools: Sequence[Tool], jig: Jig | None, passes: Sequence[Pass]
) -> Quantities:
    """Volumes and times of the whole work; deepest m, volume m3, area m2.

    passes : all of it in order, whether printed or not: their hours make up the whole.
    """
    part = shares(tools, deepest)
    working = [hours_of(tool, volume * share) for tool, share in zip(tools, part, strict=True)]
    taken = Range(volume, volume + OVERCUT * area if volume > 0 else 0.0)
    mass = Range(mass_of(taken.low), mass_of(taken.high))
    litres = [volume * 1000 * share for share in part]
    return Quantities(
        area=area,
        volume=volume,
        taken=taken,
        mass=mass,
        kerf_metres=_kerf_metres(jig),
        bags=Range(math.ceil(mass.low / BAG.high), math.ceil(mass.high / BAG.low)),
        wheels=tuple(
            (t.name, Range(used / t.life.high, used / t.life.low))
            for t, used in zip(tools, litres, strict=True)
        ),
        hours=Range(round(sum(p.hours.low for p in passes), 1), round(sum(p.hours.high for p in passes), 1)),
        trigger_hours=Range(
            sum(h.low for h in working) * TRIGGER.low, sum(h.high for h in working) * TRIGGER.high
        ),
        vibration=tuple((tool.name, tool.vibration) for tool in tools),
        notes=(
            *_vibration_notes(tools),
            "Rates, wear and times are common practice, no source: measure the first hour and correct.",
        ),
    )


def _kerf_metres(jig: Jig | None) -> float:
    """Metres of slot: every slot of a strip once in each lift that reaches its concrete."""
    if jig is None:
        return 0.0
    total = 0.0
    for row in jig.rows:
        long = (row.stop[0] + row.stop[1] - row.start[0] - row.start[1]) / 2
        slots = max(round((row.high - row.low) / jig.step), 0) + 1
        total += max(long, 0.0) * slots * (1 + row.spacers)
    return total


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
