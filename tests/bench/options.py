"""The options of a sample job: processor time of the table beside that of one ride and sweep, and how far its
figures are from riding and sweeping in full.

python tests/bench/options.py [configs/jobs/courtyard_apron.toml]
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from history import figure

ROOT = Path(__file__).resolve().parents[2]
TIMES = 5


def least(work: Callable[[], object]) -> float:
    """Processor seconds, the least of a few."""
    took = []
    for _ in range(TIMES):
        start = time.process_time()
        work()
        took.append(time.process_time() - start)
    return min(took)


def main() -> None:
    import crestcut.study.making as run
    from crestcut.alternatives.driving import pumped_up
    from crestcut.alternatives.fixes import strips
    from crestcut.alternatives.trials import bench
    from crestcut.contact.clearance.sweep import sweep
    from crestcut.contact.stand.ride import ride
    from crestcut.cut.plan import cut_surface, ride_on

    path = Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "configs/jobs/courtyard_apron.toml"
    given: list[tuple[object, ...]] = []
    table = run.options_of

    def kept(*args: object) -> object:
        given.append(args)
        return table(*args)  # type: ignore[arg-type]

    run.options_of = kept  # type: ignore[assignment]
    report = run.run_job(path).report
    vehicle, surface, rode, job = report.vehicle, report.surface, report.ride, report.job
    whole = least(lambda: table(*given[0]))  # type: ignore[arg-type]
    loads = [load for load in vehicle.loads if load.name in job.vehicle.loads]
    once = least(lambda: sweep(vehicle, surface, ride(vehicle, surface, rode.line, job.travel, loads)))
    print(f"{path.name}: {len(rode.batch.places)} poses, {len(report.options)} rows")
    figure("table, processor time", whole, "s", "less")
    figure("one ride and sweep", once, "s", "less")
    figure("table over one ride and sweep", whole / once, "", "less")
    now = replace(bench(vehicle, surface, rode, report.before, job.wanted, loads), target=0.003)
    pumped = pumped_up(vehicle)
    full = sweep(pumped, surface, ride_on(rode, pumped, surface)).worst
    assert full is not None
    off = now.tried(pumped, falls=0.001).gap - full.gap
    figure("more air, off the full sweep", 1e6 * off, "um")
    laid = strips([now])
    if laid is not None:
        raised = cut_surface(surface, -laid.added)
        worst = sweep(vehicle, raised, ride_on(rode, vehicle, raised)).worst
        assert worst is not None
        figure("strips, off the full sweep", 1e6 * (laid.tried[0].gap - worst.gap), "um")


if __name__ == "__main__":
    main()
