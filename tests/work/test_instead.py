"""Where no board on two blocks serves: two rails, and a floor's datum spots. And water, words, first
measurements.
"""

from __future__ import annotations

import dataclasses
import math
from pathlib import Path

import numpy as np
import pytest
from work_scene import scene

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.base.units import INCH
from crestcut.cut.fleet import Member, plan_fleet
from crestcut.work.drain import more_water
from crestcut.work.drain_plan import drained
from crestcut.work.floor_jig import make_floor_jig
from crestcut.work.guided_plan import facets_of
from crestcut.work.jig import SMOOTHING, below_board, make_jig
from crestcut.work.measure_first import measures
from crestcut.work.release import decide_release
from crestcut.work.setout import make_set_out
from crestcut.work.sheet import make_worksheet
from crestcut.work.site import Site
from crestcut.work.ties import place_from_ties
from crestcut.work.timber import SCREW, stock_of
from crestcut.work.tools import load_tool
from crestcut.work.trade import trade_words
from crestcut.work.workable import core_of, make_workable

BLADE = load_tool(Path(__file__).parents[2] / "configs/tools/hand_grinder_blade.toml")
STOCK = stock_of(None, True)
CELL = 0.01


def dished(edge: bool = False) -> tuple[Site, HeightGrid]:
    """A cut curved along and across, tighter than straight settings follow; ``edge``: the slab ends in
    front of it.
    """
    u, v = np.arange(-1.0, 1.2, CELL), np.arange(-0.4, 0.4, CELL)
    ground = np.broadcast_to(0.1 + 0.02 * v[:, None], (len(v), len(u))).copy()
    depth = np.maximum(0.012 - 0.6 * u[None, :] ** 2 - 0.5 * v[:, None] ** 2, 0.0)
    depth = np.minimum(depth, 0.012 - 0.004 * np.sin(60 * u[None, :]) ** 2 * (depth > 0))
    depth = np.maximum(depth, 0.0)
    standing = depth <= 0
    if edge:
        ground[:, u > 0.18] = np.nan
        standing &= u[None, :] <= 0.18
    height = HeightGrid(GridFrame((0.0, 0.0), 0.0, CELL, ground.shape), ground)
    return Site(ground, ground - depth, standing, CELL, u, v), height


def twisted() -> tuple[Site, HeightGrid]:
    """A cut whose bottom is a ruled surface, as two rails guide it, with a wave of half a millimetre."""
    u, v = np.arange(-1.0, 1.2, CELL), np.arange(-0.4, 0.4, CELL)
    ground = np.broadcast_to(0.1 + 0.02 * v[:, None], (len(v), len(u))).copy()
    depth = 0.004 + 0.004 * u[None, :] + 0.008 * v[:, None] * (1 + u[None, :])
    depth = depth + 0.0005 * np.cos(60 * u[None, :])
    depth = np.where((np.abs(u) < 0.25)[None, :] & (np.abs(v) < 0.10)[:, None], depth, 0.0)
    height = HeightGrid(GridFrame((0.0, 0.0), 0.0, CELL, ground.shape), ground)
    return Site(ground, ground - depth, depth <= 0, CELL, u, v), height


def test_rails_that_leave_most_of_it_are_not_built() -> None:
    site, height = dished()
    jig = make_jig(site, make_workable(site), BLADE, STOCK, height=height)
    assert jig.rails and all(not rails.spots for rails in jig.rails)


def test_rails_never_let_the_cutter_too_deep_and_say_what_they_leave() -> None:
    site, height = twisted()
    work = make_workable(site)
    assert work.left  # without a facet all of it is left to rails
    jig = make_jig(
        site, work, BLADE, STOCK, marks={"A": (0.2, 0.1), "B": (1.8, 0.1), "C": (1.0, 0.75)}, height=height
    )
    assert jig.rails and jig.cannot and all(rails.spots and rails.leaves < 0.0015 for rails in jig.rails)
    for rails in jig.rails:
        left_rear, left_front, right_rear, right_front = rails.spots
        j = [int(np.argmin(np.abs(site.offset - s.offset))) for s in (left_rear, right_rear)]

        # tops of the four blocks, less the reach: the surface that the base can grind, built up again from
        # print
        def top(spot) -> float:
            row = int(np.argmin(np.abs(site.offset - spot.offset)))
            column = int(np.argmin(np.abs(site.station - spot.station)))
            assert site.standing[row, column - 4 : column + 5].all()
            return float(site.ground[row, column]) + round(spot.block, 4) - jig.below

        tops = [top(s) for s in rails.spots]
        over = []
        for row in range(min(j), max(j) + 1):
            share = (site.offset[row] - right_rear.offset) / (left_rear.offset - right_rear.offset)
            for column in np.flatnonzero(work.core[row]):
                at = site.station[column]
                if not rails.first <= at <= rails.last:
                    continue
                ends = [
                    a + (b - a) * (at - p.station) / (q.station - p.station)
                    for (a, b), (p, q) in (
                        (tops[:2], (left_rear, left_front)), (tops[2:], (right_rear, right_front)),
                    )
                ]  # fmt: skip
                if rails.low - 1e-9 <= site.offset[row] <= rails.high + 1e-9:
                    over.append(ends[0] * share + ends[1] * (1 - share) - site.finished[row, column])
        assert min(over) >= -1e-4  # blocks are printed to 0.1 mm
        assert max(over) == pytest.approx(rails.leaves, abs=1e-4)


