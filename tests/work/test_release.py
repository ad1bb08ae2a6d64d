"""The gate: every combination of answered and unanswered questions, every choice by every source, and the
nonsense that free text once let through.
"""

from __future__ import annotations

import dataclasses
import itertools
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from crestcut.cut.records import Drain
from crestcut.cut.ruled_out import Forbids, forbidden
from crestcut.job.answers import (
    SETTLED_BY,
    Asked,
    InSlab,
    Over,
    Permit,
    SlabKind,
    Source,
    YesNo,
    who_can_know,
)
from crestcut.job.load import load_job
from crestcut.job.records import CutWish, Job, Keep, PlanPoint, ScanChoice, Site, Slab, Travel, VehicleChoice
from crestcut.work.records import ReasonCode, Release, ReleaseState
from crestcut.work.release import QUESTIONS, decide_release
from one_line import refusal

ANSWERED = Slab(
    kind=SlabKind.PLAIN, thickness=0.100, thickness_from=Source.EDGE,
    steel_depth=0.060, steel_from=Source.COVERMETER,
    post_tensioned=YesNo.NO, post_tensioned_from=Source.DRAWING,
    heating=InSlab.NO, heating_from=Source.OWNER, conduit=InSlab.NO, conduit_from=Source.LOCATING_SERVICE,
    suspended=YesNo.NO, suspended_from=Source.ENGINEER, permission=YesNo.YES, permission_from=Source.OWNER,
)  # fmt: skip
SQUARE = (PlanPoint(0, 0), PlanPoint(1, 0), PlanPoint(1, 1))


def job(
    slab: Slab = ANSWERED,
    site: Site | None = None,
    deepest: float | None = None,
    keeps: tuple[Keep, ...] = (),
) -> Job:
    return Job(
        Path("courtyard.toml"), "Courtyard", ScanChoice((Path("apron.laz"),)),
        VehicleChoice(Path("van.toml")),
        Travel((PlanPoint(0, 0), PlanPoint(9, 0))), site=site or Site("outdoors", "private", "US"),
        cut=CutWish(deepest), slab=slab, keeps=keeps,
    )  # fmt: skip


def decided(keeps: tuple[Keep, ...] = (), site: Site | None = None, **change: object) -> Release:
    return decide_release(job(dataclasses.replace(ANSWERED, **change), site, keeps=keeps), False)  # type: ignore[arg-type]


def codes(release: Release) -> set[ReasonCode]:
    return {reason.code for reason in release.reasons}


def test_everything_answered_is_released() -> None:
    release = decide_release(job(), provisional=False)
    assert release.state == ReleaseState.OK and not release.reasons and release.stamp == ""
    assert "uppermost steel: 60 mm (2 3/8 in) (known from: covermeter)" in release.known
    assert "thickness: 100 mm (3 15/16 in) (known from: edge)" in release.known


def test_provisional_alone_and_with_open_questions() -> None:
    assert decide_release(job(), provisional=True).state == "provisional"
    told = decide_release(job(), True, provisional_reason="two stations lie 4 mm apart")
    assert [r.words for r in told.reasons] == ["two stations lie 4 mm apart"]
    assert "measure by hand first" in decide_release(job(), True).reasons[0].words
    both = decide_release(job(dataclasses.replace(ANSWERED, heating=None)), provisional=True)
    assert both.state == "not for cutting" and len(both.reasons) == 2
    assert codes(both) == {ReasonCode.UNANSWERED, ReasonCode.SCAN}


FIELDS = ("kind", "thickness", "steel_depth", "post_tensioned", "post_tensioned_from", "heating", "conduit",
          "suspended", "permission", "place", "ground")  # fmt: skip


def test_any_combination_of_unanswered_questions_is_stamped() -> None:
    for open_fields in itertools.product((False, True), repeat=len(FIELDS)):
        missing = {name for name, is_open in zip(FIELDS, open_fields, strict=True) if is_open}
        slab = dataclasses.replace(ANSWERED, **{n: None for n in missing if hasattr(ANSWERED, n)})
        site = Site(
            None if "place" in missing else "outdoors", None if "ground" in missing else "private", "US"
        )
        release = decide_release(job(slab, site), provisional=False)
        assert (release.state == "ok") == (not missing)
        assert bool(release.stamp) == bool(missing)
        assert len(release.questions) >= len(
            missing - {"post_tensioned_from"} if "post_tensioned" in missing else missing
        )


