"""What a run says in German: page, terminal and drawings hold no sentence in English."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from plots_scene import handed_over
from pypdf import PdfReader
from test_sheets import job_without, sheet_for

from crestcut.base import cautions
from crestcut.base.cautions import Caution, lifting, on_a_ramp, terminal_lines
from crestcut.base.language import speaking, words_of
from crestcut.job import Asked, InSlab, Over, Source
from crestcut.report.pages.report import report_text
from crestcut.report.words.summary import summary_lines
from crestcut.study.report import Report
from crestcut.work.measure_first import _outcomes, board_cautions
from crestcut.work.records import BoardsUnder
from crestcut.work.release import QUESTIONS, _in_the_slab
from report.deliver_scene import MADE_UP, gutter, make_report, nothing_to_cut
from test_language import english_in

GERMAN = words_of("de", "DE")
NAMES = re.compile(r"<(bdi|code|kbd|script|style|title)\b.*?</\1>|<[^>]*>", re.DOTALL)


def touching() -> Report:
    return make_report(clearance=0.09)


def nose() -> Report:
    return make_report(ground=gutter, kind="nose", feasible=False)


@pytest.mark.parametrize("made", [touching, nothing_to_cut, nose])
def test_page_and_terminal_of_a_german_run_are_german(made: Callable[[], Report]) -> None:
    report = made()
    told = [GERMAN.row(line) for line in summary_lines(report)]
    with speaking(GERMAN):
        page = report_text(report, sheet_for(report, job_without(report, set())))
    assert '<html lang="de"' in page
    shown = [" ".join(text.split()) for text in NAMES.sub("\n", page).splitlines()]
    for name in ("title", "alt", "aria-label", "placeholder", "data-head", "data-hint"):
        shown += re.findall(rf'\b{name}="([^"]*)"', page)
    assert not [t for t in {*told, *shown} - MADE_UP if english_in(t)]


def test_a_drawing_true_to_scale_is_german(tmp_path: Path) -> None:
    with speaking(GERMAN):
        _, folder = handed_over("m", tmp_path)
    pages = PdfReader(folder / "plots.pdf").pages
    lines = [line for page in pages for line in page.extract_text().splitlines()]
    assert "Lageplan" in lines and "Kiln Yard Trust" in lines  # a name stays
    assert not [line for line in lines if english_in(line)]
    assert "Lageplan" in (folder / "plots.dxf").read_text(encoding="utf-8")


def test_what_can_hurt_somebody_is_said_in_german() -> None:
    stated = [c for v in vars(cautions).values() for c in (v if isinstance(v, tuple) else (v,))]
    apart = cautions.MEASURED_VEHICLE  # a screen's alone, where heading and words stand apart
    told = [c.line for c in stated if isinstance(c, Caution) and c not in apart]
    told += [text for c in apart for text in (f"{c.head}:", c.full)]
    assert len(told) > 20
    told += [*terminal_lines(["string"]), *terminal_lines(["felt gap"])]
    told += [lifting([("Xyq", 62.0), ("Zvw", 30.0)]).line, on_a_ramp(["Xyq", "Zvw"]).line]
    for back in (True, False):
        told += board_cautions(BoardsUnder("Xyq", 0.04, 0.3, 0.2, back, back))
    for kind, expect in (("felt gap", -0.005), ("felt gap", 0.005), ("string", 0.005)):
        told += _outcomes(kind, expect)
    told += [whom for _, whom in QUESTIONS.values()]
    for asked, over in ((Asked.HEATING, Over.HEATING), (Asked.CONDUIT, Over.CONDUIT)):
        for answer in (None, *InSlab):
            for source in (None, Source.GUESS, Source.COVERMETER):
                told += [reason.words for reason, _ in _in_the_slab(asked, answer, source, (), over)]
    said = [GERMAN.say(line).replace("over = ", "") for line in told]
    assert not [line for line in said if english_in(line)]
