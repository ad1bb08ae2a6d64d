"""Hand measurements that cannot be: one clear line each, or 'cannot tell' with the reason."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.base.errors import CrestcutError
from crestcut.chance.assess import assess_chance
from crestcut.chance.witness import witness_evidence
from crestcut.job.records import ByHand, LevelReading, PlanPoint, Point, StringReading, Wanted, Witness
from crestcut.scan.records import Frame, Scan, ScanFile
from crestcut.terrain.error.estimate import estimate_error
from crestcut.terrain.readings.evidence import gather_evidence
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.records import AS_MEASURED
from scenes import Scene, belly, crest, scanned_with, scene, vehicle

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")


@pytest.fixture(scope="module")
def stood() -> Scene:
    """A belly that clears a crest by some 52 mm."""
    car = vehicle(replace(belly(clearance=0.14, half=0.25), within=0.002))
    s = scene(crest(0.06), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
    assert s.before.worst is not None and s.before.worst.gap > 0.045
    return s


def place(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def string(a: float, b: float, at: float | None, blocks: float, down: float, y: float = 0.0) -> StringReading:
    return StringReading(PlanPoint(a, y), PlanPoint(b, y), at, blocks, down, 0.001, 0.0)


@pytest.mark.parametrize(
    ("reading", "says"),
    [
        (string(-1.4, 30.0, None, 0.18, 0.06), "no ground"),
        (string(-1.4, 1.4, None, 0.02, 0.06), "would touch"),
        (string(-1.4, 1.4, 3.0, 0.18, 0.06), "at is 3.000 m"),
    ],
)
def test_strings_outside_the_scan_touched_by_the_slab_or_read_beyond_their_end(
    stood: Scene, reading: StringReading, says: str
) -> None:
    surface = replace(stood.surface, error=PHONE)
    with pytest.raises(CrestcutError, match=says) as caught:
        gather_evidence(ByHand(strings=(reading,)), surface, place)
    assert "[[string]] 1" in str(caught.value) and "\n" not in str(caught.value)


def test_a_level_outside_the_scan(stood: Scene) -> None:
    level = LevelReading(((PlanPoint(0.0, 0.0), 1.2), (PlanPoint(40.0, 0.0), 1.3)), 0.002, 0.0)
    with pytest.raises(CrestcutError, match="point 2"):
        gather_evidence(ByHand(levels=(level,)), stood.surface, place)


def test_a_scrape_where_the_model_says_50_mm_clear_is_not_believed_and_named(stood: Scene) -> None:
    touched = Witness("belly", PlanPoint(1.4, 0.0), "as measured", touched=True)
    evidence = witness_evidence([touched], stood.vehicle, stood.surface, stood.line, (AS_MEASURED,), place)
    chance = assess_chance(stood.under(PHONE), Wanted(), draws=60, evidence=evidence)
    assert chance.verdict == "cannot tell"
    assert any("[[witness]] 1" in r and "contradicts" in r for r in chance.reasons)


def test_a_string_that_contradicts_the_scan_is_named(stood: Scene) -> None:
    surface = replace(stood.surface, error=PHONE)
    evidence = gather_evidence(ByHand(strings=(string(-1.4, 1.4, 1.4, 0.18, 0.16),)), surface, place)
    told = replace(stood, surface=surface).passage
    chance = assess_chance(scanned_with(told, PHONE), Wanted(), draws=60, evidence=evidence)
    assert chance.verdict == "cannot tell" and any("[[string]] 1" in r for r in chance.reasons)


@pytest.mark.parametrize("guessed", [True, False])
def test_photogrammetry_without_scale_decides_nothing(stood: Scene, guessed: bool) -> None:
    height = stood.surface.height
    xyz = np.column_stack([height.frame.node_xy().reshape(-1, 2), height.values.ravel()])
    file = ScanFile(Path("model.obj"), "obj", "", len(xyz), 0, None, "", "", unit_guessed=guessed)
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    scan = Scan(xyz, np.zeros(len(xyz), np.int16), frame, (file,))
    error = estimate_error(scan, stood.surface.height, "photogrammetry")
    chance = assess_chance(stood.under(error), Wanted(), draws=60)
    assert (chance.verdict == "cannot tell") == guessed
    assert any("no scale" in r for r in chance.reasons) == guessed
