"""Units, edges and grades as standards print them: the two ways of writing a length must agree with the
printed pairs.
"""

from __future__ import annotations

import pytest

from crestcut.base.units import FOOT, INCH, US_SURVEY_FOOT, both, millimetres, parse_length, parse_slope


def test_the_foot_and_the_inch() -> None:
    # International yard and pound agreement of 1959: 25.4 mm; US survey foot 1200/3937 m, 2 ppm longer (NIST
    # SP 811)
    assert parse_length("1 in") == INCH == 0.0254
    assert parse_length("1 ft") == FOOT == 0.3048
    assert parse_length("1 us-ft") == US_SURVEY_FOOT
    assert US_SURVEY_FOOT / FOOT - 1 == pytest.approx(2e-6, rel=1e-3)


@pytest.mark.parametrize(
    ("written", "millimetres_printed"),
    [
        ("1/4 in", 6.4),  # 2010 ADA Standards 303.2, vertical change in level
        ("1/2 in", 13),  # 303.3, bevelled change in level
        ("1/8 in", 3.2),  # arithmetic
        ("3 in", 75),  # ACI 318-19, cover cast against ground (read)
    ],
)
def test_printed_pairs(written: str, millimetres_printed: float) -> None:
    # Standards round the metric side and say that inches govern: within half of the last digit printed (ACI
    # rounds to 5 mm).
    digit = 0.1 if millimetres_printed % 1 else 5 if millimetres_printed == 75 else 1
    assert (
        abs(parse_length(written) * 1000 - millimetres_printed) <= digit / 2 + 1e-9
    )  # 6.35 is half way, and printed 6.4


@pytest.mark.parametrize(
    ("ratio", "percent"),
    [
        (
            "1:48",
            2.083,
        ),  # 2010 ADA Standards 403.3, cross slope; ACI 302.1R-04: 1/4 in per ft drains, 2.083 %
        ("1:20", 5.0),  # 402.2, running slope of a walk
        ("1:12", 8.333),  # 405.2, ramp; Ohio DOT L&D vol. 1: 1 in/ft, 8.3 %
        ("1:10", 10.0),  # 406.3, flares
        ("1:2", 50.0),  # 303.3, bevel
    ],
)
def test_grades(ratio: str, percent: float) -> None:
    assert parse_slope(ratio) * 100 == pytest.approx(percent, abs=6e-4)
    assert parse_slope(f"{percent} %") == pytest.approx(parse_slope(ratio), rel=2e-4)


def test_drainage_quarter_inch_per_foot_is_the_steepest_cross_slope() -> None:
    # ACI 302.1R-04 asks for 1/4 in per ft to drain; ADA 403.3 allows 1:48 across at most: the same number
    assert parse_length("1/4 in") / parse_length("1 ft") == pytest.approx(parse_slope("1:48"), rel=1e-12)


def test_low_vehicle_in_both_systems() -> None:
    # Eck & Kang, Transportation Research Record 1356 (1992): 36 ft wheelbase, 5 in clearance
    assert millimetres(parse_length("36 ft"), 1) == "10972.8 mm"
    assert both(parse_length("5 in")) == "127.0 mm (5 in)"
