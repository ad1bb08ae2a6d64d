"""Warp and patch from the difference of two passes over the same slab.

The difference of two independent passes has the covariance of both added, so its smooth part is the warp and
what is left over a tenth of a metre is the patch. Fitted by composite likelihood: exact Gaussian likelihoods
of small blocks, added up (Varin, Reid & Firth, Statistica Sinica 21, 2011), each with its own plane
integrated out (restricted likelihood, Patterson & Thompson, Biometrika 58, 1971), because passes also differ
by a shift and a tilt, which move no clearance.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy import linalg

from crestcut.base.grid import FloatArray
from crestcut.terrain.error.covariance import matern32

BLOCK = 130  # cells in a block
SPREADS = (
    None,
    None,
    None,
    None,
    8,
    8,
    8,
    8,
)  # each block is drawn from so many times its cells' nearest neighbours; None: from everything
USUAL_LENGTH, LENGTH_FACTOR = (
    0.4,
    1.8,
)  # m: a weak pull on the warp's length, which a small slab cannot tell alone
LOW, HIGH = 2e-5, 0.1  # m, bounds of each standard deviation


@dataclass(frozen=True)
class PassFit:
    """What one pass adds: warp and patch (1 sd, m), warp length (m), one point's own noise (m), cells
    used."""

    warp: float
    warp_length: float
    patch: float
    white: float
    cells: int


@dataclass(frozen=True, eq=False)
class _Block:
    distance: FloatArray  # (n, n) m
    near: FloatArray  # (n, n) correlation of the patch part
    noise: FloatArray  # (n,) 1 / points of the one pass + 1 / points of the other
    known: FloatArray  # (n, 4) the plane's 1, x, y and the values, m; column by column in memory


def fit_difference(
    xy: FloatArray,
    difference: FloatArray,
    noise: FloatArray,
    patch_length: float,
    seed: int = 0,
    warp_length: float | None = None,
    patch: float | None = None,
) -> PassFit:
    """One pass's warp, patch and noise from the difference between two.

    xy : (n, 2) cells' middles, m.  difference : (n,) of the mean heights of both passes, m.  noise : (n,) 1 /
    points of the one pass + 1 / points of the other in that cell.  patch_length : m, held.  warp_length,
    patch : m, of one pass, held when given.
    """
    from scipy import optimize  # a run that takes up its slab fits nothing

    keep = _plausible(xy, difference)
    blocks = _blocks(xy[keep], difference[keep], noise[keep], patch_length, np.random.default_rng(seed))
    size = max(float(np.std(np.concatenate([_detilted(b) for b in blocks]))), 1e-4)
    start = np.log([size / 1.5, size / 3, size, warp_length or USUAL_LENGTH])
    bounds = [(np.log(LOW), np.log(HIGH))] * 3 + [(np.log(0.12), np.log(2.0))]
    if warp_length is not None:
        bounds[3] = (start[3], start[3])
    if patch is not None:
        start[1] = np.log(patch * np.sqrt(2))
        bounds[1] = (start[1], start[1])

    # differences by the other parameters ask for the same length again, and where it is held all do
    @lru_cache(maxsize=1)
    def smooth(length: float) -> list[FloatArray]:
        return [matern32(block.distance, length) for block in blocks]

    def loss(q: FloatArray) -> float:
        warp, rough, white, length = np.exp(q)
        pull = (
            0.0
            if warp_length is not None
            else 0.5 * ((q[3] - np.log(USUAL_LENGTH)) / np.log(LENGTH_FACTOR)) ** 2
        )
        each = zip(blocks, smooth(float(length)), strict=True)
        return pull + sum(_minus_log_likelihood(b, s, warp, rough, white) for b, s in each)

    best = optimize.minimize(
        loss, start, method="L-BFGS-B", bounds=bounds, options={"maxiter": 40, "ftol": 1e-6}
    )
    warp, rough, white, length = np.exp(best.x)
    # the difference holds both passes: one pass has half its variance; the noise was already counted for both
    return PassFit(
        float(warp / np.sqrt(2)), float(length), float(rough / np.sqrt(2)), float(white), int(keep.sum())
    )


def _plausible(xy: FloatArray, difference: FloatArray) -> np.ndarray:
    """Leave out cells where something other than the slab was seen in one pass: far from the plane through
    all differences."""
    keep = np.isfinite(difference)
    plane = np.column_stack([np.ones(len(xy)), xy - xy.mean(axis=0)])
    for _ in range(4):
        rest = difference - plane @ np.linalg.lstsq(plane[keep], difference[keep], rcond=None)[0]
        spread = 1.4826 * float(np.median(np.abs(rest[keep] - np.median(rest[keep]))))
        keep = np.abs(rest) <= 3.5 * max(spread, 1e-5)
    return keep


def _blocks(
    xy: FloatArray, value: FloatArray, noise: FloatArray, patch_length: float, rng: np.random.Generator
) -> list[_Block]:
    chosen = []
    for spread in SPREADS:
        near = np.arange(len(xy))
        if spread is not None and spread * BLOCK < len(xy):
            away = ((xy - xy[rng.integers(len(xy))]) ** 2).sum(axis=1)
            near = np.argpartition(away, spread * BLOCK)[: spread * BLOCK]
        chosen.append(rng.choice(near, min(BLOCK, len(near)), replace=False))
    return [_block(xy[c], value[c], noise[c], patch_length) for c in chosen]


def _block(xy: FloatArray, value: FloatArray, noise: FloatArray, patch_length: float) -> _Block:
    centred = xy - xy.mean(axis=0)
    distance = np.sqrt(((xy[:, None] - xy[None]) ** 2).sum(axis=-1))
    return _Block(
        distance,
        matern32(distance, 0.5 * patch_length),
        noise,
        np.asfortranarray(np.column_stack([np.ones(len(xy)), centred, value])),
    )


def _detilted(block: _Block) -> FloatArray:
    plane, value = block.known[:, :3], block.known[:, 3]
    return np.asarray(value - plane @ np.linalg.lstsq(plane, value, rcond=None)[0])


def _minus_log_likelihood(
    block: _Block, smooth: FloatArray, warp: float, patch: float, white: float
) -> float:
    """Restricted likelihood: 1/2 (log|C| + log|X' C^-1 X| + y' P y), the plane X integrated out.

    smooth : (n, n) correlation of the warp."""
    covariance = (warp**2) * smooth + patch**2 * block.near
    covariance.flat[:: len(covariance) + 1] += white**2 * block.noise + 1e-12
    # the routines themselves: their scipy wrappers cost more than the work on so small a matrix
    lower, failed = linalg.lapack.dpotrf(covariance, lower=1, overwrite_a=1)
    if failed:
        return 1e12
    both, _ = linalg.lapack.dtrtrs(lower, block.known, lower=1)
    gram = both.T @ both
    # Cholesky of [X y]' C^-1 [X y]: its last pivot is the sum of squares that the plane leaves
    corner, failed = linalg.lapack.dpotrf(gram, lower=1)
    if failed:
        return 1e12
    pivots = np.diag(corner)
    return float(np.log(np.diag(lower)).sum() + np.log(pivots[:-1]).sum() + 0.5 * pivots[-1] ** 2)
