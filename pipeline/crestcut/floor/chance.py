"""How sure the figures of a floor are: read off floors drawn as it may be, hand measurements folded in.

The largest of many noisy gaps is too large, because the choice follows the noise: under a phone's error a
floor without any gap shows 25 mm. A drawn floor (``surface.posterior``) has none of the scan's error in it,
so its figure stands as it is: the estimate is the draws' median. Tried on simulated floors in
``tests/bench/floor.py``. What the draws cannot know is an error the model was not told of.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

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
    """(d,) what a figure may be."""

    draws: FloatArray

    @property
    def estimate(self) -> float:
        """As likely too high as too low."""
        return float(np.quantile(self.draws, 0.5, method="nearest"))

    @property
    def interval(self) -> tuple[float, float]:
        """95 %."""
        # no blending of neighbours: the F-number of a floor without any bend is infinite
        low, high = np.quantile(self.draws, [TAIL, 1 - TAIL], method="nearest")
        return float(low), float(high)


Extreme = Callable[[FloatArray], float]  # a figure of a floor (ny, nx), m


def largest_gap(measured: BoolArray, cell: float, length: float) -> Extreme:
    """The largest gap under a straightedge on floors that are ``measured`` (ny, nx) alike, m."""
    edge = Straightedge.of(measured, cell, length, FEW_WAYS)
    return lambda z: max(float(np.nanmax(edge.under(z, alone=True)[0], initial=0.0)), 0.0)


def largest_off(reference: FloatArray) -> Extreme:
    """The most that any spot stands over or lies under a reference (ny, nx), m."""
    return lambda z: float(np.nanmax(np.abs(z - reference)))


def spread_of(extreme: Extreme, floor: FloatArray, drawn: Drawn) -> Spread:
    """A figure of every floor drawn. floor : (ny, nx) m, its mean as it is, or as it will be left."""
    many = np.empty(drawn.errors.shape[-1])

    def work(first: int, stop: int) -> None:
        for k in range(first, stop):
            many[k] = extreme(floor - drawn.errors[..., k])

    share(work, len(many))
    return Spread(many)
