"""``reference.png`` and the card of the page: every point and every pass is there, with its figure."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from deliver_scene import make_report
from page_text import PageText

from crestcut.job.records import ScanChoice, Surveyed
from crestcut.report.pages.report import write_report
from crestcut.report.pictures import ink
from crestcut.report.pictures.reference import draw_reference, worth_drawing
from crestcut.report.words.summary import summary_lines
from crestcut.scan.control.tie import tied
from crestcut.scan.records import ScanPass
from crestcut.study.checks import held_against
from crestcut.study.report import Report

MOVED = np.array([300.0, -200.0, 5.0])


@pytest.fixture(scope="module")
def report() -> Report:
    """The made-up job tied to control that is 3 mm off here and there, of two stations, with two checks."""
    plain = make_report("m")
    frame, grid = plain.scan.frame, plain.surface.height
    rng = np.random.default_rng(4)
    uv = np.array([[1.0, 0.8], [8.0, 0.6], [7.8, 2.9], [1.2, 2.7], [4.6, 1.6]])
    xy = grid.frame.to_site(uv)
    own = frame.to_own(np.column_stack([xy, grid.sample(xy)]))
    control = tuple(
        Surveyed(f"C{k}", tuple(p + MOVED + rng.normal(0, 0.003, 3)), tuple(p)) for k, p in enumerate(own)
    )
    passes = (
        ScanPass("apron.e57, scan 1", 900),
        ScanPass("apron.e57, scan 2", 800, 0.0021, (0.001, 0.0, -0.0034)),
        ScanPass("apron.e57, scan 3", 9, 0.003),
    )
    scan = tied(replace(plain.scan, passes=passes), ScanChoice((Path("apron.laz"),), control=control))
    report = replace(plain, scan=scan)
    xy = grid.frame.to_site(np.array([[3.0, 1.0], [6.0, 2.0]]))
    own = scan.frame.to_own(np.column_stack([xy, grid.sample(xy)])) - [0.0, 0.0, 0.0021]
    checks = [Surveyed(f"K{k}", tuple(p), None, 0.002) for k, p in enumerate(own)]
    return replace(report, checks=held_against(checks, scan, report.surface))


def test_the_picture_names_every_point_and_pass(
    report: Report, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from matplotlib.text import Text

    kept: list[Any] = []
    monkeypatch.setattr(ink, "save", lambda figure, path, about: kept.append(figure))
    draw_reference(report, tmp_path / "r.png")
    said = [t.get_text() for t in kept[0].findobj(Text) if t.get_text()]
    for name in ("C0", "C1", "C2", "C3", "C4", "K0", "K1"):
        assert name in said or f"{name} (control)" in said
    assert "scan 2" in said and "-3.4, fits to 2.1 mm rms" in said
    assert "laid on, fits to 3.0 mm rms" in said  # where it lay is not known, and not zero
    for point in report.checks.points:
        assert f"{(point.up or 0.0) * 1000:+.1f}" in said
    figure = kept[0]
    figure.canvas.draw()
    page = figure.bbox
    for text in figure.findobj(Text):
        if text.get_text() and text.get_visible() and text.get_window_extent().width > 1:
            box = text.get_window_extent()
            assert page.x0 - 1 <= box.x0 and box.x1 <= page.x1 + 1, text.get_text()


def test_the_page_has_the_same_figures(report: Report, tmp_path: Path) -> None:
    page = PageText.read(write_report(report, tmp_path))
    words = " ".join(" ".join(page.words).split())
    tie = report.scan.tie
    assert tie is not None
    for point in tie.points:
        assert f"{point.residual[2] * 1000:.1f} mm" in words
    assert "ASPRS Positional Accuracy" in words and "FGDC-STD-007.3-1998" in words
    assert "2 are too few to state the product as tested" in words
    assert "crestcut run record.json" in words
    line = next(s for s in summary_lines(report) if s.startswith("Reference:"))
    assert "5 control points" in line and "2 check points" in line


def test_one_walk_without_control_has_nothing_to_draw() -> None:
    plain = make_report("m")
    assert not worth_drawing(plain)
    assert not any(s.startswith("Reference:") for s in summary_lines(plain))


def test_same_report_same_bytes(report: Report, tmp_path: Path) -> None:
    for name in "ab":
        draw_reference(report, tmp_path / f"{name}.png")
    assert (tmp_path / "a.png").read_bytes() == (tmp_path / "b.png").read_bytes()
