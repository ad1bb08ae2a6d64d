"""Every file of a check."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from crestcut.report.exchange.mesh import write_depth_ply
from crestcut.report.pictures.verify_plan import draw_checked
from crestcut.report.sheets.verify import SHEET_NAME, write_hand_over
from crestcut.report.view.verify_report import report_now
from crestcut.report.view.verify_result import VERIFY_NAME, write_verify
from crestcut.scan import Scan
from crestcut.study import Report
from crestcut.verify import Check

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
