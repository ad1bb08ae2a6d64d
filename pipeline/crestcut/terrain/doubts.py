"""What of a scan its error model cannot hold: a unit or axis that was guessed, no scale, coarse coordinates,
stations that disagree."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from crestcut.base.units import METRES_PER
from crestcut.scan import COARSE, Scan, disagreement, rounded
from crestcut.terrain.records import Doubt, DoubtKind

# photogrammetry knows shapes, not sizes: a unit that was only guessed is no scale
NO_SCALE = "photogrammetry has no scale of its own and nothing says its unit"
ROOM = 1.0  # m of line beyond the wheelbase without which no drive is worth looking at (common practice)


@dataclass(frozen=True)
class Drive:
    """A vehicle on its line: length of the line as the guessed unit has it, m; wheelbase and width of the
    vehicle, which a tape has measured, m."""

    line: float
    wheelbase: float
    width: float


def doubts_of(scan: Scan, scanner: str | None) -> tuple[Doubt, ...]:
    """The doubts that a scan brings along, whatever drives over it."""
    found = []
    unit = bool(scan.files) and all(f.unit_guessed for f in scan.files)
    up = any(f.up_guessed for f in scan.files)
    if scanner == "photogrammetry" and any(f.unit_guessed for f in scan.files):
        mend = "check two lengths that cross with a tape, and write [scan] unit"
        found.append(Doubt(DoubtKind.NO_SCALE, f"{NO_SCALE}: {mend}", True))
    elif unit or up:
        # a repeat that says its unit lies on the others only if theirs is right
        others = set.intersection(*(set(f.unit_alternatives) for f in scan.files)) if unit else set[str]()
        found.append(_guess(scan, unit, tuple(u for u in METRES_PER if u in others)))
    if (quantum := max((f.quantum for f in scan.files), default=0.0)) > COARSE:
        found.append(Doubt(DoubtKind.ROUNDED, rounded(quantum), True))
    if (apart := disagreement(scan.passes)) is not None:
        found.append(Doubt(DoubtKind.STATIONS, apart, True))
    return tuple(found)


def _guess(scan: Scan, unit: bool, others: tuple[str, ...]) -> Doubt:
    up, frame = any(f.up_guessed for f in scan.files), scan.frame
    what = [f"the unit ({frame.unit})"] * unit + [f"the axis that points up ({frame.up})"] * up
    said = f"{' and '.join(what)} {'were' if len(what) > 1 else 'was'} guessed"
    if others:
        said += f", and in {' or '.join(others)} the scan would be a slab too"
    write = " and ".join(
        [" or ".join(f'unit = "{u}"' for u in (frame.unit, *others))] * unit + [f'up = "{frame.up}"'] * up
    )
    check = "check one length with a tape and " if unit else ""
    return Doubt(DoubtKind.GUESSED, f"{said}: {check}write {write} under [scan]", bool(others), others)


def driven(doubts: Iterable[Doubt], scan: Scan, drives: Iterable[Drive]) -> tuple[Doubt, ...]:
    """The doubts without those units in which no vehicle of the job has room on its line and on the slab."""
    few = scan.all_over[:: max(1, len(scan.all_over) // 100_000), :2]
    low, high = np.percentile(few, [1.0, 99.0], axis=0)
    across, every = float(np.min(high - low)), tuple(drives)

    def fits(unit: str) -> bool:
        by = METRES_PER[unit] / METRES_PER.get(scan.frame.unit, 1.0)
        return any(d.line * by >= d.wheelbase + ROOM and across * by >= d.width for d in every)

    def settled(doubt: Doubt) -> Doubt:
        left = tuple(u for u in doubt.units if fits(u))
        return doubt if left == doubt.units else _guess(scan, True, left)

    return tuple(settled(d) for d in doubts)
