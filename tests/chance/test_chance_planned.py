"""The margin of a cut and what it leaves: exact without errors, honest with them, judged on the true slab."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.assess import chance_of_plan
from crestcut.chance.planned import CutDraws, draw_cut, margin_for
from crestcut.chance.records import Chance
from crestcut.chance.witness import witness_evidence
from crestcut.cut.plan import cut_surface, plan_cut
from crestcut.cut.records import CutPlan
from crestcut.job.records import PlanPoint, Wanted, Witness
from crestcut.terrain.records import ErrorModel
from crestcut.vehicle.records import AS_MEASURED
from scenes import STRAIGHT, Scene, belly, crest, scene, stand, vehicle
from simulated import judged_from

PHONE = ErrorModel(0.006, 0.0013, 0.1, 0.0043, 0.35, "residuals", "two repeats", "two repeats")
SURE = ErrorModel(0.0, 0.0, 0.1, 0.0, 0.35, "none", "none", "none")


@pytest.fixture(scope="module")
def stood() -> Scene:
    car = vehicle(replace(belly(), within=0.002))
    return scene(crest(0.11), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)


def drawn(s: Scene, error: ErrorModel, draws: int = 100) -> CutDraws:
    cut = draw_cut(s.under(error), Wanted(), draws=draws)
    assert cut is not None
    return cut


def test_without_errors_no_margin_and_nothing_but_the_plan(stood: Scene) -> None:
    surface = replace(
        stood.surface, standard_error=stood.surface.height.like(np.zeros(stood.surface.height.frame.shape))
    )
    exact = replace(stood, vehicle=vehicle(replace(belly(), within=0.0)), surface=surface)
    cut = drawn(exact, SURE)
    assert margin_for(cut, Wanted()) == 0.0
    assert cut.outcome(0.005) == pytest.approx(np.zeros(100), abs=1e-6)


def test_what_is_lacking_is_what_the_sweep_lacks(stood: Scene) -> None:
    assert stood.before.worst is not None
    most = float(drawn(stood, PHONE).scanned.max())
    assert most == pytest.approx(Wanted().want - stood.before.worst.gap, abs=1e-6)


def test_a_gap_felt_narrows_what_is_lacking() -> None:
    """A gap hangs on slab and part together: draws that say what was felt err in one or in the other, and not
    in both one way, which would leave a cut less sure than before."""
    felt = Witness("belly", PlanPoint(1.4, 0.0), "as measured", gap=0.012)
    place = lambda point: (point.x, point.y)  # noqa: E731
    car = vehicle(replace(belly(half=0.25), within=0.006))
    s = scene(crest(0.08), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
    evidence = witness_evidence([felt], car, s.surface, s.line, (AS_MEASURED,), place)
    plain, told = (draw_cut(s.under(PHONE), Wanted(), draws=100, evidence=e) for e in (None, evidence))
    assert plain is not None and told is not None
    spread = [float(cut.drawn.max(axis=0).std()) for cut in (plain, told)]
    assert spread[1] < 0.6 * spread[0], spread


def test_margin_grows_with_confidence_and_with_error(stood: Scene) -> None:
    cut = drawn(stood, PHONE)
    low, high = (margin_for(cut, Wanted(confidence=c)) for c in (0.8, 0.95))
    assert 0 < low < high
    assert margin_for(drawn(stood, replace(PHONE, warp=0.002)), Wanted()) < high


def test_a_cut_over_many_places_leaves_less_than_it_promises(stood: Scene) -> None:
    """The least of many gaps that are all as planned is below the plan: the mean of the least of n normals
    is."""
    outcome = drawn(stood, PHONE).outcome(0.010)
    assert outcome.mean() < -PHONE.warp / 2


def test_no_cut_allowed_none_made(stood: Scene) -> None:
    cut = drawn(stood, PHONE)
    limits = np.zeros(len(cut.xy))
    left = cut.outcome(0.010, limits)
    assert left == pytest.approx(cut.scanned.max() - cut.drawn.max(axis=0), abs=1e-6)


def test_a_plan_that_kept_its_margin_is_as_sure_as_that_was_solved_for(stood: Scene) -> None:
    """Limits a little below the cut hold nothing back: they must not make the same plan less sure."""
    cut, wanted = drawn(stood, PHONE), Wanted()
    margin = margin_for(cut, wanted)

    def planned(deepest: float) -> tuple[CutPlan, Chance]:
        limits = stood.limits(deepest=deepest)
        plan = plan_cut(stood.passage, limits, wanted, margin, 0.25)
        return plan, chance_of_plan(
            cut, replace(stood.under(PHONE), clearance=plan.after), margin, limits.deepest, wanted
        )

    free, _ = planned(0.2)
    for spare in (0.0005, 0.004):
        near, said = planned(free.deepest + spare)
        assert near.feasible and near.deepest == pytest.approx(free.deepest, abs=1e-6)
        assert 0.95 - 1e-9 <= said.chance_of_want < 0.951
    short, less = planned(free.deepest / 2)
    assert not short.feasible and less.chance_of_want < 0.9


def test_use_takes_its_allowances_off_what_the_cut_leaves(stood: Scene) -> None:
    cut, wanted = drawn(stood, PHONE, 2000), Wanted()
    margin, limits = margin_for(cut, wanted), stood.limits(deepest=0.2)
    plan = plan_cut(stood.passage, limits, wanted, margin, 0.25)
    use = (("bounce", 0.009, ""), ("wear", 0.006, ""))
    walking, used = (
        chance_of_plan(
            cut, replace(stood.under(PHONE), clearance=plan.after), margin, limits.deepest, wanted, taken
        )
        for taken in ((), use)
    )
    # each takes anything from none to all of it, equally likely: half of it on average, a twelfth of its
    # square as variance
    assert walking.least_clearance - used.least_clearance == pytest.approx(0.0075, abs=0.0003)
    grown = used.spread**2 - walking.spread**2
    assert grown == pytest.approx((0.009**2 + 0.006**2) / 12, rel=0.15)
    assert used.chance_of_contact > walking.chance_of_contact
    assert used.chance_of_want == walking.chance_of_want  # what was asked for is asked at walking pace
    # use is not the scan's doing: its share of the variance falls
    scans = [c.scan_share * c.spread**2 for c in (walking, used)]
    assert scans[1] == pytest.approx(scans[0], rel=0.15)


def test_plans_from_noisy_scans_reach_what_was_asked_on_the_true_slab() -> None:
    """24 whole cuts at 95 %: fewer than 19 reached has a chance of 1 in 1,000 if the promise is kept
    (binomial), and the true least gap lies in the 95 % interval of what was said in no fewer."""
    wanted, reached, held, left = Wanted(), 0, 0, []
    for seed in range(24):
        rng = np.random.default_rng(seed)
        car = vehicle(replace(belly(half=0.4), within=0.002))
        angle = rng.uniform(0, 0.3)
        true = scene(crest(0.11, angle), car=car, start=(-3.2, 0), end=(3.2, 0), cell=0.02)
        surface = judged_from(true, seed, PHONE, 0.11, angle)
        noisy = stand(car, STRAIGHT, true.line, surface)
        cut = drawn(noisy, surface.error, 200)
        margin = margin_for(cut, wanted)
        limits = noisy.limits(deepest=0.2)
        plan = plan_cut(noisy.passage, limits, wanted, margin, 0.25)
        said = chance_of_plan(
            cut, replace(noisy.passage, clearance=plan.after), margin, limits.deepest, wanted
        )
        assert said.chance_of_want == pytest.approx(0.95, abs=0.02)
        cut_slab = cut_surface(true.surface, np.nan_to_num(plan.depth.values))
        after = stand(car, STRAIGHT, true.line, cut_slab).before
        assert after.worst is not None
        gap = after.worst.gap + rng.normal(0.0, 0.002)
        reached += gap >= wanted.want
        held += said.interval[0] <= gap <= said.interval[1]
        left.append((gap - said.least_clearance) / said.spread)
    assert reached >= 19 and held >= 19
    assert abs(np.mean(left)) < 0.85
