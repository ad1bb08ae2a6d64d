"""What a mesh's heights say of its errors: planted roughness comes back, and never more than the prior."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.terrain.error.priors import PRIORS, prior_for
from crestcut.terrain.error.shown import LONGEST, as_smooth_as, of_second_difference, shown_variance
from crestcut.terrain.records import ErrorModel
from simulated import draw_fields

FRAME = GridFrame((0.0, 0.0), 0.0, 0.01, (400, 900))
MESH = prior_for("phone", 0.06)[0]


def drawn(seed: int, warp: float, patch: float, warp_length: float = 0.4) -> HeightGrid:
    """A crest and one drawn error on it, m."""
    model = ErrorModel(0.0, patch, MESH.patch_length, warp, warp_length, "", "", "")
    x = FRAME.node_xy().reshape(-1, 2)[:, 0].reshape(FRAME.shape)
    return HeightGrid(FRAME, -0.08 * np.abs(x - 4.0) + next(draw_fields(model, FRAME, None, seed, 1)))


def test_the_variance_of_second_differences_is_what_fields_have() -> None:
    """Twenty drawn fields; their own scatter is about a twentieth."""
    for apart, half in ((0.12, 0.06), (0.4, 0.4)):
        found = [shown_variance(drawn(k, 0.004, 0.0, half), apart) for k in range(20)]
        assert np.mean(np.array(found, float)) == pytest.approx(
            0.004**2 * of_second_difference(apart, half), rel=0.12
        )


def test_a_planted_patch_comes_back() -> None:
    found = [as_smooth_as(drawn(k, MESH.warp, 0.0018), MESH).patch for k in range(8)]
    assert np.mean(found) == pytest.approx(0.0018, rel=0.15)
    assert max(found) < 0.8 * MESH.patch


def test_a_smooth_mesh_has_no_patch_and_a_long_warp() -> None:
    shown = as_smooth_as(drawn(1, 0.0, 0.0), MESH)
    assert (shown.patch, shown.warp_length) == (0.0, LONGEST)
    assert shown.warp == MESH.warp  # what is longer than the slab does not show


def test_a_smoothed_warp_is_read_as_longer() -> None:
    found = [as_smooth_as(drawn(k, MESH.warp, 0.0, 0.8), MESH).warp_length for k in range(8)]
    assert 0.65 < np.median(found) < 0.95


def test_a_rough_mesh_is_not_made_rougher_than_the_prior() -> None:
    assert as_smooth_as(drawn(2, 2 * MESH.warp, 2 * MESH.patch), MESH) == MESH


def test_too_little_ground_leaves_the_prior() -> None:
    small = HeightGrid(replace(FRAME, shape=(40, 60)), np.zeros((40, 60)))
    assert as_smooth_as(small, MESH) == MESH


def test_a_mesh_is_expected_to_be_rougher_before_it_is_seen() -> None:
    assert MESH.patch > PRIORS["phone"].patch
