"""A job file -> Job: strictly validated, everything in SI. Nothing is resolved against the scan here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields
from pathlib import Path

from pydantic import ValidationError

from crestcut.base.errors import CrestcutError
from crestcut.job.convert import job_from_file
from crestcut.job.faults import as_one_line, did_you_mean
from crestcut.job.records import (
    GridPoint,
    Job,
    LevelReading,
    MarkName,
    PlanPoint,
    Point,
    StringReading,
    TapeTies,
    Witness,
)
from crestcut.job.schema import JobFile
from crestcut.job.toml_file import read_toml


def load_job(path: Path | str) -> Job:
    """Read and check a job file. Files named in it are relative to it; whether they exist is not looked at.

    Raises CrestcutError: one line naming the file, the key and the mend, for anything not understood: an
    unknown key ('did you mean'), a length without a unit, a decimal comma, a value out of all reason, a mark
    that nobody put, a mark put twice.
    """
    path = Path(path)
    data, digest = read_toml(path, "job file")
    try:
        written = JobFile.model_validate(data)
    except ValidationError as error:
        raise as_one_line(error, path, JobFile, data) from None
    job = job_from_file(written, path, digest)
    check_points(job)
    return job


def check_points(job: Job, more: Sequence[tuple[str, Point]] = ()) -> None:
    """Raise CrestcutError for a mark put twice, or a point that names none.

    more : points of other tables, with the key each stands under.
    """
    names = [mark.name for mark in job.marks]
    for name in names:
        if names.count(name) > 1:
            raise CrestcutError(
                f'mark "{name}" is put twice', f"{job.path.name}: mark", "give each mark a name of its own"
            )
    for place, point in [*_points(job), *more]:
        for name in _marks_in(point):
            if name not in names:
                mend = did_you_mean(name, names) or "add a [[mark]] with that name and its place"
                raise CrestcutError(f'no mark is named "{name}"', f"{job.path.name}: {place}", mend)
        if isinstance(point, TapeTies) and point.first == point.second:
            raise CrestcutError(
                "both ties start from one mark", f"{job.path.name}: {place}", "tie it to two marks"
            )


def _marks_in(point: Point) -> tuple[str, ...]:
    match point:
        case MarkName(name):
            return (name,)
        case TapeTies(first, _, second, _, _):
            return first, second
        case PlanPoint() | GridPoint():
            return ()


def _points(job: Job) -> list[tuple[str, Point]]:
    """Every point of the job with the key it stands under."""
    found = [("travel.line", p) for p in job.travel.line]
    found += [(f"keep {k + 1}.area", p) for k, keep in enumerate(job.keeps) for p in keep.area]
    for prefix, read in (("", job), ("after.", job.after)):
        kinds = read.readings.values() if read is not None else ()
        for readings in kinds:
            for k, reading in enumerate(readings):
                found += [(f"{prefix}{_table(reading)} {k + 1}.{key}", p) for key, p in _named(reading)]
    return found


def _table(reading: StringReading | LevelReading | Witness) -> str:
    """How a job file calls a reading of this kind."""
    return type(reading).__name__.removesuffix("Reading").lower()


def _named(reading: StringReading | LevelReading | Witness) -> list[tuple[str, Point]]:
    """Every point of a reading with the key it stands under, which is one or a list of pairs with one."""
    found: list[tuple[str, Point]] = []
    for key in fields(reading):
        value = getattr(reading, key.name)
        if isinstance(value, Point):
            found.append((key.name, value))
        elif isinstance(value, tuple):
            found += [(key.name, pair[0]) for pair in value if isinstance(pair, tuple)]
    return found
