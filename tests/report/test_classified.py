"""``look --classified``: every point of the scan where it was, ground as class 2, all else as class 1."""

from __future__ import annotations

import sys
from pathlib import Path

import laspy
import numpy as np
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from crestcut.scan.load import read_scan

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "sample_scans"))
import courtyard  # noqa: E402


def look(*words: str) -> tuple[int, str]:
    result = CliRunner().invoke(main, ["look", *words])
    return result.exit_code, result.output


@pytest.fixture(scope="module")
def classified(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("classified") / "ground.laz"
    code, said = look(str(ROOT / "sample_scans/apron.laz"), "--scanner", "phone", "--classified", str(path))
    assert code == 0, said
    return path


def test_every_point_is_there_with_time_and_place(classified: Path) -> None:
    scan, las = read_scan(ROOT / "sample_scans/apron.laz"), laspy.read(classified)
    assert las.xyz == pytest.approx(scan.frame.to_own(scan.points), abs=0.51e-4)
    if scan.time is not None:
        assert np.array_equal(las.gps_time, scan.time)
    assert set(np.unique(las.classification)) == {1, 2}


def test_ground_is_what_the_courtyard_has_as_ground(classified: Path) -> None:
    """Against what the place is made of, by the sample's own labels; the walk is off by its warp, so things
    count half a decimetre within their outlines."""
    las = laspy.read(classified)
    x, y, z = las.xyz.T
    there = courtyard.label(x, y)
    tall = (there == courtyard.LABELS.index("planter")) | (there == courtyard.LABELS.index("bin"))
    tall &= z > courtyard.slab(x, y) + 0.2
    flat = np.isin(there, (0, 1)) & (np.abs(z - courtyard.slab(x, y)) < 0.02)
    ground = np.asarray(las.classification) == 2
    assert tall.sum() > 500 and not ground[tall].any()
    assert ground[flat].mean() > 0.97


def test_it_is_read_back_as_ground_alone(classified: Path) -> None:
    from crestcut.job.records import ScanChoice

    scan = read_scan(ScanChoice((classified,), "m", use_classes=(2,)))
    assert len(scan.points) == int((laspy.read(classified).classification == 2).sum())


@pytest.mark.parametrize(
    ("name", "says"), [("a.ply", "neither LAS nor LAZ"), ("apron.laz", "is the scan itself")]
)
def test_names_that_will_not_do(tmp_path: Path, name: str, says: str) -> None:
    scan = tmp_path / "apron.laz"
    scan.write_bytes((ROOT / "sample_scans/apron.laz").read_bytes())
    code, said = look(str(scan), "--classified", str(tmp_path / name))
    assert code == 2 and says in said
    assert scan.read_bytes() == (ROOT / "sample_scans/apron.laz").read_bytes()


def test_same_scan_same_bytes(classified: Path, tmp_path: Path) -> None:
    look(
        str(ROOT / "sample_scans/apron.laz"),
        "--scanner",
        "phone",
        "--classified",
        str(tmp_path / "ground.laz"),
    )
    assert (tmp_path / "ground.laz").read_bytes() == classified.read_bytes()
