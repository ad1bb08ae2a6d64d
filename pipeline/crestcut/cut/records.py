"""What to take away, why there, and the proof that it is enough and no more than needed."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import HeightGrid, frozen_array
from crestcut.base.summary import Summary
from crestcut.base.units import litres, millimetres
from crestcut.contact import Clearance, Contact
from crestcut.job import Method


@dataclass(frozen=True, eq=False)
class Limits:
    """The deepest cut allowed at every node, metres, and why: index into ``reasons``, -1 where nothing
    limits."""

    deepest: HeightGrid
    reason: NDArray[np.int16]
    reasons: tuple[str, ...]

    def __post_init__(self) -> None:
        object.__setattr__(self, "reason", frozen_array(self.reason, np.int16, 2, "reason"))


@dataclass(frozen=True)
class Certificate:
    """Checks made on the finished surface by sweeping it again.

    least_excess : least (gap - want) over every cell and zone, m, never below -0.05 mm when feasible.
    loosest : largest (gap - want) among cut cells that neither feather nor a tyre contact nor a limit holds,
    m.
    spectral_radius : of the wheel weights restricted to cut cells; below 1 the least cut is unique.
    iterations, residual (m).
    """

    least_excess: float
    loosest: float
    spectral_radius: float
    iterations: int
    residual: float


@dataclass(frozen=True)
class Drain:
    """What shaping the cut to drain came to. fall : asked for, rise over run.  got : least fall of a swale's
    bed, NaN where none was needed.  volume : m3 more than the gaps need.  reached : no water stands deeper on
    the cut than before; else left : how much deeper, m, and why : the limits in the way.
    """

    fall: float
    got: float
    volume: float
    swales: int
    reached: bool
    left: float = 0.0
    why: tuple[str, ...] = ()


@dataclass(frozen=True)
class Facet:
    """A piece of the finished surface that one setting of a board on two blocks guides.

    low, high : first and last row of the grid.  start, stop : columns between which it cuts, on the lowest
    and on the highest row; straight between them.  rear_at, front_at : columns of the blocks' middles,
    likewise: each block slides along its own straight line.  rear, front : height of the finished line over
    the concrete under each block, m.
    """

    low: int
    high: int
    start: tuple[float, float]
    stop: tuple[float, float]
    rear_at: tuple[float, float]
    front_at: tuple[float, float]
    rear: float
    front: float


@dataclass(frozen=True)
class Guided:
    """How the plan is to be cut, and what it was before it was made of flat facets.

    facets : none where no board guides it.  deepest, area, volume : m, m2, m3 of the least cut that the
    facets were laid under.  by_hand : m3 of it that no facet covers.
    """

    method: Method
    facets: tuple[Facet, ...]
    deepest: float
    area: float
    volume: float
    by_hand: float = 0.0


@dataclass(frozen=True, eq=False, repr=False)
class CutPlan(Summary):
    """The depth to remove and what it buys.

    depth : metres, 0 where nothing goes, NaN not measured.  finished : height after the cut.
    target : what every gap was cut to beyond ``want`` (the margin for confidence), m.
    drain : what was added so that the cut drains; claim and slack are those of the cut before that.
    feasible : every gap reaches want + margin.  short_by : how far the least gap stays below, m, 0 if
    feasible.
    claim : "least" (pointwise least) or "maximal" (nothing can be left standing).  binding : limits that
    bind, in words.
    """

    depth: HeightGrid
    finished: HeightGrid
    limits: Limits
    margin: float
    deepest: float  # m
    area: float  # m2
    volume: float  # m3
    feasible: bool
    claim: str
    slack: float  # m: largest gap - want over cut cells that nothing else holds
    short_by: float
    short_at: Contact | None
    binding: tuple[str, ...]
    certificate: Certificate
    after: Clearance
    drain: Drain | None = None  # None: was not asked for
    guided: Guided | None = None  # None: nobody has chosen a method

    @property
    def summary(self) -> str:
        """How deep, how much, what kind of least it is, and what it leaves."""
        worst = self.after.worst
        left = "" if worst is None else f"; leaves {millimetres(worst.gap)} as swept"
        reach = "reaches" if self.feasible else f"stays {millimetres(self.short_by)} short of"
        return (
            f"{self.claim} cut, {millimetres(self.deepest)} at the deepest, {self.area:.2f} m2,"
            f" {litres(self.volume)}\n  {reach} what was asked and {millimetres(self.margin)} of margin{left}"
        )
