"""Papers, scales, and words that have room on them."""

from __future__ import annotations

import itertools
import math
from pathlib import Path

import numpy as np
import pytest
from deliver_scene import make_report
from plots_scene import POINT, strokes, subject_of
from pypdf import PdfReader
from test_survey import in_system

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.paper import PAPERS, PER_FOOT, RATIOS, paper_named, scale_ratio, scale_words
from crestcut.job.plot_schema import wished
from crestcut.job.records import PlotWish
from crestcut.report.plots.furniture import MARGIN
from crestcut.report.plots.heights import thinned
from crestcut.report.plots.items import SMALL, Sheet, Stroke, Words, rectangle, width_of, wrapped
from crestcut.report.plots.pdf import write_pdf
from crestcut.report.plots.pen import Pen
from crestcut.report.plots.plan import DOT
from crestcut.report.plots.sections import TITLE
from crestcut.report.plots.sheets import ROUNDED, page_for, sheets_of
from crestcut.report.plots.subject import Subject


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


def test_a_profile_stands_under_its_name_on_large_paper() -> None:
    sheet = next(s for s in sheets_of(subject_of(in_system("m"), paper="A1")) if s.name.startswith("Profile"))
    (name,) = (w for w in sheet.items if isinstance(w, Words) and w.text == "Along the line of travel")
    top = max(i.at[:, 1].max() for i in sheet.items if isinstance(i, Stroke) and i.layer == "SECTION")
    assert 0.0 < name.at[1] - top < ROUNDED + TITLE
