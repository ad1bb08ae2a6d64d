"""What a check of the finished work comes to."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import HeightGrid
from crestcut.chance import Chance, Left
from crestcut.contact import Contact
from crestcut.cut import CutPlan
from crestcut.job import Job
from crestcut.standing import Standing
from crestcut.terrain import Surface
from crestcut.verify.removed import Removed
from crestcut.work import Pond, Release

VERDICTS = ("done", "not yet", "cannot tell")


@dataclass(frozen=True, eq=False)
class Now:
    """One vehicle over the finished work.

    today : its least clearance, m.  spare : what is left of it over what was asked for, m; its
    ``chance_of_contact`` is the chance that less is left than was asked for.  tightest : the contact that
    has least to spare.  asked : m, there.  in_use : ``today`` with the allowances for use.
    """

    standing: Standing
    today: Chance
    spare: Chance
    tightest: Contact
    asked: float
    in_use: Chance

    @property
    def verdict(self) -> str:
        """done, not yet or cannot tell: whether all gaps are what was asked for."""
        return {"clears": "done", "touches": "not yet"}.get(self.spare.verdict, "cannot tell")


@dataclass(frozen=True)
class Edge:
    """A step that is left: m high, rise over run where it is steepest, metres long, at site x, y; what the
    rule for people on foot says of it."""

    rise: float
    slope: float
    length: float
    xy: tuple[float, float]
    said: str


@dataclass(frozen=True)
class TooDeep:
    """Where more went than may go: ``what`` in words, most beyond the limit (m), area (m2), site x, y of the
    most, and whether it is beyond what the measurement's own error explains. steel : it is the cover over the
    steel that is gone."""

    what: str
    most: float
    area: float
    xy: tuple[float, float]
    sure: bool
    steel: bool = False


@dataclass(frozen=True)
class Share:
    """How much of the planned depth is gone, told by hand measurements alone: a share, 1 sd of it."""

    best: float
    sd: float


@dataclass(frozen=True)
class Told:
    """A reading by hand as it was written: its name in the file, what was read, and m.  relation : is, at
    most or at least."""

    name: str
    what: str
    observed: float
    relation: str


class Odd(StrEnum):
    """What stands alone where readings and scan contradict."""

    READING = "reading"  # without it everything else agrees
    SCAN = "scan"  # the readings agree with each other, and not with the scan since
    NOT_KNOWN = "not known"


@dataclass(frozen=True)
class Fight:
    """A reading that cannot be true beside others, however much was taken off the slab; ``against`` is empty
    where scan and vehicle alone rule it out.

    expected : m, what those say would be read there, at the kindest.  sd : of that and the reading, m.  odd :
    which of them stands alone.
    """

    reading: Told
    against: tuple[Told, ...]
    expected: float
    sd: float
    odd: Odd = Odd.NOT_KNOWN

    @property
    def sds(self) -> float:
        """By how many standard deviations they are apart."""
        return abs(self.reading.observed - self.expected) / self.sd


@dataclass(frozen=True)
class Short:
    """How much is missing under one vehicle of what was asked, m; below zero where there is more than that.

    best : the median of the draws.  interval : 95 %.
    """

    best: float
    interval: tuple[float, float]


@dataclass(frozen=True, eq=False)
class Rest:
    """What is handed out for the pass that is still to go.

    surface : the slab now; what was cut is no ground for blocks and strings.  job : with the method that was
    chosen.  release : of this pass.  left : what it leaves.  Both None where no tool at hand does it, as
    ``notes`` say.
    """

    surface: Surface
    job: Job
    release: Release | None
    left: Left | None
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Predicted:
    """A reading by hand since, and what was expected of it before it was made.

    by_plan : m and 1 sd, had the plan been cut as it stands; by_scan : by the scan since. None where there is
    none, or the reading cannot be there.
    """

    zone: str | None  # of the part over the gap; None for a string
    relation: str
    observed: float
    by_plan: tuple[float, float] | None
    by_scan: tuple[float, float] | None


@dataclass(frozen=True, eq=False)
class Check:
    """The finished work, checked.

    verdict : done, not yet or cannot tell, clearance and edges together.  clearance : of the clearance alone.
    now : each vehicle, the one with least to spare first.  surface : the slab as it is now, or, by hand
    alone, as it is taken to be.  removed : from two scans, None by hand alone; share the other way round.
    still : what the next pass takes, certified and swept like any plan; nothing where the work is done.
    cautious : it stops where it might go too deep; else, where it cannot be told, it is what the drawn slab
    lacks.  whole : with that pass it is as sure as was asked.
    short : of the first vehicle; None where readings contradict.  rest : what is handed out for that pass;
    None where nothing is.  predicted : of every reading by hand since.
    both : readings by hand were taken beside a scan since.
    fights : readings by hand that contradict each other, or the scan since; then the verdict is cannot tell,
    no chance is given, and what is still to go is not known: NaN; nor what is gone, by hand alone.
    ponds : that were not there before.  advice : what to measure, as ``Report.advice``.
    """

    verdict: str
    clearance: str
    now: tuple[Now, ...]
    surface: Surface
    still: CutPlan
    cautious: bool
    removed: Removed | None = None
    share: Share | None = None
    edges: tuple[Edge, ...] = ()
    too_deep: tuple[TooDeep, ...] = ()
    ponds: tuple[tuple[Pond, tuple[float, float]], ...] = ()
    advice: tuple[dict[str, object], ...] = ()
    short: Short | None = None
    whole: bool = False
    rest: Rest | None = None
    predicted: tuple[Predicted, ...] = ()
    both: bool = False
    fights: tuple[Fight, ...] = ()
    fit_error: float = float("nan")
    notes: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        for name in ("verdict", "clearance"):
            if getattr(self, name) not in VERDICTS:
                raise ValueError(f"{name}: one of {VERDICTS} expected, {getattr(self, name)!r} found")

    @property
    def first(self) -> Now:
        """The vehicle with least to spare."""
        return self.now[0]

    @property
    def reached(self) -> bool:
        """Whether another pass within the limits can reach what was asked for."""
        return self.still.feasible


def proud(check: Check) -> tuple[HeightGrid, NDArray[np.bool_]]:
    """Depth still to go (m), and where any is."""
    depth = check.still.depth
    return depth, np.nan_to_num(depth.values) > 5e-5
