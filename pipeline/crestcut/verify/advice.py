"""What to measure by hand where the finished work cannot be judged, best first."""

from __future__ import annotations

import numpy as np

from crestcut.contact import Passage
from crestcut.job import Job
from crestcut.measure_next import measure_first
from crestcut.scan import Scan
from crestcut.terrain import Evidence, Surface
from crestcut.verify.records import Now
from crestcut.work import board_sizes, row_of

MOST = 2


def what_to_measure(
    now: Now, surface: Surface, scan: Scan, job: Job, evidence: Evidence | None
) -> tuple[dict[str, object], ...]:
    """The measurements that would narrow the clearance most, each with kind, where, expect, narrows, how."""
    standing, sizes = now.standing, board_sizes(job)
    found = measure_first(
        Passage(standing.vehicle, surface, standing.ride, standing.before, standing.driver.parts),
        surface.error, most=MOST, today=now.today, confidence=job.wanted.confidence, evidence=evidence,
    )  # fmt: skip
    rows = []
    for a in found:
        row = row_of(a, scan.frame, sizes, sure=False)
        places = np.array(row["where_xy"])
        # where the vehicle stands for it, as the job file takes it: the middle between its front wheels
        row["front_axle"] = places[:2].mean(axis=0).tolist() if a.kind == "felt gap" else None
        rows.append(row)
    return tuple(rows)
