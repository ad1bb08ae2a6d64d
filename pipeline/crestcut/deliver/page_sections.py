"""The upper half of ``report.html``: release, verdict, what next, and the slab."""

from __future__ import annotations

from collections.abc import Mapping

from crestcut.deliver.ends import grinding_seldom_cures
from crestcut.deliver.page_details import STAMPS
from crestcut.deliver.page_figures import figure
from crestcut.deliver.page_meanings import length
from crestcut.deliver.page_scene import nothing_to_cut
from crestcut.deliver.page_shell import esc
from crestcut.deliver.page_words import gap as gap_words
from crestcut.deliver.page_words import sentence, steps
from crestcut.deliver.report import Report
from crestcut.deliver.summary import DOUBTED, MEETS, called, deciding, nearest, place_words

Document = Mapping[str, object]


def stamp(report: Report) -> str:
    """The release in plain sight, with its reasons."""
    if nothing_to_cut(report):
        return (
            '<aside class="stamp ok" aria-label="Release"><strong>Nothing to cut</strong>'
            '<span class="hint">so nothing to release.</span></aside>'
        )
    reasons = "".join(f"<li>{esc(reason)}</li>" for reason in report.release_reasons)
    kind = report.release.replace(" ", "-")
    listed = f"<details><summary>Why</summary><ul>{reasons}</ul></details>" if reasons else ""
    name = f"<strong>{esc(STAMPS[report.release])}</strong>"
    return f'<aside class="stamp {kind}" aria-label="Release">{name}{listed}</aside>'


def answer(report: Report, document: Document) -> str:
    """Verdict in one sentence, its chance in words, what to do next, and the place of the picture that
    proves it."""
    todo = "".join(f"<li>{step}</li>" for step in steps(report, document))
    return (
        '<section id="answer" class="answer" aria-labelledby="verdict">'
        f'<h2 id="verdict" class="{report.verdict.replace(" ", "-")}">{verdict(report, document)}</h2>'
        '<figure class="proof"><div id="proof" class="drawing"></div><figcaption id="proof-words">'
        "</figcaption></figure>"
        f'<div class="rest">{_chances(report, document)}{_soft(report, document)}{_why_not_grind(report)}'
        f'<h3>What to do next</h3><ol class="steps">{todo}</ol></div></section>'
    )


def verdict(report: Report, document: Document) -> str:
    """One sentence with its chance in words; the figure in it opens its meaning."""
    own = report.vehicle.name
    name = f"{called(own).removesuffix(own)}<bdi>{esc(own)}</bdi>"
    gap = report.least_clearance
    if gap != gap:
        return f"Cannot tell: nothing under {name}’s path was measured."
    unsigned = figure(document, "before.least_clearance", length(abs(gap)))
    if report.verdict == "touches":
        how = f"with a best estimate of {unsigned} in between" if gap >= 0 else f"by {unsigned}"
        said = f"Touches: {name} {MEETS[report.kind]} {how}"
    elif report.verdict == "clears":
        said = f"Clears: {name} has {unsigned} to spare {nearest(report)}"
    else:
        how = f"{unsigned} {'too little' if gap < 0 else 'to spare'}"
        doubt = deciding(report)
        if doubt is not None:
            said = f"Cannot tell: {DOUBTED[doubt.kind]}; at best estimate {name} has {how} {nearest(report)}"
        else:
            said = f"Cannot tell yet: at best estimate {name} has {how} {nearest(report)}"
    words = report.today.words if report.today is not None else ""
    return f'{said}; <span class="odds">{esc(words)}.</span>' if words else f"{said}."


def _chances(report: Report, document: Document) -> str:
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
            f'<p><strong>{name}:</strong> {esc(words)} <span class="hint">Best estimate {best}; 19 times in '
            f"20 it lies between {low} and {high}.</span></p>"
        )
    if report.today is None:
        rows.append(
            "<p><strong>The chance was not worked out:</strong> this is the gap on the surface as scanned, "
            "without its uncertainty.</p>"
        )
    return "".join(rows)


def _soft(report: Report, document: Document) -> str:
    """Parts that may touch and do: apart from the verdict, never hidden."""
    return "".join(
        f"<p><strong>Not in the verdict:</strong> the {esc(soft.part)} may touch and does: it is pressed by "
        f'{figure(document, f"soft.{k}.pressed")}. <span class="hint">At {esc(place_words(report, soft.at))}.'
        "</span></p>"
        for k, soft in enumerate(report.soft)
    )


def _why_not_grind(report: Report) -> str:
    why = grinding_seldom_cures(report)
    return f'<p class="mind">{esc(why)}</p>' if why else ""


def drive() -> str:
    """Where the viewer puts the slab in three dimensions, the slider and the linked profile."""
    return (
        '<section id="drive" aria-labelledby="drive-title"><h2 id="drive-title">See it on the slab</h2>'
        '<div id="view-tools" class="tools"></div><div id="view" class="view" tabindex="0" '
        'role="application" '
        'aria-label="The slab in three dimensions. Arrow keys turn it, plus and minus come nearer, Home '
        'shows all of it."></div>'
        '<div class="under"><div id="legend" class="legend"></div><output id="cursor"></output></div>'
        '<div id="driver"></div><figure class="profile"><div id="profile" class="drawing"></div>'
        '<figcaption id="profile-words"></figcaption></figure></section>'
    )
