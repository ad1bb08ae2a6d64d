"""Setting out that survives the first pass: drilled dots, contours, the acceptance string, and how to find
every place again.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np

from crestcut.base.grid import FloatArray, HeightGrid
from crestcut.base.units import INCH, at_least
from crestcut.work.jig_records import Ties
from crestcut.work.records import Contour, Dot, SetOut, StringRow
from crestcut.work.site import FOOT, Site, cuts_along, runs, station_offset
from crestcut.work.ties import BY_LINE, Marks, ties_at
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
CONTOUR, CONTOUR_INCH = 0.005, 3 / 16 * INCH  # m between chalked lines of equal depth
READ_TO = 0.0005  # m: what is read off a rule
CONTOUR_LANES = 0.10  # m between the lines across the cut that contours are chalked from
PROUD, STANDS = (
    0.0005,
    0.001,
)  # m: a straightedge between readings, or strings, may lie so far over, under the plan
FARTHEST_READING = 0.60  # m between readings, and between strings: a straightedge reaches over both
MOST_READINGS = 24  # of one cut, that a person has time for (common practice, no source)
WIDER = (1.0, 2.0, 4.0)  # times what a straightedge may be off the plan, until there are no more of them
SHARES = 60  # places on a row that are compared with those of another
ALONG, ACROSS = 0.02, 0.05  # m between the places where a reading, a string may be


def make_set_out(
    site: Site,
    work: Workable,
    wheels: tuple[float, float],
    tracks: tuple[tuple[str, float], ...],
    marks: Marks,
    height: HeightGrid,
    metric: bool = True,
) -> SetOut:
    """Everything that is marked on the slab. wheels : stations of the axles where the blocks stand if they
    can, m.

    tracks : names and offsets of the tyre lines.  height : the slab as it is.  metric : contours every 5 mm,
    else every 3/16 in.
    """
    dots = dots_of(site, marks, height)
    strings = _few_strings(site, work.core, wheels)
    every = CONTOUR if metric else CONTOUR_INCH
    spans = [s.front_at - s.rear_at for s in strings]
    return SetOut(
        marks=tuple((name, *station_offset(site, height.frame, xy)) for name, xy in sorted(marks.items())),
        corners=tuple(_corners(site, marks, height)),
        dots=tuple(dots),
        contours=tuple(_contours(site, every)) if work.left or not work.facets else (),
        strings=tuple(strings),
        outline=tuple(_spans(site, work, site.depth > SKIN)),
        core=tuple(_spans(site, work, work.core)),
        tyres=tracks,
        feather=site.feather,
        pull=PULL,
        sag=string_sag(max(spans, default=0.0), PULL),
        notes=tuple(_notes(dots, marks)),
        every=every,
    )


def dots_of(site: Site, marks: Marks, height: HeightGrid, before: int = 0) -> list[Dot]:
    """On a square of nodes over the cut, the deepest place first. before : dots that are numbered already."""
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
            f"D{before + k + 1}", float(site.station[i]), float(site.offset[j]), float(depth[j, i]),
            ties_at(site, marks, height, j, i),
        )
        for k, (j, i) in enumerate(places)
    ]  # fmt: skip


def _deepest(site: Site, depth: FloatArray, marks: Marks, height: HeightGrid) -> tuple[int, int]:
    """Row and column of the deepest place; of several that print alike, one that tapes find."""
    j, i = (int(k) for k in np.unravel_index(int(depth.argmax()), depth.shape))
    if len(marks) < 2 or ties_at(site, marks, height, j, i) is not None:
        return j, i
    near = np.argwhere(np.round(depth, PRINTED) >= np.round(depth[j, i], PRINTED)).tolist()
    tied = (p for p in near[:: max(len(near) // 60, 1)] if ties_at(site, marks, height, *p) is not None)
    row, column = next(tied, (j, i))
    return int(row), int(column)


def _corners(site: Site, marks: Marks, height: HeightGrid) -> list[tuple[str, float, float, Ties | None]]:
    """First, last, leftmost and rightmost place of the cut."""
    cut = np.argwhere(site.depth > SKIN)
    if len(cut) == 0:
        return []
    ends = (("first", 1, np.argmin), ("last", 1, np.argmax), ("right", 0, np.argmin), ("left", 0, np.argmax))
    out = []
    for number, (name, axis, pick) in enumerate(ends, start=1):
        row, column = (int(k) for k in cut[pick(cut[:, axis])])
        ties = ties_at(site, marks, height, row, column)
        out.append((f"C{number} {name}", float(site.station[column]), float(site.offset[row]), ties))
    return out


def _contours(site: Site, every: float) -> list[Contour]:
    """Where the depth passes every so many metres, on lines 100 mm apart and on the cut's first and last
    row."""
    depth = site.depth
    rows = np.flatnonzero((depth > SKIN).any(axis=1))
    if not len(rows):
        return []
    step = max(round(CONTOUR_LANES / site.cell), 1)
    origin = round(-site.offset[0] / site.cell) % step  # so that offsets are whole steps
    lines = sorted({int(rows[0]), int(rows[-1]), *(int(r) for r in rows if r % step == origin)})
    levels = [SKIN, *np.arange(every, float(depth.max()), every)]
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


def fewest(count: int, far: int, off: Callable[[int, int], float]) -> list[int]:
    """The fewest of 0 .. count - 1, first and last among them, neighbours at most ``far`` apart, with ``off``
    finite between neighbours; of several ways that with the least sum of squares. Those next to each other
    always fit. (A shortest path, by dynamic programming.)
    """
    steps, came = [(0, 0.0)] + [(count, 0.0)] * (count - 1), [0] * count
    for k in range(1, count):
        for before in range(max(k - far, 0), k):
            if steps[before][0] + 1 > steps[k][0]:
                continue
            lies = 0.0 if before == k - 1 else off(before, k)
            here = steps[before][0] + 1, steps[before][1] + lies**2
            if lies < math.inf and here < steps[k]:
                steps[k], came[k] = here, before
    way = [count - 1]
    while way[-1]:
        way.append(came[way[-1]])
    return way[::-1]


def _few_strings(site: Site, core: np.ndarray, wheels: tuple[float, float]) -> list[StringRow]:
    """``_strings`` of each cut along the line, those of one after those of another; what a straightedge may
    be off the plan is doubled until a person has time for them. A string over two cuts far apart would hang
    centimetres low, and be read where nothing is ground.
    """
    out: list[StringRow] = []
    cuts = cuts_along(site.depth > SKIN, site.cell)
    for first, last in cuts:
        here, blocks = (site, core), _beside(wheels, site.station[[first, last]])
        if len(cuts) > 1:
            of_it = (np.arange(len(site.station)) >= first) & (np.arange(len(site.station)) <= last)
            alone = replace(site, finished=np.where(of_it, site.finished, site.ground))
            here = alone, core & of_it
        found: list[StringRow] = []
        for wider in WIDER:
            found = _strings(*here, blocks, wider)
            if len(found) <= MOST_READINGS:
                break
        before = out[-1].lane if out else 0
        out += [replace(row, lane=before + row.lane) for row in found]
    return out


def _beside(wheels: tuple[float, float], cut: FloatArray) -> tuple[float, float]:
    """Where the axles would stand over a cut from and to these stations, m: as they do where they straddle
    some of it, else with its middle under theirs."""
    if wheels[0] <= cut[1] and wheels[1] >= cut[0]:
        return wheels
    on = float(cut.mean() - sum(wheels) / 2)
    return wheels[0] + on, wheels[1] + on


def _strings(site: Site, core: np.ndarray, wheels: tuple[float, float], wider: float) -> list[StringRow]:
    """As few strings along the travel, and as few readings on each, as decide: a straightedge laid from
    reading to reading, and from string to string between the stop lines, lies nowhere by more than ``PROUD``
    over the plan: who has reached every reading and grinds what it rocks on has nothing prouder than twice
    that. Nor does it lie by more than ``STANDS`` under it, where he would grind what was planned to stand;
    from string to string three times that, since facets step where they meet.
    """
    deep = core & (site.depth >= LEAST_DOT)
    cut = np.flatnonzero(deep.any(axis=1))
    if len(cut) == 0:
        return []
    step = max(round(ACROSS / site.cell), 1)
    rows = _spaced(int(cut[0]), int(cut[-1]), step)
    rows = rows[deep[rows].any(axis=1)]
    profile = {int(row): _from_edge_to_edge(site, deep, int(row)) for row in cut}

    def off(a: int, b: int) -> float:
        first, last = int(rows[a]), int(rows[b])
        between = [row for row in range(first + 1, last) if row in profile]
        share = (np.array(between, dtype=np.float64)[:, None] - first) / (last - first)
        laid = profile[first] * (1 - share) + profile[last] * share
        over = laid - np.array([profile[row] for row in between]).reshape(laid.shape)
        return float(_off(over.ravel(), wider, 3 * STANDS))

    far = max(round(FARTHEST_READING / site.cell / step), 1)
    out: list[StringRow] = []
    for k in fewest(len(rows), far, off):
        columns = np.flatnonzero(deep[rows[k]])
        number = out[-1].lane + 1 if out else 1
        out += _string(site, number, int(rows[k]), _readings(site, int(rows[k]), columns, wider), wheels)
        if len(out) > MOST_READINGS and wider < WIDER[-1]:
            break  # others are sought
    return out


def _spaced(first: int, last: int, step: int) -> np.ndarray:
    """Nodes from the first to the last, both among them, evenly and about ``step`` apart."""
    return np.unique(np.linspace(first, last, max(round((last - first) / step), 1) + 1).round().astype(int))


def _off(over: FloatArray, wider: float, stands: float) -> FloatArray:
    """(...) how far straightedges that lie ``over`` (..., n) m over the plan are off it, m; infinite where
    that is more than ``PROUD`` over it or ``stands`` under it, each ``wider`` times, or not known.
    """
    low, high = over.min(axis=-1, initial=0.0), over.max(axis=-1, initial=0.0)
    near = (high <= wider * PROUD) & (low >= -wider * stands)  # of NaN false
    return np.where(near, np.maximum(high, -low), math.inf)


def _from_edge_to_edge(site: Site, deep: np.ndarray, row: int) -> FloatArray:
    """Finished heights of a row's core at ``SHARES`` shares of its length: rows are compared along the stop
    lines, which run askew.
    """
    columns = np.flatnonzero(deep[row])
    at = np.linspace(columns[0], columns[-1], SHARES)
    return np.interp(at, np.arange(len(site.station)), site.finished[row])


def _readings(site: Site, row: int, columns: np.ndarray, wider: float) -> list[int]:
    """Columns of the readings on a row whose core lies in ``columns``."""
    step = max(round(ALONG / site.cell), 1)
    places = _spaced(int(columns[0]), int(columns[-1]), step)
    far = max(round(FARTHEST_READING / site.cell / step), 1)
    lies = _all_off(site.finished[row], places, far, wider)
    return [int(places[k]) for k in fewest(len(places), far, lambda a, b: float(lies[b - a, a]))]


def _all_off(finished: FloatArray, places: np.ndarray, far: int, wider: float) -> FloatArray:
    """(far + 1, places) ``_off`` of a straightedge from each place to that so many further on: of two cuts
    far apart on one row there are tens of thousands, so all of a length are laid at once."""
    out = np.full((far + 1, len(places)), math.inf)
    for apart in range(2, min(far, len(places) - 1) + 1):
        first, last = places[:-apart], places[apart:]
        long = (last - first)[:, None]
        t = np.arange(int(long.max()) + 1)
        rise = (finished[last] - finished[first])[:, None] / long
        laid = np.where(t == long, finished[last][:, None], t * rise + finished[first][:, None])
        at = np.minimum(first[:, None] + t, len(finished) - 1)
        over = np.where(t <= long, laid - finished[at], 0.0)
        out[apart, : len(first)] = _off(over, wider, STANDS)
    return out


def _string(
    site: Site, number: int, row: int, columns: Sequence[int], wheels: tuple[float, float]
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
    out = []
    for k in (column - a for column in columns):
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


def _notes(dots: Sequence[Dot], marks: Marks) -> list[str]:
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
    lost = [dot for dot in dots if dot.ties is None]
    if lost:
        why = (
            "Fewer than two marks were scanned" if len(marks) < 2
            else "No two tapes cross at 50 to 130 degrees"
        )  # fmt: skip
        which = "any dot" if len(lost) == len(dots) else f"{len(lost)} of the {len(dots)} dots"
        far = sum(abs(dot.offset) > BY_LINE for dot in lost)
        more = (
            f" {far} of them lie over {BY_LINE:.1f} m off it, where a square is no longer true to 5 mm:"
            " chalk a"
            " second line parallel to it there."
            if far
            else ""
        )
        notes.append(
            f"{why} at {which} marked 'line': set {'it' if len(lost) == 1 else 'them'} by tape along the"
            " chalked"
            f" line of travel and squarely off it.{more} Three marks or more round the cut, anywhere in the"
            " scan,"
            " give tapes to all."
        )
    return notes
