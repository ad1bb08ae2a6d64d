"""A second process: it reads the scan while this one loads its libraries, and draws while this tries options.

Loading and drawing take as long as all the mathematics. So the command line starts the press first of all: it
reads the scan, hands it over, loads what draws while the slab is being found, waits, and is handed the
finished report. It is a plain child of this Python, spoken to over its pipes: nothing is forked, and it ends
with its parent however that ends. Without it (a library call, one core, no child allowed) the same functions
run here, with the same bytes as their result.
"""

from __future__ import annotations

import contextlib
import importlib
import os
import pickle
import queue
import signal
import subprocess
import sys
import threading
import traceback
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import TracebackType
from typing import IO, Any

from crestcut.base.short_lived import tidy_seldom
from crestcut.base.stopping import end_with_parent
from crestcut.report.folder.worker_pipe import Packer, Parts, Unpacker, receive, send

Say = Callable[[str], None]
SOON = 0.05  # s: who asks within it gains nothing from a page drawn for nobody
DRAWING = "crestcut.report.pictures.all_pictures:warm_up"
PIPE = 1 << 20  # bytes that a pipe holds, where the system lets us say so: fewer turns to and fro


@dataclass(eq=False)
class Task:
    """What was asked. wanted : its answer is. told : the function takes a ``say`` of its own, last. answer,
    error : set once ``done``.
    """

    function: Callable[..., object] | str
    args: tuple[object, ...]
    wanted: bool = False
    told: bool = False
    done: bool = False
    answer: Any = None
    error: BaseException | None = None


class Worker:
    """Runs module-level functions elsewhere, in the order asked, and brings back their first error.

    ``with Worker() as press: press.ask(f, x); ...; press.finish()``. ``apart=False``: everything runs here at
    once. Arguments are copied over, a large array once however often it is asked with; what the functions
    return is copied back only from ``fetch``. idle : "module:name" of what loads libraries when there is
    nothing to do yet.
    """

    def __init__(self, apart: bool | None = None, idle: str = DRAWING) -> None:
        self._asked: list[Task] = []
        self._packer = Packer()
        self._child: subprocess.Popen[bytes] | None = None
        if apart if apart is not None else (os.cpu_count() or 1) > 1:
            self._child = _start(idle)

    def __enter__(self) -> Worker:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._end()

    def ask(self, function: Callable[..., object], *args: object) -> None:
        """Call ``function(*args)``: here and now without a child, else there and soon."""
        if self._child is None:
            function(*args)
        else:
            self._send(Task(function, args))

    def fetch(
        self, function: Callable[..., Any] | str, *args: object, told: bool = False
    ) -> Callable[..., Any]:
        """Call ``function(*args)`` there and soon; what comes back waits for its answer, or raises its error.

        function : or "module:name", where it need not be loaded here.  told : it takes a ``say`` too; what
        comes back must be given one, and passes on what was said. Without a child the call is made here, once
        it is waited for.
        """
        task = Task(function, args, True, told)
        if self._child is not None:
            self._send(task)
        return lambda say=_silent: self._wait_for(task, say)

    def finish(self) -> None:
        """Wait until all that was asked is done.

        Raises the first error that a function raised. A child that died is no error: the rest is done here.
        """
        while self._asked and self._child is not None:
            task = self._asked[0]
            self._hear(_silent)
            if task.done and task.error is not None and not task.wanted:
                self._asked.clear()
                raise task.error

    def _wait_for(self, task: Task, say: Say) -> Any:
        while not task.done and self._child is not None:
            self._hear(say)
        if not task.done:
            return _called(task.function, task.args, say if task.told else None)
        if task.error is not None:
            raise task.error
        return task.answer

    def _send(self, task: Task) -> None:
        self._asked.append(task)
        try:
            assert self._child is not None and self._child.stdin is not None
            send(self._child.stdin, self._packer.pack((task.function, task.args, task.wanted, task.told)))
        except OSError:
            self._lost()

    def _hear(self, say: Say) -> None:
        """The next word or answer of the child, of the first task that is asked."""
        assert self._child is not None and self._child.stdout is not None
        reply = receive(self._child.stdout)
        if reply is None:
            self._lost()
            return
        said, answer, error = Unpacker().unpack(reply)
        if said is not None:
            say(said)
            return
        task = self._asked.pop(0)
        task.done, task.answer, task.error = True, answer, error

    def _lost(self) -> None:
        """The child is gone (out of memory, killed): do here what it has not answered for; what is fetched
        waits until it is waited for."""
        self._end()
        asked, self._asked = self._asked, []
        for task in asked:
            if not task.wanted:
                _called(task.function, task.args, None)

    def _end(self) -> None:
        child, self._child = self._child, None
        if child is None:
            return
        child.kill()
        for pipe in (child.stdin, child.stdout):
            assert pipe is not None
            with contextlib.suppress(OSError):  # what was still buffered for a child that is gone
                pipe.close()
        child.wait()


