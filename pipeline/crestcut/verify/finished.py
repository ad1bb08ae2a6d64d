"""The slab as a scan after the work shows it, judged apart from that scan's own errors.

What was ground out has a shape that no slab has by itself. It is filled again as far as the plan's own shape
explains it, the slab behind that is judged as any is (``surface.behind``), and the filling is taken off. What
a hand left uneven is neither slab nor scan: over the tenth of a metre at which both are seen together, what
the scan shows is shared out by their sizes (Wiener's filter). What stays unknown of it is not drawn again on
top: the least over a whole cut would follow it downwards everywhere.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.cut import cut_surface
from crestcut.terrain import Surface, sharp_of, slab_behind
from crestcut.verify.by_hand import WORK
from crestcut.verify.removed import PLANNED, Removed

FULL = 0.003  # m: ground deeper than this is as uneven as a hand leaves it


def finished_behind(
    before: Surface, after: Surface, removed: Removed, planned: HeightGrid, flatness: float | None, seed: int
) -> Surface:
    """before : whose breaks the slab had.  after : as fitted.  planned : depths, m; flatness, seed as for
    ``slab_behind``."""
    gone = _as_planned(removed, planned)
    filled = replace(cut_surface(after, -gone), breaks=before.breaks)
    slab = slab_behind(filled, after.error, flatness, seed)
    assert slab.scanned is not None
    hand = WORK * np.clip(gone / FULL, 0.0, 1.0)
    rest = slab.scanned.values - slab.height.values  # what is smooth of it was judged with the slab
    fine = sharp_of(rest, np.isfinite(rest), planned.frame.cell)
    own = np.nan_to_num(after.standard_error.values)
    # no more than the scan shows where nobody worked
    shown = 1.4826 * float(np.median(np.abs(fine[~removed.work & after.height.measured])))
    scan = np.minimum(after.error.patch**2 + own**2, np.maximum(shown, own) ** 2)
    share = hand**2 / np.maximum(hand**2 + scan, 1e-12)
    level = share * fine - gone
    return replace(
        slab, height=slab.height.like(slab.height.values + level), top=slab.top.like(slab.top.values + level),
        scanned=after.height, breaks=after.breaks,
    )  # fmt: skip


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
