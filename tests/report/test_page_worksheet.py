"""The worksheet inside the report: complete when released, nothing to cut from when stamped."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from page_text import PageText

from crestcut.base.units import both
from crestcut.job.records import Job, Slab
from crestcut.report.pages.shell import TEMPLATES
from crestcut.work.records import Worksheet
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet
from crestcut.work.tools import load_tools
from work.work_scene import scene

PARTS = TEMPLATES.get_template("worksheet.html").module
worksheet_text, worksheet_cautions = PARTS.worksheet, PARTS.worksheet_cautions  # type: ignore[attr-defined]
TOOLS = Path(__file__).parents[2] / "configs" / "tools"


@cache
def sheet(answered: bool) -> Worksheet:
    s = scene()
    job: Job = s.job if answered else replace(s.job, slab=Slab())
    release = decide_release(job, False, s.plan)
    return make_worksheet(replace(s.order(release), job=job), tools=load_tools(TOOLS))


def words(sheet: Worksheet) -> str:
    return PageText(worksheet_text(sheet) + worksheet_cautions(sheet)).text


def test_released_sheet_says_everything_it_holds() -> None:
    made = sheet(True)
    assert made.jig is not None and made.set_out is not None and made.passes
    text = words(made)
    for wanted in (
        *(c.line for c in made.cautions), *made.limits, *made.afterwards, *(p.what for p in made.passes),
        made.jig.board.name,
        *(c.title for c in made.cards), *(d.name for d in made.set_out.dots), *made.jig.cannot,
    ):  # fmt: skip
        assert " ".join(wanted.split()) in text, wanted
    row = made.jig.rows[0]
    mm, inch = both(row.rear).rstrip(")").split(" (")
    assert f"{mm} {inch}" in text or f"{mm}{inch}" in text


def test_stamped_sheet_shows_nothing_to_cut_from() -> None:
    made = sheet(False)
    assert made.stamp
    text = worksheet_text(made)
    for heading in ("Board and blocks", "Set out", "The string test", "In this order"):
        assert heading not in text
    assert "If something is hit" in worksheet_cautions(made)


@pytest.mark.parametrize("answered", [True, False])
def test_markup_is_whole(answered: bool) -> None:
    text = worksheet_text(sheet(answered))
    for tag in ("details", "table", "ul", "dl", "tr", "td", "span", "p"):
        assert text.count(f"<{tag}>") + text.count(f"<{tag} ") == text.count(f"</{tag}>"), tag
