"""A gap felt under the standing vehicle settles what a scan cannot; one that cannot be is named."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.chance import witness
from crestcut.chance.assess import assess_chance
from crestcut.chance.witness import witness_evidence
from crestcut.job.records import PlanPoint, Point, Wanted, Witness
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.records import AS_MEASURED
from scenes import Scene, belly, crest, scene, vehicle

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")


@pytest.fixture(scope="module")
def stood() -> Scene:
    car = vehicle(replace(belly(half=0.25), within=0.002))
    return scene(crest(0.08), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)


def place(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def seen(s: Scene, **said: object):  # type: ignore[no-untyped-def]
    witness = Witness("belly", PlanPoint(1.4, 0.0), "as measured", **said)  # type: ignore[arg-type]
    evidence = witness_evidence([witness], s.vehicle, s.surface, s.line, (AS_MEASURED,), place)
    return evidence, assess_chance(s.under(PHONE), Wanted(), draws=60, evidence=evidence)


def test_a_felt_gap_moves_and_narrows(stood: Scene) -> None:
    plain = assess_chance(stood.under(PHONE), Wanted(), draws=60)
    evidence, chance = seen(stood, gap=0.012)
    assert evidence is not None and stood.before.worst is not None
    assert evidence.readings[0].predicted == pytest.approx(stood.before.worst.gap, abs=0.002)
    assert chance.spread < 0.75 * plain.spread
    assert (
        chance.least_clearance > plain.least_clearance and abs(chance.least_clearance - 0.012) < chance.spread
    )


def test_a_bound_moves_one_way(stood: Scene) -> None:
    plain = assess_chance(stood.under(PHONE), Wanted(), draws=60)
    assert seen(stood, touched=True)[1].least_clearance < plain.least_clearance


def test_what_cannot_be_is_named(stood: Scene) -> None:
    chance = seen(stood, gap=0.080)[1]
    assert chance.verdict == "cannot tell" and "[[witness]] 1" in chance.reasons[0]


def test_an_unknown_part_is_refused(stood: Scene) -> None:
    with pytest.raises(CrestcutError, match="no part"):
        witness_evidence(
            [Witness("sump", PlanPoint(0, 0), "as measured", gap=0.0)],
            stood.vehicle,
            stood.surface,
            stood.line,
            (AS_MEASURED,),
            place,
        )


def test_boards_of_one_sheet_share_their_error_and_others_do_not(
    stood: Scene, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One sheet under all wheels is wrong by its own error, of two each by its share of the weights."""
    held, sd = np.array([0.001, 0.0, 0.002, 0.0]), np.array([0.0, 0.0004, 0.0, 0.0])
    monkeypatch.setattr(witness, "bridging", lambda *_: (held, sd))
    weights, place = np.array([0.3, 0.2, 0.4, 0.1]), np.zeros(5)
    for boards, shares in (([0.018] * 4, [1.0]), ([0.018, 0.018, 0.0, 0.012], [0.5, 0.1])):
        added, variance = witness.boards_add(stood.vehicle, stood.surface, place, weights, np.array(boards))
        assert added == pytest.approx(0.3 * 0.001 + 0.4 * 0.002)
        own = sum((0.0005 * share) ** 2 for share in shares) + (0.2 * 0.0004) ** 2
        assert variance == pytest.approx(own, rel=1e-12)
    assert witness.boards_add(stood.vehicle, stood.surface, place, weights, None) == (0.0, 0.0)
