"""Several jobs shared by workers, against as many commands one after another in the same run.

    python tests/bench/many.py [jobs] [workers]

Data: the sample job so many times (4), each asking for another clearance. Figures: seconds by clock and of
processor a job, both ways, and what the workers gain; the machine's load is printed, for with other work on
it the clock tells of that too. Accuracy: every file of both ways has the same hash.
"""

from __future__ import annotations

import os
import sys
import tempfile
from pathlib import Path

from history import figure
from whole_run import ROOT, timed

JOB = ROOT / "configs/jobs/courtyard_apron.toml"


def main() -> None:
    """Both ways, and what they cost."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 4
    workers = int(sys.argv[2]) if len(sys.argv) > 2 else 2
    with tempfile.TemporaryDirectory() as held:
        folder = Path(held)
        text = JOB.read_text(encoding="utf-8").replace('"../../', f'"{ROOT}/')
        text = text.replace('"../', f'"{ROOT}/configs/')
        jobs = [folder / f"job_{k}.toml" for k in range(count)]
        for k, job in enumerate(jobs):
            job.write_text(text.replace('want = "1/2 in"', f'want = "{9 + 0.5 * k} mm"'), encoding="utf-8")
        timed("run", str(JOB), "--out", str(folder / "warm"))
        print(f"load {os.getloadavg()[0]:.1f}")
        each = [timed("run", str(job), "--out", str(folder / "one" / job.stem)) for job in jobs]
        one_wall, one_cpu = (sum(column) for column in zip(*each, strict=True))
        print(f"load {os.getloadavg()[0]:.1f}")
        names = map(str, jobs)
        wall, cpu = timed("run", *names, "--workers", str(workers), "--out", str(folder / "many"))
        print(f"load {os.getloadavg()[0]:.1f}")
        same = sum(
            (folder / "many" / job.stem / "manifest.json").read_bytes()
            == (folder / "one" / job.stem / "manifest.json").read_bytes()
            for job in jobs
        )
    figure("one after another, a job", one_wall / count, "s", "less")
    figure("one after another, a job, processor time", one_cpu / count, "s", "less")
    figure(f"{workers} workers, a job", wall / count, "s", "less")
    figure(f"{workers} workers, a job, processor time", cpu / count, "s", "less")
    figure("throughput gained, clock", one_wall / wall, "", "more")
    figure("throughput gained, processor time", one_cpu / cpu, "", "more")
    figure(f"jobs with the same bytes, of {count}", same, "", "more")


if __name__ == "__main__":
    main()
