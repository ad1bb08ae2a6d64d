"""Commands that are followed while they run, without a server or a process."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Coroutine, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from types import SimpleNamespace
from typing import Any, TypeVar

import pytest

from crestcut.base.pace import Pace
from crestcut.base.stopping import READY
from crestcut.serve.folder import JobFolder
from crestcut.serve.runs import Kind, Running, Runs, _listen

T = TypeVar("T")


def in_a_loop(work: Callable[[], Coroutine[Any, Any, T]]) -> T:
    """Beside this thread: a browser's driver may keep a loop of its own in it."""
    with ThreadPoolExecutor(1) as beside:
        return beside.submit(lambda: asyncio.run(work())).result()


def ended(said: bytes, code: int) -> Any:
    """A process that says so much, and is known to have ended once it is waited for."""
    told = asyncio.StreamReader()
    told.feed_data(said)
    told.feed_eof()
    taken = SimpleNamespace(write=lambda _: None, drain=lambda: asyncio.sleep(0))
    process = SimpleNamespace(stderr=told, stdin=taken, returncode=None, kill=lambda: None)

    async def wait() -> None:
        process.returncode = code

    process.wait = wait
    return process


def test_a_command_that_the_waiting_process_did_not_live_to_take_is_begun_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Killed, and nobody knows it yet as the command is sent."""
    folder = JobFolder(tmp_path / "job.toml")
    runs, begun = Runs(folder), list[str]()

    async def spawned(words: Sequence[str]) -> Any:
        begun.append(words[0])
        return ended(b'{"step": "reading the scan"}\n', 0)

    async def look() -> None:
        runs._spare = ended(b"", -9)
        await runs.start(Kind.LOOK, "mark", [])
        assert runs._watch is not None
        await runs._watch

    monkeypatch.setattr(runs, "_spawned", spawned)
    in_a_loop(look)
    assert begun == ["look", READY]
    assert (runs.last(Kind.LOOK)["code"], runs.last(Kind.LOOK)["fault"]) == (0, {})


def test_how_far_a_command_is_that_says_nothing_of_its_usual_stages() -> None:
    now = [0.0]
    pace = Pace({"": 8.0}, clock=lambda: now[0])
    pace.begins("")

    async def heard() -> Running:
        process = ended(b'{"step": "driving over the finished work", "key": "now"}\n', 0)
        run = Running(Kind.VERIFY, process, pace)
        await _listen(run)
        return run

    run = in_a_loop(heard)
    now[0] = 4.0
    assert run.words == "driving over the finished work" and run.share()[0] == pytest.approx(0.5)
