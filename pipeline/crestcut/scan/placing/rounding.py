"""What the coordinates of a file are rounded to: single precision far from its origin, or few decimals.

A single holds 24 bits: at a northing of 5,400,000 m its steps are half a metre, and a slab becomes stripes.
No fit averages that away, since all points of a stripe are wrong alike.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from crestcut.base.grid import FloatArray

# m: beyond it no verdict. Half of it, 1 mm, is what a careful reading by hand is worth
# (``draws.READ``), and singles pass it 33 km from their origin: local coordinates never do, those of a
# map always.
COARSE = 0.002
FINEST = 0.001  # m: rounding up to this is not spoken of
_DECIMALS = (0, 1, 2, 3)
_ENOUGH = 200_000  # points looked at


class Rounding:
    """What coordinates are rounded to, told from some of them at a time: ``see`` (n, 3), then ``quantum``."""

    def __init__(self) -> None:
        self._single, self._largest = np.ones(3, bool), np.zeros(3)

    def see(self, points: FloatArray) -> None:
        """Some more, in their own unit; what is no number counts for nothing."""
        values = points[np.isfinite(points).all(axis=1)]
        if len(values):
            with np.errstate(over="ignore"):
                self._single &= (values == values.astype(np.float32)).all(axis=0)
            self._largest = np.maximum(self._largest, np.abs(values).max(axis=0))

    @property
    def quantum(self) -> float:
        """As ``quantum_of`` has it."""
        if not self._largest.any() or self._largest.max() > 1e30:
            return 0.0
        return float(np.where(self._single, np.spacing(self._largest.astype(np.float32)), 0.0).max())


def quantum_of(points: ArrayLike) -> float:
    """What coordinates (n, 3) are rounded to, in their own unit: the step of single precision at the largest
    of an axis where every one on it is a single, else 0; the coarsest axis counts."""
    values = np.asarray(points, dtype=float)
    values = values[:: max(1, len(values) // _ENOUGH)]
    found = Rounding()
    found.see(values)
    return found.quantum


def decimals_of(heights: FloatArray) -> float:
    """What heights (n,) are rounded to, in their own unit: the coarsest of 1, 0.1, 0.01 and 0.001 that all of
    them are whole numbers of; 0 where none is, or where all are one number."""
    values = heights[:: max(1, len(heights) // _ENOUGH)]
    if not len(values) or np.ptp(values) == 0.0:
        return 0.0
    for digits in _DECIMALS:
        if np.allclose(values, np.round(values, digits), rtol=1e-12, atol=1e-9):
            return float(10.0**-digits)
    return 0.0


def rounded(quantum: float) -> str:
    """Said of coordinates that are rounded to so many metres."""
    step = f"{quantum:.2g} m" if quantum >= 0.1 else f"{quantum * 1000:.2g} mm"
    text = f"coordinates are rounded to {step} in the file"
    if quantum <= COARSE:
        return text
    return f"{text}: export with an offset near the slab, in double precision or with more decimals"
