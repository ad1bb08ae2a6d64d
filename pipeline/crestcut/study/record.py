"""The record of a finished job."""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.base.summary import Summary
from crestcut.standing import LoadedVehicle
from crestcut.study.report import Report
from crestcut.work import Release


@dataclass(frozen=True, eq=False, repr=False)
class Study(Summary):
    """A finished job: what every deliverable is made from, the release behind its stamp, and the vehicles as
    readings have told of them, [vehicle] first."""

    report: Report
    release: Release
    drivers: tuple[LoadedVehicle, ...]

    @property
    def summary(self) -> str:
        """Title, verdict, cut and release."""
        report = self.report
        today = report.verdict if report.today is None else report.today.summary
        plan = "no cut planned" if report.plan is None else report.plan.summary.splitlines()[0]
        return f"{report.title}\n  {today}\n  {plan}; release: {report.identity.release}"
