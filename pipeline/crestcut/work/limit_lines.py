"""What limits the cut, in sentences: slab, steel and joints, and when a new bay is the better buy."""

from __future__ import annotations

import math
from collections.abc import Sequence

from crestcut.cut.forbidden import forbidden, not_into_it
from crestcut.cut.limits import KeepArea
from crestcut.cut.records import CutPlan
from crestcut.cut.slab_limits import deepest_allowed, steel_depth, stop_rules
from crestcut.job.records import Job
from crestcut.units import both, millimetres
from crestcut.work.drain import drain_words
from crestcut.work.trade import TradeWords


def limit_lines(
    job: Job, plan: CutPlan | None, keeps: Sequence[KeepArea], words: TradeWords
) -> tuple[str, ...]:
    """What is left of the slab, what lies in it, and where replacing the bay should be priced."""
    limit = deepest_allowed(job)
    lines = [f"Deepest cut allowed {both(limit.depth)}: {limit.reason}."]
    lines += [f"Next limit {both(depth)}: {words}." for words, depth in limit.rules[1:]]
    slab = job.slab
    if plan is not None and slab.thickness is not None:
        lines.append(
            f"Section left at the deepest place: {millimetres(slab.thickness - plan.deepest, 0)} "
            f"of {millimetres(slab.thickness, 0)}."
        )
    steel = steel_depth(slab)
    if plan is not None and steel is not None:
        lines.append(
            f"Cover left over the steel: {millimetres(max(steel[0] - plan.deepest, 0.0), 0)} ({steel[1]})."
        )
    if plan is not None:
        rules = stop_rules(job, plan.deepest, plan.volume)
        found = forbidden(job.slab, job.keeps)
        if rules and found:
            lines.append(f"Replacing the {words.bay}, or cutting it at all: {not_into_it(found)}.")
        elif rules:
            bay = (
                f"about {math.ceil(plan.area * 2):.0f} m2 and {plan.area * 2 * (slab.thickness or 0.1):.2f}"
                " m3 of concrete"
            )
            lines.append(f"Price replacing the {words.bay} as well ({bay}): {'; '.join(rules)}.")
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
