"""The keys for a line from a file and for further vehicles at the command line: right, misspelt, and bad."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from test_bad_input import JOB, VEHICLE, slab, write_laz

POINTS = "line = [[0.4, 1.0], [4.6, 1.0]]"
OTHER = '[[other_vehicle]]\nfile = "other.toml"\n[travel]'


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("yard")
    write_laz(folder / "slab.laz", slab())
    (folder / "trolley.toml").write_text(VEHICLE)
    other = VEHICLE.replace("kiln trolley", "clay trolley").replace("52 mm", "44 mm")
    (folder / "other.toml").write_text(other)
    (folder / "drive.csv").write_text("x,y\n0.4,1.0\n4.6,1.0\n")
    (folder / "letters.csv").write_text("x,y\n0.4,one\n4.6,1.0\n")
    line = '{"type": "LineString", "coordinates": '
    (folder / "outside.geojson").write_text(line + "[[0.4, 1.0], [9.6, 1.0]]}")
    (folder / "degrees.geojson").write_text(line + "[[9.1, 50.1], [9.1001, 50.1]]}")
    return folder


def run(folder: Path, old: str, new: str) -> tuple[int, str, str]:
    assert old in JOB
    (folder / "job.toml").write_text(JOB.replace(old, new))
    result = CliRunner().invoke(main, ["run", str(folder / "job.toml"), "--out", str(folder / "out")])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (POINTS, 'line = "drive.dxf"', "drive.dxf: the file of the line is not there"),
        (POINTS, 'line = "letters.csv"', "letters.csv: row 2 is no point"),
        (POINTS, 'line = "outside.geojson"', "no measured ground under the front"),
        (POINTS, 'line = "degrees.geojson"', "the line is in degrees"),
        (POINTS, 'line = "drive.csv"\nlayer = "drive"', "layer is a drawing's"),
        (POINTS, 'line = "drive.csv"\nlayr = "drive"', 'did you mean "layer"'),
        (POINTS, "line = 4.2", "travel.line: a list expected"),
        ("[travel]", OTHER.replace("other_", "othr_"), 'did you mean "other_vehicle"'),
        ("[travel]", OTHER.replace("file", "flie"), 'did you mean "file"'),
        ("[travel]", OTHER.replace("other.toml", "lorry.toml"), "lorry.toml"),
        ("[travel]", OTHER.replace("other.toml", "trolley.toml"), 'two vehicles are named "kiln trolley"'),
        ("[travel]", OTHER.replace("[travel]", 'load = "full"\n[travel]'), "full"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_one_line_and_nothing_is_written(yard: Path, old: str, new: str, says: str) -> None:
    code, said, error = run(yard, old, new)
    last = error.strip().splitlines()[-1]
    assert code == 2 and said == "" and not (yard / "out").exists()
    assert last.startswith("crestcut: ") and says in last and len(last) < 400


def test_a_line_from_a_file_and_two_vehicles_are_answered(yard: Path) -> None:
    text = JOB.replace(POINTS, 'line = "drive.csv"')
    (yard / "both.toml").write_text(text + OTHER.replace("[travel]", ""))
    result = CliRunner().invoke(main, ["run", str(yard / "both.toml"), "--out", str(yard / "both")])
    assert result.exit_code in (0, 3), result.stderr
    told = result.stdout.splitlines()
    assert "clay trolley" in told[0]  # the lower one speaks
    rows = [line for line in told if line.startswith(("  clay trolley: ", "  kiln trolley: "))]
    assert len(rows) == 2 and rows[0].startswith("  clay")
    page = (yard / "both" / "report.html").read_text(encoding="utf-8")
    assert "Each vehicle" in page and "kiln trolley" in page
