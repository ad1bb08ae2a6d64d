"""The upper half of ``report.html``: release, verdict, what next, and the slab."""

from __future__ import annotations

from collections.abc import Mapping

from markupsafe import Markup

from crestcut.base.cautions import terminal_lines
from crestcut.chance import finding_head, finding_words
from crestcut.report.pages.details import STAMPS
from crestcut.report.pages.figures import figure
from crestcut.report.pages.meanings import length
from crestcut.report.pages.scene import nothing_to_cut
from crestcut.report.pages.shell import html, joined
from crestcut.report.pages.words import gap as gap_words
from crestcut.report.pages.words import sentence, steps
from crestcut.report.words.ends import grinding_seldom_cures
from crestcut.report.words.summary import (
    DOUBTED,
    MEETS,
    asked_kinds,
    called,
    contradictions,
    deciding,
    nearest,
    place_words,
    stopped,
)
from crestcut.study import Report

Document = Mapping[str, object]


def stamp(report: Report) -> Markup:
    """The release in plain sight, with its reasons."""
    if nothing_to_cut(report):
        return html(
            '<aside class="stamp ok" aria-label="Release"><strong>Nothing to cut</strong>'
            '<span class="hint">so nothing to release.</span></aside>'
        )
    reasons = joined(html("<li>{}</li>", reason.words) for reason in report.release_reasons)
    kind = report.release.replace(" ", "-")
    listed = html("<details><summary>Why</summary><ul>{}</ul></details>", reasons) if reasons else ""
    name = html("<strong>{}</strong>", STAMPS[report.release])
    return html('<aside class="stamp {}" aria-label="Release">{}{}</aside>', kind, name, listed)


def answer(report: Report, document: Document) -> Markup:
    """Verdict in one sentence, its chance in words, what to do next, and the place of the picture that
    proves it."""
    todo = joined(html("<li>{}</li>", step) for step in steps(report, document))
    minded = joined(
        html('<p class="mind"><strong>Mind:</strong> {}</p>', stopped(d))
        for d in (*contradictions(report), *report.vehicle_doubts)
    )
    chances, soft = _chances(report, document), _soft(report, document)
    rest = joined([minded, _doubts(report), chances, soft, _why_not_grind(report)])
    return html(
        '<section id="answer" class="answer" aria-labelledby="verdict">'
        '<h2 id="verdict" class="{}">{}</h2>'
        '<figure class="proof"><div id="proof" class="drawing"></div><figcaption id="proof-words">'
        "</figcaption></figure>"
        '<div class="rest">{}'
        '<h3>What to do next</h3><ol class="steps">{}</ol>{}</div></section>',
        report.verdict.replace(" ", "-"), verdict(report, document), rest, todo, _care(report),
    )  # fmt: skip


def _care(report: Report) -> Markup:
    """The cautions of what is asked for, in short; in full they stand under Measurements."""
    lines = terminal_lines(asked_kinds(report))
    if not lines:
        return Markup()
    said = joined(lines, Markup("<br>"))
    return html('<p class="mind">{} <a href="#measure">In full under Measurements.</a></p>', said)


def verdict(report: Report, document: Document) -> Markup:
    """One sentence with its chance in words; the figure in it opens its meaning."""
    own = report.vehicle.name
    name = html("{}<bdi>{}</bdi>", called(own).removesuffix(own), own)
    gap = report.least_clearance
    if gap != gap:
        return html("Cannot tell: nothing under {}’s path was measured.", name)
    if report.doubts:
        return html("Cannot tell: {}.", finding_head(report.doubts[0]))
    unsigned = figure(document, "before.least_clearance", length(abs(gap)))
    if report.verdict == "touches":
        how = html("with a best estimate of {} in between" if gap >= 0 else "by {}", unsigned)
        said = html("Touches: {} {} {}", name, MEETS[report.kind], how)
    elif report.verdict == "clears":
        said = html("Clears: {} has {} to spare {}", name, unsigned, nearest(report))
    else:
        how = html("{} {}", unsigned, "too little" if gap < 0 else "to spare")
        doubt = deciding(report)
        begin = "Cannot tell yet:" if doubt is None else f"Cannot tell: {DOUBTED[doubt.kind]};"
        said = html("{} at best estimate {} has {} {}", begin, name, how, nearest(report))
    words = report.today.words if report.today is not None else ""
    return html('{}; <span class="odds">{}.</span>', said, words) if words else html("{}.", said)


def _doubts(report: Report) -> Markup:
    """What withdrew the verdict, in full."""
    if not report.doubts:
        return Markup()
    said = (sentence(finding_words(finding, report.scan.frame)) for finding in report.doubts)
    listed = joined(html("<li>{}</li>", words) for words in said)
    return html("<h3>What stands against a verdict</h3><ul>{}</ul>", listed)


def _chances(report: Report, document: Document) -> Markup:
    """Two chances, never one: today as measured, and in use."""
    rows = []
    for name, chance in (
        ("Today, as measured, at walking pace", report.today),
        ("In use, with load, speed and wear", report.in_use),
    ):
        if chance is None:
            continue
        key = "before" if chance is report.today else "in_use"
        words = sentence(chance.words or chance.verdict)
        best = figure(document, f"{key}.least_clearance", gap_words(chance.least_clearance))
        ends = enumerate(chance.interval)
        low, high = (figure(document, f"{key}.interval.{k}", gap_words(end)) for k, end in ends)
        rows.append(
            html('<p><strong>{}:</strong> {} <span class="hint">Best estimate {}; 19 times in '
                 "20 it lies between {} and {}.</span></p>", name, words, best, low, high)
        )  # fmt: skip
    if report.today is None:
        rows.append(
            html("<p><strong>The chance was not worked out:</strong> this is the gap on the surface as "
                 "scanned, without its uncertainty.</p>")
        )  # fmt: skip
    return joined(rows)


def _soft(report: Report, document: Document) -> Markup:
    """Parts that may touch and do: apart from the verdict, never hidden."""
    return joined(
        html(
            "<p><strong>Not in the verdict:</strong> the {} may touch and does: it is pressed by "
            '{}. <span class="hint">At {}.</span></p>',
            soft.part,
            figure(document, f"soft.{k}.pressed"),
            place_words(report, soft.at),
        )
        for k, soft in enumerate(report.soft)
    )


def _why_not_grind(report: Report) -> Markup:
    why = grinding_seldom_cures(report)
    return html('<p class="mind">{}</p>', why) if why else Markup()


def drive() -> Markup:
    """Where the viewer puts the slab in three dimensions, the slider and the linked profile."""
    return html(
        '<section id="drive" aria-labelledby="drive-title"><h2 id="drive-title">See it on the slab</h2>'
        '<div id="view-tools" class="tools"></div><div id="view" class="view" tabindex="0" '
        'role="application" '
        'aria-label="The slab in three dimensions. Arrow keys turn it, plus and minus come nearer, Home '
        'shows all of it."></div>'
        '<div class="under"><div id="legend" class="legend"></div><output id="cursor"></output></div>'
        '<div id="driver"></div><figure class="profile"><div id="profile" class="drawing"></div>'
        '<figcaption id="profile-words"></figcaption></figure></section>'
    )
