"""The record of a finished job."""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.base.summary import Summary
from crestcut.standing import LoadedVehicle
from crestcut.study.report import Report
from crestcut.terrain import Surface
from crestcut.work import Release


@dataclass(frozen=True, eq=False)
class Laid:
    """The slab judged apart from the scan, before any reading was taken in, and all that it was made from.

    made_from : a hash (``saved.surface_key``): another job with the same one has the same slab.
    """

    made_from: str
    surface: Surface


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
