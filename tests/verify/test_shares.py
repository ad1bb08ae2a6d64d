"""What readings by hand say of the finished work, against closed forms: normals and bounds."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from scipy import stats

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray, GridFrame, HeightGrid
from crestcut.chance.records import Chance
from crestcut.job.answers import Source
from crestcut.job.records import CutWish, Slab
from crestcut.scan.registering.register import Fit
from crestcut.standing import LoadedVehicle
from crestcut.terrain.readings.records import Evidence, Reading
from crestcut.terrain.records import ErrorModel, Surface
from crestcut.vehicle.records import AS_MEASURED
from crestcut.verify import by_hand, finished, register_after, rest
from crestcut.verify import now as now_module
from crestcut.verify.by_hand import (
    MOST,
    Misfit,
    Shares,
    agreeing,
    cut_by_hand,
    fighting,
    foretold,
    likely_shares,
    log_likelihood,
    told_by,
)
from crestcut.verify.now import lowered, lowered_evidence, mixed, withdrawn
from crestcut.verify.records import Now, Odd, Share
from crestcut.verify.rest import ground_now
from scenes import belly, lip, surface_of, vehicle

ERROR = ErrorModel(0.0, 0.002, 0.1, 0.0, 0.5, "", "", "")  # 2 mm over a tenth of a metre
FRAME = GridFrame((0.0, 0.0), 0.0, 0.02, (41, 61))
DEEP = 0.020
FLAT = surface_of(lambda x, y: 0 * x, FRAME)
SLAB = replace(FLAT, error=ERROR)
PLANNED = HeightGrid(FRAME, np.full(FRAME.shape, DEEP))
DRIVER = LoadedVehicle(vehicle(replace(belly(), within=0.001)), (AS_MEASURED,), True)


def reading(predicted: float, observed: float, relation: str = "is", at: float = 0.4, **more: Any) -> Reading:
    """Of the gap under the belly at one place: its height less the ground's."""
    return Reading(
        "[[after.witness]] 1", "gap", np.array([[at, 0.4]]), np.array([-1.0]), np.zeros(1), predicted,
        observed, "belly", relation, exactly=predicted, **more,
    )  # fmt: skip


def felt(gap: float, sd: float, under: float = 0.100) -> Callable[[Surface], Evidence]:
    """One gap felt under a belly ``under`` m over the slab as it was."""

    def read(ground: Surface) -> Evidence:
        there = under - float(ground.height.values[20, 20])
        return Evidence((reading(there, gap),), np.array([[sd**2]]))

    return read


def test_no_reading_leaves_every_share_as_likely() -> None:
    looked = []

    def nothing(ground: Surface) -> None:
        looked.append(-float(ground.height.values[0, 0]) / DEEP)

    found = likely_shares(SLAB, PLANNED, DRIVER, nothing)
    assert found.share.best == pytest.approx(MOST / 2) and not found.fights
    assert found.share.sd == pytest.approx(MOST / np.sqrt(12), rel=0.01)
    assert min(looked) == pytest.approx(0) and max(looked) == pytest.approx(MOST)
    assert sum(w for _, w in found.nodes) == pytest.approx(1)


def test_what_was_not_worked_is_as_sure_as_it_was_scanned() -> None:
    assert by_hand.worked(SLAB, PLANNED, 0.0).error.patch == SLAB.error.patch
    cut = by_hand.worked(SLAB, PLANNED, 1.0).error
    assert cut.patch == pytest.approx(np.hypot(0.002, by_hand.WORK))
    assert cut.warp == pytest.approx(by_hand.UNEVEN * DEEP)


@pytest.mark.parametrize("share", [0.3, 0.65])
def test_a_gap_says_the_share_as_well_as_it_was_felt(share: float) -> None:
    """Ground and part known far better than the gap: a normal about the share that makes the gap."""
    found = likely_shares(
        replace(FLAT, error=replace(ERROR, patch=1e-5)), PLANNED, DRIVER, felt(0.1 + share * DEEP, 0.004)
    )
    sd = 0.0045 / DEEP  # hand and part, and a little of what the work leaves uneven
    assert found.share.sd == pytest.approx(sd, rel=0.25)
    assert found.share.best == pytest.approx(share, abs=0.05)
    nodes, weights = map(np.array, zip(*found.nodes, strict=True))
    # what stands for all has the mean and spread of all
    assert weights @ nodes == pytest.approx(found.share.best, abs=0.01)
    assert weights @ (nodes - found.share.best) ** 2 == pytest.approx(found.share.sd**2, rel=0.2)


