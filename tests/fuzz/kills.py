"""Commands killed at random moments: the results are the old ones or the new ones, whole, and nothing stays.

``.venv/bin/python tests/fuzz/kills.py --count 200 --seed 1``, with ``--places`` what else may befall a run: a
full disk, no home, a package and an output that may not be written, two runs at once, one core and two,
twice the same bytes.
"""

from __future__ import annotations

import argparse
import os
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass
from pathlib import Path
from random import Random

sys.path[:0] = [str(Path(__file__).resolve().parents[1]), str(Path(__file__).resolve().parents[1] / "scan")]

from crestcut.report.folder.files import JOURNAL_NAME, put_right  # noqa: E402
from crestcut.report.folder.manifest import MANIFEST_NAME, digest  # noqa: E402
from verify.after_scene import COARSE, VEHICLE, walked, write_ply  # noqa: E402

_SAID: dict[int, int] = {}  # process -> what it says
BLOWS = (signal.SIGINT, signal.SIGTERM, signal.SIGKILL)
BEGUN, OVER = b"(begun)\n", b"(over)\n"
Set = dict[str, str]  # name under the folder -> hash, seconds left out
Expect = Callable[..., None]


@dataclass(frozen=True)
class Site:
    """A folder with two jobs, which differ by their title, and one folder of results for both."""

    place: Path

    @property
    def out(self) -> Path:
        return self.place / "out"

    def make(self) -> None:
        """Files of a small slab under a low cart."""
        write_ply(walked(1)[::4], self.place / "before.ply")
        (self.place / "cart.toml").write_text(VEHICLE)
        for name in ("old", "new"):
            (self.place / f"{name}.toml").write_text(COARSE.replace("Low cart", f"{name} title"))

    def found(self) -> Set:
        """What stands in the folder of results, the manifest by what it lists."""
        files = (p for p in self.out.rglob("*") if p.is_file() and p.name != MANIFEST_NAME)
        return {p.relative_to(self.out).as_posix(): digest(p) or "" for p in files}

    def strays(self) -> list[str]:
        """What no run may leave: hidden folders, and a journal."""
        left = [p.name for p in (*self.place.iterdir(), *self.out.iterdir()) if p.name.endswith(".part")]
        return left + [JOURNAL_NAME] * (self.out / JOURNAL_NAME).exists()


def _marked(inside: Callable[[], AbstractContextManager[None]]) -> Callable[[], AbstractContextManager[None]]:
    """The block in which a signal is answered, and says where it begins and ends."""

    @contextmanager
    def block() -> Iterator[None]:
        with inside():
            os.write(1, BEGUN)
            try:
                yield
            finally:
                os.write(1, OVER)

    return block


def begin(site: Site, job: str, out: Path | None = None, room: int | None = None) -> int:
    """Run a job in a fork; its process id, which is its session's too.  room : bytes that a file may have."""
    ours, theirs = os.pipe()  # which no limit on files holds for, and has room for all that a run says
    child = os.fork()
    if child:
        os.close(theirs)
        _SAID[child] = ours
        return child
    code = 99
    try:
        os.setsid()
        for blow in BLOWS[:2]:
            signal.signal(blow, signal.default_int_handler if blow == signal.SIGINT else signal.SIG_DFL)
        os.dup2(theirs, 1)
        os.dup2(theirs, 2)
        if room is not None:
            resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))
        from crestcut.apps import cli

        code = 0
        os.chdir(site.place)  # the record of a job keeps the names of files as they were given
        cli.stopped_as_by_ctrl_c = _marked(cli.stopped_as_by_ctrl_c)
        cli.main(["run", f"{job}.toml", "--out", str(out or site.out)], standalone_mode=False)
    except SystemExit as ended:
        code = int(ended.code or 0)
    except BaseException:
        import traceback

        traceback.print_exc()
        code = 98
    finally:
        os._exit(code)


def ended(child: int) -> tuple[int, str]:
    """(exit code of a fork, below zero the signal it died of; what it said)."""
    code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    with os.fdopen(_SAID.pop(child), errors="replace") as said:
        return code, said.read()


