"""Sweeping plates over a ground that is cut into square blocks, so that few nodes need looking at. Compiled.

Over each block the ground is a sloped plane plus a remainder (``planes_under``). A plate less that plane is a
plane too, so its least value over what it covers of the block lies at a corner of a rectangle round that: one
subtraction bounds the gap of all those nodes from below, and tells whether the plate can come under what was
reached there before. Only blocks that pass are gone through node by node. Exact: no contact is left out.

Tiles (.., block rows, block columns, BLOCK, BLOCK) keep each block's nodes together. Grid axes, metres.
"""

from __future__ import annotations

import math
from typing import NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import greater, lesser, njit
from crestcut.contact.clearance.kernels import EDGE, FAR, Placed, column_range, strip_range
from crestcut.contact.stand.tyres import VOID

T = TypeVar("T", np.float64, np.int64)
BLOCK = 16  # nodes along the side of a block: two of the widest registers
NO_GROUND = -1.0e8  # a node below this was not measured
ROUNDING = 1e-11  # m: adding up a bound in another order than a height may differ by this much
# of a block's plane: height at its middle, slopes, how far its highest node stands above (-FAR: none is)
MIDDLE, SLOPE_U, SLOPE_V, ABOVE = range(4)
# where a plate crosses a row of blocks: first and last block touched; first and last column covered in all
# its rows (its outline is convex: what it covers in the first and the last row it covers in all between);
# 1 where no corner lies between: then its ends run straight, u of the left one and its change from row to
# row, the same of the right one; least and greatest u that it covers in all its rows, m. A record: uncompiled
# too its fields have names
_FIELDS = [(name, np.int64) for name in ("first", "last", "whole_from", "whole_to", "straight")]
_ENDS = [(name, np.float64) for name in ("left", "left_step", "right", "right_step", "low", "high")]
_CROSSING = np.dtype((np.record, [*_FIELDS, *_ENDS]))


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


class Plane(NamedTuple):
    """Height a + b u + c v of a plate, or under a block, m."""

    a: float
    b: float
    c: float


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


@njit(fastmath={"nnan", "nsz"})  # no height is a NaN
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


@njit(counted=False)
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
    crossing.low, crossing.high = low - EDGE, high + EDGE
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


@njit(counted=False)
def _under(p: FloatArray, u: FloatArray, v: FloatArray) -> Plane:
    """The plane under a block, through the grid's origin as a plate's is."""
    u_slope, v_slope = p[SLOPE_U], p[SLOPE_V]
    middle = p[MIDDLE] - 0.5 * u_slope * (u[0] + u[BLOCK - 1]) - 0.5 * v_slope * (v[0] + v[BLOCK - 1])
    return Plane(middle, u_slope, v_slope)


@njit(counted=False)
def _least_apart(plate: Plane, under: Plane, left: float, right: float, back: float, front: float) -> float:
    """Least height of a plate over a block's plane, m, from u ``left`` to ``right`` and v ``back`` to
    ``front``: both are planes, so it is at a corner. What nodes stand above the plane is yet to be taken
    off."""
    middle_u, middle_v = 0.5 * (left + right), 0.5 * (back + front)
    b, c = plate.b - under.b, plate.c - under.c
    tilt = abs(b) * (right - middle_u) + abs(c) * (front - middle_v)
    return (plate.a - under.a) + b * middle_u + c * middle_v - tilt - ROUNDING


@njit(counted=False)
def _columns(quad: FloatArray, cell: float, j: int, bi: int, crossing: np.record) -> tuple[int, int]:
    """First and last node of a block that a plate covers in row j, counted from the block's first."""
    if crossing.straight == 1:
        first = math.ceil((crossing.left + crossing.left_step * j) / cell - EDGE)
        last = math.floor((crossing.right + crossing.right_step * j) / cell + EDGE)
    else:
        first, last = column_range(quad, cell, j, bi * BLOCK + BLOCK)
    return max(first - bi * BLOCK, 0), min(last - bi * BLOCK, BLOCK - 1)


