"""One case read in a process of its own, forked from a warm one: what came of it, and what it touched.

A fork costs some milliseconds where a command costs seconds; the reader cannot harm the next case, its time
and memory are its own, and what it dies of is seen. Compiled readers are called in the fork itself, which is
their cage here: the cage proper is tried by the sample that goes through the command line.
"""

from __future__ import annotations

import contextlib
import ctypes
import io
import json
import os
import re
import select
import signal
import socket
import struct
import sys
import time
import traceback
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

SECONDS, MEMORY = 10.0, 2 << 30  # what no case may pass; seconds of the processor,
MOST_BY_CLOCK = 6  # and so many times as many by the clock
LONGEST = 600  # characters of an error
_ASK = 4 << 30  # address space that a fork may take on: what asks for more is told no, as on a small machine
UNSEEN = re.compile("[\x00-\x08\x0a-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069]")


@dataclass(frozen=True)
class Outcome:
    """How a case ended. fault : "" where all is well, else which rule it broke ("traceback KeyError ...").

    said : the error's line, "" for a file that was read. detail : of a fault, for people.
    """

    fault: str
    said: str
    detail: str = ""
    seconds: float = 0.0
    memory: int = 0  # bytes, at most


# --- how each target is read ----------------------------------------------------------------------


def _scan(path: Path) -> None:
    from crestcut.scan import load

    load.read_caged = _uncaged
    load.read_file(path)


def _uncaged(reader: str, path: Path, kind: str, asked: Any = None) -> Any:
    """What the cage does with a reader, without a process of its own: this is one already."""
    import importlib

    from crestcut.base.errors import CrestcutError
    from crestcut.scan.formats.raw import unreadable

    module, name = reader.split(":")
    try:
        read = getattr(importlib.import_module(module), name)
        return read(path) if asked is None else read(path, asked)
    except CrestcutError:
        raise
    except Exception as error:
        raise unreadable(path, kind, f"{type(error).__name__}: {error}"[:200]) from None


def _vehicle(path: Path) -> None:
    from crestcut.vehicle import derive_angles, load_vehicle

    found = load_vehicle(path)
    derive_angles(found, found.loads[0])


def _sheet(path: Path) -> None:
    from crestcut.job import read_toml
    from crestcut.vehicle import measured_vehicle, sheet_from

    measured_vehicle(sheet_from(*_first(read_toml(path, "measuring sheet"), path)))


def _first(read: tuple[Any, str], path: Path) -> tuple[Any, Path, str]:
    return read[0], path, read[1]


def _job(path: Path) -> None:
    from crestcut.job import load_job

    load_job(path)


def _floor(path: Path) -> None:
    from crestcut.job import load_floor_job

    load_floor_job(path)


def _tool(path: Path) -> None:
    from crestcut.work.tools import load_tool

    load_tool(path)


def _line(path: Path) -> None:
    from crestcut.contact import read_line

    read_line(path)


def _folder(path: Path) -> None:
    from crestcut.report import Staging
    from crestcut.study import Identity

    staging = Staging(path.parent, "run")
    with staging as folder:
        staging.about = Identity("made up")
        (folder / "plan.png").write_text("new plan")


def _command(path: Path) -> None:
    """A whole command, its words in ``args`` beside the case; ``path`` is among them."""
    import click

    from crestcut.apps.cli import main

    args = json.loads((path.parent / "args").read_text())
    said, told = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(said), contextlib.redirect_stderr(told):
        try:
            main(args, standalone_mode=False)
            code = 0
        except SystemExit as ended:
            code = int(ended.code or 0)
        except click.UsageError as error:
            raise _Said(str(error)) from None
    for text in (said.getvalue(), told.getvalue()):
        if bad := UNSEEN.search(text):
            raise AssertionError(f"control character {bad[0]!r} printed")
    if code == 2:
        raise _Said(told.getvalue().rstrip("\n").rsplit("\n", 1)[-1])
    if code not in (0, 3, 4):
        raise AssertionError(f"exit code {code}: {told.getvalue()[-300:]}")


