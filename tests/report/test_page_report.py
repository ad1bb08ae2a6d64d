"""report.html says what result.json says, loads nothing, and survives any title."""

from __future__ import annotations

import base64
import dataclasses
import hashlib
import html
import re
import zlib
from pathlib import Path

import numpy as np
import pytest
from deliver_scene import CELL, crest, gutter, make_report
from page_text import PageText, at_key

from crestcut.chance.records import Chance
from crestcut.job.records import Site
from crestcut.report.pages import report as page_report
from crestcut.report.pages.glossary import MEANINGS
from crestcut.report.pages.pack import unpack_layer
from crestcut.report.pages.report import report_text, write_report
from crestcut.report.pages.scene import gap_short
from crestcut.report.pages.shell import TEMPLATES
from crestcut.report.view.result import result_document
from crestcut.report.words.summary import verdict_line
from crestcut.study.report import Report
from crestcut.work.records import Reason, ReasonCode


def with_title(report: Report, title: str) -> Report:
    return dataclasses.replace(report, job=dataclasses.replace(report.job, title=title))


@pytest.fixture(scope="module")
def page() -> PageText:
    return PageText(report_text(make_report()))


def test_page_stands_alone_and_is_small(tmp_path: Path) -> None:
    path = write_report(make_report(), tmp_path)
    assert path.name == "report.html" and [p.name for p in tmp_path.iterdir()] == ["report.html"]
    PageText.read(path).assert_self_contained()
    assert path.stat().st_size <= 3_000_000


@pytest.mark.parametrize(
    "options",
    [{}, {"feasible": False}, {"cut": False}, {"clearance": 0.16}, {"ground": gutter, "kind": "nose"}],
)
def test_every_figure_equals_the_result(options: dict[str, object]) -> None:
    report = make_report(**options)  # type: ignore[arg-type]
    shown, document = PageText(report_text(report)).data, result_document(report)
    assert len(shown) >= 12
    for key, value in shown.items():
        assert float(value) == at_key(document, key), key
    for meaning in MEANINGS:  # and none that is known is left out
        assert (meaning.key in shown) == (at_key(document, meaning.key) is not None), meaning.key


def test_every_figure_opens_a_meaning_that_is_there(page: PageText) -> None:
    ids = [a["id"] for _, a in page.elements if "id" in a]
    assert len(ids) == len(set(ids))
    buttons = [a["popovertarget"] for t, a in page.elements if t == "button" and "popovertarget" in a]
    assert buttons and set(buttons) <= set(ids)


@pytest.mark.parametrize(
    ("options", "start"),
    [
        ({"clearance": 0.09}, "Touches: the lowered-floor mobility van hangs up on the crest by"),
        ({"clearance": 0.16}, "Clears: the lowered-floor mobility van has"),
    ],
)
def test_verdict_comes_first_with_its_chance_in_words(options: dict[str, float], start: str) -> None:
    report = make_report(**options)  # type: ignore[arg-type]
    text = PageText(report_text(report)).text
    assert start in text and report.today is not None and report.today.words in text
    order = [
        text.index(start),
        text.index("What to do next"),
        text.index("See it on the slab"),
        text.rindex("Cautions"),
    ]
    assert order == sorted(order)


def test_cannot_tell_is_a_verdict() -> None:
    report = make_report()
    unsure = Chance(
        0.001, (-0.01, 0.012), 0.4, "cannot tell", "about 2 in 5 that it touches", 0.006, 0.8, 400
    )
    text = PageText(report_text(dataclasses.replace(report, today=unsure))).text
    assert "Cannot tell yet: at best estimate" in text and "2 in 5" in text


def open_by_holes() -> Report:
    """Nothing seems to touch, but 0.40 m2 under the path were never scanned."""
    report = make_report(kind="none")
    today = dataclasses.replace(report.today, verdict="cannot tell", chance_of_contact=0.0004)  # type: ignore[type-var]
    return dataclasses.replace(
        report, today=today, before=dataclasses.replace(report.before, unmeasured=1000)
    )


@pytest.mark.parametrize("kind", ["touches", "clears", "less than asked", "nothing seen", "holes"])
def test_page_and_terminal_say_the_same_verdict(kind: str) -> None:
    clear = make_report(clearance=0.16)
    blind = dataclasses.replace(clear, today=None, before=dataclasses.replace(clear.before, least={}))
    report = {
        "touches": make_report(clearance=0.09), "clears": clear, "holes": open_by_holes(),
        "less than asked": make_report(clearance=0.108), "nothing seen": blind,
    }[kind]  # fmt: skip
    raw = report_text(report).split('<h2 id="verdict"', 1)[1].split("</h2>")[0].split(">", 1)[1]
    shown = re.sub(r'<span class="(us|away)">.*?</span>', "", raw)  # in millimetres, meanings unopened
    line = re.sub(r" \([^)]* in\)", "", verdict_line(report))
    told = html.unescape(re.sub(r"<[^>]*>", "", shown)).replace("tell yet", "tell")
    assert told.casefold() == line.casefold()


