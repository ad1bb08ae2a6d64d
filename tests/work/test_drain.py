"""A cut shaped to drain, against a brute-force flood and a brute-force search for the cheapest way out."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from scipy import ndimage
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import dijkstra
from test_water import relaxed

from crestcut.work import drain
from crestcut.work.drain import cheapest_bed, more_water, shape_to_drain
from crestcut.work.water import flood, open_edge

CELL, FEATHER = 0.02, 0.25


def brute_water(z: np.ndarray, edge: np.ndarray) -> np.ndarray:
    """Standing water by lowering every level until nothing moves."""
    return np.where(np.isnan(z), 0.0, relaxed(z, edge) - np.nan_to_num(z))


def slope_with_a_dish(seed: int, grade: float = 0.03, rough: float = 0.0) -> tuple[np.ndarray, np.ndarray]:
    """Wavy ground that falls one way, and a cut with dishes in it that would hold water."""
    draw = np.random.default_rng(seed)
    shape = (60, 140)
    x = np.arange(shape[1]) * CELL
    ground = 0.5 - grade * x[None, :] + ndimage.gaussian_filter(draw.normal(size=shape), 6) * 0.02
    ground = ground + ndimage.gaussian_filter(draw.normal(size=shape), 1.5) * rough
    depth = np.zeros(shape)
    for _ in range(2):
        j, i = int(draw.integers(20, 40)), int(draw.integers(25, 60))
        away = np.hypot(*np.meshgrid(np.arange(shape[1]) - i, np.arange(shape[0]) - j)) * CELL
        depth = np.maximum(depth, np.maximum(0.020 - 0.08 * away, 0.0))
    return ground, depth


@pytest.mark.parametrize("seed", range(8))
def test_no_water_stands_deeper_than_before_by_brute_force(seed: int) -> None:
    ground, depth = slope_with_a_dish(seed)
    allowed = np.full(ground.shape, 0.06)
    edge = open_edge(ground)
    held = (brute_water(ground - depth, edge) - brute_water(ground, edge))[depth > 0].max()
    assert held > 0.003  # the dish is real
    shaped = shape_to_drain(ground, depth, allowed, 1 / 60, FEATHER, CELL)
    assert not shaped.stuck and shaped.swales >= 1
    assert np.all(shaped.depth >= depth - 1e-12)
    more = brute_water(ground - shaped.depth, edge) - brute_water(ground, edge)
    assert more[shaped.depth > 5e-5].max() <= 1.01e-4 and shaped.left <= 1.01e-4
    # nowhere steeper than the feather, nowhere over the limit
    for axis in (0, 1):
        assert np.abs(np.diff(shaped.depth, axis=axis)).max() <= FEATHER * CELL + 1e-9
    assert shaped.depth.max() <= 0.06 + 1e-12


@pytest.mark.parametrize(("deep", "floods"), [(1.0, 2), (0.0, 1)])
def test_water_before_is_asked_for_only_where_some_stands_on_the_cut(
    deep: float, floods: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    ground, dish = slope_with_a_dish(3)
    # a bare slope off the first place that is cut, or the dish in it
    depth = dish if deep else np.where(np.arange(ground.shape[1]) > 20, 0.004, 0.0) * np.ones(ground.shape)
    if not deep:
        ground = np.broadcast_to(0.5 - 0.03 * np.arange(ground.shape[1]) * CELL, ground.shape)
    made: list[int] = []

    def counted(z: np.ndarray, seeds: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        made.append(1)
        return flood(z, seeds)

    monkeypatch.setattr(drain, "flood", counted)
    more, edge = more_water(ground, depth), open_edge(ground)
    held = brute_water(ground - depth, edge) - brute_water(ground, edge)
    np.testing.assert_allclose(more, np.where(depth > 5e-5, np.maximum(held, 0.0), 0.0), atol=1e-12)
    assert bool(more.any()) == (floods == 2)
    assert len(made) == floods


def test_a_cut_that_drains_is_left_alone() -> None:
    ground = np.tile(0.3 - 0.02 * np.arange(80) * CELL, (40, 1))
    depth = np.zeros_like(ground)
    depth[:, 30:] = np.minimum(0.004 * np.arange(50), 0.02)[None, :]
    shaped = shape_to_drain(ground, depth, np.full(ground.shape, 0.05), 1 / 60, FEATHER, CELL)
    assert shaped.swales == 0 and np.array_equal(shaped.depth, depth) and math.isnan(shaped.fall)


def test_where_the_limits_are_in_the_way_it_says_so() -> None:
    ground, depth = slope_with_a_dish(3)
    shaped = shape_to_drain(ground, depth, depth.copy(), 1 / 60, FEATHER, CELL)
    assert shaped.stuck and shaped.left > 0.003
    assert np.array_equal(shaped.depth, depth)
    assert shaped.left == pytest.approx(more_water(ground, depth).max())


def test_the_bed_falls_as_asked_all_the_way() -> None:
    ground, depth = slope_with_a_dish(5)
    level, _ = flood(ground - depth, open_edge(ground))
    pit = np.unravel_index(int((level - (ground - depth)).argmax()), ground.shape)
    bed = cheapest_bed(ground, depth, np.full(ground.shape, 0.06), level, tuple(map(int, pit)), 1 / 60, CELL)
    assert bed is not None
    for ((j0, i0), z0), ((j1, i1), z1) in itertools.pairwise(bed):
        assert (z0 - z1) / (math.hypot(j1 - j0, i1 - i0) * CELL) >= 1 / 60 - 1e-9
    assert level[bed[-1][0]] <= bed[-1][1] + 1e-9  # water runs off from there


@pytest.mark.parametrize("seed", range(6))
def test_a_level_bed_takes_the_least_concrete(seed: int) -> None:
    """With a level bed the price of a node is its height over the pit: a library's shortest path finds
    the same sum.
    """
    ground, depth = slope_with_a_dish(seed + 20, rough=0.05)  # so rough that detours pay
    z = ground - depth
    level, _ = flood(z, open_edge(ground))
    pit = np.unravel_index(int((level - z).argmax()), z.shape)
    bed = cheapest_bed(ground, depth, np.full(z.shape, 0.5), level, tuple(map(int, pit)), 0.0, CELL)
    assert bed is not None
    price = np.maximum(z - z[pit], 0.0) * CELL**2
    index = np.arange(z.size).reshape(z.shape)
    pairs = []
    for dj, di in itertools.product((-1, 0, 1), (-1, 0, 1)):
        if (dj, di) != (0, 0):
            a = index[max(-dj, 0) : z.shape[0] - max(dj, 0), max(-di, 0) : z.shape[1] - max(di, 0)]
            b = index[max(dj, 0) : z.shape[0] - max(-dj, 0), max(di, 0) : z.shape[1] - max(-di, 0)]
            pairs.append((a.ravel(), b.ravel()))
    rows, columns = (np.concatenate([p[k] for p in pairs]) for k in (0, 1))
    graph = csr_matrix((price.ravel()[columns] + 1e-15, (rows, columns)), shape=(z.size, z.size))
    away = dijkstra(graph, indices=int(index[pit]))
    goal = (level <= z[pit]).ravel()
    assert sum(price[node] for node, _ in bed) == pytest.approx(away[goal].min(), abs=1e-10)
