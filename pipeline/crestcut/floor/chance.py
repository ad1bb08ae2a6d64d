"""How sure the figures of a floor are: drawn from the scan's error model, hand measurements folded in.

The largest of many noisy gaps is too large, because the choice follows the noise: under a phone's error a
floor without any gap shows 25 mm. Two estimates hold the truth between them. *Low*: with e drawn like the
scan's own error, h + s e and h - e / s have independent errors (data fission: Leiner et al., JASA 2023), so a
place chosen on the first is judged on the second without favour; its gap is at most the largest. *High*: what
one more helping of noise adds is taken off once (bootstrap); the first helping added more than that, so too
little is taken off. What a figure may be is spread evenly between the two, and by the draws' own spread.
Tried on simulated floors in ``tests/bench/floor.py``. What the draws cannot know is an error the model was
not told of.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from crestcut.floor.by_hand import fold_floor, tilted
from crestcut.floor.straightedge import MAIN, WAYS, Straightedge
from crestcut.grid import BoolArray, FloatArray, GridFrame, HeightGrid
from crestcut.surface.draws import FieldMaker
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import Surface
from crestcut.travel.cores import share

DRAWS = 64
SPLIT = 1.4  # how the noise is shared between choosing and judging, as for clearances
WIDER = 1.3  # the low estimate varies this much more than the draws do, on simulated floors
TAIL = 0.025  # on each side of the 95 % interval
FEW_WAYS = (*MAIN, *WAYS[4:8])  # eight directions, for many draws


@dataclass(frozen=True, eq=False)
class Drawn:
    """What the floor may be. height : (ny, nx) best estimate on the coarse raster, m, hand measurements in
    it; NaN not measured.  errors : (ny, nx, d) drawn errors about it, m.  told : readings used.
    contradictions : readings that do not agree, in words; then none was used.
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
    count = max(draws // 2, 2)
    half = maker.draw_many(rng, count).reshape(-1, count) + tilted(frame, tilt, count, rng)
    folded = fold_floor(evidence, surface.error, frame, np.concatenate([half, -half], axis=1), tilt, rng)
    mean, shape = folded.mean.reshape(frame.shape), (*frame.shape, 2 * count)
    told = height.like(height.values - mean)
    return Drawn(told, folded.errors.reshape(shape), folded.told, folded.contradictions)


@dataclass(frozen=True, eq=False)
class Spread:
    """An estimate, and (d,) what the figure may be."""

    estimate: float
    draws: FloatArray

    @property
    def interval(self) -> tuple[float, float]:
        """95 %."""
        # no blending of neighbours: the F-number of a floor without any bend is infinite
        low, high = np.quantile(self.draws, [TAIL, 1 - TAIL], method="nearest")
        return float(low), float(high)


Extreme = Callable[[FloatArray], tuple[float, Callable[[FloatArray], float]]]
"""Of a floor (ny, nx): the figure, and how to read the figure of another floor at the same place."""


def largest_gap(measured: BoolArray, cell: float, length: float) -> Extreme:
    """The largest gap under a straightedge on floors that are ``measured`` (ny, nx) alike."""
    edge = Straightedge.of(measured, cell, length, FEW_WAYS)

    def find(z: FloatArray) -> tuple[float, Callable[[FloatArray], float]]:
        gap, left, right = edge.under(z, alone=True)
        if not np.nanmax(gap, initial=0.0) > 0:
            return 0.0, lambda _: 0.0
        at = int(np.nanargmax(gap))
        return float(gap.flat[at]), lambda other: _gap_there(
            other, at, int(left.flat[at]), int(right.flat[at])
        )

    return find


def _gap_there(z: FloatArray, at: int, first: int, second: int) -> float:
    """The gap at a node under a straight line between two others, m."""
    a, b, x = (np.array(np.unravel_index(n, z.shape)) for n in (first, second, at))
    share = math.dist(a, x) / math.dist(a, b)
    return float(z[tuple(a)] * (1 - share) + z[tuple(b)] * share - z[tuple(x)])


def largest_off(reference: FloatArray) -> Extreme:
    """The most that any spot stands over or lies under a reference (ny, nx)."""

    def find(z: FloatArray) -> tuple[float, Callable[[FloatArray], float]]:
        off = z - reference
        at = int(np.nanargmax(np.abs(off)))
        sign = float(np.sign(off.flat[at]))
        return abs(float(off.flat[at])), lambda other: sign * float(other.flat[at] - reference.flat[at])

    return find


def spread_of(extreme: Extreme, floor: FloatArray, drawn: Drawn, planned: bool = False) -> Spread:
    """A figure that is the largest of many, with its choice's favour taken off.

    floor : (ny, nx) m, as it is or as it will be left.  planned : it was made from the scan itself, which
    keeps to the rule on paper: what errors add to that is no favour and stays.
    """
    errors = drawn.errors
    d = errors.shape[-1]
    seen = extreme(floor)[0]
    many, apart = np.empty(d), np.empty(d // 2)

    def work(first: int, stop: int) -> None:
        for k in range(first, stop):
            many[k] = extreme(floor - errors[..., k])[0]
            if k < len(apart):
                _, there = extreme(floor - SPLIT * errors[..., k])
                apart[k] = there(floor + errors[..., k] / SPLIT)

    share(work, d)
    low = max(float(np.mean(apart)), 0.0)
    added = float(many.mean()) - seen
    high = max(low, seen + added if planned else seen - added)
    between = np.random.default_rng(d).permutation((np.arange(d) + 0.5) / d)
    values = np.maximum(low + between * (high - low) + WIDER * (many - many.mean()), 0.0)
    return Spread(float(np.median(values)), values)
