"""How errors at two places go together: the covariance of the smooth and of the patchy part of a scan's
error.

Both parts are Matern-3/2. Its shape decides more than its size: it is smooth enough for drift and rough
enough not to promise what a scan does not keep (Rasmussen & Williams, Gaussian Processes for Machine
Learning, 2006, equation 4.17).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike

from crestcut.base.grid import FloatArray
from crestcut.terrain.records import ErrorModel

if TYPE_CHECKING:
    from crestcut.terrain.slab.posterior import Posterior

HALF = 1.6783469900166605  # (1 + x) exp(-x) = 1/2


def matern32(distance: ArrayLike, half_at: float) -> FloatArray:
    """Correlation at ``distance`` (m), falling to one half at ``half_at`` (m). Same shape as ``distance``,
    and single where that is."""
    # in place, for a slab's thousands of pairs: half the time, the same digits
    single = getattr(distance, "dtype", None) == np.float32
    minus = np.atleast_1d(np.abs(np.asarray(distance, dtype=np.float32 if single else float)))
    minus *= -HALF / half_at
    out: FloatArray = np.exp(minus)
    out *= np.subtract(1.0, minus, out=minus)
    return out.reshape(np.shape(distance))


def patch_half(model: ErrorModel) -> float:
    """Where the patch part's correlation is one half, m: half its patch length (it is 0.15 at the whole
    length)."""
    return 0.5 * model.patch_length


def between(model: ErrorModel, first: ArrayLike, second: ArrayLike) -> FloatArray:
    """Covariance (n, m), m2, of the error of heights between places (n, 2) and (m, 2), site metres: of what
    the slab may be where that was judged, else of the scan's warp and patch. White noise is not in it.

    White noise belongs to single points of the scan, so two places never share it; what is left of it in a
    fitted height is the surface's standard error, which the caller adds on the diagonal where it matters.
    """
    a, b = np.asarray(first, dtype=float).reshape(-1, 2), np.asarray(second, dtype=float).reshape(-1, 2)
    if model.slab is None:
        return of_scan(model, a, b)
    own = model.slab.at_site(a) @ model.slab.at_site(b).T / np.float32(model.slab.count)
    if not any(model.worked):
        return np.asarray(own, dtype=np.float64)
    on = worked_at(model, a)[:, None] * worked_at(model, b)
    return np.asarray(own + on * of_scan(model.of_work, a, b), dtype=np.float64)


def worked_at(model: ErrorModel, places: FloatArray) -> FloatArray:
    """(n,) by what ``worked`` is multiplied at places (n, 2), site m: nothing was done beyond its grid."""
    if model.worked_on is None:
        return np.ones(len(places))
    return np.asarray(np.nan_to_num(model.worked_on.sample(places)))


def of_scan(model: ErrorModel, a: FloatArray, b: FloatArray) -> FloatArray:
    """Covariance (n, m), m2, of the scan's own warp and patch between places (n, 2) and (m, 2), m."""
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
    if model.slab is not None:
        each = sums_of(model.slab, points, weights)
        none = tuple(np.zeros_like(s) for s in standard_error)
        on = tuple(w * worked_at(model, p) for p, w in zip(points, weights, strict=True))
        extra = of_functionals(model.of_work, points, on, none) if any(model.worked) else 0.0
        return np.asarray(each @ each.T / model.slab.count + extra)
    out = np.empty((len(points), len(points)))
    for i in range(len(points)):
        for j in range(i, len(points)):
            out[i, j] = out[j, i] = weights[i] @ between(model, points[i], points[j]) @ weights[j]
        out[i, i] += float(((weights[i] * standard_error[i]) ** 2).sum())
    return out


def sums_of(slab: Posterior, points: Sequence[FloatArray], weights: Sequence[FloatArray]) -> FloatArray:
    """(m, draws) weighted sums of every draw less the mean, m: of weights[i][k] draw(points[i][k]) over k."""
    rows = [w @ slab.at_site(p) for p, w in zip(points, weights, strict=True)]
    return np.array(rows, dtype=np.float64).reshape(len(rows), slab.count)
