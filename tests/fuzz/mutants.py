"""A seeded sample of small wrongs put into the package, each held against the tests that run its line.

``.venv/bin/python tests/fuzz/mutants.py --room cut --count 30 --seed 1`` names what no test noticed; without a
room some of every room's (``ROOMS``). ``--module contact/stand/ride.py`` takes that module alone, ``--line 120``
that line alone.

1. Each test file of a room is run once with coverage of the room: which test runs which line, how long it
   takes. Kept in ``build/mutants`` until the file or the room changes. Loops that are compiled are tried uncompiled (a test
   of them that takes over ``SLOW`` seconds so is left out).
2. A wrong is put in as the module is imported, no file is touched. The tests that run its line are tried,
   the quickest first, until one fails or ``ENOUGH`` seconds are over; what hangs is noticed. Of one that lives
   it is said how many tests of its line were left out so.

Left alone: annotations, decorators, what stands in an f-string (a text), and modules that only hold words. Wrongs
that nothing can notice stand in ``survivors.toml``; a score is noticed / (made - those).
"""

from __future__ import annotations

import argparse
import hashlib
import importlib
import json
import os
import signal
import subprocess
import sys
import tempfile
import time
import tomllib
from collections.abc import Callable, Generator
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from random import Random

import pytest
from wrongs import PACKAGE, Wrong, Wronged, all_wrongs

ROOT = Path(__file__).resolve().parents[2]
KEPT = ROOT / "build" / "mutants"
SLOW = 3  # s that one test may take uncompiled
LONG = 20.0  # s of work over three times what a test takes: it hangs
ENOUGH = 60.0  # s of tests that one wrong is held against, as they take when all is right, the quickest first

# room -> (its modules, the tests they are held against)
ROOMS: dict[str, tuple[str, str]] = {
    "contact": (
        "contact/*.py contact/*/*.py",
        "contact/*.py test_kernels.py published/test_turning.py published/test_loaded_vehicle.py",
    ),
    "cut": (
        "cut/*.py",
        "cut/*.py work/test_release.py published/test_slab_limits.py",
    ),
    "chance": (
        "chance/*.py",
        "chance/*.py terrain/test_all_points.py published/test_uncertainty.py",
    ),
    "work/release": ("work/release.py", "work/test_release.py work/test_instead.py published/test_slab_limits.py"),
    "verify": (
        "verify/*.py",
        "verify/*.py published/test_edges_after_work.py",
    ),
}  # fmt: skip
WORDS = ("__init__.py", "words.py", "doubt_words.py")  # read by the tests of what is said
UNCOMPILED = (  # small enough
    *("contact/test_small_kernels.py", "contact/test_tyres.py", "contact/test_springs.py"),
    *("contact/test_soft.py", "cut/test_feather_limits.py"),
)


class Clock:
    """A pytest plugin: no test longer than a limit (s by its name; none for others), and how long each took that
    passed."""

    def __init__(self, limits: Callable[[str], float]) -> None:
        self.limits, self.took = limits, dict[str, float]()
        signal.signal(signal.SIGPROF, too_slow)

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_call(self, item: pytest.Item) -> Generator[None, object, object]:
        """The alarm is on inside a test alone, where it is a failure and nothing else."""
        signal.setitimer(signal.ITIMER_PROF, self.limits(item.nodeid))  # of work: the machine may be busy
        try:
            return (yield)
        finally:
            signal.setitimer(signal.ITIMER_PROF, 0)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if not report.passed:
            self.took[report.nodeid] = float("inf")
        self.took[report.nodeid] = self.took.get(report.nodeid, 0.0) + report.duration


def too_slow(*_: object) -> None:
    """What the alarm of a test does."""
    raise TimeoutError("takes too long")


def measure(room: str, test: str, uncompiled: bool, into: Path) -> None:
    """In a process of its own: run a test file with coverage, write each test's time."""
    clock = Clock(lambda _: SLOW if uncompiled else 0)
    watched = f"--cov=crestcut.{room.partition('/')[0]}"  # all of the package would take twice as long
    plain = f"--cov-config={os.devnull}"  # of lines, not of branches or of what a test starts
    told = ["-p", "no:cacheprovider", watched, plain, "--cov-context=test", "--cov-report=", test]
    ended = pytest.main(told, [clock])
    assert ended in (0, 1), f"{test}: broke off ({ended})"
    into.write_text(json.dumps(clock.took))


def sources(room: str) -> str:
    """A digest of a room's code."""
    return hashlib.sha256(b"".join((PACKAGE / m).read_bytes() for m in modules_of(room))).hexdigest()


Found = dict[str, dict[str, object]]  # test -> {"took": s, "lines": {module: lines}}


