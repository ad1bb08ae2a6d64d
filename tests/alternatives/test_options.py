"""Cheaper than a cut: every figure of the table is that of the thing done by hand and swept in full."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from crestcut.alternatives.combined import cut_and_strips
from crestcut.alternatives.driving import kept_to, less_load, more_pressure, other_line, pumped_up
from crestcut.alternatives.fixes import STRIPS, Added, fillet, lay_strips, strip_taper, strips, under_tyres
from crestcut.alternatives.options import line_words, options_table
from crestcut.alternatives.rows import OPTION_KINDS, Answer, Change, Estimator, Option, below
from crestcut.alternatives.trials import Baseline, bench
from crestcut.base.grid import FloatArray
from crestcut.chance.records import Chance, Left
from crestcut.contact.clearance.sweep import sweep, wanted_gap
from crestcut.contact.path.line import travel_line
from crestcut.contact.records import Clearance
from crestcut.contact.stand.ride import ride
from crestcut.cut.bay import bay_of, bay_words, why_a_new_bay
from crestcut.job.answers import Over
from crestcut.job.records import CutWish, Job, Keep, ScanChoice, Site, Slab, Travel, VehicleChoice, Wanted
from crestcut.terrain.records import Surface
from crestcut.vehicle.records import AS_MEASURED, LoadState, Vehicle
from crestcut.work.limit_texts import limit_lines
from crestcut.work.trade import trade_words
from scenes import ANSWERED, STRAIGHT, Ground, Scene, belly, crest, lip, scene, stand, vehicle

WANTED = Wanted(want=0.01, want_ends=0.02)
WANDERING = Travel(line=(), wander=0.15, heading=math.radians(2), ways=("forward", "turned"))
LADEN = LoadState("laden", -0.010, -0.020)
CAR = vehicle(belly(), lip(0.2), loads=(AS_MEASURED, LADEN))


def uneven(seed: int) -> Ground:
    """A crest turned a little, with humps and hollows of a few millimetres."""
    rng = np.random.default_rng(seed)
    waves = rng.uniform(0.4, 2.0, (6, 2)) * rng.choice([-1, 1], (6, 2)) * 2
    phase, size = rng.uniform(0, 6.28, 6), rng.uniform(0.0005, 0.002, 6)
    ridge = crest(rng.uniform(0.08, 0.095), rng.uniform(-0.3, 0.3))

    def ground(x: FloatArray, y: FloatArray) -> FloatArray:
        rough = sum(a * np.sin(k * x + m * y + p) for (k, m), p, a in zip(waves, phase, size, strict=True))
        return ridge(x, y) + rough

    return ground


def benched(
    s: Scene, travel: Travel = STRAIGHT, loads: tuple[LoadState, ...] = (AS_MEASURED,), **more: object
) -> Baseline:
    rode = ride(s.vehicle, s.surface, s.line, travel, loads)
    swept = sweep(s.vehicle, s.surface, rode)
    return bench(s.vehicle, s.surface, rode, swept, WANTED, loads, **more)  # type: ignore[arg-type]


def wide(seed: int, car: Vehicle = CAR, cell: float = 0.02) -> Scene:
    """A window wide enough for other lines."""
    s = scene(uneven(seed), car, replace(STRAIGHT, wander=0.9), cell=cell)
    return stand(car, STRAIGHT, s.line, s.surface)


def excess(found: Clearance) -> float:
    gaps = wanted_gap(WANTED.want, WANTED.want_ends)
    return min(c.gap - gaps[zone] for zone, c in found.least.items())


def by_hand(s: Scene, added: FloatArray | float = 0.0, car: Vehicle | None = None, travel: Travel = STRAIGHT,
            loads: tuple[LoadState, ...] = (AS_MEASURED,), ends: object = None) -> Clearance:  # fmt: skip
    """The whole ride and sweep once more, with the thing done: nothing is left out, nothing thinned."""
    car = car or s.vehicle
    surface: Surface = replace(
        s.surface, height=s.surface.height.like(s.surface.height.values + added),
        top=s.surface.top.like(s.surface.top.values + added),
    )  # fmt: skip
    line = s.line if ends is None else travel_line(ends, car, travel, s.line.step)  # type: ignore[arg-type]
    return sweep(car, surface, ride(car, surface, line, travel, loads))


def same(tried: object, swept: Clearance, within: float = 1e-9) -> None:
    assert swept.worst is not None
    assert tried.gap == pytest.approx(swept.worst.gap, abs=within)  # type: ignore[attr-defined]
    assert tried.excess == pytest.approx(excess(swept), abs=within)  # type: ignore[attr-defined]


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


def test_crumbs_are_no_pieces() -> None:
    added = np.zeros((40, 60))
    added[5:15, 10:40] = 0.02
    added[30, 30] = 0.02
    assert Added("strips", 0.02, added, 0.02, None).pieces == ((0.6, 0.2),)  # type: ignore[arg-type]


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
