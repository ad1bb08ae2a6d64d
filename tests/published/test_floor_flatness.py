"""Flatness of floors against published standards and closed forms; the source stands beside each check."""

from __future__ import annotations

import math

import numpy as np
import pytest

from crestcut.floor.classes import (
    BS_LENGTH,
    DIN_GAPS,
    DIN_LENGTHS,
    LOCAL_SHARE,
    ROUGHLY,
    aci_class,
    bs_class,
    din_gap,
    rough_gap,
)
from crestcut.floor.numbers import FLAT, LEVEL, Lines, Numbers, f_numbers, lay_lines, read
from crestcut.floor.reference import robust_plane
from crestcut.floor.straightedge import WAYS, gaps_under, worst_gap
from crestcut.grid import FloatArray, GridFrame, HeightGrid
from crestcut.units import FOOT, INCH

CELL = FOOT / 30  # m: every reading of a line falls on a node
AMPLITUDE, LONG = INCH / 8, 10 * FOOT


def strip(height: object, feet: float = 15.0, wide: float = 4.3) -> tuple[Lines, FloatArray, GridFrame]:
    """A floor so narrow that one line of 12 readings has room, 2 ft clear all round, with its heights (m)
    over u.
    """
    shape = (round(wide * 30) + 1, round(feet * 30) + 1)
    frame = GridFrame((0.0, 0.0), 0.0, CELL, shape)
    u = np.arange(shape[1]) * CELL
    z = np.broadcast_to(np.asarray(height(u)), shape)  # type: ignore[operator]
    lines = lay_lines(frame, np.ones(shape, bool))
    assert lines is not None
    return lines, z, frame


def told(height: object, slope: float = 0.0) -> Numbers:
    lines, z, frame = strip(height)
    return f_numbers(lines, read(lines, frame, z.ravel(), (slope, 0.0)))


def test_sine_has_the_ff_of_the_closed_form() -> None:
    # ASTM E1155: q is the change of slope over 12 in; of A sin(2 pi x / l) its amplitude is 4 A sin^2(pi d /
    # l).
    # Structure read, the constants 4.57 and 12.5 from memory; A 1/8 in, l 10 ft -> FF 45.12 with the
    # population's
    # s over whole periods: arithmetic, done twice.
    amplitude = 4 * AMPLITUDE / INCH * math.sin(math.pi * 0.1) ** 2
    closed = FLAT / (3 * amplitude / math.sqrt(2))
    assert closed == pytest.approx(45.12, abs=0.005)
    found = told(lambda u: AMPLITUDE * np.sin(2 * np.pi * u / LONG))
    assert found.lines == 1 and found.readings == 12
    # 12 readings make 10 bends, one whole period; the standard's s divides by n - 1
    assert found.ff == pytest.approx(closed * math.sqrt(9 / 10), rel=2e-3)


def test_tilt_leaves_ff_alone_and_sets_fl() -> None:
    # E1155: a second difference knows no slope; FL = 12.5 / |mean z| where every 10 ft rise alike: 1/4 in ->
    # 50
    wave = lambda u: AMPLITUDE * np.sin(2 * np.pi * u / LONG)  # noqa: E731
    slope = 0.25 / 120
    level, tilted = told(wave), told(lambda u: wave(u) + slope * u, slope)
    assert tilted.ff == pytest.approx(level.ff, rel=1e-6)
    assert told(lambda u: slope * u, slope).fl == pytest.approx(LEVEL / 0.25, rel=1e-6)
    assert level.fl > 1e4  # a whole wave back, nothing has risen


def test_eleven_readings_are_no_sample() -> None:
    # E1155: at least 12 points a sample (read); 2 ft clear of the edges (from memory): 14 ft hold only 11
    shape = (round(4.3 * 30) + 1, 14 * 30 + 1)
    assert lay_lines(GridFrame((0.0, 0.0), 0.0, CELL, shape), np.ones(shape, bool)) is None
    column = np.ones((130, 15 * 30 + 1), bool)
    column[60:75, 200:215] = False  # a column 15 cm square in the middle of the line
    assert lay_lines(GridFrame((0.0, 0.0), 0.0, CELL, (130, 451)), column) is None


def test_din_18202_row_3_with_its_interpolation() -> None:
    # DIN 18202 table 3 row 3: 2, 4, 10, 12, 15 mm at 0.1, 1, 4, 10, 15 m; between, linear, then whole mm:
    # 2 m -> 6, 6 m -> 11 (read)
    assert [din_gap(at) for at in DIN_LENGTHS] == pytest.approx(list(DIN_GAPS))
    assert (din_gap(2.0), din_gap(6.0)) == pytest.approx((0.006, 0.011))


