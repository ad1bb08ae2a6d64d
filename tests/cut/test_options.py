"""Cheaper than a cut: what is laid down is swept again, and the table says what a stop rule says."""

from __future__ import annotations

import math

import numpy as np
import pytest

from crestcut.cut.fixes import fillet, least_excess, strips
from crestcut.cut.options import chance_of_contact, options_table, per_load, stop_rules
from crestcut.job.records import Site, Slab, Wanted
from crestcut.travel.ride import ride
from crestcut.travel.sweep import sweep
from crestcut.vehicle.records import AS_MEASURED, LoadState
from scenes import STRAIGHT, belly, crest, lip, scene, vehicle

WANTED = Wanted(want=0.01, want_ends=0.02, in_use=(("speed and braking", 0.006),))


def test_strips_lift_the_belly_by_their_thickness() -> None:
    s = scene(crest(0.09), cell=0.02)
    laid = strips(s.vehicle, s.surface, s.ride, s.before, WANTED)
    assert laid is not None and laid.excess >= 0 and least_excess(s.before, WANTED) < 0
    assert s.before.worst is not None and laid.after.worst is not None
    assert laid.after.worst.gap - s.before.worst.gap <= laid.size + 1e-3
    # the middle between the tracks stays free
    row = round(s.surface.height.frame.to_grid((0.0, 0.0))[1] / 0.02)
    assert laid.added[row].max() == 0.0 and laid.added.max() == pytest.approx(laid.size)


def test_a_fillet_lifts_the_nose_out_of_a_gutter() -> None:
    gutter = lambda x, y: np.where(x < 0, -0.10 * x, 0.12 * x)  # noqa: E731
    s = scene(gutter, vehicle(belly(0.2), lip(0.17)), start=(-4.5, 0), end=(4.5, 0), cell=0.02)
    assert s.before.least["nose"].gap < 0.02
    round_ = fillet(s.vehicle, s.surface, s.ride, WANTED)
    assert round_ is not None
    assert round_.after.least["nose"].gap > s.before.least["nose"].gap + 0.005
    assert round_.litres > 0 and (round_.added >= 0).all()


def test_the_table_holds_every_fix_that_applies() -> None:
    car = vehicle(belly(), lip(0.2), loads=(AS_MEASURED, LoadState("laden", -0.01, -0.02)))
    s = scene(crest(0.085), car, cell=0.02)
    rode = ride(car, s.surface, s.line, STRAIGHT, car.loads)
    before = sweep(car, s.surface, rode)
    from crestcut.cut.plan import plan_cut

    plan = plan_cut(car, s.surface, rode, before, s.limits(), WANTED)
    table = options_table(
        car,
        s.surface,
        rode,
        before,
        plan,
        WANTED,
        0.004,
        site=Site(ground="public"),
        slab=Slab(thickness=0.1),
    )
    names = [o.name for o in table]
    assert names[0] == "leave it as it is" and names[-1] == "replace the bay" and "cut" in names
    assert {
        'less load ("as measured" only)',
        "slower",
        "more tyre pressure",
        "ramp strips in the wheel tracks",
    } <= set(names)
    cut = table[names.index("cut")]
    assert cut.reaches and cut.chance < table[0].chance and cut.litres == pytest.approx(plan.volume * 1000)
    assert not table[0].reaches
    assert per_load(rode, before)["as measured"] > per_load(rode, before)["laden"]
    assert "the ground is public" in table[-1].needs and "t out and in" in table[-1].needs


def test_stop_rules_bite_where_they_should() -> None:
    s = scene(crest(0.085), cell=0.02)
    plan = s.plan(wanted=WANTED)
    assert stop_rules(plan, Site(ground="private"), Slab(thickness=0.5)) == ()
    assert "sixth" in stop_rules(plan, Site(), Slab(thickness=plan.deepest * 5))[0]
    assert "public" in stop_rules(plan, Site(ground="public"), Slab())[0]


def test_the_chance_is_that_of_a_normal_error() -> None:
    assert chance_of_contact(0.0, 0.004) == pytest.approx(0.5)
    assert chance_of_contact(0.004 * 1.6449, 0.004) == pytest.approx(0.05, abs=1e-4)
    assert math.isnan(chance_of_contact(0.01, None))
