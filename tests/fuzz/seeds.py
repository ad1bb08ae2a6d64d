"""Sound files of every kind that is read, small, made by code from the repository alone: what is mutated."""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, IntArray

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "tests" / "scan")]

import scan_writers as w  # noqa: E402
from scan_scene import UTM, slab_cloud, slab_mesh, y_up  # noqa: E402

from fuzz import mutators as m  # noqa: E402
from fuzz.mutators import Mutate  # noqa: E402
from fuzz.words import as_json  # noqa: E402

Colours = NDArray[np.uint8]


@dataclass(frozen=True)
class Kind:
    """A kind of file. seeds : (name, bytes).  target : how it is read (``reading.TARGETS``).

    beside : files that lie in the same folder.  weight : how often it is drawn.
    """

    name: str
    target: str
    seeds: tuple[tuple[str, bytes], ...]
    mutates: tuple[Mutate, ...]
    beside: tuple[tuple[str, bytes], ...] = ()
    weight: float = 1.0


def all_kinds() -> dict[str, Kind]:
    """Every kind by its name."""
    return {kind.name: kind for kind in (*_scans(), *_texts(), *_folders())}


def _made(*writers: tuple[str, Callable[[Path], Any]]) -> tuple[tuple[str, bytes], ...]:
    with tempfile.TemporaryDirectory() as folder:
        for name, write in writers:
            write(Path(folder) / name)
        return tuple((name, (Path(folder) / name).read_bytes()) for name, _ in writers)


def _scans() -> tuple[Kind, ...]:
    points, (vertices, faces) = slab_cloud(300), slab_mesh(0.5)
    colours = np.full((300, 3), 90, np.uint8)
    return (
        _las(points, colours), _ply(points, colours, vertices, faces), _pcd(points, colours), _e57(points),
        *_gltf(points, vertices, faces), _obj(points, vertices, faces), _stl(vertices, faces),
        _text(points, colours), *_usd(points, vertices, faces),
    )  # fmt: skip


def _las(points: FloatArray, colours: Colours) -> Kind:
    map_points = points + UTM
    las = _made(
        ("a.las", lambda p: w.write_las(p, points)),
        ("c.las", lambda p: w.write_las(p, map_points, 25832, colours, np.arange(300.0))),
        ("k.las", lambda p: w.write_las(p, map_points, keys={1024: 1, 3072: 25832, 3076: 9001, 4099: 9001})),
        ("z.laz", lambda p: w.write_las(p, points, colours=colours)),
    )
    header = m.fields_at(
        (6, "<H"), (24, "<B"), (25, "<B"), (94, "<H"), (96, "<I"), (100, "<I"), (104, "<B"), (105, "<H"),
        (107, "<I"), (131, "<d"), (139, "<d"), (147, "<d"), (155, "<d"), (163, "<d"), (171, "<d"), (179, "<d"),
        (187, "<d"), (227, "<Q"), (235, "<Q"), (243, "<I"), (247, "<Q"), (375 + 18, "<H"), (375 + 20, "<H"),
        (375 + 54, "<H"), (375 + 60, "<H"),
    )  # fmt: skip
    return Kind("las", "scan", las, (header, header, m.some_bytes), weight=2)


def _ply(points: FloatArray, colours: Colours, vertices: FloatArray, faces: IntArray) -> Kind:
    ply = _made(
        ("a.ply", lambda p: w.write_ply(p, points, "ascii", colours)),
        (
            "b.ply",
            lambda p: w.write_ply(p, points, "binary_little_endian", colours, comment="units: m, z up"),
        ),
        ("f.ply", lambda p: w.write_ply(p, vertices, "binary_big_endian", faces=faces)),
        ("g.ply", lambda p: w.write_ply(p, vertices, "ascii", faces=faces, real="float")),
    )
    known = m.instead_of(
        (rb"element (\w+) \d+", [rb"element \1 \xc2\xb2", rb"element \1 -3", rb"element \1 99999999999", rb"element \1 0",
                                 rb"element \1 2", rb"element \1", rb"element \1 1e3"]),
        (rb"property (double|float) [xyz]", [rb"property list uchar \1 x", rb"property list double double y",
                                             rb"property \1 x", rb"property quad z", rb"property \1", rb"property list"]),
        (rb"format \w+ 1.0", [rb"format ascii 1.0", rb"format binary_little_endian 1.0", rb"format", rb"format binary_big_endian"]),
        (rb"ply\n", [b"ply\n" + b"comment x\n" * 8000, b"ply\r\n", b"ply\ncomment units: furlong\n"]),
        (rb"end_header\n", [b"end_header", b"end_header\nend_header\n", b"element face 5\nproperty list uchar int vertex_indices\nend_header\n"]),
        (rb"property list uchar int vertex_indices", [rb"property list float float vertex_indices", rb"property list int uchar vertex_indices",
                                                      rb"property int vertex_indices"]),
    )  # fmt: skip
    return Kind("ply", "scan", ply, (known, m.words_before(b"end_header\n"), m.some_bytes), weight=1.5)


