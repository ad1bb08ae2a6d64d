"""Strings: least distances against draws weighted by what was read, one chalk mark under two strings, and
what cannot be."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.base.errors import CrestcutError
from crestcut.chance.active_contacts import ActiveContacts, find_active_contacts
from crestcut.chance.drawn_errors import DrawnErrors
from crestcut.chance.draws import reach_of
from crestcut.job.records import ByHand, PlanPoint, Point, StringReading
from crestcut.terrain.error.covariance import of_functionals
from crestcut.terrain.readings.evidence import gather_evidence
from crestcut.terrain.readings.records import Evidence
from crestcut.terrain.records import ErrorModel
from scenes import Scene, belly, crest, scene, vehicle

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "", "", "")
WITHIN = 1e-6  # m, of the belly: the ground alone is asked
BLOCKS = 0.10


@pytest.fixture(scope="module")
def stood() -> Scene:
    car = vehicle(replace(belly(half=0.4), within=WITHIN))
    s = scene(crest(0.08, 0.2), car=car, start=(-2.2, 0), end=(2.2, 0), cell=0.02)
    return replace(s, surface=replace(s.surface, error=PHONE))


def place(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def along_crest(y: float) -> PlanPoint:
    return PlanPoint(float(-np.tan(0.2) * y), y)


def string(
    a: PlanPoint,
    b: PlanPoint,
    down: float,
    at: float | None = None,
    between: tuple[float, float] | None = None,
    placed: float = 1e-6,
    blocks: float = BLOCKS,
) -> StringReading:
    return StringReading(a, b, at, blocks, down, 0.001, placed, between)


def drawn(s: Scene, evidence: Evidence, half: int, told: bool = True) -> tuple[ActiveContacts, DrawnErrors]:
    passage = s.under(PHONE)
    contacts = find_active_contacts(passage, reach_of(passage), evidence, poses=20)
    assert contacts is not None
    return contacts, DrawnErrors(passage, contacts, evidence if told else None, 3, half)


def test_draws_held_to_a_least_distance_are_those_weighted_by_it(stood: Scene) -> None:
    """Brute force: 8,000 draws of the scan alone, each weighted by how likely it makes the reading (Bayes);
    their mean and spread of the least clearance are those of 400 draws held to it."""
    evidence = gather_evidence(
        ByHand(strings=(string(along_crest(-0.7), along_crest(0.7), 0.094),)), stood.surface, place
    )
    assert evidence is not None
    reading = evidence.readings[0]
    assert reading.along is not None
    contacts, many = drawn(stood, evidence, 4000, told=False)
    wrong = many.ground[contacts.extra]
    share, down = reading.along.T
    chord = (1 - share)[:, None] * wrong[0] + share[:, None] * wrong[1]
    least = (down[:, None] - chord + wrong[2:]).min(axis=0)
    weight = np.exp(-((0.094 - reading.predicted + reading.exactly - least) ** 2) / (2 * 0.001**2))
    weight /= weight.sum()
    assert 1 / (weight**2).sum() > 300
    gap = contacts.drawn(-many.ground, many.parts).min(axis=0)
    mean = float(weight @ gap)
    spread = float(np.sqrt(weight @ (gap - mean) ** 2))
    contacts, held = drawn(stood, evidence, 200)
    field = -held.fold.ground.astype(np.float32)[:, None] - held.ground
    told = contacts.drawn(field, held.parts + held.fold.parts[:, None]).min(axis=0)
    assert float(gap.std()) > 1.08 * spread
    assert float(told.std()) == pytest.approx(spread, rel=0.12)
    assert float(told.mean()) == pytest.approx(mean, abs=0.25 * spread)
    # and the distance itself: after one step along the tangent its spread is half as large again
    wrong = held.fold.ground[contacts.extra][:, None] + held.ground[contacts.extra]
    chord = (1 - share)[:, None] * wrong[0] + share[:, None] * wrong[1]
    again = (down[:, None] - chord + wrong[2:]).min(axis=0)
    expected = float(weight @ least)
    assert float(again.mean()) == pytest.approx(expected, abs=2e-4)
    assert float(again.std()) == pytest.approx(float(np.sqrt(weight @ (least - expected) ** 2)), rel=0.15)


def test_a_distance_at_a_place_is_folded_in_by_the_formula_of_kriging(stood: Scene) -> None:
    """Expected error and its variance at the place read: -w C w r / S and w C w (1 - w C w / S), by hand."""
    one = string(PlanPoint(-1.4, 0.0), PlanPoint(1.4, 0.0), 0.094, at=1.4, blocks=0.2)
    evidence = gather_evidence(ByHand(strings=(one,)), stood.surface, place)
    assert evidence is not None
    contacts, errors = drawn(stood, evidence, 3000)
    reading = evidence.readings[0]
    own = float(of_functionals(PHONE, (reading.points,), (reading.weights,), (np.zeros(3),))[0, 0])
    missed, noise = reading.observed - reading.predicted, float(evidence.noise[0, 0])
    fold = errors.fold.ground[contacts.extra]
    assert float(-reading.weights @ fold) == pytest.approx(missed * own / (own + noise), abs=2e-4)
    left = -reading.weights @ errors.ground[contacts.extra]
    assert float(left.std()) == pytest.approx(np.sqrt(own * noise / (own + noise)), rel=0.1)


def test_a_mark_under_two_strings_is_off_for_both_and_cancels(stood: Scene) -> None:
    """A bar read at a mark on the crest, and a crossbar with its block on that mark: off the crest the slab
    lies lower by 8 % of the way, the bar reads that much more and the crossbar, in the middle, half as much
    less: the covariance of their errors is -1/2 (0.08 x 20 mm)^2 (1 - 2 / pi), half a half-normal's variance.
    """
    mark, other = along_crest(0.7), along_crest(-0.7)
    bar_ends = PlanPoint(mark.x - 1.4, 0.7), PlanPoint(mark.x + 1.4, 0.7)
    bar = string(*bar_ends, 0.09, at=1.4, placed=0.02, blocks=0.2)
    across = string(other, mark, 0.1, at=float(np.hypot(mark.x, 0.7)), placed=0.02)
    apart = replace(across, b=PlanPoint(mark.x + 0.1, 0.7))
    together, alone = (
        gather_evidence(
            ByHand(
                strings=(
                    bar,
                    x,
                )
            ),
            stood.surface,
            place,
        )
        for x in (across, apart)
    )
    assert together is not None and alone is not None
    expected = -0.5 * (0.08 * 0.02) ** 2 * (1 - 2 / np.pi)
    assert together.noise[0, 1] == pytest.approx(expected, rel=0.3)
    assert abs(alone.noise[0, 1]) < 0.4 * abs(expected)


def test_where_the_least_was_sought_must_be_on_the_string(stood: Scene) -> None:
    ends = along_crest(-0.7), along_crest(0.7)
    with pytest.raises(CrestcutError, match="between ends at"):
        gather_evidence(ByHand(strings=(string(*ends, 0.1, between=(0.2, 1.6)),)), stood.surface, place)
    near = gather_evidence(ByHand(strings=(string(*ends, 0.1, between=(0.1, 0.5)),)), stood.surface, place)
    assert near is not None and near.readings[0].along is not None
    share = near.readings[0].along[:, 0] * np.hypot(*np.subtract(place(ends[1]), place(ends[0])))
    assert 0.1 - 1e-9 <= share.min() and share.max() <= 0.5 + 1e-9