def lines_of(room: str, test: Path, uncompiled: bool, package: str) -> Found:
    """What each test of a file runs and how long it takes; from what is kept where nothing has changed."""
    from coverage import CoverageData

    key = hashlib.sha256(test.read_bytes() + package.encode() + bytes([uncompiled])).hexdigest()[:20]
    kept = KEPT / f"{test.stem}-{key}.json"
    if not kept.exists():
        KEPT.mkdir(parents=True, exist_ok=True)
        data, times = KEPT / f"{key}.coverage", KEPT / f"{key}.times"
        env = {**os.environ, "COVERAGE_FILE": str(data), "NUMBA_DISABLE_JIT": str(int(uncompiled))}
        told = [room, str(test.relative_to(ROOT)), str(int(uncompiled)), str(times)]
        command = [sys.executable, __file__, "--measure", *told]
        for _ in range(3):  # an alarm that falls where pytest is at its own work breaks it off
            if not subprocess.run(command, cwd=ROOT, env=env, capture_output=True, check=False).returncode:
                break
        else:
            raise RuntimeError(f"{test}: breaks off")
        found: Found = {
            n: {"took": s, "lines": {}} for n, s in json.loads(times.read_text()).items() if s < 1e9
        }
        seen = CoverageData(str(data))
        seen.read()
        for file in seen.measured_files():
            if not Path(file).is_relative_to(PACKAGE):
                continue
            module = Path(file).relative_to(PACKAGE).as_posix()
            for line, contexts in seen.contexts_by_lineno(file).items():
                for name in {c.rpartition("|")[0] for c in contexts} & set(found):
                    found[name]["lines"].setdefault(module, []).append(line)  # type: ignore[attr-defined]
        kept.write_text(json.dumps(found))
        data.unlink(missing_ok=True)  # none where every test is too slow
        times.unlink()
    loaded: Found = json.loads(kept.read_text())
    return loaded


def tests_for(wrong: Wrong, known: Found) -> tuple[list[str], int]:
    """The tests that run its lines (all of its module where it runs as that is imported), the quickest first; then
    the rest of their files, whose scenes stand by then; no more than take ``ENOUGH`` seconds. And how many of
    the first are left out."""

    def runs(name: str) -> bool:
        lines = known[name]["lines"].get(wrong.module, [])  # type: ignore[attr-defined]
        return bool(lines) and (not set(wrong.lines).isdisjoint(lines))

    first = [name for name in known if runs(name)]
    if not first:
        first = [name for name in known if wrong.module in known[name]["lines"]]  # type: ignore[operator]
    files = {name.partition("::")[0] for name in first}
    rest = [name for name in known if name.partition("::")[0] in files and name not in first]
    chosen, total = [], 0.0
    for group in (first, rest):
        for name in sorted(group, key=lambda n: float(known[n]["took"])):  # type: ignore[arg-type]
            took = float(known[name]["took"])  # type: ignore[arg-type]
            if total + took <= ENOUGH or not chosen:
                chosen.append(name)
                total += took
    return chosen, len(set(first) - set(chosen))


def noticed(wrong: Wrong, tests: dict[str, float]) -> bool:
    """Does one of the tests (with the s that each takes) fail with it, or take far longer? In a fork, which has
    loaded all that is not the package's."""
    child = os.fork()
    if not child:
        code = 3
        try:
            os.setsid()
            quiet = os.open(os.devnull, os.O_RDWR)
            for out in (0, 1, 2):
                os.dup2(quiet, out)
            import numba

            numba.config.DISABLE_JIT = wrong.kernel
            os.environ["NUMBA_DISABLE_JIT"] = str(int(wrong.kernel))
            sys.meta_path.insert(0, Wronged(wrong))
            clock = Clock(lambda name: LONG + 3 * tests.get(name, 0.0))
            code = int(pytest.main(["-q", "-x", "-p", "no:cacheprovider", "-p", "no:cov", *tests], [clock]))
        finally:
            os._exit(code)
    until = time.monotonic() + 300 + 5 * sum(tests.values())  # what hangs where no signal reaches it
    ended, status = 0, 0
    while not ended and time.monotonic() < until:
        ended, status = os.waitpid(child, os.WNOHANG)
        time.sleep(0.02)
    with suppress(ProcessLookupError):
        os.killpg(child, signal.SIGKILL)  # and what it began
    if not ended:
        os.waitpid(child, 0)
    return not ended or status != 0


def preload() -> None:
    """Load what the package stands on, so that each fork has it. Not what begins threads of its own."""
    code = "import sys, crestcut.apps.run as r; r.load_all(); print(*sys.modules)"
    names = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True
    ).stdout.split()
    left = ("crestcut", "open3d", "distributed", "dask", "matplotlib.pyplot", "__", "site", "encodings")
    for name in ["pytest", *names]:
        if not name.startswith(left):
            with suppress(Exception):
                importlib.import_module(name)


