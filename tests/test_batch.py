"""Several jobs with one command: each whole in its own folder, a wrong one stops no other, a table of all."""

from __future__ import annotations

import csv
import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from crestcut.apps.cli import main
from report.page_text import PageText
from test_bad_input import JOB, VEHICLE, slab, write_laz


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Two jobs of one slab, the second named like a formula, one without its scan, and the vehicle's file."""
    folder = tmp_path_factory.mktemp("jobs")
    write_laz(folder / "slab.laz", slab())
    (folder / "trolley.toml").write_text(VEHICLE)
    one = JOB.replace("phone", "terrestrial")
    (folder / "first.toml").write_text(one)
    (folder / "second.toml").write_text(
        one.replace('"Bad input"', '"=1+1"').replace('want = "5 mm"', 'want = "8 mm"')
    )
    (folder / "third.toml").write_text(one.replace("slab.laz", "gone.laz"))
    return folder


@pytest.fixture(scope="module")
def ran(site: Path) -> tuple[Path, Result]:
    out = site / "out"
    return out, CliRunner().invoke(main, ["run", str(site), "--out", str(out)])


def table(out: Path) -> list[dict[str, str]]:
    with (out / "jobs.csv").open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def test_one_bad_job_does_not_stop_the_others(ran: tuple[Path, Result]) -> None:
    out, result = ran
    assert result.exit_code == 4, result.output
    assert sorted(p.name for p in out.iterdir() if p.is_dir()) == ["first", "second"]
    rows = table(out)
    assert [r["folder"] for r in rows] == ["first", "second", "third"]  # the vehicle beside them is no job
    assert "gone.laz" in rows[2]["note"] and not rows[2]["verdict"] and not rows[2]["gap_mm"]
    assert "gone.laz" in result.output


def test_the_table_says_what_each_folder_says(ran: tuple[Path, Result]) -> None:
    out = ran[0]
    for row in table(out)[:2]:
        told = json.loads((out / row["folder"] / "result.json").read_text())
        assert row["verdict"] == told["before"]["verdict"]
        assert float(row["gap_mm"]) == pytest.approx(told["before"]["least_clearance"] * 1000, abs=0.06)
        assert float(row["deepest_mm"]) == pytest.approx(told["cut"]["deepest"] * 1000, abs=0.06)
        assert float(row["litres"]) == pytest.approx(told["cut"]["volume"] * 1000, abs=0.06)


def test_a_title_in_the_table_begins_no_formula(ran: tuple[Path, Result]) -> None:
    assert table(ran[0])[1]["job"] == "'=1+1"


def test_the_page_says_what_the_table_says(ran: tuple[Path, Result]) -> None:
    """Each job with a way to its report; titles are text; a job that was wrong with why."""
    out = ran[0]
    page = PageText.read(out / "jobs.html")
    links = [attrs["href"] for tag, attrs in page.elements if tag == "a"]
    assert links == ["first/report.html", "second/report.html"] and all((out / n).is_file() for n in links)
    words = " ".join(" ".join(page.words).split())
    for row in table(out)[:2]:
        assert f"{float(row['gap_mm']):.1f} mm" in words and row["release"] in words
    assert "=1+1" in words and "gone.laz" in words and "1 of them could not be done" in words
    assert not [tag for tag, _ in page.elements if tag == "script"]


def test_jobs_that_are_all_wrong(site: Path, tmp_path: Path) -> None:
    both = [str(site / "third.toml"), str(site / "nowhere.toml")]
    result = CliRunner().invoke(main, ["run", *both, "--out", str(tmp_path)])
    assert result.exit_code == 2 and len(table(tmp_path)) == 2


@pytest.mark.parametrize(
    ("names", "says"),
    [(("first.toml", "./first.toml"), "one folder of results"), (("empty",), "no job in the folder")],
)
def test_jobs_that_cannot_begin(site: Path, tmp_path: Path, names: tuple[str, ...], says: str) -> None:
    (site / "empty").mkdir(exist_ok=True)
    result = CliRunner().invoke(main, ["run", *(str(site / n) for n in names), "--out", str(tmp_path / "o")])
    assert result.exit_code == 2 and says in result.output
    assert not (tmp_path / "o").exists()
