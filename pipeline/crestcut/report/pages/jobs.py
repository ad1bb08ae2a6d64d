"""``jobs.html``: several jobs of one run on one page."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import quote

from crestcut.base.units import both, litres, millimetres
from crestcut.report.pages.shell import TEMPLATES, asset, write_page
from crestcut.report.view.record import RECORD_NAME
from crestcut.study import NOTHING, Identity

JOBS_PAGE = "jobs.html"


@dataclass(frozen=True)
class JobRow:
    """One of several jobs, as table and page say it.

    name : its title; of one that is not done, its file.  folder : of its results, beside the page.  verdict :
    empty where it is not done.  gap : m, the least of today and its 95 % interval; empty where none is.
    deepest, volume : m, m3, of the cut; None where none was planned, ``reached`` too.  note : of one that is
    not done, why; empty as long as it waits.
    """

    name: str
    folder: str
    verdict: str = ""
    gap: tuple[float, ...] = ()
    deepest: float | None = None
    volume: float | None = None
    release: str = ""
    reached: bool | None = None
    note: str = ""

    @property
    def waits(self) -> bool:
        """Neither done nor wrong yet."""
        return not self.verdict and not self.note

    @property
    def page(self) -> str:
        """The way to its report, from this page."""
        return f"{quote(self.folder)}/report.html" if self.verdict else ""

    @property
    def gap_words(self) -> str:
        """Of the least gap."""
        return both(self.gap[0]) if self.gap else ""

    @property
    def interval_words(self) -> str:
        """Where it lies 19 times in 20."""
        return f"{millimetres(self.gap[1])} to {millimetres(self.gap[2])}" if self.gap else ""

    @property
    def cut_words(self) -> str:
        """Of the cut."""
        if self.release == NOTHING:
            return "nothing"
        if self.deepest is None or self.volume is None:
            return ""
        return f"{both(self.deepest)} deep, {litres(self.volume)}"

    @property
    def note_words(self) -> str:
        """What hinders; where nothing is to be cut, nothing does."""
        return "not done yet" if self.waits else "" if self.release == NOTHING else self.note


def job_row(folder: Path) -> JobRow:
    """What the results of a run in ``folder`` say of themselves.

    Raises OSError, ValueError, LookupError or TypeError for what are none.
    """
    result: dict[str, Any] = json.loads((folder / "result.json").read_text(encoding="utf-8"))
    record: dict[str, Any] = json.loads((folder / RECORD_NAME).read_text(encoding="utf-8"))
    today, cut = result["before"], result["cut"]
    planned = cut["deepest"] is not None
    gap = (today["least_clearance"], *today["interval"]) if today["interval"] else ()
    return JobRow(
        record["job"], folder.name, today["verdict"], gap, cut["deepest"], cut["volume"], record["release"],
        cut["feasible"] and (cut["drain"] is None or cut["drain"]["reached"]) if planned else None,
        next(iter(result["release"]["reasons"]), ""),
    )  # fmt: skip


def write_jobs(rows: Sequence[JobRow], about: Identity, out: Path, together: Sequence[str] = ()) -> Path:
    """Write the page into the folder ``out``. together : of lines over one slab, what holds with all cuts."""
    wait = sum(row.waits for row in rows)
    wrong = sum(not row.verdict for row in rows) - wait
    said = [f"{wait} of them not done yet"] if wait else []
    said += [f"{wrong} of them could not be done"] if wrong else []
    text = TEMPLATES.get_template("jobs.html").render(
        title=f"{len(rows)} jobs", under_head="; ".join(said) or "all of them done", jobs=rows, about=about,
        together=together,
        style=asset("page.css"),
    )  # fmt: skip
    return write_page(text, out, JOBS_PAGE)
