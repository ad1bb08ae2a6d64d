"""A job's folder, the only state there is: the files that the command line reads, what they were before, and
what was last run on them.

``job.toml``, ``vehicle.toml`` and ``vehicle_sheet.toml`` are the person's; ``looked`` and ``results`` are
made by commands; ``.crestcut`` holds what was before each change, uploads under way, and the last runs. A
job file of another name (``drive.toml``) has its name before each of them (``drive_results``).

A change of several files is whole or not at all: what was there before is kept first, then a mark is set,
then the files are replaced one by one, then the mark is taken away. Who finds the mark puts back what was
kept. Undo is the same thing, asked for.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import re
import shutil
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError

MOST_KEPT = 200  # changes that can be undone
JOB_NAME = "job.toml"
_TABLES = ("site", "scan", "vehicle", "travel", "clearance", "cut", "slab", "after")
_LISTS = ("mark", "keep", "string", "witness", "other_vehicle")
_STARTED = """\
# A job of crestcut. `crestcut open` writes it, the command line reads it, and you may edit it too.
# Lengths carry their unit; points are in the scan's own plan coordinates.
"""


class Stale(Exception):
    """Somebody has changed the files since the screen was made that wants to change them."""


class SeveralLines(CrestcutError):
    """The job has lines of its own, which no screen can show."""


@dataclass(frozen=True)
class Kept:
    """A change that can be undone. number : of its folder.  label : what it was, in words."""

    number: int
    label: str


class JobFolder:
    """The files of one job. ``job`` need not be there yet: the folder is made when it is first written."""

    def __init__(self, job: Path) -> None:
        self.job = job.resolve()
        self.home = self.job.parent
        before = "" if self.job.name == JOB_NAME else f"{self.job.stem}_"
        self.vehicle = self.home / f"{before}vehicle.toml"
        self.sheet = self.home / f"{before}vehicle_sheet.toml"
        self.looked = self.home / f"{before}looked"
        self.results = self.home / f"{before}results"
        self.scans = self.home / f"{before}scans"
        self.hidden = self.home / (f".crestcut_{self.job.stem}" if before else ".crestcut")
        self._lock: int | None = None

    # -- what is there

    def text(self) -> str:
        """The job file; empty where there is none yet."""
        return _read(self.job).decode("utf-8-sig", "replace")

    def data(self) -> dict[str, Any]:
        """The job file as plain data.

        Raises CrestcutError where somebody's editor left it broken, and ``SeveralLines``.
        """
        try:
            data = tomllib.loads(self.text())
            if isinstance(data.get("travel"), list):
                raise SeveralLines(
                    "it has several lines ([[travel]]), and these screens take a job of one line ([travel])",
                    self.job.name,
                    f"run it from the command line: crestcut run {self.job.name}",
                )
            for name in _TABLES:
                if not isinstance(data.get(name, {}), dict):
                    raise CrestcutError(f"[{name}] is no table", self.job.name, "mend it in the editor")
            for home in (data, data.get("after", {})):
                for name in _LISTS:
                    rows = home.get(name, [])
                    if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
                        raise CrestcutError(f"[[{name}]] is no table", self.job.name, "mend it in the editor")
            return data
        except tomllib.TOMLDecodeError as error:
            raise CrestcutError(
                f"cannot be read: {error}", self.job.name, "mend it in the editor, or take the change back"
            ) from None

    def number(self) -> str:
        """The change number: of what job and vehicle files hold, whoever wrote them."""
        found = hashlib.sha256()
        for path in self._inputs():
            found.update(path.name.encode() + b"\0" + _read(path) + b"\0")
        return found.hexdigest()[:16]

    def plan_mark(self) -> str:
        """Changes with all that a run reads, and with nothing that only a check of finished work does."""
        data = self.data()
        told = {key: value for key, value in data.items() if key != "after"}
        return self._mark(told, data)

    def whole_mark(self) -> str:
        """Changes with all that a check of the finished work reads."""
        data = self.data()
        return self._mark(data, data)

    def _mark(self, told: Mapping[str, Any], data: Mapping[str, Any]) -> str:
        found = hashlib.sha256(json.dumps(told, sort_keys=True, default=str).encode())
        names = [str(t.get("file", "")) for t in (data.get("vehicle", {}), *data.get("other_vehicle", []))]
        for name in names:
            found.update(_read(self.home / name) if name else b"")
        for path in self.scan_files():
            with contextlib.suppress(OSError):
                found.update(f"{path.stat().st_size} {path.stat().st_mtime_ns}".encode())
        return found.hexdigest()[:16]

    def scan_files(self) -> list[Path]:
        """The scans that the job names."""
        scan = self.data().get("scan", {})
        named = scan.get("files") or [scan.get("file")]
        return [self.home / str(name) for name in (named if isinstance(named, list) else [named]) if name]

    def vehicle_file(self) -> Path | None:
        """The vehicle that the job names, where it does."""
        name = self.data().get("vehicle", {}).get("file")
        return self.home / str(name) if name else None

    def _inputs(self) -> list[Path]:
        return [self.job, self.vehicle, self.sheet]

    # -- changing it

    def change(self, label: str, files: Mapping[Path, str | None], number: str | None = None) -> None:
        """Write every one of ``files`` (None: take it away), and keep what was there.

        number : the change number that the writer knew; None: whatever it is. Raises Stale where it is
        another one now, CrestcutError where nothing can be written.
        """
        if number is not None and number != self.number():
            raise Stale
        try:
            self.hidden.mkdir(parents=True, exist_ok=True)
            kept = self._keep(label)
            self._set_mark(kept)
            for path, text in files.items():
                _replace(path, text)
            self._take_mark()
            for old in self._kept_numbers()[:-MOST_KEPT]:
                shutil.rmtree(self._kept(old), ignore_errors=True)
        except OSError as error:
            self.put_right()
            raise CrestcutError(
                f"cannot be written ({(error.strerror or 'unknown').lower()})",
                str(self.home), "free some space, or check your rights to that folder",
            ) from None  # fmt: skip

    def edit(self, label: str, keys: Mapping[str, Any], number: str | None = None) -> None:
        """Set keys of the job file (``table.key``; None takes one away); comments and all else stay."""
        self.change(label, {self.job: edited(self.text() or _STARTED, keys)}, number)

    def undo(self) -> str:
        """Put back what was before the last change; what that was. Empty where there is none."""
        last = self.last_change()
        if last is None:
            return ""
        self._set_mark(last.number)
        self.put_right()
        return last.label

    def last_change(self) -> Kept | None:
        """The change that Undo would take back."""
        numbers = self._kept_numbers()
        if not numbers:
            return None
        about = json.loads((self._kept(numbers[-1]) / "about.json").read_text(encoding="utf-8"))
        if not about["files"]:  # there was no job before it
            return None
        return Kept(numbers[-1], str(about["label"]))

    def put_right(self) -> bool:
        """Put back what a change that was cut short has replaced; was there one?"""
        mark = self.hidden / "pending"
        if not mark.is_file():
            return False
        kept = self._kept(int(mark.read_text(encoding="utf-8")))
        about = json.loads((kept / "about.json").read_text(encoding="utf-8"))
        for path in self._inputs():
            _replace(path, (kept / path.name).read_bytes() if path.name in about["files"] else None)
        self._take_mark()
        shutil.rmtree(kept)
        return True

    def _keep(self, label: str) -> int:
        number = (self._kept_numbers() or [0])[-1] + 1
        new = self.hidden / "kept" / ".new"
        shutil.rmtree(new, ignore_errors=True)
        new.mkdir(parents=True)
        there = [path for path in self._inputs() if path.is_file()]
        for path in there:
            _replace(new / path.name, path.read_bytes())
        about = {"label": label, "files": [path.name for path in there]}
        _replace(new / "about.json", json.dumps(about))
        os.replace(new, self._kept(number))
        return number

    def _kept(self, number: int) -> Path:
        return self.hidden / "kept" / f"{number:06d}"

    def _kept_numbers(self) -> list[int]:
        with contextlib.suppress(OSError):
            names = [path.name for path in (self.hidden / "kept").iterdir()]
            return sorted(int(name) for name in names if re.fullmatch(r"[0-9]{6,}", name))
        return []

    def _set_mark(self, number: int) -> None:
        _replace(self.hidden / "pending", str(number))

    def _take_mark(self) -> None:
        (self.hidden / "pending").unlink()

    # -- small records beside it

    def remember(self, name: str, record: Mapping[str, Any]) -> None:
        """Keep a record of ours, whole or not at all."""
        self.hidden.mkdir(parents=True, exist_ok=True)
        _replace(self.hidden / f"{name}.json", json.dumps(record))

    def recall(self, name: str) -> dict[str, Any]:
        """A record of ours; empty where there is none."""
        return read_json(self.hidden / f"{name}.json")

    # -- one server at a time

    def claim(self) -> str:
        """Hold the folder until this process ends; else the address of the server that holds it."""
        self.hidden.mkdir(parents=True, exist_ok=True)
        try:
            import fcntl
        except ImportError:  # no such locks on this system
            return ""
        held = os.open(self.hidden / "open", os.O_RDWR | os.O_CREAT, 0o600)
        try:
            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            told = os.read(held, 200).decode("utf-8", "replace")
            os.close(held)
            return told or "another window"
        self._lock = held
        return ""

    def tell(self, address: str) -> None:
        """Leave the address for a second server that finds the folder held."""
        if self._lock is not None:
            os.ftruncate(self._lock, 0)
            os.pwrite(self._lock, address.encode(), 0)


def edited(text: str, keys: Mapping[str, Any]) -> str:
    """A TOML text with keys set (``table.key``, or ``table``; None takes one away)."""
    import tomlkit

    document = tomlkit.parse(text)
    for name, value in keys.items():
        *tables, key = name.split(".")
        home: Any = document
        for table in tables:
            if table not in home:
                if value is None:
                    break
                home[table] = tomlkit.table()
            home = home[table]
        else:
            _put(home, key, value)
    return tomlkit.dumps(document)


def _put(home: Any, key: str, value: Any) -> None:
    import tomlkit

    if value is None:
        if key in home:
            del home[key]
        return
    if key in home and _plain(home[key]) == value:
        return  # its comment and the way it is written stay
    if isinstance(value, list) and value and all(isinstance(v, Mapping) for v in value):
        tables = tomlkit.aot()
        for each in value:
            table = tomlkit.table()
            for name, one in each.items():
                table[name] = one
            tables.append(table)
        if key in home:
            del home[key]
        home[key] = tables
    else:
        home[key] = value


def _plain(item: Any) -> Any:
    return item.unwrap() if hasattr(item, "unwrap") else item


def read_json(path: Path) -> dict[str, Any]:
    """A JSON object from a file; empty where it is not there, or is none."""
    with contextlib.suppress(OSError, ValueError):
        found = json.loads(path.read_text(encoding="utf-8"))
        return found if isinstance(found, dict) else {}
    return {}


def _read(path: Path) -> bytes:
    with contextlib.suppress(OSError):
        return path.read_bytes()
    return b""


def _replace(path: Path, text: str | bytes | None) -> None:
    """Write a file beside its place and move it there, on the disk before the name is; None takes it away."""
    if text is None:
        path.unlink(missing_ok=True)
        return
    beside = path.with_name(f".{path.name}.part")
    with beside.open("wb") as file:
        file.write(text.encode() if isinstance(text, str) else text)
        file.flush()
        os.fsync(file.fileno())
    os.replace(beside, path)
