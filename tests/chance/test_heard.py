"""'It scrapes along this line', 'it never has': weighed on the draws as Bayes' rule weighs them."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.chance.assess import assess_chance
from crestcut.chance.draws import draw_clearances
from crestcut.chance.whole_line import TRUST, heard, heard_notes, resampled
from crestcut.contact.records import Passage
from crestcut.job.records import Wanted, Witness
from crestcut.terrain.records import ErrorModel
from scenes import STRAIGHT, Scene, belly, crest, scene, stand, vehicle
from simulated import judged_from

MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.4, "", "", "")
SCRAPES = Witness(None, None, "as measured", touched=True)
NEVER = replace(SCRAPES, touched=False)


@pytest.fixture(scope="module")
def judged() -> Scene:
    """A slab behind a poor scan, on which the belly may or may not touch."""
    car = vehicle(replace(belly(half=0.4), within=0.003))
    true = scene(crest(0.085), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
    return stand(car, STRAIGHT, true.line, judged_from(true, 3, MODEL, 0.085, 0.0))


def after(s: Scene, *said: Witness) -> Passage:
    told = heard(s.passage, said, 0)
    assert not told.contradictions
    then = stand(told.vehicle, s.travel, s.line, told.surface)
    return replace(then.passage, parts=told.parts)


@pytest.mark.parametrize("said", [SCRAPES, NEVER])
def test_the_chance_is_bayes_rule(judged: Scene, said: Witness) -> None:
    """P(touch | said) = t p / (t p + (1 - t)(1 - p)), by hand from the draws before."""
    before = draw_clearances(judged.passage)
    passage = after(judged, said)
    then = draw_clearances(passage)
    assert before is not None and then is not None
    p = float((before.least < 0).mean())
    assert 0.1 < p < 0.9
    right = p if said.touched else 1 - p
    expected = TRUST * right / (TRUST * right + (1 - TRUST) * (1 - right))
    found = float((then.least < 0).mean()) if said.touched else float((then.least >= 0).mean())
    assert found == pytest.approx(expected, abs=0.02)
    weight = np.where((before.least < 0) == said.touched, TRUST, 1 - TRUST)
    mean = float((weight * before.least).sum() / weight.sum())
    assert then.least.mean() == pytest.approx(mean, abs=0.0003)


def test_what_two_say_against_each_other_leaves_it_as_it_was(judged: Scene) -> None:
    passage = after(judged, SCRAPES, NEVER)
    before = assess_chance(judged.passage, Wanted())
    then = assess_chance(passage, Wanted())
    assert then.least_clearance == pytest.approx(before.least_clearance, abs=0.0005)


def test_what_the_scan_cannot_bear_is_named_and_changes_nothing(judged: Scene) -> None:
    high = judged.vehicle.parts[0]
    lifted = vehicle(replace(high, z=(high.z[0] + 0.06, high.z[1] + 0.06)))
    s = stand(lifted, judged.travel, judged.line, judged.surface)
    told = heard(s.passage, [SCRAPES], 0)
    assert "[[witness]] 1" in told.contradictions[0] and "contradicts" in told.contradictions[0]
    assert told.surface is s.surface
    assert not heard(s.passage, [NEVER], 0).contradictions


def test_an_unknown_part_or_load_is_refused(judged: Scene) -> None:
    for wrong, says in ((replace(SCRAPES, part="sump"), "no part"), (replace(NEVER, load="x"), "no load")):
        with pytest.raises(CrestcutError, match=says):
            heard(judged.passage, [wrong], 0)


def test_draws_are_taken_as_often_as_their_weight_says() -> None:
    weight = np.random.default_rng(2).random(200)
    count = np.bincount(resampled(weight, 5), minlength=200)
    assert count.sum() == 200
    assert np.abs(count - 200 * weight / weight.sum()).max() < 1


def test_nothing_said_nothing_changed(judged: Scene) -> None:
    told = heard(judged.passage, [], 0)
    assert told.surface is judged.surface and told.vehicle is judged.vehicle
    assert heard_notes([NEVER]) == ["'it never has scraped along this line' is taken to be right with 95%"]
