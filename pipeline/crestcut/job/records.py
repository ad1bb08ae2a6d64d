"""The job as the rest of the program sees it: everything in SI, nothing resolved against a scan yet.

Lengths are metres, angles radians, slopes rise over run. ``None`` means the user did not say.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from crestcut.job.answers import InSlab, Method, Over, Permit, SlabKind, Source, YesNo
from crestcut.job.prices import Prices


@dataclass(frozen=True)
class PlanPoint:
    """x, y in the scan's own coordinates and unit."""

    x: float
    y: float


@dataclass(frozen=True)
class MarkName:
    """A point that was put on the concrete and named by a ``[[mark]]``."""

    name: str


@dataclass(frozen=True)
class TapeTies:
    """Two distances from two marks, metres along the slab; ``side`` as seen from the first mark to the
    second.
    """

    first: str
    first_distance: float
    second: str
    second_distance: float
    side: str  # left | right


@dataclass(frozen=True)
class GridPoint:
    """East and north in the reference system of the scan: of the control where it is tied to some."""

    east: float
    north: float


Point = PlanPoint | GridPoint | MarkName | TapeTies


@dataclass(frozen=True)
class Site:
    """Where the slab lies; None counts as the strictest case.

    country : two letters (ISO 3166), upper case.  permit_number : as it stands on a permit that was granted.
    """

    place: str | None = None  # outdoors | indoors
    ground: str | None = None  # private | public
    country: str | None = None
    permit: Permit | None = None
    permit_number: str | None = None


NOISE = (7, 18)  # classes of low and high noise (LAS 1.4 R15, table 17)


@dataclass(frozen=True)
class Surveyed:
    """A point whose place was surveyed: control that the scan is tied to, or a check that it is held against.

    at : east, north and height in the reference system and its unit.  seen : x, y and perhaps z, or x, y of a
    mark, in the scan's own coordinates; height alone is missing where it is to be the scan's there; None of a
    check that is of height only.  within, within_height : m, 1 sd of each coordinate in plan and of height,
    survey and seeing together; None where nobody said.
    """

    name: str
    at: tuple[float, float, float]
    seen: tuple[float, ...] | None = None
    within: float | None = None
    within_height: float | None = None


@dataclass(frozen=True)
class ScanChoice:
    """The files to read (several: repeats of one slab) and what is said of them; None: found in the file or
    guessed.

    unit : of the files' coordinates, one of ``units.METRES_PER``.  control : the scan is laid on these, three
    or more.  control_unit : of their coordinates, where ``crs`` does not say; None: metres.  free_scale : the
    scan's size is the control's, not its own.  checks : never used to lay it.
    """

    files: tuple[Path, ...]
    unit: str | None = None
    up: str | None = None  # x y z -x -y -z
    scanner: str | None = None  # phone | photogrammetry | terrestrial | total-station
    use_classes: tuple[int, ...] = ()  # of a LAS file: points of these alone; none: of all but the next
    leave_classes: tuple[int, ...] = NOISE
    crs: str | None = None  # reference system, like "EPSG:25832+7837" or a WKT; None: as the file says
    control: tuple[Surveyed, ...] = ()
    control_unit: str | None = None
    free_scale: bool = False
    checks: tuple[Surveyed, ...] = ()
    sensor: str | None = None  # as stated: what scanned, and who
    operator: str | None = None


@dataclass(frozen=True)
class VehicleChoice:
    """A vehicle file and the names of the loads it is judged with, one or more."""

    file: Path
    loads: tuple[str, ...] = ("as measured",)


