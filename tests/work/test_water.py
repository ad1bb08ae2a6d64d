"""Ponds and spill level against a brute-force flood and against basins of known shape."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import ndimage

from crestcut.work.water import _flood, flood, open_edge, ponds, spill, standing_water


def relaxed(z: np.ndarray, seeds: np.ndarray) -> np.ndarray:
    """Brute force: lower every level to the highest of its own ground and its lowest neighbour until nothing
    moves.
    """
    level = np.where(seeds & ~np.isnan(z), z, np.inf)
    while True:
        padded = np.pad(level, 1, constant_values=np.inf)
        near = np.min([padded[1 + j : padded.shape[0] - 1 + j, 1 + i : padded.shape[1] - 1 + i]
                       for j in (-1, 0, 1) for i in (-1, 0, 1)], axis=0)  # fmt: skip
        new = np.where(np.isnan(z), np.inf, np.minimum(level, np.maximum(near, z)))
        if np.array_equal(new, level):
            return level
        level = new


def rough(seed: int, shape: tuple[int, int] = (45, 70)) -> np.ndarray:
    draw = np.random.default_rng(seed)
    z = ndimage.gaussian_filter(draw.normal(size=shape), 4) * 0.2 + 0.002 * np.arange(shape[1])
    z[draw.random(shape) < 0.01] = np.nan
    return z


@pytest.mark.parametrize("seed", range(6))
def test_same_levels_and_ponds_as_brute_force(seed: int) -> None:
    z = rough(seed)
    edge = open_edge(z)
    level, saddle = flood(z, edge)
    known = ~np.isnan(z)
    brute = relaxed(z, edge)
    assert np.abs(level[known] - brute[known]).max() <= 1e-12
    assert np.array_equal(level[known], z.ravel()[saddle[known]])  # the node named is the one that decides
    station, offset = np.arange(z.shape[1]) * 0.02, np.arange(z.shape[0]) * 0.02
    depth = np.where(known, brute - np.nan_to_num(z), 0.0)
    labels, count = ndimage.label(depth > 1e-7, np.ones((3, 3)))
    wanted = sorted(
        (float(depth[labels == k].max()), float(depth[labels == k].sum()) * 4e-4) for k in range(1, count + 1)
    )
    found = sorted((p.deepest, p.volume) for p in ponds(z, 0.02, station, offset, least=0.0, least_area=0.0))
    assert len(found) == len(wanted) > 3
    assert np.allclose(found, wanted, atol=2e-4 / 1000)


@pytest.mark.parametrize("seed", range(4))
def test_spill_level_equals_brute_force(seed: int) -> None:
    z = rough(seed + 50)
    gutter, building = np.zeros(z.shape, bool), np.zeros(z.shape, bool)
    gutter[:, :3], building[:, -3:] = True, True
    found = spill(z, gutter, building, np.arange(z.shape[1]) * 0.02, np.arange(z.shape[0]) * 0.02)
    assert found is not None
    level = relaxed(z, gutter)
    wanted = float(level[building & ~np.isnan(z)].min()) - float(np.nanmin(z[:, :3]))
    assert found.height == pytest.approx(wanted, abs=1e-12)


def test_a_bowl_holds_its_lowest_rim() -> None:
    """A cone 30 mm deep in a plane, with a 20 mm notch in its rim: 10 mm stay."""
    x, y = np.meshgrid(np.arange(-60, 61) * 0.01, np.arange(-60, 61) * 0.01)
    r = np.hypot(x, y)
    z = np.where(r < 0.3, -0.03 * (1 - r / 0.3), 0.0)
    z[(np.abs(y) < 0.006) & (x > 0)] = np.minimum(z[(np.abs(y) < 0.006) & (x > 0)], -0.02)
    axis = np.arange(121) * 0.01
    (pond,) = ponds(z, 0.01, axis, axis)
    assert pond.deepest == pytest.approx(0.010, abs=1e-12)
    # a cone of height h and radius r holds pi r^2 h / 3
    assert pond.volume == pytest.approx(np.pi * 0.1**2 * 0.010 / 3, rel=0.05)


def test_a_cut_through_the_crest_lowers_the_spill_level() -> None:
    """A crest 100 mm over the gutter; a 10 mm cut right across a part of it lets water over 10 mm earlier."""
    u = np.arange(200) * 0.01
    z = np.tile(0.1 - 0.1 * np.abs(u - 1.0), (30, 1))
    gutter, building = np.zeros(z.shape, bool), np.zeros(z.shape, bool)
    gutter[:, 0], building[:, -1] = True, True
    before = spill(z, gutter, building, u, np.arange(30) * 0.01)
    cut = z.copy()
    cut[10:15] = np.minimum(cut[10:15], 0.09)
    after = spill(cut, gutter, building, u, np.arange(30) * 0.01)
    assert before is not None and after is not None
    assert before.height - after.height == pytest.approx(0.010, abs=1e-12)
    assert 0.10 <= after.offset <= 0.14


def test_no_measured_way_is_not_a_level() -> None:
    z = np.zeros((10, 30))
    z[:, 15] = np.nan
    gutter, building = np.zeros(z.shape, bool), np.zeros(z.shape, bool)
    gutter[:, 0], building[:, -1] = True, True
    assert spill(z, gutter, building, np.arange(30.0), np.arange(10.0)) is None
    assert np.isnan(standing_water(z)[:, 15]).all()


def test_the_flood_is_compiled_for_one_type_alone() -> None:
    """Heights of a surface may not be written on, those of a cut may; a part of either is in no one piece."""
    heights = np.arange(30.0).reshape(5, 6)
    frozen = heights.copy()
    frozen.flags.writeable = False
    for z in (heights, frozen, frozen[::2, ::2], heights.T):
        seeds = open_edge(z)
        seeds.flags.writeable = False
        flood(z, seeds)
    assert len(_flood.signatures) == 1  # type: ignore[attr-defined]
