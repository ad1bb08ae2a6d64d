"""Which way of working: dots and contours, board and blocks, or a machine first; and with which tools."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray
from crestcut.base.units import litres
from crestcut.job import Method, WorkWish
from crestcut.work.jig import lifts_needed
from crestcut.work.jig_records import Tool

SMALL_DEPTH, SMALL_VOLUME = 0.010, 0.002  # m, m3: less goes by hand to dots (common practice, no source)
MACHINE_VOLUME = 0.010  # m3: more is work for a machine, where one can stand (common practice, no source)
MOST_LIFTS = (
    3  # a tool that needs more is too small, where there is a larger one (common practice, no source)
)
SLOPE_BASE = 0.20  # m over which the ground's slope is taken
STEEP_SHARE = 90  # % of the cut is flatter than the slope that a machine must stand on
HIRE = {
    Method.DOTS: "a hand grinder with a shrouded diamond cup",
    Method.BOARD: "a hand grinder in a shrouded base that rides on a board, and a shrouded diamond cup",
    Method.MACHINE: "a scarifier or floor grinder, and a shrouded diamond cup",
}


@dataclass(frozen=True)
class Amount:
    """Of the least cut: deepest m, volume m3, and how steep the ground under it is, rise over run."""

    deepest: float
    volume: float
    slope: float


@dataclass(frozen=True)
class Chosen:
    """A method, its tools in order of use (none where no tool file is there), and why."""

    method: Method
    tools: tuple[Tool, ...]
    why: str


def slope_under(ground: FloatArray, cut: BoolArray, cell: float) -> float:
    """Slope that nine tenths of the cut stay under, rise over run; NaN where nothing of it is measured."""
    far = max(round(SLOPE_BASE / 2 / cell), 1)
    padded = np.pad(ground, far, constant_values=np.nan)
    ny, nx = ground.shape
    along = padded[far : far + ny, 2 * far :] - padded[far : far + ny, :nx]
    across = padded[2 * far :, far : far + nx] - padded[:ny, far : far + nx]
    slope = np.hypot(along, across)[cut] / (2 * far * cell)
    slope = slope[~np.isnan(slope)]
    return float(np.percentile(slope, STEEP_SHARE)) if len(slope) else math.nan


def choose_method(
    wish: WorkWish, tools: Sequence[Tool], amount: Amount, metric: bool = False, because: str = "asked for"
) -> Chosen:
    """The method that the job asks for, or the one that depth, volume, slope and tools speak for.

    because : what is said of one that was asked for.

    Raises CrestcutError where the one asked for cannot be, or no tool at hand serves any.
    """
    ways = _ways(tools, amount, metric)
    small = amount.deepest <= SMALL_DEPTH and amount.volume <= SMALL_VOLUME
    large = amount.volume > MACHINE_VOLUME
    order = (
        (Method.DOTS, Method.BOARD, Method.MACHINE) if small
        else (Method.MACHINE, Method.BOARD, Method.DOTS) if large
        else (Method.BOARD, Method.DOTS, Method.MACHINE)
    )  # fmt: skip
    if wish.method is not None:
        why_not = ways[wish.method]
        if isinstance(why_not, str) and tools:
            raise CrestcutError(
                f'"{wish.method}" cannot be: {why_not}', "[work] method", _instead(ways, wish.method)
            )
        return Chosen(
            wish.method, () if isinstance(why_not, str) else why_not, _why(wish.method, amount, because)
        )
    if not tools:
        return Chosen(order[0], (), "no tool files were found")
    method = next((m for m in order if not isinstance(ways[m], str)), None)
    if method is None:
        raise CrestcutError(
            f"none of {', '.join(t.key for t in tools)} can do it: {ways[order[0]]}", "[work] tools",
            f"hire {HIRE[order[0]]}, and name its file there",
        )  # fmt: skip
    found = ways[method]
    assert not isinstance(found, str)
    size = (
        "a small cut"
        if small
        else "a large cut"
        if large
        else "more than a hand keeps even, less than a machine is worth"
    )
    missed = f"; not {order[0]}: {ways[order[0]]}" if method != order[0] else ""
    return Chosen(method, found, _why(method, amount, f"{size}{missed}"))


def _why(method: Method, amount: Amount, because: str) -> str:
    return (
        f"{method}, for {amount.deepest * 1000:.1f} mm and {litres(amount.volume)} that must go at least, on"
        f" ground of {slope_words(amount.slope)}: {because}"
    )


def slope_words(slope: float) -> str:
    """As printed."""
    return "unknown slope" if math.isnan(slope) else f"{slope:.0%}"


def _instead(ways: Mapping[Method, tuple[Tool, ...] | str], asked: Method) -> str:
    others = [f'"{m}"' for m, way in ways.items() if m != asked and not isinstance(way, str)]
    return f"write {' or '.join(others)}" if others else f"hire {HIRE[asked]}"


def _ways(tools: Sequence[Tool], amount: Amount, metric: bool) -> dict[Method, tuple[Tool, ...] | str]:
    """For every method its tools in order, the lightest that serve, or why there is no such way."""
    by_mass = sorted(tools, key=lambda t: (t.mass, t.key))
    cup = next((t for t in by_mass if t.by_hand and t.use == "face"), None)
    if cup is None:
        return dict.fromkeys(Method, "nothing at hand grinds a face to the dots")
    ways: dict[Method, tuple[Tool, ...] | str] = {Method.DOTS: (cup,)}
    lifts, short = [], "nothing at hand cuts slots from a board"
    for blade in (t for t in by_mass if t.by_hand and t.use == "kerf"):
        try:
            lifts.append((lifts_needed(blade, amount.deepest, metric), blade))
        except CrestcutError as error:
            short = error.what
    enough = [blade for count, blade in lifts if count <= MOST_LIFTS]
    best = enough[0] if enough else min(lifts, key=lambda each: each[0])[1] if lifts else None
    ways[Method.BOARD] = short if best is None else (best, cup)
    machines = [t for t in by_mass if not t.by_hand]
    stands = [t for t in machines if t.steepest >= amount.slope]  # on none where the slope is not known
    if stands:
        ways[Method.MACHINE] = (max(stands, key=lambda t: t.rate.high), cup)
    elif machines:
        most = max(machines, key=lambda t: t.steepest)
        unknown = f"how steep the ground under the cut is was not measured; the {most.name} stands on"
        ways[Method.MACHINE] = (
            f"{unknown} {most.steepest:.0%}"
            if math.isnan(amount.slope)
            else f"the ground under the cut is {amount.slope:.0%} steep and the {most.name} stands on"
            f" {most.steepest:.0%}"
        )
    else:
        ways[Method.MACHINE] = "no machine is at hand"
    return ways
