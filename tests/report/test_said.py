"""Every file says inside itself what may be done with it, of which job, of which date, by which version.

Each is read back by another library than the one that wrote it, or by its standard's own rules: PNG by
Pillow and by its chunks, GLB by trimesh and its JSON chunk (glTF 2.0, 4.4), PLY by its header, DXF by its
text, CSV by numpy, HTML by the standard library's parser, PDF by its information object.
"""

from __future__ import annotations

import dataclasses
import datetime
import html.parser
import json
import re
import struct
from pathlib import Path

import ezdxf
import numpy as np
import pytest
import trimesh
from deliver_scene import make_report, nothing_to_cut
from PIL import Image
from test_sheets import job_without, sheet_for

from crestcut import __version__
from crestcut.base.errors import CrestcutError
from crestcut.job.floor_schema import load_floor_job
from crestcut.job.load import load_job
from crestcut.report.exchange.cad import DEPTH_LAYERS, write_cad
from crestcut.report.exchange.mesh import write_depth_glb, write_depth_ply
from crestcut.report.pages.report import write_report
from crestcut.report.pictures.plan import draw_plan
from crestcut.report.pictures.profile import draw_profile
from crestcut.report.sheets.all_sheets import write_sheets
from crestcut.report.view.result import result_document
from crestcut.study.identity import NOTHING
from crestcut.study.report import Report
from crestcut.work.order import make_site
from crestcut.work.records import Worksheet

TITLE, DAY = 'Hof "Süd", apron\nat the kiln', "2026-11-29"
ON_ONE_LINE = 'Hof "Süd", apron at the kiln'


def told(report: Report, missing: set[str]) -> tuple[Report, Worksheet]:
    """Report and worksheet of one job, whose release is decided as ``run`` does."""
    job = dataclasses.replace(job_without(report, missing), title=TITLE, date=DAY)
    sheet = sheet_for(report, job)
    release = sheet.release
    return dataclasses.replace(
        report, job=job, release=release.state, release_reasons=release.reasons, version=__version__
    ), sheet


