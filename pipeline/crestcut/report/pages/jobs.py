"""``jobs.html``: several jobs of one run on one page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote

from crestcut.base.units import both, litres, millimetres
from crestcut.report.pages.shell import TEMPLATES, asset, write_page
from crestcut.study import Identity, Report

JOBS_PAGE = "jobs.html"


@dataclass(frozen=True)
class JobRow:
    """A job as the page shows it: everything in words, empty where it is not known. page : of its report,
    from this one."""

    name: str
    page: str = ""
    verdict: str = ""
    gap: str = ""
    interval: str = ""
    cut: str = ""
    reached: bool = True
    release: str = ""
    note: str = ""


def job_row(report: Report, folder: str, reached: bool) -> JobRow:
    """folder : that its results are in, beside the page."""
    today, plan = report.today, report.plan
    cut = ""
    if report.nothing_to_cut:
        cut = "nothing"
    elif plan is not None:
        cut = f"{both(plan.deepest)} deep, {litres(plan.volume)}"
    return JobRow(
        report.title, f"{quote(folder)}/report.html", report.verdict,
        "" if today is None else both(today.least_clearance),
        "" if today is None else f"{millimetres(today.interval[0])} to {millimetres(today.interval[1])}",
        cut, plan is None or reached,
        "nothing to cut" if report.nothing_to_cut else str(report.release),
        "" if report.nothing_to_cut else "; ".join(r.words for r in report.release_reasons[:1]),
    )  # fmt: skip


def write_jobs(rows: Sequence[JobRow], about: Identity, out: Path) -> Path:
    """Write the page into the folder ``out``."""
    wrong = sum(not row.verdict for row in rows)
    under = f"{wrong} of them could not be done" if wrong else "all of them done"
    text = TEMPLATES.get_template("jobs.html").render(
        title=f"{len(rows)} jobs", under_head=under, jobs=rows, about=about, style=asset("page.css")
    )
    return write_page(text, out, JOBS_PAGE)
