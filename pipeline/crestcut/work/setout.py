"""Setting out that survives the first pass: drilled dots, slot depths, the acceptance string, and how to
find every place again.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np

from crestcut.grid import FloatArray, HeightGrid
from crestcut.units import millimetres
from crestcut.work.jig import Site
from crestcut.work.lanes import ALONG, SKIN, Lanes, runs
from crestcut.work.records import Dot, JigRow, KerfDepth, SetOut, StringRow, Ties
from crestcut.work.ties import tape_ties
from crestcut.work.timber import string_sag

PULL = 30.0  # N on the string: 3 kg hung over its end
STRING_BLOCKS = 0.100  # m, equal
STRING_AIR = 0.050  # m between string and the highest ground, at least
TOO_DEEP = 0.003  # m over-cut: the no-go side of the stick
LEAST_DOT = 0.002  # m: shallower dots are lost in the first pass
DOT_SPACING = 0.15  # m
MOST_DOTS = 48
KERF_STEP = 0.05  # m along a lane
CHECK_LANES = 0.10  # m between lanes with a string
CHECK_STEP = 0.10  # m along the string; half of it where the cut is short
SHORT_CUT = 0.6  # m


def make_set_out(
    site: Site,
    lanes: Lanes,
    rows: Sequence[JigRow],
    marks: Mapping[str, tuple[float, float]],
    height: HeightGrid,
) -> SetOut:
    """Everything that is marked on the slab. marks : name -> site x, y, m; height : the slab as it is."""
    finder = _Finder(site, marks, height)
    dots = _dots(site, finder)
    strings = _strings(site, lanes, rows)
    spans = [s.front_at - s.rear_at for s in strings]
    notes = _notes(dots, marks)
    return SetOut(
        marks=tuple((name, *finder.station_offset(xy)) for name, xy in sorted(marks.items())),
        corners=tuple(_corners(site, finder)),
        dots=tuple(dots),
        kerfs=tuple(_kerfs(site, lanes)),
        strings=tuple(strings),
        outline=tuple(_outline(site, lanes)),
        pull=PULL,
        sag=string_sag(max(spans, default=0.0), PULL),
        notes=tuple(notes),
    )


class _Finder:
    """Stations, offsets and ties of raster nodes."""

    def __init__(self, site: Site, marks: Mapping[str, tuple[float, float]], height: HeightGrid) -> None:
        self.site, self.marks, self.height = site, marks, height

    def station_offset(self, xy: tuple[float, float]) -> tuple[float, float]:
        u, v = self.height.frame.to_grid(xy)
        return float(u + self.site.station[0]), float(v + self.site.offset[0])

    def ties(self, row: int, column: int) -> Ties | None:
        x, y = self.height.frame.to_site((column * self.site.cell, row * self.site.cell))
        return tape_ties((float(x), float(y)), self.marks, self.height)


def _dots(site: Site, finder: _Finder) -> list[Dot]:
    """On a square of nodes over the cut, the deepest place first."""
    depth = np.nan_to_num(site.ground - site.finished)
    if depth.max(initial=0.0) < LEAST_DOT:
        return []
    deepest = np.unravel_index(int(depth.argmax()), depth.shape)
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
        Dot(f"D{k + 1}", float(site.station[i]), float(site.offset[j]), float(depth[j, i]), finder.ties(j, i))
        for k, (j, i) in enumerate(places)
    ]


def _corners(site: Site, finder: _Finder) -> list[tuple[str, float, float, Ties | None]]:
    """First, last, leftmost and rightmost place of the cut."""
    cut = np.argwhere(np.nan_to_num(site.ground - site.finished) > SKIN)
    if len(cut) == 0:
        return []
    ends = (("first", 1, np.argmin), ("last", 1, np.argmax), ("right", 0, np.argmin), ("left", 0, np.argmax))
    out = []
    for name, axis, pick in ends:
        row, column = cut[pick(cut[:, axis])]
        out.append(
            (name, float(site.station[column]), float(site.offset[row]), finder.ties(int(row), int(column)))
        )
    return out


def _kerfs(site: Site, lanes: Lanes) -> list[KerfDepth]:
    """Depths every 50 mm of each lane, where it begins and ends, and at every break of its depth."""
    depth = np.nan_to_num(site.ground - site.finished)
    step = max(round(KERF_STEP / site.cell), 1)
    out = []
    for lane, row in enumerate(lanes.rows):
        cut = np.flatnonzero(depth[row] > SKIN)
        if len(cut) == 0:
            continue
        columns = {*range(int(cut[0]) + (-int(cut[0])) % step, int(cut[-1]) + 1, step), *_breaks(depth[row])}
        out += [
            KerfDepth(lane, float(site.offset[row]), float(site.station[i]), float(depth[row, i]))
            for i in sorted(columns)
        ]
    return out


def _breaks(depth: FloatArray) -> list[int]:
    """Columns between which the depth of a lane is straight to a quarter of a millimetre."""
    out = []
    for first, last in runs(depth > SKIN):
        at = max(first - 1, 0)
        end = min(last + 1, len(depth) - 1)
        out.append(at)
        while at < end:
            good, bad = at + 1, end + 1
            while bad - good > 1:
                middle = (good + bad) // 2
                good, bad = (middle, bad) if _straight(depth, at, middle) else (good, middle)
            at = good
            out.append(at)
    return out


def _straight(depth: FloatArray, first: int, last: int) -> bool:
    line = np.interp(np.arange(first, last + 1), [first, last], depth[[first, last]])
    return bool(np.abs(line - depth[first : last + 1]).max() <= ALONG)


def _outline(site: Site, lanes: Lanes) -> list[tuple[float, float, float]]:
    """Stop marks: where the cut of each lane begins and ends."""
    depth = np.nan_to_num(site.ground - site.finished)
    return [
        (float(site.offset[row]), float(site.station[first]), float(site.station[last]))
        for row in lanes.rows
        for first, last in runs(depth[row] > SKIN)
    ]


def _strings(site: Site, lanes: Lanes, rows: Sequence[JigRow]) -> list[StringRow]:
    """Strings over some of the lanes, at least 100 mm apart, the deepest among them."""
    by_lane: dict[int, list[JigRow]] = {}
    for row in rows:
        by_lane.setdefault(row.lane, []).append(row)
    if not by_lane:
        return []
    deepest = max(by_lane, key=lambda lane: max(r.deepest for r in by_lane[lane]))
    chosen = [deepest]
    for direction in (
        sorted(n for n in by_lane if n > deepest),
        sorted((n for n in by_lane if n < deepest), reverse=True),
    ):
        last = by_lane[deepest][0].offset
        for lane in direction:
            if abs(by_lane[lane][0].offset - last) >= CHECK_LANES - 1e-9:
                chosen.append(lane)
                last = by_lane[lane][0].offset
    return [s for lane in sorted(chosen) for s in _string(site, int(lanes.rows[lane]), by_lane[lane])]


def _string(site: Site, row: int, settings: Sequence[JigRow]) -> list[StringRow]:
    """Readings along one lane. The blocks stand where the jig's outermost blocks stand."""
    rear_at, front_at = min(r.rear_at for r in settings), max(r.front_at for r in settings)
    a, b = (round((s - site.station[0]) / site.cell) for s in (rear_at, front_at))
    ground, finished = site.ground[row], site.finished[row]
    share = (np.arange(a, b + 1) - a) / (b - a)
    chord = ground[a] * (1 - share) + ground[b] * share
    standing_up = float(np.nanmax(ground[a : b + 1] - chord))
    blocks = math.ceil(max(STRING_BLOCKS, standing_up + STRING_AIR) / 0.01 - 1e-9) * 0.01
    depth = np.nan_to_num(ground - finished)
    cut = np.flatnonzero(depth[a : b + 1] > SKIN)
    length = (cut[-1] - cut[0]) * site.cell if len(cut) else 0.0
    step = max(round((CHECK_STEP if length > SHORT_CUT else CHECK_STEP / 2) / site.cell), 1)
    columns = {*range(step, b - a, step), int(depth[a : b + 1].argmax())} & {*cut.tolist()}
    out = []
    for k in sorted(columns):
        # rounded up to the millimetre: a string that reads it or more cannot hide a proud place
        least = math.ceil((blocks + chord[k] - finished[a + k]) * 1000 - 1e-6) / 1000
        out.append(
            StringRow(
                settings[0].lane,
                settings[0].offset,
                rear_at,
                front_at,
                blocks,
                k * site.cell,
                least,
                least + TOO_DEEP,
            )
        )
    return out


def _notes(dots: Sequence[Dot], marks: Mapping[str, tuple[float, float]]) -> list[str]:
    notes = [
        (
            "Chalk the line of travel first, from its two ends; stations run along it, offsets to the left of"
            " it are plus."
        ),
        (
            f"String: pull it with {PULL:.0f} N (3 kg over the end), both blocks"
            f" {millimetres(STRING_BLOCKS, 0)} or as listed, equal, on untouched concrete."
        ),
    ]
    if len(marks) < 2:
        notes.append(
            "Fewer than two marks were scanned: no tape ties can be printed. Put marks on the slab and scan"
            " it with them."
        )
    lost = sum(dot.ties is None for dot in dots)
    if len(marks) >= 2 and lost:
        notes.append(
            f"{lost} of {len(dots)} dots have no pair of marks that cross at 50 to 130 degrees: they are set"
            " by station and offset alone."
        )
    return notes
