"""Makes the sample scans of the invented courtyard again, byte for byte: ``python sample_scans/make.py``.

apron.laz               the first walk, z up, its frame is the courtyard's
apron_second_walk.laz   the same slab walked again: its own errors, its own frame, turned and moved
apron_after.laz         the slab walked once more after the work, in a frame of its own: see hand_cut.py,
                        and readings.py, which makes it anew with all else that hangs on the plan
apron_mesh_y_up.glb     a third walk as an app would export it: a coarse mesh, y up
kiln_room.laz           a workshop floor, from a scanner on a tripod; the floor itself is ``kiln_room.floor``
truth.json              what they were made from; the surface itself is ``courtyard.ground``
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

import courtyard
import hand_cut
import kiln_room
import numpy as np
from walk import PATCH, PATCH_HALF, RANGE_NOISE, WARP, WARP_HALF, Pose, Walk, walk

HERE = Path(__file__).resolve().parent
SECOND = Pose(yaw=0.061, move=(0.37, -0.24, 0.085))
AFTER = Pose(yaw=-0.087, move=(-0.31, 0.52, 0.040))
RAYS = 330_000
ROOM_RAYS = 560_000


def write_laz(scan: Walk, path: Path) -> None:
    """LAS 1.2, point format 3 (time, colour), 0.1 mm steps, no coordinate system: as a phone app exports."""
    import laspy

    header = laspy.LasHeader(point_format=3, version="1.2")
    header.scales, header.offsets = np.full(3, 1e-4), np.zeros(3)
    header.generating_software, header.system_identifier = "crestcut samples", "simulated walk"
    header.creation_date = None
    cloud = laspy.LasData(header)
    cloud.x, cloud.y, cloud.z = scan.xyz.T
    cloud.gps_time = np.round(scan.time, 6)
    cloud.red, cloud.green, cloud.blue = (scan.colour.astype(np.uint16) * 257).T
    cloud.write(str(path))


def write_mesh(scan: Walk, path: Path, edge: float = 0.06) -> None:
    """A height mesh on jittered 60 mm cells, y up, float32: what is left of a walk after an app has tidied
    it.
    """
    import trimesh

    xyz, colour, faces = _coarse(scan, edge)
    y_up = np.column_stack([xyz[:, 0], xyz[:, 2], -xyz[:, 1]])
    mesh = trimesh.Trimesh(y_up, faces, vertex_colors=colour, process=False)
    path.write_bytes(mesh.export(file_type="glb", include_normals=False))


def _coarse(scan: Walk, edge: float) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Vertices (n, 3), colours (n, 4) uint8, faces (m, 3): the median of each cell's points, cells joined two
    by two.
    """
    low = scan.xyz[:, :2].min(axis=0)
    cell = np.floor((scan.xyz[:, :2] - low) / edge).astype(int)
    ny, nx = cell[:, 1].max() + 1, cell[:, 0].max() + 1
    flat = cell[:, 1] * nx + cell[:, 0]
    order = np.argsort(flat, kind="stable")
    ends = np.flatnonzero(np.diff(flat[order])) + 1
    groups = [g for g in np.split(order, ends) if len(g) >= 3]
    xyz = np.array([np.median(scan.xyz[g], axis=0) for g in groups])
    colour = np.array([[*np.median(scan.colour[g], axis=0), 255] for g in groups]).astype(np.uint8)
    number = np.full((ny, nx), -1)
    number.flat[[flat[g[0]] for g in groups]] = np.arange(len(groups))
    a, b, c, d = number[:-1, :-1], number[:-1, 1:], number[1:, :-1], number[1:, 1:]
    faces = np.concatenate([np.stack(t, -1).reshape(-1, 3) for t in ((a, b, d), (a, d, c))])
    return xyz, colour, faces[(faces >= 0).all(axis=1)]


def truth() -> dict[str, object]:
    """What a test may want to know without reading the generator."""
    names = (
        "GUTTER",
        "CREST",
        "FALL",
        "DRAIN",
        "ROAD_GRADE",
        "APRON_GRADE",
        "YARD_GRADE",
        "FALL_GRADE",
        "KILN_GRADE",
    )
    return {
        "units": "metres, rise over run; heights are courtyard.ground(x, y), 'slab' without joints",
        "lengths_and_grades": {name.lower(): getattr(courtyard, name) for name in names},
        "slab_y": courtyard.SLAB_Y, "kerb_y": courtyard.KERB_Y, "joints_x": courtyard.JOINTS,
        "marks": courtyard.MARKS,
        "hole": courtyard.HOLE, "planter": courtyard.PLANTER, "bin": courtyard.BIN,
        "leaves": courtyard.LEAVES,
        "errors": {
            "range_noise": RANGE_NOISE, "patch": PATCH, "patch_half": PATCH_HALF, "warp": WARP,
            "warp_half": WARP_HALF,
        },
        "second_walk": {"yaw": SECOND.yaw, "move": SECOND.move},
        "kiln_room": {
            "humps": kiln_room.HUMPS, "hollow": kiln_room.HOLLOW, "column": kiln_room.COLUMN,
            "room": kiln_room.ROOM, "fall": kiln_room.FALL,
            "errors": {
                "range_noise": kiln_room.RANGE_NOISE, "patch": kiln_room.PATCH, "warp": kiln_room.WARP
            },
        },
        "walk_after_the_work": {
            "stray": hand_cut.STRAY,
            "yaw": AFTER.yaw, "move": AFTER.move, "litres": round(litres_cut(), 3),
            "over": hand_cut.OVER, "uneven": hand_cut.UNEVEN, "uneven_half": hand_cut.UNEVEN_HALF,
        },
    }  # fmt: skip


def litres_cut() -> float:
    """Litres that the hand took off."""
    (x, y), (rows, columns), step = hand_cut.CORNER, hand_cut.SIZE, hand_cut.STEP / 2
    x, y = np.meshgrid(x + step * np.arange(2 * columns), y + step * np.arange(2 * rows))
    return float(hand_cut.removed(x, y).sum()) * 0.01**2 * 1000


def main(folder: Path = HERE) -> None:
    """Writes all samples into ``folder``."""
    write_laz(walk(1, RAYS), folder / "apron.laz")
    write_laz(walk(2, RAYS, SECOND), folder / "apron_second_walk.laz")
    write_mesh(walk(3, RAYS), folder / "apron_mesh_y_up.glb")
    write_laz(kiln_room.scan(4, ROOM_RAYS), folder / "kiln_room.laz")
    write_after(folder)


def write_after(folder: Path) -> None:
    """What hangs on the depths that were cut: the walk after the work, and the truth of it."""
    write_laz(walk(4, RAYS, AFTER, hand_cut.removed), folder / "apron_after.laz")
    (folder / "truth.json").write_text(json.dumps(truth(), indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else HERE)
