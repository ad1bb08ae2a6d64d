"""Memory that nobody refers to goes back to the system, where its library can."""

from __future__ import annotations

import contextlib
import ctypes
import gc

# of malloc.h (glibc): a block this large gets a place of its own, which goes back when it is let go; what the
# heap's end keeps. The library would raise the first by itself to 32 MB and keep the layers of a long lane,
# which are 20: a gigabyte of holes. Those of a usual slab are 3, stay in the heap and cost nothing more
_APART, _KEPT = (-3, 8 << 20), (-1, 64 << 20)
# one heap for all threads: each would have one of its own, with holes of its own (60 MB at 60 m), and the
# loops that are shared out hardly ask for memory
_HEAPS = (-8, 1)
# KiB that a process has held at most: a smaller one takes at once what it gave back, and each page of that is
# cleared anew (a hundred thousand of them in a run of a usual slab, which holds 0.6 GB)
_SMALL = 700 << 10


def large_apart() -> None:
    """From now on large arrays have places of their own, and all threads one heap."""
    with contextlib.suppress(OSError, AttributeError, TypeError):
        for name, value in (_APART, _KEPT, _HEAPS):
            ctypes.CDLL(None).mallopt(name, value)


def trimmed() -> None:
    """What is freed and stays with a large process goes back."""
    with contextlib.suppress(ImportError, OSError, AttributeError, TypeError):
        import resource

        if resource.getrusage(resource.RUSAGE_SELF).ru_maxrss > _SMALL:
            ctypes.CDLL(None).malloc_trim(0)


def let_go() -> None:
    """The same, with arrays in reference cycles made since the last time, which wait for the collector."""
    gc.collect(1)
    trimmed()
