"""A row of the options says what a run of the job says once the job file, or the vehicle file, is changed
that way.
"""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from crestcut.alternatives.driving import PRESSED, PRESSURE_RISE
from crestcut.alternatives.rows import Option
from crestcut.base.errors import CrestcutError
from crestcut.report.view.result import result_document, result_text
from crestcut.report.words.options import option_lines, vehicle_lines
from crestcut.study.making import run_job
from crestcut.study.report import Report

RISE = PRESSED * (1 - 1 / (1 + PRESSURE_RISE)) * 1000  # mm
CAR = """
name = "{name}"
wheelbase = "2600 mm"
front_track = "1500 mm"
rear_track = "1500 mm"
tyre_radius = "{radius} mm"
tyre_width = "200 mm"
width = "1750 mm"
front_overhang = "700 mm"
rear_overhang = "700 mm"
belly_clearance = "{belly} mm"
turning_radius = "5 m"
[[part]]
name = "tray"
back = ["600 mm", "2000 mm"]
across = ["-500 mm", "500 mm"]
clearance = "{tray} mm"
[load.laden]
front = "-10 mm"
rear = "-20 mm"
"""
JOB = """
[site]
ground = "private"
[scan]
files = ["slab.xyz"]
unit = "m"
up = "z"
scanner = "terrestrial"
[vehicle]
file = "{car}"
load = {load}
[travel]
line = {line}
wander = "{wander} mm"
heading = {heading}
[clearance]
want = "10 mm"
[cut]
deepest = "49 mm"
[slab]
thickness = "200 mm"
thickness_from = "drilled"
[surface]
cell = "20 mm"
"""
AS_IT_IS = {
    "car": "car.toml",
    "load": '["laden", "as measured"]',
    "line": "[[0.5, 0.0], [6.5, 0.0]]",
    "wander": 100,
    "heading": 1,
}


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A crest at x = 3.5 that grows flatter to the left, scanned with 1 mm of noise."""
    folder = tmp_path_factory.mktemp("yard")
    rng = np.random.default_rng(5)
    x, y = (
        a.ravel() + rng.uniform(-0.008, 0.008, a.size)
        for a in np.meshgrid(np.arange(-0.7, 7.7, 0.02), np.arange(-2.4, 2.4, 0.02))
    )
    grade = 0.075 * (1 - 0.55 / (1 + np.exp(-(y - 0.5) / 0.3)))
    z = -grade * np.abs(x - 3.5) + rng.normal(0, 0.001, len(x))
    np.savetxt(folder / "slab.xyz", np.stack([x, y, z], axis=1), fmt="%.4f")
    (folder / "car.toml").write_text(CAR.format(name="car", radius=310, belly=140, tray=95))
    pumped = CAR.format(name="car", radius=310 + RISE, belly=140 + RISE, tray=95 + RISE)
    (folder / "pumped.toml").write_text(pumped)
    (folder / "cart.toml").write_text(CAR.format(name="cart", radius=310, belly=140, tray=90))
    (folder / "van.toml").write_text(CAR.format(name="van", radius=330, belly=150, tray=130))
    return folder


def run(folder: Path, more: str = "", **changed: object) -> Report:
    path = folder / "job.toml"
    path.write_text(JOB.format(**{**AS_IT_IS, **changed}) + more)
    return run_job(path).report


@pytest.fixture(scope="module")
def asked(yard: Path) -> Report:
    return run(yard)


def row(report: Report, kind: str) -> Option:
    return next(o for o in report.options if o.kind == kind)


def swept(report: Report) -> float:
    assert report.before.worst is not None
    return report.before.worst.gap


def test_rows_that_keep_the_window_are_the_same_to_the_last_digit(yard: Path, asked: Report) -> None:
    assert row(asked, "as it is").swept == pytest.approx(swept(asked), abs=1e-9)
    light = run(yard, load='["as measured"]')
    assert row(asked, "less load").swept == pytest.approx(swept(light), abs=1e-9)
    pumped = run(yard, car="pumped.toml")
    assert row(asked, "more pressure").swept == pytest.approx(swept(pumped), abs=1e-9)
    assert asked.plan is not None and asked.plan.after.worst is not None
    assert row(asked, "cut").swept == pytest.approx(asked.plan.after.worst.gap, abs=1e-9)


def test_rows_that_move_the_window_are_the_same_within_what_the_raster_costs(
    yard: Path, asked: Report
) -> None:
    """Another window puts other nodes over the same points: heights differ by some tenths of a millimetre."""
    exact = run(yard, wander=0, heading=0)
    assert row(asked, "keep to the line").swept == pytest.approx(swept(exact), abs=1e-3)
    other = row(asked, "another line")
    assert other.line is not None and other.clearance > row(asked, "as it is").clearance + 0.003
    ends = [list(asked.plan_point(p)) for p in other.line]
    assert other.swept == pytest.approx(swept(run(yard, line=json.dumps(ends))), abs=1e-3)
    # both figures are said: on the line, and within the wander
    alone = swept(run(yard, line=json.dumps(ends), wander=0, heading=0))
    assert other.on_line - (other.clearance - other.swept) == pytest.approx(alone, abs=1e-3)
    assert "on that line" in other.needs and "within the wander" in other.needs


def test_the_first_row_has_the_figures_of_the_verdict(asked: Report) -> None:
    first = row(asked, "as it is")
    assert asked.today is not None and asked.in_use is not None
    assert (
        first.clearance == pytest.approx(asked.today.least_clearance)
        and first.chance == asked.today.chance_of_contact
    )
    assert first.in_use == pytest.approx(asked.in_use.least_clearance)
    assert first.in_use_chance == asked.in_use.chance_of_contact


def test_result_and_summary_tell_the_same(asked: Report) -> None:
    document = json.loads(result_text(result_document(asked)))
    assert [r["kind"] for r in document["options"]] == [o.kind for o in asked.options]
    for told, option in zip(document["options"], asked.options, strict=True):
        assert told["volume"] == pytest.approx(option.volume) and told["litres"] == pytest.approx(
            1000 * option.volume
        )
        assert told["reaches"] == option.works and told["depth"] == pytest.approx(option.depth)
        assert told["reaches_in_use"] == option.works_in_use and told["answer"] == option.answer
    marks = ("works", "slowly", "no")
    rows = [line for line in option_lines(asked)[1:] if line[2:8].strip() in marks]
    assert len(rows) == len(asked.options)
    assert all(o.name in text for o, text in zip(asked.options, rows, strict=True))
    said = [text[2:8].strip() for text in rows]
    assert said == [("works" if o.works_in_use else "slowly") if o.works else "no" for o in asked.options]
    assert [o.works for o in asked.options] == sorted((o.works for o in asked.options), reverse=True)
    assert vehicle_lines(asked) == [] and document["vehicles"] == []


OTHER = '[[other_vehicle]]\nfile = "{}"\n'


def test_several_vehicles_are_told_apart_and_one_cut_clears_all(yard: Path, asked: Report) -> None:
    both = run(yard, OTHER.format("van.toml"))
    names = [v.name for v in both.vehicles]
    assert names == ["car", "van"] and both.vehicle.name == "car"  # the one with least room first
    assert both.plan is not None and both.plan.feasible and all(v.enough for v in both.vehicles)
    # the van has room to spare: the car's answer and the cut stay what they were, but for the larger raster
    assert swept(both) == pytest.approx(swept(asked), abs=1e-3)
    assert (
        both.vehicles[1].alone == 0.0
        and both.vehicles[1].volume == 0.0
        and both.vehicles[1].today.verdict == "clears"
    )
    # of the cut before a board's flat facets: those are nobody's
    assert both.plan.guided is not None
    assert both.vehicles[0].volume == pytest.approx(both.plan.guided.volume, rel=0.02)
    document = json.loads(result_text(result_document(both)))
    assert [v["name"] for v in document["vehicles"]] == names
    whole = both.vehicles[0].volume / both.plan.volume  # what the facets take beyond is no vehicle's
    assert document["vehicles"][0]["share"] == pytest.approx(whole, rel=0.01) and whole > 0.9
    files = [r["file"] for r in document["inputs"] if r["role"] == "vehicle"]
    assert files == ["car.toml", "van.toml"]
    assert "van" in vehicle_lines(both)[2] and "needs no cut" in vehicle_lines(both)[2]


def test_the_lower_vehicle_speaks_wherever_it_is_named(yard: Path) -> None:
    both = run(yard, OTHER.format("cart.toml") + 'load = "laden"\n')
    assert both.vehicle.name == "cart" and [v.name for v in both.vehicles] == ["cart", "car"]
    assert both.vehicles[0].alone > both.vehicles[1].alone > 0


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (OTHER.format("car.toml"), 'two vehicles are named "car"'),
        (OTHER.format("lorry.toml"), "lorry.toml"),
        (OTHER.format("van.toml") + 'load = "full"\n', "full"),
    ],
)
def test_a_second_vehicle_that_cannot_be_is_one_line(yard: Path, more: str, says: str) -> None:
    with pytest.raises(CrestcutError, match=says) as caught:
        run(yard, more)
    assert "\n" not in str(caught.value) and caught.value.mend


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ('"drive.csv"', "the file of the line is not there"),
        ("[[0.5, 0.0], [3.5, 0.2], [3.7, 1.9]]", "turns no tighter than"),
        ("[[0.5, 0.0], [9.5, 0.0]]", "no measured ground under the front"),
    ],
)
def test_a_line_that_cannot_be_driven_is_one_line_and_names_the_vehicle(
    yard: Path, line: str, says: str
) -> None:
    with pytest.raises(CrestcutError, match=says) as caught:
        run(yard, OTHER.format("van.toml"), line=line)
    assert "\n" not in str(caught.value) and caught.value.mend
    assert line.startswith('"') or "car: " in str(caught.value)


def test_a_line_from_a_file_is_the_line_of_its_points(yard: Path, asked: Report) -> None:
    (yard / "drive.csv").write_text("x,y\n0.5,0.0\n6.5,0.0\n")
    told = run(yard, line='"drive.csv"')
    assert swept(told) == swept(asked)
    rows = {r["role"]: r for r in result_document(told)["inputs"]}  # type: ignore[attr-defined]
    assert rows["line"]["file"] == "drive.csv" and len(rows["line"]["sha256"]) == 64
