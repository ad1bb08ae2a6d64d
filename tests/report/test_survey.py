"""What is handed to a surveyor, read back by other libraries than wrote it: rasters by tifffile, surfaces by
an XML parser and matplotlib's triangles, drawing by ezdxf's own reader, tables by csv.

Coordinates are of survey size (E 512,300 m, N 4,481,200 m, 210 m high), in metres and US survey feet.
"""

from __future__ import annotations

import csv
import json
import re
import sys
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import ezdxf
import numpy as np
import pytest
import tifffile
from deliver_scene import make_report
from matplotlib.tri import LinearTriInterpolator, Triangulation
from scipy import ndimage
from test_sheets import job_without, sheet_for

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.report.exchange.heights_dxf import STEP
from crestcut.report.exchange.landxml import NAMESPACE
from crestcut.report.exchange.survey import NO_RASTERS, TOLERANCE, write_survey
from crestcut.scan.placing.system import asked_system, grid_over_ground
from crestcut.study.report import Report

SYSTEMS = {"m": "EPSG:25832+7837", "us-ft": "EPSG:2263+6360"}  # a state plane has heights in feet too
UNITS = tuple(SYSTEMS)
XML = {"x": NAMESPACE}


def in_system(unit: str) -> Report:
    report = make_report(unit)
    frame = replace(report.scan.frame, system=asked_system(SYSTEMS[unit])[0])
    return replace(report, scan=replace(report.scan, frame=frame))


@pytest.fixture(scope="module", params=UNITS)
def handed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Report, Path]:
    report, folder = in_system(request.param), tmp_path_factory.mktemp("survey")
    assert write_survey(report, sheet_for(report, job_without(report, set())), folder) == ()
    return report, folder


def heights_at(report: Report, own_plan: FloatArray, finished: bool = False) -> FloatArray:
    """Height in own units at own east, north, straight from the grid."""
    frame = report.scan.frame
    assert report.plan is not None
    grid = report.plan.finished if finished else report.surface.height
    z = grid.sample(frame.plan_to_site(own_plan))
    return np.asarray((z + frame.shift[2]) / frame.turned_scale[2])


def at_nodes(report: Report, own_plan: FloatArray, finished: bool) -> FloatArray:
    """Height in own units of the grid's nodes that these places are."""
    frame = report.scan.frame
    assert report.plan is not None
    grid = report.plan.finished if finished else report.surface.height
    place = grid.frame.to_grid(frame.plan_to_site(own_plan)) / grid.frame.cell
    node = np.rint(place).astype(int)
    assert np.abs(place - node).max() * grid.frame.cell < 2e-6
    return np.asarray((grid.values[node[:, 1], node[:, 0]] + frame.shift[2]) / frame.turned_scale[2])


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def test_rasters_lie_where_the_scan_lies(handed: tuple[Report, Path]) -> None:
    report, folder = handed
    for name in ("existing", "finished"):
        with tifffile.TiffFile(folder / f"{name}.tif") as file:
            page = file.pages[0]
            values = page.asarray()
            place, size = page.tags["ModelTiepointTag"].value, page.tags["ModelPixelScaleTag"].value
            assert float(page.tags["GDAL_NODATA"].value) == -9999.0
            keys = page.geotiff_tags
        assert int(keys["ProjectedCSTypeGeoKey"]) == (25832 if report.scan.frame.unit == "m" else 2263)
        j, i = np.nonzero(values != -9999.0)
        pick = np.random.default_rng(1).choice(len(j), 500, replace=False)
        east = place[3] + (i[pick] + 0.5) * size[0]
        north = place[4] - (j[pick] + 0.5) * size[1]
        said = values[j[pick], i[pick]]
        true = heights_at(report, np.column_stack([east, north]), name == "finished")
        assert said == pytest.approx(true, abs=1e-9)
        # as much is measured on it as on the grid: a hole in the scan is one there
        cell = float(np.prod(np.asarray(size[:2]) * report.scan.frame.plan_scale))
        measured = report.surface.height.measured.sum() * report.surface.height.frame.cell**2
        assert len(j) * cell == pytest.approx(measured, rel=0.02)


