"""Outputs are written beside their final place and switched there when all of them are whole.

A switch is a list of renames, none of which covers a file: what stood there is moved away first. The list is
kept in the folder while it lasts. Whoever finds it there, because the process that wrote it is dead, undoes
the renames in reverse: the old set is whole again. When the list is taken away, the new set is.
"""

from __future__ import annotations

import contextlib
import json
import os
import re
import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType

from crestcut.base.errors import CrestcutError, Say
from crestcut.base.stopping import held_back
from crestcut.report.folder.manifest import (
    MANIFEST_NAME,
    digest,
    files_of,
    is_inside,
    manifest_text,
    read_sets,
    set_of,
)
from crestcut.report.folder.place import (
    cannot_write,
    locked,
    make_folders,
    one_at_a_time_in,
    refuse_unwritable,
)
from crestcut.study import Identity

JOURNAL_NAME = "unfinished_switch.json"
JOURNAL_SAYS = (
    "These results are just being replaced. If this file stays, that was cut short and old and new ones lie"
    " side by side: any crestcut command with this folder as --out puts the old ones back. Use none yet."
)
SUPERSEDED = "superseded_"  # before the name of what somebody changed, and a run does not make or makes anew
_OLD = ".old"

switched: list[Path] = []  # folders that this process has switched: true even for who is stopped right after


@dataclass(frozen=True)
class _Step:
    """A rename. source, target : ``out/NAME`` or ``part/NAME``.  sha256 : of a file that is ours and new."""

    source: str
    target: str
    sha256: str | None = None


@dataclass
class _Plan:
    """What a switch does, the files it brings, and what is to be told of it."""

    steps: list[_Step]
    moved: list[str]
    told: list[str]


class Staging:
    """A hidden folder that becomes the set of results of one command in ``out``, or vanishes.

    ``with Staging(out, "run") as folder:`` write into ``folder`` (sub-folders are kept). When the block ends
    well, its files and nothing else are that command's results in ``out``: what it wrote there earlier and
    does not make now goes, what somebody changed since or put at such a name is kept under another one, all
    else stays. When it ends in an error, or a move fails, ``out`` is as it was before. What a dead process
    left in ``out`` is put right before anything else.

    name : of the set, one for each command.  say : is told what was kept or taken away.  about : set it in
    the block, for the manifest.
    Raises CrestcutError where ``out`` is a file or cannot be written, before any work is done.
    """

    def __init__(self, out: Path, name: str = "run", say: Say = lambda _: None) -> None:
        self.out = Path(out)
        self.name = name
        self.say = say
        self.about = Identity("")
        self.moved: tuple[Path, ...] = ()
        self._real = Path(os.path.realpath(out))
        self._folder: Path | None = None
        self._lock: int | None = None
        self._made: list[Path] = []
        self._whole = False

    def __enter__(self) -> Path:
        refuse_unwritable(self.out)
        try:
            with held_back():
                if put_right(self._real):
                    self.say("a run was cut short while it replaced the results here: the old ones are back")
                make_folders(self._real.parent, self._made)
                self._folder, self._lock = _new_part(self._real)
        except BaseException as error:
            self._tidy()
            if isinstance(error, OSError):
                raise cannot_write(self.out, error) from None
            raise
        return self._folder

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        assert self._folder is not None
        with held_back():
            try:
                if kind is None:
                    self._switch(self._folder)
                elif isinstance(error, OSError) and _is_inside(error.filename, self._folder):
                    raise cannot_write(self.out, error) from error
            finally:
                self._tidy()

    def _tidy(self) -> None:
        """Away with the hidden folder, and with the folders made for a set that did not come."""
        if self._folder is not None and not (self._real / JOURNAL_NAME).exists():
            shutil.rmtree(self._folder, ignore_errors=True)  # else what could not be put back lies in it
        if self._lock is not None:
            os.close(self._lock)
        for folder in () if self._whole else reversed(self._made):
            with contextlib.suppress(OSError):
                folder.rmdir()

    def _switch(self, part: Path) -> None:
        try:
            make_folders(self._real, self._made)
            with one_at_a_time_in(self._real):
                _undo_dead(self._real)
                plan = _plan(part, self._real, self.name, self.about)
                _carry_out(plan, part, self._real, self._made)
                self._whole = True
                switched.append(self.out)
        except OSError as error:
            raise cannot_write(self.out, error) from error
        self.moved = tuple(self.out / name for name in plan.moved)
        for line in plan.told:
            self.say(line)


