"""Sharing a compiled loop among the cores."""

from __future__ import annotations

import os
import threading
from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from functools import cache, wraps
from typing import Any, ParamSpec, TypeVar

from threadpoolctl import threadpool_limits

P = ParamSpec("P")
T = TypeVar("T")

WORKERS = min(len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1, 8)
PIECES = 4  # for each core: who is done early takes another
_shared = threading.local()  # ``out`` in the threads of ``share``


def in_threads(work: Callable[..., T], *rows: Iterable[Any]) -> list[T]:
    """``list(map(work, *rows))``, several at once; the first error in that order is raised.

    For work that mostly lets go of the interpreter, and changes nothing that another call reads: then the
    result does not depend on the number of cores.
    """
    if WORKERS == 1:
        return list(map(work, *rows))
    with ThreadPoolExecutor(WORKERS) as pool:
        return list(pool.map(work, *rows))


def share(work: Callable[[int, int], object], count: int, least: int = 1) -> None:
    """Call ``work(first, stop)`` until 0 .. count - 1 is covered, in pieces of ``least`` or more, several at
    once.

    For kernels that let go of the interpreter (``nogil``) and write only what belongs to their piece.
    Compiles in a fifth of the time of a loop that the compiler itself is asked to share out. Work that is
    shared out already does what it shares out itself: were its thread to wait for others, all might.
    """
    pieces = min(PIECES * WORKERS, max(count // max(least, 1), 1)) if WORKERS > 1 else 1
    if pieces == 1 or hasattr(_shared, "out"):
        work(0, count)
        return
    edges = [count * k // pieces for k in range(pieces + 1)]
    list(_crew(WORKERS).map(work, edges, edges[1:]))


@cache
def _crew(workers: int) -> ThreadPoolExecutor:
    """Threads that stay: a run shares out eight hundred loops, most of them done sooner than threads are
    started."""
    return ThreadPoolExecutor(workers, initializer=setattr, initargs=(_shared, "out", True))


if hasattr(os, "register_at_fork"):  # threads are not there in a copy of the process
    os.register_at_fork(after_in_child=_crew.cache_clear)


def meanwhile(work: Callable[P, T], *args: P.args, **named: P.kwargs) -> Callable[[], T]:
    """Begin ``work(*args)`` in a thread beside this one; what comes back waits for its answer or its error.

    For work that mostly lets go of the interpreter, and touches nothing that is changed meanwhile: then the
    answer is the same as without. On one core it runs when it is waited for.
    """
    if WORKERS == 1:
        return lambda: work(*args, **named)
    pool = ThreadPoolExecutor(1)
    job = pool.submit(work, *args, **named)
    pool.shutdown(wait=False)
    return job.result


def compiled_before(kernel: object) -> bool:
    """Does a kernel lie compiled in the cache of an earlier run? True where that cannot be told."""
    try:
        index: str = kernel._cache._cache_file._index_path  # type: ignore[attr-defined]
    except AttributeError:  # another version of the compiler keeps it elsewhere, or was told not to keep it
        return True
    return os.path.exists(index)


def one_thread_each(function: Callable[P, T]) -> Callable[P, T]:
    """``function`` with linear algebra in one thread, as the command line runs it: sums in another order have
    other last digits, and a chain of draws that meets them takes another way. Same input, same output."""

    @wraps(function)
    def alone(*args: P.args, **kwargs: P.kwargs) -> T:
        with threadpool_limits(limits=1, user_api="blas"):
            return function(*args, **kwargs)

    return alone
