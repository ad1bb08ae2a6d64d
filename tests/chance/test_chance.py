"""Chance: sure where nothing is uncertain, bias taken off, and no confidence from nothing."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.base.grid import GridFrame
from crestcut.chance.assess import assess_chance, in_use_allowances, in_words, one_in
from crestcut.chance.drawn_errors import moved_by, white_length
from crestcut.chance.planned import smoothed_below
from crestcut.job.records import Wanted
from crestcut.terrain.readings.condition import Conditioned
from crestcut.terrain.readings.records import Evidence, Reading
from crestcut.terrain.records import ErrorModel
from scenes import Scene, belly, crest, scene, surface_of, vehicle

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")
SURE = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.35, "none", "none", "none")


@pytest.fixture(scope="module")
def stood() -> Scene:
    return scene(
        crest(0.08), car=vehicle(replace(belly(), within=0.002)), start=(-3.2, 0), end=(3.2, 0), cell=0.02
    )


def assess(s: Scene, error: ErrorModel, **more):  # type: ignore[no-untyped-def]
    return assess_chance(s.under(error), Wanted(), draws=40, **more)


def test_without_errors_it_is_the_swept_clearance(stood: Scene) -> None:
    exact = replace(stood, vehicle=vehicle(replace(belly(), within=0.0)))
    sure = replace(
        exact.surface, standard_error=exact.surface.height.like(np.zeros(exact.surface.height.frame.shape))
    )
    chance = assess(replace(exact, surface=sure), SURE)
    assert stood.before.worst is not None
    assert chance.least_clearance == pytest.approx(stood.before.worst.gap, abs=1e-6)
    assert chance.chance_of_contact in (0.0, 1.0) and chance.spread < 1e-6


def test_the_share_of_the_scan_is_none_of_an_exact_scan_and_all_beside_an_exact_vehicle(stood: Scene) -> None:
    height = stood.surface.height
    exact = replace(stood.surface, standard_error=height.like(np.zeros(height.frame.shape)))
    assert assess(replace(stood, surface=exact), SURE).scan_share == pytest.approx(0.0, abs=1e-6)
    assert assess(replace(stood, vehicle=vehicle(replace(belly(), within=0.0))), PHONE).scan_share > 0.99
    both, own = assess(stood, PHONE), assess(replace(stood, surface=exact), SURE)
    assert 1.0 - both.scan_share == pytest.approx((own.spread / both.spread) ** 2, abs=0.05)  # of variance
    assert 0.1 < both.scan_share < 0.99


def test_same_seed_same_answer_and_more_error_more_spread(stood: Scene) -> None:
    assert assess(stood, PHONE) == assess(stood, PHONE)
    assert assess(stood, PHONE).spread > assess(stood, replace(PHONE, warp=0.002)).spread


def test_a_prior_is_named_and_in_use_is_lower(stood: Scene) -> None:
    today = assess(stood, replace(PHONE, warp_source="prior for phone scans"))
    used = assess(stood, PHONE, allowances=in_use_allowances(Wanted()))
    assert any("not measured" in r for r in today.reasons)
    assert used.least_clearance < today.least_clearance


def reading(observed: float, noise: float = 0.001) -> Evidence:
    ends = np.array([[-1.4, 0.0], [1.4, 0.0], [0.0, 0.0]])
    one = Reading(
        "[[string]] 1", "the distance", ends, np.array([0.5, 0.5, -1.0]), np.zeros(3), -0.012, observed
    )
    return Evidence((one,), np.array([[noise**2]]))


def test_a_string_narrows_and_a_wild_one_is_named(stood: Scene) -> None:
    plain, held, wild = (
        assess(stood, PHONE),
        assess(stood, PHONE, evidence=reading(-0.013)),
        assess(stood, PHONE, evidence=reading(0.07)),
    )
    assert held.spread < plain.spread
    assert wild.verdict == "cannot tell" and any("[[string]] 1" in r for r in wild.reasons)


def test_words_and_tail() -> None:
    assert in_words(1 / 30) == "about 1 in 30 that it touches"
    assert [one_in(1 / n) for n in (2, 3, 7, 99, 104, 787)] == [2, 3, 7, 99, 100, 790]
    assert one_in(0.9) == 2  # no chance is told as 1 in 1
    assert in_words(0.0) == "less than 1 in 1,000 that it touches"
    assert smoothed_below(np.random.default_rng(0).normal(0, 1, 4000), -1.6449) == pytest.approx(
        0.05, abs=0.012
    )


def test_driven_slower_what_comes_of_pace_is_gone_and_nothing_else_whatever_it_is_called() -> None:
    """A brake hose that hangs lower is an allowance of somebody's own: it hangs there at any pace."""
    wanted = Wanted(in_use=(("brake hose", 0.006), ("braking on the crest", 0.001)))
    used, slowly = in_use_allowances(wanted), in_use_allowances(wanted, slowly=True)
    assert [a for a in used if a not in slowly] == [
        ("bounce above walking pace", 0.008, "common practice, no source"),
        ("braking on the crest", 0.001, "job file"),
    ]


def test_neighbouring_heights_share_the_points_of_half_the_square_that_makes_one() -> None:
    """A height known ten times better than a point holds 100 of them; of 10,000 a square metre those lie on a
    square of 0.1 m."""
    frame = GridFrame((0.0, 0.0), 0.0, 0.01, (101, 201))
    flat = surface_of(lambda x, y: 0 * x, frame)
    area = flat.height.values.size * 0.01**2

    def length(white: float, own: float, density: float) -> float:
        error = ErrorModel(white, 0.0, 0.1, 0.0, 0.4, "", "", "")
        known = flat.height.like(np.full(frame.shape, own))
        return white_length(
            replace(flat, error=error, standard_error=known, points_used=round(density * area))
        )

    assert length(0.003, 0.0003, 10_000) == pytest.approx(0.05, rel=1e-3)
    assert length(0.003, 0.0003, 40_000) == pytest.approx(0.025, rel=1e-3)
    assert length(0.006, 0.0003, 10_000) == pytest.approx(0.1, rel=1e-3)
    # no less than a cell, no more than the scan's patches are large
    assert length(0.0003, 0.0003, 40_000) == 0.01 and length(0.03, 0.0003, 1_000) == 0.15


def test_errors_moved_by_readings_lie_about_their_mean_which_goes_into_the_fold() -> None:
    rng = np.random.default_rng(2)
    ground, parts, z = (rng.normal(size=(n, 40)) for n in (5, 3, 2))
    ground = ground.astype(np.float32)
    gains = rng.normal(size=(5, 2)), rng.normal(size=(3, 2))
    told = Conditioned(np.zeros(5), np.zeros(3), (), *gains)
    moved, lifted, fold = moved_by(z, told, ground, parts)
    for rest, mean, whole in (
        (moved, fold.ground, ground + gains[0] @ z), (lifted, fold.parts, parts + gains[1] @ z)
    ):  # fmt: skip
        assert rest.mean(axis=1) == pytest.approx(0.0, abs=1e-6)
        assert rest + mean[:, None] == pytest.approx(whole, abs=1e-5)
