"""Between the nodes of a coarse grid, and fields drawn on one."""

from __future__ import annotations

import numpy as np
from scipy import sparse

from crestcut.base.grid import FloatArray, GridFrame
from crestcut.terrain.error.draws import FINE_WARP, Layer

# m between the nodes on which fields are drawn, at most: cubic between wider ones a field that halves at 1 m
# loses a fifth of the variance of its bends over a foot, and a slab drawn from it is too flat
BENDS = 0.10
# half lengths that a field is drawn beyond its places: where it does not fade away before its period ends,
# what is cut off of it comes back as roughness (a third more of those bends where it halves at 2 m)
AROUND = 4.0


def between_nodes(coarse: GridFrame, uv: FloatArray) -> sparse.csr_array:
    """(n, rows * columns) weights that give values at uv (n, 2), m from the first node, from those at the
    nodes: cubic convolution with a = -0.5 (Keys, IEEE Trans. ASSP 29, 1981), beyond the outermost nodes the
    parabola through three (as ibid.: 3 f(0) - 3 f(1) + f(2)), or of fewer the outermost repeated."""
    parts = []
    for axis, size in ((0, coarse.shape[1]), (1, coarse.shape[0])):
        at = uv[:, axis] / coarse.cell
        base = np.floor(at).astype(np.int64)
        index = np.clip(base[:, None] + np.arange(-1, 3), 0, size - 1)
        d = np.abs(at[:, None] - (base[:, None] + np.arange(-1, 3)))
        near, far = 1.5 * d**3 - 2.5 * d**2 + 1, -0.5 * d**3 + 2.5 * d**2 - 4 * d + 2
        weight = np.where(d <= 1, near, np.where(d < 2, far, 0.0))
        if size >= 3:
            for some, beyond, order in ((base == 0, 0, (1, 2, 3)), (base == size - 2, 3, (2, 1, 0))):
                for node, share in zip(order, (3.0, -3.0, 1.0), strict=True):
                    weight[some, node] += share * weight[some, beyond]
                weight[some, beyond] = 0.0
        parts.append((index, weight))
    (i, wi), (j, wj) = parts
    flat = j[:, :, None] * coarse.shape[1] + i[:, None, :]
    both = (wj[:, :, None] * wi[:, None, :]).astype(np.float32)
    start = np.arange(len(uv) + 1) * 16
    shape = (len(uv), coarse.shape[0] * coarse.shape[1])
    return sparse.csr_array((both.ravel(), flat.ravel(), start), shape=shape)


def along_axes(values: FloatArray, step: float, frame: GridFrame) -> FloatArray:
    """Values on nodes ``step`` apart, cubic at every node of the frame: rows, then columns."""
    ny, nx = frame.shape
    rows = between_nodes(GridFrame((0.0, 0.0), 0.0, step, (1, values.shape[0])), _line(ny, frame.cell))
    columns_ = between_nodes(GridFrame((0.0, 0.0), 0.0, step, (1, values.shape[1])), _line(nx, frame.cell))
    return np.asarray((columns_ @ (rows @ values).T).T)


def unit_field(half_at: float, places: FloatArray, rng: np.random.Generator, count: int) -> FloatArray:
    """(n, count) draws of a Matern-3/2 field of unit variance at places (n, 2), m: drawn on a grid of a
    quarter of its length and at most ``BENDS``, cubic between."""
    step = min(half_at / FINE_WARP, BENDS)
    low, high = places.min(axis=0), places.max(axis=0)
    rows, columns = (int(np.ceil((s + AROUND * half_at) / step)) + 1 for s in (high - low)[::-1])
    coarse = GridFrame((float(low[0]), float(low[1])), 0.0, step, (rows, columns))
    drawn = Layer(1.0, half_at, coarse, None, half_at / step).draw(rng, count)
    flat = np.ascontiguousarray(drawn.reshape(rows * columns, count))
    return np.asarray(between_nodes(coarse, places - low) @ flat, dtype=np.float64)


def _line(count: int, cell: float) -> FloatArray:
    return np.column_stack([np.arange(count) * cell, np.zeros(count)])
