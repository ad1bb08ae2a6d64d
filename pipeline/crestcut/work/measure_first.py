"""The measure-first sheet: which hand measurements would settle it, where, what to expect, and what each
outcome means.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.base.units import both, millimetres
from crestcut.work.jig_records import Ties
from crestcut.work.records import TYRES, BoardsUnder, Measure, ReadingSpot
from crestcut.work.ties import Marks, tape_ties

NEAR = 0.002  # m: a reading this close to what was expected says the same as the scan

Place = Callable[[FloatArray], FloatArray]


def measures(
    advice: Sequence[Mapping[str, object]],
    marks: Marks,
    height: HeightGrid,
    start: tuple[float, float],
    to_site: Place | None = None,
) -> tuple[Measure, ...]:
    """From the run's advice. start : grid u, v of the line's start, m.  to_site : turns ``where_xy``, places
    in the scan's own coordinates, into site metres; None: they are. Without ``where_xy`` the words of
    ``where`` are kept.
    """
    return tuple(_measure(item, marks, height, start, to_site) for item in advice)


def _measure(
    item: Mapping[str, object],
    marks: Marks,
    height: HeightGrid,
    start: tuple[float, float],
    to_site: Place | None,
) -> Measure:
    kind = str(item.get("kind", "measurement"))
    places: list[tuple[ReadingSpot, float, float, Ties | None]] = []
    found = item.get("where_xy")
    spots = np.asarray(found if isinstance(found, (list, tuple)) else [], dtype=float).reshape(-1, 2)
    boards = _boards(item.get("boards"))
    write = _write(item, kind, spots, boards)
    if to_site is not None and len(spots):
        spots = to_site(spots)
    for name, (x, y) in zip(_names(kind, len(spots)), spots, strict=True):
        x, y = float(x), float(y)
        u, v = height.frame.to_grid((x, y))
        places.append((name, float(u) - start[0], float(v) - start[1], tape_ties((x, y), marks, height)))
    how = str(item.get("how") or kind)
    if not places and item.get("where"):
        how += f", at {item['where']} in the scan's own coordinates"
    expect = _number(item.get("expect_m"))
    settles = item.get("settles")
    said = (
        (settles,)
        if isinstance(settles, str)
        else tuple(str(s) for s in settles)
        if isinstance(settles, (list, tuple))
        else ()
    )
    narrows = _number(item.get("narrows"))
    settled = () if kind == "walk" else said or _outcomes(kind, expect)
    cautions = board_cautions(boards) if boards is not None else ()
    return Measure(kind, how, expect, narrows, tuple(places), settled, write, boards, cautions)


def _boards(found: object) -> BoardsUnder | None:
    if not isinstance(found, Mapping):
        return None
    thickness, before, beyond = (float(found[k]) for k in ("thickness", "before", "beyond"))
    backwards, dry_only = bool(found["backwards"]), bool(found["dry_only"])
    return BoardsUnder(str(found["name"]), thickness, before, beyond, backwards, dry_only)


def board_cautions(boards: BoardsUnder) -> tuple[str, ...]:
    """How to lay and drive on them (common practice, no source)."""
    on = "backwards from ahead" if boards.backwards else "forwards"
    wet = "Dry ground only: wet" if boards.dry_only else "Wet over 10 % of slope"
    return (
        f"Boards: {boards.name}, sound and all of one thickness, {millimetres(boards.before, 0)} before the "
        f"middle of each tyre on the way on and {millimetres(boards.beyond, 0)} past it, as wide as the "
        "tyre, flat on swept slab, never one on another. One that rocks or slides under a foot is not used.",
        f"Roll on {on} at a creep, somebody watching from the uphill side, and off the same way. Chock every "
        "tyre on its board. Nobody reaches under, lies beside it or stands downhill: read from the uphill "
        "side with a feeler on a long stick, or press soft clay pads on the slab and measure them once it is "
        "off again.",
        f"{wet}, icy or loose: no boards, a string instead.",
    )


def _write(
    item: Mapping[str, object], kind: str, spots: FloatArray, boards: BoardsUnder | None
) -> tuple[str, ...]:
    """What goes into the job file, its coordinates those of the scan; ``...`` stands for the reading."""
    part, blocks = item.get("part"), _number(item.get("blocks_m"))
    if kind == "felt gap" and len(spots) == 5 and part:
        x, y = (spots[0] + spots[1]) / 2  # the middle between the front wheels
        stood = ("[[witness]]", f'part = "{part}"', f"front_axle = [{x:.3f}, {y:.3f}]")
        if boards is None:
            return (*stood, 'gap = "... mm"   or   touched = true')
        raised = f'raised = "{boards.thickness * 1000:g} mm"   # as measured where the tyres stand'
        return (*stood, 'gap = "... mm"', raised)
    if kind == "string" and len(spots) >= 2 and math.isfinite(blocks):
        a, b = ("[" + ", ".join(f"{v:.3f}" for v in p) + "]" for p in spots[:2])
        high, placed = millimetres(blocks, 0), _number(item.get("placed_m"))
        string = ["[[string]]", f"a = {a}", f"b = {b}", f'blocks = "{high}"', 'down = "... mm"']
        string += [f'placed = "{millimetres(placed, 0)}"'] if math.isfinite(placed) else []
        seek = np.asarray(item.get("seek_m") or [], dtype=float).reshape(-1, 2)
        if len(seek) > 1:  # read twice: one string in the file for each
            return tuple(
                line
                for low, top in seek
                for line in (*string, 'at = "least"', f'between = ["{low:.2f} m", "{top:.2f} m"]')
            )
        least = len(seek) > 0 or len(spots) == 2
        far = f"{np.hypot(*(spots[2] - spots[0])) * 1000:.0f} mm" if not least else "least"
        return (*string, f'at = "{far}"')
    return ()


def _names(kind: str, count: int) -> list[ReadingSpot]:
    if kind == "string" and count >= 2:
        return [ReadingSpot.BLOCK_A, ReadingSpot.BLOCK_B, *[ReadingSpot.READ] * (count - 2)]
    return [*TYRES, ReadingSpot.FEEL] if count == 5 else [ReadingSpot.HERE] * count


def _number(value: object) -> float:
    """NaN where there is none."""
    return float(value) if isinstance(value, (int, float)) else math.nan


def _outcomes(kind: str, expect: float) -> tuple[str, ...]:
    """What to do with the reading."""
    if math.isnan(expect):
        return ("Write the reading into the job file and run it again.",)
    if kind == "felt gap" and expect <= 0:
        return (
            "It touches, or the vehicle will not roll on by itself: the scan is right; write touched ="
            " true and run again.",
            "It clears: write the gap you felt; the cut becomes shallower, or falls away.",
        )
    what = "gap" if kind == "felt gap" else "distance"
    return (
        f"Within {both(NEAR)} of it: the scan is right here; the margin shrinks and depths can be released.",
        f"More than that: the {what} is larger than scanned; the cut becomes shallower, or falls away.",
        f"Less: the {what} is smaller; the cut becomes deeper, and the sheet says so when it is run again.",
    )
