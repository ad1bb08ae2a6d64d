"""A job run again into the same folder: nothing to cut from stays, nothing of the user's goes."""

from __future__ import annotations

import dataclasses
import json
from pathlib import Path

import ezdxf
import pytest
from PIL import Image

from crestcut.apps.run import write_job
from crestcut.report.folder.files import Staging
from crestcut.study.making import run_job
from crestcut.study.record import Study
from crestcut.work.records import Reason, ReasonCode, Release
from test_bad_input import JOB, VEHICLE, slab, write_laz


@pytest.fixture(scope="module")
def cut(tmp_path_factory: pytest.TempPathFactory) -> Study:
    """The trolley asks for more air than it has over the crest: a few millimetres are to go."""
    site = tmp_path_factory.mktemp("site")
    job = JOB.replace('want = "5 mm"', 'want = "30 mm"').replace("phone", "terrestrial")
    (site / "job.toml").write_text('date = "2026-11-29"\n' + job)
    (site / "trolley.toml").write_text(VEHICLE)
    write_laz(site / "slab.laz", slab())
    return run_job(site / "job.toml")


def released(done: Study, release: Release) -> Study:
    report = dataclasses.replace(
        done.report, release=release.state, release_reasons=release.reasons, provisional=False
    )
    return dataclasses.replace(done, report=report, release=release)


def test_no_sheet_to_cut_from_outlives_its_release(cut: Study, tmp_path: Path) -> None:
    assert cut.report.plan is not None and cut.report.plan.deepest > 0.002
    with Staging(tmp_path, "verify") as folder:
        (folder / "hand_over.pdf").write_bytes(b"of another command")
    write_job(released(cut, Release("ok", ())), tmp_path)
    tables = {p.name for p in tmp_path.glob("work_*.csv")}
    assert {"work_dots.csv", "work_strings.csv", "work_stop_lines.csv"} <= tables
    assert "# dated: 2026-11-29" in (tmp_path / "work_dots.csv").read_text().splitlines()
    own = {"notes.csv": "mine", "work_strings.csv": "the table, with what was read beside it"}
    for name, text in own.items():
        (tmp_path / name).write_text(text)
    said: list[str] = []
    open_yet = Release("not for cutting", (Reason(ReasonCode.UNANSWERED, "heating is not answered"),))
    write_job(released(cut, open_yet), tmp_path, said.append)
    left = {p.name: p for p in tmp_path.iterdir()}
    assert not any(name.startswith("work_") and name.endswith(".csv") for name in left)
    assert left["superseded_work_strings.csv"].read_text() == own["work_strings.csv"]
    assert left["notes.csv"].read_text() == "mine" and "hand_over.pdf" in left
    told = next(line for line in said if line.startswith("taken away"))
    assert all(name in told for name in tables - {"work_strings.csv"})
    for name in ("plan.png", "profile.png"):
        with Image.open(left[name]) as picture:
            assert picture.text["Release"] == "not for cutting"  # type: ignore[attr-defined]
    assert not {"DOTS", "STOP_LINES", "BLOCKS"} & {
        e.dxf.layer for e in ezdxf.readfile(left["set_out.dxf"]).modelspace()
    }
    sets = json.loads(left["manifest.json"].read_text())["sets"]
    assert (sets["run"]["release"], sets["run"]["dated"]) == ("not for cutting", "2026-11-29")
    listed = {row["file"] for one in sets.values() for row in one["files"]}
    assert listed == set(left) - {"manifest.json", "notes.csv", "superseded_work_strings.csv"}
