"""A command that is stopped: what it says is true, what was there is whole, and nobody outlives it."""

from __future__ import annotations

import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from crestcut.apps import cli
from crestcut.base.stopping import stopped_as_by_ctrl_c
from crestcut.report.folder.files import Staging
from test_bad_input import JOB, VEHICLE, slab, write_laz

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="no such signals there")


@pytest.fixture
def answered() -> Iterator[None]:
    """The signals as a terminal gives them: who starts the tests by ``&`` in a script has switched Ctrl-C
    off, and a command keeps that."""
    before = {n: signal.signal(n, signal.SIG_DFL) for n in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)}
    yield
    for number, handler in before.items():
        signal.signal(number, handler)


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A good job, and what an earlier run left in its folder."""
    (tmp_path / "job.toml").write_text(JOB)
    (tmp_path / "trolley.toml").write_text(VEHICLE)
    write_laz(tmp_path / "slab.laz", slab())
    with Staging(tmp_path / "out", "run") as folder:
        for name in ("plan.png", "work_jig.csv"):
            (folder / name).write_text(f"old {name}")
    return tmp_path


def stopped(site: Path, blow: signal.Signals, word: str) -> tuple[int, str, list[int]]:
    """Run the job, stop it once it has said ``word``: exit code, stderr, its child processes."""
    command = [
        sys.executable,
        "-m",
        "crestcut.apps.cli",
        "run",
        str(site / "job.toml"),
        "--out",
        str(site / "out"),
    ]
    child = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    assert child.stderr is not None
    said = ""
    while word not in said:
        line = child.stderr.readline()
        assert line, said
        said += line
    known = Path(f"/proc/{child.pid}/task/{child.pid}/children")
    children = [int(pid) for pid in known.read_text().split()] if known.exists() else []
    child.send_signal(blow)
    out, rest = child.communicate(timeout=60)
    assert out == ""
    return child.returncode, said + rest, children


def names(folder: Path) -> set[str]:
    return {p.name for p in folder.iterdir()}


def old_set_is_whole(site: Path) -> bool:
    found = {p.name: p.read_text() for p in (site / "out").iterdir() if p.name != "manifest.json"}
    return found == {name: f"old {name}" for name in ("plan.png", "work_jig.csv")}


@pytest.mark.parametrize("blow", [signal.SIGTERM, signal.SIGHUP])
def test_an_end_that_is_asked_for_is_answered_as_ctrl_c_is(site: Path, blow: signal.Signals) -> None:
    before = names(site)
    code, said, children = stopped(site, blow, "seeking the least cut")
    assert code == 130
    assert said.splitlines()[-1] == "crestcut: stopped, nothing was written" and "Traceback" not in said
    assert names(site) == before and old_set_is_whole(site)
    assert children == [], "one process once the scan is read"


def test_a_run_killed_outright_leaves_what_the_next_command_sweeps(site: Path) -> None:
    before = names(site)
    code, _, children = stopped(site, signal.SIGKILL, "trying what is cheaper")
    assert code == -signal.SIGKILL and children == []
    (left,) = names(site) - before
    assert left.startswith(".out-") and left.endswith(".part") and old_set_is_whole(site)
    done = CliRunner().invoke(cli.main, ["vehicle", str(site / "trolley.toml"), "--out", str(site / "out")])
    assert done.exit_code == 0, done.output
    assert names(site) == before
    assert names(site / "out") == {"plan.png", "work_jig.csv", "vehicle.png", "manifest.json"}


@pytest.mark.usefixtures("answered")
@pytest.mark.parametrize("blow", [signal.SIGINT, signal.SIGTERM])
def test_one_that_comes_after_the_switch_does_not_say_that_nothing_was_written(
    site: Path, monkeypatch: pytest.MonkeyPatch, blow: signal.Signals
) -> None:
    monkeypatch.setattr(cli, "_list", lambda _: signal.raise_signal(blow))
    out = site / "out"
    done = CliRunner().invoke(cli.main, ["vehicle", str(site / "trolley.toml"), "--out", str(out)])
    assert done.exit_code == 130
    assert done.stderr.splitlines()[-1] == f"crestcut: stopped, all results are in {out}, whole"
    assert (out / "vehicle.png").stat().st_size > 10_000
    monkeypatch.undo()
    drawn = "crestcut.report.draw_vehicle"  # as the command takes it, by the door
    monkeypatch.setattr(drawn, lambda *_: signal.raise_signal(blow))
    again = CliRunner().invoke(cli.main, ["vehicle", str(site / "trolley.toml"), "--out", str(out)])
    assert again.exit_code == 130 and again.stderr.endswith("crestcut: stopped, nothing was written\n")


def test_signals_are_answered_as_before_once_a_command_is_done(site: Path) -> None:
    before = [signal.getsignal(n) for n in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)]
    CliRunner().invoke(cli.main, ["vehicle", str(site / "trolley.toml")])
    assert [signal.getsignal(n) for n in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)] == before


def test_a_stop_that_falls_into_the_making_of_a_class_is_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """Python 3.11 raises a RuntimeError from it there, as while a library is imported (1 of 200 kills)."""

    class Stopped:
        def __set_name__(self, owner: type, name: str) -> None:
            raise KeyboardInterrupt

    def begin(*_: object) -> None:
        type("Formatter", (), {"order": Stopped()})

    monkeypatch.setattr("crestcut.apps.vehicle.vehicle_and_write", begin)
    ended = CliRunner().invoke(cli.main, ["vehicle", "cart.toml"])
    assert ended.exit_code == 130 and "Traceback" not in ended.output and "stopped" in ended.stderr.lower()
    with pytest.raises(RuntimeError, match="its own"), stopped_as_by_ctrl_c():
        raise RuntimeError("its own")
