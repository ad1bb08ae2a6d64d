"""Bandwidth from the noise: at every cell the largest window whose fit the smaller windows do not contradict.

The rule is that of intersecting confidence intervals (Goldenshluger & Nemirovski 1997, Math. Meth. Statist.
6:135): where the
slab is plain the window grows and the noise averages away, where it bends the window shrinks before bending
is smoothed off.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.grid import BoolArray, FloatArray
from crestcut.surface.local import fit_local

HALVES = (0.30, 0.20, 0.13, 0.085, 0.055, 0.035)  # m, half windows from the widest
CONTRADICTED = 3.8  # standard deviations of the difference of two fits


def fit_plain(
    count: FloatArray, z: FloatArray, mask: BoolArray, pitch: float, noise: float, inflation: float = 1.0
) -> tuple[FloatArray, FloatArray, NDArray[np.int8]]:
    """Height, its white standard error (both m) and the index into ``HALVES`` chosen at every cell of
    ``mask``.

    ``noise`` : sd of one point, m.  ``inflation`` : factor on variances when fits are compared, for noise
    that neighbours share.
    """
    judge = noise * np.sqrt(inflation)
    fits = []
    for h in HALVES:
        half = max(2, round(h / pitch))
        fits.append(fit_local(count, z, mask, half, pitch, judge, every=max(1, half // 5)))
    choice = np.full(count.shape, len(HALVES) - 1, np.int8)
    for wide in range(len(HALVES) - 2, -1, -1):
        agrees = mask.copy()
        for narrow in range(wide + 1, len(HALVES)):
            spread = judge * np.sqrt(np.maximum(fits[narrow].variance - fits[wide].variance, 0.0))
            agrees &= np.abs(fits[wide].z - fits[narrow].z) <= CONTRADICTED * spread + 1e-5
        # a wider window is only tried where every narrower one already agreed
        choice[agrees & (choice == wide + 1)] = wide
    return _blend(fits, choice, mask, noise, pitch)


def _blend(fits: list, choice: NDArray[np.int8], mask: BoolArray, noise: float, pitch: float):  # type: ignore[no-untyped-def]
    """The narrowest choice within 3 cm decides, blurred over 3 cm so that the surface does not jump where
    the choice changes."""
    size = 2 * max(1, round(0.03 / pitch)) + 1
    level = ndimage.uniform_filter(ndimage.maximum_filter(choice, size).astype(float), size)
    low = np.clip(np.floor(level), 0, len(fits) - 2).astype(int)
    share = level - low
    zs = np.stack([f.z for f in fits])
    vs = np.stack([f.variance for f in fits])
    j, i = np.indices(choice.shape)
    z = (1 - share) * zs[low, j, i] + share * zs[low + 1, j, i]
    v = (1 - share) * vs[low, j, i] + share * vs[low + 1, j, i]
    return np.where(mask, z, np.nan), np.where(mask, noise * np.sqrt(v), np.nan), choice
