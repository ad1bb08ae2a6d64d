"""Simulated scans of slabs of known shape, judged from points to verdict: error of the best estimate, width
and truth of the 95 % interval, family by family. Prints data, figures and seconds.

python tests/bench/judged.py [--count N] [--family NAME ...] [--first SEED] [--minutes M] [--scan MM]
                             [--named HOW] [--rows FILE] [--against FILE]

``tests/slab_scans.py`` draws slab, waves, scan and vehicle; settings go round in a shuffled order, so that
any count is spread over them.  --rows writes every case as a line of CSV.  --against reads such lines of
another version and compares both on the cases that they share.
"""

from __future__ import annotations

import argparse
import csv
import itertools
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict, dataclass, fields, replace
from pathlib import Path
from typing import Self

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from crestcut.chance.assess import assess_chance
from crestcut.job.records import Wanted
from slab_scans import FAMILIES, Case, Setting, fitted, passed, simulated

WAVES, HALVES, SCANS = (0.0003, 0.002, 0.0035), (0.4, 0.8, 1.5), (0.0003, 0.0025, 0.005)  # m
NAMED = ("right", "wrong", "none")
Verdict = Callable[[Case, Setting, int], tuple[float, float, float, float]]


@dataclass(frozen=True)
class Row:
    """One case: truth, best estimate, ends of the interval, gap of the swept surface, m."""

    family: str
    waves: float
    half: float
    scan: float
    named: str
    seed: int
    truth: float
    said: float
    low: float
    high: float
    swept: float

    @classmethod
    def read(cls, line: dict[str, str]) -> Self:
        """From a line of CSV."""
        kinds = {"family": str, "named": str, "seed": int}
        return cls(**{f.name: kinds.get(f.name, float)(line[f.name]) for f in fields(cls)})

    @property
    def key(self) -> tuple[object, ...]:
        """What was simulated."""
        return (self.family, self.waves, self.half, self.scan, self.named, self.seed)


def judged(case: Case, setting: Setting, seed: int) -> tuple[float, float, float, float]:
    """Best estimate, interval and swept gap, m, from the case's points."""
    # here, so that a version without them can still be measured by a verdict of its own
    from crestcut.terrain.error.estimate import NOT_YET, estimate_error
    from crestcut.terrain.slab.behind import slab_behind

    seen = fitted(case, NOT_YET)
    surface = slab_behind(seen, estimate_error(case.scan, seen.height, setting.scanner), seed=seed)
    passage = passed(case.vehicle, surface, case.line)
    return verdict_of(passage, surface.error, seed)


def verdict_of(passage, error, seed):  # type: ignore[no-untyped-def]
    """(best estimate, low, high, swept), m."""
    scanned = replace(passage, surface=replace(passage.surface, error=error))
    chance = assess_chance(scanned, Wanted(), seed)
    return (chance.least_clearance, *chance.interval, passage.clearance.worst.gap)


def settings_of(family: str, scans: Sequence[float], named: Sequence[str]) -> Iterator[Setting]:
    """Every setting of a family, in an order shuffled anew each round, without end."""
    every = list(itertools.product(WAVES, HALVES, scans, named))
    rng = np.random.default_rng(list(FAMILIES).index(family))
    while True:
        for k in rng.permutation(len(every)):
            yield Setting(family, *every[k])


def cases(families: Sequence[str], scans: Sequence[float], named: Sequence[str], count: int, first: int):  # type: ignore[no-untyped-def]
    """(setting, seed) family after family, round by round."""
    each = [settings_of(f, scans, named) for f in families]
    for number in range(count):
        for k, some in enumerate(each):
            yield next(some), first + 1000 * number + k


