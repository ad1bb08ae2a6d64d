"""One answer from several: the interval of a mixture, and what of it the readings by hand narrow."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import special

from crestcut.chance.records import Chance
from crestcut.verify.now import mixed


def chance(best: float, low: float, high: float) -> Chance:
    return Chance(best, (low, high), 0.5, "cannot tell", "", (high - low) / 3.92, 0.5, 200)


def test_the_interval_of_a_mixture_is_that_of_its_draws() -> None:
    """Normals of other middles and widths, one of them askew, against a million draws."""
    parts = ((0.010, 0.002, 0.003, 0.6), (0.016, 0.001, 0.001, 0.3), (0.012, 0.009, 0.004, 0.1))
    z = float(special.ndtri(0.975))
    each = [chance(best, best - z * low, best + z * high) for best, low, high, _ in parts]
    found = mixed(each, [w for *_, w in parts], 0.95)
    rng, drawn = np.random.default_rng(0), []
    for best, low, high, weight in parts:
        normal = rng.standard_normal(int(1e6 * weight))
        drawn.append(best + normal * np.where(normal < 0, low, high))
    assert found.interval == pytest.approx(np.quantile(np.concatenate(drawn), [0.025, 0.975]), abs=3e-5)


def test_an_unlikely_part_widens_by_as_much_as_it_is_likely() -> None:
    narrow, wide = chance(0.010, 0.008, 0.012), chance(0.010, -0.010, 0.030)
    assert mixed([narrow, narrow], [0.5, 0.5], 0.95).interval == pytest.approx(narrow.interval, abs=1e-6)
    low, high = mixed([narrow, wide], [0.99, 0.01], 0.95).interval
    assert 0.0072 < low < 0.008 and 0.012 < high < 0.0128
