"""What a touch, a clear or a reading is worth, by brute force; boards on which nothing touches on the way;
what a second walk would tell."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
import numpy as np
import pytest

from crestcut.chance.witness import witness_evidence
from crestcut.contact.stand.ride import wheel_feet
from crestcut.job.records import PlanPoint, Witness
from crestcut.measure_next.advice import KINDS, measure_first
from crestcut.measure_next.boards import BEYOND, SURE, Boards, plan_boards
from crestcut.measure_next.draws import READ, Readings, Stand, draw_readings, walk_narrows
from crestcut.measure_next.touch import CARD, noise_alike, worth_of
from crestcut.terrain.error.covariance import of_scan
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.records import AS_MEASURED, Vehicle
from scenes import STRAIGHT, TRACK, TYRE, Scene, belly, crest, scene, stand, vehicle

WARP = ErrorModel(0.006, 0.0013, 0.1, 0.005, 0.5, "", "", "")
SURE_SCAN = replace(WARP, warp=1e-7, patch=1e-7)
TIMBER = (0.009, 0.012, 0.018, 0.027, 0.044)


@pytest.mark.parametrize("middle", [-0.002, 0.003, 0.02])
def test_each_outcome_is_worth_what_bayes_rule_makes_of_it(middle: float) -> None:
    """Against draws weighted by the likelihood of each simulated outcome: given a touch the posterior is that
    of all draws that touch, given a reading that of draws which would read so."""
    rng = np.random.default_rng(4)
    gap = rng.normal(middle, 0.005, 40_000)
    least = 0.8 * gap + rng.normal(0.0, 0.002, len(gap))
    worth = worth_of(least, gap, READ)
    left = []
    for g in rng.choice(gap, 300):
        read = g + rng.normal(0.0, READ)
        weight = (gap <= 0) * 1.0 if g <= 0 else (gap > 0) * np.exp(-((gap - read) ** 2) / (2 * READ**2))
        mean = np.average(least, weights=weight)
        left.append(np.average((least - mean) ** 2, weights=weight))
    brute = float(np.sqrt(least.var() / np.mean(left)))
    assert worth.narrows == pytest.approx(brute, rel=0.08)
    assert worth.touch == pytest.approx(float((gap <= 0).mean()))
    clear = least[gap >= CARD]
    assert worth.given_clear == pytest.approx(least.std() / clear.std())


def test_a_touch_is_not_a_reading() -> None:
    """Where it touches almost surely, what a number would tell must not be promised."""
    rng = np.random.default_rng(1)
    gap = rng.normal(-0.010, 0.005, 4000)
    least = gap + rng.normal(0.0, 0.001, 4000)
    assert worth_of(least, gap, READ).narrows < 1.2
    assert least.std() / np.sqrt(0.001**2 + READ**2) > 3.4  # as a number it would be worth this
    nothing = worth_of(least, gap - 1.0, READ)
    assert nothing.touch == 1.0 and np.isnan(nothing.given_reading) and nothing.narrows == pytest.approx(1.0)


def test_the_noise_alike_gives_the_narrowing_it_stands_for() -> None:
    rng = np.random.default_rng(2)
    gap = rng.normal(0.0, 0.004, 2000)
    least = gap + rng.normal(0.0, 0.001, 2000)
    noise = noise_alike(least, gap, 1.7)
    rest = least.var() - np.cov(least, gap, bias=True)[0, 1] ** 2 / (gap.var() + noise)
    assert np.sqrt(least.var() / rest) == pytest.approx(1.7, rel=1e-6)


def readings(s: Scene, error: ErrorModel = WARP) -> Readings:
    found = draw_readings(s.under(error), [])
    assert found is not None
    return found


def hung(height: float = 0.12, within: float = 1e-6) -> Scene:
    """A belly over a crest: 2 mm of overlap at 0.12 m of clearance."""
    car = vehicle(replace(belly(height, half=0.5), within=within))
    return scene(crest(0.089), car=car, start=(-5.0, 0), end=(5.0, 0), cell=0.02)


def on_painted(s: Scene, at: Stand, boards: Boards) -> float:
    """Least gap of the drive up to the stand with the boards painted on the slab itself, stood and swept."""
    frame = s.surface.height.frame
    feet = frame.to_site(wheel_feet(s.vehicle, at.place[None])[0])
    xy = frame.node_xy()
    z = s.surface.height.values.copy()
    for x, y in feet:
        along, aside = xy[..., 0] - x, xy[..., 1] - y
        low, high = (boards.beyond, boards.before) if boards.backwards else (boards.before, boards.beyond)
        z[(along > -low) & (along < high) & (np.abs(aside) < TYRE / 2)] += boards.thickness
    height = s.surface.height.like(z)
    painted = stand(s.vehicle, STRAIGHT, s.line, replace(s.surface, height=height, top=height))
    places = painted.ride.batch.places
    travel = (places[:, 0] - at.place[0]) * (-1 if boards.backwards else 1)
    assert painted.before.pair_gap is not None
    return float(painted.before.pair_gap[travel < 1e-6].min())


def test_nothing_touches_on_the_boards_nor_on_the_way_and_thinner_ones_would() -> None:
    """Settled and swept anew on a slab with the boards painted on, at every station."""
    s = hung(0.11)
    at = readings(s, SURE_SCAN).stands[0]
    boards = plan_boards(s.under(SURE_SCAN), at, TIMBER)
    assert boards is not None and boards.clear >= SURE
    assert on_painted(s, at, boards) > 0
    thinner = TIMBER[TIMBER.index(boards.thickness) - 1]
    assert on_painted(s, at, replace(boards, thickness=thinner)) < 0
    assert plan_boards(s.under(SURE_SCAN), at, (thinner,)) is None


def test_boards_too_short_for_the_way_are_not_taken() -> None:
    """The stations just before the stand touch too: the boards reach back to where nothing does."""
    s = hung(0.105)
    at = readings(s, SURE_SCAN).stands[0]
    boards = plan_boards(s.under(SURE_SCAN), at, TIMBER)
    assert boards is not None and boards.before > 0.35
    assert on_painted(s, at, boards) > 0 > on_painted(s, at, replace(boards, before=0.35))


def test_a_poorer_scan_wants_thicker_boards() -> None:
    s = hung(0.118, within=0.003)
    at = readings(s).stands[0]
    thick = [plan_boards(s.under(e), at, TIMBER) for e in (SURE_SCAN, WARP)]
    assert thick[0] is not None and thick[1] is not None
    assert thick[1].thickness > thick[0].thickness


@pytest.mark.parametrize("what", ["steep", "ridges under the tyres", "no timber"])
def test_where_no_boards_serve_a_string_is_asked_for(what: str) -> None:
    ground = crest(0.089)
    if what == "steep":
        ground = lambda x, y: crest(0.089)(x, y) + 0.27 * x  # noqa: E731
    if what == "ridges under the tyres":
        # each a fold of 1:2, and none under the belly
        ground = lambda x, y: crest(0.089)(x, y) + (np.abs(y) > 0.55) * ridges(x)  # noqa: E731
    car = vehicle(replace(belly(0.118, half=0.5), within=0.003))
    s = scene(ground, car=car, start=(-5.0, 0), end=(5.0, 0), cell=0.02)
    sizes = () if what == "no timber" else TIMBER
    at = readings(s).stands[0]
    assert plan_boards(s.under(WARP), at, sizes) is None
    asked = measure_first(s.under(WARP), sizes=sizes)
    assert asked and all(a.kind == "string" or (a.worth and a.worth.touch <= 0.02) for a in asked)


def ridges(x: np.ndarray) -> np.ndarray:
    """One every 0.5 m, 60 mm high, tops at zero."""
    return -0.25 * np.abs((x + 0.25) % 0.5 - 0.25)


def test_a_touch_is_counted_on_only_where_nothing_else_can_be_had() -> None:
    s = hung(0.117, within=0.002)  # at 0.116 it touches in so many draws that a touch tells nothing
    (first, *_) = measure_first(s.under(WARP), kinds=("felt gap",))
    assert first.boards is None and first.worth is not None and first.worth.touch > 0.5
    assert first.narrows == pytest.approx(first.worth.narrows, rel=0.01)
    (first, *_) = measure_first(s.under(WARP), kinds=("felt gap",), sizes=TIMBER)
    assert first.boards is not None and first.worth is not None
    assert first.narrows > 1.5 * first.worth.narrows
    assert first.expect > 0.0


def test_a_gap_that_is_surely_there_needs_no_boards() -> None:
    s = hung(0.15, within=0.002)
    (first, *_) = measure_first(s.under(WARP), kinds=("felt gap",), sizes=TIMBER)
    assert first.boards is None and first.worth is not None and first.worth.touch == 0.0


def test_a_second_walk_of_one_gap_is_the_closed_form() -> None:
    """One stand, the least its gap, the scan's covariance known: half of the variance that the slab makes is
    left, since the second error is as large as the first and independent."""
    s = hung(0.12)
    drawn = readings(s)
    at, frame = drawn.stands[0], s.surface.height.frame
    points = np.vstack([frame.to_site(wheel_feet(s.vehicle, at.place[None])[0]), at.at])
    weights = np.append(at.weights, -1.0)
    sd = float(np.sqrt(weights @ of_scan(WARP, points, points) @ weights))
    gap = np.random.default_rng(0).normal(0.0, sd, (1, 200_000))
    one = replace(drawn, least=gap[0], stands=(at,), gaps=gap, any=gap, bare=gap)
    assert walk_narrows(one, s.under(WARP)) == pytest.approx(np.sqrt(2), rel=0.01)


def test_a_walk_is_offered_only_if_asked_for_and_worth_it() -> None:
    s = hung(0.12, within=0.0005)
    walks = [a for a in measure_first(s.under(WARP), kinds=(*KINDS, "walk")) if a.kind == "walk"]
    assert len(walks) == 1 and walks[0].narrows > 1.1 and walks[0].where == ()
    assert "other way round" in walks[0].how
    assert not [a for a in measure_first(s.under(WARP)) if a.kind == "walk"]
    poor = replace(s, vehicle=known_poorly(s.vehicle))
    assert not [a for a in measure_first(poor.under(SURE_SCAN), kinds=("walk",)) if a.kind == "walk"]


def known_poorly(car: Vehicle) -> Vehicle:
    return replace(car, parts=tuple(replace(p, within=0.004) for p in car.parts))


def test_boards_hold_tyre_and_chock() -> None:
    assert BEYOND >= 0.15 + 0.15 and TRACK > 2 * TYRE  # half a contact, and a chock's length


def test_where_the_vehicle_stands_is_no_better_known_than_a_witness_takes_it(witnessed: Scene) -> None:
    """The variance that the place adds, against the placings that a witness tries for itself."""
    at = readings(witnessed).stands[0]
    front = witnessed.surface.height.frame.to_site(wheel_feet(witnessed.vehicle, at.place[None])[0])[:2]
    said = Witness("belly", PlanPoint(*map(float, front.mean(axis=0))), "as measured", gap=0.01)
    found = witness_evidence(
        [said], witnessed.vehicle, witnessed.surface, witnessed.line, (AS_MEASURED,),
        lambda p: (p.x, p.y),  # type: ignore[union-attr]
    )  # fmt: skip
    assert found is not None
    placed = float(found.noise[0, 0]) - said.within**2
    assert at.off == pytest.approx(placed, rel=0.5) and at.off > 1e-8


@pytest.fixture(scope="module")
def witnessed() -> Scene:
    """A crest that is steeper to the left, so that the gap goes with the place across."""
    car = vehicle(replace(belly(0.118, half=0.5), within=0.003))
    travel = replace(STRAIGHT, wander=0.1)
    ground = lambda x, y: -(0.089 + 0.04 * y) * np.abs(x)  # noqa: E731
    return scene(ground, car=car, travel=travel, start=(-5.0, 0), end=(5.0, 0), cell=0.02)
