"""The underside over the ground: the compiled part of the sweep.

A part is a flat plate with straight edges, so at a given pose it is a plane z = a + b u + c v over a quadrilateral. Each row of nodes
crosses the quadrilateral in one run of columns: add and minimum on contiguous memory, exact at the edges, any heading.
All in grid axes, metres.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit, prange

EDGE = 1e-9  # of a cell: a node on the edge of a part belongs to it
SIDE = 0.02  # of a cell: the same for rows


@njit(cache=True)
def plane(part: np.ndarray, position: np.ndarray, rotation: np.ndarray, quad: np.ndarray) -> tuple[float, float, float]:
    """Height a + b u + c v of a plate at a pose, and the (u, v) of its four corners into ``quad`` (4, 2).

    part : (6,) x rear, x front, y right, y left, z at the rear edge, z at the front edge, in the vehicle frame.
    """
    xr, xf, yr, yl, zr, zf = part[0], part[1], part[2], part[3], part[4], part[5]
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


@njit(cache=True)
def row_range(quad: np.ndarray, cell: float, rows: int) -> tuple[int, int]:
    """First and last row that the quadrilateral covers; the nearest row if it lies between two. Empty: (0, -1)."""
    low = min(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1]) / cell
    high = max(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1]) / cell
    j0, j1 = math.ceil(low - SIDE), math.floor(high + SIDE)
    if j1 < j0:
        j0 = j1 = math.floor(0.5 * (low + high) + 0.5)
    return max(j0, 0), min(j1, rows - 1)


@njit(cache=True)
def column_range(quad: np.ndarray, cell: float, row: int, columns: int) -> tuple[int, int]:
    """First and last column of a row inside the quadrilateral; the last before the first where there is none."""
    low_v = min(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1])
    high_v = max(quad[0, 1], quad[1, 1], quad[2, 1], quad[3, 1])
    v = min(max(row * cell, low_v), high_v)
    low, high = 1.0e18, -1.0e18
    for k in range(4):
        u0, v0 = quad[k, 0], quad[k, 1]
        u1, v1 = quad[(k + 1) % 4, 0], quad[(k + 1) % 4, 1]
        if (v0 <= v <= v1) or (v1 <= v <= v0):
            if abs(v1 - v0) < 1e-12:
                low, high = min(low, u0, u1), max(high, u0, u1)
            else:
                u = u0 + (u1 - u0) * (v - v0) / (v1 - v0)
                low, high = min(low, u), max(high, u)
    if high < low:
        return 0, -1
    low, high = low / cell, high / cell
    return max(math.ceil(low - EDGE), 0), min(math.floor(high + EDGE), columns - 1)


@njit(cache=True, fastmath=True)
def _lower_run(lowest: np.ndarray, ground: np.ndarray, u: np.ndarray, start: float, slope: float) -> float:
    """Lower ``lowest`` along one run of a row to start + slope u; the least gap to ``ground`` on the way.

    The columns' u come as an array: turning the loop counter into a float would keep the loop from being vectorised.
    """
    least = 1.0e18
    for i in range(lowest.shape[0]):
        z = start + slope * u[i]
        lowest[i] = min(lowest[i], z)
        least = min(least, z - ground[i])
    return least


@njit(cache=True, fastmath=True)
def _least_gap(ground: np.ndarray, u: np.ndarray, start: float, slope: float) -> float:
    """Least gap of start + slope u over one run of a row."""
    least = 1.0e18
    for i in range(ground.shape[0]):
        least = min(least, start + slope * u[i] - ground[i])
    return least


@njit(cache=True, parallel=True)
def sweep_all(
    ground: np.ndarray,
    cell: float,
    live: np.ndarray,
    position: np.ndarray,
    rotation: np.ndarray,
    parts: np.ndarray,
    part_zone: np.ndarray,
    part_frame: np.ndarray,
    lowest: np.ndarray,
    least: np.ndarray,
) -> None:
    """Lowest height of every zone over every node, and the least gap of each (pose, part).

    ground : (ny, nx), very low where unmeasured.  live : (n,) poses that count.  position (n, 3, 3), rotation (n, 3, 3, 3) as ``settle``
    leaves them.  parts : (m, 6).  part_zone, part_frame : (m,) which zone it belongs to and which body carries it.
    lowest : (zones, ny, nx), starts very high.  least : (bands, n, m), starts very high. A band is a strip of neighbouring rows, few
    enough to stay in the fastest cache while the vehicle crawls over them; no two cores write the same row.
    """
    bands = least.shape[0]
    rows, columns = ground.shape
    height = (rows + bands - 1) // bands
    u = np.arange(columns) * cell
    for band in prange(bands):
        quad = np.empty((4, 2))
        for p in range(position.shape[0]):
            if not live[p]:
                continue
            for m in range(parts.shape[0]):
                frame = part_frame[m]
                a, b, c = plane(parts[m], position[p, frame], rotation[p, frame], quad)
                j0, j1 = row_range(quad, cell, rows)
                gap = 1.0e18
                for j in range(max(j0, band * height), min(j1, band * height + height - 1) + 1):
                    i0, i1 = column_range(quad, cell, j, columns)
                    if i1 >= i0:
                        part = slice(i0, i1 + 1)
                        run = _lower_run(lowest[part_zone[m], j, part], ground[j, part], u[part], a + c * j * cell, b)
                        gap = min(gap, run)
                least[band, p, m] = gap


@njit(cache=True, parallel=True)
def planes_of(
    pair_pose: np.ndarray,
    pair_part: np.ndarray,
    position: np.ndarray,
    rotation: np.ndarray,
    parts: np.ndarray,
    part_frame: np.ndarray,
    cell: float,
    rows: int,
    planes: np.ndarray,
    quads: np.ndarray,
    span: np.ndarray,
) -> None:
    """``plane`` of many (pose, part) pairs: planes (q, 3), quads (q, 4, 2), first and last row span (q, 2)."""
    for q in prange(pair_pose.shape[0]):
        p, m = pair_pose[q], pair_part[q]
        a, b, c = plane(parts[m], position[p, part_frame[m]], rotation[p, part_frame[m]], quads[q])
        planes[q, 0], planes[q, 1], planes[q, 2] = a, b, c
        span[q, 0], span[q, 1] = row_range(quads[q], cell, rows)


@njit(cache=True, parallel=True)
def collect_runs(
    ground: np.ndarray,
    cell: float,
    pair_pose: np.ndarray,
    pair_part: np.ndarray,
    position: np.ndarray,
    rotation: np.ndarray,
    parts: np.ndarray,
    part_frame: np.ndarray,
    threshold: np.ndarray,
    start: np.ndarray,
    runs: np.ndarray,
) -> None:
    """The pieces of rows on which a pair's gap is under its threshold: (pair, row, first column, last column).

    start : (rows + 1,) where each row's pieces begin in ``runs`` (k, 4). With an empty ``runs`` the pieces are only counted:
    ``start[j + 1]`` receives the number of row j (the caller sums them up). Rows are shared out among the cores.
    """
    rows, columns = ground.shape
    counting = runs.shape[0] == 0
    u = np.arange(columns) * cell
    planes, quads = np.empty((pair_pose.shape[0], 3)), np.empty((pair_pose.shape[0], 4, 2))
    span = np.empty((pair_pose.shape[0], 2), np.int64)
    planes_of(pair_pose, pair_part, position, rotation, parts, part_frame, cell, rows, planes, quads, span)
    for j in prange(rows):
        at = 0 if counting else start[j]
        for q in range(pair_pose.shape[0]):
            if j < span[q, 0] or j > span[q, 1]:
                continue
            i0, i1 = column_range(quads[q], cell, j, columns)
            if i1 < i0:
                continue
            base, slope, most = planes[q, 0] + planes[q, 2] * j * cell, planes[q, 1], threshold[pair_part[q]]
            if _least_gap(ground[j, i0 : i1 + 1], u[i0 : i1 + 1], base, slope) >= most:
                continue
            if not counting:
                while base + slope * u[i0] - ground[j, i0] >= most:
                    i0 += 1
                while base + slope * u[i1] - ground[j, i1] >= most:
                    i1 -= 1
                runs[at, 0], runs[at, 1], runs[at, 2], runs[at, 3] = q, j, i0, i1
            at += 1
        if counting:
            start[j + 1] = at


@njit(cache=True, parallel=True)
def sweep_runs(
    cell: float,
    runs: np.ndarray,
    row_start: np.ndarray,
    planes: np.ndarray,
    quads: np.ndarray,
    span: np.ndarray,
    pair_drop: np.ndarray,
    limit: np.ndarray,
    pair: np.ndarray,
) -> None:
    """Lowest (plane - drop) over every node from chosen runs, and which pair set it.

    runs : (k, 4) sorted by row; row_start : (ny + 1,) where each row's runs begin.  pair_drop : (q,) what is taken off each pair's height
    (the gap it must keep).  limit : (ny, nx) starts very high; pair : (ny, nx) starts at -1. Rows are shared out among the cores.
    A run counts only as far as the plate itself goes at its pose now: runs are collected from plates a little larger (poses move as the
    ground does), and the gap beyond the collected columns was more than could ever bind.
    """
    rows, columns = limit.shape
    for j in prange(rows):
        for r in range(row_start[j], row_start[j + 1]):
            q = runs[r, 0]
            if j < span[q, 0] or j > span[q, 1]:
                continue
            i0, i1 = column_range(quads[q], cell, j, columns)
            i0, i1 = max(i0, runs[r, 2]), min(i1, runs[r, 3])
            start = planes[q, 0] + planes[q, 2] * j * cell - pair_drop[q]
            step = planes[q, 1] * cell
            for i in range(i0, i1 + 1):
                z = start + step * i
                if z < limit[j, i]:
                    limit[j, i] = z
                    pair[j, i] = q
