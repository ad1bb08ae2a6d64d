"""Fixes that add instead of taking away: strips in the wheel tracks, a fillet in the gutter."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from scipy import ndimage

from crestcut.cut.feather import feather_out
from crestcut.cut.plan import ride_on
from crestcut.grid import BoolArray, FloatArray
from crestcut.job.records import Wanted
from crestcut.surface.records import Surface
from crestcut.travel.records import Clearance, Ride
from crestcut.travel.ride import wheel_feet
from crestcut.travel.sweep import sweep, wanted_gap
from crestcut.vehicle.records import Vehicle

STRIPS = (0.006, 0.010, 0.015, 0.020, 0.025, 0.030, 0.040, 0.050)  # m, thicknesses tried
STRIP_TAPER = 0.25  # rise over run at their ends and edges (common practice, no source)
FILLETS = (0.5, 1.0, 2.0, 4.0, 8.0)  # m, radii tried


@dataclass(frozen=True, eq=False)
class Added:
    """Something laid on the ground: height added (ny, nx) m, the ground with it, and what the vehicle then
    clears.
    """

    name: str
    size: float  # m: thickness of strips, radius of a fillet
    added: FloatArray
    surface: Surface
    ride: Ride
    after: Clearance
    excess: float  # least gap beyond what is wanted, m

    @property
    def litres(self) -> float:
        return float(np.nansum(self.added)) * self.surface.height.frame.cell**2 * 1000


def least_excess(clearance: Clearance, wanted: Wanted) -> float:
    """Least gap beyond what its zone must keep, m; infinite where nothing comes near."""
    gaps = wanted_gap(wanted.want, wanted.want_ends)
    return min((c.gap - gaps[zone] for zone, c in clearance.least.items()), default=float("inf"))


def raised(surface: Surface, added: FloatArray) -> Surface:
    """The surface with something laid on it, (ny, nx) m >= 0."""
    return replace(
        surface,
        height=surface.height.like(surface.height.values + added),
        top=surface.top.like(surface.top.values + added),
    )


def lay(
    name: str, size: float, added: FloatArray, vehicle: Vehicle, surface: Surface, ride: Ride, wanted: Wanted
) -> Added:
    """Lay it down, stand the vehicle on it and sweep again."""
    ground = raised(surface, added)
    rode = ride_on(ride, vehicle, ground)
    after = sweep(vehicle, ground, rode)
    return Added(name, size, added, ground, rode, after, least_excess(after, wanted))


def strips(vehicle: Vehicle, surface: Surface, ride: Ride, before: Clearance, wanted: Wanted) -> Added | None:
    """Strips where the tyres stand while a gap is too small, the thinnest of ``STRIPS`` that gives ``want``.

    Where none does, the one that leaves the most. None where no pose is short.
    """
    where = _under_tyres(vehicle, surface, ride, before, wanted)
    if not where.any():
        return None
    cell = surface.height.frame.cell
    best: Added | None = None
    for thick in STRIPS:
        added, _ = feather_out(np.where(where, thick, 0.0), STRIP_TAPER, cell)
        trial = lay("ramp strips in the wheel tracks", thick, added, vehicle, surface, ride, wanted)
        if best is None or trial.excess > best.excess:
            best = trial
        if trial.excess >= 0:
            return trial
    return best


def _under_tyres(
    vehicle: Vehicle, surface: Surface, ride: Ride, before: Clearance, wanted: Wanted
) -> BoolArray:
    """(ny, nx) nodes under a tyre's foot at any pose whose gap is short."""
    from crestcut.travel.sweep import hard_parts

    gaps, parts = wanted_gap(wanted.want, wanted.want_ends), hard_parts(vehicle)
    assert before.pair_gap is not None
    short = ((before.pair_gap - np.array([gaps[p.zone] for p in parts])) < 0).any(axis=1) & ride.batch.live
    feet = wheel_feet(vehicle, ride.batch.places[short]).reshape(-1, 2)
    frame = surface.height.frame
    foot = np.zeros(frame.shape, dtype=bool)
    i, j = np.rint(feet[:, 0] / frame.cell).astype(int), np.rint(feet[:, 1] / frame.cell).astype(int)
    on = (i >= 0) & (j >= 0) & (i < frame.shape[1]) & (j < frame.shape[0])
    foot[j[on], i[on]] = True
    half = max(round(vehicle.tyre_width / 2 / frame.cell), 1)
    wide = ndimage.maximum_filter(foot.astype(np.uint8), size=(2 * half + 1, 2 * half + 1)).astype(bool)
    return wide & surface.rollable


def fillet(vehicle: Vehicle, surface: Surface, ride: Ride, wanted: Wanted) -> Added | None:
    """A round filling of the hollow along the travel, the smallest of ``FILLETS`` that lifts the nose over
    it.

    The ground is closed by a disk of that radius along the travel (ISO 16610-41: what lies below a wheel of
    that size is filled up).
    Only nodes on rollable ground are filled. Where no radius gives ``want``, the one that leaves the most;
    None where nothing is hollow.
    """
    best: Added | None = None
    for radius in FILLETS:
        added = _closed(surface, radius)
        if added.max(initial=0.0) < 1e-3:
            continue
        trial = lay("fillet in the gutter", radius, added, vehicle, surface, ride, wanted)
        if best is None or trial.excess > best.excess:
            best = trial
        if trial.excess >= 0:
            return trial
    return best


def _closed(surface: Surface, radius: float) -> FloatArray:
    """Height that a disk of ``radius`` rolled along the rows leaves unfilled below it, (ny, nx) m."""
    cell, z = surface.height.frame.cell, surface.height.values
    n = int(min(radius, 1.5) / cell)
    drop = np.sqrt(radius**2 - (np.arange(-n, n + 1) * cell) ** 2) - radius
    low = np.where(surface.rollable & ~np.isnan(z), z, -1e6)
    grown = ndimage.grey_dilation(low, structure=drop[None, :], footprint=np.ones((1, 2 * n + 1)))
    closed = ndimage.grey_erosion(grown, structure=drop[None, :], footprint=np.ones((1, 2 * n + 1)))
    filled = np.where(surface.rollable & ~np.isnan(z), np.maximum(closed - z, 0.0), 0.0)
    filled[:, : 2 * n + 1] = 0.0  # the disk hangs over the end of the raster there
    filled[:, -2 * n - 1 :] = 0.0
    return np.where(filled < 1e-4, 0.0, filled)
