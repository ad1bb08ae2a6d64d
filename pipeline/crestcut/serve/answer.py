"""What the answer's screens show of ``result.json``: verdict, one gap, where, what to do next, options in
words. Figures stay those of the file; only their units and the words around them are chosen here.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from crestcut.serve.asking import area, far, shown, volume
from crestcut.serve.steps import Screen

_HOW = {
    "crest": "where the slab bends over (its crest)", "nose": "with its nose, where the ground rises",
    "tail": "with its tail, where the ground drops away", "side": "beside a wheel",
}  # fmt: skip
_VERDICTS = {"touches": "It touches", "clears": "It clears", "cannot tell": "It cannot be told yet"}


@dataclass(frozen=True)
class Next:
    """What to do now: where its button leads, what it says, and why."""

    screen: Screen
    button: str
    why: str


@dataclass(frozen=True)
class OptionRow:
    """One thing that could be done. works : yes, slowly, no.  cost : in words."""

    name: str
    works: str
    cost: str
    left: str


@dataclass(frozen=True)
class Answer:
    """The first screen of an answer."""

    verdict: str
    headline: str
    gap: str
    between: str
    chance: str
    where: tuple[str, ...]
    in_use: str
    options: tuple[OptionRow, ...]
    reasons: tuple[str, ...]
    released: bool
    cut: str
    notes: tuple[str, ...]
    next: Next


def answer_of(result: Mapping[str, Any], data: Mapping[str, Any], unit: str, planned: bool = True) -> Answer:
    """All that is shown of a result. data : the job, for its marks.  planned : False while the plan is still
    sought."""
    before = result.get("before") or {}
    verdict = str(before.get("verdict", "cannot tell"))
    gap = _float(before.get("least_clearance"))
    low, high = (_float(v) for v in (before.get("interval") or (math.nan, math.nan)))
    release = result.get("release") or {}
    released = release.get("state") == "ok"
    return Answer(
        verdict,
        _headline(verdict, before),
        _gap(gap, unit),
        f"19 times in 20 it lies between {_gap(low, unit)} and {_gap(high, unit)}"
        if math.isfinite(low)
        else "",
        _sentence(str(before.get("chance_in_words", ""))),
        where_of(result, data, unit),
        _in_use(result.get("in_use") or {}, unit),
        tuple(_option(row, unit) for row in result.get("options") or []),
        tuple(_sentence(str(r)) for r in release.get("reasons") or []),
        released,
        _cut(result.get("cut") or {}, unit),
        tuple(
            dict.fromkeys(
                _sentence(str(n))
                for n in (
                    *(before.get("reasons") or []),
                    *(result.get("vehicle_doubts") or []),
                    *(result.get("notes") or []),
                )
            )
        ),
        _next(verdict, result, released) if planned else _meanwhile(verdict, result),
    )


def where_of(result: Mapping[str, Any], data: Mapping[str, Any], unit: str) -> tuple[str, ...]:
    """Where the least gap lies, as one finds it with a tape: along the line, then from two marks."""
    before = result.get("before") or {}
    if before.get("station") is None:
        return ()
    travel = result.get("travel") or {}
    start = "point 1 of your line"
    offset, heading = _float(before.get("offset")), _float(before.get("heading"))
    stands = f"Front wheels {far(_float(before.get('station')), unit)} along from {start}"
    if abs(offset) >= 0.005:
        stands += f", {far(abs(offset), unit)} {'left' if offset > 0 else 'right'} of it"
    if abs(heading) > 0.005:
        stands += f", turned {math.degrees(abs(heading)):.0f}° to the {'left' if heading > 0 else 'right'}"
    if before.get("way") == "turned":
        stands += ", driving back to point 1"
    spot = [_float(before.get("x")), _float(before.get("y"))]
    return (f"{stands}.", f"The spot on the slab: {tape_words(spot, result, data, unit)}.") if travel else (
        f"{stands}.",
    )  # fmt: skip


def tape_words(spot: Sequence[float], result: Mapping[str, Any], data: Mapping[str, Any], unit: str) -> str:
    """A place by two distances, tape held level. spot : x, y in metres on the scan's axes."""
    frame = result.get("frame") or {}
    scale = [_float(v) for v in frame.get("metres_per_point_unit") or (1.0, 1.0)]
    known: list[tuple[str, float]] = []
    for mark in data.get("mark") or []:
        at = [_float(v) * s for v, s in zip(mark.get("at") or (), scale, strict=False)]
        if len(at) == 2:
            known.append((f"mark {mark.get('name')}", math.dist(at, spot)))
    known.sort(key=lambda pair: pair[1])
    line = (result.get("travel") or {}).get("line") or []
    if len(known) < 2 and len(line) > 1:
        ends = (("point 1 of your line", line[0]), ("its last point", line[-1]))
        known += [(name, math.dist([_float(v) for v in at[:2]], spot)) for name, at in ends]
    told = [f"{far(off, unit)} from {name}" for name, off in known[:2]]
    return " and ".join(told) + (" (tape held level)" if told else "")


