"""Tyres near a break: the interval widens by what they may give, and it is said."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.assess import assess_chance, chance_of
from crestcut.chance.draws import NO_SOFT_TYRES, draw_clearances, nearest_break, soft_tyres
from crestcut.job.records import Wanted
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.loads import APEX, APEX_GRADE
from scenes import Scene, belly, crest, scene, vehicle

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")


@pytest.fixture(scope="module")
def plain() -> Scene:
    car = vehicle(replace(belly(), within=0.002))
    return scene(crest(0.08), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)


def test_a_break_is_found_with_its_distance_and_size(plain: Scene) -> None:
    uv = plain.surface.height.frame.to_grid(np.array([[0.07, 0.0]]))[0]
    distance, grade = nearest_break(plain.vehicle, plain.surface, uv, np.array([1.0, 0.0]))
    assert distance == pytest.approx(0.07, abs=0.02) and grade == pytest.approx(0.16, rel=0.08)
    far = plain.surface.height.frame.to_grid(np.array([[0.6, 0.0]]))[0]
    assert nearest_break(plain.vehicle, plain.surface, far, np.array([1.0, 0.0]))[1] < 0.01


def test_hung_up_between_the_wheels_the_disk_is_fair(plain: Scene) -> None:
    assert soft_tyres(plain.passage).said == ()


def test_wheels_on_breaks_widen_the_interval_downwards_and_are_named() -> None:
    # a low part right over the rear wheels' station: it is worst when the rear tyres stand near a crest
    low = replace(belly(clearance=0.02, half=0.2, back=0.02, front=0.12), name="tail box", within=0.002)
    s = scene(crest(0.08), car=vehicle(low), start=(-3.6, 0), end=(3.6, 0), cell=0.02)
    tyres = soft_tyres(s.passage)
    assert any("rear left" in w for w in tyres.said)
    # the part is carried nearly whole by the rear axle: the apex figure in proportion to the break
    assert 0.5 * APEX * 0.16 / APEX_GRADE < tyres.lower < 1.1 * APEX * 0.16 / APEX_GRADE
    chance = assess_chance(s.under(PHONE), Wanted(), draws=40)
    assert any("rigid disk" in r for r in chance.reasons)
    found = draw_clearances(s.under(PHONE), draws=40)
    assert found is not None
    disk = chance_of(replace(found, tyres=NO_SOFT_TYRES), s.under(PHONE), Wanted())
    wider = np.array(chance.interval) - np.array(disk.interval)
    assert wider == pytest.approx([-tyres.lower, tyres.higher], abs=1e-9)
    assert chance.least_clearance == disk.least_clearance
