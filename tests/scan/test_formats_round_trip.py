"""Open and closed loop through every format: the same points, or the same surface, within 0.1 mm, also at
map coordinates."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
import scan_writers as w
from scan_scene import LENGTH, UTM, WIDTH, ground, slab_cloud, slab_mesh, y_up

from crestcut.base.grid import FloatArray
from crestcut.job.records import ScanChoice
from crestcut.scan.load import read_scan
from crestcut.scan.records import Scan

TENTH_OF_A_MILLIMETRE = 1e-4
COLOURS = np.random.default_rng(5).integers(0, 256, (4000, 3)).astype(np.uint8)

Writer = Callable[[Path, FloatArray], None]
CLOUDS: dict[str, tuple[str, Writer]] = {
    "ply ascii": ("a.ply", lambda p, x: w.write_ply(p, x, "ascii", COLOURS)),
    "ply binary": ("a.ply", lambda p, x: w.write_ply(p, x, "binary_little_endian", COLOURS)),
    "ply big-endian": ("a.ply", lambda p, x: w.write_ply(p, x, "binary_big_endian", COLOURS)),
    "pcd ascii": ("a.pcd", lambda p, x: w.write_pcd(p, x, "ascii", COLOURS)),
    "pcd binary": ("a.pcd", lambda p, x: w.write_pcd(p, x, "binary", COLOURS)),
    "pcd compressed": ("a.pcd", lambda p, x: w.write_pcd(p, x, "binary_compressed", COLOURS)),
    "xyz": ("a.xyz", lambda p, x: w.write_rows(p, x, " ")),
    "xyz colours": ("a.xyz", lambda p, x: w.write_rows(p, x, " ", colours=COLOURS)),
    "csv header": ("a.csv", lambda p, x: w.write_rows(p, x, ",", "X,Y,Z,R,G,B", colours=COLOURS)),
    "csv comma in data": (
        "a.csv",
        lambda p, x: w.write_rows(p, x, ";", "Easting;Northing;Height", comma=True),
    ),
    "txt tabs": ("a.txt", lambda p, x: w.write_rows(p, x, "\t", comma=True)),
    "pts": ("a.pts", lambda p, x: w.write_rows(p, x, " ", str(len(x)))),
    "csv order": ("a.csv", lambda p, x: w.write_rows(p, x[:, [2, 0, 1]], ",", "z,x,y")),
    "las": ("a.las", lambda p, x: w.write_las(p, x, 32632, COLOURS)),
    "laz": ("a.laz", lambda p, x: w.write_las(p, x, 32632, COLOURS)),
    "e57": (
        "a.e57",
        lambda p, x: w.write_e57(p, [x - x.mean(axis=0)], [(np.array([1.0, 0, 0, 0]), x.mean(axis=0))]),
    ),
    "obj": ("a.obj", lambda p, x: w.write_obj(p, x)),
}
MESHES: dict[str, tuple[str, Callable[[Path, FloatArray, FloatArray], None]]] = {
    "ply ascii": ("m.ply", lambda p, v, f: w.write_ply(p, v, "ascii", faces=f)),
    "ply big-endian": ("m.ply", lambda p, v, f: w.write_ply(p, v, "binary_big_endian", faces=f)),
    "obj": ("m.obj", w.write_obj),
    "stl ascii": ("m.stl", w.write_ascii_stl),
}


def read(path: Path, **choice: str) -> Scan:
    return read_scan(ScanChoice((path,), **choice))


def file_points(scan: Scan) -> FloatArray:
    return scan.frame.to_file(scan.points)


@pytest.mark.parametrize("offset", [np.zeros(3), UTM], ids=["local", "map"])
@pytest.mark.parametrize("kind", CLOUDS)
def test_a_cloud_comes_back_as_it_was(kind: str, offset: FloatArray, tmp_path: Path) -> None:
    name, write = CLOUDS[kind]
    points = slab_cloud() + offset
    write(tmp_path / name, points)
    scan = read(tmp_path / name)
    assert scan.frame.up == "z" and scan.frame.unit == "m"
    assert np.abs(scan.points).max() < 200.0, "points must lie near the local origin"
    np.testing.assert_allclose(file_points(scan), points, atol=TENTH_OF_A_MILLIMETRE, rtol=0)
    if scan.colours is not None:
        np.testing.assert_array_equal(scan.colours, COLOURS)
    # Closed loop: written again from the site frame and read back, the site points are the same.
    write(tmp_path / f"again-{name}", file_points(scan))
    again = read(tmp_path / f"again-{name}")
    np.testing.assert_allclose(again.points, scan.points, atol=TENTH_OF_A_MILLIMETRE, rtol=0)


@pytest.mark.parametrize(
    "kind",
    [
        k
        for k in CLOUDS
        if k not in ("xyz", "csv comma in data", "txt tabs", "pts", "csv order", "e57", "obj")
    ],
)
def test_colours_are_kept(kind: str, tmp_path: Path) -> None:
    name, write = CLOUDS[kind]
    write(tmp_path / name, slab_cloud())
    colours = read(tmp_path / name).colours
    assert colours is not None
    np.testing.assert_array_equal(colours, COLOURS)


def test_digits_of_an_ascii_pcd_count_though_it_declares_single_floats(tmp_path: Path) -> None:
    points = slab_cloud() + UTM
    w.write_pcd(tmp_path / "a.pcd", points, "ascii")
    text = (tmp_path / "a.pcd").read_text()
    (tmp_path / "a.pcd").write_text(text.replace("SIZE 8 8 8", "SIZE 4 4 4"))
    np.testing.assert_allclose(file_points(read(tmp_path / "a.pcd")), points, atol=1e-6, rtol=0)


def assert_on_the_apron(points: FloatArray) -> None:
    """Points of the mesh, in its own metres: on its faces and spread over all of it."""
    np.testing.assert_allclose(
        points[:, 2], ground(points[:, 0], points[:, 1]), atol=TENTH_OF_A_MILLIMETRE, rtol=0
    )
    assert (points[:, :2].min(axis=0) > -1e-4).all() and (
        points[:, :2].max(axis=0) < [LENGTH + 1e-4, WIDTH + 1e-4]
    ).all()
    density, *_ = np.histogram2d(points[:, 0], points[:, 1], bins=(12, 8), range=((0, LENGTH), (0, WIDTH)))
    assert density.min() > 0.8 * density.max()


@pytest.mark.parametrize("offset", [np.zeros(3), UTM], ids=["local", "map"])
@pytest.mark.parametrize("kind", MESHES)
def test_a_mesh_is_sampled_on_its_faces(kind: str, offset: FloatArray, tmp_path: Path) -> None:
    name, write = MESHES[kind]
    vertices, faces = slab_mesh()
    write(tmp_path / name, vertices + offset, faces)
    scan = read(tmp_path / name)
    assert_on_the_apron(file_points(scan) - offset)
    assert scan.files[0].mesh_edge == pytest.approx(0.1, rel=0.01)
    assert scan.files[0].points == len(scan.points) > 20_000


def test_a_binary_stl_holds_local_numbers(tmp_path: Path) -> None:
    vertices, faces = slab_mesh()
    w.write_binary_stl(tmp_path / "m.stl", vertices, faces)
    assert_on_the_apron(file_points(read(tmp_path / "m.stl")))


def test_a_gltf_is_another_scan_where_its_data_file_is_another(tmp_path: Path) -> None:
    vertices, faces = slab_mesh()
    document, data = w.gltf_document(y_up(vertices), faces, np.zeros(3))
    document["buffers"] = [{"byteLength": len(data), "uri": "m.bin"}]
    text = json.dumps(document).encode()
    (tmp_path / "m.gltf").write_bytes(text)
    for last in (data, data[:8] + (data[8] ^ 1).to_bytes(1, "little") + data[9:]):
        (tmp_path / "m.bin").write_bytes(last)
        assert read(tmp_path / "m.gltf").files[0].sha256 == hashlib.sha256(text + last).hexdigest()


@pytest.mark.parametrize("binary", [True, False], ids=["glb", "gltf"])
@pytest.mark.parametrize("offset", [np.zeros(3), UTM], ids=["local", "map"])
def test_node_transforms_of_gltf_are_applied_in_full_width(
    offset: FloatArray, binary: bool, tmp_path: Path
) -> None:
    vertices, faces = slab_mesh()
    document, data = w.gltf_document(y_up(vertices), faces, y_up(offset[None])[0])
    path = tmp_path / ("m.glb" if binary else "m.gltf")
    if binary:
        w.write_glb(path, document, data)
    else:
        document["buffers"] = [{"byteLength": len(data), "uri": "m.bin"}]
        (tmp_path / "m.bin").write_bytes(data)
        path.write_text(json.dumps(document))
    scan = read(path)
    assert scan.frame.up == "y" and "glTF" in scan.files[0].unit_reason
    assert_on_the_apron(scan.points + scan.frame.shift - offset)


def test_points_in_a_glb_are_a_cloud(tmp_path: Path) -> None:
    points = slab_cloud()
    w.write_glb(tmp_path / "p.glb", *w.gltf_document(y_up(points), None, np.zeros(3)))
    scan = read(tmp_path / "p.glb")
    assert scan.files[0].mesh_edge is None
    np.testing.assert_allclose(scan.points, points, atol=1e-6)


def test_scans_of_an_e57_lie_in_their_poses(tmp_path: Path) -> None:
    points = slab_cloud()
    quarter = np.sqrt(0.5)
    turn = np.array(
        [[0.0, -1, 0], [1, 0, 0], [0, 0, 1]]
    )  # 90 degrees about z: quaternion (w, z) = (cos 45, sin 45)
    own = (points[2000:] + UTM - UTM) @ turn  # inverse turn of the second scanner's frame
    w.write_e57(
        tmp_path / "two.e57",
        [points[:2000], own],
        [(np.array([1.0, 0, 0, 0]), UTM), (np.array([quarter, 0, 0, quarter]), UTM)],
    )
    scan = read(tmp_path / "two.e57")
    assert scan.files[0].format == "E57, 2 scans"
    np.testing.assert_allclose(file_points(scan), points + UTM, atol=TENTH_OF_A_MILLIMETRE, rtol=0)


def test_time_of_a_las_is_kept_and_a_constant_one_is_none(tmp_path: Path) -> None:
    points = slab_cloud()
    time = np.linspace(100.0, 160.0, len(points))
    w.write_las(tmp_path / "t.laz", points, time=time)
    read_back = read(tmp_path / "t.laz").time
    assert read_back is not None
    np.testing.assert_allclose(read_back, time)
    w.write_las(tmp_path / "c.laz", points)
    assert read(tmp_path / "c.laz").time is None


def test_usd_meshes_come_in_their_own_unit_and_axis(tmp_path: Path) -> None:
    pytest.importorskip("pxr", reason="USDZ is an extra")
    from pxr import Usd, UsdGeom

    vertices, faces = slab_mesh()
    stage = Usd.Stage.CreateNew(str(tmp_path / "m.usda"))
    UsdGeom.SetStageMetersPerUnit(stage, 0.01)
    UsdGeom.SetStageUpAxis(stage, UsdGeom.Tokens.y)
    mesh = UsdGeom.Mesh.Define(stage, "/slab")
    mesh.CreatePointsAttr(y_up(vertices * 100.0).tolist())
    mesh.CreateFaceVertexCountsAttr([3] * len(faces))
    mesh.CreateFaceVertexIndicesAttr(faces.ravel().tolist())
    stage.Save()
    scan = read(tmp_path / "m.usda")
    assert scan.frame.unit == "cm" and scan.frame.up == "y"
    assert_on_the_apron(scan.points)


def test_a_draco_mesh_is_decoded_or_refused(tmp_path: Path) -> None:
    pytest.importorskip("DracoPy", reason="Draco is an extra")
    import trimesh

    vertices, faces = slab_mesh()
    mesh = trimesh.Trimesh(y_up(vertices), faces, process=False)
    (tmp_path / "d.glb").write_bytes(trimesh.Scene(mesh).export(file_type="glb", extension_draco=True))
    scan = read(tmp_path / "d.glb")
    # Draco rounds positions by itself; 0.1 mm of its rounding is not ours to undo.
    np.testing.assert_allclose(
        scan.points[:, 2], ground(scan.points[:, 0], scan.points[:, 1]), atol=3e-4, rtol=0
    )


def test_content_decides_and_not_the_name(tmp_path: Path) -> None:
    points = slab_cloud()
    w.write_las(tmp_path / "renamed.ply", points)
    w.write_ply(tmp_path / "renamed.laz", points, "binary_little_endian")
    assert read(tmp_path / "renamed.ply").files[0].format == "LAS"
    assert read(tmp_path / "renamed.laz").files[0].format.startswith("PLY")


def test_the_same_file_gives_the_same_bytes(tmp_path: Path) -> None:
    vertices, faces = slab_mesh()
    w.write_obj(tmp_path / "m.obj", vertices, faces)
    first, second = read(tmp_path / "m.obj"), read(tmp_path / "m.obj")
    assert first.points.tobytes() == second.points.tobytes()
    assert not first.points.flags.writeable
