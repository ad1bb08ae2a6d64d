"""``hand_over.pdf``: the check on one page, to sign and to keep with the job."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.errors import visible
from crestcut.report.pictures import ink
from crestcut.report.pictures.verify_plan import checked_facts, draw_panels, panels_of
from crestcut.report.sheets.paper import A4, LETTER, SIDE, put
from crestcut.report.view.verify_report import report_now
from crestcut.report.words.verify import (
    FIELD_NOTE,
    HEADS,
    care_lines,
    edge_lines,
    next_steps,
    still_lines,
    too_deep_words,
    verdict_words,
    watch_words,
    water_lines,
)
from crestcut.study import Report
from crestcut.verify import Check
from crestcut.work import ReleaseState

if TYPE_CHECKING:
    from matplotlib.figure import Figure

IN_INCHES = ("US", "CA")  # where paper is letter
SIZE, LEADING = 9.0, 0.160  # points, in
MAP_TALL = 3.5  # in
MOST = 2  # edges told
HELD = 330  # characters of the reasons against grinding
SIGN = ("Checked by", "Date", "For the owner")


def write_hand_over(report: Report, check: Check, path: Path) -> None:
    """Write the page."""
    with ink.book(path, report_now(report, check).identity) as pdf:
        pdf.savefig(hand_over_figure(report, check))


def hand_over_figure(report: Report, check: Check) -> Figure:
    """The page as a matplotlib figure."""
    page = _Page(report)
    page.head(report, check)
    page.maps(report, check)
    page.columns(checked_facts(report, check), _notes(report, check))
    page.steps(next_steps(report, check))
    page.lines(care_lines(check), SIDE, page.room, size=8.0)
    page.lines([f"Watch: {watch_words(check)}"], SIDE, page.room, mark=False, size=8.4)
    page.foot(report)
    return page.figure


def _notes(report: Report, check: Check) -> list[str]:
    deep = [too_deep_words(report, d) for d in check.too_deep[:2]]
    edges, water = edge_lines(report, check)[:MOST], water_lines(report, check)
    return [*still_lines(report, check), *edges, *deep, *water]


class _Page:
    """One page being filled from the top; ``at`` is how far down the next thing goes, in."""

    def __init__(self, report: Report) -> None:
        self.wide, self.tall = LETTER if report.job.site.country in IN_INCHES else A4
        self.figure = ink.new_figure(self.tall, self.wide)
        self.under = ink.paper(self.figure)
        self.room = self.wide - 2 * SIDE
        self.at = 0.62

    def head(self, report: Report, check: Check) -> None:
        """Title, verdict in large, and the one line."""
        put(self.figure, SIDE, self.at, textwrap.shorten(report.title, 52, placeholder=" ..."), fontsize=15,
            fontweight="bold")  # fmt: skip
        put(self.figure, SIDE, self.at + 0.25, "The finished work, checked", fontsize=10.5, color=ink.SOFT)
        box = {"boxstyle": "square,pad=0.4", "facecolor": "white", "edgecolor": ink.INK, "linewidth": 2.2}
        put(
            self.figure, self.wide - SIDE - 0.08, self.at + 0.05, HEADS[check.verdict], ha="right",
            va="center", fontsize=16, fontweight="bold", bbox=box,
        )  # fmt: skip
        self.at += 0.58
        if report.release != ReleaseState.OK:
            held = f"{report.release.upper()}: {'; '.join(r.words for r in report.release_reasons)}"
            held = textwrap.shorten(held, HELD, placeholder=" ... and more: see verify.json")
            self.lines([held], SIDE, self.room, mark=False, size=10.0)
        self.lines([verdict_words(report, check)], SIDE, self.room, mark=False, size=10.0)
        self.at += 0.22

    def maps(self, report: Report, check: Check) -> None:
        """What is gone and what is still to go, side by side."""
        shown, between = panels_of(report, check), 0.55
        wide = (self.room - 0.45 - between) / 2
        tall = float(np.clip(wide / (shown.window.width / shown.window.height), 1.8, MAP_TALL))
        box = (SIDE + 0.45, self.tall - self.at - tall, wide, tall)
        draw_panels(self.figure, self.under, shown, check, box, between)
        self.at += tall + 0.48

    def columns(self, facts: list[str], notes: list[str]) -> None:
        """Figures on the left, what is to be said of edges and water on the right."""
        top, half = self.at, (self.room - 0.3) / 2
        self.lines(facts, SIDE, half)
        foot, self.at = self.at, top
        self.lines(notes, SIDE + half + 0.3, half)
        self.at = max(self.at, foot) + 0.14

    def steps(self, steps: list[str]) -> None:
        """What to do next, to tick."""
        put(self.figure, SIDE, self.at, "Next", fontsize=11, fontweight="bold")
        self.at += 0.22
        self.lines(steps, SIDE, self.room, box=True)

    def lines(
        self, texts: list[str], left: float, wide: float, mark: bool = True, box: bool = False,
        size: float = SIZE,
    ) -> None:  # fmt: skip
        """Paragraphs, each with a bullet or a box to tick."""
        from matplotlib.patches import Rectangle

        indent = 0.16 if mark else 0.0
        characters = int((wide - indent) * 72 / (size * 0.49))
        for text in texts:
            if box:
                corner = (left, self.tall - self.at - 0.01)
                self.under.add_artist(Rectangle(corner, 0.1, 0.1, fill=False, lw=0.9))
            elif mark:
                put(self.figure, left, self.at, "\u2022", fontsize=size)
            for line in textwrap.wrap(text, characters):
                put(self.figure, left + indent, self.at, line, fontsize=size)
                self.at += LEADING * size / SIZE
            self.at += 0.03

    def foot(self, report: Report) -> None:
        """The caution, lines to sign on, and where it came from."""
        y = self.tall - 1.05
        part = self.room / len(SIGN)
        for k, name in enumerate(SIGN):
            x = SIDE + k * part
            run = np.array([(x, self.tall - y), (x + part - 0.25, self.tall - y)])
            ink.line(self.under, run, lw=0.8)
            put(self.figure, x, y + 0.15, name, fontsize=8, color=ink.SOFT)
        for k, line in enumerate(textwrap.wrap(FIELD_NOTE, 120)):
            put(self.figure, SIDE, self.tall - 0.56 + 0.13 * k, line, fontsize=7.5, color=ink.SOFT)
        job = visible(f"{report.job.path.name}, {report.job.date_words}")
        source = f"job {job} | vehicle {report.vehicle.name} | crestcut {report.version}"
        put(self.figure, SIDE, self.tall - 0.26, textwrap.shorten(source, 110), fontsize=7.5, color=ink.SOFT)