class _Said(Exception):
    """The line of a command that refused."""


TARGETS: dict[str, Callable[[Path], None]] = {
    "scan": _scan, "vehicle": _vehicle, "sheet": _sheet, "job": _job, "floor": _floor, "tool": _tool,
    "line": _line, "folder": _folder, "command": _command,
}  # fmt: skip


def warm() -> None:
    """Import everything that a reader will want, so that forks have it."""
    import ezdxf  # noqa: F401
    import laspy  # noqa: F401
    import pye57  # noqa: F401
    import pyproj  # noqa: F401
    import trimesh  # noqa: F401

    with contextlib.suppress(ImportError):
        import DracoPy  # noqa: F401
        import pxr.Usd
        import pxr.UsdGeom  # noqa: F401
    import crestcut.apps.cli  # noqa: F401
    import crestcut.scan.load as load

    for row in load._READERS.values():
        __import__(f"crestcut.scan.formats.{row.split(':')[0]}")
    for name in ("job", "vehicle", "contact", "work", "study", "report"):
        door = __import__(f"crestcut.{name}", fromlist=["x"])
        for one in getattr(door, "__all__", ()):
            getattr(door, one)


# --- who listens ----------------------------------------------------------------------------------


class Watch:
    """Sees who opens the files beside a case's folder, and who calls the address that mutated files name."""

    def __init__(self, outside: Path) -> None:
        outside.mkdir(exist_ok=True)
        for name in ("secret", "secret.usda", "m.mtl"):
            (outside / name).write_bytes(b"#usda 1.0\n" if name.endswith("a") else b"secret " * 200)
        if not (outside / "pipe").exists():
            os.mkfifo(outside / "pipe")
        self._server = socket.socket()
        self._server.bind(("127.0.0.1", 0))
        self._server.listen(16)
        self._server.setblocking(False)
        self.port = int(self._server.getsockname()[1])
        self._inotify = -1
        if sys.platform == "linux":
            libc = ctypes.CDLL(None, use_errno=True)
            self._inotify = libc.inotify_init1(os.O_NONBLOCK)
            IN_OPEN = 0x20  # linux/inotify.h
            libc.inotify_add_watch(self._inotify, os.fsencode(outside), IN_OPEN)
        self.seen()

    def seen(self) -> list[str]:
        """What was opened and asked since the last call."""
        found = []
        with contextlib.suppress(BlockingIOError):
            while True:
                self._server.accept()[0].close()
                found.append("request")
        if self._inotify >= 0:
            with contextlib.suppress(BlockingIOError):
                data, at = os.read(self._inotify, 65536), 0
                while at < len(data):
                    length = struct.unpack_from("iIII", data, at)[3]
                    found.append("file outside: " + data[at + 16 : at + 16 + length].rstrip(b"\0").decode())
                    at += 16 + length
        return found

    def close(self) -> None:
        """Listen no more."""
        self._server.close()
        if self._inotify >= 0:
            os.close(self._inotify)


# --- one case -------------------------------------------------------------------------------------


def read_case(path: Path, target: str, watch: Watch, seconds: float = SECONDS) -> Outcome:
    """Read the file at ``path`` in a fork, and judge what came of it."""
    ours, theirs = os.pipe()
    began = time.monotonic()
    child = os.fork()
    if child == 0:
        os.close(ours)
        _in_fork(path, target, theirs)
    os.close(theirs)
    answer, late = _answer(ours, began + seconds)
    # where others work too a case has its seconds of the processor; what waits for anything is late
    while late and _worked(child) < seconds and time.monotonic() < began + MOST_BY_CLOCK * seconds:
        more, late = _answer(ours, time.monotonic() + 1.0)
        answer += more
    os.close(ours)
    if late:
        os.kill(child, signal.SIGKILL)
    _, status, usage = os.wait4(child, 0)
    took, memory = time.monotonic() - began, usage.ru_maxrss * 1024
    seen = watch.seen()
    if late:
        return Outcome("hang", "", f"over {seconds:.0f} s", took, memory)
    if seen:
        return Outcome(seen[0].split(":")[0], "", ", ".join(seen), took, memory)
    if memory > MEMORY:
        return Outcome("memory", "", f"{memory / 2**30:.1f} GiB", took, memory)
    if not answer:
        if target == "scan" and _is_caged(path) and os.WIFSIGNALED(status):  # the cage makes a line of it
            return Outcome("", f"(died of signal {os.WTERMSIG(status)} in the cage)", "", took, memory)
        return Outcome(f"died of {status}", "", "", took, memory)
    kind, text = json.loads(answer)
    fault, detail = judged(kind, text)
    return Outcome(fault, "" if kind == "read" else text, detail, took, memory)


