"""What published standards make of check points.

NSSDA: FGDC-STD-007.3-1998, Geospatial Positioning Accuracy Standards part 3, 3.2.1 and its appendix 3-A:
1.9600 RMSE_z, 1.7308 RMSE_r where both axes err alike, 2.4477 * 0.5 (RMSE_x + RMSE_y) else, twenty points or
more. The figures of 51 check points are a vertical accuracy report of the United States Geological Survey:
n 51, mean -0.00533333349535, sd 0.0577205913534, RMSE 0.0574002119585 (metres).

ASPRS Positional Accuracy Standards for Digital Geospatial Data, edition 2 (August 2023), summary of changes:
the accuracy of check points enters that of the product, and at least 30 check points, where edition 1 had 20.
The formula of that is from published summaries; the clause itself was not at hand.
"""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.study.checks import (
    ASPRS_FEWEST,
    Checks,
    Held,
    errors_of,
    nssda_radial,
    nssda_vertical,
    with_survey,
)

MEAN, SD, RMSE, N = -0.00533333349535, 0.0577205913534, 0.0574002119585, 51


def errors_of_that_report() -> np.ndarray:
    """Any 51 errors with that mean and sd."""
    raw = np.random.default_rng(0).normal(size=N)
    return MEAN + SD * (raw - raw.mean()) / raw.std(ddof=1)


def test_the_report_of_51_points() -> None:
    found = errors_of(errors_of_that_report())
    assert found is not None and found.n == N
    assert (found.mean, found.sd) == pytest.approx((MEAN, SD), abs=1e-13)
    # the report's own three figures agree to 2e-10 m (RMSE^2 = mean^2 + sd^2 (n - 1) / n)
    assert found.rmse == pytest.approx(RMSE, abs=1e-9)
    assert nssda_vertical(found.rmse) == pytest.approx(1.9600 * 0.0574002119585, abs=2e-9)


def test_radial_accuracy_of_the_standard() -> None:
    """RMSE_x = RMSE_y: RMSE_r = 1.4142 RMSE_x, accuracy 2.4477 RMSE_x = 1.7308 RMSE_r. Else between ratios of
    0.6 and 1.0 the mean of the two; the standard gives none below."""
    assert nssda_radial(0.010, 0.010) == pytest.approx(1.7308 * 0.0141421356, abs=1e-9)
    assert nssda_radial(0.010, 0.010) == pytest.approx(2.4477 * 0.010, rel=1e-4)
    assert nssda_radial(0.010, 0.008) == pytest.approx(2.4477 * 0.5 * 0.018, abs=1e-12)
    assert nssda_radial(0.010, 0.0061) == pytest.approx(2.4477 * 0.5 * 0.0161, abs=1e-12)
    assert nssda_radial(0.010, 0.0059) is None


def test_the_check_points_own_accuracy_enters() -> None:
    """RMSE_V = sqrt(RMSE_V1^2 + RMSE_V2^2): 3 and 4 are 5."""
    assert with_survey(0.003, 0.004) == pytest.approx(0.005)
    held = Checks(tuple(Held(f"K{k}", (0.0, 0.0, 0.0), 0.003, None, 0.004) for k in range(2)))
    assert held.height is not None and held.survey is not None
    assert with_survey(held.height.rmse, held.survey) == pytest.approx(0.005)


@pytest.mark.parametrize(("n", "few"), [(29, True), (30, False)])
def test_thirty_points_or_it_is_said(n: int, few: bool) -> None:
    held = Checks(tuple(Held(f"K{k}", (0.0, 0.0, 0.0), 0.003) for k in range(n)))
    assert ASPRS_FEWEST == 30
    assert any("fewer than the 30" in note for note in held.notes) == few
    assert held.survey is None  # nobody said what they are good for
