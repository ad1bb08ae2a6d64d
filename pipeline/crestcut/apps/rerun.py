"""A job run again from the record that a run left: from the same files, or not at all."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from crestcut import __version__
from crestcut.base.errors import CrestcutError, Mind, Say
from crestcut.job import Job, Settings, VehicleChoice, load_job
from crestcut.scan import scan_digest
from crestcut.vehicle import load_vehicle
from crestcut.work import tool_files

AGAIN = "put the old file back, or run the job itself"


@dataclass(frozen=True)
class _Input:
    role: str
    name: str
    sha256: str | None
    path: str = ""
    line: str = ""  # of a job with several


def job_of_record(path: Path, say: Say = lambda _: None) -> Job:
    """The job of a ``record.json``, its settings as they were, its files where the job names them or beside
    the record.

    Raises CrestcutError for what is no record, for a file that is gone, or that is another now. Other
    versions of this program or of a library are said: digits may differ.
    """
    told, inputs = _read(path)
    here = path.parent
    job_file = next(i for i in inputs if i.role == "job")
    found = _same(job_file, (Path(job_file.path), here / job_file.name))
    job = load_job(found.with_name(f"{found.name}#{job_file.line}") if job_file.line else found)
    by_role = _by_role(inputs)
    scans = tuple(_same(i, (p, here / p.name)) for i, p in _pairs(by_role, "scan", job.scan.files, path))
    job = replace(job, scan=replace(job.scan, files=scans))
    if job.travel.line_file is not None:
        ((line, at),) = _pairs(by_role, "line", (job.travel.line_file,), path)
        job = replace(job, travel=replace(job.travel, line_file=_same(line, (at, here / at.name))))
    job = _with_vehicles(job, by_role, here, path)
    for tool, at in _pairs(by_role, "tool", tool_files(job.path, job.work.tools), path):
        _same(tool, (at,))
    _say_versions(told, say)
    return replace(job, settings=Settings(**told["settings"]))


def _read(path: Path) -> tuple[dict[str, Any], list[_Input]]:
    from crestcut.report import RECORD_SCHEMA

    try:
        told = json.loads(path.read_text(encoding="utf-8"))
        if told["schema"] != RECORD_SCHEMA:
            raise ValueError
        inputs = [
            _Input(
                str(i["role"]),
                Path(str(i["file"])).name,
                i["sha256"],
                str(i.get("path", "")),
                str(i.get("line", "")),
            )
            for i in told["inputs"]
        ]
        Settings(**told["settings"])
        if not any(i.role == "job" for i in inputs):
            raise ValueError
    except (OSError, ValueError, KeyError, TypeError):
        raise CrestcutError("is no record of a run", str(path), "name a job file, or a record.json") from None
    return told, inputs


def _by_role(inputs: list[_Input]) -> dict[str, list[_Input]]:
    return {role: [i for i in inputs if i.role == role] for role in {i.role for i in inputs}}


def _pairs(
    by_role: dict[str, list[_Input]], role: str, files: tuple[Path, ...], record: Path
) -> Iterator[tuple[_Input, Path]]:
    """Each file of the job with what the record says of it."""
    rows = {i.name: i for i in by_role.get(role, ())}
    for file in files:
        if file.name not in rows:
            raise CrestcutError(f"does not tell of the {role} {file.name}", str(record), AGAIN)
        yield rows[file.name], file


def _same(told: _Input, places: tuple[Path, ...]) -> Path:
    """The first of the places where the file lies. Raises CrestcutError where it is gone or another."""
    found = next((p for p in places if p.is_file()), None)
    if found is None:
        raise CrestcutError(
            f"the {told.role} of the record is not there",
            str(places[0]),
            "put it there, or beside the record",
        )
    now = scan_digest(found) if told.role == "scan" else hashlib.sha256(found.read_bytes()).hexdigest()
    if now != told.sha256:
        raise CrestcutError(
            f"is not the {told.role} that the record was made from (sha256 {now[:12]}, then"
            f" {(told.sha256 or 'not known')[:12]})", str(found), AGAIN,
        )  # fmt: skip
    return found


def _with_vehicles(job: Job, by_role: dict[str, list[_Input]], here: Path, record: Path) -> Job:
    choices = (job.vehicle, *job.other_vehicles)
    files = tuple(v.file for v in choices)
    places = [_same(i, (p, here / p.name)) for i, p in _pairs(by_role, "vehicle", files, record)]
    first, *others = (VehicleChoice(p, v.loads) for p, v in zip(places, choices, strict=True))
    for told in by_role.get("underside", ()):  # named by the vehicle's file, and read with it
        found = load_vehicle(first.file).underside
        if found is None or found[1] != told.sha256:
            raise CrestcutError("is not the underside that the record was made from", told.name, AGAIN)
    return replace(job, vehicle=first, other_vehicles=tuple(others))


def _say_versions(told: dict[str, Any], say: Say) -> None:
    from crestcut.report import versions

    then, now = {"crestcut": told.get("version"), **told.get("versions", {})}, versions()
    now["crestcut"] = __version__
    other = [f"{n} {v}, now {now.get(n, 'none')}" for n, v in then.items() if now.get(n) != v]
    if other:
        say(Mind(f"recorded with other versions, digits may differ: {'; '.join(other)}"))
