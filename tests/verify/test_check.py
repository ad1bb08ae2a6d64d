"""The finished work of a small job, cut well, badly, or not at all, checked from a clean scan or by hand."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from click.testing import CliRunner
from matplotlib.text import Text
from scipy import special

from crestcut.apps.cli import main
from crestcut.apps.verify import Checked, check_and_write, check_job, rest_study
from crestcut.base.errors import CrestcutError
from crestcut.base.units import both
from crestcut.chance.assess import in_use_allowances
from crestcut.chance.planned import margin_at_most, margin_for
from crestcut.chance.records import Chance, Doubt
from crestcut.contact.clearance.sweep import sweep
from crestcut.contact.stand.ride import ride
from crestcut.job.records import ScanChoice, Surveyed, Wanted
from crestcut.report.pictures.verify_plan import checked_figure
from crestcut.report.sheets.verify import hand_over_figure
from crestcut.report.view.verify_report import report_gone, report_now
from crestcut.report.view.verify_result import verify_document
from crestcut.report.words.verify import verify_lines
from crestcut.scan.load import read_scan
from crestcut.scan.placing.system import System
from crestcut.study.identity import NOTHING
from crestcut.study.record import Study
from crestcut.study.report import Report
from crestcut.verify.edges import edges_left
from crestcut.verify.now import looked_again
from crestcut.verify.records import Now, Odd
from crestcut.verify.register_after import lay_after
from crestcut.verify.rest import OVER, RARELY, pass_of, short_of
from crestcut.work.records import Reason, ReasonCode, ReleaseState
from verify.after_scene import (
    CREST,
    JOB,
    Depth,
    height,
    inner,
    nothing,
    of_plan,
    planned_job,
    planned_once,
    true_surface,
    walked,
    write_ply,
)

CONTRADICTED = "contradicts"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Study]:
    """The job's folder and its finished run: planned once for all checks."""
    return planned_job(tmp_path_factory.mktemp("site"), walked(1))


@pytest.fixture(autouse=True)
def planned(site: tuple[Path, Study]) -> Iterator[None]:
    with planned_once(site[1]):
        yield


def checked(site: tuple[Path, Study], depth: Depth, name: str, **walk: object) -> Checked:
    folder, _ = site
    after = write_ply(walked(2, depth, **walk), folder / name)  # type: ignore[arg-type]
    return check_job(folder / "job.toml", [after])


def plan(site: tuple[Path, Study], share: float = 1.0, over: float = 0.0, shift: float = 0.0) -> Depth:
    assert site[1].report.plan is not None
    return of_plan(site[1].report.plan.depth, share, over, shift)


def true_gap(site: tuple[Path, Study], depth: Depth) -> float:
    """Least gap over the exact slab, swept, m."""
    report = site[1].report
    height = report.surface.height
    exact = height.like(np.where(height.measured, true_surface(height.frame, depth), np.nan))
    ground = replace(report.surface, height=exact, top=exact)
    rode = ride(report.vehicle, ground, report.line, report.job.travel, report.vehicle.loads)
    worst = sweep(report.vehicle, ground, rode).worst
    assert worst is not None
    return worst.gap


@pytest.fixture(scope="module")
def well_cut(site: tuple[Path, Study]) -> Checked:
    with planned_once(site[1]):
        # its own session: turned, moved and lifted
        depth = plan(site, over=0.002)
        after = write_ply(walked(2, depth, turn=0.09, move=(0.3, -0.2, 0.05)), site[0] / "after.ply")
        return check_and_write(site[0] / "job.toml", [after], site[0] / "first")[0]


def test_a_cut_by_the_plan_is_done_and_its_clearance_true(
    site: tuple[Path, Study], well_cut: Checked
) -> None:
    check = well_cut.check
    truth = true_gap(site, plan(site, over=0.002))
    assert check.verdict == check.clearance == "done"
    # as asked of this command: within 0.3 mm of the truth on a clean scan
    assert check.first.tightest.gap == pytest.approx(truth, abs=0.0003) and truth > 0.020
    # the estimate allows for more noise (0.9 mm, the prior of such scanners) than this scan has
    assert check.first.today.least_clearance == pytest.approx(truth, abs=0.0013)
    low, high = check.first.today.interval
    assert low < truth < high and 0.0005 < high - low < 0.003
    assert check.still.deepest == 0.0 and check.reached and not check.edges
    said = verify_lines(well_cut.report, check)
    assert said[0].startswith("DONE: the low cart") and "Still to go: nothing." in said


