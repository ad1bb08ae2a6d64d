"""Laying one pass of a slab on another: our fit against Open3D's robust point-to-plane ICP, on pairs of known
shift, turn, tilt and height.

python tests/bench/register.py [pairs of each kind]
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
from history import figure
from scipy.spatial.transform import Rotation

HERE = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(HERE), str(HERE / "scan")]
Array = np.ndarray
Laid = tuple[Array, Array]  # rotation (3, 3) and move (3,), m: reference = rotation @ moving + move
GATES = (0.30, 0.15, 0.08, 0.05)  # m, as ours
FAILED = (0.005, 0.020)  # m: further off in height, or further off in plan than at the start by so much


def scenes(seed: int) -> dict[str, tuple[Array, Array, Callable[[Array, Array], Array]]]:
    """Reference and second pass (n, 3) m, as they truly lie, and the ground under both."""
    from scan_scene import cluttered_cloud, ground, slab_cloud, smooth_warp

    def flat(points: Array) -> Array:
        return points - [0, 0, 1] * ground(points[:, 0], points[:, 1])[:, None]

    def warped(points: Array, k: int) -> Array:
        return points + np.outer(smooth_warp(points, k), [0, 0, 1])

    a, b = (slab_cloud(60_000, 2 * seed + k) for k in (2, 3))
    c, d = (cluttered_cloud(60_000, 2 * seed + k) for k in (2, 3))
    one, two = 100 + 2 * seed, 101 + 2 * seed
    steep = np.array([1.0, 1.0, 2.0])
    level = lambda x, y: 0 * x  # noqa: E731
    moved = d + [0.4, 0.3, 0] * (d[:, 2] > ground(d[:, 0], d[:, 1]) + 0.15)[:, None]  # all but the kerb
    return {
        "plane, bare, 4 mm noise": (flat(a), flat(b), level),
        "plane, bare, 5 mm warp": (warped(flat(a), one), warped(flat(b), two), level),
        "plane, boxes, warp": (warped(flat(c), one), warped(flat(d), two), level),
        "crest 24 %, bare, warp": (
            warped(a * steep, one), warped(b * steep, two), lambda x, y: 2 * ground(x, y)
        ),
        "crest 12 %, boxes, no warp": (c, d, ground),
        "crest 12 %, boxes, warp": (warped(c, one), warped(d, two), ground),
        "the same, half overlap": (
            warped(c, one)[c[:, 0] < 4.0], warped(d, two)[d[:, 0] > 2.0], ground
        ),
        "the same, things moved": (warped(c, one), warped(moved, two), ground),
    }  # fmt: skip


def ours(reference: Array, moving: Array) -> Laid:
    from crestcut.scan.registering.register import Reference, register

    fit = register(Reference(reference), moving)
    return fit.rotation, fit.move


def library(kernel: str) -> Callable[[Array, Array], Laid]:
    """Open3D's ICP from coarse to fine, its kernel as wide as the scatter of the pairs at each gate."""
    from crestcut.cut.ray_casting import load_caster

    o3d = load_caster()
    reg = o3d.pipelines.registration
    search = o3d.geometry.KDTreeSearchParamKNN(16)

    def cloud(points: Array) -> object:
        made = o3d.geometry.PointCloud(o3d.utility.Vector3dVector(points)).voxel_down_sample(0.04)
        made.estimate_normals(search)
        return made

    def fit(reference: Array, moving: Array) -> Laid:
        to, of, at = cloud(reference), cloud(moving), np.eye(4)
        for gate in GATES:
            wide = gate / 3
            loss = reg.TukeyLoss(wide) if kernel == "Tukey" else reg.GMLoss(wide / 2)
            how = reg.TransformationEstimationPointToPlane(loss)
            stop = reg.ICPConvergenceCriteria(max_iteration=20)
            at = reg.registration_icp(of, to, gate, at, how, stop).transformation
        return at[:3, :3], at[:3, 3]

    return fit


def wrong(rotation: Array, move: Array, ground: Callable[[Array, Array], Array]) -> Array:
    """What a left-over movement does to a slab of 6 x 4 m: height at a place (rms), plan (mean), m; turn and
    tilt, rad."""
    x, y = (c.ravel() for c in np.meshgrid(np.linspace(0, 6, 61), np.linspace(0, 4, 41)))
    step = 1e-4
    at = np.column_stack([x, y, ground(x, y)])
    gone = at @ rotation.T + move - at
    slope_x, slope_y = ((ground(x + a, y + b) - at[:, 2]) / step for a, b in ((step, 0), (0, step)))
    height = gone[:, 2] - slope_x * gone[:, 0] - slope_y * gone[:, 1]
    turned = Rotation.from_matrix(rotation).as_rotvec()
    plan = float(np.hypot(*gone[:, :2].mean(axis=0)))
    return np.array([np.sqrt(np.mean(height**2)), plan, abs(turned[2]), np.hypot(turned[0], turned[1])])


def main() -> None:
    pairs = int(sys.argv[1]) if len(sys.argv) > 1 else 3
    methods = {"ours": ours, "Open3D Tukey": library("Tukey"), "Open3D GM": library("GM")}
    first = scenes(0)["plane, bare, 4 mm noise"]
    for fit in methods.values():
        fit(*first[:2])  # what is loaded or compiled once is not counted
    print(f"medians of {pairs} pairs")
    for name in scenes(0):
        for method, fit in methods.items():
            errors, before, seconds = [], [], 0.0
            for seed in range(pairs):
                rng = np.random.default_rng([seed, 3])
                reference, second, ground = scenes(seed)[name]
                turn = Rotation.from_rotvec(rng.uniform(-1, 1, 3) * [0.004, 0.004, 0.02]).as_matrix()
                shift = rng.uniform(-1, 1, 3) * [0.05, 0.05, 0.03]
                begin = time.process_time()
                rotation, move = fit(reference, second @ turn.T + shift)
                seconds += time.process_time() - begin
                errors.append(wrong(rotation @ turn, rotation @ shift + move, ground))
                before.append(wrong(turn, shift, ground)[1])
            mid, start = np.median(errors, axis=0), np.median(before) * 1e3
            slid = (e[1] > s + FAILED[1] for e, s in zip(errors, before, strict=True))
            failed = sum(e[0] > FAILED[0] or far for e, far in zip(errors, slid, strict=True))
            figure(f"{name}, {method}: height", float(mid[0]) * 1e3, "mm", "less")
            figure(f"{name}, {method}: plan, of {start:.1f}", float(mid[1]) * 1e3, "mm", "less")
            figure(f"{name}, {method}: turn", float(mid[2]) * 1e3, "mrad", "less")
            figure(f"{name}, {method}: tilt", float(mid[3]) * 1e3, "mrad", "less")
            figure(f"{name}, {method}: processor time", seconds / pairs, "s", "less")
            figure(f"{name}, {method}: failed", failed, "", "less")


if __name__ == "__main__":
    main()
