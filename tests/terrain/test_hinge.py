"""The hinge and the step on planted parameters."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.base.grid import FloatArray
from crestcut.terrain.breaklines.fits import TRIAL_ROUNDING, TRIAL_STEP, TRIALS, trials
from crestcut.terrain.breaklines.hinge import (
    HALF_ALONG,
    NARROW,
    OF_BOW,
    OF_QUADRATIC,
    RISE,
    TINY,
    descend,
    linear_fit,
    step_basis,
)

LOOSE = np.zeros((2, 9))
PLANTED = np.array([0.1, -0.05, 0.02, -0.08, 0.03, 0.1, 0.2, 0.02, 0.03])


def model(n: FloatArray, along: FloatArray, p: FloatArray, step: bool) -> FloatArray:
    """Heights as the module's own text has them."""
    v = n - p[4] - p[5] * along - p[6] * along**2
    s = np.sqrt(v**2 + (RISE if step else p[7]) ** 2 + TINY**2)
    height: FloatArray = p[0] + p[1] * n + p[2] * along + p[3] * s + p[8] * along**2
    return height + 0.5 * p[7] * (1 + v / s) if step else height


def planted(step: bool, noise: float) -> tuple[FloatArray, FloatArray]:
    """Rows (n, l, z, 1) of a window with known parameters."""
    rng = np.random.default_rng(0)
    data = np.ones((900, 4))
    data[:, 0], data[:, 1] = (
        rng.uniform(-NARROW, NARROW, 900),
        rng.uniform(-HALF_ALONG, HALF_ALONG, 900),
    )
    data[:, 2] = model(data[:, 0], data[:, 1], PLANTED, step) + noise * rng.standard_normal(900)
    return data, PLANTED


@pytest.mark.parametrize("step", [False, True])
def test_a_row_of_trials_finds_the_break(step: bool) -> None:
    data, p = planted(step, 0.0)
    found = trials(data, len(data), -(TRIALS // 2) * TRIAL_STEP, TRIAL_STEP, TRIALS, TRIAL_ROUNDING)
    assert found[int(step)].place == pytest.approx(p[4], abs=0.02)


def test_a_step_comes_back_from_9_mm_and_a_tenth_of_a_radian_off() -> None:
    data, p = planted(True, 0.0)
    a = np.empty((9, 9))
    fitted = np.array([0, 0, 0, 0, p[4] + 0.009, p[5] - 0.1, p[6], RISE, 0.0])
    flat = linear_fit(data, len(data), 0, fitted, 0.0).rss
    _, *fitted[[0, 1, 2, 3, 8, 7]], _ = linear_fit(data, len(data), 2, fitted, 0.0)
    rss = descend(data, len(data), 1e-12, LOOSE, fitted, a)
    assert np.sqrt(rss / len(data)) < 5e-5
    assert fitted == pytest.approx(p, abs=3e-3)
    assert rss < flat / 100


@pytest.mark.parametrize("delta", [-0.006, 0.002, 0.010])
def test_a_step_beside_a_held_hinge_says_how_far_its_break_lies(delta: float) -> None:
    """delta = -h / 2 e to first order, and h's information is what numpy's inverse has."""
    data, p = planted(False, 0.0)
    data[:, 2] = model(data[:, 0], data[:, 1], PLANTED + delta * np.eye(9)[4], False)
    data[:, 3] = np.random.default_rng(1).integers(1, 5, len(data))
    fit = linear_fit(data, len(data), 2, p, 0.0)
    assert -0.5 * fit.h / p[3] == pytest.approx(delta, rel=0.15)
    n, along, _, w = data.T
    v = n - p[4] - p[5] * along - p[6] * along**2
    s = np.sqrt(v**2 + p[7] ** 2 + TINY**2)
    design = np.column_stack([np.ones_like(n), n, along, s, along**2, 0.5 * (1 + v / s)])
    inverse = np.linalg.inv(design.T * w @ design)
    assert fit.sure == pytest.approx(1 / inverse[5, 5], rel=1e-4)


def test_trial_breaks_are_brute_force_least_squares() -> None:
    """One factor for hinge and step alike against numpy's own least squares for each."""
    data, _ = planted(True, 0.004)
    data[:, 3] = np.random.default_rng(1).integers(1, 5, len(data))
    found = trials(data, len(data), 0.0123, 1.0, 1, 0.006)
    n, along, z, w = data.T
    s = np.hypot(n - 0.0123, 0.006)
    columns = [np.ones_like(n), n, along, s, 0.5 * (1 + (n - 0.0123) / s)]
    for kind in (0, 1):
        design = np.column_stack(columns[: 4 + kind]) * np.sqrt(w)[:, None]
        x, rss, *_ = np.linalg.lstsq(design, z * np.sqrt(w))
        assert found[kind] == pytest.approx([rss[0], 0.0123, x[3 + kind]], rel=1e-6)


def test_quadratics_with_and_without_twist_are_brute_force_least_squares() -> None:
    data, p = planted(True, 0.004)
    n, along, z, _ = data.T
    columns = [np.ones_like(n), n, along, n * n, along**2, n * along]
    for kind, size in ((OF_QUADRATIC, 6), (OF_BOW, 5)):
        rss = np.linalg.lstsq(np.column_stack(columns[:size]), z)[1][0]
        assert linear_fit(data, len(data), kind, p, 0.0).rss == pytest.approx(rss, rel=1e-5)


def test_derivatives_are_those_of_the_model() -> None:
    p = np.array([0.1, -0.05, 0.02, -0.08, 0.03, 0.1, 0.2, 0.012, 0.03])
    f, unused = np.empty(9), np.empty(9)
    value = step_basis(0.05, -0.1, p, f)
    assert value == pytest.approx(float(model(np.array([0.05]), np.array([-0.1]), p, True)[0]), abs=1e-12)
    for k in range(9):
        h = np.zeros(9)
        h[k] = 1e-6
        rise = step_basis(0.05, -0.1, p + h, unused) - step_basis(0.05, -0.1, p - h, unused)
        assert rise / 2e-6 == pytest.approx(f[k], abs=1e-6)
