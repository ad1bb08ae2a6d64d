"""What is to be measured by hand, as the screens ask for it, and what was read, as the job file holds it."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from crestcut.base.errors import CrestcutError
from crestcut.serve.answer import tape_words
from crestcut.serve.asking import bounds, far, length, shown, with_unit

LONGEST = 2.0  # m: nobody reads more under a string
WITHIN = "1 mm"  # how well a string or a stack of cards is read (common practice, no source)


@dataclass(frozen=True)
class Spot:
    """Somewhere on the slab, by tape."""

    name: str
    where: str


@dataclass(frozen=True)
class Asked:
    """One measurement worth making. boxes : name of each box and its words.  may_touch : a touch counts."""

    number: int
    kind: str
    title: str
    how: str
    expect: str
    spots: tuple[Spot, ...]
    settles: tuple[str, ...]
    boxes: tuple[tuple[str, str], ...]
    may_touch: bool
    table: str
    entries: tuple[Mapping[str, Any], ...]


_FEET = (
    "left front wheel",
    "right front wheel",
    "left rear wheel",
    "right rear wheel",
    "where the gap is felt",
)


def asked_of(result: Mapping[str, Any], data: Mapping[str, Any], unit: str) -> tuple[Asked, ...]:
    """What a result (of ``run`` or of ``verify``) advises to measure, best first."""
    rows = (result.get("advice") or {}).get("measure") or []
    return tuple(_asked(n, row, result, data, unit) for n, row in enumerate(rows))


# what is told to whoever edits the file, and what it is here
_HERE = (
    (re.compile(r' \(placed = "[^"]*"\)'), ""),
    (re.compile(r"write it into the job file and run again"), "type it here and work it out again"),
    (re.compile(r": two \[\[string\]\] in the job file, each with .*$"), ""),
)


def _for_here(text: str) -> str:
    """The same words without what they say of keys and files."""
    for told, here in _HERE:
        text = told.sub(here, text)
    return text


def _asked(
    number: int, row: Mapping[str, Any], result: Mapping[str, Any], data: Mapping[str, Any], unit: str
) -> Asked:
    kind = str(row.get("kind"))
    metres = [[float(v) for v in xy] for xy in row.get("where_xy") or []]
    points = [[float(v) for v in xy] for xy in row.get("where_points") or []]
    names = _FEET if len(metres) == 5 else ("block A", "block B", "read here")
    spots = tuple(
        Spot(name, tape_words(at, result, data, unit)) for name, at in zip(names, metres, strict=False)
    )
    expect = row.get("expect_m")
    said = shown(float(expect), unit) if isinstance(expect, (int, float)) and expect >= 0 else ""
    boxes, entries = _tables(kind, row, points, unit)
    titles = {"felt gap": f"The gap under the {row.get('part')}", "string": "A string across the slab"}
    return Asked(
        number, kind, titles.get(kind, "Walk the slab again with the scanner"),
        _for_here(str(row.get("how", ""))), said, spots,
        tuple(_for_here(str(s)) for s in row.get("settles") or []), boxes,
        kind == "felt gap" and not row.get("boards") and bool(entries),
        "witness" if kind == "felt gap" else "string", entries,
    )  # fmt: skip


def _tables(
    kind: str, row: Mapping[str, Any], points: Sequence[Sequence[float]], unit: str
) -> tuple[tuple[tuple[str, str], ...], tuple[Mapping[str, Any], ...]]:
    """Boxes, and for each the table of the job file but for its reading."""
    if kind == "felt gap" and len(points) == 5:
        middle = [round((a + b) / 2, 3) for a, b in zip(points[0], points[1], strict=True)]
        entry: dict[str, Any] = {"part": str(row.get("part")), "front_axle": middle, "within": WITHIN}
        boards = row.get("boards")
        if isinstance(boards, Mapping):
            entry["raised"] = f"{float(boards['thickness']) * 1000:g} mm"
        return (("gap", "The gap you felt"),), (entry,)
    high = row.get("blocks_m")
    if kind == "string" and len(points) >= 2 and isinstance(high, (int, float)):
        ends = {name: [round(v, 3) for v in at] for name, at in zip("ab", points, strict=False)}
        placed = row.get("placed_m")
        string: dict[str, Any] = {**ends, "blocks": f"{high * 1000:.0f} mm", "within": WITHIN}
        if isinstance(placed, (int, float)):
            string["placed"] = f"{placed * 1000:.0f} mm"
        seek = row.get("seek_m") or []
        if len(seek) > 1:
            boxes = tuple(
                (f"down{k}", f"Least distance down, {shown(low, unit)} to {shown(top, unit)} from block A")
                for k, (low, top) in enumerate(seek)
            )
            entries = tuple(
                {**string, "at": "least", "between": [f"{low:.2f} m", f"{top:.2f} m"]} for low, top in seek
            )
            return boxes, entries
        if seek or len(points) == 2:
            return (("down", "Least distance from the string down to the slab"),), (
                {**string, "at": "least"},
            )
        along = math.dist([float(v) for v in row["where_xy"][0]], [float(v) for v in row["where_xy"][2]])
        words = f"Distance from the string down to the slab, {shown(along, unit)} from block A"
        return (("down", words),), ({**string, "at": f"{along * 1000:.0f} mm"},)
    return (), ()


def read_in(asked: Asked, form: Mapping[str, str], unit: str) -> tuple[list[dict[str, Any]], dict[str, str]]:
    """(tables for the job file, faults by box) of what was typed for one measurement."""
    found: list[dict[str, Any]] = []
    faults: dict[str, str] = {}
    if asked.may_touch and form.get("touched"):
        return [{**asked.entries[0], "touched": True}], {}
    for (name, _), entry in zip(asked.boxes, asked.entries, strict=True):
        text = form.get(name, "").strip()
        if not text:
            faults[name] = "type what you read"
            continue
        try:
            metres = length(text, unit)
            rule = bounds()[f"{asked.table}.{'gap' if asked.table == 'witness' else 'down'}"]
            if not rule["minimum"] <= metres <= min(rule["maximum"], LONGEST):
                raise CrestcutError(f"{shown(metres, unit)} cannot be right", "", "read it again")
            found.append({**entry, ("gap" if asked.table == "witness" else "down"): with_unit(text, unit)})
        except CrestcutError as error:
            faults[name] = f"{error.what}; {error.mend}"
    return found, faults


@dataclass(frozen=True)
class Read:
    """A reading that stands in the job: its table and number there, in words, and its value as typed."""

    table: str
    number: int
    words: str
    value: str


def read_of(
    here: Mapping[str, Any], result: Mapping[str, Any], data: Mapping[str, Any], unit: str
) -> tuple[Read, ...]:
    """Every reading in ``here``: a job, or its ``after`` table. Where it was taken is told as ``tape_words``
    does."""
    found = []
    for number, w in enumerate(here.get("witness") or []):
        value = "it touched" if w.get("touched") else str(w.get("gap") or w.get("cleared") or "")
        on = f", on boards {w['raised']} thick" if isinstance(w.get("raised"), str) else ""
        stood = _place(w.get("front_axle"), result, data, unit)
        words = f"Gap under the {w.get('part', 'vehicle')}{on}"
        words += f"; middle of the front axle {stood}" if stood else ""
        found.append(Read("witness", number, words, value))
    for number, s in enumerate(here.get("string") or []):
        ends = [_place(s.get(end), result, data, unit) for end in "ab"]
        words = f"String from {ends[0]} to {ends[1]}, blocks {s.get('blocks')}"
        found.append(Read("string", number, words, str(s.get("down", ""))))
    return tuple(found)


def _place(at: Any, result: Mapping[str, Any], data: Mapping[str, Any], unit: str) -> str:
    """A point of the job by tape; a mark by its name."""
    if isinstance(at, str):
        return f"mark {at}"
    if not isinstance(at, list) or len(at) != 2 or not result:
        return ""
    scale = (result.get("frame") or {}).get("metres_per_point_unit") or (1.0, 1.0)
    return tape_words([float(v) * float(f) for v, f in zip(at, scale, strict=True)], result, data, unit)


def places_after(result: Mapping[str, Any], unit: str) -> tuple[Asked, ...]:
    """Where to feel the gap once the work is done, before a check says better: at the tightest place of
    before, and as far from the line to either side as it was judged."""
    before, travel = result.get("before") or {}, result.get("travel") or {}
    points, metres = travel.get("line_points") or [], travel.get("line") or []
    if before.get("station") is None or len(points) != 2 or not before.get("part"):
        return ()
    (ax, ay), (bx, by) = ([float(v) for v in p[:2]] for p in metres)
    long = math.dist((ax, ay), (bx, by))
    scale = [float(v) for v in (result.get("frame") or {}).get("metres_per_point_unit") or (1.0, 1.0)]
    station, part = float(before["station"]), str(before["part"])
    if before.get("way") == "turned":
        return ()  # the station counts along the other way; the check says where to read
    way = ((bx - ax) / long, (by - ay) / long)
    found = []
    for number, (off, words) in enumerate(
        ((0.0, "on your line"), (0.2, "to the left of it"), (-0.2, "to the right of it"))
    ):
        x, y = ax + station * way[0] - off * way[1], ay + station * way[1] + off * way[0]
        entry = {"part": part, "front_axle": [round(x / scale[0], 3), round(y / scale[1], 3)],
                 "within": WITHIN}  # fmt: skip
        found.append(
            Asked(
                number,
                "felt gap",
                f"The gap under the {part}, {words}",
                f"Stand the vehicle with its front wheels {far(station, unit)} along from point 1, {words}"
                + (f" by {far(abs(off), unit)}" if off else "")
                + ". Feel the gap with a stack of cards on a long stick",
                "",
                (),
                (),
                (("gap", "The gap you felt"),),
                True,
                "witness",
                (entry,),
            )
        )
    return tuple(found)