def test_rasters_are_cloud_optimised(handed: tuple[Report, Path]) -> None:
    data = (handed[1] / "existing.tif").read_bytes()
    assert b"LAYOUT=IFDS_BEFORE_DATA" in data[:400]


def surfaces(path: Path) -> dict[str, tuple[FloatArray, FloatArray]]:
    found = {}
    for surface in ElementTree.parse(path).getroot().findall(".//x:Surface", XML):
        points = np.array([p.text.split() for p in surface.findall(".//x:P", XML)], dtype=float)  # type: ignore[union-attr]
        faces = np.array([f.text.split() for f in surface.findall(".//x:F", XML)], dtype=int) - 1  # type: ignore[union-attr]
        found[surface.get("name") or ""] = points, faces
    return found


def test_surfaces_keep_to_the_heights(handed: tuple[Report, Path]) -> None:
    report, folder = handed
    frame = report.scan.frame
    for name, (points, faces) in surfaces(folder / "surfaces.xml").items():
        north, east, height = points.T  # the format's order
        own = np.column_stack([east, north])
        assert height == pytest.approx(at_nodes(report, own, name == "finished"), abs=1e-6)
        mid = own.mean(axis=0)
        tin = LinearTriInterpolator(Triangulation(*(own - mid).T, faces), height)
        grid = report.surface.height
        # nodes of the rim lie on the outermost edges, by the last digit outside
        inside = ndimage.binary_erosion(grid.measured, np.ones((3, 3)))
        nodes = frame.site_to_plan(grid.frame.node_xy()[inside])
        said = tin(*(nodes - mid).T)
        off = np.abs(said - at_nodes(report, nodes, name == "finished")) * frame.turned_scale[2]
        assert off.max() < TOLERANCE + 1e-6
        assert not np.ma.getmaskarray(said).any()  # every measured node is covered
        hole = frame.site_to_plan(grid.frame.to_site([(7.0, 2.6)]))
        assert np.ma.getmaskarray(tin(*(hole - mid).T)).all()
        a, b, c = (own[faces[:, k]] for k in range(3))
        turn = (b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0]
        assert (turn > 0).all()  # seen from above, all one way


def test_the_surface_file_says_unit_and_system(handed: tuple[Report, Path]) -> None:
    report, folder = handed
    root = ElementTree.parse(folder / "surfaces.xml").getroot()
    kind = root.find("x:Units", XML)
    assert kind is not None
    said = kind[0].get("linearUnit")
    assert said == ("meter" if report.scan.frame.unit == "m" else "USSurveyFoot")
    system = root.find("x:CoordinateSystem", XML)
    assert system is not None and system.get("epsgCode") in ("25832", "2263")
    assert "7837" in (system.get("verticalDatum") or "") or "6360" in (system.get("verticalDatum") or "")


def test_points_stand_in_both_orders(handed: tuple[Report, Path]) -> None:
    report, folder = handed
    first, second = (rows(folder / f"points_{n}.csv") for n in ("east_north", "north_east"))
    assert [sorted(r.items()) for r in first] == [sorted(r.items()) for r in second]
    heads = [(folder / f"points_{n}.csv").read_text().splitlines()[0] for n in ("east_north", "north_east")]
    assert heads[0].startswith("point,east,north,") and heads[1].startswith("point,north,east,")
    assert {r["code"] for r in first} == {"MARK", "CORNER", "DOT"}
    for row in first:
        plan = np.array([[float(row["east"]), float(row["north"])]])
        # four decimals of place on a slope of 8 %, and of height
        assert float(row["existing"]) == pytest.approx(float(heights_at(report, plan)[0]), abs=1.1e-4)
        assert float(row["existing"]) - float(row["depth"]) == pytest.approx(
            float(row["finished"]), abs=1.1e-4
        )


