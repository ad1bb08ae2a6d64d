"""The slab behind a scan: exact scans come back, what is no slab is said to be none, and too little to judge
is left as it was scanned."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.chance.assess import assess_chance
from crestcut.chance.conditioned import given
from crestcut.contact.records import Passage
from crestcut.job.records import Wanted
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.error.priors import prior_for
from crestcut.terrain.readings.records import Evidence, Reading
from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.behind import TOO_LITTLE, slab_behind
from scenes import STRAIGHT, belly, crest, scene, stand, surface_of, vehicle
from slab_scans import field

SCANNERS = ("phone", "terrestrial", None)
FRAME = GridFrame((-1.5, -0.9), 0.0, 0.01, (181, 301))


def model(scanner: str | None) -> ErrorModel:
    prior, phrase = prior_for(scanner)
    known = Known.UNNAMED if scanner is None else Known.NAMED
    return ErrorModel(
        0.002, prior.patch, prior.patch_length, prior.warp, prior.warp_length, phrase, phrase, phrase,
        known=known,
    )  # fmt: skip


def scanned(rough: FloatArray, grade: float = 0.08) -> Surface:
    """A crest along v with ``rough`` (ny, nx) on it, its line found by the fit."""
    plain = surface_of(crest(grade), FRAME)
    height = plain.height.like(plain.height.values + rough)
    at = np.column_stack([np.full(37, 1.5), np.linspace(0.0, 1.8, 37)])
    line = Break(at, np.zeros(37), -grade, 0.0, 0.0, 0.002)
    return replace(plain, height=height, top=height, breaks=(line,))


def worst_off(found: HeightGrid, true: FloatArray, edge: int = 5) -> float:
    """Most by which heights are wrong about a plane, m: a plane moves no clearance."""
    wrong = (found.values - true)[edge:-edge, edge:-edge]
    v, u = np.mgrid[0 : wrong.shape[0], 0 : wrong.shape[1]]
    plane = np.column_stack([np.ones(wrong.size), u.ravel(), v.ravel()])
    return float(np.abs(wrong.ravel() - plane @ np.linalg.lstsq(plane, wrong.ravel())[0]).max())


@pytest.mark.parametrize("scanner", SCANNERS)
def test_an_exact_scan_comes_back_whatever_scanner_is_named(scanner: str | None) -> None:
    true = field(FRAME, 0.0003, 0.8, 1)
    surface = scanned(true)
    slab = slab_behind(surface, model(scanner))
    assert worst_off(slab.height, surface.height.values) < 0.0003
    assert slab.scanned is surface.height and slab.error.slab is not None
    assert slab.error.slab.spread < 0.0006


@pytest.mark.parametrize("scanner", SCANNERS)
@pytest.mark.parametrize("what", ["lawn", "rutted gravel"])
def test_what_is_no_slab_is_said_to_be_none(what: str, scanner: str | None) -> None:
    # as fitted: blades and stones are averaged over some centimetres, tussocks and ruts stay
    half = 0.12 if what == "lawn" else 0.25
    surface = scanned(field(FRAME, 0.010, half, 3) + field(FRAME, 0.003, 0.05, 4))
    split = slab_behind(surface, model(scanner)).error.slab.split  # type: ignore[union-attr]
    assert split.beyond_concrete and split.curvature > 0.010


@pytest.mark.parametrize("scanner", SCANNERS)
@pytest.mark.parametrize("seed", range(2))
def test_a_wavy_slab_is_a_slab_unless_a_tripod_is_named(scanner: str | None, seed: int) -> None:
    rough = field(FRAME, 0.0035, 0.4, 10 * seed + 5) + field(FRAME, 0.005, 0.4, 10 * seed + 6)
    split = slab_behind(scanned(rough + field(FRAME, 0.0013, 0.05, 7)), model(scanner)).error.slab.split  # type: ignore[union-attr]
    # of a tripod's scan it is wavier than concrete, which is said, or the scan is known to be no tripod's
    if scanner == "terrestrial":
        assert split.beyond_concrete or split.scan > 0.003
    else:
        assert not split.beyond_concrete


def test_of_what_is_no_slab_nothing_is_claimed() -> None:
    car = vehicle(belly(0.30))  # clears by far
    flat = scene(lambda x, y: 0.0 * x, car, start=(-3.0, 0.0), end=(3.0, 0.0), cell=0.02)
    frame = flat.surface.height.frame
    said = {}
    for sd in (0.001, 0.012):
        height = flat.surface.height.like(field(frame, sd, 0.2, 2))
        surface = slab_behind(replace(flat.surface, height=height, top=height), model("phone"))
        stood = stand(car, STRAIGHT, flat.line, surface)
        said[sd] = assess_chance(stood.passage, Wanted(), draws=20)
    assert said[0.001].verdict == "clears"
    assert said[0.012].verdict == "cannot tell" and any("no slab" in r for r in said[0.012].reasons)


@pytest.mark.parametrize("size", [(0.02, 0.02), (0.1, 0.5), (0.3, 0.2)])
def test_a_window_too_small_for_the_trend_stays_as_scanned_and_says_so(size: tuple[float, float]) -> None:
    frame = GridFrame((0.0, 0.0), 0.0, 0.01, (round(size[1] / 0.01) + 1, round(size[0] / 0.01) + 1))
    surface = surface_of(lambda x, y: 0.05 * x, frame)
    left = slab_behind(surface, model("phone"))
    assert left.notes == (TOO_LITTLE,) and left.error == model("phone") and left.scanned is None
    assert np.array_equal(left.height.values, surface.height.values)


@pytest.mark.parametrize("size", [(0.4, 0.4), (0.55, 0.55), (3.0, 0.2)])
def test_a_window_with_no_room_for_features_is_judged(size: tuple[float, float]) -> None:
    frame = GridFrame((0.0, 0.0), 0.0, 0.01, (round(size[1] / 0.01) + 1, round(size[0] / 0.01) + 1))
    surface = surface_of(lambda x, y: 0.05 * x, frame)
    slab = slab_behind(surface, model("phone"))
    assert slab.error.slab is not None
    assert np.abs(slab.height.values - surface.height.values).max() < 0.0005


def reading(surface: Surface, at: tuple[float, float], up: float) -> Evidence:
    """Three heights in a row, the middle one so much over the others than the surface says."""
    points = np.array(at) + np.array([[-0.6, 0.0], [0.0, 0.0], [0.6, 0.0]])
    weights = np.array([-0.5, 1.0, -0.5])
    predicted = float(weights @ surface.height.sample(points))
    said = Reading("[[string]] 1", "down", points, weights, np.full(3, 1e-4), predicted, predicted + up)
    return Evidence((said,), np.array([[0.0005**2]]))


def test_a_reading_moves_the_mean_towards_it_and_narrows_the_draws() -> None:
    car = vehicle(belly(0.14))
    flat = scene(crest(0.05), car, start=(-2.2, 0.0), end=(2.2, 0.0), cell=0.02)
    frame = flat.surface.height.frame
    height = flat.surface.height.like(flat.surface.height.values + field(frame, 0.005, 0.4, 9))
    slab = slab_behind(replace(flat.surface, height=height, top=height), model("phone"))
    stood = stand(car, STRAIGHT, flat.line, slab)
    evidence = reading(slab, (-0.4, 0.1), 0.004)
    (asked,) = evidence.readings

    def sums(s: Surface) -> tuple[float, float]:
        assert s.error.slab is not None
        drawn = asked.weights @ s.error.slab.at_site(asked.points)
        return float(asked.weights @ s.height.sample(asked.points)), float(drawn.std())

    passage = Passage(car, slab, stood.ride, stood.before)
    told = given(passage, evidence, 0).surface
    (mean, wide), (moved, narrow) = sums(slab), sums(told)
    # the Kalman gain of one reading of 0.5 mm
    gain = wide**2 / (wide**2 + 0.0005**2)
    assert moved - mean == pytest.approx(0.004 * gain, abs=0.0004)
    assert narrow == pytest.approx(wide * np.sqrt(1 - gain), rel=0.2) and narrow < 0.5 * wide


def test_a_reading_says_the_same_whatever_else_the_vehicle_passes_over() -> None:
    """Along the middle of the line alone, and with all that a driver may do."""
    car = vehicle(belly(0.14))
    flat = scene(crest(0.05), car, start=(-2.2, 0.0), end=(2.2, 0.0), cell=0.02)
    height = flat.surface.height.like(
        flat.surface.height.values + field(flat.surface.height.frame, 0.005, 0.4, 9)
    )
    slab = slab_behind(replace(flat.surface, height=height, top=height), model("phone"))
    evidence, told = reading(slab, (-0.4, 0.1), 0.004), []
    for travel in (STRAIGHT, replace(STRAIGHT, wander=0.05, ways=("forward", "turned"))):
        stood = stand(car, travel, flat.line, slab)
        told.append(given(Passage(car, slab, stood.ride, stood.before), evidence, 0).surface)
    one, other = (t.height.values for t in told)
    assert np.nanmax(np.abs(one - slab.height.values)) > 0.001
    assert one == pytest.approx(other, abs=2e-6, nan_ok=True)


def test_readings_are_refused_where_the_slab_could_not_be_judged() -> None:
    car = vehicle(belly(0.14))
    flat = scene(crest(0.05), car, start=(-2.2, 0.0), end=(2.2, 0.0), cell=0.02)
    left = replace(flat.surface, error=model("phone"))
    with pytest.raises(CrestcutError, match="too little of the slab is measured"):
        given(Passage(car, left, flat.ride, flat.before), reading(left, (0.0, 0.0), 0.0), 0)
