"""Where a hinge or a step earns its place, and how its fits are blended into the plain surface and its
highest-in-cell layer."""

from __future__ import annotations

import math
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numba import njit
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.grid import BoolArray, FloatArray
from crestcut.surface.agree import agree
from crestcut.surface.hinge import HINGE, PLAIN, ROUNDINGS, STEP, basis, first_fits, second_fits
from crestcut.surface.local import WORKERS, biweight, fit_local
from crestcut.surface.raster import Cells

PILOT = 0.15  # m, half window of the quadratic whose Hessian gives direction
SPACING = 0.05  # m between knots
REACH = 0.10  # m, radius of a knot's say
CANDIDATE = 3.5  # standard deviations of bending
LEAST_KINK = 0.012  # rise over run: a break smaller than this rounds by less than the noise allows to see
MOST_KNOTS = 6000
SUB = 7  # samples a side inside a cell for the highest-in-cell layer


@dataclass(frozen=True, eq=False)
class Knots:
    """place (n, 3): column, row (lattice cells), angle of n from u; model (n,), params (n, 9), inverse (n,
    9, 9)."""

    place: FloatArray
    model: NDArray[np.int8]
    params: FloatArray
    inverse: FloatArray

    @property
    def kinks(self) -> FloatArray:
        """Change of slope at each hinge found, rise over run, negative at a crest."""
        return 2 * self.params[self.model == HINGE, 3]


def find_knots(
    cells: Cells, z: FloatArray, mask: BoolArray, pitch: float, noise: float, inflation: float
) -> Knots:
    """Knots on a lattice of ``SPACING`` wherever bending is significant: fitted alone, judged with their
    neighbours, fitted again."""
    place = _candidates(cells.count, z, mask, pitch, noise * math.sqrt(inflation))
    n = len(place)
    alone, squares, profile = np.zeros((n, 2, 9)), np.zeros((n, 4)), np.zeros((n, len(ROUNDINGS)))
    data = (cells.count, cells.du, cells.dv, cells.z, place)
    _in_parts(n, lambda a, b: first_fits(*data, a, b, pitch, noise, inflation, alone, squares, profile))
    knots = Knots(place, np.zeros(n, np.int8), np.zeros((n, 9)), np.zeros((n, 9, 9)))
    priors = np.zeros((n, 2, 9))
    agree(place, pitch, noise * noise * inflation, alone, squares, profile, knots.model, priors)
    _in_parts(
        n,
        lambda a, b: second_fits(
            *data, a, b, pitch, noise, inflation, knots.model, priors, knots.params, knots.inverse
        ),
    )
    return knots


def _in_parts(n: int, work: Callable[[int, int], None]) -> None:
    """Runs ``work(first, last)`` over n items in a few threads."""
    edges = np.linspace(0, n, 8 * WORKERS + 1).astype(int)
    with ThreadPoolExecutor(WORKERS) as pool:
        jobs = [pool.submit(work, a, b) for a, b in pairwise(edges) if b > a]
        for job in jobs:
            job.result()


