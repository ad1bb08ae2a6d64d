"""Heights at a crest from simulated phone scans, against the best round kernel in the same run.

Run: python tests/bench/heights.py [seeds]
Data: 3,000 points/m2, 8 mm white noise, 2 x 1.6 m, any angle to the grid; again with patch noise (1.3 mm,
0.1 m) and warp (4.5 mm, Matern-3/2). No averaging removes warp, so it is judged against truth plus warp.
Figures: within 5 mm of the break bias 0.5 mm or less and RMSE 1.1 mm or less; plain parts (over 0.3 m from
the break) 0.6 mm or less; best round kernel beaten twofold on the sharp ones.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "surface"))
from surface_scene import Crest, crest_scan, scan_of

from crestcut.grid import FloatArray, GridFrame
from crestcut.scan.records import Scan
from crestcut.surface.build import build_surface
from crestcut.surface.local import fit_local
from crestcut.surface.raster import Lattice, sum_cells

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
    flat = fit_local(cells.count, cells.z, cells.count >= 0, 30, lattice.pitch, 0.008)
    plane = np.nan_to_num(flat.z)
    out = []
    for sd in ROUND:
        s = sd / lattice.pitch
        top = ndimage.gaussian_filter(cells.count * (cells.z - plane), s)
        out.append(lattice.nodes(plane + top / np.maximum(ndimage.gaussian_filter(cells.count, s), 1e-9)))
    # the plain weighted mean about a wide fit: the wide fit itself rounds, so the raw mean without it is
    # tried too
    for sd in ROUND:
        s = sd / lattice.pitch
        weight = np.maximum(ndimage.gaussian_filter(cells.count, s), 1e-9)
        out.append(lattice.nodes(ndimage.gaussian_filter(cells.count * cells.z, s) / weight))
    return out


def run(kind: str, seeds: int, correlated: bool) -> str:
    near, plain, seconds = [], [], 0.0
    rounds: list[list[FloatArray]] = [[] for _ in range(2 * len(ROUND))]
    for seed in range(seeds):
        rng = np.random.default_rng(1000 + seed)
        crest = Crest(kind, rng.uniform(0, np.pi))
        scan, frame = crest_scan(crest, seed)
        xy = frame.node_xy()
        truth = crest.height(xy)
        if correlated:
            both = np.concatenate([scan.points[:, :2], xy.reshape(-1, 2)])
            warp = smooth_field(both, 0.0045, 0.33, rng, False)
            patch = smooth_field(scan.points[:, :2], 0.0013, 0.05, rng, True)
            points = scan.points.copy()
            points[:, 2] += warp[: len(points)] + patch
            scan, truth = scan_of(points), truth + warp[len(points) :].reshape(truth.shape)
        begin = time.perf_counter()
        surface = build_surface(scan, frame, "phone")
        seconds += time.perf_counter() - begin
        across = np.abs(crest.across(xy))
        at, far = across < 0.005, across > 0.3
        error = surface.height.values - truth
        near.append(error[at])
        plain.append(error[far])
        if kind != "step":
            for k, z in enumerate(round_kernels(scan, frame)):
                rounds[k].append((z - truth)[at])
    n, p = 1000 * np.concatenate(near), 1000 * np.concatenate(plain)
    best = min((1000 * np.sqrt(np.mean(np.concatenate(r) ** 2)) for r in rounds if r), default=np.nan)
    return (
        f"{kind:6s} {'patch+warp' if correlated else 'white':10s} {seeds:4d}   {np.nanmean(n):+6.2f}"
        f" {np.sqrt(np.nanmean(n**2)):6.2f}"
        f"   {np.sqrt(np.nanmean(p**2)):6.2f}   {best:6.2f}   {seconds / seeds:6.2f}"
    )


def main() -> None:
    seeds = int(sys.argv[1]) if len(sys.argv) > 1 else 24
    print("crest  noise      scans   bias   RMSE   plain   best round kernel   seconds a scan")
    print("(mm, bias and RMSE within 5 mm of the break)")
    for correlated in (False, True):
        for kind in ("sharp", "round", "plan"):
            print(run(kind, seeds, correlated), flush=True)


if __name__ == "__main__":
    main()
