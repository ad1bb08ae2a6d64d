"""How sure a floor's figures are: what error models and hand measurements make of them."""

from __future__ import annotations

import numpy as np
import pytest
from floor_scene import NO_ERROR, floor, judged_of, limits_of, surface_of

from crestcut.base.grid import HeightGrid
from crestcut.floor.assess import judge_floor
from crestcut.floor.by_hand import tilt_of
from crestcut.floor.chance import Spread, draw_floor, largest_gap, spread_of
from crestcut.floor.numbers import FLAT, f_numbers, lay_lines, of_draws, read
from crestcut.floor.records import Judged
from crestcut.floor.straightedge import worst_gap
from crestcut.job.floor_records import FloorWish
from crestcut.job.records import ByHand, LevelReading, PlanPoint, Point, StringReading
from crestcut.terrain.error.draws import FieldMaker
from crestcut.terrain.readings.evidence import gather_evidence
from crestcut.terrain.readings.records import Evidence
from crestcut.terrain.records import ErrorModel, Known, Surface
from crestcut.terrain.slab.split import curvature_of, curvature_variance

PHONE = ErrorModel(0.005, 0.0013, 0.1, 0.005, 0.4, "made up", "made up", "made up", known=Known.NAMED)
TRIPOD = ErrorModel(0.001, 0.0003, 0.1, 0.0005, 1.0, "made up", "made up", "made up", known=Known.NAMED)
WISH = FloorWish(straightedge=2.0, gap=0.003)
HUMP = (2.5, 2.0, 0.6, 0.008)


def told(
    height: HeightGrid, error: ErrorModel, evidence: Evidence | None = None, wish: FloorWish = WISH
) -> Judged:
    surface = judged_of(height, error)
    return judge_floor(surface, wish, limits_of(surface), evidence)


def with_error(height: HeightGrid, error: ErrorModel, seed: int) -> HeightGrid:
    drawn = FieldMaker(error, height.frame, None).draw(np.random.default_rng(seed))
    return height.like(height.values + drawn)


def wavy(height: HeightGrid, flatness: float, seed: int) -> HeightGrid:
    """With the waves of a floor of that F_F, half length 0.8 m: no concrete is without."""
    sd = curvature_of(flatness) / np.sqrt(curvature_variance(0.8))
    return with_error(height, ErrorModel(0.0, 0.0, 0.1, float(sd), 0.8, "", "", ""), 100 + seed)


def test_without_error_every_figure_is_sure() -> None:
    # as finely as a job lays its straightedge: between nodes farther apart the floor itself is not known
    found = told(floor(HUMP, size=(4.2, 3.2), cell=0.04), NO_ERROR)
    gap = found.figures[0]
    assert (gap.estimate, *gap.interval) == pytest.approx((gap.seen,) * 3, abs=1e-4)
    assert (found.verdict, found.chance, found.provisional) == ("does not meet", 0.0, False)
    after = told(floor(HUMP, cell=0.08), NO_ERROR).after[0]
    # cut to the very gap: of the draws, a seventh of a millimetre about it, some keep to it; how many hangs
    # on the last digits of where the cut ends
    assert after.chance is not None and 0.0 < after.chance < 0.95 and after.interval[0] < 0.003 - 5e-5
    assert after.interval[1] <= 0.003 + 2e-4
    good = told(floor(cell=0.08), NO_ERROR)
    assert (good.verdict, good.chance) == ("meets", 1.0) and good.levelling.claim == "none"


def test_a_phone_cannot_tell_where_its_own_warp_is_as_large_as_the_gap() -> None:
    # a floor without any gap, seen through a phone's error: the scan alone shows five times what is allowed
    scanned = with_error(floor(cell=0.08), PHONE, 3)
    assert largest_gap(scanned.measured, 0.08, 2.0)(scanned.values) > 0.012
    found = told(scanned, PHONE)
    gap = found.figures[0]
    assert gap.seen < 0.006
    assert found.verdict == "cannot tell" and found.provisional
    assert gap.interval[0] < 0.003 < gap.interval[1] and 0.03 < found.chance < 0.97


