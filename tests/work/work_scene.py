"""Plans to make worksheets from: a vehicle over a crest of known shape, cut by the product's own stages."""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Clearance, Ride, TravelLine
from crestcut.contact.stand.ride import ride
from crestcut.cut.fleet import Member, plan_fleet
from crestcut.cut.limits import KeepArea, cut_limits
from crestcut.cut.records import CutPlan
from crestcut.job.answers import Method
from crestcut.job.records import (
    CutWish,
    Job,
    PlanPoint,
    ScanChoice,
    Site,
    Slab,
    Travel,
    VehicleChoice,
    Wanted,
    WorkWish,
)
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.vehicle.records import Part, Vehicle
from crestcut.work.guided_plan import guided
from crestcut.work.order import WorkOrder
from crestcut.work.records import Release
from crestcut.work.release import decide_release
from scenes import ANSWERED


def job(slab: Slab = ANSWERED, site: Site | None = None, deepest: float | None = 0.025) -> Job:
    return Job(
        Path("courtyard.toml"), "Courtyard apron", ScanChoice((Path("apron.laz"),)),
        VehicleChoice(Path("van.toml")), Travel((PlanPoint(0, 0), PlanPoint(9, 0)), wander=0.05, heading=0.0),
        site=site or Site("outdoors", "private", "US"), cut=CutWish(deepest), slab=slab,
    )  # fmt: skip


def van(clearance: float = 0.110, wheelbase: float = 2.6, track: float = 1.5) -> Vehicle:
    belly = Part("belly", (0.31, wheelbase - 0.31), (-0.65, 0.65), (clearance, clearance), "belly")
    return Vehicle(
        Path("van.toml"), "lowered-floor mobility van", wheelbase, track, track, 0.31, 0.19, 1.75, clearance,
        parts=(belly,),
    )  # fmt: skip


@dataclass(frozen=True, eq=False)
class Scene:
    job: Job
    vehicle: Vehicle
    surface: Surface
    line: TravelLine
    ride: Ride
    before: Clearance
    plan: CutPlan
    marks: dict[str, tuple[float, float]]
    keeps: tuple[KeepArea, ...]

    def order(self, release: Release | None = None) -> WorkOrder:
        """Released unless said otherwise."""
        released = release or decide_release(self.job, False, self.plan)
        return WorkOrder(
            self.job, self.vehicle, self.surface, self.ride, self.plan, released, self.marks, self.keeps
        )


def flat_surface(frame: GridFrame, z: FloatArray) -> Surface:
    height = HeightGrid(frame, z)
    error = ErrorModel(0.002, 0.001, 0.1, 0.002, 0.38, "made up", "made up", "made up")
    known = height.measured
    return Surface(
        height, height, height.like(np.where(known, 0.0005, np.nan)), known, known, error, (), known.size
    )


def crest_heights(
    u: FloatArray, v: FloatArray, grade: float, at: float, skew: float, rounding: float, fall: float
) -> FloatArray:
    """A break of ``grade`` either side, turned by ``skew`` rad, rounded over ``rounding`` m, with a cross
    fall.
    """
    n = (u - at) * math.cos(skew) + v * math.sin(skew)
    return 0.3 - grade * np.sqrt(n**2 + rounding**2) + fall * v


@functools.cache
def scene(
    grade: float = 0.085, skew: float = 0.0, rounding: float = 0.0, fall: float = 0.01,
    clearance: float = 0.111,
    cell: float = 0.01, wander: float = 0.05, margin: float = 0.0, angle: float = 0.35, want: float = 0.0127,
    method: Method | None = Method.BOARD, country: str = "US",
) -> Scene:  # fmt: skip
    """One plan by ``method``; ``angle`` turns the line in the site, ``fall`` leans the slab across it."""
    vehicle = van(clearance)
    what = replace(
        job(site=Site("outdoors", "private", country)), travel=replace(job().travel, wander=wander),
        wanted=Wanted(want=want), work=WorkWish(method),
    )  # fmt: skip
    ends = [(2.0, 1.0), (2.0 + 8.0 * math.cos(angle), 1.0 + 8.0 * math.sin(angle))]
    line = travel_line(ends, vehicle, what.travel, cell)
    frame = window(line, vehicle, what.travel, cell, margin=0.5)
    start = frame.to_grid(line.xy[0])
    uu, vv = np.meshgrid(
        np.arange(frame.shape[1]) * cell - start[0], np.arange(frame.shape[0]) * cell - start[1]
    )
    surface = flat_surface(frame, crest_heights(uu, vv, grade, 4.0, skew, rounding, fall))
    driven = ride(vehicle, surface, line, what.travel, vehicle.loads)
    before = sweep(vehicle, surface, driven)
    walk = frame.to_site(np.asarray(start) + np.array([[5.2, -1.2], [6.6, -1.2], [6.6, 1.2], [5.2, 1.2]]))
    door = frame.to_site(np.asarray(start) + np.array([[-0.6, -1.2], [-0.3, -1.2], [-0.3, 1.2], [-0.6, 1.2]]))
    keeps = (
        KeepArea("public walk", tuple((float(x), float(y)) for x, y in walk), 0.004),
        KeepArea("door seal", tuple((float(x), float(y)) for x, y in door), 0.0),
    )
    limits = cut_limits(surface, 0.030, "deepest 30 mm", 0.25, keeps)
    members = [Member(vehicle, driven, before, margin)]
    plan = guided(
        plan_fleet(members, surface, limits, what.wanted, 0.25), members, surface, limits, what
    ).plan
    spots = {"A": (2.6, -1.15), "B": (5.4, -1.1), "C": (2.7, 1.15), "D": (5.3, 1.2)}
    marks = {k: tuple(float(c) for c in frame.to_site(np.asarray(start) + p)) for k, p in spots.items()}
    return Scene(what, vehicle, surface, line, driven, before, plan, marks, keeps)  # type: ignore[arg-type]
