"""What options cost, and that they are ranked by it: by hand, and by properties that must hold."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from work_scene import scene

from crestcut.alternatives.rows import Option
from crestcut.job.answers import Per
from crestcut.job.prices import Price, Prices
from crestcut.job.records import WorkWish
from crestcut.work.costs import IN_HOURS, Rates, Takes, ranked, rates_of
from crestcut.work.jig_records import Range
from crestcut.work.sheet import make_worksheet, steps_of


def option(kind: str, volume: float = 0.0, depth: float = 0.0, works: bool = True) -> Option:
    return Option(kind, kind, 0.013, 0.0, 0.99, works, 0.01, 0.0, depth, volume, "")


def test_the_cut_costs_the_hours_of_its_own_sheets() -> None:
    s = scene()
    order = s.order()
    sheet = make_worksheet(order)
    assert sheet.passes and steps_of(order) == sheet.passes
    cut = option("cut", s.plan.volume, s.plan.deepest)
    (told,) = (o for o in ranked([cut, option("as it is", works=False)], order) if o.kind == "cut")
    assert told.hours == pytest.approx((sheet.quantities.hours.low, sheet.quantities.hours.high), rel=0.01)


def test_strips_are_priced_as_by_hand() -> None:
    """187 litres 25 mm thick: 7.48 m2 to roughen at 1.5 to 4 m2 an hour, 10 to 30 litres an hour laid, half
    an hour to one hour to be there; a litre as 0.04 h."""
    s = scene()
    strips = option("strips", -0.187, 0.025)
    told = next(o for o in ranked([strips, option("cut", s.plan.volume)], s.order()) if o.kind == "strips")
    least, most = 0.5 + 7.48 / 4 + 187 / 30, 1.0 + 7.48 / 1.5 + 187 / 10
    assert told.hours == pytest.approx((least, most))
    assert told.cost == pytest.approx((least + 7.48, most + 7.48)) and told.laid == pytest.approx(0.187)


def test_much_that_is_laid_does_not_stand_before_little_that_is_ground() -> None:
    """Ranked by what it costs, not by kind: the same strips stand before a cut that takes longer than they
    do."""
    s = scene()
    order = s.order()
    few, many = (option("strips", -litres / 1000, 0.025) for litres in (3.0, 600.0))
    cut = option("cut", s.plan.volume, s.plan.deepest)
    assert [o.kind for o in ranked([cut, few], order)] == ["strips", "cut"]
    assert [o.kind for o in ranked([many, cut], order)] == ["cut", "strips"]
    some = option("strips", -0.030, 0.025)  # a person's own prices turn it round: here the hire of a tool
    assert [o.kind for o in ranked([cut, some], order)] == ["strips", "cut"]
    for day, kinds in ((0.0, ["cut", "strips"]), (9.0, ["strips", "cut"])):
        prices = Prices("money", Price(1.0, Per.HOUR), day=8.0, hire=(("cup", Price(day, Per.DAY)),))
        told = ranked([some, cut], replace(order, job=replace(order.job, prices=prices)))
        assert [o.kind for o in told] == kinds and {o.cost_in for o in told} == {"money"}


def test_what_works_comes_first_and_nothing_fixed_before_a_trial() -> None:
    s, draw = scene(), np.random.default_rng(3)
    order = s.order()
    kinds = ("as it is", "slower", "loose boards", "strips", "fillet", "cut", "new bay")
    for _ in range(60):
        rows = [
            option(k, float(draw.uniform(-0.3, -0.001)) if k in ("strips", "fillet") else s.plan.volume if k
            == "cut"
                   else 0.0, 0.02, bool(draw.random() < 0.6))
            for k in draw.permutation(kinds)
        ]  # fmt: skip
        told = ranked(rows, order)
        assert sorted(o.kind for o in told) == sorted(kinds)
        assert [o.works for o in told] == sorted((o.works for o in told), reverse=True)
        for works in (True, False):
            some = [o for o in told if o.works == works]
            fixed = [o.kind in ("strips", "fillet", "cut", "new bay") for o in some]
            assert fixed == sorted(fixed)
            middles = [sum(o.cost) for o in some if o.kind in ("strips", "fillet", "cut", "new bay")]
            assert middles == sorted(middles)


def test_tools_that_the_person_names_are_not_hired() -> None:
    s = scene()
    named = replace(s.job, work=WorkWish(None, ("hand_grinder_blade", "hand_grinder_cup"), None))
    cut, other = option("cut", s.plan.volume), option("strips", -0.01, 0.02)
    for job, hired in ((s.job, True), (named, False)):
        told = next(o for o in ranked([cut, other], replace(s.order(), job=job)) if o.kind == "cut")
        assert (told.hire[1] > 0) == hired


def test_of_a_smaller_cut_only_what_is_taken_is_less_and_what_is_laid_beside_it_is_added() -> None:
    """A third of the cut: its grinding takes a third, setting out and checks as long; 10 litres 20 mm thick
    beside it: 0.5 m2 roughened."""
    s = scene()
    steps = steps_of(s.order())
    mixed = replace(option("cut and strips", s.plan.volume / 3), beside=0.010, thick=0.020)
    both = (mixed, option("cut", s.plan.volume))
    told = {o.kind: o for o in ranked(both, s.order())}
    taken = [(x.hours.low, x.hours.high) for x in steps if x.taken > 0]
    whole, less = (np.array(told[kind].hours) for kind in ("cut", "cut and strips"))
    laid = np.array([0.5 + 0.5 / 4 + 10 / 30, 1.0 + 0.5 / 1.5 + 10 / 10])
    assert taken and less == pytest.approx(whole - 2 / 3 * np.sum(taken, axis=0) + laid)
    assert told["cut"].laid == 0 and told["cut and strips"].laid == pytest.approx(0.010)
    # by the hour: 3 h a day of hire at most, 0.02 h a litre carried off, 0.04 h a litre laid
    out = s.plan.volume * 1000
    assert told["cut"].cost == pytest.approx(whole + 0.02 * out + (0, 3))
    assert told["cut and strips"].cost == pytest.approx(less + 0.02 * out / 3 + 0.4 + (0, 3))


def test_a_new_bay_is_priced_as_by_hand() -> None:
    """Its rim sawn at 3 to 8 m an hour, 4 to 8 hours to break out a m3 and as many to pour it, two to four to
    be there, saw and breaker for a day or two; all of it carried off, and as much laid."""
    s = scene()
    rows, columns = np.nonzero(np.nan_to_num(s.plan.depth.values) > 0)
    cell = s.plan.depth.frame.cell
    long, wide = (np.ceil((np.ptp(k) + 1) * cell * 10 - 1e-6) / 10 for k in (columns, rows))
    rim, m3 = 2 * (long + wide), long * wide * 0.150
    told = next(o for o in ranked([option("as it is"), option("new bay")], s.order()) if o.kind == "new bay")
    least, most = 2 + rim / 8 + 2 * 4 * m3, 4 + rim / 3 + 2 * 8 * m3
    assert told.hours == pytest.approx((least, most)) and told.hire == (1, 2)
    assert told.laid == pytest.approx(m3)
    assert told.cost == pytest.approx((least + 60 * m3 + 3, most + 60 * m3 + 6))


@pytest.mark.parametrize(("day", "days"), [(None, 1), (8.0, 1), (5.0, 2), (2.0, 3)])
def test_days_of_hire_are_counted_by_the_days_that_the_prices_are_for(day: float | None, days: int) -> None:
    """2.4 to 5.9 h of work: a day begun is a day, eight hours where nobody said."""
    s = scene()
    hire = (("cup", Price(38.0, Per.DAY)),)
    prices = None if day is None else Prices("EUR", Price(45.0, Per.HOUR), day=day, hire=hire)
    order = replace(s.order(), job=replace(s.job, prices=prices))
    cut, other = option("cut", s.plan.volume), option("strips", -0.01, 0.02)
    told = next(o for o in ranked([cut, other], order) if o.kind == "cut")
    assert round(told.hours[1], 1) == 5.9 and told.hire == (0.0, days)


def test_a_cost_is_the_sum_of_what_it_is_made_of() -> None:
    cost = Takes(Range(2.0, 5.0), laid=0.010, out=0.020, hire=Range(0.0, 1.0))
    whole = cost.in_all(Rates(hour=40.0, laid=2.0, out=0.5, day=60.0, unit="money"))
    assert (whole.low, whole.high) == pytest.approx((80 + 20 + 10, 200 + 20 + 10 + 60))


def test_a_persons_prices_rank_where_there_are_any() -> None:
    """45 an hour, 0.65 a litre, 38 a day: by hand; a bag of 15 kg holds 6.25 litres of concrete."""
    prices = Prices(
        "EUR", Price(45.0, Per.HOUR), Price(0.65, Per.LITRE), 7.0, (("cup", Price(38.0, Per.DAY)),)
    )
    rates = rates_of(prices)
    assert (rates.hour, rates.out, rates.day, rates.unit) == (45.0, 0.65, 38.0, "EUR")
    assert rates.laid == pytest.approx(45 * 0.04)
    by_bag = rates_of(replace(prices, disposal=Price(5.0, Per.BAG)))
    assert by_bag.out == pytest.approx(5 / 6.25, rel=0.05)
    assert rates_of(None) == rates_of(replace(prices, labour=None)) == IN_HOURS
    s = scene()
    order = s.order()
    order = replace(order, job=replace(order.job, prices=prices))
    options = [option("strips", -0.187, 0.025), option("cut", s.plan.volume)]
    told = next(o for o in ranked(options, order) if o.kind == "strips")
    plain = next(o for o in ranked(options, s.order()) if o.kind == "strips")
    assert told.cost_in == "EUR"
    assert told.cost[0] == pytest.approx(45 * plain.cost[0])
