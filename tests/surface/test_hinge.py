"""The hinge and the step on planted parameters."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.surface.fits import TRIAL_ROUNDING, TRIAL_STEP, TRIALS, trials
from crestcut.surface.hinge import HALF_ALONG, NARROW, RISE, basis, descend, linear_fit

LOOSE = np.zeros((2, 9))


def planted(step: bool, noise: float) -> tuple[np.ndarray, np.ndarray]:
    """Rows (n, l, z, 1) of a window with known parameters."""
    rng = np.random.default_rng(0)
    p = np.array([0.1, -0.05, 0.02, -0.08, 0.03, 0.1, 0.2, 0.02 if step else 0.012, 0.03])
    data = np.ones((900, 4))
    data[:, 0], data[:, 1] = (
        rng.uniform(-NARROW, NARROW, 900),
        rng.uniform(-HALF_ALONG, HALF_ALONG, 900),
    )
    f = np.empty(9)
    data[:, 2] = [basis(n, along, p, step, f) for n, along in data[:, :2]] + noise * rng.standard_normal(900)
    return data, p


@pytest.mark.parametrize("step", [False, True])
def test_planted_parameters_come_back(step: bool) -> None:
    """From where a row of trial breaks puts it, 9 mm and 0.1 rad off, to the parameters themselves."""
    data, p = planted(step, 0.0)
    found, a, x = np.zeros((2, 3)), np.empty((9, 9)), np.empty(6)
    trials(data, len(data), -(TRIALS // 2) * TRIAL_STEP, TRIAL_STEP, TRIALS, TRIAL_ROUNDING, found)
    assert found[int(step), 1] == pytest.approx(p[4], abs=0.02)
    fitted = np.array([0, 0, 0, 0, found[int(step), 1], p[5], p[6], RISE, 0.0])
    flat = linear_fit(data, len(data), 0, fitted, 0.0, x)
    linear_fit(data, len(data), 2 if step else 1, fitted, 0.0, x)
    fitted[[0, 1, 2, 3, 8]] = x[:5]
    fitted[7] = x[5] if step else 0.005
    rss = descend(data, len(data), step, 1e-12, LOOSE, fitted, a)
    assert np.sqrt(rss / len(data)) < 5e-5
    assert fitted[4] == pytest.approx(p[4], abs=1e-3)
    assert fitted[3] == pytest.approx(p[3], abs=3e-3)
    assert rss < flat / 100


def test_trial_breaks_are_brute_force_least_squares() -> None:
    """One factor for hinge and step alike against numpy's own least squares for each."""
    data, _ = planted(True, 0.004)
    data[:, 3] = np.random.default_rng(1).integers(1, 5, len(data))
    found = np.zeros((2, 3))
    trials(data, len(data), 0.0123, 1.0, 1, 0.006, found)
    n, along, z, w = data.T
    s = np.hypot(n - 0.0123, 0.006)
    columns = [np.ones_like(n), n, along, s, 0.5 * (1 + (n - 0.0123) / s)]
    for kind in (0, 1):
        design = np.column_stack(columns[: 4 + kind]) * np.sqrt(w)[:, None]
        x, rss, *_ = np.linalg.lstsq(design, z * np.sqrt(w))
        assert found[kind] == pytest.approx([rss[0], 0.0123, x[3 + kind]], rel=1e-6)


@pytest.mark.parametrize("step", [False, True])
def test_derivatives_are_those_of_the_model(step: bool) -> None:
    p = np.array([0.1, -0.05, 0.02, -0.08, 0.03, 0.1, 0.2, 0.012, 0.03])
    f, unused = np.empty(9), np.empty(9)
    basis(0.05, -0.1, p, step, f)
    for k in range(9):
        h = np.zeros(9)
        h[k] = 1e-6
        slope = (basis(0.05, -0.1, p + h, step, unused) - basis(0.05, -0.1, p - h, step, unused)) / 2e-6
        assert slope == pytest.approx(f[k], abs=1e-6)
