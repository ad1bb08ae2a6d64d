"""What tyres and underside stand on: the surface as their kernels want it, small holes bridged for the
tyres."""

from __future__ import annotations

import math
from weakref import WeakKeyDictionary

import numpy as np
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid, IntArray
from crestcut.contact.stand.tyres import VOID
from crestcut.terrain import Surface

# per grid of heights: the mask that went with it, what the tyres stand on, and how many nodes were bridged
_RIDDEN: WeakKeyDictionary[HeightGrid, tuple[BoolArray, FloatArray, int]] = WeakKeyDictionary()
# m, a car tyre's contact patch along travel: a wider hole is not bridged (common practice, no source)
CONTACT_LENGTH = 0.15
BRIDGED_IN = 3  # passes: a ragged rim's nooks are bridged from what the pass before has bridged


def ridden_ground(surface: Surface) -> tuple[FloatArray, int]:
    """What the tyres stand on, ``VOID`` where unmeasured, and how many nodes were bridged.

    Holes narrower than a tyre's contact are bridged in straight lines from rim to rim; they stay 'not
    measured' everywhere else. Kept for as long as the heights are: nearly every stage asks again. Not to be
    written to.
    """
    kept = _RIDDEN.get(surface.height)
    if kept is not None and kept[0] is surface.rollable:
        return kept[1:]
    values = np.where(surface.rollable, surface.height.values, np.nan)
    crossed = over_small_holes(values, surface.height.frame.cell)
    bridged = int((np.isnan(values) & ~np.isnan(crossed)).sum())
    ground = np.ascontiguousarray(np.where(np.isnan(crossed), VOID, crossed))
    _RIDDEN[surface.height] = (surface.rollable, ground, bridged)
    return ground, bridged


def over_small_holes(values: FloatArray, cell: float) -> FloatArray:
    """Heights (ny, nx), m, with holes narrower than a tyre's contact bridged; NaN where they are wider."""
    known = ~np.isnan(values)
    size = max(round(CONTACT_LENGTH / cell), 1)
    gaps = _closing(known, size) & ~known
    left = np.argwhere(gaps)
    values = values.copy()
    for _ in range(BRIDGED_IN):
        heights = _bridged(values, left, size) if len(left) else np.empty(0)
        found = ~np.isnan(heights)
        values[tuple(left[found].T)] = heights[found]
        left = left[~found]
    return values


def _bridged(values: FloatArray, nodes: IntArray, size: int) -> FloatArray:
    """Heights (k,) at ``nodes`` (k, 2: row, column) in holes, each in a straight line over the hole's
    shortest crossing there.

    Crossings along rows, columns and both diagonals are tried, of at most ``size`` cells. NaN where none is
    that short.
    """
    padded = np.pad(values, size, constant_values=np.nan)
    at, best = nodes + size, np.full(len(nodes), np.inf)
    out = np.full(len(nodes), np.nan)
    for step in ((0, 1), (1, 0), (1, 1), (1, -1)):
        (near, here), (far, there) = (_rim(padded, at, np.multiply(step, side), size) for side in (-1, 1))
        across = (near + far) * math.hypot(*step)
        shorter = np.flatnonzero((near + far <= size + 1) & (across < best))
        best[shorter], a, b = across[shorter], near[shorter], far[shorter]
        out[shorter] = (here[shorter] * b + there[shorter] * a) / (a + b)
    return out


def _rim(padded: FloatArray, at: IntArray, step: IntArray, size: int) -> tuple[FloatArray, FloatArray]:
    """Steps from nodes ``at`` to the first measured one on the way, (k,), infinite where there is none;
    and its height."""
    steps, height = np.full(len(at), np.inf), np.zeros(len(at))
    for n in range(1, size + 1):
        z = padded[tuple((at + n * step).T)]
        met = np.isinf(steps) & ~np.isnan(z)
        steps[met], height[met] = n, z[met]
    return steps, height


def _closing(known: BoolArray, size: int) -> BoolArray:
    """Binary closing by a square, as a pair of running maxima and minima (a structuring element of 15 x 15
    is slow)."""
    padded = np.pad(known.astype(np.uint8), size)
    grown = ndimage.maximum_filter(padded, size)
    return ndimage.minimum_filter(grown, size, origin=-1 if size % 2 == 0 else 0)[
        size:-size, size:-size
    ].astype(bool)


def contact_ground(surface: Surface) -> FloatArray:
    """What the underside meets: the highest of each cell, ``VOID`` where unmeasured."""
    return np.ascontiguousarray(np.where(np.isnan(surface.top.values), VOID, surface.top.values))
