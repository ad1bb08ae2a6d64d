"""What a check hands out: what is still to go, how deep a pass may go, and a proof."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from scipy import special

from crestcut.apps.verify import Checked, check_and_write, rest_study
from crestcut.chance.planned import margin_at_most, margin_for
from crestcut.chance.records import Chance
from crestcut.job.records import Wanted
from crestcut.report.view.verify_report import report_now
from crestcut.report.words.verify import verify_lines
from crestcut.study.record import Study
from crestcut.verify.records import Now
from crestcut.verify.rest import OVER, RARELY, pass_of, short_of
from verify.after_scene import JOB, of_plan, walked, write_ply
from verify.check_scene import by_hand, gaps, plan, true_gap, unreleased

pytestmark = pytest.mark.usefixtures("planned")


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
