"""The tyre as a disk, against brute force, published steps and properties of a dilation."""

from __future__ import annotations

import math

import numpy as np
import pytest

from crestcut.contact.stand.placing import Axles
from crestcut.contact.stand.tyres import (
    UNKNOWN,
    VOID,
    Hub,
    Tyre,
    TyreGround,
    axle_heights,
    row_maxima,
    rows_for,
    settle,
    tyre_ground,
    tyre_height,
    tyre_node,
)

CELL = 0.01


def tyre(
    ground: np.ndarray, u: float, v: float, yaw: float = 0.0, radius: float = 0.34, half: float = 0.1,
    tilt: float = 0.0,
) -> float:  # fmt: skip
    under = rolled(ground, math.ceil(math.hypot(radius, half) / CELL) + 1)
    return height_on(under, Hub(u, v, math.cos(yaw), math.sin(yaw)), Tyre(radius, half, tilt))


def height_on(under: TyreGround, hub: Hub, tyre: Tyre) -> float:
    """At first look."""
    return tyre_height(under, hub, tyre, VOID, np.full(500, UNKNOWN), 0.0)


def rolled(ground: np.ndarray, reach: int, cell: float = CELL) -> TyreGround:
    return TyreGround(ground, row_maxima(ground, reach), np.arange(ground.shape[1]) * cell, cell)


def brute(
    ground: np.ndarray, u: float, v: float, yaw: float, radius: float, half: float, tilt: float = 0.0
) -> float:
    j, i = np.indices(ground.shape)
    du, dv = i * CELL - u, j * CELL - v
    a, b = du * math.cos(yaw) + dv * math.sin(yaw), -du * math.sin(yaw) + dv * math.cos(yaw)
    under = (np.abs(a) < radius) & (np.abs(b) <= half + 1e-9)
    return float((ground - b * tilt + np.sqrt(np.maximum(radius**2 - a**2, 0)))[under].max() - radius)


@pytest.mark.parametrize("seed", range(6))
def test_equals_brute_force_on_rough_ground_at_any_heading(seed: int) -> None:
    rng = np.random.default_rng(seed)
    ground = rng.normal(0, 0.02, (90, 120)) + 0.3 * np.arange(120) * CELL * rng.choice([-1, 0, 1])
    ground[rng.random(ground.shape) < 0.1] = VOID
    for _ in range(20):
        u, v, yaw = rng.uniform(0.45, 0.75), rng.uniform(0.4, 0.5), rng.uniform(-math.pi, math.pi)
        tilt = rng.choice([0.0, rng.normal(0, 0.1)])
        assert tyre(ground, u, v, yaw, 0.3, 0.09, tilt) == pytest.approx(
            brute(ground, u, v, yaw, 0.3, 0.09, tilt), abs=1e-9
        )


@pytest.mark.parametrize("yaw", [0.0, 1.1, math.pi / 2, -2.6])
def test_equals_brute_force_at_the_rim_of_the_ground(yaw: float) -> None:
    """The first and the last rows and columns carry a tyre as any others do: they alone are high there."""
    rng = np.random.default_rng(9)
    ground = rng.normal(0, 0.002, (40, 50))
    ground[[0, -1]] += 0.3
    ground[:, [0, -1]] += 0.3
    last = np.array([(50 - 1) * CELL, (40 - 1) * CELL])
    for u, v in ((0.02, 0.2), (last[0] - 0.02, 0.2), (0.25, 0.02), (0.25, last[1] - 0.02), (0.01, last[1])):
        expected = brute(ground, u, v, yaw, 0.12, 0.05)
        assert tyre(ground, u, v, yaw, 0.12, 0.05) == pytest.approx(expected, abs=1e-9)
        hub = Hub(u, v, math.cos(yaw), math.sin(yaw))
        j, i = divmod(tyre_node(rolled(ground, 20), hub, Tyre(0.12, 0.05, 0.0)), 50)
        a = (i * CELL - u) * math.cos(yaw) + (j * CELL - v) * math.sin(yaw)
        assert ground[j, i] + math.sqrt(0.12**2 - a * a) - 0.12 == pytest.approx(expected, abs=1e-9)


def test_the_carrying_node_explains_the_height() -> None:
    rng = np.random.default_rng(5)
    ground = rng.normal(0, 0.02, (60, 100))
    for tilt in (0.0, 0.2):
        node = tyre_node(rolled(ground, 40), Hub(0.5, 0.3, 1.0, 0.0), Tyre(0.3, 0.1, tilt))
        j, i = divmod(node, 100)
        expected = ground[j, i] + math.sqrt(0.3**2 - (i * CELL - 0.5) ** 2) - 0.3 - tilt * (j * CELL - 0.3)
        assert tyre(ground, 0.5, 0.3, 0.0, 0.3, 0.1, tilt) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize("seed", range(4))