def test_a_tripod_tells_a_high_spot_from_its_own_noise() -> None:
    truth = wavy(floor(HUMP, cell=0.08), 60.0, 0)
    asked = largest_gap(truth.measured, 0.08, 2.0)(truth.values)
    found = told(with_error(truth, TRIPOD, 5), TRIPOD)
    low, high = found.figures[0].interval
    assert found.verdict == "does not meet" and low <= asked <= high and high - low < 0.004
    (spot, *_) = found.levelling.high
    assert spot.xy == pytest.approx(HUMP[:2], abs=0.12)


def test_interval_holds_the_true_gap_on_many_floors() -> None:
    plain = floor((1.6, 1.3, 0.6, 0.006), size=(3.2, 2.6), cell=0.06)
    extreme = largest_gap(plain.measured, 0.06, 2.0)
    held, off = 0, []
    for seed in range(14):
        truth = wavy(plain, 60.0, seed)
        true = extreme(truth.values)
        drawn = draw_floor(judged_of(with_error(truth, TRIPOD, seed), TRIPOD, seed), 1, None, seed)
        said = spread_of(extreme, drawn.height.values, drawn)
        held += said.interval[0] <= true <= said.interval[1]
        off.append(said.estimate - true)
    assert held >= 12  # 95 % of 14 is 13; fewer than 12 come by chance less than once in 30
    assert abs(np.mean(off)) < 0.0003


def test_f_numbers_of_wavy_floors_hold_the_true_one_and_lie_about_it() -> None:
    """F_F 20, half length 0.8 m: what a tripod adds makes the scan's own figure too low, and what is narrower
    than the tiles it is judged by must not make the answer's too high."""
    flat = floor(size=(6.0, 4.2), cell=0.06, fall=0.0)
    lines = lay_lines(flat.frame, flat.measured)
    assert lines is not None
    of = lambda z: read(lines, flat.frame, z.reshape(flat.values.size, -1), (0.0, 0.0))  # noqa: E731
    held, off, scan_off = 0, [], []
    for seed in range(5):
        truth = wavy(flat, 20.0, seed)
        seen = with_error(truth, TRIPOD, seed)
        drawn = draw_floor(judged_of(seen, TRIPOD, seed), 1, None, seed)
        true = f_numbers(lines, of(truth.values)[:, 0]).ff
        said = Spread(of_draws(lines, of(drawn.height.values[..., None] - drawn.errors), FLAT))
        held += said.interval[0] <= true <= said.interval[1]
        off.append(said.estimate / true - 1)
        scan_off.append(f_numbers(lines, of(seen.values)[:, 0]).ff / true - 1)
    assert held >= 4 and abs(np.mean(off)) < 0.04  # 0.12 with tiles and nodes as coarse as a yard's
    assert np.mean(scan_off) < -0.04


@pytest.mark.parametrize(("error", "most"), [(TRIPOD, 0.0018), (PHONE, 0.025)])
def test_a_true_hump_and_a_step_stay_in_what_the_floor_may_be(error: ErrorModel, most: float) -> None:
    """5 mm over 0.4 m, and 3 mm, on a floor of F_F 60: the interval holds the gap under the straightedge."""
    plain = floor(size=(3.2, 2.4), cell=0.05)
    u, v = (plain.frame.node_xy()[..., k] for k in (0, 1))
    hump = 0.005 * np.cos(np.minimum(np.hypot(u - 1.52, v - 1.13) / 0.2, 1.0) * np.pi / 2) ** 2
    held, wide, seen = 0, [], []
    for real in (hump, 0.003 * (u > 1.71)):
        extreme = largest_gap(plain.measured, 0.05, 2.0)
        for seed in range(4):
            truth = wavy(plain.like(plain.values + real), 60.0, seed)
            true = extreme(truth.values)
            scanned = with_error(truth, error, seed)
            drawn = draw_floor(judged_of(scanned, error, seed), 1, None, seed)
            low, high = spread_of(extreme, drawn.height.values, drawn).interval
            held += low <= true <= high
            wide.append(high - low)
            seen.append(extreme(scanned.values) - true)
    assert held >= 6 and np.mean(wide) < most, (held, np.mean(wide))
    assert np.mean(seen) > 0.0003  # what the scans themselves show is larger