def test_where_no_block_finds_concrete_hands_and_contours_serve() -> None:
    site, height = dished(edge=True)
    assert facets_of(site, core_of(site), STOCK, 0.0127) is None
    work = make_workable(site)
    jig = make_jig(site, work, BLADE, STOCK, height=height)
    assert not jig.rows and jig.rails and all(not r.spots for r in jig.rails)
    assert all("no two blocks" in r.why for r in jig.rails)
    assert any("by hand with the shrouded cup, to the dots and the contour table" in s for s in jig.cannot)
    assert make_set_out(site, work, (-0.9, 0.1), (), {}, height).contours


def bowl(seed: int) -> Site:
    """A slab that bulges or dips between blocks and piece, cut in a waved bowl no board follows."""
    draw = np.random.default_rng(seed)
    u, v = np.arange(-1.2, 1.2, CELL), np.arange(-0.4, 0.4, CELL)
    bulge = draw.uniform(-0.06, 0.03)  # m over the blocks: a dip under the piece asks for low blocks
    ground = 0.1 + draw.uniform(-0.05, 0.05) * v[:, None] + bulge * np.exp(-((u[None, :] / 0.4) ** 2))
    rib = (np.abs(v - draw.choice([-0.13, 0.13])) < 0.035)[:, None] & (np.abs(u) < 0.1)[None, :]
    ground = ground + (draw.uniform(0.01, 0.05) if draw.random() < 0.5 else 0.0) * rib
    waves = 1 - draw.uniform(0.2, 0.5) * np.sin(draw.uniform(40, 80) * u[None, :]) ** 2
    bowl = draw.uniform(0.006, 0.02) - 0.6 * u[None, :] ** 2 - draw.uniform(0.2, 1.0) * v[:, None] ** 2
    depth = np.maximum(bowl, 0.0) * waves
    return Site(ground, ground - depth, depth <= 0, CELL, u, v)


def test_no_block_is_ever_lower_than_the_thinnest_sheet() -> None:
    """Over random plans, every block of boards and rails: 6 mm sheet (the thinnest that is stock: common
    practice, no source). What would ask for less goes to hands.
    """
    least, blocks, by_hand, guided = 0.006 - 1e-9, 0, 0, 0
    for seed in range(30):
        site = bowl(seed)
        height = HeightGrid(GridFrame((0.0, 0.0), 0.0, CELL, site.ground.shape), site.ground)
        stock = stock_of(None, seed % 2 == 0)
        below = below_board(BLADE, seed % 2 == 0)
        made = facets_of(site, core_of(site), stock, below) if seed % 3 else None
        facets = made.facets if made is not None else ()
        guided += len(facets)
        work = make_workable(site, facets)
        jig = make_jig(site, work, BLADE, stock, seed % 2 == 0, height=height)
        heights = [h for row in jig.rows for h in (row.rear, row.front)]
        heights += [spot.block for rails in jig.rails for spot in rails.spots]
        assert min(heights, default=1.0) >= least
        unit = 0.001 if seed % 2 == 0 else INCH / 16
        assert all(block.height / unit == pytest.approx(round(block.height / unit)) for block in jig.blocks)
        assert {round(b.height, 6) for b in jig.blocks} == {
            round(h, 6) for r in jig.rows for h in (r.rear, r.front)
        }
        blocks += len(heights)
        for rails in jig.rails:
            for a, b in zip(rails.spots[::2], rails.spots[1::2], strict=True):
                j = int(np.argmin(np.abs(site.offset - a.offset)))
                i, k = (int(np.argmin(np.abs(site.station - s.station))) for s in (a, b))
                ends = site.ground[j, i] + a.block, site.ground[j, k] + b.block
                under = np.interp(np.arange(i, k + 1), [i, k], ends)
                assert np.all(under >= site.finished[j, i : k + 1] - 1e-9)  # no rail lies on what stays
        no_spots = [rails for rails in jig.rails if not rails.spots]
        for rails in no_spots:
            said = next(line for line in jig.cannot if line.startswith(f"Piece {rails.name},"))
            assert "by hand" in said and "contour table" in said
        by_hand += len(no_spots)
    assert blocks >= 8 and by_hand > 5 and guided > 3  # both ways were met


