"""The job file as written -> the records the rest of the program sees; and back to plain data, stored with
the results.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from crestcut.job.fields import Table
from crestcut.job.price_schema import prices_of
from crestcut.job.records import (
    NOISE,
    After,
    CutWish,
    Job,
    Keep,
    LevelReading,
    Mark,
    PlotWish,
    ScanChoice,
    Site,
    Slab,
    StringReading,
    Travel,
    VehicleChoice,
    Wanted,
    Witness,
    WorkWish,
)
from crestcut.job.schema import (
    AfterTable,
    ByHandTables,
    JobFile,
    LevelTable,
    StringTable,
    TravelTable,
    WitnessTable,
)
from crestcut.job.surveyed import surveyed


def job_from_file(written: JobFile, path: Path, sha256: str) -> Job:
    """``path`` : of the job file; file names in it are relative to its folder."""
    scan, folder = written.scan, path.parent
    names = scan.files if scan.files is not None else [scan.file or ""]
    clearance = written.clearance
    marks = tuple(Mark(mark.name, mark.at) for mark in written.mark)
    return Job(
        path=path,
        title=written.title or path.stem.replace("_", " ").capitalize(),
        scan=ScanChoice(
            tuple(beside(folder, name) for name in names),
            scan.unit,
            scan.up,
            scan.scanner,
            crs=scan.crs,
            use_classes=tuple(scan.use_classes),
            leave_classes=NOISE if scan.leave_classes is None else tuple(scan.leave_classes),
            control=surveyed("control", written.control, marks, path),
            control_unit=scan.control_unit,
            free_scale=scan.scale == "from control",
            checks=surveyed("check", written.check, marks, path),
            sensor=scan.sensor,
            operator=scan.operator,
        ),
        vehicle=VehicleChoice(beside(folder, written.vehicle.file), tuple(written.vehicle.load)),
        other_vehicles=tuple(
            VehicleChoice(beside(folder, v.file), tuple(v.load)) for v in written.other_vehicle
        ),
        travel=_travel(written.travel, folder),
        site=Site(**_answers(written.site)),
        wanted=Wanted(
            clearance.want, clearance.want_ends, clearance.confidence, tuple(clearance.in_use.items())
        ),
        cut=CutWish(written.cut.deepest, written.cut.feather, written.cut.drain),
        slab=Slab(**_answers(written.slab)),
        work=WorkWish(
            written.work.method,
            None if written.work.tools is None else tuple(written.work.tools),
            None if written.work.blocks is None else tuple(written.work.blocks),
        ),
        plot=PlotWish(**written.plot.model_dump()),
        prices=None if written.prices is None else prices_of(written.prices),
        cell=written.surface.cell,
        marks=marks,
        keeps=tuple(Keep(keep.kind, tuple(keep.area), keep.deepest, keep.over) for keep in written.keep),
        **_by_hand(written),
        after=_after(written.after, folder) if written.after is not None else None,
        sha256=sha256,
        date=written.date,
        language=written.language,
    )


def _answers(written: Table) -> dict[str, Any]:
    """All but the notes."""
    return {key: value for key, value in written.model_dump().items() if not key.endswith("_note")}


def _after(written: AfterTable, folder: Path) -> After:
    files = tuple(beside(folder, name) for name in written.files or ())
    scan = ScanChoice(files, written.unit, written.up, written.scanner)
    return After(scan, **_by_hand(written))


def _by_hand(written: ByHandTables) -> dict[str, Any]:
    """The fields of ``ByHand``."""
    return {
        "strings": _strings(written.string),
        "levels": _levels(written.level),
        "witnesses": _witnesses(written.witness),
    }


def _strings(written: Sequence[StringTable]) -> tuple[StringReading, ...]:
    return tuple(
        StringReading(
            s.a, s.b, None if s.at == "least" else s.at, s.blocks, s.down, s.within, s.placed, s.between
        )
        for s in written
    )


def _levels(written: Sequence[LevelTable]) -> tuple[LevelReading, ...]:
    return tuple(LevelReading(tuple(level.points), level.within, level.placed) for level in written)


def _witnesses(written: Sequence[WitnessTable]) -> tuple[Witness, ...]:
    return tuple(
        Witness(w.part, w.front_axle, w.load, w.gap, w.touched, w.cleared, w.within, w.placed, w.raised)
        for w in written
    )


def _travel(written: TravelTable, folder: Path) -> Travel:
    """Points as they stand, or the file that holds them."""
    named = isinstance(written.line, str)
    return Travel(
        () if isinstance(written.line, str) else tuple(written.line),
        written.track,
        tuple(written.ways),
        written.wander,
        written.heading,
        beside(folder, str(written.line)) if named else None,
        written.layer,
    )


def beside(folder: Path, name: str) -> Path:
    """A file named in a file that lies in ``folder``; ``..`` is taken out so that messages stay readable."""
    try:
        path = Path(name).expanduser()
    except RuntimeError:  # a home that nobody has: then it is the name of a folder
        path = Path(name)
    if path.is_absolute():
        return path
    parts: list[str] = list(folder.parts)
    for part in path.parts:
        if part == ".." and parts and parts[-1] not in ("..", folder.anchor):
            parts.pop()
        else:
            parts.append(part)
    return Path(*parts)


def resolved(job: Job) -> dict[str, Any]:
    """The whole job as plain data (SI, radians, None where nothing was said), for storing beside the results.

    File names lose their folders, so that the same job gives the same bytes on every machine.
    """
    data: dict[str, Any] = _plain(dataclasses.asdict(job))
    return data


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(inner) for inner in value]
    return value.name if isinstance(value, Path) else value
