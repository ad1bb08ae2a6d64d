"""`crestcut open` from outside: what is named, what is refused and how, and that nothing is lost."""

from __future__ import annotations

import json
import math
import os
import random
import re
import signal
import subprocess
import sys
import time
import tomllib
from pathlib import Path
from typing import Any
from unittest.mock import ANY

import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.base.pace import Pace
from crestcut.serve.folder import JobFolder, read_json
from crestcut.serve.runs import Kind, Running, Runs
from crestcut.serve.screens import _finite
from crestcut.serve.server import Asked, begin, folder_of
from crestcut.serve.steps import state_of
from crestcut.serve.uploads import LARGEST, Uploads
from serve.served import Served, alive
from test_bad_input import JOB, VEHICLE, slab, write_laz

SEED = 5
linux = pytest.mark.skipif(sys.platform != "linux", reason="children are told by /proc")


def site(home: Path) -> Path:
    """A job that runs in seconds."""
    (home / "job.toml").write_text(JOB + '[slab]\nkind = "unknown"\n')
    (home / "trolley.toml").write_text(VEHICLE)
    write_laz(home / "slab.laz", slab())
    text = (home / "job.toml").read_text().replace('scanner = "phone"', 'scanner = "phone"\nunit = "m"')
    (home / "job.toml").write_text(text)
    return home


def test_what_is_named_becomes_a_job_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    scan = tmp_path / "My slab #1.laz"
    write_laz(scan, slab()[::9])
    folder, found = folder_of(Asked(scan))
    assert folder.job == tmp_path / "jobs" / "My_slab_1" / "job.toml" and found == scan
    begin(folder, scan)
    assert folder.scan_files()[0].resolve() == scan
    assert folder_of(Asked(folder.home))[0].job == folder.job
    assert folder_of(Asked(folder.job))[0].job == folder.job
    assert folder_of(Asked(tmp_path / "new"))[0].job == tmp_path / "new" / "job.toml"
    for wrong in ("picture.png", "none.toml", "none.laz"):
        with pytest.raises(CrestcutError):
            folder_of(Asked(tmp_path / wrong))


def test_a_second_server_and_a_taken_port_say_so_in_one_line(tmp_path: Path) -> None:
    with Served(tmp_path / "one", cwd=tmp_path) as first:
        for arguments, word in (
            ([tmp_path / "one"], f"open already, at http://127.0.0.1:{first.port}"),
            ([tmp_path / "two", "--port", str(first.port)], "leave --port out"),
        ):
            command = [sys.executable, "-m", "crestcut.apps.cli", "open", *map(str, arguments)]
            done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, timeout=30)
            assert done.returncode == 2 and word in done.stderr and done.stderr.count("\n") == 1
    with Served(tmp_path / "one", cwd=tmp_path) as again:  # the lock ended with it
        assert again.end() == 0


def test_a_form_of_two_windows_is_kept_once(tmp_path: Path) -> None:
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        known = served.number()
        assert served.send("/slab", **{"slab.kind": "plain concrete"})[0] == 303
        status, page = served.send("/slab", **{"slab.kind": "other", "number": known})
        assert status == 409 and "changed elsewhere" in page
        assert JobFolder(tmp_path / "job" / "job.toml").data()["slab"]["kind"] == "plain concrete"


