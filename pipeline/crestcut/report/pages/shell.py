"""One self-contained page: style, viewer and data inside it, and a policy that lets nothing else run or
load."""

from __future__ import annotations

import base64
import contextlib
import hashlib
import json
import math
import os
from collections.abc import Iterable, Mapping
from importlib import resources
from pathlib import Path
from typing import Any

from markupsafe import Markup, escape

from crestcut.base.errors import CrestcutError
from crestcut.study import Identity

_VIEWER = "viewer/built"


def html(pattern: str, *parts: object, **named: object) -> Markup:
    """Markup from a pattern that stands in the source, as for ``str.format``: the one door to a page.

    A part that is not markup already is text, and is escaped: names, titles and notes come from files of
    others. No page is put together in another way; a test looks for it.
    """
    return Markup(pattern).format(*parts, **named)  # noqa: S704 - held to constants where it is called


def joined(parts: Iterable[str], between: str = "") -> Markup:
    """The parts one after the other; what is not markup is escaped."""
    return escape(between).join(parts)


def json_for_script(data: Any) -> Markup:
    """JSON that cannot leave its script element: ``<``, ``>``, ``&`` and the line separators are written as
    escapes.

    HTML Living Standard, "Restrictions for contents of script elements": "<!--", "<script" and "</script"
    must not occur.
    Raises ValueError for NaN and infinity: not measured is null.
    """
    text = json.dumps(data, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    for bad in "<>&\u2028\u2029":
        text = text.replace(bad, f"\\u{ord(bad):04x}")
    return Markup(text)  # noqa: S704 - nothing of it can end its element


def plain(value: Any) -> Any:
    """The same value with NaN and infinity as None, numpy scalars and tuples as plain ones."""
    if isinstance(value, Mapping):
        return {str(k): plain(v) for k, v in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain(v) for v in value]
    if hasattr(value, "item") and not isinstance(value, (str, bytes)):
        value = value.item()
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return value


def page(
    title: str, kind: str, body: Markup, data: Mapping[str, Any], units: str, about: Identity
) -> str:  # fmt: skip
    """The whole HTML text.

    title : plain text.  kind : "pick" or "report".  body : made by ``html``.  data : what the viewer
    reads.
    units : "metric" or "inches", shown first.  about : what the page says of itself.
    """
    style, script = _asset("page.css"), _asset("viewer.js")
    policy = html(
        "default-src 'none'; script-src '{}'; style-src '{}'; img-src data: blob:; base-uri 'none'; "
        "form-action 'none'",
        _hash(script),
        _hash(style),
    )
    named = {"generator": about.tool, "release": about.release, "job": about.job, "dated": about.date_words}
    told = joined(html('<meta name="{}" content="{}">\n', name, text) for name, text in named.items())
    return html(
        '<!doctype html>\n<html lang="en" data-page="{kind}" '
        'data-units="{units}">\n<head>\n<meta charset="utf-8">\n'
        '<meta http-equiv="Content-Security-Policy" content="{policy}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n<meta name="color-scheme" '
        'content="light dark">\n'
        '<meta name="referrer" '
        'content="no-referrer">\n{told}<title>{title}</title>\n<style>{style}</style>\n</head>\n'
        '<body>\n{body}\n<script type="application/json" id="crestcut-data">{data}</script>\n'
        "<script>{script}</script>\n</body>\n</html>\n",
        kind=kind, units=units, policy=policy, told=told, title=title, style=style, body=body,
        data=json_for_script(plain(data)), script=script,
    )  # fmt: skip


def write_page(text: str, out: Path, name: str) -> Path:
    """Writes beside the final name and moves into place when whole; ``out`` is the file, or the folder it
    goes into.

    Raises CrestcutError if it cannot be written.
    """
    path = out if out.suffix == ".html" else out / name
    beside = path.with_name(f".{path.name}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        beside.write_text(text, encoding="utf-8", newline="\n")
        os.replace(beside, path)
    except OSError as error:
        with contextlib.suppress(OSError):
            beside.unlink()
        raise CrestcutError(
            f"cannot be written ({error.strerror})", str(path), "choose another folder with --out"
        ) from None
    return path


def _asset(name: str) -> Markup:
    text = resources.files("crestcut.report.pages").joinpath(f"{_VIEWER}/{name}").read_text(encoding="utf-8")
    end = "</script" if name.endswith(".js") else "</style"
    if end in text.lower():
        raise AssertionError(f"{name} would close its own element")
    return Markup(text)  # noqa: S704 - our own files


def _hash(text: str) -> str:
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
