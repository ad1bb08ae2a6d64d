"""Work sheets on paper: a stamp on every page unless released, nothing to cut from under a stamp, same bytes
twice.
"""

from __future__ import annotations

import itertools
import json
import logging
import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from deliver_scene import make_report

from crestcut.base.language import speaking, words_of
from crestcut.cut.records import CutPlan, Guided
from crestcut.job.answers import Method
from crestcut.job.records import Job, Site
from crestcut.report.pictures.ink import in_language
from crestcut.report.sheets.all_sheets import pages, tables, write_sheets
from crestcut.report.sheets.pages import order_page
from crestcut.report.sheets.paper import TIGHTER, Paper, filled
from crestcut.report.sheets.ties import deep, far, tie_cells, tie_heads, unit
from crestcut.work.guided_plan import facets_of, is_metric
from crestcut.work.jig import below_board
from crestcut.work.order import WorkOrder, make_site
from crestcut.work.records import Release, Worksheet
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet
from crestcut.work.timber import stock_of
from crestcut.work.tools import tools_at_hand
from crestcut.work.workable import core_of
from scenes import ANSWERED

FIELDS = (
    "kind",
    "thickness",
    "steel_depth",
    "post_tensioned",
    "heating",
    "conduit",
    "suspended",
    "permission",
    "place",
    "ground",
)


@pytest.fixture(scope="module")
def report():
    return make_report(hole=False)


def job_without(report, missing: set[str]) -> Job:
    slab = replace(ANSWERED, **{n: None for n in missing if hasattr(ANSWERED, n)})
    site = Site(None if "place" in missing else "outdoors", None if "ground" in missing else "private", "US")
    return replace(report.job, slab=slab, site=site)


def sheet_for(report, job: Job, provisional: bool = False) -> Worksheet:
    marks = {m.name: m.xy for m in report.marks}
    return make_worksheet(order_for(report, job, decide_release(job, provisional, report.plan), marks))


def order_for(report, job: Job, release: Release, marks: dict[str, tuple[float, float]]) -> WorkOrder:
    plan = by_board(report, job)
    return WorkOrder(job, report.vehicle, report.surface, report.ride, plan, release, marks)


def by_board(report, job: Job) -> CutPlan:
    """The made-up plan as facets, nothing swept again."""
    if report.plan.deepest <= 0:
        return report.plan
    site, metric = make_site(report.surface, report.line, report.plan), is_metric(job)
    site = replace(site, allowed=np.full(site.ground.shape, 0.03))
    (blade,) = (t for t in tools_at_hand(job.path, None) if t.key == "hand_grinder_blade")
    made = facets_of(site, core_of(site), stock_of(None, metric), below_board(blade, metric))
    assert made is not None
    old = report.plan
    return replace(
        old, finished=old.finished.like(site.ground - made.depth), depth=old.depth.like(made.depth),
        volume=float(made.depth.sum()) * site.cell**2, deepest=float(made.depth.max()),
        guided=Guided(Method.BOARD, made.facets, old.deepest, old.area, old.volume),
    )  # fmt: skip


def words_on(figure) -> str:
    from matplotlib.text import Text

    return "\n".join(text.get_text() for text in figure.findobj(Text))


def test_no_combination_of_open_questions_gives_an_unstamped_sheet(report) -> None:
    """All 1,024 combinations through the release; the sheet itself cannot be built without its release's
    stamp.
    """
    base = sheet_for(report, job_without(report, {"heating"}))
    for flags in itertools.product((False, True), repeat=len(FIELDS)):
        missing = {n for n, is_open in zip(FIELDS, flags, strict=True) if is_open}
        release = decide_release(job_without(report, missing), False, report.plan)
        assert (release.stamp == "NOT FOR CUTTING") == bool(missing)
        if missing:
            sheet = replace(base, release=release, stamp=release.stamp)
            assert sheet.stamp and sheet.jig is None and sheet.set_out is None and not sheet.passes
            with pytest.raises(ValueError, match="stamp"):
                replace(base, release=release, stamp="")


@pytest.mark.parametrize("missing", [{"heating"}, {"place"}, set(FIELDS)])
def test_every_page_under_a_stamp_shows_it(report, missing: set[str]) -> None:
    sheet = sheet_for(report, job_without(report, missing))
    drawn = list(pages(sheet, make_site(report.surface, report.line, report.plan)))
    assert {name for name, _ in drawn} == {"first", "ground", "cards"}
    assert all("NOT FOR CUTTING" in words_on(figure) for _, figure in drawn)


