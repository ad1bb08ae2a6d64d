"""Slab limits against what is published of cover, joints and slabs."""

from __future__ import annotations

from pathlib import Path

import pytest

from crestcut.base.errors import CrestcutError
from crestcut.base.units import INCH
from crestcut.cut.slab_limits import SlabLimit, steel_depth
from crestcut.cut.slab_limits import deepest_allowed as allowed
from crestcut.job.records import CutWish, Job, PlanPoint, ScanChoice, Site, Slab, Travel, VehicleChoice


def job(deepest: float | None = None, ground: str = "private", **slab: object) -> Job:
    return Job(
        Path("j.toml"), "", ScanChoice((Path("a.laz"),)), VehicleChoice(Path("v.toml")),
        Travel((PlanPoint(0, 0), PlanPoint(9, 0))), site=Site("outdoors", ground), cut=CutWish(deepest),
        slab=Slab(**slab),  # type: ignore[arg-type]
    )  # fmt: skip


STEEL = {"steel_depth": 0.060, "steel_from": "covermeter"}


def deepest_allowed(job: Job) -> SlabLimit:
    return allowed(job.cut, job.slab)


def test_a_joint_depth_is_refused() -> None:
    """ACI 302.1R-04, joints (read; clause not noted): a contraction joint is sawn a quarter of the thickness
    deep, and there a slab cracks.
    """
    assert deepest_allowed(
        job(0.025, thickness=0.100, thickness_from="drilled", **STEEL)
    ).depth == pytest.approx(0.025)
    with pytest.raises(CrestcutError, match="quarter"):
        deepest_allowed(job(0.0251, thickness=0.100, thickness_from="drilled", **STEEL))


def test_mesh_of_a_four_inch_slab() -> None:
    """Florida Building Code 1909.3 (read; edition not noted): mesh 'in the middle to the upper third', 1.33
    in below the top of a 4 in slab. The rule takes 10 mm off that for its placing (common practice, no
    source).
    """
    found = steel_depth(Slab(thickness=4 * INCH))
    assert found is not None
    assert found[0] + 0.010 == pytest.approx(4 / 3 * INCH)
    assert round((found[0] + 0.010) / INCH, 2) == 1.33
    # 3 1/2 to 4 in are common for residential slabs (ACI 302.1R-04; read): 20 mm over such steel leaves next
    # to nothing
    assert deepest_allowed(job(thickness=4 * INCH)).depth == pytest.approx(4 / 3 * INCH - 0.030)
    assert deepest_allowed(job(thickness=3.5 * INCH)).depth == 0.0


@pytest.mark.parametrize("bar_cover", [2.0, 1.5])
def test_code_cover_leaves_room_for_the_default(bar_cover: float) -> None:
    """ACI 318-19, table 20.5.1.3.1 (the table from memory, the figures read): 1 1/2 in (No. 5 and smaller) or
    2 in over bars in exposed concrete, here as measured.
    """
    limit = deepest_allowed(job(thickness=0.150, steel_depth=bar_cover * INCH, steel_from="covermeter"))
    assert limit.depth == pytest.approx(0.013)
