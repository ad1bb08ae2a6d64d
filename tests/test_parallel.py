"""Work shared out among threads: all of it done once, in order, on any number of cores."""

from __future__ import annotations

import threading
import time

import pytest

from crestcut.base import parallel
from crestcut.base.parallel import in_threads, share


@pytest.fixture(params=[1, 3, 8])
def cores(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> int:
    monkeypatch.setattr(parallel, "WORKERS", request.param)
    return int(request.param)


@pytest.mark.parametrize(("count", "least"), [(0, 1), (1, 1), (7, 1), (100, 16), (1000, 1)])
def test_every_item_is_taken_once_in_pieces_worth_a_thread(cores: int, count: int, least: int) -> None:
    taken: list[tuple[int, int]] = []
    share(lambda first, stop: taken.append((first, stop)), count, least)
    assert sorted(k for first, stop in taken for k in range(first, stop)) == list(range(count))
    assert len(taken) == 1 or all(stop - first >= least for first, stop in taken)


def test_answers_come_in_the_order_asked_and_so_do_errors(cores: int) -> None:
    def slow_then_quick(k: int, word: str) -> str:
        time.sleep(0.02 if k < 2 else 0.0)
        if word == "wrong":
            raise ValueError(k)
        return f"{k} {word}"

    assert in_threads(slow_then_quick, range(5), "abcde") == ["0 a", "1 b", "2 c", "3 d", "4 e"]
    with pytest.raises(ValueError, match="1"):
        in_threads(slow_then_quick, range(3), ["right", "wrong", "wrong"])


def test_a_share_within_a_share_is_done_where_it_is_asked_for(cores: int) -> None:
    """Else each of the threads that stay would wait for one that is free."""
    seen: list[tuple[int, int]] = []

    def outer(first: int, stop: int) -> None:
        for k in range(first, stop):
            share(lambda a, b, k=k: seen.extend((k, j) for j in range(a, b)), 50)

    # a daemon: what hangs must not keep the tests from ending
    beside = threading.Thread(target=share, args=(outer, 40), daemon=True)
    beside.start()
    beside.join(20)
    assert not beside.is_alive()
    assert sorted(seen) == [(k, j) for k in range(40) for j in range(50)]
