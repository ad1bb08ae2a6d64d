"""Everything the deliverables are made from, bundled once so that every writer takes the same thing."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from crestcut.alternatives import Option
from crestcut.base.errors import visible
from crestcut.base.grid import FloatArray, frozen_array
from crestcut.chance import Chance, Finding, Left
from crestcut.contact import Clearance, Contact, Poses, Ride, SoftContact, TravelLine
from crestcut.cut import CutPlan, NotCast, RayCast
from crestcut.job import Job
from crestcut.scan import Scan
from crestcut.study.checks import Checks
from crestcut.study.identity import NOTHING, Identity
from crestcut.terrain import Surface
from crestcut.vehicle import Vehicle
from crestcut.work import Reason, ReleaseState

CONTACT_KINDS = ("crest", "nose", "tail", "side", "none")


@dataclass(frozen=True)
class PlacedMark:
    """A mark on the concrete; ``xy`` in site metres."""

    name: str
    xy: tuple[float, float]


@dataclass(frozen=True, eq=False)
class PlacedKeep:
    """An area to be cut less or not at all; ``area`` (n, 2) corners in site metres, ``deepest`` in metres."""

    kind: str
    area: FloatArray
    deepest: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "area", frozen_array(self.area, ndim=2, name="area"))


@dataclass(frozen=True)
class VehicleRow:
    """One of several vehicles over the slab.

    part : the one that comes nearest today.  today, in_use, after, after_in_use : as for the report, of this
    vehicle.
    alone : the deepest cut it would need by itself, m.  volume : its own part of the common cut, m3.
    enough : does every gap of it reach what is asked once the common cut is made.  short_by : m it stays
    below.
    """

    name: str
    loads: tuple[str, ...]
    part: str
    today: Chance
    in_use: Chance
    after: Chance
    alone: float
    volume: float
    enough: bool
    short_by: float
    file: str = ""
    sha256: str = ""
    after_in_use: Chance | None = None


@dataclass(frozen=True, eq=False)
class Report:
    """One finished job.

    vehicle : with several, the one that has least room; ``vehicles`` then tells of each, this one first.

    kind : what meets what today: crest, nose, tail, side or none.  today, in_use, after : chance of contact
    as measured at walking pace, with the allowances of use, and once cut; after_in_use : once cut, with those
    allowances; None where it was not worked out.
    in_use_worst : the worst contact in use, if another than today's.  plan : None when no cut was worked out.
    release : ok, provisional or not for cutting. provisional : depths may still move, whatever else the
    release says.  vehicle_doubts : figures that people wrote and that look mistaken, in words.  advice : hand
    measurements worth making first, best first, each a mapping with kind, where, expect, narrows.
    soft : parts that may touch and do, deepest first; never in the verdict.
    ray_cast : the second opinion on the least gaps, or why there is none; None: it was not asked.
    checks : surveyed points that the slab's heights were held against.
    seconds : per stage, in running order.  unsure : nothing is to be cut as far as is known, and that may be
    otherwise.
    """

    job: Job
    scan: Scan
    surface: Surface
    vehicle: Vehicle
    ride: Ride
    before: Clearance
    kind: str
    today: Chance | None = None
    in_use: Chance | None = None
    in_use_worst: Contact | None = None
    plan: CutPlan | None = None
    after: Chance | None = None
    release: ReleaseState = ReleaseState.NOT_FOR_CUTTING
    release_reasons: tuple[Reason, ...] = ()
    provisional: bool = False
    marks: tuple[PlacedMark, ...] = ()
    keeps: tuple[PlacedKeep, ...] = ()
    advice: tuple[Mapping[str, object], ...] = ()
    unsure: bool = False
    soft: tuple[SoftContact, ...] = ()
    version: str = ""
    seed: int = 0
    line_sha256: str = ""
    options: tuple[Option, ...] = ()
    vehicles: tuple[VehicleRow, ...] = ()
    seconds: Mapping[str, float] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    vehicle_doubts: tuple[str, ...] = ()
    after_in_use: Chance | None = None
    ray_cast: RayCast | NotCast | None = None
    checks: Checks = field(default_factory=Checks)

    def __post_init__(self) -> None:
        if self.kind not in CONTACT_KINDS:
            raise ValueError(f"kind: one of {CONTACT_KINDS} expected, {self.kind!r} found")
        object.__setattr__(self, "release", ReleaseState(self.release))

    @property
    def line(self) -> TravelLine:
        """The line of travel."""
        return self.ride.line

    @property
    def depths_provisional(self) -> bool:
        """Depths may still move once the slab is measured better."""
        return self.provisional or self.release == ReleaseState.PROVISIONAL

    @property
    def verdict(self) -> str:
        """clears, touches or cannot tell; from the chance if there is one, else from the least gap's sign."""
        if self.today is not None:
            return self.today.verdict
        worst = self.before.worst
        if worst is None:
            return "cannot tell"
        return "touches" if worst.gap < 0 else "clears"

    @property
    def doubts(self) -> tuple[Finding, ...]:
        """What withdrew today's verdict, gravest first."""
        return self.today.doubts if self.today is not None else ()

    @property
    def least_clearance(self) -> float:
        """Best estimate of the least gap today, metres; NaN where nothing was swept."""
        if self.today is not None:
            return self.today.least_clearance
        worst = self.before.worst
        return math.nan if worst is None else worst.gap

    @property
    def nothing_to_cut(self) -> bool:
        """Is every gap already what was asked for? Then nothing waits for a release."""
        return self.nothing_planned and not self.unsure

    @property
    def nothing_planned(self) -> bool:
        """Whether nothing is shown as short."""
        return self.plan is not None and self.plan.deepest <= 0 and self.plan.feasible

    @property
    def stamp(self) -> str:
        """What is stamped across pictures and drawing; nothing where released, or nothing is to be cut."""
        return "" if self.release == "ok" or self.nothing_to_cut else self.release.upper()

    @property
    def identity(self) -> Identity:
        """What every file of the job says of itself."""
        release = NOTHING if self.nothing_to_cut else self.release
        return Identity(self.title, release, self.job.date, self.version)

    @property
    def left(self) -> Left | None:
        """What the cut leaves, at walking pace and in use; None where either was not worked out."""
        if self.after is None or self.after_in_use is None:
            return None
        return Left(self.after, self.after_in_use)

    @property
    def title(self) -> str:
        """The job's title, or the name of its file."""
        return self.job.title or visible(self.job.path.stem)

    def wanted(self, zone: str) -> float:
        """The gap asked for in a zone, metres."""
        return self.job.wanted.want if zone == "belly" else self.job.wanted.want_ends

    def plan_point(self, xy: tuple[float, float]) -> tuple[float, float]:
        """Site x, y in metres -> the scan's own plan coordinates and unit."""
        x, y = self.scan.frame.site_to_plan(np.asarray(xy, dtype=float))
        return float(x), float(y)

    def poses_of(self, contact: Contact) -> tuple[Poses, int]:
        """The poses of the variant in which the contact happens, and the index of its station."""
        index, station = contact.pose
        return self.ride.poses[index], station

    def on_vehicle(self, contact: Contact) -> tuple[float, float]:
        """Where on the vehicle the contact is: x ahead of the rear axle, y left of the middle, metres."""
        poses, k = self.poses_of(contact)
        frame = self.surface.height.frame
        u, v = frame.to_grid(contact.xy)
        turn, at = poses.rotation[k], poses.position[k]
        # The contact's height is not carried; the plan position fixes x and y once z is taken at the part's
        # own height.
        z = next(
            (sum(p.z) / 2 for p in self.vehicle.parts if p.name == contact.part), self.vehicle.belly_clearance
        )
        flat = np.asarray([u, v]) - at[:2] - turn[:2, 2] * z
        x, y = np.linalg.solve(turn[:2, :2], flat)
        return float(x), float(y)


def kind_of_contact(before: Clearance, vehicle: Vehicle, job: Job) -> str:
    """crest, nose, tail, side or none: by the part that is shortest of what was asked for.

    Under the belly outside the wheels' middles it is the side that meets the ground (rolled onto a kerb),
    else a crest.
    """
    asked = {"belly": job.wanted.want, "nose": job.wanted.want_ends, "tail": job.wanted.want_ends}
    worst = before.worst
    if worst is not None and worst.gap >= 0:
        worst = min(before.least.values(), key=lambda c: c.gap - asked[c.zone])
    if worst is None or worst.gap >= asked[worst.zone]:
        return "none"
    if worst.zone != "belly":
        return worst.zone
    return "side" if _beside_the_wheels(worst, vehicle) else "crest"


def _beside_the_wheels(worst: Contact, vehicle: Vehicle) -> bool:
    part = next(p for p in vehicle.parts if p.name == worst.part)
    inner = min(vehicle.front_track, vehicle.rear_track) / 2
    return part.y[0] > inner or part.y[1] < -inner
