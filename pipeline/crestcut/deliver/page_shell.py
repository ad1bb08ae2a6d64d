"""One self-contained page: style, viewer and data inside it, and a policy that lets nothing else run or
load."""

from __future__ import annotations

import base64
import contextlib
import hashlib
import html
import json
import math
import os
from collections.abc import Mapping
from importlib import resources
from pathlib import Path
from typing import Any

from crestcut.deliver.identity import Identity
from crestcut.errors import CrestcutError

_VIEWER = "viewer/built"


def esc(text: object) -> str:
    """Text that can stand in markup or between quotes without becoming either."""
    return html.escape(str(text), quote=True)


def json_for_script(data: Any) -> str:
    """JSON that cannot leave its script element: ``<``, ``>``, ``&`` and the line separators are written as
    escapes.

    HTML Living Standard, "Restrictions for contents of script elements": "<!--", "<script" and "</script"
    must not occur.
    Raises ValueError for NaN and infinity: not measured is null.
    """
    text = json.dumps(data, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    for bad in "<>&\u2028\u2029":
        text = text.replace(bad, f"\\u{ord(bad):04x}")
    return text


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


def page(title: str, kind: str, body: str, data: Mapping[str, Any], units: str, about: Identity) -> str:
    """The whole HTML text.

    title : plain text.  kind : "pick" or "report".  body : markup, already escaped.  data : what the viewer
    reads.
    units : "metric" or "inches", shown first.  about : what the page says of itself.
    """
    style, script = _asset("page.css"), _asset("viewer.js")
    policy = (
        f"default-src 'none'; script-src '{_hash(script)}'; style-src '{_hash(style)}'; img-src data: blob:; "
        "base-uri 'none'; form-action 'none'"
    )
    named = {"generator": about.tool, "release": about.release, "job": about.job, "dated": about.date_words}
    told = "".join(f'<meta name="{name}" content="{esc(text)}">\n' for name, text in named.items())
    return (
        f'<!doctype html>\n<html lang="en" data-page="{esc(kind)}" '
        f'data-units="{esc(units)}">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{policy}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n<meta name="color-scheme" '
        'content="light dark">\n'
        '<meta name="referrer" '
        f'content="no-referrer">\n{told}<title>{esc(title)}</title>\n<style>{style}</style>\n</head>\n'
        f'<body>\n{body}\n<script type="application/json" '
        f'id="crestcut-data">{json_for_script(plain(data))}</script>\n'
        f"<script>{script}</script>\n</body>\n</html>\n"
    )


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


def _asset(name: str) -> str:
    text = resources.files("crestcut.deliver").joinpath(f"{_VIEWER}/{name}").read_text(encoding="utf-8")
    end = "</script" if name.endswith(".js") else "</style"
    if end in text.lower():
        raise AssertionError(f"{name} would close its own element")
    return text


def _hash(text: str) -> str:
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