@pytest.mark.parametrize("value", ["unknown", None])
@pytest.mark.parametrize("name", ["kind", "post_tensioned", "heating", "conduit", "suspended", "permission"])
def test_unknown_is_as_strict_as_unanswered(name: str, value: str | None) -> None:
    release = decided(**{name: value})
    assert release.state == "not for cutting" and codes(release) == {ReasonCode.UNANSWERED}


# (question, its answer, key of the answer, key of the source)
CLAIMS = [
    (Asked.POST_TENSIONED, YesNo.NO, "post_tensioned"), (Asked.SUSPENDED, YesNo.NO, "suspended"),
    (Asked.HEATING, InSlab.NO, "heating"), (Asked.HEATING, InSlab.LOCATED, "heating"),
    (Asked.CONDUIT, InSlab.NO, "conduit"), (Asked.CONDUIT, InSlab.LOCATED, "conduit"),
    (Asked.PERMISSION, YesNo.YES, "permission"),
    (Asked.THICKNESS, None, "thickness"), (Asked.STEEL, None, "steel_depth"),
]  # fmt: skip
# said outright here, so that the program's own table cannot vouch for itself
NEVER_BY = {
    Asked.POST_TENSIONED: set(Source) - {Source.DRAWING, Source.ENGINEER, Source.RADAR},
    Asked.SUSPENDED: set(Source) - {Source.DRAWING, Source.ENGINEER, Source.RADAR},
}


@pytest.mark.parametrize("source", [None, *Source])
@pytest.mark.parametrize(("asked", "answer", "key"), CLAIMS)
def test_every_answer_by_every_source(asked: Asked, answer: str | None, key: str, source: Source) -> None:
    """Released exactly where somebody says so who can know; a guess, 'unknown' and nobody never can."""
    keeps: tuple[Keep, ...] = ()
    if answer == InSlab.LOCATED:
        keeps = (Keep("pipe", SQUARE, 0.0, Over(key)),)
    said = {} if answer is None else {key: answer}
    release = decided(keeps, **{**said, f"{key.removesuffix('_depth')}_from": source})
    able = source in SETTLED_BY[asked, answer]  # type: ignore[index]
    assert (release.state == "ok") == able
    if not able:
        assert codes(release) <= {ReasonCode.NO_SOURCE, ReasonCode.WRONG_SOURCE}
        assert [reason.about for reason in release.reasons] == [asked]
        assert release.questions[0].key == asked and release.questions[0].whom
    assert not (able and source in {Source.GUESS, Source.UNKNOWN, *NEVER_BY.get(asked, set())})


def test_the_table_covers_every_claim_and_leaves_no_claim_without_anybody() -> None:
    assert set(SETTLED_BY) == {(asked, answer) for asked, answer, _ in CLAIMS}
    for asked, answer, _ in CLAIMS:
        assert who_can_know(asked, answer) and not {Source.GUESS, Source.UNKNOWN} & SETTLED_BY[asked, answer]  # type: ignore[index]
    assert set(QUESTIONS) == set(Asked)


@pytest.mark.parametrize("kind", list(SlabKind))
def test_every_kind_of_slab(kind: SlabKind) -> None:
    release = decided(kind=kind)
    assert (release.state == "ok") == (kind in ("plain concrete", "reinforced concrete"))
    if kind in ("post-tensioned", "suspended", "precast"):
        assert codes(release) == {ReasonCode.NEVER}