def session_of(child: int) -> list[str]:
    """Processes that are left of its session."""
    left = []
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                fields = (entry / "stat").read_text().rpartition(")")[2].split()
            except OSError:
                continue
            if int(fields[3]) == child and fields[0] != "Z":
                left.append(entry.name)
    return left


def kills(site: Site, count: int, seed: int) -> list[str]:
    """Kill ``count`` runs over old results; what was wrong afterwards."""
    rng, wrong = Random(seed), []
    sets: dict[str, Set] = {}
    for job in ("new", "old"):
        began = time.monotonic()
        code, said = ended(begin(site, job))
        assert code in (0, 3), said
        took = time.monotonic() - began
        sets[job] = site.found()
    shutil.copytree(site.out, site.place / "kept")
    came: Counter[str] = Counter()
    for number in range(count):
        shutil.rmtree(site.out)
        shutil.copytree(site.place / "kept", site.out)
        blow, switching = rng.choice(BLOWS), rng.random() < 0.5
        child = begin(site, "new")
        until = time.monotonic() + (10 * took if switching else rng.uniform(0, 1.05 * took))
        while time.monotonic() < until and not (switching and (site.out / JOURNAL_NAME).exists()):
            if os.waitid(os.P_PID, child, os.WEXITED | os.WNOHANG | os.WNOWAIT):
                break
            time.sleep(0.0002)
        if switching:
            time.sleep(rng.uniform(0, 0.004))
        os.kill(child, blow)
        code, said = ended(child)
        time.sleep(0.05 if blow == signal.SIGKILL else 0)
        what = f"{number} {blow.name} {'at the switch' if switching else 'anywhere'}, ended with {code}"
        if left := session_of(child):
            wrong.append(f"{what}: processes left {left}")
        if blow != signal.SIGKILL and site.strays():
            wrong.append(f"{what}: left {site.strays()}")
        # before and after the block in which it is answered
        outside = code == -signal.SIGTERM and (BEGUN.decode() not in said or OVER.decode() in said)
        if code not in (0, 3, 130, -signal.SIGKILL) and not outside:
            wrong.append(f"{what}: {said[-300:]}")
        put_right(site.out)  # as the next command begins
        found = site.found()
        which = next((name for name, one in sets.items() if one == found), "")
        came[f"{which or 'torn'} after {blow.name}"] += 1
        if not which or site.strays():
            wrong.append(
                f"{what}: {sorted(set(found.items()) ^ set(sets['old'].items()))[:6]} {site.strays()}"
            )
        if code == 130 and ("nothing was written" in said) != (which == "old"):
            wrong.append(f"{what}: says {said.splitlines()[-1:]}, and the results are {which}")
    print(
        f"{count} kills of a run of {took:.1f} s: " + ", ".join(f"{n} {w}" for w, n in sorted(came.items()))
    )
    return wrong


def places(site: Site) -> list[str]:
    """A full disk, no home, no place to write, two at once, one core and two; what was wrong."""
    wrong: list[str] = []

    def expect(what: str, good: bool, more: object = "") -> None:
        print(f"  {'ok   ' if good else 'WRONG'} {what}")
        if not good:
            wrong.append(f"{what}: {more}")

    assert ended(begin(site, "old"))[0] in (0, 3)
    old = site.found()
    largest = max(p.stat().st_size for p in site.out.iterdir())
    for room in (0, 100, 5000, 100_000, largest - 1):
        code, said = ended(begin(site, "new", room=room))
        good = code == 2 and site.found() == old and not site.strays() and "Traceback" not in said
        expect(f"no room for files over {room:,} bytes: {code}", good, said[-400:])
    full_disk(site, old, expect)
    read_only(site, old, expect)
    first, second = begin(site, "new"), begin(site, "old")
    codes = ended(first)[0], ended(second)[0]
    both = site.found()
    expect(f"two runs at once: {codes}", set(codes) <= {0, 3} and not site.strays(), both)
    expect("and the folder holds one of them, whole", both == old or _all_new(site, both), both)
    for where in ("/proc/none", "/dev/null", str(site.place / "old.toml")):
        code, said = ended(begin(site, "new", out=Path(where)))
        expect(f"--out {where}: {code}", code == 2 and "Traceback" not in said, said[-300:])
    ways: dict[str, dict[str, str | None]] = {
        "no home": {"HOME": None, "XDG_CACHE_HOME": None, "XDG_CONFIG_HOME": None},
        "a home that is not there": {"HOME": "/nowhere"},
        "one core": {"NUMBA_NUM_THREADS": "1"}, "two cores": {"NUMBA_NUM_THREADS": "2"},
    }  # fmt: skip
    records: set[str] = set()
    for what, changed in ways.items():
        env = {k: v for k, v in {**os.environ, **changed}.items() if v is not None}
        other = Site(site.place / what.replace(" ", "_"))
        other.place.mkdir()
        other.make()
        command = [sys.executable, "-m", "crestcut.apps.cli", "run", "old.toml", "--out", "out"]
        done = subprocess.run(command, env=env, cwd=other.place, capture_output=True, text=True)
        found = other.found() if other.out.is_dir() else {}
        record = found.pop("study.npz", "")
        records.add(record)
        apart = sorted(name for name, one in old.items() if name != "study.npz" and found.get(name) != one)
        good = not apart and record != "" and len(records) == 1
        expect(
            f"{what}, in another folder: {done.returncode}, the same bytes", good, (apart, done.stderr[-300:])
        )
    return wrong