def whole(out: Path, name: str) -> bool:
    """Do all files that the command ``name`` wrote into ``out`` last stand there as it wrote them?"""
    if (out / JOURNAL_NAME).exists():
        return False
    files = files_of((read_sets(out) or {}).get(name))
    return bool(files) and all(digest(out / file) == hashed for file, hashed in files.items())


def put_right(out: Path) -> bool:
    """Undo a switch that was cut short in ``out``, and sweep what dead runs left; was there one to undo?"""
    undone = False
    if (out / JOURNAL_NAME).is_file():
        with one_at_a_time_in(out):
            undone = _undo_dead(out)
    for place in (out.parent, out):
        parts: list[Path] = []
        with contextlib.suppress(OSError):  # not there, or not for us to look into
            parts = list(place.iterdir())
        for part in parts:
            if _part_name(out).fullmatch(part.name) and (lock := locked(part, wait=False)) is not None:
                shutil.rmtree(part, ignore_errors=True)
                os.close(lock)
    return undone


def _plan(part: Path, out: Path, name: str, about: Identity) -> _Plan:
    """The renames that make the files of ``part`` the set ``name`` of ``out``; writes the manifest into
    ``part``."""
    sets = read_sets(out)
    new = {p.relative_to(part).as_posix(): digest(p) or "" for p in sorted(part.rglob("*")) if p.is_file()}
    old = files_of((sets or {}).get(name))
    ours = {row for one in (sets or {}).values() for row in files_of(one).items()}
    plan = _Plan([], list(new), [])

    def clear(file: str) -> bool:
        """Away with what stands at a name: ours for good (then True), anybody else's under another name."""
        place = out / file
        if not os.path.lexists(place):
            return False
        if place.is_dir():
            raise IsADirectoryError(21, "a folder has that name", str(place))
        if (file, digest(place)) in ours or (file == MANIFEST_NAME and sets is not None):
            plan.steps.append(_Step(f"out/{file}", f"part/{_OLD}/{len(plan.steps)}"))
            return True
        kept = _free_name(out, file)
        plan.steps.append(_Step(f"out/{file}", f"out/{kept}"))
        plan.told.append(f"{file} was not as crestcut had written it: it is kept as {kept}")
        return False

    for other, one in (sets or {}).items():
        taken = [file for file in files_of(one) if other != name and file in new]
        if taken:
            plan.told.append(f"replaced, {other} had written it: {', '.join(taken)}")
    gone = [file for file in old if file not in new and not (out / file).is_dir() and clear(file)]
    if gone:
        plan.told.append(f"taken away, an earlier {name} had made what this one does not: {', '.join(gone)}")
    for file, hashed in new.items():
        clear(file)
        plan.steps.append(_Step(f"part/{file}", f"out/{file}", hashed))
    kept_sets = {other: _without(one, new) for other, one in (sets or {}).items() if other != name}
    (part / f".{MANIFEST_NAME}").write_text(
        manifest_text({**kept_sets, name: set_of(new, about)}), encoding="utf-8"
    )
    clear(MANIFEST_NAME)
    plan.steps.append(_Step(f"part/.{MANIFEST_NAME}", f"out/{MANIFEST_NAME}"))
    return plan


def _without(one: dict[str, object], names: dict[str, str]) -> dict[str, object]:
    """Another command's set without the files that are this one's now."""
    rows = [{"file": f, "sha256": h} for f, h in files_of(one).items() if f not in names]
    return {**one, "files": rows}


def _free_name(out: Path, file: str) -> str:
    """A name beside ``file`` that nothing has yet."""
    folder, name = os.path.split(file)
    for number in range(1, 10_000):
        kept = os.path.join(folder, f"{SUPERSEDED}{'' if number == 1 else f'{number}_'}{name}")
        if not os.path.lexists(out / kept):
            return kept
    raise FileExistsError(17, "too many files kept under another name", str(out / file))


