"""The finished work of a small job, cut well, badly, or not at all, checked from a clean scan."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner
from matplotlib.text import Text

from crestcut.apps.cli import main
from crestcut.apps.verify import Checked, check_and_write, check_job
from crestcut.base.errors import CrestcutError
from crestcut.base.units import both
from crestcut.chance.assess import in_use_allowances
from crestcut.chance.records import Doubt
from crestcut.job.records import ScanChoice, Surveyed
from crestcut.report.pictures.verify_plan import checked_figure
from crestcut.report.sheets.verify import hand_over_figure
from crestcut.report.view.verify_report import report_gone, report_now
from crestcut.report.view.verify_result import verify_document
from crestcut.report.words.verify import verify_lines
from crestcut.scan.load import read_scan
from crestcut.scan.placing.system import System
from crestcut.study.identity import NOTHING
from crestcut.study.record import Study
from crestcut.verify.edges import edges_left
from crestcut.verify.now import looked_again
from crestcut.verify.register_after import lay_after
from verify.after_scene import CREST, JOB, height, inner, nothing, true_surface, walked, write_ply
from verify.check_scene import checked, plan, true_gap, unreleased

pytestmark = pytest.mark.usefixtures("planned")


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