def test_an_exact_scan_of_a_floor_is_taken_for_one_whoever_is_named() -> None:
    """A phone's patches that the heights do not show are not there; what bends as a whole may still be."""
    found = told(floor(HUMP, cell=0.08), PHONE)
    true = largest_gap(floor(HUMP, cell=0.08).measured, 0.08, 2.0)(floor(HUMP, cell=0.08).values)
    gap = found.figures[0]
    assert gap.estimate == pytest.approx(true, abs=0.001)
    assert gap.interval[1] - gap.interval[0] < 0.004


def test_of_places_nearly_alike_the_largest_is_not_said_to_be_over() -> None:
    """Ten places as likely over as not: some place is over in nearly every draw, no one place is. And against
    a limit that one place is over for certain."""
    rng = np.random.default_rng(0)
    places = (0.003 + 0.0003 * rng.standard_normal((200, 10))).astype(np.float32)
    spread = Spread(places.max(axis=1), places)
    assert (spread.draws > 0.003).mean() > 0.99 and spread.over(0.003) < 0.65
    assert spread.interval[0] < 0.0027 < np.quantile(spread.draws, 0.025)
    assert spread.interval[1] == Spread(spread.draws).interval[1]
    places[:, 3] += 0.002
    assert Spread(places.max(axis=1), places).over(0.003) == 1.0
    # a figure without places is over as often as its draws are
    assert Spread(np.array([1.0, 2.0, 3.0, 4.0])).over(3.5) == 0.25


def test_the_low_end_holds_the_largest_of_gaps_nearly_alike() -> None:
    """Five places of 3 mm seen with 0.3 mm of error each, and drawn about what was seen: a draw's largest
    is above the truth more often than 2.5 % allow, by place it is not."""
    rng, low = np.random.default_rng(1), []
    for _ in range(400):
        seen = 0.003 + 0.0003 * rng.standard_normal(5)
        places = (seen + 0.0003 * rng.standard_normal((200, 5))).astype(np.float32)
        spread = Spread(places.max(axis=1), places)
        low.append((np.quantile(spread.draws, 0.025), spread.interval[0]))
    of_draws_, of_places = (np.array(low) > 0.003).mean(axis=0)
    assert of_draws_ > 0.3 and of_places < 0.15  # five places at 2.5 % each, at most


def test_a_figure_is_that_of_each_floor_drawn() -> None:
    """Against each floor laid out and measured by itself, and their median."""
    truth = floor(HUMP, cell=0.08)
    drawn = draw_floor(judged_of(with_error(truth, TRIPOD, 1), TRIPOD), 1, None, 0)
    extreme = largest_gap(truth.measured, 0.08, 2.0)
    said = spread_of(extreme, drawn.height.values, drawn)
    one = [extreme(drawn.height.values - drawn.errors[..., k]) for k in range(drawn.errors.shape[-1])]
    assert len(one) == 200 and np.array_equal(said.draws, one)
    assert said.places is not None and said.places.max(axis=1) == pytest.approx(one, rel=1e-6)
    assert sorted(one)[95] <= said.estimate <= sorted(one)[105]


def place(point: Point) -> tuple[float, float]:
    assert isinstance(point, PlanPoint)
    return point.x, point.y


