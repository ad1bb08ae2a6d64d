"""Where straight strips lie low: first guesses of joints, from short strips through low cells and, where
points are too few for these, from lines of two metres in every direction."""

from __future__ import annotations

import math

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.kernels import njit
from crestcut.base.parallel import in_threads, share

HALF_LENGTH = 0.20  # m of strip each way
BESIDE = 0.03  # m to the strips it is compared with
WORTH = 0.0015  # m: a strip that lies less low is not looked at
LOW = 0.65  # of a strip's fall, which half-filled cells dilute: half the true depth of the joint
SURE = 4.5  # standard deviations of the difference of strip means
LIKELY = 2.0  # standard deviations at which a longer strip is tried
DIRECTIONS = 16
# lines of two metres
# standard deviations to which a metre of a shallow joint must stand out for cells to show it, and for every
# point to be asked; thin scans are searched by lines for joints 5 mm wide too, which stand out 2.25 times
# less
FEW, PLENTY = 5.2, 5.5
THIN, NARROW = 5000.0, 2.25  # points a m2
AT_LEAST = 8000.0  # points a m2 that are asked in any case
PIXEL_T, PIXEL_U = 0.064, 0.004  # m along and across
COARSE, FINE = 25, 16  # directions that points are laid out in, and that each is sheared into
WINDOW_ROWS = 32  # pixels along a line
ACROSS, APART, FLANK = 3, 1, 10  # pixels of strip, of gap to its sides, of each side
STANDS_OUT = 4.0  # standard deviations
MOST_LINES = 4000  # kept of a direction


def seen_in_cells(
    count: FloatArray, residual: FloatArray, mask: BoolArray, pitch: float, noise: float
) -> FloatArray:
    """(n, 5) row, column (cells), angle (rad from the rows), fall (m) and that in standard deviations, of
    strips through low cells that may lie in a joint. ``residual`` : cell means over a wide fit, m."""
    low = -np.maximum(0.5 * WORTH, noise / np.sqrt(np.maximum(count, 1)))
    best = np.zeros((3, *mask.shape))
    share(lambda a, b: _search(count, residual, mask, low, pitch, noise, a, b, best), len(mask))
    angle, fall, sure = best
    j, i = np.nonzero((fall > WORTH) & (sure > SURE))
    return np.column_stack([j, i, angle[j, i], fall[j, i], sure[j, i]]).astype(float)


def few_points(density: float, noise: float) -> bool:
    """Are so many points a m2 too few for cells to show a shallow joint?"""
    return stands_out(density, noise) < FEW * (NARROW if density < THIN else 1.0)


def stands_out(density: float, noise: float) -> float:
    """Standard deviations to which a metre of a joint 12 mm wide and 6 mm deep stands out of cells 10 mm wide
    (by 4.5 mm), at so many points a m2."""
    return 0.0045 / (noise * math.sqrt(1.5 / max(0.010 * density, 1e-9)))


def seen_in_lines(x: FloatArray, y: FloatArray, above: FloatArray, pitch: float, noise: float) -> FloatArray:
    """The same as ``seen_in_cells`` from points (m), along lines of two metres 8 mrad apart.

    A Radon transform in two steps: points into pixels 64 mm long and 4 mm wide along a coarse direction
    (turned by up to 63 mrad a pixel's ends stray 2 mm), rows of pixels sheared into the fine ones and
    summed."""
    angles = ((np.arange(COARSE) + 0.5) * np.pi / COARSE).tolist()
    found = np.concatenate(in_threads(lambda angle: _lines(x, y, above, angle, noise), angles))
    return np.column_stack([found[:, 1] / pitch, found[:, 0] / pitch, found[:, 2:]])


