"""What is the slab's of the waves a scan shows, and which real features it has, in words and figures."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from crestcut.base.units import millimetres
from crestcut.study import Report
from crestcut.terrain import Feature, Known, Shape

FROM = {
    Known.REPEATS: "from walks of the same slab compared with each other",
    Known.WALK: "from one walk compared with itself",
    Known.NAMED: "from the heights themselves and what such scanners usually do",
    Known.UNNAMED: "from the heights themselves; no scanner was named",
}
BELOW = {Shape.BUMP: ("hump", "hollow"), Shape.RUT: ("ridge", "rut"), Shape.STEP: ("step", "step")}


def split_words(report: Report) -> list[str]:
    """A sentence on whose the waves are, and one on each real feature; nothing where that was not judged."""
    slab = report.surface.error.slab
    if slab is None:
        return []
    split = slab.split
    low, high = (millimetres(v) for v in split.slab_range)
    how = FROM[report.surface.error.known]
    said = [
        f"Of {millimetres(split.seen)} of waves that the scan shows {millimetres(split.slab)} are the slab's"
        f" ({low} to {high} may be), {millimetres(split.scan)} the scan's own: {how}"
    ]
    return said + [feature_words(report, f) for f in slab.features]


def feature_words(report: Report, feature: Feature) -> str:
    """What it is, how high, where, and how sure."""
    what = BELOW[feature.kind][feature.height < 0]
    sure = "" if feature.chance > 0.99 else f", {feature.chance:.0%} sure"
    size = f", about {2.5 * feature.size:.1f} m wide" if feature.kind != Shape.STEP else ""
    places = _places(report, feature)
    where = f"at x {places[0][0]:.2f}, y {places[0][1]:.2f}"
    if len(places) > 1:
        where = (
            f"from x {places[0][0]:.2f}, y {places[0][1]:.2f} to x {places[1][0]:.2f}, y {places[1][1]:.2f}"
        )
    return (
        f"Real feature kept: a {what} of {millimetres(abs(feature.height))}{size}, {where}{sure};"
        " a straightedge there tells"
    )


def features_of(report: Report) -> Iterator[dict[str, object]]:
    """The features as ``result.json`` has them: SI, places in the scan's own coordinates."""
    slab = report.surface.error.slab
    for f in slab.features if slab is not None else ():
        yield {
            "kind": BELOW[f.kind][f.height < 0], "height": f.height, "size": f.size, "chance": f.chance,
            "points": _places(report, f),
        }  # fmt: skip


def split_document(report: Report) -> dict[str, object] | None:
    """``surface.split``: 1 sd in m; None where slab and scan were not judged apart."""
    slab = report.surface.error.slab
    if slab is None:
        return None
    s = slab.split
    return {
        "seen": s.seen, "slab": s.slab, "slab_range": list(s.slab_range), "scan": s.scan,
        "slab_length": s.slab_length, "scan_length": s.scan_length,
        "known_from": str(report.surface.error.known), "features": list(features_of(report)),
    }  # fmt: skip


def _places(report: Report, feature: Feature) -> list[tuple[float, float]]:
    """Its place, or both ends of its line where it runs right across, in the scan's own coordinates."""
    frame = report.surface.height.frame
    ends = [
        tuple(
            high if math.isnan(v) and last else 0.0 if math.isnan(v) else v
            for v, high in zip(feature.at, frame.size, strict=True)
        )
        for last in (False, True)
    ]
    places = [ends[0]] if ends[0] == ends[1] else ends
    return [report.plan_point((float(x), float(y))) for x, y in (frame.to_site(np.array(p)) for p in places)]
