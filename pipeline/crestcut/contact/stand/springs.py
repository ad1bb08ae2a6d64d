"""What is known of a vehicle's springs, checked and laid out for ``springs_kernel``."""

from __future__ import annotations

import math

import numpy as np

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.contact.stand.springs_kernel import AxleSprings, Suspension
from crestcut.vehicle import Vehicle, check_carries


def stands_by_limits(vehicle: Vehicle) -> bool:
    """Does the ride need the quadratic programme? Not for default springs: there the axles' means are exact
    (``tyres.settle``).
    """
    springs = vehicle.springs
    known = (springs.front_droop, springs.rear_droop, springs.front_load, springs.rear_load)
    return vehicle.rigid or (springs.measured and any(value is not None for value in known))


def suspension(vehicle: Vehicle) -> Suspension:
    """What ``stand`` needs of a vehicle.

    ``Springs.front_load`` and ``rear_load`` are what the axles weigh on the ground, N; ``unsprung`` what one
    axle's wheels, hubs and brakes weigh of that. Loads that were not measured: the springs are taken to be
    just unloaded at the end of their droop, and weight does not shift.  Raises CrestcutError for springs that
    cannot carry the load.
    """
    springs = vehicle.springs
    bars = (springs.front_anti_roll / vehicle.front_track**2, springs.rear_anti_roll / vehicle.rear_track**2)
    wheel = (springs.unsprung or 0.0) / 2
    height, left = 0.0, 0.0
    if vehicle.rigid:
        height, ahead, left = _cart_mass(vehicle)
        loads, wheel = (ahead / 2, (1 - ahead) / 2), 0.0  # only their ratio matters
    elif springs.front_load is not None and springs.rear_load is not None:
        height = vehicle.centre_of_mass[2] if vehicle.centre_of_mass else 0.0
        loads = (springs.front_load / 2 - wheel, springs.rear_load / 2 - wheel)
        check_carries(vehicle)
    else:
        loads = (math.nan, math.nan)
        wheel = 0.0
    droops = (math.inf if d is None else d for d in (springs.front_droop, springs.rear_droop))
    front, rear = (
        AxleSprings(float(rate), float(bar), float(droop), float(load))
        for rate, bar, droop, load in zip(
            (springs.front_rate, springs.rear_rate), bars, droops, loads, strict=True
        )
    )
    return Suspension(front, rear, float(wheel), float(height), float(left), bool(vehicle.rigid))


def _cart_mass(vehicle: Vehicle) -> tuple[float, float, float]:
    """Height, place along (share of the wheelbase from the rear axle) and to the left, of a cart's centre of
    mass.
    """
    if vehicle.centre_of_mass is None:
        raise CrestcutError(
            "a rigid cart without a centre of mass",
            vehicle.name,
            'write centre_of_mass = { back = "300 mm" }: on which wheels it rests',
        )
    x, y, z = vehicle.centre_of_mass
    if not (0 < x < vehicle.wheelbase and abs(y) < min(vehicle.front_track, vehicle.rear_track) / 2):
        raise CrestcutError(
            "the centre of mass lies outside the wheels: it would tip over", vehicle.name, "measure it again"
        )
    return z, x / vehicle.wheelbase, y


def support_weights(vehicle: Vehicle, x: FloatArray, y: FloatArray) -> FloatArray:
    """How far a chassis point over (x, y) follows each wheel while one of them hangs, (4, ..., 4): hanging
    wheel first, weights last.

    The body then moves with the other three as a plane through them. With stops or limits of any kind the
    true weights lie in the convex hull of these four: each spring takes between none and all of the twist
    (``_warp_force``: every c grows with a).
    """
    base, front, rear = vehicle.wheelbase, vehicle.front_track, vehicle.rear_track
    ahead = np.asarray(x, dtype=float) / base
    flat = np.stack([ahead / 2, ahead / 2, (1 - ahead) / 2, (1 - ahead) / 2], axis=-1)
    even = np.array([1 / front, -1 / front, 1 / rear, -1 / rear]) / 2
    plain = flat + np.asarray(y, dtype=float)[..., None] * even
    warp = np.array([1 / front, -1 / front, -1 / rear, 1 / rear])
    return np.stack([plain - plain[..., i : i + 1] / warp[i] * warp for i in range(4)])
