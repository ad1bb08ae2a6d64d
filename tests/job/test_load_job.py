"""Job files: all of the written form is read, and every fault is one line with its place and its mend."""

from __future__ import annotations

import hashlib
import json
import math
from pathlib import Path

import pytest

from crestcut.base.errors import CrestcutError
from crestcut.job.convert import resolved
from crestcut.job.floor_schema import load_floor_job
from crestcut.job.load import load_job
from crestcut.job.records import MarkName, PlanPoint, PlotWish, TapeTies
from one_line import refusal

ROOT = Path(__file__).resolve().parents[2]
SMALLEST = """
[scan]
files = ["slab.laz"]
[vehicle]
file = "car.toml"
[travel]
line = [[0.5, 2.0], [14.5, 2.0]]
"""
WHOLE = """
title = "Courtyard apron"
[site]
place = "outdoors"
ground = "private"
country = "US"
[scan]
files = ["../../scans/apron.laz", "again.laz"]
unit = "m"
up = "z"
scanner = "phone"
[vehicle]
file = "../vehicles/car.toml"
load = ["as measured", "laden"]
[travel]
line = [[0.5, 2.0], "B"]
track = "left"
ways = ["forward", "turned"]
wander = "150 mm"
heading = 2
[clearance]
want = "1/2 in"
want_ends = "1 1/4 in"
confidence = 0.9
[clearance.in_use]
braking = "5 mm"
[cut]
deepest = "13 mm"
feather = "1:4"
[slab]
kind = "plain concrete"
thickness = "100 mm"
thickness_from = "drilled"
steel_depth = "60 mm"
steel_from = "covermeter"
keep_cover = "25 mm"
post_tensioned = false
post_tensioned_from = "drawing"
heating = "unknown"
[surface]
cell = "20 mm"
[[mark]]
name = "A"
at = [2.10, 0.30]
[[mark]]
name = "B"
at = [9, 2]
[[keep]]
kind = "public walk"
area = [[0, 0], [1.2, 0], { A = "2.31 m", B = "5 1/2 ft", side = "left" }]
deepest = "0 mm"
[[string]]
a = [3.00, 2.00]
b = "B"
blocks = "100 mm"
down = "61 mm"
[[string]]
a = [3.00, 2.00]
b = [5.60, 2.00]
at = "1.2 m"
blocks = "100 mm"
down = "61 mm"
within = "2 mm"
placed = "10 mm"
[[level]]
points = [[[3.0, 2.0], "1.204 m"], ["A", "1.377 m"]]
within = "3 mm"
[[witness]]
part = "battery tray"
front_axle = [6.2, 2.0]
load = "laden"
gap = "4 mm"
"""