@pytest.mark.parametrize("source", list(Source))
@pytest.mark.parametrize("name", ["post_tensioned", "suspended"])
def test_post_tensioned_and_suspended_slabs_are_never_released_whoever_says_so(
    name: str, source: Source
) -> None:
    release = decided(**{name: YesNo.YES, f"{name}_from": source})
    assert release.state == "not for cutting" and codes(release) == {ReasonCode.NEVER}


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"post_tensioned": "yes"}, "post-tensioned"), ({"post_tensioned_from": "guess"}, "guessed"),
        ({"post_tensioned_from": None}, "how one knows"),
        ({"heating": "not located"}, "not located"), ({"conduit": "not located"}, "not located"),
        ({"suspended": "yes"}, "structural engineer"), ({"permission": "no"}, "not given"),
        ({"steel_from": "unknown"}, "how one knows"), ({"thickness_from": "guess"}, "guessed"),
        ({"kind": "screed or tiles"}, "concrete slabs on the ground alone"),
        ({"heating_from": "guess"}, "guessed"), ({"conduit_from": "covermeter"}, "not enough to tell"),
    ],
)  # fmt: skip
def test_each_bad_answer_is_named_and_asked_about(change: dict[str, str], word: str) -> None:
    release = decided(**change)
    assert release.state == "not for cutting" and len(release.reasons) == 1
    assert word in release.reasons[0].words and release.questions[0].whom


@pytest.mark.parametrize("over", list(Over))
def test_located_things_need_their_keep_areas(over: Over) -> None:
    """Found and marked is not enough: without an area that is not cut the plan goes right over it."""
    said = {over.value: InSlab.LOCATED, f"{over}_from": Source.RADAR}
    other = Over.CONDUIT if over == Over.HEATING else Over.HEATING
    here = Keep("pipe", SQUARE, 0.0, over)
    assert decided((here,), **said).state == "ok"
    for keeps in (
        (), (Keep(over.value, SQUARE),), (Keep("pipe", SQUARE, 0.0, other),),
        (Keep("pipe", SQUARE, 0.002, over),), (here, Keep("pipe", SQUARE, 0.002, over)),
    ):  # fmt: skip
        release = decided(keeps, **said)
        assert release.state == "not for cutting" and ReasonCode.NO_KEEP_AREA in codes(release), keeps
        mine = [keep for keep in keeps if keep.over == over]
        says = "lets them be cut" if mine else "no keep area says where"
        assert any(says in reason.words for reason in release.reasons), keeps
    contradicted = decided((here,))  # none in the slab, says the answer
    assert codes(contradicted) == {ReasonCode.CONTRADICTED}


@pytest.mark.parametrize(
    ("change", "says"),
    [({"suspended": None}, "it is not known whether the slab is suspended"),
     ({"post_tensioned": None}, "it is not known whether the slab is post-tensioned"),
     ({"suspended_from": Source.GUESS}, "that the slab lies on the ground"),
     ({"post_tensioned_from": Source.GUESS}, "that the slab is not post-tensioned")],
)  # fmt: skip
def test_what_is_not_known_and_what_is_only_claimed_are_said_apart(
    change: dict[str, object], says: str
) -> None:
    assert any(reason.words.find(says) >= 0 for reason in decided(**change).reasons)  # type: ignore[arg-type]


def test_a_depth_that_asks_for_drilling_is_said_as_it_was_asked_for() -> None:
    release = decide_release(job(deepest=0.020), provisional=False)
    assert any(
        reason.words.startswith("20 mm (25/32 in) deep is over an eighth") for reason in release.reasons
    )


def test_a_permit_number_is_on_record_where_the_permit_was_granted_alone() -> None:
    for permit in (Permit.GRANTED, Permit.NOT_NEEDED):
        known = decided(site=Site("outdoors", "private", "US", permit, "2024/117")).known
        assert ("permit number: 2024/117" in known) == (permit == Permit.GRANTED)


@pytest.mark.parametrize("permit", [None, *Permit])
@pytest.mark.parametrize("ground", ["private", "public"])
@pytest.mark.parametrize("number", [None, "2024/117"])
def test_every_permit_on_private_and_public_ground(
    permit: Permit | None, ground: str, number: str | None
) -> None:
    release = decided(site=Site("outdoors", ground, "US", permit, number))
    if permit == "granted":
        good = number is not None
    elif permit in ("asked", "refused"):
        good = False
    else:
        good = ground == "private"
    assert (release.state == "ok") == good
    assert good or codes(release) == {ReasonCode.NO_PERMIT}
    said = any("there 'not needed' is not taken" in reason.words for reason in release.reasons)
    assert said == (permit == "not needed" and ground == "public")