def test_shares_at_which_a_reading_cannot_be_are_left_out() -> None:
    """A string that would touch a slab of which less than half is gone."""

    def read(ground: Surface) -> Evidence:
        if ground.height.values[0, 0] > -0.5 * DEEP:
            raise CrestcutError("the string touches", "[[after.string]] 1", "")
        return felt(0.1 + 0.5 * DEEP, 0.004)(ground)

    found = likely_shares(SLAB, PLANNED, DRIVER, read)
    assert found.share.best > 0.55 and all(share >= 0.5 for share, _ in found.nodes)

    def never(ground: Surface) -> Evidence:
        raise CrestcutError("the string touches", "[[after.string]] 1", "")

    with pytest.raises(CrestcutError, match="touches"):
        likely_shares(SLAB, PLANNED, DRIVER, never)
    assert not cut_by_hand(SLAB, PLANNED, DRIVER, never)
    assert not by_hand.agree_by_hand(SLAB, PLANNED, DRIVER, never)


@pytest.mark.parametrize(("best", "sd", "cut"), [(0.8, 0.1, True), (0.8, 0.2, False), (0.45, 0.01, False)])
def test_most_of_the_plan_is_cut_where_two_sd_less_than_the_share_is_more_than_half(
    monkeypatch: pytest.MonkeyPatch, best: float, sd: float, cut: bool
) -> None:
    for fights in ((), ("one",)):
        told = Shares(Share(best, sd), (), fights)  # type: ignore[arg-type]
        monkeypatch.setattr(by_hand, "likely_shares", lambda *_, told=told: told)
        assert cut_by_hand(SLAB, PLANNED, DRIVER, felt(0, 1)) == (cut and not fights)


OWN = np.array([[4.0, 1.0, 0.5], [1.0, 2.0, -0.3], [0.5, -0.3, 3.0]]) * 1e-6
MISSED = np.array([0.0012, -0.0007, 0.0020])


@pytest.mark.parametrize("relation", ["is", "at least", "at most"])
def test_the_likelihood_of_figures_and_of_a_bound_given_them(relation: str) -> None:
    readings = tuple(reading(0.1, 0.1 + m, r) for m, r in zip(MISSED, ("is", "is", relation), strict=True))
    found = log_likelihood(Misfit(readings, MISSED, OWN))
    exact = 3 if relation == "is" else 2
    whole = stats.multivariate_normal(np.zeros(exact), OWN[:exact, :exact]).logpdf(MISSED[:exact])
    whole += exact / 2 * np.log(2 * np.pi)  # the same for every share
    gain = np.linalg.solve(OWN[:2, :2], OWN[:2, 2])
    mean, sd = gain @ MISSED[:2], np.sqrt(OWN[2, 2] - gain @ OWN[:2, 2])
    given = stats.norm(mean, sd)  # what the miss would be; a bound says that it is over or under its own
    more = {"is": 0.0, "at least": given.logsf(MISSED[2]), "at most": given.logcdf(MISSED[2])}
    assert found == pytest.approx(whole + more[relation], rel=1e-9)
    said = Misfit(readings, MISSED, OWN).expected(2, (0, 1))
    assert said == pytest.approx((0.1 + mean, sd))
    assert Misfit(readings, MISSED, OWN).expected(2, ()) == pytest.approx((0.1, OWN[2, 2] ** 0.5))


def test_what_happens_once_in_a_thousand_times_is_unlikely() -> None:
    """Chi squared, its degrees less what was fitted."""
    for fitted in (0, 1):
        at = np.sqrt(stats.chi2(2 - fitted).isf(0.001) / 2)
        for factor, said in ((0.99, False), (1.01, True)):
            missed = factor * at * np.array([0.001, 0.001])
            two = tuple(reading(0.1, 0.1 + m) for m in missed)
            assert Misfit(two, missed, 1e-6 * np.eye(2), fitted).unlikely() == said
    assert not Misfit(two, 9 * missed, 1e-6 * np.eye(2), 0).unlikely([0])  # one is judged by itself
    bounds = tuple(reading(0.1, 0.1, "at most") for _ in two)
    assert not Misfit(bounds, 9 * missed, 1e-6 * np.eye(2)).unlikely()


def misfit(*missed: float, sd: float = 0.001, shared: float = 0.0) -> Misfit:
    """Readings that miss by so much, each known to ``sd``, and what is common to all to ``shared``."""
    each = tuple(
        replace(reading(0.1, 0.1 + m), name=f"[[after.witness]] {k + 1}") for k, m in enumerate(missed)
    )
    own = sd**2 * np.eye(len(missed)) + shared**2
    return Misfit(each, np.array(missed), own, fitted=0)


