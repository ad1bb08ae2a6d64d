"""A scan after the work laid on the one before it, by ground that was not cut.

The cut itself must have no say: a fit to all of it would lift the new scan by a share of what was taken away.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.units import millimetres
from crestcut.scan import (
    Fit,
    Reference,
    Scan,
    accuracy_95,
    fits_anywhere,
    lay_on,
    refuse_other_system,
    register,
)

SETTLED, SEARCHED = 0.010, 0.030  # m, 1 sd of the place in plan: by its own shape, by what stands on the slab
ALIKE = 0.03  # share: fits whose overlap or agreement differ by less are equals
NOISY, QUIET = 2.0, 0.001  # a fit this much over what both scans drift, m, is in the wrong place
CLEARLY = 0.8  # of the error of another fit
FEWEST = 2000  # points that were not cut, of either scan: fewer do not carry a fit
MEND = "scan the whole slab again, with the uncut ground around it and the same things standing on it"


@dataclass(frozen=True, eq=False)
class Laid:
    """The scan after the work in the frame of the one before it.

    error : m, rms on ground that was not cut.  placed : m, 1 sd of its place in plan.
    """

    scan: Scan
    error: float
    placed: float


def lay_after(before: Scan, after: Scan, in_work: Callable[[FloatArray], BoolArray], warp: float) -> Laid:
    """``after`` in the frame of ``before``.

    in_work : (n, 2) site x, y of the scan before -> whether the cut may have been there; such points of
    either scan are left out of the fit.  warp : m, 1 sd of one scan's own drift.
    Raises CrestcutError where the two do not register.
    """
    name = after.files[0].path.name
    refuse_other_system(before, after)
    here = before.frame.of_other(after.frame, after.points)
    drift = warp * 2**0.5
    moved = _placed(Reference(before.points), here, name, drift).apply(here)
    kept, moving = before.points[~in_work(before.points)], moved[~in_work(moved)]
    if min(len(kept), len(moving)) < FEWEST:
        raise CrestcutError("shows too little ground that was not cut to be laid by", name, MEND)
    fit = register(Reference(kept), moving, warp=drift)
    if not fit.good:
        raise CrestcutError(
            f"does not register on the scan from before the work (at best {fit.overlap:.0%} of the uncut"
            f" ground overlaps and {fit.agree:.0%} of that agrees)", name, MEND,
        )  # fmt: skip
    points = fit.apply(moved)
    shifted = points.mean(axis=0) - here.mean(axis=0)
    note = (
        f"{name}: laid on the scan from before the work by ground that was not cut, fits to"
        f" {millimetres(fit.error)} rms ({millimetres(accuracy_95(fit.error))} at 95 %), moved"
        f" {millimetres(float(np.hypot(*shifted[:2])))} in plan, {millimetres(float(shifted[2]))} in height"
    )
    files = tuple(replace(f, fit_error=fit.error) for f in after.files)
    scan = replace(after, points=points, frame=before.frame, files=files, notes=(*after.notes, note))
    return Laid(scan, fit.error, SEARCHED if fit.held else SETTLED)


def _placed(reference: Reference, here: FloatArray, name: str, drift: float) -> Fit:
    """Where all of the scan lies, cut and all; sought from everywhere unless its shape settles it at once."""
    fit = register(reference, here, warp=drift)
    if fit.good and not fit.held and fit.error < NOISY * max(drift, QUIET):
        return fit
    try:
        fit, searched = lay_on(reference, here, name)
    except CrestcutError as error:
        what = error.what.replace("the first scan", "the scan from before the work")
        raise CrestcutError(what, name, MEND) from None
    # a slab fits anywhere on itself: what lies well enough may come from another frame all the same
    return fit if searched else _better_placed(reference, here, fit)


def _better_placed(reference: Reference, here: FloatArray, fit: Fit) -> Fit:
    """The place that all that stands on the slab speaks for, if it fits clearly better than ``fit``."""
    good = [f for f in fits_anywhere(reference, here) if f.good and f.overlap >= fit.overlap - ALIKE]
    most = max((f.agree for f in good), default=0.0)
    best = min((f for f in good if f.agree >= most - ALIKE / 10), key=lambda f: f.error, default=fit)
    return best if best.error < CLEARLY * fit.error else fit
