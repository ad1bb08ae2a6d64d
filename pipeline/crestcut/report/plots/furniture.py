"""What every sheet carries around its drawing: frame, head with the release, key, bars to check the print by,
north arrow and title block."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import Enum

import numpy as np

from crestcut.base.language import say
from crestcut.base.paper import scale_words
from crestcut.report.pictures.ink import decimals_for
from crestcut.report.plots.items import (
    BODY,
    BOLD,
    GREY,
    HAIR,
    INK,
    LARGE,
    MIDDLE,
    PALE,
    SMALL,
    THIN,
    Area,
    Box,
    Item,
    Place,
    Stroke,
    Words,
    corners,
    rectangle,
    segment,
    width_of,
    wrapped,
)  # fmt: skip

MARGIN = 10.0  # mm from the edge of the paper to the frame: no printer reaches nearer than five
HEAD, BARS, ROW, SIGN = 9.0, 15.0, 4.6, 13.0  # mm: head; band of bars; row of the key; its samples
CHECK = 100.0  # mm: the bar to measure a print by
CHECK_WORDS = "must measure 100 mm (3 15/16 in); print at 100 %"
STRONG = ("project", "sheet")  # cells in bold
LEADING = 1.6  # of its height, from line to line
WIDE = 250.0  # mm between the frame's sides: from here the title block has the wide form
FRAME, TEXT, KEY, BAR, NORTH, STAMP = "SHEET_FRAME", "SHEET_TEXT", "KEY", "BARS", "NORTH", "STAMP"
Sign = tuple[str, Callable[[Box], list[Item]]]  # what it means, and a sample that fills a box


class Shows(Enum):
    """What a sheet shows: north is of a plan, and a table has no scale."""

    PLAN = "plan"
    UPRIGHT = "upright"
    TABLE = "table"


@dataclass(frozen=True)
class Title:
    """What the title block says; "" where it is left to fill in. release : in words.  stamp : "" released.

    ratio : so many on the ground for 1 on paper.  unit : "m" or "ft", and ``per``, mm on paper of one.
    north : of the own north axis on paper from upright, to the right, rad; None: not known.
    """

    project: str
    client: str
    surveyor: str
    date: str
    revision: str
    system: str
    heights: str
    release: str
    stamp: str
    source: str
    paper: str
    ratio: int
    unit: str
    per: float
    shows: Shows
    north: float | None = None


def _cells(title: Title, name: str, sheet: str, wide: bool) -> list[list[tuple[str, str, float]]]:
    """Rows of cells of the title block: label, value, share of the width."""
    project, drawing = ("project", title.project), ("drawing", say(name))
    shown = "none" if title.shows == Shows.TABLE else scale_words(title.ratio)
    number, scale = ("sheet", say(sheet)), ("scale, paper", f"{say(shown)}, {title.paper}")
    client, surveyor = ("client", title.client), ("surveyor", title.surveyor)
    date, revision = ("date", title.date), ("revision", title.revision)
    system, heights = ("reference system", say(title.system)), ("heights", say(title.heights))
    release, source = ("release", say(title.release)), ("made from", say(title.source))
    if wide:
        return [
            [(*project, 0.42), (*drawing, 0.36), (*scale, 0.22)],
            [(*client, 0.30), (*surveyor, 0.30), (*date, 0.14), (*revision, 0.12), (*number, 0.14)],
            [(*system, 0.24), (*heights, 0.22), (*release, 0.22), (*source, 0.32)],
        ]
    return [
        [(*project, 0.72), (*number, 0.28)],
        [(*drawing, 0.62), (*scale, 0.38)],
        [(*client, 0.5), (*surveyor, 0.5)],
        [(*date, 0.26), (*revision, 0.24), (*release, 0.5)],
        [(*system, 0.5), (*heights, 0.5)],
        [(*source, 1.0)],
    ]


def _lines(label: str, value: str, room: float) -> list[str]:
    return wrapped(value, BODY, room - 3.0, label in STRONG)


def _heights(title: Title, name: str, sheet: str, inner: float) -> list[float]:
    """Of the rows of the title block, mm: a value that is too long for its cell takes another line."""
    rows = _cells(title, name, sheet, inner >= WIDE)
    deep = [max(max(len(_lines(label, v, inner * share)), 1) for label, v, share in row) for row in rows]
    return [6.1 + BODY * (1 + (n - 1) * LEADING) for n in deep]


def key_rows(signs: Sequence[Sign], inner: float) -> list[list[Sign]]:
    """The key as rows that fit between the frame's sides."""
    rows: list[list[Sign]] = []
    left = inner
    for sign in signs:
        wide = SIGN + 2.0 + width_of(sign[0], SMALL) + 5.0
        if not rows or wide > left:
            rows.append([])
            left = inner - 4.0
        rows[-1].append(sign)
        left -= wide
    return rows


