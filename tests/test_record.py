"""``record.json``: what an answer came from, and the same answer again from it, byte for byte."""

from __future__ import annotations

import hashlib
import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from crestcut.apps.cli import main
from crestcut.apps.rerun import job_of_record
from crestcut.base.errors import CrestcutError
from test_bad_input import JOB, VEHICLE, slab, write_laz

HOLDS_TIMES = {"result.json", "manifest.json"}  # seconds of each stage; and the hash of what holds them
STRING = '\n[[string]]\na = [1.0, 1.0]\nb = [3.0, 1.0]\nblocks = "100 mm"\ndown = "100 mm"\nwithin = "2 mm"\n'


def run(*args: str | Path) -> Result:
    return CliRunner().invoke(main, ["run", *(str(a) for a in args)])


@pytest.fixture(scope="module")
def ran(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a job of two vehicles, its files, and its results in ``out``."""
    folder = tmp_path_factory.mktemp("record")
    write_laz(folder / "slab.laz", slab())
    (folder / "trolley.toml").write_text(VEHICLE)
    said = JOB.replace("phone", "terrestrial").replace(
        'files = ["slab.laz"]', 'files = ["slab.laz"]\noperator = "T. Slip"'
    )
    assert "operator" in said
    (folder / "job.toml").write_text(said + STRING)
    result = run(folder / "job.toml", "--out", folder / "out")
    assert result.exit_code in (0, 3), result.output
    return folder


@pytest.fixture
def moved(ran: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(ran, tmp_path / "site"))


def told(folder: Path) -> dict:
    return json.loads((folder / "out" / "record.json").read_text())


def test_it_tells_what_went_in(ran: Path) -> None:
    record = told(ran)
    for row in record["inputs"]:
        if row["role"] != "tool":
            data = (ran / row["file"]).read_bytes()
            assert row["sha256"] == hashlib.sha256(data).hexdigest() and row["bytes"] == len(data)
    assert {r["role"] for r in record["inputs"]} == {"job", "scan", "vehicle", "tool"}
    assert record["operator"] == "T. Slip" and record["settings"]["seed"] == record["seed"] == 0
    assert record["by_hand"]["strings"][0]["blocks"] == 0.1
    assert record["versions"]["numpy"] and record["error_model"]["sources"]["warp"]
    (scan,) = (r for r in record["inputs"] if r["role"] == "scan")
    assert scan["made"] and scan["software"]  # as the file itself says
    assert str(ran) not in json.dumps([r for r in record["inputs"] if r["role"] != "job"])


def test_run_again_it_gives_the_same_bytes(ran: Path) -> None:
    result = run(ran / "out" / "record.json", "--out", ran / "again")
    assert result.exit_code in (0, 3), result.output
    first, again = ({p.name: p for p in (ran / n).iterdir()} for n in ("out", "again"))
    assert first.keys() == again.keys() and len(first) > 10
    for name in first.keys() - HOLDS_TIMES:
        assert first[name].read_bytes() == again[name].read_bytes(), name
    # the manifest's hashes leave seconds out: they speak for what holds times
    rows = [
        json.loads((ran / n / "manifest.json").read_text())["sets"]["run"]["files"] for n in ("out", "again")
    ]
    assert rows[0] == rows[1]


@pytest.mark.parametrize(
    ("name", "role"), [("slab.laz", "scan"), ("trolley.toml", "vehicle"), ("job.toml", "job")]
)
def test_an_input_that_is_another_now_is_refused(moved: Path, name: str, role: str) -> None:
    record = told(moved)
    record["inputs"][0]["path"] = str(moved / "job.toml")
    (moved / "out" / "record.json").write_text(json.dumps(record))
    path = moved / name
    path.write_bytes(path.read_bytes() + (b"\n# later\n" if name.endswith("toml") else b" "))
    result = run(moved / "out" / "record.json", "--out", moved / "third")
    assert result.exit_code == 2 and not (moved / "third").exists()
    (line,) = (row for row in result.output.splitlines() if row.startswith("crestcut:"))
    assert f"is not the {role} that the record was made from" in line and name in line


def test_inputs_are_found_beside_the_record(moved: Path) -> None:
    for name in ("job.toml", "slab.laz", "trolley.toml"):
        shutil.move(moved / name, moved / "out" / name)
    record = told(moved)
    record["inputs"][0]["path"] = "elsewhere/job.toml"
    (moved / "out" / "record.json").write_text(json.dumps(record))
    job = job_of_record(moved / "out" / "record.json")
    assert job.path == moved / "out" / "job.toml" and job.scan.files == (moved / "out" / "slab.laz",)
    (moved / "out" / "slab.laz").unlink()
    with pytest.raises(CrestcutError, match=r"slab\.laz: the scan of the record is not there"):
        job_of_record(moved / "out" / "record.json")


def test_other_versions_are_said_and_settings_kept(moved: Path) -> None:
    record = told(moved)
    record["inputs"][0]["path"] = str(moved / "job.toml")
    record["versions"]["numpy"] = "1.0"
    record["settings"]["seed"] = 5
    (moved / "out" / "record.json").write_text(json.dumps(record))
    said: list[str] = []
    assert job_of_record(moved / "out" / "record.json", said.append).settings.seed == 5
    assert len(said) == 1 and "numpy 1.0, now" in said[0]


@pytest.mark.parametrize("text", ["{}", "[]", "not json", '{"schema": "crestcut.result/1", "inputs": []}'])
def test_what_is_no_record(tmp_path: Path, text: str) -> None:
    (tmp_path / "record.json").write_text(text)
    with pytest.raises(CrestcutError, match="is no record of a run"):
        job_of_record(tmp_path / "record.json")
