"""Everything a whole scan shows, before any line is drawn on it."""

from __future__ import annotations

import math

import numpy as np

from crestcut.base.grid import GridFrame
from crestcut.scan import Scan
from crestcut.terrain.ground.ground import find_ground
from crestcut.terrain.ground.raster import COARSEST, Lattice
from crestcut.terrain.ground.seen import Seen

FAR_SHARE = 0.0005  # of the points at each side that may be strays and do not stretch the window
MOST_POINTS = 1_600_000  # of more, every second, third ... is enough here
LARGEST = 5000.0  # m2: over more there are sites, not slabs
FEWEST = 200  # points


def see_scan(scan: Scan) -> Seen | None:
    """What stands on the ground of a scan or hangs over it, where it is there twice, what of it is no slab;
    None where the scan is too small or too large to hold one slab."""
    points = scan.points[:: math.ceil(len(scan.points) / MOST_POINTS)]
    if len(points) < FEWEST:
        return None
    low, high = np.quantile(points[:, :2], [FAR_SHARE, 1 - FAR_SHARE], axis=0)
    size = high - low
    if not 0.25 < size[0] * size[1] < LARGEST:
        return None
    nx, ny = (np.ceil(size / COARSEST).astype(int) + 1).tolist()
    lattice = Lattice.around(GridFrame((float(low[0]), float(low[1])), 0.0, COARSEST, (ny, nx)))
    return find_ground(lattice, lattice.place(points)).seen
