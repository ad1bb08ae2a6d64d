"""Several lines of one job over one slab: what each needs, and what holds where all of their cuts are made.

Each line has its own window along it, its own answer and its own sheets. Where cuts overlap, the deeper is
what is ground; a wheel of one line may then stand lower for another's cut, so every line is stood up and
swept over all cuts together.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from crestcut.apps.run import Held
from crestcut.base.errors import CrestcutError, Say
from crestcut.base.grid import FloatArray
from crestcut.base.units import litres, millimetres, number
from crestcut.contact import wanted_gap
from crestcut.cut import CUT, ENOUGH, cut_surface
from crestcut.standing import line_drawn, lines_of, rides_of, swept_of
from crestcut.study import STUDY_NAME, Report, Study, read_study


@dataclass(frozen=True)
class Together:
    """A line where all cuts are made.

    own, more : m3, of its own cut; of the cuts of others that go deeper, in its window.  shared : m2 that is
    cut for it and for another.  alone, spare : m, the least gap beyond what was asked and the plan's margin,
    over its own cut and over all cuts, of all its vehicles; spare is None where no cut of another goes deeper
    in its window.
    """

    name: str
    own: float
    more: float
    shared: float
    alone: float
    spare: float | None

    @property
    def holds(self) -> bool:
        """Does the line keep what was asked, with all cuts made?"""
        return self.spare is None or self.spare >= -ENOUGH

    @property
    def words(self) -> str:
        """One line."""
        said = f"{self.name}: {litres(self.own) if self.own else 'nothing'} for itself"
        if self.spare is None:
            return f"{said}; no other line's cut goes deeper in its window"
        said += f", {number(self.shared)} m2 shared; others go deeper there by {litres(self.more)}"
        if self.holds:
            return f"{said}; swept over all cuts, it keeps what was asked"
        short = f"{said}; swept over all cuts it is {millimetres(-self.spare)} short of what was asked"
        if self.alone < -ENOUGH:
            return f"{short}, and {millimetres(-self.alone)} over its own cut alone: see its own report"
        return f"{short}: cut the other lines first, then scan, and run this one again"


def together(folders: Sequence[Path], say: Say, held: Held | None = None) -> tuple[Together, ...]:
    """Of each line's results, in that order. held : as of ``run_job``; without it the scan is read once.

    Raises CrestcutError where the results of one are not those of this program, or cannot be taken up.
    """
    studies: list[Study] = []
    for folder in folders:
        study = read_study(folder / STUDY_NAME, say, held)
        if study is None:
            raise CrestcutError("is of another version", str(folder / STUDY_NAME), "run the job again")
        held = study.report.job.scan, study.report.scan
        studies.append(study)
    reports = [s.report for s in studies]
    return tuple(_of_one(study, [r for r in reports if r is not study.report]) for study in studies)


def _depth(report: Report) -> FloatArray:
    """(ny, nx) m to go, nothing where no ground was measured."""
    height = report.surface.height
    return np.zeros(height.values.shape) if report.plan is None else np.nan_to_num(report.plan.depth.values)


def _depth_at(report: Report, at: FloatArray) -> FloatArray:
    """The same at site places (..., 2), nothing outside its window."""
    return np.nan_to_num(report.surface.height.like(_depth(report)).sample(at))


def _of_one(study: Study, others: Sequence[Report]) -> Together:
    report = study.report
    surface, cell = report.surface, report.surface.height.frame.cell
    own = _depth(report)
    at = surface.height.frame.node_xy()
    theirs = np.max([_depth_at(other, at) for other in others], axis=0, initial=0.0)
    theirs = np.where(surface.height.measured, theirs, 0.0)
    deeper = np.where(theirs > own + CUT, theirs - own, 0.0)
    name = report.job.travel.name
    volume, shared = float(own.sum()) * cell**2, float(((own > CUT) & (theirs > CUT)).sum()) * cell**2
    alone = -report.plan.short_by if report.plan is not None else 0.0
    if not deeper.any():
        return Together(name, volume, 0.0, shared, alone, None)
    return Together(name, volume, float(deeper.sum()) * cell**2, shared, alone, _spare(study, own + deeper))


def _spare(study: Study, depth: FloatArray) -> float:
    """m, the least gap of all vehicles beyond what was asked, stood up on the slab with ``depth`` gone."""
    report = study.report
    lower = cut_surface(report.surface, depth)
    lines = lines_of(study.drivers, report.job, report.scan.frame, line_drawn(report.job))
    rides = rides_of(study.drivers, lines, lower, report.job)
    asked = wanted_gap(report.job.wanted.want, report.job.wanted.want_ends)
    margin = report.plan.margin if report.plan is not None else 0.0
    return min(
        contact.gap - asked[zone] - margin
        for swept in swept_of(study.drivers, rides, lower, report.job)
        for zone, contact in swept.least.items()
    )