@dataclass(frozen=True)
class Settings:
    """How an answer is reckoned, whatever is asked: no job file speaks of it, a call may vary it, and every
    result says what it was.

    seed : of all draws.  draws : of slab and vehicle, every other the opposite of the one before it.
    rounds : sizes and lengths of waves that the slab's draws are shared among.  tiles : that the slab's
    waves are judged on, about.
    near : m from the ground's plane within which a point is always ground.  far : standard deviations of a
    single point from that plane beyond which it never is.  kerb : m, a higher step parts two slabs.
    """

    seed: int = 0
    draws: int = 200
    rounds: int = 20
    tiles: int = 900
    near: float = 0.012
    far: float = 3.5
    kerb: float = 0.06

    def __post_init__(self) -> None:
        for name, least, most in (("seed", 0, 2**32 - 1), ("draws", 20, 20_000), ("rounds", 1, 1000),
                                  ("tiles", 100, 10_000), ("near", 0.0, 0.1), ("far", 1.0, 20.0),
                                  ("kerb", 0.0, 0.2)):  # fmt: skip
            if not least <= getattr(self, name) <= most:
                raise ValueError(f"{name}: {least} to {most} expected, {getattr(self, name)} found")


@dataclass(frozen=True)
class Travel:
    """``line`` is empty where ``line_file`` is given: its unit is known once the scan is read."""

    line: tuple[Point, ...] = ()
    track: str = "middle"  # middle | left | right
    ways: tuple[str, ...] = ("forward",)  # forward | turned
    wander: float = 0.200  # m each side
    heading: float = math.radians(3.0)  # each side
    line_file: Path | None = None
    layer: str | None = None
    name: str = ""  # of one of several lines


@dataclass(frozen=True)
class Wanted:
    """The gap asked for once the work is done."""

    want: float = 0.0127  # m, under the belly: 1/2 in
    want_ends: float = 0.03175  # m, under nose and tail: 1 1/4 in
    confidence: float = 0.95
    in_use: tuple[tuple[str, float], ...] = ()  # named allowances, m


@dataclass(frozen=True)
class CutWish:
    """How the slab may be cut."""

    deepest: float | None = None  # m; None: the safe default
    feather: float = 0.25  # rise over run
    drain: float | None = None  # fall of a swale, rise over run; None: the cut is not shaped to drain


@dataclass(frozen=True)
class WorkWish:
    """How it is to be cut; None where the program may choose.

    tools : those at hand, names of tool files.  blocks : thicknesses that blocks may be stacked of, m.
    """

    method: Method | None = None
    tools: tuple[str, ...] | None = None
    blocks: tuple[float, ...] | None = None


@dataclass(frozen=True)
class PlotWish:
    """What the drawings of ``plot`` are to be, and what their title says; None: left open. paper : a name of
    ``base.paper.PAPERS``.  scale : so many on the ground for 1 on paper.  date : of the drawings, ISO 8601.
    grid : between grid lines, sections : between cross sections, m."""

    paper: str | None = None
    scale: int | None = None
    project: str | None = None
    client: str | None = None
    surveyor: str | None = None
    revision: str | None = None
    date: str | None = None
    grid: float | None = None
    sections: float | None = None


@dataclass(frozen=True)
class Slab:
    """What is known of the concrete. ``None`` is unanswered, which is always the strictest case."""

    kind: SlabKind | None = None
    thickness: float | None = None
    thickness_from: Source | None = None
    steel_depth: float | None = None
    steel_from: Source | None = None
    keep_cover: float = 0.020
    post_tensioned: YesNo | None = None
    post_tensioned_from: Source | None = None
    heating: InSlab | None = None
    heating_from: Source | None = None
    conduit: InSlab | None = None
    conduit_from: Source | None = None
    suspended: YesNo | None = None
    suspended_from: Source | None = None
    permission: YesNo | None = None
    permission_from: Source | None = None
    flatness: float | None = None  # F_F of the class of floor it was made to, where one is known


@dataclass(frozen=True)
class Mark:
    """A spot put on the concrete before the scan; other places are tied to it by tape."""

    name: str
    at: PlanPoint


@dataclass(frozen=True)
class Keep:
    """An area to be cut less, or not at all: corners in order around it, deepest cut in it (m, 0 or more).

    over : what was located in the slab there.
    """

    kind: str
    area: tuple[Point, ...]
    deepest: float = 0.0
    over: Over | None = None


