"""What of a cut the facets of its plan guide, and what is left to rails or hands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.cut import Facet, feather_out
from crestcut.work.site import Site, facet_depth

SKIN = 0.0003  # m: shallower is not worth letting a cutter down
CLOSE = 0.00025  # m: what only looked like a feather is not reached by one
OVER_RIDGE = 0.002  # m: air between board and ridge where the board has to be raised
SMALLEST = (
    0.03,
    0.10,
)  # m across and along: a smaller piece is its neighbours' fringe, run out with the feather


@dataclass(frozen=True, eq=False)
class Workable:
    """core (ny, nx) : what is cut for its own sake; the rest of the cut is its feather.  covered : of it by
    facets.  left : (first row, last row, first column, last column, why) of pieces that no facet covers.
    """

    core: BoolArray
    covered: BoolArray
    facets: tuple[Facet, ...]
    left: tuple[tuple[int, int, int, int, str], ...]


def make_workable(site: Site, facets: Sequence[Facet] = ()) -> Workable:
    """The plan of ``site`` by its facets, and what they leave to rails or hands."""
    depth, done = facet_depth(site.ground, facets)
    covered = done & (depth > SKIN)
    label, _ = ndimage.label(core_of(site) & ~done)
    core, left = covered.copy(), []
    for number, (rows, columns) in enumerate(ndimage.find_objects(label), start=1):
        sizes = (rows.stop - rows.start) * site.cell, (columns.stop - columns.start) * site.cell
        if not facets or (sizes[0] >= SMALLEST[0] and sizes[1] >= SMALLEST[1]):
            core |= label == number
            left.append((rows.start, rows.stop - 1, columns.start, columns.stop - 1, NO_BOARD))
    return Workable(core, covered, tuple(facets), tuple(left))


NO_BOARD = "no two blocks of stock on sound concrete guide a board here within the limits"


def core_of(site: Site) -> BoolArray:
    """Nodes that are cut for their own sake: deeper than their neighbours' feather reaches. (ny, nx)."""
    depth = site.depth
    padded = np.pad(depth, 1)
    held = np.zeros(depth.shape)
    for dj in (0, 1, 2):
        for di in (0, 1, 2):
            if (dj, di) != (1, 1):
                away = np.hypot(dj - 1, di - 1) * site.feather * site.cell
                held = np.maximum(held, padded[dj : dj + depth.shape[0], di : di + depth.shape[1]] - away)
    # a way of eight directions is up to 8 % of a step longer than the straight one that the feather was
    # measured by
    core = (depth > SKIN) & (depth > held + 0.08 * site.feather * site.cell)
    # what only looked like a feather is not reached by one
    reached, _ = feather_out(np.where(core, depth, 0.0), site.feather, site.cell)
    return core | ((depth > SKIN) & (depth - reached > CLOSE))


def depth_by(
    site: Site, facets: Sequence[Facet], core: BoolArray, wanted: FloatArray
) -> tuple[FloatArray, BoolArray]:
    """Depth, (ny, nx) m: the facets over the core, else ``wanted`` at least; feathered out, within the
    limits. And which nodes lie between the facets' stop lines.
    """
    depth, done = facet_depth(site.ground, facets)
    depth = np.maximum(depth, np.where(done & core, 0.0, wanted))
    shaped, _ = feather_out(depth, site.feather, site.cell)
    return shaped if site.allowed is None else np.minimum(shaped, np.maximum(site.allowed, wanted)), done
