"""Draws of error fields: their covariance is the stated one, and readings pull them where they must go."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.terrain.error.covariance import between, matern32, of_functionals
from crestcut.terrain.error.draws import moved, towards
from crestcut.terrain.records import ErrorModel
from simulated import draw_fields

FRAME = GridFrame((5.0, -3.0), 0.4, 0.02, (40, 70))
MODEL = ErrorModel(0.006, 0.0013, 0.1, 0.004, 0.35, "", "", "")
NODES = np.array([(3, 4), (3, 6), (3, 20), (20, 64), (36, 33), (39, 0)])


def at_nodes(model: ErrorModel, error: HeightGrid | None, count: int, seed: int = 1) -> np.ndarray:
    return np.array([f[NODES[:, 0], NODES[:, 1]] for f in draw_fields(model, FRAME, error, seed, count)])


def test_the_length_is_where_the_covariance_halves() -> None:
    assert matern32(0.35, 0.35) == pytest.approx(0.5, abs=1e-12)
    assert matern32(0.0, 0.35) == 1.0


@pytest.mark.parametrize(
    "model",
    [MODEL, ErrorModel(0, 0.002, 0.1, 0, 0.4, "", "", ""), ErrorModel(0, 0, 0.1, 0.005, 1.0, "", "", "")],
)
def test_covariance_of_the_draws(model: ErrorModel) -> None:
    count = 3000
    drawn = at_nodes(model, None, count)
    want = between(
        model, FRAME.node_xy()[NODES[:, 0], NODES[:, 1]], FRAME.node_xy()[NODES[:, 0], NODES[:, 1]]
    )
    got = drawn.T @ drawn / count
    # a sample covariance of Gaussians has this standard error (Isserlis)
    error = np.sqrt((want**2 + np.outer(np.diag(want), np.diag(want))) / count)
    assert (np.abs(got - want) < 4.2 * error).all()


def test_white_part_has_the_standard_error_of_every_node() -> None:
    spread = HeightGrid(FRAME, np.linspace(0.0002, 0.002, 40 * 70).reshape(40, 70))
    nothing = ErrorModel(0.006, 0.0, 0.1, 0.0, 0.4, "", "", "")
    drawn = np.array(list(draw_fields(nothing, FRAME, spread, 2, 1500)))
    assert drawn.std(axis=0) == pytest.approx(spread.values, rel=0.10)


def test_same_seed_same_bytes_and_another_seed_another_field() -> None:
    first, again, other = (at_nodes(MODEL, None, 3, seed) for seed in (7, 7, 8))
    assert first.tobytes() == again.tobytes() and not np.allclose(first, other)


def test_no_error_no_field() -> None:
    assert not at_nodes(ErrorModel(0, 0, 0.1, 0, 0.4, "", "", ""), None, 2).any()


def test_not_measured_adds_no_white_noise() -> None:
    spread = HeightGrid(FRAME, np.full(FRAME.shape, np.nan))
    assert np.isfinite(at_nodes(MODEL, spread, 2)).all()


def test_covariance_of_sums_is_the_brute_force_one() -> None:
    rng = np.random.default_rng(4)
    points = tuple(rng.uniform(0, 2, (k, 2)) for k in (1, 3, 4))
    weights = tuple(rng.normal(size=k) for k in (1, 3, 4))
    errors = tuple(np.full(k, 0.001) for k in (1, 3, 4))
    every = np.concatenate(points)
    rows = np.zeros((3, 8))
    for i, (start, w) in enumerate(zip((0, 1, 4), weights, strict=True)):
        rows[i, start : start + len(w)] = w
    full = between(MODEL, every, every) + 0.001**2 * np.eye(8)
    assert of_functionals(MODEL, points, weights, errors) == pytest.approx(
        rows @ full @ rows.T, rel=1e-9, abs=1e-15
    )


def test_a_draw_moved_by_exact_readings_agrees_with_them_and_keeps_the_posterior_spread() -> None:
    """Matheron's rule against the closed form of Gaussian conditioning."""
    xy = FRAME.node_xy()[NODES[:, 0], NODES[:, 1]]
    points, weights = [xy[:1], xy[[2, 4]]], [np.ones(1), np.array([0.5, 0.5])]
    rows = np.zeros((2, 6))
    rows[0, 0], rows[1, [2, 4]] = 1, 0.5
    own = of_functionals(MODEL, tuple(points), tuple(weights), (np.zeros(1), np.zeros(2)))
    gain = towards(MODEL, xy, points, weights) @ np.linalg.inv(own)
    read = np.array([0.003, -0.002])
    drawn = at_nodes(MODEL, None, 3000)
    after = np.array([moved(f, gain, read - rows @ f) for f in drawn])
    assert after @ rows.T == pytest.approx(np.broadcast_to(read, (3000, 2)), abs=1e-12)
    prior = between(MODEL, xy, xy)
    assert np.cov(after.T) == pytest.approx(
        prior - gain @ own @ gain.T, abs=4.2 * prior[0, 0] * np.sqrt(2 / 3000)
    )
    assert after.mean(axis=0) == pytest.approx(gain @ read, abs=4.2 * np.sqrt(prior[0, 0] / 3000))


@given(st.floats(-50, 50), st.floats(-50, 50), st.floats(-3.1, 3.1))
def test_covariance_does_not_care_where_the_slab_lies(x: float, y: float, angle: float) -> None:
    places = np.random.default_rng(0).uniform(0, 3, (5, 2))
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    elsewhere = places @ turn.T + [x, y]
    assert between(MODEL, elsewhere, elsewhere) == pytest.approx(
        between(MODEL, places, places), rel=1e-6, abs=1e-12
    )
