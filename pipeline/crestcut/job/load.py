"""A job file -> Job: strictly validated, everything in SI. Nothing is resolved against the scan here."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import fields, replace
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from crestcut.base.errors import CrestcutError
from crestcut.base.language import Words, words_of
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

_LONGEST = 60  # characters of a line's name
_NO_FOLDER = re.compile(r"[^\w -]|^-")  # in a name: some system takes no folder of it


def load_job(path: Path | str) -> Job:
    """Read and check a job file. Files named in it are relative to it; whether they exist is not looked at.

    path : of a file with several lines ([[travel]]) with the name of one behind it, ``yard.toml#left gate``.

    Raises CrestcutError: one line naming the file, the key and the mend, for anything not understood: an
    unknown key ('did you mean'), a length without a unit, a decimal comma, a value out of all reason, a mark
    that nobody put, a mark put twice.
    """
    named = Path(path)
    path, name = line_of(named)
    data, digest = read_toml(path, "job file")
    if name or isinstance(data.get("travel"), list):
        data = _of_one_line(data, path, name)
    try:
        written = JobFile.model_validate(data)
    except ValidationError as error:
        raise as_one_line(error, named, JobFile, data) from None
    job = job_from_file(written, path, digest)
    if name:
        job = replace(job, title=f"{job.title or path.stem}: {name}", travel=replace(job.travel, name=name))
    check_points(job)
    return job


def line_of(path: Path) -> tuple[Path, str]:
    """A job file, and the line of it that is meant: what stands behind the last ``#``, empty for none."""
    file, mark, name = path.name.rpartition("#")
    return (path, "") if not mark or path.exists() else (path.with_name(file), name)


def words_in(path: Path, language: str | None = None) -> Words:
    """The words of a job's file, by the ``language`` on top of it and its ``[site] country``, before it is
    known to be sound: a fault of it is said in them too. language : in place of the file's own."""
    try:
        said, _ = read_toml(line_of(path)[0], "job file")
    except CrestcutError:  # told by whoever reads it
        said = {}
    site = said.get("site")
    country = site.get("country") if isinstance(site, dict) else None
    asked = language or said.get("language")
    return words_of(asked if isinstance(asked, str) else None, country if isinstance(country, str) else None)


def lines_in(path: Path) -> tuple[Path, ...]:
    """The jobs in a file: one for each of its lines ([[travel]]), or the file where it has a single one.

    Raises CrestcutError for lines that cannot be told apart; what else is wrong is said by ``load_job``.
    """
    if line_of(path)[1]:
        return (path,)
    try:
        data, _ = read_toml(path, "job file")
    except CrestcutError:
        return (path,)
    if not isinstance(data.get("travel"), list):
        return (path,)
    return tuple(path.with_name(f"{path.name}#{name}") for name in _names_of(data["travel"], path))


def _names_of(travel: list[Any], path: Path) -> list[str]:
    """Of each line, "line 1" and so on where it has none."""
    names = []
    for number, table in enumerate(travel, 1):
        name = table.get("name", f"line {number}") if isinstance(table, dict) else None
        if not isinstance(name, str) or not name.strip() or len(name) > _LONGEST or _NO_FOLDER.search(name):
            raise CrestcutError(
                "is no name for a line, which becomes a folder's",
                f"{path.name}: travel {number}.name",
                "letters, figures, blanks and dashes",
            )
        names.append(name.strip())
    if twice := [n for n in names if [m.casefold() for m in names].count(n.casefold()) > 1]:
        raise CrestcutError(
            f'two lines are named "{twice[0]}"', f"{path.name}: travel", "give each a name of its own"
        )
    return names


def _of_one_line(data: dict[str, Any], path: Path, name: str) -> dict[str, Any]:
    """The file as if that line were its only one."""
    travel = data.get("travel")
    names = _names_of(travel, path) if isinstance(travel, list) else []
    if name not in names or not isinstance(travel, list):
        have = ", ".join(names) or "it has a single [travel]"
        what = f'no line is named "{name}" ({have})' if name else f"has several lines ({have})"
        mend = f'"{path.name}#{names[0]}" is one; run takes all' if names else "leave the # and the name out"
        raise CrestcutError(what, path.name, mend)
    table = {key: value for key, value in travel[names.index(name)].items() if key != "name"}
    return {**data, "travel": table}


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
