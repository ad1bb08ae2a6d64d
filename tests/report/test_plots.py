"""Drawings measured back from the file that a surveyor gets: the PDF's own lines by a reader that did not
write them.

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
from plots_scene import ASKED, NEAR, handed_over, long, strokes, subject_of
from pypdf import PdfReader
from test_sheets import job_without, sheet_for
from test_survey import in_system

from crestcut.base.grid import FloatArray
from crestcut.base.paper import scale_ratio
from crestcut.contact.records import TravelLine
from crestcut.job.records import PlotWish
from crestcut.report.plots.furniture import CHECK
from crestcut.report.plots.items import Stroke, Words
from crestcut.report.plots.plan import CROSS, DOT
from crestcut.report.plots.sections import section_of
from crestcut.report.plots.sheets import DXF_NAME, PDF_NAME, sheets_of, write_plots
from crestcut.report.plots.subject import Subject


@pytest.fixture(scope="module", params=list(ASKED))
def handed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Subject, Path]:
    return handed_over(request.param, tmp_path_factory.mktemp("plots"))


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
