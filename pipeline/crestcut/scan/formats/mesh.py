"""OBJ, GLB/glTF and STL through trimesh, without letting it merge, drop or round anything; and
which triangles of a mesh only bridge a hole."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any
from urllib.parse import unquote

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.plain_files import named_beside
from crestcut.scan.formats.raw import RawScan, eight_bit, truncated, unreadable
from crestcut.scan.placing.rounding import quantum_of
from crestcut.scan.records import Bridge

# what is matched is never given back (++, *+): a line of many digits would cost their number squared
_NUMBER = rb"[-+]?+(?:\d++(?:\.\d*+)?+|\.\d++)(?:[eE][-+]?+\d++)?+|[-+]?+(?:nan|inf)\w*+"
_BAD_VERTEX = re.compile(
    rb"(?mi)^v[ \t]++(?!(?:" + _NUMBER + rb")(?:[ \t]++(?:" + _NUMBER + rb")){2,}+[ \t]*+\r?$)[^\n]*+"
)
_CORNER = rb"-?\d[\d/-]*+"
_BAD_FACE = re.compile(
    rb"(?m)^f[ \t]++(?!" + _CORNER + rb"(?:[ \t]++" + _CORNER + rb"){2,}+[ \t]*+\r?$)[^\n]*+"
)
_RELATIVE = re.compile(rb"(?m)^f[^\n]*[ \t]-\d")
# triangles that bridge what nobody measured:
# times the usual longest side, seen from above: an app's own meshes reach 1.6 times (two real and made ones)
FACTOR = 4.0
SMALLEST = 0.15  # m: a gap that a tyre's contact covers is no hole
USUAL = 2.5  # times the median side: up to here a triangle is of the usual size
DENSE = 0.4  # share of the area in triangles of usual size from which the rest of a mesh counts as dense


def stack_columns(columns: Mapping[str, NDArray], *names: str) -> NDArray | None:
    """(n, len(names)) of the named columns in one type, or None where any is missing."""
    if not all(name in columns for name in names):
        return None
    return np.column_stack([np.asarray(columns[name]).reshape(-1) for name in names])


def triangles(faces: Any, points: int, path: Path) -> NDArray[np.int64] | None:
    """Faces of three or more corners as triangles, (m, 3); None where there are none."""
    if faces is None or len(faces) == 0:
        return None
    from trimesh.geometry import triangulate_quads

    corners = np.asarray(triangulate_quads(faces), dtype=np.int64)
    if len(corners) == 0:
        return None
    if corners.min() < 0 or corners.max() >= points:
        raise CrestcutError("a face names a vertex that is not there", str(path), "copy or export it again")
    return corners


def read_obj(path: Path) -> RawScan:
    """Vertices, the colours behind them, and faces of an OBJ; a cloud where it has no faces."""
    text = path.read_bytes()
    for pattern, kind in ((_BAD_VERTEX, "vertex"), (_BAD_FACE, "face")):
        if bad := pattern.search(text):
            number = text.count(b"\n", 0, bad.start()) + 1
            raise CrestcutError(
                f"line {number} is not a whole {kind}; the file may be cut short",
                str(path),
                "copy or export it again",
            )
    if not re.search(rb"(?m)^v[ \t]", text):
        raise CrestcutError("no vertices in the file", str(path), "export the scan again")
    if (back := _RELATIVE.search(text)) and re.search(rb"(?m)^v[ \t]", text[back.start() :]):
        raise CrestcutError(
            "faces count back from vertices that follow later", str(path), "export it again as GLB or PLY"
        )
    return gather(path, "OBJ", {"file_type": "obj", "skip_materials": True, "group_material": False})


def read_stl(path: Path) -> RawScan:
    """Triangles of an ASCII or binary STL."""
    with path.open("rb") as file:
        head = file.read(4096)
    ascii_file = head.lstrip().startswith(b"solid") and b"facet" in head
    if ascii_file:
        _check_ascii_stl(path)
    elif len(head) < 84 or path.stat().st_size != (whole := 84 + 50 * int.from_bytes(head[80:84], "little")):
        size = f"{path.stat().st_size:,}"
        raise truncated(path, "84 bytes or more" if len(head) < 84 else f"{whole:,} bytes", size)
    return gather(path, "STL, ascii" if ascii_file else "STL, binary", {"file_type": "stl"})


def _check_ascii_stl(path: Path) -> None:
    text = path.read_bytes()
    starts, ends = (
        len(re.findall(pattern, text)) for pattern in (rb"(?m)^[ \t]*+facet\b", rb"(?m)^[ \t]*+endfacet\b")
    )
    if starts != ends or not re.search(rb"(?m)^[ \t]*+endsolid", text):
        raise truncated(path, f"{starts:,} whole facets and the end line", f"{ends:,}")


def gather(path: Path, kind: str, options: dict[str, Any]) -> RawScan:
    """Everything that trimesh finds in a file, moved by its node transforms, as one cloud or one mesh.

    Where a file has both faces and loose points, the faces count and the loose points are said in a note.
    """
    meshes, clouds, quantum = _load(path, kind, options)
    if not meshes and not clouds:
        raise CrestcutError("no points or faces in the file", str(path), "export the scan again")
    parts = meshes or clouds
    points = np.concatenate([np.asarray(p.vertices, dtype=np.float64) for p in parts])
    faces, start = [], 0
    for part in meshes:
        faces.append(np.asarray(part.faces, dtype=np.int64) + start)
        start += len(part.vertices)
    colours = [c for part in parts if (c := _colours(part)) is not None]
    notes = (f"{path.name}: loose points beside the mesh are left out",) if meshes and clouds else ()
    return RawScan(
        format=kind,
        points=points,
        faces=triangles(np.concatenate(faces), len(points), path) if faces else None,
        colours=eight_bit(np.concatenate(colours)) if len(colours) == len(parts) else None,
        notes=notes,
        quantum=quantum,
    )


def _load(path: Path, kind: str, options: dict[str, Any]) -> tuple[list[Any], list[Any], float]:
    """Meshes and point clouds of a file in their scene positions, and what they were rounded to before they
    were put there."""
    import trimesh

    try:
        scene = trimesh.load_scene(
            path, resolver=_beside(path), process=False, maintain_order=True, **options
        )
        placed = scene.dump()
    except CrestcutError:
        raise
    except Exception as error:
        raise unreadable(path, kind, error) from None
    meshes = [g for g in placed if isinstance(g, trimesh.Trimesh) and len(g.faces)]
    clouds = [g for g in placed if isinstance(g, trimesh.PointCloud) and len(g.vertices)]
    return meshes, clouds, max((_quantum(scene, n) for n in scene.graph.nodes_geometry), default=0.0)


def _quantum(scene: Any, node: str) -> float:
    """What the coordinates of a node's geometry are rounded to, as large as they are in the scene."""
    matrix, name = scene.graph[node]
    vertices = getattr(scene.geometry[name], "vertices", np.empty((0, 3)))
    return quantum_of(vertices) * float(np.linalg.norm(matrix[:3, :3], axis=0).max())


