"""A floor's answer, bundled once so that every writer takes the same thing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from crestcut.cut import KeepArea
from crestcut.floor import FloorSheet, Judged, worth
from crestcut.job import FloorJob
from crestcut.scan import Scan
from crestcut.study import NOTHING, Identity
from crestcut.work import Release


@dataclass(frozen=True, eq=False)
class FloorReport:
    """marks, corners : site x, y, m; corners of the area asked for, empty for all the floor that was found.
    release : before what only the floor itself says; ``sheet.sheet.release`` is what every page is stamped
    with. seconds : per stage.
    """

    job: FloorJob
    scan: Scan
    judged: Judged
    given_release: Release
    work: FloorSheet
    marks: Mapping[str, tuple[float, float]]
    keeps: tuple[KeepArea, ...]
    corners: tuple[tuple[float, float], ...]
    version: str
    seed: int
    seconds: Mapping[str, float] = field(default_factory=dict)

    @property
    def title(self) -> str:
        """The job's title."""
        return self.job.base.title

    @property
    def release(self) -> Release:
        """What every page is stamped with."""
        return self.work.sheet.release

    @property
    def stamp(self) -> str:
        """What is stamped across the plan; nothing where nothing is to be ground."""
        return self.release.stamp if worth(self.judged.levelling.high) else ""

    @property
    def identity(self) -> Identity:
        """What every file of the floor says of itself."""
        release = self.release.state if worth(self.judged.levelling.high) else NOTHING
        return Identity(self.title, release, self.job.base.date, self.version)

    def plan_point(self, xy: tuple[float, float]) -> tuple[float, float]:
        """Site x, y in metres -> the scan's own plan coordinates and unit."""
        x, y = self.scan.frame.site_to_plan(np.asarray(xy, dtype=float))
        return float(x), float(y)
