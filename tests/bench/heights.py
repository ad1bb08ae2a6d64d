"""Heights at a crest from simulated phone scans, against the best round kernel in the same run; steps; joint.

Run: python tests/bench/heights.py [scans]
Data: 3,000 points/m2, 8 mm white noise, 2 x 1.6 m, any angle to the grid; again with patch noise (1.3 mm,
0.1 m) and warp (4.5 mm, Matern-3/2). No averaging removes warp, so it is judged against truth plus warp.
Figures: within 5 mm of the break bias 0.5 mm or less and RMSE 1.1 mm or less; plain parts (over 0.3 m from
the break) 0.6 mm or less; best round kernel beaten twofold on the sharp ones. A 25 mm step: 10 to 90 % within
30 mm. A joint 12 mm wide moves a tyre by 0.2 mm or less: at 8 mm noise it did on 92 scans of 96, at worst by
0.46, where points at its edges are taken for the slab's; one 6 mm deep is mostly not seen there.

With patch noise and warp the first three are beyond every linear unbiased estimator: the bound beside them
is that of universal kriging which is told covariances, noise, place and sharpness of the break (Rasmussen &
Williams 2006, section 2.7).
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "terrain"))
from scipy.linalg import cho_factor, cho_solve
from scipy.spatial.distance import cdist
from surface_scene import Crest, crest_scan, scan_of

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.scan.records import Scan
from crestcut.terrain.build import build_surface, level_means, measured_cells
from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice, sum_cells
from crestcut.terrain.heights.local import CellMeans, fit_local
from crestcut.terrain.joints.find import find_joints
from crestcut.terrain.records import ErrorModel, Surface

NOISE, DENSITY = 0.008, 3000.0  # m, points a square metre
WARP, PATCH = (0.0045, 0.33), (0.0013, 0.05)  # m and m: sd, length
NO_ERROR = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.4, "", "", "")  # the error model is not looked at here
ROUND = (0.02, 0.03, 0.04, 0.05, 0.07, 0.10, 0.14)  # m, sd of the round kernels tried


def smooth_field(
    xy: FloatArray, sd: float, length: float, rng: np.random.Generator, smoother: bool
) -> FloatArray:
    """A random field by 400 plane waves: squared-exponential, or Matern-3/2 (wave numbers of its
    spectrum)."""
    waves = 400
    k = rng.standard_normal((waves, 2)) / length
    if not smoother:  # Matern nu = 3/2 in the plane: Student-t wave numbers with 2 nu = 3 degrees of freedom
        k = k / np.sqrt(rng.chisquare(3, (waves, 1)) / 3)
    phase = rng.uniform(0, 2 * np.pi, waves)
    out = np.zeros(len(xy))
    for wave, p in zip(k, phase, strict=True):
        out += np.cos(xy @ wave + p)
    return sd * np.sqrt(2 / waves) * out


def round_kernels(scan: Scan, frame: GridFrame) -> list[FloatArray]:
    """Gaussian local linear fits, alike in all directions, on the same cells."""
    from scipy import ndimage

    lattice = Lattice.around(frame)
    placed = lattice.place(scan.points)
    cells = sum_cells(lattice, placed, np.ones(len(placed), bool))
    flat = fit_local(CellMeans(cells.points, cells.z, cells.points >= 0, lattice.pitch, 0.008), 30)
    plane = np.nan_to_num(flat.z)
    out = []
    for sd in ROUND:
        s = sd / lattice.pitch
        top = ndimage.gaussian_filter(cells.points * (cells.z - plane), s)
        out.append(lattice.nodes(plane + top / np.maximum(ndimage.gaussian_filter(cells.points, s), 1e-9)))
    # the plain weighted mean about a wide fit: the wide fit itself rounds, so the raw mean without it is
    # tried too
    for sd in ROUND:
        s = sd / lattice.pitch
        weight = np.maximum(ndimage.gaussian_filter(cells.points, s), 1e-9)
        out.append(lattice.nodes(ndimage.gaussian_filter(cells.points * cells.z, s) / weight))
    return out


def bound(hinge: bool, half: float = 0.4) -> float:
    """Standard deviation, m, of the best linear unbiased height at the break of a known hinge, or on a plain
    part, from the points within ``half`` m."""
    xy = np.random.default_rng(0).uniform(-half, half, (int(DENSITY * 4 * half**2), 2))
    matern = np.sqrt(3) * cdist(np.vstack([xy, np.zeros((1, 2))]), xy) / WARP[1]
    warp = WARP[0] ** 2 * (1 + matern) * np.exp(-matern)
    covariance = warp[:-1] + PATCH[0] ** 2 * np.exp(-0.5 * (cdist(xy, xy) / PATCH[1]) ** 2)
    factor = cho_factor(covariance + NOISE**2 * np.eye(len(xy)), lower=True, overwrite_a=True)
    basis = np.column_stack([np.ones(len(xy)), xy, *([np.abs(xy[:, 0])] if hinge else [])])
    known, free = cho_solve(factor, warp[-1]), cho_solve(factor, basis)
    left = np.eye(basis.shape[1])[0] - basis.T @ known
    return float(np.sqrt(WARP[0] ** 2 - warp[-1] @ known + left @ np.linalg.solve(basis.T @ free, left)))


def run(kind: str, scans: int, correlated: bool, grade: float = 0.20) -> str:
    near, plain, pulls, cpu = [], [], [], 0.0
    rounds: list[list[FloatArray]] = [[] for _ in range(2 * len(ROUND))]
    for seed in range(scans):
        rng = np.random.default_rng(1000 + seed)
        crest = Crest(kind, rng.uniform(0, np.pi), grade)
        scan, frame = crest_scan(crest, seed, NOISE, DENSITY)
        xy = frame.node_xy()
        truth = crest.height(xy)
        if correlated:
            both = np.concatenate([scan.points[:, :2], xy.reshape(-1, 2)])
            warp = smooth_field(both, *WARP, rng, False)
            patch = smooth_field(scan.points[:, :2], *PATCH, rng, True)
            points = scan.points.copy()
            points[:, 2] += warp[: len(points)] + patch
            scan, truth = scan_of(points), truth + warp[len(points) :].reshape(truth.shape)
        begin = time.process_time()
        surface = build_surface(scan, frame, "phone", NO_ERROR)
        cpu += time.process_time() - begin
        across = np.abs(crest.across(xy))
        at, far = across < 0.005, across > 0.3
        error = surface.height.values - truth
        near.append(error[at])
        plain.append(error[far])
        pulls.append((error / surface.standard_error.values)[at])
        for k, z in enumerate(round_kernels(scan, frame)):
            rounds[k].append((z - truth)[at])
    n, p, pull = 1000 * np.concatenate(near), 1000 * np.concatenate(plain), np.concatenate(pulls)
    best = min(1000 * np.sqrt(np.mean(np.concatenate(r) ** 2)) for r in rounds)
    rmse = np.sqrt(np.nanmean(n**2))
    return (
        f"{kind:6s} {100 * grade:3.0f} % {'patch+warp' if correlated else 'white':10s} {scans:4d}"
        f"   {np.nanmean(n):+6.2f} {rmse:6.2f}"
        f"   {np.sqrt(np.nanmean(p**2)):6.2f}   {np.sqrt(np.nanmean(pull**2)):5.2f}"
        f"   {best:6.2f} ({best / rmse:3.1f}x)   {cpu / scans:6.2f}"
    )


def steps(scans: int) -> str:
    """10 to 90 % of a 25 mm step, mm, at as many angles as scans."""
    widths = []
    for seed in range(scans):
        crest = Crest("step", np.pi * seed / scans)
        surface = build_surface(*crest_scan(crest, seed), "phone", NO_ERROR)
        xy = surface.height.frame.node_xy()
        across = crest.across(xy)
        fall = surface.height.values - crest.height(xy) - np.where(across > 0, 0.025, 0.0)
        edges = np.arange(-0.06, 0.06, 0.005)
        inside = [(across >= b) & (across < b + 0.005) for b in edges]
        edges = edges[[bool(m.any()) for m in inside]]  # nodes 10 mm apart may miss every other one
        means = 1000 * np.array([np.nanmean(fall[m]) for m in inside if m.any()])
        wide = np.interp(22.5, -means, edges) - np.interp(2.5, -means, edges)
        widths.append(1000 * wide)
    return (
        f"25 mm step, {scans} scans: 10 to 90 % within {np.median(widths):.0f} mm, at worst {max(widths):.0f}"
    )


def tyre(surface: Surface, radius: float = 0.315) -> FloatArray:
    """Lowest point of a 0.2 m wide tyre along the middle row, m: dilation by a disk, flat across."""
    h, cell = surface.height.values, surface.height.frame.cell
    middle, k = h.shape[0] // 2, int(0.2 / cell)
    profile = h[middle - int(0.1 / cell) : middle + int(0.1 / cell) + 1].max(axis=0)
    drop = radius - np.sqrt(radius**2 - (np.arange(-k, k + 1) * cell) ** 2)
    return np.array([(profile[i - k : i + k + 1] - drop).max() for i in range(k, len(profile) - k)])


SHAPES = (  # what is no joint, by the distance from its line
    ("plain slabs", lambda v: 0 * v),
    ("sags of two 20 % slopes", lambda v: 0.2 * np.abs(v)),
    ("crests of 20 %", lambda v: -0.2 * np.maximum(v, 0)),
    ("steps of 25 mm", lambda v: np.where(v > 0, -0.025, 0.0)),
)


def joint(scans: int, noise: float, width: float, depth: float, first: int = 0) -> str:
    """How far a joint moves a tyre at its worst place, the same noise with and without it, and how far the
    points it swallows do once gone; and the pull of the surface on it."""
    moved: list[list[float]] = [[], []]
    pulls = []
    for seed in range(first, first + scans):
        scan, frame = crest_scan(Crest("sharp", 0.0, at=(5.0, 0.0)), seed, noise)
        lean = 0.3 if first == 0 else 0.05 + 0.11 * (seed % 10)
        inside = np.abs(scan.points[:, 0] + lean * scan.points[:, 1]) < width / 2
        sunk = scan.points - depth * inside[:, None] * (0, 0, 1)
        bare = tyre(build_surface(scan, frame, "phone", NO_ERROR))
        for points, out in zip((sunk, scan.points[~inside]), moved, strict=True):
            surface = build_surface(scan_of(points), frame, "phone", NO_ERROR)
            out.append(1000 * float(np.abs(tyre(surface) - bare).max()))
            if out is moved[0]:
                xy = frame.node_xy()
                on = np.abs(xy[..., 0] + lean * xy[..., 1]) < width / 2
                truth = 0.02 * xy[..., 0] + 0.01 * xy[..., 1]
                pulls.append(((surface.height.values - truth) / surface.standard_error.values)[on])
    words = [f"{np.median(m):5.2f} {np.percentile(m, 95):5.2f} {max(m):5.2f}" for m in moved]
    pull = np.sqrt(np.nanmean(np.concatenate(pulls) ** 2))
    return (
        f"{1000 * width:5.0f} {1000 * depth:6.0f} {1000 * noise:6.0f} {scans:6d}"
        f"    {words[0]}    {words[1]}    {pull:5.2f}"
    )


def taken_for_joints(scans: int, noise: float) -> str:
    """Scans on which points were raised or left out for a joint that is not there."""
    counts = []
    for name, shape in SHAPES:
        found = 0
        for seed in range(scans):
            c, s = np.cos(0.4 + seed), np.sin(0.4 + seed)

            def extra(xy: FloatArray, c: float = c, s: float = s, shape=shape) -> FloatArray:  # type: ignore[no-untyped-def]
                return shape(xy[:, 0] * c + xy[:, 1] * s)

            scan, frame = crest_scan(Crest("sharp", 0.0, at=(5.0, 0.0)), 2000 + seed, noise, extra=extra)
            lattice = Lattice.around(frame)
            placed = lattice.place(scan.points)
            ground = find_ground(lattice, placed)
            cells = sum_cells(lattice, placed, ground.keep)
            mask = measured_cells(cells.points, lattice.pitch)
            means = level_means(cells, mask, lattice.pitch, ground.noise)
            found += find_joints(means, placed, ground.keep).any
        counts.append(f"{found} of {scans} {name}")
    return f"taken for a joint at {1000 * noise:.0f} mm noise: " + ", ".join(counts)


def joints(scans: int) -> None:
    """The figure's own joint first; others at other leans, from other scans."""
    print("joint: mm; a tyre moved by (median, 95th percentile, worst)")
    print("width  depth  noise  scans      with the joint       its points taken away    pull on it")
    print(joint(scans, 0.008, 0.012, 0.025), flush=True)
    for noise, width, depth in (
        (0.008, 0.012, 0.012),
        (0.008, 0.005, 0.025),
        (0.008, 0.012, 0.006),
        (0.004, 0.012, 0.006),
        (0.002, 0.012, 0.006),
        (0.001, 0.005, 0.006),
        (0.001, 0.015, 0.025),
    ):
        print(joint(max(scans // 4, 2), noise, width, depth, 500), flush=True)
    for noise in (0.002, 0.008):
        print(taken_for_joints(scans, noise), flush=True)


def main() -> None:
    scans = int(sys.argv[1]) if len(sys.argv) > 1 else 24
    print("crest   fold noise      scans   bias   RMSE   plain   pull   best round kernel   CPU s a scan")
    print("(mm; bias, RMSE and pull, error over its standard error, within 5 mm of the break)")
    for correlated in (False, True):
        for kind in ("sharp", "round", "plan"):
            print(run(kind, scans, correlated), flush=True)
        print(run("sharp", scans, correlated, 0.10), flush=True)
    at, plain = 1000 * bound(True), 1000 * bound(False)
    print(
        f"bound for patch+warp: {at:.2f} mm at a sharp break known to be one and where,"
        f" {plain:.2f} mm on plain parts"
    )
    print(steps(scans))
    joints(scans)


if __name__ == "__main__":
    main()