@njit(counted=False)
def _least_in_tile(on: Blocks, bj: int, k: int, plate: Plane) -> float:
    """Least gap of a plate to all nodes of a tile, m."""
    tiles, u, v, least = on.tiles, on.u, on.v, FAR
    for j in range(0, BLOCK, 4):  # four rows at a time: a minimum waits for the one before it
        first, second = plate.a + plate.c * v[bj, j], plate.a + plate.c * v[bj, j + 1]
        third, fourth = plate.a + plate.c * v[bj, j + 2], plate.a + plate.c * v[bj, j + 3]
        for i in range(BLOCK):
            along = plate.b * u[k, i]
            near = lesser(first + along - tiles[bj, k, j, i], second + along - tiles[bj, k, j + 1, i])
            far = lesser(third + along - tiles[bj, k, j + 2, i], fourth + along - tiles[bj, k, j + 3, i])
            least = lesser(least, lesser(near, far))
    return least


@njit(counted=False)
def _least_in_part(
    on: Blocks, bj: int, bi: int, placed: Placed, q: int, plate: Plane, crossing: np.record, least: float
) -> float:
    """The same where a plate covers a part of a tile. least : rows whose bound is not below are passed
    over."""
    k, tiles, roof, u, v = bi - on.start, on.tiles, on.roof, on.u, on.v
    under = _under(on.planes[bj, k], on.u[k], on.v[bj])
    j0, j1 = max(placed.rows[q, 0] - bj * BLOCK, 0), min(placed.rows[q, 1] - bj * BLOCK, BLOCK - 1)
    left, right = max(u[k, 0], crossing.low), min(u[k, BLOCK - 1], crossing.high)
    over = _least_apart(plate, under, left, right, v[bj, j0], v[bj, j0])
    step = (plate.c - under.c) * on.cell
    for j in range(j0, j1 + 1):
        if over + step * (j - j0) - roof[bj, k, j] >= least:
            continue
        first, last = _columns(placed.quads[q], on.cell, bj * BLOCK + j, bi, crossing)
        base = plate.a + plate.c * v[bj, j]
        for i in range(first, last + 1):
            least = lesser(least, base + plate.b * u[k, i] - tiles[bj, k, j, i])
    return least


