"""What can be done, side by side, cheapest first; and several vehicles over one slab."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from markupsafe import Markup

from crestcut.cut import forbidden, not_into_it
from crestcut.report.pages.figures import figure, look_up
from crestcut.report.pages.meanings import length
from crestcut.report.pages.shell import html, joined
from crestcut.report.pages.words import measure_line, odds, room, sentence
from crestcut.report.words.options import enough_words
from crestcut.study import Report

Document = Mapping[str, object]
NONE = "–"
Row = tuple[str | Markup, ...]  # of cells: what is not markup is text


def options(report: Report, document: Document) -> Markup:
    """The table of options. Each cell carries its own heading, so that it can stand alone on a phone."""
    head = ("What", "At walking pace", "In use", "Enough?", "What it takes")
    listed = rows_of(document, "options")
    rows = [_option(report, document, k, row) for k, row in enumerate(listed)]
    rows = rows or _plain_rows(report, document)
    if report.advice:
        how = measure_line(report, document, 0)
        rows.insert(0, ("Measure first", "the same, better known", NONE, "nearer to yes or no", how))
    sure = f"{report.job.wanted.confidence * 100:g} %"
    note = (
        "What is enough comes first, cheapest first: the gap it leaves and the chance that it touches, at"
        " walking pace as measured, and in use with the allowances taken off. Enough: every gap asked for,"
        f" {sure} sure or more, at walking pace, and as sure that nothing touches in use."
    )
    return html(
        '<section id="options" aria-labelledby="options-title"><h2 id="options-title">Options</h2>'
        '<p class="hint">{}</p>{}</section>{}',
        note, table(head, rows), vehicles(document),
    )  # fmt: skip


def _option(report: Report, document: Document, k: int, row: Mapping[str, object]) -> Row:
    """One row of ``result.json``'s options."""
    key = f"options.{k}"
    left = _gap(document, f"{key}.clearance", f"{key}.chance")
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
    works, in_use = bool(row.get("reaches")), bool(row.get("reaches_in_use"))
    enough: str | Markup = _yes(works, in_use)
    sure = look_up(document, f"{key}.enough")
    if row.get("forbids"):
        enough = "not on this slab"
    elif sure is not None:
        before, shown = enough_words(works, sure, report.job.wanted.confidence)
        enough = html("{}, {}{}", enough, before, figure(document, f"{key}.enough", shown))
    if works and not in_use and not row.get("forbids"):
        enough = html("{}; not in use", enough)
    if row.get("line_points"):
        takes.append(f"Shown on the slab: {line_words(row['line_points'], report.scan.frame.unit)}.")
    used = _gap(document, f"{key}.in_use_clearance", f"{key}.in_use_chance")
    return name, left, used, enough, joined(takes, " ")


def _yes(works: bool, in_use: bool) -> str:
    return "no" if not works else "yes" if in_use else "at walking pace"


def _gap(document: Document, gap: str, chance: str) -> str | Markup:
    """The gap at a key, with the chance of a touch at another."""
    value = look_up(document, gap)
    if value is None:
        return NONE
    shown = figure(document, gap, room(value))
    if look_up(document, chance) is None:
        return shown
    return html("{}, touches {}", shown, _chance(document, chance))


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
    now, used = (
        _gap(document, f"{key}.least_clearance", f"{key}.chance_of_contact") for key in ("before", "in_use")
    )
    rows: list[Row] = [("Leave it as it is", now, used, "yes" if report.kind == "none" else "no", "Nothing.")]
    plan = report.plan
    if plan is not None and plan.deepest > 0:
        enough: str | Markup = "yes" if plan.feasible else html("no, {} short", length(plan.short_by))
        deep, much = figure(document, "cut.deepest"), figure(document, "cut.volume")
        takes: str | Markup = html("Grinding: at most {} deep, {} taken away.", deep, much)
        if found := forbidden(report.job.slab, report.job.keeps):
            enough, takes = "not on this slab", sentence(not_into_it(found))
        left, then = (
            _gap(document, f"{key}.least_clearance", f"{key}.chance_of_contact")
            for key in ("after", "after.in_use")
        )
        rows.append(("Cut the slab", left, then, enough, takes))
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
    if look_up(document, f"vehicles.{k}.after_in_use_clearance") is not None:
        used = _gap(document, f"vehicles.{k}.after_in_use_clearance", f"vehicles.{k}.after_in_use_chance")
        after = html("{}; in use {}", after, used)
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
