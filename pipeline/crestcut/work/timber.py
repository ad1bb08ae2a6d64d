"""Boards and blocks from what a timber yard has, and how far a board hangs through.

Dressed sizes are softwood's (American Softwood Lumber Standard, PS 20); hardwood charts differ. Timber swells
and is sold by name: the block is measured, never trusted.
"""

from __future__ import annotations

import itertools
from functools import cache

from crestcut.base.errors import CrestcutError
from crestcut.base.units import INCH, millimetres
from crestcut.work.jig_records import Board, Range, Stack

GRAVITY = 9.80665  # m/s2, standard
PSI = 6894.757  # Pa
SOFTWOOD_STIFFNESS = 1.4e6 * PSI  # Pa: the low end of 1.4 to 1.6 million psi (from memory)
SOFTWOOD_DENSITY = 26 * 16.018463  # kg/m3: 26 lb/ft3, dry softwood (common practice, no source)
HAND = 30.0  # N: what a hand adds to the tool's weight (common practice, no source)
SAG_ALLOWED = 0.0005  # m at mid-span under the tool: more asks for a deeper strongback
SCREW = Range(0.003, 0.025)  # m a screw head may stand out of a block and still be firm
# m: the thinnest sheet that is stock (1/4 in, a hair over the 6 mm sheet) and a screw just firm in it
LEAST_BLOCK = 0.25 * INCH + SCREW.low
BOARD_LONGEST = 4.8  # m: longer timber is not straight enough

DRESSED_INCH = {
    "1x (3/4 in)": 0.75, "2x (1 1/2 in)": 1.5, "2x4 on edge (3 1/2 in)": 3.5, "2x6 on edge (5 1/2 in)": 5.5,
    "2x8 on edge (7 1/4 in)": 7.25, "1/4 in sheet": 0.25, "1/2 in sheet": 0.5,
}  # fmt: skip
DRESSED_MM = {
    "6 mm sheet": 6.0, "9 mm sheet": 9.0, "12 mm sheet": 12.0, "18 mm sheet": 18.0, "27 mm board": 27.0,
    "44 mm timber": 44.0, "44x94 on edge": 94.0, "44x144 on edge": 144.0, "44x194 on edge": 194.0,
}  # fmt: skip


# laid flat under a tyre; thicker is too high a step, thinner bends into the slab's joints
FLAT_INCH = ("1/2 in sheet", "1x (3/4 in)", "2x (1 1/2 in)")
FLAT_MM = ("9 mm sheet", "12 mm sheet", "18 mm sheet", "27 mm board", "44 mm timber")


def flat_boards(metric: bool) -> dict[str, float]:
    """Name and thickness, m, of what is sold to lie flat, thinnest first."""
    if metric:
        return {name: DRESSED_MM[name] / 1000 for name in FLAT_MM}
    return {name: DRESSED_INCH[name] * INCH for name in FLAT_INCH}


def second_moment(width: float, height: float) -> float:
    """Of a rectangle bent over its height, b h^3 / 12, in the fourth power of the unit given."""
    return width * height**3 / 12


def sag_own_weight(load: float, span: float, stiffness: float, moment: float) -> float:
    """Mid-span deflection of a simply supported beam under ``load`` N/m: 5 w L^4 / (384 E I)."""
    return 5 * load * span**4 / (384 * stiffness * moment)


def sag_point_load(force: float, span: float, stiffness: float, moment: float) -> float:
    """Mid-span deflection under ``force`` N at mid-span: P L^3 / (48 E I)."""
    return force * span**3 / (48 * stiffness * moment)


def string_sag(span: float, pull: float, weight: float = 0.00685) -> float:
    """Of a string of ``weight`` N/m over ``span`` m pulled with ``pull`` N, at its middle: w L^2 / (8 T)."""
    return weight * span**2 / (8 * pull)


