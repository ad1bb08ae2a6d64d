"""Jobs shared among the workers of a Dask cluster, on this machine or behind a scheduler.

Everything about workers is the library's: it starts and watches them, gives each job to one that has the
memory, and to another where one dies. Results come back by it and are switched into place here, so that
nothing but this process writes in the folder of results. A worker must see the files of the jobs.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Generator, Iterator
from concurrent.futures import CancelledError
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any
from uuid import uuid4

from crestcut.apps.rerun import job_of_record
from crestcut.apps.run import run_into
from crestcut.base.errors import CrestcutError, Mind, Say
from crestcut.job import load_job
from crestcut.report import Staging, versions
from crestcut.study import STUDY_NAME, Identity

if TYPE_CHECKING:
    from distributed import Client

MEMORY = "MEMORY"  # bytes, as workers are told to offer it: dask worker --resources "MEMORY=8e9"
# bytes of memory that a job is stated to need: the program and its slab, and per byte of its scans (a packed
# point of 5 bytes: measured 110 bytes at the most, 20 million points)
LEAST, PER_BYTE = 600_000_000, 25
# what goes wrong is said here, in one line; the library tells it in many
QUIET = dict.fromkeys(("distributed", "distributed.client", "tornado"), "critical")
# What costs a job processor time all along: profiles that nobody looks at here, a beat 50 times a second, and
# memory given back at once (None: not asked for), so that each array of a job is asked of the system anew.
CALM = {
    "distributed.worker.profile.enabled": False,
    "distributed.admin.tick.interval": "500ms",
    "distributed.nanny.pre-spawn-environ.MALLOC_TRIM_THRESHOLD_": None,
}
ANSWERS, COMES = 10, 60  # s, until a scheduler has to answer, until it has to have a worker


@dataclass(frozen=True)
class Workers:
    """So many processes on this machine, or those of the scheduler at an address."""

    count: int = 0
    scheduler: str = ""


@dataclass(frozen=True)
class Sent:
    """The files of a job's results by name, what every file says of itself, and what was said on the way; or
    what was wrong."""

    files: dict[str, bytes]
    about: Identity
    minds: tuple[str, ...]
    wrong: str = ""


def spread(jobs: dict[str, Path], out: Path, workers: Workers, say: Say) -> Generator[tuple[str, str]]:
    """The folder of each job as it ends, its results switched into place, and what was wrong with it.

    Raises CrestcutError without the library, a scheduler, or a worker.
    """
    if not jobs:
        return
    try:
        import dask.config

        with dask.config.set(logging=QUIET):  # taken up as the library is loaded
            import distributed
    except ImportError:
        raise CrestcutError(
            "several workers want a library that is not installed (dask.distributed)",
            "", "pip install --editable '.[many]' in the checkout, or leave --workers and --scheduler out",
        ) from None  # fmt: skip
    with _client(workers, len(jobs), say) as client:
        offered = _offered(client)
        asked: dict[Any, str] = {}
        for name, job in jobs.items():
            try:
                need = memory_of(job)
                if offered and need > max(offered):
                    raise CrestcutError(
                        f"may need {need / 1e9:.1f} GB, no worker has more than {max(offered) / 1e9:.1f}",
                        job.name,
                        "fewer workers on this machine, or larger ones",
                    )
            except CrestcutError as error:
                yield name, str(error)
                continue
            task = client.submit(
                work, Path.cwd(), job, out / name / STUDY_NAME, versions(),
                key=f"{name}-{uuid4().hex[:8]}", pure=False, resources={MEMORY: need} if offered else None,
            )  # fmt: skip
            asked[task] = name
        say(f"jobs: {len(asked)}, workers: {client.scheduler_info(-1)['n_workers']}")
        for count, task in enumerate(distributed.as_completed(list(asked)), 1):
            name = asked.pop(task)
            say(f"job {count} of {count + len(asked)}: {jobs[name].name} has come back")
            yield name, _taken(task, jobs[name], out / name, say)


def _taken(task: Any, job: Path, folder: Path, say: Say) -> str:
    """Switch what a worker sent into place; what was wrong."""
    from distributed import KilledWorker

    try:
        sent: Sent = task.result()
    except KilledWorker as error:
        return (
            f"{error.allowed_failures + 1} workers died over it; give them more memory, or run it by itself"
        )
    except CancelledError:
        return "the scheduler went away before it was done; start it and give the same command"
    except Exception as error:  # a fault of this program or of its installation there
        return f"the worker could not ({type(error).__name__}: {error}); run it by itself to see"
    finally:
        task.release()
    for mind in sent.minds:
        say(Mind(f"{job.name}: {mind}"))
    if sent.wrong:
        return sent.wrong
    staging = Staging(folder, "run", say)
    try:
        with staging as part:
            staging.about = sent.about
            for name, data in sent.files.items():
                (part / name).parent.mkdir(parents=True, exist_ok=True)
                (part / name).write_bytes(data)
    except CrestcutError as error:
        return str(error)
    return ""


def work(cwd: Path, job: Path, before: Path, asked: dict[str, str]) -> Sent:
    """What a worker does: a job into a folder of the worker's own, which goes with it however it ends.

    cwd : where names that begin at no root begin: results hold the job's as it was named.  before : as of
    ``run_job``.  asked : ``versions`` of who asks: results must not hang on who made them.
    """
    from distributed import get_worker

    here, minds = get_worker(), []

    def say(words: str) -> None:
        if isinstance(words, Mind):
            minds.append(words.bare)

    try:
        own = versions()
        if others := [name for name in {**asked, **own} if asked.get(name) != own.get(name)]:
            raise CrestcutError(
                f"has another {', '.join(others)}", f"worker {here.address}", "install there what is here"
            )
        if not cwd.is_dir():
            raise CrestcutError(
                f"does not see {cwd}", f"worker {here.address}", "share it with the worker, at that place"
            )
        os.chdir(cwd)
        with tempfile.TemporaryDirectory(dir=here.local_directory) as held:
            folder = Path(held)
            done = run_into(job, folder, say, before)
            files = {
                p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()
            }
            return Sent(files, done.report.identity, tuple(minds))
    except CrestcutError as error:
        return Sent({}, Identity(""), tuple(minds), str(error))
    except OSError as error:
        return Sent({}, Identity(""), tuple(minds), f"the worker could not write ({error.strerror})")


def memory_of(job: Path) -> int:
    """Bytes that a job is stated to need. Raises CrestcutError for a job file that is wrong."""
    size = 0
    asked = job_of_record(job) if job.suffix == ".json" else load_job(job)
    for scan in asked.scan.files:
        with suppress(OSError):  # not there: said by who reads it
            size += scan.stat().st_size
    return LEAST + PER_BYTE * size


def _offered(client: Client) -> list[float]:
    """Bytes that each worker says it offers; empty where none does: then a job goes to any that is free."""
    workers = client.scheduler_info(-1)["workers"].values()
    return [float(w["resources"][MEMORY]) for w in workers if MEMORY in w.get("resources", {})]


@contextmanager
def _client(workers: Workers, jobs: int, say: Say) -> Iterator[Client]:
    """Connected to a scheduler with a worker at least; workers of this machine end with the block."""
    import dask.config
    from distributed import Client, LocalCluster
    from distributed.system import MEMORY_LIMIT

    if workers.scheduler:
        client = _connected(workers.scheduler, say)
        try:
            yield client
        finally:
            with suppress(Exception):  # it may be gone
                client.cancel(list(client.futures), force=True)
            client.close(timeout=ANSWERS)
        return
    count = min(workers.count, jobs)
    share = int(MEMORY_LIMIT / count)
    say(f"starting workers: {count}")
    with dask.config.set(CALM):
        cluster = LocalCluster(
            n_workers=count, threads_per_worker=1, memory_limit=share, resources={MEMORY: share},
            dashboard_address="127.0.0.1:0", silence_logs="CRITICAL",
        )  # fmt: skip
    client = Client(cluster)
    try:
        yield client
    finally:
        client.close(timeout=ANSWERS)
        cluster.close()


def _connected(address: str, say: Say) -> Client:
    from distributed import Client

    say(f"asking the scheduler at {address}")
    try:
        client = Client(address, timeout=ANSWERS)
    except (OSError, ValueError, TimeoutError):
        raise CrestcutError(
            "no scheduler answers",
            address,
            'start one ("dask scheduler"), and name its address as it says it',
        ) from None
    try:
        client.wait_for_workers(1, timeout=COMES)
    except TimeoutError:
        client.close()
        raise CrestcutError(
            "the scheduler has no worker", address, f'start some ("dask worker {address}")'
        ) from None
    return client
