"""Triangles that bridge holes of a mesh, against meshes that are whole or were simplified."""

from __future__ import annotations

import numpy as np
import pytest

import lying_scenes as scenes
from crestcut.scan.formats.mesh import bridges, bridging


def test_two_triangles_over_a_hole_are_told_and_measured() -> None:
    points, faces = scenes.mesh(0, hole=(3.1, 3.9), across=(-0.45, 0.45))
    over = bridging(points, faces)
    assert over.sum() == 2 and over[-2:].all()
    (hole,) = bridges(points, faces[over])
    assert hole.area == pytest.approx(0.84 * 0.84, rel=0.02) and hole.faces == 2
    assert (hole.x, hole.y) == pytest.approx((3.52, 0.0), abs=0.03)


def test_a_fan_over_a_hole_is_told_too() -> None:
    """As some apps close one: every point of the rim joined to the first."""
    points, faces = scenes.mesh(0)
    inside = np.hypot(points[:, 0] - 3.5, points[:, 1]) < 0.5
    kept = faces[~inside[faces].any(axis=1)]
    rim = np.unique(faces[inside[faces].any(axis=1) & ~inside[faces].all(axis=1)])
    rim = rim[~inside[rim]]
    rim = rim[np.argsort(np.arctan2(points[rim, 1], points[rim, 0] - 3.5))]
    fan = np.column_stack([np.full(len(rim) - 2, rim[0]), rim[1:-1], rim[2:]])
    over = bridging(points, np.concatenate([kept, fan]))
    assert not over[: len(kept)].any()
    (hole,) = bridges(points, np.concatenate([kept, fan])[over])
    # the fan's few triangles beside its first point are as small as the mesh's own
    assert np.pi * 0.5**2 * 0.75 < hole.area < np.pi * 0.56**2


@pytest.mark.parametrize("seed", range(3))
def test_a_whole_mesh_and_a_simplified_one_have_no_holes(seed: int) -> None:
    for points, faces in (scenes.mesh(seed), scenes.simplified(seed)):
        assert not bridging(points, faces).any()


def test_tall_triangles_of_a_wall_are_no_holes() -> None:
    """0.9 m up a wall and 60 mm along it: as a coarse mesh has them at its rim."""
    points, faces = scenes.mesh(0)
    foot = np.flatnonzero(points[:, 1] > scenes.Y[1] - 0.04)
    foot = foot[np.argsort(points[foot, 0])]
    top = points[foot] + (0.0, 0.01, 0.9)
    up = len(points) + np.arange(len(foot))
    wall = np.concatenate([
        np.column_stack([foot[:-1], foot[1:], up[:-1]]), np.column_stack([foot[1:], up[1:], up[:-1]])
    ])  # fmt: skip
    assert not bridging(np.concatenate([points, top]), np.concatenate([faces, wall])).any()
