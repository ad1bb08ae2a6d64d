"""pick.html in a browser: the choices of the job file, and job files opened and saved again."""

from __future__ import annotations

import math
import tomllib
from enum import StrEnum
from pathlib import Path
from typing import Any, get_args, get_type_hints

import pytest

from browser.conftest import until
from browser.courtyard import courtyard, draw_line, mistakes, plan, reveal, tap
from crestcut.job.answers import InSlab, Over, Permit, SlabKind, Source, YesNo
from crestcut.job.load import load_job
from crestcut.job.records import ScanChoice, Site, Slab
from crestcut.report.pages.pick import write_pick

ROOT = Path(__file__).parents[2]


CHOICES = {
    "slab-kind": SlabKind, "slab-post_tensioned": YesNo, "slab-suspended": YesNo, "slab-permission": YesNo,
    "slab-heating": InSlab, "slab-conduit": InSlab, "site-permit": Permit,
    **{
        f"slab-{key}_from": Source
        for key in ("thickness", "steel", "post_tensioned", "heating", "conduit", "suspended", "permission")
    },
}  # fmt: skip


def test_each_question_offers_exactly_the_choices_of_the_job_file(pick: Path, open_page: Any) -> None:
    """Every closed key of the schema is asked, with all of its choices; "not known" writes nothing."""
    closed = {
        f"{table}-{key}": kind
        for table, record in (("slab", Slab), ("site", Site))
        for key, hint in get_type_hints(record).items()
        for kind in get_args(hint)
        if issubclass(kind, StrEnum)
    }
    assert closed == CHOICES
    page = open_page(pick, "laptop")
    draw_line(page, touch=False)
    page.locator("#tool-keep").check(force=True)
    for corner in ((4.0, 0.2), (5.0, 0.2), (5.0, 0.9)):
        tap(page, *corner, touch=False)
    page.locator("#close-area").click()
    offered = "box => [...box.options].map(o => [o.value, o.textContent])"
    for key, choices in CHOICES.items():
        found = page.locator(f"#f-{key}").evaluate(offered)
        assert [value or "unknown" for value, _ in found].count("unknown") == 1 and found[0][0] == ""
        assert {value or "unknown" for value, _ in found} == set(choices), key
        assert len({words for _, words in found}) == len(found)
    over = page.get_by_label("What was located under keep area 1").evaluate(offered)
    assert {value for value, _ in over} == {"", *Over}


def test_every_choice_of_every_question_loads_once_saved(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "laptop")
    draw_line(page, touch=False)
    choose = """([id, value]) => {
      const box = document.getElementById(id); box.value = value;
      box.dispatchEvent(new Event("change")); return crestcut.model.jobText(); }"""
    for key, choices in CHOICES.items():
        table, name = key.split("-")
        for choice in choices:
            written = "" if choice == "unknown" else choice.value
            (tmp_path / "job.toml").write_text(page.evaluate(choose, [f"f-{key}", written]))
            job = load_job(tmp_path / "job.toml")
            assert getattr(getattr(job, table), name) == (written or None), (key, choice)


def test_an_older_job_says_what_must_be_chosen_again(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "laptop")
    text = (
        '[scan]\nfiles = ["apron.laz"]\n[vehicle]\nfile = "kiln_trolley.toml"\n'
        '[travel]\nline = []\n[slab]\nkind = "hollow-core planks"\nheating = "yes"\n'
        'heating_from = "nobody has located it"\nconduit = false\npost_tensioned = true\n'
    )
    (tmp_path / "older.toml").write_text(text)
    page.locator("#open-job").set_input_files(tmp_path / "older.toml")
    until(page, "document.getElementById('said').textContent === 'older.toml opened'")
    said = "\n".join(mistakes(page))
    for name in ("“hollow-core planks”", "“yes”", "“nobody has located it”"):
        assert f"{name} is none of the choices" in said
    assert page.locator("#f-slab-kind").evaluate("b => b.value") == "hollow-core planks"
    assert page.locator("#f-slab-conduit").evaluate("b => b.value") == "no"
    assert page.locator("#f-slab-post_tensioned").evaluate("b => b.value") == "yes"
    reveal(page, "The slab")
    page.get_by_label("Kind of slab").select_option("precast")
    assert "hollow-core" not in "\n".join(mistakes(page))
    assert "never released" in page.locator("#mistakes").inner_text()


