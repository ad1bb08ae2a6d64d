"""What can be said of a clearance when surface and vehicle are known only so well."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import Enum, StrEnum

from crestcut.base.summary import Summary
from crestcut.base.units import millimetres


class Doubt(Enum):
    """What may speak against a verdict, whatever the draws say."""

    NOT_SLAB = "not a slab"  # lawn, gravel or cobbles under the path; size: roughness, 1 sd, m
    STANDS = "stands there"  # the underside meets it; size: its height, m
    ALL_POINTS = "all points"  # the underside meets the middle of all points; size: by how much, m
    SHORT = "short"  # the middle of all points leaves less than was asked for; size: less by how much, m
    TWICE = "seen twice"  # two layers of ground; size: m apart
    SWEPT = "swept"  # the fitted ground itself touches beyond its stated error; size: by how much, m
    CANNOT_BE = "cannot be"  # a best estimate that the underside cannot have; size: the most it can, m
    MISFIT = "does not fit"  # a scan since, on ground that nobody cut; size: rms by which it is off, m
    ELSEWHERE = "lower elsewhere"  # ground that nobody was to cut, in a scan since; size: by how much, m


@dataclass(frozen=True)
class Finding:
    """One doubt, where (site x, y, m), over how much ground (m2), and its size as its kind says (m)."""

    doubt: Doubt
    xy: tuple[float, float]
    area: float
    size: float


class Cause(StrEnum):
    """What a reason beside a verdict is about."""

    CONTRADICTED = "readings contradict"  # none of them was used
    NOT_MET = "not met"  # no part meets measured ground
    ERROR = "error not measured"  # the scan's own error is a usual one
    UNSEEN = "unseen"  # cells under the path without ground
    DOUBTED = "doubted"  # what no error model of the scan holds
    NOT_CONCRETE = "not concrete"  # waves that no slab has
    ROUNDED = "rounded"  # a mesh may have cut the crest
    TYRES = "tyres"  # soft where they stand beside a break
    FOUND = "found"  # a ``Finding``


Because = tuple[Cause, str]  # what it is about, and what is said of it


@dataclass(frozen=True, repr=False)
class Chance(Summary):
    """least_clearance : best estimate, the median of the draws, m.  interval : 95 %, m.
    chance_of_contact : 0..1.

    verdict : "clears" | "touches" | "cannot tell".  words : the chance in plain words ("about 1 in 30 that it
    touches").
    chance_of_want : of a planned surface, that every gap reaches what was asked there; NaN where nothing is
    planned.
    spread : 1 sd, m.  scan_share : the part of the spread's variance that comes from the scan, 0..1.
    doubts : what withdrew the verdict; the chance of contact is NaN then.  reasons : what is to be said
    beside it, plain sentences; causes : what each is about.
    """

    least_clearance: float
    interval: tuple[float, float]
    chance_of_contact: float
    verdict: str
    words: str
    spread: float
    scan_share: float
    draws: int
    reasons: tuple[str, ...] = ()
    chance_of_want: float = float("nan")
    doubts: tuple[Finding, ...] = ()
    causes: tuple[Cause, ...] = ()

    def __post_init__(self) -> None:
        if len(self.causes) != len(self.reasons):
            raise ValueError("causes: one for each of the reasons expected")

    @property
    def because(self) -> list[Because]:
        """Each reason with its cause."""
        return list(zip(self.causes, self.reasons, strict=True))

    def told(self, because: Iterable[Because]) -> Chance:
        """The same with these reasons."""
        pairs = list(because)
        return replace(self, causes=tuple(c for c, _ in pairs), reasons=tuple(words for _, words in pairs))

    @property
    def summary(self) -> str:
        """Verdict, best estimate with its interval, and the chance in words."""
        best, low, high = (millimetres(gap) for gap in (self.least_clearance, *self.interval))
        said = f", {self.words}" if self.words and self.words != self.verdict else ""
        return f"{self.verdict}, least gap {best} (95 %: {low} to {high}){said}"


@dataclass(frozen=True)
class Left:
    """What a cut leaves of the clearance: at walking pace as measured, and in use, on the same draws."""

    today: Chance
    in_use: Chance
