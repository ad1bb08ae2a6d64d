"""Pairs of pose and part over the ground: least gaps, and how low they reach. What calls the compiled
loops."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.parallel import share
from crestcut.contact.clearance.along import covered, pieces, reach_of, runs
from crestcut.contact.clearance.blocks import (
    BLOCK,
    Blocks,
    Layers,
    blocks_of,
    layers_of,
    least_gaps,
    lower_to,
    planes_under,
    tiled,
    untiled,
)
from crestcut.contact.clearance.kernels import FAR, Pairs, Placed, Plates, planes_of
from crestcut.contact.records import ZONES, Batch

# poses apart in the first passes of a sweep: what far ones have reached spares most of the work of the others
STRIDES = (64, 16, 1)
PAIRS_AT_ONCE = 2000


@dataclass(frozen=True, eq=False)
class Kept:
    """What an earlier sweep found and a new one may take over.

    pairs : (q,) bool, whose least gap is what it was.  lowest : of the earlier sweep, by zone, NaN where
    nothing reached, over the same blocks.  blocks : (zones, block rows, block columns) bool, where it is what
    it was.
    """

    pairs: BoolArray
    lowest: Mapping[str, FloatArray]
    blocks: BoolArray

    def until(self, columns: int) -> Kept:
        """Of the first so many columns of blocks."""
        return Kept(self.pairs, self.lowest, self.blocks[:, :, :columns])


def every_pair(poses: IntArray, parts: int) -> Pairs:
    """Each of the poses with each of so many parts, pose by pose."""
    return Pairs(np.repeat(poses, parts), np.tile(np.arange(parts), len(poses)))


def place_pairs(pairs: Pairs, batch: Batch, plates: Plates, over: Blocks) -> Placed:
    """Where every pair's plate lies as the vehicle stands over a ground."""
    n = len(pairs.pose)
    out = Placed(
        np.empty((n, 3)), np.empty((n, 4, 2)), np.empty((n, 2), np.int64), pairs.pose, plates.zone[pairs.part]
    )
    planes_of(pairs, batch.position, batch.rotation, plates, over.cell, over.shape[0], out)
    return out


def least_of_pairs(over: Blocks, placed: Placed) -> FloatArray:
    """Least gap of every pair to a ground, (q,) m; ``FAR`` where it meets nothing measured."""
    least = np.empty(len(placed.planes))
    share(lambda a, b: least_gaps(a, b, over, placed, least), len(least), PAIRS_AT_ONCE)
    return least


def gaps_of_poses(ground: FloatArray, cell: float, batch: Batch, plates: Plates) -> FloatArray:
    """Least gap of each part at each pose to a ground (ny, nx), m, ``VOID`` where not measured: (n, parts) m;
    ``FAR`` where it meets nothing measured and of poses with a tyre on nothing.

    Only the ground about the poses is looked at, piece by piece: of a long lane it may be little.
    """
    parts, columns = len(plates.edges), -(-ground.shape[1] // BLOCK)
    reach, out = reach_of(plates, cell, columns, batch), np.full((len(batch.live), len(plates.edges)), FAR)
    for first, stop in pieces(runs(covered(reach, batch.live, columns))):
        poses = np.flatnonzero(batch.live & (reach.first >= first) & (reach.first < stop))
        end = int(reach.stop[poses].max(initial=stop))
        over = blocks_of(ground[:, first * BLOCK : min(end * BLOCK, ground.shape[1])], cell, first)
        gaps = least_of_pairs(over, place_pairs(every_pair(poses, parts), batch, plates, over))
        out[poses] = gaps.reshape(len(poses), parts)
    return out


def lowest_of_pairs(over: Blocks, placed: Placed, kept: Kept | None = None) -> FloatArray:
    """Lowest height of every zone over every node, (zones, ny, nx) m; ``FAR`` where nothing reaches."""
    shape, blocks = over.shape, over.planes
    lowest = np.full((len(ZONES), *blocks.shape[:2], BLOCK, BLOCK), FAR)
    lowest[:, -1, :, BLOCK - (-shape[0] % BLOCK) :, :] = -FAR  # no node there: nothing to be lowered
    lowest[:, :, -1, :, BLOCK - (-shape[1] % BLOCK) :] = -FAR
    if kept is not None:
        for zone, free, name in zip(lowest, kept.blocks, ZONES, strict=True):
            if name in kept.lowest:
                was = tiled(np.nan_to_num(kept.lowest[name], nan=FAR), -FAR)
                zone[free] = was[free]
    under = np.ascontiguousarray(np.broadcast_to(blocks, (len(ZONES), *blocks.shape)))
    left = np.ones(len(placed.pose), dtype=bool)
    for stride in STRIDES:
        order = np.flatnonzero(left & (placed.pose % stride == 0))
        left[order] = False
        layers = layers_of(lowest, under, over.cell, start=over.start)
        if kept is not None:
            layers.whole[kept.blocks] = -FAR  # nothing comes below this: they are passed over
        lower_pairs(layers, placed, order)
        if stride > 1:  # the nearer the planes to what is reached, the sharper the bounds
            under = planes_under(lowest, over.cell)
    out = np.empty((len(ZONES), *shape))
    for zone, tiles in zip(out, lowest, strict=True):
        zone[:] = untiled(tiles, *shape)
    return out


def lower_pairs(layers: Layers, placed: Placed, order: IntArray) -> None:
    """``blocks.lower_to`` with its rows of blocks shared out among the cores."""
    share(lambda a, b: lower_to(a, b, layers, placed, order), layers.tiles.shape[1])
