"""Everything on a page comes in by one door, which escapes what is not markup."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
from markupsafe import Markup

from crestcut.report import pages
from crestcut.report.pages.shell import html, joined, json_for_script

PAGES = sorted(Path(pages.__file__).parent.glob("*.py"))
HARM = '</script><meta http-equiv=refresh content="0;url=//x">\u2028{0}'


def test_what_is_not_markup_is_escaped() -> None:
    assert html("<p>{}</p>", "<b>") == "<p>&lt;b&gt;</p>"
    assert html("<p>{}</p>", html("<b>{}</b>", '"&')) == "<p><b>&#34;&amp;</b></p>"
    assert html("<p>{}</p>", HARM).count("<") == 2 and "{0}" in html("<p>{}</p>", HARM)
    assert joined(["<i>", Markup("<i>")], "<") == "&lt;i&gt;&lt;<i>"
    told = json_for_script({HARM: HARM})
    assert not set(told) & set("<>&\u2028\u2029")


@pytest.mark.parametrize("path", PAGES, ids=lambda p: p.name)
def test_markup_is_written_only_in_constant_patterns(path: Path) -> None:
    """No f-string, join or sum of texts holds a tag, and every pattern stands in the source."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        where = f"{path.name}:{getattr(node, 'lineno', 0)}"
        if isinstance(node, ast.JoinedStr):
            told = "".join(str(v.value) for v in node.values if isinstance(v, ast.Constant))
            assert not re.search("</|<[a-z]+[ >]", told), f"{where}: markup in an f-string"
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "html":
            pattern = node.args[0]
            ends = [pattern.body, pattern.orelse] if isinstance(pattern, ast.IfExp) else [pattern]
            is_shell = path.name == "shell.py" and isinstance(pattern, ast.Name)
            assert is_shell or all(isinstance(e, ast.Constant) for e in ends), f"{where}: no constant pattern"
