"""The drawing process: same bytes as drawing here, errors that arrive whole, and no process left behind."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from deliver_scene import make_report

from crestcut.deliver.files import Staging
from crestcut.deliver.pictures import draw_pictures, light
from crestcut.deliver.press import Press
from crestcut.errors import CrestcutError


@pytest.fixture(autouse=True)
def found_over_there(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the tests ask for lives in this module: the other process must be able to import it."""
    folder = Path(__file__).parent
    monkeypatch.setenv("PYTHONPATH", f"{folder}{os.pathsep}{folder.parent}")


def write_word(path: Path, word: str) -> None:
    path.write_text(word)


def write_pid(path: Path) -> None:
    path.write_text(str(os.getpid()))


def refuse(what: str) -> None:
    raise CrestcutError(what, "job.toml", "mend it")


def fill_the_disk(path: Path) -> None:
    raise OSError(28, "No space left on device", str(path))


def fall_dead(path: Path, parent: int) -> None:
    if os.getpid() != parent:
        os._exit(9)
    path.write_text("done here")


def gone(pid: int) -> bool:
    for _ in range(100):
        try:
            os.kill(pid, 0)
        except ProcessLookupError:
            return True
        time.sleep(0.05)
    return False


def test_pictures_drawn_apart_are_byte_for_byte_those_drawn_here(tmp_path: Path) -> None:
    report = make_report()
    here, apart = tmp_path / "here", tmp_path / "apart"
    for folder, press in ((here, Press(apart=False)), (apart, Press(apart=True))):
        folder.mkdir()
        with press:
            press.ask(write_pid, folder / "pid")
            press.ask(draw_pictures, report, folder)
            press.finish()
    assert (here / "pid").read_text() == str(os.getpid()) != (apart / "pid").read_text()
    for name in ("plan.png", "profile.png"):
        assert (here / name).read_bytes() == (apart / name).read_bytes()


def test_a_light_report_gives_the_same_pictures(tmp_path: Path) -> None:
    report = make_report(clearance=0.098, hole=True, release="provisional")
    whole, lean = tmp_path / "whole", tmp_path / "lean"
    for folder, drawn in ((whole, report), (lean, light(report))):
        folder.mkdir()
        draw_pictures(drawn, folder)
    for name in ("plan.png", "profile.png"):
        assert (whole / name).read_bytes() == (lean / name).read_bytes()
    lean_plan = light(report).plan
    assert len(light(report).scan.points) == 0 and lean_plan is not None and not lean_plan.after.lowest


def test_the_process_ends_with_its_block_and_with_an_error(tmp_path: Path) -> None:
    with pytest.raises(ZeroDivisionError), Press(apart=True) as press:
        press.ask(write_pid, tmp_path / "pid")
        press.finish()
        _ = 1 / 0
    assert gone(int((tmp_path / "pid").read_text()))


def test_an_error_over_there_is_the_same_error_here(tmp_path: Path) -> None:
    with Press(apart=True) as press:
        press.ask(refuse, "the thing is wrong")
        press.ask(write_word, tmp_path / "word", "still in order")
        with pytest.raises(CrestcutError) as caught:
            press.finish()
    assert str(caught.value) == "job.toml: the thing is wrong; mend it"
    assert (caught.value.what, caught.value.where, caught.value.mend) == (
        "the thing is wrong",
        "job.toml",
        "mend it",
    )


def test_a_full_disk_over_there_is_one_line_and_nothing_stays(tmp_path: Path) -> None:
    staging = Staging(tmp_path / "out")
    with (
        pytest.raises(CrestcutError, match="no space left on device"),
        staging as folder,
        Press(apart=True) as press,
    ):
        press.ask(write_word, folder / "half.png", "half")
        press.ask(fill_the_disk, folder / "plan.png")
        press.finish()
    assert list(tmp_path.iterdir()) == []


def test_what_a_dead_process_owes_is_done_here(tmp_path: Path) -> None:
    with Press(apart=True) as press:
        press.ask(fall_dead, tmp_path / "first", os.getpid())
        press.ask(write_word, tmp_path / "second", "done too")
        press.finish()
    assert (tmp_path / "first").read_text() == "done here"
    assert (tmp_path / "second").read_text() == "done too"


@pytest.mark.parametrize("program", ["", "/no/such/python", "/bin/false"])
def test_without_another_python_it_is_done_here(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, program: str
) -> None:
    monkeypatch.setattr(sys, "executable", program)
    with Press(apart=True) as press:
        press.ask(write_pid, tmp_path / "pid")
        press.finish()
    assert (tmp_path / "pid").read_text() == str(os.getpid())


def test_nothing_is_imported_from_the_folder_one_stands_in(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "matplotlib.py").write_text("raise SystemExit('a file of the same name')")
    monkeypatch.chdir(tmp_path)
    with Press(apart=True) as press:
        press.ask(draw_pictures, make_report(), tmp_path)
        press.ask(write_pid, tmp_path / "pid")
        press.finish()
    assert (tmp_path / "plan.png").exists() and (tmp_path / "pid").read_text() != str(os.getpid())


@pytest.mark.parametrize("blow", [signal.SIGKILL, signal.SIGINT])
def test_the_process_does_not_outlive_its_parent(tmp_path: Path, blow: int) -> None:
    """The parent killed outright, or both sent what Ctrl-C sends: no process, no traceback of the child's."""
    script = (
        "import signal, sys, time; from pathlib import Path; from crestcut.deliver.press import Press\n"
        "from test_press import write_pid\n"
        # whoever runs this in the background has Ctrl-C switched off, and children take that over
        "signal.signal(signal.SIGINT, signal.default_int_handler)\n"
        "with Press(apart=True) as press:\n"
        "    press.ask(write_pid, Path(sys.argv[1])); press.finish()\n"
        "    print('ready', flush=True); time.sleep(60)\n"
    )
    child = subprocess.Popen(
        [sys.executable, "-c", script, str(tmp_path / "pid")], text=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, start_new_session=True,
    )  # fmt: skip
    assert child.stdout is not None and child.stdout.readline() == "ready\n"
    pid = int((tmp_path / "pid").read_text())
    if blow == signal.SIGINT:
        os.killpg(child.pid, blow)
    else:
        child.send_signal(blow)
    _, said = child.communicate(timeout=30)
    assert gone(pid)
    assert said.count("Traceback") == (blow == signal.SIGINT)  # the parent's own
