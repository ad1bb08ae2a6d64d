"""What two surfaces say was taken away, against cuts that are known exactly: no scan, no plan, no job."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.chance.records import Doubt
from crestcut.job.records import Slab
from crestcut.terrain.error.covariance import between
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.verify.edges import BESIDE, LEAST_AREA, TOLERANCE, _rise_noise, edges_left, new_ponds, too_deep
from crestcut.verify.records import TooDeep
from crestcut.verify.removed import (
    OFF,
    OTHER,
    Removed,
    _spread_out,
    _tiles,
    removed_between,
    speaks_against,
    work_area,
)
from scenes import surface_of

FRAME = GridFrame((2.0, 1.0), 0.4, 0.02, (100, 140))  # turned, not at the origin
SCAN = ErrorModel(0.0004, 0.0003, 0.1, 0.0004, 0.5, "", "", "")
U, V = np.arange(140) * 0.02, np.arange(100)[:, None] * 0.02


def box(u: float, v: float, wide: float, deep: float) -> np.ndarray:
    """Nodes of a rectangle about grid (u, v)."""
    return np.asarray((np.abs(U - u) < wide / 2) & (np.abs(V - v) < deep / 2))


def ground(z: FloatArray, error: ErrorModel = SCAN) -> Surface:
    flat = surface_of(lambda x, y: 0 * x, FRAME)
    return replace(flat, height=flat.height.like(z), top=flat.height.like(z), error=error)


def hill() -> FloatArray:
    return np.asarray(0.04 * U + 0.03 * np.sin(3 * U) * np.cos(2 * V))


CUT = 0.010 * box(1.4, 1.0, 0.8, 0.6)


def known(gone: FloatArray, planned: FloatArray = CUT, sd: float = 0.0003) -> Removed:
    """As if the depth had been measured that well."""
    grid = HeightGrid(FRAME, gone)
    work = work_area(grid.like(planned))
    return Removed(
        grid, grid.like(np.full(FRAME.shape, sd)), work, (gone > 0) & ~work, 0, 0, 0, 0, 0.0005, 0.0005
    )


def test_level_tilt_and_place_of_the_later_scan_are_no_depth() -> None:
    """It lies 8 mm higher, tilted by 2 mm/m and 4 mm off in plan along x: seen on uneven uncut ground."""
    xy = FRAME.node_xy()
    frame_slope = np.gradient(hill(), 0.02, axis=1), np.gradient(hill(), 0.02, axis=0)
    slope_x = frame_slope[0] * np.cos(0.4) - frame_slope[1] * np.sin(0.4)
    after = hill() - CUT + 0.008 + 0.002 * (xy[..., 1] - 1.0) + 0.004 * slope_x
    found = removed_between(ground(hill()), ground(after), HeightGrid(FRAME, CUT), 0.01)
    assert np.abs(found.depth.values - CUT)[5:-5, 5:-5].max() < 0.0004
    assert not found.elsewhere.any() and not speaks_against(found)
    cubic = 0.0004  # m3 of one node, cell squared
    assert found.planned == pytest.approx(CUT.sum() * cubic) and found.volume == pytest.approx(
        CUT.sum() * cubic, abs=3 * found.volume_sd
    )
    assert found.misfit < 0.0003 and found.explained == pytest.approx(
        np.sqrt(2 * (0.0004**2 + 0.0003**2) + 2 * 1e-8 / 4), rel=0.01
    )


def test_a_depth_is_as_unsure_as_both_scans_where_no_uncut_ground_is_near() -> None:
    one, two = (replace(SCAN, patch=p, warp=0.0) for p in (0.0005, 0.0012))
    found = removed_between(ground(hill(), one), ground(hill() - CUT, two), HeightGrid(FRAME, CUT), 0.0)
    assert found.typical == pytest.approx(np.hypot(0.0005, 0.0012), rel=0.15)
    middle = found.sd.values[box(1.4, 1.0, 0.2, 0.2)]
    assert middle == pytest.approx(found.typical, rel=0.1)
    # of a sum of so many patches: less than if they were one, more than if each tile were free
    tiles, each = found.work.sum() * 0.0004, found.typical * 0.1
    assert each * np.sqrt(tiles) < found.volume_sd < found.typical * tiles


def test_what_was_cut_beside_the_plan_is_found_as_large_as_it_is() -> None:
    other = 0.008 * box(2.4, 0.5, 0.4, 0.4)
    found = removed_between(ground(hill()), ground(hill() - CUT - other), HeightGrid(FRAME, CUT), 0.0)
    assert (found.elsewhere == (other > 0)).mean() > 0.995 and found.elsewhere[other > 0].all()
    assert found.volume == pytest.approx((CUT + other).sum() * 0.0004, rel=0.05)
    assert found.work[CUT > 0].all() and not found.work[box(1.4, 1.0, 1.1, 0.9) == 0].any()
    # as much as a quarter of the work, cut where nothing was to be
    wide = 0.008 * box(2.4, 0.5, 0.5, 0.6)
    for there, said in ((other, False), (wide, True)):
        gone = known(CUT + there)
        assert ((there > 0).sum() > OTHER * gone.work.sum()) == said
        against = speaks_against(gone)
        assert [f.doubt for f in against] == [Doubt.ELSEWHERE] * said
        if against:
            u, v = FRAME.to_grid(np.array(against[0].xy))  # the first of the nodes that are lowest
            assert there[round(v / 0.02), round(u / 0.02)] > 0
            assert (against[0].area, against[0].size) == pytest.approx(((there > 0).sum() * 0.0004, 0.008))


def test_a_scan_that_is_off_where_nobody_cut_shows_nothing() -> None:
    for misfit, said in ((0.9, False), (1.1, True)):
        against = speaks_against(replace(known(CUT), misfit=misfit * OFF * 0.0005))
        assert [f.doubt for f in against] == [Doubt.MISFIT] * said
    assert against[0].xy == pytest.approx(FRAME.to_site((1.4, 1.0)), abs=0.02)


def test_a_hand_may_stray_a_tenth_of_a_metre_and_no_more() -> None:
    work = work_area(HeightGrid(FRAME, CUT))
    for axis in (0, 1):  # five nodes of 20 mm on either side
        assert work.any(axis=axis).sum() == (CUT > 0).any(axis=axis).sum() + 10
    assert not work_area(HeightGrid(FRAME, 0 * CUT + 0.0004)).any()


def test_too_little_uncut_ground_is_said() -> None:
    everywhere = HeightGrid(FRAME, np.full(FRAME.shape, 0.01))
    with pytest.raises(CrestcutError, match="too little ground that was not cut"):
        removed_between(ground(hill()), ground(hill() - 0.01), everywhere, 0.0)


def test_a_rim_of_one_tile_all_round_carries_the_later_scan() -> None:
    wide = 0.010 * box(1.39, 0.99, 2.41, 1.61)
    later = hill() - wide + 0.006 + 0.001 * FRAME.node_xy()[..., 0]
    found = removed_between(ground(hill()), ground(later), HeightGrid(FRAME, wide), 0.0)
    assert (~found.work).mean() < 0.3
    assert np.abs((found.depth.values - wide)[wide > 0]).max() < 0.001


def test_what_is_linear_over_the_tiles_is_so_at_every_node() -> None:
    surface = ground(hill())
    tiles = _tiles(surface, surface, 0 * hill(), np.zeros(FRAME.shape, bool))
    plane = np.array([0.3, -0.7])
    nodes = _spread_out(tiles, tiles.xy @ plane, FRAME.shape)
    assert (nodes - FRAME.node_xy() @ plane)[2:-2, 2:-2] == pytest.approx(0.0, abs=1e-12)


def named(found: tuple[TooDeep, ...], start: str) -> TooDeep | None:
    return next((f for f in found if f.what.startswith(start)), None)


def plan(allowed: float) -> Any:
    grid = HeightGrid(FRAME, CUT)
    return SimpleNamespace(depth=grid, limits=SimpleNamespace(deepest=grid.like(0 * CUT + allowed)))


@pytest.mark.parametrize(("sd", "sure"), [(0.0003, True), (0.002, False), (0.004, None)])
def test_deeper_than_planned_by_more_than_a_hand_does(sd: float, sure: bool | None) -> None:
    """5 mm over, of which 2 are a hand's: 3 mm, over 0.3 x 0.2 m; sure above 2 sd, said above 1."""
    spot = box(1.2, 0.9, 0.3, 0.2)
    slab = Slab(steel_depth=0.045, keep_cover=0.020)
    over = named(too_deep(known(CUT + 0.005 * spot, sd=sd), plan(0.025), slab), "deeper than planned")
    if sure is None:
        assert over is None
        return
    assert over is not None and over.sure == sure and not over.steel
    assert over.most == pytest.approx(0.005 - TOLERANCE, abs=1e-6)
    assert over.area == pytest.approx(0.06, rel=0.2)
    u, v = FRAME.to_grid(np.array(over.xy))
    assert abs(u - 1.2) < 0.15 and abs(v - 0.9) < 0.10
    none = too_deep(known(CUT + 0.0019 * spot, sd=sd), plan(0.025), slab)
    assert none == ()
    speck = box(1.2, 0.9, 0.08, 0.08)
    assert speck.sum() * 0.0004 < LEAST_AREA and too_deep(known(CUT + 0.005 * speck), plan(0.025), slab) == ()


