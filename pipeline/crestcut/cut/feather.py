"""Tapers: the depth of a cut may change from node to node by no more than the feather allows."""

from __future__ import annotations

import math

import numpy as np

from crestcut.base.grid import FloatArray, IntArray
from crestcut.base.kernels import njit

NO_ROOT = -1


@njit()
def _spread(depth: FloatArray, drop: FloatArray, reach: FloatArray, out: FloatArray, root: IntArray) -> None:
    """out(x) = max over y of depth(y) - drop(x - y), root its y. Only nodes that are cut, and not cut as
    deep all round, spread."""
    rows, columns = depth.shape
    size = drop.shape[0] - 1
    for j in range(rows):
        for i in range(columns):
            d = depth[j, i]
            if d <= 0.0:
                continue
            n = 0
            while n < size and reach[n + 1] < d:
                n += 1
            for jj in range(max(j - n, 0), min(j + n, rows - 1) + 1):
                for ii in range(max(i - n, 0), min(i + n, columns - 1) + 1):
                    left = d - drop[abs(jj - j), abs(ii - i)]
                    if left > out[jj, ii]:
                        out[jj, ii] = left
                        root[jj, ii] = j * columns + i


def feather_out(depth: FloatArray, slope: float, cell: float) -> tuple[FloatArray, IntArray]:
    """The least depth at or above ``depth`` that changes by at most ``slope`` x distance; and which node
    holds each one.

    depth : (ny, nx) m, >= 0.  Returns the depth and the flat index of the holding node, ``NO_ROOT`` where a
    node holds itself. This is the dilation of the depth by a cone: idempotent by the triangle inequality,
    monotone, and the least such depth.
    """
    deepest = float(depth.max(initial=0.0))
    n = max(math.floor(deepest / (slope * cell)), 0) + 1
    away = np.hypot(*np.meshgrid(np.arange(n + 1), np.arange(n + 1)))
    drop = slope * cell * away
    out = depth.copy()
    root = np.full(depth.shape, NO_ROOT, dtype=np.int64)
    if deepest > 0:
        _spread(depth, drop, drop[0], out, root)
    return out, root


def feather_in(allowed: FloatArray, slope: float, cell: float) -> FloatArray:
    """The greatest depth limit at or below ``allowed`` that a feathered cut can reach: erosion by the same
    cone.

    Beside an area that stays, the cut can only grow by ``slope`` x distance.
    """
    top = float(allowed.max(initial=0.0))
    return top - feather_out(top - allowed, slope, cell)[0]
