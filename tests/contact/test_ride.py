"""How the vehicle stands: exact pitch and roll on planes, the wheelbase as a length, holes and wander
said."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.contact.clearance.sweep import on_the_line, sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.stand.ride import ride, settle_batch
from crestcut.job.records import PlanPoint, Travel
from crestcut.vehicle.records import LoadState, Springs
from scenes import STRAIGHT, L, R, belly, crest, scene, stand, surface_of, vehicle

LINE = (PlanPoint(0, 0), PlanPoint(1, 0))


PLANES = [(0.0, 0.0), (0.12, 0.0), (0.0, 0.02), (0.0, 0.05), (0.0, 0.1), (-0.1, 0.04), (0.1, 0.1)]


@pytest.mark.parametrize(("along", "across"), PLANES)
def test_on_a_plane_the_body_lies_parallel_to_it(along: float, across: float) -> None:
    s = scene(lambda x, y: along * x + across * y)
    # the clearance is measured square to the plane, the gap vertically: c * sqrt(1 + along^2 + across^2)
    expected = 0.12 * math.sqrt(1 + along**2 + across**2)
    assert s.before.worst is not None
    assert s.before.worst.gap == pytest.approx(expected, abs=5e-5)


@pytest.mark.parametrize(("along", "across"), PLANES)
def test_on_a_plane_at_any_heading_every_frame_lies_on_it(along: float, across: float) -> None:
    """A rigid body on a plane: body, axles and tyres in it, whichever way the nodes run under them."""
    cell, gone = 0.01, math.sqrt(1 + along**2 + across**2)
    y, x = np.indices((440, 440)) * cell
    for yaw in (0.0, 0.05, 0.8, -2.0):
        c, s = math.cos(yaw), math.sin(yaw)
        ahead, left = np.array([c, s]), np.array([-s, c])
        grade = along * ahead + across * left
        start = np.array([2.203, 2.197]) - L / 2 * ahead
        place = np.array([[*start, yaw, 0.0, 0.0]])
        ground = grade[0] * x + grade[1] * y
        batch = settle_batch(vehicle(), ground, cell, place, np.zeros(1, np.int64))
        for k, at in [(0, (0, 0.6)), (0, (L, 0.6)), (0, (L / 2, -0.6)), (1, (L, -0.7)), (2, (0, 0.7))]:
            point = batch.rotation[0, k] @ [*at, 0.12] + batch.position[0, k]
            assert point[2] - grade @ point[:2] == pytest.approx(0.12 * gone, abs=5e-5)
        # square to the plane under the line of travel: what stands on it keeps to it
        sole = batch.rotation[0, 0] @ [0, 0, 0] + batch.position[0, 0]
        assert (sole[:2] - start) @ left == pytest.approx(0.0, abs=2e-4)


def test_pitch_is_taken_over_the_chassis_not_over_the_ground() -> None:
    s = scene(crest(0.2), vehicle(belly(0.4)))
    batch = s.ride.batch
    hubs_rear = batch.position[:, 0] + np.einsum("pij,j->pi", batch.rotation[:, 0], np.array([0, 0, R]))
    hubs_front = batch.position[:, 0] + np.einsum("pij,j->pi", batch.rotation[:, 0], np.array([L, 0, R]))
    assert np.linalg.norm(hubs_front - hubs_rear, axis=1) == pytest.approx(L, abs=1e-12)
    assert hubs_rear[:, 2] - R == pytest.approx(batch.wheels[:, 2:].mean(axis=1), abs=1e-12)
    assert hubs_front[:, 2] - R == pytest.approx(batch.wheels[:, :2].mean(axis=1), abs=2e-6)
    # small angles would put the front hub a full wheelbase ahead: on the way up it is not
    assert (hubs_front[:, 0] - hubs_rear[:, 0]).min() < L - 0.04


def test_rotations_are_rotations() -> None:
    rotation = scene(
        crest(0.15, 0.6), travel=Travel(line=LINE, ways=("forward", "turned"))
    ).ride.batch.rotation
    eye = np.einsum("pfki,pfkj->pfij", rotation, rotation)
    assert np.allclose(eye, np.eye(3), atol=1e-12)
    assert np.allclose(np.linalg.det(rotation), 1.0)


def test_roll_is_shared_by_stiffness() -> None:
    # a block under the front left wheel alone: roll = share x block / track (to first order)
    ground = lambda x, y: 0.04 * ((x > 1.2) & (y > 0.3))  # noqa: E731
    soft_rear = vehicle(springs=Springs(front_rate=30_000, rear_rate=10_000))
    s = scene(ground, soft_rear, start=(-2, 0), end=(1.9, 0))
    p = int(np.argmax(s.ride.poses[0].station > 1.6 + 2.0))
    left = s.ride.poses[0].rotation[p][2, 1]
    assert math.asin(left) == pytest.approx(0.75 * math.asin(0.04 / 1.5), rel=2e-3)


def test_load_lowers_the_body_not_the_wheels_nor_what_the_axle_carries() -> None:

    s = scene(lambda x, y: 0 * x)
    laden = LoadState("laden", -0.02, -0.045)
    axle_part = replace(belly(0.15, half=0.2, back=-0.1, front=0.1), name="axle", on="rear axle")
    car = vehicle(belly(0.12), axle_part)
    rode = ride(car, s.surface, s.line, STRAIGHT, (laden,))
    clearance = sweep(car, s.surface, rode)
    assert clearance.worst is not None
    # lowest at the rear end of the belly, where the body has come down by the rear's 45 mm
    assert clearance.worst.gap == pytest.approx(0.12 - 0.045, abs=1e-4)
    only_axle = sweep(replace(car, parts=(axle_part,)), s.surface, rode)
    assert only_axle.worst is not None and only_axle.worst.gap == pytest.approx(0.15, abs=1e-9)


def test_turned_is_the_mirror_of_forward_on_a_mirrored_ground() -> None:
    ground = lambda x, y: 0.05 * np.sin(1.3 * x) + 0.01 * y * x  # noqa: E731
    mirror = lambda x, y: ground(-x, -y)  # noqa: E731
    forward = scene(ground, travel=Travel(line=LINE, wander=0.1, heading=math.radians(2)))
    turned = scene(mirror, travel=Travel(line=LINE, wander=0.1, heading=math.radians(2), ways=("turned",)))
    assert forward.before.worst is not None and turned.before.worst is not None
    assert turned.before.worst.gap == pytest.approx(forward.before.worst.gap, abs=1e-6)


def test_stations_are_of_the_front_axle_from_the_start_of_the_line() -> None:
    for way, first, last in (("forward", L, 8.0), ("turned", 8.0 - L, 0.0)):
        station = (
            scene(lambda x, y: 0 * x, travel=Travel(line=LINE, wander=0, heading=0, ways=(way,)))
            .ride.poses[0]
            .station
        )
        assert station[0] == pytest.approx(first, abs=1e-6)
        assert station[-1] == pytest.approx(last, abs=0.011)


def test_a_small_hole_is_bridged_and_counted_and_a_wide_one_refused() -> None:
    car = vehicle()
    line = travel_line([(-4, 0), (4, 0)], car, STRAIGHT, 0.01)
    frame = window(line, car, STRAIGHT, 0.01)
    xy = frame.node_xy()

    def with_hole(length: float) -> object:
        hole = (np.abs(xy[..., 0]) < length / 2) & (np.abs(xy[..., 1] - 0.75) < 0.3)
        return stand(car, STRAIGHT, line, surface_of(lambda x, y: 0.05 * x, frame, hole))

    bridged = with_hole(0.10)
    assert bridged.ride.filled > 0  # type: ignore[attr-defined]
    assert bridged.before.unmeasured > 0  # type: ignore[attr-defined]
    assert bridged.ride.batch.live.all()  # type: ignore[attr-defined]
    with pytest.raises(CrestcutError, match=r"no measured ground under the front left tyre .* 150 mm"):
        with_hole(0.40)


def test_wander_off_the_scan_is_left_out_and_said() -> None:
    car = vehicle()
    travel = Travel(line=LINE, wander=0.2, heading=0.0)
    line = travel_line([(-4, 0), (4, 0)], car, travel, 0.01)
    frame = window(line, car, travel, 0.01)
    s = stand(car, travel, line, surface_of(lambda x, y: 0 * x, frame, frame.node_xy()[..., 1] > 0.88))
    assert not s.ride.batch.live.all()
    assert "not judged" in s.ride.notes[0]
    # the wheels, 0.75 m out, leave the ground at 0.88 m from 0.13 m off the line; 2.80 m is the wheelbase
    assert "200 mm left of the line, from the front axle 2.80 m along" in s.ride.notes[0]


@pytest.mark.parametrize("way", ["forward", "turned"])
def test_a_scan_that_ends_under_the_line_is_refused_with_where_to_end_it(way: str) -> None:
    car, travel = vehicle(), Travel(line=LINE, wander=0, heading=0, ways=(way,))
    line = travel_line([(-4, 0), (4, 0)], car, travel, 0.01)
    frame = window(line, car, travel, 0.01)
    x = frame.node_xy()[..., 0]
    ends = ((x > 3.45, "end it 7.4 m from its start"), (x < -3.45, "start it 0.6 m later"))
    for hole, mend in ends:
        with pytest.raises(CrestcutError, match=f"driven exactly on it .*shorten the line: {mend}; or"):
            stand(car, travel, line, surface_of(lambda x, y: 0 * x, frame, hole))
    with pytest.raises(CrestcutError) as refused:  # a hole midway: no shorter line would do
        stand(car, travel, line, surface_of(lambda x, y: 0 * x, frame, np.abs(x) < 0.3))
    assert "shorten" not in str(refused.value)


@pytest.mark.parametrize("way", ["forward", "turned"])
@pytest.mark.parametrize(("angle", "forward_first"), [(0.4, "left"), (-0.4, "right")])
def test_which_wheel_meets_a_skewed_break_first_is_said(angle: float, forward_first: str, way: str) -> None:
    notes = scene(crest(0.1, angle), travel=Travel(line=LINE, wander=0, heading=0, ways=(way,))).ride.notes
    # the line of the crest runs back to the left by tan(angle): the left wheel, half a track over, meets it
    # that much earlier; turned about, the vehicle's left is the other side and it comes the other way: the
    # same wheel again. Its tread lies flat on the slope until its last edge is over the crest; by then the
    # axle tips the other's first edge onto it
    assert f"the {forward_first} front wheel meets it" in notes[0]
    early = float(notes[0].split("meets it ")[1].split(" m before")[0])
    assert early == pytest.approx((1.5 - 0.2) * math.tan(0.4), abs=0.02)
    assert "at 4.0 m along the line" in notes[0]


def test_a_square_crest_or_a_plane_needs_no_word_on_wheels() -> None:
    for ground in (crest(0.1), lambda x, y: 0.1 * x + 0.05 * y):
        assert scene(ground).ride.notes == ()


def test_the_line_itself_is_told_apart_from_the_worst_of_the_scatter() -> None:
    hump = lambda x, y: crest(0.06)(x, y) + 0.02 * np.exp(-((x / 0.3) ** 2) - ((y - 0.72) / 0.05) ** 2)  # noqa: E731
    wide = scene(
        hump, travel=Travel(line=LINE, wander=0.1, heading=math.radians(3), ways=("forward", "turned"))
    )
    alone = scene(hump, travel=Travel(line=LINE, wander=0, heading=0, ways=("forward", "turned")))
    assert alone.before.worst is not None and wide.before.worst is not None
    assert on_the_line(wide.ride, wide.before) == pytest.approx(alone.before.worst.gap, abs=1e-9)
    assert on_the_line(alone.ride, alone.before) == alone.before.worst.gap
    # the hump is beside the belly of who keeps to the line
    assert wide.before.worst.gap < alone.before.worst.gap - 2e-3
    assert any("100 mm to either side" in n and "3 offsets x 3 headings" in n for n in wide.ride.notes)


@pytest.mark.parametrize("points", [[(0.0, 0.0), (2.0, 0.0)], [(1.0, 1.0), (1.0, 1.0)]])
def test_a_line_shorter_than_the_wheelbase_is_refused(points: list[tuple[float, float]]) -> None:
    with pytest.raises(CrestcutError, match="shorter than the wheelbase"):
        travel_line(points, vehicle(), STRAIGHT, 0.01)


@pytest.mark.parametrize(("track", "middle"), [("middle", 0.0), ("left", -0.75), ("right", 0.75)])
def test_the_line_may_be_drawn_under_either_wheel(track: str, middle: float) -> None:
    line = travel_line([(0, 0), (5, 0)], vehicle(), Travel(line=LINE, track=track), 0.01)
    assert line.xy[:, 1] == pytest.approx(middle)
    assert line.length == pytest.approx(5.0, abs=0.011)
