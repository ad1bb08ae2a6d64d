"""The gap under a straightedge laid on a floor: on two high points, not levelled, in every place and
direction.

A straightedge no longer than L that rests on a and b shows, at x between them, the gap chord(a, b)(x) - h(x).
The largest such gap at x, over all a and b no more than L apart on a line through x,

    gap_L(x) = E_L h (x) - h(x),   E_L h(x) = max { w_a h(a) + w_b h(b) : a <= x <= b, b - a <= L },

needs no thought of which chords are blocked by ground between: a chord that is, lies under one that is not.
On a line E_L is the upper convex hull of every piece L long, highest over the pieces. Of the chords from one
left end a only the steepest counts: it lies over all others from a as far as it reaches, and beyond its right
end b chords from b, or from between, lie over what is left (induction from the right). That makes n W steps
for n places and W in a straightedge, where trying all pairs takes n W^2.

E_L is increasing, E_L(h + plane) = E_L h + plane, and E_L h >= h: a tilt of floor or straightedge changes
nothing.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.kernels import njit
from crestcut.base.parallel import share

WAYS: tuple[tuple[int, int], ...] = (
    (0, 1), (1, 0), (1, 1), (-1, 1), (1, 2), (-1, 2), (2, 1), (-2, 1),
    (1, 3), (-1, 3), (3, 1), (-3, 1), (2, 3), (-2, 3), (3, 2), (-3, 2),
)  # fmt: skip
"""Rows and columns a step: sixteen ways whose places are nodes, no two neighbours 19 degrees apart."""
_Step = tuple[BoolArray, int, int, int, IntArray]
MAIN = WAYS[:4]
"""Along, across and both diagonals: what many draws can afford."""


@njit()
def _along(z, shut, dj, di, reach, starts, first, last, gap, left, right):  # type: ignore[no-untyped-def]
    """Lines ``first`` .. ``last`` of one direction: raise ``gap`` and name the feet of the straightedge
    there.
    """
    ny, nx = z.shape
    for n in range(first, last):
        j0, i0 = starts[n, 0], starts[n, 1]
        count = 0
        j, i = j0, i0
        while 0 <= j < ny and 0 <= i < nx:
            count += 1
            j += dj
            i += di
        for a in range(count - 2):
            za = z[j0 + a * dj, i0 + a * di]
            if math.isnan(za):
                continue
            best, at = -np.inf, a + 1
            for b in range(a + 1, min(a + reach, count - 1) + 1):
                zb = z[j0 + b * dj, i0 + b * di]
                if math.isnan(zb) or shut[j0 + b * dj, i0 + b * di]:
                    break
                slope = (zb - za) / (b - a)
                if slope >= best:
                    best, at = slope, b
            for x in range(a + 1, at):
                jx, ix = j0 + x * dj, i0 + x * di
                under = za + best * (x - a) - z[jx, ix]
                if under > gap[jx, ix]:
                    gap[jx, ix] = under
                    left[jx, ix] = (j0 + a * dj) * nx + i0 + a * di
                    right[jx, ix] = (j0 + at * dj) * nx + i0 + at * di


@lru_cache(maxsize=128)
def line_starts(shape: tuple[int, int], way: tuple[int, int]) -> IntArray:
    """First node [row, column] of every line of nodes in a direction, (n, 2): the one before lies outside."""
    ny, nx = shape
    j, i = np.meshgrid(np.arange(ny), np.arange(nx), indexing="ij")
    before_j, before_i = j - way[0], i - way[1]
    outside = (before_j < 0) | (before_j >= ny) | (before_i < 0) | (before_i >= nx)
    return np.stack([j[outside], i[outside]], axis=1).astype(np.int64)


def shut_steps(measured: BoolArray, way: tuple[int, int]) -> BoolArray:
    """Nodes (ny, nx) that the step ``way`` reaches only over a node that is not measured: a wall can be
    thinner than a step.
    """
    (ny, nx), far = measured.shape, max(abs(way[0]), abs(way[1]))
    shut = np.zeros((ny, nx), bool)
    wide = np.pad(~measured, far)
    for k in range(1, far):
        # where the step passes midway between two nodes, both must be there
        for rounded in (math.floor, math.ceil):
            j, i = (far - rounded(w * k / far) for w in way)
            shut |= wide[j : j + ny, i : i + nx]
    return shut


@dataclass(frozen=True, eq=False)
class Straightedge:
    """A straightedge to be laid on floors that are measured in the same places.

    steps : of each direction, the nodes its steps cannot reach (``shut_steps``), rows and columns a step,
    steps in a straightedge, and first nodes of its lines.
    """

    steps: tuple[_Step, ...]

    @classmethod
    def of(
        cls, measured: BoolArray, cell: float, length: float, ways: tuple[tuple[int, int], ...] = WAYS
    ) -> Straightedge:
        """measured : (ny, nx).  cell : m between nodes.  length : m; a shorter one is tried as well."""
        steps = []
        for way in ways:
            reach = math.floor(length / (math.hypot(*way) * cell) + 1e-9)
            if reach >= 2:
                starts = line_starts((measured.shape[0], measured.shape[1]), way)
                steps.append((shut_steps(measured, way), *way, reach, starts))
        return cls(tuple(steps))

    def under(self, z: FloatArray, alone: bool = False) -> tuple[FloatArray, IntArray, IntArray]:
        """As ``gaps_under``. alone : on this core only, for who lays many floors at once."""
        z = np.ascontiguousarray(z, dtype=np.float64)
        gap = np.where(np.isnan(z), np.nan, 0.0)
        left, right = np.full(z.shape, -1, np.int64), np.full(z.shape, -1, np.int64)
        for step in self.steps:
            if alone:
                _along(z, *step, 0, len(step[-1]), gap, left, right)
                continue

            def work(first: int, last: int, step: _Step = step) -> None:
                _along(z, *step, first, last, gap, left, right)

            share(work, len(step[-1]), 16)
        return gap, left, right


def gaps_under(
    z: FloatArray, cell: float, length: float, ways: tuple[tuple[int, int], ...] = WAYS
) -> tuple[FloatArray, IntArray, IntArray]:
    """The largest gap under a straightedge at every node, and the flat indices of the two nodes it rests on.

    z : (ny, nx) heights, m; NaN where nothing is measured: no straightedge is laid over it, as over a wall or
    a column.  cell : m between nodes.  length : of the straightedge, m; a shorter one is tried as well.
    Returns gap (ny, nx) m, 0 where nothing is under any, NaN where z is; feet -1 where the gap is 0.
    """
    return Straightedge.of(~np.isnan(z), cell, length, ways).under(z)


def worst_gap(z: FloatArray, cell: float, length: float, ways: tuple[tuple[int, int], ...] = WAYS) -> float:
    """The largest gap anywhere, m; 0 where no straightedge finds room."""
    gap = gaps_under(z, cell, length, ways)[0]
    return float(np.nanmax(gap)) if np.isfinite(gap).any() else 0.0


def longest_reach(measured: BoolArray, cell: float) -> float:
    """The longest unbroken straight line over measured nodes, m, in the sixteen directions."""
    best = 0.0
    for way in WAYS:
        open_ = measured & ~shut_steps(measured, way)
        run = np.zeros(measured.shape, np.int64)
        # the steps that a line could still be longer by, one more in each turn
        longer = np.ones(measured.shape, bool)
        while longer.any():
            before = _moved(run, way) + 1
            before[~(open_ & _moved(measured, way))] = 0
            longer = before > run
            run = before
        best = max(best, float(run.max(initial=0)) * math.hypot(*way) * cell)
    return best


def _moved(values: NDArray[Any], way: tuple[int, int]) -> NDArray[Any]:
    """What stands one step before each node; 0 beyond the edge."""
    (ny, nx), far = values.shape, max(abs(way[0]), abs(way[1]))
    wide = np.pad(values, far)
    return wide[far - way[0] : far - way[0] + ny, far - way[1] : far - way[1] + nx].copy()
