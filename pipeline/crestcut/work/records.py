"""What the person on the slab is handed, as records: every sheet is drawn from these and nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from crestcut.base.cautions import Caution
from crestcut.chance import Chance, Left
from crestcut.job import Asked, Method
from crestcut.work.ground_records import WalkSlope, Water
from crestcut.work.jig_records import FloorJig, Jig, Range, Ties
from crestcut.work.trade import TradeWords

IDLE = Range(0.0, 0.0)


class ReleaseState(StrEnum):
    """May this be cut?"""

    OK = "ok"
    PROVISIONAL = "provisional"
    NOT_FOR_CUTTING = "not for cutting"


class ReasonCode(StrEnum):
    """Why not."""

    UNANSWERED = "unanswered"
    NO_SOURCE = "no source"
    WRONG_SOURCE = "source cannot know"
    NEVER = "never released"
    NOT_LOCATED = "not located"
    NO_KEEP_AREA = "no keep area"
    CONTRADICTED = "answers contradict each other"
    WRONG_KIND = "not concrete on the ground"
    NOT_DRILLED = "thickness not drilled"
    NO_PERMISSION = "no permission"
    NO_PERMIT = "no permit"
    FALLS_SHORT = "cut falls short"
    NO_DRAIN = "does not drain"
    READINGS = "readings contradict each other"
    RAY_CAST = "ray casting contradicts the sweep"
    SCAN = "scan carries the margin"


# nothing that is written under [site] or [slab] would change these
NO_ANSWER_HELPS = frozenset({
    ReasonCode.NEVER, ReasonCode.FALLS_SHORT, ReasonCode.NO_DRAIN, ReasonCode.READINGS,
    ReasonCode.RAY_CAST, ReasonCode.SCAN,
})  # fmt: skip


@dataclass(frozen=True)
class Reason:
    """Why a release is not ok: ``words`` for people, ``code`` for programs; ``about`` which answer."""

    code: ReasonCode
    words: str
    about: Asked | None = None

    def __str__(self) -> str:
        return self.words


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
    """May this be cut? ``reasons`` (empty only when ok); ``questions`` are what is still open.

    known : what was answered and how it is known, one sentence each, printed on every released sheet.
    """

    state: ReleaseState
    reasons: tuple[Reason, ...]
    questions: tuple[Question, ...] = ()
    known: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if (self.state == ReleaseState.OK) != (not self.reasons):
            raise ValueError("reasons: given exactly when the state is not ok")

    @property
    def stamp(self) -> str:
        """What is stamped across every sheet; empty when released."""
        return "" if self.state == ReleaseState.OK else self.state.upper()

    @property
    def words(self) -> tuple[str, ...]:
        """The reasons in plain sentences."""
        return tuple(reason.words for reason in self.reasons)


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
class Contour:
    """On the line across the cut at ``offset`` it is ``level`` deep or more from ``first`` to ``last``; m."""

    offset: float
    level: float
    first: float
    last: float


@dataclass(frozen=True)
class StringRow:
    """Acceptance: a string on two equal blocks on untouched concrete. At ``at`` from the rear block it must
    read ``least`` or more, m.

    lane : number of the string.  most : what it reads where the cut is 3 mm deeper.
    """

    lane: int
    offset: float
    rear_at: float
    front_at: float
    blocks: float
    at: float
    least: float
    most: float

    @property
    def name(self) -> str:
        """As on every page: "S1"."""
        return f"S{self.lane}"


@dataclass(frozen=True)
class SetOut:
    """Where everything goes. ``marks`` : name, station, offset.  ``contours`` : empty where the board does
    all. ``outline`` : offset, first and last station of the cut, m.  ``core`` : the same of what the board
    or the hand cuts; between the two lies the feather.
    ``tyres`` : names and offsets of the lines to chalk where the tyres run, m.
    """

    marks: tuple[tuple[str, float, float], ...]
    corners: tuple[tuple[str, float, float, Ties | None], ...]
    dots: tuple[Dot, ...]
    contours: tuple[Contour, ...]
    strings: tuple[StringRow, ...]
    outline: tuple[tuple[float, float, float], ...]
    core: tuple[tuple[float, float, float], ...]
    tyres: tuple[tuple[str, float], ...]
    feather: float
    pull: float  # N on the string
    sag: float  # m, of that string
    notes: tuple[str, ...]
    every: float = 0.005  # m between contours


@dataclass(frozen=True)
class Pass:
    """One thing to do, in order. hours : as printed, from ``running`` (the tool at work) and what is done
    between.

    Of it: slot m, and concrete taken, m3; key : of the tool that takes it, empty for none.
    """

    number: int
    tool: str
    what: str
    hours: Range
    running: Range = IDLE
    slot: float = 0.0
    taken: float = 0.0
    key: str = ""


@dataclass(frozen=True)
class Silica:
    """The dust line for one tool, place and time. mask : assigned protection factor, 0 = none by ``rule``."""

    task: str
    place: str
    hours: str
    control: str
    mask: int
    airflow: float | None  # m3/s through the shroud, at least
    rule: str


@dataclass(frozen=True)
class Quantities:
    """How much, as ranges: from the plan to what hands usually take. SI.  ``volume`` : of the plan itself;
    ``flats`` : of it what flat facets take beyond the least cut.  ``tools`` : files of those whose ``wheels``
    are told.
    """

    area: float
    volume: float
    flats: float
    taken: Range
    mass: Range
    kerf_metres: float
    bags: Range
    wheels: tuple[tuple[str, Range], ...]
    hours: Range
    trigger_hours: Range
    vibration: tuple[tuple[str, Range], ...]
    notes: tuple[str, ...]
    tools: tuple[str, ...] = ()


@dataclass(frozen=True)
class Card:
    """A card to keep in the pocket."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class BoardsUnder:
    """Boards to feel a gap on, one under each tyre. thickness, before and beyond the tyre's middle, m, before
    on the way on; backwards : rolled on from ahead; dry_only : steeper than wet ground allows.
    """

    name: str
    thickness: float
    before: float
    beyond: float
    backwards: bool
    dry_only: bool


