"""The lower half of ``report.html``: work, measurements, cautions, how sure and why, and its inputs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from markupsafe import Markup

from crestcut.base.cautions import for_measuring
from crestcut.base.units import POUND, number
from crestcut.chance import in_use_allowances
from crestcut.cut import mass_of
from crestcut.report.pages.figures import figure, look_up, term
from crestcut.report.pages.meanings import count, length
from crestcut.report.pages.shell import html, joined
from crestcut.report.pages.words import measure_line, odds, room, sentence
from crestcut.report.pages.worksheet import caution_list, worksheet_cautions, worksheet_text
from crestcut.report.words.ends import grinding_is_no_cure
from crestcut.report.words.split import split_words
from crestcut.report.words.summary import FIELD_NOTE, place_words
from crestcut.study import Report
from crestcut.work import Worksheet, drain_words
from crestcut.work import cautions as work_cautions

Document = Mapping[str, object]

STAMPS = {
    "ok": "Released for cutting",
    "provisional": "Provisional: not to be cut to yet",
    "not for cutting": "Not for cutting",
}


def work(report: Report, document: Document, worksheet: Worksheet | None = None) -> Markup:
    """The cut in figures; withheld words where it is not released."""
    plan = report.plan
    if plan is None or (plan.deepest <= 0 and plan.feasible):
        text = (
            "No cut was worked out."
            if plan is None
            else "Nothing has to be taken off: every gap is already what was asked for, or more."
        )
        return _section("work", "Work sheet", html("<p>{}</p>", text))
    mass = mass_of(plan.volume)
    rows: list[tuple[str | Markup, str | Markup]] = [
        ("Deepest cut", figure(document, "cut.deepest")),
        ("Area", figure(document, "cut.area")),
        ("Volume", figure(document, "cut.volume")),
        ("Mass", term("mass", _weight(mass))),
        ("Feather", html(
            "{}, at every edge", term("feather", f"1 in {1 / report.job.cut.feather:g}"))),
    ]  # fmt: skip
    left = look_up(document, "after.least_clearance")
    if left is not None:
        rows.append(("Least gap afterwards, at walking pace", _afterwards(document, "after", left)))
    used = look_up(document, "after.in_use.least_clearance")
    if used is not None:
        rows.append(("In use, afterwards", _afterwards(document, "after.in_use", used)))
    claim = {
        "least": "No place of it can be shallower: it is the least cut that reaches the gap asked for.",
        "maximal": "Nothing of it can be left standing, though another cut may take other places.",
    }.get(plan.claim, plan.claim)
    short: str | Markup = ""
    if not plan.feasible:
        where = f" at {place_words(report, plan.short_at)}" if plan.short_at is not None else ""
        head = (
            html(
                "<strong>Grinding is not the cure here.</strong> "
                "The figures are of all that the limits allow: "
            )
            if grinding_is_no_cure(report)
            else html("<strong>Not enough.</strong> Within the limits no cut reaches it: ")
        )
        short = html(
            '<p class="mind">{}{} are still missing{}. What limits it: {}.</p>',
            head, figure(document, "cut.short_by"), where, "; ".join(plan.binding) or "not named",
        )  # fmt: skip
    details = worksheet_text(worksheet) if worksheet is not None else ""
    hold = (
        ""
        if report.release == "ok"
        else html(
            '<p class="mind"><strong>{}.</strong> The figures show the size of the job, they are not an '
            "order to cut.</p>",
            STAMPS[report.release],
        )
    )
    drain = html("<p>{}</p>", sentence(drain_words(plan.drain))) if plan.drain is not None else ""
    said = "" if grinding_is_no_cure(report) else html("<p>{}</p>", claim)
    inside = joined([short, hold, _facts(rows), said, drain, details])
    return _section("work", "Work sheet", inside)


def _afterwards(document: Document, key: str, gap: float) -> Markup:
    """Gap once cut, with its chance of a touch."""
    shown, chance = (
        figure(document, f"{key}.least_clearance", room(gap)), look_up(document, f"{key}.chance_of_contact")
    )  # fmt: skip
    if chance is None:
        return shown
    return html("{}, touches {}", shown, figure(document, f"{key}.chance_of_contact", odds(chance)))


def _weight(kilograms: float) -> Markup:
    """kg and lb."""
    si, us = f"{number(kilograms)} kg", f"{number(kilograms / POUND)} lb"
    return html('<span class="si">{}</span><span class="us">{}</span>', si, us)


def measure(report: Report, document: Document) -> Markup:
    """What to measure first, and what has been measured by hand already."""
    job = report.job
    todo = joined(html("<li>{}</li>", measure_line(report, document, k)) for k in range(len(report.advice)))
    first = html(
        "<h3>Measure this first</h3><ol>{}</ol>{}" if todo else "<p>No hand measurement is asked for.</p>",
        todo,
        measure_cautions(report),
    )
    done = [
        (len(job.strings), "string or straightedge reading", "string or straightedge readings"),
        (len(job.levels), "list of levels", "lists of levels"),
        (len(job.witnesses), "reading with the vehicle itself", "readings with the vehicle itself"),
    ]
    given = [f"{n} {one if n == 1 else more}" for n, one, more in done if n]
    folded = html(
        "<p>Already in this result: {}.</p>"
        if given
        else "<p>This result rests on the scan alone; no hand measurement is in it.</p>",
        ", ".join(given),
    )
    return _section("measure", "Measurements", first + folded)


def measure_cautions(report: Report) -> Markup:
    """In full, before anybody goes near the vehicle or kneels on the slab; empty where nothing is asked."""
    told = for_measuring(str(item.get("kind")) for item in report.advice)
    if not told:
        return Markup()
    return html('<div class="mind"><strong>Before you measure.</strong>{}</div>', caution_list(told))


def cautions(report: Report, worksheet: Worksheet | None = None) -> Markup:
    """What can hurt: for the tools and the place where a sheet was made, else what holds for any work."""
    told = (
        worksheet_cautions(worksheet)
        if worksheet is not None
        else caution_list(work_cautions(report.job, ()))
    )
    last = html("{}<p>Local codes and licensed people decide; this page does not.</p>", told)
    return _section("cautions", "Cautions", last)


def sure(report: Report, document: Document) -> Markup:
    """How sure, and why: the parts of the error and where each comes from."""
    error = report.surface.error
    rows: list[tuple[str | Markup, str | Markup]] = [
        ("Noise of one point", _sourced(figure(document, "surface.noise"), error.white_source)),
        (
            html("Bumps the scanner makes, about {} wide", length(error.patch_length)),
            _sourced(figure(document, "surface.patch"), error.patch_source),
        ),
        (
            html("Bending, alike over about {}", length(error.warp_length)),
            _sourced(figure(document, "surface.warp"), error.warp_source),
        ),
    ]
    if report.today is not None:
        rows.append(("The scan's share of the doubt", figure(document, "before.scan_share")))
        rows.append(("Slabs and vehicles tried", figure(document, "before.draws")))
    removed = [f"{count(n)} points taken as {what}" for what, n in report.surface.removed]
    chance = report.today.reasons if report.today else ()
    stages = (report.scan, report.surface, report.vehicle, report.ride, report)
    reasons = [*split_words(report), *chance, *(note for stage in stages for note in stage.notes), *removed]
    unmeasured = report.before.unmeasured * report.surface.height.frame.cell**2
    if unmeasured >= 0.005:  # as in the summary: what rounds to nothing is not worth a line
        reasons.insert(
            0, f"{unmeasured:.2f} m² under the vehicle’s path have no points; nothing is said of them."
        )
    listed = joined(html("<li>{}</li>", sentence(r)) for r in dict.fromkeys(reasons))
    allowances = joined(
        html(
            '<tr><th scope="row">{}<span class="hint">{}</span></th><td>{}</td></tr>',
            name,
            source,
            figure(document, f"in_use.allowances.{k}.lower"),
        )
        for k, (name, _, source) in enumerate(in_use_allowances(report.job.wanted, report.vehicle))
    )
    use = (
        html(
            '<h3>Allowances for use, each up to</h3><table class="sums"><tbody>{}</tbody></table>', allowances
        )
        if allowances
        else ""
    )
    return _section(
        "sure",
        "How sure, and why",
        html("{}{}<h3>What went into it</h3><ul>{}</ul><p>{}</p>", _facts(rows), use, listed, FIELD_NOTE),
    )


def _sourced(shown: Markup, source: str) -> Markup:
    return html('{} <span class="hint">{}</span>', shown, source)


def inputs(document: Document) -> Markup:
    """Version, seed and the files the answer rests on."""
    found = document.get("inputs")
    rows = [
        html(
            '<li>{}: <bdi>{}</bdi> <span class="hash">{}</span></li>',
            row.get("role"),
            row.get("file"),
            str(row.get("sha256") or "")[:16],
        )
        for row in (found if isinstance(found, list) else [])
        if isinstance(row, Mapping)
    ]
    dated = f"dated {document['dated']}" if document.get("dated") else "not dated"
    tool = f"Crestcut {document.get('version')}, seed {document.get('seed')}"
    made = f"Job {dated}. {tool}. Made from:"
    return html("<footer><p>{}</p><ul>{}</ul></footer>", made, joined(rows))


def _facts(rows: Iterable[tuple[str | Markup, str | Markup]]) -> Markup:
    return html(
        '<dl class="facts">{}</dl>', joined(html("<div><dt>{}</dt><dd>{}</dd></div>", *row) for row in rows)
    )


def _section(key: str, title: str, inside: Markup) -> Markup:
    return html(
        '<section id="{0}" class="card" aria-labelledby="{0}-title"><h2 id="{0}-title">{1}</h2>{2}</section>',
        key, title, inside,
    )  # fmt: skip