def _beside(path: Path) -> Any:
    """What trimesh asks for the files that ``path`` names: plain ones in its own folder, nothing else."""
    from trimesh.resolvers import Resolver

    class Beside(Resolver):
        def __init__(self) -> None:
            pass

        def get(self, key: str) -> bytes:
            mend = "put it beside the scan, or export one file"
            return named_beside(path, unquote(key), mend).read_bytes()

        def write(self, name: str, data: Any) -> None:
            raise NotImplementedError(name)

        def namespaced(self, namespace: str) -> Any:
            return self

        def keys(self) -> list[str]:
            return []

    return Beside()


def _colours(part: Any) -> NDArray[np.uint8] | None:
    """Vertex colours (n, 3), None where the file has none (trimesh would invent grey)."""
    if hasattr(part, "faces"):
        if part.visual.kind != "vertex":
            return None
        return np.asarray(part.visual.vertex_colors)[:, :3]
    return (
        np.asarray(part.colors)[:, :3]
        if part.colors is not None and len(part.colors) == len(part.vertices)
        else None
    )


def edge_lengths(points: FloatArray, faces: NDArray[np.int64]) -> FloatArray:
    """Lengths (m, 3) of the sides of each triangle, in the unit of ``points``."""
    corner = points[faces]
    return np.linalg.norm(corner - np.roll(corner, 1, axis=1), axis=2)


def bridging(points: FloatArray, faces: NDArray[np.int64]) -> BoolArray:
    """Which triangles (m,) of a mesh only bridge a hole; points (n, 3) m, z up, faces (m, 3).

    A scanning app closes a gap with a few triangles from rim to rim. A mesh that was simplified has large
    ones everywhere instead, and those are as good as the rest: what counts is where most of the area lies.

    The longest side of each is taken seen from above, so that tall triangles on walls and kerbs do not count.
    Where most of the area is in triangles of the median's size, those over ``FACTOR`` medians are holes; in
    a simplified mesh the size that half of the area has stands for the median.
    """
    corner = points[faces]
    longest = edge_lengths(points * (1.0, 1.0, 0.0), faces).max(axis=1)
    area = np.linalg.norm(np.cross(corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0]), axis=1)
    whole = float(area.sum())
    if not whole > 0.0:
        return np.zeros(len(faces), bool)
    usual = float(np.median(longest[area > 0]))
    if area[longest <= USUAL * usual].sum() < DENSE * whole:
        order = np.argsort(longest, kind="stable")
        usual = float(longest[order][np.searchsorted(np.cumsum(area[order]), whole / 2)])
    return np.asarray((longest > max(FACTOR * usual, SMALLEST)) & (area > 0))


def bridges(points: FloatArray, faces: NDArray[np.int64]) -> tuple[Bridge, ...]:
    """The holes that triangles (m, 3) bridge, those that share a corner as one; largest first."""
    if len(faces) == 0:
        return ()
    from scipy import sparse

    n = len(points)
    ends = np.concatenate([faces[:, :2], faces[:, 1:]])
    joined = sparse.coo_matrix((np.ones(len(ends), bool), (ends[:, 0], ends[:, 1])), shape=(n, n))
    label = sparse.csgraph.connected_components(joined, directed=False)[1][faces[:, 0]]
    corner = points[faces]
    side = corner[:, 1:, :2] - corner[:, :1, :2]
    area = np.abs(side[:, 0, 0] * side[:, 1, 1] - side[:, 0, 1] * side[:, 1, 0]) / 2.0
    found = []
    for k in np.unique(label):
        mine = corner[label == k][..., :2].reshape(-1, 2)
        low, high = mine.min(axis=0), mine.max(axis=0)
        x, y = (low + high) / 2
        size = (float(high[0] - low[0]), float(high[1] - low[1]))
        found.append(Bridge(float(area[label == k].sum()), float(x), float(y), size, int((label == k).sum())))
    return tuple(sorted(found, key=lambda b: -b.area))
