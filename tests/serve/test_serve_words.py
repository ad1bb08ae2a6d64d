"""What a result is told as, and what is typed where it is asked, as the job file holds it."""

from __future__ import annotations

import math
import re

import pytest

from crestcut.alternatives.rows import OPTION_KINDS
from crestcut.serve.answer import answer_of, tape_words
from crestcut.serve.asking import ROOM, SLAB, answers, bounds, far, own_units, shown, with_unit
from crestcut.serve.readings import asked_of, places_after, read_in, read_of
from crestcut.serve.tape import groups, sheet_text, typed_in, with_measure
from crestcut.vehicle import ITEMS

DATA = {"mark": [{"name": "A", "at": [0.0, 0.0]}, {"name": "B", "at": [4.0, 0.0]}]}
GAP = {
    "kind": "felt gap", "part": "tray", "how": "feel it (placed = \"10 mm\")", "expect_m": 0.0156,
    "settles": ["Between: too close; write it into the job file and run again."],
    "boards": {"name": "sheet", "thickness": 0.0127}, "where_xy": [[6, 2], [6, 1], [3, 2], [3, 1], [5, 1.5]],
}  # fmt: skip
STRING = {
    "kind": "string", "how": 'stretch it: two [[string]] in the job file, each with at = "least"',
    "expect_m": 0.05, "blocks_m": 0.1, "placed_m": 0.01, "where_xy": [[0, 0], [3, 0]],
    "seek_m": [[0.2, 1.0], [1.0, 2.0]],
}  # fmt: skip
RESULT = {
    "frame": {"metres_per_point_unit": [0.5, 0.5]},
    "travel": {"line": [[0.0, 1.0], [8.0, 1.0]], "line_points": [[0.0, 2.0], [16.0, 2.0]]},
    "before": {
        "verdict": "touches", "kind": "crest", "part": "tray", "least_clearance": -0.0067,
        "interval": [-0.012, -0.001], "station": 4.5, "offset": -0.2, "heading": 0.0, "x": 3.0, "y": 4.0,
    },
    "advice": {"measure": [
        {**row, "where_points": [[2 * v for v in p] for p in row["where_xy"]]} for row in (GAP, STRING)
    ]},
    "release": {"state": "not for cutting", "reasons": ["ask", "short"],
                "codes": [{"about": "slab.kind"}, {"about": None}]},
}  # fmt: skip


def test_a_gap_is_told_without_a_sign_in_one_unit() -> None:
    for unit, gap in (("mm", "6.7 mm too little"), ("in", "1/4 in too little"), ("cm", "0.7 cm too little")):
        told = answer_of(RESULT, DATA, unit)
        assert told.gap == gap and "-" not in told.gap + told.between
        other = r"\d in\b" if unit != "in" else r"\d mm\b"
        assert not re.search(other, f"{told.gap} {told.between} {' '.join(told.where)}")


def test_a_place_is_told_by_the_nearest_marks_in_metres_on_the_ground() -> None:
    """A scan in half metres: marks stand at 0, 0 and 2, 0 m; the spot is 3-4-5 from the first."""
    assert (
        tape_words([3.0, 4.0], RESULT, DATA, "mm")
        == "4.12 m from mark B and 5.00 m from mark A (tape held level)"
    )
    assert math.hypot(1, 4) == pytest.approx(4.12, abs=0.005)
    assert tape_words([3.0, 4.0], RESULT, {}, "mm").count("point") == 2  # no marks: from the line's ends


def test_what_is_next_hangs_on_what_stands_in_the_way() -> None:
    assert answer_of(RESULT, DATA, "mm").next.screen == "measure"
    settled = {**RESULT, "advice": {"measure": []}}
    assert answer_of(settled, DATA, "mm").next.screen == "slab"
    short = {**settled, "release": {"state": "no", "reasons": ["short"], "codes": [{"about": None}]}}
    assert answer_of(short, DATA, "mm").next.screen == "room"
    assert answer_of({**settled, "release": {"state": "ok"}}, DATA, "mm").next.screen == "work"
    early = answer_of(RESULT, DATA, "mm", planned=False)  # what is to be measured does not hang on the plan
    assert early.next == answer_of(RESULT, DATA, "mm").next
    for verdict, said in (("touches", "being worked out"), ("clears", "Nothing has to be done")):
        known = {**settled, "before": {**RESULT["before"], "verdict": verdict}}
        waits = answer_of(known, DATA, "mm", planned=False).next
        assert not waits.button and said in waits.why


def test_a_reading_becomes_the_table_that_the_sheet_would_have_it() -> None:
    gap, string = asked_of(RESULT, DATA, "mm")
    assert "job file" not in " ".join((*gap.settles, gap.how, string.how)) and "placed" not in gap.how
    stood = {"part": "tray", "front_axle": [12.0, 3.0], "within": "1 mm", "raised": "12.7 mm"}
    assert read_in(gap, {"gap": "14"}, "mm") == ([{**stood, "gap": "14 mm"}], {})
    tables, faults = read_in(string, {"down0": "9/16", "down1": "1.5 cm"}, "in")
    assert not faults and [t["down"] for t in tables] == ["9/16 in", "1.5 cm"]
    assert tables[0]["between"] == ["0.20 m", "1.00 m"] and tables[1]["a"] == [0.0, 0.0]
    for typed in ("", "22 ft", "wide", "-3"):
        assert read_in(gap, {"gap": typed}, "mm")[1], typed
    assert read_in(gap, {"touched": "yes"}, "mm")[1]  # on boards a touch is no reading


