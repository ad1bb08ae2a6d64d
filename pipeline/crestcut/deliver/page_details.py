"""The lower half of ``report.html``: work, measurements, cautions, how sure and why, and its inputs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from crestcut.cautions import for_measuring
from crestcut.deliver.ends import grinding_is_no_cure
from crestcut.deliver.page_figures import figure, look_up, term
from crestcut.deliver.page_meanings import count, length
from crestcut.deliver.page_shell import esc
from crestcut.deliver.page_words import measure_line, room, sentence
from crestcut.deliver.page_worksheet import caution_list, worksheet_cautions, worksheet_text
from crestcut.deliver.report import Report
from crestcut.deliver.summary import CONCRETE_DENSITY, FIELD_NOTE, POUND, number, place_words
from crestcut.travel.chance import in_use_allowances
from crestcut.work.cards import cautions as work_cautions
from crestcut.work.drain import drain_words
from crestcut.work.records import Worksheet

Document = Mapping[str, object]

STAMPS = {
    "ok": "Released for cutting",
    "provisional": "Provisional: not to be cut to yet",
    "not for cutting": "Not for cutting",
}


def work(report: Report, document: Document, worksheet: Worksheet | None = None) -> str:
    """The cut in figures; withheld words where it is not released."""
    plan = report.plan
    if plan is None or (plan.deepest <= 0 and plan.feasible):
        text = (
            "No cut was worked out."
            if plan is None
            else "Nothing has to be taken off: every gap is already what was asked for, or more."
        )
        return _section("work", "Work sheet", f"<p>{text}</p>")
    mass = plan.volume * CONCRETE_DENSITY
    rows = [
        ("Deepest cut", figure(document, "cut.deepest")),
        ("Area", figure(document, "cut.area")),
        ("Volume", figure(document, "cut.volume")),
        ("Mass", term("mass", _weight(mass))),
        ("Feather", term("feather", f"1 in {1 / report.job.cut.feather:g}") + ", at every edge"),
    ]  # fmt: skip
    left = look_up(document, "after.least_clearance")
    if left is not None:
        rows.append(("Least gap afterwards", figure(document, "after.least_clearance", room(left))))
    claim = {
        "least": "No place of it can be shallower: it is the least cut that reaches the gap asked for.",
        "maximal": "Nothing of it can be left standing, though another cut may take other places.",
    }.get(plan.claim, plan.claim)
    short = ""
    if not plan.feasible:
        where = f" at {place_words(report, plan.short_at)}" if plan.short_at is not None else ""
        head = (
            "<strong>Grinding is not the cure here.</strong> The figures are of all that the limits allow: "
            if grinding_is_no_cure(report)
            else "<strong>Not enough.</strong> Within the limits no cut reaches it: "
        )
        short = (
            f'<p class="mind">{head}'
            f"{figure(document, 'cut.short_by')} are still "
            f"missing{esc(where)}. What limits it: {esc('; '.join(plan.binding) or 'not named')}.</p>"
        )
    details = worksheet_text(worksheet) if worksheet is not None else ""
    hold = (
        ""
        if report.release == "ok"
        else f'<p class="mind"><strong>{esc(STAMPS[report.release])}.</strong> The figures show the size of '
        "the job, they are not an order to cut.</p>"
    )
    drain = f"<p>{esc(sentence(drain_words(plan.drain)))}</p>" if plan.drain is not None else ""
    said = "" if grinding_is_no_cure(report) else f"<p>{esc(claim)}</p>"
    inside = f"{short}{hold}{_facts(rows)}{said}{drain}{details}"
    return _section("work", "Work sheet", inside)


def _weight(kilograms: float) -> str:
    """kg and lb."""
    si, us = f"{number(kilograms)} kg", f"{number(kilograms / POUND)} lb"
    return f'<span class="si">{si}</span><span class="us">{us}</span>'


def measure(report: Report, document: Document) -> str:
    """What to measure first, and what has been measured by hand already."""
    job = report.job
    todo = "".join(f"<li>{measure_line(report, document, k)}</li>" for k in range(len(report.advice)))
    first = (
        f"<h3>Measure this first</h3><ol>{todo}</ol>{measure_cautions(report)}"
        if todo
        else "<p>No hand measurement is asked for.</p>"
    )
    done = [
        (len(job.strings), "string or straightedge reading", "string or straightedge readings"),
        (len(job.levels), "list of levels", "lists of levels"),
        (len(job.witnesses), "reading with the vehicle itself", "readings with the vehicle itself"),
    ]
    given = [f"{n} {one if n == 1 else more}" for n, one, more in done if n]
    folded = (
        f"<p>Already in this result: {esc(', '.join(given))}.</p>"
        if given
        else "<p>This result rests on the scan alone; no hand measurement is in it.</p>"
    )
    return _section("measure", "Measurements", first + folded)


def measure_cautions(report: Report) -> str:
    """In full, before anybody goes near the vehicle or kneels on the slab; empty where nothing is asked."""
    told = for_measuring(str(item.get("kind")) for item in report.advice)
    if not told:
        return ""
    return f'<div class="mind"><strong>Before you measure.</strong>{caution_list(told)}</div>'


def cautions(report: Report, worksheet: Worksheet | None = None) -> str:
    """What can hurt: for the tools and the place where a sheet was made, else what holds for any work."""
    told = (
        worksheet_cautions(worksheet)
        if worksheet is not None
        else caution_list(work_cautions(report.job, ()))
    )
    return _section(
        "cautions",
        "Cautions",
        f"{told}<p>Local codes and licensed people decide; this page does not.</p>",
    )


def sure(report: Report, document: Document) -> str:
    """How sure, and why: the parts of the error and where each comes from."""
    error = report.surface.error
    rows = [
        ("Noise of one point", _sourced(figure(document, "surface.noise"), error.white_source)),
        (
            f"Bumps the scanner makes, about {length(error.patch_length)} wide",
            _sourced(figure(document, "surface.patch"), error.patch_source),
        ),
        (
            f"Bending, alike over about {length(error.warp_length)}",
            _sourced(figure(document, "surface.warp"), error.warp_source),
        ),
    ]
    if report.today is not None:
        rows.append(("The scan's share of the doubt", figure(document, "before.scan_share")))
        rows.append(("Slabs and vehicles tried", figure(document, "before.draws")))
    removed = [f"{count(n)} points taken as {what}" for what, n in report.surface.removed]
    chance = report.today.reasons if report.today else ()
    stages = (report.scan, report.surface, report.vehicle, report.ride, report)
    reasons = [*chance, *(note for stage in stages for note in stage.notes), *removed]
    unmeasured = report.before.unmeasured * report.surface.height.frame.cell**2
    if unmeasured > 0:
        reasons.insert(
            0, f"{unmeasured:.2f} m² under the vehicle’s path have no points; nothing is said of them."
        )
    listed = "".join(f"<li>{esc(sentence(r))}</li>" for r in dict.fromkeys(reasons))
    allowances = "".join(
        f'<tr><th scope="row">{esc(name)}<span class="hint">{esc(source)}</span></th>'
        f"<td>{figure(document, f'in_use.allowances.{k}.lower')}</td></tr>"
        for k, (name, _, source) in enumerate(in_use_allowances(report.job.wanted, report.vehicle))
    )
    use = (
        f'<h3>Allowances for use, each up to</h3><table class="sums"><tbody>{allowances}</tbody></table>'
        if allowances
        else ""
    )
    return _section(
        "sure",
        "How sure, and why",
        f"{_facts(rows)}{use}<h3>What went into it</h3><ul>{listed}</ul><p>{esc(FIELD_NOTE)}</p>",
    )


def _sourced(shown: str, source: str) -> str:
    return f'{shown} <span class="hint">{esc(source)}</span>'


def inputs(document: Document) -> str:
    """Version, seed and the files the answer rests on."""
    found = document.get("inputs")
    rows = [
        f"<li>{esc(row.get('role'))}: <bdi>{esc(row.get('file'))}</bdi> <span "
        f'class="hash">{esc(str(row.get("sha256") or "")[:16])}</span></li>'
        for row in (found if isinstance(found, list) else [])
        if isinstance(row, Mapping)
    ]
    made = f"Crestcut {esc(document.get('version'))}, seed {esc(document.get('seed'))}. Made from:"
    return f"<footer><p>{made}</p><ul>{''.join(rows)}</ul></footer>"


def _facts(rows: Iterable[tuple[str, str]]) -> str:
    return (
        '<dl class="facts">'
        + "".join(f"<div><dt>{name}</dt><dd>{value}</dd></div>" for name, value in rows)
        + "</dl>"
    )


def _section(key: str, title: str, inside: str) -> str:
    head = f'<h2 id="{key}-title">{esc(title)}</h2>'
    return f'<section id="{key}" class="card" aria-labelledby="{key}-title">{head}{inside}</section>'