def free_box(title: Title, size: Place, signs: Sequence[Sign] = ()) -> Box:
    """What the furniture leaves for the drawing, mm."""
    inner = size[0] - 2 * MARGIN
    low = MARGIN + sum(_heights(title, _LONGEST, "88 of 88", inner)) + BARS
    low += ROW * len(key_rows(signs, inner)) + (3.0 if signs else 0.0)
    return MARGIN, low, size[0] - MARGIN, size[1] - MARGIN - HEAD


_LONGEST = (
    "Cross sections, 88.88 to 88.88 m; heights drawn 88 times"  # so that all sheets of a job have room alike
)


def furnish(title: Title, name: str, number: Place, size: Place, signs: Sequence[Sign] = ()) -> list[Item]:
    """All around the drawing. number : of this sheet, and of all.  signs : of the key, none: no key."""
    inner = size[0] - 2 * MARGIN
    drawn: list[Item] = []
    if title.stamp:
        drawn.append(_watermark(title.stamp, free_box(title, size, signs)))
    drawn.append(rectangle((MARGIN, MARGIN, size[0] - MARGIN, size[1] - MARGIN), FRAME, BOLD))
    top = _title_block(drawn, title, name, f"{number[0]:.0f} of {number[1]:.0f}", inner)
    _bars(drawn, title, top, size)
    at = top + BARS + 1.0
    if signs:
        drawn.append(segment((MARGIN, top + BARS), (size[0] - MARGIN, top + BARS), FRAME, HAIR))
    for row in reversed(key_rows(signs, inner)):
        left = MARGIN + 3.0
        for words, sample in row:
            drawn += sample((left, at + 0.6, left + SIGN, at + 3.6))
            drawn.append(Words((left + SIGN + 2.0, at + 1.1), words, KEY))
            left += SIGN + 2.0 + width_of(words, SMALL) + 5.0
        at += ROW
    _head(drawn, title, name, size)
    return drawn


def _head(drawn: list[Item], title: Title, name: str, size: Place) -> None:
    """What is shown, and the release in a box where it forbids."""
    top, right = size[1] - MARGIN, size[0] - MARGIN
    drawn.append(Words((MARGIN + 3.0, top - 6.3), name, TEXT, LARGE, bold=True))
    drawn.append(segment((MARGIN, top - HEAD), (right, top - HEAD), FRAME, HAIR))
    wide = width_of(title.stamp or title.release, LARGE if title.stamp else SMALL, bool(title.stamp))
    if title.stamp:
        drawn.append(rectangle((right - wide - 8.0, top - 7.8, right - 2.0, top - 1.2), STAMP, BOLD))
        drawn.append(Words((right - 5.0, top - 6.3), title.stamp, STAMP, LARGE, "right", bold=True))
    else:
        drawn.append(Words((right - 3.0, top - 5.9), title.release, TEXT, SMALL, "right"))


def _watermark(stamp: str, box: Box) -> Words:
    """Across the drawing, pale, under all else: a sheet that was cropped still says it."""
    angle, share = math.radians(20.0), 1.0 / width_of(stamp, 1.0, True)
    wide, tall = box[2] - box[0], box[3] - box[1]
    long = min(0.8 * wide / math.cos(angle), 0.8 * tall / (math.sin(angle) + share * math.cos(angle)))
    middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    return Words(middle, stamp, STAMP, long * share, "center", "middle", 20.0, True, colour=PALE)


