"""The whole job from the command line: what is written, what it says, and how it ends."""

from __future__ import annotations

import json
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from crestcut.apps.cli import main
from crestcut.base.units import both

ROOT = Path(__file__).resolve().parents[1]
FILES = {
    "depth_to_remove.ply", "depth_to_remove.glb", "plan.png", "profile.png", "report.html", "result.json",
    "work_sheets.pdf",
}  # fmt: skip


def run(*args: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, list(args))
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


@pytest.fixture(scope="module")
def apron(tmp_path_factory: pytest.TempPathFactory) -> tuple[int, str, Path]:
    out = tmp_path_factory.mktemp("job") / "apron"
    code, said, _ = run("run", str(ROOT / "configs/jobs/courtyard_apron.toml"), "--out", str(out))
    return code, said, out


@pytest.fixture(scope="module")
def trolley(tmp_path_factory: pytest.TempPathFactory) -> tuple[int, str, Path]:
    out = tmp_path_factory.mktemp("job") / "trolley"
    code, said, _ = run("run", str(ROOT / "configs/jobs/kiln_trolley.toml"), "--out", str(out), "--json")
    return code, said, out


def test_the_sample_job_writes_everything_and_says_the_verdict_first(apron: tuple[int, str, Path]) -> None:
    code, said, out = apron
    assert code == 0
    assert {p.name for p in out.iterdir()} >= FILES
    assert said.split(":")[0] in ("TOUCHES", "CANNOT TELL", "CLEARS")
    assert "a passenger more 4.0 mm" in said and "job file" in said  # the allowances for use, in full
    result = json.loads((out / "result.json").read_text())
    assert result["before"]["kind"] == "crest"
    # the generator's own truth (sample_scans/truth.json): the battery tray overlaps by 4.9 mm in the wander
    low, high = result["before"]["interval"]
    assert low < -0.0049 < high
    assert result["cut"]["feasible"] and result["cut"]["short_by"] == 0
    # one walk carries this: its own waves are told from the slab's, and leave 8 mm of margin at most
    assert result["release"]["state"] == "ok" and not result["cut"]["provisional"]
    assert 0 < result["cut"]["margin"] < 0.008
    assert (out / "work_jig.csv").exists()
    split = result["surface"]["split"]
    assert split["known_from"] == "walk" and split["slab_range"][0] < split["slab"] < split["slab_range"][1]
    assert split["slab"] < split["seen"] < 0.010


def test_no_temporary_files_stay(apron: tuple[int, str, Path]) -> None:
    assert [p.name for p in apron[2].parent.iterdir()] == ["apron"]


def test_a_nose_in_the_gutter_ends_with_code_3_and_says_that_grinding_is_the_wrong_cure(
    tmp_path: Path,
) -> None:
    code, said, _ = run(
        "run", str(ROOT / "configs/jobs/courtyard_gutter.toml"), "--out", str(tmp_path / "out")
    )
    assert code == 3
    assert "nose" in said.splitlines()[0] and "grinding" in said.splitlines()[0].lower()
    # and what works instead, with its numbers: those of the first row of the options
    result = json.loads((tmp_path / "out" / "result.json").read_text())
    assert (
        result["before"]["kind"] == "nose" and not result["cut"]["feasible"] and result["cut"]["short_by"] > 0
    )
    works = result["options"][0]
    assert (
        works["reaches"]
        and f"What works: {works['name']} ({both(works['depth'])} thick" in said.splitlines()[0]
    )
    assert (
        f"leaves {both(works['clearance'])}" in said.splitlines()[0] and works["clearance"] >= result["want"]
    )
    # the rubber lip under that nose may brush the ground: told apart, in no verdict
    assert [part["part"] for part in result["soft"]] == [
        "air deflector"
    ] and "air deflector may touch" in said


def changed(tmp_path: Path, old: str, new: str) -> Path:
    """A copy of the sample job with one thing wrong."""
    for folder in ("configs", "sample_scans"):
        (tmp_path / folder).mkdir()
    shutil.copytree(ROOT / "configs", tmp_path / "configs", dirs_exist_ok=True)
    shutil.copy(ROOT / "sample_scans/apron.laz", tmp_path / "sample_scans")
    job = tmp_path / "configs/jobs/courtyard_apron.toml"
    text = job.read_text()
    assert old in text
    job.write_text(text.replace(old, new))
    return job


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("apron.laz", "missing.laz", "missing.laz"),
        ("[[1.6, 2.0], [9.9, 2.0]]", "[[4.0, 2.0], [5.0, 2.0]]", "wheelbase"),
        ("[[1.6, 2.0], [9.9, 2.0]]", "[[40.0, 2.0], [50.0, 2.0]]", ""),
        ("wander = ", "wonder = ", "did you mean"),
        ('want = "1/2 in"', 'want = "12"', "unit"),
        ('feather = "1:4"', 'feather = "0:4"', "slope"),
        ('scanner = "phone"', 'scanner = "phone"\nunit = "mm"', ""),
        ("flat_floor_hatchback.toml", "no_such.toml", "no_such.toml"),
    ],
)
def test_bad_input_is_one_line_code_2_and_nothing_written(
    tmp_path: Path, old: str, new: str, says: str
) -> None:
    out = tmp_path / "out"
    code, said, error = run("run", str(changed(tmp_path, old, new)), "--out", str(out))
    assert code == 2 and said == "" and not out.exists()
    last = error.strip().splitlines()[-1]
    assert last.startswith("crestcut: ") and says in last and len(last) < 400