@pytest.fixture(scope="module", params=["ok", "not for cutting", NOTHING])
def made(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> tuple[str, Report, Worksheet, Path]:
    folder = tmp_path_factory.mktemp("said")
    base = nothing_to_cut() if request.param == NOTHING else make_report(hole=False)
    report, sheet = told(base, set() if request.param == "ok" else {"heating"})
    draw_plan(report, folder / "plan.png")
    draw_profile(report, folder / "profile.png")
    write_depth_ply(report, folder / "depth_to_remove.ply")
    write_depth_glb(report, folder / "depth_to_remove.glb")
    site = make_site(report.surface, report.line, report.plan)
    write_sheets(sheet, site, report.identity, folder)
    write_cad(report, sheet, folder / "set_out.dxf")
    write_report(report, folder, sheet)
    return request.param, report, sheet, folder


Made = tuple[str, Report, Worksheet, Path]


@pytest.mark.parametrize("name", ["plan.png", "profile.png"])
def test_pictures(made: Made, name: str) -> None:
    state, _, _, folder = made
    with Image.open(folder / name) as picture:
        text = dict(picture.text)  # type: ignore[attr-defined]
    assert text == {
        "Title": ON_ONE_LINE, "Release": state, "Dated": DAY, "Software": f"crestcut {__version__}"
    }  # fmt: skip
    assert b"tEXtRelease\0" + state.encode() in (folder / name).read_bytes()


def test_ply(made: Made) -> None:
    state, _, _, folder = made
    head = (folder / "depth_to_remove.ply").read_bytes().split(b"end_header\n")[0].decode("ascii")
    for line in (f"release: {state}", f"dated: {DAY}", f"made by: crestcut {__version__}", 'job: Hof "S?d",'):
        assert f"comment {line}" in head
    mesh = trimesh.load(folder / "depth_to_remove.ply", process=False)
    assert len(mesh.vertices) > 1000


def test_glb(made: Made) -> None:
    state, _, _, folder = made
    raw = (folder / "depth_to_remove.glb").read_bytes()
    (size,) = struct.unpack_from("<I", raw, 12)
    tree = json.loads(raw[20 : 20 + size])
    record = {"job": ON_ONE_LINE, "release": state, "dated": DAY, "version": __version__}
    assert tree["asset"]["generator"] == f"crestcut {__version__}" and tree["asset"]["version"] == "2.0"
    assert tree["asset"]["extras"] == record
    scene = trimesh.load(folder / "depth_to_remove.glb", process=False)
    (node,) = scene.graph.nodes_geometry
    for word in (f"release: {state}", ON_ONE_LINE, f"dated: {DAY}", __version__):
        assert word in node
    (mesh,) = scene.geometry.values()
    assert record.items() <= mesh.metadata.items() and record.items() <= scene.metadata.items()


def test_tables(made: Made) -> None:
    state, _, sheet, folder = made
    tables = sorted(folder.glob("work_*.csv"))
    assert bool(tables) == (state == "ok")
    for path in tables:
        lines = path.read_text(encoding="utf-8").splitlines()
        assert lines[:4] == [
            f"# release: {state}", f"# job: {ON_ONE_LINE}", f"# dated: {DAY}",
            f"# made by: crestcut {__version__}",
        ]  # fmt: skip
    if tables:
        assert sheet.set_out is not None
        read = np.genfromtxt(
            folder / "work_dots.csv", delimiter=",", comments="#", skip_header=4, names=True,
            dtype=None, encoding="utf-8",
        )  # fmt: skip
        assert read["depth_mm"].tolist() == [round(d.depth * 1000, 1) for d in sheet.set_out.dots]


def test_documents(made: Made) -> None:
    _, report, sheet, folder = made
    result = result_document(report)
    assert (result["title"], result["dated"], result["version"]) == (TITLE, DAY, __version__)
    document = json.loads((folder / "worksheet.json").read_text())
    assert (document["title"], document["dated"], document["version"]) == (TITLE, DAY, __version__)
    # a clear slab's sheet may still say what is unanswered
    assert document["release"]["state"] == sheet.release.state == result["release"]["state"]  # type: ignore[index]


class Meta(html.parser.HTMLParser):
    found: dict[str, str | None]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        named = dict(attrs)
        if tag == "meta" and named.get("name"):
            self.found[str(named["name"])] = named.get("content")


def test_page(made: Made) -> None:
    state, _, _, folder = made
    text = (folder / "report.html").read_text(encoding="utf-8")
    meta = Meta()
    meta.found = {}
    meta.feed(text)
    wanted = {
        "generator": f"crestcut {__version__}", "release": state, "job": ON_ONE_LINE, "dated": DAY
    }  # fmt: skip
    assert wanted.items() <= meta.found.items()
    assert f"Job dated {DAY}." in text


def test_sheets(made: Made) -> None:
    state, _, _, folder = made
    raw = (folder / "work_sheets.pdf").read_bytes()
    assert f"/Subject (release: {state}; dated: {DAY})".encode() in raw
    assert f"/Creator (crestcut {__version__})".encode() in raw and b"CreationDate" not in raw
    title = re.search(rb"/Title \((.*?[^\\])\)", raw, re.S)
    assert title is not None and "Hof".encode("utf-16-be") in title[1]


# --- the drawing ----------------------------------------------------------------------------------


def drawing_of(folder: Path) -> ezdxf.document.Drawing:
    drawing = ezdxf.readfile(folder / "set_out.dxf")
    audit = drawing.audit()
    assert not audit.has_errors and not audit.has_fixes
    return drawing


def on(drawing: ezdxf.document.Drawing, layer: str) -> list:
    return [e for e in drawing.modelspace() if e.dxf.layer == layer]


def test_drawing(made: Made) -> None:
    state, _, _, folder = made
    drawing = drawing_of(folder)
    custom = dict(drawing.header.custom_vars.properties)
    assert (custom["release"], custom["dated"], custom["version"]) == (state, DAY, __version__)
    for layer in drawing.layers:
        if layer.dxf.name not in ("0", "Defpoints"):
            assert f"release: {state}" in layer.description and DAY in layer.description, layer.dxf.name
    for name in DEPTH_LAYERS:
        words = [e.dxf.text for e in on(drawing, name) if e.dxftype() == "TEXT"]
        if state == NOTHING:
            assert not on(drawing, name)
            continue
        for word in (f"release: {state}", f"dated: {DAY}", f"made by: crestcut {__version__}"):
            assert word in words, name
        assert ("NOT FOR CUTTING" in words) == (state != "ok")
    rings = [e for e in on(drawing, "DEPTH_CONTOURS") if e.dxftype() == "LWPOLYLINE"]
    assert bool(rings) == (state == "ok"), "no contour to set out from unless released"
    stamped = any(e.dxftype() == "TEXT" and e.dxf.text == "NOT FOR CUTTING" for e in drawing.modelspace())
    assert stamped == (state == "not for cutting")
    said = [e.dxf.text for e in on(drawing, "TEXT")]
    assert ("Nothing to cut." in said) == (state == NOTHING)
    assert f"Job dated {DAY}; crestcut {__version__}." in said


def test_the_drawing_opens_on_what_is_drawn(made: Made) -> None:
    from ezdxf import bbox

    drawing = drawing_of(made[3])
    low, high = (np.array(drawing.header[name][:2]) for name in ("$EXTMIN", "$EXTMAX"))
    shapes = [e for e in drawing.modelspace() if e.dxftype() != "TEXT"]
    around = bbox.extents(shapes, fast=True)
    size = high - low
    assert (low <= np.array(around.extmin)[:2] + 1e-6).all() and (
        np.array(around.extmax)[:2] - 1e-6 <= high
    ).all()
    assert (size < 3 * np.array(around.size)[:2]).all(), "and not on much else"
    (view,) = drawing.viewports.get("*Active")
    middle = np.array(view.dxf.center)[:2]
    assert (
        np.abs(middle - (low + high) / 2) < 1e-6
    ).all() and size.max() <= view.dxf.height < 1.3 * size.max()
    assert "Defpoints" not in (made[3] / "set_out.dxf").read_text(encoding="utf-8")


# --- the job's own date ---------------------------------------------------------------------------


JOB = (
    'title = "t"\n{}\n[scan]\nfile = "a.ply"\n[vehicle]\nfile = "v.toml"\n[travel]\nline = [[0, 0], [1, 0]]\n'
)
FLOOR = 'title = "t"\n{}\n[scan]\nfile = "a.ply"\n[floor]\nstraightedge = "2 m"\ngap = "3 mm"\n'


@pytest.mark.parametrize("written", ['date = "2026-11-29"', "date = 2026-11-29", 'date = " 2026-11-29 "'])
def test_a_date_is_a_toml_date_or_its_text(tmp_path: Path, written: str) -> None:
    path = tmp_path / "job.toml"
    path.write_text(JOB.format(written))
    assert load_job(path).date == DAY and load_job(path).date_words == f"dated {DAY}"
    path.write_text(FLOOR.format(written))
    assert load_floor_job(path).base.date == DAY


def test_without_one_it_is_not_dated_and_never_today(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_text(JOB.format(""))
    assert load_job(path).date is None and load_job(path).date_words == "not dated"
    write_depth_ply(make_report(), tmp_path / "a.ply")
    head = (tmp_path / "a.ply").read_bytes()[:1500]
    assert b"comment dated: not dated" in head
    assert datetime.date.today().isoformat().encode() not in head


@pytest.mark.parametrize(
    "written",
    [
        'date = "29.11.2026"', 'date = "2026-02-30"', "date = 20261129", "date = true",
        "date = 2026-11-29T10:00:00", 'date = ""',
    ],
)  # fmt: skip
def test_what_is_no_date_is_refused_in_one_line(tmp_path: Path, written: str) -> None:
    (tmp_path / "job.toml").write_text(JOB.format(written))
    with pytest.raises(
        CrestcutError, match=r"job\.toml: date: .*is no date; write year, month and day"
    ) as caught:
        load_job(tmp_path / "job.toml")
    assert "\n" not in str(caught.value)
