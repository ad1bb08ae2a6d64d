"""What the slab keeps of the fine rest of a fit, and how much of that is taken for the scan's."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import ndimage

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.terrain.error.draws import FieldMaker
from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.averages import tiles_of
from crestcut.terrain.slab.behind import slab_behind
from crestcut.terrain.slab.kept import FINE_SMOOTH, narrow_part
from crestcut.terrain.slab.noise import noise_of


def plane(cell: float, size: tuple[float, float]) -> HeightGrid:
    frame = GridFrame((0.0, 0.0), 0.0, cell, (round(size[1] / cell) + 1, round(size[0] / cell) + 1))
    return HeightGrid(frame, 0.02 * frame.node_xy()[..., 0])


def drawn(height: HeightGrid, seed: int, patch: float, warp: float) -> tuple[HeightGrid, ErrorModel]:
    model = ErrorModel(0.001, patch, 0.1, warp, 0.4, "", "", "", known=Known.NAMED)
    wrong = FieldMaker(model, height.frame, None).draw(np.random.default_rng(seed))
    return height.like(height.values + wrong), model


def test_narrow_part_of_a_warp_is_that_of_fields_drawn() -> None:
    flat = plane(0.02, (4.0, 4.0))
    size = FINE_SMOOTH / 2.5 / 0.02
    found = []
    for seed in range(4):
        seen, _ = drawn(flat, seed, 0.0, 1.0)
        z = seen.values - flat.values
        found.append((z - ndimage.gaussian_filter(z, size))[25:-25, 25:-25].var())
    assert narrow_part(0.4) == pytest.approx(np.sqrt(np.mean(found)), rel=0.08)


def test_nothing_is_kept_of_a_plane_under_a_phones_error_and_a_lip_is() -> None:
    flat = plane(0.02, (3.0, 2.5))
    seen, model = drawn(flat, 1, 0.0013, 0.005)
    patch = (slice(60, 68), slice(70, 78))
    for tall in (0.0, 0.012):  # a patch of mortar 0.16 m wide: narrower than what tiles show
        real = np.zeros(flat.frame.shape)
        real[patch] = tall
        z = seen.like(seen.values + real)
        known = z.measured
        surface = Surface(z, z, z.like(np.full(known.shape, 1e-4)), known, known, model, (), known.size)
        slab = slab_behind(surface, model)
        off = slab.height.values - flat.values
        rough = off - ndimage.gaussian_filter(off, FINE_SMOOTH / 2.5 / 0.02)
        if tall == 0.0:
            assert np.abs(rough).max() < 0.0015  # 4 mm and more where the largest of many is kept
        else:
            around = np.median(off[52:76, 62:86])
            # 0.57 of it: what a phone's own patches are large enough to make is not kept
            assert off[62:66, 72:76].mean() - around > 0.55 * tall


@pytest.mark.parametrize("cell", [0.05, 0.033, 0.01])
def test_patches_are_told_from_tiles_of_few_nodes_too(cell: float) -> None:
    """A mean square of one degree of freedom has a median of less than half of it."""
    flat = plane(cell, (5.0, 4.0))
    model = ErrorModel(0.0, 0.002, 0.1, 0.0, 0.4, "", "", "")
    wrong = FieldMaker(model, flat.frame, None).draw(np.random.default_rng(0))
    z = flat.like(flat.values + wrong)
    tiles = tiles_of(z, z.measured, (), 10_000)
    _, fine = noise_of(tiles, z.like(np.full(z.frame.shape, 1e-6)), 0.002, 0.1)
    assert 0.0017 < fine < 0.00201


def test_tiles_are_fine_on_a_hump_and_every_node_is_in_one() -> None:
    flat = plane(0.02, (6.0, 5.0))
    seen, _ = drawn(flat, 2, 0.00025, 0.0005)
    u, v = (flat.frame.node_xy()[..., k] for k in (0, 1))
    hump = 0.005 * np.cos(np.minimum(np.hypot(u - 3.1, v - 2.3) / 0.2, 1.0) * np.pi / 2) ** 2
    z = seen.like(seen.values + hump)
    tiles = tiles_of(z, z.measured, (), 400)
    on = np.hypot(*(tiles.uv - (3.1, 2.3)).T) < 0.12
    assert tiles.side[on].max() < 0.11 and np.median(tiles.side) > 0.25
    # of the last row and column only what a large tile takes with it
    assert z.measured[:-1, :-1].sum() <= tiles.nodes.sum() <= z.measured.sum()
    assert len(tiles) < 500
