"""Extent, density, noise, holes and two disagreeing passes are measured as planted."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from scan_scene import LENGTH, WIDTH, ground, slab_cloud

from crestcut.base.grid import FloatArray
from crestcut.scan.health import assess, near_ground
from crestcut.scan.records import Frame, Scan, ScanFile
from crestcut.scan.verdict import crest_rounding, settles


def scan_of(points: FloatArray, edge: float | None = None) -> Scan:
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    file = ScanFile(Path("a.ply"), "PLY", "0" * 64, len(points), 0, edge, "declared", "declared")
    return Scan(points, np.zeros(len(points), np.int16), frame, (file,))


@pytest.mark.parametrize("noise", [0.002, 0.006, 0.012])
@pytest.mark.parametrize("density", [1500, 12_000])
def test_noise_is_found_on_a_slope(noise: float, density: int) -> None:
    points = slab_cloud(int(density * LENGTH * WIDTH), 3, noise)
    assert assess(scan_of(points)).noise == pytest.approx(noise, rel=0.05)


def test_things_on_the_slab_do_not_raise_the_noise() -> None:
    points = slab_cloud(150_000, 3, 0.005)
    pot = (np.hypot(points[:, 0] - 2.0, points[:, 1] - 2.0) < 0.5) & (np.arange(len(points)) % 2 == 0)
    points[pot, 2] += np.random.default_rng(1).random(int(pot.sum())) * 0.5
    assert assess(scan_of(points)).noise == pytest.approx(0.005, rel=0.06)


def test_density_is_that_of_the_ground() -> None:
    health = assess(scan_of(slab_cloud(72_000)))
    assert health.density_median == pytest.approx(3000.0, rel=0.05)
    assert health.density_low < health.density_median
    assert health.area == pytest.approx(LENGTH * WIDTH, rel=0.03)
    assert health.extent[:2] == pytest.approx((LENGTH, WIDTH), abs=0.03)


def test_holes_are_found_where_they_are() -> None:
    points = slab_cloud(150_000)
    gone = (np.abs(points[:, 0] - 2.0) < 0.3) & (np.abs(points[:, 1] - 1.5) < 0.2)
    small = np.hypot(points[:, 0] - 4.5, points[:, 1] - 3.0) < 0.15
    health = assess(scan_of(points[~gone & ~small]))
    assert len(health.holes) == 2
    large, round_one = health.holes
    assert (large.x, large.y) == pytest.approx((2.0, 1.5), abs=0.05)
    assert large.area == pytest.approx(0.24, abs=0.06)
    assert (round_one.x, round_one.y) == pytest.approx((4.5, 3.0), abs=0.05)
    assert health.hole_mask.sum() * health.hole_frame.cell**2 == pytest.approx(
        sum(h.area for h in health.holes)
    )


def test_a_whole_slab_has_no_holes() -> None:
    assert assess(scan_of(slab_cloud(72_000))).holes == ()


def test_two_passes_that_disagree_are_said() -> None:
    points = slab_cloud(200_000, 3, 0.003)
    points[::2, 2] += 0.03
    health = assess(scan_of(points))
    assert health.two_layers > 0.5 and health.layers_apart == pytest.approx(0.025, abs=0.006)
    assert any("two passes disagree" in note for note in health.notes)
    assert assess(scan_of(slab_cloud(200_000, 3, 0.006))).two_layers < 0.02


def test_a_ceiling_is_not_ground() -> None:
    floor = slab_cloud(20_000)
    ceiling = slab_cloud(20_000, 2) + np.array([0.0, 0.0, 2.6])
    keep = near_ground(np.vstack([floor, ceiling]))
    assert keep[:20_000].all() and not keep[20_000:].any()


def test_a_thin_scan_can_decide_nothing() -> None:
    health = assess(scan_of(slab_cloud(300)))
    assert len(health.decides) == 1 and health.decides[0].startswith("nothing about a slab")
    assert np.isnan(health.noise)


def test_a_better_scanner_settles_smaller_gaps() -> None:
    assert (
        settles("terrestrial", 3000.0, 0.002)
        < settles("phone", 3000.0, 0.006)
        <= settles(None, 3000.0, 0.006)
    )
    # 1.96 times 5.4 mm, and white noise that hardly counts: 6 mm over the 30 points of a 0.1 m patch.
    assert settles("phone", 3000.0, 0.006) == pytest.approx(1.96 * np.hypot(0.0054, 0.006 / np.sqrt(30.0)))


def test_a_mesh_says_how_far_it_may_have_cut_the_crest() -> None:
    # A chord of length e from one side of a crest to the other, both grades k/2: (e/2)(k/2) under it.
    e, k = 0.0602, 0.20
    x = np.array([-e / 2, e / 2])
    assert crest_rounding(e, k) == pytest.approx(0.0 - np.mean(-np.abs(x) * k / 2))
    health = assess(scan_of(slab_cloud(40_000), edge=e))
    assert any("mesh with triangles of 60 mm" in n and "3.0 mm" in n for n in health.notes)
    assert np.isnan(health.noise)


def test_ground_of_the_scene_is_what_it_says() -> None:
    assert float(ground(np.array(3.2), np.array(0.0))) == pytest.approx(0.32)
