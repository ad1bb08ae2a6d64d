"""Published figures on stating uncertainty."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from crestcut.chance.assess import coverage_factor
from crestcut.scan.registering.register import accuracy_95, root_mean_square
from crestcut.terrain.error.covariance import of_functionals
from crestcut.terrain.records import ErrorModel


def test_gum_h1_expanded_uncertainty() -> None:
    """JCGM 100:2008 H.1: u 32 nm with 16 degrees of freedom gives U99 93 nm, by the factor that widens every
    interval here; SciPy's own Student t agrees."""
    assert coverage_factor(16, 0.99) * 32 == pytest.approx(93, abs=0.6)
    assert coverage_factor(16, 0.99) == pytest.approx(stats.t.ppf(0.995, 16), rel=1e-9)


def test_nssda_rmse_from_mean_and_spread() -> None:
    """USGS vertical accuracy report: n 51, mean and SD (n - 1) give the RMSEz.

    The mean is printed as -0.00533333349535, single precision: nine decimals are all that can agree.
    """
    n, mean, sd = 51, -0.00533333349535, 0.0577205913534
    spread = np.linspace(-1.0, 1.0, n)
    errors = mean + spread * sd / spread.std(ddof=1)  # any 51 numbers of that mean and spread will do
    rmse = root_mean_square(errors)
    assert rmse == pytest.approx(0.0574002119585, abs=1e-9)
    assert accuracy_95(rmse) == pytest.approx(1.9600 * 0.0574002119585, abs=1e-8)


def test_propagation_is_first_order_as_in_the_gum() -> None:
    """JCGM 100:2008 equation 10: independent inputs add as (c u)^2 through the code that adds up readings."""
    model = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.4, "", "", "")
    points, weights, errors = (
        (np.zeros((3, 2)),),
        (np.array([0.5, 0.5, -1.0]),),
        (np.array([1e-3, 2e-3, 3e-3]),),
    )
    assert of_functionals(model, points, weights, errors)[0, 0] == pytest.approx((0.25 + 1.0 + 9.0) * 1e-6)
