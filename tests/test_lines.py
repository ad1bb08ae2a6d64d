"""Several lines over one slab in one job: an answer for each, one scan read, and what holds with all cut."""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner, Result

from crestcut.apps import batch, lines
from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.job import lines_in, load_job
from crestcut.study import STUDY_NAME, Report, read_study
from one_line import refusal
from report.page_text import PageText
from test_bad_input import JOB, VEHICLE, slab, write_laz

LINES = """[[travel]]
name = "left gate"
line = [[0.4, 0.80], [4.6, 0.80]]
wander = "50 mm"
heading = 0
[[travel]]
name = "right gate"
line = [[0.4, 0.90], [4.6, 0.95]]
wander = "50 mm"
heading = 0
"""
CUT = """[cut]
deepest = "25 mm"
[slab]
thickness = "200 mm"
thickness_from = "drilled"
"""


def job(travel: str = LINES) -> str:
    text = JOB.replace("phone", "terrestrial")
    return text[: text.index("[travel]")] + travel + text[text.index("[clearance]") :] + CUT


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    """Two tracks that come together over one crest of 10 % a side, so that their cuts overlap."""
    folder = tmp_path_factory.mktemp("yard")
    points = slab()
    points[:, 2] *= 2.0
    write_laz(folder / "slab.laz", points)
    (folder / "trolley.toml").write_text(VEHICLE)
    (folder / "yard.toml").write_text(job())
    out = folder / "out"
    return folder, CliRunner().invoke(main, ["run", str(folder / "yard.toml"), "--out", str(out)])


def test_each_line_has_its_answer_and_the_scan_is_read_once(yard: tuple[Path, Result]) -> None:
    folder, result = yard
    assert result.exit_code in (0, 3), result.output
    assert result.stderr.count("reading slab.laz") == 1
    with (folder / "out/jobs.csv").open(newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert [r["folder"] for r in rows] == ["left gate", "right gate"]
    assert [r["job"] for r in rows] == ["Bad input: left gate", "Bad input: right gate"]
    assert all(r["verdict"] and float(r["litres"]) > 0 for r in rows)
    words = " ".join(" ".join(PageText.read(folder / "out/jobs.html").words).split())
    assert "With all lines cut" in words and "the deeper one is ground" in words


def test_all_cuts_together_are_one_cut_seen_from_each_line(yard: tuple[Path, Result]) -> None:
    """Their union holds as much from either window, to what laying one grid on another costs."""
    folders = [yard[0] / "out" / name for name in ("left gate", "right gate")]
    left, right = lines.together(folders, lambda _: None)
    assert left.own > 0 and right.own > 0 and left.shared > 0 and left.more > 0
    assert left.own + left.more == pytest.approx(right.own + right.more, rel=0.03)
    assert left.own + left.more < 0.97 * (left.own + right.own), "what is shared is ground once"
    assert left.shared == pytest.approx(right.shared, rel=0.05)
    for one in (left, right):
        assert one.spare is not None and one.words in yard[1].stdout
        assert one.holds == ("keeps what was asked" in one.words)
        # its wheels too stand lower where the other's cut is deeper: never much better than alone
        assert abs(one.spare) < 0.05


def test_a_wheel_that_stands_lower_for_another_line_s_cut_is_short(
    yard: tuple[Path, Result], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Closed form: 5 mm more gone under both tyres and nothing under the foot between them, and the vehicle
    comes down by 5 mm on the crest that its own cut just cleared."""
    own = lines._depth

    def beside_the_foot(report: Report, at: FloatArray) -> FloatArray:
        return own(report) + np.where(np.abs(at[..., 1] - 0.80) > 0.20, 0.005, 0.0)

    study = read_study(yard[0] / "out/left gate" / STUDY_NAME)
    assert study is not None
    monkeypatch.setattr(lines, "_depth_at", beside_the_foot)
    found = lines._of_one(study, [study.report])
    assert found.alone == pytest.approx(0.0, abs=1e-6)
    assert found.spare == pytest.approx(-0.005, abs=1e-5) and not found.holds
    assert "5.0 mm short of what was asked: cut the other lines first" in found.words


def test_lines_that_are_done_are_not_done_again(yard: tuple[Path, Result]) -> None:
    folder, first = yard
    again = CliRunner().invoke(main, ["run", str(folder / "yard.toml"), "--out", str(folder / "out")])
    assert again.stderr.count("done before") == 2 and again.stdout == first.stdout
    right, results = (folder / "yard.toml#right gate"), folder / "out"
    assert batch.done_before(right, results / "right gate") is not None
    assert batch.done_before(right, results / "left gate") is None  # another line of the same file


@pytest.mark.parametrize(
    ("text", "name", "says"),
    [
        (LINES, "", "has several lines (left gate, right gate)"),
        (LINES, "#middle", 'no line is named "middle" (left gate, right gate)'),
        (LINES.replace("right", "left"), "#left gate", 'two lines are named "left gate"'),
        (LINES.replace("left gate", "../gate"), "#x", "is no name for a line"),
        (LINES.replace("left gate", ""), "#x", "is no name for a line"),
        ("[travel]\nline = [[0.4, 0.8], [4.6, 0.8]]\n", "#x", "(it has a single [travel])"),
        (LINES.replace('"50 mm"', '"50"', 1), "#left gate", "travel.wander"),
    ],
)  # fmt: skip
def test_lines_that_cannot_be_told(tmp_path: Path, text: str, name: str, says: str) -> None:
    path = tmp_path / "yard.toml"
    path.write_text(job(text))

    def load(file: Path) -> object:
        return load_job(file.with_name(file.name + name))

    loads: Callable[[Path], object] = load
    assert says in str(refusal(loads, path))


def test_names_of_lines(tmp_path: Path) -> None:
    path = tmp_path / "yard.toml"
    path.write_text(job(LINES.replace('name = "left gate"\n', "")))
    assert [p.name for p in lines_in(path)] == ["yard.toml#line 1", "yard.toml#right gate"]
    assert load_job(lines_in(path)[0]).travel.name == "line 1"
    path.write_text(JOB)
    assert lines_in(path) == (path,) and lines_in(tmp_path / "none.toml") == (tmp_path / "none.toml",)
    path.write_text(job(LINES.replace("right", "left")))
    with pytest.raises(CrestcutError, match="two lines"):
        lines_in(path)