def test_a_touch_at_a_place_that_is_not_known_is_not_asked_for() -> None:
    lost = {"advice": {"measure": [{"kind": "felt gap", "part": "tray", "how": "feel it"}]}}
    (asked,) = asked_of(lost, DATA, "mm")
    assert not asked.may_touch and not asked.entries
    assert read_in(asked, {"touched": "yes"}, "mm") == ([], {})  # and no fault of ours


def test_in_inches_no_amount_is_in_metres_or_litres() -> None:
    cut = {"deepest": 0.0127, "area": 0.8, "volume": 0.0067}
    rows = [{"kind": k, "name": k, "answer": "both", "depth": 0.01, "volume": 0.0067} for k in OPTION_KINDS]
    told = answer_of({**RESULT, "cut": cut, "options": rows}, DATA, "in")
    words = " ".join([told.cut, *(row.cost for row in told.options)])
    assert (
        told.cut == "1/2 in at the deepest, over 8.61 ft²: 1.77 gallons of concrete"
    )  # 0.8/0.3048², 6.7/3.785
    assert not re.search(r"litre|m²|\bmm\b", words) and "1.77 gallons" in told.options[-1].cost + words


def test_a_note_in_metres_is_told_in_inches_where_those_are_measured_in() -> None:
    note = "1.2 m2 of it, 0.75 x 0.65 m about x 1.25, 13 mm (1/2 in) high; 1,200 points per m2, 2.54 m off"
    assert own_units(note, "mm") == note
    told = own_units(note, "in")  # 1.2/0.3048² = 12.92; 0.75 m = 29.53 in; 1200 x 0.3048² = 111.5
    assert told == (
        "12.9 ft² of it, 2 ft 5 1/2 in x 2 ft 1 1/2 in about x 1.25, 1/2 in high; 111 points per ft²,"
        " 8 ft 4 in off"
    )


def test_readings_of_the_finished_work_are_asked_where_it_was_tight() -> None:
    asked = places_after(RESULT, "mm")
    assert [a.entries[0]["front_axle"] for a in asked] == [[9.0, 2.0], [9.0, 2.4], [9.0, 1.6]]
    (read,) = read_of(
        {"witness": [{"part": "tray", "front_axle": [0, 0], "touched": True}]}, RESULT, DATA, "mm"
    )
    assert read.value == "it touched" and "0.00 m from mark A" in read.words


def test_every_question_is_one_of_the_schema_and_every_choice_is_allowed() -> None:
    for ask in (*ROOM, *SLAB):
        rule = bounds().get(ask.key, {})
        allowed = set(rule.get("enum", []))
        if allowed:
            assert {value for value, _ in ask.choices} - {""} <= allowed, ask.key
        keys, faults = answers([ask], {ask.key: ask.choices[-1][0] if ask.choices else ""}, ["forward"], "mm")
        assert not faults and ask.key in keys


def test_lengths_are_never_a_number_alone_in_a_file() -> None:
    assert [with_unit(t, "in") for t in ("5 1/2", "5.5", "140 mm", "")] == [
        "5 1/2 in",
        "5.5 in",
        "140 mm",
        "",
    ]
    assert shown(17.04, "in") == "55 ft 10 3/4 in" and far(0.1, "in") == "4 in" and shown(0.0, "mm") == "0"


def test_the_sheet_stands_in_its_boxes_again() -> None:
    typed = {item.letter: "" for item in ITEMS} | {
        "A": "2620; 2622",
        "R": "12.5",
        "name": 'a "car"',
        "load": "x",
    }
    import tomllib

    text = sheet_text(typed, {"part.0.name": "tray", "part.0.e": "105", "part.0.soft": "yes"}, "mm")
    found = typed_in(tomllib.loads(text))
    assert found["A"] == "2620 mm; 2622 mm" and found["R"] == "12.5" and found["name"] == 'a "car"'
    assert found["part.0.e"] == "105 mm" and found["part.0.soft"] == "yes"
    letters = [box.letter for group in groups({}, {}, "mm") for box in group.boxes]
    assert sorted(letters) == sorted(item.letter for item in ITEMS)


def test_one_measure_of_a_vehicle_file_changes_and_nothing_else() -> None:
    text = 'name = "x"\nbelly = "140 mm"  # low\n[[part]]\nclearance = ["1 mm", "2 mm"]\n'
    assert with_measure(text, "belly", "150", "mm") == text.replace("140", "150")
    assert with_measure(text, "part.0.clearance.1", "3 mm", "in") == text.replace("2 mm", "3 mm")


@pytest.mark.parametrize("kind", OPTION_KINDS)
def test_what_an_option_takes_is_said_of_every_kind(kind: str) -> None:
    row = {"kind": kind, "name": kind, "answer": "both", "depth": 0.019, "volume": -0.0889}
    (told,) = answer_of({"options": [row]}, {}, "mm").options
    assert (told.cost == "nothing to do") is (kind == "as it is")
    assert "{" not in told.cost
