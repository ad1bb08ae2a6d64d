"""Drawings measured back from the files that a surveyor gets: the PDF's own lines by a reader that did not
write them, the drawing's viewports by its library's reader.

Coordinates are of survey size (E 512,300 m, N 4,481,200 m, 210 m high), in metres and US survey feet.
"""

from __future__ import annotations

import itertools
import math
import re
from dataclasses import replace
from pathlib import Path

import ezdxf
import numpy as np
import pytest
from deliver_scene import make_report, nothing_to_cut
from pypdf import PageObject, PdfReader
from test_sheets import job_without, sheet_for
from test_survey import in_system

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.paper import PAPERS, PER_FOOT, RATIOS, paper_named, scale_ratio, scale_words
from crestcut.contact.records import TravelLine
from crestcut.job.plot_schema import wished
from crestcut.job.records import PlotWish
from crestcut.report.exchange.levels import Levels
from crestcut.report.plots.furniture import CHECK, MARGIN
from crestcut.report.plots.heights import thinned
from crestcut.report.plots.items import SMALL, Sheet, Stroke, Words, rectangle, width_of, wrapped
from crestcut.report.plots.pdf import write_pdf
from crestcut.report.plots.pen import Pen
from crestcut.report.plots.plan import CROSS, DOT
from crestcut.report.plots.sections import section_of
from crestcut.report.plots.sheets import DXF_NAME, PDF_NAME, page_for, sheets_of, write_plots
from crestcut.report.plots.subject import Subject
from crestcut.study.report import Report

POINT = 25.4 / 72  # mm: the unit of a PDF's page (ISO 32000-1, 8.3.2.3)
ASKED = {"m": ("A3", "1:25"), "us-ft": ("Tabloid", "1/2 in = 1 ft")}
NEAR = 0.02  # mm on paper, where the drawings promise 0.2


def subject_of(report: Report, missing: frozenset[str] = frozenset(), **said: str) -> Subject:
    sheet = sheet_for(report, job_without(report, set(missing)))
    return Subject(Levels(report, sheet), wished(PlotWish(), said))


@pytest.fixture(scope="module", params=list(ASKED))
def handed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Subject, Path]:
    report, folder = in_system(request.param), tmp_path_factory.mktemp("plots")
    paper, scale = ASKED[request.param]
    subject = subject_of(report, paper=paper, scale=scale, client="Kiln Yard Trust", revision="B")
    write_plots(report, subject.levels.sheet, subject.wish, folder)
    return subject, folder


