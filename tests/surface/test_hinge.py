"""The hinge and the step on planted parameters."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.surface.hinge import HALF_ACROSS, HALF_ALONG, basis, descend, loose_prior, quadratic_rss, start


def planted(step: bool, noise: float) -> tuple[np.ndarray, np.ndarray]:
    """Rows (n, l, z, 1) of a window with known parameters."""
    rng = np.random.default_rng(0)
    p = np.array([0.1, -0.05, 0.02, -0.08, 0.03, 0.1, 0.2, 0.02 if step else 0.012, 0.03])
    data = np.ones((900, 4))
    data[:, 0], data[:, 1] = (
        rng.uniform(-HALF_ACROSS, HALF_ACROSS, 900),
        rng.uniform(-HALF_ALONG, HALF_ALONG, 900),
    )
    f = np.empty(9)
    data[:, 2] = [basis(n, along, p, step, f) for n, along in data[:, :2]] + noise * rng.standard_normal(900)
    return data, p


@pytest.mark.parametrize("step", [False, True])
def test_planted_parameters_come_back(step: bool) -> None:
    data, p = planted(step, 0.0)
    found, a = np.empty(9), np.empty((9, 9))
    start(data, len(data), step, found)
    rss = descend(data, len(data), step, 1e-12, loose_prior(), found, a)
    assert np.sqrt(rss / len(data)) < 5e-5
    assert found[4] == pytest.approx(p[4], abs=1e-3)
    assert found[3] == pytest.approx(p[3], abs=3e-3)
    assert rss < quadratic_rss(data, len(data)) / 100


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