def test_each_limit_is_said_by_itself() -> None:
    spot, beside = box(1.2, 0.9, 0.3, 0.3), box(2.4, 0.4, 0.3, 0.3)
    slab = Slab(steel_depth=0.045, keep_cover=0.020)
    found = too_deep(known(CUT + 0.020 * spot), plan(0.025), slab)  # 30 mm: 5 over 25, 5 over the cover
    limits = {f.what.split(" of ")[0]: f.most for f in found}
    assert limits == pytest.approx({
        "deeper than planned": 0.018, "deeper than the job allows": 0.005, "less than 20 mm": 0.005
    }, abs=1e-6)  # fmt: skip
    assert [f.steel for f in found] == [False, False, True]
    other = too_deep(known(CUT + 0.004 * beside), plan(0.025), slab)
    assert [(f.what, f.most) for f in other] == [
        ("cut where nothing was to be cut", pytest.approx(0.004, abs=1e-6))
    ]
    # nothing is known of the steel: nothing is said of it
    assert not any(f.steel for f in too_deep(known(CUT + 0.040 * spot), plan(0.025), Slab()))
    # a plan that goes deeper than the limit (it was changed since) is held to itself
    assert named(too_deep(known(CUT), plan(0.005), slab), "deeper than the job") is None


def bowl(u: float, v: float, deep: float = 0.012) -> FloatArray:
    return np.asarray(-deep * np.maximum(1 - ((U - u) ** 2 + (V - v) ** 2) / 0.15**2, 0.0))


