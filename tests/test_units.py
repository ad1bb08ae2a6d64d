"""Lengths and slopes as people write them: what is read, what is refused, and what comes back when written
again.
"""

from __future__ import annotations

import math
import string

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from crestcut.base.errors import CrestcutError
from crestcut.base.units import (
    FOOT,
    INCH,
    METRES_PER,
    at_least,
    at_most,
    both,
    both_at_least,
    both_at_most,
    inches,
    millimetres,
    number,
    parse_length,
    parse_slope,
)


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("140 mm", 0.14),
        ("13 mm", 0.013),
        ("140mm", 0.14),
        (" 0.14 m ", 0.14),
        (".5 in", INCH / 2),
        ("5 1/2 in", 5.5 * INCH),
        ("1/2 in", INCH / 2),
        ("1 / 2 in", INCH / 2),
        ("5 ft 6 in", 5.5 * FOOT),
        ("5' 6\"", 5.5 * FOOT),
        ("5′ 6 1/2″", 5 * FOOT + 6.5 * INCH),
        ("1 m 20 cm", 1.2),
        ("-20 mm", -0.02),
        ("−20 mm", -0.02),
        ("+20 mm", 0.02),
        ("20 MM", 0.02),
        ("12 Inches", 0.3048),
        ("2 feet", 0.6096),
        ("3937 us-ft", 1200.0),
        ("0 mm", 0.0),
        (0.14, 0.14),
        (3, 3.0),
    ],
)
def test_reads(text: str | float, metres: float) -> None:
    assert parse_length(text) == pytest.approx(metres, rel=1e-15, abs=0)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("140", "no unit"),
        ("5 1/2", "no unit"),
        ("0,14 m", "comma"),
        ("1,200 mm", "comma"),
        ("1/0 in", "divides by zero"),
        ("5 3/2 in", "fraction of one or more"),
        ("5 1/2 in 3", "not understood"),
        ("5 in 3 ft", "not understood"),
        ("5 in 3 in", "not understood"),
        ("12 parsecs", "not understood"),
        ("12 mmm", "not understood"),
        ("12 mm2", "not understood"),
        ("1e3 mm", "not understood"),
        ("- -3 mm", "not understood"),
        ("--3 mm", "not understood"),
        ("1.5 1/2 in", "not understood"),
        ("1.2.3 mm", "not understood"),
        ("1_000 mm", "not understood"),
        ("about 5 mm", "not understood"),
        ("5 mm or so", "not understood"),
        ("", "not understood"),
        ("mm", "not understood"),
        ("٣ mm", "not understood"),
        ("½ in", "not understood"),
        ("nan mm", "not understood"),
        ("9" * 300 + " mm", "not understood"),
        ("9" * 100 + " km", "not a finite length"),
        (True, "true or false"),
        (math.nan, "not a finite"),
        (math.inf, "not a finite"),
        (None, "NoneType"),
        ([1], "list"),
    ],
)
def test_refuses_what_it_does_not_wholly_understand(text: object, says: str) -> None:
    with pytest.raises(CrestcutError) as caught:
        parse_length(text, "cut.deepest")  # type: ignore[arg-type]
    assert says in str(caught.value) and str(caught.value).startswith("cut.deepest: ")
    assert "\n" not in str(caught.value) and caught.value.mend


@given(st.integers(-10_000_000, 10_000_000), st.sampled_from(sorted(METRES_PER)))
def test_whole_numbers_of_every_unit(count: int, unit: str) -> None:
    assert parse_length(f"{count} {unit}") == pytest.approx(count * METRES_PER[unit], rel=1e-14, abs=1e-300)


