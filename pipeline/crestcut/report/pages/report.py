"""``report.html``: the whole answer on one page that needs no network."""

from __future__ import annotations

from pathlib import Path

from crestcut.report.pages import details as lower
from crestcut.report.pages import sections as upper
from crestcut.report.pages.figures import figure_table, keep_stops, meanings
from crestcut.report.pages.options import options
from crestcut.report.pages.pick import switches
from crestcut.report.pages.scene import scene
from crestcut.report.pages.shell import html, joined, page, write_page
from crestcut.report.view.result import result_document
from crestcut.study import Report
from crestcut.work import Worksheet

NAME = "report.html"
INCH_COUNTRIES = ("US",)
CONTENTS = (
    ("answer", "Answer"), ("drive", "On the slab"), ("options", "Options"), ("work", "Work"),
    ("measure", "Measure"), ("cautions", "Cautions"), ("sure", "How sure"), ("figures", "All figures"),
)  # fmt: skip


def write_report(report: Report, out: Path, worksheet: Worksheet | None = None) -> Path:
    """Write the page and return its path; ``out`` is the file, or the folder it goes into.

    worksheet : for the person on the slab; None where none was made.

    Raises CrestcutError if it cannot be written.
    """
    return write_page(report_text(report, worksheet), out, NAME)


def report_text(report: Report, worksheet: Worksheet | None = None) -> str:
    """The whole page. Its figures are those of ``result.json``: both come from the same document."""
    document = result_document(report)
    units = "inches" if (report.job.site.country or "").upper() in INCH_COUNTRIES else "metric"
    links = joined(html('<a href="#{}">{}</a>', key, name) for key, name in CONTENTS)
    body = joined([
        html('<header class="top"><div><h1><bdi>{}</bdi></h1><p>{} on the slab</p></div>{}</header>',
             report.title, report.vehicle.name, switches(units)),
        upper.stamp(report),
        html('<nav class="contents" aria-label="On this page">{}</nav>', links),
        html('<main id="app">'),
        upper.answer(report, document),
        upper.drive(),
        options(report, document),
        lower.work(report, document, worksheet),
        html('<div class="pair">'),
        lower.measure(report, document),
        lower.cautions(report, worksheet),
        lower.sure(report, document),
        html("</div>"),
        html('<section id="figures" class="card" aria-labelledby="figures-title"><h2 id="figures-title">All '
             "figures, and what they mean</h2>{}</section>", figure_table(document)),
        html('<p id="said" role="status" class="away"></p>'),
        html("<noscript><p>The pictures need JavaScript, which this browser has switched off; every figure "
             "stands in the tables.</p></noscript>"),
        html("</main>"),
        lower.inputs(document),
        meanings(document),
    ], "\n")  # fmt: skip
    return page(f"{report.title}: report", "report", keep_stops(body), scene(report), units, report.identity)
