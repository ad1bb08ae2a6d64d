"""Tiles of a fitted surface: every node in at most one, means that are true where the tile is said to be."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, HeightGrid
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.slab.averages import FILLED, MOST, NEAR_BREAK, SIDE, Tiles, tiles_of
from crestcut.terrain.slab.noise import SHARED, Noise

CELL = 0.01


def heights(size: tuple[float, float], seed: int = 0) -> HeightGrid:
    """A frame of u by v metres with heights of no order."""
    shape = (round(size[1] / CELL) + 1, round(size[0] / CELL) + 1)
    return HeightGrid(
        GridFrame((3.0, -2.0), 0.3, CELL, shape), np.random.default_rng(seed).normal(0.0, 0.01, shape)
    )


def holed(height: HeightGrid) -> HeightGrid:
    """Round holes and a bitten corner, not measured."""
    ny, nx = height.frame.shape
    v, u = np.mgrid[0:ny, 0:nx] * CELL
    gone = (u < 0.27) & (v < 0.33)
    for cu, cv, r in ((1.0, 0.8, 0.22), (1.9, 0.3, 0.07)):
        gone |= np.hypot(u - cu, v - cv) < r
    return height.like(np.where(gone, np.nan, height.values))


def blocks(tiles: Tiles, height: HeightGrid) -> list[BoolArray]:
    """(ny, nx) nodes of the block that each tile was made from: the one that holds its place."""
    ny, nx = height.frame.shape
    v, u = np.mgrid[0:ny, 0:nx] * CELL
    some = []
    for (a, b), side in zip(tiles.uv, tiles.side, strict=True):
        low = np.floor((np.array([a, b]) + CELL / 2) / side + 1e-9) * side - CELL / 2
        some.append((u > low[0]) & (u < low[0] + side) & (v > low[1]) & (v < low[1] + side))
    return some


def plane(uv: FloatArray) -> FloatArray:
    return 0.2 - 0.16 * uv[..., 0] + 0.05 * uv[..., 1]


LINE = Break(
    np.column_stack([np.full(81, 5.03), np.linspace(0.0, 4.0, 81)]), np.zeros(81), -0.08, 0.0, 0.0, 0.003
)


@pytest.mark.parametrize(("size", "lines"), [((2.4, 1.6), ()), ((12.0, 4.0), (LINE,))])
def test_every_node_is_in_one_tile_at_most_and_none_of_a_full_slab_is_lost(
    size: tuple[float, float], lines: tuple[Break, ...]
) -> None:
    height = heights(size)
    tiles = tiles_of(height, height.measured, lines)
    times, each = np.zeros(height.frame.shape, int), blocks(tiles, height)
    for k, block in enumerate(each):
        assert block.sum() == tiles.nodes[k]
        assert height.values[block].mean() == pytest.approx(tiles.mean[k], abs=1e-12)
        times += block
    assert times.max() == 1
    edge = round(max(tiles.side) / CELL)  # the last tiles of a row may be less than FILLED
    assert (times[:-edge, :-edge] == 1).all()


def test_tiles_with_holes_say_where_their_nodes_lie() -> None:
    # the middle of the square would be 3 mm off on a slope of 16 % in a tile of 10 cm
    flat = heights((2.4, 1.6))
    ny, nx = flat.frame.shape
    v, u = np.mgrid[0:ny, 0:nx] * CELL
    height = holed(flat.like(plane(np.stack([u, v], axis=-1))))
    tiles = tiles_of(height, height.measured, ())
    assert (tiles.nodes < tiles.nodes.max()).sum() > 5
    assert tiles.nodes.min() >= FILLED * tiles.nodes.max()
    assert tiles.mean == pytest.approx(plane(tiles.uv), abs=1e-9)
    assert tiles.fine.max() < 1e-18  # nothing is left about a plane, hole or not


def test_what_is_left_about_a_plane_is_the_variance_of_white_heights() -> None:
    height = holed(heights((2.4, 1.6)))
    tiles = tiles_of(height, height.measured, ())
    assert tiles.fine.mean() == pytest.approx(0.01**2, rel=0.02)  # 35,000 nodes: 0.8 %


def test_nothing_that_may_not_be_used_is_in_a_tile() -> None:
    height = heights((2.4, 1.6))
    usable = np.ones(height.frame.shape, bool)
    usable[:, 120:] = False
    tiles = tiles_of(height.like(np.where(usable, height.values, 99.0)), usable, ())
    assert tiles.mean.max() < 1.0 and tiles.uv[:, 0].max() < 1.2


def test_tiles_stay_fine_beside_a_break_and_few_elsewhere() -> None:
    height = heights((12.0, 4.0))
    tiles = tiles_of(height, height.measured, (LINE,))
    assert len(tiles) < 1.3 * MOST
    away = np.abs(LINE.across(tiles.uv)[0])
    assert (tiles.side[away < NEAR_BREAK] == pytest.approx(SIDE)) and tiles.side[away > 0.8].min() > 2 * SIDE


def test_what_is_left_of_white_noise_in_a_tile_follows_from_its_own_nodes() -> None:
    """By hand, node by node: at the edge of a scan heights are worse than elsewhere."""
    height = holed(heights((2.6, 1.7)))
    rng = np.random.default_rng(3)
    se = np.where(height.measured, rng.uniform(2e-4, 4e-4, height.frame.shape), np.nan)
    se[:, :40] *= 12.0
    se[50:60, 100:110] = np.nan
    some = tiles_of(height, height.measured, (), 60)
    assert len(np.unique(some.side)) == 1 and some.side[0] > SIDE
    found = Noise.of(some, height.like(se), 0.0013, 0.1)
    usual = float(np.nanmedian(se**2))
    for own, side, block in zip(found.of_tile, some.side, blocks(some, height), strict=True):
        mean = np.nanmean(se[block] ** 2) if np.isfinite(se[block]).any() else usual
        assert own == pytest.approx(mean / (1 + (side / SHARED) ** 2))
    assert found.white == usual and found.of_tile.max() > 50 * found.of_tile.min()
