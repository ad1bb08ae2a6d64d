"""The measuring sheet read back: repeats become tolerances, contradictions are named, a vehicle file comes
out.
"""

from __future__ import annotations

import math
import re
import tomllib
from pathlib import Path

import pytest

from crestcut.base.errors import CrestcutError
from crestcut.vehicle.angles import derive_angles, tangent_angle
from crestcut.vehicle.load import load_vehicle
from crestcut.vehicle.sheet.fill_in import blank_sheet, measuring_sheet
from crestcut.vehicle.sheet.items import ITEMS, PART_ITEMS
from crestcut.vehicle.sheet.read_back import FLOOR, TAPE, is_sheet, read_sheet
from crestcut.vehicle.sheet.vehicle import measured_vehicle, vehicle_text

Sheet = dict[str, list[str] | list[float]]
GOOD: Sheet = {
    "A": ["2.800 m", "2.802 m"], "B": ["2.801 m"], "C": ["1500 mm"], "D": ["1500 mm"],
    "E": ["315 mm", "316 mm"], "F": ["314 mm"],
    "G": ["200 mm"], "H": ["118 mm", "122 mm", "120 mm"], "J": ["900 mm"],
    "K": ["800 mm"], "M": ["4.502 m"], "N": ["1750 mm"],
    "P": ["180 mm"], "Q": ["900 mm"], "S": ["5.5 m"], "T": ["220 mm"], "U": ["600 mm"],
}  # fmt: skip
TRAY = """
[[part]]
name = "battery tray"
a = ["560 mm", "562 mm"]
b = ["2140 mm"]
c = ["560 mm"]
d = ["555 mm"]
e = ["105 mm", "103 mm"]
f = ["110 mm", "112 mm"]
"""
LIP = """
[[part]]
name = "rubber lip"
a = ["-640 mm"]
b = ["-610 mm"]
c = ["600 mm"]
d = ["600 mm"]
e = ["128 mm"]
soft = true
"""
LOADED = """
[[loaded]]
name = "four people"
front = ["-8 mm", "-10 mm"]
rear = ["-24 mm"]
"""


def write(folder: Path, sheet: Sheet, *more: str) -> Path:
    lines = ['sheet = "measuring sheet 1"', 'name = "hatchback"', 'load = "driver only"']
    lines += [f"{k} = {v}".replace("'", '"') for k, v in sheet.items()]
    path = folder / "sheet.toml"
    path.write_text("\n".join([*lines, *more]), encoding="utf-8")
    return path


def photo(ahead: float, height: float, radius: float = 0.3155) -> list[float]:
    return [round(math.degrees(tangent_angle(ahead, height, radius)), 1)]


def test_a_consistent_sheet_has_no_doubts_and_gives_the_vehicle(tmp_path: Path) -> None:
    seen: Sheet = {**GOOD, "R": photo(0.9, 0.18), "V": photo(0.6, 0.22)}
    found = read_sheet(write(tmp_path, seen, TRAY, LIP, LOADED))
    assert found.contradictions == () == found.doubts
    lengths = found.vehicle_lengths()
    assert lengths["wheelbase"][0] == pytest.approx(2.801)
    # three readings with an sd of 2 mm: their mean is known to 2 / sqrt(3) and the floor's own share
    expected = math.hypot(0.002 / math.sqrt(3), FLOOR)
    assert lengths["belly_clearance"] == pytest.approx((0.12, expected))
    car, text = measured_vehicle(found)
    (tmp_path / "car.toml").write_text(text, encoding="utf-8")
    again = load_vehicle(tmp_path / "car.toml")
    assert again.parts == car.parts and again.loads == car.loads
    parts = {p.name: p for p in car.parts}
    assert list(parts) == ["belly", "nose", "tail", "battery tray", "rubber lip"]
    assert parts["belly"].within == pytest.approx(expected, abs=5e-5)
    tray = parts["battery tray"]
    assert tray.x == pytest.approx((2.801 - 2.140, 2.801 - 0.561), abs=2e-4)
    assert tray.y == pytest.approx((-0.560, 0.555)) and tray.z == pytest.approx((0.111, 0.104))
    assert tray.within == pytest.approx(math.hypot(TAPE / math.sqrt(2), FLOOR), abs=5e-5)
    assert parts["nose"].z == pytest.approx(
        (0.18, 0.18 + 0.05 * math.tan(math.radians(photo(0.9, 0.18)[0]))), abs=2e-3
    ) and parts["nose"].x[1] == pytest.approx(3.701, abs=2e-4)
    assert parts["rubber lip"].soft
    assert [(s.name, s.front, s.rear) for s in car.loads] == [
        ("as measured", 0.0, 0.0),
        ("four people", pytest.approx(-0.009), pytest.approx(-0.024)),
    ]
    # the tail rises behind its lowest point as the photograph shows: the departure angle is the one measured
    angles = derive_angles(car)
    assert angles.departure is not None and angles.approach is not None
    assert math.degrees(angles.departure.angle) == pytest.approx(photo(0.6, 0.22)[0], abs=0.1)
    assert angles.departure.x == pytest.approx(-0.6, abs=0.01) or parts["tail"].z[0] > 0.22


