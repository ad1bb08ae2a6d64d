"""A scan that is remembered says what was asked of it before, and is read for anything else."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import GridFrame
from crestcut.scan.records import Frame, Scan, ScanFile
from crestcut.scan.remembered import Remembered, remember

PLACES, REACH = np.array([[1.0, 1.0], [3.0, 2.0]]), 0.06
FRAME = GridFrame((0.0, 0.0), 0.3, 0.1, (20, 30))


@pytest.fixture(scope="module")
def scan() -> Scan:
    rng = np.random.default_rng(4)
    points = rng.random((20_000, 3)) * [4.0, 3.0, 0.1]
    file = ScanFile(Path("a.ply"), "PLY", "1" * 64, 20_000, 0, None, "", "")
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    colours = rng.integers(0, 255, (20_000, 3), np.uint8)
    return Scan(points, np.zeros(20_000, np.int16), frame, (file,), colours, notes=("worth knowing",))


@pytest.fixture(scope="module")
def told(scan: Scan) -> Remembered:
    return remember(scan, "files", "content", PLACES, REACH, FRAME)


def test_what_was_asked_before_is_answered_without_the_points(scan: Scan, told: Remembered) -> None:
    later = told.scan(lambda: pytest.fail("read"))
    assert later.count == 20_000 and later.notes == scan.notes and later.files == scan.files
    assert later.time is None and later.whole is None and len(told.bare.points) == 0
    assert 0 < len(told.near) < 100 and np.array_equal(later.near(PLACES, REACH), scan.near(PLACES, REACH))
    one, other = later.photo(FRAME), scan.photo(FRAME)
    assert one is not None and other is not None
    assert np.array_equal(one.colours, other.colours) and np.array_equal(one.seen, other.seen)
    # and it can be remembered from there
    again = remember(later, "files", "content", PLACES, REACH, FRAME)
    assert again.bare is told.bare and again.near is told.near and again.photo is told.photo


def test_for_anything_else_it_is_read_once(scan: Scan, told: Remembered) -> None:
    reads: list[int] = []
    later = told.scan(lambda: (reads.append(1), scan)[1])
    assert np.array_equal(later.near(PLACES[:1], REACH), scan.near(PLACES[:1], REACH)) and reads == [1]
    assert np.array_equal(later.near(PLACES, 0.1), scan.near(PLACES, 0.1))
    wider = replace(FRAME, shape=(21, 30))
    photo, of_scan = later.photo(wider), scan.photo(wider)
    assert photo is not None and of_scan is not None and np.array_equal(photo.colours, of_scan.colours)
    for name in ("points", "source", "pass_of", "colours"):
        assert getattr(later, name) is getattr(scan, name)
    assert reads == [1] and later.all_over is scan.points
    assert later.summary == scan.summary
    other = replace(later, notes=())
    assert other.notes == () and other.points is scan.points and other.count == 20_000
    assert np.array_equal(other.near(PLACES, REACH), told.near) and other.photo(wider) is not None


def test_near_is_a_square_about_each_place_and_colours_are_means(scan: Scan) -> None:
    near = {tuple(p) for p in scan.near(PLACES, REACH)}
    assert near == {tuple(p) for p in scan.points if (abs(p[:2] - PLACES) <= REACH).all(axis=1).any()}
    photo = scan.photo(FRAME)
    assert photo is not None and scan.colours is not None and photo.seen.any() and not photo.seen.all()
    at = np.rint(FRAME.to_grid(scan.points[:, :2]) / FRAME.cell)
    for j, i in ((3, 20), (10, 12)):
        own = scan.colours[(at == (i, j)).all(axis=1)]
        assert len(own) and np.array_equal(photo.colours[j, i], own.mean(axis=0).astype(np.uint8))


def test_another_scan_read_in_its_place_is_refused(scan: Scan, told: Remembered) -> None:
    other = replace(scan, files=(replace(scan.files[0], sha256="2" * 64),))
    with pytest.raises(CrestcutError, match="has changed meanwhile"):
        _ = told.scan(lambda: other).points
