"""The measuring sheet read back: repeats become tolerances, contradictions are named."""

from __future__ import annotations

import math
import re
import tomllib
from pathlib import Path

import pytest

from crestcut.errors import CrestcutError
from crestcut.vehicle.measure_sheet import ITEMS, approach_angle, blank_sheet, read_sheet

GOOD = {
    "A": ["2.800 m", "2.802 m"], "B": ["2.801 m"], "C": ["1500 mm"], "D": ["1500 mm"],
    "E": ["315 mm", "316 mm"], "F": ["314 mm"],
    "G": ["200 mm"], "H": ["118 mm", "122 mm", "120 mm"], "J": ["900 mm"],
    "K": ["800 mm"], "M": ["4.502 m"], "N": ["1750 mm"],
    "P": ["180 mm"], "Q": ["900 mm"], "S": ["5.5 m"],
}  # fmt: skip


def write(path: Path, sheet: dict[str, list[str]], angle: float | None = None) -> Path:
    text = "\n".join(f"{k} = {v}".replace("'", '"') for k, v in sheet.items())
    if angle is not None:
        text += f"\nR = [{angle}]"
    path.write_text(text)
    return path


def test_a_consistent_sheet_has_no_doubts_and_gives_the_vehicle(tmp_path: Path) -> None:
    angle = math.degrees(approach_angle(0.9, 0.18, 0.3155))
    found = read_sheet(write(tmp_path / "sheet.toml", GOOD, round(angle, 1)))
    assert found.doubts == ()
    lengths = found.vehicle_lengths()
    assert lengths["wheelbase"][0] == pytest.approx(2.801) and lengths["belly_clearance"][0] == pytest.approx(
        0.12
    )
    # three readings with an sd of 2 mm: their mean is known to 2 / sqrt(3)
    assert lengths["belly_clearance"][1] == pytest.approx(0.002 / math.sqrt(3))
    assert {"front_track", "rear_track", "tyre_radius", "tyre_width", "width"} <= lengths.keys()


def test_the_tangent_form_of_the_approach_angle() -> None:
    # point 900 mm ahead at 180 mm, R 330 mm: 11.7409 degrees (own arithmetic, closed form and brute force)
    assert math.degrees(approach_angle(0.9, 0.18, 0.33)) == pytest.approx(11.7409, abs=1e-4)


@pytest.mark.parametrize(
    ("letter", "value", "words"),
    [
        ("B", ["2.825 m"], "A and B differ"),
        ("F", ["345 mm"], "E and F differ"),
        ("M", ["4.70 m"], r"M and A \+ J \+ K differ"),
        ("H", ["100 mm", "140 mm"], "spread"),
        ("H", ["400 mm"], "above the hubs"),
        ("S", ["2.5 m"], "shorter than the wheelbase"),
    ],
)
def test_values_that_contradict_each_other_are_named(
    tmp_path: Path, letter: str, value: list[str], words: str
) -> None:
    found = read_sheet(write(tmp_path / "sheet.toml", {**GOOD, letter: value}))
    assert len(found.doubts) == 1
    assert re.search(words, found.doubts[0])


def test_a_photograph_that_shows_another_angle_is_named(tmp_path: Path) -> None:
    found = read_sheet(write(tmp_path / "sheet.toml", GOOD, 17.0))
    assert found.doubts and "the photograph shows 17.0 degrees" in found.doubts[0]


@pytest.mark.parametrize(
    ("sheet", "words"),
    [
        ({**GOOD, "Z": ["1 m"]}, 'no letter "Z"'),
        ({k: v for k, v in GOOD.items() if k != "H"}, "H .belly to ground. was not measured"),
        ({**GOOD, "A": ["2800"]}, "has no unit"),
        ({**GOOD, "A": ["-2 m"]}, "above zero"),
    ],
)
def test_a_sheet_that_cannot_be_read_is_one_line(
    tmp_path: Path, sheet: dict[str, list[str]], words: str
) -> None:
    with pytest.raises(CrestcutError, match=words):
        read_sheet(write(tmp_path / "sheet.toml", sheet))


def test_the_blank_sheet_can_be_filled_in() -> None:
    assert set(tomllib.loads(blank_sheet())) == {item.letter for item in ITEMS}
    assert "jacked" in blank_sheet() and "hot" in blank_sheet()