def write(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "jobs" / "apron.toml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def test_the_smallest_job_takes_the_safe_defaults(tmp_path: Path) -> None:
    path = write(tmp_path, SMALLEST)
    job = load_job(path)
    assert job.title == "Apron" and job.scan.files == (path.parent / "slab.laz",)
    assert job.travel.wander == 0.2 and job.travel.heading == pytest.approx(math.radians(3))
    assert (job.wanted.want, job.wanted.want_ends, job.wanted.confidence) == (0.0127, 0.03175, 0.95)
    assert job.cut.deepest is None and job.cut.feather == 0.25
    assert job.slab.post_tensioned is None and job.slab.thickness is None and job.site.place is None
    assert job.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()


def test_a_line_may_be_a_file_beside_the_job_and_further_vehicles_too(tmp_path: Path) -> None:
    text = WHOLE.replace('line = [[0.5, 2.0], "B"]', 'line = "../plans/drive.dxf"\nlayer = "middle"')
    van = '[[other_vehicle]]\nfile = "../vehicles/van.toml"\n'
    path = write(tmp_path, text + van + '[[other_vehicle]]\nfile = "cart.toml"\nload = "full"\n')
    job = load_job(path)
    assert job.travel.line == () and job.travel.layer == "middle"
    assert job.travel.line_file == tmp_path / "plans" / "drive.dxf"
    assert [v.file for v in job.other_vehicles] == [tmp_path / "vehicles/van.toml", path.parent / "cart.toml"]
    assert [v.loads for v in job.other_vehicles] == [("as measured",), ("full",)]
    assert resolved(job)["travel"]["line_file"] == "drive.dxf"


def test_every_key_arrives_in_si(tmp_path: Path) -> None:
    job = load_job(write(tmp_path, WHOLE))
    assert job.scan.files == (tmp_path.parent / "scans/apron.laz", tmp_path / "jobs" / "again.laz")
    assert job.vehicle.file == tmp_path / "vehicles/car.toml" and job.vehicle.loads == (
        "as measured",
        "laden",
    )
    assert job.travel.line == (PlanPoint(0.5, 2.0), MarkName("B")) and job.travel.track == "left"
    assert job.travel.wander == 0.15 and job.travel.heading == pytest.approx(math.radians(2))
    assert job.wanted.in_use == (("braking", 0.005),) and job.cut.deepest == 0.013
    assert job.slab.post_tensioned == "no" and job.slab.heating == "unknown" and job.slab.keep_cover == 0.025
    assert job.cell == 0.02 and job.marks[1].at == PlanPoint(9.0, 2.0)
    tie = job.keeps[0].area[2]
    assert isinstance(tie, TapeTies) and (tie.first, tie.second, tie.side) == ("A", "B", "left")
    assert (tie.first_distance, tie.second_distance) == pytest.approx((2.31, 1.6764))
    least, placed = job.strings
    assert least.at is None and (least.within, least.placed) == (0.001, 0.02)
    assert placed.at == 1.2 and (placed.within, placed.placed) == (0.002, 0.01)
    assert job.levels[0].points == ((PlanPoint(3.0, 2.0), 1.204), (MarkName("A"), 1.377))
    assert job.witnesses[0].gap == 0.004 and job.witnesses[0].touched is None


def test_the_resolved_job_is_plain_data(tmp_path: Path) -> None:
    data = json.loads(json.dumps(resolved(load_job(write(tmp_path, WHOLE)))))
    assert data["travel"]["wander"] == 0.15 and data["scan"]["files"] == ["apron.laz", "again.laz"]
    assert str(tmp_path) not in json.dumps(data)


@pytest.mark.parametrize("job", sorted((ROOT / "configs/jobs").glob("*.toml")), ids=lambda p: p.stem)
def test_the_example_jobs_load_and_name_files_that_are_there(job: Path) -> None:
    if job.stem.endswith("_floor"):
        assert all(path.is_file() for path in load_floor_job(job).base.scan.files)
        return
    read = load_job(job)
    assert all(path.is_file() for path in (*read.scan.files, read.vehicle.file))


def test_what_drawings_are_asked_to_be(tmp_path: Path) -> None:
    asked = '[plot]\npaper = "arch d"\nscale = "1/2 in = 1 ft"\nclient = "Kiln Yard Trust"\ngrid = "2 m"\n'
    job = load_job(write(tmp_path, WHOLE + asked))
    assert job.plot == PlotWish("Arch D", 24, client="Kiln Yard Trust", grid=2.0)
    assert load_job(write(tmp_path, WHOLE)).plot == PlotWish()


FAULTS = [
    ("[site]", '[plot]\npaper = "B5"\n[site]', 'plot.paper: paper "B5" is not known; write one of A4, A3'),
    ("[site]", '[plot]\nscale = "1:30"\n[site]', "plot.scale: "),
    ("[site]", "[plot]\ngrid = 0.0\n[site]", "plot.grid: 0.0 is too close to draw"),
    ("[site]", '[plot]\npaperr = "A3"\n[site]', 'plot.paperr: unknown key; did you mean "paper"?'),
    ('line = [[0.5, 2.0], "B"]', 'line = "drive.csv"\nlayer = "drive"', "travel: layer is a drawing's"),
    ('line = [[0.5, 2.0], "B"]', 'line = "drive.dxf"\nlyer = "x"', 'lyer: unknown key; did you mean "layer"'),
    ('line = [[0.5, 2.0], "B"]', "line = 5", "travel.line: a list expected"),
    ('line = [[0.5, 2.0], "B"]', 'line = ""', "travel.line: words expected"),
    ("[travel]", '[[other_vehicel]]\nfile = "van.toml"\n[travel]', 'did you mean "other_vehicle"?'),
    ("[travel]", '[[other_vehicle]]\nfil = "van.toml"\n[travel]', "other_vehicle 1.fil: unknown key"),
    ("[travel]", '[[other_vehicle]]\nload = "laden"\n[travel]', "other_vehicle 1.file: missing"),
    ("[travel]", '[other_vehicle]\nfile = "van.toml"\n[travel]', "other_vehicle: a list expected"),
    ('wander = "150 mm"', 'wandr = "150 mm"', 'travel.wandr: unknown key; did you mean "wander"?'),
    ("[site]", "[sit]", 'sit: unknown key; did you mean "site"?'),
    ('name = "A"', 'nam = "A"', 'mark 1.nam: unknown key (and 1 more: mark 1.name); did you mean "name"?'),
    ('"150 mm"', '"150"', 'travel.wander: "150" has no unit'),
    ('"150 mm"', "-0.2", "travel.wander: -0.2 is below zero"),
    ('"150 mm"', "150", "travel.wander: 150 is wider than any drive"),
    ('"61 mm"', '"61,5 mm"', 'string 1.down: "61,5 mm" has a comma'),
    ('deepest = "13 mm"', 'deepest = "0 mm"', 'cut.deepest: "0 mm" is not above zero'),
    ('deepest = "13 mm"', "deepest = 13", "cut.deepest: 13 is deeper than a slab is thick"),
    ('"1:4"', '"0:4"', 'cut.feather: "0:4" is not understood as a slope'),
    ('"1:4"', "4", "cut.feather: 4 is no feather"),
    ("heading = 2", 'heading = "2 deg"', "travel.heading: "),
    ("heading = 2", "heading = 45", "travel.heading: 45 is outside 0 to 30"),
    ("heading = 2", "heading = -1", "travel.heading: -1 is outside 0 to 30"),
    ('track = "left"', 'track = "lef"', 'travel.track: "lef" is not known; write one of middle, left, right'),
    ('"forward", "turned"', '"forward", "back"', 'travel.ways 2: "back" is not known'),
    ('"forward", "turned"', '"forward", "forward"', "travel.ways: the same way is written twice"),
    ('line = [[0.5, 2.0], "B"]', "line = [[0.5, 2.0]]", "travel.line: 2 or more expected, 1 found"),
    ('line = [[0.5, 2.0], "B"]', "line = [[0.5, nan], [1, 2]]", "travel.line 1: [0.5, nan] is no point"),
    ('line = [[0.5, 2.0], "B"]', 'line = [["0.5 m", 2.0], [1, 2]]', "travel.line 1: "),
    (
        'line = [[0.5, 2.0], "B"]',
        'line = [[0.5, 2.0], "b"]',
        'travel.line: no mark is named "b"; did you mean "B"?',
    ),
    ("confidence = 0.9", "confidence = 95", "clearance.confidence: 95 is outside 0.5 to 0.9999"),
    ('cell = "20 mm"', 'cell = "20 m"', 'surface.cell: "20 m" is coarser than a crest'),
    ('thickness = "100 mm"', "thickness = 100", "slab.thickness: 100 is thicker than any slab"),
    (
        'steel_depth = "60 mm"',
        'steel_depth = "160 mm"',
        "slab: steel 160 mm down lies below a slab 100 mm thick",
    ),
    ('thickness_from = "drilled"', 'thickness_from = "dug"', 'slab.thickness_from: "dug" is not known'),
    ('name = "B"', 'name = "A"', 'mark: mark "A" is put twice'),
    ('side = "left"', 'side = "leff"', 'keep 1.area 3: side "leff" is not known'),
    ('B = "5 1/2 ft"', 'A2 = "5 1/2 ft"', 'keep 1.area: no mark is named "A2"; did you mean "A"?'),
    ("[1.2, 0], {", "{", "keep 1.area: 3 or more expected, 2 found"),
    ('gap = "4 mm"', "", "witness 1: one of gap, touched and cleared expected"),
    ('gap = "4 mm"', 'gap = "4 mm"\ntouched = true', "witness 1: one of gap, touched and cleared expected"),
    ('"1.204 m"], [', '"1.204 m", 3], [', "level 1.points: a list of pairs"),
    ('at = "1.2 m"', 'at = "lest"', "string 2.at: "),
    ('country = "US"', 'country = "Utopia"', 'site.country: "Utopia" is no country'),
    ('unit = "m"', 'unit = "yd"', 'scan.unit: unit "yd" is not known'),
    ('up = "z"', 'up = "w"', 'scan.up: "w" is not known'),
    (
        'files = ["../../scans/apron.laz", "again.laz"]',
        "",
        "scan: the scan's file is named not at all or twice",
    ),
    ('files = ["../../scans/apron.laz", "again.laz"]', "files = []", "scan.files: 1 or more expected"),
    ("[travel]\n", "[travl]\n", 'travl: unknown key (and 1 more: travel); did you mean "travel"?'),
    ("[surface]", "[surface", "is not TOML"),
    ("title =", "title = 3 #", "title: words expected"),
    ("post_tensioned = false", 'post_tensioned = "none"', 'slab.post_tensioned: "none" is not known'),
]


@pytest.mark.parametrize(("written", "instead", "says"), FAULTS)
def test_a_fault_is_one_line_with_its_place(tmp_path: Path, written: str, instead: str, says: str) -> None:
    assert written in WHOLE
    fault = refusal(load_job, write(tmp_path, WHOLE.replace(written, instead, 1)))
    assert says in str(fault) and fault.mend


@pytest.mark.parametrize("table", ["scan", "vehicle", "travel"])
def test_a_missing_table_is_named(tmp_path: Path, table: str) -> None:
    lines = SMALLEST.strip().splitlines()
    at = lines.index(f"[{table}]")
    with pytest.raises(CrestcutError, match=f"{table}: missing"):
        load_job(write(tmp_path, "\n".join(lines[:at] + lines[at + 2 :])))


def test_files_that_are_no_job(tmp_path: Path) -> None:
    for name, content, says in [
        ("empty.toml", b"", "is empty"),
        ("picture.toml", b"\x89PNG\r\n\x1a\n\xff\xfe", "is not text"),
        ("list.toml", b"[1, 2", "is not TOML"),
    ]:
        (tmp_path / name).write_bytes(content)
        with pytest.raises(CrestcutError, match=says):
            load_job(tmp_path / name)
    with pytest.raises(CrestcutError, match="no such job file"):
        load_job(tmp_path / "none.toml")
    with pytest.raises(CrestcutError, match="is a folder"):
        load_job(tmp_path)
