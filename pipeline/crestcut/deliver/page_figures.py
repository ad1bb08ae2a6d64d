"""Every figure of ``result.json`` on the page: its value in both systems, and its meaning one tap away."""

from __future__ import annotations

from collections.abc import Mapping

from crestcut.deliver.page_meanings import MEANINGS
from crestcut.deliver.page_shell import esc

BY_KEY = {m.key: m for m in MEANINGS}


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


def figure(document: Mapping[str, object], key: str) -> str:
    """One figure as a button that opens its meaning; its exact value stands in a ``data`` element. "not
    worked out" where unknown."""
    value, meaning = look_up(document, key), BY_KEY[key]
    if value is None:
        return '<span class="unknown">not worked out</span>'
    return (
        f'<button type="button" class="fig" popovertarget="{_anchor(key)}"><data value="{value!r}" '
        f'data-key="{esc(key)}">'
        f'{meaning.write(value)}</data><span class="away">: {esc(meaning.name)}, what it means</span>'
        "</button>"
    )


def figure_table(document: Mapping[str, object]) -> str:
    """All figures that are known, with their meanings written out."""
    rows = [
        f'<tr><th scope="row">{esc(m.name)}<span class="hint">{esc(m.text)}</span></th>'
        f"<td>{figure(document, m.key)}</td></tr>"
        for m in MEANINGS
        if look_up(document, m.key) is not None
    ]
    return f'<table class="figures"><tbody>{"".join(rows)}</tbody></table>'


def meanings(document: Mapping[str, object]) -> str:
    """The boxes that open beside the figures."""
    return "\n".join(
        f'<div popover id="{_anchor(m.key)}" class="meaning"><h3>{esc(m.name)}</h3><p '
        f'class="big">{m.write(value)}</p><p>{esc(m.text)}</p></div>'
        for m in MEANINGS
        if (value := look_up(document, m.key)) is not None
    )


def _anchor(key: str) -> str:
    return "mean-" + key.replace(".", "-").replace("_", "-")
