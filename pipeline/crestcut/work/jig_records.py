"""The board on two blocks, two rails, and datum spots on a floor, as records. SI; stations and offsets from
the line's start.
"""

from __future__ import annotations

import math
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
    rate : litres of concrete an hour.  speed : metres of slot an hour, one step deep; None where it cuts
    none.
    life : litres a wheel or set lasts.  vibration : hand-arm, m/s2.  offset : of the wheel's plane from the
    edge of the board it rides on.  steepest : ground it stands on, rise over run.
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
    speed: Range | None = None
    steepest: float = math.inf


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
    """One setting of the board for a run of slots. Stations along the line, offsets left of it, m.

    lane : its number.  low, high : offsets of its first and last slot.  start, stop : where the cutter is let
    down and lifted; rear_at, front_at : where the blocks' middles stand; each at the first and at the last
    slot, straight between them.  rear, front : height of the two blocks in the last lift, m.
    deepest : deepest cut, m.  raise_first : how much higher both blocks must stand first for the board to
    clear the ridge, m; spacers : how many spacers that is.  part : of the underside, that sets this height.
    """

    lane: int
    low: float
    high: float
    start: tuple[float, float]
    stop: tuple[float, float]
    rear_at: tuple[float, float]
    front_at: tuple[float, float]
    rear: float
    front: float
    deepest: float
    raise_first: float
    spacers: int
    part: str

    @property
    def name(self) -> str:
        """As on every page: "J1"."""
        return f"J{self.lane}"


@dataclass(frozen=True)
class Lift:
    """``spacers`` under both ends, ``raised`` by so much above the last height, m.  ``deepest`` : deepest cut
    of this lift, m.  rows : numbers of the settings that are cut in it.  slots, metres : of slot, every cut
    of it counted; area : of its fins, m2; taken : concrete gone with it, m3.
    """

    number: int
    spacers: int
    raised: float
    deepest: float
    rows: tuple[int, ...]
    slots: int
    metres: float
    area: float
    taken: float


@dataclass(frozen=True)
class Block:
    """A height, m, and the pieces of stock that make it, thickest first."""

    height: float
    pieces: tuple[str, ...]


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
    smoothing, m.  blocks : every height in use.  spacer : what raises both blocks by one lift, its name and
    thickness, m.  step : between slots, m.  rails : where a board cannot follow.  cannot : in words, and what
    serves there.
    """

    tool: Tool
    board: Board
    reach: float
    worn: float
    smoothing: float
    rows: tuple[JigRow, ...]
    lifts: tuple[Lift, ...]
    blocks: tuple[Block, ...]
    spacer: tuple[str, float]
    step: float
    rails: tuple[Rails, ...]
    cannot: tuple[str, ...]

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
    deepest, litres : of what goes.  timber : what every block is sawn of; a screw in its top makes up the
    rest.
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
    timber: Block

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
