"""F-numbers of a floor after ASTM E1155: how wavy (FF) and how far off level (FL) along lines of readings.

Heights h_i are read every 12 in along straight lines. With d_i = h_i - h_(i-1),

    q_i = d_i - d_(i-1)            the bend over 24 in
    z_i = h_(i+10) - h_i           the rise over 10 ft
    FF = 4.57 / (3 s_q + |mean q|),  FL = 12.5 / (3 s_z + |mean z|),  inches, s with n - 1.

Kept of the standard's own rules (from memory): at least 12 readings a line, nothing nearer than 2 ft to an
edge, wall, column or hole, parallel lines 4 ft apart, two directions at right angles with readings of all
lines pooled. Not kept, for want of knowing: joints between pours (a line here may cross one) and the age of
the floor.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, IntArray
from crestcut.base.units import FOOT, INCH

APART = FOOT  # m between readings
FEWEST = 12  # readings on a line
CLEAR = 2 * FOOT  # m from edges
LANES = 4 * FOOT  # m between parallel lines
OVER = 10  # readings that a rise is taken over
FLAT, LEVEL = 4.57, 12.5  # in
SPECK = 0.01  # m2: a hole of the scan smaller than this is no obstacle
NO_BEND = 1e-7  # m: a floor whose s is smaller has no F-number worth printing


@dataclass(frozen=True, eq=False)
class Lines:
    """Where readings are taken.

    nodes : flat index of the frame's node nearest to each, line by line.  places : grid u, v of each, m.
    starts : first reading of each line, and the count of all.
    """

    nodes: IntArray
    places: FloatArray  # (n, 2)
    starts: IntArray

    def __len__(self) -> int:
        return len(self.starts) - 1


@dataclass(frozen=True)
class Numbers:
    """FF and FL of all lines together, and of the lowest line of each. lines, readings : how many."""

    ff: float
    fl: float
    lowest_ff: float
    lowest_fl: float
    lines: int
    readings: int


def lay_lines(frame: GridFrame, measured: BoolArray) -> Lines | None:
    """Lines both ways over the measured floor; None where no line of 12 readings keeps clear of its edges."""
    cell = frame.cell
    holes, count = ndimage.label(~np.pad(measured, 1))
    sizes = np.bincount(holes.ravel(), minlength=count + 1) * cell**2
    solid = np.pad(measured, 1) | ((holes > 0) & (sizes < SPECK)[holes])
    inner = (ndimage.distance_transform_edt(solid) * cell >= CLEAR)[1:-1, 1:-1] & measured
    lines: list[FloatArray] = []
    for turned in (False, True):
        room = inner.T if turned else inner
        for line in _lanes(room, cell):
            lines.append(line[:, ::-1] if turned else line)
    if not lines:
        return None
    places = np.concatenate(lines)
    ny, nx = frame.shape
    column, row = np.rint(places / cell).astype(np.int64).T
    nodes = np.clip(row, 0, ny - 1) * nx + np.clip(column, 0, nx - 1)
    return Lines(nodes, places, np.cumsum([0, *(len(line) for line in lines)]))


def _lanes(room: BoolArray, cell: float) -> list[FloatArray]:
    """Lines (n, 2) of u, v along the columns, lanes ``LANES`` apart, the set of lanes set in the middle."""
    rows = np.flatnonzero(room.any(axis=1))
    if len(rows) == 0:
        return []
    wide = (rows[-1] - rows[0]) * cell
    lanes = math.floor(wide / LANES + 1e-9) + 1
    first = rows[0] * cell + (wide - (lanes - 1) * LANES) / 2
    out = []
    for v in first + np.arange(lanes) * LANES:
        line = room[round(v / cell)]
        edges = np.flatnonzero(np.diff(np.concatenate([[False], line, [False]]).astype(np.int8)))
        for a, b in edges.reshape(-1, 2):
            long = (b - 1 - a) * cell
            n = math.floor(long / APART + 1e-9) + 1
            if n >= FEWEST:
                u = a * cell + (long - (n - 1) * APART) / 2 + np.arange(n) * APART
                out.append(np.stack([u, np.full(n, v)], axis=1))
    return out


def read(lines: Lines, frame: GridFrame, heights: FloatArray, slope: tuple[float, float]) -> FloatArray:
    """Heights at the readings, (n,) or (n, k) m, from flat node values (nodes,) or (nodes, k).

    Taken at the nearest node and moved along ``slope`` (rise over run in u and v), so that a reading half a
    node off does not take the floor's fall for a bend.
    """
    nx = frame.shape[1]
    at = np.stack([lines.nodes % nx, lines.nodes // nx], axis=1) * frame.cell
    moved = (lines.places - at) @ np.asarray(slope)
    picked = heights[lines.nodes]
    return np.asarray(picked + (moved if picked.ndim == 1 else moved[:, None]))


def bends_and_rises(lines: Lines, heights: FloatArray) -> tuple[list[FloatArray], list[FloatArray]]:
    """q and z of every line, (m,) or (m, k) each, m."""
    pieces = [heights[a:b] for a, b in zip(lines.starts[:-1], lines.starts[1:], strict=True)]
    return [np.diff(p, n=2, axis=0) for p in pieces], [p[OVER:] - p[:-OVER] for p in pieces]


def f_number(spread: float, mean: float, constant: float) -> float:
    """An F-number from standard deviation and mean, m. inf where the floor does not bend at all."""
    total = 3 * spread + abs(mean)
    return math.inf if total < NO_BEND else constant / (total / INCH)


def f_numbers(lines: Lines, heights: FloatArray) -> Numbers:
    """FF and FL from readings (n,) in m."""
    q, z = bends_and_rises(lines, heights)

    def of(values: FloatArray, constant: float) -> float:
        spread = float(values.std(ddof=1)) if len(values) > 1 else math.nan
        return f_number(spread, float(values.mean()), constant)

    return Numbers(
        of(np.concatenate(q), FLAT), of(np.concatenate(z), LEVEL),
        min(of(line, FLAT) for line in q), min(of(line, LEVEL) for line in z if len(line) > 1),
        len(lines), len(heights),
    )  # fmt: skip


def of_draws(lines: Lines, drawn: FloatArray, constant: float) -> FloatArray:
    """(k,) FF (constant ``FLAT``) or FL (``LEVEL``) of floors drawn as the floor may be; drawn (n, k) their
    readings, m."""
    many = np.concatenate(bends_and_rises(lines, drawn)[0 if constant == FLAT else 1])
    pairs = zip(many.std(axis=0, ddof=1), many.mean(axis=0), strict=True)
    return np.array([f_number(float(s), float(m), constant) for s, m in pairs])
