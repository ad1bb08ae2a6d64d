"""What a check of the finished work comes to."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import HeightGrid
from crestcut.chance import Chance
from crestcut.contact import Contact
from crestcut.cut import CutPlan
from crestcut.standing import Standing
from crestcut.terrain import Surface
from crestcut.verify.removed import Removed
from crestcut.work import Pond

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
    """A step that is left: m high over ``base``, rise over run, metres long, at site x, y; what the rule for
    people on foot says of it."""

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


@dataclass(frozen=True)
class Fight:
    """A reading that cannot be true beside others, however much was taken off the slab; ``against`` is empty
    where scan and vehicle alone rule it out."""

    reading: Told
    against: tuple[Told, ...]


@dataclass(frozen=True, eq=False)
class Check:
    """The finished work, checked.

    verdict : done, not yet or cannot tell, clearance and edges together.  clearance : of the clearance alone.
    now : each vehicle, the one with least to spare first.  surface : the slab as it is now, or, by hand
    alone, as it is taken to be.  removed : from two scans, None by hand alone; share the other way round.
    still : what is still to go, certified and swept like any plan; nothing where the work is done.
    cautious : still is for the chance asked for; else, where it cannot be told, without any margin.
    allowance : m of it by hand alone, on top of what is short, for what the readings leave open.
    both : readings by hand were taken beside a scan since.
    fights : readings by hand alone that contradict; then none was used, the verdict is cannot tell, and what
    is gone and still to go is not known: NaN.
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
    allowance: float = 0.0
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
