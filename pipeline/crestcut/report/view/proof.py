"""``proof.json``: what was predicted against what was felt, and nothing that says where or whose.

A practitioner may send it: the first step of a field proof. It holds figures and words of this program's own
closed lists alone. No title, name, date, file, hash or coordinate, no word that anyone wrote into a job or a
vehicle; figures are rounded, lengths to 0.1 mm.
"""

from __future__ import annotations

import math
from pathlib import Path

from crestcut.chance import Chance
from crestcut.report.view.result import plain_document, write_json
from crestcut.study import Report
from crestcut.verify import Check, Predicted

SCHEMA = "crestcut.proof/1"
PROOF_NAME = "proof.json"
NORMAL = 1.959964  # half of a 95 % interval, sd


def proof_document(report: Report, check: Check) -> dict[str, object]:
    """Every key of ``proof.json``; SI, null where not known.

    report : the plan, as ``run`` made it.
    """
    plan, short, share = report.plan, check.short, check.share
    assert plan is not None
    known = not check.fights
    document = {
        "schema": SCHEMA,
        "version": report.version,
        "how": {
            "scanner": report.job.scan.scanner,
            "walks": len(report.job.scan.files),
            "readings_before": sum(len(kind) for kind in report.job.readings.values()),
            "scanned_since": check.removed is not None,
            "vehicles": max(len(report.vehicles), 1),
            "method": None if plan.guided is None else plan.guided.method,
        },
        "kind": report.kind,
        "asked": _length(report.job.wanted.want),
        "confidence": report.job.wanted.confidence,
        "before": _chance(report.today),
        "planned": {
            "deepest": _length(plan.deepest), "volume": _figure(plan.volume, 5),
            "after": _chance(report.after),
        },
        "gone": None if share is None or not known else {
            "share": _figure(share.best, 2), "sd": _figure(share.sd, 2)
        },
        "now": _chance(check.first.today) if known else None,
        "in_use": _chance(check.first.in_use) if known else None,
        "verdict": check.verdict,
        "short": None if short is None else _length(short.best),
        "felt": [_felt(reading) for reading in check.predicted],
        "contradictions": [
            {"sds": _figure(fight.sds, 1), "others": len(fight.against), "odd": fight.odd}
            for fight in check.fights
        ],
        "edges": len(check.edges) if check.removed is not None else None,
        "over_cut": any(deep.sure for deep in check.too_deep) if check.removed is not None else None,
    }  # fmt: skip
    return plain_document(document)


def write_proof(report: Report, check: Check, path: Path) -> None:
    """Write ``proof.json``."""
    write_json(proof_document(report, check), path, indent=1)


def _felt(reading: Predicted) -> dict[str, object]:
    return {
        "reading": "string" if reading.zone is None else "gap",
        "zone": reading.zone,
        "relation": reading.relation,
        "felt": _length(reading.observed),
        "by_plan": _said(reading.by_plan, reading.observed),
        "by_scan_since": _said(reading.by_scan, reading.observed),
    }


def _said(said: tuple[float, float] | None, felt: float) -> dict[str, object] | None:
    """A prediction with its interval, and by how many standard deviations what was felt lies over it."""
    if said is None:
        return None
    best, sd = said
    return {
        "predicted": _length(best), "sd": _length(sd),
        "interval": [_length(best - NORMAL * sd), _length(best + NORMAL * sd)],
        "sds": _figure((felt - best) / sd, 2),
    }  # fmt: skip


def _chance(chance: Chance | None) -> dict[str, object] | None:
    if chance is None:
        return None
    return {
        "least_clearance": _length(chance.least_clearance),
        "interval": [_length(end) for end in chance.interval],
        "chance_of_contact": _figure(chance.chance_of_contact, 4),
        "verdict": chance.verdict,
    }


def _length(metres: float) -> float | None:
    return _figure(metres, 4)


def _figure(value: float, digits: int) -> float | None:
    return None if math.isnan(value) else round(value, digits) + 0.0
