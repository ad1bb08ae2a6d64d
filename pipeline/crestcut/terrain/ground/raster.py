"""Points -> sums on a fine lattice around the frame, in the frame's own axes, in time linear in points.

The lattice's cells are centred on the frame's nodes (or on a whole fraction of their spacing) and reach
``MARGIN`` beyond it, so
that windows at the rim of the frame see both sides. All later steps work on these sums.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray
from crestcut.base.kernels import njit

MARGIN = 0.30  # m of lattice beyond the frame on every side
COARSEST = 0.0125  # m: a frame with wider cells is worked on whole fractions of them
# cells of the lattice of a whole scan: memory follows what was measured, not how far it reaches
CELLS_A_POINT, FEW_CELLS = 2.0, 1_000_000


@dataclass(frozen=True)
class Lattice:
    """``pitch`` between cell centres, m; ``shape`` (rows, columns); node [j, i] of the frame is cell [pad +
    j k, pad + i k]."""

    frame: GridFrame
    pitch: float
    steps: int  # k: lattice cells per frame cell
    pad: int  # lattice cells beyond the frame

    @classmethod
    def around(cls, frame: GridFrame, coarsest: float = COARSEST) -> Lattice:
        """The lattice that covers ``frame`` and a margin about it, its pitch no coarser than ``coarsest``,
        m."""
        steps = max(1, math.ceil(frame.cell / coarsest - 1e-9))
        pitch = frame.cell / steps
        return cls(frame, pitch, steps, math.ceil(MARGIN / pitch))

    @property
    def shape(self) -> tuple[int, int]:
        """Rows and columns of cells."""
        ny, nx = self.frame.shape
        return (ny - 1) * self.steps + 1 + 2 * self.pad, (nx - 1) * self.steps + 1 + 2 * self.pad

    def nodes(self, values: NDArray) -> NDArray:
        """The values at the frame's nodes."""
        k, p = self.steps, self.pad
        ny, nx = self.frame.shape
        return np.ascontiguousarray(values[p : p + (ny - 1) * k + 1 : k, p : p + (nx - 1) * k + 1 : k])

    def place(self, points: FloatArray) -> FloatArray:
        """Site (n, 3) m -> (n, 3): column and row in lattice cells (real numbers, cell centres whole), z in
        m."""
        out = np.empty((len(points), 3))
        c, s = math.cos(self.frame.angle), math.sin(self.frame.angle)
        _place(points, self.frame.origin[0], self.frame.origin[1], c, s, self.pitch, float(self.pad), out)
        return out


def most_cells(points: int) -> float:
    """Cells that a lattice of a whole scan of so many points may have."""
    return max(FEW_CELLS, CELLS_A_POINT * points)


def pitch_for(area: float, points: int) -> float:
    """Finest pitch worth its memory, m, for so many ``points`` over ``area``, m2, holes included."""
    return max(COARSEST, math.sqrt(area / most_cells(points)))


class Cells(NamedTuple):
    """Sums per lattice cell (rows, columns): number of ``points``, their mean offset from the centre and
    mean height.

    du, dv : in lattice cells, 0 where empty.  z : m, 0 where empty.
    """

    points: FloatArray
    du: FloatArray
    dv: FloatArray
    z: FloatArray


@njit()
def _place(
    points: FloatArray, x0: float, y0: float, c: float, s: float, pitch: float, pad: float, out: FloatArray
) -> None:
    for n in range(points.shape[0]):
        x, y = points[n, 0] - x0, points[n, 1] - y0
        out[n, 0] = (x * c + y * s) / pitch + pad
        out[n, 1] = (y * c - x * s) / pitch + pad
        out[n, 2] = points[n, 2]


@njit()
def _sum_cells(placed: FloatArray, keep: BoolArray, out: Cells) -> None:
    count, du, dv, z = out
    ny, nx = count.shape
    for n in range(placed.shape[0]):
        if not keep[n]:
            continue
        i, j = math.floor(placed[n, 0] + 0.5), math.floor(placed[n, 1] + 0.5)
        if i < 0 or j < 0 or i >= nx or j >= ny:
            continue
        count[j, i] += 1.0
        du[j, i] += placed[n, 0] - i
        dv[j, i] += placed[n, 1] - j
        z[j, i] += placed[n, 2]
    for j in range(ny):
        for i in range(nx):
            if count[j, i] > 0.0:
                du[j, i] /= count[j, i]
                dv[j, i] /= count[j, i]
                z[j, i] /= count[j, i]


def sum_cells(lattice: Lattice, placed: FloatArray, keep: BoolArray) -> Cells:
    """Counts and means per lattice cell of the placed points that ``keep`` marks, (n, 3) and (n,)."""
    cells = Cells(*(np.zeros(lattice.shape) for _ in range(4)))
    _sum_cells(placed, keep, cells)
    return cells


def count_cells(lattice: Lattice, placed: FloatArray, keep: BoolArray) -> IntArray:
    """Points per lattice cell (rows, columns) of the placed points (n, 3) that ``keep`` (n,) marks."""
    i, j = np.floor(placed[keep, :2].T + 0.5).astype(np.int64)
    ny, nx = lattice.shape
    inside = (i >= 0) & (j >= 0) & (i < nx) & (j < ny)
    return np.bincount(j[inside] * nx + i[inside], minlength=ny * nx).reshape(ny, nx)


@njit()
def sort_into(
    placed: FloatArray, cells_per_tile: int, ny: int, nx: int
) -> tuple[IntArray, NDArray[np.int32]]:
    """Counting sort into square tiles of ``cells_per_tile`` lattice cells: (start of each tile, order of
    points); -1 = outside.

    Tile of a point: floor((position + 1/2) / cells_per_tile). ``order`` holds only points inside, tile by
    tile.
    """
    n = placed.shape[0]
    tile = np.empty(n, np.int32)
    start = np.zeros(ny * nx + 1, np.int64)
    for p in range(n):
        i = math.floor((placed[p, 0] + 0.5) / cells_per_tile)
        j = math.floor((placed[p, 1] + 0.5) / cells_per_tile)
        if i < 0 or j < 0 or i >= nx or j >= ny:
            tile[p] = -1
        else:
            tile[p] = j * nx + i
            start[j * nx + i + 1] += 1
    for t in range(ny * nx):
        start[t + 1] += start[t]
    fill = start[:-1].copy()
    order = np.empty(start[-1], np.int32)
    for p in range(n):
        if tile[p] >= 0:
            order[fill[tile[p]]] = p
            fill[tile[p]] += 1
    return start, order
