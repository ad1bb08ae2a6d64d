"""The docs: every page that the navigation names is there and no other; what people are told to type runs."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

import crestcut
from crestcut.job import load_floor_job

ROOT = Path(__file__).parents[1]
DOCS = ROOT / ".docs"
PAGES = {page.name: page.read_text(encoding="utf-8") for page in sorted((DOCS / "pages").glob("*.md"))}
COMMAND = Path(sys.executable).parent / "crestcut"


def blocks(page: str, language: str) -> list[str]:
    """What stands between fences of a language on a page."""
    return re.findall(rf"^```{language}\n(.*?)^```", PAGES[page], re.S | re.M)


@pytest.fixture
def desk(tmp_path: Path) -> Path:
    """A folder like the checkout to type in, whose ``out`` is thrown away."""
    for name in ("sample_scans", "configs"):
        (tmp_path / name).symlink_to(ROOT / name)
    return tmp_path


def run(command: list[str], where: Path) -> None:
    """Run one thing that a page says in ``where``; what it printed is shown where it failed."""
    done = subprocess.run(command, cwd=where, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-2000:]


def test_the_navigation_names_every_page_and_no_other() -> None:
    nav = (DOCS / "mkdocs.yml").read_text(encoding="utf-8").split("\nnav:\n")[1].split("\nmarkdown_ext")[0]
    assert sorted(re.findall(r"([a-z_]+\.md)$", nav, re.M)) == sorted(PAGES)


def test_what_pages_point_to_is_there() -> None:
    for name, text in PAGES.items():
        for link in re.findall(r"\]\(([^)#:]+)\)", text):
            assert link in PAGES, (name, link)
        for included in re.findall(r'^--8<-- "(.*)"$', text, re.M):
            assert (ROOT / included).is_file(), (name, included)
    for link in re.findall(r"\]\((\.docs/[^)]+)\)", (ROOT / "README.md").read_text(encoding="utf-8")):
        assert (ROOT / link).is_file(), link


def test_the_page_of_the_library_has_all_that_the_library_names() -> None:
    told = set(re.findall(r"^::: crestcut\.\S+\.(\w+)$", PAGES["library.md"], re.M))
    assert set(crestcut.__all__) - {"CrestcutError"} <= told
    for dotted in re.findall(r"^::: crestcut\.(\S+)\.(\w+)$", PAGES["library.md"], re.M):
        module = ROOT / "pipeline" / "crestcut" / (dotted[0].replace(".", "/") + ".py")
        assert re.search(rf"^(def|class) {dotted[1]}\b", module.read_text(encoding="utf-8"), re.M), dotted


@pytest.mark.slow
@pytest.mark.parametrize("page", [name for name in PAGES if blocks(name, "sh")])
def test_what_a_tutorial_has_people_type_runs(page: str, desk: Path) -> None:
    """The long ones are jobs that other tests run: here they are looked up and loaded."""
    typed = [line for block in blocks(page, "sh") for line in block.splitlines()]
    others = "".join(
        p.read_text(encoding="utf-8") for p in (ROOT / "tests").rglob("test_*.py") if p.name != "test_docs.py"
    )
    for line in typed:
        program, command, *words = line.split()
        assert program == "crestcut"
        if command in ("look", "vehicle"):
            run([str(COMMAND), command, *words], desk)
            continue
        job = ROOT / words[0]
        (load_floor_job if command == "floor" else crestcut.load_job)(job)
        assert words[1] == "--out" and len(words) == 3 and job.stem in others, line


@pytest.mark.slow
def test_the_notebook_runs_from_top_to_bottom(desk: Path) -> None:
    cells = blocks("notebook.md", "python")
    assert len(cells) > 3
    run([sys.executable, "-c", "\n".join(cells)], desk)
    assert (desk / "out" / "other" / "result.json").is_file()