def strokes(page: PageObject) -> list[FloatArray]:
    """Every line that is drawn on a page, (n, 2) mm from its lower left corner."""
    found: list[FloatArray] = []
    path: list[list[tuple[float, float]]] = []

    def visit(operator: bytes, operands: list, matrix: list[float], _: object) -> None:
        if operator in (b"m", b"l"):
            x, y = (float(v) for v in operands[:2])
            a, b, c, d, e, f = matrix
            at = ((a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT)
            if operator == b"m":
                path.append([at])
            else:
                path[-1].append(at)
        elif operator in (b"S", b"s", b"B"):
            found.extend(np.array(part) for part in path if len(part) > 1)
            path.clear()
        elif operator in (b"n", b"f", b"f*"):
            path.clear()

    page.extract_text(visitor_operand_before=visit)
    return found


def long(line: FloatArray) -> float:
    return float(np.hypot(*(line[-1] - line[0])))


def crossings(lines: list[FloatArray], arm: float) -> FloatArray:
    """Middles of two straight lines of one length that halve each other at right angles, mm."""
    arms = [line for line in lines if len(line) == 2 and abs(long(line) - arm) < NEAR]
    found = []
    for a, b in itertools.combinations(arms, 2):
        middle = a.mean(axis=0)
        if np.abs(middle - b.mean(axis=0)).max() < 0.01 and abs(np.dot(a[1] - a[0], b[1] - b[0])) < 1e-3:
            found.append(middle)
    return np.array(found)


def fitted(own: FloatArray, paper: FloatArray) -> tuple[float, FloatArray]:
    """mm on paper of one own unit, and by how much each place is off, by the best turn and shift (Umeyama
    1991, eq. 40 to 42), mirrored or not."""
    a, b = own - own.mean(axis=0), paper - paper.mean(axis=0)
    u, s, vt = np.linalg.svd(b.T @ a)
    scale = float(s.sum() / (a**2).sum())
    off = b - scale * a @ (u @ vt).T
    assert np.linalg.det(u @ vt) > 0  # not mirrored
    return scale, np.hypot(*off.T)


def test_marks_and_dots_lie_where_the_scale_puts_them(handed: tuple[Subject, Path]) -> None:
    subject, folder = handed
    lie_at(subject, folder, scale_ratio(ASKED[subject.levels.frame.unit][1]))


def test_feet_are_drawn_at_a_ratio_too(tmp_path: Path) -> None:
    report = in_system("us-ft")
    subject = subject_of(report, paper="A3", scale="1:25")
    write_plots(report, subject.levels.sheet, subject.wish, tmp_path)
    lie_at(subject, tmp_path, 25)


def lie_at(subject: Subject, folder: Path, ratio: int) -> None:
    """Marks and dots on the first page are where their coordinates put them."""
    frame = subject.levels.frame
    page = PdfReader(folder / PDF_NAME).pages[0]
    lines = strokes(page)
    view = sheets_of(subject)[0].view
    assert view is not None
    low = view.box[1]  # below it the key's own signs
    marks = np.array([m for m in crossings(lines, CROSS) if m[1] > low])
    rings = [line for line in lines if len(line) == 33 and abs(np.ptp(line[:, 0]) - 2 * DOT) < NEAR]
    dots = [p for p in subject.levels.points() if p.code == "DOT"]
    assert len(marks) == len(subject.report.marks) == 2
    inside = [r for r in rings if r[:, 1].min() > low]
    assert len(inside) == len(dots) > 3
    paper = np.vstack([marks, [r[:-1].mean(axis=0) for r in inside]])
    own = [frame.site_to_plan(m.xy) for m in subject.report.marks] + [(d.east, d.north) for d in dots]
    expected = float(frame.plan_scale[0]) * 1000.0 / ratio
    scale, off = fitted(np.array(own), paper)
    assert off.max() < NEAR
    apart = math.dist(own[0], own[1])  # 4.5 m: 180 mm on paper at 1:25
    assert abs(scale - expected) * apart < NEAR
    assert math.dist(*marks) == pytest.approx(apart * expected, abs=NEAR)


def test_grid_lines_are_as_far_apart_as_they_say(handed: tuple[Subject, Path]) -> None:
    subject, folder = handed
    crosses = crossings(strokes(PdfReader(folder / PDF_NAME).pages[0]), 4.0)
    step = {"m": 1.0, "us-ft": 5.0}[subject.levels.frame.unit] * float(subject.levels.frame.plan_scale[0])
    apart = step * 1000.0 / scale_ratio(ASKED[subject.levels.frame.unit][1])
    assert len(crosses) > 8
    for at in crosses:
        assert np.sort(np.hypot(*(crosses - at).T))[1] == pytest.approx(apart, abs=NEAR)


def test_every_page_has_a_bar_of_100_mm_and_says_so(handed: tuple[Subject, Path]) -> None:
    for page in PdfReader(handed[1] / PDF_NAME).pages:
        bars = [
            line for line in strokes(page)
            if len(line) == 2 and abs(long(line) - 100.0) < NEAR and abs(np.ptp(line[:, 1])) < 1e-6
        ]  # fmt: skip
        assert len(bars) >= 1
        assert "must measure 100 mm" in page.extract_text() and CHECK == 100.0


def test_a_profile_is_true_to_both_its_scales(handed: tuple[Subject, Path]) -> None:
    """Its line read back from the PDF against the slab's heights along the line of travel."""
    subject, folder = handed
    levels, ratio = subject.levels, scale_ratio(ASKED[subject.levels.frame.unit][1])
    sheet = next(s for s in sheets_of(subject) if s.name.startswith("Profile"))
    stretch = int(sheet.name.split()[3])
    page = next(p for p in PdfReader(folder / PDF_NAME).pages if "Profile" in p.extract_text())
    wide = subject.length * 1000.0 / ratio
    (ground,) = [
        line for line in strokes(page) if abs(np.ptp(line[:, 0]) - wide) < NEAR and np.ptp(line[:, 1]) > 5
    ]
    chainage = (ground[:, 0] - ground[0, 0]) * ratio / 1000.0
    own = levels.own(levels.existing, subject.on_line(chainage))[:, 2]
    up = float(levels.frame.turned_scale[2]) * 1000.0 / ratio * stretch
    assert np.abs((ground[:, 1] - ground[0, 1]) - (own - own[0]) * up).max() < 0.1


@pytest.mark.parametrize("name", list(PAPERS))
def test_a_page_is_as_large_as_its_paper(name: str, tmp_path: Path) -> None:
    short, tall = PAPERS[name]
    sheets = [
        Sheet(name, size, (rectangle((10, 10, 110, 60), "X"),)) for size in ((short, tall), (tall, short))
    ]
    write_pdf(sheets, make_report().identity, tmp_path / "a.pdf")
    for page, sheet in zip(PdfReader(tmp_path / "a.pdf").pages, sheets, strict=True):
        size = float(page.mediabox.width) * POINT, float(page.mediabox.height) * POINT
        assert size == pytest.approx(sheet.size, abs=0.01)
        (line,) = strokes(page)
        assert (line.min(axis=0), line.max(axis=0)) == (
            pytest.approx([10, 10], abs=1e-3), pytest.approx([110, 60], abs=1e-3)
        )  # fmt: skip


def test_papers_are_those_of_their_standards() -> None:
    """ISO 216: A1 594 x 841 mm, each next half of it, whole mm. Inches: paper-size.com, US paper sizes."""
    for larger, smaller in itertools.pairwise(("A1", "A2", "A3", "A4")):
        assert PAPERS[smaller] == (math.floor(PAPERS[larger][1] / 2), PAPERS[larger][0])
    inch = {
        "Letter": (8.5, 11),
        "Legal": (8.5, 14),
        "Tabloid": (11, 17),
        "Arch A": (9, 12),
        "Arch D": (24, 36),
    }
    for name, size in inch.items():
        assert PAPERS[name] == pytest.approx([25.4 * s for s in size])
    assert paper_named("arch d") == "Arch D" and paper_named("a3") == "A3"


def test_scales_are_read_as_written() -> None:
    for ratio in (*RATIOS, *PER_FOOT):
        assert scale_ratio(scale_words(ratio)) == ratio
    assert scale_ratio("1/2\" = 1'") == 24 and scale_ratio("1 : 25") == 25
    for wrong in ("1:7", "25", "1:0", "two", "1 in = ", "1 in = 1 in", "= 1 ft"):
        with pytest.raises(CrestcutError, match="no scale"):
            scale_ratio(wrong)


def test_what_the_command_line_says_wins() -> None:
    job = PlotWish(paper="A2", client="one", grid=2.0)
    found = wished(job, {"paper": "a4", "scale": "1:50", "client": None, "grid": "500 mm"})
    assert found == PlotWish("A4", 50, client="one", grid=0.5)
    with pytest.raises(CrestcutError, match=r"--paper.*not known; write one of A4"):
        wished(job, {"paper": "B5"})


def test_a_scale_that_does_not_fit_names_the_next_that_does() -> None:
    report = in_system("m")
    assert page_for(subject_of(report, paper="A4")).ratio == 50  # the largest that fits
    assert page_for(subject_of(report, paper="A3")).ratio == 25
    assert page_for(subject_of(report, paper="A1")).ratio == 20
    with pytest.raises(
        CrestcutError, match=r"at 1:25 the plan does not fit on A4; 1:50 is the next that fits"
    ):
        page_for(subject_of(report, paper="A4", scale="1:25"))
    feet = in_system("us-ft")
    with pytest.raises(CrestcutError, match=r"at 1 in = 1 ft .* on Letter; 1/4 in = 1 ft is the next"):
        page_for(subject_of(feet, paper="Letter", scale="1 in = 1 ft"))
    assert page_for(subject_of(feet)).paper == "Tabloid"


def test_what_has_no_room_at_any_scale_wants_larger_paper(monkeypatch: pytest.MonkeyPatch) -> None:
    subject = subject_of(in_system("m"), paper="A4")
    monkeypatch.setattr(Subject, "length", property(lambda _: 90.0))
    with pytest.raises(CrestcutError, match="at 1:200 the plan does not fit on A4; take larger paper"):
        page_for(subject)


def test_titles_say_what_job_and_scan_say_and_no_more(handed: tuple[Subject, Path]) -> None:
    subject, folder = handed
    pages = PdfReader(folder / PDF_NAME).pages
    unit = subject.levels.frame.unit
    for number, page in enumerate(pages, start=1):
        text = page.extract_text()
        for words in ("Courtyard apron", "Kiln Yard Trust", f"{number} of {len(pages)}", "not field-proved"):
            assert words in text, (number, words)
        assert {"m": "EPSG:25832", "us-ft": "EPSG:2263"}[unit] in text
        assert ASKED[unit][0] in text
    assert ASKED[unit][1] in pages[0].extract_text() and "grid north" in pages[0].extract_text()
    sheet = sheets_of(subject)[0]
    below = {w.text: i for i, w in enumerate(sheet.items) if isinstance(w, Words)}
    after = sheet.items[below["surveyor"] + 1]  # nobody said who: a line to write on
    assert isinstance(after, Stroke) and long(after.at) > 30.0


def test_without_a_reference_system_north_is_not_known() -> None:
    words = [w.text for s in sheets_of(subject_of(make_report("m"))) for w in s.items if isinstance(w, Words)]
    assert "not known" in words and "grid north" not in words and "heights are local" in words
    assert any(w.startswith("x ") for w in words) and not any(w.startswith("E ") for w in words)


def test_north_points_where_northings_grow(handed: tuple[Subject, Path]) -> None:
    subject, folder = handed
    view = sheets_of(subject)[0].view
    assert view is not None
    a, b = view.paper([view.middle, (view.middle[0], view.middle[1] + 1.0)])
    up = (b - a) / np.hypot(*(b - a))
    lines = strokes(PdfReader(folder / PDF_NAME).pages[0])
    corner = [x for x in lines if x[:, 0].min() > view.box[2] - 25 and x[:, 1].max() < view.box[1]]
    (arrow,) = [x for x in corner if len(x) == 2 and abs(long(x) - 11.0) < NEAR]
    assert (arrow[1] - arrow[0]) / 11.0 == pytest.approx(up, abs=1e-3)
    start, end = view.paper(subject.levels.frame.site_to_plan(subject.report.line.xy[[0, -1]]))
    assert end[0] > start[0] and end[1] == pytest.approx(start[1], abs=1e-6)  # travel from left to right


def test_sections_are_tabulated_as_the_survey_has_it(handed: tuple[Subject, Path]) -> None:
    """Left of the line on the left; levels and depth as of points set out at the same places."""
    subject, _ = handed
    up = float(subject.levels.frame.turned_scale[2])
    chainage = 4.3
    cut = section_of(subject, chainage, 40.0)
    offsets = [float(w) * subject.long for w in cut.words]
    assert offsets == sorted(offsets, reverse=True) and cut.at == pytest.approx(
        subject.half - np.array(offsets)
    )
    assert np.nanmax(cut.table[:, 2]) > 0.005
    for offset, (existing, finished, depth) in zip(offsets, cut.table, strict=True):
        x, y = subject.on_line(chainage, offset)
        point = subject.levels.at("", "", (float(x), float(y)))
        if point is None:
            assert math.isnan(existing)
            continue
        assert point.finished is not None and point.depth is not None
        assert (existing, finished, depth) == pytest.approx(
            (point.existing, point.finished, point.depth * up), abs=1e-6
        )


def test_tables_hold_the_levels(handed: tuple[Subject, Path]) -> None:
    subject, folder = handed
    pages = PdfReader(folder / PDF_NAME).pages
    text = " ".join(p.extract_text() for p in pages if "Bands and points" in p.extract_text())
    points = list(subject.levels.points())
    up = float(subject.levels.frame.turned_scale[2])
    for p in points:
        assert p.finished is not None and p.depth is not None
        told = [p.name, *(f"{v:.3f}" for v in (p.east, p.north, p.existing, p.finished))]
        row = r"\s+".join(re.escape(t) for t in (*told, subject.depth(p.depth * up)))
        assert re.search(row, text), row  # in this order
    area = sum(b.area for b in subject.levels.bands(subject.band))
    assert f"{area / subject.long**2:.3f}" in text
    assert subject.report.plan is not None
    volume = (
        subject.report.plan.volume * 1000 if subject.metric else subject.report.plan.volume / subject.long**3
    )
    said = sum(b.volume for b in subject.levels.bands(subject.band))
    assert said * (1000 if subject.metric else subject.long**-3) == pytest.approx(volume, rel=0.005)


def boxes(sheet: Sheet) -> list[tuple[Words, FloatArray]]:
    """What words of a sheet cover, lowest and highest x, y, mm; the pale stamp left out."""
    found = []
    for w in (*sheet.items, *sheet.ground):
        if not isinstance(w, Words) or w.height > 12.0:
            continue
        wide = width_of(w.text, w.height, w.bold)
        x0 = {"left": 0.0, "center": -wide / 2, "right": -wide}[w.across]
        y0 = -w.height / 2 if w.up == "middle" else 0.0
        corner = np.array([(x0, y0), (x0 + wide, y0), (x0 + wide, y0 + w.height), (x0, y0 + w.height)])
        turn = math.radians(w.turn)
        turned = (
            corner @ np.array([[math.cos(turn), math.sin(turn)], [-math.sin(turn), math.cos(turn)]]) + w.at
        )
        found.append((w, np.stack([turned.min(axis=0), turned.max(axis=0)])))
    return found


@pytest.mark.parametrize(
    ("unit", "paper"), [("m", "A3"), ("m", "A4"), ("us-ft", "Letter"), ("us-ft", "Arch C")]
)
@pytest.mark.parametrize("missing", [frozenset(), frozenset({"heating"})])
def test_no_words_are_small_cut_or_on_each_other(unit: str, paper: str, missing: frozenset[str]) -> None:
    report = in_system(unit)
    subject = subject_of(
        report, missing, paper=paper, project="A long name of a project " * 6, surveyor="of nobody's " * 12
    )
    for sheet in sheets_of(subject):
        found = boxes(sheet)
        for w, box in found:
            assert w.height >= SMALL
            assert box[0].min() > MARGIN and (box[1] < np.array(sheet.size) - MARGIN).all(), (sheet.name, w)
        for (w, a), (v, b) in itertools.combinations(found, 2):
            slanted = (
                abs(math.sin(2 * math.radians(w.turn))) > 0.05
                or abs(math.sin(2 * math.radians(v.turn))) > 0.05
            )
            apart = (a[0] >= b[1]).any() or (b[0] >= a[1]).any()
            assert apart or slanted, (sheet.name, w.text, v.text)


def test_names_of_close_dots_keep_off_each_other() -> None:
    subject = subject_of(in_system("m"))
    view = sheets_of(subject)[0].view
    assert view is not None
    pen = Pen(subject, view)
    x, y = view.centre
    for k in range(12):
        pen.beside(f"D{k}", np.array([x + k % 3, y + k // 3]), "DOTS", DOT)
    words = tuple(i for i in pen.items if isinstance(i, Words))
    assert len(words) == 12
    found = boxes(Sheet("", view.centre, words))
    for (w, a), (v, b) in itertools.combinations(found, 2):
        assert (a[0] >= b[1]).any() or (b[0] >= a[1]).any(), (w.text, v.text)


def test_a_thinned_line_keeps_to_itself() -> None:
    turn = np.linspace(0.0, 6.0, 6000)
    line = np.column_stack([10 * turn, 20 * np.sin(turn)])
    thin = thinned(line)
    assert len(thin) < 600 and thin[0] == pytest.approx(line[0]) and thin[-1] == pytest.approx(line[-1])
    off = np.abs(np.interp(line[:, 0], thin[:, 0], thin[:, 1]) - line[:, 1])  # more than off its nearest
    assert off.max() < 3 * 0.02


def test_lines_of_words_are_no_wider_than_asked() -> None:
    lines = wrapped("of several words and anunbrokenonethatiswiderthanthecell at the end", 2.5, 30.0)
    assert all(width_of(line, 2.5) <= 30.0 for line in lines)
    assert "".join(lines).replace(" ", "") == "ofseveralwordsandanunbrokenonethatiswiderthanthecellattheend"


@pytest.mark.parametrize("missing", [{"heating"}, {"thickness"}])
def test_without_a_release_nothing_is_drawn_to_cut_from(missing: set[str], tmp_path: Path) -> None:
    report = replace(in_system("m"), release="not for cutting")
    sheet = sheet_for(report, job_without(report, missing))
    notes = write_plots(report, sheet, PlotWish(), tmp_path)
    assert any("existing heights alone" in n for n in notes)
    for page in PdfReader(tmp_path / PDF_NAME).pages:
        text = page.extract_text()
        assert "NOT FOR CUTTING" in text
        for word in ("finished", "deepest", "to remove", "depth,"):
            assert word not in text
    drawing = ezdxf.readfile(tmp_path / DXF_NAME)
    names = {layer.dxf.name for layer in drawing.layers}
    assert "EXISTING_CONTOURS" in names
    assert not names & {"DEPTH_BANDS", "OUTLINE", "DOTS", "FINISHED_CONTOURS"}


def test_nothing_to_cut_is_said_and_not_stamped() -> None:
    report = nothing_to_cut()
    words = [w.text for s in sheets_of(subject_of(report)) for w in s.items if isinstance(w, Words)]
    assert "nothing to cut" in words and "NOT FOR CUTTING" not in words


def test_the_drawing_has_a_layout_a_sheet_with_a_true_viewport(handed: tuple[Subject, Path]) -> None:
    subject, folder = handed
    drawing = ezdxf.readfile(folder / DXF_NAME)
    audit = drawing.audit()
    assert not audit.has_errors and not audit.has_fixes
    frame, sheets = subject.levels.frame, sheets_of(subject)
    assert drawing.header["$INSUNITS"] == {"m": 6, "us-ft": 21}[frame.unit]
    names = drawing.layouts.names_in_taborder()[1:]
    assert len(names) == len(sheets)
    for name, sheet in zip(names, sheets, strict=True):
        layout = drawing.layouts.get(name)
        about = layout.dxf_layout.dxf
        assert (about.paper_width, about.paper_height) == pytest.approx(sheet.size)
        assert about.plot_paper_units == 1  # mm
        windows = [v for v in layout.query("VIEWPORT") if v.dxf.id != 1]
        assert len(windows) == (sheet.view is not None)
        for window in windows:
            said = next(w.text for w in sheet.items if isinstance(w, Words) and w.text.startswith("scale "))
            ratio = scale_ratio(said.removeprefix("scale "))
            assert window.get_scale() == pytest.approx(float(frame.plan_scale[0]) * 1000.0 / ratio, rel=1e-12)
            assert sheet.view is not None
            for mark in subject.report.marks:
                own = frame.site_to_plan(mark.xy)
                through = window.get_transformation_matrix().transform((*own, 0.0))
                assert (through.x, through.y) == pytest.approx(tuple(sheet.view.paper(own)), abs=1e-5)
        text = {t.dxf.text for t in layout.query("TEXT")}
        assert {"Courtyard apron", "Kiln Yard Trust"} <= text


def test_the_model_lies_in_the_scans_own_coordinates(handed: tuple[Subject, Path]) -> None:
    """Dots where the surveyor's points have them; what each viewport shows is of its own size."""
    subject, folder = handed
    drawing = ezdxf.readfile(folder / DXF_NAME)
    space = drawing.modelspace()
    dots = np.array([(p.east, p.north) for p in subject.levels.points() if p.code == "DOT"])
    for layer in ("DOTS", "DOTS_CUT"):
        rings = [np.array(r.get_points("xy")) for r in space.query(f'LWPOLYLINE[layer=="{layer}"]')]
        middle = np.array([r[:-1].mean(axis=0) for r in rings if len(r) == 33])
        assert middle == pytest.approx(dots, abs=1e-6)
    windows = [v for name in drawing.layouts.names_in_taborder()[1:3]
               for v in drawing.layouts.get(name).query("VIEWPORT") if v.dxf.id != 1]  # fmt: skip
    hidden = [set(v.frozen_layers) for v in windows]
    assert "DOTS_CUT" in hidden[0] and "DOTS" not in hidden[0]
    assert "DOTS" in hidden[1] and "DOTS_CUT" not in hidden[1]


def test_sections_cross_a_bent_line_at_right_angles() -> None:
    """On an arc of 6 m: so far along it, so far from its middle."""
    report, radius, step = make_report("m"), 6.0, 0.01
    turn = np.arange(701) * step / radius
    middle = np.array(report.line.xy[0])
    xy = middle + radius * np.column_stack([np.sin(turn), 1.0 - np.cos(turn)])
    line = TravelLine(xy, turn, step)
    subject = subject_of(replace(report, ride=replace(report.ride, line=line)))
    assert subject.length == pytest.approx(7.0)
    s = np.array([0.0, 0.5, 3.0, 6.5])
    for left in (-1.0, 0.0, 0.75):
        centre = middle + np.array([0.0, radius])
        found = subject.on_line(s, left) - centre
        assert np.hypot(*found.T) == pytest.approx(radius - left)
        assert np.arctan2(found[:, 0], -found[:, 1]) == pytest.approx(s / radius)


def test_on_a_straight_line_sections_are_those_of_the_survey() -> None:
    report = in_system("m")
    subject = subject_of(report)
    for row in itertools.islice(subject.levels.sections(), 0, None, 37):
        if 0.0 <= row.chainage <= subject.length:
            own = report.scan.frame.site_to_plan(subject.on_line(row.chainage, row.offset))
            assert tuple(own) == pytest.approx((row.level.east, row.level.north), abs=1e-9)


def test_same_report_same_bytes(handed: tuple[Subject, Path], tmp_path: Path) -> None:
    subject, folder = handed
    write_plots(subject.report, subject.levels.sheet, subject.wish, tmp_path)
    for path in sorted(folder.iterdir()):
        assert (tmp_path / path.name).read_bytes() == path.read_bytes(), path.name
