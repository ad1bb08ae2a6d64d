"""Outputs appear whole or not at all."""

from __future__ import annotations

import os
import shutil
import signal
from pathlib import Path

import pytest

from crestcut.base.errors import CrestcutError
from crestcut.report.folder.files import Staging


def leftovers(folder: Path) -> list[str]:
    return sorted(p.name for p in folder.iterdir())


def test_files_arrive_and_others_stay(tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "note.txt").write_text("mine")
    (out / "plan.png").write_text("old")
    staging = Staging(out)
    with staging as folder:
        (folder / "plan.png").write_text("new")
        (folder / "sheets").mkdir()
        (folder / "sheets" / "one.pdf").write_text("sheet")
        assert (out / "plan.png").read_text() == "old", "nothing moves before all is whole"
    assert (out / "plan.png").read_text() == "new"
    assert (out / "sheets" / "one.pdf").read_text() == "sheet"
    assert (out / "note.txt").read_text() == "mine"
    assert (out / "superseded_plan.png").read_text() == "old", "nothing says that it was ours"
    assert leftovers(tmp_path) == ["out"]
    assert sorted(p.name for p in staging.moved) == ["one.pdf", "plan.png"]


def test_a_failure_leaves_nothing(tmp_path: Path) -> None:
    out = tmp_path / "deep" / "out"
    with pytest.raises(ZeroDivisionError), Staging(out) as folder:
        (folder / "half.png").write_text("half")
        _ = 1 / 0
    assert leftovers(tmp_path) == []


def test_a_failed_move_puts_everything_back(tmp_path: Path) -> None:
    out = tmp_path / "out"
    (out / "z.png").mkdir(parents=True)  # a folder where a file must go: the last move fails
    (out / "a.png").write_text("old")
    with pytest.raises(CrestcutError, match="a folder has that name") as caught, Staging(out) as folder:
        (folder / "a.png").write_text("new")
        (folder / "b.png").write_text("new")
        (folder / "sub").mkdir()
        (folder / "sub" / "c.png").write_text("new")
        (folder / "z.png").write_text("new")
    assert "\n" not in str(caught.value)
    assert (out / "a.png").read_text() == "old"
    assert leftovers(out) == ["a.png", "z.png"]
    assert leftovers(tmp_path) == ["out"]


def test_a_full_disk_is_one_line(tmp_path: Path) -> None:
    with pytest.raises(CrestcutError, match="no space left on device"), Staging(tmp_path / "out"):
        raise OSError(28, "No space left on device")
    assert leftovers(tmp_path) == []


def test_an_error_about_another_file_is_not_hidden(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError), Staging(tmp_path / "out"):
        (tmp_path / "missing.laz").read_bytes()


@pytest.mark.parametrize("name", ["taken", "taken/below"])
def test_a_file_in_the_way_is_refused_at_once(tmp_path: Path, name: str) -> None:
    (tmp_path / "taken").write_text("a file")
    with pytest.raises(CrestcutError, match="file") as caught, Staging(tmp_path / name):
        pytest.fail("the block must not run")
    assert "--out" in str(caught.value) and "\n" not in str(caught.value)
    assert (tmp_path / "taken").read_text() == "a file"


def test_no_right_to_write_is_refused_at_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "access", lambda *_: False)
    with pytest.raises(CrestcutError, match="no right to write"), Staging(tmp_path / "out"):
        pytest.fail("the block must not run")


def test_a_folder_of_ours_in_a_folder_that_is_not(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "out"
    out.mkdir()
    monkeypatch.setattr(os, "access", lambda path, _: Path(path) != tmp_path)
    with Staging(out) as folder:
        assert folder.parent == out
        (folder / "a.txt").write_text("a")
    assert leftovers(out) == ["a.txt", "manifest.json"]


def test_a_second_interrupt_while_clearing_up_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    clear, calls = shutil.rmtree, []

    def interrupted(folder: Path, ignore_errors: bool = False) -> None:
        calls.append(folder)
        signal.raise_signal(signal.SIGINT)
        clear(folder, ignore_errors=ignore_errors)

    monkeypatch.setattr("crestcut.report.folder.files.shutil.rmtree", interrupted)
    with pytest.raises(KeyboardInterrupt), Staging(tmp_path / "out") as folder:
        (folder / "half.png").write_bytes(b"x")
        raise KeyboardInterrupt
    assert list(tmp_path.iterdir()) == [] and len(calls) == 1


def test_a_link_to_a_folder_and_a_folder_above_that_may_not_be_looked_into(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "far").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "far")
    look = Path.iterdir

    def refused(place: Path) -> object:
        if place == tmp_path:
            raise PermissionError(13, "Permission denied", str(place))
        return look(place)

    monkeypatch.setattr(Path, "iterdir", refused)
    staging = Staging(tmp_path / "link")
    with staging as folder:
        (folder / "a.txt").write_text("a")
    monkeypatch.undo()
    assert staging.moved == (tmp_path / "link" / "a.txt",)
    assert (tmp_path / "link").is_symlink() and (tmp_path / "far" / "a.txt").read_text() == "a"
    assert leftovers(tmp_path) == ["far", "link"]


def test_the_folder_one_stands_in(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    (tmp_path / "here" / "job.toml").write_text("mine")
    for text in ("first", "second"):
        with Staging(Path(".")) as folder:
            (folder / "a.txt").write_text(text)
    assert leftovers(tmp_path) == ["here"] and Path("a.txt").read_text() == "second"
    assert leftovers(Path(".")) == ["a.txt", "job.toml", "manifest.json"]


@pytest.mark.skipif(os.geteuid() != 0 or not os.path.isdir("/dev/shm"), reason="needs a second disk")
def test_a_folder_on_a_disk_of_its_own(tmp_path: Path) -> None:
    import tempfile

    with tempfile.TemporaryDirectory(dir="/dev/shm") as other:
        (tmp_path / "link").symlink_to(other)
        with Staging(tmp_path / "link") as folder:
            assert os.stat(folder).st_dev == os.stat(other).st_dev
            (folder / "a.txt").write_text("a")
        assert leftovers(Path(other)) == ["a.txt", "manifest.json"]
