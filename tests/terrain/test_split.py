"""Slab and scan told apart: published figures, evidence against another library, the ranks of the chain."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import linalg, stats

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.terrain.error.covariance import matern32
from crestcut.terrain.records import ErrorModel
from crestcut.terrain.slab.averages import Tiles
from crestcut.terrain.slab.noise import matern_of_means
from crestcut.terrain.slab.split import (
    FOOT,
    LEAST,
    FieldPriors,
    Setting,
    covariance,
    curvature_of,
    curvature_variance,
    log_evidence,
    matern_of_square,
    squares,
    whiten,
)
from simulated import draw_fields

PRIORS = FieldPriors(curvature_of(25.0), 2.0, 0.003, 1.8, 0.4)
SETTING = Setting(0.002, 0.8, 0.004, 0.4)


def tiles(count: int, seed: int, side: float = 0.1, over: float = 2.4) -> Tiles:
    """Middles anywhere in a square."""
    uv = np.random.default_rng(seed).uniform(0.0, over, (count, 2))
    one = np.ones(count)
    return Tiles(uv, 0.0 * one, side * one, 100 * one, 1e-6 * one)


def by_hand(setting: Setting, some: Tiles, noise: FloatArray) -> FloatArray:
    """(n, n) m2, from the correlation as ``covariance`` has it."""
    between = np.sqrt(((some.uv[:, None] - some.uv[None]) ** 2).sum(axis=-1) + 4 * some.spread[0])
    slab = setting.slab**2 * matern32(between, setting.slab_length)
    return slab + setting.scan**2 * matern32(between, setting.scan_length) + np.diag(noise + 4e-10)


# F_F = 4.57 / (3 s), s of the 12 in curvature; the sd of waves that goes with it, derived for a Matern-3/2
@pytest.mark.parametrize(
    ("half", "waves"), [(0.4, (1.6, 1.3, 0.9)), (0.8, (3.3, 2.6, 1.9)), (1.5, (7.2, 5.7, 4.1))]
)
def test_a_flatness_class_is_so_many_millimetres_of_waves(half: float, waves: tuple[float, ...]) -> None:
    for flatness, sd in zip((20.0, 25.0, 35.0), waves, strict=True):
        found = curvature_of(flatness) / np.sqrt(curvature_variance(half))
        assert found * 1e3 == pytest.approx(sd, abs=0.06)
    if half == 0.8:
        assert np.sqrt(curvature_variance(half)) == pytest.approx(0.59, abs=0.005)


# every node drawn, none between: what is blended between nodes has less curvature
@pytest.mark.parametrize(("half", "apart"), [(0.4, 4), (1.5, 1)])
def test_the_curvature_of_drawn_waves_is_the_one_derived(half: float, apart: int) -> None:
    frame = GridFrame((0.0, 0.0), 0.0, FOOT / apart, (10 * apart, 27 * apart))
    model = ErrorModel(0.0, 0.0, 0.1, 1.0, half, "", "", "")
    square = [
        np.mean((z[:, : -2 * apart] - 2 * z[:, apart:-apart] + z[:, 2 * apart :]) ** 2)
        for z in draw_fields(model, frame, None, 7, 200)
    ]
    # curvatures die away within some feet: 200 fields of 3 x 8 m leave about 2 % unknown
    assert np.mean(square) == pytest.approx(curvature_variance(half), rel=0.05)


# of unit variance: the wider the tile, the less the bend of the covariance at nothing is a parabola
@pytest.mark.parametrize(("side", "within"), [(0.1, 0.006), (0.2, 0.02)])
@pytest.mark.parametrize("apart", [0.0, 0.2, 0.5, 1.0])
def test_two_tiles_share_what_their_points_share(side: float, within: float, apart: float) -> None:
    field = Setting(1.0, 0.4, 0.0, 0.4)
    t = ((np.arange(10) + 0.5) / 10 - 0.5) * side
    inside = np.stack(np.meshgrid(t, t), axis=-1).reshape(-1, 2)
    distance = np.hypot(*(inside[:, None] - inside[None] - [apart, 0.0]).transpose(2, 0, 1))
    uv, spread = np.array([[0.0, 0.0], [apart, 0.0]]), np.full(2, side**2 / 12)
    own = covariance(field, squares(uv, uv, spread, spread), np.zeros((2, 2)))[1, 0]
    assert own == pytest.approx(matern32(distance, 0.4).mean(), abs=within)


# a patch halves within half a tile: what tiles share of it is no point's covariance at some distance
@pytest.mark.parametrize("sides", [(0.1, 0.1), (0.2, 0.2), (0.1, 0.2)])
@pytest.mark.parametrize("apart", [0.0, 1.0, 1.5])
def test_means_of_a_field_narrower_than_the_tiles_share_what_their_points_do(
    sides: tuple[float, float], apart: float
) -> None:
    """apart : in mean sides."""
    places = []
    for side, at in zip(sides, (0.0, apart * sum(sides) / 2), strict=True):
        t = ((np.arange(24) + 0.5) / 24 - 0.5) * side
        places.append(np.stack(np.meshgrid(t + at, t), axis=-1).reshape(-1, 2))
    distance = np.hypot(*(places[0][:, None] - places[1][None]).transpose(2, 0, 1))
    square, blur = (
        np.full((1, 1), (apart * sum(sides) / 2) ** 2),
        np.full((1, 1), sum(s**2 for s in sides) / 12),
    )
    found = float(matern_of_means(square, blur, 0.05)[0, 0])
    # one tile in the middle of another is farthest from what a spread alone can say
    within = 0.045 if sides[0] != sides[1] else 0.02
    assert found == pytest.approx(matern32(distance, 0.05).mean(), abs=within)
    assert apart < 1.5 or found < 0.07


def test_a_mean_over_nothing_is_the_point_itself() -> None:
    r = np.linspace(0.0, 0.3, 16)
    assert matern_of_means(r**2, np.zeros(16), 0.05) == pytest.approx(matern32(r, 0.05), abs=0.01)


@pytest.mark.parametrize("columns", [12, 120])
def test_rows_and_some_columns_are_those_of_the_whole(columns: int) -> None:
    """Of more columns than tiles the whole is not made for a few of its rows; of tiles in several blocks."""
    rng = np.random.default_rng(columns)
    uv, b, y = rng.random((90, 2)), rng.normal(size=(90, columns)), rng.normal(size=90)
    square = squares(uv, uv, np.zeros(90), np.zeros(90))
    noise = np.diag(rng.uniform(1e-6, 2e-6, 90))
    seen = whiten(Setting(0.002, 0.8, 0.003, 0.4), square, noise, b, y)
    k = 0.002**2 * matern_of_square(square, 0.8) + 0.003**2 * matern_of_square(square, 0.4) + noise
    k += LEAST**2 * np.eye(90)
    gram = b.T @ np.linalg.solve(k, b)
    index = np.array([3, 0, 11])
    assert seen.rows(index) == pytest.approx(gram[index], rel=1e-9, abs=1e-9 * gram.max())
    some = seen.taken(index)
    assert some.gram == pytest.approx(gram[np.ix_(index, index)], rel=1e-9, abs=1e-9 * gram.max())
    assert some.along == pytest.approx(b[:, index].T @ np.linalg.solve(k, y), rel=1e-7)
    assert some.own == seen.own and some.log_det == pytest.approx(np.linalg.slogdet(k)[1])
    bare = seen.bare()
    assert bare.white.shape == (90, 0) and bare.white.base is None  # nothing holds the columns
    assert bare.solve(b[:, :7]) == pytest.approx(np.linalg.solve(k, b[:, :7]), rel=1e-8, abs=1e-3)


def test_the_evidence_is_that_of_a_normal_with_the_trend_in_its_covariance() -> None:
    some = tiles(40, 2)
    rng = np.random.default_rng(3)
    noise = rng.uniform(1e-7, 4e-7, 40)
    b = np.column_stack([np.ones(40), some.uv, rng.normal(0, 1, (40, 3))])
    sd = np.array([0.02, 0.01, 0.01, 0.003, 0.002, 0.004])
    y = rng.normal(0.0, 0.005, 40)
    square = squares(some.uv, some.uv, some.spread, some.spread)
    settings = [SETTING, Setting(0.0005, 1.2, 0.006, 0.3)]
    index = np.array([0, 1, 2, 4])
    ours, theirs = [], []
    for setting in settings:
        seen = whiten(setting, square, np.diag(noise), b, y)
        for on in (index, np.arange(6)):
            whole = by_hand(setting, some, noise) + (b[:, on] * sd[on] ** 2) @ b[:, on].T
            theirs.append(stats.multivariate_normal(np.zeros(40), whole).logpdf(y))
            ours.append(log_evidence(seen, on, 1 / sd[on] ** 2) - 20 * np.log(2 * np.pi))
    assert ours == pytest.approx(theirs, abs=1e-6)


@pytest.mark.parametrize("count", [300, 2500])
def test_single_distances_of_however_many_tiles_are_still_a_covariance(count: int) -> None:
    """The smoothest fields there are, close together, with no noise: worst for what rounding leaves."""
    uv = np.random.default_rng(1).uniform(0.0, 1.5, (count, 2))
    spread = np.full(count, 0.02**2 / 12)
    square = squares(uv, uv, spread, spread).astype(np.float32)
    for setting in (Setting(100.0, 3.0, 1e-3, 3.0), Setting(2e-5, 0.2, 0.02, 3.0)):
        found = linalg.cholesky(covariance(setting, square, np.zeros((count, count))), lower=True)
        assert np.isfinite(found).all()
