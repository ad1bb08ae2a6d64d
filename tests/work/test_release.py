"""The gate: every combination of answered and unanswered questions, and each reason by itself."""

from __future__ import annotations

import dataclasses
import itertools
from pathlib import Path

import pytest

from crestcut.job.records import CutWish, Job, PlanPoint, ScanChoice, Site, Slab, Travel, VehicleChoice
from crestcut.work.release import decide_release

ANSWERED = Slab(
    kind="plain concrete", thickness=0.100, thickness_from="edge", steel_depth=0.060, steel_from="covermeter",
    post_tensioned="no", post_tensioned_from="drawing", heating="no", conduit="no", suspended="no",
    permission="yes",
)  # fmt: skip


def job(slab: Slab = ANSWERED, site: Site | None = None, deepest: float | None = None) -> Job:
    return Job(
        Path("courtyard.toml"), "Courtyard", ScanChoice((Path("apron.laz"),)),
        VehicleChoice(Path("van.toml")),
        Travel((PlanPoint(0, 0), PlanPoint(9, 0))), site=site or Site("outdoors", "private", "US"),
        cut=CutWish(deepest), slab=slab,
    )  # fmt: skip


def test_everything_answered_is_released() -> None:
    release = decide_release(job(), provisional=False)
    assert release.state == "ok" and not release.reasons and release.stamp == ""
    assert any("known from: covermeter" in words for words in release.known)


def test_provisional_alone_and_with_open_questions() -> None:
    assert decide_release(job(), provisional=True).state == "provisional"
    both = decide_release(job(dataclasses.replace(ANSWERED, heating=None)), provisional=True)
    assert both.state == "not for cutting" and len(both.reasons) == 2


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


@pytest.mark.parametrize("value", ["unknown", "guess", ""])
@pytest.mark.parametrize("name", ["kind", "post_tensioned", "heating", "conduit", "suspended", "permission"])
def test_unknown_is_as_strict_as_unanswered(name: str, value: str) -> None:
    assert (
        decide_release(job(dataclasses.replace(ANSWERED, **{name: value})), False).state == "not for cutting"
    )


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"post_tensioned": "yes"}, "post-tensioned"), ({"post_tensioned_from": "guess"}, "how one knows"),
        ({"heating": "yes"}, "not located"), ({"conduit": "yes", "conduit_from": "owner"}, "not located"),
        ({"suspended": "yes"}, "structural engineer"), ({"permission": "no"}, "not given"),
        ({"steel_from": "unknown"}, "not measured"), ({"thickness_from": "guess"}, "guessed"),
        ({"kind": "clay pavers on concrete"}, "not a concrete slab"), ({"heating_from": "guess"}, "guessed"),
    ],
)  # fmt: skip
def test_each_bad_answer_is_named_and_asked_about(change: dict[str, str], word: str) -> None:
    release = decide_release(job(dataclasses.replace(ANSWERED, **change)), False)
    assert release.state == "not for cutting" and len(release.reasons) == 1
    assert word in release.reasons[0] and release.questions[0].whom


def test_located_pipes_and_a_named_permit_are_answers() -> None:
    found = dataclasses.replace(
        ANSWERED, heating="yes", heating_from="located", permission_from="road authority permit"
    )
    assert decide_release(job(found, Site("outdoors", "public", "US")), False).state == "ok"
    assert decide_release(job(site=Site("outdoors", "public", "US")), False).state == "not for cutting"


def test_deeper_than_an_eighth_asks_for_a_drilled_thickness() -> None:
    release = decide_release(job(deepest=0.014), False)
    assert release.state == "not for cutting" and "drilled" in release.reasons[0]
    drilled = dataclasses.replace(ANSWERED, thickness_from="drilled")
    assert decide_release(job(drilled, deepest=0.014), False).state == "ok"
