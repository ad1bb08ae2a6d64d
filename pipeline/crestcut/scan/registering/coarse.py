"""Where one scan lies on another when their coordinates do not agree: height pictures from above, matched
over all turns.

Both scans are level (z up), so three unknowns are left: a turn and a shift in plan. For each turn the shift
comes from the normalised cross-correlation of two height rasters with holes, by Fourier transform (Padfield
2012, 'Masked object registration in the Fourier domain').
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray

_CELL = 0.08  # m
_TURNS = 120  # every 3 degrees: half a cell at 1.5 m from the middle
_LEAST_OVERLAP = 0.35  # of the smaller scan's area
_TALLEST = 0.5  # m: trees and people are cut off here


@dataclass(frozen=True, eq=False)
class Start:
    """A place to start registering from."""

    turn: float  # radians about z
    move: FloatArray  # (3,) metres, applied after the turn


def find_starts(reference: FloatArray, moving: FloatArray) -> list[Start]:
    """The likeliest place of ``moving`` (m, 3) on ``reference`` (n, 3), both thinned site metres, for each of
    the turns."""
    from scipy.fft import next_fast_len

    middle = np.median(moving, axis=0)
    centred = moving - middle
    origin = reference[:, :2].min(axis=0)
    fixed, fixed_mask = _raster(reference[:, :2] - origin, reference[:, 2] - np.median(reference[:, 2]))
    reach = int(np.ceil(2 * np.sqrt((centred[:, :2] ** 2).sum(axis=1).max()) / _CELL)) + 2
    shape = tuple(next_fast_len(n + reach) for n in fixed.shape)
    starts: list[Start] = []
    for turn in np.arange(_TURNS) * (2 * np.pi / _TURNS):
        c, s = np.cos(turn), np.sin(turn)
        turned = centred[:, :2] @ np.array([[c, s], [-s, c]])
        low = turned.min(axis=0)
        image, mask = _raster(turned - low, centred[:, 2])
        likeness = _masked_correlation(fixed, fixed_mask, image, mask, shape)
        best = np.unravel_index(int(np.argmax(likeness)), shape)
        shift = np.array([n if n < size - reach else n - size for n, size in zip(best, shape, strict=True)])
        move = np.array([*(origin + shift * _CELL - low), 0.0])
        rotated_middle = np.array([c * middle[0] - s * middle[1], s * middle[0] + c * middle[1]])
        move[:2] -= rotated_middle
        move[2] = _height(
            reference, np.c_[moving[:, :2] @ np.array([[c, s], [-s, c]]) + move[:2], moving[:, 2]]
        )
        starts.append(Start(float(turn), move))
    return starts


def _raster(xy: FloatArray, z: FloatArray) -> tuple[FloatArray, BoolArray]:
    """Highest z of each cell (nx, ny), held within reach of the middle height, and where there is any."""
    i, j = np.floor(xy / _CELL).astype(int).T
    image = np.full((int(i.max()) + 1, int(j.max()) + 1), -np.inf)
    np.maximum.at(image, (i, j), z)
    mask = np.isfinite(image)
    return np.where(mask, np.clip(image, -_TALLEST, _TALLEST), 0.0), mask


def _masked_correlation(
    fixed: FloatArray, fixed_mask: BoolArray, image: FloatArray, mask: BoolArray, shape: tuple[int, ...]
) -> FloatArray:
    """Likeness of heights at every shift (shape), -inf where too little overlaps (Padfield 2012, equation
    13)."""
    from scipy.fft import irfft2, rfft2

    def ahead(a: FloatArray) -> FloatArray:
        return np.asarray(rfft2(a, shape))

    def back(a: FloatArray) -> FloatArray:
        return np.asarray(irfft2(a, shape))

    f1, m1, s1 = ahead(fixed), ahead(fixed_mask.astype(float)), ahead(fixed**2)
    f2, m2, s2 = (np.conj(ahead(a)) for a in (image, mask.astype(float), image**2))
    count = np.maximum(np.rint(back(m1 * m2)), 1e-9)
    sum1, sum2 = back(f1 * m2), back(m1 * f2)
    top = back(f1 * f2) - sum1 * sum2 / count
    spread = (back(s1 * m2) - sum1**2 / count) * (back(m1 * s2) - sum2**2 / count)
    enough = (count >= _LEAST_OVERLAP * min(fixed_mask.sum(), mask.sum())) & (spread > 1e-9)
    correlation = np.clip(top / np.sqrt(np.maximum(spread, 1e-9)), -0.999, 0.999)
    # Fisher's transformation: a lesser likeness over a larger overlap can be the surer one.
    return np.where(enough, np.arctanh(correlation) * np.sqrt(count), -np.inf)


def _height(reference: FloatArray, moved: FloatArray) -> float:
    """Median height that the moved points lack to lie on the reference, metres."""
    from scipy.spatial import cKDTree

    distance, index = cKDTree(reference[:, :2]).query(moved[:, :2], distance_upper_bound=0.1)
    near = np.isfinite(distance)
    return float(np.median(reference[index[near], 2] - moved[near, 2])) if near.any() else 0.0