class ReadingSpot(StrEnum):
    """What is at a place of a measurement, as it is called there."""

    BLOCK_A = "block a"
    BLOCK_B = "block b"
    READ = "read here"
    FRONT_LEFT = "front left tyre"
    FRONT_RIGHT = "front right tyre"
    REAR_LEFT = "rear left tyre"
    REAR_RIGHT = "rear right tyre"
    FEEL = "feel here"
    HERE = "here"


TYRES = (ReadingSpot.FRONT_LEFT, ReadingSpot.FRONT_RIGHT, ReadingSpot.REAR_LEFT, ReadingSpot.REAR_RIGHT)


@dataclass(frozen=True)
class Measure:
    """One hand measurement worth making before anything is cut. Places as (what is there, station, offset,
    ties), m.

    expect : what the scan says will be read, m; NaN where it is not known, below zero for a touch.
    narrows : how many times narrower the answer becomes with it and all before it; NaN where not known.
    settles : what each outcome means, one sentence each.
    write : lines for the job file, the reading left open; empty where the places are not known.
    boards : to stand on for a felt gap.  cautions : how to go about it, a sentence each.
    """

    kind: str
    how: str
    expect: float
    narrows: float
    places: tuple[tuple[ReadingSpot, float, float, Ties | None], ...]
    settles: tuple[str, ...]
    write: tuple[str, ...] = ()
    boards: BoardsUnder | None = None
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True)
class Worksheet:
    """Everything the sheets are drawn from. ``jig``, ``passes`` and ``set_out`` are there only when released.

    stamp : printed across every sheet; empty only when released.  first : 'measure this first', where depths
    may still move.  marks : name, station, offset, m.  floor : blocks on datum spots, where what is left is a
    level floor.  words : the trade's words where the slab is.  check_with : what the sheets' foot says
    to check the slab with.  left : what the cut leaves, at walking pace and in use.  vehicle, today : whose
    gap, and how it stands at walking pace before anything is cut.
    """

    title: str
    stamp: str
    release: Release
    source: str
    metric: bool
    words: TradeWords
    first: tuple[Measure, ...]
    marks: tuple[tuple[str, float, float], ...]
    jig: Jig | None
    floor: FloorJig | None
    passes: tuple[Pass, ...]
    method: Method | None
    why_tools: str
    set_out: SetOut | None
    quantities: Quantities
    silica: tuple[Silica, ...]
    limits: tuple[str, ...]
    water: Water
    walks: tuple[WalkSlope, ...]
    cautions: tuple[Caution, ...]
    cards: tuple[Card, ...]
    afterwards: tuple[str, ...]
    notes: tuple[str, ...]
    check_with: str = "string, stick and vehicle"
    left: Left | None = None
    vehicle: str = ""
    today: Chance | None = None

    def __post_init__(self) -> None:
        if self.stamp != self.release.stamp:
            raise ValueError("stamp: must be the release's")
        cuts = (self.jig, self.floor, self.set_out)
        if self.stamp and (self.passes or any(sheet is not None for sheet in cuts)):
            raise ValueError("a stamped worksheet holds nothing to cut from")
