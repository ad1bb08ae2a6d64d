"""Figures of the benches, kept per commit with the machine they ran on.

python tests/bench/history.py add NAME [arguments of the bench]   runs it and keeps its figures
python tests/bench/history.py compare [NAME ...]   the newest figures against those before, same machine and
                                                   same arguments; exit code 1 where one is worse by a fifth

A bench tells a figure by ``figure("sweep", 0.12, "s", "less")``: it is printed, and kept when the bench runs
under ``add``: one JSON object a line in ``history/NAME.jsonl``, in the order they came.
"""

from __future__ import annotations

import argparse
import json
import os
import platform
import subprocess
import sys
import tempfile
from dataclasses import asdict, dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

BENCH = Path(__file__).resolve().parent
HISTORY = BENCH / "history"
INTO = "CRESTCUT_FIGURES"  # names the file that a bench's figures go to
WORSE = 0.20  # share by which a figure may be worse: clocks on shared machines differ by as much


@dataclass(frozen=True)
class Figure:
    """One number of a bench.  better : less, more, or empty where neither is."""

    name: str
    value: float
    unit: str = ""
    better: str = ""

    def worse_than(self, before: float) -> bool:
        """Is it worse than it was, by more than clocks differ?"""
        up = self.value - before
        return abs(up) > WORSE * abs(before) and {"less": up > 0, "more": up < 0}.get(self.better, False)


def figure(name: str, value: float, unit: str = "", better: str = "") -> None:
    """Print one figure, and keep it where this bench runs under ``add``."""
    one = Figure(name, float(f"{value:.4g}"), unit, better)
    print(f"{name}: {one.value:g} {unit}".rstrip(), flush=True)
    if into := os.environ.get(INTO):
        with Path(into).open("a", encoding="utf-8") as held:
            held.write(json.dumps(asdict(one)) + "\n")


def add(name: str, arguments: list[str]) -> int:
    """Run a bench and append a line of what it told; its own exit code, or 1 where it told nothing."""
    line = run(name, arguments)
    if isinstance(line, int):
        return line
    keep(name, line)
    return 0


def run(name: str, arguments: list[str]) -> dict[str, Any] | int:
    """The line of what a bench tells when it is run; else its exit code, or 1 where it told nothing."""
    with tempfile.TemporaryDirectory() as folder:
        into = Path(folder) / "figures"
        command = [sys.executable, str(BENCH / f"{name}.py"), *arguments]
        done = subprocess.run(command, env={**os.environ, INTO: str(into)}, check=False)
        told = into.read_text(encoding="utf-8").splitlines() if into.exists() else []
    if done.returncode or not told:
        print(f"{name}: nothing kept ({'it failed' if done.returncode else 'it told no figure'})")
        return done.returncode or 1
    return {
        "date": datetime.now(UTC).strftime("%Y-%m-%d"), "commit": commit(), "machine": machine(),
        "arguments": arguments, "figures": [json.loads(one) for one in told],
    }  # fmt: skip


def keep(name: str, line: dict[str, Any]) -> None:
    """Append a line to the history of its bench."""
    HISTORY.mkdir(exist_ok=True)
    with (HISTORY / f"{name}.jsonl").open("a", encoding="utf-8") as held:
        held.write(json.dumps(line) + "\n")


def kept(name: str) -> list[dict[str, Any]]:
    """The lines of a bench, oldest first."""
    path = HISTORY / f"{name}.jsonl"
    return (
        [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines()] if path.exists() else []
    )


def commit() -> str:
    """The checkout's, with a plus where it holds changes that are in none; 'none' without git."""
    try:
        at, changed = (
            subprocess.run(["git", *words], cwd=BENCH, capture_output=True, text=True, check=True).stdout
            for words in (("rev-parse", "--short=10", "HEAD"), ("status", "--porcelain", "-uno"))
        )
    except (OSError, subprocess.CalledProcessError):
        return "none"
    return at.strip() + ("+" if changed.strip() else "")


def machine() -> str:
    """Processor, cores and Python: figures are compared on the same only."""
    try:
        text = Path("/proc/cpuinfo").read_text(encoding="utf-8")
        kind = next(row.split(":", 1)[1].strip() for row in text.splitlines() if row.startswith("model name"))
    except (OSError, StopIteration):
        kind = platform.processor() or platform.machine()
    return f"{kind}, {os.cpu_count()} cores, {platform.system()}, Python {platform.python_version()}"


def compare(name: str) -> bool:
    """Print the newest figures of a bench beside those before; is none of them worse?"""
    lines = kept(name)
    now = lines[-1]
    like = [x for x in lines[:-1] if all(x[k] == now[k] for k in ("machine", "arguments"))]
    before = like[-1] if like else None
    was = {f["name"]: f["value"] for f in before["figures"]} if before else {}
    print(f"{name} at {now['commit']}, {now['date']}" + (f", before {before['commit']}" if before else ""))
    good = True
    for one in (Figure(**f) for f in now["figures"]):
        old = was.get(one.name)
        bad = old is not None and one.worse_than(old)
        good &= not bad
        beside = "" if old is None else f"   was {old:g}{'   WORSE' if bad else ''}"
        print(f"  {one.name:44s} {one.value:10g} {one.unit:6s}{beside}")
    return good


def main() -> int:
    """As the head of this file says."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    asked.add_argument("what", choices=("add", "compare"))
    asked.add_argument("names", nargs=argparse.REMAINDER)
    given = asked.parse_args()
    known = sorted(p.stem for p in BENCH.glob("*.py") if p.stem not in ("history", "all"))
    if given.what == "add":
        if not given.names or given.names[0] not in known:
            asked.error(f"name a bench: {', '.join(known)}")
        return add(given.names[0], given.names[1:])
    there = sorted(p.stem for p in HISTORY.glob("*.jsonl"))
    if unknown := [n for n in given.names if n not in there]:
        asked.error(f"no figures are kept of {', '.join(unknown)}; there are of {', '.join(there) or 'none'}")
    return 0 if all([compare(name) for name in given.names or there]) else 1


if __name__ == "__main__":
    sys.exit(main())