def _pcd(points: FloatArray, colours: Colours) -> Kind:
    pcd = _made(*((f"{how}.pcd", partial(w.write_pcd, points=points, how=how, colours=colours))
                  for how in ("ascii", "binary", "binary_compressed")))  # fmt: skip
    known = m.instead_of(
        (rb"POINTS \d+", [b"POINTS abc", b"POINTS", b"POINTS \xc2\xb2", b"", b"POINTS -5", b"POINTS 99999999999", b"POINTS 1.5", b"POINTS 2"]),
        (rb"COUNT [\d ]+", [b"COUNT 0 0 0 0", b"COUNT 1 1 1", b"COUNT 1 1 1 -1", b"COUNT 4294967295 1 1 1", b"COUNT 1 1 1 abc", b"COUNT 0 1 1 1"]),
        (rb"SIZE [\d ]+", [b"SIZE 3 3 3 3", b"SIZE 8 8 8", b"SIZE 0 0 0 0", b"SIZE 1 1 1 1", b"SIZE 16 16 16 4", b"SIZE -8 8 8 4"]),
        (rb"TYPE [A-Z ]+", [b"TYPE F F F", b"TYPE I I I I", b"TYPE X Y Z W", b"TYPE U U U U"]),
        (rb"FIELDS [a-z ]+", [b"FIELDS x x x x", b"FIELDS", b"FIELDS a b c d", b"FIELDS x y z z"]),
        (rb"WIDTH \d+", [b"WIDTH 0", b"WIDTH abc", b"WIDTH 1000000000", b"WIDTH"]),
        (rb"HEIGHT \d+", [b"HEIGHT 0", b"HEIGHT 2", b"HEIGHT abc"]),
        (rb"DATA \w+", [b"DATA", b"DATA ascii", b"DATA binary", b"DATA binary_compressed", b"DATA abc"]),
    )  # fmt: skip
    return Kind("pcd", "scan", pcd, (known, m.words_before(b"DATA "), m.some_words, m.some_bytes), weight=1.5)


def _e57(points: FloatArray) -> Kind:
    still = (np.array([1.0, 0.0, 0.0, 0.0]), np.zeros(3))
    turned = (np.array([0.8, 0.0, 0.0, 0.6]), np.array([1.0, 2.0, 0.1]))
    made = _made(
        ("a.e57", lambda p: w.write_e57(p, [points[:60]], [still])),
        ("b.e57", lambda p: w.write_e57(p, [points[:60], points[60:120]], [still, turned])),
    )
    return Kind("e57", "scan", made, (m.e57_xml, m.e57_xml, m.e57_binary, m.some_bytes), weight=2)


def _gltf(points: FloatArray, vertices: FloatArray, faces: IntArray) -> tuple[Kind, Kind]:
    document, buffer = w.gltf_document(y_up(vertices), faces, np.zeros(3))
    cloud_document, cloud_buffer = w.gltf_document(y_up(points), None, np.array([1.0, 0.0, 2.0]))
    beside = {**document, "buffers": [{"byteLength": len(buffer), "uri": "m.bin"}]}
    glb = _made(
        ("m.glb", lambda p: w.write_glb(p, document, buffer)),
        ("p.glb", lambda p: w.write_glb(p, cloud_document, cloud_buffer)),
        ("d.glb", lambda p: p.write_bytes(_draco(vertices, faces))),
    )
    uris = m.instead_of((rb'"uri": "m.bin"', [
        b'"uri": "../outside/secret"', b'"uri": "http://127.0.0.1:{port}/m.bin"', b'"uri": "/etc/passwd"', b'"uri": 5', b'"uri": null',
        b'"uri": "data:application/octet-stream;base64,AAAA"', b'"uri": "data:"', b'"uri": "."', b'"uri": "m.bin\\u0000"',
        b'"uri": "../outside/pipe"', b'"uri": "file:///etc/passwd"', b'"uri": "%2e%2e/outside/secret"', b'"uri": ""',
    ]))  # fmt: skip
    return (
        Kind("gltf", "scan", (("m.gltf", as_json(beside)),), (m.some_json, uris, m.some_words), (("m.bin", buffer),)),
        Kind("glb", "scan", glb, (m.some_glb, m.some_glb, m.some_bytes), weight=1.5),
    )  # fmt: skip


