"""Several vehicles over one crest: the common cut clears each, is no deeper than needed, and says who needs
what.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from crestcut.cut.fleet import Member, plan_fleet
from crestcut.errors import CrestcutError
from crestcut.job.records import Wanted
from crestcut.travel.line import travel_line
from crestcut.travel.ride import ride
from crestcut.travel.sweep import sweep
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, Scene, belly, crest, lip, scene, vehicle

WANTED = Wanted(want=0.01, want_ends=0.01)


def members(s: Scene) -> list[Member]:
    low = replace(s.vehicle, name="low")
    short = vehicle(
        belly(0.09, 0.5, 0, 2.0), lip(0.25), name="short", wheelbase=2.0, front_track=1.3, rear_track=1.3
    )
    line = travel_line([(-4, 0), (4, 0)], short, STRAIGHT, 0.02)
    rode = ride(short, s.surface, line, STRAIGHT, (AS_MEASURED,))
    return [Member(low, s.ride, s.before), Member(short, rode, sweep(short, s.surface, rode))]


def test_one_vehicle_alone_gets_its_own_plan() -> None:
    s = scene(crest(0.085), cell=0.02)
    fleet = plan_fleet([Member(s.vehicle, s.ride, s.before)], s.surface, s.limits(), WANTED)
    plan = s.plan(wanted=WANTED)
    assert fleet.feasible and fleet.depth.values == pytest.approx(plan.depth.values, abs=2e-5)
    assert fleet.litres[0] == pytest.approx(plan.volume * 1000, rel=1e-2)


def test_the_common_cut_clears_all_and_names_who_needs_it() -> None:
    s = scene(crest(0.085), cell=0.02)
    both = members(s)
    fleet = plan_fleet(both, s.surface, s.limits(), WANTED)
    assert fleet.feasible and min(fleet.excess) >= -5e-5
    for m in both:
        one = plan_fleet([m], s.surface, s.limits(), WANTED)
        assert (fleet.depth.values >= one.depth.values - 1e-5).all()
    assert set(np.unique(fleet.owner)) >= {-1, 0}
    assert sum(fleet.litres) == pytest.approx(fleet.depth.values.sum() * 0.02**2 * 1000, rel=2e-2)
    # the order in which they are named does not matter
    other = plan_fleet(both[::-1], s.surface, s.limits(), WANTED)
    assert other.depth.values == pytest.approx(fleet.depth.values, abs=5e-5)


def test_two_of_one_name_are_refused() -> None:
    s = scene(crest(0.05), cell=0.02)
    m = Member(s.vehicle, s.ride, s.before)
    with pytest.raises(CrestcutError, match="name of its own"):
        plan_fleet([m, m], s.surface, s.limits(), WANTED)
