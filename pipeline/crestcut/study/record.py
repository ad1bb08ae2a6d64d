"""The record of a finished job."""

from __future__ import annotations

from dataclasses import dataclass

from crestcut.standing import LoadedVehicle
from crestcut.study.report import Report
from crestcut.work import Release


@dataclass(frozen=True, eq=False)
class Study:
    """A finished job: what every deliverable is made from, the release behind its stamp, and the vehicles as
    readings have told of them, [vehicle] first."""

    report: Report
    release: Release
    drivers: tuple[LoadedVehicle, ...]
