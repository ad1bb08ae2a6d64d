"""Settings laid out and weighed: against a normal's closed form, simulated slabs, and plain random places."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import special, stats

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.terrain.error.covariance import matern32
from crestcut.terrain.slab.averages import Tiles
from crestcut.terrain.slab.settings import Laid, evenly, laid_out
from crestcut.terrain.slab.split import FieldPriors, Setting, curvature_of, log_evidence, squares, whiten

PRIORS = FieldPriors(curvature_of(25.0), 2.0, 0.003, 1.8, 0.4)


def weighed(laid: Laid, log_likelihood: FloatArray) -> FloatArray:
    """Their shares in the posterior."""
    weight = np.exp(laid.log_weight + log_likelihood - (laid.log_weight + log_likelihood).max())
    return weight / weight.sum()


def first_up(z: FloatArray) -> BoolArray:
    return z[:, 0] > 0


def test_places_fill_the_cube_more_evenly_than_random_ones_do() -> None:
    # by another library's measure (Hickernell 1998); from any place on
    for first, count, shift in (
        (0, 20, np.full(4, 0.5)),
        (0, 32, np.zeros(4)),
        (40, 64, np.array([0.1, 0.7, 0.3, 0.9])),
    ):
        ours = stats.qmc.discrepancy(special.ndtr(evenly(first, count, shift)))
        theirs = [stats.qmc.discrepancy(np.random.default_rng(k).random((count, 4))) for k in range(20)]
        assert ours < 0.65 * np.mean(theirs)
    assert np.array_equal(evenly(0, 30, shift)[20:], evenly(20, 10, shift))


@pytest.mark.parametrize("narrow", [0.08, 0.3, 1.0])
def test_a_normal_likelihood_gives_the_mean_and_covariance_of_the_closed_form(narrow: float) -> None:
    """Standard normal prior times N(m, S): precision I + S^-1 (Gelman et al., Bayesian Data Analysis, 2013,
    section 3.5)."""
    turn = np.linalg.qr(np.random.default_rng(1).standard_normal((4, 4)))[0]
    spread = turn @ np.diag(narrow**2 * np.array([1.0, 0.5, 2.0, 0.25])) @ turn.T
    middle = np.array([0.9, -1.1, 0.6, 0.3])
    precision = np.linalg.inv(spread)

    def likelihood(z: FloatArray) -> float:
        return float(-0.5 * (z - middle) @ precision @ (z - middle))

    exact = np.linalg.inv(np.eye(4) + precision)
    mean = exact @ precision @ middle
    laid = laid_out(likelihood, lambda z: 0.3 * likelihood(z), first_up, 64)
    share = weighed(laid, np.array([likelihood(z) for z in laid.z]))
    assert 1 / (share**2).sum() > 20  # of 64
    sd = np.sqrt(np.diag(exact))
    found = share @ laid.z
    # 32 random places that count would know a mean to 0.18 sd, and the worst of twelve to 0.38
    assert np.abs((found - mean) / sd).max() < 0.3
    away = laid.z - found
    spreads = np.sqrt(np.einsum("n,ni,ni->i", share, away, away)) / sd
    assert spreads == pytest.approx(np.ones(4), abs=0.25)


def test_where_heights_say_nothing_the_prior_stands() -> None:
    laid = laid_out(lambda _: 7.0, lambda _: 0.0, first_up, 100)
    share = weighed(laid, np.full(len(laid.z), 7.0))
    found = share @ laid.z
    assert found == pytest.approx(np.zeros(4), abs=0.25)
    assert np.sqrt(share @ (laid.z - found) ** 2) == pytest.approx(np.ones(4), abs=0.25)


@pytest.mark.parametrize("higher", [0.0, 1.5])
def test_two_hills_are_weighed_though_nothing_leads_from_one_to_the_other(higher: float) -> None:
    """Where the rough likelihood sees both alike; the valley between is e^-50 of either."""
    hills = np.array([[1.5, 0.0, 0.5, 0.0], [-1.5, 0.4, 0.0, 0.0]])

    def likelihood(z: FloatArray) -> float:
        each = -0.5 * ((z - hills) ** 2).sum(axis=1) / 0.15**2
        return float(np.logaddexp(each[0] + higher, each[1]))

    # of each hill times the prior as much is there as exp(-|m|^2 / (2 (1 + 0.15^2))) says
    square = (hills**2).sum(axis=1) / (2 * (1 + 0.15**2))
    exact = 1 / (1 + np.exp(-higher - square[1] + square[0]))
    laid = laid_out(likelihood, lambda z: 0.05 * likelihood(z), first_up, 40)
    share = weighed(laid, np.array([likelihood(z) for z in laid.z]))
    assert share[laid.z[:, 0] > 0].sum() == pytest.approx(exact, abs=0.12)


def tiles(count: int, seed: int) -> Tiles:
    """Middles anywhere in a square."""
    uv, one = np.random.default_rng(seed).uniform(0.0, 2.4, (count, 2)), np.ones(count)
    return Tiles(uv, 0.0 * one, 0.1 * one, 100 * one, 1e-6 * one)


def by_hand(setting: Setting, some: Tiles) -> FloatArray:
    """(n, n) m2, from the correlation as ``covariance`` has it."""
    between = np.sqrt(((some.uv[:, None] - some.uv[None]) ** 2).sum(axis=-1) + 4 * some.spread[0])
    slab = setting.slab**2 * matern32(between, setting.slab_length)
    scan = setting.scan**2 * matern32(between, setting.scan_length)
    return slab + scan + np.diag(np.full(len(some), 3e-7 + 4e-10))


@pytest.mark.slow
def test_weighed_settings_rank_the_true_ones_evenly() -> None:
    """Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari & Gelman, arXiv:1804.06788, 2018):
    what share of the posterior lies below a truth drawn from the prior is uniform."""
    found = np.empty((120, 4))
    for k in range(len(found)):
        rng = np.random.default_rng([9, k])
        some = tiles(48, 100 + k)
        b, sd = np.column_stack([np.ones(48), some.uv - 1.2]), np.array([0.05, 0.02, 0.02])
        true = rng.standard_normal(4)
        root = np.linalg.cholesky(by_hand(PRIORS.setting(true), some))
        y = root @ rng.standard_normal(48) + b @ (sd * rng.standard_normal(3))
        square = squares(some.uv, some.uv, some.spread, some.spread)

        def score(z: FloatArray, b=b, y=y, sd=sd, square=square) -> float:  # type: ignore[no-untyped-def]
            seen = whiten(PRIORS.setting(z), square, np.diag(np.full(48, 3e-7)), b, y)
            return log_evidence(seen, slice(None), 1 / sd**2)

        laid = laid_out(score, score, PRIORS.wavier, 20, k)
        share = weighed(laid, np.array([score(z) for z in laid.z]))
        found[k] = share @ (laid.z < true)
    for column in found.T:
        assert column.mean() == pytest.approx(0.5, abs=0.085)  # 3.2 sd of 120 even ones
        # 20 places are a coarse measure, so a rank comes to an end a little more often
        assert column.std() == pytest.approx(np.sqrt(1 / 12), abs=0.05)
        assert ((column < 0.05) | (column > 0.95)).mean() < 0.22