@pytest.mark.parametrize(("drain", "held"), [(None, False), (True, False), (False, True)])
def test_a_cut_that_does_not_drain_as_asked_is_not_handed_out(drain: bool | None, held: bool) -> None:
    shaped = None if drain is None else Drain(0.02, 0.02, 0.001, 2, drain, 0.003)
    plan: Any = SimpleNamespace(feasible=True, drain=shaped)
    release = decide_release(job(), False, plan)
    assert codes(release) == ({ReasonCode.NO_DRAIN} if held else set())
    assert (release.state == "ok") != held


def test_deeper_than_an_eighth_asks_for_a_drilled_thickness() -> None:
    release = decide_release(job(deepest=0.014), False)
    assert release.state == "not for cutting" and "drilled" in release.reasons[0].words
    drilled = dataclasses.replace(ANSWERED, thickness_from="drilled")
    assert decide_release(job(drilled, deepest=0.014), False).state == "ok"


@pytest.mark.parametrize("change", [{"post_tensioned": "yes"}, {"suspended": "yes"}, {"kind": "precast"},
                                    {"heating": "not located"}, {"conduit": "not located"}])  # fmt: skip
def test_nobody_is_asked_to_drill_into_a_slab_that_forbids_it(change: dict[str, str]) -> None:
    slab = dataclasses.replace(ANSWERED, thickness_from=None, **change)
    release = decide_release(job(slab, deepest=0.014), False)
    asked = [q for q in release.questions if q.key.startswith("slab.thickness")]
    assert len(asked) == 2 and all("nothing is drilled" in q.whom for q in asked)
    assert all(q.ask.endswith("?") for q in release.questions)
    plain = decide_release(job(dataclasses.replace(ANSWERED, thickness_from=None), deepest=0.014), False)
    assert all("drill " in q.whom for q in plain.questions)


def test_what_forbids_any_tool() -> None:
    assert forbidden(ANSWERED) == () and forbidden(Slab()) == ()
    for change, found in (
        ({"kind": "post-tensioned"}, Forbids.POST_TENSIONED), ({"suspended": "yes"}, Forbids.SUSPENDED),
        ({"kind": "precast"}, Forbids.PRECAST), ({"heating": "not located"}, Forbids.HEATING),
        ({"heating": "located"}, Forbids.HEATING), ({"conduit": "located"}, Forbids.CONDUIT),
    ):  # fmt: skip
        assert forbidden(dataclasses.replace(ANSWERED, **change)) == (found,)


ROOT = Path(__file__).resolve().parents[2]
SAMPLE = (ROOT / "configs/jobs/courtyard_apron_measured.toml").read_text(encoding="utf-8")
ANSWERS = {
    "kind": '"plain concrete"', "thickness_from": '"drilled"', "steel_from": '"covermeter"',
    "post_tensioned": '"no"', "post_tensioned_from": '"drawing"',
    "heating": '"no"', "heating_from": '"owner in writing"',
    "conduit": '"no"', "conduit_from": '"locating service"',
    "suspended": '"no"', "suspended_from": '"drawing"',
    "permission": '"yes"', "permission_from": '"owner in writing"', "ground": '"private"',
}  # fmt: skip
CHOICES = {"kind": SlabKind, "heating": InSlab, "conduit": InSlab, "permit": Permit}
# what an older job said, and was released for: (key, text); the whole line is refused with the choices
FREE_TEXT = [
    ("kind", "post-tensioned concrete slab over a garage"), ("kind", "hollow-core planks"),
    ("kind", "concrete bridge"), ("kind", "plain concrete on the ground"), ("kind", "concrete"),
    ("kind", "asphalt or paving"), ("kind", ""), ("kind", "two lines\nof it"),
    ("heating", "yes"), ("conduit", "yes"), ("heating", "maybe"),
    ("heating_from", "nobody has located it"), ("heating_from", "no radar available"),
    ("heating_from", "the owner, and a thermal camera"), ("conduit_from", "located"),
    ("conduit_from", "the utility locating service"), ("conduit_from", "not scanned"),
    ("post_tensioned_from", "tbd"), ("post_tensioned_from", "-"), ("post_tensioned_from", "I think"),
    ("suspended_from", "obvious"), ("permission_from", "no permit yet"),
    ("permission_from", "the electricity company"), ("permission_from", "road authority permit"),
    ("thickness_from", "dug"), ("steel_from", "felt"),
]  # fmt: skip


