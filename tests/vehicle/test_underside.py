"""The underside of a made-up box car from a noisy cloud, a planted truth beside it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from crestcut.base.errors import CrestcutError
from crestcut.vehicle.from_scan.underside import Underside, read_underside
from crestcut.vehicle.parts import check_parts
from crestcut.vehicle.records import Part

FLOOR = 0.16
BOXES = {
    (1.0, 1.5, -0.2, 0.2): 0.11,
    (2.0, 2.3, 0.1, 0.4): 0.10,
    (3.3, 3.5, -0.5, 0.5): 0.12,
}  # x0 x1 y0 y1 -> clearance


def floor_at(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """The car's lowest height over x, y: floor at 160 mm, three boxes, four tyres (radius 315, 200 wide)."""
    z = np.full(x.shape, FLOOR)
    for (x0, x1, y0, y1), height in BOXES.items():
        z[(x >= x0) & (x <= x1) & (y >= y0) & (y <= y1)] = height
    for ax in (0.0, 2.8):
        for ay in (-0.75, 0.75):
            under = (np.abs(x - ax) < 0.315) & (np.abs(y - ay) < 0.1)
            z[under] = np.minimum(z[under], 0.315 - np.sqrt(0.315**2 - (x[under] - ax) ** 2))
    return z


def box_car(rng: np.random.Generator, noise: float = 0.005) -> np.ndarray:
    """Points of the underside seen from below."""
    n = 120_000
    x, y = rng.uniform(-0.8, 3.7, n), rng.uniform(-0.87, 0.87, n)
    return np.column_stack([x, y, floor_at(x, y)]) + np.column_stack(
        [np.zeros((n, 2)), rng.normal(0, noise, n)]
    )


def runways(rng: np.random.Generator, n: int = 60_000, noise: float = 0.005) -> np.ndarray:
    """Two boards under the wheels, hidden where the tyres stand on them."""
    y = rng.choice([-1, 1], n) * rng.uniform(0.5, 1.0, n)
    x = rng.uniform(-1.2, 4.2, n)
    hidden = (np.minimum(np.abs(x), np.abs(x - 2.8)) < 0.08) & (np.abs(np.abs(y) - 0.75) < 0.1)
    return np.column_stack([x, y, rng.normal(0, noise, n)])[~hidden]


def askew(points: np.ndarray) -> np.ndarray:
    c, s = np.cos(0.5), np.sin(0.5)
    tilt = np.array([[1, 0, 0.02], [0, 1, -0.01], [-0.02, 0.01, 1.0]])
    return points @ np.array([[c, s, 0], [-s, c, 0], [0, 0, 1.0]]) @ tilt.T + [40.0, -7.0, 3.0]


def check_found(found: Underside, millimetres: float = 2.0) -> None:
    """All three boxes, the belly, nose and tail, and no other part."""
    tolerance = millimetres / 1000
    assert found.wheelbase == pytest.approx(2.8, abs=0.01) and found.track == pytest.approx(1.5, abs=0.01)
    assert found.parts[0].name == "belly" and found.parts[0].z[0] == pytest.approx(FLOOR, abs=tolerance)
    low = [p for p in found.parts if p.name.startswith("low part")]
    assert len(low) == len(BOXES)
    for (x0, x1, y0, y1), height in BOXES.items():
        part = min(low, key=lambda p: abs(sum(p.x) - x0 - x1) + abs(sum(p.y) - y0 - y1))
        assert part.z == pytest.approx((height, height), abs=tolerance)
        assert (*part.x, *part.y) == pytest.approx((x0, x1, y0, y1), abs=0.03)
    ends = [p for p in found.parts[1:] if p not in low]
    assert [p.name for p in ends] == ["nose", "tail"] == [p.zone for p in ends]
    assert all(p.z == pytest.approx((FLOOR, FLOOR), abs=tolerance) for p in ends)
    assert ends[0].x[1] == pytest.approx(3.7, abs=0.03) and ends[1].x[0] == pytest.approx(-0.8, abs=0.03)


def test_three_low_boxes_are_found_within_two_millimetres() -> None:
    found = read_underside(box_car(np.random.default_rng(1)))
    check_found(found)
    assert found.spread == pytest.approx(0.005, rel=0.2)
    assert found.ends == pytest.approx((0.9, 0.8), abs=0.03)


