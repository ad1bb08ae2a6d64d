"""What to measure first: a felt gap at the worst station beats all strings, and three as an H beat one; each
outcome is told, and what was read already is not asked for again."""

from __future__ import annotations

import re
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
import itertools

import pytest

from crestcut.chance.assess import assess_chance
from crestcut.chance.records import Chance
from crestcut.job.records import ByHand, PlanPoint, Point, StringReading, Wanted
from crestcut.measure_next.advice import READ, Advice, best_set, measure_first, narrowing
from crestcut.terrain.readings.evidence import gather_evidence
from crestcut.terrain.records import ErrorModel
from scenes import L, Scene, belly, crest, scanned_with, scene, vehicle

TIMBER = (0.009, 0.012, 0.018, 0.027, 0.044)  # m
WARP = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "", "", "")


@pytest.fixture(scope="module")
def stood() -> Scene:
    return scene(
        crest(0.08), car=vehicle(replace(belly(), within=0.003)), start=(-3.2, 0), end=(3.2, 0), cell=0.02
    )


def asked(s: Scene, **more: object) -> tuple[Advice, ...]:
    return measure_first(s.under(WARP), sizes=TIMBER, **more)  # type: ignore[arg-type]


def test_a_felt_gap_comes_first_and_narrows_two_and_a_half_times(stood: Scene) -> None:
    advice = asked(stood)
    assert stood.before.worst is not None
    boards = advice[0].boards
    assert advice[0].kind == "felt gap" and advice[0].narrows > 2.5 and boards is not None
    on = boards.thickness + boards.held
    assert advice[0].expect == pytest.approx(stood.before.worst.gap + on, abs=0.001)
    assert all(a.narrows <= b.narrows for a, b in itertools.pairwise(advice))


def test_nothing_to_narrow_nothing_to_ask() -> None:
    s = scene(
        crest(0.08), car=vehicle(replace(belly(), within=1e-6)), start=(-3.2, 0), end=(3.2, 0), cell=0.02
    )
    assert measure_first(s.under(replace(WARP, warp=1e-7, patch=1e-7))) == ()


def test_where_no_string_can_run_a_gap_is_asked_for_alone(stood: Scene) -> None:
    # the slab was not seen where strings over the worst point would stand or be read: no string is planned
    worst = stood.before.worst
    assert worst is not None
    height = stood.surface.height
    x, y = np.moveaxis(height.frame.node_xy(), -1, 0)
    hidden = (np.abs(y) < 0.65) & (np.hypot(x - worst.xy[0], y - worst.xy[1]) > 0.1)
    bare = replace(stood.surface, height=height.like(np.where(hidden, np.nan, height.values)))
    advice = measure_first(scanned_with(replace(stood.passage, surface=bare), WARP))
    assert {a.kind for a in advice} == {"felt gap"}
    assert {a.kind for a in asked(stood, kinds=("felt gap",))} == {"felt gap"}


def test_strings_run_free_of_the_slab_and_together_narrow_more(stood: Scene) -> None:
    sure = replace(stood, vehicle=vehicle(replace(belly(half=0.3), within=0.0005)))
    strings = asked(sure, kinds=("string",))
    assert len(strings) == 3 and all(s.expect >= 0.040 - 1e-9 and s.blocks >= 0.1 for s in strings)
    assert all(a.narrows <= b.narrows + 1e-9 for a, b in itertools.pairwise(strings))
    assert strings[2].narrows > 2.0


def test_an_h_is_asked_for_whole_or_not_at_all() -> None:
    rows = np.array([[1.0, 1.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.9, 0.0, 0.3]]) * 0.004
    covariance = rows @ rows.T
    assert best_set(covariance, range(1, 4), 2) == {1, 2}
    assert best_set(covariance, range(1, 4), 2, frozenset({1, 2})) == {1, 2}
    assert best_set(covariance, range(1, 4), 1, frozenset({1, 2})) == {3}


def test_a_set_is_chosen_that_no_other_of_its_size_beats() -> None:
    """Two readings that are worthless one by one and all together (a difference): one by one never finds
    them."""
    a, b, noise = np.array([1.0, 0.0, 1.0]), np.array([1.0, 3.0, 0.0]), np.array([0.0, 3.0, 0.0])
    rows = np.array([[1.0, 0.0, 0.0], b, noise, 0.2 * a]) * 0.004
    covariance = rows @ rows.T
    assert best_set(covariance, range(1, 4), 2) == {1, 2}


