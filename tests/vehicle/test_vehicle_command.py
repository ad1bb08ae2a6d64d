"""`crestcut vehicle` as a user meets it: the sheet, a filled sheet, a vehicle file, and what each refuses."""

from __future__ import annotations

import json
import math
import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner
from test_measure_sheet import GOOD, LIP, LOADED, TRAY, write

from crestcut import __version__
from crestcut.apps.cli import main
from crestcut.vehicle.angles import tangent_angle
from crestcut.vehicle.load import load_vehicle

ROOT = Path(__file__).resolve().parents[2]


def run(*args: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["vehicle", *args])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def test_the_sheet_is_printed_and_written_as_pages_and_a_file_to_fill_in(tmp_path: Path) -> None:
    code, said, _ = run("--sheet")
    assert code == 0 and "STACK OF CARDS" in said and not list(tmp_path.iterdir())
    for name in ("a", "b"):
        code, said, listed = run("--sheet", "--out", str(tmp_path / name))
        assert code == 0 and "STACK OF CARDS" in said and "measuring_sheet.pdf" in listed
    pdf = (tmp_path / "a/measuring_sheet.pdf").read_bytes()
    assert pdf[:5] == b"%PDF-" and pdf.count(b"/Type /Page ") + pdf.count(b"/Type /Page\n") == 3
    assert pdf == (tmp_path / "b/measuring_sheet.pdf").read_bytes()
    assert tomllib.loads((tmp_path / "a/measuring_sheet.toml").read_text(encoding="utf-8"))["A"] == []


def test_where_nothing_can_be_written_nothing_is_printed(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("")
    sheet = write(tmp_path, GOOD)
    for what in (["--sheet"], [str(sheet)]):
        code, said, error = run(*what, "--out", str(tmp_path / "taken"))
        assert (
            code == 2 and said == "" and error.count("\n") == 1 and "is a file, a folder is needed" in error
        )


def test_the_blank_sheet_itself_says_what_is_missing(tmp_path: Path) -> None:
    run("--sheet", "--out", str(tmp_path))
    code, said, error = run(str(tmp_path / "measuring_sheet.toml"), "--out", str(tmp_path / "out"))
    assert code == 2 and said == "" and "A (wheelbase, left side) was not measured" in error
    assert error.count("\n") == 1 and not (tmp_path / "out").exists()


def test_a_filled_sheet_becomes_the_file_that_a_job_takes(tmp_path: Path) -> None:
    sheet = write(tmp_path, {**GOOD, "H": ["105 mm", "135 mm"]}, TRAY, LIP, LOADED)
    code, said, error = run(str(sheet), "--out", str(tmp_path / "out"))
    assert code == 0 and "battery tray" in said and "four people" in said
    assert "Looks mistaken: H (belly to ground): its readings spread by 21.2 mm" in error
    assert {p.name for p in (tmp_path / "out").iterdir()} == {
        "vehicle.toml", "vehicle.png", "manifest.json"
    }  # fmt: skip
    car = load_vehicle(tmp_path / "out/vehicle.toml")
    assert car.name == "hatchback" and car.belly_clearance == pytest.approx(0.12)
    # without a folder the file itself comes out, so that it can be sent into one
    code, text, _ = run(str(sheet))
    assert code == 0 and text == (tmp_path / "out/vehicle.toml").read_text(encoding="utf-8")
    assert text.startswith(f"# made by: crestcut {__version__}\n")
    code, text, _ = run(str(sheet), "--json")
    assert (
        code == 0 and json.loads(text)["doubts"] and json.loads(text)["breakover"]["part"] == "battery tray"
    )


def test_tape_values_that_contradict_each_other_are_one_line(tmp_path: Path) -> None:
    sheet = write(tmp_path, {**GOOD, "B": ["2.825 m"]})
    code, said, error = run(str(sheet), "--out", str(tmp_path / "out"))
    assert code == 2 and said == "" and error.count("\n") == 1 and not (tmp_path / "out").exists()
    assert error.startswith("crestcut: sheet.toml: the sheet contradicts itself: A and B differ by 24.0 mm")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (None, "no such vehicle file or filled sheet"),
        ("", "is empty"),
        ("wheelbase = ", "is not TOML"),
        ("wheelbase = 2.8", "missing"),
        ('A = ["2.8 m"]\nfoo = 1', 'no letter or key "foo" on the sheet'),
    ],
)
def test_what_is_no_vehicle_is_one_line(tmp_path: Path, text: str | None, says: str) -> None:
    path = tmp_path / "car.toml"
    if text is not None:
        path.write_text(text, encoding="utf-8")
    code, said, error = run(str(path))
    assert code == 2 and said == "" and error.count("\n") == 1 and says in error


def test_neither_file_nor_sheet_is_usage() -> None:
    code, _, error = run()
    assert code == 2 and "filled sheet" in error


@pytest.mark.parametrize("path", sorted((ROOT / "configs/vehicles").glob("*.toml")), ids=lambda p: p.stem)
def test_the_example_vehicles_have_the_angles_of_the_tangent_formula(path: Path) -> None:
    # 49 CFR 523.2 (2015): tangents to the static loaded radius arcs. At 2,001 places of each hard plate.
    code, text, _ = run(str(path), "--json")
    said = json.loads(text)
    assert code == 0
    car = load_vehicle(path)
    least = {"approach": math.pi, "departure": math.pi, "breakover": math.pi}
    for part in (p for p in car.parts if not p.soft):
        for k in range(2001):
            x = part.x[0] + (part.x[1] - part.x[0]) * k / 2000
            z = part.z[0] + (part.z[1] - part.z[0]) * k / 2000
            ahead, behind = x - car.wheelbase, -x
            if ahead > 0:
                least["approach"] = min(least["approach"], tangent_angle(ahead, z, car.tyre_radius))
            elif behind > 0:
                least["departure"] = min(least["departure"], tangent_angle(behind, z, car.tyre_radius))
            else:
                both = (tangent_angle(d, z, car.tyre_radius) for d in (-ahead, -behind))
                least["breakover"] = min(least["breakover"], sum(both))
    for kind, angle in least.items():
        assert math.degrees(said[kind]["angle"]) == pytest.approx(math.degrees(angle), abs=0.01)
