"""What of a fit's fine rest is the slab's: a lip, a spall, a tile's edge, larger than the scan's error is.

The slab is judged by means of tiles (``posterior``); what is narrower than those is left over. Most of it is
the scan's patches and the narrow part of its warp.
"""

from __future__ import annotations

import numpy as np
from scipy import ndimage, special

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid
from crestcut.terrain.slab.split import matern_of_square

FINE_SMOOTH = 0.25  # m: what is left of the fit is taken off what is smoother than this
KEEP_BY_CHANCE = 0.05  # windows in which the scan's fine error is anywhere so large that some of it is kept
KEEP_WHOLE = 1.5  # sd over that: from there on all is the slab's
GRAIN = 0.03  # m over which what is kept is judged


def narrow_part(half_at: float) -> float:
    """1 sd of what is narrower than ``FINE_SMOOTH`` in a Matern-3/2 field of unit variance: of the field less
    its mean over a Gaussian of that size."""
    share = (np.arange(64) + 0.5) / 64
    square = -2 * np.log(share) * (FINE_SMOOTH / 2.5) ** 2  # of distances of so many places of it
    once, twice = (float(matern_of_square(k * square, half_at).mean()) for k in (1, 2))
    return float(np.sqrt(max(1 - 2 * once + twice, 0.0)))


def sharp_of(rest: FloatArray, on: BoolArray, cell: float) -> FloatArray:
    """(ny, nx) what of a rest, m, is narrower than ``FINE_SMOOTH``: itself less its mean over a Gaussian of
    that size, nodes ``on`` alone; 0 elsewhere."""
    size = FINE_SMOOTH / cell / 2.5
    filled, weight = (ndimage.gaussian_filter(a, size) for a in (np.where(on, rest, 0.0), on.astype(float)))
    return np.where(on, rest - filled / np.maximum(weight, 1e-3), 0.0)


def kept_of(
    rest: FloatArray, usable: BoolArray, cell: float, fine: float, patch_length: float,
    standard_error: HeightGrid,
) -> FloatArray:  # fmt: skip
    """What of the fit's fine rest (m, over the posterior's mean) is larger than the scan's fine error can
    be: the slab's, kept whole."""
    on = usable & np.isfinite(rest)
    sharp = sharp_of(rest, on, cell)
    known = np.abs(sharp[on])
    shown = 1.4826 * float(np.median(known)) if known.size else 0.0
    sd = np.maximum(min(fine, max(shown, 1e-5)), np.nan_to_num(standard_error.values, nan=fine))
    grain = GRAIN / cell
    size_of = np.sqrt(ndimage.gaussian_filter(sharp**2, grain))
    # the largest of many patches is large by chance: so many are looked at
    patches = max(on.sum() * cell**2 / patch_length**2, 1.0)
    kept_from = -float(special.ndtri(0.5 * KEEP_BY_CHANCE / patches))
    share = np.clip((size_of / sd - kept_from) / KEEP_WHOLE, 0.0, 1.0)
    return np.asarray(share * sharp)
