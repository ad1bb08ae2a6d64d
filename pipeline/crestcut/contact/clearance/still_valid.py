"""What of an earlier sweep still holds after the ground was changed in places."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.contact.clearance.along import Reach, covered, runs
from crestcut.contact.clearance.blocks import BLOCK, Blocks
from crestcut.contact.clearance.kernels import Placed
from crestcut.contact.clearance.pose_pairs import Kept
from crestcut.contact.records import ZONES, Batch, Clearance, Ride
from crestcut.contact.stand.ground import contact_ground
from crestcut.terrain import Surface


@dataclass(frozen=True, eq=False)
class Swept:
    """An earlier sweep: the surface, the ride on it and what it left."""

    surface: Surface
    ride: Ride
    clearance: Clearance

    def serves(self, batch: Batch, parts: int, cells: bool) -> FloatArray | None:
        """Its gaps, (poses, parts) m, where it was of the same poses and as many parts, and kept what is
        asked; else None. cells : as of ``sweep``: one made without has no lowest heights to take over."""
        old, gaps = self.ride.batch, self.clearance.pair_gap
        if cells and not self.clearance.lowest:
            return None
        same = old.places is batch.places or np.array_equal(old.places, batch.places)
        same = same and np.array_equal(old.live, batch.live)
        return gaps if same and gaps is not None and gaps.shape[1] == parts else None


def changed_blocks(before: Surface, ground: FloatArray) -> BoolArray:
    """(block rows, block columns) where the ground is another than it was.  ground : now, (ny, nx) m."""
    other = ground != contact_ground(before)
    rows, columns = (-(-n // BLOCK) for n in other.shape)
    padded = np.zeros((rows * BLOCK, columns * BLOCK), bool)
    padded[: other.shape[0], : other.shape[1]] = other
    return np.asarray(padded.reshape(rows, BLOCK, columns, BLOCK).any(axis=(1, 3)))


def concerned(old: Batch, batch: Batch, changed: BoolArray, reach: Reach) -> list[tuple[int, int]]:
    """Places along a ground where anything may be other than it was: first column of blocks and the one
    after the last; of a long lane with a cut in one place few. Any pose that may reach any block that
    ``still_true`` does not keep lies within one of them with all its plates.

    old, batch : as the poses stood and stand.  changed : as of ``changed_blocks``.
    """
    moved = (old.position != batch.position).any(axis=(1, 2))
    moved |= (old.rotation != batch.rotation).any(axis=(1, 2, 3))
    touched = changed.any(axis=0) | covered(reach, moved, changed.shape[1])
    many = np.concatenate([[0], touched.cumsum()])
    return runs(covered(reach, batch.live & (many[reach.stop] > many[reach.first]), changed.shape[1]))


def still_true(
    earlier: Mapping[str, FloatArray], was: Placed, now: Placed, changed: BoolArray, over: Blocks
) -> Kept:
    """Pairs that stand as they stood over ground that is as it was keep their gap; blocks that no other pair
    touched or touches keep what was reached there.

    earlier : lowest heights by zone over ``over``, the ground or a part of it that holds all the pairs.  was,
    now : the pairs as they stood and stand.  changed : as of ``changed_blocks``, of ``over``.
    """
    moved = (was.planes != now.planes).any(axis=1) | (was.quads != now.quads).any(axis=(1, 2))
    before, after = _blocks_under(was, over), _blocks_under(now, over)
    many = np.zeros((changed.shape[0] + 1, changed.shape[1] + 1), np.int64)
    many[1:, 1:] = changed.cumsum(axis=0).cumsum(axis=1)
    j0, j1, i0, i1 = after.T
    over_change = many[j1, i1] - many[j0, i1] - many[j1, i0] + many[j0, i0] > 0
    touched = np.zeros((len(ZONES), *many.shape), np.int64)
    for j0, j1, i0, i1 in (before[moved].T, after[moved].T):
        for j, i, sign in ((j0, i0, 1), (j1, i1, 1), (j0, i1, -1), (j1, i0, -1)):
            np.add.at(touched, (now.layer[moved], j, i), sign)
    free = touched.cumsum(axis=1).cumsum(axis=2)[:, :-1, :-1] == 0
    return Kept(~moved & ~over_change, earlier, np.asarray(free, dtype=bool))


def _blocks_under(placed: Placed, over: Blocks) -> IntArray:
    """Blocks round every pair's plate, a node to spare: first row, row after the last, the same of
    columns, counted from the first of ``over``; (q, 4)."""
    low, high = placed.quads.min(axis=1) / over.cell - 1, placed.quads.max(axis=1) / over.cell + 1
    first, stop = np.floor(low / BLOCK).astype(int), np.floor(high / BLOCK).astype(int) + 1
    first[:, 0] -= over.start
    stop[:, 0] -= over.start
    rows, columns = over.planes.shape[:2]
    return np.stack(
        [
            np.clip(first[:, 1], 0, rows),
            np.clip(stop[:, 1], 0, rows),
            np.clip(first[:, 0], 0, columns),
            np.clip(stop[:, 0], 0, columns),
        ],
        axis=1,
    )
