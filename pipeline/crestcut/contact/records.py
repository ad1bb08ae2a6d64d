"""Where the vehicle goes, how it stands there, and how low it reaches."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from crestcut.base.grid import FloatArray, HeightGrid, frozen_array
from crestcut.base.summary import Summary
from crestcut.base.units import millimetres
from crestcut.job import Travel
from crestcut.terrain import Surface
from crestcut.vehicle import AS_MEASURED, LoadState, Vehicle

ZONES = ("belly", "nose", "tail")
AS_USUAL = Travel()
WHEELS = ("front left", "front right", "rear left", "rear right")


@dataclass(frozen=True, eq=False)
class TravelLine:
    """The path of the vehicle's middle on the ground, guided at the rear axle.

    xy : (n, 2) site metres, ``step`` apart.  yaw : (n,) of its tangent from the site's x axis, radians,
    unwrapped.
    """

    xy: FloatArray
    yaw: FloatArray
    step: float
    # plain sentences: how tight its bends are, and how far it leaves what was drawn
    notes: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        object.__setattr__(self, "xy", frozen_array(self.xy, ndim=2, name="xy"))
        object.__setattr__(self, "yaw", frozen_array(self.yaw, ndim=1, name="yaw"))

    @property
    def length(self) -> float:
        """Metres."""
        return (len(self.xy) - 1) * self.step


@dataclass(frozen=True)
class Variant:
    """One way to drive the line: sideways offset (m, left positive), heading off the line (rad), way and
    load."""

    offset: float
    heading: float
    way: str  # forward | turned
    load: str


@dataclass(frozen=True, eq=False)
class Poses:
    """Every station of one variant. Chassis point c lies at ``rotation[p] @ c + position[p]`` in *grid* axes
    (u, v, z), metres.

    station : (n,) of the front axle's middle from the line's start along it, m.  wheels : (n, 4) height of
    the tyre's lowest point as it stands (order WHEELS), m.  contact : (n, 4) flat index of the node each tyre
    stands on, -1 where unknown.
    position : (n, 3).  rotation : (n, 3, 3).  live : (n,) False where a tyre would stand on nothing
    measured: not judged.
    """

    variant: Variant
    station: FloatArray
    wheels: FloatArray
    contact: NDArray[np.int64]
    position: FloatArray
    rotation: FloatArray
    live: NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class Batch:
    """All poses of all variants in one set of arrays, as the kernels want them; ``Poses`` are views into it.

    places : (n, 5) u, v of the rear axle's middle, yaw from the grid's u axis, body shift at front and rear
    axle (load), m and rad.
    variant : (n,) index into Ride.poses.  live : (n,) False where a tyre would stand on nothing measured.
    wheels (n, 4), contact (n, 4), position (n, 3, 3), rotation (n, 3, 3, 3): as ``tyres.settle`` leaves them.
    """

    places: FloatArray
    variant: NDArray[np.int64]
    live: NDArray[np.bool_]
    wheels: FloatArray
    contact: NDArray[np.int64]
    position: FloatArray
    rotation: FloatArray


@dataclass(frozen=True, eq=False, repr=False)
class Ride(Summary):
    """All variants of the vehicle on the line.  travel, loads : what it was stood up for."""

    line: TravelLine
    poses: tuple[Poses, ...]
    batch: Batch
    filled: int  # nodes that were bridged for the tyres because the scan has a small hole there
    notes: tuple[str, ...] = ()  # plain sentences: positions that could not be judged, and why
    travel: Travel = AS_USUAL
    loads: tuple[LoadState, ...] = (AS_MEASURED,)

    @property
    def summary(self) -> str:
        """How many ways of driving which line were stood up."""
        live = int(self.batch.live.sum())
        return (
            f"{self.line.length:.2f} m, {len(self.poses)} ways to drive it, {len(self.batch.live):,} stations"
            f"\n  {len(self.batch.live) - live:,} of them not judged: a tyre would stand on nothing measured"
        )


@dataclass(frozen=True)
class Contact:
    """The place where a gap is least."""

    gap: float  # m, negative = overlap
    zone: str  # belly | nose | tail
    part: str
    variant: Variant
    station: float  # of the front axle from the line's start, m
    xy: tuple[float, float]  # site, m
    pose: tuple[int, int]  # index into Ride.poses, and of the station in it


@dataclass(frozen=True, eq=False, repr=False)
class Clearance(Summary):
    """Lowest height any underside part reaches over each cell, per zone, and the gap it leaves.

    lowest : zone -> HeightGrid, metres (NaN: never reached).  gap : lowest of all zones minus ground, NaN
    where unmeasured or never reached.  least : zone -> the worst contact (absent: that zone has no part or
    never meets measured ground).
    unmeasured : cells that the underside passes over and the scan has not.
    pair_gap : (poses, hard parts) least gap of each, m, very large where there is none; None where it was
    not kept.
    """

    lowest: dict[str, HeightGrid]
    gap: HeightGrid
    least: dict[str, Contact]
    unmeasured: int
    pair_gap: FloatArray | None = None

    @property
    def summary(self) -> str:
        """The least gap of each zone, and where."""
        if not self.least:
            return "no part meets measured ground"
        gaps = "; ".join(
            f"{zone} {millimetres(c.gap)} ({c.part}, {c.station:.2f} m along the line)"
            for zone, c in self.least.items()
        )
        return f"least gaps {gaps}"

    @property
    def worst(self) -> Contact | None:
        """The least gap of all zones."""
        return min(self.least.values(), key=lambda c: c.gap, default=None)


@dataclass(frozen=True, eq=False)
class Passage:
    """One vehicle driven along one line over one surface: how it stood at every station, and what it cleared.

    ride and clearance are those of this vehicle on this surface (``ride`` and ``sweep`` make them).
    parts (hard parts, d) : drawn heights of parts over the vehicle's, m, where readings have told of them, in
    step with the draws of the slab; None: as well as they were measured.  contradictions : readings that do
    not agree, in words; then none was used.
    """

    vehicle: Vehicle
    surface: Surface
    ride: Ride
    clearance: Clearance
    parts: FloatArray | None = None
    contradictions: tuple[str, ...] = ()
