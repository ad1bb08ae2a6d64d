"""The finished work of a small job checked by gaps felt under it, alone and beside a scan."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from crestcut.apps.verify import check_and_write, check_job
from crestcut.base.errors import CrestcutError
from crestcut.report.view.verify_result import verify_document
from crestcut.report.words.verify import verify_lines
from crestcut.study.record import Study
from crestcut.verify.records import Odd
from verify.after_scene import JOB, walked, write_ply
from verify.check_scene import GAP, by_hand, gaps, plan, true_gap

pytestmark = pytest.mark.usefixtures("planned")

CONTRADICTED = "contradicts"


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


def test_a_place_without_ground_is_named_as_it_stands_in_the_file(
    site: tuple[Path, Study], tmp_path: Path
) -> None:
    with pytest.raises(CrestcutError, match=r"^\[\[after\.witness\]\] 1"):
        by_hand(site, tmp_path, GAP.format(x=40.0, said='gap = "5 mm"'))
