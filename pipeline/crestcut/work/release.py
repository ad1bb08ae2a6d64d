"""The gate: no jig, pass or set-out sheet until what can hurt somebody has been asked and answered.

Answers are closed choices with a source (``job.answers``); unknown is the strictest case. What is decided
here is only whether this program hands out a sheet to cut from; local code, the owner and licensed people
decide whether the slab may be cut.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import StrEnum

from crestcut.base.units import both
from crestcut.cut import HAZARDS, UNLOCATED, CutPlan, Forbids, asks_drilling, forbidden, kept
from crestcut.job import (
    NOBODY,
    SETTLED_BY,
    Asked,
    InSlab,
    Job,
    Keep,
    Over,
    Permit,
    Site,
    Slab,
    SlabKind,
    Source,
    YesNo,
    who_can_know,
)
from crestcut.work.drain import drain_words
from crestcut.work.records import Question, Reason, ReasonCode, Release, ReleaseState

Finding = tuple[Reason, Question | None]  # a reason not to cut, and what to ask
MOVING = "the scan carries more than half of the margin: measure by hand first, depths may still move"
QUESTIONS: dict[Asked, tuple[str, str]] = {
    Asked.KIND: (
        "What kind of slab is it?",
        "whoever poured it or the owner: is it plain or reinforced concrete on the ground, or precast, a"
        " screed, tiles or pavers on something else?",
    ),
    Asked.POST_TENSIONED: (
        "Is it post-tensioned, and how is that known?",
        "the drawings, the builder or the building's manager; look for a stamp 'post-tensioned' on the slab"
        " and grouted pockets along its edges; a structural engineer where in doubt",
    ),
    Asked.HEATING: (
        "Are there heating pipes or cables in the slab, and how is that known?",
        "the owner and whoever laid it: is it heated, how deep, and where does it run? A thermal camera with"
        " the heating on shows it",
    ),
    Asked.CONDUIT: (
        "Are there conduits, cables or water pipes in the slab, and how is that known?",
        "the owner, an electrician, and the utility locating service: has anything been laid in or just under"
        " this slab, and where?",
    ),
    Asked.SUSPENDED: (
        "Does the slab lie on the ground all over, or does it span something?",
        "the drawings or a structural engineer: is there a cellar, a void, a bridge or a beam under it?",
    ),
    Asked.STEEL: (
        "How deep is the uppermost steel, and how is that known?",
        "a covermeter over the cut (hire shops have them; an hour): least depth of any steel, written on the"
        " slab",
    ),
    Asked.THICKNESS: (
        "How thick is the slab at the cut, and how is that known?",
        "measure it at a free edge, or drill a 10 mm hole beside the cut, away from steel and pipes, and hook"
        " a wire under the slab",
    ),
    Asked.PERMISSION: (
        "Does the owner agree to the cut, in writing?",
        "the owner of the slab, not the tenant or driver",
    ),
    Asked.PLACE: (
        "Is the slab indoors or outdoors?",
        "look: roofed and walled on more than two sides counts as indoors",
    ),
    Asked.GROUND: (
        "Is any part of the cut on public land (pavement, verge, road gutter)?",
        "the owner's site plan, or the road or city authority",
    ),
    Asked.PERMIT: (
        "Has the authority granted a permit, and under which number?",
        "the road or city authority that owns the land or whose rules hold there",
    ),
}
UNDRILLED = "a free edge or the drawings: nothing is drilled into this slab on this program's word"
WHAT = {
    Asked.HEATING: "heating pipes or cables",
    Asked.CONDUIT: "conduits, cables or water pipes",
}


def decide_release(
    job: Job, provisional: bool, plan: CutPlan | None = None, provisional_reason: str = "",
    contradicted: str = "",
) -> Release:  # fmt: skip
    """ok, provisional or not for cutting, with every reason and every open question.

    provisional : depths may still move because the scan carries too much of the margin.  plan : the cut,
    where there is one; one that falls short of what was asked is not handed out either.  contradicted : by
    what the second opinion on its gaps says another thing, in words; empty where it agrees.
    """
    findings = [*_slab_findings(job.slab, job.keeps), *_depth_findings(job), *_site_findings(job)]
    if plan is not None and not plan.feasible:
        words = f"no cut within the limits reaches what was asked: {both(plan.short_by)} are missing"
        findings.append((Reason(ReasonCode.FALLS_SHORT, words), None))
    if plan is not None and plan.drain is not None and not plan.drain.reached:
        findings.append((Reason(ReasonCode.NO_DRAIN, drain_words(plan.drain).rstrip(".")), None))
    if contradicted:
        findings.append((Reason(ReasonCode.RAY_CAST, contradicted), None))
    reasons = tuple(reason for reason, _ in findings)
    questions = tuple(dict.fromkeys(question for _, question in findings if question is not None))
    moving = (Reason(ReasonCode.SCAN, provisional_reason or MOVING),) if provisional else ()
    if reasons:
        return Release(ReleaseState.NOT_FOR_CUTTING, (*reasons, *moving), questions, known_words(job))
    if moving:
        return Release(ReleaseState.PROVISIONAL, moving, (), known_words(job))
    return Release(ReleaseState.OK, (), (), known_words(job))


def _slab_findings(slab: Slab, keeps: Sequence[Keep]) -> Iterator[Finding]:
    never = forbidden(slab, keeps)
    yield from _kind(slab, never)
    yield from _spans_or_pulled(
        Asked.POST_TENSIONED, slab.post_tensioned, slab.post_tensioned_from, never, Forbids.POST_TENSIONED,
        ("whether the slab is post-tensioned", "that the slab is not post-tensioned"),
    )  # fmt: skip
    yield from _in_the_slab(Asked.HEATING, slab.heating, slab.heating_from, keeps, Over.HEATING)
    yield from _in_the_slab(Asked.CONDUIT, slab.conduit, slab.conduit_from, keeps, Over.CONDUIT)
    yield from _spans_or_pulled(
        Asked.SUSPENDED, slab.suspended, slab.suspended_from, never, Forbids.SUSPENDED,
        ("whether the slab is suspended", "that the slab lies on the ground"),
    )  # fmt: skip
    yield from _length(Asked.STEEL, slab.steel_depth, slab.steel_from, "depth of the steel")
    thick = _length(Asked.THICKNESS, slab.thickness, slab.thickness_from, "thickness of the slab")
    undrilled = Question(Asked.THICKNESS, QUESTIONS[Asked.THICKNESS][0], UNDRILLED)
    yield from ((reason, undrilled if never else question) for reason, question in thick)


def _finding(code: ReasonCode, about: Asked, words: str) -> Finding:
    return Reason(code, words, about), Question(about, *QUESTIONS[about])


def _never(forbids: Forbids) -> Finding:
    hazard = HAZARDS[forbids]
    return (
        Reason(ReasonCode.NEVER, hazard.why, hazard.asked),
        Question(hazard.asked, "May anything at all be done to this slab?", hazard.whom),
    )


def _kind(slab: Slab, never: Sequence[Forbids]) -> Iterator[Finding]:
    if Forbids.PRECAST in never:
        yield _never(Forbids.PRECAST)
    elif slab.kind in (None, SlabKind.UNKNOWN):
        yield _finding(ReasonCode.UNANSWERED, Asked.KIND, "the kind of slab is not known")
    elif slab.kind in (SlabKind.SCREED_OR_TILES, SlabKind.OTHER):
        words = f"a slab of the kind '{slab.kind}': these sheets are for concrete slabs on the ground alone"
        yield _finding(ReasonCode.WRONG_KIND, Asked.KIND, words)


def _spans_or_pulled(
    asked: Asked, answer: YesNo | None, source: Source | None, never: Sequence[Forbids], hazard: Forbids,
    words: tuple[str, str],
) -> Iterator[Finding]:  # fmt: skip
    """Suspended, post-tensioned. words : what is not known, what is claimed."""
    if hazard in never:
        yield _never(hazard)
    elif answer != YesNo.NO:
        yield _finding(ReasonCode.UNANSWERED, asked, f"it is not known {words[0]}")
    else:
        yield from _sourced(asked, YesNo.NO, source, words[1])


def _in_the_slab(
    asked: Asked, answer: InSlab | None, source: Source | None, keeps: Sequence[Keep], over: Over
) -> Iterator[Finding]:
    what = WHAT[asked]
    mine = [keep for keep in keeps if keep.over == over]
    if answer == InSlab.NOT_LOCATED:
        yield _finding(ReasonCode.NOT_LOCATED, asked, HAZARDS[UNLOCATED[over]].why)
    elif answer == InSlab.NO:
        yield from _sourced(asked, InSlab.NO, source, f"that there are no {what} in the slab")
        if mine:
            words = f"there are said to be no {what} in the slab, and a keep area lies over some"
            yield _finding(ReasonCode.CONTRADICTED, asked, words)
    elif answer == InSlab.LOCATED:
        yield from _sourced(asked, InSlab.LOCATED, source, f"that the {what} in the slab are located")
        if not kept(keeps, over):
            words = (
                f"a keep area over {what} lets them be cut: nothing may be cut there"
                if mine
                else f"the {what} are located, but no keep area says where: draw one over each, with"
                f' over = "{over}"'
            )
            yield _finding(ReasonCode.NO_KEEP_AREA, asked, words)
    else:
        yield _finding(ReasonCode.UNANSWERED, asked, f"it is not known whether there are {what} in the slab")


def _length(asked: Asked, value: float | None, source: Source | None, what: str) -> Iterator[Finding]:
    if value is None:
        yield _finding(ReasonCode.UNANSWERED, asked, f"the {what} is not known")
    else:
        yield from _sourced(asked, None, source, f"the {what}")


def _sourced(asked: Asked, answer: StrEnum | None, source: Source | None, claim: str) -> Iterator[Finding]:
    """Nothing where whoever says so can know it."""
    if source == Source.GUESS:
        yield _finding(ReasonCode.NO_SOURCE, asked, f"{claim} is only guessed")
    elif source in NOBODY:
        yield _finding(ReasonCode.NO_SOURCE, asked, f"it is not said how one knows {claim}")
    elif source not in SETTLED_BY[asked, answer]:
        able = ", ".join(who_can_know(asked, answer))
        words = f"'{source}' is not enough to tell {claim}; it takes one of: {able}"
        yield _finding(ReasonCode.WRONG_SOURCE, asked, words)


def _depth_findings(job: Job) -> Iterator[Finding]:
    if asks_drilling(job.cut, job.slab) and job.slab.thickness is not None:
        words = (
            f"{both(job.cut.deepest or 0.0, 0)} deep is over an eighth of the slab: its thickness must be"
            " drilled there"
        )
        if forbidden(job.slab, job.keeps):
            whom = "a structural engineer: nothing is drilled into this slab on this program's word"
        else:
            whom = (
                "drill beside the deepest point, away from steel and pipes, and write thickness_from ="
                ' "drilled"'
            )
        ask = "What is the thickness where the cut is deepest, drilled?"
        yield (
            Reason(ReasonCode.NOT_DRILLED, words, Asked.THICKNESS),
            Question("slab.thickness_from", ask, whom),
        )


def _site_findings(job: Job) -> Iterator[Finding]:
    slab, site = job.slab, job.site
    if slab.permission == YesNo.NO:
        yield _finding(ReasonCode.NO_PERMISSION, Asked.PERMISSION, "the owner has not given permission")
    elif slab.permission != YesNo.YES:
        words = "the owner's permission is not on record"
        yield _finding(ReasonCode.UNANSWERED, Asked.PERMISSION, words)
    else:
        yield from _sourced(Asked.PERMISSION, YesNo.YES, slab.permission_from, "that the owner agrees")
    if site.place not in ("indoors", "outdoors"):
        words = "it is not said whether the work is indoors or outdoors: dust protection is set by it"
        yield _finding(ReasonCode.UNANSWERED, Asked.PLACE, words)
    if site.ground not in ("private", "public"):
        words = "it is not said whether the cut is on private or public land"
        yield _finding(ReasonCode.UNANSWERED, Asked.GROUND, words)
    yield from _permit(site)


def _permit(site: Site) -> Iterator[Finding]:
    """On public land only a permit with its number will do; elsewhere one that was asked for counts."""
    if site.permit == Permit.REFUSED:
        yield _finding(ReasonCode.NO_PERMIT, Asked.PERMIT, "the permit was refused")
    elif site.permit == Permit.ASKED:
        words = "the permit was asked for and is not granted yet"
        yield _finding(ReasonCode.NO_PERMIT, Asked.PERMIT, words)
    elif site.permit == Permit.GRANTED:
        if not site.permit_number:
            words = "the permit is said to be granted, and its number is not given (permit_number)"
            yield _finding(ReasonCode.NO_PERMIT, Asked.PERMIT, words)
    elif site.ground == "public":
        words = "the cut is on public land and no permit of its authority is on record"
        if site.permit == Permit.NOT_NEEDED:
            words = "the cut is on public land: there 'not needed' is not taken, but a permit with its number"
        yield _finding(ReasonCode.NO_PERMIT, Asked.PERMIT, words)


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
        ("permit", site.permit, None),
        ("permit number", site.permit_number if site.permit == Permit.GRANTED else None, None),
    )
    return tuple(
        f"{name}: {value}" + (f" (known from: {how})" if how else "") for name, value, how in said if value
    )
