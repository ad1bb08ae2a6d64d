"""Areas on the ground as masks on the raster."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, GridFrame


def inside(frame: GridFrame, corners: Sequence[tuple[float, float]]) -> BoolArray:
    """Nodes inside or on a polygon of site x, y corners in metres, (ny, nx); even-odd rule, edges belong to
    the area."""
    # nodes about its corners alone, to the same digits: of a long lane a keep area is a small part
    columns, rows = (_about(at, n, frame.cell) for at, n in zip(
        frame.to_grid(corners).T, frame.shape[::-1], strict=True))  # fmt: skip
    u, v = np.meshgrid(np.arange(columns.start, columns.stop) * frame.cell,
                       np.arange(rows.start, rows.stop) * frame.cell)  # fmt: skip
    x, y = np.moveaxis(frame.to_site(np.stack([u, v], axis=-1)), -1, 0)
    mask, edge = np.zeros(x.shape, dtype=bool), np.zeros(x.shape, dtype=bool)
    for (x0, y0), (x1, y1) in zip(corners, [*corners[1:], corners[0]], strict=True):
        crosses = (y0 > y) != (y1 > y)
        with np.errstate(divide="ignore", invalid="ignore"):
            at = x0 + (y - y0) * (x1 - x0) / (y1 - y0)
        mask ^= crosses & (x < at)
        length = np.hypot(x1 - x0, y1 - y0)
        if length > 0:
            along = ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / length
            across = np.abs((x - x0) * (y1 - y0) - (y - y0) * (x1 - x0)) / length
            edge |= (across < 1e-9) & (along >= -1e-9) & (along <= length + 1e-9)
    out = np.zeros(frame.shape, dtype=bool)
    out[rows, columns] = mask | edge
    return out


def _about(at: FloatArray, nodes: int, cell: float) -> slice:
    """Nodes along an axis from the least of ``at`` (m) to the greatest, with two to spare."""
    first, stop = int(np.floor(at.min() / cell)) - 2, int(np.ceil(at.max() / cell)) + 3
    return slice(min(max(first, 0), nodes), min(max(stop, 0), nodes))
