"""The depth to remove as a coloured mesh: PLY in the scan's own coordinates, GLB for viewers.

The PLY is written from structured arrays: of the libraries tried none keeps double coordinates and a float
property beside the colours, and at survey coordinates single precision is a quarter of a metre off.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol, Self

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, HeightGrid
from crestcut.report.pictures.colours import depth_colours, linear_from_srgb
from crestcut.scan import Scan
from crestcut.study import Identity
from crestcut.terrain import Surface

PLY_NAME, GLB_NAME = "depth_to_remove.ply", "depth_to_remove.glb"
DISPLAY_VERTICES = 150_000  # a viewer on a phone still turns this smoothly
PLY_VERTEX = np.dtype([
    ("x", "<f8"), ("y", "<f8"), ("z", "<f8"), ("red", "u1"), ("green", "u1"), ("blue", "u1"), ("depth",
    "<f4"),
])  # fmt: skip
Faces = NDArray[np.int32]  # as they are written: of a long lane there are millions
AT_ONCE = 1 << 18  # vertices reckoned and written at a time
PLY_FACE = np.dtype([("count", "u1"), ("index", "<i4", (3,))])


class Planned(Protocol):
    """Depths to remove on the nodes of the surface, m, NaN not measured; the deepest, m."""

    @property
    def depth(self) -> HeightGrid:
        """m."""

    @property
    def deepest(self) -> float:
        """m."""


class HasDepth(Protocol):
    """What a mesh is written from: a ``Report``, or a floor's answer."""

    @property
    def surface(self) -> Surface:
        """As it is today."""

    @property
    def scan(self) -> Scan:
        """Whose coordinates the mesh is written in."""

    @property
    def plan(self) -> Planned | None:
        """None where nothing is planned."""

    @property
    def identity(self) -> Identity:
        """What the file says of itself."""


@dataclass(frozen=True, eq=False)
class DepthMesh:
    """site : (n, 3) metres.  faces : (m, 3), counter-clockwise from above.  depth : (n,) metres.

    depth is NaN where not measured.  rgb : (n, 3) sRGB.
    """

    site: FloatArray
    faces: Faces
    depth: FloatArray
    rgb: NDArray[np.uint8]


def depth_grid(report: HasDepth) -> FloatArray:
    """Depth to remove at every node, (ny, nx) metres: 0 where nothing goes, NaN where not measured."""
    height = report.surface.height
    if report.plan is None:
        return np.where(height.measured, 0.0, np.nan)
    return np.where(height.measured, report.plan.depth.values, np.nan)


def depth_mesh(report: HasDepth, stride: int = 1) -> DepthMesh:
    """The surface as it is with its depth to remove, every ``stride``-th node.

    A hole stays a hole: no face spans it. Its nodes are kept as loose vertices with depth NaN, so that
    whoever looks a place up learns that it was not measured; their height is carried over from the nearest
    measured node.
    """
    ground = _Ground.of(report, stride)
    site, depth, rgb = ground.vertices(slice(None))
    return DepthMesh(site, _faces(ground.measured, ground.kept), depth, rgb)


@dataclass(frozen=True, eq=False)
class _Ground:
    """What a mesh is made from: heights, depths (rows, columns) m, which nodes are measured, which kept."""

    frame: GridFrame  # of all nodes
    stride: int
    z: FloatArray
    depth: FloatArray
    measured: BoolArray
    kept: BoolArray
    deepest: float

    @classmethod
    def of(cls, report: HasDepth, stride: int) -> Self:
        """Of every ``stride``-th node."""
        frame = report.surface.height.frame
        pick = (slice(None, None, stride), slice(None, None, stride))
        z = report.surface.height.values[pick]
        measured = ~np.isnan(z)
        kept = ndimage.binary_fill_holes(measured)
        if not measured.all() and measured.any():
            nearest = ndimage.distance_transform_edt(~measured, return_distances=False, return_indices=True)
            z = z[tuple(nearest)]
        deepest = report.plan.deepest if report.plan is not None else 0.0
        return cls(frame, stride, z, depth_grid(report)[pick], measured, kept, deepest)

    def vertices(self, rows: slice) -> tuple[FloatArray, FloatArray, NDArray[np.uint8]]:
        """Site x, y, z (n, 3) m, depth (n,) m and colour (n, 3) of the kept nodes of some rows."""
        j, i = np.nonzero(self.kept[rows])
        j += rows.start or 0
        left = self.depth[j, i]
        uv = np.stack([i * self.stride * self.frame.cell, j * self.stride * self.frame.cell], axis=-1)
        site = np.column_stack([self.frame.to_site(uv), self.z[j, i]])
        some = [left[first : first + AT_ONCE] for first in range(0, max(len(left), 1), AT_ONCE)]
        return site, left, np.concatenate([depth_colours(part, self.deepest) for part in some])


def _faces(measured: BoolArray, kept: BoolArray) -> Faces:
    """Two triangles a square of four measured nodes, one where three are. Indices count kept nodes."""
    return np.concatenate(list(_some_faces(measured, kept, len(kept))))


def _some_faces(measured: BoolArray, kept: BoolArray, rows: int) -> Iterator[Faces]:
    """The same in order, from so many rows of squares at a time."""
    number = np.cumsum(kept.ravel(), dtype=np.int32).reshape(kept.shape) - np.int32(1)
    for kind in range(4):
        for first in range(0, max(len(kept) - 1, 1), rows):
            some = slice(first, first + rows + 1)
            yield _triangles(measured[some], number[some], kind)


