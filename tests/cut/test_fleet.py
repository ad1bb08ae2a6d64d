"""Several vehicles over one slab: the common cut clears each, is no deeper than needed, and says who needs
what.
"""

from __future__ import annotations

import importlib
import weakref
from dataclasses import replace
from types import ModuleType
from typing import Any

import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.contact.clearance.sweep import sweep, wanted_gap
from crestcut.contact.path.line import travel_line, window
from crestcut.contact.records import Clearance
from crestcut.contact.stand.ride import ride
from crestcut.cut.fleet import Member, depth_for_fleet, plan_fleet
from crestcut.cut.limits import cut_limits
from crestcut.cut.plan import cut_surface, ride_on
from crestcut.cut.records import Limits
from crestcut.job.records import Wanted
from crestcut.terrain.records import Surface
from crestcut.vehicle.records import AS_MEASURED, Part, Vehicle
from scenes import STRAIGHT, Ground, belly, crest, lip, scene, surface_of, vehicle

fleet_module = importlib.import_module("crestcut.cut.fleet")
plan_module = importlib.import_module("crestcut.cut.plan")
WANTED = Wanted(want=0.01, want_ends=0.01)
CELL = 0.02
ENDS = [(-5.0, 0.0), (5.0, 0.0)]


def slab(ground: Ground) -> tuple[Surface, Limits]:
    wide = vehicle(width=2.4)
    surface = surface_of(
        ground, window(travel_line(ENDS, wide, STRAIGHT, CELL), wide, STRAIGHT, CELL, margin=0.3)
    )
    return surface, cut_limits(surface, 0.08, "deepest", 0.25, [])


def member(surface: Surface, car: Vehicle) -> Member:
    rode = ride(car, surface, travel_line(ENDS, car, STRAIGHT, CELL), STRAIGHT, (AS_MEASURED,))
    return Member(car, rode, sweep(car, surface, rode))


def left_over(m: Member, surface: Surface, depth: FloatArray) -> float:
    """Least gap beyond what is asked, with the ground cut so: ridden and swept in full."""
    lower = cut_surface(surface, depth)
    after = sweep(m.vehicle, lower, ride_on(m.ride, m.vehicle, lower))
    asked = wanted_gap(WANTED.want, WANTED.want_ends)
    return min(c.gap - asked[zone] for zone, c in after.least.items())


def vehicle_by_vehicle(members: list[Member], surface: Surface, limits: Limits) -> FloatArray:
    """The deepest of the single cuts: what planning one vehicle after the other on the uncut slab would
    give.
    """
    plans = [plan_fleet([m], surface, limits, WANTED).plan for m in members]
    deepest: FloatArray = np.maximum.reduce([np.nan_to_num(p.depth.values) for p in plans])
    return deepest


def block(
    x: FloatArray, y: FloatArray, x0: float, x1: float, y0: float, y1: float, height: float
) -> FloatArray:
    """A block on the ground, symmetrical to the middle, its ends tapered over 0.1 m."""
    along = np.clip(np.minimum(x - x0, x1 - x) / 0.1 + 1.0, 0.0, 1.0)
    return height * along * ((np.abs(y) >= y0) & (np.abs(y) <= y1))


def test_one_vehicle_alone_gets_its_own_plan() -> None:
    s = scene(crest(0.085), cell=CELL)
    fleet = plan_fleet([Member(s.vehicle, s.ride, s.before)], s.surface, s.limits(), WANTED)
    plan = s.plan(wanted=WANTED)
    assert fleet.plan.feasible and np.array_equal(fleet.plan.depth.values, plan.depth.values, equal_nan=True)
    assert fleet.plan.certificate == plan.certificate and fleet.plan.claim == plan.claim
    assert fleet.litres[0] == pytest.approx(plan.volume * 1000, rel=1e-3) and fleet.alone == (plan.deepest,)


def test_the_depths_alone_are_those_of_the_plan_and_nothing_is_swept(monkeypatch: pytest.MonkeyPatch) -> None:
    s = scene(crest(0.085), cell=CELL)
    height = s.surface.height.values.copy()
    height[:3, :5] = np.nan
    surface = replace(s.surface, height=s.surface.height.like(height))
    members = [Member(s.vehicle, s.ride, s.before)]
    plan = plan_fleet(members, surface, s.limits(), WANTED).plan
    assert plan.deepest > 0.005 and np.isnan(plan.depth.values).any()
    monkeypatch.setattr("crestcut.cut.plan.sweep", None)
    depth = depth_for_fleet(members, surface, s.limits(), WANTED)
    assert np.array_equal(depth, np.nan_to_num(plan.depth.values))


