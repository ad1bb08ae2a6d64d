"""The drawing process: same bytes as drawing here, errors that arrive whole, and no process left behind."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from deliver_scene import make_report

from crestcut.base.errors import CrestcutError
from crestcut.report.folder.files import Staging
from crestcut.report.folder.worker import Worker
from crestcut.report.folder.worker_pipe import Packer, Unpacker
from crestcut.report.pictures.all_pictures import draw_pictures, light


@pytest.fixture(autouse=True)
def found_over_there(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the tests ask for lives in this module: the other process must be able to import it."""
    folder = Path(__file__).parent
    known = os.environ.get("PYTHONPATH", "")  # where this very code may come from
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join(filter(None, (str(folder), str(folder.parent), known))))


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


def read_and_tell(size: int, say: Callable[[str], None]) -> np.ndarray:
    say("reading")
    array = np.arange(float(size))
    array.flags.writeable = False
    return array


def refuse_and_tell(what: str, say: Callable[[str], None]) -> None:
    raise CrestcutError(what, "scan.laz", "mend it")


def fall_dead_or_count(parent: int) -> int:
    if os.getpid() != parent:
        os._exit(9)
    return 7


def note_arrays(path: Path, *arrays: np.ndarray) -> None:
    path.write_text(" ".join(f"{a.sum():g} {a.flags.writeable} {a.flags.f_contiguous}" for a in arrays))


def note_deaf(path: Path) -> None:
    path.write_text(str(signal.SIGINT in signal.pthread_sigmask(signal.SIG_BLOCK, [])))


def hold_everything(path: Path) -> None:
    """Say which process this is, and be as a library's loop is that lets no other thread of it run."""
    import ctypes

    path.write_text(str(os.getpid()))
    ctypes.PyDLL(None).sleep(30)


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
    for folder, press in ((here, Worker(apart=False)), (apart, Worker(apart=True))):
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
    with pytest.raises(ZeroDivisionError), Worker(apart=True) as press:
        press.ask(write_pid, tmp_path / "pid")
        press.finish()
        _ = 1 / 0
    assert gone(int((tmp_path / "pid").read_text()))


def test_an_error_over_there_is_the_same_error_here(tmp_path: Path) -> None:
    with Worker(apart=True) as press:
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


@pytest.mark.parametrize("apart", [True, False])
def test_what_is_fetched_comes_back_as_it_was_with_what_was_said(apart: bool) -> None:
    said: list[str] = []
    with Worker(apart=apart) as press:
        wait = press.fetch("test_press:read_and_tell", 5000, told=True)
        press.ask(np.zeros, 3)
        found = wait(said.append)
        press.finish()
    assert np.array_equal(found, np.arange(5000.0)) and not found.flags.writeable and said == ["reading"]


@pytest.mark.parametrize("apart", [True, False])
def test_an_error_of_what_is_fetched_is_told_to_who_waits_and_to_nobody_else(apart: bool) -> None:
    with Worker(apart=apart) as press:
        wait = press.fetch(refuse_and_tell, "cut short", told=True)
        press.finish()
        with pytest.raises(CrestcutError, match=r"scan\.laz: cut short; mend it"):
            wait(print)


def test_what_a_dead_process_was_to_fetch_is_fetched_here() -> None:
    with Worker(apart=True) as press:
        wait = press.fetch(fall_dead_or_count, os.getpid())
        assert wait() == 7


def test_arrays_arrive_as_they_left(tmp_path: Path) -> None:
    fixed, turned = np.ones(9), np.asfortranarray(np.ones((3, 4)))
    fixed.flags.writeable = False
    with Worker(apart=True) as press:
        press.ask(note_arrays, tmp_path / "said", fixed, turned, np.zeros((0, 3)), np.array(2.0), np.ones(5))
        press.finish()
    assert (tmp_path / "said").read_text() == "9 False True 12 True True 0 True True 2 True True 5 True True"


