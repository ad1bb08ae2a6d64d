"""A long lane judged stretch by stretch is the lane judged at once, within bounds that are said."""

from __future__ import annotations

import numpy as np
import pytest

import crestcut.terrain.slab.posterior as posterior
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.terrain.records import ErrorModel
from crestcut.terrain.slab.averages import Tiles, tiles_of
from crestcut.terrain.slab.noise import Noise
from crestcut.terrain.slab.posterior import Fineness, judge
from crestcut.terrain.slab.split import FieldPriors, Setting, covariance, curvature_of, log_evidence
from crestcut.terrain.slab.stretches import LARGE, NEGLECTED, Root, Stretches, Whole, lasts, reach_of
from slab_scans import as_fitted

USUAL, LONGEST = Setting(0.0027, 0.8, 0.0044, 0.41), Setting(0.013, 3.0, 0.006, 3.0)
FEW = Fineness(tiles=300, pairs=6, rounds=1)


def lane(length: float = 30.0, cell: float = 0.05) -> HeightGrid:
    """2 m wide, with waves and a crest."""
    frame = GridFrame((0.0, 0.0), 0.0, cell, (41, round(length / cell) + 1))
    u, v = np.meshgrid(np.arange(frame.shape[1]) * cell, np.arange(frame.shape[0]) * cell)
    rng = np.random.default_rng(1)
    z = (
        -0.04 * np.maximum(u - 11.0, 0.0)
        + 0.002 * np.sin(2 * u) * np.cos(3 * v)
        + rng.normal(0, 1e-3, u.shape)
    )
    return HeightGrid(frame, z)


def told(height: HeightGrid) -> tuple[Tiles, Noise]:
    tiles = tiles_of(height, height.measured, (), 500)
    return tiles, Noise.of(tiles, height.like(np.full(height.frame.shape, 5e-4)), 0.0013, 0.1)


def full(whole: Whole, setting: Setting) -> FloatArray:
    lower = np.tril(covariance(setting, whole.square, whole.noise))
    return np.asarray(lower + np.tril(lower, -1).T)


@pytest.mark.parametrize(("setting", "most"), [(USUAL, 1e-7), (LONGEST, 1e-4)])
def test_no_judge_of_all_heights_could_tell_stretches_from_the_whole(setting: Setting, most: float) -> None:
    """The divergence, nats, by both determinants; never below none."""
    tiles, noise = told(lane())
    k = full(Whole.of(tiles, noise), setting)
    root = Stretches.of(tiles, noise).root(setting)
    assert len(root.own) == 5
    assert -1e-9 < 0.5 * (root.log_det - float(np.linalg.slogdet(k)[1])) < most


def test_what_comes_out_of_stretches_is_what_comes_out_of_the_whole() -> None:
    """Columns and heights, their sums and what is solved, to a billionth; noise has its covariance."""
    tiles, noise = told(lane())
    whole, parts = Whole.of(tiles, noise), Stretches.of(tiles, noise)
    table = np.column_stack([np.ones(len(tiles)), tiles.uv, np.abs(tiles.uv[:, 0] - 11.0)])
    one, other = (w.whiten(USUAL, table, tiles.mean) for w in (whole, parts))
    assert other.gram == pytest.approx(one.gram, rel=1e-8)
    assert other.along == pytest.approx(one.along, rel=1e-8)
    assert (other.own, other.log_det) == pytest.approx((one.own, one.log_det), rel=1e-8)
    solved = one.solve(tiles.mean[:, None])
    assert np.abs(other.solve(tiles.mean[:, None]) - solved).max() < 1e-6 * np.abs(solved).max()
    drawn = parts.drawn()(np.random.default_rng(3), 4000)
    sd = np.sqrt(np.diag(whole.noise))
    assert np.abs(drawn @ drawn.T / 4000 - whole.noise).max() < 6 / np.sqrt(4000) * float(sd.max()) ** 2


