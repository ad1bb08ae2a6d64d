"""What would be left if something were changed: ground, load, tyres, line. Stood up and swept again.

A trial looks twice. First every second station on every second node: there a gap is right to about a
millimetre, enough to tell which poses could be the worst. Then those, and their neighbours, on all nodes:
that is the figure given.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.contact import (
    VOID,
    Clearance,
    Ride,
    contact_ground,
    gaps_of_poses,
    hard_parts,
    plates_of,
    ridden_ground,
    settle_batch,
    wanted_gap,
    wheel_feet,
)
from crestcut.cut import inside
from crestcut.job import Wanted
from crestcut.terrain import Surface
from crestcut.vehicle import LoadState, Vehicle

# m: how much the coarse look may misjudge one pose against another (seen: 1.7 mm on the sample's own scan)
NEAR = 0.004
AWAY = 1.0e6  # m: the gap where no part meets anything


@dataclass(frozen=True, eq=False)
class Ground:
    """ridden : (ny, nx) under the tyres, under : (ny, nx) under the parts; m, ``VOID`` where not measured."""

    cell: float
    ridden: FloatArray
    under: FloatArray

    def raised(self, added: FloatArray) -> Ground:
        """With something laid on it, or taken away where negative, (ny, nx) m."""
        lift = lambda z: np.ascontiguousarray(np.where(z > VOID / 2, z + added, VOID))  # noqa: E731
        return Ground(self.cell, lift(self.ridden), lift(self.under))

    def coarse(self) -> Ground:
        """Every second node."""
        thin = lambda z: np.ascontiguousarray(z[::2, ::2])  # noqa: E731
        return Ground(2 * self.cell, thin(self.ridden), thin(self.under))


@dataclass(frozen=True)
class Tried:
    """gap : least of all zones, m.  excess : least gap beyond what its zone must keep, m.  pose : where
    that is.

    lost : share of the poses that put a tyre where nothing was measured; they are not judged.
    """

    gap: float
    excess: float
    pose: int
    lost: float = 0.0


@dataclass(frozen=True, eq=False)
class Baseline:
    """The job as it is: what every trial changes one thing of.

    places (n, 5) as ``records.Batch``, those poses only that are judged.  before : swept.  kept : (ny, nx)
    nodes of areas to be kept, on which nothing is laid.  fenced : those of them that the drawn line does
    not drive over: no other line may.  target : m beyond what is asked that a swept gap must leave to be sure
    enough.  margin : the same of a planned cut.
    """

    vehicle: Vehicle
    surface: Surface
    ride: Ride
    clearance: Clearance
    wanted: Wanted
    ground: Ground
    places: FloatArray
    before: Tried
    kept: BoolArray
    fenced: BoolArray
    loads: tuple[LoadState, ...]
    target: float = 0.0
    margin: float = 0.0

    @property
    def step(self) -> float:
        """m between stations."""
        return self.ride.line.step

    @property
    def gaps(self) -> Mapping[str, float]:
        """What every zone must keep, m."""
        return wanted_gap(self.wanted.want, self.wanted.want_ends)

    def pair_excess(self) -> FloatArray:
        """(n, hard parts) gap of each pose and part beyond what is asked, as it is, m."""
        assert self.clearance.pair_gap is not None
        asked = np.array([self.gaps[p.zone] for p in hard_parts(self.vehicle)])
        return self.clearance.pair_gap[self.ride.batch.live] - asked

    def within(self, reach: float) -> BoolArray:
        """(n,) poses at most ``reach`` m better off than the worst one."""
        excess = self.pair_excess().min(axis=1)
        return excess <= excess.min(initial=AWAY) + reach

    def tried(
        self,
        vehicle: Vehicle | None = None,
        added: FloatArray | None = None,
        places: FloatArray | None = None,
        falls: float | None = None,
    ) -> Tried:
        """The same job with another vehicle, with something laid down (ny, nx) m, or at other poses (n, 5).

        falls : no gap falls by more than this, m. Poses are then left out as long as none of them can be
        the least: with the worst left at excess e, a pose that had e + falls or more to begin with cannot
        be worse.
        """
        ground = self.ground if added is None else self.ground.raised(added)
        vehicle = vehicle or self.vehicle
        if falls is None:
            places = self.places if places is None else places
            return try_poses(vehicle, ground, places, self.step, self.gaps)
        reach = 2 * falls + 0.01
        while True:
            some = self.within(reach)
            found = try_poses(vehicle, ground, self.places[some], self.step, self.gaps)
            enough = max(found.excess, found.gap - min(self.gaps.values())) + falls - self.before.excess
            if enough <= reach or some.all():
                return found
            reach = enough + 1e-6


Trieds = tuple[Tried, ...]  # one for each vehicle over the slab, in their order


def spare(benches: Sequence[Baseline], tried: Sequence[Tried]) -> float:
    """What the vehicle that lacks most has beyond its target, m; negative: not enough."""
    return min(t.excess - b.target for b, t in zip(benches, tried, strict=True))


def bench(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    clearance: Clearance,
    wanted: Wanted,
    loads: Sequence[LoadState],
    keeps: Sequence[Sequence[tuple[float, float]]] = (),
) -> Baseline:
    """From the job's own ride and sweep with its loads; keeps : corners of the areas to be kept, site m."""
    frame = surface.height.frame
    ground = Ground(frame.cell, ridden_ground(surface)[0], contact_ground(surface))
    places = ride.batch.places[ride.batch.live]
    feet = np.rint(wheel_feet(vehicle, places).reshape(-1, 2) / frame.cell).astype(int)
    on = np.clip(feet[:, ::-1], 0, np.array(frame.shape) - 1)
    kept, fenced = np.zeros(frame.shape, dtype=bool), np.zeros(frame.shape, dtype=bool)
    for corners in keeps:
        area = inside(frame, corners)
        kept |= area
        if not area[on[:, 0], on[:, 1]].any():
            fenced |= area
    found = Baseline(
        vehicle,
        surface,
        ride,
        clearance,
        wanted,
        ground,
        places,
        Tried(AWAY, AWAY, 0),
        kept,
        fenced,
        tuple(loads),
    )
    worst = clearance.worst
    if worst is None:
        return found
    pair = found.pair_excess()
    pose = int(np.argmin(pair.min(axis=1)))
    return replace(found, before=Tried(worst.gap, float(pair.min()), pose))


