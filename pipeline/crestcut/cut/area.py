"""Areas on the ground as masks on the raster."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from crestcut.base.grid import BoolArray, GridFrame


def inside(frame: GridFrame, corners: Sequence[tuple[float, float]]) -> BoolArray:
    """Nodes inside or on a polygon of site x, y corners in metres, (ny, nx); even-odd rule, edges belong to
    the area."""
    xy = frame.node_xy()
    x, y = xy[..., 0], xy[..., 1]
    mask = np.zeros(frame.shape, dtype=bool)
    edge = np.zeros(frame.shape, dtype=bool)
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
    return mask | edge
