"""Thousands of broken files against every reader.

``.venv/bin/python tests/fuzz/campaign.py --seconds 60 --seed 1``

Case n of a seed is the same file on any machine. What breaks a rule (``reading.Outcome.fault``) is made as
small as it goes and put into ``--keep``, one file for each fault: to be named and moved to ``tests/broken``
once it is mended. ``--only las,job`` draws from some kinds alone; ``--first N`` begins at case N.
"""

from __future__ import annotations

import argparse
import collections
import gc
import os
import shutil
import subprocess
import sys
import tempfile
import time
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from fuzz import reading
from fuzz.mutators import fill_in
from fuzz.reading import Outcome, Watch, read_case
from fuzz.seeds import Kind, all_kinds

BROKEN = Path(__file__).resolve().parents[1] / "broken"
_PATIENCE = 60  # seconds for a whole command, on a machine with other work
ENOUGH = 60  # seconds for making one case small
_SAME = 3  # cases of one fault that are kept


@dataclass
class Tally:
    """What a campaign found. faults : by kind and rule the first cases that broke it."""

    cases: int = 0
    read: int = 0
    refused: int = 0
    caged: int = 0
    slowest: float = 0.0
    largest: int = 0
    by_kind: collections.Counter[str] = field(default_factory=collections.Counter)
    faults: dict[tuple[str, str], list[tuple[int, Outcome]]] = field(default_factory=dict)
    lines: collections.Counter[str] = field(default_factory=collections.Counter)

    def add(self, number: int, kind: Kind, outcome: Outcome) -> None:
        """Count one case."""
        self.cases += 1
        self.by_kind[kind.name] += 1
        self.slowest, self.largest = max(self.slowest, outcome.seconds), max(self.largest, outcome.memory)
        if outcome.fault:
            self.faults.setdefault((kind.name, outcome.fault), []).append((number, outcome))
        elif outcome.said.startswith("(died"):
            self.caged += 1
        elif outcome.said:
            self.refused += 1
        else:
            self.read += 1


class Bench:
    """A warm process with a folder for cases; each is read in a fork."""

    def __init__(self, place: Path) -> None:
        sys.setrecursionlimit(10_000)  # for the changes; a fork gets back what a command has
        reading.warm()
        self.kinds = all_kinds()
        self.place = place
        self.watch = Watch(place / "outside")
        gc.freeze()  # pages that no fork has to copy

    def case(self, seed: int, number: int, only: tuple[str, ...] = ()) -> tuple[Kind, str, bytes]:
        """(kind, file name, bytes) of case ``number``."""
        rng = Random(f"{seed} {number}")
        kinds = [self.kinds[name] for name in only] if only else list(self.kinds.values())
        kind = rng.choices(kinds, [k.weight for k in kinds])[0]
        name, data = rng.choice(kind.seeds)
        return kind, name, mutated(kind, data, rng)

    def read(self, kind: Kind, name: str, data: bytes, seconds: float = reading.SECONDS) -> Outcome:
        """The case as a file in a folder of its own, read and judged."""
        folder = self.place / "case"
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir()
        for beside, content in kind.beside:
            (folder / beside).write_bytes(content)
        (folder / name).write_bytes(fill_in(data, self.watch.port))
        self.watch.seen()
        return read_case(folder / name, kind.target, self.watch, seconds)


@contextmanager
def bench() -> Iterator[Bench]:
    """A bench in a folder that goes again."""
    with tempfile.TemporaryDirectory(prefix="fuzz") as place:
        made = Bench(Path(place))
        yield made
        made.watch.close()


def mutated(kind: Kind, data: bytes, rng: Random) -> bytes:
    """``data`` after one change mostly, now and then after three."""
    for _ in range(rng.choice([1, 1, 1, 2, 3])):
        before = data
        try:
            data = rng.choice(kind.mutates)(data, rng)
        except Exception:  # the change wants a whole file, and an earlier one broke it
            data = before
    return data


def campaign(
    made: Bench, seconds: float, seed: int, only: tuple[str, ...] = (), first: int = 0, most: int = 10**9
) -> Tally:
    """Cases from ``first`` on for so many seconds, or ``most`` of them."""
    tally, until = Tally(), time.monotonic() + seconds
    number = first
    while time.monotonic() < until and tally.cases < most:
        kind, name, data = made.case(seed, number, only)
        tally.add(number, kind, made.read(kind, name, data))
        number += 1
    return tally


def smaller(made: Bench, kind: Kind, name: str, data: bytes, fault: str) -> bytes:
    """The case with all taken out that its fault does not need (delta debugging: A. Zeller, R. Hildebrandt,
    Simplifying and isolating failure-inducing input, IEEE TSE 28(2), 2002, here from halves down to single
    lines and bytes)."""
    until = time.monotonic() + ENOUGH

    def still(part: bytes) -> bool:
        return bool(part) and made.read(kind, name, part).fault == fault

    if fault == "hang" or not still(data):
        return data  # each try would cost its ten seconds
    for joint in (b"\n", b""):
        pieces = data.split(joint) if joint else [data[i : i + 1] for i in range(len(data))]
        size = len(pieces) // 2
        while size >= 1 and time.monotonic() < until:
            at = 0
            while at < len(pieces) and time.monotonic() < until:
                fewer = pieces[:at] + pieces[at + size :]
                if still(joint.join(fewer)):
                    pieces = fewer
                else:
                    at += size
            size //= 2
        data = joint.join(pieces)
    return data


