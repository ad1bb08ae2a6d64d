"""Pages that are always printed: release and amounts, the ground around the cut, cards; and order of work
and record page when released.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from crestcut.base.units import FOOT, GALLON, POUND, both, inches, litres, millimetres, number
from crestcut.chance import WALKING, left_lines, state_words
from crestcut.report.pictures import ink
from crestcut.report.sheets.paper import BODY_SIZE, SIDE, Paper, filled
from crestcut.report.sheets.setout import strings
from crestcut.report.sheets.ties import area_words, deep, far, name_axes, side, unit
from crestcut.work import (
    BAG,
    Quantities,
    ReleaseState,
    SetOut,
    Silica,
    Site,
    Worksheet,
    bags_words,
    hours_words,
    mask_words,
    span_words,
    wear_words,
)

if TYPE_CHECKING:
    from matplotlib.figure import Figure


GROUND = "water and walks, before and after the cut"


def first_page(sheet: Worksheet) -> list[Figure]:
    """The brief: what, where, how deep, why, with what; may it be cut, what is open, what protects."""
    ok = sheet.release.state == ReleaseState.OK
    name = "Brief: what is done, and what it takes" if ok else "May it be cut, and what it takes"
    return filled(sheet, name, lambda paper: _first(paper, sheet))


def _first(paper: Paper, sheet: Worksheet) -> None:
    release = sheet.release
    ok = release.state == ReleaseState.OK
    if ok:
        for name, said in brief_lines(sheet):
            paper.named(name, said)
        paper.text(
            "Released for cutting, within local codes and the owner's permission, on these answers:",
            bold=True, size=9.0,
        )  # fmt: skip
        paper.text(f"{'; '.join(release.known)}.", size=9.0)
    else:
        paper.text(f"{release.state.upper()}: no jig, pass or set-out sheet is printed.", bold=True, size=11)
        for line in release.words:
            paper.text(line, "\u2022")
    if sheet.first:
        paper.text("What to measure first is on the next sheet.", bold=True)
    _questions(paper, sheet)
    _amounts(paper, sheet)
    if sheet.silica:
        paper.heading(f"Dust: {sheet.silica[0].rule}, or stricter local rules")
        for silica in sheet.silica:
            paper.text(silica_words(silica), "\u2022")
    if sheet.set_out is None:  # else they stand under the order of work, where there is more room
        _limits(paper, sheet)


def _limits(paper: Paper, sheet: Worksheet) -> None:
    paper.heading("Limits")
    for line in sheet.limits:
        paper.text(line, "\u2022")
    for line in sheet.notes:
        paper.text(line, "!")


def _questions(paper: Paper, sheet: Worksheet) -> None:
    if not sheet.release.questions:
        return
    paper.heading("Ask, and write the answer into the job file")
    for question in sheet.release.questions:
        paper.text(
            f"{question.ask} [{question.key}] Ask"
            f" {question.whom}{'' if question.whom.endswith('?') else '.'}",
            "box",
            size=9.0,
        )


def _amounts(paper: Paper, sheet: Worksheet) -> None:
    amounts = sheet.quantities
    if amounts.volume <= 0:
        return
    ok = sheet.release.state == ReleaseState.OK  # then the brief has said what it takes
    if sheet.left is not None:
        paper.heading("What it leaves")
        for line in left_lines(sheet.left):
            paper.text(line, "\u2022", 9.0 if ok else BODY_SIZE)
    paper.heading("How much")
    for line in amount_lines(amounts, sheet.metric)[2 if ok else 0 :]:
        paper.text(line, "\u2022", 9.0 if ok else BODY_SIZE)
    if not ok:
        paper.text(f"Method: {sheet.why_tools}.", "\u2022")


def brief_lines(sheet: Worksheet) -> list[tuple[str, str]]:
    """What stands on top of everything: named lines that whoever is handed the sheets reads first."""
    amounts, metric, out = sheet.quantities, sheet.metric, sheet.set_out
    if amounts.volume <= 0:
        return []
    concrete, hours = amount_lines(amounts, metric)[:2]
    whom = f" so that the {sheet.vehicle} passes" if sheet.vehicle else ": the high spots of the list"
    lines = [("What", f"Grind concrete off{whom}."), ("Method", f"{sheet.why_tools}.")]
    if out is not None and out.outline:
        lines += [("Where", _where(out, sheet.words.station, metric)), ("How deep", _how_deep(sheet, out))]
    lines += [
        ("Why", _why(sheet)),
        ("Concrete", concrete.removeprefix("Concrete: ")),
        ("Hours", hours.removeprefix("Time: ")),
        ("Tools", _tools(sheet)),
        (
            "Hire",
            "what of these is not at hand, with its shroud; and a dust collector, 99 % filter or better"
            f"{_flow(sheet)}. Blades and cups as under 'How much'.",
        ),
        ("Protection", f"eyes, ears, gloves, boots, knees; {_masks(sheet)}. Guard and shroud stay on."),
        ("Who is asked", f"{_asked(sheet)}. Whoever comes by: barriers, others 5 m away."),
    ]
    return [(name, said) for name, said in lines if said]


def _where(out: SetOut, station: str, metric: bool) -> str:
    offsets = [offset for offset, *_ in out.outline]
    ends = min(a for _, a, _ in out.outline), max(b for *_, b in out.outline)
    m = unit(metric)
    return (
        f"{station}s {far(ends[0], metric, 2)} to {far(ends[1], metric, 2)} {m} along the line of travel,"
        " offsets"
        f" {side(min(offsets), metric, 2)} to {side(max(offsets), metric, 2)} {m}, left of it plus; see the"
        " map."
    )


def _how_deep(sheet: Worksheet, out: SetOut) -> str:
    if not out.dots:
        return "under 2 mm everywhere: by eye with the cup."
    deepest = max(out.dots, key=lambda d: d.depth)
    words = f"{deep(deepest.depth, sheet.metric)} {unit(sheet.metric, True)}"
    return f"{words} at the deepest, dot {deepest.name}; {len(out.dots)} dots; nothing at the stop lines."


def _why(sheet: Worksheet) -> str:
    if sheet.today is None:
        return ""
    return f"today, {WALKING}, the {sheet.vehicle} {state_words(sheet.today)}."


def _tools(sheet: Worksheet) -> str:
    names = dict.fromkeys(step.tool for step in sheet.passes)
    return f"{'; '.join(name[:1].lower() + name[1:] for name in names)}." if names else ""


def _flow(sheet: Worksheet) -> str:
    most = max((s.airflow for s in sheet.silica if s.airflow is not None), default=None)
    return "" if most is None else f", {most * 3600:.0f} m3/h or more"


def _masks(sheet: Worksheet) -> str:
    factor = max((s.mask for s in sheet.silica), default=0)
    return f"a respirator that fits, APF {max(factor, 10)} or more"


def _asked(sheet: Worksheet) -> str:
    """The answers of the release that name somebody."""
    named = [line for line in sheet.release.known if "permission" in line or "permit" in line]
    return "; ".join(named) if named else "the owner"


def amount_lines(amounts: Quantities, metric: bool = True) -> list[str]:
    """Quantities and times in words; pounds and gallons as well where the tape is in inches."""
    taken = amounts.taken.times(1000)
    other = (
        ""
        if metric
        else f" ({number(amounts.area / FOOT**2)} ft2, {span_words(taken.times(1 / GALLON), 'gal')},"
        f" {span_words(amounts.mass.times(1 / POUND), 'lb')})"
    )
    flats = (
        f" Of it {litres(amounts.flats)} so that a straight board guides it." if amounts.flats > 5e-6 else ""
    )
    lines = [
        f"Concrete: {number(amounts.area)} m2, {span_words(taken, 'litres')},"
        f" {span_words(amounts.mass, 'kg')}{other}, in {bags_words(amounts)} of {span_words(BAG, 'kg', 0)}"
        + (f"; {amounts.kerf_metres:.0f} m of slot" if amounts.kerf_metres > 0 else "")
        + f". The least is the plan, the most what hands usually take.{flats}",
        (
            f"Time: {hours_words(amounts.hours)} for all steps from chalk to check, of which"
            f" {hours_words(amounts.trigger_hours)} with a trigger pressed."
        ),
    ]
    if amounts.wheels:
        wear = "; ".join(f"{name}: {wear_words(span)}" for name, span in amounts.wheels)
        lines.append(f"Wear: {wear}.")
    return [*lines, *amounts.notes]


def silica_words(silica: Silica) -> str:
    """The dust line of one tool."""
    return f"{silica.task}; {silica.place}, {silica.hours}: {silica.control}; {mask_words(silica)}."


def order_page(sheet: Worksheet) -> list[Figure]:
    """The passes, and what can hurt somebody."""
    return filled(sheet, "Order of work", lambda paper: _order(paper, sheet))


def _order(paper: Paper, sheet: Worksheet) -> None:
    for step in sheet.passes:
        paper.need(0.5)
        paper.text(f"{step.tool} ({hours_words(step.hours)})", f"{step.number}", bold=True)
        paper.text(step.what, " ")
    if sheet.set_out is not None:
        _limits(paper, sheet)
    paper.together("What can hurt you", [c.line for c in sheet.cautions], 9.0)


def record_page(sheet: Worksheet) -> list[Figure]:
    """Afterwards, and the page that stays with the house papers."""
    paper = Paper(sheet, "Afterwards, and the record to keep")
    for line in sheet.afterwards:
        paper.text(line, "box")
    paper.heading("Record: fill in, sign, keep with the house papers")
    lines = (
        ("Work done on", "by"),
        ("Tools, wheels", "hours, people"),
        ("Deepest reached, mm", "where"),
        ("Steel, pipes, voids found", "depth, place"),
        ("All strings read enough", "least spare, mm"),
        ("Vehicle passed, load", "least gap seen, mm"),
        ("Joints re-sawn to, mm", "sealer, date"),
        ("Photographs: dots, strings, finished", "kept where"),
        ("Look again on (after one winter, at most 12 months)", "seen by, what"),
    )
    write_in(paper, lines)
    return paper.figures


def write_in(paper: Paper, lines: Sequence[tuple[str, str]]) -> None:
    """Rows of two named lines to write on."""
    half = paper.room / 2
    for first, second in lines:
        paper.at += 0.3
        for x, said in ((SIDE, first), (SIDE + half + 0.1, second)):
            paper.put(x, paper.at, said, fontsize=8.5, color=ink.SOFT)
            paper.line(x, paper.at + 0.27, x + half - 0.1, paper.at + 0.27, 0.6)
        paper.at += 0.27


def cards_page(sheet: Worksheet) -> list[Figure]:
    """Cards for the pocket; the cautions where no order of work is printed."""
    return filled(sheet, "Cards: cut out and keep in the pocket", lambda paper: _cards(paper, sheet))


def _cards(paper: Paper, sheet: Worksheet) -> None:
    paper.cards([(card.title, card.lines) for card in sheet.cards])
    if not sheet.passes:
        paper.together("What can hurt somebody here", [c.line for c in sheet.cautions], 9.0)


def ground_page(sheet: Worksheet, site: Site) -> list[Figure]:
    """What is checked: the string, water before and after, and slopes where people walk."""
    out = sheet.set_out
    name = f"Checks: the string, {GROUND}" if out and out.strings else GROUND.capitalize()
    return filled(sheet, name, lambda paper: _ground(paper, sheet, site))


def _ground(paper: Paper, sheet: Worksheet, site: Site) -> None:
    water, said, out = sheet.water, sheet.words, sheet.set_out
    if out is not None and out.strings:
        strings(paper, out)
        paper.need(4.0)
        paper.heading(GROUND.capitalize())
    paper.text(water.headline, bold=True, size=10)
    _flow_map(paper, sheet, site)
    metric, m = sheet.metric, unit(sheet.metric)
    if water.ponds_before or water.ponds_after:
        paper.heading(f"{said.ponds.capitalize()} over 3 mm")
        rows = [
            [
                when,
                far(p.station, metric, 2),
                side(p.offset, metric, 2),
                deep(p.deepest, metric),
                area_words(p.area, metric),
                litres(p.volume),
            ]
            for when, ponds in (("before", water.ponds_before), ("after", water.ponds_after))
            for p in ponds[:8]
        ]
        paper.table(
            ["", f"{said.station} {m}", f"offset {m}", f"deepest {unit(metric, True)}", "area", "holds"],
            [10, 14, 12, 14, 12, 14],
            rows,
        )
    for line in water.notes:
        paper.text(line, "\u2022", 9.0)
    for walk in sheet.walks:
        paper.heading(f"{said.walk.capitalize()}: {walk.kind}")
        paper.text(
            f"Along the way people go {walk.along_before:.1%} before, {walk.along_after:.1%} after; across it"
            f" {walk.across_before:.1%} before, {walk.across_after:.1%} after; cut inside it"
            f" {both(walk.step) if walk.step > 0 else 'nothing'}{' at most' if walk.step > 0 else ''}.",
            size=9.0,
        )
        for line in walk.said:
            paper.text(line, "\u2022", 9.0)


def _flow_map(paper: Paper, sheet: Worksheet, site: Site) -> None:
    """Heights as contours, downhill arrows, the saddle that keeps water out, the cut's outline."""
    known = ~np.isnan(site.finished)
    span_u, span_v = float(np.ptp(site.station)), float(np.ptp(site.offset))
    paper.at += 0.14
    most = (
        4.2 if sheet.set_out is None or not sheet.set_out.strings else 2.0
    )  # under the strings is less room
    axes = paper.axes(min(max(paper.room * span_v / max(span_u, 0.1), 1.6), most), inset=0.4)
    step = max(round(0.04 / site.cell), 1)
    u, v, z = site.station[::step], site.offset[::step], site.finished[::step, ::step]
    axes.set_aspect("equal")
    axes.set_xlim(u[0], u[-1])
    axes.set_ylim(v[0], v[-1])
    if known.any() and min(z.shape) > 1:
        low, high = float(np.nanmin(z)), float(np.nanmax(z))
        gap = ink.nice_step(max(high - low, 0.004), 12)
        levels = np.arange(np.floor(low / gap), np.ceil(high / gap) + 1) * gap
        axes.contour(u, v, z, levels=levels, colors=ink.FAINT, linewidths=0.5, linestyles="solid")
        depth = np.nan_to_num(site.ground - site.finished)[::step, ::step]
        if depth.max() > 0.0005:
            axes.contour(u, v, depth, levels=[0.0005], colors=ink.INK, linewidths=1.1)
        axes.annotate(
            f"Thin lines: heights every {gap * 1000:g} mm after the cut. Thick line: the cut. Arrows:"
            " downhill.",
            (0.0, 1.0), xycoords="axes fraction", xytext=(0, 6), textcoords="offset points", **ink.SMALL,
        )  # fmt: skip
    if sheet.water.flow:
        at = np.asarray(sheet.water.flow)
        axes.quiver(
            at[:, 0], at[:, 1], at[:, 2], at[:, 3], color=ink.SOFT, width=0.0016, scale=42, pivot="mid"
        )
    for pond in sheet.water.ponds_after:
        axes.plot(pond.station, pond.offset, "o", ms=9, mfc="none", mec=ink.INK, mew=1.0)
        axes.annotate(
            millimetres(pond.deepest),
            (pond.station, pond.offset),
            xytext=(7, 3),
            textcoords="offset points",
            fontsize=7,
            path_effects=ink.halo(2.4),
        )
    if sheet.water.spill_after is not None:
        spill = sheet.water.spill_after
        axes.plot(
            spill.station, spill.offset, "^", ms=7, mfc="white", mec=ink.INK, mew=1.2, zorder=9, clip_on=False
        )
        label = f"spills over here at {spill.height * 1000:.0f} mm ({inches(spill.height)})"
        # towards the middle of the map: over its upper edge stand the words on its lines
        rear, low = spill.station < float(np.mean(u)), spill.offset < float(np.mean(v))
        axes.annotate(
            label,
            (spill.station, spill.offset),
            xytext=(8 if rear else -8, 6 if low else -6),
            ha="left" if rear else "right",
            va="bottom" if low else "top",
            textcoords="offset points",
            fontsize=7.2,
            path_effects=ink.halo(2.4),
        )
    name_axes(axes, sheet.words.station, sheet.metric)
    paper.at += 0.42
