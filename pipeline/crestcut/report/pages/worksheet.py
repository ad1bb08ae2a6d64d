"""The worksheet inside ``report.html``: what to do in order, jig, set-out and acceptance, dust, water,
limits, cards.

A stamped worksheet carries no jig, passes or set-out, so none can appear here.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from markupsafe import Markup

from crestcut.base.cautions import Caution
from crestcut.base.units import both
from crestcut.report.pages.meanings import length, length_at_least, length_at_most
from crestcut.report.pages.shell import html, joined
from crestcut.work import (
    BAG,
    STICK_INCHES,
    Jig,
    Measure,
    Quantities,
    SetOut,
    Silica,
    Ties,
    Worksheet,
    bags_words,
    hours_words,
    mask_words,
    span_words,
    wear_words,
)


def worksheet_text(sheet: Worksheet) -> Markup:
    """Everything for the person on the slab, folded away under headings."""
    parts = [
        _listed("Measure first", [_measure(m) for m in sheet.first], open_=True),
        _folded("In this order", _passes(sheet), open_=True),
        _folded("How much, how long", _quantities(sheet.quantities)),
        _folded("Dust", joined(_dust(line) for line in sheet.silica)),
        _folded("Board and blocks", _jig(sheet.jig)),
        _folded("Set out", _set_out(sheet.set_out)),
        _folded("Is it done? The string test", _strings(sheet.set_out)),
        _folded("Water and slopes", _water(sheet)),
        _listed("What limits the depth", sheet.limits),
        _listed("Afterwards", sheet.afterwards),
        _listed("Notes", sheet.notes),
    ]
    return joined(parts)


def worksheet_cautions(sheet: Worksheet) -> Markup:
    """The cautions that belong to these tools and this place, and the cards for when something is hit."""
    cards = joined(
        html("<h3>{}</h3><ol>{}</ol>", card.title, _items(card.lines)) for card in sheet.cards
    )  # fmt: skip
    return html("{}{}", caution_list(sheet.cautions), _folded("If something is hit", cards))


def caution_list(cautions: Iterable[Caution]) -> Markup:
    """Cautions as a list, each with its heading."""
    items = joined(html("<li><strong>{}:</strong> {}</li>", c.head, c.full) for c in cautions)
    return html("<ul>{}</ul>", items)


def _passes(sheet: Worksheet) -> Markup:
    if not sheet.passes:
        return Markup()
    rows = [
        (f"{p.number}", p.tool, p.what, hours_words(p.hours)) for p in sheet.passes
    ]  # fmt: skip
    return html("<p>{}</p>{}", sheet.why_tools, _table(("", "Tool", "What", "Time"), rows))


def _quantities(q: Quantities) -> Markup:
    facts = [
        ("All steps, from chalk to check", hours_words(q.hours)),
        ("Hands on the trigger", hours_words(q.trigger_hours)),
        ("Concrete, the plan to what hands take", span_words(q.taken.times(1000), "litres")),
        ("Dust or slurry", f"{bags_words(q)} of {span_words(BAG, 'kg', 0)}"),
        ("Slots in all", f"{q.kerf_metres:.0f} m"),
        *((f"Wear: {name}", wear_words(used)) for name, used in q.wheels),
        *((f"Vibration: {name}", span_words(v, "m/s²", 1)) for name, v in q.vibration),
    ]
    known = joined(html("<div><dt>{}</dt><dd>{}</dd></div>", *fact) for fact in facts)
    if not q.volume > 0:
        return Markup()
    return html('<dl class="facts">{}</dl><ul>{}</ul>', known, _items(q.notes))


def _dust(line: Silica) -> Markup:
    air = "" if line.airflow is None else f"; {line.airflow * 3600:.0f} m³/h or more through the shroud"
    return html(
        "<p><strong>{}, {}, {}:</strong> {}{}; {}.</p>",
        line.task, line.place, line.hours, line.control, air, mask_words(line),
    )  # fmt: skip


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


def _jig(jig: Jig | None) -> Markup:
    if jig is None:
        return Markup()
    rows = [
        (
            str(r.lane),
            length(r.low),
            length(r.high),
            html("{}, block {}", length(r.rear), r.rear_stack),
            html("{}, block {}", length(r.front), r.front_stack),
            str(r.spacers),
            length(r.deepest),
        )
        for r in jig.rows
    ]
    name, thick = jig.spacer
    stacks = joined(
        html(
            "<li>Block {}: {}, screw out {} to {}</li>",
            s.number, " + ".join(s.pieces), length(s.screw.low), length(s.screw.high),
        )
        for s in jig.stacks
    )  # fmt: skip
    head = ("Strip", "Slots from", "to", "Rear block", "Front block", "Spacers in its first lift", "Deepest")
    return html(
        "<p>{}, sagging {}; the cutter reaches {} below it, {} when worn. Stick that must pass under it: {}. "
        "{} lifts; a spacer is {} ({}), one less under both ends in each lift, none in the last.</p>"
        "{}<ul>{}{}</ul>",
        jig.board.name, length(jig.board.sag), length(jig.reach), length(jig.worn),
        length_at_least(jig.stick, STICK_INCHES), len(jig.lifts), name, length(thick), _table(head, rows),
        stacks, _items(jig.cannot),
    )  # fmt: skip


def _set_out(found: SetOut | None) -> Markup:
    if found is None:
        return Markup()
    corners = [
        (name, length(station), length(offset), _ties(ties)) for name, station, offset, ties in found.corners
    ]
    dots = [(d.name, length(d.station), length(d.offset), length(d.depth), _ties(d.ties)) for d in found.dots]
    return html(
        "{}{}<ul>{}</ul>",
        _table(("Corner", "Along the line", "Left of it", "By tape"), corners),
        _table(("Dot", "Along the line", "Left of it", "Drill", "By tape"), dots),
        _items(found.notes),
    )


def _ties(ties: Ties | None) -> str | Markup:
    if ties is None:
        return "no two marks cross well"
    return html(
        "{} from {}, {} from {}, on the {}",
        length(ties.first_distance), ties.first, length(ties.second_distance), ties.second, ties.side,
    )  # fmt: skip


def _strings(found: SetOut | None) -> Markup:
    if found is None or not found.strings:
        return Markup()
    rows = [
        (
            str(r.lane),
            length(r.rear_at),
            length(r.front_at),
            length_at_most(r.blocks),
            length(r.at),
            length_at_least(r.least),
        )
        for r in found.strings
    ]
    head = ("String", "Rear block at", "Front block at", "Blocks", "Measure at", "Must read at least")
    pull = html("<p>Pull the string with {:.0f} N; it then sags {}.</p>", found.pull, length(found.sag))
    return pull + _table(head, rows)


def _water(sheet: Worksheet) -> Markup:
    water = sheet.water
    before, after = len(water.ponds_before), len(water.ponds_after)
    said = [f"Puddles before the cut: {before}, after it: {after}.", *water.notes]
    said += [f"{walk.kind}: {line}" for walk in sheet.walks for line in walk.said]
    head = html("<p><strong>{}</strong></p>", water.headline) if water.headline else ""
    return html("{}<ul>{}</ul>", head, _items(said))


def _items(lines: Iterable[str]) -> Markup:
    return joined(html("<li>{}</li>", line) for line in lines)


def _table(head: Sequence[str], rows: Iterable[Sequence[str | Markup]]) -> Markup:
    body = joined(
        html(
            "<tr>{}</tr>",
            joined(html('<td data-head="{}"><span>{}</span></td>', name, cell)
                   for name, cell in zip(head, row, strict=True)),
        )
        for row in rows
    )  # fmt: skip
    if not body:
        return Markup()
    names = joined(html('<th scope="col">{}</th>' if name else "<td></td>", name) for name in head)
    return html('<table class="wide"><thead><tr>{}</tr></thead><tbody>{}</tbody></table>', names, body)


def _listed(title: str, lines: Sequence[str], open_: bool = False) -> Markup:
    return _folded(title, html("<ul>{}</ul>", _items(lines)) if lines else Markup(), open_)


def _folded(title: str, inside: Markup, open_: bool = False) -> Markup:
    if not inside:
        return Markup()
    return html(
        '<details class="inner"{}><summary>{}</summary>{}</details>', " open" if open_ else "", title, inside
    )
