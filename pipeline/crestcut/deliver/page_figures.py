"""Every figure of ``result.json`` on the page: its value in both systems, and its meaning one tap away."""

from __future__ import annotations

import re
from collections.abc import Mapping

from crestcut.deliver.page_glossary import MEANINGS, ROW_MEANINGS, TERMS
from crestcut.deliver.page_meanings import Meaning, count
from crestcut.deliver.page_shell import esc

KEPT = r'<span class="keep">\1\2</span>'
BY_KEY = {m.key: m for m in (*MEANINGS, *ROW_MEANINGS)}


def look_up(document: Mapping[str, object], key: str) -> float | None:
    """The number at a dotted key of the result, or None where it is not known."""
    at: object = document
    for part in key.split("."):
        if isinstance(at, Mapping):
            at = at.get(part)
        elif isinstance(at, (list, tuple)) and part.isdigit() and int(part) < len(at):
            at = at[int(part)]
        else:
            return None
    return float(at) if isinstance(at, (int, float)) and not isinstance(at, bool) else None


def meaning_of(key: str) -> Meaning:
    """What a figure means; rows of a table (``options.3.depth``) share the meaning of their column."""
    return BY_KEY.get(key) or BY_KEY[re.sub(r"\.\d+\.", ".*.", key)]


def figure(document: Mapping[str, object], key: str, words: str | None = None) -> str:
    """One figure as a button that opens its meaning; its exact value stands in a ``data`` element. "not
    worked out" where unknown.

    words : markup shown in place of the figure as it is usually written.
    """
    value, meaning = look_up(document, key), meaning_of(key)
    if value is None:
        return '<span class="unknown">not worked out</span>'
    shown = words or meaning.write(value)
    return (
        f'<button type="button" class="fig" popovertarget="{_anchor(meaning.key)}">'
        f'<data value="{value!r}" data-key="{esc(key)}">{shown}</data>'
        f'<span class="away">: {esc(meaning.name)}, what it means</span></button>'
    )


def term(key: str, words: str) -> str:
    """Words (markup) that open the meaning of one of ``TERMS``."""
    name = next(name for known, name, _ in TERMS if known == key)
    return (
        f'<button type="button" class="fig" popovertarget="{_anchor(key)}">{words}'
        f'<span class="away">: {esc(name)}, what it means</span></button>'
    )


def keep_stops(markup: str) -> str:
    """The same with each stop held to the figure before it: no line begins with one."""
    return re.sub(r'(<button type="button" class="fig"(?:(?!</button>).)*</button>)([.,;:])', KEPT, markup)


def figure_table(document: Mapping[str, object]) -> str:
    """All figures that are known, with their meanings written out."""
    rows = [
        f"<div><dt>{esc(m.name)}</dt><dd>{figure(document, m.key)}</dd>"
        f'<dd class="hint">{esc(m.text)}</dd></div>'
        for m in MEANINGS
        if look_up(document, m.key) is not None
    ]
    return f'<dl class="figures">{"".join(rows)}</dl>'


def meanings(document: Mapping[str, object]) -> str:
    """The boxes that open beside the figures."""
    known = [(m, value) for m in MEANINGS if (value := look_up(document, m.key)) is not None]
    boxes = [_box(m, f'<p class="big">{m.write(value)}</p>') for m, value in known]
    boxes += [_box(m, "") for m in ROW_MEANINGS if document.get(m.key.split(".")[0])]
    boxes += [_box(Meaning(key, name, count, text), "") for key, name, text in TERMS]
    return "\n".join(boxes)


def _box(meaning: Meaning, value: str) -> str:
    return (
        f'<div popover id="{_anchor(meaning.key)}" class="meaning"><h3>{esc(meaning.name)}</h3>{value}'
        f"<p>{esc(meaning.text)}</p></div>"
    )


def _anchor(key: str) -> str:
    return "mean-" + re.sub(r"[._*]+", "-", key)
