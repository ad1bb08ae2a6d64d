"""The vehicle on its springs, against general minimisers that know nothing of warp forces."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import linprog, minimize

from crestcut.base.errors import CrestcutError
from crestcut.contact.stand.ground import ridden_ground
from crestcut.contact.stand.ride import axles_of, settle_batch
from crestcut.contact.stand.springs import stands_by_limits, support_weights, suspension
from crestcut.contact.stand.springs_kernel import Body, Carried, stand
from crestcut.vehicle.records import LoadState, Springs, Vehicle
from scenes import TRACK, L, belly, crest, scene, vehicle

AXLE = np.array([L, L, 0.0, 0.0])


def sides(car: Vehicle) -> np.ndarray:
    return np.array([car.front_track, -car.front_track, car.rear_track, -car.rear_track]) / 2


def random_springs(rng: np.random.Generator) -> Vehicle:
    loads = rng.uniform(3500, 9000, 2)
    springs = Springs(
        *rng.uniform(18_000, 60_000, 2), *(rng.uniform(0, 30_000, 2) * rng.integers(0, 2)),
        *rng.uniform(0.005, 0.09, 2), *loads, rng.uniform(0, 600), measured=True,
    )  # fmt: skip
    height = rng.uniform(0.3, 0.7) if rng.random() < 0.7 else 0.0
    return vehicle(
        springs=springs,
        front_track=rng.uniform(1.3, 1.6),
        rear_track=rng.uniform(1.3, 1.6),
        centre_of_mass=(1.4, 0.0, height),
    )


def by_minimiser(car: Vehicle, ground: np.ndarray, pitch: float, roll: float) -> np.ndarray:
    """Heights of the four wheels and of the body over them, (8,), by a general minimiser of the energy.
    Square to the chassis, m.
    """
    s, y = car.springs, sides(car)
    k = np.repeat([s.front_rate, s.rear_rate], 2)
    bar = np.array([s.front_anti_roll / car.front_track**2, s.rear_anti_roll / car.rear_track**2])
    droop = np.repeat([s.front_droop, s.rear_droop], 2)
    wheel = (s.unsprung or 0.0) / 2
    held = np.repeat([s.front_load, s.rear_load], 2) / 2 - wheel
    normal = math.sqrt(1 - math.sin(pitch) ** 2 - math.sin(roll) ** 2)
    weight, high = held.sum(), car.centre_of_mass[2]
    reach = np.stack([np.ones(4), AXLE, y], axis=1)
    pull = normal * (held @ reach) - weight * high * np.array([0.0, math.sin(pitch), math.sin(roll)])
    rates = np.diag(k)
    for axle in (0, 1):
        pair = slice(2 * axle, 2 * axle + 2)
        rates[pair, pair] += bar[axle] * np.array([[1, -1], [-1, 1]])
    # x = (heave, pitch, roll, wheels) / 0.1 m; energy in kJ so that the minimiser sees numbers near one
    press = np.concatenate([-reach, np.eye(4)], axis=1)
    hessian = press.T @ rates @ press
    linear = press.T @ held + np.concatenate([pull, np.full(4, wheel * normal)])
    cons = [
        {"type": "ineq", "fun": lambda x: x[3:] - 10 * ground, "jac": lambda x: np.eye(7)[3:]},
        {"type": "ineq", "fun": lambda x: press @ x + 10 * droop, "jac": lambda x: press},
    ]
    start = np.concatenate([[10 * ground.max() + 1.0, 0, 0], np.full(4, 10 * ground.max() + 1.0)])
    rng, best = np.random.default_rng(0), (math.inf, start)
    for _ in range(
        6
    ):  # it may stop 0.1 mm short, or run away along the direction that costs nothing: the lowest counts
        at = best[1] + rng.normal(0, 0.05, 7) * (best[0] < math.inf)
        for _ in range(2):
            found = minimize(
                lambda x: (0.005 * x @ hessian @ x + 0.1 * linear @ x) / 100,
                at,
                method="SLSQP",
                constraints=cons,
                jac=lambda x: (0.01 * hessian @ x + 0.1 * linear) / 100,
                options={"maxiter": 300, "ftol": 1e-14},
            )
            at = found.x
        feasible = (at[3:] >= 10 * ground - 1e-7).all() and (press @ at >= -10 * droop - 1e-7).all()
        close = abs(found.fun - best[0]) < 1e-11
        if feasible and found.fun < best[0]:
            best = (found.fun, at)
        if close:
            break
    found = best[1]
    return np.concatenate([found[3:], reach @ found[:3]]) / 10


def by_kernel(car: Vehicle, ground: np.ndarray, pitch: float, roll: float) -> tuple[np.ndarray, np.ndarray]:
    """The same eight heights by ``stand``, and the forces on the wheels."""
    out = Carried(np.zeros(4), np.zeros(4), np.zeros(3))
    forces, lift, sink = out
    s, y = suspension(car), sides(car)
    twist = (ground[0] - ground[1]) / car.front_track - (ground[2] - ground[3]) / car.rear_track
    stand(twist, axles_of(car), s, Body(0.0, 0.0, math.sin(pitch), math.sin(roll)), out)
    wheels = ground + lift
    rates = np.array([s.front.rate / 2 + s.front.bar, s.rear.rate / 2 + s.rear.bar])
    stiff = rates * np.array([car.front_track, car.rear_track]) ** 2
    lean = np.array([(wheels[0] - wheels[1]) / car.front_track, (wheels[2] - wheels[3]) / car.rear_track])
    angle = (stiff * lean).sum() / stiff.sum() + sink[2]
    middle = np.repeat([wheels[:2].mean() + sink[0], wheels[2:].mean() + sink[1]], 2)
    return np.concatenate([wheels, middle + angle * y]), forces


@pytest.mark.parametrize("count", [24, 200])  # a few: soon done uncompiled too
def test_four_springs_lie_where_a_general_minimiser_puts_them(count: int) -> None:
    rng = np.random.default_rng(4)
    hanging = stopped = 0
    for _ in range(count):
        car = random_springs(rng)
        ground = rng.normal(0, 0.07, 4)
        pitch, roll = rng.uniform(-0.15, 0.15), rng.uniform(-0.06, 0.06)
        twin = by_minimiser(car, ground, pitch, roll)
        ours, forces = by_kernel(car, ground, pitch, roll)
        assert ours == pytest.approx(twin, abs=5e-5)
        up = ours[:4] - ground > 1e-4
        assert (up == (twin[:4] - ground > 1e-4)).all()
        assert (forces[up] == 0).all() and (forces >= -1e-6).all()
        hanging += up.any()
        droop = np.repeat([car.springs.front_droop, car.springs.rear_droop], 2)
        stopped += (ours[:4] - ours[4:] < -droop + 1e-9).any()
    assert hanging > count / 10 and stopped > 0.3 * count  # the grounds really reach the limits


def test_a_cart_stands_on_the_three_wheels_under_its_centre_of_mass() -> None:
    rng = np.random.default_rng(5)
    for _ in range(200):
        car = vehicle(
            rigid=True, front_track=rng.uniform(0.9, 1.5), rear_track=rng.uniform(0.9, 1.5),
            centre_of_mass=(rng.uniform(0.3, 2.5), rng.uniform(-0.3, 0.3), 0.0),
        )  # fmt: skip
        ground, y = rng.normal(0, 0.03, 4), sides(car)
        x0, y0, _ = car.centre_of_mass
        # lowest centre of mass with all wheels on or above the ground
        reach = np.stack([np.ones(4), AXLE, y], axis=1)
        found = linprog([1.0, x0, y0], A_ub=-reach, b_ub=-ground, bounds=[(None, None)] * 3, method="highs")
        ours, _ = by_kernel(car, ground, 0.0, 0.0)
        assert ours[:4] == pytest.approx(reach @ found.x, abs=5e-8)
        assert ours[4:] == pytest.approx(ours[:4], abs=1e-12)
        assert (ours[:4] - ground > 1e-7).sum() == 1


def rough(rng: np.random.Generator) -> object:
    a, p = rng.normal(0, 0.03, 6), rng.uniform(0, 6, 6)
    f, g = rng.uniform(0.5, 2.5, 6), rng.uniform(-2, 2, 6)
    return lambda x, y: sum(a[i] * np.sin(f[i] * x + g[i] * y + p[i]) for i in range(6))


def test_on_real_ground_the_chassis_keeps_its_springs_and_its_wheels() -> None:
    """Full rotation: wheels, hubs and body read back from the poses obey the springs."""
    rng = np.random.default_rng(6)
    for _ in range(3):
        car = random_springs(rng)
        ground = rough(rng)
        s = scene(ground, car, start=(-3, 0), end=(3, 0.3))
        batch = s.ride.batch
        for p in range(0, len(batch.places), 60):
            pitch = math.asin(batch.rotation[p, 0, 2, 0])
            roll = math.asin(batch.rotation[p, 0, 2, 1] / math.cos(pitch))
            touch = batch.wheels[p].copy()
            # hubs seen from the body: how far each axle's middle is pressed
            for axle, (x, pair) in enumerate(((L, slice(0, 2)), (0.0, slice(2, 4)))):
                hub = batch.position[p, 1 + axle] + batch.rotation[p, 1 + axle] @ np.array(
                    [x, 0, car.tyre_radius]
                )
                local = batch.rotation[p, 0].T @ (hub - batch.position[p, 0])
                ours, _ = by_kernel(car, touch * math.cos(pitch), pitch, roll)
                assert local[2] - car.tyre_radius == pytest.approx(
                    (ours[:4] - ours[4:])[pair].mean(), abs=1e-4
                )
                assert local[0] == pytest.approx(x, abs=1e-4)


def under(
    ground: np.ndarray, cell: float, u: float, v: float, yaw: float, car: Vehicle, tilt: float
) -> float:
    """Height of a tyre that leans by ``tilt``, by plain dilation of every node under it by a disk (ISO
    16610-41), m."""
    j, i = np.indices(ground.shape)
    a = (i * cell - u) * math.cos(yaw) + (j * cell - v) * math.sin(yaw)
    b = -(i * cell - u) * math.sin(yaw) + (j * cell - v) * math.cos(yaw)
    met = (np.abs(a) < car.tyre_radius) & (np.abs(b) <= car.tyre_width / 2 + 1e-9)
    under = ground[met] - b[met] * tilt + np.sqrt(car.tyre_radius**2 - a[met] ** 2)
    return float(under.max()) - car.tyre_radius


def random_stand(rng: np.random.Generator) -> tuple[float, bool, bool]:
    """A random car or cart, loaded at random, stands on random ground: how far the ride is from a general
    minimiser (m), whether the same wheels hang, and whether one does.

    The minimiser is given the tyres' heights by plain dilation at the places where the ride has put the
    wheels, leaning as its axles do, and its pitch and roll; it knows nothing of warp forces, bounds, first
    guesses or iterations.
    """
    cell, cart = 0.02, rng.random() < 0.25
    car = random_springs(rng)
    if cart:
        mass = (rng.uniform(0.5, 2.3), rng.uniform(-0.3, 0.3), 0.0)
        car = replace(car, rigid=True, springs=Springs(), centre_of_mass=mass)
    shape = rough(rng)
    y, x = np.indices((160, 220)) * cell
    # axles twisted by up to 0.06 rad against each other: beyond, the minimiser's small angles are off by
    # their third order
    ground = 0.4 * shape(x, y) + rng.normal(0, 0.002, x.shape)  # type: ignore[operator]
    load = (0.0, 0.0) if cart else tuple(rng.uniform(-0.03, 0.0, 2))
    yaw = rng.uniform(-0.1, 0.1)
    places = np.array([[0.75, 1.6, yaw, *load]])
    batch = settle_batch(car, ground, cell, places, np.zeros(1, np.int64))
    turn, at, yy = batch.rotation[0], batch.position[0], sides(car)
    pitch = math.asin(turn[0, 2, 0])
    roll = math.asin(turn[0, 2, 1] / math.cos(pitch))
    ahead = turn[0] @ np.array([L, 0.0, car.tyre_radius - load[0]]) + at[0]
    ahead = (ahead[:2] - [0.75, 1.6]) @ [math.cos(yaw), math.sin(yaw)] if not cart else L * math.cos(pitch)
    local = np.array([ahead, ahead, 0.0, 0.0])
    u, v = 0.75 + local * math.cos(yaw) - yy * math.sin(yaw), 1.6 + local * math.sin(yaw) + yy * math.cos(yaw)
    tilt = np.repeat((batch.wheels[0, ::2] - batch.wheels[0, 1::2]) / [car.front_track, car.rear_track], 2)
    feet = np.array([under(ground, cell, a, b, yaw, car, t) for a, b, t in zip(u, v, tilt, strict=True)])
    lift = batch.wheels[0] - feet
    if cart:
        reach = np.stack([np.ones(4), AXLE, yy], axis=1)
        low = linprog(
            [1.0, *car.centre_of_mass[:2]], A_ub=-reach, b_ub=-feet, bounds=[(None, None)] * 3, method="highs"
        )
        twin = reach @ low.x - feet
        return (
            float(np.abs(lift - twin).max()),
            bool(((lift > 1e-4) == (twin > 1e-4)).all()),
            bool((twin > 1e-4).any()),
        )
    # a load presses the springs before anything else does: less droop is used up, more weight is held
    s, k = car.springs, np.array([car.springs.front_rate, car.springs.rear_rate])
    held = np.array([s.front_load, s.rear_load]) - 2 * k * load
    droop = np.array([s.front_droop, s.rear_droop]) - load
    laden = replace(
        car,
        springs=replace(s, front_load=held[0], rear_load=held[1], front_droop=droop[0], rear_droop=droop[1]),
    )
    square = math.cos(pitch)  # springs work square to the chassis
    found = by_minimiser(laden, feet * square, pitch, roll)
    twin = found[:4] / square - feet
    aside = yy * np.hypot(1.0, tilt)  # tyres stand a track apart as seen from above
    hub = np.array([
        turn[1 + i // 2] @ [L if i < 2 else 0.0, aside[i], car.tyre_radius] + at[1 + i // 2] for i in range(4)
    ])  # fmt: skip
    # how far each spring is pressed: its hub seen from the body, against where it stood before loads and
    # grounds moved it
    pressed = (hub - at[0]) @ turn[0]
    ours = pressed[:, 2] - car.tyre_radius + np.repeat(load, 2)
    off = max(float(np.abs(lift - twin).max()), float(np.abs(ours - (found[:4] - found[4:])).max()))
    return off, bool(((lift > 1e-4) == (twin > 1e-4)).all()), bool((twin > 1e-4).any())


@pytest.mark.parametrize("count", [6, 200])
def test_the_whole_ride_stands_where_a_general_minimiser_puts_it(count: int) -> None:
    """On random grounds, springs, droops, loads and carts."""
    rng = np.random.default_rng(11)
    found = [random_stand(rng) for _ in range(count)]
    assert max(off for off, _, _ in found) < 5e-5
    assert all(same for _, same, _ in found)
    assert 0.15 * count < sum(hangs for _, _, hangs in found) < 0.8 * count


def test_without_limits_the_answer_is_the_closed_form_to_the_last_digit() -> None:
    ground = rough(np.random.default_rng(7))
    springs = Springs(30_000, 22_000, 9_000, 0.0, measured=True)
    plain = scene(ground, vehicle(springs=springs), start=(-3, 0), end=(3, 0))
    roomy = replace(springs, front_droop=5.0, rear_droop=5.0)
    assert stands_by_limits(vehicle(springs=roomy)) and not stands_by_limits(vehicle(springs=springs))
    free = scene(ground, vehicle(springs=roomy), start=(-3, 0), end=(3, 0))
    assert np.abs(free.ride.batch.rotation - plain.ride.batch.rotation).max() < 1e-9
    assert np.abs(free.ride.batch.position - plain.ride.batch.position).max() < 1e-9
    assert (free.ride.batch.wheels == plain.ride.batch.wheels).all()


def test_weight_shifts_with_the_grade_by_about_seven_millimetres_an_axle() -> None:
    # 12 % grade: about 7 mm an axle and 11 at the nose (own arithmetic: W h sin / (L 2 k) on a car of 1.35 t,
    # 0.55 m up)
    springs = Springs(25_000, 25_000, front_load=6800, rear_load=6400, unsprung=700, measured=True)
    car = vehicle(springs=springs, centre_of_mass=(L / 2, 0, 0.62))
    flat, hill = scene(lambda x, y: 0 * x, car), scene(lambda x, y: 0.12 * x, car)
    drop = []
    for x in (L, 0.0, L + 0.9):
        z = [
            s.ride.batch.position[5, 0] + s.ride.batch.rotation[5, 0] @ np.array([x, 0, 0])
            for s in (flat, hill)
        ]
        drop.append((z[1][2] - 0.12 * (z[1][0])) / math.sqrt(1 + 0.12**2) - z[0][2])
    level = 0.5 * (
        drop[0] + drop[1]
    )  # the whole body rises a little: a slope carries less weight square to it
    # (the shift adds its own pitch, and that shifts a little more: 4 % of it)
    shift = (13200 - 1400) * 0.62 * math.sin(math.atan(0.12)) / (L * 2 * 25_000)
    assert drop[0] - level == pytest.approx(shift, rel=0.05) and drop[1] - level == pytest.approx(
        -shift, rel=0.05
    )
    assert 0.006 < shift < 0.008 and 0.009 < drop[2] - level < 0.0125


def test_a_wheel_hangs_over_a_pit_and_carries_nothing() -> None:
    pit = lambda x, y: -0.25 * ((y > 0.4) & (np.abs(x) < 0.6))  # noqa: E731
    springs = Springs(
        80_000, 80_000, front_droop=0.03, rear_droop=0.03, front_load=6800, rear_load=6400, measured=True
    )
    car = vehicle(springs=springs, centre_of_mass=(L / 2, 0, 0.5))
    s = scene(pit, car)
    batch = settle_batch(
        car, ridden_ground(s.surface)[0], 0.01, s.ride.batch.places, s.ride.batch.variant, want_contact=True
    )
    over = int(np.argmin(np.abs(s.ride.poses[0].station - 4.0)))  # front axle at x = 0
    # the rear is the lighter axle, so its right wheel rises before the front left one loses the ground
    assert batch.contact[over, 3] == -1 and (batch.contact[over, :3] >= 0).all()
    # leaning by this much it rests on its outer edge
    tilt = (batch.wheels[over, 0] - batch.wheels[over, 1]) / TRACK
    assert batch.wheels[over, 3] > 0.08
    assert batch.wheels[over, 0] == pytest.approx(-0.25 - 0.1 * tilt, abs=1e-3) and tilt < -0.1
    hub = batch.position[over, 2] + batch.rotation[over, 2] @ np.array([0, -TRACK / 2, car.tyre_radius])
    seen = batch.rotation[over, 0].T @ (hub - batch.position[over, 0])
    assert seen[2] - car.tyre_radius == pytest.approx(-0.03, abs=1e-3)  # it hangs at its stop


def test_every_weight_lies_between_those_of_standing_on_three_wheels() -> None:
    rng = np.random.default_rng(8)
    for _ in range(60):
        car = random_springs(rng)
        ground, y = rng.normal(0, 0.05, 4), sides(car)
        base, _ = by_kernel(car, ground, 0, 0)
        hull = support_weights(car, AXLE, y)
        for wheel in range(4):
            moved, _ = by_kernel(car, ground + 1e-4 * np.eye(4)[wheel], 0, 0)
            weight = (moved[4:] - base[4:]) / 1e-4
            assert (weight <= hull[..., wheel].max(axis=0) + 1e-6).all()
            assert (weight >= hull[..., wheel].min(axis=0) - 1e-6).all()


def test_a_laden_body_has_more_droop_left() -> None:
    springs = Springs(25_000, 25_000, front_droop=0.02, rear_droop=0.02, measured=True)
    car = vehicle(belly(), springs=springs, loads=(LoadState("laden", -0.03, -0.03),))
    given = (0.08, axles_of(car), suspension(car))
    out = Carried(np.zeros(4), np.zeros(4), np.zeros(3))
    assert stand(*given, Body(0.0, 0.0, 0.0, 0.0), out)
    assert not stand(*given, Body(-0.03, -0.03, 0.0, 0.0), out)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        (
            {"springs": Springs(4000, 25_000, front_load=6000, rear_load=6000, measured=True)},
            "cannot carry their load",
        ),
        (
            {"springs": Springs(front_load=600, rear_load=6000, unsprung=700, measured=True)},
            "weigh more than the whole axle",
        ),
        (
            {
                "springs": Springs(25_000, 25_000, front_load=12_000, rear_load=12_000, measured=True),
                "centre_of_mass": (1.4, 0, 5.0),
            },
            "upright",
        ),
        ({"rigid": True}, "without a centre of mass"),
        ({"rigid": True, "centre_of_mass": (-0.2, 0.0, 0.0)}, "tip over"),
    ],
)
def test_springs_that_cannot_be_are_one_line(changes: dict[str, object], words: str) -> None:
    with pytest.raises(CrestcutError, match=words):
        scene(crest(0.05), vehicle(**changes))
