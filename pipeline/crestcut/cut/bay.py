"""When a new bay should be priced beside a cut, and how large it is: one answer for options and sheets."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.base.units import at_least, both
from crestcut.cut.records import CutPlan
from crestcut.cut.slab_limits import mass_of, room_over_steel, stop_rules
from crestcut.job import Site, Slab

THICK = 0.1  # m, where nobody knows the thickness
SAWN_TO = 0.1  # m: to what a bay is set out


@dataclass(frozen=True)
class Bay:
    """The smallest rectangle, along and across the travel, that holds a cut, up to whole decimetres. Metres.

    guessed : nobody said how thick the slab is.
    """

    long: float
    wide: float
    thickness: float
    guessed: bool

    @property
    def area(self) -> float:
        """m2."""
        return self.long * self.wide

    @property
    def volume(self) -> float:
        """m3."""
        return self.area * self.thickness


def bay_of(plan: CutPlan, slab: Slab) -> Bay | None:
    """The bay to replace instead of cutting; None where nothing is cut."""
    rows, columns = np.nonzero(np.nan_to_num(plan.depth.values) > 0)
    if not len(rows):
        return None
    cell = plan.depth.frame.cell
    long, wide = (at_least(float(np.ptp(k)) * cell + cell, SAWN_TO) for k in (columns, rows))
    return Bay(long, wide, slab.thickness or THICK, slab.thickness is None)


def bay_words(bay: Bay) -> str:
    """ "0.8 x 1.9 m = 1.52 m2, 0.32 m3, 0.8 t out and in, 5.4 m of saw cut"."""
    guess = f" (thickness not known: {bay.thickness * 1000:.0f} mm taken)" if bay.guessed else ""
    return (
        f"{bay.long:.1f} x {bay.wide:.1f} m = {bay.area:.2f} m2, {bay.volume:.2f} m3,"
        f" {mass_of(bay.volume) / 1000:.1f} t out and in, {2 * (bay.long + bay.wide):.1f} m of saw cut{guess}"
    )


def why_a_new_bay(plan: CutPlan, site: Site, slab: Slab) -> tuple[str, ...]:
    """Why a new bay should be priced before this cut is made; empty where no rule bites."""
    if plan.deepest <= 0 and plan.feasible:
        return ()
    reasons = []
    if not plan.feasible:
        reasons.append(f"no cut within the limits does it, {both(plan.short_by)} stay missing")
    if held_by_steel(plan, slab):
        reasons.append("the steel is too near")
    # of a cut that is not proposed nothing is priced
    return (*reasons, *(stop_rules(slab, site, plan.deepest, plan.volume) if plan.feasible else ()))


def held_by_steel(plan: CutPlan, slab: Slab) -> bool:
    """Whether the slab's own limit keeps the cut from enough, and the steel is what sets it."""
    room, limits = room_over_steel(slab), plan.limits
    if room is None or not limits.reasons or limits.reasons[0] not in plan.binding:
        return False
    return float(np.nanmax(limits.deepest.values, initial=0.0)) >= room - 1e-9
