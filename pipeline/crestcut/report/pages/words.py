"""How quantities and sentences are written for a reader: the filters of the pages' templates."""

from __future__ import annotations

import math
from typing import NamedTuple

from crestcut.base import units
from crestcut.base.units import (
    FOOT,
    INCH,
    POUND,
    at_least,
    at_most,
    inches,
    inches_at_least,
    inches_at_most,
    millimetres,
    number,
)
from crestcut.report.words.options import odds as odds_alone
from crestcut.report.words.summary import stopped


class Both(NamedTuple):
    """A quantity in both systems, side by side: the reader's choice shows one."""

    si: str
    us: str


def length(metres: float, decimals: int = 1) -> str | Both:
    """A length in both systems; one of a metre and more in m, and in feet and inches. What is not nothing is
    never written as nothing."""
    if math.isnan(metres):
        return "not measured"
    if abs(metres) >= 1.0:
        return Both(f"{metres:.2f} m", _feet(metres))
    si, us = millimetres(metres, decimals), inches(metres)
    if metres and not float(si.split()[0]):
        si = f"under {10.0**-decimals:g} mm"
    if metres and us == "0 in":
        us = "under 1/32 in"
    return Both(si, us)


def length_at_least(metres: float, denominator: int = 32) -> Both:
    """A limit from below in both systems, each rounded up for itself."""
    return Both(millimetres(at_least(metres)), inches_at_least(metres, denominator))


def length_at_most(metres: float, denominator: int = 32) -> Both:
    """A limit from above in both systems, each rounded down for itself."""
    return Both(millimetres(at_most(metres)), inches_at_most(metres, denominator))


def _feet(metres: float) -> str:
    """ "27 ft 2 3/4 in": to the quarter of an inch, as the viewer writes it."""
    feet, quarters = divmod(round(abs(metres) / FOOT * 48), 48)
    sign = "-" if metres < 0 else ""
    return f"{sign}{feet} ft" + (f" {inches(quarters / 4 * INCH, 4)}" if quarters else "")


def area(square_metres: float) -> Both:
    """m2 and ft2."""
    return Both(f"{number(square_metres)} m²", f"{number(square_metres / FOOT**2)} ft²")


def volume(cubic_metres: float) -> Both:
    """Litres and cubic feet."""
    return Both(units.litres(cubic_metres), f"{number(cubic_metres / FOOT**3)} ft³")


def litres(value: float) -> Both:
    """Litres and cubic feet, without a sign: the words beside it say which way."""
    return volume(abs(value) / 1000)


def weight(kilograms: float) -> Both:
    """kg and lb."""
    return Both(f"{number(kilograms)} kg", f"{number(kilograms / POUND)} lb")


def share(value: float) -> str:
    """A probability as a percentage; the ends are never claimed."""
    return "under 0.1 %" if value < 0.001 else "over 99.9 %" if value > 0.999 else f"{value * 100:.3g} %"


def odds(chance: float) -> str:
    """A chance of touching as people say it: "about 1 in 30", "about 29 in 30"."""
    if math.isnan(chance):
        return "not worked out"
    return f"about {odds_alone(chance)}" if 0.001 <= chance <= 0.999 else share(chance)


def count(value: float) -> str:
    """A whole number with thin groups."""
    return f"{value:,.0f}".replace(",", "\u2009")


def times(value: float) -> str:
    """A factor: "5.4 times"."""
    return f"{value:.1f} times"


def sentence(text: str) -> str:
    """The text with a capital and a full stop."""
    text = stopped(text.strip())
    return text[:1].upper() + text[1:]
