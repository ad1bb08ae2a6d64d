"""Figures that cannot be are refused, doubtful ones said aloud: in the vehicle file, on the measuring sheet,
in `crestcut vehicle` and in the run, all by one table."""

from __future__ import annotations

import dataclasses
import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError
from crestcut.report.pages.report import report_text
from crestcut.report.view.result import result_document
from crestcut.report.words.summary import summary_lines
from crestcut.vehicle.load import SIZES, load_vehicle
from crestcut.vehicle.plausible import RULES, findings
from crestcut.vehicle.sheet.read_back import read_sheet
from report.deliver_scene import make_report

VEHICLES = Path(__file__).parents[2] / "configs" / "vehicles"
CAR = """name = "our car"
wheelbase = "2620 mm"
front_track = "1490 mm"
rear_track = "1485 mm"
tyre_radius = "296 mm"
tyre_width = "195 mm"
front_overhang = "820 mm"
rear_overhang = "690 mm"
width = "1740 mm"
belly_clearance = "140 mm"
turning_radius = "5.1 m"
"""
REFUSED = {  # what is written wrongly -> the key it is said of
    "swapped": ({"wheelbase": "1740 mm", "width": "2620 mm"}, "wheelbase"),
    "a diameter": ({"tyre_radius": "592 mm"}, "tyre_radius"),
    "belly above the hubs": ({"belly_clearance": "300 mm"}, "belly_clearance"),
    "narrower than its track": ({"width": "1480 mm"}, "width"),
    "turning in its own length": ({"turning_radius": "2.5 m"}, "turning_radius"),
}
DOUBTED = {
    "short": ({"wheelbase": "1650 mm"}, "wheelbase"),
    "high hubs": ({"tyre_radius": "480 mm", "belly_clearance": "200 mm"}, "tyre_radius"),
    "uneven tracks": ({"rear_track": "1200 mm"}, "rear_track"),
    "tyre and hub swapped": ({"tyre_width": "400 mm"}, "tyre_width"),
    "long tail": ({"rear_overhang": "2.2 m"}, "rear_overhang"),
    "a load that lifts": ({"belly_clearance": '140 mm"\n[load.full]\nrear = "60 mm'}, "load full"),
}


def written(folder: Path, change: dict[str, str]) -> Path:
    text = CAR
    for key, value in change.items():
        text, n = re.subn(rf'(?m)^{key} = ".*"$', f'{key} = "{value}"', text)
        assert n == 1
    if "[load" in text:  # a table comes last
        head, load = text.split("[load.full]\n")
        lift, rest = load.split("\n", 1)
        text = f"{head}{rest}[load.full]\n{lift}\n"
    (folder / "car.toml").write_text(text, encoding="utf-8")
    return folder / "car.toml"


@pytest.mark.parametrize(("change", "key"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_is_refused(change: dict[str, str], key: str, tmp_path: Path) -> None:
    path = written(tmp_path, change)
    with pytest.raises(CrestcutError, match=rf"^car\.toml: {key}: "):
        load_vehicle(path)
    result = CliRunner().invoke(main, ["vehicle", str(path), "--out", str(tmp_path / "out")])
    assert result.exit_code == 2 and len(result.stderr.strip().splitlines()) == 1
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(("change", "key"), DOUBTED.values(), ids=DOUBTED)
def test_what_is_doubtful_is_taken_and_said(change: dict[str, str], key: str, tmp_path: Path) -> None:
    path = written(tmp_path, change)
    doubts = load_vehicle(path).doubts
    assert doubts and any(d.startswith(f"{key}: ") for d in doubts)
    result = CliRunner().invoke(main, ["vehicle", str(path), "--json"])
    assert result.exit_code == 0 and json.loads(result.stdout)["doubts"] == list(doubts)
    assert [f"Looks mistaken: {d}" for d in doubts] == result.stderr.strip().splitlines()


def test_good_vehicles_are_not_doubted() -> None:
    paths = sorted(VEHICLES.glob("*.toml"))
    assert len(paths) >= 3
    for path in paths:
        assert load_vehicle(path).doubts == (), path.name


def test_carts_are_held_to_less(tmp_path: Path) -> None:
    """A platform trolley rides well above its castors, and may be wider than it is long between axles."""
    sizes = {"wheelbase": 0.6, "front_track": 0.7, "rear_track": 0.7, "width": 0.9, "tyre_radius": 0.06,
             "tyre_width": 0.03, "belly_clearance": 0.11}  # fmt: skip
    assert findings(sizes, rigid=True) == ()
    assert any(one.rule.stop for one in findings(sizes, rigid=False))


def test_the_sheet_says_the_same(tmp_path: Path) -> None:
    lines = {"A": 2620, "B": 2620, "C": 1490, "D": 1485, "E": 592, "F": 592, "G": 195, "H": 140, "J": 820,
             "K": 690, "N": 1740}  # fmt: skip
    text = 'sheet = "crestcut measuring sheet"\nname = "our car"\n'
    text += "".join(f'{k} = ["{v} mm", "{v + 1} mm"]\n' for k, v in lines.items())
    (tmp_path / "sheet.toml").write_text(text)
    wrong = read_sheet(tmp_path / "sheet.toml").contradictions
    assert any(w.startswith("E: ") and "diameter" in w for w in wrong), wrong


def test_the_run_says_it_aloud() -> None:
    doubts = ("car.toml: wheelbase: short", "car.toml: tyre_radius: is that a diameter?")
    report = dataclasses.replace(make_report(), vehicle_doubts=doubts)
    assert summary_lines(report)[1:3] == [f"Mind: {doubts[0]}.", f"Mind: {doubts[1]}"]
    assert f"<strong>Mind:</strong> {doubts[0]}.</p>" in report_text(report)
    assert result_document(report)["vehicle_doubts"] == list(doubts)


def test_rules_name_sizes_that_are_known() -> None:
    sizes = dict.fromkeys((*SIZES, "belly_clearance", "most_track", "least_track"), 1.0)
    for rule in RULES:
        assert all(key in sizes for sum_ in rule.over for key in sum_), rule
        assert rule.words.format_map(sizes)
