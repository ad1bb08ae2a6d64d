"""The whole run on the sample, warm, from the command line: seconds by the clock, of processor and by stage.

    python tests/bench/whole_run.py [JOB.toml] [times]

Data: the sample job (or another), run ``times`` times after one that warms the caches; the least of each
figure is printed, with the load on the machine beside it, for a busy machine counts in every clock. Accuracy:
the verdict's interval, to hold beside the generator's truth. Figures to reach on two cores with nothing else
running: 6 s in all, 1.5 GiB, and 0.3 s for ``--help``. The seconds of a stage are those it is waited for:
what runs beside others (the caster's library, what to measure) shows only where it is waited for.
"""

from __future__ import annotations

import json
import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from history import figure

ROOT = Path(__file__).resolve().parents[2]
TOP = "import sys; from crestcut.apps.cli import main; sys.argv[0] = 'crestcut'; main()"


def timed(*args: str) -> tuple[float, float]:
    """Wall seconds, and user and system seconds of the run with what it started."""
    # Python's own cache of compiled modules belongs to a warm run, also where whoever benches keeps none
    environment = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.perf_counter()
    program = [sys.executable, "-c", TOP, *args]
    done = subprocess.run(program, capture_output=True, text=True, env=environment)
    wall = time.perf_counter() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode not in (0, 3):
        sys.exit(done.stderr)
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    """Run, and print the least of each."""
    job = Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "configs/jobs/courtyard_apron.toml"
    times = int(sys.argv[2]) if len(sys.argv) > 2 else 3
    helps = min(timed("--help")[0] for _ in range(times))
    walls, cpus, stages = [], [], []
    with tempfile.TemporaryDirectory() as folder:
        for k in range(times + 1):
            wall, cpu = timed("run", str(job), "--out", folder)
            result = json.loads((Path(folder) / "result.json").read_text())
            if k:  # the first one warms
                walls.append(wall)
                cpus.append(cpu)
                stages.append(result["seconds"])
                load = os.getloadavg()[0]
                print(f"run {k}: {wall:.2f} s by the clock, {cpu:.2f} s of processor, load {load:.1f}")
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 2**20  # KiB on Linux
    figure("--help", helps, "s", "less")
    figure("whole run", min(walls), "s", "less")
    figure("whole run, processor time", min(cpus), "s", "less")
    figure("memory", peak, "GiB", "less")
    for name in stages[0]:
        figure(f"stage {name}", min(s[name] for s in stages), "s", "less")
    low, high = result["before"]["interval"]
    print(result["before"]["verdict"])
    figure("interval, low end", low * 1e3, "mm")
    figure("interval, high end", high * 1e3, "mm")


if __name__ == "__main__":
    main()
