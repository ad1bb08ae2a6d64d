"""One row of the options, and how a swept gap becomes an estimate with its chances."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from scipy import special

from crestcut.alternatives.trials import Tried
from crestcut.chance import Chance, Left
from crestcut.cut import Forbids

OPTION_KINDS = (
    "as it is", "keep to the line", "another line", "less load", "slower", "more pressure", "loose boards",
    "strips", "fillet", "cut", "cut and strips", "new bay",
)  # fmt: skip
UNKNOWN = (math.nan, math.nan)
INTO_THE_SLAB = ("strips", "cut", "cut and strips", "new bay")  # it is cut, drilled or fixed into


class Answer(StrEnum):
    """What an option is enough for."""

    BOTH = "both"  # at walking pace and in use
    WALKING_PACE = "walking pace"
    NO = "no"


@dataclass(frozen=True)
class Option:
    """One thing that could be done. Metres, cubic metres, chances 0..1; NaN where a figure has no meaning.

    kind : one of ``OPTION_KINDS``.  name, needs : plain words.
    clearance : best estimate of the least gap today, hand readings folded in.  chance : that it touches.
    enough : chance that every gap reaches what is asked.  works : that chance is the confidence asked for,
    or more, at walking pace.
    in_use, in_use_chance : least gap and chance of a touch with the allowances for use.  works_in_use : with
    that confidence, or more, nothing touches then.
    depth : deepest cut, or thickest layer laid.  volume : taken away; negative where something is laid down.
    on_line : the gap on the line followed exactly, where the row is of a line; ``line`` its ends, site m.
    swept : the least gap as swept, before anything is folded in or corrected.
    forbids : what forbids it on this slab, whatever it would leave; it then never works.
    beside, thick : laid beside a cut, m3, and how thick, m.
    hours, hire, laid : of work, days of tools, m3 of material; cost : all of it in ``cost_in``, by which the
    options are ranked; each from least to most, NaN where it is not known.
    """

    kind: str
    name: str
    clearance: float
    chance: float
    enough: float
    works: bool
    in_use: float
    in_use_chance: float
    depth: float
    volume: float
    needs: str
    swept: float = math.nan
    on_line: float = math.nan
    line: tuple[tuple[float, float], tuple[float, float]] | None = None
    forbids: tuple[Forbids, ...] = ()
    works_in_use: bool = False
    beside: float = 0.0
    thick: float = 0.0
    hours: tuple[float, float] = UNKNOWN
    hire: tuple[float, float] = UNKNOWN
    laid: float = math.nan
    cost: tuple[float, float] = UNKNOWN
    cost_in: str = ""

    @property
    def answer(self) -> Answer:
        """Enough for both, at walking pace alone, or not."""
        if not self.works:
            return Answer.NO
        return Answer.BOTH if self.works_in_use else Answer.WALKING_PACE


@dataclass(frozen=True)
class Change:
    """What a row changes: its kind and name, what it needs in words, how much goes at most (m, negative:
    comes) and how much in all (m3)."""

    kind: str
    name: str
    needs: str
    depth: float = 0.0
    volume: float = 0.0


@dataclass(frozen=True)
class Estimator:
    """How a swept gap becomes an estimate with its chances: the job's own, carried over to every option.

    swept : least gap as it is, m.  in_use, slow : with all allowances for use, and without those for speed
    and braking.
    planned, planned_swept : once cut.
    """

    swept: float
    today: Chance
    in_use: Chance
    slow: Chance
    planned: Left
    planned_swept: float
    confidence: float

    @property
    def target(self) -> float:
        """What a swept gap must exceed the asked one by, so that it is reached with the confidence asked
        for, m.
        """
        spread = self.today.spread if self.today.spread > 0 else 0.0
        return float(special.ndtri(self.confidence)) * spread - self._moved(self.today, self.swept)

    @staticmethod
    def _moved(chance: Chance, swept: float) -> float:
        return chance.least_clearance - swept if math.isfinite(chance.least_clearance) else 0.0

    def row(self, change: Change, tried: Tried) -> Option:
        """A row of the table from what was swept.

        Where nothing is changed (as it is, slower) and for the cut itself the chances are those of the draws;
        elsewhere a normal error of their spread is taken.
        """
        kind = change.kind
        base, used, swept = self.today, self.slow if kind == "slower" else self.in_use, self.swept
        if kind in ("cut", "cut and strips"):
            base, used, swept = self.planned.today, self.planned.in_use, self.planned_swept
        gap, excess = (x + self._moved(base, swept) for x in (tried.gap, tried.excess))
        in_use = gap + used.least_clearance - base.least_clearance
        enough = 1.0 - below(excess, base.spread, 0.0)
        chance = below(gap, base.spread, 0.0)
        used_chance = below(in_use, math.hypot(base.spread, _more(used, base)), 0.0)
        if kind in ("as it is", "slower"):
            chance, used_chance = base.chance_of_contact, used.chance_of_contact
        elif kind == "cut" and math.isfinite(base.chance_of_want):
            chance, enough = base.chance_of_contact, base.chance_of_want
            used_chance = used.chance_of_contact
        return Option(
            kind, change.name, gap, chance, enough, enough >= self.confidence - 1e-9, in_use, used_chance,
            change.depth, change.volume, change.needs, tried.gap,
            works_in_use=used_chance <= 1 - self.confidence + 1e-9,
        )  # fmt: skip


def _more(used: Chance, today: Chance) -> float:
    """Spread that the allowances add, m."""
    return math.sqrt(max(used.spread**2 - today.spread**2, 0.0))


def below(mean: float, spread: float, level: float) -> float:
    """P(value < level) for a normal error of sd ``spread`` m about ``mean``."""
    if not spread > 0:
        return float(mean < level)
    return float(special.ndtr((level - mean) / spread))
