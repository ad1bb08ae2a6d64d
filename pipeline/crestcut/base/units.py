"""Lengths and slopes as people write them <-> SI. Inches and fractions exist only here, at the edge.

A general unit library was tried and left: it reads "5 1/2 in" as 2.5 in and "0,14 m" as 0, silently. What
this parser does not fully understand it refuses.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

from crestcut.base.errors import CrestcutError

INCH = 0.0254  # m, exact: international yard and pound agreement of 1959
FOOT = 0.3048  # m, exact
US_SURVEY_FOOT = 1200.0 / 3937.0  # m, exact by definition
POUND = 0.45359237  # kg, exact: international yard and pound agreement of 1959
GALLON = 3.785411784  # litres, exact: 231 cubic inches, the US gallon
MM_TENTH = 1e-4  # m: to what a length in millimetres is printed
SAME = 1e-6  # of a step: a figure this near to a whole step is that step

_INCH = Fraction(254, 10_000)
_EXACT: dict[str, Fraction] = {
    "mm": Fraction(1, 1000), "cm": Fraction(1, 100), "m": Fraction(1), "km": Fraction(1000),
    "in": _INCH, "inch": _INCH, "inches": _INCH, '"': _INCH,
    "ft": 12 * _INCH, "foot": 12 * _INCH, "feet": 12 * _INCH, "'": 12 * _INCH,
    "us-ft": Fraction(1200, 3937),
}  # fmt: skip
METRES_PER: dict[str, float] = {name: float(factor) for name, factor in _EXACT.items()}

_NUMBER = r"(?:[0-9]+\s+[0-9]+\s*/\s*[0-9]+|[0-9]+\s*/\s*[0-9]+|[0-9]+\.[0-9]*|\.[0-9]+|[0-9]+)"
_TERM = re.compile(rf"\s*({_NUMBER})\s*(us-ft|inches|inch|feet|foot|mm|cm|km|in|ft|m|\"|')(?![a-z])")
_SAME = str.maketrans(
    {"\u2033": '"', "\u201d": '"', "\u2032": "'", "\u2019": "'", "\u2212": "-", "\u00a0": " ", "\u202f": " "}
)
_DECIMAL = r"[0-9]{1,15}(?:\.[0-9]{1,15})?"
_LONGEST = 200  # characters: nobody writes a longer length
_LIKE = 'write it like "140 mm" or "5 1/2 in"'


def parse_length(value: str | float | int, where: str = "length") -> float:
    """A length in metres from "140 mm", "5 1/2 in", "5 ft 6 in", "-20 mm"; a bare number is metres.

    Reckoned in exact fractions, so "13 mm" is the float nearest to 0.013. Several terms go from the larger
    unit to the smaller, once each. Raises CrestcutError for a string without a unit, a decimal comma, or
    anything not wholly understood.
    """
    if isinstance(value, bool):
        raise CrestcutError("a length expected, true or false found", where, 'write it like "140 mm"')
    if isinstance(value, (int, float)):
        if not -1e12 < value < 1e12:
            raise CrestcutError("not a finite length", where, 'write it like "140 mm"')
        return float(value)
    if not isinstance(value, str):
        raise CrestcutError(
            f"a length expected, {type(value).__name__} found", where, 'write it like "140 mm"'
        )
    text = value.strip().lower().translate(_SAME)
    if "," in text:
        raise CrestcutError(f'"{value}" has a comma', where, 'use a point for decimals, like "0.14 m"')
    sign = -1 if text[:1] == "-" else 1
    if text[:1] in ("+", "-"):
        text = text[1:]
    total, at, last = Fraction(0), 0, Fraction(10**9)
    while at < len(text) <= _LONGEST:
        term = _TERM.match(text, at)
        if not term or _EXACT[term[2]] >= last:
            break
        last = _EXACT[term[2]]
        total += _number(term[1], value, where) * last
        at = term.end()
    if at == 0 or text[at:].strip() or len(text) > _LONGEST:
        if re.fullmatch(rf"\s*{_NUMBER}\s*", text):
            raise CrestcutError(f'"{value}" has no unit', where, _LIKE)
        shown = value if len(value) <= 40 else value[:37] + "..."
        raise CrestcutError(f'"{shown}" is not understood as a length', where, _LIKE)
    if total > 10**12:
        raise CrestcutError("not a finite length", where, _LIKE)
    return float(sign * total)


def _number(text: str, value: str, where: str) -> Fraction:
    """One number, a fraction or a whole with a fraction, exactly."""
    parts = text.replace("/", " / ").split()
    if "/" not in parts:
        return Fraction(parts[0])
    if int(parts[-1]) == 0:
        raise CrestcutError(f'"{value}" divides by zero', where, 'write it like "5 1/2 in"')
    fraction = Fraction(int(parts[-3]), int(parts[-1]))
    if len(parts) == 4 and fraction >= 1:
        raise CrestcutError(
            f'"{value}" has a fraction of one or more after the whole', where, 'write it like "5 1/2 in"'
        )
    return (Fraction(int(parts[0])) if len(parts) == 4 else Fraction(0)) + fraction


def parse_slope(value: str | float | int, where: str = "slope") -> float:
    """A slope as rise over run from "1:4" (one up in four), "12 %" or a number (0.25).

    Raises CrestcutError unless the result is above zero and finite.
    """
    slope = math.nan
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        slope = float(value)
    elif isinstance(value, str):
        text = value.strip()
        if ratio := re.fullmatch(rf"({_DECIMAL})\s*:\s*({_DECIMAL})", text):
            rise, run = float(ratio[1]), float(ratio[2])
            slope = rise / run if run > 0 else math.nan
        elif percent := re.fullmatch(rf"({_DECIMAL})\s*%", text):
            slope = float(percent[1]) / 100.0
    if not (math.isfinite(slope) and slope > 0):
        raise CrestcutError(f'"{value}" is not understood as a slope', where, 'write it like "1:4" or "25 %"')
    return slope


def millimetres(metres: float, decimals: int = 1) -> str:
    """ "12.7 mm"; "not measured" for NaN."""
    if math.isnan(metres):
        return "not measured"
    text = f"{metres * 1000:.{decimals}f}"
    return f"{text.removeprefix('-') if float(text) == 0 else text} mm"  # no "-0.0 mm"


def inches(metres: float, denominator: int = 32) -> str:
    """ "1/2 in", "5 1/2 in": to the nearest 1/denominator, reduced; "not measured" for NaN."""
    if math.isnan(metres):
        return "not measured"
    sign = "-" if metres < 0 else ""
    steps = round(abs(metres) / INCH * denominator)
    whole, rest = divmod(steps, denominator)
    if steps == 0:
        return "0 in"
    fraction = Fraction(rest, denominator)
    text = " ".join(
        ([str(whole)] if whole else []) + ([f"{fraction.numerator}/{fraction.denominator}"] if rest else [])
    )
    return f"{sign}{text} in"


def both(metres: float, decimals: int = 1) -> str:
    """ "12.7 mm (1/2 in)"."""
    return "not measured" if math.isnan(metres) else f"{millimetres(metres, decimals)} ({inches(metres)})"


def at_least(metres: float, step: float = MM_TENTH) -> float:
    """A limit from below (a reading that must be reached), metres, as it is handed out: the next whole
    ``step`` that is not less, so that no rounding lets through what the limit would not."""
    return math.ceil(metres / step - SAME) * step


def at_most(metres: float, step: float = MM_TENTH) -> float:
    """A limit from above (a depth that must not be passed), metres, as it is handed out: the last whole
    ``step`` that is not more."""
    return math.floor(metres / step + SAME) * step


def inches_at_least(metres: float, denominator: int = 32) -> str:
    """A limit from below in inches: never less than ``metres``."""
    return inches(at_least(metres, INCH / denominator), denominator)


def inches_at_most(metres: float, denominator: int = 32) -> str:
    """A limit from above in inches: never more than ``metres``."""
    return inches(at_most(metres, INCH / denominator), denominator)


def both_at_least(metres: float, decimals: int = 1, denominator: int = 32) -> str:
    """A limit from below in both systems, each rounded up for itself."""
    if math.isnan(metres):
        return "not measured"
    shown = millimetres(at_least(metres, 10.0**-decimals / 1000), decimals)
    return f"{shown} ({inches_at_least(metres, denominator)})"


def both_at_most(metres: float, decimals: int = 1, denominator: int = 32) -> str:
    """A limit from above in both systems, each rounded down for itself."""
    if math.isnan(metres):
        return "not measured"
    shown = millimetres(at_most(metres, 10.0**-decimals / 1000), decimals)
    return f"{shown} ({inches_at_most(metres, denominator)})"


def number(value: float) -> str:
    """A quantity with as many decimals as its size deserves, wherever it stands: 312, 35.3, 2.24, 0.043."""
    if value >= 100:
        return f"{value:.0f}"
    if value >= 1:
        return f"{value:.1f}" if value >= 10 else f"{value:.2f}"
    return f"{value:#.2g}" if value > 0 else "0"


def litres(cubic_metres: float) -> str:
    """ "15.9 litres"."""
    return f"{number(cubic_metres * 1000)} litres"
