"""The cut under a vehicle whose wheels may hang: re-swept, nothing is short."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.job.records import Wanted
from crestcut.vehicle.records import Springs, Vehicle
from scenes import L, belly, scene, vehicle

STOPS = Springs(
    40_000, 40_000, front_droop=0.02, rear_droop=0.02, front_load=7000, rear_load=6000, measured=True
)


@pytest.mark.parametrize(
    "car",
    [
        vehicle(belly(0.085, 0.85), springs=STOPS, centre_of_mass=(L / 2, 0, 0.5)),
        vehicle(belly(0.085, 0.85), rigid=True, centre_of_mass=(1.2, 0.1, 0.3)),
    ],
)
def test_a_skewed_crest_is_cut_clear(car: Vehicle) -> None:
    ground = lambda x, y: -0.09 * np.abs(x * 0.8 + y * 0.6) + 0.02 * y * np.sin(x)  # noqa: E731
    s = scene(ground, car, cell=0.02)
    plan = s.plan(wanted=Wanted(want=0.01))
    assert s.before.worst is not None and s.before.worst.gap < 0.01
    assert plan.feasible and plan.certificate.least_excess > -5e-5
