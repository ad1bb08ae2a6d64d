"""pick.html in a browser: taps, keys, mistakes, and the job file that comes out of it."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from browser.conftest import grave_faults, overflow, saving
from browser.courtyard import courtyard, draw_line, mistakes, plan, reveal, tap
from crestcut.base.errors import CrestcutError
from crestcut.base.units import parse_length
from crestcut.job.load import load_job
from crestcut.job.records import PlanPoint
from crestcut.report.pages.pick import write_pick
from crestcut.vehicle.load import load_vehicle


def test_a_newcomer_with_a_phone_saves_a_job_that_loads(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "phone")
    assert "Tap where the line of travel starts and ends" in mistakes(page)[0]
    for end in ((1.0, 1.7), (11.0, 1.8)):  # the line is what a first tap draws
        tap(page, *end)
    assert page.locator("#tool-look").is_checked()  # and the next tap does no harm
    page.locator("#tool-mark").check(force=True)
    tap(page, 2.0, 0.6)
    page.locator("#tool-keep").check(force=True)
    for corner in ((4.0, 0.2), (5.0, 0.2), (5.0, 0.9), (4.0, 0.9)):
        tap(page, *corner)
    page.locator("#close-area").click()
    page.get_by_label("Name of the job").fill("Courtyard apron")
    page.get_by_label("Which vehicle").select_option("lowered_floor_mobility_van.toml")
    reveal(page, "The slab")
    page.get_by_label("Kind of slab").select_option("plain concrete")
    page.get_by_label("Thickness", exact=True).fill("104 mm")
    page.get_by_label("Thickness known from").select_option("drilled")
    page.get_by_label("Post-tensioned").select_option("no")
    page.locator("#f-slab-post_tensioned_from").select_option("drawing")
    reveal(page, "The place")
    page.get_by_label("Ground").select_option("private")
    assert mistakes(page) == []
    with saving(page, tmp_path) as kept:
        page.locator("#save-job").click()
    with saving(page, tmp_path) as car:
        page.locator("#save-vehicle").click()
    pixel = 12 * 1.06 / 390
    job = load_job(kept[0])
    assert kept[0].name == "courtyard_apron.toml" and car[0].name == "lowered_floor_mobility_van.toml"
    assert load_vehicle(job.vehicle.file).name == "lowered-floor mobility van"
    assert job.title == "Courtyard apron" and [f.name for f in job.scan.files] == ["apron.laz"]
    wanted = [
        plan(1.0, 1.7),
        plan(11.0, 1.8),
        plan(2.0, 0.6),
        plan(4.0, 0.2),
        plan(5.0, 0.2),
        plan(5.0, 0.9),
        plan(4.0, 0.9),
    ]
    found = [*job.travel.line, job.marks[0].at, *job.keeps[0].area]
    for point, (x, y) in zip(found, wanted, strict=True):
        assert isinstance(point, PlanPoint) and (point.x, point.y) == pytest.approx((x, y), abs=1.1 * pixel)
    assert job.travel.ways == ("forward", "turned") and job.wanted.want == pytest.approx(0.0127)
    assert job.slab.thickness == pytest.approx(0.104) and job.slab.thickness_from == "drilled"
    assert (job.slab.kind, job.slab.post_tensioned, job.slab.post_tensioned_from) == (
        "plain concrete",
        "no",
        "drawing",
    )
    assert job.site.ground == "private" and job.site.place is None and job.keeps[0].deepest == 0.0


EXPECTED = {
    "title": "Court",
    "scan": {"files": ["apron.laz"]},
    "vehicle": {"file": "flat_floor_hatchback.toml", "load": ["as measured", "four people"]},
    "travel": {
        "line": [[-512_299.0, 4_481_202.0], [-512_289.0, 4_481_202.125]], 
        "track": "left", "ways": ["forward"], "wander": "4 in",
    },
    "clearance": {"want": "3/4 in", "confidence": 0.9},
    "mark": [{"name": "peg", "at": [-512_298.0, 4_481_200.5]}],
}  # fmt: skip


def test_typed_answers_make_exactly_the_expected_job(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "laptop")
    page.locator("#units-switch").select_option("inches")
    draw_line(page, touch=False)
    page.locator("#tool-mark").check(force=True)
    tap(page, 2.0, 0.6, touch=False)
    for row, values in (
        ("line-0", EXPECTED["travel"]["line"][0]),
        ("line-1", EXPECTED["travel"]["line"][1]),
        ("mark-0", EXPECTED["mark"][0]["at"]),
    ):
        for axis, value in enumerate(values):
            box = page.locator(f"#{row} input[inputmode=decimal]").nth(axis)
            box.fill(str(value))
            box.blur()
    page.get_by_label("Name of mark 1").fill("peg")
    page.get_by_label("Name of mark 1").blur()
    page.get_by_label("Name of the job").fill("Court")
    page.locator("#f-vehicle-load").get_by_text("four people").click()
    page.get_by_label("Gap to leave under the belly").fill("3/4 in")
    page.get_by_label("How sure of it").fill("90")
    reveal(page, "Driving")
    page.get_by_text("nose first, against the arrow").click()
    page.get_by_label("The line shows the path of").select_option("left")
    page.get_by_label("It may be off the line by, each side").fill("4 in")
    with saving(page, tmp_path) as kept:
        page.locator("#save-job").click()
    assert tomllib.loads(kept[0].read_text(encoding="utf-8")) == EXPECTED


def test_keys_alone_draw_and_mend_a_line_and_save(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "laptop")
    page.locator("#tool-look").focus()
    page.keyboard.press("ArrowRight")  # the next tool: line
    page.locator(".view").focus()
    page.keyboard.press("ArrowDown")  # clear of the hole
    for _ in range(9):
        page.keyboard.press("ArrowLeft")
    page.keyboard.press("Enter")
    for _ in range(18):
        page.keyboard.press("ArrowRight")
    page.keyboard.press("Enter")
    line = page.evaluate("crestcut.model.line")
    assert len(line) == 2 and line[1][0] - line[0][0] > 6
    page.locator(".handle.line").first.focus()
    page.keyboard.press("ArrowUp")
    page.keyboard.press("Shift+ArrowRight")
    moved = page.evaluate("crestcut.model.line[0]")
    assert np.subtract(moved, line[0]) == pytest.approx([0.1, 0.01], abs=1e-6)
    page.keyboard.press("Delete")
    assert len(page.evaluate("crestcut.model.line")) == 1
    page.locator("#undo").press("Enter")
    assert page.evaluate("crestcut.model.line[0]") == moved
    page.locator("#title").focus()
    page.keyboard.type("Keys only")
    assert mistakes(page) == []
    for button in ("#save-vehicle", "#save-job"):
        page.locator(button).focus()
        with saving(page, tmp_path) as kept:
            page.keyboard.press("Enter")
    job = load_job(kept[0])
    assert job.title == "Keys only" and load_vehicle(job.vehicle.file).name == "flat-floor hatchback"


def test_mistakes_are_said_at_once(pick: Path, open_page: Any) -> None:
    page = open_page(pick, "laptop")
    draw_line(page, ((2.0, 2.0), (3.5, 2.0)), touch=False)
    assert any("shorter than the wheelbase" in m for m in mistakes(page))
    page.locator("#undo").click()
    page.locator("#undo").click()
    draw_line(page, ((1.0, 2.5), (11.5, 2.5)), touch=False)
    assert any("front left wheel leaves what was scanned" in m for m in mistakes(page))
    beneath = page.locator("#line-said").inner_text()  # under the plan too
    assert "front left wheel leaves what was scanned" in beneath
    assert page.locator(".overlay .tight").count() == 1  # and where it is
    page.get_by_label("Gap to leave under the belly").fill("0,5 in")
    assert page.locator("#f-clearance-want-back").inner_text() == "write 0.5 in, without the comma"
    assert page.locator("#f-clearance-want").get_attribute("aria-invalid") == "true"
    page.get_by_label("Gap to leave under the belly").fill("8 in")
    assert any("as much as the belly has" in m for m in mistakes(page))
    page.get_by_label("Which vehicle").select_option("typed")
    assert sum("is not given yet" in m for m in mistakes(page)) == 5
    hints = page.locator("[id^=v-][placeholder]").evaluate_all("all => all.map(box => box.placeholder)")
    assert len(hints) >= 11 and len(set(hints)) == len(hints)  # each box has an example of its own size
    page.get_by_label("Outside to outside over the tyres").fill("1,77 m")
    assert any("“1,77 m”: write 1.77 m, without the comma" in m for m in mistakes(page))
    page.get_by_label("Axle to axle").fill("26 mm")
    assert any("cannot be right" in m for m in mistakes(page))
    beside = page.locator(".field", has=page.locator("#v-wheelbase")).locator(".at-field")
    assert "cannot be right" in beside.inner_text()  # beside the field itself
    assert page.locator(".field", has=page.locator("#v-tyre")).locator(".at-field").count() == 0  # empty
    page.locator("#save-job").press("Enter")  # refused: nothing is saved while something is wrong
    assert "not complete" in page.locator("#said").inner_text()
    page.locator("#mistakes a", has_text="Hub height").click()
    assert page.evaluate("document.activeElement.id") == "v-radius"


def test_five_tape_lengths_make_a_good_vehicle_file(pick: Path, open_page: Any, tmp_path: Path) -> None:
    page = open_page(pick, "tablet")
    draw_line(page)
    page.get_by_label("Which vehicle").select_option("typed")
    page.get_by_label("Its name").fill("Café cart")
    for name, length in (
        ("Axle to axle", "2.62 m"),
        ("Outside to outside", "1685 mm"),
        ("Tyre width", "195 mm"),
        ("Hub height", "296 mm"),
        ("Belly clearance", "5 1/2 in"),
    ):
        page.get_by_label(name).fill(length)
    page.get_by_text("Nose, tail, body and turning").click()
    page.get_by_label("Front overhang").fill("820 mm")
    page.get_by_label("Clearance under the nose").fill("170 mm")
    assert mistakes(page) == []
    with saving(page, tmp_path) as kept:
        page.locator("#save-vehicle").click()
    vehicle = load_vehicle(kept[0])
    assert kept[0].name == "café_cart.toml" and vehicle.name == "Café cart"
    assert (vehicle.wheelbase, vehicle.front_track, vehicle.tyre_radius) == pytest.approx((2.62, 1.49, 0.296))
    assert vehicle.belly_clearance == pytest.approx(5.5 * 0.0254)
    nose = next(p for p in vehicle.parts if p.zone == "nose")
    assert nose.z == pytest.approx((0.17, 0.17)) and nose.x[1] == pytest.approx(2.62 + 0.82)


def test_a_bare_number_is_refused_in_every_box(pick: Path, open_page: Any) -> None:
    """As in the files: a number without its unit was read as mm here, and is refused there."""
    page = open_page(pick, "laptop")
    draw_line(page, touch=False)
    page.get_by_label("Which vehicle").select_option("typed")
    page.evaluate("for (const d of document.querySelectorAll('#panel details')) d.open = true")
    boxes = [b for b in page.locator("#panel input[aria-describedby$=-back]").all() if b.is_visible()]
    assert len(boxes) >= 16
    for box in boxes:
        box.fill("120")
        box.dispatch_event("change")
        assert box.input_value() == "120"
        back = page.locator(f"#{box.get_attribute('id')}-back")
        assert "the unit is missing" in back.inner_text()
        assert any("“120”: the unit is missing" in m for m in mistakes(page))
        box.fill("120 mm")
        assert "120.0 mm" in back.inner_text()


def said(page: Any) -> str:
    return page.locator("#tap-said").inner_text()


def test_taps_near_points_do_what_was_meant_or_say_why_not(pick: Path, open_page: Any) -> None:
    """Fingers at 390 px: a tap on a point's button was swallowed, one with nothing chosen said nothing."""
    page = open_page(pick, "phone")
    pixel = 1 / page.evaluate("Math.hypot(...[0, 1].map((k) => crestcut.stage.project(1, 0, NaN)[k] - "
                              "crestcut.stage.project(0, 0, NaN)[k]))")  # fmt: skip
    tap(page, 1.0, 1.7)
    tap(page, 1.0, 1.7)  # a double tap: no second point on the first
    assert len(page.evaluate("crestcut.model.line")) == 1 and "is here already" in said(page)
    tap(page, 11.0, 1.8)
    assert len(page.evaluate("crestcut.model.line")) == 2
    for place in ((6.0, 1.75), (11.0, 1.8)):  # on the line, and on its end, with nothing chosen
        page.evaluate("document.getElementById('tap-said').textContent = ''")
        tap(page, *place)
        assert "choose Line, Mark or Keep area" in said(page) and page.locator("#tap-said").is_visible()
    page.locator("#tool-mark").check(force=True)
    assert said(page) == ""
    for place in ((6.0, 1.75), (11.0 - 18 * pixel, 1.8), (6.0 + 18 * pixel, 1.75)):
        tap(page, *place)  # on the line, beside its end, beside the mark just put
        assert "put at" in said(page)
    marks = page.evaluate("crestcut.model.marks.map((m) => m.at)")
    assert len(marks) == 3 and [m[0] for m in marks] == pytest.approx(
        [plan(x, 0)[0] for x in (6.0, 11.0 - 18 * pixel, 6.0 + 18 * pixel)], abs=1.1 * pixel
    )
    tap(page, 6.0, 1.75)
    assert len(page.evaluate("crestcut.model.marks")) == 3 and "Mark A is here already" in said(page)
    assert page.evaluate("crestcut.model.marks[0].at") == marks[0]  # and a tap moves nothing
    page.locator("#undo").click()
    assert len(page.evaluate("crestcut.model.marks")) == 2  # one undo, one point: taps leave nothing to undo
    page.locator("#tool-line").check(force=True)
    tap(page, 6.0, 1.75)  # where mark A was: a bend there
    assert len(page.evaluate("crestcut.model.line")) == 3 and overflow(page) <= 0
    page.locator("#tool-keep").check(force=True)
    tap(page, 4.0, 0.4)
    tap(page, 4.0, 0.4)
    assert page.evaluate("crestcut.map.open.length") == 1 and "corner 1 is here already" in said(page)


