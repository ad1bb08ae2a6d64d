"""Writers for round trips only: as plain as the formats allow, and independent of the readers under test."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, IntArray


def write_ply(
    path: Path, points: FloatArray, kind: str, colours: NDArray[np.uint8] | None = None,
    faces: IntArray | None = None, comment: str = "", real: str = "double",
) -> None:  # fmt: skip
    """``kind``: ascii, binary_little_endian or binary_big_endian."""
    order = ">" if "big" in kind else "<"
    fields = [(a, order + {"double": "f8", "float": "f4"}[real]) for a in "xyz"]
    header = ["ply", f"format {kind} 1.0"] + ([f"comment {comment}"] if comment else [])
    header += [f"element vertex {len(points)}"] + [f"property {real} {a}" for a in "xyz"]
    if colours is not None:
        fields += [(c, "u1") for c in ("red", "green", "blue")]
        header += [f"property uchar {c}" for c in ("red", "green", "blue")]
    if faces is not None:
        header += [f"element face {len(faces)}", "property list uchar int vertex_indices"]
    table = np.zeros(len(points), fields)
    for k, (name, _) in enumerate(fields):
        table[name] = points[:, k] if k < 3 else colours[:, k - 3]  # type: ignore[index]
    corners = np.zeros(0 if faces is None else len(faces), [("n", "u1"), ("i", order + "i4", (3,))])
    if faces is not None:
        corners["n"], corners["i"] = 3, faces
    if kind == "ascii":
        rows = [" ".join(repr(v.item()) for v in row) for row in table]
        rows += [f"3 {a} {b} {c}" for a, b, c in (faces if faces is not None else [])]
        body = ("\n".join(rows) + "\n").encode()
    else:
        body = table.tobytes() + corners.tobytes()
    path.write_bytes(("\n".join([*header, "end_header"]) + "\n").encode() + body)


def write_pcd(path: Path, points: FloatArray, how: str, colours: NDArray[np.uint8] | None = None) -> None:
    """``how``: ascii, binary or binary_compressed; double coordinates, packed colours."""
    packed = np.zeros(len(points), "<u4")
    if colours is not None:
        c = colours.astype(np.uint32)
        packed = (c[:, 0] << 16) | (c[:, 1] << 8) | c[:, 2]
    header = (
        "# .PCD v0.7 - Point Cloud Data file format\nVERSION 0.7\nFIELDS x y z rgb\nSIZE 8 8 8 4\n"
        f"TYPE F F F U\nCOUNT 1 1 1 1\nWIDTH {len(points)}\nHEIGHT 1\nVIEWPOINT 0 0 0 1 0 0 0\n"
        f"POINTS {len(points)}\nDATA {how}\n"
    ).encode()
    if how == "ascii":
        rows = [
            f"{x!r} {y!r} {z!r} {c}" for (x, y, z), c in zip(points.tolist(), packed.tolist(), strict=True)
        ]
        path.write_bytes(header + ("\n".join(rows) + "\n").encode())
    elif how == "binary":
        table = np.zeros(len(points), [("x", "<f8"), ("y", "<f8"), ("z", "<f8"), ("c", "<u4")])
        table["x"], table["y"], table["z"], table["c"] = *points.T, packed
        path.write_bytes(header + table.tobytes())
    else:
        whole = b"".join(np.ascontiguousarray(a).tobytes() for a in (*points.T, packed.astype("<u4")))
        small = lzf_pack(whole)
        sizes = len(small).to_bytes(4, "little") + len(whole).to_bytes(4, "little")
        path.write_bytes(header + sizes + small)


def lzf_pack(data: bytes) -> bytes:
    """A plain LZF packer: literal runs, and copies of three to nine bytes seen within the last 8 KiB."""
    out, literal, seen = bytearray(), bytearray(), {}
    i = 0

    def flush() -> None:
        for k in range(0, len(literal), 32):
            run = literal[k : k + 32]
            out.append(len(run) - 1)
            out.extend(run)
        literal.clear()

    while i < len(data):
        key = data[i : i + 3]
        at = seen.get(key, -1)
        seen[key] = i
        if len(key) == 3 and at >= 0 and i - at <= 8192:
            length = 3
            while length < 20 and i + length < len(data) and data[at + length] == data[i + length]:
                length += 1
            flush()
            back = i - at - 1
            if length - 2 < 7:
                out.append(((length - 2) << 5) | (back >> 8))
            else:
                out.extend([(7 << 5) | (back >> 8), length - 2 - 7])
            out.append(back & 255)
            i += length
        else:
            literal.append(data[i])
            i += 1
    flush()
    return bytes(out)


def write_rows(
    path: Path, points: FloatArray, delimiter: str = " ", header: str = "", comma: bool = False,
    decimals: int = 5, colours: NDArray[np.uint8] | None = None,
) -> None:  # fmt: skip
    rows = []
    for k, point in enumerate(points):
        words = [f"{v:.{decimals}f}" for v in point]
        if comma:
            words = [w.replace(".", ",") for w in words]
        if colours is not None:
            words += [str(c) for c in colours[k]]
        rows.append(delimiter.join(words))
    path.write_text((header + "\n" if header else "") + "\n".join(rows) + "\n")


def write_las(
    path: Path, points: FloatArray, epsg: int | str | None = None, colours: NDArray[np.uint8] | None = None,
    time: FloatArray | None = None, scale: float = 1e-4, keys: dict[int, int] | None = None,
) -> None:  # fmt: skip
    """keys : GeoTIFF keys and their short values, for files that say no more of their system."""
    import laspy

    header = laspy.LasHeader(point_format=7, version="1.4")
    header.scales, header.offsets = np.full(3, scale), np.floor(points.min(axis=0))
    if epsg is not None:
        from pyproj import CRS

        header.add_crs(CRS.from_user_input(epsg))
    if keys is not None:
        table = [(1, 1, 0, len(keys)), *((key, 0, 1, value) for key, value in sorted(keys.items()))]
        data = np.array(table, "<u2").tobytes()
        header.vlrs.append(laspy.VLR("LASF_Projection", 34735, "", data))
    las = laspy.LasData(header)
    las.x, las.y, las.z = points.T
    if colours is not None:
        las.red, las.green, las.blue = colours.T.astype(np.uint16) * 257
    if time is not None:
        las.gps_time = time
    las.write(str(path))


def write_e57(path: Path, parts: list[FloatArray], poses: list[tuple[FloatArray, FloatArray]]) -> None:
    """``poses``: (quaternion w x y z, move) of each part, whose points are in its own scanner's frame."""
    import pye57

    file = pye57.E57(str(path), mode="w")
    for points, (rotation, move) in zip(parts, poses, strict=True):
        data = {f"cartesian{a}": np.ascontiguousarray(points[:, k]) for k, a in enumerate("XYZ")}
        file.write_scan_raw(data, rotation=rotation, translation=move)
    file.close()