def test_what_is_gone_is_measured_with_its_error(site: tuple[Path, Study], well_cut: Checked) -> None:
    removed = well_cut.check.removed
    assert removed is not None
    height = site[1].report.surface.height
    true = true_surface(height.frame, nothing()) - true_surface(height.frame, plan(site, over=0.002))
    middle = inner(true > 0.004, 3)
    miss = (removed.depth.values - true)[middle]
    assert abs(miss.mean()) < 0.0004 and np.abs(miss).max() < 0.0015
    litres = true.sum() * height.frame.cell**2 * 1000
    assert removed.volume * 1000 == pytest.approx(litres, abs=2.5 * removed.volume_sd * 1000)
    assert removed.volume * 1000 == pytest.approx(litres, rel=0.06)
    # two scans with a drift of 0.7 and patches of 0.5 mm each cannot tell a depth to a tenth of that
    assert 0.0003 < removed.typical < 0.0015
    assert not removed.elsewhere.any()


def test_an_uncut_slab_is_not_done_and_shows_the_plan_again(site: tuple[Path, Study]) -> None:
    check = checked(site, nothing(), "uncut.ply").check
    assert check.verdict == "not yet"
    truth = true_gap(site, nothing())
    assert check.first.tightest.gap == pytest.approx(truth, abs=0.0003)
    assert site[1].report.plan is not None
    assert check.still.deepest == pytest.approx(site[1].report.plan.deepest, abs=0.0015)
    assert check.removed is not None and abs(check.removed.volume) < 2.5 * check.removed.volume_sd + 2e-5


def test_half_the_cut_leaves_the_other_half(site: tuple[Path, Study]) -> None:
    found = checked(site, plan(site, share=0.5), "half.ply")
    check, asked = found.check, site[1].report.plan
    assert asked is not None and check.verdict == "not yet"
    assert 0.3 * asked.deepest < check.still.deepest < 0.75 * asked.deepest
    assert check.removed is not None
    assert check.removed.volume == pytest.approx(0.5 * asked.volume, rel=0.15)
    assert any("take another pass" in line for line in verify_lines(found.report, check))


def unreleased(report: Report) -> Report:
    """The same job with a question open: its release hangs on that, whatever is left to grind."""
    why = Reason(ReasonCode.UNANSWERED, "it is not known whether the slab is post-tensioned")
    return replace(report, release=ReleaseState.NOT_FOR_CUTTING, release_reasons=(why,))


def test_what_is_not_released_is_not_ground_and_that_is_said_first(site: tuple[Path, Study]) -> None:
    """Half is left to go: the release, then the verdict; and nothing that takes concrete away."""
    found = checked(site, plan(site, share=0.5), "half_unreleased.ply")
    assert found.report.release == "ok" and found.check.verdict == "not yet"
    said = verify_lines(unreleased(found.report), found.check)
    assert said[0].startswith("Release: NOT FOR CUTTING") and "post-tensioned" in said[1]
    steps = [line for line in said if line.startswith("Next: ")]
    assert steps[0].startswith("Next: grind no more: the release says NOT FOR CUTTING")
    assert not any(word in line for line in steps for word in ("take another pass", "feather the steps"))
    page = hand_over_figure(unreleased(found.report), found.check)
    words = [t.get_text() for t in page.findobj(Text)]
    stamped = next(k for k, w in enumerate(words) if w.startswith("NOT FOR CUTTING: it is not known"))
    assert stamped < next(k for k, w in enumerate(words) if w.startswith("NOT YET: "))


@pytest.mark.parametrize("released", [True, False])
def test_finished_work_does_not_release_a_job(
    site: tuple[Path, Study], well_cut: Checked, released: bool
) -> None:
    """Nothing is left to take; what was not answered is still not answered."""
    report = well_cut.report if released else unreleased(well_cut.report)
    check, state = well_cut.check, "ok" if released else "not for cutting"
    assert check.verdict == "done" and check.still.deepest == 0
    assert verify_document(report, check, None, {})["release"]["state"] == state
    assert report_now(report, check).release == state and report_gone(report, check).release == state
    said = verify_lines(report, check)
    assert said[0].startswith("DONE: ") and ("Release: NOT FOR CUTTING:" in said) == (not released)
    stamps = [t.get_text() for t in checked_figure(report, check).findobj(Text)].count("NOT FOR CUTTING")
    assert stamps == (0 if released else 1)  # the head; nothing is left to cut on the maps


