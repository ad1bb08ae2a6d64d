"""Readers of compiled libraries run in a process of their own: what such a library dies of becomes one line.

A bad count makes some of them abort the whole process, loop for ever or ask for all memory there is; no
``except`` helps against that. The process has limits of time and memory that grow with the file; of memory
only where all of the file is to be held.
"""

from __future__ import annotations

import contextlib
import importlib
import os
import pickle
import signal
import subprocess
import sys
import threading
from pathlib import Path

from crestcut.base.errors import CrestcutError
from crestcut.base.stopping import end_with_parent
from crestcut.scan.formats.raw import RawScan, unreadable
from crestcut.scan.formats.take import Take

SECONDS, SECONDS_PER_MB = 8.0, 2.0  # of processor time; the sample's 2 MB take half a second in all
MEMORY, MEMORY_PER_BYTE = 2 << 30, 100  # bytes of address space; a packed point of 5 bytes becomes 150
MAPPED = {"USDZ": 3 << 29}  # and what a library maps of it, mostly unused, before it has read anything
_PATIENCE = 10.0  # times as long by the clock: other programs want the machine too


def read_caged(reader: str, path: Path, kind: str, asked: Take | None = None) -> RawScan:
    """What ``reader`` ("module:function" of one Path) makes of the file, read in a process of its own.

    kind : what the file is called in messages.  asked : what is to be held of it, for a reader that reads
    some points at a time; others take the path alone. Raises the reader's own CrestcutError, or one that
    says that the reader died or took too long.
    """
    size = path.stat().st_size
    seconds = SECONDS + SECONDS_PER_MB * size / 1e6
    held = size if asked is None or asked.most is None else 0
    memory = MEMORY + MAPPED.get(kind, 0) + MEMORY_PER_BYTE * held
    limits = (str(int(seconds)), str(memory), str(os.getpid()))
    program = [sys.executable, "-P", "-m", __name__, reader, str(path), *limits]
    found = _answer(program, asked, _PATIENCE * seconds, path, kind)
    if isinstance(found, CrestcutError):
        raise found
    if isinstance(found, RawScan):
        return found
    raise unreadable(path, kind, found)


def _answer(program: list[str], asked: Take | None, patience: float, path: Path, kind: str) -> object:
    """What the process sends back, unpacked as it comes: as bytes it would be held twice."""
    with subprocess.Popen(
        program, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, env=_environment()
    ) as process:
        assert process.stdin is not None and process.stdout is not None
        late = threading.Timer(patience, process.kill)
        late.start()
        found: object = None
        try:
            with contextlib.suppress(BrokenPipeError), process.stdin as questions:
                pickle.dump(asked, questions)
            with contextlib.suppress(EOFError, pickle.UnpicklingError):
                found = pickle.load(process.stdout)
            code = process.wait()
        except BaseException:  # a signal, say: nobody waits for it any more
            process.kill()
            raise
        finally:
            on_time = late.is_alive()
            late.cancel()
    if not on_time:
        raise unreadable(path, kind, "it takes far too long")
    if found is None or code:
        raise unreadable(path, kind, _died_of(code))
    return found


def _environment() -> dict[str, str]:
    """This process's, with the package where it was found here."""
    root = str(Path(__file__).resolve().parents[3])
    before = os.environ.get("PYTHONPATH")
    # on machines of many cores, what threads set aside for themselves would use the limit up
    few = {"MALLOC_ARENA_MAX": "4", "OPENBLAS_NUM_THREADS": "1"}
    return {**os.environ, **few, "PYTHONPATH": os.pathsep.join([root, before] if before else [root])}


def _died_of(code: int) -> str:
    names = {signal.SIGABRT: "its reader gave up"}
    if hasattr(signal, "SIGXCPU"):
        names[signal.SIGXCPU] = "it takes far too long"
    with contextlib.suppress(ValueError):
        return names.get(signal.Signals(-code), "its reader broke down")
    return "its reader broke down"


def _limit(seconds: int, memory: int) -> None:
    """Hold this process to its limits, where the system can."""
    with contextlib.suppress(ImportError, ValueError, OSError, AttributeError):
        import resource

        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds + 5))
        resource.setrlimit(resource.RLIMIT_AS, (memory, memory))


def _serve() -> None:
    """The process: read one file, send what came of it, a scan or a CrestcutError or words."""
    reader, path, seconds, memory, parent = sys.argv[1:]
    answers = os.fdopen(os.dup(1), "wb")
    asked = pickle.load(sys.stdin.buffer)
    os.dup2(2, 1)  # nothing else may write among the answers
    _limit(int(seconds), int(memory))
    end_with_parent(int(parent))
    module, name = reader.split(":")
    found: object
    try:
        read = getattr(importlib.import_module(module), name)
        found = read(Path(path)) if asked is None else read(Path(path), asked)
    except CrestcutError as error:
        found = error
    except MemoryError:
        found = "it asks for more memory than so small a file can need"
    except Exception as error:
        found = f"{type(error).__name__}: {error}"[:200]
    with answers:
        pickle.dump(found, answers, protocol=pickle.HIGHEST_PROTOCOL)
    os._exit(0)  # a library that dies while it tidies up has done its work


if __name__ == "__main__":
    _serve()
