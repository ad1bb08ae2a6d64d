"""What was measured by hand, as sums of ground heights (and a part's height) with what was expected of
them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray, frozen_array

RELATIONS = ("is", "at most", "at least")


@dataclass(frozen=True, eq=False)
class Reading:
    """One number read: sum of weights * ground height at points, plus the height of a vehicle part where
    one is named.

    name : as the user knows it, "[[string]] 1".  what : what was read, in words.  points (k, 2) site
    metres, weights (k,).
    standard_error : (k,) white part of the fitted height there, m.  part : of the vehicle, its height
    counts with weight +1.
    predicted : what the fitted surface (and the vehicle as measured) give, places' uncertainty averaged
    over, and for the least under a string without its bias, m.
    observed : what was read, m; for "at most" and "at least" the bound.
    stood : for a gap under the standing vehicle where it stood, (5,) as ``travel.records.Batch.places``: what
    is read there is the least gap under the whole part, of which points and weights are only the tangent.
    exactly : m, the same right there, places not averaged over.  raised (4,) : boards under its tyres, m;
    None on the bare slab.
    along : (k, 2) for the least distance under a string: share of the way and distance on the fitted
    surface, m, at each place where it may be least. Those are the points from the third on, the first two are
    its ends; the weights are how it goes with each of them on average.
    lowered : m, by which the part was hung lower to see what is left over what was asked for: ``predicted``
    and ``observed`` are less by it, and what is said of them is not.
    """

    name: str
    what: str
    points: FloatArray
    weights: FloatArray
    standard_error: FloatArray
    predicted: float
    observed: float
    part: str | None = None
    relation: str = "is"
    stood: FloatArray | None = None
    exactly: float = float("nan")
    along: FloatArray | None = None
    lowered: float = 0.0
    raised: FloatArray | None = None

    def __post_init__(self) -> None:
        for name, ndim in (("points", 2), ("weights", 1), ("standard_error", 1)):
            object.__setattr__(self, name, frozen_array(getattr(self, name), ndim=ndim, name=name))
        if self.stood is not None:
            object.__setattr__(self, "stood", frozen_array(self.stood, ndim=1, name="stood"))
        if self.raised is not None:
            object.__setattr__(self, "raised", frozen_array(self.raised, ndim=1, name="raised"))
        if self.along is not None:
            object.__setattr__(self, "along", frozen_array(self.along, ndim=2, name="along"))
        if self.relation not in RELATIONS:
            raise ValueError(f"relation: one of {RELATIONS} expected, {self.relation!r} found")
        if not (np.isfinite(self.predicted) and np.isfinite(self.observed)):
            raise ValueError("predicted and observed: finite lengths expected")


@dataclass(frozen=True, eq=False)
class Evidence:
    """Readings and the covariance (m, m), m2, of their own errors: the instrument's, and the places'."""

    readings: tuple[Reading, ...]
    noise: FloatArray

    def __post_init__(self) -> None:
        noise = frozen_array(self.noise, ndim=2, name="noise")
        if noise.shape != (len(self.readings),) * 2:
            raise ValueError(f"noise: one row and column per reading expected, {noise.shape} found")
        object.__setattr__(self, "noise", noise)


def joined(*several: Evidence | None) -> Evidence | None:
    """All readings of several, errors of different sets unrelated; None if there are none."""
    sets = [e for e in several if e is not None and e.readings]
    if not sets:
        return None
    readings = tuple(r for e in sets for r in e.readings)
    noise, at = np.zeros((len(readings),) * 2), 0
    for e in sets:
        here = slice(at, at + len(e.readings))
        noise[here, here] = e.noise
        at = here.stop
    return Evidence(readings, noise)
