"""As few string readings as decide: against every choice there is, and by what a straightedge would show."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from work_scene import scene

from crestcut.job.answers import Method
from crestcut.work.order import make_site
from crestcut.work.records import StringRow
from crestcut.work.setout import MOST_READINGS, PROUD, STANDS, _all_off, _few_strings, _readings, fewest
from crestcut.work.sheet import make_worksheet
from crestcut.work.site import Site


def test_fewest_is_what_every_choice_tried_gives() -> None:
    draw = np.random.default_rng(1)
    for _ in range(200):
        count, far = int(draw.integers(2, 8)), int(draw.integers(2, 8))
        cost = np.where(draw.random((count, count)) < 0.5, math.inf, draw.random((count, count)))
        lies = lambda a, b, cost=cost: 0.0 if b == a + 1 else float(cost[a, b])  # noqa: E731
        best = (math.inf, math.inf)
        for size in range(count - 1):
            for middle in itertools.combinations(range(1, count - 1), size):
                way = (0, *middle, count - 1)
                steps = list(itertools.pairwise(way))
                if all(b - a <= far and lies(a, b) < math.inf for a, b in steps):
                    best = min(best, (len(way), sum(lies(a, b) ** 2 for a, b in steps)))
        found = fewest(count, far, lambda a, b, cost=cost: float(cost[a, b]))
        steps = list(itertools.pairwise(found))
        assert found[0] == 0 and found[-1] == count - 1
        assert (len(found), sum(lies(a, b) ** 2 for a, b in steps)) == pytest.approx(best)


@pytest.mark.parametrize("method", [Method.BOARD, Method.DOTS])
@pytest.mark.parametrize("skew", [0.0, 0.15])
def test_between_two_readings_a_straightedge_shows_what_stands_proud(method: Method, skew: float) -> None:
    """Laid from reading to reading it lies on the plan to half a millimetre over and one under."""
    s = scene(skew=skew, method=method)
    sheet = make_worksheet(s.order())
    site = make_site(s.surface, s.order().line, s.plan, s.job)
    assert sheet.set_out is not None
    strings = sheet.set_out.strings
    names = list(dict.fromkeys(r.name for r in strings))
    assert names == [f"S{k}" for k in range(1, len(names) + 1)] and 4 <= len(strings) <= MOST_READINGS
    for name in names:
        rows = [r for r in strings if r.name == name]
        j = int(np.argmin(np.abs(site.offset - rows[0].offset)))
        columns = [int(np.argmin(np.abs(site.station - (r.rear_at + r.at)))) for r in rows]
        for a, b in itertools.pairwise(columns):
            laid = np.linspace(site.finished[j, a], site.finished[j, b], b - a + 1)
            off = laid - site.finished[j, a : b + 1]
            assert b - a <= 0.021 / site.cell or (off.max() <= PROUD + 1e-9 and off.min() >= -STANDS - 1e-9)


@pytest.mark.parametrize(("a", "off"), [(0.08, PROUD), (-0.08, STANDS)], ids=["dish", "dome"])
def test_a_dish_or_dome_is_read_as_often_as_its_curve_asks(a: float, off: float) -> None:
    """Over z = a x^2 a chord of length L lies a (L / 2)^2 over the middle of a dish, under that of a dome:
    readings no farther apart than 2 sqrt(off / |a|), and no more of them than that asks for."""
    cell = 0.005
    x = np.arange(-0.5, 0.5 + 1e-9, cell)
    ground = np.full((3, len(x)), 0.1)
    finished = np.tile(0.08 + a * x**2, (3, 1))
    site = Site(ground, finished, ground - finished <= 0, cell, x, np.arange(3) * cell)
    places = x[_readings(site, 1, np.arange(len(x)), 1.0)]
    longest = 2 * math.sqrt(off / abs(a))
    assert np.diff(places).max() <= longest + 1e-9
    assert len(places) - 1 <= math.ceil(1.0 / (longest - 0.02))


def test_two_cuts_far_apart_on_a_lane_have_strings_of_their_own() -> None:
    """Each the same as alone: one string over both would be 20 m long and be read where nothing is cut. The
    blocks of the one that the axles do not straddle stand about its own middle as they do about theirs."""
    cell, axles = 0.01, (-1.3, 1.3)
    x = np.arange(-3.0, 23.0 + 1e-9, cell)
    y = np.arange(-0.3, 0.3 + 1e-9, cell)
    ground = np.zeros((len(y), len(x)))

    def strings(*middles: float) -> list[StringRow]:
        depth = sum(np.maximum(0.02 - 0.08 * (x - m) ** 2, 0.0) for m in middles) * np.ones_like(ground)
        depth[:5] = depth[-5:] = 0.0
        site = Site(ground, ground - depth, depth <= 0, cell, x, y)
        return _few_strings(site, depth > 0, axles)

    near, far, both = strings(0.0), strings(20.0), strings(0.0, 20.0)
    assert 2 <= len(near) <= MOST_READINGS and both[: len(near)] == near
    beyond = both[len(near) :]
    assert min(r.lane for r in beyond) == max(r.lane for r in near) + 1
    for row, alone in zip(beyond, far, strict=True):
        assert abs(row.rear_at + row.at - 20.0) <= 0.5 and row.least == alone.least and row.at == alone.at
        assert (row.rear_at, row.front_at) == pytest.approx((20.0 + axles[0], 20.0 + axles[1]), abs=cell)


def test_straightedges_laid_all_at_once_are_off_as_each_by_itself() -> None:
    draw = np.random.default_rng(2)
    finished = np.cumsum(np.cumsum(draw.normal(0, 4e-5, 400)))
    finished[150] = math.nan
    places, far = np.unique(draw.integers(3, 398, 250)), 12  # some farther apart than others
    lies = _all_off(finished, places, far, 1.0)
    assert 0.2 < np.isfinite(lies).mean() < 0.9
    for apart, a in itertools.product(range(2, far + 1), range(len(places) - far)):
        first, last = int(places[a]), int(places[a + apart])
        over = np.linspace(finished[first], finished[last], last - first + 1) - finished[first : last + 1]
        near = over.max() <= PROUD and over.min() >= -STANDS  # of NaN false
        assert lies[apart, a] == (np.abs(over).max() if near else math.inf)
