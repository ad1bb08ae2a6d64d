"""Setting out that survives the first pass: drilled dots, slot depths, the acceptance string, and how to
find every place again.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.base.units import at_least
from crestcut.work.jig_records import Ties
from crestcut.work.records import Dot, KerfDepth, SetOut, StringRow
from crestcut.work.site import FOOT, Site, runs, station_offset
from crestcut.work.strips import GAP
from crestcut.work.ties import ties_at
from crestcut.work.timber import string_sag
from crestcut.work.workable import SKIN, Workable, covered

PULL = 30.0  # N on the string: 3 kg hung over its end
STRING_BLOCKS = 0.100  # m, equal
STRING_AIR = 0.050  # m between string and the highest ground, at least
TOO_DEEP = 0.003  # m over-cut: the no-go side of the stick
LEAST_DOT = 0.002  # m: shallower dots are lost in the first pass
DOT_SPACING = 0.15  # m
MOST_DOTS = 36
PRINTED = 4  # decimals of a metre on paper
ACROSS = 0.00012  # m: from row to row a piece done by hand is even to this
RIM = 0.003  # m: where the plan wavers, a shallower rim is tapered evenly and has no figures
GAUGE = 0.00015  # m added where hands work to a depth gauge
KERF_STEP = 0.05  # m along a strip
READ_TO = 0.0005  # m: what is read off a rule
CHECK_LANES = 0.10  # m between strings
CHECK_STEP = 0.10  # m along the string; half of it where the cut is short
SHORT_CUT = 0.45  # m


def make_set_out(
    site: Site,
    work: Workable,
    wheels: tuple[float, float],
    tracks: tuple[tuple[str, float], ...],
    marks: Mapping[str, tuple[float, float]],
    height: HeightGrid,
) -> SetOut:
    """Everything that is marked on the slab. wheels : stations of the axles where the blocks stand if they
    can, m.

    tracks : names and offsets of the tyre lines.  marks : name -> site x, y, m; height : the slab as it is.
    """
    asked = replace(site, finished=work.finished)
    dots = _dots(asked, np.minimum(asked.depth, site.depth), marks, height)
    strings = _strings(asked, site.finished, wheels)
    spans = [s.front_at - s.rear_at for s in strings]
    return SetOut(
        marks=tuple((name, *station_offset(site, height.frame, xy)) for name, xy in sorted(marks.items())),
        corners=tuple(_corners(asked, marks, height)),
        dots=tuple(dots),
        kerfs=tuple(_kerfs(asked, work)),
        strings=tuple(strings),
        outline=tuple(_spans(asked, work, asked.depth > SKIN)),
        core=tuple(_spans(asked, work, work.core)),
        tyres=tracks,
        feather=site.feather,
        pull=PULL,
        sag=string_sag(max(spans, default=0.0), PULL),
        notes=tuple(_notes(dots, marks)),
    )


def _dots(
    site: Site, depth: FloatArray, marks: Mapping[str, tuple[float, float]], height: HeightGrid
) -> list[Dot]:
    """On a square of nodes over the cut, the deepest place first.

    depth : (ny, nx) m, never deeper than the plan: strips may lie deeper, a dot would stay there as a pock.
    """
    if depth.max(initial=0.0) < LEAST_DOT:
        return []
    deepest = _deepest(site, depth, marks, height)
    spacing = DOT_SPACING
    while True:
        step = max(round(spacing / site.cell), 1)
        j, i = np.meshgrid(
            np.arange(deepest[0] % step, depth.shape[0], step),
            np.arange(deepest[1] % step, depth.shape[1], step),
            indexing="ij",
        )
        deep = depth[j, i] >= LEAST_DOT
        if deep.sum() <= MOST_DOTS:
            break
        spacing *= 1.15
    places = [(int(deepest[0]), int(deepest[1]))]
    places += [p for p in zip(j[deep].tolist(), i[deep].tolist(), strict=True) if p != places[0]]
    return [
        Dot(
            f"D{k + 1}", float(site.station[i]), float(site.offset[j]), float(depth[j, i]),
            ties_at(site, marks, height, j, i),
        )
        for k, (j, i) in enumerate(places)
    ]  # fmt: skip


def _deepest(
    site: Site, depth: FloatArray, marks: Mapping[str, tuple[float, float]], height: HeightGrid
) -> tuple[int, int]:
    """Row and column of the deepest place; of several that print alike, one that tapes find."""
    j, i = (int(k) for k in np.unravel_index(int(depth.argmax()), depth.shape))
    if len(marks) < 2 or ties_at(site, marks, height, j, i) is not None:
        return j, i
    near = np.argwhere(np.round(depth, PRINTED) >= np.round(depth[j, i], PRINTED)).tolist()
    tied = (p for p in near[:: max(len(near) // 60, 1)] if ties_at(site, marks, height, *p) is not None)
    row, column = next(tied, (j, i))
    return int(row), int(column)


def _corners(
    site: Site, marks: Mapping[str, tuple[float, float]], height: HeightGrid
) -> list[tuple[str, float, float, Ties | None]]:
    """First, last, leftmost and rightmost place of the cut."""
    cut = np.argwhere(site.depth > SKIN)
    if len(cut) == 0:
        return []
    ends = (("first", 1, np.argmin), ("last", 1, np.argmax), ("right", 0, np.argmin), ("left", 0, np.argmax))
    out = []
    for name, axis, pick in ends:
        row, column = (int(k) for k in cut[pick(cut[:, axis])])
        ties = ties_at(site, marks, height, row, column)
        out.append((name, float(site.station[column]), float(site.offset[row]), ties))
    return out


def _kerfs(site: Site, work: Workable) -> list[KerfDepth]:
    """Depths every 50 mm along the middle of each strip and at its deepest place; every break of the
    depth where hands do a piece.
    """
    depth = site.depth
    step = max(round(KERF_STEP / site.cell), 1)
    origin = round(-site.station[0] / site.cell) % step  # so that stations are whole steps
    by_hand = work.core & ~covered(work)
    out = []
    for lane, (low, high) in enumerate(work.strips, start=1):
        row = (low + high) // 2
        cut = np.flatnonzero(depth[row] > SKIN)
        if len(cut):
            columns = {i for i in range(int(cut[0]), int(cut[-1]) + 1) if i % step == origin}
            out += _places(site, lane, row, columns | {int(depth[row].argmax())}, False)
        pieces = [
            (a, b)
            for a, b in runs(np.asarray(by_hand[low : high + 1].any(axis=0)), GAP)
            if work.deeper <= 0 or depth[low : high + 1, a : b + 1].max() >= RIM
        ]
        even = max(ACROSS, work.deeper)
        rows = {row for a, b in pieces for row in _rows_for(depth, low, high, slice(a, b + 1), even)}
        for row in sorted(rows):
            for first, last in pieces:
                a, b = max(first - 1, 0), min(last + 1, depth.shape[1] - 1)
                out += _places(site, lane, row, _breaks(depth[row], a, b, even) | {last}, True)
    return out


def _rows_for(depth: FloatArray, low: int, high: int, part: slice, close: float) -> list[int]:
    """Rows of a piece between which its depth changes evenly across the strip, to ``close`` m."""
    if high - low < 2:
        return list(dict.fromkeys((low, high)))
    share = ((np.arange(low, high + 1) - low) / (high - low))[:, None]
    even = depth[low, part] * (1 - share) + depth[high, part] * share
    if np.abs(even - depth[low : high + 1, part]).max() <= close:
        return [low, high]
    middle = (low + high) // 2
    return [
        *_rows_for(depth, low, middle, part, close),
        *_rows_for(depth, middle, high, part, close)[1:],
    ]


def _places(site: Site, lane: int, row: int, columns: set[int], by_hand: bool) -> list[KerfDepth]:
    depths = {i: float(site.depth[row, i]) for i in sorted(columns)}
    if by_hand:  # a gauge in the hand reads to a quarter of a millimetre
        depths = {i: d + GAUGE if d > SKIN else d for i, d in depths.items()}
    return [
        KerfDepth(lane, float(site.offset[row]), float(site.station[i]), at_least(d), by_hand)
        for i, d in depths.items()
    ]


def _breaks(depth: FloatArray, first: int, last: int, close: float) -> set[int]:
    """Columns from first to last between which the depth of a row is straight to ``close`` m."""
    out = {first}
    at = first
    while at < last:
        good, bad = at + 1, last + 1
        while bad - good > 1:
            middle = (good + bad) // 2
            good, bad = (middle, bad) if _straight(depth, at, middle, close) else (good, middle)
        at = good
        out.add(at)
    return out


def _straight(depth: FloatArray, first: int, last: int, close: float) -> bool:
    line = np.interp(np.arange(first, last + 1), [first, last], depth[[first, last]])
    return bool(np.abs(line - depth[first : last + 1]).max() <= close)


def _spans(site: Site, work: Workable, mask: np.ndarray) -> list[tuple[float, float, float]]:
    """Offset, first and last station of every run of ``mask`` on both edges of each strip, and on the
    outermost rows.
    """
    if not mask.any():
        return []
    cut = np.flatnonzero(mask.any(axis=1))
    rows = {int(cut[0]), int(cut[-1]), *(row for strip in work.strips for row in strip)}
    step = max(round(0.05 / site.cell), 1)
    rows |= {int(r) for r in cut if r % step == 0}
    return [
        (float(site.offset[row]), float(site.station[first]), float(site.station[last]))
        for row in sorted(rows)
        for first, last in runs(mask[row])
    ]


def _strings(site: Site, plan: FloatArray, wheels: tuple[float, float]) -> list[StringRow]:
    """Strings along the travel over the whole cut, 100 mm apart, the deepest place under one of them.

    plan : (rows, columns) the finished surface that is enough, m; the site's own may lie deeper where the jig
    runs even.
    """
    depth = site.depth
    deep = np.flatnonzero((depth >= LEAST_DOT).any(axis=1))
    if len(deep) == 0:
        return []
    through = int(np.unravel_index(int(depth.argmax()), depth.shape)[0])
    step = max(round(CHECK_LANES / site.cell), 1)
    rows = [int(r) for r in range(through % step, depth.shape[0], step) if depth[r].max() >= LEAST_DOT]
    each = enumerate(rows, start=1)
    return [s for number, row in each for s in _string(site, plan[row], number, row, wheels)]


def _string(
    site: Site, plan: FloatArray, number: int, row: int, wheels: tuple[float, float]
) -> list[StringRow]:
    """Readings along one line. Its blocks stand where the axles do, or on the nearest untouched concrete
    beyond.
    """
    depth = site.depth[row]
    cut = np.flatnonzero(depth > SKIN)
    a = _block(site, row, round((wheels[0] - site.station[0]) / site.cell), int(cut[0]), -1)
    b = _block(site, row, round((wheels[1] - site.station[0]) / site.cell), int(cut[-1]), 1)
    if a is None or b is None:
        return []
    ground, finished = site.ground[row], site.finished[row]
    share = (np.arange(a, b + 1) - a) / (b - a)
    chord = ground[a] * (1 - share) + ground[b] * share
    standing_up = float(np.nanmax(ground[a : b + 1] - chord))
    blocks = math.ceil(max(STRING_BLOCKS, standing_up + STRING_AIR) / 0.01 - 1e-9) * 0.01
    hangs = string_sag((b - a) * site.cell, PULL)
    length = (cut[-1] - cut[0]) * site.cell
    step = max(round((CHECK_STEP if length > SHORT_CUT else CHECK_STEP / 2) / site.cell), 1)
    columns = {*range(step, b - a, step), int(depth[a : b + 1].argmax())} & {*(cut - a).tolist()}
    out = []
    for k in sorted(columns):
        # the string hangs below its chord by a parabola; half a millimetre is read off a rule, so up to
        # that: what passes is nowhere proud of the plan, and no more than that is asked for beyond it
        string = blocks + chord[k] - 4 * hangs * share[k] * (1 - share[k])
        least = at_least(string - float(plan[a + k]), READ_TO)
        most = at_least(string - float(finished[a + k]), READ_TO) + TOO_DEEP
        out.append(
            StringRow(
                number, float(site.offset[row]), float(site.station[a]), float(site.station[b]), blocks,
                k * site.cell, least, most,
            )
        )  # fmt: skip
    return out


def _block(site: Site, row: int, wheel: int, edge: int, side: int) -> int | None:
    """The column of a block: at the wheel's station, or beyond the cut, on concrete that is measured and
    stays.
    """
    foot = max(round(FOOT / site.cell), 1)
    column = min(wheel, edge - foot - 1) if side < 0 else max(wheel, edge + foot + 1)
    column = min(max(column, foot), len(site.station) - 1 - foot)
    while foot <= column <= len(site.station) - 1 - foot:
        outside = column < edge if side < 0 else column > edge
        if outside and site.standing[row, column - foot : column + foot + 1].all():
            return column
        column += side
    return None


def _notes(dots: Sequence[Dot], marks: Mapping[str, tuple[float, float]]) -> list[str]:
    notes = [
        (
            "Chalk the line of travel first, from its two ends; stations run along it, offsets to the left of"
            " it are plus."
        ),
        (
            "Tapes lie on the slab and are pulled straight. Drill each dot with a depth stop and paint its"
            " bottom: grind until the paint is just gone."
        ),
    ]
    if len(marks) < 2:
        notes.append(
            "Fewer than two marks were scanned: no tape ties can be printed. Put three or more marks on the"
            " slab, round the cut, and scan it with them."
        )
    lost = sum(dot.ties is None for dot in dots)
    if len(marks) >= 2 and lost:
        notes.append(
            f"{lost} of {len(dots)} dots have no pair of marks that cross at 50 to 130 degrees: they are set"
            " by station and offset alone."
        )
    return notes
