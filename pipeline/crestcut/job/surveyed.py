"""``[[control]]`` and ``[[check]]``: points whose place was surveyed, as they are written and as records."""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path
from typing import Annotated, Any

from pydantic import BeforeValidator, model_validator

from crestcut.base.errors import CrestcutError
from crestcut.job.faults import did_you_mean
from crestcut.job.fields import Between, Table, Text, fault
from crestcut.job.records import Mark, Surveyed

FEWEST = 3  # points that fix six unknowns: nine coordinates, of which three are left to tell how well
Sd = Annotated[float, Between(0.0001, 0.5, "finer than any survey", "no survey at all")]


def _numbers(value: Any, counts: tuple[int, ...], mend: str) -> tuple[float, ...]:
    good = isinstance(value, list) and all(
        isinstance(v, (int, float)) and not isinstance(v, bool) and math.isfinite(v) for v in value
    )
    if not good or len(value) not in counts:
        raise fault(f"{value} is no place", mend)
    return tuple(float(v) for v in value)


def _at(value: Any) -> tuple[float, ...]:
    return _numbers(value, (3,), "write east, north and height, like [500012.345, 5800034.567, 111.234]")


def _seen(value: Any) -> tuple[float, ...] | str:
    if isinstance(value, str) and value.strip():
        return value.strip()
    mend = "write x, y and perhaps z in the scan's own coordinates, like [2.10, 0.30], or the name of a mark"
    return _numbers(value, (2, 3), mend)


At = Annotated[tuple[float, float, float], BeforeValidator(_at)]
Seen = Annotated[tuple[float, float] | tuple[float, float, float] | str, BeforeValidator(_seen)]


class CheckTable(Table):
    """``[[check]]``: never used to lay the scan; held against it."""

    name: Text
    at: At
    seen: Seen | None = None
    within: Sd | None = None
    within_height: Sd | None = None

    @model_validator(mode="after")
    def _both(self) -> CheckTable:
        if self.within_height is not None and self.within is None:
            raise fault("within_height stands alone", "write within, that of the plan, beside it")
        return self


class ControlTable(CheckTable):
    """``[[control]]``: the scan is tied to it, so it must have been seen in it."""

    seen: Seen


def surveyed(
    table: str, written: Sequence[CheckTable], marks: Sequence[Mark], path: Path
) -> tuple[Surveyed, ...]:
    """The records of one kind, marks put in. Raises CrestcutError for a name that is there twice, a mark that
    nobody put, too few, or an sd that only some of them have."""
    where = f"{path.name}: {table}"
    names = [one.name for one in written]
    for name in names:
        if names.count(name) > 1:
            raise CrestcutError(f'"{name}" is there twice', where, "give each point a name of its own")
    if table == "control" and 0 < len(written) < FEWEST:
        raise CrestcutError(
            f"{len(written)} of {FEWEST} control points: a scan turns and tilts about fewer", where,
            "survey three or more that are not on one line; four or more tell which is wrong",
        )  # fmt: skip
    if len({one.within is None for one in written}) > 1:
        raise CrestcutError("within is written for some points only", where, "write it for all, or for none")
    places = {mark.name: (mark.at.x, mark.at.y) for mark in marks}
    found = []
    for one in written:
        seen = one.seen
        if isinstance(seen, str):
            if seen not in places:
                mend = did_you_mean(seen, places) or "add a [[mark]] with that name and its place"
                raise CrestcutError(f'no mark is named "{seen}"', f"{where} {one.name}", mend)
            seen = places[seen]
        found.append(Surveyed(one.name, one.at, seen, one.within, one.within_height))
    return tuple(found)
