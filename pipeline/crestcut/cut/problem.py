"""The cut as a fixed-point problem: what each cell needs, given the cut made so far.

Lower the ground by a depth D and the tyres follow it down, so the underside does too. With G = ground - D,

F(G)(c) = min over poses and parts of  (height of the part over c when the tyres stand on G) - want,
required: G <= F(G),

or in depths: D(c) >= need(D)(c) = ground(c) - F(ground - D)(c). Every evaluation settles the vehicle anew
with full rotation; only the pairs of pose and part that could ever bind are kept (``prepare``).
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray, IntArray
from crestcut.chance import ground_weights, wheel_weights
from crestcut.contact import (
    FAR,
    FRAMES,
    VOID,
    Batch,
    Blocks,
    Pairs,
    Passage,
    Plates,
    blocks_of,
    contact_ground,
    hard_parts,
    layers_of,
    lower_pairs,
    place_pairs,
    plates_of,
    ridden_ground,
    settle_batch,
    stands_by_limits,
    support_weights,
    untiled,
)
from crestcut.cut.feather import NO_ROOT, feather_out
from crestcut.cut.records import Limits
from crestcut.vehicle import Vehicle

# m: kept beyond the first-order bound of what can bind: second order of the rotation, and an edge that moves
# by a cell
SLACK = 0.006


@dataclass(frozen=True, eq=False)
class Problem:
    """Everything that stays the same while the depth is sought. Arrays as the kernels want them, grid
    axes, metres."""

    vehicle: Vehicle
    cell: float
    ridden: FloatArray  # (ny, nx) under the tyres
    contact: FloatArray  # (ny, nx) under the parts
    batch: Batch  # the poses that could bind, as they stand on the uncut ground
    plates: Plates
    pairs: Pairs
    pair_drop: FloatArray  # the gap each pair must keep
    blocks: Blocks  # ``contact``
    allowed: FloatArray  # (ny, nx) deepest cut
    feather: float


@dataclass(frozen=True, eq=False)
class Step:
    """One evaluation: what every cell needs, and what holds it.

    need : (ny, nx) m, very low where nothing comes nearer than it may.  pair : (ny, nx) the pair that sets
    it, -1 for none.
    depth : (ny, nx) the depth it leads to, after feather and limits.  root : node whose feather holds it,
    ``NO_ROOT`` for itself.
    """

    need: FloatArray
    pair: IntArray
    depth: FloatArray
    root: IntArray


def prepare(passage: Passage, limits: Limits, keep_gap: Mapping[str, float], feather: float) -> Problem:
    """Keep only what can bind. passage : over the uncut surface.

    keep_gap : zone -> gap that must be left, metres (want plus margin). Lowering the ground by at most d
    lowers a part by at most d times the sum of its positive weights on the ground under the wheels, so a pair
    whose gap exceeds what it must keep by more than that never binds: dropping it is exact.
    """
    vehicle, surface, ride, before = passage.vehicle, passage.surface, passage.ride, passage.clearance
    parts = hard_parts(vehicle)
    plates = plates_of(parts, ride.line.step)
    contact = contact_ground(surface)
    deepest = float(limits.deepest.values.max(initial=0.0))
    drop = np.array([keep_gap[p.zone] for p in parts])
    threshold = drop + deepest * _follows(vehicle, plates) + SLACK
    assert before.pair_gap is not None
    pose, part = np.nonzero((before.pair_gap < threshold) & ride.batch.live[:, None])
    used, pose = np.unique(pose, return_inverse=True)
    batch = _subset(ride.batch, used)
    pairs, cell = Pairs(pose.astype(np.int64), part.astype(np.int64)), surface.height.frame.cell
    return Problem(
        vehicle, cell, ridden_ground(surface)[0], contact, batch, plates, pairs, drop[part],
        blocks_of(contact, cell), limits.deepest.values, feather,
    )  # fmt: skip


def _follows(vehicle: Vehicle, plates: Plates) -> FloatArray:
    """Largest sum of positive weights on the ground over each plate's corners, (m,): weights are affine in
    the chassis point, so a corner is worst.

    Wherever in its tread each tyre rests. Of an axle's two weights the sum stays and half the difference z is
    a ratio of two functions affine in either place, so it is most and least where each is at an edge; the
    positive sum is convex in z, and so are those of both axles. Between leaning with its own ground and with
    the other axle, as where a wheel hangs, lie all others (convexity again).
    """
    x, y = plates.edges[:, [0, 0, 1, 1]], plates.edges[:, [2, 3, 2, 3]]
    wheels = wheel_weights(vehicle, x, y, np.repeat(plates.frame[:, None], 4, axis=1))
    every = [wherever_they_rest(vehicle, wheels)]
    if stands_by_limits(vehicle):  # a wheel may hang: the body then follows the other three more
        for wheel, held in enumerate(support_weights(vehicle, x, y)):
            hanging = np.full(held.shape[:-1], wheel)
            every += [wherever_they_rest(vehicle, held, k) for k in (None, hanging)]
    return np.asarray(np.maximum(every, 0).sum(axis=-1).max(axis=(0, 1, 3)))


def wherever_they_rest(vehicle: Vehicle, weights: FloatArray, hanging: IntArray | None = None) -> FloatArray:
    """``ground_weights`` with each tyre resting on either edge of its tread, (16, ..., 4): any other place
    gives none that is more or less."""
    edges = vehicle.tyre_width / 2 * np.array(list(itertools.product((-1.0, 1.0), repeat=4)))
    return np.stack(
        [ground_weights(vehicle, weights, np.broadcast_to(e, weights.shape), hanging) for e in edges]
    )


def rests_aside(problem: Problem, batch: Batch) -> FloatArray:
    """How far left of its middle each tyre of a batch rests on its carrying node, (n, 4) m; 0 where none
    does."""
    car, columns = problem.vehicle, problem.contact.shape[1]
    left = np.array([car.front_track, -car.front_track, car.rear_track, -car.rear_track]) / 2
    away = np.stack([batch.contact % columns, batch.contact // columns], axis=-1) * problem.cell
    away = away - batch.places[:, None, :2]
    yaw = batch.places[:, 2:3]
    aside = away[..., 1] * np.cos(yaw) - away[..., 0] * np.sin(yaw) - left
    return np.where(batch.contact >= 0, aside, 0.0)


def _subset(batch: Batch, keep: IntArray) -> Batch:
    return Batch(
        batch.places[keep], batch.variant[keep], batch.live[keep], batch.wheels[keep],
        batch.contact[keep], batch.position[keep], batch.rotation[keep],
    )  # fmt: skip


def lowered(ground: FloatArray, depth: FloatArray) -> FloatArray:
    """The ground after the cut; what is not measured stays so."""
    return np.where(ground > VOID / 2, ground - depth, VOID)


def evaluate(problem: Problem, depth: FloatArray) -> Step:
    """What every cell needs when the tyres stand on the ground cut by ``depth`` (ny, nx), and the depth
    that follows from it."""
    batch = problem.batch
    if depth.any():
        ground = lowered(problem.ridden, depth)
        batch = settle_batch(problem.vehicle, ground, problem.cell, batch.places, batch.variant)
    need, pair = _needs(problem, batch)
    wanted = np.clip(need, 0.0, problem.allowed)
    shaped, root = feather_out(wanted, problem.feather, problem.cell)
    root = np.where(shaped > problem.allowed, NO_ROOT, root)
    return Step(need, pair, np.minimum(shaped, problem.allowed), root)


def _needs(problem: Problem, batch: Batch) -> tuple[FloatArray, IntArray]:
    """What every cell needs while the vehicle stands so, and the pair that asks for it.

    The underside less the gap it must keep is lowered to from the ground as it is: what stays above asks for
    nothing.
    """
    blocks, count = problem.blocks, len(problem.pairs.pose)
    placed = place_pairs(problem.pairs, batch, problem.plates, blocks)
    placed = placed._replace(layer=np.zeros(count, np.int64))
    placed.planes[:, 0] -= problem.pair_drop
    limit = blocks.tiles[None].copy()
    layers = layers_of(limit, blocks.planes[None], blocks.cell, np.full(limit.shape, -1, np.int64))
    lower_pairs(layers, placed, np.arange(count))
    pair = untiled(layers.owner[0], *blocks.shape)
    return np.where(pair >= 0, problem.contact - untiled(limit[0], *blocks.shape), -FAR), pair


def settled(problem: Problem, depth: FloatArray, poses: IntArray) -> Batch:
    """Some of the problem's poses on the cut ground, with the nodes that carry their tyres."""
    return settle_batch(
        problem.vehicle,
        lowered(problem.ridden, depth),
        problem.cell,
        problem.batch.places[poses],
        problem.batch.variant[poses],
        want_contact=True,
    )


def chassis_places(
    problem: Problem, batch: Batch, pose: IntArray, nodes: IntArray, frame: IntArray
) -> tuple[FloatArray, FloatArray]:
    """Chassis x and y over flat node indices, as a vehicle in ``batch[pose]`` sees them; m."""
    columns = problem.contact.shape[1]
    uv = np.stack([nodes % columns, nodes // columns], axis=-1) * problem.cell
    position, rotation = batch.position[pose, frame], batch.rotation[pose, frame]
    # the height of the node hardly matters here: weights are first order
    d = np.concatenate([uv, problem.contact.ravel()[nodes][:, None]], axis=1) - position
    local = np.einsum("nji,nj->ni", rotation, d)
    return local[:, 0], local[:, 1]


assert FRAMES == ("body", "front axle", "rear axle")  # ``wheel_weights`` chooses by this order
