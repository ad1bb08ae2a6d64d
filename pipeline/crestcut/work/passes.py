"""What to do in which order: lanes, lifts, fins, smoothing."""

from __future__ import annotations

import math
from collections.abc import Sequence

from crestcut.cut.records import CutPlan
from crestcut.units import both, millimetres
from crestcut.work.quantities import hours_of, shares
from crestcut.work.records import Jig, Pass, Range, Tool

LEFT_BY_MACHINE = 0.003  # m kept back from a machine: it does not follow a line to the millimetre


def make_passes(plan: CutPlan, tools: Sequence[Tool], jig: Jig | None) -> tuple[Pass, ...]:
    """The work in order, with hours as ranges. Empty where nothing is to be cut."""
    if plan.deepest <= 0 or not tools:
        return ()
    steps: list[tuple[str, str, Range]] = [
        (
            "drill with a depth stop",
            "Drill the dots, paint their bottoms. Chalk tyre lines, stop lines and lanes.",
            Range(0.5, 1.5),
        )
    ]
    for tool, share in zip(tools, shares(tools, plan.deepest), strict=True):
        hours = hours_of(tool, plan.volume * share)
        if not tool.by_hand:
            steps.append((tool.name, _machine(tool, plan), hours))
        elif tool.use == "kerf" and jig is not None:
            steps += _kerfs(tool, jig, hours)
        else:
            steps.append((tool.name, _smooth(tool, jig), hours))
    steps.append(
        (
            "string, stick, straightedge",
            (
                "Check every row of the string table and pass the stick under the board. Grind what is "
                "proud, check again. Feather the edges by hand to the stop lines: nobody trips."
            ),
            Range(0.5, 1.5),
        )
    )
    return tuple(Pass(k + 1, *step) for k, step in enumerate(steps))


def _machine(tool: Tool, plan: CutPlan) -> str:
    depth = max(plan.deepest - LEFT_BY_MACHINE, 0.0)
    return (
        f"Bulk: {math.ceil(depth / tool.step)} passes of {both(tool.step)} at most, only where dots are"
        f" deeper than {millimetres(LEFT_BY_MACHINE, 0)}, until {millimetres(LEFT_BY_MACHINE, 0)} of each"
        " such dot are left. Stay off the feather."
    )


def _kerfs(tool: Tool, jig: Jig, hours: Range) -> list[tuple[str, str, Range]]:
    """One pass a lift: slots in every lane, then the fins."""
    part = hours.times(1 / len(jig.lifts)) if jig.lifts else hours
    out = []
    for lift in jig.lifts:
        cuts = max(math.ceil(lift.deepest / tool.step - 1e-9), 1)
        what = (
            f"Lift {lift.number} of {len(jig.lifts)}: blocks {both(lift.raised)} above the jig table. Measure"
            f" the reach, let the cutter down between the stop marks of each lane, in {cuts}"
            f" cut{'s' if cuts > 1 else ''} of {both(tool.step)} or less. Then knock off the fins with a cold"
            " chisel held flat (eye and hand protection; chips fly) or the cup."
        )
        out.append((tool.name, what, part))
    return out


def _smooth(tool: Tool, jig: Jig | None) -> str:
    if jig is None:
        return "Grind from the middle of the cut outwards in crossing passes until the dots are just gone."
    return (
        f"Smooth: take the last {both(jig.smoothing)} in crossing passes until the dots are just gone and the"
        " stick passes."
    )
