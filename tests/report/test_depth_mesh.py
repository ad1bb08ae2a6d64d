"""The mesh, read back with a general reader."""

from __future__ import annotations

import json
import struct
import tracemalloc
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import trimesh
from deliver_scene import CELL, make_report

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.report.exchange import mesh as mesh_room
from crestcut.report.exchange.mesh import depth_mesh, write_depth_glb, write_depth_ply
from crestcut.report.pictures.colours import CONCRETE, linear_from_srgb
from crestcut.study.report import Report


@pytest.fixture(scope="module")
def report() -> Report:
    return make_report(clearance=0.098)


@pytest.fixture(scope="module")
def read_back(
    report: Report, tmp_path_factory: pytest.TempPathFactory
) -> tuple[trimesh.Trimesh, np.ndarray, bytes]:
    path = tmp_path_factory.mktemp("mesh") / "depth_to_remove.ply"
    write_depth_ply(report, path)
    mesh = trimesh.load(path, process=False)
    return mesh, mesh.metadata["_ply_raw"]["vertex"]["data"], path.read_bytes()


def test_header_is_the_contract(read_back: tuple[trimesh.Trimesh, np.ndarray, bytes]) -> None:
    head = read_back[2].split(b"end_header\n")[0].decode("ascii").splitlines()
    assert head[:2] == ["ply", "format binary_little_endian 1.0"]
    assert [line for line in head if line.startswith("property")] == [
        "property double x", "property double y", "property double z",
        "property uchar red", "property uchar green", "property uchar blue", "property float depth",
        "property list uchar int vertex_indices",
    ]  # fmt: skip
    comments = " ".join(line for line in head if line.startswith("comment"))
    assert "unit m" in comments and "depth: metres" in comments and "release: ok" in comments


def test_depth_and_place_come_back(
    report: Report, read_back: tuple[trimesh.Trimesh, np.ndarray, bytes]
) -> None:
    _, vertex, _ = read_back
    assert report.plan is not None
    site = report.scan.frame.to_site(np.stack([vertex["x"], vertex["y"], vertex["z"]], axis=-1))
    frame = report.surface.height.frame
    cells = frame.to_grid(site) / frame.cell
    assert np.abs(cells - np.rint(cells)).max() < 1e-6
    i, j = np.rint(cells).astype(int).T
    height, depth = report.surface.height.values[j, i], report.plan.depth.values[j, i]
    on_node = ~np.isnan(vertex["depth"])
    # double precision at coordinates of 4.5 million metres: 1e-9 m; depth is a float of centimetres
    assert np.abs(site[on_node, 2] - height[on_node]).max() < 1e-6
    assert np.abs(vertex["depth"][on_node] - depth[on_node]).max() < 1e-6
    assert on_node.sum() == report.surface.height.measured.sum()
    assert vertex["depth"][on_node].astype(float).sum() * CELL**2 == pytest.approx(
        report.plan.volume, rel=1e-6
    )
    assert vertex["x"].mean() > 512_000 and vertex["z"].mean() > 200


def test_colours_say_the_depth(read_back: tuple[trimesh.Trimesh, np.ndarray, bytes]) -> None:
    _, vertex, _ = read_back
    rgb = np.stack([vertex["red"], vertex["green"], vertex["blue"]], axis=-1)
    assert (rgb[vertex["depth"] == 0] == CONCRETE).all()
    assert (rgb[vertex["depth"] > 0.001] != CONCRETE).any(axis=1).all()


def test_faces_look_up_and_leave_holes_open(
    report: Report, read_back: tuple[trimesh.Trimesh, np.ndarray, bytes]
) -> None:
    mesh, vertex, _ = read_back
    corners = np.stack([vertex["x"], vertex["y"]], axis=-1)[mesh.faces]
    a, b = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    area = (a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]) / 2
    assert area.min() > 0, "counter-clockwise from above"
    assert area.max() == pytest.approx(CELL**2 / 2, rel=1e-6), "no face spans a hole"
    holes = np.flatnonzero(np.isnan(vertex["depth"]))
    assert len(holes) > 400, "the round hole is 0.25 m in radius"
    assert not np.isin(mesh.faces, holes).any()
    measured = report.surface.height.measured
    whole = measured[:-1, :-1] & measured[:-1, 1:] & measured[1:, :-1] & measured[1:, 1:]
    count = measured[:-1, :-1].astype(int) + measured[:-1, 1:] + measured[1:, :-1] + measured[1:, 1:]
    assert len(mesh.faces) == 2 * whole.sum() + (count == 3).sum()


def test_open_hole_at_the_border_has_no_vertices(report: Report) -> None:
    mesh = depth_mesh(report)
    uv = report.surface.height.frame.to_grid(mesh.site)
    assert not ((uv[:, 0] < 0.4) & (uv[:, 1] < 0.5)).any()