LENGTHS = [
    "140 mm",
    "5 1/2 in",
    "5 ft 6 in",
    "-20 mm",
    '3/8"',
    "2.62 m",
    "0.14",
    "1,5 m",
    "in",
    "5 6 in",
    "1/0 in",
    "12 in 1 ft",
    "7 parsec",
    " 1 us-ft ",
    "+3 cm",
    "",
    "5 9/8 in",
    "5 8/8 in",
    "9/8 in",
    "3 m 20 cm",
    "20 cm 3 m",
    "2 in 1/2 in",
    ".5 in",
    "5. mm",
    "1e3 mm",
    "-  5 mm",
    "--5 mm",
    "5 mm mm",
    "5mm",
    "6'2\"",
    "6′ 2″",
    "１２ mm",
    "99999999999999 m",
    "0 mm",
    "-0 in",
    "1 /2 in",
    "1/ 2 in",
    "5\u00a01/2\u202fin",
    "5 ft 6\u201d",
    "5\u2019 6\u201d",
    "\u221220 mm",
]


def test_lengths_are_read_as_the_program_reads_them(pick: Path, open_page: Any) -> None:
    page = open_page(pick, "laptop")
    for text in LENGTHS:
        try:
            wanted: float | None = parse_length(text)
        except CrestcutError:
            wanted = None
        found = page.evaluate("t => { try { return crestcut.parseLength(t); } catch { return null; } }", text)
        assert (found is None) == (wanted is None), text
        if wanted is not None:
            assert found == pytest.approx(wanted, rel=1e-12), text


