"""Long work in a process of its own: the command line itself, told by JSON lines how far it is.

The server stays free to answer, a cancel is the Ctrl-C of the command line (nothing written, what was there
stays), and the process ends with the server however that ends. After a command one more process is started
that loads what the next will need and waits: on two cores that is two of the seconds that somebody who has
changed a number would wait. What was under way stands in a record beside the job, so that the next start can
say so.
"""

from __future__ import annotations

import asyncio
import contextlib
import json
import os
import signal
import sys
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.base.pace import Pace, seconds_of
from crestcut.base.stopping import READY
from crestcut.serve.folder import JobFolder

PATIENCE = 8.0  # s from asking a process to stop to stopping it
KEPT = 900.0  # s that a process which has loaded all waits for the next command
MOST = 1 << 25  # bytes of a line from a process: the slab that the tight place is drawn on is one of them
DONE = (0, 3)  # exit codes of a command that has answered and written


class Kind(StrEnum):
    """The commands that a page starts."""

    LOOK = "look"
    RUN = "run"
    VERIFY = "verify"


# s of what says nothing of its stages, where it was not done before
_USUAL: Mapping[Kind, Mapping[str, float]] = {Kind.LOOK: {"": 6.0}, Kind.VERIFY: {"": 8.0}}


@dataclass
class Running:
    """One command under way. first : what is known of its answer before there are files: ``result`` and
    ``scene``."""

    kind: Kind
    process: asyncio.subprocess.Process
    pace: Pace
    waited: bool = False  # with all loaded, for this command
    words: str = "starting"
    fault: dict[str, str] = field(default_factory=dict)
    heard: bool = False  # anything at all from it
    first: dict[str, Any] = field(default_factory=dict)
    cancelled: bool = False

    def share(self) -> tuple[float, float]:
        """How much is done, 0 to 0.99, and about how many seconds remain."""
        return self.pace.share() or (0.0, sum(self.pace.usual.values()))


