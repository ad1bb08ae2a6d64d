"""``result.json``: the answer as numbers, SI throughout; what is not known is null, never zero."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import asdict
from enum import Enum
from pathlib import Path

import numpy as np

from crestcut.alternatives import Option
from crestcut.chance import Chance, Finding, in_use_allowances
from crestcut.contact import Contact, on_the_line
from crestcut.cut import DIFFERS, Gap, Guided, NotCast, RayCast
from crestcut.report.view.frames import advice, frame_and_units, line, place
from crestcut.report.view.reference import reference_document
from crestcut.report.words.split import split_document
from crestcut.study import Report, VehicleRow
from crestcut.work import ReasonCode

SCHEMA = "crestcut.result/1"


def result_document(report: Report) -> dict[str, object]:
    """Every key of the contract. Coordinates are metres along the scan's own axes and from its own origin;
    what is called a point is the same place in the scan's own unit, as a job file would write it; ``frame``
    says so."""
    document = {
        "schema": SCHEMA,
        "version": report.version,
        "seed": report.seed,
        "settings": asdict(report.job.settings),
        "title": report.title,
        "dated": report.job.date,
        **frame_and_units(report.scan.frame),
        "inputs": inputs_of(report),
        "want": report.job.wanted.want,
        "want_ends": report.job.wanted.want_ends,
        "confidence": report.job.wanted.confidence,
        "before": {
            **_state(report, report.today, report.before.worst),
            "on_the_line": on_the_line(report.ride, report.before),
        },
        "in_use": {
            **_state(report, report.in_use, report.in_use_worst or report.before.worst, in_use=True),
            "allowances": [
                {"name": name, "lower": size, "source": source}
                for name, size, source in in_use_allowances(report.job.wanted, report.vehicle)
            ],
        },
        "soft": [{"pressed": s.pressed, **place_of(report, s.at)} for s in report.soft],
        "advice": {"measure": advice(report.scan.frame, report.advice)},
        "cut": _cut(report),
        "after": _after(report),
        "certificate": _certificate(report.ray_cast),
        "options": [_option(report, option) for option in report.options],
        "vehicles": [_vehicle(row, report) for row in report.vehicles],
        "release": {
            "state": report.release,
            "reasons": [r.words for r in report.release_reasons],
            "codes": [{"code": r.code, "about": r.about} for r in report.release_reasons],
        },
        "surface": surface_document(report),
        "scan": _scan(report),
        "reference": reference_document(report),
        "vehicle": {"name": report.vehicle.name, "loads": [load.name for load in report.vehicle.loads]},
        "travel": {**line(report.scan.frame, report.line.xy[[0, -1]]), "length": report.line.length},
        "vehicle_doubts": list(report.vehicle_doubts),
        "notes": list(
            dict.fromkeys((*report.scan.notes, *report.surface.notes, *report.vehicle.notes, *report.notes))
        ),
        "seconds": dict(report.seconds),
    }
    return plain_document(document)


def write_result(report: Report, path: Path) -> dict[str, object]:
    """Write ``result.json`` and return the document."""
    document = result_document(report)
    write_json(document, path)
    return document


def write_json(document: Mapping[str, object], path: Path, indent: int = 2) -> None:
    """Write any of the documents."""
    path.write_text(result_text(document, indent), encoding="utf-8")


def result_text(document: Mapping[str, object], indent: int = 2) -> str:
    """The document as JSON text; refuses NaN, which JSON does not have."""
    return json.dumps(document, indent=indent, ensure_ascii=False, allow_nan=False) + "\n"


def inputs_of(report: Report) -> list[dict[str, object]]:
    """Every file the answer rests on: its role, name without folder, and sha256 (None where not known)."""
    job, vehicle = report.job, report.vehicle
    rows: list[dict[str, object]] = [{"role": "job", "file": job.path.name, "sha256": job.sha256 or None}]
    rows += [{"role": "scan", "file": f.path.name, "sha256": f.sha256} for f in report.scan.files]
    if job.travel.line_file is not None:
        name = job.travel.line_file.name
        rows.append({"role": "line", "file": name, "sha256": report.line_sha256 or None})
    rows.append({"role": "vehicle", "file": vehicle.path.name, "sha256": vehicle.sha256 or None})
    if vehicle.underside is not None:
        rows.append({"role": "underside", "file": vehicle.underside[0], "sha256": vehicle.underside[1]})
    others = report.vehicles[1:]
    rows += [{"role": "vehicle", "file": v.file, "sha256": v.sha256 or None} for v in others]
    return rows


def _state(
    report: Report, chance: Chance | None, worst: Contact | None, in_use: bool = False
) -> dict[str, object]:
    """One of the two chances; only for today does the swept contact stand in where none was worked out."""
    swept = None if worst is None or in_use else worst.gap
    known = _chance(chance)
    if chance is None:
        known |= {"verdict": None if in_use else report.verdict, "least_clearance": swept}
    return {
        **known,
        "kind": report.kind,
        "doubts": [_doubt(report, f) for f in chance.doubts] if chance else [],
        "swept_gap": None if worst is None else worst.gap,
        **place_of(report, worst),
    }


def _doubt(report: Report, finding: Finding) -> dict[str, object]:
    """What withdrew a verdict; ``size`` in metres is what ``Doubt`` says of its kind."""
    found = place(report.scan.frame, finding.xy)
    return {"kind": finding.doubt.value, **found, "area": finding.area, "size": finding.size}


def _chance(chance: Chance | None) -> dict[str, object]:
    """One chance; every key None, and no reasons, where it was not worked out."""
    if chance is None:
        names = ("verdict", "least_clearance", "interval", "chance_of_contact", "chance_in_words", "spread",
                 "scan_share", "draws")  # fmt: skip
        return {**dict.fromkeys(names), "reasons": ()}
    return {
        "verdict": chance.verdict, "least_clearance": chance.least_clearance, "interval": chance.interval,
        "chance_of_contact": chance.chance_of_contact, "chance_in_words": chance.words,
        "spread": chance.spread, "scan_share": chance.scan_share, "draws": chance.draws,
        "reasons": chance.reasons,
    }  # fmt: skip


def place_of(report: Report, contact: Contact | None) -> dict[str, object]:
    """Where a contact is, under which part and in which pose: SI, ``point`` in the scan's own coordinates;
    every key None where there is no contact."""
    if contact is None:
        return dict.fromkeys(
            ("station", "x", "y", "point", "part", "zone", "load", "way", "offset", "heading")
        )
    return {
        "station": contact.station, **place(report.scan.frame, contact.xy), "part": contact.part, "zone":
        contact.zone, "load": contact.variant.load, "way": contact.variant.way, "offset":
        contact.variant.offset, "heading": contact.variant.heading,
    }  # fmt: skip


def _cut(report: Report) -> dict[str, object]:
    plan = report.plan
    if plan is None:
        keys = (
            "deepest",
            "area",
            "volume",
            "feasible",
            "provisional",
            "margin",
            "claim",
            "slack",
            "short_by",
            "binding",
            "drain",
            "guided",
        )
        return {
            **dict.fromkeys((*keys, "short_at", "certificate")),
            "binding": [],
            "provisional": report.depths_provisional,
        }
    proof = plan.certificate
    return {
        "deepest": plan.deepest, "area": plan.area, "volume": plan.volume, "feasible": plan.feasible,
        "provisional": report.depths_provisional, "margin": plan.margin, "claim": plan.claim, "slack":
        plan.slack, "short_by": plan.short_by, "binding": list(plan.binding), "short_at": None if
        plan.short_at is None else place_of(report, plan.short_at), "certificate": {
            "least_excess": proof.least_excess, "loosest": proof.loosest, "spectral_radius":
            proof.spectral_radius, "iterations": proof.iterations, "residual": proof.residual,
        },
        "drain": None if plan.drain is None else asdict(plan.drain),
        "guided": None if plan.guided is None else _guided(plan.guided),
    }  # fmt: skip


def _guided(guided: Guided) -> dict[str, object]:
    """The method, its settings, and the cut that they were laid under: what ``claim`` and ``slack`` are said
    of.
    """
    least = {"deepest": guided.deepest, "area": guided.area, "volume": guided.volume}
    return {"method": guided.method, "settings": len(guided.facets), "least": least}


def _after(report: Report) -> dict[str, object]:
    swept = report.plan.after.worst if report.plan is not None else None
    return {
        "least_clearance": report.after.least_clearance if report.after else (swept.gap if swept else None),
        "interval": report.after.interval if report.after else None,
        "chance_of_contact": report.after.chance_of_contact if report.after else None,
        "verdict": report.after.verdict if report.after else None,
        "chance_in_words": report.after.words if report.after else None,
        "swept_gap": swept.gap if swept else None,
        "in_use": _chance(report.after_in_use),
    }


def _certificate(cast: RayCast | NotCast | None) -> dict[str, object]:
    """The second opinion on the swept gaps; null with the reason where there is none."""
    if not isinstance(cast, RayCast):
        why = None if cast is None else {"code": cast.code, "words": cast.words}
        return {"ray_cast": None, "ray_cast_absent": why}
    differs = None if cast.differs is None else {"code": ReasonCode.RAY_CAST, **asdict(cast.differs)}
    each = [{"name": v.name, "before": _gap(v.before), "after": _gap(v.after)} for v in cast.vehicles]
    first = {key: each[0][key] for key in ("before", "after")}
    return {
        "ray_cast": {**first, "tolerance": DIFFERS, "differs": differs, "pairs": cast.pairs, "vehicles":
                     each},
        "ray_cast_absent": None,
    }  # fmt: skip


def _gap(gap: Gap) -> dict[str, object]:
    return {"swept": gap.swept, "cast": gap.cast, "due": gap.due}


def _option(report: Report, option: Option) -> dict[str, object]:
    """One row of the options; what has no meaning for it is null."""
    return {
        "kind": option.kind, "name": option.name, "clearance": option.clearance, "chance": option.chance,
        "enough": option.enough, "reaches": option.works, "reaches_in_use": option.works_in_use,
        "answer": str(option.answer), "in_use_clearance": option.in_use,
        "in_use_chance": option.in_use_chance, "depth": option.depth, "volume": option.volume, "litres":
        option.volume * 1000, "needs": option.needs, "on_line": option.on_line,
        **line(report.scan.frame, option.line), "swept_gap": option.swept, "forbids": list(option.forbids),
        "hours": list(option.hours), "hire_days": list(option.hire), "laid_litres": option.laid * 1000,
        "cost": list(option.cost), "cost_in": option.cost_in,
    }  # fmt: skip


def _vehicle(row: VehicleRow, report: Report) -> dict[str, object]:
    """One of several vehicles: its verdict, and which part of the common cut it needs."""
    cut = report.plan.volume if report.plan is not None else 0.0
    return {
        "name": row.name, "loads": list(row.loads), "verdict": row.today.verdict, "part": row.part,
        "least_clearance": row.today.least_clearance, "interval": row.today.interval,
        "chance_of_contact": row.today.chance_of_contact, "in_use_clearance": row.in_use.least_clearance,
        "in_use_chance": row.in_use.chance_of_contact, "after_clearance": row.after.least_clearance,
        "after_interval": row.after.interval, "after_chance": row.after.chance_of_contact,
        "after_in_use_clearance": row.after_in_use.least_clearance if row.after_in_use else None,
        "after_in_use_chance": row.after_in_use.chance_of_contact if row.after_in_use else None,
        "enough": row.enough,
        "short_by": row.short_by, "alone": row.alone, "volume": row.volume, "litres": row.volume * 1000,
        "share": row.volume / cut if cut > 0 else None,
    }  # fmt: skip


def surface_document(report: Report) -> dict[str, object]:
    """Raster, errors of the scan with where they are from, and how its waves are shared."""
    surface, worst = report.surface, report.before.worst
    error = surface.error
    at_worst = math.nan
    if worst is not None:
        place = np.array([worst.xy])
        at_worst = surface.standard_error.sample(place)[0]
        if error.slab is not None:
            at_worst = error.slab.at_site(place).std()
    return {
        "cell": surface.height.frame.cell,
        "noise": error.white,
        "systematic": math.hypot(error.patch, error.warp),
        "standard_error": float(at_worst),
        "patch": error.patch, "patch_length": error.patch_length, "warp": error.warp, "warp_length":
        error.warp_length, "sources": {"white": error.white_source, "patch": error.patch_source, "warp":
        error.warp_source}, "points_used": surface.points_used, "removed": dict(surface.removed),
        "not_measured_under_vehicle": report.before.unmeasured, "split": split_document(report),
        "doubts": [{**asdict(d), "kind": d.kind.value} for d in error.doubts],
    }  # fmt: skip


def _scan(report: Report) -> dict[str, object]:
    scan = report.scan
    files = [
        {"file": f.path.name, "format": f.format, "points": f.points, "dropped": f.dropped, "unit_reason":
        f.unit_reason,
         "up_reason": f.up_reason, "fit_error": f.fit_error,
         "unit_guessed": f.unit_guessed, "unit_alternatives": f.unit_alternatives, "up_guessed": f.up_guessed,
         "quantum": f.quantum}
        for f in scan.files
    ]  # fmt: skip
    return {
        "points": scan.count, "unit": scan.frame.unit, "up": scan.frame.up, "files": files,
        "passes": [asdict(each) for each in scan.passes],
    }  # fmt: skip


def plain_document(document: Mapping[str, object]) -> dict[str, object]:
    """``plain`` of each key."""
    return {key: plain(item) for key, item in document.items()}


def plain(value: object) -> object:
    """numpy, tuples and members of lists of words -> what JSON has; NaN and infinity -> null."""
    if isinstance(value, Mapping):
        return {str(key): plain(item) for key, item in value.items()}
    if isinstance(value, (list, tuple, np.ndarray)):
        return [plain(item) for item in value]
    if isinstance(value, (bool, np.bool_)):
        return bool(value)
    if isinstance(value, (int, np.integer)):
        return int(value)
    if isinstance(value, (float, np.floating)):
        return float(value) if math.isfinite(value) else None
    if isinstance(value, Enum):
        return value.value
    return value if value is None else str(value)
