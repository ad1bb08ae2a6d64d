"""A fitted surface as tiles: few enough numbers to reckon with whole covariances."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid, IntArray
from crestcut.terrain.breaklines.breaks import Break

SIDE = 0.10  # m, of the finest tile
MOST = 900  # tiles aimed at
COARSEST = 8  # finest tiles on a side of the largest
UNEVEN = 6.0  # times what is usual about a plane: there a large tile would flatten a hump
ENOUGH = 16  # nodes that tell so much
NEAR_BREAK = 0.25  # m either side of a break where tiles stay fine
FILLED = 0.6  # share of a tile's nodes that must be measured


@dataclass(frozen=True, eq=False)
class Tiles:
    """uv (n, 2) where their measured nodes lie on average, m; mean (n,) height of those, m; side (n,) m;
    nodes (n,) how many there are; fine (n,) mean square of what they leave about a plane, m2."""

    uv: FloatArray
    mean: FloatArray
    side: FloatArray
    nodes: FloatArray
    fine: FloatArray

    def __len__(self) -> int:
        return len(self.mean)

    def taken(self, some: IntArray | slice) -> Tiles:
        """Some of them."""
        return Tiles(*(getattr(self, name)[some] for name in Tiles.__annotations__))

    @property
    def spread(self) -> FloatArray:
        """(n,) s^2 / 12, m2: variance along an axis of a place within each."""
        return self.side**2 / 12


def tiles_of(height: HeightGrid, usable: BoolArray, breaks: Sequence[Break], most: int = MOST) -> Tiles:
    """Square tiles, ``most`` or so, over what is measured and ``usable`` (ny, nx), fine at ``breaks``."""
    per = max(1, round(SIDE / height.frame.cell))
    z = np.where(usable, height.values, np.nan)
    fine = _blocks(z, per)
    count = int((fine[0] >= FILLED * per * per).sum())
    merge = 1
    while count / merge**2 > most and merge < COARSEST:
        merge += 1
    side = per * height.frame.cell
    if merge == 1:
        return _tiles(fine, per, side, height.frame.cell, np.ones(fine[0].shape, bool))
    rows, columns = fine[0].shape
    middle = _middles(rows, columns, side, height.frame.cell)
    near = np.zeros((rows, columns), bool)
    for line in breaks:
        across, along = line.across(middle.reshape(-1, 2))
        on = (np.abs(across) < NEAR_BREAK) & (np.abs(along) < line.length / 2 + NEAR_BREAK)
        near |= on.reshape(near.shape)
    # whole coarse tiles are split, so that every node is in one tile
    seen, _, left, _ = _blocks(z, per * merge)
    split = (left > UNEVEN * np.median(left[seen > 0])) & (seen >= ENOUGH)
    j, i = (k // merge for k in np.indices(near.shape))
    split[j[near], i[near]] = True
    split = split[j, i]
    small = _tiles(fine, per, side, height.frame.cell, split)
    masked = np.where(np.repeat(np.repeat(split, per, 0), per, 1)[: z.shape[0], : z.shape[1]], np.nan, z)
    coarse = _blocks(masked, per * merge)
    large = _tiles(coarse, per * merge, side * merge, height.frame.cell, np.ones(coarse[0].shape, bool))
    return Tiles(*(np.concatenate([getattr(a, n) for a in (small, large)]) for n in Tiles.__annotations__))


def _middles(rows: int, columns: int, side: float, cell: float) -> FloatArray:
    """(rows, columns, 2) middle of each block's nodes, m."""
    u = (np.arange(columns) + 0.5) * side - cell / 2
    v = (np.arange(rows) + 0.5) * side - cell / 2
    return np.stack(np.meshgrid(u, v), axis=-1)


Blocks = tuple[IntArray, FloatArray, FloatArray, FloatArray]


def _blocks(z: FloatArray, per: int) -> Blocks:
    """Of every block of ``per`` by ``per`` nodes: measured nodes, their mean height and mean square about a
    plane, and how far along u and v they lie from the block's middle on average (..., 2), nodes."""
    rows, columns = -(-z.shape[0] // per), -(-z.shape[1] // per)
    padded = np.full((rows * per, columns * per), np.nan)
    padded[: z.shape[0], : z.shape[1]] = z
    blocks = padded.reshape(rows, per, columns, per).swapaxes(1, 2).reshape(rows, columns, -1)
    known = np.isfinite(blocks)
    count = known.sum(axis=-1)
    some = np.maximum(count, 1)[..., None]
    mean = np.where(known, blocks, 0.0).sum(axis=-1, keepdims=True) / some
    away = np.where(known, blocks - mean, 0.0)
    t = np.arange(per) - (per - 1) / 2
    place = np.column_stack([np.tile(t, per), np.repeat(t, per)])
    # holes and edges move the middle of what is measured, which on a slope is height
    off = known @ place / some
    x, y = (np.where(known, place[:, k] - off[..., k : k + 1], 0.0) for k in (0, 1))
    xx, yy, xy = ((a * b).sum(axis=-1) for a, b in ((x, x), (y, y), (x, y)))
    xz, yz = ((a * away).sum(axis=-1) for a in (x, y))
    tilt = (xz**2 * yy - 2 * xz * yz * xy + yz**2 * xx) / np.maximum(xx * yy - xy**2, 1e-12)
    left = np.maximum((away**2).sum(axis=-1) - tilt, 0.0) / np.maximum(count - 3, 1)
    return count, mean[..., 0], left, off


def _tiles(blocks: Blocks, per: int, side: float, cell: float, on: BoolArray) -> Tiles:
    count, mean, left, off = blocks
    use = on & (count >= FILLED * per * per)
    middle = _middles(count.shape[0], count.shape[1], side, cell) + off * cell
    n = int(use.sum())
    return Tiles(middle[use], mean[use], np.full(n, side), count[use].astype(float), left[use])
