"""Lengths and slopes as people write them <-> SI. Inches and fractions exist only here, at the edge.

A general unit library was tried and left: it reads "5 1/2 in" as 2.5 in and "0,14 m" as 0, silently. What this parser does
not fully understand it refuses.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

from crestcut.errors import CrestcutError

INCH = 0.0254  # m, exact: international yard and pound agreement of 1959
FOOT = 0.3048  # m, exact
US_SURVEY_FOOT = 1200.0 / 3937.0  # m, exact by definition

METRES_PER: dict[str, float] = {
    "mm": 0.001, "cm": 0.01, "m": 1.0, "km": 1000.0,
    "in": INCH, "inch": INCH, "inches": INCH, '"': INCH,
    "ft": FOOT, "foot": FOOT, "feet": FOOT, "'": FOOT,
    "us-ft": US_SURVEY_FOOT,
}  # fmt: skip

_NUMBER = r"(?:\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+\.\d*|\.\d+|\d+)"
_TERM = re.compile(rf"\s*({_NUMBER})\s*(us-ft|inches|inch|feet|foot|mm|cm|km|in|ft|m|\"|')(?![a-z])")


def parse_length(value: str | float | int, where: str = "length") -> float:
    """A length in metres from "140 mm", "5 1/2 in", "5 ft 6 in", "-20 mm"; a bare number is metres.

    Raises CrestcutError for a string without a unit, a decimal comma, or anything not wholly understood.
    """
    if isinstance(value, bool):
        raise CrestcutError("a length expected, true or false found", where, 'write it like "140 mm"')
    if isinstance(value, (int, float)):
        if not math.isfinite(value):
            raise CrestcutError("not a finite length", where, 'write it like "140 mm"')
        return float(value)
    if not isinstance(value, str):
        raise CrestcutError(f"a length expected, {type(value).__name__} found", where, 'write it like "140 mm"')
    text = value.strip().lower()
    if "," in text:
        raise CrestcutError(f'"{value}" has a comma', where, 'use a point for decimals, like "0.14 m"')
    sign = 1.0
    if text[:1] in "+-−" and text:
        sign = -1.0 if text[0] in "-−" else 1.0
        text = text[1:]
    total, at, last = 0.0, 0, math.inf
    while at < len(text):
        term = _TERM.match(text, at)
        if not term:
            break
        factor = METRES_PER[term[2]]
        if factor >= last:
            break
        total += _number(term[1], value, where) * factor
        at, last = term.end(), factor
    if at == 0 or text[at:].strip():
        if re.fullmatch(rf"\s*{_NUMBER}\s*", text):
            raise CrestcutError(f'"{value}" has no unit', where, 'write it like "140 mm" or "5 1/2 in"')
        raise CrestcutError(f'"{value}" is not understood as a length', where, 'write it like "140 mm" or "5 1/2 in"')
    return sign * total


def _number(text: str, value: str, where: str) -> float:
    parts = text.replace("/", " / ").split()
    try:
        if "/" not in parts:
            return float(parts[0])
        whole = Fraction(int(parts[0])) if len(parts) == 4 else Fraction(0)
        return float(whole + Fraction(int(parts[-3]), int(parts[-1])))
    except ZeroDivisionError:
        raise CrestcutError(f'"{value}" divides by zero', where, 'write it like "5 1/2 in"') from None


def parse_slope(value: str | float | int, where: str = "slope") -> float:
    """A slope as rise over run from "1:4" (one up in four), "12 %" or a number (0.25).

    Raises CrestcutError unless the result is above zero and finite.
    """
    slope = math.nan
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        slope = float(value)
    elif isinstance(value, str):
        text = value.strip()
        if ratio := re.fullmatch(r"(\d+(?:\.\d+)?)\s*:\s*(\d+(?:\.\d+)?)", text):
            rise, run = float(ratio[1]), float(ratio[2])
            slope = rise / run if run > 0 else math.nan
        elif percent := re.fullmatch(r"(\d+(?:\.\d+)?)\s*%", text):
            slope = float(percent[1]) / 100.0
    if not (math.isfinite(slope) and slope > 0):
        raise CrestcutError(f'"{value}" is not understood as a slope', where, 'write it like "1:4" or "25 %"')
    return slope


def millimetres(metres: float, decimals: int = 1) -> str:
    """ "12.7 mm"; "not measured" for NaN."""
    return "not measured" if math.isnan(metres) else f"{metres * 1000:.{decimals}f} mm"


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
    text = " ".join(([str(whole)] if whole else []) + ([f"{fraction.numerator}/{fraction.denominator}"] if rest else []))
    return f"{sign}{text} in"


def both(metres: float, decimals: int = 1) -> str:
    """ "12.7 mm (1/2 in)"."""
    return "not measured" if math.isnan(metres) else f"{millimetres(metres, decimals)} ({inches(metres)})"