def test_looked_at_again_at_another_tilt_it_is_what_a_first_look_finds(seed: int) -> None:
    """What an earlier look has noted of each row spares rows and never one that carries."""
    rng = np.random.default_rng(seed)
    ground = rng.normal(0, 0.004, (70, 100)) + 0.1 * np.arange(70)[:, None] * CELL * rng.choice([-1, 0, 1])
    under, tilt, half = rolled(ground, 40), 0.0, 0.09
    yaw = rng.choice([0.0, 0.05, math.pi / 2, rng.uniform(-3, 3)])
    hub, rows = Hub(0.5, 0.35, math.cos(yaw), math.sin(yaw)), np.full(200, UNKNOWN)
    height = tyre_height(under, hub, Tyre(0.3, half, tilt), VOID, rows, 0.0)
    for step in rng.normal(0, 0.02, 30):
        tilt += step
        floor = height - half * abs(step) - 1e-9
        height = tyre_height(under, hub, Tyre(0.3, half, tilt), floor, rows, step)
        assert height == pytest.approx(brute(ground, 0.5, 0.35, yaw, 0.3, half, tilt), abs=1e-12)


@pytest.mark.parametrize("seed", range(8))
def test_an_axle_leans_as_a_dense_search_over_its_tilt_finds(seed: int) -> None:
    """Of all tilts the one at which both tyres, leaning by it, stand by it: by a grid, then halving."""
    rng = np.random.default_rng(seed)
    track, half, radius, cell = 0.6, rng.choice([0.05, 0.15, 0.25]), 0.2, 0.02
    y, _ = np.indices((80, 60)) * cell
    ground = rng.normal(0, 0.02, y.shape) + rng.uniform(-0.15, 0.15) * y + 0.1 * (y > 1.0) * (seed % 2)
    yaw, more = rng.uniform(-math.pi, math.pi), rng.choice([0.0, rng.normal(0, 0.05)])
    axles = Axles(1.0, track, track, radius, half, 0.5, 0.5)
    middle = Hub(0.6, 0.8, math.cos(yaw), math.sin(yaw))
    under = tyre_ground(ground, cell, axles, np.array([[0.6, 0.8]]))
    found = axle_heights(under, middle, track, axles, (rng.normal(0, 0.1), more), rows_for(under, axles))
    j, i = np.indices(ground.shape)
    du, dv = i * cell - 0.6, j * cell - 0.8
    a, b = du * math.cos(yaw) + dv * math.sin(yaw), -du * math.sin(yaw) + dv * math.cos(yaw)

    def heights(tilt: float) -> list[float]:
        out = []
        for side in (0.5, -0.5):
            met = (np.abs(a) < radius) & (np.abs(b - side * track) <= half + 1e-9)
            high = ground - (b - side * track) * tilt + np.sqrt(np.maximum(radius**2 - a**2, 0)) - radius
            out.append(float(high[met].max()))
        return out

    grid = np.linspace(-1, 1, 401)
    off = np.array([(p - q) / track + more - t for t in grid for p, q in [heights(t)]])
    assert (np.diff(off) < 0).all(), "one fixed point: less tilt is asked for than there is, ever more"
    k = int(np.argmax(off < 0))
    low, high = grid[k - 1], grid[k]
    for _ in range(40):
        t = 0.5 * (low + high)
        left, right = heights(t)
        low, high = (t, high) if (left - right) / track + more > t else (low, t)
    assert found == pytest.approx(heights(low), abs=2e-6 / (1 - 2 * half / track))


@pytest.mark.parametrize("at", [(3.0, 2.0), (0.2, 3.9), (-3.0, 1.0), (9.0, 9.0)])
def test_a_bound_about_the_places_alone_stands_the_vehicle_as_one_over_all_the_ground(
    at: tuple[float, float],
) -> None:
    """In the middle, over the edge, off the ground: the same digits."""
    rng, cell = np.random.default_rng(1), 0.05
    ground = rng.normal(0, 0.02, (90, 150))
    axles = Axles(1.2, 0.6, 0.8, 0.2, 0.1, 0.5, 0.5)
    places = np.array([[*at, yaw, 0.0, 0.0] for yaw in np.linspace(-3, 3, 9)])
    whole = TyreGround(ground, row_maxima(ground, 6), np.arange(150) * cell, cell)
    under = tyre_ground(ground, cell, axles, places)
    known = np.isfinite(under.bound)
    assert not known.all() and np.array_equal(under.bound[known], whole.bound[known])
    found, right = settle(under, places, axles, True), settle(whole, places, axles, True)
    assert all(np.array_equal(a, b) for a, b in zip(found, right, strict=True))
    assert len(tyre_ground(ground, cell, axles, places[:0]).heights)  # no place at all
    j, i = np.rint(np.array(at[::-1]) / cell).astype(int)
    assert known[max(j - 20, 0) : max(j + 20, 0), max(i - 20, 0) : max(i + 20, 0)].all()


