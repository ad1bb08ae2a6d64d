"""Ground against labels on simulated clutter. Run: python tests/bench/ground.py

Figures: 0.5 % or less of the points on objects over 25 mm high taken for ground; 1 % or less of the slab's
points lost.
"""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).parents[1] / "terrain"))
from surface_scene import GHOST, KERB, LAWN, OBJECT, OVERHANG, SLAB, clutter_scan

from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice


def main() -> None:

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
            case = f"{noise * 1000:.0f} mm, {density:.0f} a m2, seed {seed}"
            names = ("objects as ground", "slab kept", "overhang", "ghosts", "kerb kept", "lawn kept")
            for name, value in zip(names, share, strict=True):
                figure(f"{case}: {name}", float(value), "%", "more" if "kept" in name else "less")
            for name, value in zip(("slab", "kerb", "lawn"), masks, strict=True):
                figure(f"{case}: of the {name} in the slab's mask", float(value), "%")


if __name__ == "__main__":
    main()
