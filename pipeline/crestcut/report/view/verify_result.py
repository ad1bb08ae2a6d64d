"""``verify.json``: the check as numbers, SI throughout; what is not known is null, never zero."""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path

from crestcut.chance import Chance
from crestcut.report.view.frames import advice, frame_and_units, place
from crestcut.report.view.result import inputs_of, place_of, plain_document, write_json
from crestcut.report.view.verify_report import handed_out, report_now
from crestcut.scan import Scan
from crestcut.study import Report
from crestcut.verify import Check, Fight, Now

SCHEMA = "crestcut.verify/1"


def verify_document(report: Report, check: Check, scan: Scan | None, seconds: Mapping[str, float]) -> dict:
    """Every key of ``verify.json``.

    report : the plan, as ``run`` made it.  scan : after the work, None by hand alone.  Places are in the scan
    before the work's own coordinates.
    """
    now, frame = report_now(report, check), report.scan.frame
    files = [] if scan is None else [
        {"role": "scan after", "file": f.path.name, "sha256": f.sha256} for f in scan.files
    ]  # fmt: skip
    document = {
        "schema": SCHEMA,
        "version": report.version,
        "seed": report.seed,
        "title": report.title,
        "dated": report.job.date,
        **frame_and_units(frame),
        "inputs": [*inputs_of(report), *files],
        "want": report.job.wanted.want,
        "want_ends": report.job.wanted.want_ends,
        "confidence": report.job.wanted.confidence,
        "verdict": check.verdict,
        "clearance": check.clearance,
        "by": "hand" if check.removed is None else "scan",
        "now": _nothing_known(check.first) if check.fights else _now(now, check.first),
        "before": {"least_clearance": report.least_clearance, "interval": _interval(report.today)},
        "vehicles": [
            {"name": n.standing.vehicle.name, **(_nothing_known(n) if check.fights else _now(now, n))}
            for n in check.now
        ],
        "removed": _removed(report, check),
        "contradictions": [_fight(f) for f in check.fights],
        "still": _unknown(*STILL) if check.fights else {
            "deepest": check.still.deepest, "area": check.still.area, "volume": check.still.volume,
            **_short(check),
            "feasible": check.still.feasible, "short_by": check.still.short_by,
            "binding": check.still.binding, "margin": check.still.margin,
            "for_chance": report.job.wanted.confidence if check.whole else None,
            "sheets": handed_out(report, check),
        },
        "edges": [
            {"rise": e.rise, "slope": e.slope, "length": e.length, **place(frame, e.xy),
             "rule": e.said}
            for e in check.edges
        ],
        "too_deep": [
            {"what": t.what, "most": t.most, "area": t.area, **place(frame, t.xy), "sure": t.sure}
            for t in check.too_deep
        ],
        "ponds": [
            {"deepest": p.deepest, "area": p.area, "volume": p.volume, **place(frame, xy)}
            for p, xy in check.ponds
        ],
        "advice": {"measure": advice(frame, check.advice)},
        "release": {
            "state": report.release, "reasons": [r.words for r in report.release_reasons],
            "codes": [{"code": r.code, "about": r.about} for r in report.release_reasons],
        },
        "notes": list(dict.fromkeys((*report.notes, *check.notes))),
        "seconds": seconds,
    }  # fmt: skip
    return plain_document(document)


def write_verify(
    report: Report, check: Check, scan: Scan | None, seconds: Mapping[str, float], path: Path
) -> None:
    """Write ``verify.json``."""
    write_json(verify_document(report, check, scan, seconds), path)


def _nothing_known(now: Now) -> dict[str, object]:
    """Readings that contradict say nothing of the gap."""
    return {**_unknown("least_clearance", "interval", "chance_of_contact", "chance_of_want"),
            "verdict": now.verdict, "asked": now.asked}  # fmt: skip


STILL = (
    "deepest", "area", "volume", "short", "short_interval", "allowance", "leaves", "leaves_interval",
    "feasible", "short_by", "binding", "margin", "for_chance", "sheets",
)  # fmt: skip


def _short(check: Check) -> dict[str, object]:
    """allowance : what the next pass takes on top of what is short; below zero it keeps so much back.  leaves
    : the least gap after it."""
    short, rest = check.short, check.rest
    if short is None:
        return _unknown("short", "short_interval", "allowance", "leaves", "leaves_interval")
    left = rest.left.today if rest is not None and rest.left is not None else None
    return {
        "short": short.best, "short_interval": short.interval,
        "allowance": check.still.deepest - short.best if check.clearance == "not yet" else None,
        "leaves": None if left is None else left.least_clearance,
        "leaves_interval": None if left is None else left.interval,
    }  # fmt: skip


def _unknown(*keys: str) -> dict[str, object]:
    return dict.fromkeys(keys)


def _fight(fight: Fight) -> dict[str, object]:
    """A reading that contradicts, as it stands in the file, m; nothing ``against`` it where the scan does."""
    told = [{"reading": t.name, "relation": t.relation, "read": t.observed}
            for t in (fight.reading, *fight.against)]  # fmt: skip
    return {
        **told[0], "what": fight.reading.what.rstrip(","), "against": told[1:], "expected": fight.expected,
        "sd": fight.sd, "sds": fight.sds, "odd": fight.odd,
    }  # fmt: skip


def _interval(chance: Chance | None) -> tuple[float, float] | None:
    return chance.interval if chance is not None else None


def _now(report: Report, now: Now) -> dict[str, object]:
    return {
        "verdict": now.verdict,
        "least_clearance": now.today.least_clearance,
        "interval": now.today.interval,
        "chance_of_contact": now.today.chance_of_contact,
        "asked": now.asked,
        "spare": now.spare.least_clearance,
        "spare_interval": now.spare.interval,
        "chance_of_want": 1 - now.spare.chance_of_contact,
        "spread": now.today.spread,
        "scan_share": now.today.scan_share,
        "reasons": now.spare.reasons,
        "in_use": {
            "verdict": now.in_use.verdict,
            "least_clearance": now.in_use.least_clearance,
            "interval": now.in_use.interval,
            "chance_of_contact": now.in_use.chance_of_contact,
        },
        **place_of(report, now.tightest),
    }


def _removed(report: Report, check: Check) -> dict[str, object]:
    """What is gone: from two scans, or the share of the plan that hand readings make likely."""
    planned = report.plan.volume if report.plan is not None else math.nan
    removed, share = check.removed, check.share
    if removed is None:
        best, sd = (share.best, share.sd) if share is not None else (math.nan, math.nan)
        return {"volume": best * planned, "volume_sd": sd * planned, "planned": planned, "share": best,
                "share_sd": sd, "depth_sd": None, "elsewhere_area": None, "fit_error": None}  # fmt: skip
    cell = removed.depth.frame.cell
    return {
        "volume": removed.volume, "volume_sd": removed.volume_sd, "planned": planned, "share": None,
        "share_sd": None, "depth_sd": removed.typical,
        "elsewhere_area": float(removed.elsewhere.sum()) * cell**2, "fit_error": check.fit_error,
    }  # fmt: skip
