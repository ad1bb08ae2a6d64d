"""How deep a slab allows a cut: this program's own rules, and knowing less never allows more."""

from __future__ import annotations

import dataclasses
import itertools
from pathlib import Path

import pytest

from crestcut.cut.ruled_out import not_known
from crestcut.cut.slab_limits import SlabLimit, stop_rules
from crestcut.cut.slab_limits import deepest_allowed as allowed
from crestcut.job.answers import InSlab, SlabKind, Source, YesNo
from crestcut.job.records import CutWish, Job, PlanPoint, ScanChoice, Site, Slab, Travel, VehicleChoice


def deepest_allowed(job: Job) -> SlabLimit:
    """Of a whole job."""
    return allowed(job.cut, job.slab)


def job(deepest: float | None = None, ground: str = "private", **slab: object) -> Job:
    return Job(
        Path("j.toml"), "", ScanChoice((Path("a.laz"),)), VehicleChoice(Path("v.toml")),
        Travel((PlanPoint(0, 0), PlanPoint(9, 0))), site=Site("outdoors", ground), cut=CutWish(deepest),
        slab=Slab(**slab),  # type: ignore[arg-type]
    )  # fmt: skip


STEEL = {"steel_depth": 0.060, "steel_from": "covermeter"}


@pytest.mark.parametrize(
    ("slab", "expected"),
    [
        ({**STEEL}, 0.013),  # thickness not known: the default, and the release refuses
        ({"thickness": 0.100, **STEEL}, 0.0125),  # an eighth is less than 13 mm
        ({"thickness": 0.150, **STEEL}, 0.013),
        ({"thickness": 0.100, "thickness_from": "drilled", **STEEL}, 0.013),
        ({"thickness": 0.040, "thickness_from": "drilled", **STEEL}, 0.010),  # never over a quarter
        ({"thickness": 0.150}, 0.013),  # mesh taken at 40 mm: 20 left
        ({"thickness": 0.100}, 0.1 / 3 - 0.030),  # mesh taken at 23.3 mm
        # a guess does not help
        ({"thickness": 0.100, "steel_depth": 0.050, "steel_from": "unknown"}, 0.1 / 3 - 0.030),
        ({"thickness": 0.150, "steel_depth": 0.038, "steel_from": "drawing"}, 0.008),  # 10 mm less than drawn
        ({"thickness": 0.150, "steel_depth": 0.025, "steel_from": "covermeter"}, 0.005),
        ({"thickness": 0.150, "steel_depth": 0.015, "steel_from": "covermeter"}, 0.0),
    ],
)
def test_the_least_rule_binds_and_is_named(slab: dict[str, object], expected: float) -> None:
    limit = deepest_allowed(job(**slab))
    assert limit.depth == pytest.approx(expected)
    assert limit.rules[0] == (limit.reason, limit.depth)
    assert limit.depth == min(depth for _, depth in limit.rules)


def test_knowing_less_never_allows_more() -> None:
    """Taking an answer away never makes the limit deeper (but for a thickness: the release refuses then)."""
    for thickness, steel in itertools.product((0.09, 0.12, 0.2), (0.02, 0.035, 0.06)):
        known = job(thickness=thickness, thickness_from="drilled", steel_depth=steel, steel_from="covermeter")
        for less in ({"steel_from": "drawing"}, {"steel_from": None}, {"thickness_from": "edge"}):
            fewer = dataclasses.replace(known, slab=dataclasses.replace(known.slab, **less))
            assert deepest_allowed(fewer).depth <= deepest_allowed(known).depth + 1e-12


def test_a_wish_over_an_eighth_asks_for_drilling() -> None:
    assert deepest_allowed(job(0.013, thickness=0.100, thickness_from="edge", **STEEL)).asks_drilling
    assert not deepest_allowed(job(0.0125, thickness=0.100, thickness_from="edge", **STEEL)).asks_drilling
    assert not deepest_allowed(job(0.013, thickness=0.100, thickness_from="drilled", **STEEL)).asks_drilling
    assert deepest_allowed(job(0.014)).asks_drilling


def test_stop_rules() -> None:
    plain = job(thickness=0.100, thickness_from="drilled", **STEEL)
    near, public = job(steel_depth=0.03, steel_from="covermeter"), job(ground="public")

    def said(job: Job, deepest: float, volume: float) -> tuple[str, ...]:
        return stop_rules(job.slab, job.site, deepest, volume)

    assert said(plain, 0.0166, 0.0099) == ()
    assert "sixth" in said(plain, 0.0168, 0.001)[0]
    assert "litres" in said(plain, 0.010, 0.0101)[0]
    assert "steel" in said(near, 0.0101, 0.001)[0]
    assert "public" in said(public, 0.005, 0.001)[0]
    # just a sixth, just the cover kept, just ten litres: kept
    assert said(plain, 0.100 / 6, 0.010) == () == said(near, 0.030 - near.slab.keep_cover, 0.001)


def test_what_would_forbid_a_cut_is_known_once_all_of_it_is_answered_by_who_can_know() -> None:
    answered = Slab(
        kind=SlabKind.PLAIN, post_tensioned=YesNo.NO, post_tensioned_from=Source.DRAWING, suspended=YesNo.NO,
        suspended_from=Source.ENGINEER, heating=InSlab.NO, heating_from=Source.OWNER, conduit=InSlab.NO,
        conduit_from=Source.LOCATING_SERVICE,
    )  # fmt: skip
    assert not not_known(answered)
    for change in (
        {"kind": None}, {"kind": SlabKind.UNKNOWN}, {"post_tensioned": None},
        {"suspended_from": Source.GUESS}, {"heating": InSlab.UNKNOWN}, {"conduit_from": None},
    ):  # fmt: skip
        assert not_known(dataclasses.replace(answered, **change))  # type: ignore[arg-type]
