"""Turning: radii and off-tracking against published values. AASHTO P (A Policy on Geometric Design of
Highways and Streets, minimum turning path of the passenger car; edition not noted): wheelbase 11 ft, width 7
ft, overhangs 3 and 5 ft read, the centreline radius of 21 ft from memory. Off-tracking: own arithmetic from
dphi/ds = 1/R - sin(phi)/L, checked twice.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from crestcut.contact.path.path import follow, least_radius
from scenes import vehicle

FT = 0.3048
BASE, RADIUS = 11 * FT, 21 * FT


def circle(radius: float, angle: float, n: int = 4000) -> np.ndarray:
    a = np.linspace(0, angle, n)
    return radius * np.stack([np.sin(a), 1 - np.cos(a)], axis=1)


def test_passenger_car_radii() -> None:
    """Inside rear 14.4, outer front wheel 24, outer front corner 25.5 ft as printed; 14.389, 24.05, 25.56 by
    the arithmetic.
    """
    front = circle(RADIUS, 6 * math.pi)
    rear, yaw = follow(front, BASE, 0.0)
    centre = np.array([0.0, RADIUS])
    out = np.array([math.sin(yaw[-1]), -math.cos(yaw[-1])])  # to the right: away from the centre
    ahead = np.array([math.cos(yaw[-1]), math.sin(yaw[-1])])
    half = 3.5 * FT
    found = [np.hypot(*(at - centre)) / FT for at in (
        rear[-1] - half * out, rear[-1] + BASE * ahead + half * out,
        rear[-1] + (BASE + 3 * FT) * ahead + half * out,
    )]  # fmt: skip
    assert found == pytest.approx([14.389, 24.05, 25.56], rel=1e-3)


def test_turning_radius_of_the_outer_tyre_gives_the_rear_axles() -> None:
    car = vehicle(wheelbase=BASE, front_track=6.3 * FT, tyre_width=0.7 * FT, turning_radius=24.0487 * FT)
    assert least_radius(car) == pytest.approx(17.889 * FT, rel=1e-3)


def test_steady_off_tracking() -> None:
    """L 11, R 41 ft: R - sqrt(R^2 - L^2) = 1.5032 ft."""
    rear, _ = follow(circle(41.0, 4 * math.pi, 20000), 11.0, 0.0)
    assert 41.0 - np.hypot(*(rear[-1] - [0.0, 41.0])) == pytest.approx(1.5032, rel=1e-3)


@pytest.mark.parametrize(("s", "degrees"), [(5, 5.61591), (10, 9.18826), (20, 12.92901), (64.4026, 15.50910)])
def test_off_tracking_from_a_straight_into_an_arc(s: float, degrees: float) -> None:
    front = circle(41.0, s / 41.0, 5000)
    _, yaw = follow(front, 11.0, 0.0)
    assert math.degrees(s / 41.0 - yaw[-1]) == pytest.approx(degrees, rel=1e-3)
