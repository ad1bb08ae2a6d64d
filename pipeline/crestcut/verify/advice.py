"""What to measure by hand where the finished work cannot be judged, best first."""

from __future__ import annotations

import numpy as np

from crestcut.job.records import Job
from crestcut.scan.records import Scan
from crestcut.surface.evidence_records import Evidence
from crestcut.surface.records import Surface
from crestcut.travel.advice import measure_first
from crestcut.travel.records import Passage
from crestcut.units import both
from crestcut.verify.records import Now

MOST = 2


def what_to_measure(
    now: Now, surface: Surface, scan: Scan, job: Job, evidence: Evidence | None
) -> tuple[dict[str, object], ...]:
    """The measurements that would narrow the clearance most, each with kind, where, expect, narrows, how."""
    standing = now.standing
    found = measure_first(
        Passage(standing.vehicle, surface, standing.ride, standing.before, standing.driver.parts),
        surface.error, most=MOST, today=now.today, confidence=job.wanted.confidence, evidence=evidence,
    )  # fmt: skip
    rows: list[dict[str, object]] = []
    for a in found:
        places = [scan.frame.site_to_plan(np.array(xy)) for xy in a.where]
        shown = places[-1:] if a.kind == "felt gap" else places
        rows.append({
            "kind": a.kind,
            "where": "; ".join(f"x {x:.2f}, y {y:.2f}" for x, y in shown),
            "where_xy": [[float(v) for v in xy] for xy in places],
            "expect": both(a.expect) if a.expect >= 0 else "a touch, or next to it",
            "expect_m": a.expect,
            "narrows": a.narrows,
            # where the vehicle stands for it, as the job file takes it: the middle between its front wheels
            "front_axle": [float(v) for v in (places[0] + places[1]) / 2] if a.kind == "felt gap" else None,
            "how": a.how,
        })  # fmt: skip
    return tuple(rows)
