"""Wherever a gap under the standing vehicle is asked for, its caution stands beside it: terminal, page,
measure-first sheet, advice of the check, measuring sheet, picking page.
"""

from __future__ import annotations

import dataclasses
from pathlib import Path
from types import SimpleNamespace

from deliver_scene import make_report
from matplotlib.patches import Rectangle
from page_text import PageText
from test_page_pick import slope_scan

from crestcut.base.cautions import FELT_GAP, MEASURED_VEHICLE, READ_ON_THE_SLAB, terminal_lines
from crestcut.chance.records import Doubt, Finding
from crestcut.report.pages.pick import write_pick
from crestcut.report.pages.report import report_text
from crestcut.report.sheets.measure import measure_pages
from crestcut.report.sheets.vehicle import measuring_pages
from crestcut.report.words.summary import summary_lines
from crestcut.report.words.verify import care_lines
from crestcut.study.report import Report
from crestcut.vehicle.sheet.fill_in import blank_sheet, measuring_sheet
from crestcut.work.order import WorkOrder
from crestcut.work.records import Measure, Release, Worksheet
from crestcut.work.sheet import make_worksheet

SHORT = terminal_lines(["felt gap"])


def words_on(figure) -> str:
    from matplotlib.text import Text

    return " ".join(" ".join(t.get_text() for t in figure.findobj(Text)).split())


def asking(kind: str) -> Report:
    item = {"kind": kind, "where": "x 1.00, y 2.00", "expect": "4 mm", "how": "feel the gap under the belly"}
    return dataclasses.replace(make_report(release="provisional"), advice=(item,))


def test_terminal() -> None:
    for report in (asking("felt gap"), make_report(release="provisional")):  # named, or left to the person
        lines = summary_lines(report)
        last = max(k for k, line in enumerate(lines) if line.startswith("Next:"))
        assert tuple(lines[last + 1 : last + 4]) == tuple(SHORT)
    assert not set(SHORT) & set(summary_lines(asking("string")))
    assert not any(line.startswith("Caution") for line in summary_lines(make_report(release="ok")))


def test_where_the_scan_must_be_mended_first_nobody_is_sent_under_the_vehicle() -> None:
    report = make_report(hole=False)
    assert report.today is not None
    today = dataclasses.replace(
        report.today, verdict="cannot tell", doubts=(Finding(Doubt.TWICE, (4.0, 1.0), 0.5, 0.02),)
    )
    doubted = dataclasses.replace(report, today=today)
    assert not any(line.startswith("Caution") for line in summary_lines(doubted))
    assert SHORT[0] not in PageText(report_text(doubted)).text


def test_page() -> None:
    text = PageText(report_text(asking("felt gap"))).text
    for line in SHORT:
        assert line in text
    for caution in FELT_GAP:
        assert caution.line in text
    assert FELT_GAP[0].line not in PageText(report_text(asking("string"))).text


def test_measure_first_sheet() -> None:
    """Each gap to feel on a page of its own, the cautions and the place to write on that page."""
    report = asking("felt gap")
    spots = ((4.4, 0.9), (4.4, -0.6), (1.8, 0.9), (1.8, -0.5), (3.2, -0.4))
    places = tuple((f"tyre {k}", x, y, None) for k, (x, y) in enumerate(spots))
    one = Measure(
        "felt gap", "feel the gap", 0.004, 2.0, places, ("5 mm or more: it clears.",) * 3, ("gap = ...",) * 4
    )
    other = dataclasses.replace(one, write=("second = ...",) * 4)
    string = dataclasses.replace(one, kind="string", places=(), write=())
    sheet = dataclasses.replace(provisional(report), first=(string, one, other))
    pages = [words_on(figure) for figure in measure_pages(sheet)]
    for number, write in ((2, "gap = ..."), (3, "second = ...")):
        (page,) = [p for p in pages if f"{number} Feel the gap under the vehicle" in p]
        assert write in page
        for caution in FELT_GAP:
            assert caution.line in page
    (first,) = [page for page in pages if "1 String" in page]
    assert READ_ON_THE_SLAB[0].line in first


def provisional(report: Report) -> Worksheet:
    release = Release("provisional", ("the scan carries more than half of the margin",), (), ())
    order = WorkOrder(report.job, report.vehicle, report.surface, report.ride, report.plan, release, {})
    return make_worksheet(order)


def test_advice_of_the_check_and_its_sheet() -> None:
    ask = ({"kind": "felt gap"},)
    assert care_lines(SimpleNamespace(clearance="cannot tell", advice=ask)) == SHORT  # type: ignore[arg-type]
    assert care_lines(SimpleNamespace(clearance="done", advice=ask)) == []  # type: ignore[arg-type]


def test_measuring_sheet_and_picking_page(tmp_path: Path) -> None:
    pick = PageText.read(write_pick(slope_scan(), None, tmp_path)).text
    texts = [words_on(measuring_pages()[0]), " ".join(measuring_sheet().split()), blank_sheet(), pick]
    for text in texts:
        for caution in MEASURED_VEHICLE:
            assert caution.full in text.replace(" • ", " ")


def test_cautions_on_the_measuring_sheet_touch_nothing() -> None:
    """The frame ends above the heading under it, and the last line stands above the foot."""
    figure = measuring_pages()[0]
    frame = max(figure.findobj(Rectangle), key=lambda r: r.get_linewidth() * r.get_height())
    paper = figure.axes[0]
    at = {t.get_text(): t.get_position()[1] for t in paper.texts}
    assert at["How to measure"] < frame.get_y() - 0.1
    assert (
        at[next(t for t in at if t.startswith("It holds the figures"))]
        > at[next(t for t in at if "Write units" in t)] + 0.2
    )