def try_poses(
    vehicle: Vehicle, ground: Ground, places: FloatArray, step: float, gaps: Mapping[str, float]
) -> Tried:
    """Least gap and least excess of many poses (n, 5) in the order they are driven; see the head of this
    file.
    """
    coarse = np.arange(0, len(places), 2)
    rough = pose_gaps(vehicle, ground.coarse(), places[coarse], 2 * step, gaps)
    live = ~np.isnan(rough[:, 0])
    if not live.any():
        return Tried(AWAY, AWAY, 0, 1.0)
    near = (rough <= np.nanmin(rough, axis=0) + NEAR).any(axis=1)
    chosen = _neighbours(coarse[near], len(places))
    fine = pose_gaps(vehicle, ground, places[chosen], step, gaps)
    if np.isnan(fine).all():
        return Tried(AWAY, AWAY, 0, 1.0)
    gap, excess = np.nanmin(fine, axis=0)
    return Tried(float(gap), float(excess), int(chosen[np.nanargmin(fine[:, 1])]), float(1.0 - live.mean()))


def _neighbours(poses: IntArray, count: int) -> IntArray:
    around = np.concatenate([poses - 1, poses, poses + 1])
    return np.unique(around[(around >= 0) & (around < count)])


def pose_gaps(
    vehicle: Vehicle, ground: Ground, places: FloatArray, between: float, gaps: Mapping[str, float]
) -> FloatArray:
    """(n, 2) least gap, and least gap beyond what its zone must keep, of each pose, m; NaN where a tyre
    stands on nothing.

    between : m from one station to the next (see ``sweep.plates_of``).
    """
    batch = settle_batch(vehicle, ground.ridden, ground.cell, places, np.zeros(len(places), np.int64))
    parts, out = hard_parts(vehicle), np.full((len(places), 2), AWAY)
    each = gaps_of_poses(ground.under, ground.cell, batch, plates_of(parts, between))
    for asked in sorted(set(gaps.values())):
        mine = [k for k, part in enumerate(parts) if gaps[part.zone] == asked]
        least = each[:, mine].min(axis=1, initial=AWAY)
        out = np.minimum(out, np.stack([least, least - asked], axis=1))
    out[~batch.live] = np.nan
    return out
