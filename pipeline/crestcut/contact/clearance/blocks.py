"""Sweeping plates over a ground that is cut into square blocks, so that few nodes need looking at. Compiled.

Over each block the ground is a sloped plane plus a remainder (``block_planes``). A plate less that plane is a
plane too, so its least value over the block lies at a corner: one subtraction bounds the gap of all the
block's nodes from below, and tells whether the plate can come under what was reached there before. Only
blocks that pass are gone through node by node. Exact: nothing is left out that a full pass would find.

Tiles (.., block rows, block columns, BLOCK, BLOCK) keep each block's nodes together. Grid axes, metres.
"""

from __future__ import annotations

import math
from typing import TypeVar

import numpy as np
from numba import njit
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray
from crestcut.contact.clearance.kernels import EDGE, FAR, column_range, strip_range

T = TypeVar("T", np.float64, np.int64)
BLOCK = 16  # nodes along the side of a block: two of the widest registers
NO_GROUND = -1.0e8  # a node below this was not measured
ROUNDING = 1e-11  # m: adding up a bound in another order than a height may differ by this much
# no height is a NaN: lets a running minimum be taken several nodes at a time, to the same last digit
_REDUCE = {"nnan", "nsz"}


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


def node_lines(tiles: FloatArray, cell: float) -> tuple[FloatArray, FloatArray]:
    """u (block columns, BLOCK) and v (block rows, BLOCK) of the nodes of tiles, m."""
    rows, columns = tiles.shape[-4:-2]
    u, v = np.arange(columns * BLOCK) * cell, np.arange(rows * BLOCK) * cell
    return u.reshape(columns, BLOCK), v.reshape(rows, BLOCK)


def roof_of(lowest: FloatArray, block: FloatArray, cell: float) -> tuple[FloatArray, FloatArray]:
    """How far tiles stand at most above their blocks' planes: row by row (.., BLOCK), and each block as a
    whole."""
    roof = np.empty(lowest.shape[:-1])
    _roofs(lowest.reshape(-1, BLOCK, BLOCK), block.reshape(-1, 4), cell, roof.reshape(-1, BLOCK))
    return roof, roof.max(axis=-1)


@njit(cache=True, nogil=True, error_model="numpy", fastmath=_REDUCE)
def _roofs(tiles: np.ndarray, block: np.ndarray, cell: float, roof: np.ndarray) -> None:
    away = (np.arange(BLOCK) - 0.5 * (BLOCK - 1)) * cell
    for k in range(tiles.shape[0]):
        p = block[k]
        for j in range(BLOCK):
            top, plain = -FAR, p[0] + p[2] * away[j]
            for i in range(BLOCK):
                top = max(top, tiles[k, j, i] - (plain + p[1] * away[i]))
            roof[k, j] = top


@njit(cache=True, nogil=True, error_model="numpy")
def block_planes(tiles: np.ndarray, cell: float, block: np.ndarray) -> None:
    """A plane for every block, (block rows, block columns, 4): height at the block's middle, slopes along u
    and v, and how far the highest node stands above it (-FAR where nothing is measured).

    Any plane would do; the nearer to the nodes, the tighter the bounds. Least squares along each axis alone.
    """
    half = 0.5 * (BLOCK - 1)
    for bj in range(block.shape[0]):
        for bi in range(block.shape[1]):
            tile, p = tiles[bj, bi], block[bj, bi]
            n = su = sv = suu = svv = z = zu = zv = 0.0
            for j in range(BLOCK):
                for i in range(BLOCK):
                    h = tile[j, i]
                    if NO_GROUND < h < FAR / 2:
                        u, v = (i - half) * cell, (j - half) * cell
                        n, su, sv, suu, svv = n + 1.0, su + u, sv + v, suu + u * u, svv + v * v
                        z, zu, zv = z + h, zu + h * u, zv + h * v
            p[0] = p[1] = p[2] = 0.0
            p[3] = -FAR
            if n > 0.0:
                spread_u, spread_v = suu - su * su / n, svv - sv * sv / n
                p[1] = (zu - z * su / n) / spread_u if spread_u > 0.0 else 0.0
                p[2] = (zv - z * sv / n) / spread_v if spread_v > 0.0 else 0.0
                p[0] = (z - p[1] * su - p[2] * sv) / n
                for j in range(BLOCK):
                    for i in range(BLOCK):
                        if NO_GROUND < tile[j, i] < FAR / 2:
                            plain = p[0] + p[1] * (i - half) * cell + p[2] * (j - half) * cell
                            p[3] = max(p[3], tile[j, i] - plain)


