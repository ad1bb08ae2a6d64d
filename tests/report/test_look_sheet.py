"""``look``: its words, its JSON and its picture."""

from __future__ import annotations

import dataclasses
import json
import math
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner
from PIL import Image

from crestcut import __version__
from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError
from crestcut.base.units import FOOT
from crestcut.job.records import ScanChoice
from crestcut.report.look import health_lines, how_text, look_record, write_look
from crestcut.report.words.look_grade import grade
from crestcut.scan.health import assess
from crestcut.scan.records import Frame, Scan, ScanFile


def a_scan(unit: str = "m", factor: float = 1.0, shift: tuple[float, float, float] = (0.0, 0.0, 0.0)) -> Scan:
    rng = np.random.default_rng(0)
    x, y = rng.random(60_000) * 6.0, rng.random(60_000) * 4.0
    hole = (np.abs(x - 2.0) < 0.3) & (np.abs(y - 1.5) < 0.3)
    points = np.column_stack([x, y, 0.1 * np.abs(x - 3.0) + rng.normal(0, 0.004, len(x))])[~hole]
    frame = Frame(np.full(3, factor), np.eye(3), np.array(shift), unit, "z")
    file = ScanFile(
        Path("slab.laz"), "LAZ", "0" * 64, len(points), 7, None, "guessed: because", "z, guessed: level"
    )
    return Scan(points, np.zeros(len(points), np.int16), frame, (file,))


def asked(scan: Scan) -> ScanChoice:
    return ScanChoice(tuple(file.path for file in scan.files))


def test_the_words_say_what_was_found_and_why() -> None:
    scan = a_scan()
    text = "\n".join(health_lines(scan, assess(scan)))
    found = ("slab.laz: LAZ", "7 unusable", "m (guessed: because)", "z, guessed: level", "points per m2")
    for piece in (*found, "sd about a plane", "holes        1 (", "1. 0.60 x 0.60 m about ", "could decide"):
        assert piece in text, piece
    assert max(map(len, text.splitlines())) < 160


@pytest.mark.parametrize(
    ("scanner", "walks", "edge", "density", "word"),
    [
        ("phone", 1, None, 2500.0, "fair"),  # 1.96 x 5.4 mm: most of a 1/2 in clearance
        ("phone", 3, None, 2500.0, "good"),  # the same over the square root of three: 6.1 mm
        ("terrestrial", 1, None, 2500.0, "good"),
        ("phone", 3, 0.06, 2500.0, "fair"),  # a mesh has cut off its own crest, however often
        ("phone", 1, 0.40, 2500.0, "weak"),  # 0.4 x 0.20 / 4 = 20 mm cut off a crest of 20 %
        ("phone", 1, None, 200.0, "weak"),
        ("phone", 1, None, 20.0, "no use"),
    ],
)
def test_a_scan_is_graded_for_this_job(
    scanner: str, walks: int, edge: float | None, density: float, word: str
) -> None:
    scan = a_scan()
    scan = dataclasses.replace(scan, files=(dataclasses.replace(scan.files[0], mesh_edge=edge),) * walks)
    health = dataclasses.replace(assess(scan), density_median=density)
    assert grade(scan, health, scanner)[0] == word
    assert f"grade        {word}: " in "\n".join(health_lines(scan, health, scanner))
    assert look_record(scan, health, scanner)["grade"]["word"] == word


def test_a_survey_from_the_air_holds_no_slab_and_a_thin_scan_of_one_may() -> None:
    """A few points a square metre over a whole site (3 per m2 are common from the air) against the same over
    a slab: only the first is no slab at all, and its gaps are no holes."""
    rng = np.random.default_rng(1)

    def spread(side: float) -> Scan:
        xy = rng.random((int(3 * side**2), 2)) * side
        points = np.column_stack([xy, 0.02 * xy[:, 0]])
        return dataclasses.replace(a_scan(), points=points, source=np.zeros(len(points), np.int16))

    tile, slab = spread(60.0), spread(8.0)
    said, thin = ("\n".join(health_lines(s, assess(s))) for s in (tile, slab))
    assert "grade        no use: no slab here: points about 0.6 m apart over 60 m" in said
    assert "holes" not in said and "nothing about a slab" in said
    assert "no slab here" not in thin and "grade        no use: far too few points" in thin
    assert look_record(tile, assess(tile))["grade"]["means"].startswith("no slab here")


