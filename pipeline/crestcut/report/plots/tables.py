"""Figures on paper: bands of depth with areas and volumes, and the points that are set out or marked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from crestcut.base.errors import visible
from crestcut.report.exchange.levels import Level
from crestcut.report.plots.items import BODY, GREY, HAIR, SMALL, THIN, Box, Item, Words, segment, width_of
from crestcut.report.plots.subject import Subject

LAYER = "TABLE"
ROW, GAP, BETWEEN = 4.4, 4.0, 12.0  # mm: a row; between columns of figures; between columns of rows
TOP = 5.0  # mm under the head


@dataclass(frozen=True)
class Table:
    """A heading, the heads of its columns, rows of figures; the first column stands to the left."""

    name: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""

    @property
    def widths(self) -> list[float]:
        """Of the columns, mm."""
        cells = zip(self.heads, *self.rows, strict=True)
        return [max(width_of(c, SMALL, k == 0) for k, c in enumerate(column)) + GAP for column in cells]


def tables_of(subject: Subject) -> list[Table]:
    """Bands, where released, and points."""
    return [*_bands(subject), *_points(subject)]


def _bands(subject: Subject) -> Iterator[Table]:
    levels, metric = subject.levels, subject.metric
    bands = levels.bands(subject.band)
    if not bands:
        return
    square, cube = subject.long**2, (0.001 if metric else subject.long**3)
    rows = [
        (subject.band_words(b), f"{b.area / square:.3f}", f"{b.volume / cube:.{2 if metric else 3}f}")
        for b in bands
    ]
    area, volume = sum(b.area for b in bands), sum(b.volume for b in bands)
    rows.append(("all", f"{area / square:.3f}", f"{volume / cube:.{2 if metric else 3}f}"))
    heads = (
        f"depth, {subject.deep_unit}", f"area, {subject.unit}2", "volume, l" if metric else "volume, ft3"
    )  # fmt: skip
    yield Table(
        "Depth to remove, by bands", heads, tuple(rows), "areas in plan; what is under 0.3 mm left out"
    )


def _points(subject: Subject) -> Iterator[Table]:
    levels = subject.levels
    points = list(levels.points())
    if not points:
        return
    unit, tags = levels.frame.unit, subject.tags
    heads: tuple[str, ...] = ("point", f"{tags[0]}, {unit}", f"{tags[1]}, {unit}", f"existing, {unit}")
    if levels.depth is not None:
        heads = (*heads, f"finished, {unit}", f"depth, {subject.deep_unit}")
    rows = tuple((*_row(subject, p), p.code.lower()) for p in points)
    yield Table(
        "Points", (*heads, "what"), rows, "distances between coordinates are the grid's, not the ground's"
    )


def _row(subject: Subject, p: Level) -> tuple[str, ...]:
    told = (visible(p.name), subject.level(p.east), subject.level(p.north), subject.level(p.existing))
    if p.finished is None or p.depth is None:
        return told
    up = float(subject.levels.frame.turned_scale[2])
    return (*told, subject.level(p.finished), subject.depth(p.depth * up))


def pages_of(tables: Sequence[Table], box: Box) -> Iterator[list[Item]]:
    """All tables, in columns from the left, on as many pages as they take; the items of each page."""
    left, top, low = box[0] + 4.0, box[3] - TOP, box[1] + 3.0
    page: list[Item] = []
    x, y, widest = left, top, 0.0
    for table in tables:
        at, wide = 0, sum(table.widths)
        while True:
            if y - low < 3.5 * ROW or (at and y < top):  # no room for head and a row: another column
                x, y, widest = x + widest + BETWEEN, top, 0.0
            if x + wide > box[2] - 2.0 and page:
                yield page
                page, x, y, widest = [], left, top, 0.0
            fits = int((y - low) / ROW - 2.1)
            name = table.name if at == 0 else f"{table.name}, continued"
            rows = table.rows[at : at + fits]
            page += _draw(table, name, rows, (x, y))
            widest = max(widest, wide, width_of(name, BODY, True), width_of(table.note, SMALL))
            y -= (len(rows) + 3.6) * ROW
            at += len(rows)
            if at >= len(table.rows):
                if table.note:
                    page.append(Words((x, y + ROW * 0.9), table.note, LAYER, SMALL, colour=GREY))
                    y -= ROW
                break
    if page:
        yield page


def _draw(
    table: Table, name: str, rows: Sequence[tuple[str, ...]], at: tuple[float, float]
) -> Iterator[Item]:
    (x, y), wide = at, table.widths
    yield Words((x, y - BODY), name, LAYER, BODY, bold=True)
    y -= BODY + 2.0
    edges = [x + sum(wide[:k]) for k in range(len(wide) + 1)]
    words = [k == 0 or table.rows[0][k].isalpha() for k in range(len(wide))]
    for row, cells in enumerate((table.heads, *rows)):
        for k, cell in enumerate(cells):
            spot, across = (edges[k], "left") if words[k] else (edges[k + 1] - GAP, "right")
            yield Words((spot, y - SMALL - 1.2), cell, LAYER, SMALL, across, bold=row == 0)
        y -= ROW
        if row == 0 or row % 5 == 0 or row == len(rows):
            yield segment((x, y), (edges[-1] - GAP, y), LAYER, THIN if row == 0 else HAIR)
