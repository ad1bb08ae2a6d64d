"""Every format read back at E 500,000 N 5,800,000 in metres and at a state plane's size in US survey feet:
within 0.05 mm where it holds doubles, within its own quantum elsewhere.

The measure is exact: places in own coordinates reckoned in fractions, (site + shift) / unit.
"""

from __future__ import annotations

import csv
import json
import struct
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from xml.etree import ElementTree

import ezdxf
import numpy as np
import pytest
import tifffile
from deliver_scene import make_report
from test_sheets import job_without, sheet_for

from crestcut.base.grid import FloatArray
from crestcut.report.exchange.cad import write_cad
from crestcut.report.exchange.landxml import NAMESPACE
from crestcut.report.exchange.mesh import PLY_VERTEX, depth_mesh, write_depth_glb, write_depth_ply
from crestcut.report.exchange.survey import write_survey
from crestcut.report.view.result import result_document
from crestcut.scan.placing.system import asked_system
from crestcut.study.report import Report

CLOSE = 5e-5  # m
FOOT = Fraction(1200, 3937)  # of the US survey
GRIDS = {
    # unit, system, where the site's origin lies (own units, whole hundreds of metres as on reading)
    "m": (Fraction(1), "EPSG:25832+7837", (500_000.0, 5_800_000.0, 100.0)),
    "us-ft": (FOOT, "EPSG:2263+6360", (300_300.0, 62_600.0, 100.0)),  # m: E 985,234 ft, N 205,380 ft
}


@pytest.fixture(scope="module", params=GRIDS)
def written(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Report, Path]:
    _, code, shift = GRIDS[request.param]
    report = make_report(request.param)
    frame = replace(report.scan.frame, shift=np.array(shift), system=asked_system(code)[0])
    report = replace(report, scan=replace(report.scan, frame=frame))
    folder = tmp_path_factory.mktemp("round")
    sheet = sheet_for(report, job_without(report, set()))
    write_survey(report, sheet, folder)
    write_cad(report, sheet, folder / "set_out.dxf")
    write_depth_ply(report, folder / "depth.ply")
    write_depth_glb(report, folder / "depth.glb")
    return report, folder


def exact(report: Report, site: FloatArray) -> list[list[Fraction]]:
    """Own coordinates of site places (n, 2 or 3), m."""
    unit, _, shift = GRIDS[report.scan.frame.unit]
    return [[(Fraction(float(v)) + Fraction(s)) / unit for v, s in zip(place, shift)] for place in site]  # noqa: B905


def off(report: Report, found: FloatArray, site: FloatArray) -> float:
    """m, the most that any coordinate read back is off."""
    unit = GRIDS[report.scan.frame.unit][0]
    pairs = zip(np.atleast_2d(found), exact(report, np.atleast_2d(site)), strict=True)
    return float(max(abs(Fraction(float(a)) - b) * unit for got, true in pairs for a, b in zip(got, true)))  # noqa: B905


def test_mesh(written: tuple[Report, Path]) -> None:
    report, folder = written
    raw = (folder / "depth.ply").read_bytes()
    body = raw[raw.index(b"end_header\n") + 11 :]
    mesh = depth_mesh(report)
    read = np.frombuffer(body[: len(mesh.site) * np.dtype(PLY_VERTEX).itemsize], PLY_VERTEX)
    some = slice(None, None, 997)
    got = np.column_stack([read[a] for a in "xyz"])
    assert off(report, got[some], mesh.site[some]) < CLOSE / 1000


def test_mesh_for_viewers_keeps_single_floats_about_its_origin(written: tuple[Report, Path]) -> None:
    """Metres; 2^-24 of a few metres, 0.3 micrometres, beside an origin that is a double."""
    report, folder = written
    raw = (folder / "depth.glb").read_bytes()
    tree = json.loads(raw[20 : 20 + struct.unpack("<I", raw[12:16])[0]])
    origin = tree["scenes"][0]["extras"]["origin"]
    mesh = depth_mesh(report)
    faces = np.unique(mesh.faces)
    middle = (mesh.site[faces].min(axis=0) + mesh.site[faces].max(axis=0)) / 2
    shift = GRIDS[report.scan.frame.unit][2]
    true = [Fraction(a) + Fraction(s) for a, s in zip(middle.tolist(), shift, strict=True)]
    assert max(abs(Fraction(a) - b) for a, b in zip(origin, true, strict=True)) < 1e-7


