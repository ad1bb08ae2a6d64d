"""Lines from drawings and tables."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from crestcut.errors import CrestcutError
from crestcut.travel.path_files import read_line

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
    path.write_text(json.dumps({"type": "LineString", "coordinates": [[12.5, 41.1], [12.5001, 41.1]]}))
    with pytest.raises(CrestcutError, match="in degrees"):
        read_line(path)


@pytest.mark.parametrize(
    "text",
    [
        "0.5,2.0\n6.0,2.5\n12.0,6.0\n", "x,y\n0.5,2.0\n6.0,2.5\n12.0,6.0\n",
        "name;x;y\na;0,5;2,0\nb;6,0;2,5\nc;12,0;6,0\n", "0.5 2.0\n6.0 2.5\n12.0 6.0\n",
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
