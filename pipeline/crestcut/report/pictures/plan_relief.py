"""The ground of a plan: concrete in relief, depths to remove in colour."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray
from crestcut.report.pictures.colours import CONCRETE, SHALLOWEST, depth_colours
from crestcut.study import Report

AT_ONCE = 1 << 18  # nodes coloured at a time
RELIEF = 3.0  # how many times steeper the shading takes the ground to be
SUN = np.array([-0.55, 0.60, 0.58])  # from the upper left, as maps have it


def shading(height: FloatArray, cell: float) -> FloatArray:
    """Brightness (ny, nx) of a matt surface lit from the upper left: 1 level ground, NaN not measured."""
    if min(height.shape) < 2:
        return np.where(np.isnan(height), np.nan, 1.0)
    along, across = np.gradient(height, cell, axis=1), np.gradient(height, cell, axis=0)
    sun = SUN / np.linalg.norm(SUN)
    bright = (sun[2] - RELIEF * (sun[0] * along + sun[1] * across)) / np.sqrt(
        1 + RELIEF**2 * (along**2 + across**2)
    )
    level = bright / sun[2]
    # The rim of a hole has no slope; it is drawn as level ground.
    return np.asarray(np.where(np.isnan(height), np.nan, np.nan_to_num(level, nan=1.0)), dtype=float)


def ground_picture(report: Report, depth: FloatArray) -> NDArray[np.uint8]:
    """(ny, nx, 4) sRGB and opacity: concrete in relief, paler where not slab, depths in colour."""
    height = report.surface.height
    picture = np.zeros((*height.frame.shape, 4), np.uint8)
    rows = max(AT_ONCE // height.frame.shape[1], 1)
    for first in range(0, len(picture), rows):
        picture[first : first + rows, :, :3] = _colours(report, depth, slice(first, first + rows))
    picture[..., 3] = np.where(height.measured, 255, 0)
    return picture


def _colours(report: Report, depth: FloatArray, rows: slice) -> FloatArray:
    """The same (k, nx, 3) of some rows, 0 to 255."""
    height, above = report.surface.height, max(rows.start - 1, 0)  # a slope wants the row on either side
    around = shading(height.values[above : rows.stop + 1], height.frame.cell)
    light = np.clip(0.55 + 0.45 * around[rows.start - above :][: rows.stop - rows.start], 0.6, 1.16)
    # Ground that is not slab is paler: it is there, but it is not for cutting.
    grey, slab, depth = np.array(CONCRETE, dtype=float), report.surface.slab[rows], depth[rows]
    colour = np.where(slab[..., None], grey, 0.55 * grey + 0.45 * 255)
    colour *= light[..., None]
    cut = np.nan_to_num(depth) >= SHALLOWEST
    deepest = report.plan.deepest if report.plan is not None else 0.0
    colour[cut] = depth_colours(depth[cut], deepest) * (0.5 + 0.5 * light[cut])[:, None]
    return np.asarray(np.clip(np.nan_to_num(colour), 0, 255))
