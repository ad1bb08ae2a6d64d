"""The job file as it is written: every table and key that may stand in it. ``convert`` makes the records of
it.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag, field_validator, model_validator

from crestcut.base.language import LANGUAGES
from crestcut.job.fields import (
    Answer,
    Beneath,
    Cell,
    Classes,
    Confidence,
    Country,
    Day,
    Degrees,
    Depth,
    FileName,
    FileNames,
    Gap,
    Inside,
    Kind,
    KnownFrom,
    Note,
    NotNegative,
    Number,
    PermitNumber,
    PermitState,
    Piece,
    PositiveDepth,
    Raised,
    Scanner,
    Slope,
    Table,
    Text,
    Thickness,
    Unit,
    Unsaid,
    UpAxis,
    Wander,
    Way,
    Within,
    Words,
    fault,
    listed,
    point,
)
from crestcut.job.plot_schema import PlotTable
from crestcut.job.price_schema import PricesTable
from crestcut.job.records import PlanPoint, Point
from crestcut.job.surveyed import CheckTable, ControlTable

AnyPoint = Annotated[Point, BeforeValidator(point)]
Ways = Annotated[list[Literal["forward", "turned"]], BeforeValidator(listed), Field(min_length=1)]
Corner = Annotated[PlanPoint, BeforeValidator(lambda value: point(value, plain=True))]
# the tags show up in a fault's place; with a bracket in them they are left out there (``faults``)
Line = Annotated[
    Annotated[FileName, Tag("[file]")] | Annotated[list[AnyPoint], Field(min_length=2), Tag("[points]")],
    Discriminator(lambda value: "[file]" if isinstance(value, str) else "[points]"),
]


class SiteTable(Table):
    """``[site]``: what the release and the trade words hang on."""

    place: Annotated[Literal["outdoors", "indoors"] | None, Unsaid] = None
    ground: Annotated[Literal["private", "public"] | None, Unsaid] = None
    country: Annotated[Country | None, Unsaid] = None
    permit: PermitState | None = None
    permit_number: PermitNumber | None = None
    permit_note: Note = ""


class ScanTable(Table):
    """``[scan]``: the files, as ``file`` or ``files``, and what they do not say themselves."""

    file: FileName | None = None
    files: FileNames | None = None
    unit: Unit | None = None
    up: UpAxis | None = None
    scanner: Scanner | None = None
    crs: Text | None = None
    use_classes: Classes = Field(default_factory=list)
    leave_classes: Classes | None = None
    scale: Literal["as scanned", "from control"] = "as scanned"
    control_unit: Unit | None = None
    sensor: Text | None = None
    operator: Text | None = None

    @model_validator(mode="after")
    def _one_or_many(self) -> ScanTable:
        if (self.file is None) == (self.files is None):
            raise fault("the scan's file is named not at all or twice", 'write files = ["slab.laz"]')
        return self


class VehicleTable(Table):
    """``[vehicle]`` and ``[[other_vehicle]]``: a vehicle file and its loads."""

    file: FileName
    load: Words = Field(default_factory=lambda: ["as measured"])


def _forward() -> list[Literal["forward", "turned"]]:
    return ["forward"]


class TravelTable(Table):
    """``[travel]``: the line, which part of the vehicle follows it, and how far it may stray."""

    line: Line
    layer: Text | None = None
    track: Literal["middle", "left", "right"] = "middle"
    ways: Ways = Field(default_factory=_forward)
    wander: Wander = 0.200
    heading: Degrees = Field(3.0, validate_default=True)

    @model_validator(mode="after")
    def _layer_of_a_drawing(self) -> TravelTable:
        drawn = isinstance(self.line, str) and self.line.lower().endswith(".dxf")
        if self.layer is not None and not drawn:
            raise fault(
                "layer is a drawing's, and line names no drawing",
                'write line = "drive.dxf", or leave layer out',
            )
        return self

    @field_validator("ways")
    @classmethod
    def _once(cls, value: list[str]) -> list[str]:
        if len(set(value)) < len(value):
            raise fault("the same way is written twice", "write each once")
        return value


class ClearanceTable(Table):
    """``[clearance]``: the gap asked for, with what confidence, and the allowances for use."""

    want: Gap = 0.0127
    want_ends: Gap = 0.03175
    confidence: Confidence = 0.95
    in_use: dict[Text, Gap] = Field(default_factory=dict)


class CutTable(Table):
    """``[cut]``: deepest cut, feather, and the fall of a cut that must drain."""

    deepest: PositiveDepth | None = None
    feather: Slope = 0.25
    drain: Slope | None = None


class WorkTable(Table):
    """``[work]``: the method, the tools at hand, and what blocks may be made of."""

    method: Way | None = None
    tools: Words | None = None
    blocks: list[Piece] | None = Field(default=None, min_length=1)


class SlabTable(Table):
    """``[slab]``: what is known of the concrete, and how it is known. Notes are for people: nothing reads
    them."""

    kind: Kind | None = None
    kind_note: Note = ""
    thickness: Annotated[Thickness | None, Unsaid] = None
    thickness_from: KnownFrom | None = None
    thickness_note: Note = ""
    steel_depth: Annotated[Depth | None, Unsaid] = None
    steel_from: KnownFrom | None = None
    steel_note: Note = ""
    keep_cover: Depth = 0.020
    post_tensioned: Answer | None = None
    post_tensioned_from: KnownFrom | None = None
    post_tensioned_note: Note = ""
    heating: Inside | None = None
    heating_from: KnownFrom | None = None
    heating_note: Note = ""
    conduit: Inside | None = None
    conduit_from: KnownFrom | None = None
    conduit_note: Note = ""
    suspended: Answer | None = None
    suspended_from: KnownFrom | None = None
    suspended_note: Note = ""
    permission: Answer | None = None
    permission_from: KnownFrom | None = None
    permission_note: Note = ""
    flatness: Annotated[Number | None, Unsaid] = None

    @field_validator("flatness")
    @classmethod
    def _a_class(cls, value: float | None) -> float | None:
        if value is not None and not 8 <= value <= 100:
            raise fault(f"an F_F of {value:g} is no floor's", "write the floor's F_F, like 25")
        return value

    @model_validator(mode="after")
    def _steel_in_the_slab(self) -> SlabTable:
        if self.thickness is not None and self.steel_depth is not None and self.steel_depth >= self.thickness:
            raise fault(
                f"steel {self.steel_depth * 1000:g} mm down lies below a slab {self.thickness * 1000:g} mm"
                " thick",
                "check steel_depth and thickness",
            )
        return self


class SurfaceTable(Table):
    """``[surface]``: the cell of the height raster."""

    cell: Cell = 0.010


class MarkTable(Table):
    """``[[mark]]``: a named spot on the concrete."""

    name: Text
    at: Corner


class KeepTable(Table):
    """``[[keep]]``: an area to be cut less, or not at all; ``over`` what was located there."""

    kind: Text
    over: Beneath | None = None
    area: list[AnyPoint] = Field(min_length=3)
    deepest: Depth = 0.0


class StringTable(Table):
    """``[[string]]``: a string or straightedge on two equal blocks, read down to the slab."""

    a: AnyPoint
    b: AnyPoint
    at: Literal["least"] | NotNegative = "least"
    between: tuple[NotNegative, NotNegative] | None = None
    blocks: NotNegative
    down: NotNegative
    within: Within = 0.001
    placed: Within = 0.020

    @field_validator("at", mode="before")
    @classmethod
    def _least(cls, value: Any) -> Any:
        if isinstance(value, str) and value.strip().lower() == "least":
            return "least"
        return _length_at(value)

    @field_validator("between", mode="before")
    @classmethod
    def _two(cls, value: Any) -> Any:
        return tuple(value) if isinstance(value, list) else value

    @model_validator(mode="after")
    def _between(self) -> StringTable:
        if self.between is not None:
            if self.at != "least":
                raise fault('between goes with at = "least" only', "leave one of the two out")
            if not self.between[0] < self.between[1]:
                raise fault("between takes two lengths from a, the shorter one first", "turn them round")
        return self


class LevelTable(Table):
    """``[[level]]``: distances down from one level plane of unknown height."""

    points: list[tuple[AnyPoint, NotNegative]] = Field(min_length=2)
    within: Within = 0.002
    placed: Within = 0.020

    @field_validator("points", mode="before")
    @classmethod
    def _pairs(cls, value: Any) -> Any:
        good = isinstance(value, list) and all(isinstance(pair, list) and len(pair) == 2 for pair in value)
        if not good:
            raise fault(
                "a list of pairs of a point and a distance expected", 'write [[[3.0, 2.0], "1.204 m"], ...]'
            )
        return [tuple(pair) for pair in value]


class WitnessTable(Table):
    """``[[witness]]``: the vehicle on the slab, and the gap, touch or clear that was found; without
    front_axle what somebody knows of the whole line."""

    part: Text | None = None
    front_axle: AnyPoint | None = None
    load: Text = "as measured"
    gap: Gap | None = None
    touched: bool | None = None
    cleared: Gap | None = None
    within: Within = 0.001
    placed: Within = 0.020
    raised: Raised | None = None

    @model_validator(mode="after")
    def _one_reading(self) -> WitnessTable:
        if sum(x is not None for x in (self.gap, self.touched, self.cleared)) != 1:
            raise fault(
                "one of gap, touched and cleared expected",
                'write gap = "4 mm", or touched = true, or cleared = "10 mm"',
            )
        if self.front_axle is None and (self.touched is None or self.raised is not None):
            raise fault(
                "a gap, a clear and boards want the place where it stood",
                "add front_axle; touched alone may speak of the whole line",
            )
        if self.front_axle is not None and self.part is None:
            raise fault("part is missing", "name the part that was looked under")
        if self.raised is not None and self.touched is not None:
            raise fault(
                "boards are there so that nothing touches: on them only a gap or a clear is read",
                "leave raised out for a touch on the bare slab; if it touched on boards, stretch a string",
            )
        return self


class ByHandTables(Table):
    """What was measured by hand, a table for each kind of reading."""

    string: list[StringTable] = Field(default_factory=list)
    level: list[LevelTable] = Field(default_factory=list)
    witness: list[WitnessTable] = Field(default_factory=list)


class AfterTable(ByHandTables):
    """What was scanned or measured once the work was done."""

    files: FileNames | None = None
    unit: Unit | None = None
    up: UpAxis | None = None
    scanner: Scanner | None = None

    @model_validator(mode="after")
    def _placed(self) -> AfterTable:
        if any(w.front_axle is None for w in self.witness):
            raise fault("a witness of the finished work wants front_axle", "write where it stood")
        return self


class JobFile(ByHandTables):
    """The whole job file."""

    title: Text | None = None
    date: Day | None = None
    language: Literal[tuple(LANGUAGES)] | None = None  # type: ignore[valid-type]
    site: SiteTable = Field(default_factory=SiteTable)
    scan: ScanTable
    vehicle: VehicleTable
    other_vehicle: list[VehicleTable] = Field(default_factory=list)
    travel: TravelTable
    clearance: ClearanceTable = Field(default_factory=ClearanceTable)
    cut: CutTable = Field(default_factory=CutTable)
    work: WorkTable = Field(default_factory=WorkTable)
    prices: PricesTable | None = None
    slab: SlabTable = Field(default_factory=SlabTable)
    surface: SurfaceTable = Field(default_factory=SurfaceTable)
    plot: PlotTable = Field(default_factory=PlotTable)
    mark: list[MarkTable] = Field(default_factory=list)
    keep: list[KeepTable] = Field(default_factory=list)
    control: list[ControlTable] = Field(default_factory=list)
    check: list[CheckTable] = Field(default_factory=list)
    after: AfterTable | None = None


def what_may_be_written() -> dict[str, dict[str, Any]]:
    """What may stand under each ``table.key`` of a job file, for whoever asks for it: ``minimum`` and
    ``maximum`` in m, degrees or as a share, ``enum``, ``default``, as far as there are any."""
    schema = JobFile.model_json_schema()

    def within(node: dict[str, Any]) -> dict[str, Any]:
        """The one that is meant: a table by its name, of a list, of something that may be left out."""
        if "$ref" in node:
            return within(schema["$defs"][node["$ref"].rpartition("/")[2]])
        if "anyOf" in node:
            return within(next(one for one in node["anyOf"] if one.get("type") != "null"))
        return within(node["items"]) if "items" in node else node

    told = ("minimum", "maximum", "enum", "default")
    found = {
        f"{name}.{key}": {word: value for word, value in {**within(node), **node}.items() if word in told}
        for name, table in schema["properties"].items()
        for key, node in within(table).get("properties", {}).items()
    }
    return {key: said for key, said in found.items() if said}


def _length_at(value: Any) -> float:
    from crestcut.base.errors import CrestcutError
    from crestcut.base.units import parse_length

    try:
        return parse_length(value)
    except CrestcutError as error:
        raise fault(error.what, 'write a length from a, or at = "least"') from None