def test_nose_says_that_grinding_is_seldom_the_cure() -> None:
    assert (
        "Grinding is usually the wrong cure for a nose"
        in PageText(report_text(make_report(ground=gutter, kind="nose"))).text
    )


def test_a_nose_that_no_cut_helps_says_so_before_any_figure_of_the_cut() -> None:
    report = make_report(ground=gutter, kind="nose", feasible=False)
    assert report.plan is not None
    plan = dataclasses.replace(report.plan, deepest=0.013, area=3.7, volume=0.044)
    text = PageText(report_text(dataclasses.replace(report, plan=plan))).text
    assert "Work sheet Grinding is not the cure here. The figures are of all that the limits allow" in text
    assert "no point of it can be shallower" not in text


@pytest.mark.parametrize("release", ["ok", "provisional", "not for cutting"])
def test_release_stamp_is_in_plain_sight(release: str) -> None:
    why = (Reason(ReasonCode.UNANSWERED, "ask whoever poured it"),)
    report = dataclasses.replace(make_report(), release=release, release_reasons=why)
    page = PageText(report_text(report))
    stamp = next(a for t, a in page.elements if "stamp" in a.get("class", "").split())
    assert release.replace(" ", "-") in stamp["class"] and "ask whoever poured it" in page.text
    assert page.carried["release"] == release
    if release != "ok":
        assert "they are not an order to cut" in page.text


NASTY = '</title></script><script>alert("x")</script> <b onclick=1>& מגרש حديقة \u2028'


def test_no_stamp_forbids_a_cut_that_nobody_makes() -> None:
    report = make_report()
    assert report.plan is not None
    plan = dataclasses.replace(report.plan, deepest=0.0, feasible=True)
    page = PageText(report_text(dataclasses.replace(report, plan=plan, release="not for cutting")))
    assert "Nothing to cut so nothing to release." in " ".join(page.text.split())
    assert "NOT FOR CUTTING" not in page.text.upper() and page.carried["release"] == "ok"


def test_a_title_is_only_ever_text() -> None:
    page = PageText(report_text(with_title(make_report(), NASTY)))
    page.assert_self_contained()
    assert " ".join(NASTY.split()) in page.text
    assert not [t for t, _ in page.elements if t == "b"]


def test_depths_on_the_slab_are_those_of_the_plan(page: PageText) -> None:
    report, data = make_report(), page.carried
    grid, plan = data["grid"], report.plan
    assert plan is not None and grid["cell"] == CELL
    shown = unpack_layer(data["depth"], (grid["ny"], grid["nx"]))
    matrix = np.array(grid["plan"])
    j, i = np.unravel_index(np.nanargmax(shown), shown.shape)
    place = matrix[:, :2] @ (i * CELL, j * CELL) + matrix[:, 2]
    there = plan.depth.sample(report.scan.frame.plan_to_site(place))
    assert float(shown[j, i]) == pytest.approx(float(there), abs=2e-5) and data["deepest"] == plan.deepest
    assert np.isnan(shown).sum() == np.isnan(plan.depth.values).sum()


def test_each_zone_is_held_to_the_gap_asked_for_it() -> None:
    report = make_report()
    short, gap = gap_short(report), report.before.gap.values
    by_hand = np.full(gap.shape, np.nan)  # cell by cell, from the ground up
    ground, low = report.surface.top.values, report.before.lowest
    for cell in zip(*np.nonzero(~np.isnan(gap)), strict=True):
        reached = {zone: grid.values[cell] for zone, grid in low.items() if not np.isnan(grid.values[cell])}
        by_hand[cell] = max(report.wanted(zone) - (z - ground[cell]) for zone, z in reached.items())
    assert np.array_equal(np.isnan(short), np.isnan(by_hand))
    assert np.nanmax(np.abs(short - by_hand)) < 1e-12
    belly = report.wanted("belly") - gap
    assert report.wanted("nose") > report.wanted("belly") and np.nanmax(short - belly) > 0.01
    page = PageText(report_text(report)).carried
    shown = unpack_layer(page["short"], (page["grid"]["ny"], page["grid"]["nx"]))
    assert np.nanmax(shown) == pytest.approx(max(np.nanmax(short), 0.0), abs=2e-3) and np.nanmin(shown) >= 0