@given(st.integers(-400_000, 400_000), st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_inches_come_back_exactly(steps: int, denominator: int) -> None:
    metres = steps / denominator * INCH
    assert parse_length(inches(metres, denominator)) == pytest.approx(metres, rel=1e-13, abs=1e-15)


@given(st.floats(-50.0, 50.0))
def test_inches_are_the_nearest_thirty_second(metres: float) -> None:
    assert abs(parse_length(inches(metres)) - metres) <= INCH / 64 * (1 + 1e-9)


@given(st.floats(-50.0, 50.0), st.integers(0, 4))
def test_millimetres_come_back_to_the_decimals_asked(metres: float, decimals: int) -> None:
    text = millimetres(metres, decimals)
    assert abs(parse_length(text) - metres) <= 0.0005 * 10.0**-decimals * (1 + 1e-6) + 1e-15
    assert not text.startswith("-0 ") and text.rstrip("0 m.") != "-"


@given(st.integers(0, 500), st.integers(0, 11), st.integers(0, 31))
def test_feet_inches_and_fractions_add_up(feet: int, whole: int, part: int) -> None:
    want = feet * FOOT + (whole + part / 32) * INCH
    assert parse_length(f"{feet} ft {whole} {part}/32 in") == pytest.approx(want, rel=1e-14, abs=1e-300)


@settings(max_examples=300)
@given(st.text(string.digits + " ./-'\"mcinft,", max_size=14))
def test_anything_else_is_a_length_or_one_line(text: str) -> None:
    try:
        value = parse_length(text)
    except CrestcutError as error:
        assert "\n" not in str(error)
    else:
        assert math.isfinite(value) and any(c in "mint'\"" for c in text)


@pytest.mark.parametrize(
    ("value", "slope"),
    [("1:4", 0.25), ("1 : 12", 1 / 12), ("12 %", 0.12), ("2.5%", 0.025), (0.25, 0.25), (1, 1.0)],
)
def test_slopes(value: str | float, slope: float) -> None:
    assert parse_slope(value) == pytest.approx(slope)


@pytest.mark.parametrize(
    "value", ["1:0", "0:4", "4", "-1:4", "1/4", "1:4:2", "25", "", "1,5 %", 0, -0.1, True, math.nan, None]
)
def test_refused_slopes(value: object) -> None:
    with pytest.raises(CrestcutError, match="slope"):
        parse_slope(value, "cut.feather")  # type: ignore[arg-type]


@given(st.integers(1, 1000), st.integers(1, 1000))
def test_a_ratio_and_its_percentage_are_one_slope(rise: int, run: int) -> None:
    assert parse_slope(f"{rise}:{run}") == pytest.approx(rise / run, rel=1e-12)
    assert parse_slope(f"{100 * rise / run:.9f} %") == pytest.approx(rise / run, rel=1e-4)


def test_not_measured_is_said() -> None:
    assert millimetres(math.nan) == inches(math.nan) == both(math.nan) == "not measured"


def test_both_ways_of_writing() -> None:
    assert both(0.0127) == "12.7 mm (1/2 in)"
    assert both(-0.0001) == "-0.1 mm (0 in)"
    assert millimetres(-0.00001) == "0.0 mm"


LENGTHS = st.floats(-5.0, 5.0)
STEPS = st.sampled_from([0.0001, 0.0005, 0.001, INCH / 16, INCH / 32, INCH / 64])


@given(LENGTHS, STEPS)
def test_a_limit_is_never_rounded_to_the_lenient_side_and_by_less_than_a_step(
    limit: float, step: float
) -> None:
    up, down = at_least(limit, step), at_most(limit, step)
    assert limit - 2e-6 * step <= up < limit + step
    assert limit - step < down <= limit + 2e-6 * step
    assert up / step == pytest.approx(round(up / step), abs=1e-6)
    assert at_least(up, step) == up and at_most(down, step) == down  # handed on, it stays


@given(LENGTHS)
def test_a_limit_is_strict_as_it_is_written_in_millimetres_and_in_inches(limit: float) -> None:
    def read(text: str) -> tuple[float, float]:
        mm, inch = text.removesuffix(")").split(" (")
        return parse_length(mm), parse_length(inch)

    assert min(read(both_at_least(limit))) >= limit - 1e-9
    assert max(read(both_at_most(limit))) <= limit + 1e-9
    assert min(read(both_at_least(limit, 0, 16))) >= limit - 1e-9
    assert max(read(both_at_most(limit, 0, 16))) <= limit + 1e-9


def test_limits_of_rules_are_written_strictly() -> None:
    assert both_at_most(INCH / 4) == "6.3 mm (1/4 in)"  # 6.35 mm: "6.4 mm" would let more stand
    assert both_at_least(0.0685 - 1e-12, 1) == "68.5 mm (2 23/32 in)"
    assert both_at_least(0.0127) == both_at_most(0.0127) == "12.7 mm (1/2 in)"


def test_quantities_are_written_with_what_their_size_deserves() -> None:
    said = ["312", "35.3", "2.24", "0.70", "0.043", "0"]
    assert [number(v) for v in (312.4, 35.26, 2.236, 0.697, 0.0432, 0)] == said
