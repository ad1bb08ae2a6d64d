"""Where the picking page lets a tyre stand: what the program itself would call ground, so that both refuse
the same lines."""

from __future__ import annotations

import numpy as np

from crestcut.grid import BoolArray, FloatArray, GridFrame
from crestcut.surface.build import measured_cells
from crestcut.surface.ground import find_ground
from crestcut.surface.raster import Lattice, sum_cells
from crestcut.travel.ride import over_small_holes

MOST_CELLS = 6_000_000  # of the fine lattice: a larger yard is told apart on wider cells
FINEST = 0.01  # m


def footing(points: FloatArray, frame: GridFrame) -> BoolArray:
    """(ny, nx) at the nodes of ``frame``: measured ground of a kind a tyre may roll on, holes that a tyre
    bridges included.

    points : (n, 3) site metres. The same separation, the same outline and the same bridging as a run's; only
    the window and its cells differ, so that the rim may lie a cell off.
    """
    ny, nx = frame.shape
    steps = max(1, round(frame.cell / FINEST))
    while steps > 1 and ny * nx * steps**2 > MOST_CELLS:
        steps -= 1
    fine = GridFrame(
        frame.origin, frame.angle, frame.cell / steps, ((ny - 1) * steps + 1, (nx - 1) * steps + 1)
    )
    lattice = Lattice.around(fine)
    placed = lattice.place(points)
    ground = find_ground(lattice, placed)
    known = measured_cells(sum_cells(lattice, placed, ground.keep).count, lattice.pitch) & ground.rollable
    flat = np.where(lattice.nodes(known), 0.0, np.nan)
    return ~np.isnan(over_small_holes(flat, fine.cell))[::steps, ::steps]
