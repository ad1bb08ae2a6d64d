"""What can be done, side by side, cheapest first; and several vehicles over one slab."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from markupsafe import Markup

from crestcut.cut.forbidden import forbidden, not_into_it
from crestcut.deliver.page_figures import figure, look_up
from crestcut.deliver.page_meanings import length, share
from crestcut.deliver.page_shell import html, joined
from crestcut.deliver.page_words import measure_line, odds, room, sentence
from crestcut.deliver.report import Report

Document = Mapping[str, object]
NONE = "–"
Row = tuple[str | Markup, ...]  # of cells: what is not markup is text


def options(report: Report, document: Document) -> Markup:
    """The table of options. Each cell carries its own heading, so that it can stand alone on a phone."""
    head = ("What", "Gap it leaves", "Chance that it touches", "Enough?", "What it takes")
    listed = rows_of(document, "options")
    rows = [_option(report, document, k, row) for k, row in enumerate(listed)]
    rows = rows or _plain_rows(report, document)
    if report.advice:
        how = measure_line(report, document, 0)
        rows.insert(0, ("Measure first", "the same, better known", "nearer to yes or no", NONE, how))
    sure = f"{report.job.wanted.confidence * 100:g} %"
    note = f"What is enough comes first, cheapest first. Enough: every gap asked for, {sure} sure or more."
    return html(
        '<section id="options" aria-labelledby="options-title"><h2 id="options-title">Options</h2>'
        '<p class="hint">{}</p>{}</section>{}',
        note, table(head, rows), vehicles(document),
    )  # fmt: skip


def _option(report: Report, document: Document, k: int, row: Mapping[str, object]) -> Row:
    """One row of ``result.json``'s options."""
    key = f"options.{k}"
    gap = look_up(document, f"{key}.clearance")
    left = NONE if gap is None else figure(document, f"{key}.clearance", room(gap))
    takes: list[str | Markup] = [sentence(str(row.get("needs") or "nothing"))]
    depth, litres = look_up(document, f"{key}.depth"), look_up(document, f"{key}.litres")
    laid = (litres or 0) < 0
    if depth and not row.get("forbids"):
        deep = figure(document, f"{key}.depth")
        takes.append(html("At most {} {}.", deep, "thick" if laid else "deep"))
    if litres and not row.get("forbids"):
        much = figure(document, f"{key}.litres")
        takes.append(html("{} {}.", much, "laid down" if laid else "taken away"))
    name = sentence(str(row.get("name"))).rstrip(".")
    enough: str | Markup
    enough, sure = "yes" if row.get("reaches") else "no", look_up(document, f"{key}.enough")
    if row.get("forbids"):
        enough = "not on this slab"
    elif sure is not None:
        before, shown = _enough(bool(row.get("reaches")), sure, report.job.wanted.confidence)
        enough = html("{}{}", before, figure(document, f"{key}.enough", shown))
    if row.get("line"):
        takes.append(f"Shown on the slab: {line_words(row['line'], report.scan.frame.unit)}.")
    return name, left, _chance(document, f"{key}.chance"), enough, joined(takes, " ")


def _enough(reaches: bool, sure: float, wanted: float) -> tuple[str, str]:
    """Yes or no as the summary says it, and the share: what stands before the figure, and the figure.

    A cut is called enough by the margin it was planned with for ``wanted``; the share is counted once more on
    the finished surface and may come out on the other side of ``wanted``. Then both are said for what they
    are.
    """
    word = "yes" if reaches else "no"
    if reaches == (sure >= wanted - 1e-9):
        return "", f"{word}, {share(sure)}"
    if reaches:
        return f"{word}, planned for {wanted * 100:g} %; counted again once cut: ", share(sure)
    return f"{word}, the margin planned for {wanted * 100:g} % is not kept; counted again: ", share(sure)


def line_words(ends: object, unit: str) -> str:
    """From where to where a line goes, in the scan's own coordinates; empty where it is no pair of points."""
    if not isinstance(ends, (list, tuple)) or len(ends) != 2:
        return ""
    start, end = ends
    where = f"from x {start[0]:.2f}, y {start[1]:.2f} to x {end[0]:.2f}, y {end[1]:.2f}"
    return f"{where} ({unit}, as in the scan)"


