"""Joints: narrow straight grooves that a tyre rides over. Their low points are left out, so that they do
not pull the slab down.

A strip as wide as a cell and 0.4 m long is laid through a low cell in every direction; where its mean lies
under the strips
beside it by more than noise can do, it is a joint, and points of it lower than half its depth go. Only low
points go.
"""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from itertools import pairwise

import numpy as np
from numba import njit

from crestcut.grid import BoolArray, FloatArray
from crestcut.surface.local import WORKERS, fit_local
from crestcut.surface.raster import Cells

HALF_LENGTH = 0.20  # m of strip each way
BESIDE = 0.03  # m to the strips it is compared with
LEAST_DEPTH = 0.006  # m: a sag of two 20 % slopes is 6 mm lower in its middle than 30 mm beside it
LOW = 0.65  # of a strip's fall, which half-filled cells dilute: half the true depth of the joint
SURE = 4.5  # standard deviations of the difference of strip means
LIKELY = 1.5  # standard deviations at which a longer strip is tried
WINDOW = 0.10  # m, half window of the surface that residuals are taken from
DIRECTIONS = 16


def find_joints(cells: Cells, z: FloatArray, mask: BoolArray, pitch: float, noise: float) -> BoolArray:
    """Cells (rows, columns) whose points lie in a joint; ``z`` : cell means at cell centres, m."""
    half = max(2, round(WINDOW / pitch))
    fit = fit_local(cells.count, z, mask, half, pitch, noise, every=max(1, half // 3))
    residual = np.where(cells.count > 0, z - np.nan_to_num(fit.z), 0.0)
    low = -np.maximum(0.5 * LEAST_DEPTH, noise / np.sqrt(np.maximum(cells.count, 1)))
    joint = np.zeros(mask.shape, np.bool_)
    edges = np.linspace(0, mask.shape[0], 4 * WORKERS + 1).astype(int)
    with ThreadPoolExecutor(WORKERS) as pool:
        for job in [
            pool.submit(_search, cells.count, residual, mask, low, pitch, noise, a, b, joint)
            for a, b in pairwise(edges)
        ]:
            job.result()
    return joint


@njit(cache=True, nogil=True, fastmath=True)
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


@njit(cache=True, nogil=True, fastmath=True)
def _fall(count, residual, mask, j, i, angle, half, off, noise):  # type: ignore[no-untyped-def]
    """How far the strip at ``angle`` lies under the lower of its neighbours, m, and that in standard
    deviations; 0 if unknown."""
    dj, di = math.sin(angle), math.cos(angle)
    n, mean = _strip(count, residual, mask, j, i, dj, di, 0.0, 0.0, half)
    if n < 4 or mean > -0.4 * LEAST_DEPTH:
        return 0.0, 0.0
    nl, left = _strip(count, residual, mask, j, i, dj, di, off * di, -off * dj, half)
    nr, right = _strip(count, residual, mask, j, i, dj, di, -off * di, off * dj, half)
    if nl < 4 or nr < 4:
        return 0.0, 0.0
    fall = min(left, right) - mean
    return fall, fall / (noise * math.sqrt(1 / n + 1 / min(nl, nr)))


@njit(cache=True, nogil=True)
def _mark(count, residual, j, i, angle, half, depth, joint):  # type: ignore[no-untyped-def]
    """Marks what lies lower than a share of the depth on the strip and one cell beside it."""
    ny, nx = count.shape
    dj, di = math.sin(angle), math.cos(angle)
    for t in range(-half, half + 1):
        y, x = math.floor(j + t * dj + 0.5), math.floor(i + t * di + 0.5)
        for yy in range(max(0, y - 1), min(ny, y + 2)):
            for xx in range(max(0, x - 1), min(nx, x + 2)):
                if count[yy, xx] > 0.0 and residual[yy, xx] < -LOW * depth:
                    joint[yy, xx] = True


@njit(cache=True, nogil=True, fastmath=True)
def _search(count, residual, mask, low, pitch, noise, j0, j1, joint):  # type: ignore[no-untyped-def]
    """joint := low cells along every strip that surely lies under its neighbours.

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
                if fall < LEAST_DEPTH or sure < LIKELY:
                    continue
                angle = d * turn
                for r in range(-4, 5):
                    longer, surer = _fall(count, residual, mask, j, i, (d + r / 8) * turn, long, off, noise)
                    if surer > sure:
                        fall, sure, angle = longer, surer, (d + r / 8) * turn
                if sure > SURE and fall > LEAST_DEPTH:
                    _mark(count, residual, j, i, angle, long, fall, joint)