def choose_board(span: float, tool_mass: float, metric: bool = False) -> Board:
    """The lightest board with a strongback that hangs through by no more than 0.5 mm under the tool; else the
    stiffest.

    The 140 mm (5 1/2 in) board lies flat; its strongback stands on edge along it, screwed down, their
    stiffness added (not composite: the safe side). Raises CrestcutError over 4.8 m.
    """
    if span > BOARD_LONGEST:
        raise CrestcutError(
            f"a board over {span:.1f} m is asked for",
            "jig",
            "use rails or drill dots: timber that long is not straight enough",
        )
    flat = (0.144, 0.018, "18 mm board, 144 mm wide") if metric else (5.5 * INCH, 0.75 * INCH, "1x6 flat")
    backs = [(0.044, 0.094, "44x94"), (0.044, 0.144, "44x144"), (0.044, 0.194, "44x194")] if metric else [
        (1.5 * INCH, 3.5 * INCH, "2x4"), (1.5 * INCH, 5.5 * INCH, "2x6"), (1.5 * INCH, 7.25 * INCH, "2x8"),
    ]  # fmt: skip
    best = None
    for width, height, name in [(0.0, 0.0, ""), *backs]:
        moment = second_moment(flat[0], flat[1]) + second_moment(width, height)
        load = SOFTWOOD_DENSITY * GRAVITY * (flat[0] * flat[1] + width * height)
        own = sag_own_weight(load, span, SOFTWOOD_STIFFNESS, moment)
        full = own + sag_point_load(tool_mass * GRAVITY + HAND, span, SOFTWOOD_STIFFNESS, moment)
        words = f"{flat[2]}, {name} on edge as strongback" if name else flat[2]
        best = Board(words, flat[1], span + 0.2, own, full)
        if full <= SAG_ALLOWED:
            break
    assert best is not None
    return best


SPACERS_INCH = (
    ("1/2 in sheet", 0.5),
    ("1/4 in sheet", 0.25),
    ("1/8 in hardboard", 0.125),
    ("1/16 in shim", 0.0625),
)
SPACERS_MM = (
    ("12 mm sheet", 12.0),
    ("9 mm sheet", 9.0),
    ("6 mm sheet", 6.0),
    ("3 mm hardboard", 3.0),
    ("1.5 mm shim", 1.5),
)


def choose_spacer(most: float, metric: bool = False) -> tuple[str, float]:
    """The thickest piece of sheet no thicker than ``most`` m: laid under both ends it raises the board
    by one lift. Name, m.
    """
    stock = [(n, v / 1000) for n, v in SPACERS_MM] if metric else [(n, v * INCH) for n, v in SPACERS_INCH]
    return next(((n, v) for n, v in stock if v <= most + 1e-9), stock[-1])


def choose_stack(lowest: float, highest: float, metric: bool = False, number: int = 1) -> Stack:
    """The fewest pieces that build a block a screw can bring to any height from ``lowest`` to ``highest`` m.

    Raises CrestcutError where the screw would have to stand out too far, or no pieces fit.
    """
    if highest - lowest > SCREW.high - SCREW.low:
        raise CrestcutError(
            f"blocks from {millimetres(lowest, 0)} to {millimetres(highest, 0)} asked of one stack", "jig",
            "build one block for each group of lanes",
        )  # fmt: skip
    pieces, timber = _stack(round((highest - SCREW.high) * 1e4), round((lowest - SCREW.low) * 1e4), metric)
    if timber <= 0:
        raise CrestcutError(
            f"no stock builds a block of {millimetres(lowest, 0)}", "jig", "plane one to measure"
        )
    return Stack(str(number), pieces, timber, Range(lowest - timber, highest - timber))


@cache
def _stack(least: int, most: int, metric: bool) -> tuple[tuple[str, ...], float]:
    """Fewest pieces, one at least, whose sum (in 0.1 mm) lies between least and most, the tallest such sum;
    ((), -1) if none.
    """
    stock = (
        {k: v / 1000 for k, v in DRESSED_MM.items()}
        if metric
        else {k: v * INCH for k, v in DRESSED_INCH.items()}
    )
    for count in range(1, 5):
        fits = [
            (sum(stock[n] for n in names), names)
            for names in itertools.combinations_with_replacement(sorted(stock), count)
            if least <= sum(stock[n] for n in names) * 1e4 <= most
        ]
        if fits:
            total, names = max(fits)
            return tuple(sorted(names, key=lambda n: -stock[n])), total
    return (), -1.0
