"""Several jobs with one command: a folder for each, and a table of all of them."""

from __future__ import annotations

import contextlib
import csv
import tomllib
from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from crestcut.apps.cluster import Workers, spread
from crestcut.apps.lines import Together, together
from crestcut.apps.rerun import job_of_record
from crestcut.apps.run import Held, run_and_write
from crestcut.base.errors import CrestcutError, Mind, Say, table_cell
from crestcut.job import line_of, lines_in
from crestcut.report import JobRow, Staging, alone_in, job_row, whole, write_jobs
from crestcut.study import Identity

TABLE_NAME = "jobs.csv"
HEAD = (
    "job", "folder", "verdict", "gap_mm", "from_mm", "to_mm", "deepest_mm", "litres", "release", "reached",
    "note",
)  # fmt: skip


@dataclass
class Last:
    """The scan of the job before: lines of one file are of one scan, which is read once."""

    held: Held | None = None


@dataclass(frozen=True)
class Batch:
    """Several jobs on their way. rows : of each, by the name of its folder, in the order they were named.
    together : of each line, where a job has several and all are done, what holds with all cuts made."""

    rows: dict[str, JobRow]
    together: list[Together] = field(default_factory=list)

    @property
    def waiting(self) -> int:
        """How many are neither done nor wrong."""
        return sum(row.waits for row in self.rows.values())

    @property
    def wrong(self) -> int:
        """How many could not be done."""
        return sum(not row.verdict and not row.waits for row in self.rows.values())


def begin(paths: Sequence[Path], out: Path) -> tuple[dict[str, Path], Batch]:
    """Job files by the folder of their results in ``out``, named as they are, and all of them waiting.

    paths : job files, or folders of them. Raises CrestcutError where there is none, or two have one name.
    """
    files = list(_jobs(paths))
    jobs = [one for file in files for one in lines_in(file)]
    names = [folder_of(one, len(files) == 1) for one in jobs]
    if twice := sorted({n for n in names if names.count(n) > 1}):
        raise CrestcutError(
            "two jobs would have one folder of results", ", ".join(twice), "give their files other names"
        )
    named = dict(zip(names, jobs, strict=True))
    return named, Batch({name: JobRow(one.name, name) for name, one in named.items()})


def folder_of(job: Path, alone: bool) -> str:
    """The folder of a job's results: named as its file, and as its line where that has several; as the line
    alone where no other file is there."""
    file, line = line_of(job)
    return file.stem if not line else line if alone else f"{file.stem} {line}"


def run_all(jobs: dict[str, Path], batch: Batch, out: Path, say: Say, workers: Workers | None = None) -> None:
    """Each job into its folder, and after each ``jobs.csv`` and ``jobs.html`` beside them; ``batch`` is kept
    up with it. A job that is wrong does not stop the others; one whose results lie there whole, of the same
    files and code, is not done again.

    workers : processes that share the jobs; None does one after another in this one.
    """
    with alone_in(out):
        for name, job in jobs.items():
            if (row := done_before(job, out / name)) is not None:
                say(Mind(f"{job.name}: done before, from the same files"))
                batch.rows[name] = row
        left = {name: job for name, job in jobs.items() if batch.rows[name].waits}
        last = Last()
        ended = spread(left, out, workers, say) if workers else _one_by_one(left, out, say, last)
        with contextlib.closing(ended):
            for name, wrong in ended:
                if wrong:
                    say(Mind(f"{jobs[name].name}: {wrong}"))
                batch.rows[name] = JobRow(jobs[name].name, name, note=wrong) if wrong else job_row(out / name)
                with contextlib.suppress(CrestcutError):  # a disk that is full; what counts is the last
                    _write_table(batch, out, say)
        batch.together[:] = _all_lines(jobs, batch, out, say, last.held)
        _write_table(batch, out, say)


def _all_lines(jobs: dict[str, Path], batch: Batch, out: Path, say: Say, held: Held | None) -> list[Together]:
    """Of each file with several lines of which all are done and one is cut for."""
    files: dict[Path, list[str]] = {}
    for name, job in jobs.items():
        file, line = line_of(job)
        if line:
            files.setdefault(file, []).append(name)
    found: list[Together] = []
    for file, names in files.items():
        rows = [batch.rows[name] for name in names]
        if len(names) > 1 and all(row.verdict for row in rows) and any(row.deepest for row in rows):
            say(f"{file.name}: sweeping its lines over all of their cuts")
            try:
                found += together([out / name for name in names], say, held)
            except CrestcutError as error:
                say(Mind(f"{file.name}: not swept over all cuts: {error}"))
    return found


def _one_by_one(jobs: dict[str, Path], out: Path, say: Say, last: Last) -> Generator[tuple[str, str]]:
    """The folder of each as it ends, and what was wrong; ``last`` is kept up with it."""
    for number, (name, job) in enumerate(jobs.items(), 1):
        say(f"job {number} of {len(jobs)}: {job.name}")
        try:
            report = run_and_write(job, out / name, say, last.held)[0].report
            last.held = (report.job.scan, report.scan)
        except CrestcutError as error:
            yield name, str(error)
        else:
            yield name, ""


def done_before(job: Path, folder: Path) -> JobRow | None:
    """The row of a job whose results lie in ``folder``, whole and as this program would make them again: of
    the same files by their hashes, with the same code and libraries. None where it has to be run."""
    from crestcut.report import RECORD_NAME

    doubts: list[str] = []
    try:
        if not whole(folder, "run"):
            return None
        then = job_of_record(folder / RECORD_NAME, doubts.append)
        file, line = line_of(job)
        same = then.path.samefile(file) and then.travel.name == line
        return job_row(folder) if same and not doubts else None
    except (CrestcutError, OSError, ValueError, LookupError, TypeError):
        return None


def _write_table(batch: Batch, out: Path, say: Say) -> None:
    staging = Staging(out, "jobs", say)
    with staging as part:
        staging.about = Identity(f"{len(batch.rows)} jobs")
        with (part / TABLE_NAME).open("w", newline="", encoding="utf-8") as file:
            csv.writer(file, lineterminator="\n").writerows([HEAD, *map(row, batch.rows.values())])
        notes = [one.words for one in batch.together]
        write_jobs(tuple(batch.rows.values()), staging.about, part, notes)


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


def row(one: JobRow) -> tuple[str, ...]:
    """A line of the table; a gap that was not found, or a cut that was not planned, is empty."""
    reached = {None: "", True: "yes", False: "no"}[one.reached]
    return (
        table_cell(one.name), table_cell(one.folder), one.verdict,
        *(f"{v * 1000:.1f}" for v in one.gap), *[""] * (3 - len(one.gap)),
        "" if one.deepest is None else f"{one.deepest * 1000:.1f}",
        "" if one.volume is None else f"{one.volume * 1000:.1f}",
        one.release, reached, "not done yet" if one.waits else table_cell(one.note),
    )  # fmt: skip


def told(one: JobRow) -> str:
    """The same as the terminal says it; what is not known is a dash."""
    if not one.verdict:
        return f"{one.name} ({one.folder}): {one.note}"
    known = (one.gap[0] if one.gap else None, one.deepest)
    gap, deepest = ("-" if metres is None else f"{metres * 1000:.1f}" for metres in known)
    return f"{one.name} ({one.folder}): {one.verdict}, gap {gap} mm, deepest {deepest} mm, {one.release}"