def test_provisional_prints_what_to_measure_first(report) -> None:
    job = job_without(report, set())
    release = decide_release(job, True, report.plan)
    advice = [
        {
            "kind": "gap felt under the vehicle",
            "where": "A 2.31 m, B 1.87 m",
            "expect": "4 mm",
            "narrows": "3.5 times",
        }
    ]
    sheet = make_worksheet(order_for(report, job, release, {}), advice)
    drawn = list(pages(sheet, make_site(report.surface, report.line, report.plan)))
    assert all("PROVISIONAL" in words_on(figure) for _, figure in drawn)
    assert "Measure this first" in words_on(drawn[1][1]) and "ap felt" in words_on(drawn[1][1])


def test_released_sheets_are_written_whole_and_alike(report, tmp_path: Path) -> None:
    sheet = sheet_for(report, job_without(report, set()))
    site = make_site(report.surface, report.line, report.plan)
    folders = [tmp_path / "a", tmp_path / "b"]
    for folder in folders:
        folder.mkdir()
        write_sheets(sheet, site, report.identity, folder)
    names = sorted(p.name for p in folders[0].iterdir())
    assert {"work_sheets.pdf", "worksheet.json", "work_dots.csv", "work_jig.csv", "work_strings.csv"} <= set(
        names
    )
    for name in names:
        assert (folders[0] / name).read_bytes() == (folders[1] / name).read_bytes(), name
    document = json.loads((folders[0] / "worksheet.json").read_text())
    assert document["release"]["state"] == "ok" and document["jig"]["rows"]
    assert "NOT FOR CUTTING" not in words_on(next(iter(pages(sheet, site)))[1])


@pytest.mark.parametrize(("missing", "country"), [(set(), "DE"), (set(FIELDS), "DE"), (set(), "US")])
def test_sheets_in_another_language_say_the_same_figures(
    report, missing: set[str], country: str, tmp_path: Path
) -> None:
    """Every figure with a decimal, as often; tables and worksheet byte for byte; and hardly a text is left in
    English: names, and what this made-up slab alone says."""
    job = job_without(report, missing)
    job = replace(job, site=replace(job.site, country=country))
    sheet, site = sheet_for(report, job), make_site(report.surface, report.line, report.plan)
    left: set[str] = set()
    figures, files = [], []
    for language in ("en", "de"):
        with speaking(replace(words_of(language, country), missing=left)):
            drawn = [figure for _, figure in pages(sheet, site)]
            for figure in drawn:
                in_language(figure)
            told = " ".join(words_on(figure) for figure in drawn).replace(",", ".")
            figures.append(sorted(re.findall(r"\d+\.\d+", told)))
            (folder := tmp_path / language).mkdir()
            write_sheets(sheet, site, report.identity, folder)
        made = sorted(p for p in folder.iterdir() if p.suffix != ".pdf")
        files.append({p.name: p.read_bytes() for p in made})
    assert figures[0] == figures[1] and files[0] == files[1]
    sentences = {text for text in left if text.count(" ") > 3 and "CFR" not in text}
    assert not sentences, "\n".join(sorted(sentences))


def test_paper_is_letter_where_tapes_are_in_inches_and_a4_elsewhere(report) -> None:
    job = job_without(report, set())
    for country, wide in (("US", 8.5), ("GB", 8.27)):
        sheet = sheet_for(report, replace(job, site=replace(job.site, country=country)))
        site = make_site(report.surface, report.line, report.plan)
        drawn = list(pages(sheet, site))
        assert {float(f.get_size_inches()[0]) for _, f in drawn} == {wide}
        words = " ".join(words_on(f) for _, f in drawn)
        assert ("Chainage" in words) == (country == "GB") and ("Arrises" in words) == (country == "GB")


def test_every_sheet_that_the_work_needs_is_there(report) -> None:
    sheet = sheet_for(report, job_without(report, set()))
    site = make_site(report.surface, report.line, report.plan)
    drawn = dict.fromkeys(name for name, _ in pages(sheet, site))
    assert set(drawn) >= {
        "first", "order", "jig", "set_out", "ground", "cards", "record",
    }  # fmt: skip
    said = " ".join(words_on(f) for _, f in pages(sheet, site))
    for wanted in (
        "REAR", "FRONT", "Stick", "1x6 flat", "slides along that line",
        "OR MORE", "Vibration", "cfm", "You hit STEEL", "hollow", "TOO DEEP", "A DOT IS GONE",
        "BLADE or CUP WORN", "STOP FOR TODAY", "Who is asked", "How deep",
        "Spill level",
        "Look again", "local codes", "wedge",
    ):  # fmt: skip
        assert wanted in said, wanted
    odd = replace(sheet, title="\u0634\u0631\u0641\u0629 <b>\u00e9")
    assert any("\u0634" in words_on(f) for _, f in pages(odd, site))


