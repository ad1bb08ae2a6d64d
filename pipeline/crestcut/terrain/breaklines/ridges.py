"""Where a hinge or a step earns its place, and what it is at every knot along it."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.parallel import share
from crestcut.terrain.breaklines.agree import bridge, settle, strays
from crestcut.terrain.breaklines.fits import LineFits, first_fits, line_fits, step_fits
from crestcut.terrain.breaklines.hinge import HINGE, P_E, STEP
from crestcut.terrain.breaklines.lines import LEAST_KINK, find_lines, refine
from crestcut.terrain.breaklines.neighbours import Candidates
from crestcut.terrain.ground.raster import Cells
from crestcut.terrain.heights.local import CellMeans, Local, biweight, fit_local

PILOT = 0.15  # m, half window of the quadratic whose Hessian gives direction
SPACING = 0.05  # m between knots
# standard deviations of bending, and the same of how everything in the window bends, at which a hinge is
# tried: the pooled gain decides, and a false one is smoothed away; and a step, which is not
HINGE_BEND, HINGE_UNUSUAL = 2.5, 2.0
STEP_BEND, STEP_UNUSUAL = 3.5, 2.5
RUN = 5  # knots along a break, each way, whose bending is averaged
RUN_GAIN = 1.6  # what that takes off the noise: pilot windows overlap
MOST_KNOTS = 6000
FEW = 8  # knots, as many as are worth a thread


@dataclass(frozen=True, eq=False)
class BreakPoints:
    """place (n, 3): column, row (lattice cells), angle of n from u; model (n,): HINGE or STEP; params (n, 9),
    of a hinge its shape only (d to m); inverse (n, 9, 9) of a step's normal matrix; spread (n, 2): sd of the
    break's place and of its rounding, m; half (n,): half window across, m."""

    place: FloatArray
    model: NDArray[np.int8]
    params: FloatArray
    inverse: FloatArray
    spread: FloatArray
    half: FloatArray

    @classmethod
    def none(cls) -> BreakPoints:
        """Where nothing folds."""
        shapes = ((0, 3), (0, 9), (0, 9, 9), (0, 2), (0,))
        place, params, inverse, spread, half = (np.zeros(s) for s in shapes)
        return cls(place, np.zeros(0, np.int8), params, inverse, spread, half)

    @property
    def kinks(self) -> FloatArray:
        """Change of slope at each hinge found, rise over run, negative at a crest."""
        return 2 * self.params[self.model == HINGE, P_E]


def spacing(pitch: float) -> int:
    """Lattice cells between knots."""
    return max(1, round(SPACING / pitch))


