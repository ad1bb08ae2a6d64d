"""The tangent of the angles against a plane turned by brute force."""

from __future__ import annotations

import math

import numpy as np
import pytest

from crestcut.vehicle.angles import tangent_angle


def test_tangent_is_where_a_turned_plane_first_meets_the_point() -> None:
    """Brute force: turn a plane about the tyre until it touches the point."""
    for ahead, height, radius in [(0.9, 0.18, 0.33), (1.4, 0.12, 0.315), (0.7, 0.35, 0.31)]:
        angles = np.linspace(0.0, math.pi / 2, 2_000_001)
        # the plane touches the tyre, whose centre is at (0, R): distance of the point above it
        above = -ahead * np.sin(angles) + (height - radius) * np.cos(angles) + radius
        brute = angles[np.argmax(above < 0)]
        assert tangent_angle(ahead, height, radius) == pytest.approx(brute, abs=2e-6)
