"""Which pieces the finished surface is made of: few flat facets under the plan, each a run of rows of slots.

Over each connected piece of the cut a sheared grid is laid that leans as the cut does. Of every rectangle of
it the flattest surface below the plan is known by closed form: the least-squares ruled plane
z = a + b x + c y + d x y, let down until it touches (what it lies too deep is then the fall times its cells).
Dynamic programming across the rows, and along them in up to ``MOST_ALONG`` parts, finds for every number of
settings the facets that take the least concrete more than the plan.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.work.site import Site

SHORTEST = 0.15  # m: no row of slots and no piece across is shorter: what is less goes by hand
ROW = 0.05  # m: rows are taken together in steps of this, or of a 24th of the cut
MOST_ROWS = 24
MOST_ALONG = 2  # settings one behind the other in one row: the board comes by once for each
PARTS = 6  # places where one may end and the next begin
TOGETHER = 0.05  # m: pieces no farther apart are one

Rectangle = tuple[int, int, float, float, float, int]  # rows, columns at row 0 of the piece, lean, that row


@dataclass(frozen=True)
class Laid:
    """One piece's facets by how many settings they are; ``more`` : m3 of concrete beyond the plan."""

    more: float
    pieces: tuple[Rectangle, ...]


def lay_facets(site: Site, core: BoolArray, most: int) -> list[Laid]:
    """The best facets for 1, 2 .. ``most`` settings in all, as far as there are any.

    core : (ny, nx) what is cut for its own sake; of it small pieces and those that no flat facet follows
    within the limits are in none.
    """
    apart = max(round(TOGETHER / site.cell / 2), 1)
    label, _ = ndimage.label(ndimage.binary_dilation(core, iterations=apart))
    found: dict[int, Laid] = {0: Laid(0.0, ())}
    for number in range(1, int(label.max()) + 1):
        here = _Piece.of(site, core & (label == number))
        if here is None:
            continue
        both: dict[int, Laid] = {}
        for (k, old), (n, new) in itertools.product(found.items(), here.best(most).items()):
            sum_ = Laid(old.more + new.more, (*old.pieces, *new.pieces))
            if k + n <= most and (k + n not in both or sum_.more < both[k + n].more):
                both[k + n] = sum_
        found = both or found
    return [found[k] for k in sorted(found) if k]


