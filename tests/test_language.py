"""What people read in another language: nothing said that English does not say, and no figure changed."""

from __future__ import annotations

import ast
import os
import random
import re
from dataclasses import replace
from pathlib import Path

import pytest

from crestcut.base.language import LANGUAGES, Words, catalogue, say, speaking, wanted, words_of
from crestcut.base.units import parse_length
from crestcut.job import words_in
from crestcut.serve.asking import with_unit
from serve.served import Served

PACKAGE = Path(__file__).parents[1] / "pipeline" / "crestcut"
OTHERS = [name for name in LANGUAGES if name != "en"]
HOLE = re.compile(r"\{(\d+|[a-z])\}")
# names, which are not translated, on the screens of an empty job
NAMES = {"English", "Deutsch", "flat-floor hatchback", "kiln trolley", "lowered-floor mobility van"}
NAMES |= {"las, laz, ply, pcd, e57, obj, stl, glb, usdz, xyz, csv, txt, pts"}


# words that every English sentence of ours has one of, and no German one
ENGLISH = re.compile(
    r"\b(the|of|and|from|with|is|are|to|by|which|at|for|it|its|this|that|under|over|no|least|gap|then)\b",
    re.I,
)


def english_in(text: str) -> bool:
    """Is any of it still English?"""
    return bool(ENGLISH.search(text))


def filled(english: str, seed: int) -> str:
    """A text as the program makes it: figures and words in a message's holes."""
    dice = random.Random(seed)
    units = ("", " mm", " m", " in")
    return HOLE.sub(
        lambda hole: f"{dice.randint(1, 999) / 10:g}{dice.choice(units)}" if hole[1].isdigit() else "Xyq Zvw",
        english,
    )


def figures(text: str) -> list[str]:
    plain = re.sub(r"(?<=[mst])[²³23]", "", text.replace(",", "."))  # of square and cubic
    return sorted(re.findall(r"\d+(?:\.\d+)?", plain))


@pytest.mark.parametrize("language", OTHERS)
def test_every_message_says_with_the_holes_that_english_has(language: str) -> None:
    for english, said in catalogue(language).items():
        assert set(HOLE.findall(said)) <= set(HOLE.findall(english)), english
        counted = [int(n) for n in HOLE.findall(english) if n.isdigit()]
        assert counted == list(range(len(counted))), english  # as they stand: so they are put back
        loose = re.findall(r"\d+", HOLE.sub("", said))
        assert set(loose) <= set(re.findall(r"\d+", HOLE.sub("", english))), english


@pytest.mark.parametrize("language", OTHERS)
def test_a_figure_is_the_same_in_every_language(language: str) -> None:
    """By the thousand: none is lost, added or changed but for the decimal sign. A message that leaves a
    figure out on purpose (another unit of the same) is not among them."""
    words = words_of(language, "DE")
    for seed, english in enumerate(sorted(catalogue(language))):
        if set(HOLE.findall(catalogue(language)[english])) != set(HOLE.findall(english)):
            continue
        text = filled(english, seed)
        assert figures(words.say(text)) == figures(text), (text, words.say(text))


def test_what_is_not_known_stays_english_sentence_by_sentence() -> None:
    words = Words(
        "de", ",", {"Stop.": "Halt.", "It is {0} deep.": "Es ist {0} tief.", "Time: {a}": "Zeit: {a}"}
    )
    assert (
        words.say("Stop. Nothing of this. It is 1.5 mm deep.") == "Halt. Nothing of this. Es ist 1,5 mm tief."
    )
    assert words.say("Time: 7.25 of something") == "Zeit: 7.25 of something"
    assert words.say("It is 5 1/2 in deep.") == "Es ist 5 1/2 Zoll tief."
    assert say("Stop.") == "Stop."
    with speaking(words):
        assert say("Stop.") == "Halt."
    assert say("Stop.") == "Stop."


def test_decimals_are_written_as_in_the_country() -> None:
    assert [words_of("de", c).say("12.5 mm") for c in ("DE", "AT", "CH", "US", None)] == [
        "12,5 mm", "12,5 mm", "12.5 mm", "12.5 mm", "12,5 mm",
    ]  # fmt: skip
    assert [words_of("de", "DE").say(text) for text in ("1,234.5", "1,234.5 m", "12,345")] == [
        "1\u00a0234,5", "1\u00a0234,5 m", "12\u00a0345",
    ]  # fmt: skip
    assert words_of("en", "DE").say("12.5 mm") == "12.5 mm"


