"""What could be done, in one table, what works first. Every figure is of the vehicle stood up and swept
again, none is estimated.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from crestcut.alternatives.combined import CutAndStrips, cut_and_strips
from crestcut.alternatives.driving import LineTried, kept_to, less_load, more_pressure, other_line
from crestcut.alternatives.fixes import Added, fillet, loose_boards, strips
from crestcut.alternatives.rows import INTO_THE_SLAB, OPTION_KINDS, Change, Estimator, Option
from crestcut.alternatives.trials import AWAY, Baseline, Tried, Trieds
from crestcut.base.units import both, litres
from crestcut.contact import Clearance, hard_parts
from crestcut.cut import (
    ENOUGH,
    THICK,
    CutPlan,
    bay_of,
    bay_words,
    forbidden,
    not_into_it,
    not_known,
    why_a_new_bay,
)
from crestcut.job import Job, Keep, Slab, Travel

SIDE = ("left", "right")


def options_table(
    benches: Sequence[Baseline],
    plan: CutPlan,
    estimators: Sequence[Estimator],
    job: Job,
    after: Sequence[Clearance] = (),
    boards: Sequence[float] = (),
) -> tuple[Option, ...]:
    """What works at walking pace first, in use too or not; then what does not; each in the order of
    ``OPTION_KINDS``. Only what could help is tried. boards : thickness of what is sold to lie loose, m.

    benches, estimators : of the job as asked for, one for each vehicle; every option must do for all of them.
    after : what each clears over the cut of the plan; default the plan's own. What would be cut, drilled or
    fixed into a slab that forbids it does not work, whatever gap it would leave.
    """
    benches = [replace(b, target=s.target) for b, s in zip(benches, estimators, strict=True)]
    now = tuple(b.before for b in benches)
    as_it_is = _row(estimators, Change("as it is", "leave it as it is", "nothing"), now)
    if as_it_is.works:
        return (as_it_is,)
    reasons = why_a_new_bay(plan, job.site, job.slab)
    found = [as_it_is, *_by_driving(benches, estimators, job.travel)]
    tried = loose_boards(benches, boards)
    if tried is not None:
        found.append(_boards_row(estimators, tried))
    found += _by_laying(benches, plan, estimators, job.cut.feather, reasons)
    if plan.deepest > 0:
        found.append(_cut_row(benches, plan, estimators, after or [plan.after]))
    if reasons:
        found.append(_new_bay(plan, job.slab, reasons))
    found = [_allowed(option, job.slab, job.keeps) for option in found]
    return tuple(sorted(found, key=lambda o: (not o.works, OPTION_KINDS.index(o.kind))))


def _allowed(option: Option, slab: Slab, keeps: Sequence[Keep]) -> Option:
    """The row as it stands on this slab: not at all where something forbids it, else once it is known."""
    if option.kind not in INTO_THE_SLAB:
        return option
    found = forbidden(slab, keeps)
    if found:
        return replace(option, works=False, forbids=found, needs=not_into_it(found))
    when = "not before the release's questions are answered" if not_known(slab) else "see the release"
    return replace(option, needs=f"{option.needs}; {when}")


def _row(estimators: Sequence[Estimator], change: Change, tried: Trieds) -> Option:
    """A row of the table: of several vehicles the worst figure of each column."""
    rows = [s.row(change, t) for s, t in zip(estimators, tried, strict=True)]
    return replace(
        rows[0],
        clearance=min(r.clearance for r in rows), chance=max(r.chance for r in rows),
        enough=min(r.enough for r in rows), works=all(r.works for r in rows),
        works_in_use=all(r.works_in_use for r in rows),
        in_use=min(r.in_use for r in rows), in_use_chance=max(r.in_use_chance for r in rows),
        swept=min(r.swept for r in rows),
    )  # fmt: skip


def _by_driving(benches: Sequence[Baseline], estimators: Sequence[Estimator], travel: Travel) -> list[Option]:
    rows, now = [], tuple(b.before for b in benches)
    kept = [kept_to(b) for b in benches]
    if any(kept):
        needs = "boards laid beside the wheels, or someone who guides the driver: no wander at all"
        rows.append(
            _row(
                estimators,
                Change("keep to the line", "keep to the line exactly", needs),
                _or_as_now(kept, now),
            )
        )
    other = other_line(benches, travel)
    if other is not None:
        rows.append(_line_row(estimators, other))
    light = [less_load(b) for b in benches]
    if any(light):
        names = dict.fromkeys(f'"{found[0]}"' for found in light if found)
        tried = _or_as_now([found[1] if found else None for found in light], now)
        needs = "unloading before the slab"
        rows.append(
            _row(estimators, Change("less load", f"less load: {', '.join(names)} only", needs), tried)
        )
    if any(s.slow.least_clearance > s.in_use.least_clearance + 1e-6 for s in estimators):
        needs = (
            "walking pace and no braking there: saves what is allowed for both in use, changes nothing today"
        )
        rows.append(_row(estimators, Change("slower", "slower", needs), now))
    pumped = [more_pressure(b) for b in benches]
    if any(pumped):
        needs = "a fifth more air, within the tyres' marking (lift of 3 mm: common practice, no source)"
        rows.append(
            _row(estimators, Change("more pressure", "more air in the tyres", needs), _or_as_now(pumped, now))
        )
    return rows


def _or_as_now(tried: Sequence[Tried | None], now: Trieds) -> Trieds:
    """Vehicles for which it changes nothing stay as they are."""
    return tuple(t if t is not None else n for t, n in zip(tried, now, strict=True))


def _line_row(estimators: Sequence[Estimator], other: LineTried) -> Option:
    row = _row(estimators, Change("another line", "another line", ""), other.wandering)
    on_line = _row(estimators, Change("another line", "", ""), other.on_line).clearance
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
    benches: Sequence[Baseline],
    plan: CutPlan,
    estimators: Sequence[Estimator],
    feather: float,
    reasons: tuple[str, ...],
) -> list[Option]:
    """Strips, a filling, and strips with a cut."""
    rows = []
    laid = strips(benches)
    if laid is not None:
        rows.append(_laid_row(estimators, "strips", laid))
    for end in ("nose", "tail"):
        if any(_short_at(b, end) for b in benches):
            round_ = fillet(benches, end)
            if round_ is not None:
                rows.append(_laid_row(estimators, "fillet", round_))
    if laid is not None and plan.deepest > 0 and reasons:
        mixed = cut_and_strips(benches, laid, plan, feather)
        if mixed is not None:
            rows.append(_mixed_row(benches, estimators, mixed))
    return rows


def _short_at(bench: Baseline, end: str) -> bool:
    zones = [p.zone == end for p in hard_parts(bench.vehicle)]
    return any(zones) and bool(bench.pair_excess()[:, zones].min() < bench.target)


def _laid_row(estimators: Sequence[Estimator], kind: str, laid: Added) -> Option:
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
    return _row(estimators, Change(kind, laid.name, needs, laid.thickest, -laid.litres / 1000), laid.tried)


def _boards_row(estimators: Sequence[Estimator], laid: Added) -> Option:
    """Nothing is fixed and all of it is taken up again: a trial of what strips would do."""
    sizes = laid.pieces or ((0.0, 0.0),)
    needs = (
        f"a test drive before anything is fixed: {len(sizes)} sheets {both(laid.size)} thick, up to"
        f" {max(u for u, _ in sizes):.1f} x {max(w for _, w in sizes):.1f} m, loose where the tyres run,"
        " flat on the"
        " swept, dry slab; at a creep, somebody watching from the side; taken up again, never left where"
        " people walk"
    )
    change = Change("loose boards", laid.name, needs, laid.thickest, -laid.litres / 1000)
    return _row(estimators, change, laid.tried)


def _cut_row(
    benches: Sequence[Baseline], plan: CutPlan, estimators: Sequence[Estimator], after: Sequence[Clearance]
) -> Option:
    tried = []
    for b, swept in zip(benches, after, strict=True):
        gaps = [(c.gap, c.gap - b.gaps[zone]) for zone, c in swept.least.items()]
        tried.append(
            Tried(min(g for g, _ in gaps), min(e for _, e in gaps), 0) if gaps else Tried(AWAY, AWAY, 0)
        )
    row = _row(estimators, Change("cut", "cut", "grinding", plan.deepest, plan.volume), tuple(tried))
    # the margin of the plan was solved for that confidence on the draws themselves
    return replace(row, works=plan.feasible)


def _mixed_row(benches: Sequence[Baseline], estimators: Sequence[Estimator], mixed: CutAndStrips) -> Option:
    laid = f"strips {both(mixed.size)} thick ({litres(mixed.litres_laid / 1000)}), fixed"
    needs = f"{laid}, and grinding beside and between them"
    name, volume = "cut and strips together", mixed.litres / 1000
    row = _row(estimators, Change("cut and strips", name, needs, mixed.deepest, volume), mixed.tried)
    # made like the cut: where the same margin is kept it is as sure as that was solved for
    kept = all(t.excess >= b.margin - ENOUGH for b, t in zip(benches, mixed.tried, strict=True))
    enough = max(row.enough, min(s.confidence for s in estimators)) if kept else row.enough
    return replace(row, works=kept, enough=enough, beside=mixed.litres_laid / 1000, thick=mixed.size)


def _new_bay(plan: CutPlan, slab: Slab, reasons: tuple[str, ...]) -> Option:
    """Replacing the smallest rectangle that holds the cut."""
    bay, nothing = bay_of(plan, slab), math.nan
    thick, volume = (bay.thickness, bay.volume) if bay is not None else (slab.thickness or THICK, 0.0)
    size = f". At least {bay_words(bay)}" if bay is not None else ""
    return Option(
        "new bay", "replace the bay", nothing, nothing, nothing, True, nothing, nothing, thick, volume,
        f"price replacing the bay: {'; '.join(reasons)}{size}", works_in_use=True,
    )  # fmt: skip