def test_places_have_one_name_on_every_page_and_in_the_tables(report) -> None:
    sheet = sheet_for(report, job_without(report, set()))
    site = make_site(report.surface, report.line, report.plan)
    drawn = {name: "" for name, _ in pages(sheet, site)}
    for name, figure in pages(sheet, site):
        drawn[name] += words_on(figure) + "\n"
    assert sheet.set_out is not None and sheet.jig is not None
    tables_of = dict(tables(sheet))
    dots = [d.name for d in sheet.set_out.dots]
    settings = [r.name for r in sheet.jig.rows]
    strings = list(dict.fromkeys(r.name for r in sheet.set_out.strings))
    assert dots[0] == "D1" and settings[0] == "J1" and strings[0] == "S1"
    for names, page, table in (
        (dots, "set_out", "work_dots.csv"), (settings, "jig", "work_jig.csv"),
        (strings, "ground", "work_strings.csv"),
    ):  # fmt: skip
        assert list(dict.fromkeys(row[0] for row in tables_of[table][1:])) == names
        assert all(name in drawn[page].replace(":", " ").split() for name in names)
    assert all(name in drawn["set_out"].split() for name in strings)  # on the map too


@pytest.mark.parametrize(("country", "own", "other"), [("US", "in", "m"), ("GB", "m", "in")])
def test_one_unit_a_column(report, country: str, own: str, other: str) -> None:
    """The words under a column's head, and the figures of tapes: decimals of a metre, or parts of an inch."""
    job = job_without(report, set())
    sheet = sheet_for(report, replace(job, site=replace(job.site, country=country)))
    metric = country == "GB"
    assert sheet.set_out is not None and (tie_heads(metric)[1], unit(metric)) == (f"tape|{own}", own)
    cells = [c for d in sheet.set_out.dots for c in tie_cells(d.ties, metric=metric)]
    cells += [far(d.station, metric) for d in sheet.set_out.dots]
    cells += [deep(d.depth, metric) for d in sheet.set_out.dots]
    assert any("." in c for c in cells) == metric and any("/" in c for c in cells) == (not metric)
    site = make_site(report.surface, report.line, report.plan)
    heads = [t for _, f in pages(sheet, site) for t in words_on(f).split("\n") if t.split() and
             set(t.split()) <= {"m", "mm", "in", "the", "two", "last", "slot", "lift"}]  # fmt: skip
    units = {w for t in heads for w in t.split()} & {"m", "mm", "in"}
    assert units and units == ({"m", "mm"} if metric else {"in"}), (units, other)


def test_no_few_lines_stand_on_a_page_of_their_own(report) -> None:
    sheet = sheet_for(report, job_without(report, set()))
    mended = 0
    for lines in range(40, 150, 3):
        loose = Paper(sheet, "lines")
        drawn = lambda paper, lines=lines: [paper.text("a line of words") for _ in range(lines)]  # noqa: E731
        drawn(loose)
        made = filled(sheet, "lines", drawn)
        assert len(made) <= len(loose.figures)
        least = Paper(sheet, "lines", TIGHTER[-1])
        drawn(least)
        if loose.spills and not least.spills:
            mended += 1
            assert len(made) < len(loose.figures), lines
    assert mended >= 4
    site = make_site(report.surface, report.line, report.plan)
    assert len(list(pages(sheet, site))) <= 10


def test_cautions_stand_on_one_page(report, caplog) -> None:
    """A list torn across two pages is easily lost. And what the drawing library logs must not reach the
    person's terminal.
    """
    sheet = sheet_for(report, job_without(report, set()))
    site = make_site(report.surface, report.line, report.plan)
    with caplog.at_level(logging.WARNING):
        drawn = list(pages(sheet, site))
        for _, figure in drawn:
            figure.canvas.draw()
    assert not caplog.records
    for steps in range(1, 30):  # however full the page is
        order = [words_on(f) for f in order_page(replace(sheet, passes=(sheet.passes * 10)[:steps]))]
        (holding,) = [text for text in order if "What can hurt you" in text]
        assert all(" ".join(c.line.split()[:5]) in holding for c in sheet.cautions), steps
