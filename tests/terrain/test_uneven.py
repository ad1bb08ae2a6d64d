"""Two passes with more points here and there: what that does to heights, and what is left of it."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.terrain.error.covariance import matern32
from crestcut.terrain.error.fit import PassFit
from crestcut.terrain.error.uneven import PIECE, SQUARE, evened, unevenness
from crestcut.terrain.records import ErrorModel
from simulated import draw_fields

CELL = 0.05
FRAME = GridFrame((3.0, -2.0), 0.3, 0.01, (201, 401))
FIT = PassFit(0.005, 0.4, 0.001, 0.006, 500)


def cells(
    share: FloatArray, first: FloatArray, second: FloatArray, many: float = 40.0
) -> tuple[FloatArray, ...]:
    """Counts and sums of residuals of two passes with errors ``first`` and ``second``, m, about their mean by
    points, which is what heights are."""
    count = np.stack([share * many, (1 - share) * many])
    mean = share * first + (1 - share) * second
    return count, count * np.stack([first - mean, second - mean])


def over_heights(uneven: HeightGrid) -> FloatArray:
    flat = HeightGrid(FRAME, np.zeros(FRAME.shape))
    return -np.asarray(evened(flat, uneven).values)


def test_where_both_saw_all_heights_come_to_lie_half_way_between_the_passes() -> None:
    rows, columns = 40, 80
    v, u = np.mgrid[0:rows, 0:columns] * CELL
    first, second = 0.008 * np.sin(2 * u) * np.cos(v), -0.004 * np.cos(1.5 * u)
    share = 0.5 + 0.35 * np.sin(5 * u + 3 * v)
    count, total = cells(share, first, second, 4e4)
    found = unevenness(FRAME, np.zeros(2, np.int64), count, total, CELL, FIT)
    assert found is not None
    scanned = share * first + (1 - share) * second
    left = scanned - found.values - (first + second) / 2
    inner = np.s_[4:-4, 4:-4]
    assert np.std(left[inner]) < 0.1 * np.std((scanned - (first + second) / 2)[inner])
    # even counts: nothing is uneven
    count, total = cells(np.full_like(share, 0.5), first, second)
    same = unevenness(FRAME, np.zeros(2, np.int64), count, total, CELL, FIT)
    assert same is not None and np.abs(same.values).max() < 1e-12


def test_beyond_the_end_of_a_pass_the_heights_run_out_smoothly() -> None:
    """One pass ends at 2 m: without it heights jump there by half of what the passes differ by, 10 mm."""
    share = np.where(np.arange(80) * CELL < 2.0, 0.5, 1.0)[None, :] * np.ones((40, 1))
    first, second = np.full((40, 80), 0.005), np.full((40, 80), -0.005)
    first += 0.002 * np.sin(np.arange(80) * CELL * 4)
    count, total = cells(share, first, second)
    found = unevenness(FRAME, np.zeros(2, np.int64), count, total, CELL, FIT)
    assert found is not None
    scanned = share * first + (1 - share) * second
    left = (scanned - found.values).mean(axis=0)
    over = np.s_[36:44]  # 0.4 m about the end, where the waves of the first pass rise by 1 mm
    assert np.ptp(scanned.mean(axis=0)[over]) > 0.0045
    assert abs(left[43] - left[36]) < 0.001
    # far on, what both lie apart on the whole is still taken off
    assert found.values[:, -1] == pytest.approx(np.full(40, 0.005), abs=0.0012)


def test_the_difference_is_kriged_as_by_one_matrix_over_all_of_a_long_slab() -> None:
    """By brute force: ordinary squares, one solve over 12 m, where ``PIECE`` has two."""
    rng = np.random.default_rng(4)
    rows, columns = 16, 240
    assert columns * CELL > PIECE
    share = rng.uniform(0.2, 0.8, (rows, columns))
    for alone in (100, 150):  # no second pass there; the other lies over the end of a piece
        share[:, alone : alone + 20] = 1.0
    model = ErrorModel(0.0, 0.0, 0.1, 0.005, 0.4, "", "", "")
    frame = GridFrame((0.0, 0.0), 0.0, CELL, (rows, columns))
    first, second = draw_fields(model, frame, None, 5, 2)
    count, total = cells(share, first, second)
    found = unevenness(FRAME, np.array([7, -3]), count, total, CELL, FIT)
    assert found is not None
    at, seen, noise = [], [], []
    for j in range(0, rows, SQUARE):
        for i in range(0, columns, SQUARE):
            n, s = (a[:, j : j + SQUARE, i : i + SQUARE].sum(axis=(1, 2)) for a in (count, total))
            if n.min() >= 5:
                at.append(((i + SQUARE / 2) * CELL, (j + SQUARE / 2) * CELL))
                seen.append(s[0] / n[0] - s[1] / n[1])
                noise.append(2 * FIT.patch**2 / SQUARE + FIT.white**2 * (1 / n).sum())
    at, seen = np.array(at), np.array(seen)
    apart = np.hypot(*(at[:, None] - at[None]).transpose(2, 0, 1))
    own = 2 * FIT.warp**2
    weight = np.linalg.solve(own * matern32(apart, 0.4) + np.diag(noise), seen - np.median(seen))
    for i in (0, 40, 108, 140, 180, 238):  # of every second cell: between them it is linear
        middle = (np.array([i, 6]) + 0.5) * CELL
        krig = np.median(seen) + own * matern32(np.hypot(*(at - middle).T), 0.4) @ weight
        smooth = found.values[6, i] / krig  # share less a half, of cells about as wide as a height's points
        near = share[4:9, max(i - 2, 0) : i + 3] - 0.5
        assert near.min() - 1e-3 < smooth < near.max() + 1e-3
    # exactly where the share is one all around
    for i in (110, 158, 160, 162):
        middle = (np.array([i, 6]) + 0.5) * CELL
        krig = np.median(seen) + own * matern32(np.hypot(*(at - middle).T), 0.4) @ weight
        assert found.values[6, i] == pytest.approx(0.5 * krig, abs=2e-5)
    # and it lies where the cells do: the first is that of column 7, row -3
    assert found.frame.to_site([0.0, 0.0]) == pytest.approx(FRAME.to_site([7.5 * CELL, -2.5 * CELL]))


def test_heights_are_lowered_by_what_lies_over_each_on_turned_axes() -> None:
    rows, columns = 45, 85
    origin = FRAME.to_site([-0.1, -0.1])
    plane = 0.001 * np.arange(columns)[None, :] + 0.002 * np.arange(rows)[:, None]
    uneven = HeightGrid(GridFrame((float(origin[0]), float(origin[1])), 0.3, CELL, (rows, columns)), plane)
    found = over_heights(uneven)
    v, u = np.mgrid[0:201, 0:401] * 0.01 + 0.1
    assert found == pytest.approx(0.001 * u / CELL + 0.002 * v / CELL, abs=1e-9)


def test_nothing_is_said_where_no_place_was_seen_twice() -> None:
    share = np.where(np.arange(80) < 40, 1.0, 0.0)[None, :] * np.ones((40, 1))
    count, total = cells(share, np.zeros((40, 80)), np.zeros((40, 80)))
    assert unevenness(FRAME, np.zeros(2, np.int64), count, total, CELL, FIT) is None
