"""What long work says on the way: moving at a terminal, plain lines in a log, nothing of it on stdout."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from crestcut.base.pace import USUAL, Pace, seconds_of

LOOK = [
    sys.executable, "-m", "crestcut.apps.cli", "look",
    str(Path(__file__).resolve().parents[1] / "sample_scans/kiln_room.laz"), "--json",
]  # fmt: skip


def test_in_a_log_each_step_is_a_plain_line() -> None:
    done = subprocess.run(LOOK, capture_output=True, text=True, check=True)
    assert "  reading kiln_room.laz ..." in done.stderr.splitlines() and "\x1b" not in done.stderr
    json.loads(done.stdout)


def test_at_a_terminal_the_step_at_work_moves_and_leaves_its_seconds() -> None:
    pty = pytest.importorskip("pty")
    try:
        screen, end = pty.openpty()
    except OSError:  # a container may have none mounted
        pytest.skip("no pseudo terminals on this system")
    with subprocess.Popen(LOOK, stdout=subprocess.PIPE, stderr=end) as work:
        os.close(end)
        seen = b""
        while True:
            try:
                seen += (got := os.read(screen, 65536))
            except OSError:  # the other end is closed
                break
            if not got:
                break
        assert work.stdout is not None
        out = work.stdout.read()
    os.close(screen)
    assert work.returncode == 0
    json.loads(out)
    text = seen.decode()
    assert text.count("reading kiln_room.laz") > 2 and "\x1b[2K" in text  # drawn again in place
    plain = re.sub(r"\x1b\[[0-9;?]*[A-Za-z]", "", text)
    assert re.search(r"  reading kiln_room.laz  \d+\.\d s", plain)
    assert text.rfind("\x1b[?25h") > text.rfind("\x1b[?25l")  # the cursor is back


def test_what_remains_is_told_by_the_pace_of_this_machine() -> None:
    """Every stage three times slower than usual: what remains comes to three times what is usual as that is
    seen; the share never goes back, and a stage that is left out counts as done."""
    now = [0.0]
    pace = Pace(clock=lambda: now[0])
    assert pace.words() == ""
    shares, whole = [], sum(USUAL.values())
    for key, usual in USUAL.items():
        pace.begins(key)
        pace.begins(None)  # a step within it
        for _ in range(4):
            share, left = re.fullmatch(r"(\d+)%, about (\d+) s to go", pace.words()).groups()
            shares.append(int(share))
            rest = 3 * whole - now[0]
            assert rest / 3 - usual - 0.51 <= int(left) <= max(rest, 1) + 0.51
            assert key != "write" or int(left) >= rest - 2  # by then it is known
            now[0] += 3 * usual / 4
    assert shares == sorted(shares) and shares[0] == 0 and shares[-1] >= 94
    later = Pace(clock=lambda: 0.0)
    later.begins("chance")
    assert later.words().startswith("62%")  # (0.6 + 3.1 + 5.7 + 0.1 + 0.2 + 0.4) / 16.4
    later.begins("of another command")
    assert later.words() == ""


def test_a_stage_that_drags_on_drags_what_follows_with_it() -> None:
    """Three seconds of usual pace count as seen beforehand: after 2 s as usual and 34 s of a stage of 6 s the
    pace is (3 + 2 + 34) / (3 + 2 + 6), and so of the last 4 s."""
    now = [0.0]
    pace = Pace({"a": 2.0, "b": 6.0, "c": 4.0}, clock=lambda: now[0])
    lefts = []
    pace.begins("a")
    now[0] = 2.0
    pace.begins("b")
    for now[0] in (2.0, 5.0, 8.0, 20.0, 36.0):
        _, left = pace.share() or (0.0, 0.0)
        lefts.append(left)
    assert lefts == pytest.approx([10.0, 7.0, 4.0, 4 * 23 / 11, 4 * 39 / 11])
    pace.begins("c")
    assert pace.share() == pytest.approx((8 / 12, 4 * 39 / 11))
    pace.begins("a")  # another job
    assert pace.share() == pytest.approx((0.0, 12.0))


def test_what_the_last_run_of_the_job_took_is_what_this_one_is_told_by(tmp_path: Path) -> None:
    """Also one that took up a slab it had: should this one not, the stages left out then are as usual."""
    took = {"scan": 3.0, "readings": 2.0, "cut": 4.0, "write": 3.0, "of another version": 50.0}
    result = tmp_path / "result.json"
    assert seconds_of(result, "yard.toml") == USUAL
    result.write_text(json.dumps({"inputs": [{"role": "job", "file": "yard.toml"}], "seconds": took}))
    usual = seconds_of(result, "yard.toml")
    assert usual == {k: v for k, v in took.items() if k in USUAL}
    assert seconds_of(result, "gate.toml") == USUAL
    for wrong in ("{", "[]", '{"inputs": 1}', '{"inputs": [], "seconds": {"cut": "long"}}'):
        result.write_text(wrong)
        assert seconds_of(result, "yard.toml") == USUAL
    now = [0.0]
    pace = Pace(usual, clock=lambda: now[0])
    pace.begins("scan")
    assert pace.share() == pytest.approx((0.0, 12.0))
    now[0] = 3.0
    pace.begins("surface")
    whole = sum(USUAL.values()) + sum(usual[k] - USUAL[k] for k in usual)
    assert pace.share() == pytest.approx((3.0 / whole, whole - 3.0))
