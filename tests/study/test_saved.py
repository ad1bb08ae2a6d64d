"""The record of a job, written and read back: the same answer, and nothing else made from a file."""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from pypdf import PdfReader

import crestcut.apps.verify as checking
import crestcut.study.saved as saved
from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError
from crestcut.job.load import load_job
from crestcut.job.records import PlotWish, Surveyed
from crestcut.report import verdict_line
from crestcut.report.view.result import result_document
from crestcut.scan.load import read_scan
from crestcut.study.making import run_job
from crestcut.study.record import Study
from crestcut.study.report import Report
from crestcut.study.saved import (
    STUDY_NAME,
    differing,
    files_key,
    kept_scan,
    kept_slab,
    read_study,
    surface_key,
    write_study,
)
from crestcut.terrain import Drive
from verify.after_scene import JOB, VEHICLE, walked, write_ply

FELT = '\n[[after.witness]]\npart = "tray"\nfront_axle = [3.0, 0.0]\ngap = "21 mm"\nwithin = "0.5 mm"\n'


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Study]:
    """A folder with job, cart and scan, and in ``out`` the record of its run."""
    folder = tmp_path_factory.mktemp("site")
    write_ply(walked(1), folder / "before.ply")
    (folder / "cart.toml").write_text(VEHICLE)
    (folder / "job.toml").write_text(JOB)
    done = run_job(folder / "job.toml")
    (folder / "out").mkdir()
    write_study(done, folder / "out" / STUDY_NAME)
    return folder, done


@pytest.fixture
def moved(site: tuple[Path, Study], tmp_path: Path) -> Path:
    """The same folder somewhere else, for a test to spoil."""
    return Path(shutil.copytree(site[0], tmp_path / "site"))


def told(path: Path) -> dict[str, Any]:
    with np.load(path) as archive:
        found: dict[str, Any] = json.loads(archive["record"].tobytes())
    return found


def rewritten(path: Path, document: dict[str, Any]) -> None:
    """The record with another document in place of its own."""
    with np.load(path) as archive:
        arrays = {name: archive[name] for name in archive.files}
    arrays["record"] = np.frombuffer(json.dumps(document).encode(), np.uint8)
    np.savez(path, **arrays)


def test_what_is_read_back_answers_the_same(site: tuple[Path, Study]) -> None:
    folder, done = site
    back = read_study(folder / "out" / STUDY_NAME)
    assert back is not None and back.report.plan is not None and done.report.plan is not None
    one, other = (result_document(replace(s.report, seconds={})) for s in (done, back))
    assert one == other
    assert np.array_equal(back.report.plan.depth.values, done.report.plan.depth.values, equal_nan=True)
    draws = [s.report.surface.error.slab for s in (done, back)]
    assert draws[0] is not None and draws[1] is not None and draws[0].count > 100
    for field in fields(draws[0]):
        a, b = (getattr(d, field.name) for d in draws)
        assert np.array_equal(a, b) if isinstance(a, np.ndarray) else type(a) is type(b), field.name
    assert np.array_equal(back.report.before.gap.values, done.report.before.gap.values, equal_nan=True)
    assert [d.vehicle.name for d in back.drivers] == [d.vehicle.name for d in done.drivers]
    assert back.release == done.release


def test_same_job_same_bytes(site: tuple[Path, Study], tmp_path: Path) -> None:
    folder, done = site
    later = replace(done, report=replace(done.report, seconds={"scan": 1.0}))
    write_study(later, tmp_path / STUDY_NAME)
    assert (tmp_path / STUDY_NAME).read_bytes() == (folder / "out" / STUDY_NAME).read_bytes()


@pytest.mark.parametrize(
    "name", ["os:system", "crestcut.base.units:metres", "pathlib:Path", "crestcut.nothing:X"]
)
def test_a_file_makes_records_of_this_package_and_nothing_else(moved: Path, name: str) -> None:
    path = moved / "out" / STUDY_NAME
    document = told(path)
    document["study"]["with"]["release"] = {"record": name, "with": {"command": "true"}}
    rewritten(path, document)
    with pytest.raises(CrestcutError, match=r"no record of a job .* run the job again"):
        read_study(path)