@pytest.mark.parametrize("unit", ["ft", "us-ft", "mm"])
def test_the_scan_s_own_unit(unit: str, tmp_path: Path) -> None:
    metric, other = make_report("m", cut=False), make_report(unit, cut=False)
    write_depth_ply(metric, tmp_path / "m.ply")
    write_depth_ply(other, tmp_path / "o.ply")
    points = [trimesh.load(tmp_path / name, process=False).vertices for name in ("m.ply", "o.ply")]
    assert np.abs(points[1] * other.scan.frame.scale - points[0]).max() < 1e-6
    assert f"unit {unit}".encode() in (tmp_path / "o.ply").read_bytes()[:600]


def test_same_input_same_bytes(report: Report, tmp_path: Path) -> None:
    for name in ("a", "b"):
        write_depth_ply(report, tmp_path / f"{name}.ply")
        write_depth_glb(report, tmp_path / f"{name}.glb")
    assert (tmp_path / "a.ply").read_bytes() == (tmp_path / "b.ply").read_bytes()
    assert (tmp_path / "a.glb").read_bytes() == (tmp_path / "b.glb").read_bytes()


def test_glb_is_the_same_mesh_y_up(report: Report, tmp_path: Path) -> None:
    path = tmp_path / "depth_to_remove.glb"
    write_depth_glb(report, path)
    scene = trimesh.load(path, process=False)
    mesh = scene.to_mesh()
    full = depth_mesh(report)
    used = np.unique(full.faces)
    assert len(mesh.vertices) == len(used) and len(mesh.faces) == len(full.faces)
    origin = np.asarray(scene.metadata["origin"]) - report.scan.frame.shift
    x, y, z = mesh.vertices.T
    assert np.abs(np.stack([x, -z, y], axis=-1) + origin - full.site[used]).max() < 1e-5  # single precision
    assert np.abs(mesh.vertices).max() < 6, "near the origin"
    up = trimesh.triangles.normals(mesh.triangles)[0]
    assert up[:, 1].min() > 0.9
    document = json.loads(path.read_bytes()[20 : 20 + struct.unpack("<I", path.read_bytes()[12:16])[0]])
    material = document["materials"][document["meshes"][0]["primitives"][0]["material"]]
    assert material["pbrMetallicRoughness"]["metallicFactor"] == 0.0
    assert {"COLOR_0", "_DEPTH", "NORMAL"} <= set(document["meshes"][0]["primitives"][0]["attributes"])


def test_glb_carries_linear_colour_and_depth(report: Report, tmp_path: Path) -> None:
    path = tmp_path / "depth_to_remove.glb"
    written = write_depth_glb(report, path)
    mesh = next(iter(trimesh.load(path, process=False).geometry.values()))
    assert mesh.vertex_attributes["_DEPTH"].ravel() == pytest.approx(written.depth, abs=1e-7)
    linear = mesh.visual.vertex_attributes["color"][:, :3] / 255.0
    assert np.abs(linear - linear_from_srgb(written.rgb)).max() < 0.5 / 255 + 1e-6


def test_display_mesh_is_thinned(report: Report, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(mesh_room, "DISPLAY_VERTICES", 9_000)
    written = write_depth_glb(report, tmp_path / "thin.glb")
    assert 4_000 < len(written.site) <= 9_000
    area = sum(np.ptp(written.site[:, k]) for k in (0, 1))
    whole = sum(np.ptp(depth_mesh(report).site[:, k]) for k in (0, 1))
    assert area == pytest.approx(whole, abs=0.2)


def test_a_long_mesh_is_written_a_piece_at_a_time(
    report: Report, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The same bytes in pieces; and of a lane ten times as long what is held beside its layers does not grow
    with its vertices and faces, of which there are 100 bytes a node."""
    frame = report.surface.height.frame
    write_depth_ply(report, tmp_path / "whole.ply")
    whole = trimesh.load(tmp_path / "whole.ply", process=False)
    mesh = depth_mesh(report)
    assert np.array_equal(whole.faces, mesh.faces) and len(whole.vertices) == len(mesh.site)
    wide = GridFrame(frame.origin, frame.angle, frame.cell, (frame.shape[0], 10 * frame.shape[1]))
    long = HeightGrid(wide, np.tile(report.surface.height.values, 10))
    every = np.ones(wide.shape, bool)
    surface = replace(report.surface, height=long, top=long, standard_error=long, rollable=every, slab=every)
    lane = replace(report, surface=surface, plan=None)
    monkeypatch.setattr(mesh_room, "AT_ONCE", 1 << 14)
    tracemalloc.start()
    try:
        write_depth_ply(lane, tmp_path / "long.ply")
        held = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert held < 60 * long.values.size


def test_no_plan_is_all_concrete() -> None:
    written = depth_mesh(make_report(cut=False, hole=False))
    assert (written.depth == 0).all() and (written.rgb == CONCRETE).all()