def test_without_a_photograph_an_end_is_as_low_all_the_way_out(tmp_path: Path) -> None:
    car, text = measured_vehicle(read_sheet(write(tmp_path, GOOD)))
    tail = next(p for p in car.parts if p.name == "tail")
    assert tail.x == pytest.approx((-0.8, -0.6)) and tail.z == (0.22, 0.22)
    assert "T, U: as low all the way out" in text


def test_a_cart_stands_on_three_wheels_by_where_it_balances(tmp_path: Path) -> None:
    car, _ = measured_vehicle(read_sheet(write(tmp_path, {**GOOD, "X": ["1.5 m"]})))
    assert car.rigid and car.centre_of_mass is not None
    assert car.centre_of_mass[0] == pytest.approx(2.801 - 1.5)


def test_repeats_that_spread_make_a_wider_tolerance(tmp_path: Path) -> None:
    tight = read_sheet(write(tmp_path, GOOD)).readings["H"].within
    wide = read_sheet(write(tmp_path, {**GOOD, "H": ["112 mm", "128 mm", "120 mm"]})).readings["H"].within
    assert wide == pytest.approx(math.hypot(0.008 / math.sqrt(3), FLOOR)) and wide > 2 * tight


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"B": ["2.825 m"]}, r"A and B differ by 24\.0 mm"),
        ({"F": ["345 mm"]}, "E and F differ"),
        ({"M": ["4.70 m"]}, r"M and A \+ J \+ K differ"),
        ({"H": ["400 mm"]}, "above the hubs"),
        ({"S": ["2.5 m"]}, "shorter than the wheelbase"),
        ({"N": ["1400 mm"]}, "narrower than the track"),
        ({"X": ["2.9 m"]}, "X: it would balance outside its wheels"),
        ({"R": [17.0]}, r"R: the photograph shows 17\.0 degrees, P and Q make 11\.\d"),
        ({"R": [7.0]}, "one of them is mistaken; does something lower hang there"),
        ({"V": [30.0]}, r"V: the photograph shows 30\.0 degrees, T and U make"),
        ({"R": [12.0], "Q": ["100 mm"]}, "lies inside the tyre"),
    ],
)
def test_values_that_contradict_each_other_are_one_line(tmp_path: Path, changed: Sheet, words: str) -> None:
    found = read_sheet(write(tmp_path, {**GOOD, **changed}))
    assert len(found.contradictions) == 1 and re.search(words, found.contradictions[0])
    with pytest.raises(CrestcutError, match=r"sheet\.toml: the sheet contradicts itself: ") as caught:
        vehicle_text(found)
    assert re.search(words, str(caught.value)) and "\n" not in str(caught.value)


def test_further_contradictions_are_counted(tmp_path: Path) -> None:
    found = read_sheet(write(tmp_path, {**GOOD, "B": ["2.825 m"], "F": ["345 mm"]}))
    with pytest.raises(CrestcutError, match=r"\(and 1 more: E and F\)"):
        vehicle_text(found)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"H": ["100 mm", "140 mm"]}, "H .* its readings spread by 28"),
        ({"B": ["2.8095 m"]}, "A and B differ by .*: worth measuring again"),
        ({"R": [14.4]}, "R: .* worth measuring again"),
        ({"Q": []}, "P and Q make a point only together"),
    ],
)
def test_what_looks_mistaken_is_said_and_no_more(tmp_path: Path, changed: Sheet, words: str) -> None:
    found = read_sheet(write(tmp_path, {**GOOD, **changed}))
    assert found.contradictions == () and len(found.doubts) == 1 and re.search(words, found.doubts[0])
    assert f"# Looks mistaken: {found.doubts[0]}" in vehicle_text(found)


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('b = ["2140 mm"]', 'b = ["214 mm"]', "battery tray: its rear edge b is not behind"),
        ('d = ["555 mm"]', 'd = ["-700 mm"]', "its left edge d is not left of"),
        ('d = ["555 mm"]', 'd = ["955 mm"]', "beyond half the width N"),
        ('e = ["105 mm", "103 mm"]', 'e = ["135 mm"]\n# ', "f"),
        ('b = ["2140 mm"]', 'b = ["3.7 m"]', "further back than the rear overhang K"),
    ],
)
def test_a_part_that_cannot_be_contradicts_too(tmp_path: Path, old: str, new: str, words: str) -> None:
    part = TRAY.replace(old, new)
    if words == "f":  # both edges above the belly
        part, words = part.replace('f = ["110 mm", "112 mm"]', ""), "lies above its own belly H"
    found = read_sheet(write(tmp_path, GOOD, part))
    assert len(found.contradictions) == 1 and words in found.contradictions[0]


