"""Setting out that survives the first pass: drilled dots, contours, the acceptance string, and how to find
every place again.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.base.units import at_least
from crestcut.work.jig_records import Ties
from crestcut.work.records import Contour, Dot, SetOut, StringRow
from crestcut.work.site import FOOT, Site, runs, station_offset
from crestcut.work.ties import ties_at
from crestcut.work.timber import string_sag
from crestcut.work.workable import SKIN, Workable

PULL = 30.0  # N on the string: 3 kg hung over its end
STRING_BLOCKS = 0.100  # m, equal
STRING_AIR = 0.050  # m between string and the highest ground, at least
TOO_DEEP = 0.003  # m over-cut: the no-go side of the stick
LEAST_DOT = 0.002  # m: shallower dots are lost in the first pass
DOT_SPACING = 0.15  # m
MOST_DOTS = 36
PRINTED = 4  # decimals of a metre on paper
CONTOUR = 0.005  # m between chalked lines of equal depth
READ_TO = 0.0005  # m: what is read off a rule
CHECK_LANES = 0.30  # m between strings
CONTOUR_LANES = 0.10  # m between the lines across the cut that contours are chalked from
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
    dots = _dots(site, marks, height)
    strings = _strings(site, wheels)
    spans = [s.front_at - s.rear_at for s in strings]
    return SetOut(
        marks=tuple((name, *station_offset(site, height.frame, xy)) for name, xy in sorted(marks.items())),
        corners=tuple(_corners(site, marks, height)),
        dots=tuple(dots),
        contours=tuple(_contours(site)) if work.left or not work.facets else (),
        strings=tuple(strings),
        outline=tuple(_spans(site, work, site.depth > SKIN)),
        core=tuple(_spans(site, work, work.core)),
        tyres=tracks,
        feather=site.feather,
        pull=PULL,
        sag=string_sag(max(spans, default=0.0), PULL),
        notes=tuple(_notes(dots, marks)),
    )


def _dots(site: Site, marks: Mapping[str, tuple[float, float]], height: HeightGrid) -> list[Dot]:
    """On a square of nodes over the cut, the deepest place first."""
    depth = site.depth
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


def _contours(site: Site) -> list[Contour]:
    """Where the depth passes every 5 mm, on lines 100 mm apart and on the cut's first and last row."""
    depth = site.depth
    rows = np.flatnonzero((depth > SKIN).any(axis=1))
    if not len(rows):
        return []
    step = max(round(CONTOUR_LANES / site.cell), 1)
    origin = round(-site.offset[0] / site.cell) % step  # so that offsets are whole steps
    lines = sorted({int(rows[0]), int(rows[-1]), *(int(r) for r in rows if r % step == origin)})
    levels = [SKIN, *np.arange(CONTOUR, float(depth.max()), CONTOUR)]
    out = []
    for row in lines:
        for level in levels:
            for first, last in runs(depth[row] > level):
                ends = _crossing(depth[row], first, -1, level), _crossing(depth[row], last, 1, level)
                at = [site.station_at(end) for end in ends]
                out.append(
                    Contour(float(site.offset[row]), float(level) if level > SKIN else 0.0, at[0], at[1])
                )
    return out


def _crossing(depth: FloatArray, column: int, way: int, level: float) -> float:
    """Where the depth comes down to the level between this column and the next one that way."""
    beyond = column + way
    if not 0 <= beyond < len(depth):
        return float(column)
    return column + way * float((depth[column] - level) / max(depth[column] - depth[beyond], 1e-9))


def _spans(site: Site, work: Workable, mask: np.ndarray) -> list[tuple[float, float, float]]:
    """Offset, first and last station of every run of ``mask`` on both edges of each facet, and on the
    outermost rows.
    """
    if not mask.any():
        return []
    cut = np.flatnonzero(mask.any(axis=1))
    rows = {int(cut[0]), int(cut[-1]), *(row for facet in work.facets for row in (facet.low, facet.high))}
    step = max(round(0.05 / site.cell), 1)
    rows |= {int(r) for r in cut if r % step == 0}
    return [
        (float(site.offset[row]), float(site.station[first]), float(site.station[last]))
        for row in sorted(rows)
        for first, last in runs(mask[row])
    ]


def _strings(site: Site, wheels: tuple[float, float]) -> list[StringRow]:
    """Strings along the travel over the whole cut, 300 mm apart, the deepest place under one of them."""
    depth = site.depth
    deep = np.flatnonzero((depth >= LEAST_DOT).any(axis=1))
    if len(deep) == 0:
        return []
    through = int(np.unravel_index(int(depth.argmax()), depth.shape)[0])
    step = max(round(CHECK_LANES / site.cell), 1)
    rows = [int(r) for r in range(through % step, depth.shape[0], step) if depth[r].max() >= LEAST_DOT]
    each = enumerate(rows, start=1)
    return [s for number, row in each for s in _string(site, number, row, wheels)]


def _string(site: Site, number: int, row: int, wheels: tuple[float, float]) -> list[StringRow]:
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
        least = at_least(string - float(finished[a + k]), READ_TO)
        most = least + TOO_DEEP
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
