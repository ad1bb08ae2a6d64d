"""Being stopped: by Ctrl-C, by whoever ends programs (SIGTERM, SIGHUP), by the death of a parent."""

from __future__ import annotations

import os
import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType

READY = "ready"  # the command that loads all, and waits for the page server to send another
STOPS = tuple(getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name))


@contextmanager
def stopped_as_by_ctrl_c() -> Iterator[None]:
    """Within the block every signal of ``STOPS`` raises KeyboardInterrupt.

    One that whoever started this process switched off stays so. Does nothing outside the main thread, where
    no handler may be set.
    """
    before = {}
    try:
        if threading.current_thread() is threading.main_thread():
            for number in STOPS:
                if signal.getsignal(number) is signal.SIG_DFL:
                    before[number] = signal.signal(number, signal.default_int_handler)
        yield
    except Exception as error:
        if _is_a_stop(error):
            raise KeyboardInterrupt from error
        raise
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _is_a_stop(error: BaseException | None) -> bool:
    """Was it raised from a KeyboardInterrupt? Python 3.11 makes a RuntimeError of one that falls into a
    ``__set_name__``, which library classes have that are being imported."""
    while error is not None and not isinstance(error, KeyboardInterrupt):
        error = error.__cause__
    return error is not None


@contextmanager
def held_back() -> Iterator[None]:
    """Put every signal of ``STOPS`` off until the block has ended: then it is answered as it would have been.

    By handlers, not by a mask: another thread of this process would take what this one masks. Does nothing
    outside the main thread, which is the only one that a signal interrupts.
    """
    came: list[int] = []
    before = {}

    def note(number: int, _: FrameType | None) -> None:
        came.append(number)

    try:
        if threading.current_thread() is threading.main_thread():
            for number in STOPS:
                handler = signal.getsignal(number)
                if handler is not None and handler is not signal.SIG_IGN:
                    before[number] = handler
                    signal.signal(number, note)
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
        if came:
            signal.raise_signal(came[0])


def end_with_parent(parent: int) -> None:
    """Have this process killed when its parent (process id) ends, however that ends; at once if it has.

    Linux alone can do it (prctl, PR_SET_PDEATHSIG); elsewhere a pipe that closes has to do.
    """
    if sys.platform != "linux":
        return
    import ctypes

    PR_SET_PDEATHSIG = 1  # linux/prctl.h
    ctypes.CDLL(None, use_errno=True).prctl(PR_SET_PDEATHSIG, signal.SIGKILL)
    if os.getppid() != parent:
        os._exit(0)
