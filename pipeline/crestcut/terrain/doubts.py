"""What of a scan its error model cannot hold: a unit or axis that was guessed, no scale, coarse coordinates,
stations that disagree, a mesh seen from below, a bare slab of which nothing shows which way is up."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

import numpy as np

from crestcut.base.grid import HeightGrid
from crestcut.base.units import METRES_PER, both
from crestcut.scan import COARSE, Scan, disagreement, rounded
from crestcut.terrain.records import Doubt, DoubtKind, Surface

# photogrammetry knows shapes, not sizes: a unit that was only guessed is no scale
NO_SCALE = "photogrammetry has no scale of its own and nothing says its unit"
FACES_DOWN = (
    "the scan's mesh is seen from below: upside down, mirrored, or inside out; see in look.png whether what"
    ' is high there is high: if not, write up = "-z" under [scan]; if so, turn its normals, export it again'
)
LEVEL = 0.005  # m: a slab that lies no farther from a string tells nobody which way is up
ROOM = 1.0  # m of line beyond the wheelbase without which no drive is worth looking at (common practice)


@dataclass(frozen=True)
class Drive:
    """A vehicle on its line: length of the line as the guessed unit has it, m; wheelbase and width of the
    vehicle, which a tape has measured, m."""

    line: float
    wheelbase: float
    width: float


def doubts_of(scan: Scan, scanner: str | None, height: HeightGrid | None = None) -> tuple[Doubt, ...]:
    """The doubts that a scan brings along, whatever drives over it.  height : as fitted along the line."""
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
    if (words := up_words(scan, height)) and not up:
        down = any(f.faces_down for f in scan.files)
        found.append(Doubt(DoubtKind.FACES if down else DoubtKind.UP, words, down))
    return tuple(found)


def up_settled(surface: Surface) -> Surface:
    """The surface after readings by hand that agree with it: turned over, it would contradict them."""
    doubts = tuple(d for d in surface.error.doubts if d.kind is not DoubtKind.UP)
    return replace(surface, error=replace(surface.error, doubts=doubts))


def up_words(scan: Scan, height: HeightGrid | None = None) -> str:
    """What speaks against up being up, or that nothing in a bare slab, which is one turned over too, speaks
    for it: then what whoever knows the place can see to be so, or not; "" where something does.  height : as
    fitted along the line."""
    if any(f.faces_down for f in scan.files):
        return FACES_DOWN
    if any(f.up_shown for f in scan.files):
        return ""
    over = np.nan if height is None else _over_a_string(height)
    lies = "the slab lies as it does in the pictures"
    if abs(over) >= LEVEL:
        side, other = ("over", "under") if over > 0 else ("under", "over")
        lies = f"the slab lies up to {both(abs(over), 0)} {side} a string from end to end, not {other} it"
    return (
        f"nothing in the scan shows which way is up: this holds if {lies} (a kerb, wall or box in the scan,"
        " or a string or gap read by hand, would show it)"
    )


def _over_a_string(height: HeightGrid) -> float:
    """Where the middle of the slab lies farthest from a straight line between its ends, m; up is plus; NaN
    where too little is seen."""
    rows = height.values[len(height.values) // 3 : 2 * len(height.values) // 3 + 1]
    seen = np.isfinite(rows).any(axis=0)
    if seen.sum() < 3:
        return float("nan")
    u, z = np.flatnonzero(seen), np.nanmean(rows[:, seen], axis=0)
    off = z - np.interp(u, u[[0, -1]], z[[0, -1]])
    return float(off[np.argmax(np.abs(off))])


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
