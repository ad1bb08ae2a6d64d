"""report.html in a browser: verdict and picture at once, slab and vehicle linked, every figure's meaning
one tap away."""

from __future__ import annotations

import dataclasses
import re
from pathlib import Path
from typing import Any

import pytest

from browser.conftest import grave_faults, overflow, until
from crestcut.base.errors import visible
from crestcut.report.pages.report import write_report
from crestcut.report.view.result import result_document
from crestcut.study.report import Report
from crestcut.work.records import Reason, ReasonCode
from report.deliver_scene import crest, gutter, make_report


def touching() -> Report:
    report = make_report(clearance=0.09)
    advice = (
        {
            "kind": "a gap felt under the standing vehicle",
            "where": "front axle 5.9 m along the line",
            "narrows": 3.2,
        },
    )
    return dataclasses.replace(
        report,
        release="not for cutting",
        release_reasons=(
            Reason(ReasonCode.UNANSWERED, "ask whoever poured it whether it is post-tensioned"),
        ),
        advice=advice,
    )


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_report(touching(), tmp_path_factory.mktemp("out"))


def first_number(text: str) -> float:
    found = re.search(r"-?\d+(?:\.\d+)?", text)
    assert found, text
    return float(found[0])


def test_verdict_and_proof_stand_at_the_top(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "laptop")
    assert (
        page.locator("#verdict")
        .inner_text()
        .startswith("Touches: the lowered-floor mobility van hangs up on the crest by")
    )
    assert page.locator("#proof svg").count() == 2
    box = page.locator("#proof").bounding_box()
    assert box is not None and box["y"] + 200 < 768  # seen without scrolling
    assert "NOT FOR CUTTING" in page.locator(".stamp").inner_text()
    assert "NOT FOR CUTTING" in page.locator("#view .overlay").inner_html()
    words = page.locator("#proof-words").inner_text()
    told = touching()
    gap, part = told.least_clearance, result_document(told)["before"]["part"]  # type: ignore[index]
    assert part in page.locator("#proof svg").first.locator("text").all_text_contents()
    assert f"{-gap * 1000:.1f} mm into the slab" in words


def test_on_a_phone_the_answer_comes_first_and_the_rest_is_folded(shown: Path, open_page: Any) -> None:
    """Shut: all but verdict, picture, next step and slab. A link opens what it leads to; paper opens all."""
    shut = "document.querySelectorAll('details.fold:not([open])').length"
    page = open_page(shown, "laptop")
    folds = page.locator("details.fold").count()
    assert folds >= 7 and page.evaluate(shut) == 0
    page = open_page(shown, "phone")
    assert page.evaluate(shut) == folds - 1 and page.locator("#cautions li").first.is_visible()
    assert page.evaluate("document.documentElement.scrollHeight") < 5000  # cautions and all
    assert page.locator("#answer .steps").is_visible() and not page.locator("#figures dl").is_visible()
    assert not page.locator("#profile").is_visible()  # the same picture stands beside the verdict
    page.locator("#station").press("ArrowRight")
    until(page, "document.getElementById('profile').clientWidth > 200")
    page.locator('.contents a[href="#figures"]').tap()
    assert page.locator("#figures dl").is_visible() and page.evaluate(shut) == folds - 2
    page.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    assert page.evaluate(shut) == 0


def test_a_tap_on_a_figure_opens_its_meaning(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "phone")
    page.locator("#verdict .fig").tap()
    meaning = page.locator(".meaning:popover-open")
    assert "smallest upright distance" in meaning.inner_text()
    page.keyboard.press("Escape")
    assert page.locator(".meaning:popover-open").count() == 0
    page.locator('.contents a[href="#work"]').tap()  # on a phone it is folded until then
    page.locator("#work .fig").first.focus()
    page.keyboard.press("Enter")
    assert "straight down" in page.locator(".meaning:popover-open").inner_text()


def test_units_change_everywhere(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "phone")
    assert re.search(r"\d mm", page.locator("#verdict").inner_text())
    page.locator("#units-switch").select_option("inches")
    for place in ("#verdict", "#proof-words", "#station-words", "#legend"):
        text = page.locator(place).text_content() if place == "#legend" else page.locator(place).inner_text()
        assert re.search(r"\d in", text or ""), place
        assert not re.search(r"\d mm", text or ""), place


