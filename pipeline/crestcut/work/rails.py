"""Where no board can follow: a shrouded base on two rails, each on two blocks that stand on printed spots.

Two rails with four free block heights span a ruled surface z = (1-a)(1-b) h00 + a(1-b) h10 + (1-a) b h01 +
a b h11.
The heights are the least that keep it on or above the finished surface everywhere in the piece (a linear
programme), so that the rails never let the cutter go too deep; what they leave is taken away to the drill
dots.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.work.jig_records import Rails, Spot
from crestcut.work.site import FOOT, Site
from crestcut.work.ties import Marks, ties_at
from crestcut.work.timber import LEAST_BLOCK
from crestcut.work.workable import SMALLEST, Workable

APART = 0.30  # m: a shrouded base rides on rails this far apart at most (common practice, no source)
BESIDE = 0.03  # m from the piece's edge to its rail's middle
REACH_OUT = 0.6  # m beyond the piece within which a rail's block must find sound concrete
LONGEST = 3.0  # m of rail
WORTH = 0.5  # of the deepest cut: what rails may leave

Piece = tuple[int, int, int, int, str]  # first row, last row, first column, last column, why


def make_rails(
    site: Site,
    work: Workable,
    below: float,
    marks: Marks,
    height: HeightGrid | None,
) -> tuple[tuple[Rails, ...], int]:
    """Rails for every piece no board can follow, and how many pieces are so small that hands do them.

    below : finished concrete under the rails, m: they are as thick as the jig's board.  marks, height :
    for the tapes to the spots; none where height is None.
    """
    out = []
    pieces = [p for p in _merged(work.left, site) if _worth_rails(p, site.cell)]
    for number, piece in enumerate(pieces, start=1):
        low, high, first, last, why = piece
        spots = _spots(site, work, piece, below, f"R{number}", marks, height)
        leaves = 0.0 if not spots else _leaves(site, work, piece, below, spots)
        if leaves > WORTH * float(site.depth[low : high + 1, first : last + 1].max()):
            spots, leaves = (), 0.0  # nobody builds rails that leave most of it to the hand
        out.append(
            Rails(
                f"R{number}", why, float(site.offset[low]), float(site.offset[high]),
                float(site.station[first]), float(site.station[last]), spots, leaves,
            )
        )  # fmt: skip
    return tuple(out), len(_merged(work.left, site)) - len(pieces)


def _worth_rails(piece: Piece, cell: float) -> bool:
    low, high, first, last, _ = piece
    return (high - low + 1) * cell >= SMALLEST[0] and (last - first + 1) * cell >= SMALLEST[1]


def _merged(left: Sequence[Piece], site: Site) -> list[Piece]:
    """Neighbouring pieces together while one pair of rails still spans them; reasons joined."""
    out: list[Piece] = []
    for piece in sorted(left):
        if out:
            low, high, first, last, why = out[-1]
            overlap = piece[2] <= last and piece[3] >= first
            if overlap and piece[0] <= high + 2 and (piece[1] - low) * site.cell <= APART - 2 * BESIDE:
                words = why if piece[4] in why else f"{why}; {piece[4]}"
                out[-1] = low, max(high, piece[1]), min(first, piece[2]), max(last, piece[3]), words
                continue
        out.append(piece)
    return out


def _spots(
    site: Site, work: Workable, piece: Piece, below: float, name: str,
    marks: Marks, height: HeightGrid | None,
) -> tuple[Spot, ...]:  # fmt: skip
    """Left rear, left front, right rear, right front; empty where one finds no sound concrete or would be
    lower than the thinnest stock, or a rail would lie on concrete that stays.
    """
    places = []
    for row in _rail_rows(site, piece):
        for side in (-1, 1):
            column = _column(site, row, piece[2] if side < 0 else piece[3], side)
            if column is None:
                return ()
            places.append((row, column))
    target = _targets(site, work, piece)
    heights = _heights(site, places, target)
    if heights is None:
        return ()
    spots = tuple(
        Spot(
            f"{name}{'abcd'[k]}", float(site.station[i]), float(site.offset[j]),
            float(z) + below - float(site.ground[j, i]), ties_at(site, marks, height, j, i),
        )
        for k, ((j, i), z) in enumerate(zip(places, heights, strict=True))
    )  # fmt: skip
    if min(spot.block for spot in spots) < LEAST_BLOCK or _lies_on(site, places, heights + below):
        return ()
    return spots


def _lies_on(site: Site, places: Sequence[tuple[int, int]], heights: FloatArray) -> bool:
    """Would a rail's underside, given its heights at the four spots, m, run into concrete that stays?"""
    for k in (0, 2):
        (row, a), (_, b) = places[k : k + 2]
        columns = np.arange(a, b + 1)
        under = np.interp(columns, [a, b], heights[k : k + 2])
        if np.nanmax(site.finished[row, a : b + 1] - under) > 0:
            return True
    return False