def test_a_scan_of_no_use_gets_its_picture_and_no_page_to_tap_on(tmp_path: Path) -> None:
    """On a survey from the air the page would take minutes to make, and there is no slab to tap on."""
    rng = np.random.default_rng(2)
    xyz = np.column_stack([rng.random((10_000, 2)) * 60.0, rng.random(10_000)])
    np.savetxt(tmp_path / "tile.xyz", xyz, fmt="%.3f")
    asked = ["look", str(tmp_path / "tile.xyz"), "--unit", "m", "--out", str(tmp_path)]
    ran = CliRunner().invoke(main, asked)
    assert ran.exit_code == 0 and "no slab here" in ran.output
    assert sorted(p.name for p in tmp_path.iterdir()) == [
        "look.json", "look.png", "manifest.json", "tile.xyz"
    ]  # fmt: skip


def test_two_passes_that_disagree_are_weak() -> None:
    scan = a_scan()
    assert grade(scan, dataclasses.replace(assess(scan), two_layers=0.2), "terrestrial")[0] == "weak"


def test_places_are_told_in_the_scans_own_numbers() -> None:
    # 100 m of shift and feet: a job file's point for the hole's middle is (102 m, 201.5 m) / 0.3048.
    scan = a_scan("ft", FOOT, (100.0, 200.0, 0.0))
    record = look_record(scan, assess(scan))
    assert record["holes"][0]["at"] == pytest.approx([102.0 / FOOT, 201.5 / FOOT], abs=0.1)
    assert record["unit"] == "ft" and record["metres_per_unit"] == [FOOT] * 3


def test_the_files_are_written_and_whole(tmp_path: Path) -> None:
    scan = a_scan()
    written = write_look(scan, assess(scan), tmp_path / "out", asked(scan))
    assert {p.name for p in written} == {"look.png", "look.json", "pick.html"}
    record = json.loads((tmp_path / "out" / "look.json").read_text())
    assert record["schema"] == "crestcut.look/1" and record["points"] == len(scan.points)
    about = {"release": "none: nothing here to cut from", "dated": None, "version": __version__}
    assert about.items() <= record.items() and scan.files[0].path.name in record["job"]
    with Image.open(tmp_path / "out" / "look.png") as picture:
        assert picture.text["Release"] == about["release"]  # type: ignore[attr-defined]
        assert picture.text["Software"] == f"crestcut {__version__}"  # type: ignore[attr-defined]


def test_the_page_to_tap_on_comes_and_goes_with_the_rest(tmp_path: Path) -> None:
    scan, out = a_scan(), tmp_path / "out"
    write_look(scan, assess(scan), out, asked(scan))
    text = (out / "pick.html").read_text(encoding="utf-8")
    assert '<meta name="release" content="none: nothing here to cut from">' in text
    of_no_use = dataclasses.replace(assess(scan), density_median=20.0)
    write_look(scan, of_no_use, out, asked(scan))
    assert not (out / "pick.html").exists() and (out / "look.png").exists()


def test_the_same_scan_gives_the_same_bytes(tmp_path: Path) -> None:
    scan = a_scan()
    for name in ("a", "b"):
        write_look(scan, assess(scan), tmp_path / name, asked(scan))
    for name in ("look.png", "look.json", "pick.html"):
        assert (tmp_path / "a" / name).read_bytes() == (tmp_path / "b" / name).read_bytes()


def test_not_measured_is_null_in_the_json() -> None:
    rng = np.random.default_rng(1)
    points = np.column_stack([rng.random((200, 2)) * 5.0, rng.random(200) * 0.01])
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    file = ScanFile(Path("thin.xyz"), "XYZ", "0" * 64, 200, 0, None, "declared", "declared")
    scan = Scan(points, np.zeros(200, np.int16), frame, (file,))
    health = assess(scan)
    assert math.isnan(health.noise)
    assert look_record(scan, health)["noise"] is None
    assert "cannot be told" in "\n".join(health_lines(scan, health))


def test_nothing_is_left_where_it_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file")
    scan = a_scan()
    with pytest.raises(CrestcutError, match="folder"):
        write_look(scan, assess(scan), tmp_path / "out", asked(scan))
    assert (tmp_path / "out").read_text() == "a file" and len(list(tmp_path.iterdir())) == 1


def test_the_walking_plan_fits_a_page_and_says_the_essentials() -> None:
    text = how_text()
    lines = text.splitlines()
    assert len(lines) <= 66 and max(map(len, lines)) <= 100
    for word in (
        "MARK FIRST",
        "SWEPT AND DRY",
        "THREE SHORT REPEATS",
        "wheelbase",
        "ACROSS",
        "raw points",
        "CARE",
    ):
        assert word in text, word