def judged(kind: str, text: str) -> tuple[str, str]:
    """(the rule that an answer breaks or "", words on it)."""
    if kind == "trace":
        return "traceback " + text.splitlines()[-1][:60].split(":")[0] + " " + _where(text), text[-1500:]
    if kind == "said":
        if len(text) > LONGEST:
            return "long line", text[:200]
        if bad := UNSEEN.search(text):
            return "control character", repr(bad[0]) + " in " + repr(text[:200])
        if not text.strip():
            return "says nothing", ""
    return "", ""


def _where(trace: str) -> str:
    """The last line of this package in a traceback."""
    found = re.findall(r'crestcut/([\w/]+\.py)", line (\d+)', trace)
    return ":".join(found[-1]) if found else ""


def _is_caged(path: Path) -> bool:
    from crestcut.scan.formats.sniff import sniff
    from crestcut.scan.load import compiled_of

    return compiled_of(sniff(path), path) is not None


def _have_limits(target: str, path: Path) -> None:
    """Those of the cage for what it holds, others else, beside what the warm process has mapped."""
    import resource

    from crestcut.scan.formats.child import MEMORY, SECONDS

    pages = int(Path("/proc/self/statm").read_text().split()[0])
    mapped = pages * resource.getpagesize()
    caged = False
    with contextlib.suppress(Exception):
        caged = target == "scan" and _is_caged(path)
    more = MEMORY - (1 << 28) if caged else _ASK
    resource.setrlimit(resource.RLIMIT_AS, (mapped + more, mapped + more))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    if caged:
        resource.setrlimit(resource.RLIMIT_CPU, (int(SECONDS), int(SECONDS) + 1))


def _worked(process: int) -> float:
    """Processor time of a process so far, s (proc(5): fields 14 and 15 of stat, in clock ticks)."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def _answer(pipe: int, until: float) -> tuple[bytes, bool]:
    """(what the fork wrote by then, whether it was late)."""
    parts = []
    while True:
        ready, _, _ = select.select([pipe], [], [], max(0.0, until - time.monotonic()))
        if not ready:
            return b"".join(parts), True
        if not (part := os.read(pipe, 1 << 16)):
            return b"".join(parts), False
        parts.append(part)


def _in_fork(path: Path, target: str, answers: int) -> None:
    """Read, answer, end: never returns."""
    from crestcut.base.errors import CrestcutError

    _have_limits(target, path)
    null = os.open(os.devnull, os.O_RDWR)
    for number in (0, 1, 2):
        os.dup2(null, number)
    sys.setrecursionlimit(1000)  # as a command has it
    os.chdir(path.parent)
    sys.addaudithook(_refuse_network)
    try:
        TARGETS[target](path)
        found = ("read", "")
    except (CrestcutError, _Said) as error:
        found = ("said", str(error))
    except BaseException:
        found = ("trace", traceback.format_exc())
    with contextlib.suppress(OSError):
        os.write(answers, json.dumps((found[0], found[1][-20_000:])).encode())
    os._exit(0)


def _refuse_network(event: str, args: tuple[Any, ...]) -> None:
    if event in ("socket.connect", "socket.getaddrinfo", "urllib.Request"):
        raise AssertionError(f"a request: {event} {args[-1]!r}"[:120])
