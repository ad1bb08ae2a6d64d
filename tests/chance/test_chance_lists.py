"""The short lists of nodes against the sweep and a plain search over every node."""

from __future__ import annotations

import math
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.active_contacts import (
    ActiveContacts,
    find_active_contacts,
    ground_weights,
    wheel_weights,
)
from crestcut.chance.draws import reach_of
from crestcut.chance.lists import Resting, list_tyres, rise_part
from crestcut.contact.stand.ride import settle_batch
from crestcut.job.records import Travel
from crestcut.terrain.records import ErrorModel
from scenes import Scene, belly, crest, lip, scene, stand, vehicle
from simulated import seen_from

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")


@pytest.fixture(scope="module")
def noisy() -> Scene:
    car = vehicle(belly(), lip(0.16))
    travel = Travel(line=(), wander=0.1, heading=math.radians(3))
    ground = lambda x, y: crest(0.08, 0.2)(x, y) + 0.05 * y  # noqa: E731
    true = scene(ground, car=car, travel=travel, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
    return stand(car, travel, true.line, seen_from(true, 3, PHONE))


@pytest.fixture(scope="module")
def contacts(noisy: Scene) -> ActiveContacts:
    passage = noisy.under(PHONE)
    found = find_active_contacts(passage, reach_of(passage))
    assert found is not None
    return found


def test_undrawn_gaps_are_the_sweeps(noisy: Scene, contacts: ActiveContacts) -> None:
    assert noisy.before.pair_gap is not None and noisy.before.worst is not None
    swept = noisy.before.pair_gap[contacts.pose[contacts.pair_pose], contacts.pair_part]
    assert contacts.base == pytest.approx(swept, abs=1e-9)
    assert contacts.base.min() == pytest.approx(noisy.before.worst.gap, abs=1e-9)


def test_tyres_stand_where_a_search_over_every_node_puts_them() -> None:
    rng = np.random.default_rng(1)
    ground, cell, radius, half = rng.normal(0, 0.004, (80, 120)), 0.02, 0.315, 0.1
    turns = ((0.0, 0.0), (0.05, 0.1), (0.6, -0.05), (np.pi, 0.02))
    hubs = np.array([[1.1, 0.8, np.cos(a), np.sin(a), tilt] for a, tilt in turns])
    lists, best = list_tyres(ground, cell, hubs, vehicle(tyre_radius=radius, tyre_width=2 * half))
    v, u = np.mgrid[:80, :120] * cell
    for k, (hub_u, hub_v, cos, sin, tilt) in enumerate(hubs):
        a, b = (u - hub_u) * cos + (v - hub_v) * sin, (v - hub_v) * cos - (u - hub_u) * sin
        under = (np.abs(a) < radius) & (np.abs(b) <= half + 1e-9)
        low = ground - b * tilt + np.sqrt(np.maximum(radius**2 - a**2, 0)) - radius
        assert best[k] == pytest.approx(low[under].max(), abs=1e-12)
        mine = slice(lists.start[k], lists.start[k + 1])
        assert lists.value[mine].min() == pytest.approx(0, abs=1e-12)
        nodes = lists.nodes[mine]
        assert np.column_stack([a.flat[nodes], b.flat[nodes]]) == pytest.approx(lists.local[mine], abs=1e-12)
        assert best[k] - lists.value[mine] == pytest.approx(low.flat[nodes], abs=1e-12)


def test_drawn_gaps_are_those_of_settling_and_sweeping_again(noisy: Scene, contacts: ActiveContacts) -> None:
    """A drawn error put onto the ground, everything settled and swept anew: the least gap agrees to a few
    tenths of a millimetre (poses thinned, blocks of nodes, lifts to first order)."""
    off = []
    for seed in range(6):
        wrong = seen_from(noisy, seed + 50, replace(PHONE, patch=0.001, warp=0.003)).height.values
        wrong = wrong - noisy.surface.height.values
        height = noisy.surface.height.like(noisy.surface.height.values + wrong)
        surface = replace(noisy.surface, height=height, top=height)
        again = stand(noisy.vehicle, noisy.travel, noisy.line, surface)
        at = contacts.window.node_xy().reshape(-1, 2)[contacts.nodes]
        field = noisy.surface.height.like(wrong).sample(at).astype(np.float32)[:, None]
        assert again.before.worst is not None
        off.append(float(contacts.drawn(field, np.zeros((2, 1))).min()) - again.before.worst.gap)
    assert np.abs(off).max() < 0.0012 and abs(np.mean(off)) < 0.0006


def test_a_chassis_point_follows_the_ground_under_a_tyre_as_its_weight_says(noisy: Scene) -> None:
    """Derivatives by finite differences: the node that carries a tyre raised by 10 micrometres, the vehicle
    settled again. Without what tyres add by leaning they are off by up to a twelfth."""
    ground, cell, car = noisy.surface.height.values, noisy.surface.height.frame.cell, noisy.vehicle
    rng, worst = np.random.default_rng(4), 0.0
    x, y = np.array([0.0, 1.4, 2.8, 1.4, 3.6]), np.array([0.5, -0.6, 0.3, 0.0, 0.7])
    plain = wheel_weights(car, x, y, np.zeros(5, np.int64))
    left = np.array([car.front_track, -car.front_track, car.rear_track, -car.rear_track]) / 2
    for pose in rng.choice(np.flatnonzero(noisy.ride.batch.live), 8, replace=False):
        place, nought = noisy.ride.batch.places[pose : pose + 1], np.zeros(1, np.int64)
        was = settle_batch(car, ground, cell, place, nought, want_contact=True)
        j, i = np.divmod(was.contact[0], ground.shape[1])
        away = np.stack([i, j], axis=-1) * cell - place[0, :2]
        aside = away @ [-np.sin(place[0, 2]), np.cos(place[0, 2])] - left
        weights = ground_weights(car, plain, np.tile(aside, (5, 1)))
        worst = max(worst, float(np.abs(weights - plain).max()))
        for wheel in range(4):
            raised, eps = ground.copy(), 1e-5
            raised.flat[was.contact[0, wheel]] += eps
            now = settle_batch(car, raised, cell, place, nought)
            rise = [
                (b.position[0, 0] + np.column_stack([x, y, 0 * x + 0.12]) @ b.rotation[0, 0].T)[:, 2]
                for b in (was, now)
            ]
            # pitch and roll are some hundredths: as much of a weight is of second order
            assert (rise[1] - rise[0]) / eps == pytest.approx(weights[:, wheel], abs=0.02)
    assert worst > 0.03


@pytest.mark.parametrize("leans", [(0, 1), (0, 0), (1, 1)])
def test_drawn_tyres_rise_and_lean_as_stepping_on_and_on_would_have_them(leans: tuple[int, int]) -> None:
    """Against the plain fixed point, each draw by itself: lean, rise, lean by that."""
    rng, draws, many = np.random.default_rng(6), 50, 30
    start = np.arange(9) * many
    nodes = rng.permutation(400)[: 8 * many]
    short, aside = rng.uniform(0, 0.012, 8 * many), rng.uniform(-0.1, 0.1, 8 * many)
    short[start[:-1]] = 0.0
    field = (rng.normal(0, 0.004, (400, 1)) + rng.normal(0, 0.001, (400, draws))).astype(np.float32)
    tracks, found = np.array([1.5, 1.4]), np.empty((8, draws), np.float32)
    single = [x.astype(np.float32) for x in (short, aside, tracks)]
    rise_part(0, 2, Resting(start, nodes, *single, np.tile(leans, (2, 1))), field, found)
    for pose in range(2):
        for d in range(draws):
            tilt = np.zeros(2)
            for _ in range(30):
                rise = []
                for k in range(4):
                    own = slice(*start[4 * pose + k : 4 * pose + k + 2])
                    rise.append((field[nodes[own], d] - short[own] - aside[own] * tilt[leans[k // 2]]).max())
                tilt = np.array([rise[0] - rise[1], rise[2] - rise[3]]) / tracks
            assert found[4 * pose : 4 * pose + 4, d] == pytest.approx(rise, abs=4e-5)


def test_nothing_measured_carries_no_tyre() -> None:
    from crestcut.contact.stand.tyres import VOID

    hub = np.array([[0.4, 0.4, 1.0, 0.0, 0.0]])
    lists, best = list_tyres(np.full((40, 40), VOID), 0.02, hub, vehicle())
    assert len(lists.nodes) == 0 and best[0] == VOID