def full_disk(site: Site, old: Set, expect: Expect) -> None:
    """Results on a disk of their own that has room for them once and a little, where one may be mounted."""
    disk = Site(site.place / "disk")
    disk.place.mkdir()
    size = sum(p.stat().st_size for p in site.out.iterdir())
    for share in (1.02, 1.3, 1.8):
        kilobytes = int(share * size / 1024) + 16
        mount = ["mount", "-t", "tmpfs", "-o", f"size={kilobytes}k", "none", str(disk.place)]
        if subprocess.run(mount, capture_output=True).returncode:
            print("  not tried: a full disk (nothing may be mounted here)")
            return
        try:
            shutil.copytree(site.out, disk.out)
            code, said = ended(begin(site, "new", out=disk.out))
            good = code == 2 and disk.found() == old and not disk.strays() and "Traceback" not in said
            expect(f"a disk with room for {share:g} sets of results: {code}", good, said[-400:])
        finally:
            subprocess.run(["umount", str(disk.place)], check=True)


def read_only(site: Site, old: Set, expect: Expect) -> None:
    """A package and a home that may not be written, into a folder that may, and into one that may not."""
    import crestcut

    package = Path(crestcut.__file__).parent
    for where, held, code in (("theirs", package, 0), ("out", site.out, 2), ("out/in/it", site.out, 2)):
        alone = 'mount --bind $0 $0 && mount -o remount,ro,bind $0 && exec "$@"'  # seen by no one else
        command = [sys.executable, "-m", "crestcut.apps.cli", "run", "old.toml", "--out", where]
        env = {**os.environ, "HOME": "/proc/none", "XDG_CACHE_HOME": "/proc/none"}
        done = subprocess.run(
            ["unshare", "-m", "sh", "-c", alone, str(held), *command],
            cwd=site.place, env=env, capture_output=True, text=True,
        )  # fmt: skip
        if done.stderr.startswith(("unshare:", "mount:")):
            print("  not tried: what may not be written (nothing may be mounted here)")
            return
        good = done.returncode == code and "Traceback" not in done.stderr and site.found() == old
        if done.returncode == 0:
            made = {p.name: digest(p) for p in (site.place / where).iterdir()}
            good = good and all(made.get(name) == one for name, one in old.items() if name != "study.npz")
        what = f"{'package and home' if code == 0 else 'output'} may not be written, --out {where}"
        expect(f"{what}: {done.returncode}", good, done.stderr[-400:])


def _all_new(site: Site, found: Set) -> bool:
    """Is a set the new job's, by running that alone?"""
    assert ended(begin(site, "new"))[0] in (0, 3)
    return site.found() == found


def main() -> int:
    """The command: 0 where all was whole."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--count", type=int, default=200)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--places", action="store_true")
    asked = ask.parse_args()
    from fuzz.reading import warm

    warm()
    with tempfile.TemporaryDirectory(prefix="kills") as place:
        site = Site(Path(place))
        site.make()
        wrong = places(site) if asked.places else kills(site, asked.count, asked.seed)
    print("\n".join(wrong) or "all whole")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
