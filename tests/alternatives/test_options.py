"""Cheaper than a cut: the table of what applies, what works and what a slab forbids."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from alternatives.options_scene import (
    CAR,
    LADEN,
    WANTED,
    benched,
    by_hand,
    same,
)
from crestcut.alternatives.fixes import strips
from crestcut.alternatives.options import line_words, options_table
from crestcut.alternatives.rows import OPTION_KINDS, Answer, Change, Estimator, Option, below
from crestcut.alternatives.trials import Baseline
from crestcut.chance.records import Chance, Left
from crestcut.cut.bay import bay_of, bay_words, why_a_new_bay
from crestcut.job.answers import Over
from crestcut.job.records import CutWish, Job, Keep, ScanChoice, Site, Slab, Travel, VehicleChoice
from crestcut.vehicle.records import AS_MEASURED
from crestcut.work.limit_texts import limit_lines
from crestcut.work.trade import trade_words
from scenes import ANSWERED, STRAIGHT, Scene, belly, crest, scene, stand


def chance(least: float, spread: float = 0.004) -> Chance:
    interval = (least - 1.96 * spread, least + 1.96 * spread)
    return Chance(least, interval, below(least, spread, 0.0), "cannot tell", "", spread, 1.0, 200)


def job_of(
    travel: Travel = STRAIGHT,
    site: Site | None = None,
    slab: Slab | None = None,
    keeps: tuple[Keep, ...] = (),
) -> Job:
    choices = ScanChoice((Path("a.laz"),)), VehicleChoice(Path("van.toml"))
    return Job(Path("job.toml"), "", *choices, travel, site=site or Site(), slab=slab or Slab(), keeps=keeps)


def table(
    s: Scene, b: Baseline, site: Site | None = None, slab: Slab | None = None, travel: Travel = STRAIGHT,
    keeps: tuple[Keep, ...] = (),
) -> tuple[Option, ...]:  # fmt: skip
    plan = s.plan(wanted=WANTED)
    assert plan.after.worst is not None
    today = chance(b.before.gap + 0.002)
    sure = Estimator(
        b.before.gap, today, chance(b.before.gap - 0.012, 0.005), chance(b.before.gap - 0.006, 0.0045),
        Left(chance(plan.after.worst.gap + 0.001, 0.003), chance(plan.after.worst.gap - 0.011, 0.004)),
        plan.after.worst.gap, 0.95,
    )  # fmt: skip
    return options_table([b], plan, [sure], job_of(travel, site, slab, keeps))


def test_the_table_holds_what_applies_and_puts_what_works_first() -> None:
    s = scene(crest(0.085), CAR, cell=0.02)
    loads = (AS_MEASURED, LADEN)
    rows = table(s, benched(s, loads=loads), Site(ground="public"), Slab(thickness=0.02))
    kinds = [r.kind for r in rows]
    assert {"as it is", "less load", "slower", "more pressure", "strips", "cut", "new bay"} <= set(kinds)
    assert "fillet" not in kinds and "keep to the line" not in kinds  # a crest, and a job without wander
    order = [(not r.works, OPTION_KINDS.index(r.kind)) for r in rows]
    assert order == sorted(order)
    by = {r.kind: r for r in rows}
    assert by["strips"].works and by["strips"].volume < 0 < by["cut"].volume
    assert not by["as it is"].works and by["as it is"].clearance == pytest.approx(
        by["as it is"].swept + 0.002
    )
    # on top of the swept gap every row gets what the readings and the bias moved the job's own by
    assert by["strips"].clearance - by["strips"].swept == pytest.approx(0.002)
    assert by["cut"].clearance - by["cut"].swept == pytest.approx(0.001)
    assert by["slower"].in_use > by["as it is"].in_use and by["slower"].clearance == by["as it is"].clearance
    assert by["strips"].enough >= 0.95 and by["strips"].chance < by["as it is"].chance
    assert "public" in by["new bay"].needs and "sixth" in by["new bay"].needs


KNOWN = replace(ANSWERED, thickness=0.02)  # thin: a new bay is priced too


HEATED = replace(KNOWN, heating="located", heating_from="thermal camera")


OVER_PIPES = Keep("pipes", (), 0.0, Over.HEATING)


@pytest.mark.parametrize(
    ("slab", "keeps", "whom"),
    [
        (replace(KNOWN, post_tensioned="yes"), (), "structural engineer"),
        (replace(KNOWN, kind="post-tensioned"), (), "structural engineer"),
        (replace(KNOWN, suspended="yes"), (), "structural engineer"),
        (replace(KNOWN, kind="suspended"), (), "structural engineer"),
        (replace(KNOWN, kind="precast"), (), "structural engineer"),
        (replace(KNOWN, heating="not located"), (), "thermal camera"),
        (replace(KNOWN, conduit="not located"), (), "locating service"),
        (HEATED, (), "thermal camera"),  # found, but the plan does not know where
        (HEATED, (OVER_PIPES,), ""),
        (KNOWN, (), ""),
    ],
)
def test_nothing_is_offered_that_is_cut_drilled_or_fixed_into_a_slab_that_forbids_it(
    slab: Slab, keeps: tuple[Keep, ...], whom: str
) -> None:
    s = scene(crest(0.09), cell=0.02)
    rows = table(s, benched(s), Site(ground="private"), slab, keeps=keeps)
    into = [r for r in rows if r.kind in ("strips", "cut", "cut and strips", "new bay")]
    assert {"strips", "cut", "cut and strips", "new bay"} == {r.kind for r in into}
    for row in into:
        if whom:
            assert not row.works and row.forbids and row.needs.startswith("not on this slab")
            assert whom in row.needs
        else:
            assert row.works and not row.forbids and row.needs.endswith("see the release")
    others = [r for r in rows if r not in into]
    assert others and not any(r.forbids for r in others)
    order = [(not r.works, OPTION_KINDS.index(r.kind)) for r in rows]
    assert order == sorted(order)


@pytest.mark.parametrize("slab", [Slab(thickness=0.02), replace(KNOWN, heating_from="guess")])
def test_what_goes_into_a_slab_nobody_knows_waits_for_the_answers(slab: Slab) -> None:
    s = scene(crest(0.085), CAR, cell=0.02)
    rows = table(s, benched(s), Site(ground="private"), slab)
    into = [r for r in rows if r.kind in ("strips", "cut", "cut and strips", "new bay")]
    assert len(into) >= 3 and all("not before the release's questions are answered" in r.needs for r in into)


def test_the_steel_is_named_where_it_is_what_stops_the_cut() -> None:
    """By what sets the limit, not by a word in its name: a 'covered steel gutter' that is kept is none."""
    s = scene(crest(0.085), cell=0.02)
    whole = s.plan(wanted=WANTED)
    near = replace(KNOWN, thickness=None, steel_depth=0.020 + whole.deepest / 2)
    short = s.plan(deepest=whole.deepest / 2, wanted=WANTED)
    assert "the steel is too near" in why_a_new_bay(short, Site(), near)
    deep = replace(near, steel_depth=0.2)
    assert "the steel is too near" not in why_a_new_bay(short, Site(), deep)
    kept = replace(short, binding=("keep area (covered steel gutter)",))
    assert "the steel is too near" not in why_a_new_bay(kept, Site(), near)


def test_works_says_whether_for_walking_pace_alone_or_in_use_too() -> None:
    """The cut's figures in use are those of the draws behind it, not today's moved along with the gap."""
    s = scene(crest(0.085), CAR, cell=0.02)
    plan = s.plan(wanted=WANTED)
    gap = plan.after.worst.gap if plan.after.worst is not None else math.nan
    b = benched(s)

    def cut(in_use: float) -> Option:
        left = Left(chance(gap + 0.001, 0.003), chance(in_use, 0.004))
        now = (chance(b.before.gap), chance(b.before.gap - 0.012, 0.005), chance(b.before.gap - 0.006))
        rows = options_table([b], plan, [Estimator(b.before.gap, *now, left, gap, 0.95)], job_of())
        return next(r for r in rows if r.kind == "cut")

    tight, roomy = cut(0.002), cut(0.012)
    assert tight.works and not tight.works_in_use and tight.answer is Answer.WALKING_PACE
    assert tight.in_use == pytest.approx(0.002) and tight.in_use_chance == pytest.approx(
        below(0.002, 0.004, 0.0)
    )
    assert roomy.answer is Answer.BOTH and roomy.in_use_chance < 0.05
    assert replace(roomy, works=False).answer is Answer.NO


def test_where_it_clears_with_enough_to_spare_nothing_is_tried() -> None:
    s = scene(crest(0.03), CAR, cell=0.02)
    assert [r.kind for r in table(s, benched(s))] == ["as it is"]


def test_stop_rules_bite_where_they_should_and_the_bay_holds_the_cut() -> None:
    s = scene(crest(0.085), cell=0.02)
    plan = s.plan(wanted=WANTED)
    assert why_a_new_bay(plan, Site(ground="private"), Slab(thickness=0.5)) == ()
    assert "sixth" in why_a_new_bay(plan, Site(), Slab(thickness=plan.deepest * 5))[0]
    assert "public" in why_a_new_bay(plan, Site(ground="public"), Slab())[0]
    short = s.plan(deepest=plan.deepest / 2, wanted=WANTED)
    assert "no cut within the limits" in why_a_new_bay(short, Site(), Slab())[0]
    rows = table(s, benched(s), Site(ground="public"), Slab(thickness=0.12))
    bay = next(r for r in rows if r.kind == "new bay")
    j, i = np.nonzero(np.nan_to_num(plan.depth.values) > 0)
    long, wide = (
        math.ceil((np.ptp(k) * 0.02 + 0.02) * 10 - 1e-6) / 10 for k in (i, j)
    )  # to whole decimetres
    area = long * wide
    assert bay.volume == pytest.approx(area * 0.12)
    assert f"{area * 0.12 * 2.4:.1f} t" in bay.needs  # 2,400 kg/m3


def test_the_bay_is_one_answer_and_its_figures_multiply_as_they_are_printed() -> None:
    s = scene(crest(0.085), cell=0.02)
    plan, slab, public = s.plan(wanted=WANTED), Slab(thickness=0.12), Site(ground="public")
    found = bay_of(plan, slab)
    assert found is not None
    said = bay_words(found)
    row = next(r for r in table(s, benched(s), public, slab) if r.kind == "new bay")
    job = replace(job_of(STRAIGHT, public, slab), cut=CutWish(0.025))
    sheet = limit_lines(job, plan, (), trade_words("GB"))
    line = next(line for line in sheet if line.startswith("Price replacing"))
    assert said in row.needs and said in line
    for reason in why_a_new_bay(plan, public, slab):
        assert reason in row.needs and reason in line
    told = re.match(r"([\d.]+) x ([\d.]+) m = ([\d.]+) m2, ([\d.]+) m3", said)
    assert told is not None
    long, wide, area, volume = (float(v) for v in told.groups())
    assert round(long * wide, 2) == area and round(area * 0.12, 2) == volume


def test_a_chance_is_that_of_a_normal_error() -> None:
    assert below(0.0, 0.004, 0.0) == pytest.approx(0.5)
    assert below(0.004 * 1.6449, 0.004, 0.0) == pytest.approx(0.05, abs=1e-4)
    assert below(0.01, 0.0, 0.0) == 0.0 and below(-0.01, 0.0, 0.0) == 1.0


def test_lines_are_told_in_words() -> None:
    assert line_words((0.3, 0.3)) == "move the line 0.30 m to the left"
    assert line_words((-0.3, 0.0)) == "move its start 0.30 m to the right"
    assert line_words((0.15, -0.45)) == "move its start 0.15 m to the left, its end 0.45 m to the right"


def test_with_two_vehicles_every_row_must_do_for_both() -> None:
    """A low car and a higher one over the same crest: strips are sought for both, and swept under both."""
    s = scene(crest(0.085), cell=0.02)
    low = benched(s)
    long = replace(s.vehicle, name="long", parts=(belly(0.13),))
    other = stand(long, STRAIGHT, s.line, s.surface)
    high = benched(other)
    both = strips([low, high])
    alone = strips([low])
    assert both is not None and alone is not None and both.size >= alone.size
    same(both.tried[0], by_hand(s, both.added))
    same(both.tried[1], by_hand(other, both.added))
    assert min(t.excess for t in both.tried) >= 0
    plan = s.plan(wanted=WANTED)
    assert plan.after.worst is not None
    estimators = [
        Estimator(x.before.gap, chance(x.before.gap + d), chance(x.before.gap), chance(x.before.gap),
             Left(*(chance(plan.after.worst.gap),) * 2), plan.after.worst.gap, 0.95)
        for x, d in ((low, 0.002), (high, -0.001))
    ]  # fmt: skip
    rows = options_table([low, high], plan, estimators, job_of(), after=[plan.after, high.clearance])
    first = next(r for r in rows if r.kind == "as it is")
    assert first.clearance == pytest.approx(min(low.before.gap + 0.002, high.before.gap - 0.001))
    assert first.chance == pytest.approx(max(u.today.chance_of_contact for u in estimators))
    laid = next(r for r in rows if r.kind == "strips")
    assert laid.works and laid.enough >= 0.95


def test_an_option_works_only_if_it_does_for_every_vehicle() -> None:
    s = scene(crest(0.03), cell=0.02)
    low = replace(s.vehicle, name="low", parts=(belly(0.04),))
    benches = [benched(s), benched(stand(low, STRAIGHT, s.line, s.surface))]
    plan = s.plan(wanted=WANTED)
    assert plan.after.worst is not None
    left, cut = Left(*(chance(benches[0].before.gap),) * 2), plan.after.worst.gap
    estimators = [Estimator(b.before.gap, *(chance(b.before.gap),) * 3, left, cut, 0.95) for b in benches]
    rows = options_table(benches, plan, estimators, job_of(), after=[b.clearance for b in benches])
    as_it_is = next(r for r in rows if r.kind == "as it is")
    assert estimators[0].row(Change("as it is", "", ""), benches[0].before).works and not as_it_is.works
    assert len(rows) > 1 and as_it_is.clearance == pytest.approx(benches[1].before.gap)
