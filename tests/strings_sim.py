"""An H of three strings as the sheet prescribes it, stretched on a true slab some 20 mm off its places."""

from __future__ import annotations

import numpy as np

from crestcut.base.grid import HeightGrid
from crestcut.contact.stand.ride import wheel_feet
from crestcut.job.records import ByHand, PlanPoint, Point, StringReading
from crestcut.measure_next.strings import StringPlan, crossbar, h_of_strings
from crestcut.terrain.readings.evidence import gather_evidence
from crestcut.terrain.readings.records import Evidence
from scenes import TRACK, Scene

READ, PLACED = 0.001, 0.020  # m: reading and places


def at(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def off(xy: np.ndarray, rng: np.random.Generator) -> np.ndarray:
    return np.asarray(xy + rng.normal(0.0, PLACED, 2))


def feet_and_worst(s: Scene) -> tuple[np.ndarray, np.ndarray]:
    """Site x, y of the wheels at the worst pose (4, 2), and of the worst point, m."""
    worst = s.before.worst
    assert worst is not None
    pose = int(np.searchsorted(s.ride.batch.variant, worst.pose[0])) + worst.pose[1]
    places = s.ride.batch.places[pose : pose + 1]
    return s.surface.height.frame.to_site(wheel_feet(s.vehicle, places)[0]), np.array(worst.xy)


def plans_of(s: Scene, half: float) -> list[StringPlan]:
    """The H as the sheet prescribes it."""
    feet, worst = feet_and_worst(s)
    bar = crossbar(s.surface, feet, worst, (-half, half), TRACK)
    assert bar is not None
    return h_of_strings(s.surface, feet, bar)


def h_read(noisy: Scene, true: Scene, half: float, rng: np.random.Generator) -> Evidence:
    """The three strings stretched on the true slab, every chalk mark and block some 20 mm from its place."""
    plans, height = plans_of(noisy, half), true.surface.height
    right, left = (off(xy, rng) for xy in plans[2].points[:2])
    strings = []
    for plan, mark in zip(plans[:2], (left, right), strict=True):
        a, b = (off(xy, rng) for xy in plan.points[:2])
        share = float((mark - a) @ (b - a) / ((b - a) @ (b - a)))
        down = float(np.array([1 - share, share, -1.0]) @ height.sample(np.array([a, b, mark])))
        strings.append(string(plan, down + plan.blocks + rng.normal(0.0, READ)))
    for ends in plans[2].least:
        down = least_down(height, right, left, ends) + plans[2].blocks + rng.normal(0.0, READ)
        strings.append(string(plans[2], down, ends))
    found = gather_evidence(ByHand(strings=tuple(strings)), noisy.surface, at)
    assert found is not None
    return found


def string(plan: StringPlan, down: float, ends: tuple[float, float] | None = None) -> StringReading:
    a, b, mark = plan.points
    length = float(np.hypot(*(b - a)))
    place = float(np.hypot(*(mark - a))) if ends is None else None
    between = None if ends is None else (ends[0] * length, ends[1] * length)
    points = PlanPoint(*map(float, a)), PlanPoint(*map(float, b))
    return StringReading(*points, place, plan.blocks, down, READ, PLACED, between)


def least_down(height: HeightGrid, a: np.ndarray, b: np.ndarray, ends: tuple[float, float]) -> float:
    s = np.linspace(*ends, 400)
    high = height.sample(np.array([a, b]))
    return float(np.min(high[0] * (1 - s) + high[1] * s - height.sample(a + s[:, None] * (b - a))))
