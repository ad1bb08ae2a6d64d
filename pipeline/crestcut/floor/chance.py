"""How sure the figures of a floor are: read off floors drawn as it may be, hand measurements folded in.

The largest of many noisy gaps is too large, because the choice follows the noise: under a phone's error a
floor without any gap shows 25 mm. A drawn floor (``slab.posterior``) has none of the scan's error in it,
so its figure stands as it is: the estimate is the draws' median. Where several places are nearly alike the
largest is too large still: each draw's is chosen of them by what the scan's error left there. So a floor is
over its limit where some *one* place is (``Spread.over``), which a contractor can go and look at, and within
it where all are at once. Tried on simulated floors in ``tests/bench/floor.py``. What the draws cannot know is
an error the model was not told of.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import BoolArray, FloatArray, GridFrame, HeightGrid
from crestcut.base.parallel import share
from crestcut.floor.by_hand import fold_floor, tilted
from crestcut.floor.straightedge import MAIN, WAYS, Straightedge
from crestcut.terrain import Evidence, FieldMaker, Surface

DRAWS = 200
TAIL = 0.025  # on each side of the 95 % interval
FEW_WAYS = (*MAIN, *WAYS[4:8])  # eight directions, for many draws


@dataclass(frozen=True, eq=False)
class Drawn:
    """What the floor may be. height : (ny, nx) mean on the coarse raster, m, hand measurements in it; NaN not
    measured.  errors : (ny, nx, d) drawn errors of it: each floor drawn is ``height`` less one.  told :
    readings used.  contradictions : readings that do not agree, in words; then none was used.
    """

    height: HeightGrid
    errors: FloatArray
    told: int
    contradictions: tuple[str, ...]


def coarse_frame(frame: GridFrame, stride: int) -> GridFrame:
    """Every ``stride``-th node."""
    shape = tuple(-(-n // stride) for n in frame.shape)
    return GridFrame(frame.origin, frame.angle, frame.cell * stride, (shape[0], shape[1]))


def draw_floor(
    surface: Surface,
    stride: int,
    evidence: Evidence | None,
    seed: int,
    draws: int = DRAWS,
    tilt: float = 0.0,
) -> Drawn:
    """``draws`` floors on every ``stride``-th node. tilt : rad, 1 sd, how far the scan's 'up' may lean."""
    pick = (slice(None, None, stride), slice(None, None, stride))
    frame = coarse_frame(surface.height.frame, stride)
    height = HeightGrid(frame, surface.height.values[pick])
    maker = FieldMaker(surface.error, frame, HeightGrid(frame, surface.standard_error.values[pick]))
    rng = np.random.default_rng(seed)
    errors = maker.pairs(rng, max(draws // 2, 2)).reshape(frame.shape[0] * frame.shape[1], -1)
    lean, left = tilted(height, tilt, errors.shape[1] // 2, rng)
    folded = fold_floor(evidence, surface.error, frame, errors + lean, left, rng)
    middle = folded.errors.mean(axis=1)
    told = height.like(height.values - (folded.mean + middle).reshape(frame.shape))
    each = (folded.errors - middle[:, None]).reshape(*frame.shape, -1)
    return Drawn(told, each, folded.told, folded.contradictions)


@dataclass(frozen=True, eq=False)
class Spread:
    """(d,) what a figure may be. places : (d, n) what each place has, of which it is the largest, m; None
    for a figure that has no place."""

    draws: FloatArray
    places: NDArray[np.float32] | None = None

    @property
    def estimate(self) -> float:
        """As likely too high as too low."""
        return float(np.quantile(self.draws, 0.5, method="nearest"))

    @property
    def interval(self) -> tuple[float, float]:
        """95 %."""
        # no blending of neighbours: the F-number of a floor without any bend is infinite
        low, high = np.quantile(self.draws, [TAIL, 1 - TAIL], method="nearest")
        if self.places is not None and self.places.size:
            # of places that are nearly alike the largest in a draw is too large, as it is in a scan; what one
            # place has is not chosen. Every draw has that much there, so it is never above the draws' own end
            low = np.quantile(self.places, TAIL, axis=0, method="nearest").max()
        return float(low), float(high)

    def over(self, most: float) -> float:
        """The chance that the place likeliest to have more than ``most``, m, has."""
        if self.places is None:
            return float((self.draws > most).mean())
        return float((self.places > most).mean(axis=0).max(initial=0.0))


@dataclass(frozen=True, eq=False)
class Worst:
    """A figure of a floor (ny, nx), m: the largest of what each place has. at : that, (ny, nx), NaN where
    nothing is measured."""

    at: Callable[[FloatArray], FloatArray]

    def __call__(self, z: FloatArray) -> float:
        return max(float(np.nanmax(self.at(z), initial=0.0)), 0.0)


def largest_gap(measured: BoolArray, cell: float, length: float) -> Worst:
    """The largest gap under a straightedge on floors that are ``measured`` (ny, nx) alike, m."""
    edge = Straightedge.of(measured, cell, length, FEW_WAYS)
    return Worst(lambda z: edge.under(z, alone=True)[0])


def largest_off(reference: FloatArray) -> Worst:
    """The most that any spot stands over or lies under a reference (ny, nx), m."""
    return Worst(lambda z: np.abs(z - reference))


def spread_of(worst: Worst, floor: FloatArray, drawn: Drawn) -> Spread:
    """A figure of every floor drawn. floor : (ny, nx) m, its mean as it is, or as it will be left."""
    known, count = np.isfinite(floor), drawn.errors.shape[-1]
    places, many = np.empty((count, int(known.sum())), np.float32), np.empty(count)

    def work(first: int, stop: int) -> None:
        for k in range(first, stop):
            each = worst.at(floor - drawn.errors[..., k])[known]
            places[k], many[k] = each, each.max(initial=0.0)

    share(work, count)
    return Spread(many, places)
