"""Where along a line readings by hand are met."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np

from crestcut.job import load_job
from crestcut.standing import LoadedVehicle
from crestcut.study.by_hand import _somewhere
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, belly, crest, scene, vehicle

JOB = Path(__file__).parents[2] / "configs/jobs/courtyard_apron.toml"


def test_where_nothing_is_measured_under_the_middle_readings_are_met_beside_it() -> None:
    car = vehicle(belly(0.14, half=0.45))
    travel = replace(STRAIGHT, wander=0.2)
    whole = scene(crest(0.05), car, travel, start=(-2.0, 0.0), end=(2.0, 0.0), cell=0.02)
    height, y = whole.surface.height, whole.surface.height.frame.node_xy()[..., 1]
    seen = height.like(np.where(np.abs(y) < 0.5, np.nan, height.values))
    strips = replace(whole.surface, height=seen, top=seen)
    job = replace(load_job(JOB), travel=travel)
    driver = LoadedVehicle(car, (AS_MEASURED,), True)
    met = _somewhere(driver, whole.line, strips, job)
    assert met.clearance.worst is not None and len(met.ride.poses) > 1
    assert len(_somewhere(driver, whole.line, whole.surface, job).ride.poses) == 1