def _obj(points: FloatArray, vertices: FloatArray, faces: IntArray) -> Kind:
    obj = _made(
        ("c.obj", lambda p: w.write_obj(p, points)), ("m.obj", lambda p: w.write_obj(p, vertices, faces))
    )
    known = m.instead_of(
        (rb"(?m)^v .*$", [b"v " + b"1" * 60_000 + b"x 0 0", b"v 1 2", b"v", b"v nan nan nan", b"v 1 2 3 4 5 6 7 8", b"v 1e999 0 0",
                          b"v " + b"1 " * 20_000, b"v 1 2 3 300 -5 2", b"v 0 0 \xc2\xb2", b"v " + b"-" * 60_000]),
        (rb"(?m)^f .*$", [b"f 1 2", b"f 0 1 2", b"f 1/2/3 2//3 3", b"f 99999999999999999999 1 2", b"f -1 -2 -3", b"f 1 1 1", b"f " + b"1 " * 20_000,
                          b"f 1/////2 2 3", b"f " + b"1" * 60_000 + b"x 2 3", b"f 1- 2 3"]),
        (rb"\A", [b"mtllib ../outside/secret\nusemtl a\n", b"mtllib http://127.0.0.1:{port}/m.mtl\n", b"call ../outside/secret\n", b"o \x1b[2J\n", b"l 1 2\n",
                  b"vt 0 0\nvn 0 0 1\n", b"\xef\xbb\xbf", b"v 1 2 3 \\\n4\n"]),
    )  # fmt: skip
    return Kind("obj", "scan", obj, (known, m.some_words, m.some_bytes))


def _stl(vertices: FloatArray, faces: IntArray) -> Kind:
    stl = _made(
        ("b.stl", lambda p: w.write_binary_stl(p, vertices, faces)),
        ("t.stl", lambda p: w.write_ascii_stl(p, vertices, faces)),
    )
    known = m.instead_of(
        (rb"vertex [^\n]+", [b"vertex 1 2", b"vertex nan nan nan", b"vertex a b c", b"vertex " + b"1" * 60_000 + b" 2 3", b"vertex 1 2 3 4"]),
        (rb"endfacet|endloop|endsolid", [b"", b"endsolid", b"facet"]), (rb"solid slab", [b"solid", b"solid \x00", b"solid " + b"x" * 90_000]),
    )  # fmt: skip
    return Kind("stl", "scan", stl, (known, m.some_words, m.some_bytes))


def _text(points: FloatArray, colours: Colours) -> Kind:
    text = _made(
        ("a.xyz", lambda p: w.write_rows(p, points)),
        ("b.csv", lambda p: w.write_rows(p, points, ",", "x,y,z,r,g,b", colours=colours)),
        ("c.csv", lambda p: w.write_rows(p, points, ";", "x [m];y [m];z [m]", comma=True)),
        ("d.pts", lambda p: w.write_rows(p, points, " ", "300", colours=colours)),
        ("e.txt", lambda p: w.write_rows(p, points, "\t", "# x y z")),
    )
    known = m.instead_of((rb"\A[^\n]*\n", [
        b"n x y z\n", b"level x y z\n", b"x y z level\n", b"x,y\n", b"# x y z\n# x y z\n", b"9" * 5000 + b"\n", b"300\n", b"\xb2\n", b"x y z z\n", b"z y x\n",
        b"x [m];y [ft];z [m]\n", b"x" * 100_000 + b"\n", b"\xff\xfe", b"time x y z\n", b'"x" "y" "z"\n', b"-300\n", b"x\ty\tz\n",
    ]))  # fmt: skip
    return Kind("text", "scan", text, (known, m.some_words, m.some_bytes), weight=1.5)