def _candidates(count: FloatArray, z: FloatArray, mask: BoolArray, pitch: float, noise: float) -> FloatArray:
    """(n, 3) column, row and angle of n: knots within reach of bending that noise does not explain."""
    half = max(2, round(PILOT / pitch))
    step = max(1, round(SPACING / pitch))
    sparse = np.zeros(mask.shape, bool)
    sparse[step // 2 :: step, step // 2 :: step] = True
    sparse &= ndimage.binary_dilation(mask, iterations=1)
    pilot = fit_local(count, z, sparse, half, pitch, noise, beta=True)
    assert pilot.beta is not None
    beta = pilot.beta[step // 2 :: step, step // 2 :: step]
    on = sparse[step // 2 :: step, step // 2 :: step]
    xx, xy, yy = beta[..., 2], beta[..., 3], beta[..., 4]
    mean, radius = (xx + yy) / 2, np.hypot((xx - yy) / 2, xy / 2)
    bend = np.nan_to_num(np.abs(mean) + radius)
    # direction of the larger eigenvalue of the Hessian [[2 xx, xy], [xy, 2 yy]]
    angle = 0.5 * np.arctan2(xy, xx - yy) + np.where(mean < 0, np.pi / 2, 0.0)
    # pilot.variance / factor = inverse sum of weights times a constant; bending is noisier than height by
    # the ratio below
    ratio = _bend_ratio(half)
    sd = noise * np.sqrt(np.nan_to_num(pilot.variance[step // 2 :: step, step // 2 :: step], nan=1.0) * ratio)
    kink = bend * 2 / (0.94 * PILOT)
    strong = on & (bend > CANDIDATE * sd) & (kink > LEAST_KINK)
    near = ndimage.binary_dilation(strong, np.ones((3, 3), bool), iterations=2) & on
    # the direction of the strongest bending nearby is the surest
    angle = _strongest(angle, np.where(strong, bend / np.maximum(sd, 1e-9), 0.0))
    j, i = np.nonzero(near)
    if len(j) > MOST_KNOTS:
        keep = np.sort(np.argsort(-bend[j, i], kind="stable")[:MOST_KNOTS])
        j, i = j[keep], i[keep]
    return np.stack([i * step + step // 2, j * step + step // 2, angle[j, i]], axis=1).astype(float)


def _bend_ratio(half: int) -> float:
    """Variance of b3 over variance of b0 for a full window."""
    k, _ = biweight(half)
    t = np.arange(-half + 1, half) / half
    x, y = np.meshgrid(t, t)
    f = np.stack([np.ones_like(x), x, y, x * x, x * y, y * y]).reshape(6, -1)
    w = np.outer(k, k).ravel()
    inverse = np.linalg.inv(f * w @ f.T)
    cov = inverse @ (f * w**2 @ f.T) @ inverse
    return float(cov[3, 3] / cov[0, 0])


def _strongest(angle: FloatArray, strength: FloatArray) -> FloatArray:
    """Angle of the strongest knot within two knots."""
    best, out = strength.copy(), angle.copy()
    for dj in range(-2, 3):
        for di in range(-2, 3):
            s = np.roll(strength, (dj, di), (0, 1))
            a = np.roll(angle, (dj, di), (0, 1))
            better = s > best
            best, out = np.where(better, s, best), np.where(better, a, out)
    return out


def blend(
    knots: Knots, plain: FloatArray, error: FloatArray, mask: BoolArray, pitch: float, noise: float
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Height, standard error and what the surface rises inside each cell above its own fit's plane through
    the nodes.

    The third array is the excess over the bilinear surface of the lattice, m, zero where no break passes.
    """
    if not (knots.model != PLAIN).any():
        return plain, error, np.zeros_like(plain)
    sums = np.zeros((4, *plain.shape))  # weight, weight of plain knots, height, error
    breaks = np.zeros(plain.shape, np.int32)
    _add_knots(
        knots.place, knots.model, knots.params, knots.inverse, plain, pitch, noise, REACH, sums, breaks
    )
    say = sums[0] + sums[1]
    share = np.where(say > 0, np.minimum(say / 1.5, 1.0) * sums[0] / np.maximum(say, 1e-12), 0.0)
    fitted = sums[2] / np.maximum(sums[0], 1e-12)
    with np.errstate(invalid="ignore"):
        height = np.where(mask & (sums[0] > 0), plain + share * (fitted - plain), plain)
        se = np.where(
            mask & (sums[0] > 0), error + share * (sums[3] / np.maximum(sums[0], 1e-12) - error), error
        )
    near = (breaks > 0) & mask & (share > 0.5)
    return height, se, _excess(knots, height, near, pitch)


def _excess(knots: Knots, height: FloatArray, near: BoolArray, pitch: float) -> FloatArray:
    """Largest height of the blended breaks inside each near cell over the bilinear surface of the lattice,
    m."""
    out = np.zeros(height.shape)
    index = np.full(height.shape, -1, np.int32)
    count = int(near.sum())
    index[near] = np.arange(count)
    samples = np.zeros((count, SUB * SUB, 2))
    _add_samples(knots.place, knots.model, knots.params, pitch, REACH, index, samples)
    _raise(height, index, samples, out)
    return out


@njit(cache=True, nogil=True)
def _quality(p):  # type: ignore[no-untyped-def]
    """A break in the middle of its window is known best."""
    return math.exp(-((p[4] / 0.10) ** 2)) + 0.02


@njit(cache=True, nogil=True)
def _add_knots(place, model, params, inverse, plain, pitch, noise, reach, sums, breaks):  # type: ignore[no-untyped-def]
    ny, nx = plain.shape
    f = np.empty(9)
    r = math.ceil(reach / pitch)
    for t in range(place.shape[0]):
        ci, cj = int(place[t, 0]), int(place[t, 1])
        ca, sa = math.cos(place[t, 2]), math.sin(place[t, 2])
        p = params[t]
        q = 0.3 if model[t] == PLAIN else _quality(p)
        for j in range(max(0, cj - r), min(ny, cj + r + 1)):
            for i in range(max(0, ci - r), min(nx, ci + r + 1)):
                x, y = (i - ci) * pitch, (j - cj) * pitch
                w = 1 - (x * x + y * y) / (reach * reach)
                if w <= 0.0:
                    continue
                w = w * w * q
                if model[t] == PLAIN:
                    sums[1, j, i] += w
                    continue
                n, along = x * ca + y * sa, -x * sa + y * ca
                value = basis(n, along, p, model[t] == STEP, f)
                v = n - p[4] - p[5] * along - p[6] * along * along
                if abs(v) < 1.5 * pitch:
                    breaks[j, i] += 1
                variance = 0.0
                for a in range(9):
                    for b in range(9):
                        variance += f[a] * inverse[t, a, b] * f[b]
                sums[0, j, i] += w
                sums[2, j, i] += w * value
                sums[3, j, i] += w * noise * math.sqrt(max(variance, 0.0))


@njit(cache=True, nogil=True)
def _add_samples(place, model, params, pitch, reach, index, samples):  # type: ignore[no-untyped-def]
    """Sums of weight and weighted height at SUB x SUB places inside each indexed cell."""
    ny, nx = index.shape
    f = np.empty(9)
    r = math.ceil(reach / pitch)
    for t in range(place.shape[0]):
        if model[t] == PLAIN:
            continue
        ci, cj = int(place[t, 0]), int(place[t, 1])
        ca, sa = math.cos(place[t, 2]), math.sin(place[t, 2])
        q = _quality(params[t])
        for j in range(max(0, cj - r), min(ny, cj + r + 1)):
            for i in range(max(0, ci - r), min(nx, ci + r + 1)):
                if index[j, i] < 0:
                    continue
                w = 1 - ((i - ci) ** 2 + (j - cj) ** 2) * (pitch / reach) ** 2
                if w <= 0.0:
                    continue
                w = w * w * q
                for s in range(SUB * SUB):
                    x = (i - ci + (s % SUB) / (SUB - 1) - 0.5) * pitch
                    y = (j - cj + (s // SUB) / (SUB - 1) - 0.5) * pitch
                    value = basis(x * ca + y * sa, -x * sa + y * ca, params[t], model[t] == STEP, f)
                    samples[index[j, i], s, 0] += w
                    samples[index[j, i], s, 1] += w * value


@njit(cache=True, nogil=True)
def _raise(height, index, samples, out):  # type: ignore[no-untyped-def]
    """out := largest sample over the bilinear surface; the middle sample is taken as the node itself, so
    blending adds nothing."""
    ny, nx = height.shape
    middle = (SUB * SUB) // 2
    for j in range(1, ny - 1):
        for i in range(1, nx - 1):
            c = index[j, i]
            if c < 0 or samples[c, 0, 0] <= 0.0:
                continue
            shift = height[j, i] - samples[c, middle, 1] / samples[c, middle, 0]
            for s in range(SUB * SUB):
                x, y = (s % SUB) / (SUB - 1) - 0.5, (s // SUB) / (SUB - 1) - 0.5
                di, dj = (1 if x > 0 else -1), (1 if y > 0 else -1)
                ax, ay = abs(x), abs(y)
                flat = (
                    (1 - ax) * (1 - ay) * height[j, i]
                    + ax * (1 - ay) * height[j, i + di]
                    + (1 - ax) * ay * height[j + dj, i]
                    + ax * ay * height[j + dj, i + di]
                )
                excess = samples[c, s, 1] / samples[c, s, 0] + shift - flat
                if excess > out[j, i]:  # False where a neighbour is not measured
                    out[j, i] = excess
