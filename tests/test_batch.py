"""Several jobs with one command: each whole in its own folder, a wrong one stops no other, a table of all."""

from __future__ import annotations

import contextlib
import csv
import json
import signal
import subprocess
import sys
import time
from pathlib import Path
from types import SimpleNamespace

import psutil
import pytest
from click.testing import CliRunner, Result

from crestcut.apps import batch, cluster
from crestcut.apps.cli import main
from crestcut.base.errors import CrestcutError
from crestcut.report import alone_in, versions
from crestcut.study import Identity
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


# --- once more, and shared among workers ----------------------------------------------------------


def said(site: Path, *more: str) -> Result:
    return CliRunner().invoke(main, ["run", str(site), *more])


def test_what_is_done_is_not_done_again(ran: tuple[Path, Result], monkeypatch: pytest.MonkeyPatch) -> None:
    """The same command goes on where it was stopped: no job is run, but the one that was wrong."""
    out, before = ran
    asked = []

    def run(job: Path, *_: object) -> None:
        asked.append(job.stem)
        raise CrestcutError("no such file", str(out.parent / "gone.laz"), "check the name and the folder")

    monkeypatch.setattr(batch, "run_and_write", run)
    table_before = table(out)
    again = said(out.parent, "--out", str(out))
    assert asked == ["third"] and again.exit_code == 4 and again.stdout == before.stdout
    assert table(out) == table_before


@pytest.mark.parametrize("spoilt", ["input", "result", "code", "gone", "job"])
def test_what_is_another_now_is_done_again(
    ran: tuple[Path, Result], spoilt: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = ran[0]
    job, folder = out.parent / "first.toml", out / "first"
    assert batch.done_before(job, folder) is not None
    if spoilt == "code":
        monkeypatch.setattr("crestcut.report.view.record.code_digest", lambda: "another")
        assert batch.done_before(job, folder) is None
        return
    if spoilt == "job":
        assert batch.done_before(out.parent / "second.toml", folder) is None
        return
    place = {
        "input": out.parent / "trolley.toml",
        "result": folder / "plan.png",
        "gone": folder / "record.json",
    }
    held = place[spoilt].read_bytes()
    try:
        if spoilt == "gone":
            place[spoilt].unlink()
        else:
            place[spoilt].write_bytes(held + b"\n")
        assert batch.done_before(job, folder) is None
    finally:
        place[spoilt].write_bytes(held)


def shared(workers: int, jobs: list[Path], out: Path) -> tuple[subprocess.Popen[str], list[psutil.Process]]:
    """Workers that have begun on the jobs, and all processes of the command."""
    command = [sys.executable, "-m", "crestcut.apps.cli", "run", *map(str, jobs), "--workers", str(workers)]
    pipe = subprocess.PIPE
    begun = subprocess.Popen([*command, "--out", str(out)], stdout=pipe, stderr=pipe, text=True)
    assert begun.stderr is not None
    told = ""
    while "jobs: " not in told:
        line = begun.stderr.readline()
        assert line, told
        told += line
    return begun, psutil.Process(begun.pid).children(recursive=True)


def strays(known: list[psutil.Process]) -> list[psutil.Process]:
    return psutil.wait_procs(known, timeout=10)[1]


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="no such signals there")
def test_of_two_workers_one_is_killed_and_the_bytes_are_the_same(
    ran: tuple[Path, Result], tmp_path: Path
) -> None:
    """The worked example, jobs on a cluster of this machine. The job that the dead worker was in the midst of
    ends at the other one; nothing is left of either."""
    alone, out = ran[0], tmp_path / "out"
    begun, known = shared(2, [alone.parent / "first.toml", alone.parent / "third.toml"], out)
    workers = [p for p in known if "spawn_main" in " ".join(p.cmdline())]
    assert len(workers) == 2

    def busy(worker: psutil.Process) -> float:
        return float(worker.cpu_times().user)

    until = time.monotonic() + 120
    while abs(busy(workers[0]) - busy(workers[1])) < 1.0:  # third.toml is wrong at once
        assert time.monotonic() < until
        time.sleep(0.02)
    max(workers, key=busy).kill()
    told = begun.communicate(timeout=300)
    assert begun.returncode == 4 and "Traceback" not in told[1], told
    assert table(out) == [table(alone)[0], table(alone)[2]]
    # of every file its hash
    assert (out / "first/manifest.json").read_bytes() == (alone / "first/manifest.json").read_bytes()
    assert not strays(known)