def _usd(points: FloatArray, vertices: FloatArray, faces: IntArray) -> tuple[Kind, Kind]:
    usda = _usda(points, vertices, faces)
    known = m.instead_of(
        (rb"metersPerUnit = \S+", [b"metersPerUnit = 0", b"metersPerUnit = -1", b"metersPerUnit = nan", b"metersPerUnit = 1e308", b'metersPerUnit = "m"', b"metersPerUnit = 4e-7"]),
        (rb'upAxis = "\w"', [b'upAxis = "X"', b'upAxis = ""', b"upAxis = 5", b'upAxis = "-Z"']),
        (rb"\(\s", [b"(\n subLayers = [@../outside/secret.usda@]\n", b"(\n subLayers = [@http://127.0.0.1:{port}/a.usda@]\n"]),
        (rb'def (\w+) "(\w+)"', [rb'def \1 "\2" (references = @../outside/secret.usda@)', rb'def \1 "\2" (payload = @/etc/passwd@)', rb'def Xform "\2"', rb'class \1 "\2"',
                                 rb'def \1 "\2" (instanceable = true)', rb'def \1 "\2" (references = </slab>)']),
        (rb"faceVertexCounts = \[3", [b"faceVertexCounts = [-3", b"faceVertexCounts = [2147483647", b"faceVertexCounts = [0", b"faceVertexCounts = [6, -3", b"faceVertexCounts = [1000000000, -999999997"]),
        (rb"faceVertexIndices = \[\d", [b"faceVertexIndices = [-1", b"faceVertexIndices = [999999"]),
    )  # fmt: skip
    return (
        Kind("usda", "scan", (("a.usda", usda),), (known, m.some_words)),
        Kind("usdc", "scan", _packed_usd(usda), (m.some_bytes, m.some_member_or_bytes)),
    )


def _draco(vertices: FloatArray, faces: IntArray) -> bytes:
    import trimesh

    mesh = trimesh.Trimesh(y_up(vertices), faces, process=False)
    return bytes(trimesh.Scene(mesh).export(file_type="glb", extension_draco=True))


def _usda(points: FloatArray, vertices: FloatArray, faces: IntArray) -> bytes:
    def rows(values: Any) -> str:
        return ", ".join("(" + ", ".join(f"{v:.4f}" for v in row) + ")" for row in values)

    corners = ", ".join(str(i) for i in faces.ravel())
    return (
        '#usda 1.0\n(\n    upAxis = "Z"\n    metersPerUnit = 1\n)\ndef Xform "all"\n{\n'
        "    double3 xformOp:translate = (1, 2, 0)\n"
        '    uniform token[] xformOpOrder = ["xformOp:translate"]\n'
        f'    def Mesh "slab"\n    {{\n        point3f[] points = [{rows(vertices)}]\n'
        f"        int[] faceVertexCounts = [{', '.join('3' for _ in faces)}]\n"
        f"        int[] faceVertexIndices = [{corners}]\n    }}\n"
        f'    def Points "dots"\n    {{\n        point3f[] points = [{rows(points[:80])}]\n    }}\n}}\n'
    ).encode()


def _packed_usd(usda: bytes) -> tuple[tuple[str, bytes], ...]:
    try:
        from pxr import Usd, UsdUtils
    except ImportError:
        return (("a.usda", usda),)
    with tempfile.TemporaryDirectory() as folder:
        plain = Path(folder) / "a.usda"
        plain.write_bytes(usda)
        Usd.Stage.Open(str(plain)).Export(f"{folder}/a.usdc")
        UsdUtils.CreateNewUsdzPackage(f"{folder}/a.usdc", f"{folder}/a.usdz")
        return tuple((f"a.{kind}", (Path(folder) / f"a.{kind}").read_bytes()) for kind in ("usdc", "usdz"))


