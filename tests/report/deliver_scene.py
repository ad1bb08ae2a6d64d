"""A made-up job, every figure known: a straight crest or a rise under a flat floor, swept by plain loops."""

from __future__ import annotations

import dataclasses
from functools import cache
from pathlib import Path

import numpy as np

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.base.units import METRES_PER
from crestcut.chance.records import Chance
from crestcut.contact.records import Batch, Clearance, Contact, Poses, Ride, TravelLine, Variant
from crestcut.cut.records import Certificate, CutPlan, Limits
from crestcut.job.answers import Asked
from crestcut.job.records import Job, PlanPoint, ScanChoice, Slab, Travel, VehicleChoice
from crestcut.scan.records import Frame, Scan, ScanFile
from crestcut.study.report import PlacedKeep, PlacedMark, Report
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.vehicle.records import LoadState, Part, Vehicle
from crestcut.work.records import Reason, ReasonCode

BASE, TRACK, RADIUS = 2.6, 1.5, 0.31
CELL = 0.02
LENGTH, WIDTH, CREST, GRADE = 9.0, 3.2, 4.6, 0.08
WANT = 0.0127

MADE_UP = {"from residuals", "from two repeats", "prior for phone scanners"}  # words of this job and no other


def van(clearance: float = 0.105) -> Vehicle:
    parts = (
        Part("belly", (0.31, 2.29), (-0.65, 0.65), (clearance, clearance), "belly"),
        Part("front apron", (2.91, 3.4), (-0.8, 0.8), (0.15, 0.19), "nose"),
        Part("rear apron", (-0.8, -0.31), (-0.75, 0.75), (0.22, 0.18), "tail"),
    )
    return Vehicle(
        Path("van.toml"), "lowered-floor mobility van", BASE, TRACK, TRACK, RADIUS, 0.19, 1.75, clearance,
        0.8, 0.8, None, parts, (LoadState("as measured"),), sha256="c" * 64,
    )  # fmt: skip


def crest(u: np.ndarray, v: np.ndarray) -> np.ndarray:
    """A sharp symmetric break, a little cross slope."""
    return 0.35 - GRADE * np.abs(u - CREST) + 0.01 * v


def gutter(u: np.ndarray, v: np.ndarray) -> np.ndarray:
    """Level, then a dip, then a rise of 16 %: catches a nose."""
    return np.where(u < 3.0, -0.06 * (u - 3.0), 0.16 * (u - 3.0)) + 0.0 * v


def frame_in(unit: str) -> Frame:
    """Coordinates of survey size, z up, in the unit named."""
    return Frame(
        np.full(3, METRES_PER[unit]), np.eye(3), np.array([512_300.0, 4_481_200.0, 210.0]), unit, "z"
    )


def _poses(vehicle: Vehicle, ground, variant: Variant) -> Poses:
    """The vehicle on point-like wheels: straight down the middle, one pose each 20 mm."""
    stations = np.arange(vehicle.wheelbase + 0.6, LENGTH - 0.6, 0.02)
    rear = stations - vehicle.wheelbase
    v0 = WIDTH / 2 + variant.offset
    half = TRACK / 2
    wheels = np.stack(
        [ground(s, np.full_like(s, v0 + side * half)) for s, side in
         ((stations, 1), (stations, -1), (rear, 1), (rear, -1))], axis=-1,
    )  # fmt: skip
    front, back = wheels[:, :2].mean(axis=1), wheels[:, 2:].mean(axis=1)
    pitch = np.arctan2(front - back, vehicle.wheelbase)
    roll = np.arctan2((wheels[:, 0] - wheels[:, 1] + wheels[:, 2] - wheels[:, 3]) / 2, TRACK)
    cp, sp, cr, sr = np.cos(pitch), np.sin(pitch), np.cos(roll), np.sin(roll)
    rotation = np.zeros((len(rear), 3, 3))
    rotation[:, :, 0] = np.stack([cp, 0 * cp, sp], axis=-1)
    rotation[:, :, 1] = np.stack([-sp * sr, cr, cp * sr], axis=-1)
    rotation[:, :, 2] = np.cross(rotation[:, :, 0], rotation[:, :, 1])
    position = np.stack([rear, np.full_like(rear, v0), back], axis=-1)
    return Poses(
        variant, stations, wheels, np.full((len(rear), 4), -1), position, rotation, np.ones(len(rear), bool)
    )


