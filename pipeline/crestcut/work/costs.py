"""What each option costs, so that they are ranked by it: hours, what is laid, what is carried off, days of
hire.

The cut's hours are those of its own steps, as the sheets print them. The others' rates are common practice,
no source, as ranges. To be compared all of it is put into one unit: hours where nobody gave prices
(``IN_HOURS``), a person's own money where they did (``rates_of``).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from crestcut.alternatives import Option
from crestcut.cut import bay_of, mass_of
from crestcut.job import Per, Prices, days_of
from crestcut.work.jig_records import Range
from crestcut.work.order import WorkOrder
from crestcut.work.quantities import BAG, hours_at, summed
from crestcut.work.records import IDLE, Pass
from crestcut.work.sheet import steps_of

DAY = 8.0  # h of work for which a tool is hired one day, where nobody said how long theirs is
# all common practice, no source; hours for the whole, or at a rate an hour
NO_WORK, CHALK_A_LINE, AIR, GUIDE = Range(0.0, 0.0), Range(0.1, 0.3), Range(0.1, 0.3), Range(0.2, 0.5)
LAY_THERE, ROUGHEN, LAY = Range(0.5, 1.0), Range(1.5, 4.0), Range(10.0, 30.0)  # h; m2 and litres an hour
SAW, BREAK_OUT, POUR = Range(3.0, 8.0), Range(4.0, 8.0), Range(4.0, 8.0)  # m an hour; h for a m3
BAY_THERE, BAY_HIRE = Range(2.0, 4.0), Range(1.0, 2.0)  # h; days of saw and breaker
DRIVING = {
    "as it is": NO_WORK, "keep to the line": CHALK_A_LINE, "another line": CHALK_A_LINE, "less load": NO_WORK,
    "slower": NO_WORK, "more pressure": AIR, "loose boards": GUIDE,
}  # fmt: skip


@dataclass(frozen=True)
class Rates:
    """What an hour of work, a litre laid, a litre carried off and a day's hire of a tool come to, in
    ``unit``."""

    hour: float
    laid: float
    out: float
    day: float
    unit: str


# a bag of mortar for 12 litres, bought and carried, is worth half an hour's work; a litre of rubble bagged
# and tipped one minute; a tool for a day three hours (common practice, no source)
IN_HOURS = Rates(hour=1.0, laid=0.04, out=0.02, day=3.0, unit="h")


def rates_of(prices: Prices | None) -> Rates:
    """By a person's own prices where an hour of work has one; else in hours. What has no price of its own is
    worth as many hours of work as without any."""
    if prices is None or prices.labour is None:
        return IN_HOURS
    hour, out, days = prices.labour.amount, prices.disposal, [price.amount for _, price in prices.hire]
    litre = mass_of(1e-3)  # kg
    litres = {Per.LITRE: 1.0, Per.KG: 1 / litre, Per.BAG: (BAG.low + BAG.high) / 2 / litre}
    return Rates(
        hour=hour,
        laid=IN_HOURS.laid * hour,
        out=IN_HOURS.out * hour if out is None else out.amount / litres[out.per],
        day=sum(days) / len(days) if days else IN_HOURS.day * hour,
        unit=prices.currency,
    )


@dataclass(frozen=True)
class Takes:
    """What one option takes.  hours, hire (days) : as ranges.  laid, out : m3."""

    hours: Range
    laid: float = 0.0
    out: float = 0.0
    hire: Range = IDLE

    def in_all(self, rates: Rates) -> Range:
        """From least to most, in ``rates.unit``."""
        litres = (self.laid * rates.laid + self.out * rates.out) * 1000
        low, high = (
            litres + hours * rates.hour + days * rates.day
            for hours, days in ((self.hours.low, self.hire.low), (self.hours.high, self.hire.high))
        )
        return Range(low, high)


def ranked(options: Sequence[Option], order: WorkOrder) -> tuple[Option, ...]:
    """The options with what each costs: what works first, in it what is not fixed before what is, then the
    least of the middles of what they cost; in that order too what does not work. A cost that nobody knows
    comes last.

    Raises CrestcutError for tool files that are not understood.
    """
    if len(options) < 2:
        return tuple(options)
    rates = rates_of(order.job.prices)
    steps = steps_of(order)
    told = [_with_cost(option, _takes(option, order, steps), rates) for option in options]
    return tuple(sorted(told, key=lambda o: (not o.works, o.kind not in DRIVING, _middle(o))))


def _with_cost(option: Option, takes: Takes | None, rates: Rates) -> Option:
    if takes is None:
        return option
    hours, hire, whole = ((r.low, r.high) for r in (takes.hours, takes.hire, takes.in_all(rates)))
    return replace(option, hours=hours, laid=takes.laid, hire=hire, cost=whole, cost_in=rates.unit)


def _middle(option: Option) -> float:
    middle = sum(option.cost) / 2
    return math.inf if math.isnan(middle) else middle


def _takes(option: Option, order: WorkOrder, steps: Sequence[Pass]) -> Takes | None:
    """None where it is not known: a cut that is not proposed has no steps."""
    if option.kind in DRIVING:
        return Takes(DRIVING[option.kind])
    if option.kind == "new bay":
        return _new_bay(order)
    laid = max(-option.volume, option.beside)
    parts = [_laid(laid, option.thick or option.depth)] if laid > 0 else []
    if option.volume > 0:
        cut = _cut(option, order, steps)
        if cut is None:
            return None
        parts.append(cut)
    return Takes(
        summed([p.hours for p in parts]), sum(p.laid for p in parts), sum(p.out for p in parts),
        summed([p.hire for p in parts]),
    )  # fmt: skip


def _laid(volume: float, thick: float) -> Takes:
    """Mortar on roughened concrete; as wide as it is when it is laid as thick everywhere: its tapers are
    more."""
    area = volume / max(thick, 0.001)
    return Takes(summed([LAY_THERE, hours_at(area, ROUGHEN), hours_at(volume * 1000, LAY)]), laid=volume)


def _cut(option: Option, order: WorkOrder, steps: Sequence[Pass]) -> Takes | None:
    """The plan's own steps; of a smaller cut what is set out and checked as for the plan, what is taken by
    its share.
    """
    plan = order.plan
    if not steps or plan is None or not plan.volume > 0:
        return None
    share = 1.0 if option.kind == "cut" else min(option.volume / plan.volume, 1.0)
    hours = summed([s.hours.times(share) if s.taken > 0 else s.hours for s in steps])
    prices = order.job.prices
    day = (prices.day if prices is not None else None) or DAY
    _, days = days_of((round(hours.low, 1), round(hours.high, 1)), day)  # of the hours as they are printed
    at_hand = order.job.work.tools is not None  # else nobody has said whose they are
    return Takes(hours, out=option.volume, hire=IDLE if at_hand else Range(0.0, days))


def _new_bay(order: WorkOrder) -> Takes | None:
    bay = None if order.plan is None else bay_of(order.plan, order.job.slab)
    if bay is None:
        return None
    rim = 2 * (bay.long + bay.wide)
    hours = [BAY_THERE, hours_at(rim, SAW), BREAK_OUT.times(bay.volume), POUR.times(bay.volume)]
    return Takes(summed(hours), bay.volume, bay.volume, BAY_HIRE)
