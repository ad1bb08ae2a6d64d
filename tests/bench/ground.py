"""Ground against labels on simulated clutter. Run: python tests/bench/ground.py

Figures: 0.5 % or less of the points on objects over 25 mm high taken for ground; 1 % or less of the slab's
points lost.
"""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "surface"))
from surface_scene import GHOST, KERB, LAWN, OBJECT, OVERHANG, SLAB, clutter_scan

from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice


def main() -> None:
    print(
        "noise  points/m2 seed | objects as ground % | slab lost % | overhang, ghosts | kerb, lawn kept % |"
    )
    print("  ... and how much of slab, kerb and lawn the slab mask holds, %")
    for noise, density in ((0.0, 10000.0), (0.004, 6000.0), (0.006, 6000.0), (0.008, 3000.0)):
        for seed in range(3):
            scene = clutter_scan(seed, noise, density)
            lattice = Lattice.around(scene.frame)
            placed = lattice.place(scene.scan.points)
            ground = find_ground(lattice, placed)
            i, j = (np.rint(placed[:, k]).astype(int) for k in (0, 1))
            inside = (i >= 0) & (j >= 0) & (i < lattice.shape[1]) & (j < lattice.shape[0])
            of = {k: inside & (scene.label == k) for k in range(6)}
            tall = of[OBJECT] & (scene.stands > 0.025)
            mask = ground.slab[np.clip(j, 0, lattice.shape[0] - 1), np.clip(i, 0, lattice.shape[1] - 1)]
            share = [
                100 * ground.keep[m].mean()
                for m in (tall, of[SLAB], of[OVERHANG], of[GHOST], of[KERB], of[LAWN])
            ]
            masks = [100 * mask[of[k]].mean() for k in (SLAB, KERB, LAWN)]
            print(
                f"{noise * 1000:4.0f} mm {density:8.0f} {seed:4d} | {share[0]:8.2f} | {100 - share[1]:8.2f} |"
                f" {share[2]:6.2f} {share[3]:6.2f} |"
                f" {share[4]:6.1f} {share[5]:6.1f} | {masks[0]:6.1f} {masks[1]:6.1f} {masks[2]:6.1f}"
            )


if __name__ == "__main__":
    main()