def _lines(x: FloatArray, y: FloatArray, above: FloatArray, angle: float, noise: float) -> FloatArray:
    """(n, 5) x, y (m), angle, fall, standard deviations of what stands out about one coarse direction."""
    c, s = math.cos(angle), math.sin(angle)
    t, u = x * c + y * s, y * c - x * s
    t0, u0 = float(t.min()), float(u.min()) - 16 * PIXEL_U
    rows = max(WINDOW_ROWS, int((t.max() - t0) / PIXEL_T) + 1)
    columns = int((u.max() - u0) / PIXEL_U) + 17
    n = np.zeros((rows, columns), np.float32)
    total = np.zeros((rows, columns), np.float32)
    reach = np.zeros((rows, 2), np.int64)
    reach[:, 0] = columns
    out = np.zeros((MOST_LINES, 5))
    k = _shear(t - t0, u - u0, above, noise, n, total, reach, out)
    found = out[:k]
    t, u = found[:, 0] + t0, found[:, 1] + u0
    return np.column_stack([t * c - u * s, t * s + u * c, found[:, 2] + angle, found[:, 3:]])


@njit(fastmath=True, forceinline=True)
def _add_row(to, row):  # type: ignore[no-untyped-def]
    for k in range(len(row)):
        to[k] += row[k]


