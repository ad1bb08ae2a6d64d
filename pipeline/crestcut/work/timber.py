"""Boards and blocks from what a timber yard has, and how far a board hangs through.

Dressed sizes are softwood's (American Softwood Lumber Standard, PS 20); hardwood charts differ. Timber swells
and is sold by name: the block is measured, never trusted.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from crestcut.base.errors import CrestcutError
from crestcut.base.units import INCH, both, millimetres
from crestcut.work.jig_records import Board, Range

GRAVITY = 9.80665  # m/s2, standard
PSI = 6894.757  # Pa
SOFTWOOD_STIFFNESS = 1.4e6 * PSI  # Pa: the low end of 1.4 to 1.6 million psi (from memory)
SOFTWOOD_DENSITY = 26 * 16.018463  # kg/m3: 26 lb/ft3, dry softwood (common practice, no source)
HAND = 30.0  # N: what a hand adds to the tool's weight (common practice, no source)
SAG_ALLOWED = 0.0005  # m at mid-span under the tool: more asks for a deeper strongback
SCREW = Range(0.003, 0.025)  # m a screw head may stand out of a block and still be firm
LEAST_BLOCK = 0.006  # m: the thinnest sheet that is stock; a board on less lies on the slab's own roughness
HIGHEST_BLOCK = 0.150  # m: a higher stack rocks
MOST_PIECES = 4  # in one stack
TENTH = 1e-4  # m: to which a person's own pieces are measured
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


# in sixteenths of an inch, and in millimetres
STOCK_INCH = {name: round(16 * thick) for name, thick in DRESSED_INCH.items()} | {
    "1/8 in hardboard": 2,
    "1/16 in shim": 1,
}
STOCK_MM = {name: round(thick) for name, thick in DRESSED_MM.items()} | {
    "3 mm hardboard": 3,
    "2 mm shim": 2,
    "1 mm shim": 1,
}


@dataclass(frozen=True)
class Stock:
    """What blocks are made of: names with their thickness in whole ``unit``s, m."""

    unit: float
    pieces: tuple[tuple[str, int], ...]

    @cached_property
    def heights(self) -> tuple[float, ...]:
        """Every height that few pieces make, m, lowest first."""
        return tuple(k * self.unit for k in sorted(self._made))

    @cached_property
    def _made(self) -> dict[int, tuple[str, ...]]:
        """Units to the fewest pieces that make them."""
        made: dict[int, tuple[str, ...]] = {}
        most = round(HIGHEST_BLOCK / self.unit)
        for count in range(1, MOST_PIECES + 1):
            for several in itertools.combinations_with_replacement(self.pieces, count):
                total = sum(thick for _, thick in several)
                if LEAST_BLOCK <= total * self.unit and total <= most:
                    made.setdefault(total, tuple(name for name, _ in several))
        return made

    def stack(self, height: float) -> tuple[str, ...]:
        """The pieces of a block as high as one of ``heights``, thickest first."""
        return self._made[round(height / self.unit)]


def stock_of(given: Sequence[float] | None, metric: bool) -> Stock:
    """What the job names, m, or what a yard sells: whole millimetres, or 1/16 in where the tape is in inches.

    Raises CrestcutError where nothing of it makes a block.
    """
    if given is None:
        return (
            Stock(0.001, tuple(STOCK_MM.items())) if metric else Stock(INCH / 16, tuple(STOCK_INCH.items()))
        )
    pieces = {f"{both(v)} piece": round(v / TENTH) for v in sorted(given, reverse=True)}
    found = Stock(TENTH, tuple((name, thick) for name, thick in pieces.items() if thick > 0))
    if not found.heights:
        raise CrestcutError(
            f"no {MOST_PIECES} of them make a block of {millimetres(LEAST_BLOCK, 0)} to"
            f" {millimetres(HIGHEST_BLOCK, 0)}",
            "[work] blocks",
            'name what lies at hand, shims and sheets too, like ["1 mm", "3 mm", "6 mm", "18 mm"]',
        )
    return found
