"""Every figure of ``result.json`` on the page: its value in both systems, and its meaning one tap away."""

from __future__ import annotations

import re
from collections.abc import Mapping

from markupsafe import Markup

from crestcut.report.pages.glossary import MEANINGS, ROW_MEANINGS, TERMS
from crestcut.report.pages.meanings import Meaning, count
from crestcut.report.pages.shell import html, joined

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


def figure(document: Mapping[str, object], key: str, words: str | None = None) -> Markup:
    """One figure as a button that opens its meaning; its exact value stands in a ``data`` element. "not
    worked out" where unknown.

    words : markup shown in place of the figure as it is usually written.
    """
    value, meaning = look_up(document, key), meaning_of(key)
    if value is None:
        return html('<span class="unknown">not worked out</span>')
    shown = words or meaning.write(value)
    return html(
        '<button type="button" class="fig" popovertarget="{}">'
        '<data value="{!r}" data-key="{}">{}</data>'
        '<span class="away">: {}, what it means</span></button>',
        _anchor(meaning.key), value, key, shown, meaning.name,
    )  # fmt: skip


def term(key: str, words: str) -> Markup:
    """Words (markup) that open the meaning of one of ``TERMS``."""
    name = next(name for known, name, _ in TERMS if known == key)
    return html(
        '<button type="button" class="fig" popovertarget="{}">{}'
        '<span class="away">: {}, what it means</span></button>',
        _anchor(key), words, name,
    )  # fmt: skip


def keep_stops(markup: Markup) -> Markup:
    """The same with each stop held to the figure before it: no line begins with one."""
    figure_and_stop = r'(<button type="button" class="fig"(?:(?!</button>).)*</button>)([.,;:])'
    return Markup(re.sub(figure_and_stop, KEPT, str(markup)))  # noqa: S704 - as it came, but for KEPT


def figure_table(document: Mapping[str, object]) -> Markup:
    """All figures that are known, with their meanings written out."""
    rows = [
        html('<div><dt>{}</dt><dd>{}</dd><dd class="hint">{}</dd></div>',
             m.name, figure(document, m.key), m.text)
        for m in MEANINGS
        if look_up(document, m.key) is not None
    ]  # fmt: skip
    return html('<dl class="figures">{}</dl>', joined(rows))


def meanings(document: Mapping[str, object]) -> Markup:
    """The boxes that open beside the figures."""
    known = [(m, value) for m in MEANINGS if (value := look_up(document, m.key)) is not None]
    boxes = [_box(m, html('<p class="big">{}</p>', m.write(value))) for m, value in known]
    boxes += [_box(m) for m in ROW_MEANINGS if document.get(m.key.split(".")[0])]
    boxes += [_box(Meaning(key, name, count, text)) for key, name, text in TERMS]
    return joined(boxes, "\n")


def _box(meaning: Meaning, value: str = "") -> Markup:
    return html(
        '<div popover id="{}" class="meaning"><h3>{}</h3>{}<p>{}</p></div>',
        _anchor(meaning.key), meaning.name, value, meaning.text,
    )  # fmt: skip


def _anchor(key: str) -> str:
    return "mean-" + re.sub(r"[._*]+", "-", key)
