"""Every kind of bad scan ends as one line that names the file, the fault and the mend."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from scan_scene import slab_cloud, slab_mesh, y_up

from crestcut.base.errors import CrestcutError
from crestcut.job.records import ScanChoice
from crestcut.scan.formats.gltf import read_gltf
from crestcut.scan.load import read_scan


def refusal(path: Path, **choice: str) -> CrestcutError:
    """The error that reading ``path`` ends in, checked to be one whole line."""
    with pytest.raises(CrestcutError) as caught:
        read_scan(ScanChoice((path,), **choice))
    error = caught.value
    line = str(error)
    assert "\n" not in line and error.what and error.mend, line
    assert path.name in line, line
    return error


def cut_in_half(path: Path) -> None:
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])


def test_missing_file(tmp_path: Path) -> None:
    assert "no such file" in refusal(tmp_path / "none.laz").what


def test_folder(tmp_path: Path) -> None:
    assert "folder" in refusal(tmp_path).what


@pytest.mark.parametrize("suffix", ["ply", "laz", "glb", "xyz", "e57"])
def test_empty_file(suffix: str, tmp_path: Path) -> None:
    path = tmp_path / f"empty.{suffix}"
    path.touch()
    assert "empty" in refusal(path).what


FOREIGN = {
    "photo.ply": b"\x89PNG\r\n\x1a\n" + bytes(range(200)),
    "sheet.xyz": b"%PDF-1.7\n" + b"text " * 100,
    "noise.laz": np.random.default_rng(0).bytes(4000),
    "page.csv": b"<!DOCTYPE html><html><body>slab</body></html>",
    "prose.txt": b"The slab was swept on Monday.\nIt dried by noon.\nNothing else is known.\n",
    "other.json": b'{"slab": [1, 2, 3]}',
    "archive.usdz": b"PK\x03\x04" + bytes(100),
    "half_numbers.csv": b"a,b\n1,2\n3,4\n",
}


@pytest.mark.parametrize("name", FOREIGN)
def test_foreign_file(name: str, tmp_path: Path) -> None:
    (tmp_path / name).write_bytes(FOREIGN[name])
    refusal(tmp_path / name)


TRUNCATED: dict[str, Callable[[Path], None]] = {
    "a.ply": lambda p: w.write_ply(p, slab_cloud(), "ascii"),
    "b.ply": lambda p: w.write_ply(p, slab_cloud(), "binary_little_endian"),
    "c.ply": lambda p: w.write_ply(p, slab_mesh()[0], "binary_big_endian", faces=slab_mesh()[1]),
    "a.pcd": lambda p: w.write_pcd(p, slab_cloud(), "ascii"),
    "b.pcd": lambda p: w.write_pcd(p, slab_cloud(), "binary"),
    "c.pcd": lambda p: w.write_pcd(p, slab_cloud(), "binary_compressed"),
    "a.pts": lambda p: w.write_rows(p, slab_cloud(), " ", "4000"),
    "a.las": lambda p: w.write_las(p, slab_cloud()),
    "a.laz": lambda p: w.write_las(p, slab_cloud()),
    "a.e57": lambda p: w.write_e57(p, [slab_cloud()], [(np.array([1.0, 0, 0, 0]), np.zeros(3))]),
    "a.glb": lambda p: w.write_glb(p, *w.gltf_document(y_up(slab_mesh()[0]), slab_mesh()[1], np.zeros(3))),
    "a.stl": lambda p: w.write_binary_stl(p, *slab_mesh()),
    "b.stl": lambda p: w.write_ascii_stl(p, *slab_mesh()),
}


@pytest.mark.parametrize("name", TRUNCATED)
def test_truncated_file(name: str, tmp_path: Path) -> None:
    TRUNCATED[name](tmp_path / name)
    cut_in_half(tmp_path / name)
    refusal(tmp_path / name)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda rows: rows[:-300],
        lambda rows: [*rows[:500], "1.0 2.0", *rows[501:]],
        lambda rows: [*rows[:500], "1.0 hello 2.0 0", *rows[501:]],
    ],
    ids=["rows missing", "a row too short", "a word"],
)
def test_no_point_of_an_ascii_pcd_is_made_up(spoil: Callable[[list[str]], list[str]], tmp_path: Path) -> None:
    path = tmp_path / "a.pcd"
    w.write_pcd(path, slab_cloud(), "ascii")
    path.write_text("\n".join(spoil(path.read_text().splitlines())) + "\n")
    refusal(path)


def test_truncated_text_names_the_line(tmp_path: Path) -> None:
    path = tmp_path / "cut.csv"
    w.write_rows(path, slab_cloud(100), ",", "x,y,z")
    path.write_text(path.read_text() + "1.25,0.5")
    assert "line 102" in refusal(path).what


def test_truncated_obj_names_the_line(tmp_path: Path) -> None:
    path = tmp_path / "cut.obj"
    w.write_obj(path, *slab_mesh())
    path.write_text(path.read_text().rstrip()[:-3].rsplit(" ", 1)[0])
    assert "line" in refusal(path).what


def test_gltf_without_its_data_file(tmp_path: Path) -> None:
    document, data = w.gltf_document(y_up(slab_mesh()[0]), slab_mesh()[1], np.zeros(3))
    document["buffers"] = [{"byteLength": len(data), "uri": "gone.bin"}]
    (tmp_path / "m.gltf").write_text(json.dumps(document))
    assert "gone.bin" in refusal(tmp_path / "m.gltf").what


@pytest.mark.parametrize(
    ("extension", "word"),
    [("KHR_mesh_quantization", "quantised"), ("EXT_meshopt_compression", "EXT_meshopt_compression")],
)
def test_compressed_geometry_that_cannot_be_trusted(extension: str, word: str, tmp_path: Path) -> None:
    document, data = w.gltf_document(y_up(slab_mesh()[0]), slab_mesh()[1], np.zeros(3))
    document |= {"extensionsUsed": [extension], "extensionsRequired": [extension]}
    w.write_glb(tmp_path / "q.glb", document, data)
    assert word in refusal(tmp_path / "q.glb").what


def test_draco_without_its_library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    document, data = w.gltf_document(y_up(slab_mesh()[0]), slab_mesh()[1], np.zeros(3))
    document |= {"extensionsRequired": ["KHR_draco_mesh_compression"]}
    w.write_glb(tmp_path / "d.glb", document, data)
    monkeypatch.setitem(__import__("sys").modules, "DracoPy", None)
    with pytest.raises(CrestcutError, match="Draco-compressed"):
        read_gltf(tmp_path / "d.glb")  # which the cage calls in a process of its own


def test_few_bad_points_are_dropped_and_counted(tmp_path: Path) -> None:
    points = slab_cloud()
    points[10], points[20, 2], points[30, 0] = np.nan, np.inf, -np.inf
    for name, write in (("n.ply", w.write_ply), ("n.pcd", w.write_pcd)):
        write(tmp_path / name, points, "binary_little_endian" if name == "n.ply" else "binary")
        scan = read_scan(ScanChoice((tmp_path / name,)))
        assert scan.files[0].dropped == 3 and scan.files[0].points == len(points) - 3
        assert np.isfinite(scan.points).all()


def test_bad_vertices_of_a_mesh_take_their_faces_along(tmp_path: Path) -> None:
    vertices, faces = slab_mesh()
    vertices[100] = np.nan
    w.write_ply(tmp_path / "n.ply", vertices, "binary_little_endian", faces=faces)
    scan = read_scan(ScanChoice((tmp_path / "n.ply",)))
    assert scan.files[0].dropped == 1
    near = np.hypot(*(scan.points[:, :2] - slab_mesh()[0][100, :2]).T)
    assert near.min() > 0.05, "no point may lie on a face of the lost vertex"


def test_mostly_bad_points(tmp_path: Path) -> None:
    points = slab_cloud()
    points[:2500] = np.nan
    w.write_ply(tmp_path / "n.ply", points, "binary_little_endian")
    assert "not numbers" in refusal(tmp_path / "n.ply").what


def test_all_points_on_a_line(tmp_path: Path) -> None:
    t = np.linspace(0.0, 6.0, 500)
    w.write_rows(tmp_path / "line.xyz", np.column_stack([t, 2 * t, 0.1 * t]))
    assert "one line" in refusal(tmp_path / "line.xyz").what


def test_all_points_in_one_place(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "dot.xyz", np.full((500, 3), 2.5))
    assert "one place" in refusal(tmp_path / "dot.xyz").what


def test_too_few_points(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "few.xyz", slab_cloud(20))
    assert "only 20 points" in refusal(tmp_path / "few.xyz").what


def test_millimetres_taken_for_metres(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "mm.xyz", slab_cloud() * 1000.0)
    error = refusal(tmp_path / "mm.xyz", unit="m")
    assert "metres across" in error.what and 'unit = "mm"' in error.mend


def test_metres_taken_for_millimetres(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "m.xyz", slab_cloud())
    assert 'unit = "m"' in refusal(tmp_path / "m.xyz", unit="mm").mend


def test_a_glb_in_millimetres(tmp_path: Path) -> None:
    vertices, faces = slab_mesh()
    w.write_glb(tmp_path / "mm.glb", *w.gltf_document(y_up(vertices * 1000.0), faces, np.zeros(3)))
    assert 'unit = "mm"' in refusal(tmp_path / "mm.glb").mend


def test_a_size_that_fits_no_unit(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "cm.xyz", slab_cloud() * 100.0)
    assert "unit" in refusal(tmp_path / "cm.xyz").mend
    assert read_scan(ScanChoice((tmp_path / "cm.xyz",), unit="cm")).frame.unit == "cm"


def test_degrees(tmp_path: Path) -> None:
    w.write_las(tmp_path / "deg.laz", slab_cloud() * [1e-5, 1e-5, 1.0] + [9.0, 48.0, 300.0], 4326, scale=1e-8)
    assert "degrees" in refusal(tmp_path / "deg.laz").what


@pytest.mark.parametrize(("key", "value"), [("unit", "furlong"), ("up", "w")])
def test_unknown_choice(key: str, value: str, tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud())
    assert value in refusal(tmp_path / "a.xyz", **{key: value}).what


def test_commas_that_part_and_mark(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "c.csv", slab_cloud(), ",", comma=True)
    assert "commas" in refusal(tmp_path / "c.csv").what


def test_columns_in_two_units(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "c.csv", slab_cloud(), ",", "x [ft],y [ft],z [m]")
    assert "ft and m" in refusal(tmp_path / "c.csv").what


@pytest.mark.parametrize("names", ["n x y z", "level x y z", "e,n,h", "x northing y z", "E x N y Z h"])
def test_of_two_columns_that_may_be_one_the_letter_counts(names: str, tmp_path: Path) -> None:
    points, parts = slab_cloud(), ", " if "," in names else " "
    words = names.replace(",", " ").split()
    if "z" not in names.lower() and "h" not in names:
        words = ["x", *words, "z"]
    columns = {"x": 0, "y": 1, "z": 2, "Z": 2}
    if "," in names:
        columns = {"e": 0, "n": 1, "h": 2}
    table = np.column_stack([points[:, columns[w]] if w in columns else np.arange(4000.0) for w in words])
    w.write_rows(tmp_path / "a.csv", table, parts.strip() or parts, (parts.strip() or parts).join(words))
    found = read_scan(ScanChoice((tmp_path / "a.csv",)))
    np.testing.assert_allclose(np.sort(found.points[:, 0]), np.sort(points[:, 0]), atol=1e-5)
    np.testing.assert_allclose(np.sort(found.points[:, 1]), np.sort(points[:, 1]), atol=1e-5)


@pytest.mark.parametrize("before", ["", "# made by hand\n\n", "x y z\n", "# a\n\nx y z\n\n"])
@pytest.mark.parametrize("bad", ["1.0 2.0", "1.0 2.0 abc", "1.0 2.0 #3.0"])
def test_a_bad_row_is_named_by_the_line_that_an_editor_shows(before: str, bad: str, tmp_path: Path) -> None:
    rows = [f"{x:.4f} {y:.4f} {z:.4f}" for x, y, z in slab_cloud(400)]
    rows[300:300] = ["", "# a word in between", bad]
    text = before + "\n".join(rows) + "\n"
    (tmp_path / "a.xyz").write_text(text)
    line = text.split("\n").index(bad) + 1
    assert f"line {line} has too few numbers" in refusal(tmp_path / "a.xyz").what


def test_a_cloud_of_less_than_a_thousandth_of_a_millimetre_is_no_slab(tmp_path: Path) -> None:
    w.write_rows(tmp_path / "a.xyz", slab_cloud() * 4e-7, decimals=14)
    for choice in ({}, {"unit": "m"}, {"unit": "mm"}):
        refusal(tmp_path / "a.xyz", **choice)
