"""Bandwidth from the noise: at every cell the largest window whose fit the smaller windows do not contradict.

The rule is that of intersecting confidence intervals (Goldenshluger & Nemirovski 1997, Math. Meth. Statist.
6:135): where the
slab is plain the window grows and the noise averages away, where it bends the window shrinks before bending
is smoothed off.
"""

from __future__ import annotations

import math
from itertools import combinations

import numpy as np
from numba import njit
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.parallel import share
from crestcut.terrain.heights.local import FEW_ROWS, Local, fit_local

Fields = tuple[FloatArray, ...]

HALVES = (0.32, 0.21, 0.135, 0.085, 0.055, 0.035)  # m, half windows from the widest
WIDE_ONES = 4  # of them are made everywhere, the rest only near where these are in
DOUBTED = 2.8  # standard deviations of the difference of two fits
CONTRADICTED = 3.8


def fit_plain(
    count: FloatArray, z: FloatArray, mask: BoolArray, pitch: float, noise: float, inflation: float = 1.0
) -> tuple[FloatArray, FloatArray, NDArray[np.int8]]:
    """Height, its white standard error (both m) and the index into ``HALVES`` chosen at every cell of
    ``mask``.

    ``noise`` : sd of one point, m.  ``inflation`` : factor on variances when fits are compared, for noise
    that neighbours share.
    """
    judge = noise * np.sqrt(inflation)
    fits: list[Local] = []
    for k, h in enumerate(HALVES):
        half = max(2, round(h / pitch))
        if k == WIDE_ONES:
            mask_of_narrow = _unsettled(fits, mask, judge, pitch)
        on = mask if k < WIDE_ONES else mask_of_narrow
        fits.append(fit_local(count, z, on, half, pitch, judge, every=max(2 if half >= 4 else 1, half // 4)))
    for fit in fits[WIDE_ONES:]:  # where the wide ones agree the narrow ones add nothing but noise
        np.copyto(fit.z, fits[WIDE_ONES - 1].z, where=~mask_of_narrow)
        np.copyto(fit.variance, fits[WIDE_ONES - 1].variance, where=~mask_of_narrow)
    choice = np.full(count.shape, len(HALVES) - 1, np.int8)
    zs, vs = tuple(f.z for f in fits), tuple(f.variance for f in fits)
    share(lambda a, b: _choose(zs, vs, mask, judge, a, b, choice), len(mask), FEW_ROWS)
    return _blend(zs, vs, choice, mask, noise, pitch)


@njit(cache=True, nogil=True)
def _choose(zs, vs, mask, judge, j0, j1, choice):  # type: ignore[no-untyped-def]
    """choice := the widest window that no narrower one contradicts; a wider one is only tried where every
    narrower one already agreed."""
    for j in range(j0, j1):
        for i in range(mask.shape[1]):
            if not mask[j, i]:
                continue
            for wide in range(len(zs) - 2, -1, -1):
                agrees = True
                for narrow in range(wide + 1, len(zs)):
                    spread = judge * math.sqrt(max(vs[narrow][j, i] - vs[wide][j, i], 0.0))
                    if not abs(zs[wide][j, i] - zs[narrow][j, i]) <= CONTRADICTED * spread + 1e-5:
                        agrees = False
                        break
                if not agrees:
                    break
                choice[j, i] = wide


def _unsettled(fits: list[Local], mask: BoolArray, judge: float, pitch: float) -> BoolArray:
    """Cells within the narrowest wide window's reach of where the wide ones may contradict each other."""
    doubt = np.zeros_like(mask)
    for wide, narrow in combinations(fits, 2):
        spread = judge * np.sqrt(np.maximum(narrow.variance - wide.variance, 0.0))
        doubt |= np.abs(wide.z - narrow.z) > DOUBTED * spread + 1e-5
    reach = 2 * round(HALVES[WIDE_ONES - 1] / pitch) + 1
    near: BoolArray = ndimage.maximum_filter(doubt & mask, reach)
    return near & mask


def _blend(
    zs: Fields, vs: Fields, choice: NDArray[np.int8], mask: BoolArray, noise: float, pitch: float
) -> tuple[FloatArray, FloatArray, NDArray[np.int8]]:
    """The narrowest choice within 3 cm decides, blurred over 3 cm so that the surface does not jump where
    the choice changes."""
    size = 2 * max(1, round(0.03 / pitch)) + 1
    level = ndimage.uniform_filter(ndimage.maximum_filter(choice, size).astype(float), size)
    z, se = np.full(mask.shape, np.nan), np.full(mask.shape, np.nan)
    share(lambda a, b: _mix(zs, vs, level, mask, noise, a, b, z, se), len(mask), FEW_ROWS)
    return z, se, choice


@njit(cache=True, nogil=True)
def _mix(zs, vs, level, mask, noise, j0, j1, z, se):  # type: ignore[no-untyped-def]
    """z, se := between the two windows on either side of ``level``."""
    for j in range(j0, j1):
        for i in range(mask.shape[1]):
            if mask[j, i]:
                low = min(max(math.floor(level[j, i]), 0), len(zs) - 2)
                share = level[j, i] - low
                z[j, i] = (1 - share) * zs[low][j, i] + share * zs[low + 1][j, i]
                v = (1 - share) * vs[low][j, i] + share * vs[low + 1][j, i]
                se[j, i] = noise * math.sqrt(v)
