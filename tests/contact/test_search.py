"""Another line: a way round that was planted is found, and nothing outside the ground or inside an avoided
area is offered.
"""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.contact.clearance.search import FINE, Fan, clearances, fan, search_lines
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.stand.ride import ride
from crestcut.job.records import Travel
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, surface_of, vehicle

WIDE = Travel(line=(), wander=0.9, heading=0.0)


def planted(seed: int) -> tuple[Fan, tuple[float, float]]:
    """A crest with a saddle: low along one line only, given by how far its ends are moved."""
    rng = np.random.default_rng(seed)
    a, b = rng.uniform(-0.6, 0.6, 2)
    grade, wide = rng.uniform(0.10, 0.13), rng.uniform(0.5, 0.9)

    def ground(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        off = y - (a + (b - a) * (x + 3) / 6)
        return -grade * np.sqrt(x**2 + 0.01) * (1 - 0.6 * np.exp(-((off / wide) ** 2)))

    car = vehicle()
    line = travel_line([(-3, 0), (3, 0)], car, WIDE, 0.02)
    surface = surface_of(ground, window(line, car, WIDE, 0.02, margin=0.3))
    return fan(car, surface, line, ("forward",), (AS_MEASURED,)), (float(a), float(b))


def test_a_planted_way_round_is_found_as_by_trying_every_line() -> None:
    lines, _ = planted(2)
    found = search_lines(lines, 0.7)
    axis = np.arange(-0.7, 0.701, 0.05)
    every = clearances(lines, np.stack(np.meshgrid(axis, axis), -1).reshape(-1, 2), FINE)
    straight = clearances(lines, np.zeros((1, 2)), FINE)[0]
    assert found[0].clearance >= every.max() - 1e-3
    assert found[0].clearance > straight + 0.01


def test_the_clearance_of_a_line_is_that_of_ride_and_sweep() -> None:
    lines, _ = planted(3)
    best = search_lines(lines, 0.3)[0]
    line = travel_line([best.start, best.end], lines.vehicle, STRAIGHT, FINE)
    worst = sweep(
        lines.vehicle, lines.surface, ride(lines.vehicle, lines.surface, line, STRAIGHT, (AS_MEASURED,))
    ).worst
    assert worst is not None and worst.gap == pytest.approx(best.clearance, abs=3e-4)
    assert ("shift" in best.words) or ("at its start" in best.words)


def test_no_tyre_is_sent_onto_what_must_stay_free() -> None:
    lines, _ = planted(2)
    best = search_lines(lines, 0.3)[0]
    xy = lines.surface.height.frame.node_xy()
    # a bed where the best line's left wheels roll
    middle = 0.5 * (best.start[1] + best.end[1]) + 0.75
    bed = (np.abs(xy[..., 1] - middle) < 0.08) & (np.abs(xy[..., 0]) < 0.5)
    fenced = Fan(
        lines.vehicle, lines.surface, lines.loads, lines.ways, lines.ends,
        np.ascontiguousarray(np.where(bed, -1e9, lines.ridden)), lines.under,
    )  # fmt: skip
    assert clearances(fenced, np.array([best.moved]), FINE)[0] < -1e5
    other = search_lines(fenced, 0.3)
    assert other and other[0].clearance <= best.clearance + 1e-9
    assert clearances(fenced, np.array([other[0].moved]), FINE)[0] == pytest.approx(other[0].clearance)


def test_where_there_is_no_ground_there_is_no_line() -> None:
    lines, _ = planted(1)
    bare = Fan(
        lines.vehicle,
        lines.surface,
        lines.loads,
        lines.ways,
        lines.ends,
        np.full_like(lines.ridden, -1e9),
        lines.under,
    )
    assert search_lines(bare, 0.3) == ()