@njit()
def least_gaps(first: int, stop: int, on: Blocks, placed: Placed, least: FloatArray) -> None:
    """Least gap of pairs first..stop-1 of pose and part, (q,) m; FAR over nothing measured.

    The most promising block of each is gone through first, then those whose bound is below what was found.
    """
    planes, u, v, cell = on.planes, on.u, on.v, on.cell
    rows, columns, start = planes.shape[0], planes.shape[1], on.start
    bound, which = np.empty(rows * columns), np.empty((rows * columns, 2), np.int64)
    crossings = np.empty(rows, _CROSSING)
    for q in range(first, stop):
        plate = Plane(placed.planes[q, 0], placed.planes[q, 1], placed.planes[q, 2])
        low, high = placed.rows[q, 0], placed.rows[q, 1]
        count, nearest = 0, 0
        for bj in range(low // BLOCK, high // BLOCK + 1):
            crossing = crossings[bj]
            _cross(placed.quads[q], placed.rows[q], bj, start + columns, cell, crossing)
            back, front = max(v[bj, 0], low * cell), min(v[bj, BLOCK - 1], high * cell)
            for bi in range(max(crossing.first, start), crossing.last + 1):
                k = bi - start
                if planes[bj, k, ABOVE] < -FAR / 2:
                    continue
                left, right = max(u[k, 0], crossing.low), min(u[k, BLOCK - 1], crossing.high)
                under = _under(planes[bj, k], u[k], v[bj])
                bound[count] = _least_apart(plate, under, left, right, back, front) - planes[bj, k, ABOVE]
                which[count, 0], which[count, 1] = bj, bi
                if bound[count] < bound[nearest]:
                    nearest = count
                count += 1
        best = FAR
        for number in range(-1, count):
            at = nearest if number < 0 else number
            if count == 0 or bound[at] >= best:
                continue
            bj, bi = which[at, 0], which[at, 1]
            crossing = crossings[bj]
            if crossing.whole_from <= bi * BLOCK and crossing.whole_to >= bi * BLOCK + BLOCK - 1:
                best = min(best, _least_in_tile(on, bj, bi - start, plate))
            else:
                best = _least_in_part(on, bj, bi, placed, q, plate, crossing, best)
        least[q] = best if best < -NO_GROUND else FAR  # of a block in part measured, none under the plate


@njit(counted=False)
def _lower_tile(to: Layers, m: int, bj: int, k: int, plate: Plane, under: Plane) -> None:
    """Lower a whole tile to a plate, and say how far each row of it then stands above the block's plane."""
    lowest, u, v = to.tiles, to.u, to.v
    for j in range(BLOCK):
        base, below, top = plate.a + plate.c * v[bj, j], under.a + under.c * v[bj, j], -FAR
        for i in range(BLOCK):
            z = lesser(lowest[m, bj, k, j, i], base + plate.b * u[k, i])
            lowest[m, bj, k, j, i] = z
            top = greater(top, z - (below + under.b * u[k, i]))
        to.roof[m, bj, k, j] = top


@njit(counted=False)
def _lower_part(
    to: Layers, m: int, bj: int, bi: int, placed: Placed, q: int, plate: Plane, under: Plane,
    crossing: np.record,
) -> None:  # fmt: skip
    """The same where a plate covers a part of a tile; ``owner`` notes who lowered each node."""
    k, lowest, roof, u, v, cell = bi - to.start, to.tiles, to.roof, to.u, to.v, to.cell
    noted = to.owner.shape[3] > 0
    j0, j1 = max(placed.rows[q, 0] - bj * BLOCK, 0), min(placed.rows[q, 1] - bj * BLOCK, BLOCK - 1)
    left, right = max(u[k, 0], crossing.low), min(u[k, BLOCK - 1], crossing.high)
    over = _least_apart(plate, under, left, right, v[bj, j0], v[bj, j0])
    step = (plate.c - under.c) * cell
    for j in range(j0, j1 + 1):
        if over + step * (j - j0) >= roof[m, bj, k, j]:
            continue
        first, last = _columns(placed.quads[q], cell, bj * BLOCK + j, bi, crossing)
        base, lower = plate.a + plate.c * v[bj, j], False
        for i in range(first, last + 1):
            z = base + plate.b * u[k, i]
            if z < lowest[m, bj, k, j, i]:
                lowest[m, bj, k, j, i], lower = z, True
                if noted:
                    to.owner[m, bj, k, j, i] = q
        if lower:
            top, below = -FAR, under.a + under.c * v[bj, j]
            for i in range(BLOCK):
                top = greater(top, lowest[m, bj, k, j, i] - (below + under.b * u[k, i]))
            roof[m, bj, k, j] = top


@njit()
def lower_to(from_row: int, to_row: int, to: Layers, placed: Placed, order: IntArray) -> None:
    """Lower layers to the plates of pairs, in block rows from_row..to_row-1 alone.

    order : which pairs, and in which order; little is left to do soon where far ones come first.
    """
    planes, u, v, cell, start = to.planes, to.u, to.v, to.cell, to.start
    crossings = np.empty(1, _CROSSING)
    noted = to.owner.shape[3] > 0
    for number in range(order.shape[0]):
        q = order[number]
        m, low, high = placed.layer[q], placed.rows[q, 0], placed.rows[q, 1]
        plate = Plane(placed.planes[q, 0], placed.planes[q, 1], placed.planes[q, 2])
        for bj in range(max(low // BLOCK, from_row), min(high // BLOCK + 1, to_row)):
            crossing = crossings[0]  # asked for here, so that the array outlives it
            _cross(placed.quads[q], placed.rows[q], bj, start + planes.shape[2], cell, crossing)
            back, front = max(v[bj, 0], low * cell), min(v[bj, BLOCK - 1], high * cell)
            for bi in range(max(crossing.first, start), crossing.last + 1):
                k = bi - start
                left, right = max(u[k, 0], crossing.low), min(u[k, BLOCK - 1], crossing.high)
                under = _under(planes[m, bj, k], u[k], v[bj])
                if _least_apart(plate, under, left, right, back, front) >= to.whole[m, bj, k]:
                    continue
                inner = crossing.whole_from <= bi * BLOCK and crossing.whole_to >= bi * BLOCK + BLOCK - 1
                if not noted and inner:
                    _lower_tile(to, m, bj, k, plate, under)
                else:
                    _lower_part(to, m, bj, bi, placed, q, plate, under, crossing)
                highest = to.roof[m, bj, k, 0]
                for j in range(1, BLOCK):
                    highest = greater(highest, to.roof[m, bj, k, j])
                to.whole[m, bj, k] = highest
