"""pick.html says "mend" exactly where the program would refuse the job or the vehicle it saves."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Annotated, Any, Literal

import pytest
from pydantic import Field

from browser.courtyard import courtyard, draw_line
from crestcut.base.errors import CrestcutError
from crestcut.cut.slab_limits import deepest_allowed
from crestcut.job import schema
from crestcut.job.fields import Between
from crestcut.job.load import load_job
from crestcut.report.pages.pick import write_pick
from crestcut.vehicle.load import load_state, load_vehicle
from crestcut.vehicle.tracks import refuse_parts_over_tracks

TAPE = {"name": "our car", "wheelbase": "2.62 m", "over": "1685 mm", "tyre": "195 mm", "radius": "296 mm",
        "belly": "140 mm"}  # fmt: skip
# (what is set in the job, what is typed of the vehicle or None for the hatchback)
CASES: list[tuple[dict[str, Any], dict[str, str] | None]] = [
    ({}, None),
    ({}, {}),
    ({"clearance.want": "20 mm"}, None),
    ({"clearance.want": "3/4 in"}, {}),
    ({"clearance.want": "-5 mm"}, None),
    ({"clearance.want": "0.7 m"}, None),
    ({"clearance.want": "12"}, None),
    ({"clearance.want": "1 5/4 in"}, None),
    ({"clearance.want_ends": "40 mm"}, None),
    ({"clearance.want_ends": "0.3 m"}, None),  # more than the bumper has over a wheel track
    ({"clearance.confidence": 0.5}, None),
    ({"clearance.confidence": 0.4}, None),
    ({"clearance.confidence": 0.99995}, None),
    ({"cut.deepest": "20 mm"}, None),
    ({"cut.deepest": "0 mm"}, None),
    ({"cut.drain": "1:50"}, None),
    ({"cut.deepest": "30 mm", "slab.thickness": "110 mm"}, None),
    ({"cut.deepest": "20 mm", "slab.thickness": "110 mm"}, None),
    ({"slab.thickness": "10 mm"}, None),
    ({"slab.thickness": "104 mm", "slab.steel_depth": "104 mm"}, None),
    ({"slab.steel_depth": "0.4 m"}, None),
    ({"slab.post_tensioned": "no", "slab.post_tensioned_from": "drawing"}, None),
    ({"slab.kind": "asphalt or paving"}, None),
    ({"slab.kind": "screed or tiles", "slab.suspended": True, "slab.heating": False}, None),
    ({"slab.heating": "yes"}, None),
    ({"slab.heating": True}, None),
    ({"slab.conduit": "located", "slab.conduit_from": "locating service"}, None),
    ({"slab.conduit": "no", "slab.conduit_from": "the owner"}, None),
    ({"slab.thickness_from": "a drill"}, None),
    ({"slab.post_tensioned": "unknown", "slab.kind_note": "over a garage"}, None),
    ({"site.permit": "yes"}, None),
    ({"site.permit": "granted", "site.permit_number": "A 2024/117-b"}, None),
    ({"site.permit": "granted", "site.permit_number": "no permit yet"}, None),
    ({"travel.wander": "0 mm", "travel.heading": 0}, None),
    ({"travel.wander": "2.5 m"}, None),
    ({"travel.heading": 31}, None),
    ({"travel.ways": []}, None),
    ({"site.country": "USA"}, None),
    ({"site.country": "de", "site.place": "indoors"}, None),
    ({"scan.files": []}, None),
    ({"scan.scanner": "phone", "scan.unit": "ft", "scan.up": "-y"}, None),
    ({"vehicle.load": ["as measured", "four people"], "clearance.want_ends": "100 mm"}, None),
    ({"vehicle.load": ["as measured", "four people"], "clearance.want_ends": "150 mm"}, None),
    ({}, {"wheelbase": "26 mm"}),
    ({}, {"wheelbase": "8.8 m"}),
    ({}, {"wheelbase": "500 mm"}),  # the wheels are larger
    ({}, {"tyre": "900 mm"}),
    ({}, {"radius": "29.6 mm"}),
    ({}, {"belly": "0.9 m"}),
    ({}, {"width": "1.2 m"}),
    ({}, {"width": "4 m"}),
    ({}, {"width": "1.8 m", "front_overhang": "820 mm", "nose": "170 mm"}),
    ({}, {"front_overhang": "820 mm", "nose": "20 mm"}),
    ({"clearance.want_ends": "10 mm"}, {"front_overhang": "820 mm", "nose": "20 mm"}),
    ({}, {"rear_overhang": "820 mm", "tail": "150 mm", "turning": "5.2 m"}),
    ({}, {"rear_overhang": "9 m", "tail": "150 mm"}),
    ({}, {"turning": "31 m"}),
    ({}, {"wheelbase": "1685 mm", "over": "2.62 m"}),  # swapped
    ({}, {"radius": "592 mm"}),  # the tyre's diameter
    ({}, {"radius": "130 mm"}),  # hubs below the belly
    ({}, {"tyre": "360 mm"}),  # doubtful only
    ({}, {"turning": "2.5 m"}),
    ({}, {"wheelbase": "1.55 m"}),  # doubtful only
    ({}, {"wheelbase": "2620"}),
    ({"cut.deepest": "13"}, None),
]  # fmt: skip
RUN = """([cases, tape]) => {
  const { model } = crestcut, base = JSON.stringify(model.doc), own = model.choice;
  return cases.map(([sets, typed]) => {
    model.doc = JSON.parse(base); model.choice = typed ? "typed" : own; model.typed = { ...tape, ...typed };
    for (const [path, value] of Object.entries(sets)) model.set(path.split("."), value);
    model.changed();
    const stops = [...document.querySelectorAll("#mistakes .stop")].map((li) => li.textContent);
    return [stops, model.jobText(), model.vehicleFile, model.vehicleText()]; }); }"""


def refusal(folder: Path, job_text: str, vehicle: str, vehicle_text: str) -> str:
    """What the program says of the two files; empty where it takes them."""
    (folder / "job.toml").write_text(job_text, encoding="utf-8")
    (folder / vehicle).write_text(vehicle_text, encoding="utf-8")
    try:
        job = load_job(folder / "job.toml")
        car = load_vehicle(job.vehicle.file)
        loads = [load_state(car, name) for name in job.vehicle.loads]
        refuse_parts_over_tracks(car, job.wanted.want, job.wanted.want_ends, loads)
        deepest_allowed(job.cut, job.slab)
    except CrestcutError as error:
        return str(error)
    return ""


def test_mend_is_said_exactly_where_the_program_refuses(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "laptop")
    draw_line(page, touch=False)
    refused = 0
    for case, (stops, *files) in zip(CASES, page.evaluate(RUN, [CASES, TAPE]), strict=True):
        said = refusal(tmp_path, *files)
        refused += bool(said)
        assert bool(stops) == bool(said), (json.dumps(case), stops, said)
    assert refused >= 20 and len(CASES) - refused >= 15


def test_the_page_and_the_program_doubt_the_same(pick: Path, open_page: Any, tmp_path: Path) -> None:
    """Ranges and relations come from one table; what is only doubtful is said, and saved all the same."""
    page = open_page(pick, "laptop")
    draw_line(page, touch=False)
    care = RUN.replace("#mistakes .stop", "#mistakes .care")
    cases = [({}, {}), ({}, {"tyre": "360 mm"}), ({}, {"wheelbase": "1.55 m"}),
             ({}, {"rear_overhang": "2.5 m"})]  # fmt: skip
    for (_, typed), (doubts, _, name, text) in zip(cases, page.evaluate(care, [cases, TAPE]), strict=True):
        (tmp_path / name).write_text(text, encoding="utf-8")
        said = load_vehicle(tmp_path / name).doubts
        heads = [re.sub(r"^\w+: ", "", s)[:12].lower() for s in said]
        found = [d[:12].lower() for d in doubts if d[:12].lower() in heads]
        assert len(found) == len(said) and bool(said) == bool(typed), (typed, doubts, said)
    assert "It can be saved, but mind" in page.locator("#mistakes h2").inner_text()


def test_a_line_from_a_drawing_stays_until_one_is_drawn(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "laptop")
    text = (
        '[scan]\nfiles = ["apron.laz"]\n[vehicle]\nfile = "kiln_trolley.toml"\n'
        '[travel]\nline = "drive.dxf"\nlayer = "way"\n[[other_vehicle]]\nfile = "van.toml"\n'
    )
    (tmp_path / "drawn.toml").write_text(text)
    page.locator("#open-job").set_input_files(tmp_path / "drawn.toml")
    page.wait_for_timeout(300)
    assert "drive.dxf" in page.locator("#line-said").inner_text()
    assert page.locator("#mistakes .stop").count() == 0
    kept = page.evaluate("crestcut.model.doc")
    assert kept["travel"]["line"] == "drive.dxf" and kept["other_vehicle"] == [{"file": "van.toml"}]
    draw_line(page, touch=False)
    drawn = page.evaluate("crestcut.model.doc.travel")
    assert len(drawn["line"]) == 2 and "layer" not in drawn


class _Tight(schema.ClearanceTable):
    """The gap of another house: asked for as 9 mm where nothing is said, never more than 20 mm."""

    want: Annotated[float, Between(0.0, 0.020, "below zero", "too much")] = 0.009


class _Roofed(schema.SiteTable):
    place: Literal["outdoors", "indoors", "under a roof"] | None = None


class _OtherFile(schema.JobFile):
    clearance: _Tight = Field(default_factory=_Tight)
    site: _Roofed = Field(default_factory=_Roofed)


def test_the_page_follows_the_schema(open_page: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A bound, a default and a choice that are changed there alone are the page's too."""
    monkeypatch.setattr(schema, "JobFile", _OtherFile)
    page = open_page(write_pick(courtyard(), None, tmp_path), "laptop")
    draw_line(page, touch=False)
    want = page.locator("#f-clearance-want")
    assert want.input_value() == "9.0 mm" and want.get_attribute("placeholder") == "9 mm"
    said = []
    for gap in ("20 mm", "20.1 mm"):
        want.fill(gap)
        said.append([text for text in page.locator("#mistakes .stop").all_inner_texts() if "20.1 mm" in text])
    assert said == [[], ["20.1 mm cannot be right: between 0.0 mm and 20.0 mm"]]
    assert "under a roof" in page.locator("#f-site-place option").all_text_contents()
