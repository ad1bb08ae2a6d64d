"""How much of long work is done and what remains: by what each of its stages took the last time, or usually
takes.

With usual seconds u of each stage and pace p (seconds now for a usual one) what remains is p times the usual
seconds that remain. p is taken from the stages that are over, and from the one at work as soon as that takes
longer than they led one to think: an estimate that stands still while a stage drags on would be too low by
all that it drags on the rest as well.
"""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Mapping
from pathlib import Path

# s of each stage of a run on two cores with the sample, in their order
USUAL: Mapping[str, float] = {
    "scan": 0.6, "surface": 3.1, "split": 5.7, "readings": 0.1, "ride": 0.2, "sweep": 0.4, "chance": 0.6,
    "cut": 1.7, "chance after": 0.1, "ray cast": 0.3, "options": 0.6, "write": 3.0,
}  # fmt: skip
STEADY = 3.0  # s of usual pace taken for seen beforehand: one short stage does not say how fast a machine is


class Pace:
    """Told of each stage as it begins, by its key; without keys nothing is claimed.

    usual : s of each stage, in their order. A stage of a run that it lacks was left out that time: should it
    begin now, it is taken as in ``USUAL``, and so are the others that were left out.
    """

    def __init__(
        self, usual: Mapping[str, float] = USUAL, clock: Callable[[], float] = time.monotonic
    ) -> None:
        self.usual, self.clock = dict(usual), clock
        self.spent: dict[str, float] = {}
        self.key: str | None = None
        self.since = clock()
        self._most = 0.0

    def begins(self, key: str | None) -> None:
        """A step begins; one without a key is part of the one before it, and the first of all begins anew."""
        if key is None:
            return
        self.ends()
        if key in USUAL and key not in self.usual:
            self.usual = {k: self.usual.get(k, s) for k, s in USUAL.items()}
        if key == next(iter(self.usual), None):
            self.spent, self._most = {}, 0.0
        self.key = key

    def ends(self) -> None:
        """The stage at work is over."""
        now = self.clock()
        if self.key is not None:
            self.spent[self.key] = self.spent.get(self.key, 0.0) + now - self.since
        self.key, self.since = None, now

    def share(self) -> tuple[float, float] | None:
        """How much is done, 0 to 0.99, and about how many seconds remain; None where that is not known."""
        if self.key is None or self.key not in self.usual:
            return None
        order, here = list(self.usual), self.clock() - self.since
        before = order[: order.index(self.key)]
        over = sum(self.usual[key] for key in before if key in self.spent)
        spent = sum(self.spent.get(key, 0.0) for key in before)
        usual, whole = self.usual[self.key], sum(self.usual.values())
        pace = (spent + STEADY) / (over + STEADY)
        if here > usual * pace:
            pace = (spent + here + STEADY) / (over + usual + STEADY)
        passed = min(here / pace, usual)
        done = sum(self.usual[key] for key in before) + passed  # what was left out counts as done
        self._most = max(self._most, min(done / whole, 0.99))
        return self._most, max((whole - done) * pace, 1.0)

    def words(self) -> str:
        """Like "41 %, about 12 s to go"; "" where it is not known."""
        told = self.share()
        return "" if told is None else f"{told[0]:.0%}, about {told[1]:.0f} s to go"


def seconds_of(result: Path, job: str) -> dict[str, float]:
    """What each stage of the last run of a job took, s, by the ``result.json`` that it left; ``USUAL`` where
    there is none of that job. job : name of its file.
    """
    try:
        told = json.loads(result.read_text(encoding="utf-8"))
        same = any(row["role"] == "job" and row["file"] == job for row in told["inputs"])
        found = {key: float(told["seconds"][key]) for key in USUAL if key in told["seconds"]}
    except (OSError, ValueError, LookupError, TypeError):
        return dict(USUAL)
    return found if same and sum(found.values()) > 0 else dict(USUAL)