def _called(function: Callable[..., Any] | str, args: tuple[object, ...], say: Say | None) -> Any:
    if isinstance(function, str):
        module, name = function.split(":")
        function = getattr(importlib.import_module(module), name)
    return function(*args, say) if say is not None else function(*args)  # type: ignore[operator]


def _silent(_: str) -> None:
    pass


def _start(idle: str) -> subprocess.Popen[bytes] | None:
    if not sys.executable:  # an embedded Python has no program to start again
        return None
    try:
        # -P: as for the command itself, nothing is imported from the folder that somebody happens to stand in
        program = [sys.executable, "-P", "-m", __name__, idle, str(os.getpid())]
        with _deaf_to_ctrl_c():  # for the child inherits it, and would answer before it has learnt not to
            return subprocess.Popen(program, stdin=subprocess.PIPE, stdout=subprocess.PIPE, pipesize=PIPE)
    except OSError:
        return None


@contextlib.contextmanager
def _deaf_to_ctrl_c() -> Iterator[None]:
    """Put Ctrl-C off until the block has ended, where the system can."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _sendable(error: Exception) -> Parts:
    """The error as it was if it survives the journey, else its words; where it came from as a note."""
    error.add_note("in the second process:\n" + "".join(traceback.format_exception(error)))
    try:
        pickle.loads(pickle.dumps(error))
    except Exception:
        error = RuntimeError(f"{type(error).__name__}: {error}")
    return Packer().pack((None, None, error))


def _read_ahead(pipe: IO[bytes], messages: queue.Queue[list[bytearray]]) -> None:
    """Take messages in while drawing, so that the parent need not wait to hand one over; end with it."""
    while (message := receive(pipe)) is not None:
        messages.put(message)
    os._exit(0)


def _serve() -> None:
    """The child: do what is asked, load what draws when there is nothing to do, until the pipe is closed."""
    end_with_parent(int(sys.argv[2]))  # busy in a library it would not notice for seconds that a pipe closed
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C is the parent's to answer
    messages: queue.Queue[list[bytearray]] = queue.Queue()
    answers, sys.stdout = sys.stdout.buffer, sys.stderr  # nothing else may write among the answers
    threading.Thread(target=_read_ahead, args=(sys.stdin.buffer, messages), daemon=True).start()
    tidy_seldom()
    unpacker = Unpacker()
    wait: float | None = SOON

    def say(text: str) -> None:
        send(answers, Packer().pack((text, None, None)))

    while True:
        try:
            message = messages.get(timeout=wait)
        except queue.Empty:
            wait = None
            with contextlib.suppress(Exception):  # what cannot be loaded is told when it is asked for
                _called(sys.argv[1], (), None)
            continue
        send(answers, _answered(unpacker, message, say))


def _answered(unpacker: Unpacker, message: list[bytearray], say: Say) -> Parts:
    """What the function that a message names returns, or raises, as a message."""
    try:
        function, args, wanted, told = unpacker.unpack(message)
        found = _called(function, args, say if told else None)
        return Packer().pack((None, found if wanted else None, None))
    except Exception as error:
        return _sendable(error)


if __name__ == "__main__":
    _serve()
