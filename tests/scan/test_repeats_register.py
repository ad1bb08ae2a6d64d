"""Repeats of a slab are laid on the first scan without sliding along it, or refused."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from e57_edit import edit_xml
from scan_scene import UTM, cluttered_cloud, ground, slab_cloud, smooth_warp, turned
from scipy.spatial.transform import Rotation

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.job.records import ScanChoice
from crestcut.scan.load import read_scan
from crestcut.scan.registering.register import Reference, register


def warped(points: FloatArray, seed: int) -> FloatArray:
    moved = points.copy()
    moved[:, 2] += smooth_warp(points, seed)
    return moved


def test_a_known_pose_comes_back() -> None:
    first, second = cluttered_cloud(seed=2), cluttered_cloud(seed=3)
    moved = turned(second, 0.03, (0.06, -0.05, 0.02))
    fit = register(Reference(first), moved)
    assert fit.good and not fit.held
    np.testing.assert_allclose(fit.apply(moved), second, atol=0.002)
    assert fit.error < 0.005


def test_one_huge_outlier_changes_nothing() -> None:
    first, second = cluttered_cloud(seed=2), cluttered_cloud(seed=3)
    moved = turned(second, 0.03, (0.06, -0.05, 0.02))
    spoiled = np.vstack([moved, [[3.0, 2.0, 90.0]], np.tile([1.0, 1.0, 1.4], (400, 1))])
    fit = register(Reference(first), spoiled)
    np.testing.assert_allclose(fit.apply(moved), second, atol=0.002)


def test_a_flat_slab_does_not_slide_under_its_warp() -> None:
    # A plane with 5 mm of warp says nothing of shift and turn in plan: they must stay, height and tilt must
    # not.
    plane = slab_cloud(40_000, 4)
    plane[:, 2] -= ground(plane[:, 0], plane[:, 1])
    again = slab_cloud(40_000, 5)
    again[:, 2] -= ground(again[:, 0], again[:, 1])
    moved = warped(again, 11) + np.array([0.0, 0.0, 0.03])
    moved[:, 2] += 0.004 * moved[:, 0]
    fit = register(Reference(warped(plane, 10)), moved)
    assert len(fit.held) == 3
    laid = fit.apply(moved)
    np.testing.assert_allclose(laid[:, :2], moved[:, :2], atol=0.001)
    assert abs(np.mean(laid[:, 2])) < 0.003
    slope = np.polyfit(laid[:, 0], laid[:, 2], 1)[0]
    assert abs(slope) < 0.002


def test_a_straight_crest_holds_across_and_not_along() -> None:
    # The crest runs along y: a shift in x is settled by the shape, a shift along y is not and changes no
    # height.
    # Twice as steep as the apron: its own 12 % break in 5 mm of warp is, rightly, held.
    first, second = (warped(slab_cloud(90_000, k) * [1.0, 1.0, 2.0], k + 6) for k in (6, 7))
    moved = second + np.array([0.05, 0.0, 0.01])
    fit = register(Reference(first), moved)
    laid = fit.apply(moved)
    assert fit.good
    assert any("y" in h for h in fit.held)
    assert abs(np.median(laid[:, 0] - second[:, 0])) < 0.012
    assert abs(np.median(laid[:, 1] - moved[:, 1])) < 0.005
    assert abs(np.median(laid[:, 2] - 2.0 * ground(laid[:, 0], laid[:, 1]))) < 0.003


def test_what_stands_on_half_a_slab_still_draws_a_scan_to_its_place() -> None:
    """The slab between fits to a few millimetres at once; sides of box and kerb, 50 mm off, must have a say
    before it does."""
    first, second = warped(cluttered_cloud(seed=2), 100), warped(cluttered_cloud(seed=3), 101)
    first, second = first[first[:, 0] < 4.0], second[second[:, 0] > 2.0]
    rng = np.random.default_rng([0, 3])  # the first pair of the bench
    turn = Rotation.from_rotvec(rng.uniform(-1, 1, 3) * [0.004, 0.004, 0.02]).as_matrix()
    moved = second @ turn.T + rng.uniform(-1, 1, 3) * [0.05, 0.05, 0.03]
    fit = register(Reference(first), moved)
    begun, left = (np.hypot(*(p - second)[:, :2].mean(axis=0)) for p in (moved, fit.apply(moved)))
    assert left < begun / 2


def test_repeats_in_map_coordinates_are_one_scan(tmp_path: Path) -> None:
    first, second = cluttered_cloud(20_000, 2), cluttered_cloud(20_000, 3)
    w.write_las(tmp_path / "a.laz", first + UTM, 32632, time=np.arange(len(first), dtype=float))
    w.write_las(
        tmp_path / "b.laz", second + UTM + [0.02, -0.03, 0.015], 32632, time=np.arange(len(second)) + 1e5
    )
    scan = read_scan(ScanChoice((tmp_path / "a.laz", tmp_path / "b.laz")))
    assert [f.points for f in scan.files] == [len(first), len(second)]
    assert np.bincount(scan.source).tolist() == [len(first), len(second)]
    assert scan.files[0].fit_error is None
    assert scan.files[1].fit_error is not None and scan.files[1].fit_error < 0.005
    assert scan.time is not None and len(scan.time) == len(scan.points)
    laid = scan.points[scan.source == 1] + scan.frame.shift - UTM
    np.testing.assert_allclose(laid, second, atol=0.004)
    assert any("b.laz: laid on a.laz" in note for note in scan.notes)


def test_a_walk_in_a_frame_of_its_own_is_found(tmp_path: Path) -> None:
    first, second = cluttered_cloud(20_000, 2), cluttered_cloud(20_000, 3)
    w.write_ply(tmp_path / "a.ply", first, "binary_little_endian")
    w.write_ply(tmp_path / "b.ply", turned(second, 1.9, (14.0, -7.0, 1.2)), "binary_little_endian")
    scan = read_scan(ScanChoice((tmp_path / "a.ply", tmp_path / "b.ply")))
    laid = scan.points[scan.source == 1]
    np.testing.assert_allclose(laid[:, 2], second[:, 2], atol=0.01)
    np.testing.assert_allclose(laid[:, :2], second[:, :2], atol=0.04)
    assert any("what stands on the slab" in note for note in scan.notes)


def test_another_slab_is_refused(tmp_path: Path) -> None:
    # A dip where the first has a crest, with other things on it.
    other = slab_cloud(20_000, 8)
    other[:, 2] = np.abs(other[:, 0] - 3.0) * 0.18 + np.random.default_rng(9).normal(0.0, 0.004, len(other))
    w.write_ply(tmp_path / "a.ply", cluttered_cloud(20_000, 2), "binary_little_endian")
    w.write_ply(tmp_path / "b.ply", other, "binary_little_endian")
    with pytest.raises(CrestcutError, match=r"does not register|more than one place"):
        read_scan(ScanChoice((tmp_path / "a.ply", tmp_path / "b.ply")))


def test_a_bare_plane_in_another_frame_is_refused(tmp_path: Path) -> None:
    # A plane fits on a plane anywhere: an answer would be an invention.
    for name, seed in (("a.ply", 4), ("b.ply", 5)):
        plane = slab_cloud(20_000, seed)
        plane[:, 2] -= ground(plane[:, 0], plane[:, 1])
        plane = plane[plane[:, 0] < 3.0]
        moved = plane if name == "a.ply" else turned(plane, 0.8, (40.0, 3.0, 0.0))
        w.write_ply(tmp_path / name, moved, "binary_little_endian")
    with pytest.raises(CrestcutError, match=r"more than one place|does not register"):
        read_scan(ScanChoice((tmp_path / "a.ply", tmp_path / "b.ply")))


@pytest.mark.parametrize(
    ("one", "other", "said"),
    [(32632, 32633, "is in EPSG:32633, a.laz in EPSG:32632"), ("EPSG:25832+7837", 31467, "is in EPSG:31467")],
)
def test_scans_of_two_reference_systems_are_refused(
    one: int | str, other: int | str, said: str, tmp_path: Path
) -> None:
    for name, system in (("a.laz", one), ("b.laz", other)):
        w.write_las(tmp_path / name, cluttered_cloud(20_000) + UTM, system)
    with pytest.raises(CrestcutError, match=said) as caught:
        read_scan(ScanChoice((tmp_path / "a.laz", tmp_path / "b.laz")))
    assert "b.laz" in caught.value.where


def test_one_system_with_and_without_heights_is_one(tmp_path: Path) -> None:
    for name, system in (("a.laz", "EPSG:25832+7837"), ("b.laz", 25832), ("c.laz", None)):
        w.write_las(tmp_path / name, cluttered_cloud(20_000) + UTM, system)
    scan = read_scan(ScanChoice(tuple(tmp_path / f"{n}.laz" for n in "abc")))
    assert scan.frame.system.plan == "EPSG:25832" and len(scan.files) == 3


def test_an_e57_names_its_system_too(tmp_path: Path) -> None:
    from pyproj import CRS

    w.write_e57(tmp_path / "a.e57", [cluttered_cloud(20_000)], [(np.array([1.0, 0, 0, 0]), UTM)])
    text = (
        f'<coordinateMetadata type="String"><![CDATA[{CRS.from_epsg(32633).to_wkt()}]]></coordinateMetadata>'
    )
    edit_xml(tmp_path / "a.e57", lambda xml: re.sub("<coordinateMetadata[^>]*/>", lambda _: text, xml))
    w.write_las(tmp_path / "b.laz", cluttered_cloud(20_000) + UTM, 32632)
    with pytest.raises(CrestcutError, match=r"is in EPSG:32632, a.e57 in EPSG:32633"):
        read_scan(ScanChoice((tmp_path / "a.e57", tmp_path / "b.laz")))


def test_a_repeat_of_another_place_is_not_searched_for(tmp_path: Path) -> None:
    first, again = cluttered_cloud(20_000, 2), cluttered_cloud(20_000, 3)
    w.write_ply(tmp_path / "a.ply", first, "binary_little_endian")
    w.write_ply(
        tmp_path / "b.ply", again + np.array([500_012.345, 5_800_034.567, 111.0]), "binary_little_endian"
    )
    with pytest.raises(CrestcutError, match=r"5,822 km from those of a.ply") as caught:
        read_scan(ScanChoice((tmp_path / "a.ply", tmp_path / "b.ply"), "m", "z"))
    assert "b.ply" in caught.value.where and "one reference system" in caught.value.mend
