"""What ``look`` says of everything in a scan that is not one sound slab."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from crestcut.report.words.look_grade import MOSTLY
from crestcut.scan import Health, Scan
from crestcut.terrain import Seen, layers_words, rough_words, thing_words, up_words

MOST = 5  # of a kind, named in words; the file has them all
LEAST_AREA = 0.03  # m2: less is a leg, a stone or a tuft
ROUGH_SHARE = 0.25  # of what was scanned from which the scan as a whole is said to be no slab


def told(health: Health, scan: Scan, seen: Seen | None) -> Health:
    """The health of a scan with what was seen in its notes; ground that things hide is off its area."""
    if words := up_words(scan):
        health = replace(health, notes=(*health.notes, words))
    if seen is None:
        return health
    hidden = sum(t.area * t.unseen for t in seen.things)
    area = max(health.area - hidden, 0.0)
    rough = float(seen.rough.sum()) * seen.cell**2
    notes = []
    if rough > ROUGH_SHARE * health.area:
        notes.append(f"{rough:.1f} m2 of it are {rough_words(seen.roughness)}; no verdict is given there")
    notes += _some([layers_words(f, scan.frame) for f in seen.layers])
    notes += _some([thing_words(t, scan.frame) for t in seen.things if t.area >= LEAST_AREA])
    share = rough / health.area if health.area > 0 else 0.0
    nothing = ("nothing about a slab: what was scanned is none",) if share > MOSTLY else health.decides
    return replace(health, area=area, rough_share=share, decides=nothing, notes=(*health.notes, *notes))


def _some(words: list[str]) -> list[str]:
    """The first few, and how many more there are."""
    more = len(words) - MOST
    return words if more <= 0 else [*words[:MOST], f"and {more} smaller such places; look.json has them all"]


def seen_record(scan: Scan, seen: Seen | None) -> dict[str, Any]:
    """Keys of ``look.json``: SI; places in the scan's own plan coordinates; empty where not sought."""
    if seen is None:
        return {"things": [], "twice": [], "rough_area": None, "roughness": None}
    place = scan.frame.site_to_plan
    rough = float(seen.rough.sum()) * seen.cell**2
    return {
        "things": [
            {
                "at": place((t.x, t.y)).tolist(), "size": list(t.size), "height": t.height,
                "lowest": t.lowest, "area": t.area, "points": t.points, "not_measured": t.unseen,
            }
            for t in seen.things
        ],
        "twice": [
            {"at": place((f.x, f.y)).tolist(), "size": list(f.size), "area": f.area, "apart": f.apart}
            for f in seen.layers
        ],
        "rough_area": rough,
        "roughness": seen.roughness if rough > 0 else None,
    }  # fmt: skip