def _chance(document: Document, key: str) -> str | Markup:
    """A chance of touching in words."""
    value = look_up(document, key)
    return NONE if value is None else figure(document, key, odds(value))


def _plain_rows(report: Report, document: Document) -> list[Row]:
    """Where no options were worked out: as it is, and the cut."""
    before = look_up(document, "before.least_clearance")
    rows: list[Row] = [
        (
            "Leave it as it is",
            NONE if before is None else figure(document, "before.least_clearance", room(before)),
            _chance(document, "before.chance_of_contact"),
            "yes" if report.kind == "none" else "no",
            "Nothing.",
        )
    ]
    plan = report.plan
    if plan is not None and plan.deepest > 0:
        chance = _chance(document, "after.chance_of_contact")
        enough: str | Markup = "yes" if plan.feasible else html("no, {} short", length(plan.short_by))
        deep, much = figure(document, "cut.deepest"), figure(document, "cut.volume")
        takes: str | Markup = html("Grinding: at most {} deep, {} taken away.", deep, much)
        if found := forbidden(report.job.slab, report.job.keeps):
            enough, takes = "not on this slab", sentence(not_into_it(found))
        after = look_up(document, "after.least_clearance")
        left = NONE if after is None else figure(document, "after.least_clearance", room(after))
        rows.append(("Cut the slab", left, chance, enough, takes))
    return rows


def vehicles(document: Document) -> Markup:
    """Several vehicles over the same slab; empty for one."""
    listed = rows_of(document, "vehicles")
    if not listed:
        return Markup()
    head = ("Vehicle", "Verdict", "Gap today", "Chance that it touches", "Gap once cut", "Its part")
    rows = [_vehicle(document, k, row) for k, row in enumerate(listed)]
    return html(
        '<section id="vehicles" aria-labelledby="vehicles-title"><h2 id="vehicles-title">Each vehicle</h2>'
        '<p class="hint">One cut for all of them. The rest of this page speaks of the first, which has least '
        "room.</p>{}</section>",
        table(head, rows),
    )


def _vehicle(document: Document, k: int, row: Mapping[str, object]) -> Row:
    """One row of ``result.json``'s vehicles."""

    def cell(name: str, gap: bool = False) -> str | Markup:
        value = look_up(document, f"vehicles.{k}.{name}")
        if value is None:
            return NONE
        return figure(document, f"vehicles.{k}.{name}", room(value) if gap else None)

    alone, own = look_up(document, f"vehicles.{k}.alone"), look_up(document, f"vehicles.{k}.litres")
    part = [html("Alone it would need {}." if alone else "Alone it would need no cut.", cell("alone"))]
    part += [html("Of this cut {} are for it.", cell("litres"))] if own else []
    after = cell("after_clearance", gap=True)
    if row.get("enough") is not None:
        after = html("{}, enough" if row["enough"] else "{}, not enough", after)
    name, verdict = html("<bdi>{}</bdi>", row.get("name")), str(row.get("verdict") or NONE)
    touch = _chance(document, f"vehicles.{k}.chance_of_contact")
    return name, verdict, cell("least_clearance", gap=True), touch, after, joined(part, " ")


def rows_of(document: Document, key: str) -> list[Mapping[str, object]]:
    """A list of tables in the result; empty where it is not there."""
    found = document.get(key)
    return [row for row in found if isinstance(row, Mapping)] if isinstance(found, (list, tuple)) else []


def table(head: Sequence[str], rows: Sequence[Row]) -> Markup:
    """The first cell of each row names it. On a phone every cell stands under its own heading."""
    top = joined(html('<th scope="col">{}</th>', name) for name in head)
    body = joined(
        html(
            '<tr><th scope="row">{}</th>{}</tr>', first,
            joined(html('<td data-head="{}"><span>{}</span></td>', name, cell)
                   for name, cell in zip(head[1:], rest, strict=True)),
        )
        for first, *rest in rows
    )  # fmt: skip
    return html('<table class="wide"><thead><tr>{}</tr></thead><tbody>{}</tbody></table>', top, body)