def test_the_one_that_does_not_fit_is_named_and_what_it_stands_against() -> None:
    assert fighting(misfit(0.001, -0.001, 0.0), [misfit(0.001, -0.001, 0.0)]) == ()
    wrong = misfit(0.0, 0.010, 0.0005)
    (fight,) = fighting(wrong, [wrong])
    assert fight.reading.name.endswith("2") and fight.against == () and fight.odd is Odd.READING
    assert fight.expected == pytest.approx(0.1) and fight.sds == pytest.approx(10)
    # the ground is known badly: only the two others speak against it
    apart = misfit(0.010, 0.0, 0.0005, shared=0.05)
    (fight,) = fighting(apart, [apart])
    assert fight.reading.name.endswith("1") and [t.name[-1] for t in fight.against] == ["2", "3"]
    mean = 0.1 + 0.00025  # of the two others
    assert fight.expected == pytest.approx(mean, abs=1e-5)
    assert fight.sd == pytest.approx(0.001 * np.sqrt(1 + 1 / 2), rel=1e-3)
    # all agree without the scan: which of scan and readings is wrong hangs on how many are
    off = misfit(0.010, 0.0105, 0.0095)
    assert {f.odd for f in fighting(off, [off], lambda: True)} == {Odd.SCAN}
    assert {f.odd for f in fighting(off, [off], lambda: False)} == {Odd.NOT_KNOWN}
    alone = misfit(0.010)
    assert [f.odd for f in fighting(alone, [alone], lambda: True)] == [Odd.NOT_KNOWN]
    # told is what the kindest share of the work expects: the fewest of its own standard deviations off
    far, near = misfit(0.010), misfit(0.012, sd=0.003)
    (fight,) = fighting(far, [far, near])
    assert (fight.expected, fight.sd) == pytest.approx((0.1, 0.003))
    # one that some share of the work lets stand is let stand
    assert fighting(misfit(0.001), [misfit(0.001), misfit(0.010)]) == ()


def test_what_was_read_moves_ground_and_part_towards_it_by_what_each_is_unsure() -> None:
    """A gap 2 mm less than expected, ground unsure by 2 mm, part by 1, the hand by 1: of the miss the ground
    takes 4 / 6, the part 1 / 6; the highest of each cell goes with the ground."""
    up = HeightGrid(FRAME, np.full(FRAME.shape, 0.003))
    slab = replace(SLAB, top=up)
    evidence = Evidence((reading(0.100, 0.098),), np.array([[1e-6]]))
    ground, driver = told_by(slab, DRIVER, evidence, 0)
    assert ground.height.values[20, 20] == pytest.approx(0.002 * 4 / 6, rel=0.02)
    assert ground.top.values - ground.height.values == pytest.approx(0.003, abs=1e-12)
    assert np.abs(ground.height.values[:, 55:]).max() < 1e-4  # 0.7 m off nothing is known of it
    old, new = (d.vehicle.parts[0].z for d in (DRIVER, driver))
    assert np.subtract(new, old) == pytest.approx(-0.002 / 6, rel=0.02)
    assert told_by(slab, DRIVER, None, 0) == (slab, DRIVER)
    never = Evidence((reading(0.100, 0.050),), np.array([[1e-6]]))
    assert told_by(slab, DRIVER, never, 0) == (slab, DRIVER)


@pytest.mark.parametrize("step", [2, 3, 7])
def test_between_coarse_nodes_a_plane_stays_a_plane(step: int) -> None:
    coarse = by_hand._coarse(FRAME, step)
    plane = np.array([0.2, -0.5])
    assert coarse.node_xy()[-1, -1] == pytest.approx(FRAME.node_xy()[-1, -1], abs=step * 0.02 + 1e-9)
    assert (coarse.node_xy()[-1, -1] >= FRAME.node_xy()[-1, -1] - 1e-9).all()
    fine = by_hand._fine(coarse.node_xy() @ plane, step, FRAME.shape)
    assert fine == pytest.approx(FRAME.node_xy() @ plane, abs=1e-12)


def test_readings_that_were_folded_in_shift_no_more_and_bounds_are_spent() -> None:
    noise = np.diag([1e-6, 2e-6, 3e-6])
    read = Evidence((reading(0.1, 0.09), reading(0.1, 0.12, "at least"), reading(0.2, 0.19)), noise)
    kept = agreeing(read)
    assert kept is not None and [r.observed for r in kept.readings] == [0.1, 0.2]
    assert kept.noise == pytest.approx(np.diag([1e-6, 3e-6]))
    assert agreeing(Evidence(read.readings[1:2], noise[:1, :1])) is None and agreeing(None) is None