def _triangles(measured: BoolArray, number: Faces, kind: int) -> Faces:
    """Squares that lack one of the corners that two triangles share still have one on the other diagonal."""
    near, ahead = number[:-1, :-1], number[:-1, 1:]  # row j at u, u + 1
    left, far = number[1:, :-1], number[1:, 1:]  # row j + 1
    a, b = measured[:-1, :-1], measured[:-1, 1:]
    c, d = measured[1:, :-1], measured[1:, 1:]
    match kind:
        case 0:
            three, where = (near, ahead, far), a & b & d
        case 1:
            three, where = (near, far, left), a & d & c
        case 2:
            three, where = (near, ahead, left), a & b & c & ~d
        case _:
            three, where = (ahead, far, left), b & d & c & ~a
    return np.stack([t[where] for t in three], axis=-1)


def write_depth_ply(report: HasDepth, path: Path) -> None:
    """Write ``depth_to_remove.ply``, some rows of nodes at a time: of a long lane there are millions."""
    ground, frame = _Ground.of(report, 1), report.scan.frame
    rows = max(AT_ONCE // ground.kept.shape[1], 1)
    count = sum(len(some) for some in _some_faces(ground.measured, ground.kept, rows))
    with path.open("wb") as out:
        out.write(_ply_header(report, int(ground.kept.sum()), count).encode("ascii", "replace"))
        for first in range(0, len(ground.kept), rows):
            site, depth, rgb = ground.vertices(slice(first, first + rows))
            vertices = np.empty(len(depth), PLY_VERTEX)
            vertices["x"], vertices["y"], vertices["z"] = frame.to_file(site).T
            vertices["red"], vertices["green"], vertices["blue"] = rgb.T
            vertices["depth"] = depth
            out.write(vertices.tobytes())
        for some in _some_faces(ground.measured, ground.kept, rows):
            faces = np.empty(len(some), PLY_FACE)
            faces["count"], faces["index"] = 3, some
            out.write(faces.tobytes())


def _ply_header(report: HasDepth, vertices: int, faces: int) -> str:
    frame = report.scan.frame
    whose = "the scan's own coordinates"
    if frame.scanned is not None:
        whose = f"east, north, height of the control ({frame.system.words})"
    comments = [
        "depth to remove from a slab",
        *report.identity.lines(),
        f"x y z: {whose}, unit {frame.unit}, {frame.up} up; the surface as it is",
        "depth: metres to remove, 0 nothing to go, nan not measured",
        "loose vertices (in no face) lie in holes of the scan: depth nan, height carried over from the rim",
    ]
    properties = [f"property double {axis}" for axis in "xyz"]
    properties += [f"property uchar {colour}" for colour in ("red", "green", "blue")] + [
        "property float depth"
    ]
    lines = ["ply", "format binary_little_endian 1.0", *(f"comment {text}" for text in comments)]
    lines += [f"element vertex {vertices}", *properties, f"element face {faces}"]
    lines += ["property list uchar int vertex_indices", "end_header"]
    return "\n".join(lines) + "\n"


def display_stride(report: HasDepth) -> int:
    """Every how many nodes the display mesh keeps one."""
    count = int(report.surface.height.measured.sum())
    return max(1, math.ceil(math.sqrt(count / DISPLAY_VERTICES)))


def write_depth_glb(report: HasDepth, path: Path) -> DepthMesh:
    """Write ``depth_to_remove.glb``: metres, y up (glTF 2.0, 3.4), near the origin, holes left open."""
    import trimesh

    mesh = depth_mesh(report, display_stride(report))
    used, faces = np.unique(mesh.faces, return_inverse=True)
    site, depth, rgb = mesh.site[used], mesh.depth[used], mesh.rgb[used]
    middle = (site.min(axis=0) + site.max(axis=0)) / 2 if len(site) else np.zeros(3)
    local = site - middle
    body = trimesh.Trimesh(
        np.stack([local[:, 0], local[:, 2], -local[:, 1]], axis=-1), faces.reshape(-1, 3), process=False
    )
    # COLOR_0 is linear light (glTF 2.0, 3.7.2.1), not sRGB.
    linear = np.rint(linear_from_srgb(rgb) * 255).astype(np.uint8)
    body.visual = trimesh.visual.ColorVisuals(
        body, vertex_colors=np.c_[linear, np.full(len(linear), 255, np.uint8)]
    )
    body.vertex_attributes["_DEPTH"] = depth.astype(np.float32)
    about = report.identity
    body.metadata.update(about.record(), depth="metres to remove, in attribute _DEPTH; 0 nothing to go")
    scene = trimesh.Scene()
    name = f"depth to remove | {about.words()}"  # what a viewer's list of parts shows
    scene.add_geometry(body, geom_name=name, node_name=name)
    scene.metadata.update(about.record())
    frame = report.scan.frame
    scene.metadata["origin"] = [float(v) for v in frame.to_own(middle) * frame.turned_scale]
    scene.metadata["origin_is"] = "metres, scan axes turned z up, of this file's origin; this file is y up"

    def finished(tree: dict) -> None:
        tree["asset"].update(generator=about.tool, extras=about.record())
        _plain_material(tree)

    path.write_bytes(scene.export(file_type="glb", include_normals=True, tree_postprocessor=finished))
    return DepthMesh(local, faces.reshape(-1, 3).astype(np.int32), depth, rgb)


def _plain_material(tree: dict) -> None:
    """Matt and seen from both sides; glTF's default material is metal, which turns vertex colours black."""
    tree["materials"] = [{
        "name": "concrete", "doubleSided": True,
        "pbrMetallicRoughness": {"metallicFactor": 0.0, "roughnessFactor": 0.95},
    }]  # fmt: skip
    for mesh in tree.get("meshes", []):
        for primitive in mesh["primitives"]:
            primitive["material"] = 0
