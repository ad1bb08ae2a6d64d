"""Which poses could decide the clearance, and the few nodes of ground that matter to each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields, replace

import numpy as np

from crestcut.base.grid import FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.base.parallel import share
from crestcut.chance.lists import Lists, Resting, Single, list_parts, list_tyres, rise_part
from crestcut.contact import (
    FAR,
    Batch,
    Pairs,
    Passage,
    Ride,
    axles_of,
    contact_ground,
    hard_parts,
    plates_of,
    ridden_ground,
    stand_on,
    stands_by_limits,
    support_weights,
)
from crestcut.terrain import Evidence, Reading
from crestcut.vehicle import Vehicle

POSES = 240  # at most: more would change the answer by less than the draws do
# m along the line in which the worst pose stands for its neighbours, longer while there are too many
STATION_BIN = 0.03
POSES_AT_ONCE = 16  # whose tyres are settled on draws by one thread


@dataclass(frozen=True, eq=False)
class Stood:
    """Where the vehicle stood witness: place (5,) as ``Batch.places``, part by index, gap expected, m, and
    the boards (4,) under its tyres, m, None without."""

    place: FloatArray
    part: int
    gap: float
    raised: FloatArray | None = None


@dataclass(frozen=True, eq=False)
class ActiveContacts:
    """Critical pairs of pose and part, and their lists of nodes. Node lists index ``nodes``.

    window : frame cropped round all nodes.  nodes : (n,) flat index into it.  height, standard_error : on
    the window.
    pair_pose, pair_part : (q,) into the poses kept and the hard parts, ordered by pose.  judged : the pairs
    that count; those after them are where the vehicle stood witness.  pose : (p,) index of the judged poses
    in the ride's batch.  base : (judged,) gap on the surface as fitted, m.  tyres, parts : the lists. weights
    : (entries of parts, 4) how far each entry's chassis point follows each wheel. tracks : (2,) m, front and
    rear.  leans : (poses, 2) the axle whose tilt each axle has, its own but on a cart.  extra : indices into
    ``nodes`` of the places asked for besides.
    """

    window: GridFrame
    nodes: IntArray
    height: HeightGrid
    standard_error: HeightGrid
    pose: IntArray
    pair_pose: IntArray
    pair_part: IntArray
    judged: int
    base: FloatArray
    tyres: Lists
    parts: Lists
    weights: FloatArray
    tracks: FloatArray
    leans: IntArray
    extra: IntArray

    def drawn(self, field: Single, shift: FloatArray) -> Single:
        """(q, d) least gap of each judged pair, m, tyres settled on ground + ``field`` (n, d) and parts moved
        up by ``shift`` (hard parts, d), m.

        To first order in the lifts: the second order is x pitch^2 / 2, 10 micrometres for a lift of 10 mm.
        """
        lift, moved = self.settled(field), shift.astype(np.float32)
        gap = np.empty((self.judged, field.shape[1]), np.float32)
        for q in range(self.judged):
            left = self.gaps_of(q, field, lift[4 * self.pair_pose[q] :])
            gap[q] = left.min(axis=0) + moved[self.pair_part[q]]
        return gap

    def witnessed(self, field: Single, shift: FloatArray) -> FloatArray:
        """(witnesses, d) least gap where the vehicle stood witness, m; as ``drawn``."""
        pairs = range(self.judged, len(self.pair_pose))
        out = np.empty((len(pairs), field.shape[1]))
        for k, q in enumerate(pairs):
            first = 4 * int(self.pair_pose[q])
            lift = self.settled(field, range(first // 4, first // 4 + 1))
            out[k] = self.gaps_of(q, field, lift).min(axis=0) + shift[self.pair_part[q]]
        return out

    def settled(self, field: Single, poses: range | None = None) -> Single:
        """(4 p, d) how far each tyre rises on ground + ``field`` (n, d), m, leaning as its axle then does."""
        poses = range(len(self.pose)) if poses is None else poses  # the judged ones
        lift = np.empty((4 * len(poses), field.shape[1]), np.float32)
        short, aside = (
            np.ascontiguousarray(x, np.float32) for x in (self.tyres.value, self.tyres.local[:, 1])
        )
        tracks = self.tracks.astype(np.float32)
        resting = Resting(self.tyres.start, self.tyres.nodes, short, aside, tracks, self.leans)
        field, at = np.require(field, np.float32, ["C", "W"]), poses.start

        def part(a: int, b: int) -> None:
            rise_part(at + a, at + b, resting, field, lift[4 * a : 4 * b])

        share(part, len(poses), POSES_AT_ONCE)
        return lift

    def gaps_of(self, q: int, field: Single, lift: Single) -> Single:
        """(entries, d) gap at every entry of pair ``q``, m; lift : (4 or more, d) of its wheels first."""
        a, b = self.parts.start[q], self.parts.start[q + 1]
        left: Single = self.weights[a:b].astype(np.float32) @ lift[:4]
        left += self.parts.value[a:b].astype(np.float32)[:, None]
        left -= field[self.parts.nodes[a:b]]
        return left


@dataclass(frozen=True, eq=False)
class _Pairs:
    """Pairs that may decide. pose : (p,) the judged poses.  batch : those, and after them where the vehicle
    stood witness.  pairs : of them; the first ``judged`` count.  most : (q,) greatest gap looked at, m."""

    pose: IntArray
    batch: Batch
    pairs: Pairs
    judged: int
    most: FloatArray


def find_active_contacts(
    passage: Passage,
    reach: float,
    evidence: Evidence | None = None,
    keep: FloatArray | None = None,
    open_to: float | None = None,
    extra: FloatArray | None = None,
    poses: int = POSES,
) -> ActiveContacts | None:
    """The critical poses: those whose least gap over what it must ``keep`` may come out least once errors
    are drawn.

    reach : m, how far beyond the least a pair or a node is still looked at.  evidence : what was read by
    hand, whose places must be drawn, and each gap of it read under the standing vehicle.  keep : (hard
    parts,) m, what is taken off each part's gap before they are compared; default nothing.  open_to : m,
    what a cut will open gaps to beyond ``keep``; pairs and nodes near it are looked at too.  extra : (k,
    2) site x, y of more places whose ground must be drawn.  poses : at most so many.  None where no part
    meets measured ground.
    """
    pair_gap, ride = passage.clearance.pair_gap, passage.ride
    assert pair_gap is not None
    keep = np.zeros(pair_gap.shape[1]) if keep is None else keep
    excess = np.where(pair_gap < FAR / 2, pair_gap - keep, np.inf)
    excess[~ride.batch.live] = np.inf
    if not np.isfinite(excess).any():
        return None
    most = max(float(excess.min()), -np.inf if open_to is None else open_to) + reach
    within = excess <= most
    pose = _thinned(ride, np.where(within, excess, np.inf).min(axis=1), poses)
    pair_pose, pair_part = np.nonzero(within[pose])
    batch, judged, stood = _chosen(ride.batch, pose), len(pair_pose), stood_in(evidence, passage.vehicle)
    if stood:
        surface = passage.surface
        ridden, cell = ridden_ground(surface)[0], surface.height.frame.cell
        there = [
            batch, *(stand_on(passage.vehicle, ridden, cell, s.place[None], s.raised) for s in stood)
        ]  # fmt: skip
        batch = Batch(*(np.concatenate([getattr(b, f.name) for b in there]) for f in fields(batch)))
        pair_pose = np.concatenate([pair_pose, len(pose) + np.arange(len(stood))])
        pair_part = np.concatenate([pair_part, [s.part for s in stood]])
    limit = np.concatenate([most + keep[pair_part[:judged]], [s.gap + reach for s in stood]])
    places = evidence_points(evidence)
    chosen = _Pairs(pose, batch, Pairs(pair_pose, pair_part), judged, limit)
    return _listed(passage, chosen, places if extra is None else np.concatenate([places, extra]))


def witnesses_of(readings: Sequence[Reading], names: Sequence[str]) -> list[tuple[int, Reading]]:
    """The readings that are gaps under a part of the standing vehicle, with their index."""
    return [(i, r) for i, r in enumerate(readings) if r.stood is not None and r.part in names]


def stood_in(evidence: Evidence | None, vehicle: Vehicle) -> list[Stood]:
    """Where the vehicle stood witness."""
    names = [p.name for p in hard_parts(vehicle)]
    found = witnesses_of(evidence.readings, names) if evidence is not None else []
    return [
        Stood(r.stood, names.index(r.part or ""), r.exactly, r.raised)
        for _, r in found
        if r.stood is not None
    ]


def evidence_points(evidence: Evidence | None) -> FloatArray:
    """Site x, y of every point of every reading, (k, 2): the ground there must be drawn too."""
    return (
        np.concatenate([r.points for r in evidence.readings])
        if evidence and evidence.readings
        else np.zeros((0, 2))
    )


def _chosen(batch: Batch, pose: IntArray) -> Batch:
    """Some of the poses of a batch."""
    return Batch(*(getattr(batch, f.name)[pose] for f in fields(batch)))


def _thinned(ride: Ride, excess: FloatArray, most: int) -> IntArray:
    """The worst pose of every stretch of every variant; stretches as short as ``most`` poses allow."""
    index = np.flatnonzero(np.isfinite(excess))
    station = np.concatenate([p.station for p in ride.poses])[index]
    variant = ride.batch.variant[index]
    step = STATION_BIN
    while True:
        key = variant.astype(np.int64) * 1_000_003 + np.floor(station / step).astype(np.int64)
        order = np.lexsort((excess[index], key))
        first = np.concatenate([[True], np.diff(key[order]) != 0])
        chosen = index[order[first]]
        if len(chosen) <= most or step > 0.3:
            return np.sort(chosen[np.argsort(excess[chosen], kind="stable")[:most]])
        step *= 1.5


def _listed(passage: Passage, chosen: _Pairs, extra: FloatArray) -> ActiveContacts:
    """extra : (k, 2) site x, y of the places asked for besides."""
    vehicle, surface, batch = passage.vehicle, passage.surface, chosen.batch
    frame, (pair_pose, pair_part) = surface.height.frame, chosen.pairs
    plates, judged = plates_of(hard_parts(vehicle), passage.ride.line.step), chosen.judged
    tyres, stood = list_tyres(ridden_ground(surface)[0], frame.cell, _hubs(vehicle, batch), vehicle)
    body = plates.frame[pair_part]
    ground = HeightGrid(frame, contact_ground(surface))
    under = list_parts(
        ground, plates.edges[pair_part],
        batch.position[pair_pose, body], batch.rotation[pair_pose, body], chosen.most,
    )  # fmt: skip
    of_pair = np.repeat(np.arange(len(pair_pose)), np.diff(under.start))
    # on a cart the wheel that hangs is the one that stands highest above its own ground; which one it is is
    # held, draw for draw
    cart = vehicle.rigid and stands_by_limits(vehicle)
    hanging = np.argmax(batch.wheels - stood.reshape(-1, 4), axis=1) if cart else None
    weights = _weights(
        vehicle, under.local, body[of_pair], None if hanging is None else hanging[pair_pose[of_pair]]
    )
    leans = np.tile(np.arange(2), (len(batch.places), 1))
    if hanging is not None:
        leans[:] = 1 - hanging[:, None] // 2
    places = nearest_nodes(frame, extra)
    window, nodes, (tyre_at, part_at, extra_at) = _window(frame, tyres.nodes, under.nodes, places)
    rows, columns = _rows_columns(frame, window)
    return ActiveContacts(
        window, nodes, surface.height.crop(rows, columns), surface.standard_error.crop(rows, columns),
        chosen.pose, pair_pose, pair_part, judged,
        np.minimum.reduceat(under.value, under.start[:-1])[:judged],
        replace(tyres, nodes=tyre_at), replace(under, nodes=part_at), weights,
        np.array([vehicle.front_track, vehicle.rear_track]), leans, extra_at,
    )  # fmt: skip


def _hubs(vehicle: Vehicle, batch: Batch) -> FloatArray:
    """u, v, cos, sin and tilt of every tyre of every pose, (4 p, 5), order front left, front right, rear
    left, rear right."""
    places, turn = batch.places, batch.rotation[:, 0]
    sin_pitch = turn[:, 2, 0]
    reach = vehicle.wheelbase * np.sqrt(1 - sin_pitch**2) + (places[:, 3] - places[:, 4]) * sin_pitch
    cos, sin = np.cos(places[:, 2]), np.sin(places[:, 2])
    ahead = np.stack([reach, reach, np.zeros_like(reach), np.zeros_like(reach)], axis=1)
    left = np.array([vehicle.front_track, -vehicle.front_track, vehicle.rear_track, -vehicle.rear_track]) / 2
    u = places[:, :1] + ahead * cos[:, None] - left * sin[:, None]
    v = places[:, 1:2] + ahead * sin[:, None] + left * cos[:, None]
    turned = np.broadcast_to(cos[:, None], u.shape), np.broadcast_to(sin[:, None], u.shape)
    # what an axle carries rolls by atan(tilt cos pitch): ``placing.roll_of``
    up = batch.rotation[:, 1:, 2]
    tilt = np.repeat(up[..., 1] / up[..., 2] / np.sqrt(1 - up[..., 0] ** 2), 2, axis=1)
    return np.stack([u, v, *turned, tilt], axis=-1).reshape(-1, 5)


def wheel_weights(vehicle: Vehicle, x: FloatArray, y: FloatArray, frame: IntArray) -> FloatArray:
    """How far a chassis point over (x, y) follows each wheel, (n, 4), to first order; they sum to 1.

    x / (2 L) +- y l_front / t_front at the front, (1 - x / L) / 2 +- y l_rear / t_rear at the rear, where l
    are the axles' shares of roll stiffness; an unsprung part (frame 1 front, 2 rear) follows its own axle's
    roll alone.
    """
    axles = axles_of(vehicle)
    roll_front = np.choose(frame, [axles.front_share, 1.0, 0.0]) * y / axles.front_track
    roll_rear = np.choose(frame, [axles.rear_share, 0.0, 1.0]) * y / axles.rear_track
    ahead = x / axles.wheelbase
    columns = [
        ahead / 2 + roll_front,
        ahead / 2 - roll_front,
        (1 - ahead) / 2 + roll_rear,
        (1 - ahead) / 2 - roll_rear,
    ]
    return np.stack(columns, axis=-1)


def ground_weights(
    vehicle: Vehicle, weights: FloatArray, aside: FloatArray, hanging: IntArray | None = None
) -> FloatArray:
    """How far a chassis point follows the ground where each wheel rests on it, (..., 4), to first order; they
    sum to as much as ``weights``, how far it follows the wheels.

    aside : (..., 4) m, how far left of its tyre's middle each wheel rests.  hanging : (...) the wheel of a
    cart that hangs, whose axle leans with the other.

    A tyre leans with its axle (``tyres.tyre_height``), so over ground that rises by dg_l and dg_r an axle
    tilts by dt and its tyres rise by dg - b dt; from dt = (dh_l - dh_r) / track follows
    dt (track + b_l - b_r) = dg_l - dg_r: the axle rests on two points so far apart.
    """
    pair = (*weights.shape[:-1], 2, 2)
    moment, b = (weights * aside).reshape(pair).sum(axis=-1), aside.reshape(pair)
    if hanging is not None:
        moment = np.where(hanging[..., None] // 2 == [0, 1], 0.0, moment.sum(axis=-1, keepdims=True))
    turned = moment / (np.array([vehicle.front_track, vehicle.rear_track]) + b[..., 0] - b[..., 1])
    return np.asarray(weights + np.repeat(turned, 2, axis=-1) * [-1.0, 1.0, -1.0, 1.0])


def _weights(vehicle: Vehicle, local: FloatArray, frame: IntArray, hanging: IntArray | None) -> FloatArray:
    """Wheel weights of every listed node; a cart follows the three wheels it stands on. hanging : (n,) the
    fourth."""
    if hanging is None:
        return wheel_weights(vehicle, local[:, 0], local[:, 1], frame)
    every = support_weights(vehicle, local[:, 0], local[:, 1])
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