def _title_block(drawn: list[Item], title: Title, name: str, sheet: str, inner: float) -> float:
    """The block at the foot; its upper edge, mm."""
    rows = _cells(title, name, sheet, inner >= WIDE)
    heights = _heights(title, name, sheet, inner)
    spare = sum(_heights(title, _LONGEST, "88 of 88", inner)) - sum(heights)
    heights = [h + spare / len(heights) for h in heights]
    y = MARGIN + sum(heights)
    top = y
    for row, tall in zip(rows, heights, strict=True):
        drawn.append(segment((MARGIN, y), (MARGIN + inner, y), FRAME, THIN))
        x = MARGIN
        for k, (label, value, share) in enumerate(row):
            wide = inner * share
            if k:
                drawn.append(segment((x, y), (x, y - tall), FRAME, HAIR))
            drawn.append(Words((x + 1.5, y - 1.2 - SMALL), label, TEXT, SMALL, colour=GREY))
            base = y - 1.2 - SMALL - 1.5 - BODY
            for line in _lines(label, value, wide):
                drawn.append(Words((x + 1.5, base), line, TEXT, BODY, bold=label in STRONG, said=True))
                base -= BODY * LEADING
            if not value:
                drawn.append(segment((x + 1.5, base - 0.3), (x + wide - 1.5, base - 0.3), FRAME, HAIR))
            x += wide
        y -= tall
    return top


def _bars(drawn: list[Item], title: Title, low: float, size: Place) -> None:
    """The bar to check the print by, the scale bar, and north."""
    left, base = MARGIN + 4.0, low + 4.0
    drawn.append(segment((left, base), (left + CHECK, base), BAR, MIDDLE))
    for x in (left, left + CHECK / 2, left + CHECK):
        drawn.append(segment((x, base - 1.5), (x, base + 1.5), BAR, MIDDLE))
    drawn.append(Words((left + CHECK / 2, base + 3.6), CHECK_WORDS, BAR, SMALL, "center"))
    if title.shows != Shows.TABLE:
        _scale_bar(drawn, title, (left + CHECK + 14.0, base), size[0] < 260.0)
    if title.shows == Shows.PLAN:
        _north(drawn, title.north, size[0] - MARGIN - 11.0, low + BARS / 2)


def _scale_bar(drawn: list[Item], title: Title, at: Place, short: bool) -> None:
    """Four parts, black and white, of a round length."""
    length = _round_below((40.0 if short else 80.0) / title.per)
    part, places = length / 4 * title.per, decimals_for(length / 2)
    x, y = at
    for k in range(4):
        box = (x + k * part, y - 0.8, x + (k + 1) * part, y + 0.8)
        if k % 2 == 0:
            drawn.append(Area((corners(box),), BAR, INK))
        drawn.append(rectangle(box, BAR, HAIR))
    for k in (0, 2, 4):
        words = f"{k * length / 4:.{places if k else 0}f}" + (f" {title.unit}" if k == 4 else "")
        across = "left" if k == 4 else "center"
        shift = -1.0 if k == 4 else 0.0
        drawn.append(Words((x + k * part + shift, y + 2.2), words, BAR, SMALL, across))
    drawn.append(Words((x, y + 5.8), f"scale {scale_words(title.ratio)}", BAR, SMALL))


def _round_below(value: float) -> float:
    """1, 2 or 5 times a power of ten, the largest that is no more."""
    power = 10.0 ** math.floor(math.log10(value))
    return next(m * power for m in (5.0, 2.0, 1.0) if m * power <= value * (1 + 1e-9))


def _north(drawn: list[Item], north: float | None, x: float, y: float) -> None:
    if north is None:
        for k, line in enumerate(("north", "not known")):
            drawn.append(Words((x, y + 0.6 - 3.4 * k), line, NORTH, SMALL, "center"))
        return
    c, s = math.cos(-north), math.sin(-north)
    turned = np.array([[c, -s], [s, c]])

    def at(*places: Place) -> np.ndarray:
        return np.array(places) @ turned.T + (x, y)

    drawn.append(Stroke(at((0.0, -5.5), (0.0, 5.5)), NORTH, MIDDLE))
    drawn.append(Area((at((0.0, 5.5), (-1.5, 0.5), (0.0, 0.5), (0.0, 5.5)),), NORTH, INK))
    drawn.append(Stroke(at((0.0, 5.5), (1.5, 0.5), (0.0, 0.5)), NORTH, HAIR))
    drawn.append(Words((x - 8.0, y - 1.0), "grid north", NORTH, SMALL, "right"))
