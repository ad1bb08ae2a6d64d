"""How long do the sheets take? CPU seconds, least of several, on a provisional and on a released sample job.

Run: python tests/bench/work_speed.py
"""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from history import figure

from crestcut.cut.limits import KeepArea
from crestcut.report.exchange.cad import write_cad
from crestcut.report.sheets.all_sheets import pages, write_sheets
from crestcut.study.identity import Identity
from crestcut.study.making import run_job
from crestcut.study.record import Study
from crestcut.work.order import WorkOrder, make_site
from crestcut.work.records import Worksheet
from crestcut.work.sheet import make_worksheet

ROOT = Path(__file__).resolve().parents[2]
TIMES = 5


def least(run: Callable[[], object]) -> float:
    best = float("inf")
    for _ in range(TIMES):
        start = time.process_time()
        run()
        best = min(best, time.process_time() - start)
    return best


def worksheet(done: Study) -> Worksheet:
    r = done.report
    keeps = [KeepArea(k.kind, tuple((float(x), float(y)) for x, y in k.area), k.deepest) for k in r.keeps]
    marks = {m.name: m.xy for m in r.marks}
    order = WorkOrder(r.job, r.vehicle, r.surface, r.ride, r.plan, done.release, marks, keeps)
    return make_worksheet(order, r.advice, r.scan.frame.plan_to_site)


def main() -> None:

    for name in ("courtyard_apron", "courtyard_apron_measured"):
        done = run_job(ROOT / "configs" / "jobs" / f"{name}.toml")
        r = done.report
        sheet, site = worksheet(done), make_site(r.surface, r.line, r.plan)
        with tempfile.TemporaryDirectory() as folder:
            made = least(lambda: (worksheet(done), make_site(r.surface, r.line, r.plan)))  # noqa: B023
            drawn = least(lambda: write_sheets(sheet, site, Identity(sheet.title), Path(folder)))  # noqa: B023
            cad = least(lambda: write_cad(r, sheet, Path(folder) / "a.dxf"))  # noqa: B023
        count = sum(1 for _ in pages(sheet, site))
        print(f"{name}: {done.release.state}, {count} pages")
        figure(f"{name}: worksheet", made, "s", "less")  # asked: 0.3
        figure(f"{name}: PDF", drawn, "s", "less")  # asked: 0.8
        figure(f"{name}: DXF", cad, "s", "less")


if __name__ == "__main__":
    main()
