"""The board on two blocks, two rails, and datum spots on a floor, as records. SI; stations and offsets from
the line's start.
"""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.base.units import at_least, both_at_least

SLIP = 0.00025  # m: on the safe side of the finished concrete
STICK_INCHES = 64  # parts of an inch that a stick is sawn to


@dataclass(frozen=True)
class Range:
    """From the least to the most one should reckon with."""

    low: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.high:
            raise ValueError(f"range: low {self.low} is above high {self.high}")

    def times(self, factor: float) -> Range:
        """Both ends multiplied by a positive factor."""
        return Range(self.low * factor, self.high * factor)


@dataclass(frozen=True)
class Tool:
    """A generic tool as its file in ``configs/tools`` gives it. Lengths m, rates as ranges, every figure with
    its source.

    task : row of the dust table (grinder, hand saw, floor machine).  use : kerf | face: cuts slots or grinds
    a face.
    wheel : diameter, None for machines without one.  reach : below its base, guard and shroud fitted, worn to
    new; None where it has no base that rides on a board.  kerf : width of a slot.  pitch : spacing of slots
    or width of a pass.  step : one pass deep.
    rate : litres of concrete an hour.  life : litres a wheel or set lasts.  vibration : hand-arm, m/s2.
    offset : of the wheel's plane from the edge of the board it rides on.
    """

    key: str
    name: str
    task: str
    use: str
    wheel: float | None
    reach: Range | None
    kerf: float
    pitch: float
    step: float
    rate: Range
    life: Range
    vibration: Range
    mass: float
    offset: float
    by_hand: bool
    wet: bool
    source: str

    @staticmethod
    def plain() -> Tool:
        """No tool at all: only its reach counts, where blocks are placed for a string."""
        nothing = Range(0.0, 0.0)
        return Tool(
            "",
            "no tool",
            "",
            "kerf",
            None,
            Range(0.05, 0.05),
            0,
            0.09,
            0.01,
            nothing,
            nothing,
            nothing,
            0,
            0,
            True,
            False,
            "",
        )


@dataclass(frozen=True)
class Ties:
    """A place by two tapes pulled over the slab from two marks; ``side`` as seen from the first to the
    second. Metres, degrees.
    """

    first: str
    first_distance: float
    second: str
    second_distance: float
    side: str
    crossing: float


@dataclass(frozen=True)
class Board:
    """What bridges the blocks. ``sag`` : at mid-span under its own weight and the tool's, m; ``own_sag`` :
    the first part of it.
    """

    name: str
    thickness: float
    length: float
    own_sag: float
    sag: float


@dataclass(frozen=True)
class JigRow:
    """One straight setting of the board for one strip of slots. Stations along the line, offsets left of
    it, m.

    offset : middle of the strip; low, high : its first and last slot.  start, stop : where the cutter is let
    down and lifted, on the low and on the high side.  rear, front : height of the two blocks in the last
    lift, m; rear_at, front_at : their stations.  rear_stack, front_stack : numbers of the stacks that
    make them.
    deepest : deepest cut, m.  raise_first : how much higher both blocks must stand first for the board to
    clear the ridge, m; spacers : how many spacers that is.  part : of the underside, that sets this height.
    """

    lane: int
    offset: float
    low: float
    high: float
    start: tuple[float, float]
    stop: tuple[float, float]
    rear_at: float
    front_at: float
    rear: float
    front: float
    rear_stack: str
    front_stack: str
    deepest: float
    raise_first: float
    spacers: int
    part: str


@dataclass(frozen=True)
class Lift:
    """``spacers`` under both ends, ``raised`` by so much above the last height, m.  ``deepest`` : deepest cut
    of this lift, m.
    """

    number: int
    spacers: int
    raised: float
    deepest: float


@dataclass(frozen=True)
class Stack:
    """A block from stock: its number (letters are chalk marks), pieces (names), their sum, and how far the
    fine-adjusting screw stands out; m.
    """

    number: str
    pieces: tuple[str, ...]
    timber: float
    screw: Range


@dataclass(frozen=True)
class Spot:
    """A place on sound, untouched concrete where a block stands: station and offset, m, tapes to find it
    again, and the block's height, m.
    """

    name: str
    station: float
    offset: float
    block: float
    ties: Ties | None


@dataclass(frozen=True)
class Rails:
    """Two rails for a shrouded base where no board can follow. Each stands on two blocks on printed spots.

    why : what keeps the board from it.  low, high, first, last : the piece, offsets and stations, m.
    spots : left rail rear and front, right rail rear and front; empty where no blocks can stand.
    leaves : what the rails leave at most over the finished surface, m: that goes by the drill dots.
    """

    name: str
    why: str
    low: float
    high: float
    first: float
    last: float
    spots: tuple[Spot, ...]
    leaves: float


@dataclass(frozen=True)
class Jig:
    """The board on two blocks. ``reach`` : of the cutter below the board, guard and shroud fitted, new;
    ``worn`` : after wear.

    smoothing : what the cup takes after the slots, m.  stick : go/no-go stick under the board, reach +
    smoothing, m.  spacer : what raises both blocks by one lift, its name and thickness, m.
    step : between slots, across the strip, m.  rails : where a board cannot follow.  cannot : in words, and
    what serves there.  deeper : how much deeper than the plan a strip may lie, m.
    """

    tool: Tool
    board: Board
    reach: float
    worn: float
    smoothing: float
    rows: tuple[JigRow, ...]
    lifts: tuple[Lift, ...]
    stacks: tuple[Stack, ...]
    spacer: tuple[str, float]
    step: float
    rails: tuple[Rails, ...]
    cannot: tuple[str, ...]
    deeper: float

    @property
    def below(self) -> float:
        """Finished concrete below the board, m."""
        return self.reach + self.smoothing

    @property
    def stick(self) -> float:
        """Stick that must pass between board and finished concrete, m: 1/4 mm on the safe side."""
        return at_least(self.below + SLIP)


@dataclass(frozen=True)
class FloorJig:
    """High spots of a floor: blocks on printed datum spots, exactly as high as the cutter reaches where the
    spot is at the level wanted.

    spots : every datum spot.  pairs : names of the two spots that one board bridges.  reach : below the
    board, m; worn.
    deepest, litres : of what goes.
    """

    tool: Tool
    board: Board
    reach: float
    worn: float
    smoothing: float
    spots: tuple[Spot, ...]
    pairs: tuple[tuple[str, str], ...]
    deepest: float
    litres: float

    @property
    def below(self) -> float:
        """Finished floor below the board, m."""
        return self.reach + self.smoothing

    @property
    def stick(self) -> float:
        """Stick that must pass between board and finished floor, m: 1/4 mm on the safe side."""
        return at_least(self.below + SLIP)


def stick_words(jig: Jig | FloorJig) -> str:
    """ "13.0 mm (33/64 in)": sawn so long it is never too short."""
    return both_at_least(jig.stick, denominator=STICK_INCHES)
