"""What to do in which order: dots, machine, strips lift by lift, fins, smoothing, feather, check."""

from __future__ import annotations

import math
from collections.abc import Sequence

from crestcut.base.units import both, both_at_most, millimetres
from crestcut.cut import CutPlan
from crestcut.work.jig_records import Jig, Range, Tool
from crestcut.work.quantities import hours_of, shares
from crestcut.work.records import Pass
from crestcut.work.slopes import BEVELLED, VERTICAL

LEFT_BY_MACHINE = 0.003  # m kept back from a machine: it does not follow a line to the millimetre


def make_passes(
    plan: CutPlan, tools: Sequence[Tool], jig: Jig | None, feather: float = 0.25
) -> tuple[Pass, ...]:
    """The work in order, with hours as ranges. Empty where nothing is to be cut. feather : rise over run."""
    if plan.deepest <= 0 or not tools:
        return ()
    steps: list[tuple[str, str, Range]] = [
        (
            "Chalk, tape, hammer drill with a depth stop",
            "Chalk line of travel, tyre lines, block stations, stop lines and strips. Drill the dots"
            " (shrouded bit or vacuum held to it), paint their bottoms. Close drains and door gaps.",
            Range(0.5, 1.5),
        )
    ]
    for tool, share in zip(tools, shares(tools, plan.deepest), strict=True):
        hours = hours_of(tool, plan.volume * share)
        if not tool.by_hand:
            steps.append((tool.name, _machine(tool, plan) + _slurry(tool), hours))
        elif tool.use == "kerf" and jig is not None:
            steps += _kerfs(tool, jig, hours)
        else:
            steps.append((tool.name, _smooth(tool, jig) + _slurry(tool), hours))
    steps.append(("Shrouded cup, wedge", _feather(plan.deepest, feather), Range(0.3, 1.0)))
    steps.append(
        (
            "String, stick, straightedge",
            (
                "Check every figure of the string table and pass the stick under the board. Grind what is"
                " proud, check again. Then the vehicle, at walking pace, somebody watching."
            ),
            Range(0.5, 1.5),
        )
    )
    return numbered(steps)


def numbered(steps: Sequence[tuple[str, str, Range]]) -> tuple[Pass, ...]:
    """Passes from tool, words and hours. Hours are kept as they are printed, to a tenth and never none: so
    that what is printed adds up to the whole."""
    return tuple(
        Pass(k, tool, what, Range(round(hours.low, 1), max(round(hours.high, 1), 0.1)))
        for k, (tool, what, hours) in enumerate(steps, start=1)
    )


def _machine(tool: Tool, plan: CutPlan) -> str:
    depth = max(plan.deepest - LEFT_BY_MACHINE, 0.0)
    return (
        f"Bulk: {math.ceil(depth / tool.step)} passes of {both_at_most(tool.step)} at most, lanes"
        f" {millimetres(tool.pitch, 0)} apart, only where dots are deeper than"
        f" {millimetres(LEFT_BY_MACHINE, 0)}, until {millimetres(LEFT_BY_MACHINE, 0)} of each such dot are"
        " left. Stay off the feather."
    )


def _kerfs(tool: Tool, jig: Jig, hours: Range) -> list[tuple[str, str, Range]]:
    """One pass a lift: slots in every strip, then the fins."""
    part = hours.times(1 / len(jig.lifts)) if jig.lifts else hours
    name, thick = jig.spacer
    out = []
    for lift in jig.lifts:
        cuts = max(math.ceil(lift.deepest / tool.step - 1e-9), 1)
        under = (
            "Blocks as the jig table, no spacer."
            if lift.spacers == 0
            else f"Blocks as the jig table, {lift.spacers} x {name} ({millimetres(thick)}) under both ends of"
            " the board; strips whose 1st lift is a later one wait."
        )
        if lift.number > 1:
            spacers = f"{lift.spacers} x {name}" if lift.spacers else "no spacer"
            what = (
                f"Lift {lift.number} of {len(jig.lifts)}, as lift 1, with {spacers}:"
                f" {millimetres(lift.deepest)} in {cuts} cut{'s' if cuts > 1 else ''}."
                " Measure the reach again."
            )
            out.append((tool.name, what, part))
            continue
        what = (
            f"Lift {lift.number} of {len(jig.lifts)}. {under} Measure the reach; let the cutter down"
            f" between the stop"
            f" lines, {millimetres(lift.deepest)} in {cuts} cut{'s' if cuts > 1 else ''} of"
            f" {both_at_most(tool.step)} or less;"
            f" slots {millimetres(tool.pitch, 0)} apart across each strip. Knock the fins off with a cold"
            f" chisel held flat"
            " (eyes, hands: chips fly) or the shrouded cup." + _slurry(tool)
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


def _slurry(tool: Tool) -> str:
    if not tool.wet:
        return ""
    return (
        " Wet: dam the slurry, vacuum it up before it dries, never to a drain; a GFCI (residual-current"
        " device) on the supply."
    )


def _feather(deepest: float, feather: float) -> str:
    """Edges that nobody trips over: 2010 ADA Standards 303 where people walk."""
    wedge = 0.1
    walk = (
        f" Where people walk (2010 ADA 303): up to {both_at_most(VERTICAL)} may stand, to"
        f" {both_at_most(BEVELLED)} bevel 1:2 or flatter, more is a ramp 1:12."
    )
    return (
        f"Feather from the strips' ends to the stop lines, evenly, 1:{1 / feather:.0f}: saw a wedge"
        f" {wedge * 1000:.0f} mm long and {wedge * feather * 1000:.0f} mm high; laid tip to the stop line,"
        " its top lies level with the untouched concrete. Nothing may"
        f" trip.{walk if deepest > VERTICAL else ''}"
    )
