"""The benches' figures are kept as data and compared; the benches themselves are never run by the tests."""

from __future__ import annotations

import importlib
import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

BENCH = Path(__file__).parent / "bench"


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    """A folder with ``history.py`` and one bench, which tells what it is given."""
    (tmp_path / "history.py").write_text((BENCH / "history.py").read_text(encoding="utf-8"), encoding="utf-8")
    (tmp_path / "speed.py").write_text(
        "import sys\nfrom history import figure\n"
        "figure('a turn', float(sys.argv[-1]), 's', 'less')\nfigure('held', 95, '%', 'more')\n"
    )
    return tmp_path


def history(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(folder / "history.py"), *words]
    return subprocess.run(command, capture_output=True, text=True, check=False)


def test_what_a_bench_tells_is_appended_with_its_machine(bench: Path) -> None:
    assert "a turn: 0.25 s" in history(bench, "add", "speed", "0.25").stdout
    history(bench, "add", "speed", "0.5")
    first, second = map(json.loads, (bench / "history" / "speed.jsonl").read_text().splitlines())
    assert first["figures"][0] == {"name": "a turn", "value": 0.25, "unit": "s", "better": "less"}
    assert second["arguments"] == ["0.5"] and first["machine"] and first["commit"] and first["date"]


def test_a_figure_worse_by_a_fifth_is_told_and_others_are_not(bench: Path) -> None:
    history(bench, "add", "speed", "0.25")
    lines = bench / "history" / "speed.jsonl"
    before = lines.read_text()
    for took, code in (("0.29", 0), ("0.2", 0), ("0.31", 1)):
        lines.write_text(before + before.replace('"value": 0.25', f'"value": {took}'))
        done = history(bench, "compare", "speed")
        assert done.returncode == code and ("WORSE" in done.stdout) == bool(code), (took, done.stdout)


def test_figures_of_another_machine_are_not_compared(bench: Path) -> None:
    history(bench, "add", "speed", "0.25")
    lines = bench / "history" / "speed.jsonl"
    before = lines.read_text()
    lines.write_text(re.sub('"machine": "', '"machine": "another ', before) + before.replace("0.25", "9"))
    done = history(bench, "compare")
    assert done.returncode == 0 and "was" not in done.stdout


def test_a_bench_that_fails_leaves_nothing(bench: Path) -> None:
    assert history(bench, "add", "speed", "no number").returncode != 0
    assert not (bench / "history").exists()
    assert "name a bench: speed" in history(bench, "add", "sped").stderr


def test_folders_that_benches_take_scenes_from_are_there() -> None:
    for path in BENCH.glob("*.py"):
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.startswith("sys.path"):
                for folder in re.findall(r'/ "(\w+)"', line):
                    assert any((BENCH.parents[k] / folder).is_dir() for k in (0, 1)), (path.name, folder)


def test_what_is_kept_can_be_read() -> None:
    kept = list((BENCH / "history").glob("*.jsonl"))
    assert kept
    for path in kept:
        assert (BENCH / f"{path.stem}.py").is_file()
        for line in path.read_text(encoding="utf-8").splitlines():
            assert set(json.loads(line)) == {"date", "commit", "machine", "arguments", "figures"}


def test_a_change_is_of_the_figure_or_on_another_machine_of_what_it_is_over_its_anchor(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.syspath_prepend(str(BENCH))
    speed = importlib.import_module("all")
    seconds, ratio = speed.Row("b", (), "", "took", "", "known"), speed.Row("b", (), "", "share", "")

    def line(machine: str, took: float, known: float, share: float) -> dict[str, object]:
        each = (("took", took, "s"), ("known", known, "s"), ("share", share, ""))
        return {"machine": machine, "figures": [{"name": n, "value": v, "unit": u} for n, v, u in each]}

    now = line("one", 3.0, 1.0, 6.0)
    assert speed.change(seconds, now, line("one", 2.0, 9.0, 6.0)) == pytest.approx(0.5)
    assert speed.change(seconds, now, line("other", 8.0, 4.0, 6.0)) == pytest.approx(0.5)
    assert speed.change(ratio, now, line("other", 1.0, 1.0, 4.0)) == pytest.approx(0.5)
    assert speed.change(speed.Row("b", (), "", "took", ""), now, line("other", 2.0, 1.0, 6.0)) is None