def sparse_pilot(means: CellMeans) -> Local:
    """Quadratics at the places of knots only, NaN elsewhere."""
    step = spacing(means.pitch)
    sparse = np.zeros(means.mask.shape, bool)
    sparse[step // 2 :: step, step // 2 :: step] = True
    sparse &= ndimage.binary_dilation(means.mask, iterations=1)
    return fit_local(replace(means, mask=sparse), max(2, round(PILOT / means.pitch)), beta=True)


def find_knots(cells: Cells, pilot: Local, pitch: float, variance: float) -> BreakPoints:
    """Knots along every significant break: fitted alone on a lattice of ``SPACING``, judged with their
    neighbours, moved onto the line these agree on, fitted again.

    cells : raw means.  pilot : from ``sparse_pilot``.  variance : of one point, m2.
    """
    place, may_step = _candidates(pilot, pitch, math.sqrt(variance))
    alone = np.zeros((len(place), 9))
    share(lambda a, b: first_fits(cells, place, a, b, pitch, variance, alone), len(place), FEW)
    model, line = find_lines(place, pitch, variance, alone, may_step)
    if not (model > 0).any():
        return BreakPoints.none()
    knots = Candidates(place, model, line, pitch, variance)[model > 0].moved()
    fits = _fit_on_lines(cells, knots)
    knots = replace(knots, line=refine(knots, fits)).moved()
    knots = bridge(knots[fits.fit_at_all(variance) & ~strays(knots, fits)], SPACING)
    fits = _fit_on_lines(cells, knots)
    settled = settle(knots, fits)
    on = settled.keep
    place, model, half, priors = knots.place[on], knots.model[on], fits.half[on], settled.priors[on]
    params, inverse = priors[:, 0].copy(), np.zeros((len(place), 9, 9))
    steps = np.flatnonzero(model == STEP)
    if len(steps):
        fitted, normal = np.zeros((len(steps), 9)), np.zeros((len(steps), 9, 9))
        these = (place[steps], half[steps], priors[steps])
        share(lambda a, b: step_fits(cells, *these, a, b, pitch, variance, fitted, normal), len(steps), FEW)
        diagonal = np.einsum("nii->ni", normal)
        diagonal += 1e-9 * diagonal + 1e-12
        params[steps], inverse[steps] = fitted, np.linalg.inv(normal)
    return BreakPoints(place, model, params, inverse, settled.spread[on], half)


def _fit_on_lines(cells: Cells, knots: Candidates) -> LineFits:
    fits, bow = LineFits.empty(len(knots.place)), knots.line[:, 2].copy()
    fixed = (cells, knots.place, knots.model, bow)
    share(lambda a, b: line_fits(*fixed, a, b, knots.pitch, knots.variance, fits), len(bow), FEW)
    return fits


def _candidates(pilot: Local, pitch: float, noise: float) -> tuple[FloatArray, BoolArray]:
    """(n, 3) column, row and angle of n: the tops of bending that noise does not explain, and what runs on
    from them; and (n,) whether a step may be tried there."""
    step = spacing(pitch)
    beta, z = (a[step // 2 :: step, step // 2 :: step] for a in (pilot.beta, pilot.z))
    on = np.isfinite(z)
    hessian = np.nan_to_num(np.where(on[..., None], beta[..., 2:5], 0.0))
    xx, xy, yy = hessian[..., 0], hessian[..., 1], hessian[..., 2]
    mean, bend = (xx + yy) / 2, np.hypot((xx - yy) / 2, xy / 2) + np.abs(xx + yy) / 2
    # direction of the larger eigenvalue of the Hessian [[2 xx, xy], [xy, 2 yy]]
    angle = 0.5 * np.arctan2(xy, xx - yy) + np.where(mean < 0, np.pi / 2, 0.0)
    # the direction of the strongest bending nearby is the surest
    ratio = _bend_ratio(pilot.half)
    sd = noise * np.sqrt(np.nan_to_num(pilot.variance[step // 2 :: step, step // 2 :: step], nan=1.0) * ratio)
    angle = _strongest(angle, np.where(on, bend / np.maximum(sd, 1e-9), 0.0))
    across = np.abs(_along(hessian, angle, on))
    usual = float(np.median(across[on])) / 0.6745 if on.any() else 0.0
    kink = across * 2 / (0.94 * PILOT)
    tops = _tops(across, angle) & on
    near_hinge, near_step = (
        ndimage.binary_dilation(
            tops & (across > np.maximum(bend_of * sd / RUN_GAIN, unusual * usual)) & (kink > LEAST_KINK),
            np.ones((3, 3), bool),
            iterations=2,
        )
        for bend_of, unusual in ((HINGE_BEND, HINGE_UNUSUAL), (STEP_BEND, STEP_UNUSUAL))
    )
    j, i = np.nonzero(near_hinge & tops & (kink > 0.5 * LEAST_KINK))
    if len(j) > MOST_KNOTS:
        keep = np.sort(np.argsort(-bend[j, i], kind="stable")[:MOST_KNOTS])
        j, i = j[keep], i[keep]
    place = np.stack([i * step + step // 2, j * step + step // 2, angle[j, i]], axis=1).astype(float)
    return place, near_step[j, i]


def _along(hessian: FloatArray, angle: FloatArray, on: BoolArray) -> FloatArray:
    """Second derivative across each knot's break (half of it, per half window), mean of the knots along it:
    a break runs on, what neighbours share by chance does not."""
    j, i = np.indices(on.shape)
    c, s = np.cos(angle), np.sin(angle)
    total, weight = np.zeros(on.shape), np.full(on.shape, 1e-9)
    for t in range(-RUN, RUN + 1):
        jj, ii = j + np.rint(t * c).astype(int), i - np.rint(t * s).astype(int)
        inside = (jj >= 0) & (ii >= 0) & (jj < on.shape[0]) & (ii < on.shape[1])
        jj, ii = np.where(inside, jj, 0), np.where(inside, ii, 0)
        inside &= on[jj, ii]
        h = hessian[jj, ii]
        total += np.where(inside, h[..., 0] * c * c + h[..., 1] * c * s + h[..., 2] * s * s, 0.0)
        weight += inside
    return total / np.maximum(weight, RUN + 1)


def _tops(across: FloatArray, angle: FloatArray) -> BoolArray:
    """Knots that bend hardly less than both of their neighbours across the break."""
    padded = np.pad(across, 1)
    j, i = np.indices(across.shape)
    dj, di = np.rint(np.sin(angle)).astype(int), np.rint(np.cos(angle)).astype(int)
    ahead, behind = padded[j + 1 + dj, i + 1 + di], padded[j + 1 - dj, i + 1 - di]
    return across >= 0.97 * np.maximum(ahead, behind)


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