def test_vehicle_stands_where_the_ride_put_it(page: PageText) -> None:
    report, drive = make_report(), page.carried["drive"]
    place = np.frombuffer(zlib.decompress(base64.b64decode(drive["place"])), "<f4").reshape(-1, 3, 3)
    wheels = np.frombuffer(zlib.decompress(base64.b64decode(drive["wheels"])), "<f4").reshape(-1, 4)
    assert len(place) == len(wheels) == len(drive["stations"]) <= 241
    assert drive["stations"] == sorted(drive["stations"])
    worst = report.before.worst
    assert worst is not None
    poses, k = report.poses_of(worst)
    assert drive["stations"][drive["worst"]] == pytest.approx(worst.station, abs=1e-4)
    assert wheels[drive["worst"]] == pytest.approx(poses.wheels[k], abs=1e-5)
    assert place[drive["worst"], 0] == pytest.approx(poses.position[k], abs=1e-5)
    assert drive["contact"]["gap"] == report.least_clearance


def test_the_section_cuts_the_part_that_touches_though_its_cell_reaches_beyond_it() -> None:
    report = make_report()
    worst = report.before.worst
    assert worst is not None
    part = next(p for p in report.vehicle.parts if p.name == worst.part)
    poses, k = report.poses_of(worst)
    edge = poses.position[k] + poses.rotation[k] @ (sum(part.x) / 2, part.y[1] + 0.006, part.z[0])
    x, y = report.surface.height.frame.to_site(edge[:2])
    moved = dataclasses.replace(worst, xy=(float(x), float(y)))
    before = dataclasses.replace(report.before, least={**report.before.least, worst.zone: moved})
    drive = PageText(report_text(dataclasses.replace(report, before=before))).carried["drive"]
    assert drive["contact"]["on"] == pytest.approx([sum(part.x) / 2, part.y[1]], abs=1e-3)
    assert part.y[0] <= drive["contact"]["on"][1] <= part.y[1]


def test_vehicle_once_cut_stands_on_the_finished_slab() -> None:
    report = make_report(clearance=0.09)
    drive = PageText(report_text(report)).carried["drive"]
    wheels = [
        np.frombuffer(zlib.decompress(base64.b64decode(state["wheels"])), "<f4").reshape(-1, 4)
        for state in (drive, drive["after"])
    ]
    known = [g for g in drive["after"]["gap"] if g is not None]
    assert len(wheels[0]) == len(wheels[1]) == len(drive["after"]["gap"])
    assert report.plan is not None and min(known) > report.before.worst.gap  # type: ignore[union-attr]
    assert PageText(report_text(make_report(cut=False))).carried["drive"]["after"] is None


def test_first_units_follow_the_country() -> None:
    report = make_report()
    in_us = dataclasses.replace(report, job=dataclasses.replace(report.job, site=Site(country="US")))
    assert 'data-units="inches"' in report_text(in_us) and 'data-units="metric"' in report_text(report)


def test_lengths_stand_in_both_systems() -> None:
    length = TEMPLATES.get_template("parts.html").module.length  # type: ignore[attr-defined]
    assert length(0.0127) == '<span class="si">12.7 mm</span><span class="us">1/2 in</span>'
    assert length(8.299) == '<span class="si">8.30 m</span><span class="us">27 ft 2 3/4 in</span>'
    assert length(float("nan")) == "not measured"


def test_nothing_to_cut_and_no_plan_are_said() -> None:
    assert "No cut was worked out" in PageText(report_text(make_report(cut=False))).text


def test_scan_that_never_meets_the_path_still_makes_a_page() -> None:
    report = make_report()
    empty = dataclasses.replace(report.before, least={})
    page = PageText(report_text(dataclasses.replace(report, before=empty, today=None, plan=None)))
    assert "Cannot tell: nothing under" in page.text and page.carried["drive"] is None


def test_same_job_same_bytes() -> None:
    assert report_text(make_report()) == report_text(make_report(ground=crest))


def test_built_viewer_is_that_of_the_sources() -> None:
    """Red after an edit under viewer/: `npm run build` there, and commit what it writes."""
    folder = Path(page_report.__file__).parent / "viewer"
    names = [f"src/{p.name}" for p in sorted((folder / "src").iterdir(), key=lambda p: p.name)]
    digest = hashlib.sha256()
    for name in [*names, "build.mjs", "package-lock.json"]:
        digest.update(f"{name}\n".encode() + (folder / name).read_bytes())
    for path in (folder / "built").glob("*.js"):
        assert f"built from {digest.hexdigest()}" in path.read_text(encoding="utf-8")[:200], path.name
    built = (folder / "built" / "viewer.js").read_text(encoding="utf-8")
    assert "fetch(" not in built  # what offline pages carry asks nobody; the screens' own scripts do
    for library in ("three", "d3-contour", "d3-array", "internmap", "delatin", "smol-toml"):
        assert re.search(rf"^{library} [\d.]+ \(", built, re.M), library  # its notice travels along