def _batch(rides: tuple[Poses, ...]) -> Batch:
    """The same poses in one set of arrays; axles stand as the body does."""

    def joined(name: str) -> np.ndarray:
        return np.concatenate([getattr(r, name) for r in rides])

    rotation = np.repeat(joined("rotation")[:, None], 3, axis=1)
    position = np.repeat(joined("position")[:, None], 3, axis=1)
    places = np.zeros((len(rotation), 5))
    places[:, :2] = position[:, 0, :2]
    variant = np.repeat(np.arange(len(rides)), [len(r.station) for r in rides])
    return Batch(places, variant, joined("live"), joined("wheels"), joined("contact"), position, rotation)


def _sweep(vehicle: Vehicle, height: HeightGrid, rides: tuple[Poses, ...]) -> Clearance:
    frame = height.frame
    u = np.arange(frame.shape[1]) * frame.cell
    v = np.arange(frame.shape[0]) * frame.cell
    lowest, least = {}, {}
    for part in vehicle.parts:
        low = np.full(frame.shape, np.inf)
        best = np.inf
        for r, poses in enumerate(rides):
            for k in range(len(poses.station)):
                at, turn = poses.position[k], poses.rotation[k]
                slope = (part.z[1] - part.z[0]) / (part.x[1] - part.x[0])
                cols = (u >= at[0] + part.x[0]) & (u <= at[0] + part.x[1])
                rows = (v >= at[1] + part.y[0]) & (v <= at[1] + part.y[1])
                x, y = u[cols] - at[0], (v[rows] - at[1])[:, None]
                z = (
                    at[2]
                    + turn[2, 0] * x
                    + turn[2, 1] * y
                    + turn[2, 2] * (part.z[0] + slope * (x - part.x[0]))
                )
                block = np.ix_(rows, cols)
                low[block] = np.minimum(low[block], z)
                gap = z - height.values[block]
                if gap.size and np.isfinite(gap).any() and np.nanmin(gap) < best:
                    best = float(np.nanmin(gap))
                    j, i = np.unravel_index(np.nanargmin(gap), gap.shape)
                    uv = (u[cols][i], v[rows][j])
                    x_site, y_site = frame.to_site(uv)
                    least[part.zone] = Contact(
                        best, part.zone, part.name, poses.variant, float(poses.station[k]),
                        (float(x_site), float(y_site)), (r, k),
                    )  # fmt: skip
        lowest[part.zone] = height.like(np.where(np.isinf(low), np.nan, low))
    every = np.fmin.reduce([g.values for g in lowest.values()])
    gap = height.like(every - height.values)
    return Clearance(lowest, gap, least, int((~np.isnan(every) & np.isnan(height.values)).sum()))


def _plan(height: HeightGrid, before: Clearance, feasible: bool) -> CutPlan:
    depth = np.clip(WANT + 0.001 - np.nan_to_num(before.gap.values, nan=9.0), 0.0, 0.013)
    for _ in range(6):  # a feather of 1:4, by neighbours
        for axis in (0, 1):
            for step in (1, -1):
                depth = np.maximum(depth, np.roll(depth, step, axis) - CELL / 4)
    depth = np.where(height.measured, depth, np.nan)
    worst = before.worst
    assert worst is not None
    gap = before.gap.values + depth
    limits = Limits(
        height.like(np.full(height.frame.shape, 0.013)), np.zeros(height.frame.shape, np.int16), ("deepest",)
    )
    after = Clearance(
        before.lowest,
        height.like(gap),
        {"belly": dataclasses.replace(worst, gap=float(np.nanmin(gap)))},
        before.unmeasured,
    )
    cut = np.nan_to_num(depth) > 0
    return CutPlan(
        height.like(depth), height.like(height.values - depth), limits, 0.001, float(np.nanmax(depth)),
        float(cut.sum() * CELL**2), float(np.nansum(depth) * CELL**2), feasible, "least", 0.0,
        0.0 if feasible else 0.004, None if feasible else worst,
        () if feasible else ("deepest 13 mm (an eighth of the thickness)", "keep area 'drain'"),
        Certificate(0.0, 0.00005, 0.6, 14, 1e-6), after,
    )  # fmt: skip


def nothing_to_cut(release: str = "not for cutting") -> Report:
    """The made-up job with all the air it needs: a cut of nothing, whatever the release says."""
    report = make_report(clearance=0.2, release=release)
    assert report.plan is not None
    none = report.plan.depth.like(report.plan.depth.values * 0.0)
    plan = dataclasses.replace(report.plan, depth=none, deepest=0.0, area=0.0, volume=0.0)
    return dataclasses.replace(report, plan=plan)