def test_a_cut_too_deep_is_said_with_the_steel_and_the_steps(site: tuple[Path, Study]) -> None:
    """24 mm too deep with an upright edge: over the job's 25 mm, and the steel lies 45 mm down under 20 mm of
    cover to keep."""
    asked = plan(site)

    def deep(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        return np.where(asked(x, y) > 0.001, asked(x, y) + 0.024, 0.0)

    found = checked(site, deep, "deep.ply")
    check = found.check
    assert check.verdict == "not yet"  # for its edges, and their rim, which a scan of 9 mm smears over 30
    by = {t.what.split(" ")[0] + " " + t.what.split(" ")[-1]: t for t in check.too_deep}
    assert {"deeper planned", "deeper allows"} <= set(by), check.too_deep
    assert [t.steel for t in check.too_deep] == ["steel" in t.what for t in check.too_deep]
    assert any(t.steel and t.sure for t in check.too_deep)
    assert by["deeper planned"].sure and by["deeper planned"].most == pytest.approx(0.023, abs=0.003)
    # over 60 mm: the step and some of the slope inside it
    assert check.edges and check.edges[0].rise == pytest.approx(0.031, abs=0.005)
    assert "ramp" in check.edges[0].said or "bevel" in check.edges[0].said
    said = "\n".join(verify_lines(found.report, check))
    assert "stop grinding there" in said and "2010 ADA 303" in said


def test_a_patch_that_few_points_hit_is_no_step(site: tuple[Path, Study], well_cut: Checked) -> None:
    """Where the first scan saw badly, as high a change of depth is no step; where it saw well, it is."""
    before, check = well_cut.report.surface, well_cut.check
    removed = check.removed
    assert removed is not None
    rows, columns = np.nonzero(inner(removed.work, 8))
    j, i = int(rows[0]), int(columns[0])
    patch = (slice(j - 4, j + 5), slice(i - 4, i + 5))
    depth = np.zeros_like(removed.depth.values)
    depth[patch] = 0.02

    def found(depth: np.ndarray, error: float) -> int:
        own = np.full(depth.shape, 0.0003)
        own[patch] = error
        own[~before.height.measured] = np.nan
        seen = replace(before, standard_error=before.height.like(own))
        gone = replace(removed, depth=before.height.like(depth))
        return len(edges_left(seen, check.surface, gone, 0.25))

    assert found(depth, 0.0003) > 0
    assert found(depth, 0.005) == 0
    assert found(-depth, 0.0003) == 0  # nothing grows by grinding


def test_a_cut_in_the_wrong_place_is_found_there(site: tuple[Path, Study]) -> None:
    check = checked(site, plan(site, shift=0.9), "wrong.ply").check
    assert check.verdict == "not yet"
    assert check.removed is not None and check.removed.elsewhere.any()
    frame = check.removed.depth.frame
    where = frame.node_xy()[check.removed.elsewhere]
    true = plan(site, shift=0.9)(where[:, 0], where[:, 1])
    assert (true > 0).mean() > 0.7  # tiles of 0.1 m, against a cut of a few
    assert any("nothing was to be cut" in t.what and t.sure for t in check.too_deep)


def test_same_input_same_output(site: tuple[Path, Study], well_cut: Checked, tmp_path: Path) -> None:
    folder, _ = site
    found, written = check_and_write(folder / "job.toml", [folder / "after.ply"], tmp_path)
    assert {p.name for p in written} == {
        "verify.json", "still_to_go.ply", "checked.png", "hand_over.pdf"
    }  # fmt: skip
    assert found.check.first.today == well_cut.check.first.today
    for name in ("still_to_go.ply", "checked.png", "hand_over.pdf"):
        assert (tmp_path / name).read_bytes() == (folder / "first" / name).read_bytes(), name
    for name, says in (  # nothing is left to go: that is what they say, not what the plan's release was
        ("still_to_go.ply", b"comment release: nothing to cut\n"),
        ("checked.png", b"tEXtRelease\0nothing to cut"),
        ("hand_over.pdf", b"/Subject (release: nothing to cut; dated: not dated)"),
    ):
        assert says in (tmp_path / name).read_bytes(), name
    first, second = (json.loads((k / "verify.json").read_text()) for k in (tmp_path, folder / "first"))
    assert {**first, "seconds": None} == {**second, "seconds": None}
    assert first["schema"] == "crestcut.verify/1" and first["verdict"] == "done" and first["by"] == "scan"
    assert [i["role"] for i in first["inputs"]] == ["job", "scan", "vehicle", "scan after"]


def test_what_is_left_in_use_stands_beside_what_is_left_today(well_cut: Checked) -> None:
    """'Study' is said of the gap asked for at walking pace: what daily use takes off it is told with it."""
    check, report = well_cut.check, well_cut.report
    allowances = in_use_allowances(report.job.wanted, report.vehicle)
    today, used = check.first.today, check.first.in_use
    # each takes anything from none to all of it, equally likely
    taken = today.least_clearance - used.least_clearance
    assert taken == pytest.approx(sum(size for _, size, _ in allowances) / 2, abs=0.001)
    assert used.chance_of_contact >= today.chance_of_contact
    line = next(line for line in verify_lines(report, check) if line.startswith("In use, with the"))
    assert f"{used.verdict}, least gap {both(used.least_clearance)}, 95 % between " in line
    told = verify_document(report, check, None, {})["now"]
    assert isinstance(told, dict) and told["in_use"]["least_clearance"] == used.least_clearance


def lying(
    seed: int, at: tuple[float, float], size: tuple[float, float], low: float, high: float
) -> np.ndarray:
    """Points (n, 3) m on or in what stands or walks about ``at`` from ``low`` to ``high`` m over the slab."""
    rng = np.random.default_rng(seed)
    x, y = (rng.uniform(c - s / 2, c + s / 2, 3000) for c, s in zip(at, size, strict=True))
    return np.column_stack([x, y, height(x, y) + rng.uniform(low, high, len(x))])


@pytest.mark.parametrize(
    ("at", "low", "high", "doubt"),
    [((CREST, 0.0), 0.0, 0.6, Doubt.STANDS), ((CREST, 0.55), 0.0, 0.6, None)],
    ids=["a person walking through", "beside the line"],
)
def test_what_is_scanned_in_the_way_on_the_finished_cut_is_never_done(
    site: tuple[Path, Study], tmp_path: Path, at: tuple[float, float], low: float, high: float,
    doubt: Doubt | None,
) -> None:  # fmt: skip
    job = site[0] / f"{tmp_path.name}.toml"
    job.write_text(JOB.replace('"20 mm"', '"15 mm"'))
    there = lying(5, at, (0.3, 0.3), low, high)
    points = np.vstack([walked(2, plan(site, over=0.002)), there])
    found = check_job(job, [write_ply(points, tmp_path / "after.ply")])
    check, said = found.check, verify_lines(found.report, found.check)
    if doubt is None:
        assert check.clearance == "done" and not check.first.spare.doubts
        return
    assert check.verdict == check.clearance == "cannot tell"
    assert [f.doubt for f in check.first.spare.doubts] == [doubt] and not check.advice
    assert said[0].startswith("CANNOT TELL: something 0.59 m high was scanned in the vehicle's way")
    assert any(line.startswith("Next: move what stands about") for line in said)
    assert not any("less than asked" in line for line in said)
    told = verify_document(found.report, check, None, {})["now"]
    assert isinstance(told, dict) and told["chance_of_want"] is told["chance_of_contact"] is None
    assert checked_figure(found.report, check).findobj(Text)


@pytest.mark.parametrize("clearance", ["done", "cannot tell"])
def test_nothing_to_cut_is_said_only_where_it_is_sure(well_cut: Checked, clearance: str) -> None:
    """The corner of the picture, and what every file says of itself."""
    report, sure = well_cut.report, clearance == "done"
    check = replace(well_cut.check, verdict=clearance, clearance=clearance)
    assert check.still.deepest == 0
    shown = [t.get_text() for t in checked_figure(report, check).findobj(Text)]
    assert ("Nothing to cut" in shown, "Nothing shown as short; not sure" in shown) == (sure, not sure)
    assert (report_now(report, check).identity.release == NOTHING) == sure


def test_all_points_that_leave_less_than_asked_are_no_touch_and_not_done(well_cut: Checked) -> None:
    """A heap 10 mm high under a tray that has 20 mm and wants 20: said as what is lacking."""
    check, report = well_cut.check, well_cut.report
    now, surface = check.first, check.surface
    assert surface.seen is not None and not now.spare.doubts
    xy = surface.height.frame.node_xy()
    there = np.hypot(xy[..., 0] - CREST, xy[..., 1]) < 0.1
    for heap, doubt in ((0.010, Doubt.SHORT), (0.030, Doubt.ALL_POINTS), (-0.005, None)):
        crude = np.where(there, surface.top.values + heap, np.nan)
        seen = replace(surface.seen, crude=crude, error=np.where(there, 0.001, np.nan))
        again = looked_again(report.job, replace(surface, seen=seen), now, report.scan.frame)
        assert [f.doubt for f in again.spare.doubts] == ([] if doubt is None else [doubt])
        assert again.verdict == ("done" if doubt is None else "cannot tell")
        assert again.today.verdict == ("cannot tell" if doubt is Doubt.ALL_POINTS else "clears")


def test_a_scan_of_somewhere_else_is_refused(site: tuple[Path, Study]) -> None:
    folder, _ = site
    rng = np.random.default_rng(3)
    xy = rng.uniform((0, 0), (5, 1.9), (60_000, 2))
    z = 0.12 * np.sin(1.9 * xy[:, 0]) * np.cos(2.3 * xy[:, 1]) + 0.0005 * rng.standard_normal(len(xy))
    other = write_ply(np.column_stack([xy + 80.0, z]), folder / "other.ply")
    with pytest.raises(
        CrestcutError, match=r"^other\.ply: does not register on the scan from before the work"
    ):
        check_job(folder / "job.toml", [other])


def test_the_scan_from_before_is_no_scan_from_after(site: tuple[Path, Study]) -> None:
    folder, _ = site
    with pytest.raises(CrestcutError, match="is the same scan as before"):
        check_job(folder / "job.toml", [folder / "before.ply"])


@pytest.mark.parametrize(
    ("words", "args"),
    [("nothing to check the work by", ()), ("no such file", ("--after", "gone.ply"))],
)
def test_nothing_to_check_by_is_one_line(
    site: tuple[Path, Study], words: str, args: tuple[str, ...], tmp_path: Path
) -> None:
    result = CliRunner().invoke(
        main, ["verify", str(site[0] / "job.toml"), *args, "--out", str(tmp_path / "out")]
    )
    assert result.exit_code == 2 and not (tmp_path / "out").exists()
    last = result.stderr.strip().splitlines()[-1]
    assert last.startswith("crestcut: ") and words in last.lower()


def by_hand(site: tuple[Path, Study], tmp_path: Path, readings: str, want: str = "20 mm") -> Checked:
    folder, _ = site
    job = folder / f"{tmp_path.name}.toml"
    job.write_text(JOB.replace('"20 mm"', f'"{want}"') + "\n[after]\n" + readings)
    return check_job(job)


GAP = (
    '[[after.witness]]\npart = "tray"\nfront_axle = [{x}, 0.0]\n{said}\nplaced = "3 mm"\nwithin = "0.5 mm"\n'
)


def gaps(site: tuple[Path, Study], depth: Depth) -> str:
    """What cards would say under the tray at three places, to half a millimetre."""
    report = site[1].report
    height = report.surface.height
    exact = height.like(np.where(height.measured, true_surface(height.frame, depth), np.nan))
    ground = replace(report.surface, height=exact, top=exact)
    rode = ride(report.vehicle, ground, report.line, report.job.travel, report.vehicle.loads)
    swept = sweep(report.vehicle, ground, rode)
    assert swept.pair_gap is not None
    names = [p.name for p in report.vehicle.parts]
    out = ""
    for x in (2.95, 3.1, 3.25):
        pose = int(np.argmin(np.abs(rode.poses[0].station - (x - 0.4))))
        gap = swept.pair_gap[pose, names.index("tray")]
        out += GAP.format(x=x, said=f'gap = "{round(gap * 2000) / 2:.1f} mm"')
    return out


def test_felt_gaps_alone_say_done(site: tuple[Path, Study], tmp_path: Path) -> None:
    depth = plan(site, over=0.003)
    found = by_hand(site, tmp_path, gaps(site, depth), "19.5 mm")  # 3 sd less than it has
    check = found.check
    assert check.removed is None and check.share is not None
    assert check.verdict == "done", check.first.spare
    low, high = check.first.today.interval
    assert low < true_gap(site, depth) < high
    said = "\n".join(verify_lines(found.report, check))
    assert "taken on trust" in said and "less sure than your readings alone" not in said


def test_felt_gaps_alone_say_not_yet(site: tuple[Path, Study], tmp_path: Path) -> None:
    check = by_hand(site, tmp_path, gaps(site, plan(site, share=0.3))).check
    assert check.verdict == "not yet" and check.share is not None
    assert check.share.best == pytest.approx(0.3, abs=0.2)
    asked = site[1].report.plan
    assert asked is not None and 0.3 * asked.deepest < check.still.deepest < asked.deepest


def test_readings_that_contradict_each_other_decide_nothing(site: tuple[Path, Study], tmp_path: Path) -> None:
    readings = gaps(site, plan(site, over=0.002)) + GAP.format(x=3.1, said="touched = true")
    found = by_hand(site, tmp_path, readings)
    assert found.check.verdict == "cannot tell"
    said = "\n".join(verify_lines(found.report, found.check))
    assert CONTRADICTED in said and "[[after.witness]]" in said


def test_gaps_that_cannot_all_be_true_are_named_and_not_used(
    site: tuple[Path, Study], tmp_path: Path
) -> None:
    """30, 2, 18 and 18 mm under one tray, within a hand's breadth: said 29.4 and 'less than 1 in 1,000'."""
    folder, read = site[0], ((3.0, 30), (3.1, 2), (3.05, 18), (3.15, 18))
    job = folder / f"{tmp_path.name}.toml"
    gaps = "".join(GAP.format(x=x, said=f'gap = "{gap} mm"') for x, gap in read)
    job.write_text(JOB + "\n[after]\n" + gaps)
    found, _ = check_and_write(job, [], tmp_path)
    check = found.check
    assert check.verdict == check.clearance == check.first.verdict == "cannot tell"
    named = {t.name for f in check.fights for t in (f.reading, *f.against)}
    assert {"[[after.witness]] 1", "[[after.witness]] 2"} <= named
    by = {f.reading.name: f.reading.observed for f in check.fights}
    for k, (_, gap) in enumerate(read):
        assert by.get(f"[[after.witness]] {k + 1}", gap / 1000) == gap / 1000
    said = verify_lines(found.report, check)
    assert said[0].startswith("CANNOT TELL") and "1 in" not in "\n".join(said).replace("1/4 in", "")
    assert "Still to go: not known." in said and "[[after.witness]] 2" in "\n".join(said)
    told = json.loads((tmp_path / "verify.json").read_text())
    assert told["now"]["least_clearance"] is told["still"]["deepest"] is told["removed"]["share"] is None
    assert {c["reading"] for c in told["contradictions"]} == set(by)
    assert b"nan" not in (tmp_path / "verify.json").read_bytes().lower()


def test_a_contradiction_is_told_as_it_was_read(site: tuple[Path, Study], tmp_path: Path) -> None:
    """Beside a scan too: the gap read, not that gap less what was asked for."""
    folder, _ = site
    depth = plan(site, over=0.002)
    after = write_ply(walked(2, depth), tmp_path / "after.ply")
    job = folder / f"{tmp_path.name}.toml"
    job.write_text(JOB + "\n[after]\n" + GAP.format(x=3.1, said='gap = "2 mm"'))
    found = check_job(job, [after])
    said = "\n".join(verify_lines(found.report, found.check))
    assert found.check.verdict == "cannot tell" and "2.0 mm contradicts the scan since" in said
    assert "1 in" not in said.replace("1/4 in", "")  # no chance stands on what contradicts
    (fight,) = found.check.fights
    assert fight.odd is Odd.NOT_KNOWN and fight.sds > 3.3  # one reading, one scan: nothing tells which
    assert fight.expected == pytest.approx(true_gap(site, depth), abs=0.004)
    told = verify_document(found.report, found.check, None, {})
    assert isinstance(told["now"], dict) and told["now"]["chance_of_want"] is None
    assert told["contradictions"][0]["sds"] == fight.sds
    assert found.check.rest is None and found.check.short is None


def test_a_gap_that_agrees_with_the_scan_is_used_beside_it(site: tuple[Path, Study], tmp_path: Path) -> None:
    depth = plan(site, over=0.002)
    after = write_ply(walked(2, depth), tmp_path / "after.ply")
    job = site[0] / f"{tmp_path.name}.toml"
    job.write_text(JOB + "\n[after]\n" + gaps(site, depth))
    found = check_job(job, [after])
    said = "\n".join(verify_lines(found.report, found.check))
    assert not found.check.fights and "less sure than your readings alone" in said


@pytest.mark.parametrize("alone", [Odd.SCAN, Odd.READING])
def test_what_stands_alone_is_told(site: tuple[Path, Study], tmp_path: Path, alone: Odd) -> None:
    """Three gaps over a third of the cut, and a scan of all of it; or one gap mistaken by 6 mm."""
    read = plan(site, share=0.3) if alone is Odd.SCAN else plan(site)
    lines = gaps(site, read)
    if alone is Odd.READING:
        figures = re.findall(r'gap = "([0-9.]+) mm"', lines)
        lines = lines.replace(f'"{figures[1]} mm"', f'"{float(figures[1]) - 6:.1f} mm"', 1)
    job = site[0] / f"{tmp_path.name}.toml"
    job.write_text(JOB + "\n[after]\n" + lines)
    after = write_ply(walked(2, plan(site)), tmp_path / "after.ply")
    found = check_job(job, [after])
    assert found.check.fights and {f.odd for f in found.check.fights} == {alone}
    said = "\n".join(verify_lines(found.report, found.check))
    assert ("scan the finished work again" in said) == (alone is Odd.SCAN)
    if alone is Odd.READING:
        (fight,) = found.check.fights
        assert fight.reading.observed == pytest.approx(float(figures[1]) / 1000 - 0.006)
        assert fight.expected == pytest.approx(float(figures[1]) / 1000, abs=0.0015)


def test_still_to_go_is_what_is_short_and_the_pass_goes_no_deeper_than_is_sure(
    site: tuple[Path, Study], tmp_path: Path
) -> None:
    """Gaps felt to half a millimetre: neither the margin of a plan on a noisy scan nor an allowance comes on
    top of them where that could be too much."""
    done = plan(site, share=0.3)
    found = by_hand(site, tmp_path, gaps(site, done))
    check, short = found.check, found.check.short
    assert short is not None and check.verdict == "not yet" and 0.002 < short.best < 0.006
    truth = 0.020 - true_gap(site, done)
    assert short.best == pytest.approx(truth, abs=0.001)
    assert short.interval[0] < truth < short.interval[1]
    line = next(line for line in verify_lines(found.report, check) if line.startswith("Still to go"))
    for part in (check.still.deepest, short.best):
        assert f"{part * 1000:.1f} mm" in line
    assert check.still.deepest == pytest.approx(truth, abs=0.002)
    # the slab as it is, less that, has what was asked for, and hardly more; as was said before
    rest = of_plan(check.still.depth.like(np.nan_to_num(check.still.depth.values)))
    left = true_gap(site, lambda x, y: done(x, y) + rest(x, y))
    assert -0.001 < left - 0.020 < OVER
    assert check.rest is not None and check.rest.left is not None
    low, high = check.rest.left.today.interval
    assert low < left < high and f"between {low * 1000:.1f} mm and {high * 1000:.1f} mm" in line


@pytest.mark.parametrize("way", ["hand", "scan"])
def test_the_rest_is_handed_out_as_sheets_of_its_own(
    site: tuple[Path, Study], tmp_path: Path, way: str
) -> None:
    done, job = plan(site, share=0.3), site[0] / f"{tmp_path.name}.toml"
    job.write_text(JOB + ("\n[after]\n" + gaps(site, done) if way == "hand" else ""))
    after = [write_ply(walked(2, done), tmp_path / "after.ply")] if way == "scan" else []
    found, written = check_and_write(job, after, tmp_path / "out")
    names = {p.name for p in written}
    assert {"rest_work_sheets.pdf", "rest_work_dots.csv", "rest_work_strings.csv"} <= names
    assert ("proof.json" in names) == (way == "hand")
    told = json.loads((tmp_path / "out" / "rest_worksheet.json").read_text())
    dots = [dot["depth"] for dot in told["set_out"]["dots"]]
    assert told["release"]["state"] == "ok" and told["title"].endswith(": the rest")
    assert 0.5 * found.check.still.deepest < max(dots) <= found.check.still.deepest + 5e-4
    assert json.loads((tmp_path / "out" / "verify.json").read_text())["still"]["sheets"] is True
    # blocks and strings stand where nothing was cut
    rest = found.check.rest
    assert rest is not None
    cut = np.nan_to_num(site[1].report.plan.depth.values) > 0.001  # type: ignore[union-attr]
    assert not rest.surface.slab[cut].any() and rest.surface.slab.any()
    assert "rest_work_sheets.pdf" in "\n".join(verify_lines(found.report, found.check))
    # the same job with a question open gets none
    held = unreleased(found.report)
    assert rest_study(held, found.check, report_now(held, found.check)) is None


def test_nothing_is_handed_out_of_finished_work(well_cut: Checked) -> None:
    report, check = well_cut.report, well_cut.check
    assert check.rest is None and rest_study(report, check, report_now(report, check)) is None


@dataclass(frozen=True)
class Outcomes:
    """Draws of what a pass leaves over what it promised, m, whatever its margin."""

    drawn: np.ndarray
    scanned: np.ndarray

    def outcome(self, margin: float) -> np.ndarray:
        return self.drawn


@pytest.mark.parametrize(("sd", "whole"), [(0.0002, True), (0.0006, False), (0.002, False)])
def test_how_deep_a_pass_may_go_is_the_stated_chance(sd: float, whole: bool) -> None:
    """Against the normal's own quantiles: 95 % sure of what was asked where that leaves at most 1 in 200 more
    than 1 mm too deep; else just that 1 in 200."""
    drawn = -0.001 + sd * np.asarray(special.ndtri((np.arange(4000) + 0.5) / 4000))
    left = Outcomes(drawn, np.array([0.005]))
    most = margin_at_most(left, OVER, RARELY)  # type: ignore[arg-type]
    assert most == pytest.approx(OVER + 0.001 + special.ndtri(RARELY) * sd, abs=0.02 * sd + 3e-5)
    enough = margin_for(left, Wanted())  # type: ignore[arg-type]
    assert enough == pytest.approx(0.001 + special.ndtri(0.95) * sd, abs=0.02 * sd + 3e-5)
    spare = Chance(-0.005, (-0.006, -0.004), 1.0, "touches", "", sd, 1.0, 200)
    told = Now(SimpleNamespace(cut=left), spare, spare, None, 0.02, spare)  # type: ignore[arg-type]
    now = replace(told, spare=replace(spare, least_clearance=-0.0052))
    found = pass_of(now, told, Wanted())
    # the ground that it is planned on is 0.2 mm more hopeful than all that was read
    assert found.whole == whole and found.margin == pytest.approx(min(enough, most) + 0.0002)
    assert short_of(now).best == 0.0052 and short_of(now).interval == (0.004, 0.006)


WORDS = {  # all that proof.json may say in words
    "crestcut.proof/1", "phone", "total-station", "dots and contours", "board and blocks", "crest", "none",
    "done", "not yet", "cannot tell", "touches", "clears", "gap", "string", "belly", "nose", "tail", "is",
    "at most", "at least", "reading", "scan", "not known",
}  # fmt: skip


def test_a_proof_says_what_was_predicted_and_felt_and_not_where_or_whose(
    site: tuple[Path, Study], tmp_path: Path
) -> None:
    """Every word in it is one of this program's own, and none that stands in job, vehicle or their names."""
    done, folder = plan(site), site[0]
    secret = JOB.replace('title = "Low cart"', 'title = "Zebrastrasse 17"\ndate = "2031-07-08"')
    secret += '\n[[mark]]\nname = "Quagga"\nat = [1.234, 0.567]\n'
    job = folder / "okapi.toml"
    job.write_text(secret + "\n[after]\n" + gaps(site, done))
    after = write_ply(walked(2, done), tmp_path / "gnu.ply")
    check_and_write(job, [after], tmp_path / "out")
    text = (tmp_path / "out" / "proof.json").read_text()
    for word in (
        "zebra",
        "quagga",
        "okapi",
        "gnu",
        "before.ply",
        "cart",
        "tray",
        "2031",
        "1.234",
        "2.95",
        "3.1,",
    ):
        assert word not in text.lower(), word
    told = json.loads(text)
    said, keys = [], []

    def walk(value: object, key: str = "") -> None:
        keys.append(key)
        if isinstance(value, dict):
            for name, inner in value.items():
                walk(inner, name)
        elif isinstance(value, list):
            for inner in value:
                walk(inner, key)
        elif isinstance(value, str) and key != "version":
            said.append(value)

    walk(told)
    assert set(said) <= WORDS, set(said) - WORDS
    assert not {"title", "dated", "inputs", "sha256", "x", "y", "point", "station", "name", "file"} & set(
        keys
    )
    assert [f["reading"] for f in told["felt"]] == ["gap"] * 3
    for felt in told["felt"]:
        for by in ("by_plan", "by_scan_since"):
            low, high = felt[by]["interval"]
            assert low < felt["felt"] < high and abs(felt[by]["sds"]) < 3
    assert told["planned"]["after"]["least_clearance"] >= 0.02


def test_a_place_without_ground_is_named_as_it_stands_in_the_file(
    site: tuple[Path, Study], tmp_path: Path
) -> None:
    with pytest.raises(CrestcutError, match=r"^\[\[after\.witness\]\] 1"):
        by_hand(site, tmp_path, GAP.format(x=40.0, said='gap = "5 mm"'))


def test_work_on_a_tied_job_is_checked_by_a_scan_in_any_coordinates(tmp_path: Path) -> None:
    """The scan before is tied to control far away; those since come as it came, or in the control's system:
    each is laid on it by uncut ground, and nothing was cut, to a millimetre."""
    write_ply(walked(1), tmp_path / "before.ply")
    write_ply(walked(2), tmp_path / "after.ply")
    origin, turn = np.array([500_100.0, 5_800_200.0, 111.0]), np.radians(40.0)
    c, s = np.cos(turn), np.sin(turn)
    rotation = np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]])
    places = np.array([(0.5, -0.8), (4.5, -0.7), (4.4, 0.8), (0.6, 0.7)])
    seen = np.column_stack([places, np.zeros(4)])
    control = tuple(Surveyed(f"C{k}", tuple(rotation @ p + origin), tuple(p)) for k, p in enumerate(seen))
    choice = ScanChoice((tmp_path / "before.ply",), "m", "z")
    before = read_scan(replace(choice, control=control))
    plain = read_scan(choice)
    assert np.abs(before.frame.to_own(before.points) - (plain.points @ rotation.T + origin)).max() < 1e-6
    moved = walked(2) @ rotation.T + origin
    write_ply(moved, tmp_path / "moved.ply")
    for name in ("after.ply", "moved.ply"):
        after = read_scan(ScanChoice((tmp_path / name,), "m", "z"))
        if name == "moved.ply":
            system = System("EPSG:25832", "", "x")
            before = replace(before, frame=replace(before.frame, system=system))
            after = replace(after, frame=replace(after.frame, system=system))
        laid = lay_after(before, after, lambda xy: np.zeros(len(xy), dtype=bool), 0.001)
        true = walked(2) @ rotation.T + origin
        assert np.abs(before.frame.to_own(laid.scan.points) - true).max() < 0.006