@pytest.mark.skipif(sys.platform == "win32", reason="no such signals there")
def test_workers_end_with_who_is_stopped(site: Path, tmp_path: Path) -> None:
    begun, known = shared(1, [site / "first.toml", site / "second.toml"], tmp_path / "out")
    begun.send_signal(signal.SIGTERM)
    told = begun.communicate(timeout=60)[1].splitlines()
    assert begun.returncode == 130 and not strays(known)
    assert told[-1].startswith("crestcut: stopped, 0 of 2") and told[-1].endswith("does the others")
    assert not (tmp_path / "out").exists()


def one_line(result: Result, *words: str) -> None:
    assert result.exit_code == 2 and result.stdout == "", result.output
    last = result.stderr.rstrip("\n").splitlines()[-1]
    assert last.startswith("crestcut: ") and all(word in last for word in words), last
    assert "Traceback" not in result.stderr


def test_without_the_library_it_is_said_what_to_install(
    site: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    one_line(said(site, "--workers", "2", "--out", str(tmp_path / "o")), "[many]", "pip install")
    assert not (tmp_path / "o").exists()


@pytest.mark.parametrize("address", ["tcp://127.0.0.1:9", "no address at all"])
def test_a_scheduler_that_is_not_there(
    site: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, address: str
) -> None:
    monkeypatch.setattr(cluster, "ANSWERS", 0.5)
    one_line(
        said(site, "--scheduler", address, "--out", str(tmp_path / "o")), address, "no scheduler answers"
    )
    assert not (tmp_path / "o").exists()


def test_two_runs_over_one_folder(site: Path, tmp_path: Path) -> None:
    with alone_in(tmp_path / "o"):
        one_line(said(site, "--out", str(tmp_path / "o")), "another crestcut is at work")
        assert [p.name for p in (tmp_path / "o").iterdir()] == [".jobs_at_work"]
    assert not list((tmp_path / "o").iterdir())


@pytest.mark.parametrize(
    ("ends", "says"),
    [
        (MemoryError("of the worker"), "MemoryError"),
        (OSError(28, "No space left on device"), "no space left on device"),
    ],
)
def test_what_cannot_be_taken_from_a_worker_is_that_job_s_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, ends: Exception, says: str
) -> None:
    """A worker that broke down; a disk that is full just here: one line, nothing half-written."""
    sent = cluster.Sent({"plan.png": b"a picture"}, Identity("a job"), ())

    def fails(*_: object) -> cluster.Sent:
        raise ends

    full = isinstance(ends, OSError)
    task = SimpleNamespace(release=lambda: None, result=(lambda: sent) if full else fails)
    if full:
        monkeypatch.setattr(Path, "write_bytes", fails)
    said: list[str] = []
    wrong = cluster._taken(task, Path("yard.toml"), tmp_path / "yard", said.append)
    assert says in wrong and "\n" not in wrong and "; " in wrong
    assert not list(tmp_path.iterdir())


def test_a_job_that_no_worker_has_the_memory_for(
    site: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Stated by the size of its scans; what is asked of nobody waits for nobody."""
    job = site / "first.toml"
    need = cluster.memory_of(job)
    assert need == cluster.LEAST + cluster.PER_BYTE * (site / "slab.laz").stat().st_size
    offers = {"a": {"resources": {"MEMORY": need - 1}}, "b": {}}
    client = SimpleNamespace(scheduler_info=lambda _: {"workers": offers, "n_workers": 2})
    assert cluster._offered(client) == [need - 1]  # type: ignore[arg-type]
    monkeypatch.setattr(cluster, "_client", lambda *_: contextlib.nullcontext(client))
    monkeypatch.setattr("distributed.as_completed", iter)  # of nothing
    ended = list(cluster.spread({"first": job}, tmp_path, cluster.Workers(2), lambda _: None))
    ((name, wrong),) = ended
    assert name == "first" and "may need 0.6 GB, no worker has more" in wrong and "first.toml" in wrong


@pytest.mark.parametrize("other", ["libraries", "disk"])
def test_a_worker_that_is_another_refuses(
    site: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, other: str
) -> None:
    """Of other code or libraries, or without the files: a line that names it, before anything is read."""
    here = SimpleNamespace(address="tcp://elsewhere:1", local_directory=tmp_path)
    monkeypatch.setattr("distributed.get_worker", lambda: here)
    monkeypatch.setattr(cluster, "run_into", lambda *_: pytest.fail("it was run"))
    monkeypatch.chdir(tmp_path)
    asked = {**versions(), "numpy": "0.1"} if other == "libraries" else versions()
    place = site if other == "libraries" else tmp_path / "gone"
    sent = cluster.work(place, site / "first.toml", tmp_path, asked)
    says = "has another numpy" if other == "libraries" else "does not see"
    assert says in sent.wrong and here.address in sent.wrong and not sent.files