def test_each_outcome_is_told_and_what_it_says_is_then_found(stood: Scene) -> None:
    """A string read where the advice says 'it clears' makes the verdict say so, and one well short of it
    not."""
    today = assess_chance(stood.under(WARP), Wanted(), draws=200)
    # the part's height all but known, so that a string can settle it
    sure = replace(stood, vehicle=vehicle(replace(belly(), within=0.0005)))
    first = asked(sure, today=today, kinds=("string",), most=1)[0]
    told = " ".join(first.settles)
    assert "run again" in told
    for level in re.findall(r"(\d+) mm or (?:less|more)", told):
        assert abs(float(level) / 1e3 - first.expect) < 0.03
    gap = asked(stood, today=today)[0]
    assert gap.boards is not None
    on = gap.boards.thickness + gap.boards.held
    assert gap.expect == pytest.approx(today.least_clearance + on, abs=0.001)
    assert any("it clears" in s for s in gap.settles)


def test_an_h_stands_on_the_crest_its_crossbar_on_the_marks_that_its_bars_are_read_at() -> None:
    """On a crest turned by 14 degrees: x cos 14 + y sin 14 = 0, known here in closed form."""
    sure = vehicle(replace(belly(), within=1e-4))
    turned = scene(crest(0.08, 0.25), car=sure, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
    left, right, across = asked(turned, kinds=("string",))
    for bar, block in ((left, across.where[1]), (right, across.where[0])):
        assert np.allclose(bar.where[2], block)
        x, y = block
        assert abs(x * np.cos(0.25) + y * np.sin(0.25)) < 0.03
        assert np.hypot(*np.subtract(*bar.where[:2])) == pytest.approx(L, abs=0.001)
    assert left.where[2][1] > 0.7 and right.where[2][1] < -0.7
    assert "least" in across.how and "two marks" in across.how and "mark" in left.how


def test_what_is_promised_is_what_the_readings_then_do(stood: Scene) -> None:
    """Gap and H read as expected, places exact: the spread that is left is the one the advice spoke of."""
    sure = replace(stood, vehicle=vehicle(replace(belly(), within=0.0005)))
    plain = assess_chance(sure.under(WARP), Wanted(), draws=200)
    left, right, across = asked(sure, kinds=("string",))
    read = [
        StringReading(*ends(s), length(s.where[0], s.where[2]), s.blocks, s.expect, 0.001, 0.001)
        for s in (left, right)
    ]
    span = length(*across.where[:2])
    for between in ((0.05 * span, 0.5 * span), (0.5 * span, 0.95 * span)):
        read.append(StringReading(*ends(across), None, across.blocks, across.expect, 0.001, 0.001, between))
    evidence = gather_evidence(ByHand(strings=tuple(read)), sure.surface, place)
    told = assess_chance(sure.under(WARP), Wanted(), draws=200, evidence=evidence)
    assert plain.spread / told.spread == pytest.approx(across.narrows, rel=0.2)


def ends(s: Advice) -> tuple[PlanPoint, PlanPoint]:
    return PlanPoint(*s.where[0]), PlanPoint(*s.where[1])


def length(a: tuple[float, float], b: tuple[float, float]) -> float:
    return float(np.hypot(*np.subtract(b, a)))


def place(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def test_what_was_read_already_is_worth_little_twice(stood: Scene) -> None:
    first = asked(stood, kinds=("string",), most=1)[0]
    at = length(first.where[0], first.where[2])
    string = StringReading(*ends(first), at, first.blocks, first.expect, 0.001, 0.0)
    evidence = gather_evidence(ByHand(strings=(string,)), stood.surface, place)
    again = asked(stood, kinds=("string",), evidence=evidence)
    assert all(not np.allclose(x.where, first.where, atol=0.01) for x in again[:1])


def test_narrowing_is_the_closed_form_of_one_reading() -> None:
    covariance = np.array([[4e-6, 3e-6], [3e-6, 5e-6]])
    rest = 4e-6 - 9e-12 / (5e-6 + READ**2)
    assert narrowing(covariance, [1]) == pytest.approx(np.sqrt(4e-6 / rest))


def test_of_finished_work_a_reading_is_told_against_what_was_asked(stood: Scene) -> None:
    """Where 12 mm are asked for of a slab that has 12 mm more, all is told 12 mm higher."""
    today = assess_chance(stood.under(WARP), Wanted(), draws=200)
    more = replace(today, least_clearance=today.least_clearance + 0.012)

    def levels(today: Chance, **rest: float) -> list[float]:
        # the first is felt on boards: beside others no level is told that it cannot well be
        gap = asked(stood, today=today, most=1, kinds=("felt gap",), **rest)[0]
        told = " ".join(gap.settles)
        assert ("done" in told and "check again" in told) == bool(rest) == ("it clears" not in told)
        return [float(level) for level in re.findall(r"(\d+) mm or (?:less|more)", told)]

    own = levels(today)
    assert len(own) == 2
    assert levels(more, asked=0.012) == [v + 12 for v in own]
    assert min(np.subtract(levels(today, asked=0.012), own)) > 6.0
