"""Outputs are written beside their final place and moved there when all of them are whole."""

from __future__ import annotations

import os
import shutil
import tempfile
from pathlib import Path
from types import TracebackType

from crestcut.errors import CrestcutError


class Staging:
    """A hidden folder that becomes ``out`` file by file, or vanishes.

    ``with Staging(out) as folder:`` write into ``folder`` (sub-folders are kept). When the block ends well
    every file is moved to the same name under ``out``; files of ``out`` with other names stay. When it ends
    in an error, or a move fails, ``out`` is as it was before.

    Raises CrestcutError where ``out`` is a file or cannot be written, before any work is done.
    """

    def __init__(self, out: Path) -> None:
        self.out = Path(out)
        self.moved: tuple[Path, ...] = ()
        self._folder: Path | None = None

    def __enter__(self) -> Path:
        refuse_unwritable(self.out)
        # Beside the final place, so that a move is a rename on the same disk; inside it where only that is
        # ours to write.
        beside = _nearest_folder(self.out.absolute().parent)
        if not os.access(beside, os.W_OK | os.X_OK):
            beside = self.out
        try:
            self._folder = Path(
                tempfile.mkdtemp(prefix=f".{self.out.name or 'out'}-", suffix=".part", dir=beside)
            )
            os.chmod(self._folder, 0o755)
        except OSError as error:
            raise _cannot_write(self.out, error) from None
        return self._folder

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        assert self._folder is not None
        try:
            if kind is None:
                self.moved = _move_all(self._folder, self.out)
            elif isinstance(error, OSError) and _is_inside(error.filename, self._folder):
                raise _cannot_write(self.out, error) from error
        finally:
            try:
                shutil.rmtree(self._folder, ignore_errors=True)
            except KeyboardInterrupt:  # Ctrl-C pressed twice must not leave the folder behind
                shutil.rmtree(self._folder, ignore_errors=True)
                raise


def refuse_unwritable(out: Path) -> None:
    """Raise CrestcutError where ``out`` is a file, or lies where nothing may be written; ask early."""
    if out.exists() and not out.is_dir():
        raise CrestcutError("is a file, a folder is needed", str(out), "name another folder with --out")
    nearest = _nearest_folder(out.absolute())
    if not nearest.is_dir():
        raise CrestcutError(f"{nearest} is a file, not a folder", str(out), "name another folder with --out")
    if not os.access(nearest, os.W_OK | os.X_OK):
        raise CrestcutError("no right to write there", str(out), "name another folder with --out")


def _nearest_folder(path: Path) -> Path:
    """The first of ``path`` and its parents that exists."""
    while not path.exists() and path != path.parent:
        path = path.parent
    return path


def _move_all(folder: Path, out: Path) -> tuple[Path, ...]:
    """Move every file of ``folder`` to its place in ``out``; put everything back if one move fails."""
    sources = sorted(p for p in folder.rglob("*") if p.is_file())
    kept = Path(tempfile.mkdtemp(prefix=".old-", dir=folder))
    done: list[tuple[Path, Path | None]] = []
    made: list[Path] = []
    try:
        for number, source in enumerate(sources):
            target = out / source.relative_to(folder)
            _make_folders(target.parent, made)
            if target.is_dir():
                raise IsADirectoryError(21, "a folder has that name", str(target))
            old: Path | None = None
            if target.exists():
                old = kept / str(number)
                os.replace(target, old)
            done.append((target, old))
            os.replace(source, target)
    except OSError as error:
        _put_back(done, made)
        raise _cannot_write(out, error) from error
    return tuple(target for target, _ in done)


def _make_folders(folder: Path, made: list[Path]) -> None:
    missing = []
    while not folder.exists():
        missing.append(folder)
        folder = folder.parent
    for path in reversed(missing):
        path.mkdir()
        made.append(path)


def _put_back(done: list[tuple[Path, Path | None]], made: list[Path]) -> None:
    for target, old in reversed(done):
        target.unlink(missing_ok=True)
        if old is not None:
            os.replace(old, target)
    for folder in reversed(made):
        folder.rmdir()


def _is_inside(name: object, folder: Path) -> bool:
    # An OSError without a file name is a failed write (a full disk), not a missing input.
    return name is None or str(folder) in str(name)


def _cannot_write(out: Path, error: OSError) -> CrestcutError:
    reason = (error.strerror or str(error)).lower()
    place = str(error.filename) if isinstance(error, IsADirectoryError) else str(out)
    return CrestcutError(
        f"cannot write: {reason}", place, "free some space or name another folder with --out"
    )
