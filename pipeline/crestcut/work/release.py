"""The gate: no jig, pass or set-out sheet until what can hurt somebody has been asked and answered.

Unknown is the strictest case. What is decided here is only whether this program hands out a sheet to cut
from; local code, the owner and licensed people decide whether the slab may be cut.
"""

from __future__ import annotations

from collections.abc import Iterator

from crestcut.cut.records import CutPlan
from crestcut.cut.slab_limits import asks_drilling
from crestcut.job.records import Job, Slab
from crestcut.units import both
from crestcut.work.drain import drain_words
from crestcut.work.records import Question, Release

NOT_KNOWN = ("", "?", "unknown", "not known", "guess", "guessed", "assumed", "no idea", "not sure", "hearsay")
NOT_CONCRETE = (
    "asphalt",
    "bitumen",
    "paver",
    "paving",
    "block",
    "brick",
    "tile",
    "stone",
    "terrazzo",
    "timber",
    "wood",
    "screed",
    "deck",
)
LOCATED = ("located", "covermeter", "scanned", "radar")  # found in the slab and marked on it
PERMIT = ("permit", "authority", "council", "highway", "city", "municipal")

Finding = tuple[str, Question | None]  # a reason not to cut, and what to ask


def decide_release(
    job: Job, provisional: bool, plan: CutPlan | None = None, provisional_reason: str = ""
) -> Release:
    """ok, provisional or not for cutting, with every reason and every open question.

    provisional : depths may still move because the scan carries too much of the margin.  plan : the cut,
    where there is one; one that falls short of what was asked is not handed out either.
    """
    findings = [*_slab_findings(job.slab), *_depth_findings(job), *_site_findings(job)]
    if plan is not None and not plan.feasible:
        findings.append(
            (f"no cut within the limits reaches what was asked: {both(plan.short_by)} are missing", None)
        )
    if plan is not None and plan.drain is not None and not plan.drain.reached:
        findings.append((drain_words(plan.drain).rstrip("."), None))
    reasons = tuple(reason for reason, _ in findings)
    questions = tuple(question for _, question in findings if question is not None)
    moving = (
        provisional_reason
        or "the scan carries more than half of the margin: measure by hand first, depths may still move"
    )
    if reasons:
        return Release(
            "not for cutting", (*reasons, moving) if provisional else reasons, questions, known_words(job)
        )
    if provisional:
        return Release("provisional", (moving,), (), known_words(job))
    return Release("ok", (), (), known_words(job))


def _slab_findings(slab: Slab) -> Iterator[Finding]:
    yield from _kind(slab)
    yield from _post_tension(slab)
    yield from _in_the_slab(
        "heating",
        "heating pipes or cables",
        slab.heating,
        slab.heating_from,
        "the owner and whoever laid it: is it heated, how deep, and where does it run? A thermal camera with"
        " the heating on shows it",
    )
    yield from _in_the_slab(
        "conduit",
        "conduits, cables or water pipes",
        slab.conduit,
        slab.conduit_from,
        "the owner, an electrician, and the utility locating service: has anything been laid in or just under"
        " this slab, and where?",
    )
    yield from _suspended(slab)
    yield from _steel(slab)
    yield from _thickness(slab)


def _kind(slab: Slab) -> Iterator[Finding]:
    whom = (
        "whoever poured it or the owner: is it plain or reinforced concrete on the ground, or a screed, tiles"
        " or pavers on something else?"
    )
    question = Question("slab.kind", "What kind of slab is it?", whom)
    if _open(slab.kind):
        yield "the kind of slab is not known", question
    elif "concrete" not in str(slab.kind).lower() or _among(slab.kind, NOT_CONCRETE):
        yield f"{slab.kind} is not a concrete slab on the ground: these sheets are for that alone", question


def _post_tension(slab: Slab) -> Iterator[Finding]:
    """A tendon under load that is nicked can burst out of the slab."""
    whom = (
        "the drawings, the builder or the building's manager; look for a stamp 'post-tensioned' on the slab"
        " and grouted pockets along its edges; a structural engineer where in doubt"
    )
    question = Question("slab.post_tensioned", "Is it post-tensioned, and how is that known?", whom)
    if slab.post_tensioned == "yes":
        yield (
            (
                "the slab is post-tensioned: a nicked tendon can burst out and kill; only an engineer of"
                " record may release this"
            ),
            question,
        )
    elif _open(slab.post_tensioned):
        yield "it is not known whether the slab is post-tensioned", question
    elif _open(slab.post_tensioned_from):
        yield "it is not said how one knows that the slab is not post-tensioned", question


def _in_the_slab(
    key: str, what: str, answer: str | None, known_from: str | None, whom: str
) -> Iterator[Finding]:
    question = Question(f"slab.{key}", f"Are there {what} in the slab, and how is that known?", whom)
    if _open(answer):
        yield f"it is not known whether there are {what} in the slab", question
    elif answer == "yes" and not _among(known_from, LOCATED):
        yield (
            (
                f"there are {what} in the slab and they are not located: have them found and marked, and make"
                " them keep areas"
            ),
            question,
        )
    elif answer == "no" and known_from is not None and _open(known_from):
        yield f"that there are no {what} in the slab is only guessed", question


