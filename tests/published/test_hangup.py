"""Low vehicles hung up on a crest, by the sweep and not by a formula.

Eck & Kang, Transportation Research Record 1356 (1992): a vehicle of 36 ft wheelbase and 5 in ground clearance
hangs up above 2.3 % a side, 4.6 % in all.
"""

from __future__ import annotations

import pytest

from crestcut.vehicle.records import Part
from scenes import crest, scene, vehicle

IN = 0.0254


def test_a_long_low_vehicle_hangs_up_above_2_3_percent_a_side() -> None:
    base, clearance = 36 * 12 * IN, 5 * IN
    floor = Part("belly", (0.0, base), (-0.3, 0.3), (clearance, clearance), "belly")
    # the source's wheels are points: R (sec - 1) of this tyre is 0.05 mm of the 127
    low = vehicle(
        floor, wheelbase=base, tyre_radius=0.2, tyre_width=0.1, front_track=1.0, rear_track=1.0, width=1.2,
        front_overhang=0.3, rear_overhang=0.3,
    )  # fmt: skip

    def least(grade: float) -> float:
        worst = scene(crest(grade), low, start=(-6.0, 0), end=(6.0, 0), cell=0.01).before.worst
        assert worst is not None
        return worst.gap

    below, above = 0.0225, 0.0238
    for _ in range(10):
        middle = 0.5 * (below + above)
        below, above = (middle, above) if least(middle) > 0 else (below, middle)
    assert 100 * below == pytest.approx(2.3148, rel=1e-3)
    assert round(100 * below, 1) == 2.3 and round(200 * below, 1) == 4.6
