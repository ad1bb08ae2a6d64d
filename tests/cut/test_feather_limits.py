"""Feather and limits: the cone's properties, polygons, and what each limit says."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.base.grid import GridFrame
from crestcut.cut.area import inside
from crestcut.cut.feather import NO_ROOT, feather_in, feather_out
from crestcut.cut.limits import KeepArea, cut_limits
from scenes import surface_of

CELL = 0.01


def brute(depth: np.ndarray, slope: float) -> np.ndarray:
    j, i = np.indices(depth.shape)
    out = depth.copy()
    for jj in range(depth.shape[0]):
        for ii in range(depth.shape[1]):
            away = np.hypot(j - jj, i - ii) * CELL
            out[jj, ii] = max(out[jj, ii], (depth - slope * away)[depth > 0].max(initial=0.0))
    return out


@pytest.mark.parametrize("slope", [0.25, 0.1])
def test_spreads_a_cone_from_every_cut_node(slope: float) -> None:
    rng = np.random.default_rng(3)
    depth = np.where(rng.random((30, 34)) < 0.02, rng.uniform(0, 0.02, (30, 34)), 0.0)
    out, root = feather_out(depth, slope, CELL)
    assert out == pytest.approx(brute(depth, slope), abs=1e-12)
    assert feather_out(out, slope, CELL)[0] == pytest.approx(out, abs=1e-12)  # once is enough
    j, i = np.nonzero(root != NO_ROOT)
    rj, ri = np.divmod(root[j, i], 34)
    assert out[j, i] == pytest.approx(depth[rj, ri] - slope * CELL * np.hypot(rj - j, ri - i), abs=1e-12)


def test_the_limit_beside_an_area_grows_with_the_feather() -> None:
    allowed = np.full((21, 41), 0.013)
    allowed[:, :10] = 0.0
    tapered = feather_in(allowed, 0.25, CELL)
    assert tapered[10, 9:16] == pytest.approx([0, 0.0025, 0.005, 0.0075, 0.01, 0.0125, 0.013], abs=1e-12)


def test_polygon_nodes_by_even_odd_with_its_edge() -> None:
    frame = GridFrame((0.0, 0.0), 0.0, 0.1, (21, 21))
    square = inside(frame, [(0.5, 0.5), (1.5, 0.5), (1.5, 1.5), (0.5, 1.5)])
    assert square.sum() == 11 * 11
    turned = inside(frame, [(1.0, 0.3), (1.7, 1.0), (1.0, 1.7), (0.3, 1.0)])
    xy = frame.node_xy()
    assert (turned == (np.abs(xy[..., 0] - 1) + np.abs(xy[..., 1] - 1) <= 0.7 + 1e-9)).all()


def test_each_limit_is_named() -> None:
    frame = GridFrame((0.0, 0.0), 0.0, CELL, (50, 100))
    holes = np.zeros(frame.shape, bool)
    holes[:, 90:] = True
    surface = surface_of(lambda x, y: 0 * x, frame, holes)
    drain = KeepArea("drain", ((0.1, 0.0), (0.2, 0.0), (0.2, 0.5), (0.1, 0.5)), 0.002)
    limits = cut_limits(surface, 0.013, "an eighth of the slab", 0.25, [drain])
    why = lambda j, i: limits.reasons[limits.reason[j, i]]  # noqa: E731
    assert (limits.deepest.values[25, 15], why(25, 15)) == (0.002, "keep area (drain)")
    assert (limits.deepest.values[25, 60], why(25, 60)) == (0.013, "an eighth of the slab")
    assert why(25, 22) == "feather beside a keep area"
    assert (limits.deepest.values[25, 95], why(25, 95)) == (0.0, "not measured")
