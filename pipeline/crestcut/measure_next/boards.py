"""Boards to feel a gap on: so thick that nothing touches where the vehicle stands, nor on the way on and off.

One board lies under each tyre. The vehicle rolls on and off the same way, so its front wheels cross the rear
boards while the rear ones are on the slab: every such pose is looked at on every draw of slab and vehicle.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.grid import BoolArray, FloatArray, IntArray
from crestcut.chance import (
    ActiveContacts,
    DrawnErrors,
    boards_add,
    find_active_contacts,
    reach_of,
)
from crestcut.contact import FAR, Passage, wheel_feet
from crestcut.measure_next.draws import Stand
from crestcut.terrain import Evidence

SURE = 0.98  # share of the draws in which nothing may touch
# rise over run of the vehicle as it stands: steeper ground, and wet ground steeper than the second, wants a
# string instead (common practice, no source)
STEEPEST, STEEPEST_WET = 0.15, 0.10
BEYOND = 0.35  # m of board past the tyre's middle: for the tyre's foot and a chock
BEFORE = (0.35, 0.60, 0.90, 1.20)  # m of board ahead of that, on the way on, to choose from
ROCKS = 0.010  # m that the slab may stand over the line from end to end of a board: more, and it tips
STRAIGHT = 0.05  # rad that the line may turn along the boards


@dataclass(frozen=True, eq=False)
class _WayOn:
    """How the vehicle rolls onto a stand. poses : of the stand's own drive up to it, by index in the batch;
    travel : how far each still has to roll, m (never above zero); none where the line bends on the way."""

    stand: Stand
    backwards: bool
    poses: IntArray
    travel: FloatArray

    @property
    def heading(self) -> FloatArray:
        """The way it rolls, (2,) along u and v."""
        yaw = self.stand.place[2]
        return (-1.0 if self.backwards else 1.0) * np.array([np.cos(yaw), np.sin(yaw)])


@dataclass(frozen=True)
class Boards:
    """One under each tyre. thickness m; before, beyond : m of it to either side of the tyre's middle, before
    on the way on; backwards : whether it is rolled on from ahead; clear : share of the draws in which nothing
    touches on the way; held : m that bridging adds to a gap, on average; noise : variance of that and of the
    thickness, m2; dry_only : steeper than wet ground allows.
    """

    thickness: float
    before: float
    beyond: float
    backwards: bool
    clear: float
    held: float
    noise: float
    dry_only: bool

    @property
    def length(self) -> float:
        """Of each board, m."""
        return self.before + self.beyond


def plan_boards(
    passage: Passage, stand: Stand, sizes: Sequence[float], evidence: Evidence | None = None, seed: int = 0
) -> Boards | None:
    """The thinnest boards that serve at a stand, and of those the shortest; None where it is too steep or
    none does.  sizes : thicknesses to be had, m.
    """
    vehicle, surface = passage.vehicle, passage.surface
    up = passage.ride.batch.rotation[stand.pose, 0, 2]
    grade = float(np.hypot(up[0], up[1]) / up[2])
    if not sizes or grade > STEEPEST:
        return None
    for backwards in (False, True):
        way = _way_on(passage, stand, backwards)
        tried = [
            (h, before)
            for h, before in itertools.product(sorted(sizes), BEFORE)
            if before + BEYOND < vehicle.wheelbase
            and -float(way.travel.min(initial=0.0)) > before + vehicle.tyre_radius
            and _lies(passage, way, before)
        ]
        found = _clear(passage, way, tried, evidence, seed)
        if found is not None:
            (thickness, before), clear = found
            raised = np.full(4, thickness)
            held, noise = boards_add(vehicle, surface, stand.place, stand.weights, raised)
            return Boards(
                thickness, before, BEYOND, backwards, clear, held, noise, grade > STEEPEST_WET
            )  # fmt: skip
    return None


def _way_on(passage: Passage, stand: Stand, backwards: bool) -> _WayOn:
    batch = passage.ride.batch
    index = np.flatnonzero((batch.variant == batch.variant[stand.pose]) & batch.live)
    way = _WayOn(stand, backwards, index[:0], np.zeros(0))
    travel = (batch.places[index, :2] - stand.place[:2]) @ way.heading
    longest = passage.vehicle.wheelbase + BEFORE[-1] + passage.vehicle.tyre_radius
    on = (travel < 1e-6) & (travel > -longest)
    bends = bool((np.abs(batch.places[index[on], 2] - stand.place[2]) > STRAIGHT).any())
    return way if bends else replace(way, poses=index[on], travel=travel[on])


def _lies(passage: Passage, way: _WayOn, before: float) -> bool:
    """Whether every board lies on measured slab from end to end, and does not rock over a crest."""
    surface = passage.surface
    along = np.linspace(-before, BEYOND, 40)
    share = (along + before) / (before + BEYOND)
    for foot in wheel_feet(passage.vehicle, way.stand.place[None])[0]:
        height = surface.height.sample(surface.height.frame.to_site(foot + along[:, None] * way.heading))
        over = height - (1 - share) * height[0] - share * height[-1]
        if np.isnan(height).any() or over.max() > ROCKS:
            return False
    return True


def _clear(
    passage: Passage,
    way: _WayOn,
    tried: Sequence[tuple[float, float]],
    evidence: Evidence | None,
    seed: int,
) -> tuple[tuple[float, float], float] | None:
    """The first of the boards ``tried`` (thickness, length before the tyre; m) on which nothing touches, and
    in how many of the draws; None if none."""
    if not tried:
        return None
    pair_gap = passage.clearance.pair_gap
    assert pair_gap is not None
    only = np.full_like(pair_gap, FAR)
    only[way.poses] = pair_gap[way.poses]
    rolling = replace(passage, clearance=replace(passage.clearance, pair_gap=only))
    contacts = find_active_contacts(
        rolling, reach_of(passage), evidence, open_to=max(h for h, _ in tried)
    )  # fmt: skip
    if contacts is None:
        return None
    errors = DrawnErrors(passage, contacts, evidence, seed, 100)
    field = -errors.fold.ground.astype(np.float32)[:, None] - errors.ground
    shift = (errors.parts + errors.fold.parts[:, None]).astype(np.float32)
    lift = contacts.settled(field)
    clear = np.ones((len(tried), field.shape[1]), dtype=bool)
    to_go = dict(zip(way.poses.tolist(), way.travel.tolist(), strict=True))
    for q in np.argsort(contacts.base, kind="stable"):
        pose = int(contacts.pair_pose[q])
        gap = contacts.gaps_of(q, field, lift[4 * pose :]) + shift[contacts.pair_part[q]]
        under = _Nodes.of(passage, way, contacts, int(q))
        for k, (h, before) in enumerate(tried):
            if clear[k].mean() >= SURE:
                more = under.raised(h, before, to_go[int(contacts.pose[pose])])
                clear[k] &= (gap + more.astype(np.float32)[:, None]).min(axis=0) > 0
    share = clear.mean(axis=1)
    first = next((k for k in range(len(tried)) if share[k] >= SURE), None)
    return None if first is None else (tried[first], float(share[first]))


@dataclass(frozen=True, eq=False)
class _Nodes:
    """The nodes under one pair, as boards see them. weights (n, 4) : how far each follows the tyres.  along :
    (n,) m on the way on, from the middle between the axles as they stand at last.  tracked (n,) : whether it
    lies under a tyre's path.  axles (2,) : front and rear, m.  radius : of a tyre, m."""

    weights: FloatArray
    along: FloatArray
    tracked: BoolArray
    axles: FloatArray
    radius: float

    @classmethod
    def of(cls, passage: Passage, way: _WayOn, contacts: ActiveContacts, pair: int) -> _Nodes:
        """Of a pair of the contacts."""
        vehicle, place = passage.vehicle, way.stand.place
        half = vehicle.wheelbase / 2
        axles = np.array([-half, half]) if way.backwards else np.array([half, -half])
        entries = slice(*contacts.parts.start[pair : pair + 2])
        nodes = contacts.window.node_xy().reshape(-1, 2)[contacts.nodes[contacts.parts.nodes[entries]]]
        away = passage.surface.height.frame.to_grid(nodes) - place[:2]
        cos, sin = np.cos(place[2]), np.sin(place[2])
        along = (-1.0 if way.backwards else 1.0) * (away @ np.array([cos, sin]) - half)
        aside = np.abs(away @ np.array([-sin, cos]))
        track = np.where((along > 0) == (axles[0] > 0), vehicle.front_track, vehicle.rear_track)
        tracked = np.abs(aside - track / 2) < vehicle.tyre_width / 2
        return cls(contacts.weights[entries], along, tracked, axles, vehicle.tyre_radius)

    def raised(self, h: float, before: float, rolled: float) -> FloatArray:
        """(n,) what boards add to the gap at each node, m: the body on the tyres that are on a board, or
        climbing its end, less the board that lies over the node itself."""
        body = self.weights @ np.repeat(self._board_at(self.axles + rolled, h, before, self.radius), 2)
        return np.asarray(body - np.where(self.tracked, self._board_at(self.along, h, before, 0.0), 0.0))

    def _board_at(self, at: FloatArray, h: float, before: float, radius: float) -> FloatArray:
        """How far boards raise a disk of ``radius`` whose middle is over ``at``, m: all of h on a board,
        and off its end what a disk that leans on the edge is raised."""
        off = np.min(
            [np.maximum(axle - before - at, at - axle - BEYOND) for axle in self.axles], axis=0
        )  # fmt: skip
        off = np.clip(off, 0.0, None)
        leans = h - (radius - np.sqrt(np.maximum(radius**2 - off**2, 0.0)))
        return np.asarray(np.where(off <= 0, h, np.where(off < radius, np.maximum(leans, 0.0), 0.0)))
