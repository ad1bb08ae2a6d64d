"""Every file of a check."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from crestcut.deliver.mesh import write_depth_ply
from crestcut.deliver.report import Report
from crestcut.deliver.verify_plan import draw_checked
from crestcut.deliver.verify_report import report_now
from crestcut.deliver.verify_result import VERIFY_NAME, write_verify
from crestcut.deliver.verify_sheet import SHEET_NAME, write_hand_over
from crestcut.scan.records import Scan
from crestcut.verify.records import Check

PLY, PICTURE = "still_to_go.ply", "checked.png"


def write_check(
    report: Report, check: Check, scan: Scan | None, seconds: Mapping[str, float], folder: Path
) -> None:
    """Mesh, picture, page and numbers of a check into ``folder``. scan : after the work, None by hand."""
    now = report_now(report, check)
    named = replace(now, job=replace(now.job, title=f"{now.title}: still to go, the work done"))
    write_depth_ply(named, folder / PLY)
    draw_checked(report, check, folder / PICTURE)
    write_hand_over(report, check, folder / SHEET_NAME)
    write_verify(report, check, scan, seconds, folder / VERIFY_NAME)
