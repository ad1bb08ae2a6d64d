"""The short lists of nodes against the sweep and a plain search over every node."""

from __future__ import annotations

import math
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.active_contacts import ActiveContacts, find_active_contacts
from crestcut.chance.draws import reach_of
from crestcut.chance.lists import list_tyres
from crestcut.job.records import Travel
from crestcut.terrain.records import ErrorModel
from scenes import Scene, belly, crest, lip, scene, stand, vehicle
from simulated import seen_from

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")


@pytest.fixture(scope="module")
def noisy() -> Scene:
    car = vehicle(belly(), lip(0.16))
    travel = Travel(line=(), wander=0.1, heading=math.radians(3))
    true = scene(crest(0.08, 0.2), car=car, travel=travel, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
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
    hubs = np.array([[1.1, 0.8, np.cos(a), np.sin(a)] for a in (0.0, 0.05, 0.6, np.pi)])
    lists, best = list_tyres(ground, cell, hubs, vehicle(tyre_radius=radius, tyre_width=2 * half))
    v, u = np.mgrid[:80, :120] * cell
    for k, (hub_u, hub_v, cos, sin) in enumerate(hubs):
        a, b = (u - hub_u) * cos + (v - hub_v) * sin, (v - hub_v) * cos - (u - hub_u) * sin
        under = (np.abs(a) < radius) & (np.abs(b) <= half + 1e-9)
        top = (ground + np.sqrt(np.maximum(radius**2 - a**2, 0)) - radius)[under].max()
        assert best[k] == pytest.approx(top, abs=1e-12)
        assert lists.value[lists.start[k] : lists.start[k + 1]].min() == pytest.approx(0, abs=1e-12)


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


def test_nothing_measured_carries_no_tyre() -> None:
    from crestcut.contact.stand.tyres import VOID

    hub = np.array([[0.4, 0.4, 1.0, 0.0]])
    lists, best = list_tyres(np.full((40, 40), VOID), 0.02, hub, vehicle())
    assert len(lists.nodes) == 0 and best[0] == VOID
