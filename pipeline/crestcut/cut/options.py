"""What could be done, cheapest first, in one table. Every figure is of the vehicle stood up and swept
again, none is estimated.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import special

from crestcut.cut.combined import CutAndStrips, cut_and_strips
from crestcut.cut.driving import LineTried, judge_line, kept_to, less_load, more_pressure, other_line
from crestcut.cut.fixes import Added, fillet, strips, taper_of, under_tyres
from crestcut.cut.records import CutPlan
from crestcut.cut.slab_limits import BY_HAND_LITRES, STOP_SHARE
from crestcut.cut.trials import AWAY, Bench, Tried
from crestcut.grid import FloatArray
from crestcut.job.records import Site, Slab, Travel
from crestcut.travel.chance_records import Chance
from crestcut.travel.records import Clearance
from crestcut.travel.sweep import hard_parts
from crestcut.units import both

CONCRETE = 2400.0  # kg/m3, normal weight (150 lb/ft3)
KINDS = (
    "as it is", "keep to the line", "another line", "less load", "slower", "more pressure", "strips",
    "fillet", "cut", "cut and strips", "new bay",
)  # fmt: skip
PACE = ("speed", "pace", "brak", "bounce")  # allowances for use that walking pace does away with
SIDE = ("left", "right")


@dataclass(frozen=True)
class Option:
    """One thing that could be done. Metres, cubic metres, chances 0..1; NaN where a figure has no meaning.

    kind : one of ``KINDS``, cheapest first.  name, needs : plain words.
    clearance : best estimate of the least gap today, hand readings folded in.  chance : that it touches.
    enough : chance that every gap reaches what is asked.  works : that chance is the confidence asked for,
    or more.
    in_use, in_use_chance : least gap and chance of a touch with the allowances for use.
    depth : deepest cut, or thickest layer laid.  volume : taken away; negative where something is laid down.
    on_line : the gap on the line followed exactly, where the row is of a line; ``line`` its ends, site m.
    swept : the least gap as swept, before anything is folded in or corrected.
    """

    kind: str
    name: str
    clearance: float
    chance: float
    enough: float
    works: bool
    in_use: float
    in_use_chance: float
    depth: float
    volume: float
    needs: str
    swept: float = math.nan
    on_line: float = math.nan
    line: tuple[tuple[float, float], tuple[float, float]] | None = None


@dataclass(frozen=True)
class Sure:
    """How a swept gap becomes an estimate with its chances: the job's own, carried over to every option.

    swept : least gap as it is, m.  in_use, slow : with all allowances for use, and without those for speed
    and braking.
    planned : once cut; None where nothing was planned.
    """

    swept: float
    today: Chance
    in_use: Chance
    slow: Chance
    planned: Chance | None
    planned_swept: float
    confidence: float

    @property
    def target(self) -> float:
        """What a swept gap must exceed the asked one by, so that it is reached with the confidence asked
        for, m.
        """
        spread = self.today.spread if self.today.spread > 0 else 0.0
        return float(special.ndtri(self.confidence)) * spread - self._moved(self.today, self.swept)

    @staticmethod
    def _moved(chance: Chance, swept: float) -> float:
        return chance.least_clearance - swept if math.isfinite(chance.least_clearance) else 0.0

    def row(
        self,
        kind: str,
        name: str,
        tried: Tried,
        needs: str,
        depth: float = 0.0,
        volume: float = 0.0,
        slow: bool = False,
    ) -> Option:
        """A row of the table from what was swept."""
        cut = kind in ("cut", "cut and strips") and self.planned is not None
        base, swept = (self.planned, self.planned_swept) if cut and self.planned else (self.today, self.swept)
        moved = self._moved(base, swept)
        used = self.slow if slow else self.in_use
        enough = 1.0 - below(tried.excess + moved, base.spread, 0.0)
        lowered = used.least_clearance - self.today.least_clearance
        return Option(
            kind, name, tried.gap + moved, below(tried.gap + moved, base.spread, 0.0), enough,
            enough >= self.confidence - 1e-9, tried.gap + moved + lowered,
            below(tried.gap + moved + lowered, math.hypot(base.spread, _more(used, self.today)), 0.0),
            depth, volume, needs, tried.gap,
        )  # fmt: skip


def _more(used: Chance, today: Chance) -> float:
    """Spread that the allowances add, m."""
    return math.sqrt(max(used.spread**2 - today.spread**2, 0.0))


def below(mean: float, spread: float, level: float) -> float:
    """P(value < level) for a normal error of sd ``spread`` m about ``mean``."""
    if not spread > 0:
        return float(mean < level)
    return float(special.ndtr((level - mean) / spread))


def options_table(
    benches: Sequence[Bench],
    plan: CutPlan,
    sure: Sure,
    travel: Travel,
    site: Site | None = None,
    slab: Slab | None = None,
    feather: float = 0.25,
    after: Sequence[Clearance] = (),
) -> tuple[Option, ...]:
    """What works first, cheapest first among it; then what does not. Only what could help is tried.

    benches, plan : of the job as asked for.  With several vehicles each option is sought for the first,
    which has least room, and judged for all of them.  after : what each clears over the cut; default the
    plan's.
    """
    first, others = benches[0], benches[1:]
    as_it_is = replace(
        sure.row("as it is", "leave it as it is", first.before.and_also(o.before for o in others), "nothing"),
        chance=sure.today.chance_of_contact, in_use_chance=sure.in_use.chance_of_contact,
    )  # fmt: skip
    if as_it_is.works:
        return (as_it_is,)
    reasons = stop_rules(plan, site or Site(), slab or Slab())
    found = [as_it_is, *_by_driving(first, others, sure, travel)]
    found += _by_laying(first, others, plan, sure, feather, reasons)
    if plan.deepest > 0:
        found.append(_cut_row(first, plan, sure, after or [plan.after]))
    if reasons:
        found.append(_new_bay(plan, slab or Slab(), reasons))
    return tuple(sorted(found, key=lambda o: (not o.works, KINDS.index(o.kind))))


def _by_driving(first: Bench, others: Sequence[Bench], sure: Sure, travel: Travel) -> list[Option]:
    rows = []
    kept = kept_to(first)
    if kept is not None:
        needs = "boards laid beside the wheels, or someone who guides the driver: no wander at all"
        kept = kept.and_also(kept_to(o) or o.before for o in others)
        rows.append(sure.row("keep to the line", "keep to the line exactly", kept, needs))
    other = other_line(first, travel, sure.target)
    if other is not None:
        rows.append(_line_row(sure, _for_all(other, others, travel)))
    light = less_load(first)
    if light is not None:
        name, tried = light
        tried = tried.and_also(o.before for o in others)
        rows.append(sure.row("less load", f'less load: "{name}" only', tried, "unloading before the slab"))
    if sure.slow.least_clearance > sure.in_use.least_clearance + 1e-6:
        needs = (
            "walking pace and no braking there: saves what is allowed for both in use, changes nothing today"
        )
        row = sure.row("slower", "slower", first.before.and_also(o.before for o in others), needs, slow=True)
        today, slow = sure.today.chance_of_contact, sure.slow.chance_of_contact
        rows.append(replace(row, chance=today, in_use_chance=slow))
    pumped = more_pressure(first)
    if pumped is not None:
        pumped = pumped.and_also(more_pressure(o) or o.before for o in others)
        needs = "a fifth more air, within the tyres' marking (lift of 3 mm: common practice, no source)"
        rows.append(sure.row("more pressure", "more air in the tyres", pumped, needs))
    return rows


def _for_all(other: LineTried, others: Sequence[Bench], travel: Travel) -> LineTried:
    """The same line under every vehicle; one that cannot drive it keeps it from working."""
    nowhere = Tried(-1.0, -1.0, 0)
    exact = replace(travel, wander=0.0, heading=0.0)
    on_line, wandering = (
        [judge_line(o, t, other.start, other.end) or nowhere for o in others] for t in (exact, travel)
    )
    return replace(
        other, on_line=other.on_line.and_also(on_line), wandering=other.wandering.and_also(wandering)
    )


def _line_row(sure: Sure, other: LineTried) -> Option:
    row = sure.row("another line", "another line", other.wandering, "")
    on_line = other.on_line.gap + row.clearance - other.wandering.gap
    needs = (
        f"{line_words(other.moved)}; {both(on_line)} on that line, {both(row.clearance)} within the wander"
    )
    return replace(row, needs=needs, on_line=on_line, line=(other.start, other.end))


def line_words(moved: tuple[float, float]) -> str:
    """ "move the line 0.30 m to the left", "move its start 0.20 m to the right, its end 0.50 m to the
    left".
    """
    a, b = moved
    if abs(a - b) < 0.03:
        return f"move the line {_side((a + b) / 2)}"
    ends = [f"its {end} {_side(m)}" for end, m in (("start", a), ("end", b)) if abs(m) >= 0.005]
    return "move " + ", ".join(ends)


def _side(moved: float) -> str:
    return f"{abs(moved):.2f} m to the {SIDE[0] if moved >= 0 else SIDE[1]}"


def _by_laying(
    first: Bench, others: Sequence[Bench], plan: CutPlan, sure: Sure, feather: float, reasons: tuple[str, ...]
) -> list[Option]:
    """Strips, a filling, and strips with a cut."""

    def for_all(tried: Tried, added: FloatArray) -> Tried:
        return tried.and_also(o.tried(added=added) for o in others)

    rows = []
    laid = strips(first, sure.target)
    if laid is not None:
        rows.append(_laid_row(sure, "strips", replace(laid, tried=for_all(laid.tried, laid.added))))
    for end in ("nose", "tail"):
        zones = [p.zone == end for p in hard_parts(first.vehicle)]
        if any(zones) and first.pair_excess()[:, zones].min() < sure.target:
            round_ = fillet(first, sure.target, end)
            if round_ is not None:
                rows.append(
                    _laid_row(sure, "fillet", replace(round_, tried=for_all(round_.tried, round_.added)))
                )
    if laid is not None and plan.deepest > 0 and reasons:
        taper = taper_of(under_tyres(first, sure.target), first.ground.cell)
        mixed = cut_and_strips(first, laid, taper, plan, feather)
        if mixed is not None:
            rows.append(
                _mixed_row(sure, replace(mixed, tried=for_all(mixed.tried, mixed.laid - mixed.depth)))
            )
    return rows


def _laid_row(sure: Sure, kind: str, laid: Added) -> Option:
    sizes = sorted(laid.pieces, reverse=True) or [(0.0, 0.0)]
    pieces = f"{sizes[0][0]:.1f} x {max(w for _, w in sizes):.1f} m"
    if kind == "fillet":
        needs = (
            f"a filling over {pieces}, rounded to a radius of {laid.size:g} m; the water needs another way, "
            "and the gutter's owner must agree"
        )
    else:
        needs = (
            f"{len(sizes)} strips {both(laid.size)} thick, up to {pieces}, fixed, their ends tapered 1:4; "
            "nobody may trip over them, and the water must pass"
        )
    return sure.row(kind, laid.name, laid.tried, needs, laid.thickest, -laid.litres / 1000)


def _cut_row(bench: Bench, plan: CutPlan, sure: Sure, after: Sequence[Clearance]) -> Option:
    gaps = [(c.gap, c.gap - bench.gaps[zone]) for a in after for zone, c in a.least.items()]
    tried = Tried(min((g for g, _ in gaps), default=AWAY), min((e for _, e in gaps), default=AWAY), 0)
    row = sure.row("cut", "cut", tried, "grinding; see the release", plan.deepest, plan.volume)
    # the margin of the plan was solved for that confidence on the draws themselves
    row = replace(row, works=plan.feasible)
    if sure.planned is None or len(after) > 1:
        return row
    enough = sure.planned.chance_of_want
    return replace(
        row, chance=sure.planned.chance_of_contact, enough=enough if math.isfinite(enough) else row.enough
    )


def _mixed_row(sure: Sure, mixed: CutAndStrips) -> Option:
    laid = f"strips {both(mixed.size)} thick ({mixed.litres_laid:.0f} litres), fixed"
    needs = f"{laid}, and grinding beside and between them"
    return sure.row(
        "cut and strips", "cut and strips together", mixed.tried, needs, mixed.deepest, mixed.litres / 1000
    )


def stop_rules(plan: CutPlan, site: Site, slab: Slab) -> tuple[str, ...]:
    """Why a new bay should be priced before this cut is made; empty where no rule bites."""
    if plan.deepest <= 0 and plan.feasible:
        return ()
    reasons = []
    if not plan.feasible:
        reasons.append(f"no cut within the limits does it, {both(plan.short_by)} stay missing")
    if slab.thickness is not None and plan.deepest > STOP_SHARE * slab.thickness:
        reasons.append(f"the cut of {both(plan.deepest)} is deeper than a sixth of the slab")
    if any("steel" in reason or "cover" in reason for reason in plan.binding):
        reasons.append("the steel is too near")
    if plan.volume * 1000 > BY_HAND_LITRES:
        reasons.append(f"{plan.volume * 1000:.1f} litres are too many for hand grinding")
    if site.ground == "public":
        reasons.append("the ground is public")
    return tuple(reasons)


def _new_bay(plan: CutPlan, slab: Slab, reasons: tuple[str, ...]) -> Option:
    """Quantities of the smallest rectangle, along and across the travel, that holds the cut."""
    depth, cell = np.nan_to_num(plan.depth.values), plan.depth.frame.cell
    rows, columns = np.nonzero(depth > 0)
    thick = slab.thickness or 0.1
    size = ""
    area = 0.0
    if len(rows):
        long, wide = (float(np.ptp(k)) * cell + cell for k in (columns, rows))
        area = long * wide
        guess = "" if slab.thickness else " (thickness not known: 100 mm taken)"
        size = (
            f". At least {long:.1f} x {wide:.1f} m = {area:.1f} m2, {area * thick:.2f} m3, "
            f"{area * thick * CONCRETE / 1000:.1f} t out and in, {2 * (long + wide):.1f} m of saw cut{guess}"
        )
    nothing = math.nan
    return Option(
        "new bay", "replace the bay", nothing, nothing, nothing, True, nothing, nothing, thick, area * thick,
        f"price replacing the bay: {'; '.join(reasons)}{size}",
    )  # fmt: skip
