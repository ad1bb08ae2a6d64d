"""A folder for results: whether anything can be written there, and who is at work in it alone."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path

from crestcut.base.errors import CrestcutError

BUSY_NAME = ".jobs_at_work"


def refuse_unwritable(out: Path) -> None:
    """Raise CrestcutError where ``out`` is a file, or lies where nothing may be written; ask early."""
    if out.exists() and not out.is_dir():
        raise CrestcutError("is a file, a folder is needed", str(out), "name another folder with --out")
    nearest = _nearest_folder(out.absolute())
    if not nearest.is_dir():
        raise CrestcutError(f"{nearest} is a file, not a folder", str(out), "name another folder with --out")
    if not os.access(nearest, os.W_OK | os.X_OK):
        raise CrestcutError("no right to write there", str(out), "name another folder with --out")


@contextlib.contextmanager
def alone_in(out: Path) -> Iterator[None]:
    """Only one command at a time that does many jobs into ``out``: another is refused, by a CrestcutError.

    By a lock on a file of that folder, which ends with this process; where a system has none, nobody is.
    """
    refuse_unwritable(out)
    made: list[Path] = []
    place = out / BUSY_NAME
    try:
        make_folders(out, made)
        place.touch()
    except OSError as error:
        raise cannot_write(out, error) from None
    held = locked(place, wait=False)
    try:
        if sys.platform != "win32" and (held is None or not _is_at(held, place)):
            raise CrestcutError(
                "another crestcut is at work on jobs in this folder", str(out),
                "let it end, or name another folder with --out",
            )  # fmt: skip
        yield
        made = []
    finally:
        if held is not None:
            if _is_at(held, place):
                place.unlink()
            os.close(held)
        for folder in reversed(made):
            with contextlib.suppress(OSError):
                folder.rmdir()


def _is_at(held: int, place: Path) -> bool:
    """Is an open file still the one at ``place``? One that has just ended takes it away."""
    try:
        return os.path.samestat(os.fstat(held), place.stat())
    except OSError:
        return False


@contextlib.contextmanager
def one_at_a_time_in(folder: Path) -> Iterator[None]:
    """Only one process at a time switches the same folder."""
    lock = locked(folder)
    try:
        yield
    finally:
        if lock is not None:
            os.close(lock)


def locked(folder: Path, wait: bool = True) -> int | None:
    """A lock on a folder that ends with this process; None where it is held, or cannot be."""
    try:
        import fcntl
    except ImportError:  # no such locks on this system: nothing is swept there
        return None
    held = None
    try:
        held = os.open(folder, os.O_RDONLY)
        fcntl.flock(held, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    except OSError:
        if held is not None:
            os.close(held)
        return None
    return held


def _nearest_folder(path: Path) -> Path:
    """The first of ``path`` and its parents that exists."""
    while not path.exists() and path != path.parent:
        path = path.parent
    return path


def make_folders(folder: Path, made: list[Path]) -> None:
    """A folder with those above it; what was not there yet is added to ``made``, the outermost first."""
    missing = []
    while not folder.exists():
        missing.append(folder)
        folder = folder.parent
    for path in reversed(missing):
        path.mkdir()
        made.append(path)


def cannot_write(out: Path, error: OSError) -> CrestcutError:
    """An error of the system while results were written, as the line that a person reads."""
    reason = (error.strerror or str(error)).lower()
    place = str(error.filename) if isinstance(error, IsADirectoryError) else str(out)
    return CrestcutError(
        f"cannot write: {reason}", place, "free some space or name another folder with --out"
    )