def test_a_kerb_under_a_tyres_outer_edge_lifts_it_there_alone() -> None:
    """A kerb 60 mm high under the outer 30 mm of the left tyre: it rests on the kerb's edge, the right one on
    its own outer edge, and the axle leans by the rise over the distance of those two."""
    track, half, kerb = 1.5, 0.1, 0.06
    axles = Axles(2.8, track, track, 0.3, half, 0.5, 0.5)
    y, _ = np.indices((240, 80)) * CELL
    inner = 1.2 + track / 2 + 0.07
    ground = np.where(y > inner - 1e-6, kerb, 0.0)
    under = tyre_ground(ground, CELL, axles, np.array([[0.0, 0.0], [3.0, 3.0]]))
    left, right = axle_heights(
        under, Hub(0.4, 1.2, 1.0, 0.0), track, axles, (0.0, 0.0), rows_for(under, axles)
    )
    tilt = kerb / (track + 0.07 + half)
    assert (left - right) / track == pytest.approx(tilt, abs=1e-6)
    assert (left, right) == pytest.approx((kerb - 0.07 * tilt, half * tilt), abs=1e-6)


def test_nothing_measured_carries_nothing() -> None:
    assert tyre(np.full((50, 100), VOID), 0.5, 0.25) == VOID
    void = rolled(np.full((50, 100), VOID), 40)
    assert tyre_node(void, Hub(0.5, 0.25, 1.0, 0.0), Tyre(0.34, 0.1, 0.0)) == -1


@pytest.mark.parametrize("grade", [0.0, 0.1, -0.2])
def test_on_a_plane_the_hub_is_a_radius_away_along_the_normal(grade: float) -> None:
    ground = np.tile(grade * np.arange(200) * CELL, (40, 1))
    # hub height over the plane, measured vertically: radius / cos(slope)
    expected = grade * 1.0 + 0.34 * (math.sqrt(1 + grade**2) - 1)
    assert tyre(ground, 1.0, 0.2) == pytest.approx(expected, abs=CELL**2 / (8 * 0.34) * 1.1)


# Disk of 340 mm radius: a step of h is first felt sqrt(2 R h - h^2) ahead (geometry of the circle). [D]
@pytest.mark.parametrize(
    ("step", "ahead"), [(0.0064, 0.065659), (0.013, 0.093118), (0.025, 0.127965), (0.050, 0.177482)]
)
def test_a_step_is_felt_this_far_ahead(step: float, ahead: float) -> None:
    ground = np.tile(np.where(np.arange(300) * CELL >= 1.5, step, 0.0), (30, 1))
    nodes = CELL**2 / (8 * 0.34)  # the hub between two nodes: this much low
    assert tyre(ground, 1.5 - ahead - 0.001, 0.15) == pytest.approx(0.0, abs=nodes * 1.01)
    assert tyre(ground, 1.5 - ahead + 0.001, 0.15) > 1e-4


# A groove of width w lets the disk sink R - sqrt(R^2 - w^2/4): 12 mm -> 0.0529 mm, 100 mm -> 3.697 mm at R
# 340 mm. [D]
@pytest.mark.parametrize(("width", "sinks"), [(0.012, 0.0000529), (0.100, 0.003697)])
def test_a_groove_lowers_the_tyre_by_its_chord(width: float, sinks: float) -> None:
    cell = width / 2  # the groove's middle node is void, its edges are nodes
    ground = np.zeros((9, 401))
    ground[:, 200] = VOID
    low = height_on(rolled(ground, 200, cell), Hub(200 * cell, 4 * cell, 1.0, 0.0), Tyre(0.34, 2 * cell, 0.0))
    assert -low == pytest.approx(sinks, rel=2e-3)


def test_a_convex_crest_is_left_as_it_is_by_closing_and_closing_twice_changes_nothing() -> None:
    # closing = dilation then erosion by the disk (ISO 16610-41); on one row, brute force
    x = np.arange(160) * CELL
    rough = -0.15 * np.abs(x - 0.8)
    rough_with_pit = rough - 0.02 * ((x > 0.6) & (x < 0.63))

    def closing(z: np.ndarray) -> np.ndarray:
        k = np.arange(-33, 34)
        disk = np.sqrt(0.34**2 - (k * CELL) ** 2) - 0.34
        padded = np.pad(z, 33, constant_values=VOID)
        up = np.array(
            [tyre(np.tile(padded, (3, 1)), (i + 33) * CELL, CELL, half=CELL) for i in range(len(z))]
        )
        shape = np.pad(up, 33, constant_values=-VOID)
        return np.array([(shape[i + 33 + k] - disk).min() for i in range(len(z))])

    inner = slice(34, -34)  # away from where the ground ends
    assert closing(rough)[inner] == pytest.approx(rough[inner], abs=1e-9)
    once = closing(rough_with_pit)
    assert (once >= rough_with_pit - 1e-12).all()
    assert closing(once) == pytest.approx(once, abs=1e-9)
