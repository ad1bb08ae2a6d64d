"""What people read, in their language.

Everything is made, judged and kept in English, figures and all: records, ``result.json`` and ``study.npz`` do
not know what language a person reads, and no meaning is ever read back from words. Only at the edge, where a
text is put on paper or on a page, ``say`` looks it up in a gettext catalogue (``languages/de.po``, read and
kept by Babel's format) and falls back to English where it holds nothing.

A message of a catalogue stands for every text that differs from it in figures only: quantities are taken out
before it is looked up, ``{0}``, ``{1}`` and so on in the order in which they stand, and put back as they
were, so no translation can change one. ``{a}``, ``{b}`` ... stand for words that come from elsewhere (a
vehicle, a part, another message), which are looked up by themselves. Of a text that is not found, its
sentences are.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from functools import cache, cached_property
from importlib import resources

ENGLISH = "en"
LANGUAGES = {ENGLISH: "English", "de": "Deutsch"}  # each by its own name
# a quantity: a figure or fraction, with the unit of length it is in, "6 ft 3 1/2 in" as one
_FIGURE = r"(?:\d+ \d+/\d+|\d+/\d+|\d{1,3}(?:[,\u2009]\d{3})+(?:\.\d+)?|\d+(?:\.\d+)*)"
_LENGTH = rf"(?: (?:mm|cm|m|ft {_FIGURE} in|ft|in(?! (?:{_FIGURE}|the|a|which|all|it)\b))\b(?![²³2]))?"
_QUANTITY = re.compile(rf"(?<![\w.,])-?{_FIGURE}{_LENGTH}(?!\w)")
_BEGUN = re.compile(r"[:;,.)]+ (?=\S)")
_HOLE = re.compile(r"\{(\d+|[a-z])\}")
_ENDS = re.compile(r"(?<=[.!?]) (?=[A-ZÄÖÜ\"“'\d{])")
_PIECES = re.compile(r"(<!--.*?-->|<script\b.*?</script>|<style\b.*?</style>|<[^>]*>)", re.DOTALL)
_READ = re.compile(r'\b(aria-label|alt|placeholder|title|data-hint|data-name|data-head|label)="([^"]*)"')
_AS_THEY_ARE = ("bdi", "code", "kbd")  # names and what is typed: no words of ours
_TRADE = {" in": " Zoll", " ft": " Fuß"}


@dataclass(frozen=True)
class _Message:
    """A message with words from elsewhere in it, as what it is recognised by."""

    begins: str
    seen: re.Pattern[str]
    said: str


@dataclass(frozen=True)
class Words:
    """A language and the decimal sign of a country. messages : of the catalogue, translated ones only.
    missing : texts that were asked for and not found, by whoever collects them.
    """

    language: str
    decimal: str = "."
    messages: dict[str, str] = field(default_factory=dict, repr=False)
    missing: set[str] | None = field(default=None, repr=False, compare=False)

    def say(self, text: str) -> str:
        """The text in this language; as it came where the catalogue does not have it."""
        if self.language == ENGLISH:
            return text
        if not any(c.isalpha() for c in _QUANTITY.sub("", text)):
            return _QUANTITY.sub(lambda found: self._figure(found.group()), text)
        around = text.strip()
        lead, _, trail = text.partition(around)
        found = self._whole(around)
        if found is None:
            found = self._in_parts(around)
        return f"{lead}{found}{trail}"

    def row(self, text: str) -> str:
        """A line of a terminal: what stands between two spaces or more, or after a dash that begins it, is a
        column, and keeps its place."""
        begun = re.match(r" *(?:- )?", text)
        made = begun[0] if begun else ""
        pieces = re.split(r"( {2,})", text[len(made) :])
        for piece, gap in zip(pieces[::2], [*pieces[1::2], ""], strict=True):
            said = self.say(piece)
            made += said + (" " * max(2, len(gap) + len(piece) - len(said)) if gap else "")
        return made

    def page(self, text: str) -> str:
        """A whole page of HTML: its texts, and those of its attributes that are read out. Names (``bdi``) and
        what is typed (``code``, ``kbd``) stay, as do scripts and styles."""
        if self.language == ENGLISH:
            return text
        made, inside = [], ""
        for piece in _PIECES.split(text):
            if piece.startswith("<"):
                name = re.match(r"</?(\w*)", piece)
                tag = name[1] if name else ""
                if tag in _AS_THEY_ARE:
                    inside = "" if piece.startswith("</") else tag
                if tag == "html":
                    piece = piece.replace('lang="en"', f'lang="{self.language}"')
                if not piece.startswith(("<script", "<style", "<!")):
                    piece = _READ.sub(self._attribute, piece)
                made.append(piece)
            else:
                made.append(piece if inside or not piece.strip() else self._text(piece))
        return "".join(made)

    def _text(self, piece: str) -> str:
        return html.escape(self.say(html.unescape(piece)), quote=False)

    def _attribute(self, found: re.Match[str]) -> str:
        return f'{found[1]}="{html.escape(self.say(html.unescape(found[2])))}"'

    def _whole(self, text: str) -> str | None:
        """As one message, also where only its first letter, full stop or colon is another."""
        figures = [found.group() for found in _QUANTITY.finditer(text)]
        counted = iter(range(len(figures)))
        keyed = _QUANTITY.sub(lambda _: f"{{{next(counted)}}}", text)
        for tried, stop in ((keyed, ""), (keyed[:-1], keyed[-1:])):
            for first in dict.fromkeys((tried[:1], tried[:1].lower(), tried[:1].upper())):
                found = self._looked_up(first + tried[1:], figures)
                if found is not None:
                    if first != tried[:1] and tried[:1].isupper():
                        found = found[:1].upper() + found[1:]
                    return found + (stop if not found.endswith((".", "!", "?")) else "")
            if not keyed.endswith((".", ":")):
                break
        return None

    def _looked_up(self, keyed: str, figures: list[str]) -> str | None:
        said = self.messages.get(keyed)
        if said is not None:
            return _HOLE.sub(lambda hole: self._figure(figures[int(hole[1])]), said)
        for message in self._open:
            if keyed.startswith(message.begins) and (found := message.seen.fullmatch(keyed)):
                holes = {
                    name: self._figure(figures[int(value)]) if name[0] == "n" else self._inner(value, figures)
                    for name, value in found.groupdict().items()
                }
                return _filled(message.said, holes)
        return None

    def _inner(self, value: str, figures: list[str]) -> str:
        return self.say(_HOLE.sub(lambda hole: figures[int(hole[1])], value))

    @cached_property
    def _open(self) -> list[_Message]:
        """Messages with words in them, the most telling first."""
        found = []
        for english, said in self.messages.items():
            if any(hole.isalpha() for hole in _HOLE.findall(english)):
                bits = _HOLE.split(english)
                seen = "".join(
                    re.escape(bit) if k % 2 == 0 else
                    rf"\{{(?P<{_group(bit)}>\d+)\}}" if bit.isdigit() else f"(?P<{_group(bit)}>.+?)"
                    for k, bit in enumerate(bits)
                )  # fmt: skip
                found.append(_Message(bits[0], re.compile(seen), said))
        return sorted(found, key=lambda m: -len(m.seen.pattern))

    def _in_parts(self, text: str) -> str:
        """Line by line, else sentence by sentence; else a name and what it says, then clause by clause. Of a
        piece of a sentence, as a page has it beside a figure, the mark that it begins with stays."""
        if mark := _BEGUN.match(text):
            return mark[0] + self.say(text[mark.end() :])
        for parts, glue in ((text.split("\n"), "\n"), (_ENDS.split(text), " ")):
            if len(parts) > 1:
                return glue.join(map(self.say, parts))
        for glue in (": ", "; ", " + "):
            parts = text.split(glue, 1)
            found = [self._whole(part) for part in parts]
            if len(parts) > 1 and (found[0] or found[1]):
                return glue.join(
                    new if new is not None else self._in_parts(part)
                    for new, part in zip(found, parts, strict=True)
                )
        if self.missing is not None:
            self.missing.add(text)
        return text

    def _figure(self, text: str) -> str:
        for english, other in _TRADE.items() if self.language == "de" else ():
            text = re.sub(rf"(?<=\d){english}\b", other, text)
        if self.decimal == ".":
            return text
        text = re.sub(r"(?<=\d),(?=\d{3})", "\u00a0", text)  # thousands, by a space (ISO 80000-1)
        return re.sub(r"(?<![\d.])(\d+)\.(\d+)(?![\d.])", rf"\1{self.decimal}\2", text)


def _filled(said: str, holes: Mapping[str, str]) -> str:
    return _HOLE.sub(lambda hole: holes[_group(hole[1])], said)


def _group(name: str) -> str:
    return f"n{name}" if name.isdigit() else f"t{name}"


_NOW: ContextVar[Words | None] = ContextVar("crestcut_words", default=None)
_PLAIN = Words(ENGLISH)


def say(text: str) -> str:
    """A text for a person, in the language of the sheets and pictures that are being made."""
    return here().say(text)


def here() -> Words:
    """The words of what is being made."""
    return _NOW.get() or _PLAIN


@contextmanager
def speaking(words: Words) -> Iterator[Words]:
    """Within it sheets and pictures are made in that language."""
    before = _NOW.set(words)
    try:
        yield words
    finally:
        _NOW.reset(before)


@cache
def words_of(language: str | None, country: str | None = None) -> Words:
    """A language by its two letters (ISO 639), English where it is none of ``LANGUAGES``; decimals are
    written as in the country (ISO 3166), where it is not known as usual in the language."""
    if language not in LANGUAGES or language == ENGLISH:
        return Words(ENGLISH)
    return Words(language, _decimal(language, country), catalogue(language))


def wanted(accept: str) -> str:
    """The best of ``LANGUAGES`` for an Accept-Language header (RFC 9110, 12.5.4)."""
    asked: list[tuple[float, int, str]] = []
    for row in accept[:400].split(","):
        name, _, weight = row.partition(";")
        found = re.fullmatch(r"\s*q\s*=\s*([01](?:\.\d{1,3})?)\s*", weight)
        share = float(found[1]) if found else 1.0
        asked.append((-share, len(asked), name.strip().lower().partition("-")[0]))
    for share, _, name in sorted(asked):
        if name in LANGUAGES and share < 0:
            return name
    return ENGLISH


def _decimal(language: str, country: str | None) -> str:
    """By the Unicode CLDR, as Babel has it."""
    from babel.core import Locale, UnknownLocaleError

    for name in ([f"und_{country.upper()}"] if country else []) + [language]:
        try:
            return str(Locale.parse(name).number_symbols["latn"]["decimal"])
        except (UnknownLocaleError, ValueError, KeyError):
            continue
    return "."


@cache
def catalogue(language: str) -> dict[str, str]:
    """English and translated, those that are."""
    from babel.messages.pofile import read_po

    path = resources.files("crestcut.base").joinpath(f"languages/{language}.po")
    with path.open("rb") as file:
        read = read_po(file, locale=language)
    return {str(m.id): str(m.string) for m in read if m.id and m.string and not m.fuzzy}
