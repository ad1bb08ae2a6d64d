"""Bandwidth from the noise: at every cell the largest window whose fit the smaller windows do not contradict.

The rule is that of intersecting confidence intervals (Goldenshluger & Nemirovski 1997, Math. Meth. Statist.
6:135): where the
slab is plain the window grows and the noise averages away, where it bends the window shrinks before bending
is smoothed off.
"""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import combinations
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.kernels import njit
from crestcut.base.parallel import share
from crestcut.terrain.heights.local import FEW_ROWS, CellMeans, Local, fit_local, windows

Fields = tuple[FloatArray, ...]

HALVES = (0.32, 0.21, 0.135, 0.085, 0.055, 0.035)  # m, half windows from the widest
WIDE_ONES = 4  # of them are made everywhere, the rest only near where these are in
DOUBTED = 2.8  # standard deviations of the difference of two fits
CONTRADICTED = 3.8


class Plain(NamedTuple):
    """Height, its white standard error (both m) and the index into ``HALVES`` chosen at every cell."""

    height: FloatArray
    error: FloatArray
    choice: NDArray[np.int8]

    def columns(self, some: slice) -> Plain:
        """Of some columns of the lattice."""
        return Plain(self.height[:, some], self.error[:, some], self.choice[:, some])


def fit_plain(means: CellMeans, inflation: float = 1.0) -> Plain:
    """Heights at every cell of the mask.

    ``inflation`` : factor on variances when fits are compared, for noise that neighbours share.
    """
    # the sparse fits lie at the same cells in every window
    every = math.lcm(*(_every(_half(h, means.pitch)) for h in HALVES))
    parts = [_fit_plain(part, inflation).columns(own) for _, own, part in windows(means, every)]
    if len(parts) == 1:
        return parts[0]
    heights, errors, choices = zip(*parts, strict=True)
    z, se = (np.concatenate(a, axis=1) for a in (heights, errors))
    return Plain(z, se, np.concatenate(choices, axis=1))


def _half(half: float, pitch: float) -> int:
    """Cells of a half window of so many m."""
    return max(2, round(half / pitch))


def _every(half: int) -> int:
    """Cells between the fits of a half window of so many."""
    return max(2 if half >= 4 else 1, half // 4)


def _fit_plain(means: CellMeans, inflation: float) -> Plain:
    mask, pitch, judge = means.mask, means.pitch, float(means.noise * np.sqrt(inflation))
    fits: list[Local] = []
    for k, h in enumerate(HALVES):
        half = _half(h, pitch)
        if k == WIDE_ONES:
            mask_of_narrow = _unsettled(fits, mask, judge, pitch)
        on = replace(means, noise=judge, mask=mask if k < WIDE_ONES else mask_of_narrow)
        fits.append(fit_local(on, half, every=_every(half)))
    for fit in fits[WIDE_ONES:]:  # where the wide ones agree the narrow ones add nothing but noise
        np.copyto(fit.z, fits[WIDE_ONES - 1].z, where=~mask_of_narrow)
        np.copyto(fit.variance, fits[WIDE_ONES - 1].variance, where=~mask_of_narrow)
    choice = np.full(mask.shape, len(HALVES) - 1, np.int8)
    zs, vs = tuple(f.z for f in fits), tuple(f.variance for f in fits)
    share(lambda a, b: _choose(a, b, zs, vs, mask, judge, choice), len(mask), FEW_ROWS)
    return _blend(zs, vs, choice, means)


@njit()
def _choose(
    first: int, stop: int, zs: Fields, vs: Fields, mask: BoolArray, judge: float, choice: NDArray[np.int8]
) -> None:
    """choice := the widest window that no narrower one contradicts; a wider one is only tried where every
    narrower one already agreed."""
    for j in range(first, stop):
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


def _blend(zs: Fields, vs: Fields, choice: NDArray[np.int8], means: CellMeans) -> Plain:
    """The narrowest choice within 3 cm decides, blurred over 3 cm so that the surface does not jump where
    the choice changes."""
    mask, size = means.mask, 2 * max(1, round(0.03 / means.pitch)) + 1
    level = ndimage.uniform_filter(ndimage.maximum_filter(choice, size).astype(float), size)
    z, se = np.full(mask.shape, np.nan), np.full(mask.shape, np.nan)
    share(lambda a, b: _mix(a, b, zs, vs, level, mask, means.noise, z, se), len(mask), FEW_ROWS)
    return Plain(z, se, choice)


@njit()
def _mix(
    first: int, stop: int, zs: Fields, vs: Fields, level: FloatArray, mask: BoolArray, noise: float,
    z: FloatArray, se: FloatArray,
) -> None:  # fmt: skip
    """z, se := between the two windows on either side of ``level``."""
    for j in range(first, stop):
        for i in range(mask.shape[1]):
            if mask[j, i]:
                low = min(max(math.floor(level[j, i]), 0), len(zs) - 2)
                share = level[j, i] - low
                z[j, i] = (1 - share) * zs[low][j, i] + share * zs[low + 1][j, i]
                v = (1 - share) * vs[low][j, i] + share * vs[low + 1][j, i]
                se[j, i] = noise * math.sqrt(v)
