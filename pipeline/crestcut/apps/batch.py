"""Several jobs with one command: a folder for each, and a table of all of them."""

from __future__ import annotations

import csv
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from crestcut.apps.run import reached, run_and_write
from crestcut.base.errors import CrestcutError, Mind, Say, table_cell
from crestcut.study import Identity, Report

TABLE_NAME = "jobs.csv"
HEAD = (
    "job", "folder", "verdict", "gap_mm", "from_mm", "to_mm", "deepest_mm", "litres", "release", "reached",
    "note",
)  # fmt: skip


@dataclass(frozen=True)
class Ended:
    """One of several jobs: its file, the folder of its results, and what came of it: a report, or the line of
    what was wrong with it."""

    job: Path
    folder: Path
    report: Report | None
    wrong: str = ""


def run_all(paths: Sequence[Path], out: Path, say: Say = lambda _: None) -> tuple[Ended, ...]:
    """Each job into a folder of its own in ``out``, named as its file, then ``jobs.csv`` and ``jobs.html``
    beside them. A job that is wrong does not stop the others.

    paths : job files, or folders of them. Raises CrestcutError where there is none, or two have one name.
    """
    from crestcut.report import JobRow, Staging, job_row, write_jobs

    jobs = tuple(_jobs(paths))
    names = [job.stem for job in jobs]
    if twice := sorted({n for n in names if names.count(n) > 1}):
        raise CrestcutError(
            "two jobs would have one folder of results", ", ".join(twice), "give their files other names"
        )
    ended = []
    for number, job in enumerate(jobs, 1):
        say(f"job {number} of {len(jobs)}: {job.name}")
        folder = out / job.stem
        try:
            done, _ = run_and_write(job, folder, say)
            ended.append(Ended(job, folder, done.report))
        except CrestcutError as error:
            say(Mind(f"{job.name}: {error}"))
            ended.append(Ended(job, folder, None, str(error)))
    staging = Staging(out, "jobs", say)
    with staging as part:
        staging.about = Identity(f"{len(jobs)} jobs")
        with (part / TABLE_NAME).open("w", newline="", encoding="utf-8") as file:
            csv.writer(file, lineterminator="\n").writerows([HEAD, *(row(e) for e in ended)])
        shown = [
            JobRow(e.job.name, note=e.wrong) if e.report is None
            else job_row(e.report, e.folder.name, reached(e.report))
            for e in ended
        ]  # fmt: skip
        write_jobs(shown, staging.about, part)
    return tuple(ended)


def _jobs(paths: Sequence[Path]) -> Iterator[Path]:
    """Job files, of folders those that have a travel line: vehicles and floors lie beside them."""
    for path in paths:
        if not path.is_dir():
            yield path
            continue
        found = [p for p in sorted(path.glob("*.toml")) if _is_job(p)]
        if not found:
            raise CrestcutError("no job in the folder", str(path), "name job files, or another folder")
        yield from found


def _is_job(path: Path) -> bool:
    """Damaged files count: what is wrong with them is said when they are run."""
    try:
        return "travel" in tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return True


def row(ended: Ended) -> tuple[str, ...]:
    """A line of the table; a gap that was not found, or a cut that was not planned, is empty."""
    report = ended.report
    if report is None:
        return (table_cell(ended.job.name), table_cell(ended.folder.name), *[""] * 8, table_cell(ended.wrong))
    today, plan = report.today, report.plan
    gap = (today.least_clearance, *today.interval) if today is not None else ()
    notes = [r.words for r in report.release_reasons[:1]]
    return (
        table_cell(report.title), table_cell(ended.folder.name), report.verdict,
        *(f"{v * 1000:.1f}" for v in gap), *[""] * (3 - len(gap)),
        *(("", "") if plan is None else (f"{plan.deepest * 1000:.1f}", f"{plan.volume * 1000:.1f}")),
        "nothing to cut" if report.nothing_to_cut else str(report.release),
        "" if plan is None else "yes" if reached(report) else "no",
        table_cell("; ".join(notes)),
    )  # fmt: skip
