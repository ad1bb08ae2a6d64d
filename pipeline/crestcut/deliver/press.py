"""A second process that draws pictures and sheets while this one writes mesh and page.

Drawing takes half of all the writing, and loading what draws takes longer than the drawing. So the command
line starts the press before the scan is read: it loads matplotlib while the slab is being found, waits, and
is handed the finished report. It is a plain child of this Python, spoken to over its pipes: nothing is
forked, nothing is imported twice, and it ends with its parent however that ends. Without it (a library call,
one core, no child allowed) the same functions run here, with the same bytes as their result.
"""

from __future__ import annotations

import contextlib
import os
import pickle
import queue
import signal
import struct
import subprocess
import sys
import threading
import time
import traceback
from collections.abc import Callable
from types import TracebackType
from typing import IO, Any

Task = tuple[Callable[..., object], tuple[object, ...]]
SOON = 0.05  # s: who asks within it gains nothing from a page drawn for nobody
LENGTH = struct.Struct("<Q")  # bytes of the message that follows


class Press:
    """Runs module-level functions elsewhere, in the order asked, and brings back their first error.

    ``with Press() as press: press.ask(f, x); ...; press.finish()``. ``apart=False``: everything runs here at
    once. The arguments are copied over; what the functions return is not.
    """

    def __init__(self, apart: bool | None = None) -> None:
        self._asked: list[Task] = []
        self._child: subprocess.Popen[bytes] | None = None
        if apart if apart is not None else (os.cpu_count() or 1) > 1:
            self._child = _start()

    def __enter__(self) -> Press:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._end()

    def ask(self, function: Callable[..., object], *args: object) -> None:
        """Call ``function(*args)``: here and now without a child, else there and soon."""
        if self._child is None:
            function(*args)
            return
        self._asked.append((function, args))
        try:
            assert self._child.stdin is not None
            _send(self._child.stdin, pickle.dumps((function, args), protocol=5))
        except OSError:
            self._lost()

    def finish(self) -> None:
        """Wait until all that was asked is done.

        Raises the first error that a function raised. A child that died is no error: the rest is done here.
        """
        while self._asked and self._child is not None:
            assert self._child.stdout is not None
            reply = _receive(self._child.stdout)
            if reply is None:
                self._lost()
                return
            del self._asked[0]
            error = pickle.loads(reply)
            if error is not None:
                self._asked.clear()
                raise error

    def _lost(self) -> None:
        """The child is gone (out of memory, killed): do here what it has not answered for."""
        self._end()
        asked, self._asked = self._asked, []
        for function, args in asked:
            function(*args)

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


def _start() -> subprocess.Popen[bytes] | None:
    if not sys.executable:  # an embedded Python has no program to start again
        return None
    try:
        # -P: as for the command itself, nothing is imported from the folder that somebody happens to stand in
        program = [sys.executable, "-P", "-m", __name__]
        return subprocess.Popen(program, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
    except OSError:
        return None


def _send(pipe: IO[bytes], message: bytes) -> None:
    pipe.write(LENGTH.pack(len(message)))
    pipe.write(message)
    pipe.flush()


def _receive(pipe: IO[bytes]) -> bytes | None:
    """The next message; None where the other side is gone."""
    head = pipe.read(LENGTH.size)
    if len(head) < LENGTH.size:
        return None
    (length,) = LENGTH.unpack(head)
    message = pipe.read(length)
    return message if len(message) == length else None


def _sendable(error: Exception) -> bytes:
    """The error as it was if it survives the journey, else its words; where it came from as a note."""
    error.add_note("in the drawing process:\n" + "".join(traceback.format_exception(error)))
    try:
        message = pickle.dumps(error)
        pickle.loads(message)
    except Exception:
        return pickle.dumps(RuntimeError(f"{type(error).__name__}: {error}"))
    return message


def _read_ahead(pipe: IO[bytes], messages: queue.Queue[bytes]) -> None:
    """Take messages in while drawing, so that the parent need not wait to hand one over; end with it."""
    while (message := _receive(pipe)) is not None:
        messages.put(message)
    os._exit(0)


def _serve() -> None:
    """The child: load, then do what is asked until the parent closes the pipe."""
    signal.signal(
        signal.SIGINT, signal.SIG_IGN
    )  # Ctrl-C is the parent's to answer
    messages: queue.Queue[bytes] = queue.Queue()
    answers, sys.stdout = sys.stdout.buffer, sys.stderr  # nothing else may write among the answers
    threading.Thread(target=_read_ahead, args=(sys.stdin.buffer, messages), daemon=True).start()
    time.sleep(SOON)
    if messages.empty():
        with contextlib.suppress(Exception):  # what cannot be loaded is told when it is asked for
            from crestcut.deliver.pictures import warm_up

            warm_up()
    while True:
        try:
            call: Any
            call, args = pickle.loads(messages.get())
            call(*args)
            answer = pickle.dumps(None)
        except Exception as error:
            answer = _sendable(error)
        _send(answers, answer)


if __name__ == "__main__":
    _serve()