def test_the_drawing_stands_in_space(handed: tuple[Report, Path]) -> None:
    report, folder = handed
    drawing = ezdxf.readfile(folder / "heights.dxf")
    audit = drawing.audit()
    assert not audit.has_errors and not audit.has_fixes
    assert drawing.header["$INSUNITS"] == {"m": 6, "us-ft": 21}[report.scan.frame.unit]
    assert dict(drawing.header.custom_vars.properties)["release"] == report.identity.release
    space = drawing.modelspace()
    for name in ("existing", "finished"):
        (mesh,) = space.query(f'MESH[layer=="{name.upper()}_TIN"]')
        corner = np.array(mesh.vertices, dtype=float)
        assert corner[:, 2] == pytest.approx(at_nodes(report, corner[:, :2], name == "finished"), abs=1e-6)
        lines = space.query(f'LWPOLYLINE[layer=="{name.upper()}_CONTOURS"]')
        assert len(lines) > 5
        for line in lines:
            step = line.dxf.elevation / STEP[report.scan.frame.unit]
            assert step == pytest.approx(round(step), abs=1e-6)
            on = np.array(line.get_points("xy"))
            there = heights_at(report, on, name == "finished")
            there = there[~np.isnan(there)]  # its ends lie on the rim
            assert len(there) >= len(on) - 4
            assert there == pytest.approx(line.dxf.elevation, abs=2e-4)


def test_bands_add_up_to_the_plan(handed: tuple[Report, Path]) -> None:
    report, folder = handed
    assert report.plan is not None
    bands = rows(folder / "depth_bands.csv")
    assert [b["from_mm"] for b in bands] == [str(5 * k) for k in range(len(bands))]
    total = sum(float(b["volume_l"]) for b in bands)
    assert total == pytest.approx(report.plan.volume * 1000, rel=0.005)  # what is under 0.3 mm is no cut
    told = json.loads((folder / "survey.json").read_text())
    assert told["cut"]["volume"] * 1000 == pytest.approx(total, abs=0.01 * len(bands))


