"""The figures of ``result.json`` that the page shows, each with its meaning (``glossary.toml``)."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib import resources

from crestcut.report.pages.words import Both, area, count, length, litres, share, times, volume

WRITERS: Mapping[str, Callable[[float], str | Both]] = {
    write.__name__: write for write in (area, count, length, litres, share, times, volume)
}


@dataclass(frozen=True)
class Meaning:
    """One figure: its key in result.json, what it is called, how it is written, and what it means."""

    key: str
    name: str
    write: Callable[[float], str | Both]
    text: str


@dataclass(frozen=True)
class Figure:
    """One figure of a result: its own key, its exact value in SI and its meaning."""

    key: str
    value: float
    meaning: Meaning

    @property
    def said(self) -> str | Both:
        """As it is usually written."""
        return self.meaning.write(self.value)


def _read() -> dict[str, Meaning]:
    text = resources.files("crestcut.report.pages").joinpath("glossary.toml").read_text(encoding="utf-8")
    return {
        key: Meaning(key, row["name"], WRITERS[row["as"]], row["text"])
        for key, row in tomllib.loads(text).items()
    }


GLOSSARY = _read()
MEANINGS = tuple(m for key, m in GLOSSARY.items() if "*" not in key)
ROW_MEANINGS = tuple(m for key, m in GLOSSARY.items() if "*" in key)  # of tables: the star is the row


def find_figure(document: Mapping[str, object], key: str) -> Figure | None:
    """The figure at a dotted key of the result; None where it is not known. Rows of a table
    (``options.3.depth``) share the meaning of their column."""
    at: object = document
    for part in key.split("."):
        if isinstance(at, Mapping):
            at = at.get(part)
        elif isinstance(at, (list, tuple)) and part.isdigit() and int(part) < len(at):
            at = at[int(part)]
        else:
            return None
    if isinstance(at, bool) or not isinstance(at, (int, float)):
        return None
    meaning = GLOSSARY.get(key) or GLOSSARY[re.sub(r"\.\d+\.", ".*.", key)]
    return Figure(key, float(at), meaning)


def anchor(key: str) -> str:
    """The id of the box that says what a figure means."""
    return "mean-" + re.sub(r"[._*]+", "-", key)
