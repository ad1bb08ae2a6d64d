"""The few nodes of ground that could carry a tyre or come near a part at each pose.

Listed once, drawn often. A block of 3 x 3 nodes (30 mm) is stood for by the one that matters most in it: no
error field is rougher than that. Grid axes, metres. Listing is plain numpy: a few hundred poses need no
compiler; drawing is compiled.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, HeightGrid, IntArray
from crestcut.base.kernels import njit
from crestcut.contact import EDGE, SIDE, VOID
from crestcut.vehicle import Vehicle

BLOCK = 0.03  # m, side of the blocks
CHUNK = 128  # tyres looked at together: the footprints of so many stay in the cache
TYRE_SLACK = 0.012  # m below the carrying node under which a node may come to carry the tyre
NONE = 1.0e18  # no gap
Single = NDArray[np.float32]


@dataclass(frozen=True, eq=False)
class Lists:
    """Entries of ``nodes`` (flat index), one list after another; list k is start[k] up to start[k + 1].

    value : (n,) m, of a tyre's node how much lower than the carrying one it stands under the disk (>= 0), of
    a part's node the gap there.  local : (n, 2) m, where on the chassis (x, y) a part's node lies; of a
    tyre's node how far ahead and to the left of the tyre's middle.
    """

    start: IntArray
    nodes: IntArray
    value: FloatArray
    local: FloatArray


def block_of(cell: float) -> int:
    """Nodes to a side of a block."""
    return max(round(BLOCK / cell), 1)


def list_tyres(
    ground: FloatArray, cell: float, hubs: FloatArray, vehicle: Vehicle
) -> tuple[Lists, FloatArray]:
    """Nodes that may come to carry each tyre: the best of each block, if within ``TYRE_SLACK`` of carrying.

    hubs : (k, 5) u, v, cos and sin of the heading, and the tilt that the tyre leans at, as
    ``tyres.tyre_height`` has it.  Also the lowest point of each tyre on its own ground, (k,) m, ``VOID`` over
    nothing measured: plain search over the footprint (dilation by a disk that leans, ISO 16610-41).
    """
    radius, half = vehicle.tyre_radius, vehicle.tyre_width / 2
    block = block_of(cell)
    along = np.abs(hubs[:, 2:4]).max(axis=0)  # widest cos, widest sin
    reach = (radius * along[0] + half * along[1], radius * along[1] + half * along[0])
    steps = [_stencil(r, cell, block) for r in reach]  # u, v
    # stencil laid out block by block: (blocks, block * block)
    shape = (len(steps[1]) // block, block, len(steps[0]) // block, block)
    dj = _by_block(np.broadcast_to(steps[1].reshape(*shape[:2], 1, 1), shape))
    di = _by_block(np.broadcast_to(steps[0].reshape(1, 1, *shape[2:]), shape))
    rows, columns = ground.shape
    best = np.empty(len(hubs))
    count, nodes, value, local = [], [], [], []
    for first in range(0, len(hubs), CHUNK):
        u, v, cos, sin, tilt = (c[:, None, None] for c in hubs[first : first + CHUNK].T)
        i, j = np.rint(u / cell).astype(np.int64) + di, np.rint(v / cell).astype(np.int64) + dj
        du, dv = i * cell - u, j * cell - v
        a, b = du * cos + dv * sin, dv * cos - du * sin
        drop = radius * radius - a * a
        on = (np.abs(b) <= half + 1e-9) & (drop > 0) & (i >= 0) & (i < columns) & (j >= 0) & (j < rows)
        flat = np.where(on, j * columns + i, 0)
        low = np.where(on, ground.ravel()[flat] - b * tilt + np.sqrt(np.maximum(drop, 0.0)) - radius, VOID)
        pick = low.argmax(axis=2)[..., None]
        low, flat, a, b = (np.take_along_axis(x, pick, 2)[..., 0] for x in (low, flat, a, b))
        top = low.max(axis=1)
        keep = (low >= top[:, None] - TYRE_SLACK) & (low > VOID / 2)
        best[first : first + CHUNK] = np.where(top > VOID / 2, top, VOID)
        count.append(keep.sum(axis=1))
        nodes.append(flat[keep])
        value.append((top[:, None] - low)[keep])
        local.append(np.column_stack([a[keep], b[keep]]))
    start = np.concatenate([[0], np.cumsum(np.concatenate(count))]).astype(np.int64)
    return Lists(start, np.concatenate(nodes), np.concatenate(value), np.concatenate(local)), best


class Resting(NamedTuple):
    """What ``rise_part`` needs of the lists of the four tyres of each pose: ``start`` and ``nodes`` as of
    ``Lists``, ``short`` their value and ``aside`` how far left of the tyre's middle, m.  tracks : (2,) front
    and rear, m.  leans : (poses, 2) the axle, 0 or 1, whose tilt each axle has: its own but on a cart."""

    start: IntArray
    nodes: IntArray
    short: Single
    aside: Single
    tracks: Single
    leans: IntArray


@njit(fastmath=True)
def rise_part(first: int, stop: int, tyres: Resting, field: Single, out: Single) -> None:
    """How far each tyre rises on ground + ``field`` (n, d) for poses first..stop-1, into ``out`` (4 of each
    of them, d), m.

    rise(t) = most of field - short - aside t over the tyre's nodes, t = (rise_l - rise_r) / track how much
    more the axle tilts: the fixed point of ``tyres.axle_heights``. From t = 0 one step of Newton's with the
    nodes that are highest there, t (track + aside_l - aside_r) = rise_l(0) - rise_r(0), and all nodes at that
    t: off only where others come to carry, by 0.13 of how much those rise above the first.
    """
    wide = field.shape[1]
    rise, at = np.empty((4, wide), np.float32), np.empty((4, wide), np.float32)
    tilt = np.empty((2, wide), np.float32)
    for p in range(first, stop):
        for k in range(4):
            rise[k] = np.float32(-1.0e9)
            for n in range(tyres.start[4 * p + k], tyres.start[4 * p + k + 1]):
                row, short, aside = field[tyres.nodes[n]], tyres.short[n], tyres.aside[n]
                for d in range(wide):
                    height = row[d] - short
                    at[k, d] = aside if height > rise[k, d] else at[k, d]
                    rise[k, d] = max(height, rise[k, d])
        for axle in range(2):
            left = 2 * tyres.leans[p, axle]
            track = tyres.tracks[tyres.leans[p, axle]]
            for d in range(wide):
                apart = track + at[left, d] - at[left + 1, d]
                tilt[axle, d] = (rise[left, d] - rise[left + 1, d]) / apart
        for k in range(4):
            to = out[4 * (p - first) + k]
            to[:] = np.float32(-1.0e9)
            for n in range(tyres.start[4 * p + k], tyres.start[4 * p + k + 1]):
                row, short, aside = field[tyres.nodes[n]], tyres.short[n], tyres.aside[n]
                for d in range(wide):
                    to[d] = max(to[d], row[d] - short - aside * tilt[k // 2, d])


def _by_block(values: NDArray[Any]) -> NDArray[Any]:
    """(rows of blocks, b, columns of blocks, b) -> (blocks, b * b)."""
    return values.transpose(0, 2, 1, 3).reshape(-1, values.shape[1] * values.shape[3])


def _stencil(reach: float, cell: float, block: int) -> IntArray:
    """Whole steps from the node nearest to a hub that cover ``reach`` either way, a multiple of ``block``."""
    most = int(reach / cell) + 1
    return np.arange(-most, -most + -(-(2 * most + 1) // block) * block, dtype=np.int64)


def list_parts(
    ground: HeightGrid, plates: FloatArray, position: FloatArray, rotation: FloatArray, most: FloatArray
) -> Lists:
    """Nodes under each plate where its gap is no more than ``most``: the nearest of each block.

    plates : (q, 6), position (q, 3), rotation (q, 3, 3): one plate at one pose each.  most : (q,) m.
    """
    columns, cell = ground.frame.shape[1], ground.frame.cell
    start = np.zeros(len(plates) + 1, np.int64)
    nodes, value, local = [], [], []
    for q in range(len(plates)):
        flat, gap, height = _nearest(ground, plates[q], position[q], rotation[q])
        keep = gap <= max(most[q], gap.min(initial=NONE))  # never empty where anything is measured
        nodes.append(flat[keep])
        value.append(gap[keep])
        start[q + 1] = start[q] + int(keep.sum())
        j, i = np.divmod(flat[keep], columns)
        away = np.column_stack([i * cell, j * cell, height[keep]]) - position[q]
        local.append(away @ rotation[q, :, :2])
    return Lists(start, np.concatenate(nodes), np.concatenate(value), np.concatenate(local))


def _nearest(
    ground: HeightGrid, plate: FloatArray, position: FloatArray, rotation: FloatArray
) -> tuple[IntArray, FloatArray, FloatArray]:
    """Of each block under a plate the node with the least gap: flat index, gap and height of the plate."""
    (a, b, c), quad = plane_of(plate, position, rotation)
    cell, heights = ground.frame.cell, ground.values
    block, columns = block_of(cell), heights.shape[1]
    j, first, last = covered(quad, cell, heights.shape)
    none = np.zeros(0, np.int64), np.zeros(0), np.zeros(0)
    if not len(j) or last.max() < first.min():
        return none
    j0, i0 = int(j[0]) // block * block, int(first.min()) // block * block
    high, wide = (-(-(n + 1 - n0) // block) * block for n, n0 in ((int(j[-1]), j0), (int(last.max()), i0)))
    i = np.arange(i0, min(i0 + wide, columns))
    plane = a + (b * cell) * i[None, :] + (c * cell) * j[:, None]
    under = heights[j[0] : j[-1] + 1, i0 : i0 + wide]
    inside = (i[None, :] >= first[:, None]) & (i[None, :] <= last[:, None]) & (under > VOID / 2)
    gap = np.full((high, wide), NONE)
    gap[int(j[0]) - j0 : int(j[-1]) + 1 - j0, : len(i)] = np.where(inside, plane - under, NONE)
    blocks = _by_block(gap.reshape(high // block, block, wide // block, block))
    pick = blocks.argmin(axis=1)
    least = blocks[np.arange(len(blocks)), pick]
    corner_j, corner_i = np.divmod(np.arange(len(blocks)), wide // block)
    row, column = j0 + corner_j * block + pick // block, i0 + corner_i * block + pick % block
    seen = least < NONE / 2
    row, column, least = row[seen], column[seen], least[seen]
    return row * columns + column, least, a + (b * cell) * column + (c * cell) * row


def plane_of(
    plate: FloatArray, position: FloatArray, rotation: FloatArray
) -> tuple[tuple[float, float, float], FloatArray]:
    """Height a + b u + c v of a plate at a pose, and the u, v of its corners (4, 2): as ``kernels.plane``."""
    xr, xf, yr, yl, zr, zf = plate
    corner = np.array([[xr, yr, zr], [xf, yr, zf], [xf, yl, zf], [xr, yl, zr]]) @ rotation.T + position
    normal = np.cross(corner[1] - corner[0], corner[3] - corner[0])
    b, c = -normal[0] / normal[2], -normal[1] / normal[2]
    a = corner[0, 2] - b * corner[0, 0] - c * corner[0, 1]
    return (float(a), float(b), float(c)), corner[:, :2]


def covered(quad: FloatArray, cell: float, shape: tuple[int, int]) -> tuple[IntArray, IntArray, IntArray]:
    """Rows that a quadrilateral covers, with the first and last column of each: as ``kernels.row_range`` and
    ``column_range``."""
    low_v, high_v = quad[:, 1].min(), quad[:, 1].max()
    j0, j1 = int(np.ceil(low_v / cell - SIDE)), int(np.floor(high_v / cell + SIDE))
    if j1 < j0:
        j0 = j1 = int(np.floor(0.5 * (low_v + high_v) / cell + 0.5))
    j = np.arange(max(j0, 0), min(j1, shape[0] - 1) + 1)
    v = np.clip(j * cell, low_v, high_v)
    low, high = np.full(len(j), NONE), np.full(len(j), -NONE)
    for k in range(4):
        (u0, v0), (u1, v1) = quad[k], quad[(k + 1) % 4]
        crosses = (np.minimum(v0, v1) <= v) & (v <= np.maximum(v0, v1))
        if abs(v1 - v0) < 1e-12:
            least, most = np.full(len(j), min(u0, u1)), np.full(len(j), max(u0, u1))
        else:
            least = most = u0 + (u1 - u0) * (v - v0) / (v1 - v0)
        low = np.where(crosses, np.minimum(low, least), low)
        high = np.where(crosses, np.maximum(high, most), high)
    low, high = np.minimum(low, NONE / 2), np.maximum(high, -NONE / 2)
    first = np.clip(np.ceil(low / cell - EDGE), 0, shape[1]).astype(np.int64)
    last = np.clip(np.floor(high / cell + EDGE), -1, shape[1] - 1).astype(np.int64)
    return j, first, last
