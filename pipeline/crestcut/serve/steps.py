"""The way through: which screens there are, which of them are done, and which is next."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.serve.folder import JobFolder, read_json
from crestcut.serve.runs import DONE, Kind, Runs


class Screen(StrEnum):
    """A step, by the path of its screen."""

    SCAN = "scan"
    CHECK = "check"
    LINE = "line"
    VEHICLE = "vehicle"
    ROOM = "room"
    SLAB = "slab"
    ANSWER = "answer"
    MEASURE = "measure"
    WORK = "work"
    AFTER = "after"


TITLES: Mapping[Screen, str] = {
    Screen.SCAN: "Bring the scan",
    Screen.CHECK: "Is it the right size?",
    Screen.LINE: "Where it drives",
    Screen.VEHICLE: "The vehicle",
    Screen.ROOM: "How much room",
    Screen.SLAB: "What is known of the slab",
    Screen.ANSWER: "The answer",
    Screen.MEASURE: "Measure first",
    Screen.WORK: "Plan and sheets",
    Screen.AFTER: "After the work",
}


@dataclass(frozen=True)
class Row:
    """A step in the list. state : done, next, later."""

    screen: Screen
    title: str
    state: str


@dataclass(frozen=True)
class State:
    """All that the screens ask about where a job stands; read anew for each request.

    looked, result : what ``look`` and ``run`` left (empty: nothing that counts).  fresh : the answer is of
    the numbers that stand in the job now.  checked : likewise of a check of the work.  first : what a run
    under way knows of its answer already, as in ``result`` but with no plan; empty before that, and where
    the numbers have changed since it began.
    """

    data: Mapping[str, Any]
    looked: Mapping[str, Any]
    result: Mapping[str, Any]
    fresh: bool
    checked: Mapping[str, Any]
    broken: str
    done: frozenset[Screen]
    first: Mapping[str, Any] = field(default_factory=dict)

    @property
    def known(self) -> Mapping[str, Any]:
        """The newest answer, with or without a plan."""
        return self.first or self.result

    @property
    def current(self) -> bool:
        """Is that answer of the numbers that stand in the job now?"""
        return bool(self.first) or self.fresh

    @property
    def next(self) -> Screen:
        """The first step that is not done."""
        return next((s for s in Screen if s not in self.done), Screen.AFTER)

    @property
    def missing(self) -> tuple[Screen, ...]:
        """What an answer wants and is not done."""
        order = list(Screen)
        return tuple(s for s in order[: order.index(Screen.ANSWER)] if s not in self.done)

    def rows(self) -> tuple[Row, ...]:
        """The list of steps."""
        following = self.next
        return tuple(
            Row(s, TITLES[s], "done" if s in self.done else "next" if s is following else "later")
            for s in Screen
        )

    def after(self, screen: Screen) -> Screen:
        """Where the main button of a screen leads: the first step behind it that is not done."""
        order = list(Screen)
        later = order[order.index(screen) + 1 :]
        return next((s for s in later if s not in self.done), Screen.ANSWER)


def look_mark(folder: JobFolder) -> str:
    """Changes with the scans; unit and axis are compared with what ``look`` found (``_seen_right``)."""
    told = []
    for path in folder.scan_files():
        try:
            told.append(f"{path.name} {path.stat().st_size} {path.stat().st_mtime_ns}")
        except OSError:
            told.append(f"{path.name} missing")
    return hashlib.sha256("\n".join(told).encode("utf-8", "replace")).hexdigest()[:16]


def _seen_right(scan: Mapping[str, Any], looked: Mapping[str, Any]) -> bool:
    """Was the scan looked at in the unit and with the axis that the job says now?"""
    return all(scan.get(key) in (None, looked.get(key)) for key in ("unit", "up"))


def state_of(folder: JobFolder, runs: Runs) -> State:
    """Where a job stands. A job file that somebody's editor broke is told in ``broken``."""
    try:
        data, broken = folder.data(), ""
    except CrestcutError as error:
        return State({}, {}, {}, False, {}, str(error), frozenset())
    looked: Mapping[str, Any] = {}
    last = runs.last(Kind.LOOK)
    if last.get("code") in DONE and last.get("mark") == look_mark(folder):
        found = read_json(folder.looked / "look.json")
        looked = found if _seen_right(data.get("scan", {}), found) else {}
    result = read_json(folder.results / "result.json")
    fresh = bool(result) and _fresh(folder, runs, result)
    checked = read_json(folder.results / "verify.json")
    if runs.last(Kind.VERIFY).get("done_mark") != folder.whole_mark():
        checked = {}
    done = {screen for screen in Screen if _done(screen, folder, data, looked, result if fresh else {})}
    if checked.get("verdict") == "done":
        done.add(Screen.AFTER)
    if not folder.scan_files():
        done.clear()
    known = runs.now.first.get("result") if runs.now is not None else None
    first = known if known and runs.last(Kind.RUN).get("mark") == folder.plan_mark() else {}
    return State(data, looked, result, fresh, checked, broken, frozenset(done), first)


def _fresh(folder: JobFolder, runs: Runs, result: Mapping[str, Any]) -> bool:
    """Is the answer of the job as it is? By our own record, or, where somebody ran it, by its hashes."""
    if runs.last(Kind.RUN).get("done_mark") == folder.plan_mark():
        return True
    hashes = {row.get("role"): row.get("sha256") for row in result.get("inputs", [])}
    vehicle = folder.vehicle_file()
    return hashes.get("job") == _sha(folder.job) and (
        vehicle is None or hashes.get("vehicle") == _sha(vehicle)
    )


def _sha(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return ""


def _done(
    screen: Screen,
    folder: JobFolder,
    data: Mapping[str, Any],
    looked: Mapping[str, Any],
    result: Mapping[str, Any],
) -> bool:
    line = data.get("travel", {}).get("line")
    match screen:
        case Screen.SCAN:
            return bool(looked)
        case Screen.CHECK:
            guessed = any(f.get("unit_guessed") for f in looked.get("files", []))
            return bool(looked) and (not guessed or "unit" in data.get("scan", {}))
        case Screen.LINE:
            return isinstance(line, str) or (isinstance(line, list) and len(line) > 1)
        case Screen.VEHICLE:
            vehicle = folder.vehicle_file()
            return vehicle is not None and vehicle.is_file()
        case Screen.ROOM:
            return "want" in data.get("clearance", {})
        case Screen.SLAB:
            return bool(data.get("slab"))
        case Screen.ANSWER:
            return bool(result)
        case Screen.MEASURE:
            return bool(result) and not result.get("advice", {}).get("measure")
        case Screen.WORK:
            return bool(result) and nothing_to_do(result)
        case Screen.AFTER:
            return False


def nothing_to_do(result: Mapping[str, Any]) -> bool:
    """Is no cut called for?"""
    return not (result.get("cut") or {}).get("volume")
