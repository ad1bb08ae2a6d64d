"""What is ground off a floor: least where a least cut exists, maximal where it does not, and enough."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from floor_scene import floor
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.ndimage import gaussian_filter

from crestcut.base.grid import BoolArray, HeightGrid
from crestcut.floor.levels import STEP, level_to_reference, level_to_straightedge
from crestcut.floor.records import Levelling
from crestcut.floor.reference import general_level, robust_plane
from crestcut.floor.straightedge import worst_gap

GAP, LENGTH, STRIDE = 0.003, 2.0, 2
HUMPS = ((1.4, 1.4, 0.5, 0.008), (3.7, 2.6, 0.6, 0.006))
HOLLOW = (3.4, 0.9, 0.5, -0.006)


def why(_: BoolArray) -> tuple[str, ...]:
    return ("deepest as asked for",)


def levelled(z: HeightGrid, deepest: float = 0.013, gap: float = GAP) -> Levelling:
    plane, _ = robust_plane(z)
    references = (general_level(z, plane, LENGTH), plane)
    allowed = np.where(z.measured, deepest, 0.0)
    return level_to_straightedge(z, references, LENGTH, gap, STRIDE, allowed, why)


def left(z: HeightGrid, plan: Levelling, filled: bool = True) -> np.ndarray:
    return z.values - plan.depth.values + (plan.fill.values if filled else 0.0)


@pytest.fixture(scope="module")
def two_humps() -> tuple[HeightGrid, Levelling]:
    z = floor(*HUMPS, HOLLOW)
    return z, levelled(z)


def test_high_spots_go_low_spots_are_filled_and_the_rule_is_kept(
    two_humps: tuple[HeightGrid, Levelling],
) -> None:
    z, plan = two_humps
    assert plan.reached and plan.claim == "maximal"
    high = sorted(plan.high, key=lambda s: s.xy)
    assert [s.xy for s in high] == [pytest.approx(h[:2], abs=0.03) for h in HUMPS]
    assert [s.xy for s in plan.low if s.area > 0.01] == [pytest.approx(HOLLOW[:2], abs=0.03)]
    assert [s.stands for s in high] == [pytest.approx(h[3], abs=0.0004) for h in HUMPS]
    # laid again on every node, not only where levels were sought
    assert worst_gap(left(z, plan), z.frame.cell, LENGTH) <= GAP + 5e-5
    assert worst_gap(left(z, plan, filled=False), z.frame.cell, LENGTH) == pytest.approx(
        plan.ground_only, abs=3e-4
    )
    assert worst_gap(z.values, z.frame.cell, LENGTH) == pytest.approx(plan.today, abs=3e-4)
    # grinding that leaves the worst place as it was is none to start without the filling
    assert plan.alone_helps == (plan.ground_only < plan.today - 3e-4)
    assert not replace(plan, ground_only=plan.today - 1e-4).alone_helps
    assert replace(plan, ground_only=plan.today - 1e-4, low=()).alone_helps
    # nothing is ground in the hollow, nothing filled on a hump
    assert not (plan.depth.values[plan.fill.values > 0] > 0).any()


def test_no_high_spot_can_be_left_higher(two_humps: tuple[HeightGrid, Levelling]) -> None:
    z, plan = two_humps
    assert plan.slack < 5 * STEP
    assert plan.spot_of is not None
    for k, spot in enumerate(plan.high):
        higher = np.where(
            plan.spot_of == k, np.maximum(plan.depth.values - plan.slack - STEP, 0.0), plan.depth.values
        )
        ground = z.values - higher + plan.fill.values
        assert worst_gap(ground, z.frame.cell, LENGTH) > GAP, spot.name


def test_a_mesa_is_cut_to_the_gap_itself() -> None:
    # closed form: a straightedge from a mesa's rim at height t to the plane L away shows t (1 - d / L) at d
    # beside it
    z = floor(fall=0.0)
    xy = z.frame.node_xy()
    mesa = np.where((np.abs(xy[..., 0] - 2.5) <= 0.3) & (np.abs(xy[..., 1] - 2.0) <= 0.3), 0.01, 0.0)
    plan = levelled(z.like(mesa))
    (spot,) = plan.high
    assert GAP < spot.level < GAP / (1 - 2 * STRIDE * z.frame.cell / LENGTH) + STEP
    assert spot.area == pytest.approx(0.61**2, rel=0.1)


def test_lips_between_the_nodes_where_levels_are_sought_are_found_too() -> None:
    # two lips one node wide, on odd columns, either side of a hollow: every second node sees the hollow alone
    z = floor((2.5, 2.0, 0.4, -0.005), fall=0.0)
    values = np.array(z.values)
    for column in (95, 155):
        values[:, column] += 0.005
    plan = levelled(z.like(values))
    assert plan.reached and worst_gap(left(z.like(values), plan), z.frame.cell, LENGTH) <= GAP + 5e-5
    assert plan.depth.values[100, 95] > 0.002 and plan.slack > 2 * STEP


def test_a_floor_that_keeps_the_rule_is_left_alone() -> None:
    plan = levelled(floor((1.4, 1.4, 0.9, 0.0025)))
    assert plan.claim == "none" and not plan.high and plan.reached
    assert float(np.nansum(plan.depth.values)) == 0.0


def test_a_limit_in_the_way_is_said() -> None:
    plan = levelled(floor(*HUMPS), deepest=0.002)
    assert not plan.reached and plan.binding == ("deepest as asked for",)
    assert plan.deepest <= 0.002 and plan.short_by == pytest.approx(plan.filled - GAP)


def test_least_cut_to_a_plane_is_pointwise_least() -> None:
    z = floor(*HUMPS, HOLLOW)
    plane = robust_plane(z)[0]
    plan = level_to_reference(z, plane, 0.002, np.full(z.frame.shape, 0.013), why)
    assert plan.claim == "least" and plan.reached
    done = left(z, plan, filled=False)
    assert (done <= plane + 0.002 + 1e-12).all()
    # greatest: where anything goes the ground stands at the limit, and elsewhere it is untouched
    cut = plan.depth.values > 0
    assert np.allclose(done[cut], (plane + 0.002)[cut]) and np.array_equal(done[~cut], z.values[~cut])
    assert (left(z, plan) >= plane - 0.002 - 1e-12).all()


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10_000))
def test_grounds_that_keep_the_rule_are_closed_under_the_lesser_of_two(seed: int) -> None:
    draw = np.random.default_rng(seed)
    both = []
    for _ in range(2):
        z = gaussian_filter(draw.normal(size=(24, 24)), 2.0) * 0.02
        both.append(z * GAP / max(worst_gap(z, 0.1, 1.0), 1e-9))  # scaled so that it just keeps the rule
    assert worst_gap(np.minimum(*both), 0.1, 1.0) <= GAP + 1e-12


def test_but_not_under_the_greater_so_no_pointwise_least_cut_exists() -> None:
    # two high spots 1 m apart: either may stay as high as it is if the other goes, not both
    x = np.arange(41) * 0.05
    hump = lambda at: 0.0045 * np.cos(np.minimum(np.abs(x - at) / 0.2, 1) * np.pi / 2) ** 2  # noqa: E731
    first, second = (np.broadcast_to(hump(at), (1, 41)) for at in (0.5, 1.5))
    rule = worst_gap(first, 0.05, 1.0)
    assert worst_gap(second, 0.05, 1.0) == pytest.approx(rule)
    assert worst_gap(np.maximum(first, second), 0.05, 1.0) > rule + 0.0003