def stand_up(room: str) -> None:
    """The planned job that the tests of verify share, made once for all forks: only rooms before that one make it,
    and a wrong is in none of those. Its gaps are not cast a second time, since that library begins threads."""
    if room != "verify":
        return
    sys.path.insert(0, str(ROOT / "tests"))
    scene, making, cut = map(
        importlib.import_module, ("verify.after_scene", "crestcut.study.making", "crestcut.cut")
    )
    caster, making.load_caster = making.load_caster, lambda: cut.NotCast("", "not cast")
    kept = scene.planned_job(Path(tempfile.mkdtemp(prefix="mutants_")), scene.walked(1))
    making.load_caster, scene.planned_job = caster, lambda *_: kept
    assert not any(name.startswith("crestcut.verify") for name in sys.modules)


def listed() -> dict[tuple[str, str, str], str]:
    """(module, text of the line, what was and is there) of the survivors that were looked into -> why."""
    rows = tomllib.loads((Path(__file__).parent / "survivors.toml").read_text())["lived"]
    return {(r["module"], r["at"], r["wrong"]): r["why"] for r in rows}


def modules_of(room: str) -> list[str]:
    """Modules of a room, without those of words."""
    found = [p for pattern in ROOMS[room][0].split() for p in PACKAGE.glob(pattern)]
    return sorted(p.relative_to(PACKAGE).as_posix() for p in found if p.name not in WORDS)


def known_tests(room: str, uncompiled: bool, package: str) -> Found:
    """What each test of a room runs."""
    found = [
        p
        for pattern in ROOMS[room][1].split()
        for p in (ROOT / "tests").glob(pattern)
        if p.name[:5] == "test_"
    ]
    known: Found = {}
    for path in sorted(found):
        if not uncompiled or path.relative_to(ROOT / "tests").as_posix() in UNCOMPILED:
            known |= lines_of(room, path, uncompiled, package)
    return known


def hold(room: str, asked: argparse.Namespace) -> tuple[int, int, int]:
    """Try a room's sample; (made, noticed, those that nothing can notice)."""
    every = [w for module in modules_of(room) for w in all_wrongs(module)]
    if asked.module:
        every = [w for w in every if w.module == asked.module and asked.line in (0, *w.lines)]
    some = Random(asked.seed).sample(every, min(asked.count, len(every)))
    package = sources(room)
    known = {compiled: known_tests(room, compiled, package) for compiled in {w.kernel for w in some}}
    seen, equal, why = 0, 0, listed()
    for number, wrong in enumerate(some):
        names, left = tests_for(wrong, known[wrong.kernel])
        tests = {n: float(known[wrong.kernel][n]["took"]) for n in names}  # type: ignore[arg-type]
        if not tests:
            print(f"  {wrong.module} line {wrong.lines[-1]}: no test runs it", flush=True)
        right = replace(wrong, text=(PACKAGE / wrong.module).read_text(encoding="utf-8"))
        assert number or not tests or not noticed(right, tests), f"{room}: the tests fail as it is"
        began = time.monotonic()
        found = bool(tests) and noticed(wrong, tests)
        seen += found
        if asked.each:
            print(
                f"  {'noticed' if found else 'LIVED'} {time.monotonic() - began:.0f} s {wrong.told}",
                flush=True,
            )
        if not found:
            reason = why.get((wrong.module, wrong.at, wrong.told), "open: not looked into")
            equal += reason.startswith("equivalent")
            entry = {"module": wrong.module, "at": wrong.at, "wrong": wrong.told, "why": reason}
            told = [f"{k} = {json.dumps(v)}" for k, v in entry.items()]
            more = f"; {left} tests of it left out" if left else ""
            print(f"# {room} line {wrong.lines[-1]}{more}", "[[lived]]", *told, "", sep="\n", flush=True)
    return len(some), seen, equal


def main() -> int:
    """The command."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--room", choices=ROOMS, action="append")
    ask.add_argument("--module", default="", help="one module of the room, under pipeline/crestcut")
    ask.add_argument("--line", type=int, default=0, help="one line of it")
    ask.add_argument("--count", type=int, default=25, help="of each room")
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--each", action="store_true", help="a line for each")
    ask.add_argument("--measure", nargs=4, help=argparse.SUPPRESS)
    asked = ask.parse_args()
    if asked.measure:
        measure(*asked.measure[:2], asked.measure[2] == "1", Path(asked.measure[3]))
        return 0
    total = [0, 0, 0]
    preload()
    for room in asked.room or sorted(
        ROOMS, key=lambda room: room == "verify"
    ):  # whose scene loads the others
        stand_up(room)
        made, seen, equal = hold(room, asked)
        total = [a + b for a, b in zip(total, (made, seen, equal), strict=True)]
        print(f"{room}: {seen} noticed of {made}, {equal} that nothing can notice\n", flush=True)
    print(f"all: {total[1]} of {total[0] - total[2]}, {total[1] / max(1, total[0] - total[2]):.0%}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
