"""What a scan's record says of a guessed unit, of coarse coordinates and of stations that disagree, typed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from scan_scene import UTM, cluttered_cloud, slab_cloud, slab_mesh, y_up

from crestcut.base.grid import FloatArray
from crestcut.base.units import FOOT
from crestcut.job.records import ScanChoice
from crestcut.report.look import health_lines, look_record
from crestcut.report.words.look_grade import NO_USE, grade
from crestcut.scan.health import assess
from crestcut.scan.load import read_file, read_scan
from crestcut.scan.records import Scan

STILL = (np.array([1.0, 0.0, 0.0, 0.0]), np.zeros(3))


def test_a_slab_that_only_metres_make_is_guessed_without_a_rival(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud())  # 6 m long: 1.8 m in feet, 0.15 m in inches
    file = read_file(tmp_path / "a.xyz").files[0]
    assert file.unit_guessed and file.up_guessed and file.unit_alternatives == ()


def test_a_slab_in_feet_taken_for_metres_has_feet_for_a_rival(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud(20_000) / FOOT)
    scan = read_file(tmp_path / "a.xyz")
    assert scan.frame.unit == "m" and scan.files[0].unit_alternatives == ("ft",)
    assert any("in ft it would be a slab too" in note for note in assess(scan).notes)


def test_what_is_said_is_no_guess(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud() / FOOT)
    file = read_file(tmp_path / "a.xyz", "ft", "z").files[0]
    assert not file.unit_guessed and not file.up_guessed and file.unit_alternatives == ()
    w.write_glb(tmp_path / "a.glb", *w.gltf_document(y_up(slab_mesh()[0]), slab_mesh()[1], np.zeros(3)))
    file = read_file(tmp_path / "a.glb").files[0]
    assert not file.unit_guessed and not file.up_guessed


def _singles(points: FloatArray) -> FloatArray:
    return points.astype(np.float32).astype(float)


def _gltf(path: Path, points: FloatArray) -> None:
    w.write_glb(path, *w.gltf_document(y_up(points), None, np.zeros(3)))


def _pcd(path: Path, points: FloatArray) -> None:
    w.write_pcd(path, points, "binary")


WRITERS: dict[str, Callable[[Path, FloatArray], None]] = {
    "a.ply": lambda p, xyz: w.write_ply(p, xyz, "binary_little_endian", real="float"),
    "b.ply": lambda p, xyz: w.write_ply(p, _singles(xyz), "ascii", real="float"),
    "a.pcd": lambda p, xyz: _pcd(p, _singles(xyz)),
    "a.xyz": lambda p, xyz: w.write_rows(p, _singles(xyz)),
    "a.glb": _gltf,
    "a.e57": lambda p, xyz: w.write_e57(p, [_singles(xyz)], [STILL]),
}


@pytest.mark.parametrize("name", WRITERS)
def test_singles_far_from_their_origin_are_named(name: str, tmp_path: Path) -> None:
    WRITERS[name](tmp_path / name, slab_cloud(20_000) + UTM)
    scan = read_scan(ScanChoice((tmp_path / name,), "m", "y" if name == "a.glb" else "z"))
    assert scan.files[0].quantum == 0.5  # float32 holds 24 bits: 5,403,210 lies between 2^22 and 2^23
    assert any("rounded to 0.5 m" in note and "export" in note for note in scan.notes)
    health = assess(scan)
    word, means = grade(scan, health)
    assert word == NO_USE and "rounded to 0.5 m" in means
    assert look_record(scan, health)["files"][0]["quantum"] == 0.5


MESHES: dict[str, Callable[[Path], None]] = {
    "a.obj": lambda p: w.write_obj(p, _singles(slab_mesh()[0] + UTM), slab_mesh()[1]),
    "a.stl": lambda p: w.write_binary_stl(p, slab_mesh()[0] + UTM, slab_mesh()[1]),
    "m.glb": lambda p: w.write_glb(
        p, *w.gltf_document(y_up(slab_mesh()[0] + UTM), slab_mesh()[1], np.zeros(3))
    ),
}


@pytest.mark.parametrize("name", MESHES)
def test_meshes_of_singles_far_from_their_origin_are_named(name: str, tmp_path: Path) -> None:
    MESHES[name](tmp_path / name)
    assert read_file(tmp_path / name, "m", "y" if name == "m.glb" else "z").files[0].quantum == 0.5


@pytest.mark.parametrize("name", WRITERS)
def test_singles_near_their_origin_are_fine(name: str, tmp_path: Path) -> None:
    WRITERS[name](tmp_path / name, slab_cloud(20_000))
    scan = read_file(tmp_path / name)
    assert scan.files[0].quantum < 1e-5 and not any("rounded" in note for note in scan.notes)


def test_large_coordinates_in_doubles_or_in_a_node_are_fine(tmp_path: Path) -> None:
    w.write_ply(tmp_path / "a.ply", slab_cloud() + UTM, "binary_little_endian")
    w.write_glb(tmp_path / "a.glb", *w.gltf_document(y_up(slab_cloud()), None, y_up(UTM[None])[0]))
    w.write_e57(tmp_path / "a.e57", [_singles(slab_cloud())], [(STILL[0], UTM)])
    for name in ("a.ply", "a.glb", "a.e57"):
        assert read_file(tmp_path / name).files[0].quantum < 1e-5, name


def test_few_decimals_and_coarse_steps_are_rounding_too(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud(), decimals=2)
    w.write_las(tmp_path / "a.laz", slab_cloud(), scale=0.005)
    w.write_rows(tmp_path / "fine.xyz", slab_cloud(), decimals=3)
    step = [read_file(tmp_path / n).files[0].quantum for n in ("a.xyz", "a.laz", "fine.xyz")]
    assert step == pytest.approx([0.010, 0.005, 0.001])
    assert read_file(tmp_path / "fine.xyz").notes == read_file(tmp_path / "fine.xyz", "m").notes
    assert not any("rounded" in n for n in read_file(tmp_path / "fine.xyz").notes)


def _two_stations(path: Path, off: tuple[float, float, float]) -> Scan:
    parts = [cluttered_cloud(60_000, seed, 0.002) for seed in (1, 2)]
    w.write_e57(path, parts, [STILL, (STILL[0], np.array(off))])
    return read_file(path)


def test_each_station_is_a_pass_with_its_residual(tmp_path: Path) -> None:
    scan = _two_stations(tmp_path / "a.e57", (0.0, 0.0, 0.0))
    first, second = scan.passes
    assert (first.points, second.points) == tuple(np.bincount(scan.pass_of))
    assert first.residual is None and first.off is None
    assert second.residual == pytest.approx(0.002, abs=0.001)
    assert second.off == pytest.approx((0.0, 0.0, 0.0), abs=0.001)
    assert not any("station" in note for note in scan.notes)
    assert len(scan.files) == 1 and not scan.source.any()


def test_stations_out_of_place_are_said_and_never_good(tmp_path: Path) -> None:
    scan = _two_stations(tmp_path / "a.e57", (0.010, -0.006, 0.015))
    assert scan.passes[1].off == pytest.approx((0.010, -0.006, 0.015), abs=0.001)
    assert any("stations disagree" in note and "15.0 mm in height" in note for note in scan.notes)
    health = assess(scan, "terrestrial")
    assert grade(scan, health, "terrestrial")[0] == "weak"
    assert grade(_two_stations(tmp_path / "b.e57", (0.0, 0.0, 0.0)), health, "terrestrial")[0] != "weak"
    assert any("scan 2" in line and "15.0 mm" in line for line in health_lines(scan, health))
    assert look_record(scan, health)["passes"][1]["off"] == pytest.approx([0.010, -0.006, 0.015], abs=0.001)


def test_stations_that_saw_nothing_in_common_tell_nothing(tmp_path: Path) -> None:
    beside = slab_cloud() + np.array([20.0, 0.0, 0.0])
    w.write_e57(tmp_path / "a.e57", [slab_cloud(), beside], [STILL, STILL])
    assert read_file(tmp_path / "a.e57").passes[1].off is None


def test_repeats_keep_the_stations_of_each_file(tmp_path: Path) -> None:
    _two_stations(tmp_path / "a.e57", (0.0, 0.0, 0.0))
    w.write_ply(tmp_path / "b.ply", cluttered_cloud(60_000, 3, 0.002), "binary_little_endian")
    scan = read_scan(ScanChoice((tmp_path / "a.e57", tmp_path / "b.ply"), "m"))
    assert [p.name for p in scan.passes] == ["a.e57, scan 1", "a.e57, scan 2", "b.ply"]
    assert np.bincount(scan.pass_of).tolist() == [p.points for p in scan.passes]
    assert scan.passes[2].residual == scan.files[1].fit_error
