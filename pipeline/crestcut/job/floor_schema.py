"""The file of a floor's job: the tables of any job without vehicle and travel, and ``[floor]``."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, ValidationError, field_validator, model_validator

from crestcut.base.errors import CrestcutError
from crestcut.base.language import LANGUAGES
from crestcut.job.convert import job_from_file
from crestcut.job.faults import as_one_line, did_you_mean
from crestcut.job.fields import Day, Depth, Number, Positive, Table, Text, fault
from crestcut.job.floor_records import FloorJob, FloorWish
from crestcut.job.load import check_points
from crestcut.job.records import Job, Point
from crestcut.job.schema import (
    AnyPoint,
    CutTable,
    JobFile,
    KeepTable,
    LevelTable,
    MarkTable,
    ScanTable,
    SiteTable,
    SlabTable,
    StringTable,
    SurfaceTable,
    TravelTable,
    VehicleTable,
    WorkTable,
)
from crestcut.job.toml_file import read_toml

HOW = (
    'write straightedge = "2 m" and gap = "3 mm" under [floor], or class = "BS 8204 SR2", or ff = 25 and'
    " fl = 20"
)
LEAST_GAP, MOST_GAP = 0.0003, 0.05  # m
SHORTEST = 0.3  # m: of a straightedge
# length and gap, m. BS 8204: read. DIN 18202, table 3 row 3, at 2 m: read, see floor/classes.py
CLASSES: dict[str, tuple[float, float]] = {
    "BS 8204 SR1": (2.0, 0.003),
    "BS 8204 SR2": (2.0, 0.005),
    "BS 8204 SR3": (2.0, 0.010),
    "DIN 18202 row 3": (2.0, 0.006),
}
# ACI 117-10: FF over FL of the whole floor
NUMBERS: dict[str, tuple[float, float]] = {
    f"ACI 117 {ff}/{fl}": (float(ff), float(fl))
    for ff, fl in ((20, 15), (25, 20), (35, 25), (45, 35), (60, 40))
}


class FloorTable(Table):
    """``[floor]``: which part of the floor, and what is asked of it."""

    area: Annotated[list[AnyPoint] | None, Field(min_length=3)] = None
    straightedge: Positive | None = None
    gap: Depth | None = None
    ff: Number | None = None
    fl: Number | None = None
    named: Annotated[Text | None, Field(alias="class")] = None
    reference: Literal["straightedge", "plane", "level"] = "straightedge"
    datum: AnyPoint | None = None
    confidence: Number = 0.95

    @field_validator("straightedge")
    @classmethod
    def _long_enough(cls, value: float | None) -> float | None:
        if value is not None and value < SHORTEST:
            raise fault(f"a straightedge of {value * 1000:g} mm shows no floor", 'write it like "2 m"')
        return value

    @field_validator("gap")
    @classmethod
    def _a_gap(cls, value: float | None) -> float | None:
        if value is not None and not LEAST_GAP <= value <= MOST_GAP:
            raise fault(f"a gap of {value * 1000:g} mm is outside 0.3 to 50 mm", 'write it like "3 mm"')
        return value

    @field_validator("ff", "fl")
    @classmethod
    def _a_number(cls, value: float | None) -> float | None:
        if value is not None and not 5.0 <= value <= 150.0:
            raise fault(f"an F-number of {value:g} is outside 5 to 150", "write it like ff = 25")
        return value

    @field_validator("confidence")
    @classmethod
    def _a_share(cls, value: float) -> float:
        if not 0.5 <= value <= 0.99:
            raise fault(f"a confidence of {value:g} is outside 0.5 to 0.99", "write it like 0.95")
        return value

    @model_validator(mode="after")
    def _asks_something(self) -> FloorTable:
        known = [*CLASSES, *NUMBERS]
        if self.named is not None and self.named not in known:
            raise fault(f'class "{self.named}" is not known', did_you_mean(self.named, known))
        gap = self.gap is not None or self.named in CLASSES
        if self.reference != "straightedge":
            if self.gap is None:
                raise fault(f'reference = "{self.reference}" needs a gap', 'write gap = "3 mm" beside it')
        elif (self.straightedge is None) != (self.gap is None):
            raise fault("straightedge and gap go together", 'write straightedge = "2 m" and gap = "3 mm"')
        if not gap and self.ff is None and self.fl is None and self.named is None:
            raise fault("nothing is asked of the floor", HOW)
        if self.named in CLASSES and self.gap is not None:
            raise fault("class and gap both say how flat", "leave one of them out")
        if self.datum is not None and self.reference != "level":
            raise fault("a datum is for a level floor", 'write reference = "level" too, or leave datum out')
        return self


class FloorFile(Table):
    """The whole file of a floor's job."""

    title: Text | None = None
    date: Day | None = None
    language: Literal[tuple(LANGUAGES)] | None = None  # type: ignore[valid-type]
    site: SiteTable = Field(default_factory=SiteTable)
    scan: ScanTable
    floor: FloorTable
    cut: CutTable = Field(default_factory=CutTable)
    slab: SlabTable = Field(default_factory=SlabTable)
    work: WorkTable = Field(default_factory=WorkTable)
    surface: SurfaceTable = Field(default_factory=SurfaceTable)
    mark: list[MarkTable] = Field(default_factory=list)
    keep: list[KeepTable] = Field(default_factory=list)
    string: list[StringTable] = Field(default_factory=list)
    level: list[LevelTable] = Field(default_factory=list)


def load_floor_job(path: Path) -> FloorJob:
    """Read and check a floor's job file; as ``job.load.load_job``.

    Raises CrestcutError: one line naming the file, the key and the mend.
    """
    path = Path(path)
    data, digest = read_toml(path, "job file")
    if "floor" not in data:
        raise CrestcutError("no [floor] in it: nothing is asked of the floor", path.name, HOW)
    try:
        written = FloorFile.model_validate(data)
    except ValidationError as error:
        raise as_one_line(error, path, FloorFile, data) from None
    wish = _wish(written.floor)
    base = _base(written, path, digest)
    check_points(
        base, [*(("floor.area", p) for p in wish.area), *(("floor.datum", p) for p in _one(wish.datum))]
    )
    return FloorJob(base, wish)


def _one(point: Point | None) -> list[Point]:
    return [] if point is None else [point]


def _wish(table: FloorTable) -> FloorWish:
    straightedge, gap, ff, fl = table.straightedge, table.gap, table.ff, table.fl
    if table.named in CLASSES:
        straightedge, gap = CLASSES[table.named]
    if table.named in NUMBERS:
        named = NUMBERS[table.named]
        ff, fl = ff or named[0], fl or named[1]
    return FloorWish(
        tuple(table.area or ()), straightedge, gap, ff, fl, table.reference, table.datum, table.confidence,
        table.named or "",
    )  # fmt: skip


def _base(written: FloorFile, path: Path, digest: str) -> Job:
    """The same job as other rooms take it: with a vehicle file that is never opened, and no line."""
    common = {name: getattr(written, name) for name in FloorFile.model_fields if name != "floor"}
    nowhere = TravelTable.model_construct(
        line=[], layer=None, track="middle", ways=["forward"], wander=0.0, heading=0.0
    )
    whole = JobFile.model_construct(
        **common, vehicle=VehicleTable(file="none"), other_vehicle=[], travel=nowhere,
        clearance=JobFile.model_fields["clearance"].get_default(call_default_factory=True),
        witness=[], after=None,
    )  # fmt: skip
    return job_from_file(whole, path, digest)
