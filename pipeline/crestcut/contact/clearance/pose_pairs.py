"""Pairs of pose and part over the ground: least gaps, and how low they reach. What calls the compiled
loops."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.parallel import share
from crestcut.contact.clearance.blocks import (
    BLOCK,
    block_planes,
    least_gaps,
    lower_to,
    node_lines,
    roof_of,
    tiled,
    untiled,
)
from crestcut.contact.clearance.kernels import FAR, planes_of

# poses apart in the first passes of a sweep: what far ones have reached spares most of the work of the others
STRIDES = (64, 16, 1)
PAIRS_AT_ONCE = 2000


@dataclass(frozen=True, eq=False)
class Pairs:
    """Poses and parts to be swept, (q,) each: indices into a batch and into the parts."""

    pose: IntArray
    part: IntArray


@dataclass(frozen=True, eq=False)
class Placed:
    """Pairs as ``kernels.planes_of`` puts them over the grid: planes (q, 3), quads (q, 4, 2), rows (q, 2)."""

    planes: FloatArray
    quads: FloatArray
    rows: IntArray

    def some(self, which: IntArray) -> Placed:
        """Those of the pairs alone."""
        return Placed(self.planes[which], self.quads[which], self.rows[which])


@dataclass(frozen=True, eq=False)
class Kept:
    """What an earlier sweep found and a new one may take over.

    pairs : (q,) bool, whose least gap is what it was.  lowest : (zones, ny, nx) of the earlier sweep, FAR
    where nothing reached.  blocks : (zones, block rows, block columns) bool, where it is what it was.
    """

    pairs: BoolArray
    lowest: FloatArray
    blocks: BoolArray


def pairs_of(pose: IntArray, part: IntArray) -> Pairs:
    """Pairs as the kernels want them."""
    return Pairs(np.ascontiguousarray(pose, dtype=np.int64), np.ascontiguousarray(part, dtype=np.int64))


def place_pairs(
    pairs: Pairs,
    position: FloatArray,
    rotation: FloatArray,
    plates: FloatArray,
    frames: IntArray,
    cell: float,
    rows: int,
) -> Placed:
    """Where every pair's plate lies. position, rotation : of a batch.  plates (m, 6) and frames (m,) :
    ``sweep.part_arrays``.  rows : of the grid."""
    n = len(pairs.pose)
    planes, quads, span = np.empty((n, 3)), np.empty((n, 4, 2)), np.empty((n, 2), np.int64)
    planes_of(pairs.pose, pairs.part, position, rotation, plates, frames, cell, rows, planes, quads, span)
    return Placed(planes, quads, span)


def planes_under(tiles: FloatArray, cell: float) -> FloatArray:
    """``blocks.block_planes`` of tiles (.., block rows, block columns, BLOCK, BLOCK)."""
    block = np.empty((*tiles.shape[:-2], 4))
    many, out = tiles.reshape(-1, *tiles.shape[-4:]), block.reshape(-1, *block.shape[-3:])
    for k in range(len(many)):
        block_planes(many[k], cell, out[k])
    return block


def least_of_pairs(tiles: FloatArray, blocks: FloatArray, placed: Placed, cell: float) -> FloatArray:
    """Least gap of every pair to a ground in tiles, (q,) m; ``FAR`` where it meets nothing measured."""
    least = np.empty(len(placed.planes))
    u, v = node_lines(tiles, cell)
    fixed = (
        tiles,
        cell,
        u,
        v,
        blocks,
        roof_of(tiles, blocks, cell)[0],
        placed.planes,
        placed.quads,
        placed.rows,
    )
    share(
        lambda a, b: least_gaps(a, b, *fixed, least),
        len(least),
        PAIRS_AT_ONCE,
    )
    return least


def lowest_of_pairs(
    zones: int, shape: tuple[int, int], blocks: FloatArray, placed: Placed, zone: IntArray, pose: IntArray,
    cell: float, kept: Kept | None = None,
) -> FloatArray:  # fmt: skip
    """Lowest height of every zone over every node, (zones, ny, nx) m; ``FAR`` where nothing reaches.

    blocks : ``planes_under`` the ground.  zone, pose (q,) : of the pairs.
    """
    lowest = np.full((zones, *blocks.shape[:2], BLOCK, BLOCK), FAR)
    lowest[:, -1, :, BLOCK - (-shape[0] % BLOCK) :, :] = -FAR  # no node there: nothing to be lowered
    lowest[:, :, -1, :, BLOCK - (-shape[1] % BLOCK) :] = -FAR
    if kept is not None:
        lowest = np.where(kept.blocks[..., None, None], tiled(kept.lowest, -FAR), lowest)
    nobody = np.empty((*lowest.shape[:3], 0, 0), np.int64)
    under = np.ascontiguousarray(np.broadcast_to(blocks, (zones, *blocks.shape)))
    left = np.ones(len(pose), dtype=bool)
    for stride in STRIDES:
        order = np.flatnonzero(left & (pose % stride == 0))
        left[order] = False
        roof, whole = roof_of(lowest, under, cell)
        if kept is not None:
            whole[kept.blocks] = -FAR  # nothing comes below this: they are passed over
        lower_pairs(lowest, nobody, roof, whole, under, placed, zone, order, cell)
        if stride > 1:  # the nearer the planes to what is reached, the sharper the bounds
            under = planes_under(lowest, cell)
    return untiled(lowest, *shape)


def lower_pairs(
    lowest: FloatArray, owner: IntArray, roof: FloatArray, whole: FloatArray, under: FloatArray,
    placed: Placed,
    layer: IntArray, order: IntArray, cell: float,
) -> None:  # fmt: skip
    """``blocks.lower_to`` with its rows of blocks shared out among the cores."""
    u, v = node_lines(lowest, cell)
    where = (placed.planes, placed.quads, placed.rows, layer, order)
    share(
        lambda a, b: lower_to(a, b, cell, u, v, under, *where, lowest, owner, roof, whole),
        lowest.shape[1],
    )