def test_bs_8204_and_aci_117_classes() -> None:
    # BS 8204: SR1, SR2, SR3 with 3, 5, 10 mm under a 2 m straightedge (read)
    assert BS_LENGTH == 2.0
    found = [bs_class(gap / 1000) for gap in (3.0, 3.1, 5.0, 10.0, 10.1)]
    assert found == ["SR1", "SR2", "SR2", "SR3", "none"]
    # ACI 117-10: 20/15, 25/20, 35/25, 45/35, 60/40, a part at least 3/5 of the whole (read)
    assert [aci_class(*pair) for pair in ((20, 15), (34.9, 60), (60, 40), (19, 40))] == [
        "20/15", "25/20", "60/40", "none",
    ]  # fmt: skip
    assert LOCAL_SHARE == pytest.approx(0.6)


def test_ff_and_ten_foot_straightedge_go_together_roughly() -> None:
    # ACI 117-10: FF 12, 20, 25, 32, 50 with about 1/2, 5/16, 1/4, 3/16, 1/8 in under 10 ft; rough, it says
    # (read)
    assert [rough_gap(ff) / INCH for ff, _ in ROUGHLY] == pytest.approx([1 / 2, 5 / 16, 1 / 4, 3 / 16, 1 / 8])
    # a wave 10 ft long shows 2 A under that straightedge; its FF's rough gap is of the same size, no more is
    # said
    wave = told(lambda u: AMPLITUDE * np.sin(2 * np.pi * u / LONG))
    assert 0.3 < rough_gap(wave.ff) / (2 * AMPLITUDE) < 1.2


@pytest.mark.parametrize("length", [0.5, 1.0, 1.5, 2.0, 3.0])
def test_wave_under_a_straightedge(length: float) -> None:
    # on two high points, not levelled (DIN 18202, read): over a cosine of length l the chord from -L/2 to L/2
    # lies
    # A (1 - cos(pi L / l)) over the trough; a straightedge of a whole wave or more spans crests, 2 A
    wave, cell = 2.0, 0.01
    x = np.arange(0, 8.0001, cell)
    z = np.broadcast_to(0.002 * np.cos(2 * np.pi * x / wave), (3, len(x)))
    closed = 0.002 * (1 - math.cos(math.pi * min(length, wave) / wave))
    assert worst_gap(z, cell, length, ((0, 1),)) == pytest.approx(closed, rel=1e-3)


def test_valley_of_two_slopes() -> None:
    # of all chords L long over a V of slopes -s and s, the even one lies highest over its foot: s L / 2
    # (geometry)
    x = np.arange(-400, 401) * 0.01
    z = np.broadcast_to(0.01 * np.abs(x), (5, len(x)))
    gap, left, right = gaps_under(z, 0.01, 2.0, ((0, 1),))
    assert gap.max() == pytest.approx(0.01, rel=1e-9)
    at = int(gap[0].argmax())
    assert (left[0, at] % 801 + right[0, at] % 801) / 2 == at == 400


def test_no_gap_where_a_floor_bends_down_and_no_place_between_the_ways() -> None:
    x, y = np.meshgrid(np.arange(-60, 61) * 0.02, np.arange(-60, 61) * 0.02)
    assert worst_gap(-0.004 * (x**2 + y**2), 0.02, 1.0) == pytest.approx(0.0, abs=1e-12)
    turns = np.sort([math.atan2(j, i) % math.pi for j, i in WAYS])
    assert np.degrees(np.diff([*turns, turns[0] + math.pi])).max() < 19
    # a bowl bends alike in every direction: k L^2 / 8 with k twice the coefficient (circle's sagitta)
    assert worst_gap(0.004 * (x**2 + y**2), 0.02, 1.0) == pytest.approx(0.008 / 8, rel=1e-9)


def test_what_is_left_over_a_plane_of_a_sine() -> None:
    # ISO 25178-2: a sine of amplitude A has Sq A / sqrt 2 and Sa 2 A / pi (arithmetic), whatever plane it
    # lies on
    frame = GridFrame((0.0, 0.0), 0.0, 0.02, (201, 301))
    u, v = np.meshgrid(np.arange(301) * 0.02, np.arange(201) * 0.02)
    z = HeightGrid(frame, 0.003 * u - 0.005 * v + 0.002 * np.cos(2 * np.pi * u / 0.5) + 1.0)
    plane, slope = robust_plane(z)
    left = z.values - plane
    assert slope == pytest.approx((0.003, -0.005), abs=2e-5)
    assert float(np.sqrt((left**2).mean())) == pytest.approx(0.002 / math.sqrt(2), rel=0.01)
    assert float(np.abs(left).mean()) == pytest.approx(2 * 0.002 / math.pi, rel=0.01)