def strings(surface: Surface, truth: HeightGrid, off: float = 0.0) -> Evidence | None:
    """Straightedges on blocks over the middle of a true floor, both ways, read to half a millimetre."""
    found = []
    for a, b in (
        ((1.5, 2.0), (3.5, 2.0)),
        ((2.5, 1.0), (2.5, 3.0)),
        ((1.52, 1.2), (3.52, 1.2)),
        ((1.52, 2.8), (3.52, 2.8)),
    ):
        ends, middle = truth.sample(np.array([a, b])), (np.array(a) + b) / 2
        down = 0.020 + float(ends.mean() - truth.sample(middle)) + off
        found.append(StringReading(PlanPoint(*a), PlanPoint(*b), 1.0, 0.020, down, 0.0005, 0.005))
    return gather_evidence(ByHand(strings=tuple(found)), surface, place)


def test_straightedge_readings_narrow_the_answer() -> None:
    truth = floor(cell=0.04)
    seen = judged_of(with_error(truth, PHONE, 3), PHONE)
    evidence = strings(seen, truth)
    bare, told_ = (draw_floor(seen, 1, e, 0) for e in (None, evidence))
    assert told_.told == 4 and not told_.contradictions
    bend = lambda z: z[50, 38] + z[50, 88] - 2 * z[50, 63]  # noqa: E731
    assert bend(told_.errors).std() < 0.45 * bend(bare.errors).std()
    # and move the floor towards what was read: there is no bend in it
    assert abs(bend(told_.height.values)) < 0.4 * abs(bend(bare.height.values)) + 0.0005


def test_a_level_takes_the_tilt_out() -> None:
    truth = floor(cell=0.04, fall=0.0)
    tilted = truth.like(truth.values + 0.002 * truth.frame.node_xy()[..., 0])
    seen = judged_of(tilted, TRIPOD)
    corners = ((0.4, 0.4), (4.6, 0.4), (4.6, 3.6), (0.4, 3.6), (2.5, 2.0))
    level = LevelReading(tuple((PlanPoint(*c), 1.2) for c in corners), 0.0005, 0.005)
    drawn = draw_floor(
        seen, 1, gather_evidence(ByHand(levels=(level,)), seen, place), 0, tilt=tilt_of("phone")
    )
    slope = np.polyfit(np.arange(126) * 0.04, np.nanmean(drawn.height.values, axis=0), 1)[0]
    assert abs(slope) < 0.0003
    # a straightedge laid on it shows as much as before: a tilt is no gap
    assert worst_gap(drawn.height.values, 0.04, 2.0) < worst_gap(tilted.values, 0.04, 2.0) + 0.001


def test_readings_that_do_not_agree_leave_the_answer_open() -> None:
    truth = floor(cell=0.08)
    seen = judged_of(truth, TRIPOD)
    found = judge_floor(seen, WISH, limits_of(seen), strings(seen, truth, off=0.012))
    assert found.contradictions and found.told == 0 and found.verdict == "cannot tell"


def test_f_numbers_asked_where_no_line_has_room_is_one_line() -> None:
    from crestcut.base.errors import CrestcutError

    surface = surface_of(floor(size=(3.0, 3.0), cell=0.04))
    with pytest.raises(CrestcutError, match="12 readings"):
        judge_floor(surface, FloorWish(ff=25.0), limits_of(surface))


def test_a_phone_cannot_tell_level_and_a_level_can() -> None:
    # its 'up' may lean by 5 mm in a metre; a level's five readings hold it
    truth = floor(cell=0.08, fall=0.0)
    seen = judged_of(truth, TRIPOD)
    wish = FloorWish(gap=0.004, reference="level")
    bare = judge_floor(seen, wish, limits_of(seen), tilt=tilt_of("phone"))
    corners = ((0.4, 0.4), (4.6, 0.4), (4.6, 3.6), (0.4, 3.6), (2.5, 2.0))
    level = LevelReading(tuple((PlanPoint(*c), 1.2) for c in corners), 0.0005, 0.005)
    held = judge_floor(
        seen,
        wish,
        limits_of(seen),
        gather_evidence(ByHand(levels=(level,)), seen, place),
        tilt=tilt_of("phone"),
    )
    assert bare.verdict == "cannot tell" and held.verdict == "meets" and held.told == 5
