"""result.json keeps the contract: every key there, SI, unknown is null."""

from __future__ import annotations

import dataclasses
import json
import math
from pathlib import Path

import numpy as np
import pytest
from deliver_scene import make_report

from crestcut.alternatives.rows import Option
from crestcut.base.units import US_SURVEY_FOOT
from crestcut.chance.records import Chance
from crestcut.contact.clearance.soft import SoftContact
from crestcut.report.view.result import SCHEMA, plain, result_document, write_result

NUMBER, TEXT, LIST, TRUTH = (int, float), str, list, bool
STATE = {
    "verdict": TEXT, "kind": TEXT, "least_clearance": NUMBER, "interval": LIST, "chance_of_contact": NUMBER,
    "station": NUMBER, "x": NUMBER, "y": NUMBER, "part": TEXT, "load": TEXT,
}  # fmt: skip
CONTRACT = {
    "schema": TEXT, "version": TEXT, "seed": int, "inputs": LIST, "want": NUMBER, "confidence": NUMBER,
    **{f"before.{key}": kind for key, kind in STATE.items()},
    **{f"in_use.{key}": kind for key, kind in STATE.items()},
    "advice.measure": LIST,
    "cut.deepest": NUMBER, "cut.area": NUMBER, "cut.volume": NUMBER, "cut.feasible": TRUTH,
    "cut.provisional": TRUTH, "cut.margin": NUMBER, "cut.claim": TEXT, "cut.slack": NUMBER,
    "cut.short_by": NUMBER, "cut.binding": LIST,
    "after.least_clearance": NUMBER, "after.interval": LIST, "after.in_use": dict,
    "units": dict, "frame": dict,
    "release.state": TEXT, "release.reasons": LIST,
    "surface.cell": NUMBER, "surface.noise": NUMBER, "surface.systematic": NUMBER,
    "surface.standard_error": NUMBER,
    "scan.points": int, "seconds": dict,
}  # fmt: skip
USED = Chance(-0.012, (-0.02, -0.004), 0.999, "touches", "almost certain that it touches", 0.004, 0.3, 400)
AFTER = Chance(
    0.0141, (0.0128, 0.0155), 0.0, "clears", "less than 1 in 400 that it touches", 0.0007, 0.5, 400
)


def value(document: dict, key: str) -> object:
    for part in key.split("."):
        document = document[part]
    return document


def full() -> dict:
    report = dataclasses.replace(make_report(clearance=0.098), in_use=USED, after=AFTER)
    return json.loads(json.dumps(result_document(report), allow_nan=False))


@pytest.mark.parametrize("key", list(CONTRACT))
def test_every_key_is_there(key: str, document: dict = full()) -> None:  # noqa: B008 - one document for all keys
    kind = CONTRACT[key]
    got = value(document, key)
    assert isinstance(got, kind), f"{key} is {got!r}"
    assert kind is TRUTH or not isinstance(got, bool)


def test_every_key_is_there_when_nothing_is_known() -> None:
    report = make_report(cut=False)
    report = dataclasses.replace(report, today=None, before=dataclasses.replace(report.before, least={}))
    document = json.loads(json.dumps(result_document(report), allow_nan=False))
    for key in CONTRACT:
        value(document, key)  # raises KeyError if absent
    assert document["before"]["verdict"] == "cannot tell"
    unknown = [
        "before.least_clearance",
        "before.x",
        "before.part",
        "in_use.verdict",
        "cut.deepest",
        "cut.feasible",
    ]
    for key in [*unknown, "after.least_clearance", "after.interval", "surface.standard_error"]:
        assert value(document, key) is None, key


def test_figures_are_those_of_the_report() -> None:
    report = make_report(clearance=0.098, release="provisional")
    document = result_document(report)
    worst, plan, chance = report.before.worst, report.plan, report.today
    assert worst is not None and plan is not None and chance is not None
    assert document["schema"] == SCHEMA
    assert value(document, "before.least_clearance") == chance.least_clearance
    assert value(document, "before.interval") == list(chance.interval)
    assert value(document, "before.station") == worst.station
    assert value(document, "cut.deepest") == plan.deepest
    assert value(document, "cut.provisional") is True
    assert value(document, "surface.systematic") == pytest.approx(math.hypot(0.0013, 0.003))
    assert value(document, "surface.standard_error") == pytest.approx(0.0006)
    assert value(document, "release.state") == "provisional"
    assert value(document, "in_use.least_clearance") is None


