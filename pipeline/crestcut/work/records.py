"""What the person on the slab is handed, as records: every sheet is drawn from these and nothing else."""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.work.ground_records import WalkSlope, Water

STATES = ("ok", "provisional", "not for cutting")


@dataclass(frozen=True)
class Question:
    """Something nobody has answered. ``key`` is the job file's; ``whom`` is who can answer it and how it is
    then known.
    """

    key: str
    ask: str
    whom: str


@dataclass(frozen=True)
class Release:
    """May this be cut? ``reasons`` in plain sentences (empty only when ok); ``questions`` are what is still
    open.

    known : what was answered and how it is known, one sentence each, printed on every released sheet.
    """

    state: str
    reasons: tuple[str, ...]
    questions: tuple[Question, ...] = ()
    known: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if self.state not in STATES:
            raise ValueError(f"state: one of {STATES} expected, {self.state!r} found")
        if (self.state == "ok") != (not self.reasons):
            raise ValueError("reasons: given exactly when the state is not ok")

    @property
    def stamp(self) -> str:
        """What is stamped across every sheet; empty when released."""
        return "" if self.state == "ok" else self.state.upper()


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
    """One straight setting of the board in one lane. Stations along the line from its start, offsets left of
    it, m.

    start, stop : where the cutter is let down, between the stop marks.  rear, front : height of the two
    blocks in the last lift, m. rear_at, front_at : stations of the blocks.  deepest : deepest cut under this
    setting, m.  raise_first : how much higher both blocks stand in the first lift so that the board clears
    the ridge, m.
    """

    lane: int
    offset: float
    start: float
    stop: float
    rear_at: float
    front_at: float
    rear: float
    front: float
    deepest: float
    raise_first: float


@dataclass(frozen=True)
class Lift:
    """``raised`` : blocks above their last height, m.  ``deepest`` : deepest cut of this lift, m."""

    number: int
    raised: float
    deepest: float


@dataclass(frozen=True)
class Stack:
    """A block from stock: pieces (names), their sum, and what the fine-adjusting screw adds; m."""

    pieces: tuple[str, ...]
    timber: float
    screw: Range


@dataclass(frozen=True)
class Jig:
    """The board on two blocks. ``reach`` : of the cutter below the board, guard and shroud fitted, new;
    ``worn`` : after wear.

    smoothing : what the cup takes after the slots, m.  stick : go/no-go stick under the board, reach +
    smoothing, m.
    cannot : places this jig cannot follow, and what serves instead.
    """

    tool: Tool
    board: Board
    reach: float
    worn: float
    smoothing: float
    rows: tuple[JigRow, ...]
    lifts: tuple[Lift, ...]
    stacks: tuple[tuple[str, Stack], ...]
    step: float
    cannot: tuple[str, ...]

    @property
    def below(self) -> float:
        """Finished concrete below the board, m."""
        return self.reach + self.smoothing

    @property
    def stick(self) -> float:
        """Stick that must pass between board and finished concrete, m: 1/4 mm on the safe side."""
        return self.below + 0.00025


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
class Dot:
    """A hole drilled to depth with a stop: grind until it is gone. Station and offset from the line, m; ties
    None where none cross well.
    """

    name: str
    station: float
    offset: float
    depth: float
    ties: Ties | None


@dataclass(frozen=True)
class KerfDepth:
    """Depth below the untouched concrete at one place of a lane, m."""

    lane: int
    offset: float
    station: float
    depth: float


@dataclass(frozen=True)
class StringRow:
    """Acceptance: a string on two equal blocks on untouched concrete. At ``at`` from the rear block it must
    read ``least`` or more, m.

    most : what it reads where the cut is 3 mm deeper than asked.
    """

    lane: int
    offset: float
    rear_at: float
    front_at: float
    blocks: float
    at: float
    least: float
    most: float


@dataclass(frozen=True)
class SetOut:
    """Where everything goes. ``marks`` : name, station, offset.  ``outline`` : offset, first and last station
    of the cut, m.
    """

    marks: tuple[tuple[str, float, float], ...]
    corners: tuple[tuple[str, float, float, Ties | None], ...]
    dots: tuple[Dot, ...]
    kerfs: tuple[KerfDepth, ...]
    strings: tuple[StringRow, ...]
    outline: tuple[tuple[float, float, float], ...]
    pull: float  # N on the string
    sag: float  # m, of that string
    notes: tuple[str, ...]


@dataclass(frozen=True)
class Pass:
    """One thing to do, in order."""

    number: int
    tool: str
    what: str
    hours: Range


@dataclass(frozen=True)
class Silica:
    """The dust line for one tool, place and time: 29 CFR 1926.1153 Table 1 and beyond. ``mask`` : assigned
    protection factor, 0 = none.
    """

    task: str
    place: str
    hours: str
    control: str
    mask: int
    airflow: float | None  # m3/s through the shroud, at least


@dataclass(frozen=True)
class Quantities:
    """How much, as ranges where it is not known. SI."""

    area: float
    volume: float
    mass: float
    kerf_metres: float
    bags: Range
    wheels: tuple[tuple[str, Range], ...]
    hours: Range
    trigger_hours: Range
    vibration: tuple[tuple[str, Range], ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class Card:
    """A card to keep in the pocket."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Worksheet:
    """Everything the sheets are drawn from. ``jig``, ``passes`` and ``set_out`` are there only when released.

    stamp : printed across every sheet; empty only when released.  first : 'measure this first', where depths
    may still move.
    """

    title: str
    stamp: str
    release: Release
    source: str
    metric: bool
    first: tuple[str, ...]
    jig: Jig | None
    passes: tuple[Pass, ...]
    why_tools: str
    set_out: SetOut | None
    quantities: Quantities
    silica: tuple[Silica, ...]
    limits: tuple[str, ...]
    water: Water
    walks: tuple[WalkSlope, ...]
    cautions: tuple[str, ...]
    cards: tuple[Card, ...]
    afterwards: tuple[str, ...]
    notes: tuple[str, ...]

    def __post_init__(self) -> None:
        if self.stamp != self.release.stamp:
            raise ValueError("stamp: must be the release's")
        if self.stamp and (self.jig is not None or self.passes or self.set_out is not None):
            raise ValueError("a stamped worksheet holds nothing to cut from")
