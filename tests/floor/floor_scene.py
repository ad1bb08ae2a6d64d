"""Made-up floors with known heights, and small scans of them."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.cut.limits import cut_limits
from crestcut.cut.records import Limits
from crestcut.terrain.error.draws import FieldMaker
from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.behind import FLOOR, slab_behind

Spot = tuple[float, float, float, float]  # x, y, radius, height; m
NO_ERROR = ErrorModel(0.0, 0.0, 0.1, 0.0, 1.0, "none", "none", "none", known=Known.NAMED)


def cap(x: FloatArray, y: FloatArray, spot: Spot) -> FloatArray:
    x0, y0, radius, tall = spot
    return tall * np.cos(np.minimum(np.hypot(x - x0, y - y0) / radius, 1.0) * np.pi / 2) ** 2


def floor(
    *spots: Spot, size: tuple[float, float] = (5.0, 4.0), cell: float = 0.02, fall: float = 0.004
) -> HeightGrid:
    frame = GridFrame((0.0, 0.0), 0.0, cell, (round(size[1] / cell) + 1, round(size[0] / cell) + 1))
    xy = frame.node_xy()
    z = fall * xy[..., 0] + sum(cap(xy[..., 0], xy[..., 1], s) for s in spots)
    return HeightGrid(frame, np.asarray(z))


def surface_of(height: HeightGrid, error: ErrorModel = NO_ERROR) -> Surface:
    known = height.measured
    se = height.like(np.where(known, 1e-5, np.nan))
    return Surface(height, height, se, known, known, error, (), known.size)


def judged_of(height: HeightGrid, error: ErrorModel = NO_ERROR, seed: int = 0) -> Surface:
    """The floor judged behind a scan of these heights."""
    return slab_behind(surface_of(height, error), error, None, seed, FLOOR)


def limits_of(surface: Surface, deepest: float = 0.013) -> Limits:
    return cut_limits(surface, deepest, "deepest as asked for", 0.25, [])


def write_scan(
    path: Path,
    *spots: Spot,
    size: tuple[float, float] = (3.0, 2.5),
    noise: float = 0.0005,
    warp: ErrorModel | None = None,
) -> None:
    """A cloud as text: a point each 20 mm. warp : an error model to draw the scan's own smooth error from."""
    frame = GridFrame((0.0, 0.0), 0.0, 0.02, (round(size[1] / 0.02), round(size[0] / 0.02)))
    rng = np.random.default_rng(1)
    x, y = (frame.node_xy()[..., k] for k in (0, 1))
    z = 0.003 * x + sum(cap(x, y, s) for s in spots) + rng.normal(0, noise, x.shape)
    if warp is not None:
        z = z + FieldMaker(warp, frame, None).draw(rng)
    np.savetxt(path, np.stack([x, y, z], axis=-1).reshape(-1, 3), fmt="%.5f")
