"""A few half-done jobs of the bench (``tests/bench/verify.py``, which runs many): what is said to be short,
and how much room there is once the pass that was handed out is ground."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

from crestcut.job.records import Wanted

BENCH = Path(__file__).parents[1] / "bench"


@pytest.fixture(scope="module")
def bench() -> ModuleType:
    sys.path.append(str(BENCH))  # after the tests' own: a folder of theirs is called as this bench
    spec = importlib.util.spec_from_file_location("bench_of_verify", BENCH / "verify.py")
    assert spec is not None and spec.loader is not None
    found = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = found
    spec.loader.exec_module(found)
    return found


@pytest.mark.slow
@pytest.mark.parametrize("seed", [0, 1, 2])
def test_a_pass_by_felt_gaps_takes_what_is_short_and_not_too_much(bench: ModuleType, seed: int) -> None:
    case = bench.Case(seed + 20_000, 0.15, 0.9, bench.UNEVEN["fine"])
    found, missing = case.rest(seed, "gaps"), Wanted().want - case.gap
    assert abs(found.short.best - missing) < 0.002 and missing > 0.002
    assert found.short.interval[0] < missing < found.short.interval[1]
    # no worse than it was (where the map is wrong, the worst place may not be on it), hardly more than asked
    assert -missing - 1e-4 < found.left - Wanted().want < 0.001


@pytest.mark.slow
def test_gaps_that_contradict_give_no_figure(bench: ModuleType) -> None:
    assert bench.Case(20_000, 0.15, 0.9, bench.UNEVEN["fine"]).rest(0, "gaps", 0.006) is None
