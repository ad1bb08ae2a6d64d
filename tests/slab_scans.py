"""Scanned slabs of known shape: families of trend and feature, waves of concrete, points with a scan's own
error. Metres; everything drawn from a seed."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Passage, TravelLine
from crestcut.contact.stand.ride import ride
from crestcut.scan.records import Frame, Scan
from crestcut.terrain.breaklines.breaks import Break
from crestcut.terrain.build import build_surface
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.vehicle.records import AS_MEASURED, Vehicle
from scenes import STRAIGHT, belly, vehicle
from simulated import draw_fields

GRADE = 0.16  # of the crest
ROUNDED, PLAN, VERTICAL = 0.15, 3.0, 1.5  # m: rho, radius in plan, length of a vertical curve
HUMP, HUMP_SIZE, STEP, RUT, RUT_SIZE, CROWN = 0.012, 0.15, 0.010, 0.008, 0.12, 0.006  # m
WITHIN = 0.0005  # m, 1 sd of each part of the vehicle
CELL, DENSITY = 0.01, 2500  # m; points per m2
WARP_HALF, PATCH_SHARE, PATCH_LENGTH = 0.4, 0.26, 0.1  # m; patch over warp, as the prior for phones has it; m
EXACT = 0.001  # m of scan error below which it is a terrestrial scan: less noise, no patch


def as_fitted(
    height: HeightGrid, white: float, patch: float = 0.0013, breaks: tuple[Break, ...] = ()
) -> Surface:
    """These heights as if fitted to a scan with so much white error at a node and patch noise, 1 sd in m."""
    error = ErrorModel(0.0, patch, PATCH_LENGTH, 0.0, WARP_HALF, "made", "made", "made")
    se = height.like(np.where(height.measured, white, np.nan))
    return Surface(height, height, se, height.measured, height.measured, error, (), 0, breaks=breaks)


def _planes(x: FloatArray, y: FloatArray) -> FloatArray:
    return -GRADE * np.maximum(x, 0.0)


def _rounded(x: FloatArray, y: FloatArray) -> FloatArray:
    return -GRADE / 2 * (x + np.hypot(x, ROUNDED))


def _curved_in_plan(x: FloatArray, y: FloatArray) -> FloatArray:
    return -GRADE * np.maximum(np.hypot(x + PLAN, y) - PLAN, 0.0)


def _vertical_curve(x: FloatArray, y: FloatArray) -> FloatArray:
    inside = np.clip(x + VERTICAL / 2, 0.0, VERTICAL)
    return -GRADE * (inside**2 / (2 * VERTICAL) + np.maximum(x - VERTICAL / 2, 0.0))


def _hump(x: FloatArray, y: FloatArray) -> FloatArray:
    away = (x - 0.3) ** 2 + (y - 0.2) ** 2
    return _planes(x, y) + HUMP * np.exp(-away / (2 * HUMP_SIZE**2))


def _step(x: FloatArray, y: FloatArray) -> FloatArray:
    return _planes(x, y) - STEP * (x > -0.6)


def _ruts(x: FloatArray, y: FloatArray) -> FloatArray:
    both = sum(np.exp(-((y - at) ** 2) / (2 * RUT_SIZE**2)) for at in (-0.75, 0.75))
    return _planes(x, y) - RUT * both


def _crown(x: FloatArray, y: FloatArray) -> FloatArray:
    return _planes(x, y) - CROWN * (y / 1.2) ** 2


# heights of a slab that falls away beyond x = 0, driven along x
FAMILIES: dict[str, Callable[[FloatArray, FloatArray], FloatArray]] = {
    "planes": _planes, "rounded": _rounded, "plan": _curved_in_plan, "curve": _vertical_curve,
    "hump": _hump, "step": _step, "ruts": _ruts, "crown": _crown,
}  # fmt: skip


@dataclass(frozen=True)
class Setting:
    """family : of ``FAMILIES``.  waves (1 sd, m) of the slab, covariance one half at ``half`` m.  scan : 1 sd
    of its warp, m.  named : the scanner, rightly, wrongly or not at all ("right", "wrong", "none")."""

    family: str
    waves: float
    half: float
    scan: float
    named: str

    @property
    def scanner(self) -> str | None:
        """As a job file names it."""
        if self.named == "none":
            return None
        return "phone" if (self.scan > EXACT) == (self.named == "right") else "terrestrial"


@dataclass(frozen=True, eq=False)
class Case:
    """scan : its points, in no order.  vehicle : as measured.  truth : least gap of the true vehicle over the
    true slab, m, whose ``heights`` are those of the frame."""

    scan: Scan
    line: TravelLine
    heights: HeightGrid
    vehicle: Vehicle
    truth: float


def measured_vehicle() -> Vehicle:
    """A floor so wide and low that crest, hump and crown all decide."""
    return vehicle(replace(belly(0.075, half=0.6, back=0.2, front=2.6), within=WITHIN))


def simulated(setting: Setting, seed: int) -> Case:
    """One slab, one scan of it, one vehicle as it truly is."""
    rng = np.random.default_rng([seed, 17])
    car = measured_vehicle()
    line = travel_line([(-2.6, 0.0), (2.9, 0.0)], car, STRAIGHT, CELL)
    frame = window(line, car, STRAIGHT, CELL, margin=0.2)
    moved = rng.uniform(-0.05, 0.05, 2)  # no crest lies on a row of nodes by design

    def shape(xy: FloatArray) -> FloatArray:
        return FAMILIES[setting.family](xy[..., 0] - moved[0], xy[..., 1] - moved[1])

    base = HeightGrid(frame, shape(frame.node_xy()))
    slab = base.like(base.values + field(frame, setting.waves, setting.half, 3 * seed))
    wrong = field(frame, setting.scan, WARP_HALF, 3 * seed + 1)
    if setting.scan > EXACT:
        wrong = wrong + field(frame, PATCH_SHARE * setting.scan, PATCH_LENGTH / 2, 3 * seed + 2)
    uv = rng.random((int(DENSITY * math.prod(frame.size)), 2)) * frame.size
    xy = frame.to_site(uv)
    # between nodes the trend itself: a crest that the nodes cut is not cut in the scan
    smooth = slab.like(slab.values - base.values + wrong).sample(xy)
    z = shape(xy) + smooth + rng.normal(0.0, 0.006 if setting.scan > EXACT else 0.0015, len(xy))
    true = _true_surface(slab, _rise(base, shape))
    part = car.parts[0]
    up = rng.normal(0.0, part.within)
    other = replace(car, parts=(replace(part, z=(part.z[0] + up, part.z[1] + up)),))
    worst = passed(other, true, line).clearance.worst
    assert worst is not None
    return Case(scan_of(np.column_stack([xy, z])), line, slab, car, worst.gap)


def scan_of(points: FloatArray) -> Scan:
    """A scan in metres, z up, from nowhere."""
    placed = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    return Scan(points, np.zeros(len(points), np.int16), placed, ())


def field(frame: GridFrame, sd: float, half: float, seed: int) -> FloatArray:
    """(ny, nx) a Matern-3/2 field of this sd, m, whose covariance is one half at ``half`` m."""
    if sd <= 0:
        return np.zeros(frame.shape)
    return next(draw_fields(ErrorModel(0.0, 0.0, 0.1, sd, half, "", "", ""), frame, None, seed, 1))


def fitted(case: Case, error: ErrorModel | None = None, scanner: str | None = None) -> Surface:
    """The surface that the scan's points are fitted with, over the vehicle's window."""
    return build_surface(case.scan, case.heights.frame, scanner, error)


def passed(car: Vehicle, surface: Surface, line: TravelLine) -> Passage:
    """The vehicle stood along the line and its underside swept."""
    rode = ride(car, surface, line, STRAIGHT, (AS_MEASURED,))
    return Passage(car, surface, rode, sweep(car, surface, rode))


def _true_surface(slab: HeightGrid, rise: FloatArray) -> Surface:
    every = np.ones(slab.frame.shape, bool)
    nothing = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.4, "", "", "")
    top = slab.like(slab.values + rise)
    return Surface(slab, top, slab.like(np.full(every.shape, 1e-5)), every, every, nothing, (), 0)


def _rise(base: HeightGrid, shape: Callable[[FloatArray], FloatArray]) -> FloatArray:
    """(ny, nx) the most by which ``shape`` rises inside each node's cell over the straight line between its
    nodes, m: as ``build_surface`` makes its top."""
    frame, most = base.frame, np.zeros(base.frame.shape)
    apart = np.linspace(-0.4, 0.4, 5) * frame.cell
    at = frame.node_xy()
    for du in apart:
        for dv in apart:
            xy = at + frame.to_site([du, dv]) - frame.to_site([0.0, 0.0])
            most = np.fmax(most, shape(xy) - base.sample(xy))
    return most
