"""Ground against labels: simulated clutter, and a labelled street tile where the real scans are. Run: python
tests/bench/ground.py

Figures: 0.5 % or less of the points on objects over 25 mm high taken for ground (type II); 1 % or less of the
slab's points lost. Of the street's labelled ground that lies on its own surface 3 % or less lost (type I);
`look` on it in 0.6 GB or less.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from history import figure

sys.path.insert(0, str(Path(__file__).parents[1] / "terrain"))
from street_tile import STREET, street_tile
from surface_scene import GHOST, KERB, LAWN, OBJECT, OVERHANG, SLAB, clutter_scan

from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import Lattice

# the process's own peak, kB: that of a child counts what its parent held when it was made
LOOK = """
import re, sys
from pathlib import Path
from crestcut.apps.cli import main
main(["look", sys.argv[1], "--out", sys.argv[2]], standalone_mode=False)
print(re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text())[1])
"""


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


def street() -> None:
    """A paved street, by a vehicle's scanner; all of it is labelled ground: only type I can be told."""
    if not STREET.exists():
        print("no street tile here: the real scans are not part of the project")
        return
    tile = street_tile(STREET)
    lost = ~tile.keep
    figure("street: labelled ground told to be something else", 100 * float(lost.mean()), "%", "less")
    figure("street: of it off its own surface by 15 mm or more", 100 * float((tile.off > 0.015).mean()), "%")
    for most in (0.008, 0.010, 0.012, np.inf):
        of = (tile.off < 0.015) & (tile.spread < most)
        name = "street: lost of what lies on its surface, " + (
            "known as it may be" if most == np.inf else f"where that is known to {most * 1000:.0f} mm sd"
        )
        figure(name, 100 * float(lost[of].mean()), "%", "less")
        figure(f"{name}: share of the tile", 100 * float(of.mean()), "%")
    with tempfile.TemporaryDirectory() as folder:
        command = [sys.executable, "-c", LOOK, str(STREET), folder]
        peak = subprocess.run(command, check=True, capture_output=True, text=True).stdout.split()[-1]
    figure("street: memory of look", float(peak) / 1e6, "GB", "less")


if __name__ == "__main__":
    main()
    street()
