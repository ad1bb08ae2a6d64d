"""Sweeping plates over a ground that is cut into square blocks, so that few nodes need looking at. Compiled.

Over each block the ground is a sloped plane plus a remainder (``planes_under``). A plate less that plane is a
plane too, so its least value over the block lies at a corner: one subtraction bounds the gap of all the
block's nodes from below, and tells whether the plate can come under what was reached there before. Only
blocks that pass are gone through node by node. Exact: nothing is left out that a full pass would find.

Tiles (.., block rows, block columns, BLOCK, BLOCK) keep each block's nodes together. Grid axes, metres.
"""

from __future__ import annotations

import math
from typing import NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import njit
from crestcut.contact.clearance.kernels import EDGE, FAR, Placed, column_range, strip_range
from crestcut.contact.stand.tyres import VOID

T = TypeVar("T", np.float64, np.int64)
BLOCK = 16  # nodes along the side of a block: two of the widest registers
NO_GROUND = -1.0e8  # a node below this was not measured
ROUNDING = 1e-11  # m: adding up a bound in another order than a height may differ by this much
# no height is a NaN: lets a running minimum be taken several nodes at a time, to the same last digit
_REDUCE = {"nnan", "nsz"}
# of a block's plane: height at its middle, slopes, how far its highest node stands above (-FAR: none is)
MIDDLE, SLOPE_U, SLOPE_V, ABOVE = range(4)
# where a plate crosses a row of blocks: first and last block touched; first and last column covered in all
# its rows (its outline is convex: what it covers in the first and the last row it covers in all between);
# 1 where no corner lies between: then its ends run straight, u of the left one and its change from row to
# row, the same of the right one. A record: uncompiled too its fields have names
_FIELDS = [(name, np.int64) for name in ("first", "last", "whole_from", "whole_to", "straight")]
_CROSSING = np.dtype(
    (np.record, [*_FIELDS, *((name, np.float64) for name in ("left", "left_step", "right", "right_step"))])
)


class Blocks(NamedTuple):
    """A ground of ``shape`` (rows, columns) in tiles, the planes (.., 4) under them (columns named above) and
    how far each row of a tile stands at most above its plane (.., BLOCK), m.

    u (block columns, BLOCK), v (block rows, BLOCK) of the nodes, m.  start : columns of blocks before the
    first of these, where they are of a part of a long ground: what is placed on it lies as on the whole.
    """

    tiles: FloatArray
    planes: FloatArray
    roof: FloatArray
    u: FloatArray
    v: FloatArray
    cell: float
    shape: tuple[int, int]
    start: int


class Layers(NamedTuple):
    """Layers of tiles that plates lower: as ``Blocks``, the layer first.

    whole : (layers, ..) how far each block stands at most above its plane, m; -FAR where it is passed over.
    owner : tiles that note which pair lowered each node last, or empty (layers, .., 0, 0) to note nothing.
    """

    tiles: FloatArray
    planes: FloatArray
    roof: FloatArray
    whole: FloatArray
    owner: IntArray
    u: FloatArray
    v: FloatArray
    cell: float
    start: int