def test_worst_point_is_found_again_in_the_scan() -> None:
    report = make_report("us-ft")
    document = result_document(report)
    worst = report.before.worst
    assert worst is not None
    x, y = value(document, "before.x"), value(document, "before.y")
    point = value(document, "before.point")
    assert isinstance(point, list) and isinstance(x, float) and isinstance(y, float)
    # SI along the scan's own axes; `point` is what a job file would say
    assert np.array([x, y]) - report.scan.frame.shift[:2] == pytest.approx(worst.xy, abs=1e-6)
    assert np.array(point) * US_SURVEY_FOOT == pytest.approx([x, y], abs=1e-6)
    assert report.scan.frame.plan_to_site(point) == pytest.approx(worst.xy, abs=1e-6)


def test_every_coordinate_is_in_the_stated_frame_and_every_point_in_the_scans_unit() -> None:
    """A scan in survey feet: what is not called a point is metres, and each has its point beside it."""
    report = make_report("us-ft")
    worst = report.before.worst
    assert worst is not None
    ends = tuple(tuple(float(v) for v in report.line.xy[k]) for k in (0, -1))
    option = Option("another line", "another line", 0.02, 0.0, 0.97, True, 0.01, 0.0, 0.0, 0.0, "", line=ends)
    felt = [list(report.plan_point(xy)) for xy in ((1.0, 2.0), (3.0, 1.0))]
    full = dataclasses.replace(
        report, options=(option,), soft=(SoftContact("lip", 0.01, worst),),
        advice=({"kind": "felt gap", "where_xy": felt, "narrows": 2.0},),
    )  # fmt: skip
    document = json.loads(json.dumps(result_document(full), allow_nan=False))
    frame = document["frame"]
    assert frame["unit"] == "m" and frame["point_unit"] == "us-ft" and document["units"]["length"] == "m"
    assert frame["metres_per_point_unit"] == pytest.approx([US_SURVEY_FOOT] * 2)

    def metres(point: object) -> np.ndarray:
        return np.asarray(point, dtype=float) * frame["metres_per_point_unit"]

    pairs = [(row["line"], row["line_points"]) for row in (document["travel"], document["options"][0])]
    advised = document["advice"]["measure"][0]
    pairs.append((advised["where_xy"], advised["where_points"]))
    for state in (document["before"], document["in_use"], document["soft"][0]):
        pairs.append(([state["x"], state["y"]], state["point"]))
    for own, point in pairs:
        assert np.asarray(own, dtype=float) == pytest.approx(metres(point), abs=1e-6)
    shift = report.scan.frame.shift[:2]
    assert np.asarray(document["travel"]["line"]) - shift == pytest.approx(np.array(ends), abs=1e-6)
    assert np.asarray(advised["where_xy"]) - shift == pytest.approx(np.array([(1, 2), (3, 1)]), abs=1e-6)


def test_what_a_cut_leaves_in_use_stands_beside_it() -> None:
    used = dataclasses.replace(USED, least_clearance=0.0055, verdict="cannot tell", chance_of_contact=0.09)
    report = dataclasses.replace(make_report(), after=AFTER, after_in_use=used)
    after = result_document(report)["after"]
    assert isinstance(after, dict)
    assert after["least_clearance"] == AFTER.least_clearance and after["verdict"] == "clears"
    told = after["in_use"]
    assert (told["least_clearance"], told["verdict"], told["chance_of_contact"]) == (
        0.0055,
        "cannot tell",
        0.09,
    )
    assert told["interval"] == list(used.interval) and told["chance_in_words"] == used.words
    blank = result_document(make_report(cut=False))["after"]
    assert isinstance(blank, dict) and blank["in_use"]["least_clearance"] is None


def test_inputs_are_named_with_their_hashes_but_not_their_folders() -> None:
    inputs = result_document(make_report())["inputs"]
    assert inputs == [
        {"role": "job", "file": "courtyard.toml", "sha256": "b" * 64},
        {"role": "scan", "file": "apron.laz", "sha256": "a" * 64},
        {"role": "vehicle", "file": "van.toml", "sha256": "c" * 64},
    ]


def test_written_file_reads_back_the_same(tmp_path: Path) -> None:
    report = make_report()
    document = write_result(report, tmp_path / "result.json")
    assert json.loads((tmp_path / "result.json").read_text(encoding="utf-8")) == document
    write_result(report, tmp_path / "again.json")
    assert (tmp_path / "again.json").read_bytes() == (tmp_path / "result.json").read_bytes()


def test_a_finding_of_what_the_cut_leaves_is_written_beside_the_sheets() -> None:
    """A worksheet holds the chance after the cut, and that its findings, each with its kind."""
    from dataclasses import asdict

    from crestcut.chance import Doubt, Finding

    told = plain(asdict(Finding(Doubt.TWICE, (1.0, 2.0), 0.5, math.nan)))
    assert told == {"doubt": "seen twice", "xy": [1.0, 2.0], "area": 0.5, "size": None}
