"""[scan] crs: the reference system that a job names, beside what the file says. EPSG codes are those of the
register: 25832 UTM 32N on ETRS89 (metres), 2263 a state plane in US survey feet, 7837 DHHN2016 heights, 6360
NAVD88 heights in US survey feet."""

from __future__ import annotations

from pathlib import Path

import pytest
import scan_writers as w
from scan_scene import cluttered_cloud
from test_repeats_register import UTM

from crestcut.base.errors import CrestcutError
from crestcut.base.units import US_SURVEY_FOOT
from crestcut.job.records import ScanChoice
from crestcut.scan.load import read_scan
from crestcut.scan.records import Scan


def read(path: Path, crs: str | None, unit: str | None = None) -> Scan:
    return read_scan(ScanChoice((path,), unit, crs=crs))


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    """A scan that says nothing of its system."""
    w.write_las(tmp_path / "a.laz", cluttered_cloud(20_000) + UTM)
    return tmp_path / "a.laz"


def test_the_job_names_it(bare: Path) -> None:
    scan = read(bare, "EPSG:25832+7837")
    assert (scan.frame.system.plan, scan.frame.system.heights) == ("EPSG:25832", "EPSG:7837")
    assert scan.frame.unit == "m" and not scan.files[0].unit_guessed


def test_feet_come_with_the_system(bare: Path) -> None:
    scan = read(bare, "EPSG:2263+6360")
    assert scan.frame.unit == "us-ft" and list(scan.frame.turned_scale) == [US_SURVEY_FOOT] * 3
    mixed = read(bare, "EPSG:2263+7837")  # heights in metres
    assert list(mixed.frame.turned_scale) == [US_SURVEY_FOOT, US_SURVEY_FOOT, 1.0]


def test_heights_of_the_file_stay_where_the_job_names_the_plan_alone(tmp_path: Path) -> None:
    w.write_las(tmp_path / "a.laz", cluttered_cloud(20_000) + UTM, "EPSG:25832+7837")
    assert read(tmp_path / "a.laz", "EPSG:25832").frame.system.heights == "EPSG:7837"


@pytest.mark.parametrize(
    ("in_file", "crs", "says"),
    [
        (32632, "EPSG:25832", "the file is in EPSG:32632"),
        ("EPSG:25832+7837", "EPSG:25832+5783", "EPSG:7837"),
        (None, "EPSG:999999", "no reference system"),
        (None, "EPSG:4326", "no east and north"),
    ],
)
def test_two_systems_in_one_job(tmp_path: Path, in_file: int | str | None, crs: str, says: str) -> None:
    w.write_las(tmp_path / "a.laz", cluttered_cloud(20_000) + UTM, in_file)
    with pytest.raises(CrestcutError, match=says):
        read(tmp_path / "a.laz", crs)


def test_a_unit_of_the_file_that_is_not_the_systems(tmp_path: Path) -> None:
    """GeoTIFF keys: 3076 the unit of the plan, 9001 metres."""
    w.write_las(tmp_path / "a.laz", cluttered_cloud(20_000) + UTM, keys={3076: 9001})
    with pytest.raises(CrestcutError, match=r"is in m, \[scan\] crs counts in us-ft"):
        read(tmp_path / "a.laz", "EPSG:2263")


def test_a_declared_unit_that_is_not_the_systems_leaves_it(bare: Path) -> None:
    """Rasters and surfaces would else lie where the scan does not."""
    scan = read(bare, "EPSG:25832", unit="ft")
    assert scan.frame.unit == "ft" and not scan.frame.system.plan
    assert any("none of EPSG:25832" in note for note in scan.notes)
    assert read(bare, "EPSG:25832", unit="m").frame.system.plan == "EPSG:25832"
