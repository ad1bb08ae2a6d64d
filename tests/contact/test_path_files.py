"""Lines from drawings and tables."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.contact.path.files import read_line
from crestcut.scan.placing.system import System
from crestcut.scan.records import Frame

POINTS = ((0.5, 2.0), (6.0, 2.5), (12.0, 6.0))


def test_dxf_polyline_and_its_unit(tmp_path: Path) -> None:
    import ezdxf

    drawing = ezdxf.new()
    drawing.header["$INSUNITS"] = 4
    drawing.modelspace().add_lwpolyline(
        [(1000 * x, 1000 * y) for x, y in POINTS], dxfattribs={"layer": "LINE"}
    )
    drawing.saveas(tmp_path / "line.dxf")
    line = read_line(tmp_path / "line.dxf")
    assert line.unit == 0.001
    assert np.array(line.points) * line.unit == pytest.approx(np.array(POINTS))
    drawing.modelspace().add_line((0, 0), (1, 1), dxfattribs={"layer": "OTHER"})
    drawing.saveas(tmp_path / "two.dxf")
    with pytest.raises(CrestcutError, match="2 lines in the file"):
        read_line(tmp_path / "two.dxf")
    assert len(read_line(tmp_path / "two.dxf", layer="LINE").points) == 3


def test_geojson(tmp_path: Path) -> None:
    path = tmp_path / "line.geojson"
    geometry = {"type": "LineString", "coordinates": [list(p) for p in POINTS]}
    path.write_text(
        json.dumps({"type": "FeatureCollection", "features": [{"type": "Feature", "geometry": geometry}]})
    )
    assert read_line(path).points == POINTS


# in EPSG's order a state plane has east first and UTM too; Gauss-Kruger zone 3 (31467) has north first
@pytest.mark.parametrize("code", ["EPSG:25832", "EPSG:25832+7837", "EPSG:2263", "EPSG:31467"])
def test_geojson_in_degrees_is_turned_into_the_scans_system(tmp_path: Path, code: str) -> None:
    """Against another way there: PROJ's own inverse of the grid, place by place."""
    from pyproj import CRS, Proj

    from crestcut.scan.placing.system import asked_system

    system, factors = asked_system(code)
    plan = CRS.from_user_input(code.split("+")[0])
    at = {"EPSG:2263": (985_432.1, 205_678.9), "EPSG:31467": (3_500_000.0, 5_800_000.0)}
    east, north = at.get(code, (500_000.0, 5_800_000.0))
    frame = Frame(np.array(factors), np.eye(3), np.array([east * factors[0] // 100 * 100,
                  north * factors[1] // 100 * 100, 0.0]), "m", "z", system)  # fmt: skip
    own = np.array([[east, north], [east + 20.0, north + 9.0]])
    # of that grid's own datum: EPSG says which steps lead from it to WGS 84, PROJ takes what it has of them
    from pyproj import Transformer

    degrees = [Transformer.from_crs(plan, "OGC:CRS84", always_xy=True).transform(*p) for p in own]
    path = tmp_path / "line.geojson"
    path.write_text(json.dumps({"type": "LineString", "coordinates": [list(p) for p in degrees]}))
    line = read_line(path)
    assert line.degrees and "degrees" in line.notes[0]
    found = np.array(line.on_site(frame))
    assert np.abs(found - frame.plan_to_site(own)).max() < 0.002
    if code == "EPSG:25832":  # the same without PROJ's steps between systems
        near = Proj(plan)(*degrees[0])
        assert found[0] == pytest.approx(frame.plan_to_site(near), abs=0.002)
    path.write_text(json.dumps({"type": "LineString", "coordinates": [[b, a] for a, b in degrees]}))
    with pytest.raises(CrestcutError, match="latitude first"):
        read_line(path).on_site(frame)


def test_degrees_want_a_system(tmp_path: Path) -> None:
    path = tmp_path / "line.geojson"
    path.write_text(json.dumps({"type": "LineString", "coordinates": [[12.5, 41.1], [12.5001, 41.1]]}))
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    with pytest.raises(CrestcutError, match="in degrees, and the scan in no reference system"):
        read_line(path).on_site(frame)


@pytest.mark.parametrize(
    "text",
    [
        "0.5,2.0\n6.0,2.5\n12.0,6.0\n", "x,y\n0.5,2.0\n6.0,2.5\n12.0,6.0\n",
        "name;x;y\na;0,5;2,0\nb;6,0;2,5\nc;12,0;6,0\n", "0.5 2.0\n6.0 2.5\n12.0 6.0\n",
        "# tacheometer\nPoint,Northing,Easting,Height\n1,2.0,0.5,9\n2,2.5,6.0,9\n3,6.0,12.0,9\n",
        "0.5,2.0,1.1\n\n6.0,2.5,1.2\n12.0,6.0,1.3\n",
    ],
)  # fmt: skip
def test_csv(tmp_path: Path, text: str) -> None:
    (tmp_path / "line.csv").write_text(text)
    assert read_line(tmp_path / "line.csv").points == POINTS


@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("a.csv", "0,1\nhere,there\n", "row 2 is no point"),
        ("a.csv", "1,2\n", "no line"),
        ("a.csv", "", "no line"),
        ("a.csv", "1,2,3,4\n5,6,7,8\n", "4 columns without names"),
        ("a.csv", "id,this,that\n1,2,3\n2,3,4\n", "names no x and y"),
        ("a.geojson", '{"type": "LineString", "coordinates": [["a", 1], [2, 3]]}', "no x and y"),
        ("a.geojson", '{"type": "LineString", "coordinates": []}', "no line"),
        ("a.geojson", '{"type": "FeatureCollection", "features": null}', "no line in the file"),
        ("a.csv", "1,2\n3,nan\n", "not finite"),
        ("a.geojson", "{", "not a GeoJSON"),
        ("a.geojson", "{}", "no line in the file"),
        ("a.dxf", "nonsense", "not a DXF"),
        ("a.pdf", "x", "cannot be read from"),
    ],
)
def test_what_is_no_line_is_one_sentence(tmp_path: Path, name: str, text: str, words: str) -> None:
    (tmp_path / name).write_text(text)
    with pytest.raises(CrestcutError, match=words):
        read_line(tmp_path / name)
    with pytest.raises(CrestcutError, match="not there"):
        read_line(tmp_path / "missing.csv")


def test_the_unit_is_the_files_own_else_the_scans(tmp_path: Path) -> None:
    """A scan in US survey feet (1200/3937 m, NIST Handbook 44), origin moved; a drawing in mm; a table."""
    import ezdxf

    foot = 1200 / 3937
    frame = Frame(np.full(3, foot), np.eye(3), np.array([100.0, 50.0, 0.0]), "us-ft", "z")
    site, shift = np.array(POINTS), np.array([100.0, 50.0])
    drawing = ezdxf.new()
    drawing.header["$INSUNITS"] = 4
    drawing.modelspace().add_lwpolyline([tuple(1000 * (p + shift)) for p in site])
    drawing.saveas(tmp_path / "line.dxf")
    assert np.array(read_line(tmp_path / "line.dxf").on_site(frame)) == pytest.approx(site, abs=1e-9)
    rows = "\n".join(f"{x!r},{y!r}" for x, y in ((site + shift) / foot).tolist())
    (tmp_path / "line.csv").write_text(rows)
    assert np.array(read_line(tmp_path / "line.csv").on_site(frame)) == pytest.approx(site, abs=1e-9)


def test_a_drawn_arc_is_followed_and_a_layer_misspelt_is_named(tmp_path: Path) -> None:
    import ezdxf

    drawing = ezdxf.new()
    drawing.modelspace().add_arc((0, 0), 8.0, 0, 90, dxfattribs={"layer": "drive"})
    drawing.modelspace().add_ellipse((0, 0), (3, 0), 0.5, dxfattribs={"layer": "bed"})
    drawing.saveas(tmp_path / "arc.dxf")
    points = np.array(read_line(tmp_path / "arc.dxf", "drive").points)
    # a quarter circle as one cubic is off by 2.7e-4 of its radius at most (the usual approximation)
    assert np.hypot(*points.T) == pytest.approx(8.0, abs=2.8e-4 * 8.0)
    chords = np.hypot(*np.diff(points, axis=0).T)
    assert (chords**2 / (8 * 8.0)).max() < 0.0005 * 8.0  # sagitta of a chord: c^2 / 8 R
    # it closes on itself, yet is not cut to dust
    assert len(read_line(tmp_path / "arc.dxf", "bed").points) < 400
    with pytest.raises(CrestcutError, match=r'no line on the layer "drvie".*did you mean "drive"'):
        read_line(tmp_path / "arc.dxf", "drvie")


def test_places_less_than_a_centimetre_apart_are_one(tmp_path: Path) -> None:
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    (tmp_path / "line.csv").write_text("0,0\n0,0.004\n0,3\n0.001,3\n")
    assert read_line(tmp_path / "line.csv").on_site(frame) == ((0.0, 0.0), (0.0, 3.0))
    (tmp_path / "line.csv").write_text("0,0\n0,0.004\n")
    with pytest.raises(CrestcutError, match="one place"):
        read_line(tmp_path / "line.csv").on_site(frame)


MAP = np.array([2_100_000.0, 980_000.0])  # US survey feet, as a state plane has them


@pytest.mark.parametrize(
    ("drawn", "scanned", "said"),
    [
        (2, 1200 / 3937, "international feet, the scan in US survey"),
        (21, 0.3048, "US survey feet, the scan in"),
    ],
)
def test_feet_of_two_kinds_are_asked_for_not_applied(
    drawn: int, scanned: float, said: str, tmp_path: Path
) -> None:
    """2 ppm of 2,100,000 ft are 4.2 ft: whoever drew over the scan meant the scan's feet, or did not."""
    import ezdxf

    shift = np.array([*MAP * scanned, 0.0])
    frame = Frame(np.full(3, scanned), np.eye(3), shift, "ft", "z")
    drawing = ezdxf.new()
    drawing.header["$INSUNITS"] = drawn
    drawing.modelspace().add_lwpolyline([tuple(MAP + p) for p in np.array(POINTS)])
    drawing.saveas(tmp_path / "line.dxf")
    with pytest.raises(CrestcutError, match=said) as caught:
        read_line(tmp_path / "line.dxf").on_site(frame)
    assert "1280 mm" in caught.value.what and "$INSUNITS" in caught.value.mend and "CSV" in caught.value.mend
    drawing.header["$INSUNITS"] = {2: 21, 21: 2}[drawn]
    drawing.saveas(tmp_path / "line.dxf")
    site = np.array(POINTS) * scanned
    assert np.array(read_line(tmp_path / "line.dxf").on_site(frame)) == pytest.approx(site, abs=1e-6)


def test_feet_of_two_kinds_are_one_near_the_origin(tmp_path: Path) -> None:
    import ezdxf

    frame = Frame(np.full(3, 1200 / 3937), np.eye(3), np.zeros(3), "us-ft", "z")
    drawing = ezdxf.new()
    drawing.header["$INSUNITS"] = 2
    drawing.modelspace().add_lwpolyline(POINTS)
    drawing.saveas(tmp_path / "line.dxf")
    site = np.array(POINTS) * 0.3048
    assert np.array(read_line(tmp_path / "line.dxf").on_site(frame)) == pytest.approx(site, abs=1e-4)


def _geojson(path: Path, system: str | None) -> None:
    data: dict[str, object] = {"type": "LineString", "coordinates": [list(p) for p in POINTS]}
    if system is not None:
        data["crs"] = {"type": "name", "properties": {"name": system}}
    path.write_text(json.dumps(data))


def test_a_geojson_of_another_zone_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "line.geojson"
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z", System("EPSG:32632"))
    for same in ("urn:ogc:def:crs:EPSG::32632", "EPSG:32632", None, "my own grid"):
        _geojson(path, same)
        assert np.array(read_line(path).on_site(frame)) == pytest.approx(np.array(POINTS))
    _geojson(path, "urn:ogc:def:crs:EPSG::32633")
    with pytest.raises(CrestcutError, match="the line is in EPSG:32633, the scan in EPSG:32632"):
        read_line(path).on_site(frame)


def test_a_line_far_from_the_scan_is_refused(tmp_path: Path) -> None:
    _geojson(tmp_path / "line.geojson", None)
    frame = Frame(np.ones(3), np.eye(3), np.array([500_012.0, 5_800_034.0, 0.0]), "m", "z")
    with pytest.raises(CrestcutError, match=r"5,822 km from the scan"):
        read_line(tmp_path / "line.geojson").on_site(frame)