def test_slider_drives_the_vehicle_with_its_wheels_on_the_ground(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "laptop")
    station = page.locator("#station")
    worst = page.locator("#station-words").inner_text()
    before = page.locator("#profile").inner_html()
    station.focus()
    for _ in range(12):
        page.keyboard.press("ArrowRight")
    until(page, f"document.getElementById('station-words').textContent !== {worst!r}")
    assert page.locator("#profile").inner_html() != before
    off = page.evaluate(
        "() => { const { report } = crestcut, d = report.drive; let most = 0; for (let k = 0; k < d.count; "
        "k++)"
        " for (let w = 0; w < 4; w++) { const [u, v, z] = d.hub(k, w), g = report.height.at(u, v);"
        " if (Number.isFinite(g)) most = Math.max(most, Math.abs(z - d.vehicle.radius - g)); } return most; }"
    )
    assert off < 0.004  # the scene's wheels are points; pitch moves a hub by 2 mm over a sloping slab
    least = (
        page.evaluate("Math.min(...crestcut.report.drive.gap.filter(Number.isFinite))")
        if page.evaluate("crestcut.report.drive.gap.some(Number.isFinite)")
        else None
    )
    page.locator("#to-worst").click()
    assert page.locator("#station-words").inner_text() == worst
    if least is not None:
        assert first_number(worst.split("least")[1]) == pytest.approx(abs(least) * 1000, abs=0.06)


def test_once_cut_the_gap_grows_and_the_old_slab_stays_as_a_dashed_line(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "laptop")
    today = page.locator("#station-words").inner_text()
    page.locator("#once-cut").check()
    after = page.locator("#station-words").inner_text()
    assert "into the slab" in today and after.endswith("once cut") and after != today
    assert page.locator("#profile .as-was").count() == 1 and page.locator("#profile .cut").count() == 0
    page.locator("#visit").click()
    assert page.locator("#station-words").inner_text() == today


def test_reading_under_the_cursor_is_the_plan(shown: Path, open_page: Any) -> None:
    page, report = open_page(shown, "laptop"), touching()
    page.locator("#show-car").uncheck()
    page.locator("#view").scroll_into_view_if_needed()
    place = page.evaluate(
        "() => { const { report, view } = crestcut, d = report.depth, n = d.values.length; let best = 0;"
        " for (let k = 0; k < n; k++) if (d.values[k] > d.values[best] || Number.isNaN(d.values[best])) "
        "best = k;"
        " const u = (best % d.nx) * d.cell, v = Math.floor(best / d.nx) * d.cell; view.stage.draw();"
        " const p = view.stage.project(u, v, report.height.at(u, v)), box = "
        "view.stage.holder.getBoundingClientRect();"
        " return [p[0] + box.left, p[1] + box.top]; }"
    )
    page.mouse.move(*place)
    said = page.locator("#cursor").inner_text()
    assert report.plan is not None
    x, y = map(float, re.findall(r"-?\d+\.\d+", said)[:2])
    site = report.scan.frame.plan_to_site((x, y))
    wanted = float(report.plan.depth.sample(site))
    assert first_number(said.split("take off")[1]) == pytest.approx(
        wanted * 1000, abs=1.5
    )  # half a pixel and half a cell


def test_without_a_graphics_card_the_slab_stands_still_while_the_vehicle_drives(
    shown: Path, open_page: Any
) -> None:
    page = open_page(shown, "laptop")
    assert page.evaluate("crestcut.view.stage.slow")  # as the browser of these tests is started
    sharp, moving, still = page.evaluate(
        "() => { const { view, report } = crestcut, { stage } = view, sharp = stage.canvas.width;"
        " view.stand(report.drive.worst + 5); stage.draw();"  # in one go: it comes to rest by itself
        " return [sharp, [stage.gliding, stage.canvas.width], [stage.still.hidden, stage.still.width]]; }"
    )
    assert moving[0] is True and moving[1] < sharp and still == [False, sharp]
    until(page, "!crestcut.view.stage.gliding")
    assert page.evaluate("crestcut.view.stage.still.hidden") and page.evaluate(
        "crestcut.view.mesh.mesh.material.colorWrite && crestcut.view.contours.lines.visible"
    )
    assert page.evaluate("crestcut.view.stage.canvas.width") == sharp


