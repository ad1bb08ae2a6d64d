"""What is found of a floor, as records."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum

from crestcut.base.grid import FloatArray, HeightGrid, IntArray
from crestcut.floor.numbers import Numbers
from crestcut.terrain import Surface

TELLS = 0.0003  # m: what a feeler under a straightedge tells apart (common practice, no source)
VERDICTS = ("meets", "does not meet", "cannot tell")


@dataclass(frozen=True)
class Figure:
    """A figure of the floor and how sure it is. m for gaps and heights, a plain number for F-numbers.

    name : what it is, in words.  seen : of the floor as it is drawn, the mean of all it may be: smoother than
    any of them.  estimate : their median.  interval : 95 %.  asked : the limit, None where it is only told.
    at_least : the figure must reach the limit, else must not pass it.  chance : that it keeps to the limit.
    missed : that the place likeliest to pass the limit does, or that an F-number does not reach it.
    """

    name: str
    seen: float
    estimate: float
    interval: tuple[float, float]
    asked: float | None = None
    at_least: bool = False
    chance: float | None = None
    missed: float | None = None


@dataclass(frozen=True)
class Spot:
    """A high spot to grind, or a low one to fill. Places are site x, y, m.

    xy : where it is highest (lowest).  stands : there over (negative: below) the floor's general level, m.
    deepest : most that is to go (or to be filled), m.  area m2, volume m3.  box : u, v of its two corners, m.
    level : of the cut (or the fill) over the general level, m.
    """

    name: str
    xy: tuple[float, float]
    stands: float
    deepest: float
    area: float
    volume: float
    box: tuple[float, float, float, float]
    level: float


@dataclass(frozen=True)
class Laid:
    """A straightedge laid where its gap is largest: both feet and the place of the gap, site x, y, m."""

    first: tuple[float, float]
    second: tuple[float, float]
    at: tuple[float, float]
    gap: float


class FloorDoubt(StrEnum):
    """What of an area keeps a floor from being judged. Of what is covered nothing is said; the others leave
    no verdict, ``UNSEEN`` where it would be 'meets'."""

    TWICE = "seen twice"  # two layers of floor; size: m apart
    UNSEEN = "not seen"  # no floor was measured, and nothing was seen to stand there; no size
    COVERED = "covered"  # something stands there; size: its height, m


@dataclass(frozen=True)
class FloorFinding:
    """A doubt, site x, y of its middle, m, how large it is, m2, and its size, m (NaN where it has none)."""

    doubt: FloorDoubt
    xy: tuple[float, float]
    area: float
    size: float = math.nan


@dataclass(frozen=True, eq=False)
class Levelling:
    """What to grind and what to fill, and the proof that it is enough.

    depth, fill : (ny, nx) m, 0 where nothing is done, NaN not measured.  general : the level that spots are
    told from, m.  claim : least (no shallower cut keeps to the rule anywhere), maximal (no high spot can be
    left higher by ``STEP`` of ``levels``), none (nothing is cut).  reached : with the low spots filled the
    rule is kept. ground_only : worst figure (m) with nothing filled; filled : with the low spots filled.
    short_by : m, 0 where reached.  binding : limits that keep it from being reached.
    """

    depth: HeightGrid
    fill: HeightGrid
    general: HeightGrid
    high: tuple[Spot, ...]
    low: tuple[Spot, ...]
    claim: str
    reached: bool
    ground_only: float
    filled: float
    short_by: float = 0.0
    binding: tuple[str, ...] = ()
    today: float = math.nan  # m: the worst figure as the floor is
    slack: float = 0.0  # m: no high spot can be left higher than this over its level
    spot_of: IntArray | None = None  # (ny, nx) index into ``high``, -1 elsewhere

    @property
    def alone_helps(self) -> bool:
        """Does grinding without the filling make the worst figure better, by more than a straightedge
        tells?"""
        return not self.low or not self.ground_only > self.today - TELLS

    @property
    def deepest(self) -> float:
        """The deepest cut, m."""
        return max((s.deepest for s in self.high), default=0.0)

    @property
    def area(self) -> float:
        """Ground, m2."""
        return sum(s.area for s in self.high)

    @property
    def volume(self) -> float:
        """Ground away, m3."""
        return sum(s.volume for s in self.high)


@dataclass(frozen=True, eq=False)
class Judged:
    """A floor before and after.

    surface : the floor alone: nodes outside the area asked for are not measured.  gap : (ny, nx) m, the
    largest gap under the straightedge at every node, on the raster ``coarse``; None where none is asked for.
    figures : what was asked, then what is only told.  after : the same once ground and filled; ground_after :
    with nothing filled.  chance : that the floor keeps to all that is asked.  missed : the largest of the
    figures' own.  numbers : the F-number lines, None where no line is long enough.  contradictions :
    hand measurements that do not agree.
    """

    surface: Surface
    area: float
    verdict: str
    chance: float
    missed: float
    figures: tuple[Figure, ...]
    after: tuple[Figure, ...]
    laid: Laid | None
    gap: HeightGrid | None
    numbers: Numbers | None
    levelling: Levelling
    provisional: bool
    told: int = 0  # hand readings used
    contradictions: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    lines: tuple[FloatArray, ...] = field(
        default=()
    )  # (n, 2) site x, y of the readings of each F-number line
    findings: tuple[FloorFinding, ...] = ()  # what was not judged, and why; the largest first