def test_gaps_and_strings_are_foretold_and_levels_are_not() -> None:
    level = replace(reading(0.0, 0.0), part=None)
    string = replace(
        level, points=np.array([[0.2, 0.4], [1.0, 0.4]]), weights=np.array([0.5, 0.5]), what="string",
        standard_error=np.zeros(2),
    )  # fmt: skip

    def read(ground: Surface) -> Evidence:
        if ground.height.values[0, 0] > -1e-9:
            raise CrestcutError("touches", "", "")
        gap = felt(0.118, 0.003)(ground).readings[0]
        return Evidence((gap, level, string), 9e-6 * np.eye(3))

    found = foretold(SLAB, PLANNED, DRIVER, read)
    assert [(p.zone, p.observed) for p in found] == [("belly", 0.118), (None, 0.0)]
    assert found[0].by_plan is not None and found[0].by_plan[0] == pytest.approx(0.1 + DEEP)
    spread = np.sqrt(0.002**2 + by_hand.WORK**2 + (0.1 * DEEP) ** 2 + 0.001**2 + 0.003**2)
    assert found[0].by_plan[1] == pytest.approx(spread, rel=0.02) and found[0].by_scan is None
    since = foretold(SLAB, PLANNED, DRIVER, read, by_hand.worked(SLAB, PLANNED, 0.5))
    assert since[0].by_scan is not None and since[0].by_scan[0] == pytest.approx(0.1 + DEEP / 2)
    assert foretold(SLAB, PLANNED, DRIVER, read, SLAB)[0].by_scan is None  # where it would touch


STOOD = SimpleNamespace(vehicle=vehicle(), ride=None, before=None, driver=DRIVER)
NOW: Any = SimpleNamespace(standing=STOOD, today=None, asked=0.0)
JOB: Any = SimpleNamespace(wanted=SimpleNamespace(confidence=0.95))


def chance(verdict: str, touch: float, best: float = 0.01) -> Chance:
    return Chance(best, (best - 0.002, best + 0.002), touch, verdict, "", 0.001, 0.5, 200)


def test_a_mixture_is_as_sure_as_its_parts_together() -> None:
    one, two = chance("clears", 0.01, 0.012), chance("touches", 0.99, -0.004)
    for weight, verdict in ((0.99, "clears"), (0.5, "cannot tell"), (0.01, "touches")):
        found = mixed([one, two], [weight, 1 - weight], 0.95)
        assert found.verdict == verdict
        assert found.chance_of_contact == pytest.approx(0.99 - 0.98 * weight)
        mean = 0.012 * weight - 0.004 * (1 - weight)
        assert found.least_clearance == pytest.approx(mean)
        square = weight * 0.012**2 + (1 - weight) * 0.004**2 + 0.001**2  # E[x2]
        assert found.spread == pytest.approx(np.sqrt(square - mean**2))
    # what forbade a verdict in the likeliest forbids it of all, however small the chance
    held = mixed([chance("cannot tell", 0.01), one], [0.9, 0.1], 0.95)
    assert held.verdict == "cannot tell"
    assert mixed([chance("cannot tell", 0.06), one], [0.6, 0.4], 0.95).verdict == "clears"


def test_a_vehicle_lowered_by_what_is_asked_is_read_as_much_lower() -> None:
    soft = replace(lip(), name="flap", soft=True)
    car, asked = vehicle(belly(0.12), lip(0.15), soft), {"belly": 0.02, "nose": 0.03, "tail": 0.04}
    assert [p.z for p in lowered(car, asked).parts] == [
        pytest.approx((0.10, 0.10)), pytest.approx((0.12, 0.12)), (0.15, 0.15)
    ]  # fmt: skip
    read = Evidence((reading(0.1, 0.09), replace(reading(0.0, 0.1), part=None)), 1e-6 * np.eye(2))
    gap, ground = lowered_evidence(read, car, asked).readings
    assert (gap.predicted, gap.observed, gap.exactly, gap.lowered) == pytest.approx((0.08, 0.07, 0.08, 0.02))
    assert ground is read.readings[1]