def test_only_a_puddle_of_the_work_is_one() -> None:
    """Beside the work to ``BESIDE``; not one farther off, nor one that was there before."""
    rim = U[known(CUT).work.any(axis=0)][-1]
    for u, told in ((1.4, True), (rim + BESIDE, True), (rim + BESIDE + 0.02, False)):
        wet = new_ponds(ground(0 * hill()), ground(bowl(u, 1.0)), known(CUT))
        assert len(wet) == told, u
        for pond, xy in wet:
            assert xy == pytest.approx(FRAME.to_site((u, 1.0)), abs=0.03)
            assert pond.deepest == pytest.approx(0.012, rel=0.2)
    old = ground(bowl(1.2, 1.0))
    assert new_ponds(old, ground(bowl(1.2, 1.0, 0.015)), known(CUT)) == ()
    both = new_ponds(old, ground(bowl(1.2, 1.0) + bowl(1.75, 1.0)), known(CUT))
    assert [p.station for p, _ in both] == pytest.approx([1.75], abs=0.03)
    unseen = np.where(box(1.2, 1.0, 0.5, 0.5), np.nan, 0.0)  # before: what stood there then is not known
    assert new_ponds(ground(unseen), ground(bowl(1.2, 1.0)), known(CUT)) == ()


def test_an_edge_is_told_with_its_place_and_slope() -> None:
    gone = np.where(box(1.0, 1.0, 0.8, 0.6), 0.02, 0.0)
    found = edges_left(ground(hill()), ground(hill() - gone), known(gone, gone), 0.25)
    assert len(found) == 1 and found[0].rise == pytest.approx(0.02, abs=1e-9)
    assert found[0].slope == pytest.approx(0.02 / 0.02)  # over the shortest base
    assert found[0].length == pytest.approx(np.hypot(0.8, 0.6), rel=0.1)  # all round: across its corners
    u, v = FRAME.to_grid(np.array(found[0].xy))
    out = max(abs(u - 1.0) - 0.4, abs(v - 1.0) - 0.3)
    assert abs(out) < 0.04
    # what the ground had before is no step of the work
    was = np.where(U > 1.4, 0.03, 0.0) + 0 * V
    assert edges_left(ground(was), ground(was), known(0 * gone, gone), 0.25) == ()
    # far from the work a step of two scans is not the work's
    beside = np.where(box(2.4, 1.0, 0.3, 0.3), 0.02, 0.0)
    away = replace(known(beside, gone), elsewhere=np.zeros(FRAME.shape, bool))
    assert edges_left(ground(hill()), ground(hill() - beside), away, 0.25) == ()
    speck = np.where(box(1.0, 1.0, 0.03, 0.03), 0.02, 0.0)
    fine = edges_left(ground(hill()), ground(hill() - gone - speck), known(gone + speck, gone), 0.25)
    assert [e.rise for e in fine] == sorted((e.rise for e in fine), reverse=True)


