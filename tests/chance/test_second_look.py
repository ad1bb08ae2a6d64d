"""The gate after the sweep, as pure functions on records."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.chance.against_all_points import doubted, in_the_way, second_look
from crestcut.chance.records import Chance, Doubt
from crestcut.scan.records import Frame
from crestcut.terrain.ground.seen import Layers, Seen, Thing
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, Scene, belly, crest, scene, stand, vehicle

FRAME = Frame(np.ones(3), np.eye(3), np.zeros(3), "m", "z")


def chance(least: float, verdict: str = "clears", spread: float = 0.003) -> Chance:
    return Chance(least, (least - 2 * spread, least + 2 * spread), 0.0001, verdict, "said", spread, 0.5, 200)


def nothing_seen(s: Scene) -> Seen:
    shape = s.surface.height.frame.shape
    none, nan = np.zeros(shape, bool), np.full(shape, np.nan)
    return Seen(nan, nan, np.full(shape, -1, np.int32), none, none, (), (), math.nan, 0.01)


def looked(s: Scene, seen: Seen, today: Chance) -> list[Doubt]:
    passage = replace(s, surface=replace(s.surface, seen=seen)).passage
    return [f.doubt for f in second_look(passage, s.travel, (AS_MEASURED,), today)]


FLAT = scene(lambda x, y: 0.0 * x, vehicle(belly(0.12)))


def heap(s: Scene, height: float, y: float = 0.0) -> tuple[FloatArray, FloatArray]:
    """Crude heights where a heap of 0.2 x 0.2 m lies, and their error."""
    xy = s.surface.height.frame.node_xy()
    there = (np.abs(xy[..., 0]) < 0.1) & (np.abs(xy[..., 1] - y) < 0.1)
    return np.where(there, height, np.nan), np.where(there, 0.002, np.nan)


def test_nothing_seen_takes_nothing_away() -> None:
    today = chance(0.12)
    assert looked(FLAT, nothing_seen(FLAT), today) == []
    assert doubted(today, (), FRAME) is today


def test_all_points_that_meet_the_underside_forbid_clears_and_those_below_it_do_not() -> None:
    for height, found in ((0.135, [Doubt.ALL_POINTS]), (0.121, []), (0.10, [])):
        crude, error = heap(FLAT, height)  # 0.121 is within twice its own error of the belly
        assert looked(FLAT, replace(nothing_seen(FLAT), crude=crude, error=error), chance(0.12)) == found
    crude, error = heap(FLAT, 0.135, y=1.3)  # beside the path
    assert looked(FLAT, replace(nothing_seen(FLAT), crude=crude, error=error), chance(0.12)) == []


def test_what_is_known_to_stand_there_is_named_as_that() -> None:
    crude, error = heap(FLAT, 0.2)
    thing = Thing(0.0, 0.0, (0.2, 0.2), 0.4, 0.0, 0.04, 100, 1.0)
    index = np.where(np.isnan(crude), -1, 0).astype(np.int32)
    seen = replace(nothing_seen(FLAT), crude=crude, error=error, thing=index, things=(thing,))
    assert looked(FLAT, seen, chance(0.12)) == [Doubt.STANDS]
    assert in_the_way(replace(FLAT, surface=replace(FLAT.surface, seen=seen)).passage) == (thing,)


def test_most_points_below_a_wheel_are_ridden_again() -> None:
    """A crest cleared by 2 mm on wheels whose ground most points put 10 mm lower."""
    s = scene(crest(0.08), vehicle(belly(0.114)), start=(-3.0, 0.0), end=(3.0, 0.0))
    assert s.before.worst is not None and 0 < s.before.worst.gap < 0.005
    xy = s.surface.height.frame.node_xy()
    tracks = (np.abs(np.abs(xy[..., 1]) - 0.75) < 0.2) & (np.abs(xy[..., 0]) > 0.5)
    crude = np.where(tracks, s.surface.height.values - 0.010, np.nan)
    seen = replace(nothing_seen(s), crude=crude, error=np.where(tracks, 0.001, np.nan))
    assert looked(s, seen, chance(0.004)) == [Doubt.ALL_POINTS]
    beside = np.where(np.abs(xy[..., 1]) > 1.2, s.surface.height.values - 0.010, np.nan)
    seen = replace(nothing_seen(s), crude=beside, error=np.where(np.isnan(beside), np.nan, 0.001))
    assert looked(s, seen, chance(0.004)) == []


def test_a_second_layer_counts_where_it_would_take_the_gap() -> None:
    s = scene(crest(0.08), vehicle(belly(0.122)), start=(-3.0, 0.0), end=(3.0, 0.0))
    worst = s.before.worst
    assert worst is not None and 0.008 < worst.gap < 0.012
    xy = s.surface.height.frame.node_xy()
    for x, apart, found in ((0.0, 0.015, [Doubt.TWICE]), (0.0, 0.003, []), (-2.5, 0.015, [])):
        twice = (np.abs(xy[..., 0] - x) < 0.2) & (np.abs(xy[..., 1]) < 0.3)  # between the wheels
        patch = Layers(x, 0.0, (0.4, 0.6), 0.24, apart, 0.6 * apart, 0.0)
        seen = replace(nothing_seen(s), twice=twice, layers=(patch,))
        assert looked(s, seen, chance(worst.gap)) == found, (x, apart)


def test_a_rough_patch_counts_as_no_slab_where_it_is_a_fair_part_of_the_path() -> None:
    rough = nothing_seen(FLAT).rough.copy()
    rough[:, : rough.shape[1] // 2] = True
    seen = replace(nothing_seen(FLAT), rough=rough, roughness=0.008)
    assert looked(FLAT, seen, chance(-0.02, "touches")) == [Doubt.NOT_SLAB]
    rough = rough & (np.arange(rough.shape[1]) < 150)
    assert looked(FLAT, replace(seen, rough=rough), chance(0.12)) == []


def test_clears_is_not_said_where_the_sweep_itself_touches_beyond_its_error() -> None:
    s = scene(crest(0.08), vehicle(belly(0.106)), start=(-3.0, 0.0), end=(3.0, 0.0))
    assert s.before.worst is not None and s.before.worst.gap < -0.004
    assert looked(s, nothing_seen(s), chance(0.01, spread=0.003)) == [Doubt.SWEPT]
    assert looked(s, nothing_seen(s), chance(0.01, spread=0.008)) == []
    assert looked(s, nothing_seen(s), chance(-0.006, "touches")) == []


def test_no_best_estimate_is_larger_than_the_underside_can_have() -> None:
    """194 mm were said once under a belly of 88 mm."""
    s = scene(crest(0.02), vehicle(belly(0.088)), start=(-3.0, 0.0), end=(3.0, 0.0))
    today = chance(0.194)
    found = second_look(s.passage, s.travel, (AS_MEASURED,), today)
    assert [f.doubt for f in found] == [Doubt.CANNOT_BE] and found[0].size == 0.088
    now = doubted(today, found, FRAME)
    assert now.verdict == "cannot tell" and now.least_clearance == 0.088 and now.words == ""
    assert math.isnan(now.chance_of_contact) and max(now.interval) <= 0.088
    # over a dip that was measured the gap may well be larger
    dip = scene(lambda x, y: -0.1 * (np.abs(y) < 0.66), vehicle(belly(0.088)), STRAIGHT)
    assert dip.before.worst is not None and dip.before.worst.gap > 0.18
    assert looked(dip, nothing_seen(dip), chance(0.190)) == []


def test_only_not_slab_takes_away_touches() -> None:
    s = stand(FLAT.vehicle, FLAT.travel, FLAT.line, FLAT.surface)
    crude, error = heap(s, 0.135)
    rough = replace(nothing_seen(s), rough=np.ones_like(nothing_seen(s).rough), roughness=0.01)
    for seen, verdict in (
        (replace(nothing_seen(s), crude=crude, error=error), "touches"),
        (rough, "cannot tell"),
    ):
        passage = replace(s, surface=replace(s.surface, seen=seen)).passage
        today = chance(-0.01, "touches")
        found = second_look(passage, s.travel, (AS_MEASURED,), today)
        assert found and doubted(today, found, FRAME).verdict == verdict
