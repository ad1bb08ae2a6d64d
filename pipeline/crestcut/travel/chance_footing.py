"""Which poses could decide the clearance, and the few nodes of ground that matter to each."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from crestcut.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.surface.records import Surface
from crestcut.travel.chance_kernels import list_parts, list_tyres, pair_gaps, tyre_lifts
from crestcut.travel.records import Batch, Clearance, Ride
from crestcut.travel.ride import contact_ground, geometry, ridden_ground
from crestcut.travel.springs import stands_by_limits, support_weights
from crestcut.travel.sweep import FAR, hard_parts, part_arrays
from crestcut.vehicle.records import Part, Vehicle

POSES = 240  # at most: more would change the answer by less than the draws do
# m along the line in which the worst pose stands for its neighbours, doubled while there are too many
STATION_BIN = 0.03
BLOCK = 0.03  # m of underside in which the nearest node stands for its neighbours: no error field is rougher
TYRE_SLACK = 0.012  # m below the carrying node under which a node may come to carry the tyre
FAR_BELOW = -1.0e18


@dataclass(frozen=True, eq=False)
class Footing:
    """Critical pairs of pose and part, and their lists of nodes. Node lists index ``nodes``.

    window : frame cropped round all nodes.  nodes : (n,) flat index into it.  height, standard_error : on
    the window.
    pair_pose, pair_part : (q,) into the poses kept and the hard parts.  pose : (p,) index of those poses in
    the ride's batch.
    extra : indices into ``nodes`` of the places asked for besides.  pair_zone : (q,) of the part.  base :
    (q,) gap on the surface as fitted, m.
    """

    window: GridFrame
    nodes: IntArray
    height: HeightGrid
    standard_error: HeightGrid
    pose: IntArray
    pair_pose: IntArray
    pair_part: IntArray
    pair_zone: IntArray
    base: FloatArray
    tyre_start: IntArray
    tyre_nodes: IntArray
    tyre_short: FloatArray
    part_start: IntArray
    part_nodes: IntArray
    part_gap: FloatArray
    part_weights: FloatArray
    extra: IntArray

    def lifts(self, field: FloatArray) -> tuple[FloatArray, IntArray]:
        """How far each tyre of each pose rises on ``field`` (n,), m: (4 p,), and the list entry that
        carries it."""
        lift, entry = np.empty(len(self.tyre_start) - 1), np.empty(len(self.tyre_start) - 1, np.int64)
        tyre_lifts(field, self.tyre_start, self.tyre_nodes, self.tyre_short, lift, entry)
        return lift, entry

    def gaps(
        self, field: FloatArray, lift: FloatArray, floor: FloatArray | None = None
    ) -> tuple[FloatArray, IntArray]:
        """Least gap of every pair (q,), m, once ``field`` (n,) is added to the ground, and the list entry
        that sets it."""
        out, entry = np.empty(len(self.base)), np.empty(len(self.base), np.int64)
        floor = np.full(len(self.base), FAR_BELOW) if floor is None else floor
        pair_gaps(
            field,
            lift,
            self.part_start,
            self.part_nodes,
            self.part_gap,
            self.part_weights,
            self.pair_pose,
            floor,
            out,
            entry,
        )
        return out, entry


def find_footing(
    vehicle: Vehicle,
    surface: Surface,
    ride: Ride,
    clearance: Clearance,
    keep: FloatArray,
    reach: float,
    open_to: FloatArray | None = None,
    only: IntArray | None = None,
    extra: FloatArray | None = None,
) -> Footing | None:
    """The critical poses: those whose least gap over what it must ``keep`` may come out least once errors
    are drawn.

    keep : (hard parts,) m, what is taken off each part's gap before they are compared.  reach : m, how far
    beyond the least a pair
    or a node is still looked at.  open_to : (hard parts,) m, what a cut will open gaps to; nodes near it
    are looked at too.
    only : indices of poses in the batch, to look at these and no others.  extra : (k, 2) site x, y of more
    places whose ground must be
    drawn.  None where no part meets measured ground.
    """
    assert clearance.pair_gap is not None
    parts = hard_parts(vehicle)
    excess = np.where(clearance.pair_gap < FAR / 2, clearance.pair_gap - keep, np.inf)
    excess[~ride.batch.live] = np.inf
    if only is not None:
        mask = np.zeros(len(excess), bool)
        mask[only] = True
        excess[~mask] = np.inf
    if not np.isfinite(excess).any():
        return None
    level = (
        float(excess.min()) if open_to is None else max(float(excess.min()), float((open_to - keep).max()))
    )
    within = excess < level + reach
    pose = _thinned(ride, np.where(within, excess, np.inf).min(axis=1))
    pair_pose, pair_part = np.nonzero(within[pose])
    return _listed(vehicle, surface, ride, parts, pose, pair_pose, pair_part, reach, open_to, extra)


def _thinned(ride: Ride, excess: FloatArray) -> IntArray:
    """The worst pose of every stretch of every variant; stretches as short as ``POSES`` allows."""
    index = np.flatnonzero(np.isfinite(excess))
    station = np.concatenate([p.station for p in ride.poses])[index]
    variant = ride.batch.variant[index]
    step = STATION_BIN
    while True:
        key = variant.astype(np.int64) * 1_000_003 + np.floor(station / step).astype(np.int64)
        order = np.lexsort((excess[index], key))
        first = np.concatenate([[True], np.diff(key[order]) != 0])
        chosen = index[order[first]]
        if len(chosen) <= POSES or step > 0.3:
            return np.sort(chosen[np.argsort(excess[chosen], kind="stable")[:POSES]])
        step *= 1.5


def _listed(
    vehicle: Vehicle, surface: Surface, ride: Ride, parts: tuple[Part, ...], pose: IntArray, pair_pose: IntArray, pair_part: IntArray,
    reach: float, open_to: FloatArray | None, extra: FloatArray | None,
) -> Footing:  # fmt: skip
    frame, batch = surface.height.frame, ride.batch
    ridden, contact = ridden_ground(surface)[0], contact_ground(surface)
    plates, zones, frames = part_arrays(parts, ride.line.step)
    hubs = _hubs(vehicle, batch, pose)
    tyre_start = np.zeros(len(hubs) + 1, np.int64)
    tyre_height = np.empty(len(hubs))
    tyre = (
        ridden,
        frame.cell,
        hubs,
        vehicle.tyre_radius,
        vehicle.tyre_width / 2,
        TYRE_SLACK,
        tyre_start,
        tyre_height,
    )
    count = list_tyres(*tyre, np.empty(0, np.int64), np.empty(0))
    tyre_nodes, tyre_short = np.empty(count, np.int64), np.empty(count)
    list_tyres(*tyre, tyre_nodes, tyre_short)
    block = max(round(BLOCK / frame.cell), 1)
    opened = 0.0 if open_to is None else float(open_to.max())
    part_start = np.zeros(len(pair_pose) + 1, np.int64)
    part = (
        contact, frame.cell, plates, frames, pair_pose, pair_part, batch.position[pose], batch.rotation[pose],
        reach + max(opened, 0.0), block, part_start,
    )  # fmt: skip
    count = list_parts(*part, np.empty(0, np.int64), np.empty(0), np.empty((0, 2)))
    part_nodes, part_gap, local = np.empty(count, np.int64), np.empty(count), np.empty((count, 2))
    list_parts(*part, part_nodes, part_gap, local)
    of_pair = np.repeat(np.arange(len(pair_pose)), np.diff(part_start))
    weights = _weights(
        vehicle, batch, pose, tyre_height, local, frames[pair_part][of_pair], pair_pose[of_pair]
    )
    places = nearest_nodes(frame, np.zeros((0, 2)) if extra is None else extra)
    window, nodes, (tyre_at, part_at, extra_at) = _window(frame, tyre_nodes, part_nodes, places)
    rows, columns = _rows_columns(frame, window)
    return Footing(
        window, nodes, surface.height.crop(rows, columns), surface.standard_error.crop(rows, columns),
        pose, pair_pose, pair_part, zones[pair_part], np.minimum.reduceat(part_gap, part_start[:-1]),
        tyre_start, tyre_at, tyre_short, part_start, part_at, part_gap, weights, extra_at,
    )  # fmt: skip


def _hubs(vehicle: Vehicle, batch: Batch, pose: IntArray) -> FloatArray:
    """u, v, cos, sin of every tyre of every pose, (4 p, 4), order front left, front right, rear left, rear
    right."""
    places, turn = batch.places[pose], batch.rotation[pose, 0]
    sin_pitch = turn[:, 2, 0]
    reach = vehicle.wheelbase * np.sqrt(1 - sin_pitch**2) + (places[:, 3] - places[:, 4]) * sin_pitch
    cos, sin = np.cos(places[:, 2]), np.sin(places[:, 2])
    ahead = np.stack([reach, reach, np.zeros_like(reach), np.zeros_like(reach)], axis=1)
    left = np.array([vehicle.front_track, -vehicle.front_track, vehicle.rear_track, -vehicle.rear_track]) / 2
    u = places[:, :1] + ahead * cos[:, None] - left * sin[:, None]
    v = places[:, 1:2] + ahead * sin[:, None] + left * cos[:, None]
    turned = np.broadcast_to(cos[:, None], u.shape), np.broadcast_to(sin[:, None], u.shape)
    return np.stack([u, v, *turned], axis=-1).reshape(-1, 4)


def wheel_weights(vehicle: Vehicle, x: FloatArray, y: FloatArray, frame: IntArray) -> FloatArray:
    """How far a chassis point over (x, y) follows each wheel, (n, 4), to first order; they sum to 1.

    x / (2 L) +- y l_front / t_front at the front, (1 - x / L) / 2 +- y l_rear / t_rear at the rear, where l
    are the axles' shares of
    roll stiffness; an unsprung part (frame 1 front, 2 rear) follows its own axle's roll alone.
    """
    base, front_track, rear_track, _, _, share_front, share_rear = geometry(vehicle)
    roll_front = np.choose(frame, [share_front, 1.0, 0.0]) * y / front_track
    roll_rear = np.choose(frame, [share_rear, 0.0, 1.0]) * y / rear_track
    ahead = x / base
    columns = [
        ahead / 2 + roll_front,
        ahead / 2 - roll_front,
        (1 - ahead) / 2 + roll_rear,
        (1 - ahead) / 2 - roll_rear,
    ]
    return np.stack(columns, axis=-1)


def _weights(
    vehicle: Vehicle,
    batch: Batch,
    pose: IntArray,
    ground: FloatArray,
    local: FloatArray,
    frame: IntArray,
    of_pose: IntArray,
) -> FloatArray:
    """Wheel weights of every listed node; a cart follows the three wheels it stands on. ground : (4 p,)
    under each tyre, m."""
    plain = wheel_weights(vehicle, local[:, 0], local[:, 1], frame)
    if not (vehicle.rigid and stands_by_limits(vehicle)):
        return plain
    # the wheel that hangs is the one that stands highest above its own ground; which one it is is held,
    # draw for draw
    every = support_weights(vehicle, local[:, 0], local[:, 1])
    hanging = np.argmax(batch.wheels[pose] - ground.reshape(-1, 4), axis=1)[of_pose]
    return np.take_along_axis(every, hanging[None, :, None], axis=0)[0]


def nearest_nodes(frame: GridFrame, xy: FloatArray) -> IntArray:
    """Flat index of the node nearest to each site place (k, 2), held inside the frame."""
    at = np.rint(frame.to_grid(xy) / frame.cell).astype(np.int64)
    i, j = np.clip(at[:, 0], 0, frame.shape[1] - 1), np.clip(at[:, 1], 0, frame.shape[0] - 1)
    return np.asarray(j * frame.shape[1] + i)


def _window(frame: GridFrame, *lists: IntArray) -> tuple[GridFrame, IntArray, list[IntArray]]:
    """The smallest crop that holds all nodes, the nodes in it (sorted, once each), and the lists as indices
    into them."""
    used = np.unique(np.concatenate(lists))
    at = [np.searchsorted(used, nodes) for nodes in lists]
    j, i = used // frame.shape[1], used % frame.shape[1]
    origin = frame.to_site((i.min() * frame.cell, j.min() * frame.cell))
    shape = (int(np.ptp(j)) + 1, int(np.ptp(i)) + 1)
    window = GridFrame((float(origin[0]), float(origin[1])), frame.angle, frame.cell, shape)
    return window, (j - j.min()) * shape[1] + (i - i.min()), at


def _rows_columns(frame: GridFrame, window: GridFrame) -> tuple[slice, slice]:
    u, v = frame.to_grid(window.origin) / frame.cell
    j, i = round(float(v)), round(float(u))
    return slice(j, j + window.shape[0]), slice(i, i + window.shape[1])