def test_an_opened_job_comes_back_the_same(pick: Path, open_page: Any) -> None:
    page, jobs = open_page(pick, "laptop"), sorted((ROOT / "configs" / "jobs").glob("*.toml"))
    jobs = [job for job in jobs if not job.stem.endswith("_floor")]  # a floor's has no line
    assert len(jobs) >= 3
    for job in jobs:
        page.locator("#open-job").set_input_files(job)
        until(page, f"document.getElementById('said').textContent === '{job.name} opened'")
        text = page.locator("#job-text").input_value()
        assert tomllib.loads(text) == tomllib.loads(job.read_text(encoding="utf-8")), job.name


def test_what_is_no_job_file_is_refused_and_nothing_lost(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "laptop")
    draw_line(page, touch=False)
    for name, text in (("notes.toml", "a = 1"), ("broken.toml", "title = ")):
        (tmp_path / name).write_text(text)
        page.locator("#open-job").set_input_files(tmp_path / name)
        until(page, f"document.getElementById('open-wrong').textContent.startsWith('{name}')")
    assert len(page.evaluate("crestcut.model.line")) == 2


def test_tape_ties_and_marks_stand_where_they_should(pick: Path, open_page: Any, tmp_path: Path) -> None:
    a, b = plan(2.0, 1.0), plan(6.0, 1.0)
    text = f"""
        [scan]
        files = ["apron.laz"]
        [vehicle]
        file = "kiln_trolley.toml"
        [travel]
        line = [{{ A = "2 m", B = "3 m", side = "left" }}, "B"]
        [[mark]]
        name = "A"
        at = [{a[0]}, {a[1]}]
        [[mark]]
        name = "B"
        at = [{b[0]}, {b[1]}]
        """
    (tmp_path / "tied.toml").write_text(text)
    page = open_page(pick, "laptop")
    page.locator("#open-job").set_input_files(tmp_path / "tied.toml")
    until(page, "crestcut.model.line.length === 2")
    x, y = page.evaluate("crestcut.model.resolve(crestcut.model.line[0])")
    assert math.hypot(x - a[0], y - a[1]) == pytest.approx(2.0, abs=1e-6)
    assert math.hypot(x - b[0], y - b[1]) == pytest.approx(3.0, abs=1e-6)
    assert y > a[1]  # left of A to B
    assert page.evaluate("crestcut.model.resolve('B')") == pytest.approx(list(b))
    assert page.evaluate("crestcut.model.choice") == "kiln_trolley.toml"


def test_what_was_said_to_look_is_in_the_job_that_is_saved(open_page: Any, tmp_path: Path) -> None:
    scan = courtyard("apron.xyz")
    page = open_page(
        write_pick(scan, None, tmp_path, choice=ScanChoice((Path("apron.xyz"),), "ft", "z", "phone")),
        "laptop",
    )
    told = tomllib.loads(page.locator("#job-text").input_value())["scan"]
    assert (told["unit"], told["up"], told["scanner"]) == ("ft", "z", "phone")
    # a job opened later that says nothing of it is of the same scan, one that does keeps its word
    page.evaluate("crestcut.model.open('[travel]\\nline = [[1.0, 2.0], [3.0, 4.0]]')")
    told = tomllib.loads(page.locator("#job-text").input_value())["scan"]
    assert (told["unit"], told["scanner"]) == ("ft", "phone")
    page.evaluate('crestcut.model.open(\'[scan]\\nfile = "a.xyz"\\nunit = "m"\')')
    told = tomllib.loads(page.locator("#job-text").input_value())["scan"]
    assert (told["unit"], told["scanner"]) == ("m", "phone")
