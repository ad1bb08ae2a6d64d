"""The stations of one file held against one another: each is a pass of its own over the slab."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray
from crestcut.base.units import millimetres
from crestcut.scan.records import ScanPass
from crestcut.scan.registering.register import CELL, Reference, register
from crestcut.scan.registering.voxels import thin

FEWEST_IN_COMMON = 200  # thinned points, a third of a square metre: less says nothing of a station
_BESIDE = 0.06  # m in plan: seen by both
# m: stations that lie further off are said to. In height 1.96 times what a terrestrial scan is good for
# (``verdict.SYSTEMATIC``), in plan what moves a slope of 20 % by half as much (common practice, no source).
OFF_HEIGHT, OFF_PLAN = 0.004, 0.010


def station_passes(points: FloatArray, station: NDArray[np.int16], file: str) -> tuple[ScanPass, ...]:
    """A pass for each station. points (n, 3) site metres; station (n,) from 0 on.

    Nothing is moved: where the stations lie is the file's word. How far each would have to go to fit those
    before it is in its record.
    """
    found: list[ScanPass] = []
    before = np.empty((0, 3))
    for k in range(int(station.max()) + 1):
        here = points[station == k]
        thinned = thin(here, CELL) if len(here) else here
        residual, off = _against(before, thinned)
        found.append(ScanPass(f"{file}, scan {k + 1}", len(here), residual, off))
        before = np.concatenate([before, thinned])
    return tuple(found)


def _against(before: FloatArray, here: FloatArray) -> tuple[float | None, tuple[float, float, float] | None]:
    """(rms once laid on those before, how far off) of a station, both thinned; None where nothing tells."""
    if min(len(before), len(here)) < FEWEST_IN_COMMON:
        return None, None
    reference = Reference(before)
    both = here[reference.plan_tree.query(here[:, :2])[0] < _BESIDE]
    if len(both) < FEWEST_IN_COMMON:
        return None, None
    fit = register(reference, here)
    if not np.isfinite(fit.error):
        return None, None
    middle = np.median(both, axis=0, keepdims=True)
    x, y, up = (middle - fit.apply(middle))[0].tolist()
    return fit.error, (x, y, up)


def astray(each: ScanPass) -> bool:
    """Whether a station lies further off the others than a scanner's own errors explain."""
    return each.off is not None and (
        abs(each.off[2]) > OFF_HEIGHT or float(np.hypot(*each.off[:2])) > OFF_PLAN
    )


def disagreement(passes: Sequence[ScanPass]) -> str | None:
    """What to say where stations do not agree: the worst of them and what to do; None where they do."""
    wrong = [p for p in passes if astray(p)]
    if not wrong:
        return None
    worst = max(wrong, key=lambda p: abs(p.off[2]) if p.off else 0.0)
    assert worst.off is not None
    x, y, up = (millimetres(v) for v in worst.off)
    more = f" and {len(wrong) - 1} more" if len(wrong) > 1 else ""
    return (
        f"stations disagree: {worst.name}{more} lies {x} in x, {y} in y and {up} in height off those before"
        " it; register the stations again and export the scan anew"
    )