def test_an_array_is_sent_once_however_often_it_is_asked_with() -> None:
    packer, unpacker = Packer(), Unpacker()
    large, other = np.arange(50_000.0), np.arange(50_000.0)
    first, again, third = (packer.pack(what) for what in ((large, 1), [large, large, 2], (other, large)))
    size = large.nbytes
    assert size < sum(map(len, first)) < size + 2000 and sum(map(len, again)) < 2000
    assert size < sum(map(len, third)) < size + 2000  # alike is not the same
    for message, number in ((first, 1), (again, 2)):
        *arrays, told = unpacker.unpack([bytearray(part) for part in message])
        assert told == number and all(np.array_equal(a, large) for a in arrays)
    a, b = unpacker.unpack([bytearray(part) for part in third])
    assert np.array_equal(a, other) and np.array_equal(b, large)


def test_an_array_at_the_place_of_one_that_is_gone_is_not_taken_for_it() -> None:
    packer, unpacker = Packer(), Unpacker()
    for k in range(20):  # each is freed before the next is made: memory is used again
        message = packer.pack(np.full(100_000, float(k)))
        assert unpacker.unpack([bytearray(part) for part in message])[0] == k


def test_a_full_disk_over_there_is_one_line_and_nothing_stays(tmp_path: Path) -> None:
    staging = Staging(tmp_path / "out")
    with (
        pytest.raises(CrestcutError, match="no space left on device"),
        staging as folder,
        Worker(apart=True) as press,
    ):
        press.ask(write_word, folder / "half.png", "half")
        press.ask(fill_the_disk, folder / "plan.png")
        press.finish()
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(not hasattr(signal, "pthread_sigmask"), reason="no signal masks on this system")
def test_the_process_is_born_deaf_to_ctrl_c_and_its_parent_is_not_left_so(tmp_path: Path) -> None:
    """Ctrl-C goes to both: one that came before the child had learnt not to answer printed its traceback."""
    with Worker(apart=True) as press:
        press.ask(note_deaf, tmp_path / "said")
        press.finish()
    assert (tmp_path / "said").read_text() == "True"
    assert signal.SIGINT not in signal.pthread_sigmask(signal.SIG_BLOCK, [])


def test_what_a_dead_process_owes_is_done_here(tmp_path: Path) -> None:
    with Worker(apart=True) as press:
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
    with Worker(apart=True) as press:
        press.ask(write_pid, tmp_path / "pid")
        press.finish()
    assert (tmp_path / "pid").read_text() == str(os.getpid())


def test_nothing_is_imported_from_the_folder_one_stands_in(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "matplotlib.py").write_text("raise SystemExit('a file of the same name')")
    monkeypatch.chdir(tmp_path)
    with Worker(apart=True) as press:
        press.ask(draw_pictures, make_report(), tmp_path)
        press.ask(write_pid, tmp_path / "pid")
        press.finish()
    assert (tmp_path / "plan.png").exists() and (tmp_path / "pid").read_text() != str(os.getpid())


@pytest.mark.parametrize("blow", [signal.SIGKILL, signal.SIGINT])
def test_the_process_does_not_outlive_its_parent(tmp_path: Path, blow: int) -> None:
    """The parent killed outright, or both sent what Ctrl-C sends: no process, no traceback of the child's."""
    script = (
        "import signal, sys, time; from pathlib import Path\n"
        "from crestcut.report.folder.worker import Worker\n"
        "from test_press import write_pid\n"
        # whoever runs this in the background has Ctrl-C switched off, and children take that over
        "signal.signal(signal.SIGINT, signal.default_int_handler)\n"
        "with Worker(apart=True) as press:\n"
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


@pytest.mark.skipif(sys.platform != "linux", reason="only there a child can be told to end with its parent")
def test_a_process_that_is_busy_dies_with_its_parent_too(tmp_path: Path) -> None:
    """It would not see for seconds that its pipe was closed: an orphan that writes on."""
    script = (
        "import os, sys, time; from pathlib import Path; from crestcut.report.folder.worker import Worker\n"
        "from test_press import hold_everything\n"
        "press = Worker(apart=True); press.ask(hold_everything, Path(sys.argv[1])); time.sleep(60)\n"
    )
    child = subprocess.Popen([sys.executable, "-c", script, str(tmp_path / "pid")])
    deadline = time.monotonic() + 30
    while not ((tmp_path / "pid").exists() and (tmp_path / "pid").read_text()):
        assert time.monotonic() < deadline
        time.sleep(0.02)
    child.kill()
    child.wait()
    assert gone(int((tmp_path / "pid").read_text()))
