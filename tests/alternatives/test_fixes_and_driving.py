"""Cheaper than a cut: what is laid down or driven otherwise is swept as the thing done by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from alternatives.options_scene import (
    CAR,
    LADEN,
    WANDERING,
    WANTED,
    benched,
    by_hand,
    excess,
    same,
    uneven,
    wide,
)
from crestcut.alternatives.combined import cut_and_strips
from crestcut.alternatives.driving import kept_to, less_load, more_pressure, other_line, pumped_up
from crestcut.alternatives.fixes import STRIPS, Added, fillet, lay_strips, strip_taper, strips, under_tyres
from crestcut.base.grid import FloatArray
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, Scene, belly, crest, lip, scene, stand, vehicle


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_what_is_laid_down_is_swept_as_if_the_ground_had_been_raised_by_hand(seed: int) -> None:
    s = wide(seed)
    b = benched(s, WANDERING)
    taper = strip_taper([b])
    assert taper is not None
    for laid in (strips([b]), lay_strips([b], 0.03, taper)):
        assert laid is not None and laid.added.max() == pytest.approx(laid.size)
        same(laid.tried[0], by_hand(s, laid.added, travel=WANDERING))


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_what_is_driven_otherwise_is_swept_as_a_job_that_says_so(seed: int) -> None:
    s = wide(seed)
    b = benched(s, WANDERING, (AS_MEASURED, LADEN))
    kept = kept_to(b)
    exact = by_hand(s, travel=replace(WANDERING, wander=0.0, heading=0.0), loads=(AS_MEASURED, LADEN))
    assert kept is not None or excess(exact) - b.before.excess <= 0.001  # less is no gain
    if kept is not None:
        same(kept, exact)
    light = less_load(b)
    assert light is not None and light[0] == "as measured"
    same(light[1], by_hand(s, travel=WANDERING, loads=(AS_MEASURED,)))
    pumped = more_pressure(b)
    assert pumped is not None
    same(pumped, by_hand(s, car=pumped_up(s.vehicle), travel=WANDERING, loads=(AS_MEASURED, LADEN)))
    lift = pumped_up(s.vehicle).tyre_radius - s.vehicle.tyre_radius
    assert lift == pytest.approx(0.020 * (1 - 1 / 1.2))
    # a larger wheel bridges more: on a rough crest it lifts by about what it grew
    assert pumped.gap - b.before.gap == pytest.approx(lift, abs=3e-4)


def saddle(x: FloatArray, y: FloatArray) -> FloatArray:
    """A crest that grows flatter to the left: a way round."""
    return -0.09 * np.abs(x) * (1 - 0.6 / (1 + np.exp(-(y - 0.6) / 0.4)))


def test_another_line_is_judged_with_the_wander_as_a_job_with_it_would() -> None:
    s = scene(saddle, CAR, replace(STRAIGHT, wander=0.9), cell=0.02)
    s = stand(CAR, STRAIGHT, s.line, s.surface)
    b = benched(s, WANDERING)
    found = other_line([b], WANDERING)
    assert found is not None and found.moved[0] > 0.25 and found.moved[1] > 0.25
    ends = (found.start, found.end)
    same(found.wandering[0], by_hand(s, travel=WANDERING, ends=ends))
    same(found.on_line[0], by_hand(s, travel=replace(WANDERING, wander=0.0, heading=0.0), ends=ends))
    assert found.on_line[0].gap > found.wandering[0].gap > b.before.gap + 0.005
    # no line of the grid, judged in full, leaves more than a little more
    best = max(
        excess(by_hand(s, travel=WANDERING, ends=[(-4.0, a), (4.0, c)]))
        for a in np.arange(-0.6, 0.61, 0.3) for c in np.arange(-0.6, 0.61, 0.3)
    )  # fmt: skip
    assert found.wandering[0].excess > best - 0.001


def test_no_other_line_leads_onto_an_area_to_be_kept_unless_the_drawn_one_does() -> None:
    s = scene(saddle, CAR, replace(STRAIGHT, wander=0.9), cell=0.02)
    s = stand(CAR, STRAIGHT, s.line, s.surface)
    bed = [(-1.0, 1.02), (1.0, 1.02), (1.0, 3.0), (-1.0, 3.0)]  # beside the left wheels of the drawn line
    b = benched(s, WANDERING, keeps=[bed])
    assert b.fenced.any()
    free = other_line([benched(s, WANDERING)], WANDERING)
    found = other_line([b], WANDERING)
    assert free is not None and free.moved[0] + free.moved[1] > 0.6
    assert found is None or abs(found.moved[0] + found.moved[1]) < 0.6
    # across the drawn line: it is driven over already
    walk = [(-1.0, -3.0), (1.0, -3.0), (1.0, 3.0), (-1.0, 3.0)]
    crossed = benched(s, WANDERING, keeps=[walk])
    assert crossed.kept.any() and not crossed.fenced.any()
    laid = strips([crossed])
    assert laid is None or laid.added[crossed.kept].max(initial=0.0) == 0.0


def test_the_thinnest_strips_that_do_are_chosen() -> None:
    s = scene(crest(0.09), cell=0.02)
    b = replace(benched(s), target=0.002)
    laid, taper = strips([b]), strip_taper([b])
    assert laid is not None and taper is not None and laid.tried[0].excess >= 0.002 > b.before.excess
    for thick in [t for t in STRIPS if t < laid.size]:
        assert lay_strips([b], thick, taper).tried[0].excess < 0.002
    # the middle between the tracks stays free: what is laid under the belly is of no use
    row = round(s.surface.height.frame.to_grid((0.0, 0.0))[1] / 0.02)
    assert laid.added[row].max() == 0.0
    assert len(laid.pieces) == 4  # two tracks, before and behind the crest
    # both wheels of an axle on a level strip lift the belly by its thickness, no more (weights sum to one)
    assert laid.tried[0].gap - b.before.gap <= laid.size + 1e-3


def gutter(x: FloatArray, y: FloatArray) -> FloatArray:
    return np.where(x < 0, -0.10 * x, 0.12 * x) + 0.0 * y


def test_a_fillet_lifts_the_nose_out_of_a_gutter() -> None:
    car = vehicle(belly(0.2), lip(0.17))
    s = scene(gutter, car, start=(-4.5, 0), end=(4.5, 0), cell=0.02)
    b = benched(s)
    assert b.before.excess < 0
    round_ = fillet([b], "nose")
    assert round_ is not None and round_.tried[0].excess >= 0
    same(round_.tried[0], by_hand(s, round_.added))
    # closed form: a disk of radius R resting in a V of slopes 10 and 12 % stands R (sec((a + b) / 2) - 1)
    # over its bottom,
    # measured along the bisector (cos of its tilt away from the vertical)
    a, c = math.atan(0.10), math.atan(0.12)
    deepest = round_.size * (1 / math.cos((a + c) / 2) - 1) / math.cos((c - a) / 2)
    assert round_.thickest == pytest.approx(deepest, abs=5e-4)
    behind = fillet([b], "tail")
    assert behind is None or behind.added.max() == 0


def test_strips_for_a_nose_lie_under_the_front_wheels_only() -> None:
    car = vehicle(belly(0.2), lip(0.17))
    s = scene(gutter, car, start=(-4.5, 0), end=(4.5, 0), cell=0.02)
    b = benched(s)
    where = under_tyres(b)
    columns = np.flatnonzero(where.any(axis=0)) * 0.02
    bottom = s.surface.height.frame.to_grid((0.0, 0.0))[0]
    assert where.any() and columns.min() > bottom - 1.0  # rear wheels stand 2.8 m behind


def test_cut_and_strips_together_need_less_of_each() -> None:
    s = scene(crest(0.09), cell=0.02)
    b, plan = benched(s), s.plan(wanted=WANTED)
    laid, taper = strips([b]), strip_taper([b])
    assert laid is not None and taper is not None
    mixed = cut_and_strips([b], laid, plan, 0.25)
    assert mixed is not None and 0 < mixed.size < laid.size and 0 < mixed.deepest < plan.deepest
    strip = np.maximum(mixed.size - taper, 0.0)
    same(mixed.tried[0], by_hand(s, strip - mixed.depth))
    assert mixed.tried[0].excess >= -1e-3 and mixed.depth[strip > 0].max() == 0
    assert (mixed.depth <= plan.limits.deepest.values + 1e-12).all()
    for axis in (0, 1):
        assert np.abs(np.diff(mixed.depth, axis=axis)).max() <= 0.25 * 0.02 + 1e-9  # the feather
    assert mixed.litres < plan.volume * 1000


def test_crumbs_are_no_pieces() -> None:
    added = np.zeros((40, 60))
    added[5:15, 10:40] = 0.02
    added[30, 30] = 0.02
    assert Added("strips", 0.02, added, 0.02, None).pieces == ((0.6, 0.2),)  # type: ignore[arg-type]


def short_car() -> Scene:
    """A wide floor between wheels so near each other that strips, cut and short places meet."""
    car = vehicle(belly(0.05, 0.85, 0.1, 1.1), wheelbase=1.2)
    return scene(crest(0.12), car, start=(-3.0, 0.0), end=(3.0, 0.0), cell=0.02)


def test_nothing_is_laid_where_the_underside_lacks_room_nor_cut_where_strips_lie() -> None:
    s = short_car()
    b, plan = benched(s), s.plan(wanted=WANTED)
    short = s.before.gap.values < WANTED.want
    taper, laid = strip_taper([b]), strips([b])
    assert taper is not None and laid is not None
    assert (under_tyres(b) & short).any() and taper[short].min() > 0
    mixed = cut_and_strips([b], laid, plan, 0.25)
    assert mixed is not None
    strip = np.maximum(mixed.size - taper, 0.0) > 0
    assert (np.nan_to_num(plan.depth.values)[strip] > 0).any() and mixed.depth[strip].max() == 0
    same(mixed.tried[0], by_hand(s, mixed.laid - mixed.depth))


def test_poses_are_left_out_only_while_none_of_them_can_be_the_least() -> None:
    """Thick boards lift the worst poses past others, which then decide; no gap between the wheels falls."""
    s = scene(uneven(2), vehicle(belly(0.11, 0.5)), cell=0.02)
    b = benched(s)
    taper = strip_taper([b])
    assert taper is not None
    added = np.maximum(0.05 - taper, 0.0)
    found = b.tried(added=added, falls=0.0)
    same(found, by_hand(s, added))
    assert found.excess > b.before.excess + 0.01  # beyond what is looked at first
