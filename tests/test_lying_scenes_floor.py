"""Scans of floors that lie: none may be told to keep a rule that the floor breaks, or may break."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

import lying_scenes
from crestcut.apps.floor import floor_job
from crestcut.base.grid import FloatArray
from crestcut.base.language import words_of
from crestcut.floor.records import FloorDoubt, Judged
from crestcut.report.view.floor_report import FloorReport
from crestcut.report.view.floor_result import floor_document
from crestcut.report.words.floor import floor_lines
from test_language import english_in

GERMAN = words_of("de", "DE")
WIDE, DEEP, AT = 2.4, 1.8, (1.2, 0.9)  # m; middle of it
TALL, RADIUS = 0.007, 0.35  # m: a hump in the middle that leaves more than 3 mm under 1 m
JOB = """
title = "A floor that lies"
[scan]
files = [%s]
scanner = "terrestrial"
unit = "m"
up = "z"
[floor]
%s
straightedge = "1 m"
gap = "3 mm"
[surface]
cell = "40 mm"
"""
AREA = "area = [[0.1, 0.1], [2.3, 0.1], [2.3, 1.7], [0.1, 1.7]]"


def height(x: FloatArray, y: FloatArray, tall: float) -> FloatArray:
    """A floor that falls by 3 mm/m, and a hump ``tall`` m high in its middle."""
    away = np.minimum(np.hypot(x - AT[0], y - AT[1]) / RADIUS, 1.0)
    return np.asarray(0.003 * x + tall * np.cos(away * np.pi / 2) ** 2)


def cloud(tall: float, seed: int = 0) -> FloatArray:
    rng = np.random.default_rng(seed)
    x, y = rng.uniform(0, WIDE, 17_000), rng.uniform(0, DEEP, 17_000)
    return np.column_stack([x, y, height(x, y, tall) + rng.normal(0, 0.0007, 17_000)])


def judged(folder: Path, *scans: FloatArray, area: str = AREA) -> FloorReport:
    for k, points in enumerate(scans):
        np.savetxt(folder / f"{k}.xyz", points, fmt="%.5f")
    names = ", ".join(f'"{k}.xyz"' for k in range(len(scans)))
    (folder / "floor.toml").write_text(JOB % (names, area))
    return floor_job(folder / "floor.toml")


def said_of(lines: list[str]) -> list[str]:
    """Those of what was not judged."""
    return [line for line in lines if " of floor about [" in line]


def kinds(found: Judged) -> list[FloorDoubt]:
    return [f.doubt for f in found.findings]


def walked_through(tall: float) -> FloatArray:
    """A person seen at ten places, 2,000 points each: from the soles up."""
    rng, parts = np.random.default_rng(1), [cloud(tall)]
    for _ in range(10):
        turn, up = rng.uniform(0, 2 * np.pi, 2000), rng.uniform(0, 1.75, 2000)
        wide = np.interp(up, [0, 0.1, 0.9, 1.4, 1.5, 1.75], [0.16, 0.12, 0.20, 0.24, 0.10, 0.09])
        x, y = rng.uniform(0.4, 2.0) + wide * np.cos(turn), rng.uniform(0.4, 1.4) + wide * np.sin(turn)
        parts.append(np.column_stack([x, y, height(x, y, tall) + up + rng.normal(0, 0.0007, 2000)]))
    return np.concatenate(parts)


def twice(tall: float, lower: float) -> FloatArray:
    """A second pass ``lower`` m down over the middle alone."""
    again = cloud(tall, 5)
    again = again[(np.abs(again[:, :2] - AT) < 0.4).all(axis=1)]
    return np.concatenate([cloud(tall), again - [0.0, 0.0, lower]])


def mirrored(tall: float) -> FloatArray:
    """A wet middle that shows the ceiling 2.4 m below it, and no floor."""
    points = cloud(tall)
    wet = (np.abs(points[:, :2] - AT) < 0.4).all(axis=1)
    points[wet, 2] -= 2.4
    return points


def covered(tall: float) -> FloatArray:
    """A cupboard over the hump."""
    points, half = cloud(tall), np.array([0.4, 0.4])
    low, top = np.array([*(AT - half), 0.0]), np.array([*(AT + half), 0.8])
    box = lying_scenes.box(np.random.default_rng(3), tuple(low), tuple(top), 5000)
    box = box[(box[:, 2] < 0.8) | (box[:, 0] < AT[0])]  # half of its top is out of the scanner's sight
    return np.concatenate([points[(np.abs(points[:, :2] - AT) >= half).any(axis=1)], box])


def leaning_and_large(points: FloatArray) -> FloatArray:
    """Scale 1 % off, and gravity by 1 degree."""
    x, y, z = 1.01 * points.T
    c, s = np.cos(np.radians(1.0)), np.sin(np.radians(1.0))
    return np.column_stack([c * x - s * z, y, s * x + c * z])


@pytest.mark.parametrize(
    ("scene", "doubt"),
    [
        (lambda: leaning_and_large(walked_through(TALL)), None),
        (lambda: twice(TALL, 0.008), FloorDoubt.TWICE),
        (lambda: twice(0.0, 0.008), FloorDoubt.TWICE),
        (lambda: mirrored(TALL), FloorDoubt.UNSEEN),
    ],
    ids=["a person, leaning", "a hump seen twice", "a flat floor seen twice", "a mirror"],
)  # fmt: skip
def test_no_floor_that_breaks_the_rule_or_may_meets_it(
    tmp_path: Path, scene: Callable[[], FloatArray], doubt: FloorDoubt | None
) -> None:
    report = judged(tmp_path, scene())
    found, said = report.judged, floor_lines(report)
    assert found.verdict == ("does not meet" if doubt is None else "cannot tell")
    if doubt is None:
        assert found.figures[0].interval[0] > 0.003
        return
    assert set(kinds(found)) == {doubt} and found.provisional and report.release.state != "ok"
    finding = found.findings[0]
    assert np.hypot(finding.xy[0] - AT[0], finding.xy[1] - AT[1]) < 0.1
    assert finding.area == pytest.approx(0.64, abs=0.25)
    assert any(line.startswith("Mind: ") and "of floor about [1." in line for line in said)
    assert "chance" not in said[1], "of what was not judged no chance is known"
    assert not [line for line in map(GERMAN.row, (said[1], *said_of(said))) if english_in(line)]
    listed = floor_document(report)["findings"]
    assert isinstance(listed, list) and [row["doubt"] for row in listed] == [doubt.value]
    if doubt is FloorDoubt.TWICE:
        assert finding.size == pytest.approx(0.008, abs=0.0015)


def test_what_stands_on_a_floor_is_named_and_nothing_is_said_of_what_it_hides(tmp_path: Path) -> None:
    """With no area named too: floor surrounds it."""
    for folder, area in ((tmp_path / "a", AREA), (tmp_path / "b", "")):
        folder.mkdir()
        report = judged(folder, covered(TALL), area=area)
        assert report.judged.verdict == "meets" and kinds(report.judged) == [FloorDoubt.COVERED]
        assert report.judged.findings[0].size == pytest.approx(0.8, abs=0.05)
        said = floor_lines(report)
        assert said[1].startswith("MEETS where it was seen")
        assert GERMAN.row(said[1]).startswith("ERFÜLLT ES, wo er zu sehen war: verlangt ")
        assert not [line for line in map(GERMAN.row, (said[1], *said_of(said))) if english_in(line)]
        assert any("under something 0.7" in line or "under something 0.8" in line for line in said)


def test_a_floor_scanned_whole_has_nothing_to_find_and_the_same_scan_twice_is_one(tmp_path: Path) -> None:
    report = judged(tmp_path, cloud(0.0), cloud(0.0))
    assert report.judged.verdict == "meets" and report.judged.findings == ()
    assert "as copies of one walk do" in report.judged.surface.error.warp_source
