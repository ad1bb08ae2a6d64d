"""A whole job tied to control: what a rigid movement may change and what not, check points against numpy, and
what is refused."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from crestcut.job.load import load_job
from crestcut.report.view.reference import reference_document
from crestcut.study.making import run_job
from crestcut.study.record import Study
from crestcut.study.saved import STUDY_NAME, read_study, write_study
from test_bad_input import JOB, VEHICLE, slab, write_laz

TURN, ORIGIN = np.radians(123.0), np.array([500_000.0, 5_800_000.0, 111.0])
SEEN = [(0.5, 0.3), (4.4, 0.4), (4.5, 1.7), (0.6, 1.6)]
CHECKS = [(1.0, 1.0, 0.004), (2.5, 0.7, -0.002), (3.3, 1.2, 0.001), (3.9, 1.0, 0.0)]


def height(x: float) -> float:
    return round(0.3 - 0.05 * abs(x - 2.5), 6)


def on_grid(x: float, y: float, z: float) -> list[float]:
    c, s = np.cos(TURN), np.sin(TURN)
    return [float(v) for v in ORIGIN + np.array([c * x - s * y, s * x + c * y, z])]


def tables(line: str = "") -> str:
    """Control without errors, and checks that are wrong by what they say."""
    rows = [
        f'[[control]]\nname = "C{k}"\nat = {on_grid(x, y, height(x))}\nseen = {[x, y, height(x)]}\n'
        for k, (x, y) in enumerate(SEEN)
    ]
    rows += [
        f'[[check]]\nname = "K{k}"\nat = {on_grid(x, y, height(x) - off)}\nwithin = "1 mm"\n'
        for k, (x, y, off) in enumerate(CHECKS)
    ]
    said = JOB.replace("phone", "terrestrial") + "".join(rows)
    return said.replace("[[0.4, 1.0], [4.6, 1.0]]", line) if line else said


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("tied_job")
    write_laz(folder / "slab.laz", slab())
    (folder / "trolley.toml").write_text(VEHICLE)
    (folder / "plain.toml").write_text(JOB.replace("phone", "terrestrial"))
    (folder / "tied.toml").write_text(tables())
    return folder


@pytest.fixture(scope="module")
def both(site: Path) -> tuple[Study, Study]:
    return run_job(site / "plain.toml"), run_job(site / "tied.toml")


def test_a_rigid_movement_changes_no_gap(both: tuple[Study, Study]) -> None:
    """The grid lies along the line in both: the same nodes, to rounding; draws are of other numbers."""
    plain, tied = (study.report for study in both)
    assert plain.today is not None and tied.today is not None
    assert tied.today.verdict == plain.today.verdict
    assert tied.today.least_clearance == pytest.approx(plain.today.least_clearance, abs=0.0003)
    assert tied.before.worst is not None and plain.before.worst is not None
    assert tied.before.worst.gap == pytest.approx(plain.before.worst.gap, abs=0.0003)
    assert tied.plan is not None and plain.plan is not None
    assert tied.plan.deepest == pytest.approx(plain.plan.deepest, abs=0.0006)


def test_places_come_out_in_the_controls_system(both: tuple[Study, Study]) -> None:
    plain, tied = (study.report for study in both)
    ends = [plain.plan_point(tuple(p)) for p in plain.line.xy[[0, -1]]]
    there = [tied.plan_point(tuple(p)) for p in tied.line.xy[[0, -1]]]
    for (x, y), found in zip(ends, there, strict=True):
        assert found == pytest.approx(on_grid(x, y, 0.0)[:2], abs=0.0005)


def test_check_points_equal_numpys(both: tuple[Study, Study]) -> None:
    report = both[1].report
    frame, surface = report.scan.frame, report.surface.height
    at = np.array([p.at for p in report.checks.points])
    site = frame.own_to_site(at)
    off = surface.sample(site[:, :2]) - site[:, 2]
    found = report.checks.height
    assert found is not None and found.n == len(CHECKS)
    assert found.rmse == float(np.sqrt(np.mean(off**2))) and found.mean == float(np.mean(off))
    assert found.sd == float(np.std(off, ddof=1))
    # the scan is of 1 mm noise: what is left is what the checks are wrong by
    assert off == pytest.approx([c[2] for c in CHECKS], abs=0.001)
    told = reference_document(report)["checks"]
    assert told["asprs"]["rmse_v"] == pytest.approx(np.hypot(found.rmse, 0.001))  # type: ignore[index]
    assert told["nssda"]["accuracy_z"] == 1.96 * found.rmse  # type: ignore[index]
    assert not told["asprs"]["enough"]  # type: ignore[index]
    assert any("fewer than the 30" in note for note in report.notes)


def test_checks_never_lay_the_scan(both: tuple[Study, Study], site: Path) -> None:
    job = load_job(site / "tied.toml")
    wrong = tuple(replace(c, at=(c.at[0], c.at[1], c.at[2] + 5.0)) for c in job.scan.checks)
    from crestcut.scan.load import read_scan

    other = read_scan(replace(job.scan, checks=wrong))
    assert np.array_equal(other.points, both[1].report.scan.points)


def test_its_record_is_taken_up(both: tuple[Study, Study], tmp_path: Path) -> None:
    write_study(both[1], tmp_path / STUDY_NAME)
    back = read_study(tmp_path / STUDY_NAME)
    assert back is not None and back.report.checks == both[1].report.checks
    assert back.report.scan.tie is not None and back.report.scan.tie.rms == both[1].report.scan.tie.rms  # type: ignore[union-attr]


def test_a_line_in_east_and_north_is_the_same_line(both: tuple[Study, Study], site: Path) -> None:
    a, b = (on_grid(x, 1.0, 0.0) for x in (0.4, 4.6))
    line = "[" + ", ".join(f"{{ east = {p[0]!r}, north = {p[1]!r} }}" for p in (a, b)) + "]"
    (site / "east.toml").write_text(tables(line))
    job = load_job(site / "east.toml")
    from crestcut.scan.placing.place import resolve_line

    frame = both[1].report.scan.frame
    assert np.array(resolve_line(job.travel.line, (), frame)) == pytest.approx(
        both[1].report.line.xy[[0, -1]], abs=0.0005
    )


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('name = "C1"', 'name = "C0"', '"C0" is there twice'),
        ('seen = [0.5, 0.3, 0.2]', 'seen = "Q"', 'no mark is named "Q"'),
        ('seen = [0.5, 0.3, 0.2]', "", "missing"),
        ('seen = [0.5, 0.3, 0.2]', "seen = [0.5]", "is no place"),
        ('seen = [0.5, 0.3, 0.2]', 'seen = [0.5, 0.3, 0.2]\nwithin = "2 mm"', "for some points only"),
        ('seen = [0.5, 0.3, 0.2]', 'seen = [0.5, 0.3, 0.25]', "C0: it lies"),
        ('scanner = "terrestrial"', 'scanner = "terrestrial"\ncrs = "EPSG:4326"', "no east and north"),
    ],
)  # fmt: skip
def test_what_is_refused(site: Path, tmp_path: Path, old: str, new: str, says: str) -> None:
    for name in ("slab.laz", "trolley.toml"):
        (tmp_path / name).symlink_to(site / name)
    text = tables()
    assert old in text
    (tmp_path / "job.toml").write_text(text.replace(old, new, 1))
    result = CliRunner().invoke(main, ["run", str(tmp_path / "job.toml"), "--out", str(tmp_path / "out")])
    assert result.exit_code == 2 and not (tmp_path / "out").exists()
    (line,) = (row for row in result.output.splitlines() if row.startswith("crestcut:"))
    assert says in line


def test_fewer_than_three(site: Path, tmp_path: Path) -> None:
    text = JOB + "".join(tables().split("[[control]]")[k].join(["[[control]]", ""]) for k in (1, 2))
    (tmp_path / "job.toml").write_text(text)
    with pytest.raises(Exception, match="2 of 3 control points"):
        load_job(tmp_path / "job.toml")


def test_a_check_point_outside_the_slab(site: Path, tmp_path: Path) -> None:
    for name in ("slab.laz", "trolley.toml"):
        (tmp_path / name).symlink_to(site / name)
    there = on_grid(9.0, 1.0, 0.1)
    (tmp_path / "job.toml").write_text(tables() + f'[[check]]\nname = "far"\nat = {there}\nwithin = "1 mm"\n')
    result = CliRunner().invoke(main, ["run", str(tmp_path / "job.toml"), "--out", str(tmp_path / "out")])
    assert result.exit_code == 2 and "[[check]] far: it lies 4.0" in result.output


def test_result_and_record_say_the_same(both: tuple[Study, Study]) -> None:
    from crestcut.report.view.record import record_document
    from crestcut.report.view.result import result_document

    report = both[1].report
    document, record = result_document(report), record_document(report)
    assert json.dumps(document["reference"]) == json.dumps(record["reference"])
    assert "{ east = ..., north = ... }" in document["frame"]["read"]  # type: ignore[index]
