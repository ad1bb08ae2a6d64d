"""What a mesh's own heights say of its errors: they cannot be rougher than the mesh is.

A slab is made smooth over a tenth of a metre to half a metre, so what a scan's heights do there is error, and
all of the error there. Points must be averaged before that shows, and their fit takes a share of it away; a
mesh shows it as it is, and an app may have smoothed it, which no prior can know.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.terrain.error.covariance import matern32
from crestcut.terrain.error.priors import Prior

FEWEST = 30  # squares of the lag a side that must be seen: fewer say little of a variance
LONGEST = 3.0  # m: a warp that halves farther off than this bends no line of travel


def as_smooth_as(height: HeightGrid, prior: Prior) -> Prior:
    """The prior, its warp longer and its patch less where the heights (taken from a mesh) are smoother than
    it says. Never rougher; the warp's size stays, as what is longer than the slab does not show.

    The second difference z(-h) - 2 z(0) + z(h) of a field of variance s^2 and correlation r has the variance
    s^2 (6 - 8 r(h) + 2 r(2 h)) and is free of slopes; warp and patch are independent, so what is seen is the
    sum of both. The warp is read at h = its length, beside the prior's patch; the patch at its length, where
    neighbours have next to nothing of it in common.
    """
    seen = shown_variance(height, prior.warp_length)
    if seen is None:
        return prior
    apart, size = prior.warp_length, max(prior.warp, 1e-9) ** 2
    if seen < size * of_second_difference(apart, prior.warp_length):
        ends = [size * of_second_difference(apart, at) - seen for at in (prior.warp_length, LONGEST)]
        longer = LONGEST
        if ends[1] < 0:
            from scipy import optimize

            longer = optimize.brentq(
                lambda at: size * of_second_difference(apart, at) - seen, prior.warp_length, LONGEST
            )
        prior = replace(prior, warp_length=float(longer))
    seen = shown_variance(height, prior.patch_length)
    if seen is None:
        return prior
    left = max(seen - size * of_second_difference(prior.patch_length, prior.warp_length), 0.0)
    patch = (left / of_second_difference(prior.patch_length, 0.5 * prior.patch_length)) ** 0.5
    return replace(prior, patch=min(patch, prior.patch))


def shown_variance(height: HeightGrid, apart: float) -> float | None:
    """Variance, m2, of second differences of the heights over ``apart`` (m), along rows and columns; None
    where too little is measured. From the median, so that crests, joints and edges, a small part of the
    places, hardly count."""
    step = max(round(apart / height.frame.cell), 1)
    found = np.concatenate([_second_differences(z, step) for z in (height.values, height.values.T)])
    if len(found) < 2 * FEWEST * step**2:
        return None
    return (1.4826 * float(np.median(np.abs(found - np.median(found))))) ** 2


def _second_differences(values: FloatArray, step: int) -> FloatArray:
    change = values[:, 2 * step :] - 2 * values[:, step:-step] + values[:, : -2 * step]
    return change[np.isfinite(change)]


def of_second_difference(apart: float, half_at: float) -> float:
    """Variance of a second difference over ``apart`` (m) of a Matern-3/2 field of unit variance that halves
    at ``half_at`` (m): 6 - 8 r(apart) + 2 r(2 apart)."""
    near, far = matern32(np.array([apart, 2 * apart]), half_at)
    return float(6 - 8 * near + 2 * far)