def _texts() -> tuple[Kind, ...]:
    import json

    configs = ROOT / "configs"

    def of(folder: str, *names: str) -> tuple[tuple[str, bytes], ...]:
        return tuple((name, (configs / folder / name).read_bytes()) for name in names)

    def keys_in(schema: Any) -> set[str]:
        if isinstance(schema, dict):
            own = set(schema.get("properties", {}))
            return own.union(*(keys_in(v) for v in schema.values())) if schema else own
        return set().union(*(keys_in(v) for v in schema)) if isinstance(schema, list) and schema else set()

    from crestcut.job.floor_schema import FloorFile
    from crestcut.job.schema import JobFile
    from crestcut.vehicle.schema import VehicleFile

    def toml(*schemas: Any) -> tuple[Mutate, ...]:
        keys = tuple(sorted(set().union(*(keys_in(s) for s in schemas))))
        return (m.toml_tree(keys), m.toml_tree(keys), m.some_words, m.toml_shape, m.some_bytes)

    line = {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {}, "geometry": {
        "type": "LineString", "coordinates": [[500001.0, 5800002.0], [500009.5, 5800002.0, 3.0]]}}],
        "crs": {"type": "name", "properties": {"name": "EPSG:25832"}}}  # fmt: skip
    table = b"x,y\n1.6,2.0\n5.0,2.1\n9.9,2.0\n"
    return (
        Kind("job", "job", of("jobs", "courtyard_apron_measured.toml", "courtyard_two_vehicles.toml"),
             toml(JobFile.model_json_schema()), weight=3),
        Kind("floor", "floor", of("jobs", "kiln_room_floor.toml"), toml(FloorFile.model_json_schema()), weight=1.5),
        Kind("vehicle", "vehicle", of("vehicles", "flat_floor_hatchback.toml", "kiln_trolley.toml",
             "lowered_floor_mobility_van.toml"), toml(VehicleFile.model_json_schema()), weight=2),
        Kind("sheet", "sheet", (("sheet.toml", _sheet()),), toml({}), weight=1.5),
        Kind("tool", "tool", of("tools", "hand_grinder_cup.toml", "scarifier.toml"), toml({})),
        Kind("line_csv", "line", (("l.csv", table), ("l.txt", table.replace(b",", b"\t"))), (m.some_words, m.some_bytes)),
        Kind("line_json", "line", (("l.geojson", json.dumps(line).encode()),), (m.some_json, m.some_words)),
        Kind("line_dxf", "line", (("l.dxf", _dxf()),), (m.some_words, m.some_bytes), weight=1.5),
    )  # fmt: skip


def _sheet() -> bytes:
    """A measuring sheet as one would fill it in."""
    once = {
        "A": ["2.800 m", "2.802 m"], "B": ["2.801 m"], "C": ["1500 mm"], "D": ["1500 mm"], "E": ["315 mm", "316 mm"],
        "F": ["314 mm"], "G": ["200 mm"], "H": ["118 mm", "122 mm", "120 mm"], "J": ["900 mm"], "K": ["800 mm"],
        "M": ["4.502 m"], "N": ["1750 mm"], "P": ["180 mm"], "Q": ["900 mm"], "S": ["5.5 m"], "T": ["220 mm"],
        "U": ["600 mm"],
    }  # fmt: skip
    part = {"name": "tray", "a": ["560 mm", "562 mm"], "b": ["2140 mm"], "c": ["560 mm"], "d": ["555 mm"],
            "e": ["105 mm", "103 mm"], "f": ["110 mm", "112 mm"]}  # fmt: skip
    loaded = {"name": "four people", "front": ["-8 mm", "-10 mm"], "rear": ["-24 mm"]}
    head = {"sheet": "measuring sheet 1", "name": "hatchback", "load": "driver only"}
    return m.toml_of({**head, **once, "part": [part], "loaded": [loaded]})


def _dxf() -> bytes:
    import io

    import ezdxf

    drawing = ezdxf.new("R2000", setup=False)
    space = drawing.modelspace()
    space.add_lwpolyline([(1.6, 2.0), (5.0, 2.1), (9.9, 2.0)], dxfattribs={"layer": "drive"})
    space.add_text("made up")
    held = io.StringIO()
    drawing.write(held)
    return held.getvalue().encode()


def _folders() -> tuple[Kind, ...]:
    """What an earlier command left: whoever hands a folder on may have changed it."""
    import hashlib
    import json

    old = b"old plan"
    rows = [{"file": "plan.png", "sha256": hashlib.sha256(old).hexdigest()}]
    manifest = {
        "schema": "crestcut.manifest/1",
        "tool": "crestcut",
        "hashes": "",
        "sets": {"run": {"title": "a", "files": rows}},
    }
    steps = [["out/plan.png", "part/.old/0", None], ["part/plan.png", "out/plan.png", rows[0]["sha256"]]]
    journal = {"schema": "crestcut.switch/1", "note": "", "part": "../.out-abc.part", "steps": steps}
    tree = (m.some_json, m.some_words)
    return (
        Kind("manifest", "folder", (("manifest.json", json.dumps(manifest).encode()),), tree, (("plan.png", old),)),
        Kind("journal", "folder", (("unfinished_switch.json", json.dumps(journal).encode()),), tree, (("plan.png", old),)),
    )  # fmt: skip
