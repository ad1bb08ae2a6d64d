"""Lines of breaks: planted as knots, straight or curved in plan, they come back where they were."""

from __future__ import annotations

import numpy as np
import pytest

from crestcut.base.grid import FloatArray
from crestcut.terrain.breaklines.breaks import Break, breaks_of
from crestcut.terrain.breaklines.hinge import HINGE, STEP
from crestcut.terrain.breaklines.ridges import BreakPoints

PITCH, PAD, RADIUS = 0.01, 12, 3.0  # m, lattice cells, m


def knots_on(
    line: FloatArray, normal: FloatArray, seed: int, model: int = HINGE, jump: float = 0.0
) -> BreakPoints:
    """Knots off a line by their own d, in no order, half of them with n the other way; line (n, 2) m, normal
    (n,)."""
    rng, n = np.random.default_rng(seed), len(line)
    d = rng.uniform(-0.02, 0.02, n)
    uv = line - d[:, None] * np.column_stack([np.cos(normal), np.sin(normal)])
    other = rng.random(n) < 0.5
    params = np.zeros((n, 9))
    params[:, 3], params[:, 4] = -0.08, np.where(other, -d, d)
    params[:, 7] = 0.04 if model == HINGE else np.where(other, -jump, jump)
    place = np.column_stack([uv / PITCH + PAD, normal + np.pi * other])
    order = rng.permutation(n)
    spread = np.tile([0.003, 0.01], (n, 1))
    return BreakPoints(
        place[order], np.full(n, model, np.int8), params[order], np.zeros((n, 9, 9)), spread, np.full(n, 0.2)
    )


def arc(turn: FloatArray, radius: float = RADIUS) -> FloatArray:
    """Places on a circle about (0, 1.2)."""
    return np.column_stack([radius * np.cos(turn), 1.2 + radius * np.sin(turn)])


def test_a_straight_line_comes_back_whichever_way_its_knots_look() -> None:
    normal = 0.4
    along = np.arange(-0.9, 0.9, 0.05)
    line = 2.0 + along[:, None] * np.array([-np.sin(normal), np.cos(normal)])
    (found,) = breaks_of(knots_on(line, np.full(len(line), normal), 1), PITCH, PAD)
    side = np.array([np.cos(normal), np.sin(normal)])
    assert np.abs((found.at - line[0]) @ side).max() < 1e-9
    assert np.abs(np.sin(found.normal - normal)).max() < 1e-9
    assert found.length == pytest.approx(along[-1] - along[0], abs=1e-9)
    assert (found.fold, found.rounding, found.step, found.placed) == pytest.approx((-0.08, 0.04, 0.0, 0.003))


def test_a_line_curved_in_plan_is_not_pulled_into_its_curve() -> None:
    # a mean, or a line, through neighbours over 0.3 m would lie 3.7 mm inside a radius of 3 m
    turn = np.arange(-0.4, 0.4, 0.05 / RADIUS)
    (found,) = breaks_of(knots_on(arc(turn), turn, 2), PITCH, PAD)
    assert np.abs(np.hypot(found.at[:, 0], found.at[:, 1] - 1.2) - RADIUS).max() < 0.0003
    radial = np.arctan2(found.at[:, 1] - 1.2, found.at[:, 0])
    assert np.abs(np.sin(found.normal - radial)).max() < 0.002
    assert found.curvature == pytest.approx(-1 / RADIUS, rel=0.1)  # its normal looks outwards


def test_place_and_way_along_a_curved_line_are_those_of_geometry() -> None:
    turn = np.linspace(-0.3, 0.3, 37)
    line = Break(arc(turn), turn, -0.08, 0.0, 0.0, 0.003)
    rng = np.random.default_rng(3)
    angle, beyond = rng.uniform(-0.3, 0.3, 500), rng.uniform(-0.6, 0.6, 500)
    uv = arc(angle) * 1.0
    uv += beyond[:, None] * np.column_stack([np.cos(angle), np.sin(angle)])
    across, along = line.across(uv)
    # pieces of 50 mm: half of one beside its knot a circle of 3 m has left its tangent by 0.1 mm
    assert np.abs(across - beyond).max() < 0.0003
    assert np.abs(along - RADIUS * angle).max() < 0.006  # off the line a piece widens by 0.6 in 3


def test_beyond_its_ends_a_line_runs_on_straight() -> None:
    at = np.column_stack([np.zeros(11), np.linspace(0.0, 1.0, 11)])
    line = Break(at, np.zeros(11), -0.08, 0.0, 0.0, 0.003)
    across, along = line.across(np.array([[0.2, 1.7], [-0.3, -0.4]]))
    assert across == pytest.approx([0.2, -0.3]) and along == pytest.approx([1.2, -0.9])


@pytest.mark.parametrize("seed", range(4))
def test_the_step_is_that_of_the_side_the_normal_points_to(seed: int) -> None:
    line = np.column_stack([np.full(21, 1.0), np.linspace(0.0, 1.0, 21)])
    (found,) = breaks_of(knots_on(line, np.zeros(21), seed, STEP, jump=-0.010), PITCH, PAD)
    up = found.step * np.cos(found.normal[0])
    assert up == pytest.approx(-0.010) and found.fold == 0.0


def test_lines_apart_are_two_and_a_few_knots_are_none() -> None:
    first = np.column_stack([np.full(41, 1.0), np.linspace(0.0, 2.0, 41)])
    second = np.column_stack([np.full(21, 2.0), np.linspace(0.0, 1.0, 21)])
    stray = np.column_stack([np.full(5, 3.0), np.linspace(0.0, 0.2, 5)])
    line = np.concatenate([second, stray, first])
    found = breaks_of(knots_on(line, np.zeros(len(line)), 5), PITCH, PAD)
    assert [round(b.length, 6) for b in found] == [2.0, 1.0]


def test_two_lines_side_by_side_are_not_one() -> None:
    lines = [np.column_stack([np.full(21, u), np.linspace(0.0, 1.0, 21)]) for u in (1.0, 1.12)]
    found = breaks_of(knots_on(np.concatenate(lines), np.zeros(42), 6), PITCH, PAD)
    assert sorted(float(np.median(b.at[:, 0])) for b in found) == pytest.approx([1.0, 1.12])
