"""The slab as a scan after the work shows it, judged apart from that scan's own errors.

What was ground out has a shape that no slab has by itself. It is filled again as far as the plan's own shape
explains it, the slab behind that is judged as any is (``slab.behind``), and the filling is taken off.

The grain that a hand leaves is neither slab nor scan, and over a tenth of a metre both are seen together.
How large it is, h, no one knows beforehand. Where nobody worked the fine rest of the heights is the scan's
alone, of variance s2; in the cut it is k h2 + s2, k being what of such a field is so fine. A mean square m2
that n patches' worth of ground show there has the density of V chi2(n) / n about V = k h2 + s2, which with a
prior for h says how large it may be. Given h, what the scan shows is shared out, w = k h2 / (k h2 + s2) of it
the hand's and w s2 left unknown (Wiener's filter); over all h the mean is E[w] of it, and the unknown
E[w] s2 + Var[w] m2. Of the grain that is not so fine, (1 - k) h2, the scan's drift hides all but its size.
What is unknown is drawn, where it was cut, in one size: drawn in a size of its own in every draw, tried on 24
simulated jobs, it moves the least gap by 0.02 mm and its interval by 0.2.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from scipy import special

from crestcut.base.grid import BoolArray, FloatArray, HeightGrid
from crestcut.cut import cut_surface
from crestcut.terrain import HALF, ErrorModel, Surface, narrow_part, patch_half, sharp_of, slab_behind
from crestcut.verify.by_hand import FULL, WORK
from crestcut.verify.removed import PLANNED, Removed

FACTOR = 2.0  # 1 sd, as a factor, of one hand's grain to another's (common practice, no source)
SIZES = np.exp(np.log(FACTOR) * np.linspace(-4.0, 4.0, 81))  # that are weighed, of ``WORK``
SCANS = ((-(3**0.5), 1 / 6), (0.0, 2 / 3), (3**0.5, 1 / 6))  # Gauss-Hermite, three points


@dataclass(frozen=True, eq=False)
class Grain:
    """What the hand's grain may be: 1 sd over ``patch_half``, m (k,), and the weight of each (sum 1)."""

    size: FloatArray
    weight: FloatArray

    @property
    def square(self) -> float:
        """Its mean square, m2."""
        return float(self.weight @ self.size**2)

    def shared(self, on: FloatArray, scan: FloatArray, narrow: float) -> tuple[FloatArray, FloatArray]:
        """Mean and variance over the sizes of the share of a fine rest that is the hand's; on : by what its
        grain is multiplied at each place.  scan : variance of the scan's there, m2.  narrow : of grain of
        unit variance the part that is so fine."""
        first, second = np.zeros_like(scan), np.zeros_like(scan)
        for size, weight in zip(self.size, self.weight, strict=True):
            own = narrow * (size * on) ** 2
            share = own / np.maximum(own + scan, 1e-14)
            first += weight * share
            second += weight * share**2
        return first, np.maximum(second - first**2, 0.0)


def grain_of(shown: float, scan: float, patches: float, beside: float, narrow: float) -> Grain:
    """How large the hand's grain is.

    shown : mean square of the fine rest in the cut, m2, over ``patches``.  scan : variance of it where nobody
    worked, m2, told from ``beside`` patches.  narrow : as for ``Grain.shared``.
    """
    size = WORK * SIZES
    log = np.full(len(size), -np.inf)
    for z, weight in SCANS:
        var = narrow * size**2 + scan * np.exp(z * np.sqrt(2 / max(beside, 2.0)))
        log = np.logaddexp(log, np.log(weight) - 0.5 * patches * (np.log(var) + shown / var))
    log -= 0.5 * (np.log(SIZES) / np.log(FACTOR)) ** 2
    return Grain(size, np.asarray(special.softmax(log)))


def finished_behind(
    before: Surface, after: Surface, removed: Removed, planned: HeightGrid, flatness: float | None, seed: int
) -> Surface:
    """before : whose breaks the slab had.  after : as fitted.  planned : depths, m; flatness, seed as for
    ``slab_behind``."""
    gone = _as_planned(removed, planned)
    filled = replace(cut_surface(after, -gone), breaks=before.breaks)
    slab = slab_behind(filled, after.error, flatness, seed)
    if slab.scanned is None:
        return replace(slab, height=after.height, top=after.top, breaks=after.breaks)
    on, cell = np.clip(gone / FULL, 0.0, 1.0), planned.frame.cell
    rest = slab.scanned.values - slab.height.values  # what is smooth of it was judged with the slab
    fine = sharp_of(rest, np.isfinite(rest), cell)
    own = np.nan_to_num(after.standard_error.values) ** 2
    beside, cut = ~removed.work & after.height.measured, (on >= 1.0) & after.height.measured
    error, narrow = after.error, narrow_part(patch_half(after.error)) ** 2
    # what the scan shows where nobody worked, but no more than it can have: ground there may be rough itself
    median = 1.4826 * float(np.median(np.abs(fine[beside]))) if beside.any() else np.inf
    can = error.patch**2 + own + (error.warp * narrow_part(error.warp_length)) ** 2
    scan = np.minimum(can, np.maximum(median**2, own))
    share, left = np.zeros_like(gone), np.zeros_like(gone)
    if cut.any():
        shown, usual = float(np.mean(fine[cut] ** 2)), float(np.mean(scan[cut]))
        patches, others = (_patches(mask, error, cell) for mask in (cut, beside))
        grain = grain_of(shown, usual, patches, others, narrow)
        share, unsure = grain.shared(on, scan, narrow)
        left = np.sqrt(share * scan + unsure * shown + (1 - narrow) * grain.square * on**2)
    most = float(left.max())
    level = share * fine - gone
    return replace(
        slab, height=slab.height.like(slab.height.values + level), top=slab.top.like(slab.top.values + level),
        scanned=after.height, breaks=after.breaks,
        error=replace(slab.error, worked=(most, 0.0), worked_on=planned.like(left / most) if most else None),
    )  # fmt: skip


def _patches(mask: BoolArray, error: ErrorModel, cell: float) -> float:
    """How many independent squares a mean square over those nodes is worth: its variance is that of so many
    free ones, each of an area of 2 pi integral of r rho(r)^2 dr, with rho Matern-3/2."""
    each = 2.25 * np.pi * (patch_half(error) / HALF) ** 2
    return float(max(mask.sum() * cell**2 / each, 1.0))


def _as_planned(removed: Removed, planned: HeightGrid) -> FloatArray:
    """(ny, nx) m gone, as far as a share of the planned depth and a pass of one depth all over it explain it;
    none where nothing was planned."""
    depth = np.nan_to_num(planned.values)
    shapes = np.stack([depth, FULL * np.clip(depth / FULL, 0.0, 1.0)], axis=-1)
    on = (depth > PLANNED) & np.isfinite(removed.depth.values)
    if not on.any():
        return np.zeros_like(depth)
    share = np.linalg.lstsq(shapes[on], removed.depth.values[on])[0]
    return np.asarray(np.maximum(shapes @ share, 0.0))
