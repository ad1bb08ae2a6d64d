"""Reading a written page the strict way: what it would load, what it carries, what it says."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from typing import Any


@dataclass
class PageText(HTMLParser):
    """Elements in order with their attributes, the text of scripts and styles, and the words a reader
    sees."""

    raw: str
    elements: list[tuple[str, dict[str, str]]] = field(default_factory=list)
    inside: dict[str, list[str]] = field(default_factory=lambda: {"script": [], "style": []})
    words: list[str] = field(default_factory=list)
    data: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self._open: list[str] = []
        self._key: str | None = None
        self.feed(self.raw)

    @classmethod
    def read(cls, path: Path) -> PageText:
        return cls(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = {k: v or "" for k, v in attrs}
        self.elements.append((tag, found))
        self._open.append(tag)
        if tag in self.inside:
            self.inside[tag].append("")
        if tag == "data" and "data-key" in found:
            self.data[found["data-key"]] = found["value"]

    def handle_endtag(self, tag: str) -> None:
        if tag in self._open:
            while self._open.pop() != tag:
                pass

    def handle_data(self, data: str) -> None:
        where = self._open[-1] if self._open else ""
        if where in self.inside:
            self.inside[where][-1] += data
        else:
            self.words.append(data)

    @property
    def carried(self) -> dict[str, Any]:
        """The data the viewer reads."""
        return json.loads(self.inside["script"][0])

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.words).split())

    def assert_self_contained(self) -> None:
        """No address is loaded, nothing but the page's own script and style may run, no element carries
        code."""
        for tag, attributes in self.elements:
            assert tag not in ("link", "iframe", "object", "embed", "base", "img"), tag
            for name, value in attributes.items():
                assert not name.startswith("on") and name != "style", (tag, name)
                if name in ("src", "href", "action", "srcset", "data", "poster"):
                    assert value.startswith("#"), (tag, name, value)
        assert "url(" not in self.inside["style"][0] and "@import" not in self.inside["style"][0]
        policy = next(
            a["content"] for t, a in self.elements if a.get("http-equiv") == "Content-Security-Policy"
        )
        assert policy.startswith("default-src 'none'; ") and "unsafe" not in policy and "http" not in policy
        script, style = self.inside["script"], self.inside["style"]
        assert (len(script), len(style)) == (2, 1)
        for text in (script[1], style[0]):
            digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
            assert f"'sha256-{digest}'" in policy
        assert not re.search(
            r"\b(fetch|XMLHttpRequest|WebSocket|sendBeacon|EventSource)\s*\(\s*[\"'`]", script[1]
        )


def at_key(document: Any, key: str) -> float | None:
    """The number at a dotted key of result.json, read independently of the page's own look-up."""
    for part in key.split("."):
        document = document[int(part)] if isinstance(document, (list, tuple)) else (document or {}).get(part)
    return None if document is None else float(document)
