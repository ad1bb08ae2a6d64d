"""What could be done instead of cutting, cheapest first, in one table."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.cut.fixes import Added, fillet, least_excess, strips
from crestcut.cut.limits import cut_limits
from crestcut.cut.plan import plan_cut
from crestcut.cut.records import CutPlan
from crestcut.job.records import Site, Slab, Wanted
from crestcut.surface.records import Surface
from crestcut.travel.records import Clearance, Ride
from crestcut.travel.search import LineFound
from crestcut.units import both
from crestcut.vehicle.records import Vehicle

CONCRETE = 2400.0  # kg/m3, normal weight (150 lb/ft3)
BY_HAND = 10.0  # litres: more is a floor grinder's or a replacement's work (common practice, no source)
# share of the slab's thickness beyond which a cut is priced against a new bay (common practice, no source)
DEEP_SHARE = 1.0 / 6.0
# a tyre at rated load is pressed about 20 mm; its rate grows about as its pressure (common practice, no
# source)
PRESSED, PRESSURE_RISE = 0.020, 0.2


@dataclass(frozen=True)
class Option:
    """One thing that could be done.

    clearance : least gap it leaves, m.  chance : that it still touches, 0..1, NaN where the spread is
        unknown.  depth : deepest cut or
    thickest layer, m.  litres : taken away (positive) or laid down (negative).  reaches : does every gap
    reach what is wanted.
    needs : what it takes, plain words.
    """

    name: str
    clearance: float
    chance: float
    depth: float
    litres: float
    reaches: bool
    needs: str


def chance_of_contact(clearance: float, spread: float | None) -> float:
    """P(gap < 0) for a normal error of sd ``spread`` m about ``clearance``; NaN without a spread."""
    if spread is None or not spread > 0:
        return math.nan
    return 0.5 * math.erfc(clearance / spread / math.sqrt(2.0))


def options_table(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    before: Clearance,
    plan: CutPlan,
    wanted: Wanted,
    spread: float | None = None,
    lines: Sequence[LineFound] = (),
    site: Site | None = None,
    slab: Slab | None = None,
    feather: float = 0.25,
) -> tuple[Option, ...]:
    """All options, cheapest first: as it is, another line, less load, slower, more pressure, strips, fillet,
    cut, cut and strips, new bay.

    before, plan : of the ride as asked for.  spread : sd of the least clearance, m, for the chances.  lines :
        from ``search_lines``.
    """
    found = [_row("leave it as it is", before, wanted, spread, "nothing")]
    for line in lines[:1]:
        reaches = line.clearance >= wanted.want
        found.append(
            _option(
                "another line",
                line.clearance,
                spread,
                0.0,
                0.0,
                reaches,
                f"{line.words}; no wander allowed for",
            )
        )
    found += _by_driving(vehicle, ride, before, wanted, spread)
    laid = strips(vehicle, surface, ride, before, wanted)
    kinds = {
        zone
        for zone, c in before.least.items()
        if c.gap < (wanted.want if zone == "belly" else wanted.want_ends)
    }
    round_ = fillet(vehicle, surface, ride, wanted) if "nose" in kinds or "tail" in kinds else None
    found += [_added(a, wanted, spread) for a in (laid, round_) if a is not None]
    found.append(_cut("cut", plan, spread, "grinding; see the release"))
    if laid is not None and laid.excess < 0 and laid.excess > least_excess(before, wanted):
        both_ = _cut_and_strips(vehicle, laid, plan, wanted, feather)
        found.append(
            _cut("cut and strips together", both_, spread, f"strips of {both(laid.size)} and grinding")
        )
    reasons = stop_rules(plan, site or Site(), slab or Slab())
    if reasons:
        found.append(_new_bay(plan, slab or Slab(), reasons))
    return tuple(found)


def _option(
    name: str, gap: float, spread: float | None, depth: float, litres: float, reaches: bool, needs: str
) -> Option:
    return Option(name, gap, chance_of_contact(gap, spread), depth, litres, reaches, needs)


def _least(clearance: Clearance) -> float:
    return clearance.worst.gap if clearance.worst else math.inf


def _row(name: str, clearance: Clearance, wanted: Wanted, spread: float | None, needs: str) -> Option:
    return _option(name, _least(clearance), spread, 0.0, 0.0, least_excess(clearance, wanted) >= 0, needs)


def _by_driving(
    vehicle: Vehicle, ride: Ride, before: Clearance, wanted: Wanted, spread: float | None
) -> list[Option]:
    """Less load (the lightest of those asked for), slower, more pressure."""
    out = []
    gaps = per_load(ride, before)
    if len(gaps) > 1:
        name, gap = max(gaps.items(), key=lambda item: item[1])
        if gap > _least(before) + 1e-6:
            reaches = gap >= wanted.want
            out.append(
                _option(
                    f'less load ("{name}" only)', gap, spread, 0.0, 0.0, reaches, "unloading before the slab"
                )
            )
    pace = sum(size for name, size in wanted.in_use if any(w in name.lower() for w in ("speed", "brak")))
    if pace > 0:
        gap = _least(before)
        needs = f"walking pace, no braking on the crest: keeps the {both(pace)} allowed for in use"
        out.append(_option("slower", gap, spread, 0.0, 0.0, gap >= wanted.want, needs))
    if not vehicle.rigid:
        rise = PRESSED * (1 - 1 / (1 + PRESSURE_RISE))
        gap = _least(before) + rise
        needs = (
            f"a fifth more tyre pressure, within the tyre's marking: about {both(rise)} "
            "(common practice, no source)"
        )
        out.append(_option("more tyre pressure", gap, spread, 0.0, 0.0, gap >= wanted.want, needs))
    return out


def per_load(ride: Ride, before: Clearance) -> dict[str, float]:
    """Least gap of each load state, m."""
    assert before.pair_gap is not None
    names = np.array([ride.poses[v].variant.load for v in ride.batch.variant])
    least = np.where(ride.batch.live, before.pair_gap.min(axis=1, initial=np.inf), np.inf)
    return {str(name): float(least[names == name].min()) for name in dict.fromkeys(names)}


def _added(added: Added, wanted: Wanted, spread: float | None) -> Option:
    depth, gap = float(np.nanmax(added.added)), _least(added.after)
    if added.name.startswith("fillet"):
        needs = (
            f"filling to a radius of {added.size:g} m; "
            "the water needs another way, and the gutter's owner must agree"
        )
    else:
        needs = f"strips {both(added.size)} thick, fixed, with tapered ends; nobody may trip over them"
    return _option(added.name, gap, spread, depth, -added.litres, added.excess >= 0, needs)


def _cut(name: str, plan: CutPlan, spread: float | None, needs: str) -> Option:
    return _option(name, _least(plan.after), spread, plan.deepest, plan.volume * 1000, plan.feasible, needs)


def _cut_and_strips(vehicle: Vehicle, laid: Added, plan: CutPlan, wanted: Wanted, feather: float) -> CutPlan:
    """The cut that is still needed with the strips down. Nothing is cut under them."""
    limits = cut_limits(laid.surface, plan.limits.deepest.values.max(), plan.limits.reasons[0], feather, [])
    allowed = np.where(laid.added > 0, 0.0, np.minimum(limits.deepest.values, plan.limits.deepest.values))
    narrowed = type(limits)(limits.deepest.like(allowed), limits.reason, limits.reasons)
    return plan_cut(vehicle, laid.surface, laid.ride, laid.after, narrowed, wanted, plan.margin, feather)


def stop_rules(plan: CutPlan, site: Site, slab: Slab) -> tuple[str, ...]:
    """Why a new bay should be priced before this cut is made; empty where no rule bites."""
    reasons = []
    if plan.deepest <= 0:
        return ()
    if slab.thickness is not None and plan.deepest > DEEP_SHARE * slab.thickness:
        reasons.append(f"the cut of {both(plan.deepest)} is deeper than a sixth of the slab")
    if any("steel" in reason or "cover" in reason for reason in plan.binding):
        reasons.append("the steel is too near")
    if plan.volume * 1000 > BY_HAND:
        reasons.append(f"{plan.volume * 1000:.1f} litres are too many for hand grinding")
    if site.ground == "public":
        reasons.append("the ground is public")
    return tuple(reasons)


def _new_bay(plan: CutPlan, slab: Slab, reasons: tuple[str, ...]) -> Option:
    """Quantities of the smallest rectangle, along and across the travel, that holds the cut."""
    depth, cell = np.nan_to_num(plan.depth.values), plan.depth.frame.cell
    rows, columns = np.nonzero(depth > 0)
    long, wide = (float(np.ptp(k)) * cell + cell for k in (columns, rows))
    thick = slab.thickness or 0.1
    area = long * wide
    guess = "" if slab.thickness else " (thickness not known: 100 mm taken)"
    needs = (
        f"price replacing the bay: {'; '.join(reasons)}. At least {long:.1f} x {wide:.1f} m = {area:.1f} m2, "
        f"{area * thick:.2f} m3, "
        f"{area * thick * CONCRETE / 1000:.1f} t out and in, {2 * (long + wide):.1f} m of saw cut{guess}"
    )
    return Option("replace the bay", math.nan, math.nan, thick, area * thick * 1000, True, needs)