def test_half_a_file_is_said(moved: Path) -> None:
    path = moved / "out" / STUDY_NAME
    path.write_bytes(path.read_bytes()[:20_000])
    with pytest.raises(CrestcutError, match="no record of a job"):
        read_study(path)


def test_another_scan_under_the_same_name_is_not_taken(site: tuple[Path, Study], tmp_path: Path) -> None:
    _, done = site
    write_ply(walked(3), tmp_path / "before.ply")
    choice = replace(done.report.job.scan, files=(tmp_path / "before.ply",))
    elsewhere = replace(done.report, job=replace(done.report.job, scan=choice))
    write_study(replace(done, report=elsewhere), tmp_path / STUDY_NAME)
    with pytest.raises(CrestcutError, match="not the one that this plan was made from"):
        read_study(tmp_path / STUDY_NAME)


def test_the_work_is_checked_against_the_plan_that_was_made(
    site: tuple[Path, Study], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Not against one made anew, even where the job has changed since: that is said."""
    folder, done = site
    monkeypatch.setattr("crestcut.study.making.run_job", lambda *_: pytest.fail("planned anew"))
    (folder / "job.toml").write_text(JOB + FELT)
    found = checking.check_job(folder / "job.toml", folder=folder / "out")
    assert found.check.notes == () and found.report.plan is not None and done.report.plan is not None
    (folder / "job.toml").write_text(JOB.replace('"25 mm"', '"12 mm"') + FELT)
    other = checking.check_job(folder / "job.toml", folder=folder / "out")
    assert other.report.plan is not None and other.report.plan.deepest == done.report.plan.deepest
    assert [n for n in other.check.notes if "changed since the plan was made (cut)" in n]


def test_the_plan_of_another_version_or_job_is_made_anew(
    moved: Path, site: tuple[Path, Study], monkeypatch: pytest.MonkeyPatch
) -> None:
    ran: list[Path] = []

    def anew(path: Path, *_: object) -> Study:
        ran.append(path)
        return site[1]

    monkeypatch.setattr("crestcut.study.making.run_job", anew)
    (moved / "job.toml").write_text(JOB + FELT)
    path = moved / "out" / STUDY_NAME
    rewritten(path, {**told(path), "version": "0.0.1"})
    found = checking.check_job(moved / "job.toml", folder=moved / "out")
    assert ran and [n for n in found.check.notes if "another version" in n]
    ran.clear()
    rewritten(path, told(site[0] / "out" / STUDY_NAME))
    (moved / "job.toml").rename(moved / "other.toml")
    assert checking.check_job(moved / "other.toml", folder=moved / "out").check.notes == () and ran


def test_a_job_differs_in_what_it_says_not_in_where_it_lies(site: tuple[Path, Study]) -> None:
    job = site[1].report.job
    files = tuple(Path("/elsewhere") / f.name for f in job.scan.files)
    assert differing(job, replace(job, scan=replace(job.scan, files=files))) == ()
    assert differing(job, replace(job, title="Another", cut=replace(job.cut, deepest=0.01))) == (
        "title",
        "cut",
    )
    assert differing(job, replace(job, plot=PlotWish("A4", client="another"))) == ()


def test_drawings_are_made_of_the_plan_as_it_was_made(
    moved: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """By the command line, which wins over the job; nothing is written where the scale does not fit."""
    monkeypatch.setattr("crestcut.study.making.run_job", lambda *_: pytest.fail("the job was run again"))
    job, out = moved / "job.toml", moved / "out"
    job.write_text(job.read_text() + '\n[plot]\npaper = "A2"\nclient = "somebody"\nscale = "1:100"\n')

    def plot(*words: str) -> int:
        with pytest.raises(SystemExit) as ended:
            main(["plot", str(job), "--out", str(out), *words])
        return int(ended.value.code or 0)

    assert plot("--paper", "A4", "--scale", "1:5") == 2
    said = capsys.readouterr().err.strip().splitlines()[-1]
    assert said.startswith("crestcut: scale: at 1:5 the plan does not fit on A4; 1:")
    assert not (out / "plots.pdf").exists()
    assert plot("--paper", "A4") == 0
    assert "at 1:100 on A4" in capsys.readouterr().out
    page = PdfReader(out / "plots.pdf").pages[0]
    assert "somebody" in page.extract_text() and "1:100, A4" in page.extract_text()
    assert (out / "plots.dxf").is_file() and (out / STUDY_NAME).is_file()


TAKEN_UP = "taking up the slab from study.npz: same scan, window and settings"
READ = '\n[[string]]\na = [0.6, 0.0]\nb = [3.2, 0.0]\nat = "1.3 m"\nblocks = "100 mm"\ndown = "70 mm"\n'


def ran(job: Path, before: Path | None, into: Path) -> tuple[Study, bytes, bool]:
    """A run with the record ``before`` at hand: its study, the bytes of its own record, and whether the slab
    was taken up."""
    said: list[str] = []
    told: list[Report] = []
    done = run_job(job, said.append, before, answered=told.append)
    (early,) = told  # the answer, before anything is planned
    assert early.plan is None and verdict_line(early) == verdict_line(done.report)
    write_study(done, into)
    return done, into.read_bytes(), TAKEN_UP in said


@pytest.mark.parametrize("change", ["a reading", "a clearance", "the gap wanted"])
def test_much_the_same_job_takes_the_slab_up_and_ends_in_the_same_bytes(
    change: str, moved: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    job, cart = moved / "job.toml", moved / "cart.toml"
    text, vehicle = job.read_text(), cart.read_text()
    if change == "a reading":
        job.write_text(text + READ)
    elif change == "a clearance":
        cart.write_text(vehicle.replace('clearance = "58 mm"', 'clearance = "57 mm"'))
    else:
        job.write_text(text.replace('want = "20 mm"', 'want = "22 mm"'))
    assert (job.read_text(), cart.read_text()) != (text, vehicle)
    cold, one, was = ran(job, None, moved / "cold.npz")
    again, other, taken = ran(job, moved / "out" / STUDY_NAME, moved / "again.npz")
    assert taken and not was
    assert one == other
    documents = [json.dumps(result_document(replace(s.report, seconds={}))) for s in (cold, again)]
    assert documents[0] == documents[1]
    # and what was taken up can be taken up from there, also where readings have moved the surface since; from
    # the same place the scan is not read at all
    monkeypatch.setattr(saved, "read_scan", lambda *_: pytest.fail("read again"))
    assert ran(job, moved / "again.npz", moved / "third.npz")[1:] == (one, True)


def test_of_another_scan_window_or_setting_nothing_is_taken_up(site: tuple[Path, Study], moved: Path) -> None:
    report = site[1].report
    drives = [Drive(3.0, 1.0, 0.6)]
    scan, frame, job = read_scan(report.job.scan), report.surface.height.frame, report.job
    key = surface_key(scan, frame, drives, job)
    assert key == surface_key(report.scan, frame, drives, job)  # remembered, not read
    assert key == surface_key(scan, frame, drives, replace(job, path=moved / "x.toml", title="another"))
    (file,) = scan.files
    elsewhere = replace(scan, files=(replace(file, path=moved / file.path.name),))
    named = replace(job, scan=replace(job.scan, operator="somebody", checks=(Surveyed("K", (1, 0, 0)),)))
    assert key == surface_key(elsewhere, frame, drives, named)
    points = scan.points.copy()
    points[7, 2] += 1e-9  # its file the same: the library that reads it is another, or a file beside it
    others = [
        surface_key(replace(scan, points=points), frame, drives, job),
        surface_key(replace(scan, files=(replace(file, path=moved / "b.ply"),)), frame, drives, job),
        surface_key(replace(scan, files=(replace(file, sha256="0" * 64),)), frame, drives, job),
        surface_key(scan, replace(frame, shape=(frame.shape[0] + 1, frame.shape[1])), drives, job),
        surface_key(scan, frame, [Drive(3.0, 1.1, 0.6)], job),
        surface_key(scan, frame, drives, replace(job, settings=replace(job.settings, seed=1))),
        surface_key(scan, frame, drives, replace(job, slab=replace(job.slab, flatness=20.0))),
        surface_key(scan, frame, drives, replace(job, scan=replace(job.scan, scanner="terrestrial"))),
    ]
    assert len({key, *others}) == 1 + len(others)


def test_a_scan_is_remembered_of_the_same_files_read_the_same_way(
    moved: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    choice = load_job(moved / "job.toml").scan
    scan, key = read_scan(choice), files_key(choice)
    assert key and key == files_key(choice, scan)
    others = [files_key(replace(choice, unit="ft")), files_key(replace(choice, leave_classes=(7,)))]
    with monkeypatch.context() as patch:
        patch.setattr(saved, "code_digest", lambda _: "other code")
        others.append(files_key(choice))
    with monkeypatch.context() as patch:
        patch.setattr(saved.metadata, "version", lambda name: "1" if name == "laspy" else "2")
        others.append(files_key(choice))
    with choice.files[0].open("r+b") as file:
        file.seek(-1, 2)
        file.write(b"\0")
    others.append(files_key(choice))
    shutil.copy(choice.files[0], moved / "b.ply")  # words on a scan name its file
    others.append(files_key(replace(choice, files=(moved / "b.ply",))))
    assert len({key, *others}) == 1 + len(others) and "" not in others
    # what a file may name beside it, and what a line needs of a larger one, no hash of the file tells
    (moved / "m.obj").write_text("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n")
    assert files_key(replace(choice, files=(moved / "m.obj",))) == ""
    assert files_key(choice, replace(scan, whole=scan.points[:9])) == ""
    assert kept_scan(moved / "out" / STUDY_NAME, "") is None


def test_a_slab_is_taken_up_whole_or_not_at_all(site: tuple[Path, Study], moved: Path) -> None:
    path, laid = moved / "out" / STUDY_NAME, site[1].laid
    assert laid is not None and kept_slab(path, laid.made_from) is not None
    assert kept_slab(path, "0" * 64) is None
    assert kept_slab(moved / "none.npz", laid.made_from) is None
    whole = path.read_bytes()
    for at in range(200, len(whole), len(whole) // 12):
        path.write_bytes(whole[:at])
        assert kept_slab(path, laid.made_from) is None
    document = told(site[0] / "out" / STUDY_NAME)
    path.write_bytes(whole)
    document["study"]["with"]["laid"]["record"] = "os:system"
    rewritten(path, document)
    assert kept_slab(path, laid.made_from) is None


def test_what_is_kept_lies_in_memory_as_it_is_read_back(site: tuple[Path, Study]) -> None:
    """Sums over an array that lies another way round have other last digits."""
    laid = site[1].laid
    assert laid is not None
    kept = kept_slab(site[0] / "out" / STUDY_NAME, laid.made_from)
    assert kept is not None
    pairs = list(arrays_of(laid.surface, kept.surface))
    assert len(pairs) > 10
    for one, other in pairs:
        assert (one.dtype, one.shape) == (other.dtype, other.shape)
        # an empty array lies no way round
        assert one.size == 0 or one.strides == other.strides
        assert one.tobytes() == other.tobytes()


def arrays_of(one: Any, other: Any) -> Iterator[tuple[np.ndarray[Any, Any], np.ndarray[Any, Any]]]:
    """Every array of two records alike, side by side; what else they hold is the same."""
    assert type(one) is type(other)
    if isinstance(one, np.ndarray):
        yield one, other
    elif is_dataclass(one):
        for field in fields(one):
            yield from arrays_of(getattr(one, field.name), getattr(other, field.name))
    elif isinstance(one, tuple):
        assert len(one) == len(other)
        for a, b in zip(one, other, strict=True):
            yield from arrays_of(a, b)
    else:
        assert one == other or (one != one and other != other)
