"""Block heights and chalk lines for a facet: which two blocks of stock, and along which lines they slide.

A facet is a ruled plane; the concrete beside it slopes. A block of a height that stock makes is right
wherever the facet, drawn on, stands that height (less what the cutter reaches below the board) over the
concrete: that place on the first and on the last row is where its chalk line begins and ends, so heights
stay whole and few. What waves of the concrete still leave is sought out by trying the neighbouring places
and heights.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from typing import NamedTuple

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.base.kernels import njit
from crestcut.cut import Facet
from crestcut.work.facets import Rectangle
from crestcut.work.site import FARTHEST, Site

BEYOND = 0.15  # m from the cut to a block's middle, about: near enough for a short board
CLEAR = 0.08  # m from the cut to a block's middle, at least: half a block and what the cut may still grow
FARTHEST_OUT = 1.00  # m from the facet's own ends to the blocks
PLACED = 0.01  # m: to which a place is printed, and a block stands on its chalk line
STARTS = 2  # heights tried for each block
TOUCHES = 2e-5  # m: what a facet may stand over the plan
AIR = 0.001  # m between the board and concrete that stays
LEAST_GAIN = 1e-6  # m: a step that gains less is none
THIN = 4
FORBIDS = 400.0  # times what is wrong: always dearer than the next lower block
UNSOUND = 0.02  # m: as bad is a chalk line all on concrete that is cut, unknown or an edge


# moves that are tried in turn: of the four ends of the two chalk lines, so many steps; of the two heights
PLACES = ((1, 0, 0, 0), (0, 1, 0, 0), (0, 0, 1, 0), (0, 0, 0, 1), (1, 1, 0, 0), (0, 0, 1, 1))
FAR = (-1, 1, -4, 4)
HEIGHTS = ((-1, 0), (1, 0), (0, -1), (0, 1), (-1, -1), (1, -1), (-1, 1))
MOVES = len(PLACES) * len(FAR) + len(HEIGHTS)


class Around(NamedTuple):
    """A site, (ny, nx): ground, m; where a block finds sound concrete; which concrete stays as it is."""

    ground: FloatArray
    sound: BoolArray
    standing: BoolArray


class Cells(NamedTuple):
    """A facet's cells: rows, their share of the way up, columns; (rows, columns) which are cut, the plan's
    finished heights there (inf elsewhere) and the lowest allowed ones (-inf elsewhere), m."""

    rows: IntArray
    share: FloatArray
    columns: IntArray
    core: BoolArray
    plan: FloatArray
    lowest: FloatArray


@dataclass(frozen=True)
class _Try:
    """Columns of the blocks on the lowest and highest row, and which heights of the stock they have."""

    at: tuple[int, int, int, int]  # rear low, rear high, front low, front high
    rear: int
    front: int


class Guide:
    """Finds blocks for one facet after another; heights already in use are taken again where they serve.

    heights : of blocks, m, that stock makes.  below : finished concrete below the board, m.
    """

    def __init__(self, site: Site, core: BoolArray, heights: Sequence[float], below: float) -> None:
        self.site, self.core, self.below = site, core, below
        self.heights = np.asarray(heights)
        self.used: set[int] = set()
        self._pieces: dict[Rectangle, tuple[_Frame, _Frame]] = {}
        self._found: dict[tuple[Rectangle, tuple[_Try, ...]], _Try | None] = {}
        self.step = max(round(PLACED / site.cell), 1)
        clear = max(round(CLEAR / site.cell), 1)
        self.sound = ndimage.binary_erosion(site.standing, np.ones((1, 2 * clear + 1), bool))
        self.lowest = site.ground - (np.inf if site.allowed is None else site.allowed)

    def facet(self, piece: Rectangle) -> Facet | None:
        """The facet with its blocks; None where no stock, no sound concrete or no room under the limits
        serves.
        """
        if piece not in self._pieces:
            self._pieces[piece] = _Frame(self, piece, THIN), _Frame(self, piece)
        coarse, frame = self._pieces[piece]
        starts = tuple(coarse.starts())
        if (piece, starts) not in self._found:
            self._found[piece, starts] = _best(coarse, frame, starts)
        found = self._found[piece, starts]
        if found is None:
            return None
        self.used |= {found.rear, found.front}
        a, b, c, d = (float(v) for v in found.at)
        if max(c - a, d - b) * self.site.cell > FARTHEST:
            return None
        rows = frame.rows
        return Facet(
            int(rows[0]), int(rows[-1]), frame.ends(2), frame.ends(3), (a, b), (c, d),
            float(self.heights[found.rear]) - self.below, float(self.heights[found.front]) - self.below,
        )  # fmt: skip


def _best(coarse: _Frame, frame: _Frame, starts: Sequence[_Try]) -> _Try | None:
    """The cheapest try that can be had from the starts, sought on few rows first; None where none may be."""
    if not starts:
        return None
    tried = [coarse.descend(start) for start in starts]
    _, found = frame.descend(min(tried, key=lambda each: each[0])[1])
    return found if frame.wrong(found) <= TOUCHES else None


class _Frame:
    """One facet's rows and columns, and what a try of blocks comes to over them."""

    def __init__(self, guide: Guide, piece: Rectangle, thin: int = 1) -> None:
        """thin : of so many rows one is looked at, to begin with."""
        low, high, _, _, self.lean, self.first = piece
        self.guide, self.piece = guide, piece
        self.rows = np.unique([*range(low, high + 1, thin), high])
        self.share = (self.rows - low) / max(high - low, 1)
        site = guide.site
        wide = site.ground.shape[1]
        first, last = (self._column(k, self.rows) for k in (2, 3))
        self.columns = np.arange(max(int(first.min()), 0), min(int(np.ceil(last.max())), wide - 1) + 1)
        inside = (self.columns >= first[:, None] - 1e-6) & (self.columns <= last[:, None] + 1e-6)
        part = np.ix_(self.rows, self.columns)
        self.core = guide.core[part] & inside
        self.plan = np.where(self.core, site.finished[part], np.inf)
        self.lowest = np.where(inside, guide.lowest[part], -np.inf)
        self.around = Around(site.ground, guide.sound, site.standing)
        self.cells = Cells(self.rows, self.share, self.columns, self.core, self.plan, self.lowest)
        self.beyond = np.empty(int(self.core.sum()))  # m, that the last try takes beyond the plan
        self.plane = self._plane()
        self._near = {side: self._misfits(side) for side in (-1, 1)}

    def _column(self, k: int, rows: IntArray) -> FloatArray:
        return np.asarray(self.piece[k] + self.lean * (rows - self.first))

    def ends(self, k: int) -> tuple[float, float]:
        """Columns of an edge of the facet on its lowest and highest row."""
        a, b = self._column(k, self.rows[[0, -1]])
        return float(a), float(b)

    def _plane(self) -> FloatArray:
        """The ruled plane below the plan: coefficients of 1, x, y, x y (columns and rows)."""
        y, x = np.nonzero(self.core)
        basis = _basis(self.columns[x], self.rows[y])
        z = self.plan[y, x]
        plane, *_ = np.linalg.lstsq(basis, z, rcond=None)
        plane[0] -= float((basis @ plane - z).max())
        return np.asarray(plane)

    def starts(self) -> Iterator[_Try]:
        """Places where the plane stands as high over the concrete as a block of stock makes it, nearest ones
        first."""
        rear, front = self._places(-1), self._places(1)
        for (_, k, a), (_, n, b) in ((r, f) for r in rear for f in front):
            yield _Try((*a, *b), k, n)

    def _places(self, side: int) -> list[tuple[float, int, tuple[int, int]]]:
        """Misfit, height and columns on the first and last row, the best of them; none without sound
        concrete.
        """
        misfits, ends = self._near[side]
        found = sorted(
            (misfit + 0.0005 * (k not in self.guide.used), k, at)
            for k, (misfit, at) in enumerate(zip(misfits, ends, strict=True))
        )
        return list(islice((each for each in found if self._sound(each[2])), STARTS))

    def _misfits(self, side: int) -> tuple[list[float], list[tuple[int, int]]]:
        """Of every height: how far it is from fitting, m, where on the first and last row it fits best."""
        guide = self.guide
        out = np.arange(1, round(FARTHEST_OUT / guide.site.cell), guide.step)
        rows = self.rows[[0, -1]]
        edge = np.rint(np.asarray(self.ends(2 if side < 0 else 3))).astype(int)
        at = edge[:, None] + side * out
        known = (at >= 0) & (at < guide.site.ground.shape[1])
        at = np.clip(at, 0, guide.site.ground.shape[1] - 1)
        ground = guide.site.ground[rows[:, None], at]
        sound = known & guide.sound[rows[:, None], at] & ~np.isnan(ground)
        if not sound.any(axis=1).all():
            return [], []
        over = (_basis(at.ravel(), np.repeat(rows, len(out))) @ self.plane).reshape(at.shape) - ground
        near = out[np.argmax(sound, axis=1)][:, None] * guide.site.cell - CLEAR + BEYOND
        away = 0.005 * np.abs(out * guide.site.cell - near)
        asked = (guide.heights - guide.below)[:, None, None]
        off = np.where(sound, np.abs(over - asked) + away, np.inf)
        best = off.argmin(axis=2)
        misfit = np.take_along_axis(off, best[..., None], axis=2)[..., 0].sum(axis=1)
        ends = np.stack([at[0, best[:, 0]], at[1, best[:, 1]]], axis=-1)
        return misfit.tolist(), [(a, b) for a, b in ends.tolist()]

    def _sound(self, ends: tuple[int, int]) -> bool:
        """Does a block find sound concrete on every row of its chalk line?"""
        rows = np.arange(self.rows[0], self.rows[-1] + 1)
        return bool(self.guide.sound[rows, np.rint(np.linspace(*ends, len(rows))).astype(int)].all())

    def descend(self, at: _Try) -> tuple[float, _Try]:
        """From one try to a neighbour that costs less, until none does."""
        cost, move, last = self.cost(at), 0, MOVES  # tried once round without a gain: no need to go on
        while move < last:
            there = self._beside(at, move % MOVES)
            move += 1
            if there is not None and (less := self.cost(there)) < cost - LEAST_GAIN:
                cost, at, last = less, there, move + MOVES
        return cost, at

    def _beside(self, t: _Try, move: int) -> _Try | None:
        """A try with one or two blocks moved along, or of another height; None where stock has none."""
        if move < len(PLACES) * len(FAR):
            way = FAR[move % len(FAR)] * self.guide.step
            a, b, c, d = (v + way * m for v, m in zip(t.at, PLACES[move // len(FAR)], strict=True))
            return _Try((a, b, c, d), t.rear, t.front)
        rear, front = HEIGHTS[move - len(PLACES) * len(FAR)]
        rear, front, count = t.rear + rear, t.front + front, len(self.guide.heights)
        return _Try(t.at, rear, front) if 0 <= rear < count and 0 <= front < count else None

    def cost(self, t: _Try) -> float:
        """What the facet takes beyond the plan on average, m, and much more where it may not."""
        off, wrong = self._judged(t, TOUCHES / 2)
        return float(self.beyond.sum()) / len(self.beyond) + FORBIDS * (wrong + UNSOUND * off)

    def wrong(self, t: _Try) -> float:
        """How far it stands over the plan, lies under a limit, or its board in concrete that stays, m;
        infinite off sound concrete.
        """
        off, wrong = self._judged(t, 0.0)
        return math.inf if off > 0 else wrong

    def _judged(self, t: _Try, free: float) -> tuple[float, float]:
        """Share of the rows with a block off sound concrete, and what is wrong but for that, m; ``beyond`` is
        filled. free : m that it may stand over the plan."""
        heights = self.guide.heights
        up = heights[t.rear] - self.guide.below, heights[t.front] - self.guide.below
        off, proud, deep, touches = judged(self.around, self.cells, t.at, up, self.guide.below, self.beyond)
        found = max(proud - free, 0.0) + max(deep, 0.0) + touches
        return off, math.inf if math.isnan(found) else found


def _basis(x: IntArray, y: IntArray) -> FloatArray:
    return np.stack([np.ones(len(x)), x, y, x * y], axis=-1).astype(float)


@njit()
def judged(
    around: Around, cells: Cells, chalked: tuple[int, int, int, int], up: tuple[float, float], below: float,
    beyond: FloatArray,
) -> tuple[float, float, float, float]:  # fmt: skip
    """The ruled facet between two chalk lines: share of the rows with a block off sound concrete; how far it
    stands over the plan, lies under a limit, and its board in concrete that stays (on the first, middle and
    last row), m. NaN where it lies over what is not measured.

    chalked : columns of the lines' ends, as in ``_Try``.  up : finished concrete over either block's ground,
    m.  beyond : filled with what it takes beyond the plan at each cut cell, m.
    """
    ground, wide, count = around.ground, around.ground.shape[1], len(cells.rows)
    (a, b, c, d), at, ends = chalked, np.empty(2), np.empty(2)
    off, filled, proud, deep, touches = 0, 0, -np.inf, -np.inf, 0.0
    for k in range(count):
        row, unsound = cells.rows[k], False
        for side in range(2):
            first, last = (a, b) if side == 0 else (c, d)
            x = first + (last - first) * cells.share[k]
            near = min(max(int(np.rint(x)), 0), wide - 1)
            unsound |= not around.sound[row, near] or x < 0 or x > wide - 2
            at[side] = x = min(max(x, 0.0), wide - 2.0)
            left = math.floor(x)
            part = x - left
            over = ground[row, min(left + 1, wide - 1)] if part > 0 else 0.0
            ends[side] = ground[row, left] * (1 - part) + over * part + up[side]
        off += unsound
        run = at[1] - at[0]
        for n in range(len(cells.columns)):
            along = (cells.columns[n] - at[0]) / run
            level = ends[0] * (1 - along) + ends[1] * along
            if cells.core[k, n]:
                beyond[filled] = cells.plan[k, n] - level
                filled += 1
            high, low = level - cells.plan[k, n], cells.lowest[k, n] - level
            proud = high if high > proud or math.isnan(high) else proud
            deep = low if low > deep or math.isnan(low) else deep
        if k == 0 or k == count // 2 or k == count - 1:
            slope = (ends[1] - ends[0]) / run
            for column in range(int(at[0]) + 1, int(at[1])):
                if around.standing[row, column]:
                    over = ground[row, column] + AIR - (slope * (column - at[0]) + ends[0] + below)
                    touches = over if over > touches else touches  # never what is not measured
    return off / count, proud, deep, touches