@njit(fastmath=True)
def _shear(t, u, above, noise, n, total, reach, out):  # type: ignore[no-untyped-def]
    """out := t, u of the middle, lean, fall and standard deviations of lines that stand out; how many."""
    rows, columns = n.shape
    for p in range(len(t)):
        b, a = int(t[p] / PIXEL_T), int(u[p] / PIXEL_U)
        n[b, a] += 1
        total[b, a] += above[p]
        reach[b, 0] = min(reach[b, 0], a)
        reach[b, 1] = max(reach[b, 1], a + 1)
    found = 0
    cn, cs = np.zeros(columns + 1), np.zeros(columns + 1)
    ln, ls = np.zeros(columns, np.float32), np.zeros(columns, np.float32)
    half = math.pi / COARSE / 2
    for first in range(0, rows - WINDOW_ROWS // 2, WINDOW_ROWS // 2):
        first = min(first, rows - WINDOW_ROWS)
        lo, hi = columns, 0
        for b in range(first, first + WINDOW_ROWS):
            lo, hi = min(lo, reach[b, 0]), max(hi, reach[b, 1])
        lo, hi = max(0, lo - 16), min(columns, hi + 16)
        for f in range(FINE):
            lean = math.tan(((f + 0.5) / FINE * 2 - 1) * half)
            ln[lo:hi] = 0.0
            ls[lo:hi] = 0.0
            for b in range(first, first + WINDOW_ROWS):
                shift = round(lean * (b - first - WINDOW_ROWS / 2 + 0.5) * PIXEL_T / PIXEL_U)
                left, right = max(reach[b, 0], lo + shift), min(reach[b, 1], hi + shift)
                if left >= right:
                    continue
                _add_row(ln[left - shift : right - shift], n[b, left:right])
                _add_row(ls[left - shift : right - shift], total[b, left:right])
            for a in range(lo, hi):
                cn[a + 1], cs[a + 1] = cn[a] + ln[a], cs[a] + ls[a]
            for a in range(lo + APART + FLANK, hi - ACROSS - APART - FLANK + 1):
                e = a + ACROSS
                ni = cn[e] - cn[a]
                nl = cn[a - APART] - cn[a - APART - FLANK]
                nr = cn[e + APART + FLANK] - cn[e + APART]
                if ni < 8 or nl < 16 or nr < 16:
                    continue
                before = (cs[a - APART] - cs[a - APART - FLANK]) / nl
                after = (cs[e + APART + FLANK] - cs[e + APART]) / nr
                fall = 0.5 * (before + after) - (cs[e] - cs[a]) / ni
                if fall < WORTH:
                    continue
                sure = fall / (noise * math.sqrt(1 / ni + 0.25 / nl + 0.25 / nr))
                if sure > STANDS_OUT and found < len(out):
                    out[found, 0] = (first + WINDOW_ROWS / 2) * PIXEL_T
                    out[found, 1] = (a + ACROSS / 2) * PIXEL_U
                    out[found, 2], out[found, 3], out[found, 4] = math.atan(lean), fall, sure
                    found += 1
    return found


@njit(fastmath=True, forceinline=True)
def _strip(count, residual, mask, j, i, dj, di, oj, oi, half):  # type: ignore[no-untyped-def]
    """Points and mean residual of the one-cell strip through (j + oj, i + oi) along (dj, di)."""
    ny, nx = count.shape
    n, s = 0.0, 0.0
    for t in range(-half, half + 1):
        y, x = math.floor(j + oj + t * dj + 0.5), math.floor(i + oi + t * di + 0.5)
        if y < 0 or x < 0 or y >= ny or x >= nx or not mask[y, x]:
            continue
        n += count[y, x]
        s += count[y, x] * residual[y, x]
    return n, (s / n if n > 0 else 0.0)


@njit(fastmath=True, forceinline=True)
def _fall(count, residual, mask, j, i, angle, half, off, noise):  # type: ignore[no-untyped-def]
    """How far the strip at ``angle`` lies under the lower of its neighbours, m, and that in standard
    deviations; 0 if unknown."""
    dj, di = math.sin(angle), math.cos(angle)
    n, mean = _strip(count, residual, mask, j, i, dj, di, 0.0, 0.0, half)
    if n < 4 or mean > -0.5 * max(WORTH, LIKELY * noise / math.sqrt(n)):
        return 0.0, 0.0
    nl, left = _strip(count, residual, mask, j, i, dj, di, off * di, -off * dj, half)
    nr, right = _strip(count, residual, mask, j, i, dj, di, -off * di, off * dj, half)
    if nl < 4 or nr < 4:
        return 0.0, 0.0
    fall = min(left, right) - mean
    return fall, fall / (noise * math.sqrt(1 / n + 1 / min(nl, nr)))


def mark_low(
    count: FloatArray,
    residual: FloatArray,
    j: int,
    i: int,
    angle: float,
    half: int,
    depth: float,
    joint: BoolArray,
) -> None:
    """Marks what lies lower than a share of the depth on the strip and one cell beside it."""
    t, around = np.arange(-half, half + 1), np.indices((3, 3)).reshape(2, 1, -1) - 1
    on = np.array([j + t * math.sin(angle), i + t * math.cos(angle)])
    rows, columns = (np.floor(on + 0.5).astype(int)[..., None] + around).reshape(2, -1)
    inside = (rows >= 0) & (columns >= 0) & (rows < joint.shape[0]) & (columns < joint.shape[1])
    rows, columns = rows[inside], columns[inside]
    low = (count[rows, columns] > 0.0) & (residual[rows, columns] < -LOW * depth)
    joint[rows[low], columns[low]] = True


@njit(fastmath=True)
def _search(count, residual, mask, low, pitch, noise, j0, j1, best):  # type: ignore[no-untyped-def]
    """best := angle, fall and standard deviations of the surest strip through every low cell.

    A short strip that is likely a joint is tried again at two and a half times the length, in directions
    close to its own.
    """
    half = int(HALF_LENGTH / pitch + 0.5)
    long = int(2.5 * HALF_LENGTH / pitch + 0.5)
    off = BESIDE / pitch
    turn = math.pi / DIRECTIONS
    for j in range(j0, j1):
        for i in range(count.shape[1]):
            if not mask[j, i] or count[j, i] <= 0.0 or residual[j, i] > low[j, i]:
                continue
            for d in range(DIRECTIONS):
                fall, sure = _fall(count, residual, mask, j, i, d * turn, half, off, noise)
                if fall < WORTH or sure < LIKELY:
                    continue
                angle = d * turn
                for r in range(-4, 5):
                    longer, surer = _fall(count, residual, mask, j, i, (d + r / 8) * turn, long, off, noise)
                    if surer > sure:
                        fall, sure, angle = longer, surer, (d + r / 8) * turn
                if sure > best[2, j, i]:
                    best[0, j, i], best[1, j, i], best[2, j, i] = angle, fall, sure
