"""The underside over the ground: plates as planes, and the nodes they cover. Compiled.

A part is a flat plate with straight edges, so at a given pose it is a plane z = a + b u + c v over a
quadrilateral. Each row of nodes crosses the quadrilateral in one run of columns: exact at the edges, any
heading. All in grid axes, metres. ``blocks`` sweeps them.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import njit

EDGE = 1e-9  # of a cell: a node on the edge of a part belongs to it
SIDE = 0.02  # of a cell: the same for rows
FAR = 1.0e18  # no part reaches


class Plates(NamedTuple):
    """Parts of an underside as flat plates, in the vehicle frame, m.

    edges : (m, 6) x rear, x front, y right, y left, z at the rear edge, z at the front edge.  zone : (m,)
    index into ``ZONES``.  frame : (m,) index into ``FRAMES``: the body that carries each.
    """

    edges: FloatArray
    zone: IntArray
    frame: IntArray


class Pairs(NamedTuple):
    """Poses and parts to be swept, (q,) each: indices into a batch and into the parts."""

    pose: IntArray
    part: IntArray


class Placed(NamedTuple):
    """Where the plates of pairs lie: ``planes`` (q, 3) height a + b u + c v, ``quads`` (q, 4, 2) u, v of the
    corners, ``rows`` (q, 2) first and last row of nodes covered.  pose : (q,) of each.  layer : (q,) that it
    goes to: its zone."""

    planes: FloatArray
    quads: FloatArray
    rows: IntArray
    pose: IntArray
    layer: IntArray

    def some(self, which: IntArray) -> Placed:
        """Those of the pairs alone."""
        planes, quads, rows, pose, layer = self
        return Placed(planes[which], quads[which], rows[which], pose[which], layer[which])


@njit()
def plane(
    edges: FloatArray, position: FloatArray, rotation: FloatArray, quad: FloatArray
) -> tuple[float, float, float]:
    """Height a + b u + c v of a plate at a pose, and the (u, v) of its four corners into ``quad`` (4, 2).

    edges : (6,) as in ``Plates``.
    """
    xr, xf, yr, yl, zr, zf = edges
    slope = (zf - zr) / (xf - xr)
    # two directions in the plate, turned into the grid; their cross product is its normal
    e0 = rotation[0, 0] + rotation[0, 2] * slope
    e1 = rotation[1, 0] + rotation[1, 2] * slope
    e2 = rotation[2, 0] + rotation[2, 2] * slope
    f0, f1, f2 = rotation[0, 1], rotation[1, 1], rotation[2, 1]
    n0, n1, n2 = e1 * f2 - e2 * f1, e2 * f0 - e0 * f2, e0 * f1 - e1 * f0
    for k in range(4):
        x = xr if k == 0 or k == 3 else xf
        y = yr if k < 2 else yl
        z = zr if k == 0 or k == 3 else zf
        quad[k, 0] = position[0] + rotation[0, 0] * x + rotation[0, 1] * y + rotation[0, 2] * z
        quad[k, 1] = position[1] + rotation[1, 0] * x + rotation[1, 1] * y + rotation[1, 2] * z
    z0 = position[2] + rotation[2, 0] * xr + rotation[2, 1] * yr + rotation[2, 2] * zr
    b, c = -n0 / n2, -n1 / n2
    return z0 - b * quad[0, 0] - c * quad[0, 1], b, c


@njit()
def row_range(quad: FloatArray, cell: float, rows: int) -> tuple[int, int]:
    """First and last row that the quadrilateral covers; the nearest row if it lies between two. Empty: (0,
    -1)."""
    low = min(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1]) / cell
    high = max(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1]) / cell
    j0, j1 = math.ceil(low - SIDE), math.floor(high + SIDE)
    if j1 < j0:
        j0 = j1 = math.floor(0.5 * (low + high) + 0.5)
    return max(j0, 0), min(j1, rows - 1)


@njit(counted=False)
def strip_range(quad: FloatArray, v_from: float, v_to: float) -> tuple[float, float]:
    """Least and greatest u of the quadrilateral between two v; the first above the second where there is
    none.

    Every edge is cut to the strip: the ends of what is left are where u is least or greatest.
    """
    low, high = FAR, -FAR
    for k in range(4):
        u0, v0 = quad[k, 0], quad[k, 1]
        u1, v1 = quad[(k + 1) & 3, 0], quad[(k + 1) & 3, 1]
        if v0 > v1:
            u0, v0, u1, v1 = u1, v1, u0, v0
        if v1 < v_from or v0 > v_to:
            continue
        tilt = 0.0 if v1 - v0 < 1e-12 else (u1 - u0) / (v1 - v0)
        if v0 < v_from:
            u0 += tilt * (v_from - v0)
        if v1 > v_to:
            u1 += tilt * (v_to - v1)
        low, high = min(low, u0, u1), max(high, u0, u1)
    return low, high


@njit(counted=False)
def column_range(quad: FloatArray, cell: float, row: int, columns: int) -> tuple[int, int]:
    """First and last column of a row inside the quadrilateral; the last before the first where there is
    none."""
    low_v = min(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1])
    high_v = max(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1])
    v = min(max(row * cell, low_v), high_v)
    low, high = strip_range(quad, v, v)
    if high < low:
        return 0, -1
    return max(math.ceil(low / cell - EDGE), 0), min(math.floor(high / cell + EDGE), columns - 1)


@njit()
def planes_of(
    pairs: Pairs, position: FloatArray, rotation: FloatArray, plates: Plates, cell: float, rows: int,
    out: Placed,
) -> None:  # fmt: skip
    """``plane`` of many pairs; position (n, 3, 3), rotation (n, 3, 3, 3) as ``settle`` leaves them; rows : of
    the grid."""
    for q in range(pairs.pose.shape[0]):
        p, m = pairs.pose[q], pairs.part[q]
        k = plates.frame[m]
        a, b, c = plane(plates.edges[m], position[p, k], rotation[p, k], out.quads[q])
        out.planes[q, 0], out.planes[q, 1], out.planes[q, 2] = a, b, c
        out.rows[q, 0], out.rows[q, 1] = row_range(out.quads[q], cell, rows)
