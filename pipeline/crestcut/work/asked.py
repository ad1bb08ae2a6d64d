"""What to measure by hand first, as plain rows that page, sheets and ``result.json`` share."""

from __future__ import annotations

import math
from dataclasses import asdict

import numpy as np

from crestcut.base.units import both
from crestcut.contact import Passage
from crestcut.job import Job
from crestcut.measure_next import BLOCKS_PLACED, CARD, KINDS, Advice, measure_first
from crestcut.scan import Frame, Scan
from crestcut.standing import Standing
from crestcut.terrain import Surface
from crestcut.work.timber import flat_boards
from crestcut.work.trade import INCHES

Row = dict[str, object]


def board_sizes(job: Job) -> dict[str, float]:
    """Name and thickness, m, of the boards that are sold where the slab is."""
    return flat_boards((job.site.country or "").upper() not in INCHES)


def asked_first(first: Standing, surface: Surface, scan: Scan, job: Job, carried: float) -> tuple[Row, ...]:
    """What to measure by hand first: where the answer is open, or the scan's own errors carry more than half
    of what is wanted. carried : by the scan's errors, m. A second walk where there is one only."""
    today = first.today
    settled = today.verdict != "cannot tell" and carried <= job.wanted.want / 2
    if settled or today.doubts:  # no reading tells what stands there, or which of two layers is the slab
        return ()
    sizes = board_sizes(job)
    found = measure_first(
        Passage(first.vehicle, surface, first.ride, first.before, first.driver.parts),
        today=today, confidence=job.wanted.confidence, evidence=first.drawn.evidence,
        kinds=(*KINDS, "walk") if len(job.scan.files) == 1 else KINDS, sizes=tuple(sizes.values()),
    )  # fmt: skip
    sure = today.chance_of_contact >= job.wanted.confidence
    return tuple(row_of(a, scan.frame, sizes, sure) for a in found)


def row_of(a: Advice, frame: Frame, sizes: dict[str, float], sure: bool) -> Row:
    """One measurement. sizes : name and thickness, m, of boards; sure : that the vehicle touches."""
    places = [frame.site_to_plan(np.array(xy)) for xy in a.where]
    return {
        "kind": a.kind,
        # a felt gap is taken where the part comes nearest, the last of its places; the others are the wheels'
        "where": "; ".join(
            f"x {x:.2f}, y {y:.2f}" for x, y in (places[-1:] if a.kind == "felt gap" else places)
        ),
        "where_xy": [[float(v) for v in xy] for xy in places],
        "expect": "" if math.isnan(a.expect) else _expected(a.kind, a.expect, sure),
        "expect_m": None if math.isnan(a.expect) else a.expect,
        "narrows": a.narrows,
        "how": a.how,
        "settles": list(a.settles),
        "blocks": both(a.blocks) if a.kind == "string" else None,
        "blocks_m": _known(a.blocks),
        "placed_m": BLOCKS_PLACED if a.kind == "string" else None,
        "seek_m": [list(stretch) for stretch in a.seek],
        "part": a.part or None,
        "raised": None if a.boards is None else both(a.boards.thickness),
        "boards": None if a.boards is None else _boards(a, sizes),
        "worth": None if a.worth is None else {k: _known(v) for k, v in asdict(a.worth).items()},
    }


def _boards(a: Advice, sizes: dict[str, float]) -> Row:
    boards = a.boards
    assert boards is not None
    name = next(n for n, v in sizes.items() if math.isclose(v, boards.thickness))
    return {
        "name": name, "thickness": boards.thickness, "before": boards.before, "beyond": boards.beyond,
        "backwards": boards.backwards, "clear": boards.clear, "dry_only": boards.dry_only,
    }  # fmt: skip


def _known(value: float) -> float | None:
    return None if math.isnan(value) else value


def _expected(kind: str, expect: float, sure: bool) -> str:
    """What to expect of a reading, m, in words; ``sure`` that the vehicle touches."""
    if expect < 0:
        return "a touch" if sure else "a touch, or next to it"
    return "a touch, or one card at most" if kind == "felt gap" and expect < CARD else both(expect)
