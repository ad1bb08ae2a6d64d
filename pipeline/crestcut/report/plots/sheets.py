"""The drawings of a job: which sheets it takes, on which paper, at which scale; one PDF of them, and one
drawing with the same as layouts."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from crestcut.base.errors import CrestcutError, visible
from crestcut.base.paper import PAPERS, ladder, mm_per_unit, scale_words
from crestcut.job import PlotWish
from crestcut.report.exchange.levels import Levels
from crestcut.report.pictures.plan_window import Window
from crestcut.report.plots import plan
from crestcut.report.plots.dxf import write_dxf
from crestcut.report.plots.furniture import FRAME, Shows, Sign, Title, free_box, furnish
from crestcut.report.plots.items import THIN, Box, Item, Place, Sheet, View, rectangle
from crestcut.report.plots.pdf import write_pdf
from crestcut.report.plots.sections import (
    FLAT,
    HEAD,
    TITLE,
    Scaled,
    Upright,
    draw_upright,
    profile_of,
    relief_of,
    section_of,
    stretch_of,
    table_height,
)  # fmt: skip
from crestcut.report.plots.subject import Subject
from crestcut.report.plots.tables import pages_of, tables_of
from crestcut.study import Report
from crestcut.work import Worksheet

PDF_NAME, DXF_NAME = "plots.pdf", "plots.dxf"
EDGE = 6.0  # mm around a plan: its coordinates stand there
GUTTER = 8.0  # mm between sections
ROUNDED = 24.0  # mm that datum and top of the scale of levels may lie beyond the ground, at most
AROUND = 0.05  # m of ground around the cut where it is enlarged


@dataclass(frozen=True)
class Page:
    """Paper by name, its size as it lies, and so many on the ground for 1 on it."""

    paper: str
    size: Place
    ratio: int


def write_plots(report: Report, sheet: Worksheet, wish: PlotWish, folder: Path) -> tuple[str, ...]:
    """Both files into ``folder``; what is to be said of them. Raises CrestcutError for a scale that does not
    fit the paper."""
    subject = Subject(Levels(report, sheet), wish)
    sheets = sheets_of(subject)
    write_pdf(sheets, report.identity, folder / PDF_NAME)
    write_dxf(sheets, report.scan.frame.unit, report.identity, folder / DXF_NAME)
    page = page_for(subject)
    notes = [f"{len(sheets)} sheets at {scale_words(page.ratio)} on {page.paper}: print at 100 %"]
    if not subject.levels.released:
        notes.append(f"{sheet.stamp.lower() or 'nothing to cut'}: existing heights alone are drawn")
    if not report.scan.frame.system.plan:
        notes.append("the scan names no reference system: north is not known, heights are local")
    return tuple(notes)


@dataclass(frozen=True)
class Drawn:
    """What stands on one sheet besides its furniture. ratio : the scale it is drawn to."""

    name: str
    ratio: int
    items: tuple[Item, ...]
    shows: Shows = Shows.UPRIGHT
    view: View | None = None
    detail: bool = False


def sheets_of(subject: Subject) -> tuple[Sheet, ...]:
    """All sheets of a job, as its wish says. Raises CrestcutError for a scale that does not fit the paper."""
    page = page_for(subject)
    made = [*_plans(subject, page), *_uprights(subject, page)]
    name = "Bands and points" if subject.levels.released else "Points"
    for items in pages_of(tables_of(subject), free_box(title_of(subject, page), page.size)):
        made.append(Drawn(name, page.ratio, tuple(items), Shows.TABLE))
    return tuple(_sheet(subject, page, one, (k, len(made))) for k, one in enumerate(made, start=1))


def _sheet(subject: Subject, page: Page, one: Drawn, number: Place) -> Sheet:
    title = replace(title_of(subject, replace(page, ratio=one.ratio)), shows=one.shows)
    if one.view is None:
        around = furnish(title, one.name, number, page.size)
        return Sheet(one.name, page.size, (*around, *one.items))
    around = furnish(title, one.name, number, page.size, plan.plan_signs(subject, one.ratio, one.detail))
    edge = (rectangle(one.view.box, FRAME, THIN), *plan.edge_ticks(subject, one.view))
    ground = plan.draw_ground(subject, one.view, one.detail)
    return Sheet(one.name, page.size, (*around, *edge, *one.items), one.view, ground)


def page_for(subject: Subject) -> Page:
    """The paper as asked, else A3, or Tabloid where inches are used; the scale as asked, else the largest
    that fits, the paper on its side where both ways do."""
    wish = subject.wish
    paper = wish.paper or ("A3" if subject.levels.sheet.metric and subject.metric else "Tabloid")
    short, long = PAPERS[paper]
    steps = ladder(subject.levels.frame.unit, wish.scale)
    fits = [
        r for r in steps for size in ((long, short), (short, long)) if _fits(subject, Page(paper, size, r))
    ]
    asked = wish.scale
    if not fits or (asked is not None and asked not in fits):
        larger = [r for r in fits if asked is None or r > asked]
        what = f"at {scale_words(asked or steps[-1])} the plan does not fit on {paper}"
        mend = f"{scale_words(larger[0])} is the next that fits" if larger else "take larger paper"
        raise CrestcutError(what, "scale", mend)
    ratio = asked or fits[0]
    size = next(s for s in ((long, short), (short, long)) if _fits(subject, Page(paper, s, ratio)))
    return Page(paper, size, ratio)


def _fits(subject: Subject, page: Page) -> bool:
    """Do plan, profile and a cross section each have room on one sheet?"""
    title = title_of(subject, page)
    box = _plan_box(title, page, plan.plan_signs(subject, page.ratio))
    must = subject.must()
    free = free_box(title, page.size)
    upright = (free[0] + HEAD + 8.0, free[1], free[2], free[3])
    wide = max(subject.length, 2 * subject.half)
    return _holds(box, must.width, must.height, page.ratio) and _holds(upright, wide, 0.0, page.ratio)


def _holds(box: Box, wide: float, tall: float, ratio: int) -> bool:
    """Has a box on paper, mm, room for so many m?"""
    mm = 1000.0 / ratio
    return wide * mm <= box[2] - box[0] and tall * mm <= box[3] - box[1]


def _plan_box(title: Title, page: Page, signs: Sequence[Sign]) -> Box:
    x0, y0, x1, y1 = free_box(title, page.size, signs)
    return x0 + EDGE, y0 + EDGE, x1 - 2.0, y1 - 2.0


def view_of(subject: Subject, window: Window, box: Box, ratio: int) -> View:
    """A window, grid u, v, m, in the middle of a box, travel from left to right."""
    grid, frame = subject.levels.existing.frame, subject.levels.frame
    middle = ((window.u0 + window.u1) / 2, (window.v0 + window.v1) / 2)
    own = frame.site_to_plan(grid.to_site(np.array(middle)))
    unit = mm_per_unit(float(frame.plan_scale[0]), ratio)
    return View(box, (float(own[0]), float(own[1])), -grid.angle, unit)


def _plans(subject: Subject, page: Page) -> Iterator[Drawn]:
    """The whole line, and where a larger scale shows all of it, the cut."""
    title = title_of(subject, page)
    box = _plan_box(title, page, plan.plan_signs(subject, page.ratio))
    yield Drawn("Plan", page.ratio, (), Shows.PLAN, view_of(subject, subject.must(), box, page.ratio))
    cut = subject.cut()
    if cut is None:
        return
    window, box = cut.grown(AROUND), _plan_box(title, page, plan.plan_signs(subject, page.ratio, True))
    for ratio in ladder(subject.levels.frame.unit, page.ratio):
        if ratio < page.ratio and _holds(box, window.width, window.height, ratio):
            view = view_of(subject, window, box, ratio)
            yield Drawn("The cut, enlarged", ratio, (), Shows.PLAN, view, True)
            return


def _uprights(subject: Subject, page: Page) -> Iterator[Drawn]:
    free = free_box(title_of(subject, page), page.size)
    yield _profile(subject, free, page)
    yield from _sections(subject, free, page)


def _profile(subject: Subject, free: Box, page: Page) -> Drawn:
    x0, y0, x1, y1 = free
    cut = profile_of(subject, 1000.0 / page.ratio)
    scaled, tall = _fitted(subject, [cut], y1 - y0 - 2.0, page.ratio)
    items = draw_upright(subject, cut, (x0 + 2.0, y1 - 1.0 - tall + 4.0, x1, y1 - 1.0), scaled)
    return Drawn(f"Profile; {scaled.words}", page.ratio, tuple(items))


def _fitted(subject: Subject, cuts: Sequence[Upright], tall: float, ratio: int) -> tuple[Scaled, float]:
    """How uprights are drawn that have ``tall`` mm each, and the mm that they then take: no more, so that
    names stand near."""
    around = table_height(subject, cuts) + TITLE + 4.0
    scaled = Scaled(ratio, stretch_of(subject, cuts, tall - around, ratio))
    deep = relief_of(subject, cuts) * scaled.along * scaled.stretch + ROUNDED
    return scaled, min(tall, around + deep)


def _sections(subject: Subject, free: Box, page: Page) -> Iterator[Drawn]:
    """Cross sections, as many on a sheet as have room, all with their heights to one scale."""
    per = 1000.0 / page.ratio
    x0, y0, x1, y1 = free
    chainages = subject.chainages(subject.between)
    cuts: list[tuple[float, Upright]] = [(float(c), section_of(subject, float(c), per)) for c in chainages]
    cuts = [(c, cut) for c, cut in cuts if not np.isnan(cut.existing).all()]
    if not cuts:
        return
    wide = HEAD + 2 * subject.half * per + GUTTER
    foot = table_height(subject, [cut for _, cut in cuts])
    columns = max(1, math.floor((x1 - x0 - 2.0 + GUTTER) / wide))
    rows = max(1, math.floor((y1 - y0 - 2.0) / (foot + FLAT + TITLE + 4.0)))
    scaled, tall = _fitted(subject, [cut for _, cut in cuts], (y1 - y0 - 2.0) / rows, page.ratio)
    for first in range(0, len(cuts), rows * columns):
        here = cuts[first : first + rows * columns]
        items: list[Item] = []
        for k, (_, cut) in enumerate(here):
            left, top = x0 + 2.0 + (k % columns) * wide, y1 - 1.0 - (k // columns) * tall
            items += draw_upright(subject, cut, (left, top - tall + 4.0, left + wide, top), scaled)
        low, high = (f"{c / subject.long:.2f}" for c in (here[0][0], here[-1][0]))
        name = f"Cross sections, {low} to {high} {subject.unit}; {scaled.words}"
        yield Drawn(name, page.ratio, tuple(items))


def title_of(subject: Subject, page: Page) -> Title:
    """All that a title block says, from the job and its scan; nothing that they do not."""
    report, wish, frame = subject.report, subject.wish, subject.levels.frame
    system = frame.system
    if system.plan:
        name, heights = f"{system.plan}, unit {frame.unit}", system.heights or "datum not stated"
    else:
        name, heights = f"none named: the scan's own, unit {frame.unit}", "heights are local"
    files = ", ".join(f.path.name for f in report.scan.files)
    source = f"{report.job.path.name}, {files}; {report.identity.tool}; not field-proved"
    release = "nothing to cut" if report.nothing_to_cut else "released within local codes"
    return Title(
        wish.project or report.title, wish.client or "", wish.surveyor or "",
        wish.date or report.job.date or "", wish.revision or "", name, heights,
        subject.levels.sheet.stamp.lower() or release, report.stamp,
        visible(source), page.paper, page.ratio, subject.unit, mm_per_unit(subject.long, page.ratio),
        Shows.PLAN, report.surface.height.frame.angle if system.plan else None,
    )  # fmt: skip
