"""What limits the cut, in sentences: slab, steel and joints, and when a new bay is the better buy."""

from __future__ import annotations

from collections.abc import Sequence

from crestcut.base.units import at_most, both_at_most, millimetres
from crestcut.cut import (
    CutPlan,
    KeepArea,
    bay_of,
    bay_words,
    deepest_allowed,
    forbidden,
    not_into_it,
    steel_depth,
    why_a_new_bay,
)
from crestcut.job import Job
from crestcut.work.drain import drain_words
from crestcut.work.trade import TradeWords

WHOLE = 0.001  # m: what is left is told in whole millimetres, never more than there is


def section_left(thickness: float, deepest: float) -> str:
    """What a cut ``deepest`` m deep leaves of a slab, m."""
    left = millimetres(at_most(thickness - deepest, WHOLE), 0)
    return f"Section left at the deepest place: {left} of {millimetres(thickness, 0)}."


def limit_lines(
    job: Job, plan: CutPlan | None, keeps: Sequence[KeepArea], words: TradeWords
) -> tuple[str, ...]:
    """What is left of the slab, what lies in it, and where replacing the bay should be priced."""
    limit = deepest_allowed(job.cut, job.slab)
    lines = [f"Deepest cut allowed {both_at_most(limit.depth)}: {limit.reason}."]
    lines += [f"Next limit {both_at_most(depth)}: {words}." for words, depth in limit.rules[1:]]
    slab = job.slab
    proposed = plan is not None and plan.feasible
    if plan is not None and proposed and slab.thickness is not None:
        lines.append(section_left(slab.thickness, plan.deepest))
    steel = steel_depth(slab)
    if plan is not None and proposed and steel is not None:
        cover = at_most(max(steel[0] - plan.deepest, 0.0), WHOLE)
        lines.append(f"Cover left over the steel: {millimetres(cover, 0)} ({steel[1]}).")
    if plan is not None:
        reasons, bay = why_a_new_bay(plan, job.site, slab), bay_of(plan, slab)
        found = forbidden(job.slab, job.keeps)
        if reasons and found:
            lines.append(f"Replacing the {words.bay}, or cutting it at all: {not_into_it(found)}.")
        elif reasons:
            size = f" (at least {bay_words(bay)})" if bay is not None else ""
            lines.append(f"Price replacing the {words.bay} as well{size}: {'; '.join(reasons)}.")
    if plan is not None and plan.drain is not None:
        lines.append(drain_words(plan.drain))
    joints = [k for k in keeps if "joint" in k.kind.lower()]
    lines.append(
        f"Joints: {len(joints)} named; those the cut makes shallower are re-sawn to a quarter of the"
        " thickness."
        if joints
        else "Joints: none named; look for them, and re-saw any that the cut makes shallower."
    )
    return tuple(lines)
