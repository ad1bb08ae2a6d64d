"""Check points against a surface: which way each error counts, in which unit, and which points count."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from crestcut.base.grid import GridFrame, HeightGrid
from crestcut.job.records import Surveyed
from crestcut.scan.records import Frame
from crestcut.study.checks import errors_of, held_against

FOOT = 0.3048
SHIFT = np.array([300.0, 500.0, 100.0])  # m


def test_errors_are_as_made_less_as_surveyed() -> None:
    """A level slab 100.6 m up in a scan in feet; one point surveyed 4 mm lower, one 8 mm higher, the first
    seen 3 mm east and 5 mm south of where it was surveyed; a third lies beside the slab."""
    frame = Frame(np.full(3, FOOT), np.eye(3), SHIFT, "ft", "z")
    slab = HeightGrid(GridFrame((0.0, 0.0), 0.0, 0.01, (101, 201)), np.full((101, 201), 0.6))

    def own(x: float, y: float, z: float) -> tuple[float, float, float]:
        east, north, up = (np.array([x, y, z]) + SHIFT) / FOOT
        return float(east), float(north), float(up)

    checks = (
        Surveyed("K1", own(0.5, 0.5, 0.596), own(0.503, 0.495, 0.0)[:2], 0.003, 0.004),
        Surveyed("K2", own(1.5, 0.5, 0.608), None, 0.003),
        Surveyed("K3", own(5.0, 0.5, 0.6), None, 0.001),
    )
    found = held_against(checks, SimpleNamespace(frame=frame), SimpleNamespace(height=slab))  # type: ignore[arg-type]
    one, two, three = found.points
    assert (one.up, two.up, three.up) == (pytest.approx(0.004), pytest.approx(-0.008), None)
    assert one.plan == pytest.approx((0.003, -0.005)) and two.plan is None
    assert found.height is not None and found.plan is not None
    assert (found.height.n, found.height.mean) == (2, pytest.approx(-0.002))
    assert found.height.rmse == pytest.approx(np.sqrt((0.004**2 + 0.008**2) / 2))
    assert [axis.mean for axis in found.plan] == pytest.approx([0.003, -0.005])
    # of those that count alone: 4 mm as stated for heights, 3 mm as for all three coordinates
    assert found.survey == pytest.approx(np.sqrt((0.004**2 + 0.003**2) / 2))
    assert found.survey_plan == pytest.approx(0.003 * np.sqrt(2))
    assert found.worst is two
    assert any(note.startswith("check K3: beside the surface") for note in found.notes)


def test_spread_of_one_and_of_two() -> None:
    one, two = errors_of([0.003]), errors_of([0.003, 0.005])
    assert one is not None and two is not None and errors_of([]) is None
    assert np.isnan(one.sd) and two.sd == pytest.approx(0.002 / np.sqrt(2))
