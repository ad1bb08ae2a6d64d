"""``floor.json``: a floor's answer as numbers, SI throughout; what is not known is null, never zero."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path

from crestcut.floor import Figure, Spot, SpotJig, lifts_of
from crestcut.report.view.floor_report import FloorReport
from crestcut.report.view.frames import frame_and_units, place
from crestcut.report.view.result import plain_document, write_json

SCHEMA = "crestcut.floor/1"
FLOOR_NAME = "floor.json"


def floor_document(report: FloorReport) -> dict[str, object]:
    """Every key. ``x``, ``y`` and ``point`` as in ``result.json``."""
    judged, levelling, wish = report.judged, report.judged.levelling, report.job.wish
    error = judged.surface.error
    document = {
        "schema": SCHEMA,
        "version": report.version,
        "seed": report.seed,
        "title": report.title,
        "dated": report.job.base.date,
        **frame_and_units(report.scan.frame),
        "inputs": {
            "job": {"name": report.job.base.path.name, "sha256": report.job.base.sha256},
            "scans": [{"name": f.path.name, "sha256": f.sha256} for f in report.scan.files],
        },
        "asked": {
            "straightedge": wish.straightedge,
            "gap": wish.gap,
            "ff": wish.ff,
            "fl": wish.fl,
            "reference": wish.reference,
            "class": wish.name or None,
            "confidence": wish.confidence,
        },
        "verdict": judged.verdict,
        "findings": [
            {"doubt": f.doubt.value, **_place(report, f.xy), "area": f.area, "size": f.size}
            for f in judged.findings
        ],
        "chance": judged.chance,
        "missed": judged.missed,
        "figures": [_figure(f) for f in judged.figures],
        "laid": None
        if judged.laid is None
        else {
            "first": _place(report, judged.laid.first),
            "second": _place(report, judged.laid.second),
            "at": _place(report, judged.laid.at),
            "gap": judged.laid.gap,
        },
        "numbers": None if judged.numbers is None else asdict(judged.numbers),
        "high": [_spot(report, s) for s in levelling.high],
        "low": [_spot(report, s) for s in levelling.low],
        "cut": _cut(report),
        "after": [_figure(f) for f in judged.after],
        "jigs": [_jig(report, one) for one in report.work.spots],
        "release": {
            "state": report.release.state,
            "reasons": list(report.release.words),
            "codes": [{"code": r.code, "about": r.about} for r in report.release.reasons],
        },
        "surface": {
            "cell": judged.surface.height.frame.cell,
            "area": judged.area,
            "noise": error.white,
            "patch": error.patch,
            "systematic": error.warp,
            "systematic_length": error.warp_length,
            "systematic_source": error.warp_source,
        },
        "scan": {"points": int(sum(f.points for f in report.scan.files)), "unit": report.scan.frame.unit},
        "hand_readings": judged.told,
        "contradictions": list(judged.contradictions),
        "notes": [*report.scan.notes, *judged.surface.notes, *judged.notes],
        "seconds": dict(report.seconds),
    }
    return plain_document(document)


def _cut(report: FloorReport) -> dict[str, object]:
    """What is to be ground and filled, and what is claimed of it."""
    judged, levelling = report.judged, report.judged.levelling
    return {
        "deepest": levelling.deepest,
        "area": levelling.area,
        "volume": levelling.volume,
        "claim": levelling.claim,
        "slack": levelling.slack,
        "reached": levelling.reached,
        "short_by": levelling.short_by,
        "binding": list(levelling.binding),
        "ground_only": levelling.ground_only,
        "today": levelling.today,
        "grinding_alone_helps": levelling.alone_helps,
        "filled": levelling.filled,
        "fill_volume": sum(s.volume for s in levelling.low),
        "provisional": judged.provisional,
    }


def write_floor_json(report: FloorReport, path: Path) -> None:
    """``floor.json``."""
    write_json(floor_document(report), path)


def _figure(figure: Figure) -> dict[str, object]:
    return {
        "name": figure.name,
        "estimate": figure.estimate,
        "interval": list(figure.interval),
        "seen": figure.seen,
        "asked": figure.asked,
        "chance": figure.chance,
        "missed": figure.missed,
    }


def _place(report: FloorReport, xy: tuple[float, float]) -> dict[str, object]:
    return place(report.scan.frame, xy)


def _spot(report: FloorReport, spot: Spot) -> dict[str, object]:
    return {
        "name": spot.name,
        **_place(report, spot.xy),
        "stands": spot.stands,
        "deepest": spot.deepest,
        "area": spot.area,
        "volume": spot.volume,
        "level": spot.level,
    }


def _jig(report: FloorReport, one: SpotJig) -> dict[str, object]:
    raster = report.judged.surface.height.frame

    def at(u: float, v: float) -> tuple[float, float]:
        x, y = raster.to_site((u, v))
        return float(x), float(y)

    if one.jig is None:
        dots = [
            {"name": d.name, "depth": d.depth, **_place(report, at(d.station, d.offset))} for d in one.dots
        ]
        return {"spot": one.spot.name, "why": one.why, "dots": dots}
    return {
        "spot": one.spot.name,
        "reach": one.jig.reach,
        "smoothing": one.jig.smoothing,
        "lifts": lifts_of(one.spot, one.jig),
        "pairs": [list(p) for p in one.jig.pairs],
        "blocks": [
            {
                "name": s.name, "u": s.station, "v": s.offset, "block": s.block,
                **_place(report, at(s.station, s.offset)),
            }
            for s in one.jig.spots
        ],
    }  # fmt: skip
