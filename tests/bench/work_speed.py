"""How long do the sheets take? CPU seconds, least of several, on a provisional and on a released sample job.

Run: python tests/bench/work_speed.py
"""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable
from pathlib import Path

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
    print("job                                release        pages  worksheet s (0.3)  PDF s (0.8)  DXF s")
    for name in ("courtyard_apron", "courtyard_apron_measured"):
        done = run_job(ROOT / "configs" / "jobs" / f"{name}.toml")
        r = done.report
        sheet, site = worksheet(done), make_site(r.surface, r.line, r.plan)
        with tempfile.TemporaryDirectory() as folder:
            made = least(lambda: (worksheet(done), make_site(r.surface, r.line, r.plan)))  # noqa: B023
            drawn = least(lambda: write_sheets(sheet, site, Identity(sheet.title), Path(folder)))  # noqa: B023
            cad = least(lambda: write_cad(r, sheet, Path(folder) / "a.dxf"))  # noqa: B023
        count = sum(1 for _ in pages(sheet, site))
        print(f"{name:34s} {done.release.state:15s} {count:4d} {made:18.2f} {drawn:12.2f} {cad:6.2f}")


if __name__ == "__main__":
    main()
