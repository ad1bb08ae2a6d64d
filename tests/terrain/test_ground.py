"""Ground against the labels of simulated clutter, and on a real phone scan where it is present."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from street_tile import STREET, street_tile
from surface_scene import GHOST, KERB, LAWN, OBJECT, OVERHANG, SLAB, clutter_scan, scan_of

from crestcut.base.grid import GridFrame
from crestcut.job.records import ScanChoice
from crestcut.scan.load import read_scan
from crestcut.terrain.build import build_surface
from crestcut.terrain.ground.ground import _specks, find_ground
from crestcut.terrain.ground.raster import Lattice

REAL = Path(__file__).parents[3] / "shared" / "realdata" / "phone_slab"


@pytest.fixture(scope="module", params=[(0, 0.006, 6000.0), (1, 0.008, 3000.0)], ids=["6 mm", "8 mm"])
def judged(request):  # type: ignore[no-untyped-def]
    scene = clutter_scan(*request.param)
    lattice = Lattice.around(scene.frame)
    placed = lattice.place(scene.scan.points)
    ground = find_ground(lattice, placed)
    inside = (placed[:, :2] > 0).all(axis=1) & (placed[:, :2] < np.array(lattice.shape[::-1]) - 1).all(axis=1)
    cell = np.rint(placed[:, :2]).astype(int)[inside]
    return scene.label[inside], scene.stands[inside], ground.keep[inside], ground, cell


def test_half_a_percent_of_what_stands_higher_than_25_mm_is_taken_for_ground(judged) -> None:  # type: ignore[no-untyped-def]
    label, stands, keep, _, _ = judged
    assert keep[(label == OBJECT) & (stands > 0.025)].mean() <= 0.005


def test_one_percent_of_the_slab_is_lost(judged) -> None:  # type: ignore[no-untyped-def]
    label, _, keep, _, _ = judged
    assert keep[label == SLAB].mean() >= 0.99


def test_overhang_and_ghosts_go_and_are_said(judged) -> None:  # type: ignore[no-untyped-def]
    label, _, keep, ground, _ = judged
    assert not keep[(label == OVERHANG) | (label == GHOST)].any()
    words = " ".join(what for what, _ in ground.removed)
    assert "standing" in words and "over the ground" in words and "below the ground" in words


def test_a_tyre_may_roll_on_kerb_and_lawn_but_only_slab_is_cut(judged) -> None:  # type: ignore[no-untyped-def]
    label, _, _, ground, cell = judged
    i, j = cell.T
    for kind in (SLAB, KERB, LAWN):
        assert ground.rollable[j, i][label == kind].mean() > 0.95
    assert ground.slab[j, i][label == SLAB].mean() > 0.99
    assert ground.slab[j, i][(label == KERB) | (label == LAWN)].mean() < 0.05


def test_under_what_stands_there_nothing_is_measured() -> None:
    scene = clutter_scan(1)
    surface = build_surface(scene.scan, scene.frame, "phone")
    at = surface.height.sample(np.array([[1.2, 0.8], [3.0, 2.2], [4.4, 0.9]]))
    assert np.isnan(at).all()


@pytest.mark.parametrize("seed", range(3))
def test_a_steep_crest_and_a_smooth_hump_are_no_objects(seed: int) -> None:
    """A fold of 50 % across a strip of 1 m, and a hump 40 mm high as roots make, both at 8 mm noise."""
    rng = np.random.default_rng(seed)
    xy = rng.uniform((-0.3, -0.3), (3.3, 1.3), (17_000, 2))
    fold = 0.25 * np.abs(xy[:, 0] - 0.8 - 0.2 * xy[:, 1])
    hump = 0.04 * np.exp(-0.5 * ((xy[:, 0] - 2.3) ** 2 + (xy[:, 1] - 0.5) ** 2) / 0.2**2)
    points = np.column_stack([xy, hump - fold + 0.008 * rng.standard_normal(len(xy))])
    lattice = Lattice.around(GridFrame((0.0, 0.0), 0.0, 0.010, (101, 301)))
    assert find_ground(lattice, lattice.place(points)).keep.mean() >= 0.99


def test_a_slab_alone_loses_nothing() -> None:
    rng = np.random.default_rng(0)
    xy = rng.uniform(-0.3, 2.3, (20_000, 2))
    scan = scan_of(np.column_stack([xy, 0.1 * xy[:, 0]]))
    lattice = Lattice.around(GridFrame((0.0, 0.0), 0.0, 0.010, (201, 201)))
    assert find_ground(lattice, lattice.place(scan.points)).removed == ()


def test_a_noisy_tile_in_the_midst_of_slab_is_slab() -> None:
    """One of 50 mm, 13 mm over its neighbours, may be cut like them: a walk had one at its crest, and so no
    plan."""
    rng = np.random.default_rng(3)
    points = np.column_stack([rng.uniform(0, 3, (80_000, 2)), rng.normal(0, 0.001, 80_000)])
    points[(np.abs(points[:, :2] - 1.51875) < 0.025).all(axis=1), 2] += 0.013
    lattice = Lattice.around(GridFrame((0.0, 0.0), 0.0, 0.0125, (241, 241)))
    ground = find_ground(lattice, lattice.place(points))
    assert lattice.nodes(ground.slab)[100:145, 100:145].all()


def test_what_is_larger_or_beside_something_else_is_no_speck() -> None:
    slab, other = np.ones((20, 20), bool), np.zeros((20, 20), bool)
    speck, large, beside = np.s_[3:5, 3:5], np.s_[8:11, 8:11], np.s_[15, 15]
    for part in (speck, large, beside):
        slab[part], other[part] = False, True
    slab[15, 16] = False  # an object's tile
    found = _specks(other, slab, 0.05)
    assert found[speck].all()
    assert found.sum() == 4


@pytest.fixture(scope="module")
def real():  # type: ignore[no-untyped-def]
    """Cloud and mesh of one real slab on the same frame, or None where the scans are not beside the
    repository."""
    if not REAL.is_dir():
        print(f"no real scans at {REAL}: nothing is tested on them")
        return None
    scans = [read_scan(ScanChoice((REAL / name,))) for name in ("cloud_24_frames.laz", "app_mesh_y_up.obj")]
    frame = GridFrame((-2.0, -2.0), 0.0, 0.020, (191, 241))
    return scans, [build_surface(scan, frame, "phone") for scan in scans]


def test_cloud_and_mesh_of_a_real_slab_agree_on_the_ground(real) -> None:  # type: ignore[no-untyped-def]
    if real is None:
        return
    scans, surfaces = real
    frame = surfaces[0].height.frame
    seen = []
    for scan in scans:
        q = np.rint(frame.to_grid(scan.points) / frame.cell).astype(int)
        ok = ((q >= 0) & (q < np.array(frame.shape[::-1]))).all(axis=1)
        some = np.zeros(frame.shape, bool)
        some[q[ok, 1], q[ok, 0]] = True
        seen.append(some)
    both = seen[0] & seen[1]
    agree = surfaces[0].rollable[both] == surfaces[1].rollable[both]
    assert agree.mean() >= 0.95


def test_the_chair_on_a_real_slab_is_not_ground(real) -> None:  # type: ignore[no-untyped-def]
    if real is None:
        return
    for surface in real[1]:
        heights = surface.height.values
        assert np.nanmax(heights) - np.nanmedian(heights) < 0.2  # the seat is 0.4 m up
        assert any("standing" in what for what, _ in surface.removed)


@pytest.mark.skipif(not STREET.exists(), reason="the real scans are not part of the project")
def test_labelled_street() -> None:
    """Slopes, cambers, gutters and kerbs over 50 m are ground, as the tile's makers label all of it. Type I:
    ground told to be something else (Sithole & Vosselman 2004, ISPRS filter test; from memory)."""
    tile = street_tile(STREET)
    known = (tile.off < 0.015) & (tile.spread < 0.010)
    assert known.mean() > 0.75
    assert (~tile.keep[known]).mean() < 0.01  # 0.74 % as measured; 3 % asked
    assert (~tile.keep[tile.off > 0.025]).mean() > 0.7  # what lies beside its own surface is no height of it