def test_sections_run_right_across(handed: tuple[Report, Path]) -> None:
    report, folder = handed
    found = rows(folder / "sections.csv")
    chainages = sorted({float(r["chainage_m"]) for r in found})
    assert np.diff(chainages) == pytest.approx(0.5) and 0.0 in chainages
    frame = report.surface.height.frame
    start = frame.to_grid(report.line.xy[0])
    for row in found[:: max(1, len(found) // 40)]:
        site = frame.to_site((start[0] + float(row["chainage_m"]), start[1] + float(row["offset_left_m"])))
        own = report.scan.frame.site_to_plan(site)
        assert (float(row["east"]), float(row["north"])) == pytest.approx(tuple(own), abs=1e-4)


def test_nothing_to_cut_from_without_a_release(tmp_path: Path) -> None:
    report = in_system("m")
    notes = write_survey(report, sheet_for(report, job_without(report, {"heating"})), tmp_path)
    assert any("no finished surface" in n for n in notes)
    assert not (tmp_path / "finished.tif").exists() and not (tmp_path / "depth.tif").exists()
    assert set(surfaces(tmp_path / "surfaces.xml")) == {"existing"}
    assert {r["code"] for r in rows(tmp_path / "points_east_north.csv")} == {"MARK"}
    assert all(not r["finished"] and not r["depth"] for r in rows(tmp_path / "sections.csv"))
    assert rows(tmp_path / "depth_bands.csv") == []


def test_a_scan_without_a_system_says_so(tmp_path: Path) -> None:
    report = make_report("m")
    write_survey(report, sheet_for(report, job_without(report, set())), tmp_path)
    told = json.loads((tmp_path / "survey.json").read_text())
    assert told["frame"]["crs"] is None and told["grid_over_ground"] is None
    system = ElementTree.parse(tmp_path / "surfaces.xml").getroot().find("x:CoordinateSystem", XML)
    assert system is not None and "no reference system" in (system.get("desc") or "")


def test_without_the_raster_library_all_else_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "rasterio", None)
    report = in_system("m")
    notes = write_survey(report, sheet_for(report, job_without(report, set())), tmp_path)
    assert NO_RASTERS in notes and not list(tmp_path.glob("*.tif"))
    assert (tmp_path / "surfaces.xml").exists() and (tmp_path / "survey.json").exists()


def test_same_report_same_bytes(handed: tuple[Report, Path], tmp_path: Path) -> None:
    report, folder = handed
    write_survey(report, sheet_for(report, job_without(report, set())), tmp_path)
    for path in sorted(folder.iterdir()):
        assert (tmp_path / path.name).read_bytes() == path.read_bytes(), path.name


def test_scale_of_a_grid_on_its_central_meridian() -> None:
    """UTM: 0.9996 on the central meridian (EPSG guidance note 7-2, table of Transverse Mercator parameters;
    the standard value), at the ellipsoid; 110 m up, the ground is longer by 110 / 6,371,000."""
    system, _ = asked_system("EPSG:25832")
    assert grid_over_ground(system, 500_000.0, 5_800_000.0, 0.0) == pytest.approx(0.9996, abs=1e-9)
    up = grid_over_ground(system, 500_000.0, 5_800_000.0, 110.0)
    assert up == pytest.approx(0.9996 * (1 - 110 / 6_371_000), abs=1e-9)


@pytest.mark.parametrize(("east", "north"), [(450_000.0, 5_800_000.0), (612_345.0, 4_481_200.0)])
def test_scale_of_a_grid_against_geodesics(east: float, north: float) -> None:
    """A metre on the ground by the geodesic of PROJ against a metre on the grid."""
    from pyproj import CRS, Geod, Transformer

    system, _ = asked_system("EPSG:25832")
    to_degrees = Transformer.from_crs(CRS(25832), CRS(4258), always_xy=True)
    a, b = to_degrees.transform(east - 50, north), to_degrees.transform(east + 50, north)
    ground = Geod(ellps="GRS80").inv(*a, *b)[2]
    assert grid_over_ground(system, east, north, 0.0) == pytest.approx(100.0 / ground, abs=1e-8)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("EPSG:999999", "no reference system"),
        ("rubbish", "no reference system"),
        ("EPSG:4326", "no east and north"),
        ("EPSG:7837", "no east and north"),
    ],
)
def test_systems_that_will_not_do(text: str, says: str) -> None:
    with pytest.raises(CrestcutError, match=says):
        asked_system(text)


def with_joints(report: Report, *ends: list[list[float]]) -> Report:
    surface = replace(report.surface, joints=np.array(ends, dtype=float).reshape(-1, 2, 2))
    return replace(report, surface=surface)


def test_the_cut_by_bay_adds_up_to_the_plan(tmp_path: Path) -> None:
    """A joint right across, seen to 0.3 m from either edge, and one along up to it: three bays."""
    report = with_joints(in_system("m"), [[4.4, 0.3], [4.4, 2.6]], [[4.5, 1.6], [8.7, 1.6]])
    plan = report.plan
    assert plan is not None
    write_survey(report, sheet_for(report, job_without(report, set())), tmp_path)
    found = rows(tmp_path / "bays.csv")
    assert [b["bay"] for b in found] == ["1", "2", "3"]
    assert sum(float(b["volume_l"]) for b in found) == pytest.approx(plan.volume * 1000, rel=0.005)
    assert max(float(b["deepest_mm"]) for b in found) == pytest.approx(plan.deepest * 1000, abs=0.06)
    slab = report.surface.slab.sum() * report.surface.height.frame.cell**2
    assert sum(float(b["slab_m2"]) for b in found) == pytest.approx(slab, abs=0.02)
    grid = plan.depth.frame
    before = np.nan_to_num(plan.depth.values)[:, : round(4.4 / grid.cell)].sum() * grid.cell**2 * 1000
    # a column of nodes at the joint is either's
    assert float(found[0]["volume_l"]) == pytest.approx(before, abs=plan.deepest * 3 * grid.cell * 1000)
    own = report.scan.frame.site_to_plan(grid.to_site((2.2, 1.45)))
    assert (float(found[0]["east"]), float(found[0]["north"])) == pytest.approx(tuple(own), abs=0.2)