def known_faults(made: Bench, folder: Path = BROKEN) -> list[str]:
    """What is wrong with how the files of ``tests/broken`` are read now; empty where nothing is."""
    rows = tomllib.loads((folder / "lines.toml").read_text(encoding="utf-8"))["file"]
    listed = {row["name"] for row in rows} | {"lines.toml"}
    wrong = [f"{p.name} stands in no line" for p in sorted(folder.iterdir()) if p.name not in listed]
    for row in rows:
        kind = Kind(row["name"], row["as"], (), ())
        found = made.read(kind, row["name"], (folder / row["name"]).read_bytes())
        if found.fault:
            wrong.append(f"{row['name']}: {found.fault} {found.detail[-400:]}")
        elif row["says"] not in found.said or bool(row["says"]) != bool(found.said):
            wrong.append(f"{row['name']}: says {found.said!r}")
    return wrong


def by_command(made: Bench, count: int, seed: int) -> list[str]:
    """What was wrong with ``count`` cases given to the real command line, with its cage and all."""
    words = {"scan": "look", "vehicle": "vehicle", "sheet": "vehicle", "job": "run", "floor": "floor"}
    only = tuple(name for name, kind in made.kinds.items() if kind.target in words)
    wrong, codes = [], collections.Counter[int]()
    for number in range(count):
        kind, name, data = made.case(seed, number, only)
        folder = made.place / "command"
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir()
        for beside, content in (*kind.beside, (name, fill_in(data, made.watch.port))):
            (folder / beside).write_bytes(content)
        made.watch.seen()
        command = [sys.executable, "-m", "crestcut.apps.cli", words[kind.target], name, "--out", "out"]
        what = f"command case {number} ({kind.name})"
        try:
            done = subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=_PATIENCE)
        except subprocess.TimeoutExpired:
            wrong.append(f"{what}: over {_PATIENCE} s")
            continue
        codes[done.returncode] += 1
        last = (done.stderr.rstrip("\n").splitlines() or [""])[-1]
        fault, detail = reading.judged("said" if done.returncode == 2 else "read", last)
        if seen := made.watch.seen():
            fault = ", ".join(seen)
        if fault or done.returncode not in (0, 2, 3) or "Traceback" in done.stderr:
            wrong.append(f"{what}: exit {done.returncode} {fault} {detail or done.stderr[-400:]}")
        elif done.returncode == 2 and (folder / "out").exists():
            wrong.append(
                f"{what}: refused, and yet wrote {sorted(p.name for p in (folder / 'out').iterdir())}"
            )
    print(f"{count} cases by the command line; exit codes {dict(sorted(codes.items()))}")
    return wrong


def told(tally: Tally, seconds: float) -> str:
    """The tally in words."""
    lines = [
        f"{tally.cases:,} cases, {seconds:.0f} s: {tally.read:,} read, {tally.refused:,} refused in a line, "
        f"{tally.caged:,} died in the cage, {sum(map(len, tally.faults.values())):,} broke a rule; "
        f"slowest {tally.slowest:.1f} s, most memory {tally.largest / 2**20:.0f} MiB",
        "  " + ", ".join(f"{name} {count:,}" for name, count in sorted(tally.by_kind.items())),
    ]
    for (kind, fault), cases in sorted(tally.faults.items()):
        lines.append(f"  {kind}: {fault}: {len(cases)} (case {', '.join(str(n) for n, _ in cases[:5])})")
    return "\n".join(lines)


def main() -> int:
    """The command: 0 where no case broke a rule."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--seconds", type=float, default=60.0)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--first", type=int, default=0)
    ask.add_argument("--cases", type=int, default=10**9)
    ask.add_argument("--only", default="")
    ask.add_argument("--keep", type=Path, help="folder for what broke a rule, made small")
    ask.add_argument("--show", action="store_true", help="print the details of each fault")
    ask.add_argument("--broken", action="store_true", help="read tests/broken again, and no more")
    ask.add_argument("--commands", type=int, default=0, help="so many cases by the real command line instead")
    asked = ask.parse_args()
    only = tuple(filter(None, asked.only.split(",")))
    with bench() as made:
        if asked.broken or asked.commands:
            wrong = by_command(made, asked.commands, asked.seed) if asked.commands else known_faults(made)
            print("\n".join(wrong))
            return 1 if wrong else 0
        began = time.monotonic()
        tally = campaign(made, asked.seconds, asked.seed, only, asked.first, asked.cases)
        print(told(tally, time.monotonic() - began), flush=True)
        for (name, fault), cases in sorted(tally.faults.items()):
            if asked.show:
                print(f"--- {name}: {fault}\n{cases[0][1].detail}", flush=True)
            if asked.keep is not None:
                number = cases[0][0]
                kind, file, data = made.case(asked.seed, number, only)
                data = smaller(made, kind, file, data, fault)
                asked.keep.mkdir(parents=True, exist_ok=True)
                kept = asked.keep / f"{name}_{number}{Path(file).suffix}"
                kept.write_bytes(data)
                print(f"kept {kept} ({len(data):,} bytes)", flush=True)
    return 1 if tally.faults else 0


if __name__ == "__main__":
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    sys.exit(main())