def test_look_and_vehicle_answer(tmp_path: Path) -> None:
    code, said, _ = run("look", str(ROOT / "sample_scans/apron.laz"), "--out", str(tmp_path / "looked"))
    assert code == 0 and said
    assert {"look.png", "look.json", "pick.html"} <= {p.name for p in (tmp_path / "looked").iterdir()}
    assert run("look", "--how")[0] == 0
    assert run("look")[0] == 2
    code, said, _ = run(
        "vehicle", str(ROOT / "configs/vehicles/flat_floor_hatchback.toml"), "--out", str(tmp_path / "car")
    )
    assert code == 0 and (tmp_path / "car/vehicle.png").exists()
    assert run("vehicle", "--sheet")[0] == 0


def test_json_goes_to_stdout_alone() -> None:
    code, said, _ = run("look", str(ROOT / "sample_scans/apron.laz"), "--json")
    assert code == 0 and json.loads(said)


def test_help_does_not_load_what_it_does_not_need() -> None:
    """--help stays quick because nothing heavy is imported before a command runs."""
    heavy = ("numpy", "scipy", "matplotlib", "open3d", "numba", "pyproj", "rich")
    probe = f"import sys, crestcut.apps.cli; print([m for m in {heavy} if m in sys.modules])"
    assert (
        subprocess.run([sys.executable, "-c", probe], capture_output=True, text=True).stdout.strip() == "[]"
    )


def test_the_trolley_clears_and_json_is_the_file_written(trolley: tuple[int, str, Path]) -> None:
    code, said, out = trolley
    assert code in (0, 3)
    assert said == (out / "result.json").read_text(encoding="utf-8"), (
        "--json prints the file and nothing else"
    )
    result = json.loads(said)
    assert result["vehicle"]["name"] == "kiln trolley"
    # true least gap 12.4 mm (sample_scans/truth.json)
    assert result["before"]["interval"][0] < 0.0124 < result["before"]["interval"][1]
    assert (out / "report.html").exists()
    stages = {"scan", "surface", "ride", "sweep", "chance", "cut", "write"}
    assert stages <= result["seconds"].keys() and all(s >= 0 for s in result["seconds"].values())


def test_the_same_job_gives_the_same_bytes_again_and_from_a_library_call_too(
    trolley: tuple[int, str, Path], tmp_path: Path
) -> None:
    """Only the seconds may differ."""
    from crestcut.apps.run import write_job
    from crestcut.study.making import run_job

    write_job(run_job(ROOT / "configs/jobs/kiln_trolley.toml"), tmp_path / "again")
    first, again = (
        {p.name: p.read_bytes() for p in folder.iterdir()} for folder in (trolley[2], tmp_path / "again")
    )
    assert first.keys() == again.keys()
    results = [{**json.loads(files.pop("result.json")), "seconds": None} for files in (first, again)]
    assert results[0] == results[1]
    assert [name for name in first if first[name] != again[name]] == []


def test_the_commands_of_the_readme_work_as_they_are_written() -> None:
    """The bare command is found once the first line is said; each line is one that the program takes."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    part = text.split("## Your own slab")[1].split("```")
    opened = shlex.split(part[1], comments=True)
    assert opened[:2] == [".venv/bin/crestcut", "open"] and main.commands["open"]
    block = part[3].strip().splitlines()
    first, *rest = [shlex.split(line, comments=True) for line in block]
    made = text.split("```sh")[1]
    assert first == [".", ".venv/bin/activate"] and "python3 -m venv .venv " in made
    assert len(rest) >= 9 and {words[0] for words in rest} == {"crestcut"}
    for _, name, *words in rest:
        command = main.commands[name]
        left, more, _ = command.make_parser(click.Context(command)).parse_args(list(words))
        known = {option for p in command.params for option in p.opts}
        assert not more and {w for w in words if w.startswith("--")} <= known, (name, words, left)
