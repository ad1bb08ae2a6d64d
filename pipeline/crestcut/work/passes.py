"""What to do in which order, one order for each method; and the hours of every step from its own metres,
litres and places.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.units import both, both_at_most, litres, millimetres
from crestcut.job import Method
from crestcut.work.jig_records import Jig, Lift, Range, Tool
from crestcut.work.quantities import hours_at, span_words, summed
from crestcut.work.records import IDLE, Pass, SetOut
from crestcut.work.site import Site
from crestcut.work.slopes import BEVELLED, VERTICAL
from crestcut.work.workable import Workable

LEFT_BY_MACHINE = 0.003  # m kept back from a machine: it does not follow a line to the millimetre
# all common practice, no source; hours for the whole, or for each
CHALK, FINISH, MACHINE_THERE = Range(0.3, 0.6), Range(0.3, 0.6), Range(0.5, 1.0)
DOT, LINE, SETTING = Range(1.5 / 60, 3 / 60), Range(2 / 60, 4 / 60), Range(5 / 60, 10 / 60)
SLOT, READING = Range(15 / 3600, 40 / 3600), Range(1 / 60, 2 / 60)
FINS = Range(2.0, 4.0)  # m2 of fins knocked off in an hour


@dataclass(frozen=True)
class Step:
    """One thing to do. ``other`` : hours of what is not the tool's own work; the rest as for ``Pass``."""

    tool: str
    what: str
    other: Range
    running: Range = IDLE
    slot: float = 0.0
    taken: float = 0.0
    key: str = ""


def make_passes(
    site: Site, work: Workable, method: Method, tools: Sequence[Tool], jig: Jig | None, out: SetOut
) -> tuple[Pass, ...]:
    """The work in order, with hours as ranges. Empty where nothing is to be cut or no tool is known."""
    if not out.outline or not tools:
        return ()
    cup, cell = tools[-1], site.cell**2
    total, core = (float(d.sum()) * cell for d in (site.depth, np.where(work.core, site.depth, 0.0)))
    steps = [_set_out(out, jig)]
    if method == Method.BOARD and jig is not None:
        guided = float(np.where(work.covered, site.depth, 0.0).sum()) * cell
        steps += [_lift(jig, lift) for lift in jig.lifts]
        steps.append(_smooth(cup, jig, guided - sum(lift.taken for lift in jig.lifts)))
        if core - guided > 1e-6:
            steps.append(_to_dots(cup, core - guided, "What no board guides", ""))
        steps.append(_feather(cup, site, total - core))
    elif method == Method.MACHINE and len(tools) > 1:
        taken = np.maximum(site.depth - LEFT_BY_MACHINE, 0.0)
        steps.append(_machine(tools[0], taken, site.cell))
        steps.append(
            _to_dots(
                cup,
                total - float(taken.sum()) * cell,
                "What the machine has left, and the edges",
                _walk(site),
            )
        )
    else:
        steps.append(_to_dots(cup, total, "All of it, the middle first", _walk(site)))
    steps.append(
        Step(
            "String, straightedge" + (", stick" if jig is not None else ""),
            f"Check the {len(out.strings)} readings of the string table. Grind what is proud, check"
            f" again. Then the"
            " vehicle, at walking pace, somebody watching.",
            summed([FINISH, READING.times(len(out.strings))]),
        )
    )
    return numbered(steps)


def numbered(steps: Sequence[Step]) -> tuple[Pass, ...]:
    """Passes from steps. Hours are kept as they are printed, to a tenth and never none: so that what is
    printed adds up to the whole."""
    out = []
    for k, s in enumerate(steps, start=1):
        hours = summed([s.other, s.running])
        span = Range(round(hours.low, 1), max(round(hours.high, 1), 0.1))
        out.append(Pass(k, s.tool, s.what, span, s.running, s.slot, s.taken, s.key))
    return tuple(out)


def _set_out(out: SetOut, jig: Jig | None) -> Step:
    lines = 2 * len(jig.rows) if jig is not None else 0
    across = len({c.offset for c in out.contours})
    chalk = " and the lines on which blocks slide" if lines else ""
    contours = f" From {across} lines across the cut chalk the contours." if across else ""
    return Step(
        "Chalk, tape, hammer drill with a depth stop",
        f"Chalk line of travel, tyre lines, stop lines{chalk}.{contours} Drill the {len(out.dots)} dots"
        f" (shrouded bit or"
        " vacuum held to it), paint their bottoms. Close drains and door gaps.",
        summed([CHALK, DOT.times(len(out.dots)), LINE.times(lines + across)]),
    )