@njit(cache=True, nogil=True, error_model="numpy")
def _crossing(
    quad: np.ndarray, cell: float, bj: int, rows: np.ndarray, most: int, reach: np.ndarray, ends: np.ndarray
) -> None:
    """Where a plate crosses a row of blocks.

    rows : (2,) first and last row of nodes that the plate covers.  Out: reach (5,) first and last block
    touched, first and last column covered in all rows of the block row (its outline is convex: what it covers
    in the first and the last row it covers in all between), and 1 where no corner lies between: then its ends
    run straight, ends (4,) = u of the left end and its change from row to row, the same of the right end.
    """
    j0, j1 = max(bj * BLOCK, rows[0]), min(bj * BLOCK + BLOCK - 1, rows[1])
    low_v, high_v = quad[0, 1], quad[0, 1]
    for k in range(1, 4):
        low_v, high_v = min(low_v, quad[k, 1]), max(high_v, quad[k, 1])
    v0, v1 = min(max(j0 * cell, low_v), high_v), min(max(j1 * cell, low_v), high_v)
    low, high = strip_range(quad, v0, v1)
    low_0, high_0 = strip_range(quad, v0, v0)
    low_1, high_1 = strip_range(quad, v1, v1)
    reach[0] = max(int(low / cell - EDGE), 0) // BLOCK
    reach[1] = min(int(high / cell + 1.0) // BLOCK, most - 1) if high >= 0.0 else -1
    whole = j1 - j0 == BLOCK - 1
    reach[2] = math.ceil(max(low_0, low_1) / cell - EDGE) if whole else most * BLOCK
    reach[3] = math.floor(min(high_0, high_1) / cell + EDGE) if whole else -1
    reach[4] = 1 if j1 > j0 and v0 == j0 * cell and v1 == j1 * cell else 0
    for k in range(4):
        if v0 < quad[k, 1] < v1:
            reach[4] = 0
    if reach[4] == 1:
        ends[1], ends[3] = (low_1 - low_0) / (j1 - j0), (high_1 - high_0) / (j1 - j0)
        ends[0], ends[2] = low_0 - ends[1] * j0, high_0 - ends[3] * j0


@njit(cache=True, nogil=True, error_model="numpy")
def _columns(
    quad: np.ndarray, cell: float, j: int, bi: int, reach: np.ndarray, ends: np.ndarray
) -> tuple[int, int]:
    """First and last node of a block that a plate covers in row j, counted from the block's first."""
    if reach[4] == 1:
        first = math.ceil((ends[0] + ends[1] * j) / cell - EDGE)
        last = math.floor((ends[2] + ends[3] * j) / cell + EDGE)
    else:
        first, last = column_range(quad, cell, j, bi * BLOCK + BLOCK)
    return max(first - bi * BLOCK, 0), min(last - bi * BLOCK, BLOCK - 1)


@njit(cache=True, nogil=True, error_model="numpy", fastmath=_REDUCE)
def _least_in_tile(ground: np.ndarray, u: np.ndarray, v: np.ndarray, plate: np.ndarray) -> float:
    least, a, b, c = FAR, plate[0], plate[1], plate[2]
    for j in range(BLOCK):
        base = a + c * v[j]
        for i in range(BLOCK):
            least = min(least, base + b * u[i] - ground[j, i])
    return least


@njit(cache=True, nogil=True, error_model="numpy", fastmath=_REDUCE)
def _least_in_part(
    ground: np.ndarray, u: np.ndarray, v: np.ndarray, plate: np.ndarray, quad: np.ndarray, cell: float,
    rows: np.ndarray, bj: int, bi: int, reach: np.ndarray, ends: np.ndarray, p: np.ndarray, roof: np.ndarray,
    least: float,
) -> float:  # fmt: skip
    """The same where a plate covers a part of a tile. least : rows whose bound is not below are passed
    over."""
    half = 0.5 * (BLOCK - 1) * cell
    over = plate[0] + plate[1] * (u[0] + half) - abs(plate[1] - p[1]) * half - p[0] + p[2] * half - ROUNDING
    for j in range(max(rows[0] - bj * BLOCK, 0), min(rows[1] - bj * BLOCK + 1, BLOCK)):
        if over + plate[2] * v[j] - p[2] * j * cell - roof[j] >= least:
            continue
        first, last = _columns(quad, cell, bj * BLOCK + j, bi, reach, ends)
        base = plate[0] + plate[2] * v[j]
        for i in range(first, last + 1):
            least = min(least, base + plate[1] * u[i] - ground[j, i])
    return least


@njit(cache=True, nogil=True, error_model="numpy")
def least_gaps(
    from_pair: int, to_pair: int, ground: np.ndarray, cell: float, u: np.ndarray, v: np.ndarray,
    block: np.ndarray, roof: np.ndarray, planes: np.ndarray, quads: np.ndarray, span: np.ndarray,
    least: np.ndarray,
) -> None:  # fmt: skip
    """Least gap of pairs of pose and part, (q,) m; FAR over nothing measured.

    The most promising block of each is gone through first, then those whose bound is below what was found.
    ground : tiles, very low where unmeasured.  u, v : ``node_lines``.  block, roof : ``block_planes``,
    ``roof_of`` them. planes (q, 3), quads (q, 4, 2), span (q, 2) : ``kernels.planes_of``.
    """
    half = 0.5 * (BLOCK - 1) * cell
    most = block.shape[0] * block.shape[1]
    bound, which = np.empty(most), np.empty((most, 2), np.int64)
    reach, ends = np.empty((block.shape[0], 5), np.int64), np.empty((block.shape[0], 4))
    for q in range(from_pair, to_pair):
        plate, rows = planes[q], span[q]
        a, b, c = plate[0], plate[1], plate[2]
        count, nearest = 0, 0
        for bj in range(rows[0] // BLOCK, rows[1] // BLOCK + 1):
            _crossing(quads[q], cell, bj, rows, block.shape[1], reach[bj], ends[bj])
            height = a + c * (v[bj, 0] + half)
            for bi in range(reach[bj, 0], reach[bj, 1] + 1):
                p = block[bj, bi]
                if p[3] < -FAR / 2:
                    continue
                tilt = (abs(b - p[1]) + abs(c - p[2])) * half
                bound[count] = height + b * (u[bi, 0] + half) - p[0] - p[3] - tilt - ROUNDING
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
            if reach[bj, 2] <= bi * BLOCK and reach[bj, 3] >= bi * BLOCK + BLOCK - 1:
                best = min(best, _least_in_tile(ground[bj, bi], u[bi], v[bj], plate))
            else:
                best = _least_in_part(
                    ground[bj, bi], u[bi], v[bj], plate, quads[q], cell, rows, bj, bi, reach[bj], ends[bj],
                    block[bj, bi], roof[bj, bi], best,
                )  # fmt: skip
        least[q] = best


@njit(cache=True, nogil=True, error_model="numpy", fastmath=_REDUCE)
def _lower_tile(
    lowest: np.ndarray, u: np.ndarray, v: np.ndarray, plate: np.ndarray, p: np.ndarray, roof: np.ndarray
) -> None:
    """Lower a whole tile to a plate, and say how far each row of it then stands above the block's plane."""
    a, b, c, slope_u, slope_v = plate[0], plate[1], plate[2], p[1], p[2]
    under = p[0] - 0.5 * slope_u * (u[0] + u[BLOCK - 1]) - 0.5 * slope_v * (v[0] + v[BLOCK - 1])
    for j in range(BLOCK):
        base, below = a + c * v[j], under + slope_v * v[j]
        top = -FAR
        for i in range(BLOCK):
            z = min(lowest[j, i], base + b * u[i])
            lowest[j, i] = z
            top = max(top, z - (below + slope_u * u[i]))
        roof[j] = top


@njit(cache=True, nogil=True, error_model="numpy", fastmath=_REDUCE)
def _lower_part(
    lowest: np.ndarray, owner: np.ndarray, who: int, u: np.ndarray, v: np.ndarray, plate: np.ndarray,
    quad: np.ndarray, cell: float, rows: np.ndarray, bj: int, bi: int, reach: np.ndarray, ends: np.ndarray,
    p: np.ndarray, roof: np.ndarray,
) -> None:  # fmt: skip
    """The same where a plate covers a part of a tile; ``owner`` (unless empty) notes who lowered each
    node."""
    half = 0.5 * (BLOCK - 1) * cell
    over = plate[0] + plate[1] * (u[0] + half) - abs(plate[1] - p[1]) * half - p[0] - ROUNDING
    under = p[0] - p[1] * (u[0] + half) - p[2] * (v[0] + half)
    noted = owner.shape[0] > 0
    for j in range(max(rows[0] - bj * BLOCK, 0), min(rows[1] - bj * BLOCK + 1, BLOCK)):
        if over + plate[2] * v[j] - p[2] * (j * cell - half) >= roof[j]:
            continue
        first, last = _columns(quad, cell, bj * BLOCK + j, bi, reach, ends)
        base = plate[0] + plate[2] * v[j]
        for i in range(first, last + 1):
            z = base + plate[1] * u[i]
            if z < lowest[j, i]:
                lowest[j, i] = z
                if noted:
                    owner[j, i] = who
        top, below = -FAR, under + p[2] * v[j]
        for i in range(BLOCK):
            top = max(top, lowest[j, i] - (below + p[1] * u[i]))
        roof[j] = top


@njit(cache=True, nogil=True, error_model="numpy")
def lower_to(
    from_row: int, to_row: int, cell: float, u: np.ndarray, v: np.ndarray, block: np.ndarray,
    planes: np.ndarray, quads: np.ndarray, span: np.ndarray, layer: np.ndarray, order: np.ndarray,
    lowest: np.ndarray, owner: np.ndarray, roof: np.ndarray, whole: np.ndarray,
) -> None:  # fmt: skip
    """Lower ``lowest`` (layers of tiles) to the plates of pairs, in block rows from_row..to_row-1 alone.

    block (layers, .., 4), roof, whole : planes of the tiles and ``roof_of`` them.  layer (q,) : where each
    pair goes.  order : which pairs, and in which order; little is left to do soon where far ones come first.
    owner : tiles that note which pair lowered each node last, or empty (layers, .., 0, 0) to note nothing.
    """
    half = 0.5 * (BLOCK - 1) * cell
    reach, ends = np.empty(5, np.int64), np.empty(4)
    noted = owner.shape[3] > 0
    for k in range(order.shape[0]):
        q = order[k]
        m, plate, rows = layer[q], planes[q], span[q]
        a, b, c = plate[0], plate[1], plate[2]
        for bj in range(max(rows[0] // BLOCK, from_row), min(rows[1] // BLOCK + 1, to_row)):
            _crossing(quads[q], cell, bj, rows, block.shape[2], reach, ends)
            height = a + c * (v[bj, 0] + half)
            for bi in range(reach[0], reach[1] + 1):
                p = block[m, bj, bi]
                tilt = (abs(b - p[1]) + abs(c - p[2])) * half
                if height + b * (u[bi, 0] + half) - p[0] - tilt - ROUNDING >= whole[m, bj, bi]:
                    continue
                tile, top = lowest[m, bj, bi], roof[m, bj, bi]
                if not noted and reach[2] <= bi * BLOCK and reach[3] >= bi * BLOCK + BLOCK - 1:
                    _lower_tile(tile, u[bi], v[bj], plate, p, top)
                else:
                    mine = owner[m, bj, bi]
                    _lower_part(
                        tile, mine, q, u[bi], v[bj], plate, quads[q], cell, rows, bj, bi, reach, ends, p, top
                    )
                highest = top[0]
                for j in range(1, BLOCK):
                    highest = max(highest, top[j])
                whole[m, bj, bi] = highest
