"""A change of several files is whole or not at all, whenever it is cut short, and each can be taken back."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from crestcut.base.errors import CrestcutError
from crestcut.serve import folder as module
from crestcut.serve.folder import JobFolder, Stale, edited

JOB = '# mine\ntitle = "Yard"   # as the neighbours say\n[scan]\nfiles = ["a.laz"]\n'


class Killed(BaseException):
    """The process ends here."""


@pytest.fixture
def job(tmp_path: Path) -> JobFolder:
    (tmp_path / "job.toml").write_text(JOB)
    return JobFolder(tmp_path / "job.toml")


def held(job: JobFolder) -> dict[str, str]:
    return {p.name: p.read_text() for p in (job.job, job.vehicle, job.sheet) if p.exists()}


def test_a_change_keeps_comments_and_all_that_it_is_not_about(job: JobFolder) -> None:
    job.edit("size", {"scan.unit": "m", "slab.kind": None, "mark": [{"name": "A", "at": [1.0, 2.0]}]})
    assert job.text().startswith('# mine\ntitle = "Yard"   # as the neighbours say\n')
    assert tomllib.loads(job.text()) == {
        "title": "Yard", "scan": {"files": ["a.laz"], "unit": "m"}, "mark": [{"name": "A", "at": [1.0, 2.0]}],
    }  # fmt: skip


@pytest.mark.parametrize("at", range(12))
def test_cut_short_at_any_write_the_job_is_as_before_or_as_after(
    job: JobFolder, at: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    job.change("first", {job.job: JOB + "# 1\n", job.vehicle: "v = 1\n"})
    before = held(job)
    after = {"job.toml": JOB + "# 2\n", "vehicle.toml": "v = 2\n", "vehicle_sheet.toml": "s = 2\n"}
    whole, left = module._replace, [at]

    def dies(path: Path, text: str | bytes | None) -> None:
        if left[0] == 0:
            raise Killed
        left[0] -= 1
        whole(path, text)

    monkeypatch.setattr(module, "_replace", dies)
    files = {job.job: after["job.toml"], job.vehicle: after["vehicle.toml"], job.sheet: "s = 2\n"}
    try:
        job.change("second", files)
    except Killed:
        pass
    monkeypatch.setattr(module, "_replace", whole)
    again = JobFolder(job.job)
    again.put_right()
    assert held(again) in (before, after)
    again.edit("third", {"title": "Still works"})
    assert again.data()["title"] == "Still works"


def test_undo_takes_each_change_back_in_turn(job: JobFolder) -> None:
    told = [held(job)]
    for n in range(4):
        files = {job.job: JOB + f"# {n}\n", job.vehicle: None if n == 2 else f"v = {n}\n"}
        job.change(f"change {n}", files)
        told.append(held(job))
    for n in reversed(range(4)):
        last = job.last_change()
        assert last is not None and last.label == f"change {n}"
        assert job.undo() == f"change {n}" and held(job) == told[n]
    assert job.undo() == "" and held(job) == told[0]


def test_an_edit_from_outside_is_noticed_and_not_written_over(job: JobFolder) -> None:
    known = job.number()
    job.job.write_text(JOB.replace("Yard", "Courtyard"))
    assert job.number() != known
    with pytest.raises(Stale):
        job.edit("mine", {"title": "Mine"}, known)
    assert job.data()["title"] == "Courtyard" and job.last_change() is None


def test_only_what_a_run_reads_makes_an_answer_old(job: JobFolder) -> None:
    mark, whole = job.plan_mark(), job.whole_mark()
    job.edit("after", {"after.files": ["b.laz"]})
    assert job.plan_mark() == mark and job.whole_mark() != whole
    job.edit("room", {"clearance.want": "10 mm"})
    assert job.plan_mark() != mark


def test_a_job_that_an_editor_broke_is_told_and_can_be_taken_back(job: JobFolder) -> None:
    job.edit("room", {"clearance.want": "10 mm"})
    job.job.write_text("title = \n")
    with pytest.raises(CrestcutError, match="cannot be read"):
        job.data()
    for odd in (
        "slab = 3",
        "mark = 1",
        "witness = [1]",
        "[after]\nstring = 2",
    ):
        job.job.write_text(odd)
        with pytest.raises(CrestcutError):
            job.data()
    job.undo()
    assert job.text() == JOB


def test_a_job_of_several_lines_is_sent_to_the_command_line(job: JobFolder) -> None:
    job.job.write_text(JOB + '[[travel]]\nname = "left gate"\n[[travel]]\nname = "right gate"\n')
    with pytest.raises(CrestcutError, match=r"one line.*crestcut run job\.toml"):
        job.data()


def test_a_job_of_another_name_keeps_its_things_apart(tmp_path: Path) -> None:
    one, two = JobFolder(tmp_path / "job.toml"), JobFolder(tmp_path / "drive.toml")
    mine, yours = (
        {f.vehicle, f.sheet, f.results, f.looked, f.scans, f.hidden} for f in (one, two)
    )  # fmt: skip
    assert not mine & yours


def test_a_table_is_made_and_an_empty_key_is_no_fault() -> None:
    assert edited("", {"a.b": 1, "c.d": None}) == "[a]\nb = 1\n"