def test_keys_turn_and_near_the_slab(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "laptop")
    place = "crestcut.view.stage.camera.position.toArray()"
    start = page.evaluate(place)
    page.locator("#view").focus()
    page.keyboard.press("ArrowLeft")
    turned = page.evaluate(place)
    page.keyboard.press("+")
    nearer = page.evaluate(place)
    assert turned != start and sum(c * c for c in nearer) < sum(c * c for c in turned)
    page.keyboard.press("Home")
    assert page.evaluate(place) == pytest.approx(start)


def test_wheel_scrolls_the_page_until_the_slab_is_chosen(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "laptop")
    page.locator("#view").scroll_into_view_if_needed()
    box = page.locator("#view").bounding_box()
    page.mouse.move(box["x"] + 200, box["y"] + 200)
    start = page.evaluate("scrollY")
    page.mouse.wheel(0, 200)
    until(page, f"scrollY > {start}")
    assert page.evaluate("crestcut.view.stage.controls.enableZoom") is False
    page.locator("#view").focus()
    assert page.evaluate("crestcut.view.stage.controls.enableZoom") is True


@pytest.mark.parametrize(
    ("size", "scheme"), [("phone", "light"), ("phone", "dark"), ("tablet", "dark"), ("laptop", "light")]
)
def test_it_fits_and_axe_finds_nothing_grave(shown: Path, open_page: Any, size: str, scheme: str) -> None:
    page = open_page(shown, size, scheme)
    assert overflow(page) <= 0
    page.locator(".stamp summary").click()
    page.locator("#verdict .fig").click()  # its meaning opens beside all the rest
    assert grave_faults(page) == []


def test_light_switch_overrules_the_device(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "laptop", "light")
    colour = "getComputedStyle(document.body).backgroundColor"
    light = page.evaluate(colour)
    page.locator("#light-switch").select_option("dark")
    assert page.evaluate(colour) != light


NASTY = '</script><img src=x onerror=alert(1)>"& مرآب مائل \u202eabc'


def test_odd_titles_stay_text(open_page: Any, tmp_path: Path) -> None:
    report = touching()
    odd = dataclasses.replace(
        report,
        job=dataclasses.replace(report.job, title=NASTY),
        vehicle=dataclasses.replace(report.vehicle, name=NASTY),
    )
    page = open_page(write_report(odd, tmp_path), "phone")
    assert page.locator("h1").inner_text() == visible(NASTY)
    assert page.evaluate("[...document.images].map(i => i.getAttribute('src'))") in ([], [None])
    assert overflow(page) <= 0


def test_without_webgl_the_slab_is_shown_from_above(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "phone", hash="#flat")
    assert (
        page.evaluate("crestcut.view.stage.flat") and "from above" in page.locator("#view-tools").inner_text()
    )
    page.locator("#to-worst").click()
    assert overflow(page) <= 0


def test_paper_shows_both_units_the_slab_and_no_buttons(shown: Path, open_page: Any) -> None:
    page = open_page(shown, "laptop", "dark")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    page.emulate_media(media="print")
    assert re.search(r"mm.*in", page.locator("#verdict").inner_text())
    assert not page.locator("#units-switch").is_visible() and not page.locator("#to-worst").is_visible()
    paper = page.locator("img.paper")
    assert paper.is_visible() and (paper.get_attribute("src") or "").startswith("data:image/png")
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert page.locator("details:not([open])").count() == 0  # on paper nothing can be unfolded
    assert page.locator(".every-page").is_visible() and not page.locator(".profile").is_visible()
    edge = page.locator(".every-page").bounding_box()
    sheet = page.locator("main").bounding_box()
    assert sheet["x"] + sheet["width"] <= edge["x"] + 1  # the stamp covers nothing


@pytest.mark.parametrize(
    "options",
    [
        {"clearance": 0.16},
        {"cut": False},
        {"ground": gutter, "kind": "nose"},
        {"feasible": False, "ground": crest},
    ],
)
def test_every_kind_of_answer_makes_a_page(options: dict[str, Any], open_page: Any, tmp_path: Path) -> None:
    page = open_page(write_report(make_report(**options), tmp_path), "phone")
    assert (
        page.locator("#verdict").inner_text()
        and page.locator("#proof svg").count() == 2
        and overflow(page) <= 0
    )
