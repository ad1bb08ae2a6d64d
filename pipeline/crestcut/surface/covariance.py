"""How errors at two places go together: the covariance of the smooth and of the patchy part of a scan's
error.

Both parts are Matern-3/2. Its shape decides more than its size: it is smooth enough for drift and rough
enough not to promise what a scan does not keep (Rasmussen & Williams, Gaussian Processes for Machine
Learning, 2006, equation 4.17).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from crestcut.grid import FloatArray
from crestcut.surface.records import ErrorModel

HALF = 1.6783469900166605  # (1 + x) exp(-x) = 1/2


def matern32(distance: ArrayLike, half_at: float) -> FloatArray:
    """Correlation at ``distance`` (m), falling to one half at ``half_at`` (m). Same shape as ``distance``."""
    x = np.abs(np.asarray(distance, dtype=float)) * (HALF / half_at)
    return (1.0 + x) * np.exp(-x)


def patch_half(model: ErrorModel) -> float:
    """Where the patch part's correlation is one half, m: half its patch length (it is 0.15 at the whole
    length)."""
    return 0.5 * model.patch_length


def between(model: ErrorModel, first: ArrayLike, second: ArrayLike) -> FloatArray:
    """Covariance (n, m), m2, of warp and patch between places (n, 2) and (m, 2) in metres. White noise is
    not in it.

    White noise belongs to single points of the scan, so two places never share it; what is left of it in a
    fitted height is the surface's standard error, which the caller adds on the diagonal where it matters.
    """
    a, b = np.asarray(first, dtype=float).reshape(-1, 2), np.asarray(second, dtype=float).reshape(-1, 2)
    distance = np.sqrt(((a[:, None, :] - b[None, :, :]) ** 2).sum(axis=-1))
    smooth = model.warp**2 * matern32(distance, model.warp_length)
    return smooth + model.patch**2 * matern32(distance, patch_half(model))


def of_functionals(
    model: ErrorModel,
    points: tuple[FloatArray, ...],
    weights: tuple[FloatArray, ...],
    standard_error: tuple[FloatArray, ...],
) -> FloatArray:
    """Covariance (m, m), m2, of weighted sums of the error: sum over k of weights[i][k] *
    error(points[i][k]).

    points : m arrays (k_i, 2), metres.  weights : m arrays (k_i,).  standard_error : m arrays (k_i,), the
    white part of the height at each, m; it enters only where a sum meets itself.
    """
    out = np.empty((len(points), len(points)))
    for i in range(len(points)):
        for j in range(i, len(points)):
            out[i, j] = out[j, i] = weights[i] @ between(model, points[i], points[j]) @ weights[j]
        out[i, i] += float(((weights[i] * standard_error[i]) ** 2).sum())
    return out