def test_a_decimal_comma_is_taken_where_it_can_be_nothing_else() -> None:
    for typed, metres in (("12,5", 0.0125), ("1,25 cm", 0.0125), ("0,14 m", 0.14)):
        assert parse_length(with_unit(typed, "mm")) == pytest.approx(metres)
    assert with_unit("1,234", "mm") == "1,234"  # thousands, or not: refused, as before


def test_a_browser_gets_what_it_asks_for() -> None:
    for accept, language in (
        ("de-CH,de;q=0.9,en;q=0.8", "de"), ("en-GB,de;q=0.5", "en"), ("fr,de;q=0.3", "de"), ("", "en"),
        ("de;q=0", "en"), ("xx;q=nonsense,,;;", "en"),
    ):  # fmt: skip
        assert wanted(accept) == language, accept


def test_a_job_is_spoken_of_in_its_own_words_whatever_is_wrong_with_it(tmp_path: Path) -> None:
    """One line of several, a byte order mark before it; nothing that is no plain file is read for them."""
    job = tmp_path / "yard.toml"
    job.write_text('language = "de"\nnot = "known"\n[site]\ncountry = "CH"\n', encoding="utf-8-sig")
    for path in (job, tmp_path / "yard.toml#left gate"):
        words = words_in(path)
        assert words.language == "de" and words.decimal == "."
    assert words_in(job, "en").language == "en"
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "deep").write_text("a = " + "[" * 9000)
    for name in ("pipe", "deep", ".", "none"):
        assert words_in(tmp_path / name).language == "en"


def test_names_codes_and_scripts_of_a_page_stay() -> None:
    words = Words("de", ",", {"Stop": "Halt"})
    page = '<html lang="en"><bdi>Stop</bdi><code>Stop</code><script>Stop</script><p title="Stop">Stop</p>'
    assert words.page(page) == page.replace('lang="en"', 'lang="de"').replace('"Stop">Stop', '"Halt">Halt')
    assert words.page("<p>&lt;b&gt; Stop</p>") == "<p>&lt;b&gt; Stop</p>"


def test_the_screens_of_an_empty_job_are_whole(tmp_path: Path) -> None:
    """None of their texts falls back to English; the page says in which language it is."""
    missing: set[str] = set()
    words = replace(words_of("de"), missing=missing)
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        for screen in ("scan", "vehicle", "room", "slab", "answer", "measure", "phone"):
            words.page(served.get(f"/{screen}"))
        _, _, body = served.ask("GET", "/scan", headers={"Accept-Language": "de"})
        assert b'<html lang="de"' in body and "Den Scan bringen" in body.decode()
        served.send("/language", language="de")
        assert '<html lang="de"' in served.get("/room")  # without being asked for
        assert 'language = "de"' in (tmp_path / "job" / "job.toml").read_text()
    assert {text for text in missing if len(text) > 1} <= NAMES


def said_by_faults(path: Path) -> list[str]:
    """What and mend of every fault that a module raises, "7" in place of what comes from elsewhere."""

    def text(node: ast.expr) -> str:
        match node:
            case ast.Constant(value=str(words)):
                return words
            case ast.JoinedStr(values=parts):
                return "".join(text(p) if isinstance(p, ast.Constant) else "7" for p in parts)
        return ""

    calls = [n for n in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(n, ast.Call)]
    faults = [c for c in calls if isinstance(c.func, ast.Name) and c.func.id == "CrestcutError"]
    return [text(argument) for fault in faults for k, argument in enumerate(fault.args) if k != 1]


def test_what_is_wrong_is_told_whole_where_a_person_meets_it() -> None:
    """On the screens, of a file that is no scan, of a length: no fault of theirs is left in English."""
    rooms = (*PACKAGE.glob("serve/*.py"), *PACKAGE.glob("scan/formats/*.py"), PACKAGE / "base/units.py")
    texts = {text for path in rooms for text in said_by_faults(path) if " " in text}
    assert len(texts) > 90
    left: dict[str, str] = {}
    for text in sorted(texts - {"it lies 7"}):  # "between 1 and 2" is of its message
        for tried in (text, text.replace("7", "Xyq")):
            missing: set[str] = set()
            replace(words_of("de"), missing=missing).say(tried)
            if not missing:
                break
        else:
            left[text] = tried
    assert not left


def test_columns_of_a_terminal_keep_their_place() -> None:
    words = Words("de", ",", {"works": "reicht", "gap {0}": "Spalt {0}", "cut": "Abtrag", "Stop.": "Halt."})
    assert words.row("  works   cut  gap 1.5 mm") == "  reicht  Abtrag  Spalt 1,5 mm"
    assert words.row("  - Stop.") == "  - Halt."