class _Piece:
    """One connected piece of the cut on its sheared grid."""

    def __init__(self, site: Site, core: BoolArray) -> None:
        rows = np.flatnonzero(core.any(axis=1))
        self.first, count = int(rows[0]), int(rows[-1] - rows[0]) + 1
        self.cell, self.lean = site.cell, _lean(site, core)
        shift = np.rint(self.lean * np.arange(count)).astype(int)
        at = np.argwhere(core)
        columns = at[:, 1] - shift[at[:, 0] - self.first]
        self.column, wide = int(columns.min()), int(np.ptp(columns)) + 1
        part = (rows[0] + np.arange(count)[:, None], self.column + np.arange(wide) + shift[:, None])
        inside = (part[1] >= 0) & (part[1] < core.shape[1])
        part = part[0], np.clip(part[1], 0, core.shape[1] - 1)
        self.core = core[part] & inside
        self.plan = site.finished[part]
        lowest = site.ground - (np.inf if site.allowed is None else site.allowed)
        self.lowest = np.where(inside & ~np.isnan(site.ground[part]), lowest[part], np.inf)
        unit = max(round(ROW / site.cell), math.ceil(count / MOST_ROWS))
        self.rows = [*range(0, max(count - unit // 2, 1), unit), count]
        self.columns = np.unique(np.rint(np.linspace(0, wide, PARTS + 1)).astype(int)).tolist()
        self._sums(count, wide)

    @staticmethod
    def of(site: Site, core: BoolArray) -> _Piece | None:
        """None where there is no room for a row of slots."""
        tall = np.ptp(np.flatnonzero(core.any(axis=1))) + 1 if core.any() else 0
        return _Piece(site, core) if tall * site.cell >= SHORTEST else None

    def _sums(self, count: int, wide: int) -> None:
        """Moments of the plan over the core, summed from the first row and column on."""
        y, x = np.mgrid[:count, :wide] * self.cell
        self.basis = np.stack([np.ones_like(x), x, y, x * y], axis=-1)
        self.base = float(np.nanmean(self.plan[self.core]))
        z = np.where(self.core, self.plan - self.base, 0.0)
        weighed = np.where(self.core[..., None], self.basis, 0.0)
        both = weighed[..., :, None] * self.basis[..., None, :]
        self.moments = [
            np.pad(v.cumsum(axis=0).cumsum(axis=1), ((1, 0), (1, 0)) + ((0, 0),) * (v.ndim - 2))
            for v in (both, weighed * z[..., None], self.core.astype(float))
        ]

    def more(self, low: int, high: int, columns: Sequence[tuple[int, int]]) -> list[float]:
        """What the flattest facet under each rectangle of these rows takes beyond the plan, in metres times
        nodes; infinite where a limit forbids it."""
        first, last = np.array(columns).T
        square, right, cells = (
            m[high, last] - m[low, last] - m[high, first] + m[low, first] for m in self.moments
        )
        ridge = 1e-9 * np.trace(square, axis1=1, axis2=2)[:, None, None] * np.eye(4)
        known = cells >= 4
        plane = np.zeros(right.shape)
        plane[known] = np.linalg.solve((square + ridge)[known], right[known][..., None])[..., 0]
        return [self._taken(plane[k], (low, high, *box), float(cells[k])) for k, box in enumerate(columns)]

    def _taken(self, plane: FloatArray, box: tuple[int, int, int, int], cells: float) -> float:
        """The same of the plane that lies best under one of them."""
        if cells < 4:
            return math.inf if cells else 0.0
        part = slice(box[0], box[1], 2), slice(box[2], box[3], 2)
        level = self.basis[part] @ plane + self.base
        core = self.core[part]
        if not core.any():
            return math.inf
        fall = float((level - self.plan[part])[core].max())
        if float((self.lowest[part] - level).max()) + fall > 1e-9:
            return math.inf
        return fall * float(cells)

    def _along(self, cost: dict[tuple[int, int], float]) -> dict[int, tuple[float, list[int]]]:
        """For 1, 2 .. settings along these rows: what they take more, and the columns where they meet."""
        ends = len(self.columns) - 1
        best: list[dict[int, tuple[float, list[int]]]] = [{} for _ in range(ends + 1)]
        best[0][0] = (0.0, [0])
        for a, b in sorted(cost, key=lambda part: part[1]):
            if (self.columns[b] - self.columns[a]) * self.cell < SHORTEST and (a, b) != (0, ends):
                continue
            for k, (old, places) in best[a].items():
                more = old + cost[a, b]
                if k < MOST_ALONG and more < best[b].get(k + 1, (math.inf, []))[0]:
                    best[b][k + 1] = more, [*places, b]
        return best[ends]

    def best(self, most: int) -> dict[int, Laid]:
        """For every number of settings the facets that take least; rows that no facet may follow are left out
        at the price of more than any facet.
        """
        rows = self.rows
        whole = len(rows) - 1
        none = 10.0 * float(self.core.sum())
        at: list[dict[int, tuple[float, tuple[Rectangle, ...]]]] = [{} for _ in rows]
        at[0][0] = (0.0, ())
        ends = len(self.columns) - 1
        # a part that neither begins nor ends where the cut does has one more on either side
        pairs = [
            (a, b)
            for a, b in itertools.combinations(range(ends + 1), 2)
            if (a > 0) + 1 + (b < ends) <= MOST_ALONG
        ]
        boxes = [(self.columns[a], self.columns[b]) for a, b in pairs]
        for q in range(1, whole + 1):
            for p in range(q):
                thin = (rows[q] - rows[p]) * self.cell < SHORTEST
                ways = {0: (none * (q - p) / whole, [0])}
                if not thin or whole == 1:
                    ways |= self._along(dict(zip(pairs, self.more(rows[p], rows[q], boxes), strict=True)))
                for (k, (old, done)), (n, (more, places)) in itertools.product(at[p].items(), ways.items()):
                    sum_ = old + more
                    if k + n <= most and sum_ < at[q].get(k + n, (math.inf, ()))[0]:
                        at[q][k + n] = sum_, (*done, *self._named(rows[p], rows[q], places))
        return {
            k: Laid(more * self.cell**2, done) for k, (more, done) in at[whole].items() if math.isfinite(more)
        }

    def _named(self, low: int, high: int, places: Sequence[int]) -> list[Rectangle]:
        """Rows and columns of the site for places of the piece; one node more at both outer ends."""
        out = []
        for a, b in itertools.pairwise(places):
            left = self.column + self.columns[a] - (1.0 if a == 0 else 0.0)
            right = self.column + float(self.columns[b])
            out.append((self.first + low, self.first + high - 1, left, right, self.lean, self.first))
        return out


def _lean(site: Site, core: BoolArray) -> float:
    """Columns a row by which the cut's middle moves, weighed by depth."""
    depth = np.where(core, site.depth, 0.0)
    weight = depth.sum(axis=1)
    rows = np.flatnonzero(weight > 0)
    if len(rows) < 2:
        return 0.0
    middle = (depth[rows] * np.arange(depth.shape[1])).sum(axis=1) / weight[rows]
    return float(np.polyfit(rows, middle, 1, w=np.sqrt(weight[rows]))[0])
