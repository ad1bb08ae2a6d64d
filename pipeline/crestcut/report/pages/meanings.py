"""How figures are written for a reader: both systems side by side, the reader's choice shows one."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from markupsafe import Markup

from crestcut.base import units
from crestcut.base.units import (
    FOOT,
    INCH,
    at_least,
    at_most,
    inches,
    inches_at_least,
    inches_at_most,
    millimetres,
    number,
)
from crestcut.report.pages.shell import html


@dataclass(frozen=True)
class Meaning:
    """One figure: its key in result.json, what it is called, how it is written, and what it means."""

    key: str
    name: str
    write: Callable[[float], str | Markup]
    text: str


def length(metres: float, decimals: int = 1) -> str | Markup:
    """A length in both systems; the reader's choice shows one. Lengths of a metre and more are in m, and in
    feet and inches. What is not nothing is never written as nothing."""
    if math.isnan(metres):
        return "not measured"
    if abs(metres) >= 1.0:
        return _pair(f"{metres:.2f} m", _feet(metres))
    si, us = millimetres(metres, decimals), inches(metres)
    if metres and not float(si.split()[0]):
        si = f"under {10.0**-decimals:g} mm"
    if metres and us == "0 in":
        us = "under 1/32 in"
    return _pair(si, us)


def length_at_least(metres: float, denominator: int = 32) -> str:
    """A limit from below in both systems, each rounded up for itself."""
    return _pair(millimetres(at_least(metres)), inches_at_least(metres, denominator))


def length_at_most(metres: float, denominator: int = 32) -> str:
    """A limit from above in both systems, each rounded down for itself."""
    return _pair(millimetres(at_most(metres)), inches_at_most(metres, denominator))


def _feet(metres: float) -> str:
    """ "27 ft 2 3/4 in": to the quarter of an inch, as the viewer writes it."""
    feet, quarters = divmod(round(abs(metres) / FOOT * 48), 48)
    sign = "-" if metres < 0 else ""
    return f"{sign}{feet} ft" + (f" {inches(quarters / 4 * INCH, 4)}" if quarters else "")


def area(square_metres: float) -> Markup:
    """m2 and ft2."""
    return _pair(f"{number(square_metres)} m²", f"{number(square_metres / FOOT**2)} ft²")


def volume(cubic_metres: float) -> Markup:
    """Litres and cubic feet."""
    return _pair(units.litres(cubic_metres), f"{number(cubic_metres / FOOT**3)} ft³")


def share(value: float) -> str:
    """A probability as a percentage; the ends are never claimed."""
    return "under 0.1 %" if value < 0.001 else "over 99.9 %" if value > 0.999 else f"{value * 100:.3g} %"


def count(value: float) -> str:
    """A whole number with thin groups."""
    return f"{value:,.0f}".replace(",", " ")


def times(value: float) -> str:
    """A factor: "5.4 times"."""
    return f"{value:.1f} times"


def litres(value: float) -> Markup:
    """Litres and cubic feet, without a sign: the words beside it say which way."""
    return volume(abs(value) / 1000)


def _pair(si: str, us: str) -> Markup:
    return html('<span class="si">{}</span><span class="us">{}</span>', si, us)