class Runs:
    """What is run on one job, one command at a time."""

    def __init__(self, folder: JobFolder) -> None:
        self.folder = folder
        self.now: Running | None = None
        self._watch: asyncio.Task[None] | None = None
        self._spare: asyncio.subprocess.Process | None = None
        self._away: asyncio.TimerHandle | None = None

    def last(self, kind: Kind) -> dict[str, Any]:
        """The record of the last run: ``began`` (Unix s), ``mark``, ``code`` (None: it was cut short),
        ``fault``; empty where there was none."""
        return self.folder.recall(f"last_{kind}")

    def cut_short(self) -> list[Kind]:
        """What was under way when a server ended, and has not been started again."""
        return [
            kind
            for kind in Kind
            if (told := self.last(kind))
            and told.get("code") is None
            and (self.now is None or self.now.kind is not kind)
        ]

    async def start(self, kind: Kind, mark: str, arguments: Sequence[str | Path]) -> None:
        """Start a command, unless one is under way. mark : of what it reads."""
        if self.now is not None:
            return
        told = self.last(kind)
        self.folder.remember(f"last_{kind}", {**told, "began": time.time(), "mark": mark, "code": None})
        words = [str(kind), *map(str, arguments)]
        waited = await self._sent(words)
        self.now = Running(kind, waited or await self._spawned(words), self._pace(kind), waited is not None)
        self._watch = asyncio.create_task(self._follow(self.now, words))

    def _pace(self, kind: Kind) -> Pace:
        """By what it took the last time, whoever started it then."""
        if kind is Kind.RUN:
            return Pace(seconds_of(self.folder.results / "result.json", self.folder.job.name))
        pace = Pace(self.last(kind).get("seconds") or _USUAL[kind])
        pace.begins("")
        return pace

    async def _spawned(self, words: Sequence[str]) -> asyncio.subprocess.Process:
        try:
            return await asyncio.create_subprocess_exec(
                sys.executable, "-P", "-m", "crestcut.apps.cli", "--under", str(os.getpid()), *words,
                cwd=self.folder.home, env=_environment(), stdin=asyncio.subprocess.PIPE,
                stdout=asyncio.subprocess.DEVNULL, stderr=asyncio.subprocess.PIPE, limit=MOST,
            )  # fmt: skip
        except OSError as error:
            raise CrestcutError(f"cannot be started: {error.strerror}", words[0], "try again") from None

    async def _sent(self, words: Sequence[str]) -> asyncio.subprocess.Process | None:
        """The process that waits, given a command; None where none does, or it has ended."""
        spare, self._spare = self._spare, None
        if self._away is not None:
            self._away.cancel()
        if spare is None or spare.returncode is not None:
            return None
        assert spare.stdin is not None
        try:
            spare.stdin.write(json.dumps(words).encode() + b"\n")
            await spare.stdin.drain()
        except OSError:
            return None
        return spare

    async def _keep_ready(self) -> None:
        """A process that loads all a job needs, two seconds' work, and waits for the next command; not for
        ever: it holds a few hundred megabytes. Only a gain: that it cannot be had is no fault."""
        with contextlib.suppress(CrestcutError):
            self._spare = await self._spawned([READY])
            self._away = asyncio.get_running_loop().call_later(KEPT, self.let_go)

    def let_go(self) -> None:
        """End the process that waits."""
        if self._spare is not None:
            with contextlib.suppress(ProcessLookupError):
                self._spare.kill()
        self._spare = None

    async def _follow(self, run: Running, words: Sequence[str]) -> None:
        last = await _listen(run)
        if run.waited and not run.heard and not run.cancelled:  # it had ended before it took the command
            with contextlib.suppress(CrestcutError):
                run.process = await self._spawned(words)
                last = await _listen(run)
        code = run.process.returncode
        run.pace.ends()
        if code not in (*DONE, 2) and not run.cancelled and not run.fault:
            broke = last if not last.startswith("{") else ""
            run.fault = {"what": "it stopped without an answer", "where": broke, "mend": "start it again"}
        record = {
            **self.last(run.kind), "ended": time.time(), "code": code, "fault": run.fault,
            "cancelled": run.cancelled,
        }  # fmt: skip
        if code in DONE:
            record["seconds"] = {"": round(sum(run.pace.spent.values()), 2)}
            record["done_mark"] = record["mark"]
        self.folder.remember(f"last_{run.kind}", record)
        self.now = None
        if code in DONE:
            await self._keep_ready()

    async def cancel(self) -> None:
        """Stop what is under way, as Ctrl-C does: what was there before stays."""
        run = self.now
        if run is None:
            return
        run.cancelled = True
        with contextlib.suppress(ProcessLookupError):
            run.process.send_signal(signal.SIGINT if os.name == "posix" else signal.SIGTERM)
        watch = self._watch
        assert watch is not None
        done, _ = await asyncio.wait({watch}, timeout=PATIENCE)
        if not done:
            with contextlib.suppress(ProcessLookupError):
                run.process.kill()
            await watch


async def _listen(run: Running) -> str:
    """Follow a command until it has ended; the last line that it wrote."""
    assert run.process.stderr is not None
    last = ""
    async for raw in run.process.stderr:
        last = raw.decode("utf-8", "replace").strip()[:300] or last
        with contextlib.suppress(ValueError, KeyError, TypeError):
            told = json.loads(raw)
            run.heard = True
            if "step" in told:
                run.words = str(told["step"])
                if run.kind is Kind.RUN:
                    run.pace.begins(told["key"])
            elif "answer" in told:
                run.first = dict(told["first"])
            elif "fault" in told:
                run.fault = {name: str(told["fault"][name]) for name in ("what", "where", "mend")}
    await run.process.wait()
    return last


def _environment() -> dict[str, str]:
    """This process's, with the package where it was found here."""
    root = str(Path(__file__).resolve().parents[2])
    before = os.environ.get("PYTHONPATH")
    return {**os.environ, "PYTHONPATH": os.pathsep.join([root, before] if before else [root])}
