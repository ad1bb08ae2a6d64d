"""[scan] use_classes, leave_classes: points by what the file says they are (LAS 1.4 R15, table 17: 1
unclassified, 2 ground, 5 high vegetation, 7 low noise, 18 high noise)."""

from __future__ import annotations

from pathlib import Path

import laspy
import numpy as np
import pytest
import scan_writers as w
from scan_scene import cluttered_cloud

from crestcut.base.errors import CrestcutError
from crestcut.job.records import ScanChoice
from crestcut.scan.load import read_scan

CODES = (1, 2, 5, 7, 18)


@pytest.fixture
def classed(tmp_path: Path) -> tuple[Path, np.ndarray]:
    """A scan whose points have these classes in turn."""
    path = tmp_path / "a.laz"
    w.write_las(path, cluttered_cloud(20_000))
    las = laspy.read(path)
    codes = np.resize(np.array(CODES, np.uint8), len(las.points))
    las.classification = codes
    las.write(path)
    return path, codes


def points(path: Path, **said: tuple[int, ...]) -> int:
    return len(read_scan(ScanChoice((path,), **said)).points)  # type: ignore[arg-type]


def test_noise_is_left_out_unless_it_is_asked_for(classed: tuple[Path, np.ndarray]) -> None:
    path, codes = classed
    scan = read_scan(ScanChoice((path,)))
    noise = int(np.isin(codes, (7, 18)).sum())
    assert len(scan.points) == len(codes) - noise
    assert any(f"{noise:,} points left out by their classes" in n for n in scan.notes)
    assert points(path, leave_classes=()) == len(codes)


def test_ground_alone(classed: tuple[Path, np.ndarray]) -> None:
    path, codes = classed
    scan = read_scan(ScanChoice((path,), use_classes=(2,)))
    assert len(scan.points) == (codes == 2).sum()
    las = laspy.read(path)
    assert scan.frame.to_own(scan.points) == pytest.approx(las.xyz[codes == 2], abs=1e-9)


def test_a_file_in_which_nobody_said_what_is_what(tmp_path: Path) -> None:
    w.write_las(tmp_path / "a.laz", cluttered_cloud(20_000))
    assert points(tmp_path / "a.laz") == len(cluttered_cloud(20_000))
    with pytest.raises(CrestcutError, match="no point of it has a class"):
        points(tmp_path / "a.laz", use_classes=(2,))


def test_classes_that_no_point_has(classed: tuple[Path, np.ndarray]) -> None:
    with pytest.raises(CrestcutError, match="there are 1, 2, 5, 7, 18"):
        points(classed[0], use_classes=(11,))
