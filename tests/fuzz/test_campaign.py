"""Half a minute of the campaign, every fault that it found before, and texts that hypothesis makes up."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path
from random import Random
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from crestcut.base.errors import CrestcutError
from crestcut.base.units import parse_length, parse_slope
from crestcut.job import load_floor_job, load_job
from crestcut.vehicle import load_vehicle
from fuzz.reading import judged

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="the watch is the system's own")
CAMPAIGN = Path(__file__).with_name("campaign.py")
LOADERS = {"job": load_job, "floor": load_floor_job, "vehicle": load_vehicle}


def command(*args: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, str(CAMPAIGN), *args],
        capture_output=True,
        text=True,
        env={**os.environ, "OPENBLAS_NUM_THREADS": "1"},
        timeout=300,
    )


@pytest.mark.slow
def test_every_file_that_broke_a_rule_once_has_its_line() -> None:
    done = command("--broken")
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.slow
def test_no_case_of_the_campaign_breaks_a_rule() -> None:
    done = command("--seconds", "20", "--seed", "1", "--show")
    assert done.returncode == 0, done.stdout + done.stderr
    cases = int(done.stdout.split(" cases")[0].replace(",", ""))
    assert cases > 30, done.stdout  # a few hundred on a machine with nothing else to do


@pytest.mark.parametrize(
    ("name", "waits", "fault"),
    [("busy", "while True: pass", "hang"), ("asleep", "sleep(60)", "hang"), ("slow", "sleep(0.5)", "")],
)
def test_what_works_or_waits_too_long_is_a_hang(
    name: str, waits: str, fault: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from fuzz import reading

    monkeypatch.setitem(reading.TARGETS, name, lambda _: exec(waits, {"sleep": time.sleep}))
    watch = reading.Watch(tmp_path)
    found = reading.read_case(tmp_path / "case", name, watch, 0.2)
    watch.close()
    assert found.fault == fault


@given(st.text() | st.from_regex(r"[-+]?[0-9 ./]{1,30} ?(mm|m|in|ft|us-ft|'|\"){0,3}", fullmatch=True))
@settings(max_examples=300, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
def test_any_text_is_a_length_and_a_slope_or_one_line(text: str) -> None:
    for parse in (parse_length, parse_slope):
        try:
            found = parse(text)
        except CrestcutError as error:
            assert judged("said", str(error)) == ("", "")
        else:
            assert -1e12 <= found <= 1e12 and found == found


@pytest.mark.parametrize("name", LOADERS)
@given(chance=st.randoms(use_true_random=False))
@settings(
    max_examples=30,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
def test_a_file_of_people_is_read_or_refused_in_one_line(name: str, chance: Random, tmp_path: Path) -> None:
    """The same changes as the campaign's, with hypothesis to choose and to make small."""
    from fuzz.campaign import mutated
    from fuzz.seeds import all_kinds

    if not KINDS:
        KINDS.update(all_kinds())
    kind = KINDS[name]
    file, data = kind.seeds[0]
    (tmp_path / file).write_bytes(mutated(kind, data, chance))
    try:
        LOADERS[name](tmp_path / file)
    except CrestcutError as error:
        assert judged("said", str(error)) == ("", "")


KINDS: dict[str, Any] = {}  # made once
