"""What to measure by hand where the finished work cannot be judged, best first."""

from __future__ import annotations

import numpy as np

from crestcut.job.records import Job
from crestcut.scan.records import Scan
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import Surface
from crestcut.travel.advice import measure_first
from crestcut.travel.records import Passage
from crestcut.verify.records import Now
from crestcut.work.asked import board_sizes, row_of

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
        row = row_of(a, scan, sizes, sure=False)
        places = np.array(row["where_xy"])
        # where the vehicle stands for it, as the job file takes it: the middle between its front wheels
        row["front_axle"] = places[:2].mean(axis=0).tolist() if a.kind == "felt gap" else None
        rows.append(row)
    return tuple(rows)