def test_dots_are_as_deep_as_the_plan_and_no_deeper() -> None:
    """An over-drilled dot leaves a pock."""
    for seed in range(12):
        site = bowl(seed)
        height = HeightGrid(GridFrame((0.0, 0.0), 0.0, CELL, site.ground.shape), site.ground)
        out = make_set_out(site, make_workable(site), (-0.9, 0.9), (), {}, height)
        for dot in out.dots:
            j = int(np.argmin(np.abs(site.offset - dot.offset)))
            i = int(np.argmin(np.abs(site.station - dot.station)))
            assert 0.002 <= dot.depth <= site.depth[j, i] + 1e-12
        assert out.dots[0].depth == max(dot.depth for dot in out.dots) >= site.depth.max() - 0.001
        for c in out.contours:
            j = int(np.argmin(np.abs(site.offset - c.offset)))
            for at in (c.first, c.last):
                assert np.interp(at, site.station, site.depth[j]) == pytest.approx(
                    max(c.level, 0.0003), abs=1e-9
                )


def floor(tilt: float = 0.0) -> tuple[Site, np.ndarray, HeightGrid]:
    """A floor with one high spot of 6 mm, waved by 2 mm elsewhere; the level wanted is its mean plane."""
    x, y = np.meshgrid(np.arange(0, 4.0, 0.02), np.arange(0, 3.0, 0.02))
    level = 0.5 + tilt * x
    ground = level + 0.001 * np.sin(2 * x) * np.cos(3 * y) - 0.002
    ground += 0.008 * np.exp(-(((x - 2.0) / 0.35) ** 2) - ((y - 1.5) / 0.25) ** 2)
    depth = np.maximum(ground - level, 0.0)
    frame = GridFrame((10.0, 20.0), 0.0, 0.02, ground.shape)
    site = Site(ground, ground - depth, depth <= 0, 0.02, x[0], y[:, 0])
    return site, level, HeightGrid(frame, ground)


@pytest.mark.parametrize("tilt", [0.0, 0.01])
def test_blocks_on_datum_spots_bring_the_blade_to_the_level(tilt: float) -> None:
    """On a floor, blocks exactly p high bring the blade to the floor's level (common practice, no source)."""
    site, level, height = floor(tilt)
    marks = {"A": (10.3, 20.2), "B": (13.6, 20.3), "C": (12.0, 22.8)}
    jig = make_floor_jig(site, level, BLADE, marks=marks, height=height)
    below = jig.reach + SMOOTHING
    assert jig.reach == pytest.approx(7 / 16 * INCH)
    assert len(jig.spots) >= 8 and jig.pairs and jig.deepest == pytest.approx(site.depth.max())
    sawn = jig.timber.height  # of stock, and a screw that is firm makes up the rest on every spot
    assert sawn in stock_of(None, False).heights or sawn * 1000 == pytest.approx(round(sawn * 1000))
    assert all(SCREW.low - 1e-9 <= spot.block - sawn <= SCREW.high for spot in jig.spots)
    for spot in jig.spots:
        j = int(np.argmin(np.abs(site.offset - spot.offset)))
        i = int(np.argmin(np.abs(site.station - spot.station)))
        assert site.depth[j, i] == 0
        assert site.ground[j, i] + spot.block - below == pytest.approx(level[j, i], abs=1e-12)
        if spot.ties is not None:
            at = place_from_ties(spot.ties, marks)
            assert math.dist(at, (10 + site.station[i], 20 + site.offset[j])) < 0.002
    by_name = {s.name: s for s in jig.spots}
    crossed = False
    for a, b in jig.pairs:  # every board passes over the high spot
        p, q = by_name[a], by_name[b]
        for share in np.linspace(0, 1, 50):
            at = p.station + (q.station - p.station) * share, p.offset + (q.offset - p.offset) * share
            crossed |= abs(at[0] - 2.0) < 0.1 and abs(at[1] - 1.5) < 0.1
    assert crossed


