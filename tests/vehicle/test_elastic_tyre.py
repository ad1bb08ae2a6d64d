"""How much lower than its rigid disk an elastic tyre rides on a crest: radial springs round the rim (a
Winkler foundation), loaded as it is on level ground. ``tests/bench/elastic_tyre.py`` prints the table.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from crestcut.vehicle.loads import APEX, APEX_GRADE, PRESSED, elastic_tyre

N = 4001  # spokes over the lower half


def push(free: float, hub: float, grade: float) -> float:
    """Upward force of radial springs of unit stiffness (only its equality counts). free : radius of the
    unloaded tyre, m. hub : height of its centre over the apex, m. grade : change of slope there, half of it
    falling away to either side.
    """
    angle = np.linspace(-math.pi / 2, math.pi / 2, N)  # from straight down
    fall = grade / 2
    # a spoke at this angle meets the ground -fall |x| where hub - r cos = -fall r |sin|
    reach = hub / (np.cos(angle) - fall * np.abs(np.sin(angle))).clip(1e-9)
    return float(np.trapezoid((free - reach).clip(0.0) * np.cos(angle), angle))


def lower_than_the_disk(loaded: float, pressed: float, grade: float) -> float:
    """m. loaded : static loaded radius, the rigid disk's. pressed : how much the load presses it on the
    level. The disk stands on the apex itself: its centre is ``loaded`` above it.
    """
    free = loaded + pressed
    weight = push(free, loaded, 0.0)
    hub = brentq(lambda h: push(free, h, grade) - weight, loaded - 3 * pressed, loaded)
    return loaded - float(hub)


def test_level_ground_is_the_disk() -> None:
    assert lower_than_the_disk(0.315, 0.02, 0.0) == pytest.approx(0.0, abs=1e-9)
    # small against its radius: F = 4/3 p sqrt(2 R p) on the level; on the apex .1 x^2 + 2 x^3 / 3 R
    # (arithmetic by the parabola): 5.4 mm for R 335, pressed by 20
    assert lower_than_the_disk(0.315, 0.020, 0.2) == pytest.approx(0.0054, abs=3e-4)


def test_the_allowance_is_what_such_a_tyre_gives() -> None:
    """That of a tyre pressed by 25 mm; never less than one pressed by 20, as the pressure allowance takes it,
    has at any size; in proportion it is never less than the springs say. Softer ones sink more.
    """
    assert lower_than_the_disk(0.315, 0.025, APEX_GRADE) == pytest.approx(APEX, abs=1e-4)
    for loaded in (0.28, 0.315, 0.35):
        assert 0.0002 <= APEX - lower_than_the_disk(loaded, PRESSED, APEX_GRADE) < 0.001, loaded
    for grade in (0.05, 0.10, 0.15):
        near = elastic_tyre(0.0, grade)
        assert near is not None
        assert 0.0 <= near.lower - lower_than_the_disk(0.315, PRESSED, grade) < 0.0008
    assert lower_than_the_disk(0.315, 0.030, APEX_GRADE) > APEX
