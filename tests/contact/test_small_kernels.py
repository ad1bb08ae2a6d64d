"""The compiled loops on grounds of a few nodes against plain loops over all of them, so small that they run
uncompiled too."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest

from crestcut.base.grid import FloatArray
from crestcut.contact.clearance.blocks import (
    BLOCK,
    Plane,
    _least_apart,
    _least_in_tile,
    _under,
    blocks_of,
    layers_of,
    least_gaps,
    lower_to,
    untiled,
)
from crestcut.contact.clearance.kernels import FAR, Pairs, Placed, Plates, column_range, planes_of
from crestcut.contact.clearance.pose_pairs import place_pairs
from crestcut.contact.clearance.sweep import plates_of
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Batch
from crestcut.contact.stand.ground import _bridged, _closing
from crestcut.contact.stand.placing import Axles, lean_of
from crestcut.contact.stand.ride import _strongest_break, settle_batch
from crestcut.contact.stand.springs import support_weights
from crestcut.contact.stand.tyres import VOID, Stance, row_maxima, settle_part, tyre_ground
from crestcut.vehicle.records import Part
from scenes import STRAIGHT, L, vehicle

CELL, ROWS, COLUMNS = 0.05, 40, 52  # 3 x 4 blocks
AXLES = Axles(0.9, 0.7, 0.6, 0.16, 0.06, 0.7, 0.3)


def rough(seed: int, holes: float = 0.0) -> FloatArray:
    rng = np.random.default_rng(seed)
    y, x = np.mgrid[:ROWS, :COLUMNS] * CELL
    z = 0.08 * x - 0.05 * y + 0.02 * np.sin(3 * x) * np.cos(2 * y) + rng.normal(0, 0.01, x.shape)
    z[rng.random(z.shape) < holes] = VOID
    return np.asarray(z)


def turned(yaw: float, pitch: float, roll: float) -> FloatArray:
    """Yaw about z, then pitch (nose up), then roll (left side up), as products of plain turns."""
    cy, sy, cp, sp, cr, sr = (f(a) for a in (yaw, pitch, roll) for f in (math.cos, math.sin))
    about_z = np.array([[cy, -sy, 0], [sy, cy, 0], [0, 0, 1]])
    about_y = np.array([[cp, 0, -sp], [0, 1, 0], [sp, 0, cp]])
    return np.asarray(about_z @ about_y @ np.array([[1, 0, 0], [0, cr, -sr], [0, sr, cr]]))


def plates_at(seed: int, count: int) -> tuple[Pairs, Batch, Plates]:
    """Plates of any size, one or two of a body, at ``count`` poses over and beyond the ground."""
    rng = np.random.default_rng(seed)
    xr, yr = rng.uniform(-0.9, 0.0, (2, 3))
    long, wide = np.array([[1.3, 0.9, 0.12], [1.1, 0.03, 0.9]])
    ends = rng.uniform(0.05, 0.25, (2, 3))
    edges = np.column_stack([xr, xr + long, yr, yr + wide, ends[0], ends[1]])
    plates = Plates(edges, np.array([0, 0, 1]), np.array([0, 1, 2]))
    position = np.stack([rng.uniform([0.2, 0.2, 0.1], [2.3, 1.7, 0.2]) for _ in range(3 * count)])
    angles = rng.uniform([-3.1, -0.15, -0.1], [3.1, 0.15, 0.1], (3 * count, 3))
    rotation = np.stack([turned(*a) for a in angles])
    batch = Batch(
        np.zeros((count, 5)), np.zeros(count, np.int64), np.ones(count, bool), np.zeros((count, 4)),
        np.zeros((count, 4), np.int64), position.reshape(count, 3, 3), rotation.reshape(count, 3, 3, 3),
    )  # fmt: skip
    pose, part = (a.ravel() for a in np.meshgrid(np.arange(count), np.arange(3), indexing="ij"))
    return Pairs(pose, part), batch, plates


def under(pairs: Pairs, batch: Batch, plates: Plates) -> FloatArray:
    """(q, ny, nx) height of each plate over each node, m, by its corners alone; NaN where it is not."""
    y, x = np.mgrid[:ROWS, :COLUMNS] * CELL
    out = np.full((len(pairs.pose), ROWS, COLUMNS), np.nan)
    for q, (p, m) in enumerate(zip(*pairs, strict=True)):
        xr, xf, yr, yl, zr, zf = plates.edges[m]
        k = plates.frame[m]
        local = np.array([[xr, yr, zr], [xf, yr, zf], [xf, yl, zf], [xr, yl, zr]])
        corner = local @ batch.rotation[p, k].T + batch.position[p, k]
        a, b, c = np.linalg.solve(np.column_stack([np.ones(3), corner[:3, :2]]), corner[:3, 2])
        inside = np.ones(x.shape, bool)
        for (u0, v0, _), (u1, v1, _) in zip(corner, np.roll(corner, -1, axis=0), strict=True):
            inside &= (u1 - u0) * (y - v0) - (v1 - v0) * (x - u0) >= -1e-12
        out[q] = np.where(inside, a + b * x + c * y, np.nan)
    return out


@pytest.mark.parametrize(("seed", "lift"), [(1, 0.0), (2, 3.0), (3, -3.0)])
def test_the_least_gap_of_every_plate_is_that_over_all_nodes_one_by_one(seed: int, lift: float) -> None:
    """Whatever the height that all of it lies at."""
    ground = rough(seed, 0.1)
    ground = np.where(ground > VOID / 2, ground + lift, VOID)
    pairs, batch, plates = plates_at(seed, 40)
    batch.position[..., 2] += lift
    blocks = blocks_of(ground, CELL)
    placed = place_pairs(pairs, batch, plates, blocks)
    found = np.full(len(pairs.pose), 0.123)
    least_gaps(0, len(found), blocks, placed, found)
    every = np.where(ground > VOID / 2, under(pairs, batch, plates) - ground, np.nan)
    for gap, over in zip(found, every, strict=True):
        if np.isfinite(over).sum() > 3:  # a plate between two rows is told from the nearest: not here
            assert gap == pytest.approx(np.nanmin(over), abs=1e-9)
    assert (found < FAR / 2).sum() > 10


def test_the_least_gap_over_a_whole_tile_is_that_of_any_of_its_nodes() -> None:
    over, rng = blocks_of(rough(6), CELL), np.random.default_rng(6)
    for node in rng.permutation(BLOCK * BLOCK)[:60]:
        over.tiles[1, 1].flat[node] += 0.5  # stands out of what was the highest before
        plate = Plane(1.0, 0.1, -0.05)
        height = 1.0 + 0.1 * over.u[1] - 0.05 * over.v[1][:, None]
        assert _least_in_tile(over, 1, 1, plate) == pytest.approx(
            (height - over.tiles[1, 1]).min(), abs=1e-12
        )
        over.tiles[1, 1].flat[node] -= 0.5


def test_a_plate_over_a_part_of_a_block_is_told_apart_from_it_by_that_part() -> None:
    """At a corner of the part: where a bumper rises, what it would be beyond its edge says nothing."""
    over = blocks_of(rough(4), CELL)
    under = _under(over.planes[1, 2], over.u[2], over.v[1])
    u, v = over.u[2][5:9], over.v[1][3:7]
    j, i = np.meshgrid(v, u, indexing="ij")
    middle, slope_u, slope_v = over.planes[1, 2, :3]
    block = middle + slope_u * (i - over.u[2].mean()) + slope_v * (j - over.v[1].mean())
    for b, c in itertools.product((-0.6, 0.01, 0.7), (-0.3, 0.2)):
        plate = Plane(0.3, b, c)
        apart = 0.3 + b * i + c * j - block
        assert _least_apart(plate, under, u[0], u[-1], v[0], v[-1]) == pytest.approx(apart.min(), abs=1e-10)
        assert _least_apart(plate, under, u[0], u[-1], v[0], v[-1]) < apart.min()


@pytest.mark.parametrize(("noted", "lift"), [(False, 3.0), (True, -3.0), (False, -3.0)])
def test_layers_are_lowered_to_the_lowest_plate_over_each_node(noted: bool, lift: float) -> None:
    pairs, batch, plates = plates_at(3, 8)
    batch.position[..., 2] += lift
    wide = plates.edges[pairs.part, 3] - plates.edges[pairs.part, 2] > 0.1
    pairs = Pairs(pairs.pose[wide], pairs.part[wide])
    ground = blocks_of(rough(3) + lift, CELL)
    limit = np.stack([ground.tiles + 0.2, np.full_like(ground.tiles, FAR)])
    owner = np.full(limit.shape, -1, np.int64) if noted else None
    planes = np.stack([ground.planes, ground.planes])
    layers = layers_of(limit, planes, CELL, owner)
    placed = place_pairs(pairs, batch, plates, ground)
    order = np.random.default_rng(0).permutation(len(pairs.pose))
    lower_to(0, 1, layers, placed, order)
    lower_to(1, 3, layers, placed, order)
    every = under(pairs, batch, plates)
    start = [rough(3) + lift + 0.2, np.full((ROWS, COLUMNS), FAR)]
    for m in (0, 1):
        mine = every[placed.layer == m]
        expected = np.fmin.reduce([start[m], *mine])
        got = untiled(layers.tiles[m], ROWS, COLUMNS)
        assert np.abs(got - expected)[expected < FAR / 2].max() < 1e-9
        assert (got[expected > FAR / 2] > FAR / 2).all()
        if noted:
            who, which = untiled(layers.owner[m], ROWS, COLUMNS), np.flatnonzero(placed.layer == m)
            lowered = expected < start[m] - 1e-9
            assert ((who >= 0) == lowered).all()
            held = mine[np.searchsorted(which, who[lowered]), *np.nonzero(lowered)]
            assert held == pytest.approx(expected[lowered], abs=1e-9)
        fresh = layers_of(layers.tiles, planes, CELL)
        assert layers.roof[m] == pytest.approx(fresh.roof[m], abs=1e-9), "as tight as what was reached"
        roof = layers.roof[m].max(axis=-1)
        assert roof == pytest.approx(layers.whole[m], abs=1e-12)


def test_a_row_of_nodes_crosses_a_plate_where_its_outline_does() -> None:
    pairs, batch, plates = plates_at(5, 6)
    q = len(pairs.pose)
    placed = Placed(np.empty((q, 3)), np.empty((q, 4, 2)), np.empty((q, 2), np.int64), pairs.pose, pairs.part)
    planes_of(pairs, batch.position, batch.rotation, plates, CELL, ROWS, placed)
    for over, quad, (j0, j1) in zip(under(pairs, batch, plates), placed.quads, placed.rows, strict=True):
        rows = np.flatnonzero(np.isfinite(over).any(axis=1))
        assert not rows.size or (j0 <= rows[0] and rows[-1] <= j1)
        for j in rows:
            first, last = column_range(quad, CELL, int(j), COLUMNS)
            columns = np.flatnonzero(np.isfinite(over[j]))
            assert (first, last) == (columns[0], columns[-1])
        edge = quad[:, 1] / CELL
        if j1 > j0:
            assert max(math.ceil(edge.min() - 0.02), 0) == j0
            assert min(math.floor(edge.max() + 0.02), ROWS - 1) == j1


@pytest.mark.parametrize("reach", [1, 4, 60])
def test_running_maxima_are_those_of_every_window(reach: int) -> None:
    ground = rough(7, 0.2)[:3]
    plain = [[row[max(i - reach, 0) : i + reach + 1].max() for i in range(COLUMNS)] for row in ground]
    found, inner = row_maxima(ground, reach), slice(reach, -reach)
    assert (found >= np.array(plain)).all(), "a bound"
    assert (found <= ground.max(axis=1, keepdims=True)).all(), "of some of its own row"
    assert (found[:, inner] == np.array(plain)[:, inner]).all()


def disk(ground: FloatArray, u: float, v: float, yaw: float, tilt: float) -> tuple[float, int]:
    """Lowest place of a tyre that leans by ``tilt`` over (u, v), m, and the node that carries it, from all
    nodes."""
    y, x = np.mgrid[:ROWS, :COLUMNS] * CELL
    a = (x - u) * math.cos(yaw) + (y - v) * math.sin(yaw)
    b = (y - v) * math.cos(yaw) - (x - u) * math.sin(yaw)
    on = (np.abs(a) < AXLES.radius) & (np.abs(b) <= AXLES.half_width + 1e-9) & (ground > VOID / 2)
    under = ground - b * tilt + np.sqrt(np.maximum(AXLES.radius**2 - a**2, 0.0)) - AXLES.radius
    top = np.where(on, under, -np.inf)
    return float(top.max()), int(top.argmax()) if on.any() else -1


@pytest.mark.parametrize(("seed", "yaw"), [(1, 0.0), (2, 0.7), (3, -2.2)])
def test_a_vehicle_stands_on_four_disks_a_wheelbase_apart(seed: int, yaw: float) -> None:
    """Every relation that ``settle`` states, from the nodes alone: no step of it is gone through again."""
    ground, loads = rough(seed, 0.05), (0.012, 0.004)
    cos, sin = math.cos(yaw), math.sin(yaw)
    middle = np.array([1.3, 1.0])
    u, v = middle - 0.45 * np.array([cos, sin])
    out = Stance.empty(1)
    places = np.array([[u, v, yaw, *loads]])
    settle_part(0, 1, tyre_ground(ground, CELL, AXLES, places), places, AXLES, True, out)
    h, base, r = out.wheels[0], AXLES.wheelbase, AXLES.radius
    at, turn = out.position[0], out.rotation[0]
    left, ahead = np.array([-sin, cos]), np.array([cos, sin])
    tilts = np.array([(h[0] - h[1]) / AXLES.front_track, (h[2] - h[3]) / AXLES.rear_track])
    # a hub is a radius from the middle of its tread, square to it
    over = r / np.hypot(1.0, tilts)
    rear, front = 0.5 * (h[2] + h[3]) + over[1], 0.5 * (h[0] + h[1]) + over[0]
    for k in range(3):
        assert turn[k].T @ turn[k] == pytest.approx(np.eye(3), abs=1e-12)
    hub_front, hub_rear = at[1] + turn[1] @ [base, 0, r], at[2] + turn[2] @ [0, 0, r]
    # over treads that follow the line, off to the lower side
    assert hub_rear == pytest.approx([*(np.array([u, v]) - tilts[1] * over[1] * left), rear], abs=1e-9)
    foot_front = hub_front[:2] + tilts[0] * over[0] * left
    assert (foot_front - [u, v]) @ left == pytest.approx(0.0, abs=1e-9)
    assert hub_front[2] == pytest.approx(front, abs=1e-9)
    for wheel, (foot, track) in enumerate(
        [(foot_front, AXLES.front_track)] * 2 + [(np.array([u, v]), AXLES.rear_track)] * 2
    ):
        place = foot + left * (0.5 - wheel % 2) * track
        height, node = disk(ground, *place, yaw, tilts[wheel // 2])
        assert h[wheel] == pytest.approx(height, abs=1e-5) and out.contact[0, wheel] == node
    # the body leans by a mix of both tilts about the same line: square to it, its own line of an axle is held
    # over the hubs, which are aside by the tilt's sine, it by its own
    mix = AXLES.front_share * tilts[0] + AXLES.rear_share * tilts[1]
    line = over + mix * (tilts * over - mix * r / math.hypot(1.0, mix))
    rise = 0.5 * (h[0] + h[1]) + line[0] - 0.5 * (h[2] + h[3]) - line[1]
    # which, under the body by the loads, keep the wheelbase along the chassis
    pitch = math.asin((rise + (loads[0] - loads[1]) * math.cos(math.asin(turn[0][2, 0]))) / base)
    assert turn[0][2, 0] == pytest.approx(math.sin(pitch), abs=2e-6)
    reach = (foot_front - [u, v]) @ ahead
    assert reach == pytest.approx(base * math.cos(pitch) + (loads[0] - loads[1]) * math.sin(pitch), abs=2e-5)
    plain = math.asin(rise / base)
    rolls = np.arctan(tilts * math.cos(plain))
    roll = AXLES.front_share * rolls[0] + AXLES.rear_share * rolls[1]
    for k, (tilt, lean) in enumerate([(pitch, roll), (plain, rolls[0]), (plain, rolls[1])]):
        assert turn[k] == pytest.approx(turned(yaw, tilt, lean), abs=3e-6)
    # the body leans about the line of travel, its line of the rear axle over the hubs
    leans = math.tan(roll) / math.cos(pitch)
    hung = at[0] + turn[0] @ [0, 0, r - loads[1]]
    assert (hung[:2] - [u, v]) @ left == pytest.approx(-r * leans / math.hypot(1, leans), abs=1e-9)
    beside = tilts[1] * over[1] - leans * r / math.hypot(1, leans)
    assert hung[2] == pytest.approx(rear + leans * beside, abs=1e-9)


def test_a_plate_is_lengthened_in_its_own_plane_and_made_wider_by_half_as_much() -> None:
    part = Part("ramp", (0.0, 2.0), (-0.5, 0.6), (0.10, 0.20), "nose", on="rear axle")
    plates = plates_of((part,), 0.04)
    assert plates.edges[0] == pytest.approx([-0.02, 2.02, -0.51, 0.61, 0.099, 0.201], abs=1e-12)
    assert (plates.zone[0], plates.frame[0]) == (1, 2)


def test_a_body_is_held_off_the_upright() -> None:
    assert lean_of(0.3, 1.0) == pytest.approx(math.asin(0.3))
    assert lean_of(5.0, 1.0) == -lean_of(-5.0, 1.0) == pytest.approx(math.asin(0.9))


@pytest.mark.parametrize("size", [2, 3, 4, 7])
def test_closing_fills_what_is_narrower_than_its_square_and_takes_nothing_away(size: int) -> None:
    for gap in (size - 1, size):
        known = np.ones((20, 30), bool)
        known[:, 9 : 9 + gap] = False
        assert (_closing(known, size) == (known | (gap < size))).all()
    some = np.random.default_rng(size).random((20, 30)) < 0.6
    inner = (slice(size, -size), slice(size, -size))
    assert (_closing(some, size) >= some)[inner].all()


def test_a_window_holds_every_part_and_tyre_at_both_ends_of_the_line() -> None:
    """With a margin all round, whichever part reaches farthest."""
    parts = (
        Part("floor", (0.1, 2.5), (-0.6, 0.6), (0.1, 0.1), "belly"),
        Part("lip", (3.4, 4.6), (-0.2, 0.9), (0.1, 0.1), "nose"),
        Part("hitch", (-1.3, -1.0), (-0.1, 0.1), (0.1, 0.1), "tail"),
        Part("box", (0.5, 0.6), (-0.3, 0.3), (0.1, 0.1), "belly"),
    )
    car, travel = vehicle(*parts, front_overhang=0.4, rear_overhang=0.3), replace(STRAIGHT, wander=0.2)
    line = travel_line([(1.0, 2.0), (5.0, 5.0)], car, travel, 0.05)
    frame = window(line, car, travel, 0.05, margin=0.3)
    c, s = math.cos(line.yaw[0]), math.sin(line.yaw[0])
    high = (np.array(frame.shape[::-1]) - 1) * frame.cell
    for end in (line.xy[0], line.xy[-1]):
        for x, y in itertools.product((-1.3, 4.6), (-0.9 - 0.2, 0.9 + 0.2)):
            # guided at the rear axle, which stands a wheelbase short of the line's end
            ahead = x if x < 0 else x - L
            at = frame.to_grid((end[0] + c * ahead - s * y, end[1] + s * ahead + c * y))
            assert (at >= 0.3 - 1e-6).all() and (at <= high - 0.3 + 1e-6).all(), (x, y)


def test_no_node_of_a_block_stands_higher_over_its_plane_than_is_noted() -> None:
    """What every bound of a sweep hangs on: the noted height is that of the highest node."""
    ground = rough(4, 0.1)
    blocks = blocks_of(ground, CELL)
    away = (np.arange(BLOCK) - 0.5 * (BLOCK - 1)) * CELL
    middle, slope_u, slope_v, above = np.moveaxis(blocks.planes, -1, 0)[..., None, None]
    plain = middle + slope_u * away + slope_v * away[:, None]
    over = np.where(blocks.tiles > VOID / 2, blocks.tiles - plain, -np.inf)
    assert over.max(axis=(2, 3)) == pytest.approx(above[..., 0, 0], abs=1e-12)
    assert (over.max(axis=3) <= blocks.roof + 1e-12).all()


def test_a_hole_is_bridged_in_a_straight_line_over_its_shortest_crossing() -> None:
    """Against all pairs of measured nodes in line with a hole's node, in eight directions."""
    rng, size = np.random.default_rng(6), 4
    values = rng.normal(0, 1.0, (18, 20))
    values[5:9, 4:7] = values[11, 2:15] = values[2:16, 16] = values[rng.random(values.shape) < 0.1] = np.nan
    nodes = np.argwhere(np.isnan(values))
    for (j, i), found in zip(nodes, _bridged(values, nodes, size), strict=True):
        best = (math.inf, math.nan)
        for dj, di in ((0, 1), (1, 0), (1, 1), (1, -1)):
            ends = []
            for side in (-1, 1):
                for n in range(1, size + 1):
                    at = j + side * n * dj, i + side * n * di
                    if 0 <= at[0] < 18 and 0 <= at[1] < 20 and np.isfinite(values[at]):
                        ends.append((n, values[at]))
                        break
            if len(ends) == 2 and ends[0][0] + ends[1][0] <= size + 1:
                (a, low), (b, high) = ends
                across = (a + b) * math.hypot(dj, di)
                best = min(best, (across, (low * b + high * a) / (a + b)), key=lambda c: c[0])
        assert found == pytest.approx(best[1], abs=1e-12, nan_ok=True)


