"""The record of a finished job."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.base.summary import Summary
from crestcut.scan import Remembered
from crestcut.standing import LoadedVehicle
from crestcut.study.report import Report
from crestcut.terrain import Surface
from crestcut.work import Release

DISPLAY_CELL = 0.02  # m
MOST_CELLS = 260_000


@dataclass(frozen=True, eq=False)
class Laid:
    """The slab judged apart from the scan, before any reading was taken in, and all that it was made from.

    made_from : a hash (``saved.surface_key``): another job with the same one has the same slab.  scan : what
    is asked of it after that.
    """

    made_from: str
    surface: Surface
    scan: Remembered


@dataclass(frozen=True, eq=False, repr=False)
class Study(Summary):
    """A finished job: what every deliverable is made from, the release behind its stamp, and the vehicles as
    readings have told of them, [vehicle] first.

    laid : what a later run of much the same job need not work out again; None in a record read back.
    """

    report: Report
    release: Release
    drivers: tuple[LoadedVehicle, ...]
    laid: Laid | None = None

    @property
    def summary(self) -> str:
        """Title, verdict, cut and release."""
        report = self.report
        today = report.verdict if report.today is None else report.today.summary
        plan = "no cut planned" if report.plan is None else report.plan.summary.splitlines()[0]
        return f"{report.title}\n  {today}\n  {plan}; release: {report.identity.release}"


def shown_part(height: HeightGrid) -> tuple[GridFrame, int, tuple[int, int]]:
    """The part of the grid with anything measured, at the spacing in which pages show it; the stride and
    first node of it in the full grid."""
    full, known = height.frame, height.measured
    rows, columns = np.flatnonzero(known.any(axis=1)), np.flatnonzero(known.any(axis=0))
    if not len(rows):
        rows, columns = np.arange(full.shape[0]), np.arange(full.shape[1])
    j0, i0 = int(rows[0]), int(columns[0])
    high, wide = int(rows[-1]) - j0 + 1, int(columns[-1]) - i0 + 1
    stride = max(1, round(DISPLAY_CELL / full.cell), math.ceil(math.sqrt(high * wide / MOST_CELLS)))
    corner = full.to_site((i0 * full.cell, j0 * full.cell))
    shape = (max((high - 1) // stride + 1, 2), max((wide - 1) // stride + 1, 2))
    return (
        GridFrame((float(corner[0]), float(corner[1])), full.angle, full.cell * stride, shape),
        stride,
        (j0, i0),
    )
