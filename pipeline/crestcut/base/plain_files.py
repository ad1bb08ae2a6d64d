"""What is opened at all: plain files, and of those that a file names only what lies in its own folder."""

from __future__ import annotations

import stat
from pathlib import Path

from crestcut.base.errors import CrestcutError

_KINDS = (
    (stat.S_ISDIR, "a folder"),
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISSOCK, "a socket"),
    (stat.S_ISCHR, "a device"),
    (stat.S_ISBLK, "a device"),
)


def refuse_irregular(path: Path, needed: str, mend: str, missing: str = "no such file") -> None:
    """Raise CrestcutError unless ``path`` is a plain file or a link to one: opening a pipe waits for ever.

    needed : what should stand there ("a scan file").  mend : what to do about something else.
    """
    try:
        mode = path.stat().st_mode
    except (FileNotFoundError, NotADirectoryError):
        raise CrestcutError(missing, str(path), "check the name and the folder") from None
    except (OSError, ValueError) as error:  # ValueError: a zero byte in the name
        why = (getattr(error, "strerror", None) or str(error)).lower()
        raise CrestcutError(f"cannot be opened: {why}", str(path), "check its name and rights") from None
    if not stat.S_ISREG(mode):
        kind = next((name for test, name in _KINDS if test(mode)), "no plain file")
        raise CrestcutError(f"is {kind}, {needed} is needed", str(path), mend)


def named_beside(owner: Path, name: str, mend: str) -> Path:
    """The plain file that ``owner`` calls ``name``; CrestcutError where it is none, or lies outside the
    folder of ``owner`` (links followed): a scan from elsewhere must not say what else is read here.
    """
    folder = owner.parent.resolve()
    try:
        found = (folder / name).resolve()
        inside = found.is_relative_to(folder)
    except (OSError, ValueError, RuntimeError):
        inside = False
    if "://" in name or not inside:
        shown = name if len(name) <= 60 else name[:57] + "..."
        raise CrestcutError(f"it names a file outside its own folder: {shown}", str(owner), mend)
    if not found.exists():
        raise CrestcutError(f"its file {name} is missing", str(owner), mend)
    refuse_irregular(found, "a plain file", mend)
    return found