def test_a_break_of_grade_is_told_where_it_is_and_as_large_as_it_is() -> None:
    station = np.arange(150) * 0.02
    for at, change in ((1.2, 0.1), (1.8, -0.07)):
        found = _strongest_break(station, 0.03 * station + change * np.maximum(station - at, 0.0))
        assert found == (pytest.approx(at), pytest.approx(change))
    assert _strongest_break(station, 0.2 * station) is None


def test_a_wheel_stands_on_the_first_node_of_the_ground_and_not_beyond_it() -> None:
    car, flat = vehicle(), np.zeros((60, 90))
    half = car.front_track / 2
    at = [(0.0, 1.5), (0.5, half), (0.5, 1.5), (-0.05, 1.5), (0.5, half - 0.05)]
    places = np.array([[u, v, 0.0, 0.0, 0.0] for u, v in at])
    batch = settle_batch(car, flat, 0.05, places, np.zeros(5, np.int64))
    assert batch.live.tolist() == [True, True, True, False, False]


def test_on_three_wheels_of_a_plane_every_point_of_the_chassis_is_on_it() -> None:
    """Whichever wheel hangs: its weight is nothing, the others' are those of the plane through them."""
    car = vehicle(front_track=1.5, rear_track=1.3)
    wheels = np.array([[L, 0.75], [L, -0.75], [0.0, 0.65], [0.0, -0.65]])
    x, y = np.array([0.3, 1.9, 3.4]), np.array([-0.5, 0.1, 0.8])
    weights = support_weights(car, x, y)
    plane = 0.2 + wheels @ np.array([0.07, -0.04])
    assert weights @ plane == pytest.approx(np.tile(0.2 + 0.07 * x - 0.04 * y, (4, 1)))
    for hanging in range(4):
        assert weights[hanging, :, hanging] == pytest.approx(0.0, abs=1e-15)
