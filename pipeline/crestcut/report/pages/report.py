"""``report.html``: the whole answer on one page that needs no network. What it says stands in its
templates."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from crestcut.alternatives import Option
from crestcut.base.cautions import for_measuring, terminal_lines
from crestcut.chance import finding_words, in_use_allowances
from crestcut.cut import forbidden, mass_of, not_into_it
from crestcut.report.pages.glossary import MEANINGS, ROW_MEANINGS, find_figure
from crestcut.report.pages.scene import scene
from crestcut.report.pages.shell import page, write_page
from crestcut.report.pages.words import count, sentence, weight
from crestcut.report.pictures.reference import worth_drawing
from crestcut.report.view.record import record_document
from crestcut.report.view.result import plain_document, result_document
from crestcut.report.words.ends import grinding_is_no_cure, grinding_seldom_cures
from crestcut.report.words.options import enough_words
from crestcut.report.words.split import split_words
from crestcut.report.words.summary import (
    FIELD_NOTE,
    asked_first,
    asked_kinds,
    claim_words,
    contradictions,
    nothing_to_cut,
    other_steps,
    place_words,
    stopped,
)
from crestcut.report.words.verdict import say_verdict, unmeasured_lines
from crestcut.study import Report
from crestcut.terrain import DoubtKind
from crestcut.work import Worksheet, drain_words
from crestcut.work import cautions as work_cautions

NAME = "report.html"
INCH_COUNTRIES = ("US",)
WAYS = ("keep to the line", "another line", "less load", "slower", "more pressure")  # options without work
Document = Mapping[str, object]


@dataclass(frozen=True)
class Ask:
    """A hand measurement worth making.

    key : of it in the result.  how, where, expect : in words, empty where not known.  felt : under the
    standing vehicle.  narrows : whether it is known how much surer it makes the answer.
    """

    key: str
    how: str
    where: str
    expect: str
    felt: bool
    narrows: bool


@dataclass(frozen=True)
class OptionRow:
    """A row of the options.

    key : of it in the result.  works, in_use : whether it is enough at walking pace, and in use.  barred :
    the slab forbids it.  deep, much : whether it takes a depth, and litres; laid : down, not off.  share :
    how sure it is enough, ``before`` what stands before that; empty where not known.  line : where its line
    runs, or empty.  hours : of work, or empty.
    """

    key: str
    name: str
    needs: str
    works: bool
    in_use: bool
    barred: bool
    deep: bool
    much: bool
    laid: bool
    before: str
    share: str
    line: str
    hours: str = ""


@dataclass(frozen=True)
class VehicleRow:
    """One of several vehicles. key : of it in the result.  enough : None where it is not known."""

    key: str
    name: str
    verdict: str
    enough: bool | None


def write_report(report: Report, out: Path, worksheet: Worksheet | None = None) -> Path:
    """Write the page and return its path; ``out`` is the file, or the folder it goes into.

    worksheet : for the person on the slab; None where none was made.

    Raises CrestcutError if it cannot be written.
    """
    return write_page(report_text(report, worksheet), out, NAME)


def report_text(report: Report, worksheet: Worksheet | None = None) -> str:
    """The whole page. Its figures are those of ``result.json``: both come from the same document."""
    units = "inches" if (report.job.site.country or "").upper() in INCH_COUNTRIES else "metric"
    shown = shown_in_report(report, result_document(report), worksheet)
    title = f"{report.title}: report"
    return page("report.html", title, scene(report), units, report.identity, **shown)


def first_answer(report: Report) -> dict[str, object]:
    """What a screen shows while the plan is still sought: ``result`` as in the file of that name, ``scene``
    as the page carries it."""
    return {"result": result_document(report), "scene": plain_document(scene(report))}


def shown_in_report(report: Report, document: Document, sheet: Worksheet | None = None) -> dict[str, object]:
    """What the template shows, by the names it has there."""
    plan, figures = report.plan, partial(find_figure, document)
    barred = forbidden(report.job.slab, report.job.keeps)
    return {
        "report": report, "document": document, "sheet": sheet, "figures": figures,
        "record": record_document(report), "drawn": worth_drawing(report),
        "nothing_to_cut": nothing_to_cut(report), "said": say_verdict(report),
        "minded": [stopped(d) for d in (*contradictions(report), *report.vehicle_doubts, *_if_up(report))],
        "doubts": [sentence(finding_words(f, report.scan.frame)) for f in report.doubts],
        "softs": [(soft, place_words(report, soft.at)) for soft in report.soft],
        "why_not_grind": grinding_seldom_cures(report), "no_cure": grinding_is_no_cure(report),
        "asks": asks(report), "asked": len(asked_first(report)), "drive_here": drive_here(report),
        "steps": [sentence(step) for step in other_steps(report)],
        "care": terminal_lines(asked_kinds(report)),
        "option_rows": option_rows(report, document), "vehicle_rows": vehicle_rows(document),
        "cut_forbidden": not_into_it(barred) if barred else "",
        "mass": weight(mass_of(plan.volume)) if plan is not None else "",
        "claim": claim_words(plan) if plan is not None else "",
        "short_at": place_words(report, plan.short_at) if plan is not None and plan.short_at else "",
        "drain": drain_words(plan.drain) if plan is not None and plan.drain is not None else "",
        "measuring_cautions": for_measuring(str(item.get("kind")) for item in report.advice),
        "working_cautions": work_cautions(report.job, ()),
        "allowances": list(in_use_allowances(report.job.wanted, report.vehicle)),
        "reasons": reasons(report), "field_note": FIELD_NOTE,
        "known": [found for meaning in MEANINGS if (found := figures(meaning.key)) is not None],
        "of_rows": [meaning for meaning in ROW_MEANINGS if document.get(meaning.key.split(".")[0])],
    }  # fmt: skip


def _if_up(report: Report) -> list[str]:
    """What 'clears' hangs on where nothing in the scan shows which way is up."""
    hangs = [d.words for d in report.surface.error.doubts if d.kind is DoubtKind.UP]
    return hangs if report.verdict == "clears" else []


def asks(report: Report) -> list[Ask]:
    """The hand measurements worth making, best first."""
    found = []
    for k, item in enumerate(report.advice):
        kind = str(item.get("kind") or "one gap by hand")
        how = str(item.get("how") or kind)
        narrows = isinstance(item.get("narrows"), (int, float))
        where, expect = (str(item.get(key) or "") for key in ("where", "expect"))
        how = how[:1].upper() + how[1:]
        found.append(Ask(f"advice.measure.{k}", how, where, expect, kind == "felt gap", narrows))
    return found


def drive_here(report: Report) -> Option | None:
    """The first way of driving that needs no cut, where there is one."""
    return next((o for o in report.options if o.works and o.kind in WAYS), None)


def reasons(report: Report) -> list[str]:
    """What went into the answer, each once."""
    removed = [f"{count(n)} points taken as {what}" for what, n in report.surface.removed]
    chance = report.today.reasons if report.today else ()
    stages = (report.scan, report.surface, report.vehicle, report.ride, report)
    notes = (note for stage in stages for note in stage.notes)
    return list(dict.fromkeys([*unmeasured_lines(report), *split_words(report), *chance, *notes, *removed]))


def option_rows(report: Report, document: Document) -> list[OptionRow]:
    """The options of the result; none where none were worked out."""
    rows = []
    for k, row in enumerate(rows_of(document, "options")):
        key, works, barred = f"options.{k}", bool(row.get("reaches")), bool(row.get("forbids"))
        depth, litres, sure = (find_figure(document, f"{key}.{n}") for n in ("depth", "litres", "enough"))
        much = litres.value if litres is not None else 0.0
        before, share = "", ""
        if sure is not None:
            before, share = enough_words(works, sure.value, report.job.wanted.confidence)
        rows.append(OptionRow(
            key, sentence(str(row.get("name"))).rstrip("."), str(row.get("needs") or "nothing"), works,
            bool(row.get("reaches_in_use")), barred, depth is not None and depth.value > 0 and not barred,
            much != 0 and not barred, much < 0, before, share,
            line_words(row.get("line_points"), report.scan.frame.words), work_hours(row.get("hours")),
        ))  # fmt: skip
    return rows


def work_hours(span: object) -> str:
    """ "9.9 to 23.5 h of work"; empty where it takes none, or nobody knows."""
    if not isinstance(span, (list, tuple)) or len(span) != 2:
        return ""
    low, high = (float(v) if isinstance(v, (int, float)) else 0.0 for v in span)
    return f"{low:.1f} to {high:.1f} h of work" if high > 0 else ""


def line_words(ends: object, words: str) -> str:
    """From where to where a line goes, in the scan's own coordinates; empty where it is no pair of points."""
    if not isinstance(ends, (list, tuple)) or len(ends) != 2:
        return ""
    start, end = ends
    where = f"from x {start[0]:.2f}, y {start[1]:.2f} to x {end[0]:.2f}, y {end[1]:.2f}"
    return f"{where} ({words})"


def vehicle_rows(document: Document) -> list[VehicleRow]:
    """Several vehicles over the same slab; none for one."""
    rows = []
    for k, row in enumerate(rows_of(document, "vehicles")):
        enough = None if row.get("enough") is None else bool(row["enough"])
        rows.append(VehicleRow(f"vehicles.{k}", str(row["name"]), str(row.get("verdict") or "–"), enough))
    return rows


def rows_of(document: Document, key: str) -> Sequence[Mapping[str, object]]:
    """A list of tables in the result; empty where it is not there."""
    found = document.get(key)
    return [row for row in found if isinstance(row, Mapping)] if isinstance(found, (list, tuple)) else []