def test_rasters(written: tuple[Report, Path]) -> None:
    """Where a cell lies and what height it holds; 64-bit values."""
    report, folder = written
    with tifffile.TiffFile(folder / "existing.tif") as file:
        page = file.pages[0]
        values, tie, size = (
            page.asarray(),
            page.tags["ModelTiepointTag"].value,
            page.tags["ModelPixelScaleTag"].value,
        )
    j, i = (int(k[len(k) // 2]) for k in np.nonzero(values != -9999.0))
    unit, _, shift = GRIDS[report.scan.frame.unit]
    own = (
        Fraction(tie[3]) + (i + Fraction(1, 2)) * Fraction(size[0]),
        Fraction(tie[4]) - (j + Fraction(1, 2)) * Fraction(size[1]),
    )
    site = [float(c * unit - Fraction(s)) for c, s in zip(own, shift)]  # noqa: B905
    height = float(report.surface.height.sample(np.array([site]))[0])
    assert abs(Fraction(float(values[j, i])) * unit - Fraction(height) - Fraction(shift[2])) < CLOSE / 100


def test_surfaces(written: tuple[Report, Path]) -> None:
    """Six decimals: half a micrometre in metres."""
    report, folder = written
    root = ElementTree.parse(folder / "surfaces.xml").getroot()
    points = np.array([p.text.split() for p in root[-1][0].iter(f"{{{NAMESPACE}}}P")], dtype=float)[
        :, [1, 0, 2]
    ]  # type: ignore[union-attr]
    assert _nearest_node(report, points[::199]) < CLOSE / 10


def test_drawings(written: tuple[Report, Path]) -> None:
    report, folder = written
    heights = ezdxf.readfile(folder / "heights.dxf")
    (mesh,) = heights.modelspace().query('MESH[layer=="EXISTING_TIN"]')
    assert _nearest_node(report, np.array(mesh.vertices, dtype=float)[::199]) < CLOSE / 10
    named = {t.dxf.text: t for t in heights.modelspace().query('TEXT[layer=="POINTS"]')}
    points = np.array([tuple(p.dxf.location) for p in heights.modelspace().query('POINT[layer=="POINTS"]')])
    for mark in report.marks:
        assert mark.name in named
        assert min(off(report, p[:2], np.array(mark.xy)) for p in points) < CLOSE / 10
    lines = ezdxf.readfile(folder / "set_out.dxf").modelspace().query("LWPOLYLINE LINE")
    ends = np.array(
        [
            p
            for e in lines
            for p in ([e.dxf.start[:2], e.dxf.end[:2]] if e.dxftype() == "LINE" else e.get_points("xy"))
        ]
    )
    for end in report.line.xy[[0, -1]]:
        assert min(off(report, p, end) for p in ends[_near(report, ends, end)]) < CLOSE / 10


def test_tables(written: tuple[Report, Path]) -> None:
    """Four decimals of own units: 0.05 mm in metres, 0.015 mm in feet."""
    report, folder = written
    quantum = 0.5e-4 * float(GRIDS[report.scan.frame.unit][0]) + 1e-9
    with (folder / "points_north_east.csv").open(newline="") as file:
        rows = {r["point"]: r for r in csv.DictReader(file)}
    for mark in report.marks:
        row = rows[mark.name]
        place = np.array([*mark.xy, float(report.surface.height.sample(np.array([mark.xy]))[0])])
        got = np.array([float(row[k]) for k in ("east", "north", "existing")])
        assert off(report, got, place) <= quantum
    with (folder / "sections.csv").open(newline="") as file:
        for row in list(csv.DictReader(file))[::50]:
            got = np.array([[float(row["east"]), float(row["north"])]])
            site = report.scan.frame.plan_to_site(got)
            # printed to four decimals, and slopes of 8 % carry what the place is rounded by
            there = float(report.surface.height.sample(site)[0])
            height = (
                float(Fraction(row["existing"]) * GRIDS[report.scan.frame.unit][0])
                - report.scan.frame.shift[2]
            )
            assert height == pytest.approx(there, abs=1.3 * quantum)


def test_result(written: tuple[Report, Path]) -> None:
    """JSON holds doubles as they are."""
    report, _ = written
    travel = json.loads(json.dumps(result_document(report)["travel"], default=list))
    got = np.array(travel["line_points"])
    assert off(report, got, report.line.xy[[0, -1]]) < CLOSE / 1000


def _near(report: Report, own: FloatArray, site: FloatArray) -> FloatArray:
    return np.argsort(np.hypot(*(report.scan.frame.plan_to_site(own) - site).T))[:3]


def _nearest_node(report: Report, own: FloatArray) -> float:
    """m, the most that a corner is off the node of the grid that it is."""
    grid = report.surface.height
    place = grid.frame.to_grid(report.scan.frame.plan_to_site(own[:, :2])) / grid.frame.cell
    node = np.rint(place).astype(int)
    site = np.column_stack([grid.frame.to_site(node * grid.frame.cell), grid.values[node[:, 1], node[:, 0]]])
    return off(report, own, site)
