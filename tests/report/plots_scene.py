"""A job's drawings as files, and the lines of a page read back."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from pypdf import PageObject
from test_sheets import job_without, sheet_for
from test_survey import in_system

from crestcut.base.grid import FloatArray
from crestcut.job.plot_schema import wished
from crestcut.job.records import PlotWish
from crestcut.report.exchange.levels import Levels
from crestcut.report.plots.sheets import write_plots
from crestcut.report.plots.subject import Subject
from crestcut.study.report import Report

POINT = 25.4 / 72  # mm: the unit of a PDF's page (ISO 32000-1, 8.3.2.3)
ASKED = {"m": ("A3", "1:25"), "us-ft": ("Tabloid", "1/2 in = 1 ft")}
NEAR = 0.02  # mm on paper, where the drawings promise 0.2


def handed_over(unit: str, folder: Path) -> tuple[Subject, Path]:
    """Both files of the made-up job in a unit, as ``ASKED``."""
    report = in_system(unit)
    paper, scale = ASKED[unit]
    subject = subject_of(report, paper=paper, scale=scale, client="Kiln Yard Trust", revision="B")
    write_plots(report, subject.levels.sheet, subject.wish, folder)
    return subject, folder


def subject_of(report: Report, missing: frozenset[str] = frozenset(), **said: str) -> Subject:
    sheet = sheet_for(report, job_without(report, set(missing)))
    return Subject(Levels(report, sheet), wished(PlotWish(), said))


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
