"""Where the picking page lets a tyre stand: what the program itself would call ground, so that both refuse
the same lines."""

from __future__ import annotations

import math

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, GridFrame
from crestcut.contact import over_small_holes
from crestcut.terrain import Lattice, find_ground, measured_cells, sum_cells

MOST_CELLS = 6_000_000  # of the fine lattice: a larger yard is told apart on wider cells
FINEST = 0.01  # m


def footing(points: FloatArray, frame: GridFrame) -> FloatArray:
    """(ny, nx) at the nodes of ``frame``: 1 measured ground of a kind a tyre may roll on, holes that a tyre
    bridges included; 0.5 where that is in doubt; NaN elsewhere.

    points : (n, 3) site metres. The same separation, the same outline and the same bridging as a run's; only
    the window and its cells differ, so that the rim may lie a cell off. A run lays its square tiles along its
    line, which is not known yet, and a bank between slab and lawn may then fall to either side: both the
    tiles along the frame and those at 45 degrees to it are tried, and where they differ there is doubt.
    """
    ny, nx = frame.shape
    steps = max(1, round(frame.cell / FINEST))
    while steps > 1 and ny * nx * steps**2 > MOST_CELLS:
        steps -= 1
    cell = frame.cell / steps
    straight = GridFrame(frame.origin, frame.angle, cell, ((ny - 1) * steps + 1, (nx - 1) * steps + 1))
    nodes = frame.node_xy()
    along, askew = (_at(_stands(points, f), f, nodes) for f in (straight, _askew(straight)))
    # a rim of a cell or two is the raster's, not a doubt
    doubt = ndimage.binary_opening(along ^ askew, np.ones((3, 3), bool))
    return np.where(doubt, 0.5, np.where(along, 1.0, np.nan))


def _askew(frame: GridFrame) -> GridFrame:
    """A frame at 45 degrees to ``frame`` that covers it."""
    ny, nx = frame.shape
    side = math.ceil((nx + ny) / math.sqrt(2)) + 1  # both sides of the square around the turned rectangle
    middle = frame.to_site(np.array([(nx - 1) / 2, (ny - 1) / 2]) * frame.cell)
    angle = frame.angle + math.pi / 4
    half = (side - 1) / 2 * frame.cell
    c, s = math.cos(angle), math.sin(angle)
    origin = (float(middle[0] - half * (c - s)), float(middle[1] - half * (s + c)))
    return GridFrame(origin, angle, frame.cell, (side, side))


def _at(mask: BoolArray, frame: GridFrame, xy: FloatArray) -> BoolArray:
    """``mask`` at the nodes nearest to site ``xy`` (..., 2)."""
    i, j = np.moveaxis(np.rint(frame.to_grid(xy) / frame.cell).astype(int), -1, 0)
    ny, nx = frame.shape
    inside = (i >= 0) & (j >= 0) & (i < nx) & (j < ny)
    return inside & mask[np.where(inside, j, 0), np.where(inside, i, 0)]


def _stands(points: FloatArray, frame: GridFrame) -> BoolArray:
    """(ny, nx): may a tyre stand at the nodes, with tiles along this frame's axes?"""
    lattice = Lattice.around(frame)
    placed = lattice.place(points)
    ground = find_ground(lattice, placed)
    known = measured_cells(sum_cells(lattice, placed, ground.keep).count, lattice.pitch) & ground.rollable
    return ~np.isnan(over_small_holes(np.where(lattice.nodes(known), 0.0, np.nan), frame.cell))
