"""Places on the slab that water or people go by: gutter, building, and the areas people walk on."""

from __future__ import annotations

import math

import numpy as np

from crestcut.base.grid import BoolArray
from crestcut.cut import inside
from crestcut.terrain import Surface
from crestcut.work.ground_records import WalkSlope
from crestcut.work.order import WorkOrder
from crestcut.work.site import Site
from crestcut.work.slopes import walk_slope

BUILDING = ("door", "building", "threshold", "garage", "wall", "sill")
GUTTER = ("gutter", "drain", "kerb", "curb", "street", "channel")
WALK = ("walk", "path", "pavement", "sidewalk", "footway")
# m: the strip at either end of the line that stands in for gutter or building
END_DEPTH, END_WIDTH = 0.30, 1.0


def walks(order: WorkOrder, site: Site) -> tuple[WalkSlope, ...]:
    """Finished slopes of every area people walk on."""
    frame, feather = order.surface.height.frame, order.job.cut.feather
    found = [
        walk_slope(keep.kind, site.ground, site.finished, inside(frame, keep.corners), frame, feather)
        for keep in order.keeps
        if any(word in keep.kind.lower() for word in WALK)
    ]
    return tuple(w for w in found if w is not None)


def water_places(order: WorkOrder, site: Site) -> tuple[tuple[str, BoolArray], tuple[str, BoolArray]]:
    """Gutter and building, each a name and its nodes (ny, nx): keep areas that say so, else the lower and the
    higher end of the line.
    """
    surface = order.surface
    frame = surface.height.frame
    named = {}
    for role, words in (("gutter", GUTTER), ("building", BUILDING)):
        areas = [k for k in order.keeps if any(word in k.kind.lower() for word in words)]
        if areas:
            mask = np.logical_or.reduce([inside(frame, k.corners) for k in areas])
            if (mask & surface.height.measured).any():
                named[role] = (" and ".join(dict.fromkeys(k.kind for k in areas)), mask)
    ends = [_end(site, at) for at in (0.0, order.line.length)]
    heights = [_mean_height(surface, mask) for mask in ends]
    low, high = (0, 1) if not heights[0] > heights[1] else (1, 0)
    gutter = named.get("gutter", ("the low end of the line", ends[low]))
    building = named.get("building", ("the high end of the line", ends[high]))
    return gutter, building


def _end(site: Site, at: float) -> BoolArray:
    along = np.abs(site.station - at) <= END_DEPTH
    across = np.abs(site.offset) <= END_WIDTH
    return across[:, None] & along[None, :]


def _mean_height(surface: Surface, mask: BoolArray) -> float:
    values = surface.height.values[mask & surface.height.measured]
    return float(values.mean()) if len(values) else math.nan