def test_what_a_cut_was_sought_with_is_gone_before_the_sweep_over_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of a long lane the layers of problem and solution are as large as those of the sweep."""
    made: list[weakref.ref[object]] = []
    left: list[int] = []

    def kept(module: ModuleType, name: str) -> None:
        plain = getattr(module, name)

        def noted(*args: Any, **named: Any) -> Any:
            found = plain(*args, **named)
            made.append(weakref.ref(found))
            return found

        monkeypatch.setattr(module, name, noted)

    def swept(*args: Any, **named: Any) -> Clearance:
        left.append(sum(one() is not None for one in made))
        return sweep(*args, **named)

    for module, name in ((fleet_module, "solve"), (fleet_module, "prepare"), (plan_module, "solve")):
        kept(module, name)
    monkeypatch.setattr(plan_module, "sweep", swept)
    s = scene(crest(0.085), cell=CELL)
    plan_fleet([Member(s.vehicle, s.ride, s.before)], s.surface, s.limits(), WANTED)
    assert (len(made), left) == (2, [0])
    s.plan(wanted=WANTED)
    assert (len(made), left) == (3, [0, 0])


def lifted_by_blocks() -> tuple[Surface, Limits, list[Member]]:
    """A small cart whose rear wheels stand on blocks while its tray is over a hump; a long low car must
    grind the blocks.

    With the blocks 20 mm lower the tray sinks by half of that, and now the hump must be cut too.
    """
    blocks = lambda x, y: block(x, y, -1.3, -0.5, 0.36, 0.64, 0.070)  # noqa: E731
    hump = lambda x, y: block(x, y, -0.05, 0.05, 0.0, 0.25, 0.050)  # noqa: E731
    surface, limits = slab(lambda x, y: blocks(x, y) + hump(x, y))
    car = vehicle(belly(0.060), lip(0.3), name="low car")
    tray = Part("tray", (0.8, 1.0), (-0.3, 0.3), (0.0265, 0.0265), "belly")
    cart = vehicle(tray, name="cart", wheelbase=1.8, front_track=1.0, rear_track=1.0, tyre_width=0.1)
    return surface, limits, [member(surface, car), member(surface, cart)]


def test_where_vehicle_by_vehicle_is_not_enough_the_common_cut_is() -> None:
    surface, limits, both = lifted_by_blocks()
    apart = vehicle_by_vehicle(both, surface, limits)
    # by hand: the tray lies half-way between the axles, the blocks lose 20 mm: 10 mm go missing
    assert left_over(both[1], surface, apart) == pytest.approx(-0.010, abs=0.002)
    fleet = plan_fleet(both, surface, limits, WANTED)
    assert fleet.plan.feasible and min(fleet.excess) >= -5e-5
    depth = np.nan_to_num(fleet.plan.depth.values)
    for m, said in zip(both, fleet.excess, strict=True):
        assert left_over(m, surface, depth) == pytest.approx(said, abs=1e-9)
    assert (depth >= apart - 5e-5).all() and depth.max() < 0.03
    # the car needs the blocks, the cart the hump
    xy = surface.height.frame.node_xy()
    hump = (np.abs(xy[..., 0]) < 0.05) & (np.abs(xy[..., 1]) < 0.2)
    blocks = (np.abs(xy[..., 0] + 0.9) < 0.3) & (np.abs(np.abs(xy[..., 1]) - 0.5) < 0.1)
    assert set(np.unique(fleet.owner[hump])) == {1} and set(np.unique(fleet.owner[blocks])) == {0}
    assert sum(fleet.litres) == pytest.approx(fleet.plan.volume * 1000, rel=2e-2) and min(fleet.litres) > 0


def tipped_by_blocks() -> tuple[Surface, Limits, list[Member]]:
    """A car whose rear wheels stand on blocks just as its lip is over a hump; a wide truck's skirts must
    grind the blocks.

    With the blocks lower the car sits down at the rear, its lip rises, and the hump needs less than for the
    car alone.
    """
    blocks = lambda x, y: block(x, y, -2.0, -1.2, 0.58, 0.92, 0.060)  # noqa: E731
    hump = lambda x, y: block(x, y, 1.95, 2.05, 0.0, 0.3, 0.143)  # noqa: E731
    surface, limits = slab(lambda x, y: blocks(x, y) + hump(x, y))
    car = vehicle(belly(0.25), Part("lip", (3.5, 3.7), (-0.5, 0.5), (0.15, 0.15), "nose"), name="car")
    skirts = [
        Part(f"skirt {k}", (0.5, 2.5), (a, b), (0.040, 0.040), "belly")
        for k, a, b in ((1, 0.5, 0.85), (2, -0.85, -0.5))
    ]
    truck = vehicle(belly(0.25, 0.4), *skirts, name="truck", wheelbase=3.0, front_track=2.0, rear_track=2.0)
    return surface, limits, [member(surface, car), member(surface, truck)]


def test_where_vehicle_by_vehicle_is_too_much_the_common_cut_is_less() -> None:
    surface, limits, both = tipped_by_blocks()
    apart = vehicle_by_vehicle(both, surface, limits)
    fleet = plan_fleet(both, surface, limits, WANTED)
    depth = np.nan_to_num(fleet.plan.depth.values)
    assert fleet.plan.feasible and min(left_over(m, surface, depth) for m in both) >= -5e-5
    xy = surface.height.frame.node_xy()
    hump = (np.abs(xy[..., 0] - 2.0) < 0.05) & (np.abs(xy[..., 1]) < 0.3)
    # by hand: the lip lies 0.8 m before an axle of a 2.8 m wheelbase, the blocks lose 30 mm: it rises by
    # 0.8 / 2.8 of that
    assert apart[hump].max() - depth[hump].max() == pytest.approx(0.030 * 0.8 / 2.8, abs=0.002)
    assert fleet.plan.volume < apart.sum() * CELL**2 - 1e-5
    # the car's weights are negative at the lip: no pointwise least cut is claimed
    assert fleet.plan.claim == "maximal"


def test_the_order_in_which_they_are_named_does_not_matter() -> None:
    surface, limits, both = lifted_by_blocks()
    one, other = plan_fleet(both, surface, limits, WANTED), plan_fleet(both[::-1], surface, limits, WANTED)
    assert other.plan.depth.values == pytest.approx(one.plan.depth.values, abs=2e-5, nan_ok=True)
    assert other.alone == pytest.approx(one.alone[::-1]) and other.litres == pytest.approx(
        one.litres[::-1], abs=0.05
    )
    assert other.names == one.names[::-1]


def test_a_vehicle_with_room_to_spare_changes_nothing_and_each_keeps_its_own_margin() -> None:
    s = scene(crest(0.085), cell=CELL)
    low = Member(s.vehicle, s.ride, s.before, margin=0.004)
    high = replace(low, vehicle=replace(s.vehicle, name="high", parts=(belly(0.2),)))
    high = replace(high, before=sweep(high.vehicle, s.surface, s.ride))
    fleet = plan_fleet([low, high], s.surface, s.limits(), WANTED)
    alone = plan_fleet([low], s.surface, s.limits(), WANTED)
    assert fleet.plan.depth.values == pytest.approx(alone.plan.depth.values, abs=1e-9, nan_ok=True)
    assert fleet.alone[1] == 0.0 and fleet.litres[1] == 0.0 and fleet.plan.margin == 0.004
    assert fleet.after[0].least["belly"].gap == pytest.approx(WANTED.want + 0.004, abs=1e-4)


def test_what_stays_short_is_said_for_all_of_them() -> None:
    surface, _, both = lifted_by_blocks()
    fleet = plan_fleet(both, surface, cut_limits(surface, 0.008, "deepest 8 mm", 0.25, []), WANTED)
    assert not fleet.plan.feasible and fleet.plan.short_by == pytest.approx(-min(fleet.excess), abs=1e-9)
    assert fleet.plan.short_at is not None and fleet.plan.binding == ("deepest 8 mm",)


def test_two_of_one_name_are_refused() -> None:
    s = scene(crest(0.05), cell=CELL)
    m = Member(s.vehicle, s.ride, s.before)
    with pytest.raises(CrestcutError, match='two vehicles are named "made-up"'):
        plan_fleet([m, m], s.surface, s.limits(), WANTED)
