"""Slab limits against what is published of cover, joints and slabs."""

from __future__ import annotations

import dataclasses
import itertools
from pathlib import Path

import pytest

from crestcut.cut.slab_limits import deepest_allowed, steel_depth, stop_rules
from crestcut.errors import CrestcutError
from crestcut.job.records import CutWish, Job, PlanPoint, ScanChoice, Site, Slab, Travel, VehicleChoice
from crestcut.units import INCH


def job(deepest: float | None = None, ground: str = "private", **slab: object) -> Job:
    return Job(
        Path("j.toml"), "", ScanChoice((Path("a.laz"),)), VehicleChoice(Path("v.toml")),
        Travel((PlanPoint(0, 0), PlanPoint(9, 0))), site=Site("outdoors", ground), cut=CutWish(deepest),
        slab=Slab(**slab),  # type: ignore[arg-type]
    )  # fmt: skip


STEEL = {"steel_depth": 0.060, "steel_from": "covermeter"}


def test_a_joint_depth_is_refused() -> None:
    """ACI 302.1R-04: a contraction joint is sawn a quarter of the thickness deep, and there a slab cracks."""
    assert deepest_allowed(
        job(0.025, thickness=0.100, thickness_from="drilled", **STEEL)
    ).depth == pytest.approx(0.025)
    with pytest.raises(CrestcutError, match="quarter"):
        deepest_allowed(job(0.0251, thickness=0.100, thickness_from="drilled", **STEEL))


def test_mesh_of_a_four_inch_slab() -> None:
    """Florida Building Code 1909.3: mesh 'in the middle to the upper third', 1.33 in below the top of a 4 in
    slab.

    The rule takes 10 mm off that for its placing (common practice, no source).
    """
    found = steel_depth(Slab(thickness=4 * INCH))
    assert found is not None
    assert found[0] + 0.010 == pytest.approx(4 / 3 * INCH)
    assert round((found[0] + 0.010) / INCH, 2) == 1.33
    # 3 1/2 to 4 in are common for residential slabs (ACI 302): 20 mm over such steel leaves next to nothing
    assert deepest_allowed(job(thickness=4 * INCH)).depth == pytest.approx(4 / 3 * INCH - 0.030)
    assert deepest_allowed(job(thickness=3.5 * INCH)).depth == 0.0


@pytest.mark.parametrize("bar_cover", [2.0, 1.5])
def test_code_cover_leaves_room_for_the_default(bar_cover: float) -> None:
    """ACI 318-19: 1 1/2 in (No. 5 and smaller) or 2 in over bars in exposed concrete, here as measured."""
    limit = deepest_allowed(job(thickness=0.150, steel_depth=bar_cover * INCH, steel_from="covermeter"))
    assert limit.depth == pytest.approx(0.013)


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