def changed(**answers: str) -> str:
    """The sample that is released, with other answers (as they stand in a file; empty: left out)."""
    text = SAMPLE
    for key, value in answers.items():
        lines = text.splitlines()
        at = next(k for k, line in enumerate(lines) if line.startswith(f"{key} = {ANSWERS[key]}"))
        lines[at : at + 1] = [f"{key} = {value}"] if value else []
        text = "\n".join(lines) + "\n"
    return text


def written(folder: Path, text: str) -> Path:
    path = folder / "job.toml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize(("key", "text"), FREE_TEXT)
def test_free_text_is_refused_in_one_line_with_the_choices(tmp_path: Path, key: str, text: str) -> None:
    said = '"""' + text + '"""'
    fault = refusal(load_job, written(tmp_path, changed(**{key: said})))
    assert f"slab.{key}: " in str(fault) and "is not known" in fault.what
    for choice in CHOICES.get(key, Source):
        assert choice in fault.mend


@pytest.mark.parametrize("number", ['"no permit yet"', '"tbd"', '"-"', '""', "true"])
def test_a_permit_number_is_a_number(tmp_path: Path, number: str) -> None:
    text = changed(ground='"public"\npermit = "granted"\npermit_number = ' + number)
    assert "site.permit_number" in str(refusal(load_job, written(tmp_path, text)))


# what loads and is not released: the answers, and why
NOT_RELEASED = [
    ({"heating_from": ""}, ReasonCode.NO_SOURCE), ({"conduit_from": ""}, ReasonCode.NO_SOURCE),
    ({"suspended_from": ""}, ReasonCode.NO_SOURCE), ({"post_tensioned_from": ""}, ReasonCode.NO_SOURCE),
    ({"permission_from": ""}, ReasonCode.NO_SOURCE), ({"thickness_from": ""}, ReasonCode.NO_SOURCE),
    ({"suspended_from": '"owner in writing"'}, ReasonCode.WRONG_SOURCE),
    ({"post_tensioned_from": '"covermeter"'}, ReasonCode.WRONG_SOURCE),
    ({"conduit_from": '"owner in writing"'}, ReasonCode.WRONG_SOURCE),
    ({"conduit": '"located"'}, ReasonCode.NO_KEEP_AREA),
    ({"conduit": '"not located"'}, ReasonCode.NOT_LOCATED),
    ({"heating": '"unknown"'}, ReasonCode.UNANSWERED),
    ({"kind": '"precast"'}, ReasonCode.NEVER), ({"suspended": "true"}, ReasonCode.NEVER),
    ({"ground": '"public"'}, ReasonCode.NO_PERMIT),
    ({"ground": '"public"\npermit = "asked"\npermit_number = 117'}, ReasonCode.NO_PERMIT),
]  # fmt: skip


@pytest.mark.parametrize(("answers", "code"), NOT_RELEASED)
def test_a_job_with_a_hole_in_its_answers_is_not_released(
    tmp_path: Path, answers: dict[str, str], code: ReasonCode
) -> None:
    release = decide_release(load_job(written(tmp_path, changed(**answers))), False)
    assert release.state == "not for cutting" and code in codes(release)


def test_the_sample_is_released_and_so_are_its_neighbours(tmp_path: Path) -> None:
    keep = SAMPLE.replace(
        "[[keep]]", '[[keep]]\nkind = "gas"\nover = "conduit"\narea = [[0, 0], [1, 0], [1, 1]]\n[[keep]]'
    )
    for text in (
        SAMPLE,
        changed(ground='"public"\npermit = "granted"\npermit_number = 117\npermit_note = "kerb"'),
        changed(post_tensioned="false", suspended_from='"radar"', heating="false"),
        changed(
            kind='"reinforced concrete"\nkind_note = "post-tensioned, over a garage: nothing reads this"'
        ),
        keep.replace('conduit = "no"', 'conduit = "located"'),
    ):
        release = decide_release(load_job(written(tmp_path, text)), False)
        assert release.state == "ok", release.words
