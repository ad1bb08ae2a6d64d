"""Sharp symmetric crests from dense noise-free points to the verdict, against the closed form.

A symmetric crest of total break b uses (L/2) tan(b/2) - R (sec(b/2) - 1) of the clearance amid the wheelbase
(tangents to static loaded radius arcs as in 49 CFR 523.2; arithmetic in closed form). The crest lies anywhere
between the nodes of the grid.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Passage
from crestcut.contact.stand.ride import ride
from crestcut.cut.limits import cut_limits
from crestcut.cut.plan import plan_cut
from crestcut.job.records import Wanted
from crestcut.scan.records import Frame, Scan
from crestcut.terrain.build import build_surface
from crestcut.vehicle.records import AS_MEASURED
from scenes import NO_ERROR, STRAIGHT, L, R, vehicle


def points_of(grade: float, at: float) -> Scan:
    rng = np.random.default_rng(7)
    xy = rng.uniform([-5.2, -1.9], [5.2, 1.9], (240_000, 2))  # about 6,000 a square metre
    z = -grade * np.abs(xy[:, 0] - at)
    frame = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")
    return Scan(np.column_stack([xy, z]), np.zeros(len(xy), np.int16), frame, ())


@pytest.mark.parametrize(("grade", "at"), [(0.05, 0.0), (0.08, 0.0037), (0.10, 0.0051)])
def test_least_clearance_and_depth_from_points(grade: float, at: float) -> None:
    car, want = vehicle(), Wanted()
    line = travel_line([(-3.6, 0.0), (3.6, 0.0)], car, STRAIGHT, 0.01)
    surface = build_surface(points_of(grade, at), window(line, car, STRAIGHT, 0.01), error=NO_ERROR)
    rode = ride(car, surface, line, STRAIGHT, (AS_MEASURED,))
    before = sweep(car, surface, rode)
    half = math.atan(grade)
    exact = 0.12 - L / 2 * math.tan(half) + R * (1 / math.cos(half) - 1)
    assert before.worst is not None
    assert before.worst.gap == pytest.approx(exact, abs=5e-4)
    plan = plan_cut(Passage(car, surface, rode, before), cut_limits(surface, 0.06, "deepest", 0.25, ()), want)
    assert plan.feasible
    assert plan.deepest == pytest.approx(max(want.want - exact, 0.0), abs=7e-4)