def test_a_level_floor_has_nothing_to_grind() -> None:
    site, level, _ = floor()
    flat = dataclasses.replace(site, finished=site.ground)
    with pytest.raises(CrestcutError, match="nothing stands over"):
        make_floor_jig(flat, level, BLADE)


def test_a_plan_with_a_dish_is_shaped_to_drain_and_keeps_its_gaps() -> None:
    s = scene()
    limits = s.plan.limits
    members = [Member(s.vehicle, s.ride, s.before, 0.0)]
    fleet = plan_fleet(members, s.surface, limits, s.job.wanted, 0.25)
    depth = np.nan_to_num(fleet.plan.depth.values)
    row, column = np.unravel_index(int(depth.argmax()), depth.shape)
    away = np.hypot(*np.meshgrid(np.arange(depth.shape[1]) - column, np.arange(depth.shape[0]) - row)) * 0.01
    dish = np.maximum(depth, np.where(depth > 0, depth.max() + 0.010 - 0.2 * away, 0.0))
    plan = dataclasses.replace(fleet.plan, depth=fleet.plan.depth.like(dish), volume=float(dish.sum()) * 1e-4)
    held = more_water(s.surface.height.values, dish)
    assert held.max() > 0.002
    done = drained(
        dataclasses.replace(fleet, plan=plan), members, s.surface, limits, s.job.wanted, 1 / 60, 0.25
    )
    drain = done.plan.drain
    assert drain is not None and drain.reached and drain.swales >= 1 and drain.volume > 0
    assert done.plan.volume == pytest.approx(plan.volume + drain.volume)
    assert more_water(s.surface.height.values, np.nan_to_num(done.plan.depth.values)).max() <= 1.01e-4
    assert done.plan.feasible and min(done.excess) >= -5e-5
    release = decide_release(s.job, False, done.plan)
    sheet = make_worksheet(dataclasses.replace(s.order(release), plan=done.plan))
    assert any("Shaped to drain at 1:60" in line for line in sheet.limits)
    # where the limits forbid it, it is said, and nothing is released
    tight = dataclasses.replace(limits, deepest=limits.deepest.like(np.maximum(dish, 0.0)))
    stuck = drained(
        dataclasses.replace(fleet, plan=plan), members, s.surface, tight, s.job.wanted, 1 / 60, 0.25
    ).plan
    assert stuck.drain is not None and not stuck.drain.reached and stuck.drain.left > 0.002
    release = decide_release(s.job, False, stuck)
    assert release.state == "not for cutting" and "drain" in release.reasons[0].words


def test_words_follow_the_country() -> None:
    assert trade_words("US").ponds == "birdbaths" and trade_words("gb").station == "chainage"
    assert trade_words("GB").edge == "arris" and trade_words("US").edge == "edge"
    assert trade_words("GB").apron == "dropped kerb" and trade_words("US").bay == "panel"
    assert trade_words(None) == trade_words("ZZ")


def test_a_measurement_comes_with_its_tapes_and_what_each_outcome_means() -> None:
    flat = HeightGrid(GridFrame((0.0, 0.0), 0.0, 0.02, (201, 401)), np.zeros((201, 401)))
    marks = {"A": (1.0, 0.5), "B": (6.0, 0.5)}
    # places in the scan's own feet, say: to_site makes metres of them
    item = {
        "kind": "string", "where_xy": [[8.0, 6.0], [16.0, 6.0], [12.0, 6.0]], "how": "stretch a string",
        "expect_m": 0.061, "narrows": 2.5,
    }  # fmt: skip
    (found,) = measures([item], marks, flat, (0.5, 1.0), lambda xy: xy * 0.3048)
    assert [p[0] for p in found.places] == ["block a", "block b", "read here"]
    assert found.places[2][1:3] == (pytest.approx(12 * 0.3048 - 0.5), pytest.approx(6 * 0.3048 - 1.0))
    ties = found.places[2][3]
    assert ties is not None and place_from_ties(ties, marks) == pytest.approx((3.6576, 1.8288), abs=2e-3)
    assert found.expect == 0.061 and len(found.settles) == 3
    told = dict(item, settles=["above 60 mm: no cut", "below: cut"])
    assert measures([told], marks, flat, (0, 0))[0].settles == ("above 60 mm: no cut", "below: cut")
    bare = {
        "kind": "felt gap",
        "where": "x 1.0, y 2.0",
        "expect": "a touch",
        "expect_m": -0.001,
        "how": "feel",
    }
    (words,) = measures([bare], marks, flat, (0, 0))
    assert not words.places and "x 1.0, y 2.0" in words.how and words.expect < 0
