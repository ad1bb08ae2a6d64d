"""A small slab with a crest, scanned before and after it was ground, and a low cart on it. Invented."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from scipy import ndimage

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.study.making import run_job
from crestcut.study.record import Study

Depth = Callable[[FloatArray, FloatArray], FloatArray]
NOISE = 0.0003  # m, of one point
GRADE, ROUNDING, CREST = 0.08, 0.03, 2.5
BOXES = ((1.0, 0.70, 0.30, 0.20, 0.30), (3.9, -0.72, 0.40, 0.20, 0.30))  # x, y, sizes, m

VEHICLE = """name = "low cart"
wheelbase = "1200 mm"
front_track = "600 mm"
rear_track = "600 mm"
tyre_radius = "150 mm"
tyre_width = "50 mm"
front_overhang = "150 mm"
rear_overhang = "150 mm"
width = "700 mm"
belly_clearance = "100 mm"
[[part]]
name = "tray"
back = ["300 mm", "900 mm"]
across = ["-200 mm", "200 mm"]
clearance = "58 mm"
within = "0.2 mm"
"""
JOB = """title = "Low cart"
[site]
place = "outdoors"
ground = "private"
[scan]
files = ["before.ply"]
unit = "m"
up = "z"
scanner = "total-station"
[vehicle]
file = "cart.toml"
[travel]
line = [[0.4, 0.0], [4.6, 0.0]]
wander = "0 mm"
heading = 0
[clearance]
want = "20 mm"
want_ends = "20 mm"
[cut]
deepest = "25 mm"
[slab]
kind = "plain concrete"
thickness = "200 mm"
thickness_from = "drilled"
steel_depth = "45 mm"
steel_from = "covermeter"
post_tensioned = "no"
post_tensioned_from = "drawing"
heating = "no"
heating_from = "owner in writing"
conduit = "no"
conduit_from = "locating service"
suspended = "no"
suspended_from = "drawing"
permission = "yes"
permission_from = "owner in writing"
"""
COARSE = JOB.replace("[cut]", '[surface]\ncell = "20 mm"\n[cut]')  # done sooner


def height(x: FloatArray, y: FloatArray) -> FloatArray:
    """The slab before the work, m."""
    return -GRADE * np.sqrt((x - CREST) ** 2 + ROUNDING**2) + 0.004 * np.asarray(y)


def walked(
    seed: int, depth: Depth | None = None, turn: float = 0.0, move: tuple[float, float, float] = (0, 0, 0)
) -> FloatArray:
    """Points (n, 3) m of one scan: jittered, noisy, shuffled; turned and moved as another session is."""
    rng = np.random.default_rng(seed)
    x, y = (a.ravel() for a in np.meshgrid(np.arange(0.0, 5.0, 0.011), np.arange(-0.95, 0.95, 0.011)))
    x, y = x + rng.uniform(-0.005, 0.005, len(x)), y + rng.uniform(-0.005, 0.005, len(y))
    z = height(x, y) - (depth(x, y) if depth is not None else 0.0)
    for bx, by, wide, deep, tall in BOXES:
        z[(np.abs(x - bx) < wide / 2) & (np.abs(y - by) < deep / 2)] += tall
    xyz = np.vstack([np.column_stack([x, y, z]), *(_sides(*box) for box in BOXES)])
    xyz[:, 2] += NOISE * rng.standard_normal(len(xyz))
    xyz = xyz[rng.permutation(len(xyz))]
    c, s = np.cos(turn), np.sin(turn)
    return xyz @ np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]]) + np.asarray(move)


def _sides(bx: float, by: float, wide: float, deep: float, tall: float) -> FloatArray:
    """Points (n, 3) on the upright sides of a box, m."""
    around, up = np.arange(-0.5, 0.5, 0.05), np.arange(0.01, tall, 0.01)
    out = []
    for dx, dy in ((0.5, None), (-0.5, None), (None, 0.5), (None, -0.5)):
        a, z = (v.ravel() for v in np.meshgrid(around, up))
        x, y = bx + wide * (a if dx is None else dx), by + deep * (a if dy is None else dy)
        x, y = np.broadcast_arrays(x, y)
        out.append(np.column_stack([x, y, height(x, y) + z]))
    return np.vstack(out)


def write_ply(points: FloatArray, path: Path) -> Path:
    """Binary PLY of doubles."""
    head = f"ply\nformat binary_little_endian 1.0\nelement vertex {len(points)}\n"
    head += "".join(f"property double {axis}\n" for axis in "xyz") + "end_header\n"
    path.write_bytes(head.encode() + np.ascontiguousarray(points, "<f8").tobytes())
    return path


def planned_job(folder: Path, points: FloatArray, job: str = JOB) -> tuple[Path, Study]:
    """The folder with the job, its cart and the scan before the work, and its finished run."""
    write_ply(points, folder / "before.ply")
    (folder / "cart.toml").write_text(VEHICLE)
    (folder / "job.toml").write_text(job)
    done = run_job(folder / "job.toml")
    assert done.report.plan is not None and done.report.plan.deepest > 0.004
    return folder, done


@contextmanager
def planned_once(done: Study) -> Iterator[None]:
    """Within the block the plan of any check is that of this run."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("crestcut.study.making.run_job", lambda path, say: done)
        yield


def of_plan(grid: HeightGrid, share: float = 1.0, over: float = 0.0, shift: float = 0.0) -> Depth:
    """A cut by the plan: a share of its depth, ``over`` m deeper where it cuts at all, moved along it."""
    planned = grid.like(np.nan_to_num(grid.values))

    def depth(x: FloatArray, y: FloatArray) -> FloatArray:
        asked = np.nan_to_num(planned.sample(np.stack([x - shift, y], axis=-1)))
        return np.where(asked > 0, share * asked + over * np.clip(asked / 0.003, 0.0, 1.0), 0.0)

    return depth


@cache
def nothing() -> Depth:
    """No cut at all."""
    return lambda x, y: np.zeros_like(x)


def true_surface(frame: GridFrame, depth: Depth) -> FloatArray:
    """(ny, nx) heights of the slab after ``depth``, m, boxes left out."""
    xy = frame.node_xy()
    return height(xy[..., 0], xy[..., 1]) - depth(xy[..., 0], xy[..., 1])


def inner(mask: np.ndarray, nodes: int) -> np.ndarray:
    """Without its rim."""
    return np.asarray(ndimage.binary_erosion(mask, iterations=nodes))
