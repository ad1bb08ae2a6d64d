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

from crestcut.job.records import PlanPoint, Point, StringReading, Wanted
from crestcut.surface.evidence import gather_evidence
from crestcut.surface.records import ErrorModel
from crestcut.travel.advice import READ, Advice, best_set, measure_first, narrowing
from crestcut.travel.chance import assess_chance
from scenes import Scene, belly, crest, scene, vehicle

WARP = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "", "", "")


@pytest.fixture(scope="module")
def stood() -> Scene:
    return scene(
        crest(0.08), car=vehicle(replace(belly(), within=0.003)), start=(-3.2, 0), end=(3.2, 0), cell=0.02
    )


def asked(s: Scene, **more: object) -> tuple[Advice, ...]:
    return measure_first(s.vehicle, s.surface, s.ride, s.before, WARP, **more)  # type: ignore[arg-type]


def test_a_felt_gap_comes_first_and_narrows_two_and_a_half_times(stood: Scene) -> None:
    advice = asked(stood)
    assert stood.before.worst is not None
    assert advice[0].kind == "felt gap" and advice[0].narrows > 2.5
    assert advice[0].expect == pytest.approx(stood.before.worst.gap)
    assert all(a.narrows <= b.narrows for a, b in itertools.pairwise(advice))


def test_nothing_to_narrow_nothing_to_ask() -> None:
    s = scene(
        crest(0.08), car=vehicle(replace(belly(), within=1e-6)), start=(-3.2, 0), end=(3.2, 0), cell=0.02
    )
    assert measure_first(s.vehicle, s.surface, s.ride, s.before, replace(WARP, warp=1e-7, patch=1e-7)) == ()


def test_strings_run_free_of_the_slab_and_together_narrow_more(stood: Scene) -> None:
    sure = replace(stood, vehicle=vehicle(replace(belly(half=0.3), within=0.0005)))
    strings = asked(sure, kinds=("string",))
    assert len(strings) >= 2 and all(s.expect >= 0.040 - 1e-9 and s.blocks >= 0.1 for s in strings)
    assert all(a.narrows < b.narrows for a, b in itertools.pairwise(strings))


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
    today = assess_chance(stood.passage, WARP, Wanted(), draws=200)
    # the part's height all but known, so that a string can settle it
    sure = replace(stood, vehicle=vehicle(replace(belly(), within=0.0005)))
    first = measure_first(
        sure.vehicle, sure.surface, sure.ride, sure.before, WARP, today=today, kinds=("string",), most=1
    )[0]
    told = " ".join(first.settles)
    assert "run again" in told
    for level in re.findall(r"(\d+) mm or (?:less|more)", told):
        assert abs(float(level) / 1e3 - first.expect) < 0.03
    gap = asked(stood, today=today)[0]
    assert gap.expect == pytest.approx(today.least_clearance)
    assert any("it clears" in s for s in gap.settles)


def test_what_was_read_already_is_worth_little_twice(stood: Scene) -> None:
    first = asked(stood, kinds=("string",), most=1)[0]

    def place(point: Point) -> tuple[float, float]:
        assert isinstance(point, PlanPoint)
        return point.x, point.y

    a, b, at = (np.array(xy) for xy in first.where)
    length = float(np.hypot(*(at - a)))
    ends = PlanPoint(float(a[0]), float(a[1])), PlanPoint(float(b[0]), float(b[1]))
    string = StringReading(*ends, length, first.blocks, first.expect, 0.001, 0.0)
    evidence = gather_evidence([string], [], stood.surface, place)
    again = asked(stood, kinds=("string",), evidence=evidence)
    assert all(not np.allclose(x.where, first.where, atol=0.01) for x in again[:1])


def test_narrowing_is_the_closed_form_of_one_reading() -> None:
    covariance = np.array([[4e-6, 3e-6], [3e-6, 5e-6]])
    rest = 4e-6 - 9e-12 / (5e-6 + READ**2)
    assert narrowing(covariance, [1]) == pytest.approx(np.sqrt(4e-6 / rest))