def _carry_out(plan: _Plan, part: Path, out: Path, made: list[Path]) -> None:
    """Do the renames, all or none of them."""
    (part / _OLD).mkdir()
    journal = {
        "schema": "crestcut.switch/1",
        "note": JOURNAL_SAYS,
        "part": os.path.relpath(part, out),
        "steps": [[s.source, s.target, s.sha256] for s in plan.steps],
    }
    written = part / f".{JOURNAL_NAME}"
    written.write_text(json.dumps(journal, indent=1) + "\n", encoding="utf-8")
    os.replace(written, out / JOURNAL_NAME)
    try:
        for step in plan.steps:
            target = _place(step.target, part, out)
            make_folders(target.parent, made)
            os.rename(_place(step.source, part, out), target)
    except BaseException:
        _undo(plan.steps, part, out)
        os.unlink(out / JOURNAL_NAME)
        raise
    os.unlink(out / JOURNAL_NAME)


def _undo_dead(out: Path) -> bool:
    """Undo what a journal in ``out`` says, and take it away; False where there is none."""
    journal = out / JOURNAL_NAME
    if not journal.is_file():
        return False
    try:
        found = json.loads(journal.read_text(encoding="utf-8"))
        part = Path(os.path.normpath(out / found["part"]))
        steps = [_Step(*row) for row in found["steps"]]
        # the folder may come from a stranger: nothing outside it and its own part is touched
        known = part.parent in (out, out.parent) and _part_name(out).fullmatch(part.name) is not None
        if not known or not all(_is_ours(s.source) and _is_ours(s.target) for s in steps):
            raise ValueError
    except (ValueError, KeyError, TypeError, RecursionError):
        raise CrestcutError(
            f"{JOURNAL_NAME} in it cannot be understood", str(out), "take it away, or name another folder"
        ) from None
    _undo(steps, part, out)
    os.unlink(journal)
    return True


def _undo(steps: Sequence[_Step], part: Path, out: Path) -> None:
    """The renames in reverse, those that were done; what somebody has changed meanwhile is kept."""
    for step in reversed(steps):
        source, target = _place(step.source, part, out), _place(step.target, part, out)
        if os.path.lexists(source) or not os.path.lexists(target):
            continue
        if step.sha256 is not None and digest(target) != step.sha256:
            os.rename(target, out / _free_name(out, step.target.removeprefix("out/")))
        elif source.parent.is_dir():
            os.rename(target, source)
        else:  # the part was thrown away by hand: a new file without its set
            os.unlink(target)


def _place(name: str, part: Path, out: Path) -> Path:
    folder, _, inside = name.partition("/")
    return (out if folder == "out" else part) / inside


def _is_ours(name: object) -> bool:
    folder, _, inside = str(name).partition("/")
    return folder in ("out", "part") and is_inside(inside)


def _new_part(out: Path) -> tuple[Path, int | None]:
    """A fresh hidden folder for ``out``, and what shows others that its owner lives."""
    # Beside the final place, so that a move is a rename on the same disk; inside it where only that is
    # ours to write, or a disk of its own.
    beside = out.parent
    other_disk = out.is_dir() and out.stat().st_dev != beside.stat().st_dev
    if other_disk or not os.access(beside, os.W_OK | os.X_OK):
        beside = out
    while True:
        part = Path(tempfile.mkdtemp(prefix=f".{out.name or 'out'}-", suffix=".part", dir=beside))
        lock = locked(part)
        if part.is_dir():  # else another run swept it between the two
            os.chmod(part, 0o755)
            return part, lock
        if lock is not None:
            os.close(lock)


def _part_name(out: Path) -> re.Pattern[str]:
    return re.compile(rf"\.{re.escape(out.name or 'out')}-[a-z0-9_]+\.part")


def _is_inside(name: object, folder: Path) -> bool:
    # An OSError without a file name is a failed write (a full disk), not a missing input.
    return name is None or str(folder) in str(name)
