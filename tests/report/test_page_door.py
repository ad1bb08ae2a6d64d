"""Markup stands in the pages' templates alone, and what they show is escaped unless it is a page's own."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
from jinja2 import UndefinedError

from crestcut.report import pages
from crestcut.report.pages.shell import TEMPLATES

FOLDER = Path(pages.__file__).parent
PAGES = sorted(FOLDER.glob("*.py"))
HARM = '</script><meta http-equiv=refresh content="0;url=//x">\u2028{{ 0 }}'
TAG = re.compile("</|<!|<[a-z]+[ >]")


def test_what_a_template_shows_is_escaped() -> None:
    shown = TEMPLATES.from_string('<p title="{{ a }}">{{ a }}</p>').render(a=HARM)
    assert shown.count("<") == 2 and shown.count('"') == 2 and "{{ 0 }}" in shown
    parts = TEMPLATES.get_template("parts.html").module
    told = parts.named_row(("", HARM), HARM, parts.both(HARM))  # type: ignore[attr-defined]
    assert "<meta" not in told and told.count("&lt;meta") == 3
    assert not set(TEMPLATES.from_string("{{ a | tojson }}").render(a={HARM: HARM})) & set("<>&\u2028\u2029")


def test_a_name_that_a_template_does_not_know_stops_it() -> None:
    with pytest.raises(UndefinedError):
        TEMPLATES.from_string("{{ reprot }}").render(report=1)


@pytest.mark.parametrize("path", PAGES, ids=lambda p: p.name)
def test_no_markup_is_written_in_python(path: Path) -> None:
    """Neither a tag nor what calls a text markup; but for the one that holds a stop to its figure."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    keeps = [n for n in ast.walk(tree) if isinstance(n, ast.FunctionDef) and n.name == "keep_stops"]
    spared = {id(node) for keep in keeps for node in ast.walk(keep)}
    for node in ast.walk(tree):
        if id(node) in spared:
            continue
        where = f"{path.name}:{getattr(node, 'lineno', 0)}"
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            assert not TAG.search(node.value), f"{where}: markup"
        assert not (isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Markup"), where


def test_only_a_pages_own_style_and_script_are_put_in_as_they_are() -> None:
    whole = "".join(p.read_text(encoding="utf-8") for p in (FOLDER / "templates").iterdir())
    # the page of a job has both, that of several jobs no script
    assert sorted(re.findall(r"\w+ *\| *safe\b", whole)) == ["script | safe", "style | safe", "style | safe"]
    assert "autoescape" not in whole
    for name, end in (("page.css", "</style"), ("viewer.js", "</script")):
        assert end not in (FOLDER / "viewer" / "built" / name).read_text(encoding="utf-8").lower()
