"""The words of ``report.html``: verdict, what next, options, work, measurements, cautions, how sure and why."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from crestcut.deliver.ends import grinding_seldom_cures
from crestcut.deliver.page_figures import figure, length
from crestcut.deliver.page_shell import esc
from crestcut.deliver.report import Report
from crestcut.deliver.summary import CONCRETE_DENSITY, FIELD_NOTE, MEETS, NEAREST, POUND, next_steps, place_words

Document = Mapping[str, object]

STAMPS = {"ok": "Released for cutting", "provisional": "Provisional: not to be cut to yet", "not for cutting": "Not for cutting"}

# Dust: 29 CFR 1926.1153 Table 1 (hand grinders and collectors); the rest is common practice, no source.
CAUTIONS = (
    ("Dust", "Dust of ground concrete holds crystalline silica, which scars lungs for good. Grind with shroud and collector fitted and a "
             "respirator that fits; indoors, and for long hours, more is asked for. Never sweep or blow it dry."),
    ("Guard", "The guard and the shroud stay on. A set-up that works only without them is not used."),
    ("What lies inside", "Post-tensioned strands, heating pipes, cables and conduit can lie near the top. Stop at once when steel, plastic or copper shows."),
    ("The slab", "Thinner concrete is weaker concrete. Over a room or void, or where the depth is more than an eighth of the slab, a licensed engineer decides first."),
    ("Eyes, ears, hands", "Wear eye and ear protection and gloves; stop for breaks, the vibration harms hands."),
    ("Water and power", "Wet work only with a protected supply (residual-current device), and no slurry into drains."),
    ("The vehicle", "Never reach or crawl under a vehicle that stands on a jack. Drive over the finished slab at walking pace first, with someone watching."),
    ("People", "Keep others away while it is open, and leave no edge that trips: every edge is feathered."),
)  # fmt: skip


def stamp(report: Report) -> str:
    """The release in plain sight, with its reasons."""
    reasons = "".join(f"<li>{esc(reason)}</li>" for reason in report.release_reasons)
    kind = report.release.replace(" ", "-")
    listed = f"<details><summary>Why</summary><ul>{reasons}</ul></details>" if reasons else ""
    return f'<div class="stamp {kind}" role="note" aria-label="Release"><strong>{esc(STAMPS[report.release])}</strong>{listed}</div>'


def answer(report: Report, document: Document) -> str:
    """Verdict in one sentence, its chance in words, what to do next, and the place of the picture that proves it."""
    steps = "".join(f"<li>{esc(_sentence(step))}</li>" for step in next_steps(report))
    return (
        '<section id="answer" class="answer" aria-labelledby="verdict"><div>'
        f'<h2 id="verdict" class="{report.verdict.replace(" ", "-")}">{verdict(report, document)}</h2>'
        f"{_chances(report, document)}{_why_not_grind(report)}"
        f'<h3>What to do next</h3><ol class="steps">{steps}</ol></div>'
        '<figure class="proof"><div id="proof" class="drawing"></div><figcaption id="proof-words"></figcaption></figure></section>'
    )


def verdict(report: Report, document: Document) -> str:
    """One sentence; the figure in it opens its meaning."""
    name = f"the <bdi>{esc(report.vehicle.name)}</bdi>"
    gap = report.least_clearance
    shown = figure(document, "before.least_clearance")
    if gap != gap:
        return f"Cannot tell: nothing under {name}’s path was measured."
    if report.verdict == "touches":
        how = f"with a best estimate of {shown} in between" if gap >= 0 else f"by {_unsigned(report, document)}"
        return f"Touches: {name} {MEETS[report.kind]} {how}."
    if report.verdict == "clears":
        return f"Clears: {name} has {shown} to spare {NEAREST[report.kind]}."
    return f"Cannot tell yet: at best estimate {name} has {_unsigned(report, document)} {'too little' if gap < 0 else 'to spare'} {NEAREST[report.kind]}."


def _unsigned(report: Report, document: Document) -> str:
    """The least gap without its sign, for sentences that say 'by'."""
    signed = figure(document, "before.least_clearance")
    return signed.replace(length(report.least_clearance), length(abs(report.least_clearance)))


def _chances(report: Report, document: Document) -> str:
    rows = []
    for name, key, chance in (("Today, as measured, at walking pace", "before", report.today), ("In use", "in_use", report.in_use)):
        if chance is None:
            continue
        words = chance.words or chance.verdict
        rows.append(
            f"<p><strong>{name}:</strong> {esc(words)}. <span class=\"hint\">Least gap {figure(document, f'{key}.least_clearance')}, "
            f"19 times in 20 between {length(chance.interval[0])} and {length(chance.interval[1])}.</span></p>"
        )
    if report.today is None:
        rows.append("<p><strong>The chance was not worked out:</strong> this is the gap on the surface as scanned, without its uncertainty.</p>")
    return "".join(rows)


def _why_not_grind(report: Report) -> str:
    why = grinding_seldom_cures(report)
    return f'<p class="mind">{esc(why)}</p>' if why else ""


def drive() -> str:
    """Where the viewer puts the slab in three dimensions, the slider and the linked profile."""
    return (
        '<section id="drive" aria-labelledby="drive-title"><h2 id="drive-title">See it on the slab</h2>'
        '<div id="view-tools" class="tools"></div><div id="view" class="view" tabindex="0" role="application" '
        'aria-label="The slab in three dimensions. Arrow keys turn it, plus and minus come nearer, Home shows all of it."></div>'
        '<div class="under"><div id="legend" class="legend"></div><output id="cursor"></output></div>'
        '<div id="driver"></div><figure class="profile"><div id="profile" class="drawing"></div>'
        '<figcaption id="profile-words"></figcaption></figure></section>'
    )


def options(report: Report, document: Document) -> str:
    """What can be done, cheapest first, side by side."""
    rows = [("Leave it as it is", figure(document, "before.least_clearance"), figure(document, "before.chance_of_contact"), "nothing")]
    if report.advice:
        rows.append(("Measure first", "the same, better known", "nearer to yes or no", esc(_measure_line(report.advice[0]))))
    plan = report.plan
    if plan is not None and plan.deepest > 0:
        after = "after.least_clearance"
        chance = f"still {length(plan.short_by)} short" if not plan.feasible else f"made for {figure(document, 'confidence')}"
        needs = f"{figure(document, 'cut.deepest')} at the deepest, {figure(document, 'cut.volume')}"
        rows.append(("Cut the slab", figure(document, after), chance, needs))
    body = "".join(
        f'<tr><th scope="row">{name}</th><td data-head="Least gap">{gap}</td><td data-head="Chance">{chance}</td><td data-head="Needs">{needs}</td></tr>'
        for name, gap, chance, needs in rows
    )
    return (
        '<section id="options" aria-labelledby="options-title"><h2 id="options-title">Options</h2><table class="wide"><thead><tr>'
        '<th scope="col">What</th><th scope="col">Least gap</th><th scope="col">Chance</th><th scope="col">Needs</th></tr></thead>'
        f"<tbody>{body}</tbody></table></section>"
    )


def work(report: Report, document: Document) -> str:
    """The cut in figures; withheld words where it is not released."""
    plan = report.plan
    if plan is None or (plan.deepest <= 0 and plan.feasible):
        text = "No cut was worked out." if plan is None else "Nothing has to be taken off: every gap is already what was asked for, or more."
        return _section("work", "Work sheet", f"<p>{text}</p>")
    mass = plan.volume * CONCRETE_DENSITY
    rows = [
        ("Deepest cut", figure(document, "cut.deepest")), ("Area", figure(document, "cut.area")), ("Volume", figure(document, "cut.volume")),
        ("Mass", f'<span class="si">{mass:.0f} kg</span><span class="us">{mass / POUND:.0f} lb</span>'),
        ("Feather", f"1 in {1 / report.job.cut.feather:g}, at every edge of the cut"),
        ("Least gap afterwards", figure(document, "after.least_clearance")),
    ]  # fmt: skip
    claim = {
        "least": "No place of it can be shallower: it is the least cut that reaches the gap asked for.",
        "maximal": "Nothing of it can be left standing, though another cut may take other places.",
    }.get(plan.claim, plan.claim)
    short = ""
    if not plan.feasible:
        where = f" {place_words(report, plan.short_at)}" if plan.short_at is not None else ""
        short = (
            f'<p class="mind"><strong>Not enough.</strong> Within the limits no cut reaches it: {figure(document, "cut.short_by")} are still '
            f"missing{esc(where)}. What limits it: {esc('; '.join(plan.binding) or 'not named')}.</p>"
        )
    hold = "" if report.release == "ok" else f'<p class="mind"><strong>{esc(STAMPS[report.release])}.</strong> The figures show the size of the job, they are not an order to cut.</p>'
    return _section("work", "Work sheet", f"{hold}{short}{_facts(rows)}<p>{esc(claim)}</p>")


def measure(report: Report) -> str:
    """What to measure first, and what has been measured by hand already."""
    job = report.job
    todo = "".join(f"<li>{esc(_measure_line(item))}</li>" for item in report.advice)
    first = f"<h3>Measure this first</h3><ol>{todo}</ol>" if todo else "<p>No hand measurement is asked for.</p>"
    done = [(len(job.strings), "string or straightedge reading"), (len(job.levels), "level list"), (len(job.witnesses), "observation of the vehicle itself")]
    given = [f"{n} {what}{'s' if n > 1 else ''}" for n, what in done if n]
    folded = f"<p>Already in this result: {esc(', '.join(given))}.</p>" if given else "<p>This result rests on the scan alone; no hand measurement is in it.</p>"
    return _section("measure", "Measurements", first + folded)


def cautions() -> str:
    """What can hurt."""
    items = "".join(f"<li><strong>{esc(head)}.</strong> {esc(text)}</li>" for head, text in CAUTIONS)
    return _section("cautions", "Cautions", f"<ul>{items}</ul><p>Local codes and licensed people decide; this page does not.</p>")


def sure(report: Report, document: Document) -> str:
    """How sure, and why: the parts of the error and where each comes from."""
    error = report.surface.error
    rows = [
        ("Noise of one point", f"{length(error.white)} <span class=\"hint\">{esc(error.white_source)}</span>"),
        (f"Bumps the scanner makes, about {length(error.patch_length)} wide", f"{length(error.patch)} <span class=\"hint\">{esc(error.patch_source)}</span>"),
        (f"Bending, alike over about {length(error.warp_length)}", f"{length(error.warp)} <span class=\"hint\">{esc(error.warp_source)}</span>"),
    ]
    if report.today is not None:
        rows.append(("Share of the doubt that comes from the scan", f"{report.today.scan_share * 100:.0f} %"))
        rows.append(("Trials worked through", f"{report.today.draws:,}".replace(",", " ")))
    removed = [f"{n:,} points taken as {what}".replace(",", " ") for what, n in report.surface.removed]
    reasons = [*(report.today.reasons if report.today else ()), *report.scan.notes, *report.surface.notes, *report.vehicle.notes,
               *report.ride.notes, *report.notes, *removed]  # fmt: skip
    unmeasured = report.before.unmeasured * report.surface.height.frame.cell**2
    if unmeasured > 0:
        reasons.insert(0, f"{unmeasured:.2f} m² under the vehicle’s path have no points; nothing is said of them.")
    listed = "".join(f"<li>{esc(_sentence(r))}</li>" for r in dict.fromkeys(reasons))
    allowances = "".join(f"<tr><th scope=\"row\">{esc(name)}</th><td>{length(value)}</td></tr>" for name, value in report.job.wanted.in_use)
    use = f"<h3>Allowances for use</h3><table class=\"figures\"><tbody>{allowances}</tbody></table>" if allowances else ""
    return _section("sure", "How sure, and why", f"{_facts(rows)}{use}<h3>What went into it</h3><ul>{listed}</ul><p>{esc(FIELD_NOTE)}</p>")


def inputs(document: Document) -> str:
    """Version, seed and the files the answer rests on."""
    found = document.get("inputs")
    rows = [
        f'<li>{esc(row.get("role"))}: <bdi>{esc(row.get("file"))}</bdi> <span class="hash">{esc(str(row.get("sha256") or "")[:16])}</span></li>'
        for row in (found if isinstance(found, list) else [])
        if isinstance(row, Mapping)
    ]
    return f'<footer><p>Crestcut {esc(document.get("version"))}, seed {esc(document.get("seed"))}. Made from:</p><ul>{"".join(rows)}</ul></footer>'


def _measure_line(item: Mapping[str, object]) -> str:
    parts = [str(item.get("kind", "one gap by hand"))]
    for key, before in (("where", ""), ("expect", "expect "), ("narrows", "it narrows the interval ")):
        if item.get(key):
            value = item[key]
            parts.append(f"{before}{value:.1f} times" if key == "narrows" and isinstance(value, (int, float)) else f"{before}{value}")
    return _sentence("; ".join(parts))


def _facts(rows: Iterable[tuple[str, str]]) -> str:
    return '<dl class="facts">' + "".join(f"<div><dt>{name}</dt><dd>{value}</dd></div>" for name, value in rows) + "</dl>"


def _section(key: str, title: str, inside: str) -> str:
    return f'<section id="{key}" class="card" aria-labelledby="{key}-title"><h2 id="{key}-title">{esc(title)}</h2>{inside}</section>'


def _sentence(text: str) -> str:
    text = text.strip()
    return text[:1].upper() + text[1:] + ("" if text[-1:] in ".!?:" else ".")
