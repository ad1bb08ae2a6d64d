"""The package as a library: the README's example runs as it stands there."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from threadpoolctl import threadpool_info, threadpool_limits

import crestcut
from crestcut.apps.floor import floor_job
from crestcut.apps.verify import check_job
from crestcut.base.parallel import one_thread_each
from crestcut.study.making import run_job

ROOT = Path(__file__).parents[1]


def test_the_example_in_the_readme_runs_and_prints_what_it_says(tmp_path: Path) -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    (code,) = re.findall(r"```python\n(.*?)```", text, re.S)
    lines = [line for line in code.splitlines() if line.strip()]
    assert len(lines) <= 10
    (said,) = re.findall(r"# prints (.*)", code)
    code = code.replace('"out/apron', f'"{tmp_path}/apron')
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == said
    assert (tmp_path / "apron" / "study.npz").stat().st_size > 1_000_000


def test_what_the_library_names_is_there() -> None:
    for name in crestcut.__all__:
        assert callable(getattr(crestcut, name)), name
    assert crestcut.__version__


def test_a_job_reckons_in_one_thread_however_many_there_are() -> None:
    """Else the last digits of sums, and with them the draws, hang on the machine and on who calls."""

    def threads() -> list[int]:
        return [pool["num_threads"] for pool in threadpool_info() if pool["user_api"] == "blas"]

    with threadpool_limits(limits=2, user_api="blas"):
        before = threads()
        assert before and set(one_thread_each(threads)()) == {1}
        assert threads() == before
    for command in (run_job, check_job, floor_job):
        assert command.__wrapped__.__name__ == command.__name__  # type: ignore[attr-defined]