def write_obj(path: Path, points: FloatArray, faces: IntArray | None = None) -> None:
    rows = [f"v {x!r} {y!r} {z!r}" for x, y, z in points.tolist()]
    rows += [f"f {a} {b} {c}" for a, b, c in ((faces + 1).tolist() if faces is not None else [])]
    path.write_text("\n".join(rows) + "\n")


def write_ascii_stl(path: Path, points: FloatArray, faces: IntArray) -> None:
    rows = ["solid slab"]
    for corners in points[faces].tolist():
        rows += ["facet normal 0 0 0", " outer loop"]
        rows += [f"  vertex {x!r} {y!r} {z!r}" for x, y, z in corners]
        rows += [" endloop", "endfacet"]
    path.write_text("\n".join([*rows, "endsolid slab"]) + "\n")


def write_binary_stl(path: Path, points: FloatArray, faces: IntArray) -> None:
    table = np.zeros(len(faces), [("n", "<f4", (3,)), ("v", "<f4", (3, 3)), ("a", "<u2")])
    table["v"] = points[faces]
    path.write_bytes(b"slab".ljust(80, b" ") + len(faces).to_bytes(4, "little") + table.tobytes())


def gltf_document(
    points: FloatArray, faces: IntArray | None, move: FloatArray
) -> tuple[dict[str, object], bytes]:
    """(document, buffer) of a y-up mesh or cloud under two nodes: one moves, its child holds the geometry."""
    vertices = points.astype("<f4")
    data = vertices.tobytes()
    accessor = {"bufferView": 0, "componentType": 5126, "count": len(points), "type": "VEC3",
                "min": vertices.min(axis=0).tolist(), "max": vertices.max(axis=0).tolist()}  # fmt: skip
    views: list[dict[str, int]] = [{"buffer": 0, "byteOffset": 0, "byteLength": len(data)}]
    accessors: list[dict[str, object]] = [accessor]
    primitive: dict[str, object] = {"attributes": {"POSITION": 0}, "mode": 0}
    if faces is not None:
        index = faces.astype("<u4").tobytes()
        views.append({"buffer": 0, "byteOffset": len(data), "byteLength": len(index)})
        accessors.append({"bufferView": 1, "componentType": 5125, "count": faces.size, "type": "SCALAR"})
        primitive = {"attributes": {"POSITION": 0}, "indices": 1, "mode": 4}
        data += index
    document: dict[str, object] = {
        "asset": {"version": "2.0"}, "scene": 0, "scenes": [{"nodes": [0]}],
        "nodes": [{"translation": move.tolist(), "children": [1]}, {"mesh": 0}],
        "meshes": [{"primitives": [primitive]}], "accessors": accessors, "bufferViews": views,
        "buffers": [{"byteLength": len(data)}],
    }  # fmt: skip
    return document, data


def write_glb(path: Path, document: dict[str, object], data: bytes) -> None:
    text = json.dumps(document).encode()
    text += b" " * (-len(text) % 4)
    data += b"\0" * (-len(data) % 4)
    length = 12 + 8 + len(text) + 8 + len(data)
    path.write_bytes(
        b"glTF" + (2).to_bytes(4, "little") + length.to_bytes(4, "little")
        + len(text).to_bytes(4, "little") + b"JSON" + text
        + len(data).to_bytes(4, "little") + b"BIN\0" + data
    )  # fmt: skip