def test_where_no_cut_was_planned_the_drift_is_told_all_over_a_large_slab() -> None:
    """1,000 tiles of uncut ground, more than are used; a later scan that drifts by 3 mm over half a metre."""
    frame = GridFrame((0.0, 0.0), 0.0, 0.05, (40, 100))
    flat, xy = surface_of(lambda x, y: 0 * x, frame), frame.node_xy()
    drift = 0.003 * np.sin(2 * np.pi * xy[..., 0] / 2.0)
    error = replace(SCAN, warp=0.003)
    before, after = replace(flat, error=error), replace(flat, error=error, height=flat.height.like(drift))
    found = removed_between(before, after, flat.height, 0.0)
    assert np.abs(found.depth.values[2:-2, 2:-2]).max() < 0.0005 and not found.work.any()


@pytest.mark.parametrize("step", [1, 2, 3])
def test_a_badly_known_place_is_noise_wherever_a_change_of_depth_takes_it_in(step: int) -> None:
    own = np.full(FRAME.shape, 0.0001)
    own[50, 70] = 0.005
    one = ground(hill())
    noise = _rise_noise(replace(one, standard_error=HeightGrid(FRAME, own)), one, 0.02 * step, step)
    # centred over ``step`` nodes, its longer arm first: so far it reaches, whichever way
    j, i = np.nonzero(noise > 0.005)
    reach = -(-step // 2)
    assert (j.min(), j.max(), i.min(), i.max()) == (50 - reach, 50 + reach, 70 - reach, 70 + reach)


@pytest.mark.parametrize("step", [1, 3])
def test_the_noise_of_a_step_is_that_of_a_difference_of_two_places_in_two_scans(step: int) -> None:
    """The covariance of heights at both places says it; the points' own errors come on top, at either end."""
    first, second = SCAN, replace(SCAN, patch=0.001, warp=0.002, warp_length=0.3)
    one, two = (ground(hill(), error) for error in (first, second))
    own = HeightGrid(FRAME, np.full(FRAME.shape, 0.0007))
    at = np.array([[0.0, 0.0], [0.02 * step, 0.0]])
    change = np.array([-1.0, 1.0])
    expected = sum(change @ between(error, at, at) @ change for error in (first, second))
    expected += 2 * 0.0007**2 + 2 * 0.0001**2
    noise = _rise_noise(replace(one, standard_error=own), two, 0.02 * step, step)
    assert noise == pytest.approx(np.sqrt(expected), rel=1e-6)


@pytest.mark.parametrize(("own", "found"), [(0.0007, True), (0.0015, False)])
def test_an_edge_is_steeper_than_the_feather_only_beyond_its_noise(own: float, found: bool) -> None:
    """18 mm over 60: 3 mm more than 1:4 has there, against twice the noise of two ends."""
    gone = np.clip(0.3 * (1.42 - U) + 0 * V, 0.0, 0.018)
    slab = replace(ground(hill()), standard_error=HeightGrid(FRAME, np.full(FRAME.shape, own)))
    assert bool(edges_left(slab, ground(hill() - gone), known(gone, gone), 0.25)) == found