def test_a_root_of_stretches_is_exact_where_only_neighbours_go_together() -> None:
    """Of a chain whose inverse covariance has three diagonals: whitened, coloured, solved as by the whole."""
    n = 60
    k = np.exp(-np.abs(np.subtract.outer(np.arange(n), np.arange(n))) / 7.0)
    own = [np.arange(a, a + 20) for a in (0, 20, 40)]
    root = Root.of(
        own, [(k[np.ix_(o, o)], k[np.ix_(o, b)]) for o, b in zip(own, (own[0][:0], *own), strict=False)]
    )
    lower = np.linalg.cholesky(k)
    rows = np.random.default_rng(0).standard_normal((n, 3))
    white = rows.copy()
    root.whiten(white)
    assert white == pytest.approx(np.linalg.solve(lower, rows), abs=1e-10)
    assert root.coloured(white) == pytest.approx(rows, abs=1e-10)
    assert root.solve(rows) == pytest.approx(np.linalg.solve(k, rows), abs=1e-9)


def test_tiles_beyond_the_reach_move_no_draw_by_more_than_is_neglected() -> None:
    solved = np.random.default_rng(0).normal(0, 300.0, (2000, 4))
    reach = reach_of(USUAL, solved)
    x = 1.6783469900166605 * reach / USUAL.slab_length
    most = USUAL.slab**2 * (1 + x) * np.exp(-x) * np.abs(solved).sum(axis=0).max()
    assert 0.9 * NEGLECTED < most < 1.001 * NEGLECTED


def test_a_lane_judged_in_stretches_has_the_slab_and_draws_of_one_judged_at_once(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The mean to a tenth of a micrometre, draws to ten of them."""
    height = lane(21.0)
    surface = as_fitted(height, 5e-4)
    error = ErrorModel(0.004, 0.0013, 0.1, 0.004, 0.4, "", "", "")
    priors = FieldPriors(curvature_of(25.0), 2.0, 0.004, 1.5, 0.4)
    found = []
    for long in (True, False):
        monkeypatch.setattr(posterior, "lasts", lambda _, long=long: long)
        judged = judge(surface, error, priors, fine=FEW)
        assert judged is not None
        found.append(judged)
    (one, mean), (other, whole) = found
    assert np.nanmax(np.abs(mean.values - whole.values)) < 1e-7
    places = np.column_stack([np.linspace(0.5, 20.5, 40), np.full(40, 1.0)])
    assert np.abs(one.deviations(places) - other.deviations(places)).max() < 1e-5


def test_a_long_slab_with_more_than_a_million_nodes_is_judged_in_stretches() -> None:
    assert lasts(GridFrame((0.0, 0.0), 0.0, 0.01, (400, 2600)))
    assert not lasts(GridFrame((0.0, 0.0), 0.0, 0.01, (1001, 1001)))
    assert 400 * 2600 > LARGE


def test_where_settings_are_sought_likelihoods_are_right_to_some_tenths_of_a_nat() -> None:
    """In short stretches, with distances in single precision, from one setting to another; by all at once."""
    tiles, noise = told(lane(8.0))
    columns = np.column_stack([np.ones(len(tiles)), tiles.uv - 4.0])
    priors, precision = FieldPriors(curvature_of(25.0), 2.0, 0.004, 1.5, 0.4), np.array([1e-2, 1.0, 1.0])
    root = np.linalg.cholesky(full(Whole.of(tiles, noise), priors.setting(np.zeros(4))))
    y = root @ np.random.default_rng(5).standard_normal(len(tiles))
    some = Stretches.of(tiles, noise, posterior.COARSE).single().likelihood(priors, columns, y, precision)
    whole, places = Whole.of(tiles, noise), np.random.default_rng(2).normal(0.0, 0.5, (12, 4))
    exact = [
        log_evidence(whole.whiten(priors.setting(z), columns, y), slice(None), precision) for z in places
    ]
    off = np.array([some(z) for z in places]) - exact
    assert np.ptp(exact) > 10 and np.abs(off - np.median(off)).max() < 0.3
