"""Unit and up axis: found, declared or guessed, each with its reason; the same site points whichever way
they were written."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from hypothesis import given, settings
from hypothesis import strategies as st
from scan_scene import UTM, cluttered_cloud, slab_cloud, y_up

from crestcut.base.grid import FloatArray
from crestcut.base.units import FOOT, METRES_PER, US_SURVEY_FOOT
from crestcut.job.records import ScanChoice
from crestcut.scan.load import read_file, read_scan
from crestcut.scan.placing import up
from crestcut.scan.placing.up import ROTATION, guess_up


def test_millimetres_are_guessed_and_said(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud() * 1000.0)
    scan = read_file(tmp_path / "a.xyz")
    assert scan.frame.unit == "mm"
    assert scan.files[0].unit_reason.startswith("guessed") and "millimetres" in scan.files[0].unit_reason
    np.testing.assert_allclose(scan.points, slab_cloud(), atol=1e-6)


def test_metres_are_guessed_and_said(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud())
    assert "slab in metres" in read_file(tmp_path / "a.xyz").files[0].unit_reason


@pytest.mark.parametrize(
    "words", ["coordinates in mm", "units: millimetres are not used here, unit mm", "unit = mm"]
)
def test_a_comment_in_a_ply_states_the_unit(words: str, tmp_path: Path) -> None:
    w.write_ply(tmp_path / "a.ply", slab_cloud() * 1000.0, "binary_little_endian", comment=words)
    scan = read_file(tmp_path / "a.ply")
    assert scan.frame.unit == "mm" and "comment" in scan.files[0].unit_reason


def test_a_comment_in_a_ply_states_the_up_axis(tmp_path: Path) -> None:
    w.write_ply(tmp_path / "a.ply", y_up(slab_cloud()), "ascii", comment="y up")
    scan = read_file(tmp_path / "a.ply")
    assert scan.frame.up == "y" and "comment" in scan.files[0].up_reason


@pytest.mark.parametrize(
    ("epsg", "unit", "factor"), [(32632, "m", 1.0), (2903, "us-ft", US_SURVEY_FOOT), (2994, "ft", FOOT)]
)
def test_a_las_states_its_unit(epsg: int, unit: str, factor: float, tmp_path: Path) -> None:
    # EPSG 2903 is in US survey feet, 2994 in international feet (EPSG registry, through pyproj).
    points = slab_cloud() + UTM
    w.write_las(tmp_path / "a.laz", points / factor, epsg)
    scan = read_file(tmp_path / "a.laz")
    assert scan.frame.unit == unit and "written in the file" in scan.files[0].unit_reason
    np.testing.assert_allclose(scan.points + scan.frame.shift, points, atol=1e-4, rtol=0)


def test_heights_of_a_las_may_have_a_unit_of_their_own(tmp_path: Path) -> None:
    # Plan in US survey feet (2903), heights in metres (5703).
    points = slab_cloud() + UTM
    w.write_las(tmp_path / "a.laz", points / [US_SURVEY_FOOT, US_SURVEY_FOOT, 1.0], "EPSG:2903+5703")
    scan = read_file(tmp_path / "a.laz")
    assert scan.frame.scale.tolist() == [US_SURVEY_FOOT, US_SURVEY_FOOT, 1.0]
    assert any("heights are in m" in note for note in scan.notes)
    np.testing.assert_allclose(scan.points + scan.frame.shift, points, atol=1e-4, rtol=0)


@pytest.mark.parametrize(
    ("keys", "scale"),
    [
        # EPSG units of measure: 9005 Clarke's foot, 1033 centimetre (EPSG registry, read there)
        ({3076: 9005}, [0.3047972654] * 3),
        ({3076: 1033}, [0.01] * 3),
        # plan by its number, heights by theirs: 5703 metres, 6360 US survey feet, 8228 feet
        ({3072: 2903, 4096: 5703}, [US_SURVEY_FOOT, US_SURVEY_FOOT, 1.0]),
        ({3072: 32632, 4096: 6360}, [1.0, 1.0, US_SURVEY_FOOT]),
        ({3072: 32632, 4096: 8228, 4099: 9001}, [1.0, 1.0, 1.0]),  # the unit's own key goes first
        ({3072: 32632, 4096: 32767}, [1.0, 1.0, 1.0]),  # 'user-defined': not stated, taken alike
    ],
)
def test_geotiff_keys_state_units_and_systems_of_heights(
    keys: dict[int, int], scale: list[float], tmp_path: Path
) -> None:
    points = slab_cloud() + UTM
    w.write_las(tmp_path / "a.las", points / scale, keys=keys)
    scan = read_file(tmp_path / "a.las")
    np.testing.assert_allclose(scan.frame.scale, scale, rtol=1e-12)
    np.testing.assert_allclose(scan.points + scan.frame.shift, points, atol=1e-4, rtol=0)


def test_survey_feet_are_not_rounded_to_feet(tmp_path: Path) -> None:
    # 2 parts in a million: 10.8 mm at a northing of 5,400 km.
    points = slab_cloud() + UTM
    w.write_las(tmp_path / "a.laz", points / US_SURVEY_FOOT, 2903)
    scan = read_file(tmp_path / "a.laz")
    assert abs(scan.points[:, 1].min() + scan.frame.shift[1] - points[:, 1].min()) < 1e-4


def test_a_declared_unit_wins_and_the_contradiction_is_said(tmp_path: Path) -> None:
    w.write_las(tmp_path / "a.laz", slab_cloud(), 32632)
    scan = read_scan(ScanChoice((tmp_path / "a.laz",), unit="ft"))
    assert scan.frame.unit == "ft" and any("declared" in n and "m" in n for n in scan.notes)


def test_a_header_states_the_unit(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.csv", slab_cloud() / FOOT, ",", "x_ft,y_ft,z_ft")
    scan = read_file(tmp_path / "a.csv")
    assert scan.frame.unit == "ft"
    np.testing.assert_allclose(scan.points, slab_cloud(), atol=1e-5)


@pytest.mark.parametrize("axis", ["x", "y", "z"])
def test_the_up_axis_of_a_bare_slab_is_found(axis: str) -> None:
    found, reason, sure = guess_up(slab_cloud() @ ROTATION[axis])
    assert found == axis and sure and "guessed" in reason


@pytest.mark.parametrize("axis", ["x", "y", "z", "-x", "-y"])
def test_the_up_axis_of_a_slab_with_things_on_it_is_found(axis: str) -> None:
    assert guess_up(cluttered_cloud() @ ROTATION[axis])[0] == axis


def test_z_down_is_asked_about_and_not_taken() -> None:
    axis, reason, _ = guess_up(cluttered_cloud() @ ROTATION["-z"])
    assert axis == "z" and 'up = "-z"' in reason


@pytest.mark.parametrize(("turn", "says"), [("-z", 1), ("z", 0)])
def test_z_down_is_asked_about_where_the_job_says_z_too(turn: str, says: int, tmp_path: Path) -> None:
    w.write_obj(tmp_path / "a.obj", cluttered_cloud(20_000) @ ROTATION[turn])
    notes = read_scan(ScanChoice((tmp_path / "a.obj",), up="z")).notes
    assert sum('downwards: if the scan is upside down, write up = "-z"' in n for n in notes) == says


def test_y_up_undeclared_is_read_upright(tmp_path: Path) -> None:
    w.write_obj(tmp_path / "a.obj", y_up(slab_cloud()))
    scan = read_file(tmp_path / "a.obj")
    assert scan.frame.up == "y"
    np.testing.assert_allclose(scan.points, slab_cloud(), atol=1e-9)


def test_a_declared_axis_wins_and_the_contradiction_is_said(tmp_path: Path) -> None:
    w.write_obj(tmp_path / "a.obj", y_up(slab_cloud()))
    scan = read_scan(ScanChoice((tmp_path / "a.obj",), up="z"))
    assert scan.frame.up == "z" and any("up axis z is declared, but the shape says" in n for n in scan.notes)


def test_turns_are_rigid_and_right_handed() -> None:
    for axis, turn in ROTATION.items():
        assert np.linalg.det(turn) == pytest.approx(1.0)
        up = np.zeros(3)
        up["xyz".index(axis[-1])] = -1.0 if axis.startswith("-") else 1.0
        np.testing.assert_array_equal(turn @ up, [0.0, 0.0, 1.0])


@settings(max_examples=25, deadline=None)
@given(
    unit=st.sampled_from(["mm", "cm", "m", "in", "ft", "us-ft"]),
    axis=st.sampled_from(list(ROTATION)),
    offset=st.tuples(*[st.floats(-5e6, 5e6)] * 2, st.floats(-500.0, 3000.0)),
)
def test_another_unit_axis_or_origin_gives_the_same_site_points(
    unit: str, axis: str, offset: tuple[float, float, float], tmp_path_factory: pytest.TempPathFactory
) -> None:
    points = slab_cloud(200) + offset
    path = tmp_path_factory.mktemp("re") / "a.ply"
    written: FloatArray = points @ ROTATION[axis] / METRES_PER[unit]
    w.write_ply(path, written, "binary_little_endian")
    scan = read_scan(ScanChoice((path,), unit=unit, up=axis))
    np.testing.assert_allclose(scan.points + scan.frame.shift, points, atol=1e-6, rtol=0)
    np.testing.assert_allclose(scan.frame.to_file(scan.points), written, atol=1e-6 / METRES_PER[unit], rtol=0)
    plan = scan.frame.site_to_plan(scan.points)
    np.testing.assert_allclose(scan.frame.plan_to_site(plan), scan.points[:, :2], atol=1e-6, rtol=0)
    np.testing.assert_allclose(plan * METRES_PER[unit], points[:, :2], atol=1e-6, rtol=0)


def test_a_mesh_is_seen_from_where_its_corners_go_round_against_the_clock() -> None:
    points = np.array([[0.0, 0, 0], [1, 0, 0], [1, 1, 0.1], [0, 1, 0.1]])
    faces = np.array([[0, 1, 2], [0, 2, 3]])
    assert up.looking_up(points, faces) == pytest.approx(1.0)
    assert up.looking_up(points, faces[:, ::-1]) == pytest.approx(-1.0)


def test_a_box_shows_which_way_is_up_and_a_bare_slab_does_not() -> None:
    rng = np.random.default_rng(2)
    slab = np.column_stack([rng.uniform((0, 0), (6, 4), (60_000, 2)), rng.normal(0, 0.003, 60_000)])
    box = np.column_stack([rng.uniform((2, 1), (2.7, 1.7), (6_000, 2)), rng.normal(0.4, 0.003, 6_000)])
    seen = up.standing_of(np.concatenate([slab, box]))
    assert up.stands_above(seen("z")) and not up.hangs_below(seen("z"))
    assert up.hangs_below(seen("-z")) and not up.stands_above(seen("-z"))
    bare = up.standing_of(slab)("z")
    assert not up.stands_above(bare) and not up.hangs_below(bare)
