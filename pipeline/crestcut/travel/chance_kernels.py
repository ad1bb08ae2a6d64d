"""Gaps on drawn surfaces: the compiled part of the chance.

Where a tyre stands and where a part comes near changes little between draws, so for every critical pose the
few nodes that could
matter are listed once; a draw then costs one pass over the lists. Grid axes, metres.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit, prange

from crestcut.travel.kernels import column_range, plane, row_range
from crestcut.travel.tyres import VOID

NONE = 1.0e18  # no gap


@njit(cache=True)
def tyre_on(ground: np.ndarray, cell: float, hub: np.ndarray, radius: float, half: float) -> float:
    """Lowest point of a tyre on the ground by plain search over its footprint (ISO 16610-41), m; VOID over
    nothing measured."""
    u, v, cos, sin = hub
    rows, columns = ground.shape
    reach_u = radius * abs(cos) + half * abs(sin)
    reach_v = radius * abs(sin) + half * abs(cos)
    best = VOID
    for j in range(
        max(math.ceil((v - reach_v) / cell), 0), min(math.floor((v + reach_v) / cell), rows - 1) + 1
    ):
        dv = j * cell - v
        for i in range(
            max(math.ceil((u - reach_u) / cell), 0), min(math.floor((u + reach_u) / cell), columns - 1) + 1
        ):
            du = i * cell - u
            a, b = du * cos + dv * sin, -du * sin + dv * cos
            if abs(b) <= half + 1e-9 and abs(a) < radius:
                best = max(best, ground[j, i] + math.sqrt(radius * radius - a * a) - radius)
    return best if best > VOID / 2 else VOID


@njit(cache=True)
def list_tyre(
    ground: np.ndarray,
    cell: float,
    hub: np.ndarray,
    radius: float,
    half: float,
    slack: float,
    nodes: np.ndarray,
    short: np.ndarray,
    at: int,
) -> int:
    """Nodes that may carry a tyre: those within ``slack`` of carrying it. Returns where the next list begins.

    hub : (4,) u, v, cos and sin of the heading.  short : how much lower than the carrying node each stands
    under the disk, m, >= 0.
    Written only while there is room, so call once with empty arrays to count.
    """
    u, v, cos, sin = hub
    rows, columns = ground.shape
    reach_u = radius * abs(cos) + half * abs(sin)
    reach_v = radius * abs(sin) + half * abs(cos)
    j0, j1 = max(math.ceil((v - reach_v) / cell), 0), min(math.floor((v + reach_v) / cell), rows - 1)
    i0, i1 = max(math.ceil((u - reach_u) / cell), 0), min(math.floor((u + reach_u) / cell), columns - 1)
    best = tyre_on(ground, cell, hub, radius, half)
    if best <= VOID / 2:
        return at
    for j in range(j0, j1 + 1):
        dv = j * cell - v
        for i in range(i0, i1 + 1):
            du = i * cell - u
            a, b = du * cos + dv * sin, -du * sin + dv * cos
            if abs(b) > half + 1e-9 or abs(a) >= radius:
                continue
            low = best - (ground[j, i] + math.sqrt(radius * radius - a * a) - radius)
            if low <= slack:
                if at < nodes.shape[0]:
                    nodes[at], short[at] = j * columns + i, low
                at += 1
    return at


@njit(cache=True)
def list_tyres(
    ground: np.ndarray, cell: float, hubs: np.ndarray, radius: float, half: float, slack: float,
    start: np.ndarray, height: np.ndarray, nodes: np.ndarray, short: np.ndarray,
) -> int:  # fmt: skip
    """``list_tyre`` for every hub (k, 4); start (k + 1,) where each list begins, height (k,) of each tyre
    on its own ground."""
    at = 0
    for k in range(hubs.shape[0]):
        start[k] = at
        height[k] = tyre_on(ground, cell, hubs[k], radius, half)
        at = list_tyre(ground, cell, hubs[k], radius, half, slack, nodes, short, at)
    start[hubs.shape[0]] = at
    return at


@njit(cache=True)
def list_part(
    ground: np.ndarray, cell: float, part: np.ndarray, position: np.ndarray, rotation: np.ndarray, slack: float, block: int,
    nodes: np.ndarray, gap: np.ndarray, local: np.ndarray, at: int,
) -> int:  # fmt: skip
    """Nodes under a part whose gap is within ``slack`` of its least, one (the nearest) per block of
    ``block`` x ``block`` nodes.

    gap : m.  local : (.., 2) where on the chassis (x, y) the node lies.
    """
    rows, columns = ground.shape
    quad = np.empty((4, 2))
    a, b, c = plane(part, position, rotation, quad)
    j0, j1 = row_range(quad, cell, rows)
    best = NONE
    for j in range(j0, j1 + 1):
        i0, i1 = column_range(quad, cell, j, columns)
        for i in range(i0, i1 + 1):
            if ground[j, i] > VOID / 2:
                best = min(best, a + (b * i + c * j) * cell - ground[j, i])
    if best >= NONE / 2:
        return at
    least = np.empty(columns // block + 2)
    where = np.empty(columns // block + 2, np.int64)
    for band in range(j0 // block, j1 // block + 1):
        least[:] = NONE
        for j in range(max(band * block, j0), min(band * block + block - 1, j1) + 1):
            i0, i1 = column_range(quad, cell, j, columns)
            for i in range(i0, i1 + 1):
                g = a + (b * i + c * j) * cell - ground[j, i]
                if ground[j, i] > VOID / 2 and g < least[i // block]:
                    least[i // block], where[i // block] = g, j * columns + i
        for k in range(least.shape[0]):
            if least[k] <= best + slack:
                if at < nodes.shape[0]:
                    j, i = where[k] // columns, where[k] % columns
                    du, dv = i * cell - position[0], j * cell - position[1]
                    dz = a + (b * i + c * j) * cell - position[2]
                    nodes[at], gap[at] = where[k], least[k]
                    for e in range(2):
                        local[at, e] = rotation[0, e] * du + rotation[1, e] * dv + rotation[2, e] * dz
                at += 1
    return at


@njit(cache=True)
def list_parts(
    ground: np.ndarray, cell: float, parts: np.ndarray, part_frame: np.ndarray, pair_pose: np.ndarray, pair_part: np.ndarray,
    position: np.ndarray, rotation: np.ndarray, slack: float, block: int,
    start: np.ndarray, nodes: np.ndarray, gap: np.ndarray, local: np.ndarray,
) -> int:  # fmt: skip
    """``list_part`` for every pair of pose and part; start (q + 1,) where each list begins."""
    at = 0
    for q in range(pair_pose.shape[0]):
        start[q] = at
        p, m = pair_pose[q], pair_part[q]
        f = part_frame[m]
        at = list_part(
            ground, cell, parts[m], position[p, f], rotation[p, f], slack, block, nodes, gap, local, at
        )
    start[pair_pose.shape[0]] = at
    return at


@njit(cache=True, parallel=True)
def tyre_lifts(
    field: np.ndarray,
    start: np.ndarray,
    nodes: np.ndarray,
    short: np.ndarray,
    lift: np.ndarray,
    out_node: np.ndarray,
) -> None:
    """How far each tyre rises when ``field`` is added to the ground: lift (k,) = max over its nodes of
    field - short, and at which
    entry of its list (-1 for an empty one)."""
    for k in prange(lift.shape[0]):
        best, node = -NONE, -1
        for n in range(start[k], start[k + 1]):
            h = field[nodes[n]] - short[n]
            if h > best:
                best, node = h, n
        lift[k] = best if node >= 0 else 0.0
        out_node[k] = node


@njit(cache=True, parallel=True)
def pair_gaps(
    field: np.ndarray, lift: np.ndarray, start: np.ndarray, nodes: np.ndarray, gap: np.ndarray, weights: np.ndarray,
    pair_pose: np.ndarray, floor: np.ndarray, out: np.ndarray, out_node: np.ndarray,
) -> None:  # fmt: skip
    """Least gap of every pair on ground + field, and at which entry of its list.

    lift : (4 poses,) by ``tyre_lifts``.  weights : (n, 4) how far each node's chassis point follows each
    wheel.
    floor : (q,) what the cut has opened each gap to at least, m (very low for none).
    To first order in the lifts: the second order is x pitch^2 / 2, 10 micrometres for a lift of 10 mm.
    """
    for q in prange(out.shape[0]):
        p = 4 * pair_pose[q]
        a, b, c, d = lift[p], lift[p + 1], lift[p + 2], lift[p + 3]
        best, node = NONE, -1
        for n in range(start[q], start[q + 1]):
            raised = weights[n, 0] * a + weights[n, 1] * b + weights[n, 2] * c + weights[n, 3] * d
            g = max(gap[n], floor[q]) + raised - field[nodes[n]]
            if g < best:
                best, node = g, n
        out[q] = best
        out_node[q] = node
