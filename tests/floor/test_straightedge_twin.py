"""The gap under a straightedge against trying every pair of feet, and the properties it must have."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.ndimage import gaussian_filter

from crestcut.floor.straightedge import WAYS, gaps_under, line_starts, longest_reach, worst_gap


def every_pair(z: np.ndarray, cell: float, length: float) -> np.ndarray:
    """All feet, all places between them; a straightedge over a hole does not count."""
    gap = np.where(np.isnan(z), np.nan, 0.0)
    for way in WAYS:
        reach = math.floor(length / (math.hypot(*way) * cell) + 1e-9)
        for start in line_starts(z.shape, way):
            line = []
            j, i = int(start[0]), int(start[1])
            while 0 <= j < z.shape[0] and 0 <= i < z.shape[1]:
                line.append((j, i))
                j, i = j + way[0], i + way[1]
            h = np.array([z[at] for at in line])
            for a in range(len(h)):
                for b in range(a + 2, min(a + reach, len(h) - 1) + 1):
                    if np.isnan(h[a : b + 1]).any() or crosses(z, line[a : b + 1]):
                        continue
                    chord = h[a] + (h[b] - h[a]) * np.arange(1, b - a) / (b - a) - h[a + 1 : b]
                    for k, under in enumerate(chord, start=a + 1):
                        gap[line[k]] = max(gap[line[k]], under)
    return gap


def crosses(z: np.ndarray, line: list[tuple[int, int]]) -> bool:
    """Whether a step of the line passes over a node, or between two, that was not measured."""
    for (j0, i0), (j1, i1) in pairwise(line):
        far = max(abs(j1 - j0), abs(i1 - i0))
        for k in range(1, far):
            j, i = j0 + (j1 - j0) * k / far, i0 + (i1 - i0) * k / far
            near = {(math.floor(j), math.floor(i)), (math.ceil(j), math.ceil(i))}
            if any(np.isnan(z[at]) for at in near):
                return True
    return False


def rough(seed: int, shape: tuple[int, int] = (13, 17)) -> np.ndarray:
    draw = np.random.default_rng(seed)
    z = gaussian_filter(draw.normal(size=shape), draw.choice([0.0, 1.5])) * 0.01 + 0.02 * np.arange(shape[1])
    z[draw.random(shape) < 0.04] = np.nan
    return z


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize("length", [0.35, 0.8, 3.0])
def test_same_gaps_as_every_pair_of_feet(seed: int, length: float) -> None:
    z = rough(seed)
    gap, left, right = gaps_under(z, 0.1, length)
    assert np.allclose(gap, every_pair(z, 0.1, length), atol=1e-12, equal_nan=True)
    # the feet named carry the straightedge that shows the gap
    for j, i in np.argwhere(np.nan_to_num(gap) > 0):
        a, b = (np.array(np.unravel_index(n[j, i], z.shape)) for n in (left, right))
        share = math.dist(a, (j, i)) / math.dist(a, b)
        assert z[tuple(a)] * (1 - share) + z[tuple(b)] * share - z[j, i] == pytest.approx(
            gap[j, i], abs=1e-12
        )
        assert math.dist(a, b) * 0.1 <= length + 1e-9


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10_000), st.floats(-0.5, 0.5), st.floats(-0.5, 0.5))
def test_tilt_changes_nothing_and_a_longer_one_shows_no_less(seed: int, u: float, v: float) -> None:
    z = rough(seed)
    j, i = np.indices(z.shape)
    base = gaps_under(z, 0.1, 0.8)[0]
    assert np.allclose(base, gaps_under(z + u * i + v * j, 0.1, 0.8)[0], atol=1e-9, equal_nan=True)
    longer = gaps_under(z, 0.1, 1.2)[0]
    assert (np.nan_to_num(longer) >= np.nan_to_num(base) - 1e-12).all()
    # raising ground raises what lies over it (increasing), and what lies over it is never under it
    # (extensive)
    more = z + 0.003 * np.random.default_rng(seed).random(z.shape)
    assert (np.nan_to_num(more + gaps_under(more, 0.1, 0.8)[0]) >= np.nan_to_num(z + base) - 1e-12).all()
    assert (np.nan_to_num(base) >= 0).all()


def test_no_straightedge_is_laid_through_a_column() -> None:
    x = np.arange(81) * 0.05
    z = np.broadcast_to(0.002 * np.abs(x - 2.0), (1, 81)).copy()
    assert worst_gap(z, 0.05, 4.0) == pytest.approx(0.004)
    z[0, 40] = np.nan
    assert worst_gap(z, 0.05, 4.0) < 1e-12  # each side is straight


def test_longest_straight_line_over_what_is_measured() -> None:
    room = np.ones((40, 80), bool)
    assert longest_reach(room, 0.05) == pytest.approx(math.hypot(2, 1) * 39 * 0.05)  # corner to corner nearly
    room[:, 40] = False
    assert longest_reach(room, 0.05) < 2.8
