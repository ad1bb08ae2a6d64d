"""The upper half of ``report.html``: release, verdict, what next, the slab, and the options."""

from __future__ import annotations

from collections.abc import Mapping

from crestcut.deliver.ends import grinding_seldom_cures
from crestcut.deliver.page_details import STAMPS, measure_line, sentence
from crestcut.deliver.page_figures import figure
from crestcut.deliver.page_meanings import length
from crestcut.deliver.page_shell import esc
from crestcut.deliver.report import Report
from crestcut.deliver.summary import MEETS, nearest, next_steps

Document = Mapping[str, object]


def stamp(report: Report) -> str:
    """The release in plain sight, with its reasons."""
    reasons = "".join(f"<li>{esc(reason)}</li>" for reason in report.release_reasons)
    kind = report.release.replace(" ", "-")
    listed = f"<details><summary>Why</summary><ul>{reasons}</ul></details>" if reasons else ""
    name = f"<strong>{esc(STAMPS[report.release])}</strong>"
    return f'<aside class="stamp {kind}" aria-label="Release">{name}{listed}</aside>'


def answer(report: Report, document: Document) -> str:
    """Verdict in one sentence, its chance in words, what to do next, and the place of the picture that
    proves it."""
    steps = "".join(f"<li>{esc(sentence(step))}</li>" for step in next_steps(report))
    return (
        '<section id="answer" class="answer" aria-labelledby="verdict"><div>'
        f'<h2 id="verdict" class="{report.verdict.replace(" ", "-")}">{verdict(report, document)}</h2>'
        f"{_chances(report, document)}{_why_not_grind(report)}"
        f'<h3>What to do next</h3><ol class="steps">{steps}</ol></div>'
        '<figure class="proof"><div id="proof" class="drawing"></div><figcaption id="proof-words">'
        "</figcaption></figure></section>"
    )


def verdict(report: Report, document: Document) -> str:
    """One sentence; the figure in it opens its meaning."""
    name = f"the <bdi>{esc(report.vehicle.name)}</bdi>"
    gap = report.least_clearance
    shown = figure(document, "before.least_clearance")
    if gap != gap:
        return f"Cannot tell: nothing under {name}’s path was measured."
    if report.verdict == "touches":
        how = (
            f"with a best estimate of {shown} in between" if gap >= 0 else f"by {_unsigned(report, document)}"
        )
        return f"Touches: {name} {MEETS[report.kind]} {how}."
    if report.verdict == "clears":
        return f"Clears: {name} has {shown} to spare {nearest(report)}."
    how = f"{_unsigned(report, document)} {'too little' if gap < 0 else 'to spare'}"
    return f"Cannot tell yet: at best estimate {name} has {how} {nearest(report)}."


def _unsigned(report: Report, document: Document) -> str:
    """The least gap without its sign, for sentences that say 'by'."""
    signed = figure(document, "before.least_clearance")
    return signed.replace(length(report.least_clearance), length(abs(report.least_clearance)))


def _chances(report: Report, document: Document) -> str:
    rows = []
    for name, key, chance in (
        ("Today, as measured, at walking pace", "before", report.today),
        ("In use", "in_use", report.in_use),
    ):
        if chance is None:
            continue
        words = chance.words or chance.verdict
        rows.append(
            f'<p><strong>{name}:</strong> {esc(words)}. <span class="hint">Least gap '
            f"{figure(document, f'{key}.least_clearance')}, "
            f"19 times in 20 between {length(chance.interval[0])} and {length(chance.interval[1])}.</span>"
            "</p>"
        )
    if report.today is None:
        rows.append(
            "<p><strong>The chance was not worked out:</strong> this is the gap on the surface as scanned, "
            "without its uncertainty.</p>"
        )
    return "".join(rows)


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


def options(report: Report, document: Document) -> str:
    """What can be done, cheapest first, side by side."""
    rows = [
        (
            "Leave it as it is",
            figure(document, "before.least_clearance"),
            figure(document, "before.chance_of_contact"),
            "nothing",
        )
    ]
    if report.advice:
        rows.append(
            (
                "Measure first",
                "the same, better known",
                "nearer to yes or no",
                esc(measure_line(report.advice[0])),
            )
        )
    plan = report.plan
    if plan is not None and plan.deepest > 0:
        after = "after.least_clearance"
        chance = figure(document, "after.chance_of_contact") if report.after else "not worked out"
        if not plan.feasible:
            chance = f"still {length(plan.short_by)} short"
        needs = f"{figure(document, 'cut.deepest')} at the deepest, {figure(document, 'cut.volume')}"
        rows.append(("Cut the slab", figure(document, after), chance, needs))
    body = "".join(
        f'<tr><th scope="row">{name}</th><td data-head="Least gap"><span>{gap}</span></td>'
        f'<td data-head="Chance that it touches"><span>{chance}</span></td>'
        f'<td data-head="Needs"><span>{needs}</span></td></tr>'
        for name, gap, chance, needs in rows
    )
    return (
        '<section id="options" aria-labelledby="options-title"><h2 id="options-title">Options</h2><table '
        'class="wide"><thead><tr>'
        '<th scope="col">What</th><th scope="col">Least gap</th><th scope="col">Chance that it touches</th>'
        '<th scope="col">Needs</th></tr></thead>'
        f"<tbody>{body}</tbody></table></section>"
    )