def _lift(jig: Jig, lift: Lift) -> Step:
    """Slots of every setting that this lift reaches, then the fins."""
    tool, (name, thick) = jig.tool, jig.spacer
    assert tool.speed is not None
    cuts = max(math.ceil(lift.deepest / tool.step - 1e-9), 1)
    under = (
        f"{lift.spacers} x {name} ({millimetres(thick)}) under both ends of the board"
        if lift.spacers
        else "no spacer"
    )
    some = len(lift.rows) < len(jig.rows)
    which = (
        f" Only setting{'s' if len(lift.rows) > 1 else ''} {', '.join(map(str, lift.rows))}." if some else ""
    )
    head = (
        f"Lift {lift.number} of {len(jig.lifts)}, {under}."
        if len(jig.lifts) > 1
        else "Blocks as the jig table."
    )
    first = (
        f" Measure the reach. Slots {millimetres(tool.pitch, 0)} apart between the stop lines, both"
        f" blocks moved along"
        f" their chalk lines from slot to slot, {both_at_most(tool.step)} or less a cut. Knock the fins"
        f" off with a cold"
        " chisel held flat (eyes, hands: chips fly) or the shrouded cup." + _slurry(tool)
        if lift.number == 1
        else " As lift 1; measure the reach again."
    )
    amount = (
        f" {lift.slots} slots, {millimetres(lift.deepest)} in {cuts} cut{'s' if cuts > 1 else ''}:"
        f" {lift.metres:.0f} m at {span_words(tool.speed, 'm an hour', 0)}."
    )
    other = [SETTING.times(len(lift.rows)), SLOT.times(lift.slots), hours_at(lift.area, FINS)]
    return Step(
        tool.name, f"{head}{which}{first}{amount}", summed(other), hours_at(lift.metres, tool.speed),
        lift.metres, lift.taken, tool.key,
    )  # fmt: skip


def _smooth(cup: Tool, jig: Jig, volume: float) -> Step:
    what = (
        f"Smooth: the last {both(jig.smoothing)} in crossing passes until the dots are just gone and the"
        f" stick passes:"
        f" {_amount(cup, volume)}.{_slurry(cup)}"
    )
    return Step(
        cup.name, what, SETTING.times(len(jig.rows)), hours_at(volume * 1000, cup.rate), 0.0, volume, cup.key
    )


def _to_dots(cup: Tool, volume: float, what: str, more: str) -> Step:
    words = (
        f"{what}: grind in crossing passes, deepest contour first, until the dots are just gone; lay the"
        f" straightedge"
        f" from dot to dot. Run out evenly to the stop lines: {_amount(cup, volume)}.{_slurry(cup)}{more}"
    )
    return Step(cup.name, words, IDLE, hours_at(volume * 1000, cup.rate), 0.0, volume, cup.key)


def _machine(tool: Tool, taken: np.ndarray, cell: float) -> Step:
    """Zones of equal depth: a pass wherever the step is still to go, and nothing of the last 3 mm."""
    count = max(math.ceil(float(taken.max()) / tool.step - 1e-9), 1)
    zones, metres = [], 0.0
    for k in range(count):
        deeper = LEFT_BY_MACHINE + k * tool.step
        run = float((taken > k * tool.step).sum()) * cell**2 / tool.pitch
        zones.append(f"{k + 1} where it is deeper than {millimetres(deeper, 0)} ({run:.1f} m)")
        metres += run
    volume = float(taken.sum()) * cell**2
    return Step(
        tool.name,
        f"Passes of {both_at_most(tool.step)} at most, lanes {millimetres(tool.pitch, 0)} apart, in"
        f" zones between the"
        f" contours: {'; '.join(zones)}. {metres:.1f} m in all, {_amount(tool, volume)}. It stops"
        f" {millimetres(LEFT_BY_MACHINE, 0)} above the bottom of every dot and stays off the"
        f" feather.{_slurry(tool)}",
        MACHINE_THERE, hours_at(volume * 1000, tool.rate), 0.0, volume, tool.key,
    )  # fmt: skip


def _amount(tool: Tool, volume: float) -> str:
    return f"{litres(volume)} at {span_words(tool.rate, 'litres an hour', 1)}"


def _slurry(tool: Tool) -> str:
    if not tool.wet:
        return ""
    return (
        " Wet: dam the slurry, vacuum it up before it dries, never to a drain; a GFCI (residual-current"
        " device) on the supply."
    )


def _walk(site: Site) -> str:
    """Edges that nobody trips over: 2010 ADA Standards 303 where people walk."""
    if float(site.depth.max(initial=0.0)) <= VERTICAL:
        return ""
    return (
        f" Where people walk (2010 ADA 303): up to {both_at_most(VERTICAL)} may stand, to"
        f" {both_at_most(BEVELLED)} bevel 1:2 or flatter, more is a ramp 1:12."
    )


def _feather(cup: Tool, site: Site, volume: float) -> Step:
    wedge, feather = 0.1, site.feather
    return Step(
        cup.name,
        f"Feather by eye to the stop lines, evenly, 1:{1 / feather:.0f}, {_amount(cup, volume)}: saw a wedge"
        f" {wedge * 1000:.0f} mm long and {wedge * feather * 1000:.0f} mm high; laid tip to the stop line,"
        f" its top lies level with the untouched concrete. Nothing may trip.{_walk(site)}",
        Range(0.1, 0.3), hours_at(volume * 1000, cup.rate), 0.0, volume, cup.key,
    )  # fmt: skip
