"""The underside of a made-up box car from a noisy cloud, a planted truth beside it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from crestcut.errors import CrestcutError
from crestcut.vehicle.records import Part
from crestcut.vehicle.underside import check_parts, read_underside

BOXES = {
    (1.0, 1.5, -0.2, 0.2): 0.11,
    (2.0, 2.3, 0.1, 0.4): 0.10,
    (3.3, 3.5, -0.5, 0.5): 0.12,
}  # x0 x1 y0 y1 -> clearance


def box_car(rng: np.random.Generator, noise: float = 0.005) -> np.ndarray:
    """Points of the underside seen from below: floor at 160 mm, three low boxes, four tyres (radius 315 mm,
    200 wide).
    """
    n = 120_000
    x, y = rng.uniform(-0.8, 3.7, n), rng.uniform(-0.87, 0.87, n)
    z = np.full(n, 0.16)
    for (x0, x1, y0, y1), height in BOXES.items():
        z[(x >= x0) & (x <= x1) & (y >= y0) & (y <= y1)] = height
    for ax in (0.0, 2.8):
        for ay in (-0.75, 0.75):
            under = (np.abs(x - ax) < 0.315) & (np.abs(y - ay) < 0.1)
            z[under] = np.minimum(z[under], 0.315 - np.sqrt(0.315**2 - (x[under] - ax) ** 2))
    return np.column_stack([x, y, z]) + np.column_stack([np.zeros((n, 2)), rng.normal(0, noise, n)])


def test_three_low_boxes_are_found_within_two_millimetres() -> None:
    rng = np.random.default_rng(1)
    found = read_underside(box_car(rng))
    assert found.wheelbase == pytest.approx(2.8, abs=0.01) and found.track == pytest.approx(1.5, abs=0.01)
    assert found.parts[0].name == "belly" and found.parts[0].z[0] == pytest.approx(0.16, abs=0.002)
    assert len(found.parts) == 4
    for (x0, x1, y0, y1), height in BOXES.items():
        part = min(found.parts[1:], key=lambda p: abs(sum(p.x) - x0 - x1) + abs(sum(p.y) - y0 - y1))
        assert part.z == pytest.approx((height, height), abs=0.002)
        assert (*part.x, *part.y) == pytest.approx((x0, x1, y0, y1), abs=0.03)
    assert found.spread == pytest.approx(0.005, rel=0.2)


def test_it_may_stand_askew_and_anywhere_in_its_file() -> None:
    rng = np.random.default_rng(2)
    points = box_car(rng)
    c, s = np.cos(0.5), np.sin(0.5)
    tilt = np.array([[1, 0, 0.02], [0, 1, -0.01], [-0.02, 0.01, 1.0]])
    turned = points @ np.array([[c, s, 0], [-s, c, 0], [0, 0, 1.0]]) @ tilt.T + [40.0, -7.0, 3.0]
    found = read_underside(turned)
    assert found.wheelbase == pytest.approx(2.8, abs=0.02)
    assert sorted(p.z[0] for p in found.parts) == pytest.approx([0.10, 0.11, 0.12, 0.16], abs=0.003)


def test_what_is_no_vehicle_on_its_wheels_is_one_line() -> None:
    points = box_car(np.random.default_rng(3))
    with pytest.raises(CrestcutError, match="upside down"):
        read_underside(points * [1, 1, -1])
    at_a_wheel = (np.minimum(np.abs(points[:, 0]), np.abs(points[:, 0] - 2.8)) < 0.35) & (
        np.abs(points[:, 1]) > 0.6
    )
    no_tyres = points[~at_a_wheel]
    with pytest.raises(CrestcutError, match=r"tyres|wheels"):
        read_underside(no_tyres)
    with pytest.raises(CrestcutError, match="too few"):
        read_underside(points[:100])


def test_a_part_above_its_own_belly_is_refused() -> None:
    belly = Part("belly", (0.0, 2.8), (-0.6, 0.6), (0.12, 0.12), "belly")
    tray = Part("tray", (0.5, 1.0), (-0.3, 0.3), (0.10, 0.10), "belly")
    check_parts((belly, tray))
    with pytest.raises(CrestcutError, match=r"tray at 150\.0 mm lies above the belly at 120\.0 mm"):
        check_parts((belly, replace(tray, z=(0.15, 0.15))))