def _rail_rows(site: Site, piece: Piece) -> tuple[int, int]:
    """Rows of the left and the right rail."""
    beside = max(round(BESIDE / site.cell), 1)
    return min(piece[1] + beside, len(site.offset) - 1), max(piece[0] - beside, 0)


def _column(site: Site, row: int, edge: int, side: int) -> int | None:
    """The nearest column outside the piece where a block finds untouched, measured concrete."""
    foot = max(round(FOOT / site.cell), 1)
    standing = site.standing[row]
    for step in range(foot + 1, foot + 1 + round(REACH_OUT / site.cell)):
        column = edge + side * step
        if column - foot < 0 or column + foot >= len(standing):
            return None
        if standing[column - foot : column + foot + 1].all():
            return column
    return None


def _targets(site: Site, work: Workable, piece: Piece) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Rows, columns and finished heights of the piece's core."""
    low, high, first, last, _ = piece
    rows, columns = np.nonzero(work.core[low : high + 1, first : last + 1])
    rows, columns = rows + low, columns + first
    return rows.astype(float), columns.astype(float), site.finished[rows, columns]


def _weights(places: Sequence[tuple[int, int]], rows: FloatArray, columns: FloatArray) -> FloatArray:
    """(n, 4): how much each spot carries at each place. Along each rail its own two blocks count, across the
    rails the two lines.
    """
    (left, a0), (_, a1), (right, b0), (_, b1) = places
    across = (rows - right) / (left - right)
    on_left, on_right = (columns - a0) / (a1 - a0), (columns - b0) / (b1 - b0)
    return np.stack(
        [across * (1 - on_left), across * on_left, (1 - across) * (1 - on_right), (1 - across) * on_right],
        axis=1,
    )


def _heights(
    site: Site, places: Sequence[tuple[int, int]], target: tuple[FloatArray, FloatArray, FloatArray]
) -> FloatArray | None:
    """The four heights, m, least in sum over the piece, that keep the ruled surface on or above it."""
    rows, columns, z = target
    if (
        len(z) == 0
        or max(abs(places[1][1] - places[0][1]), abs(places[3][1] - places[2][1])) * site.cell > LONGEST
    ):
        return None
    from scipy.optimize import linprog  # a large library for what few cuts have

    weights = _weights(places, rows, columns)
    base = float(z.mean())
    found = linprog(
        weights.sum(axis=0), A_ub=-weights, b_ub=-(z - base), bounds=[(None, None)] * 4, method="highs"
    )
    return np.asarray(found.x) + base if found.success else None


def _leaves(site: Site, work: Workable, piece: Piece, below: float, spots: Sequence[Spot]) -> float:
    """What the rails leave over the finished surface at most, m."""
    rows, columns, z = _targets(site, work, piece)
    places = [
        (int(np.argmin(np.abs(site.offset - s.offset))), int(np.argmin(np.abs(site.station - s.station))))
        for s in spots
    ]
    heights = np.array([site.ground[j, i] + s.block - below for (j, i), s in zip(places, spots, strict=True)])
    return float(np.max(_weights(places, rows, columns) @ heights - z))