@pytest.mark.parametrize(
    ("path", "form", "said"),
    [
        ("/slab", {"slab.thickness": "1,234 m"}, "has a comma"),
        ("/slab", {"slab.thickness": "9 m"}, "cannot be right"),
        ("/slab", {"slab.kind": "<script>"}, "none of the choices"),
        ("/slab", {"site.country": "Utopia"}, "two letters"),
        ("/room", {"clearance.confidence": "2", "travel.ways": "forward"}, "none of the choices"),
        ("/room", {"clearance.confidence": "0.95", "travel.ways": "sideways"}, "choose one of the list"),
        ("/vehicle", {"A": "262", "B": "long", "J": "0,8"}, "not understood as a length"),
        ("/vehicle/chosen", {"vehicle": "../../etc/passwd"}, "no vehicle was chosen"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said_in_its_place_and_nothing_is_kept(
    tmp_path: Path, path: str, form: dict[str, str], said: str
) -> None:
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        status, page = served.send(path, **form)
        assert status == 422 and said in page.lower() and "<script>" not in page.partition("<main")[2]
    assert not (tmp_path / "job" / "job.toml").exists()


def test_numbers_that_are_none_leave_the_plan_whole(tmp_path: Path) -> None:
    """TOML knows nan, a page does not; from a page they are refused."""
    assert _finite({"a": [math.nan, 1.0, {"b": -math.inf}], "c": "nan"}) == {
        "a": [None, 1.0, {"b": None}],
        "c": "nan",
    }
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        for line in ("[[NaN, 1], [2, 3]]", "[[1e999, 1], [2, 3]]"):
            status, _, body = served.ask(
                "POST", "/line", f'{{"line": {line}, "number": "{served.number()}"}}'
            )
            assert status == 400 and "no line" in body.decode()
    assert not (tmp_path / "job" / "job.toml").exists()


def test_a_hand_made_touch_is_told_and_not_kept(tmp_path: Path) -> None:
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        for path in ("/measure/0", "/after/0", "/measure/99"):
            status, page = served.send(path, touched="yes")
            assert status == 409 and "changed elsewhere" in page, path
    assert not (tmp_path / "job" / "job.toml").exists()


def test_a_script_of_another_version_is_never_taken_from_the_browser(tmp_path: Path) -> None:
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        status, headers, body = served.ask("GET", "/static/open.js")
        assert status == 200 and body and "no-cache" in headers["cache-control"]
        again = {"If-None-Match": headers["etag"]}
        assert served.ask("GET", "/static/open.js", headers=again)[::2] == (304, b"")
        assert served.ask("GET", "/static/line.js", headers=again)[0] == 200


def test_numbers_swapped_are_told_by_the_sheet(tmp_path: Path) -> None:
    good = dict.fromkeys("AB", "2620") | dict.fromkeys("CD", "1490") | dict.fromkeys("EF", "296")
    good |= {"G": "195", "H": "140", "J": "820", "K": "690", "N": "1740"}
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        status, page = served.send("/vehicle", **{**good, "H": "296", "E": "140", "F": "140"})
        assert status == 422 and "contradicts" in page
        assert served.send("/vehicle", **{**good, "name": "Grüne „Else“ <b>"})[0] == 303
        folder = JobFolder(tmp_path / "job" / "job.toml")
        assert tomllib.loads(folder.vehicle.read_text())["wheelbase"] == "2620.0 mm"
        assert tomllib.loads(folder.sheet.read_text())["A"] == ["2620 mm"]
        page = served.get("/vehicle")
        assert 'value="2620 mm"' in page and "<b>" not in page  # what was typed stands there again
        command = [sys.executable, "-m", "crestcut.apps.cli", "vehicle", str(folder.sheet)]
        assert subprocess.run(command, capture_output=True, check=False).returncode == 0


def bring(served: Served, name: str, data: bytes, piece: int = 1 << 20) -> tuple[int, dict[str, str]]:
    """An upload as the page makes it."""
    told = json.dumps({"name": name, "size": len(data), "modified": 1})
    status, _, body = served.ask("POST", "/upload", told)
    if "key" not in json.loads(body):
        return status, json.loads(body)
    key, here = json.loads(body)["key"], json.loads(body)["here"]
    while here < len(data):
        sent = data[here : here + piece]
        status, _, body = served.ask("PUT", f"/upload/{key}", sent, {"x-offset": str(here)})
        if "here" not in json.loads(body):
            return status, json.loads(body)
        here = json.loads(body)["here"]
    status, _, body = served.ask("POST", f"/upload/{key}/end")
    return status, json.loads(body)


def test_an_upload_is_no_path_no_other_file_and_goes_on_where_it_was(tmp_path: Path) -> None:
    write_laz(tmp_path / "slab.laz", slab()[::3])
    good = (tmp_path / "slab.laz").read_bytes()
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        assert "no scan" in bring(served, "holiday.png", b"\x89PNG")[1]["what"]
        assert "picture" in bring(served, "holiday.laz", b"\x89PNG" * 90)[1]["what"]
        assert "empty" in bring(served, "none.laz", b"")[1]["what"]
        told = json.dumps({"name": "huge.laz", "size": LARGEST + 1, "modified": 1})
        assert b"larger than" in served.ask("POST", "/upload", told)[2]
        assert served.ask("PUT", "/upload/../../x", b"x", {"x-offset": "0"})[0] == 404
        assert b"not known" in served.ask("PUT", "/upload/0123456789abcdef", b"x", {"x-offset": "0"})[2]
        # half of it, then the same file again: it goes on, and what does not join on is left out
        named = {"name": "../../../evil.laz", "size": len(good), "modified": 1}
        key = json.loads(served.ask("POST", "/upload", json.dumps(named))[2])["key"]
        half = len(good) // 2
        served.ask("PUT", f"/upload/{key}", good[:half], {"x-offset": "0"})
        status, _, body = served.ask("POST", f"/upload/{key}/end")
        assert status == 200 and "bytes came" in json.loads(body)["what"]
        assert json.loads(served.ask("PUT", f"/upload/{key}", good, {"x-offset": "7"})[2])["here"] == half
        assert json.loads(served.ask("POST", "/upload", json.dumps(named))[2])["here"] == half
        assert bring(served, "../../../evil.laz", good) == (200, {"next": "/scan"})
        served.wait()
        assert "points" in served.get("/scan")
        over = json.dumps({"name": "b.laz", "size": 10, "modified": 1})
        key = json.loads(served.ask("POST", "/upload", over)[2])["key"]
        assert b"more came" in served.ask("PUT", f"/upload/{key}", good[:50], {"x-offset": "0"})[2]
    assert [p.name for p in (tmp_path / "job" / "scans").iterdir()] == ["scan_1.laz"]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["job", "slab.laz"]


def test_a_scan_of_no_slab_is_told_where_it_was_brought(tmp_path: Path) -> None:
    lawn = np.random.default_rng(1).normal(0, (2, 2, 0.4), (4000, 3))
    write_laz(tmp_path / "lawn.laz", lawn)
    broken = (tmp_path / "lawn.laz").read_bytes()[:400]
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        assert bring(served, "broken.laz", broken)[0] == 200
        served.wait()
        page = served.get("/scan")
        assert 'class="wrong-box" role="alert"' in page and "Choose a scan file" in page
        assert bring(served, "lawn.laz", (tmp_path / "lawn.laz").read_bytes())[0] == 200
        served.wait()
        status, _, body = served.ask("GET", "/line")
        assert status in (303, 422)
        if status == 422:
            assert b"No slab was found" in body


def test_pieces_nobody_came_back_for_go(tmp_path: Path) -> None:
    folder = JobFolder(tmp_path / "job.toml")
    folder.hidden.mkdir()
    old, new = (folder.hidden / f"upload_{c * 16}.part" for c in "ab")
    for part in (old, new):
        part.write_bytes(b"x")
    os.utime(old, (1, 1))
    Uploads(folder).sweep()
    assert not old.exists() and new.exists()


@linux
@pytest.mark.slow
def test_cancelled_the_last_answer_stays_and_killed_nothing_is_lost(tmp_path: Path) -> None:
    """Run; change a number and cancel; then kill server or run at random moments: what was there is whole,
    nobody outlives the server, and the next start says what was cut short."""
    home, chance = site(tmp_path), random.Random(SEED)
    with Served(home, cwd=home) as served:
        served.wait()
        assert served.send("/run")[0] == 303
        served.wait()
        result = (home / "results" / "result.json").read_bytes()
        assert "Where it is" in served.get("/answer")
        assert served.send("/room", **{"clearance.want": "6", "clearance.confidence": "0.95",
                                       "travel.ways": "forward"})[0] == 303  # fmt: skip
        served.send("/run")
        assert b'"running":true' in served.ask("GET", "/progress")[2]
        assert served.send("/cancel")[0] == 303
        page = served.get("/answer")
        assert "stopped" in page and "have changed since this answer" in page
        assert (home / "results" / "result.json").read_bytes() == result
    job = (home / "job.toml").read_bytes()
    for round_ in range(4):
        with Served(home, cwd=home) as served:
            page = served.get("/answer")
            assert ("was cut short" in page) == (round_ > 0)
            served.send("/run")
            time.sleep(chance.uniform(0.05, 2.5))
            children = served.children()
            if round_ == 2:  # the run itself
                for pid in children:
                    os.kill(pid, signal.SIGKILL)
                served.wait(20)
                assert "stopped without an answer" in served.get("/answer")
                served.send("/run")
                time.sleep(0.3)
                children = served.children()
            served.process.kill()
            served.process.wait()
            end = time.monotonic() + 10
            while any(map(alive, children)):
                assert time.monotonic() < end, "a run outlived the server"
                time.sleep(0.05)
        assert (home / "job.toml").read_bytes() == job
        found = read_json(home / "results" / "result.json")
        assert found["schema"] == "crestcut.result/1"
    with Served(home, cwd=home) as served:
        served.send("/again", kind="run")
        served.wait()
        assert "have changed since" not in served.get("/answer")
    assert not [p for p in home.iterdir() if p.suffix == ".part"]


def test_idle_it_is_small_and_answers_at_once(tmp_path: Path) -> None:
    started = time.perf_counter()
    with Served(tmp_path / "job", cwd=tmp_path) as served:
        up = time.perf_counter()
        page = served.get("/scan")
        first = time.perf_counter() - up
        assert "How to walk a good scan" in page and first < 1.0
        assert up - started < 15
        status = Path(f"/proc/{served.process.pid}/status")
        if status.exists():
            kilobytes = int(status.read_text().partition("VmRSS:")[2].split()[0])
            assert kilobytes <= 60 * 1024


@linux
def test_what_waits_with_all_loaded_does_the_next_command_and_nothing_hangs_on_it(tmp_path: Path) -> None:
    home = site(tmp_path)
    with Served(home, cwd=home) as served:
        served.wait()
        ready = _waiting(served)
        assert served.send("/run")[0] == 303
        assert served.children() == [ready]
        assert not (home / "results").exists()
        early, tight, asked = _answered(served)
        late = served.get("/answer")
        for part in (r'<section class="verdict.*?</section>', r"Where it is.*?</section>"):
            (shown,) = re.findall(part, early, re.S)
            assert shown == re.findall(part, late, re.S)[0]
        assert "Plan, options and files follow" in early and "What to do next" in early
        assert "What could be done</h2>" in late and "What could be done</h2>" not in early
        assert {**json.loads(served.ask("GET", "/tight")[2]), **tight} == {
            **tight, "depth": ANY, "deepest": ANY, "release": ANY, "others": ANY, "drive": ANY
        }  # fmt: skip
        assert "is known once" not in asked and "Nothing has to be measured" in asked
        assert "plan and sheets</a>" not in asked and "plan and sheets</a>" in served.get("/measure")
        first = read_json(home / "results" / "result.json")
        killed = _waiting(served)
        assert killed != ready
        os.kill(killed, signal.SIGKILL)
        served.send("/run")
        served.wait()
        again = read_json(home / "results" / "result.json")
        assert {**again, "seconds": 0} == {**first, "seconds": 0}
        left = _waiting(served)
        assert left != killed
    end = time.monotonic() + 10
    while alive(left):
        assert time.monotonic() < end, "it outlived the server"
        time.sleep(0.05)


def test_a_first_answer_counts_until_the_numbers_change(tmp_path: Path) -> None:
    folder = JobFolder(site(tmp_path) / "job.toml")
    runs = Runs(folder)
    process: Any = None
    runs.now = Running(Kind.RUN, process, Pace(), first={"result": {"before": {"verdict": "clears"}}})
    folder.remember("last_run", {"mark": folder.plan_mark()})
    assert state_of(folder, runs).known == {"before": {"verdict": "clears"}}
    folder.edit("the room", {"clearance.want": "9 mm"}, folder.number())
    assert state_of(folder, runs).known == {}


def _waiting(served: Served) -> int:
    """The process that loads all and waits."""
    end = time.monotonic() + 20
    while not (found := served.children()):
        assert time.monotonic() < end, "none was started"
        time.sleep(0.05)
    (one,) = found
    return one


def _answered(served: Served) -> tuple[str, dict[str, object], str]:
    """What is shown before there are files: the answer's screen, the tight place, what is worth measuring."""
    while (now := json.loads(served.ask("GET", "/progress")[2]))["running"] and not now["answered"]:
        time.sleep(0.02)
    shown = served.get("/answer"), json.loads(served.ask("GET", "/tight")[2]), served.get("/measure")
    served.wait()
    return shown