def test_a_low_part_of_the_nose_is_held_against_the_photograph(tmp_path: Path) -> None:
    low = TRAY.replace('"560 mm", "562 mm"', '"-880 mm"').replace('"2140 mm"', '"-700 mm"')
    low = low.replace('name = "battery tray"', 'name = "bumper"').replace('b = ["-700', 'b = ["-700')
    found = read_sheet(write(tmp_path, {**GOOD, "R": photo(0.9, 0.18)}, low))
    assert len(found.contradictions) == 1 and "bumper makes" in found.contradictions[0]


@pytest.mark.parametrize(
    ("sheet", "more", "words"),
    [
        ({**GOOD, "Z": ["1 m"]}, "", 'no letter or key "Z"'),
        ({k: v for k, v in GOOD.items() if k != "H"}, "", "H .belly to ground. was not measured"),
        ({**GOOD, "A": ["2800"]}, "", "sheet.toml: A: .2800. has no unit"),
        ({**GOOD, "A": ["2800 mm", "-2 m"]}, "", "above zero"),
        ({**GOOD, "A": [2800]}, "", "longer than any vehicle"),
        ({**GOOD, "R": ["12"]}, "", "angle in degrees expected"),
        (GOOD, "[[part]]\na = []", "part 1: a part without a name"),
        (GOOD, '[[part]]\nname = "x"', r"part 1 \(x\): a \(front edge\) was not measured"),
        (GOOD, '[[part]]\nname = "x"\ng = ["1 m"]', r"part 1 \(x\): no letter or key .g. for a part"),
        (GOOD, TRAY + 'on = "roof"', ".roof. carries nothing; write one of body"),
        (GOOD, TRAY + 'soft = "yes"', "true or false expected"),
        (GOOD, TRAY.replace('"105 mm"', '"0 mm"'), "above zero"),
        (GOOD, '[[loaded]]\nname = "x"\nfront = ["-8 mm"]', r"loaded 1 \(x\): rear was not measured"),
        (GOOD, "part = 3", "a list of tables expected"),
    ],
)
def test_a_sheet_that_cannot_be_read_is_one_line(tmp_path: Path, sheet: Sheet, more: str, words: str) -> None:
    with pytest.raises(CrestcutError, match=words) as caught:
        read_sheet(write(tmp_path, sheet, more))
    assert "\n" not in str(caught.value) and "sheet.toml" in str(caught.value)


def test_the_blank_sheet_can_be_filled_in(tmp_path: Path) -> None:
    data = tomllib.loads(blank_sheet())
    assert {item.letter for item in ITEMS} <= set(data) and is_sheet(data)
    assert not is_sheet(tomllib.loads((ROOT / "configs/vehicles/kiln_trolley.toml").read_text()))
    filled = blank_sheet()
    for letter, value in GOOD.items():
        filled = filled.replace(f"\n{letter} = []", f"\n{letter} = {value}".replace("'", '"'))
    for mark in ("[[part]]", 'name = "battery tray"', "soft = false", 'on = "body"'):
        filled = filled.replace(f"# {mark}", mark)
    for item in PART_ITEMS:
        given = {"a": "560 mm", "b": "2140 mm", "c": "500 mm", "d": "500 mm", "e": "105 mm"}.get(item.letter)
        filled = filled.replace(f"# {item.letter} = []", f'{item.letter} = ["{given}"]' if given else "")
    (tmp_path / "sheet.toml").write_text(filled, encoding="utf-8")
    found = read_sheet(tmp_path / "sheet.toml")
    assert [p.name for p in found.parts] == ["battery tray"] and found.name == "measured vehicle"


ROOT = Path(__file__).resolve().parents[2]


def test_every_letter_is_on_the_printed_sheet_and_every_danger() -> None:
    text = measuring_sheet()
    for item in (*ITEMS, *PART_ITEMS):
        assert f"  {item.letter}  {item.what}:" in text
    for sheet in (text, blank_sheet()):
        for word in ("NEVER reach or lie under a vehicle", "chocks", "Hot parts"):
            assert word in sheet
    for word in ("straightedge", "Driver in", "STACK OF CARDS", "stick of known"):
        assert word in text
    assert max(len(line) for line in text.splitlines()) <= 100
    assert len({item.letter for item in (*ITEMS, *PART_ITEMS)}) == len(ITEMS) + len(PART_ITEMS)
