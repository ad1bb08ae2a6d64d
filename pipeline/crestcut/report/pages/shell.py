"""One self-contained page from a template: style, viewer and data inside it, and a policy that lets nothing
else run or load."""

from __future__ import annotations

import base64
import contextlib
import hashlib
import json
import os
import re
from collections.abc import Mapping
from importlib import resources
from pathlib import Path

from jinja2 import Environment, FileSystemBytecodeCache, PackageLoader, StrictUndefined
from jinja2.bccache import Bucket
from markupsafe import Markup

from crestcut.base.errors import CrestcutError, visible
from crestcut.base.language import ENGLISH, Words, here
from crestcut.report.pages import words
from crestcut.report.pages.glossary import anchor
from crestcut.report.view.result import plain
from crestcut.study import Identity
from crestcut.work import BAG, STICK_INCHES, bags_words, hours_words, mask_words, span_words, wear_words

_WORD = re.compile(r"[^\W\d_]{2,}")


def keep_stops(markup: str) -> Markup:
    """The same with each stop held to the figure before it: no line begins with one."""
    figure_and_stop = r'(<button type="button" class="fig"(?:(?!</button>).)*</button>)([.,;:])'
    kept = r'<span class="keep">\1\2</span>'
    return Markup(re.sub(figure_and_stop, kept, str(markup)))  # noqa: S704 - as it came, but for ``kept``


def sha256(text: str) -> str:
    """The source of a style or script as a policy names it (CSP level 3, 2.3.1)."""
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


def field(key: str) -> str:
    """The id of the box in which a key of the job file is asked for."""
    return "f-" + key.replace(".", "-")


def _shown(value: object) -> object:
    """What a template shows: of words from anywhere, control characters written out."""
    if isinstance(value, str) and not isinstance(value, Markup):
        return "\n".join(map(visible, value.split("\n")))
    return value


class _Compiled(FileSystemBytecodeCache):
    """Templates compiled by an earlier run, beside the package's own compiled modules; where nothing can be
    written there, compiled again."""

    def dump_bytecode(self, bucket: Bucket) -> None:
        with contextlib.suppress(OSError):
            Path(self.directory).mkdir(exist_ok=True)
            super().dump_bytecode(bucket)


TEMPLATES = Environment(
    loader=PackageLoader("crestcut.report.pages"),
    bytecode_cache=_Compiled(str(Path(__file__).parent / "__pycache__")),
    autoescape=True,  # names, titles and notes come from files of others
    finalize=_shown,
    undefined=StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
)
TEMPLATES.policies["json.dumps_kwargs"] = {"allow_nan": False, "separators": (",", ":")}
TEMPLATES.globals |= {"bag": BAG, "stick_inches": STICK_INCHES}
TEMPLATES.filters |= {
    "anchor": anchor, "at_least": words.length_at_least, "at_most": words.length_at_most, "bags": bags_words,
    "field": field, "hours": hours_words, "keep_stops": keep_stops, "length_said": words.length,
    "mask": mask_words, "odds": words.odds, "sentence": words.sentence, "sha256": sha256, "span": span_words,
    "wear": wear_words,
}  # fmt: skip


def page(
    template: str, title: str, data: Mapping[str, object], units: str, about: Identity, **shown: object
) -> str:
    """The whole HTML text.

    title : plain text.  data : what the viewer reads; NaN and infinity become null.  units : "metric" or
    "inches", shown first.  about : what the page says of itself.  shown : what else the template shows.
    It is in the language that is being spoken, and takes along the words for what its script writes.
    """
    style, script, words_ = asset("page.css"), asset("viewer.js"), here()
    told = {key: plain(value) for key, value in data.items()}
    if words_.language != ENGLISH:
        told["words"] = _taken_along(words_, script + json.dumps(told, ensure_ascii=False))
    return words_.page(
        TEMPLATES.get_template(template).render(
            title=title, data=told, units=units, about=about, style=style, script=script, **shown
        )
    )


def _taken_along(words_: Words, text: str) -> dict[str, object]:
    """What the viewer's speaker (``words.js``) needs: of the catalogue only what may come from ``text``,
    which holds every word of the script and of the page's data."""
    held = set(_WORD.findall(text.lower()))
    known = {e: said for e, said in words_.messages.items() if held.issuperset(_WORD.findall(e.lower()))}
    return {"language": words_.language, "decimal": words_.decimal, "messages": known}


def asset(name: str) -> str:
    """The text of what was built for the pages."""
    return (
        resources.files("crestcut.report.pages").joinpath(f"viewer/built/{name}").read_text(encoding="utf-8")
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