def summed(name: str, rows: Sequence[Row]) -> str:
    """One line of figures, mm."""
    if not rows:
        return f"{name:14s} none"
    truth, said, low, high, swept = (
        np.array([getattr(r, n) for r in rows]) * 1e3 for n in ("truth", "said", "low", "high", "swept")
    )
    miss, off, held = said - truth, swept - truth, (low <= truth) & (truth <= high)
    return (
        f"{name:14s} n {len(rows):4d}  mean {miss.mean():+6.2f}  sd {miss.std():5.2f}  "
        f"width {np.median(high - low):5.1f}  held {held.mean() * 100:5.1f} %  "
        f"swept: mean {off.mean():+6.2f}  sd {off.std():5.2f}"
    )


def table(rows: Sequence[Row]) -> str:
    """Families, then sizes of scan error, names and waves, then all of it."""
    ran = {r.family for r in rows}
    lines = [summed(f, [r for r in rows if r.family == f]) for f in FAMILIES if f in ran]
    for what, values in (("scan", SCANS), ("waves", WAVES), ("half", HALVES), ("named", NAMED)):
        for value in values:
            label = f"{value * 1e3:g} mm" if what in ("scan", "waves") else str(value)
            lines.append(summed(f"{what} {label}", [r for r in rows if getattr(r, what) == value]))
    return "\n".join([*lines, summed("all", rows)])


def compared(rows: Sequence[Row], others: Sequence[Row]) -> str:
    """Both versions on the cases that they share, by the scan's error."""
    by_key, lines = {r.key: r for r in others}, []
    for scan in (*SCANS, None):
        both = [(r, by_key[r.key]) for r in rows if r.key in by_key and scan in (None, r.scan)]
        if not both:
            continue
        sd, width = (
            [float(f([m(pair[k]) for pair in both])) for k in (0, 1)]
            for f, m in ((np.std, lambda r: r.said - r.truth), (np.median, lambda r: r.high - r.low))
        )
        name = "all shared" if scan is None else f"scan {scan * 1e3:g} mm"
        lines += [summed(f"{name}", [p[0] for p in both]), summed("  the other", [p[1] for p in both])]
        lines.append(f"  ratios: sd {sd[0] / sd[1]:.2f}, width {width[0] / width[1]:.2f}")
    return "\n".join(lines)


def write(path: Path, rows: Sequence[Row]) -> None:
    """As CSV."""
    with path.open("w", newline="") as file:
        out = csv.DictWriter(file, [f.name for f in fields(Row)])
        out.writeheader()
        out.writerows(asdict(r) for r in rows)


def read(path: Path) -> list[Row]:
    """What ``write`` wrote."""
    with path.open(newline="") as file:
        return [Row.read(line) for line in csv.DictReader(file)]


def main(verdict: Verdict = judged) -> None:
    """verdict : the version that is measured."""
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--count", type=int, default=25, help="scans of each family")
    ask.add_argument("--family", nargs="*", default=list(FAMILIES), choices=list(FAMILIES))
    ask.add_argument("--first", type=int, default=0, help="first seed")
    ask.add_argument("--minutes", type=float, default=float("inf"), help="no case is begun after these")
    ask.add_argument("--scan", nargs="*", type=float, default=[s * 1e3 for s in SCANS], help="mm")
    ask.add_argument("--named", nargs="*", default=list(NAMED), choices=list(NAMED))
    ask.add_argument("--rows", type=Path)
    ask.add_argument("--against", type=Path)
    asked = ask.parse_args()
    scans = [round(s * 1e-3, 6) for s in asked.scan]
    start, rows = time.perf_counter(), []
    for setting, seed in cases(asked.family, scans, asked.named, asked.count, asked.first):
        if time.perf_counter() - start > 60 * asked.minutes:
            break
        case = simulated(setting, seed)
        rows.append(Row(*asdict(setting).values(), seed, case.truth, *verdict(case, setting, seed)))
        if asked.rows:
            write(asked.rows, rows)
    print(table(rows))
    if asked.against:
        print(compared(rows, read(asked.against)))
    print(f"{time.process_time() / max(len(rows), 1):.1f} processor seconds a case")


if __name__ == "__main__":
    main()