def test_it_may_stand_askew_and_anywhere_in_its_file() -> None:
    check_found(read_underside(askew(box_car(np.random.default_rng(2)))))


@pytest.mark.parametrize("pit", [False, True], ids=["runways", "runways over a pit"])
def test_what_the_wheels_stand_on_may_be_in_view(pit: bool) -> None:
    rng = np.random.default_rng(5)
    seen = [box_car(rng), runways(rng)]
    if pit:
        seen.append(np.column_stack([rng.uniform(-1.2, 4.2, 20_000), rng.uniform(-1.2, 1.2, 20_000),
                                     rng.normal(-1.4, 0.005, 20_000)]))  # fmt: skip
    check_found(read_underside(askew(np.concatenate(seen))))


def test_a_nose_that_rises_is_followed_by_sloping_plates() -> None:
    rng = np.random.default_rng(6)
    points = box_car(rng, noise=0.002)
    ahead = points[:, 0] > 3.5
    points[ahead, 2] += 0.4 * (points[ahead, 0] - 3.5)
    nose = [p for p in read_underside(points).parts if p.zone == "nose" and p.name.startswith("nose")]
    tip = max(nose, key=lambda p: p.x[1])
    assert 2 <= len(nose) <= 4 and tip.z[1] == pytest.approx(0.16 + 0.4 * 0.2, abs=0.012)
    assert min(nose, key=lambda p: p.x[0]).z[0] == pytest.approx(0.16, abs=0.002)


def test_what_hangs_below_a_low_part_is_a_part_of_its_own() -> None:
    points = box_car(np.random.default_rng(11), noise=0.001)
    bolt = (np.abs(points[:, 0] - 1.25) < 0.06) & (np.abs(points[:, 1]) < 0.06)
    plank = (np.abs(points[:, 0] - 0.6) < 0.1) & (np.abs(points[:, 1] + 0.3) < 0.1)
    points[bolt, 2] -= 0.02
    points[plank, 2] -= 0.007
    low = [min(p.z) for p in read_underside(points).parts if p.name.startswith("low part")]
    assert sorted(low) == pytest.approx([0.09, 0.10, 0.11, 0.12, 0.153], abs=0.001)


def test_the_front_may_be_named() -> None:
    points = box_car(np.random.default_rng(1))
    back = read_underside(points, front=(-1.0, 0.0))
    assert back.ends == pytest.approx((0.8, 0.9), abs=0.03) and back.forward[0] == pytest.approx(
        -1.0, abs=1e-3
    )
    with pytest.raises(CrestcutError, match="front would lie to a side"):
        read_underside(points, front=(0.0, 1.0))


def test_what_is_no_vehicle_on_its_wheels_is_one_line() -> None:
    rng = np.random.default_rng(3)
    points = box_car(rng)
    for scan in (points, np.concatenate([points, runways(rng)])):
        with pytest.raises(CrestcutError, match="upside down"):
            read_underside(scan * [1, 1, -1])
    at_a_wheel = (np.minimum(np.abs(points[:, 0]), np.abs(points[:, 0] - 2.8)) < 0.35) & (
        np.abs(points[:, 1]) > 0.6
    )
    for scan in (points[~at_a_wheel], np.concatenate([points[~at_a_wheel], runways(rng)])):
        with pytest.raises(CrestcutError, match=r"tyres|wheels"):
            read_underside(scan)
    with pytest.raises(CrestcutError, match="too few"):
        read_underside(points[:100])


def test_a_part_above_its_own_belly_is_refused() -> None:
    belly = Part("belly", (0.0, 2.8), (-0.6, 0.6), (0.12, 0.12), "belly")
    tray = Part("tray", (0.5, 1.0), (-0.3, 0.3), (0.10, 0.10), "belly")
    check_parts((belly, tray))
    check_parts(
        (belly, replace(tray, z=(0.15, 0.15), on="rear axle"))
    )  # an axle is not under the belly plate
    with pytest.raises(CrestcutError, match=r"tray\): at 150\.0 mm it lies above its own belly at 120\.0 mm"):
        check_parts((belly, replace(tray, z=(0.15, 0.15))))
