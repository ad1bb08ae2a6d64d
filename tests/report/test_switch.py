"""A set of results is switched as a whole, wherever in the switch the process is stopped, and by what.

The process under test is told to stop itself at its n-th dealing with the file system (an audit hook of
Python's sees each just before it happens), for every n there is, by each of three signals.
"""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from crestcut.report.folder.files import JOURNAL_NAME, Staging
from crestcut.study.identity import Identity

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="no fork on this system")

OLD = {"mesh.ply": "old mesh", "plan.png": "old plan", "work_jig.csv": "old jig", "work_dots.csv": "old dots"}
NEW = {"mesh.ply": "new mesh", "plan.png": "new plan", "sub/page.html": "new page"}
EDITED = {"work_dots.csv": "dots, with notes of the user", "plan.png": "plan, drawn over by the user"}
OWN = {"note.txt": "the user's own"}

HARNESS = """
import os, signal, sys
from pathlib import Path
from test_switch import NEW, OLD, fill, put
from crestcut.report.folder.files import Staging, switched
from crestcut.base.stopping import stopped_as_by_ctrl_c

place, blow = Path(sys.argv[1]), int(sys.argv[2])
EVENTS = ("os.rename", "os.remove", "os.mkdir", "os.rmdir", "os.scandir", "os.listdir", "open")


def one(folder, n):
    seen = 0

    def hook(event, args):
        nonlocal seen
        if event in EVENTS and "__pycache__" not in str(args):
            seen += 1
            if seen == n:
                os.kill(os.getpid(), blow)

    sys.addaudithook(hook)
    switched.clear()
    said = "whole, unstopped"
    try:
        with stopped_as_by_ctrl_c():
            put(folder / "out", NEW)
    except KeyboardInterrupt:
        said = "whole" if switched else "nothing"
    n = 0
    Path(folder / "said").write_text(said)


n = 1
while True:
    folder = place / str(n)
    folder.mkdir()
    fill(folder / "out")
    child = os.fork()
    if child == 0:
        signal.signal(signal.SIGINT, signal.default_int_handler)  # a background job has it switched off
        code = 1
        try:
            one(folder, n)
            code = 0
        finally:
            os._exit(code)
    os.waitpid(child, 0)
    if (folder / "said").exists() and (folder / "said").read_text() == "whole, unstopped":
        break
    n += 1
"""


def put(out: Path, files: dict[str, str], name: str = "run") -> Staging:
    """One command's results into ``out``."""
    staging = Staging(out, name)
    with staging as folder:
        staging.about = Identity("Courtyard apron", "ok", "2026-11-29")
        for file, text in files.items():
            (folder / file).parent.mkdir(exist_ok=True)
            (folder / file).write_text(text)
    return staging


def fill(out: Path) -> None:
    """What an earlier run wrote, what the user did to it, and what is the user's alone."""
    put(out, OLD)
    for file, text in {**EDITED, **OWN}.items():
        (out / file).write_text(text)


def found(out: Path) -> dict[str, str]:
    return {
        p.relative_to(out).as_posix(): p.read_text()
        for p in sorted(out.rglob("*"))
        if p.is_file() and p.name != "manifest.json"
    }


def python(script: str, *args: object) -> subprocess.CompletedProcess[bytes]:
    """Run a script that can import this module."""
    path = os.pathsep.join(filter(None, (str(Path(__file__).parent), os.environ.get("PYTHONPATH", ""))))
    return subprocess.run(
        [sys.executable, "-c", script, *map(str, args)], timeout=120, env={**os.environ, "PYTHONPATH": path}
    )


BEFORE = {**OLD, **EDITED, **OWN}
AFTER = {**NEW, **OWN, **{f"superseded_{name}": text for name, text in EDITED.items()}}


def listed(out: Path) -> set[str]:
    return {row["file"] for row in json.loads((out / "manifest.json").read_text())["sets"]["run"]["files"]}


