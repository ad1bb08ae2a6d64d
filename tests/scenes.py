"""Analytic grounds and made-up vehicles for the tests of ride, sweep and cut. All of it invented; metres."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Clearance, Passage, Ride, TravelLine
from crestcut.contact.stand.ride import ride
from crestcut.cut.limits import KeepArea, cut_limits
from crestcut.cut.plan import plan_cut
from crestcut.cut.records import CutPlan, Limits
from crestcut.job.records import Slab, Travel, Wanted
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.vehicle.records import AS_MEASURED, Part, Vehicle

Ground = Callable[[FloatArray, FloatArray], FloatArray]
L, R, TRACK, TYRE = 2.8, 0.315, 1.5, 0.2
NO_ERROR = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.4, "none", "none", "none")
STRAIGHT = Travel(line=(), wander=0.0, heading=0.0)
ANSWERED = Slab(
    kind="plain concrete", thickness=0.150, thickness_from="drilled",
    steel_depth=0.060, steel_from="covermeter",
    post_tensioned="no", post_tensioned_from="drawing", heating="no", heating_from="owner in writing",
    conduit="no", conduit_from="locating service", suspended="no", suspended_from="drawing",
    permission="yes", permission_from="owner in writing",
)  # fmt: skip  # every question of the release answered, and nothing in the way of a cut


def belly(clearance: float = 0.12, half: float = 0.65, back: float = 0.0, front: float = L) -> Part:
    return Part("belly", (back, front), (-half, half), (clearance, clearance), "belly")


def lip(clearance: float = 0.15) -> Part:
    return Part("front lip", (L + 0.7, L + 0.9), (-0.7, 0.7), (clearance, clearance), "nose")


def vehicle(*parts: Part, **changes: object) -> Vehicle:
    base = Vehicle(
        Path("made_up.toml"),
        "made-up",
        L,
        TRACK,
        TRACK,
        R,
        TYRE,
        1.75,
        0.12,
        0.9,
        0.8,
        None,
        parts or (belly(),),
    )
    return replace(base, **changes)  # type: ignore[arg-type]


def surface_of(ground: Ground, frame: GridFrame, holes: np.ndarray | None = None) -> Surface:
    xy = frame.node_xy()
    z = np.asarray(ground(xy[..., 0], xy[..., 1]), dtype=float) + np.zeros(frame.shape)
    if holes is not None:
        z = np.where(holes, np.nan, z)
    height = HeightGrid(frame, z)
    known = height.measured
    return Surface(height, height, height.like(np.where(known, 1e-4, np.nan)), known, known, NO_ERROR, (), 0)


@dataclass(frozen=True, eq=False)
class Scene:
    vehicle: Vehicle
    travel: Travel
    line: TravelLine
    surface: Surface
    ride: Ride
    before: Clearance

    @property
    def passage(self) -> Passage:
        return Passage(self.vehicle, self.surface, self.ride, self.before)

    def under(self, error: ErrorModel) -> Passage:
        """As ``passage``, by a scan that may be wrong by this."""
        return scanned_with(self.passage, error)

    def limits(
        self, deepest: float = 0.06, feather: float = 0.25, keeps: tuple[KeepArea, ...] = ()
    ) -> Limits:
        return cut_limits(self.surface, deepest, "deepest", feather, keeps)

    def plan(
        self,
        deepest: float = 0.06,
        feather: float = 0.25,
        keeps: tuple[KeepArea, ...] = (),
        wanted: Wanted | None = None,
    ) -> CutPlan:
        limits = self.limits(deepest, feather, keeps)
        asked = wanted or Wanted()
        return plan_cut(self.passage, limits, asked, 0.0, feather)


def scanned_with(passage: Passage, error: ErrorModel) -> Passage:
    """The passage over the same surface of a scan that may be wrong by this."""
    return replace(passage, surface=replace(passage.surface, error=error))


def scene(
    ground: Ground,
    car: Vehicle | None = None,
    travel: Travel = STRAIGHT,
    start: tuple[float, float] = (-4.0, 0.0),
    end: tuple[float, float] = (4.0, 0.0),
    cell: float = 0.01,
) -> Scene:
    car = car or vehicle()
    line = travel_line([start, end], car, travel, cell)
    surface = surface_of(ground, window(line, car, travel, cell, margin=0.2))
    return stand(car, travel, line, surface)


def stand(car: Vehicle, travel: Travel, line: TravelLine, surface: Surface) -> Scene:
    rode = ride(car, surface, line, travel, (AS_MEASURED,))
    return Scene(car, travel, line, surface, rode, sweep(car, surface, rode))


def crest(grade: float, angle: float = 0.0, x0: float = 0.0) -> Ground:
    """A sharp ridge, ``grade`` down on both sides, its line turned by ``angle`` from across the travel."""
    return lambda x, y: -grade * np.abs((x - x0) * np.cos(angle) + y * np.sin(angle))


def arc(radius: float) -> Ground:
    """A round hump about x = 0, level from 5 m out."""
    return lambda x, y: np.sqrt(radius**2 - np.clip(x, -5, 5) ** 2) - radius
