"""Bent lines: what can be driven, what is refused, and the sweep along them against ray casting."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from test_springs import rough
from test_sweep_twin import cast, random_car

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import GridFrame
from crestcut.contact.clearance.sweep import FRAMES, hard_parts, plate_heights, sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.path.path import beside, drivable, follow, swing
from crestcut.contact.stand.ground import contact_ground
from crestcut.contact.stand.ride import ride
from crestcut.contact.stand.tyres import VOID
from crestcut.job.records import Travel
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, L, Scene, belly, stand, surface_of, vehicle


def curvature(xy: np.ndarray) -> np.ndarray:
    d = np.diff(xy, axis=0)
    yaw = np.unwrap(np.arctan2(d[:, 1], d[:, 0]))
    return np.abs(np.diff(yaw)) / np.hypot(*d.T)[1:]


def test_no_bend_is_tighter_than_the_vehicle_turns() -> None:
    rng = np.random.default_rng(1)
    driven = 0
    for _ in range(100):
        points = np.cumsum(rng.normal([4, 0], [1.0, 2.5], (6, 2)), axis=0)
        try:
            xy, yaw, tightest = drivable([tuple(p) for p in points], 4.5, 0.01)
        except CrestcutError as error:
            assert "no tighter than 4.50 m" in str(error)
            continue
        driven += 1
        assert curvature(xy).max() <= 1 / 4.5 * 1.001 and tightest >= 4.5 - 1e-9
        assert np.hypot(*np.diff(xy, axis=0).T) == pytest.approx(0.01, rel=1e-4)
        assert np.abs(np.diff(yaw)).max() < 0.01 / 4.5 * 1.001
    assert 20 < driven < 100


def test_points_on_an_arc_give_the_arc_back() -> None:
    a = np.linspace(0, 1.2, 25)
    xy, _, tightest = drivable([(10 * math.sin(t), 10 * (1 - math.cos(t))) for t in a], 5.0, 0.01)
    assert np.hypot(xy[:, 0], xy[:, 1] - 10) == pytest.approx(10.0, abs=5e-3)
    assert tightest > 8.0


def test_an_impossible_turn_is_refused_by_name() -> None:
    car = vehicle(turning_radius=5.5)
    with pytest.raises(
        CrestcutError, match=r"bend at point 2 leaves .* radius of .* no tighter than 3\.88 m"
    ):
        travel_line([(0, 0), (5, 0), (5, 1.5), (9, 1.5)], car, STRAIGHT, 0.01)
    with pytest.raises(CrestcutError, match="impossible with a wheelbase"):
        travel_line([(0, 0), (5, 0), (9, 1)], vehicle(turning_radius=2.9), STRAIGHT, 0.01)


def test_three_points_in_a_row_are_a_straight_line() -> None:
    straight = travel_line([(0, 0), (8, 0)], vehicle(), STRAIGHT, 0.01)
    bent = travel_line([(0, 0), (3, 0), (8, 0)], vehicle(), STRAIGHT, 0.01)
    assert bent.xy == pytest.approx(straight.xy, abs=1e-12) and bent.yaw == pytest.approx(straight.yaw)
    assert window(bent, vehicle(), STRAIGHT, 0.01) == window(straight, vehicle(), STRAIGHT, 0.01)


def test_a_line_drawn_under_the_left_wheels_keeps_its_distance_in_the_bend() -> None:
    moved = np.array(beside([(0, 0), (5, 0), (5, 5)], -0.75))
    assert moved == pytest.approx(np.array([[0, -0.75], [5.75, -0.75], [5.75, 5]]))


def test_the_tightest_arc_and_how_far_it_leaves_the_drawn_line_are_said() -> None:
    car = vehicle(turning_radius=5.5)
    line = travel_line([(0, 0), (6, 0), (10, 3)], car, STRAIGHT, 0.01)
    # the middle of an arc of radius r in a corner of turn a lies r (1 - cos(a / 2)) from either leg
    # (geometry). [D]
    turn = math.atan2(3, 4)
    bend = curvature(line.xy).max()
    off = (1 - math.cos(turn / 2)) / bend
    assert f"radius of {1 / bend:.2f} m" in line.notes[0] and "turns on 3.88 m" in line.notes[0]
    said = float(line.notes[0].split("by at most ")[1].split(" mm")[0])
    assert said == pytest.approx(off * 1000, abs=1.5)
    assert travel_line([(0, 0), (9, 0)], car, STRAIGHT, 0.01).notes == ()
    assert "was not checked" in travel_line([(0, 0), (6, 0), (10, 3)], vehicle(), STRAIGHT, 0.01).notes[0]
    rode = stand(car, STRAIGHT, line, surface_of(lambda x, y: 0 * x, window(line, car, STRAIGHT, 0.02))).ride
    assert rode.notes[:2] == line.notes


# AASHTO P car (Green Book): width 7 ft, wheelbase 11, front overhang 3, least centreline radius 21 ft: outer
# front corner 25.56 ft, printed 25.5; the rear axle's outer side goes round on sqrt(21^2 - 11^2) + 3.5 =
# 21.389 ft. [D]
def test_the_nose_swings_out_as_far_as_the_design_car_s() -> None:
    foot = 0.3048
    car = vehicle(
        belly(front=11 * foot),
        wheelbase=11 * foot,
        width=7 * foot,
        front_overhang=3 * foot,
        rear_overhang=5 * foot,
    )
    middle = math.sqrt(21**2 - 11**2)
    nose, tail = swing(car, middle * foot)
    assert nose / foot == pytest.approx(25.56 - (middle + 3.5), abs=0.01)
    assert tail / foot == pytest.approx(math.hypot(middle + 3.5, 5) - (middle + 3.5), abs=1e-9)


def bent_scene(rng: np.random.Generator, travel: Travel, step: float = 0.01) -> Scene:
    car = random_car(rng)
    side = rng.choice([-1, 1])
    line = travel_line(
        [(0.003, 0.002), (3.1, 0.3 * side), (5.0, 2.4 * side), (8.2, 2.9 * side)], car, travel, step
    )
    return stand(car, travel, line, surface_of(rough(rng), window(line, car, travel, 0.01, margin=0.1)))


def test_the_sweep_on_bent_lines_is_what_ray_casting_finds() -> None:
    for seed in range(5):
        rng = np.random.default_rng(seed)
        s = bent_scene(rng, Travel(line=(), wander=0.1, heading=0.03, ways=("forward", "turned")), 0.02)
        ground = contact_ground(s.surface)
        gaps = sweep(s.vehicle, s.surface, replace(s.ride, line=replace(s.ride.line, step=0.0))).pair_gap
        assert gaps is not None
        for pose in rng.choice(len(s.ride.batch.places), 8, replace=False):
            hit = cast(s, int(pose))
            known = np.isfinite(hit) & (ground > VOID / 2)
            twin = np.where(known, hit - ground, np.inf).min()
            # a corner that pokes between two rows takes the nearest node, up to half a cell outside: never
            # less safe
            assert gaps[pose].min() <= twin + 2e-4
            low = lowest_at(s, int(pose))
            both = known & np.isfinite(low)
            assert (low - ground)[both].min() == pytest.approx(twin, abs=2e-4)
            assert np.isfinite(low)[known].mean() > 0.999


def lowest_at(s: Scene, pose: int) -> np.ndarray:
    """Least height of the underside over every node at one pose, as the sweep has it; infinite where it is
    not.
    """
    frame, batch = s.surface.height.frame, s.ride.batch
    low = np.full(frame.shape, np.inf)
    for part in hard_parts(s.vehicle):
        k = FRAMES.index(part.on)
        plate = np.array([*part.x, *part.y, *part.z])
        z, i, j = plate_heights(plate, batch.position[pose, k], batch.rotation[pose, k], frame)
        patch = low[j : j + z.shape[0], i : i + z.shape[1]]
        patch[:] = np.fmin(patch, z)
    return low


def test_the_heading_is_the_tangent_and_stations_count_along_the_line() -> None:
    s = bent_scene(
        np.random.default_rng(9), Travel(line=(), wander=0.0, heading=0.0, ways=("forward", "turned")), 0.02
    )
    forward, turned = s.ride.poses
    assert forward.station[0] == pytest.approx(L, abs=0.05) and np.all(np.diff(forward.station) > 0)
    assert forward.station[-1] <= s.line.length + 0.1
    assert turned.station[0] == pytest.approx(s.line.length - L, abs=0.12)
    assert turned.station[-1] == pytest.approx(0, abs=0.12)  # a chord is a little shorter than its arc
    yaw = s.line.yaw[: len(forward.station)] - s.surface.height.frame.angle
    assert np.arctan2(forward.rotation[:, 1, 0], forward.rotation[:, 0, 0]) == pytest.approx(yaw, abs=1e-9)


def test_moving_and_turning_scene_and_line_together_changes_nothing() -> None:
    car, ground = vehicle(), rough(np.random.default_rng(3))
    points, travel = [(0.0, 0.0), (4.0, 0.3), (7.0, 2.5)], STRAIGHT
    angle, shift = 0.7, np.array([31.0, -12.0])
    c, s = math.cos(angle), math.sin(angle)
    turned = [tuple(np.array([c * x - s * y, s * x + c * y]) + shift) for x, y in points]

    def moved(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        x, y = x - shift[0], y - shift[1]
        return ground(c * x + s * y, -s * x + c * y)  # type: ignore[operator]

    gaps = []
    for line_points, z in ((points, ground), (turned, moved)):
        line = travel_line(line_points, car, travel, 0.02)  # type: ignore[arg-type]
        surface = surface_of(z, window(line, car, travel, 0.02))  # type: ignore[arg-type]
        gaps.append(sweep(car, surface, ride(car, surface, line, travel, (AS_MEASURED,))).worst)
    assert gaps[0] is not None and gaps[1] is not None
    assert gaps[0].gap == pytest.approx(gaps[1].gap, abs=1e-6)


def test_the_front_axle_of_a_rear_guided_path_leads_the_rear_back_onto_it() -> None:
    xy, yaw, tightest = drivable([(0, 0), (6, 0), (9, 5), (16, 5)], 4.0, 0.005)
    assert tightest == pytest.approx(4.0)
    front = xy + 2.8 * np.stack([np.cos(yaw), np.sin(yaw)], axis=1)
    rear, heading = follow(front, 2.8, 0.0)
    assert np.abs(rear - xy).max() < 1e-3 and np.abs(heading - yaw).max() < 1e-3


def test_the_window_holds_the_whole_vehicle_in_the_bend() -> None:
    car = replace(vehicle(), turning_radius=5.5)
    line = travel_line([(0, 0), (6, 0), (9, 6), (9, 12)], car, STRAIGHT, 0.01)
    frame: GridFrame = window(line, car, STRAIGHT, 0.05)
    for k in range(0, len(line.xy) - 280, 50):
        c, s = math.cos(line.yaw[k]), math.sin(line.yaw[k])
        box = np.array([[x, y] for x in (-0.8, 2.8 + 0.9) for y in (-0.875, 0.875)])
        uv = frame.to_grid(line.xy[k] + box @ np.array([[c, s], [-s, c]]))
        assert (uv > 0.3).all() and (uv < np.array(frame.size) - 0.3).all()