@pytest.mark.parametrize("blow", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_stopped_anywhere_the_old_set_or_the_new_one_is_whole(tmp_path: Path, blow: signal.Signals) -> None:
    assert python(HARNESS, tmp_path, str(int(blow))).returncode == 0
    folders = sorted(tmp_path.iterdir(), key=lambda p: int(p.name))[:-1]
    states, half = set(), 0
    for folder in folders:
        out, said = folder / "out", folder / "said"
        assert said.exists() == (blow != signal.SIGKILL)
        if blow == signal.SIGKILL:
            half += (out / JOURNAL_NAME).exists()
            with pytest.raises(ZeroDivisionError), Staging(out, "look"):  # any next command, whatever it does
                _ = 1 / 0
        now = found(out)
        assert now in (BEFORE, AFTER), folder
        assert listed(out) == set(OLD if now == BEFORE else NEW)
        assert sorted(p.name for p in folder.iterdir() if p != said) == ["out"], "nothing left beside it"
        if said.exists():
            assert said.read_text() == ("nothing" if now == BEFORE else "whole")
        states.add(now == BEFORE)
    assert len(folders) > 30 and states == {True, False}
    assert half > 10 if blow == signal.SIGKILL else half == 0


KILLED = """
import os, signal, sys
from pathlib import Path
from test_switch import NEW, fill, put

out = Path(sys.argv[1])
fill(out)


def hook(event, args):
    if event == "os.rename" and str(args[1]).endswith("out/sub/page.html"):
        os.kill(os.getpid(), signal.SIGKILL)


sys.addaudithook(hook)
put(out, NEW)
"""


def half_switched(tmp_path: Path) -> Path:
    """A folder as a process leaves it that is killed with its last file to bring."""
    ran = python(KILLED, tmp_path / "out")
    assert ran.returncode == -signal.SIGKILL and (tmp_path / "out" / JOURNAL_NAME).exists()
    return tmp_path / "out"


def test_the_next_run_into_it_brings_its_own_set(tmp_path: Path) -> None:
    out, told = half_switched(tmp_path), []
    staging = Staging(out, "run", told.append)
    with staging as folder:
        assert found(out) == BEFORE and "the old ones are back" in told[0]
        (folder / "plan.png").write_text("a third plan")
    assert found(out)["plan.png"] == "a third plan" and "mesh.ply" not in found(out)


def test_what_is_changed_between_death_and_next_run_is_kept(tmp_path: Path) -> None:
    out = half_switched(tmp_path)
    (out / "mesh.ply").write_text("the new mesh, changed by hand")
    with pytest.raises(ZeroDivisionError), Staging(out, "look"):
        _ = 1 / 0
    assert found(out) == {**BEFORE, "superseded_mesh.ply": "the new mesh, changed by hand"}


def test_a_half_switched_folder_says_so_itself(tmp_path: Path) -> None:
    said = json.loads((half_switched(tmp_path) / JOURNAL_NAME).read_text())["note"]
    assert "old and new ones lie side by side" in said and "--out" in said


@pytest.mark.parametrize(
    "change",
    [
        {"part": "../../elsewhere"},
        {"part": "../.other-abcdefgh.part"},
        {"steps": [["out/../../a", "out/b", None]]},
        {"steps": [["/etc/a", "out/b", None]]},
        {"steps": 3},
    ],
)
def test_a_strangers_journal_touches_nothing_outside(tmp_path: Path, change: dict[str, object]) -> None:
    from crestcut.base.errors import CrestcutError

    out = half_switched(tmp_path)
    journal = json.loads((out / JOURNAL_NAME).read_text())
    (out / JOURNAL_NAME).write_text(json.dumps({**journal, **change}))
    (tmp_path / "a").write_text("a")
    before = sorted(p for p in tmp_path.rglob("*"))
    with pytest.raises(CrestcutError, match="cannot be understood"), Staging(out, "look"):
        pytest.fail("the block must not run")
    assert sorted(p for p in tmp_path.rglob("*")) == before


def test_a_run_that_lives_is_not_swept_by_another(tmp_path: Path) -> None:
    out = tmp_path / "out"
    with Staging(out, "run") as first:
        (first / "a.txt").write_text("a")
        with Staging(out, "look") as second:
            assert first.is_dir()
            (second / "b.txt").write_text("b")
    assert set(found(out)) == {"a.txt", "b.txt"}


def test_a_folder_of_a_name_that_begins_alike_is_not_swept(tmp_path: Path) -> None:
    other = tmp_path / ".out-more-abcdefgh.part"
    other.mkdir()
    dead = tmp_path / ".out-abcdefgh.part"
    dead.mkdir()
    put(tmp_path / "out", NEW)
    assert other.exists() and not dead.exists()


# --- what goes and what stays ---------------------------------------------------------------------


def test_what_a_run_does_not_make_again_goes_and_is_named(tmp_path: Path) -> None:
    out, told = tmp_path / "out", []
    put(out, OLD)
    (out / "note.txt").write_text("mine")
    staging = Staging(out, "run", told.append)
    with staging as folder:
        (folder / "plan.png").write_text("stamped NOT FOR CUTTING")
    assert found(out) == {"plan.png": "stamped NOT FOR CUTTING", "note.txt": "mine"}
    assert len(told) == 1 and "work_jig.csv" in told[0] and "note.txt" not in told[0]


def test_what_the_user_changed_is_kept_under_another_name_each_time(tmp_path: Path) -> None:
    out, told = tmp_path / "out", []
    for text in ("first notes", "second notes"):
        put(out, OLD)
        (out / "work_dots.csv").write_text(text)
    staging = Staging(out, "run", told.append)
    with staging as folder:
        (folder / "plan.png").write_text("new")
    assert found(out) == {
        "plan.png": "new",
        "superseded_work_dots.csv": "first notes",
        "superseded_2_work_dots.csv": "second notes",
    }
    assert told == [
        "work_dots.csv was not as crestcut had written it: it is kept as superseded_2_work_dots.csv",
        "taken away, an earlier run had made what this one does not: mesh.ply, work_jig.csv",
    ]


def test_one_commands_results_are_not_anothers_to_take_away(tmp_path: Path) -> None:
    out = tmp_path / "out"
    put(out, OLD, "run")
    put(out, {"checked.png": "check"}, "verify")
    put(out, {"mesh.ply": "of the floor"}, "floor")
    assert found(out) == {**OLD, "checked.png": "check", "mesh.ply": "of the floor"}
    sets = json.loads((out / "manifest.json").read_text())["sets"]
    assert {name: {row["file"] for row in one["files"]} for name, one in sets.items()} == {
        "run": set(OLD) - {"mesh.ply"}, "verify": {"checked.png"}, "floor": {"mesh.ply"},
    }  # fmt: skip
    put(out, {"plan.png": "run again"}, "run")
    assert found(out) == {"plan.png": "run again", "checked.png": "check", "mesh.ply": "of the floor"}


def test_the_manifest_is_that_of_the_files_and_the_same_for_the_same_answer(tmp_path: Path) -> None:
    import hashlib

    for name, seconds in (("a", 1.5), ("b", 2.5)):
        result = json.dumps({"verdict": "clears", "seconds": {"scan": seconds, "cut": 1.0}}, indent=2)
        put(tmp_path / name, {"plan.png": "plan", "result.json": result})
    assert (tmp_path / "a" / "manifest.json").read_bytes() == (tmp_path / "b" / "manifest.json").read_bytes()
    document = json.loads((tmp_path / "a" / "manifest.json").read_text())
    one = document["sets"]["run"]
    assert document["tool"] == "crestcut" and one["version"] and one["dated"] == "2026-11-29"
    assert (one["job"], one["release"]) == ("Courtyard apron", "ok")
    hashes = {row["file"]: row["sha256"] for row in one["files"]}
    assert hashes["plan.png"] == hashlib.sha256(b"plan").hexdigest()
    # seconds alone are no change; a verdict is
    put(tmp_path / "a", {"plan.png": "plan"})
    assert set(found(tmp_path / "a")) == {"plan.png"}
    changed = tmp_path / "b" / "result.json"
    changed.write_text(changed.read_text().replace("clears", "touches"))
    put(tmp_path / "b", {"plan.png": "plan"})
    assert set(found(tmp_path / "b")) == {"plan.png", "superseded_result.json"}


@pytest.mark.parametrize(
    "text", ["not json", "[]", '{"schema": "another"}', '{"schema": "crestcut.manifest/1"}']
)
def test_a_manifest_of_somebody_else_is_kept_and_nothing_is_believed_of_it(tmp_path: Path, text: str) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "manifest.json").write_text(text)
    put(out, {"plan.png": "new"})
    assert found(out) == {"plan.png": "new", "superseded_manifest.json": text}


def test_a_manifest_cannot_name_what_lies_outside(tmp_path: Path) -> None:
    import hashlib

    out = tmp_path / "out"
    put(out, OLD)
    (tmp_path / "precious").write_text("x")
    document = json.loads((out / "manifest.json").read_text())
    document["sets"]["run"]["files"].append(
        {"file": "../precious", "sha256": hashlib.sha256(b"x").hexdigest()}
    )
    (out / "manifest.json").write_text(json.dumps(document))
    put(out, NEW)
    assert (tmp_path / "precious").read_text() == "x"


@pytest.mark.parametrize("kind", ["link", "dangling", "fifo"])
def test_what_stands_at_a_name_and_is_no_file_is_put_aside_unread(tmp_path: Path, kind: str) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (tmp_path / "far").write_text("far")
    if kind == "fifo":
        os.mkfifo(out / "plan.png")
    else:
        (out / "plan.png").symlink_to(tmp_path / ("far" if kind == "link" else "nowhere"))
    put(out, {"plan.png": "new"})
    assert (out / "plan.png").read_text() == "new" and (tmp_path / "far").read_text() == "far"
    assert os.path.lexists(out / "superseded_plan.png")
