"""The slab cut upright, along the line and across it: levels before and after over a datum line, and a table
of them beneath."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from crestcut.base.grid import FloatArray
from crestcut.report.pictures.ink import nice_step
from crestcut.report.plots.heights import DASHES
from crestcut.report.plots.items import (
    BODY,
    BOLD,
    GREY,
    HAIR,
    INK,
    MIDDLE,
    SMALL,
    Area,
    Box,
    Hatch,
    Item,
    Stroke,
    Words,
    segment,
    width_of,
)  # fmt: skip
from crestcut.report.plots.subject import NOT_MEASURED, Subject

LAYER, TABLE = "SECTION", "SECTION_TABLE"
STRETCHES = (1, 2, 5, 10, 20)
COLUMN = 5.0  # mm between two figures of a table, at least
HEAD = 31.0  # mm left of the first: what stands in the rows, and the levels' own scale
AIR, FLAT, TITLE = 3.0, 18.0, 7.0  # mm: about the ground; the least that a drawing is high; its heading
SAMPLES = 600


@dataclass(frozen=True, eq=False)
class Upright:
    """One cut through the slab. along (n,) m from its left end; existing, finished (n,) own heights, NaN not
    measured.  at, words, table : where figures stand, m; how that is called there; rows of existing, finished
    level and depth (m), (k, 3)."""

    name: str
    head: str
    along: FloatArray
    existing: FloatArray
    finished: FloatArray
    at: FloatArray
    words: tuple[str, ...]
    table: FloatArray

    @property
    def relief(self) -> tuple[float, float]:
        """Lowest and highest, own units; zero where nothing is measured."""
        both = np.concatenate([self.existing, self.finished])
        both = both[~np.isnan(both)]
        return (float(both.min()), float(both.max())) if len(both) else (0.0, 0.0)


def profile_of(subject: Subject, per: float) -> Upright:
    """Along the line. per : mm on paper of a m."""
    step = nice_step(COLUMN / (per * subject.long), 1) * subject.long
    at = subject.chainages(step)
    if subject.length - at[-1] > COLUMN / per:
        at = np.append(at, subject.length)
    places = 2 if step < 0.2 * subject.long or subject.metric else 1
    words = tuple(f"{a / subject.long:.{places}f}" for a in at)
    along = np.linspace(0.0, subject.length, SAMPLES)
    head = f"chainage, {subject.unit}"
    return _upright(subject, ("Along the line of travel", head), (along, at), (along, along * 0.0), words)


def section_of(subject: Subject, chainage: float, per: float) -> Upright:
    """Across the line as seen along it, left on the left."""
    half = subject.half
    step = nice_step(COLUMN / (per * subject.long), 1) * subject.long
    count = math.floor(half / step + 1e-9)
    offsets = np.arange(count, -count - 1, -1, dtype=np.float64) * step
    words = tuple(f"{o / subject.long:+.2f}" if abs(o) > 1e-9 else "0" for o in offsets)
    across = np.linspace(half, -half, SAMPLES)
    name = f"At {chainage / subject.long:.2f} {subject.unit}"
    heads = (name, f"left of line, {subject.unit}")
    return _upright(subject, heads, (half - across, half - offsets), (across * 0.0 + chainage, across), words)


def _upright(
    subject: Subject, heads: tuple[str, str], along: tuple[FloatArray, FloatArray],
    place: tuple[FloatArray, FloatArray], words: tuple[str, ...],
) -> Upright:  # fmt: skip
    """heads : name, and what the figures' places are called.  along : m from the left end, all and of the
    table.  place : chainage and offset of all, m."""
    levels, (fine, at) = subject.levels, along
    chainage, offset = (np.interp(at, fine, p) for p in place)
    shown, told = subject.on_line(*place), subject.on_line(chainage, offset)
    existing, there = (levels.own(levels.existing, xy)[:, 2] for xy in (shown, told))
    up = float(levels.frame.turned_scale[2])
    if levels.depth is None:
        none = np.full(len(at), np.nan)
        return Upright(*heads, fine, existing, existing * np.nan, at, words, np.stack([there, none, none], 1))
    gone, deep = (np.where(np.isnan(h), np.nan, np.nan_to_num(levels.depth.sample(xy)))
                  for h, xy in ((existing, shown), (there, told)))  # fmt: skip
    table = np.stack([there, there - deep / up, deep], axis=1)
    return Upright(*heads, fine, existing, existing - gone / up, at, words, table)


def relief_of(subject: Subject, cuts: Sequence[Upright]) -> float:
    """Of the one that rises most, m."""
    return max(hi - lo for lo, hi in (c.relief for c in cuts)) * float(subject.levels.frame.turned_scale[2])


def stretch_of(subject: Subject, cuts: Sequence[Upright], room: float, ratio: int) -> int:
    """How many times heights are drawn taller than lengths: the most of a list that ``room`` mm hold."""
    fits = [k for k in STRETCHES if relief_of(subject, cuts) * 1000.0 / ratio * k <= room - 3 * AIR]
    return max(fits, default=1)


def _rows(subject: Subject, cut: Upright) -> list[tuple[str, list[str], float]]:
    """Head, figures and height, mm, of the rows of the table; finished levels where they are released."""
    unit = subject.levels.frame.unit
    rows = [
        (cut.head, list(cut.words)),
        (f"existing, {unit}", [subject.level(row[0]) for row in cut.table]),
    ]
    if subject.levels.depth is not None:
        rows += [
            (f"finished, {unit}", [subject.level(row[1]) for row in cut.table]),
            (f"depth, {subject.deep_unit}", [subject.depth(row[2]) for row in cut.table]),
        ]
    return [(head, cells, max(width_of(c, SMALL) for c in cells) + 2.0) for head, cells in rows]


def table_height(subject: Subject, cuts: Sequence[Upright]) -> float:
    """Of the tallest table among some, mm."""
    return max(sum(tall for _, _, tall in _rows(subject, cut)) for cut in cuts)


@dataclass(frozen=True)
class Scaled:
    """ratio : so many on the ground for 1 on paper.  stretch : of heights over lengths."""

    ratio: int
    stretch: int

    @property
    def along(self) -> float:
        """mm on paper of a m."""
        return 1000.0 / self.ratio

    @property
    def words(self) -> str:
        """Of heights, as printed."""
        return "heights to the same scale" if self.stretch == 1 else f"heights drawn {self.stretch} times"


def draw_upright(subject: Subject, cut: Upright, box: Box, scaled: Scaled) -> Iterator[Item]:
    """Drawing and table into a box on paper, the table at its foot."""
    x0, y0, _, y1 = box
    left, y = x0 + HEAD, y0
    xs = left + cut.at * scaled.along
    right = left + cut.along[-1] * scaled.along
    rows = _rows(subject, cut)
    for head, cells, tall in reversed(rows):
        yield segment((x0, y), (right + 2.0, y), TABLE, HAIR)
        yield Words((x0 + 1.0, y + tall / 2), head, TABLE, SMALL, up="middle")
        for x, text in zip(xs, cells, strict=True):
            yield Words((float(x), y + 1.0), text, TABLE, SMALL, up="middle", turn=90.0)
        y += tall
    gaps = f" ({NOT_MEASURED}: not measured)" if np.isnan(cut.table[:, 0]).any() else ""
    yield Words((x0 + 1.0, y1 - 4.5), cut.name + gaps, LAYER, BODY, bold=True)
    up = float(subject.levels.frame.turned_scale[2]) * scaled.along * scaled.stretch  # mm of an own unit
    low, high = cut.relief
    if high == low == 0.0:
        return
    step = nice_step(6.0 / up, 1)
    datum = math.floor((low - AIR / up) / step) * step
    yield segment((left - 12.0, y), (right + 2.0, y), LAYER, MIDDLE)
    yield Words((x0 + 1.0, y + 1.0), f"datum {subject.level(datum)}", LAYER, SMALL)
    yield from _scale_of_levels(subject, (left, y), (datum, step, up), high)
    yield from _ground(cut, (left, y), (datum, up), scaled)
    for x, level in zip(xs, cut.table[:, 0], strict=True):
        if not math.isnan(level):
            yield Stroke(np.array([(x, y), (x, y + (level - datum) * up)]), LAYER, HAIR, colour=GREY)


def _scale_of_levels(
    subject: Subject, at: tuple[float, float], levels: tuple[float, float, float], high: float
) -> Iterator[Item]:
    """Round levels up the left side. levels : datum, step, own units, and mm of one."""
    (x, y), (datum, step, up) = at, levels
    top = datum + (math.floor((high - datum) / step) + 1) * step
    x -= 3.0
    yield segment((x, y), (x, y + (top - datum) * up), LAYER, HAIR)
    for k in range(1, round((top - datum) / step) + 1):
        rise = y + k * step * up
        yield segment((x - 1.2, rise), (x, rise), LAYER, HAIR)
        yield Words((x - 2.0, rise), subject.level(datum + k * step), LAYER, SMALL, "right", "middle")


def _ground(
    cut: Upright, at: tuple[float, float], levels: tuple[float, float], scaled: Scaled
) -> Iterator[Item]:
    """The slab before and after, what goes hatched between."""
    (x, y), (datum, up) = at, levels
    old, new = (
        np.column_stack([x + cut.along * scaled.along, y + (h - datum) * up])
        for h in (cut.existing, cut.finished)
    )
    gone = cut.existing - cut.finished > 1e-4 * (cut.relief[1] - cut.relief[0])
    for a, b in _runs(gone):
        a, b = max(a - 1, 0), min(b + 1, len(gone) - 1)
        ring = np.vstack([old[a : b + 1], new[b : a - 1 if a else None : -1]])
        if np.isfinite(ring).all():
            yield Area((np.vstack([ring, ring[:1]]),), LAYER, None, Hatch(45.0, 1.2))
            yield Stroke(new[a : b + 1], LAYER, BOLD, DASHES)
    for a, b in _runs(~np.isnan(cut.existing)):
        yield Stroke(old[a : b + 1], LAYER, MIDDLE, colour=INK)


def _runs(mask: np.ndarray) -> Iterator[tuple[int, int]]:
    """First and last index of every run of True, of two or more."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], mask, [False]]).astype(int)))
    for a, b in zip(edges[::2], edges[1::2], strict=True):
        if b - a > 1:
            yield int(a), int(b) - 1
