"""Properties of the whole step from points to surface: frames, holes, adding points, meshes, bad input."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from surface_scene import Crest, clutter_scan, crest_scan, scan_of

from crestcut.base import parallel
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import GridFrame
from crestcut.scan.records import Scan, ScanFile
from crestcut.terrain.build import build_surface


def test_turning_and_moving_scan_and_frame_together_changes_nothing() -> None:
    scan, frame = crest_scan(Crest("sharp", 0.3), 0, size=(1.0, 0.8))
    turn, move = 0.7, np.array([12.0, -7.0])
    c, s = np.cos(turn), np.sin(turn)
    matrix = np.array([[c, -s], [s, c]])
    moved = scan_of(np.column_stack([scan.points[:, :2] @ matrix.T + move, scan.points[:, 2]]))
    origin = matrix @ np.array(frame.origin) + move
    other = GridFrame((float(origin[0]), float(origin[1])), turn, frame.cell, frame.shape)
    a, b = build_surface(scan, frame, "phone"), build_surface(moved, other, "phone")
    assert np.array_equal(a.height.measured, b.height.measured)
    assert np.nanmax(np.abs(a.height.values - b.height.values)) < 1e-6


def test_points_in_another_order_or_more_points_do_not_move_it() -> None:
    scan, frame = crest_scan(Crest("sharp", 0.3), 1, size=(1.0, 0.8))
    once = build_surface(scan, frame, "phone").height.values
    shuffled = scan_of(scan.points[np.random.default_rng(0).permutation(len(scan.points))])
    assert np.nanmax(np.abs(build_surface(shuffled, frame, "phone").height.values - once)) < 1e-6
    more, _ = crest_scan(Crest("sharp", 0.3), 101, size=(1.0, 0.8))
    joined = build_surface(scan_of(np.concatenate([scan.points, more.points])), frame, "phone").height.values
    assert abs(np.nanmean(joined - once)) < 3e-4  # the old surface's own mean is good to 0.2 mm


def test_holes_stay_holes_and_nothing_grows_over_the_edge() -> None:
    scan, frame = crest_scan(Crest("sharp", 0.0, at=(5.0, 0.0)), 2)
    x, y = scan.points[:, 0], scan.points[:, 1]
    seen = (np.hypot(x, y) > 0.15) & (x < 0.6)
    surface = build_surface(scan_of(scan.points[seen]), frame, "phone")
    xy = frame.node_xy()
    measured = surface.height.measured
    assert not measured[np.hypot(xy[..., 0], xy[..., 1]) < 0.10].any()
    assert not measured[xy[..., 0] > 0.63].any()
    assert measured[(np.hypot(xy[..., 0], xy[..., 1]) > 0.2) & (xy[..., 0] < 0.55)].all()
    assert np.isnan(surface.standard_error.values[~measured]).all()
    assert np.isnan(surface.top.values[~measured]).all()
    assert not surface.rollable[~measured].any()


def test_top_is_never_below_the_height() -> None:
    surface = build_surface(*crest_scan(Crest("sharp", 0.3), 3), "phone")
    assert np.nanmin(surface.top.values - surface.height.values) >= 0.0


def test_a_wide_cell_keeps_the_crest_between_its_nodes() -> None:
    """Half a cell times the grade: +-10 % midway between nodes 40 mm apart stands 2 mm over both."""
    scan, _ = crest_scan(
        Crest("sharp", 0.0, grade=0.20, at=(0.02, 0.0)), 2, noise=0.0, density=40_000, size=(1.2, 1.0)
    )
    points = scan.points.copy()
    points[:, 2] += 0.10 * points[:, 0]
    wide = GridFrame((-0.6, -0.5), 0.0, 0.040, (26, 31))
    surface = build_surface(scan_of(points), wide)
    column = 15
    lift = (surface.top.values - surface.height.values)[5:-5, column : column + 2]
    assert np.median(lift) == pytest.approx(2.0e-3, abs=0.3e-3)


def test_the_standard_error_is_that_of_repeats() -> None:
    """White noise only: errors over their standard errors have unit spread on plain parts."""
    crest = Crest("sharp", 0.2)
    ratio = []
    for seed in range(4):
        surface = build_surface(*crest_scan(crest, 10 + seed), "phone")
        xy = surface.height.frame.node_xy()
        plain = np.abs(crest.across(xy)) > 0.35
        ratio.append(((surface.height.values - crest.height(xy)) / surface.standard_error.values)[plain])
    assert np.sqrt(np.nanmean(np.concatenate(ratio) ** 2)) == pytest.approx(1.0, abs=0.3)


def test_a_mesh_says_how_far_its_triangles_may_have_cut_the_crest() -> None:
    scan, frame = crest_scan(Crest("sharp", 0.2), 4, noise=0.0, density=20_000, size=(1.2, 1.0))
    file = ScanFile(Path("slab.obj"), "OBJ", "0", len(scan.points), 0, 0.060, "m", "z")
    mesh = Scan(scan.points, scan.source, scan.frame, (file,))
    notes = " ".join(build_surface(mesh, frame, "phone").notes)
    assert "60 mm" in notes and "3.0 mm" in notes  # a fold of 20 % over an edge of 60 mm: 0.2 x 60 / 4


def test_a_given_error_model_is_kept() -> None:
    scan, frame = crest_scan(Crest("sharp", 0.2), 5, size=(1.0, 0.8))
    own = replace(build_surface(scan, frame, "phone").error, warp=0.0123)
    assert build_surface(scan, frame, "phone", own).error is own


def test_too_few_ground_points_are_refused_in_one_line() -> None:
    scan, frame = crest_scan(Crest("sharp"), 6)
    away = GridFrame((50.0, 50.0), 0.0, 0.010, frame.shape)
    with pytest.raises(CrestcutError, match="ground points"):
        build_surface(scan, away, "phone")


@pytest.mark.parametrize("apart", [0.04, 0.09])
def test_a_slab_that_two_passes_show_twice_is_refused(apart: float) -> None:
    """Over half of it, as where a walk comes back; a leaf or a box over the slab is none."""
    scan, frame = crest_scan(Crest("sharp", 0.3), 7)
    second, _ = crest_scan(Crest("sharp", 0.3), 8)
    again = second.points[second.points[:, 0] < 0.0] + (0.0, 0.0, apart)
    with pytest.raises(CrestcutError, match=r"twice, [0-9]+ mm apart"):
        build_surface(scan_of(np.concatenate([scan.points, again])), frame, "phone")


def test_much_that_stands_on_a_slab_is_no_second_slab() -> None:
    scene = clutter_scan(0)
    assert build_surface(scene.scan, scene.frame, "phone").points_used > 0


def test_a_slab_is_the_same_to_the_last_bit_on_any_number_of_cores(monkeypatch: pytest.MonkeyPatch) -> None:
    scan, frame = crest_scan(Crest("step", 0.3), 1)
    found = []
    for cores in (1, 2, 8):
        monkeypatch.setattr(parallel, "WORKERS", cores)
        surface = build_surface(scan, frame, "phone")
        found.append((surface.height.values.tobytes(), surface.standard_error.values.tobytes()))
    assert found[0] == found[1] == found[2]
