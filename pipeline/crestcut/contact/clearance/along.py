"""Places along a long ground, in columns of blocks: which of them poses reach, and in what pieces they are
gone through, so that what is held at a time does not grow with the lane."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from crestcut.base.grid import BoolArray, IntArray
from crestcut.contact.clearance.blocks import BLOCK
from crestcut.contact.clearance.kernels import Plates
from crestcut.contact.records import Batch

PIECE = 80  # columns of blocks swept at a time, or up to twice as many: at 10 mm what is under 25 m is one


class Reach(NamedTuple):
    """Columns of blocks along a ground that the plates of each pose may cover: the first, and the one after
    the last, (n,). Along u alone, by how far a plate reaches from where its body stands: an outer bound."""

    first: IntArray
    stop: IntArray


def reach_of(plates: Plates, cell: float, columns: int, *batches: Batch) -> Reach:
    """Of poses as they stand in any of the batches, over a ground of so many columns of blocks."""
    corner = np.abs(plates.edges).reshape(-1, 3, 2).max(axis=2)
    far = float(np.hypot.reduce(corner, axis=1).max(initial=0.0)) + 2 * cell  # a node to spare
    low = np.minimum.reduce([b.position[..., 0].min(axis=1) for b in batches])
    high = np.maximum.reduce([b.position[..., 0].max(axis=1) for b in batches])
    first = np.clip(np.floor((low - far) / (BLOCK * cell)).astype(np.int64), 0, columns)
    return Reach(first, np.clip(np.floor((high + far) / (BLOCK * cell)).astype(np.int64) + 1, 0, columns))


def covered(reach: Reach, poses: BoolArray, columns: int) -> BoolArray:
    """(columns,) that any of the poses (n,) may reach."""
    edges = np.zeros(columns + 1, np.int64)
    np.add.at(edges, reach.first[poses], 1)
    np.add.at(edges, reach.stop[poses], -1)
    return np.asarray(edges.cumsum()[:-1] > 0)


def runs(columns: BoolArray) -> list[tuple[int, int]]:
    """First column of every run of True, and the one after its last."""
    ends = np.flatnonzero(np.diff(np.concatenate([[0], columns, [0]])))
    return [(int(a), int(b)) for a, b in ends.reshape(-1, 2)]


def pieces(places: Sequence[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """Places of a long ground in pieces as of ``PIECE``: what is held at a time does not grow with it."""
    for first, stop in places:
        count = max((stop - first) // PIECE, 1)
        edges = [first + (stop - first) * k // count for k in range(count + 1)]
        yield from pairwise(edges)
