"""The vehicle as measured: wheels, tyres, springs, underside, load states.

Vehicle frame (ISO 8855 axes): x forward, y left, z up; origin on flat ground under the middle of the rear
axle. Metres.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from crestcut.base.summary import Summary
from crestcut.base.units import millimetres


@dataclass(frozen=True)
class Part:
    """A plate of the underside. ``x`` = (rear, front) and ``y`` = (right, left) edges; ``z`` = height at
    (rear, front) edge.

    zone : "belly" between the axles, "nose" ahead of the front axle, "tail" behind the rear one (by the
    plate's middle).
    on : "body", or the axle that carries it unsprung.  within : 1 sd of its height, metres.
    """

    name: str
    x: tuple[float, float]
    y: tuple[float, float]
    z: tuple[float, float]
    zone: str
    on: str = "body"
    soft: bool = False
    within: float = 0.003


@dataclass(frozen=True)
class Springs:
    """Vertical rate of one wheel (N/m) at front and rear, anti-roll rate per axle (N m/rad), droop (m), axle
    loads (N).

    The defaults are equal springs, no bars: only the ratios matter while no wheel hangs.
    """

    front_rate: float = 25_000.0
    rear_rate: float = 25_000.0
    front_anti_roll: float = 0.0
    rear_anti_roll: float = 0.0
    front_droop: float | None = None
    rear_droop: float | None = None
    front_load: float | None = None
    rear_load: float | None = None
    unsprung: float | None = None
    measured: bool = False  # False: the defaults, said so


@dataclass(frozen=True)
class LoadState:
    """How far the body moves at each axle against 'as measured', metres, negative = lower."""

    name: str
    front: float = 0.0
    rear: float = 0.0


AS_MEASURED = LoadState("as measured")


@dataclass(frozen=True, repr=False)
class Vehicle(Summary):
    """A measured vehicle. Lengths in metres in the vehicle frame; None where it was not measured.

    ``centre_of_mass``: x, y, z, of carts, and of sprung vehicles where weight shifts with the grade.
    ``notes``: plain sentences on what the file does not say.  ``doubts``: on figures that look mistaken.
    """

    path: Path
    name: str
    wheelbase: float
    front_track: float
    rear_track: float
    tyre_radius: float  # hub centre to flat ground, loaded
    tyre_width: float
    width: float
    belly_clearance: float
    front_overhang: float | None = None
    rear_overhang: float | None = None
    turning_radius: float | None = None
    parts: tuple[Part, ...] = ()  # the belly plate first, named "belly"
    loads: tuple[LoadState, ...] = (AS_MEASURED,)
    springs: Springs = field(default_factory=Springs)
    rigid: bool = False
    centre_of_mass: tuple[float, float, float] | None = None
    tyre_tread: float | None = None  # depth of the tread today
    sha256: str = ""
    underside: tuple[str, str] | None = None  # name and sha256 of the mesh or scan it was read from
    notes: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()

    @property
    def summary(self) -> str:
        """Its sizes, what was measured under it, and its loads."""
        loads = ", ".join(load.name for load in self.loads)
        return (
            f"{self.name}, wheelbase {self.wheelbase:.2f} m, {millimetres(self.belly_clearance, 0)} under the"
            f" belly\n  {len(self.parts)} parts of the underside; loads: {loads}"
        )