def _headline(verdict: str, before: Mapping[str, Any]) -> str:
    part = str(before.get("part") or "underside")
    how = _HOW.get(str(before.get("kind")), "")
    if verdict == "touches":
        return f"The {part} touches {how}".rstrip() + "."
    if verdict == "clears":
        return "The vehicle gets over without touching, at walking pace."
    return f"The scan alone cannot say whether the {part} touches {how}".rstrip() + "."


def _gap(gap: float, unit: str) -> str:
    if not math.isfinite(gap):
        return "not known"
    return f"{shown(abs(gap), unit)} {'too little' if gap < 0 else 'to spare'}"


def _in_use(used: Mapping[str, Any], unit: str) -> str:
    gap = _float(used.get("least_clearance"))
    if not math.isfinite(gap):
        return ""
    return (
        f"In daily use, with people in it, braking, worn tyres: {_gap(gap, unit)}. "
        f"{_sentence(str(used.get('chance_in_words', '')))}"
    )


def _cut(cut: Mapping[str, Any], unit: str) -> str:
    taken, deepest = _float(cut.get("volume")), _float(cut.get("deepest"))
    if not taken > 0:
        return ""
    over = area(_float(cut.get("area")), unit)
    return f"{shown(deepest, unit)} at the deepest, over {over}: {volume(taken, unit)} of concrete"


def _option(row: Mapping[str, Any], unit: str) -> OptionRow:
    works = {"both": "yes", "walking pace": "slowly"}.get(str(row.get("answer")), "no")
    depth, taken = _float(row.get("depth")), _float(row.get("volume"))
    gap = _float(row.get("clearance"))
    said = {
        "loose boards": "boards up to {depth} thick laid loose, for a test drive",
        "strips": "strips up to {depth} thick to buy, lay and fix",
        "fillet": "a filling up to {depth} thick to lay",
        "cut": "{much} of concrete to grind off, up to {depth} deep, by a contractor",
        "cut and strips": "{much} of concrete to grind off, up to {depth} deep, and strips to lay",
        "new bay": "a new piece of slab: {much} of concrete out and in",
        "keep to the line": "nothing to buy: drive closer to the line", 
        "slower": "nothing to buy: no braking there",
        "another line": "nothing to buy: drive beside it", "less load": "nothing to buy: carry less",
        "more pressure": "nothing to buy: a fifth more air, within the tyre’s marking",
    }.get(str(row.get("kind")), "nothing to do")  # fmt: skip
    if row.get("forbids"):
        works, said = "no", "this slab does not allow it"
    much = volume(taken, unit) if math.isfinite(taken) else ""
    cost = said.format(depth=shown(depth, unit), much=much)
    return OptionRow(str(row.get("name", "")), works, cost, _gap(gap, unit) if math.isfinite(gap) else "")


def _meanwhile(verdict: str, result: Mapping[str, Any]) -> Next:
    """What to do while the plan is still sought: what does not hang on it. Without a button: to wait."""
    if (result.get("advice") or {}).get("measure"):
        return _next(verdict, result, False)
    if verdict == "clears":
        return Next(
            Screen.ANSWER, "",
            "Nothing has to be done. Before you rely on it, roll over once, slowly, somebody watching. "
            "Plan and report follow here.",
        )  # fmt: skip
    return Next(
        Screen.ANSWER, "", "What could be done about it is being worked out; it follows here, with the files."
    )


def _next(verdict: str, result: Mapping[str, Any], released: bool) -> Next:
    if (result.get("advice") or {}).get("measure"):
        return Next(
            Screen.MEASURE, "See what to measure",
            "One or two readings by hand make this answer much surer, and the work smaller.",
        )  # fmt: skip
    if verdict == "clears":
        return Next(
            Screen.WORK, "See plan and report",
            "Nothing has to be done. Before you rely on it, roll over once, slowly, somebody watching.",
        )  # fmt: skip
    if not released and not reasons_about(result, slab=True):
        return Next(
            Screen.ROOM, "Change the limits",
            "Grinding within the limits is not enough. Choose below what works, or change what may be taken "
            "off or how much room there is to be.",
        )  # fmt: skip
    if not released:
        return Next(
            Screen.SLAB, "Say what is known of the slab",
            "The plan may not be used for cutting yet; what is missing stands below.",
        )  # fmt: skip
    return Next(
        Screen.WORK, "Go to plan and sheets",
        "Choose below what suits you; the plan and the sheets for whoever does the work are ready.",
    )  # fmt: skip


def reasons_about(result: Mapping[str, Any], slab: bool) -> list[str]:
    """Why it may not be cut: what an answer about slab and place would change, or all else."""
    release = result.get("release") or {}
    reasons, codes = release.get("reasons") or [], release.get("codes") or []
    return [str(r) for r, c in zip(reasons, codes, strict=False) if (c.get("about") is not None) == slab]


def verdict_words(verdict: str) -> str:
    """The verdict in two or three words."""
    return _VERDICTS.get(verdict, verdict)


def _sentence(text: str) -> str:
    text = text.strip()
    return text[:1].upper() + text[1:] + ("" if not text or text.endswith(".") else ".")


def _float(value: Any) -> float:
    return float(value) if isinstance(value, (int, float)) and not isinstance(value, bool) else math.nan