def test_a_slab_without_joints_is_one_bay(tmp_path: Path) -> None:
    report = in_system("us-ft")
    write_survey(report, sheet_for(report, job_without(report, set())), tmp_path)
    (bay,) = rows(tmp_path / "bays.csv")
    assert float(bay["slab_m2"]) > 20
    write_survey(report, sheet_for(report, job_without(report, {"heating"})), tmp_path)
    assert rows(tmp_path / "bays.csv") == []  # nothing to cut from without a release


def test_the_surface_file_keeps_to_the_formats_structure(handed: tuple[Report, Path]) -> None:
    """LandXML 1.2 as its schema has it, from public descriptions of it and a published national profile with
    the same namespace; the schema file itself is in no package registry, so the file was not validated
    against it. Root: Units, CoordinateSystem, Project, Application, Surfaces in any order, date, time and
    version required. Application and Surface need a name, Definition surfType of TIN or grid, then Pnts and
    Faces; P an id that is a positive integer and unique, of two or three doubles, north first; F a list of
    integers."""
    root = ElementTree.parse(handed[1] / "surfaces.xml").getroot()
    plain = {child.tag.removeprefix(f"{{{NAMESPACE}}}"): child for child in root}
    assert set(plain) == {"Units", "CoordinateSystem", "Project", "Application", "Surfaces"}
    assert re.fullmatch(r"\d{4}-\d\d-\d\d", root.get("date") or "")
    assert re.fullmatch(r"\d\d:\d\d:\d\d", root.get("time") or "") and root.get("version") == "1.2"
    (unit,) = plain["Units"]
    metric = unit.tag.endswith("Metric")
    allowed = {
        "linearUnit": {"millimeter", "centimeter", "meter", "kilometer"} if metric
        else {"foot", "USSurveyFoot", "inch", "mile"},
        "areaUnit": {"squareMeter", "hectare"} if metric else {"squareFoot", "squareInch", "acre"},
        "volumeUnit": {"cubicMeter", "liter"} if metric else {"cubicFeet", "cubicInch", "cubicYard"},
        "temperatureUnit": {"celsius", "kelvin"} if metric else {"fahrenheit", "kelvin"},
        "pressureUnit": {"HPA", "milliBars", "mmHG"} if metric else {"inHG", "inH2O"},
    }  # fmt: skip
    assert set(unit.attrib) == set(allowed) and all(unit.attrib[k] in v for k, v in allowed.items())
    assert plain["Application"].get("name") and plain["Project"].get("name")
    known = {"desc", "name", "epsgCode", "ogcWktCode", "horizontalDatum", "verticalDatum"}
    assert set(plain["CoordinateSystem"].attrib) <= known
    names = [surface.get("name") for surface in plain["Surfaces"]]
    assert len(set(names)) == len(names) == 2 and all(names)
    for surface in plain["Surfaces"]:
        (made,) = surface
        assert made.tag.endswith("Definition") and made.get("surfType") == "TIN"
        points, faces = made
        assert points.tag.endswith("Pnts") and faces.tag.endswith("Faces") and len(points) >= 3 and len(faces)
        ids = [int(p.get("id") or 0) for p in points]
        assert min(ids) > 0 and len(set(ids)) == len(ids)
        assert all(len([float(v) for v in (p.text or "").split()]) == 3 for p in points)
        there = set(ids)
        assert all(
            len(f) == 3 and set(f) <= there for f in ([int(v) for v in (e.text or "").split()] for e in faces)
        )