@cache
def make_report(
    unit: str = "m", ground=crest, kind: str = "crest", clearance: float = 0.105, angle: float = 0.5,
    hole: bool = True, release: str = "ok", feasible: bool = True, cut: bool = True, way: str = "forward",
) -> Report:  # fmt: skip
    """The whole made-up job. The grid is turned by ``angle``; coordinates are those of a survey."""
    frame = GridFrame((3.0, -2.0), angle, CELL, (round(WIDTH / CELL) + 1, round(LENGTH / CELL) + 1))
    u, v = np.meshgrid(np.arange(frame.shape[1]) * CELL, np.arange(frame.shape[0]) * CELL)
    z = ground(u, v)
    if hole:
        z = np.where(np.hypot(u - 7.0, v - 2.6) < 0.25, np.nan, z)
        z = np.where((u < 0.5) & (v < 0.6), np.nan, z)
    height = HeightGrid(frame, z)
    measured = height.measured
    error = ErrorModel(
        0.004, 0.0013, 0.1, 0.003, 0.38, "from residuals", "from two repeats", "prior for phone scanners"
    )
    surface = Surface(
        height, height, height.like(np.where(measured, 0.0006, np.nan)), measured, measured & (v < 2.9),
        error,
        (("planter", 1200), ("leaves", 90)), 120_000, ("a planter was left out",),
    )  # fmt: skip
    vehicle = van(clearance)
    rides = tuple(_poses(vehicle, ground, Variant(o, 0.0, way, "as measured")) for o in (0.0, -0.1, 0.1))
    ends = frame.to_site(np.array([[0.3, WIDTH / 2], [LENGTH - 0.3, WIDTH / 2]]))
    steps = np.linspace(0, 1, 421)[:, None]
    line = TravelLine(ends[0] * (1 - steps) + ends[1] * steps, np.full(421, angle), (LENGTH - 0.6) / 420)
    rides = tuple(dataclasses.replace(r, station=r.station - 0.3) for r in rides)
    before = _sweep(vehicle, height, rides)
    site = np.concatenate([frame.node_xy(), z[..., None]], axis=-1)[measured]
    scan = Scan(
        site[::7], np.zeros(len(site[::7]), np.int16), frame_in(unit),
        (ScanFile(Path("apron.laz"), "LAS", "a" * 64, len(site[::7]), 0, None, "written in it", "flattest"),),
    )  # fmt: skip
    job = Job(
        Path("courtyard.toml"), "Courtyard apron", ScanChoice((Path("apron.laz"),)),
        VehicleChoice(Path("van.toml")), Travel((PlanPoint(0, 0), PlanPoint(1, 0))),
        slab=Slab(kind="plain concrete", thickness=0.104, steel_depth=0.06), sha256="b" * 64,
    )  # fmt: skip
    worst = before.worst
    assert worst is not None
    share, verdict, odds = (0.97, "touches", "29 in 30") if worst.gap < 0 else (0.02, "clears", "1 in 50")
    today = Chance(
        worst.gap + 0.0007, (worst.gap - 0.004, worst.gap + 0.006), share, verdict,
        f"about {odds} that it touches", 0.0026, 0.7, 400,
    )  # fmt: skip
    corners = frame.to_site(np.array([[5.6, 0.1], [6.4, 0.1], [6.4, 0.9], [5.6, 0.9]]))
    marks = tuple(
        PlacedMark(name, tuple(float(c) for c in frame.to_site(uv)))
        for name, uv in (("A", (2.4, 0.3)), ("B", (6.9, 0.4)))
    )
    scan_carries = Reason(ReasonCode.SCAN, "the scan carries more than half of the margin")
    known: dict[str, tuple[Reason, ...]] = {"ok": (), "provisional": (scan_carries,)}
    unanswered = tuple(
        Reason(ReasonCode.UNANSWERED, words, about)
        for words, about in (
            ("post-tensioning is not answered: ask whoever poured the slab", Asked.POST_TENSIONED),
            ("steel depth is unknown", Asked.STEEL),
        )
    )
    reasons = known.get(release, unanswered)
    return Report(
        job, scan, surface, vehicle, Ride(line, rides, _batch(rides), 0), before, kind, today, None, None,
        _plan(height, before, feasible) if cut else None, None, release,
        reasons, marks=marks, keeps=(PlacedKeep("drain", corners, 0.0),), version="0.1.0", seed=7,
        seconds={"scan": 0.4, "surface": 1.2, "travel": 0.8},
    )  # fmt: skip
