"""Quote, agreement and frames: there where a cut is released, in the figures of the other sheets."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from deliver_scene import make_report, nothing_to_cut
from matplotlib.text import Text

from crestcut.base.language import speaking, words_of
from crestcut.job.answers import Per
from crestcut.job.prices import Price, Prices
from crestcut.job.records import Site
from crestcut.report.sheets.agreement import agreement_pages, write_agreement
from crestcut.report.sheets.pages import amount_lines
from crestcut.study.report import Report
from crestcut.work.order import WorkOrder
from crestcut.work.records import Worksheet
from crestcut.work.release import decide_release
from crestcut.work.sheet import make_worksheet
from crestcut.work.tools import tools_at_hand
from scenes import ANSWERED

PRICES = Prices(
    "Thaler", Price(45.0, Per.HOUR), None, 6.0, (("hand_grinder_cup", Price(38.0, Per.DAY)),),
    (("hand_grinder_cup", Price(95.0, Per.SET)),), (("travel", Price(30.5, Per.JOB)),),
)  # fmt: skip


def sheet_of(report: Report) -> Worksheet:
    plan, surface = report.plan, report.surface
    order = WorkOrder(
        report.job, report.vehicle, surface, report.ride, plan, decide_release(report.job, False, plan)
    )
    return make_worksheet(order, tools=tools_at_hand(Path(__file__), None))


def asked(prices: Prices | None = PRICES, answered: bool = True) -> tuple[Report, Worksheet]:
    report = make_report(hole=False)
    slab = ANSWERED if answered else replace(ANSWERED, post_tensioned=None)
    site = Site("outdoors", "private", "DE")
    report = replace(report, job=replace(report.job, slab=slab, site=site, prices=prices))
    return report, sheet_of(report)


def words_on(report: Report, sheet: Worksheet) -> list[list[str]]:
    return [[t.get_text() for t in figure.findobj(Text)] for figure in agreement_pages(report, sheet)]


@pytest.mark.parametrize("prices", [PRICES, None], ids=["priced", "no prices"])
def test_what_is_released_has_an_agreement_and_a_quote_only_where_there_are_prices(
    tmp_path: Path, prices: Prices | None
) -> None:
    report, sheet = asked(prices)
    (path,) = write_agreement(report, sheet, tmp_path)
    assert path.read_bytes() == write_agreement(report, sheet, tmp_path)[0].read_bytes()
    pages = words_on(report, sheet)
    assert len(pages) == (3 if prices else 2)
    assert ("Quote" in pages[0]) == (prices is not None)
    text = " ".join(" ".join(page) for page in pages)
    assert "None of this is legal advice" in text and "signature" in text
    assert ("Thaler" in text) == (prices is not None)
    for said in sheet.release.known[:3]:
        assert said.split(" (")[0] in text


@pytest.mark.parametrize("why", ["not answered", "nothing to cut"])
def test_without_a_released_cut_there_is_none(tmp_path: Path, why: str) -> None:
    report, sheet = asked(answered=why != "not answered")
    if why == "nothing to cut":
        report = replace(nothing_to_cut("ok"), job=report.job)
        sheet = sheet_of(report)
    assert write_agreement(report, sheet, tmp_path) == () and not list(tmp_path.iterdir())


def test_the_quote_adds_up_as_printed_and_has_the_hours_of_the_sheets() -> None:
    report, sheet = asked()
    page = words_on(report, sheet)[0]
    rows = [re.fullmatch(r"(\S.*?)  .* ([0-9]+\.[0-9]{2}) +([0-9]+\.[0-9]{2})", line) for line in page]
    lines = {row[1]: [float(row[2]), float(row[3])] for row in rows if row}
    total = lines.pop("Together")
    assert len(lines) == 4  # labour, hire, wear, travel
    for k in (0, 1):
        assert round(sum(row[k] for row in lines.values()), 2) == total[k]
    hours = sheet.quantities.hours
    assert lines["Labour"] == [round(45 * hours.low, 2), round(45 * hours.high, 2)]
    printed = next(line for line in amount_lines(sheet.quantities) if line.startswith("Time: "))
    low, high = re.findall(r"[0-9.]+", printed)[:2]
    assert any(f"{low} to {high} h" in line for line in page)
    assert "none is in the sum: disposal." in " ".join(page)


@pytest.mark.parametrize("per", [Per.LITRE, Per.KG, Per.BAG])
def test_every_amount_of_the_quote_is_the_one_on_the_sheets(per: Per) -> None:
    report, sheet = asked(replace(PRICES, disposal=Price(1.5, per)))
    page = words_on(report, sheet)[0]
    concrete, wear = (
        next(line for line in amount_lines(sheet.quantities) if line.startswith(what))
        for what in ("Concrete: ", "Wear: ")
    )
    row = next(line for line in page if line.startswith("Disposal"))
    much = re.search(r"  ([0-9.]+(?: to [0-9.]+)? (?:litres|kg|bags?))  ", row)
    assert much is not None and f" {much[1]}" in concrete.replace(",", " ")
    row = next(line for line in page if line.startswith("Wear: "))
    sets = re.search(r"  ([0-9.]+ to [0-9.]+) sets  ", row)
    assert sets is not None and f"cup, shrouded: {sets[1]} of a set" in wear


def test_quote_and_agreement_in_another_language_leave_names_alone() -> None:
    """And no cell of their tables runs into the next or over the edge."""
    left: set[str] = set()
    with speaking(replace(words_of("de", "DE"), missing=left)):
        pages = words_on(*asked())
    assert "Angebot" in pages[0] and "Worauf man sich einigt" in pages[1]
    assert not {text for text in left if text.count(" ") > 3}, left
    assert "Zusammen" in " ".join(pages[0]) and "je Stunde" in " ".join(pages[0])
    rows = [text for page in pages for text in page if text.startswith("heute, ")]
    assert rows and all(len(re.split(" {2,}", row)) == 4 and len(row) <= 102 for row in rows), rows


def test_what_is_signed_stands_on_the_page_that_it_is_signed_on() -> None:
    """In smaller type where it is longer, as in German with many loads."""
    report, sheet = asked(None)
    loads = tuple(f"load {k} with two people and their bags" for k in range(20))
    vehicle = replace(report.job.vehicle, loads=loads)
    with speaking(words_of("de", "DE")):
        agreed, photographs = words_on(replace(report, job=replace(report.job, vehicle=vehicle)), sheet)
    assert any("Unterschrift" in text for text in agreed) and any("load 19" in text for text in agreed)
    assert not any("Unterschrift" in text for text in photographs)
