"""The worksheet inside ``report.html``: what to do in order, jig, set-out and acceptance, dust, water,
limits, cards.

A stamped worksheet carries no jig, passes or set-out, so none can appear here.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from crestcut.deliver.page_meanings import length
from crestcut.deliver.page_shell import esc
from crestcut.units import both
from crestcut.work.jig_records import Jig, Range, Ties
from crestcut.work.records import Measure, Quantities, SetOut, Silica, Worksheet


def worksheet_text(sheet: Worksheet) -> str:
    """Everything for the person on the slab, folded away under headings."""
    parts = [
        _listed("Measure first", [_measure(m) for m in sheet.first], open_=True),
        _folded("In this order", _passes(sheet), open_=True),
        _folded("How much, how long", _quantities(sheet.quantities)),
        _folded("Dust", "".join(_dust(line) for line in sheet.silica)),
        _folded("Board and blocks", _jig(sheet.jig)),
        _folded("Set out", _set_out(sheet.set_out)),
        _folded("Is it done? The string test", _strings(sheet.set_out)),
        _folded("Water and slopes", _water(sheet)),
        _listed("What limits the depth", sheet.limits),
        _listed("Afterwards", sheet.afterwards),
        _listed("Notes", sheet.notes),
    ]
    return "".join(parts)


def worksheet_cautions(sheet: Worksheet) -> str:
    """The cautions that belong to these tools and this place, and the cards for when something is hit."""
    cards = "".join(
        f"<h3>{esc(card.title)}</h3><ol>{_items(card.lines)}</ol>" for card in sheet.cards
    )  # fmt: skip
    return f"<ul>{_items(sheet.cautions)}</ul>{_folded('If something is hit', cards)}"


def _passes(sheet: Worksheet) -> str:
    if not sheet.passes:
        return ""
    rows = [
        (f"{p.number}", esc(p.tool), esc(p.what), esc(_span(p.hours, "h"))) for p in sheet.passes
    ]  # fmt: skip
    return f"<p>{esc(sheet.why_tools)}</p>" + _table(("", "Tool", "What", "Time"), rows)


def _quantities(q: Quantities) -> str:
    facts = [
        ("Grinding", _span(q.hours, "h")), ("Hands on the trigger", _span(q.trigger_hours, "h")),
        ("Bags of dust or slurry", _span(q.bags, "")), ("Slots in all", f"{q.kerf_metres:.0f} m"),
        *((f"Wheels: {name}", _span(count, "")) for name, count in q.wheels),
        *((f"Vibration: {name}", _span(v, "m/s²")) for name, v in q.vibration),
    ]  # fmt: skip
    known = "".join(f"<div><dt>{esc(name)}</dt><dd>{esc(value)}</dd></div>" for name, value in facts)
    return f'<dl class="facts">{known}</dl><ul>{_items(q.notes)}</ul>' if q.volume > 0 else ""


def _dust(line: Silica) -> str:
    mask = (
        f"respirator with a protection factor of {line.mask} or more"
        if line.mask
        else "no respirator is required by rule"
    )
    air = "" if line.airflow is None else f"; {line.airflow * 3600:.0f} m³/h or more through the shroud"
    head = f"<strong>{esc(line.task)}, {esc(line.place)}, {esc(line.hours)}:</strong>"
    return f"<p>{head} {esc(line.control)}{air}; {mask}.</p>"


def _measure(measure: Measure) -> str:
    """One hand measurement in a sentence or two."""
    expect = (
        ""
        if math.isnan(measure.expect)
        else " Expect a touch."
        if measure.expect < 0
        else f" Expect {both(measure.expect)}."
    )
    said = " ".join((*measure.cautions, *measure.settles))
    return f"{measure.how[:1].upper()}{measure.how[1:]}.{expect} {said}"


def _jig(jig: Jig | None) -> str:
    if jig is None:
        return ""
    rows = [
        (
            str(r.lane),
            length(r.low),
            length(r.high),
            f"{length(r.rear)}, block {esc(r.rear_stack)}",
            f"{length(r.front)}, block {esc(r.front_stack)}",
            str(r.spacers),
            length(r.deepest),
        )
        for r in jig.rows
    ]
    name, thick = jig.spacer
    stacks = "".join(
        f"<li>Block {esc(s.number)}: {esc(' + '.join(s.pieces))}, screw out {length(s.screw.low)} to"
        f" {length(s.screw.high)}</li>"
        for s in jig.stacks
    )
    head = ("Strip", "Slots from", "to", "Rear block", "Front block", "Spacers in its first lift", "Deepest")
    return (
        f"<p>{esc(jig.board.name)}, sagging {length(jig.board.sag)}; the cutter reaches {length(jig.reach)} "
        "below it, "
        f"{length(jig.worn)} when worn. Stick that must pass under it: {length(jig.stick)}."
        f" {len(jig.lifts)} lifts; a spacer is "
        f"{esc(name)} ({length(thick)}), one less under both ends in each lift, none in the last.</p>"
        f"{_table(head, rows)}<ul>{stacks}{_items(jig.cannot)}</ul>"
    )


def _set_out(found: SetOut | None) -> str:
    if found is None:
        return ""
    corners = [
        (esc(name), length(station), length(offset), _ties(ties))
        for name, station, offset, ties in found.corners
    ]
    dots = [
        (esc(d.name), length(d.station), length(d.offset), length(d.depth), _ties(d.ties)) for d in found.dots
    ]
    return (
        _table(("Corner", "Along the line", "Left of it", "By tape"), corners)
        + _table(("Dot", "Along the line", "Left of it", "Drill", "By tape"), dots)
        + f"<ul>{_items(found.notes)}</ul>"
    )


def _ties(ties: Ties | None) -> str:
    if ties is None:
        return "no two marks cross well"
    return (
        f"{length(ties.first_distance)} from {esc(ties.first)}, {length(ties.second_distance)} from "
        f"{esc(ties.second)}, on the {esc(ties.side)}"
    )


def _strings(found: SetOut | None) -> str:
    if found is None or not found.strings:
        return ""
    rows = [
        (str(r.lane), length(r.rear_at), length(r.front_at), length(r.blocks), length(r.at), length(r.least))
        for r in found.strings
    ]
    head = ("String", "Rear block at", "Front block at", "Blocks", "Measure at", "Must read at least")
    pull = f"<p>Pull the string with {found.pull:.0f} N; it then sags {length(found.sag)}.</p>"
    return pull + _table(head, rows)


def _water(sheet: Worksheet) -> str:
    water = sheet.water
    before, after = len(water.ponds_before), len(water.ponds_after)
    said = [f"Puddles before the cut: {before}, after it: {after}.", *water.notes]
    said += [f"{walk.kind}: {line}" for walk in sheet.walks for line in walk.said]
    head = f"<p><strong>{esc(water.headline)}</strong></p>" if water.headline else ""
    return f"{head}<ul>{_items(said)}</ul>"


def _span(span: Range, unit: str) -> str:
    digits = 0 if span.high >= 10 or unit == "" else 1
    low, high = f"{span.low:.{digits}f}", f"{span.high:.{digits}f}"
    return f"{low if low == high else f'{low} to {high}'} {unit}".strip()


def _items(lines: Iterable[str]) -> str:
    return "".join(f"<li>{esc(line)}</li>" for line in lines)


def _table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    body = "".join(
        "<tr>"
        + "".join(
            f'<td data-head="{esc(name)}"><span>{cell}</span></td>'
            for name, cell in zip(head, row, strict=True)
        )
        + "</tr>"
        for row in rows
    )
    if not body:
        return ""
    names = "".join(f'<th scope="col">{esc(name)}</th>' if name else "<td></td>" for name in head)
    return f'<table class="wide"><thead><tr>{names}</tr></thead><tbody>{body}</tbody></table>'


def _listed(title: str, lines: Sequence[str], open_: bool = False) -> str:
    return _folded(title, f"<ul>{_items(lines)}</ul>" if lines else "", open_)


def _folded(title: str, inside: str, open_: bool = False) -> str:
    if not inside:
        return ""
    return (
        f'<details class="inner"{" open" if open_ else ""}><summary>{esc(title)}</summary>{inside}</details>'
    )