@dataclass(frozen=True)
class StringReading:
    """A string or straightedge from ``a`` to ``b`` on two equal blocks, metres.

    at : where it was read, from ``a``; None for the least distance.  down : from the string to the slab.
    within : 1 sd of the reading.  placed : 1 sd of the places on the slab.  between : from where to where,
    from ``a``, the least distance was sought; None: from block to block.
    """

    a: Point
    b: Point
    at: float | None
    blocks: float
    down: float
    within: float
    placed: float
    between: tuple[float, float] | None = None


@dataclass(frozen=True)
class LevelReading:
    """Distances from one unknown level plane down to the slab at each point, metres.

    within : 1 sd of a distance.  placed : 1 sd of the points.
    """

    points: tuple[tuple[Point, float], ...]
    within: float
    placed: float


@dataclass(frozen=True)
class Witness:
    """The vehicle itself on the slab, its front axle's middle over a point. Exactly one of gap, touched,
    cleared is given.

    front_axle : None where ``touched`` speaks of the whole line: it scrapes there somewhere, or never has;
    part : None then for any part.  raised : thickness of the boards under front left, front right, rear left
    and rear right tyre, m; None on the bare slab.
    gap : felt under the part, m.  touched : a mark, or a felt touch.  cleared : a thickness that passed
    under, m.  within : 1 sd of the reading, m.  placed : 1 sd of where it stood, m.
    """

    part: str | None
    front_axle: Point | None
    load: str
    gap: float | None = None
    touched: bool | None = None
    cleared: float | None = None
    within: float = 0.001
    placed: float = 0.020
    raised: tuple[float, float, float, float] | None = None


@dataclass(frozen=True, kw_only=True)
class ByHand:
    """What was measured by hand, a field for each kind of reading."""

    strings: tuple[StringReading, ...] = ()
    levels: tuple[LevelReading, ...] = ()
    witnesses: tuple[Witness, ...] = ()

    @property
    def readings(self) -> dict[str, Any]:
        """Of each kind, by the field's name."""
        return {kind.name: getattr(self, kind.name) for kind in fields(ByHand)}

    @property
    def by_hand(self) -> bool:
        """Whether anything was measured by hand."""
        return any(self.readings.values())


@dataclass(frozen=True)
class After(ByHand):
    """What was scanned and measured once the work was done; only ``verify`` reads it.

    scan : the files, empty where nothing was scanned; unit, up and scanner None where not said.
    """

    scan: ScanChoice


@dataclass(frozen=True)
class Job(ByHand):
    """A whole job file, checked. Paths are resolved; places are still in the scan's coordinates or tied to
    marks.

    cell : of the height raster, m, 0.002 to 0.05.  sha256 : of the job file's bytes.  date : the job's own
    (ISO 8601), which every file made from it carries.  settings : of no file, of whoever calls.  language :
    of sheets and pictures (ISO 639).
    """

    path: Path
    title: str
    scan: ScanChoice
    vehicle: VehicleChoice
    travel: Travel
    site: Site = field(default_factory=Site)
    wanted: Wanted = field(default_factory=Wanted)
    cut: CutWish = field(default_factory=CutWish)
    slab: Slab = field(default_factory=Slab)
    cell: float = 0.010
    marks: tuple[Mark, ...] = ()
    keeps: tuple[Keep, ...] = ()
    other_vehicles: tuple[VehicleChoice, ...] = ()
    sha256: str = ""
    after: After | None = None
    date: str | None = None
    settings: Settings = Settings()
    work: WorkWish = field(default_factory=WorkWish)
    plot: PlotWish = PlotWish()
    prices: Prices | None = None
    language: str | None = None

    @property
    def date_words(self) -> str:
        """As the foot of a sheet says it."""
        return f"dated {self.date}" if self.date else "not dated"