def tiled(values: FloatArray, outside: float) -> FloatArray:
    """(.., ny, nx) -> tiles; ``outside`` fills up the last ones."""
    *lead, rows, columns = values.shape
    margin = [(0, 0)] * len(lead) + [(0, -rows % BLOCK), (0, -columns % BLOCK)]
    padded = np.pad(values, margin, constant_values=outside)
    split = padded.reshape(*lead, padded.shape[-2] // BLOCK, BLOCK, padded.shape[-1] // BLOCK, BLOCK)
    return np.ascontiguousarray(np.swapaxes(split, -3, -2))


def untiled(tiles: NDArray[T], rows: int, columns: int) -> NDArray[T]:
    """The other way round."""
    joined = np.swapaxes(tiles, -3, -2)
    whole = joined.reshape(*tiles.shape[:-4], tiles.shape[-4] * BLOCK, tiles.shape[-3] * BLOCK)
    return np.ascontiguousarray(whole[..., :rows, :columns])


def blocks_of(ground: FloatArray, cell: float, start: int = 0) -> Blocks:
    """A ground (ny, nx), m, ``VOID`` where nothing was measured. start : as of ``Blocks``."""
    tiles = tiled(ground, VOID)
    planes = planes_under(tiles, cell)
    rows, columns = ground.shape
    return Blocks(
        tiles,
        planes,
        _roof(tiles, planes, cell),
        *_nodes(tiles, cell, start),
        float(cell),
        (rows, columns),
        start,
    )


def layers_of(
    tiles: FloatArray, planes: FloatArray, cell: float, owner: IntArray | None = None, start: int = 0
) -> Layers:
    """Layers of tiles over given planes (layers, .., 4)."""
    roof = _roof(tiles, planes, cell)
    noted = np.empty((*tiles.shape[:3], 0, 0), np.int64) if owner is None else owner
    return Layers(
        tiles, planes, roof, roof.max(axis=-1), noted, *_nodes(tiles, cell, start), float(cell), start
    )


def planes_under(tiles: FloatArray, cell: float) -> FloatArray:
    """A plane for every block of tiles, (.., 4): its columns are named above.

    Any plane would do; the nearer to the nodes, the tighter the bounds. Least squares along each axis alone.
    """
    planes = np.empty((*tiles.shape[:-2], 4))
    _block_planes(tiles.reshape(-1, BLOCK, BLOCK), cell, planes.reshape(-1, 4))
    return planes


def _nodes(tiles: FloatArray, cell: float, start: int) -> tuple[FloatArray, FloatArray]:
    rows, columns = tiles.shape[-4:-2]
    u, v = np.arange(start * BLOCK, (start + columns) * BLOCK) * cell, np.arange(rows * BLOCK) * cell
    return u.reshape(columns, BLOCK), v.reshape(rows, BLOCK)


def _roof(tiles: FloatArray, planes: FloatArray, cell: float) -> FloatArray:
    roof = np.empty(tiles.shape[:-1])
    _roofs(tiles.reshape(-1, BLOCK, BLOCK), planes.reshape(-1, 4), cell, roof.reshape(-1, BLOCK))
    return roof


@njit(fastmath=_REDUCE)
def _roofs(tiles: FloatArray, planes: FloatArray, cell: float, roof: FloatArray) -> None:
    away = (np.arange(BLOCK) - 0.5 * (BLOCK - 1)) * cell
    for k in range(tiles.shape[0]):
        p = planes[k]
        for j in range(BLOCK):
            top, plain = -FAR, p[MIDDLE] + p[SLOPE_V] * away[j]
            for i in range(BLOCK):
                top = max(top, tiles[k, j, i] - (plain + p[SLOPE_U] * away[i]))
            roof[k, j] = top


@njit()
def _block_planes(tiles: FloatArray, cell: float, planes: FloatArray) -> None:
    half = 0.5 * (BLOCK - 1)
    for k in range(tiles.shape[0]):
        tile, p = tiles[k], planes[k]
        n = su = sv = suu = svv = z = zu = zv = 0.0
        for j in range(BLOCK):
            for i in range(BLOCK):
                h = tile[j, i]
                if NO_GROUND < h < FAR / 2:
                    u, v = (i - half) * cell, (j - half) * cell
                    n, su, sv, suu, svv = n + 1.0, su + u, sv + v, suu + u * u, svv + v * v
                    z, zu, zv = z + h, zu + h * u, zv + h * v
        p[MIDDLE] = p[SLOPE_U] = p[SLOPE_V] = 0.0
        p[ABOVE] = -FAR
        if n > 0.0:
            spread_u, spread_v = suu - su * su / n, svv - sv * sv / n
            p[SLOPE_U] = (zu - z * su / n) / spread_u if spread_u > 0.0 else 0.0
            p[SLOPE_V] = (zv - z * sv / n) / spread_v if spread_v > 0.0 else 0.0
            p[MIDDLE] = (z - p[SLOPE_U] * su - p[SLOPE_V] * sv) / n
            for j in range(BLOCK):
                for i in range(BLOCK):
                    if NO_GROUND < tile[j, i] < FAR / 2:
                        plain = p[MIDDLE] + p[SLOPE_U] * (i - half) * cell + p[SLOPE_V] * (j - half) * cell
                        p[ABOVE] = max(p[ABOVE], tile[j, i] - plain)


@njit()
def _cross(quad: FloatArray, rows: IntArray, bj: int, columns: int, cell: float, crossing: np.record) -> None:
    """Where a plate crosses a row of blocks, ``columns`` long.  rows : (2,) of nodes that it covers."""
    j0, j1 = max(bj * BLOCK, rows[0]), min(bj * BLOCK + BLOCK - 1, rows[1])
    low_v, high_v = quad[0, 1], quad[0, 1]
    for k in range(1, 4):
        low_v, high_v = min(low_v, quad[k, 1]), max(high_v, quad[k, 1])
    v0, v1 = min(max(j0 * cell, low_v), high_v), min(max(j1 * cell, low_v), high_v)
    low, high = strip_range(quad, v0, v1)
    low_0, high_0 = strip_range(quad, v0, v0)
    low_1, high_1 = strip_range(quad, v1, v1)
    crossing.first = max(int(low / cell - EDGE), 0) // BLOCK
    crossing.last = min(int(high / cell + 1.0) // BLOCK, columns - 1) if high >= 0.0 else -1
    whole = j1 - j0 == BLOCK - 1
    crossing.whole_from = math.ceil(max(low_0, low_1) / cell - EDGE) if whole else columns * BLOCK
    crossing.whole_to = math.floor(min(high_0, high_1) / cell + EDGE) if whole else -1
    straight = j1 > j0 and v0 == j0 * cell and v1 == j1 * cell
    for k in range(4):
        if v0 < quad[k, 1] < v1:
            straight = False
    crossing.straight = 1 if straight else 0
    if straight:
        left_step, right_step = (low_1 - low_0) / (j1 - j0), (high_1 - high_0) / (j1 - j0)
        crossing.left_step, crossing.right_step = left_step, right_step
        crossing.left, crossing.right = low_0 - left_step * j0, high_0 - right_step * j0


@njit()
def _columns(quad: FloatArray, cell: float, j: int, bi: int, crossing: np.record) -> tuple[int, int]:
    """First and last node of a block that a plate covers in row j, counted from the block's first."""
    if crossing.straight == 1:
        first = math.ceil((crossing.left + crossing.left_step * j) / cell - EDGE)
        last = math.floor((crossing.right + crossing.right_step * j) / cell + EDGE)
    else:
        first, last = column_range(quad, cell, j, bi * BLOCK + BLOCK)
    return max(first - bi * BLOCK, 0), min(last - bi * BLOCK, BLOCK - 1)


@njit(fastmath=_REDUCE)
def _least_in_tile(ground: FloatArray, u: FloatArray, v: FloatArray, plate: FloatArray) -> float:
    least, a, b, c = FAR, plate[0], plate[1], plate[2]
    for j in range(BLOCK):
        base = a + c * v[j]
        for i in range(BLOCK):
            least = min(least, base + b * u[i] - ground[j, i])
    return least


@njit(fastmath=_REDUCE)
def _least_in_part(
    on: Blocks, bj: int, bi: int, placed: Placed, q: int, crossing: np.record, least: float
) -> float:
    """The same where a plate covers a part of a tile. least : rows whose bound is not below are passed
    over."""
    k = bi - on.start
    ground, roof, p, u, v = on.tiles[bj, k], on.roof[bj, k], on.planes[bj, k], on.u[k], on.v[bj]
    plate, quad, rows, cell = placed.planes[q], placed.quads[q], placed.rows[q], on.cell
    a, b, c, slope_v = plate[0], plate[1], plate[2], p[SLOPE_V]
    half = 0.5 * (BLOCK - 1) * cell
    over = a + b * (u[0] + half) - abs(b - p[SLOPE_U]) * half - p[MIDDLE] + slope_v * half - ROUNDING
    for j in range(max(rows[0] - bj * BLOCK, 0), min(rows[1] - bj * BLOCK + 1, BLOCK)):
        if over + c * v[j] - slope_v * j * cell - roof[j] >= least:
            continue
        first, last = _columns(quad, cell, bj * BLOCK + j, bi, crossing)
        base = a + c * v[j]
        for i in range(first, last + 1):
            least = min(least, base + b * u[i] - ground[j, i])
    return least


@njit()
def least_gaps(first: int, stop: int, on: Blocks, placed: Placed, least: FloatArray) -> None:
    """Least gap of pairs first..stop-1 of pose and part, (q,) m; FAR over nothing measured.

    The most promising block of each is gone through first, then those whose bound is below what was found.
    """
    tiles, planes, u, v, cell = on.tiles, on.planes, on.u, on.v, on.cell
    rows, columns, start = planes.shape[0], planes.shape[1], on.start
    half = 0.5 * (BLOCK - 1) * cell
    bound, which = np.empty(rows * columns), np.empty((rows * columns, 2), np.int64)
    crossings = np.empty(rows, _CROSSING)
    for q in range(first, stop):
        plate, covered = placed.planes[q], placed.rows[q]
        a, b, c = plate[0], plate[1], plate[2]
        count, nearest = 0, 0
        for bj in range(covered[0] // BLOCK, covered[1] // BLOCK + 1):
            crossing = crossings[bj]
            _cross(placed.quads[q], covered, bj, start + columns, cell, crossing)
            height = a + c * (v[bj, 0] + half)
            for bi in range(max(crossing.first, start), crossing.last + 1):
                p = planes[bj, bi - start]
                if p[ABOVE] < -FAR / 2:
                    continue
                tilt = (abs(b - p[SLOPE_U]) + abs(c - p[SLOPE_V])) * half
                bound[count] = height + b * (u[bi - start, 0] + half) - p[MIDDLE] - p[ABOVE] - tilt - ROUNDING
                which[count, 0], which[count, 1] = bj, bi
                if bound[count] < bound[nearest]:
                    nearest = count
                count += 1
        best = FAR
        for k in range(-1, count):
            at = nearest if k < 0 else k
            if count == 0 or bound[at] >= best:
                continue
            bj, bi = which[at, 0], which[at, 1]
            crossing = crossings[bj]
            if crossing.whole_from <= bi * BLOCK and crossing.whole_to >= bi * BLOCK + BLOCK - 1:
                best = min(best, _least_in_tile(tiles[bj, bi - start], u[bi - start], v[bj], plate))
            else:
                best = _least_in_part(on, bj, bi, placed, q, crossing, best)
        least[q] = best if best < -NO_GROUND else FAR  # of a block in part measured, none under the plate


@njit(fastmath=_REDUCE)
def _lower_tile(
    lowest: FloatArray, u: FloatArray, v: FloatArray, plate: FloatArray, p: FloatArray, roof: FloatArray
) -> None:
    """Lower a whole tile to a plate, and say how far each row of it then stands above the block's plane."""
    a, b, c, slope_u, slope_v = plate[0], plate[1], plate[2], p[SLOPE_U], p[SLOPE_V]
    under = p[MIDDLE] - 0.5 * slope_u * (u[0] + u[BLOCK - 1]) - 0.5 * slope_v * (v[0] + v[BLOCK - 1])
    for j in range(BLOCK):
        base, below = a + c * v[j], under + slope_v * v[j]
        top = -FAR
        for i in range(BLOCK):
            z = min(lowest[j, i], base + b * u[i])
            lowest[j, i] = z
            top = max(top, z - (below + slope_u * u[i]))
        roof[j] = top


@njit(fastmath=_REDUCE)
def _lower_part(to: Layers, m: int, bj: int, bi: int, placed: Placed, q: int, crossing: np.record) -> None:
    """The same where a plate covers a part of a tile; ``owner`` notes who lowered each node."""
    k = bi - to.start
    lowest, owner, roof, p = to.tiles[m, bj, k], to.owner[m, bj, k], to.roof[m, bj, k], to.planes[m, bj, k]
    u, v, cell = to.u[k], to.v[bj], to.cell
    plate, quad, rows = placed.planes[q], placed.quads[q], placed.rows[q]
    a, b, c, slope_u, slope_v = plate[0], plate[1], plate[2], p[SLOPE_U], p[SLOPE_V]
    half = 0.5 * (BLOCK - 1) * cell
    over = a + b * (u[0] + half) - abs(b - slope_u) * half - p[MIDDLE] - ROUNDING
    under = p[MIDDLE] - slope_u * (u[0] + half) - slope_v * (v[0] + half)
    noted = owner.shape[0] > 0
    for j in range(max(rows[0] - bj * BLOCK, 0), min(rows[1] - bj * BLOCK + 1, BLOCK)):
        if over + c * v[j] - slope_v * (j * cell - half) >= roof[j]:
            continue
        first, last = _columns(quad, cell, bj * BLOCK + j, bi, crossing)
        base = a + c * v[j]
        for i in range(first, last + 1):
            z = base + b * u[i]
            if z < lowest[j, i]:
                lowest[j, i] = z
                if noted:
                    owner[j, i] = q
        top, below = -FAR, under + slope_v * v[j]
        for i in range(BLOCK):
            top = max(top, lowest[j, i] - (below + slope_u * u[i]))
        roof[j] = top


@njit()
def lower_to(from_row: int, to_row: int, to: Layers, placed: Placed, order: IntArray) -> None:
    """Lower layers to the plates of pairs, in block rows from_row..to_row-1 alone.

    order : which pairs, and in which order; little is left to do soon where far ones come first.
    """
    planes, u, v, cell, start = to.planes, to.u, to.v, to.cell, to.start
    half = 0.5 * (BLOCK - 1) * cell
    crossings = np.empty(1, _CROSSING)
    noted = to.owner.shape[3] > 0
    for number in range(order.shape[0]):
        q = order[number]
        m, plate, covered = placed.layer[q], placed.planes[q], placed.rows[q]
        a, b, c = plate[0], plate[1], plate[2]
        for bj in range(max(covered[0] // BLOCK, from_row), min(covered[1] // BLOCK + 1, to_row)):
            crossing = crossings[0]  # asked for here, so that the array outlives it
            _cross(placed.quads[q], covered, bj, start + planes.shape[2], cell, crossing)
            height = a + c * (v[bj, 0] + half)
            for bi in range(max(crossing.first, start), crossing.last + 1):
                k = bi - start
                p = planes[m, bj, k]
                tilt = (abs(b - p[SLOPE_U]) + abs(c - p[SLOPE_V])) * half
                bound = height + b * (u[k, 0] + half) - p[MIDDLE] - tilt - ROUNDING
                if bound >= to.whole[m, bj, k]:
                    continue
                inner = crossing.whole_from <= bi * BLOCK and crossing.whole_to >= bi * BLOCK + BLOCK - 1
                roof = to.roof[m, bj, k]
                if not noted and inner:
                    _lower_tile(to.tiles[m, bj, k], u[k], v[bj], plate, p, roof)
                else:
                    _lower_part(to, m, bj, bi, placed, q, crossing)
                highest = roof[0]
                for j in range(1, BLOCK):
                    highest = max(highest, roof[j])
                to.whole[m, bj, k] = highest