@pytest.mark.parametrize(("size", "scheme"), [("phone", "dark"), ("tablet", "light"), ("laptop", "dark")])
def test_it_fits_and_axe_finds_nothing_grave(pick: Path, open_page: Any, size: str, scheme: str) -> None:
    page = open_page(pick, size, scheme)
    draw_line(page, touch=size != "laptop")
    for closed in page.locator("#panel details:not([open]) > summary").all():
        if closed.is_visible():
            closed.click()
    assert overflow(page) <= 0
    assert grave_faults(page) == []


def test_odd_titles_and_names_stay_text(open_page: Any, tmp_path: Path) -> None:
    name = "<img src=x onerror=alert(1)> حديقة.laz"
    page = open_page(write_pick(courtyard(name), None, tmp_path), "phone")
    assert name in page.locator("header").inner_text()
    page.get_by_label("Name of the job").fill('</script><b>מגרש</b> \u202e "quoted" \\ back')
    title = tomllib.loads(page.locator("#job-text").input_value())["title"]
    assert title == '</script><b>מגרש</b> \u202e "quoted" \\ back'
    assert page.locator("main b, main img").count() == 0 and overflow(page) <= 0


def test_without_webgl_the_plan_still_works(pick: Path, open_page: Any) -> None:
    page = open_page(pick, "phone", hash="#flat")
    draw_line(page)
    assert mistakes(page) == [] and page.evaluate("crestcut.stage.flat")
    pixels = (
        "() => { const c = document.querySelector('.view canvas'), d = c.getContext('2d').getImageData(0, "
        "0, c.width, c.height).data;"
        " let n = 0; for (let k = 3; k < d.length; k += 4) n += d[k] > 0; return n; }"
    )
    assert page.evaluate(pixels) > 20_000