def test_what_is_surely_short_stays_short_whatever_the_scan(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("crestcut.verify.now.doubted", lambda c, *_: replace(c, verdict="cannot tell"))
    each = chance("touches", 1.0), chance("clears", 0.0), None, 0.0, chance("cannot tell", 0.5)
    now: Any = Now(SimpleNamespace(), *each)  # type: ignore[arg-type]
    found = withdrawn(now, (), SimpleNamespace())  # type: ignore[arg-type]
    assert [c.verdict for c in (found.today, found.spare, found.in_use)] == [
        "touches", "cannot tell", "cannot tell"
    ]  # fmt: skip


def test_ground_that_was_touched_is_the_plan_s_and_what_was_cut_beside_it() -> None:
    depth: FloatArray = np.full(FRAME.shape, np.nan)
    depth[5:10], depth[10:12] = 0.004, 0.0002
    plan: Any = SimpleNamespace(depth=HeightGrid(FRAME, depth))
    beside = np.zeros(FRAME.shape, bool)
    beside[:, 3] = True
    gone = np.zeros(FRAME.shape)
    assert (ground_now(SLAB, gone, plan, None).touched == (np.nan_to_num(depth) > 0.001)).all()
    removed: Any = SimpleNamespace(elsewhere=beside)
    assert (ground_now(SLAB, gone, plan, removed).touched == ((np.nan_to_num(depth) > 0.001) | beside)).all()


def fit(error: float, overlap: float = 0.9, agree: float = 0.95) -> Fit:
    return Fit(np.eye(3), np.zeros(3), error, overlap, agree, ())


@pytest.mark.parametrize(
    ("others", "best"),
    [((), None), ((fit(0.0015),), 0), ((fit(0.0017),), None),  # clearly better: by a fifth
     ((fit(0.0010, overlap=0.86),), None), ((fit(0.0010, overlap=0.88),), 0),
     ((fit(0.0010, agree=0.945), fit(0.0012)), 1), ((fit(0.0010, agree=0.948), fit(0.0012)), 0),
     ((fit(0.0010, agree=0.6),), None)],
)  # fmt: skip
def test_another_place_is_taken_where_all_that_stands_there_fits_clearly_better(
    monkeypatch: pytest.MonkeyPatch, others: tuple[Fit, ...], best: int | None
) -> None:
    mine = fit(0.0020)
    monkeypatch.setattr(register_after, "fits_anywhere", lambda *_: list(others))
    found = register_after._better_placed(None, np.zeros((0, 3)), mine)  # type: ignore[arg-type]
    assert found is (mine if best is None else others[best])


def test_a_gap_to_be_felt_is_asked_for_by_the_middle_of_the_front_wheels(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    wheels = [[3.0, 1.0], [3.4, 2.6], [0.2, 1.5], [0.6, 3.1]]
    for kind, said in (("felt gap", [3.2, 1.8]), ("string", None)):
        first: Any = SimpleNamespace(kind=kind)
        monkeypatch.setattr(now_module, "measure_first", lambda *_, first=first, **__: [first])
        monkeypatch.setattr(now_module, "row_of", lambda *_, **__: {"where_xy": wheels})
        monkeypatch.setattr(now_module, "board_sizes", lambda _: ())
        found = now_module.what_to_measure(NOW, SLAB, SimpleNamespace(frame=None), JOB, None)  # type: ignore[arg-type]
        assert [row["front_axle"] for row in found] == [said and pytest.approx(said)]


@pytest.mark.parametrize("nodes", [by_hand.NODES, finished.SCANS])
def test_three_points_stand_for_a_normal(nodes: tuple[tuple[float, float], ...]) -> None:
    """Gauss-Hermite: powers up to the fifth have the mean that a normal gives them."""
    assert [sum(w * z**k for z, w in nodes) for k in range(6)] == pytest.approx([1, 0, 1, 0, 3, 0], abs=1e-12)


def test_what_is_gone_is_off_the_limit_and_what_seems_to_have_grown_adds_nothing(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(rest, "keeps_of", lambda *_: ())
    asked: Any = SimpleNamespace(cut=CutWish(0.012), slab=Slab(thickness=0.2, thickness_from=Source.DRILLED))
    gone = np.zeros(FRAME.shape)
    gone[:10], gone[10:20], gone[20:30] = 0.005, 0.030, -0.004
    ground = rest.Ground(SLAB, gone, gone > 0)
    left = rest._limits_left(asked, SimpleNamespace(scan=None), ground).deepest.values  # type: ignore[arg-type]
    for rows, depth in ((slice(0, 10), 0.007), (slice(10, 20), 0.0), (slice(20, 41), 0.012)):
        assert left[rows] == pytest.approx(depth)