def _suspended(slab: Slab) -> Iterator[Finding]:
    whom = "the drawings or a structural engineer: is there a cellar, a void, a bridge or a beam under it?"
    question = Question(
        "slab.suspended", "Does the slab lie on the ground all over, or does it span something?", whom
    )
    if slab.suspended == "yes":
        yield (
            (
                "the slab is suspended: its top is part of what carries it; a structural engineer must"
                " release any cut"
            ),
            question,
        )
    elif _open(slab.suspended):
        yield "it is not known whether the slab is suspended", question
    elif slab.suspended_from is not None and _open(slab.suspended_from):
        yield "that the slab lies on the ground is only guessed", question


def _steel(slab: Slab) -> Iterator[Finding]:
    whom = (
        "a covermeter over the cut (hire shops have them; an hour): least depth of any steel, written on the"
        " slab"
    )
    question = Question("slab.steel_depth", "How deep is the uppermost steel, and how is that known?", whom)
    yield from _known(slab.steel_depth, slab.steel_from, question, "depth of the steel", "was not measured")


def _thickness(slab: Slab) -> Iterator[Finding]:
    whom = (
        "measure it at a free edge, or drill a 10 mm hole beside the cut, away from steel and pipes, and hook"
        " a wire under the slab"
    )
    question = Question("slab.thickness", "How thick is the slab at the cut, and how is that known?", whom)
    yield from _known(
        slab.thickness, slab.thickness_from, question, "thickness of the slab", "is only guessed"
    )


def _known(
    value: float | None, known_from: str | None, question: Question, what: str, guessed: str
) -> Iterator[Finding]:
    """A length that must be known, and how."""
    if value is None:
        yield f"the {what} is not known", question
    elif _open(known_from):
        yield f"the {what} {guessed}", question


def _depth_findings(job: Job) -> Iterator[Finding]:
    if asks_drilling(job.cut, job.slab) and job.slab.thickness is not None:
        whom = (
            'drill beside the deepest point, away from steel and pipes, and write thickness_from = "drilled"'
        )
        yield (
            (
                f"{both(job.cut.deepest or 0.0, 0)} deep is over an eighth of the slab: its thickness must be"
                " drilled there"
            ),
            Question("slab.thickness_from", "What is the thickness where the cut is deepest, drilled?", whom),
        )


def _site_findings(job: Job) -> Iterator[Finding]:
    slab, site = job.slab, job.site
    owner = Question(
        "slab.permission",
        "Does the owner agree to the cut, in writing?",
        "the owner of the slab, not the tenant or driver",
    )
    if slab.permission == "no":
        yield "the owner has not given permission", owner
    elif slab.permission != "yes":
        yield "the owner's permission is not on record", owner
    if site.place not in ("indoors", "outdoors"):
        yield (
            "it is not said whether the work is indoors or outdoors: dust protection is set by it",
            Question(
                "site.place",
                "Is the slab indoors or outdoors?",
                "look: roofed and walled on more than two sides counts as indoors",
            ),
        )
    permit = Question(
        "site.ground",
        "Is any part of the cut on public land (pavement, verge, road gutter)?",
        "the owner's site plan; for public land the road or city authority, whose permit is named in"
        " permission_from",
    )
    if site.ground not in ("private", "public"):
        yield "it is not said whether the cut is on private or public land", permit
    elif site.ground == "public" and not _among(slab.permission_from, PERMIT):
        yield "the cut is on public land and no permit of its authority is named", permit


def _open(value: str | None) -> bool:
    """Not answered, or answered with a guess."""
    return value is None or value.strip().lower() in NOT_KNOWN


def _among(value: str | None, words: tuple[str, ...]) -> bool:
    return value is not None and any(word in value.lower() for word in words)


def known_words(job: Job) -> tuple[str, ...]:
    """What was answered, and how it is known."""
    slab, site = job.slab, job.site
    said = (
        ("kind of slab", slab.kind, None),
        ("post-tensioned", slab.post_tensioned, slab.post_tensioned_from),
        ("heating in it", slab.heating, slab.heating_from),
        ("conduits or pipes in it", slab.conduit, slab.conduit_from),
        ("suspended", slab.suspended, slab.suspended_from),
        ("owner's permission", slab.permission, slab.permission_from),
        ("thickness", None if slab.thickness is None else both(slab.thickness, 0), slab.thickness_from),
        ("uppermost steel", None if slab.steel_depth is None else both(slab.steel_depth, 0), slab.steel_from),
        ("place", site.place, None),
        ("land", site.ground, None),
    )
    return tuple(
        f"{name}: {value}" + (f" (known from: {how})" if how else "") for name, value, how in said if value
    )
